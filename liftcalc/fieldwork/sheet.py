"""Readings from a field sheet: one row a reading, repeats allowed, nothing altered."""

import difflib
from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.csv_rows import read_rows
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.formulas.capacity import hourly_capacity, hourly_capacity_from_head_count, hourly_flow_from_count
from liftcalc.levels import Capacity
from liftcalc.quantity_text import read_number, read_unit, show
from liftcalc.tables import Table
from liftcalc.units import PlainError, Q, UnitError

# quantity on the sheet: (kind, unit its mean is given in, units printed on the blank or none, how to take it)
FIELD_QUANTITIES = {
    "line speed": (
        "speed",
        "m/s",
        "m/s  mph  ft/s",
        "time a mark on the rope between two poles; the operator sets both",
    ),
    "ridden length": ("length", "m", "m  ft", "from grab to let-go, along the slope: tape, lift locked out"),
    "sheave distance": ("length", "m", "m  ft", "bottom sheave to top sheave: a map, or ask the operator"),
    "spacing": (
        "length",
        "m",
        "m  ft",
        "rider to rider, from a photo with poles in it; carriers: tape, lift locked out",
    ),
    "vertical rise": ("length", "m", "m  ft", "from a map or the lift's papers"),
    "persons per carrier": ("number of persons", "person", "person", "1 on a tow"),
    "head count": ("number of persons", "person", "person", "riders on the line, from a photo"),
    "ride time": ("time", "s", "s", "one rider, grab to let-go, timed from outside the track"),
    "persons counted": (
        "number of persons",
        "person",
        "person",
        "riders past the top, counted from outside the unload area",
    ),
    "counting time": ("time", "s", "s  min", "how long you counted"),
    "motor power": ("power", "kW", "kW  hp", "ask the operator; never read at the drive"),
    "pick-up acceleration": (
        "acceleration",
        "m/s^2",
        "",
        "how hard riders speed up after the grab; assumed at the desk",
    ),
}
COLUMNS = ("quantity", "value", "unit", "plus_minus", "method", "note")
_OTHER_UNIT = {"m/s": "mph", "m": "ft", "kW": "hp", "m/s^2": "ft/s**2"}  # shown beside the mean
_SPELLED_PLAINLY = {quantity.replace("-", " "): quantity for quantity in FIELD_QUANTITIES}
_WHOLE = ("persons per carrier",)
_MAY_BE_ZERO = ("head count", "persons counted")


class FieldSheetError(FieldFileError):
    """A cell of a field sheet cannot be read; the message names row and column, and says what to write."""


@dataclass(frozen=True)
class Reading:
    """One row of the sheet.

    Parameters
    ----------
    quantity : str
        A key of ``FIELD_QUANTITIES``.
    value : Quantity
        The reading in the unit of the sheet.
    plus_minus : Quantity or None
        Half-width of the doubt, in the same unit; None where the cell is empty.
    method, note : str
        As written.
    row : int
        Row of the sheet, counted as a spreadsheet does.
    """

    quantity: str
    value: Quantity
    plus_minus: Quantity | None
    method: str
    note: str
    row: int


@dataclass(frozen=True)
class FieldSheet:
    """All readings of one sheet."""

    name: str
    readings: tuple

    def of(self, quantity):
        """Return the readings of one quantity, in the order of the sheet."""
        if quantity not in FIELD_QUANTITIES:
            raise PlainError(
                f"FieldSheet: {quantity!r} is no quantity of a sheet. Write one of {', '.join(FIELD_QUANTITIES)}."
            )
        return tuple(reading for reading in self.readings if reading.quantity == quantity)

    def has(self, *quantities):
        """Return whether there is a reading of each of the quantities."""
        return all(self.of(quantity) for quantity in quantities)

    def mean(self, quantity):
        """Return the plain mean of all readings of one quantity.

        Parameters
        ----------
        quantity : str
            A key of ``FIELD_QUANTITIES``.

        Returns
        -------
        Quantity
            The mean, in the unit that ``FIELD_QUANTITIES`` names.

        Raises
        ------
        FieldSheetError
            If the sheet has no reading of it.
        """
        readings = self.of(quantity)
        if not readings:
            _, unit, _, how = FIELD_QUANTITIES[quantity]
            raise FieldSheetError(
                f"{self.name}: no reading of {quantity!r}. Add a row such as: {quantity},1,{unit},,, ({how})."
            )
        unit = FIELD_QUANTITIES[quantity][1]
        return Q(float(np.mean([reading.value.m_as(unit) for reading in readings])), unit)


def summary(sheet):
    """Return a table of what a sheet holds: how many readings of each quantity, their mean and their spread."""
    rows = []
    for quantity, (_, unit, _, _) in FIELD_QUANTITIES.items():
        readings = sheet.of(quantity)
        if readings:
            other = _OTHER_UNIT.get(unit)
            mean = sheet.mean(quantity)
            sizes = Q([reading.value.m_as(unit) for reading in readings], unit)
            spread = f"{show(sizes.min())} to {show(sizes.max())}" if len(readings) > 1 else "one reading"
            rows.append((quantity, str(len(readings)), show(mean), show(mean, other) if other else "", spread))
    return Table(f"Readings of {sheet.name}", ("quantity", "readings", "mean", "the same", "from and to"), rows)


