"""Speed and length from a track: exactness without noise, plan and slope, doubts, and the demo tracks."""

import re

import numpy as np
import pytest
from example_tracks import MANY, gpx, straight, two_speeds
from make_tracks import HOME, METRES_A_DEGREE, METRES_A_DEGREE_EAST, make
from messages import refuses, table_of_messages
from places import DATA

from liftcalc import Q, UnitError
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.fieldwork.steady_part import SteadyPart, find_steady_parts
from liftcalc.fieldwork.track_files import read_track, track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track


@pytest.mark.parametrize("speed", [0.5, 1.3, 3.4, 6.0])
def test_a_track_without_noise_is_exact_to_a_part_in_a_thousand(speed):
    reading = read_track_speed(straight(speed=speed))
    assert reading.speed.m_as("m/s") == pytest.approx(speed, rel=1e-3)
    assert reading.along == "the slope"
    assert reading.plan_speed.m_as("m/s") == pytest.approx(speed / np.hypot(1, 0.2), rel=1e-3)
    off = abs(reading.ridden_length.m_as("m") - 60 * speed)
    assert off <= 2 * reading.ridden_length_uncertainty.m_as("m")
    assert reading.speed_uncertainty.m_as("m/s") > 0


def test_plan_and_slope_differ_by_2_percent_at_a_grade_of_20_percent():
    on_plan = read_track_speed(straight(heights=False))
    by_heights = read_track_speed(straight())
    by_rise = read_track_speed(straight(heights=False), vertical_rise=Q(29.4, "m"), map_length=Q(147.0, "m"))
    assert (on_plan.along, on_plan.lifted_by, on_plan.vertical_rise) == ("the plan", "nothing", None)
    assert (by_heights.along, by_heights.lifted_by) == ("the slope", "elevations")
    assert (by_rise.along, by_rise.lifted_by) == ("the slope", "given rise")
    for lifted in (by_heights, by_rise):
        more = (lifted.speed / on_plan.speed).m_as("") - 1
        assert 100 * more == pytest.approx(1.98, abs=0.01)
        assert any("lifted it onto the slope, 2.0 % more" in sentence for sentence in lifted.sentences)
    assert any("Positions give the speed on the plan, and no height is known" in word for word in on_plan.sentences)
    assert any(word.startswith("No elevations: the speed is one on the plan") for word in on_plan.sentences)


def test_the_doubt_is_lifted_onto_the_slope_with_the_speed():
    on_plan = read_track_speed(straight(heights=False))
    lifted = read_track_speed(straight(heights=False), vertical_rise=Q(30, "m"), map_length=Q(40, "m"))
    for name in ("speed", "speed_uncertainty", "speed_half_width_95", "ridden_length"):
        assert (getattr(lifted, name) / getattr(on_plan, name)).m_as("") == pytest.approx(1.25, rel=1e-9), name
    assert lifted.plan_speed_uncertainty.m_as("m/s") == on_plan.speed_uncertainty.m_as("m/s")


def test_a_given_rise_goes_before_the_elevations():
    flat = read_track_speed(straight(), vertical_rise=Q(0, "m"))
    assert flat.speed.m_as("m/s") == pytest.approx(flat.plan_speed.m_as("m/s"), rel=1e-12)
    assert flat.lifted_by == "given rise"


def test_the_reader_corrects_start_and_end():
    track = make_track("two speeds", *two_speeds())
    parts = find_steady_parts(track)
    found = read_track_speed(track, parts=parts)
    assert found.speed.m_as("m/s") == pytest.approx(3.0, rel=0.01)
    assert not found.chosen_by_reader
    chosen = read_track_speed(track, start=95.0, end=125.0, parts=parts)
    assert chosen.speed.m_as("m/s") == pytest.approx(1.5, rel=0.01)
    assert (chosen.start, chosen.end, chosen.chosen_by_reader) == (95.0, 125.0, True)
    assert chosen.steady.sum() == 31
    assert chosen.sentences[0] == "Steady part, chosen by you: from 95 s to 125 s, 31 fixes."
    assert any(sentence.startswith("Also steady, and not used: from ") for sentence in chosen.sentences)
    beyond = read_track_speed(track, start=-50.0, end=1e6)
    assert (beyond.start, beyond.end) == (0.0, track.seconds[-1])


