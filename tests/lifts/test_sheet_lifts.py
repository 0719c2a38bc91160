"""A whole sheet from a file: every way in which one is broken, with its message, and what a sheet may hold."""

import hashlib
import os
import time
from pathlib import Path

import pytest
from example_lines import ALL_KINDS
from messages import refuses, table_of_messages
from places import DATA

from liftcalc.fieldwork import FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.sheet import BELONGS, read_sheet, sheet_from_bytes, what_a_sheet_may_hold
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY, WHO, words_of

FORM = "quantity,value,unit,plus_minus,method,note"
COMMAS, SEMICOLONS = f"{FORM}\n", f"{FORM}\n".replace(",", ";")
QUANTITIES = f"Quantities of a sheet: {', '.join(map(words_of, ON_A_SHEET))}. Whatever is none of them stays out."
LENGTHS = "Write 'm', 'ft', 'in', 'cm', 'yd', 'km', 'mi'."
TIMES = "Write 's', 'min', 'h'."
DIGITS = "Write digits only, such as 3.4."
LOOK = "is the range. Look at the digits and the unit."
AS_A_DAY = "Write year, month and day, such as 2026-02-14."
BESIDE = "and in the column plus_minus how far it may be off."
TAKE_OUT = "Take the row out, or mend the kind."
LEVELS = "Write one of packing, ideal, governed, counted."


def read(folder, holds):
    """Write a file, read it, and hold what it is then to what was written."""
    path = folder / "sheet.csv"
    raw = holds if isinstance(holds, bytes) else holds.encode()
    path.write_bytes(raw)
    before = hashlib.sha256(raw).digest(), path.stat().st_mtime_ns
    try:
        return read_sheet(path)
    finally:
        assert (hashlib.sha256(path.read_bytes()).digest(), path.stat().st_mtime_ns) == before


