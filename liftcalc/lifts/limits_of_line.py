"""A line of any kind with its readings: energy of a ride, power needed, and all of its limits at once.

The same values serve one line, a curve over line speeds, and draws of readings in doubt. Planning figures, no design.
"""

import numpy as np
from pint import Quantity

from liftcalc.formulas.conditions import (
    A_GROOVE,
    HOLDS_AT_LEAST_ONCE,
    PART_OF_THE_POWER,
    REACHES_THE_SPEED,
    REACHES_THE_SPEED_AND_STOPS,
)
from liftcalc.formulas.motor import motor_power_needed
from liftcalc.formulas.traction import groove_friction, slack_tension_bottom_drive, slack_tension_top_drive
from liftcalc.lifts.kinds import felt_mass, kind_named, ride_time_of, start_not_read
from liftcalc.lifts.limit_records import Limit, left_out
from liftcalc.lifts.limits import LIMITS, TRACTION
from liftcalc.lifts.readings import known_values
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import VOCABULARY, words_of

OF_A_RIDE_TIME = ("ridden_length", "line_speed")
OF_A_COUNTERWEIGHT = ("counterweight", "rope_mass_per_length", "idle_drag", "vertical_rise")


def _work(kind, values):
    """Return the work of one ride at a steady speed, or None where a reading is missing."""
    riding = kind_named(kind).riding
    return None if _missing(values, *_of_a_ride(riding)) else riding.work(values)


def _of_a_ride(riding):
    """Return the names of what the work of one ride needs."""
    return ("rider_mass", *riding.work_readings, "ridden_length", "vertical_rise")


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
    pick_up = kind_named(kind).pick_up
    if work is None or _missing(values, "line_speed", *pick_up.readings):
        return None
    return work + pick_up.energy({**values, "rider_mass": felt_mass(kind, values)}, work)


def idle_drag_of(kind, values):
    """Return the drag of the empty lift: as read, or from what it is made of; None where a reading is missing."""
    riding = kind_named(kind).riding
    if "idle_drag" in values:
        return values["idle_drag"]
    known = riding.drag is not None and not _missing(values, *riding.drag_readings, "ridden_length", "vertical_rise")
    return riding.drag(values) if known else None


def unread_for_energy(kind, values):
    """Return in words the readings that are missing for the energy of a season: of the rides, and of the empty lift."""
    own = kind_named(kind)
    lacks = dict.fromkeys(_missing(values, *_of_a_ride(own.riding), *own.pick_up.readings, "efficiency"))
    words = list(map(words_of, lacks))
    if idle_drag_of(kind, values) is None:
        instead = " and ".join(map(words_of, _missing(values, *own.riding.drag_readings)))
        words.append(words_of("idle_drag") + (f" (or {instead})" if instead else ""))
    return words


def _worked_out(kind, values):
    """Return the values that limits take: those of a line, and what follows from them."""
    own, work = kind_named(kind), _work(kind, values)
    found = {
        "ride_time": None if _missing(values, *OF_A_RIDE_TIME) else ride_time_of(kind, values),
        "idle_drag": idle_drag_of(kind, values),
        "energy_per_rider": _energy(kind, values, work),
    }
    if (
        own.reversible and "dwell_time" in values and found["ride_time"] is not None
    ):  # a cabin comes every trip: that is the rope that runs by meanwhile
        found["spacing"] = values["line_speed"] * (found["ride_time"] + values["dwell_time"])
    if "slack_tension" not in values:
        found["slack_tension"] = _slack_tension({**values, "idle_drag": found["idle_drag"]})
    if work is not None:
        found |= {"pull": work / values["ridden_length"], "rider_mass": felt_mass(kind, values)}
    if "lining_friction" in values and "groove_angle" in values:  # wedged, the rope holds as on a rougher lining
        found["lining_friction"] = groove_friction(values["lining_friction"], values["groove_angle"])
    return values | {name: value for name, value in found.items() if value is not None}


def _slack_tension(values):
    """Return the tension of the slack side from a counterweight at the other end; None where a reading is missing."""
    drive, needs = values.get("drive_position"), OF_A_COUNTERWEIGHT
    if drive is None or any(values.get(name) is None for name in needs):
        return None
    rise = values["vertical_rise"]
    if "sheave_distance" in values and "ridden_length" in values:  # the sheaves stand further apart than the ride
        rise = rise * (values["sheave_distance"] / values["ridden_length"]).to("")
    rope = {name: values[name] for name in needs[:2]} | {"vertical_rise": rise, "strand_drag": values["idle_drag"] / 2}
    if drive == "top":
        return slack_tension_top_drive(**rope)
    return slack_tension_bottom_drive(**rope, riders_on_line=Q(0, "person"), pull=Q(0, "N"))


def _wedged(values):
    """Return words on a groove that was read: what it makes of the friction, and where it does not; else nothing."""
    if "groove_angle" not in values:
        return ""
    times = (groove_friction(Q(0.1, ""), values["groove_angle"]) / Q(0.1, "")).m_as("")
    return (
        f"wedged in a groove of {show(values['groove_angle'])} the rope is reckoned to hold as on {times:.1f} times "
        "the friction of the lining; a rope that lies on the ground of its groove does not"
    )


def limits_of_kind(kind):
    """Return the entries of the limits that lifts of a kind have."""
    return [entry for entry in LIMITS if entry.belongs(kind_named(kind))]


