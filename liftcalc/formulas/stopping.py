"""What pulls and what stops: slope angle and the three stopping distances.

Planning figures, no design. Stop gates are tested as the maker's manual and the local code say; they are never
sized from here.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.units import PlainError, unit_aware


@unit_aware(line_speed="m/s", stop_delay="s", rope_deceleration="m/s**2", returns="m", may_be_zero=("stop_delay",))
def rope_stopping_distance(line_speed, stop_delay, rope_deceleration):
    r"""Return how far the rope still runs after a stop gate has tripped: no human reaction in it.

    Parameters
    ----------
    line_speed : Quantity [m/s]
        Speed of the haul rope; a scalar or an array.
    stop_delay : Quantity [s]
        Time from the trip until the rope begins to slow; may be zero.
    rope_deceleration : Quantity [m/s**2]
        How hard the rope slows. It depends on the load, and either the empty rope or the full line may run furthest:
        ``rope_deceleration``.

    Returns
    -------
    Quantity [m]
        Distance until the rope stands.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a speed or a deceleration is not greater than zero, or the delay is negative.

    Notes
    -----
    .. math:: d = v t_{delay} + v^2 / (2 a)

    Source: motion at constant speed, then at constant deceleration; the form of the stopping sight distance in the
    AASHTO Green Book.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(rope_stopping_distance(Q(3.4, "m/s"), Q(0.5, "s"), Q(1.5, "m/s**2")))
    '5.6 m'
    """
    return line_speed * stop_delay + line_speed**2 / (2 * rope_deceleration)


@unit_aware(
    line_speed="m/s",
    reaction_time="s",
    stop_delay="s",
    rope_deceleration="m/s**2",
    returns="m",
    may_be_zero=("reaction_time", "stop_delay"),
)
def attendant_stopping_distance(line_speed, *, reaction_time, stop_delay, rope_deceleration):
    r"""Return how far the rope still runs after an attendant sees a fall and presses stop.

    Parameters
    ----------
    line_speed : Quantity [m/s]
        Speed of the haul rope; a scalar or an array.
    reaction_time : Quantity [s]
        Time until the button is pressed; may be zero. No published figure for lift attendants was found: measure it.
    stop_delay : Quantity [s]
        Time from the button until the rope begins to slow; may be zero.
    rope_deceleration : Quantity [m/s**2]
        How hard the rope slows.

    Returns
    -------
    Quantity [m]
        Distance until the rope stands.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a speed or a deceleration is not greater than zero, or a time is negative.

    Notes
    -----
    .. math:: d = v (t_{reaction} + t_{delay}) + v^2 / (2 a)

    Source: as for the rope alone; the form of the stopping sight distance in the AASHTO Green Book.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> speed, slowing = Q(3.4, "m/s"), Q(1.5, "m/s**2")
    >>> show(attendant_stopping_distance(speed, reaction_time=Q(2, "s"), stop_delay=Q(0.5, "s"),
    ...                                  rope_deceleration=slowing))
    '12.4 m'
    """
    return rope_stopping_distance.plain(line_speed, reaction_time + stop_delay, rope_deceleration)


@unit_aware(
    riders="person", pull="N", idle_drag="N", brake_force="N", rider_mass="kg", moving_mass="kg", returns="m/s**2",
    may_be_zero=("riders", "pull", "idle_drag", "brake_force"),
)  # fmt: skip
def rope_deceleration(riders, *, pull, idle_drag, brake_force, rider_mass, moving_mass):
    r"""Return how hard the rope slows by itself once the drive has let go of it, with riders who hold on.

    Parameters
    ----------
    riders : Quantity [person]
        Riders on the line; zero for the empty rope; a scalar or an array.
    pull : Quantity [N]
        Pull of one rider along the slope; may be zero.
    idle_drag : Quantity [N]
        Drag of the whole empty rope; may be zero.
    brake_force : Quantity [N]
        Force of a brake along the rope; zero where there is none.
    rider_mass : Quantity [kg]
        Mass of one rider.
    moving_mass : Quantity [kg]
        Mass of the rope, carriers and sheaves that move with it.

    Returns
    -------
    Quantity [m/s**2]
        Deceleration of the rope.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: a = (N F + F_0 + F_{brake}) / (N m + M)

    Which load runs furthest depends on the brake. While F / m is more than (F_0 + F_brake) / M, each rider who holds on
    slows the rope, and the empty rope runs furthest. Above that brake the rope slows harder than riders do by
    themselves: each one who holds on is held back by the rope and pushes it on, and the full line runs furthest. The
    brake between the two is ``brake_force_where_riders_make_no_difference``. A rider who lets go, or whose tether hangs
    slack, does neither. Source: Newton's second law for rope and riders together.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> line = {"pull": Q(195, "N"), "idle_drag": Q(500, "N"), "brake_force": Q(0, "N"), "rider_mass": Q(75, "kg"),
    ...         "moving_mass": Q(400, "kg")}
    >>> show(rope_deceleration(Q(0, "person"), **line)), show(rope_deceleration(Q(15, "person"), **line))
    ('1.25 m/s²', '2.25 m/s²')
    >>> line["brake_force"] = Q(2000, "N")
    >>> show(rope_deceleration(Q(0, "person"), **line)), show(rope_deceleration(Q(15, "person"), **line))
    ('6.25 m/s²', '3.56 m/s²')
    """
    return (riders * pull + idle_drag + brake_force) / (riders * rider_mass + moving_mass)


@unit_aware(
    pull="N", idle_drag="N", rider_mass="kg", moving_mass="kg", returns="N", may_be_zero=("pull", "idle_drag"),
)  # fmt: skip
def brake_force_where_riders_make_no_difference(*, pull, idle_drag, rider_mass, moving_mass):
    r"""Return the brake force at which a rope stops over one distance, empty or full of riders who hold on.

    Parameters
    ----------
    pull : Quantity [N]
        Pull of one rider along the slope; a scalar or an array; may be zero.
    idle_drag : Quantity [N]
        Drag of the whole empty rope; may be zero.
    rider_mass : Quantity [kg]
        Mass of one rider.
    moving_mass : Quantity [kg]
        Mass of the rope, carriers and sheaves that move with it.

    Returns
    -------
    Quantity [N]
        Force of the brake along the rope. With a weaker brake the empty rope runs furthest, with a stronger one the
        full line. A negative force says that the idle drag alone is stronger: the full line then always runs furthest.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: F_{brake} = M F / m - F_0

    There the empty rope slows just as a rider who lets go: (F_0 + F_brake) / M = F / m. A stop that was tried without
    riders therefore proves nothing about a full line; the maker's manual says with what load to try. Source: Newton's
    second law; the tests compare it with the motion of rope and riders, step by step.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> line = {"pull": Q(195, "N"), "idle_drag": Q(500, "N"), "rider_mass": Q(75, "kg"), "moving_mass": Q(400, "kg")}
    >>> show(brake_force_where_riders_make_no_difference(**line))
    '540 N'
    """
    return pull * moving_mass / rider_mass - idle_drag


@unit_aware(grade="", friction="", returns="m/s**2", may_be_zero=("grade", "friction"))
def rider_deceleration(*, grade, friction):
    r"""Return how hard a rider slows who has let go of the rope and glides uphill.

    Parameters
    ----------
    grade : Quantity []
        Rise over horizontal run; a scalar or an array; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero, but not together with the grade.

    Returns
    -------
    Quantity [m/s**2]
        Deceleration along the slope.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is negative, or both are zero.

    Notes
    -----
    .. math:: a = g (\sin \alpha + \mu \cos \alpha)

    Source: a block on an inclined plane, as in any introductory mechanics text.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(rider_deceleration(grade=Q(20, "percent"), friction=Q(0.07, "")))
    '2.60 m/s²'
    """
    if np.any((np.asarray(grade) == 0) & (np.asarray(friction) == 0)):
        raise PlainError(
            "rider_deceleration: grade and friction must not both be zero, or the rider never stops. "
            "Write a friction such as Q(0.07, '')."
        )
    return GRAVITY * (grade + friction) / np.hypot(1.0, grade)


@unit_aware(line_speed="m/s", grade="", friction="", returns="m", may_be_zero=("grade", "friction"))
def rider_stopping_distance(line_speed, *, grade, friction):
    r"""Return how far a rider glides on uphill after letting go of the rope.

    Parameters
    ----------
    line_speed : Quantity [m/s]
        Speed of the rider at letting go; a scalar or an array.
    grade : Quantity []
        Rise over horizontal run; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero, but not together with the grade.

    Returns
    -------
    Quantity [m]
        Distance along the slope until the rider stands.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the speed is not greater than zero, another argument is negative, or grade and friction are both zero.

    Notes
    -----
    .. math:: d = v^2 / (2 g (\sin \alpha + \mu \cos \alpha))

    A rope that slows harder than this rider lets riders overrun it: whoever still holds on is held back by the rope
    and pushes it on. Source: motion at constant deceleration.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(rider_stopping_distance(Q(3.4, "m/s"), grade=Q(20, "percent"), friction=Q(0.07, "")))
    '2.2 m'
    """
    return line_speed**2 / (2 * rider_deceleration.plain(grade=grade, friction=friction))


@unit_aware(distance="m", spacing="m", returns="person", may_be_zero=("distance",))
def riders_inside(*, distance, spacing):
    r"""Return the most riders who may be inside a distance behind a fallen rider.

    Parameters
    ----------
    distance : Quantity [m]
        Distance along the rope, such as a stopping distance; a scalar or an array; may be zero.
    spacing : Quantity [m]
        Distance from one rider to the next; same shape, or broadcastable.

    Returns
    -------
    Quantity [person]
        A whole number of riders: the fallen one and each who reaches that place before the rope stands.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the distance is negative, or the spacing is not greater than zero.

    Notes
    -----
    .. math:: \lfloor d / s \rfloor + 1

    Source: counting posts of a fence.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(riders_inside(distance=Q(12.4, "m"), spacing=Q(6.8, "m")))
    '2 persons'
    """
    return np.floor(distance / spacing * (1 + 1e-12)) + 1
