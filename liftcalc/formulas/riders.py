"""Riders on the line: how long they ride, how many are on it at once, and how many carriers hang on the loop."""

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.formulas.conditions import REACHES_THE_SPEED, REACHES_THE_SPEED_AND_STOPS, TIME_ENOUGH
from liftcalc.units import unit_aware


@unit_aware(ridden_length="m", line_speed="m/s", returns="s")
def ride_time(ridden_length, line_speed):
    """Return the time a rider spends on the rope, from grab to let-go.

        T = L / v

    returns: Ride time, for riders who take the speed of the rope at once: on a belt, a chair, in a gondola. Whoever
        stands still at the grab rides longer: ``ride_time_from_rest``; so does a tram: ``ride_time_rest_to_rest``.

    Source: definition of a constant speed.

    >>> show(ride_time(Q(150, "m"), Q(3.4, "m/s")))
    '44.1 s'
    """
    return ridden_length / line_speed


@unit_aware(
    ridden_length="m", line_speed="m/s", pick_up_acceleration="m/s**2", returns="s", conditions=(REACHES_THE_SPEED,)
)
def ride_time_from_rest(ridden_length, line_speed, pick_up_acceleration):
    """Return the ride time of a rider who stands still at the grab: on a rope or handle tow, a platter, a T-bar.

        T = L / v + v / (2 a)

    In the time v / a of speeding up a rider covers half of what the rope does.

    returns: Ride time. A belt, a chair or a gondola takes its riders along at once: ``ride_time``.

    Source: motion at constant acceleration, then at constant speed.

    >>> show(ride_time_from_rest(Q(150, "m"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '45.3 s'
    """
    return ridden_length / line_speed + line_speed / (2 * pick_up_acceleration)


@unit_aware(
    ridden_length="m", line_speed="m/s", acceleration="m/s**2", returns="s", conditions=(REACHES_THE_SPEED_AND_STOPS,)
)
def ride_time_rest_to_rest(ridden_length, line_speed, acceleration):
    """Return the time of a ride that starts and ends at rest, as in the cabin of a reversible tram.

        T = L / v + v / a

    line_speed: speed of the haul rope between start and stop
    returns: Ride time.

    Source: motion at constant acceleration, speed and deceleration.

    >>> show(ride_time_rest_to_rest(Q(800, "m"), Q(8, "m/s"), Q(0.5, "m/s**2")))
    '116.0 s'
    """
    return ridden_length / line_speed + line_speed / acceleration


@unit_aware(ridden_length="m", ride_time="s", pick_up_acceleration="m/s**2", returns="m/s", conditions=(TIME_ENOUGH,))
def line_speed_from_ride_time(ridden_length, ride_time, pick_up_acceleration):
    """Return the line speed from a ride time, for a rider who stands still at the grab.

        v = a (T - sqrt(T^2 - 2 L / a))

    It is ``ride_time_from_rest`` solved for the speed.

    returns: Line speed. Length over time alone is lower: it is the mean of the whole ride, the start included.

    Source: motion at constant acceleration, then at constant speed.

    >>> show(line_speed_from_ride_time(Q(150, "m"), Q(45.25, "s"), Q(1.5, "m/s**2")))
    '3.40 m/s'
    """
    return pick_up_acceleration * (ride_time - np.sqrt(ride_time**2 - 2 * ridden_length / pick_up_acceleration))


@unit_aware(ridden_length="m", spacing="m", persons_per_carrier="person", returns="person")
def persons_on_line(*, ridden_length, spacing, persons_per_carrier=1.0):
    """Return how many riders are on the line at once, on average.

        N = n L / s

    returns: Average number of riders: exact over time, and seldom a whole number. Riders who start from rest bunch
        up at the start: for them take flow times ``ride_time_from_rest``.

    Source: Little's law with the flow n v / s and the ride time L / v; Little and Graves, chapter 5 of Building
        Intuition, Springer 2008.

    >>> show(persons_on_line(ridden_length=Q(150, "m"), spacing=Q(6.8, "m")))
    '22.1 persons'
    """
    return persons_per_carrier * ridden_length / spacing


@unit_aware(hourly_capacity="person/hour", time_spent="s", returns="person")
def persons_from_flow(hourly_capacity, time_spent):
    """Return how many persons are in a place that all pass at a steady flow: Little's law.

    The place may be the line (time spent: the ride time), the unload area (the time to clear it) or the waiting line.

        N = C T / 3600, with T the time spent

    returns: Average number of persons in the place.

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    >>> show(persons_from_flow(Q(1800, "pph"), Q(6, "s")))
    '3 persons'
    """
    return hourly_capacity * time_spent / SECONDS_PER_HOUR


@unit_aware(ridden_length="m", spacing="m", persons_per_carrier="person", returns="person")
def most_persons_on_line(*, ridden_length, spacing, persons_per_carrier=1.0):
    """Return the most riders that are on the line at one moment: the fence-post count.

    It tells how many may be holding on when the rope stops. It never enters a capacity. Riders who start from rest can
    be more: for them take ``most_persons_from_headway``.

        N = n (floor(L / s) + 1)

    A length that is a whole number of spacings but for rounding in the last digits counts as whole.

    returns: A whole number of carriers times the persons on each.

    Source: counting posts of a fence.

    >>> show(most_persons_on_line(ridden_length=Q(150, "m"), spacing=Q(6.8, "m")))
    '23 persons'
    """
    return persons_per_carrier * (np.floor(ridden_length / spacing * (1 + 1e-12)) + 1)


@unit_aware(ride_time="s", headway="s", persons_per_carrier="person", returns="person")
def most_persons_from_headway(*, ride_time, headway, persons_per_carrier=1.0):
    """Return the most riders that are on the line at one moment, from the ride time and the time between riders.

    It holds for riders who start from rest, too: they stand closer at the start, and no spacing tells how many fit.

        N = n (floor(T / t) + 1), with T the ride time and t the headway

    At the moment when one takes hold, those are on the line who took hold no longer than a ride time ago. A ride time
    that is a whole number of headways but for rounding in the last digits counts as whole.

    headway: time from one rider, or one carrier, to the next past one point
    returns: A whole number of carriers times the persons on each.

    Source: counting posts of a fence, in time.

    >>> show(most_persons_from_headway(ride_time=Q(45.25, "s"), headway=Q(2, "s")))
    '23 persons'
    """
    return persons_per_carrier * (np.floor(ride_time / headway * (1 + 1e-12)) + 1)


@unit_aware(sheave_distance="m", spacing="m", returns="")
def carriers_on_loop(*, sheave_distance, spacing):
    """Return how many carriers hang on the whole loop, up side and down side.

        K = 2 D / s, with D the sheave distance

    The rope that lies round the two sheaves is left out.

    returns: Number of carriers. A loop closes on itself: there is no fence post to add.

    Source: geometry.

    >>> show(carriers_on_loop(sheave_distance=Q(420, "m"), spacing=Q(14, "m")))
    '60'
    """
    return 2 * sheave_distance / spacing
