"""The browser itself, and the blank of the field sheet in print."""

import re
import subprocess

import browser
from notebook_files import NOTEBOOKS

browser.skip_without_chromium()


def test_there_is_a_browser_where_it_is_asked_for():
    assert browser.chromium(), "CI=true asks for a Chromium: install one, such as Debian's package chromium"


def test_the_printed_blank_is_one_page(tmp_path):
    blank = NOTEBOOKS.parent / "data/field_sheet_blank.html"
    printed = tmp_path / "blank.pdf"
    arguments = ["--headless", *browser.ARGUMENTS, f"--user-data-dir={tmp_path / 'profile'}", "--no-pdf-header-footer"]
    subprocess.run(
        [browser.chromium(), *arguments, f"--print-to-pdf={printed}", blank.as_uri()],
        check=True, capture_output=True, timeout=90,
    )  # fmt: skip
    pages = re.findall(rb"/Type\s*/Page\b", printed.read_bytes())
    assert len(pages) == 1
