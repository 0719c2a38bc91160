"""From a sheet to its line: which readings make it, which are compared, and the way back to a sheet."""

import csv
import functools
import io
import math
from dataclasses import replace

import pytest
from by_hand import plain_numbers, ride_time_by_hand
from example_lines import TOW
from hypothesis import given, settings
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from places import DATA
from scipy.optimize import brentq

from liftcalc import Q
from liftcalc.fieldwork import summary
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.demo_hill import demo_hill, demo_kinds, demo_sheet
from liftcalc.lifts.kinds import NOT_READ
from liftcalc.lifts.sheet import read_sheet, sheet_from_bytes
from liftcalc.lifts.sheet_limits import sheet_limits
from liftcalc.lifts.sheet_line import Compared, compared, known_of, made_from, sheet_csv, sheet_line, sheet_readings

HEADING = "quantity,value,unit,plus_minus,method,note\n"
UNITS = {  # of the numbers of a line
    "line_speed": "m/s", "spacing": "m", "ridden_length": "m", "vertical_rise": "m", "persons_per_carrier": "person",
    "motor_power": "kW", "sheave_distance": "m", "station_time": "s", "dwell_time": "s",
    "pick_up_acceleration": "m/s**2", "acceleration": "m/s**2",
}  # fmt: skip


def sheet_of(*rows, name="sheet.csv"):
    """Return the sheet of rows, each a text such as "spacing,6.8,m"."""
    return sheet_from_bytes(name, (HEADING + "\n".join(rows) + "\n").encode())


def numbers_of(line):
    """Return the numbers of a line in plain units; those that are None are not there."""
    values = {name: getattr(line, name) for name in UNITS}
    return {name: value.m_as(UNITS[name]) for name, value in values.items() if value is not None}


def same_line(one, other, rel=1e-9):
    """Check that two lines are one line."""
    assert (one.name, one.kind, one.level) == (other.name, other.kind, other.level)
    assert numbers_of(one) == pytest.approx(numbers_of(other), rel=rel)


# there and back


def there_and_back(line, readings, lift=None):
    """Write a line as a sheet, read it, and check that it says the same."""
    sheet = sheet_from_bytes("other.csv", sheet_csv(line, readings, lift=lift).encode())
    same_line(sheet_line(sheet), line)
    found = sheet_readings(sheet)
    assert set(found) == set(readings)
    for name, value in readings.items():
        if isinstance(value, str):
            assert found[name] == value
        else:
            assert found[name].m_as(value.units) == pytest.approx(value.magnitude, rel=1e-9), name
    return sheet


@pytest.mark.parametrize("name", [*demo_hill().lines, *demo_kinds().lines])
def test_a_line_of_the_data_written_as_a_sheet_is_the_same_line(name):
    hill = demo_hill() if name in demo_hill().lines else demo_kinds()
    (lift,) = (lift.name for lift in hill.lifts.values() if name in lift.capacity_per_line)
    sheet = there_and_back(*hill.line(name), lift=lift)
    assert sheet.lift == lift
    assert compared(sheet) == []


def test_what_is_seldom_read_goes_there_and_back_as_well():
    readings = {
        "counterweight": Q(5.5, "kN"), "groove_angle": Q(45, "degree"), "rope_mass_per_length": Q(0.4, "lb/ft"),
        "drive_position": "bottom", "efficiency": Q(1 / 3, ""), "base_speed": Q(7.7, "mph"),
    }  # fmt: skip
    odd = replace(TOW, name='a "rope", and a tow', level="packing", line_speed=Q(10 / 3, "m/s"), motor_power=None)
    assert there_and_back(odd, readings).lift == odd.name
    there_and_back(replace(TOW, kind=NOT_READ, sheave_distance=Q(163, "m")), {})


# samples that people wrote

CHAIR = """quantity;value;unit;plus_minus;method;note
lift;Lantern Double;;;;
line;Lantern Double;;;;
kind;fixed chair;;;;
level of spacing;ideal;;;;
drive position;not read;;;;
line speed;2,2;m/s;0,05;papers;
spacing;15,4;m;0,1;papers;
persons per carrier;2;person;;seen;
ridden length;640;m;5;map;
vertical rise;142;m;2;map;
motor power;55;kW;;asked of the operator;
rider mass;80;kg;8;assumed;
sheave drag share;3;%;1;assumed;
hanging mass;12000;kg;1000;papers;
efficiency;85;%;5;assumed;
loading time;6;s;0,5;stopwatch;
clearing time;5;s;0,5;stopwatch;
"""


