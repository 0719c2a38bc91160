"""Laws of doubts: estimates, agreement, propagation by two routes, budgets, words and messages.

Sampling is held to four of its own standard errors.
"""

import itertools
import math
import re
import subprocess
import sys
from statistics import NormalDist

import numpy as np
import pytest
import uncertainties
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize, stats

from liftcalc import (
    Q,
    UnitError,
    count_simulated_riders,
    headway,
    hourly_capacity,
    most_persons_on_line,
    persons_on_line,
    reversible_capacity,
    show,
    vertical_rise,
)
from liftcalc.tables import Table
from liftcalc.uncertainty import (
    Estimate,
    UncertaintyError,
    by_first_order,
    by_sampling,
    combine,
    correlation_of_repeats,
    correlation_of_results,
    coverage_factor,
    effective_degrees_of_freedom,
    estimate_from_half_width,
    estimate_from_repeats,
    estimate_from_resolution,
    estimate_from_statement,
    evaluate,
    expand,
    if_measured_better,
    normalised_error,
    own_formula,
    reading_to_take_again,
    show_with_doubt,
    uncertainty_budget,
)

SPEED = Estimate(Q(3.4, "m/s"), Q(0.06, "m/s"), method="poles and stopwatch")
SPACING = Estimate(Q(6.8, "m"), Q(0.3, "m"), method="photo")
LENGTH = Estimate(Q(150, "m"), Q(0.6, "m"), method="tape")
READINGS = {"line_speed": SPEED, "spacing": SPACING}
SAME = own_formula(lambda x: 1.0 * x, returns="m", x="m")


def metres(value, doubt, method="", **more):
    """Return an estimate of a length."""
    return Estimate(Q(value, "m"), Q(doubt, "m"), method=method, **more)


def within_four(sampled, name, expected, unit):
    """Return whether a sampled number is within four standard errors of what it should be."""
    found, error = getattr(sampled, name).m_as(unit), sampled.sampling_errors[name].m_as(unit)
    return bool(np.all(np.abs(found - np.asarray(expected)) <= 4 * error)) and bool(np.all(error > 0))


# ---- one reading


def test_repeats_give_mean_spread_and_degrees_of_freedom():
    numbers = [6.8, 7.1, 6.5, 6.9, 6.7]
    estimate = estimate_from_repeats(Q(numbers, "m"), "photo")
    assert estimate.value.m_as("m") == pytest.approx(6.8, rel=1e-12)
    by_hand = math.sqrt(sum((number - 6.8) ** 2 for number in numbers) / 4 / 5)
    assert estimate.standard_uncertainty.m_as("m") == pytest.approx(by_hand, rel=1e-12)
    assert (estimate.degrees_of_freedom, estimate.shape, estimate.method) == (4, "t", "photo")


def test_a_display_adds_its_step_and_more_readings_do_not_take_it_away():
    same = estimate_from_repeats(Q([8, 8, 8], "mph"), display_step=Q(1, "mph"))
    assert same.standard_uncertainty.m_as("mph") == pytest.approx(1 / math.sqrt(12))
    assert math.isinf(same.degrees_of_freedom)
    assert same.shape == "rectangular"
    many = estimate_from_repeats(Q([8.0, 9.0] * 5000, "mph"), display_step=Q(1, "mph"))
    assert many.standard_uncertainty.m_as("mph") > 1 / math.sqrt(12)
    few = estimate_from_repeats(Q([8.0, 9.0, 8.0], "mph"), display_step=Q(1, "mph"))
    plain = estimate_from_repeats(Q([8.0, 9.0, 8.0], "mph")).standard_uncertainty.m_as("mph")
    assert few.standard_uncertainty.m_as("mph") == pytest.approx(math.hypot(plain, 1 / math.sqrt(12)))
    assert few.degrees_of_freedom == pytest.approx(
        effective_degrees_of_freedom([plain, 1 / math.sqrt(12)], [2, math.inf])
    )


def test_what_is_known_of_an_instrument():
    value, width = Q(3.4, "m/s"), Q(0.1, "m/s")
    rectangle = estimate_from_half_width(value, width)
    triangle = estimate_from_half_width(value, width, shape="triangular")
    display = estimate_from_resolution(value, Q(0.2, "m/s"))
    maker = estimate_from_statement(value, width, coverage_factor=2)
    found = [one.standard_uncertainty.m_as("m/s") for one in (rectangle, triangle, display, maker)]
    assert found == pytest.approx([0.1 / math.sqrt(3), 0.1 / math.sqrt(6), 0.1 / math.sqrt(3), 0.05])
    assert [one.shape for one in (rectangle, triangle, display, maker)] == [
        "rectangular", "triangular", "rectangular", "normal",
    ]  # fmt: skip
    assert all(math.isinf(one.degrees_of_freedom) for one in (rectangle, triangle, display, maker))
    assert estimate_from_statement(value, width, degrees_of_freedom=9).shape == "t"


@pytest.mark.parametrize(("shape", "half_width"), [("rectangular", math.sqrt(3)), ("triangular", math.sqrt(6))])
def test_a_shape_is_drawn_with_its_own_ends_and_spread(shape, half_width):
    sampled = by_sampling(SAME, {"x": metres(10, 0.5, shape=shape)}, seed=3)
    assert within_four(sampled, "standard_uncertainty", 0.5, "m")
    assert within_four(sampled, "mean", 10, "m")
    least, most = sampled.samples.m_as("m").min(), sampled.samples.m_as("m").max()
    assert 10 - 0.5 * half_width <= least < 10 - 0.48 * half_width
    assert 10 + 0.48 * half_width < most <= 10 + 0.5 * half_width
    end = {"rectangular": 0.95, "triangular": 1 - math.sqrt(0.05)}[shape]
    ends = [10 - 0.5 * half_width * end, 10 + 0.5 * half_width * end]
    assert within_four(sampled, "interval", ends, "m")


