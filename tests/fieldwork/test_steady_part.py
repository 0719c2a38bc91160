"""The steady part of a track."""

import numpy as np
import pytest
from make_tracks import HOME, METRES_A_DEGREE
from places import DATA

from liftcalc.fieldwork.steady_part import find_steady_parts
from liftcalc.fieldwork.track_files import read_track
from liftcalc.fieldwork.tracks import make_track


def test_a_run_downhill_is_not_taken_for_the_lift():
    times = np.arange(0.0, 200.0)
    way = np.interp(times, [0, 20, 80, 100, 160, 200], [0, 0, 120, 120, -240, -240])
    track = make_track("up and down", times, HOME[0] + way / METRES_A_DEGREE, np.full(200, HOME[1]), 900 + 0.2 * way)
    best, *others = find_steady_parts(track)
    assert best.ride_end <= 82
    assert [part.climbs for part in others] == [False]
    assert best.climbs


DOWNHILL = [  # speed, seconds, how far heights stray, falls that are none yet and that are one; in m and s
    ("3 % of a long way", 3.0, 60, 0.0, 6.9, 7.2),
    ("2 m of a short way", 3.0, 12, 0.0, 2.35, 2.45),
    ("what straying heights feign", 1.0, 60, 1.0, 32.5, 34.0),
    ("what heights feign that stray half as far", 1.0, 60, 0.5, 16.2, 17.0),
]


@pytest.mark.parametrize(
    ("speed", "seconds", "strays", "none", "one"), [case[1:] for case in DOWNHILL], ids=[case[0] for case in DOWNHILL]
)
def test_a_fall_within_what_heights_may_feign_is_no_way_downhill(speed, seconds, strays, none, one):
    times = np.arange(0.0, seconds + 41.0)
    part = np.clip((times - 20) / seconds, 0, 1)
    places = HOME[0] + speed * seconds * part / METRES_A_DEGREE
    for fall, level in ((none, True), (one, False)):
        heights = 900 - fall * part + strays * np.sin(times**2)
        track = make_track("level or not", times, places, np.full(times.size, HOME[1]), heights)
        assert [found.climbs for found in find_steady_parts(track)] == [level], fall


def test_the_penny_rope_track_holds_two_rides():
    best, second, *rest = find_steady_parts(read_track(DATA / "penny_rope_track.gpx"))
    assert abs(best.speed - second.speed) < 0.3
    assert second.ride_start > best.ride_end + 60 or best.ride_start > second.ride_end + 60
    assert all(part.way < 0.5 * second.way for part in rest)
