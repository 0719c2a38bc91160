"""A line of any kind with its readings: energy of a ride, power needed, and all of its limits at once.

The same arguments serve one line, a curve over line speeds, and draws of readings in doubt. Planning figures, no
design.
"""

import numpy as np
from pint import Quantity

from liftcalc.capacity import hourly_capacity, hourly_capacity_from_head_count, hourly_capacity_from_interval
from liftcalc.carriers import least_station_interval
from liftcalc.kinds import KINDS
from liftcalc.lift_readings import values_of
from liftcalc.limits import (
    Limit,
    came,
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
from liftcalc.motor import motor_power_needed
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q, UnitError, is_like
from liftcalc.which_limit import share_of_draws

_ONE = Q(1, "")


def _work(kind, values):
    """Return the work of one ride at a steady speed, or None where a reading is missing."""
    riding = KINDS[kind].riding
    return None if _missing(values, "rider_mass", *riding.work_readings) else riding.work(values)


def _missing(values, *names):
    """Return those of the names that have no value."""
    return [name for name in names if name not in values]


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
    return _energy(kind, values, _work(kind, values))


def _energy(kind, values, work):
    pick_up = KINDS[kind].pick_up
    return None if work is None or _missing(values, *pick_up.readings) else work + pick_up.energy(values, work)


def idle_drag_of(kind, values):
    """Return the drag of the empty lift: as read, or from what it is made of; None where a reading is missing."""
    riding = KINDS[kind].riding
    if "idle_drag" in values:
        return values["idle_drag"]
    known = riding.drag is not None and all(name in values for name in riding.drag_readings)
    return riding.drag(values) if known else None


def _arguments(kind, values):
    """Return the arguments of each limit of the lift's own: of its record, and of its plain capacity alike."""
    get, work, drag = values.get, _work(kind, values), idle_drag_of(kind, values)
    persons, speed = values["persons_per_carrier"], values["line_speed"]
    spacing = values["spacing"]
    if KINDS[kind].reversible and "dwell_time" in values:
        spacing = values["ridden_length"] + speed * values["dwell_time"]
    energy = _energy(kind, values, work)
    return {
        "spacing": (speed, spacing, persons),
        "loading": (get("loading_time"), persons, get("loading_places", _ONE)),
        "motor": (get("motor_power"), get("efficiency"), speed, drag, energy, get("base_speed")),
        "traction": {
            "slack_tension": get("slack_tension"),
            "pull": None if work is None else work / values["ridden_length"],
            "idle_drag": drag,
            "friction": get("rope_friction"),
            "wrap_angle": get("wrap_angle"),
            "safety_factor": get("safety_factor"),
            "line_speed": speed,
            "ridden_length": values["ridden_length"],
        },
        "unload": (get("clearing_time"), persons, get("unloading_places", _ONE)),
    }


def _left_out(name, kind, values, drag, *readings):
    """Return the record of a limit that lacks readings, each by the name under which it is to be read; else None."""
    missing = _missing(values, *readings, "rider_mass", *KINDS[kind].riding.work_readings)
    missing += [] if drag is not None else ["idle_drag"]
    return missing_readings(name, {each.replace("_", " "): None for each in dict.fromkeys(missing)})


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
    pick_up, drag = KINDS[kind].pick_up.readings, arguments["traction"]["idle_drag"]
    motor = _left_out("motor", kind, values, drag, "motor_power", "efficiency", *pick_up)
    sheave = ("slack_tension", "rope_friction", "wrap_angle", "safety_factor")
    traction = _left_out("traction", kind, values, drag, *sheave)
    limits = [
        spacing_limit(*arguments["spacing"]),
        loading_limit(*arguments["loading"]),
        motor or motor_limit(*arguments["motor"]),
        traction or traction_limit(**arguments["traction"]),
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
    if isinstance(seed, bool) or not isinstance(seed, int) or seed < 0:
        raise PlainError(
            f"share_of_limits: seed must be a whole number, zero or more, but got {seed!r}. Write seed=2026."
        )
    for name in half_widths:
        if name not in values:
            raise PlainError(f"share_of_limits: {name!r} has a half-width, but no value. Known: {', '.join(values)}.")
    for name in (known for known in tuple(values) if known in half_widths):  # one order, and so one draw, for all
        value, half_width = values[name], half_widths[name]
        if not (isinstance(half_width, Quantity) and is_like(half_width.units, value.units)):
            raise UnitError(
                f"share_of_limits: the half-width of {name} must be of one kind with {show(value)}, but got "
                f"{came(half_width)}. Write Q(..., '{value.units}')."
            )
        away = half_width.m_as(value.units)
        if away < 0:
            raise PlainError(
                f"share_of_limits: the half-width of {name} must be zero or more, but got {show(half_width)}."
            )
        if not away < value.magnitude:
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
    values = values_of(line, readings)
    station, carpet = values.get("station_speed"), values.get("carpet_speed")
    if comes_at == "line speed less carpet speed" and carpet is not None and carpet > line.line_speed:
        raise PlainError(
            f"meeting_speed: carpet_speed must be {show(line.line_speed)} or less, the line speed, but got "
            f"{show(carpet)}. Measure both again."
        )
    return {
        "line speed": line.line_speed,
        "line speed less carpet speed": None if carpet is None else line.line_speed - carpet,
        "station speed": station,
        "rest": Q(0, "m/s"),
    }[comes_at]
