"""What a day answers when it is moved, what short counts of it read, and how far its days are apart, in words."""

from dataclasses import replace

import numpy as np

from liftcalc.quantity_text import show
from liftcalc.simulation.day_words import DAYS, SEED
from liftcalc.simulation.loading_day import CAUSES, LoadingDay, simulate_day
from liftcalc.simulation.many_days import losses_by_cause, simulate_days
from liftcalc.simulation.running_time import generators
from liftcalc.tables import Folded, Lines
from liftcalc.units import PlainError, Q

TWO_MINUTES = 120.0  # seconds
_CALM = ("uneven starts", "misses", "slow-downs")


def _pph(number):
    return show(Q(float(round(number)), "pph"))


def only_at_any_time(day):
    """Refuse a day of carriers: these words are of lifts whose riders start when they are ready."""
    if not isinstance(day, LoadingDay):
        raise PlainError("This is told of lifts that riders grab, or step on, at any time: not of carriers.")


def answers_of_a_day(day, *, seed=SEED, days=DAYS):
    """Return the answers to four questions about a day whose sliders are moved, as means of many days.

    Parameters
    ----------
    day : LoadingDay
        The day before anything is moved.
    seed, days : int
        Start of the random numbers, and how many days are simulated for each answer.

    Returns
    -------
    Folded
        A line for each: without misses; without stops and falls; with stops twice as long; days apart.
    """
    only_at_any_time(day)
    others = tuple(cause for cause in CAUSES if cause != "misses")
    moved = (day.with_causes(others), day.with_causes(_CALM), replace(day, stop_time=2 * day.stop_time))
    as_read, longer = losses_by_cause(day, seed, days), losses_by_cause(moved[2], seed, days)
    no_miss, calm = (float(simulate_days(each, seed, days).mean()) for each in moved[:2])

    def takes(steps, cause):
        names = list(steps)
        return steps[names[names.index(cause) - 1]] - steps[cause]

    back = no_miss - as_read["dropped at a stop"]
    left = day.governed - calm
    stands = [takes(steps, "the rope stands") for steps in (as_read, longer)]
    dropped = [takes(steps, "dropped at a stop") for steps in (as_read, longer)]
    apart = np.std(simulate_days(day, seed, days), ddof=1)
    if day.empties:
        doubles = (
            f"3. No: {_pph(dropped[0])} before, {_pph(dropped[1])} after. As many hang on the rope, however long it "
            f"stands. The standing itself grows: {_pph(stands[0])} and {_pph(stands[1])}."
        )
    else:
        doubles = f"3. Nobody is dropped: riders stay on. The standing grows: {_pph(stands[0])} and {_pph(stands[1])}."
    return Folded(
        f"Answers, as means of {days} days",
        f"1. {_pph(back)} come back, and misses took {_pph(takes(as_read, 'misses'))}: falls and stops take their "
        "share of the others too.",
        f"2. {_pph(left)}: uneven starts, misses and slow-downs.",
        doubles,
        f"4. Some {_pph(apart)} to either side, and nothing has changed but chance.",
    )


def short_counts(day, *, seed=SEED, days=20):
    """Return what counts of two minutes read on such days: how often above the governed rate, and the best of a day.

    Parameters
    ----------
    day, seed, days
        As for ``answers_of_a_day``.

    Returns
    -------
    Lines
    """
    only_at_any_time(day)
    seen = [simulate_day(day, generator) for generator in generators(seed, days)]
    counted, clean = zip(*[each.counts(TWO_MINUTES) for each in seen], strict=True)
    windows, untouched = np.concatenate(counted), np.concatenate(clean)
    governed = day.governed * TWO_MINUTES / 3600
    above = np.mean(windows[untouched] > governed) if untouched.any() else 0.0
    best = 30 * np.array([each.max() for each in counted])
    return Lines(
        f"On {days} such days {100 * untouched.mean():.0f} of 100 counts of two minutes meet no stop. Of these, "
        f"{100 * above:.0f} of 100 read more than the {_pph(day.governed)} of the loading point: by chance alone.",
        f"The best two minutes of each day, times thirty, read {_pph(best.min())} to {_pph(best.max())}. The mean of "
        f"the days is {_pph(np.mean([each.rate for each in seen]))}.",
    )


def days_in_words(day, *, seed=SEED, days=DAYS):
    """Return the worst, the mean and the best of many days, all alike in what may happen on them.

    Parameters
    ----------
    day, seed, days
        As for ``answers_of_a_day``.

    Returns
    -------
    Lines
    """
    rates = simulate_days(day, seed, days)
    named = (("worst", rates.min()), ("mean", rates.mean()), ("best", rates.max()))
    return Lines(
        *(f"{name} of {days} days: {_pph(rate)}" for name, rate in named),
        f"Best and worst are {_pph(rates.max() - rates.min())} apart.",
    )
