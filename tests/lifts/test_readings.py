"""Readings of a line: names and kinds."""

from dataclasses import replace

from example_lines import TOW, TOW_READINGS
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.lifts.readings import READINGS, known_values

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
