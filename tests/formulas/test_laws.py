"""Laws that hold for every formula: arrays, units, and what is refused; and routes that must agree."""

import inspect
import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from ranges import gaps, lengths, persons, speeds

import liftcalc
from liftcalc import Q, UnitError, ureg
from liftcalc.units import FORMULAS


def pick(argument, unit, number):
    """Return a sensible plain value for an argument; the number is between 0 and 1."""
    by_name = {"grip_safety_factor": (1, 3), "ridden_length": (30, 500), "pick_up_acceleration": (1, 4),
               "altitude": (0, 4000), "carriers_on_loop": (20, 100), "carriers_out": (0, 19), "ride_time": (40, 900),
               "acceleration": (2, 4), "salvage": (0, 9), "variable_cost": (0, 0.4), "arrival_rate": (0.5, 3.9),
               "second_moment": (9e5, 2e6)}  # fmt: skip
    low, high = by_name.get(argument) or {
        "m/s": (0.3, 6), "m": (2, 500), "ft": (5, 900), "s": (1, 900), "person": (2, 90),
        "person/hour": (100, 4000), "m/s**2": (0.3, 4), "": (0.05, 0.9),
        "kW": (5, 60), "N": (20, 900), "kg": (30, 120), "J": (5e3, 2e5), "kg/m": (0.2, 2), "degree": (1, 60),
        "hectare": (0.5, 50), "person/hectare": (5, 80), "kg*m**2": (0.01, 5),
        "dollar": (10, 9e5), "dollar/season": (10, 1e5), "dollar/person": (0.5, 5), "person/season": (1e3, 1e5),
        "season": (1, 40), "hour/season": (10, 900), "dollar/hour": (0, 40), "dollar/kilowatt_hour": (0, 1),
        "dollar/kW": (0, 30),
        "hour": (1, 12), "person*ft/hour": (1e4, 1e7),
    }[unit]  # fmt: skip
    return low + number * (high - low)


ELEMENTWISE = sorted(
    set(FORMULAS)
    - {"liftcalc.formulas.spacing.mean_spacing", "liftcalc.formulas.cost.common_peak"}
    - {"liftcalc.simulation.two_minute_count.count_simulated_riders"}
)


@pytest.mark.parametrize("name", ELEMENTWISE)
@given(numbers=st.lists(st.floats(0, 1), min_size=12, max_size=12))
def test_an_array_gives_what_its_scalars_give(name, numbers):
    formula = FORMULAS[name]
    units = {argument: unit for argument, unit in formula.units.items() if argument != "returns"}
    arrays = {
        argument: np.array([pick(argument, unit, numbers[(3 * place + step) % 12]) for step in range(3)])
        for place, (argument, unit) in enumerate(units.items())
    }
    copies = {argument: array.copy() for argument, array in arrays.items()}
    together = formula(**{argument: Q(array, units[argument]) for argument, array in arrays.items()})
    one_by_one = [
        formula(**{argument: Q(float(array[step]), units[argument]) for argument, array in arrays.items()}).magnitude
        for step in range(3)
    ]
    np.testing.assert_allclose(together.magnitude, one_by_one, rtol=1e-12)
    assert together.units == ureg.Unit(formula.units["returns"])
    for argument, array in arrays.items():
        np.testing.assert_array_equal(array, copies[argument], err_msg="a formula wrote into its argument")
    plain = formula.plain(**arrays)
    np.testing.assert_allclose(plain, one_by_one, rtol=1e-12)


@pytest.mark.parametrize("name", sorted(FORMULAS))
def test_the_unit_of_an_argument_does_not_matter(name):
    formula = FORMULAS[name]
    units = {argument: unit for argument, unit in formula.units.items() if argument != "returns"}
    other = {"m/s": "mph", "m": "ft", "ft": "m", "s": "minute", "person/hour": "person/s", "m/s**2": "ft/s**2"}
    values = {argument: Q(pick(argument, unit, 0.37), unit) for argument, unit in units.items()}
    if "shares" in values:
        values |= {"spacings": Q([2.0, 4.0], "m"), "shares": Q([0.25, 0.75], "")}
    if "counting_time" in values and "line_speed" in values:
        values["first_rider_away"] = Q(1.0, "m")
    turned = {argument: value.to(other.get(units[argument], value.units)) for argument, value in values.items()}
    assert formula(**turned).magnitude == pytest.approx(formula(**values).magnitude, rel=1e-9)


def test_arguments_of_one_kind_are_keyword_only():
    for name, formula in FORMULAS.items():
        units = [unit for argument, unit in formula.units.items() if argument != "returns"]
        free = [
            formula.units[parameter.name]
            for parameter in inspect.signature(formula).parameters.values()
            if parameter.kind is not inspect.Parameter.KEYWORD_ONLY
        ]
        assert len(free) == len(set(free)), f"{name}: two of {units} can be swapped and nobody would notice"


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


@given(speed=speeds, gap=gaps, length=lengths, group=persons)
def test_the_routes_agree(speed, gap, length, group):
    v, s, length_, n = Q(speed, "m/s"), Q(gap, "m"), Q(length, "m"), Q(group, "person")
    first = liftcalc.hourly_capacity(v, s, n)
    on_line, ride = (
        liftcalc.persons_on_line(ridden_length=length_, spacing=s, persons_per_carrier=n),
        liftcalc.ride_time(length_, v),
    )
    assert liftcalc.hourly_capacity_from_head_count(on_line, ride).magnitude == pytest.approx(first.magnitude)
    assert liftcalc.persons_from_flow(first, ride).magnitude == pytest.approx(on_line.magnitude)
    by_interval = liftcalc.hourly_capacity_from_interval(liftcalc.headway(v, s), n)
    assert by_interval.magnitude == pytest.approx(first.magnitude)


@given(speed=speeds, gap=gaps, group=persons)
def test_round_trips(speed, gap, group):
    v, s, n = Q(speed, "m/s"), Q(gap, "m"), Q(group, "person")
    time = liftcalc.headway(v, s)
    assert liftcalc.spacing_for_headway(v, time).magnitude == pytest.approx(gap)
    assert liftcalc.line_speed_for_headway(s, time).magnitude == pytest.approx(speed)
    assert liftcalc.interval_from_headway(liftcalc.headway_from_interval(time, n), n).magnitude == pytest.approx(
        time.magnitude
    )
    capacity = liftcalc.hourly_capacity(v, s, n)
    assert liftcalc.spacing_for_capacity(capacity, v, n).magnitude == pytest.approx(gap)
    assert liftcalc.interval_for_capacity(capacity, n).magnitude == pytest.approx(time.magnitude)
