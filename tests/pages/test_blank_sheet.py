"""The blank of the sheet of one lift line, printed and as CSV."""

import csv
import html
import re
import subprocess
import sys

import pytest
from places import DATA

from liftcalc.cautions import DEFER, NEAR_THE_ROPE
from liftcalc.fieldwork import COLUMNS
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.sheet import read_sheet, sheet_from_bytes
from liftcalc.pages.blank_sheet import (
    ASKED,
    ASKED_FACTS,
    ASSUMED,
    BOTH,
    HEADING,
    OTHERS,
    all_quantities_csv,
    blank_sheet_csv,
    blank_sheet_html,
    blank_sheet_links,
)
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY, WHO, WHO_IN_BRIEF, name_of, words_of

ROWS = [dict(zip(COLUMNS, row, strict=True)) for row in csv.reader(blank_sheet_csv().splitlines()[1:])]
AT_THE_DESK = ("state", "level_of_spacing")  # facts that nobody reads on a hill
NAMES = [name_of(row["quantity"]) for row in ROWS]
PAGE = blank_sheet_html()
TABLES = PAGE[PAGE.index("<table") :]


def on_paper(part):
    """Return the names of the quantities in a part of the page, in the order in which they stand there."""
    return [name_of(html.unescape(words)) for words in re.findall(r"<b>(.*?)</b>", part)]


def beside(name):
    """Return the words that stand with a quantity, up to its first box."""
    after = TABLES[TABLES.index(f"<b>{words_of(name)}</b>") :]
    return html.unescape(after[: after.index('class="box')])


def test_the_blanks_in_the_folder_are_up_to_date():
    assert (DATA / "field_sheet_blank.csv").read_text(encoding="utf-8") == blank_sheet_csv()
    assert (DATA / "field_sheet_blank.html").read_text(encoding="utf-8") == PAGE


def test_the_same_rows_on_paper_and_in_the_csv_and_then_what_is_assumed():
    assert blank_sheet_csv().splitlines()[0] == ",".join(COLUMNS)
    assert NAMES[: len(FACTS)] == list(FACTS)
    readings = [name for name in on_paper(TABLES) if name not in FACTS]
    assert [*readings, *ASSUMED, *OTHERS] == NAMES[len(FACTS) :]
    assert set(NAMES) == set(ON_A_SHEET)
    assert readings == sorted(set(readings), key=readings.index), "a row once"
    assert set(readings) == {name for name in ON_A_SHEET[len(FACTS) :] if VOCABULARY[name].taken.boxes}
    assert {row["quantity"] for row in ROWS if row["method"] == "assumed"} == set(map(words_of, ASSUMED))
    assert set(map(words_of, ("rider_mass", "snow_friction", "efficiency"))) <= {row["quantity"] for row in ROWS}


def test_every_fact_stands_on_paper_or_is_said_at_the_desk():
    above = PAGE[PAGE.index('<p class="facts">') : PAGE.index("<table")]
    assert on_paper(above) == list(HEADING)
    in_the_tables = [name for name in on_paper(TABLES) if name in FACTS]
    assert sorted([*HEADING, *in_the_tables, *AT_THE_DESK]) == sorted(FACTS)
    for name in (*HEADING, *in_the_tables):
        after = PAGE[PAGE.index(f"<b>{words_of(name)}</b>") + 3 :].partition("<b>")[0]
        assert [each.split(" ")[0] for each in re.findall("<i>(.*?)</i>", after)] == list(VOCABULARY[name].among)
    assert "readiness (place free to away, misses left out)" in TABLES
    assert "starts (from start to start)" in TABLES


@pytest.mark.parametrize("name", [name for name in NAMES if name in on_paper(TABLES) and name not in FACTS])
def test_who_may_take_it_and_how_stand_beside_each(name):
    taken = VOCABULARY[name].taken
    assert [WHO_IN_BRIEF[who] for who in taken.who if WHO_IN_BRIEF[who] not in beside(name)] == []
    assert taken.how in beside(name)


