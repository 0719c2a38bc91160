"""A count minute by minute: what is read, what is told of it, and what is refused."""

import numpy as np
import pytest
from messages import SOMETHING, refuses, table_of_messages

from liftcalc import Capacity, Q
from liftcalc.fieldwork import FieldSheetError
from liftcalc.fieldwork.minute_counts import counts_from_bytes, minutes_to_count, read_counts
from liftcalc.fieldwork.safe_files import FieldFileError

HEADING = "from,minutes,persons,stop_seconds,people_waited,note\n"
STOPPED = "10:00,1,17,0,yes,\n10:01,1,16,0,yes,\n10:02,1,9,22,yes,a fallen rider\n"


def counts(rows, encoding="utf-8"):
    """Return the count that holds these rows."""
    return counts_from_bytes("count.csv", (HEADING + rows).encode(encoding))


def test_a_count_by_the_clock_and_of_its_clean_minutes():
    found = counts(STOPPED)
    assert str(found.rate()) == "840 pph (counted)"  # 42 in 3 minutes
    assert str(found.rate(clean=True)) == "990 pph (counted)"  # 33 in 2
    assert found.best_two_minutes == 33
    assert found.waited == "yes"
    assert found.spread_of_gaps is None, "two clean minutes tell no spread"


def test_the_order_of_the_rows_and_missing_minutes_make_no_difference():
    mixed = "10:07,2,30,,no,\n10:02,1,9,22,yes,\n10:00,1,17,0,yes,\n"
    found = counts(mixed)
    assert [row.begin for row in found.rows] == [600, 602, 607]
    assert found.rate().value.m_as("pph") == pytest.approx(60 * 56 / 4)
    assert found.best_two_minutes is None, "no two single minutes follow on one another"
    assert found.waited == "some"
    assert counts("10:00,1,17,,,\n").waited is None


def test_semicolons_decimal_commas_and_windows_text(tmp_path):
    path = tmp_path / "zaehlung.csv"
    path.write_bytes(
        (HEADING + "10:00,1.5,20,0,yes,Gästeschlange\n").replace(",", ";").replace("1.5", "1,5").encode("cp1252")
    )
    found = read_counts(path)
    assert found.rows[0].minutes == 1.5
    assert found.rate().value.m_as("pph") == pytest.approx(800)


def test_the_spread_of_gaps_is_the_root_of_variance_over_mean():
    persons = [18, 21, 19, 20, 22, 17, 20, 19, 21, 20, 18, 22]
    rows = "".join(f"10:{minute:02},1,{number},0,yes,\n" for minute, number in enumerate(persons))
    spread = counts(rows).spread_of_gaps.m_as("")
    assert spread == pytest.approx(np.sqrt(np.var(persons, ddof=1) / np.mean(persons)))
    verdict = counts(rows).against(Capacity(Q(1200, "pph"), "governed"))
    assert verdict.verdict == "within"
    steady = "".join(f"10:{minute:02},1,20,0,yes,\n" for minute in range(12))
    assert counts(steady).spread_of_gaps is None, "a spread of nothing is none that a doubt could be made of"


def test_how_long_to_count():
    """Five per cent takes about 1,540 riders without any order, and a quarter of that where gaps spread by half."""
    poisson = minutes_to_count(Q(1200, "pph"), Q(1, ""))
    assert poisson.m_as("minute") * 1200 / 60 == pytest.approx(1537, abs=1)
    assert (minutes_to_count(Q(1200, "pph"), Q(0.5, "")) / poisson).m_as("") == pytest.approx(0.25)
    refuses(
        lambda: minutes_to_count(Q(1200, "pph"), Q(1, ""), 5),
        "minutes_to_count: good_to must lie between 0 and 1, but got 5. Write 0.05 for 5 %.",
    )


ONE_FAULT = [  # row, message behind the name
    ("ten,1,17,0,yes,", "row 2, column from: 'ten' is no time of the clock. Write hours and minutes, such as 10:05."),
    ("25:00,1,17,0,yes,",
     "row 2, column from: '25:00' is no time of the clock. Write hours and minutes, such as 10:05."),
    ("10:00,0,17,0,yes,", "row 2, column minutes: must be greater than 0, but got 0. Write how long was counted."),
    ("10:00,x,17,0,yes,", "row 2, column minutes: 'x' is no number. Write digits only, such as 3.4."),
    ("10:00,1,17.5,0,yes,", "row 2, column persons: must be a whole number, zero or more, but got 17.5."),
    ("10:00,1,-3,0,yes,", "row 2, column persons: must be a whole number, zero or more, but got -3."),
    ("10:00,1,17,61,yes,", "row 2, column stop_seconds: must lie from 0 to 60, but got 61. Write the rest into "
     "the next row."),
    ("10:00,1,17,0,maybe,", "row 2, column people_waited: must be yes, no or some, but got 'maybe'."),
    ("10:00,2,30,0,yes,\n10:01,1,17,0,yes,",
     "row 3, column from: these minutes overlap with those of row 2. Count each once."),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "message"), ONE_FAULT, ids=[case[1][:50] for case in ONE_FAULT])
def test_a_row_that_cannot_be_read(rows, message):
    refuses(lambda: counts(rows + "\n"), f"count.csv, {message}", FieldSheetError)


def test_all_faults_are_told_at_once():
    with pytest.raises(FieldSheetError) as caught:
        counts("ten,1,17,0,yes,\n10:01,1,x,0,yes,\n10:02,1,17,0,perhaps,\n")
    assert [fault.row for fault in caught.value.faults] == [2, 3, 4]


REFUSED = [
    (lambda: counts(""), "count.csv: nothing was counted. Write a row such as: 10:00,1,17,0,yes,", FieldFileError),
    (lambda: counts_from_bytes("sheet.csv", b"quantity,value\n"),
     "sheet.csv, row 1: the column 'from' is missing; the heading row reads 'quantity, value'. "
     "Write: from,minutes,persons,stop_seconds,people_waited,note", FieldFileError),
    (lambda: counts("10:00,1,9,22,yes,\n").rate(clean=True),
     "count.csv: no row without a stop. Count on, or take the rate by the clock."),
    (lambda: read_counts("no_such.csv"), f"no_such.csv: the file cannot be opened ({SOMETHING}). {SOMETHING}",
     FieldFileError),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
