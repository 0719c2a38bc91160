"""A line of any kind, and an installation of one or more lines, read from a table.

To add a kind of lift, add one entry to ``KINDS``: nothing else in the package names a kind.
"""

import csv
from dataclasses import dataclass, field
from pathlib import Path

from pint import Quantity

from liftcalc.capacity import hourly_capacity, vertical_transport
from liftcalc.levels import Capacity
from liftcalc.line import carriers_on_loop, headway, persons_on_line, ride_time
from liftcalc.quantity_text import read_number, read_unit, show
from liftcalc.tables import Table
from liftcalc.units import Q, UnitError


@dataclass(frozen=True)
class Kind:
    """What is common to all lifts of one kind.

    Parameters
    ----------
    name : str
        Name of the kind, as the trade says it.
    has_carriers : bool
        Whether carriers hang on the loop at a fixed spacing; without them riders choose their own.
    on_the_ground : bool
        Whether riders stay on the snow, also when the lift stops.
    """

    name: str
    has_carriers: bool
    on_the_ground: bool


KINDS = {
    kind.name: kind
    for kind in (
        Kind("rope tow", has_carriers=False, on_the_ground=True),
        Kind("platter lift", has_carriers=True, on_the_ground=True),
        Kind("conveyor", has_carriers=False, on_the_ground=True),
        Kind("fixed chair", has_carriers=True, on_the_ground=False),
    )
}

# column of the table: kind of quantity; a cell holds a number and a unit, such as "3.4 m/s"
_COLUMNS = {
    "line_speed": "speed",
    "spacing": "length",
    "persons_per_carrier": "number of persons",
    "ridden_length": "length",
    "vertical_rise": "length",
    "motor_power": "power",
}


@dataclass(frozen=True)
class Line:
    """One line of a lift: its own rope, speed and motor.

    Parameters
    ----------
    name : str
        Name of the line.
    kind : str
        A key of ``KINDS``.
    line_speed : Quantity [m/s]
        Speed of the haul rope or belt.
    spacing : Quantity [m]
        Distance from one rider, or one carrier, to the next.
    ridden_length : Quantity [m]
        Length along the rope from grab to let-go.
    vertical_rise : Quantity [m]
        Height gained.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier.
    motor_power : Quantity [kW] or None
        Rated power of the motor; None where it is not known.
    level : str
        Level of the spacing, and so of the capacity: "packing", "ideal", "governed" or "counted".

    Raises
    ------
    UnitError
        If a quantity has no unit, or one of another kind.
    ValueError
        If the kind or the level is not known, or a quantity is not greater than zero.
    """

    name: str
    kind: str
    line_speed: Quantity
    spacing: Quantity
    ridden_length: Quantity
    vertical_rise: Quantity
    persons_per_carrier: Quantity = field(default_factory=lambda: Q(1, "person"))
    motor_power: Quantity | None = None
    level: str = "ideal"

    def __post_init__(self):
        if self.kind not in KINDS:
            raise ValueError(f"Line: kind must be one of {', '.join(KINDS)}, but got {self.kind!r}.")
        self.capacity, self.ride_time, self.vertical_transport  # noqa: B018  each refuses what it cannot use
        if self.motor_power is not None:
            power = self.motor_power
            if not isinstance(power, Quantity) or not power.check("[power]") or not power.magnitude > 0:
                raise UnitError(f"Line: motor_power must be a power above zero, but got {power!r}. Write Q(15, 'kW').")

    @property
    def capacity(self):
        """Hourly capacity with its level."""
        return Capacity(hourly_capacity(self.line_speed, self.spacing, self.persons_per_carrier), self.level)

    @property
    def interval(self):
        """Time from one carrier to the next."""
        return headway(self.line_speed, self.spacing)

    @property
    def ride_time(self):
        """Time from grab to let-go."""
        return ride_time(self.ridden_length, self.line_speed)

    @property
    def persons_on_line(self):
        """Average number of riders on the line."""
        return persons_on_line(
            ridden_length=self.ridden_length, spacing=self.spacing, persons_per_carrier=self.persons_per_carrier
        )

    @property
    def carriers_on_loop(self):
        """Carriers on the whole loop, with the ridden length for the sheave distance; None where there are none."""
        return (
            carriers_on_loop(sheave_distance=self.ridden_length, spacing=self.spacing)
            if KINDS[self.kind].has_carriers
            else None
        )

    @property
    def vertical_transport(self):
        """Vertical transport feet per hour."""
        return vertical_transport(self.capacity.value, self.vertical_rise)


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
    ValueError
        If there is no line, or the lines are of different levels.
    """

    name: str
    lines: tuple

    def __post_init__(self):
        if not self.lines:
            raise ValueError(f"Installation: {self.name!r} has no line. Give at least one Line.")
        levels = {line.level for line in self.lines}
        if len(levels) > 1:
            raise ValueError(
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


def read_lifts(path):
    """Read installations from a CSV table, one line of a lift a row.

    Parameters
    ----------
    path : str or Path
        A table with the columns installation, line, kind, level, line_speed, spacing, persons_per_carrier,
        ridden_length, vertical_rise, motor_power. A cell of a quantity holds a number and a unit: "3.4 m/s".

    Returns
    -------
    dict
        Installation by its name, in the order of the table.

    Raises
    ------
    ValueError
        If a column is missing or a cell cannot be read; the message names the row and the column.
    """
    with Path(path).open(encoding="utf-8-sig", newline="") as table:
        rows = list(csv.DictReader(table))
    lines = {}
    for number, row in enumerate(rows, start=2):
        missing = [column for column in ("installation", "line", "kind", "level", *_COLUMNS) if row.get(column) is None]
        if missing:
            raise ValueError(f"read_lifts: {Path(path).name}, row {number}: no column {missing[0]!r}. Add it.")
        quantities = {column: _cell(path, number, column, row[column]) for column in _COLUMNS}
        line = Line(name=row["line"], kind=row["kind"], level=row["level"], **quantities)
        lines.setdefault(row["installation"], []).append(line)
    return {name: Installation(name, tuple(group)) for name, group in lines.items()}


def hill_table(installations):
    """Return a table of installations: each line by itself, and several lines together.

    Parameters
    ----------
    installations : dict
        As ``read_lifts`` returns them.

    Returns
    -------
    Table
        Kind, capacity with its level, interval, ride time, riders on the line and vertical transport.
    """
    rows = []
    for installation in installations.values():
        for line in installation.lines:
            numbers = (line.interval, line.ride_time, line.persons_on_line, line.vertical_transport)
            rows.append((line.name, line.kind, str(line.capacity), *map(show, numbers)))
        if len(installation.lines) > 1:
            rows.append((installation.name, "together", str(installation.capacity_together), "", "", "", ""))
    columns = ("line", "kind", "people an hour", "interval", "ride time", "riders on the line", "vertical transport")
    return Table("Lifts of the demo hill", columns, rows)


def _cell(path, row, column, text):
    """Return the quantity in one cell; an empty cell of the motor is None."""
    if column == "motor_power" and not text.strip():
        return None
    number, _, unit = text.strip().partition(" ")
    try:
        return Q(read_number(number), read_unit(unit, _COLUMNS[column]))
    except ValueError as error:
        raise ValueError(f"read_lifts: {Path(path).name}, row {row}, column {column}: {error}") from None
