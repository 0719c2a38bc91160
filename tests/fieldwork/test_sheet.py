"""The sheet of a lift: which texts are read, what it says of its readings, and how far they can be trusted."""

import math
import re

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, show
from liftcalc.fieldwork import COLUMNS, FieldSheetError, summary
from liftcalc.fieldwork.csv_rows import read_rows
from liftcalc.fieldwork.faults import raise_faults
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.fieldwork.sheet import FieldSheet, example_row, rows_of_sheet, sheet_of_rows
from liftcalc.units import PlainError
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY

HEADING = "quantity,value,unit,plus_minus,method,note\n"
SEMICOLONS = HEADING.replace(",", ";")


def sheet_in(text, encoding="utf-8", name="sheet.csv"):
    """Return the sheet in a text."""
    sheet, faults = sheet_of_rows(rows_of_sheet(name, text.encode(encoding)))
    raise_faults(sheet, faults)
    return sheet


def sheet_of(*rows):
    """Return the sheet of some rows below the heading."""
    return sheet_in(HEADING + "\n".join(rows) + "\n")


ROW = "spacing,6.8,m,0.5,tape,\n"
READ = [  # what, text, encoding
    ("byte-order mark", "\ufeff" + HEADING + ROW, "utf-8"),
    ("blank lines", "\n\n" + HEADING + "\n,,,,,\n" + ROW + "\n", "utf-8"),
    ("semicolons with decimal commas", SEMICOLONS + "spacing;6,8;m;0,5;tape;\n", "utf-8"),
    ("Windows line ends", (HEADING + ROW).replace("\n", "\r\n"), "utf-8"),
    ("line ends of an old machine", (HEADING + ROW).replace("\n", "\r"), "utf-8"),
    ("no end of the last line", (HEADING + ROW).strip(), "utf-8"),
    ("columns in another order", "note,unit,quantity,value,method,plus_minus\n,m,spacing,6.8,tape,0.5\n", "utf-8"),
    ("other letters in the heading", "Quantity,VALUE, Unit ,Plus-minus,Method,Note\nSpacing,6.8,M,.5,tape,\n", "utf-8"),
    ("an older spreadsheet's letters in a note", HEADING + "spacing,6.8,m,0.5,tape,\u00e0 c\u00f4t\u00e9\n", "cp1252"),
    ("a comma in a quoted note", HEADING + 'spacing,6.8,m,0.5,tape,"here, and there"\n', "utf-8"),
    ("a line end in a quoted note", HEADING + 'spacing,6.8,m,0.5,tape,"here\nand there"\n', "utf-8"),
    ("short rows", HEADING + "spacing,6.8,m,0.5,tape\n", "utf-8"),
    ("rows not filled in", HEADING + "line speed,,m/s,,,\n" + ROW, "utf-8"),
    ("rows not read", HEADING + "line speed,not read,m/s,,,\ndrive position,Not read,,,,\n" + ROW, "utf-8"),
    ("an extra column", HEADING.strip() + ",who\nspacing,6.8,m,0.5,tape,,me\n", "utf-8"),
    ("blanks about the cells", HEADING + " spacing , 6.8 , m , 0.5 , tape ,\n", "utf-8"),
    ("the unit behind the value", HEADING + "spacing,6.8 m,,0.5,tape,\n", "utf-8"),
]


@pytest.mark.parametrize(("what", "text", "encoding"), READ, ids=[case[0] for case in READ])
def test_is_read(what, text, encoding):
    sheet = sheet_in(text, encoding)
    (reading,) = sheet.readings
    assert (reading.name, reading.value, reading.plus_minus) == ("spacing", Q(6.8, "m"), Q(0.5, "m"))
    assert reading.method == "tape"
    assert sheet.facts == {}


@pytest.mark.parametrize(
    ("encoding", "said", "told"),
    [
        ("utf-8", "UTF-8", ""),
        ("utf-8-sig", "UTF-8", ""),
        ("utf-16", "UTF-16", "Read as UTF-16."),
        ("cp1252", "Windows-1252", "Read as Windows-1252."),
    ],
)
def test_encodings_that_are_read_and_said(tmp_path, encoding, said, told):
    sheet = sheet_in(HEADING + "spacing,6.8,m,,Seil vermessen für Björn,\n", encoding)
    assert sheet.readings[0].method == "Seil vermessen für Björn"
    assert (sheet.encoding, sheet.how_read) == (said, told)
    path = tmp_path / "sheet.csv"
    path.write_bytes(f"{HEADING}ü".encode(encoding))
    assert read_rows(path, (), "a sheet").encoding == said


