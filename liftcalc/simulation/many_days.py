"""Many days at the loading point: what they carry, and what each cause takes of it."""

import functools

import numpy as np

from liftcalc.simulation.loading_day import CAUSES, simulate_day


def simulate_days(day, seed, days):
    """Return the persons an hour of many days, each by random numbers of its own.

    Parameters
    ----------
    day : LoadingDay
        What every day is like; a line stands all day.
    seed : int
        Start of the random numbers.
    days : int
        How many.

    Returns
    -------
    array
        Persons an hour who got to the top, a number a day.
    """
    return np.array([simulate_day(day, generator).rate for generator in generators(seed, days)])


@functools.lru_cache(maxsize=64)
def simulate_days_held(day, most, seed, days):
    """Return the persons an hour of many days on which no more start than another limit carries, such as the motor.

    A limit bounds a mean. Where more would start in an hour of running, the starts are cut to it, and what happens on
    the way is cut alike: a little too much, since fewer riders fall and stop the rope less often.

    Parameters
    ----------
    day, seed, days
        As for ``simulate_days``.
    most : float
        Starts in an hour of running that the other limits allow; ``inf`` where there is none.

    Returns
    -------
    array
        Persons an hour who got to the top, a number a day; it is kept, and cannot be written into.
    """
    seen = [simulate_day(day, generator) for generator in generators(seed, days)]
    starts = sum(each.started.size for each in seen) / sum(each.availability * day.hours for each in seen)
    rates = np.array([each.rate for each in seen]) * min(1.0, most / starts)
    rates.flags.writeable = False
    return rates


def generators(seed, days):
    """Return the random numbers of so many days, each day with a generator of its own."""
    return [np.random.default_rng(child) for child in np.random.SeedSequence(seed).spawn(days)]


def losses_by_cause(day, seed, days=100):
    """Return what each cause takes from the governed capacity, one after another in the order of ``CAUSES``.

    Parameters
    ----------
    day, seed, days
        As for ``simulate_days``; every step runs on the same days.

    Returns
    -------
    dict of str to float
        Persons an hour with "governed" first, then after each cause; the last one is the simulated day.
    """
    steps = {"governed": day.governed}
    for number, cause in enumerate(CAUSES, start=1):
        steps[cause] = float(np.mean(simulate_days(day.with_causes(CAUSES[:number]), seed, days)))
    return steps