def test_every_row_of_a_sheet_with_semicolons_is_read():
    sheet = sheet_from_bytes("double_chair_sample.csv", CHAIR.encode())
    read = {*sheet.rows.values(), *(reading.row for reading in sheet.readings)}
    assert set(range(2, 19)) - read == {6}  # of the drive it says that it was not read
    line, readings = demo_hill().line("Lantern Double")
    same_line(sheet_line(sheet), line)
    assert set(readings) - set(sheet_readings(sheet)) == {"loading_places", "unloading_places"}
    assert sheet.of("line speed")[0].plus_minus == Q(0.05, "m/s")
    assert sheet.of("sheave drag share")[0].plus_minus == Q(1, "percent")


def test_the_demo_sheet_reads_whole_and_makes_the_demo_tow():
    sheet, rows = demo_sheet(), (DATA / "hill/1_penny_rope.csv").read_text(encoding="utf-8").splitlines()
    assert len(sheet.facts) + len(sheet.readings) == len(rows) - 1
    assert sheet.facts == {
        "lift": "Penny Rope", "line": "Penny Rope", "kind": "rope tow", "state": "running", "drive_position": "top",
        "date": "2026-02-14", "taken_by": "M. K.", "snow": "packed and dry", "loading_timed_as": "readiness",
        "people_waited": "yes",
    }  # fmt: skip
    assert made_from(sheet) == [
        "line_speed", "spacing", "persons_per_carrier", "ridden_length", "sheave_distance",
    ]  # fmt: skip
    by_hand = plain_numbers("hill")["Penny Rope"]
    assert numbers_of(sheet_line(sheet)) == pytest.approx(
        {name: by_hand[name] for name in UNITS if name in by_hand}, rel=1e-12
    )
    ride = ride_time_by_hand("rope tow", by_hand)
    on_line = ride * by_hand["line_speed"] / by_hand["spacing"]
    parts = {each.name: each.apart for each in compared(sheet)}
    assert parts == pytest.approx(
        {"ride_time": by_hand["ride_time"] / ride - 1, "riders_on_line": 21.5 / on_line - 1}, rel=1e-9
    )
    assert [str(each) for each in compared(sheet)] == [
        "ride time: read 45.3 s, the line makes it 45.2 s: 0.11 % above",
        "head count: read 21.5 persons, the line makes it 22.6 persons: 5 % below",
    ]
    assert sheet.counted == (Q(33, "person"), Q(120, "s"))
    assert [row[0] for row in summary(sheet).rows][:3] == ["line speed", "spacing", "persons per carrier"]


OLD = """quantity,value,unit,plus_minus,method,note
line speed,3.4,m/s,0.1,mark on the rope timed between two poles 30 m apart,set up by the operator with the lift locked out
line speed,7.6,mph,0.5,phone in a rider's closed pocket,
line speed,11.16,ft/s,0.3,mark on the rope timed between two poles 100 ft apart,afternoon
ridden length,150,m,1,tape on the locked-out lift,grab to let-go
ridden length,493,ft,5,map and rise,
sheave distance,163,m,1,asked of the operator,bottom sheave to top sheave
spacing,6.8,m,0.5,photo with poles of known distance; 11 riders,mean of 10 gaps
spacing,22.5,ft,2,photo with the 10 m poles in it,
spacing,6.74,m,0.5,photo with the 10 m poles in it,second photo
vertical rise,29.4,m,1,map,
persons per carrier,1,person,,seen,
head count,22,person,1,photo of the running line,
head count,21,person,1,photo of the running line,
ride time,45.3,s,0.5,stopwatch on one rider,
persons counted,33,person,,count at the top,people stood waiting throughout
counting time,2,min,,stopwatch,same two minutes as the count
motor power,15,kW,,asked of the operator,rated
pick-up acceleration,1.5,m/s2,0.5,assumed,nobody timed it
"""  # noqa: E501


