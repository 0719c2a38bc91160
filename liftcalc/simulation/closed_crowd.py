"""A closed crowd: so many people ski a hill lap after lap, and share its lifts.

Exact for loading times that are exponential and riders who are served in the order of coming; times of ride and descent
may be of any kind. Real loading times differ less than exponential ones: the line is shorter then, and a few more get
up. ``crowd_capacity_at_most`` and ``crowd_capacity_at_least`` hold whatever the times.
"""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.units import PlainError, Q, checked_magnitude, parsed_unit

MOST_PEOPLE = 100_000  # for whom the recursion, one person after another, takes a second
EVEN, SMALL, MOST_STEPS = 1e-6, 1e-5, 100  # part by which waits may differ and still be equal; steps to such shares


@dataclass(frozen=True)
class ClosedCrowd:
    """What each size of a crowd makes of its lifts: one row for each size, from one person up.

    Parameters
    ----------
    crowd : Quantity [person]
        Sizes of the crowd: 1, 2, and so on.
    riders_an_hour, wait, line : Quantity [person/hour], [s], [person]
        Riders an hour, mean wait in line and mean number who wait there, without the one who is loading; a column for
        each lift.
    laps_an_hour : Quantity [1/hour]
        Rides of each person in an hour, on all lifts together.
    """

    crowd: Quantity
    riders_an_hour: Quantity
    wait: Quantity
    line: Quantity
    laps_an_hour: Quantity


def closed_crowd(crowd, *, loading_time, ride_and_descent, shares=None):
    """Return riders an hour, waits and lines of a closed crowd, for every size up to a given one.

        R_k(n) = t_k (1 + L_k(n - 1)), X(n) = n / sum(p_k (Z_k + R_k(n))), L_k(n) = X(n) p_k R_k(n)

    with t the loading time, Z the time of ride and descent and p the share of the rides on lift k, R the time from
    joining its line to riding, L the number there and X the rides of the whole crowd.

    Parameters
    ----------
    crowd : Quantity [person]
        People who ski these lifts and nothing else: a whole number.
    loading_time : Quantity [s]
        Mean time that one person takes at the loading point; for several lifts, one value each.
    ride_and_descent : Quantity [s]
        Time of one ride and one descent, without waiting and loading: one value, or one for each lift.
    shares : Quantity [] or None
        Share of all rides that each lift gets, as people choose; all on one lift if left out.

    Returns
    -------
    ClosedCrowd
        A row for each size; ``[-1]`` is the whole crowd.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    PlainError
        If the crowd is no whole number or too large, if values and lifts do not match, or if the shares do not add
        up to 1.

    Notes
    -----
    Source: mean value analysis of closed queueing networks, in the textbooks; Reiser and Lavenberg, Journal of the
    ACM, 1980 (from memory).

    Examples
    --------
    >>> from liftcalc import show
    >>> found = closed_crowd(Q(40, "person"), loading_time=Q(3, "s"), ride_and_descent=Q(180, "s"))
    >>> show(found.riders_an_hour[-1]), show(found.wait[-1])
    ('768 pph', '4.6 s')
    """
    people, loading, away, part = _taken("closed_crowd", crowd, loading_time, ride_and_descent, shares)
    if len(loading) == 1:
        rides, spent = _one_lift(people, float(loading[0]), float(away[0]))
    else:
        rides, spent = _several_lifts(people, loading, away, part)
    riders, wait = rides[:, None] * part, spent - loading
    sizes = np.arange(1, people + 1)
    return ClosedCrowd(
        Q(sizes, "person"), Q(3600 * riders, "person/hour"), Q(wait, "s"), Q(riders * wait, "person"),
        Q(3600 * rides / sizes, "1/hour"),
    )  # fmt: skip


