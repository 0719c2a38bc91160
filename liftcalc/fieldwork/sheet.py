"""The sheet of one lift line: facts once, readings any number of times, one row each. Nothing is altered.

Here its rows are read, cell by cell. What needs to know the kinds of lifts, such as a reading that lifts of this kind
have not, is looked at in ``liftcalc.lifts.sheet``.
"""

import math
import re
from dataclasses import dataclass, field

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.cells import CellFault, is_empty, read_fact, read_value
from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.faults import Fault, guess
from liftcalc.fieldwork.safe_files import FieldFileError, quoted, read_bytes
from liftcalc.quantity_text import show
from liftcalc.tables import Table
from liftcalc.uncertainty import Estimate
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY, name_of, words_of

COLUMNS = ("quantity", "value", "unit", "plus_minus", "method", "note")
FORM = ",".join(COLUMNS)
_OTHER_UNIT = {"m/s": "mph", "m": "ft", "kW": "hp", "m/s**2": "ft/s**2", "N": "lbf", "kg": "lb"}  # beside the mean
LONG = 90  # seconds: from here on a time is said in minutes, too
FAR_APART = 1.5  # times as large: repeats of one reading are hardly so


@dataclass(frozen=True)
class Reading:
    """One row of the sheet.

    Parameters
    ----------
    name : str
        Name of the quantity in the vocabulary.
    value : Quantity
        The reading in the unit of its row.
    plus_minus : Quantity or None
        Half-width of the doubt, in the same unit; None where the cell is empty.
    method, note : str
        As written.
    row : int
        Row of the sheet, counted as a spreadsheet does.
    """

    name: str
    value: Quantity
    plus_minus: Quantity | None
    method: str
    note: str
    row: int


@dataclass(frozen=True)
class FieldSheet:
    """One sheet: what it says of one lift line.

    Parameters
    ----------
    name : str
        Name of the file.
    facts : dict of str to str
        Facts by name, such as "kind"; what was not read is not there.
    readings : tuple of Reading
        All readings, in the order of the sheet.
    rows : dict of str to int
        Row of each fact.
    encoding : str
        What the bytes of the file were taken for.
    decimal_comma : bool
        Whether semicolons part its cells.
    """

    name: str
    facts: dict
    readings: tuple
    rows: dict = field(default_factory=dict)
    encoding: str = "UTF-8"
    decimal_comma: bool = False

    @property
    def line(self):
        """Name of the line: as the sheet says it, or that of the file."""
        return self.facts.get("line") or self.facts.get("lift") or self.name.rpartition(".")[0] or self.name

    @property
    def lift(self):
        """Name of the lift that the line belongs to: as the sheet says it, or the line's own."""
        return self.facts.get("lift") or self.line

    @property
    def title(self):
        """Name of the line, and of the lift where that is another."""
        return self.line if self.lift == self.line else f"{self.line} of {self.lift}"

    @property
    def kind(self):
        """Kind of the lift, or None where it was not read."""
        return self.facts.get("kind")

    @property
    def level(self):
        """Level of the spacing: ideal where the sheet does not say it."""
        return self.facts.get("level_of_spacing", "ideal")

    @property
    def how_read(self):
        """A sentence on what the file was taken for, where it is not the usual; else empty."""
        commas = " with semicolons and decimal commas" if self.decimal_comma else ""
        return f"Read as {self.encoding}{commas}." if commas or self.encoding != "UTF-8" else ""

    def of(self, called):
        """Return the readings of one quantity, by its name or its words, in the order of the sheet."""
        name = name_of(called)
        if name in FACTS:
            raise PlainError(f"FieldSheet: {called!r} is a fact and no reading. Write sheet.facts.get({name!r}).")
        if name not in ON_A_SHEET:
            raise PlainError(f"FieldSheet: {called!r} is no quantity of a sheet.{guess(called)}")
        return tuple(reading for reading in self.readings if reading.name == name)

    def has(self, *called):
        """Return whether there is a reading of each of the quantities."""
        return all(self.of(each) for each in called)

    def mean(self, called):
        """Return the plain mean of all readings of one quantity, in the unit of the vocabulary or in percent.

        Raises
        ------
        FieldFileError
            If the sheet has no reading of it.
        """
        name, readings = name_of(called), self.of(called)
        if not readings:
            raise FieldFileError(f"{self.name}: {words_of(name)} not read. Add a row such as: {example_row(name)}")
        unit = self._unit(readings)
        return Q(float(np.mean(self._sizes(readings, unit))), unit)

    def means(self, names=None):
        """Return the means of all quantities that were read, or of those among the names, by name."""
        read = dict.fromkeys(reading.name for reading in self.readings)
        return {name: self.mean(name) for name in read if names is None or name in names}

    @staticmethod
    def _unit(readings):
        """Return the unit in which readings of one quantity are averaged; a share stays in percent if it came so."""
        unit = VOCABULARY[readings[0].name].unit
        return (
            "percent"
            if unit == "" and all(reading.value.units == Q(1, "percent").units for reading in readings)
            else unit
        )

    @staticmethod
    def _sizes(readings, unit):
        return [reading.value.m_as(unit) for reading in readings]

    def estimate(self, called):
        """Return the mean of a quantity with its doubt; None where nothing says how far it may be off.

        The doubt is the larger of two: the scatter of the repeats over the square root of their number, and the mean
        half-width over the square root of three. The second is not divided by the number of readings, since it may be
        common to all of them.

        Returns
        -------
        Estimate or None
            Of rectangular shape where the half-width decides, else normal; in the unit of the vocabulary.
        """
        mean, readings = self.mean(called), self.of(called)
        unit = mean.units
        widths = [reading.plus_minus.m_as(unit) for reading in readings if reading.plus_minus is not None]
        stated = float(np.mean(widths)) / math.sqrt(3) if widths else 0.0
        scatter = (
            float(np.std(self._sizes(readings, unit), ddof=1)) / math.sqrt(len(readings)) if len(readings) > 1 else 0.0
        )
        if max(stated, scatter) <= 1e-12 * mean.magnitude:
            return None
        shape = "rectangular" if stated >= scatter else "normal"
        return Estimate(mean, Q(max(stated, scatter), unit), method=self.method(called), shape=shape)

    def method(self, called):
        """Return how a quantity was taken: the first method that its rows name."""
        return next((reading.method for reading in self.of(called) if reading.method), "")

    def far_apart(self):
        """Return the quantities, by name, whose repeats lie further apart than readings of one thing do.

        That is half as far again as the smallest, or further than both plus-minus together reach.

        Returns
        -------
        dict of str to tuple of Quantity
            The smallest and the largest reading.
        """
        found = {}
        for name in dict.fromkeys(reading.name for reading in self.readings if reading.name not in COUNTED_ANEW):
            readings = sorted(self.of(name), key=lambda reading: reading.value)
            low, high = readings[0], readings[-1]
            stated = None not in (low.plus_minus, high.plus_minus)
            beyond = stated and high.value - low.value > (low.plus_minus + high.plus_minus) * (1 + 1e-9)
            if beyond or high.value > FAR_APART * low.value:
                found[name] = (low.value, high.value)
        return found

    @property
    def assumed(self):
        """Names of the quantities of which a row says that it is assumed."""
        said = (reading.name for reading in self.readings if reading.method.casefold().startswith("assumed"))
        return tuple(dict.fromkeys(said))

    @property
    def counted(self):
        """Persons and time of all counts together; None where nothing was counted."""
        if not self.has("persons_counted", "counting_time"):
            return None
        return tuple(
            Q(float(sum(self._sizes(self.of(name), VOCABULARY[name].unit))), VOCABULARY[name].unit)
            for name in ("persons_counted", "counting_time")
        )