def test_the_trace_is_ready_for_a_chart():
    reading = read_track_speed(straight())
    assert reading.seconds.shape == reading.distances.shape == reading.speeds.shape == reading.steady.shape
    assert np.allclose(reading.speeds[reading.steady], 3.4 / np.hypot(1, 0.2), rtol=0.002)
    first = np.flatnonzero(reading.steady)[0]
    assert reading.distances[first] == pytest.approx(3.4 * (reading.seconds[first] - reading.start), abs=0.1)


def test_a_sum_of_steps_is_longer_than_the_way():
    made = make(np.random.default_rng(11), speed=1.0, length=300.0, faults=False, error=2.0)
    reading = read_track_speed(make_track("noisy", made.seconds, made.latitudes, made.longitudes))
    (said,) = [sentence for sentence in reading.sentences if sentence.startswith("Adding up the steps")]
    assert float(re.search(r"would give ([\d.]+) m/s", said)[1]) > 1.05 * reading.plan_speed.m_as("m/s")


def test_a_bend_is_named():
    turn = np.linspace(0, np.pi / 2, 91)
    track = make_track(
        "bend", np.arange(91.0), HOME[0] + 200 * np.sin(turn) / METRES_A_DEGREE,
        HOME[1] + 200 * np.cos(turn) / METRES_A_DEGREE_EAST,
    )  # fmt: skip
    reading = read_track_speed(track, start=0, end=90)
    assert any(sentence.startswith("The part bends by ") for sentence in reading.sentences)


def test_elevations_in_part_are_used_where_they_are():
    bare = [text.replace("<ele>900</ele>", "") for text in MANY]
    mostly_bare = read_track_speed(track_from_text("bare.gpx", gpx(*bare[:50], *MANY[50:])))
    assert mostly_bare.lifted_by == "nothing"
    assert "50 points without an elevation: used for the plan only." in mostly_bare.sentences
    assert read_track_speed(track_from_text("half.gpx", gpx(*bare[:10], *MANY[10:]))).lifted_by == "elevations"
    (note,) = track_from_text("bare.gpx", gpx(*bare)).notes  # without any elevation there is no part to tell apart
    assert note.startswith("no elevations: the speed is one on the plan")


STEEP = [(3.4, 0.75, 0.8), (1.5, 4 / 3, 2.0)]  # speed along the slope, grade, doubt of either end of the ride in s


@pytest.mark.parametrize(("speed", "grade", "edge_doubt"), STEEP)
@pytest.mark.parametrize("lifted_by", ["given rise", "elevations", "nothing"])
def test_own_arithmetic_the_doubts_of_speed_and_length(lifted_by, speed, grade, edge_doubt):
    ride = (SteadyPart(20.0, 80.0, 25.0, 75.0, 0.0, 0.0, True, edge_doubt),)
    plain = read_track_speed(straight(speed=speed, grade=grade, heights=False), parts=ride)
    plan, plan_half = (getattr(plain, name).m_as("m/s") for name in ("speed_uncertainty", "speed_half_width_95"))
    cosine, sine = 1 / np.hypot(1, grade), grade / np.hypot(1, grade)
    climbing = {
        "given rise": speed * sine * np.sqrt(2) * edge_doubt / 60,  # of a time between two ends
        "elevations": 2 * plan,  # heights are expected to wander twice as far as places (engineering assumption)
        "nothing": 0.0,
    }[lifted_by]
    if lifted_by == "nothing":
        reading, speed, cosine, sine = plain, speed * cosine, 1.0, 0.0
    elif lifted_by == "given rise":
        track = straight(speed=speed, grade=grade, heights=False)
        reading = read_track_speed(track, parts=ride, vertical_rise=Q(60 * speed * sine, "m"))
    else:
        reading = read_track_speed(straight(speed=speed, grade=grade), parts=ride)
    doubt = np.hypot(cosine * plan, sine * climbing)
    found = {name: getattr(reading, name).magnitude for name in ("speed", "speed_uncertainty", "speed_half_width_95")}
    assert (reading.lifted_by, found["speed"]) == (lifted_by, pytest.approx(speed, rel=1e-4))
    assert found["speed_uncertainty"] == pytest.approx(doubt, rel=1e-3)
    assert found["speed_half_width_95"] == pytest.approx(np.hypot(cosine * plan_half, 1.96 * sine * climbing), rel=1e-3)
    assert reading.ridden_length.m_as("m") == pytest.approx(60 * speed, rel=1e-4)
    assert reading.ridden_length_uncertainty.m_as("m") == pytest.approx(
        np.hypot(60 * doubt, speed * np.sqrt(2) * edge_doubt), rel=1e-3
    )


