"""Facts of the trade. Every figure here is common practice, no published source."""

import pytest

from liftcalc import Capacity, LevelWarning, Q, compare, hourly_capacity, hourly_capacity_from_interval, show
from liftcalc.lifts.cost_of_lift import read_costs
from liftcalc.lifts.demo_hill import DATA

PRACTICE = "common practice, no published source"
ROPE = [(11, 7, 8297), (14, 7, 10560)]  # line speed [mph], practical spacing on a handle-less tow [ft], pph


@pytest.mark.parametrize(("mph", "feet", "pph"), ROPE, ids=[f"{PRACTICE}: {case[0]} mph" for case in ROPE])
def test_packing_figures_of_a_rope_tow(mph, feet, pph):
    capacity = hourly_capacity(Q(mph, "mph"), Q(feet, "ft"))
    assert round(capacity.m_as("pph")) == pph
    assert str(Capacity(capacity, "packing")) == f"{pph:,} pph (packing)"


@pytest.mark.parametrize(
    ("mph", "fraction", "cost"),
    [(11, 7 / 3, 1.24), (14, 3, 2.27)],
    ids=[f"{PRACTICE}: riders a second rounded to a simple fraction costs 1 to 2.5 %, {mph} mph" for mph in (11, 14)],
)
def test_rounding_riders_a_second_first(mph, fraction, cost):
    exact = hourly_capacity(Q(mph, "mph"), Q(7, "ft")).m_as("person/s")
    error = 100 * abs(fraction / exact - 1)
    assert 1 <= error <= 2.5
    assert error == pytest.approx(cost, abs=0.01)


@pytest.mark.parametrize("source", [f"{PRACTICE}: fixed quad about 2,400 pph"])
def test_packing_against_a_chair_is_no_comparison(source):
    tow = Capacity(hourly_capacity(Q(11, "mph"), Q(7, "ft")), "packing")
    quad = Capacity(hourly_capacity_from_interval(Q(6, "s"), Q(4, "person")), "ideal")
    assert show(quad.value) == "2,400 pph"
    with pytest.warns(LevelWarning, match="compares unlike things"):
        assert not compare(tow, quad).like_for_like


@pytest.mark.parametrize("source", [f"{PRACTICE}: a rope tow costs some 2 to 10 % of a chairlift"])
def test_prices_of_the_invented_hill_are_believable(source):
    price = {name: costs["price"] for name, costs in read_costs(DATA / "costs.csv").items()}
    for tow in ("Penny Rope", "Twin Penny right"):
        assert 2 <= (price[tow] / price["Lantern Double"]).m_as("percent") <= 10, tow
