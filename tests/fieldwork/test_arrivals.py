"""A table of arrivals: what is read, in which order, and what is refused."""

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from messages import SOMETHING, refuses, table_of_messages

from liftcalc.fieldwork import FieldSheetError
from liftcalc.fieldwork.arrivals import arrivals_from_bytes, read_arrivals
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.units import PlainError

HEADING = "from,minutes,persons,note\n"


def arrivals(rows, heading=HEADING):
    """Return the arrivals in these rows."""
    return arrivals_from_bytes("morning.csv", (heading + rows).encode())


def test_rows_come_in_the_order_of_the_clock_and_may_overlap():
    found = arrivals("10:10,0,48,school bus\n9:00,20,480,\n9:15,60.5,90,\n")
    assert (found.name, found.opens) == ("morning.csv", 9 * 60)
    np.testing.assert_allclose(found.begins, [0, 15 * 60, 70 * 60])
    np.testing.assert_allclose(found.lasts, [1200, 3630, 0])
    np.testing.assert_allclose(found.persons, [480, 90, 48])
    assert [found.clock(time) for time in (0, 1199, 4229, 15 * 3600)] == ["9:00", "9:20", "10:10", "0:00"]


def test_the_note_may_be_left_out_and_columns_stand_in_any_order():
    found = arrivals("480,9:00,20\n", "persons,from,minutes\n")
    assert (found.opens, found.lasts.tolist(), found.persons.tolist()) == (540, [1200], [480])


def test_semicolons_and_decimal_commas(tmp_path):
    path = tmp_path / "ankunft.csv"
    path.write_bytes("from;minutes;persons;note\n9:00;2,5;30;Schüler\n".encode("cp1252"))
    assert read_arrivals(path).lasts.tolist() == [150]


def test_what_was_read_is_not_written_into():
    found = arrivals("9:00,20,480,\n")
    with pytest.raises(AttributeError):
        found.persons = None


CELLS = st.text(st.sampled_from("0123456789:.,-e+ nai\t'"), max_size=6)


@given(rows=st.lists(st.tuples(CELLS, CELLS, CELLS), min_size=1, max_size=4))
@example(rows=[("9:00", "9" * 400, "20")])
@example(rows=[("9:00", "20", "9" * 400)])
@example(rows=[("9:00", "nan", "inf")])
def test_whatever_the_cells_arrivals_or_a_plain_message_come_out(rows):
    raw = "from;minutes;persons\n" + "".join(";".join(row) + "\n" for row in rows)
    try:
        found = arrivals_from_bytes("morning.csv", raw.encode())
    except PlainError:
        return
    assert np.isfinite([found.begins, found.lasts, found.persons]).all()
    assert (np.diff(found.begins) >= 0).all()


ONE_FAULT = [  # row, message behind the name
    ("nine,20,480,", "row 2, column from: 'nine' is no time of the clock. Write hours and minutes, such as 10:05."),
    ("24:00,20,480,", "row 2, column from: '24:00' is no time of the clock. Write hours and minutes, such as 10:05."),
    ("9:00,-5,480,", "row 2, column minutes: must lie from 0 to 1440, but got -5. Write for how long they kept coming, "
     "and 0 where all come at once."),
    ("9:00,1441,480,", "row 2, column minutes: must lie from 0 to 1440, but got 1441. Write for how long they kept "
     "coming, and 0 where all come at once."),
    ("9:00,,480,", "row 2, column minutes: is empty. Write how many, such as 20."),
    ("9:00,20,many,", "row 2, column persons: 'many' is no number. Write a whole one, such as 17."),
    ("9:00,20,1.5,", "row 2, column persons: must be a whole number, zero or more, but got 1.5."),
    ("9:00,20,-2,", "row 2, column persons: must be a whole number, zero or more, but got -2."),
    ("9:00,20,20001,", "row 2, column persons: 20,001 in one row is more than anybody believes. Look at it again."),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "message"), ONE_FAULT, ids=[case[1][:50] for case in ONE_FAULT])
def test_a_row_that_cannot_be_read(rows, message):
    refuses(lambda: arrivals(rows + "\n"), f"morning.csv, {message}", FieldSheetError)


def test_all_faults_are_told_at_once():
    with pytest.raises(FieldSheetError) as caught:
        arrivals("nine,20,480,\n9:20,40,560,\n10:00,x,900,\n")
    assert [(fault.row, fault.column) for fault in caught.value.faults] == [(2, "from"), (4, "minutes")]


REFUSED = [
    (lambda: arrivals(""), "morning.csv: nobody comes. Write a row such as: 9:00,20,480,opening rush"),
    (lambda: arrivals("9:00,20,0,\n"), "morning.csv: nobody comes. Write a row such as: 9:00,20,480,opening rush"),
    (lambda: arrivals("", "from,persons\n"),
     "morning.csv, row 1: the column 'minutes' is missing; the heading row reads 'from, persons'. "
     "Write: from,minutes,persons,note"),
    (lambda: read_arrivals("no_such.csv"), f"no_such.csv: the file cannot be opened ({SOMETHING}). {SOMETHING}"),
]  # fmt: skip


@table_of_messages(REFUSED, kind=FieldFileError)
def test_message(call, message, kind):
    refuses(call, message, kind)
