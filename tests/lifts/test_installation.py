"""Installations of one line or several."""

from dataclasses import replace

import pytest
from example_lines import TOW
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.lifts.installation import Installation


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
