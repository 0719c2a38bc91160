"""All files of a lift by one button in the app view: the brief appears, follows what is taken out, and is saved."""

import browser
import pytest
from places import DATA

from liftcalc.pages.brief import brief_of
from liftcalc.simulation.lift_files import LiftFiles

browser.skip_without_chromium()
browser.leave_to_ci()

DAYS = DATA / "days"
FILES = [
    DATA / "hill/4_lantern_double.csv",
    DATA / "own_lift/long_platter_laps.csv",  # of another lift: whoever brings it says that it is of this one
    DATA / "own_lift/long_platter_track.gpx",
    DATA / "own_lift/long_platter_line.kml",
    DAYS / "lantern_double_parties.csv",
    DAYS / "lantern_double_day.csv",
    DAYS / "penny_rope_count.csv",
]


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    """Return what gives the address of a notebook in the app view."""
    with browser.app_view(tmp_path_factory.mktemp("app")) as address:
        yield address


def test_all_files_by_one_button_give_the_brief(app, page, tmp_path):
    page.goto(app("13_your_lift.ipynb"))
    frame = page.frame_locator('iframe[title="The page for the wall"]')
    frame.get_by_role("heading", name="Long Platter").wait_for()
    bad = tmp_path / "bad.csv"
    bad.write_text("from,minutes,persons\n10:00,1,many\n")
    with page.expect_file_chooser() as chooser:
        page.get_by_role("button", name="Your files").click()
    chooser.value.set_files([*FILES, bad])
    frame.get_by_role("heading", name="Lantern Double").wait_for()
    page.get_by_text("This page speaks of Lantern Double, a fixed chair: 7 files.").first.wait_for()
    page.get_by_text("Left out: bad.csv, row 2, column persons:").first.wait_for()
    read = LiftFiles().with_([(path.name, path.read_bytes()) for path in FILES])
    facts = brief_of(read).facts
    said = " ".join(frame.locator("body").inner_text().split())
    assert f"at most {facts.at_most.value.m_as('pph'):,.0f} an hour" in said
    assert f"{facts.counted.rate.value.m_as('pph'):,.0f}" in said
    with page.expect_download() as saved:
        page.get_by_role("link", name="Save brief.html").click()
    assert saved.value.path().read_text(encoding="utf-8") == brief_of(read).html()
    page.get_by_role("button", name="Take out penny_rope_count.csv").click()
    page.get_by_text("No count of Lantern Double came.").first.wait_for()
    page.reload()  # the files stay for the visit; the one that was taken out does not come again
    page.get_by_text("This page speaks of Lantern Double, a fixed chair: 6 files.").first.wait_for()
    page.get_by_role("button", name="Back to the demo").click()
    frame.get_by_role("heading", name="Long Platter").wait_for()
    assert browser.asked_outside(page) == []
