"""The two tables of a day: what is read, what makes a day of a line, and what is refused."""

import pytest
from messages import refuses, table_of_messages
from places import DATA

from liftcalc.fieldwork import FieldSheetError
from liftcalc.fieldwork.minute_counts import read_counts
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.simulation.day_tables import (
    OF_A_DAY,
    classes_from_bytes,
    counts_on,
    loading_day,
    read_day,
    rest_from_bytes,
)
from liftcalc.simulation.loading_day import RiderClass
from liftcalc.simulation.many_days import simulate_days

DAYS = DATA / "days"
CLASSES = "class,share,mean_readiness,cv,misses,falls\n"
REST = "quantity,value,unit,plus_minus,method,note\n"


def classes(rows):
    """Return the classes that these rows hold."""
    return classes_from_bytes("classes.csv", (CLASSES + rows).encode())


def rest(rows):
    """Return what else these rows say of a day."""
    return rest_from_bytes("day.csv", (REST + rows).encode())


def test_the_invented_day_of_the_demo_tow():
    tables = read_day(DAYS / "penny_rope_classes.csv", DAYS / "penny_rope_day.csv")
    assert tables.classes[1] == RiderClass("learner", 0.30, 3.6, 0.40, 0.06, 0.012)
    day = loading_day(demo_line("Penny Rope")[0], tables)
    assert day.governed == pytest.approx(1200), "the mean of all readiness is 3.0 s"
    assert (day.hours, day.empties) == (7.0, True)
    assert day.floor == pytest.approx(2.0, abs=0.001)
    assert simulate_days(day, 3, 20).mean() == pytest.approx(1001, abs=4 * 23 / 20**0.5)


def test_a_stop_empties_a_rope_and_leaves_riders_on_a_belt():
    tables = read_day(DAYS / "penny_rope_classes.csv", DAYS / "penny_rope_day.csv")
    assert loading_day(demo_line("Duckling Belt")[0], tables).empties is False
    refuses(
        lambda: loading_day(demo_line("Lantern Double")[0], tables),
        "loading_day: Lantern Double is a fixed chair, whose carriers come by a clock of their own. Give a line that "
        "is grabbed, or stepped on, at any time.",
    )


def test_shares_that_are_rounded_are_brought_to_one():
    thirds = classes("a,33 %,3 s,0,0,0\nb,33 %,3 s,0,0,0\nc,34 %,3,0,0,0\n")
    assert sum(each.share for each in thirds) == pytest.approx(1)
    rounded = classes("a,0.333,3,0,0,0\nb,0.333,3,0,0,0\nc,0.333,3,0,0,0\n")
    assert rounded[0].share == pytest.approx(1 / 3)


FAULTS = [
    (lambda: classes("a,60 %,3 s,0.3,1 %,0\nb,30 %,3 s,0.3,1 %,0\n"),
     "classes.csv, row 3, column share: the shares of all classes add up to 90 %, not to 100 %. Mend one of them."),
    (lambda: classes("a,100 %,3 m,0.3,1 %,0\n"),
     "classes.csv, row 2, column mean_readiness: 'm' is a unit of a length, not of a time. Write 's', 'min', 'h'."),
    (lambda: classes("a,100 %,3 s,0.3,,0\n"),
     "classes.csv, row 2, column misses: misses of 'a' is missing. Write share of attempts that fail."),
    (lambda: classes(",100 %,3 s,0.3,0,0\n"),
     "classes.csv, row 2, column class: the class has no name. Write one, such as learner."),
    (lambda: classes("a,100 %,3 s,0.3,95 %,0\n"),
     "classes.csv, row 2, column misses: misses of 95% is not believed: 0% to 90% is the range. Look at the digits and "
     "the unit."),
    (lambda: rest("hours open,7,h,,,\nwind,3,,,,\n"),
     f"day.csv, row 3, column quantity: 'wind' is nothing of a day. Write one of "
     f"{', '.join(word.words for word in OF_A_DAY.values())}."),
    (lambda: rest("hours open,7,h,,,\nHours_open,6,h,,,\n"),
     "day.csv, row 3, column quantity: hours open came before, in row 2. Keep one of the two."),
    (lambda: classes(""), "classes.csv: no class of riders. Write a row such as: learner,30 %,3.6 s,0.4,6 %,1 %",
     FieldFileError),
    (lambda: rest("stops an hour,2,,,,\n"),
     "day.csv: hours open not read. Add a row of each; nothing is put in its place.", FieldFileError),
    (lambda: rest("hours open,7,h,,,\nfalls that stop,50,%,,,\n"),
     "day.csv: stop time not read. Add a row of each; nothing is put in its place.", FieldFileError),
    (lambda: rest("hours open,7,h,,,\nslow-downs an hour,3,,,,\n"),
     "day.csv: slow-down time and slow-down speed not read. Add a row of each; nothing is put in its place.",
     FieldFileError),
]  # fmt: skip


@table_of_messages(FAULTS, kind=FieldSheetError)
def test_message(call, message, kind):
    refuses(call, message, kind)


def test_all_faults_are_told_at_once():
    with pytest.raises(FieldSheetError) as caught:
        classes("a,x,3 s,0.3,0,0\nb,30 %,,0.3,0,0\n")
    assert [(fault.row, fault.column) for fault in caught.value.faults] == [(2, "share"), (3, "mean_readiness")]


def test_what_is_not_there_is_none_of_it():
    assert rest("hours open,7,h,,,\nstops an hour,0,,,,\n") == {"hours": 7.0, "stops_an_hour": 0.0}


def test_a_count_is_clean_after_the_refill_only_where_a_stop_empties_the_line():
    counts = read_counts(DAYS / "penny_rope_count.csv")
    (rope, _), (belt, _) = demo_line("Penny Rope"), demo_line("Duckling Belt")
    assert counts_on(belt, counts).clean == counts.clean
    assert counts_on(rope, counts).clean == counts.after_stops(rope.ride_time).clean != counts.clean
