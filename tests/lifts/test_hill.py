"""A hill from a folder: what is taken and in which order, what is left out and why, and that no file is altered."""

import hashlib
import os

import pytest
from messages import SOMETHING, refuses, table_of_messages
from places import DATA

from liftcalc import Q
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.hill import MOST_SHEETS, Hill, hill_from_bytes, read_hill
from liftcalc.lifts.kinds import NOT_READ
from liftcalc.units import PlainError

FORM = "quantity,value,unit,plus_minus,method,note"
NUMBERS = "line speed,3.4,m/s,0.1,,\nspacing,6.8,m,0.5,,\nridden length,150,m,1,,\nvertical rise,29.4,m,1,,\n"


def sheet(line=None, lift=None, *more, numbers=NUMBERS):
    """Return the text of a sheet of a rope tow, with facts and rows more."""
    facts = [("line", line), ("lift", lift), ("kind", "rope tow")]
    rows = [f"{name},{value},,,,\n" for name, value in facts if value is not None]
    return f"{FORM}\n{''.join(rows)}{numbers}" + "".join(f"{row}\n" for row in more)


GOOD = {"1_a.csv": sheet("A")}


def hashes(folder):
    """Return what lies in a folder: the hash of each file, by its name."""
    files = (path for path in sorted(folder.rglob("*")) if path.is_file() and os.access(path, os.R_OK))
    return {path.name: (hashlib.sha256(path.read_bytes()).hexdigest(), path.stat().st_mtime_ns) for path in files}


def hill_in(folder, files):
    """Write files into a folder, read it as a hill, and hold the files then to what was written."""
    for name, holds in files.items():
        if callable(holds):
            holds(folder / name)
        else:
            (folder / name).write_bytes(holds if isinstance(holds, bytes) else holds.encode())
    before = hashes(folder)
    try:
        return read_hill(folder)
    finally:
        assert hashes(folder) == before


def zeros(path):
    path.symlink_to("/dev/zero")


def large(path):
    with path.open("wb") as file:
        file.truncate(20_000_001)


def nothing(path):
    path.symlink_to(path.with_name("gone"))


