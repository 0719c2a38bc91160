"""The invented hill is one hill: field sheet, lift table, tracks, laps and map line tell of the same lifts."""

import csv
from pathlib import Path

import pytest

from liftcalc import Q, grade_from_rise, hourly_capacity, persons_from_flow, ride_time_from_rest, show
from liftcalc.fieldwork import count_in_words, read_field_sheet

DATA = Path(__file__).resolve().parents[1] / "data"
SHEET = read_field_sheet(DATA / "field_sheet.csv")


def rows_of(name, **wanted):
    """Return the rows of a table of the hill whose cells are as wanted."""
    with open(DATA / name, encoding="utf-8", newline="") as file:
        return [row for row in csv.DictReader(file) if all(row[key] == value for key, value in wanted.items())]


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


def test_the_field_sheet_and_the_lift_table_tell_of_one_rope():
    (lift,) = rows_of("hill_lifts.csv", line="Penny Rope")
    for column in ("line_speed", "spacing", "ridden_length", "vertical_rise", "motor_power"):
        number, unit = lift[column].split()
        mean = SHEET.mean(column.replace("_", " ")).m_as(unit)
        assert mean == pytest.approx(float(number), rel=1e-3), column
    (pick_up,) = rows_of("hill_readings.csv", line="Penny Rope", reading="pick_up_acceleration")
    assert SHEET.mean("pick-up acceleration").m_as("m/s**2") == float(pick_up["value"].split()[0])


def test_the_readings_of_the_sheet_follow_from_one_another():
    speed, spacing, length = (SHEET.mean(name) for name in ("line speed", "spacing", "ridden length"))
    ride = ride_time_from_rest(length, speed, SHEET.mean("pick-up acceleration"))
    assert show(ride) == show(SHEET.mean("ride time")) == "45.3 s"
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
    assert "33 persons in 2.0 min: 990 pph (counted), plus or minus 34 %" in said
    assert "is below 1,800 pph (ideal) by more than its doubt" in said
