"""The limits of a lift as records, which of them governs, and in what share of draws."""

import heapq
import math
from dataclasses import FrozenInstanceError

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from liftcalc import Capacity, Q, UnitError, hourly_capacity
from liftcalc.formulas.loading_point import crowd_capacity_at_least, crowd_capacity_at_most
from liftcalc.formulas.motor import motor_capacity
from liftcalc.formulas.pull import energy_per_rider, pull_energy, rope_pull
from liftcalc.formulas.slope_crowding import slope_capacity
from liftcalc.lifts.governing import AN_UPPER_BOUND, governing, share_of_draws
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

SPEED, SPACING, LENGTH, MASS = Q(3.4, "m/s"), Q(6.8, "m"), Q(150, "m"), Q(75, "kg")
POWER, EFFICIENCY, IDLE = Q(15, "kW"), Q(85, "percent"), Q(500, "N")
PULL = rope_pull(MASS, grade=Q(20, "percent"), snow_friction=Q(0.07, ""))
ENERGY = energy_per_rider(PULL, LENGTH, MASS, SPEED, Q(1.5, "m/s**2"))
SHEAVE = {
    "pull": PULL, "idle_drag": IDLE, "lining_friction": Q(0.25, ""), "wrap_angle": Q(180, "degree"),
    "grip_safety_factor": Q(1.25, ""), "ride_time": LENGTH / SPEED, "drive_position": "top",
}  # fmt: skip
CROWD = {"ride_and_descent": Q(180, "s"), "loading_time": Q(3, "s")}


def the_tow():
    """Return the limits of the example tow, one of each kind."""
    return [
        spacing_limit(SPEED, SPACING),
        loading_limit(Q(3, "s")),
        motor_limit(POWER, EFFICIENCY, SPEED, IDLE, ENERGY),
        traction_limit(None, **SHEAVE),
        unload_limit(Q(2.5, "s")),
        people_limit(Q(40, "person"), **CROWD),
        slope_limit(Q(40, "person/hectare"), Q(1.2, "hectare"), Q(90, "s")),
        rule_limit(Q(1000, "pph"), "the operating permit, page 3"),
    ]


def pph(limit):
    """Return the capacity of a limit as a plain number."""
    return limit.capacity.m_as("pph")


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
    top = traction_limit(Q(4423, "N"), **SHEAVE)
    riders = (4423 * (math.exp(0.25 * math.pi) / 1.25 - 1) - 500) / PULL.m_as("N")
    assert pph(top) == pytest.approx(3600 * riders * 3.4 / 150, rel=1e-9)
    bottom = traction_limit(Q(4423, "N"), **{**SHEAVE, "drive_position": "bottom"})
    assert pph(top) / pph(bottom) == pytest.approx(
        math.exp(0.25 * math.pi) / 1.25
    )  # each rider slackens the slack side
    assert "drive sheave at the top" in top.sentence
    assert "drive sheave at the bottom" in bottom.sentence


@pytest.mark.parametrize("drive", ["top", "bottom"])
def test_a_start_that_is_asked_for_counts_where_it_allows_fewer(drive):
    sheave = {**SHEAVE, "drive_position": drive}
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


# what is left out