ONE_FAULT = [  # rows below the heading; the message behind "sheet.csv, "
    # the quantity
    ("line sped,3.4,m/s,,,",
     "row 2, column quantity: 'line sped' is no quantity of a sheet. Is 'line speed' meant?"),
    ("xyz,3,,,,", f"row 2, column quantity: 'xyz' is no quantity of a sheet. {QUANTITIES}"),
    ("spacings,3,m,,,", "row 2, column quantity: 'spacings' is no quantity of a sheet. Is 'spacing' meant?"),
    (",3.4,m/s,,,", "row 2, column quantity: no quantity stands in this row. Write one, or empty the row."),
    ("\n,,,,,\nline sped,,m/s,,,",
     "row 4, column quantity: 'line sped' is no quantity of a sheet. Is 'line speed' meant?"),
    ("kind,rope tow,,,,\nkind,rope tow,,,,",
     "row 3, column quantity: kind came before, in row 2. Keep one of the two."),
    ("line,left,,,,\nspacing,6.8,m,,,\nLine,right,,,,",
     "row 4, column quantity: line came before, in row 2. Keep one of the two."),
    ("persons counted,33,person,,,\npersons counted,31,person,,,\ncounting time,2,min,,,",
     "row 3, column quantity: persons counted without a row of counting time. Write both, in pairs."),
    ("persons counted,9,person,,,\ncounting time,2,min,,,\npersons counted,9,person,,,\npersons counted,9,person,,,",
     "row 4, column quantity: persons counted without a row of counting time. Write both, in pairs."),
    ("persons counted,33,person,,,\ncounting time,2,min,,,\ncounting time,2,min,,,",
     "row 4, column quantity: counting time without a row of persons counted. Write both, in pairs."),
    ("loading places,1,,,,\nloading places,2,,,,",
     "row 3, column value: loading places of 2 came after 1 in row 2. Count once more, and keep one."),
    ("hourly capacity,1200,pph,,uncounted figure,",
     "row 2, column method: an hourly capacity needs its level, but got 'uncounted figure'. Write one of packing, "
     "ideal, governed, counted."),
    # facts
    ("kind,T bar,,,,",
     f"row 2, column value: kind must be one of {ALL_KINDS}, but got 'T bar'. Is 'T-bar lift' meant?"),
    ("kind,sky hook,,,,", f"row 2, column value: kind must be one of {ALL_KINDS}, but got 'sky hook'."),
    ("state,closed,,,,", "row 2, column value: state must be one of running, proposal, but got 'closed'."),
    ("drive position,middle,,,,", "row 2, column value: drive position must be one of top, bottom, but got 'middle'."),
    ("level of spacing,best,,,,",
     "row 2, column value: level of spacing must be one of packing, ideal, governed, counted, but got 'best'."),
    ("loading timed as,start,,,,",
     "row 2, column value: loading timed as must be one of readiness, starts, but got 'start'. Is 'starts' meant?"),
    ("people waited,perhaps,,,,",
     "row 2, column value: people waited must be one of yes, no, some, but got 'perhaps'."),
    ("date,14.2.2026,,,,",
     "row 2, column value: the date '14.2.2026' is not written as year, month, day. Write 2026-02-14."),
    ("date,3.2.2026,,,,",
     "row 2, column value: the date '3.2.2026' is not written as year, month, day. "
     "Write 2026-02-03, or 2026-03-02."),
    ("date,2026-02-30,,,,", f"row 2, column value: '2026-02-30' is no date. {AS_A_DAY}"),
    ("date,next Monday,,,,", f"row 2, column value: 'next Monday' is no date. {AS_A_DAY}"),
    # what is not believed
    ("line speed,600,mph,,,",
     f"row 2, column value: line speed of 600.0 mph is not believed: 0.4 mph to 33.6 mph {LOOK}"),
    ("loading places,0.5,,,,",
     "row 2, column value: loading places must be a whole number, but got 0.5. Count once more."),
    ("persons per carrier,1.5,person,,,",
     "row 2, column value: persons per carrier must be a whole number, but got 1.5. Count once more."),
    ("spacing,-7,m,,,",
     "row 2, column value: spacing must not be negative, but got -7. Write the size without a sign."),
    ("spacing,0,m,,,", f"row 2, column value: spacing of 0.0 m is not believed: 0.8 m to 250 m {LOOK}"),
    ("snow friction,7,,,,",
     "row 2, column value: snow friction of 7 is not believed: 0.01 to 0.30 is the range. Is 7 % meant? Write the unit "
     "%."),
    ("snow friction,70,,,,", f"row 2, column value: snow friction of 70 is not believed: 0.01 to 0.30 {LOOK}"),
    ("efficiency,0.85,%,,,", f"row 2, column value: efficiency of 0.85% is not believed: 30% to 99% {LOOK}"),
    # the number
    ("spacing,nan,m,,,", f"row 2, column value: 'nan' is no number. {DIGITS}"),
    ("spacing,inf,m,,,", f"row 2, column value: 'inf' is no number. {DIGITS}"),
    ("spacing,1e3,m,,,", f"row 2, column value: '1e3' is no number. {DIGITS}"),
    ("spacing,six,m,,,", f"row 2, column value: 'six' is no number. {DIGITS}"),
    ("spacing,22-23,m,,,",
     "row 2, column value: '22-23' is a range. Write its middle, 22.5, and half of its width, 0.5, in the column "
     "plus_minus."),
    ("spacing,6.8,m,~0.5,,", "row 2, column plus_minus: '~0.5': write the number alone, 0.5."),
    ("spacing,6.8,m,1-2,,", "row 2, column plus_minus: '1-2': write one number alone, the larger one."),
    ("persons counted,106 in 10 min,,,,",
     "row 2, column value: '106 in 10 min': write 106 here, and 10 min in a row of its own, counting time."),
    ("ride time,n/a,s,,,", "row 2, column value: 'n/a' is no number. Leave the value empty where nothing was read."),
    ("ride time,6 min 4 s,,,,", "row 2, column value: '6 min 4 s': write minutes and seconds as 6:04."),
    ("head count,40.5,person,,,",
     "row 2, column value: head count must be a whole number, but got 40.5. Count once more."),
    ("kind,,T-bar lift,,,",
     "row 2, column value: the value is empty, but 'T-bar lift' stands in the column unit. Write it in its own."),
    ("spacing,,m,0.5,,",
     "row 2, column value: the value is empty, but '0.5' stands in the column plus_minus. Write it in its own."),
    # what people write: asked about, and never taken for something else
    ("riders on rope,20,person,,,",
     "row 2, column quantity: 'riders on rope' is no quantity of a sheet. Is 'head count' meant?"),
    ("rider weight,75,kg,,,",
     "row 2, column quantity: 'rider weight' is no quantity of a sheet. Is 'rider mass' meant?"),
    ("belt speed,0.7,m/s,,,",
     "row 2, column quantity: 'belt speed' is no quantity of a sheet. Is 'line speed' meant?"),
    ("drive: top,,,,,", "row 2, column quantity: 'drive: top' is no quantity of a sheet. Is 'drive position' meant?"),
    ("# windy and cold,,,,,",
     "row 2, column quantity: '# windy and cold' is no quantity of a sheet. A remark goes into the column note of "
     "another row."),
    ("kind,double chair,,,,", f"row 2, column value: kind must be one of {', '.join(KINDS)}, but got 'double chair'."),
    ("spacing,about 7,m,,,", f"row 2, column value: 'about 7': write the number alone, 7, {BESIDE}"),
    ('spacing,"~0,5",m,,,', f"row 2, column value: '~0,5': write the number alone, 0.5, {BESIDE}"),
    ("spacing,6.8 +/- 0.5,m,,,",
     "row 2, column value: '6.8 +/- 0.5' is two numbers. Write 6.8 here, and 0.5 in the column plus_minus."),
    ('spacing,"6,8",m,,,', "row 2, column value: '6,8' has the wrong decimal mark for this sheet. Write 6.8."),
    ("spacing,6,8,m,,,",
     "row 2, column value: '6,8' was read as two cells, because commas part the cells of this sheet. "
     "Write 6.8 with a decimal point."),
    ('counterweight,"12,000",N,,,',
     "row 2, column value: '12,000' can be read in two ways. Write 12000 for the whole number, or 12.000 for the "
     "decimal one."),
    ("counterweight,12'000,N,,,",
     "row 2, column value: \"12'000\" can be read in two ways. Write 12000 for the whole number, or 12.000 for the "
     "decimal one."),
    ("ride time,1:75,,,,",
     "row 2, column value: '1:75' can be read in two ways. Write seconds, such as 73; or 1:13, minutes and seconds."),
    ("ride time,1:13:20,,,,",
     "row 2, column value: '1:13:20' can be read in two ways. Write seconds, such as 73; or 1:13, minutes and "
     "seconds."),
    ("spacing,1:13,m,,,", f"row 2, column value: '1:13' is no number. {DIGITS}"),
    # the unit
    ("spacing,6.8,mph,,,", f"row 2, column unit: 'mph' is a unit of a speed, not of a length. {LENGTHS}"),
    ("spacing,6.8 mph,,,,", f"row 2, column value: 'mph' is a unit of a speed, not of a length. {LENGTHS}"),
    ("spacing,6.8,,,,", f"row 2, column unit: the unit is missing. {LENGTHS}"),
    ("spacing,6.8,metr,,,",
     f"row 2, column unit: 'metr' is no unit known here for a length. {LENGTHS} Is 'metre' meant?"),
    ("spacing,24 ft,m,,,", "row 2, column unit: the value says 'ft' and the unit 'm'. Keep one of the two."),
    ("ride time,44,ticks,,,", f"row 2, column unit: 'ticks' is no unit known here for a time. {TIMES}"),
    ("ride time,1:13,h,,,", "row 2, column unit: '1:13' is taken as minutes:seconds, but the unit is 'h'. Write s."),
    ("loading places,2,places,,,",
     "row 2, column unit: loading places are counted and have no unit, but got 'places'. Leave the unit empty."),
    ("wrap angle,180,,,,", "row 2, column unit: the unit is missing. Write 'degree'."),
    ("wrap angle,180,%,,,", "row 2, column unit: '%' is no unit of wrap angle. Write 'degree'."),
    ("snow friction,0.07,degree,,,",
     "row 2, column unit: 'degree' is no unit of snow friction. Write '%', or leave it empty."),
    # plus-minus
    ("spacing,6.8,m,5 %,,",
     "row 2, column plus_minus: '5 %' is a part of the value, but plus_minus is in its unit. Write 0.34."),
    ("spacing,6.8,m,0.5 ft,,",
     "row 2, column plus_minus: '0.5 ft' has another unit than its row. "
     "Write it in the unit of the value, digits only."),
    ("spacing,6.8,m,-0.5,,",
     "row 2, column plus_minus: must not be negative, but got -0.5. Write the size without a sign."),
    ("spacing,6.8,m,7,,",
     "row 2, column plus_minus: 7 is as large as the value, 6.8, or larger. "
     "Write half of the range in which the true value lies."),
    ("spacing,6.8,m,6.80,,",
     "row 2, column plus_minus: 6.80 is as large as the value, 6.8, or larger. "
     "Write half of the range in which the true value lies."),
    ("spacing,6.8,m,some,,", f"row 2, column plus_minus: 'some' is no number. {DIGITS}"),
    # the method, and cells too many
    ("hourly capacity,1200,pph,,,", f"row 2, column method: an hourly capacity needs its level, but got ''. {LEVELS}"),
    ("hourly capacity,1200,pph,,from the maker,",
     f"row 2, column method: an hourly capacity needs its level, but got 'from the maker'. {LEVELS}"),
    ("spacing,6.8,m,,tape,here, and there",
     "row 2, column note: the row has 7 cells, but the heading has 6. Put a text that holds a comma between quotation "
     "marks, and write decimals with a point."),
    # a reading of another kind of lift
    ("kind,rope tow,,,,\ninterval,2,s,,,",
     f"row 3, column quantity: interval is a reading of lifts with carriers, and a rope tow has none. {TAKE_OUT}"),
    ("dwell time,20,s,,,\nkind,rope tow,,,,",
     "row 2, column quantity: dwell time is a reading of lifts that run to and fro, and a rope tow has none. "
     f"{TAKE_OUT}"),
    ("kind,rope tow,,,,\nbed friction,0.3,,,,",
     f"row 3, column quantity: bed friction is a reading of belts, and a rope tow has none. {TAKE_OUT}"),
    ("kind,conveyor,,,,\nsnow friction,0.07,,,,",
     "row 3, column quantity: snow friction is a reading of lifts that draw riders on skis, and a conveyor has none. "
     f"{TAKE_OUT}"),
    ("kind,conveyor,,,,\ncounterweight,5000,N,,,",
     f"row 3, column quantity: counterweight is a reading of lifts on a rope, and a conveyor has none. {TAKE_OUT}"),
    ("kind,reversible tram,,,,\nspacing,60,m,,,",
     f"row 3, column quantity: spacing is a reading of lifts that run round, and a reversible tram has none."
     f" {TAKE_OUT}"),
    ("kind,gondola,,,,\npick-up acceleration,1.5,m/s2,,,",
     "row 3, column quantity: pick-up acceleration is a reading of lifts whose riders start from rest, and a gondola "
     f"has none. {TAKE_OUT}"),
    ("kind,fixed chair,,,,\nstation time,90,s,,,",
     f"row 3, column quantity: station time is a reading of detachable lifts, and a fixed chair has none. {TAKE_OUT}"),
    ("kind,fixed chair,,,,\ncarpet speed,0.5,m/s,,,",
     f"row 3, column quantity: carpet speed is a reading of chairs with a carpet, and a fixed chair has none."
     f" {TAKE_OUT}"),
    ("kind,fixed chair,,,,\ntether angle,30,degree,,,",
     f"row 3, column quantity: tether angle is a reading of lifts with a tether, and a fixed chair has none."
     f" {TAKE_OUT}"),
    ("kind,rope tow,,,,\nhanging mass,900,kg,,,",
     "row 3, column quantity: hanging mass is a reading of lifts that carry riders in the air, and a rope tow has none."
     f" {TAKE_OUT}"),
]  # fmt: skip


