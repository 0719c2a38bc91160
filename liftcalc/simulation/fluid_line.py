"""A line as a fluid: so many an hour come and so many an hour get on, row by row of a table of arrivals.

There are no steps of time: between two rows the line grows or shrinks evenly, so that every corner is exact.

Below saturation a fluid has no line and no wait. People do: they come by chance, together or not at all, and wait even
where fewer join than can get on. ``mean_wait`` says how long. The two do not add up to one wait.
"""

import math
from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q, checked_magnitude, parsed_unit

CHANCE = "Where this says no wait, chance still makes some: people do not come evenly."


@dataclass(frozen=True)
class FluidLine:
    """What a table of arrivals makes of a line.

    Parameters
    ----------
    times, line, came : Quantity
        Corners of the line over time, for a chart, persons in line there, and persons who have come so far; a time
        that stands twice is a jump.
    longest_line : Quantity [person]
        Most persons in line at once.
    longest_at : Quantity [s]
        When the line is so long for the first time.
    clears_at : Quantity [s] or None
        When the last line is gone; None where there never was one.
    total_wait : Quantity [person*hour]
        Waits of all who came, added up.
    mean_wait, longest_wait : Quantity [s]
        Mean wait of all who came, and longest wait of one of them, first come first served.
    """

    times: Quantity
    line: Quantity
    came: Quantity
    longest_line: Quantity
    longest_at: Quantity
    clears_at: Quantity | None
    total_wait: Quantity
    mean_wait: Quantity
    longest_wait: Quantity

    @property
    def _with_a_line(self):
        """Whether a line stands, from each corner to the next."""
        line = self.line.magnitude
        return (line[1:] + line[:-1]) > 0

    @property
    def met_a_line(self):
        """Persons who met a line, or made one, and so waited."""
        return Q(float(np.sum(np.diff(self.came.m_as("person"))[self._with_a_line])), "person")

    @property
    def mean_wait_of_those(self):
        """Mean wait of those who met a line; None where there never was one."""
        return (self.total_wait / self.met_a_line).to("s") if self._with_a_line.any() else None

    @property
    def spells(self):
        """From when to when a line stood, in seconds, one pair after another."""
        times, stood = self.times.m_as("s"), np.concatenate([[False], self._with_a_line, [False]]).astype(int)
        turns = np.flatnonzero(np.diff(stood))
        return [(float(times[start]), float(times[end])) for start, end in turns.reshape(-1, 2)]

    def __str__(self):
        if self.clears_at is None:
            return f"No line: never more came than could get on. {CHANCE}"
        return (
            f"At most {show(self.longest_line)} in line, at {show(self.longest_at, 'minute')}; clear at "
            f"{show(self.clears_at, 'minute')}. Mean wait {show(self.mean_wait, 'minute')}, longest "
            f"{show(self.longest_wait, 'minute')}. {CHANCE}"
        )


def fluid_line(*, begins, lasts, persons, hourly_capacity, capacity_from=None):
    """Return the line that a table of arrivals makes, with everybody served in the order of coming.

    Parameters
    ----------
    begins : Quantity [s]
        When each row of the table begins; rows may overlap, and then add up.
    lasts : Quantity [s]
        How long each row lasts; in a row of zero, a batch, all come at once.
    persons : Quantity [person]
        How many come in each row, spread evenly over it.
    hourly_capacity : Quantity [person/hour]
        How many an hour can get on: one value, or one for each time in ``capacity_from``. Zero is a stop.
    capacity_from : Quantity [s] or None
        From when each capacity holds; before the first of them nobody gets on. One capacity without it holds always.

    Returns
    -------
    FluidLine
        The line over time, when it is longest and when it clears, and the waits.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    PlainError
        If the columns are not of one length, if times of the capacity do not ascend, if nobody comes, or if people
        are left in line whom nobody ever takes.

    Examples
    --------
    >>> row = {"begins": Q([0], "minute"), "lasts": Q([10], "minute"), "persons": Q([300], "person")}
    >>> found = fluid_line(**row, hourly_capacity=Q(1200, "pph"))
    >>> show(found.longest_line), show(found.clears_at, "minute"), show(found.longest_wait, "minute")
    ('100 persons', '15.0 min', '5.0 min')
    """
    begins, lasts, persons, capacity, since = _taken(begins, lasts, persons, hourly_capacity, capacity_from)
    ends, batch = begins + lasts, lasts == 0
    rate = np.divide(persons, lasts, out=np.zeros_like(persons), where=~batch)
    corners = np.unique(np.concatenate([begins, ends, since[np.isfinite(since)]]))
    times, line, came = [float(corners[0])], [0.0], [0.0]

    nobody = 1e-9 * persons.sum()  # a line of no more is rounding

    def corner(time, waiting, arrived):
        times.append(float(time))
        line.append(float(waiting) if waiting > nobody else 0.0)
        came.append(float(arrived))

    for start, end in zip(corners, [*corners[1:], math.inf], strict=True):
        jump = persons[batch & (begins == start)].sum()
        if jump:
            corner(start, line[-1] + jump, came[-1] + jump)
        coming = rate[(begins <= start) & (start < ends)].sum()
        growth = coming - capacity[since <= start][-1:].sum()  # none before the first
        if line[-1] > 0 and growth < 0 and (cleared := start + line[-1] / -growth) < end:
            corner(cleared, 0.0, came[-1] + coming * (cleared - start))
        if end < math.inf:
            spell = end - times[-1]
            corner(end, line[-1] + growth * spell, came[-1] + coming * spell)
    if line[-1] > 0:
        raise PlainError(
            f"fluid_line: {line[-1]:,.0f} persons are left in line and nobody takes them. Write a last hourly_capacity "
            "above zero."
        )
    return _summary(*map(np.array, (times, line, came)))


