"""A sheet given once on the front page, in a real browser: pages take it on, by keyboard it is forgotten again."""

import browser
import pytest
import reader
from places import DATA

from liftcalc.pages.app_view.front_page import front_page_html

browser.skip_without_chromium()
browser.leave_to_ci()

CHAIR, PLATTER = DATA / "hill/4_lantern_double.csv", DATA / "hill/2_long_platter.csv"
TAKEN = "Your sheet 4_lantern_double.csv from this visit."
CUT = """() => [...document.querySelectorAll('body *')].filter(part => part.getBoundingClientRect().width
  && !part.matches('.skip') && part.getBoundingClientRect().right > innerWidth + 1).map(part => part.outerHTML)"""


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    """Return what gives the address of a notebook in the app view."""
    with browser.app_view(tmp_path_factory.mktemp("app")) as address:
        yield address


def front(page, app):
    """Open the front page; a server that has none yet is given it."""
    root, _, secret = app("").partition("voila/render/")
    page.route(root, lambda route: route.fulfill(body=front_page_html(), content_type="text/html; charset=utf-8"))
    page.goto(root + secret)


def press(page, name):
    """Press a button by keyboard."""
    page.get_by_role("button", name=name, exact=True).focus()
    page.keyboard.press("Enter")


def test_a_sheet_is_given_once_taken_on_by_every_page_and_forgotten(app, page, tmp_path):
    front(page, app)
    empty = tmp_path / "empty.csv"
    empty.touch()
    page.get_by_label("Your own sheets (CSV)").set_input_files([PLATTER, CHAIR, empty])
    page.get_by_text("empty.csv is empty. It was not taken.").wait_for()
    press(page, "Forget 2_long_platter.csv")
    page.get_by_role("button", name="Forget 2_long_platter.csv").wait_for(state="detached")
    page.get_by_role("link", name="09 What limits the lift").first.click()
    page.get_by_text(TAKEN).wait_for()
    page.locator("svg").get_by_text("Lantern Double: spacing governs").wait_for()
    for part in (".visit-hears", ".visit-tells"):
        assert not page.locator(part).is_visible()
        assert page.locator(part).get_by_role("textbox").count() == 0, "hidden for a screen reader too"
    assert "lab-only" not in page.content()
    assert "Run All Cells" not in page.inner_text("body")
    # a file brought on a page stays as well, and the newest is taken
    page.goto(app("08_pull_and_power.ipynb"))
    page.get_by_text(TAKEN).wait_for()
    reader.bring(page, PLATTER, "Your own sheet (CSV)")
    page.get_by_text("Your sheet 2_long_platter.csv from this visit.").wait_for()
    page.goto(app("00_start_here.ipynb"))
    page.get_by_text("Your sheet 2_long_platter.csv from this visit.").wait_for()
    bad = tmp_path / "bad.csv"
    bad.write_text("quantity,value,unit\nline speed,quick,m/s\n", encoding="utf-8")
    reader.bring(page, bad, "Your own sheet (CSV)")
    page.get_by_text("bad.csv").first.wait_for()
    press(page, "Back to the demo")
    page.get_by_text("This page speaks of Penny Rope").wait_for()
    assert not page.get_by_role("button", name="Back to the demo").is_visible()
    page.reload()
    page.get_by_text("This page speaks of Penny Rope").wait_for()
    assert page.evaluate("sessionStorage.length") == 0
    front(page, app)
    assert page.get_by_text("Kept for this visit").count() == 0
    assert browser.asked_outside(page) == []


@pytest.mark.parametrize("size", [(390, 844), (1280, 720), (1920, 1080)], ids=str)
def test_nothing_of_the_front_page_is_cut_and_it_prints_on_one_sheet(chromium, app, size):
    with browser.page_of(chromium, *size) as page:
        front(page, app)
        page.get_by_label("Your own sheets (CSV)").set_input_files(CHAIR)
        page.get_by_text("Kept for this visit:").wait_for()
        assert page.evaluate(CUT) == []
        for paper in ("A4", "Letter"):
            assert page.pdf(format=paper).count(b"/Type /Page\n") == 1
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.href").endswith("#begin")


def test_the_blank_is_printed_from_the_page(page, app):
    page.add_init_script("window.print = () => { top.printed = document.title; };")
    front(page, app)
    press(page, "Print the blank")
    page.wait_for_function("window.printed === 'Field sheet for one lift line'")
