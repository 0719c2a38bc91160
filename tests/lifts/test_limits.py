"""Each limit of a lift as a record, and what is left out for want of a reading."""

import heapq
import math
from dataclasses import FrozenInstanceError

import numpy as np
import pytest
from example_lines import pph
from example_tow import IDLE, LENGTH, MASS, POWER, PULL, SPACING, SPEED
from hypothesis import given
from hypothesis import strategies as st
from limits_of_the_tow import CROWD, DRIVE, EFFICIENCY, ENERGY, the_tow
from messages import refuses, table_of_messages

from liftcalc import Capacity, Q, UnitError
from liftcalc.formulas.loading_point import crowd_capacity_at_least, crowd_capacity_at_most
from liftcalc.formulas.pull import pull_energy
from liftcalc.formulas.slope_crowding import slope_capacity
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limit_records import LeftOut, Limit
from liftcalc.lifts.limits import (
    loading_limit,
    motor_limit,
    people_limit,
    rule_limit,
    slope_limit,
    spacing_limit,
    traction_limit,
    unload_limit,
)

# each limit

OWN_ARITHMETIC = [
    ("spacing", 1800), ("loading", 1200), ("motor", 1290), ("unload", 1440), ("people", 787), ("slope", 1920),
    ("rule", 1000),
]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "number"), OWN_ARITHMETIC, ids=[f"own arithmetic: {case[0]}" for case in OWN_ARITHMETIC]
)
def test_limits_of_the_example_tow(name, number):
    limit = next(limit for limit in the_tow() if limit.name == name)
    assert pph(limit) == pytest.approx(number, abs=0.6)
    assert limit.capacity.units == Q(1, "pph").units
    assert limit.sentence.endswith(".")


def test_groups_sources_and_inputs():
    by_name = {limit.name: limit for limit in the_tow()}
    groups = {name: limit.group for name, limit in by_name.items()}
    assert groups == {
        "spacing": "lift", "loading": "lift", "motor": "lift", "traction": "lift", "unload": "lift",
        "people": "people", "slope": "slope", "rule": "rule",
    }  # fmt: skip
    assert by_name["rule"].source == "the operating permit, page 3"
    assert by_name["rule"].sentence == "A permission, entered by you: the operating permit, page 3."
    assert by_name["spacing"].source == "entered by you"
    assert by_name["spacing"].inputs == {
        "line speed": SPEED, "spacing": SPACING, "persons per carrier": Q(1, "person")
    }  # fmt: skip
    assert str(by_name["spacing"]) == "spacing: 1,800 pph. 1 person every 6.8 m at 3.40 m/s: every 2.0 s."
    assert str(by_name["traction"]) == "traction: Left out, not zero: no reading of slack tension."


def test_a_limit_does_not_change():
    given_inputs = {"loading time": Q(3, "s")}
    limit = Limit("loading", Q(20, "person/minute"), "C", given_inputs, "One.")
    given_inputs["loading time"] = Q(1, "s")
    assert limit.inputs == {"loading time": Q(3, "s")}
    assert pph(limit) == pytest.approx(1200)
    bounded = Limit("people", Q(1200, "pph"), "C", {}, "One.", at_least=Q(10, "person/minute"))
    assert bounded.at_least.m_as("pph") == pytest.approx(600)
    with pytest.raises(FrozenInstanceError):
        limit.capacity = Q(1, "pph")


@pytest.mark.parametrize(("limit", "word"), [(loading_limit, "Loading"), (unload_limit, "Unloading")])
def test_places_that_were_not_read_are_taken_as_one_and_said(limit, word):
    unread, read = limit(Q(3, "s")), limit(Q(3, "s"), Q(1, "person"), Q(1, ""))
    assert unread.sentence == f"{read.sentence} {word} places taken as 1: not read."
    assert unread.capacity == read.capacity
    assert unread.inputs[f"{word.lower()} places"] == Q(1, "")


def test_persons_on_a_carrier_and_places():
    double = Q(2, "person")
    assert pph(spacing_limit(Q(2.2, "m/s"), Q(15.4, "m"), double)) == pytest.approx(3600 * 2 / 7)
    assert pph(loading_limit(Q(7, "s"), double)) == pytest.approx(3600 * 2 / 7)
    assert pph(loading_limit(Q(6, "s"), loading_places=Q(3, ""))) == pytest.approx(1800)
    assert pph(unload_limit(Q(6, "s"), double, Q(2, ""))) == pytest.approx(2400)


def test_loading_knows_no_speed_and_faster_is_not_more():
    # own arithmetic: half again the speed, and still 1,200, because loading governs
    for speed in (3.4, 5.1):
        result = governing([spacing_limit(Q(speed, "m/s"), SPACING), loading_limit(Q(3, "s"))])
        assert result.capacity.value.m_as("pph") == pytest.approx(1200)


