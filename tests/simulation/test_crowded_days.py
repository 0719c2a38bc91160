"""Days with riders who come, wait, give up and come back: conservation, the other path, and closed forms."""

import math

import numpy as np
import pytest
from messages import refuses, table_of_messages
from test_loading_day import CLASSES, within_four_errors

from liftcalc.simulation.crowded_days import simulate_crowded_days
from liftcalc.simulation.loading_day import LoadingDay, RiderClass
from liftcalc.simulation.many_days import simulate_days

# an hour of the invented day, without slow-downs and with more stops, so that a test is short
DAY = LoadingDay(
    CLASSES, floor=2.0, ride_time=45.25, hours=1, stops_an_hour=3, stop_time=35, stop_variation=0.6,
    falls_that_stop=0.5,
)  # fmt: skip
ALL_AT_ONCE = np.zeros((60, 1350))  # a line that stands all day


def come(rate, days, hours, seed):
    """Return arrivals without order, a row a day."""
    count = int(rate * hours * 3600 * 1.3) + 50
    return np.cumsum(np.random.default_rng(seed).exponential(1 / rate, (days, count)), axis=1)


def everybody_is_somewhere(seen):
    """Check that nobody is lost."""
    assert np.array_equal(seen.arrived + seen.came_back, seen.started + seen.gave_up + seen.turned_away)
    assert np.all(seen.on_the_line >= 0)
    for number in (seen.arrived, seen.gave_up, seen.turned_away, seen.completed, seen.fell, seen.dropped):
        assert np.all(number >= 0)


def test_a_line_that_stands_all_day_is_the_day_of_the_other_path():
    seen = simulate_crowded_days(DAY, ALL_AT_ONCE, 1)
    everybody_is_somewhere(seen)
    other = simulate_days(DAY, 2, 200)
    ours = seen.completed / (1 - 45.25 / 3600)
    error = math.hypot(np.std(ours) / math.sqrt(ours.size), np.std(other) / math.sqrt(other.size))
    assert abs(ours.mean() - other.mean()) < 4 * error


def test_riders_who_come_by_chance_wait_as_pollaczek_and_khinchine_say():
    """M/G/1 from coming to starting: rate E[S^2] / (2 (1 - rho)) + E[S], with S the larger of readiness and floor."""
    day = LoadingDay((RiderClass("all", 1.0, 2.0, 0.5),), floor=2.0, ride_time=45.0, hours=4)
    rate, spread = 0.25, math.sqrt(math.log1p(0.25))
    takes = np.maximum(np.random.default_rng(3).lognormal(math.log(2) - spread**2 / 2, spread, 1_000_000), 2.0)
    expected = rate * np.mean(takes**2) / (2 * (1 - rate * takes.mean())) + takes.mean()
    seen = simulate_crowded_days(day, come(rate, 50, 4, 4), 5)
    everybody_is_somewhere(seen)
    within_four_errors(seen.mean_wait, expected)


@pytest.mark.parametrize(("come_back", "most"), [(True, None), (False, None), (True, 10)])
def test_everybody_is_somewhere(come_back, most):
    seen = simulate_crowded_days(DAY, come(0.4, 30, 1, 6), 7, most_in_line=most, come_back=come_back)
    everybody_is_somewhere(seen)
    assert seen.came_back.any() == come_back
    assert seen.gave_up.any() == (most is not None)
    if come_back:
        assert np.array_equal(seen.came_back, seen.dropped)
    if most:
        assert np.all(seen.longest_line <= most + 30), "only those whom a stop brings back come on top"
    assert np.all(seen.arrived <= np.count_nonzero(come(0.4, 30, 1, 6) <= 3600, axis=1))


def test_who_still_stands_there_at_closing_is_turned_away():
    day = LoadingDay((RiderClass("all", 1.0, 3.0, 0.0),), floor=0.0, ride_time=45.0, hours=1)
    seen = simulate_crowded_days(day, np.zeros((2, 1300)), 1)
    assert seen.started.tolist() == [1199, 1199], "a start each 3 s, the last one at closing no more"
    assert seen.turned_away.tolist() == [101, 101]
    assert seen.longest_line.tolist() == [1300, 1300]
    assert seen.completed.tolist() == [1185, 1185], "15 are on the line, less whoever starts at closing"


def test_riders_stay_on_a_belt_and_lose_the_stop_alone():
    """Completed: rate / (1 + lambda S) where riders stay on."""
    day = LoadingDay((RiderClass("all", 1.0, 3.0, 0.0),), 0.0, 45.0, 2, 6, 35, 0.6, empties=False)
    seen = simulate_crowded_days(day, np.zeros((40, 2450)), 8)
    everybody_is_somewhere(seen)
    assert not seen.dropped.any()
    within_four_errors(seen.started / 2, 1200 / (1 + 6 / 3600 * 35))


REFUSED = [
    (lambda: simulate_crowded_days(LoadingDay(CLASSES, 2.0, 45.0, slow_downs_an_hour=1, slow_time=9, slow_speed=0.5),
                                   [[0.0]], 1),
     "simulate_crowded_days: slow-downs are no part of this. Set slow_downs_an_hour to 0."),
    (lambda: simulate_crowded_days(DAY, [[2.0, 1.0]], 1),
     "simulate_crowded_days: the arrivals of a day are not in order. Sort each row."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