NO_SHEET = f"and no sheet of one lift line. A sheet has a row for each fact and reading, and its first row is: {FORM}"
LEFT_OUT = [  # what, files beside a good one, those left out with the reason
    ("a blank", {"2_b.csv": FORM}, [("2_b.csv", "a blank: nothing is filled in.")]),
    ("a blank with its rows", {"2_b.csv": f"{FORM}\nline speed,,m/s,,,\nkind,not read,,,,\n"},
     [("2_b.csv", "a blank: nothing is filled in.")]),
    ("an empty file", {"2_b.csv": b""}, [("2_b.csv", "the file is empty. Export a sheet once more.")]),
    ("two sheets of one line", {"2_b.csv": sheet("A")}, [("2_b.csv", "it tells of the line A, as 1_a.csv does.")]),
    ("one line in two lifts", {"2_b.csv": sheet("A", "other")},
     [("2_b.csv", "it tells of the line A, as 1_a.csv does.")]),
    ("lap times", {"laps.csv": "lap,seconds,note\n1,45.3,\n"},
     [("laps.csv", f"this is a table of lap times, {NO_SHEET}")]),
    ("a count", {"count.csv": "from,minutes,persons,stop_seconds,people_waited,note\n10:00,1,17,0,yes,\n"},
     [("count.csv", f"this is a count minute by minute, {NO_SHEET}")]),
    ("a table of lifts", {"lifts.csv": "installation,line,kind,level,line_speed\nB,B,rope tow,ideal,3 m/s\n"},
     [("lifts.csv", f"this is a table of several lifts, {NO_SHEET}")]),
    ("a table of readings", {"readings.csv": "line,reading,value\nA,loading_time,3 s\n"},
     [("readings.csv", f"this is a table of readings of several lines, {NO_SHEET}")]),
    ("one fault", {"2_b.csv": sheet("B", None, "loading time,three,s,,,")},
     [("2_b.csv", "row 8, column value: 'three' is no number. Write digits only, such as 3.4.")]),
    ("two faults, on one line",
     {"2_b.csv": sheet("B", None, "loading time,three,s,,,", "loading places,0.5,,,,")},
     [("2_b.csv", "2 cells cannot be read. Row 8, column value: 'three' is no number. Write digits only, such as 3.4. "
       "Row 9, column value: loading places must be a whole number, but got 0.5. Count once more.")]),
    ("no spacing", {"2_b.csv": sheet("B", numbers=NUMBERS.replace("spacing,6.8,m,0.5,,\n", ""))},
     [("2_b.csv", "there is no line without spacing, which nobody read. Add a row such as: spacing,...,m,,,")]),
    ("no numbers", {"2_b.csv": sheet("B", numbers="")},
     [("2_b.csv", "there is no line without line speed and spacing and ridden length and persons per carrier and "
       "vertical rise, which nobody read. Add a row such as: line speed,...,m/s,,,")]),
    ("a rise above the length", {"2_b.csv": sheet("B", numbers=NUMBERS.replace("29.4", "200"))},
     [("2_b.csv", "the vertical rise must be less than the ridden length of 150 m, but got 200 m. Write the length "
       "along the slope, and the height gained.")]),
    ("a ride that cannot be",
     {"2_b.csv": sheet("B", None, "ride time,10,s,,,", "pick-up acceleration,1.5,m/s2,,,",
                       numbers=NUMBERS.replace("line speed,3.4,m/s,0.1,,\n", ""))},
     [("2_b.csv", "line_speed_from_ride_time: nobody covers 150.0 m from rest in 10.0 s at 1.5 m/s². Time the ride "
       "again, or write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2').")]),
    ("lines of two levels", {"1_a.csv": sheet("A", "Twin"),
                             "2_b.csv": sheet("B", "Twin", "level of spacing,packing,,,,")},
     [("2_b.csv", "its spacing is packing, but the lift Twin has lines at ideal.")]),
    ("a spreadsheet", {"2_b.csv": b"PK\x03\x04"},
     [("2_b.csv", "this is no text: it begins like the file of a spreadsheet program, or a packed one. Open it there, "
       "save it as 'CSV UTF-8', and read that file.")]),
    ("a folder", {"2_b.csv": lambda path: path.mkdir()},
     [("2_b.csv", "this is a folder. Name the file in it that holds a sheet.")]),
    ("a pipe", {"2_b.csv": os.mkfifo}, [("2_b.csv", "this is no plain file. Name a file that holds a sheet.")]),
    ("a device", {"2_b.csv": zeros}, [("2_b.csv", "this is no plain file. Name a file that holds a sheet.")]),
    ("a file that is gone", {"2_b.csv": nothing},
     [("2_b.csv", "the file cannot be opened (No such file or directory). Check the name and the folder.")]),
    ("a file too large", {"2_b.csv": large},
     [("2_b.csv", "the file holds 20,000,001 bytes, and 20,000,000 are the most that is read. Cut out the part with "
       "the lift and save it as a file of its own.")]),
    ("several at once", {"2_b.csv": FORM, "10_c.csv": sheet("A"), "9_d.csv": b"\0"},
     [("2_b.csv", "a blank: nothing is filled in."), ("9_d.csv", "the file is empty. Export a sheet once more."),
      ("10_c.csv", "it tells of the line A, as 1_a.csv does.")]),
]  # fmt: skip


@pytest.mark.parametrize(("what", "files", "left_out"), LEFT_OUT, ids=[case[0] for case in LEFT_OUT])
def test_a_file_that_cannot_be_taken_is_left_out_by_name(tmp_path, what, files, left_out):
    hill = hill_in(tmp_path, GOOD | files)
    assert list(hill.lines) == ["A"]
    assert sorted(hill.left_out) == sorted(left_out)
    assert all(len(why.splitlines()) == 1 for _, why in hill.left_out)
    table = hill.left_out_table()
    assert (table.caption, list(table.rows)) == ("Files that were left out", list(hill.left_out))


NO_LINE = "no line of a lift can be taken."
NO_HILLS = [  # what, files, message behind the name of the folder
    ("nothing", {}, "no sheet lies in this folder. Save the sheet of each line in it, as CSV."),
    ("other files alone", {"sheet.txt": sheet("A"), ".hidden.csv": sheet("A"), "~lock.csv": sheet("A")},
     "no sheet lies in this folder. Save the sheet of each line in it, as CSV."),
    ("a blank alone", {"a.csv": FORM}, f"{NO_LINE} a.csv: a blank: nothing is filled in."),
    ("laps alone", {"laps.csv": "lap,seconds,note\n1,45.3,\n"},
     f"{NO_LINE} laps.csv: this is a table of lap times, {NO_SHEET}"),
    ("five blanks", {f"{name}.csv": FORM for name in "abcde"},
     f"{NO_LINE} a.csv: a blank: nothing is filled in. b.csv: a blank: nothing is filled in. c.csv: a blank: nothing "
     "is filled in. And 2 more."),
]  # fmt: skip