@table_of_messages(ONE_FAULT, "rows", kind=FieldSheetError)
def test_a_sheet_with_one_fault(tmp_path, rows, message, kind):
    error = refuses(lambda: read(tmp_path, f"{COMMAS}{rows}\n"), f"sheet.csv, {message}", kind)
    assert len(error.faults) == 1


WITH_SEMICOLONS = [  # a row, the message behind "sheet.csv, row 2, column "
    ("spacing;6.8;m;;;", "value: '6.8' has the wrong decimal mark for this sheet. Write 6,8."),
    ("spacing;~0,5;m;;;", f"value: '~0,5': write the number alone, 0,5, {BESIDE}"),
    ("counterweight;12.000;N;;;",
     "value: '12.000' can be read in two ways. Write 12000 for the whole number, or 12,000 "
     "for the decimal one."),
    ("spacing;1.234,5;m;;;", "value: '1.234,5' is no number. Write digits only, such as 3,4."),
    ("spacing;6,8;m;5 %;;", "plus_minus: '5 %' is a part of the value, but plus_minus is in its unit. Write 0,34."),
    ("spacing;6;8;m;;", f"unit: '8' is no unit known here for a length. {LENGTHS}"),
]  # fmt: skip


@table_of_messages(WITH_SEMICOLONS, "row", kind=FieldSheetError)
def test_a_broken_sheet_with_semicolons(tmp_path, row, message, kind):
    refuses(lambda: read(tmp_path, f"{SEMICOLONS}{row}\n"), f"sheet.csv, row 2, column {message}", kind)


