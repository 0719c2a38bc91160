"""The run of days at the loading point, one step a start with all days side by side.

A place on the rope is told by how far the rope has moved, in seconds of its usual speed: so a stop or a slow-down moves
nobody in the books. What stops, slows or throws off a rider comes as an event in between, on the days that it is of.
"""

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.shifts import factor, is_shut

FALLS = 16  # falls on their way that are remembered
NEVER = np.inf
_FEW, _MANY = np.arange(3), np.arange(40)  # arrivals that are looked at together: first, and after a stop
COUNTED = ("arrived", "came_back", "gave_up", "turned_away", "started", "completed", "fell", "dropped")


class Run:
    """The state of all days while they run: one number, or one row, a day.

    Parameters
    ----------
    day : LoadingDay
        What every day is like.
    arrivals : array
        When riders come [s], in order, a row a day.
    draws : DayDraws
        What chance decides.
    most : number, array or None
        The line at which a rider goes away: one, or one for each arrival.
    come_back : bool
        Whether those whom a stop has dropped go to the end of the line.
    shifts : tuple of Shift
        Spells in which the loading point is served in another way.
    rides_on : bool
        Whether whoever stands in line at closing rides.
    """

    def __init__(self, day, arrivals, draws, most, come_back, shifts=(), rides_on=False):
        count = arrivals.shape[0]
        self.day, self.draws, self.come_back, self.shifts = day, draws, come_back, shifts
        self.closing = day.hours * SECONDS_PER_HOUR
        self.last = NEVER if rides_on else self.closing
        self.rows, width = np.arange(count), arrivals.shape[1] + _MANY.size
        self.arrivals, self.first_of_row = np.full((count, width), NEVER), width * self.rows
        self.arrivals[:, : -_MANY.size] = np.where(arrivals <= self.closing, arrivals, NEVER)
        self.comes = self.arrivals[:, 0].copy()  # when the next one comes
        self.most = None if most is None else np.broadcast_to(most, arrivals.shape)
        self.time, self.moved, self.speed = np.zeros(count), np.zeros(count), np.ones(count)
        self.next, self.waiting, self.open = np.zeros(count, int), np.zeros(count, int), np.ones(count, bool)
        self.again = np.zeros(count, bool)
        self.totals = {name: np.zeros(count, int) for name in COUNTED}
        self.longest, self.waited = np.zeros(count, int), np.zeros(count)
        quickest = max(day.floor, min(each.readiness for each in day.classes) / 8)
        self.places = int(2 * day.ride_time / quickest) + 64  # more than the rope ever holds
        self.top, self.slot = np.full((count, self.places), NEVER), np.zeros(count, int)
        self.falls, self.who_falls = np.full((count, FALLS), NEVER), np.zeros((count, FALLS), int)
        self.fall = np.full(count, NEVER)  # the first of them
        self.stop, self.turn = draws.until_a_stop(self.rows), draws.until_a_slow_down(self.rows)

    def all_steps(self):
        """Take step after step until all days are over."""
        while self.open.any():
            self.step()
        whole = np.isfinite(self.top) & (self.top <= self.moved[:, None])
        self.totals["completed"] += whole.sum(axis=1)
        self.totals["arrived"] += self.next

    def step(self):
        """Take every open day on: to its next start, to a failed one, or to whoever comes where nobody stands there."""
        idle = self.open & (self.waiting == 0)
        until, shut = self.comes, np.zeros(self.rows.size, bool)
        for shift in self.shifts:
            if shift.shut:
                inside = self.open & (self.time >= shift.begins) & (self.time < shift.ends)
                until, shut = np.where(inside, shift.ends, until), shut | inside
        go, idle = self.open & ~idle & ~shut, idle & ~shut
        ready = self.draws.attempt(go, self.again)
        if self.shifts:
            ready = ready * factor(self.shifts, "slower", self.time)
        self._pass(
            np.where(go, self.time + ready, until), np.where(go, self.moved + self.day.floor, self.moved), go, idle
        )
        self._let_come()
        self._close()
        go &= self.open
        if self.shifts:
            go &= ~is_shut(self.shifts, self.time)
        if self.draws.may_miss:
            self.again = np.where(
                go, self.draws.misses(factor(self.shifts, "misses", self.time)), self.again & self.open
            )
            go &= ~self.again
        self._start(self.rows[go])

    def _pass(self, until, rope, go, idle):
        """Let time pass on the open days, until a time and a place of the rope; a stop holds up who is getting ready.

        Where nobody was there, whoever a stop brings back is there at once.
        """
        while True:
            target = np.maximum(until, self.time + (rope - self.moved) / self.speed)
            target = np.maximum(np.minimum(target, self.last), self.time)
            event = np.minimum(np.minimum(self.stop, self.turn), self.time + (self.fall - self.moved) / self.speed)
            rows = np.flatnonzero(self.open & (event <= target) & np.isfinite(target))
            if not rows.size:
                break
            self._advance(rows, event[rows])
            self._let_come()
            stood = self._events(rows)
            until[rows] += np.where(go[rows], stood, 0.0)
            back = rows[idle[rows] & (self.waiting[rows] > 0)]
            until[back] = self.time[back]
        takes = np.where(self.open & np.isfinite(target), target - self.time, 0.0)
        self.moved += takes * self.speed
        self.waited += takes * self.waiting
        self.time += takes

    def _advance(self, rows, times):
        """Let the rope run until these times of the clock."""
        takes = np.maximum(times - self.time[rows], 0)
        self.moved[rows] += takes * self.speed[rows]
        self.waited[rows] += takes * self.waiting[rows]
        self.time[rows] = times

    def _events(self, rows):
        """Let the next stop, fall or change of speed of these days happen, and return how long the rope stands."""
        stops = self.stop[rows] <= self.time[rows]
        turns = ~stops & (self.turn[rows] <= self.time[rows])
        if turns.any():
            self._turn(rows[turns])
        plain, fallen = rows[stops], rows[~stops & ~turns]
        if fallen.size:
            self._fall(fallen)
            stops[~stops & ~turns] = self.draws.stops_the_rope(fallen)
        lengths = np.zeros(rows.size)
        if stops.any():
            lengths[stops] = self.draws.stop_time(rows[stops])
            if self.day.empties:
                self._drop(rows[stops])
            self.stop[plain] = self.time[plain] + self.draws.until_a_stop(plain)
            self.stop[rows] += lengths
            self.turn[rows] += lengths
            ends = np.maximum(np.minimum(self.time[rows] + lengths, self.last), self.time[rows])
            self.waited[rows] += (ends - self.time[rows]) * self.waiting[rows]
            self.time[rows] = ends
        return lengths

    def _turn(self, rows):
        """Slow the rope, or let it run at its speed again."""
        slows = self.speed[rows] == 1
        self.speed[rows] = np.where(slows, self.day.slow_speed, 1.0)
        gaps = np.where(slows, self.day.slow_time, self.draws.until_a_slow_down(rows))
        self.turn[rows] = self.time[rows] + gaps

    def _fall(self, rows):
        """Let the rider fall whose turn it is."""
        which = self.falls[rows].argmin(axis=1)
        self.totals["fell"][rows] += 1
        self.top[rows, self.who_falls[rows, which]] = NEVER
        self.falls[rows, which] = NEVER
        self.fall[rows] = self.falls[rows].min(axis=1)

    def _drop(self, rows):
        """Let everybody on the line of these days let go."""
        top = self.top[rows]
        up = top <= self.moved[rows][:, None]
        dropped = (np.isfinite(top) & ~up).sum(axis=1)
        self.totals["completed"][rows] += up.sum(axis=1)
        self.totals["dropped"][rows] += dropped
        self.top[rows], self.falls[rows], self.fall[rows] = NEVER, NEVER, NEVER
        if self.come_back:
            self.totals["came_back"][rows] += dropped
            self.waiting[rows] += dropped
            self.longest[rows] = np.maximum(self.longest[rows], self.waiting[rows])

    def _let_come(self):
        """Let all come to the line who came until now; whoever finds it too long goes away."""
        rows = np.flatnonzero(self.comes <= self.time)
        if not rows.size:
            return
        ahead = _FEW
        while rows.size:
            place = self.first_of_row[rows] + self.next[rows]
            if self.most is None:
                rows, ahead = self._several_come(rows, place, ahead), _MANY
            else:
                rows = self._one_comes(rows, place)
        np.maximum(self.longest, self.waiting, out=self.longest)

    def _several_come(self, rows, place, ahead):
        """Let the next riders who are there come to the line, and return the days on which more may come."""
        comes, time = self.arrivals.take(place[:, None] + ahead), self.time[rows]
        there = comes <= time[:, None]
        count = there.sum(axis=1)
        self.waiting[rows] += count
        self.waited[rows] += count * time - np.where(there, comes, 0.0).sum(axis=1)
        self.next[rows] += count
        self.comes[rows] = self.arrivals.take(place + count)
        return rows[count == ahead.size]

    def _one_comes(self, rows, place):
        """Let one rider come to the line, or go away from it, and return the days on which another one does."""
        stays = self.waiting[rows] < self.most[rows, self.next[rows]]
        self.totals["gave_up"][rows] += ~stays
        self.waiting[rows] += stays
        self.waited[rows] += stays * (self.time[rows] - self.comes[rows])
        self.next[rows] += 1
        self.comes[rows] = self.arrivals.take(place + 1)
        return rows[self.comes[rows] <= self.time[rows]]

    def _close(self):
        """Close the days whose time has come, or whose line has gone; whoever still waits is turned away."""
        over = self.open & (self.time >= self.closing)
        if self.last == NEVER:
            over = self.open & (self.waiting == 0) & (self.comes == NEVER)
        if over.any():
            self.totals["turned_away"][over] += self.waiting[over]
            self.waiting[over], self.again[over] = 0, False
            self.comes[over] = NEVER
            self.open &= ~over

    def _start(self, rows):
        """Let one rider of some days start."""
        slot = self.slot[rows]
        place = self.places * rows + slot
        self.totals["started"][rows] += 1
        self.totals["completed"][rows] += np.isfinite(self.top.take(place))  # long up, and not yet counted
        self.waiting[rows] -= 1
        self.top.ravel()[place] = self.moved[rows] + self.day.ride_time
        if self.draws.may_fall:
            falls, part = self.draws.falls(rows)
            which = rows[falls]
            if which.size:
                free = self.falls[which].argmax(axis=1)
                self.falls[which, free] = self.moved[which] + part * self.day.ride_time
                self.who_falls[which, free] = slot[falls]
                self.fall[which] = np.minimum(self.fall[which], self.falls[which, free])
        self.slot[rows] = (slot + 1) % self.places
