"""The field sheet: what it reads, what it refuses and how, and that it never alters a file."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from places import DATA

from liftcalc import Q, show
from liftcalc.fieldwork import FIELD_QUANTITIES, FieldSheetError, read_field_sheet, routes, summary
from liftcalc.fieldwork.csv_rows import read_rows
from liftcalc.fieldwork.safe_files import FieldFileError

HEADING = "quantity,value,unit,plus_minus,method,note\n"
SEMICOLONS = HEADING.replace(",", ";")


def read(tmp_path, text, encoding="utf-8"):
    path = tmp_path / "sheet.csv"
    path.write_bytes(text.encode(encoding))
    before = path.read_bytes()
    try:
        return read_field_sheet(path)
    finally:
        assert path.read_bytes() == before


def test_the_demo_sheet_reads_and_its_means_are_of_the_demo_tow():
    sheet = read_field_sheet(DATA / "field_sheet.csv")
    assert {reading.quantity for reading in sheet.readings} == set(FIELD_QUANTITIES)
    assert show(sheet.mean("line speed")) == "3.40 m/s"
    assert show(sheet.mean("spacing")) == "6.8 m"
    assert len(sheet.of("line speed")) == 3
    assert sheet.of("line speed")[1].value == Q(7.6, "mph")
    assert sheet.of("line speed")[1].plus_minus == Q(0.5, "mph")
    assert sheet.of("line speed")[1].row == 3


def test_the_mean_mixes_units_rightly(tmp_path):
    sheet = read(tmp_path, HEADING + "spacing,6,m,,,\nspacing,10,ft,,,\n")
    assert sheet.mean("spacing").m_as("m") == pytest.approx((6 + 3.048) / 2)


def test_a_quantity_is_known_with_and_without_its_hyphen(tmp_path):
    for name in ("pick-up acceleration", "Pick up acceleration", "pick_up_acceleration"):
        (reading,) = read(tmp_path, HEADING + f"{name},1.5,m/s2,0.5,assumed,\n").readings
        assert (reading.quantity, reading.value) == ("pick-up acceleration", Q(1.5, "m/s**2"))


READ = [
    ("byte-order mark", "\ufeff" + HEADING + "spacing,6.8,m,0.5,tape,\n", "utf-8"),
    ("blank lines", "\n\n" + HEADING + "\n,,,,,\nspacing,6.8,m,0.5,tape,\n\n", "utf-8"),
    ("semicolons with decimal commas", SEMICOLONS + "spacing;6,8;m;0,5;tape;\n", "utf-8"),
    ("Windows line ends", HEADING.replace("\n", "\r\n") + "spacing,6.8,m,0.5,tape,\r\n", "utf-8"),
    ("columns in another order", "note,unit,quantity,value,method,plus_minus\n,m,spacing,6.8,tape,0.5\n", "utf-8"),
    ("other letters in the heading", "Quantity,VALUE, Unit ,Plus-minus,Method,Note\nSpacing,6.8,M,.5,tape,\n", "utf-8"),
    ("an older spreadsheet's letters in a note", HEADING + "spacing,6.8,m,0.5,tape,\u00e0 c\u00f4t\u00e9\n", "cp1252"),
    ("a comma in a quoted note", HEADING + 'spacing,6.8,m,0.5,tape,"here, and there"\n', "utf-8"),
    ("short rows", HEADING + "spacing,6.8,m,0.5,tape\n", "utf-8"),
    ("rows not filled in", HEADING + "line speed,,m/s,,,\nspacing,6.8,m,0.5,tape,\n", "utf-8"),
    ("an extra column", HEADING.strip() + ",who\nspacing,6.8,m,0.5,tape,,me\n", "utf-8"),
]


@pytest.mark.parametrize(("what", "text", "encoding"), READ, ids=[case[0] for case in READ])
def test_is_read(tmp_path, what, text, encoding):
    (reading,) = read(tmp_path, text, encoding).readings
    assert (reading.quantity, reading.value, reading.plus_minus) == ("spacing", Q(6.8, "m"), Q(0.5, "m"))
    assert reading.method == "tape"


REFUSED = [
    (
        HEADING + "\nline sped,3.4,m/s,,,\n",
        "sheet.csv, row 3, column quantity: 'line sped' is no quantity of this sheet. Write one of: "
        + ", ".join(FIELD_QUANTITIES)
        + ". Is 'line speed' meant?",
    ),
    (
        HEADING + "spacing,6.8,mph,,,\n",
        "sheet.csv, row 2, column unit: 'mph' is a unit of a speed, not of a length. "
        "Write 'm', 'ft', 'in', 'cm', 'yd', 'km', 'mi'.",
    ),
    (HEADING + "ride time,44,,,,\n", "sheet.csv, row 2, column unit: the unit is missing. Write 's', 'min', 'h'."),
    (
        HEADING + "ride time,44,ticks,,,\n",
        "sheet.csv, row 2, column unit: 'ticks' is no unit known here for a time. Write 's', 'min', 'h'.",
    ),
    (
        HEADING + "spacing,about 7,m,,,\n",
        "sheet.csv, row 2, column value: 'about 7' is no number. Write digits only, such as 3.4.",
    ),
    (
        HEADING + "spacing,7,m,some,,\n",
        "sheet.csv, row 2, column plus_minus: 'some' is no number. Write digits only, such as 3.4.",
    ),
    (
        HEADING + "spacing,-7,m,,,\n",
        "sheet.csv, row 2, column value: spacing must be greater than zero, but got -7. Write the size without a sign.",
    ),
    (
        HEADING + "spacing,7,m,-1,,\n",
        "sheet.csv, row 2, column plus_minus: spacing must not be negative, but got -1. Write the size without a sign.",
    ),
    (
        HEADING + "spacing,0,m,,,\n",
        "sheet.csv, row 2, column value: spacing must be greater than zero, but got 0. Write the size without a sign.",
    ),
    (
        HEADING + "spacing,6,8,m,,,\n",
        "sheet.csv, row 2, column value: '6,8' was read as two cells, because commas part the cells of this sheet. "
        "Write 6.8 with a decimal point.",
    ),
    (
        HEADING + 'spacing,"6,8",m,,,\n',
        "sheet.csv, row 2, column value: '6,8' has the wrong decimal mark for this sheet. Write 6.8.",
    ),
    (
        SEMICOLONS + "spacing;6.8;m;;;\n",
        "sheet.csv, row 2, column value: '6.8' has the wrong decimal mark for this sheet. Write 6,8.",
    ),
    (
        HEADING + 'spacing,"1,800",m,,,\n',
        "sheet.csv, row 2, column value: '1,800' can be read in two ways. "
        "Write 1800 for the whole number, or 1.800 for the decimal one.",
    ),
    (
        HEADING + "spacing,6.8,m,,here, and there\n,,,,,,,x\n",
        "sheet.csv, row 3, column note: the row has 8 cells, but the heading has 6. "
        "Put a text that holds a comma between quotation marks, and write decimals with a point.",
    ),
    (
        HEADING + "persons per carrier,1.5,person,,,\n",
        "sheet.csv, row 2, column value: persons per carrier must be a whole number, but got 1.5. Write 1 for a tow.",
    ),
]


@table_of_messages(REFUSED, "text", kind=FieldSheetError)
def test_is_refused(tmp_path, text, message, kind):
    refuses(lambda: read(tmp_path, text), message, kind)


NO_SHEET = [
    ("", "sheet.csv: the file is empty. Export a field sheet once more."),
    (",,,\n", "sheet.csv: the sheet is empty. Its first row must be: quantity,value,unit,plus_minus,method,note"),
    (
        "quantity,value\nspacing,3\n",
        "sheet.csv, row 1: the column 'unit' is missing; the heading row reads 'quantity, value'. "
        "Write: quantity,value,unit,plus_minus,method,note",
    ),
    (
        HEADING + 'spacing,6.8,m,,"tape,\n',
        "sheet.csv, row 2: the quotation marks do not close, or a cell is endless (unexpected end of data). Remove or "
        "double the marks.",
    ),
]


@table_of_messages(NO_SHEET, "text", kind=FieldFileError)
def test_a_file_that_is_no_sheet(tmp_path, text, message, kind):
    refuses(lambda: read(tmp_path, text), message, kind)


@pytest.mark.parametrize(
    ("encoding", "said"),
    [("utf-8", "UTF-8"), ("utf-8-sig", "UTF-8"), ("utf-16", "UTF-16"), ("cp1252", "Windows-1252")],
)
def test_encodings_that_are_read_and_said(tmp_path, encoding, said):
    path = tmp_path / "sheet.csv"
    path.write_bytes((HEADING + "spacing,6.8,m,,Seil vermessen für Björn,\n").encode(encoding))
    assert read_field_sheet(path).readings[0].method == "Seil vermessen für Björn"
    assert read_rows(path, (), "a sheet").encoding == said


@given(text=st.text(max_size=200))
def test_any_text_is_read_or_refused_with_a_row(tmp_path_factory, text):
    path = tmp_path_factory.mktemp("any") / "sheet.csv"
    path.write_bytes((HEADING + text).encode("utf-8", "surrogatepass"))
    try:
        message = f"sheet.csv, row 0: read {len(read_field_sheet(path).readings)}"
    except FieldFileError as error:
        message = str(error)
    assert re.match(r"sheet\.csv(, row \d+|: this is no text|: the sheet is empty)", message)


def test_a_missing_reading_is_named():
    sheet = read_field_sheet(DATA / "field_sheet_blank.csv")
    assert sheet.readings == ()
    refuses(
        lambda: sheet.mean("line speed"),
        "field_sheet_blank.csv: no reading of 'line speed'. Add a row such as: line speed,1,m/s,,, "
        "(time a mark on the rope between two poles; the operator sets both).",
        FieldSheetError,
    )
    refuses(
        lambda: sheet.of("speed"),
        f"FieldSheet: 'speed' is no quantity of a sheet. Write one of {', '.join(FIELD_QUANTITIES)}.",
    )


def test_summary_and_routes_of_the_demo_sheet():
    sheet = read_field_sheet(DATA / "field_sheet.csv")
    rows = {row[0]: row for row in summary(sheet).rows}
    assert rows["spacing"] == ("spacing", "3", "6.8 m", "22.3 ft", "6.7 m to 6.9 m")
    found = [(row[0], row[2]) for row in routes(sheet).rows]
    levels = ["ideal", "counted", "counted"]
    assert found == list(
        zip(("line speed and spacing", "head count and ride time", "count at the top"), levels, strict=True)
    )
    # own arithmetic from the numbers in the file: 33 persons in 2 minutes
    assert routes(sheet).rows[2][1] == "990 pph"


def test_routes_leave_out_what_was_not_read(tmp_path):
    sheet = read(tmp_path, HEADING + "line speed,3,m/s,,,\nspacing,6,m,,,\n")
    assert [row[:3] for row in routes(sheet).rows] == [("line speed and spacing", "1,800 pph", "ideal")]


def test_no_row_of_the_sheet_sends_anybody_to_the_drive_or_into_the_track():
    how = {quantity: row[3] for quantity, row in FIELD_QUANTITIES.items()}
    assert how["motor power"] == "ask the operator; never read at the drive"
    assert how["sheave distance"] == "bottom sheave to top sheave: a map, or ask the operator"
    assert how["ridden length"] == "from grab to let-go, along the slope: tape, lift locked out"
    for quantity in ("ride time", "persons counted"):
        assert "from outside" in how[quantity]
    methods = {reading.method for reading in read_field_sheet(DATA / "field_sheet.csv").of("motor power")}
    assert methods == {"asked of the operator"}
