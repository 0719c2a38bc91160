"""The two tables of a day of carriers: what is read, what makes a day of a line, and what is refused."""

from dataclasses import replace

import pytest
from messages import refuses, table_of_messages
from places import DATA

from liftcalc.fieldwork import FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.demo_hill import demo_kinds, demo_line
from liftcalc.simulation.arrival_times import days_of_arrivals
from liftcalc.simulation.carrier_day import CarrierDay, ChildRule
from liftcalc.simulation.carrier_run import simulate_carrier_days
from liftcalc.simulation.carrier_tables import (
    OF_CARRIERS,
    carrier_day,
    carrier_rest_from_bytes,
    day_of,
    days_with_arrivals,
    parties_from_bytes,
    read_carrier_day,
)
from liftcalc.simulation.day_tables import DayTables, read_day
from liftcalc.simulation.loading_day import LoadingDay
from liftcalc.simulation.shifts import Shift

DAYS = DATA / "days"
CHAIR = demo_line("Lantern Double")[0]
TABLES = read_carrier_day(DAYS / "lantern_double_parties.csv", DAYS / "lantern_double_day.csv")


def rest(rows):
    """Return what these rows say of a day of carriers."""
    return carrier_rest_from_bytes("day.csv", ("quantity,value,unit,plus_minus,method,note\n" + rows).encode())


def parties(rows):
    """Return the parties that these rows hold."""
    return parties_from_bytes("parties.csv", ("party,share\n" + rows).encode())


def test_the_invented_day_of_the_double():
    """Fixed doubles are filled by 65 to 90 % (range as the trade has it, from memory)."""
    day = carrier_day(CHAIR, TABLES)
    assert (day.seats, day.interval, day.governed) == (2, pytest.approx(7.0), pytest.approx(7200 / 7))
    assert (day.singles_line, day.misloads, day.strangers_apart, day.empties) == (False, 0.01, 0.3, False)
    assert dict(day.parties) == pytest.approx({1: 0.35, 2: 0.40, 3: 0.15, 4: 0.10})
    seen = simulate_carrier_days(day, 1, 20)
    assert 0.65 < seen.fill.mean() < 0.90
    assert 0.65 < seen.rate.mean() / day.governed < 0.90
    assert seen.rate.mean() == pytest.approx(816, abs=4 * 11 / 20**0.5)


def test_a_rule_for_children_comes_with_its_source():
    rows = "hours open,7,h,,,\nsingles line,yes,,,,\nchildren,20,%,,,\nchildren an adult,2,,,,\n"
    read = rest(rows + "rule for children,invented for this test,,,,\n")
    day = carrier_day(CHAIR, DayTables((), read, {1: 1.0}))
    assert day.children == ChildRule("invented for this test", 0.2, 2)
    assert day.singles_line is True


def test_what_is_said_of_the_crowd():
    rows = (
        "hours open,7,h,,,\nclosing,rides,,,,\nmost in line,80,persons,,,\nshut from,3,h,,,\nshut until,4,h,,,\n"
        "post empty from,0,s,,,\npost empty until,10,min,,,\npost empty slower,1.5,,,,\n"
        "other staff from,5,h,,,\nother staff slower,0.9,,,,\n"
    )
    tables = DayTables((), rest(rows), {1: 1.0})
    shifts = (Shift(10_800, 14_400, shut=True), Shift(0, 600, slower=1.5), Shift(18_000, slower=0.9))
    assert tables.crowd == {"shifts": shifts, "closing": "rides", "most_in_line": 80}
    assert carrier_day(CHAIR, tables) == CarrierDay(2, 7.0, CHAIR.ride_time.m_as("s"), {1: 1.0})
    assert TABLES.crowd == {"shifts": (), "closing": "rides", "most_in_line": None}


