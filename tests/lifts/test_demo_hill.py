"""The invented hill is one hill: its sheets, tracks, laps and map line tell of the same lifts."""

import importlib.util
import re

import numpy as np
import pytest
from by_hand import GOVERNING, hill_numbers, limits_by_hand
from example_lines import pph
from places import DATA

from liftcalc import (
    LeftOut,
    Limit,
    Q,
    governing,
    grade_from_rise,
    hourly_capacity,
    persons_from_flow,
    ride_time_from_rest,
    show,
    slope_length,
)
from liftcalc.fieldwork import (
    line_speed_from_laps,
    read_lap_times,
    read_map_line,
    read_track,
    read_track_speed,
)
from liftcalc.lifts.demo_hill import demo_hill, demo_kinds, demo_line, demo_sheet
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.lifts.sheet_words import count_in_words
from liftcalc.lifts.tables import hill_table

SHEET = demo_sheet()


MEANS = [  # quantity of the sheet, digits of its unit, mean
    ("line speed", 2, "3.40"),
    ("spacing", 2, "6.80"),
    ("ridden length", 0, "150"),
    ("sheave distance", 0, "163"),
    ("vertical rise", 1, "29.4"),
    ("ride time", 1, "45.3"),
    ("motor power", 1, "15.0"),
    ("pick-up acceleration", 1, "1.5"),
]


@pytest.mark.parametrize(("quantity", "digits", "mean"), MEANS, ids=[case[0] for case in MEANS])
def test_the_plain_means_of_the_field_sheet_are_the_demo_tow(quantity, digits, mean):
    assert f"{SHEET.mean(quantity).magnitude:.{digits}f}" == mean


@pytest.mark.parametrize("name", ["line_speed", "spacing", "ridden_length", "vertical_rise", "pick_up_acceleration"])
def test_the_proposal_begins_with_the_rope_that_runs(name):
    rope, planned = hill_numbers()["Penny Rope"][name], hill_numbers()["Twin Penny left"][name]
    assert rope == pytest.approx(planned, rel=1e-3)


def test_doors_to_the_hill_lead_to_one_hill():
    line, readings = demo_line("Penny Rope")
    assert SHEET.line == line.name == "Penny Rope"
    assert line.line_speed == SHEET.mean("line speed")
    assert readings == demo_hill().readings["Penny Rope"]
    assert demo_hill() is demo_hill()
    assert [line.kind for line in demo_kinds().lines.values()] == list(KINDS)


def test_the_readings_of_the_sheet_follow_from_one_another():
    speed, spacing, length = (SHEET.mean(name) for name in ("line speed", "spacing", "ridden length"))
    ride = ride_time_from_rest(length, speed, SHEET.mean("pick-up acceleration"))
    assert show(SHEET.mean("ride time")) == "45.3 s"
    assert ride.m_as("s") == pytest.approx(45.3, abs=0.1)  # it was timed to half a second
    capacity = hourly_capacity(speed, spacing)
    assert show(capacity) == "1,800 pph"
    assert show(persons_from_flow(capacity, ride)) == "22.6 persons"


def test_one_slope_has_one_grade():
    rise, length = SHEET.mean("vertical rise"), Q(150, "m")
    grade = grade_from_rise(vertical_rise=rise, horizontal_run=(length**2 - rise**2) ** 0.5)
    assert show(grade, "percent") == "20%"
    assert show(SHEET.mean("sheave distance") * (rise / length).m_as("")) == "31.9 m", "sheave to sheave"


def test_the_count_of_the_demo_sheet():
    said = repr(count_in_words(SHEET))
    assert "33 persons in 2.0 min: 990 pph (counted). For 95 counts in 100 that is good to plus or minus 34 %" in said
    assert "is below 1,800 pph (ideal) by more than its doubt" in said


# tracks, laps and map lines


def script():
    """Return the script that writes tracks, laps and map lines, as a module."""
    spec = importlib.util.spec_from_file_location("demo_tracks", DATA / "make_tracks.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


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


@pytest.mark.parametrize("name", ["PENNY_ROPE", "LONG_PLATTER"])
def test_the_ride_in_a_track_is_that_of_a_rider_who_starts_from_rest(name):
    """A second opinion: the moves of the script are added up, and the way of the first seconds is looked at."""
    made = script()
    lift = getattr(made, name)
    row = hill_numbers()["Penny Rope" if name == "PENNY_ROPE" else "Long Platter"]
    length = lift["length"]
    rounded = round(row["line_speed"], 2), round(row["ridden_length"]), round(row["vertical_rise"], 1)
    assert (lift["speed"], lift["length"], lift["rise"]) == rounded
    speed = lift["speed"]
    moves = np.array(made.moves_of_one_ride(lift))
    corners = np.cumsum(np.vstack([[0.0, 0.0, 0.0], moves]), axis=0)
    took_hold = corners[2, 0]  # walked up and stood
    let_go = np.interp(length, corners[:, 1], corners[:, 0])
    ride = ride_time_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(1.5, "m/s**2"))
    assert let_go - took_hold == pytest.approx(ride.m_as("s"), abs=1e-6)
    one_second = np.interp(took_hold + 1.0, corners[:, 0], corners[:, 1])
    assert one_second == pytest.approx(0.5 * 1.5, abs=0.02)