@table_of_messages(NO_HILLS, "what", "files", kind=FieldFileError)
def test_a_folder_that_is_no_hill(tmp_path, what, files, message, kind):
    folder = tmp_path / "my_hill"
    folder.mkdir()
    refuses(lambda: hill_in(folder, files), f"my_hill: {message}", kind)


def test_a_folder_of_too_many_sheets_is_not_read(tmp_path, monkeypatch):
    assert MOST_SHEETS == 2000
    monkeypatch.setattr("liftcalc.lifts.hill.MOST_SHEETS", 30)
    for number in range(31):
        (tmp_path / f"{number}.csv").touch()
    message = f"{tmp_path.name}: 31 CSV files lie in this folder, and 30 are the most."
    refuses(lambda: read_hill(tmp_path), message, FieldFileError)


def test_what_is_no_folder(tmp_path):
    (tmp_path / "a.csv").write_text(sheet("A"))
    for path, message in (
        (tmp_path / "a.csv", "a.csv: this is no folder. Name the folder that holds the sheets of the hill."),
        (tmp_path / "gone", "gone: the folder cannot be opened (No such file or directory). Check the name."),
        ("no\0name", "no\0name: the folder cannot be opened (the name cannot be one of a folder). Check the name."),
        (3, "The folder must be a text, but got 3. Write 'my_hill'."),
        (None, "The folder must be a text, but got None. Write 'my_hill'."),
    ):
        refuses(lambda path=path: read_hill(path), message, FieldFileError)


def test_files_are_taken_in_the_order_of_their_numbers(tmp_path):
    names = ["10_a.csv", "2_B.csv", "1_c.csv", "B10.csv", "b9.csv", "2_a.CSV", "1\u00b22.csv", "1\u06632.csv", "a.csv"]
    hill = hill_in(tmp_path, {name: sheet(name) for name in names})
    in_order = [
        "1_c.csv",
        "1\u00b22.csv",
        "1\u06632.csv",
        "2_a.CSV",
        "2_B.csv",
        "10_a.csv",
        "a.csv",
        "b9.csv",
        "B10.csv",
    ]
    assert list(hill.lines) == in_order
    assert list(hill.lifts) == list(hill.readings) == list(hill.sheets) == in_order
    assert hill.left_out == ()
    assert list(hill.left_out_table().rows) == [("none", "")]


def test_lines_of_one_lift_are_run_as_one(tmp_path):
    slow = NUMBERS.replace("3.4", "2.4").replace("6.8", "6")
    files = {
        "1.csv": sheet("left", "Twin", "motor power,15,kW,,,"),
        "2.csv": sheet("other"),
        "3.csv": sheet("right", "Twin", "motor power,11,kW,,,", numbers=slow),
    }
    hill = hill_in(tmp_path, files)
    assert {name: [line.name for line in lift.lines] for name, lift in hill.lifts.items()} == {
        "Twin": ["left", "right"],
        "other": ["other"],
    }
    together = hill.lifts["Twin"]
    assert str(together.capacity_together) == "3,240 pph (ideal, 2 lines together)"  # 3600 (3.4 / 6.8 + 2.4 / 6)
    assert together.motor_power_together.m_as("kW") == pytest.approx(26)
    assert [hill.sheets[name].name for name in ("left", "right")] == ["1.csv", "3.csv"]
    line, readings = hill.line("right")
    assert line.line_speed == Q(2.4, "m/s")
    assert readings == {}
    refuses(
        lambda: hill.line("middle"), "Hill: there is no line 'middle'. Write one of left, right, other.", PlainError
    )


def test_a_sheet_without_facts_is_a_line_of_a_kind_that_was_not_read(tmp_path):
    hill = hill_in(tmp_path, {"old_tow.csv": f"{FORM}\n{NUMBERS}persons per carrier,1,person,,,\n"})
    line, _ = hill.line("old_tow")
    assert (line.kind, list(hill.lifts)) == (NOT_READ, ["old_tow"])


