"""Every limit of a lift as one record: what it allows, by which formula, from which readings.

People and slope are limits of the system, a rule is a permission: they stand beside the lift's own and never among
them. Planning figures, no design.
"""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.formulas.capacity import hourly_capacity, hourly_capacity_from_head_count
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
from liftcalc.levels import Capacity
from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, Q, UnitError
from liftcalc.vocabulary import words_of

GROUPS = {"lift": "the lift's own", "people": "demand", "slope": "room to ski", "rule": "a permission"}
ENTERED_BY_YOU = "entered by you"
ONE_PERSON = Q(1, "person")
ONE_PLACE = Q(1, "")


@dataclass(frozen=True)
class Limit:
    """One limit of a line, with what it was computed from.

    Parameters
    ----------
    name : str
        Such as "spacing" or "motor".
    capacity : Capacity or Quantity [person/hour]
        What the limit allows, on one line; it is kept as a quantity in pph.
    formula : str
        The formula in plain characters.
    inputs : dict of str to Quantity
        What went in.
    sentence : str
        The limit in one sentence.
    group : str
        "lift", "people", "slope" or "rule".
    source : str
        Where the figures come from.
    at_least : Quantity [person/hour] or None
        A lower bound, where there is one.

    Raises
    ------
    UnitError
        If a capacity is no hourly capacity.
    ValueError
        If it is not one finite number, zero or more; if it is a packing figure, a count, or of several lines; or if
        the group is not known.
    """

    name: str
    capacity: Quantity
    formula: str
    inputs: dict
    sentence: str
    group: str = "lift"
    source: str = ENTERED_BY_YOU
    at_least: Quantity | None = None

    def __post_init__(self):
        if self.group not in GROUPS:
            raise PlainError(f"Limit: group must be one of {', '.join(GROUPS)}, but got {self.group!r}.")
        capacity = self.capacity
        if isinstance(capacity, Capacity):
            if capacity.level not in ("ideal", "governed") or capacity.lines != 1:
                raise PlainError(
                    f"Limit: {self.name!r} got {capacity}, which is no limit of one line. "
                    "Give an ideal or governed capacity of one line."
                )
            capacity = capacity.value
        object.__setattr__(self, "capacity", _one_capacity(self.name, capacity))
        object.__setattr__(self, "inputs", dict(self.inputs))
        if self.at_least is not None:
            object.__setattr__(self, "at_least", _one_capacity(self.name, self.at_least))

    def __str__(self):
        return f"{self.name}: {show(self.capacity)}. {self.sentence}"


def _one_capacity(name, capacity):
    """Return the capacity in pph, or say why it is not one hourly capacity."""
    if not isinstance(capacity, Quantity) or not capacity.check("[person]/[time]"):
        raise UnitError(
            f"Limit: {name!r} needs an hourly capacity, but got {as_received(capacity)}. Write Q(1200, 'pph')."
        )
    number = capacity.m_as("pph")
    if np.ndim(number):
        raise PlainError(
            f"Limit: {name!r} must be one number, but got {np.size(number)}. For draws use share_of_draws."
        )
    if not (np.isfinite(number) and number >= 0):
        raise PlainError(f"Limit: {name!r} must be a finite number, zero or more, but got {number:g} pph.")
    return Q(float(number), "pph")


@dataclass(frozen=True)
class LeftOut:
    """A limit that could not be computed.

    Parameters
    ----------
    name : str
        Name of the limit.
    missing : tuple of str
        What is missing.
    sentence : str
        What is missing, in one sentence.
    group : str
        As for a ``Limit``.
    """

    name: str
    missing: tuple
    sentence: str
    group: str = "lift"

    def __str__(self):
        return f"{self.name}: {self.sentence}"


def place_assumed(word, places):
    """Return the number of places and the words for it: taken as one, and said so, where it was not read."""
    return (ONE_PLACE, f" {word.capitalize()} taken as 1: not read.") if places is None else (places, "")


