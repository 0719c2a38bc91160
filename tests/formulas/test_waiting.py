"""The waiting line against lines that are run, rider by rider, and against sums by hand."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, mean_loading_time_lognormal, persons_from_flow, show
from liftcalc.formulas import waiting

TOW = [(0.45, 2.6, 0.30), (0.30, 3.6, 0.40), (0.25, 3.0, 0.40)]  # share, mean readiness [s], variation of a class
FLOOR = 2.0  # s: headway of the demo tow
RUNS, RIDERS, WARM_UP = 60, 6000, 2000


def lognormal(generator, mean, variation, size):
    sigma = math.sqrt(math.log(1 + variation**2))
    return generator.lognormal(math.log(mean) - sigma**2 / 2, sigma, size)


def waits_of_a_line(generator, gap, loading_times):
    """Return the mean wait of each run: T = max(A, T of the rider before) + S, which is Lindley's recursion.

    Written out, T_i is the largest of A_j + S_j + ... + S_i over all riders j up to i.
    """
    arrivals = np.cumsum(generator.exponential(gap, loading_times.shape), axis=1)
    done = np.cumsum(loading_times, axis=1)
    away = done + np.maximum.accumulate(arrivals - done + loading_times, axis=1)
    return (away - loading_times - arrivals)[:, WARM_UP:].mean(axis=1)


def agrees(found, runs):
    """Check a mean against independent runs."""
    error = runs.std(ddof=1) / math.sqrt(runs.size)
    assert error < 0.03 * found, "the runs say enough"
    assert abs(found - runs.mean()) < 4 * error


def moments(mean, variation, floor=FLOOR):
    times = {"mean_time": Q(mean, "s"), "floor": Q(floor, "s")}
    first = mean_loading_time_lognormal(Q(variation, ""), **times)
    return first.m_as("s"), waiting.second_moment_lognormal(Q(variation, ""), **times).m_as("s**2")


def test_own_engineering_figure_the_demo_tow_at_900_an_hour():
    first, second = (sum(share * moments(mean, variation)[which] for share, mean, variation in TOW) for which in (0, 1))
    wait = waiting.mean_wait(Q(900, "pph"), Q(first, "s"), Q(second, "s**2")).m_as("s")
    assert wait == pytest.approx(5.6, abs=0.05)
    assert waiting.mean_wait_constant(Q(900, "pph"), Q(3, "s")).m_as("s") == pytest.approx(4.5, rel=1e-12)
    generator, shape = np.random.default_rng(11), (RUNS, RIDERS)
    means, spreads = (np.array(each) for each in list(zip(*TOW, strict=True))[1:])
    kinds = generator.choice(3, size=shape, p=[share for share, _, _ in TOW])
    sigma = np.sqrt(np.log1p(spreads**2))
    ready = generator.lognormal((np.log(means) - sigma**2 / 2)[kinds], sigma[kinds])
    agrees(wait, waits_of_a_line(generator, 4.0, np.maximum(ready, FLOOR)))


def test_a_tow_whose_riders_are_one_kind_against_a_line_that_is_run():
    first, second = moments(2.0, 0.5)
    generator = np.random.default_rng(12)
    times = np.maximum(lognormal(generator, 2.0, 0.5, (RUNS, RIDERS)), FLOOR)
    assert abs(second - (times**2).mean()) < 4 * (times**2).std() / math.sqrt(times.size)
    wait = waiting.mean_wait(Q(900, "pph"), Q(first, "s"), Q(second, "s**2")).m_as("s")
    agrees(wait, waits_of_a_line(generator, 4.0, times))


def test_exponential_and_constant_times_against_lines_that_are_run():
    generator, shape, times = np.random.default_rng(13), (2 * RUNS, RIDERS), (Q(720, "pph"), Q(3, "s"))
    constant = waits_of_a_line(generator, 5.0, np.full(shape, 3.0))
    agrees(waiting.mean_wait_constant(*times).m_as("s"), constant)
    agrees(
        waiting.mean_wait_exponential(*times).m_as("s"),
        waits_of_a_line(generator, 5.0, generator.exponential(3.0, shape)),
    )


def test_carriers_that_come_by_the_clock_are_not_a_constant_loading_time():
    rate, interval = Q(450, "pph"), Q(6, "s")
    by_the_clock = waiting.mean_wait_for_carrier(rate, interval).m_as("s")
    assert by_the_clock == pytest.approx(12, rel=1e-12)
    assert waiting.mean_wait_constant(rate, interval).m_as("s") == pytest.approx(9, rel=1e-12)
    assert waiting.mean_wait_for_carrier(Q(1e-6, "pph"), interval).m_as("s") == pytest.approx(3)  # nobody else there
    generator = np.random.default_rng(14)
    arrivals = np.cumsum(generator.exponential(8.0, (2 * RUNS, RIDERS)), axis=1)
    numbers = np.arange(RIDERS)  # of the first carrier that can be theirs, and of the one that is
    carriers = numbers + np.maximum.accumulate(np.ceil(arrivals / 6) - numbers, axis=1)
    agrees(by_the_clock, (6 * carriers - arrivals)[:, WARM_UP:].mean(axis=1))


@given(rate=st.floats(1, 1100), time=st.floats(0.5, 3.2), variation=st.floats(0, 2))
def test_one_law_holds_the_others(rate, time, variation):
    r, t = Q(rate, "pph"), Q(time, "s")

    def wait(c):
        return waiting.mean_wait(r, t, waiting.second_moment_from_variation(t, Q(c, ""))).m_as("s")

    constant, exponential = waiting.mean_wait_constant(r, t).m_as("s"), waiting.mean_wait_exponential(r, t).m_as("s")
    assert wait(0) == pytest.approx(constant)
    assert wait(1) == pytest.approx(exponential)
    assert exponential == pytest.approx(2 * constant)
    assert wait(variation) == pytest.approx(constant * (1 + variation**2))
    assert waiting.mean_wait_for_carrier(r, t).m_as("s") == pytest.approx(constant + time / 2)


@given(mean=st.floats(0.5, 8), variation=st.floats(0.05, 1.5), floor=st.floats(0.1, 8))
def test_second_moments_with_a_floor(mean, variation, floor):
    first, second = moments(mean, variation, floor)
    assert second >= first**2 * (1 - 1e-9)
    free = waiting.second_moment_from_variation(Q(mean, "s"), Q(variation, "")).m_as("s**2")
    assert max(free, floor**2) * (1 - 1e-9) <= second <= free + floor**2
    assert moments(mean, variation, 1e-9)[1] == pytest.approx(free)


def test_own_arithmetic_sixty_people_at_a_double_every_six_seconds():
    wait = waiting.wait_from_line(Q(60, "person"), Q(1200, "pph"))
    assert wait.m_as("minute") == pytest.approx(3, rel=1e-12)  # and not 6: two go with each chair
    assert persons_from_flow(Q(1200, "pph"), wait).m_as("person") == pytest.approx(60, rel=1e-12)
    assert waiting.wait_from_line(Q(0, "person"), Q(1200, "pph")).m_as("s") == 0


def test_own_arithmetic_a_line_that_grows_and_one_that_empties():
    capacity = Q(1200, "pph")
    assert waiting.line_growth(arrival_rate=Q(1500, "pph"), hourly_capacity=capacity).m_as("pph") == 300
    assert show(waiting.line_growth(arrival_rate=Q(900, "pph"), hourly_capacity=capacity)) == "-300 pph"


TOO_MANY = (
    "1,500 persons an hour join the line and 1,200 can get on. The line grows by 300 persons an hour, and no mean wait "
    "exists. Write a smaller arrival_rate, or ask line_growth how long it gets in an hour."
)
MESSAGES = [
    *(
        (lambda formula=formula: formula(Q(1500, "pph"), Q(3, "s")), f"{formula.__name__}: {TOO_MANY}")
        for formula in (
            waiting.mean_wait_exponential, waiting.mean_wait_constant, waiting.mean_wait_for_carrier,
        )
    ),
    (
        lambda: waiting.mean_wait(Q([900, 1500, 1300], "pph"), Q([3, 3, 3], "s"), Q(10, "s**2")),
        f"mean_wait: {TOO_MANY}",
    ),
    (
        lambda: waiting.mean_wait_constant(Q(1200, "pph"), Q(3, "s")),
        "mean_wait_constant: 1,200 persons an hour join the line and 1,200 can get on. The line grows without end, by "
        "chance alone, and no mean wait exists. Write a smaller arrival_rate, or ask line_growth how "
        "long it gets in an hour.",
    ),
    (
        lambda: waiting.mean_wait(Q(900, "pph"), Q(3, "s"), Q(3, "s**2")),
        "mean_wait: second_moment of 3.00 s² is less than the square of a loading_time of 3.00 s, and no times are so. "
        "Square each time first, and then take the mean, or ask second_moment_from_variation.",
    ),
    (
        lambda: waiting.mean_wait(Q(900, "pph"), Q(3, "s"), Q(0, "s**2")),
        "mean_wait: second_moment must be greater than zero, but got 0 s^2. Write for example Q(6.0, 's**2').",
    ),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
