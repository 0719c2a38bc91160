"""Ideal, governed, simulated and counted side by side, what each cause takes, and what a day leaves out of a sheet."""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.levels import Capacity
from liftcalc.lifts.governing import governing
from liftcalc.lifts.kinds import kind_named
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.lifts.readings import known_values
from liftcalc.quantity_text import show
from liftcalc.simulation.carrier_tables import day_of
from liftcalc.simulation.day_tables import loading_day
from liftcalc.simulation.loading_day import LoadingDay
from liftcalc.simulation.many_days import losses_by_cause, simulate_days
from liftcalc.tables import Lines, Table
from liftcalc.units import Q

SEED, DAYS = 2026, 60
SAME_TIME = 0.02  # parts by which two mean times may differ and still be called the same
AT_THE_ROPE = LoadingDay.limits  # limits that the simulated day has in it


def _pph(number):
    return show(Q(float(number), "pph"))


def how_far(verdict):
    """Return how far a count can be trusted, from its ``CountVerdict``."""
    return f"plus or minus {verdict.doubt}" if verdict.doubt else "too few to tell"


def _how_far(verdict, counts):
    """Return the same of a count; where no stop fell into it, the doubt is of those minutes and not of a day."""
    return how_far(verdict) + ("" if counts.stopped else ", of these minutes: no stop is in it")


def agreement_of_figures(figures):
    """Return whether simulated and counted agree within the doubt of the count, and what that proves.

    Parameters
    ----------
    figures : list of Figure
        As ``four_figures`` returns them.

    Returns
    -------
    Lines
    """
    found = {each.name: each for each in figures}
    simulated, counted = found["simulated"].pph, found["counted"].pph
    if counted is None:
        return Lines("Nobody has counted: the simulated figure stands alone. What is true there, a count would say.")
    if found["counted"].around is None:
        return Lines("So few were counted that simulated and counted cannot be held against one another.")
    apart, widest = abs(simulated - counted), found["counted"].around
    if apart <= widest:
        return Lines(
            f"Simulated and counted are {show(apart)} apart, within the doubt of the count, {show(widest)}. That is no "
            "proof of the model. What is true on your hill, your count says."
        )
    return Lines(
        f"Simulated and counted are {show(apart)} apart, more than the doubt of the count, {show(widest)}. Look at the "
        "readiness of the riders first, then at misses, falls and stops, then at the count. Which of them it is, the "
        "difference does not say."
    )


@dataclass(frozen=True)
class Figure:
    """One of the four figures of a lift.

    Parameters
    ----------
    name : str
        ideal, governed, simulated or counted.
    pph : Quantity [person/hour] or None
        The figure; None where it was not read.
    of, how_far : str
        What it is of, and how far it can be trusted.
    around : Quantity [person/hour] or None
        Half of the interval in which single days lie, or the truth behind a count.
    """

    name: str
    pph: Quantity | None
    of: str = ""
    how_far: str = ""
    around: Quantity | None = None


def four_figures(line, readings, tables, counts=None, *, seed=SEED, days=DAYS):
    """Return the four figures of one lift: ideal, governed, simulated and counted.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.
    tables : DayTables
        As ``read_day`` returns it, or ``read_carrier_day`` for a line with carriers.
    counts : MinuteCounts or None
        As ``read_counts`` returns it.
    seed, days : int
        Start of the random numbers, and how many days are simulated.

    Returns
    -------
    list of Figure
    """
    day, found = day_of(line, tables), governing(limits_of(line, readings))
    rates = simulate_days(day, seed, days)
    spread = Q(1.96 * float(np.std(rates, ddof=1)), "pph")
    apart = "" if found.limit.name in day.limits else f", {day.alone}: {found.limit.name} governs"
    of_days = f"{days} days of {day.hours:g} h, a line stands all day{apart}"
    figures = [
        Figure(
            "ideal", line.capacity.value, f"a {day.comes} every {show(line.interval)}", "as good as speed and spacing"
        ),
        Figure("governed", found.capacity.value, f"{found.limit.name} governs", "as good as its readings"),
        Figure(
            "simulated",
            Q(float(rates.mean()), "pph"),
            of_days,
            f"19 in 20 days lie within {show(spread)} of it",
            spread,
        ),
    ]
    if counts is None:
        return [*figures, Figure("counted", None)]
    verdict = counts.against(Capacity(found.capacity.value, "governed"))
    widest = max(verdict.plus_minus, default=None)
    return [*figures, Figure("counted", counts.rate().value, counts.name, _how_far(verdict, counts), widest)]