def test_few_readings_are_drawn_from_a_t_shape():
    estimate = estimate_from_repeats(Q([6.8, 7.1, 6.5, 6.9, 6.7, 6.6, 7.0], "m"))
    sampled = by_sampling(SAME, {"x": estimate}, seed=4)
    u = estimate.standard_uncertainty.m_as("m")
    assert within_four(sampled, "standard_uncertainty", u * math.sqrt(6 / 4), "m")
    k = coverage_factor(0.95, 6)
    middle = estimate.value.m_as("m")
    assert within_four(sampled, "interval", [middle - k * u, middle + k * u], "m")


# ---- several methods


estimates_of_a_length = st.lists(st.tuples(st.floats(1, 500), st.floats(0.01, 50)), min_size=2, max_size=7)


def named(pairs):
    """Return estimates with a method of its own for each pair of value and doubt."""
    return [metres(value, doubt, f"method {place}") for place, (value, doubt) in enumerate(pairs)]


@given(pairs=estimates_of_a_length)
def test_the_weighted_mean_lies_within_the_readings(pairs):
    combined = combine(named(pairs))
    values = [value for value, _ in pairs]
    assert min(values) <= combined.value.m_as("m") <= max(values)
    assert sum(combined.weights.values()) == pytest.approx(1)


@given(pairs=estimates_of_a_length, more=st.tuples(st.floats(1, 500), st.floats(0.01, 50)))
def test_more_readings_never_raise_the_doubt_before_widening(pairs, more):
    before = combine(named(pairs)).doubt_if_agreed.m_as("m")
    after = combine(named([*pairs, more])).doubt_if_agreed.m_as("m")
    assert after <= before * (1 + 1e-12)
    assert before <= min(doubt for _, doubt in pairs) * (1 + 1e-12)


@given(value=st.floats(0.1, 500), doubts=st.lists(st.floats(0.01, 50), min_size=2, max_size=7))
def test_identical_readings_have_a_birge_ratio_of_nil(value, doubts):
    combined = combine(named([(value, doubt) for doubt in doubts]))
    assert combined.birge_ratio == 0
    assert combined.agrees
    assert combined.value.m_as("m") == value


@given(pairs=estimates_of_a_length)
def test_order_and_unit_of_the_methods_do_not_matter(pairs):
    estimates = named(pairs)
    one, other = combine(estimates), combine([estimate.to("ft") for estimate in reversed(estimates)])
    assert other.value.m_as("m") == pytest.approx(one.value.m_as("m"), rel=1e-9)
    assert other.standard_uncertainty.m_as("m") == pytest.approx(one.standard_uncertainty.m_as("m"), rel=1e-6)
    assert other.chi_square == pytest.approx(one.chi_square, rel=1e-6, abs=1e-12)
    assert other.agrees == one.agrees


def test_equal_readings_share_equally():
    combined = combine(named([(6.8, 0.4)] * 4))
    assert combined.standard_uncertainty.m_as("m") == pytest.approx(0.2)
    assert list(combined.weights.values()) == pytest.approx([0.25] * 4)


def test_weights_mean_and_chi_square_by_hand():
    combined = combine([metres(6.8, 0.1, "tape"), metres(7.0, 0.2, "photo")])
    assert combined.value.m_as("m") == pytest.approx((4 * 6.8 + 7.0) / 5)
    assert combined.standard_uncertainty.m_as("m") == pytest.approx(1 / math.sqrt(125))
    assert combined.chi_square == pytest.approx(0.2**2 / (0.1**2 + 0.2**2))
    assert combined.probability == pytest.approx(stats.chi2.sf(0.8, 1))
    assert combined.pairs[0].normalised_error == pytest.approx(-0.2 / (2 * math.sqrt(0.05)))
    assert combined.pairs[0].agrees


def test_the_test_of_agreement_is_as_strict_as_it_says():
    # honest methods are said to disagree one time in twenty
    generator = np.random.default_rng(5)
    doubts = np.array([0.1, 0.2, 0.4])
    trials = 600
    alarms = sum(
        not combine(named(zip(generator.normal(6.8, doubts), doubts, strict=True))).agrees for _ in range(trials)
    )
    assert abs(alarms - 0.05 * trials) < 4 * math.sqrt(trials * 0.05 * 0.95)


def test_the_doubt_of_the_mean_is_what_repeated_campaigns_show():
    generator = np.random.default_rng(6)
    doubts = np.array([0.1, 0.2, 0.4])
    combined = [combine(named(zip(generator.normal(6.8, doubts), doubts, strict=True))) for _ in range(600)]
    means = np.array([one.value.m_as("m") for one in combined])
    claimed = combined[0].doubt_if_agreed.m_as("m")
    assert abs(means.std(ddof=1) - claimed) < 4 * claimed / math.sqrt(2 * 600)


def test_methods_that_disagree_are_widened_and_the_odd_one_is_named():
    estimates = [
        metres(6.8, 0.1, "tape"),
        metres(6.9, 0.1, "photo"),
        metres(6.85, 0.1, "pacing"),
        metres(8, 0.1, "map"),
    ]
    combined = combine(estimates)
    assert not combined.agrees
    assert combined.odd_one == "map"
    assert combined.birge_ratio == pytest.approx(math.sqrt(combined.chi_square / 3))
    assert combined.standard_uncertainty.magnitude == pytest.approx(
        combined.birge_ratio * combined.doubt_if_agreed.magnitude
    )
    left = {one.method: combine([e for e in estimates if e is not one]).chi_square for one in estimates}
    assert min(left, key=left.get) == combined.odd_one
    assert combined.sentence == (
        "The four methods disagree: chi-square 99.7 with 3 degrees of freedom, probability less than 0.1 %. "
        "The doubt of "
        "the mean is widened 5.8 times, which mends nothing. 'map' is the odd one: without it chi-square "
        "falls from 99.7 "
        "to 0.5. Take it again."
    )
    assert "they disagree: widened 5.8 times" in combined.estimate.method
    assert [pair.agrees for pair in combined.pairs] == [True, True, False, True, False, False]


