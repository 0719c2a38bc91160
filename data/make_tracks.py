"""Write the invented tracks, map lines, lap times and one count of Owlpenny Hill: ``python data/make_tracks.py``.

Nothing here was recorded. The hill is put into the open ocean, near latitude 47 and longitude -35, so that no place on
land can be meant; the season is invented too. The same seeds write the same bytes on every run.

Riders start from rest: they speed up at the pick-up of the lift until they have the speed of the rope. The laps are
timed on the same ride.

The story behind the map line: it was drawn from sheave to sheave, 163 m along the slope, while the tape measured from
grab to let-go, 150 m. Both are right, and they are not the same length.

What two volunteers brought of the Long Platter stands in a folder of its own, as untidy as such readings are: a track
with a hole in it, a map line from sheave to sheave, a stop among the laps, and a count with two stops and a gap.
"""

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np

FOLDER = Path(__file__).parent
METRES_NORTH, METRES_EAST = 111_170.5, 76_056.0  # a degree of latitude, and of longitude, at 47 degrees north (WGS84)
BASE_HEIGHT = 900.0

# the seeds were chosen among some ten thousands, so that page 05 can work with what the tracks read; the page says so
PENNY_ROPE = {
    "name": "Penny Rope, two rides",
    "place": (47.0100, -35.0200),
    "heading": 0.9,  # radians from east towards north
    "speed": 3.4,
    "length": 150.0,
    "rise": 29.4,
    "pick_up": 1.5,
    "seed": 29854,
    "start": datetime(2031, 1, 12, 10, 4, 0, tzinfo=UTC),
    "rides": 2,
}
LONG_PLATTER = {
    "name": "Long Platter, one ride",
    "place": (47.0112, -35.0220),
    "heading": 1.1,
    "speed": 2.8,
    "length": 400.0,
    "rise": 78.0,
    "pick_up": 1.5,
    "seed": 87,
    "start": datetime(2031, 1, 12, 11, 20, 0, tzinfo=UTC),
    "rides": 1,
}
OWN_RIDE = LONG_PLATTER | {
    "name": "platter, phone in the chest pocket",
    "seed": 7,
    "start": datetime(2031, 1, 12, 13, 41, 0, tzinfo=UTC),
    "hole": (96, 109),  # seconds in which the phone had no fix
}
OWN_LINE_BEGINS, OWN_LINE = 8.0, 418.0  # m along the slope: before the grab, and from sheave to sheave
OWN_LAPS_SEED, OWN_COUNT_SEED = 5, 16
LOADED = 0.905  # of the platters: the others went up empty
BEGINS, LAST = 10 * 60 + 35, 11 * 60 + 24  # of the count, in minutes of the day
NOT_COUNTED = (10 * 60 + 58, 10 * 60 + 59)
STOPS = {10 * 60 + 49: 38, 11 * 60 + 10: 52, 11 * 60 + 11: 9}  # seconds in which the lift stood, by the minute
PLATTER_EVERY = 7.0  # s
SHEAVE_DISTANCE = 163.0  # m along the slope; the ridden length begins 6 m above the bottom sheave
GRAB = 6.0
LAPS_SEED, LAP_SCATTER = 11, 0.35  # s


def plan_of(lift):
    """Return length on the plan over length along the slope."""
    return np.sqrt(1 - (lift["rise"] / lift["length"]) ** 2)


def run_up(lift, pieces=16):
    """Return the moves of a rider who speeds up from rest to the speed of the rope."""
    ends = np.linspace(0, lift["speed"] / lift["pick_up"], pieces + 1)
    steps = np.diff(lift["pick_up"] * ends**2 / 2)
    return [(seconds, way, 0.0) for seconds, way in zip(np.diff(ends).tolist(), steps.tolist(), strict=True)]


def ride_time(lift):
    """Return the seconds from grab to let-go."""
    return lift["length"] / lift["speed"] + lift["speed"] / (2 * lift["pick_up"])


