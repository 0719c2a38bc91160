"""Days of carriers by the clock against closed forms, one cause at a time, and against a plain walk over one day."""

import math
from collections import deque
from dataclasses import replace

import numpy as np
import pytest
from messages import refuses, table_of_messages
from test_loading_day import within_four_errors

from liftcalc import Q
from liftcalc.simulation.carrier_day import CAUSES, CarrierDay, ChildRule
from liftcalc.simulation.carrier_fill import fill_in_order, fill_with_singles
from liftcalc.simulation.carrier_parties import joined
from liftcalc.simulation.carrier_run import simulate_carrier_days
from liftcalc.simulation.clocked_line import mean_wait_for_carriers
from liftcalc.simulation.many_days import losses_by_cause
from liftcalc.simulation.shifts import Shift

PARTIES = {1: 0.25, 2: 0.40, 3: 0.15, 4: 0.20}
SINGLES = CarrierDay(2, 6.0, 300.0, {1: 1.0}, hours=3)
QUAD = CarrierDay(4, 6.0, 300.0, PARTIES, hours=3)
RULE = ChildRule("invented for this test", 0.4, 1)
ALL = replace(
    QUAD, hours=1, misloads=0.04, misloads_that_stop=0.3, stops_an_hour=4, stop_time=40, stop_variation=0.6,
    slow_downs_an_hour=3, slow_time=60, slow_speed=0.5, strangers_apart=0.1, children=RULE,
)  # fmt: skip


def come(rate, days, hours, seed):
    """Return arrivals without order, a row a day."""
    count = int(rate * hours * 3600 * 1.1) + 50
    return np.cumsum(np.random.default_rng(seed).exponential(1 / rate, (days, count)), axis=1)


def test_full_carriers_are_the_governed_capacity():
    seen = simulate_carrier_days(SINGLES, 1, 2)
    assert SINGLES.governed == 1200
    assert seen.rate.tolist() == [1200, 1200]
    assert seen.fill.tolist() == seen.availability.tolist() == seen.fill_as_riders_see_it.tolist() == [1, 1]
    assert seen.by_minute("unloaded")[5:].tolist() == [20] * 175
    assert np.diff(seen.passes[:, 0]) == pytest.approx(6.0)


@pytest.mark.parametrize(("seats", "parties"), [(4, PARTIES), (2, {1: 0.5, 2: 0.5}), (6, {1: 0.2, 2: 0.5, 3: 0.3})])
def test_carriers_filled_in_order_are_those_of_the_chain(seats, parties):
    day = replace(QUAD, seats=seats, parties=parties)
    within_four_errors(simulate_carrier_days(day, 2, 40).fill, fill_in_order(parties, seats))


def test_a_line_for_singles_fills_what_is_left():
    drawn = np.array([fill_with_singles(PARTIES, 4, seed, carriers=5000) for seed in range(10)])
    fill = simulate_carrier_days(replace(QUAD, singles_line=True), 3, 40).fill
    error = math.hypot(np.std(drawn, ddof=1) / math.sqrt(10), np.std(fill, ddof=1) / math.sqrt(40))
    assert error < 0.002
    assert abs(fill.mean() - drawn.mean()) < 4 * error


def test_a_party_larger_than_the_carrier_is_split_and_no_other():
    assert simulate_carrier_days(replace(SINGLES, parties={4: 1.0}), 1).fill == 1
    assert simulate_carrier_days(replace(SINGLES, parties={3: 1.0}), 1).fill == pytest.approx(0.75, abs=0.001)
    assert simulate_carrier_days(replace(SINGLES, seats=3, parties={2: 1.0}), 1).fill == pytest.approx(2 / 3)


def test_misloads_cost_their_share():
    seen = simulate_carrier_days(replace(SINGLES, misloads=0.1), 4, 40)
    within_four_errors(seen.rate, 1200 * 0.9)
    within_four_errors(seen.misses / (seen.misses + seen.loads.sum(axis=0)), 0.1)


def test_stops_and_slow_downs_cost_their_time():
    """Stops of S at lambda: 1 / (1 + lambda S); a slow-down of W at speed s and rate m: (1 + m s W) / (1 + m W)."""
    seen = simulate_carrier_days(replace(SINGLES, stops_an_hour=6, stop_time=35, stop_variation=0.6), 5, 60)
    runs = 1 / (1 + 6 / 3600 * 35)
    within_four_errors(seen.availability, runs)
    within_four_errors(seen.rate, 1200 * runs)
    seen = simulate_carrier_days(replace(SINGLES, slow_downs_an_hour=6, slow_time=60, slow_speed=0.5), 6, 60)
    within_four_errors(seen.rate, 1200 * (1 + 0.1 * 0.5) / (1 + 0.1))


