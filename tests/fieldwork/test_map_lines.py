"""Map lines and lap times: lengths and means with their doubts, and messages on what cannot be read."""

import json
import re
from pathlib import Path

import numpy as np
import pytest

from liftcalc import Q, UnitError, show
from liftcalc.fieldwork.lap_times import lap_times_from_text, line_speed_from_laps, read_lap_times
from liftcalc.fieldwork.map_lines import map_line_from_text, read_map_line
from liftcalc.fieldwork.safe_files import FieldFileError

DATA = Path(__file__).resolve().parents[2] / "data"
LINE = [[-35.02, 47.01], [-35.0186, 47.0112]]
HEAD = '<kml xmlns="http://www.opengis.net/kml/2.2"><Document>'


def kml(*coordinates, names=("tow", "path", "road")):
    """Return a KML text with one line for each text of coordinates."""
    marks = "".join(
        f"<Placemark><name>{name}</name><LineString><coordinates>{text}</coordinates></LineString></Placemark>"
        for name, text in zip(names, coordinates, strict=False)
    )
    return f"{HEAD}{marks}</Document></kml>"


def geojson(*lines, kind="LineString"):
    """Return a GeoJSON text with one feature for each line."""
    features = [
        {
            "type": "Feature",
            "properties": {"name": f"line {number}"},
            "geometry": {"type": kind, "coordinates": line},
        }
        for number, line in enumerate(lines, start=1)
    ]
    return json.dumps({"type": "FeatureCollection", "features": features})


LENGTHS = [  # longitude, latitude pairs, metres, source
    ([[174.81, -41.32], [-5.50, 40.96]], 19_959_679.267, "geodesic inverse on WGS84, GeographicLib documentation"),
]


@pytest.mark.parametrize(("line", "metres", "source"), LENGTHS, ids=[case[-1] for case in LENGTHS])
def test_map_length(line, metres, source):
    bare = json.dumps({"type": "LineString", "coordinates": line})
    feature = json.dumps({"type": "Feature", "geometry": {"type": "LineString", "coordinates": line}})
    words = " ".join(",".join(map(str, place)) for place in line)
    for name, text in (
        ("a.geojson", bare),
        ("a.json", feature),
        ("a.geojson", geojson(line)),
        ("a.kml", kml(words)),
        ("a.KML", kml(words).replace("<name>tow</name>", "")),
        ("a.kml", re.sub("(<LineString>.*</LineString>)", r"<MultiGeometry>\1</MultiGeometry>", kml(words))),
    ):
        assert map_line_from_text(name, text).map_length.m_as("m") == pytest.approx(metres, abs=0.0005), source


def test_the_two_demo_files_hold_one_line_that_is_longer_than_the_tape_says():
    lines = [
        read_map_line(
            DATA / f"penny_rope_line.{ending}", vertical_rise=Q(31.9, "m"), vertical_rise_uncertainty=Q(1, "m")
        )
        for ending in ("kml", "geojson")
    ]
    for line in lines:
        assert line.line_name == "Penny Rope, sheave to sheave"
        assert line.slope_length.m_as("m") == pytest.approx(163, abs=0.1)
        assert line.lifted_by == "given rise"
    assert lines[0].map_length.m_as("m") == lines[1].map_length.m_as("m")
    tape, doubt = 150.0, float(np.hypot(lines[0].slope_length_uncertainty.m_as("m"), 0.5))
    assert (lines[0].slope_length.m_as("m") - tape) / doubt > 2.5  # they disagree, and neither is wrong
    assert any("sheave to sheave is longer" in sentence for sentence in lines[0].sentences)


