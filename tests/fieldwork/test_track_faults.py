"""Hostile and broken files are refused with a message that names file and place, and no file is ever changed."""

import re
import time
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from liftcalc.fieldwork import safe_files
from liftcalc.fieldwork.map_lines import map_line_from_text
from liftcalc.fieldwork.safe_files import FieldFileError, decode, read_text
from liftcalc.fieldwork.track_files import read_track, track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track
from liftcalc.units import PlainError

HEAD = '<gpx version="1.1" creator="tests" xmlns="http://www.topografix.com/GPX/1/1">'


def point(second, *, lat=None, lon="-35.0", ele="900", time=None):
    """Return a track point; 2.8 m/s to the north."""
    lat = f"{47 + second * 2.52e-5:.7f}" if lat is None else lat
    moment = f"2031-01-12T10:{second // 60:02d}:{second % 60:02d}Z" if time is None else time
    return f'<trkpt lat="{lat}" lon="{lon}"><ele>{ele}</ele><time>{moment}</time></trkpt>'


def gpx(*points, before="", head=HEAD):
    """Return a GPX text with one track of these points."""
    return f"{before}{head}<trk><name>a</name><trkseg>{''.join(points)}</trkseg></trk></gpx>"


MANY = [point(second) for second in range(60)]
UNTIMED = [re.sub("<time>.*</time>", "", text) for text in MANY]
BOMB = '<!DOCTYPE lolz [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>'

FAULTS = [  # what, text, message
    ("entity bomb", gpx(*MANY, before=BOMB), "the file declares a document type (DOCTYPE or ENTITY)"),
    (
        "doctype of another file",
        gpx(*MANY, before='<!DOCTYPE gpx SYSTEM "file:///etc/hosts">'),
        "declares a document type",
    ),
    ("doctype in small letters", gpx(*MANY, before="<!doctype gpx>"), "declares a document type"),
    (
        "markup for a latitude",
        gpx(point(0, lat="&lt;b&gt;47&lt;/b&gt;"), *MANY),
        "point 1: the latitude is '<b>47</b>', which is no",
    ),
    (
        "word for a longitude",
        gpx(point(0), point(1, lon="west")),
        "point 2: the longitude is 'west', which is no number",
    ),
    ("no longitude", gpx(point(0).replace(' lon="-35.0"', "")), "point 1: the longitude is missing. Write degrees"),
    ("latitude that is nan", gpx(point(0, lat="nan")), "point 1: the latitude is 'nan', which is no number"),
    ("latitude with an underscore", gpx(point(0, lat="4_7")), "point 1: the latitude is '4_7', which is no number"),
    ("endless latitude", gpx(point(0, lat="4" * 999)), f"point 1: the latitude is '{'4' * 40}...', which is no number"),
    ("markup for an elevation", gpx(point(0, ele="<b>9</b>")), "point 1: the elevation is <b>, which is no number"),
    (
        "word for an elevation",
        gpx(point(0), point(1, ele="high")),
        "point 2: the elevation is 'high', which is no number",
    ),
    ("markup for a time", gpx(point(0, time="<b/>")), "point 1: the time is <b>, which is no time."),
    ("day that is none", gpx(point(0, time="2031-02-30T10:00:00Z")), "the time is '2031-02-30T10:00:00Z', which is no"),
    (
        "word for a time",
        gpx(point(0), point(1, time="noon")),
        "point 2: the time is 'noon', which is no time. Write date, T",
    ),
    (
        "latitude 95",
        gpx(*MANY, point(60, lat="95")),
        "point 61: the latitude is 95. Latitudes lie from -90 to 90 degrees",
    ),
    ("longitude 200", gpx(point(0, lon="200")), "point 1: the longitude is 200. Longitudes lie from -180 to 180"),
    (
        "time running backwards",
        gpx(*MANY, point(30)),
        "point 61: the time runs backwards, by 29 s from the point before.",
    ),
    ("one point", gpx(point(0)), "the track holds one point with a time of its own; a speed needs many"),
    ("all points at one time", gpx(point(0), point(0), point(0)), "the track holds one point with a time of its own"),
    ("zero points", gpx(), "the file holds no track point. Waypoints and planned routes carry no speed"),
    ("no track", f"{HEAD}<wpt lat='47' lon='-35'/></gpx>", "the file holds no track point."),
    ("no times at all", gpx(*UNTIMED), "none of the 60 points carries a time, so there is no speed in the file."),
    ("cut short", gpx(*MANY)[:-40], "the markup breaks off or is not well formed"),
    ("not well formed", gpx("<trkpt>"), "the markup breaks off or is not well formed"),
    ("plain text", "seconds,metres\n1,2\n", "line 1, character 1: the markup breaks off or is not well formed"),
    ("a KML by another name", "<kml><Placemark/></kml>", "this is no GPX file: its first element is <kml>, not <gpx>."),
    ("another encoding declared", '<?xml version="1.0" encoding="ISO-8859-1"?>' + gpx(*MANY), "it is in 'ISO-8859-1'"),
]


