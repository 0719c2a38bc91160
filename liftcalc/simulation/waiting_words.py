"""Waiting in words: the lines of a morning, what chance makes where no line stands, and a crowd on several lifts."""

import numpy as np

from liftcalc.formulas.loading_point import mean_loading_time_lognormal
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.waiting import (
    mean_wait,
    mean_wait_constant,
    mean_wait_exponential,
    second_moment_lognormal,
)
from liftcalc.quantity_text import show
from liftcalc.simulation.arrival_times import days_of_arrivals
from liftcalc.simulation.carrier_tables import days_with_arrivals
from liftcalc.simulation.clocked_line import mean_wait_for_carriers
from liftcalc.simulation.closed_crowd import closed_crowd, even_shares
from liftcalc.simulation.day_words import SEED
from liftcalc.simulation.fluid_line import fluid_line
from liftcalc.tables import Table
from liftcalc.units import Q

HOUR, RUN_DAYS = Q(60, "minute"), 20


def line_of_first_hour(*, rush_arrivals, rush_length, later_arrivals, hourly_capacity):
    """Return the line of a first hour: a rush from the opening on, and fewer arrivals after it.

    Parameters
    ----------
    rush_arrivals, later_arrivals : Quantity [person/hour]
        Persons an hour who join in the rush, and after it until the hour is over; then nobody comes.
    rush_length : Quantity [minute]
        How long the rush lasts: less than an hour.
    hourly_capacity : Quantity [person/hour]
        How many an hour get on.

    Returns
    -------
    FluidLine
        Its times count from the opening.
    """
    rush, hour = rush_length.m_as("minute"), HOUR.m_as("minute")
    lasts = Q([rush, hour - rush], "minute")
    rates = Q([rush_arrivals.m_as("pph"), later_arrivals.m_as("pph")], "pph")
    return fluid_line(
        begins=Q([0, rush], "minute"), lasts=lasts, persons=(rates * lasts).to("person"),
        hourly_capacity=hourly_capacity,
    )  # fmt: skip


def line_of_arrivals(arrivals, hourly_capacity):
    """Return the line that a table of arrivals makes.

    Parameters
    ----------
    arrivals : Arrivals
        As ``read_arrivals`` returns it.
    hourly_capacity : Quantity [person/hour]
        How many an hour get on, from the first row on.

    Returns
    -------
    FluidLine
        Its times count from the first row.
    """
    return fluid_line(
        begins=Q(arrivals.begins, "s"), lasts=Q(arrivals.lasts, "s"), persons=Q(arrivals.persons, "person"),
        hourly_capacity=hourly_capacity,
    )  # fmt: skip


def morning_table(arrivals, *capacities):
    """Return a table of the lines that arrivals make, a column for each capacity of the lift.

    Parameters
    ----------
    arrivals : Arrivals
        As ``read_arrivals`` returns it.
    *capacities : Capacity
        How many an hour get on, each with its level.

    Returns
    -------
    Table
        When lines stand, the longest, and the waits: of all, and of those who met a line.
    """
    found = [line_of_arrivals(arrivals, capacity.value) for capacity in capacities]
    persons, came = show(Q(float(arrivals.persons.sum()), "person")), len(arrivals.persons)
    rows = [
        ("longest line", *(_longest(arrivals, line) for line in found)),
        ("a line stands", *(_spells(arrivals, line) for line in found)),
        ("the last line is gone", *(_gone(arrivals, line) for line in found)),
        ("all waits together", *(show(line.total_wait) for line in found)),
        ("mean wait of all", *(_minutes(line.mean_wait) for line in found)),
        ("who met a line", *(_who(line) for line in found)),
        ("mean wait of those", *(_minutes(line.mean_wait_of_those) for line in found)),
        ("longest wait", *(_minutes(line.longest_wait) for line in found)),
    ]
    return Table(
        f"{arrivals.name}: {persons} join the line from {arrivals.clock(0)} on, in {came} rows",
        ("what", *map(str, capacities)),
        rows,
    )


