"""Lifts side by side in tables: what they carry, what they ask of the motor, what limits them, their hazards."""

from liftcalc.formulas.motor import power_per_thousand_pph
from liftcalc.lifts.governing import governing
from liftcalc.lifts.installation import lines_of
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import limits_of, power_needed
from liftcalc.quantity_text import show
from liftcalc.tables import Table
from liftcalc.units import Q


def kinds_table(installations):
    """Return a table of one line of each kind: what its speed, its interval and its carriers make of an hour.

    Parameters
    ----------
    installations : dict
        As ``read_lifts`` returns them.

    Returns
    -------
    Table
        Line speed, interval, spacing, persons per carrier, capacity with its level, and where riders are on a stop.
    """
    rows = []
    for line in lines_of(installations):
        numbers = (line.line_speed, line.interval, line.spacing, line.persons_per_carrier)
        rows.append((line.kind, *map(show, numbers), str(line.capacity), KINDS[line.kind].on_a_stop))
    columns = ("kind", "line speed", "interval", "spacing", "a carrier", "people an hour", "on a stop")
    return Table("An invented example of each kind", columns, rows)


def hazards_table():
    """Return a table of every kind: where riders are on a stop, and the hazards that are its own."""
    rows = [(kind.name, kind.on_a_stop, kind.hazards) for kind in KINDS.values()]
    return Table("Each kind has hazards of its own", ("kind", "on a stop", "its own hazards"), rows)


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
            last = (line.persons_on_line, line.vertical_transport)
            rows.append((line.name, line.kind, str(line.capacity), show(line.interval), _ride(line), *map(show, last)))
        if len(installation.lines) > 1:
            rows.append((installation.name, "together", str(installation.capacity_together), "", "", "", ""))
    columns = ("line", "kind", "people an hour", "interval", "ride time", "riders on the line", "vertical transport")
    return Table("Lifts of the demo hill", columns, rows)


def _ride(line):
    """Return the ride time as text, and that its start was not read where that is so."""
    return show(line.ride_time) + (", start not read" if line.start_not_read else "")


def _power_cells(rated, needed, capacity):
    """Return rated power, needed power, and needed power for each thousand an hour as text."""
    each = needed and power_per_thousand_pph(needed, capacity.value) * Q(1000, "pph")
    return [show(value, "kW") if value is not None else "not known" for value in (rated, needed, each)]


def comparison_table(installations, readings):
    """Return lifts side by side: what they carry, what they ask of the motor, and where riders are on a stop.

    Parameters
    ----------
    installations : dict
        As ``read_lifts`` returns them.
    readings : dict
        As ``read_readings`` returns them.

    Returns
    -------
    Table
        One row a line, each by itself, and one for several lines together; powers are of the motor, at the capacity
        of the row.
    """
    rows = []
    for installation in installations.values():
        powers = []
        for line in installation.lines:
            needed = power_needed(line, readings.get(line.name, {}))
            powers.append(needed)
            ride = (show(line.vertical_transport), _ride(line), show(line.persons_on_line))
            power = _power_cells(line.motor_power, needed, line.capacity)
            where = KINDS[line.kind].on_a_stop
            rows.append((line.name, line.kind, str(line.capacity), *ride, *power, where))
        if len(installation.lines) > 1:
            needed = None if None in powers else sum(powers[1:], powers[0])
            together = installation.capacity_together
            power = _power_cells(installation.motor_power_together, needed, together)
            rows.append((installation.name, "together", str(together), "", "", "", *power, ""))
    columns = (
        "line", "kind", "people an hour", "vertical transport", "ride time", "riders on the line",
        "rated power", "needed power", "needed for 1,000 pph", "on a stop",
    )  # fmt: skip
    return Table("Lifts of the hill, line by line", columns, rows)


FEW = 2  # missing readings that are named in a cell


def _left_out(item):
    """Return the name of a limit that is left out, and its missing readings where they are few."""
    return f"{item.name} ({', '.join(item.missing)})" if len(item.missing) <= FEW else item.name


def governing_table(installations, readings):
    """Return which limit governs each line, how far the next one is away, and what is left out.

    Parameters
    ----------
    installations : dict
        As ``read_lifts`` returns them.
    readings : dict
        As ``read_readings`` returns them.

    Returns
    -------
    Table
        One row a line.
    """
    rows = []
    for line in lines_of(installations):
        found = governing(limits_of(line, readings.get(line.name, {})))
        following = found.next_limit
        further = (following.name, f"{show(found.ahead)} above") if following else ("none", "")
        left_out = ", ".join(map(_left_out, found.left_out)) or "nothing"
        rows.append((line.name, found.limit.name, str(found.capacity), *further, left_out))
    columns = ("line", "governs", "at most", "next", "how far", "left out")
    return Table("Which limit governs, line by line", columns, rows)
