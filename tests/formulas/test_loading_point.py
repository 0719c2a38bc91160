"""The loading point: floors, means that are drawn as a second opinion, and where nobody loads so."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError, hourly_capacity, hourly_capacity_from_interval
from liftcalc.formulas import loading_point as loading

speeds = st.floats(0.3, 5)
accelerations = st.floats(0.5, 4)


@given(places=st.integers(1, 6), persons=st.integers(1, 4), time=st.floats(1, 12), factor=st.floats(0.2, 5))
def test_places_and_persons_multiply(places, persons, time, factor):
    n, k = Q(persons, "person"), Q(places, "")
    for formula in (loading.loading_capacity, loading.unload_capacity):
        one = formula(Q(time, "s")).m_as("pph")
        assert one == pytest.approx(3600 / time)
        assert formula(Q(time, "s"), n, k).m_as("pph") == pytest.approx(persons * places * one)
        assert formula(Q(factor * time, "s"), n, k).m_as("pph") == pytest.approx(persons * places * one / factor)


@given(length=st.floats(0.5, 6), speed=speeds, speeding_up=accelerations)
def test_floor_from_rest_against_steps_of_time(length, speed, speeding_up):
    step = 5e-4
    times = np.arange(0, length / speed + speed / speeding_up + 1, step)
    moved = np.cumsum(np.minimum(speeding_up * (times + step / 2), speed)) * step
    clear = times[np.argmax(moved >= length)] + step
    floor = loading.loading_floor_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(speeding_up, "m/s**2")).m_as("s")
    assert floor == pytest.approx(clear, abs=2 * step)


@given(length=st.floats(0.5, 6), speeding_up=accelerations, factor=st.floats(1, 5))
def test_above_its_end_the_floor_knows_no_speed(length, speeding_up, factor):
    s0, a = Q(length, "m"), Q(speeding_up, "m/s**2")
    end = loading.speed_where_floor_ends(s0, a)
    assert end.m_as("m/s") ** 2 / (2 * speeding_up) == pytest.approx(length)  # the way to reach it is the whole length
    at_end = loading.loading_floor_from_rest(s0, end, a).m_as("s")
    assert at_end == pytest.approx(math.sqrt(2 * length / speeding_up))
    assert loading.loading_floor_from_rest(s0, factor * end, a).m_as("s") == pytest.approx(at_end, rel=1e-12)
    assert loading.loading_floor_from_rest(s0, end / (1.01 * factor), a).m_as("s") > at_end


@pytest.mark.parametrize(("speeding_up", "pph"), [(1, 1700), (3, 3000)], ids=["own arithmetic: 1", "own arithmetic: 3"])
def test_floor_in_round_numbers(speeding_up, pph):
    for speed in (3.6, 6, 12):  # however fast the rope
        floor = loading.loading_floor_from_rest(Q(2.1, "m"), Q(speed, "m/s"), Q(speeding_up, "m/s**2"))
        assert loading.loading_capacity(floor).m_as("pph") == pytest.approx(pph, rel=0.04)


@given(gap=st.floats(1, 6), reaction=st.floats(0, 3), slowing=accelerations)
def test_a_stopping_gap_makes_capacity_peak(gap, reaction, slowing):
    from scipy.optimize import minimize_scalar

    s0, tr, a = Q(gap, "m"), Q(reaction, "s"), Q(slowing, "m/s**2")

    def capacity(speed):
        v = Q(speed, "m/s")
        return hourly_capacity(v, loading.stopping_gap_spacing(s0, v, tr, a)).m_as("pph")

    found = minimize_scalar(
        lambda speed: -capacity(speed), bounds=(0.05, 30), method="bounded", options={"xatol": 1e-7}
    )
    peak = loading.speed_at_capacity_peak(s0, a).m_as("m/s")
    assert found.x == pytest.approx(peak, rel=1e-3)  # and the reaction time does not move it
    assert capacity(0.8 * peak) < capacity(peak)
    assert capacity(1.25 * peak) < capacity(peak)


@pytest.mark.parametrize(("mean", "floor", "seed"), [(2.0, 2.0, 1), (3.0, 1.5, 2), (1.0, 4.0, 3)])
def test_exponential_times_over_a_floor_against_draws(mean, floor, seed):
    draws = np.maximum(np.random.default_rng(seed).exponential(mean, 400_000), floor)
    found = loading.mean_loading_time_exponential(mean_time=Q(mean, "s"), floor=Q(floor, "s")).m_as("s")
    assert abs(found - draws.mean()) < 4 * draws.std(ddof=1) / math.sqrt(draws.size)


@pytest.mark.parametrize(("mean", "floor", "variation", "seed"), [(2.0, 2.0, 0.5, 4), (3.0, 1.5, 1.0, 5)])
def test_lognormal_times_over_a_floor_against_draws(mean, floor, variation, seed):
    sigma = math.sqrt(math.log(1 + variation**2))
    normal = np.random.default_rng(seed).normal(math.log(mean) - sigma**2 / 2, sigma, 400_000)
    draws = np.maximum(np.exp(normal), floor)
    found = loading.mean_loading_time_lognormal(
        Q(variation, ""), mean_time=Q(mean, "s"), floor=Q(floor, "s")
    ).m_as("s")  # fmt: skip
    assert abs(found - draws.mean()) < 4 * draws.std(ddof=1) / math.sqrt(draws.size)


def test_own_arithmetic_exponential_times_over_a_floor_as_long_as_their_mean():
    mean = loading.mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(2, "s"))
    assert mean.m_as("s") == pytest.approx(2 + 2 / math.e, rel=1e-12)


def test_own_arithmetic_a_random_loading_time_costs_a_sixth():
    mean = loading.mean_loading_time_lognormal(Q(0.5, ""), mean_time=Q(2, "s"), floor=Q(2, "s"))
    assert loading.loading_capacity(mean).m_as("pph") == pytest.approx(1517, abs=0.5)  # and not 1,800


@given(mean=st.floats(0.5, 8), floor=st.floats(0.1, 8), variation=st.floats(0.05, 1.5))
def test_chance_never_shortens_the_mean(mean, floor, variation):
    for found in (
        loading.mean_loading_time_exponential(mean_time=Q(mean, "s"), floor=Q(floor, "s")),
        loading.mean_loading_time_lognormal(Q(variation, ""), mean_time=Q(mean, "s"), floor=Q(floor, "s")),
    ):
        assert max(mean, floor) * (1 - 1e-9) <= found.m_as("s") <= mean + floor


def test_without_a_floor_the_mean_stays():
    assert loading.mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(0, "s")).m_as("s") == 2


STARTS = [  # seconds, persons together, carriers, what stands beside the level, why
    (1.18, 1, None, "nobody loads so", "From rest it takes 1.2 s or more"),  # sqrt(2 x 2.1 m / 3 m/s2) is 1.183 s
    (1.19, 1, None, None, None),
    (1.18, 2, None, "nobody loads so", "From rest it takes 1.2 s or more"),
    (1.19, 2, None, None, None),
    (3.9, 3, None, "nobody loads so", "A group takes 4.0 s or more"),
    (3.9, 2, True, "nobody loads so", "A group takes 4.0 s or more"),
    (4.0, 8, True, None, None),
    (2.9, 1, True, "nobody loads so", "asks 3.0 s or more of a towing outfit for one: 34 Pa. Code s. 7.466"),
    (3.0, 1, True, None, None),
    (0.5, 8, False, "nobody loads so", "A start every 0.5 s at one place"),
]


@pytest.mark.parametrize(("seconds", "together", "carriers", "short", "why"), STARTS)
def test_a_capacity_says_where_nobody_loads_so(seconds, together, carriers, short, why):
    capacity = loading.intended_capacity(
        hourly_capacity_from_interval(Q(seconds, "s"), Q(together, "person")),
        Q(seconds / 60, "minute"),
        Q(together, "person"),
        carriers=carriers,
    )
    assert (capacity.remark and capacity.remark.short) == short
    assert (why or "") in (capacity.remark.sentence if capacity.remark else "")
    assert str(capacity).endswith(f"(ideal; {short})" if short else "(ideal)")
    assert capacity.label == "ideal", "a remark keeps no two capacities of one level apart"


MESSAGES = [
    (
        lambda: loading.intended_capacity(Q(1800, "pph"), 2),
        "remark_on_loading: interval must be a time, but got 2. Write Q(2.0, 's').",
        UnitError,
    ),
    (
        lambda: loading.mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(-1, "s")),
        "mean_loading_time_exponential: floor must be zero or more, but got -1 s. Write for example Q(2.0, 's').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
