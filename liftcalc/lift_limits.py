"""A line of any kind with its readings: energy of a ride, power needed, and all of its limits at once.

The same arguments serve one line, a curve over line speeds, and draws of readings in doubt. Planning figures, no
design.
"""

import csv
from pathlib import Path

import numpy as np
from pint import Quantity

from liftcalc.capacity import hourly_capacity, hourly_capacity_from_head_count, hourly_capacity_from_interval
from liftcalc.carriers import least_station_interval
from liftcalc.kinds import KINDS
from liftcalc.limits import (
    Limit,
    loading_limit,
    missing_readings,
    motor_capacity_of_drive,
    motor_limit,
    riders_that_the_sheave_pulls,
    spacing_limit,
    traction_limit,
    unload_limit,
)
from liftcalc.line import ride_time
from liftcalc.loading_point import loading_capacity, unload_capacity
from liftcalc.motor import motor_power_needed, power_per_thousand_pph
from liftcalc.quantity_text import read_number, read_unit, show
from liftcalc.tables import Table
from liftcalc.units import PlainError, Q, UnitError, kind_of
from liftcalc.which_limit import governing, share_of_draws

# reading: unit that stands for its kind, and what it is
READINGS = {
    "rider_mass": ("kg", "mass of one rider with clothes, skis and all"),
    "friction": ("", "friction of skis on snow"),
    "tether_angle": ("degree", "angle of a tether to the slope"),
    "sheave_share": ("", "drag of the sheaves as a share of the load on them"),
    "hanging_mass": ("kg", "rope and all empty carriers"),
    "bed_friction": ("", "friction of a belt on its bed"),
    "return_friction": ("", "the same on the way back"),
    "belt_mass_per_length": ("kg/m", "mass of one metre of belt"),
    "idle_drag": ("N", "drag of the whole empty rope or belt"),
    "efficiency": ("", "part of the motor's power that reaches the rope"),
    "base_speed": ("m/s", "line speed at the motor's rated speed, of a drive at constant torque"),
    "pick_up_acceleration": ("m/s**2", "how hard a rider speeds up"),
    "loading_time": ("s", "mean time between successful starts at one place"),
    "loading_places": ("", "places where riders start at once"),
    "clearing_time": ("s", "time until one unloading place is clear again"),
    "unloading_places": ("", "places where riders get clear at once"),
    "slack_tension": ("N", "tension of the slack side at the drive sheave"),
    "rope_friction": ("", "friction of rope on the lining of the drive sheave"),
    "wrap_angle": ("degree", "angle over which the rope lies on the drive sheave"),
    "safety_factor": ("", "how many times over the rope must hold"),
    "carrier_length": ("m", "length of one carrier in the station"),
    "carrier_gap": ("m", "free length between two carriers in the station"),
    "station_speed": ("m/s", "speed of the carriers in the station"),
    "carpet_speed": ("m/s", "speed of a loading carpet"),
}
_OF_THE_LINE = ("line_speed", "spacing", "persons_per_carrier", "ridden_length", "vertical_rise", "motor_power")
_ONE = Q(1, "")


def values_of(line, readings):
    """Return the values of a line and its readings as one dictionary, for the functions of this module.

    Parameters
    ----------
    line : Line
        The line.
    readings : mapping of str to Quantity
        Any of ``READINGS``; what is not known is left out, or None.

    Returns
    -------
    dict
        Quantity by name; what is None stands in it no more.

    Raises
    ------
    ValueError
        If a reading is not known here.
    UnitError
        If it has no unit, or one of another kind.
    """
    values = {name: getattr(line, name) for name in _OF_THE_LINE}
    for name, value in readings.items():
        if name not in READINGS:
            raise PlainError(f"values_of: {name!r} is no reading of a lift. Write one of {', '.join(READINGS)}.")
        unit = READINGS[name][0]
        if value is not None and not (isinstance(value, Quantity) and value.is_compatible_with(unit)):
            came = show(value) if isinstance(value, Quantity) else f"the bare value {value!r}"
            raise UnitError(f"values_of: {name} must be {READINGS[name][1]}, but got {came}. Write Q(..., {unit!r}).")
        values[name] = value
    return {name: value for name, value in values.items() if value is not None}


