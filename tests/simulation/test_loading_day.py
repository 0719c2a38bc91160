"""The day at the loading point against closed forms, one cause at a time, and against a plain walk over the starts."""

import math

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q, mean_loading_time_lognormal
from liftcalc.simulation.loading_day import (
    CAUSES,
    LoadingDay,
    RiderClass,
    _starts,
    simulate_day,
)
from liftcalc.simulation.many_days import losses_by_cause, simulate_days
from liftcalc.simulation.running_time import Rope

STEADY = (RiderClass("steady", 1.0, 3.0, 0.0),)
# the invented day of the demo tow: shares counted by rider
CLASSES = (
    RiderClass("expert", 0.45, 2.6, 0.30, 0.01, 0.001),
    RiderClass("learner", 0.30, 3.6, 0.40, 0.06, 0.012),
    RiderClass("child", 0.25, 3.0, 0.40, 0.05, 0.010),
)
DEMO = LoadingDay(
    CLASSES, floor=2.0, ride_time=45.25, stops_an_hour=1.5, stop_time=35, stop_variation=0.6, falls_that_stop=0.5,
    slow_downs_an_hour=3, slow_time=20, slow_speed=0.5,
)  # fmt: skip


def within_four_errors(numbers, expected):
    """Check the mean of independent days within four of its standard errors."""
    error = np.std(numbers, ddof=1) / math.sqrt(len(numbers))
    assert abs(np.mean(numbers) - expected) < 4 * error, f"{np.mean(numbers):.2f}, not {expected:.2f}, +/- {error:.2f}"


def test_constant_readiness_is_the_governed_capacity():
    day = simulate_day(LoadingDay(STEADY, floor=0.0, ride_time=45.25), 1)
    assert day.day.governed == 1200
    assert day.started.size == 7 * 1200
    assert day.rate == pytest.approx(1200, abs=1)
    assert np.diff(day.started) == pytest.approx(3.0)


def test_a_floor_costs_the_mean_of_the_larger_of_two():
    """Mean 2 s, floor 2 s, variation 0.5: closed form of the lognormal, 1,517 an hour and not 1,800."""
    mean = mean_loading_time_lognormal(Q(0.5, ""), mean_time=Q(2, "s"), floor=Q(2, "s")).m_as("s")
    day = LoadingDay((RiderClass("all", 1.0, 2.0, 0.5),), floor=2.0, ride_time=45.0)
    within_four_errors(simulate_days(day, 2, 40), 3600 / mean)


def test_misses_cost_their_share():
    days = [simulate_day(LoadingDay((RiderClass("all", 1, 3.0, 0.0, 0.1),), 0.0, 45.0), seed) for seed in range(30)]
    within_four_errors([day.loaded_rate for day in days], 1200 * (1 - 0.1))
    within_four_errors([day.misses / (day.misses + day.started.size) for day in days], 0.1)


@pytest.mark.parametrize("empties", [True, False])
def test_stops_of_a_full_rope(empties):
    """Completed: rate x e^(-lambda R) / (1 + lambda S) where a stop empties the rope; loaded: rate / (1 + lambda S)."""
    day = LoadingDay(STEADY, 0.0, 45.0, stops_an_hour=6, stop_time=35, stop_variation=0.6, empties=empties)
    days = [simulate_day(day, seed) for seed in range(80)]
    a_second = 6 / 3600
    runs = 1 / (1 + a_second * 35)
    within_four_errors([seen.availability for seen in days], runs)
    within_four_errors([seen.loaded_rate for seen in days], 1200 * runs)
    within_four_errors([seen.rate for seen in days], 1200 * runs * (math.exp(-a_second * 45) if empties else 1))
    assert all(seen.dropped.any() is np.True_ or not empties for seen in days)


def test_riders_who_come_by_chance_wait_as_pollaczek_and_khinchine_say():
    """M/D/1 and M/G/1: rate E[S^2] / (2 (1 - rho)), with a start every max(X, h)."""
    for variation, floor, rate in ((0.0, 0.0, 0.25), (0.5, 2.0, 0.3)):
        day = LoadingDay((RiderClass("all", 1.0, 3.0 if variation == 0 else 2.0, variation),), floor, 45.0, hours=20)
        sizes = np.maximum(np.random.default_rng(3).lognormal(
            math.log(day.mean_readiness) - math.log1p(variation**2) / 2, math.sqrt(math.log1p(variation**2)), 2_000_000
        ), floor)  # fmt: skip
        expected = rate * np.mean(sizes**2) / (2 * (1 - rate * np.mean(sizes)))
        waits = []
        for seed in range(40):
            generator = np.random.default_rng(seed)
            come = np.cumsum(generator.exponential(1 / rate, 17_000))
            seen = simulate_day(day, generator, come)
            starts = seen.wait() - _of_starts(seen)
            waits.append(np.mean(starts[2000:]))
        within_four_errors(waits, expected)


def _of_starts(seen):
    """Return how long each start itself took: until it, from coming or from the start before."""
    before = np.concatenate([[0.0], seen.started[:-1]])
    return seen.started - np.maximum(seen.arrived, before)


