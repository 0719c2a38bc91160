"""Counts at the top, minute by minute, as someone wrote them down: by the clock, and of the minutes without a stop."""

import math
from dataclasses import dataclass, replace

import numpy as np

from liftcalc.fieldwork.cells import CellFault
from liftcalc.fieldwork.clock_rows import DAY, minute_of_day, number_in, persons_in, rows_by_the_clock
from liftcalc.fieldwork.faults import Fault, FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError, quoted, read_bytes
from liftcalc.formulas.capacity import hourly_flow_from_count
from liftcalc.levels import Capacity
from liftcalc.uncertainty import count_against_bound
from liftcalc.units import PlainError, Q

COLUMNS = ("from", "minutes", "persons", "stop_seconds", "people_waited", "note")
WAITED = ("yes", "no", "some")
# of gaps, where stops are in the count: the wide end of 1.5 to 1.75, as simulated days of a rope tow have it
SPREAD_WITH_STOPS = Q(1.75, "")
ENOUGH_CLEAN = 10  # clean single minutes from which the spread of the gaps can be told


@dataclass(frozen=True)
class CountedMinutes:
    """One row: from when, how long [min], how many, how much of it the lift stood [s], whether people waited."""

    begin: int
    minutes: float
    persons: int
    stop_seconds: float
    waited: str | None
    row: int
    stops_told: bool = True

    @property
    def end(self):
        """When it ends [min of the day]."""
        return self.begin + self.minutes


@dataclass(frozen=True)
class MinuteCounts:
    """All rows of a count, in the order of the clock.

    Parameters
    ----------
    name : str
        Name of the file.
    rows : tuple of CountedMinutes
        What was counted; minutes that are missing were not counted.
    refill : float
        How long after a row with a stop no row is clean [min].
    """

    name: str
    rows: tuple
    refill: float = 0.0

    def after_stops(self, refill):
        """Return the same count, its rows clean only from a while after each stop, such as the ride time of a rope tow.

        A stop empties a rope tow, and nobody is at the top before the next ride has ended.
        """
        return replace(self, refill=refill.m_as("minute"))

    @property
    def clean(self):
        """Rows in which the lift did not stand, and that no refill touches."""
        ends = [row.end for row in self.rows if row.stop_seconds]
        return tuple(
            row
            for row in self.rows
            if not row.stop_seconds and not any(end <= row.begin < end + self.refill for end in ends)
        )

    @property
    def stops_told(self):
        """Whether it was written down, in any row, if the lift stood; else whether rows are clean is not known."""
        return any(row.stops_told for row in self.rows)

    @property
    def stopped(self):
        """Whether the lift stood in any row."""
        return any(row.stop_seconds for row in self.rows)

    @staticmethod
    def total(rows):
        """Return persons and time of some rows together."""
        return Q(float(sum(row.persons for row in rows)), "person"), Q(
            float(sum(row.minutes for row in rows)), "minute"
        )

    def rate(self, clean=False):
        """Return persons an hour by the clock, or of the clean rows alone; refuse a count without any."""
        rows = self.clean if clean else self.rows
        if not rows:
            raise PlainError(f"{self.name}: no row without a stop. Count on, or take the rate by the clock.")
        return Capacity(hourly_flow_from_count(*self.total(rows)), "counted")

    @property
    def spread_of_gaps(self):
        """Standard deviation of the times between riders over their mean; None where too few clean minutes tell it.

        It is the root of variance over mean of the counts of single clean minutes.
        """
        single = [row.persons for row in self.clean if row.minutes == 1]
        if len(single) < ENOUGH_CLEAN or not sum(single):
            return None
        spread = math.sqrt(np.var(single, ddof=1) / np.mean(single))
        return Q(float(spread), "") if spread > 0 else None

    @property
    def best_two_minutes(self):
        """Persons of the best two single minutes that follow on one another; None where there are none."""
        pairs = [
            one.persons + other.persons
            for one, other in zip(self.rows, self.rows[1:], strict=False)
            if one.minutes == other.minutes == 1 and other.begin == one.end
        ]
        return max(pairs, default=None)

    @property
    def waited(self):
        """Whether people stood waiting: yes or no where every row says so, some where they differ, None if not said."""
        said = {row.waited for row in self.rows}
        return said.pop() if len(said) == 1 else "some" if said - {None} else None

    def against(self, bound, packing=None, persons_per_carrier=None):
        """Return the count by the clock held against an ideal or governed capacity, with its doubt.

        With a stop in it the doubt is that of riders who come in lumps; gaps of clean minutes would make it too small.
        """
        return count_against_bound(
            *self.total(self.rows), bound, packing=packing,
            spread_of_gaps=SPREAD_WITH_STOPS if self.stopped else self.spread_of_gaps,
            persons_per_carrier=persons_per_carrier,
        )  # fmt: skip


