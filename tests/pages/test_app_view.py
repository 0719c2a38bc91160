"""The app view in a real browser: move sliders by keyboard, answer, bring a track, follow a link; no code shows."""

import browser
import pytest
import reader
from places import DATA

from liftcalc import Q, hourly_capacity, show
from liftcalc.fieldwork import read_track, read_track_speed
from liftcalc.uncertainty import show_with_doubt

browser.skip_without_chromium()


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Return the folder of the app view."""
    return tmp_path_factory.mktemp("app")


@pytest.fixture(scope="module")
def app(folder):
    """Return what gives the address of a notebook in the app view; answers are to stay out of the folder."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("LIFTCALC_RECORDS", str(folder / "my_records"))
        with browser.app_view(folder) as address:
            yield address


def own_sheets(page, folder):
    """Bring a sheet with two faults, and the same mended: the whole page speaks of it, whatever encoding it has."""
    mine = folder / "mein_lift.csv"
    rows = ["quantity;value;unit;plus_minus;method;note", "line;Mühlhang;;;;", "kind;T-bar lift;;;;"]
    rows += ["Line Speed;9,36;km/h;0,2;;", "interval;7;s;;;", "persons per carrier;2;person;;;"]
    mine.write_text("\r\n".join([*rows, "ridden length;~600;m;;;", "date;14.2.2026;;;;"]), encoding="cp1252")
    reader.bring(page, mine, "Your own sheet (CSV)")
    page.get_by_text("mein_lift.csv: 2 cells cannot be read.").wait_for()
    page.get_by_text("Row 7, column value: '~600': write the number alone, 600,").wait_for()
    page.get_by_text("Write 2026-02-14.").wait_for()
    page.get_by_text(
        "This page speaks of Penny Rope, a rope tow"
    ).wait_for()  # the message, and of what it still speaks
    mine.write_text("\r\n".join([*rows, "ridden length;600;m;;;", "date;2026-02-14;;;;"]), encoding="cp1252")
    reader.bring(page, mine, "Your own sheet (CSV)")
    page.get_by_text("This page speaks of Mühlhang, a T-bar lift: mein_lift.csv, 4 readings.").wait_for()
    page.get_by_text("Read as Windows-1252 with semicolons and decimal commas.").wait_for()
    page.locator(".result-StartPanel").get_by_text("1,029 pph (ideal)", exact=True).wait_for()
    page.get_by_text("1. How long until the next carrier? 7.0 s: the interval was timed.").wait_for()
    for demo in ("head count", "33 persons in 2.0 min"):
        assert page.locator(".page-part").get_by_text(demo, exact=True).count() == 0


def test_the_first_page_shows_no_code_and_leads_on(app, page, tmp_path):
    browser.run_in_app(page, app("00_start_here.ipynb"))
    page.keyboard.press("PageDown")  # moves the page at once, without a click
    page.wait_for_function("scrollY > 500")
    assert page.locator(".jp-InputArea .cm-editor, .jp-CodeCell .jp-InputArea-editor, pre code").count() == 0
    assert "SheetPage(" not in page.content()
    assert page.get_by_role("link", name="All pages").get_attribute("href") == "/"
    reader.check_start_page(page)
    own_sheets(page, tmp_path)
    # another page of the series is one link away, and its charts move
    page.get_by_role("link", name="04 Hourly capacity").click()
    status = page.locator(".result-CapacityPanel")
    status.get_by_text("1,800 pph (ideal)", exact=True).wait_for()
    speed = reader.handle(page, "Line speed (m/s)").first
    speed.press("ArrowRight")
    capacity = hourly_capacity(Q(3.5, "m/s"), Q(6.8, "m"))
    status.get_by_text(f"{show(capacity, 'pph')} (ideal)", exact=True).wait_for()
    page.locator("svg").get_by_text(show(capacity, "pph"), exact=True).first.wait_for()
    assert browser.asked_outside(page) == []


@browser.in_ci
def test_exercises(app, page, folder):
    browser.run_in_app(page, app("02_spacing.ipynb"))
    page.get_by_text("The printed numbers: 0 of").wait_for()
    reader.check_exercises(page)
    assert browser.asked_outside(page) == []
    assert not (folder / "my_records").exists(), "the app view keeps answers in memory"


@browser.in_ci
def test_a_track_of_ones_own(app, page, tmp_path):
    """Move the steady part by keyboard, bring a track of one's own, and a file that is none."""
    browser.run_in_app(page, app("05_measuring_on_the_hill.ipynb"))
    status = page.locator(".result-TrackPanel")
    found = read_track_speed(read_track(DATA / "penny_rope_track.gpx"), start=44, end=76)
    speed = show_with_doubt(found.speed, found.speed_half_width_95)
    status.get_by_text(speed, exact=True).wait_for()
    ends = page.locator(".widget-slider", has=page.get_by_text("Steady part (s)", exact=True)).locator(".noUi-handle")
    for _ in range(10):
        ends.first.press("ArrowLeft")
    earlier = read_track_speed(read_track(DATA / "penny_rope_track.gpx"), start=34, end=76)
    status.get_by_text(show_with_doubt(earlier.speed, earlier.speed_half_width_95), exact=True).wait_for()
    assert reader.number_box(page, "Steady from (s)").input_value() == "34"
    mine = tmp_path / "mine.gpx"
    mine.write_bytes((DATA / "long_platter_track.gpx").read_bytes())
    reader.bring(page, mine, "Your own track (GPX)")
    platter = read_track_speed(read_track(mine))
    said = show_with_doubt(platter.speed, platter.speed_half_width_95)
    page.locator("svg").get_by_text(f"mine.gpx: {said}").wait_for()
    broken = tmp_path / "broken.gpx"
    broken.write_text("<gpx><trk>", encoding="utf-8")
    reader.bring(page, broken, "Your own track (GPX)")
    status.get_by_text("broken.gpx, line 1").wait_for()
    page.locator("svg").get_by_text(f"mine.gpx: {said}").wait_for()
    assert browser.asked_outside(page) == []