def test_a_rise_comes_from_the_reader_from_the_file_or_not_at_all():
    with_heights = "-35.02,47.01,900 -35.0186,47.0112,932"
    by_file = map_line_from_text("a.kml", kml(with_heights))
    assert (by_file.lifted_by, by_file.vertical_rise.m_as("m")) == ("elevations", 32.0)
    by_reader = map_line_from_text("a.kml", kml(with_heights), vertical_rise=Q(0.1, "km"))
    assert (by_reader.lifted_by, by_reader.vertical_rise.m_as("m")) == ("given rise", 100.0)
    expected = np.hypot(by_reader.map_length.m_as("m"), 100.0)
    assert by_reader.slope_length.m_as("m") == pytest.approx(expected, rel=1e-12)
    zeros = map_line_from_text("a.kml", kml("-35.02,47.01,0 -35.0186,47.0112,0"))  # how map programs write no height
    assert (zeros.lifted_by, zeros.vertical_rise, zeros.slope_length) == ("nothing", None, None)
    assert any("A map length is horizontal. Give the vertical rise" in sentence for sentence in zeros.sentences)


HEIGHTS = [  # heights along a line of three positions, rise
    ("over a hump", (900, 960, 932), 32),
    ("through a dip", (900, 880, 932), 32),
    ("drawn from the top", (932, 960, 900), 32),
    ("from the sea", (0, 20, 12), 12),
    ("level at last", (900, 960, 900), 0),
]


@pytest.mark.parametrize(("heights", "rise"), [case[1:] for case in HEIGHTS], ids=[case[0] for case in HEIGHTS])
def test_the_rise_of_a_map_line_goes_from_end_to_end(heights, rise):
    places = [[-35.02, 47.01], [-35.0192, 47.0107], [-35.0186, 47.0112]]
    line = map_line_from_text("a.geojson", geojson([[*place, up] for place, up in zip(places, heights, strict=True)]))
    assert line.lifted_by == "elevations"
    assert line.vertical_rise.m_as("m") == rise
    assert line.slope_length.m_as("m") == pytest.approx(np.hypot(line.map_length.m_as("m"), rise), rel=1e-12)
    one_unknown = [[*places[0], heights[0]], places[1], [*places[2], heights[2]]]
    assert map_line_from_text("a.geojson", geojson(one_unknown)).lifted_by == "nothing"


def test_the_doubt_of_the_ends_goes_into_the_length():
    line = map_line_from_text("a.geojson", geojson(LINE), end_uncertainty=Q(2, "m"))
    assert line.map_length_uncertainty.m_as("m") == pytest.approx(np.sqrt(8), rel=1e-12)


def test_several_lines_are_offered_by_name():
    text = kml("1,1 2,2", "1,1 1,1.001", names=("lift road", "tow"))
    with pytest.raises(FieldFileError) as caught:
        map_line_from_text("two.kml", text)
    assert str(caught.value) == (
        "two.kml: the file holds 2 lines (1: 'lift road'; 2: 'tow'). Say which: read_map_line(..., line=1) by number "
        "or line='name'."
    )
    assert map_line_from_text("two.kml", text, line="tow").map_length.m_as("m") == pytest.approx(110.6, abs=0.1)
    assert map_line_from_text("two.kml", text, line=1).line_name == "lift road"
    assert map_line_from_text("a.geojson", geojson(LINE, LINE), line="line 2").line_name == "line 2"
    for wrong in ("two", 3, 0, True):
        with pytest.raises(FieldFileError, match="two.kml: there is no one line .* Give its number."):
            map_line_from_text("two.kml", text, line=wrong)