def test_the_laps_are_timed_on_the_same_rope():
    laps = read_lap_times(DATA / "penny_rope_laps.csv", without=["7"])
    assert abs(laps.mean.m_as("s") - 45.25) < 3 * 0.35 / 3, "nine laps that scatter by 0.35 s"
    speed, doubt = line_speed_from_laps(
        laps, Q(150, "m"), ridden_length_uncertainty=Q(0.6, "m"), pick_up_acceleration=Q(1.5, "m/s**2")
    )
    assert abs(speed.m_as("m/s") - 3.4) < doubt.m_as("m/s")


def test_the_map_line_lies_on_the_same_slope():
    line = read_map_line(DATA / "penny_rope_line.kml")
    rise = Q(163 * 29.4 / 150, "m")
    assert show(rise) == "31.9 m"
    along = slope_length(vertical_rise=rise, horizontal_run=line.map_length)
    assert along.m_as("m") == pytest.approx(163, abs=0.05)


@pytest.mark.parametrize("name", ["penny_rope_track.gpx", "long_platter_track.gpx"])
def test_a_demo_track_says_nothing_that_the_lift_does_not(name):
    """Speed, rise and grade as the page prints them lie near those of the lift, without being told any of them."""
    speed, length, rise = (3.4, 150, 29.4) if name.startswith("penny") else (2.8, 400, 78)
    reading = read_track_speed(read_track(DATA / name))
    assert reading.speed.m_as("m/s") == pytest.approx(speed, abs=0.015)
    grade = reading.vertical_rise / (reading.ridden_length**2 - reading.vertical_rise**2) ** 0.5
    assert 100 * grade.m_as("") == pytest.approx(20, abs=0.5)
    assert reading.ridden_length.m_as("m") == pytest.approx(length, rel=0.03)


# lifts and readings

# believable ranges for small ski areas: common practice, no published source
RANGES = {
    "rope tow": {"speed": (2, 3.5), "spacing": (6, 12), "length": (80, 250), "motor": (7.5, 30)},
    "platter lift": {"speed": (2, 3), "interval": (6, 9), "length": (200, 600), "motor": (15, 45)},
    "conveyor": {"speed": (0.4, 0.7), "interval": (3.5, 7), "length": (40, 120), "motor": (5, 18)},
    "fixed chair": {"speed": (2, 2.5), "interval": (6, 8), "length": (350, 900), "motor": (35, 75)},
}


def test_the_demo_hill_is_believable():
    lines = list(demo_hill().lines.values())
    assert {line.kind for line in lines} == set(RANGES) < set(KINDS)  # the hill has some of the kinds, not all
    for line_ in lines:
        numbers = {
            "speed": line_.line_speed.m_as("m/s"),
            "spacing": line_.spacing.m_as("m"),
            "interval": line_.interval.m_as("s"),
            "length": line_.ridden_length.m_as("m"),
            "motor": line_.motor_power.m_as("kW"),
        }
        for name, (low, high) in RANGES[line_.kind].items():
            assert low <= numbers[name] <= high + 1e-9, f"{line_.name}: {name} {numbers[name]}"
        assert line_.vertical_rise < line_.ridden_length
    assert len(hill_table(demo_hill()).rows) == len(lines) + 1


def test_every_line_of_the_hill_has_readings_and_every_reading_a_line():
    lines, readings = demo_hill().lines, demo_hill().readings
    assert set(lines) == set(readings) == set(hill_numbers())
    for line in lines.values():
        known = {record.name for record in limits_of(line, readings[line.name]) if isinstance(record, Limit)}
        assert {"spacing", "loading", "motor", "unload"} <= known, line.name
    assert any("slack_tension" in own for own in readings.values())
    assert any("slack_tension" not in own for own in readings.values())  # one line shows a limit left out


@pytest.mark.parametrize(("name", "first", "following", "number"), GOVERNING, ids=[case[0] for case in GOVERNING])
def test_own_arithmetic_what_governs_on_the_hill(name, first, following, number):
    line, readings = demo_line(name)
    sums = limits_by_hand(line.kind, hill_numbers()[name])
    assert sorted(sums, key=sums.get)[:2] == [first, following]
    assert round(sums[first]) == number
    records = limits_of(line, readings)
    assert {record.name: pph(record) for record in records if isinstance(record, Limit)} == pytest.approx(
        sums, rel=1e-9
    )
    result = governing(records)
    assert (result.limit.name, result.next_limit.name) == (first, following)
    assert result.capacity.value.m_as("pph") == pytest.approx(sums[first], rel=1e-9)
    assert {record.name for record in records if isinstance(record, LeftOut)} == {"traction"} - set(sums)


def test_every_governing_line_of_the_hill_stands_here():
    assert {case[0] for case in GOVERNING} == set(demo_hill().lines)


# pages

PAGES = sorted((DATA.parent / "notebooks/sources").glob("0[0-6]*.py"))


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.stem)
def test_no_page_speaks_of_another_ride_rise_or_grade(path):
    text = path.read_text(encoding="utf-8")
    other = r"ride takes 44 s|stays on for 44|near 44 s|Q\(44, \"s\"\)\)|31\.8 m|grade 22 %|45\.12|100 ft in 9\.0 s"
    assert re.findall(other, text) == []
    assert set(re.findall(r"ride_time=Q\((.*?)\)", text)) <= {'45.3, "s"'}


def test_the_count_is_judged_right_below_the_routes():
    text = PAGES[0].read_text(encoding="utf-8")
    routes, judged = text.index("\npage.show(routes)\n"), text.index("\npage.show(count_in_words)\n")
    assert 0 < judged - routes < 1000