def test_semicolons_are_said():
    sheet = sheet_in(SEMICOLONS + "spacing;6,8;m;;;\n")
    assert sheet.how_read == "Read as UTF-8 with semicolons and decimal commas."
    assert summary(sheet).caption.endswith("(sheet.csv). Read as UTF-8 with semicolons and decimal commas.")


@pytest.mark.parametrize("called", ["pick-up acceleration", "Pick up acceleration", "pick_up_acceleration"])
def test_a_quantity_is_known_with_and_without_its_hyphen(called):
    (reading,) = sheet_of(f"{called},1.5,m/s2,0.5,assumed,").readings
    assert (reading.name, reading.value) == ("pick_up_acceleration", Q(1.5, "m/s**2"))


@pytest.mark.parametrize("name", [name for name in ON_A_SHEET if VOCABULARY[name].former])
def test_words_that_a_quantity_had_before_are_read(name):
    word = VOCABULARY[name]
    unit = {"m/s**2": "m/s2", "": ""}.get(word.unit, word.unit)
    value = f"{word.taken.least:.3f}"
    for called in (*word.former, word.words, name):
        assert [reading.name for reading in sheet_of(f"{called},{value},{unit},,,").readings] == [name]


def test_rows_are_numbered_as_a_spreadsheet_shows_them():
    sheet = sheet_in(
        "\n" + HEADING + "\nkind,rope tow,,,,\n,,,,,\nspacing,6.8,m,,,\nline speed,,m/s,,,\nspacing,7,m,,,\n"
    )
    assert sheet.rows == {"kind": 4}
    assert [reading.row for reading in sheet.readings] == [6, 8]


def test_faults_are_told_in_the_order_of_the_rows_and_a_count_goes_last():
    text = (
        HEADING
        + "persons counted,33,person,,,\nspacing,six,m,,,\npersons counted,3,person,,,\ncounting time,1,min,,,\n"
    )
    sheet, faults = sheet_of_rows(rows_of_sheet("sheet.csv", text.encode()))
    assert [(fault.row, fault.column) for fault in faults] == [(3, "value")]  # a count that was misread is no count
    assert len(sheet.readings) == 3
    text = text.replace("six", "6")
    _, faults = sheet_of_rows(rows_of_sheet("sheet.csv", text.encode()))
    assert [(fault.row, fault.column) for fault in faults] == [(4, "quantity")]
    with pytest.raises(FieldSheetError, match=r"^sheet\.csv: 2 cells cannot be read\.\nRow 2, .*\nRow 3, "):
        sheet_of("spacing,six,m,,,", "spacing,seven,m,,,")


# what a sheet says


def test_names_of_line_and_lift_follow_from_what_is_written():
    assert (sheet_of(ROW.strip()).line, sheet_of(ROW.strip()).lift) == ("sheet", "sheet")
    assert sheet_in(HEADING + ROW, name="old.tow.csv").line == "old.tow"
    lift, line = "lift,Twin Penny,,,,", "line,left,,,,"
    assert (sheet_of(lift).line, sheet_of(lift).lift) == ("Twin Penny", "Twin Penny")
    assert (sheet_of(line).line, sheet_of(line).lift) == ("left", "left")
    assert (sheet_of(lift, line).line, sheet_of(lift, line).lift) == ("left", "Twin Penny")


def test_what_was_not_read_has_no_value_but_the_level():
    sheet = sheet_of("kind,not read,,,,", "state,,,,,", "drive position,not read,,,,", "loading places,not read,,,,")
    assert (sheet.facts, sheet.readings, sheet.kind, sheet.level) == ({}, (), None, "ideal")
    assert sheet_of("level of spacing,packing,,,,").level == "packing"
    assert sheet.assumed == ()
    assert sheet.counted is None