FAULTS = [  # name of the file, text, message
    (
        "a.kml",
        f"{HEAD}</Document></kml>",
        "the file holds no line (LineString). Points and areas have no length of a lift",
    ),
    ("a.kml", kml(""), "a.kml, line 1: a line has from 2 to 100,000 positions, but this one has 0."),
    ("a.kml", kml("1,2"), "a.kml, line 1: a line has from 2 to 100,000 positions, but this one has 1."),
    (
        "a.kml",
        kml("1,2 1,95"),
        "line 1, position 2: the latitude is 95. Latitudes lie from -90 to 90 degrees; are the two",
    ),
    ("a.kml", kml("1,2 181,5"), "line 1, position 2: the longitude is 181."),
    (
        "a.kml",
        kml("1,2 one,5"),
        "line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers",
    ),
    ("a.kml", kml("1,2 <b>3</b>,5"), "line 1: the coordinates hold markup, <b>, where numbers belong."),
    ("a.kml", kml("1,2 1,2"), "all positions of the line are one place."),
    (
        "a.kml",
        '<gpx version="1.1"></gpx>',
        "its first element is <gpx>, not <kml>. It holds a GPX track: rename it to .gpx",
    ),
    ("a.kml", "<html></html>", "this is no KML file: its first element is <html>, not <kml>."),
    ("a.kml", '<!DOCTYPE kml [<!ENTITY a "b">]><kml/>', "the file declares a document type (DOCTYPE or ENTITY)"),
    ("a.kml", kml("1,2 3,4")[:-9], "the markup breaks off or is not well formed"),
    ("a.geojson", geojson(LINE)[:-5], "a.geojson, line 1: this is no sound GeoJSON. The file may be cut short"),
    ("a.geojson", "[" * 100_000, "this is no sound GeoJSON."),
    ("a.geojson", "[1, 2]", "this is no GeoJSON: it must be an object with a type, such as LineString."),
    ("a.geojson", geojson(LINE[0], kind="Point"), "the file holds no line (LineString)."),
    ("a.geojson", '{"type": "FeatureCollection", "features": 7}', "the file holds no line (LineString)."),
    ("a.geojson", geojson([[1, 2], ["3", 4]]), "a.geojson, line 1, position 2: a position is longitude, latitude"),
    ("a.geojson", geojson([[1, 2], [True, 4]]), "a.geojson, line 1, position 2: a position is longitude, latitude"),
    ("a.geojson", geojson([[1, 2], 5]), "a.geojson, line 1, position 2: a position is longitude, latitude"),
    ("a.geojson", geojson([[1, 2], [1, 95]]), "a.geojson, line 1, position 2: the latitude is 95."),
    ("a.geojson", geojson([[1, 2], [1, float("nan")]]), "a.geojson, line 1, position 2: a position is longitude"),
    ("a.geojson", geojson([[1, 2], [1, 10**400]]), "a.geojson, line 1, position 2: a position is longitude"),
]


@pytest.mark.parametrize(("name", "text", "message"), FAULTS, ids=[f"{case[0]} {case[2][:50]}" for case in FAULTS])
def test_a_fault_of_a_map_line_is_named(tmp_path, name, text, message):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    before = path.read_bytes()
    with pytest.raises(FieldFileError) as caught:
        read_map_line(path)
    assert str(caught.value).startswith(name)
    assert message in str(caught.value)
    assert path.read_bytes() == before


def test_files_that_hold_no_map_line(tmp_path):
    (tmp_path / "a.txt").write_text("x", encoding="utf-8")
    with pytest.raises(FieldFileError, match=re.escape("whose name ends in .kml or .geojson or .json.")):
        read_map_line(tmp_path / "a.txt")
    with pytest.raises(FieldFileError, match="this is a folder"):
        read_map_line(tmp_path)
    with pytest.raises(FieldFileError, match="the file cannot be opened"):
        read_map_line(tmp_path / "a.kml")


def test_a_rise_needs_a_unit():
    with pytest.raises(UnitError, match=re.escape("read_map_line: vertical_rise must be a length, but got 29.4.")):
        map_line_from_text("a.geojson", geojson(LINE), vertical_rise=29.4)
    with pytest.raises(FieldFileError, match="vertical_rise must be zero or more, but got -3 m"):
        map_line_from_text("a.geojson", geojson(LINE), vertical_rise=Q(-3, "m"))


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
    with pytest.raises(FieldFileError, match="there is no lap '70' to leave out. The laps are 1, 2, 3"):
        read_lap_times(DATA / "penny_rope_laps.csv", without=["70"])