@pytest.mark.parametrize(("text", "message"), [case[1:] for case in FAULTS], ids=[case[0] for case in FAULTS])
def test_a_fault_is_named(tmp_path, text, message):
    path = tmp_path / "faulty.gpx"
    path.write_text(text, encoding="utf-8")
    before = path.read_bytes()
    with pytest.raises(FieldFileError) as caught:
        read_track(path)
    assert str(caught.value).startswith("faulty.gpx")
    assert message in str(caught.value)
    assert len(str(caught.value)) < 400
    assert path.read_bytes() == before


def test_nothing_of_a_bomb_is_unfolded():
    layers = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 12))
    text = f'<!DOCTYPE gpx [<!ENTITY e0 "ha">{layers}]>{HEAD}<trk><name>&e11;</name></trk></gpx>'
    begin = time.perf_counter()
    with pytest.raises(FieldFileError, match="declares a document type"):
        track_from_text("bomb.gpx", text)
    assert time.perf_counter() - begin < 1


@pytest.mark.parametrize("before", [BOMB, "<!DOCTYPE gpx>"], ids=["entities", "a bare doctype"])
def test_the_parser_refuses_a_doctype_of_itself(monkeypatch, before):
    blind = SimpleNamespace(
        search=lambda *given, **named: None, match=re.match, IGNORECASE=re.I
    )  # as if the first look had missed it
    monkeypatch.setattr(safe_files, "re", blind)
    with pytest.raises(FieldFileError, match="declares a document type or an entity, and is not read"):
        safe_files.parse_markup("bomb.gpx", gpx(*MANY, before=before), "a track")


def test_a_file_too_large_is_refused_before_it_is_read(tmp_path, monkeypatch):
    path = tmp_path / "large.gpx"
    with path.open("wb") as file:
        file.truncate(200_000_000)  # sparse: takes no room

    def never(*arguments, **named):
        raise AssertionError("the file was opened")

    monkeypatch.setattr(type(path), "open", never)
    with pytest.raises(FieldFileError) as caught:
        read_track(path)
    assert str(caught.value) == (
        "large.gpx: the file holds 200,000,000 bytes, and 20,000,000 are the most that is read. Cut out the part with "
        "the lift and save it as a file of its own."
    )


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (b"", "x.gpx: the file is empty. Export a GPS track (GPX) once more."),
        (b" \n\n", "x.gpx: the file is empty."),
        (b"<gpx>\n\xe9t\xe9</gpx>", "x.gpx, line 2: the byte 0xe9 does not belong in UTF-8 text."),
        (gpx(*MANY).encode("utf-16"), "x.gpx: this is no UTF-8 text: it holds zero bytes. Save it as UTF-8 text."),
        (b"\x1f\x8b\x08\x00zip", "x.gpx: this is no UTF-8 text: it holds zero bytes."),
    ],
    ids=["empty", "blank", "latin letters", "utf-16", "packed"],
)
def test_bytes_that_are_no_text(tmp_path, raw, message):
    path = tmp_path / "x.gpx"
    path.write_bytes(raw)
    with pytest.raises(FieldFileError) as caught:
        read_track(path)
    assert message in str(caught.value)


