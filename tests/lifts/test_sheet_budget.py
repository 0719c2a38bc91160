"""The budget of a limit from its sheet: against the rule for products of powers, and against nothing to tell."""

import pytest

from liftcalc.lifts.demo_hill import demo_sheet
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.lifts.sheet_budget import BehindLimits
from liftcalc.lifts.sheet_limits import sheet_limits

HEADING = "quantity,value,unit,plus_minus,method,note\n"


def sheet_of(*rows):
    """Return the sheet of rows, each a text such as "spacing,6.8,m"."""
    return sheet_from_bytes("sheet.csv", (HEADING + "\n".join(rows) + "\n").encode())


CHAIR = ("kind,fixed chair", "persons per carrier,2,person", "line speed,2.2,m/s,0.05")


@pytest.mark.parametrize("source", ["relative doubts of a quotient add in squares: GUM, 5.1.6"])
@pytest.mark.parametrize("pitch", ["spacing,15.4,m,0.3", "interval,7,s,0.3"])
def test_shares_of_a_product_are_those_of_the_rule(source, pitch):
    sheet = sheet_of(*CHAIR, pitch)
    budget = BehindLimits(sheet).budget("spacing")
    name, value, _, half = pitch.split(",")
    squares = {"line_speed": (0.05 / 2.2) ** 2, name: (float(half) / float(value)) ** 2}
    if name == "interval":  # it was timed: the speed of the rope is then no part of people an hour
        squares["line_speed"] = 0
    whole = sum(squares.values())
    shares = {row.name: row.share for row in budget.rows}
    assert shares == pytest.approx({each: square / whole for each, square in squares.items()}, abs=1e-5)
    result = budget.result.expanded.m_as("pph") / budget.result.value.m_as("pph")
    assert result == pytest.approx(1.96 * (whole / 3) ** 0.5, rel=1e-3)


def test_what_a_limit_rests_on_is_named_as_it_was_read():
    assert BehindLimits(sheet_of(*CHAIR, "interval,7,s")).readings("spacing") == [
        "line_speed", "interval", "persons_per_carrier",
    ]  # fmt: skip
    rope = BehindLimits(demo_sheet())
    assert "rider_mass" in rope.readings("motor")
    assert {"slack_tension", "rider_mass"} <= set(rope.readings("traction"))
    assert not {"motor_power", "spacing"} & set(rope.readings("loading"))


def test_without_a_doubt_there_is_no_budget():
    assert BehindLimits(sheet_of("kind,rope tow", "loading time,3,s")).budget("loading") is None


def test_persons_that_come_out_as_no_whole_number_are_no_part_of_the_line():
    rows = ("kind,fixed chair", "line speed,2.2,m/s,0.05", "spacing,15.4,m,0.1", "hourly capacity,800,pph,20,ideal")
    limits = sheet_limits(sheet_of(*rows), draws=10)
    assert limits.governs is None
    assert "persons per carrier" in limits.missing["spacing"]
