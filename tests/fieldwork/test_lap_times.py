"""Lap times: mean, spread and doubt, the speed of the rope from them, and messages on what cannot be read."""

import numpy as np
import pytest
from messages import SOMETHING, refuses, table_of_messages
from places import DATA

from liftcalc import Q, UnitError, show
from liftcalc.fieldwork.lap_times import lap_times_from_text, line_speed_from_laps, read_lap_times
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.units import PlainError


def test_lap_times_give_mean_spread_and_doubt():
    laps = lap_times_from_text("laps.csv", "lap,seconds,note\n1,44.0,\n2,44.6,windy\n3,43.4,\n4,44.4,\n")
    times = np.array([44.0, 44.6, 43.4, 44.4])
    assert laps.mean.m_as("s") == pytest.approx(times.mean(), rel=1e-12)
    assert laps.spread.m_as("s") == pytest.approx(times.std(ddof=1), rel=1e-12)
    expected = np.hypot(times.std(ddof=1), 0.1 / np.sqrt(12)) / 2
    assert laps.mean_uncertainty.m_as("s") == pytest.approx(expected, rel=1e-12)
    assert laps.half_width_95.m_as("s") == pytest.approx(3.182446 * expected, rel=1e-6)  # Student's t, 3 degrees
    assert (laps.degrees_of_freedom, laps.far_laps, laps.notes_of_laps[1]) == (3, (), "windy")


def test_the_stated_95_percent_of_lap_times_hold():
    rng, inside, files = np.random.default_rng(4), 0, 1000
    for _ in range(files):
        rows = "\n".join(f"{number},{time:.1f}" for number, time in enumerate(rng.normal(44.1, 0.4, size=5)))
        laps = lap_times_from_text("laps.csv", f"lap,seconds\n{rows}")
        inside += abs(laps.mean.m_as("s") - 44.1) <= laps.half_width_95.m_as("s")
    assert abs(inside - 0.95 * files) < 4 * np.sqrt(files * 0.95 * 0.05)


def test_laps_as_spreadsheets_write_them(tmp_path):
    path = tmp_path / "laps.csv"
    path.write_bytes('\ufeffnote;seconds;lap\r\n;44,1;a\r\n;;b\r\n\r\n"slow; rope";44,5;c\r\n'.encode())
    laps = read_lap_times(path)
    assert laps.laps == ("a", "c")
    assert laps.mean.m_as("s") == pytest.approx(44.3)
    assert laps.notes_of_laps == ("", "slow; rope")
    assert "Row 3 left out: lap b has no time." in laps.sentences


def test_equal_laps_keep_the_doubt_of_their_last_digit():
    laps = lap_times_from_text("laps.csv", "seconds\n44\n44\n44\n")
    assert laps.laps == ("1", "2", "3")
    assert laps.mean_uncertainty.m_as("s") == pytest.approx(1 / 6)  # 1 s / sqrt(12) / sqrt(3)


def test_one_lap_has_no_spread_but_a_doubt():
    laps = lap_times_from_text("laps.csv", "lap,seconds\n1,44.0\n")
    assert laps.spread is None
    assert laps.mean_uncertainty.m_as("s") == pytest.approx(0.3)
    assert laps.half_width_95.m_as("s") == pytest.approx(0.588, abs=1e-9)  # 1.96 of them
    assert laps.degrees_of_freedom == 0
    assert laps.sentences[0].startswith("One lap, 44.0 s: no spread to judge it by.")


# far is beyond four spreads from the middle lap. A spread is 1.4826 times the middle distance from it, and at the least
# 1 % of it: with one more lap the uneven ones have 0.4 s, so far is beyond 2.37 s, and equal laps 4 % of a lap
UNEVEN, EVEN = (43.4, 43.6, 43.8, 44.0, 44.2, 44.4), (44.0, 44.0, 44.0, 44.0)
ONE_MORE = [  # laps, one more lap, whether it is far, the others on the mean
    (UNEVEN, 46.34, False, None),
    (UNEVEN, 46.40, True, "43.9 s"),
    (EVEN, 45.74, False, None),
    (EVEN, 45.78, True, "44.0 s"),
    (EVEN, 42.26, False, None),
    (EVEN, 42.22, True, "44.0 s"),
    ((20.0, 20.0), 20.79, False, None),
    ((20.0, 20.0), 20.81, True, "20.0 s"),
    ((44.0,), 60.0, False, None),
]


