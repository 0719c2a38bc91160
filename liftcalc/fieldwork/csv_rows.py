"""The cells of a table from outside, row by row as a spreadsheet program numbers them."""

import csv
import io
from dataclasses import dataclass

from liftcalc.fieldwork.safe_files import FieldFileError, decode_table, quoted, read_bytes

MOST_ROWS = 20_000


@dataclass(frozen=True)
class Row:
    """One row below the heading.

    Parameters
    ----------
    number : int
        As a spreadsheet program shows it: the heading is 1 where nothing stands above it, and empty rows count.
    cells : dict of str to str
        Text of each cell by its column, without blanks around it; empty where the row is too short.
    spare : tuple of str
        Cells behind the last column of the heading.
    """

    number: int
    cells: dict
    spare: tuple = ()


@dataclass(frozen=True)
class Rows:
    """All rows of a table that hold something.

    Parameters
    ----------
    name : str
        Name of the file.
    columns : tuple of str
        Columns of the heading, in small letters, with "_" for a blank.
    heading : int
        Number of the row of the heading.
    rows : tuple of Row
        The rows.
    decimal_comma : bool
        Whether semicolons part the cells, and a comma is the mark of decimals.
    encoding : str
        "UTF-8", "UTF-16" or "Windows-1252": what the bytes were taken for.
    written : str
        The heading as it came.
    """

    name: str
    columns: tuple
    heading: int
    rows: tuple
    decimal_comma: bool
    encoding: str
    written: str = ""

    def require(self, columns, form=None):
        """Refuse a table whose heading lacks one of the columns; ``form`` holds those that a message tells to write."""
        missing = [column for column in columns if column not in self.columns]
        if missing:
            tabs = " Tabs part its cells: save it as CSV." if "\t" in self.written else ""
            raise FieldFileError(
                f"{self.name}, row {self.heading}: the column {missing[0]!r} is missing; the heading row reads "
                f"{quoted(self.written, 200)}.{tabs} Write: {','.join(form or columns)}"
            )


def read_rows(path, columns, what, form=None):
    """Read a table from a file that is only read, never written.

    Parameters
    ----------
    path : str or Path
        A file whose name ends in .csv, in UTF-8 with or without mark, UTF-16 or Windows-1252. Commas part its cells; or
        semicolons, and then a comma is the mark of decimals.
    columns : tuple of str
        Columns that the heading must have, in any order.
    what : str
        What the file should hold, for the messages.
    form : tuple of str or None
        All columns that a message tells to write, where some of them may be left out.

    Returns
    -------
    Rows

    Raises
    ------
    FieldFileError
        As ``read_bytes``; and if it is no text, has no heading or too many rows, lacks a column, or if quotation marks
        do not close.
    """
    return rows_from_bytes(*read_bytes(path, (".csv",), what), columns, what, form)


def rows_from_bytes(name, raw, columns, what, form=None):
    """Return the rows of a table that came as bytes, such as by a button. See ``read_rows``."""
    text, encoding = decode_table(name, raw, what)
    return rows_from_text(name, text, columns, form, encoding)


def rows_from_text(name, text, columns, form=None, encoding="UTF-8"):
    """Return the rows of a table that is text already. See ``read_rows``."""
    first = next((line for line in text.splitlines() if line.strip(" ,;\t")), "")
    decimal_comma = first.count(";") > first.count(",")
    cells = _cells(name, text, ";" if decimal_comma else ",")
    write = ",".join(form or columns)
    above = next((number for number, row in enumerate(cells) if any(row)), None)
    if above is None:
        raise FieldFileError(f"{name}: the sheet is empty. Its first row must be: {write}")
    heading = tuple("_".join(cell.casefold().replace("-", " ").replace("_", " ").split()) for cell in cells[above])
    rows = tuple(
        Row(number, dict(zip(heading, [*row, *[""] * len(heading)], strict=False)), tuple(row[len(heading) :]))
        for number, row in enumerate(cells[above + 1 :], start=above + 2)
        if any(row)
    )
    found = Rows(name, heading, above + 1, rows, decimal_comma, encoding, ", ".join(cells[above]))
    found.require(columns, form)
    return found


def _cells(name, text, mark):
    """Return the cells of every row, without blanks around them."""
    reader, cells = csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True), []
    try:
        for row in reader:
            cells.append([cell.strip() for cell in row])
            if len(cells) > MOST_ROWS:
                raise FieldFileError(f"{name}: the file holds more than {MOST_ROWS:,} rows, the most that is read.")
    except csv.Error as error:
        raise FieldFileError(
            f"{name}, row {len(cells) + 1}: the quotation marks do not close, or a cell is endless ({error}). "
            "Remove or double the marks."
        ) from None
    return cells
