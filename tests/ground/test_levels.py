"""Levels of a capacity, and comparisons of like with like."""

import re
import warnings

import pytest
from messages import refuses, table_of_messages

from liftcalc import Capacity, LevelWarning, Q, UnitError, compare
from liftcalc.levels import LEVELS


def test_a_capacity_carries_its_level():
    assert str(Capacity(Q(1800, "pph"), "ideal")) == "1,800 pph (ideal)"
    assert str(Capacity(Q(30, "person/minute"), "counted", 2)) == "1,800 pph (counted, 2 lines together)"
    assert list(LEVELS) == ["packing", "ideal", "governed", "simulated", "counted"]


def test_like_with_like_is_silent():
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        result = compare(Capacity(Q(1800, "pph"), "ideal"), Capacity(Q(1200, "pph"), "ideal"))
    assert result.ratio == pytest.approx(1.5)
    assert result.like_for_like
    assert str(result) == "1.50 to 1, both ideal"


def test_two_levels_warn_and_give_the_like_for_like_ratio():
    chair = [Capacity(Q(850, "pph"), "counted"), Capacity(Q(1000, "pph"), "ideal")]
    with pytest.warns(LevelWarning, match="are not of one level; like for like the ratio is 1.80 to 1, both ideal"):
        result = compare(Capacity(Q(1800, "pph"), "ideal"), chair)
    assert result.ratio == pytest.approx(1.8)
    assert result.like_for_like


def test_two_levels_without_a_common_one_warn():
    with pytest.warns(LevelWarning, match="no common level was given; 2.12 to 1 compares unlike things"):
        result = compare(Capacity(Q(1800, "pph"), "ideal"), Capacity(Q(850, "pph"), "counted"))
    assert not result.like_for_like


def test_one_line_against_two_lines_warns():
    with pytest.warns(LevelWarning, match="2 lines together"):
        compare(Capacity(Q(3600, "pph"), "ideal", 2), Capacity(Q(1800, "pph"), "ideal"))


TWO, ONE, COUNTED = (Capacity(Q(3600, "pph"), "ideal", 2), Capacity(Q(1700, "pph"), "ideal"),
                     Capacity(Q(900, "pph"), "counted"))  # fmt: skip
OTHER, OTHER_COUNTED = Capacity(Q(850, "pph"), "ideal"), Capacity(Q(720, "pph"), "counted")
UNLIKE = [  # first, second, ratio, whether like for like, words
    ([TWO, ONE], OTHER, 2.0, True, "both ideal: 1,700 pph (ideal) to 850 pph (ideal)"),
    (OTHER, [TWO, ONE], 0.5, True, "both ideal: 850 pph (ideal) to 1,700 pph (ideal)"),
    ([TWO, COUNTED], [OTHER, OTHER_COUNTED], 1.25, True, "both counted: 900 pph (counted) to 720 pph (counted)"),
    ([TWO, COUNTED], [OTHER], 3600 / 850, False, "no common level was given; 4.24 to 1 compares unlike things"),
    ([COUNTED, ONE], [OTHER, Capacity(Q(0, "pph"), "counted")], 2.0, True, "both ideal"),
    ([COUNTED], [OTHER, Capacity(Q(0, "pph"), "counted")], 900 / 850, False, "no common level was given"),
]


@pytest.mark.parametrize(("first", "second", "ratio", "like", "words"), UNLIKE)
def test_one_line_is_never_compared_with_two_as_like_for_like(first, second, ratio, like, words):
    with pytest.warns(LevelWarning, match=re.escape(words)):
        result = compare(first, second)
    assert result.ratio == pytest.approx(ratio, rel=1e-12)
    assert result.like_for_like is like


def test_two_lines_compared_with_two_are_like_for_like():
    assert str(compare(TWO, Capacity(Q(1440, "pph"), "ideal", 2))) == "2.50 to 1, both ideal, 2 lines together"


def test_design_against_realised():
    # manager's notes of a Colorado ski area, October 2010: design 1,800 pph, about 1,300 with learners (72 %)
    with pytest.warns(LevelWarning):
        result = compare(Capacity(Q(1300, "pph"), "counted"), Capacity(Q(1800, "pph"), "ideal"))
    assert round(100 * result.ratio) == 72


MESSAGES = [
    (
        lambda: compare([], OTHER),
        "compare: a list of capacities is empty. Give at least one Capacity for each lift.",
    ),
    (
        lambda: compare(OTHER, Capacity(Q(0, "pph"), "ideal")),
        "compare: the second capacity is zero, so there is no ratio. Give one greater than zero.",
    ),
    (
        lambda: Capacity(1800, "ideal"),
        "Capacity: value must be an hourly capacity, but got 1800. Write Q(1800, 'pph').",
        UnitError,
    ),
    (
        lambda: Capacity(Q(1800, "pph"), "best"),
        "Capacity: level must be one of packing, ideal, governed, simulated, counted, but got 'best'.",
    ),
    (lambda: Capacity(Q(1800, "pph"), "ideal", 0), "Capacity: lines must be a whole number, one or more, but got 0."),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