@pytest.mark.parametrize("with_arrivals", [False, True])
def test_starts_are_those_of_a_plain_walk_from_one_to_the_next(with_arrivals):
    """The same draws, a rider at a time, with the way of the rope added up piece by piece."""
    for seed in range(6):
        generator = np.random.default_rng(seed)
        rope = Rope(DEMO, generator, 25_200)
        ready = generator.lognormal(1.0, 0.4, 3000)
        arrived = np.sort(generator.uniform(0, 8000, 3000)) if with_arrivals else None
        ends, last = [], 0.0
        for number, each in enumerate(ready):
            free = last if arrived is None else max(last, arrived[number])
            left, time = 2.0, free  # seconds of way at the usual speed until the next place comes
            while left > 1e-12:
                inside = next((piece for piece in rope.windows if piece[0] <= time < piece[1]), None)
                end = inside[1] if inside else next((p[0] for p in rope.windows if p[0] > time), math.inf)
                speed = 0.5 if inside else 1.0
                step = min(left / speed, end - time)
                time, left = time + step, left - step * speed
            last = max(free + each, time)
            ends.append(last)
        assert len(rope.windows) > 5
        assert _starts(ready, 2.0, rope, arrived) == pytest.approx(np.array(ends), abs=1e-6)


def test_everybody_is_in_one_place_at_every_minute():
    come = np.sort(np.random.default_rng(5).uniform(0, 25_200, 6000))
    for seen in (simulate_day(DEMO, 7), simulate_day(DEMO, 8, come)):
        for minute in range(0, 421, 7):
            places = seen.account(60.0 * minute)
            assert places["arrived"] == sum(number for place, number in places.items() if place != "arrived")
            assert min(places.values()) >= 0
        assert seen.account(1e9)["on the line"] == np.count_nonzero(~(seen.completed | seen.fell | seen.dropped))
        assert np.all(np.diff(seen.started) >= 0)
        assert np.all(seen.left >= seen.started)
        assert seen.by_minute("started").sum() == seen.started.size


def test_the_invented_day_of_the_demo_tow():
    """Governed 1,200, uneven starts 1,178, misses 1,133, slow-downs 1,128, falls 1,120, stops 1,066, dropped 1,001."""
    steps = losses_by_cause(DEMO, 2026, days=60)
    assert list(steps) == ["governed", *CAUSES]
    expected = {"governed": 1200, "uneven starts": 1178, "misses": 1133, "slow-downs": 1128, "falls on the way": 1120,
                "the rope stands": 1066, "dropped at a stop": 1001}  # fmt: skip
    for cause, rate in expected.items():
        spread = 25 if cause in CAUSES[4:] else 6  # of one day
        assert abs(steps[cause] - rate) < 4 * spread / math.sqrt(60) + 0.5, cause
    rates = list(steps.values())
    assert rates == sorted(rates, reverse=True), "every cause takes something"


def test_two_minutes_count_less_after_a_stop():
    days = [simulate_day(DEMO, seed) for seed in range(30)]
    counted, clean = (np.concatenate(part) for part in zip(*(day.counts() for day in days), strict=True))
    assert counted.mean() == pytest.approx(33.4, abs=0.7)
    assert counted[clean].mean() == pytest.approx(37.5, abs=0.5)
    assert counted[clean].std() < 4 < counted.std()


def test_the_same_seed_gives_the_same_day():
    one, other = simulate_day(DEMO, 11), simulate_day(DEMO, 11)
    assert np.array_equal(one.left, other.left)
    assert not np.array_equal(one.left[:100], simulate_day(DEMO, 12).left[:100])


REFUSED = [
    (lambda: LoadingDay((), 0.0, 45.0),
     "LoadingDay: the shares of the classes add up to 0. Write shares that add up to 1."),
    (lambda: LoadingDay((RiderClass("a", 0.5, 3, 0),), 0.0, 45.0),
     "LoadingDay: the shares of the classes add up to 0.5. Write shares that add up to 1."),
    (lambda: LoadingDay((RiderClass("a", 1, 0, 0),), 0.0, 45.0),
     "LoadingDay: the readiness of a must be greater than 0, but got 0."),
    (lambda: LoadingDay((RiderClass("a", 1, 3, 0, 1.0),), 0.0, 45.0),
     "LoadingDay: misses of a must be zero or more, and 0.95 at most, but got 1."),
    (lambda: LoadingDay(STEADY, -1.0, 45.0), "LoadingDay: floor must be zero or more, but got -1."),
    (lambda: LoadingDay(STEADY, 0.0, math.inf), "LoadingDay: ride_time must be greater than 0, but got inf."),
    (lambda: LoadingDay(STEADY, 0.0, 45.0, hours=30),
     "LoadingDay: hours must be greater than 0, and 24 at most, but got 30."),
    (lambda: LoadingDay(STEADY, 0.0, 45.0, slow_speed=0),
     "LoadingDay: slow_speed must be greater than 0, and 1 at most, but got 0."),
    (lambda: DEMO.with_causes(["wind"]),
     f"LoadingDay: 'wind' is no cause of loss. Write some of {', '.join(CAUSES)}."),
    (lambda: simulate_day(DEMO, 1).wait(),
     "DaySeen: a line stands all day, and nobody came at a time. Simulate with arrivals."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
