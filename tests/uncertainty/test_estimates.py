"""One reading with its doubt: from repeats, from an instrument, as a shape that is drawn.

Sampling is held to four of its own standard errors.
"""

import math
import subprocess
import sys

import pytest
from example_readings import HALF_DIGIT, SAME, metres, within_four
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.uncertainty import (
    Estimate,
    UncertaintyError,
    by_sampling,
    correlation_of_repeats,
    coverage_factor,
    effective_degrees_of_freedom,
    estimate_from_half_width,
    estimate_from_repeats,
    estimate_from_resolution,
    estimate_from_statement,
)


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


MESSAGES = [
    (
        lambda: metres(6.8, -0.3),
        f"Estimate: standard_uncertainty must be one number greater than zero, but got -0.3 m. {HALF_DIGIT}",
    ),
    (
        lambda: metres(6.8, 0),
        f"Estimate: standard_uncertainty must be one number greater than zero, but got 0 m. {HALF_DIGIT}",
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), Q(math.nan, "m")),
        f"estimate_from_half_width: half_width must be one number greater than zero, but got nan m. {HALF_DIGIT}",
    ),
    (
        lambda: estimate_from_resolution(Q(8, "mph"), Q(0, "mph")),
        f"estimate_from_resolution: display_step must be one number greater than zero, but got 0 mph. {HALF_DIGIT}",
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), 0.5),
        "estimate_from_half_width: half_width needs a unit, but got the bare value 0.5. Write it in the unit of the "
        "value, such as Q(0.1, 'm').",
        UnitError,
    ),
    (
        lambda: estimate_from_half_width(6.8, Q(0.5, "m")),
        "estimate_from_half_width: value needs a unit, but got the bare value 6.8. Write Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), Q(0.5, "s")),
        "estimate_from_half_width: half_width must be a length, but got a time: 0.5 s. Write for example Q(6.8, 'm').",
        UnitError,
    ),
    (lambda: Estimate(Q([1, 2], "m"), Q(0.1, "m")), "Estimate: value must be one value, but got 2 values."),
    (lambda: Estimate(Q(math.inf, "m"), Q(0.1, "m")), "Estimate: value must be a finite number, but got inf m."),
    (
        lambda: metres(6.8, 0.1, degrees_of_freedom=0),
        "Estimate: the degrees of freedom must be 1 or more, but got 0. Write how many readings there were "
        "less one, or "
        "math.inf for a doubt that is known well.",
    ),
    (
        lambda: metres(6.8, 0.1, shape="round"),
        "Estimate: 'round' is no shape of a doubt. Write one of normal, t, rectangular, triangular.",
    ),
    (lambda: metres(6.8, 0.1, shape="t"), "Estimate: a t shape needs finite degrees of freedom. Write shape='normal'."),
    (
        lambda: estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m"), shape="normal"),
        "estimate_from_half_width: a normal shape has no half-width. Write shape='rectangular' or 'triangular', or use "
        "estimate_from_statement.",
    ),
    (
        lambda: estimate_from_statement(Q(6.8, "m"), Q(0.5, "m"), coverage_factor=0),
        "estimate_from_statement: the coverage factor must be greater than zero, but got 0. Write 2 for a statement at "
        "about 95 %.",
    ),
    (
        lambda: estimate_from_repeats(Q([], "m")),
        "estimate_from_repeats: no reading came. Give two or more, such as Q([6.8, 6.9, 6.7], 'm').",
    ),
    (
        lambda: estimate_from_repeats(Q([6.8], "m")),
        "estimate_from_repeats: one reading came, [6.8] m, and one reading has no spread. Take it again, or "
        "say how far "
        "it may be off: estimate_from_half_width(value, half_width).",
    ),
    (
        lambda: estimate_from_repeats(Q(6.8, "m")),
        "estimate_from_repeats: one reading came, 6.8 m, and one reading has no spread. Take it again, or say how far "
        "it may be off: estimate_from_half_width(value, half_width).",
    ),
    (
        lambda: estimate_from_repeats([6.8, 6.9]),
        "estimate_from_repeats: the readings need a unit, but got the bare value [6.8, 6.9]. "
        "Write Q([6.8, 6.9, 6.7], 'm').",
        UnitError,
    ),
    (
        lambda: estimate_from_repeats(Q([6.8, 6.8, 6.8], "m")),
        "estimate_from_repeats: all 3 readings are 6.8 m. That is a coarse display, no certainty. Give the step of the "
        "display, such as display_step=Q(0.1, 'm').",
    ),
    (
        lambda: estimate_from_repeats(Q([6.8, math.nan], "m")),
        "estimate_from_repeats: the readings must be one row of finite numbers, but got [6.8 nan] m.",
    ),
    (
        lambda: correlation_of_repeats(Q([1, 2], "m"), Q([1, 2, 3], "s")),
        "correlation_of_repeats: the rows hold 2, 3 readings. Give two or more rows of the same length, read together.",
    ),
    (
        lambda: correlation_of_repeats(Q([1, 2], "m"), Q([3, 3], "s")),
        "correlation_of_repeats: all readings of one row are 3 s; what does not vary has no correlation.",
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)


def test_importing_loads_no_drawing_library_and_no_statistics():
    heavy = ("matplotlib", "pandas", "IPython", "scipy.stats", "scipy.special")
    code = f"import sys, liftcalc.uncertainty; print([name for name in {heavy} if name in sys.modules])"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert run.stdout.strip() == "[]"
