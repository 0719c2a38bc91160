"""Every page as it is met: read aloud, by keys alone, on a phone, with less motion; the checker of pages finds nothing.

The checker is the npm package axe-core, fetched for the run of these tests and never kept.
"""

import shutil
import subprocess
import time

import browser
import pytest
import reader
from notebook_files import PATHS
from places import DATA

from liftcalc import Q, hourly_capacity, show
from liftcalc.lifts.sheet import read_sheet
from liftcalc.pages.brief import make_brief
from liftcalc.pages.talk.reading import TALK, read_scenes
from liftcalc.pages.talk.stick import stick_html

browser.skip_without_chromium()
browser.leave_to_ci()

SERIOUS = ("serious", "critical")
FOUND = "async () => (await axe.run(document)).violations.map(found => [found.impact, found.id, found.nodes[0].html])"
TRIED = "async () => (await axe.run(document)).passes.map(passed => passed.id)"
NAMELESS = """() => [...document.querySelectorAll('.noUi-handle')].filter(handle =>
  !handle.getAttribute('aria-label') || !/^-?[0-9.]{1,8}( \\S.*)?$/.test(handle.getAttribute('aria-valuetext')))
  .map(handle => handle.outerHTML)"""
UNMARKED = """() => [...document.querySelectorAll('.widget-toggle-buttons button, .can-be-chosen')].filter(button =>
  !['true', 'false'].includes(button.getAttribute('aria-pressed'))).map(button => button.outerHTML)"""
# what stands out at the right or is cut there, unless it stands in a table that scrolls in a box of its own
OUT = """() => {
  const wide = document.documentElement.clientWidth + 1;
  const out = element => element.getBoundingClientRect().right > wide && !element.closest('svg *, table');
  const all = [...document.querySelectorAll('#rendered_cells *')];
  const shown = all.filter(element => element.checkVisibility() && out(element));
  return [document.documentElement.scrollWidth > wide, shown.map(element => element.outerHTML.slice(0, 200))];
}"""
TABLES = """() => [...document.querySelectorAll('table')].filter(table => {
  const box = table.closest('.jp-RenderedHTMLCommon');
  return table.offsetParent && box.scrollWidth > box.clientWidth && getComputedStyle(box).overflowX !== 'auto';
}).map(table => table.textContent)"""


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    """Return what gives the address of a notebook in the app view."""
    with browser.app_view(tmp_path_factory.mktemp("app")) as address:
        yield address


@pytest.fixture(scope="module")
def checker(tmp_path_factory):
    """Return the script of the checker, fetched by npm into a folder that goes."""
    npm = shutil.which("npm")
    assert npm, "CI=true asks for npm: install it, such as Debian's package npm"
    folder = tmp_path_factory.mktemp("checker")
    arguments = [npm, "install", "--no-save", "--no-fund", "--no-audit", "--prefix", str(folder), "axe-core@4"]
    subprocess.run(arguments, check=True, capture_output=True, timeout=300)
    yield (folder / "node_modules/axe-core/axe.min.js").read_text(encoding="utf-8")
    shutil.rmtree(folder)


def open_all(page):
    """Open what waits for a guess."""
    for button in page.get_by_role("button", name="Show me", exact=True).all():
        button.focus()
        page.keyboard.press("Enter")


def check(page, when):
    """Check that nothing serious is found, and print the rest."""
    found = page.evaluate(FOUND)
    print(when, found)
    assert [each for each in found if each[0] in SERIOUS] == [], when
    assert page.evaluate(NAMELESS) == []
    assert page.evaluate(UNMARKED) == []
    assert page.locator("[title=null]").count() == 0