def test_an_old_sheet_without_facts_reads():
    sheet = sheet_from_bytes("field_sheet.csv", OLD.encode())
    assert [reading.row for reading in sheet.readings] == list(range(2, 20))
    line = sheet_line(sheet)
    assert (line.name, line.kind, line.level, sheet.lift) == ("field_sheet", NOT_READ, "ideal", "field_sheet")
    speed = (3.4 + 7.6 * 0.44704 + 11.16 * 0.3048) / 3
    length, spacing = (150 + 493 * 0.3048) / 2, (6.8 + 22.5 * 0.3048 + 6.74) / 3
    assert numbers_of(line) == pytest.approx(
        {
            "line_speed": speed, "spacing": spacing, "ridden_length": length, "vertical_rise": 29.4,
            "persons_per_carrier": 1, "motor_power": 15, "sheave_distance": 163, "pick_up_acceleration": 1.5,
        },
        rel=1e-12,
    )  # fmt: skip
    ride = length / speed + speed / 3
    assert line.ride_time.m_as("s") == pytest.approx(ride, rel=1e-12)  # a pick-up was read: so they start from rest
    assert {each.name: each.made.magnitude for each in compared(sheet)} == pytest.approx(
        {"ride_time": ride, "riders_on_line": ride * speed / spacing}, rel=1e-9
    )
    limits = sheet_limits(sheet, draws=100)
    assert [record.name for record in limits.records if record.name not in limits.missing] == ["spacing"]
    assert limits.missing == {
        "loading": ("loading time",),
        "motor": ("efficiency", "kind", "rider mass", "idle drag"),
        "traction": (
            "slack tension", "drive position", "lining friction", "wrap angle", "grip safety factor", "rider mass",
            "kind", "idle drag",
        ),
        "unload": ("clearing time",),
    }  # fmt: skip


# which readings make the line, and which are compared: sums by hand


def speed_of_ride(ride, length, start):
    """Return the speed at which a ride from rest takes its time."""
    speed = start * (ride - math.sqrt(ride**2 - 2 * length / start))
    assert speed == pytest.approx(brentq(lambda v: length / v + v / start / 2 - ride, 0.1, start * ride / 2), rel=1e-9)
    return speed


