"""Whatever the bytes and whatever the points, a result or a plain message comes out."""

import time

import numpy as np
import pytest
from example_tracks import MANY, gpx
from hypothesis import given, settings
from hypothesis import strategies as st

from liftcalc.fieldwork.map_lines import map_line_from_text
from liftcalc.fieldwork.safe_files import decode
from liftcalc.fieldwork.track_files import track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track
from liftcalc.units import PlainError

KML = (
    '<?xml version="1.0" encoding="UTF-8"?>\n<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Placemark>'
    "<name>tow</name><LineString><coordinates>-35.02,47.01,900 -35.01,47.02,930</coordinates></LineString>"
    "</Placemark></Document></kml>"
)
GEOJSON = (
    '{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "tow"}, "geometry": '
    '{"type": "LineString", "coordinates": [[-35.02, 47.01, 900], [-35.01, 47.02, 930]]}}]}'
)
VALID = {"gpx": gpx(*MANY[:25]), "kml": KML, "geojson": GEOJSON}
SNIPPETS = [
    b"<",
    b">",
    b'"',
    b"&",
    b"<!DOCTYPE a>",
    b"<b/>",
    b"-",
    b"9",
    b"e9",
    b"nan",
    b",",
    b"[",
    b"{",
    b"null",
    b"\xff",
    b"\0",
]
CHANGES = st.lists(
    st.tuples(
        st.floats(0, 1, exclude_max=True),
        st.integers(0, 12),
        st.one_of(st.binary(max_size=3), st.sampled_from(SNIPPETS)),
    ),
    max_size=5,
)


def mutated(text, changes, repeat):
    """Return valid bytes with pieces cut out, put in and repeated."""
    raw = text.encode()
    for place, gone, fresh in changes:
        at = int(place * len(raw))
        raw = raw[:at] + fresh + raw[at + gone :]
    if repeat is not None:
        first, last = sorted(int(place * len(raw)) for place in repeat)
        raw = raw[:last] + raw[first:last] + raw[last:]
    return raw


def result_of(kind, raw):
    """Return the value and doubt that come out of bytes."""
    name = f"fuzz.{kind}"
    text = decode(name, raw, "a file")
    if kind == "gpx":
        reading = read_track_speed(track_from_text(name, text))
        return reading.speed.m_as("m/s"), reading.speed_uncertainty.m_as("m/s")
    line = map_line_from_text(name, text)
    return line.map_length.m_as("m"), line.map_length_uncertainty.m_as("m")


def outcome(function, *arguments):
    """Return the result of a function and no message, or no result and the message of a plain error."""
    try:
        return function(*arguments), None
    except PlainError as error:
        return None, str(error)


@pytest.mark.parametrize("kind", ["gpx", "kml", "geojson"])
def test_the_bytes_read_well_before_they_are_changed(kind):
    value, message = outcome(result_of, kind, VALID[kind].encode())
    assert message is None
    assert value[0] == pytest.approx(2.8 if kind == "gpx" else 1345.6, rel=0.01)


@pytest.mark.parametrize("kind", ["gpx", "kml", "geojson"])
@settings(max_examples=250)
@given(changes=CHANGES, repeat=st.none() | st.tuples(st.floats(0, 1), st.floats(0, 1)))
def test_whatever_the_bytes_a_result_or_a_plain_message_comes_out(kind, changes, repeat):
    begin = time.perf_counter()
    value, message = outcome(result_of, kind, mutated(VALID[kind], changes, repeat))
    if message is None:
        assert np.all(np.isfinite(value))
        assert min(value) > 0
    else:
        assert message.startswith("fuzz.")
        assert len(message) < 600
    assert time.perf_counter() - begin < 5


@settings(max_examples=150)
@given(
    steps=st.lists(st.floats(0, 1e4), min_size=2, max_size=40),
    places=st.lists(st.tuples(st.floats(-90, 90), st.floats(-180, 180)), min_size=2, max_size=40),
)
def test_whatever_the_points_a_result_or_a_plain_message_comes_out(steps, places):
    count = min(len(steps), len(places))
    latitudes, longitudes = np.array(places[:count]).T
    reading, message = outcome(
        lambda: read_track_speed(make_track("any", np.cumsum(steps[:count]), latitudes, longitudes))
    )
    if message is None:
        assert 0 < reading.speed.m_as("m/s") < np.inf
        assert 0 < reading.speed_uncertainty.m_as("m/s") < np.inf
    else:
        assert message.startswith("any")