@pytest.mark.parametrize("name", [path.name for path in PATHS if path != TALK])
def test_a_page_fresh_after_moves_and_on_a_phone(app, page, checker, name):
    browser.run_in_app(page, app(name))
    page.wait_for_timeout(1500)  # until all panels stand
    page.evaluate(checker)
    check(page, f"{name} as it comes")
    open_all(page)
    for result in page.locator("[class^=result-]").all():
        panel = result.locator("xpath=ancestor::div[contains(@class, 'liftcalc')][1]")
        panel.locator(".noUi-handle").first.press("ArrowRight")
    units = page.get_by_role("button", name="US units", exact=True)
    if units.count():
        units.first.press("Enter")
    page.wait_for_timeout(1500)
    check(page, f"{name} after moves")
    if "02" in name:
        assert {"image-alt", "link-in-text-block", "aria-input-field-name"} <= set(page.evaluate(TRIED))
    page.set_viewport_size({"width": 390, "height": 844})
    page.wait_for_timeout(300)
    assert page.evaluate(OUT) == [False, []]
    assert page.evaluate(TABLES) == []
    page.wait_for_timeout(500)
    check(page, f"{name} on a phone")
    slider = page.locator(".widget-slider:visible").first
    if slider.count():
        assert slider.bounding_box()["width"] > 350


def test_the_talk_scene_by_scene_live_and_from_a_stick(app, page, checker, tmp_path):
    file = tmp_path / "talk.html"
    file.write_text(stick_html(TALK), encoding="utf-8")
    for address, last in ((app(TALK.name), ".result-TheCost"), (file.as_uri(), "section.scene")):
        page.goto(address, wait_until="domcontentloaded")
        page.locator(last).first.wait_for(state="attached")
        page.wait_for_timeout(1500)
        page.evaluate(checker)
        for number in range(len(read_scenes(TALK))):
            page.keyboard.type(str(number))
            page.keyboard.press("Enter")
            check(page, f"{address.partition('?')[0]} scene {number}")


def test_the_front_page_and_the_brief(app, page, checker):
    page.goto(app("").partition("voila/")[0] + "?" + app("").partition("?")[2], wait_until="domcontentloaded")
    page.get_by_role("heading", name="Where to begin").wait_for()
    page.evaluate(checker)
    check(page, "the front page")
    page.set_content(make_brief(read_sheet(DATA / "hill/1_penny_rope.csv")).html())
    page.evaluate(checker)
    check(page, "the brief")


def top(page):
    """Return how far the page is scrolled, when it has come to rest."""
    before = -1
    while (now := page.evaluate("scrollY")) != before:
        before = now
        time.sleep(0.15)
    return now


def test_wheel_and_page_keys_move_the_page_and_arrows_the_slider(app, page):
    browser.run_in_app(page, app("04_hourly_capacity.ipynb"))
    page.keyboard.press("PageDown")
    assert top(page) > 500, "at once, without a click"
    page.keyboard.press("PageUp")
    assert top(page) == 0
    page.mouse.move(600, 500)
    page.mouse.wheel(0, 400)
    assert top(page) == 400
    speed = reader.handle(page, "Line speed (m/s)").first
    speed.focus()
    before, value = top(page), speed.get_attribute("aria-valuetext")
    page.keyboard.press("PageDown")
    assert top(page) > before + 500
    assert speed.get_attribute("aria-valuetext") == value
    page.keyboard.press("PageUp")
    before = top(page)
    box = reader.number_box(page, "Line speed (m/s)").first
    box.click()
    here = box.bounding_box()
    page.mouse.move(here["x"] + here["width"] / 2, here["y"] + here["height"] / 2)
    page.mouse.wheel(0, 120)
    assert top(page) != before
    assert box.input_value() == "3.4", "the wheel moves no number"
    speed.focus()
    before = top(page)
    for key, said in (("End", "6 m/s"), ("Home", "0.4 m/s"), ("ArrowRight", "0.5 m/s")):
        page.keyboard.press(key)
        assert speed.get_attribute("aria-valuetext") == said
        assert top(page) == before
    page.get_by_role("button", name="US units").first.click()
    box, speed = reader.number_box(page, "Line speed (mph)").first, reader.handle(page, "Line speed (mph)").first
    box.wait_for()
    page.wait_for_timeout(2000)  # until all panels have turned
    speed.focus()
    for key, most in (("End", "13.4"), ("Home", "0.9")):  # the ends of the new range, not of the one it was made with
        page.keyboard.press(key)
        assert speed.get_attribute("aria-valuetext") == f"{most} mph"
        page.wait_for_function("([box, most]) => box.value === most", arg=[box.element_handle(), most])


