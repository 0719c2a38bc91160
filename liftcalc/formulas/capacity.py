"""Hourly capacity by three routes, its inverses, and vertical transport.

A formula here returns a bare number of persons an hour. What that number means (a packing figure, an ideal, a count)
is its level: ``liftcalc.levels`` carries the two together.
"""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import unit_aware


@unit_aware(line_speed="m/s", spacing="m", persons_per_carrier="person", returns="person/hour")
def hourly_capacity(line_speed, spacing, persons_per_carrier=1.0):
    r"""Return the hourly capacity of a line from its speed and spacing: the first route.

    Parameters
    ----------
    line_speed : Quantity [m/s]
        Speed of the haul rope; a scalar or an array.
    spacing : Quantity [m]
        Distance along the rope from one rider, or one carrier, to the next; same shape, or broadcastable.
        For a mix of riders, the mean spacing.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    Quantity [person/hour]
        Persons an hour. An upper bound: the line runs all hour long and every place is taken.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: C = 3600 n v / s

    Source: Know Your Capacity, SAM (Ski Area Management), July 2018, in the form C = 3600 n / t with t = s / v.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(hourly_capacity(Q(3.4, "m/s"), Q(6.8, "m")))
    '1,800 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier * line_speed / spacing


@unit_aware(interval="s", persons_per_carrier="person", returns="person/hour")
def hourly_capacity_from_interval(interval, persons_per_carrier=1.0):
    r"""Return the hourly capacity from the interval between carriers.

    Parameters
    ----------
    interval : Quantity [s]
        Time from one carrier, or one rider, to the next at one point; a scalar or an array.
    persons_per_carrier : Quantity [person]
        Riders on one carrier; one person if left out.

    Returns
    -------
    Quantity [person/hour]
        Persons an hour.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: C = 3600 n / t

    Source: Know Your Capacity, SAM (Ski Area Management), July 2018.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(hourly_capacity_from_interval(Q(7, "s"), Q(2, "person")))
    '1,029 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier / interval


@unit_aware(head_count="person", ride_time="s", returns="person/hour", may_be_zero=("head_count",))
def hourly_capacity_from_head_count(head_count, ride_time):
    r"""Return the hourly flow from a head count on the line and a stopwatch: the second route.

    It uses no speed, no spacing and no length.

    Parameters
    ----------
    head_count : Quantity [person]
        Riders on the line at once, from a photo of the running line; the mean of several photos; may be zero.
    ride_time : Quantity [s]
        Time one rider takes from grab to let-go.

    Returns
    -------
    Quantity [person/hour]
        Persons an hour.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the head count is negative, or the ride time is not greater than zero.

    Notes
    -----
    .. math:: C = 3600 N / T

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(hourly_capacity_from_head_count(Q(22, "person"), Q(44, "s")))
    '1,800 pph'
    """
    return SECONDS_PER_HOUR * head_count / ride_time


@unit_aware(persons_counted="person", counting_time="s", returns="person/hour", may_be_zero=("persons_counted",))
def hourly_flow_from_count(persons_counted, counting_time):
    r"""Return the hourly flow from a count of riders who pass one point.

    Parameters
    ----------
    persons_counted : Quantity [person]
        Riders who passed; a scalar or an array; may be zero.
    counting_time : Quantity [s]
        How long they were counted; same shape, or broadcastable.

    Returns
    -------
    Quantity [person/hour]
        Persons an hour.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the count is negative, or the time is not greater than zero.

    Notes
    -----
    .. math:: C = 3600 n / T

    Source: definition of a rate.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(hourly_flow_from_count(Q(58, "person"), Q(2, "minute")))
    '1,740 pph'
    """
    return SECONDS_PER_HOUR * persons_counted / counting_time


