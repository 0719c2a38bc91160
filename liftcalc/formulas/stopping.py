"""Stopping: how far the rope still runs, how far a rider still glides, who is inside that distance, how hard both slow.

Planning figures, no design. Stop gates are tested as the maker's manual and the local code say; they are never
sized from here.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.units import PlainError, unit_aware


@unit_aware(line_speed="m/s", stop_delay="s", rope_deceleration="m/s**2", returns="m")
def rope_stopping_distance(line_speed, stop_delay, rope_deceleration):
    """Return how far the rope still runs after a stop gate has tripped: no human reaction in it.

    How hard the rope slows depends on the load, and either the empty rope or the full line may run furthest:
    ``rope_deceleration``.

        x = v t_delay + v^2 / (2 a)

    returns: Distance until the rope stands.

    Source: motion at constant speed, then at constant deceleration; the form of the stopping sight distance in the
        AASHTO Green Book.

    >>> show(rope_stopping_distance(Q(3.4, "m/s"), Q(0.5, "s"), Q(1.5, "m/s**2")))
    '5.6 m'
    """
    return line_speed * stop_delay + line_speed**2 / (2 * rope_deceleration)


@unit_aware(
    line_speed="m/s", reaction_time="s", stop_delay="s", rope_deceleration="m/s**2", returns="m",
)  # fmt: skip
def attendant_stopping_distance(line_speed, *, reaction_time, stop_delay, rope_deceleration):
    """Return how far the rope still runs after an attendant sees a fall and presses stop.

        x = v (t_reaction + t_delay) + v^2 / (2 a)

    reaction_time: time until the attendant presses the button: measure it, for no published figure was found
    returns: Distance until the rope stands.

    Source: as for the rope alone; the form of the stopping sight distance in the AASHTO Green Book.

    >>> show(attendant_stopping_distance(Q(3.4, "m/s"), reaction_time=Q(2, "s"), stop_delay=Q(0.5, "s"),
    ...                                  rope_deceleration=Q(1.5, "m/s**2")))
    '12.4 m'
    """
    return rope_stopping_distance.plain(line_speed, reaction_time + stop_delay, rope_deceleration)


@unit_aware(grade="", snow_friction="", returns="m/s**2")
def rider_deceleration(*, grade, snow_friction):
    """Return how hard a rider slows who has let go of the rope and glides uphill.

        a = g (sin alpha + mu cos alpha) = g (grade + mu) / sqrt(1 + grade^2), tan alpha = grade

    returns: Deceleration along the slope.
    raises: if grade and snow friction are both zero

    Source: a block on an inclined plane, as in any introductory mechanics text.

    >>> show(rider_deceleration(grade=Q(20, "percent"), snow_friction=Q(0.07, "")))
    '2.60 m/s²'
    """
    if np.any((np.asarray(grade) == 0) & (np.asarray(snow_friction) == 0)):
        raise PlainError(
            "rider_deceleration: grade and snow_friction must not both be zero, or the rider never stops. "
            "Write a snow_friction such as Q(0.07, '')."
        )
    return GRAVITY * (grade + snow_friction) / np.hypot(1.0, grade)


@unit_aware(line_speed="m/s", grade="", snow_friction="", returns="m")
def rider_stopping_distance(line_speed, *, grade, snow_friction):
    """Return how far a rider glides on uphill after letting go of the rope.

        x = v^2 / (2 a), with a from ``rider_deceleration``

    A rope that slows harder than this rider lets riders overrun it: whoever still holds on is held back by the rope
    and pushes it on.

    line_speed: speed of the rider at letting go
    returns: Distance along the slope until the rider stands.
    raises: if grade and snow friction are both zero

    Source: motion at constant deceleration.

    >>> show(rider_stopping_distance(Q(3.4, "m/s"), grade=Q(20, "percent"), snow_friction=Q(0.07, "")))
    '2.2 m'
    """
    return line_speed**2 / (2 * rider_deceleration.plain(grade=grade, snow_friction=snow_friction))


@unit_aware(distance="m", spacing="m", returns="person", may_be_zero=("distance",))
def riders_inside(*, distance, spacing):
    """Return the most riders who may be inside a distance behind a fallen rider.

        N = floor(x / s) + 1, with x the distance, such as a stopping distance

    A distance that is a whole number of spacings but for rounding in the last digits counts as whole.

    returns: A whole number of riders: the fallen one and each who reaches that place before the rope stands.

    Source: counting posts of a fence.

    >>> show(riders_inside(distance=Q(12.4, "m"), spacing=Q(6.8, "m")))
    '2 persons'
    """
    return np.floor(distance / spacing * (1 + 1e-12)) + 1


@unit_aware(
    riders_on_line="person", pull="N", idle_drag="N", brake_force="N", rider_mass="kg", moving_mass="kg",
    returns="m/s**2", may_be_zero=("riders_on_line", "pull"),
)  # fmt: skip
def rope_deceleration(riders_on_line, *, pull, idle_drag, brake_force, rider_mass, moving_mass):
    """Return how hard the rope slows by itself once the drive has let go of it, with riders who hold on.

        a = (N F + F0 + F_brake) / (N m + M), with N riders on the line

    Which load runs furthest depends on the brake. While F / m is more than (F0 + F_brake) / M, each rider who holds on
    slows the rope, and the empty rope runs furthest. Above that brake the rope slows harder than riders do by
    themselves: each one who holds on is held back by the rope and pushes it on, and the full line runs furthest. The
    brake between the two is ``brake_force_where_riders_make_no_difference``. A rider who lets go, or whose tether hangs
    slack, does neither.

    returns: Deceleration of the rope.

    Source: Newton's second law for rope and riders together.

    >>> show(rope_deceleration(Q([0, 15], "person"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...                        brake_force=Q(2000, "N"), rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '6.25, 3.56 m/s²'
    """
    return (riders_on_line * pull + idle_drag + brake_force) / (riders_on_line * rider_mass + moving_mass)


@unit_aware(pull="N", idle_drag="N", rider_mass="kg", moving_mass="kg", returns="N", may_be_zero=("pull",))
def brake_force_where_riders_make_no_difference(*, pull, idle_drag, rider_mass, moving_mass):
    """Return the brake force at which a rope stops over one distance, empty or full of riders who hold on.

        F_brake = M F / m - F0

    There the empty rope slows just as a rider who lets go: (F0 + F_brake) / M = F / m. A stop that was tried without
    riders therefore proves nothing about a full line; the maker's manual says with what load to try.

    returns: Force of the brake along the rope. With a weaker brake the empty rope runs furthest, with a stronger
        one the full line. A negative force says that the idle drag alone is stronger: the full line then always
        runs furthest.

    Source: Newton's second law; the tests compare it with the motion of rope and riders, step by step.

    >>> show(brake_force_where_riders_make_no_difference(pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...                                                  rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '540 N'
    """
    return pull * moving_mass / rider_mass - idle_drag
