"""The steady parts of a track: where it goes straight on at one speed, without run-up, slowing and standing.

The track is cut at the changes of velocity that explain it best (optimal partitioning: the sum of squares within the
pieces plus a price for each cut). Then the ends of a piece are cut back, because the speed is not yet, or no longer,
steady there.
"""

from dataclasses import dataclass

import numpy as np

STEP = 2.0  # s, least time between the knots at which velocities are compared
LONGEST_STEP = 8.0  # s, the same for a slow lift, where a step of 2 s is all noise
STEP_WAY = 5.0  # m, way that a step should cover
LONGEST = 1500  # knots, the longest piece that is looked for
PRICE = 15.0  # of a cut, in units of the noise's variance
SLOWEST = 0.2  # m/s, slower is standing
SHORTEST_WAY = 20.0  # m, a shorter piece is no ride
SHORTEST_TIME = 6.0  # s
FEWEST_POINTS = 5
LEVEL = 2.0  # m, a smaller fall is no way downhill, however good the heights
LONGEST_MOMENT = 8.0  # s, for so long a piece may be disturbed and still be one ride
LONGEST_GAP = 60.0  # s without a fix: a piece does not run across a longer one


@dataclass(frozen=True)
class SteadyPart:
    """A straight stretch at one speed, in seconds since the first point of the track.

    Parameters
    ----------
    ride_start, ride_end : float
        From where the speed set in to where it ceased.
    start, end : float
        The steady part inside, cut back at both ends.
    east, north : float
        Rough velocity in m/s.
    climbs : bool or None
        Whether the elevations rise or stay level along it; None without elevations.
    edge_doubt : float
        Standard uncertainty of the two ends of the ride, in s.
    """

    ride_start: float
    ride_end: float
    start: float
    end: float
    east: float
    north: float
    climbs: bool | None
    edge_doubt: float

    @property
    def speed(self):
        """Rough speed on the plan in m/s."""
        return float(np.hypot(self.east, self.north))

    @property
    def way(self):
        """Rough length of the ride on the plan in m."""
        return self.speed * (self.ride_end - self.ride_start)


def find_steady_parts(track):
    """Return the steady parts of a track, the longest way first; those that go downhill come last.

    Parameters
    ----------
    track : Track
        A cleaned track.

    Returns
    -------
    tuple of SteadyPart
        None, one or several.

    Notes
    -----
    Source: optimal partitioning, Jackson and others, IEEE Signal Processing Letters 12 (2005) (from memory).
    """
    found = _parts_at_step(track, STEP)
    if found and found[0].speed * STEP < STEP_WAY:
        found = _parts_at_step(track, min(STEP_WAY / found[0].speed, LONGEST_STEP)) or found
    return tuple(found)


def _parts_at_step(track, step):
    """Return the steady parts, the best first, found by comparing velocities over steps of so many seconds."""
    east, north = track.plane()
    parts = []
    for first, last in _unbroken(track):
        seconds = track.seconds[first:last]
        knots = _knots(seconds, step)
        if knots.size < 3:
            continue
        times = seconds[knots]
        places = np.column_stack([east[first:last], north[first:last]])[knots]
        noise = _noise(times, places)
        for begin, end in _join(times, places, _cut_up(times, places, noise), noise):
            part = _part(track, times, places, begin, end, noise, step)
            if part is not None:
                parts.append(part)
    return sorted(parts, key=lambda part: (part.climbs is False, -part.way))


def _unbroken(track):
    """Return first and last place of the pieces between breaks and long gaps."""
    gaps = np.flatnonzero(np.diff(track.seconds) > LONGEST_GAP) + 1
    edges = np.unique(np.concatenate([[0], track.breaks, gaps, [track.seconds.size]])).astype(int)
    return list(zip(edges[:-1], edges[1:], strict=True))


def _knots(seconds, step):
    """Return the places of points that are at least one step apart."""
    place, knots = 0, [0]
    while True:
        place = int(np.searchsorted(seconds, seconds[place] + step - 1e-9))
        if place >= seconds.size:
            return np.array(knots)
        knots.append(place)


