"""Days with riders who come, wait, give up and come back: conservation, the other path, and closed forms."""

import math
from dataclasses import replace

import numpy as np
import pytest
from loading_processes import GivenDraws, run_processes
from messages import refuses, table_of_messages
from test_loading_day import CLASSES, within_four_errors

from liftcalc.simulation.arrival_times import days_of_arrivals, lines_put_up_with
from liftcalc.simulation.crowded_days import simulate_crowded_days
from liftcalc.simulation.crowded_run import Run
from liftcalc.simulation.loading_day import LoadingDay, RiderClass, simulate_day
from liftcalc.simulation.many_days import simulate_days
from liftcalc.simulation.shifts import Shift

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


def test_slow_downs_are_those_of_the_other_path():
    """A floor that binds at half speed, and rides that take longer."""
    slow = {"slow_downs_an_hour": 12, "slow_time": 120, "slow_speed": 0.5}
    day = LoadingDay(CLASSES, 2.5, 45.25, 1, 30, 45, 0.0, empties=False, **slow)
    seen, other = simulate_crowded_days(day, np.zeros((200, 1350)), 9), simulate_days(day, 10, 200)
    ours = seen.completed / (1 - 45.25 / 3600)
    error = math.hypot(np.std(ours) / math.sqrt(ours.size), np.std(other) / math.sqrt(other.size))
    assert abs(ours.mean() - other.mean()) < 4 * error
    without = simulate_days(replace(day, slow_downs_an_hour=0), 10, 60).mean()
    assert without - ours.mean() > 10 * error, "they take something"


def test_arrivals_of_a_table_wait_as_in_the_other_path():
    """The same table of arrivals, and no chance in the readiness: the same starts and waits to the last digit."""
    arrivals = days_of_arrivals([0, 1200, 2400], [3000, 0, 600], [700, 60, 240], seed=3, days=3)
    seen = simulate_crowded_days(STEADY, arrivals, 1, closing="rides")
    for number in range(3):
        other = simulate_day(STEADY, 2, arrivals[number])
        assert seen.started[number] == 1000
        assert seen.waited[number] == pytest.approx(np.sum(other.wait()))


def test_riders_processes_and_steps_agree_on_the_same_draws():
    """A plain model of processes, a rider each, with arrivals, stops and returns: see ``loading_processes``."""
    generator, hours = np.random.default_rng(4), 1
    day = LoadingDay((RiderClass("all", 1.0, 3.0, 0.4),), 2.0, 45.25, hours, 8, 35, 0.6)
    arrivals = np.sort(generator.uniform(0, 3500, (6, 800)), axis=1)
    arrivals[3:, 200:] = np.inf  # on some days nobody waits when the rope stops
    ready = generator.lognormal(1.0, 0.4, (6, 1500))
    gaps, lengths = generator.exponential(300, (6, 40)), generator.lognormal(3.5, 0.5, (6, 40))
    run = Run(day, arrivals, GivenDraws(ready, gaps, lengths), None, come_back=True)
    run.all_steps()
    for number in range(6):
        given = (each[number].tolist() for each in (arrivals, ready, gaps, lengths))
        given = ([each for each in column if each < np.inf] for column in given)
        waits, started, finished, dropped = run_processes(*given, 2.0, 45.25, 3600)
        assert (run.totals["started"][number], run.totals["completed"][number]) == (started, finished)
        assert run.totals["dropped"][number] == dropped > 5
        left = run.totals["turned_away"][number]
        assert run.waited[number] == pytest.approx(waits, abs=1e-6) if not left else run.waited[number] > waits


def test_a_slow_down_goes_on_after_a_stop():
    """Slow from 80 s for 60 s of running, a stop of 50 s at 100 s, a place every 2 s of running at full speed."""

    class Fixed(GivenDraws):
        def until_a_slow_down(self, rows):
            return np.full(rows.size, 80.0 if self.attempts[0] == 0 else np.inf)

    day = LoadingDay((RiderClass("all", 1.0, 1.0, 0.0),), 2.0, 45.0, 0.1, 1, 50, empties=False,
                     slow_downs_an_hour=1, slow_time=60, slow_speed=0.5)  # fmt: skip
    draws = Fixed(np.ones((1, 400)), np.array([[100.5, np.inf]]), np.array([[50.0, 0.0]]))
    run = Run(day, np.zeros((1, 300)), draws, None, come_back=True)
    run.all_steps()
    assert run.totals["started"][0] == 40 + 5 + 10 + 84, "every 2 s, every 4 s before the stop and after it, every 2 s"


