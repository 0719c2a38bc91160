"""The app view's kernels, door and words with a real browser before it."""

import contextlib
import functools
import http.server
import os
import signal
import subprocess
import threading
import time

import browser
import pytest
import reader
from broken_pages import write_broken_pages
from cut_off import Way

browser.skip_without_chromium()
browser.leave_to_ci()

ENDS_WITHIN = 10  # seconds


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    """Return what gives the address of a page of the series; no page is kept warm, so every kernel has a reader."""
    with browser.app_view(tmp_path_factory.mktemp("app"), browser.NOTEBOOKS, "--no-warm-pages") as address:
        yield address


@pytest.fixture(scope="module")
def broken(tmp_path_factory):
    """Return what gives the address of a page on which parts fail."""
    folder = tmp_path_factory.mktemp("broken")
    (folder / "pages").mkdir()
    write_broken_pages(folder / "pages")
    with browser.app_view(folder, folder / "pages", "--longest-part=3", "--longest-idle=0.004") as address:
        yield address


def wait_for_kernels(app, many):
    """Wait until so many kernels run."""
    start = time.monotonic()
    while len(browser.kernels_of(app(""))) != many:
        assert time.monotonic() < start + ENDS_WITHIN, f"{len(browser.kernels_of(app('')))} kernels, not {many}"
        time.sleep(0.1)


def close(page, app):
    """Close the page."""
    page.close()


def leave(page, app):
    """Go to a page elsewhere."""
    page.goto("about:blank")


def follow(page, app):
    """Follow a link to another page of the series, and close that."""
    before = browser.kernels_of(app(""))
    page.get_by_role("link", name="03 Riders on the line").first.click()
    page.wait_for_url("**/03_*")
    page.locator(".widget-vbox [role=status]").first.wait_for(state="attached")
    wait_for_kernels(app, 1)
    assert browser.kernels_of(app("")).isdisjoint(before)
    page.close()


def load_again(page, app):
    """Load the page again: exactly one kernel is left, another one; and close it."""
    before = browser.kernels_of(app(""))
    page.reload(wait_until="domcontentloaded")
    wait_for_kernels(app, 1)
    assert browser.kernels_of(app("")).isdisjoint(before)
    page.close()


@pytest.mark.parametrize("go", [close, leave, follow, load_again])
def test_the_kernel_of_a_page_that_is_left_ends(app, chromium, go):
    with browser.page_of(chromium) as page:
        browser.run_in_app(page, app("02_spacing.ipynb"))
        assert page.url.endswith("/voila/render/02_spacing.ipynb"), "the secret does not stay in the address"
        wait_for_kernels(app, 1)
        go(page, app)
        wait_for_kernels(app, 0)


def test_the_kernel_of_a_page_that_is_closed_while_it_loads_ends(app, chromium):
    with browser.page_of(chromium) as page:
        page.goto(app("02_spacing.ipynb"), wait_until="commit")
        wait_for_kernels(app, 1)
    wait_for_kernels(app, 0)


def test_the_kernel_of_a_browser_that_is_killed_ends(app, tmp_path):
    arguments = [browser.chromium(), *browser.ARGUMENTS, "--headless", "--remote-debugging-port=0"]
    arguments += [f"--user-data-dir={tmp_path}", app("02_spacing.ipynb")]
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "start_new_session": True}
    with subprocess.Popen(arguments, **quiet) as started:
        wait_for_kernels(app, 1)
        time.sleep(15)  # until it stands: a page that loads ends faster
        wait_for_kernels(app, 1)
        os.killpg(started.pid, signal.SIGKILL)
        wait_for_kernels(app, 0)


def test_a_letter_to_be_written_leaves_the_page_at_work(app, page):
    browser.run_in_app(page, app("02_spacing.ipynb"))
    page.evaluate(
        "() => { const link = document.createElement('a'); link.href = 'mailto:hill@example.com'; link.click(); }"
    )
    page.wait_for_timeout(1000 * ENDS_WITHIN)
    assert len(browser.kernels_of(app(""))) == 1
    moves(page)


def moves(page):
    """Check that a slider moves what the page says."""
    said = page.locator("[class^=result-]").first
    before = said.text_content()
    reader.handle(page, "Line speed (m/s)").first.press("ArrowRight")
    page.wait_for_function(
        "before => document.querySelector('[class^=result-]').textContent !== before", arg=before, timeout=20_000
    )


def test_a_network_that_is_gone_for_five_seconds_ends_no_kernel(app, page):
    with contextlib.closing(Way(int(app("").split("/")[2].partition(":")[2]))) as way:
        host = app("").split("/")[2]
        browser.run_in_app(page, app("02_spacing.ipynb").replace(host, f"127.0.0.1:{way.port}"))
        moves(page)
        before = browser.kernels_of(app(""))
        way.cut()
        page.wait_for_timeout(5000)
        way.mend()
        page.wait_for_timeout(1000 * ENDS_WITHIN)
        assert browser.kernels_of(app("")) == before
        moves(page)
        assert not page.locator("#page-words.says").is_visible()