def test_two_drives():
    slow = Q(1.7, "m/s")
    energy = pull_energy(PULL, LENGTH)
    geared = motor_limit(POWER, EFFICIENCY, slow, Q(0, "N"), energy)
    torque = motor_limit(POWER, EFFICIENCY, slow, Q(0, "N"), energy, base_speed=SPEED)
    assert pph(geared) == pytest.approx(1571, abs=0.5)
    assert pph(torque) == pytest.approx(pph(geared) / 2)
    assert torque.inputs["base speed"] == SPEED
    assert "base speed" not in geared.inputs
    assert geared.formula != torque.formula


def test_traction_turns_riders_on_the_line_into_riders_an_hour():
    top = traction_limit(Q(4423, "N"), **DRIVE)
    riders = (4423 * (math.exp(0.25 * math.pi) / 1.25 - 1) - 500) / PULL.m_as("N")
    assert pph(top) == pytest.approx(3600 * riders * 3.4 / 150, rel=1e-9)
    bottom = traction_limit(Q(4423, "N"), **{**DRIVE, "drive_position": "bottom"})
    assert pph(top) / pph(bottom) == pytest.approx(
        math.exp(0.25 * math.pi) / 1.25
    )  # each rider slackens the slack side
    assert "drive sheave at the top" in top.sentence
    assert "drive sheave at the bottom" in bottom.sentence


@pytest.mark.parametrize("drive", ["top", "bottom"])
def test_a_start_that_is_asked_for_counts_where_it_allows_fewer(drive):
    sheave = {**DRIVE, "drive_position": drive}
    steady = traction_limit(Q(4423, "N"), **sheave)
    start = {"starting_acceleration": Q(0.3, "m/s**2"), "rider_mass": MASS, "moving_mass": Q(400, "kg")}
    begun = traction_limit(Q(4423, "N"), **sheave, **start)
    assert pph(begun) < pph(steady)
    for words in ("in the steady run, ", "at a start of 0.30 m/s²: the smaller counts."):
        assert words in begun.sentence
    assert "M a" in begun.formula
    assert "M a" not in steady.formula
    assert begun.inputs["moving mass"] == Q(400, "kg")
    assert "a start asks for more" in steady.sentence
    for name in ("rider_mass", "moving_mass"):
        left_out = traction_limit(Q(4423, "N"), **sheave, **{**start, name: None})
        assert left_out.missing == (name.replace("_", " "),)


@given(crowd=st.floats(1, 400), laps=st.floats(30, 900), loading=st.floats(1, 12))
def test_bounds_of_a_closed_crowd(crowd, laps, loading):
    rest = {"ride_and_descent": Q(laps, "s"), "loading_time": Q(loading, "s")}
    limit = people_limit(Q(crowd, "person"), **rest)
    most, least = pph(limit), limit.at_least.m_as("pph")
    assert 0 < least <= most * (1 + 1e-12)
    assert most <= 3600 / loading * (1 + 1e-12)  # never faster than the loading point
    assert most == pytest.approx(min(3600 * crowd / (laps + loading), 3600 / loading))
    laps_of_the_slowest = 3600 / (laps + crowd * loading)  # behind everybody, every time
    assert least == pytest.approx(crowd * laps_of_the_slowest)
    assert crowd_capacity_at_most(Q(crowd, "person"), **rest).m_as("pph") == pytest.approx(most)
    assert crowd_capacity_at_least(Q(crowd, "person"), **rest).m_as("pph") == pytest.approx(least)


def test_own_arithmetic_more_people_are_no_more_rides():
    few, many = people_limit(Q(61, "person"), **CROWD), people_limit(Q(120, "person"), **CROWD)
    assert [pph(few), pph(many)] == [pytest.approx(1200), pytest.approx(1200)]
    without_a_loading_point = 3600 * 120 / 183
    assert without_a_loading_point == pytest.approx(2361, abs=0.5)
    assert pph(many) / 120 == pytest.approx(10)  # ten laps an hour each


def flow_of_a_crowd(crowd, loading_time, seed, laps=20_000):
    """Return riders an hour of a simulated crowd: one queue, a fixed loading time, ride and descent of 90 to 270 s."""
    random = np.random.default_rng(seed)
    back_at = np.sort(random.uniform(90, 270, crowd)).tolist()
    free = 0.0
    for ride_and_descent in random.uniform(90, 270, laps).tolist():
        free = max(free, heapq.heappop(back_at)) + loading_time
        heapq.heappush(back_at, free + ride_and_descent)
    return 3600 * laps / free


@pytest.mark.parametrize("crowd", [10, 40, 61, 120])
def test_a_closed_crowd_simulated_stays_between_the_bounds(crowd):
    limit = people_limit(Q(crowd, "person"), **CROWD)
    flow = flow_of_a_crowd(crowd, 3.0, seed=crowd)
    assert limit.at_least.m_as("pph") < flow < pph(limit) * 1.005
    assert flow > 0.9 * pph(limit)


def test_own_arithmetic_a_crowd_of_61_makes_about_1137():
    flows = np.array([flow_of_a_crowd(61, 3.0, seed) for seed in range(8)])
    assert abs(flows.mean() - 1137) < 0.5 + 4 * flows.std(ddof=1) / math.sqrt(flows.size)  # the bound is 1,200