def example_row(name):
    """Return a row of a sheet that holds a quantity, as one would write it."""
    taken, unit = VOCABULARY[name].taken, VOCABULARY[name].unit
    written = taken.units.split("  ")[0] or ("" if unit == "" else unit)
    how = {"assumed": "assumed", "asked": "asked of the operator"}.get(taken.who[0], "")
    return f"{words_of(name)},...,{written},,{how},"


_OTHER_FORMS = {  # columns that a sheet has not: what the file is
    "installation": "a table of several lifts",
    "reading": "a table of readings of several lines",
    "lap": "a table of lap times",
    "persons": "a count minute by minute",
}


def rows_of_sheet(name, raw):
    """Return the rows of a sheet that came as bytes; say so where it is a table of another form."""
    rows = rows_from_bytes(name, raw, (), "a sheet", COLUMNS)
    found = next((what for column, what in _OTHER_FORMS.items() if column in rows.columns), None)
    if found and "quantity" not in rows.columns:
        raise FieldFileError(
            f"{name}: this is {found}, and no sheet of one lift line. A sheet has a row for each fact and reading, and "
            f"its first row is: {FORM}"
        )
    rows.require(COLUMNS)
    twice = next((column for column in COLUMNS if rows.columns.count(column) > 1), None)
    if twice:
        raise FieldFileError(f"{name}, row {rows.heading}: the column {twice!r} comes twice. Keep one of the two.")
    return rows


def sheet_of_rows(rows):
    """Return the sheet that the rows of a table hold, and all the faults of its cells.

    Parameters
    ----------
    rows : Rows
        As ``rows_of_sheet`` returns them.

    Returns
    -------
    FieldSheet, list of Fault
    """
    facts, places, readings, faults = {}, {}, [], []
    for row in rows.rows:
        cells = row.cells
        name = name_of(cells["quantity"])
        try:
            _check_row(rows, row, cells, name)
            if is_empty(cells["value"]):
                _check_nothing_shifted(name, cells)
                continue
            if name in FACTS:
                if name in places:
                    raise CellFault(
                        "quantity", f"{words_of(name)} came before, in row {places[name]}. Keep one of the two."
                    )
                places[name] = row.number
                facts[name] = read_fact(VOCABULARY[name], cells["value"])
            else:
                value, half_width = read_value(VOCABULARY[name], cells, rows.decimal_comma)
                _check_level(name, cells["method"])
                readings.append(Reading(name, value, half_width, cells["method"], cells["note"], row.number))
        except CellFault as fault:
            faults.append(Fault(row.number, fault.column, str(fault)))
    faults += _counted_in_two_ways(readings)
    faults += _unpaired(readings) if not any(fault.column == "value" for fault in faults) else []
    sheet = FieldSheet(rows.name, facts, tuple(readings), places, rows.encoding, rows.decimal_comma)
    return sheet, faults


