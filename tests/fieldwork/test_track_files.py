"""Files of tracks: as phones write them, and broken ones, which are refused with file and place and never changed."""

import re

import numpy as np
import pytest
from example_tracks import BOMB, HEAD, MANY, UNTIMED, gpx, point
from make_tracks import METRES_A_DEGREE, gpx_text, make
from messages import SOMETHING, refuses, table_of_messages

from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.fieldwork.track_files import read_track, track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track

# files that read well

PHONE = """<?xml version="1.0" encoding="UTF-8" standalone="no" ?>
<gpx xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
 xmlns:extra="urn:example:extra" version="1.1" creator="an app"
 xsi:schemaLocation="http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd">
<metadata><name>Morning</name><time>2031-01-12T09:59:00Z</time><extensions><extra:mood>cold</extra:mood></extensions>
</metadata>
<wpt lat="47.0" lon="-35.0"><name>hut</name></wpt>
<trk><name>Ride &amp; rest</name><type>other</type>
<trkseg>
{first}
</trkseg>
<trkseg>
{second}
</trkseg>
<trkseg></trkseg>
</trk></gpx>
"""


def phone_point(second, *, zone="Z", height=True):
    """Return a point as apps write it: 2.8 m/s to the north, a fraction of a second, unknown tags."""
    hour = 10 if zone == "Z" else 12
    lat = 47 + 2.8 * second / METRES_A_DEGREE
    ele = f"<ele>{900 + 0.5 * second:.3f}</ele>" if height else ""
    clock = f"{hour}:{int(second) // 60:02d}:{second % 60:06.3f}"
    extra = "<extensions><extra:more><extra:hr>88</extra:hr><extra:a x='1'/></extra:more></extensions>"
    return (
        f'<trkpt lat="{lat:.9f}" lon="-35.0">{ele}<time>2031-01-12T{clock}{zone}</time><hdop>4.1</hdop>{extra}</trkpt>'
    )


def phone_text():
    """Return a GPX with two segments, one in another time zone and partly without elevation."""
    first = "\n".join(phone_point(second + 0.25) for second in range(60))
    second = "\n".join(phone_point(second + 0.25, zone="+02:00", height=second % 4 > 0) for second in range(70, 120))
    return PHONE.format(first=first, second=second)


def test_a_file_as_phone_apps_write_it(tmp_path):
    path = tmp_path / "Morning.GPX"
    path.write_bytes(b"\xef\xbb\xbf" + phone_text().encode())
    before = path.read_bytes(), path.stat().st_mtime_ns
    track = read_track(path)
    assert track.name == "Morning.GPX"
    assert track.seconds.size == 110
    assert track.seconds[-1] == pytest.approx(119.0, abs=1e-6)
    assert track.notes == ("12 points without an elevation: used for the plan only",)
    reading = read_track_speed(track)
    assert reading.plan_speed.m_as("m/s") == pytest.approx(2.8, rel=1e-3)
    assert reading.speed.m_as("m/s") == pytest.approx(np.hypot(2.8, 0.5), rel=1e-3)
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before
    assert [entry.name for entry in tmp_path.iterdir()] == ["Morning.GPX"]


def test_a_file_without_namespace_reads_as_well():
    text = re.sub(r' xmlns(:\w+)?="[^"]*"| xsi:\w+="[^"]*"', "", phone_text()).replace("extra:", "")
    assert track_from_text("plain.gpx", text).seconds.size == 110


def test_a_made_track_is_the_same_through_a_file_and_without():
    made = make(np.random.default_rng(8), speed=3.4, length=150.0)
    through = read_track_speed(track_from_text("made.gpx", gpx_text(made)))
    without = read_track_speed(make_track("made", made.seconds, made.latitudes, made.longitudes, made.elevations))
    assert through.speed.m_as("m/s") == pytest.approx(without.speed.m_as("m/s"), abs=2e-3)
    assert through.end == pytest.approx(without.end, abs=0.1)


def test_points_without_a_time_are_dropped_and_counted():
    track = track_from_text("some.gpx", gpx(*UNTIMED[:2], *MANY))
    assert track.notes == ("2 points dropped: no time",)
    assert track.seconds.size == 60


# broken files

