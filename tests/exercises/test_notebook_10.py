"""Exercises of 10: their right answers beside simulated days and simulated counts, and the verdict of 10.4."""

import itertools

import numpy as np
import pytest

from liftcalc import Capacity, Q
from liftcalc.exercises import BANK, Posed
from liftcalc.simulation.loading_day import LoadingDay, RiderClass, simulate_day
from liftcalc.simulation.many_days import simulate_days
from liftcalc.uncertainty import count_against_bound


def carried(*classes):
    """Return persons an hour and their standard error, of simulated days without floor and without stops."""
    rates = simulate_days(LoadingDay(classes, floor=0.0, ride_time=45.0, hours=10), seed=10, days=60)
    return rates.mean(), rates.std(ddof=1) / rates.size**0.5


def test_a_simulated_mix_carries_what_10_1_says():
    posed = Posed(BANK["10.1"])
    rate, error = carried(
        RiderClass("expert", 0.5, 2.6, 0.3), RiderClass("learner", 0.3, 3.8, 0.4), RiderClass("child", 0.2, 3.3, 0.4)
    )
    assert error < 1.5, "enough days to tell the wrong roads apart"
    assert rate == pytest.approx(posed.right.m_as("pph"), abs=4 * error)


def test_simulated_misses_leave_what_10_2_says():
    posed = Posed(BANK["10.2"])
    rate, error = carried(RiderClass("learner", 1.0, 3.2, 0.4, misses=0.08))
    assert error < 1.5, "enough days to tell the wrong roads apart"
    assert rate == pytest.approx(posed.right.m_as("pph"), abs=4 * error)


@pytest.mark.parametrize(("empties", "seconds"), [(True, 35 + 46), (False, 35)], ids=["rope tow", "riders stay on"])
def test_a_simulated_stop_takes_what_10_3_says(empties, seconds):
    """Stops are rare here, so that the line is full again before the next one; they are still drawn by chance."""
    posed = Posed(BANK["10.3"])
    day = LoadingDay(
        (RiderClass("rider", 1.0, 3.6, 0.0),), floor=0.0, ride_time=46.0, hours=24, stops_an_hour=0.4,
        stop_time=35.0, empties=empties,
    )  # fmt: skip
    seen = [simulate_day(day, np.random.default_rng(number)) for number in range(20)]
    stops = sum(len(each.stops) for each in seen)
    lost = sum(1000 * (24 - 46 / 3600) - np.count_nonzero(each.completed) for each in seen) / stops
    assert stops > 100
    assert lost == pytest.approx(1000 * seconds / 3600, rel=0.03)
    road = BANK["10.3"].roads[0].answer(posed.numbers)
    assert 6 * lost == pytest.approx((posed.right if empties else road).m_as("pph"), rel=0.03)


def test_chance_explains_every_count_of_10_4():
    grids = [
        [drawn.at(place) for place in range(round((drawn.high - drawn.low) / drawn.step) + 1)]
        for drawn in BANK["10.4"].given.values()
    ]
    assert list(BANK["10.4"].given) == ["counted", "governed", "packing"]
    for counted, governed, packing in itertools.product(*grids):
        found = count_against_bound(
            counted, Q(2, "minute"), Capacity(governed, "governed"), packing=Capacity(packing, "packing")
        )
        assert found.verdict == "within", found
        assert found.counted.value > governed


@pytest.mark.parametrize("one_more", [0, 1])
def test_the_most_of_10_4_is_the_last_count_that_can_be(one_more):
    n = Posed(BANK["10.4"]).numbers
    found = count_against_bound(
        n.most + Q(one_more, "person"), Q(2, "minute"), packing=Capacity(n.packing, "packing")
    )  # fmt: skip
    assert (found.verdict == "impossible") == bool(one_more)


def test_counts_as_long_as_10_5_says_are_good_to_five_percent():
    n, right = Posed(BANK["10.5"]).numbers, Posed(BANK["10.5"]).right
    shape = 1 / n.spread.magnitude**2
    gaps = np.random.default_rng(105).gamma(shape, 3600 / n.rate.m_as("pph") / shape, size=(2000, 800))
    counts = np.count_nonzero(gaps.cumsum(axis=1) < right.m_as("s"), axis=1)
    expected = n.rate.m_as("pph") * right.m_as("hour")
    assert counts.max() < 800
    assert np.mean(np.abs(counts / expected - 1) < 0.05) == pytest.approx(0.95, abs=0.02)


def test_availability_of_10_6_brings_the_rate_back_to_the_clock():
    posed = Posed(BANK["10.6"], "anybody")
    n = posed.numbers
    ran = 3600 - n.stops.magnitude * n.stop_time.m_as("s")
    assert posed.right.m_as("pph") * ran / 3600 == pytest.approx(n.by_clock.m_as("pph"))