SEVERAL = [  # rows, the lines of the message
    (
        "kind,T bar,,,,\nline speed,600,mph,,,\n\nspacing,about 7,m,,,\nkind,rope tow,,,,",
        "sheet.csv: 4 cells cannot be read.",
        f"Row 2, column value: kind must be one of {ALL_KINDS}, but got 'T bar'. Is 'T-bar lift' meant?",
        f"Row 3, column value: line speed of 600.0 mph is not believed: 0.4 mph to 33.6 mph {LOOK}",
        f"Row 5, column value: 'about 7': write the number alone, 7, {BESIDE}",
        "Row 6, column quantity: kind came before, in row 2. Keep one of the two.",
    ),
    (
        "spacing,19.6,m,,,\nbed friction,0.3,,,,\nkind,reversible tram,,,,\nhourly capacity,900,pph,,,",
        "sheet.csv: 3 cells cannot be read.",
        "Row 2, column quantity: spacing is a reading of lifts that run round, and a reversible tram has none. "
        f"{TAKE_OUT}",
        f"Row 3, column quantity: bed friction is a reading of belts, and a reversible tram has none. {TAKE_OUT}",
        f"Row 5, column method: an hourly capacity needs its level, but got ''. {LEVELS}",
    ),
    (
        "xyz,3,,,,\nspacing,6.8,s,,,\nline sped,3,m/s,,,",
        "sheet.csv: 3 cells cannot be read.",
        "Row 2, column quantity: 'xyz' is no quantity of a sheet.",
        f"Row 3, column unit: 's' is a unit of a time, not of a length. {LENGTHS}",
        "Row 4, column quantity: 'line sped' is no quantity of a sheet. Is 'line speed' meant?",
        QUANTITIES,
    ),
    (
        "\n".join(["spacing,six,m,,,"] * 28),
        "sheet.csv: 28 cells cannot be read.",
        *(f"Row {row}, column value: 'six' is no number. {DIGITS}" for row in range(2, 27)),
        "And 3 more.",
    ),
]


