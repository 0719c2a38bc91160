"""Every page on paper, A4 and Letter: whole, nothing cut at the right, panels as they stand, no panel torn in two."""

import re

import browser
import pytest
from notebook_files import PATHS

from liftcalc.pages.talk.reading import TALK, read_scenes

browser.skip_without_chromium()
browser.leave_to_ci()

MARGIN = 14  # millimetres, as the style sheet of the page has them
PAPER = {"A4": (210, 297), "Letter": (215.9, 279.4)}  # millimetres
OUT = """() => [...document.querySelectorAll('#rendered_cells *')].filter(element => element.checkVisibility()
  && element.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !element.closest('svg *'))
  .map(element => element.outerHTML.slice(0, 200))"""
CUT = """() => [...document.querySelectorAll('#rendered_cells *')].filter(element => element.checkVisibility()
  && !element.closest('svg') && getComputedStyle(element).overflowX !== 'visible'
  && element.scrollWidth > element.clientWidth + 1 && element.clientWidth)
  .map(element => element.outerHTML.slice(0, 200))"""
LEFT = """() => ['.widget-slider', '.widget-upload', '.jupyter-button:not(.can-be-chosen):not(.mod-active)'].flatMap(
  kind => [...document.querySelectorAll(`.liftcalc ${kind}`)]).filter(part => part.checkVisibility())
  .map(part => part.outerHTML.slice(0, 200))"""
BOXES = """() => [...document.querySelectorAll('.liftcalc .widget-text input[type=number]')].filter(
  box => box.parentElement.checkVisibility()).length"""
FOLDED = "() => [...document.querySelectorAll('details:not([open])')].length"
TORN = """() => [...document.querySelectorAll('.liftcalc:not(:has(.liftcalc))')].filter(
  panel => getComputedStyle(panel).breakInside !== 'avoid').length"""


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    """Return what gives the address of a notebook in the app view."""
    with browser.app_view(tmp_path_factory.mktemp("app")) as address:
        yield address


@pytest.mark.parametrize("name", [path.name for path in PATHS if path != TALK])
def test_a_page_is_printed_whole(app, page, name):
    browser.run_in_app(page, app(name))
    page.wait_for_timeout(1500)  # until all panels stand
    for button in page.get_by_role("button", name="Show me", exact=True).all():
        button.press("Enter")
    page.wait_for_timeout(1500)
    boxes, folds = page.evaluate(BOXES), page.evaluate(FOLDED)
    page.emulate_media(media="print")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    for paper, (width, height) in PAPER.items():
        inside = [round((side - 2 * MARGIN) * 96 / 25.4) for side in (width, height)]
        page.set_viewport_size({"width": inside[0], "height": inside[1]})
        page.wait_for_timeout(200)
        assert page.evaluate(OUT) == [], paper
        assert page.evaluate(CUT) == [], paper
        assert page.evaluate(LEFT) == []
        assert page.evaluate(TORN) == 0
        assert page.evaluate(BOXES) == boxes
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    page.evaluate("window.folded = []")
    page.evaluate(f"addEventListener('beforeprint', () => window.folded.push(({FOLDED})()))")
    for paper, (width, height) in PAPER.items():
        inside = [round((side - 2 * MARGIN) * 96 / 25.4) for side in (width, height)]
        page.set_viewport_size({"width": inside[0], "height": inside[1]})
        sheets = len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper, prefer_css_page_size=False)))
        whole = page.evaluate("document.documentElement.scrollHeight") / inside[1]
        print(name, paper, sheets, f"{whole:.1f}")
        assert whole <= sheets <= 1.6 * whole + 2
    assert page.evaluate("window.folded") == [0, 0], "folds print open"
    assert page.evaluate(FOLDED) == folds, "and are shut again"


def test_the_talk_is_printed_two_scenes_a_sheet(app, page):
    page.goto(app(TALK.name), wait_until="domcontentloaded")
    page.locator(".result-TheCost").wait_for(state="attached")
    page.emulate_media(media="print")
    scenes = page.locator("section.scene")
    boxes = [scene.bounding_box() for scene in scenes.all()]
    assert len(boxes) == len(read_scenes(TALK))
    assert len({(box["x"], box["width"], box["height"]) for box in boxes}) == 1
    for paper, (width, _) in PAPER.items():
        assert boxes[0]["width"] <= (width - 2 * 9) * 96 / 25.4, paper
        sheets = len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper, prefer_css_page_size=False)))
        assert sheets == (len(boxes) + 1) // 2, paper
