"""Hourly capacity by three routes, its inverses, vertical transport, and the doubt of a count.

A formula here returns a bare number of persons an hour. What that number means (a packing figure, an ideal, a count)
is its level: ``liftcalc.levels`` carries the two together.
"""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import unit_aware


@unit_aware(line_speed="m/s", spacing="m", persons_per_carrier="person", returns="person/hour")
def hourly_capacity(line_speed, spacing, persons_per_carrier=1.0):
    """Return the hourly capacity of a line from its speed and spacing: the first route.

        C = 3600 n v / s

    spacing: distance along the rope from one rider, or one carrier, to the next; of a mix of riders, the mean
    returns: Persons an hour. An upper bound: the line runs all hour long and every place is taken.

    Source: Know Your Capacity, SAM (Ski Area Management), July 2018, in the form C = 3600 n / t with t = s / v.

    >>> show(hourly_capacity(Q(3.4, "m/s"), Q(6.8, "m")))
    '1,800 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier * line_speed / spacing


@unit_aware(hourly_capacity="person/hour", line_speed="m/s", persons_per_carrier="person", returns="m")
def spacing_for_capacity(hourly_capacity, line_speed, persons_per_carrier=1.0):
    """Return the spacing at which a line carries a given number an hour.

        s = 3600 n v / C

    returns: Spacing along the rope.

    Source: the capacity formula solved for the spacing.

    >>> show(spacing_for_capacity(Q(1200, "pph"), Q(3.4, "m/s")))
    '10.2 m'
    """
    return SECONDS_PER_HOUR * persons_per_carrier * line_speed / hourly_capacity


@unit_aware(interval="s", persons_per_carrier="person", returns="person/hour")
def hourly_capacity_from_interval(interval, persons_per_carrier=1.0):
    """Return the hourly capacity from the interval between carriers.

        C = 3600 n / t

    interval: time from one carrier, or one rider, to the next past one point
    returns: Persons an hour.

    Source: Know Your Capacity, SAM (Ski Area Management), July 2018.

    >>> show(hourly_capacity_from_interval(Q(7, "s"), Q(2, "person")))
    '1,029 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier / interval


@unit_aware(hourly_capacity="person/hour", persons_per_carrier="person", returns="s")
def interval_for_capacity(hourly_capacity, persons_per_carrier=1.0):
    """Return the interval between carriers that carries a given number an hour.

        t = 3600 n / C

    returns: Time from one carrier to the next.

    Source: the capacity formula solved for the interval.

    >>> show(interval_for_capacity(Q(1200, "pph"), Q(2, "person")))
    '6.0 s'
    """
    return SECONDS_PER_HOUR * persons_per_carrier / hourly_capacity


@unit_aware(
    ride_time="s",
    dwell_time="s",
    persons_per_carrier="person",
    returns="person/hour",
)
def reversible_capacity(*, ride_time, dwell_time, persons_per_carrier):
    """Return the hourly capacity, in one direction, of a reversible lift with two cabins.

        C = 3600 n / (T + T_dwell), with T the ride time

    returns: Persons an hour in one direction: one cabin arrives at each end on every trip.

    Source: J. Nejez, Ropeway design principles, Basics of Ropeway Engineering, ISR Internationale
        Seilbahn-Rundschau.

    >>> show(reversible_capacity(ride_time=Q(5, "min"), dwell_time=Q(1, "min"), persons_per_carrier=Q(40, "person")))
    '400 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier / (ride_time + dwell_time)


@unit_aware(riders_on_line="person", ride_time="s", returns="person/hour", may_be_zero=("riders_on_line",))
def hourly_capacity_from_head_count(riders_on_line, ride_time):
    """Return the hourly flow from a head count on the line and a stopwatch: the second route.

    It uses no speed, no spacing and no length.

        C = 3600 N / T, with N riders on the line and T the ride time

    riders_on_line: riders on the line at once, from a photo of the running line; of several photos, the mean
    returns: Persons an hour.

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    >>> show(hourly_capacity_from_head_count(Q(22, "person"), Q(44, "s")))
    '1,800 pph'
    """
    return SECONDS_PER_HOUR * riders_on_line / ride_time


@unit_aware(persons_counted="person", counting_time="s", returns="person/hour", may_be_zero=("persons_counted",))
def hourly_flow_from_count(persons_counted, counting_time):
    """Return the hourly flow from a count of riders who pass one point.

        C = 3600 N / T, with N persons counted in the time T

    returns: Persons an hour.

    Source: definition of a rate.

    >>> show(hourly_flow_from_count(Q(58, "person"), Q(2, "minute")))
    '1,740 pph'
    """
    return SECONDS_PER_HOUR * persons_counted / counting_time


@unit_aware(hourly_capacity="person/hour", vertical_rise="ft", returns="person*ft/hour")
def vertical_transport(hourly_capacity, vertical_rise):
    """Return the vertical transport feet per hour (VTFH) of a lift.

        VTFH = C h

    returns: Persons an hour times the vertical rise in feet.

    Source: definition in the annual lift tables of SAM (Ski Area Management).

    >>> show(vertical_transport(Q(1800, "pph"), Q(96.5, "ft")))
    '173,700 VTFH'
    """
    return hourly_capacity * vertical_rise


@unit_aware(persons_counted="person", spread_of_gaps="", returns="")
def count_doubt(persons_counted, spread_of_gaps=1.0):
    """Return how far a count may be off, as a share of it: one standard uncertainty.

    Nobody miscounts here: the riders who pass in two minutes are not as many as in the next two.

        u / N = c / sqrt(N), with N persons counted, u the standard uncertainty and c the spread of gaps

    spread_of_gaps: standard deviation of the times between riders over their mean: 1 if riders come without any
        order, about 0.5 on a steady lift, more where stops fall into the count
    returns: Standard uncertainty over the count.

    Source: the count of a renewal process over a long time; with c = 1 it is the Poisson distribution (from memory;
        the tests count simulated riders).

    >>> show(count_doubt(Q(40, "person")), "percent")
    '16%'
    """
    return spread_of_gaps / persons_counted**0.5