def _noise(times, places):
    """Return the variance that a coordinate gains in a second, from how much the velocity differs step by step."""
    steps = np.diff(times)
    rates = np.diff(places, axis=0) / steps[:, None]
    if len(rates) < 2:
        return 0.25
    change = np.diff(rates, axis=0) ** 2 / (1 / steps[1:] + 1 / steps[:-1])[:, None]
    return float(max(np.median(change) / 0.4549, 0.01))  # 0.4549 is the median of a chi-square of one degree


def _cut_up(times, places, noise):
    """Return the places of the cuts, both ends included, that make squares plus price smallest."""
    steps = np.diff(times)
    squares = np.append(0.0, np.cumsum((np.diff(places, axis=0) ** 2).sum(axis=1) / steps))
    cost = np.zeros(times.size)
    before = np.zeros(times.size, int)
    for end in range(1, times.size):
        first = max(0, end - LONGEST)
        moved = places[end] - places[first:end]
        within = squares[end] - squares[first:end] - (moved**2).sum(axis=1) / (times[end] - times[first:end])
        total = cost[first:end] + within / noise + PRICE
        best = int(np.argmin(total))
        cost[end], before[end] = total[best], first + best
    cuts = [times.size - 1]
    while cuts[-1] > 0:
        cuts.append(int(before[cuts[-1]]))
    return cuts[::-1]


def _join(times, places, cuts, noise):
    """Return the pieces as pairs of places; neighbours of nearly one velocity, or parted by a moment, are joined."""
    pieces = []
    for piece in zip(cuts[:-1], cuts[1:], strict=True):
        pieces.append(piece)
        while True:
            near = [back for back in (2, 3) if len(pieces) >= back and _alike(times, places, pieces[-back:], noise)]
            if not near:
                break
            pieces[-near[0] :] = [(pieces[-near[0]][0], pieces[-1][1])]
    return pieces


def _alike(times, places, pieces, noise):
    """Return whether the first and the last of neighbouring pieces are one ride, with at most a moment between them."""
    (begin, middle), (second, end) = pieces[0], pieces[-1]
    one, other = _velocity(times, places, begin, middle), _velocity(times, places, second, end)
    speed = max(np.hypot(*one), np.hypot(*other))
    if speed <= SLOWEST:
        return False
    between = times[second] - times[middle]
    if between > 0:
        way = np.hypot(*(places[second] - places[middle]))
        if between > LONGEST_MOMENT or abs(way - speed * between) > 0.3 * speed * between:
            return False
    doubt = np.sqrt(noise / (times[middle] - times[begin]) + noise / (times[end] - times[second]))
    return np.hypot(*(one - other)) < max(0.08 * speed, min(3 * doubt, 0.25 * speed))


def _velocity(times, places, begin, end):
    """Return the mean velocity of a piece."""
    return (places[end] - places[begin]) / (times[end] - times[begin])


def _part(track, times, places, begin, end, noise, step):
    """Return a piece as a steady part; None where it is no ride."""
    velocity = _velocity(times, places, begin, end)
    speed, long = float(np.hypot(*velocity)), float(times[end] - times[begin])
    if speed < SLOWEST or speed * long < SHORTEST_WAY or long < SHORTEST_TIME:
        return None
    edge = 0.5 + noise / speed**2
    back = min(3.5 + 3.0 * edge, 0.2 * long)
    start, stop = float(times[begin]), float(times[end])
    if ((track.seconds >= start + back) & (track.seconds <= stop - back)).sum() < FEWEST_POINTS:
        return None
    climbs = _climbs(track, start, stop, speed * long)
    return SteadyPart(start, stop, start + back, stop - back, *map(float, velocity), climbs, edge + step / 4)


def _climbs(track, start, stop, way):
    """Return whether a part does not go downhill beyond what wandering heights may feign; None without heights."""
    if track.elevations is None:
        return None
    inside = (track.seconds >= start) & (track.seconds <= stop) & np.isfinite(track.elevations)
    seconds, heights = track.seconds[inside], track.elevations[inside]
    knots = _knots(seconds, STEP) if seconds.size else np.array([], int)
    if knots.size < 4:
        return None
    quarter = max(1, seconds.size // 4)
    gained = float(np.median(heights[-quarter:]) - np.median(heights[:quarter]))
    feigned = 3 * np.sqrt(_noise(seconds[knots], heights[knots, None]) * (stop - start))
    return bool(gained > -max(LEVEL, 0.03 * way, feigned))
