"""Every limit of a lift as one record, which of them governs, and how sure that is.

The smallest of the lift's own limits is an upper bound, no promise. People and slope are limits of the system, a rule
is a permission: they stand beside the lift's own and never among them. Planning figures, no design.
"""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.capacity import SECONDS_PER_HOUR, hourly_capacity, hourly_capacity_from_head_count
from liftcalc.levels import Capacity
from liftcalc.line import headway, ride_time
from liftcalc.loading_point import (
    crowd_capacity_at_least,
    crowd_capacity_at_most,
    loading_capacity,
    unload_capacity,
)
from liftcalc.motor import motor_capacity, motor_capacity_at_constant_torque
from liftcalc.quantity_text import show
from liftcalc.traction import riders_by_traction, riders_by_traction_bottom_drive
from liftcalc.units import Q, UnitError, unit_aware

GROUPS = {"lift": "the lift's own", "people": "demand", "slope": "room to ski", "rule": "a permission"}
ENTERED_BY_YOU = "entered by you"
NEXT_TO_NOTHING = 1e-6  # pph: below it a share of the capacity says nothing
ONE_PERSON = Q(1, "person")
ONE_PLACE = Q(1, "")
AN_UPPER_BOUND = "This is an upper bound: chance at the loading point, misses, stops and gaps take their share."


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
            raise ValueError(f"Limit: group must be one of {', '.join(GROUPS)}, but got {self.group!r}.")
        capacity = self.capacity
        if isinstance(capacity, Capacity):
            if capacity.level not in ("ideal", "governed") or capacity.lines != 1:
                raise ValueError(
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
        raise UnitError(f"Limit: {name!r} needs an hourly capacity, but got {_came(capacity)}. Write Q(1200, 'pph').")
    number = capacity.m_as("pph")
    if np.ndim(number):
        raise ValueError(
            f"Limit: {name!r} must be one number, but got {np.size(number)}. For draws use share_of_draws."
        )
    if not (np.isfinite(number) and number >= 0):
        raise ValueError(f"Limit: {name!r} must be a finite number, zero or more, but got {number:g} pph.")
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


def _left_out(name, inputs, group="lift"):
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
    left_out = _left_out("spacing", inputs)
    if left_out:
        return left_out
    capacity, interval = hourly_capacity(line_speed, spacing, persons_per_carrier), headway(line_speed, spacing)
    sentence = f"{show(persons_per_carrier)} every {show(spacing)} at {show(line_speed)}: every {show(interval)}."
    return Limit("spacing", capacity, "C = 3600 n v / s", inputs, sentence)


def loading_limit(loading_time, persons_per_carrier=ONE_PERSON, loading_places=ONE_PLACE):
    """Return the limit that the loading point sets.

    Parameters
    ----------
    loading_time : Quantity [s] or None
        Mean time between successful starts at one place.
    persons_per_carrier : Quantity [person] or None
        Riders who start together; one person if left out.
    loading_places : Quantity [] or None
        Places where riders start independently at once; 1 if left out.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where an input is None.
    """
    inputs = {"loading time": loading_time, "persons per carrier": persons_per_carrier}
    inputs |= {"loading places": loading_places}
    left_out = _left_out("loading", inputs)
    if left_out:
        return left_out
    capacity = loading_capacity(loading_time, persons_per_carrier, loading_places)
    sentence = f"{show(loading_time)} from one successful start to the next at each place, whatever the line speed."
    return Limit("loading", capacity, "C = 3600 n K / t", inputs, sentence)


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
    left_out = _left_out("motor", inputs)
    if left_out:
        return left_out
    if base_speed is None:
        capacity = motor_capacity(motor_power, efficiency, line_speed, idle_drag, energy_per_rider)
        formula, drive = "C = 3600 (eta P - F0 v) / E", "with full power at this speed"
    else:
        inputs["base speed"] = base_speed
        capacity = motor_capacity_at_constant_torque(
            motor_power, efficiency, idle_drag, energy_per_rider, line_speed=line_speed, base_speed=base_speed
        )
        formula, drive = "C = 3600 (eta P min(v / v_base, 1) - F0 v) / E", "at constant torque below base speed"
    sentence = f"{show(motor_power)} of motor, {drive}, for {show(energy_per_rider)} a rider."
    return Limit("motor", capacity, formula, inputs, sentence)


def traction_limit(
    slack_tension, *, pull, idle_drag, friction, wrap_angle, safety_factor, line_speed, ridden_length,
    drive_at="top", **start,
):  # fmt: skip
    """Return the limit that the grip of the rope on its drive sheave sets.

    Parameters
    ----------
    slack_tension : Quantity [N] or None
        Tension of the slack side at the drive sheave; for a bottom drive, with nobody on the line.
    pull, idle_drag : Quantity [N] or None
        Pull of one rider along the slope; drag of the whole empty rope.
    friction, safety_factor : Quantity [] or None
        Friction of rope on lining; how many times over the rope must hold.
    wrap_angle : Quantity [degree] or None
        Angle over which the rope lies on the drive sheave.
    line_speed : Quantity [m/s] or None
        Speed of the haul rope.
    ridden_length : Quantity [m] or None
        Length along the rope from grab to let-go; with the speed it turns riders on the line into riders an hour.
    drive_at : str
        "top", or "bottom", where riders slacken the slack side.
    **start : Quantity
        starting_acceleration [m/s**2], rider_mass [kg] and moving_mass [kg] of a start with a full line; the steady
        run if left out.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where an input is None: without a reading of the tension nothing is assumed.

    Raises
    ------
    ValueError
        If the drive is neither at the top nor at the bottom.
    """
    if drive_at not in ("top", "bottom"):
        raise ValueError(f"traction_limit: drive_at must be 'top' or 'bottom', but got {drive_at!r}.")
    sheave = {"pull": pull, "idle_drag": idle_drag, "friction": friction, "wrap_angle": wrap_angle}
    sheave |= {"safety_factor": safety_factor, **start}
    inputs = {"slack-side tension": slack_tension, **{name.replace("_", " "): value for name, value in sheave.items()}}
    inputs |= {"line speed": line_speed, "ridden length": ridden_length}
    left_out = _left_out("traction", inputs)
    if left_out:
        return left_out
    if drive_at == "top":
        riders = riders_by_traction(slack_tension=slack_tension, **sheave)
        formula = "N = (T2 (e^(mu beta) / S - 1) - F0 - M a) / (F + m a), C = 3600 N v / L"
    else:
        riders = riders_by_traction_bottom_drive(empty_slack_tension=slack_tension, **sheave)
        formula = "N = (T2 (r - 1) - F0 - M a) / (F r + m a), r = e^(mu beta) / S, C = 3600 N v / L"
    capacity = hourly_capacity_from_head_count(riders, ride_time(ridden_length, line_speed))
    sentence = f"The rope holds on the drive sheave with {show(riders)} on the line, {drive_at} drive."
    return Limit("traction", capacity, formula, inputs, sentence)


def unload_limit(clearing_time, persons_per_carrier=ONE_PERSON, unloading_places=ONE_PLACE):
    """Return the limit that the unload area sets.

    Parameters
    ----------
    clearing_time : Quantity [s] or None
        Mean time from a rider's arrival at one place until the place is clear for the next.
    persons_per_carrier : Quantity [person] or None
        Riders who arrive together; one person if left out.
    unloading_places : Quantity [] or None
        Places where riders get clear independently at once; 1 if left out.

    Returns
    -------
    Limit or LeftOut
        ``LeftOut`` where an input is None.
    """
    inputs = {"clearing time": clearing_time, "persons per carrier": persons_per_carrier}
    inputs |= {"unloading places": unloading_places}
    left_out = _left_out("unload", inputs)
    if left_out:
        return left_out
    capacity = unload_capacity(clearing_time, persons_per_carrier, unloading_places)
    sentence = f"{show(clearing_time)} until each unloading place is clear for the next."
    return Limit("unload", capacity, "C = 3600 n K / t_clear", inputs, sentence)


@unit_aware(rider_density="person/hectare", slope_area="hectare", descent_time="s", returns="person/hour")
def slope_capacity(rider_density, slope_area, descent_time):
    r"""Return how many an hour can ski down a slope at a density that people still find pleasant.

    Parameters
    ----------
    rider_density : Quantity [person/hectare]
        Riders on each hectare at once; a scalar or an array.
    slope_area : Quantity [hectare]
        Area of the slopes that the lift serves.
    descent_time : Quantity [s]
        Mean time of one descent, stops on the slope included.

    Returns
    -------
    Quantity [person/hour]
        Riders an hour.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: C = 3600 \rho A / T

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slope_capacity(Q(40, "person/hectare"), Q(1.2, "hectare"), Q(90, "s")))
    '1,920 pph'
    """
    return SECONDS_PER_HOUR * rider_density * slope_area / descent_time


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
    left_out = _left_out("people", inputs, "people")
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
    left_out = _left_out("slope", inputs, "slope")
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
        raise ValueError(f"rule_limit: source must be a text, but got {source!r}. Write where the rule stands.")
    source = source.strip() or None if source else None
    inputs = {"hourly capacity of the rule": capacity, "source of the rule": source}
    left_out = _left_out("rule", inputs, "rule")
    if left_out:
        return left_out
    sentence = f"A permission, {ENTERED_BY_YOU}: {source.rstrip('.')}."
    return Limit("rule", capacity, "entered, not computed", {}, sentence, "rule", source)


@dataclass(frozen=True)
class Governing:
    """Which of a lift's own limits governs, and what stands beside it.

    Parameters
    ----------
    limit : Limit
        The smallest of the lift's own limits.
    next_limit : Limit or None
        The next smallest of them; None where there is only one.
    ahead : Quantity [person/hour] or None
        How far the next one is above.
    ahead_share : Quantity [percent] or None
        The same as a part of the governing one; None too where that one is next to nothing.
    in_order : tuple of Limit
        All limits, the smallest first; those of other groups as well.
    left_out : tuple of LeftOut
        Limits that could not be computed.
    capacity : Capacity
        The governing capacity, at the level "governed".
    sentence : str
        The result in words.
    """

    limit: Limit
    next_limit: Limit | None
    ahead: Quantity | None
    ahead_share: Quantity | None
    in_order: tuple
    left_out: tuple
    capacity: Capacity
    sentence: str

    def __str__(self):
        return self.sentence


def governing(limits):
    """Return which of a lift's own limits governs.

    Parameters
    ----------
    limits : iterable of Limit and LeftOut
        Limits of one line, as the functions of this module return them; each name once.

    Returns
    -------
    Governing
        The governing limit, the next one and how far away it is, all limits in order, and those left out.

    Raises
    ------
    ValueError
        If something else came, a name came twice, or none of the lift's own limits is there.

    Examples
    --------
    >>> from liftcalc import Q
    >>> from liftcalc.limits import governing, loading_limit, spacing_limit
    >>> result = governing([spacing_limit(Q(3.4, "m/s"), Q(6.8, "m")), loading_limit(Q(3, "s"))])
    >>> result.capacity
    1,200 pph (governed)
    >>> result.next_limit.name
    'spacing'
    """
    limits = list(limits)
    names = [_name(limit) for limit in limits]
    twice = [name for name in names if names.count(name) > 1]
    if twice:
        raise ValueError(f"governing: {twice[0]!r} came {names.count(twice[0])} times. Give each limit once.")
    in_order = tuple(sorted((item for item in limits if isinstance(item, Limit)), key=_pph))
    left_out = tuple(item for item in limits if isinstance(item, LeftOut))
    own = [limit for limit in in_order if limit.group == "lift"]
    if not own:
        came = ", ".join(names) or "nothing"
        raise ValueError(
            f"governing: none of the lift's own limits can be computed; came: {came}. "
            "Give at least one, such as spacing_limit(Q(3.4, 'm/s'), Q(6.8, 'm'))."
        )
    first, following = own[0], own[1] if len(own) > 1 else None
    ahead = following.capacity - first.capacity if following else None
    share = (ahead / first.capacity).to("percent") if following and _pph(first) > NEXT_TO_NOTHING else None
    sentence = _sentence(first, following, ahead, share, in_order, left_out)
    capacity = Capacity(first.capacity, "governed")
    return Governing(first, following, ahead, share, in_order, left_out, capacity, sentence)


def _came(value):
    """Return what came, as text that is alike with every version of the unit library."""
    return show(value) if isinstance(value, Quantity) else repr(value)


def _name(limit):
    if not isinstance(limit, (Limit, LeftOut)):
        raise ValueError(f"governing: every entry must be a Limit or a LeftOut, but got {_came(limit)}.")
    return limit.name


def _pph(limit):
    return limit.capacity.m_as("pph")


def _sentence(first, following, ahead, share, in_order, left_out):
    """Return the result of ``governing`` in words."""
    parts = [f"{first.name.capitalize()} governs: at most {show(first.capacity)}."]
    if following and _pph(following) == _pph(first):
        parts.append(f"{following.name.capitalize()} stands at the same figure.")
    elif following:
        part = f", or {show(share)}," if share is not None else ""
        parts.append(f"Next comes {following.name}, {show(ahead)}{part} above it.")
    parts.append(AN_UPPER_BOUND)
    lower = [limit for limit in in_order if limit.group != "lift" and _pph(limit) < _pph(first)]
    parts += [
        f"Apart from the lift, {limit.name} ({GROUPS[limit.group]}) stands lower: {show(limit.capacity)}."
        for limit in lower
    ]
    if left_out:
        parts.append(f"Left out for want of a reading: {', '.join(item.name for item in left_out)}.")
    return " ".join(parts)


def _in_pph(name, values):
    """Return draws as plain numbers in pph."""
    if not isinstance(values, Quantity):
        return values
    if not values.check("[person]/[time]"):
        raise UnitError(f"share_of_draws: {name} needs hourly capacities, but got {values.units}. Give draws in pph.")
    return values.m_as("pph")


def share_of_draws(draws):
    """Return in what share of draws each limit governs, where readings in doubt bring two limits close.

    Parameters
    ----------
    draws : dict of str to array
        Sampled capacities of each of the lift's own limits, by its name, all of one shape: plain numbers in pph, or
        quantities. Draw number five of every limit must come from draw number five of the readings, so that shared
        readings move together.

    Returns
    -------
    dict of str to float
        Share of each limit; they add up to 1. Draws in which several are the smallest are shared among them.

    Raises
    ------
    UnitError
        If draws come as quantities that are no hourly capacities.
    ValueError
        If there is no limit or no draw, the shapes differ, or a draw is negative or no finite number.

    Examples
    --------
    >>> share_of_draws({"spacing": [1800, 1700, 1900], "motor": [1750, 1720, 1900]})
    {'spacing': 0.5, 'motor': 0.5}
    """
    if not draws:
        raise ValueError(
            "share_of_draws: no limit came. Give an array of draws for each, such as {'motor': [1571, 1290]}."
        )
    arrays = {name: np.asarray(_in_pph(name, values), dtype=float) for name, values in draws.items()}
    shapes = {name: array.shape for name, array in arrays.items()}
    if len(set(shapes.values())) > 1:
        sizes = ", ".join(f"{name} has shape {shape}" for name, shape in shapes.items())
        raise ValueError(f"share_of_draws: the draws do not fit together: {sizes}. Give as many draws for each.")
    for name, array in arrays.items():
        if array.size == 0:
            raise ValueError(f"share_of_draws: {name} holds no draws. Give at least one.")
        wrong = array[~(np.isfinite(array) & (array >= 0))]
        if wrong.size:
            raise ValueError(
                f"share_of_draws: {name} holds {wrong.size} draws that are no capacity, such as {wrong[0]:g} pph. "
                "Leave that draw out of every limit."
            )
    together = np.stack(list(arrays.values()))
    smallest = together == together.min(axis=0)
    parts = smallest / smallest.sum(axis=0)
    return {name: float(part.mean()) for name, part in zip(arrays, parts, strict=True)}