@pytest.mark.parametrize(("rows", "lines"), [(case[0], case[1:]) for case in SEVERAL])
def test_all_faults_of_a_sheet_are_told_at_once(tmp_path, rows, lines):
    error = refuses(lambda: read(tmp_path, f"{COMMAS}{rows}\n"), "\n".join(lines), FieldSheetError, lines=len(lines))
    assert len(error.faults) == int(lines[0].split(" ")[1])
    assert all((fault.row, fault.column) for fault in error.faults)
    assert error.line == f"FieldSheetError: {error}"


PACKED = (
    "this is no text: it begins like the file of a spreadsheet program, or a packed one. Open it there, save it as "
    "'CSV UTF-8', and read that file."
)
ENDLESS = "the quotation marks do not close, or a cell is endless"
MEND = "Remove or double the marks."
NO_SHEET = f"and no sheet of one lift line. A sheet has a row for each fact and reading, and its first row is: {FORM}"
IS_EMPTY = ": the file is empty. Export a sheet once more."
NOT_SHEETS = [  # what, what the file holds, message behind "sheet.csv"
    ("empty", b"", IS_EMPTY),
    ("blank lines", b"\r\n\r\n", IS_EMPTY),
    ("a mark alone", b"\xef\xbb\xbf", IS_EMPTY),
    ("only commas", b",,,\n,,\n", f": the sheet is empty. Its first row must be: {FORM}"),
    ("a spreadsheet", b"PK\x03\x04\x14\x00\x06\x00", f": {PACKED}"),
    ("an older spreadsheet", b"\xd0\xcf\x11\xe0\xa1\xb1", f": {PACKED}"),
    ("a packed folder", b"PK\x03\x04" + bytes(range(256)), f": {PACKED}"),
    ("zero bytes", (COMMAS + "spacing,6.8\0,m,,,\n").encode(), ": this is no text: it holds zero bytes. "
     "Save it as UTF-8 text."),
    ("UTF-16 without its mark", COMMAS.encode("utf-16-le"), ": this is no text: it holds zero bytes. "
     "Save it as UTF-8 text."),
    ("no letters of any sort", COMMAS.encode() + b"snow,\x81,,,,\n",
     ": this is text neither in UTF-8 nor in UTF-16 nor in Windows-1252. Save it as 'CSV UTF-8'."),
    ("tabs", (COMMAS + "spacing,6.8,m,,,\n").replace(",", "\t").encode(),
     ", row 1: the column 'quantity' is missing; the heading row reads 'quantity\\tvalue\\tunit"
     "\\tplus_minus\\tmethod\\tnote'. Tabs part its cells: save it as CSV. "
     f"Write: {FORM}"),
    ("a missing column", b"quantity,value,unit,method,note\nspacing,6.8,m,,\n",
     ", row 1: the column 'plus_minus' is missing; the heading row reads 'quantity, value, unit, method, note'. "
     f"Write: {FORM}"),
    ("a column in other words", b"\n" + COMMAS.replace("unit", "units").encode(),
     ", row 2: the column 'unit' is missing; the heading row reads 'quantity, value, units, plus_minus, method, note'. "
     f"Write: {FORM}"),
    ("no heading", b"spacing,6.8,m,,,\n",
     f", row 1: the column 'quantity' is missing; the heading row reads 'spacing, 6.8, m, , , '. Write: {FORM}"),
    ("a column twice", b"quantity,value,value,unit,plus_minus,method,note\nspacing,6.8,6.9,m,,,\n",
     ", row 1: the column 'value' comes twice. Keep one of the two."),
    ("markup", b"<html></html>",
     f", row 1: the column 'quantity' is missing; the heading row reads '<html></html>'. Write: {FORM}"),
    ("several lifts", b"installation,line,kind,level,line_speed\nA,A,rope tow,ideal,3 m/s\n",
     f": this is a table of several lifts, {NO_SHEET}"),
    ("readings of several lines", b"line,reading,value\nA,loading_time,3 s\n",
     f": this is a table of readings of several lines, {NO_SHEET}"),
    ("lap times", b"lap,seconds,note\n1,45.3,\n", f": this is a table of lap times, {NO_SHEET}"),
    ("a count", b"from,minutes,persons,stop_seconds,people_waited,note\n10:00,1,17,0,yes,\n10:01,1,16,0,yes,\n",
     f": this is a count minute by minute, {NO_SHEET}"),
    ("an open quotation mark", (COMMAS + 'spacing,6.8,m,,"tape,\nline speed,3,m/s,,,\n').encode(),
     f", row 2: {ENDLESS} (unexpected end of data). {MEND}"),
    ("a letter behind a quotation mark", (COMMAS + 'snow,"wet"deep,,,,\n').encode(),
     f", row 2: {ENDLESS} (',' expected after '\"'). {MEND}"),
    ("an endless line", COMMAS.encode() + b"x" * 140_000 + b"\n",
     f", row 2: {ENDLESS} (field larger than field limit (131072)). {MEND}"),
    ("20,001 rows", COMMAS.encode() + b"\n" * 20_000 + b",,,,,\n",
     ": the file holds more than 20,000 rows, the most that is read."),
]  # fmt: skip


