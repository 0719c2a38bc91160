"""Spacing built from its parts, and spacing read off a stopped line or a photo."""

import numpy as np

from liftcalc.conditions import FIRST_AND_LAST
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
