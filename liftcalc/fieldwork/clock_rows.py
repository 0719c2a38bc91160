"""Rows that begin at a time of the clock, as someone wrote them down beside a lift: what their cells hold."""

import difflib
import re

from liftcalc.fieldwork.cells import CellFault
from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.faults import Fault
from liftcalc.fieldwork.safe_files import FieldFileError, quoted
from liftcalc.quantity_text import read_number
from liftcalc.units import PlainError

DAY, MOST_IN_A_ROW = 24 * 60, 20_000  # minutes, persons
_TIME = re.compile(r"([01]?[0-9]|2[0-3]):([0-5][0-9])")


def rows_by_the_clock(name, raw, columns, what, form, read_row):
    """Return what stands in the rows of a table, in the order of the clock, and the faults of the others.

    Parameters
    ----------
    name, raw, columns, what, form
        As for ``rows_from_bytes``.
    read_row : function
        From a ``Row``, and whether a comma is the mark of decimals, to a record with ``begin``; it raises
        ``CellFault``.

    Returns
    -------
    tuple of list
        Records, and faults.
    """
    table, rows, faults = rows_from_bytes(name, raw, columns, what, form), [], []
    for column in table.columns:
        if column and column not in form:  # what stands there would be left out without a word
            near = difflib.get_close_matches(column, form, n=1, cutoff=0.4)
            meant = f"Is {near[0]!r} meant? " if near else ""
            raise FieldFileError(
                f"{name}, row {table.heading}: {column!r} is no column of {what}. {meant}Write: {','.join(form)}"
            )
    for row in table.rows:
        try:
            rows.append(read_row(row, table.decimal_comma))
        except CellFault as fault:
            faults.append(Fault(row.number, fault.column, str(fault)))
    return sorted(rows, key=lambda row: row.begin), faults


def minute_of_day(cells):
    """Return the minute of the day in the column "from"."""
    clock = _TIME.fullmatch(cells["from"])
    if not clock:
        raise CellFault(
            "from", f"{quoted(cells['from'])} is no time of the clock. Write hours and minutes, such as 10:05."
        )
    return 60 * int(clock[1]) + int(clock[2])


def number_in(cells, column, decimal_comma):
    """Return the number in a column."""
    if not cells[column]:
        raise CellFault(column, f"is empty. Write {_AN_EXAMPLE[column]}.")
    try:
        return read_number(cells[column], decimal_comma)
    except PlainError as error:
        raise CellFault(column, str(error)) from None


_AN_EXAMPLE = {
    "minutes": "how many, such as 20",
    "persons": "a whole number, such as 17",
    "stop_seconds": "how many seconds it stood, such as 40",
}


def persons_in(cells, decimal_comma):
    """Return the persons in the column "persons": a whole number, or none."""
    if cells["persons"] and not any(letter.isdigit() for letter in cells["persons"]):
        raise CellFault("persons", f"{quoted(cells['persons'])} is no number. Write a whole one, such as 17.")
    persons = number_in(cells, "persons", decimal_comma)
    if persons < 0 or persons != round(persons):
        raise CellFault("persons", f"must be a whole number, zero or more, but got {cells['persons']}.")
    if persons > MOST_IN_A_ROW:
        raise CellFault("persons", f"{persons:,.0f} in one row is more than anybody believes. Look at it again.")
    return int(persons)
