"""Spacing built from its parts, and spacing read off a stopped line or a photo."""

import numpy as np

from liftcalc.formulas.conditions import FIRST_AND_LAST
from liftcalc.units import PlainError, unit_aware


@unit_aware(equipment_length="m", practical_gap="m", returns="m", may_be_zero=("practical_gap",))
def spacing_from_parts(*, equipment_length, practical_gap):
    r"""Return the spacing of one kind of rider: own length along the rope, then the gap behind it.

    Parameters
    ----------
    equipment_length : Quantity [m]
        Length that the rider takes up along the line, usually the skis; a scalar or an array.
    practical_gap : Quantity [m]
        Free snow from the tails of one rider to the tips of the next; may be zero.

    Returns
    -------
    Quantity [m]
        Spacing, also called pitch: from one point of a rider to the same point of the next.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the equipment length is not greater than zero, or the gap is negative.

    Notes
    -----
    .. math:: s = e + g

    Source: geometry.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(spacing_from_parts(equipment_length=Q(1.7, "m"), practical_gap=Q(5.1, "m")))
    '6.8 m'
    """
    return equipment_length + practical_gap


@unit_aware(spacings="m", shares="", returns="m", may_be_zero=("shares",))
def mean_spacing(spacings, shares):
    r"""Return the mean spacing of a mix of riders, from the spacing and the share of each kind.

    The capacity of a mix follows from this mean spacing. The mean of the capacities is too high.

    Parameters
    ----------
    spacings : Quantity [m]
        Spacing behind each kind of rider; one value a kind.
    shares : Quantity []
        Share of each kind, counted by rider, in the same order; the shares add up to 1.

    Returns
    -------
    Quantity [m]
        Mean spacing, a scalar.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a spacing is not greater than zero, a share is negative, or the shares do not add up to 1.

    Notes
    -----
    .. math:: E[s] = \sum_i p_i s_i

    Source: definition of a mean; the number of riders on a length is that length over the mean spacing.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(mean_spacing(Q([2.4, 1.6], "m"), Q([0.5, 0.5], "")))
    '2.0 m'
    """
    total = np.sum(shares)
    if abs(total - 1) > 1e-6:
        raise PlainError(
            f"mean_spacing: the shares add up to {total:.3f}, not to 1. Write each as a part of all riders, such as "
            "Q([0.7, 0.3], '')."
        )
    if np.shape(spacings) != np.shape(shares):
        raise PlainError(
            f"mean_spacing: {np.size(spacings)} spacings came with {np.size(shares)} shares. Give one share a spacing."
        )
    return float(np.sum(np.asarray(spacings) * shares))


@unit_aware(distance="m", riders="person", returns="m", conditions=(FIRST_AND_LAST,))
def observed_spacing(distance, riders):
    r"""Return the mean spacing read off a stopped line or a photo.

    Parameters
    ----------
    distance : Quantity [m]
        Distance from the first rider counted to the last; a scalar or an array.
    riders : Quantity [person]
        Riders counted, the first and the last both included: two or more.

    Returns
    -------
    Quantity [m]
        Mean spacing. There is one gap fewer than there are riders.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the distance is not greater than zero, or fewer than two riders were counted.

    Notes
    -----
    .. math:: s = d / (n - 1)

    Source: counting posts of a fence.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(observed_spacing(Q(68, "m"), Q(11, "person")))
    '6.8 m'
    """
    return distance / (riders - 1)


@unit_aware(line_speed="m/s", spacing="m", returns="s")
def headway(line_speed, spacing):
    r"""Return the time between two riders, or two carriers, passing one point.

    Parameters
    ----------
    line_speed : Quantity [m/s]
        Speed of the haul rope; a scalar or an array.
    spacing : Quantity [m]
        Distance along the rope from one rider to the next; same shape, or broadcastable.

    Returns
    -------
    Quantity [s]
        Headway, with the broadcast shape of the arguments.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a speed or a spacing is not greater than zero.

    Notes
    -----
    .. math:: t = s / v

    Source: definition of a constant speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(headway(Q(3.4, "m/s"), Q(6.8, "m")))
    '2.0 s'
    """
    return spacing / line_speed


@unit_aware(line_speed="m/s", time_between_riders="s", returns="m")
def spacing_for_headway(line_speed, time_between_riders):
    r"""Return the spacing that a headway makes on the rope.

    Parameters
    ----------
    line_speed : Quantity [m/s]
        Speed of the haul rope; a scalar or an array.
    time_between_riders : Quantity [s]
        Headway at the loading point; same shape, or broadcastable.

    Returns
    -------
    Quantity [m]
        Distance along the rope from one rider to the next.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: s = v t

    Source: definition of a constant speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(spacing_for_headway(Q(3.4, "m/s"), Q(2.0, "s")))
    '6.8 m'
    """
    return line_speed * time_between_riders


@unit_aware(spacing="m", time_between_riders="s", returns="m/s")
def line_speed_for_headway(spacing, time_between_riders):
    r"""Return the line speed at which a spacing passes in a given headway.

    Parameters
    ----------
    spacing : Quantity [m]
        Distance along the rope from one rider to the next; a scalar or an array.
    time_between_riders : Quantity [s]
        Headway; same shape, or broadcastable.

    Returns
    -------
    Quantity [m/s]
        Line speed.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: v = s / t

    Source: definition of a constant speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(line_speed_for_headway(Q(6.8, "m"), Q(2.0, "s")))
    '3.40 m/s'
    """
    return spacing / time_between_riders


@unit_aware(interval="s", persons_per_carrier="person", returns="s")
def headway_from_interval(interval, persons_per_carrier):
    r"""Return the mean time per rider when carriers come at an interval.

    Parameters
    ----------
    interval : Quantity [s]
        Time from one carrier to the next; a scalar or an array.
    persons_per_carrier : Quantity [person]
        Riders on each carrier; same shape, or broadcastable.

    Returns
    -------
    Quantity [s]
        Mean headway from rider to rider.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: h = t / n

    Source: definition of a mean.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(headway_from_interval(Q(6, "s"), Q(2, "person")))
    '3.0 s'
    """
    return interval / persons_per_carrier


@unit_aware(time_between_riders="s", persons_per_carrier="person", returns="s")
def interval_from_headway(time_between_riders, persons_per_carrier):
    r"""Return the interval between carriers that gives a mean headway from rider to rider.

    Parameters
    ----------
    time_between_riders : Quantity [s]
        Mean headway from rider to rider; a scalar or an array.
    persons_per_carrier : Quantity [person]
        Riders on each carrier; same shape, or broadcastable.

    Returns
    -------
    Quantity [s]
        Time from one carrier to the next.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: t = n h

    Source: definition of a mean.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(interval_from_headway(Q(3, "s"), Q(2, "person")))
    '6.0 s'
    """
    return time_between_riders * persons_per_carrier