def test_the_readings_of_one_quantity_keep_their_units_and_the_mean_mixes_them_rightly():
    sheet = sheet_of("spacing,6,m,,,", "line speed,3,m/s,,,", "spacing,10,ft,1,photo,")
    assert [(reading.value, reading.plus_minus) for reading in sheet.of("spacing")] == [
        (Q(6, "m"), None),
        (Q(10, "ft"), Q(1, "ft")),
    ]
    assert sheet.mean("spacing").m_as("m") == pytest.approx((6 + 3.048) / 2, rel=1e-12)
    assert sheet.mean("spacing").units == Q(1, "m").units
    assert sheet.has("spacing", "line_speed")
    assert not sheet.has("spacing", "interval")
    assert list(sheet.means()) == ["spacing", "line_speed"]
    assert list(sheet.means({"line_speed", "interval"})) == ["line_speed"]
    assert sheet.method("spacing") == "photo"
    assert sheet.method("line speed") == ""
    assert sheet_of("efficiency,85,%,,,", "efficiency,0.8,,,,").mean("efficiency") == Q(0.825, "")
    assert sheet_of("ride time,1:13,,,,", "ride time,75,s,,,").mean("ride time") == Q(74, "s")


FACTORS = {"m": 1.0, "ft": 0.3048}
DOUBTS = [  # rows of a spacing: value, unit, half-width or None; then doubt in metres by hand, and shape
    ([(6.8, "m", 0.5)], 0.5 / math.sqrt(3), "rectangular"),
    ([(24, "ft", 2)], 2 * 0.3048 / math.sqrt(3), "rectangular"),
    ([(6.6, "m", None), (7.0, "m", None)], 0.2, "normal"),  # scatter 0.2828, over the root of 2
    ([(6, "m", None), (7, "m", None), (8, "m", None)], 1 / math.sqrt(3), "normal"),
    ([(6.6, "m", 0.5), (7.0, "m", 0.1)], 0.2, "normal"),  # 0.3 / 1.732 is less
    ([(6.7, "m", 0.5), (6.9, "m", 0.3)], 0.4 / math.sqrt(3), "rectangular"),  # not less for being two
    ([(6.7, "m", 0.5), (6.9, "m", None)], 0.5 / math.sqrt(3), "rectangular"),  # the mean of those that are written
    ([(6.8, "m", 0.5), (22.5, "ft", 2), (6.74, "m", 0.5)], (0.5 + 2 * 0.3048 + 0.5) / 3 / math.sqrt(3), "rectangular"),
]


@pytest.mark.parametrize(("readings", "doubt", "shape"), DOUBTS)
def test_the_doubt_is_the_larger_of_scatter_and_half_width(readings, doubt, shape):
    rows = [f"spacing,{value},{unit},{'' if width is None else width},tape," for value, unit, width in readings]
    estimate = sheet_of(*rows).estimate("spacing")
    mean = np.mean([value * FACTORS[unit] for value, unit, _ in readings])
    assert estimate.value.m_as("m") == pytest.approx(mean, rel=1e-12)
    assert estimate.standard_uncertainty.m_as("m") == pytest.approx(doubt, rel=1e-9)
    assert (estimate.shape, estimate.method) == (shape, "tape")


@pytest.mark.parametrize(
    "rows", [["spacing,6.8,m,,,"], ["spacing,6.8,m,0,,"], ["spacing,6.8,m,,,", "spacing,6.8,m,,,"]]
)
def test_where_nothing_says_how_far_it_may_be_off_there_is_no_doubt(rows):
    assert sheet_of(*rows).estimate("spacing") is None


def test_counts_are_taken_together():
    rows = ["persons counted,33,person,,,", "counting time,2,min,,,"]
    assert sheet_of(*rows).counted == (Q(33, "person"), Q(120, "s"))
    more = [*rows, "persons counted,40,person,,,", "counting time,90,s,,,"]
    assert sheet_of(*more).counted == (Q(73, "person"), Q(210, "s"))
    assert sheet_of(rows[0]).counted is None


def test_what_is_assumed_is_told_once_by_name():
    rows = ["rider mass,75,kg,,assumed,", "rider mass,80,kg,,Assumed at the desk,", "efficiency,85,%,,papers,"]
    assert sheet_of(*rows).assumed == ("rider_mass",)


MESSAGES = [
    (
        lambda: sheet_of().mean("line speed"),
        "sheet.csv: line speed not read. Add a row such as: line speed,...,m/s,,,",
        FieldFileError,
    ),
    (
        lambda: sheet_of().mean("motor power"),
        "sheet.csv: motor power not read. Add a row such as: motor power,...,kW,,asked of the operator,",
        FieldFileError,
    ),
    (lambda: sheet_of().estimate("rider mass"),
     "sheet.csv: rider mass not read. Add a row such as: rider mass,...,kg,,assumed,", FieldFileError),
    (lambda: sheet_of().of("lines speed"),
     "FieldSheet: 'lines speed' is no quantity of a sheet. Is 'line speed' meant?"),
    (lambda: sheet_of().of("kind"), "FieldSheet: 'kind' is a fact and no reading. Write sheet.facts.get('kind')."),
    (lambda: sheet_of().has("grade"), "FieldSheet: 'grade' is no quantity of a sheet."),
]  # fmt: skip


