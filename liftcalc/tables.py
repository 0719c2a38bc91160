"""What prints alike everywhere: a small table with caption and marked headings, a few lines of text, a table as CSV."""

import csv
import io
from dataclasses import dataclass
from html import escape

from liftcalc.units import PlainError

SHORT = 12  # letters of a cell that is never broken


@dataclass(frozen=True)
class Table:
    """A caption, the headings of the columns, and rows of text.

    A class of our own: caption and heading marks are there, and no stored output depends on a version of pandas.

    Parameters
    ----------
    caption : str
        What the table shows.
    columns : tuple of str
        Headings.
    rows : list of tuple of str
        Cells; the first of each row is its heading.

    Raises
    ------
    PlainError
        If a row has not as many cells as there are columns.
    """

    caption: str
    columns: tuple
    rows: list

    def __post_init__(self):
        for row in self.rows:
            if len(row) != len(self.columns):
                raise PlainError(f"Table: a row has {len(row)} cells, but there are {len(self.columns)} columns: {row}")

    def frame(self):
        """Return the table as a pandas DataFrame of text."""
        import pandas

        return pandas.DataFrame([list(row) for row in self.rows], columns=list(self.columns))

    def __repr__(self):
        lines = [self.columns, *self.rows]
        widths = [max(len(str(line[place])) for line in lines) for place in range(len(self.columns))]
        text = ["  ".join(str(cell).ljust(width) for cell, width in zip(line, widths, strict=True)) for line in lines]
        return "\n".join([self.caption, *[line.rstrip() for line in text]])

    def _repr_html_(self):
        return f'<table><caption style="text-align:left">{escape(self.caption)}</caption>{self._cells()}</table>'

    def _cells(self):
        """Return headings and rows as HTML."""
        head = "".join(f'<th scope="col" style="text-align:left">{escape(str(name))}</th>' for name in self.columns)
        body = "".join(
            f'<tr><th scope="row" style="text-align:left">{escape(str(row[0]))}</th>'
            + "".join(f'<td style="text-align:left">{_unbroken(cell)}</td>' for cell in row[1:])
            + "</tr>"
            for row in self.rows
        )
        return f"<thead><tr>{head}</tr></thead><tbody>{body}</tbody>"


class FoldedTable(Table):
    """A table that starts folded in a page; its caption unfolds it."""

    def _repr_html_(self):
        name = escape(self.caption)
        return f'<details><summary>{name}</summary><table aria-label="{name}">{self._cells()}</table></details>'


def _unbroken(cell):
    """Return a cell as HTML; a short one, such as a number with its unit, stays on one line."""
    text = escape(str(cell))
    return text.replace(" ", "&nbsp;") if len(str(cell)) <= SHORT else text


class Lines:
    """A few lines of text that a notebook shows as such."""

    def __init__(self, *lines):
        self.lines = lines

    def __repr__(self):
        return "\n".join(self.lines)

    def _repr_html_(self):
        look = "max-width:46em;font-size:15px;line-height:1.4;margin:0 0 5px"
        return "".join(f"<div style='{look}'>{escape(line)}</div>" for line in self.lines)


class Folded(Lines):
    """A few lines of text that start folded in a page, and print open.

    Parameters
    ----------
    heading : str
        What stands above them, and unfolds them.
    *lines : str
        The lines.
    """

    def __init__(self, heading, *lines):
        super().__init__(*lines)
        self.heading = heading

    def __repr__(self):
        return f"{self.heading}\n{super().__repr__()}"

    def _repr_html_(self):
        return f"<details><summary>{escape(self.heading)}</summary>{super()._repr_html_()}</details>"


class TableAndLines:
    """A table, and lines of text below it.

    Parameters
    ----------
    table : Table
    *lines : str
    """

    def __init__(self, table, *lines):
        self.table, self.lines = table, lines

    def __repr__(self):
        return "\n".join([repr(self.table), *self.lines])

    def _repr_html_(self):
        return self.table._repr_html_() + Lines(*self.lines)._repr_html_()


_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def safe_in_a_spreadsheet(cell):
    """Return a cell as text that no spreadsheet takes for a formula."""
    text = str(cell)
    return f"'{text}" if text.lstrip().startswith(_FORMULA_STARTS) else text


def csv_text(columns, rows):
    """Return a table as CSV text, each cell safe in a spreadsheet."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows([[safe_in_a_spreadsheet(cell) for cell in row] for row in rows])
    return text.getvalue()