def test_a_page_of_another_port_opens_nothing_here(app, page, tmp_path):
    browser.run_in_app(page, app("02_spacing.ipynb"))
    target = app("03_riders_on_the_line.ipynb").partition("?")[0]
    (tmp_path / "index.html").write_text(
        f"<img src='{target}'><iframe src='{target}'></iframe><script src='{target}'></script><script>"
        f"fetch('{target}', {{mode: 'no-cors', credentials: 'include'}});"
        f"new WebSocket('{target.replace('http', 'ws').partition('/voila')[0]}/line/"
        "00000000-0000-0000-0000-000000000000').onopen = () => document.title = 'open';</script>"
        f"<a href='{target}'>lure</a>"
    )

    class Quiet(http.server.SimpleHTTPRequestHandler):
        def log_message(self, *_):
            pass

    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=tmp_path)) as other:
        threading.Thread(target=other.serve_forever, daemon=True).start()
        second = page.context.new_page()
        second.goto(f"http://127.0.0.1:{other.server_port}/index.html")
        second.wait_for_timeout(4000)
        assert second.title() != "open"
        assert len(browser.kernels_of(app(""))) == 1
        second.get_by_role("link", name="lure").click()
        second.get_by_role("heading", name="Another page asked for this one.").wait_for()
        assert len(browser.kernels_of(app(""))) == 1
        other.shutdown()


def test_words_of_a_part_that_fails_and_of_a_move_that_cannot_be_worked_out(broken, page):
    page.goto(broken("troubled.ipynb"))
    page.get_by_text("The page went on to its end.").wait_for()
    assert page.locator(".part-trouble").all_inner_texts() == [
        "headway: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s').",
        "This part needs the part above, which could not be made.",
        "This part could not be made. The program said: IndexError: list index out of range.",
        "This part needs the part above, which could not be made.",
        "This part could not be made. The program said: KeyError: '<b>no such row</b>'.",
        "This part took longer than 3 s and was stopped.",
    ]
    said = page.get_by_role("alert")
    words = {
        "Plain": "headway: speed must be greater than zero, but got 0.0 m/s. What the page shows is from before",
        "Foreign": "Your last move could not be worked out. What the page shows is from before it. The program said: "
        "KeyError: '<i>no such line</i>'.",
        "Slow": "Your last move took longer than 3 s and was stopped.",
    }
    for name, sentence in words.items():
        page.get_by_role("button", name=name).click()
        said.get_by_text(sentence).wait_for()
    page.get_by_role("button", name="Close").press("Enter")
    assert not page.locator("#page-words").is_visible()
    # nobody moves anything for 14 seconds
    said.get_by_text("Nobody moved anything on this page for 0.24 min, so it was put away.").wait_for()
    page.get_by_role("button", name="Load again").click()
    page.get_by_text("The page went on to its end.").wait_for()
    assert not page.locator("#page-words").is_visible()


@pytest.mark.parametrize("name", ["stubborn", "dying"])
def test_a_part_that_cannot_be_stopped_or_ends_the_kernel_leaves_the_parts_above(broken, page, name):
    page.goto(broken(f"{name}.ipynb"))
    page.get_by_text("The rest of this page could not be made.").wait_for()
    assert page.get_by_text("Before.").is_visible()
    page.get_by_role("alert").get_by_text("This page has lost what computes it.").wait_for()


def test_a_page_says_when_its_server_has_ended(tmp_path, page):
    with browser.app_view(tmp_path, browser.NOTEBOOKS, "--no-warm-pages", "--most-pages=1") as app:
        browser.run_in_app(page, app("02_spacing.ipynb"))
        second = page.context.new_page()
        second.goto(app("02_spacing.ipynb"))
        second.get_by_role("heading", name="As many pages are open as this computer keeps: 1.").wait_for()
        page.reload(wait_until="domcontentloaded")  # makes room for itself
        page.locator(".widget-vbox [role=status]").first.wait_for(state="attached")
    page.get_by_role("alert").get_by_text("This page has lost its connection").wait_for()


def test_a_warm_page_holds_nothing_of_a_visit(tmp_path, page):
    with browser.app_view(tmp_path) as app:
        start = time.monotonic()
        while not browser.kernels_of(app("")) and time.monotonic() < start + 20:
            time.sleep(0.2)
        page.wait_for_timeout(15_000)
        warm = browser.kernels_of(app(""))
        browser.run_in_app(page, f"{app('00_start_here.ipynb')}&name=visitor-of-today")
        page.wait_for_timeout(15_000)
        import psutil

        told = [psutil.Process(each).environ() for each in browser.kernels_of(app(""))]
        assert len(told) == len(warm) + 1
        for each in told:
            assert not any("visitor-of-today" in value or browser.APP_SECRET in value for value in each.values())