def test_with_two_methods_nobody_can_say_which_is_odd():
    combined = combine([metres(150, 0.5, "tape"), metres(160, 1, "map")])
    assert combined.odd_one is None
    assert combined.sentence.endswith(
        "With two methods nobody can say which of them is odd. Take both again, or measure in a third way."
    )
    # the widened doubt of two equal ones is half their difference
    even = combine([metres(150, 0.5, "tape"), metres(160, 0.5, "map")])
    assert even.standard_uncertainty.m_as("m") == pytest.approx(5)


def test_a_tie_and_a_second_suspect_are_said():
    tie = combine([metres(1, 0.1, "first"), metres(2, 0.1, "second"), metres(3, 0.1, "third")])
    assert tie.odd_one is None
    assert "without 'first' or without 'third' the rest would agree equally well" in tie.sentence
    suspect = combine([metres(0.0, 1, "first"), metres(2.4, 1, "second"), metres(4.9, 1, "third")])
    assert suspect.odd_one == "third"
    assert suspect.sentence.endswith("Without 'first' the rest would agree too, so look at both.")
    worse = combine([metres(0, 0.1, "first"), metres(2, 0.1, "second"), metres(7, 0.1, "third")])
    assert worse.sentence.endswith("Take it again. The rest disagree without it as well.")


REST = [  # values with a doubt of 1 m each; far from them stands one more; whether the others disagree without it
    # a chi-square is surpassed one time in twenty at 3.841 with one degree of freedom, at 5.991 with two (from tables)
    ((0.0, 2.74), False),  # chi-square 3.75
    ((0.0, 2.81), True),  # 3.95
    ((0.0, 0.0, 2.97), False),  # 5.88
    ((0.0, 0.0, 3.03), True),  # 6.12
]


@pytest.mark.parametrize(("values", "disagree"), REST)
def test_the_rest_have_one_method_fewer(values, disagree):
    combined = combine(named([*((value, 1) for value in values), (40.0, 1)]))
    assert combined.odd_one == list(combined.weights)[-1]
    assert combined.sentence.endswith("The rest disagree without it as well." if disagree else "Take it again.")


def test_agreement_with_a_coarse_method_means_little():
    combined = combine([metres(150, 0.5, "tape"), metres(160, 20, "map")])
    assert combined.agrees
    assert combined.sentence == (
        "The two methods agree: chi-square 0.25 with 1 degree of freedom, probability 62 %. That 'map' agrees means "
        "little: its doubt is 40 times that of 'tape', it would agree with much else, and it carries 0.062 % of "
        "the weight."
    )
    assert "means little" not in combine([metres(150, 0.5, "tape"), metres(150.5, 1, "map")]).sentence
    for times, said in ((2.95, False), (3.05, True)):  # three times as coarse is a tenth of the weight
        coarse = combine([metres(150, 1, "tape"), metres(150, times, "map")])
        assert ("means little" in coarse.sentence) is said
        assert (coarse.weights["map"] <= 0.1) is said


def test_one_method_is_tested_by_nothing():
    combined = combine([LENGTH])
    assert combined.sentence == "One method only, 'tape': nothing tests it."
    assert combined.probability is None
    assert combined.estimate.value == LENGTH.value
    assert combined.estimate.standard_uncertainty.m_as("m") == pytest.approx(0.6)


def test_a_combination_keeps_count_of_what_is_known_of_its_doubt():
    few = combine([metres(6.8, 0.1, "a", degrees_of_freedom=4), metres(6.8, 0.1, "b", degrees_of_freedom=4)])
    assert few.degrees_of_freedom == pytest.approx(8)
    unlike = combine([metres(6.8, 0.1, "a", degrees_of_freedom=4), metres(6.8, 0.2, "b", degrees_of_freedom=9)])
    assert unlike.degrees_of_freedom == pytest.approx(1 / (0.8**2 / 4 + 0.2**2 / 9))
    known = combine([metres(6.8, 0.1, "a"), metres(6.8, 0.1, "b")])
    assert math.isinf(known.degrees_of_freedom)
    assert "two methods agree" in str(few)


def test_a_normalised_error_changes_sign_with_the_order():
    one, other = metres(150, 0.5), metres(155, 2)
    assert normalised_error(one, other) == pytest.approx(-normalised_error(other, one.to("ft")))


# ---- first order


CASES = [
    (hourly_capacity, {"line_speed": (3.4, 0.06), "spacing": (6.8, 0.3), "persons_per_carrier": (2, 0.1)}),
    (reversible_capacity, {"ride_time": (300, 9), "dwell_time": (60, 6), "persons_per_carrier": (40, 1.5)}),
    (persons_on_line, {"ridden_length": (150, 0.6), "spacing": (6.8, 0.3)}),
    (vertical_rise, {"slope_length": (150, 0.6), "grade": (0.2, 0.01)}),
]


def second_opinion(formula, numbers, correlation):
    """Return a formula of correlated numbers as the uncertainties package computes it, by its own derivatives."""
    pairs = [uncertainties.ufloat(*pair) for pair in numbers.values()]
    if correlation is not None:
        pairs = uncertainties.correlated_values_norm(list(numbers.values()), correlation)
    names = list(numbers)
    return uncertainties.wrap(lambda *values: formula.plain(**dict(zip(names, values, strict=True))))(*pairs)


@pytest.mark.parametrize("linked", [0.0, 0.7, -0.4])
@pytest.mark.parametrize(("formula", "numbers"), CASES, ids=[case[0].__name__ for case in CASES])
def test_first_order_against_the_uncertainties_package(formula, numbers, linked):
    readings = {
        name: Estimate(Q(value, formula.units[name]), Q(doubt, formula.units[name]))
        for name, (value, doubt) in numbers.items()
    }
    correlation = np.eye(len(numbers))
    correlation[0, 1] = correlation[1, 0] = linked
    result = by_first_order(formula, readings, correlation)
    other = second_opinion(formula, numbers, correlation if linked else None)
    assert result.value.magnitude == pytest.approx(other.nominal_value, rel=1e-12)
    assert result.standard_uncertainty.magnitude == pytest.approx(other.std_dev, rel=1e-6)


