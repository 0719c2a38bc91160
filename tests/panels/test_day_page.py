"""A page of one lift and its day: files by the button, told apart by their headings, and never mixed between lifts."""

import pytest
from reading_panels import bring

from liftcalc.lifts.demo_hill import DATA
from liftcalc.panels import DayPage, FourFigures, LoadingDayPanel
from liftcalc.simulation.day_answers import answers_of_a_day, days_in_words, short_counts

FILES = {
    "sheet": DATA / "hill/1_penny_rope.csv",
    "classes": DATA / "days/penny_rope_classes.csv",
    "day": DATA / "days/penny_rope_day.csv",
    "count": DATA / "days/penny_rope_count.csv",
}
OWN = {sort: (f"my_{sort}.csv", path.read_text(encoding="utf-8")) for sort, path in FILES.items()}
OWN["sheet"] = ("my_sheet.csv", OWN["sheet"][1].replace("Penny Rope", "Wren Rope"))


@pytest.fixture
def page():
    """Return a page with its button and two panels."""
    page = DayPage(*FILES.values())
    page.own_button = page.button()
    page.own_panels = page.picture(FourFigures), page.lift_panel(LoadingDayPanel)
    return page


def come(page, *sorts):
    """Bring some of the own files by the button; return what is said then."""
    bring(page.own_button, *[(name, text.encode()) for name, text in (OWN[sort] for sort in sorts)])
    return page.own_button._said.value.replace("&#x27;", "'")


BEGIN = "This page speaks of Penny Rope, a rope tow: 1_penny_rope.csv, 3 classes of riders, a day of 7 h, and the count"


def test_files_of_ones_own_one_after_another(page):
    assert page.own_button.words() == f"{BEGIN} penny_rope_count.csv."
    said = come(page, "sheet")
    assert (
        "Read: my_sheet.csv (the sheet of the lift). Still to come: the classes of riders and the rest of the day."
        in said
    )
    assert BEGIN in said, "until it is complete the page stays with what it had"
    assert page.value.line.name == "Penny Rope"
    come(page, "classes")
    said = come(page, "day")
    assert "This page speaks of Wren Rope" in said
    assert "no count" in said, "a count of another lift is never held against this one"
    four, stair = page.own_panels
    assert four.panel.table.caption == "Four figures of Wren Rope"
    assert stair.panel.counts is None
    assert "the count my_count.csv" in come(page, "count")
    assert four.panel.table.rows[-1][1] == "996 pph"


def test_another_sheet_begins_anew(page):
    come(page, "sheet", "classes", "day", "count")
    assert page.value.counts is not None
    assert "Still to come: the classes of riders and the rest of the day." in come(page, "sheet")


def test_a_faulty_file_is_told_and_what_was_read_stays(page):
    right = OWN["classes"]
    try:
        OWN["classes"] = ("my_classes.csv", right[1].replace("45 %", "65 %"))
        assert "add up to 120 %" in come(page, "sheet", "classes", "day")
        assert page.value.line.name == "Penny Rope"
    finally:
        OWN["classes"] = right
    assert "This page speaks of Wren Rope" in come(page, "classes"), "the other two need not come again"


def test_what_no_file_of_a_day_looks_like_and_two_of_one_sort(page):
    OWN["note"] = ("note.csv", "a,b\n1,2\n")
    assert "note.csv, row 1: no heading of a file of a day. Write one of: " in come(page, "note")
    OWN["again"] = ("again.csv", OWN["day"][1])
    assert "again.csv and my_day.csv are both the rest of the day. Bring one of the two." in come(page, "day", "again")


def test_words_of_a_day_follow_its_numbers():
    day = DayPage(*FILES.values()).value.day
    lines = answers_of_a_day(day, days=6).lines
    assert len(lines) == 4
    calm = day.with_causes(())
    assert answers_of_a_day(calm, days=3).lines[0].startswith("1. 0 pph come back, and misses took 0 pph")
    assert "Nobody is dropped: riders stay on." in answers_of_a_day(calm, days=3).lines[2]
    assert short_counts(calm, days=3).lines[0].startswith("On 3 such days 100 of 100 counts of two minutes meet")
    assert days_in_words(day.with_causes(("uneven starts",)), days=3) != days_in_words(day, days=3)
    assert days_in_words(day, days=3).lines[0].startswith("worst of 3 days: ")