def read_counts(path):
    """Read a count minute by minute. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns from, minutes, persons, stop_seconds, people_waited and note, in any order: the time
        of the clock such as 10:05, how many minutes, how many persons, how many seconds of them the lift stood, and
        yes, no or some. Notes are not read. Encodings and marks as for ``read_sheet``.

    Returns
    -------
    MinuteCounts
        The rows in the order of the clock.

    Raises
    ------
    FieldFileError
        If the file cannot be read or holds no count.
    FieldSheetError
        If cells cannot be read, or rows overlap. The message tells all of them.
    """
    return counts_from_bytes(*read_bytes(path, (".csv",), "a count minute by minute"))


def counts_from_bytes(name, raw):
    """Return the count in a file that came as bytes, such as by a button. See ``read_counts``."""
    rows, faults = rows_by_the_clock(name, raw, COLUMNS[:3], "a count minute by minute", COLUMNS, _row)
    for one, other in zip(rows, rows[1:], strict=False):
        if other.begin < one.end - 1e-9:
            faults.append(
                Fault(other.row, "from", f"these minutes overlap with those of row {one.row}. Count each once.")
            )
    if faults:
        raise FieldSheetError(name, sorted(faults, key=lambda fault: fault.row))
    if not rows:
        raise FieldFileError(f"{name}: nothing was counted. Write a row such as: 10:00,1,17,0,yes,")
    return MinuteCounts(name, tuple(rows))


def _row(row, decimal_comma):
    """Return one row, or say which cell of it is wrong."""
    cells, begin = row.cells, minute_of_day(row.cells)
    minutes = number_in(cells, "minutes", decimal_comma)
    if not 0 < minutes <= DAY:
        raise CellFault("minutes", f"must be greater than 0, but got {cells['minutes']}. Write how long was counted.")
    persons = persons_in(cells, decimal_comma)
    told = bool(cells.get("stop_seconds"))
    stood = number_in(cells, "stop_seconds", decimal_comma) if told else 0.0
    if not 0 <= stood <= 60 * minutes:
        raise CellFault(
            "stop_seconds",
            f"must lie from 0 to {60 * minutes:g}, but got {cells['stop_seconds']}. Write the rest into the next row.",
        )
    waited = cells.get("people_waited", "").casefold() or None
    if waited not in (*WAITED, None):
        raise CellFault("people_waited", f"must be yes, no or some, but got {quoted(cells['people_waited'])}.")
    return CountedMinutes(begin, minutes, persons, stood, waited, row.number, told)


def minutes_to_count(rate, spread_of_gaps, good_to=0.05):
    """Return how long to count so that 95 counts in 100 lie within a part of the truth, while the lift runs.

    Parameters
    ----------
    rate : Quantity [person/hour]
        What passes.
    spread_of_gaps : Quantity []
        Standard deviation of the times between riders over their mean; 1 where riders come without any order.
    good_to : float
        The part, such as 0.05.

    Returns
    -------
    Quantity [minute]
        By the relative doubt of a count of n, spread / sqrt(n), with the coverage factor 1.96.
    """
    if not 0 < good_to < 1:
        raise PlainError(
            f"minutes_to_count: good_to must lie between 0 and 1, but got {good_to:g}. Write 0.05 for 5 %."
        )
    persons = (1.96 * spread_of_gaps.m_as("") / good_to) ** 2
    return (Q(persons, "person") / rate).to("minute")