def _behind(kind, values):
    """Return the readings behind each value that a limit takes and nobody reads, by its name."""
    own = kind_named(kind)
    of_a_ride = _of_a_ride(own.riding)
    behind = {
        "energy_per_rider": (*own.pick_up.readings, *of_a_ride),
        "pull": of_a_ride,
        "ride_time": OF_A_RIDE_TIME,
    }
    if "counterweight" in values:  # then the slack side follows from it, once the rest of it was read
        behind["slack_tension"] = OF_A_COUNTERWEIGHT
    return behind


def _unread(kind, values, entry, known):
    """Return the readings that a limit lacks, each by the name under which it is to be read."""
    behind = _behind(kind, values)
    names = [name for wanted in entry.missing(known) for name in behind.get(wanted, (wanted,))]
    return [name for name in dict.fromkeys(names) if name not in values]


def readings_behind(kind, values, limit):
    """Return the names of what a limit of a line rests on, as far as it is known.

    Parameters
    ----------
    kind : str
        A key of ``KINDS``, or "not read".
    values : dict of str to Quantity, or str
        As for ``limits_at``.
    limit : str
        Name of the limit.

    Returns
    -------
    list of str
        Names in the vocabulary; each of them stands among the values.
    """
    own, behind = kind_named(kind), _behind(kind, values)
    behind["idle_drag"] = ("idle_drag",) if "idle_drag" in values else own.riding.drag_readings
    behind["ride_time"] = (*OF_A_RIDE_TIME, own.start_reading)
    behind["lining_friction"] = ("lining_friction", "groove_angle")
    if own.reversible and "dwell_time" in values:
        behind["spacing"] = (*behind["ride_time"], "dwell_time")
    if "tether_angle" in values:
        behind["energy_per_rider"] = (*behind["energy_per_rider"], "tether_angle")
        behind["pull"] = (*behind["pull"], "tether_angle")
    entry = next(entry for entry in LIMITS if entry.name == limit)
    wanted = (*entry.needs, *entry.assumed, *entry.counts, *entry.with_it)
    names = [name for each in wanted for name in behind.get(each, (each,))]
    return [name for name in dict.fromkeys(names) if name in values]


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
        One for each of ``LIMITS`` that lifts of its kind have. People, slope and rule are no limits of the lift's own:
        ``people_limit``, ``slope_limit`` and ``rule_limit`` stand beside them.
    """
    values = known_values(line, readings)
    return limits_at(line.kind, values)


def limits_at(kind, values):
    """Return the records of ``limits_of`` from a kind and the values of ``known_values``."""
    known, records = _worked_out(kind, values), []
    for entry in limits_of_kind(kind):
        unread = list(map(words_of, _unread(kind, values, entry, known)))
        record = left_out(entry.name, unread) if unread else entry.record(known)
        if entry is TRACTION and isinstance(record, Limit):
            weighed = "" if "slack_tension" in values else "slack tension worked out from the counterweight"
            record = record.saying(start_not_read(kind, values)).saying(weighed).saying(_wedged(values))
        records.append(record)
    return records


def _conditions(kind):
    """Return what the formulas ask of the readings of a kind beside unit and sign."""
    own = kind_named(kind)
    of_the_start = {"pick_up_acceleration": (REACHES_THE_SPEED,), "acceleration": (REACHES_THE_SPEED_AND_STOPS,)}
    of_the_kind = (*own.riding.conditions, *of_the_start.get(own.start_reading, ()))
    return (PART_OF_THE_POWER, HOLDS_AT_LEAST_ONCE, A_GROOVE, *of_the_kind)


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
            fits = fits & condition.where({name: values[name].m_as(VOCABULARY[name].unit) for name in condition.names})
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
    inside = _capacities(kind, only_those(values, fits)) if np.any(fits) else {}
    allowed = {}
    for name, capacity in inside.items():
        whole = np.full(fits.shape, np.nan)
        whole[fits] = capacity.m_as("pph")
        allowed[name] = Q(whole, "pph")
    return allowed


def only_those(values, fits):
    """Return the values with those places alone of their arrays that fit."""
    return {
        name: Q(np.broadcast_to(value.magnitude, fits.shape)[fits], value.units)
        if isinstance(value, Quantity) and np.ndim(value.magnitude)
        else value
        for name, value in values.items()
    }


def _capacities(kind, values):
    """Return what each limit allows, for values that fit."""
    known = _worked_out(kind, values)
    allowed = {entry.name: entry.allows(known) for entry in limits_of_kind(kind)}
    return {name: capacity for name, capacity in allowed.items() if capacity is not None}


def power_needed(line, readings, hourly_capacity=None):
    """Return the power that the motor must give, on average, at a capacity; None where a reading is missing.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.
    hourly_capacity : Quantity [person/hour] or None
        At which it is wanted; the line's own, by its spacing, if left out.

    Returns
    -------
    Quantity [kW] or None
        Power at the motor.
    """
    values = known_values(line, readings)
    energy, drag = ride_energy(line.kind, values), idle_drag_of(line.kind, values)
    if energy is None or drag is None or "efficiency" not in values:
        return None
    flow = line.capacity.value if hourly_capacity is None else hourly_capacity
    return motor_power_needed(flow, values["efficiency"], line.line_speed, drag, energy)


def meeting_speed(line, readings):
    """Return the speed at which a carrier comes to the rider who waits for it; None where a reading is missing."""
    comes_at = kind_named(line.kind).comes_at
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
