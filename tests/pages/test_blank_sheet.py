"""The printable blank of the field sheet."""

import csv
import re
import subprocess
import sys

from places import DATA

from liftcalc.cautions import DEFER, NEAR_THE_ROPE
from liftcalc.fieldwork import COLUMNS, FIELD_QUANTITIES
from liftcalc.pages.blank_sheet import blank_sheet_csv, blank_sheet_html, blank_sheet_links


def test_the_blanks_are_up_to_date_and_hold_every_row():
    assert (DATA / "field_sheet_blank.csv").read_text(encoding="utf-8") == blank_sheet_csv()
    assert (DATA / "field_sheet_blank.html").read_text(encoding="utf-8") == blank_sheet_html()
    rows = list(csv.reader(blank_sheet_csv().splitlines()))
    assert tuple(rows[0]) == COLUMNS
    assert [row[0] for row in rows[1:]] == list(FIELD_QUANTITIES)
    assert "**" not in blank_sheet_html()
    page = re.sub("</?strong>", "**", blank_sheet_html())
    assert page.index(NEAR_THE_ROPE[0].replace("'", "&#x27;")) < page.index("<table>")
    printed = [quantity for quantity in FIELD_QUANTITIES if quantity != "pick-up acceleration"]
    for text in (*NEAR_THE_ROPE, DEFER, *printed):
        assert text.replace("'", "&#x27;") in page
    assert "pick-up" not in page, "assumed at the desk, not read on the hill"
    assert not re.search(r"(src|href)=|https?:", page)


def test_the_blanks_are_written_by_one_command(tmp_path):
    subprocess.run([sys.executable, "-m", "liftcalc.pages.blank_sheet", str(tmp_path)], check=True, timeout=60)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["field_sheet_blank.csv", "field_sheet_blank.html"]


def test_the_links_hold_the_files_themselves():
    html = blank_sheet_links()._repr_html_()
    assert html.count("download=") == 2
    assert 'href="data:text/csv;base64,' in html