def side_by_side(line, readings, tables, counts=None, *, seed=SEED, days=DAYS):
    """Return the four figures of a lift as a table; arguments as for ``four_figures``.

    Returns
    -------
    Table
        Each figure with what it is of, and how far it can be trusted.
    """
    return figures_table(four_figures(line, readings, tables, counts, seed=seed, days=days), line.name)


def figures_table(figures, name):
    """Return figures of a lift of that name as a table."""
    rows = [(each.name, "not read" if each.pph is None else show(each.pph), each.of, each.how_far) for each in figures]
    return Table(f"Four figures of {name}", ("figure", "people an hour", "what of", "how far"), rows)


def losses_table(day, *, seed=SEED, days=DAYS):
    """Return a table of what each cause takes, one after another in a fixed order, from governed to simulated.

    Parameters
    ----------
    day : LoadingDay or CarrierDay
        The day.
    seed, days
        As for ``side_by_side``.

    Returns
    -------
    Table
        What is left after each cause, what it takes, and as a part of what was left before it. The takings add up; the
        parts multiply to nearly the same.
    """
    steps = losses_by_cause(day, seed, days)
    names, left = list(steps), list(steps.values())
    rows = [(names[0], _pph(left[0]), "", "")]
    rows += [
        (name, _pph(after), _pph(round(before - after)), f"{100 * after / before:.1f} %")
        for name, before, after in zip(names[1:], left, left[1:], strict=False)
    ]
    rows.append(("together", _pph(left[-1]), _pph(left[0] - left[-1]), f"{100 * left[-1] / left[0]:.1f} %"))
    columns = ("after", "people an hour", "it takes", "of what was left")
    return Table(f"From governed to simulated, cause by cause ({days} days)", columns, rows)


def day_against_sheet(line, readings, tables):
    """Return what a reader must know before a simulated day is held against the sheet of the lift.

    Parameters
    ----------
    line, readings, tables
        As for ``side_by_side``.

    Returns
    -------
    Lines
        What the day assumes, and where its loading time and that of the sheet are two things.
    """
    if kind_named(line.kind).has_carriers:
        return Lines(
            f"Assumed: a line stands all day, a carrier passes every {show(line.interval)} whoever is there, and the "
            "first ride time is left out. The sheet's loading time is no part of it: who is late is a misload."
        )
    day, known = loading_day(line, tables), known_values(line, readings)
    of_classes = show(Q(day.mean_readiness, "s"))
    told = ["Assumed: a line stands all day, there is one loading place, and the first ride time is left out."]
    places = known.get("loading_places")
    if places is not None and places.m_as("") > 1:
        told.append(f"The sheet has {show(places)} loading places: the simulated figure is that of one of them.")
    time = known.get("loading_time")
    if time is None:
        told.append(f"The sheet has no loading time: the day takes the {of_classes} of its classes.")
    elif known.get("loading_timed_as", "starts") == "starts":
        told.append(
            f"The sheet's {show(time)} is from one successful start to the next. Uneven starts and misses are in it "
            f"already, and must not be taken off again: the day starts from the {of_classes} of its classes, with the "
            "place free and misses left out, and not from that time."
        )
    elif abs(day.mean_readiness / time.m_as("s") - 1) > SAME_TIME:
        told.append(
            f"The sheet says {show(time)} with the place free, and the classes {of_classes} on average: governed and "
            "simulated speak of two different mixes of riders. Time again, or mend the shares."
        )
    governed, started = show(governing(limits_of(line, readings)).capacity.value), _pph(day.governed)
    if governed != started:
        told.append(f"So two figures stand here: the sheet governs at {governed}, and the day starts from {started}.")
    return Lines(*told)