TOW_ROWS = ("kind,rope tow", "ridden length,150,m", "vertical rise,29.4,m")
CHAIR_ROWS = ("kind,fixed chair", "ridden length,640,m", "vertical rise,142,m", "persons per carrier,2,person")
CABIN_ROWS = ("kind,gondola", "ridden length,1500,m", "vertical rise,300,m", "persons per carrier,8,person")
TRAM_ROWS = ("kind,reversible tram", "ridden length,1600,m", "vertical rise,600,m", "persons per carrier,40,person")
V_REST = speed_of_ride(45.25, 150, 1.5)
T_REST = 150 / 3.4 + 3.4 / 3
T_TRAM = 1600 / 8 + 8 / 0.5
RULES = [  # what, rows, what makes the line, numbers by hand, what is compared and what the line makes of it
    ("a tow of a kind that was not read takes the spacing",
     ("ridden length,150,m", "vertical rise,29.4,m", "persons per carrier,1,person", "line speed,3.4,m/s",
      "spacing,6.8,m", "interval,2.1,s"),
     ["line_speed", "spacing", "persons_per_carrier"], {"line_speed": 3.4, "spacing": 6.8}, {"interval": 2}),
    ("an interval stands in for a spacing of a kind that was not read",
     ("ridden length,150,m", "vertical rise,29.4,m", "persons per carrier,1,person", "line speed,3.4,m/s",
      "interval,2,s"),
     ["line_speed", "interval", "persons_per_carrier"], {"line_speed": 3.4, "spacing": 6.8}, {}),
    ("a belt takes the spacing",
     ("kind,conveyor", "ridden length,80,m", "vertical rise,8,m", "line speed,0.6,m/s", "spacing,3,m",
      "hourly capacity,700,pph,,ideal"),
     ["line_speed", "spacing"], {"spacing": 3, "persons_per_carrier": 1}, {"hourly_capacity": 3600 * 0.6 / 3}),
    ("carriers take the interval",
     (*CHAIR_ROWS, "line speed,2.2,m/s", "spacing,15.6,m", "interval,7,s"),
     ["line_speed", "interval", "persons_per_carrier"], {"spacing": 15.4}, {"spacing": 15.4}),
    ("so do platters",
     ("kind,platter lift", "ridden length,400,m", "vertical rise,78,m", "persons per carrier,1,person",
      "line speed,2.8,m/s", "spacing,19,m", "interval,7,s"),
     ["line_speed", "interval", "persons_per_carrier"], {"spacing": 19.6}, {"spacing": 19.6}),
    ("a spacing stands in for an interval",
     (*CHAIR_ROWS, "line speed,2.2,m/s", "spacing,15.4,m"),
     ["line_speed", "spacing", "persons_per_carrier"], {"spacing": 15.4}, {}),
    ("carriers with a sheave distance fill a gap",
     (*CHAIR_ROWS, "line speed,2.2,m/s", "carriers on the loop,84", "sheave distance,660,m"),
     ["line_speed", "persons_per_carrier", "sheave_distance", "carriers_on_loop"],
     {"spacing": 2 * 660 / 84, "sheave_distance": 660}, {}),
    ("where there is no gap they are compared",
     (*CHAIR_ROWS, "line speed,2.2,m/s", "interval,7,s", "carriers on the loop,84", "sheave distance,660,m"),
     ["line_speed", "interval", "persons_per_carrier", "sheave_distance"],
     {"spacing": 15.4, "sheave_distance": 660}, {"carriers_on_loop": 2 * 660 / 15.4}),
    ("of a detachable lift with the time in the stations",
     (*CABIN_ROWS, "line speed,5,m/s", "carriers on the loop,60", "sheave distance,1500,m", "station time,120,s"),
     ["line_speed", "persons_per_carrier", "sheave_distance", "carriers_on_loop"],
     {"spacing": 5 * (2 * 1500 / 5 + 120) / 60, "station_time": 120}, {}),  # one every 12 s
    ("of a detachable lift they give the speed as well",
     (*CABIN_ROWS, "interval,12,s", "carriers on the loop,60", "sheave distance,1500,m", "station time,120,s"),
     ["interval", "persons_per_carrier", "sheave_distance", "carriers_on_loop"],
     {"line_speed": 2 * 1500 / (60 * 12 - 120), "spacing": 60}, {}),
    ("of a detachable lift without the time in the stations they are no help",
     (*CABIN_ROWS, "line speed,5,m/s", "carriers on the loop,60", "sheave distance,1500,m",
      "hourly capacity,2400,pph,,ideal"),
     ["line_speed", "persons_per_carrier", "sheave_distance", "hourly_capacity"], {"spacing": 60}, {}),
    ("of a detachable lift without a sheave distance neither",
     (*CABIN_ROWS, "line speed,5,m/s", "carriers on the loop,60", "station time,120,s",
      "hourly capacity,2400,pph,,ideal"),
     ["line_speed", "persons_per_carrier", "hourly_capacity"],
     {"spacing": 60}, {"carriers_on_loop": (2 * 1500 / 5 + 120) / 12}),
    ("a ride time from rest makes the speed",
     (*TOW_ROWS, "ride time,45.25,s", "pick-up acceleration,1.5,m/s2", "spacing,6.8,m"),
     ["spacing", "ride_time"], {"line_speed": V_REST, "spacing": 6.8}, {}),
    ("a ride time whose start was not read",
     (*TOW_ROWS, "ride time,44,s", "spacing,6.8,m"), ["spacing", "ride_time"], {"line_speed": 150 / 44}, {}),
    ("a ride time of chairs",
     (*CHAIR_ROWS, "ride time,300,s", "interval,7,s"),
     ["interval", "persons_per_carrier", "ride_time"], {"line_speed": 640 / 300, "spacing": 7 * 640 / 300}, {}),
    ("a ride time from rest makes the length",
     ("kind,rope tow", "vertical rise,29.4,m", "line speed,3.4,m/s", "spacing,6.8,m", "ride time,45.25,s",
      "pick-up acceleration,1.5,m/s2"),
     ["line_speed", "spacing", "ride_time"], {"ridden_length": 3.4 * (45.25 - 3.4 / 3)}, {}),
    ("where there is no gap it is compared",
     (*TOW_ROWS, "line speed,3.4,m/s", "spacing,6.8,m", "ride time,46,s", "pick-up acceleration,1.5,m/s2"),
     ["line_speed", "spacing"], {"line_speed": 3.4}, {"ride_time": T_REST}),
    ("an hourly capacity makes the spacing",
     (*TOW_ROWS, "line speed,3.4,m/s", "hourly capacity,1200,pph,,ideal"),
     ["line_speed", "hourly_capacity"], {"spacing": 3600 * 3.4 / 1200}, {}),
    ("an hourly capacity makes the persons on a carrier",
     ("kind,fixed chair", "ridden length,640,m", "vertical rise,142,m", "line speed,2.2,m/s", "interval,7.2,s",
      "hourly capacity,1000,pph,,ideal"),
     ["line_speed", "interval", "hourly_capacity"], {"persons_per_carrier": 2, "spacing": 2.2 * 7.2}, {}),
    ("a head count makes the spacing, by the time of the ride",
     (*TOW_ROWS, "line speed,3.4,m/s", "head count,20,person", "pick-up acceleration,1.5,m/s2"),
     ["line_speed", "riders_on_line"], {"spacing": 3.4 * T_REST / 20}, {}),
    ("a capacity fills the gap before a head count",
     (*TOW_ROWS, "line speed,3.4,m/s", "head count,20,person", "hourly capacity,1800,pph,,ideal"),
     ["line_speed", "hourly_capacity"], {"spacing": 6.8}, {"riders_on_line": 150 / 6.8}),
    ("a ride time and a capacity of the maker make a chair",
     (*CHAIR_ROWS, "ride time,8,min", "hourly capacity,1200,pph,,counted"),
     ["persons_per_carrier", "ride_time", "hourly_capacity"],
     {"line_speed": 640 / 480, "spacing": 6 * 640 / 480}, {}),
    ("a tram comes every trip",
     (*TRAM_ROWS, "line speed,8,m/s", "acceleration,0.5,m/s2", "dwell time,60,s"),
     ["line_speed", "persons_per_carrier"], {"spacing": 8 * (T_TRAM + 60), "dwell_time": 60, "acceleration": 0.5}, {}),
    ("an interval of a tram that was timed is compared",
     (*TRAM_ROWS, "line speed,8,m/s", "acceleration,0.5,m/s2", "dwell time,60,s", "interval,280,s",
      "ride time,220,s"),
     ["line_speed", "persons_per_carrier"], {"spacing": 8 * (T_TRAM + 60)},
     {"interval": T_TRAM + 60, "ride_time": T_TRAM}),
    ("an interval makes a tram whose dwell time was not read",
     (*TRAM_ROWS, "line speed,8,m/s", "interval,280,s", "carriers on the loop,2"),
     ["line_speed", "interval", "persons_per_carrier"], {"spacing": 8 * 280}, {"carriers_on_loop": 2}),
    ("of a tram the trip goes before the interval",
     (*TRAM_ROWS, "ride time,216,s", "acceleration,0.5,m/s2", "dwell time,60,s", "interval,290,s"),
     ["persons_per_carrier", "ride_time"], {"line_speed": 8, "spacing": 8 * 276}, {"interval": 276}),
    ("an interval and a dwell time make the length of a tram",
     ("kind,reversible tram", "vertical rise,600,m", "persons per carrier,40,person", "line speed,8,m/s",
      "acceleration,0.5,m/s2", "dwell time,60,s", "interval,276,s"),
     ["line_speed", "persons_per_carrier", "interval"], {"ridden_length": 1600, "spacing": 8 * 276}, {}),
    ("a head count of an empty line fills no gap",
     (*TOW_ROWS, "line speed,3.4,m/s", "head count,0,person", "hourly capacity,1800,pph,,ideal"),
     ["line_speed", "hourly_capacity"], {"spacing": 6.8}, {"riders_on_line": 150 / 6.8}),
    ("several readings count by their mean",
     (*TOW_ROWS, "line speed,3.2,m/s", "line speed,3.6,m/s", "spacing,6.8,m", "ridden length,160,m"),
     ["line_speed", "spacing"], {"line_speed": 3.4, "ridden_length": 155}, {}),
    ("a count is never a part of the line",
     (*TOW_ROWS, "line speed,3.4,m/s", "spacing,6.8,m", "persons counted,33,person", "counting time,2,min"),
     ["line_speed", "spacing"], {"spacing": 6.8}, {}),
]  # fmt: skip


