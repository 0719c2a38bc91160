"""JupyterLab in a real browser: open a page, run it, move sliders by keyboard, answer, read what changes."""

import browser
import pytest
import reader

browser.skip_without_chromium()


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Return the folder of JupyterLab's own files and of the records."""
    return tmp_path_factory.mktemp("lab")


@pytest.fixture(scope="module")
def lab(folder):
    """Return what gives the address of a notebook in JupyterLab."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("LIFTCALC_RECORDS", str(folder / "my_records"))
        with browser.jupyter_lab(folder) as address:
            yield address


def test_the_first_page(lab, page):
    broken = []
    page.on("pageerror", lambda error: broken.append(str(error)))
    browser.run_in_lab(page, lab("00_start_here.ipynb"))
    assert page.get_by_text("news", exact=False).count() == 0, "a question lies over the first page"
    reader.check_start_page(page)
    assert browser.asked_outside(page) == []
    assert broken == []


@browser.in_ci
def test_exercises(lab, page, folder):
    browser.run_in_lab(page, lab("02_spacing.ipynb"))
    page.get_by_text("The printed numbers: 0 of").wait_for()
    reader.check_exercises(page)
    assert browser.asked_outside(page) == []
    assert [path.name for path in (folder / "my_records").glob("*.json")] == ["printed_numbers.json"]


@browser.in_ci
def test_a_still_picture_before_anything_is_run_and_the_limits_after(lab, page):
    page.goto(lab("09_what_limits_the_lift.ipynb"), wait_until="domcontentloaded")
    still = page.locator("img[alt^='What limits the lift. Set: lift Penny Rope']")
    still.wait_for(state="attached")
    page.wait_for_function("image => image.naturalWidth > 300", arg=still.element_handle())
    assert "1,200 pph (governed)" in still.get_attribute("alt")
    browser.run_all(page)
    reader.check_limits(page)
    assert browser.asked_outside(page) == []