@table_of_messages(NOT_SHEETS, "what", "holds", kind=FieldFileError)
def test_a_file_that_is_no_sheet(tmp_path, what, holds, message, kind):
    begin = time.perf_counter()
    refuses(lambda: read(tmp_path, holds), f"sheet.csv{message}", kind)
    assert time.perf_counter() - begin < 1


def test_so_many_sheets_are_broken_here():
    assert len(ONE_FAULT) + len(WITH_SEMICOLONS) + len(SEVERAL) + len(NOT_SHEETS) >= 100


def test_a_heading_alone_is_a_blank(tmp_path):
    sheet = read(tmp_path, COMMAS)
    assert (sheet.facts, sheet.readings) == ({}, ())


# places that are no file


def refused_at_once(path, message):
    """Check that a path is refused with a message, and without a wait."""
    begin = time.perf_counter()
    refuses(lambda: read_sheet(path), message, FieldFileError)
    assert time.perf_counter() - begin < 0.5


def test_a_folder_a_missing_file_and_a_wrong_ending(tmp_path):
    (tmp_path / "folder.csv").mkdir()
    refused_at_once(tmp_path / "folder.csv", "folder.csv: this is a folder. Name the file in it that holds a sheet.")
    refused_at_once(
        tmp_path / "none.csv",
        "none.csv: the file cannot be opened (No such file or directory). Check the name and the folder.",
    )
    (tmp_path / "sheet.txt").write_text(COMMAS)
    (tmp_path / "sheet.xlsx").write_bytes(b"PK\x03\x04")
    for name in ("sheet.txt", "sheet.xlsx"):
        refused_at_once(
            tmp_path / name,
            f"{name}: a sheet is read from a file whose name ends in .csv. Export it in that format and read the new "
            "file.",
        )
    refuses(
        lambda: read_sheet(3), "The name of the file must be a text, but got 3. Write 'my_file.csv'.", FieldFileError
    )
    (tmp_path / "SHEET.CSV").write_text(COMMAS + "spacing,6.8,m,,,\n")
    assert read_sheet(str(tmp_path / "SHEET.CSV")).has("spacing")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes on this system")