def test_misloads_that_stop_cost_a_stop_once_a_carrier():
    """With n tries a carrier, miss p and stop q: a stop after the part 1 - (1 - p q)^n of the carriers."""
    day = replace(SINGLES, misloads=0.05, misloads_that_stop=0.4, stop_time=30, stop_variation=0.5)
    seen = simulate_carrier_days(day, 7, 60)
    runs = 6 / (6 + 30 * (1 - (1 - 0.05 * 0.4) ** 2))
    within_four_errors(seen.availability, runs)
    within_four_errors(seen.rate, 1200 * 0.95 * runs)


def test_strangers_who_do_not_share():
    """Singles on a T-bar of whom the part q does not share: (2 - q) / 2 of the places."""
    within_four_errors(simulate_carrier_days(replace(SINGLES, strangers_apart=0.3), 8, 40).fill, (2 - 0.3) / 2)


def test_who_holds_on_by_hand_is_dropped_at_a_stop():
    """Completed: governed x e^(-lambda R) / (1 + lambda S)."""
    day = replace(SINGLES, ride_time=60.0, stops_an_hour=6, stop_time=35, stop_variation=0.6, empties=True)
    seen = simulate_carrier_days(day, 9, 80)
    within_four_errors(seen.rate, 1200 * math.exp(-0.1) / (1 + 6 / 3600 * 35))


def test_a_child_alone_waits_until_an_adult_shares():
    """Singles, the part c children: each adult takes one; above half of them children, the rest pile up."""
    within = replace(SINGLES, children=RULE)
    seen = simulate_carrier_days(within, 10, 40)
    assert seen.fill.mean() == pytest.approx(1), "whoever is at the front is an adult, and the next one shares"
    over = simulate_carrier_days(replace(within, children=replace(RULE, share=0.6)), 11, 40)
    within_four_errors(over.beside[-1] / over.passes.shape[0], 0.6 / 0.4 - 1)
    pairs = simulate_carrier_days(replace(within, parties={2: 1.0}), 12, 40)  # an adult of a pair has no place beside
    assert pairs.fill.mean() == pytest.approx(1)
    within_four_errors(pairs.beside[-1] / pairs.passes.shape[0], 2 * 0.16 / (1 - 0.16))
    quad = simulate_carrier_days(replace(within, hours=1, seats=4, children=replace(RULE, share=0.7)), 18, 20)
    within_four_errors(quad.beside[-1] / quad.passes.shape[0], 2 * (0.7 / 0.3 - 1))  # two adults, a child beside each


def test_whoever_misses_waits_on():
    """Riders far apart: half an interval until the carrier, and an interval for each attempt that fails."""
    arrivals = 60.0 * np.arange(59) + np.random.default_rng(19).uniform(0, 6, (60, 59))
    day = replace(SINGLES, hours=1, misloads=0.3)
    within_four_errors(simulate_carrier_days(day, 20, arrivals=arrivals).mean_wait, 3 + 6 * 0.3 / 0.7)


def test_a_party_that_needs_two_carriers_goes_away_as_one():
    day = replace(SINGLES, hours=1, parties={4: 1.0})
    seen = simulate_carrier_days(day, 21, arrivals=come(0.5, 5, 1, 22), most_in_line=9)
    first, second = seen.too_long[:, ::2], seen.too_long[:, 1::2]
    assert np.array_equal(first[:, : second.shape[1]], second)
    assert 0.2 < second.mean() < 0.8


@pytest.mark.parametrize("seats", [1, 2, 4])
def test_riders_who_come_by_chance_wait_as_long_as_the_closed_form_says(seats):
    """12.00, 6.94 and 4.60 s at 6 s and three quarters busy."""
    rate, day = 0.75 * seats / 6, replace(SINGLES, seats=seats, hours=7)
    wait = mean_wait_for_carriers(Q(rate, "person/s"), Q(6, "s"), Q(seats, "person")).m_as("s")
    assert wait == pytest.approx({1: 12.0, 2: 6.94, 4: 4.60}[seats], abs=0.005)
    within_four_errors(simulate_carrier_days(day, 13, arrivals=come(rate, 30, 7, seats)).mean_wait, wait)


