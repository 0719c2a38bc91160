"""Days on which riders come by the clock, wait, give up, and come back when a stop has emptied the rope.

One step a start, with all days side by side: whatever feeds back into the line must be told before the next start.
Times are of the clock.
"""

from dataclasses import dataclass

import numpy as np

from liftcalc.simulation.crowded_run import Run
from liftcalc.simulation.day_draws import DayDraws
from liftcalc.simulation.loading_day import LoadingDay
from liftcalc.simulation.shifts import CLOSINGS
from liftcalc.units import PlainError


@dataclass(frozen=True)
class CrowdedDays:
    """What many days came to: an array a number, one place a day.

    Parameters
    ----------
    day : LoadingDay
        What every day was like.
    arrived, came_back : array of int
        Riders who came to the line, and who came back to it from a stop.
    gave_up, turned_away : array of int
        Who found the line too long for them, and who still stood in it at closing and was sent away.
    started, completed, fell, dropped : array of int
        Who started, and how the starts ended; the rest was on the line at closing.
    longest_line : array of int
        Most who waited at once.
    waited : array
        Time that all riders waited together [s].
    """

    day: LoadingDay
    arrived: np.ndarray
    came_back: np.ndarray
    gave_up: np.ndarray
    turned_away: np.ndarray
    started: np.ndarray
    completed: np.ndarray
    fell: np.ndarray
    dropped: np.ndarray
    longest_line: np.ndarray
    waited: np.ndarray

    @property
    def on_the_line(self):
        """Riders on the line at closing."""
        return self.started - self.completed - self.fell - self.dropped

    @property
    def mean_wait(self):
        """Mean wait in line [s]: the waiting line summed over time, over all who left it, by a start or at closing."""
        return self.waited / np.maximum(self.started + self.turned_away, 1)


def simulate_crowded_days(day, arrivals, seed, *, most_in_line=None, come_back=True, shifts=(), closing="turned away"):
    """Simulate many days side by side, with riders who come by the clock.

    Parameters
    ----------
    day : LoadingDay
        What every day is like.
    arrivals : array
        When riders come [s of the clock], in order, a row a day; endless for nobody.
    seed : int
        Start of the random numbers.
    most_in_line : int, array or None
        A rider who finds as many waiting goes away: one number, or one for each arrival; None for riders who always
        stay.
    come_back : bool
        Whether those whom a stop has dropped go to the end of the line.
    shifts : tuple of Shift
        Spells in which the loading point is served in another way; whoever is not off when it is shut begins anew.
    closing : str
        Whether who stands in line at closing is "turned away" or "rides".

    Returns
    -------
    CrowdedDays
        Everybody is somewhere: arrived + came back = started + gave up + turned away.

    Raises
    ------
    PlainError
        If the arrivals are not in order, or the closing is neither of the two.
    """
    arrivals = np.atleast_2d(np.asarray(arrivals, dtype=float))
    if np.any(arrivals[:, 1:] < arrivals[:, :-1]):
        raise PlainError("simulate_crowded_days: the arrivals of a day are not in order. Sort each row.")
    if closing not in CLOSINGS:
        raise PlainError(f"simulate_crowded_days: closing must be one of {', '.join(CLOSINGS)}, but got {closing!r}.")
    draws = DayDraws(day, np.random.default_rng(seed), arrivals.shape[0])
    run = Run(day, arrivals, draws, most_in_line, come_back, shifts, closing == "rides")
    run.all_steps()
    return CrowdedDays(day, **run.totals, longest_line=run.longest, waited=run.waited)