def test_a_pipe_and_a_device_are_refused_at_once(tmp_path):
    os.mkfifo(tmp_path / "pipe.csv")
    refused_at_once(tmp_path / "pipe.csv", "pipe.csv: this is no plain file. Name a file that holds a sheet.")
    (tmp_path / "zero.csv").symlink_to("/dev/zero")
    refused_at_once(tmp_path / "zero.csv", "zero.csv: this is no plain file. Name a file that holds a sheet.")


def test_a_file_larger_than_the_most_is_refused_before_it_is_read(tmp_path):
    with (tmp_path / "large.csv").open("wb") as file:
        file.truncate(20_000_001)  # sparse: takes no room
    refused_at_once(
        tmp_path / "large.csv",
        "large.csv: the file holds 20,000,001 bytes, and 20,000,000 are the most that is read. Cut out the part with "
        "the lift and save it as a file of its own.",
    )


def test_a_file_that_one_may_not_read(tmp_path, monkeypatch):
    path = tmp_path / "locked.csv"
    path.write_text(COMMAS)
    path.chmod(0)
    try:
        path.read_bytes()
    except PermissionError:
        pass
    else:  # one who may read everything: let the system refuse

        def refuse(*arguments, **named):
            raise PermissionError(13, "Permission denied")

        monkeypatch.setattr("liftcalc.fieldwork.safe_files.os.open", refuse)
    refused_at_once(path, "locked.csv: the file cannot be opened (Permission denied). Check the name and the folder.")


def test_a_cell_of_blanks_and_many_strange_rows_are_answered_soon():
    blanks = f"spacing,1{130_000 * ' '}x,m,,,\n" * 20
    strange = "".join(f"xyz {row},1,,,,\n" for row in range(1000))
    begin = time.perf_counter()
    with pytest.raises(FieldSheetError) as caught:
        sheet_from_bytes("sheet.csv", (COMMAS + blanks + strange).encode())
    assert time.perf_counter() - begin < 2
    assert len(caught.value.faults) == 1020
    assert len(str(caught.value)) < 8000


# what is read


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_read_in_any_letters(kind):
    raw = f"{COMMAS}kind,{kind.upper().replace('-', ' ')},,,,\n"
    assert sheet_from_bytes("sheet.csv", raw.encode()).kind == kind


