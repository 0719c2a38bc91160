"""Every limit of a lift, listed once: what it needs, what it allows, by which law, and its sentence.

To add a limit of the lift's own, add its entry to ``LIMITS``: records, curves, shares, tables and the chart follow.
People and slope are limits of the system, a rule is a permission: they stand beside the lift's own and never among
them. Planning figures, no design.
"""

import numpy as np

from liftcalc.formulas.capacity import (
    hourly_capacity,
    hourly_capacity_from_head_count,
    hourly_capacity_from_interval,
)
from liftcalc.formulas.carriers import least_station_interval
from liftcalc.formulas.loading_point import (
    crowd_capacity_at_least,
    crowd_capacity_at_most,
    loading_capacity,
    unload_capacity,
)
from liftcalc.formulas.motor import motor_capacity, motor_capacity_at_constant_torque
from liftcalc.formulas.slope_crowding import slope_capacity
from liftcalc.formulas.spacing import headway
from liftcalc.formulas.traction import (
    riders_by_traction,
    riders_by_traction_at_start,
    riders_by_traction_bottom_drive,
    riders_by_traction_bottom_drive_at_start,
)
from liftcalc.lifts.limit_records import ENTERED_BY_YOU, Limit, LimitEntry, left_out
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q

ONE_PERSON = Q(1, "person")
ONE_PLACE = Q(1, "")


def _with(formula, *names):
    """Return a formula as a function of values, of which it takes those of the names."""

    def of_values(values):
        return formula(**{name: values[name] for name in names})

    return of_values


SPACING = LimitEntry(
    "spacing", "spacing", ("line_speed", "spacing", "persons_per_carrier"),
    _with(hourly_capacity, "line_speed", "spacing", "persons_per_carrier"),
    "C = 3600 n v / s",
    lambda v: f"{show(v['persons_per_carrier'])} every {show(v['spacing'])} at {show(v['line_speed'])}: every "
    f"{show(headway(v['line_speed'], v['spacing']))}.",
)  # fmt: skip

LOADING_TIMED_AS = {
    "starts": "from one successful start to the next",
    "readiness": "from the place free to under way, misses left out,",
}
LOADING = LimitEntry(
    "loading", "time", ("loading_time", "persons_per_carrier"),
    _with(loading_capacity, "loading_time", "persons_per_carrier", "loading_places"),
    "C = 3600 n K / t",
    lambda v: f"{show(v['loading_time'])} {LOADING_TIMED_AS[v.get('loading_timed_as', 'starts')]} at each place, at "
    "any line speed.",
    assumed={"loading_places": ONE_PLACE}, counts=("loading_timed_as",),
)  # fmt: skip


OF_THE_MOTOR = ("motor_power", "efficiency", "line_speed", "energy_per_rider", "idle_drag")


def _motor_capacity(values):
    """Return what a motor carries: with full power at every speed, or at constant torque below its base speed."""
    return (motor_capacity_at_constant_torque if "base_speed" in values else motor_capacity)(**values)


def _law_of_the_motor(values):
    power = "P min(v / v_base, 1)" if "base_speed" in values else "P"
    return f"C = 3600 (eta {power} - F0 v) / E"


def _motor_in_words(values):
    drive = "at constant torque below base speed" if "base_speed" in values else "with full power at this speed"
    return f"{show(values['motor_power'])} of motor, {drive}, for {show(values['energy_per_rider'])} a rider."


MOTOR = LimitEntry(
    "motor", "power", OF_THE_MOTOR, _motor_capacity, _law_of_the_motor, _motor_in_words, counts=("base_speed",)
)

# where the drive stands: riders that the sheave pulls in the steady run, and at a start. It has no default: from the
# bottom the same rope pulls little more than half as many. A start counts where its acceleration was read, and takes
# from both strands.
BY_DRIVE = {
    "top": (riders_by_traction, riders_by_traction_at_start),
    "bottom": (riders_by_traction_bottom_drive, riders_by_traction_bottom_drive_at_start),
}
OF_A_START = ("starting_acceleration", "rider_mass", "moving_mass")
OF_THE_SHEAVE = ("slack_tension", "pull", "idle_drag", "lining_friction", "wrap_angle", "grip_safety_factor")


def _riders_pulled(values):
    """Return the riders that the sheave pulls in the steady run, and at a start; None where no start is asked for."""
    steady, at_start = BY_DRIVE[values["drive_position"]]
    sheave = {name: values[name] for name in OF_THE_SHEAVE}
    start = {name: values[name] for name in OF_A_START if name in values}
    return steady(**sheave), at_start(**sheave, **start) if OF_A_START[0] in values else None


def _traction_capacity(values):
    steady, begun = _riders_pulled(values)
    riders = steady if begun is None else np.minimum(steady, begun)
    return hourly_capacity_from_head_count(riders, values["ride_time"])


def _law_of_traction(values):
    steady, begun = _riders_pulled(values)
    start, each = ("", "F") if begun is None or begun >= steady else (" - M a (1 + r) / 2", "F + m a")
    if values["drive_position"] == "bottom":
        each = f"r {each}" if each == "F" else f"r ({each})"
    return f"N = (T2 (r - 1) - F0{start}) / ({each}), r = e^(mu beta) / S, C = 3600 N / T"