@given(density=st.floats(5, 80), area=st.floats(0.2, 60), time=st.floats(20, 900), factor=st.floats(0.2, 5))
def test_room_on_the_slope(density, area, time, factor):
    limit = slope_limit(Q(density, "person/hectare"), Q(area, "hectare"), Q(time, "s"))
    on_it_at_once = pph(limit) / 3600 * time
    assert on_it_at_once == pytest.approx(density * area)
    slower = slope_capacity(Q(density, "person/hectare"), Q(area, "hectare"), Q(factor * time, "s"))
    assert slower.m_as("pph") == pytest.approx(pph(limit) / factor)


def test_a_capacity_with_its_level_may_be_a_limit():
    rule = rule_limit(Capacity(Q(1000, "pph"), "ideal"), "the permit")
    assert pph(rule) == 1000


# what is left out

MISSING = [
    (lambda: spacing_limit(None, SPACING), "spacing", "lift", ("line speed",)),
    (lambda: spacing_limit(None, None), "spacing", "lift", ("line speed", "spacing")),
    (lambda: loading_limit(None), "loading", "lift", ("loading time",)),
    (lambda: motor_limit(POWER, EFFICIENCY, SPEED, None, ENERGY), "motor", "lift", ("idle drag",)),
    (lambda: traction_limit(None, **DRIVE), "traction", "lift", ("slack tension",)),
    (
        lambda: traction_limit(Q(1, "N"), **{**DRIVE, "lining_friction": None}),
        "traction",
        "lift",
        ("lining friction",),
    ),
    (lambda: traction_limit(Q(1, "N"), **{**DRIVE, "drive_position": None}), "traction", "lift", ("drive position",)),
    (lambda: unload_limit(None), "unload", "lift", ("clearing time",)),
    (lambda: people_limit(None, **CROWD), "people", "people", ("crowd",)),
    (lambda: slope_limit(None, Q(1, "hectare"), Q(90, "s")), "slope", "slope", ("rider density",)),
    (lambda: rule_limit(None, "the permit"), "rule", "rule", ("hourly capacity of the rule",)),
    (lambda: rule_limit(Q(1000, "pph"), None), "rule", "rule", ("source of the rule",)),
    (lambda: rule_limit(Q(1000, "pph"), "  "), "rule", "rule", ("source of the rule",)),
]


@pytest.mark.parametrize(("call", "name", "group", "missing"), MISSING, ids=[f"{c[1]}: {c[3]}" for c in MISSING])
def test_a_missing_reading_leaves_the_limit_out(call, name, group, missing):
    found = call()
    assert isinstance(found, LeftOut)
    assert (found.name, found.group, found.missing) == (name, group, missing)
    assert found.sentence == f"Left out, not zero: no reading of {' and '.join(missing)}."


# bad input

MESSAGES = [
    (
        lambda: Limit("motor", 1200, "", {}, ""),
        "Limit: 'motor' needs an hourly capacity, but got 1200. Write Q(1200, 'pph').",
        UnitError,
    ),
    (
        lambda: Limit("motor", Q([1200, 1300], "pph"), "", {}, ""),
        "Limit: 'motor' must be one number, but got 2. For draws use share_of_draws.",
    ),
    (
        lambda: Limit("motor", Q(-5, "pph"), "", {}, ""),
        "Limit: 'motor' must be a finite number, zero or more, but got -5 pph.",
    ),
    (
        lambda: Limit("motor", Q(1200, "pph"), "", {}, "", "drive"),
        "Limit: group must be one of lift, people, slope, rule, but got 'drive'.",
    ),
    (
        lambda: Limit("spacing", Capacity(Q(10000, "pph"), "packing"), "", {}, ""),
        "Limit: 'spacing' got 10,000 pph (packing), which is no limit of one line. "
        "Give an ideal or governed capacity of one line.",
    ),
    (
        lambda: rule_limit(Capacity(Q(2000, "pph"), "ideal", 2), "the permit"),
        "Limit: 'rule' got 2,000 pph (ideal, 2 lines together), which is no limit of one line. "
        "Give an ideal or governed capacity of one line.",
    ),
    (
        lambda: rule_limit(Q(1000, "pph"), 7),
        "rule_limit: source must be a text, but got 7. Write where the rule stands.",
    ),
    (
        lambda: spacing_limit(3.4, SPACING),
        "hourly_capacity: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: motor_limit(POWER, Q(85, ""), SPEED, IDLE, ENERGY),
        "motor_capacity: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: slope_limit(Q(40, "person"), Q(1, "hectare"), Q(90, "s")),
        "slope_capacity: rider_density must be a density of riders, but got a number of persons: 40 person. "
        "Write for example Q(40, 'person/hectare').",
        UnitError,
    ),
    (
        lambda: slope_limit(Q(40, "person/hectare"), Q(1, "m"), Q(90, "s")),
        "slope_capacity: slope_area must be an area, but got a length: 1 m. Write for example Q(1.2, 'hectare').",
        UnitError,
    ),
    (
        lambda: traction_limit(Q(4423, "N"), **{**DRIVE, "drive_position": "middle"}),
        "traction_limit: drive_position must be 'top' or 'bottom', but got 'middle'. "
        "Ask the operator where the drive sheave stands.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
