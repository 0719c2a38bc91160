"""Readings of a line: names, kinds, and their table."""

import math
from dataclasses import replace

import pytest
from example_lines import TOW, TOW_READINGS
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.lifts.readings import READINGS, known_values, read_readings

ALL_READINGS = ", ".join(READINGS)
MESSAGES = [
    (
        lambda: known_values(TOW, {"wax": Q(1, "")}),
        f"known_values: 'wax' is no reading of a lift. Write one of {ALL_READINGS}.",
    ),
    (
        lambda: known_values(TOW, {"snow_friction": 0.07}),
        "known_values: snow_friction must be friction of skis on snow, but got the bare value 0.07. Write Q(..., '').",
        UnitError,
    ),
    (
        lambda: known_values(replace(TOW, pick_up_acceleration=Q(1, "m/s**2")), TOW_READINGS),
        "known_values: pick_up_acceleration is 1.50 m/s², but the line 'tow' has 1.00 m/s². Write it once.",
    ),
    (
        lambda: known_values(TOW, {"drive_position": "middle"}),
        "known_values: drive_position must be top or bottom, but got 'middle'. Ask the operator.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)


# the table of readings

READING_ROWS = "line,reading,value\nPenny,friction,0.07\nPenny,rider_mass,75 kg\n"
BROKEN_READINGS = [  # the last row, message
    ("Penny,wax,1", f"read_readings: readings.csv, row 4: 'wax' is no reading of a lift. Write one of {ALL_READINGS}."),
    (
        "Penny,friction,0.08",
        "read_readings: readings.csv, row 4: snow_friction of 'Penny' came before. Keep one of the two.",
    ),
    (
        "Penny,loading_time,3",
        "read_readings: readings.csv, row 4: the unit is missing. Write 's', 'min', 'h'.",
    ),
    (
        "Penny,loading_time,3 kg",
        "read_readings: readings.csv, row 4: 'kg' is a unit of a mass, not of a time. Write 's', 'min', 'h'.",
    ),
    (
        "Penny,loading_time,three s",
        "read_readings: readings.csv, row 4: 'three' is no number. Write digits only, such as 3.4.",
    ),
    (
        "Penny,wrap_angle,180",
        "read_readings: readings.csv, row 4: the unit is missing. Write '%', 'degree'.",
    ),
    (
        ",friction,0.08",
        "read_readings: readings.csv, row 4: no line. Write the name of the line that the reading is of.",
    ),
]


@table_of_messages(BROKEN_READINGS, "row")
def test_a_broken_table_of_readings(tmp_path, row, message, kind):
    (tmp_path / "readings.csv").write_text(f"{READING_ROWS}{row}\n", encoding="utf-8")
    refuses(lambda: read_readings(tmp_path / "readings.csv"), message, kind)


def test_a_table_of_readings_as_a_person_writes_it(tmp_path):
    rows = f"{READING_ROWS}Penny,efficiency,85 %\nPenny,wrap_angle,180 degrees\nOther,loading_time,0.05 min\n"
    (tmp_path / "readings.csv").write_text(rows, encoding="utf-8-sig")
    readings = read_readings(tmp_path / "readings.csv")
    assert list(readings) == ["Penny", "Other"]
    assert readings["Penny"]["snow_friction"].m_as("") == 0.07
    assert readings["Penny"]["rider_mass"] == Q(75, "kg")
    assert readings["Penny"]["efficiency"].m_as("") == pytest.approx(0.85)
    assert readings["Penny"]["wrap_angle"].m_as("radian") == pytest.approx(math.pi)
    assert readings["Other"]["loading_time"].m_as("s") == pytest.approx(3)
