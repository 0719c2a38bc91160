"""Days on which riders come by the clock, wait, give up, and come back when a stop has emptied the rope.

One step a start, with all days side by side: whatever feeds back into the line must be told before the next start.
Times are of the clock. Slow-downs are no part of it: ``loading_day`` has them.
"""

from dataclasses import dataclass

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.loading_day import LoadingDay
from liftcalc.units import PlainError

PLACES = 256  # riders on the line who are remembered: more than a ride time holds
FALLS = 8  # falls on their way that are remembered
NEVER = np.inf


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
        """Mean wait of a start [s]: Little's law, the waiting line summed over time, over the starts."""
        return self.waited / np.maximum(self.started, 1)


def simulate_crowded_days(day, arrivals, seed, *, most_in_line=None, come_back=True):
    """Simulate many days side by side, with riders who come by the clock.

    Parameters
    ----------
    day : LoadingDay
        What every day is like; without slow-downs.
    arrivals : array
        When riders come [s of the clock], in order: a row a day.
    seed : int
        Start of the random numbers.
    most_in_line : int or None
        A rider who finds as many waiting goes away; None for riders who always stay.
    come_back : bool
        Whether those whom a stop has dropped go to the end of the line.

    Returns
    -------
    CrowdedDays
        Everybody is somewhere: arrived + came back = started + gave up + turned away.

    Raises
    ------
    PlainError
        If the day has slow-downs, or the arrivals are not in order.
    """
    arrivals = np.atleast_2d(np.asarray(arrivals, dtype=float))
    if day.slow_downs_an_hour:
        raise PlainError("simulate_crowded_days: slow-downs are no part of this. Set slow_downs_an_hour to 0.")
    if np.any(np.diff(arrivals, axis=1) < 0):
        raise PlainError("simulate_crowded_days: the arrivals of a day are not in order. Sort each row.")
    run = _Run(day, arrivals, np.random.default_rng(seed), most_in_line, come_back)
    while run.open.any():
        run.step()
    return run.result()