def _traction_in_words(values):
    steady, begun = _riders_pulled(values)
    held = f"The rope holds on the drive sheave at the {values['drive_position']} with {show(steady)} on the line in "
    if begun is None:
        return f"{held}the steady run; a start asks for more."
    at_start = f"{show(begun)} at a start of {show(values['starting_acceleration'])}"
    return f"{held}the steady run, {at_start}: the smaller counts."


TRACTION = LimitEntry(
    "traction", "force",
    ("slack_tension", "drive_position", "lining_friction", "wrap_angle", "grip_safety_factor", "pull", "idle_drag",
     "ride_time"),
    _traction_capacity, _law_of_traction, _traction_in_words, counts=OF_A_START[:1], with_it=OF_A_START[1:],
)  # fmt: skip

UNLOAD = LimitEntry(
    "unload", "persons", ("clearing_time", "persons_per_carrier"),
    _with(unload_capacity, "clearing_time", "persons_per_carrier", "unloading_places"),
    "C = 3600 n K / t_clear",
    lambda v: f"{show(v['clearing_time'])} until each unloading place is clear for the next.",
    assumed={"unloading_places": ONE_PLACE},
)  # fmt: skip

OF_THE_STATION = ("carrier_length", "carrier_gap", "station_speed")
_station_interval = _with(least_station_interval, *OF_THE_STATION)

STATION = LimitEntry(
    "station", "station", (*OF_THE_STATION, "persons_per_carrier"),
    lambda v: hourly_capacity_from_interval(_station_interval(v), v["persons_per_carrier"]),
    "C = 3600 n v_station / (l + g)",
    lambda v: f"Carriers creep through the station {show(_station_interval(v))} apart at the least, whatever the line "
    "speed: a packing figure, and boarding and braking may ask for more.",
    belongs=lambda kind: kind.detachable,
)  # fmt: skip

LIMITS = (SPACING, LOADING, MOTOR, TRACTION, UNLOAD, STATION)  # the lift's own

_OF_A_CROWD = ("crowd", "ride_and_descent", "loading_time")
_most, _least = _with(crowd_capacity_at_most, *_OF_A_CROWD), _with(crowd_capacity_at_least, *_OF_A_CROWD)

PEOPLE = LimitEntry(
    "people", "persons", _OF_A_CROWD, _most,
    "C <= 3600 min(N / (Z + D), 1 / D)",
    lambda v: f"A crowd of {show(v['crowd'])} makes at most {show(_most(v))} and at least {show(_least(v))}, lap after "
    "lap.",
    group="people", at_least=_least,
)  # fmt: skip

SLOPE = LimitEntry(
    "slope", "persons", ("rider_density", "slope_area", "descent_time"),
    _with(slope_capacity, "rider_density", "slope_area", "descent_time"),
    "C = 3600 density A / T",
    lambda v: f"{show(v['rider_density'] * v['slope_area'], 'person')} on the slope at once, {show(v['descent_time'])} "
    "a descent.",
    group="slope",
)  # fmt: skip


def spacing_limit(line_speed, spacing, persons_per_carrier=ONE_PERSON):
    """Return the limit that spacing on the line sets; ``LeftOut`` where a value is None.

    Parameters
    ----------
    line_speed : Quantity [m/s] or None
        Speed of the haul rope; where hands slip on it, the speed of the riders.
    spacing : Quantity [m] or None
        Intended distance along the rope from one rider, or carrier, to the next; of a mix, the mean spacing.
    persons_per_carrier : Quantity [person] or None
        Riders on one carrier, or side by side; one person if left out.

    Returns
    -------
    Limit or LeftOut
    """
    return SPACING.record(dict(line_speed=line_speed, spacing=spacing, persons_per_carrier=persons_per_carrier))


def loading_limit(loading_time, persons_per_carrier=ONE_PERSON, loading_places=None):
    """Return the limit that the loading point sets; ``LeftOut`` where its time or the persons are None.

    Parameters
    ----------
    loading_time : Quantity [s] or None
        Mean time between successful starts at one place.
    persons_per_carrier : Quantity [person] or None
        Riders who start together; one person if left out.
    loading_places : Quantity [] or None
        Places where riders start independently at once; taken as 1 if left out or None, and the sentence says so.

    Returns
    -------
    Limit or LeftOut
    """
    return LOADING.record(
        dict(loading_time=loading_time, persons_per_carrier=persons_per_carrier, loading_places=loading_places)
    )