MISSING = [
    (lambda: spacing_limit(None, SPACING), "spacing", "lift", ("line speed",)),
    (lambda: spacing_limit(None, None), "spacing", "lift", ("line speed", "spacing")),
    (lambda: loading_limit(None), "loading", "lift", ("loading time",)),
    (lambda: motor_limit(POWER, EFFICIENCY, SPEED, None, ENERGY), "motor", "lift", ("idle drag",)),
    (lambda: traction_limit(None, **SHEAVE), "traction", "lift", ("slack tension",)),
    (
        lambda: traction_limit(Q(1, "N"), **{**SHEAVE, "lining_friction": None}),
        "traction",
        "lift",
        ("lining friction",),
    ),
    (lambda: traction_limit(Q(1, "N"), **{**SHEAVE, "drive_position": None}), "traction", "lift", ("drive position",)),
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


# which one governs


def test_the_example_tow_in_words():
    result = governing(the_tow())
    assert result.limit.name == "loading"
    assert result.next_limit.name == "motor"
    assert result.ahead.m_as("pph") == pytest.approx(90.5, abs=0.6)
    assert result.ahead_share.m_as("percent") == pytest.approx(7.5, abs=0.1)
    assert str(result.capacity) == "1,200 pph (governed)"
    assert result.capacity.level == "governed"
    assert [limit.name for limit in result.in_order] == [
        "people", "rule", "loading", "motor", "unload", "spacing", "slope"
    ]  # fmt: skip
    assert [item.name for item in result.left_out] == ["traction"]
    assert (
        result.sentence
        == str(result)
        == (
            "Loading governs: at most 1,200 pph. Next comes motor, 90 pph, or 8%, above it. "
            f"{AN_UPPER_BOUND} "
            "Apart from the lift, people (demand) stands lower: 787 pph. "
            "Apart from the lift, rule (a permission) stands lower: 1,000 pph. "
            "Left out for want of a reading: traction."
        )
    )


def test_one_limit_alone_and_two_alike():
    alone = governing([loading_limit(Q(3, "s"))])
    assert alone.next_limit is alone.ahead is alone.ahead_share is None
    assert alone.sentence == f"Loading governs: at most 1,200 pph. {AN_UPPER_BOUND}"
    alike = governing([loading_limit(Q(3, "s")), unload_limit(Q(3, "s"))])
    assert alike.ahead.m_as("pph") == 0
    assert alike.sentence == f"Loading governs: at most 1,200 pph. Unload stands at the same figure. {AN_UPPER_BOUND}"


def test_a_motor_that_only_turns_the_rope_governs_at_zero():
    weak = motor_limit(Q(1, "kW"), EFFICIENCY, SPEED, IDLE, ENERGY)
    result = governing([weak, loading_limit(Q(3, "s"))])
    assert result.capacity.value.m_as("pph") == 0
    assert result.ahead.m_as("pph") == pytest.approx(1200)
    assert result.ahead_share is None
    assert "Next comes loading, 1,200 pph above it." in result.sentence


sizes = st.floats(0, 5000)


@given(
    lift=st.dictionaries(st.sampled_from("abcdefg"), sizes, min_size=1),
    others=st.dictionaries(st.sampled_from("uvwxyz"), sizes),
    order=st.randoms(use_true_random=False),
)
def test_the_governing_limit_is_the_smallest_of_the_lifts_own(lift, others, order):
    limits = [Limit(name, Q(size, "pph"), "", {}, "") for name, size in lift.items()]
    limits += [Limit(name, Q(size, "pph"), "", {}, "", "rule") for name, size in others.items()]
    order.shuffle(limits)
    result = governing(limits)
    assert pph(result.limit) == min(lift.values()) == result.capacity.value.m_as("pph")
    assert result.limit.group == "lift"
    assert [pph(limit) for limit in result.in_order] == sorted([*lift.values(), *others.values()])
    if len(lift) > 1:
        assert pph(result.next_limit) == sorted(lift.values())[1]
        assert result.ahead.m_as("pph") == pytest.approx(sorted(lift.values())[1] - min(lift.values()), abs=1e-9)
    assert ("Apart from the lift" in result.sentence) == any(size < min(lift.values()) for size in others.values())


def test_a_capacity_with_its_level_may_be_a_limit():
    rule = rule_limit(Capacity(Q(1000, "pph"), "ideal"), "the permit")
    assert pph(rule) == 1000


# the share of draws


@given(
    draws=st.lists(
        st.tuples(st.integers(1, 4), st.integers(1, 4), st.integers(1, 4)), min_size=1, max_size=40
    )
)  # fmt: skip
def test_shares_by_counting_one_draw_at_a_time(draws):
    names = ("spacing", "loading", "motor")
    counted = dict.fromkeys(names, 0.0)
    for draw in draws:
        smallest = [name for name, value in zip(names, draw, strict=True) if value == min(draw)]
        for name in smallest:
            counted[name] += 1 / len(smallest) / len(draws)
    columns = np.array(draws, dtype=float).T
    found = share_of_draws(dict(zip(names, columns, strict=True)))
    assert found == pytest.approx(counted)
    assert sum(found.values()) == pytest.approx(1)
    in_a_square = share_of_draws(
        {name: np.array([column, column]) for name, column in zip(names, columns, strict=True)}
    )
    assert in_a_square == pytest.approx(found)


def test_shares_of_two_close_limits_against_the_normal_law():
    random, count = np.random.default_rng(12), 40_000
    speed = random.normal(3.4, 0.05, count)
    spacing = hourly_capacity.plain(speed, random.normal(9.3, 0.4, count))
    motor = motor_capacity.plain(15.0, random.normal(0.85, 0.03, count), speed, 500.0, ENERGY.m_as("J"))
    share = share_of_draws({"spacing": spacing, "motor": Q(motor, "pph")})
    difference = spacing - motor
    expected = 0.5 * math.erfc(difference.mean() / difference.std() / math.sqrt(2))
    assert 0.1 < share["spacing"] < 0.9
    assert share["spacing"] == pytest.approx(expected, abs=0.01 + 4 * math.sqrt(0.25 / count))


# bad input

MESSAGES = [
    (
        lambda: Limit("motor", 1200, "", {}, ""),
        UnitError,
        "Limit: 'motor' needs an hourly capacity, but got 1200. Write Q(1200, 'pph').",
    ),
    (
        lambda: Limit("motor", Q([1200, 1300], "pph"), "", {}, ""),
        ValueError,
        "Limit: 'motor' must be one number, but got 2. For draws use share_of_draws.",
    ),
    (
        lambda: Limit("motor", Q(-5, "pph"), "", {}, ""),
        ValueError,
        "Limit: 'motor' must be a finite number, zero or more, but got -5 pph.",
    ),
    (
        lambda: Limit("motor", Q(1200, "pph"), "", {}, "", "drive"),
        ValueError,
        "Limit: group must be one of lift, people, slope, rule, but got 'drive'.",
    ),
    (
        lambda: Limit("spacing", Capacity(Q(10000, "pph"), "packing"), "", {}, ""),
        ValueError,
        "Limit: 'spacing' got 10,000 pph (packing), which is no limit of one line. "
        "Give an ideal or governed capacity of one line.",
    ),
    (
        lambda: rule_limit(Capacity(Q(2000, "pph"), "ideal", 2), "the permit"),
        ValueError,
        "Limit: 'rule' got 2,000 pph (ideal, 2 lines together), which is no limit of one line. "
        "Give an ideal or governed capacity of one line.",
    ),
    (
        lambda: rule_limit(Q(1000, "pph"), 7),
        ValueError,
        "rule_limit: source must be a text, but got 7. Write where the rule stands.",
    ),
    (
        lambda: spacing_limit(3.4, SPACING),
        UnitError,
        "hourly_capacity: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s').",
    ),
    (
        lambda: motor_limit(POWER, Q(85, ""), SPEED, IDLE, ENERGY),
        ValueError,
        "motor_capacity: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: slope_limit(Q(40, "person"), Q(1, "hectare"), Q(90, "s")),
        UnitError,
        "slope_capacity: rider_density must be a density of riders, but got a number of persons: 40 person. "
        "Write for example Q(40, 'person/hectare').",
    ),
    (
        lambda: slope_limit(Q(40, "person/hectare"), Q(1, "m"), Q(90, "s")),
        UnitError,
        "slope_capacity: slope_area must be an area, but got a length: 1 m. Write for example Q(1.2, 'hectare').",
    ),
    (
        lambda: traction_limit(Q(4423, "N"), **{**SHEAVE, "drive_position": "middle"}),
        ValueError,
        "traction_limit: drive_position must be 'top' or 'bottom', but got 'middle'. "
        "Ask the operator where the drive sheave stands.",
    ),
    (
        lambda: governing([loading_limit(Q(3, "s")), Q(1200, "pph")]),
        ValueError,
        "governing: every entry must be a Limit or a LeftOut, but got 1,200 pph.",
    ),
    (
        lambda: governing([loading_limit(Q(3, "s")), loading_limit(Q(2, "s"))]),
        ValueError,
        "governing: 'loading' came 2 times. Give each limit once.",
    ),
    (
        lambda: governing([]),
        ValueError,
        "governing: none of the lift's own limits can be computed; came: nothing. "
        "Give at least one, such as spacing_limit(Q(3.4, 'm/s'), Q(6.8, 'm')).",
    ),
    (
        lambda: governing([loading_limit(None), rule_limit(Q(1000, "pph"), "the permit")]),
        ValueError,
        "governing: none of the lift's own limits can be computed; came: loading, rule. "
        "Give at least one, such as spacing_limit(Q(3.4, 'm/s'), Q(6.8, 'm')).",
    ),
    (
        lambda: share_of_draws({}),
        ValueError,
        "share_of_draws: no limit came. Give an array of draws for each, such as {'motor': [1571, 1290]}.",
    ),
    (
        lambda: share_of_draws({"motor": [1200, 1300], "spacing": [1800]}),
        ValueError,
        "share_of_draws: the draws do not fit together: motor has shape (2,), spacing has shape (1,). "
        "Give as many draws for each.",
    ),
    (
        lambda: share_of_draws({"motor": []}),
        ValueError,
        "share_of_draws: motor holds no draws. Give at least one.",
    ),
    (
        lambda: share_of_draws({"motor": [1200, float("nan"), -3]}),
        ValueError,
        "share_of_draws: motor holds 2 draws that are no capacity, such as nan pph. "
        "Leave that draw out of every limit.",
    ),
    (
        lambda: share_of_draws({"motor": Q([3.4, 3.5], "m/s")}),
        UnitError,
        "share_of_draws: motor needs hourly capacities, but got meter / second. Give draws in pph.",
    ),
]


@pytest.mark.parametrize(("call", "kind", "message"), MESSAGES, ids=[case[2][:60] for case in MESSAGES])
def test_message(call, kind, message):
    with pytest.raises(kind) as caught:
        call()
    assert str(caught.value) == message