def read_readings(path):
    """Read the readings of several lines from a CSV table, one reading a row.

    Parameters
    ----------
    path : str or Path
        A table with the columns line, reading and value; a value is a number and a unit, such as "75 kg".

    Returns
    -------
    dict
        For each line, by its name, a dictionary of readings.

    Raises
    ------
    ValueError
        If a reading is not known, came twice, or its value cannot be read; the message names the row.
    """
    name, lines = Path(path).name, {}
    with Path(path).open(encoding="utf-8-sig", newline="") as table:
        for number, row in enumerate(csv.DictReader(table), start=2):
            line, reading, text = (str(row.get(column) or "").strip() for column in ("line", "reading", "value"))
            where = f"read_readings: {name}, row {number}"
            if reading not in READINGS:
                raise PlainError(f"{where}: {reading!r} is no reading of a lift. Write one of {', '.join(READINGS)}.")
            if reading in lines.setdefault(line, {}):
                raise PlainError(f"{where}: {reading} of {line!r} came before. Keep one of the two.")
            digits, _, unit = text.partition(" ")
            usual = READINGS[reading][0]
            try:
                known = read_unit(unit, kind_of(Q(1, usual))) if unit or usual else ""
                lines[line][reading] = Q(read_number(digits), known)
            except ValueError as error:
                raise PlainError(f"{where}: {error}") from None
    return lines


def missing_for_energy(kind, values):
    """Return the readings that the energy of one ride still wants, by their words."""
    own = KINDS[kind]
    wanted = ("rider_mass", *own.riding.work_readings, *own.pick_up.readings)
    return {name: None for name in wanted if name not in values}


def ride_energy(kind, values):
    """Return the energy that the drive gives to one rider, or None where a reading is missing.

    Parameters
    ----------
    kind : str
        A key of ``KINDS``.
    values : dict of str to Quantity
        As ``values_of`` returns them; scalars or arrays.

    Returns
    -------
    Quantity [J] or None
        Work of the ride at a steady speed, and of bringing the rider up to it.
    """
    if missing_for_energy(kind, values):
        return None
    return KINDS[kind].riding.work(values) + KINDS[kind].pick_up.energy(values)


def idle_drag_of(kind, values):
    """Return the drag of the empty lift: as read, or from what it is made of; None where a reading is missing."""
    riding = KINDS[kind].riding
    if "idle_drag" in values:
        return values["idle_drag"]
    known = riding.drag is not None and all(name in values for name in riding.drag_readings)
    return riding.drag(values) if known else None


def _arguments(kind, values):
    """Return the arguments of each limit of the lift's own: of its record, and of its plain capacity alike."""
    get, energy, drag = values.get, ride_energy(kind, values), idle_drag_of(kind, values)
    persons = values["persons_per_carrier"]
    pull = None
    if not missing_for_energy(kind, values):
        pull = KINDS[kind].riding.work(values) / values["ridden_length"]
    return {
        "spacing": (values["line_speed"], values["spacing"], persons),
        "loading": (get("loading_time"), persons, get("loading_places", _ONE)),
        "motor": (get("motor_power"), get("efficiency"), values["line_speed"], drag, energy, get("base_speed")),
        "traction": {
            "slack_tension": get("slack_tension"),
            "pull": pull,
            "idle_drag": drag,
            "friction": get("rope_friction"),
            "wrap_angle": get("wrap_angle"),
            "safety_factor": get("safety_factor"),
            "line_speed": values["line_speed"],
            "ridden_length": values["ridden_length"],
        },
        "unload": (get("clearing_time"), persons, get("unloading_places", _ONE)),
    }


def _station_interval(values):
    """Return the shortest interval through a station, or None where a reading is missing."""
    names = ("carrier_length", "carrier_gap", "station_speed")
    return least_station_interval(**{name: values[name] for name in names}) if set(names) <= set(values) else None


def _station_limit(values):
    """Return the limit that creeping through a station sets to a detachable lift."""
    inputs = {name.replace("_", " "): values.get(name) for name in ("carrier_length", "carrier_gap", "station_speed")}
    left_out = missing_readings("station", inputs)
    if left_out:
        return left_out
    interval = _station_interval(values)
    capacity = hourly_capacity_from_interval(interval, values["persons_per_carrier"])
    sentence = f"Carriers creep through the station {show(interval)} apart at the least, whatever the line speed."
    return Limit("station", capacity, "C = 3600 n v_station / (l + g)", inputs, sentence)


def limits_of(line, readings):
    """Return every limit of a line's own, as records; what lacks a reading is left out by name.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``values_of``.

    Returns
    -------
    list of Limit and LeftOut
        Spacing, loading, motor, traction and unload; of a detachable lift the station as well. People, slope and
        rule are no limits of the lift's own: ``people_limit``, ``slope_limit`` and ``rule_limit`` stand beside them.
    """
    values = values_of(line, readings)
    return limits_from(line.kind, values)


def limits_from(kind, values):
    """Return the records of ``limits_of`` from a kind and the values of ``values_of``."""
    arguments = _arguments(kind, values)
    motor = missing_readings("motor", {name.replace("_", " "): None for name in missing_for_energy(kind, values)})
    limits = [
        spacing_limit(*arguments["spacing"]),
        loading_limit(*arguments["loading"]),
        motor or motor_limit(*arguments["motor"]),
        traction_limit(**arguments["traction"]),
        unload_limit(*arguments["unload"]),
    ]
    return [*limits, _station_limit(values)] if KINDS[kind].detachable else limits


