"""The loading point and the unload area: how many an hour get on, how many get clear, how many a closed crowd can make.

Cautions come first: spacing that is taken for a stopping gap is a lesson here and never a rule; rules come from the
local code, the authority and the maker's manual.
"""

import numpy as np
from pint import Quantity

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.levels import Capacity, Remark
from liftcalc.quantity_text import as_received, show
from liftcalc.units import Q, UnitError, unit_aware


@unit_aware(loading_time="s", persons_per_carrier="person", loading_places="", returns="person/hour")
def loading_capacity(loading_time, persons_per_carrier=1.0, loading_places=1.0):
    """Return how many an hour get on, from the mean time between successful starts at one place.

        C = 3600 n k / t, with k the loading places

    Line speed is not in it.

    loading_places: places where riders start at once, each on its own; a tow that is grabbed along a zone has several
    returns: Persons an hour who get on.

    Source: definition of a rate; Know Your Capacity, SAM (Ski Area Management), July 2018, has it with one place.

    >>> show(loading_capacity(Q(3, "s")))
    '1,200 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier * loading_places / loading_time


@unit_aware(clearing_time="s", persons_per_carrier="person", unloading_places="", returns="person/hour")
def unload_capacity(clearing_time, persons_per_carrier=1.0, unloading_places=1.0):
    """Return how many an hour get clear of the unload area.

        C = 3600 n k / t_clear, with k the unloading places

    clearing_time: mean time from a rider's arrival at one place until the place is clear for the next
    returns: Persons an hour who get clear.

    Source: definition of a rate.

    >>> show(unload_capacity(Q(2.5, "s")))
    '1,440 pph'
    """
    return SECONDS_PER_HOUR * persons_per_carrier * unloading_places / clearing_time


@unit_aware(clear_length="m", pick_up_acceleration="m/s**2", returns="m/s")
def speed_where_floor_ends(clear_length, pick_up_acceleration):
    """Return the line speed above which a faster rope no longer shortens the loading time from rest.

        v* = sqrt(2 a l), with l the clear length

    returns: Line speed that a rider has just reached when the place is clear.

    Source: motion at constant acceleration.

    >>> show(speed_where_floor_ends(Q(2.1, "m"), Q(1.5, "m/s**2")))
    '2.51 m/s'
    """
    return np.sqrt(2 * pick_up_acceleration * clear_length)


@unit_aware(clear_length="m", line_speed="m/s", pick_up_acceleration="m/s**2", returns="s")
def loading_floor_from_rest(clear_length, line_speed, pick_up_acceleration):
    """Return the least time between two starts at one place, when riders start from rest.

        t = l / v + v / (2 a), with l the clear length, and above v* = sqrt(2 a l) with v* in place of v

    Above v* it stays at sqrt(2 l / a): a rider still speeding up does not feel how fast the rope runs.

    returns: Time until the place is clear: a floor set by physics, under which no crew and no crowd can go.

    Source: motion at constant acceleration.

    >>> show(loading_floor_from_rest(Q(2.1, "m"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '1.7 s'
    """
    speed_that_counts = np.minimum(line_speed, speed_where_floor_ends.plain(clear_length, pick_up_acceleration))
    return clear_length / speed_that_counts + speed_that_counts / (2 * pick_up_acceleration)


@unit_aware(
    standing_gap="m", line_speed="m/s", reaction_time="s", deceleration="m/s**2", returns="m",
)  # fmt: skip
def stopping_gap_spacing(standing_gap, line_speed, reaction_time, deceleration):
    """Return the spacing that would let each rider stop behind the one in front: a lesson, and no rule.

        s = s0 + v t_reaction + v^2 / (2 a), with s0 the standing gap

    With such spacing a faster rope carries more only up to ``speed_at_capacity_peak``, and then less.

    reaction_time: time until slowing begins
    returns: Spacing along the rope.

    Source: motion at constant deceleration; the form of the stopping sight distance in the AASHTO Green Book.

    >>> show(stopping_gap_spacing(Q(2.1, "m"), Q(3.4, "m/s"), Q(1, "s"), Q(2.5, "m/s**2")))
    '7.8 m'
    """
    return standing_gap + line_speed * reaction_time + line_speed**2 / (2 * deceleration)


@unit_aware(standing_gap="m", deceleration="m/s**2", returns="m/s")
def speed_at_capacity_peak(standing_gap, deceleration):
    """Return the line speed at which spacing that keeps a stopping gap carries the most: a lesson, and no rule.

        v* = sqrt(2 a s0), with s0 the standing gap

    returns: Line speed of the peak. The reaction time lowers the peak and does not move it.

    Source: the spacing over the speed, s0 / v + t_reaction + v / (2 a), is least where its slope is zero.

    >>> show(speed_at_capacity_peak(Q(2.1, "m"), Q(2.5, "m/s**2")))
    '3.24 m/s'
    """
    return np.sqrt(2 * deceleration * standing_gap)


@unit_aware(crowd="person", ride_and_descent="s", loading_time="s", returns="person/hour")
def crowd_capacity_at_most(crowd, *, ride_and_descent, loading_time):
    """Return the most riders an hour that a closed crowd can make, lap after lap.

        C <= 3600 min(N / (Z + t), 1 / t), with N the crowd, Z the time of ride and descent and t the loading time

    loading_time: time that one person takes at the loading point
    returns: Upper bound on the riders an hour.

    Source: asymptotic bounds of a closed queue, in the textbooks on queueing networks; the tests hold a published
        closed loop between this bound and the lower one.

    >>> show(crowd_capacity_at_most(Q(40, "person"), ride_and_descent=Q(180, "s"), loading_time=Q(3, "s")))
    '787 pph'
    """
    return SECONDS_PER_HOUR * np.minimum(crowd / (ride_and_descent + loading_time), 1 / loading_time)


@unit_aware(crowd="person", ride_and_descent="s", loading_time="s", returns="person/hour")
def crowd_capacity_at_least(crowd, *, ride_and_descent, loading_time):
    """Return the fewest riders an hour that a closed crowd makes, each always waiting behind all the others.

        C >= 3600 N / (Z + N t), with N the crowd, Z the time of ride and descent and t the loading time

    loading_time: time that one person takes at the loading point
    returns: Lower bound on the riders an hour.

    Source: asymptotic bounds of a closed queue, in the textbooks on queueing networks.

    >>> show(crowd_capacity_at_least(Q(40, "person"), ride_and_descent=Q(180, "s"), loading_time=Q(3, "s")))
    '480 pph'
    """
    return SECONDS_PER_HOUR * crowd / (ride_and_descent + crowd * loading_time)


@unit_aware(mean_time="s", floor="s", returns="s", may_be_zero=("floor",))
def mean_loading_time_exponential(*, mean_time, floor):
    """Return the mean time between starts where riders are ready at random, exponential times, and a floor holds.

        t = t_floor + t_mean e^(-t_floor / t_mean)

    returns: Mean of the longer of the two. The capacity is that of this mean, and less than that of the larger
        mean.

    Source: integral of the tail of the exponential distribution; the tests compare it with draws.

    >>> show(mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(2, "s")))
    '2.7 s'
    """
    return floor + mean_time * np.exp(-floor / mean_time)


@unit_aware(mean_time="s", floor="s", time_variation="", returns="s")
def mean_loading_time_lognormal(time_variation, *, mean_time, floor):
    """Return the mean time between starts where the time until a rider is ready is lognormal, and a floor holds.

        t = t_floor Phi(z) + t_mean Phi(sigma - z), z = (ln(t_floor / t_mean) + sigma^2 / 2) / sigma,
        sigma^2 = ln(1 + c^2), with c the variation of the times and Phi the normal distribution

    returns: Mean of the longer of the two. The capacity is that of this mean, and less than that of the larger
        mean.

    Source: partial mean of the lognormal distribution; the tests compare it with draws.

    >>> show(mean_loading_time_lognormal(Q(0.5, ""), mean_time=Q(2, "s"), floor=Q(2, "s")))
    '2.4 s'
    """
    from scipy.special import ndtr

    sigma = np.sqrt(np.log1p(np.square(time_variation)))
    place_of_floor = (np.log(floor / mean_time) + sigma**2 / 2) / sigma
    return floor * ndtr(place_of_floor) + mean_time * ndtr(sigma - place_of_floor)


# what starts: least time from one to the next at one place, and why it is no less
_STARTS = {
    "start": (  # 2.1 m to be clear and a pick-up of 3 m/s² are the shortest and the hardest that the trade speaks of
        Q(float(loading_floor_from_rest.plain(2.1, np.inf, 3.0)), "s"),
        "From rest it takes {} or more, however fast the rope: common practice, no published source.",
    ),
    "carrier for one": (
        Q(3, "s"), "One state's code asks {} or more of a towing outfit for one: 34 Pa. Code s. 7.466."
    ),
    "carrier": (Q(4, "s"), "A group takes {} or more to get ready: common practice, no published source."),
}  # fmt: skip


def remark_on_loading(interval, persons_per_carrier=None, *, carriers=None):
    """Return a remark on a capacity where nobody loads so, from the time between two starts at one place.

    A level says what a capacity promises. It does not say that its settings are beyond anybody.

    Parameters
    ----------
    interval : Quantity [s]
        Time from one start, or one carrier, to the next.
    persons_per_carrier : Quantity [person]
        Riders who start together; one person if left out.
    carriers : bool or None
        Whether they start with a carrier; None takes more than two together for one.

    Returns
    -------
    Remark or None
        None where the interval leaves the least time that a start takes.

    Raises
    ------
    UnitError
        If the interval is no time.
    """
    if not isinstance(interval, Quantity) or not interval.check("[time]"):
        raise UnitError(
            f"remark_on_loading: interval must be a time, but got {as_received(interval)}. Write Q(2.0, 's')."
        )
    together = 1 if persons_per_carrier is None else persons_per_carrier.m_as("person")
    on_carriers = together > 2 if carriers is None else carriers
    what = "start" if not on_carriers else "carrier" if together > 1 else "carrier for one"
    least, why = _STARTS[what]
    if interval.m_as("s") >= least.m_as("s") * (1 - 1e-9):
        return None
    came = f"A {what} every {show(interval, 's')} at one place: nobody loads so."
    return Remark("nobody loads so", f"{came} {why.format(show(least))}")


def intended_capacity(capacity, interval, persons_per_carrier=None, *, carriers=None, level="ideal"):
    """Return a capacity at the spacing or interval intended, with its level, and a remark where nobody loads so.

    Parameters
    ----------
    capacity : Quantity [person/hour]
        Persons an hour.
    interval, persons_per_carrier, carriers
        As for ``remark_on_loading``.
    level : str
        "ideal" or "packing".

    Returns
    -------
    Capacity
        The capacity, for the eye and for comparisons.
    """
    return Capacity(capacity, level, remark=remark_on_loading(interval, persons_per_carrier, carriers=carriers))