DOCTYPE = (
    "faulty.gpx: the file declares a document type (DOCTYPE or ENTITY), which a GPS track (GPX) never needs and which "
    "can do harm. It is not read. Export it once more from the program that recorded it."
)
DEGREES = "Write degrees, such as 47.0001."
METRES = "Write metres, such as 912.4, or leave the element out."
MOMENT = "Write date, T and time of day, such as 2031-01-12T10:00:00Z."
ONE_POINT = (
    "faulty.gpx: the track holds one point with a time of its own; a speed needs many. Record while you ride, one fix "
    "a second."
)
NO_POINT = (
    "faulty.gpx: the file holds no track point. Waypoints and planned routes carry no speed: export the recorded track."
)
ILL_FORMED = (
    f"the markup breaks off or is not well formed ({SOMETHING}). The file may be cut short: export a GPS track (GPX) "
    "once more."
)
FAULTS = [  # what, text, message
    ("entity bomb", gpx(*MANY, before=BOMB), DOCTYPE),
    ("doctype of another file", gpx(*MANY, before='<!DOCTYPE gpx SYSTEM "file:///etc/hosts">'), DOCTYPE),
    ("doctype in small letters", gpx(*MANY, before="<!doctype gpx>"), DOCTYPE),
    (
        "markup for a latitude",
        gpx(point(0, lat="&lt;b&gt;47&lt;/b&gt;"), *MANY),
        f"faulty.gpx, point 1: the latitude is '<b>47</b>', which is no number. {DEGREES}",
    ),
    (
        "word for a longitude",
        gpx(point(0), point(1, lon="west")),
        f"faulty.gpx, point 2: the longitude is 'west', which is no number. {DEGREES}",
    ),
    (
        "no longitude",
        gpx(point(0).replace(' lon="-35.0"', "")),
        f"faulty.gpx, point 1: the longitude is missing. {DEGREES}",
    ),
    (
        "latitude that is nan",
        gpx(point(0, lat="nan")),
        f"faulty.gpx, point 1: the latitude is 'nan', which is no number. {DEGREES}",
    ),
    (
        "latitude with an underscore",
        gpx(point(0, lat="4_7")),
        f"faulty.gpx, point 1: the latitude is '4_7', which is no number. {DEGREES}",
    ),
    (
        "endless latitude",
        gpx(point(0, lat="4" * 999)),
        f"faulty.gpx, point 1: the latitude is '{'4' * 40}...', which is no number. {DEGREES}",
    ),
    (
        "markup for an elevation",
        gpx(point(0, ele="<b>9</b>")),
        f"faulty.gpx, point 1: the elevation is <b>, which is no number. {METRES}",
    ),
    (
        "word for an elevation",
        gpx(point(0), point(1, ele="high")),
        f"faulty.gpx, point 2: the elevation is 'high', which is no number. {METRES}",
    ),
    (
        "markup for a time",
        gpx(point(0, time="<b/>")),
        f"faulty.gpx, point 1: the time is <b>, which is no time. {MOMENT}",
    ),
    (
        "day that is none",
        gpx(point(0, time="2031-02-30T10:00:00Z")),
        f"faulty.gpx, point 1: the time is '2031-02-30T10:00:00Z', which is no time. {MOMENT}",
    ),
    (
        "word for a time",
        gpx(point(0), point(1, time="noon")),
        f"faulty.gpx, point 2: the time is 'noon', which is no time. {MOMENT}",
    ),
    (
        "latitude 95",
        gpx(*MANY, point(60, lat="95")),
        "faulty.gpx, point 61: the latitude is 95. Latitudes lie from -90 to 90 degrees; are the two numbers swapped?",
    ),
    (
        "longitude 200",
        gpx(point(0, lon="200")),
        "faulty.gpx, point 1: the longitude is 200. Longitudes lie from -180 to 180 degrees.",
    ),
    (
        "time running backwards",
        gpx(*MANY, point(30)),
        "faulty.gpx, point 61: the time runs backwards, by 29 s from the point before. Parts of two recordings may be "
        "joined in the wrong order: put them in order, or keep one.",
    ),
    ("one point", gpx(point(0)), ONE_POINT),
    ("all points at one time", gpx(point(0), point(0), point(0)), ONE_POINT),
    ("zero points", gpx(), NO_POINT),
    ("no track", f"{HEAD}<wpt lat='47' lon='-35'/></gpx>", NO_POINT),
    (
        "no times at all",
        gpx(*UNTIMED),
        "faulty.gpx: none of the 60 points carries a time, so there is no speed in the file. It may be a planned "
        "route. Record a track while you ride; for a length, draw a map line (KML or GeoJSON).",
    ),
    ("cut short", gpx(*MANY)[:-40], f"faulty.gpx, line 1, character {SOMETHING}: {ILL_FORMED}"),
    ("not well formed", gpx("<trkpt>"), f"faulty.gpx, line 1, character {SOMETHING}: {ILL_FORMED}"),
    ("plain text", "seconds,metres\n1,2\n", f"faulty.gpx, line 1, character 1: {ILL_FORMED}"),
    (
        "a KML by another name",
        "<kml><Placemark/></kml>",
        "faulty.gpx: this is no GPX file: its first element is <kml>, not <gpx>. Read a map line with read_map_line, "
        "and export a recording as GPX.",
    ),
]


@table_of_messages(FAULTS, "what", "text", kind=FieldFileError)
def test_a_fault_is_named(tmp_path, what, text, message, kind):
    path = tmp_path / "faulty.gpx"
    path.write_text(text, encoding="utf-8")
    before = path.read_bytes()
    error = refuses(lambda: read_track(path), message, kind)
    assert len(str(error)) < 400
    assert path.read_bytes() == before


def test_several_tracks_are_offered_by_name():
    one = f"<trk><name>up</name><trkseg>{''.join(MANY)}</trkseg></trk>"
    other = f"<trk><name>down</name><trkseg>{''.join(MANY[:30])}</trkseg></trk>"
    text = f"{HEAD}{one}{other}<trk><name>void</name></trk></gpx>"
    refuses(
        lambda: track_from_text("two.gpx", text),
        "two.gpx: the file holds 2 tracks (1: 'up'; 2: 'down'). Save the one that is "
        "meant as a file of its own; or say which: read_track(..., track=1) by number or "
        "track='name'.",
        FieldFileError,
    )
    assert track_from_text("two.gpx", text, track=2).seconds.size == 30
    assert track_from_text("two.gpx", text, track="up").seconds.size == 60
    for wrong in ("sideways", 3, 0, True, 1.5):
        refuses(
            lambda wrong=wrong: track_from_text("two.gpx", text, track=wrong),
            f"two.gpx: there is no one track '{wrong}'. The file holds 1: 'up'; 2: 'down'. Give its number.",
            FieldFileError,
        )
