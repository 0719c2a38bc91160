"""A closed crowd: against a textbook's loop, its bounds, and a Markov chain of who is where."""

import heapq
import itertools
import time

import numpy as np
import pytest
import simpy
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError, crowd_capacity_at_least, crowd_capacity_at_most
from liftcalc.simulation.closed_crowd import closed_crowd, even_shares


def crowd_of(people, loading, away, shares=None):
    return closed_crowd(
        Q(people, "person"),
        loading_time=Q(loading, "s"),
        ride_and_descent=Q(away, "s"),
        shares=None if shares is None else Q(shares, ""),
    )


def rides_by_chain(people, loading, away, shares):
    """Return rides a second and mean number at each lift, loading or in line, from who is where.

    A state counts those at each lift, and then those away from each; every time is exponential.
    """
    lifts = len(loading)
    states = [each for each in itertools.product(range(people + 1), repeat=2 * lifts) if sum(each) == people]
    place = {state: number for number, state in enumerate(states)}
    rates = np.zeros((len(states), len(states)))

    def move(state, source, target, rate):
        after = list(state)
        after[source] -= 1
        after[target] += 1
        rates[place[state], place[tuple(after)]] += rate

    for state in states:
        for lift in range(lifts):
            if state[lift]:
                move(state, lift, lifts + lift, 1 / loading[lift])
            for chosen in range(lifts):
                move_rate = state[lifts + lift] / away[lift] * shares[chosen]
                if move_rate:
                    move(state, lifts + lift, chosen, move_rate)
    balance = (rates - np.diag(rates.sum(axis=1))).T
    balance[-1] = 1
    chance = np.linalg.solve(balance, np.eye(len(states))[-1])
    at_lifts = np.array(states)[:, :lifts]
    return chance @ (at_lifts > 0) / np.array(loading), chance @ at_lifts


@pytest.mark.parametrize(
    "source", ["textbook exercise on mean value analysis: closed loop, think time 1, service 0.5, 3 circulating"]
)
def test_published_closed_loop(source):
    found = crowd_of(3, 0.5, 1.0)
    flow = found.riders_an_hour.m_as("person/s")[:, 0]
    np.testing.assert_allclose(flow, [2 / 3, 1.2, 1.5789], atol=5e-5)
    np.testing.assert_allclose(flow, [2 / 3, 6 / 5, 30 / 19], rtol=1e-12)


CHAINS = [  # people, loading times [s], ride and descent [s], shares
    (1, [3.0], [180.0], [1.0]),
    (6, [3.0], [12.0], [1.0]),
    (6, [5.0], [2.0], [1.0]),
    (4, [3.0, 5.0], [12.0, 9.0], [0.6, 0.4]),
    (3, [3.0, 5.0], [12.0, 30.0], [0.2, 0.8]),
]


@pytest.mark.parametrize(("people", "loading", "away", "shares"), CHAINS)
def test_against_a_markov_chain_of_who_is_where(people, loading, away, shares):
    found = crowd_of(people, loading, away, shares)
    for size in range(1, people + 1):
        flow, there = rides_by_chain(size, loading, away, shares)
        np.testing.assert_allclose(found.riders_an_hour[size - 1].m_as("person/s"), flow, rtol=1e-10)
        waiting = there - flow * np.array(loading)
        np.testing.assert_allclose(found.line[size - 1].m_as("person"), waiting, rtol=1e-8, atol=1e-12)
        np.testing.assert_allclose(found.wait[size - 1].m_as("s"), waiting / flow, rtol=1e-8, atol=1e-10)
        assert found.laps_an_hour[size - 1].m_as("1/hour") == pytest.approx(3600 * flow.sum() / size)


@given(people=st.integers(1, 300), loading=st.floats(0.5, 12), away=st.floats(1, 1500))
def test_the_bounds_hold_and_nobody_is_lost(people, loading, away):
    found, crowd = crowd_of(people, loading, away), Q(np.arange(1.0, people + 1), "person")
    times = {"ride_and_descent": Q(away, "s"), "loading_time": Q(loading, "s")}
    flow = found.riders_an_hour.m_as("pph")[:, 0]
    assert np.all(flow <= crowd_capacity_at_most(crowd, **times).m_as("pph") * (1 + 1e-12))
    assert np.all(flow >= crowd_capacity_at_least(crowd, **times).m_as("pph") * (1 - 1e-12))
    assert np.all(np.diff(flow) >= -1e-9)
    laps = away + loading + found.wait.m_as("s")[:, 0]
    np.testing.assert_allclose(flow / 3600 * laps, crowd.magnitude, rtol=1e-9)
    assert found.crowd.magnitude.tolist() == crowd.magnitude.tolist()


