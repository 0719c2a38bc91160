"""The line: spacing, headway, ride time, riders on it, and the slope it climbs.

Every formula takes and returns quantities; ``.plain`` is the same formula on plain numbers, in the units of its
docstring.
"""

import numpy as np

from liftcalc.formulas.conditions import REACHES_THE_SPEED, REACHES_THE_SPEED_AND_STOPS, TIME_ENOUGH
from liftcalc.units import unit_aware


@unit_aware(ridden_length="m", line_speed="m/s", returns="s")
def ride_time(ridden_length, line_speed):
    r"""Return the time a rider spends on the rope, from grab to let-go.

    Parameters
    ----------
    ridden_length : Quantity [m]
        Length along the rope from where a rider takes hold to where the rider lets go; a scalar or an array.
    line_speed : Quantity [m/s]
        Speed of the haul rope; same shape, or broadcastable.

    Returns
    -------
    Quantity [s]
        Ride time, for riders who take the speed of the rope at once: on a belt, a chair, in a gondola. Whoever stands
        still at the grab rides longer: ``ride_time_from_rest``; so does a tram: ``ride_time_rest_to_rest``.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: T = L / v

    Source: definition of a constant speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(ride_time(Q(150, "m"), Q(3.4, "m/s")))
    '44.1 s'
    """
    return ridden_length / line_speed


@unit_aware(
    ridden_length="m", line_speed="m/s", pick_up_acceleration="m/s**2", returns="s", conditions=(REACHES_THE_SPEED,)
)
def ride_time_from_rest(ridden_length, line_speed, pick_up_acceleration):
    r"""Return the ride time of a rider who stands still at the grab: on a rope or handle tow, a platter, a T-bar.

    Parameters
    ----------
    ridden_length : Quantity [m]
        Length along the rope from where a rider takes hold to where the rider lets go; a scalar or an array.
    line_speed : Quantity [m/s]
        Speed of the haul rope; same shape, or broadcastable.
    pick_up_acceleration : Quantity [m/s**2]
        How hard the rider speeds up, from rest to the speed of the rope.

    Returns
    -------
    Quantity [s]
        Ride time. A belt, a chair or a gondola takes its riders along at once: ``ride_time``.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero, or the ride ends before the rider has the speed of the rope.

    Notes
    -----
    .. math:: T = L / v + v / (2 a)

    In the time v / a of speeding up a rider covers half of what the rope does. Source: motion at constant
    acceleration, then at constant speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(ride_time_from_rest(Q(150, "m"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '45.3 s'
    """
    return ridden_length / line_speed + line_speed / (2 * pick_up_acceleration)


@unit_aware(
    ridden_length="m", line_speed="m/s", acceleration="m/s**2", returns="s", conditions=(REACHES_THE_SPEED_AND_STOPS,)
)
def ride_time_rest_to_rest(ridden_length, line_speed, acceleration):
    r"""Return the time of a ride that starts and ends at rest, as in the cabin of a reversible tram.

    Parameters
    ----------
    ridden_length : Quantity [m]
        Length along the rope from stop to stop; a scalar or an array.
    line_speed : Quantity [m/s]
        Speed of the haul rope between start and stop; same shape, or broadcastable.
    acceleration : Quantity [m/s**2]
        How hard the cabin speeds up, and slows at the end.

    Returns
    -------
    Quantity [s]
        Ride time.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero, or start and stop together are longer than the ride.

    Notes
    -----
    .. math:: T = L / v + v / a

    Source: motion at constant acceleration, speed and deceleration.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(ride_time_rest_to_rest(Q(800, "m"), Q(8, "m/s"), Q(0.5, "m/s**2")))
    '116.0 s'
    """
    return ridden_length / line_speed + line_speed / acceleration


@unit_aware(ridden_length="m", ride_time="s", pick_up_acceleration="m/s**2", returns="m/s", conditions=(TIME_ENOUGH,))
def line_speed_from_ride_time(ridden_length, ride_time, pick_up_acceleration):
    r"""Return the line speed from a ride time, for a rider who stands still at the grab.

    Parameters
    ----------
    ridden_length : Quantity [m]
        Length along the rope from grab to let-go; a scalar or an array.
    ride_time : Quantity [s]
        Time from grab to let-go; same shape, or broadcastable.
    pick_up_acceleration : Quantity [m/s**2]
        How hard the rider speeds up, from rest to the speed of the rope.

    Returns
    -------
    Quantity [m/s]
        Line speed. Length over time alone is lower: it is the mean of the whole ride, the start included.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero, or nobody can cover the length in that time from rest.

    Notes
    -----
    .. math:: v = a (T - \sqrt{T^2 - 2 L / a})

    It is ``ride_time_from_rest`` solved for the speed. Source: motion at constant acceleration, then at constant speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(line_speed_from_ride_time(Q(150, "m"), Q(45.25, "s"), Q(1.5, "m/s**2")))
    '3.40 m/s'
    """
    return pick_up_acceleration * (ride_time - np.sqrt(ride_time**2 - 2 * ridden_length / pick_up_acceleration))