DEMO = [("penny_rope_track.gpx", 3.4, 150.0, 29.4), ("long_platter_track.gpx", 2.8, 400.0, 78.0)]


@pytest.mark.parametrize(("name", "speed", "length", "rise"), DEMO, ids=[case[0] for case in DEMO])
@pytest.mark.parametrize("with_rise", [False, True], ids=["by elevations", "by the rise"])
def test_the_demo_tracks_tell_their_story(name, speed, length, rise, with_rise):
    track = read_track(DATA / name)
    reading = read_track_speed(track, **({"vertical_rise": Q(rise, "m")} if with_rise else {}))
    assert abs(reading.speed.m_as("m/s") - speed) <= reading.speed_half_width_95.m_as("m/s")
    off = abs(reading.ridden_length.m_as("m") - length)
    assert off <= 2 * reading.ridden_length_uncertainty.m_as("m")
    assert reading.speed_half_width_95.m_as("m/s") < 0.06 * speed


MISUSES = [  # what is given, message, kind
    (
        {"start": 30.0},
        "straight: end must be a number of seconds, but got None. Give start and end both, from 0 to 99.",
    ),
    (
        {"start": 50.0, "end": 20.0},
        "straight: start must lie before end, but got start 50 s and end 20 s. Swap them, or move one.",
    ),
    (
        {"start": "a", "end": 20.0},
        "straight: start must be a number of seconds, but got 'a'. Give start and end both, from 0 to 99.",
    ),
    (
        {"start": float("nan"), "end": 20.0},
        "straight: start must be a number of seconds, but got nan. Give start and end both, from 0 to 99.",
    ),
    (
        {"start": 30.0, "end": 32.0},
        "straight: from 30 s to 32 s the track holds 3 points; a speed needs 5 or more over 3 s or more. Choose "
        "a longer part.",
    ),
    (
        {"start": 500.0, "end": 600.0},
        "straight: the part from 500 s to 600 s lies outside the track. Choose from 0 to 99.",
    ),
    ({"start": 0.0, "end": 15.0}, "straight: from 0 s to 15 s nothing moves. Choose another part."),
    (
        {"vertical_rise": 29.4},
        "read_track_speed: vertical_rise must be a length, but got 29.4. Write Q(29.4, 'm').",
        UnitError,
    ),
    (
        {"vertical_rise": Q(29.4, "s")},
        "read_track_speed: vertical_rise must be a length, but got 29.4 s. Write Q(29.4, 'm').",
        UnitError,
    ),
    (
        {"vertical_rise": Q(-1, "m")},
        "read_track_speed: vertical_rise must be zero or more, but got -1 m. Write Q(29.4, 'm').",
    ),
    (
        {"vertical_rise": Q(29, "m"), "map_length": Q(0, "m")},
        "read_track_speed: map_length must be greater than zero, but got 0 m. Write Q(29.4, 'm').",
    ),
    (
        {"map_length": Q(147, "m")},
        "read_track_speed: map_length came without vertical_rise. Give both, or the rise alone.",
    ),
]


@table_of_messages(MISUSES, "named", kind=FieldFileError)
def test_a_wrong_choice_is_named(named, message, kind):
    refuses(lambda: read_track_speed(straight(heights=False), **named), message, kind)


def test_a_track_with_no_steady_part_says_so():
    times = np.arange(0.0, 60.0)
    standing = make_track("standing", times, np.full(60, 47.0), np.full(60, -35.0))
    refuses(
        lambda: read_track_speed(standing),
        "standing: no steady part was found: the track nowhere goes straight on at one speed for 20 m and 6 s. Give "
        "start and end yourself, in seconds from 0 to 59.",
        FieldFileError,
    )
