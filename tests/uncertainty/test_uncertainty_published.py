"""Doubts against figures printed outside the project; the id of each test is its source.

A tolerance is the rounding of the printed figure. Sampling is held to four of its own standard errors.
"""

import math

import numpy as np
import pytest

from liftcalc import Q
from liftcalc.uncertainty import (
    Estimate,
    by_first_order,
    by_sampling,
    correlation_of_repeats,
    correlation_of_results,
    coverage_factor,
    estimate_from_half_width,
    estimate_from_repeats,
    estimate_from_resolution,
    estimate_from_statement,
    expand,
    normalised_error,
    own_formula,
    show_with_doubt,
)

H1 = "JCGM 100:2008 (GUM), H.1, end-gauge calibration"
H2 = "JCGM 100:2008 (GUM), H.2, resistance and reactance; R package errors, R Journal 10(2) 2018"
TN1297 = "NIST TN 1297, s. 6"
EN = "NIST Dataplot, ISO 13528 EN score"
STANDARD = 50.000623e6  # length of the standard [nm]

GAUGE_READINGS = {
    "standard": Estimate(Q(STANDARD, "nm"), Q(25, "nm"), 18, "certificate"),
    "difference": Estimate(Q(215, "nm"), Q(9.7, "nm"), 25.6, "comparator"),
    "expansion": Estimate(Q(11.5e-6, "1/K"), Q(1.2e-6, "1/K"), method="tables"),
    "temperature": Estimate(Q(-0.1, "K"), Q(0.41, "K"), method="test bed"),
    "expansion_difference": Estimate(Q(0, "1/K"), Q(0.58e-6, "1/K"), 50, "judgement"),
    "temperature_difference": Estimate(Q(0, "K"), Q(0.029, "K"), 2, "judgement"),
}


def end_gauge(standard, difference, expansion, temperature, expansion_difference, temperature_difference):
    """Length of an end gauge compared with a standard, formula (H.3) of the source."""
    return standard + difference - standard * (expansion_difference * temperature + expansion * temperature_difference)


GAUGE = own_formula(
    end_gauge, returns="nm", standard="nm", difference="nm", expansion="1/K", temperature="K",
    expansion_difference="1/K", temperature_difference="K",
)  # fmt: skip


@pytest.mark.parametrize("source", [f"{H1}: first order"])
def test_end_gauge_to_first_order(source):
    result = by_first_order(GAUGE, GAUGE_READINGS)
    assert result.value.m_as("mm") == pytest.approx(50.000838, abs=5e-7)
    assert round(result.standard_uncertainty.m_as("nm")) == 32
    assert math.floor(result.degrees_of_freedom) == 16
    whole = expand(result, 0.99)
    assert round(whole.coverage_factor, 2) == 2.92
    assert round(whole.expanded.m_as("nm")) == 93
    assert show_with_doubt(result.value, whole.expanded, "nm") == "50,000,840 ± 90 nm"
    # two readings add nothing to first order, since what multiplies them is zero
    assert result.contributions["expansion"].magnitude == pytest.approx(0, abs=1e-6)
    assert result.contributions["temperature"].magnitude == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("source", [f"{H1}: second-order terms of H.1.7"])
def test_end_gauge_by_sampling_is_wider(source):
    sampled = by_sampling(GAUGE, GAUGE_READINGS, seed=1, draws=400_000)
    first = by_first_order(GAUGE, GAUGE_READINGS).standard_uncertainty.m_as("nm")
    spread, error = (
        sampled.standard_uncertainty.m_as("nm"),
        sampled.sampling_errors["standard_uncertainty"].m_as("nm"),
    )
    assert spread - first > 4 * error
    # the product of two independent doubts adds the product of their variances
    exact = math.sqrt(first**2 + STANDARD**2 * ((0.58e-6 * 0.41) ** 2 + (1.2e-6 * 0.029) ** 2))
    assert round(exact) == 34
    assert abs(spread - exact) < 4 * error
    assert abs(sampled.mean.m_as("nm") - (STANDARD + 215)) < 4 * sampled.sampling_errors["mean"].m_as("nm")


HALF_WIDTHS = [  # value, half-width, unit, printed u, its rounding, source
    (11.5e-6, 2e-6, "1/K", 1.2e-6, 5e-8, f"{H1}: expansion within 2e-6 (half-width from memory)"),
    (0, 1e-6, "1/K", 0.58e-6, 5e-9, f"{H1}: difference of expansion within 1e-6 (half-width from memory)"),
    (0, 0.05, "K", 0.029, 5e-4, f"{H1}: difference of temperature within 0.05 (half-width from memory)"),
]


@pytest.mark.parametrize(
    ("value", "width", "unit", "printed", "rounding", "source"), HALF_WIDTHS, ids=[case[-1] for case in HALF_WIDTHS]
)
def test_half_width_of_a_rectangle(value, width, unit, printed, rounding, source):
    estimate = estimate_from_half_width(Q(value, unit), Q(width, unit))
    assert estimate.standard_uncertainty.m_as(unit) == pytest.approx(printed, abs=rounding)


@pytest.mark.parametrize("source", ["JCGM 100:2008 (GUM), F.2.2.1: u = 0.29 of the resolution (from memory)"])
def test_resolution_of_a_display(source):
    assert round(estimate_from_resolution(Q(8, "mph"), Q(1, "mph")).standard_uncertainty.m_as("mph"), 2) == 0.29


