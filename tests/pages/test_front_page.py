"""The front page: what it says of the pages is what they say, nothing leaves it, and what is not there has no link."""

import asyncio
import re
import sys
from html import unescape

import pytest
from notebook_files import NOTEBOOKS, PATHS, ROOT, source_of
from tornado.httpclient import AsyncHTTPClient
from tornado.httpserver import HTTPServer
from tornado.testing import bind_unused_port
from tornado.web import Application

from liftcalc.cautions import ONE_LINE, THE_THREE
from liftcalc.pages.app_view.front_page import (
    ROUTES,
    TALK_FILE,
    FrontPageHandler,
    MadeOnce,
    TalkFileHandler,
    front_page_html,
    series,
)
from liftcalc.pages.blank_sheet import blank_sheet_csv, blank_sheet_html
from liftcalc.pages.save_links import address_of

PAGE = front_page_html()
README = (ROOT / "README.md").read_text(encoding="utf-8")
BRIEF_README = (
    "# A\n\nThe <b>job</b> & more.\n\n| [00 Start](notebooks/00_start.ipynb) | Is <i>it</i>? | 5 | 9 | student |\n"
)


def words(html):
    """Return what a page says, without tags."""
    return " ".join(unescape(re.sub(r"<(script|style)\b.*?</\1>|<[^>]+>", " ", html, flags=re.DOTALL)).split())


@pytest.fixture
def small(tmp_path):
    """Return a folder of notebooks with one page, and a README that is no friend of markup."""
    (tmp_path / "README.md").write_text(BRIEF_README, encoding="utf-8")
    folder = tmp_path / "notebooks"
    folder.mkdir()
    (folder / "00_start.ipynb").write_text("{}", encoding="utf-8")
    return folder


def test_every_page_stands_there_with_its_question_and_its_minutes():
    items = re.findall(r"<li>(.*?)</li>", PAGE.partition('<ol class="series">')[2], flags=re.DOTALL)
    assert len(items) == len(PATHS)
    for item, path in zip(items, PATHS, strict=True):
        source = source_of(path).read_text(encoding="utf-8")
        assert f'href="voila/render/{path.name}"' in item
        said = words(item)
        assert said.lower().startswith(path.stem.replace("_", " "))
        assert re.search(r"^# # (.*)$", source, flags=re.MULTILINE)[1] in said
        assert f" {re.search(r'^# [*]{2}About ([0-9]+) minutes', source, flags=re.MULTILINE)[1]} min" in said
        assert said.endswith(re.search(rf"{path.stem}\.ipynb.*\| ([a-z, ]+) \|$", README, flags=re.MULTILINE)[1])


def test_job_cautions_and_routes():
    said = words(PAGE)
    assert " ".join(README.split("\n\n")[1].split()) in said
    assert THE_THREE.strip("*") in said
    assert ONE_LINE in said
    assert 'href="voila/render/00_start_here.ipynb#Cautions"' in PAGE
    there = {path.stem[:2] for path in PATHS}
    for who, route in (("supervisor", ROUTES[0]), ("presenter", ROUTES[1])):
        assert who in route.who
        told = re.search(rf"^- \*\*An? {who}\*\*.*?The route: ([0-9, ]+)\.", README, flags=re.MULTILINE | re.DOTALL)[1]
        assert [number for number in route.numbers if number in there] == told.split(", ")


def test_pages_that_take_a_sheet_are_those_with_a_button():
    takers = {path.stem[:2] for path in PATHS if ".button()" in source_of(path).read_text(encoding="utf-8")}
    assert {line.number for line in series() if line.takes} == takers


def test_the_blank_is_saved_as_it_is():
    for name, kind, make in (("html", "text/html", blank_sheet_html), ("csv", "text/csv", blank_sheet_csv)):
        assert f'download="field_sheet_blank.{name}" href="{address_of(kind, make)}"' in PAGE