@pytest.mark.parametrize(("what", "rows", "makes", "numbers", "beside"), RULES, ids=[case[0] for case in RULES])
def test_which_readings_make_the_line(what, rows, makes, numbers, beside):
    sheet = sheet_of(*rows)
    line, found = sheet_line(sheet), numbers_of(sheet_line(sheet))
    length = ["ridden_length"] if sheet.has("ridden length") else []
    assert sorted(made_from(sheet)) == sorted([*makes, *length])
    assert {name: found[name] for name in numbers} == pytest.approx(numbers, rel=1e-9)
    assert found["vertical_rise"] == sheet.mean("vertical rise").m_as("m")
    assert {each.name: each.made.magnitude for each in compared(sheet)} == pytest.approx(beside, rel=1e-9)
    for each in compared(sheet):
        assert each.read == sheet.mean(each.name)
        assert each.apart == pytest.approx(each.read.magnitude / beside[each.name] - 1, abs=1e-9)
    known = known_of(sheet)
    assert {name: known[name].m_as(UNITS[name]) for name in found} == pytest.approx(found, rel=1e-12)
    assert line.start_not_read == (
        "ride time without the start: pick-up acceleration not read"
        if sheet.kind in ("rope tow", "platter lift", None) and not sheet.has("pick-up acceleration")
        else "ride time without the start and the stop: acceleration not read"
        if sheet.kind == "reversible tram" and not sheet.has("acceleration")
        else ""
    )


