"""Installations of one line or several, and their table."""

from dataclasses import replace

import pytest
from example_lines import ALL_KINDS, TOW
from messages import refuses, table_of_messages
from places import DATA

from liftcalc import Q
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.installation import Installation, read_lifts


def test_an_installation_counts_each_line_with_its_own_speed_and_motor():
    slow = replace(TOW, name="slow", line_speed=Q(2.4, "m/s"), spacing=Q(6, "m"), motor_power=Q(11, "kW"))
    both = Installation("both", (TOW, slow))
    assert {name: str(capacity) for name, capacity in both.capacity_per_line.items()} == {
        "tow": "1,800 pph (ideal)",
        "slow": "1,440 pph (ideal)",
    }
    assert str(both.capacity_together) == "3,240 pph (ideal, 2 lines together)"
    assert both.motor_power_together.m_as("kW") == pytest.approx(26)
    assert Installation("one", (replace(TOW, motor_power=None),)).motor_power_together is None


MESSAGES = [
    (lambda: Installation("Twin", ()), "Installation: 'Twin' has no line. Give at least one Line."),
    (
        lambda: Installation("Twin", (TOW, replace(TOW, name="other", level="counted"))),
        "Installation: the lines of 'Twin' are of different levels (counted, ideal). "
        "Give lines of one level, so that their capacities may be added.",
    ),
    (
        lambda: Installation("Twin", (TOW, TOW)),
        "Installation: two lines of 'Twin' have one name. Name each, such as left and right.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)


# the table of lifts


def test_carriers_in_a_table(tmp_path):
    columns = "installation,line,kind,level,line_speed,sheave_distance,ridden_length,persons_per_carrier,"
    columns += "carriers_on_loop,vertical_rise,station_time"
    (tmp_path / "lifts.csv").write_text(
        f"{columns}\nCabins,Cabins,gondola,ideal,5 m/s,1500 m,1500 m,8 persons,60,100 m,120 s\n"
    )
    line = read_lifts(tmp_path / "lifts.csv")["Cabins"].lines[0]
    assert line.interval.m_as("s") == pytest.approx(12, rel=1e-9)


def test_a_table_of_lifts_by_other_givens(tmp_path):
    columns = "installation,line,kind,level,hourly_capacity,ride_time,persons_per_carrier,ridden_length,vertical_rise"
    row = "Chair,Chair,fixed chair,counted,1200 pph,8 min,2 persons,3900 ft,1850 ft"
    (tmp_path / "lifts.csv").write_text(f"{columns}\n{row}\n", encoding="utf-8")
    line = read_lifts(tmp_path / "lifts.csv")["Chair"].lines[0]
    assert line.interval.m_as("s") == pytest.approx(6, rel=1e-9)
    assert str(line.capacity) == "1,200 pph (counted)"


COLUMNS = "installation,line,kind,level,line_speed,spacing,ridden_length,vertical_rise"
ROW = "Penny,Penny,rope tow,ideal,3.4 m/s,6.8 m,150 m,29.4 m"
ALL_COLUMNS = (
    "installation, line, kind, level, line_speed, spacing, interval, persons_per_carrier, carriers_on_loop, "
    "sheave_distance, ridden_length, ride_time, riders_on_line, hourly_capacity, vertical_rise, motor_power, "
    "station_time, dwell_time, pick_up_acceleration, acceleration"
)
BROKEN_LIFTS = [  # what stands in the table, what is put in its place, message
    ("spacing,", "gap,", f"read_lifts: lifts.csv: column 'gap' is not known. Write one of {ALL_COLUMNS}."),
    (",29.4 m", ",", "read_lifts: lifts.csv, row 3: no vertical_rise. Write it, such as '29.4 m'."),
    (
        "rope tow",
        "sky hook",
        f"read_lifts: lifts.csv, row 3: line_from: kind must be one of {ALL_KINDS}, but got 'sky hook'.",
    ),
    (
        "ideal",
        "best",
        "read_lifts: lifts.csv, row 3: Capacity: level must be one of packing, ideal, governed, counted, "
        "but got 'best'.",
    ),
    (
        "3.4 m/s",
        "3.4",
        "read_lifts: lifts.csv, row 3, column line_speed: the unit is missing. "
        "Write 'm/s', 'km/h', 'mph', 'ft/s', 'ft/min'.",
    ),
    (
        "6.8 m",
        "6.8 s",
        "read_lifts: lifts.csv, row 3, column spacing: 's' is a unit of a time, not of a length. "
        "Write 'm', 'ft', 'in', 'cm', 'yd', 'km', 'mi'.",
    ),
    (
        "150 m",
        "long m",
        "read_lifts: lifts.csv, row 3, column ridden_length: 'long' is no number. Write digits only, such as 3.4.",
    ),
    (
        "6.8 m",
        "0 m",
        "read_lifts: lifts.csv, row 3: solve_line: spacing must be greater than zero, but got 0.0 m. "
        "Write for example Q(6.8, 'm').",
    ),
]


@pytest.mark.parametrize("column", ["installation", "level", "vertical_rise"])
def test_a_table_of_lifts_without_a_column(tmp_path, column):
    columns = COLUMNS.replace(column, "other")
    (tmp_path / "lifts.csv").write_text(f"{columns}\n{ROW}\n", encoding="utf-8")
    refuses(
        lambda: read_lifts(tmp_path / "lifts.csv"),
        f"lifts.csv, row 1: the column {column!r} is missing; the heading row reads '{columns.replace(',', ', ')}'. "
        "Write: installation,line,kind,level,vertical_rise",
        FieldFileError,
    )


@table_of_messages(BROKEN_LIFTS, "old", "new")
def test_a_broken_table_of_lifts(tmp_path, old, new, message, kind):
    rows = [row.replace(old, new, 1) for row in (COLUMNS, ROW)]
    whole = ROW if rows[0] == COLUMNS else rows[1]
    (tmp_path / "lifts.csv").write_text("\n".join((rows[0], whole, rows[1])) + "\n", encoding="utf-8")
    refuses(lambda: read_lifts(tmp_path / "lifts.csv"), message, kind)


def test_a_row_of_the_table_that_does_not_follow_names_the_row(tmp_path):
    (tmp_path / "lifts.csv").write_text(f"{COLUMNS}\n{ROW.replace('6.8 m', '')}\n", encoding="utf-8")
    refuses(
        lambda: read_lifts(tmp_path / "lifts.csv"),
        "read_lifts: lifts.csv, row 2: line_from: 'Penny': spacing does not follow from line_speed and ridden_length "
        "(and persons_per_carrier taken as 1 person). To know it, give interval, or riders_on_line, or "
        "hourly_capacity.",
    )


BROKEN_HILL = [  # what stands in the table of the hill, what is put in its place, message
    (
        "3.4 m/s",
        "3.4 ft",
        "read_lifts: lifts.csv, row 2, column line_speed: 'ft' is a unit of a length, not of a speed. "
        "Write 'm/s', 'km/h', 'mph', 'ft/s', 'ft/min'.",
    ),
    (
        "6.8 m,",
        "six m,",
        "read_lifts: lifts.csv, row 2, column spacing: 'six' is no number. Write digits only, such as 3.4.",
    ),
    ("ridden_length", "length", f"read_lifts: lifts.csv: column 'length' is not known. Write one of {ALL_COLUMNS}."),
    (
        "150 m",
        "",
        "read_lifts: lifts.csv, row 2: line_from: 'Penny Rope': ridden_length does not follow from line_speed, spacing "
        "and persons_per_carrier. To know it, give ride_time, or riders_on_line.",
    ),
]


@table_of_messages(BROKEN_HILL, "old", "new")
def test_a_broken_table_of_lifts_is_refused(tmp_path, old, new, message, kind):
    text = (DATA / "hill_lifts.csv").read_text(encoding="utf-8")
    (tmp_path / "lifts.csv").write_text(text.replace(old, new, 1), encoding="utf-8")
    refuses(lambda: read_lifts(tmp_path / "lifts.csv"), message, kind)
