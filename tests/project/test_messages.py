"""Bad input gets an error that names function and argument, what came, and what to write."""

import re

import numpy as np
import pytest

import liftcalc
from liftcalc import Capacity, Q, UnitError, headway, show
from liftcalc.units import FORMULAS

SPEED, LENGTH = Q(3.4, "m/s"), Q(6.8, "m")

MESSAGES = [
    (
        lambda: headway(3.4, LENGTH),
        UnitError,
        "headway: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s').",
    ),
    (
        lambda: headway(SPEED, "6.8 m"),
        UnitError,
        "headway: spacing needs a unit, but got the bare value '6.8 m'. Write Q(6.8, 'm').",
    ),
    (
        lambda: headway(LENGTH, LENGTH),
        UnitError,
        "headway: line_speed must be a speed, but got a length: 6.8 m. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: headway(SPEED, Q(1800, "pph")),
        UnitError,
        "headway: spacing must be a length, but got an hourly capacity: 1800 pph. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: liftcalc.rope_pull(Q(75, "kg"), grade=Q(20, "degree"), snow_friction=Q(0.07, "")),
        UnitError,
        "rope_pull: grade must be a pure number, but got an angle: 20 deg. "
        "Write for example Q(20, 'percent'), or grade_from_angle(Q(11.3, 'degree')).",
    ),
    (
        lambda: liftcalc.capstan_ratio(lining_friction=Q(0.2, ""), wrap_angle=Q(50, "percent")),
        UnitError,
        "capstan_ratio: wrap_angle must be an angle, but got a pure number: 50 %. Write for example Q(20, 'degree').",
    ),
    (
        lambda: liftcalc.grade_from_angle(Q(90, "degree")),
        ValueError,
        "grade_from_angle: angle must be less than 90 degrees, but got 90 degrees. "
        "Give the angle to the horizontal, such as Q(11.3, 'degree').",
    ),
    (
        lambda: liftcalc.hourly_capacity_from_interval(Q(0, "s")),
        ValueError,
        "hourly_capacity_from_interval: interval must be greater than zero, but got 0 s. "
        "Write for example Q(2.0, 's').",
    ),
    (
        lambda: headway(Q(-3.4, "m/s"), LENGTH),
        ValueError,
        "headway: line_speed must be greater than zero, but got -3.4 m/s. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: liftcalc.rope_stopping_distance(SPEED, Q(-1, "s"), Q(1.5, "m/s**2")),
        ValueError,
        "rope_stopping_distance: stop_delay must be zero or more, but got -1 s. Write for example Q(2.0, 's').",
    ),
    (
        lambda: headway(Q(float("nan"), "m/s"), LENGTH),
        ValueError,
        "headway: line_speed must be a finite number, but got nan m/s. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: headway(SPEED, Q(float("inf"), "m")),
        ValueError,
        "headway: spacing must be a finite number, but got inf m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: headway(SPEED, Q([1.0, float("nan")], "m")),
        ValueError,
        "headway: spacing must be a finite number, but got [ 1. nan] m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: headway(SPEED, Q([], "m")),
        ValueError,
        "headway: spacing holds no values. Give at least one, such as Q(6.8, 'm').",
    ),
    (
        lambda: headway(Q([1, 2], "m/s"), Q([1, 2, 3], "m")),
        ValueError,
        "headway: the arguments do not fit together: line_speed has shape (2,), spacing has shape (3,). "
        "Give one value, or as many values as the others.",
    ),
    (
        lambda: liftcalc.spacing_for_headway(Q(1e200, "m/s"), Q(1e200, "s")),
        ValueError,
        "spacing_for_headway: the result is no finite number. Check the size of the arguments.",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3], "m"), Q([0.5, 0.4], "")),
        ValueError,
        "mean_spacing: the shares add up to 0.900, not to 1. Write each as a part of all riders, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3], "m"), Q([0.5, 0.49], "")),
        ValueError,
        "mean_spacing: the shares add up to 0.990, not to 1. Write each as a part of all riders, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3, 4], "m"), Q([33.4, 33.4, 33.3], "percent")),
        ValueError,
        "mean_spacing: the shares add up to 1.001, not to 1. Write each as a part of all riders, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3], "m"), Q(1.0, "")),
        ValueError,
        "mean_spacing: 2 spacings came with 1 shares. Give one share a spacing.",
    ),
    (
        lambda: liftcalc.observed_spacing(Q(60, "m"), Q(1, "person")),
        ValueError,
        "observed_spacing: riders must be two or more, but got 1. Count both the first and the last.",
    ),
    (
        lambda: liftcalc.rider_deceleration(grade=Q(0, ""), snow_friction=Q(0, "")),
        ValueError,
        "rider_deceleration: grade and snow_friction must not both be zero, or the rider never stops. "
        "Write a snow_friction such as Q(0.07, '').",
    ),
    (
        lambda: liftcalc.count_simulated_riders(
            line_speed=Q(6, "m/s"), spacing=Q(1e-6, "m"), counting_time=Q(3600, "s")
        ),
        ValueError,
        "count_simulated_riders: more than ten million riders would pass. Write a shorter counting_time, such as "
        "Q(3600, 's').",
    ),
    (
        lambda: Q("3.4", "m/s"),
        UnitError,
        "Q: the value must be a number, but got '3.4'. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: Q(None, "m/s"),
        UnitError,
        "Q: the value must be a number, but got None. Write for example Q(3.4, 'm/s').",
    ),
    (lambda: Q(True, "m"), UnitError, "Q: the value must be a number, but got True. Write for example Q(3.4, 'm/s')."),
    (
        lambda: Q(["a"], "m"),
        UnitError,
        "Q: the value must be a number, but got ['a']. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: Q(3, "furlongs_a_week"),
        UnitError,
        "Q: 'furlongs_a_week' is not a unit known here. "
        "Write a unit such as 'm/s', 'mph', 'ft', 's', 'person' or 'pph'.",
    ),
    (lambda: Q(3, 4), UnitError, "Q: the unit must be a text such as 'm/s', but got 4. Write Q(3.4, 'm/s')."),
    (
        lambda: show(3.4),
        UnitError,
        "show: the quantity needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s').",
    ),
    (lambda: show(SPEED, "ft"), UnitError, "show: 'ft' is no unit for a speed."),
    (
        lambda: Capacity(1800, "ideal"),
        UnitError,
        "Capacity: value must be an hourly capacity, but got 1800. Write Q(1800, 'pph').",
    ),
    (
        lambda: Capacity(Q(1800, "pph"), "best"),
        ValueError,
        "Capacity: level must be one of packing, ideal, governed, counted, but got 'best'.",
    ),
    (
        lambda: Capacity(Q(1800, "pph"), "ideal", 0),
        ValueError,
        "Capacity: lines must be a whole number, one or more, but got 0.",
    ),
]


