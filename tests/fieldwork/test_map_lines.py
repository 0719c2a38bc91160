"""Map lines: lengths with their doubts, and messages on what cannot be read."""

import json
import re

import numpy as np
import pytest
from messages import SOMETHING, refuses, table_of_messages
from places import DATA

from liftcalc import Q, UnitError
from liftcalc.fieldwork.map_lines import map_line_from_text, read_map_line
from liftcalc.fieldwork.safe_files import FieldFileError

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
    refuses(
        lambda: map_line_from_text("two.kml", text),
        "two.kml: the file holds 2 lines (1: 'lift road'; 2: 'tow'). Save the one that is "
        "meant as a file of its own; or say which: read_map_line(..., line=1) by number "
        "or line='name'.",
        FieldFileError,
    )
    assert map_line_from_text("two.kml", text, line="tow").map_length.m_as("m") == pytest.approx(110.6, abs=0.1)
    assert map_line_from_text("two.kml", text, line=1).line_name == "lift road"
    assert map_line_from_text("a.geojson", geojson(LINE, LINE), line="line 2").line_name == "line 2"
    for wrong in ("two", 3, 0, True):
        refuses(
            lambda wrong=wrong: map_line_from_text("two.kml", text, line=wrong),
            f"two.kml: there is no one line '{wrong}'. The file holds 1: 'lift road'; 2: 'tow'. Give its number.",
            FieldFileError,
        )


FAULTS = [  # name of the file, text, message
    (
        "a.kml",
        f"{HEAD}</Document></kml>",
        "a.kml: the file holds no line (LineString). Points and areas have no length of a lift: draw a line from "
        "the loading point to the unload area and export it.",
    ),
    (
        "a.kml",
        kml(""),
        "a.kml, line 1: a line has from 2 to 100,000 positions, but this one has 0. Draw it from end to end.",
    ),
    (
        "a.kml",
        kml("1,2"),
        "a.kml, line 1: a line has from 2 to 100,000 positions, but this one has 1. Draw it from end to end.",
    ),
    (
        "a.kml",
        kml("1,2 1,95"),
        "a.kml, line 1, position 2: the latitude is 95. Latitudes lie from -90 to 90 degrees; are the two "
        "numbers swapped?",
    ),
    (
        "a.kml",
        kml("1,2 181,5"),
        "a.kml, line 1, position 2: the longitude is 181. Longitudes lie from -180 to 180 degrees.",
    ),
    (
        "a.kml",
        kml("1,2 one,5"),
        "a.kml, line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers. "
        "Write for example -35.0001,47.0002,912.",
    ),
    (
        "a.kml",
        kml("1,2 <b>3</b>,5"),
        "a.kml, line 1: the coordinates hold markup, <b>, where numbers belong. Export the line once more.",
    ),
    ("a.kml", kml("1,2 1,2"), "a.kml: all positions of the line are one place. Draw it from end to end."),
    (
        "a.kml",
        '<gpx version="1.1"></gpx>',
        "a.kml: this is no KML file: its first element is <gpx>, not <kml>. It holds a GPX track: rename it to "
        ".gpx and read it with read_track.",
    ),
    ("a.kml", "<html></html>", "a.kml: this is no KML file: its first element is <html>, not <kml>."),
    (
        "a.kml",
        '<!DOCTYPE kml [<!ENTITY a "b">]><kml/>',
        "a.kml: the file declares a document type (DOCTYPE or ENTITY), which a map line (KML or GeoJSON) never "
        "needs and which can do harm. It is not read. Export it once more from the program that recorded it.",
    ),
    (
        "a.kml",
        kml("1,2 3,4")[:-9],
        f"a.kml, line 1, character {SOMETHING}: the markup breaks off or is not well formed ({SOMETHING}). The file "
        "may be cut short: export a map line (KML or GeoJSON) once more.",
    ),
    (
        "a.geojson",
        geojson(LINE)[:-5],
        "a.geojson, line 1: this is no sound GeoJSON. The file may be cut short: export the line once more.",
    ),
    (
        "a.geojson",
        "[" * 100_000,
        "a.geojson: this is no sound GeoJSON. The file may be cut short: export the line once more.",
    ),
    ("a.geojson", "[1, 2]", "a.geojson: this is no GeoJSON: it must be an object with a type, such as LineString."),
    (
        "a.geojson",
        geojson(LINE[0], kind="Point"),
        "a.geojson: the file holds no line (LineString). Points and areas have no length of a lift: draw a line "
        "from the loading point to the unload area and export it.",
    ),
    (
        "a.geojson",
        '{"type": "FeatureCollection", "features": 7}',
        "a.geojson: the file holds no line (LineString). Points and areas have no length of a lift: draw a line "
        "from the loading point to the unload area and export it.",
    ),
    (
        "a.geojson",
        geojson([[1, 2], ["3", 4]]),
        "a.geojson, line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers. "
        "Write for example -35.0001,47.0002,912.",
    ),
    (
        "a.geojson",
        geojson([[1, 2], [True, 4]]),
        "a.geojson, line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers. "
        "Write for example -35.0001,47.0002,912.",
    ),
    (
        "a.geojson",
        geojson([[1, 2], 5]),
        "a.geojson, line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers. "
        "Write for example -35.0001,47.0002,912.",
    ),
    (
        "a.geojson",
        geojson([[1, 2], [1, 95]]),
        "a.geojson, line 1, position 2: the latitude is 95. Latitudes lie from -90 to 90 degrees; are the two "
        "numbers swapped?",
    ),
    (
        "a.geojson",
        geojson([[1, 2], [1, float("nan")]]),
        "a.geojson, line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers. "
        "Write for example -35.0001,47.0002,912.",
    ),
    (
        "a.geojson",
        geojson([[1, 2], [1, 10**400]]),
        "a.geojson, line 1, position 2: a position is longitude, latitude and perhaps height, all plain numbers. "
        "Write for example -35.0001,47.0002,912.",
    ),
]