STEADY = LoadingDay((RiderClass("all", 1.0, 3.0, 0.0),), 0.0, 45.0, 1)


@pytest.mark.parametrize(("shifts", "starts"), [
    ((), 1199),
    ((Shift(601, 1200, shut=True),), 200 + 799),  # every 3 s; the one who is not off at 601 s begins anew at 1,200 s
    ((Shift(600, 1200, slower=2.0),), 200 + 100 + 799),
    ((Shift(1800, slower=0.5),), 600 + 1199),
    ((Shift(601, 1200, shut=True), Shift(1800, slower=2.0)), 200 + 200 + 299),
])  # fmt: skip
def test_an_empty_post_other_staff_and_a_shut_lift(shifts, starts):
    seen = simulate_crowded_days(STEADY, np.zeros((1, 2000)), 1, shifts=shifts)
    assert seen.started.tolist() == [starts]
    everybody_is_somewhere(seen)


def test_other_staff_let_fewer_miss():
    day = LoadingDay((RiderClass("all", 1.0, 3.0, 0.0, 0.2),), 0.0, 45.0, 1)
    seen = simulate_crowded_days(day, np.zeros((60, 1300)), 1, shifts=(Shift(0, misses=0.25),))
    within_four_errors(seen.started, 1200 * (1 - 0.05))


def test_whoever_stands_in_line_at_closing_rides_or_is_turned_away():
    batch = np.full((2, 300), 3000.0)
    away = simulate_crowded_days(STEADY, batch, 1)
    rides = simulate_crowded_days(STEADY, batch, 1, closing="rides")
    assert (away.started.tolist(), away.turned_away.tolist()) == ([199, 199], [101, 101])
    assert (rides.started.tolist(), rides.turned_away.tolist()) == ([300, 300], [0, 0])
    assert rides.waited.tolist() == [3 * 300 * 301 / 2] * 2


def test_each_rider_puts_up_with_a_line_of_their_own():
    own = lines_put_up_with(20.0, 0.6, (30, 1800), np.random.default_rng(11))
    assert own.mean() == pytest.approx(20, rel=0.02)
    seen = simulate_crowded_days(STEADY, come(0.45, 30, 1, 12)[:, :1800], 1, most_in_line=own)
    everybody_is_somewhere(seen)
    assert own.min() < seen.longest_line.max() <= own.max()
    assert simulate_crowded_days(STEADY, np.zeros((1, 100)), 1, most_in_line=5).gave_up.tolist() == [95]
    few = simulate_crowded_days(STEADY, np.zeros((1, 100)), 1, most_in_line=np.arange(100)[None, ::-1] // 4)
    assert few.gave_up[0] == 80, "the twentieth finds 19 of 20, the next one 20 of 19"


def test_a_stop_before_somebody_comes_costs_them_nothing():
    """Riders far apart: each starts a readiness after coming, or after the stop that is under way."""
    arrivals = np.tile(60.0 * np.arange(58), (60, 1))
    day = LoadingDay((RiderClass("all", 1.0, 3.0, 0.0),), 0.0, 5.0, 1, 3, 30, 0.0)
    seen = simulate_crowded_days(day, arrivals, 13, come_back=False)
    share = 3 / 3600 / (1 + 3 / 3600 * 30)  # stops a second of the clock
    within_four_errors(seen.mean_wait, 3 + share * 30 * 15 + share * 3 * 30)


REFUSED = [
    (lambda: simulate_crowded_days(DAY, [[2.0, 1.0]], 1),
     "simulate_crowded_days: the arrivals of a day are not in order. Sort each row."),
    (lambda: simulate_crowded_days(DAY, [[1.0]], 1, closing="never"),
     "simulate_crowded_days: closing must be one of turned away, rides, but got 'never'."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