def test_files_that_came_as_bytes_are_taken_in_the_order_they_came():
    hill = hill_from_bytes([("b.csv", sheet("B").encode()), ("a.csv", sheet("A").encode()), ("c.csv", b"")])
    assert list(hill.lines) == ["B", "A"]
    assert hill.left_out == (("c.csv", "the file is empty. Export a sheet once more."),)
    refuses(
        lambda: hill_from_bytes([("c.csv", b"")]),
        "c.csv: the file is empty. Export a sheet once more.",
        FieldFileError,
    )
    refuses(lambda: hill_from_bytes([]), f"These files: {NO_LINE}", FieldFileError)


def test_one_hill_with_another_behind_it():
    fast = NUMBERS.replace("3.4", "3.6")
    own = hill_from_bytes(
        [("a.csv", sheet("A").encode()), ("b.csv", sheet("B").encode()), ("c.csv", b""), ("d.csv", b"")]
    )
    other = hill_from_bytes(
        [("new.csv", sheet("A", numbers=fast).encode()), ("d.csv", sheet("D").encode()), ("e.csv", FORM.encode())]
    )
    both = own.with_(other)
    assert list(both.lines) == ["B", "A", "D"]
    assert both.line("A")[0].line_speed == Q(3.6, "m/s")
    assert own.line("A")[0].line_speed == Q(3.4, "m/s")  # as it was
    assert both.left_out == (
        ("c.csv", "the file is empty. Export a sheet once more."),  # d.csv came again, and was taken
        ("e.csv", "a blank: nothing is filled in."),
    )
    twin = hill_from_bytes([("x.csv", sheet("X", "B", "level of spacing,packing,,,,").encode())])
    assert both.with_(twin).left_out[2] == ("x.csv", "its spacing is packing, but the lift B has lines at ideal.")
    assert list(both.with_(twin).lines) == ["B", "A", "D"]
    assert list(Hill({}, {}).with_(own).lines) == ["A", "B"]


@pytest.mark.parametrize("name", ["hill", "kinds"])
def test_the_hills_of_the_data_are_read_whole_and_not_altered(name):
    before = hashes(DATA / name)
    hill = read_hill(str(DATA / name))
    assert hill.left_out == ()
    assert [sheet.name for sheet in hill.sheets.values()] == list(before)
    assert list(hill.lines) == list(hill.readings) == list(hill.sheets)
    assert hashes(DATA / name) == before


WANTED = "Hill: there is no line 'B'. Write one of A."
ASKED_FOR_B = [
    ("nothing left out", {}, WANTED),
    ("its sheet is faulty", {"2_b.csv": sheet("B", None, "line speed,fast,m/s,,,")},
     f"{WANTED} 2_b.csv was left out: row 8, column value: 'fast' is no number. Write digits only, such as 3.4."),
    ("two faults in it", {"2_b.csv": sheet("B", None, "line speed,fast,m/s,,,", "spacing,wide,m,,,")},
     f"{WANTED} 2_b.csv was left out: 2 cells cannot be read. Row 8, column value: 'fast' is no number. Write digits "
     "only, such as 3.4. Row 9, column value: 'wide' is no number. Write digits only, such as 3.4."),
    ("a blank and a second A before it",
     {"0.csv": FORM, "1_b.csv": sheet("A"), "2_c.csv": sheet("C", numbers="")},
     f"{WANTED} 1_b.csv was left out: it tells of the line A, as 1_a.csv does. 2_c.csv was left out: {SOMETHING} "
     "0.csv was left out: a blank: nothing is filled in."),
    ("four of them, one with the name", {f"{name}.csv": sheet("A") for name in ("2_c", "3_d", "4_e", "5_B")},
     WANTED + "".join(f" {name}.csv was left out: it tells of the line A, as 1_a.csv does."
                      for name in ("5_B", "2_c", "3_d")) + " And 1 more was left out."),
]  # fmt: skip


@table_of_messages(ASKED_FOR_B, "what", "files")
def test_a_line_that_is_not_there_is_told_with_what_was_left_out(what, files, message, kind, tmp_path):
    hill = hill_in(tmp_path, GOOD | files)
    refuses(lambda: hill.line("B"), message, kind)
