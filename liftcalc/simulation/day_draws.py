"""What chance decides on days at the loading point, for all days at once."""

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR

NEVER = np.inf
MOST_MISSES = 0.95  # share of attempts, whatever a shift makes of it
_DRAWN = ("readiness", "variation", "misses", "falls")


class DayDraws:
    """What chance decides, asked for all days at once.

    Parameters
    ----------
    day : LoadingDay
        What every day is like.
    generator : Generator
        Source of the random numbers.
    days : int
        How many.
    """

    def __init__(self, day, generator, days):
        self.day, self.generator, self.days = day, generator, days
        self.shares = np.cumsum([each.share for each in day.classes])
        self.of = {name: np.array([getattr(each, name) for each in day.classes]) for name in _DRAWN}
        self.spread = np.sqrt(np.log1p(self.of["variation"] ** 2))
        self.middle = self.of["readiness"] * np.exp(-(self.spread**2) / 2)
        self.kind = np.zeros(days, int)
        self.may_fall, self.may_miss = self.of["falls"].any(), self.of["misses"].any()

    def attempt(self, go, again):
        """Return the readiness of the next attempt of each day [s]; those who try again are the same riders."""
        if self.shares.size > 1:
            drawn = np.searchsorted(self.shares[:-1], self.generator.random(self.days), side="right")
            self.kind = np.where(again, self.kind, drawn)
        return self.middle[self.kind] * np.exp(self.spread[self.kind] * self.generator.standard_normal(self.days))

    def misses(self, times_more):
        """Return on which days the attempt fails, with a factor on the share that does."""
        chance = np.minimum(self.of["misses"][self.kind] * times_more, MOST_MISSES)
        return self.generator.random(self.days) < chance

    def falls(self, rows):
        """Return which riders, who start on these days, will fall, and after what part of the ride."""
        falls = self.generator.random(rows.size) < self.of["falls"][self.kind[rows]]
        return falls, self.generator.random(np.count_nonzero(falls))

    def until_a_stop(self, rows):
        """Return the running time until the next stop that no fall makes [s]."""
        return self._gaps(self.day.stops_an_hour, rows)

    def until_a_slow_down(self, rows):
        """Return the running time until the next slow-down [s]."""
        return self._gaps(self.day.slow_downs_an_hour, rows)

    def _gaps(self, an_hour, rows):
        return (
            self.generator.exponential(SECONDS_PER_HOUR / an_hour, rows.size) if an_hour else np.full(rows.size, NEVER)
        )

    def stops_the_rope(self, rows):
        """Return which falls stop the rope."""
        return self.generator.random(rows.size) < self.day.falls_that_stop

    def stop_time(self, rows):
        """Return how long a stop lasts [s]."""
        spread = np.sqrt(np.log1p(self.day.stop_variation**2))
        return self.day.stop_time * np.exp(spread * self.generator.standard_normal(rows.size) - spread**2 / 2)
