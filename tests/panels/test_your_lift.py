"""The page of one lift and all its files: one button, each file to be taken out again, parts that follow or say why."""

import pytest
from places import DATA
from reading_panels import bring

from liftcalc import Q
from liftcalc.panels import (
    AgreementOfFiles,
    CountedMinutes,
    LimitsAndCount,
    LimitsPanel,
    NumberPrediction,
    YourLiftPage,
)
from liftcalc.panels.visit import files_in
from liftcalc.simulation import lift_words as words

OWN = DATA / "own_lift"
FIRST = "As an example this page speaks of Long Platter, a platter lift: 8 files."
HEADING = b"quantity,value,unit,plus_minus,method,note\n"
WREN = HEADING + b"lift,Wren Chair,,,,\nkind,fixed chair,,,,\nline speed,2.2,m/s,0.1,,\nloading time,7,s,0.5,,\n"


@pytest.fixture(scope="module")
def read_once():
    """Return the files of the folder, read once."""
    return YourLiftPage(OWN).value


@pytest.fixture
def page(read_once, monkeypatch):
    """Return the page with its button and a table."""
    monkeypatch.setattr("liftcalc.panels.your_lift.read_lift_files", lambda folder: read_once)
    page = YourLiftPage(OWN)
    page.own_button = page.button()
    page.came = page.show(words.what_came)
    return page


def said(page):
    return page.own_button._said.value.replace("&#x27;", "'")


def offered(page):
    return [button.description for button in page.own_button._files.children]


def press(page, words):
    next(button for button in page.own_button._files.children if button.description.startswith(words)).click()


def come(page, *files):
    bring(page.own_button, *files)
    return said(page)


def test_the_page_begins_with_its_example_and_offers_each_file_to_be_taken_out(page):
    assert page.own_button.words() == FIRST
    assert offered(page)[0] == "Take out long_platter_sheet.csv"
    assert len(offered(page)) == 9
    assert page.own_button.back.layout.display == "none"
    assert page.own_button.upload.accept == ".csv,.gpx,.kml,.geojson,.json"


def test_the_first_file_of_ones_own_puts_the_example_away(page):
    bars, speeds = page.picture(LimitsAndCount), page.picture(lambda read: AgreementOfFiles(words.speeds(read)))
    assert "limit: spacing: 514 pph governs" in bars.words()
    assert "counted, clean: 463 pph" in bars.words()
    assert speeds.panel.picture.chart.title.get_text() == "The line speed: 3 ways, and they agree"
    assert "This page speaks of Wren Chair, a fixed chair: 1 file." in come(page, ("wren.csv", WREN))
    for part in (bars, speeds, page.came):
        assert "Platter" not in part.words()
    assert "nothing is there to hold it against" in speeds.words()
    come(page, OWN / "long_platter_laps.csv")
    assert offered(page) == ["Take out wren.csv", "Take out long_platter_laps.csv"]
    page.own_button.back.click()
    assert page.own_button.words() == FIRST


def test_a_file_is_taken_out_and_all_parts_follow(page):
    bars, minutes = page.picture(LimitsAndCount), page.picture(CountedMinutes)
    press(page, "Take out long_platter_count")
    assert "7 files" in said(page)
    assert "counted" not in bars.words()
    assert minutes.words().startswith("No count of Long Platter came.")
    assert "not there" in page.came.words()
    press(page, "Take out long_platter_sheet")
    assert "a lift whose sheet did not come" in said(page)
    assert bars.words().startswith("The sheet of the lift did not come. It would give the limits,")


def test_words_on_the_example_go_with_it(page):
    told = page.about_example("Of the platter.")
    assert told.words() == "Of the platter."
    come(page, ("wren.csv", WREN))
    assert told.words() == ""
    page.own_button.back.click()
    assert told.words() == "Of the platter."


def test_swapped_and_back(page):
    bars = page.picture(LimitsAndCount)
    press(page, "Swap the sheets: the other files are of Penny Rope")
    assert "speaks of Penny Rope, a rope tow: 8 files" in said(page)
    assert "limit: loading: 1,200 pph governs" in bars.words()
    press(page, "Swap the sheets: the other files are of Long Platter")
    assert "limit: spacing: 514 pph governs" in bars.words()


def test_a_bad_file_is_told_and_the_rest_stays(page):
    told = come(page, ("wren.csv", WREN), ("bad.csv", b"lap,seconds\n1,soon\n"))
    assert "speaks of Wren Chair" in told
    assert "Left out: bad.csv, row 2, column seconds:" in told
    told = come(page, ("worse.csv", b"<script>alert(1)</script>"))
    assert "worse.csv: this is neither a track (GPX) nor a map line (KML)." in told
    assert "speaks of Wren Chair" in told, "where none is in order all stays as it was"
    assert "<script" not in come(page, ("<script>.csv", b"<script>"))
    assert "bad.csv" not in come(page, ("bad.csv", b"lap,seconds\n1,50\n")), "mended"


def test_the_guess_speaks_of_the_lift_that_came_or_says_why_not(page):
    reasons = {"lower": "L.", "near": "N.", "higher": "H."}
    bars = page.picture(LimitsAndCount)
    guess = NumberPrediction("How many?", lambda: words.at_most(page.value).value, reasons, bars, most=Q(8000, "pph"))
    guess.choose(Q(514, "pph"))
    assert guess.reply == "You said 514 pph. It is 514 pph. N."
    press(page, "Take out long_platter_sheet")
    guess.choose(Q(514, "pph"))
    assert guess.reply.startswith("The sheet of the lift did not come.")


def test_the_panel_holds_both_lifts_and_follows(page):
    panel = page.panel(LimitsPanel)
    assert list(panel.panel.hill.lines) == ["Long Platter", "Penny Rope"]
    assert str(panel.panel.result) == "514 pph (governed)"
    press(page, "Take out penny_rope_sheet")
    assert list(panel.panel.hill.lines) == ["Long Platter"]
    come(page, ("wren.csv", WREN))
    assert panel.trouble.startswith("wren.csv: there is no line without spacing and ridden length")


def test_the_files_of_a_visit(page):
    sheet, laps, chair = ((path.name, path.read_bytes()) for path in (
        OWN / "penny_rope_sheet.csv", OWN / "long_platter_laps.csv", DATA / "hill/4_lantern_double.csv"
    ))  # fmt: skip
    other = ("mine.csv", b"party,cost\n1,2\n")
    read, faults = page.of_visit([sheet, laps, other, chair])
    assert faults == []
    assert (read.sheet.title, read.made("second").title) == ("Lantern Double", "Penny Rope"), "the newest counts"
    assert list(read.came) == ["sheet", "laps", "second"]
    page.take(read)
    assert page.in_order([], read)[-1][0] == "4_lantern_double.csv", "kept as the newest"
    again, _ = page.of_visit(page.in_order([], read))
    assert list(again.came) == list(read.came)
    assert page.own_files() == ["4_lantern_double.csv", "long_platter_laps.csv", "penny_rope_sheet.csv"]
    assert page.of_visit([other]) == (None, [])
    assert page.in_order([other], None) == []
    assert files_in('{"files": []}') == []