@browser.in_ci
def test_limits(app, page):
    browser.run_in_app(page, app("09_what_limits_the_lift.ipynb"))
    reader.check_limits(page)
    reader.bring(page, DATA / "kinds/09_gondola.csv", "Your own sheets (CSV)")
    page.get_by_text("This page speaks of 7 lines of lifts. The newest is Gondola.").wait_for()
    page.locator("svg").get_by_text("Gondola: spacing governs, at most 2,400 pph").wait_for()
    page.get_by_role("button", name="Gondola", exact=True).wait_for()
    page.locator(".page-part td").get_by_text("2,400 pph (governed)", exact=True).first.wait_for()
    assert browser.asked_outside(page) == []


def press(page, name):
    """Press a button by keyboard."""
    page.get_by_role("button", name=name, exact=True).first.focus()
    page.keyboard.press("Enter")


# of 1366 x 768 JupyterLab shows 656 pixels of a page from top to bottom; of 1280 x 720 the app view shows all
ONE_SCREEN = 656
HEIGHTS = """() => [...document.querySelectorAll('[class^=result-]')].map(words => {
  const panel = words.closest('.widget-vbox'), top = panel.querySelector('.widget-hbox').getBoundingClientRect().top;
  return [words.className, words.parentElement.querySelector('svg').getBoundingClientRect().bottom - top]; })"""


def check_one_screen(page, panels):
    """Check that so many panels, each with its sliders and its picture, fit on one screen."""
    heights = page.evaluate(HEIGHTS)
    assert len(heights) == panels
    assert [(words, height) for words, height in heights if not 300 < height <= ONE_SCREEN] == []


@browser.in_ci
def test_guesses_by_keyboard_one_thing_disturbed_and_files_of_ones_own(app, page):
    browser.run_in_app(page, app("10_counted_and_ideal.ipynb"))
    slider = reader.handle(page, "Stop time (s)")
    page.get_by_role("button", name="Missed grabs").wait_for()
    assert not slider.is_visible(), "nothing to be seen before the choice"
    box = page.get_by_label("Your guess (pph)")
    box.focus()
    page.keyboard.type("900")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.get_by_text("You said 900 pph, 10 % lower. It is 1,002 pph.").wait_for()
    assert page.locator("svg").get_by_text("your guess").count() == 1
    press(page, "Missed grabs")
    page.get_by_text("Not so: A miss costs one slot and no more.").wait_for()
    title = page.locator("svg").get_by_text("1,200 pph governed, 1,001 pph on this invented day")
    title.wait_for()
    assert page.locator("svg").get_by_text("your guess").count() == 2
    for _ in range(5):
        slider.press("ArrowRight")
    title.wait_for(state="detached")
    page.locator("svg").get_by_text("dotted: the setting before").wait_for()
    press(page, "To the end")
    page.get_by_text("In 2.0 min: 37 counted at the top, 38 without a missed grab: 1 fewer.").wait_for()
    press(page, "Let it run")
    page.get_by_role("button", name="Hold it").wait_for()
    running = "group => getComputedStyle(group).animationPlayState"
    tape = page.locator("svg.rope-view g[style*=rope-view-run]").first
    assert set(tape.evaluate(running).split(", ")) == {"running"}
    press(page, "Hold it")
    check_one_screen(page, 1)
    days = DATA / "days"
    own = [DATA / "hill/3_duckling_belt.csv", days / "penny_rope_classes.csv", days / "penny_rope_day.csv"]
    reader.bring(page, own[0], "Your own files (CSV)")
    page.get_by_text("Still to come: the table of riders and the rest of the day.").wait_for()
    reader.bring(page, own[1:], "Your own files (CSV)")
    page.get_by_text("This page speaks of Duckling Belt, a conveyor").wait_for()
    page.get_by_text("No count of Duckling Belt came.").wait_for(state="attached")
    assert browser.asked_outside(page) == []


@browser.in_ci
@pytest.mark.parametrize(
    ("name", "last", "panels"),
    [
        ("11_lift_lines_and_laps", "Fuller, by nearly two thirds", 3),
        ("12_cost_per_ride", "A helper at the loading point", 2),
    ],
)
def test_every_panel_with_its_sliders_and_its_picture_fits_one_screen(app, page, name, last, panels):
    browser.run_in_app(page, app(f"{name}.ipynb"))
    page.get_by_role("button", name=last, exact=True).wait_for()
    shut = page.locator("[class^=result-]").all()
    assert not any(panel.is_visible() for panel in shut)
    for button in page.get_by_role("button", name="Show me").all():
        button.focus()
        page.keyboard.press("Enter")
    press(page, last)
    for number in range(panels):
        page.locator("[class^=result-]").nth(number).wait_for()
    check_one_screen(page, panels)
    if name.startswith("12"):
        press(page, "Show a model answer")
        page.get_by_text("Supervision suffers before throughput does;").wait_for()
    assert browser.asked_outside(page) == []