def moves_of_one_ride(lift):
    """Return the moves (seconds, way along the line, way beside it in m) of one ride, from the waiting place on.

    Walking to the loading point, standing, run-up, ride, letting go, gliding off, standing.
    """
    steady = ride_time(lift) - lift["speed"] / lift["pick_up"]
    return [
        (16, 0.0, 18.0),
        (21, 0.0, 0.0),
        *run_up(lift),
        (steady, lift["speed"] * steady, 0.0),
        (7, 5.0, -7.0),
        (24, 0.0, 0.0),
    ]


def way_back(lift):
    """Return the moves of skiing down in wide turns to the waiting place, and standing there."""
    long, beside = lift["length"] + 5.0, 11.0
    turns, weave = 10, 14.0
    moves = []
    for turn in range(turns):
        side = weave if turn % 2 == 0 else -weave
        moves.append((5, -long / turns, side - beside / turns))
    return [*moves, (30, 0.0, 0.0)]


def wander(rng, count, size, time):
    """Return a first-order Gauss-Markov process at steps of one second."""
    keep = np.exp(-1.0 / time)
    values = rng.normal(size=count)
    for place in range(1, count):
        values[place] = keep * values[place - 1] + np.sqrt(1 - keep**2) * values[place]
    return size * values


def fixes(lift):
    """Return seconds, latitude, longitude and height of every fix of a track."""
    rng = np.random.default_rng(lift["seed"])
    moves = []
    for ride in range(lift["rides"]):
        moves += moves_of_one_ride(lift) + (way_back(lift) if ride + 1 < lift["rides"] else [])
    corners = np.cumsum([[0.0, 0.0, -18.0], *moves], axis=0)
    seconds = np.arange(0.0, corners[-1, 0])
    along, beside = (np.interp(seconds, corners[:, 0], corners[:, column]) for column in (1, 2))
    errors = [wander(rng, seconds.size, 2.5, 60.0) + rng.normal(0, 0.4, seconds.size) for _ in range(2)]
    height = BASE_HEIGHT + np.clip(along, 0, lift["length"]) * lift["rise"] / lift["length"]
    height = height + wander(rng, seconds.size, 3.0, 90.0) + rng.normal(0, 0.3, seconds.size)
    latitude, longitude = positions(lift, along, beside)
    latitude = latitude + errors[0] / METRES_NORTH
    longitude = longitude + errors[1] / METRES_EAST
    there = rng.random(seconds.size) > 0.03
    there[0] = True
    first, last = lift.get("hole", (0, 0))
    there[(seconds >= first) & (seconds < last)] &= first == last
    return [column[there] for column in (seconds, latitude, longitude, height)]


def positions(lift, along, beside):
    """Return latitude and longitude of places given along the slope of the line and beside it, in m."""
    way, turn = np.asarray(along) * plan_of(lift), lift["heading"]
    east, north = way * np.cos(turn) - beside * np.sin(turn), way * np.sin(turn) + beside * np.cos(turn)
    return lift["place"][0] + north / METRES_NORTH, lift["place"][1] + east / METRES_EAST


def gpx_text(lift):
    """Return a track in the open format GPX 1.1."""
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        '<gpx version="1.1" creator="data/make_tracks.py" xmlns="http://www.topografix.com/GPX/1/1">',
        "  <metadata><desc>Invented readings: no such place, no such lift</desc></metadata>",
        f"  <trk><name>{lift['name']}</name><trkseg>",
    ]
    for second, latitude, longitude, height in zip(*fixes(lift), strict=True):
        moment = lift["start"] + timedelta(seconds=float(second))
        lines.append(
            f'    <trkpt lat="{latitude:.7f}" lon="{longitude:.7f}"><ele>{height:.1f}</ele>'
            f"<time>{moment:%Y-%m-%dT%H:%M:%SZ}</time></trkpt>"
        )
    return "\n".join([*lines, "  </trkseg></trk>", "</gpx>", ""])


def map_line(lift=PENNY_ROPE, begins=GRAB, length=SHEAVE_DISTANCE):
    """Return longitude and latitude of the two sheaves of a lift, as they were clicked on the map."""
    latitude, longitude = positions(lift, np.array([-begins, length - begins]), 0.0)
    return [[round(float(east), 7), round(float(north), 7)] for east, north in zip(longitude, latitude, strict=True)]


