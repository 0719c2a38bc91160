"""Headway and its inverses, and spacing: built from its parts, read off a stopped line or a photo, and of a mix."""

import numpy as np

from liftcalc.formulas.conditions import FIRST_AND_LAST
from liftcalc.units import PlainError, unit_aware


@unit_aware(line_speed="m/s", spacing="m", returns="s")
def headway(line_speed, spacing):
    """Return the time between two riders, or two carriers, passing one point.

        t = s / v

    returns: Headway.

    Source: definition of a constant speed.

    >>> show(headway(Q(3.4, "m/s"), Q(6.8, "m")))
    '2.0 s'
    """
    return spacing / line_speed


@unit_aware(line_speed="m/s", headway="s", returns="m")
def spacing_for_headway(line_speed, headway):
    """Return the spacing that a headway makes on the rope.

        s = v t

    returns: Spacing along the rope.

    Source: definition of a constant speed.

    >>> show(spacing_for_headway(Q(3.4, "m/s"), Q(2.0, "s")))
    '6.8 m'
    """
    return line_speed * headway


@unit_aware(spacing="m", headway="s", returns="m/s")
def line_speed_for_headway(spacing, headway):
    """Return the line speed at which a spacing passes in a given headway.

        v = s / t

    returns: Line speed.

    Source: definition of a constant speed.

    >>> show(line_speed_for_headway(Q(6.8, "m"), Q(2.0, "s")))
    '3.40 m/s'
    """
    return spacing / headway


@unit_aware(interval="s", persons_per_carrier="person", returns="s")
def headway_from_interval(interval, persons_per_carrier):
    """Return the mean time per rider when carriers come at an interval.

        t_rider = t_carrier / n

    returns: Mean headway from rider to rider.

    Source: definition of a mean.

    >>> show(headway_from_interval(Q(6, "s"), Q(2, "person")))
    '3.0 s'
    """
    return interval / persons_per_carrier


@unit_aware(headway="s", persons_per_carrier="person", returns="s")
def interval_from_headway(headway, persons_per_carrier):
    """Return the interval between carriers that gives a mean headway from rider to rider.

        t_carrier = n t_rider

    headway: mean time from one rider to the next, those of one carrier counted one by one
    returns: Time from one carrier to the next.

    Source: definition of a mean.

    >>> show(interval_from_headway(Q(3, "s"), Q(2, "person")))
    '6.0 s'
    """
    return headway * persons_per_carrier


@unit_aware(equipment_length="m", practical_gap="m", returns="m")
def spacing_from_parts(*, equipment_length, practical_gap):
    """Return the spacing of one kind of rider: own length along the rope, then the gap behind it.

        s = l + gap, with l the equipment length

    returns: Spacing, also called pitch: from one point of a rider to the same point of the next.

    Source: geometry.

    >>> show(spacing_from_parts(equipment_length=Q(1.7, "m"), practical_gap=Q(5.1, "m")))
    '6.8 m'
    """
    return equipment_length + practical_gap


@unit_aware(distance="m", riders="person", returns="m", conditions=(FIRST_AND_LAST,))
def observed_spacing(distance, riders):
    """Return the mean spacing read off a stopped line or a photo.

        s = x / (N - 1), with N riders on the distance x

    distance: distance from the first rider counted to the last
    riders: riders counted, first and last both included: two or more
    returns: Mean spacing. There is one gap fewer than there are riders.

    Source: counting posts of a fence.

    >>> show(observed_spacing(Q(68, "m"), Q(11, "person")))
    '6.8 m'
    """
    return distance / (riders - 1)


@unit_aware(spacings="m", shares="", returns="m", one_value=True)
def mean_spacing(spacings, shares):
    """Return the mean spacing of a mix of riders, from the spacing and the share of each kind.

    The capacity of a mix follows from this mean spacing. The mean of the capacities is too high.

        s_mean = sum(p s), with p the share and s the spacing of each kind

    returns: Mean spacing.
    raises: if the shares do not add up to 1, or are not as many as the spacings

    Source: definition of a mean; the number of riders on a length is that length over the mean spacing.

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
