"""A day at the loading point of a tow that is grabbed at any time: who starts when, who gets up, and what is lost.

Event times, never time steps. A running time is the clock with all stops left out: on it starts follow one another, and
stops are laid on afterwards. Slow-downs are pieces of the running time in which the rope moves less far. Planning
figures: a stop is there for whoever fell, and is never a loss to argue away.
"""

from dataclasses import dataclass, field, replace

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.running_time import Rope, check_number, clock_of, generators, lognormal, stops_on_clock
from liftcalc.units import PlainError

# in the order in which losses are told: each step adds one cause to those before it
CAUSES = ("uneven starts", "misses", "slow-downs", "falls on the way", "the rope stands", "dropped at a stop")


@dataclass(frozen=True)
class RiderClass:
    """One class of riders, in plain numbers.

    Parameters
    ----------
    name : str
        Such as "learner".
    share : float
        Part of the riders, counted by rider.
    readiness : float
        Mean time that a rider needs with the place free, misses left out [s].
    variation : float
        Standard deviation of that time over its mean; the time is drawn as lognormal.
    misses : float
        Share of attempts that fail: the slot is lost, and the rider tries again.
    falls : float
        Share of rides on which the rider falls on the way.
    """

    name: str
    share: float
    readiness: float
    variation: float
    misses: float = 0.0
    falls: float = 0.0


@dataclass(frozen=True)
class LoadingDay:
    """A day at one loading place, in plain numbers.

    Parameters
    ----------
    classes : tuple of RiderClass
        Who comes; their shares add up to 1.
    floor : float
        Least time from one start to the next, such as the headway of the intended spacing [s]; zero for none.
    ride_time : float
        Time from grab to let-go while the rope runs at its speed [s].
    hours : float
        How long the lift is open [h].
    stops_an_hour : float
        Stops beside those of falls, for each hour of running.
    stop_time, stop_variation : float
        Mean time of a stop [s], and its standard deviation over its mean; drawn as lognormal.
    falls_that_stop : float
        Share of the falls that stop the rope.
    slow_downs_an_hour, slow_time, slow_speed : float
        Slow-downs for each hour of running, how long each lasts [s], and the speed meanwhile as a part of the usual.
    empties : bool
        Whether riders let go when the lift stops, as on a rope tow; else they stay on.
    """

    classes: tuple
    floor: float
    ride_time: float
    hours: float = 7.0
    stops_an_hour: float = 0.0
    stop_time: float = 0.0
    stop_variation: float = 0.0
    falls_that_stop: float = 0.0
    slow_downs_an_hour: float = 0.0
    slow_time: float = 0.0
    slow_speed: float = 1.0
    empties: bool = True

    comes = "rider"  # what comes one after another, which limits are in the day, and what it is of, in words
    limits = ("loading", "spacing")
    alone = "the loading point alone"

    def __post_init__(self):
        total = sum(each.share for each in self.classes)
        if not self.classes or abs(total - 1) > 1e-6:
            raise PlainError(
                f"LoadingDay: the shares of the classes add up to {total:g}. Write shares that add up to 1."
            )
        for each in self.classes:
            check_number("LoadingDay", f"the readiness of {each.name}", each.readiness, above=0)
            check_number("LoadingDay", f"the variation of {each.name}", each.variation)
            for what, part in (("misses", each.misses), ("falls", each.falls)):
                check_number("LoadingDay", f"{what} of {each.name}", part, most=0.95)
        for what in ("floor", "stops_an_hour", "stop_time", "stop_variation", "slow_downs_an_hour", "slow_time"):
            check_number("LoadingDay", what, getattr(self, what))
        check_number("LoadingDay", "ride_time", self.ride_time, above=0)
        check_number("LoadingDay", "hours", self.hours, above=0, most=24)
        check_number("LoadingDay", "slow_speed", self.slow_speed, above=0, most=1)
        check_number("LoadingDay", "falls_that_stop", self.falls_that_stop, most=1)

    @property
    def mean_readiness(self):
        """Mean readiness of all riders [s], counted by rider."""
        return sum(each.share * each.readiness for each in self.classes)

    @property
    def governed(self):
        """What the loading point lets through if nothing else is lost [person/h]."""
        return SECONDS_PER_HOUR / self.mean_readiness

    @property
    def causes(self):
        """What can be lost, in the order in which it is told."""
        return CAUSES

    def seconds_of_work(self, days):
        """Return about how long so many days take to simulate [s], from days times starts."""
        return days * (8e-4 + 1.1e-7 * SECONDS_PER_HOUR * self.hours / self.mean_readiness)

    def rates(self, seed, days):
        """Return the persons an hour of many days, each by random numbers of its own; a line stands all day."""
        return np.array([simulate_day(self, generator).rate for generator in generators(seed, days)])

    def with_causes(self, causes):
        """Return the same day with these causes of loss alone."""
        for cause in causes:
            if cause not in CAUSES:
                raise PlainError(f"LoadingDay: {cause!r} is no cause of loss. Write some of {', '.join(CAUSES)}.")
        has = set(causes)
        classes = tuple(
            replace(
                each,
                misses=each.misses if "misses" in has else 0.0,
                falls=each.falls if "falls on the way" in has else 0.0,
            )
            for each in self.classes
        )
        stands = "the rope stands" in has
        return replace(
            self,
            classes=classes,
            floor=self.floor if "uneven starts" in has else 0.0,
            slow_downs_an_hour=self.slow_downs_an_hour if "slow-downs" in has else 0.0,
            stops_an_hour=self.stops_an_hour if stands else 0.0,
            falls_that_stop=self.falls_that_stop if stands else 0.0,
            empties=self.empties and "dropped at a stop" in has,
        )