class _Run:
    """The state of all days while they run: one number, or one row, a day."""

    def __init__(self, day, arrivals, generator, most_in_line, come_back):
        count = arrivals.shape[0]
        self.day, self.generator, self.most, self.come_back = day, generator, most_in_line, come_back
        self.arrivals = np.hstack([arrivals, np.full((count, 1), NEVER)])
        self.closing = day.hours * SECONDS_PER_HOUR
        self.rows = np.arange(count)
        self.time, self.next = np.zeros(count), np.zeros(count, int)  # time of the clock; the next who comes
        self.waiting, self.open = np.zeros(count, int), np.ones(count, bool)
        self.totals = {name: np.zeros(count, int) for name in _COUNTED}
        self.longest, self.waited = np.zeros(count, int), np.zeros(count)
        self.top = np.full((count, PLACES), NEVER)  # when each rider on the line is to get to the top
        self.slot = np.zeros(count, int)
        self.falls, self.who_falls = np.full((count, FALLS), NEVER), np.zeros((count, FALLS), int)
        self.rate = day.stops_an_hour / SECONDS_PER_HOUR
        self.stop = self._wait_for_a_stop(count)
        self.again, self.kind = np.zeros(count, bool), np.zeros(count, int)
        self.shares = np.cumsum([each.share for each in day.classes])
        self.of = {name: np.array([getattr(each, name) for each in day.classes]) for name in _DRAWN}

    def _wait_for_a_stop(self, count):
        return self.generator.exponential(1 / self.rate, count) if self.rate else np.full(count, NEVER)

    def step(self):
        """Take every open day on to its next start, or to a failed one."""
        idle = self.open & (self.waiting == 0) & ~self.again
        if idle.any():  # nobody stands there: wait for the next who comes
            comes = self.arrivals[self.rows, self.next]
            self._pass_to(np.where(idle, np.minimum(comes, self.closing), self.time), idle)
            self._let_come(idle)
            self._close()
        go = self.open & ((self.waiting > 0) | self.again)
        if not go.any():
            return
        fresh = go & ~self.again
        drawn = np.searchsorted(self.shares, self.generator.uniform(size=self.rows.size), side="right")
        self.kind = np.where(fresh, np.minimum(drawn, self.shares.size - 1), self.kind)
        spread = np.sqrt(np.log1p(self.of["variation"][self.kind] ** 2))
        normal = self.generator.standard_normal(self.rows.size)
        ready = self.of["readiness"][self.kind] * np.exp(spread * normal - spread**2 / 2)
        self._pass_to(self.time + np.maximum(ready, self.day.floor), go, steps_on=True)
        self._let_come(go)
        self._close()
        go &= self.open
        fails = go & (self.generator.uniform(size=self.rows.size) < self.of["misses"][self.kind])
        self.again = fails
        self._start(go & ~fails)

    def _pass_to(self, until, which, steps_on=False):
        """Let the time of some days pass; stops on the way stand in between, and drop whoever is on the line."""
        until = until.copy()
        while True:
            first = np.minimum(self.stop, self.falls.min(axis=1))
            now = which & (first <= until)
            if not now.any():
                break
            self._settle_tops(first, now)
            self._one_stop_or_fall(first, now, until)
        ahead = np.where(which, until - self.time, 0.0)
        self.waited += np.maximum(np.minimum(until, self.closing) - self.time, 0) * self.waiting * which
        self.time = np.where(which, self.time + ahead, self.time)
        self._settle_tops(self.time, which)

    def _settle_tops(self, until, which):
        """Count those who have got to the top."""
        there = (self.top <= np.minimum(until, self.closing)[:, None]) & which[:, None]
        self.totals["completed"] += there.sum(axis=1)
        self.top[there] = NEVER

    def _one_stop_or_fall(self, first, now, until):
        """Let the next stop, or the next fall, of some days happen."""
        inside = now & (first <= self.closing)
        falling = self.falls.argmin(axis=1)
        is_fall = now & (self.falls[self.rows, falling] <= self.stop)
        faller = self.who_falls[self.rows, falling]
        still = is_fall & np.isfinite(self.top[self.rows, faller])
        self.totals["fell"] += still & inside
        self.top[self.rows[still], faller[still]] = NEVER
        self.falls[self.rows[is_fall], falling[is_fall]] = NEVER
        stops = (now & ~is_fall) | (still & (self.generator.uniform(size=self.rows.size) < self.day.falls_that_stop))
        spread = np.sqrt(np.log1p(self.day.stop_variation**2))
        length = self.day.stop_time * np.exp(spread * self.generator.standard_normal(self.rows.size) - spread**2 / 2)
        length = np.where(stops, length, 0.0)
        if self.day.empties:
            on_line = np.isfinite(self.top) & (stops & inside)[:, None]
            dropped = on_line.sum(axis=1)
            self.totals["dropped"] += dropped
            self.top[on_line] = NEVER
            self.falls[stops] = NEVER
            if self.come_back:
                self.totals["came_back"] += dropped
                self.waiting += dropped
                self.waited -= dropped * np.maximum(np.minimum(first, self.closing) - self.time, 0) * now
        self.top += length[:, None]
        self.falls += length[:, None]
        until += length
        plain = now & ~is_fall
        self.stop = np.where(plain, first + length + self._wait_for_a_stop(self.rows.size), self.stop + length)

    def _let_come(self, which):
        """Let all come to the line who came until now; whoever finds it too long goes away."""
        while True:
            comes = self.arrivals[self.rows, self.next]
            now = which & (comes <= np.minimum(self.time, self.closing))
            if not now.any():
                break
            self.totals["arrived"] += now
            stays = now if self.most is None else now & (self.waiting < self.most)
            self.totals["gave_up"] += now & ~stays
            self.waiting += stays
            self.waited += np.where(stays, np.minimum(self.time, self.closing) - comes, 0.0)
            self.next += now
        self.longest = np.maximum(self.longest, self.waiting)

    def _close(self):
        """Close the days whose time has come; whoever still waits is turned away."""
        over = self.open & (self.time >= self.closing)
        self.totals["turned_away"] += np.where(over, self.waiting, 0)
        self.waiting = np.where(over, 0, self.waiting)
        self.open &= ~over

    def _start(self, which):
        """Let one rider of some days start."""
        self.totals["started"] += which
        self.waiting -= which
        rows, slot = self.rows[which], self.slot[which]
        self.top[rows, slot] = self.time[which] + self.day.ride_time
        falls = self.generator.uniform(size=rows.size) < self.of["falls"][self.kind[which]]
        if falls.any():
            fall_rows, free = rows[falls], self.falls[rows[falls]].argmax(axis=1)
            way = self.generator.uniform(size=fall_rows.size) * self.day.ride_time
            self.falls[fall_rows, free] = self.time[fall_rows] + way
            self.who_falls[fall_rows, free] = slot[falls]
        self.slot[which] = (slot + 1) % PLACES

    def result(self):
        """Return what all days came to."""
        return CrowdedDays(self.day, **self.totals, longest_line=self.longest, waited=self.waited)


_COUNTED = ("arrived", "came_back", "gave_up", "turned_away", "started", "completed", "fell", "dropped")
_DRAWN = ("readiness", "variation", "misses", "falls")