VOLTAGE = Q([5.007, 4.994, 5.005, 4.990, 4.999], "V")
CURRENT = Q([19.663, 19.639, 19.640, 19.685, 19.678], "mA")
PHASE = Q([1.0456, 1.0438, 1.0468, 1.0428, 1.0433], "radian")
IMPEDANCE = {
    "R": lambda voltage, current, phase: voltage / current * np.cos(phase),
    "X": lambda voltage, current, phase: voltage / current * np.sin(phase),
    "Z": lambda voltage, current, phase: voltage / current + 0 * phase,
}
PRINTED = [("R", 127.732, 0.071, 3), ("X", 219.85, 0.30, 2), ("Z", 254.26, 0.24, 2)]  # ohm, u, decimals
PRINTED_CORRELATIONS = [("R", "X", -0.588), ("R", "Z", -0.485), ("X", "Z", 0.993)]


def impedance_readings():
    """Return the means of H.2 and the correlations among them."""
    readings = {
        "voltage": estimate_from_repeats(VOLTAGE),
        "current": estimate_from_repeats(CURRENT),
        "phase": estimate_from_repeats(PHASE),
    }
    return readings, correlation_of_repeats(VOLTAGE, CURRENT, PHASE)


def impedance(name):
    """Return one of the three formulas of H.2."""
    return own_formula(IMPEDANCE[name], returns="ohm", voltage="V", current="A", phase="radian")


@pytest.mark.parametrize(
    ("name", "ohm", "doubt", "decimals"), PRINTED, ids=[f"{H2}: {case[0]} = {case[1]}" for case in PRINTED]
)
def test_correlated_means(name, ohm, doubt, decimals):
    readings, correlation = impedance_readings()
    result = by_first_order(impedance(name), readings, correlation)
    assert round(result.value.m_as("ohm"), decimals) == ohm
    assert round(result.standard_uncertainty.m_as("ohm"), decimals) == doubt
    assert result.degrees_of_freedom == 4  # five readings of each, taken together
    sampled = by_sampling(
        impedance(name), readings, seed=2, correlation=correlation, shapes=dict.fromkeys(readings, "normal")
    )
    error = sampled.sampling_errors["standard_uncertainty"].m_as("ohm")
    assert abs(sampled.standard_uncertainty.m_as("ohm") - result.standard_uncertainty.m_as("ohm")) < 4 * error
    # leaving the correlations out gives another answer
    alone = by_first_order(impedance(name), readings).standard_uncertainty.m_as("ohm")
    assert round(alone, decimals) != doubt


@pytest.mark.parametrize(
    ("one", "other", "printed"),
    PRINTED_CORRELATIONS,
    ids=[f"{H2}: r({case[0]}, {case[1]}) = {case[2]}" for case in PRINTED_CORRELATIONS],
)
def test_correlations_of_the_results(one, other, printed):
    readings, correlation = impedance_readings()
    first, second = (by_first_order(impedance(name), readings, correlation) for name in (one, other))
    assert round(correlation_of_results(first, second), 3) == printed
    assert correlation_of_results(first, first) == pytest.approx(1)


FACTORS = [(1, 0.6827), (1.645, 0.90), (1.96, 0.95), (2.576, 0.99), (3, 0.9973)]


@pytest.mark.parametrize(
    ("factor", "probability"), FACTORS, ids=[f"{TN1297}: k = {case[0]}, {case[1]:.2%}" for case in FACTORS]
)
def test_coverage_factors(factor, probability):
    assert coverage_factor(probability) == pytest.approx(factor, abs=5e-4)
    stated = estimate_from_statement(Q(150, "m"), Q(factor, "m"), coverage_factor=factor)
    assert expand(stated, probability).expanded.m_as("m") == pytest.approx(factor, abs=5e-4)


STUDENT = [(1, 12.71), (2, 4.30), (4, 2.78), (10, 2.23), (50, 2.01)]


@pytest.mark.parametrize(
    ("degrees", "factor"),
    STUDENT,
    ids=[f"JCGM 100:2008 (GUM), table G.2, 95 % (from memory): {case[0]} degrees of freedom" for case in STUDENT],
)
def test_coverage_factors_of_few_readings(degrees, factor):
    assert round(coverage_factor(0.95, degrees), 2) == factor
    assert coverage_factor(0.95, degrees + 0.99) == coverage_factor(0.95, degrees)  # G.4.1: cut, not rounded


@pytest.mark.parametrize("reference_doubt", [0.001, 0.009], ids=lambda doubt: f"{EN}: 6 : -4 : -2, reference {doubt}")
def test_normalised_errors(reference_doubt):
    reference = estimate_from_statement(Q(1.0, "m"), Q(reference_doubt, "m"))
    scores = [
        normalised_error(estimate_from_statement(Q(value, "m"), Q(0.009, "m")), reference)
        for value in (1.006, 0.996, 0.998)
    ]
    assert scores[0] / scores[2] == pytest.approx(-3, rel=1e-9)
    assert scores[1] / scores[2] == pytest.approx(2, rel=1e-9)
    assert scores[0] == pytest.approx(0.006 / math.hypot(0.009, reference_doubt), rel=1e-9)
