"""Carriers that come from a loop: how close they may follow, how many there are, and what a missing one costs.

Planning figures, no design: the number and the spacing of carriers are changed by licensed people, the maker and the
authority.
"""

from liftcalc.formulas.conditions import NO_MORE_THAN_THERE_ARE
from liftcalc.units import unit_aware


@unit_aware(carrier_length="m", carrier_gap="m", station_speed="m/s", returns="s", may_be_zero=("carrier_gap",))
def least_station_interval(*, carrier_length, carrier_gap, station_speed):
    r"""Return the interval at which carriers just fit into a station, creeping one behind the other: a packing figure.

    Parameters
    ----------
    carrier_length : Quantity [m]
        Length of one carrier along the station's track; a scalar or an array.
    carrier_gap : Quantity [m]
        Free length that the station keeps between two carriers; may be zero.
    station_speed : Quantity [m/s]
        Speed of the carriers in the station, where people get on.

    Returns
    -------
    Quantity [s]
        The closest that fits, and no interval to run: boarding, braking distance, load on rope and towers, number of
        carriers and permit set floors of their own. Station speed is in it, line speed is not.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the length or the speed is not greater than zero, or the gap is negative.

    Notes
    -----
    .. math:: t = (l + g) / v_{station}

    For a conveyor the same holds with the length of the skis, the gap and the speed of the belt. Source: headway is
    spacing over speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(least_station_interval(carrier_length=Q(2.4, "m"), carrier_gap=Q(1, "m"), station_speed=Q(0.5, "m/s")))
    '6.8 s'
    """
    return (carrier_length + carrier_gap) / station_speed


@unit_aware(sheave_distance="m", line_speed="m/s", station_time="s", interval="s", returns="",
            may_be_zero=("station_time",))  # fmt: skip
def detachable_carriers(sheave_distance, line_speed, *, station_time, interval):
    r"""Return how many carriers a detachable lift needs: those on the rope, and those in the two stations.

    Parameters
    ----------
    sheave_distance : Quantity [m]
        Length along the rope from station to station; a scalar or an array.
    line_speed : Quantity [m/s]
        Speed of the haul rope.
    station_time : Quantity [s]
        Time of one carrier off the rope, in both stations together; may be zero.
    interval : Quantity [s]
        Time from one carrier to the next.

    Returns
    -------
    Quantity []
        Number of carriers, seldom a whole number; with no station time that of a fixed loop.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero (the station time: negative).

    Notes
    -----
    .. math:: K = (2 D / v + T_{station}) / t

    Source: Little's law: carriers a second, times the time of one round.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(detachable_carriers(Q(1500, "m"), Q(5, "m/s"), station_time=Q(120, "s"), interval=Q(12, "s")))
    '60'
    """
    return (2 * sheave_distance / line_speed + station_time) / interval


@unit_aware(
    hourly_capacity="person/hour",
    carriers="",
    carriers_out="",
    returns="person/hour",
    may_be_zero=("carriers_out",),
    conditions=(NO_MORE_THAN_THERE_ARE,),
)
def capacity_with_carriers_out(hourly_capacity, *, carriers, carriers_out):
    r"""Return what is left of an hourly capacity when carriers are out of service and their places run empty.

    Parameters
    ----------
    hourly_capacity : Quantity [person/hour]
        Capacity with every carrier in service; a scalar or an array.
    carriers : Quantity []
        Carriers on the whole loop.
    carriers_out : Quantity []
        How many of them are out of service; may be zero.

    Returns
    -------
    Quantity [person/hour]
        Capacity with the carriers that are left, where each place on the rope stays as it was. Whether a loop may run
        so needs the leave of the operator, and the maker's manual and the authority must allow it.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a capacity or the carriers are not greater than zero, or more are out than there are.

    Notes
    -----
    .. math:: C' = C (K - k) / K

    Source: proportion.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(capacity_with_carriers_out(Q(514, "pph"), carriers=Q(42, ""), carriers_out=Q(2, "")))
    '490 pph'
    """
    return hourly_capacity * (carriers - carriers_out) / carriers