@pytest.mark.parametrize(("others", "time", "far", "mean"), ONE_MORE)
def test_a_lap_is_far_beyond_four_spreads(others, time, far, mean):
    rows = "\n".join(f"{lap:.2f}" for lap in (*others, time))
    laps = lap_times_from_text("laps.csv", f"seconds\n{rows}\n")
    assert laps.far_laps == ((str(len(others) + 1),) if far else ())
    assert [said for said in laps.sentences if "stands apart" in said] == (
        [f"Lap {len(others) + 1} stands apart: {time:.1f} s, the others {mean} on the mean. It is in the mean; if you "
         f"know why it differs, leave it out with without=['{len(others) + 1}']."] if far else []
    )  # fmt: skip


def test_a_far_lap_is_pointed_at_and_dropped_only_by_the_reader():
    laps = read_lap_times(DATA / "penny_rope_laps.csv")
    assert laps.far_laps == ("7",)
    assert len(laps.laps) == 10
    (said,) = [sentence for sentence in laps.sentences if sentence.startswith("Lap 7 stands apart")]
    assert "Its note says: rope slowed for a fallen rider. It is in the mean;" in said
    without = read_lap_times(DATA / "penny_rope_laps.csv", without=["7"])
    assert len(without.laps) == 9
    assert without.far_laps == ()
    assert any(sentence.startswith("Left out by you: lap 7, ") for sentence in without.sentences)
    tape = {"ridden_length_uncertainty": Q(1, "m")}
    rope, doubt = line_speed_from_laps(without, Q(150, "m"), **tape, pick_up_acceleration=Q(1.5, "m/s**2"))
    assert abs(rope.m_as("m/s") - 3.4) < 2 * doubt.m_as("m/s")
    speed, doubt = line_speed_from_laps(without, Q(150, "m"), **tape)
    assert rope.m_as("m/s") - speed.m_as("m/s") > 2 * doubt.m_as("m/s"), "the mean of the ride is not the rope"
    assert doubt.m_as("m/s") == pytest.approx(
        speed.m_as("m/s") * np.hypot(1 / 150, without.mean_uncertainty.m_as("s") / without.mean.m_as("s")), rel=1e-12
    )
    refuses(
        lambda: read_lap_times(DATA / "penny_rope_laps.csv", without=["70"]),
        "penny_rope_laps.csv: there is no lap '70' to leave out. The laps are 1, 2, 3, 4, 5, 6, 7, 8, 9, 10.",
        FieldFileError,
    )