def routes(sheet):
    """Return the hourly figures that a sheet allows, each by its own readings and with its level."""
    persons = sheet.mean("persons per carrier") if sheet.has("persons per carrier") else Q(1, "person")
    found = []
    if sheet.has("line speed", "spacing"):
        flow = hourly_capacity(sheet.mean("line speed"), sheet.mean("spacing"), persons)
        found.append(("line speed and spacing", Capacity(flow, "ideal"), "the line full, no stop, no miss"))
    if sheet.has("head count", "ride time"):
        flow = hourly_capacity_from_head_count(sheet.mean("head count"), sheet.mean("ride time"))
        found.append(("head count and ride time", Capacity(flow, "counted"), "the line as it was in the photos"))
    if sheet.has("persons counted", "counting time"):
        flow = hourly_flow_from_count(sheet.mean("persons counted"), sheet.mean("counting time"))
        found.append(("count at the top", Capacity(flow, "counted"), "what really passed in that time"))
    rows = [(name, show(capacity.value), capacity.level, meaning) for name, capacity, meaning in found]
    return Table(f"People an hour from {sheet.name}", ("route", "people an hour", "level", "what it describes"), rows)


def read_field_sheet(path):
    """Read a field sheet. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns quantity, value, unit, plus_minus, method, note, in any order. Cells are parted by
        commas, with decimal points; or by semicolons, with decimal commas. A byte-order mark, blank lines, and rows
        whose value is still empty are passed over.

    Returns
    -------
    FieldSheet
        The readings, each with its unit.

    Raises
    ------
    FieldSheetError
        If the file or a cell cannot be read. The message names row and column, what came and what to write.
    """
    rows = read_rows(path, COLUMNS, "a field sheet")
    readings = [_reading(rows, row) for row in rows.rows]
    return FieldSheet(rows.name, tuple(reading for reading in readings if reading))


def _reading(rows, row):
    """Return the reading of one row; None where no value was filled in."""
    cells = row.cells

    def fail(column, message):
        raise FieldSheetError(f"{rows.name}, row {row.number}, column {column}: {message}") from None

    if _stray_comma(cells) or any(row.spare):
        raise FieldSheetError(_too_many_cells(rows, row))
    quantity = " ".join(cells["quantity"].casefold().replace("_", " ").replace("-", " ").split())
    quantity = _SPELLED_PLAINLY.get(quantity, quantity)
    if quantity not in FIELD_QUANTITIES:
        near = difflib.get_close_matches(quantity, FIELD_QUANTITIES, n=1)
        guess = f" Is {near[0]!r} meant?" if near else ""
        fail(
            "quantity",
            f"{cells['quantity']!r} is no quantity of this sheet. Write one of: {', '.join(FIELD_QUANTITIES)}.{guess}",
        )
    if not cells["value"]:
        return None
    kind, _, _, _ = FIELD_QUANTITIES[quantity]
    try:
        unit = read_unit(cells["unit"], kind)
    except UnitError as error:
        fail("unit", error)
    numbers = {}
    for column in ("value", "plus_minus"):
        if not cells[column]:
            continue
        try:
            numbers[column] = read_number(cells[column], rows.decimal_comma)
        except ValueError as error:
            fail(column, error)
        zero_is_fine = column == "plus_minus" or quantity in _MAY_BE_ZERO
        if numbers[column] < 0 or (numbers[column] == 0 and not zero_is_fine):
            bound = "must not be negative" if zero_is_fine else "must be greater than zero"
            fail(column, f"{quantity} {bound}, but got {cells[column]}. Write the size without a sign.")
    if quantity in _WHOLE and numbers["value"] != round(numbers["value"]):
        fail("value", f"{quantity} must be a whole number, but got {cells['value']}. Write 1 for a tow.")
    plus_minus = Q(numbers["plus_minus"], unit) if "plus_minus" in numbers else None
    return Reading(quantity, Q(numbers["value"], unit), plus_minus, cells["method"], cells["note"], row.number)


def _stray_comma(cells):
    """Return whether a decimal comma seems to have parted one number into two cells."""
    return cells.get("value", "").isdigit() and cells.get("unit", "").isdigit()


def _too_many_cells(rows, row):
    """Say why a row has more cells than the heading: a decimal comma, or a comma in a note."""
    where = f"{rows.name}, row {row.number}, column"
    if _stray_comma(row.cells):
        whole, part = row.cells["value"], row.cells["unit"]
        return (
            f"{where} value: '{whole},{part}' was read as two cells, because commas part the cells of this sheet. "
            f"Write {whole}.{part} with a decimal point."
        )
    return (
        f"{where} {rows.columns[-1]}: the row has {len(rows.columns) + len(row.spare)} cells, but the heading has "
        f"{len(rows.columns)}. Put a text that holds a comma between quotation marks, and write decimals with a point."
    )
