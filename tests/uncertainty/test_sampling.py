"""Doubts carried through a formula by draws.

Sampling is held to four of its own standard errors.
"""

import math
from statistics import NormalDist

import numpy as np
import pytest
from example_readings import LENGTH, READINGS, SAME, SPACING, SPEED, metres, within_four
from example_tow import IDLE, POWER
from messages import SOMETHING, refuses, table_of_messages
from scipy import integrate, optimize, stats

from liftcalc import Q, count_simulated_riders, hourly_capacity, persons_on_line, reversible_capacity
from liftcalc.formulas.motor import motor_capacity
from liftcalc.uncertainty import (
    Estimate,
    UncertaintyError,
    by_first_order,
    by_sampling,
    estimate_from_half_width,
    estimate_from_repeats,
    evaluate,
    expand,
    own_formula,
)


def test_sampling_meets_first_order_where_doubts_are_small():
    readings = {"line_speed": Estimate(Q(3.4, "m/s"), Q(0.004, "m/s")), "spacing": metres(6.8, 0.005)}
    for linked in (0.0, 0.8, -0.6):
        matrix = [[1, linked], [linked, 1]]
        first = by_first_order(hourly_capacity, readings, matrix)
        sampled = by_sampling(hourly_capacity, readings, seed=9, correlation=matrix)
        assert within_four(sampled, "standard_uncertainty", first.standard_uncertainty.m_as("pph"), "pph")
        assert within_four(sampled, "mean", first.value.m_as("pph"), "pph")
        half = expand(first).expanded.m_as("pph")
        assert within_four(sampled, "interval", [1800 - half, 1800 + half], "pph")


def test_a_ratio_of_lognormals_has_a_closed_form():
    # exp(a - b) of two normals is lognormal, whose mean, spread and both intervals are known
    ratio = own_formula(lambda a, b: np.exp(a - b), returns="", a="", b="")
    readings = {"a": Estimate(Q(1.0, ""), Q(0.3, "")), "b": Estimate(Q(0.4, ""), Q(0.4, ""))}
    sampled = by_sampling(ratio, readings, seed=10, draws=400_000, probability=0.9)
    centre, sigma = 0.6, 0.5
    assert within_four(sampled, "mean", math.exp(centre + sigma**2 / 2), "")
    spread = math.exp(centre + sigma**2 / 2) * math.sqrt(math.exp(sigma**2) - 1)
    assert within_four(sampled, "standard_uncertainty", spread, "")
    exact = stats.lognorm(sigma, scale=math.exp(centre))
    assert within_four(sampled, "interval", exact.ppf([0.05, 0.95]), "")
    below = optimize.minimize_scalar(
        lambda part: exact.ppf(part + 0.9) - exact.ppf(part), bounds=(1e-9, 0.1 - 1e-9), method="bounded"
    ).x
    assert within_four(sampled, "shortest_interval", [exact.ppf(below), exact.ppf(below + 0.9)], "")
    low, high = sampled.shortest_interval.magnitude
    assert high - low < np.diff(sampled.interval.magnitude)[0]
    assert np.mean((sampled.samples.magnitude >= low) & (sampled.samples.magnitude <= high)) == pytest.approx(
        0.9, abs=1e-4
    )


def test_the_logarithm_of_a_capacity_has_a_closed_form():
    # var(log(v/s)) = var(log v) + var(log s), each an integral over its rectangle
    speed = estimate_from_half_width(Q(3.4, "m/s"), Q(1.0, "m/s"))
    spacing = estimate_from_half_width(Q(6.8, "m"), Q(3.0, "m"))
    logs = np.log(by_sampling(hourly_capacity, {"line_speed": speed, "spacing": spacing}, seed=11).samples.magnitude)

    def moment(low, high, power):
        return integrate.quad(lambda x: math.log(x) ** power, low, high)[0] / (high - low)

    exact = sum(moment(a, b, 2) - moment(a, b, 1) ** 2 for a, b in ((2.4, 4.4), (3.8, 9.8)))
    away = (logs - logs.mean()) ** 2
    error = math.sqrt((np.mean(away**2) - np.mean(away) ** 2) / logs.size)
    assert abs(logs.var() - exact) < 4 * error


