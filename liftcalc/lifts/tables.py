"""Lifts side by side in tables: what they carry, what they ask of the motor, what limits them, their hazards."""

from liftcalc.formulas.motor import power_per_thousand_pph
from liftcalc.lifts.governing import governing, not_read
from liftcalc.lifts.kinds import KINDS, kind_named
from liftcalc.lifts.limits_of_line import limits_of, power_needed
from liftcalc.quantity_text import show
from liftcalc.tables import Table, csv_text
from liftcalc.units import Q


def kinds_table(hill):
    """Return a table of one line of each kind: what its speed, its interval and its carriers make of an hour.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.

    Returns
    -------
    Table
        Line speed, interval, spacing, persons per carrier, capacity with its level, and where riders are on a stop.
    """
    rows = []
    for line in hill.lines.values():
        numbers = (line.line_speed, line.interval, line.spacing, line.persons_per_carrier)
        rows.append((line.kind, *map(show, numbers), str(line.capacity), kind_named(line.kind).on_a_stop))
    columns = ("kind", "line speed", "interval", "spacing", "a carrier", "people an hour", "on a stop")
    return Table("An invented example of each kind", columns, rows)


def hazards_table():
    """Return a table of every kind: where riders are on a stop, and the hazards that are its own."""
    rows = [(kind.name, kind.on_a_stop, kind.hazards) for kind in KINDS.values()]
    return Table("Each kind has hazards of its own", ("kind", "on a stop", "its own hazards"), rows)


def _ride(line):
    """Return the ride time as text, and that its start was not read where that is so."""
    return show(line.ride_time) + (", start not read" if line.start_not_read else "")


def hill_table(hill):
    """Return a table of the lifts of a hill: each line by itself, and several lines together.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.

    Returns
    -------
    Table
        Kind, capacity with its level, interval, ride time, riders on the line and vertical transport.
    """
    rows = []
    for lift in hill.lifts.values():
        for line in lift.lines:
            last = (line.persons_on_line, line.vertical_transport)
            rows.append((line.name, line.kind, str(line.capacity), show(line.interval), _ride(line), *map(show, last)))
        if len(lift.lines) > 1:
            rows.append((lift.name, "together", str(lift.capacity_together), "", "", "", ""))
    columns = ("line", "kind", "people an hour", "interval", "ride time", "riders on the line", "vertical transport")
    return Table("The lifts of the hill", columns, rows)


def _power_cells(rated, needed, capacity):
    """Return rated power, needed power, and needed power for each thousand an hour as text."""
    each = needed and power_per_thousand_pph(needed, capacity.value) * Q(1000, "pph")
    return [show(value, "kW") if value is not None else "not known" for value in (rated, needed, each)]


def comparison_table(hill):
    """Return lifts side by side: what they carry, what they ask of the motor, and where riders are on a stop.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.

    Returns
    -------
    Table
        One row a line, each by itself, and one for several lines together; powers are of the motor, at the capacity
        of the row.
    """
    rows = []
    for lift in hill.lifts.values():
        powers = []
        for line in lift.lines:
            needed = power_needed(line, hill.readings[line.name])
            powers.append(needed)
            ride = (show(line.vertical_transport), _ride(line), show(line.persons_on_line))
            power = _power_cells(line.motor_power, needed, line.capacity)
            where = kind_named(line.kind).on_a_stop
            rows.append((line.name, line.kind, str(line.capacity), *ride, *power, where))
        if len(lift.lines) > 1:
            needed = None if None in powers else sum(powers[1:], powers[0])
            together = lift.capacity_together
            power = _power_cells(lift.motor_power_together, needed, together)
            rows.append((lift.name, "together", str(together), "", "", "", *power, ""))
    columns = (
        "line", "kind", "people an hour", "vertical transport", "ride time", "riders on the line",
        "rated power", "needed power", "needed for 1,000 pph", "on a stop",
    )  # fmt: skip
    return Table("Lifts of the hill, line by line", columns, rows)


def governing_table(hill):
    """Return which limit governs each line, how far the next one is away, and what is left out for want of a reading.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.

    Returns
    -------
    Table
        One row a line; of a limit that is left out, the readings that it lacks.
    """
    rows = []
    for line in hill.lines.values():
        found = governing(limits_of(line, hill.readings[line.name]))
        following = found.next_limit
        further = (following.name, f"{show(found.ahead)} above") if following else ("none", "")
        left_out = not_read(found.left_out) or "nothing"
        rows.append((line.name, found.limit.name, str(found.capacity), *further, left_out))
    columns = ("line", "governs", "at most", "next", "how far", "left out")
    return Table("Which limit governs, line by line", columns, rows)


def hill_frame(hill):
    """Return all lines of a hill as a pandas DataFrame of numbers, to be sorted, filtered and saved as CSV.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.

    Returns
    -------
    DataFrame
        One row a line, indexed by its name; the unit of a number stands in the name of its column. What was not read
        is no number (nan), or an empty text.
    """
    import pandas

    rows = []
    for lift in hill.lifts.values():
        for line in lift.lines:
            sheet, found = hill.sheets[line.name], governing(limits_of(line, hill.readings[line.name]))
            following = found.next_limit
            rows.append(
                {
                    "line": line.name,
                    "lift": lift.name,
                    "kind": line.kind,
                    "state": sheet.facts.get("state", ""),
                    "date": sheet.facts.get("date", ""),
                    "people an hour by spacing (pph)": line.capacity.value.m_as("pph"),
                    "level of spacing": line.level,
                    "governs": found.limit.name,
                    "at most (pph)": found.capacity.value.m_as("pph"),
                    "next limit": following.name if following else "",
                    "next above (pph)": found.ahead.m_as("pph") if following else float("nan"),
                    "ride time (s)": line.ride_time.m_as("s"),
                    "vertical rise (m)": line.vertical_rise.m_as("m"),
                    "motor power (kW)": float("nan") if line.motor_power is None else line.motor_power.m_as("kW"),
                    "on a stop": kind_named(line.kind).on_a_stop,
                    "limits left out": "; ".join(item.name for item in found.left_out),
                    "sheet": sheet.name,
                }
            )
    return pandas.DataFrame(rows).set_index("line")


def hill_csv(hill):
    """Return all lines of a hill as CSV text, as ``hill_frame`` has them; what was not read is an empty cell."""
    frame = hill_frame(hill).reset_index()
    rows = [
        ["" if cell != cell else f"{cell:.10g}" if isinstance(cell, float) else cell for cell in row]
        for row in frame.itertuples(index=False)
    ]
    return csv_text(frame.columns, rows)


WEAKEST = 25  # lines that are shown; the file holds all


def weakest_first(hill):
    """Return a table of the lines of a hill, the one that carries the fewest first, with what governs each."""
    frame = hill_frame(hill).sort_values("at most (pph)", kind="stable").head(WEAKEST)
    rows = [
        (line, row["kind"], row["governs"], show(Q(row["at most (pph)"], "pph")), row["limits left out"] or "nothing")
        for line, row in frame.iterrows()
    ]
    count = f"the {WEAKEST} weakest of {len(hill.lines)}" if len(hill.lines) > WEAKEST else "the weakest first"
    return Table(f"What each line carries at most, {count}", ("line", "kind", "governs", "at most", "left out"), rows)
