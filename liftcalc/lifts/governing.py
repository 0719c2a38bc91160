"""Which of a lift's own limits governs, how far the next one is away, and in what share of draws each does.

The smallest of the lift's own limits is an upper bound, no promise. Planning figures, no design.
"""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.levels import Capacity
from liftcalc.lifts.limit_records import GROUPS, LeftOut, Limit
from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, UnitError

NEXT_TO_NOTHING = 1e-6  # pph: below it a share of the capacity says nothing
AN_UPPER_BOUND = "This is an upper bound: chance at the loading point, misses, stops and gaps take their share."

NOT_ALL = "Rope, brake, towers and the time of an evacuation cap a lift too, and are no part of it."


@dataclass(frozen=True)
class Governing:
    """Which of a lift's own limits governs, and what stands beside it.

    Parameters
    ----------
    limit : Limit
        The smallest of the lift's own limits.
    next_limit : Limit or None
        The next smallest of them; None where there is only one.
    ahead : Quantity [person/hour] or None
        How far the next one is above.
    ahead_share : Quantity [percent] or None
        The same as a part of the governing one; None too where that one is next to nothing.
    in_order : tuple of Limit
        All limits, the smallest first; those of other groups as well.
    left_out : tuple of LeftOut
        Limits that could not be computed.
    capacity : Capacity
        The governing capacity, at the level "governed".
    sentence : str
        The result in words.
    """

    limit: Limit
    next_limit: Limit | None
    ahead: Quantity | None
    ahead_share: Quantity | None
    in_order: tuple
    left_out: tuple
    capacity: Capacity
    sentence: str

    def __str__(self):
        return self.sentence


def governing(limits):
    """Return which of a lift's own limits governs.

    Parameters
    ----------
    limits : iterable of Limit and LeftOut
        Limits of one line, as the functions of this module return them; each name once.

    Returns
    -------
    Governing
        The governing limit, the next one and how far away it is, all limits in order, and those left out.

    Raises
    ------
    PlainError
        If something else came, a name came twice, or none of the lift's own limits is there.

    Examples
    --------
    >>> from liftcalc import Q
    >>> from liftcalc.lifts.governing import governing
    >>> from liftcalc.lifts.limits import loading_limit, spacing_limit
    >>> result = governing([spacing_limit(Q(3.4, "m/s"), Q(6.8, "m")), loading_limit(Q(3, "s"))])
    >>> result.capacity
    1,200 pph (governed)
    >>> result.next_limit.name
    'spacing'
    """
    limits = list(limits)
    names = [_name(limit) for limit in limits]
    twice = [name for name in names if names.count(name) > 1]
    if twice:
        raise PlainError(f"governing: {twice[0]!r} came {names.count(twice[0])} times. Give each limit once.")
    in_order = tuple(sorted((item for item in limits if isinstance(item, Limit)), key=_pph))
    left_out = tuple(item for item in limits if isinstance(item, LeftOut))
    own = [limit for limit in in_order if limit.group == "lift"]  # people, slope and rule stand beside
    if not own:
        came = ", ".join(names) or "nothing"
        raise PlainError(
            f"governing: none of the lift's own limits can be computed; came: {came}. "
            "Give at least one, such as spacing_limit(Q(3.4, 'm/s'), Q(6.8, 'm'))."
        )
    first, following = own[0], own[1] if len(own) > 1 else None
    ahead = following.capacity - first.capacity if following else None
    share = (ahead / first.capacity).to("percent") if following and _pph(first) > NEXT_TO_NOTHING else None
    sentence = _sentence(first, following, ahead, share, in_order, left_out)
    capacity = Capacity(first.capacity, "governed")
    return Governing(first, following, ahead, share, in_order, left_out, capacity, sentence)


def _name(limit):
    if not isinstance(limit, (Limit, LeftOut)):
        raise PlainError(f"governing: every entry must be a Limit or a LeftOut, but got {as_received(limit)}.")
    return limit.name


def _pph(limit):
    return limit.capacity.m_as("pph")


def _sentence(first, following, ahead, share, in_order, left_out):
    """Return the result of ``governing`` in words."""
    parts = [f"{first.name.capitalize()} governs: at most {show(first.capacity)}."]
    if following and _pph(following) == _pph(first):
        parts.append(f"{following.name.capitalize()} stands at the same figure.")
    elif following:
        part = f", or {show(share)}," if share is not None else ""
        parts.append(f"Next comes {following.name}, {show(ahead)}{part} above it.")
    parts.append(AN_UPPER_BOUND)
    lower = [limit for limit in in_order if limit.group != "lift" and _pph(limit) < _pph(first)]
    parts += [
        f"Apart from the lift, {limit.name} ({GROUPS[limit.group]}) stands lower: {show(limit.capacity)}."
        for limit in lower
    ]
    if left_out:
        parts.append(f"Left out for want of a reading: {not_read(left_out)}.")
    return " ".join(parts)