def test_a_wide_spacing_raises_the_mean_capacity():
    # the mean of v/s lies above v over the mean of s: for a rectangle by log(b/a)/(b - a)
    spacing = estimate_from_half_width(Q(6.8, "m"), Q(3.0, "m"))
    sampled = by_sampling(hourly_capacity, {"line_speed": Q(3.4, "m/s"), "spacing": spacing}, seed=12)
    assert within_four(sampled, "mean", 3600 * 3.4 * math.log(9.8 / 3.8) / 6.0, "pph")
    assert sampled.mean.m_as("pph") > 1850


def test_the_unit_of_a_reading_does_not_matter_to_sampling():
    turned = {"line_speed": SPEED.to("mph"), "spacing": SPACING.to("ft")}
    one = by_sampling(hourly_capacity, READINGS, seed=13, draws=5000)
    other = by_sampling(hourly_capacity, turned, seed=13, draws=5000)
    np.testing.assert_allclose(one.samples.magnitude, other.samples.magnitude, rtol=1e-12)


def test_the_seed_alone_decides():
    one, again, other = (by_sampling(hourly_capacity, READINGS, seed=seed, draws=5000) for seed in (14, 14, 15))
    np.testing.assert_array_equal(one.samples.magnitude, again.samples.magnitude)
    assert one.mean != other.mean


def test_stated_sampling_errors_are_what_other_seeds_show():
    runs = [by_sampling(hourly_capacity, READINGS, seed=seed, draws=4000) for seed in range(200)]
    for name in ("mean", "standard_uncertainty", "interval", "shortest_interval"):
        found = np.array([np.atleast_1d(getattr(run, name).magnitude) for run in runs]).std(axis=0, ddof=1)
        stated = np.array([np.atleast_1d(run.sampling_errors[name].magnitude) for run in runs]).mean(axis=0)
        limit = 1.35 if name != "shortest_interval" else 1.8  # the latter is judged from ten batches only
        assert np.all((found / stated < limit) & (stated / found < limit)), (name, found, stated)


@pytest.mark.parametrize("probability", [0.95, 0.9001, 0.9999, 0.0004])
def test_the_shortest_interval_is_the_shortest_of_all(probability):
    # JCGM 101:2008, 7.7.4: of all stretches from one result to another that is so many ranks above, the shortest
    sampled = by_sampling(hourly_capacity, READINGS, seed=21, draws=1000, probability=probability)

    def shortest(results):
        ranks = min(math.ceil(probability * len(results)), len(results) - 1)
        stretches = [(high - low, low, high) for low, high in zip(results, results[ranks:], strict=False)]
        return min(stretches)[1:]

    drawn = sampled.samples.m_as("pph")
    assert sampled.shortest_interval.m_as("pph") == pytest.approx(shortest(sorted(drawn)), rel=1e-12)
    ends = np.array([shortest(sorted(drawn[first : first + 100])) for first in range(0, 1000, 100)])
    errors = np.sqrt(((ends - ends.mean(axis=0)) ** 2).sum(axis=0) / 9) / 10 ** (1 / 3)  # of ten times as many draws
    assert sampled.sampling_errors["shortest_interval"].m_as("pph") == pytest.approx(errors, rel=1e-9)


@pytest.mark.parametrize("draws", [1000, 30_000, 300_000])
def test_digits_below_the_sampling_error_are_not_printed(draws):
    readings = {"line_speed": Estimate(Q(3.4, "m/s"), Q(0.02, "m/s")), "spacing": metres(6.8, 0.06)}
    sampled = by_sampling(hourly_capacity, readings, seed=16, draws=draws)
    for name in ("mean", "standard_uncertainty", "interval", "shortest_interval"):
        error = np.max(sampled.sampling_errors[name].m_as("pph"))
        for text in sampled.write(name).removesuffix(" pph").split(" to "):
            zeros = len(text) - len(text.rstrip("0")) if "." not in text else -len(text.partition(".")[2])
            assert 10**zeros >= error, (name, text, error)
    assert f"{draws:,} draws, seed 16" in str(sampled)