LAP_FAULTS = [  # text, message
    ("lap,time\n1,44\n", "laps.csv, row 1: the column 'seconds' is missing; the heading row reads 'lap, time'."),
    ("lap,seconds\n1,fast\n", "laps.csv, row 2, column seconds: 'fast' is no number. Write digits only, such as 3.4."),
    ("lap,seconds\n1,<b>44</b>\n", "laps.csv, row 2, column seconds: '<b>44</b>' is no number."),
    ("lap,seconds\n1,0:44\n", "laps.csv, row 2, column seconds: '0:44' is no number."),
    ("lap,seconds\n1,44\n2,-3\n", "row 3, column seconds: a lap takes more than 0 s and at most 36,000 s, but got -3."),
    ("lap,seconds\n1,0\n", "row 2, column seconds: a lap takes more than 0 s"),
    ("lap,seconds\n1,99999\n", "row 2, column seconds: a lap takes more than 0 s and at most 36,000 s, but got 99999."),
    ("lap,seconds\n1,44,1\n", "row 2: the row has 3 cells, but the heading has 2."),
    ("lap;seconds\n1;44.1\n", "row 2, column seconds: '44.1' has the wrong decimal mark for this sheet. Write 44,1."),
    ('lap,seconds\n1,"44\n', "laps.csv: the quotation marks do not close"),
    ("lap,seconds\n", "laps.csv: no lap is left. Each lap is a row such as: 1,44.2,"),
]


@pytest.mark.parametrize(("text", "message"), LAP_FAULTS, ids=[case[1][:60] for case in LAP_FAULTS])
def test_a_fault_of_lap_times_is_named(text, message):
    with pytest.raises(FieldFileError) as caught:
        lap_times_from_text("laps.csv", text)
    assert message in str(caught.value)


def test_line_speed_from_laps_checks_its_arguments():
    laps = lap_times_from_text("laps.csv", "lap,seconds\n1,44.0\n2,44.2\n")
    with pytest.raises(UnitError, match="needs a unit, but got the bare value 150"):
        line_speed_from_laps(laps, 150)
    with pytest.raises(UnitError, match="ridden_length_uncertainty must be a length, but got 1."):
        line_speed_from_laps(laps, Q(150, "m"), ridden_length_uncertainty=1)
    with pytest.raises(ValueError, match="ridden_length must be greater than zero, but got 0 m"):
        line_speed_from_laps(laps, Q(0, "m"))
    with pytest.raises(FieldFileError, match="laps must come from read_lap_times, but got 'laps.csv'"):
        line_speed_from_laps("laps.csv", Q(150, "m"))


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
        "pick_up_acceleration. Where riders have the speed of the rope at once, as on a belt or a chair, nothing is "
        "missing."
    )
    assert line_speed_from_laps(laps, LENGTH, pick_up_acceleration=PICK_UP).sentence == (
        "Riders start from rest at 1.50 m/s²: length over time alone would be 3.31 m/s, 2.5 % too low."
    )
    short = line_speed_from_laps(steady_laps(3.0), Q(20, "m")).sentence
    assert short.startswith("No pick-up was given: 6.67 m/s is the mean of the whole ride.")
    assert "say, it runs" not in short, "nobody covers 20 m in 3 s at 1.5 m/s²"


PICK_UP_MISUSES = [
    ({"pick_up_acceleration": 1.5}, UnitError, "pick_up_acceleration needs a unit, but got the bare value 1.5"),
    ({"pick_up_acceleration": Q(1.5, "m/s")}, UnitError, "pick_up_acceleration"),
    (
        {"pick_up_acceleration_uncertainty": Q(0.3, "m/s**2")},
        ValueError,
        "pick_up_acceleration_uncertainty came without pick_up_acceleration",
    ),
    (
        {"pick_up_acceleration": PICK_UP, "pick_up_acceleration_uncertainty": Q(0.3, "m/s")},
        UnitError,
        "pick_up_acceleration_uncertainty must be an acceleration, but got",
    ),
    (
        {"pick_up_acceleration": Q(0.1, "m/s**2")},
        ValueError,
        r"nobody covers 150\.0 m from rest in 45\.3 s at 0\.1 m/s",
    ),
]


@pytest.mark.parametrize(("named", "kind", "message"), PICK_UP_MISUSES, ids=[case[2][:50] for case in PICK_UP_MISUSES])
def test_a_pick_up_that_cannot_be_is_refused(named, kind, message):
    with pytest.raises(kind, match=message):
        line_speed_from_laps(steady_laps(45.3), LENGTH, **named)