def test_a_difference_in_words():
    made = Q(100, "m")
    for read, words in (
        (100.04, "the same"),
        (99.96, "the same"),
        (104.96, "5 % above"),
        (99.9, "0.1 % below"),
        (0, "100 % below"),
        (250, "150 % above"),
        (123_456, "120000 % above"),
    ):
        assert Compared("spacing", Q(read, "m"), made).difference == words
    assert str(Compared("spacing", Q(110, "m"), made)) == "spacing: read 110 m, the line makes it 100 m: 10 % above"


def test_the_readings_beside_a_line_in_whatever_unit_they_were_written():
    rows = ("snow friction,7,%", "efficiency,85,%", "wrap angle,180,degrees", "loading time,0.05,min", "friction,0.09")
    readings = sheet_readings(sheet_of(*rows, "rider mass,75,kg", "drive position,Top", "motor power,15,kW"))
    assert readings.pop("drive_position") == "top"
    units = {"snow_friction": "", "efficiency": "", "wrap_angle": "radian", "loading_time": "s", "rider_mass": "kg"}
    assert {name: value.m_as(units[name]) for name, value in readings.items()} == pytest.approx(
        {"snow_friction": 0.08, "efficiency": 0.85, "wrap_angle": math.pi, "loading_time": 3, "rider_mass": 75}
    )


def test_what_a_sheet_without_a_line_gives_all_the_same():
    sheet = sheet_of("kind,fixed chair", "line speed,2.2,m/s", "interval,7,s", "motor power,55,kW", "loading time,6,s")
    known = known_of(sheet)
    assert set(known) == {"line_speed", "spacing", "motor_power", "loading_time"}
    assert known["spacing"].m_as("m") == pytest.approx(15.4)
    assert compared(sheet) == []
    assert known_of(sheet_of("loading time,6,s")) == {"loading_time": Q(6, "s")}
    assert known_of(sheet_of("kind,rope tow")) == {}
    assert known_of(sheet_of("kind,rope tow", "head count,20,person", "pick-up acceleration,1.5,m/s2")) == {
        "pick_up_acceleration": Q(1.5, "m/s**2")
    }
    tram = ("kind,reversible tram", "dwell time,60,s", "acceleration,0.5,m/s2", "persons per carrier,40,person")
    for more in ((), ("ride time,216,s",), ("line speed,8,m/s",), ("carriers on the loop,2",)):
        known = known_of(sheet_of(*tram, *more))
        assert known["persons_per_carrier"] == Q(40, "person")
        assert "spacing" not in known
        assert ("line_speed" in known) == (more == ("line speed,8,m/s",))