def test_a_spread_ruled_by_a_few_draws_is_said():
    sampled = by_sampling(persons_on_line, {"ridden_length": LENGTH, "spacing": metres(6.8, 2.0)}, seed=1)
    assert not sampled.settled
    assert str(sampled).endswith("a few extreme draws rule mean and spread, so trust the intervals only")
    assert by_sampling(hourly_capacity, READINGS, seed=1).settled


# draws that are left out


def test_impossible_draws_are_left_out_and_counted():
    spacing = metres(1, 0.32)
    sampled = by_sampling(hourly_capacity, {"line_speed": SPEED, "spacing": spacing}, seed=17)
    expected = 200_000 * NormalDist().cdf(-1 / 0.32)
    assert abs(sampled.left_out - expected) < 4 * math.sqrt(expected)
    assert sampled.draws + sampled.left_out == 200_000
    assert sampled.samples.magnitude.min() > 0
    assert f"{sampled.left_out} impossible ones left out" in str(sampled)
    # a formula of one's own has no such check: below zero stays in
    assert by_sampling(SAME, {"x": spacing}, seed=17).left_out == 0


def test_a_reading_that_may_be_zero_still_cannot_be_negative():
    readings = {"ride_time": Q(300, "s"), "dwell_time": Estimate(Q(6, "s"), Q(2.2, "s")),
                "persons_per_carrier": Q(40, "person")}  # fmt: skip
    assert by_sampling(reversible_capacity, readings, seed=18).left_out > 0


def test_stray_draws_of_an_efficiency_are_left_out_and_counted():
    efficiency = Estimate(Q(0.9, ""), Q(0.04, ""), method="invented")
    readings = {"motor_power": POWER, "efficiency": efficiency, "line_speed": Q(3.4, "m/s"), "idle_drag": IDLE}
    sampled = by_sampling(motor_capacity, {**readings, "energy_per_rider": Q(30826, "J")}, seed=7)
    expected = 200_000 * NormalDist().cdf(-0.1 / 0.04)
    assert abs(sampled.left_out - expected) < 4 * math.sqrt(expected)
    most = motor_capacity(POWER, Q(1, ""), Q(3.4, "m/s"), IDLE, Q(30826, "J"))
    assert sampled.samples.max() <= most
    wide = {**readings, "efficiency": Estimate(Q(0.9, ""), Q(0.1, ""), method="invented")}
    refuses(
        lambda: by_sampling(motor_capacity, {**wide, "energy_per_rider": Q(30826, "J")}, seed=7),
        f"by_sampling: 16 % of the draws do not fit motor_capacity: efficiency must be 1 or less, but got {SOMETHING} "
        "Its doubt is too large; take that reading again.",
        UncertaintyError,
    )


def test_ready_made_samples_go_through_untouched():
    generator = np.random.default_rng(19)
    samples = {
        "line_speed": Q(generator.normal(3.4, 0.1, 1000), "m/s"),
        "spacing": Q(generator.normal(22, 1, 1000), "ft"),
    }
    copies = {name: sample.magnitude.copy() for name, sample in samples.items()}
    results = evaluate(hourly_capacity, samples)
    np.testing.assert_allclose(
        results.m_as("pph"), 3600 * copies["line_speed"] / (copies["spacing"] * 0.3048), rtol=1e-12
    )
    for name, copy in copies.items():
        np.testing.assert_array_equal(samples[name].magnitude, copy)