def missing_readings(name, inputs, group="lift"):
    """Return the record of a limit with a missing input; None if nothing is missing."""
    missing = tuple(word for word, value in inputs.items() if value is None)
    if not missing:
        return None
    return LeftOut(name, missing, f"Left out, not zero: no reading of {' and '.join(missing)}.", group)


def spacing_limit(line_speed, spacing, persons_per_carrier=ONE_PERSON):
    """Return the limit that spacing on the line sets.

    Parameters
    ----------
    line_speed : Quantity [m/s] or None
        Speed of the haul rope; where hands slip on it, the speed of the riders.
    spacing : Quantity [m] or None
        Intended distance along the rope from one rider, or carrier, to the next; of a mix, the mean spacing.
    persons_per_carrier : Quantity [person] or None
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where an input is None.
    """
    inputs = {"line speed": line_speed, "spacing": spacing, "persons per carrier": persons_per_carrier}
    left_out = missing_readings("spacing", inputs)
    if left_out:
        return left_out
    capacity, interval = hourly_capacity(line_speed, spacing, persons_per_carrier), headway(line_speed, spacing)
    sentence = f"{show(persons_per_carrier)} every {show(spacing)} at {show(line_speed)}: every {show(interval)}."
    return Limit("spacing", capacity, "C = 3600 n v / s", inputs, sentence)


def loading_limit(loading_time, persons_per_carrier=ONE_PERSON, loading_places=None):
    """Return the limit that the loading point sets.

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
        ``LeftOut`` where another input is None.
    """
    loading_places, assumed = place_assumed("loading places", loading_places)
    inputs = {"loading time": loading_time, "persons per carrier": persons_per_carrier}
    inputs |= {"loading places": loading_places}
    left_out = missing_readings("loading", inputs)
    if left_out:
        return left_out
    capacity = loading_capacity(loading_time, persons_per_carrier, loading_places)
    sentence = f"{show(loading_time)} from one successful start to the next at each place, at any line speed.{assumed}"
    return Limit("loading", capacity, "C = 3600 n K / t", inputs, sentence)


def motor_capacity_of_drive(motor_power, efficiency, line_speed, idle_drag, energy_per_rider, base_speed=None):
    """Return the hourly capacity of ``motor_limit`` for scalars or arrays, with full power or at constant torque."""
    if base_speed is None:
        return motor_capacity(motor_power, efficiency, line_speed, idle_drag, energy_per_rider)
    return motor_capacity_at_constant_torque(
        motor_power, efficiency, idle_drag, energy_per_rider, line_speed=line_speed, base_speed=base_speed
    )


def motor_limit(motor_power, efficiency, line_speed, idle_drag, energy_per_rider, base_speed=None):
    """Return the limit that the motor sets.

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
        None for a drive that is re-geared to keep its full power; it leaves nothing out.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where an input other than the base speed is None.
    """
    inputs = {"motor power": motor_power, "efficiency": efficiency, "line speed": line_speed}
    inputs |= {"idle drag": idle_drag, "energy per rider": energy_per_rider}
    left_out = missing_readings("motor", inputs)
    if left_out:
        return left_out
    if base_speed is None:
        formula, drive = "C = 3600 (eta P - F0 v) / E", "with full power at this speed"
    else:
        inputs["base speed"] = base_speed
        formula, drive = "C = 3600 (eta P min(v / v_base, 1) - F0 v) / E", "at constant torque below base speed"
    capacity = motor_capacity_of_drive(motor_power, efficiency, line_speed, idle_drag, energy_per_rider, base_speed)
    sentence = f"{show(motor_power)} of motor, {drive}, for {show(energy_per_rider)} a rider."
    return Limit("motor", capacity, formula, inputs, sentence)


