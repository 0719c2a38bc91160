"""A day of carriers that come by the clock: what it is like.

Every interval one carrier passes the loading place, whoever is there; its clock runs only while the lift runs. Riders
stay on when the lift stops, save where they hold on by hand. Planning figures: a stop is there for whoever fell, and is
never a loss to argue away.
"""

from dataclasses import dataclass, replace

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.running_time import check_number
from liftcalc.units import PlainError

# in the order in which losses are told: each step adds one cause to those before it; the last one is of lifts that
# riders hold by hand alone
CAUSES = ("carriers not full", "misloads", "slow-downs", "the lift stands", "dropped at a stop")
ADD_UP = 0.005  # by which shares may miss one, as written in whole per cent
AT_ONCE = 1000  # days that are simulated side by side


@dataclass(frozen=True)
class ChildRule:
    """A rule for children, entered by the reader with its source; none is ever assumed.

    Parameters
    ----------
    source : str
        Which code, authority or operator says so.
    share : float
        Share of the riders who are children under the rule.
    an_adult : int
        Most children beside one adult.
    """

    source: str
    share: float
    an_adult: int

    def __post_init__(self):
        if not self.source.strip():
            raise PlainError("ChildRule: the rule has no source. Write which code, authority or operator says so.")
        check_number("ChildRule", "share", self.share, most=0.9)
        if self.an_adult not in (1, 2):
            raise PlainError(f"ChildRule: an_adult must be 1 or 2, who has two sides, but got {self.an_adult!r}.")


@dataclass(frozen=True)
class CarrierDay:
    """A day of a lift whose carriers come by the clock, in plain numbers.

    Parameters
    ----------
    seats : int
        Places of a carrier.
    interval : float
        Time from one carrier to the next while the lift runs at its speed [s].
    ride_time : float
        Time of a ride while the lift runs at its speed [s].
    parties : dict of int to float
        Share of each size of party, counted by party; the shares add up to 1. A party is split only where it is larger
        than a carrier. It is kept as pairs in order.
    hours : float
        How long the lift is open [h].
    singles_line : bool
        Whether whoever is alone stands in a line of their own and fills what is left.
    strangers_apart : float
        Share of those who would have shared a carrier with strangers, and do not; none of the line for singles.
    children : ChildRule or None
        A rule by which children ride beside an adult only; a child who has none stands aside until an adult shares.
    misloads : float
        Share of the attempts of a rider that fail: the place goes up empty, and the rider tries the next carrier.
    misloads_that_stop : float
        Share of the misloads that stop the lift.
    stops_an_hour, stop_time, stop_variation, slow_downs_an_hour, slow_time, slow_speed
        As for ``LoadingDay``.
    empties : bool
        Whether riders hold on by hand, and let go when the lift stops.

    Raises
    ------
    PlainError
        If a number is outside its bounds, or the shares of the parties do not add up to 1.
    """

    seats: int
    interval: float
    ride_time: float
    parties: tuple
    hours: float = 7.0
    singles_line: bool = False
    strangers_apart: float = 0.0
    children: ChildRule | None = None
    misloads: float = 0.0
    misloads_that_stop: float = 0.0
    stops_an_hour: float = 0.0
    stop_time: float = 0.0
    stop_variation: float = 0.0
    slow_downs_an_hour: float = 0.0
    slow_time: float = 0.0
    slow_speed: float = 1.0
    empties: bool = False

    comes = "carrier"  # what comes one after another, which limits are in the day, and what it is of, in words
    limits = ("spacing",)
    alone = "the carriers alone"

    def __post_init__(self):
        object.__setattr__(self, "parties", tuple(sorted(dict(self.parties).items())))
        for what, number in (("seats", self.seats), *(("a party", size) for size, _ in self.parties)):
            if not isinstance(number, int) or isinstance(number, bool) or not 1 <= number <= 100:
                raise PlainError(f"CarrierDay: {what} must be a whole number from 1 to 100, but got {number!r}.")
        shares = [share for _, share in self.parties]
        total = sum(shares)
        if min(shares, default=-1) < 0 or abs(total - 1) > ADD_UP:
            raise PlainError(
                f"CarrierDay: the shares of the parties add up to {total:g}. Write shares, zero or more, that add up "
                "to 1."
            )
        for what in ("interval", "ride_time"):
            check_number("CarrierDay", what, getattr(self, what), above=0)
        check_number("CarrierDay", "hours", self.hours, above=0, most=24)
        check_number("CarrierDay", "slow_speed", self.slow_speed, above=0, most=1)
        for what in ("stops_an_hour", "stop_time", "stop_variation", "slow_downs_an_hour", "slow_time"):
            check_number("CarrierDay", what, getattr(self, what))
        check_number("CarrierDay", "misloads", self.misloads, most=0.9)
        for what in ("misloads_that_stop", "strangers_apart"):
            check_number("CarrierDay", what, getattr(self, what), most=1)
        if self.empties and self.misloads_that_stop:
            raise PlainError("CarrierDay: misloads that stop a lift held by hand are no part of this. Set them to 0.")

    @property
    def governed(self):
        """What full carriers carry [person/h]."""
        return SECONDS_PER_HOUR * self.seats / self.interval

    @property
    def causes(self):
        """What can be lost, in the order in which it is told."""
        return CAUSES if self.empties else CAUSES[:-1]

    def with_causes(self, causes):
        """Return the same day with these causes of loss alone."""
        for cause in causes:
            if cause not in CAUSES:
                raise PlainError(f"CarrierDay: {cause!r} is no cause of loss. Write some of {', '.join(CAUSES)}.")
        left_out = {
            "carriers not full": {"parties": {1: 1.0}, "strangers_apart": 0.0, "children": None},
            "misloads": {"misloads": 0.0},
            "slow-downs": {"slow_downs_an_hour": 0.0},
            "the lift stands": {"stops_an_hour": 0.0, "misloads_that_stop": 0.0},
            "dropped at a stop": {"empties": False},
        }
        return replace(self, **{name: none for cause in left_out if cause not in causes
                                for name, none in left_out[cause].items()})  # fmt: skip

    def seconds_of_work(self, days):
        """Return about how long so many days take to simulate [s], from days times carriers."""
        carriers = SECONDS_PER_HOUR * self.hours / self.interval
        return float(carriers * (4e-5 * np.ceil(days / AT_ONCE) + 2.2e-7 * days))

    def rates(self, seed, days):
        """Return the persons an hour of many days; a line stands all day."""
        from liftcalc.simulation.carrier_run import simulate_carrier_days

        seeds = np.random.SeedSequence(seed).spawn(-(-days // AT_ONCE))
        sizes = [min(AT_ONCE, days - AT_ONCE * block) for block in range(len(seeds))]
        return np.concatenate([simulate_carrier_days(self, *each).rate for each in zip(seeds, sizes, strict=True)])