@table_of_messages(MESSAGES, kind=PlainError)
def test_message(call, message, kind):
    refuses(call, message, kind)


@pytest.mark.parametrize("name", ON_A_SHEET[len(FACTS) :])
def test_a_row_that_a_message_tells_to_write_is_read(name):
    row, most = example_row(name), VOCABULARY[name].taken.most
    written = most * {"%": 100, "min": 1 / 60}.get(row.split(",")[2], 1)
    if name == "hourly_capacity":
        row = row.removesuffix(",,,") + ",,ideal,"
    (reading,) = sheet_of(row.replace("...", f"{written:.3f}")).readings
    assert (reading.name, reading.value.m_as(VOCABULARY[name].unit)) == (name, pytest.approx(most))


def test_the_summary_of_a_sheet():
    table = summary(
        sheet_of(
            "kind,rope tow,,,,", "spacing,6.8,m,,,", "spacing,22.5,ft,,,", "spacing,6.74,m,,,", "line speed,7.6,mph,,,",
            "efficiency,85,%,,,", "snow friction,0.07,,,,", "loading places,1,,,,",
        )
    )  # fmt: skip
    assert table.caption == "Readings of sheet, a rope tow (sheet.csv)"
    assert table.columns == ("quantity", "readings", "mean", "the same", "from and to")
    assert list(table.rows) == [
        ("line speed", "1", "3.40 m/s", "7.6 mph", "one reading"),
        ("spacing", "3", "6.8 m", "22.3 ft", "6.7 m to 6.9 m"),
        ("loading places", "1", "1", "", "one reading"),
        ("snow friction", "1", "0.07", "", "one reading"),
        ("efficiency", "1", "85%", "", "one reading"),
    ]
    mean = (6.8 + 22.5 * 0.3048 + 6.74) / 3  # own arithmetic
    assert show(Q(mean, "m")) == table.rows[1][2]


def test_the_columns_are_those_of_the_form():
    assert ",".join(COLUMNS) == HEADING.strip()
    assert FieldSheet("x.csv", {}, ()).line == "x"


@settings(max_examples=40)
@given(text=st.text(max_size=200))
def test_any_text_is_read_or_refused_with_a_row(text):
    raw = (HEADING + text).encode("utf-8", "surrogatepass")
    try:
        sheet, faults = sheet_of_rows(rows_of_sheet("sheet.csv", raw))
        message = "".join(f"sheet.csv, {fault}" for fault in faults) or f"sheet.csv, row {len(sheet.readings)}"
    except FieldFileError as error:
        message = str(error)
    assert re.match(r"sheet\.csv(, row \d+|: this is no text)", message)


ALMOST = st.lists(
    st.tuples(
        st.sampled_from([*ON_A_SHEET[::5], "spacing", "ride_time", "", "spacng"]),
        st.sampled_from(["6.8", "6,8", "1:13", "24 ft", "about 7", "not read", "", "top", "-1",
                         "2026-02-14", "5 \u00b1 1"]),
        st.sampled_from(["m", "s", "", "%", "ft", "degree"]),
        st.sampled_from(["", "0.5", "5 %", "\u00b11", "x"]),
    ),
    max_size=6,
)  # fmt: skip


@settings(max_examples=60)
@given(rows=ALMOST)
def test_every_row_is_a_fact_a_reading_a_blank_or_a_fault(rows):
    lines = [f'{name},"{value}",{unit},{width},,' for name, value, unit, width in rows]
    sheet, faults = sheet_of_rows(rows_of_sheet("sheet.csv", (HEADING + "\n".join(lines)).encode()))
    read = {*sheet.rows.values(), *(reading.row for reading in sheet.readings)}
    faulty = {fault.row for fault in faults}
    blank = {
        number
        for number, row in enumerate(rows, start=2)
        if row[1] in ("", "not read") and row[0] not in ("", "spacng")
    }
    assert read | faulty | blank >= set(range(2, len(rows) + 2)) - {
        number for number, row in enumerate(rows, start=2) if not any(row)
    }
    assert not blank & {reading.row for reading in sheet.readings}
    assert not faulty & {reading.row for reading in sheet.readings}