def test_first_order_of_a_ratio_by_hand():
    result = by_first_order(hourly_capacity, READINGS)
    assert result.value.m_as("pph") == pytest.approx(1800)
    relative = math.hypot(0.06 / 3.4, 0.3 / 6.8)
    assert result.standard_uncertainty.m_as("pph") == pytest.approx(1800 * relative, rel=1e-6)
    assert result.sensitivities["line_speed"].m_as("pph/(m/s)") == pytest.approx(1800 / 3.4, rel=1e-6)
    assert result.sensitivities["spacing"].m_as("pph/m") == pytest.approx(-1800 / 6.8, rel=1e-6)
    assert str(result) == "1,800 ± 90 pph (one standard uncertainty)"


@given(
    speed=st.floats(0.5, 6), spacing=st.floats(2, 40), first=st.floats(1e-6, 0.1), second=st.floats(1e-6, 0.1),
    linked=st.floats(-1, 1),
)  # fmt: skip
def test_the_unit_of_a_reading_does_not_matter(speed, spacing, first, second, linked):
    readings = {
        "line_speed": Estimate(Q(speed, "m/s"), Q(speed * first, "m/s")),
        "spacing": metres(spacing, spacing * second),
    }
    turned = {"line_speed": readings["line_speed"].to("mph"), "spacing": readings["spacing"].to("ft")}
    matrix = [[1, linked], [linked, 1]]
    one = by_first_order(hourly_capacity, readings, matrix)
    other = by_first_order(hourly_capacity, turned, matrix)
    assert other.value.magnitude == pytest.approx(one.value.magnitude, rel=1e-12)
    whole = one.value.magnitude * math.hypot(first, second)
    assert other.standard_uncertainty.magnitude == pytest.approx(one.standard_uncertainty.magnitude, abs=1e-4 * whole)
    expected = math.sqrt(max(first**2 + second**2 - 2 * linked * first * second, 0)) * one.value.magnitude
    assert one.standard_uncertainty.magnitude == pytest.approx(expected, abs=1e-3 * whole)


def test_doubts_that_go_together_cancel_in_a_ratio():
    readings = {"line_speed": Estimate(Q(3.4, "m/s"), Q(0.17, "m/s")), "spacing": metres(6.8, 0.34)}
    together, against = [[1, 1], [1, 1]], [[1, -1], [-1, 1]]
    cancelled = by_first_order(hourly_capacity, readings, together)
    assert cancelled.standard_uncertainty.m_as("pph") < 1e-3
    sampled = by_sampling(hourly_capacity, readings, seed=7, correlation=together)
    assert sampled.standard_uncertainty.m_as("pph") == 0
    assert sampled.mean.m_as("pph") == pytest.approx(1800)
    assert "mean 1,800 pph, standard uncertainty 0 pph" in str(sampled)
    doubled = by_first_order(hourly_capacity, readings, against)
    assert doubled.standard_uncertainty.m_as("pph") == pytest.approx(1800 * 0.1, rel=1e-6)


def test_exact_arguments_and_combinations_go_in_as_they_are():
    speed = combine([SPEED, Estimate(Q(7.5, "mph"), Q(0.3, "mph"), method="phone")])
    exact = by_first_order(
        hourly_capacity, {"line_speed": speed, "spacing": SPACING, "persons_per_carrier": Q(2, "person")}
    )
    single = by_first_order(hourly_capacity, {"line_speed": speed.estimate, "spacing": SPACING})
    assert exact.standard_uncertainty.magnitude == pytest.approx(2 * single.standard_uncertainty.magnitude)
    assert list(exact.contributions) == ["line_speed", "spacing"]
    nothing = by_first_order(hourly_capacity, {"line_speed": Q(3.4, "m/s"), "spacing": Q(6.8, "m")})
    assert str(nothing) == "1,800 with no doubt to first order"


def test_degrees_of_freedom_of_a_result():
    few = metres(6.8, 0.3, degrees_of_freedom=4)
    result = by_first_order(hourly_capacity, {"line_speed": SPEED, "spacing": few})
    parts = [part.magnitude for part in result.contributions.values()]
    by_hand = (parts[0] ** 2 + parts[1] ** 2) ** 2 / (parts[1] ** 4 / 4)
    assert result.degrees_of_freedom == pytest.approx(by_hand)
    linked = by_first_order(hourly_capacity, {"line_speed": SPEED, "spacing": few}, [[1, 0.5], [0.5, 1]])
    assert linked.degrees_of_freedom == 4
    assert effective_degrees_of_freedom([1, 0], [7, 2]) == pytest.approx(7)
    assert math.isinf(effective_degrees_of_freedom([0, 0], [7, 2]))
    # whole degrees of freedom stay whole after rounding in the last digits
    assert coverage_factor(0.95, 4 * (1 - 1e-15)) == coverage_factor(0.95, 4)


def test_a_formula_that_jumps_is_left_to_sampling():
    readings = {"ridden_length": LENGTH, "spacing": SPACING}
    with pytest.raises(UncertaintyError, match="A straight line is no picture of it; use by_sampling"):
        by_first_order(most_persons_on_line, readings)
    sampled = by_sampling(most_persons_on_line, readings, seed=8)
    whole = sampled.samples.m_as("person")
    assert np.all(whole == np.round(whole))
    wild = own_formula(lambda x: 1 / x, returns="1/m", x="m")
    with pytest.raises(UncertaintyError, match="bends too much within the doubt of x"):
        by_first_order(wild, {"x": metres(1, 1)})


