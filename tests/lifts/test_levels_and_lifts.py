"""Levels of a capacity, lines and installations, and the table of the demo hill."""

import re
import warnings
from pathlib import Path

import pytest

from liftcalc import Capacity, LevelWarning, Q, UnitError, compare, hourly_capacity_from_interval
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.levels import LEVELS
from liftcalc.lifts.installation import Installation, read_lifts
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.line import Line
from liftcalc.lifts.tables import hill_table

DATA = Path(__file__).resolve().parents[2] / "data"


def line(**changes):
    settings = {
        "name": "tow",
        "kind": "rope tow",
        "line_speed": Q(3.4, "m/s"),
        "spacing": Q(6.8, "m"),
        "ridden_length": Q(150, "m"),
        "vertical_rise": Q(29.4, "m"),
        "motor_power": Q(15, "kW"),
    }
    return Line(**(settings | changes))


def test_a_capacity_carries_its_level():
    assert str(Capacity(Q(1800, "pph"), "ideal")) == "1,800 pph (ideal)"
    assert str(Capacity(Q(30, "person/minute"), "counted", 2)) == "1,800 pph (counted, 2 lines together)"
    assert list(LEVELS) == ["packing", "ideal", "governed", "counted"]


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


@pytest.mark.parametrize(
    ("first", "second", "message"),
    [
        ([], Capacity(Q(1, "pph"), "ideal"), "a list of capacities is empty"),
        (Capacity(Q(1, "pph"), "ideal"), Capacity(Q(0, "pph"), "ideal"), "the second capacity is zero"),
    ],
)
def test_compare_refuses(first, second, message):
    with pytest.raises(ValueError, match=message):
        compare(first, second)


def test_design_against_realised():
    # manager's notes of a Colorado ski area, October 2010: design 1,800 pph, about 1,300 with learners (72 %)
    with pytest.warns(LevelWarning):
        result = compare(Capacity(Q(1300, "pph"), "counted"), Capacity(Q(1800, "pph"), "ideal"))
    assert round(100 * result.ratio) == 72


def test_a_line_gives_all_that_follows_from_it():
    tow = line()
    assert str(tow.capacity) == "1,800 pph (ideal)"
    assert tow.interval.m_as("s") == pytest.approx(2)
    assert tow.ride_time.m_as("s") == pytest.approx(150 / 3.4)
    assert tow.persons_on_line.m_as("person") == pytest.approx(150 / 6.8)
    assert tow.vertical_transport.m_as("person*ft/hour") == pytest.approx(1800 * 29.4 / 0.3048)
    assert tow.carriers_on_loop is None
    assert line(kind="platter lift").carriers_on_loop.m_as("") == pytest.approx(2 * 150 / 6.8)


def test_an_installation_counts_each_line_with_its_own_speed_and_motor():
    slow = line(name="slow", line_speed=Q(2.4, "m/s"), spacing=Q(6, "m"), motor_power=Q(11, "kW"))
    both = Installation("both", (line(), slow))
    assert {name: str(capacity) for name, capacity in both.capacity_per_line.items()} == {
        "tow": "1,800 pph (ideal)",
        "slow": "1,440 pph (ideal)",
    }
    assert str(both.capacity_together) == "3,240 pph (ideal, 2 lines together)"
    assert both.motor_power_together.m_as("kW") == pytest.approx(26)
    assert Installation("one", (line(motor_power=None),)).motor_power_together is None


@pytest.mark.parametrize(
    ("changes", "kind", "message"),
    [
        ({"kind": "sky hook"}, ValueError, "kind must be one of rope tow, handle tow, platter lift, T-bar lift"),
        ({"level": "best"}, ValueError, "level must be one of"),
        ({"spacing": Q(0, "m")}, ValueError, "hourly_capacity: spacing must be greater than zero"),
        ({"ridden_length": 150}, UnitError, "ride_time: ridden_length needs a unit"),
        ({"motor_power": Q(-1, "kW")}, UnitError, "motor_power must be a power above zero"),
        ({"motor_power": 15}, UnitError, "motor_power must be a power above zero"),
    ],
)
def test_a_line_refuses(changes, kind, message):
    with pytest.raises(kind, match=message):
        line(**changes)


