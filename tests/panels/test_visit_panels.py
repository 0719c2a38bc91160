"""Own files of one visit: they come after the page has run, stay when it is left, and are forgotten when asked."""

import base64
import html
import json
import re

import pytest
from places import DATA
from reading_panels import bring

from liftcalc.fieldwork import summary as sheet_summary
from liftcalc.panels import DayPage, HillPage, SheetPage
from liftcalc.panels.visit import files_in

PENNY, PLATTER, CHAIR = (
    DATA / "hill" / f"{name}.csv" for name in ("1_penny_rope", "2_long_platter", "4_lantern_double")
)
DAYS = DATA / "days"
BAD = ("bad.csv", b"quantity,value,unit\nline speed,quick,m/s\n")


def message(*files):
    """Return what the script of the app view says: the files of the visit, the newest last."""
    came = [file if isinstance(file, tuple) else (file.name, file.read_bytes()) for file in files]
    return json.dumps({"files": [{"name": name, "content": base64.b64encode(raw).decode()} for name, raw in came]})


def told(button):
    """Return what the page tells the script."""
    return json.loads(html.unescape(re.search(r'data-says="([^"]*)"', button.visit.tells.value)[1]))


def kept(button):
    """Return the names and bytes of the files that the script is to keep."""
    return [(file["name"], base64.b64decode(file["content"])) for file in told(button)["keep"]]


def day_page():
    return DayPage(PENNY, DAYS / "penny_rope_classes.csv", DAYS / "penny_rope_day.csv")


def test_without_the_script_nothing_is_sent_and_nothing_changes():
    button = SheetPage(PENNY).button()
    bring(button, CHAIR)
    assert button.visit.tells.value == ""
    assert button.back.layout.display == "none"
    assert button.words() == "This page speaks of Lantern Double, a fixed chair: 4_lantern_double.csv, 14 readings."


def test_the_newest_sheet_is_taken_on_and_a_button_leads_back():
    page = SheetPage(PENNY)
    button = page.button()
    demo = button.words()
    button.visit.hears.value = message()
    assert (button.words(), button.back.layout.display) == (demo, "none"), "nothing was kept"
    button.visit.hears.value = message(PLATTER, CHAIR)
    assert button.words().splitlines() == [
        "Your sheet 4_lantern_double.csv from this visit.",
        "This page speaks of Lantern Double, a fixed chair: 4_lantern_double.csv, 14 readings.",
    ]
    assert button.back.layout.display == ""
    button.back.click()
    assert told(button) == {"forget": True}
    assert (button.words(), button.back.layout.display) == (demo, "none")
    assert page.value is page.first


def test_what_came_by_the_button_is_kept_for_the_visit():
    button = SheetPage(PENNY).button()
    button.visit.hears.value = message()
    in_time = []
    button._page.show(lambda sheet: in_time.append(button.visit.tells.value) or sheet_summary(sheet))
    bring(button, CHAIR)
    assert "keep" in in_time[-1], "before the page shows it: a reader in a hurry leaves as soon as it does"
    assert kept(button) == [(CHAIR.name, CHAIR.read_bytes())]
    assert button.words().startswith("Your sheet 4_lantern_double.csv from this visit.")
    before = button.visit.tells.value
    bring(button, BAD)
    assert button.visit.tells.value == before, "what cannot be read is not kept, and takes nothing away"
    assert "bad.csv" in button.still()
    assert "Lantern Double" in button.still()


def test_a_bad_sheet_of_the_visit_says_why_and_the_one_before_is_taken():
    page = SheetPage(PENNY)
    button = page.button()
    button.visit.hears.value = message(BAD)
    assert "bad.csv" in button.still()
    assert page.value is page.first
    button.visit.hears.value = message(CHAIR, BAD)
    assert "bad.csv" in button.still()
    assert page.value.title == "Lantern Double"


def test_tables_of_a_day_are_no_sheet():
    page = SheetPage(PENNY)
    button = page.button()
    button.visit.hears.value = message(CHAIR, DAYS / "penny_rope_classes.csv", DAYS / "penny_rope_count.csv")
    assert page.value.title == "Lantern Double"
    assert "classes" not in button.still()


def test_a_hill_takes_all_sheets_and_its_panel_begins_with_the_newest(tmp_path):
    (tmp_path / PENNY.name).write_bytes(PENNY.read_bytes())
    page = HillPage(tmp_path)
    button = page.button()
    button.visit.hears.value = message(PLATTER, BAD, CHAIR)
    assert list(page.value.lines) == ["Penny Rope", "Lantern Double", "Long Platter"]
    assert page.newest == "Lantern Double"
    said = button.words()
    assert said.startswith("Your sheets 4_lantern_double.csv and 2_long_platter.csv from this visit.")
    assert "Left out: bad.csv" in said
    bring(button, DATA / "hill/3_duckling_belt.csv", BAD)
    assert [name for name, _ in kept(button)] == ["3_duckling_belt.csv"]
    button.back.click()
    assert (list(page.value.lines), page.newest) == (["Penny Rope"], None)


def test_a_day_waits_for_what_is_still_to_come():
    page = day_page()
    button = page.button()
    button.visit.hears.value = message(CHAIR, BAD)
    assert (
        "In order: 4_lantern_double.csv (the sheet of the lift). Still to come: the table of riders" in button.still()
    )
    assert "bad.csv, " in button.still(), "a newer file that is wrong takes nothing away"
    assert page.value is page.first
    bring(button, DAYS / "lantern_double_parties.csv")
    assert [name for name, _ in kept(button)] == ["lantern_double_parties.csv"], "kept while it waits"
    bring(button, DAYS / "lantern_double_day.csv")
    assert page.value.sheet.title == "Lantern Double"
    assert button.words().startswith(
        "Your files 4_lantern_double.csv, lantern_double_parties.csv and lantern_double_day"
    )
    button.back.click()
    assert page.value is page.first
    bring(button, DAYS / "lantern_double_day.csv")
    assert "Still to come: the sheet of the lift and the table of riders" in button.still(), "nothing waits any more"


def test_both_ends_of_the_line_are_hidden():
    button = SheetPage(PENNY).button()
    assert {widget.layout.display for widget in button.visit.widgets} == {"none"}


@pytest.mark.parametrize(
    "text",
    ["", "[]", "{}", "3,4", '{"files": 3}', '{"files": [{"name": "a.csv"}]}',
     '{"files": [{"name": 1, "content": "?"}]}', "[" * 100_000, " " * 8_000_001],
    ids=range(9),
)  # fmt: skip
def test_what_is_no_message_of_the_script_is_passed_over(text):
    assert files_in(text) is None
