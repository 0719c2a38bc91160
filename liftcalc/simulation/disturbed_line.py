"""A few minutes of a full line, once as it was and once with one thing disturbed: a missed grab, or a stop."""

from dataclasses import dataclass, replace

import numpy as np

from liftcalc.simulation.loading_day import simulate_day

WARM_UP = 3  # ride times until the line is full and its riders are those of any other time
MOMENT = 12.0  # seconds into the scene at which it is disturbed
BEYOND = 60.0  # seconds of a scene beside one ride


@dataclass(frozen=True)
class LineSeen:
    """A line of riders over a few minutes; times of the clock [s], zero at the begin of the scene.

    Parameters
    ----------
    started : array
        When each rider starts; negative for whoever is on the line already.
    ride_time, seconds : float
        How long a ride takes while the lift runs, and how long the scene lasts.
    headway : float
        Mean time from one start to the next.
    empties : bool
        Whether riders let go when the lift stops.
    stop : tuple of float
        Begin and end of the one stop; both endless where there is none.
    """

    started: np.ndarray
    ride_time: float
    seconds: float
    headway: float
    empties: bool
    stop: tuple = (np.inf, np.inf)

    def run(self, time):
        """Return for how long the lift has run until a time [s]; what came before the scene is negative."""
        begin, end = self.stop
        return time if begin == np.inf else time - np.clip(np.subtract(time, begin), 0, end - begin)

    @property
    def dropped(self):
        """Who lets go because the lift stops."""
        begin = self.stop[0]
        if not self.empties or begin == np.inf:
            return np.zeros(self.started.size, bool)
        return (self.started <= begin) & (self.started + self.ride_time > begin)

    @property
    def top(self):
        """When each gets to the top [s]; endless for whoever lets go before."""
        late = np.where((self.started <= self.stop[0]) & (self.started + self.ride_time > self.stop[0]), 1.0, 0.0)
        held = 0.0 if self.stop[0] == np.inf else self.stop[1] - self.stop[0]
        return np.where(self.dropped, np.inf, self.started + self.ride_time + late * held)

    def counted(self, time=None):
        """Return how many have got to the top since the scene began; until its end if no time is given."""
        top = self.top
        return int(np.count_nonzero((top > 0) & (top <= (self.seconds if time is None else time))))


def full_line(day, seed):
    """Return a few minutes of a full line, its starts drawn from the readiness of the riders; nobody misses or falls.

    Parameters
    ----------
    day : LoadingDay
        What the day is like.
    seed : int
        Start of the random numbers.

    Returns
    -------
    LineSeen
        At least a minute longer than a ride, in whole minutes.
    """
    seconds = 60.0 * np.ceil((day.ride_time + BEYOND) / 60)
    hours = (WARM_UP * day.ride_time + 2 * seconds) / 3600
    seen = simulate_day(replace(day.with_causes(("uneven starts",)), hours=hours), seed)
    started = seen.started - WARM_UP * day.ride_time
    started = started[started > -day.ride_time]
    return LineSeen(started, day.ride_time, float(seconds), float(np.diff(started).mean()), day.empties)


def with_a_miss(line):
    """Return the line with one missed grab: the slot stays empty, and whoever missed starts in the next one."""
    return replace(line, started=np.delete(line.started, int(np.searchsorted(line.started, MOMENT))))


def with_a_stop(line, seconds):
    """Return the line with one stop: a start that was under way goes on after it, as do all that follow."""
    started = np.where(line.started > MOMENT, line.started + seconds, line.started)
    return replace(line, started=started, stop=(MOMENT, MOMENT + seconds))