def test_an_installation_refuses():
    with pytest.raises(ValueError, match="'none' has no line"):
        Installation("none", ())
    with pytest.raises(ValueError, match="of different levels .counted, ideal."):
        Installation("mixed", (line(), line(name="other", level="counted")))


# believable ranges for small ski areas: common practice, no published source
RANGES = {
    "rope tow": {"speed": (2, 3.5), "spacing": (6, 12), "length": (80, 250), "motor": (7.5, 30)},
    "platter lift": {"speed": (2, 3), "interval": (6, 9), "length": (200, 600), "motor": (15, 45)},
    "conveyor": {"speed": (0.4, 0.7), "interval": (3.5, 7), "length": (40, 120), "motor": (5, 18)},
    "fixed chair": {"speed": (2, 2.5), "interval": (6, 8), "length": (350, 900), "motor": (35, 75)},
}


def test_the_demo_hill_is_believable():
    installations = read_lifts(DATA / "hill_lifts.csv")
    lines = [line for installation in installations.values() for line in installation.lines]
    assert {line.kind for line in lines} == set(RANGES) < set(KINDS)  # the hill has some of the kinds, not all
    for line_ in lines:
        numbers = {
            "speed": line_.line_speed.m_as("m/s"),
            "spacing": line_.spacing.m_as("m"),
            "interval": line_.interval.m_as("s"),
            "length": line_.ridden_length.m_as("m"),
            "motor": line_.motor_power.m_as("kW"),
        }
        for name, (low, high) in RANGES[line_.kind].items():
            assert low <= numbers[name] <= high + 1e-9, f"{line_.name}: {name} {numbers[name]}"
        assert line_.vertical_rise < line_.ridden_length
    assert len(hill_table(installations).rows) == len(lines) + 1


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("3.4 m/s", "3.4 ft", "row 2, column line_speed: 'ft' is a unit of a length, not of a speed"),
        ("6.8 m,", "six m,", "row 2, column spacing: 'six' is no number"),
        ("vertical_rise", "rise", "lifts.csv: no column 'vertical_rise'. Add it."),
        ("ridden_length", "length", "lifts.csv: column 'length' is not known. Write one of installation, line, kind"),
        ("150 m", "", "row 2: .*ridden_length does not follow from line_speed, spacing and persons_per_carrier"),
    ],
)
def test_a_broken_table_of_lifts_is_refused(tmp_path, old, new, message):
    text = (DATA / "hill_lifts.csv").read_text(encoding="utf-8")
    (tmp_path / "lifts.csv").write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(ValueError, match=message):
        read_lifts(tmp_path / "lifts.csv")


STARTS = [  # seconds, persons together, carriers, what stands beside the level, why
    (1.18, 1, None, "nobody loads so", "From rest it takes 1.2 s or more"),  # sqrt(2 x 2.1 m / 3 m/s2) is 1.183 s
    (1.19, 1, None, None, None),
    (1.18, 2, None, "nobody loads so", "From rest it takes 1.2 s or more"),
    (1.19, 2, None, None, None),
    (3.9, 3, None, "nobody loads so", "A group takes 4.0 s or more"),
    (3.9, 2, True, "nobody loads so", "A group takes 4.0 s or more"),
    (4.0, 8, True, None, None),
    (2.9, 1, True, "nobody loads so", "asks 3.0 s or more of a towing outfit for one: 34 Pa. Code s. 7.466"),
    (3.0, 1, True, None, None),
    (0.5, 8, False, "nobody loads so", "A start every 0.5 s at one place"),
]


@pytest.mark.parametrize(("seconds", "together", "carriers", "short", "why"), STARTS)
def test_a_capacity_says_where_nobody_loads_so(seconds, together, carriers, short, why):
    capacity = intended_capacity(
        hourly_capacity_from_interval(Q(seconds, "s"), Q(together, "person")),
        Q(seconds / 60, "minute"),
        Q(together, "person"),
        carriers=carriers,
    )
    assert (capacity.remark and capacity.remark.short) == short
    assert (why or "") in (capacity.remark.sentence if capacity.remark else "")
    assert str(capacity).endswith(f"(ideal; {short})" if short else "(ideal)")
    assert capacity.label == "ideal", "a remark keeps no two capacities of one level apart"


def test_an_interval_that_is_no_time_is_refused():
    with pytest.raises(UnitError, match="remark_on_loading: interval must be a time, but got 2"):
        intended_capacity(Q(1800, "pph"), 2)
