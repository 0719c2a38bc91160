"""What many days of carriers came to: rates, fill, waits, and where everybody is at any minute."""

from dataclasses import dataclass

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.carrier_day import CarrierDay
from liftcalc.units import PlainError


@dataclass(frozen=True)
class CarrierDays:
    """What many days came to. Arrays by carrier have a row a carrier and a column a day; times are of the clock [s].

    Parameters
    ----------
    day : CarrierDay
        What every day was like.
    passes : array
        When each carrier passes the loading place.
    loads, served : array
        Riders who went up on it, and whether it passed while the lift was open to riders.
    beside : array
        Who stands at the loading place after it: missed and tries again, or waits for an adult.
    leaves : array
        When its riders leave the line: at the top, or at a stop where they hold on by hand.
    dropped : array of bool
        Whether they left it at a stop.
    ends : array
        When each day ends: at closing, or when the last of the line has gone up.
    comes, persons, too_long : array or None
        When each party came, how many they are, and whether they found the line too long: a row a day; None where a
        line stands all day.
    misses : array
        Attempts that failed, a number a day.
    waited : array
        Time that all who went up waited together [s].
    stood : array
        Time that the lift stood while it was open [s].
    """

    day: CarrierDay
    passes: np.ndarray
    loads: np.ndarray
    served: np.ndarray
    beside: np.ndarray
    leaves: np.ndarray
    dropped: np.ndarray
    ends: np.ndarray
    comes: np.ndarray | None
    persons: np.ndarray | None
    too_long: np.ndarray | None
    misses: np.ndarray
    waited: np.ndarray
    stood: np.ndarray

    @property
    def seconds(self):
        """How long the lift was open [s]."""
        return self.day.hours * SECONDS_PER_HOUR

    @property
    def rate(self):
        """Persons an hour at the top, a number a day; the first ride time is left out: nobody can be there yet."""
        there = (self.leaves < self.seconds) & ~self.dropped
        return SECONDS_PER_HOUR * (self.loads * there).sum(axis=0) / (self.seconds - self.day.ride_time)

    @property
    def availability(self):
        """Part of the time open in which the lift ran, a number a day."""
        return 1 - self.stood / self.seconds

    @property
    def fill(self):
        """Share of the seats taken on carriers that were open to riders, a number a day."""
        return self.loads.sum(axis=0) / np.maximum(self.day.seats * self.served.sum(axis=0), 1)

    @property
    def fill_as_riders_see_it(self):
        """Mean share of seats taken on a rider's own carrier, a number a day: full carriers are seen by more riders."""
        loads = self.loads.astype(float)
        return (loads**2).sum(axis=0) / np.maximum(self.day.seats * loads.sum(axis=0), 1)

    @property
    def mean_wait(self):
        """Mean wait of whoever went up [s], until the own carrier is there, a number a day."""
        self._with_arrivals()
        return self.waited / np.maximum(self.loads.sum(axis=0), 1)

    @property
    def started(self):
        """Who went up, a number a day."""
        return self.loads.sum(axis=0)

    @property
    def arrived(self):
        """Who came while the lift was open, a number a day."""
        self._with_arrivals()
        return (self.persons * np.isfinite(self.comes)).sum(axis=1)

    @property
    def gave_up(self):
        """Who found the line too long, a number a day."""
        self._with_arrivals()
        return (self.persons * self.too_long).sum(axis=1)

    @property
    def turned_away(self):
        """Who stood there when the day ended, a number a day."""
        return self.arrived - self.gave_up - self.started

    @property
    def longest_line(self):
        """Most who waited at once, just before a carrier, a number a day."""
        self._with_arrivals()
        just_before = np.nextafter(self.passes, -1)
        days = range(self.passes.shape[1])
        return np.array([self.account(just_before[:, day], day)["waiting"].max(initial=0) for day in days])

    def _with_arrivals(self):
        if self.comes is None:
            raise PlainError("CarrierDays: a line stands all day, and nobody came at a time. Simulate with arrivals.")

    def account(self, times, number=0):
        """Return where everybody of one day is at given times of the clock [s]; whoever came is in just one place.

        Parameters
        ----------
        times : array
            In any order.
        number : int
            Which day.

        Returns
        -------
        dict of str to array of int
            arrived + come back = waiting + at the loading place + on the line + unloaded + dropped off + gave up +
            turned away. Where a line stands all day nobody is counted in it, and who is at the loading place has
            arrived.
        """
        times = np.atleast_1d(np.asarray(times, dtype=float))
        passes, leaves = self.passes[:, number], self.leaves[:, number]
        loads, dropped = self.loads[:, number].astype(int), self.dropped[:, number]

        def until(moments, weights):
            order = np.argsort(moments, kind="stable")
            added = np.concatenate([[0], np.cumsum(weights[order])])
            return added[np.searchsorted(moments[order], times, side="right")].astype(int)

        started, off = until(passes, loads), until(leaves, loads * dropped)
        there = np.concatenate([[0], self.beside[:, number]])[np.searchsorted(passes, times, side="right")].astype(int)
        up = until(leaves, loads * ~dropped)
        if self.comes is None:
            arrived, gone, away = started + there, np.zeros_like(started), np.zeros_like(started)
        else:
            comes, persons, too_long = self.comes[number], self.persons[number], self.too_long[number]
            arrived, gone = until(comes, persons), until(comes, persons * too_long)
            away = np.where(times >= self.ends[number], self.turned_away[number], 0)
            there = np.where(times >= self.ends[number], 0, there)
        return {
            "arrived": arrived,
            "come back": np.zeros_like(started),
            "waiting": arrived - gone - started - there - away,
            "at the loading place": there,
            "on the line": started - up - off,
            "unloaded": up,
            "dropped off": off,
            "gave up": gone,
            "turned away": away,
        }

    def by_minute(self, what="unloaded", number=0):
        """Return one day minute by minute: persons of that minute, or for those waiting how many at its end.

        Parameters
        ----------
        what : str
            A place of ``account``.
        number : int
            Which day.
        """
        edges = 60.0 * np.arange(int(np.ceil(self.ends[number] / 60)) + 1)
        found = self.account(edges, number)[what]
        return found[1:] if what in ("waiting", "at the loading place", "on the line") else np.diff(found)