def not_read(left_out):
    """Return limits that are left out, each with the readings that it lacks, in words."""
    return "; ".join(f"{item.name} ({', '.join(item.missing)})" for item in left_out)


def envelope(places, capacities):
    """Return the smallest of several curves, in pieces: each piece with the name of the limit that governs on it.

    Parameters
    ----------
    places : array
        Where the curves are known, in rising order, such as line speeds in m/s.
    capacities : dict of str to array
        What each limit allows there, in pph, by its name.

    Returns
    -------
    list of (str, array, array)
        Name, places and capacities of each piece, from left to right. Neighbours share the point in which their curves
        cross, taken as straight between two places.

    Raises
    ------
    PlainError
        If there is no curve, or one does not fit the places.

    Examples
    --------
    >>> pieces = envelope([0, 4], {"spacing": [0, 2400], "loading": [1200, 1200]})
    >>> [(name, at.tolist()) for name, at, _ in pieces]
    [('spacing', [0.0, 2.0]), ('loading', [2.0, 4.0])]
    """
    places = np.asarray(places, dtype=float)
    curves = {name: np.asarray(_in_pph(name, values), dtype=float) for name, values in capacities.items()}
    wrong = [name for name, curve in curves.items() if curve.shape != places.shape]
    if wrong or not curves or not places.size:
        came = f"{wrong[0]} has shape {curves[wrong[0]].shape}" if wrong else "no curve, or no place, came"
        raise PlainError(f"envelope: the places have shape {places.shape}, but {came}. Give one capacity a place.")
    names, together = list(curves), np.stack(list(curves.values()))
    smallest = together.argmin(axis=0)
    pieces, begin, start = [], 0, None
    for after in [*(np.nonzero(np.diff(smallest))[0] + 1), len(places)]:
        name = smallest[begin]
        at, height = list(places[begin:after]), list(together[name, begin:after])
        if start is not None:
            at, height = [start[0], *at], [start[1], *height]
        if after < len(places):
            start = _crossing(places[after - 1 : after + 1], together[name, after - 1 : after + 1],
                              together[smallest[after], after - 1 : after + 1])  # fmt: skip
            at, height = [*at, start[0]], [*height, start[1]]
        pieces.append((names[name], np.array(at), np.array(height)))
        begin = after
    return pieces


def _crossing(places, one, other):
    """Return where two straight pieces cross, of which the one is the lower at first and the other at last."""
    before, behind = other[0] - one[0], one[1] - other[1]
    part = before / (before + behind) if before + behind > 0 else 0.0
    return places[0] + part * (places[1] - places[0]), one[0] + part * (one[1] - one[0])


def _in_pph(name, values):
    """Return draws as plain numbers in pph."""
    if not isinstance(values, Quantity):
        return values
    if not values.check("[person]/[time]"):
        raise UnitError(f"share_of_draws: {name} needs hourly capacities, but got {values.units}. Give draws in pph.")
    return values.m_as("pph")


def share_of_draws(draws):
    """Return in what share of draws each limit governs, where readings in doubt bring two limits close.

    Parameters
    ----------
    draws : dict of str to array
        Sampled capacities of each of the lift's own limits, by its name, all of one shape: plain numbers in pph, or
        quantities. Draw number five of every limit must come from draw number five of the readings, so that shared
        readings move together.

    Returns
    -------
    dict of str to float
        Share of each limit; they add up to 1. Draws in which several are the smallest are shared among them.

    Raises
    ------
    UnitError
        If draws come as quantities that are no hourly capacities.
    PlainError
        If there is no limit or no draw, the shapes differ, or a draw is negative or no finite number.

    Examples
    --------
    >>> share_of_draws({"spacing": [1800, 1700, 1900], "motor": [1750, 1720, 1900]})
    {'spacing': 0.5, 'motor': 0.5}
    """
    if not draws:
        raise PlainError(
            "share_of_draws: no limit came. Give an array of draws for each, such as {'motor': [1571, 1290]}."
        )
    arrays = {name: np.asarray(_in_pph(name, values), dtype=float) for name, values in draws.items()}
    shapes = {name: array.shape for name, array in arrays.items()}
    if len(set(shapes.values())) > 1:
        sizes = ", ".join(f"{name} has shape {shape}" for name, shape in shapes.items())
        raise PlainError(f"share_of_draws: the draws do not fit together: {sizes}. Give as many draws for each.")
    for name, array in arrays.items():
        if array.size == 0:
            raise PlainError(f"share_of_draws: {name} holds no draws. Give at least one.")
        wrong = array[~(np.isfinite(array) & (array >= 0))]
        if wrong.size:
            raise PlainError(
                f"share_of_draws: {name} holds {wrong.size} draws that are no capacity, such as {wrong[0]:g} pph. "
                "Leave that draw out of every limit."
            )
    together = np.stack(list(arrays.values()))
    smallest = together == together.min(axis=0)
    parts = smallest / smallest.sum(axis=0)
    return {name: float(part.mean()) for name, part in zip(arrays, parts, strict=True)}
