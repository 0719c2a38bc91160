"""The running time of a lift, with all stops left out, the clock that has them in, and the rope between the two."""

import math

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import PlainError


def check_number(of, what, number, above=None, most=math.inf):
    """Refuse a number that is endless, negative, or outside its bounds."""
    low = number > above if above is not None else number >= 0
    if not (low and number <= most and math.isfinite(number)):
        least = f"greater than {above:g}" if above is not None else "zero or more"
        upper = "" if most == math.inf else f", and {most:g} at most"
        raise PlainError(f"{of}: {what} must be {least}{upper}, but got {number:g}.")


def generators(seed, days):
    """Return the random numbers of so many days, each day with a generator of its own."""
    return [np.random.default_rng(child) for child in np.random.SeedSequence(seed).spawn(days)]


def lognormal(generator, mean, variation, size):
    """Return draws of a lognormal time from its mean and variation; the mean itself where it does not vary."""
    variation = np.broadcast_to(variation, np.shape(mean) or size)
    spread = np.sqrt(np.log1p(variation**2))
    return mean * np.exp(spread * generator.standard_normal(size) - spread**2 / 2)


class Rope:
    """How far the rope has moved at a running time: less in slow-downs; in seconds of its usual speed."""

    def __init__(self, day, generator, seconds):
        count = generator.poisson(day.slow_downs_an_hour * seconds / SECONDS_PER_HOUR)
        begins = np.sort(generator.uniform(0, seconds, count))
        pieces = []
        for begin in begins:
            if not pieces or begin >= pieces[-1][1]:  # one slow-down at a time
                pieces.append((begin, begin + day.slow_time))
        self.windows, self._speed = pieces, day.slow_speed
        edges = np.array([0.0, *[edge for piece in pieces for edge in piece], 10 * seconds + 1e6])
        speeds = np.ones(edges.size - 1)
        speeds[1::2] = day.slow_speed
        self._times, self._moved = edges, np.concatenate([[0.0], np.cumsum(np.diff(edges) * speeds)])

    def moved(self, time):
        """Return how far the rope has moved at a running time."""
        return np.interp(time, self._times, self._moved) if self.windows else time

    def time(self, moved):
        """Return the running time at which the rope has moved so far."""
        return np.interp(moved, self._moved, self._times) if self.windows else moved


def clock_of(stops):
    """Return the function from running time to the time of the clock."""
    if not stops.size:
        return lambda times: times
    times, stood = stops[:, 0], np.concatenate([[0.0], np.cumsum(stops[:, 1])])
    return lambda running: running + stood[np.searchsorted(times, running, side="left")]


def stops_on_clock(stops):
    """Return begin and end of every stop by the clock."""
    if not stops.size:
        return stops
    before = np.concatenate([[0.0], np.cumsum(stops[:, 1])[:-1]])
    begin = stops[:, 0] + before
    return np.column_stack([begin, begin + stops[:, 1]])
