"""Days of carriers that come by the clock, one step a carrier with all days side by side.

Event times, never time steps. Stops and slow-downs by the running time are laid out before the first carrier; a stop
after a misload, and a spell in which the lift is run slower, make every carrier behind it late.
"""

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.carrier_parties import arriving_lines, joined, standing_lines
from liftcalc.simulation.carriers_seen import CarrierDays
from liftcalc.simulation.running_time import Rope, clock_of, lognormal
from liftcalc.simulation.shifts import CLOSINGS, factor, is_shut
from liftcalc.units import PlainError

RIDES_ON = 2.0  # h after closing by which a line that may still ride is gone
MOST_MISSES = 0.95  # share of attempts, whatever a shift makes of it


def simulate_carrier_days(day, seed, days=1, *, arrivals=None, shifts=(), most_in_line=None, closing="turned away"):
    """Simulate many days side by side.

    Parameters
    ----------
    day : CarrierDay
        What every day is like.
    seed : int or SeedSequence
        Start of the random numbers.
    days : int
        How many, where a line stands all day; with arrivals there is one for each row.
    arrivals : array or None
        When persons come [s of the clock], in order, a row a day, endless for nobody; None where a line stands all day.
    shifts : tuple of Shift
        Spells in which the loading place is served in another way.
    most_in_line : int, array or None
        Whoever finds as many waiting goes away: one number, or one for each arrival; None for people who always stay.
    closing : str
        Whether who stands in line at closing is "turned away" or "rides".

    Returns
    -------
    CarrierDays

    Raises
    ------
    PlainError
        If the arrivals are not in order, the closing is neither of the two, a line that stands all day is to give up or
        to ride on, or a line is not gone two hours after closing.
    """
    if closing not in CLOSINGS:
        raise PlainError(f"simulate_carrier_days: closing must be one of {', '.join(CLOSINGS)}, but got {closing!r}.")
    if arrivals is None and (most_in_line is not None or closing == "rides"):
        raise PlainError(
            "simulate_carrier_days: a line that stands all day neither gives up nor comes to its end. Give arrivals."
        )
    if arrivals is not None:
        arrivals = np.atleast_2d(np.asarray(arrivals, dtype=float))
        if np.any(arrivals[:, 1:] < arrivals[:, :-1]):
            raise PlainError("simulate_carrier_days: the arrivals of a day are not in order. Sort each row.")
        days = arrivals.shape[0]
        arrivals = arrivals if arrivals.shape[1] else np.full((days, 1), np.inf)
    if not isinstance(seed, np.random.SeedSequence):
        seed = np.random.SeedSequence(seed)
    run = _Run(day, seed, days, arrivals, shifts, most_in_line, closing == "rides")
    run.all_carriers()
    return run.result()