def _taken(begins, lasts, persons, hourly_capacity, capacity_from):
    """Return the columns as arrays of seconds, persons and persons a second, or say what does not fit."""

    def column(name, value, unit, lowest="not negative"):
        number = checked_magnitude("fluid_line", name, value, unit, parsed_unit(unit), lowest)
        return np.atleast_1d(np.asarray(number, dtype=float))

    table = {
        "begins": column("begins", begins, "s", "any"),
        "lasts": column("lasts", lasts, "s"),
        "persons": column("persons", persons, "person"),
    }
    if len({each.shape for each in table.values()}) > 1 or table["begins"].ndim > 1:
        sizes = ", ".join(f"{name} holds {each.size}" for name, each in table.items())
        raise PlainError(f"fluid_line: {sizes}. Give one value a row in each.")
    if not table["persons"].sum() > 0:
        raise PlainError("fluid_line: nobody comes. Give at least one row with persons, such as Q([60], 'person').")
    capacity = column("hourly_capacity", hourly_capacity, "person/hour") / 3600
    since = np.array([-np.inf]) if capacity_from is None else column("capacity_from", capacity_from, "s", "any")
    if capacity.shape != since.shape:
        raise PlainError(
            f"fluid_line: {capacity.size} values of hourly_capacity came with {since.size} times. Write in "
            "capacity_from since when each of them holds."
        )
    if np.any(np.diff(since) <= 0):
        raise PlainError("fluid_line: the times of capacity_from must ascend. Write the earliest first.")
    return *table.values(), capacity, since


def _summary(times, line, came):
    """Return the result of the corners: times, persons in line, and persons who have come so far."""
    steps = np.diff(times)
    total_wait = float(np.sum(steps * (line[1:] + line[:-1]) / 2))
    standing = np.flatnonzero(line > 0)
    most = int(np.argmax(line))
    clears_at = Q(times[standing[-1] + 1], "s") if standing.size else None
    return FluidLine(
        Q(times, "s"), Q(line, "person"), Q(came, "person"), Q(line[most], "person"), Q(times[most], "s"), clears_at,
        Q(total_wait / 3600, "person*hour"), Q(total_wait / came[-1], "s"),
        Q(_longest_wait(times, came, came - line), "s"),
    )  # fmt: skip


def _longest_wait(times, came, gone):
    """Return the longest time between the curve of those who came and that of those who got on, at one person.

    Both are straight between their corners, and so is the wait from person to person: it is longest at a corner, seen
    from the person before it or from the one behind it.
    """
    came, gone = np.round(came, 7), np.round(gone, 7)  # what is one person but for rounding is one person
    persons = np.unique(np.concatenate([came, gone]))
    seen = [(person, "left") for person in persons[1:]] + [(person, "right") for person in persons[:-1]]
    return max(float(_when(times, gone, *each) - _when(times, came, *each)) for each in seen)


def _when(times, curve, person, side):
    """Return when a curve that never falls reaches a person, or leaves it."""
    after = int(np.searchsorted(curve, person, side=side))
    part = (person - curve[after - 1]) / (curve[after] - curve[after - 1])
    return times[after - 1] + part * (times[after] - times[after - 1])