STEADY_AND_START = {
    "top": ("slack_tension", riders_by_traction, riders_by_traction_at_start),
    "bottom": ("slack_tension", riders_by_traction_bottom_drive, riders_by_traction_bottom_drive_at_start),
}
OF_A_START = ("starting_acceleration", "rider_mass", "moving_mass")


def _start_of(starting_acceleration, *masses):
    """Return the arguments of a start by their names; None where none is asked for."""
    start = (starting_acceleration, *masses)
    return None if starting_acceleration is None else dict(zip(OF_A_START, start, strict=True))


def _riders_that_the_sheave_pulls(slack_tension, drive_position, sheave, start):
    """Return the riders that a sheave pulls in the steady run, and at a start or None, for scalars or arrays."""
    tension, steady, at_start = STEADY_AND_START[drive_position]
    sheave = {**sheave, tension: slack_tension}
    return steady(**sheave), at_start(**sheave, **start) if start else None


def traction_capacity(slack_tension, *, ride_time, drive_position, starting_acceleration=None, rider_mass=None,
                      moving_mass=None, **sheave):  # fmt: skip
    """Return the hourly capacity of ``traction_limit`` for scalars or arrays, from the same arguments."""
    start = _start_of(starting_acceleration, rider_mass, moving_mass)
    steady, begun = _riders_that_the_sheave_pulls(slack_tension, drive_position, sheave, start)
    riders = steady if begun is None else np.minimum(steady, begun)
    return hourly_capacity_from_head_count(riders, ride_time)


def traction_limit(
    slack_tension, *, pull, idle_drag, lining_friction, wrap_angle, grip_safety_factor, ride_time, drive_position,
    starting_acceleration=None, rider_mass=None, moving_mass=None,
):  # fmt: skip
    """Return the limit that the grip of the rope on its drive sheave sets.

    Parameters
    ----------
    slack_tension : Quantity [N] or None
        Tension of the slack side at the drive sheave, of the empty line running steadily.
    pull, idle_drag : Quantity [N] or None
        Pull of one rider along the rope; drag of the whole empty rope.
    lining_friction, grip_safety_factor : Quantity [] or None
        Friction of rope on sheave; how many times over the rope must hold.
    wrap_angle : Quantity [degree] or None
        Angle over which the rope lies on the drive sheave.
    ride_time : Quantity [s] or None
        Time from grab to let-go; it turns riders on the line into riders an hour.
    drive_position : str or None
        "top", or "bottom", where riders slacken the slack side; it is a reading, and never assumed. The counterweight
        draws the other sheave: with a weight at the drive itself this limit does not hold.
    starting_acceleration : Quantity [m/s**2] or None
        How hard the rope speeds up with all of them on it; None where no such start is asked for.
    rider_mass, moving_mass : Quantity [kg] or None
        Needed with a starting acceleration: mass of one rider; of the rope, carriers and sheaves that move with it.

    Returns
    -------
    Limit or LeftOut
        The smaller of the steady run and, where it is asked for, the start; ``LeftOut`` where an input is None: without
        a reading nothing is assumed.

    Raises
    ------
    ValueError
        If the drive is neither at the top nor at the bottom.
    """
    if drive_position not in (*STEADY_AND_START, None):
        raise PlainError(
            f"traction_limit: drive_position must be 'top' or 'bottom', but got {drive_position!r}. "
            "Ask the operator where the drive sheave stands."
        )
    sheave = {"pull": pull, "idle_drag": idle_drag, "lining_friction": lining_friction, "wrap_angle": wrap_angle}
    sheave |= {"grip_safety_factor": grip_safety_factor}
    start = _start_of(starting_acceleration, rider_mass, moving_mass)
    inputs = {"slack tension": slack_tension, "drive position": drive_position}
    inputs |= {words_of(name): value for name, value in (sheave | (start or {})).items()}
    inputs |= {"ride time": ride_time}
    left_out = missing_readings("traction", inputs)
    if left_out:
        return left_out
    steady, begun = _riders_that_the_sheave_pulls(slack_tension, drive_position, sheave, start)
    each = "F" if drive_position == "top" else "r F"
    formula = f"N = (T2 (r - 1) - F0) / ({each}), r = e^(mu beta) / S, C = 3600 N / T"
    held = f"The rope holds on the drive sheave at the {drive_position} with"
    riders, sentence = steady, f"{held} {show(steady)} on the line in the steady run; a start asks for more."
    if start:
        riders, sentence = min(steady, begun), f"{held} {show(steady)} on the line in the steady run, {show(begun)} at "
        sentence += f"a start of {show(starting_acceleration)}: the smaller counts."
    if start and begun < steady:
        each = "F + m a" if drive_position == "top" else "r (F + m a)"
        formula = f"N = (T2 (r - 1) - F0 - M a (1 + r) / 2) / ({each}), r = e^(mu beta) / S, C = 3600 N / T"
    capacity = hourly_capacity_from_head_count(riders, ride_time)
    return Limit("traction", capacity, formula, inputs, sentence)