def capacities_from(kind, values):
    """Return what each limit allows, for scalars or arrays; a limit with a missing reading is not there.

    Parameters
    ----------
    kind : str
        A key of ``KINDS``.
    values : dict of str to Quantity
        As ``values_of`` returns them; any of them may be an array, such as line speeds along an axis, or draws.

    Returns
    -------
    dict of str to Quantity [person/hour]
        Capacity by the name of the limit.
    """
    arguments, allowed = _arguments(kind, values), {}
    for name, capacity in (
        ("spacing", hourly_capacity),
        ("loading", loading_capacity),
        ("motor", motor_capacity_of_drive),
        ("unload", unload_capacity),
    ):
        given = arguments[name]
        if all(value is not None for value in (given[:-1] if name == "motor" else given)):
            allowed[name] = capacity(*given)
    traction = arguments["traction"]
    if all(value is not None for value in traction.values()):
        ride = ride_time(traction.pop("ridden_length"), traction.pop("line_speed"))
        allowed["traction"] = hourly_capacity_from_head_count(riders_that_the_sheave_pulls(**traction), ride)
    if KINDS[kind].detachable and _station_interval(values) is not None:
        allowed["station"] = hourly_capacity_from_interval(_station_interval(values), values["persons_per_carrier"])
    return allowed


def share_of_limits(line, readings, half_widths, *, seed, draws=20_000):
    """Return in what share of draws each limit of a line governs, where its readings are in doubt.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``values_of``.
    half_widths : mapping of str to Quantity
        By how much a reading, or a value of the line, may be off to either side; every value between is as likely.
    seed : int
        Start of the random numbers.
    draws : int
        How many draws are made.

    Returns
    -------
    dict of str to float
        Share of each limit; they add up to 1.

    Raises
    ------
    ValueError
        If a half-width belongs to nothing that is known of the line, or reaches down to zero.
    """
    values, generator = values_of(line, readings), np.random.default_rng(seed)
    for name, half_width in half_widths.items():
        if name not in values:
            raise PlainError(f"share_of_limits: {name!r} has a half-width, but no value. Known: {', '.join(values)}.")
        value = values[name]
        away = half_width.m_as(value.units)
        if not 0 <= away < value.magnitude:
            raise PlainError(
                f"share_of_limits: the half-width of {name} must be less than {show(value)}, "
                f"but got {show(half_width)}."
            )
        values[name] = Q(generator.uniform(value.magnitude - away, value.magnitude + away, draws), value.units)
    allowed = capacities_from(line.kind, values)
    return share_of_draws({name: np.broadcast_to(each.m_as("pph"), draws) for name, each in allowed.items()})


def power_needed(line, readings):
    """Return the power that the motor must give, on average, at the line's capacity; None where a reading is missing.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``values_of``.

    Returns
    -------
    Quantity [kW] or None
        Power at the motor.
    """
    values = values_of(line, readings)
    energy, drag = ride_energy(line.kind, values), idle_drag_of(line.kind, values)
    if energy is None or drag is None or "efficiency" not in values:
        return None
    return motor_power_needed(line.capacity.value, values["efficiency"], line.line_speed, drag, energy)


def meeting_speed(line, readings):
    """Return the speed at which a carrier comes to the rider who waits for it; None where a reading is missing."""
    comes_at = KINDS[line.kind].comes_at
    station, carpet = readings.get("station_speed"), readings.get("carpet_speed")
    return {
        "line speed": line.line_speed,
        "line speed less carpet speed": None if carpet is None else line.line_speed - carpet,
        "station speed": station,
        "rest": Q(0, "m/s"),
    }[comes_at]


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
            ride = (
                line.vertical_transport,
                line.ride_time,
                line.persons_on_line,
            )
            power = _power_cells(line.motor_power, needed, line.capacity)
            where = KINDS[line.kind].on_a_stop
            rows.append((line.name, line.kind, str(line.capacity), *map(show, ride), *power, where))
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
    for line in (line for installation in installations.values() for line in installation.lines):
        found = governing(limits_of(line, readings.get(line.name, {})))
        following = found.next_limit
        further = (following.name, f"{show(found.ahead)} above") if following else ("none", "")
        left_out = ", ".join(item.name for item in found.left_out) or "nothing"
        rows.append((line.name, found.limit.name, str(found.capacity), *further, left_out))
    columns = ("line", "governs", "at most", "next", "how far", "left out")
    return Table("Which limit governs, line by line", columns, rows)
