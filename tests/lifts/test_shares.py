"""In what share of draws each limit of a line governs."""

import math

import pytest
from by_hand import energy_by_hand
from example_lines import TOW, TOW_READINGS
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.lifts.shares import draws_of, share_of_limits

HALF_WIDTHS = {
    "rider_mass": Q(8, "kg"), "efficiency": Q(5, "percent"), "loading_time": Q(0.4, "s"), "clearing_time": Q(0.4, "s"),
    "line_speed": Q(0.5, "ft/s"),
}  # fmt: skip


def test_shares_add_up_and_one_seed_gives_one_result():
    first, again, other = (share_of_limits(TOW, TOW_READINGS, HALF_WIDTHS, seed=seed) for seed in (7, 7, 8))
    assert first == again
    assert first != other
    assert sum(first.values()) == pytest.approx(1, abs=1e-12)
    assert list(first) == ["spacing", "loading", "motor", "unload"]
    assert first["spacing"] == 0  # 1,800 pph is out of reach of the others
    for share, name in ((first[name], name) for name in ("loading", "motor", "unload")):
        assert 0.1 < share < 0.8
        assert abs(share - other[name]) < 4 * math.sqrt(2 * share * (1 - share) / 20_000)


def backwards(mapping):
    """Return the same mapping with its names in the opposite order."""
    return dict(reversed(mapping.items()))


@pytest.mark.parametrize(
    ("readings", "half_widths"),
    [(TOW_READINGS, backwards(HALF_WIDTHS)), (backwards(TOW_READINGS), HALF_WIDTHS)],
    ids=["half-widths", "readings"],
)
def test_shares_do_not_hang_on_the_order_in_which_names_are_written(readings, half_widths):
    assert share_of_limits(TOW, readings, half_widths, seed=7) == share_of_limits(
        TOW, TOW_READINGS, HALF_WIDTHS, seed=7
    )


@pytest.mark.parametrize(("seed", "middle", "half"), [(1, 2.0, 0.5), (2, 2.1, 0.3), (3, 1.9, 0.4), (4, 1.8, 1.0)])
def test_a_share_against_its_closed_form(seed, middle, half):
    # a rider every 2.0 s on the rope: loading governs where its time is above 2.0 s, at even chances in between
    expected = min(max((middle + half - 2.0) / (2 * half), 0), 1)
    draws = 20_000
    found = share_of_limits(
        TOW, {"loading_time": Q(middle, "s")}, {"loading_time": Q(1000 * half, "millisecond")}, seed=seed, draws=draws
    )
    assert set(found) == {"spacing", "loading"}
    assert abs(found["loading"] - expected) < 4 * math.sqrt(expected * (1 - expected) / draws)
    assert found["spacing"] == pytest.approx(1 - found["loading"], abs=1e-12)


def test_the_share_of_the_motor_against_its_closed_form():
    # the motor falls below the loading point where the efficiency falls below one value: even chances around it
    readings = {name: value for name, value in TOW_READINGS.items() if name != "clearing_time"}
    numbers = {
        "ridden_length": 150, "vertical_rise": 29.4, "line_speed": 3.4, "rider_mass": 75, "snow_friction": 0.07,
        "pick_up_acceleration": 1.5, "idle_drag": 500,
    }  # fmt: skip
    as_much = (energy_by_hand("rope tow", numbers)["energy"] / 2.8 + 500 * 3.4) / 15_000
    expected = (as_much - 0.80) / 0.10
    assert 0.1 < expected < 0.9
    found = share_of_limits(TOW, readings, {"efficiency": Q(5, "percent")}, seed=11)
    assert abs(found["motor"] - expected) < 4 * math.sqrt(expected * (1 - expected) / 20_000)


def test_draws_that_no_formula_takes_are_left_out_and_counted():
    half_widths = {"efficiency": Q(20, "percent"), "loading_time": Q(0.4, "s")}  # from 0.65 to 1.05
    values, left_out = draws_of(TOW, TOW_READINGS, half_widths, seed=3)
    expected = 20_000 * 0.05 / 0.40
    assert abs(left_out - expected) < 4 * math.sqrt(expected)
    assert values["efficiency"].magnitude.max() <= 100  # percent
    assert values["efficiency"].size == values["loading_time"].size == 20_000 - left_out
    shares = share_of_limits(TOW, TOW_READINGS, half_widths, seed=3)
    assert sum(shares.values()) == pytest.approx(1)
    assert draws_of(TOW, TOW_READINGS, {"efficiency": Q(5, "percent")}, seed=3)[1] == 0


def test_no_doubt_leaves_one_limit_alone():
    assert share_of_limits(TOW, TOW_READINGS | {"loading_time": Q(3, "s")}, {}, seed=1, draws=5) == {
        "spacing": 0, "loading": 1, "motor": 0, "unload": 0
    }  # fmt: skip


def share_of_loading(half_width):
    """Return the shares where the loading time of 3 s has a half-width."""
    return share_of_limits(TOW, {"loading_time": Q(3, "s")}, {"loading_time": half_width}, seed=1)


MESSAGES = [
    (
        lambda: share_of_limits(TOW, {}, {"loading_time": Q(1, "s")}, seed=1),
        "share_of_limits: 'loading_time' has a half-width, but no value. "
        "Known: line_speed, spacing, persons_per_carrier, ridden_length, vertical_rise, motor_power.",
    ),
    (
        lambda: share_of_loading(Q(3, "s")),
        "share_of_limits: the half-width of loading_time must be less than 3.0 s, but got 3.0 s.",
    ),
    (
        lambda: share_of_loading(1),
        "share_of_limits: the half-width of loading_time must be of one kind with 3.0 s, but got 1. "
        "Write Q(..., 'second').",
        UnitError,
    ),
    (
        lambda: share_of_loading(Q(1, "m")),
        "share_of_limits: the half-width of loading_time must be of one kind with 3.0 s, but got 1.0 m. "
        "Write Q(..., 'second').",
        UnitError,
    ),
    (
        lambda: share_of_loading(Q(-1, "s")),
        "share_of_limits: the half-width of loading_time must be zero or more, but got -1.0 s.",
    ),
    (
        lambda: draws_of(TOW, TOW_READINGS | {"efficiency": Q(85, "")}, {"loading_time": Q(0.4, "s")}, seed=3),
        "share_of_limits: no draw fits the formulas. Look at efficiency, safety factor and pick-up.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