@dataclass(frozen=True)
class DaySeen:
    """One simulated day: a row a rider who started, in the order of the starts; times are of the clock [s].

    Parameters
    ----------
    day : LoadingDay
        What was simulated.
    started, left : array
        When each started, and when each left the line: at the top, by a fall, or at a stop.
    arrived : array or None
        When each came to the loading point; None where a line stands all day.
    completed, fell, dropped : array of bool
        How each left the line; none of them for whoever was still on it at closing.
    misses : int
        Attempts that failed.
    stops : array
        Begin and end of every stop, a row a stop.
    """

    day: LoadingDay
    started: np.ndarray
    left: np.ndarray
    arrived: np.ndarray | None
    completed: np.ndarray
    fell: np.ndarray
    dropped: np.ndarray
    misses: int
    stops: np.ndarray = field(default_factory=lambda: np.empty((0, 2)))

    @property
    def seconds(self):
        """How long the lift was open [s]."""
        return self.day.hours * SECONDS_PER_HOUR

    @property
    def rate(self):
        """Persons an hour who got to the top, the first ride time of the day left out: nobody can be there yet."""
        first = self.day.ride_time
        there = np.count_nonzero(self.completed & (self.left >= first))
        return SECONDS_PER_HOUR * there / (self.seconds - first)

    @property
    def loaded_rate(self):
        """Persons an hour who started."""
        return SECONDS_PER_HOUR * self.started.size / self.seconds

    @property
    def availability(self):
        """Part of the time in which the lift ran."""
        stood = np.clip(self.stops, 0, self.seconds) if self.stops.size else np.zeros((1, 2))
        return 1 - float(np.sum(stood[:, 1] - stood[:, 0])) / self.seconds

    def by_minute(self, what="completed"):
        """Return how many persons started, or left the line in one way, in each minute of the day."""
        times = self.started if what == "started" else self.left[getattr(self, what)]
        return np.bincount((times // 60).astype(int), minlength=round(self.seconds / 60))[: round(self.seconds / 60)]

    def counts(self, seconds=120.0):
        """Return what is counted at the top in windows of equal length, and which of them no stop has touched.

        Parameters
        ----------
        seconds : float
            Length of a window [s]; the first one begins when the first rider can be there.

        Returns
        -------
        array of int, array of bool
            Persons in each window; whether it is clean: a stop touches the windows until the rope is full again.
        """
        first = self.day.ride_time
        windows = int((self.seconds - first) // seconds)
        edges = first + seconds * np.arange(windows + 1)
        counted = np.histogram(self.left[self.completed], edges)[0]
        touched = np.zeros(windows, bool)
        for begin, end in self.stops:
            touched |= (edges[:-1] < end + (first if self.day.empties else 0)) & (edges[1:] > begin)
        return counted, ~touched

    def account(self, time):
        """Return where everybody is at one time of the clock [s]; whoever arrived is in just one of the places.

        Where a line stands all day nobody is counted in it: who has started counts as who has arrived.
        """
        out = self.left <= time
        started = int(np.searchsorted(self.started, time, side="right"))
        arrived = started if self.arrived is None else int(np.searchsorted(self.arrived, time, side="right"))
        ways = {"unloaded": self.completed, "fell": self.fell, "dropped off": self.dropped}
        gone = {way: int(np.count_nonzero(out & which)) for way, which in ways.items()}
        return {
            "arrived": arrived,
            "waiting": arrived - started,
            "on the line": started - sum(gone.values()),
            **gone,
        }

    def wait(self):
        """Return how long each waited from coming to starting [s]; refuse a day on which a line stands all day."""
        if self.arrived is None:
            raise PlainError("DaySeen: a line stands all day, and nobody came at a time. Simulate with arrivals.")
        return self.started - self.arrived


def _starts(ready, floor, rope, arrived):
    """Return the running time at which each attempt ends: T = max(A, T before) + max(X, floor), the floor of the rope.

    Between slow-downs all attempts are taken at once; inside one they go one by one.
    """
    slots, ends, last, number = np.maximum(ready, floor), np.empty(ready.size), 0.0, 0
    for begin, end in [*rope.windows, (np.inf, np.inf)]:
        if number < ready.size:
            rest = slots[number:]
            if begin < np.inf:  # a guess at how many end before it, with room
                rest = (
                    rest[: int((begin - last) / max(rest[:200].mean(), 1e-9) * 1.3) + 50] if begin > last else rest[:0]
                )
            done = np.cumsum(rest)
            before = done - rest
            came = last if arrived is None else np.maximum(arrived[number : number + rest.size], last)
            times = done + (last if arrived is None else np.maximum.accumulate(came - before))
            fit = int(np.searchsorted(times, begin, side="right"))
            ends[number : number + fit] = times[:fit]
            if fit:
                last, number = times[fit - 1], number + fit
        while number < ready.size and last < end < np.inf:
            free = last if arrived is None else max(arrived[number], last)
            if free >= end:
                break
            last = max(free + ready[number], float(rope.time(rope.moved(free) + floor)))
            ends[number] = last
            number += 1
    return ends


def simulate_day(day, seed, arrivals=None):
    """Simulate one day at the loading point.

    Parameters
    ----------
    day : LoadingDay
        What the day is like.
    seed : int or Generator
        Start of the random numbers.
    arrivals : array or None
        When riders come to the loading point, in running time [s], in order; None for a line that stands all day.

    Returns
    -------
    DaySeen
        Every start, and how each rider left the line.
    """
    generator = seed if isinstance(seed, np.random.Generator) else np.random.default_rng(seed)
    seconds = day.hours * SECONDS_PER_HOUR
    riders = int(1.15 * seconds / day.mean_readiness + 200) if arrivals is None else len(arrivals)
    picked = generator.choice(len(day.classes), riders, p=[each.share for each in day.classes])
    of_class = {name: np.array([getattr(each, name) for each in day.classes]) for name in _DRAWN}
    tries = generator.geometric(1 - of_class["misses"][picked])
    kinds = np.repeat(picked, tries)
    lasts = np.cumsum(tries) - 1  # the attempt of each rider that succeeds
    ready = lognormal(generator, of_class["readiness"][kinds], of_class["variation"][kinds], kinds.size)
    rope = Rope(day, generator, seconds)
    came = None if arrivals is None else np.repeat(np.asarray(arrivals, dtype=float), tries)
    ends = _starts(ready, day.floor, rope, came)
    begun = ends[lasts]
    top = rope.time(rope.moved(begun) + day.ride_time)
    on_the_way = generator.uniform(size=riders)
    falls = np.flatnonzero(generator.uniform(size=riders) < of_class["falls"][picked])
    fall_times = rope.time(rope.moved(begun[falls]) + on_the_way[falls] * day.ride_time)
    stopping = generator.uniform(size=falls.size) < day.falls_that_stop
    others = np.sort(generator.uniform(0, seconds, generator.poisson(day.stops_an_hour * day.hours)))
    return _with_stops(day, generator, begun, top, (falls, fall_times, stopping), others, arrivals, (ends, lasts))


_DRAWN = ("readiness", "variation", "misses", "falls")


def _with_stops(day, generator, begun, top, fallen, others, arrivals, attempts):
    """Lay falls and stops on the running time, in their order, and return the day by the clock."""
    falls, fall_times, stopping = fallen
    seconds, left = day.hours * SECONDS_PER_HOUR, top.copy()
    fell, dropped = np.zeros(begun.size, bool), np.zeros(begun.size, bool)
    events = [(time, rider, stops) for time, rider, stops in zip(fall_times, falls, stopping, strict=True)]
    events += [(time, -1, True) for time in others]
    lengths = lognormal(generator, day.stop_time, day.stop_variation, len(events))
    stood, stops, end = 0.0, [], None
    for (time, rider, stopped), length in zip(sorted(events), lengths, strict=True):
        if time + stood >= seconds:
            break
        if rider >= 0:
            if dropped[rider]:
                continue  # a stop before it has emptied the rope
            fell[rider], left[rider] = True, time
        if not stopped:
            continue
        first, last = np.searchsorted(begun, [time - _LONGEST * day.ride_time, time])
        if day.empties:
            on_line = np.arange(first, last)
            on_line = on_line[(left[on_line] > time) & ~fell[on_line] & ~dropped[on_line]]
            dropped[on_line], left[on_line] = True, time
        stops.append((time, length))
        stood += length
        if time + stood >= seconds:
            end = time
            break
    running = seconds - stood if end is None else end
    table = np.array(stops) if stops else np.empty((0, 2))
    count = int(np.searchsorted(begun, running, side="right"))
    begun, left, fell, dropped = begun[:count], left[:count], fell[:count], dropped[:count]
    closed = left > running
    done = ~fell & ~dropped & ~closed
    attempted = int(np.searchsorted(attempts[0], running, side="right"))
    misses = attempted - int(np.searchsorted(attempts[1], attempted))
    on_clock = clock_of(table)
    return DaySeen(
        day=day,
        started=on_clock(begun),
        left=np.where(closed, seconds, on_clock(left)),
        arrived=None if arrivals is None else on_clock(np.asarray(arrivals, dtype=float)[:count]),
        completed=done,
        fell=fell & ~closed,
        dropped=dropped & ~closed,
        misses=misses,
        stops=stops_on_clock(table),
    )


_LONGEST = 4  # ride times back from a stop in which somebody on the line may have started
