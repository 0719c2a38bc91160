"""An installation: one or more lines that are run as one lift; and reading installations from a table."""

from dataclasses import dataclass

from liftcalc.fieldwork.csv_rows import read_rows
from liftcalc.levels import Capacity
from liftcalc.lifts.givens import LINE_QUANTITIES
from liftcalc.lifts.line import line_from
from liftcalc.quantity_text import read_number, read_unit
from liftcalc.units import PlainError, Q, kind_of

# column of the table: kind of quantity; a cell holds a number and a unit, such as "3.4 m/s"
_COLUMNS = {name: kind_of(Q(1, quantity.unit)) for name, quantity in LINE_QUANTITIES.items()} | {
    "vertical_rise": "length",
    "motor_power": "power",
    "station_time": "time",
    "dwell_time": "time",
    "pick_up_acceleration": "acceleration",
    "acceleration": "acceleration",
}
_WORDS = ("installation", "line", "kind", "level")
_MUST_STAND = (*_WORDS, "vertical_rise")


@dataclass(frozen=True)
class Installation:
    """One or more lines that stand side by side and are run as one lift.

    Parameters
    ----------
    name : str
        Name of the installation.
    lines : tuple of Line
        Its lines, one or more, all at one level.

    Raises
    ------
    PlainError
        If there is no line, or the lines are of different levels.
    """

    name: str
    lines: tuple

    def __post_init__(self):
        if not self.lines:
            raise PlainError(f"Installation: {self.name!r} has no line. Give at least one Line.")
        names = [line.name for line in self.lines]
        if len(set(names)) < len(names):
            raise PlainError(
                f"Installation: two lines of {self.name!r} have one name. Name each, such as left and right."
            )
        levels = {line.level for line in self.lines}
        if len(levels) > 1:
            raise PlainError(
                f"Installation: the lines of {self.name!r} are of different levels ({', '.join(sorted(levels))}). "
                "Give lines of one level, so that their capacities may be added."
            )

    @property
    def capacity_per_line(self):
        """Capacity of each line, by its name."""
        return {line.name: line.capacity for line in self.lines}

    @property
    def capacity_together(self):
        """Capacity of all lines together; it says how many lines it counts."""
        total = sum((line.capacity.value for line in self.lines[1:]), self.lines[0].capacity.value)
        return Capacity(total, self.lines[0].level, len(self.lines))

    @property
    def motor_power_together(self):
        """Rated power of all motors together; None if one of them is not known."""
        powers = [line.motor_power for line in self.lines]
        return None if any(power is None for power in powers) else sum(powers[1:], powers[0])


def lines_of(installations):
    """Return the lines of several installations, one after another.

    Parameters
    ----------
    installations : dict
        As ``read_lifts`` returns them.

    Returns
    -------
    list of Line
        In the order of the table.
    """
    return [line for installation in installations.values() for line in installation.lines]


def read_lifts(path):
    """Read installations from a CSV table, one line of a lift a row.

    Parameters
    ----------
    path : str or Path
        A table with the columns installation, line, kind, level and vertical_rise, and those of what is known of the
        lines: any of motor_power, station_time, dwell_time, pick_up_acceleration, acceleration and the givens of
        ``line_from``. A cell of a quantity
        holds a number and a unit, "3.4 m/s", or nothing.

    Returns
    -------
    dict
        Installation by its name, in the order of the table.

    Raises
    ------
    PlainError
        If the file cannot be read, a column is missing or not known, a cell cannot be read, or a line does not follow
        from its cells; the message names the row.
    """
    table = read_rows(path, _MUST_STAND, "a table of lifts")
    name, columns = table.name, table.columns
    for column in columns:
        if column not in (*_WORDS, *_COLUMNS):
            raise PlainError(
                f"read_lifts: {name}: column {column!r} is not known. Write one of {', '.join((*_WORDS, *_COLUMNS))}."
            )
    lines = {}
    for number, row in ((each.number, each.cells) for each in table.rows):
        cells = {column: row[column] for column in columns if column in _COLUMNS}
        quantities = {column: _cell(table, number, column, text) for column, text in cells.items() if text}
        if "vertical_rise" not in quantities:
            raise PlainError(f"read_lifts: {name}, row {number}: no vertical_rise. Write it, such as '29.4 m'.")
        try:
            line = line_from(row["line"], row["kind"], level=row["level"], **quantities)
        except ValueError as error:
            raise PlainError(f"read_lifts: {name}, row {number}: {error}") from None
        lines.setdefault(row["installation"], []).append(line)
    return {name: Installation(name, tuple(group)) for name, group in lines.items()}


def _cell(table, row, column, text):
    """Return the quantity in one cell."""
    number, _, unit = text.partition(" ")
    try:
        counted = not unit and _COLUMNS[column] == kind_of(Q(1, ""))  # carriers on the loop: a count has no unit
        return Q(read_number(number, table.decimal_comma), "" if counted else read_unit(unit, _COLUMNS[column]))
    except ValueError as error:
        raise PlainError(f"read_lifts: {table.name}, row {row}, column {column}: {error}") from None