def test_files_that_are_none(tmp_path):
    (tmp_path / "ride.kml").write_text(gpx(*MANY), encoding="utf-8")
    (tmp_path / "folder.gpx").mkdir()
    cases = [
        (
            tmp_path / "missing.gpx",
            "missing.gpx: the file cannot be opened (No such file or directory). Check the name",
        ),
        (tmp_path / "folder.gpx", "folder.gpx: this is a folder. Name the file in it that holds a GPS track (GPX)."),
        (tmp_path / "ride.kml", "ride.kml: a GPS track (GPX) is read from a file whose name ends in .gpx."),
        (None, "The name of the file must be a text, but got None. Write 'my_file.gpx'."),
        ("a\0b.gpx", "the file cannot be opened (the name cannot be one of a file)"),
        ("x" * 5000 + ".gpx", "the file cannot be opened ("),
    ]
    for path, message in cases:
        with pytest.raises(FieldFileError) as caught:
            read_track(path)
        assert message in str(caught.value), path


def test_a_device_is_no_file():
    with pytest.raises(FieldFileError, match="this is no plain file"):
        read_text("/dev/zero", (".gpx",), "a track")


def test_several_tracks_are_offered_by_name():
    one = f"<trk><name>up</name><trkseg>{''.join(MANY)}</trkseg></trk>"
    other = f"<trk><name>down</name><trkseg>{''.join(MANY[:30])}</trkseg></trk>"
    text = f"{HEAD}{one}{other}<trk><name>void</name></trk></gpx>"
    with pytest.raises(FieldFileError) as caught:
        track_from_text("two.gpx", text)
    assert str(caught.value) == (
        "two.gpx: the file holds 2 tracks (1: 'up'; 2: 'down'). Say which: read_track(..., track=1) by number or "
        "track='name'."
    )
    assert track_from_text("two.gpx", text, track=2).seconds.size == 30
    assert track_from_text("two.gpx", text, track="up").seconds.size == 60
    for wrong in ("sideways", 3, 0, True, 1.5):
        with pytest.raises(FieldFileError, match="two.gpx: there is no one track .* Give its number."):
            track_from_text("two.gpx", text, track=wrong)


def test_points_without_a_time_are_dropped_and_counted():
    track = track_from_text("some.gpx", gpx(*UNTIMED[:2], *MANY))
    assert track.notes == ("2 points dropped: no time",)
    assert track.seconds.size == 60


def test_elevations_in_part_are_used_where_they_are():
    bare = [text.replace("<ele>900</ele>", "") for text in MANY]
    mostly_bare = read_track_speed(track_from_text("bare.gpx", gpx(*bare[:50], *MANY[50:])))
    assert mostly_bare.lifted_by == "nothing"
    assert "50 points without an elevation: used for the plan only." in mostly_bare.sentences
    assert read_track_speed(track_from_text("half.gpx", gpx(*bare[:10], *MANY[10:]))).lifted_by == "elevations"
    (note,) = track_from_text("bare.gpx", gpx(*bare)).notes  # without any elevation there is no part to tell apart
    assert note.startswith("no elevations: the speed is one on the plan")


def test_a_cleaned_track_cannot_be_written_into():
    track = track_from_text("many.gpx", gpx(*MANY))
    with pytest.raises(ValueError, match="read-only"):
        track.latitudes[0] = 0.0
    mine = np.arange(60.0)
    make_track("mine", mine, np.full(60, 47.0), np.full(60, -35.0))
    mine[0] = -1.0  # the caller's own array stays the caller's
    assert mine[0] == -1.0


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
