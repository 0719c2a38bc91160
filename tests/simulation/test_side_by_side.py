"""Lifts side by side: laws of the table, sums by hand, and what is refused."""

import functools
import re

import numpy as np
import pytest
from messages import refuses, table_of_messages
from places import DATA

from liftcalc import Q
from liftcalc.levels import Capacity
from liftcalc.lifts.cost_of_lift import read_costs
from liftcalc.lifts.demo_hill import demo_hill, demo_kinds, demo_line
from liftcalc.lifts.kinds import KINDS, NOT_READ
from liftcalc.lifts.line import Line
from liftcalc.simulation.day_tables import loading_day, read_day
from liftcalc.simulation.loading_day import simulate_day
from liftcalc.simulation.many_days import generators, simulate_days, simulate_days_held
from liftcalc.simulation.side_by_side import (
    Choice,
    compare_lifts,
    comparison_notes,
    hill_choices,
    other_limits,
    simulated_rates,
    wait_in_crowd,
)

COSTS = read_costs(DATA / "costs.csv")
TABLES = read_day(DATA / "days/penny_rope_classes.csv", DATA / "days/penny_rope_day.csv")
COUNTED = {"Penny Rope": Capacity(Q(990, "pph"), "counted")}
HILL = hill_choices(demo_hill(), COSTS, {"Penny Rope": TABLES, "Twin Penny right": TABLES}, COUNTED)
CROWD = {"crowd": Q(70, "person"), "descent_time": Q(75, "s")}
PENNY, PLATTER, BELT, DOUBLE, LEFT, RIGHT = range(1, 7)


@functools.cache
def of_the_hill():
    """Return the table of the demo hill, simulated when the first test asks for it."""
    return compare_lifts(HILL, **CROWD)


def number(text):
    """Return the first number in a text."""
    return float(re.search(r"[0-9][0-9,]*(\.[0-9]+)?", text)[0].replace(",", ""))


def rows(table):
    """Return the cells of each row by its heading."""
    return {row[0]: row[1:] for row in table.rows}


def cell(heading, column):
    return rows(of_the_hill())[heading][column - 1]


def test_one_column_a_line_and_one_level_for_all():
    assert of_the_hill().columns == ("line", *demo_hill().lines)
    assert all("governed" in each for each in rows(of_the_hill())["people an hour, like for like"])
    governed = [number(each) for each in rows(of_the_hill())["people an hour, like for like"]]
    assert governed == [1200, 514, 600, 1029, 1200, 978]
    assert [number(each) for each in rows(of_the_hill())["against the first, both governed"]] == pytest.approx(
        np.array(governed) / 1200, abs=0.006
    )
    assert rows(of_the_hill())["state"] == ("running",) * 4 + ("proposal",) * 2


def test_what_was_read_once_stands_once_and_what_was_not_is_not_there():
    assert cell("counted", PENNY) == "990 pph (counted)"
    assert rows(of_the_hill())["counted"][1:] == (NOT_READ,) * 5
    assert [each == NOT_READ for each in rows(of_the_hill())["simulated"]] == [False, True, True, True, True, False]
    for heading in ("posts", "to buy, dollars", "a year, dollars", "a ride, dollars"):
        assert [each == NOT_READ for each in rows(of_the_hill())[heading]] == [False] * 4 + [True, False], heading


BY_HAND = [  # row, line, what a hand gets from the sheets of the hill, how near
    ("vertical transport", DOUBLE, 3600 * 2 * 2.2 / 15.4 * 142 / 0.3048, 1),
    ("vertical transport", PENNY, 1200 * 29.4 / 0.3048, 1),
    ("when it stops", PENNY, 1200 * (150 / 3.4 + 3.4 / 3) / 3600, 0.5),
    ("ride time", PLATTER, 400 / 2.8 + 2.8 / 3, 0.05),
    ("motor, rated", BELT, 7.5, 0),
    ("motor, needed", RIGHT, 11.0, 0),  # the motor governs, and gives all it has
    ("motor, needed", DOUBLE, 51.7, 0.1),
    ("energy a ride", RIGHT, 11 / 978, 0.0005),
    ("posts", DOUBLE, 3, 0),
    ("to buy, dollars", PLATTER, 260_000, 0),
    ("a year, dollars", PENNY, 18_242, 1),
    ("a ride, dollars", PLATTER, 2.05, 0.005),
    ("when it stops", DOUBLE, 3600 * 2 * 2.2 / 15.4 * 640 / 2.2 / 3600, 0.5),
]


