"""Carriers that come from a loop: how close they may follow, how many there are, and what a missing one costs.

Planning figures, no design: the number and the spacing of carriers are changed by licensed people, the maker and the
authority.
"""

from liftcalc.formulas.conditions import NO_MORE_THAN_THERE_ARE
from liftcalc.units import unit_aware


@unit_aware(carrier_length="m", carrier_gap="m", station_speed="m/s", returns="s")
def least_station_interval(*, carrier_length, carrier_gap, station_speed):
    """Return the interval at which carriers just fit into a station, creeping one behind the other: a packing figure.

        t = (l + gap) / v_station, with l the carrier length

    For a conveyor the same holds with the length of the skis, the gap and the speed of the belt.

    returns: The closest that fits, and no interval to run: boarding, braking distance, load on rope and towers,
        number of carriers and permit set floors of their own. Station speed is in it, line speed is not.

    Source: headway is spacing over speed.

    >>> show(least_station_interval(carrier_length=Q(2.4, "m"), carrier_gap=Q(1, "m"), station_speed=Q(0.5, "m/s")))
    '6.8 s'
    """
    return (carrier_length + carrier_gap) / station_speed


@unit_aware(
    sheave_distance="m",
    line_speed="m/s",
    station_time="s",
    interval="s",
    returns="",
)
def detachable_carriers(sheave_distance, line_speed, *, station_time, interval):
    """Return how many carriers a detachable lift needs: those on the rope, and those in the two stations.

        K = (2 D / v + T_station) / t, with D the sheave distance and t the interval

    returns: Number of carriers, seldom a whole number; with no station time that of a fixed loop.

    Source: Little's law: carriers a second, times the time of one round.

    >>> show(detachable_carriers(Q(1500, "m"), Q(5, "m/s"), station_time=Q(120, "s"), interval=Q(12, "s")))
    '60'
    """
    return (2 * sheave_distance / line_speed + station_time) / interval


@unit_aware(
    hourly_capacity="person/hour", carriers_on_loop="", carriers_out="", returns="person/hour",
    conditions=(NO_MORE_THAN_THERE_ARE,),
)  # fmt: skip
def capacity_with_carriers_out(hourly_capacity, *, carriers_on_loop, carriers_out):
    """Return what is left of an hourly capacity when carriers are out of service and their places run empty.

        C_left = C (K - K_out) / K, with K carriers on the loop

    hourly_capacity: persons an hour with every carrier in service
    returns: Capacity with the carriers that are left, where each place on the rope stays as it was. Whether a loop
        may run so needs the leave of the operator, and the maker's manual and the authority must allow it.

    Source: proportion.

    >>> show(capacity_with_carriers_out(Q(514, "pph"), carriers_on_loop=Q(42, ""), carriers_out=Q(2, "")))
    '490 pph'
    """
    return hourly_capacity * (carriers_on_loop - carriers_out) / carriers_on_loop