def test_what_the_operator_is_asked_stands_in_a_block_of_its_own():
    block = TABLES[TABLES.index("Ask the operator; do not go in to read these") :]
    assert on_paper(block) == [*ASKED_FACTS, *ASKED]
    alone = {name for name in ON_A_SHEET[len(FACTS) :] if VOCABULARY[name].taken.who == ("asked",)}
    assert not alone & set(on_paper(TABLES)) - set(ASKED)
    assert {"motor_power", "slack_tension", "counterweight", "wrap_angle", "groove_angle", "idle_drag"} <= alone
    assert WHO_IN_BRIEF.keys() == WHO.keys()


def test_a_box_for_each_reading_and_the_units_to_ring():
    for row in re.findall(r"<tr>.*?</tr>", TABLES):
        names = [name for name in on_paper(row) if name not in FACTS]
        if names and VOCABULARY[names[0]].taken.boxes > 1:
            boxes = row.count("<p>") if tuple(names) in BOTH else row.count('<td class="box">')
            assert boxes == VOCABULARY[names[0]].taken.boxes, names
    ringed = "<i>m/s</i><i>mph</i><i>ft/s</i>", "<i>m</i><i>ft</i><i>s</i>", "<i>kW</i><i>hp</i>"
    assert [units for units in ringed if units not in TABLES] == []
    assert TABLES.count("<u></u>persons<br>in <u></u>min") == 3


def test_the_cautions_stand_first_and_no_outside_file_is_asked_for():
    page = html.unescape(re.sub("</?strong>", "**", PAGE))
    places = [page.index(text) for text in (*NEAR_THE_ROPE, DEFER)]
    assert places == sorted(places)
    assert places[-1] < page.index("<table")
    assert not re.search(r"(src|href)=|https?:|url\(", PAGE)
    assert [words_of(name) for name in ASSUMED if f"<b>{words_of(name)}</b>" in PAGE] == [], "no guess on paper"


def test_the_blank_reads_as_a_blank():
    sheet = read_sheet(DATA / "field_sheet_blank.csv")
    assert (sheet.facts, sheet.readings) == ({}, ())


def test_the_blank_reads_when_it_is_filled():
    lines = [",".join(COLUMNS)]
    for row in ROWS:
        word = VOCABULARY[name_of(row["quantity"])]
        filled = (word.among or ("2026-02-14",))[0] if word.taken is None else _believed(word, row["unit"])
        if word.words != "kind":
            method = "ideal" if word.words == "hourly capacity" else row["method"]
            lines.append(",".join([word.words, filled, row["unit"], "", method, ""]))
    sheet = sheet_from_bytes("filled.csv", "\n".join(lines).encode())
    assert [reading.name for reading in sheet.readings] == NAMES[len(FACTS) :]
    assert set(sheet.assumed) == set(ASSUMED)
    assert [row["note"].split(" or ") for row in ROWS if row["quantity"] == "kind"] == [list(KINDS)]


def _believed(word, unit):
    """Return a number that is believed of a quantity, in the unit of its row."""
    middle = (word.taken.least * word.taken.most) ** 0.5 if word.taken.least else 1
    middle *= {"min": 1 / 60, "%": 100}.get(unit, 1)
    return f"{round(middle) if word.whole else middle:.6g}"


def test_the_blanks_are_written_by_one_command(tmp_path):
    subprocess.run([sys.executable, "-m", "liftcalc.pages.blank_sheet", str(tmp_path)], check=True, timeout=60)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["field_sheet_blank.csv", "field_sheet_blank.html"]


def test_the_links_hold_the_files_themselves():
    links = blank_sheet_links()
    assert links._repr_html_().count("download=") == 3
    assert 'href="data:text/csv;base64,' in links._repr_html_()
    assert [line.partition(":")[0] for line in repr(links).splitlines()] == [
        "field_sheet_blank.html",
        "field_sheet_blank.csv",
        "what_a_sheet_may_hold.csv",
    ]
    held = list(csv.DictReader(all_quantities_csv().splitlines()))
    assert [row["quantity"] for row in held] == [words_of(name) for name in ON_A_SHEET]
    assert held[-1]["believed from and to"] == "1 to 5"
