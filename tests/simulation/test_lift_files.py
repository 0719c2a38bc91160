"""Files of one lift: told apart by what is in them, judged one by one, the newer in place of the older, never mixed."""

import functools

import pytest
from messages import SOMETHING, refuses, table_of_messages
from places import DATA

from liftcalc.fieldwork.faults import FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.simulation.lift_files import SORTS, LiftFiles, read_lift_files, sort_of_file

OWN = DATA / "own_lift"
HEADING = "quantity,value,unit,plus_minus,method,note\n"
WREN = f"{HEADING}lift,Wren Chair,,,,\nkind,fixed chair,,,,\nline speed,2,m/s,0.1,,\n".encode()


@functools.cache
def demo():
    """Return the files of the folder; nothing of them is ever written into."""
    return read_lift_files(OWN)


def raw(name):
    return (OWN / name).read_bytes()


def test_every_file_of_the_folder_is_what_it_is_and_nothing_is_left_out():
    assert list(demo().came) == list(SORTS)
    assert demo().left_out == demo().gone == ()
    assert demo().line.name == "Long Platter"
    assert demo().made("second").title == "Penny Rope"


CONTENTS = [  # under names that tell nothing
    ("long_platter_sheet.csv", "sheet"),
    ("long_platter_count.csv", "count"),
    ("long_platter_track.gpx", "track"),
    ("long_platter_laps.csv", "laps"),
    ("long_platter_line.kml", "map line"),
    ("../penny_rope_line.geojson", "map line"),
    ("long_platter_parties.csv", "riders"),
    ("../days/penny_rope_classes.csv", "riders"),
    ("long_platter_day.csv", "day"),
]


@pytest.mark.parametrize(("file", "sort"), CONTENTS, ids=[file for file, _ in CONTENTS])
def test_the_name_of_a_file_tells_nothing(file, sort):
    assert sort_of_file("download.txt", raw(file)) == sort
    text = raw(file).decode("utf-8")
    assert sort_of_file("x", text.encode("utf-16")) == sort
    assert sort_of_file("x", b"\xef\xbb\xbf\r\n" + raw(file)) == sort


def only(name, text):
    """Return a call that brings one file and gives what is said of it."""
    return lambda: _raise(LiftFiles().with_([(name, text if isinstance(text, bytes) else text.encode())]))


def _raise(found):
    assert not found.came
    raise FieldFileError(found.left_out[0][1])


FORMS = (
    "Write one of: a sheet: quantity,value,unit,...; a count: from,minutes,persons,...; lap times: lap,seconds,note; "
    "riders: class,share,... or party,share; the rest of the day: quantity,value,unit,..."
)
LEFT_OUT = [
    (only("a.csv", "a,b\n1,2\n"), f"a.csv, row 1: the heading 'a, b' is of no file that is read here. {FORMS}"),
    (
        only("p.html", "<html><body>"),
        "p.html: this is neither a track (GPX) nor a map line (KML). Export it as one of the two.",
    ),
    (only("s.csv", HEADING + "kind,,,,,\n"), "s.csv: a blank: nothing is filled in."),
    (only("s.csv", HEADING + "lift,Wren,,,,\n"), "s.csv: no reading stands in it."),
    (only("s.csv", HEADING + "line speed,600,mph,,,\n"), f"s.csv, row 2, column value: line speed of{SOMETHING}"),
    (only("c.csv", "from,minutes,persons\n10:00,1,many\n"), f"c.csv, row 2, column persons: {SOMETHING}"),
    (only("l.csv", "lap,seconds\n1,soon\n"), f"l.csv, row 2, column seconds: {SOMETHING}"),
    (only("d.csv", HEADING + "hours open,99,h,,,\n"), f"d.csv, row 2, column value: hours open{SOMETHING}"),
    (only("r.csv", "party,share\n1,50 %\n"), f"r.csv, row 2, column share: {SOMETHING}"),
    (only("t.xlsx", b"PK\x03\x04\0\0"), f"t.xlsx: this is no text: it begins like{SOMETHING}"),
    (only("t.gpx", "<gpx></gpx>"), f"t.gpx: {SOMETHING}"),
    (only("m.json", "{}"), f"m.json: the file holds no line (LineString).{SOMETHING}"),
]


@table_of_messages(LEFT_OUT, kind=FieldFileError)
def test_what_is_said_of_a_file_that_cannot_be_taken(call, message, kind):
    refuses(call, message, kind)


def test_a_bad_file_spoils_no_other_and_its_mended_form_is_judged_anew():
    found = LiftFiles().with_([("s.csv", WREN), ("c.csv", b"from,minutes,persons\n10:00,1,many\n")])
    assert list(found.came) == ["sheet"]
    assert [name for name, _ in found.left_out] == ["c.csv"]
    mended = found.with_([("c.csv", b"from,minutes,persons\n10:00,1,9\n")])
    assert list(mended.came) == ["sheet", "count"]
    assert mended.left_out == ()