def test_correlation_of_results_that_share_their_readings():
    readings = {"line_speed": SPEED, "spacing": SPACING}
    flow, time = by_first_order(hourly_capacity, readings), by_first_order(headway, readings)
    assert correlation_of_results(flow, time) == pytest.approx(-1)
    samples = {
        name: Q(np.random.default_rng(place).normal(one.value.magnitude, one.standard_uncertainty.magnitude, 50_000),
                one.value.units)
        for place, (name, one) in enumerate(readings.items())
    }  # fmt: skip
    drawn = np.corrcoef(evaluate(hourly_capacity, samples).magnitude, evaluate(headway, samples).magnitude)[0, 1]
    assert drawn == pytest.approx(-1, abs=0.02)


# ---- sampling


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


# ---- the budget


def budget_of(readings, correlation=None, **more):
    """Return a budget of the hourly capacity."""
    return uncertainty_budget(hourly_capacity, readings, correlation, **more)


@given(
    first=st.floats(0.001, 0.1), second=st.floats(0.001, 0.1), third=st.floats(0.001, 0.1), linked=st.floats(-0.9, 0.9)
)
def test_shares_add_up_and_halving_is_halving(first, second, third, linked):
    readings = {
        "line_speed": Estimate(Q(3.4, "m/s"), Q(3.4 * first, "m/s")),
        "spacing": metres(6.8, 6.8 * second),
        "persons_per_carrier": Estimate(Q(2, "person"), Q(2 * third, "person")),
    }
    matrix = np.array([[1, linked, 0], [linked, 1, 0], [0, 0, 1]])
    budget = budget_of(readings, matrix)
    assert sum(row.share for row in budget.rows) == pytest.approx(1)
    for name, expanded in if_measured_better(budget).items():
        old = readings[name]
        better = {**readings, name: Estimate(old.value, old.standard_uncertainty / 2)}
        again = expand(by_first_order(hourly_capacity, better, matrix)).expanded
        assert expanded.magnitude == pytest.approx(again.magnitude, rel=1e-5)


def test_a_doubt_below_one_keeps_its_digits_beside_the_one_it_comes_from():
    for doubt, words in (
        (0.17, "± 0.3 m becomes ± 0.17 m"),
        (0.6, "± 1.2 m becomes ± 0.6 m"),
        (4, "± 8 m becomes ± 4 m"),
    ):
        assert words in reading_to_take_again(uncertainty_budget(SAME, {"x": metres(100, doubt)})).sentence


def test_a_budget_names_the_reading_to_take_again():
    budget = budget_of(READINGS)
    variances = [(0.06 / 3.4) ** 2, (0.3 / 6.8) ** 2]
    shares = [variance / sum(variances) for variance in variances]
    assert [row.share for row in budget.rows] == pytest.approx(shares, rel=1e-6)
    advice = reading_to_take_again(budget)
    assert advice.name == "spacing"
    assert str(advice) == (
        "Take the spacing again: it makes 86 % of the variance; measured twice as well, ± 170 pph becomes ± 100 pph."
    )
    other = reading_to_take_again(budget_of({"line_speed": SPEED, "spacing": metres(6.8, 0.02)}))
    assert other.name == "line_speed"
    equal = reading_to_take_again(
        budget_of({"line_speed": Estimate(Q(3.4, "m/s"), Q(0.17, "m/s")), "spacing": metres(6.8, 0.34)})
    )
    assert equal.sentence.endswith("spacing would help about as much.") or equal.sentence.endswith(
        "line speed would help about as much."
    )


def test_a_budget_is_a_table_that_a_person_reads():
    budget = budget_of(READINGS, also={"ridden_length": LENGTH})
    table = budget.table()
    assert isinstance(table, Table)
    assert table.caption == "Budget of the hourly capacity: 1,800 ± 170 pph (k = 1.96, level of confidence 95 %)"
    assert table.rows == [
        ("line speed", "poles and stopwatch", "3.40 m/s", "0.06 m/s", "each 0.1 m/s more: 53 pph more", "30 pph",
         "14 %",
         "± 160 pph"),
        ("spacing", "photo", "6.8 m", "0.3 m", "each 0.1 m more: 26 pph less", "80 pph", "86 %", "± 100 pph"),
        ("ridden length", "tape", "150.0 m", "0.6 m", "nothing", "nil", "nil", "± 170 pph"),
    ]  # fmt: skip
    assert "nil" in str(budget)
    assert if_measured_better(budget)["ridden_length"] == budget.result.expanded
    in_feet = budget_of({"line_speed": SPEED.to("ft/minute"), "spacing": SPACING.to("ft")}).table().rows
    assert in_feet[0][2:5] == ("669 ft/min", "12 ft/min", "each 10 ft/min more: 27 pph more")
    assert [row[5:] for row in in_feet] == [row[5:] for row in table.rows[:2]]


def test_an_argument_without_effect_has_no_share():
    def people_an_hour(speed, spacing, length):
        return 3600 * speed / spacing + 0 * length

    formula = own_formula(people_an_hour, returns="pph", speed="m/s", spacing="m", length="m")
    budget = uncertainty_budget(formula, {"speed": SPEED, "spacing": SPACING, "length": LENGTH})
    last = budget.rows[-1]
    assert (last.share, last.effect, last.contribution.magnitude) == (0, "nothing", 0)
    assert budget.table().caption.startswith("Budget of the people an hour: 1,800 ± 170 pph")


def test_no_advice_where_correlated_doubts_cancel():
    readings = {"line_speed": Estimate(Q(3.4, "m/s"), Q(0.17, "m/s")), "spacing": metres(6.8, 0.34)}
    advice = reading_to_take_again(budget_of(readings, [[1, 0.99], [0.99, 1]]))
    assert advice.name is None
    assert str(advice) == "No single reading would lower the doubt of ± 25 pph: correlated doubts cancel."


def test_a_small_share_is_not_called_nil():
    rows = budget_of({"line_speed": Estimate(Q(3.4, "m/s"), Q(0.001, "m/s")), "spacing": SPACING}).table().rows
    assert rows[0][6] == "under 1 %"