@unit_aware(persons_counted="person", spread_of_gaps="", returns="")
def count_doubt(persons_counted, spread_of_gaps=1.0):
    r"""Return how far a count may be off, as a share of it: one standard uncertainty.

    Nobody miscounts here: the riders who pass in two minutes are not as many as in the next two.

    Parameters
    ----------
    persons_counted : Quantity [person]
        Riders who passed; a scalar or an array.
    spread_of_gaps : Quantity []
        Standard deviation of the times between riders over their mean. 1 if riders come without any order; less on a
        steady lift, about 0.5; more where stops fall into the count. 1 if left out.

    Returns
    -------
    Quantity []
        Standard uncertainty over the count.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: u(n) / n = c / \sqrt{n}

    Source: the count of a renewal process over a long time; with c = 1 it is the Poisson distribution (from memory; the
    tests count simulated riders).

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(count_doubt(Q(40, "person")), "percent")
    '16%'
    """
    return spread_of_gaps / persons_counted**0.5


@unit_aware(hourly_capacity="person/hour", line_speed="m/s", persons_per_carrier="person", returns="m")
def spacing_for_capacity(hourly_capacity, line_speed, persons_per_carrier=1.0):
    r"""Return the spacing at which a line carries a given number an hour.

    Parameters
    ----------
    hourly_capacity : Quantity [person/hour]
        Persons an hour; a scalar or an array.
    line_speed : Quantity [m/s]
        Speed of the haul rope; same shape, or broadcastable.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    Quantity [m]
        Spacing along the rope.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: s = 3600 n v / C

    Source: the capacity formula solved for the spacing.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(spacing_for_capacity(Q(1200, "pph"), Q(3.4, "m/s")))
    '10.2 m'
    """
    return SECONDS_PER_HOUR * persons_per_carrier * line_speed / hourly_capacity


@unit_aware(hourly_capacity="person/hour", persons_per_carrier="person", returns="s")
def interval_for_capacity(hourly_capacity, persons_per_carrier=1.0):
    r"""Return the interval between carriers that carries a given number an hour.

    Parameters
    ----------
    hourly_capacity : Quantity [person/hour]
        Persons an hour; a scalar or an array.
    persons_per_carrier : Quantity [person]
        Riders on one carrier; one person if left out.

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
    .. math:: t = 3600 n / C

    Source: the capacity formula solved for the interval.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(interval_for_capacity(Q(1200, "pph"), Q(2, "person")))
    '6.0 s'
    """
    return SECONDS_PER_HOUR * persons_per_carrier / hourly_capacity


@unit_aware(
    transit_time="s", dwell_time="s", persons_per_cabin="person", returns="person/hour", may_be_zero=("dwell_time",)
)
def reversible_capacity(*, transit_time, dwell_time, persons_per_cabin):
    r"""Return the hourly capacity, in one direction, of a reversible lift with two cabins.

    Parameters
    ----------
    transit_time : Quantity [s]
        Time of one trip, station to station; a scalar or an array.
    dwell_time : Quantity [s]
        Time that the cabins stand in the stations between two trips; may be zero.
    persons_per_cabin : Quantity [person]
        Persons in one cabin.

    Returns
    -------
    Quantity [person/hour]
        Persons an hour in one direction: one cabin arrives at each end on every trip.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the transit time or the persons are not greater than zero, or the dwell time is negative.

    Notes
    -----
    .. math:: C = 3600 n / (t_{transit} + t_{dwell})

    Source: J. Nejez, Ropeway design principles, Basics of Ropeway Engineering, ISR Internationale Seilbahn-Rundschau.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(reversible_capacity(transit_time=Q(5, "min"), dwell_time=Q(1, "min"), persons_per_cabin=Q(40, "person")))
    '400 pph'
    """
    return SECONDS_PER_HOUR * persons_per_cabin / (transit_time + dwell_time)


@unit_aware(hourly_capacity="person/hour", vertical_rise="ft", returns="person*ft/hour")
def vertical_transport(hourly_capacity, vertical_rise):
    r"""Return the vertical transport feet per hour (VTFH) of a lift.

    Parameters
    ----------
    hourly_capacity : Quantity [person/hour]
        Persons an hour; a scalar or an array.
    vertical_rise : Quantity [ft]
        Height gained from bottom to top; same shape, or broadcastable.

    Returns
    -------
    Quantity [person*ft/hour]
        Vertical feet times persons an hour.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: VTFH = C h

    Source: definition in the annual lift tables of SAM (Ski Area Management).

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(vertical_transport(Q(1800, "pph"), Q(96.5, "ft")))
    '173,700 VTFH'
    """
    return hourly_capacity * vertical_rise