def unload_limit(clearing_time, persons_per_carrier=ONE_PERSON, unloading_places=None):
    """Return the limit that the unload area sets.

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
        ``LeftOut`` where another input is None.
    """
    unloading_places, assumed = place_assumed("unloading places", unloading_places)
    inputs = {"clearing time": clearing_time, "persons per carrier": persons_per_carrier}
    inputs |= {"unloading places": unloading_places}
    left_out = missing_readings("unload", inputs)
    if left_out:
        return left_out
    capacity = unload_capacity(clearing_time, persons_per_carrier, unloading_places)
    sentence = f"{show(clearing_time)} until each unloading place is clear for the next.{assumed}"
    return Limit("unload", capacity, "C = 3600 n K / t_clear", inputs, sentence)


def people_limit(crowd, *, ride_and_descent, loading_time):
    """Return the limit that a closed crowd sets: demand, and no limit of the lift's own.

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
        With a lower bound as ``at_least``; ``LeftOut`` where an input is None.
    """
    inputs = {"crowd": crowd, "ride and descent": ride_and_descent, "loading time": loading_time}
    left_out = missing_readings("people", inputs, "people")
    if left_out:
        return left_out
    most = crowd_capacity_at_most(crowd, ride_and_descent=ride_and_descent, loading_time=loading_time)
    least = crowd_capacity_at_least(crowd, ride_and_descent=ride_and_descent, loading_time=loading_time)
    sentence = f"A crowd of {show(crowd)} makes at most {show(most)} and at least {show(least)}, lap after lap."
    return Limit("people", most, "C <= 3600 min(N / (Z + D), 1 / D)", inputs, sentence, "people", at_least=least)


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
        ``LeftOut`` where an input is None.
    """
    inputs = {"rider density": rider_density, "slope area": slope_area, "descent time": descent_time}
    left_out = missing_readings("slope", inputs, "slope")
    if left_out:
        return left_out
    capacity = slope_capacity(rider_density, slope_area, descent_time)
    sentence = f"{show(rider_density * slope_area, 'person')} on the slope at once, {show(descent_time)} a descent."
    return Limit("slope", capacity, "C = 3600 density A / T", inputs, sentence, "slope")


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
    ValueError
        If the source is not a text.
    """
    if source is not None and not isinstance(source, str):
        raise PlainError(f"rule_limit: source must be a text, but got {source!r}. Write where the rule stands.")
    source = source.strip() or None if source else None
    inputs = {"hourly capacity of the rule": capacity, "source of the rule": source}
    left_out = missing_readings("rule", inputs, "rule")
    if left_out:
        return left_out
    sentence = f"A permission, {ENTERED_BY_YOU}: {source.rstrip('.')}."
    return Limit("rule", capacity, "entered, not computed", {}, sentence, "rule", source)