LACKS = "which nobody read. Add a row such as:"
NO_LINE = [  # rows, message behind "sheet.csv: "
    (("kind,rope tow", "line speed,3.4,m/s", "ridden length,150,m", "vertical rise,29.4,m"),
     f"there is no line without spacing, {LACKS} spacing,...,m,,,"),
    (("kind,rope tow", "line speed,3.4,m/s", "spacing,6.8,m", "vertical rise,29.4,m"),
     f"there is no line without ridden length, {LACKS} ridden length,...,m,,,"),
    (("kind,rope tow", "spacing,6.8,m", "ridden length,150,m", "vertical rise,29.4,m"),
     f"there is no line without line speed, {LACKS} line speed,...,m/s,,,"),
    (("kind,rope tow", "line speed,3.4,m/s", "spacing,6.8,m", "ridden length,150,m"),
     f"there is no line without vertical rise, {LACKS} vertical rise,...,m,,,"),
    (("kind,fixed chair", "line speed,2.2,m/s", "interval,7,s", "ridden length,640,m", "vertical rise,142,m"),
     f"there is no line without persons per carrier, {LACKS} persons per carrier,...,person,,,"),
    (("kind,fixed chair", "line speed,2.2,m/s", "ridden length,640,m", "vertical rise,142,m",
      "persons per carrier,2,person", "carriers on the loop,84"),
     f"there is no line without spacing, {LACKS} spacing,...,m,,,"),
    (("kind,rope tow", "line speed,3.4,m/s", "ridden length,150,m", "vertical rise,29.4,m",
      "persons counted,33,person", "counting time,2,min"),
     f"there is no line without spacing, {LACKS} spacing,...,m,,,"),
    ((*TOW_ROWS, "line speed,3.4,m/s", "head count,0,person"),
     f"there is no line without spacing, {LACKS} spacing,...,m,,,"),
    ((*TOW_ROWS, "line speed,3.4,m/s", "spacing,6.8,m", "vertical rise,300,m"),
     "the vertical rise must be less than the ridden length of 150 m, but got 165 m. Write the length along the "
     "slope, and the height gained."),
    ((*TOW_ROWS, "spacing,6.8,m", "ride time,10,s", "pick-up acceleration,1.5,m/s2"),
     "line_speed_from_ride_time: nobody covers 150.0 m from rest in 10.0 s at 1.5 m/s². Time the ride again, or write "
     "a larger pick_up_acceleration, such as Q(1.5, 'm/s**2')."),
]  # fmt: skip


@table_of_messages(NO_LINE, "rows", kind=FieldFileError)
def test_a_sheet_from_which_no_line_follows(rows, message, kind):
    refuses(lambda: sheet_line(sheet_of(*rows)), f"sheet.csv: {message}", kind)


# however a sheet was written

DEMO = (DATA / "hill/1_penny_rope.csv").read_text(encoding="utf-8")