def test_the_kind_decides_and_only_hands_let_go():
    classes = read_day(DAYS / "penny_rope_classes.csv", DAYS / "penny_rope_day.csv")
    assert isinstance(day_of(demo_line("Penny Rope")[0], classes), LoadingDay)
    assert isinstance(day_of(CHAIR, TABLES), CarrierDay)
    hill, calm = demo_kinds(), replace(TABLES, rest={"hours": 7.0})
    lines = [hill.line(name)[0] for name in hill.sheets]
    days = {line.kind: carrier_day(line, calm) for line in lines if line.kind not in ("rope tow", "conveyor")}
    assert len(days) == 8
    assert [kind for kind, day in days.items() if day.empties] == ["handle tow"]


def test_people_come_to_lifts_of_any_kind_alike():
    """A batch that no line can take at once, in the hour before lunch, and an hour in which the lift is shut."""
    classes = read_day(DAYS / "penny_rope_classes.csv", DAYS / "penny_rope_day.csv")
    crowd = {"hours": 2.0, "closing": "rides", "most_in_line": 200.0, "shut_from": 1800.0, "shut_until": 3600.0}
    arrivals = days_of_arrivals([0, 600], [3600, 0], [400, 250], seed=1, days=3)
    for line, tables in ((CHAIR, TABLES), (demo_line("Penny Rope")[0], classes)):
        seen = days_with_arrivals(line, replace(tables, rest=tables.rest | crowd), arrivals, 2)
        assert seen.arrived.tolist() == [650] * 3
        back = getattr(seen, "came_back", 0)
        assert (seen.started + seen.gave_up + seen.turned_away - back).tolist() == [650] * 3
        assert seen.turned_away.tolist() == [0] * 3
        assert seen.gave_up.min() > 40
        assert seen.longest_line.max() < 240
        assert 200 < seen.mean_wait.mean() < 3600


HOURS = "hours open,7,h,,,\n"
REFUSED = [
    (lambda: parties("2,x\n3,50 %\n"),
     "parties.csv, row 2, column share: 'x' is no number. Write digits only, such as 3.4."),
    (lambda: parties("2,50 %\n2,50 %\n"),
     "parties.csv, row 3, column party: a party of 2 came before. Keep one of the two."),
    (lambda: parties("0,50 %\n"),
     "parties.csv, row 2, column party: a party must be 1 to 100 persons, but got '0'. Write 2."),
    (lambda: parties("1,50 %\n2,40 %\n"),
     "parties.csv, row 3, column share: the shares of all parties add up to 90 %, not to 100 %. Mend one of them."),
    (lambda: rest(HOURS + "falls that stop,3,%,,,\n"),
     f"day.csv, row 3, column quantity: 'falls that stop' is nothing of a day. Write one of "
     f"{', '.join(word.words for word in OF_CARRIERS.values())}."),
    (lambda: rest(HOURS + "closing,never,,,,\n"),
     "day.csv, row 3, column value: closing must be one of turned away, rides, but got 'never'."),
    (lambda: parties(""), "parties.csv: no size of party. Write a row such as: 2,40 %", FieldFileError),
    (lambda: rest(HOURS + "children,20,%,,,\nchildren an adult,1,,,,\n"),
     "day.csv: rule for children not read. Add a row of each; nothing is put in its place.", FieldFileError),
    (lambda: rest(HOURS + "shut from,0,s,,,\n"),
     "day.csv: shut until not read. Add a row of each; nothing is put in its place.", FieldFileError),
    (lambda: rest(HOURS + "misloads,1,%,,,\nmisloads that stop,3,%,,,\n"),
     "day.csv: stop time not read. Add a row of each; nothing is put in its place.", FieldFileError),
]  # fmt: skip
OF_LINES = [
    (lambda: carrier_day(demo_line("Penny Rope")[0], TABLES),
     "carrier_day: Penny Rope is a rope tow, without carriers. Give a line with carriers."),
    (lambda: carrier_day(CHAIR, replace(TABLES, parties=None)),
     "carrier_day: the day of Lantern Double says nothing of parties. Read it by read_carrier_day(parties, rest)."),
]  # fmt: skip


@table_of_messages(REFUSED, kind=FieldSheetError)
def test_message(call, message, kind):
    refuses(call, message, kind)


@table_of_messages(OF_LINES)
def test_message_of_a_line(call, message, kind):
    refuses(call, message, kind)