@pytest.mark.parametrize(("heading", "column", "wanted", "near"), BY_HAND)
def test_by_hand(heading, column, wanted, near):
    assert number(cell(heading, column)) == pytest.approx(wanted, abs=near)


def test_two_ropes_of_one_lift_are_added_up_and_a_lift_alone_has_no_such_row():
    assert cell("all lines of the lift", LEFT) == cell("all lines of the lift", RIGHT)
    assert cell("all lines of the lift", LEFT) == "2,178 pph (governed, 2 lines together)"
    assert cell("all lines of the lift", PENNY) == ""
    assert "all lines of the lift" not in rows(compare_lifts(HILL[:3]))


@pytest.mark.parametrize("place", range(6))
def test_a_lift_alone_equals_its_column_beside_others(place):
    alone, beside = rows(compare_lifts([HILL[place]], **CROWD)), rows(of_the_hill())
    for heading, (said,) in alone.items():
        if heading != "against the first, both governed":
            assert said == beside[heading][place], heading
    assert alone["against the first, both governed"] == ("1.00 to 1",)


@pytest.mark.parametrize("line", list(demo_kinds().lines))
def test_every_kind_of_lift(line):
    hill = demo_kinds()
    (choice,) = [each for each in hill_choices(hill) if each.line.name == line]
    said = rows(compare_lifts([choice], **CROWD))
    kind = KINDS[hill.lines[line].kind]
    assert said["when it stops"][0].startswith("on the ground, " if kind.on_the_ground else "in the air, ")
    assert ("usual for carried riders" in said["evacuation plan"][0]) == (not kind.on_the_ground)
    assert "ask the authority" in said["evacuation plan"][0]


def test_a_line_of_which_next_to_nothing_was_read():
    bare = Line("Someone's Tow", NOT_READ, Q(3, "m/s"), Q(6, "m"), Q(100, "m"), Q(15, "m"))
    said = rows(compare_lifts([Choice(bare, state=NOT_READ)]))
    for heading in ("state", "simulated", "counted", "motor, rated", "motor, needed", "energy a ride", "posts"):
        assert said[heading] == (NOT_READ,), heading
    assert said["when it stops"][0].startswith("not known")
    assert said["evacuation plan"] == ("ask the authority",)
    assert said["a year, dollars"] == (NOT_READ,)
    priced = rows(compare_lifts([Choice(bare, costs=COSTS["Penny Rope"])]))
    assert (priced["to buy, dollars"], priced["a year, dollars"]) == (("35,000",), (NOT_READ,)), "no energy, no sum"


def test_what_the_authority_said_goes_before_what_is_usual():
    asked = Choice(*demo_line("Lantern Double"), evacuation="yes: the authority, in writing")
    assert rows(compare_lifts([asked]))["evacuation plan"] == ("yes: the authority, in writing",)


def test_a_wait_is_that_of_what_is_carried_and_grows_with_the_crowd():
    away = demo_line("Penny Rope")[0].ride_time.m_as("s") + 75
    assert number(cell("wait in the crowd", PENNY)) == pytest.approx(70 / 990 * 3600 - away - 3600 / 990, abs=1.5)
    assert "as counted" in cell("wait in the crowd", PENNY)
    assert "as simulated" in cell("wait in the crowd", RIGHT)
    assert "as governed" in cell("wait in the crowd", LEFT)
    waits = [
        number(
            rows(compare_lifts(HILL[:1], crowd=Q(people, "person"), descent_time=Q(75, "s")))["wait in the crowd"][0]
        )
        for people in (20, 40, 70, 100)
    ]
    assert waits == sorted(set(waits))
    assert "wait in the crowd" not in rows(compare_lifts(HILL[:1]))
    longer = Choice(*demo_line("Penny Rope"), descent_time=Q(150, "s"))
    waits = rows(compare_lifts([Choice(*demo_line("Twin Penny left")), longer], **CROWD))["wait in the crowd"]
    assert number(waits[1]) < number(waits[0]), "who skis for longer stands for less"