def even_shares(crowd, *, loading_time, ride_and_descent):
    """Return the shares of the rides at which a closed crowd waits equally long for each of its lifts.

    Riders who see the lines and go to the shorter wait come to these shares by themselves.

    Parameters
    ----------
    crowd : Quantity [person]
        People who ski these lifts and nothing else: a whole number.
    loading_time : Quantity [s]
        Mean time that one person takes at the loading point, one value for each lift.
    ride_and_descent : Quantity [s]
        Time of one ride and one descent, without waiting and loading: one value, or one for each lift.

    Returns
    -------
    Quantity []
        One share for each lift. Where nobody ever waits, they are as the capacities of the lifts.

    Raises
    ------
    UnitError, PlainError
        As ``closed_crowd``.

    Examples
    --------
    >>> even_shares(
    ...     Q(120, "person"), loading_time=Q([3, 7], "s"), ride_and_descent=Q([180, 240], "s")
    ... ).magnitude.round(2)
    array([0.72, 0.28])
    """
    lifts = np.size(getattr(loading_time, "magnitude", loading_time))
    people, loading, away, _ = _taken(
        "even_shares", crowd, loading_time, ride_and_descent, Q(np.full(lifts, 1 / lifts), "")
    )
    by_capacity = (1 / loading) / np.sum(1 / loading)
    if lifts == 1 or people == 1:
        return Q(by_capacity, "")

    def shares_of(leanings):
        weights = by_capacity * np.exp([0.0, *leanings])
        return weights / weights.sum()

    def uneven(leanings):
        _, spent = _several_lifts(people, loading, away, shares_of(leanings))
        return np.diff(np.log(spent[-1] - loading))

    leanings = np.zeros(lifts - 1)  # how much more than by its capacity each lift but the first is chosen
    for _ in range(MOST_STEPS):
        now = uneven(leanings)
        if np.max(np.abs(now)) < EVEN:
            return Q(shares_of(leanings), "")
        slopes = np.array([uneven(leanings + small) - now for small in SMALL * np.eye(lifts - 1)]).T / SMALL
        step = np.linalg.solve(slopes, now)  # Newton's, and never far at once
        leanings = leanings - step / max(1.0, float(np.max(np.abs(step))))
    raise PlainError("even_shares: no shares make the waits equal. Give loading times that differ less.")


def _one_lift(people, loading, away):
    """Return rides a second, and time at the lift, for each size: plain floats, because there is but one lift."""
    rides, spent, there = [], [], 0.0
    for size in range(1, people + 1):
        time = loading * (1 + there)
        flow = size / (away + time)
        there = flow * time
        rides.append(flow)
        spent.append(time)
    return np.array(rides), np.array(spent)[:, None]


def _several_lifts(people, loading, away, part):
    """Return the same with a column for each lift."""
    rides, spent = np.empty(people), np.empty((people, len(loading)))
    there, all_away = np.zeros(len(loading)), float(part @ away)
    for size in range(1, people + 1):
        time = loading * (1 + there)
        flow = size / (all_away + float(part @ time))
        there = flow * part * time
        rides[size - 1] = flow
        spent[size - 1] = time
    return rides, spent


def _taken(function, crowd, loading_time, ride_and_descent, shares):
    """Return the size of the crowd, and a value for each lift, as plain numbers, or say what does not fit."""

    def column(name, value, unit, lowest="positive"):
        number = checked_magnitude(function, name, value, unit, parsed_unit(unit), lowest)
        return np.ravel(np.asarray(number, dtype=float))

    size = column("crowd", crowd, "person")
    if size.size > 1 or size[0] != round(size[0]) or size[0] > MOST_PEOPLE:
        raise PlainError(
            f"{function}: crowd must be one whole number, {MOST_PEOPLE:,} at most, but got {_listed(size)}. "
            "Write for example Q(200, 'person')."
        )
    loading = column("loading_time", loading_time, "s")
    away = column("ride_and_descent", ride_and_descent, "s", "not negative")
    if shares is None and loading.size > 1:
        raise PlainError(
            f"{function}: {loading.size} lifts need shares. Write what share of all rides each gets, such as "
            "Q([0.7, 0.3], '')."
        )
    part = np.ones(1) if shares is None else column("shares", shares, "", "not negative")
    if part.size != loading.size or away.size not in (1, loading.size):
        raise PlainError(
            f"{function}: {loading.size} values of loading_time came with {away.size} of ride_and_descent and "
            f"{part.size} of shares. Give one of each a lift."
        )
    if abs(part.sum() - 1) > 1e-6:
        raise PlainError(
            f"{function}: the shares add up to {part.sum():.3f}, not to 1. Write each as a part of all rides, such "
            "as Q([0.7, 0.3], '')."
        )
    return int(size[0]), loading, np.broadcast_to(away, loading.shape), part


def _listed(numbers):
    return ", ".join(f"{number:,g}" for number in numbers)
