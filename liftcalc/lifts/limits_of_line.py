"""A line of any kind with its readings: energy of a ride, power needed, and all of its limits at once.

The same arguments serve one line, a curve over line speeds, and draws of readings in doubt. Planning figures, no
design.
"""

from dataclasses import replace

import numpy as np
from pint import Quantity

from liftcalc.formulas.capacity import hourly_capacity, hourly_capacity_from_interval
from liftcalc.formulas.carriers import least_station_interval
from liftcalc.formulas.conditions import (
    A_GROOVE,
    HOLDS_AT_LEAST_ONCE,
    PART_OF_THE_POWER,
    PULLS_ALONG,
    REACHES_THE_SPEED,
    REACHES_THE_SPEED_AND_STOPS,
)
from liftcalc.formulas.loading_point import loading_capacity, unload_capacity
from liftcalc.formulas.motor import motor_power_needed
from liftcalc.formulas.traction import groove_friction
from liftcalc.lifts.governing import share_of_draws
from liftcalc.lifts.kinds import KINDS, felt_mass, ride_time_of, start_not_read
from liftcalc.lifts.limits import (
    OF_A_START,
    Limit,
    loading_limit,
    missing_readings,
    motor_capacity_of_drive,
    motor_limit,
    spacing_limit,
    traction_capacity,
    traction_limit,
    unload_limit,
)
from liftcalc.lifts.readings import UNIT_OF, known_values
from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, Q, UnitError, is_like
from liftcalc.vocabulary import words_of

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
        As ``known_values`` returns them; scalars or arrays.

    Returns
    -------
    Quantity [J] or None
        Work of the ride at a steady speed, and of bringing the rider up to it.
    """
    return _energy(kind, values, _work(kind, values))


def _energy(kind, values, work):
    pick_up = KINDS[kind].pick_up
    if work is None or _missing(values, *pick_up.readings):
        return None
    return work + pick_up.energy({**values, "rider_mass": felt_mass(kind, values)}, work)


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
        spacing = speed * (ride_time_of(kind, values) + values["dwell_time"])
    energy = _energy(kind, values, work)
    return {
        "spacing": (speed, spacing, persons),
        "loading": (get("loading_time"), persons, get("loading_places")),
        "motor": (get("motor_power"), get("efficiency"), speed, drag, energy, get("base_speed")),
        "traction": {
            "slack_tension": get("slack_tension"),
            "pull": None if work is None else work / values["ridden_length"],
            "idle_drag": drag,
            "lining_friction": _friction_of_the_sheave(values),
            "wrap_angle": get("wrap_angle"),
            "grip_safety_factor": get("grip_safety_factor"),
            "ride_time": ride_time_of(kind, values),
            "drive_position": get("drive_position"),
            **_start(kind, values),
        },
        "unload": (get("clearing_time"), persons, get("unloading_places")),
    }


def _friction_of_the_sheave(values):
    """Return the friction of rope on sheave, wedged where its groove was read; None where the lining was not read."""
    lining, groove = values.get("lining_friction"), values.get("groove_angle")
    return lining if lining is None or groove is None else groove_friction(lining, groove)


def _start(kind, values):
    """Return the arguments of a start with all riders on the line; none where it is not asked for."""
    if "starting_acceleration" not in values:
        return {}
    known = values if _work(kind, values) is None else {**values, "rider_mass": felt_mass(kind, values)}
    return {name: known.get(name) for name in OF_A_START}


def _with_words(limit, words):
    """Return a limit with one more sentence, where there are words for it."""
    return replace(limit, sentence=f"{limit.sentence} {words[0].upper()}{words[1:]}.") if words else limit


def _left_out(name, kind, values, drag, *readings):
    """Return the record of a limit that lacks readings, each by the name under which it is to be read; else None."""
    missing = _missing(values, *readings, "rider_mass", *KINDS[kind].riding.work_readings)
    missing += [] if drag is not None else ["idle_drag"]
    return missing_readings(name, {words_of(each): None for each in dict.fromkeys(missing)})


def _station_interval(values):
    """Return the shortest interval through a station, or None where a reading is missing."""
    names = ("carrier_length", "carrier_gap", "station_speed")
    return least_station_interval(**{name: values[name] for name in names}) if set(names) <= set(values) else None


def _station_limit(values):
    """Return the limit that creeping through a station sets to a detachable lift."""
    inputs = {words_of(name): values.get(name) for name in ("carrier_length", "carrier_gap", "station_speed")}
    left_out = missing_readings("station", inputs)
    if left_out:
        return left_out
    interval = _station_interval(values)
    capacity = hourly_capacity_from_interval(interval, values["persons_per_carrier"])
    sentence = (
        f"Carriers creep through the station {show(interval)} apart at the least, whatever the line speed: a packing "
        "figure, and boarding and braking may ask for more."
    )
    return Limit("station", capacity, "C = 3600 n v_station / (l + g)", inputs, sentence)


def limits_of(line, readings):
    """Return every limit of a line's own, as records; what lacks a reading is left out by name.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.

    Returns
    -------
    list of Limit and LeftOut
        Spacing, loading, motor, traction and unload; of a detachable lift the station as well. People, slope and
        rule are no limits of the lift's own: ``people_limit``, ``slope_limit`` and ``rule_limit`` stand beside them.
    """
    values = known_values(line, readings)
    return limits_at(line.kind, values)


def limits_at(kind, values):
    """Return the records of ``limits_of`` from a kind and the values of ``known_values``."""
    arguments = _arguments(kind, values)
    pick_up, drag = KINDS[kind].pick_up.readings, arguments["traction"]["idle_drag"]
    motor = _left_out("motor", kind, values, drag, "motor_power", "efficiency", *pick_up)
    sheave = (
        "slack_tension",
        "drive_position",
        "lining_friction",
        "wrap_angle",
        "grip_safety_factor",
        *_start(kind, values),
    )
    traction = _left_out("traction", kind, values, drag, *sheave)
    limits = [
        spacing_limit(*arguments["spacing"]),
        loading_limit(*arguments["loading"]),
        motor or motor_limit(*arguments["motor"]),
        traction or _with_words(traction_limit(**arguments["traction"]), start_not_read(kind, values)),
        unload_limit(*arguments["unload"]),
    ]
    return [*limits, _station_limit(values)] if KINDS[kind].detachable else limits


def _conditions(kind):
    """Return what the formulas ask of the readings of a kind beside unit and sign."""
    own = KINDS[kind]
    of_the_start = {"pick_up_acceleration": (REACHES_THE_SPEED,), "acceleration": (REACHES_THE_SPEED_AND_STOPS,)}
    of_the_tether = (PULLS_ALONG,) if own.riding.from_rest else ()
    return (PART_OF_THE_POWER, HOLDS_AT_LEAST_ONCE, A_GROOVE, *of_the_tether, *of_the_start.get(own.start_reading, ()))


def where_possible(kind, values):
    """Return where the values of a line fit the formulas: one truth value, or one a place or draw of its arrays.

    Parameters
    ----------
    kind : str
        A key of ``KINDS``.
    values : dict of str to Quantity
        As ``known_values`` returns them; scalars or arrays.

    Returns
    -------
    bool or array of bool
        False where an efficiency is over 1, a safety factor under 1, a groove over 180 degrees, a tether upright, or
        where a ride ends before its rider has the speed of the rope, or its cabin before it has come to a stop again.
    """
    fits = True
    for condition in _conditions(kind):
        if all(name in values for name in condition.names):
            fits = fits & condition.where({name: values[name].m_as(UNIT_OF[name]) for name in condition.names})
    return fits


def capacities_at(kind, values):
    """Return what each limit allows, for scalars or arrays; a limit with a missing reading is not there.

    Parameters
    ----------
    kind : str
        A key of ``KINDS``.
    values : dict of str to Quantity
        As ``known_values`` returns them; any of them may be an array, such as line speeds along an axis, or draws.

    Returns
    -------
    dict of str to Quantity [person/hour]
        Capacity by the name of the limit. Arrays have a gap, which is no number (nan), at places whose values fit no
        formula: see ``where_possible``.
    """
    fits = where_possible(kind, values)
    if np.ndim(fits) == 0 or np.all(fits):
        return _capacities(kind, values)
    inside = _capacities(kind, _only(values, fits)) if np.any(fits) else {}
    allowed = {}
    for name, capacity in inside.items():
        whole = np.full(fits.shape, np.nan)
        whole[fits] = capacity.m_as("pph")
        allowed[name] = Q(whole, "pph")
    return allowed


def _only(values, fits):
    """Return the values with those places alone of their arrays that fit."""
    return {
        name: Q(np.broadcast_to(value.magnitude, fits.shape)[fits], value.units)
        if isinstance(value, Quantity) and np.ndim(value.magnitude)
        else value
        for name, value in values.items()
    }


def _with_one_place(arguments):
    """Return time, persons and places, with one place where none was read, as the records take it and say so."""
    time, persons, places = arguments
    return time, persons, _ONE if places is None else places


def _capacities(kind, values):
    """Return what each limit allows, for values that fit."""
    arguments = _arguments(kind, values)
    allowed = {"spacing": hourly_capacity(*arguments["spacing"])}
    if values.get("loading_time") is not None:
        allowed["loading"] = loading_capacity(*_with_one_place(arguments["loading"]))
    if all(value is not None for value in arguments["motor"][:-1]):  # without a base speed it has its full power
        allowed["motor"] = motor_capacity_of_drive(*arguments["motor"])
    if values.get("clearing_time") is not None:
        allowed["unload"] = unload_capacity(*_with_one_place(arguments["unload"]))
    traction = arguments["traction"]
    if all(value is not None for value in traction.values()):
        allowed["traction"] = traction_capacity(**traction)
    if KINDS[kind].detachable and _station_interval(values) is not None:
        allowed["station"] = hourly_capacity_from_interval(_station_interval(values), values["persons_per_carrier"])
    return allowed


def draws_of(line, readings, half_widths, *, seed, draws=20_000):
    """Return the values of a line with readings in doubt drawn many times, and how many draws were left out.

    Parameters
    ----------
    line, readings, half_widths, seed, draws
        As for ``share_of_limits``.

    Returns
    -------
    dict of str to Quantity, int
        The values, as ``known_values`` returns them, those in doubt as arrays; draws that no formula takes are not
        among them, and are counted.

    Raises
    ------
    ValueError
        As for ``share_of_limits``.
    """
    if isinstance(seed, bool) or not isinstance(seed, int) or seed < 0:
        raise PlainError(
            f"share_of_limits: seed must be a whole number, zero or more, but got {seed!r}. Write seed=2026."
        )
    values, generator = known_values(line, readings), np.random.default_rng(seed)
    for name in half_widths:
        if not isinstance(values.get(name), Quantity):
            known = ", ".join(other for other, value in values.items() if isinstance(value, Quantity))
            raise PlainError(f"share_of_limits: {name!r} has a half-width, but no value. Known: {known}.")
    for name in sorted(half_widths):  # one order, and so one draw, however names were written
        value, half_width = values[name], half_widths[name]
        if not (isinstance(half_width, Quantity) and is_like(half_width.units, value.units)):
            raise UnitError(
                f"share_of_limits: the half-width of {name} must be of one kind with {show(value)}, but got "
                f"{as_received(half_width)}. Write Q(..., '{value.units}')."
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
    fits = np.broadcast_to(where_possible(line.kind, values), draws)
    if not fits.any():
        raise PlainError("share_of_limits: no draw fits the formulas. Look at efficiency, safety factor and pick-up.")
    left_out = draws - int(np.count_nonzero(fits))
    return (_only(values, fits) if left_out else values), left_out


def share_of_limits(line, readings, half_widths, *, seed, draws=20_000):
    """Return in what share of draws each limit of a line governs, where its readings are in doubt.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.
    half_widths : mapping of str to Quantity
        By how much a reading, or a value of the line, may be off to either side; every value between is as likely.
    seed : int
        Start of the random numbers.
    draws : int
        How many draws are made; those that no formula takes, such as an efficiency over 1, are left out.

    Returns
    -------
    dict of str to float
        Share of each limit; they add up to 1.

    Raises
    ------
    ValueError
        If a half-width belongs to nothing that is known of the line, or reaches down to zero, or no draw is possible.
    """
    values, left_out = draws_of(line, readings, half_widths, seed=seed, draws=draws)
    allowed = capacities_at(line.kind, values)
    return share_of_draws({name: np.broadcast_to(each.m_as("pph"), draws - left_out) for name, each in allowed.items()})


def power_needed(line, readings):
    """Return the power that the motor must give, on average, at the line's capacity; None where a reading is missing.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.

    Returns
    -------
    Quantity [kW] or None
        Power at the motor.
    """
    values = known_values(line, readings)
    energy, drag = ride_energy(line.kind, values), idle_drag_of(line.kind, values)
    if energy is None or drag is None or "efficiency" not in values:
        return None
    return motor_power_needed(line.capacity.value, values["efficiency"], line.line_speed, drag, energy)


def meeting_speed(line, readings):
    """Return the speed at which a carrier comes to the rider who waits for it; None where a reading is missing."""
    comes_at = KINDS[line.kind].comes_at
    values = known_values(line, readings)
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
