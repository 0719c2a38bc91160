"""The budget of a doubt, and which reading to take again."""

import numpy as np
import pytest
from example_readings import EXAMPLE, LENGTH, READINGS, SAME, SPACING, SPEED, metres
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from scipy import stats

from liftcalc import Q, hourly_capacity
from liftcalc.tables import Table
from liftcalc.uncertainty import (
    Estimate,
    UncertaintyError,
    by_first_order,
    estimate_from_repeats,
    expand,
    if_measured_better,
    own_formula,
    reading_to_take_again,
    uncertainty_budget,
)


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


MESSAGES = [
    (
        lambda: budget_of({"line_speed": Q(3.4, "m/s"), "spacing": Q(6.8, "m")}),
        "uncertainty_budget: the result has no doubt: no reading has one that reaches it, or the doubts "
        "cancel. Give at "
        f"least one estimate with a doubt, such as {EXAMPLE}.",
    ),
    (
        lambda: budget_of(READINGS, also={"persons_per_carrier": Estimate(Q(1, "person"), Q(0.1, "person"))}),
        "uncertainty_budget: persons_per_carrier is an argument of hourly_capacity; give it with the readings, not in "
        "also.",
    ),
    (
        lambda: budget_of(READINGS, also={"ridden_length": Q(150, "m")}),
        "uncertainty_budget: ridden_length came without a doubt, so it has no row in a budget.",
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)
