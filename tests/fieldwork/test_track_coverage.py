"""The stated doubt of a track's speed is honest: of 500 tracks with known truth, about 475 hold it within 95 %."""

import numpy as np
import pytest
from make_tracks import gpx_text, make

from liftcalc import Q
from liftcalc.fieldwork.track_files import track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track

SEED, TRACKS, THROUGH_FILES = 1, 500, 30


def reading_of(made, number):
    """Return the reading of a made track; the first ones go through the text of a file, every second one has a rise."""
    given = {"vertical_rise": Q(made.rise, "m")} if number % 2 else {}
    if number < THROUGH_FILES:
        track = track_from_text("made.gpx", gpx_text(made))
    else:
        track = make_track("made", made.seconds, made.latitudes, made.longitudes, made.elevations)
    return read_track_speed(track, **given)


def plain_half_width(reading):
    """Return the half-width of 95 % by a plain regression, which takes every fix for a reading of its own."""
    seconds, ways = reading.seconds[reading.steady], reading.distances[reading.steady]
    away = seconds - seconds.mean()
    rest = ways - ways.mean() - away * (away @ ways) / (away @ away)
    return 1.96 * np.sqrt(rest @ rest / (rest.size - 2) / (away @ away))


@pytest.fixture(scope="module")
def results():
    """Return truth and reading of every track."""
    found = []
    for number in range(TRACKS):
        made = make(np.random.default_rng((SEED, number)))
        found.append((made, reading_of(made, number)))
    return found


def test_the_tracks_are_varied(results):
    speeds = np.array([made.speed for made, _ in results])
    lengths = np.array([made.length for made, _ in results])
    assert speeds.min() < 0.6
    assert speeds.max() > 5.9
    assert lengths.min() < 70
    assert lengths.max() > 890
    dropped = [sum("dropped" in sentence for sentence in reading.sentences) for _, reading in results]
    assert np.mean(np.array(dropped) > 0) > 0.5


def test_the_true_speed_lies_inside_the_stated_95_percent(results):
    inside = sum(
        abs(reading.speed.m_as("m/s") - made.speed) <= reading.speed_half_width_95.m_as("m/s")
        for made, reading in results
    )
    assert 0.93 * TRACKS <= inside <= 0.97 * TRACKS


def test_the_standard_uncertainty_is_the_size_of_the_errors(results):
    errors = np.array([reading.speed.m_as("m/s") - made.speed for made, reading in results])
    scaled = errors / np.array([reading.speed_uncertainty.m_as("m/s") for _, reading in results])
    assert abs(scaled.mean()) < 4 / np.sqrt(TRACKS)  # no bias within four standard errors
    assert 0.8 < np.quantile(np.abs(scaled), 0.6827) < 1.2


def test_a_plain_regression_would_believe_itself_far_too_much(results):
    inside = sum(
        abs(reading.plan_speed.m_as("m/s") - made.plan_speed) <= plain_half_width(reading) for made, reading in results
    )
    assert inside < 0.5 * TRACKS


def test_the_doubt_is_no_wider_than_it_must_be(results):
    widths = np.array([reading.speed_half_width_95.m_as("m/s") / made.speed for made, reading in results])
    assert np.median(widths) < 0.03


def test_the_steady_part_lies_inside_the_ride(results):
    inside = [made.ride[0] - 4 <= reading.start and reading.end <= made.ride[1] + 4 for made, reading in results]
    assert np.mean(inside) > 0.95


def test_the_true_length_lies_within_three_standard_uncertainties(results):
    scaled = np.array(
        [
            (reading.ridden_length.m_as("m") - made.length) / reading.ridden_length_uncertainty.m_as("m")
            for made, reading in results
        ]
    )
    assert np.mean(np.abs(scaled) < 3) > 0.95