def test_the_coverage_factor_of_few_readings_reaches_the_budget():
    few = estimate_from_repeats(Q([6.8, 7.4, 6.2], "m"))
    result = budget_of({"line_speed": Q(3.4, "m/s"), "spacing": few}, probability=0.9).result
    assert result.coverage_factor == pytest.approx(stats.t.ppf(0.95, 2))
    assert "k = 2.92, level of confidence 90 %" in str(result)


# ---- words


WRITTEN = [
    (1803.2, 88, "pph", "1,800 ± 90 pph"),
    (10562, 341, "pph", "10,600 ± 300 pph"),
    (10562, 271, "pph", "10,560 ± 270 pph"),
    (10562, 99.6, "pph", "10,560 ± 100 pph"),
    (3.4, 0.0577, "m/s", "3.40 ± 0.06 m/s"),
    (3.4, 0.3, "m/s", "3.4 ± 0.3 m/s"),
    (3.4, 0.29, "m/s", "3.40 ± 0.29 m/s"),
    (3.4, 0.0996, "m/s", "3.40 ± 0.10 m/s"),
    (22.06, 1.04, "person", "22.1 ± 1.0 persons"),
    (20, 1.5, "percent", "20.0 ± 1.5%"),
    (-0.04, 0.5, "m", "0.0 ± 0.5 m"),
    (0.5, 1, "m", "0.5 ± 1.0 m"),
    (1234567, 3, "pph", "1,234,567 ± 3 pph"),
    (12, 3400, "pph", "0 ± 3,000 pph"),
    (1805, 35, "pph", "1,810 ± 40 pph"),
]


@pytest.mark.parametrize(("value", "doubt", "unit", "text"), WRITTEN, ids=[case[-1] for case in WRITTEN])
def test_value_and_doubt_as_a_person_writes_them(value, doubt, unit, text):
    assert show_with_doubt(Q(value, unit), Q(doubt, unit)) == text


@given(value=st.floats(-1e6, 1e6), doubt=st.floats(1e-4, 1e6))
def test_value_and_doubt_end_at_one_place(value, doubt):
    first, second = show_with_doubt(Q(value, "m"), Q(doubt, "m")).removesuffix(" m").replace(",", "").split(" ± ")
    assert len(first.partition(".")[2]) == len(second.partition(".")[2])
    assert float(second) == pytest.approx(doubt, rel=0.17)
    assert abs(float(first) - value) <= 0.17 * doubt
    assert "e" not in (first + second).lower()


def test_the_longer_form_and_another_unit():
    text = show_with_doubt(Q(3.4, "m/s"), Q(10, "cm/s"), "mph", coverage_factor=2, probability=0.95)
    assert text == "7.61 ± 0.22 mph (k = 2.00, level of confidence 95 %)"
    whole = expand(metres(150, 0.6), 0.9973)
    assert str(whole) == "150.0 ± 1.8 m (k = 3.00, level of confidence 99.73 %)"
    assert whole.short == "150.0 ± 1.8 m"
    assert repr(SPEED) == "poles and stopwatch: 3.40 ± 0.06 m/s (one standard uncertainty)"


# ---- messages