@unit_aware(ridden_length="m", spacing="m", persons_per_carrier="person", returns="person")
def persons_on_line(*, ridden_length, spacing, persons_per_carrier=1.0):
    r"""Return how many riders are on the line at once, on average.

    Parameters
    ----------
    ridden_length : Quantity [m]
        Length along the rope that is ridden; a scalar or an array.
    spacing : Quantity [m]
        Distance from one rider, or one carrier, to the next; same shape, or broadcastable.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    Quantity [person]
        Average number of riders: exact over time, and seldom a whole number. Riders who start from rest bunch up at the
        start: for them take flow times ``ride_time_from_rest``.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: N = n L / s

    Source: Little's law with flow :math:`n v / s` and ride time :math:`L / v`; Little and Graves, chapter 5 of
    Building Intuition, Springer 2008.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(persons_on_line(ridden_length=Q(150, "m"), spacing=Q(6.8, "m")))
    '22.1 persons'
    """
    return persons_per_carrier * ridden_length / spacing


@unit_aware(ridden_length="m", spacing="m", persons_per_carrier="person", returns="person")
def most_persons_on_line(*, ridden_length, spacing, persons_per_carrier=1.0):
    r"""Return the most riders that are on the line at one moment: the fence-post count.

    It tells how many may be holding on when the rope stops. It never enters a capacity. Riders who start from rest can
    be more: for them take ``most_persons_from_headway``.

    Parameters
    ----------
    ridden_length : Quantity [m]
        Length along the rope that is ridden; a scalar or an array.
    spacing : Quantity [m]
        Distance from one rider, or one carrier, to the next; same shape, or broadcastable.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    Quantity [person]
        A whole number of carriers times the persons on each.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: n (\lfloor L / s \rfloor + 1)

    A length that is a whole number of spacings but for rounding in the last digits counts as whole.
    Source: counting posts of a fence.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(most_persons_on_line(ridden_length=Q(150, "m"), spacing=Q(6.8, "m")))
    '23 persons'
    """
    return persons_per_carrier * (np.floor(ridden_length / spacing * (1 + 1e-12)) + 1)


@unit_aware(ride_time="s", time_between_riders="s", persons_per_carrier="person", returns="person")
def most_persons_from_headway(*, ride_time, time_between_riders, persons_per_carrier=1.0):
    r"""Return the most riders that are on the line at one moment, from the ride time and the time between riders.

    It holds for riders who start from rest, too: they stand closer at the start, and no spacing tells how many fit.

    Parameters
    ----------
    ride_time : Quantity [s]
        Time from grab to let-go, a start from rest included; a scalar or an array.
    time_between_riders : Quantity [s]
        Headway, or the interval between carriers; same shape, or broadcastable.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    Quantity [person]
        A whole number of carriers times the persons on each.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: n (\lfloor T / t \rfloor + 1)

    At the moment when one takes hold, those are on the line who took hold no longer than a ride time ago. A ride time
    that is a whole number of headways but for rounding in the last digits counts as whole.
    Source: counting posts of a fence, in time.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(most_persons_from_headway(ride_time=Q(45.25, "s"), time_between_riders=Q(2, "s")))
    '23 persons'
    """
    return persons_per_carrier * (np.floor(ride_time / time_between_riders * (1 + 1e-12)) + 1)


@unit_aware(hourly_capacity="person/hour", time_spent="s", returns="person")
def persons_from_flow(hourly_capacity, time_spent):
    r"""Return how many persons are in a place that all pass at a steady flow: Little's law.

    The place may be the line (time spent: the ride time), the unload area (the time to clear it) or the waiting line.

    Parameters
    ----------
    hourly_capacity : Quantity [person/hour]
        Persons an hour who pass; a scalar or an array.
    time_spent : Quantity [s]
        Mean time that each spends in the place; same shape, or broadcastable.

    Returns
    -------
    Quantity [person]
        Average number of persons in the place.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: N = C T / 3600

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(persons_from_flow(Q(1800, "pph"), Q(6, "s")))
    '3 persons'
    """
    return hourly_capacity * time_spent / 3600


@unit_aware(sheave_distance="m", spacing="m", returns="")
def carriers_on_loop(*, sheave_distance, spacing):
    r"""Return how many carriers hang on the whole loop, up side and down side.

    Parameters
    ----------
    sheave_distance : Quantity [m]
        Distance along the line from the bottom sheave to the top sheave; a scalar or an array.
    spacing : Quantity [m]
        Distance along the rope from one carrier to the next; same shape, or broadcastable.

    Returns
    -------
    Quantity []
        Number of carriers. A loop closes on itself: there is no fence post to add.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: K = 2 L / s

    The rope that lies round the two sheaves is left out. Source: geometry.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(carriers_on_loop(sheave_distance=Q(420, "m"), spacing=Q(14, "m")))
    '60'
    """
    return 2 * sheave_distance / spacing