def test_nothing_leads_outside():
    assert not re.search(r"https?:|//[\w.]+/|mailto:|@import|url\(|<link (?!rel=\"icon\" href=\"data:,\")|\bsrc=", PAGE)
    for target in re.findall(r'href="([^"]*)"', PAGE):
        file, _, place = target.partition("#")
        if file.startswith("voila/render/"):
            assert (NOTEBOOKS / file.removeprefix("voila/render/")).is_file()
        elif not file:
            assert f'id="{place}"' in PAGE
        else:
            assert target.startswith("data:") or target == TALK_FILE


def test_no_word_of_cells_or_code():
    assert not re.search(r"\bcells?\b|(?<!local )\bcode\b|Run All", words(PAGE))


def test_words_of_others_are_words(small):
    page = front_page_html(small)
    assert "The &lt;b&gt;job&lt;/b&gt; &amp; more." in page
    assert "Is &lt;i&gt;it&lt;/i&gt;?" in page


def test_your_lift_and_the_talk_with_its_file_have_a_link_once_they_are_there(small):
    assert not re.search(rf"13 Your|14 Meeting|{TALK_FILE}", front_page_html(small))
    series.cache_clear()
    for name in ("13_your_lift", "14_meeting_talk"):
        (small / f"{name}.ipynb").write_text('"page = SheetPage(my_sheet)"', encoding="utf-8")
    page = front_page_html(small)
    assert page.count('href="voila/render/13_your_lift.ipynb"') == 3, "on the route, at the own lift, among all"
    assert page.count('href="voila/render/14_meeting_talk.ipynb"') == 3
    assert f'<a href="{TALK_FILE}" download>' in page


def answers(*groups):
    """Return what the server answers: the addresses of a group are asked for at once, one group after another."""

    async def asked():
        socket, port = bind_unused_port()
        server = HTTPServer(Application([(r"/", FrontPageHandler), (r"/talk.html", TalkFileHandler)]))
        server.add_socket(socket)
        fetch = AsyncHTTPClient().fetch
        found = []
        for paths in groups:
            fetched = [fetch(f"http://127.0.0.1:{port}{path}", raise_error=False) for path in paths]
            found += await asyncio.gather(*fetched)
        server.stop()
        await server.close_all_connections()
        return found

    return asyncio.run(asked())


def test_it_is_served():
    (front,) = answers(["/"])
    assert front.body.decode() == PAGE
    assert front.headers["Content-Type"].startswith("text/html")


MAKES = "import sys; open({counter!r}, 'a').write('x'); open(sys.argv[1], 'w').write('<p>talk</p>')"


def test_the_talk_on_a_stick_is_made_once_when_it_is_asked_for(monkeypatch, tmp_path):
    assert TalkFileHandler.made._command[1:] == ("-m", "liftcalc.pages.talk", "--to")
    counter = tmp_path / "made"
    command = (sys.executable, "-S", "-c", MAKES.format(counter=str(counter)))
    monkeypatch.setattr(TalkFileHandler, "made", MadeOnce(command))
    found = answers(["/talk.html", "/talk.html", "/"], ["/talk.html"])
    assert [answer.body for answer in found] == [b"<p>talk</p>", b"<p>talk</p>", PAGE.encode(), b"<p>talk</p>"]
    assert found[0].headers["Content-Disposition"] == 'attachment; filename="talk.html"'
    assert counter.read_text() == "x"


def test_a_talk_that_could_not_be_made_is_tried_anew(monkeypatch, tmp_path, caplog):
    counter = tmp_path / "made"
    script = f"import os, sys; os.path.exists({str(counter)!r}) or sys.exit(open({str(counter)!r}, 'w').close() or 1); "
    command = (sys.executable, "-S", "-c", script + MAKES.format(counter=str(counter)))
    monkeypatch.setattr(TalkFileHandler, "made", MadeOnce(command))
    first, second = answers(["/talk.html"], ["/talk.html"])
    assert (first.code, second.code, second.body) == (500, 200, b"<p>talk</p>")