@pytest.mark.parametrize(("call", "kind", "message"), MESSAGES, ids=[case[2][:60] for case in MESSAGES])
def test_message(call, kind, message):
    with pytest.raises(kind) as caught:
        call()
    assert str(caught.value) == message


@pytest.mark.parametrize("name", sorted(FORMULAS))
def test_every_argument_of_every_formula_is_checked(name):
    formula = FORMULAS[name]
    units = {argument: unit for argument, unit in formula.units.items() if argument != "returns"}
    good = {argument: Q(0.5 if unit == "" else 5.0, unit) for argument, unit in units.items()}
    for argument, unit in units.items():
        bad = [(2.0, UnitError), (Q(2.0, "candela"), UnitError), (Q(float("nan"), unit), ValueError)]
        bad += [(Q(float("-inf"), unit), ValueError), (Q(np.array([]), unit), ValueError), (Q(-1.0, unit), ValueError)]
        for value, kind in bad:
            with pytest.raises(kind, match=re.escape(f"{formula.__name__}: {argument} ")):
                formula(**{**good, argument: value})


def test_a_notebook_shows_the_message_without_the_path_through_the_code():
    with pytest.raises(UnitError) as caught:
        headway(3.4, LENGTH)
    assert caught.value._render_traceback_() == [f"UnitError: {caught.value}"]


def test_a_quantity_of_a_kind_not_met_here():
    with pytest.raises(UnitError, match="but got a quantity of another kind: 2 "):
        headway(Q(2, "candela"), LENGTH)