def kml_text(name="Penny Rope, sheave to sheave", corners=None):
    """Return a map line in the open format KML 2.2."""
    corners = " ".join(f"{east:.7f},{north:.7f}" for east, north in corners or map_line())
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n<kml xmlns="http://www.opengis.net/kml/2.2">\n  <Document>\n'
        "    <description>Invented: no such place, no such lift</description>\n"
        f"    <Placemark><name>{name}</name>\n"
        f"      <LineString><coordinates>{corners}</coordinates></LineString>\n    </Placemark>\n"
        "  </Document>\n</kml>\n"
    )


def geojson_text():
    """Return the map line as GeoJSON."""
    line = {
        "type": "FeatureCollection",
        "features": [
            {
                "type": "Feature",
                "properties": {"name": "Penny Rope, sheave to sheave", "note": "invented: no such place, no such lift"},
                "geometry": {"type": "LineString", "coordinates": map_line()},
            }
        ],
    }
    return json.dumps(line, indent=2) + "\n"


def laps_text():
    """Return ten ride times of the Penny Rope; in one of them the rope was slowed."""
    times = ride_time(PENNY_ROPE) + np.random.default_rng(LAPS_SEED).normal(0.0, LAP_SCATTER, size=10)
    rows = ["lap,seconds,note"]
    for number, time in enumerate(times, start=1):
        slowed = number == 7
        rows.append(
            f"{number},{time + (9.3 if slowed else 0.0):.1f},{'rope slowed for a fallen rider' if slowed else ''}"
        )
    return "\n".join([*rows, ""])


def own_laps_text():
    """Return eight ride times of the Long Platter as somebody wrote them down; in one of them the lift stood."""
    times = ride_time(OWN_RIDE) + np.random.default_rng(OWN_LAPS_SEED).normal(0.0, 1.1, size=8)
    notes = {3: "stood for half a minute, a child had let go", 6: "cold fingers, pressed late"}
    rows = ["lap;seconds;note"]
    for number, time in enumerate(times, start=1):
        written = f"{time + (31.0 if number == 3 else 0.0):.1f}".replace(".", ",")
        rows.append(f"{number};{written};{notes.get(number, '')}")
    return "\n".join([*rows, "9;;watch not stopped", ""])


def own_count_text():
    """Return a count of the Long Platter, minute by minute: two stops, two minutes that nobody counted."""
    rng, running = np.random.default_rng(OWN_COUNT_SEED), 0.0
    notes = {BEGINS: "invented", 10 * 60 + 49: "fallen at the top", 11 * 60 + 10: "somebody sat in the track"}
    rows = ["from;minutes;persons;stop_seconds;people_waited;note"]
    for minute in range(BEGINS, LAST + 1):
        before, stood = running, STOPS.get(minute, 0)
        running += 60.0 - stood
        platters = int(running // PLATTER_EVERY) - int(before // PLATTER_EVERY)
        persons = rng.binomial(platters, LOADED)
        if minute in NOT_COUNTED:
            continue
        after_the_gap = "two minutes missed: helped somebody up" if minute - 1 in NOT_COUNTED else ""
        note = notes.get(minute, after_the_gap)
        rows.append(f"{minute // 60}:{minute % 60:02d};1;{persons};{stood};yes;{note}")
    return "\n".join([*rows, ""])


def texts():
    """Return every file by its name, as text."""
    return {
        "penny_rope_track.gpx": gpx_text(PENNY_ROPE),
        "long_platter_track.gpx": gpx_text(LONG_PLATTER),
        "penny_rope_line.kml": kml_text(),
        "penny_rope_line.geojson": geojson_text(),
        "penny_rope_laps.csv": laps_text(),
        "own_lift/long_platter_track.gpx": gpx_text(OWN_RIDE),
        "own_lift/long_platter_line.kml": kml_text(
            "Long Platter, sheave to sheave", map_line(OWN_RIDE, OWN_LINE_BEGINS, OWN_LINE)
        ),
        "own_lift/long_platter_laps.csv": own_laps_text(),
        "own_lift/long_platter_count.csv": own_count_text(),
    }


if __name__ == "__main__":
    for name, text in texts().items():
        (FOLDER / name).write_bytes(text.encode())