EXAMPLE = "estimate_from_half_width(Q(3.4, 'm/s'), Q(0.1, 'm/s'))"
HALF_DIGIT = "No reading is exact; half the last digit of the display is the least doubt there is."
MESSAGES = [
    (
        lambda: metres(6.8, -0.3),
        UncertaintyError,
        f"Estimate: standard_uncertainty must be one number greater than zero, but got -0.3 m. {HALF_DIGIT}",
    ),
    (
        lambda: metres(6.8, 0),
        UncertaintyError,
        f"Estimate: standard_uncertainty must be one number greater than zero, but got 0 m. {HALF_DIGIT}",
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), Q(math.nan, "m")),
        UncertaintyError,
        f"estimate_from_half_width: half_width must be one number greater than zero, but got nan m. {HALF_DIGIT}",
    ),
    (
        lambda: estimate_from_resolution(Q(8, "mph"), Q(0, "mph")),
        UncertaintyError,
        f"estimate_from_resolution: display_step must be one number greater than zero, but got 0 mph. {HALF_DIGIT}",
    ),
    (
        lambda: show_with_doubt(Q(8, "mph"), Q(0, "mph")),
        UncertaintyError,
        f"show_with_doubt: expanded must be one number greater than zero, but got 0 mph. {HALF_DIGIT}",
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), 0.5),
        UnitError,
        "estimate_from_half_width: half_width needs a unit, but got the bare value 0.5. Write it in the unit of the "
        "value, such as Q(0.1, 'm').",
    ),
    (
        lambda: estimate_from_half_width(6.8, Q(0.5, "m")),
        UnitError,
        "estimate_from_half_width: value needs a unit, but got the bare value 6.8. Write Q(3.4, 'm/s').",
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), Q(0.5, "s")),
        UnitError,
        "estimate_from_half_width: half_width must be a length, but got a time: 0.5 s. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: Estimate(Q([1, 2], "m"), Q(0.1, "m")),
        UncertaintyError,
        "Estimate: value must be one value, but got 2 values.",
    ),
    (
        lambda: Estimate(Q(math.inf, "m"), Q(0.1, "m")),
        UncertaintyError,
        "Estimate: value must be a finite number, but got inf m.",
    ),
    (
        lambda: metres(6.8, 0.1, degrees_of_freedom=0),
        UncertaintyError,
        "Estimate: the degrees of freedom must be 1 or more, but got 0. Write how many readings there were "
        "less one, or "
        "math.inf for a doubt that is known well.",
    ),
    (
        lambda: metres(6.8, 0.1, shape="round"),
        UncertaintyError,
        "Estimate: 'round' is no shape of a doubt. Write one of normal, t, rectangular, triangular.",
    ),
    (
        lambda: metres(6.8, 0.1, shape="t"),
        UncertaintyError,
        "Estimate: a t shape needs finite degrees of freedom. Write shape='normal'.",
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m"), shape="normal"),
        UncertaintyError,
        "estimate_from_half_width: a normal shape has no half-width. Write shape='rectangular' or 'triangular', or use "
        "estimate_from_statement.",
    ),
    (
        lambda: estimate_from_statement(Q(6.8, "m"), Q(0.5, "m"), coverage_factor=0),
        UncertaintyError,
        "estimate_from_statement: the coverage factor must be greater than zero, but got 0. Write 2 for a statement at "
        "about 95 %.",
    ),
    (
        lambda: estimate_from_repeats(Q([], "m")),
        UncertaintyError,
        "estimate_from_repeats: no reading came. Give two or more, such as Q([6.8, 6.9, 6.7], 'm').",
    ),
    (
        lambda: estimate_from_repeats(Q([6.8], "m")),
        UncertaintyError,
        "estimate_from_repeats: one reading came, [6.8] m, and one reading has no spread. Take it again, or "
        "say how far "
        "it may be off: estimate_from_half_width(value, half_width).",
    ),
    (
        lambda: estimate_from_repeats([6.8, 6.9]),
        UnitError,
        "estimate_from_repeats: the readings need a unit, but got the bare value [6.8, 6.9]. "
        "Write Q([6.8, 6.9, 6.7], 'm').",
    ),
    (
        lambda: estimate_from_repeats(Q([6.8, 6.8, 6.8], "m")),
        UncertaintyError,
        "estimate_from_repeats: all 3 readings are 6.8 m. That is a coarse display, no certainty. Give the step of the "
        "display, such as display_step=Q(0.1, 'm').",
    ),
    (
        lambda: estimate_from_repeats(Q([6.8, math.nan], "m")),
        UncertaintyError,
        "estimate_from_repeats: the readings must be one row of finite numbers, but got [6.8 nan] m.",
    ),
    (
        lambda: correlation_of_repeats(Q([1, 2], "m"), Q([1, 2, 3], "s")),
        UncertaintyError,
        "correlation_of_repeats: the rows hold 2, 3 readings. Give two or more rows of the same length, read together.",
    ),
    (
        lambda: correlation_of_repeats(Q([1, 2], "m"), Q([3, 3], "s")),
        UncertaintyError,
        "correlation_of_repeats: all readings of one row are 3 s; what does not vary has no correlation.",
    ),
    (
        lambda: combine([]),
        UncertaintyError,
        "combine: no reading came. Give at least one estimate, such as combine([tape, photo]).",
    ),
    (
        lambda: combine([LENGTH, Q(150, "m")]),
        UnitError,
        "combine: each method must be an estimate with its doubt, but got 150 m. Write for example "
        "estimate_from_half_width(Q(6.8, 'm'), Q(0.5, 'm'), 'tape').",
    ),
    (
        lambda: combine([LENGTH, SPEED]),
        UnitError,
        "combine: poles and stopwatch must be a length, but got a speed: 3.4 m/s. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: combine([LENGTH, LENGTH]),
        UncertaintyError,
        "combine: two methods bear the name 'tape'. Name each, such as method='tape' and method='photo'.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {**READINGS, "ridden_length": LENGTH}),
        UncertaintyError,
        "by_first_order: ridden_length is no argument of hourly_capacity. Its arguments are line_speed, spacing, "
        "persons_per_carrier.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"spacing": SPACING}),
        UncertaintyError,
        "by_first_order: hourly_capacity needs a reading of line_speed as well.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"line_speed": LENGTH, "spacing": SPACING}),
        UnitError,
        "by_first_order: line_speed must be a speed, but got a length: 150 m. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"line_speed": 3.4, "spacing": SPACING}),
        UnitError,
        "by_first_order: line_speed must be an estimate, or a quantity where it is exact, but got 3.4. Write "
        "for example "
        f"{EXAMPLE}.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"line_speed": SPEED, "spacing": metres(-6.8, 0.1)}),
        ValueError,
        "hourly_capacity: spacing must be greater than zero, but got -6.8 m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: by_first_order(max, READINGS),
        UncertaintyError,
        "by_first_order: the formula must be one of liftcalc, such as hourly_capacity, or made by own_formula, but got "
        "<built-in function max>.",
    ),
    (
        lambda: by_first_order(hourly_capacity, READINGS, np.eye(3)),
        UncertaintyError,
        "by_first_order: the correlation matrix has shape (3, 3), but 2 readings have a doubt. Give 2 rows "
        "and 2 columns, "
        "in the order line_speed, spacing.",
    ),
    (
        lambda: by_first_order(hourly_capacity, READINGS, [[1, 0.5], [0.4, 1]]),
        UncertaintyError,
        "by_first_order: the correlation matrix is not symmetric: line_speed with spacing is 0.5, but spacing with "
        "line_speed is 0.4. Write the same number in both places.",
    ),
    (
        lambda: by_first_order(hourly_capacity, READINGS, [[1, 1.5], [1.5, 1]]),
        UncertaintyError,
        "by_first_order: a correlation lies between -1 and 1, and is 1 on the diagonal, but got [[1.0, 1.5], "
        "[1.5, 1.0]].",
    ),
    (
        lambda: by_sampling(
            hourly_capacity,
            {**READINGS, "persons_per_carrier": Estimate(Q(2, "person"), Q(0.1, "person"))},
            seed=1,
            correlation=[[1, 0.9, 0.9], [0.9, 1, -0.9], [0.9, -0.9, 1]],
        ),
        UncertaintyError,
        "by_sampling: these correlations contradict each other: the matrix is not positive semidefinite, its smallest "
        "eigenvalue is -0.8. Two readings that both go with a third cannot go against each other.",
    ),
    (
        lambda: own_formula(lambda a, b: a * b, returns="m", a="m"),
        UncertaintyError,
        "own_formula: the function takes a, b, but units came for a. Give one unit for each argument.",
    ),
    (
        lambda: by_sampling(hourly_capacity, READINGS, seed=None),
        UncertaintyError,
        "by_sampling: seed must be a whole number, 0 or more, but got None. Write for example seed=1.",
    ),
    (
        lambda: by_sampling(hourly_capacity, READINGS, seed=1, draws=10),
        UncertaintyError,
        "by_sampling: draws must be a whole number, 1,000 or more, but got 10. Write for example draws=1000.",
    ),
    (
        lambda: by_sampling(hourly_capacity, READINGS, seed=1, shapes={"ridden_length": "normal"}),
        UncertaintyError,
        "by_sampling: a shape came for ridden_length, which has no doubt here. Those with a doubt: "
        "line_speed, spacing.",
    ),
    (
        lambda: by_sampling(
            hourly_capacity, READINGS, seed=1, shapes={"spacing": "rectangular"}, correlation=[[1, 0.5], [0.5, 1]]
        ),
        UncertaintyError,
        "by_sampling: spacing is correlated with another reading, but its shape is rectangular. Correlated draws are "
        "normal here: write shapes={'spacing': 'normal'}.",
    ),
    (
        lambda: by_sampling(SAME, {"x": estimate_from_repeats(Q([6.8, 6.9, 7.1], "m"))}, seed=1),
        UncertaintyError,
        "by_sampling: x has 2 degrees of freedom; a t shape has a spread of finite size only above 2. Take "
        "four readings "
        "or more, or write shapes={'x': 'normal'} and say so.",
    ),
    (
        lambda: by_sampling(hourly_capacity, {"line_speed": SPEED, "spacing": metres(1, 0.6, "pacing")}, seed=1),
        UncertaintyError,
        "by_sampling: 4.8 % of the draws of spacing are not greater than zero, which no reading can be (pacing: "
        "1.0 ± 0.6 m (one standard uncertainty)). Its doubt is too large; take that reading again.",
    ),
    (
        lambda: by_sampling(
            own_formula(lambda x: np.sqrt(x), returns="", x="m"), {"x": metres(0.1, 1)}, seed=1, draws=1000
        ),
        UncertaintyError,
        "by_sampling: the formula gives no finite number for some draws. The doubt of a reading is too large.",
    ),
    (
        lambda: evaluate(
            count_simulated_riders,
            {"line_speed": Q([3.4, 3.5], "m/s"), "spacing": Q(6.8, "m"), "counting_time": Q(60, "s")},
        ),
        UncertaintyError,
        "evaluate: count_simulated_riders does not give one result a draw. Sampling needs a formula that "
        "works on arrays, "
        "number by number.",
    ),
    (
        lambda: coverage_factor(95),
        UncertaintyError,
        "coverage_factor: the probability must lie between 0 and 1, but got 95. Write 0.95 for 95 %.",
    ),
    (
        lambda: effective_degrees_of_freedom([1, 2], [3]),
        UncertaintyError,
        "effective_degrees_of_freedom: 2 contributions came with 1 degrees of freedom. Give one for each.",
    ),
    (
        lambda: expand(Q(1800, "pph")),
        UnitError,
        "expand: a result with a standard uncertainty is needed, but got 1800 pph. Write for "
        f"example expand({EXAMPLE}).",
    ),
    (
        lambda: budget_of({"line_speed": Q(3.4, "m/s"), "spacing": Q(6.8, "m")}),
        UncertaintyError,
        "uncertainty_budget: the result has no doubt: no reading has one that reaches it, or the doubts "
        "cancel. Give at "
        f"least one estimate with a doubt, such as {EXAMPLE}.",
    ),
    (
        lambda: budget_of(READINGS, also={"persons_per_carrier": Estimate(Q(1, "person"), Q(0.1, "person"))}),
        UncertaintyError,
        "uncertainty_budget: persons_per_carrier is an argument of hourly_capacity; give it with the readings, not in "
        "also.",
    ),
    (
        lambda: budget_of(READINGS, also={"ridden_length": Q(150, "m")}),
        UncertaintyError,
        "uncertainty_budget: ridden_length came without a doubt, so it has no row in a budget.",
    ),
    (
        lambda: correlation_of_results(
            by_first_order(hourly_capacity, READINGS),
            by_first_order(headway, {"line_speed": SPEED, "spacing": metres(7, 0.3)}),
        ),
        UncertaintyError,
        "correlation_of_results: the two results come from different readings. Give both formulas the same readings.",
    ),
]