class _Run:
    """The state of all days while they run: one number a day, or a row a carrier and a column a day."""

    def __init__(self, day, seed, days, arrivals, shifts, most_in_line, rides_on):
        self.day, self.shifts, self.rides_on = day, shifts, rides_on
        parties, who, stops, tries, apart = (np.random.default_rng(child) for child in seed.spawn(5))
        self.stop_draws, self.tries, self.apart = stops, tries, apart
        self.closing, self.rows = day.hours * SECONDS_PER_HOUR, np.arange(days)
        horizon = self.closing + (RIDES_ON * SECONDS_PER_HOUR if rides_on else 0.0)
        self.carriers = int(np.ceil(horizon / day.interval - 1e-9))
        self._lay_out(days, horizon)
        self.comes = self.sizes = self.gave_up = self.length = None
        if arrivals is None:
            self.groups, self.singles, self.before = standing_lines(day, self.carriers, days, parties)
        else:
            own = np.broadcast_to(most_in_line, arrivals.shape) if most_in_line is not None else None
            arrivals = np.where(arrivals <= self.closing, arrivals, np.inf)
            found = joined(day, arrivals, own, parties)  # whole rows in memory, so that places are looked up quickly
            self.comes, self.sizes, self.length, self.party = (
                None if each is None else np.ascontiguousarray(each) for each in found
            )
            self.groups, self.singles, self.place = arriving_lines(day, self.comes, self.sizes, who)
            self.gave_up, self.next, self.before = np.zeros(self.sizes.shape, bool), np.zeros(days, int), None
            self.next_comes, self.first_of_row = self.comes[:, 0].copy(), self.sizes.shape[1] * self.rows
        self.again, self.aside = np.zeros(days, int), np.zeros(days, int)  # who missed; children without an adult
        self.waiting, self.late, self.slower = np.zeros(days, int), np.zeros(days), np.zeros(days)
        self.waited, self.misses, self.now = np.zeros(days), np.zeros(days, int), np.zeros(days)
        self.last, self.late_at_last = np.zeros(days, int), np.zeros(days)  # the last carrier before closing
        shape = (self.carriers, days)
        self.passes, self.loads, self.beside = np.empty(shape), np.zeros(shape, np.int8), np.zeros(shape, np.int16)
        self.served, self.lates = np.zeros(shape, bool), np.zeros((self.carriers + 1, days))
        self.slowers = np.zeros((self.carriers + 1, days if shifts else 1))

    def _lay_out(self, days, horizon):
        """Lay out when each carrier passes and its riders get up, as if nothing of the day's own made it late."""
        day, shape = self.day, (self.carriers + 1, days)
        self.base, self.stood, self.top = np.empty(shape), np.empty(shape), np.empty(shape)
        self.dropped = np.zeros(shape, bool)
        ways = day.interval * np.arange(self.carriers + 1)
        for number in range(days):
            rope = Rope(day, self.stop_draws, horizon)
            count = self.stop_draws.poisson(day.stops_an_hour * horizon / SECONDS_PER_HOUR)
            begins = np.sort(self.stop_draws.uniform(0, horizon, count))
            lengths = lognormal(self.stop_draws, day.stop_time, day.stop_variation, count)
            clock = clock_of(np.column_stack([begins, lengths]))
            running = rope.time(ways)
            self.base[:, number] = clock(running)
            self.stood[:, number] = self.base[:, number] - running
            self.top[:, number] = clock(rope.time(ways + day.ride_time))
            if day.empties and count:
                at = np.append(rope.moved(begins), np.inf)
                first = np.searchsorted(at, ways, side="right")
                off = at[first] < ways + day.ride_time
                self.dropped[:, number] = off
                let_go = clock(begins)[np.minimum(first, count - 1)]
                self.top[:, number] = np.where(off, let_go, self.top[:, number])

    def all_carriers(self):
        """Let one carrier after another pass, until every day is over."""
        shut = any(shift.shut for shift in self.shifts)
        for number in range(self.carriers):
            self._note_how_late(number)
            now = self.base[number] + self.late + self.slower
            self.passes[number] = now
            is_open = now < self.closing
            self.last[is_open], self.late_at_last[is_open] = number, self.late[is_open]
            self._let_come(now)
            if self.rides_on:
                is_open = is_open | ~self._line_is_gone()
            if not is_open.any():
                self.carriers = number
                break
            can = is_open & ~is_shut(self.shifts, now) if shut else is_open
            self.served[number] = can
            self._pass(number, now, can)
        else:
            if self.rides_on and not self._line_is_gone().all():
                raise PlainError(
                    f"simulate_carrier_days: a line is not gone {RIDES_ON:g} h after closing. Turn it away, or let "
                    "fewer come."
                )
        self._note_how_late(self.carriers)

    def _note_how_late(self, number):
        """Keep how late a carrier is, by stops after misloads and by slower running."""
        self.lates[number] = self.late
        if self.shifts:
            self.slowers[number] = self.slower

    def _pass(self, number, now, can):
        """Load one carrier of every day that is open, and let the next come late where something makes it so."""
        if self.comes is not None:
            self.waited += (self.again + self.aside) * (now - self.now)
        self.now = now
        load = self._board(now, can)
        chance = self.day.misloads
        if chance:
            if self.shifts:
                chance = np.minimum(chance * factor(self.shifts, "misses", now), MOST_MISSES)
            missed = self.tries.binomial(load, chance)
            load -= missed
            self.again += missed
            self.misses += missed
            if self.day.misloads_that_stop:
                none_stops = (1 - self.day.misloads_that_stop) ** missed
                length = lognormal(self.tries, self.day.stop_time, self.day.stop_variation, self.rows.size)
                self.late = self.late + np.where(self.tries.random(self.rows.size) >= none_stops, length, 0.0)
        if self.shifts:
            self.slower = self.slower + (factor(self.shifts, "slower", now) - 1) * self.day.interval
        self.waiting -= load
        self.loads[number] = load
        self.beside[number] = self.again + self.aside

    def _board(self, now, can):
        """Return how many sit down on a carrier: who missed, then parties in their order, then singles."""
        seats = self.day.seats
        room = np.where(can, seats, 0)
        first = np.minimum(self.again, room)
        self.again -= first
        room -= first
        self.spare = np.zeros(self.rows.size, int)  # children whom the adults on it can still take
        room = self._board_from(self.groups, room, now, self.day.strangers_apart)
        if self.singles is not None:
            room = self._board_from(self.singles, room, now, 0.0)
        return np.where(can, seats - room, 0)

    def _board_from(self, line, room, now, apart):
        """Let parties of a line sit down until one does not, and return the room that is left."""
        room, going = self._seat_children(room), room > 0
        while True:
            rides = line.of_first(line.rides)
            fits = going & (rides <= room)
            if line is self.singles and self.before is not None:
                fits &= line.place < self.groups.of_first(self.before)
            if line.comes is not None:
                came = line.of_first(line.comes)
                fits &= came <= now
            if apart:
                fits &= (room == self.day.seats) | (self.apart.random(self.rows.size) >= apart) | (rides == 0)
            if not fits.any():
                return room
            room = room - np.where(fits, rides, 0)
            persons = rides
            if line.aside is not None:
                aside = line.of_first(line.aside)
                self.aside += np.where(fits, aside, 0)
                self.spare += np.where(fits, line.of_first(line.spare), 0)
                persons = rides + aside
            if line.comes is not None:
                self.waited[fits] += ((now - came) * persons)[fits]
            line.place += fits
            room = self._seat_children(room)
            going = fits & (room > 0)

    def _seat_children(self, room):
        """Let children who stand aside sit down beside adults who can take them, and return the room that is left."""
        if self.day.children is None:
            return room
        sit = np.minimum(np.minimum(self.aside, self.spare), room)
        self.aside -= sit
        self.spare -= sit
        return room - sit

    def _let_come(self, now):
        """Let all parties join who came until now; whoever finds the line too long goes away."""
        if self.length is None:
            return
        rows = np.flatnonzero(self.next_comes <= now)
        while rows.size:
            at = self.next[rows]
            place, before = self.first_of_row[rows] + at, self.first_of_row[rows] + np.maximum(at - 1, 0)
            leave = self.waiting[rows] >= self.length.take(place)
            part = (at > 0) & (self.party.take(place) == self.party.take(before))  # of one party: all stay, or none
            leave = np.where(part, self.gave_up.take(before), leave)
            self.waiting[rows] += np.where(leave, 0, self.sizes.take(place))
            if leave.any():
                self._give_up(rows[leave], at[leave])
            self.next[rows] = at + 1
            more = at + 1 < self.sizes.shape[1]
            self.next_comes[rows] = np.where(more, self.comes.take(place + more), np.inf)
            rows = rows[self.next_comes[rows] <= now[rows]]

    def _give_up(self, rows, at):
        """Let parties of some days go away again."""
        self.gave_up[rows, at] = True
        where = at if self.place is None else self.place[rows, at]
        single = (self.sizes[rows, at] == 1) & (self.singles is not None)
        self.groups.remove(rows[~single], where[~single])
        if single.any():
            self.singles.remove(rows[single], where[single])

    def _line_is_gone(self):
        gone = self.groups.empty & (self.again == 0)
        return gone if self.singles is None else gone & self.singles.empty

    def result(self):
        """Return what all days came to."""
        count = self.carriers
        passes, behind = self.passes[:count], np.arange(count) + self.day.ride_time / self.day.interval
        before, after = (np.minimum(turn(behind - 1e-9).astype(int), count) for turn in (np.floor, np.ceil))
        part = (behind - before)[:, None].clip(0, 1)  # of the way from one carrier's place to the next
        slower = (1 - part) * self.slowers[before] + part * self.slowers[after]
        leaves = self.top[:count] + self.lates[after] + slower
        ends = np.full(self.rows.size, self.closing)
        if self.rides_on:
            ends = np.maximum(ends, np.where(self.loads[:count] > 0, leaves, 0).max(axis=0))
        return CarrierDays(
            self.day, passes, self.loads[:count], self.served[:count], self.beside[:count], leaves,
            self.dropped[:count], ends, self.comes, self.sizes, self.gave_up, self.misses, self.waited,
            self._stood_until_closing(),
        )  # fmt: skip

    def _stood_until_closing(self):
        """Return how long each day's lift stood until closing: until its last carrier, and after it."""
        rows, last = self.rows, self.last
        running = self.base - self.stood
        rest = self.closing - self.passes[last, rows] - (running[last + 1, rows] - running[last, rows])
        return self.stood[last, rows] + self.late_at_last + np.maximum(rest, 0)