LAP_FAULTS = [  # text, message
    (
        "lap,time\n1,44\n",
        "laps.csv, row 1: the column 'seconds' is missing; the heading row reads 'lap, time'. Write: lap,seconds,note",
    ),
    ("lap,seconds\n1,fast\n", "laps.csv, row 2, column seconds: 'fast' is no number. Write digits only, such as 3.4."),
    (
        "lap,seconds\n1,<b>44</b>\n",
        "laps.csv, row 2, column seconds: '<b>44</b>' is no number. Write digits only, such as 3.4.",
    ),
    ("lap,seconds\n1,0:99\n", "laps.csv, row 2, column seconds: '0:99' is no number. Write digits only, such as 3.4."),
    (
        "lap,seconds\n1,44\n2,-3\n",
        "laps.csv, row 3, column seconds: a lap takes more than 0 s and at most 36,000 s, but got -3. Write the "
        "time from grab to let-go in seconds.",
    ),
    (
        "lap,seconds\n1,0\n",
        "laps.csv, row 2, column seconds: a lap takes more than 0 s and at most 36,000 s, but got 0. Write the "
        "time from grab to let-go in seconds.",
    ),
    (
        "lap,seconds\n1,99999\n",
        "laps.csv, row 2, column seconds: a lap takes more than 0 s and at most 36,000 s, but got 99999. Write "
        "the time from grab to let-go in seconds.",
    ),
    (
        "lap,seconds\n1,44,1\n",
        "laps.csv, row 2: the row has 3 cells, but the heading has 2. Put a note that holds a comma between "
        "quotation marks, and write decimals with a point where commas part the cells.",
    ),
    (
        "lap;seconds\n1;44.1\n",
        "laps.csv, row 2, column seconds: '44.1' has the wrong decimal mark for this sheet. Write 44,1.",
    ),
    (
        'lap,seconds\n1,"44\n',
        f"laps.csv, row 2: the quotation marks do not close, or a cell is endless ({SOMETHING}). Remove or double "
        "the marks.",
    ),
    ("lap,seconds\n", "laps.csv: no lap is left. Each lap is a row such as: 1,44.2,"),
]


@table_of_messages(LAP_FAULTS, "text", kind=FieldFileError)
def test_a_fault_of_lap_times_is_named(text, message, kind):
    refuses(lambda: lap_times_from_text("laps.csv", text), message, kind)


LENGTH, PICK_UP = Q(150, "m"), Q(1.5, "m/s**2")


def steady_laps(seconds):
    """Return laps of one mean time, with a doubt of 0.1 s / sqrt(12) / sqrt(4)."""
    return lap_times_from_text("laps.csv", "seconds\n" + f"{seconds}\n" * 4)


def test_laps_of_riders_from_rest_give_the_speed_of_the_rope_not_the_mean_of_the_ride():
    laps = steady_laps(45.3)
    mean_of_the_ride, _ = line_speed_from_laps(laps, LENGTH)
    rope, _ = line_speed_from_laps(laps, LENGTH, pick_up_acceleration=PICK_UP)
    assert show(mean_of_the_ride) == "3.31 m/s"
    assert show(rope) == "3.40 m/s"
    # own arithmetic: the mean is v / (2 a T) too low
    low = 1 - (mean_of_the_ride / rope).m_as("")
    assert low == pytest.approx(rope.m_as("m/s") / (2 * 1.5 * 45.3), rel=1e-9)


def test_the_doubt_of_a_speed_from_laps_goes_by_the_sensitivities():
    """A second opinion: the uncertainties package on the formula written out."""
    from uncertainties import ufloat
    from uncertainties.umath import sqrt

    laps = steady_laps(45.3)
    length, time = ufloat(150, 0.6), ufloat(laps.mean.m_as("s"), laps.mean_uncertainty.m_as("s"))
    for doubt in (0.0, 0.3):
        hard = ufloat(1.5, doubt) if doubt else 1.5
        expected = hard * (time - sqrt(time * time - 2 * length / hard))
        speed, found = line_speed_from_laps(
            laps, LENGTH, ridden_length_uncertainty=Q(0.6, "m"), pick_up_acceleration=PICK_UP,
            pick_up_acceleration_uncertainty=Q(doubt, "m/s**2"),
        )  # fmt: skip
        assert speed.m_as("m/s") == pytest.approx(expected.nominal_value, rel=1e-12)
        assert found.m_as("m/s") == pytest.approx(expected.std_dev, rel=1e-9)
    _, without = line_speed_from_laps(laps, LENGTH, ridden_length_uncertainty=Q(0.6, "m"))
    assert found > 1.2 * without, "the doubt of the pick-up enters"