def _check_row(rows, row, cells, name):
    """Refuse a row whose cells have shifted, or whose quantity is not known."""
    if not rows.decimal_comma and cells["value"].isdigit() and cells["unit"].isdigit():
        whole, part = cells["value"], cells["unit"]
        raise CellFault(
            "value",
            f"'{whole},{part}' was read as two cells, because commas part the cells of this sheet. Write "
            f"{whole}.{part} with a decimal point.",
        )
    if any(row.spare):
        raise CellFault(
            rows.columns[-1],
            f"the row has {len(rows.columns) + len(row.spare)} cells, but the heading has {len(rows.columns)}. Put a "
            "text that holds a comma between quotation marks, and write decimals with a point.",
        )
    if not cells["quantity"]:
        raise CellFault("quantity", "no quantity stands in this row. Write one, or empty the row.")
    if name not in ON_A_SHEET:
        remark = "" if cells["value"] else " A remark goes into the column note of another row."
        asked = guess(cells["quantity"]) or remark
        raise CellFault("quantity", f"{quoted(cells['quantity'])} is no quantity of a sheet.{asked}")


def _check_nothing_shifted(name, cells):
    """Refuse a row without a value in which a later cell holds what looks like one."""
    later = ("unit", "plus_minus") if name in FACTS else ("plus_minus",)
    column = next((column for column in later if cells[column]), None)
    if column:
        raise CellFault(
            "value",
            f"the value is empty, but {quoted(cells[column])} stands in the column {column}. Write it in its own.",
        )


def level_in(method):
    """Return the level that the words of a method name; None where they name none, or several."""
    levels = VOCABULARY["level_of_spacing"].among
    found = {word for word in re.findall(r"[a-z]+", method.casefold()) if word in levels}
    return found.pop() if len(found) == 1 else None


def _check_level(name, method):
    """Refuse a figure of the maker that does not say of which level it is."""
    if name == "hourly_capacity" and level_in(method) is None:
        levels = ", ".join(VOCABULARY["level_of_spacing"].among)
        raise CellFault(
            "method", f"an hourly capacity needs its level, but got {quoted(method)}. Write one of {levels}."
        )


COUNTED_ANEW = ("persons_counted", "counting_time", "riders_on_line")  # each time another number


def _counted_in_two_ways(readings):
    """Return the faults of what is there once, such as places, and was counted twice with two results."""
    first, found = {}, []
    for reading in readings:
        if VOCABULARY[reading.name].whole and reading.name not in COUNTED_ANEW:
            before = first.setdefault(reading.name, reading)
            if before.value != reading.value:
                words = f"{words_of(reading.name)} of {show(reading.value)} came after {show(before.value)} in row"
                found.append(Fault(reading.row, "value", f"{words} {before.row}. Count once more, and keep one."))
    return found


def _unpaired(readings):
    """Return the fault of a count without its time, or of a time without its count, where only some are paired."""
    persons, times = (
        [reading for reading in readings if reading.name == name] for name in ("persons_counted", "counting_time")
    )
    if not persons or not times or len(persons) == len(times):
        return []
    longer = max(persons, times, key=len)
    alone, lacks = longer[min(len(persons), len(times))], "counting time" if longer is persons else "persons counted"
    return [Fault(alone.row, "quantity", f"{words_of(alone.name)} without a row of {lacks}. Write both, in pairs.")]


def bytes_of_sheet(path):
    """Return name and bytes of a file that should hold a sheet."""
    return read_bytes(path, (".csv",), "a sheet")


def summary(sheet):
    """Return a table of what a sheet holds: how many readings of each quantity, their mean and their spread."""
    rows = []
    for name, mean in sorted(sheet.means().items(), key=lambda item: ON_A_SHEET.index(item[0])):
        word, readings, unit = VOCABULARY[name], sheet.of(name), mean.units
        other = _OTHER_UNIT.get(word.unit) or ("minute" if word.unit == "s" and mean.m_as("s") >= LONG else None)
        sizes = Q([reading.value.m_as(unit) for reading in readings], unit)
        spread = f"{show(sizes.min())} to {show(sizes.max())}" if len(readings) > 1 else "one reading"
        rows.append((word.words, str(len(readings)), show(mean), show(mean, other) if other else "", spread))
    kind = f", a {sheet.kind}" if sheet.kind else ""
    caption = f"Readings of {sheet.title}{kind} ({sheet.name})" + (f". {sheet.how_read}" if sheet.how_read else "")
    return Table(caption, ("quantity", "readings", "mean", "the same", "from and to"), rows)
