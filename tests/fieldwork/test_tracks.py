"""Tracks that read well: exactness without noise, plan and slope, files as phones write them, and the demo data."""

import importlib.util
import re
from pathlib import Path

import numpy as np
import pytest
from make_tracks import HOME, METRES_A_DEGREE, METRES_A_DEGREE_EAST, gpx_text, make
from scipy.special import stdtr

from liftcalc import Q, UnitError
from liftcalc.fieldwork.geodesy import PositionError, geodesic_length, local_plane, slope_from_map
from liftcalc.fieldwork.line_fit import fit_line
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.fieldwork.steady_part import SteadyPart, find_steady_parts
from liftcalc.fieldwork.track_files import read_track, track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.fieldwork.tracks import make_track

DATA = Path(__file__).resolve().parents[2] / "data"

GEODESICS = [  # latitudes, longitudes, metres, source
    ([-41.32, 40.96], [174.81, -5.50], 19_959_679.267, "geodesic inverse on WGS84, GeographicLib documentation"),
]


@pytest.mark.parametrize(("latitudes", "longitudes", "metres", "source"), GEODESICS, ids=[c[-1] for c in GEODESICS])
def test_geodesic_length(latitudes, longitudes, metres, source):
    assert geodesic_length(latitudes, longitudes).m_as("m") == pytest.approx(metres, abs=0.0005), source


def straight(*, speed=3.4, seconds=60, grade=0.2, wait=20, step=1.0, heights=True):
    """Return a track without noise: standing, then up a slope at one speed along the slope, then standing."""
    times = np.arange(0.0, wait + seconds + wait, step)
    way = np.clip(times - wait, 0, seconds) * speed
    plan, up = way / np.hypot(1, grade), way * grade / np.hypot(1, grade)
    east, north = plan * 0.6, plan * 0.8
    return make_track(
        "straight",
        times,
        HOME[0] + north / METRES_A_DEGREE,
        HOME[1] + east / METRES_A_DEGREE_EAST,
        900 + up if heights else None,
    )


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


def two_speeds():
    """Return 20 s of standing, 60 s at 3 m/s, 60 s at 1.5 m/s, and 20 s of standing, on the flat."""
    times = np.arange(0.0, 161.0)
    way = np.interp(times, [0, 20, 80, 140, 160], [0, 0, 180, 270, 270])
    return times, HOME[0] + way / METRES_A_DEGREE, np.full(times.size, HOME[1])


def test_the_trace_is_ready_for_a_chart():
    reading = read_track_speed(straight())
    assert reading.seconds.shape == reading.distances.shape == reading.speeds.shape == reading.steady.shape
    assert np.allclose(reading.speeds[reading.steady], 3.4 / np.hypot(1, 0.2), rtol=0.002)
    first = np.flatnonzero(reading.steady)[0]
    assert reading.distances[first] == pytest.approx(3.4 * (reading.seconds[first] - reading.start), abs=0.1)


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


def test_a_run_downhill_is_not_taken_for_the_lift():
    times = np.arange(0.0, 200.0)
    way = np.interp(times, [0, 20, 80, 100, 160, 200], [0, 0, 120, 120, -240, -240])
    track = make_track("up and down", times, HOME[0] + way / METRES_A_DEGREE, np.full(200, HOME[1]), 900 + 0.2 * way)
    best, *others = find_steady_parts(track)
    assert best.ride_end <= 82
    assert [part.climbs for part in others] == [False]
    assert best.climbs


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


def test_where_a_hemisphere_ends_nothing_changes():
    times = np.arange(0.0, 60.0)
    plain = make_track("plain", times, np.full(60, 47.0), -35 + times * 4e-5)
    across = make_track("across", times, np.full(60, 47.0), (180 - 0.001 + times * 4e-5 + 180) % 360 - 180)
    speeds = [read_track_speed(track, start=0, end=59).speed.m_as("m/s") for track in (plain, across)]
    assert speeds[0] == pytest.approx(speeds[1], rel=1e-9)


def test_the_plane_agrees_with_the_geodesic():
    latitudes, longitudes = [47.0, 47.008], [-35.0, -34.99]
    east, north = local_plane(latitudes, longitudes)
    flat = np.hypot(np.diff(east), np.diff(north))[0]
    assert flat == pytest.approx(geodesic_length(latitudes, longitudes).m_as("m"), rel=1e-5)