def test_a_speed_from_laps_says_what_was_taken_of_the_start():
    laps = steady_laps(45.3)
    assert line_speed_from_laps(laps, LENGTH).sentence == (
        "No pick-up was given: 3.31 m/s is the mean of the whole ride. Where riders start from rest, as on a rope tow, "
        "the rope is faster: at a pick-up of 1.50 m/s², say, it runs at 3.40 m/s, and the mean is 2.5 % too low. Give "
        "the pick-up acceleration. Where riders have the speed of the rope at once, as on a belt or a chair, nothing "
        "is missing."
    )
    assert line_speed_from_laps(laps, LENGTH, pick_up_acceleration=PICK_UP).sentence == (
        "Riders start from rest at 1.50 m/s²: length over time alone would be 3.31 m/s, 2.5 % too low."
    )
    short = line_speed_from_laps(steady_laps(3.0), Q(20, "m")).sentence
    assert short.startswith("No pick-up was given: 6.67 m/s is the mean of the whole ride.")
    assert "say, it runs" not in short, "nobody covers 20 m in 3 s at 1.5 m/s²"


PICK_UP_MISUSES = [  # what is given, message, kind
    (
        {"pick_up_acceleration": 1.5},
        "line_speed_from_ride_time: pick_up_acceleration needs a unit, but got the bare value 1.5. Write Q(1.5, "
        "'m/s**2').",
    ),
    (
        {"pick_up_acceleration": Q(1.5, "m/s")},
        "line_speed_from_ride_time: pick_up_acceleration must be an acceleration, but got a speed: 1.5 m/s. "
        "Write for example Q(1.5, 'm/s**2').",
    ),
    (
        {"pick_up_acceleration_uncertainty": Q(0.3, "m/s**2")},
        "line_speed_from_laps: pick_up_acceleration_uncertainty came without pick_up_acceleration. Give both, or "
        "the pick-up alone.",
        FieldFileError,
    ),
    (
        {"pick_up_acceleration": PICK_UP, "pick_up_acceleration_uncertainty": Q(0.3, "m/s")},
        "line_speed_from_laps: pick_up_acceleration_uncertainty must be an acceleration, but got 0.30 m/s. "
        "Write Q(0.3, 'm/s**2').",
    ),
    (
        {"pick_up_acceleration": Q(0.1, "m/s**2")},
        "line_speed_from_ride_time: nobody covers 150.0 m from rest in 45.3 s at 0.1 m/s². Time the ride again, "
        "or write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2').",
        PlainError,
    ),
]


@table_of_messages(PICK_UP_MISUSES, "named", kind=UnitError)
def test_a_pick_up_that_cannot_be_is_refused(named, message, kind):
    refuses(lambda: line_speed_from_laps(steady_laps(45.3), LENGTH, **named), message, kind)


MESSAGES = [
    (
        lambda: line_speed_from_laps(steady_laps(45.3), 150),
        "ride_time: ridden_length needs a unit, but got the bare value 150. Write Q(150, 'm').",
        UnitError,
    ),
    (
        lambda: line_speed_from_laps(steady_laps(45.3), LENGTH, ridden_length_uncertainty=1),
        "line_speed_from_laps: ridden_length_uncertainty must be a length, but got 1. Write Q(1, 'm').",
        UnitError,
    ),
    (
        lambda: line_speed_from_laps(steady_laps(45.3), Q(0, "m")),
        "ride_time: ridden_length must be greater than zero, but got 0 m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: line_speed_from_laps("laps.csv", LENGTH),
        "line_speed_from_laps: laps must come from read_lap_times, but got 'laps.csv'. "
        "Write line_speed_from_laps(read_lap_times('laps.csv'), Q(150, 'm')).",
        FieldFileError,
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)


def test_laps_as_a_stopwatch_shows_them():
    assert lap_times_from_text("laps.csv", "seconds\n1:13\n72.5\n0:59.5").times.m_as("s").tolist() == [73, 72.5, 59.5]
    assert lap_times_from_text("laps.csv", "lap;seconds\n1;1:13,5").times.m_as("s").tolist() == [73.5]
    with pytest.raises(FieldFileError, match=r"row 2, column seconds: '1:75' is no number"):
        lap_times_from_text("laps.csv", "seconds\n1:75")