def walk(day, comes, sizes, most):
    """Return who went up on each carrier, who gave up, time waited, longest line; a carrier and a party at a time."""
    groups, singles, place, left, waited, loads, longest = deque(), deque(), 0, 0, 0.0, [], 0
    for number in range(int(day.hours * 3600 / day.interval)):
        now, load = number * day.interval, 0
        while place < len(comes) and comes[place] <= now:
            if sum(size for _, size in (*groups, *singles)) >= most:
                left += sizes[place]
            else:
                (singles if sizes[place] == 1 and day.singles_line else groups).append((comes[place], sizes[place]))
            place += 1
        longest = max(longest, sum(size for _, size in (*groups, *singles)))
        for line in (groups, singles):
            while line and load + line[0][1] <= day.seats:
                came, size = line.popleft()
                load, waited = load + size, waited + size * (now - came)
        loads.append(load)
    return loads, left, waited, longest


@pytest.mark.parametrize("singles_line", [False, True])
@pytest.mark.parametrize("most", [12, 10**6])
def test_a_day_is_that_of_a_plain_walk_over_its_carriers(singles_line, most):
    day = replace(QUAD, hours=1, singles_line=singles_line)
    arrivals = come(0.62, 3, 1, 14)
    seed = np.random.SeedSequence(15)
    generator = np.random.default_rng(seed.spawn(1)[0])
    seen = simulate_carrier_days(day, np.random.SeedSequence(15), arrivals=arrivals, most_in_line=most)
    until_closing = np.where(arrivals <= 3600, arrivals, np.inf)
    comes, sizes, _, _ = joined(day, until_closing, None, generator)
    for number in range(3):
        there = np.isfinite(comes[number])
        loads, left, waited, longest = walk(day, comes[number][there].tolist(), sizes[number][there].tolist(), most)
        assert seen.loads[:, number].tolist() == loads
        assert seen.gave_up[number] == left
        assert seen.waited[number] == pytest.approx(waited)
        assert seen.longest_line[number] == longest
    assert seen.gave_up.any() == (most == 12)


@pytest.mark.parametrize("closing", ["turned away", "rides"])
@pytest.mark.parametrize("settings", [{}, {"singles_line": True}, {"empties": True, "misloads_that_stop": 0}])
def test_everybody_is_in_one_place_at_every_minute(closing, settings):
    shifts = (Shift(1200, 1500, shut=True), Shift(2400, 3000, slower=1.5, misses=2.0))
    day = replace(ALL, **settings)
    arrivals = come(0.5, 4, 1, 16)
    seen = simulate_carrier_days(day, 17, arrivals=arrivals, shifts=shifts, closing=closing, most_in_line=80)
    times = 60.0 * np.arange(150)
    for number in range(4):
        places = seen.account(times, number)
        whole = places.pop("arrived") + places.pop("come back")
        assert np.array_equal(whole, sum(places.values()))
        assert min(part.min() for part in places.values()) >= 0
        assert whole[-1] > 0.8 * np.count_nonzero(arrivals[number] <= 3600)
        if closing == "rides":
            last = seen.account([seen.ends[number]], number)
            assert last["waiting"][0] == 0
            assert last["turned away"][0] == seen.beside[-1, number], "children whom no adult took"
        assert places["dropped off"].any() == seen.day.empties
    shut = (seen.passes >= 1200) & (seen.passes < 1500)
    assert not seen.loads[shut].any()
    assert seen.loads[(seen.passes > 1500) & (seen.passes < 1600)].any()


@pytest.mark.parametrize("arrivals", [np.empty((2, 0)), np.full((2, 3), np.inf), np.array([[5.0], [1e9]])])
@pytest.mark.parametrize("closing", ["turned away", "rides"])
def test_days_on_which_hardly_anybody_comes(arrivals, closing):
    day = replace(QUAD, hours=1, singles_line=True)
    seen = simulate_carrier_days(day, 1, arrivals=arrivals, closing=closing, most_in_line=5)
    assert seen.loads.sum() == np.count_nonzero(arrivals < 3600)
    assert seen.turned_away.tolist() == [0, 0]
    assert seen.account([1800.0])["waiting"][0] == 0