def with_semicolons(text):
    """Return a sheet as a spreadsheet program of other countries writes it."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=";", lineterminator="\n")
    for name, value, unit, half_width, *rest in csv.reader(io.StringIO(text)):
        writer.writerow(
            [name, value if name == "date" else value.replace(".", ","), unit, half_width.replace(".", ","), *rest]
        )
    return out.getvalue()


WRITTEN = [  # what, bytes
    ("Windows-1252", DEMO.encode("cp1252")),
    ("UTF-8 with a mark", DEMO.encode("utf-8-sig")),
    ("UTF-16", DEMO.encode("utf-16")),
    ("UTF-16 the other way round", b"\xfe\xff" + DEMO.encode("utf-16-be")),
    ("line ends of Windows", DEMO.replace("\n", "\r\n").encode()),
    ("semicolons", with_semicolons(DEMO).encode()),
    ("semicolons in UTF-16 with line ends of Windows", with_semicolons(DEMO).replace("\n", "\r\n").encode("utf-16")),
]


@pytest.mark.parametrize("raw", [case[1] for case in WRITTEN], ids=[case[0] for case in WRITTEN])
def test_one_sheet_in_many_writings_is_one_line(tmp_path, raw):
    (tmp_path / "penny.csv").write_bytes(raw)
    sheet = read_sheet(tmp_path / "penny.csv")
    assert sheet_line(sheet) == sheet_line(demo_sheet())
    assert sheet.readings[3:] == demo_sheet().readings[3:]
    assert sheet_readings(sheet) == sheet_readings(demo_sheet())


@functools.cache
def demo_limits():
    """Return the limits of the demo tow, from few draws."""
    return sheet_limits(demo_sheet(), draws=50)


@settings(max_examples=25)
@given(rows=st.permutations(DEMO.splitlines()[1:]))
def test_the_order_of_the_rows_changes_nothing(rows):
    sheet = sheet_from_bytes("any.csv", "\n".join([HEADING.strip(), *rows]).encode())
    same_line(sheet_line(sheet), sheet_line(demo_sheet()), rel=1e-12)
    assert sorted(made_from(sheet)) == sorted(made_from(demo_sheet()))
    one, other = sheet_limits(sheet, draws=50), demo_limits()
    assert {name: ends.m_as("pph").tolist() for name, ends in one.ranges.items()} == {
        name: pytest.approx(ends.m_as("pph").tolist(), rel=1e-9) for name, ends in other.ranges.items()
    }
    assert one.shares == pytest.approx(other.shares)
    assert (sorted(one.assumed), sorted(one.exact), one.missing) == (sorted(other.assumed), sorted(other.exact), {})
    assert (one.governs.limit.name, str(one.governs.capacity)) == (
        other.governs.limit.name,
        str(other.governs.capacity),
    )
    assert list(map(str, one.compared)) == list(map(str, other.compared))


# what is not taken for granted


def test_a_figure_of_the_maker_that_fills_a_gap_gives_the_line_its_level():
    rows = ("kind,rope tow,,", "line speed,3.4,m/s", "ridden length,150,m", "vertical rise,29.4,m")
    packed = sheet_line(sheet_of(*rows, "hourly capacity,1800,pph,,packing of the papers,"))
    assert (packed.level, packed.spacing.m_as("m")) == ("packing", pytest.approx(6.8))
    assert sheet_line(sheet_of(*rows, "spacing,6.8,m", "hourly capacity,1800,pph,,packing,")).level == "ideal"
    said = ("level of spacing,governed,,", "hourly capacity,1800,pph,,ideal,")
    assert sheet_line(sheet_of(*rows, *said)).level == "governed", "what the sheet says goes before it"


OF_A_CHAIR = ("kind,fixed chair,,", "line speed,2.2,m/s", "interval,7,s", "ridden length,640,m", "vertical rise,142,m")


@pytest.mark.parametrize(("capacity", "persons"), [(1029, 2), (1060, 2), (514, 1), (1240, None), (240, None)])
def test_persons_that_follow_are_a_whole_number_or_none(capacity, persons):
    sheet = sheet_of(
        *OF_A_CHAIR, f"hourly capacity,{capacity},pph,,ideal,"
    )  # persons by hand: 7 x 1,029 / 3,600 = 2.001
    if persons is None:
        refuses(
            lambda: sheet_line(sheet),
            "sheet.csv: there is no line without persons per carrier, which nobody read. "
            "Add a row such as: persons per carrier,...,person,,,",
            FieldFileError,
        )
    else:
        assert sheet_line(sheet).persons_per_carrier == Q(persons, "person")


def test_riders_of_a_lift_without_a_kind_are_not_taken_for_one_each():
    known = known_of(sheet_of("line speed,3.4,m/s", "spacing,6.8,m"))
    assert "persons_per_carrier" not in known
    assert known_of(sheet_of("kind,rope tow,,", "line speed,3.4,m/s", "spacing,6.8,m"))["persons_per_carrier"] == Q(
        1, "person"
    )
