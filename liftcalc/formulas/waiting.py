"""The waiting line: how long people wait where they come without order, and how fast a line grows that cannot keep up.

A mean wait is a mean: one guest in many waits much longer. It holds for a line that has run for a while at one rate of
arrivals. How many people stand in a line is Little's law, ``persons_from_flow``, with the wait as the time spent.
"""

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.formulas.conditions import CARRIERS_KEEP_UP, LOADING_KEEPS_UP, NO_LESS_THAN_THE_SQUARE
from liftcalc.units import unit_aware


@unit_aware(
    arrival_rate="person/hour", loading_time="s", second_moment="s**2", returns="s",
    conditions=(LOADING_KEEPS_UP, NO_LESS_THAN_THE_SQUARE),
)  # fmt: skip
def mean_wait(arrival_rate, loading_time, second_moment):
    """Return the mean wait in a line whose riders come without order and get on one by one, whatever the loading times.

        W = r E[S^2] / (2 (1 - rho)), rho = r t, with r the arrivals a second, t the mean of the loading times S

    Loading times of one mean make longer waits the more they differ.

    returns: Mean time in line until a rider's own turn begins; the loading time itself is not in it.

    Source: formula of Pollaczek and Khinchine for the line M/G/1, in the textbooks on queues.

    >>> show(mean_wait(Q(900, "pph"), Q(3, "s"), Q(10.1, "s**2")))
    '5.0 s'
    """
    arrivals = arrival_rate / SECONDS_PER_HOUR
    return arrivals * second_moment / (2 * (1 - arrivals * loading_time))


@unit_aware(arrival_rate="person/hour", loading_time="s", returns="s", conditions=(LOADING_KEEPS_UP,))
def mean_wait_exponential(arrival_rate, loading_time):
    """Return the mean wait in a line whose riders come without order and whose loading times are exponential.

        W = rho t / (1 - rho), rho = r t, with r the arrivals a second and t the mean loading time

    returns: Mean time in line until a rider's own turn begins.

    Source: the line M/M/1; Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, ch. 5.

    >>> show(mean_wait_exponential(Q(900, "pph"), Q(3, "s")))
    '9.0 s'
    """
    busy = arrival_rate * loading_time / SECONDS_PER_HOUR
    return busy * loading_time / (1 - busy)


@unit_aware(arrival_rate="person/hour", loading_time="s", returns="s", conditions=(LOADING_KEEPS_UP,))
def mean_wait_constant(arrival_rate, loading_time):
    """Return the mean wait in a line whose riders come without order and all take the same loading time.

    Carriers that come by the clock are another case: ``mean_wait_for_carrier``.

        W = rho t / (2 (1 - rho)), rho = r t, with r the arrivals a second and t the loading time

    returns: Mean time in line until a rider's own turn begins: half of that with exponential times.

    Source: the line M/D/1; Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, ch. 5.

    >>> show(mean_wait_constant(Q(900, "pph"), Q(3, "s")))
    '4.5 s'
    """
    busy = arrival_rate * loading_time / SECONDS_PER_HOUR
    return busy * loading_time / (2 * (1 - busy))


@unit_aware(arrival_rate="person/hour", interval="s", returns="s", conditions=(CARRIERS_KEEP_UP,))
def mean_wait_for_carrier(arrival_rate, interval):
    """Return the mean wait for carriers with one seat that come by the clock, where riders come without order.

        W = t / (2 (1 - rho)), rho = r t, with r the arrivals a second and t the interval

    It is half an interval more than ``mean_wait_constant``: on an empty hill, too, a rider waits for the next carrier.
    Carriers with several seats have a shorter wait at the same rho: ``mean_wait_for_carriers``.

    returns: Mean time in line until a rider's own carrier is there.

    Source: the line M/D/1, and half an interval until the next carrier; the tests run the line.

    >>> show(mean_wait_for_carrier(Q(450, "pph"), Q(6, "s")))
    '12.0 s'
    """
    return interval / (2 * (1 - arrival_rate * interval / SECONDS_PER_HOUR))


@unit_aware(loading_time="s", time_variation="", returns="s**2", may_be_zero=("time_variation",))
def second_moment_from_variation(loading_time, time_variation):
    """Return the mean of the squares of loading times, from their mean and their variation.

        E[S^2] = t^2 (1 + c^2), with c the variation of the times

    returns: Mean of the squares. For a mix of riders, take the mean of their second moments by their shares.

    Source: definition of the standard deviation.

    >>> show(second_moment_from_variation(Q(3, "s"), Q(0.5, "")))
    '11.2 s²'
    """
    return loading_time**2 * (1 + time_variation**2)


@unit_aware(mean_time="s", floor="s", time_variation="", returns="s**2")
def second_moment_lognormal(time_variation, *, mean_time, floor):
    """Return the mean of the squares of loading times, where riders' readiness is lognormal and a floor holds.

        E[S^2] = t_floor^2 Phi(z) + t_mean^2 e^(sigma^2) Phi(2 sigma - z), with z, sigma and Phi as in
        ``mean_loading_time_lognormal``, which is the mean that goes with it

    returns: Mean of the squares of the longer of the two.

    Source: partial second moment of the lognormal distribution; the tests compare it with draws.

    >>> show(second_moment_lognormal(Q(0.5, ""), mean_time=Q(2, "s"), floor=Q(2, "s")))
    '6.2 s²'
    """
    from scipy.special import ndtr

    variance = np.log1p(np.square(time_variation))
    sigma = np.sqrt(variance)
    place_of_floor = (np.log(floor / mean_time) + variance / 2) / sigma
    above = mean_time**2 * np.exp(variance) * ndtr(2 * sigma - place_of_floor)
    return floor**2 * ndtr(place_of_floor) + above


@unit_aware(arrival_rate="person/hour", hourly_capacity="person/hour", returns="person/hour")
def line_growth(*, arrival_rate, hourly_capacity):
    """Return by how many persons an hour a line grows where more join than get on.

        growth = r - C, with r the arrival rate

    Below zero a line that stands empties so fast. Once it is empty it stays near empty, and chance makes the waits.

    returns: Persons an hour that the line grows by.

    Source: balance of those who join and those who get on.

    >>> show(line_growth(arrival_rate=Q(1500, "pph"), hourly_capacity=Q(1200, "pph")))
    '300 pph'
    """
    return arrival_rate - hourly_capacity


@unit_aware(people_in_line="person", hourly_capacity="person/hour", returns="s")
def wait_from_line(people_in_line, hourly_capacity):
    """Return how long the last one of a line waits, from the people in it and those who get on an hour.

        W = 3600 L / C, with L the people in line

    hourly_capacity: persons an hour who get on while the line stands: two a chair on a double, not one
    returns: Time until all who stand there now have got on.

    Source: definition of a rate; with means on both sides it is Little's law.

    >>> show(wait_from_line(Q(60, "person"), Q(1200, "pph")), "minute")
    '3.0 min'
    """
    return SECONDS_PER_HOUR * people_in_line / hourly_capacity