def test_correlated_draws_have_the_correlation_asked_for():
    readings = {"a": Estimate(Q(0, ""), Q(1, "")), "b": Estimate(Q(0, ""), Q(1, "")), "c": Estimate(Q(0, ""), Q(1, ""))}
    matrix = [[1, 0.6, 0], [0.6, 1, 0], [0, 0, 1]]
    product = own_formula(lambda a, b, c: a * b + 0 * c, returns="", a="", b="", c="")
    sampled = by_sampling(
        product, readings, seed=20, correlation=matrix, shapes={"c": "rectangular"}
    )  # the mean of a product is the correlation
    assert within_four(sampled, "mean", 0.6, "")
    assert within_four(sampled, "standard_uncertainty", math.sqrt(1 + 0.36), "")


def test_without_any_doubt_sampling_gives_the_value():
    sampled = by_sampling(hourly_capacity, {"line_speed": Q(3.4, "m/s"), "spacing": Q(6.8, "m")}, seed=1)
    assert sampled.mean.m_as("pph") == pytest.approx(1800)
    assert sampled.standard_uncertainty.magnitude == 0


MESSAGES = [
    (
        lambda: by_sampling(
            hourly_capacity,
            {**READINGS, "persons_per_carrier": Estimate(Q(2, "person"), Q(0.1, "person"))},
            seed=1,
            correlation=[[1, 0.9, 0.9], [0.9, 1, -0.9], [0.9, -0.9, 1]],
        ),
        "by_sampling: these correlations contradict each other: the matrix is not positive semidefinite, its smallest "
        "eigenvalue is -0.8. Two readings that both go with a third cannot go against each other.",
    ),
    (
        lambda: own_formula(lambda a, b: a * b, returns="m", a="m"),
        "own_formula: the function takes a, b, but units came for a. Give one unit for each argument.",
    ),
    (
        lambda: by_sampling(hourly_capacity, READINGS, seed=None),
        "by_sampling: seed must be a whole number, 0 or more, but got None. Write for example seed=1.",
    ),
    (
        lambda: by_sampling(hourly_capacity, READINGS, seed=1, draws=10),
        "by_sampling: draws must be a whole number, 1,000 or more, but got 10. Write for example draws=1000.",
    ),
    (
        lambda: by_sampling(hourly_capacity, READINGS, seed=1, shapes={"ridden_length": "normal"}),
        "by_sampling: a shape came for ridden_length, which has no doubt here. Those with a doubt: "
        "line_speed, spacing.",
    ),
    (
        lambda: by_sampling(
            hourly_capacity, READINGS, seed=1, shapes={"spacing": "rectangular"}, correlation=[[1, 0.5], [0.5, 1]]
        ),
        "by_sampling: spacing is correlated with another reading, but its shape is rectangular. Correlated draws are "
        "normal here: write shapes={'spacing': 'normal'}.",
    ),
    (
        lambda: by_sampling(SAME, {"x": estimate_from_repeats(Q([6.8, 6.9, 7.1], "m"))}, seed=1),
        "by_sampling: x has 2 degrees of freedom; a t shape has a spread of finite size only above 2. Take "
        "four readings "
        "or more, or write shapes={'x': 'normal'} and say so.",
    ),
    (
        lambda: by_sampling(hourly_capacity, {"line_speed": SPEED, "spacing": metres(1, 0.6, "pacing")}, seed=1),
        "by_sampling: 4.8 % of the draws of spacing are not greater than zero, which no reading can be (pacing: "
        "1.0 ± 0.6 m (one standard uncertainty)). Its doubt is too large; take that reading again.",
    ),
    (
        lambda: by_sampling(
            own_formula(lambda x: np.sqrt(x), returns="", x="m"), {"x": metres(0.1, 1)}, seed=1, draws=1000
        ),
        "by_sampling: the formula gives no finite number for some draws. The doubt of a reading is too large.",
    ),
    (
        lambda: evaluate(
            count_simulated_riders,
            {"line_speed": Q([3.4, 3.5], "m/s"), "spacing": Q(6.8, "m"), "counting_time": Q(60, "s")},
        ),
        "evaluate: count_simulated_riders does not give one result a draw. Sampling needs a formula that "
        "works on arrays, "
        "number by number.",
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)