def _minutes(time):
    return "no line" if time is None else show(time, "minute")


def _short(seconds):
    """Return a wait as one would say it: seconds up to two minutes."""
    return f"{seconds:.0f} s" if seconds < 120 else show(Q(float(seconds), "s"), "minute")


def _longest(arrivals, line):
    if line.clears_at is None:
        return "no line"
    return f"{show(Q(round(line.longest_line.m_as('person')), 'person'))} at {_at(arrivals, line.longest_at)}"


def _at(arrivals, time):
    return arrivals.clock(time.m_as("s"))


def _spells(arrivals, line):
    return ", ".join(f"{arrivals.clock(start)} to {arrivals.clock(end)}" for start, end in line.spells) or "never"


def _gone(arrivals, line):
    if line.clears_at is None:
        return "no line"
    late = line.clears_at.m_as("s") > float(np.max(arrivals.begins + arrivals.lasts))
    return _at(arrivals, line.clears_at) + (", after the last row" if late else "")


def _who(line):
    part = (line.met_a_line / line.came[-1]).m_as("")
    return f"{round(line.met_a_line.m_as('person')):,} persons, {100 * part:.0f} %"


def _moments(rider, floor):
    """Return mean and mean square of a class's loading times [s, s**2]: readiness, but no less than the floor."""
    if rider.variation == 0:
        time = max(rider.readiness, floor)
        return time, time**2
    given = {"mean_time": rider.readiness, "floor": floor}
    return tuple(
        float(moment.plain(rider.variation, **given))
        for moment in (mean_loading_time_lognormal, second_moment_lognormal)
    )


def loading_moments(line, tables):
    """Return mean and mean square of the loading times of a line that is grabbed, or stepped on, at any time.

    Parameters
    ----------
    line : Line
        Its headway is the floor: no start follows sooner.
    tables : DayTables
        As ``read_day`` returns it: the classes of riders with their readiness. Misses and stops are left out.

    Returns
    -------
    tuple of Quantity [s], [s**2]
    """
    floor = line.interval.m_as("s")
    first, second = np.array([each.share for each in tables.classes]) @ [
        _moments(each, floor) for each in tables.classes
    ]
    return Q(float(first), "s"), Q(float(second), "s**2")


def chance_table(arrival_rate, line, tables):
    """Return a table of the mean waits that chance makes where fewer join than can get on.

    Parameters
    ----------
    arrival_rate : Quantity [person/hour]
        Persons an hour who join the line, each without regard to the others.
    line, tables
        As for ``loading_moments``.

    Returns
    -------
    Table
        A row for each law of the loading times: mean, mean wait, mean line.
    """
    mean, square = loading_moments(line, tables)
    ready = Q(float(sum(each.share * each.readiness for each in tables.classes)), "s")
    cases = [
        ("all alike, as the mean readiness (M/D/1)", ready, mean_wait_constant(arrival_rate, ready)),
        (
            f"as riders are, none sooner than {show(line.interval)} (M/G/1)",
            mean,
            mean_wait(arrival_rate, mean, square),
        ),
        ("exponential, as the mean readiness (M/M/1)", ready, mean_wait_exponential(arrival_rate, ready)),
    ]
    rows = [
        (what, f"{time.m_as('s'):.2f} s", show(wait), f"{persons_from_flow(arrival_rate, wait).m_as('person'):.1f}")
        for what, time, wait in cases
    ]
    return Table(
        f"{line.name}, {show(arrival_rate)} come by chance: without chance nobody would wait",
        ("loading times", "mean", "mean wait", "in line, on average"),
        rows,
    )