def test_a_slower_lift_brings_its_carriers_later():
    seen = simulate_carrier_days(replace(SINGLES, hours=1), 1, shifts=(Shift(1200, 2400, slower=2.0),))
    gaps = np.diff(seen.passes[:, 0])
    assert np.bincount(np.round(gaps).astype(int)).nonzero()[0].tolist() == [6, 12]
    assert np.count_nonzero(np.round(gaps) == 12) == 100
    half = simulate_carrier_days(replace(SINGLES, misloads=0.2), 1, 20, shifts=(Shift(5400, misses=0.5),))
    after = half.passes[:, 0] >= 5400
    within_four_errors(half.loads[after].mean(axis=0) / 2, 0.9)


def test_whatever_makes_a_carrier_late_holds_up_those_on_the_line():
    """A ride of 50 intervals and a half: it lasts longer by every stop in it, and by a lift that runs slower."""
    day = replace(SINGLES, hours=1, ride_time=303.0, misloads=0.03, misloads_that_stop=1.0, stop_time=20)
    seen = simulate_carrier_days(day, 1)
    passes, leaves = seen.passes[:, 0], seen.leaves[:, 0]
    stops = np.diff(passes) - 6
    assert 10 < np.count_nonzero(stops > 1) == stops.sum() / 20
    held_up = np.array([stops[number : number + 51].sum() for number in range(passes.size - 60)])
    assert leaves[: held_up.size] - passes[: held_up.size] == pytest.approx(303 + held_up)
    half = simulate_carrier_days(replace(day, misloads=0), 1, shifts=(Shift(0, slower=2.0),))
    assert (half.leaves - half.passes)[:200] == pytest.approx(606)


def test_what_the_causes_take():
    day = replace(ALL, children=None)
    steps = losses_by_cause(day, 1, days=40)
    assert list(steps) == ["governed", *CAUSES[:-1]]
    assert list(steps.values()) == sorted(steps.values(), reverse=True)
    within_four_errors(day.rates(5, 40) - day.rates(6, 40), 0)
    assert steps["the lift stands"] == day.rates(1, 40).mean()
    assert losses_by_cause(day.with_causes([]), 1, days=1)["the lift stands"] == day.governed


SIM = simulate_carrier_days
REFUSED = [
    (lambda: CarrierDay(0, 6, 300, {1: 1}), "CarrierDay: seats must be a whole number from 1 to 100, but got 0."),
    (lambda: CarrierDay(2, 6, 300, {0: 1}), "CarrierDay: a party must be a whole number from 1 to 100, but got 0."),
    (lambda: CarrierDay(2, 6, 300, {1: 0.5}),
     "CarrierDay: the shares of the parties add up to 0.5. Write shares, zero or more, that add up to 1."),
    (lambda: CarrierDay(2, 0, 300, {1: 1}), "CarrierDay: interval must be greater than 0, but got 0."),
    (lambda: replace(QUAD, misloads=1), "CarrierDay: misloads must be zero or more, and 0.9 at most, but got 1."),
    (lambda: replace(ALL, empties=True),
     "CarrierDay: misloads that stop a lift held by hand are no part of this. Set them to 0."),
    (lambda: ChildRule(" ", 0.2, 1),
     "ChildRule: the rule has no source. Write which code, authority or operator says so."),
    (lambda: ChildRule("code", 0.2, 3), "ChildRule: an_adult must be 1 or 2, who has two sides, but got 3."),
    (lambda: QUAD.with_causes(["wind"]),
     f"CarrierDay: 'wind' is no cause of loss. Write some of {', '.join(CAUSES)}."),
    (lambda: SIM(QUAD, 1, closing="later"),
     "simulate_carrier_days: closing must be one of turned away, rides, but got 'later'."),
    (lambda: SIM(QUAD, 1, closing="rides"),
     "simulate_carrier_days: a line that stands all day neither gives up nor comes to its end. Give arrivals."),
    (lambda: SIM(QUAD, 1, arrivals=[[2.0, 1.0]]),
     "simulate_carrier_days: the arrivals of a day are not in order. Sort each row."),
    (lambda: SIM(replace(QUAD, hours=0.5), 1, arrivals=np.zeros(9000), closing="rides"),
     "simulate_carrier_days: a line is not gone 2 h after closing. Turn it away, or let fewer come."),
    (lambda: SIM(QUAD, 1).mean_wait,
     "CarrierDays: a line stands all day, and nobody came at a time. Simulate with arrivals."),
    (lambda: Shift(9, 9), "Shift: it ends at 9 s and begins at 9 s. End it later."),
    (lambda: Shift(9, shut=True), "Shift: a lift that is shut must open again. Write when the shift ends."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