@table_of_messages(FAULTS, "name", "text", kind=FieldFileError)
def test_a_fault_of_a_map_line_is_named(tmp_path, name, text, message, kind):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    before = path.read_bytes()
    refuses(lambda: read_map_line(path), message, kind)
    assert path.read_bytes() == before


def test_files_that_hold_no_map_line(tmp_path):
    (tmp_path / "a.txt").write_text("x", encoding="utf-8")
    refuses(
        lambda: read_map_line(tmp_path / "a.txt"),
        "a.txt: a map line (KML or GeoJSON) is read from a file whose name ends in .kml or .geojson or .json. "
        "Export it in that format and read the new file.",
        FieldFileError,
    )
    refuses(
        lambda: read_map_line(tmp_path),
        f"{tmp_path.name}: this is a folder. Name the file in it that holds a map line (KML or GeoJSON).",
        FieldFileError,
    )
    refuses(
        lambda: read_map_line(tmp_path / "a.kml"),
        f"a.kml: the file cannot be opened ({SOMETHING}). Check the name and the folder.",
        FieldFileError,
    )


def test_a_rise_needs_a_unit():
    refuses(
        lambda: map_line_from_text("a.geojson", geojson(LINE), vertical_rise=29.4),
        "read_map_line: vertical_rise must be a length, but got 29.4. Write Q(29.4, 'm').",
        UnitError,
    )
    refuses(
        lambda: map_line_from_text("a.geojson", geojson(LINE), vertical_rise=Q(-3, "m")),
        "read_map_line: vertical_rise must be zero or more, but got -3 m. Write Q(29.4, 'm').",
        FieldFileError,
    )


def test_the_first_mark_tells_a_map_line_whatever_its_name():
    text = (DATA / "penny_rope_line.kml").read_text(encoding="utf-8")
    for name in ("line.xml", "line", "line.kml"):
        assert map_line_from_text(name, f"\n{text}").line_name == "Penny Rope, sheave to sheave"