def test_slope_from_map_carries_the_doubt():
    length, doubt = slope_from_map(
        map_length=Q(400, "m"), vertical_rise=Q(300, "m"),
        map_length_uncertainty=Q(5, "m"), vertical_rise_uncertainty=Q(10, "m"),
    )  # fmt: skip
    assert length.m_as("m") == pytest.approx(500, rel=1e-12)
    assert doubt.m_as("m") == pytest.approx(np.hypot(4, 6), rel=1e-12)


def test_positions_that_do_not_exist():
    for latitudes, longitudes, words in (
        ([95, 47], [0, 0], "position 1: the latitude is 95. Latitudes lie from -90 to 90"),
        ([47, 47], [0, 181], "position 2: the longitude is 181. Longitudes lie from -180 to 180"),
        ([47], [0], "a line needs two positions or more, but got 1 latitudes and 1 longitudes"),
        ([47, float("nan")], [0, 0], "position 2: the latitude is nan"),
    ):
        with pytest.raises(PositionError, match=re.escape(words)):
            geodesic_length(latitudes, longitudes)


def test_the_fit_knows_a_line_and_forgets_no_unit_of_time():
    times = np.arange(0.0, 40.0)
    fit = fit_line(times, 5.0 + 2.5 * times)
    assert fit.slope == pytest.approx(2.5, rel=1e-9)
    assert fit.at(10.0) == pytest.approx(30.0, rel=1e-9)
    noisy = 2.5 * times + np.random.default_rng(5).normal(0, 1, 40)
    assert fit_line(times + 1e5, noisy).slope == pytest.approx(fit_line(times, noisy).slope, rel=1e-6)