def test_a_lap_is_ride_descent_loading_and_wait_and_nobody_is_lost():
    ropes, away = [Capacity(Q(pph, "pph"), "simulated") for pph in (1000, 840)], [Q(120, "s"), Q(138, "s")]
    riders, wait = wait_in_crowd(ropes, crowd=Q(70, "person"), away=away)
    mean_away, loading = (1000 * 120 + 840 * 138) / 1840, 2 * 3600 / 1840
    assert riders / 3600 * (mean_away + loading + wait) == pytest.approx(np.arange(1, 71))
    assert riders[-1] == pytest.approx(1638, abs=0.5)  # thought out beforehand for this crowd
    assert np.all(np.diff(wait) > 0)


def test_a_day_is_held_to_what_it_has_not_in_it():
    """The loading point is simulated and not taken off twice; motor, traction and unload area are not in the day."""
    assert other_limits(*demo_line("Penny Rope")) == pytest.approx(1291, abs=0.5), "its motor, not its loading"
    assert other_limits(*demo_line("Duckling Belt")) == pytest.approx(600), "its unload area"
    assert other_limits(demo_line("Penny Rope")[0], {}) == np.inf


def test_a_day_is_held_to_the_motor():
    line, readings = demo_line("Twin Penny right")
    day = loading_day(line, TABLES)
    seen = [simulate_day(day, generator) for generator in generators(5, 8)]
    starts = sum(each.started.size for each in seen) / sum(each.availability * 7 for each in seen)
    free, held = simulate_days(day, 5, 8), simulated_rates(line, readings, TABLES, seed=5, days=8)
    assert starts > 978
    assert held == pytest.approx(free * 978 / starts, rel=0.001)
    assert simulate_days_held(day, 2000.0, 5, 8) == pytest.approx(free), "a limit that is not reached takes nothing"
    with pytest.raises(ValueError, match="read-only"):
        held[0] = 0


def test_notes_say_what_is_assumed_and_leave_safety_to_the_authority():
    full = str(comparison_notes(HILL, **CROWD))
    for words in ("upper bound", "lap after lap", "held to what motor", "Money is a label", "the authority says"):
        assert words in full, words
    brief = str(comparison_notes([Choice(*demo_line("Penny Rope"))]))
    assert "lap after lap" not in brief
    assert "Money" not in brief
    assert "the authority says" in brief


TOW = Choice(*demo_line("Penny Rope"))
MESSAGES = [
    (lambda: compare_lifts([]),
     "compare_lifts: every entry must be a Choice, but got nothing. Write Choice(line, readings)."),
    (lambda: compare_lifts([7]),
     "compare_lifts: every entry must be a Choice, but got 7. Write Choice(line, readings)."),
    (lambda: compare_lifts([TOW, TOW]),
     "compare_lifts: two lines are called 'Penny Rope'. Give each a name of its own."),
    (lambda: compare_lifts([TOW], crowd=Q(70, "person")),
     "compare_lifts: a crowd of riders needs a descent_time. Write for example Q(75, 's')."),
    (lambda: Choice(TOW.line, state="planned"),
     "Choice: the state of Penny Rope must be one of running, proposal, not read, but got 'planned'."),
    (lambda: Choice(TOW.line, carried=Capacity(Q(1800, "pph"), "ideal")),
     "Choice: what Penny Rope carries must be simulated or counted, for one line, but got 1,800 pph (ideal). Leave it "
     "out: governed and ideal follow from the readings."),
    (lambda: Choice(TOW.line, tables=TABLES, carried=Capacity(Q(1000, "pph"), "simulated")),
     "Choice: Penny Rope has a simulated figure and a day to simulate. Give one of the two."),
    (lambda: hill_choices(demo_hill(), {"Nickel Rope": {}}),
     f"hill_choices: there is no line 'Nickel Rope'. Write one of {', '.join(demo_hill().lines)}."),
    (lambda: compare_lifts([Choice(*demo_line("Lantern Double"), tables=TABLES)]),
     "loading_day: Lantern Double is a fixed chair, whose carriers come by a clock of their own. Give a line that is "
     "grabbed, or stepped on, at any time."),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