def clock_table(interval, busy, seats=(1, 2, 4)):
    """Return a table of the mean waits for carriers that come by the clock, all equally busy.

    Parameters
    ----------
    interval : Quantity [s]
        Time from one carrier to the next.
    busy : float
        Part of the seats that is taken.
    seats : tuple of int
        Seats of a carrier, a row each.

    Returns
    -------
    Table
        Riders an hour, mean wait, and that of the nearly empty hill, where only the next carrier is waited for.
    """
    rows = []
    for each in seats:
        rate = Q(3600 * busy * each / interval.m_as("s"), "pph")
        wait = mean_wait_for_carriers(rate, interval, Q(each, "person"))
        rows.append((str(each), show(rate), f"{wait.m_as('s'):.2f} s", show(interval / 2)))
    return Table(
        f"A carrier every {show(interval)}, {100 * busy:.0f} % of the seats taken; riders come one by one",
        ("seats", "riders an hour", "mean wait", "on an empty hill"),
        rows,
    )


def crowd_on_lifts(crowd, lifts, choices):
    """Return a table of what a closed crowd makes of several lifts, as riders choose between them.

    Parameters
    ----------
    crowd : Quantity [person]
        People who ski these lifts and nothing else.
    lifts : dict of str to tuple of Quantity [s]
        Loading time, and time of ride and descent, of each lift by its name.
    choices : list of (tuple of float or None)
        Shares of all rides, one for each lift; None for those at which the waits are equal.

    Returns
    -------
    Table
        For each choice the line and the wait at each lift, all rides an hour, and the laps of each person.
    """
    loading, away = (Q([each[place].m_as("s") for each in lifts.values()], "s") for place in (0, 1))
    times, rows = {"loading_time": loading, "ride_and_descent": away}, []
    for choice in choices:
        shares = even_shares(crowd, **times) if choice is None else Q(list(choice), "")
        found = closed_crowd(crowd, **times, shares=shares)
        parts = " : ".join(f"{share:.0f}" for share in 100 * shares.magnitude)
        rows.append(
            (
                f"{parts}{', the shorter wait' if choice is None else ''}",
                *(
                    f"{line:.0f} in line, {_short(wait)}"
                    for line, wait in zip(found.line[-1].m_as("person"), found.wait[-1].m_as("s"), strict=True)
                ),
                show(found.riders_an_hour[-1].sum()),
                f"{found.laps_an_hour[-1].m_as('1/hour'):.1f}",
            )
        )
    return Table(
        f"{show(crowd)} on {len(lifts)} lifts: who waits where, as they choose",
        ("share of rides, in %", *lifts, "people an hour", "laps an hour each"),
        rows,
    )


def run_day_table(arrivals, line, tables, *, seed=SEED, days=RUN_DAYS):
    """Return a table of the lines on days that are run rider by rider, with chance, misses and stops in them.

    Parameters
    ----------
    arrivals : Arrivals
        As ``read_arrivals`` returns it; the lift opens when its first row begins.
    line : Line
        A lift of any kind.
    tables : DayTables
        Its day: who rides, and what happens; with most in line, closing and lunch, if they stand there.
    seed, days : int
        Start of the random numbers, and how many days are run.

    Returns
    -------
    Table
        Mean of the days, and the calmest and the worst of them.
    """
    came = days_of_arrivals(arrivals.begins, arrivals.lasts, arrivals.persons, seed, days)
    found = days_with_arrivals(line, tables, came, seed)
    rows = [
        _of_days("longest line", found.longest_line, lambda number: show(Q(float(round(number)), "person"))),
        _of_days("mean wait in line", found.mean_wait, lambda number: show(Q(float(number), "s"), "minute")),
        *(
            _of_days(what, numbers, lambda number: show(Q(float(round(number)), "person")))
            for what, numbers in (("gave up", found.gave_up), ("turned away at closing", found.turned_away))
            if np.any(numbers)
        ),
    ]
    persons = show(Q(float(arrivals.persons.sum()), "person"))
    caption = f"{line.name}: {days} days run rider by rider, {persons} come as in {arrivals.name} (simulated)"
    return Table(caption, ("what", "mean", "calmest day", "worst day"), rows)


def _of_days(what, numbers, text):
    """Return a row: the mean of all days, and both ends."""
    return what, *(text(round(float(each), 6)) for each in (np.mean(numbers), np.min(numbers), np.max(numbers)))