# which lifts have a reading, written down a second time: kinds by the way they move people
SKIS = {"rope tow", "handle tow", "platter lift", "T-bar lift"}
CHAIRS = {"fixed chair", "fixed chair with carpet", "detachable chair"}
AIR = {*CHAIRS, "gondola", "reversible tram"}
HAVE = {
    "interval": AIR | SKIS - {"rope tow"},
    "carriers_on_loop": AIR | SKIS - {"rope tow"},
    "spacing": set(KINDS) - {"reversible tram"},
    "riders_on_line": set(KINDS) - {"reversible tram"},
    "dwell_time": {"reversible tram"},
    "acceleration": {"reversible tram"},
    "station_time": {"detachable chair", "gondola"},
    "station_speed": {"detachable chair", "gondola"},
    "carrier_length": {"detachable chair", "gondola"},
    "carrier_gap": {"detachable chair", "gondola"},
    "carpet_speed": {"fixed chair with carpet"},
    "snow_friction": SKIS,
    "tether_angle": SKIS - {"rope tow"},
    "pick_up_acceleration": SKIS,
    "sheave_drag_share": AIR,
    "hanging_mass": AIR,
    "bed_friction": {"conveyor"},
    "return_friction": {"conveyor"},
    "belt_mass_per_length": {"conveyor"},
    "counterweight": set(KINDS) - {"conveyor"},
    "rope_mass_per_length": set(KINDS) - {"conveyor"},
    "groove_angle": set(KINDS) - {"conveyor"},
}


@pytest.mark.parametrize("name", ON_A_SHEET[len(FACTS) :])
def test_which_kinds_of_lifts_have_a_reading(name):
    _, has = BELONGS[VOCABULARY[name].taken.of]
    assert {kind.name for kind in KINDS.values() if has(kind)} == HAVE.get(name, set(KINDS))


def test_the_table_of_what_a_sheet_may_hold():
    table = what_a_sheet_may_hold()
    assert [row[0] for row in table.rows] == [words_of(name) for name in ON_A_SHEET]
    cells = {row[0]: row[1:] for row in table.rows}
    assert cells["drive position"] == ("top or bottom", "", "once", "")
    assert cells["lift"] == ("text", "", "once", "")
    assert cells["line speed"] == (
        "m/s, mph, ft/s", "0.20 m/s to 15.00 m/s", "every lift",
        "you, from outside the track and the unload area; the operator, with the lift stopped and locked out; ask the "
        "operator; never go in to read it",
    )  # fmt: skip
    assert cells["efficiency"] == ("%", "30% to 99%", "every lift", "assumed at the desk")
    assert cells["loading places"][:2] == ("number", "1 to 20")
    assert {VOCABULARY[name].taken.of for name in ON_A_SHEET[len(FACTS) :]} == set(BELONGS)


def test_nothing_on_a_sheet_sends_anybody_to_the_drive_or_into_the_track():
    who = {name: VOCABULARY[name].taken.who for name in ON_A_SHEET[len(FACTS) :]}
    assert {key for keys in who.values() for key in keys} == set(WHO)
    for name in (
        "motor_power", "idle_drag", "slack_tension", "counterweight", "wrap_angle", "groove_angle", "base_speed",
        "carpet_speed", "starting_acceleration",
    ):  # fmt: skip
        assert who[name] == ("asked",), name
    assert "never go in" in WHO["asked"]
    assert who["ridden_length"] == ("locked", "map")
    assert "visitor" not in who["sheave_distance"]
    for name in ("ride_time", "persons_counted", "loading_time", "clearing_time"):
        assert who[name] == ("visitor",)
        assert "from outside" in WHO["visitor"]
    for path in sorted((DATA / "hill").glob("*.csv")):
        sheet = read_sheet(path)
        said = {reading.method for reading in sheet.of("motor power")}
        assert said <= {"asked of the operator", "planned"}, path.name


@pytest.mark.parametrize(
    "path", [*sorted(DATA.glob("hill/*.csv")), *sorted(DATA.glob("kinds/*.csv"))], ids=lambda p: p.stem
)
def test_every_row_of_the_data_is_read(path):
    rows = Path(path).read_text(encoding="utf-8").splitlines()[1:]
    sheet = read_sheet(path)
    assert len(sheet.facts) + len(sheet.readings) == len(rows)
    assert sorted([*sheet.rows.values(), *(reading.row for reading in sheet.readings)]) == list(range(2, len(rows) + 2))