@pytest.mark.parametrize(("call", "kind", "message"), MESSAGES, ids=[case[2][:60] for case in MESSAGES])
def test_message(call, kind, message):
    with pytest.raises(kind) as caught:
        call()
    assert str(caught.value) == message


def test_one_reading_alone_has_no_spread():
    with pytest.raises(UncertaintyError, match="one reading has no spread"):
        estimate_from_repeats(Q(6.8, "m"))


def test_importing_loads_no_drawing_library_and_no_statistics():
    heavy = ("matplotlib", "pandas", "IPython", "scipy.stats", "scipy.special")
    code = f"import sys, liftcalc.uncertainty; print([name for name in {heavy} if name in sys.modules])"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert run.stdout.strip() == "[]"


def test_all_pairs_are_scored():
    combined = combine(named([(1, 1), (2, 1), (3, 1), (4, 1)]))
    assert [(pair.first, pair.second) for pair in combined.pairs] == list(itertools.combinations(combined.weights, 2))
    assert show(combined.value) == "2.5 m"


def test_no_sentence_holds_a_power_of_ten():
    fine = [Estimate(Q(value, "m"), Q(1e-4, "m"), method=name) for name, value in (("one", 150), ("two", 150.00001))]
    sentences = [
        combine([*fine, Estimate(Q(163, "m"), Q(1e-4, "m"), method="far")]).sentence,
        combine([*fine, Estimate(Q(151, "m"), Q(40, "m"), method="coarse")]).sentence,
    ]
    assert "disagree" in sentences[0]
    assert "less than 0.01 %" in sentences[1]
    assert not any(re.search(r"e[+-]\d", sentence) for sentence in sentences)
