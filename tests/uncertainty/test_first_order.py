"""Doubts carried through a formula to first order; the uncertainties package is the second opinion."""

import math

import numpy as np
import pytest
import uncertainties
from example_readings import EXAMPLE, LENGTH, READINGS, SPACING, SPEED, metres
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import (
    Q,
    UnitError,
    headway,
    hourly_capacity,
    most_persons_on_line,
    persons_on_line,
    reversible_capacity,
    vertical_rise,
)
from liftcalc.uncertainty import (
    Estimate,
    UncertaintyError,
    by_first_order,
    by_sampling,
    combine,
    correlation_of_results,
    coverage_factor,
    effective_degrees_of_freedom,
    evaluate,
    own_formula,
)
from liftcalc.units import PlainError

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
    refuses(
        lambda: by_first_order(most_persons_on_line, readings),
        "by_first_order: most_persons_on_line jumps or bends too much within the doubt of ridden_length (tape: 150.0 ± "
        "0.6 m (one standard uncertainty)). A straight line is no picture of it; use by_sampling.",
        UncertaintyError,
    )
    sampled = by_sampling(most_persons_on_line, readings, seed=8)
    whole = sampled.samples.m_as("person")
    assert np.all(whole == np.round(whole))
    wild = own_formula(lambda x: 1 / x, returns="1/m", x="m")
    refuses(
        lambda: by_first_order(wild, {"x": metres(1, 1)}),
        "by_first_order: the formula jumps or bends too much within the doubt of x (1.0 ± 1.0 m (one standard "
        "uncertainty)). A straight line is no picture of it; use by_sampling.",
        UncertaintyError,
    )


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


MESSAGES = [
    (
        lambda: by_first_order(hourly_capacity, {**READINGS, "ridden_length": LENGTH}),
        "by_first_order: ridden_length is no argument of hourly_capacity. Its arguments are line_speed, spacing, "
        "persons_per_carrier.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"spacing": SPACING}),
        "by_first_order: hourly_capacity needs a reading of line_speed as well.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"line_speed": LENGTH, "spacing": SPACING}),
        "by_first_order: line_speed must be a speed, but got a length: 150 m. Write for example Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: by_first_order(hourly_capacity, {"line_speed": 3.4, "spacing": SPACING}),
        "by_first_order: line_speed must be an estimate, or a quantity where it is exact, but got 3.4. Write "
        "for example "
        f"{EXAMPLE}.",
        UnitError,
    ),
    (
        lambda: by_first_order(max, READINGS),
        "by_first_order: the formula must be one of liftcalc, such as hourly_capacity, or made by own_formula, but got "
        "<built-in function max>.",
    ),
    (
        lambda: by_first_order(hourly_capacity, READINGS, np.eye(3)),
        "by_first_order: the correlation matrix has shape (3, 3), but 2 readings have a doubt. Give 2 rows "
        "and 2 columns, "
        "in the order line_speed, spacing.",
    ),
    (
        lambda: by_first_order(hourly_capacity, READINGS, [[1, 0.5], [0.4, 1]]),
        "by_first_order: the correlation matrix is not symmetric: line_speed with spacing is 0.5, but spacing with "
        "line_speed is 0.4. Write the same number in both places.",
    ),
    (
        lambda: by_first_order(hourly_capacity, READINGS, [[1, 1.5], [1.5, 1]]),
        "by_first_order: a correlation lies between -1 and 1, and is 1 on the diagonal, but got [[1.0, 1.5], "
        "[1.5, 1.0]].",
    ),
    (
        lambda: correlation_of_results(
            by_first_order(hourly_capacity, READINGS),
            by_first_order(headway, {"line_speed": SPEED, "spacing": metres(7, 0.3)}),
        ),
        "correlation_of_results: the two results come from different readings. Give both formulas the same readings.",
    ),
    (
        lambda: by_first_order(hourly_capacity, {"line_speed": SPEED, "spacing": metres(-6.8, 0.1)}),
        "hourly_capacity: spacing must be greater than zero, but got -6.8 m. Write for example Q(6.8, 'm').",
        PlainError,
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)
