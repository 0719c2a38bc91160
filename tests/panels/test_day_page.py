"""A page of one lift and its day: files by the button, told apart by their headings, and never mixed between lifts."""

import pytest
from reading_panels import bring

from liftcalc.lifts.demo_hill import DATA
from liftcalc.panels import DayPage, DisturbedLine, FourFigures, LoadingDayPanel
from liftcalc.simulation.day_answers import answers_of_a_day, days_in_words, short_counts
from liftcalc.simulation.day_words import losses_table
from liftcalc.simulation.second_telling import two_tellings

FILES = {
    "sheet": DATA / "hill/1_penny_rope.csv",
    "riders": DATA / "days/penny_rope_classes.csv",
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
        "In order: my_sheet.csv (the sheet of the lift). Still to come: the table of riders and the rest of the day."
        in said
    )
    assert BEGIN in said, "until it is complete the page stays with what it had"
    assert page.value.line.name == "Penny Rope"
    come(page, "riders")
    said = come(page, "day")
    assert "This page speaks of Wren Rope" in said
    assert "no count" in said, "a count of another lift is never held against this one"
    four, stair = page.own_panels
    assert four.panel.table.caption == "Four figures of Wren Rope"
    assert stair.panel.counts is None
    assert "the count my_count.csv" in come(page, "count")
    assert four.panel.table.rows[-1][1] == "996 pph"


def test_another_sheet_begins_anew(page):
    come(page, "sheet", "riders", "day", "count")
    assert page.value.counts is not None
    said = come(page, "sheet")
    assert "the count my_count.csv" in said, "a mended sheet of the same lift keeps the other files"
    OWN["other"] = ("other.csv", OWN["sheet"][1].replace("Wren Rope", "Owl Rope"))
    assert "Still to come: the table of riders and the rest of the day." in come(page, "other")


def test_a_faulty_file_is_told_and_what_was_read_stays(page):
    right = OWN["riders"]
    try:
        OWN["riders"] = ("my_riders.csv", right[1].replace("45 %", "65 %"))
        assert "add up to 120 %" in come(page, "sheet", "riders", "day")
        assert page.value.line.name == "Penny Rope"
    finally:
        OWN["riders"] = right
    assert "This page speaks of Wren Rope" in come(page, "riders"), "the other two need not come again"


def test_what_is_in_order_stays_whatever_is_wrong_with_the_others(page):
    OWN["bad count"] = ("bad.csv", OWN["count"][1].replace("stop_seconds", "stop"))
    said = come(page, "sheet", "bad count", "day")
    assert (
        "bad.csv, row 1: 'stop' is no column of a count minute by minute. Is 'stop_seconds' meant? Write: from," in said
    )
    assert "In order: my_sheet.csv (the sheet of the lift) and my_day.csv (the rest of the day). Still to come:" in said
    assert "the table of riders." in said
    assert "This page speaks of Wren Rope" in come(page, "riders")


def test_what_no_file_of_a_day_looks_like_and_two_of_one_sort(page):
    OWN["note"] = ("note.csv", "a,b\n1,2\n")
    assert "note.csv, row 1: no heading of a file of a day. Write one of: " in come(page, "note")
    OWN["again"] = ("again.csv", OWN["day"][1])
    assert "again.csv and my_day.csv are both the rest of the day. Bring one of the two." in come(page, "day", "again")


def test_a_chair_with_its_parties_has_its_figures_and_its_losses_and_says_what_is_not_told_of_it(page):
    days = DATA / "days"
    chair = (DATA / "hill/4_lantern_double.csv", days / "lantern_double_parties.csv", days / "lantern_double_day.csv")
    losses = page.show(lambda read: losses_table(read.day, days=3))
    told = page.show(lambda read: two_tellings(read.day)), page.show(lambda read: answers_of_a_day(read.day))
    line = page.picture(DisturbedLine)
    bring(page.own_button, *chair)
    assert page.own_button.words() == (
        "This page speaks of Lantern Double, a fixed chair: 4_lantern_double.csv, 4 sizes of parties, a day of 7 h, "
        "and no count."
    )
    four, stair = page.own_panels
    assert four.panel.table.rows[1][1] == "1,029 pph"
    assert "misloads" in losses.words()
    assert stair.trouble.startswith("Lantern Double is a fixed chair, whose carriers come by a clock of their own.")
    assert line.trouble.startswith("Lantern Double is a fixed chair: its carriers come by the clock, whoever misses.")
    assert {part.words() for part in told} == {
        "This is told of lifts that riders grab, or step on, at any time: not of carriers."
    }
    OWN["tow"] = ("riders.csv", (days / "penny_rope_classes.csv").read_text(encoding="utf-8"))
    bring(page.own_button, chair[0], chair[2])
    assert "riders.csv, row 1: the column 'party' is missing" in come(page, "tow")


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
