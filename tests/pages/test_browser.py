"""The browser itself, and the blank of the field sheet in print."""

import re

import browser
from notebook_files import NOTEBOOKS

browser.skip_without_chromium()


def test_there_is_a_browser_where_it_is_asked_for():
    assert browser.chromium(), "CI=true asks for a Chromium: install one, such as Debian's package chromium"


LOOK = """() => {
  const millimetres = element => element.getBoundingClientRect().height * 25.4 / 96;
  const cells = [...document.querySelectorAll('th, td, .facts span, .both p, .cautions')];
  return {
    low: [...document.querySelectorAll('tbody tr')].filter(row => millimetres(row) < 7.99).map(row => row.innerText),
    clipped: cells.filter(cell => cell.scrollWidth > cell.clientWidth + 1).map(cell => cell.innerText),
  };
}"""
PAPER = {"A4": 210, "Letter": 215.9}  # width in millimetres


def test_the_printed_blank_is_one_page_on_either_paper_with_room_to_write():
    with browser.page() as opened:
        opened.emulate_media(media="print")
        opened.goto((NOTEBOOKS.parent / "data/field_sheet_blank.html").as_uri())
        for paper, width in PAPER.items():
            opened.set_viewport_size({"width": round((width - 20) * 96 / 25.4), "height": 1000})
            assert opened.evaluate(LOOK) == {"low": [], "clipped": []}, paper
            pages = re.findall(rb"/Type\s*/Page\b", opened.pdf(format=paper))
            assert len(pages) == 1, paper
