"""A table of arrivals: how many joined a line, row by row of the clock, as someone wrote it down."""

from dataclasses import dataclass

import numpy as np

from liftcalc.fieldwork.cells import CellFault
from liftcalc.fieldwork.clock_rows import DAY, minute_of_day, number_in, persons_in, rows_by_the_clock
from liftcalc.fieldwork.faults import FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError, read_bytes

COLUMNS = ("from", "minutes", "persons", "note")
WHAT = "a table of arrivals"
MINUTE = 60.0  # seconds


@dataclass(frozen=True, eq=False)
class Arrivals:
    """Who joined a line, in the order of the clock; rows may overlap, and then add up.

    Parameters
    ----------
    name : str
        Name of the file.
    opens : int
        When the first row begins [min of the day].
    begins : ndarray
        When each row begins [s since the first one].
    lasts : ndarray
        How long each row lasts [s]; in a row of zero, a batch, all come at once.
    persons : ndarray
        How many come in each row.
    """

    name: str
    opens: int
    begins: np.ndarray
    lasts: np.ndarray
    persons: np.ndarray

    def clock(self, time):
        """Return the time of the clock, such as 9:20, of some seconds since the first row began."""
        hours, minutes = divmod(self.opens + round(time / MINUTE), 60)
        return f"{hours % 24}:{minutes:02}"


@dataclass(frozen=True)
class _Row:
    """One row: from when [min of the day], for how long [min], how many."""

    begin: int
    minutes: float
    persons: int


def read_arrivals(path):
    """Read a table of arrivals. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns from, minutes and persons, and note if wanted, in any order: the time of the clock
        such as 10:05, for how many minutes people kept coming, and how many came. A group that comes at once, such as
        a bus, has zero minutes. Rows may overlap: their persons add up. Notes are not read. Encodings and marks as for
        ``read_sheet``.

    Returns
    -------
    Arrivals
        The rows in the order of the clock.

    Raises
    ------
    FieldFileError
        If the file cannot be read, or if nobody comes.
    FieldSheetError
        If cells cannot be read. The message tells all of them.
    """
    return arrivals_from_bytes(*read_bytes(path, (".csv",), WHAT))


def arrivals_from_bytes(name, raw):
    """Return the arrivals in a file that came as bytes, such as by a button. See ``read_arrivals``."""
    rows, faults = rows_by_the_clock(name, raw, COLUMNS[:3], WHAT, COLUMNS, _row)
    if faults:
        raise FieldSheetError(name, faults)
    if not sum(row.persons for row in rows):
        raise FieldFileError(f"{name}: nobody comes. Write a row such as: 9:00,20,480,opening rush")
    columns = np.array([(row.begin, row.minutes, row.persons) for row in rows], dtype=float).T
    begins, lasts, persons = columns
    return Arrivals(name, rows[0].begin, (begins - begins[0]) * MINUTE, lasts * MINUTE, persons)


def _row(row, decimal_comma):
    """Return one row, or say which cell of it is wrong."""
    begin, minutes = minute_of_day(row.cells), number_in(row.cells, "minutes", decimal_comma)
    if not 0 <= minutes <= DAY:
        raise CellFault(
            "minutes",
            f"must lie from 0 to {DAY}, but got {row.cells['minutes']}. Write for how long they kept coming, and 0 "
            "where all come at once.",
        )
    return _Row(begin, minutes, persons_in(row.cells, decimal_comma))
