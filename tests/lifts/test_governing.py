"""Which limit governs, the envelope over line speeds, and shares of draws."""

import itertools
import math

import numpy as np
import pytest
from example_lines import LIMITS, pph
from example_tow import IDLE, SPEED
from hypothesis import given
from hypothesis import strategies as st
from limits_of_the_tow import EFFICIENCY, ENERGY, the_tow
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError, hourly_capacity
from liftcalc.formulas.motor import motor_capacity
from liftcalc.lifts.governing import AN_UPPER_BOUND, envelope, governing, share_of_draws
from liftcalc.lifts.limits import Limit, loading_limit, motor_limit, rule_limit, unload_limit

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
            "Left out for want of a reading: traction (slack tension)."
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


# the envelope


@given(
    curves=st.dictionaries(
        st.sampled_from(sorted(LIMITS)), st.lists(st.integers(0, 3000), min_size=6, max_size=6), min_size=1, max_size=3
    ),
    quarters=st.lists(st.integers(1, 8), min_size=6, max_size=6),
)
def test_the_envelope_lies_on_the_smallest_curve(curves, quarters):
    places = np.cumsum(quarters) / 4
    pieces = envelope(places, curves)
    for name, at, height in pieces:
        np.testing.assert_allclose(height, np.interp(at, places, curves[name]), rtol=1e-9, atol=1e-6)
    at, height = (np.concatenate([piece[number] for piece in pieces]) for number in (1, 2))
    assert (at[0], at[-1]) == (places[0], places[-1])
    assert np.all(np.diff(at) >= 0)
    smallest = np.min(list(curves.values()), axis=0)
    for place, least in zip(places, smallest, strict=True):
        np.testing.assert_allclose(height[at == place], least, atol=1e-9)
        assert place in at
    for left, right in itertools.pairwise(pieces):
        assert left[0] != right[0]
        assert (left[1][-1], left[2][-1]) == (right[1][0], right[2][0])


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
        lambda: governing([loading_limit(Q(3, "s")), Q(1200, "pph")]),
        "governing: every entry must be a Limit or a LeftOut, but got 1,200 pph.",
    ),
    (
        lambda: governing([loading_limit(Q(3, "s")), loading_limit(Q(2, "s"))]),
        "governing: 'loading' came 2 times. Give each limit once.",
    ),
    (
        lambda: governing([]),
        "governing: none of the lift's own limits can be computed; came: nothing. "
        "Give at least one, such as spacing_limit(Q(3.4, 'm/s'), Q(6.8, 'm')).",
    ),
    (
        lambda: governing([loading_limit(None), rule_limit(Q(1000, "pph"), "the permit")]),
        "governing: none of the lift's own limits can be computed; came: loading, rule. "
        "Give at least one, such as spacing_limit(Q(3.4, 'm/s'), Q(6.8, 'm')).",
    ),
    (
        lambda: share_of_draws({}),
        "share_of_draws: no limit came. Give an array of draws for each, such as {'motor': [1571, 1290]}.",
    ),
    (
        lambda: share_of_draws({"motor": [1200, 1300], "spacing": [1800]}),
        "share_of_draws: the draws do not fit together: motor has shape (2,), spacing has shape (1,). "
        "Give as many draws for each.",
    ),
    (lambda: share_of_draws({"motor": []}), "share_of_draws: motor holds no draws. Give at least one."),
    (
        lambda: share_of_draws({"motor": [1200, float("nan"), -3]}),
        "share_of_draws: motor holds 2 draws that are no capacity, such as nan pph. "
        "Leave that draw out of every limit.",
    ),
    (
        lambda: share_of_draws({"motor": Q([3.4, 3.5], "m/s")}),
        "share_of_draws: motor needs hourly capacities, but got meter / second. Give draws in pph.",
        UnitError,
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