def motor_limit(motor_power, efficiency, line_speed, idle_drag, energy_per_rider, base_speed=None):
    """Return the limit that the motor sets; ``LeftOut`` where a value other than the base speed is None.

    Parameters
    ----------
    motor_power : Quantity [kW] or None
        Rated power of the motor.
    efficiency : Quantity [] or None
        Part of the motor's power that reaches the rope.
    line_speed : Quantity [m/s] or None
        Speed of the haul rope or belt.
    idle_drag : Quantity [N] or None
        Drag of the whole empty rope or belt; zero only if it is meant to be zero.
    energy_per_rider : Quantity [J] or None
        Energy that the drive gives to one rider.
    base_speed : Quantity [m/s] or None
        Line speed at which a variable-speed drive runs at rated speed: below it torque is constant, and not power.
        None for a drive that is re-geared to keep its full power.

    Returns
    -------
    Limit or LeftOut
    """
    values = dict(zip(OF_THE_MOTOR, (motor_power, efficiency, line_speed, energy_per_rider, idle_drag), strict=True))
    return MOTOR.record({**values, "base_speed": base_speed})


def traction_limit(slack_tension, *, drive_position, **values):
    """Return the limit that the grip of the rope on its drive sheave sets; ``LeftOut`` where a value is None.

    Parameters
    ----------
    slack_tension : Quantity [N] or None
        Tension of the slack side at the drive sheave, of the empty line running steadily.
    drive_position : str or None
        "top", or "bottom", where riders slacken the slack side; it is a reading, and never assumed. The counterweight
        draws the other sheave: with a weight at the drive itself this limit does not hold.
    **values : Quantity or None
        ``pull`` and ``idle_drag`` [N], ``lining_friction`` and ``grip_safety_factor`` [], ``wrap_angle`` [degree],
        ``ride_time`` [s], which turns riders on the line into riders an hour; and where a start with all of them on the
        line is asked for ``starting_acceleration`` [m/s**2], with ``rider_mass`` and ``moving_mass`` [kg].

    Returns
    -------
    Limit or LeftOut
        The smaller of the steady run and, where it is asked for, the start.

    Raises
    ------
    PlainError
        If the drive is neither at the top nor at the bottom, or a value belongs to no sheave.
    """
    if drive_position not in (*BY_DRIVE, None):
        raise PlainError(
            f"traction_limit: drive_position must be 'top' or 'bottom', but got {drive_position!r}. "
            "Ask the operator where the drive sheave stands."
        )
    known = (*TRACTION.needs, *OF_A_START)
    for name in values:
        if name not in known:
            raise PlainError(f"traction_limit: {name!r} is no value of a sheave. Write one of {', '.join(known)}.")
    return TRACTION.record({**values, "slack_tension": slack_tension, "drive_position": drive_position})


def unload_limit(clearing_time, persons_per_carrier=ONE_PERSON, unloading_places=None):
    """Return the limit that the unload area sets; ``LeftOut`` where its time or the persons are None.

    Parameters
    ----------
    clearing_time : Quantity [s] or None
        Mean time from a rider's arrival at one place until the place is clear for the next.
    persons_per_carrier : Quantity [person] or None
        Riders who arrive together; one person if left out.
    unloading_places : Quantity [] or None
        Places where riders get clear independently at once; taken as 1 if left out or None, and the sentence says so.

    Returns
    -------
    Limit or LeftOut
    """
    return UNLOAD.record(
        dict(clearing_time=clearing_time, persons_per_carrier=persons_per_carrier, unloading_places=unloading_places)
    )


def people_limit(crowd, *, ride_and_descent, loading_time):
    """Return the limit that a closed crowd sets, with a lower bound: demand, and no limit of the lift's own.

    Parameters
    ----------
    crowd : Quantity [person] or None
        People who ski this lift and nothing else.
    ride_and_descent : Quantity [s] or None
        Time of one ride and one descent, without the waiting line and without loading.
    loading_time : Quantity [s] or None
        Time that one person takes at the loading point.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where a value is None.
    """
    return PEOPLE.record(dict(crowd=crowd, ride_and_descent=ride_and_descent, loading_time=loading_time))


def slope_limit(rider_density, slope_area, descent_time):
    """Return the limit that room on the slope sets: the system's, and not the lift's own.

    Parameters
    ----------
    rider_density : Quantity [person/hectare] or None
        Riders on each hectare at once that people still find pleasant.
    slope_area : Quantity [hectare] or None
        Area of the slopes that the lift serves.
    descent_time : Quantity [s] or None
        Mean time of one descent.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where a value is None.
    """
    return SLOPE.record(dict(rider_density=rider_density, slope_area=slope_area, descent_time=descent_time))


def rule_limit(capacity, source):
    """Return a permission as a limit: entered with its source, and never assumed.

    Parameters
    ----------
    capacity : Quantity [person/hour], Capacity or None
        What the rule allows.
    source : str or None
        Where the rule stands: the code and its paragraph, the permit, the maker's manual.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where the figure or its source is None or an empty text.

    Raises
    ------
    PlainError
        If the source is not a text.
    """
    if source is not None and not isinstance(source, str):
        raise PlainError(f"rule_limit: source must be a text, but got {source!r}. Write where the rule stands.")
    source = source.strip() or None if source else None
    inputs = {"hourly capacity of the rule": capacity, "source of the rule": source}
    missing = [words for words, value in inputs.items() if value is None]
    if missing:
        return left_out("rule", missing, "rule")
    sentence = f"A permission, {ENTERED_BY_YOU}: {source.rstrip('.')}."
    return Limit("rule", capacity, "entered, not computed", {}, sentence, "rule", source)