def fit_by_hand(times, readings, expected_wander):
    """Return slope, its doubt, the share within a half-width as a function of it, and the error that explains most.

    Each error model is weighed by how well it explains what is left of the readings once level and slope are out: their
    parts that no straight line has a share in follow a multivariate t of 3 degrees of freedom.
    """
    size = -(-len(times) // 60)
    blocks = [slice(begin, begin + size) for begin in range(0, len(times), size)]
    time, reading = (np.array([column[block].mean() for block in blocks]) for column in (times, readings))
    count = np.array([len(times[block]) for block in blocks])
    design = np.column_stack([np.ones(time.size), time])
    no_line = np.linalg.svd(design.T)[2][2:]
    freedom, models = 3 + time.size - 2, []
    for lasts in (20, 40, 80, 160, 320):
        for white in (0.002, 0.01, 0.05, 0.2, 0.8):
            error = np.exp(-np.abs(np.subtract.outer(time, time)) / lasts) + np.diag(white / count)
            inverse = np.linalg.inv(error)
            covariance = np.linalg.inv(design.T @ inverse @ design)
            line = covariance @ design.T @ inverse @ reading
            rest = reading - design @ line
            left, shape = no_line @ reading, 3 * expected_wander**2 / 3 * no_line @ error @ no_line.T
            log_weight = -0.5 * np.linalg.slogdet(shape)[1] - freedom / 2 * np.log1p(
                left @ np.linalg.solve(shape, left) / 3
            )
            variance = (3 * expected_wander**2 + rest @ inverse @ rest) / freedom
            models.append((log_weight, line[1], np.sqrt(variance * covariance[1, 1]), variance, lasts, white))
    log_weights, slopes, spreads, variances, lasts, whites = np.array(models).T
    weights = np.exp(log_weights - log_weights.max())
    weights /= weights.sum()
    slope = weights @ slopes
    doubt = np.sqrt(weights @ (spreads**2 * freedom / (freedom - 2) + (slopes - slope) ** 2))

    def share_within(half_width):
        ends = (np.add.outer((-half_width, half_width), slope - slopes)) / spreads
        below, above = stdtr(freedom, ends)
        return weights @ (above - below)

    explains = np.sqrt(weights @ variances), np.exp(weights @ np.log(lasts)), np.sqrt(weights @ (variances * whites))
    return slope, doubt, share_within, explains


@pytest.mark.parametrize(("count", "expected_wander"), [(9, 2.6), (23, 5.2), (131, 2.6)])
def test_the_fit_is_the_weighing_of_models_by_another_road(count, expected_wander):
    rng = np.random.default_rng(count)
    times = np.cumsum(rng.uniform(0.5, 3.0, count))
    readings = 2.5 * times + np.cumsum(rng.normal(0, 0.5, count)) + rng.normal(0, 0.4, count)
    slope, doubt, share_within, (size, lasts, white) = fit_by_hand(times, readings, expected_wander)
    fit = fit_line(times, readings, expected_wander)
    assert fit.slope == pytest.approx(slope, rel=1e-8)
    assert fit.slope_uncertainty == pytest.approx(doubt, rel=1e-8)
    assert share_within(fit.half_width_95) == pytest.approx(0.95, abs=1e-8)
    assert fit.wander == pytest.approx(size, rel=1e-8)
    assert fit.wander_time == pytest.approx(lasts, rel=1e-8)
    assert fit.white_noise == pytest.approx(white, rel=1e-8)


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


def test_the_penny_rope_track_holds_two_rides():
    best, second, *rest = find_steady_parts(read_track(DATA / "penny_rope_track.gpx"))
    assert abs(best.speed - second.speed) < 0.3
    assert second.ride_start > best.ride_end + 60 or best.ride_start > second.ride_end + 60
    assert all(part.way < 0.5 * second.way for part in rest)


def test_the_demo_data_is_what_its_script_writes():
    spec = importlib.util.spec_from_file_location("demo_tracks", DATA / "make_tracks.py")
    script = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(script)
    first, second = script.texts(), script.texts()
    assert first == second
    for name, text in first.items():
        assert same_numbers((DATA / name).read_text(encoding="utf-8"), text), name


def same_numbers(one, other):
    """Return whether two texts are alike but for the last digit of a number, where mathematics libraries differ."""
    number = r"-?\d+\.\d+"
    if re.sub(number, "", one) != re.sub(number, "", other):
        return False
    pairs = zip(re.findall(number, one), re.findall(number, other), strict=True)
    return all(abs(float(a) - float(b)) <= 1.5 * 10.0 ** -len(a.partition(".")[2]) for a, b in pairs)


MISUSES = [
    (
        {"start": 30.0},
        FieldFileError,
        "straight: end must be a number of seconds, but got None. Give start and end both",
    ),
    ({"start": 50.0, "end": 20.0}, FieldFileError, "start must lie before end, but got start 50 s and end 20 s"),
    ({"start": "a", "end": 20.0}, FieldFileError, "straight: start must be a number of seconds, but got 'a'"),
    ({"start": float("nan"), "end": 20.0}, FieldFileError, "straight: start must be a number of seconds, but got nan"),
    (
        {"start": 30.0, "end": 32.0},
        FieldFileError,
        "from 30 s to 32 s the track holds 3 points; a speed needs 5 or more",
    ),
    ({"start": 500.0, "end": 600.0}, FieldFileError, "straight: the part from 500 s to 600 s lies outside the track."),
    ({"start": 0.0, "end": 15.0}, FieldFileError, "from 0 s to 15 s nothing moves. Choose another part."),
    ({"vertical_rise": 29.4}, UnitError, "read_track_speed: vertical_rise must be a length, but got 29.4."),
    ({"vertical_rise": Q(29.4, "s")}, UnitError, "read_track_speed: vertical_rise must be a length"),
    (
        {"vertical_rise": Q(-1, "m")},
        FieldFileError,
        "vertical_rise must be zero or more, but got -1 m. Write Q(29.4, 'm').",
    ),
    (
        {"vertical_rise": Q(29, "m"), "map_length": Q(0, "m")},
        FieldFileError,
        "map_length must be greater than zero, but got 0 m",
    ),
    (
        {"map_length": Q(147, "m")},
        FieldFileError,
        "map_length came without vertical_rise. Give both, or the rise alone.",
    ),
]


@pytest.mark.parametrize(("named", "kind", "message"), MISUSES, ids=[case[2][:60] for case in MISUSES])
def test_a_wrong_choice_is_named(named, kind, message):
    with pytest.raises(kind) as caught:
        read_track_speed(straight(heights=False), **named)
    assert message in str(caught.value)


def test_a_track_with_no_steady_part_says_so():
    times = np.arange(0.0, 60.0)
    standing = make_track("standing", times, np.full(60, 47.0), np.full(60, -35.0))
    with pytest.raises(FieldFileError) as caught:
        read_track_speed(standing)
    assert str(caught.value) == (
        "standing: no steady part was found: the track nowhere goes straight on at one speed for 20 m and 6 s. Give "
        "start and end yourself, in seconds from 0 to 59."
    )
