"""A track as it is cleaned: what is dropped, and where it is parted."""

import re

import numpy as np
import pytest
from example_tracks import MANY, gpx, two_speeds
from make_tracks import METRES_A_DEGREE, make

from liftcalc.fieldwork.steady_part import find_steady_parts
from liftcalc.fieldwork.track_files import track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track


def test_a_repeated_time_a_jump_and_missing_fixes_are_listed():
    made = make(np.random.default_rng(3), speed=3.4, length=300.0, faults=False)
    seconds = made.seconds.copy()
    latitudes = made.latitudes.copy()
    latitudes[70:73] += 300 / METRES_A_DEGREE
    seconds[90] = seconds[89]
    there = np.ones(seconds.size, bool)
    there[100:106] = False
    track = make_track("faults", *(column[there] for column in (seconds, latitudes, made.longitudes, made.elevations)))
    reading = read_track_speed(track)
    assert "1 point dropped: time stamp repeated at 89 s." in reading.sentences
    jump = next(sentence for sentence in reading.sentences if "jumps" in sentence)
    assert re.fullmatch(r"3 points dropped: the position jumps by up to (29\d|30\d) m at 70 s, 71 s, 72 s\.", jump)
    assert reading.seconds.size == seconds.size - 6 - 3 - 1
    assert abs(reading.speed.m_as("m/s") - 3.4) < 3 * reading.speed_uncertainty.m_as("m/s")


def test_a_jump_that_stays_parts_the_track():
    times, latitudes, longitudes = two_speeds()
    latitudes[50:] += 500 / METRES_A_DEGREE
    track = make_track("moved", times, latitudes, longitudes)
    assert list(track.breaks) == [50]
    assert "the position jumps at 50 s and does not come back: no part runs across it" in track.notes
    for part in find_steady_parts(track):
        assert part.ride_end < 50 or part.ride_start >= 50
    warning = "The part runs across a jump of the position at 50 s: its speed is wrong."
    across, beside = read_track_speed(track, start=30, end=70), read_track_speed(track, start=52, end=78)
    assert any(sentence.startswith(warning) for sentence in across.sentences)
    assert not any(sentence.startswith(warning) for sentence in beside.sentences)


def test_where_a_hemisphere_ends_nothing_changes():
    times = np.arange(0.0, 60.0)
    plain = make_track("plain", times, np.full(60, 47.0), -35 + times * 4e-5)
    across = make_track("across", times, np.full(60, 47.0), (180 - 0.001 + times * 4e-5 + 180) % 360 - 180)
    speeds = [read_track_speed(track, start=0, end=59).speed.m_as("m/s") for track in (plain, across)]
    assert speeds[0] == pytest.approx(speeds[1], rel=1e-9)


def test_a_cleaned_track_cannot_be_written_into():
    track = track_from_text("many.gpx", gpx(*MANY))
    with pytest.raises(ValueError, match="read-only"):
        track.latitudes[0] = 0.0
    mine = np.arange(60.0)
    make_track("mine", mine, np.full(60, 47.0), np.full(60, -35.0))
    mine[0] = -1.0  # the caller's own array stays the caller's
    assert mine[0] == -1.0