def laps_by_the_clock(people, loading, away, generator, laps=20_000):
    """Return riders an hour where each is put through the lift in the order of coming, all with one loading time."""
    back = list(generator.uniform(0, away, people))
    heapq.heapify(back)
    free, first = 0.0, None
    for lap in range(laps):
        free = max(free, back[0]) + loading
        heapq.heapreplace(back, free + generator.exponential(away))
        if lap == laps // 10:
            first = free
    return 3600 * (laps - 1 - laps // 10) / (free - first)


@pytest.mark.parametrize("people", [30, 60, 90])
def test_loading_times_all_alike_carry_a_little_more(people):
    found = crowd_of(people, 3.0, 180.0).riders_an_hour[-1, 0].m_as("pph")
    alike = laps_by_the_clock(people, 3.0, 180.0, np.random.default_rng(people))
    most = crowd_capacity_at_most(Q(people, "person"), ride_and_descent=Q(180, "s"), loading_time=Q(3, "s")).m_as("pph")
    assert found < alike * 1.01  # and what chance does in a run
    assert alike < most * 1.01
    assert alike == pytest.approx(found, rel=0.06)


def test_two_lifts_alike_share_all_and_a_lift_without_riders_stands_empty():
    alike = crowd_of(50, [3.0, 3.0], 120.0, [0.5, 0.5])
    np.testing.assert_allclose(*alike.riders_an_hour.magnitude.T, rtol=1e-12)
    alone, beside = crowd_of(50, 3.0, 120.0), crowd_of(50, [3.0, 9.0], 120.0, [1.0, 0.0])
    np.testing.assert_allclose(beside.riders_an_hour[:, 0].magnitude, alone.riders_an_hour[:, 0].magnitude, rtol=1e-12)
    assert not beside.line[:, 1].magnitude.any()
    assert not beside.riders_an_hour[:, 1].magnitude.any()


def test_own_figure_sixty_one_people_whose_loading_times_are_all_alike():
    assert crowd_of(61, 3.0, 180.0).riders_an_hour[-1, 0].m_as("pph") == pytest.approx(1096, abs=0.5)
    runs = np.array([laps_by_the_clock(61, 3.0, 180.0, np.random.default_rng(seed), 6_000) for seed in range(12)])
    error = runs.std(ddof=1) / runs.size**0.5
    assert error < 4, "the runs say enough"
    assert abs(runs.mean() - 1125) < 4 * error


def laps_by_processes(people, loading, away, shares, seed, until):
    """Return riders an hour and mean wait at each lift, from a model of processes: one for each person."""
    generator, lifts = np.random.default_rng(seed), len(loading)
    world = simpy.Environment()
    places = [simpy.Resource(world) for _ in range(lifts)]
    begun, waited = np.zeros(lifts), np.zeros(lifts)

    def person():
        while True:
            lift = int(generator.choice(lifts, p=shares))
            came = world.now
            with places[lift].request() as turn:
                yield turn
                if came > until / 10:
                    begun[lift] += 1
                    waited[lift] += world.now - came
                yield world.timeout(generator.exponential(loading[lift]))
            yield world.timeout(away[lift] * generator.uniform(0.5, 1.5))

    for _ in range(people):
        world.process(person())
    world.run(until)
    return begun * 3600 / (0.9 * until), waited / begun


def test_against_a_model_of_processes():
    setting = 12, [3.0, 7.0], [20.0, 30.0], [0.7, 0.3]
    runs = np.array([laps_by_processes(*setting, seed, until=5_000) for seed in range(8)])
    mean, error = runs.mean(axis=0), runs.std(axis=0, ddof=1) / len(runs) ** 0.5
    found = crowd_of(*setting)
    exact = np.array([found.riders_an_hour[-1].m_as("pph"), found.wait[-1].m_as("s")])
    assert np.all(error < 0.06 * exact), "the runs say enough"
    assert np.all(np.abs(mean - exact) < 4 * error)


EVENS = [  # people, loading times [s], ride and descent [s]
    (2, [3.0, 7.0], [180.0, 300.0]),
    (120, [3.0, 7.0], [180.0, 300.0]),
    (90, [3.0, 3.0], [60.0, 400.0]),
    (60, [2.0, 6.0, 11.0], [0.0, 90.0, 500.0]),
]


@pytest.mark.parametrize(("people", "loading", "away"), EVENS)
def test_even_shares_make_equal_waits(people, loading, away):
    times = {"loading_time": Q(loading, "s"), "ride_and_descent": Q(away, "s")}
    shares = even_shares(Q(people, "person"), **times)
    assert shares.magnitude.sum() == pytest.approx(1)
    waits = closed_crowd(Q(people, "person"), **times, shares=shares).wait[-1].m_as("s")
    np.testing.assert_allclose(waits, waits.mean(), rtol=1e-5)


def test_even_shares_of_lifts_alike_and_of_a_very_large_crowd():
    alike = even_shares(Q(50, "person"), loading_time=Q([4, 4], "s"), ride_and_descent=Q(120, "s"))
    np.testing.assert_allclose(alike.magnitude, [0.5, 0.5], rtol=1e-6)
    many = even_shares(Q(3000, "person"), loading_time=Q([3, 6], "s"), ride_and_descent=Q(120, "s"))
    np.testing.assert_allclose(many.magnitude, [2 / 3, 1 / 3], rtol=5e-3)  # as their capacities: both are full
    alone = even_shares(Q(1, "person"), loading_time=Q([3, 6], "s"), ride_and_descent=Q(120, "s"))
    np.testing.assert_allclose(alone.magnitude, [2 / 3, 1 / 3])
    one = even_shares(Q(9, "person"), loading_time=Q(3, "s"), ride_and_descent=Q(9, "s"))
    assert one.magnitude.tolist() == [1]


@pytest.mark.parametrize("lifts", [1, 5])
def test_ten_thousand_riders_in_a_tenth_of_a_second(lifts):
    spent = []
    for _ in range(3):
        begun = time.process_time()
        found = crowd_of(10_000, [3.0] * lifts, 300.0, [1 / lifts] * lifts)
        spent.append(time.process_time() - begun)
    assert min(spent) < 0.1
    assert found.riders_an_hour[-1].m_as("pph").sum() == pytest.approx(1200 * lifts, rel=1e-3)


def test_shares_that_are_not_found_are_not_given(monkeypatch):
    monkeypatch.setattr("liftcalc.simulation.closed_crowd.MOST_STEPS", 1)
    refuses(
        lambda: even_shares(Q(20, "person"), loading_time=Q([3, 7], "s"), ride_and_descent=Q(9, "s")),
        "even_shares: no shares make the waits equal. Give loading times that differ less.",
    )


MESSAGES = [
    (
        lambda: crowd_of(2.5, 3, 180),
        "closed_crowd: crowd must be one whole number, 100,000 at most, but got 2.5. Write for example "
        "Q(200, 'person').",
    ),
    (
        lambda: crowd_of([20, 200], 3, 180),
        "closed_crowd: crowd must be one whole number, 100,000 at most, but got 20, 200. Write for example "
        "Q(200, 'person').",
    ),
    (
        lambda: crowd_of(20, [3, 4], 180),
        "closed_crowd: 2 lifts need shares. Write what share of all rides each gets, such as Q([0.7, 0.3], '').",
    ),
    (
        lambda: crowd_of(20, [3, 4], [180, 190, 200], [0.7, 0.3]),
        "closed_crowd: 2 values of loading_time came with 3 of ride_and_descent and 2 of shares. Give one of each a "
        "lift.",
    ),
    (
        lambda: crowd_of(20, [3, 4], 180, [0.7, 0.7]),
        "closed_crowd: the shares add up to 1.400, not to 1. Write each as a part of all rides, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: even_shares(Q(20, "person"), loading_time=Q([3, 7], "s"), ride_and_descent=Q([9, 9, 9], "s")),
        "even_shares: 2 values of loading_time came with 3 of ride_and_descent and 2 of shares. Give one of each a "
        "lift.",
    ),
    (
        lambda: closed_crowd(Q(20, "person"), loading_time=3, ride_and_descent=Q(180, "s")),
        "closed_crowd: loading_time needs a unit, but got the bare value 3. Write Q(3, 's').",
        UnitError,
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