def test_the_newer_of_a_sort_takes_the_place_of_the_older():
    first = LiftFiles().with_([("s.csv", WREN), ("a.csv", b"lap,seconds\n1,50\n")])
    later = first.with_([("b.csv", b"lap,seconds\n1,60\n")])
    assert (later.came["laps"].name, later.gone) == ("b.csv", ("a.csv",))
    both = first.with_([("b.csv", b"lap,seconds\n1,60\n"), ("c.csv", b"lap,seconds\n1,70\n")])
    assert both.came["laps"].name == "b.csv"
    assert both.left_out == (("c.csv", "c.csv: b.csv came with it, and both are lap times. Bring one of the two."),)
    mended = WREN.replace(b"line speed,2", b"line speed,2.2")
    assert first.with_([("s2.csv", mended)]).came.keys() == first.came.keys(), "a mended sheet of the same lift"


def test_nothing_of_one_lift_is_held_against_another():
    other = demo().with_([("wren.csv", WREN)])
    assert other.made("second").title == "Wren Chair", "a sheet that comes alone is the second one"
    assert other.sheet.title == "Long Platter"
    moved = demo().with_([("wren.csv", WREN), ("laps.csv", b"lap,seconds\n1,60\n")])
    assert list(moved.came) == ["sheet", "laps"], "with other files it is a lift of its own"
    assert "long_platter_count.csv" in moved.gone
    alone = demo().without("sheet").without("second").with_([("wren.csv", WREN)])
    assert list(alone.came) == ["sheet"], "the count that was left is of the lift whose sheet was taken out"
    again = demo().without("sheet").with_([("s.csv", raw("long_platter_sheet.csv"))])
    assert again.has("sheet", "count", "day")
    before = LiftFiles().with_([("laps.csv", b"lap,seconds\n1,60\n")]).with_([("wren.csv", WREN)])
    assert list(before.came) == ["sheet", "laps"], "whatever comes before the first sheet is of that lift"


def test_swapped_the_other_files_are_of_the_other_lift():
    swapped = demo().swapped()
    assert (swapped.sheet.title, swapped.made("second").title) == ("Penny Rope", "Long Platter")
    assert swapped.counts is not None
    assert swapped.swapped().sheet.title == "Long Platter"
    assert demo().without("second").swapped().sheet.title == "Long Platter", "nothing to swap"


def test_what_did_not_come_says_what_it_would_give():
    refuses(
        lambda: demo().without("count").made("count"),
        "No count at the top came. It would give whether people really got through, and how many.",
    )
    refuses(
        lambda: demo().without("riders").without("day").day,
        "The table of riders did not come. It would give what a working day leaves of the limit, together with the "
        "rest of the day. The rest of the day did not come. It would give how much each cause takes, together with "
        "the table of riders.",
    )
    refuses(
        lambda: demo().with_([("r.csv", (DATA / "days/penny_rope_classes.csv").read_bytes())]).day,
        "r.csv, row 1: the column 'party' is missing; the heading row reads 'class, share, mean_readiness, cv, misses, "
        "falls'. Write: party,share",
        FieldFileError,
    )


def test_a_folder(tmp_path):
    for name, content in (("b_sheet.csv", WREN), ("a_sheet.csv", raw("penny_rope_sheet.csv")), (".hidden.csv", b"")):
        (tmp_path / name).write_bytes(content)
    (tmp_path / "photo.jpg").write_bytes(b"\xff\xd8\0\0")
    (tmp_path / "README.md").write_text("notes")
    found = read_lift_files(tmp_path)
    assert (found.sheet.title, found.made("second").title) == ("Penny Rope", "Wren Chair")
    assert [name for name, _ in found.left_out] == ["photo.jpg"]


FOLDERS = [
    (lambda: read_lift_files(3), "The folder must be a text, but got 3. Write 'my_lift'."),
    (lambda: read_lift_files(OWN / "penny_rope_sheet.csv"), f"penny_rope_sheet.csv: this is no folder.{SOMETHING}"),
    (lambda: read_lift_files(OWN / "nowhere"), f"nowhere: the folder cannot be opened ({SOMETHING}). Check the name."),
]


@table_of_messages(FOLDERS, kind=FieldFileError)
def test_folders_that_hold_no_lift(call, message, kind):
    refuses(call, message, kind)


def test_an_empty_folder_and_one_with_too_many(tmp_path):
    words = "Put the files of one lift into it, 40 at most."
    refuses(lambda: read_lift_files(tmp_path), f"{tmp_path.name}: no file lies in this folder. {words}", FieldFileError)
    for number in range(41):
        (tmp_path / f"{number}.csv").touch()
    many = f"{tmp_path.name}: 41 files lie in this folder. {words}"
    refuses(lambda: read_lift_files(tmp_path), many, FieldFileError)
    assert issubclass(FieldSheetError, FieldFileError)