SAID = """() => {
  const region = document.querySelector('.liftcalc-said');
  window.said = [];
  new MutationObserver(() => said.push(region.textContent)).observe(region, {childList: true});
}"""


def test_a_result_is_said_once_when_the_keys_rest(app, page):
    browser.run_in_app(page, app("04_hourly_capacity.ipynb"))
    page.wait_for_timeout(1500)
    region = page.locator(".liftcalc-said")
    assert region.text_content() == "", "nothing is said of a page that fills by itself"
    assert page.locator(".liftcalc [role=status]:not([aria-live=off])").count() == 0
    page.evaluate(SAID)
    spacing = reader.handle(page, "Spacing (m)").first
    for number in range(6):
        spacing.press("ArrowRight")
        page.wait_for_timeout(120)
        assert page.evaluate("said") == [], number
    page.wait_for_function("said.length > 0")
    page.wait_for_timeout(1500)
    said = page.evaluate("said")
    capacity = hourly_capacity(Q(3.4, "m/s"), Q(7.4, "m"))
    assert len(said) == 1
    assert f": {show(capacity, 'pph')} (ideal)" in said[0]
    assert "line speed" not in said[0].lower(), "what has not changed is not said again"
    box = reader.number_box(page, "Spacing (m)").first
    box.focus()
    for typed, held in (("7,5", "7.5"), ("0,9", "7.5"), ("12,25", "12.25")):
        box.press("Control+a")
        box.press_sequentially(typed)
        box.press("Enter")
        page.wait_for_timeout(1200)
        assert box.input_value() == held
    assert page.evaluate("said.at(-2)").startswith("Spacing: 0.9 m is outside the range of this panel.")
    length = reader.number_box(page, "Spacing (m)").first
    length.press("Control+a")
    length.press_sequentially("1,200")  # as the series writes twelve hundred
    assert length.input_value() == "1.200"
    length.press("Tab")
    page.wait_for_timeout(1200)
    assert page.evaluate("said.at(-1)").startswith("Spacing: 1,200 m is outside")


def test_less_motion(app, chromium):
    context = chromium.new_context(reduced_motion="reduce")
    page = context.new_page()
    page.set_default_timeout(60_000)
    for notebook, idle, picture, moves, running in (
        ("02_spacing.ipynb", "Let the rope run", ".line-view", ".riders", "Stop the rope"),
        ("10_counted_and_ideal.ipynb", "Let it run", ".rope-view", "g[style*=rope-view-run]", "Hold it"),
    ):
        browser.run_in_app(page, app(notebook))
        button = page.get_by_role("button", name=f"{idle} in steps", exact=True)
        button.wait_for()
        riders = page.locator(f"{picture} {moves}").first
        look = "group => [getComputedStyle(group).animationPlayState, getComputedStyle(group).animationTimingFunction]"
        assert "running" not in riders.evaluate(look)[0]
        button.press("Enter")
        page.get_by_role("button", name=running, exact=True).wait_for()
        state, how = page.locator(f"{picture} {moves}").first.evaluate(look)
        assert set(state.split(", ")) == {"running"}
        assert how.startswith("steps(")
    context.close()


def test_a_large_screen_is_used(app, chromium):
    with browser.page_of(chromium, 1920, 1080) as page:
        browser.run_in_app(page, app("09_what_limits_the_lift.ipynb"))
        page.locator(".result-LimitsPanel").wait_for()
        picture = page.locator("svg[role=img]").first
        assert picture.bounding_box()["width"] > 1000
        drawn, still = (
            page.locator(f".widget-gridbox {what}").first.bounding_box() for what in ("svg[role=img]", "img")
        )
        assert drawn == pytest.approx(still, abs=1), "the moving part lies on the still one"
        words = page.locator(".jp-RenderedMarkdown p").first
        assert 900 < words.bounding_box()["width"] < 1200, "type grows, and a line of text is no longer than before"
