"""The server of the app view without a browser: its door, its kernels, and what a page says where a part fails.

The same with a real browser stands in test_server_in_browser.py.
"""

import asyncio
import contextlib
import html
import http.client
import re
from http.cookies import SimpleCookie

import browser
import nbformat
import pytest
from broken_pages import KERNEL
from tornado.httpclient import HTTPClientError, HTTPRequest
from tornado.websocket import websocket_connect

from liftcalc.pages.app_view import NOTES, SHORTEST_SECRET, main
from liftcalc.pages.app_view.kernels import COMES_BACK_WITHIN, Keeper
from liftcalc.pages.app_view.trouble import NEEDS_THE_PART_ABOVE, MissingParts, after_a_move, in_words

PLAIN = "class PlainError(ValueError):\n    def _render_traceback_(self):\n        return [f'PlainError: {self}']"
PARTS = (
    PLAIN + "\nrope_gap = [6.8]\nraise PlainError('sheet: <b>two</b> rows cannot be read.')",
    "print(rope_gap)",
    "later = rope_gap",
    "print(later)",
    "import time\ntime.sleep(30)",
    "print('To its end.')",
)
NO_KERNEL = "00000000-0000-0000-0000-000000000000"
PROTOCOL = "v1.kernel.websocket.jupyter.org"


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    """Return host and port of an app view that serves one page, on which parts fail; it keeps one page at a time."""
    folder = tmp_path_factory.mktemp("server")
    (folder / "pages").mkdir()
    cells = [nbformat.v4.new_code_cell(part) for part in PARTS]
    page = nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": KERNEL})
    nbformat.write(page, folder / "pages" / "page.ipynb")
    options = ("--no-warm-pages", "--longest-part=1", "--most-pages=1")
    with browser.app_view(folder, folder / "pages", *options) as app:
        yield app("").split("/")[2]


def ask(address, path, **headers):
    """Return status, headers and text of an answer; underscores in the names of headers stand for dashes."""
    with contextlib.closing(http.client.HTTPConnection(address, timeout=60)) as connection:
        connection.request("GET", path, headers={name.replace("_", "-"): each for name, each in headers.items()})
        answer = connection.getresponse()
        return answer.status, answer.headers, html.unescape(answer.read().decode(errors="replace"))


@pytest.fixture(scope="module")
def cookie(address):
    """Return the cookie of a browser that came with the secret."""
    _, headers, _ = ask(address, f"/?secret={browser.APP_SECRET}")
    return headers["Set-Cookie"].partition(";")[0]


def test_the_secret_is_taken_out_of_the_address_and_kept_as_a_cookie_for_this_port_alone(address):
    status, headers, _ = ask(address, f"/voila/render/page.ipynb?a=1&secret={browser.APP_SECRET}&b=%20%26")
    assert (status, headers["Location"]) == (302, "/voila/render/page.ipynb?a=1&b=+%26")
    (kept,) = SimpleCookie(headers["Set-Cookie"]).values()
    assert kept.key.endswith(address.partition(":")[2])
    assert (kept["httponly"], kept["samesite"], kept["expires"]) == (True, "Strict", "")
    assert browser.APP_SECRET not in kept.value


CLOSED = ["/", "/voila/render/page.ipynb", "/voila/static/voila.js", "/voila/files/page.html", "/nowhere"]
CLOSED += [f"/api/kernels/{NO_KERNEL}", f"/api/kernels/{NO_KERNEL}/channels", f"/line/{NO_KERNEL}", "/voila/tree"]


@pytest.mark.parametrize("path", CLOSED)
def test_nothing_opens_without_the_secret(address, path):
    for asked in (path, f"{path}?secret=guessed-0123456789abc", f"{path}?secret="):
        status, headers, said = ask(address, asked, Cookie=f"liftcalc-{address.partition(':')[2]}=guessed")
        assert (status, "Set-Cookie" in headers) == (403, False)
        assert "Take the address from the window where the pages were started" in said


TURNED_AWAY = {
    "another site": ({"Sec_Fetch_Site": "cross-site"}, "Another page asked for this one."),
    "another port": ({"Sec_Fetch_Site": "same-site"}, "Another page asked for this one."),
    "another port, older browser": ({"Referer": "http://127.0.0.1:1/"}, "Another page asked for this one."),
    "origin of another site": ({"Origin": "//".join(["https:", "example.com"])}, "Another page asked for this one."),
    "origin hidden": ({"Origin": "null"}, "Another page asked for this one."),
    "foreign name": ({"Host": "hill.example.com"}, "These pages are not known by that name."),
    "foreign name that begins like ours": (
        {"Host": "127.0.0.1.example.com"},
        "These pages are not known by that name.",
    ),
}


@pytest.mark.parametrize(("headers", "words"), TURNED_AWAY.values(), ids=TURNED_AWAY)
def test_who_comes_from_elsewhere_is_turned_away_even_with_the_secret(address, cookie, headers, words):
    for path in ("/", f"/?secret={browser.APP_SECRET}", "/voila/render/page.ipynb", "/voila/static/voila.js"):
        status, answered, said = ask(address, path, Cookie=cookie, **headers)
        assert (status, words in said, "Set-Cookie" in answered) == (403, True, False)


def test_a_page_that_is_not_there_is_told_in_plain_words(address, cookie):
    for path in ("/nowhere", "/voila/render/nowhere.ipynb", "/voila/render/../../README.md", "/voila/render/page.html"):
        status, _, said = ask(address, path, Cookie=cookie)
        assert (status, "There is no such page." in said) == (404, True)
        assert re.findall(r"https?://", said) == []


def opened(address, path, **headers):
    """Return the status with which a socket is answered; 101 if it opens."""

    async def try_it():
        named = {name.replace("_", "-"): each for name, each in headers.items()}
        try:
            socket = await websocket_connect(HTTPRequest(f"ws://{address}{path}", headers=named))
        except HTTPClientError as error:
            return error.code
        socket.close()
        return 101

    return asyncio.run(try_it())


def test_parts_that_fail_say_so_in_place_once_the_page_goes_on_and_its_socket_opens_for_it_alone(address, cookie):
    status, _, page = ask(address, "/voila/render/page.ipynb", Cookie=cookie)
    assert status == 200
    assert re.findall(r'class="part-trouble">(.*?)</p>', page) == [
        "sheet: <b>two</b> rows cannot be read.",
        NEEDS_THE_PART_ABOVE,
        "This part took longer than 1 s and was stopped.",
    ]
    assert page.index("was stopped.") < page.index("To its end.")
    kernel = re.search(r'"kernelId": "([\w-]+)"', page)[1]
    channels = f"/api/kernels/{kernel}/channels"
    ours = {"Cookie": cookie, "Origin": f"http://{address}", "Sec_WebSocket_Protocol": PROTOCOL}
    assert opened(address, f"/line/{kernel}", **{**ours, "Origin": "http://127.0.0.1:1"}) == 403
    assert opened(address, channels, **{**ours, "Sec_WebSocket_Protocol": "v0"}) == 400
    del ours["Origin"]
    assert opened(address, channels, **ours) == 403
    ours["Origin"] = f"http://{address}"
    assert opened(address, channels.replace(kernel, NO_KERNEL), **ours) == 404
    assert opened(address, channels, **{**ours, "Cookie": "none=1"}) == 403
    assert opened(address, channels, **ours) == 101
    # it is still open: there is no room for another
    status, _, said = ask(address, "/voila/render/page.ipynb", Cookie=cookie)
    assert (status, "As many pages are open as this computer keeps: 1." in said) == (503, True)


class FewKernels:
    """A server with nothing but kernels that are running or not, for the account that is kept of them."""

    longest_idle, longest_part, most_pages = 100, 20, 2

    def __init__(self):
        self.kernel_manager = self.warm_pages = self
        self.running, self.kernel_ids, self.execution_state, self.stopped = {"a", "warm"}, {"warm"}, "idle", 0

    def __contains__(self, kernel_id):
        return kernel_id in self.running

    def get_kernel(self, kernel_id):
        return self

    def is_alive(self):
        return True

    def list_kernel_ids(self):
        return list(self.running)

    async def interrupt_kernel(self):
        self.stopped += 1

    async def shutdown_kernel(self, kernel_id, now):
        self.running.discard(kernel_id)


class Line:
    """A line to a page that notes what it is told."""

    def __init__(self):
        self.told = []

    def tell(self, kind, words):
        """Note it."""
        self.told.append((kind, words))


class Hill:
    """One reader on one page, and the seconds as they go by."""

    def __init__(self):
        self.now, self.server, self.line = 0, FewKernels(), Line()
        self.keeper = Keeper(self.server, clock=lambda: self.now)
        self.visit = self.keeper.start()
        self.visit.kernel_id = "a"
        self.keeper.loaded(self.visit)
        self.keeper.joined(self.visit, self.line)

    def lives(self, seconds):
        """Return for how long from now on the kernel lives, and at most so long."""
        start = self.now
        asyncio.run(self.keeper.look())
        while "a" in self.server.running and self.now < start + seconds:
            self.now += 0.5
            asyncio.run(self.keeper.look())
        return self.now - start


def test_a_kernel_ends_at_once_when_its_page_is_left_and_soon_when_its_line_breaks():
    hill = Hill()
    hill.keeper.parted(hill.visit, hill.line, for_good=True)
    assert hill.lives(10) == 1
    hill = Hill()
    hill.keeper.parted(hill.visit, hill.line, for_good=False)
    assert COMES_BACK_WITHIN < hill.lives(20) < 10
    assert hill.server.running == {"warm"}


def test_a_line_that_comes_back_within_five_seconds_keeps_its_kernel():
    hill = Hill()
    hill.keeper.parted(hill.visit, hill.line, for_good=False)
    hill.now += 5
    hill.keeper.joined(hill.visit, hill.line)
    assert hill.lives(60) == 60


def test_a_page_that_stands_without_a_move_is_put_away_and_says_so():
    hill = Hill()
    hill.now = 90
    hill.keeper.moved("a")
    assert hill.lives(200) == 100.5
    assert hill.line.told == [
        ("ended", "Nobody moved anything on this page for 1.7 min, so it was put away. Load it again to go on.")
    ]


def test_a_move_that_takes_too_long_is_stopped_once_and_says_so_until_the_next():
    hill = Hill()
    hill.server.execution_state = "busy"
    hill.lives(25)
    assert hill.server.stopped == 1
    hill.keeper.moved("a")
    said = "Your last move took longer than 20 s and was stopped. What the page shows is from before it."
    assert hill.line.told == [("trouble", said), ("trouble", "")]


def test_a_kernel_that_belongs_to_nobody_ends():
    hill = Hill()
    hill.server.running.add("stray")
    hill.lives(10)
    assert hill.server.running == {"a", "warm"}


def test_there_is_room_for_so_many_pages():
    hill = Hill()
    assert not hill.keeper.is_full
    hill.keeper.start()
    assert hill.keeper.is_full
    hill.keeper.leaving(hill.visit)  # as before it is loaded again, or before a letter is written
    assert not hill.keeper.is_full
    hill.now = 6
    assert hill.keeper.is_full


OWN = ("PlainError", "headway: no speed.", ["PlainError: headway: no speed."])
FOREIGN = ("KeyError", "'rope'", ["----", "KeyError", "KeyError: 'rope'"])


@pytest.mark.parametrize(
    ("say", "error", "words"),
    [
        (in_words, OWN, "headway: no speed."),
        (in_words, FOREIGN, "This part could not be made. The program said: KeyError: 'rope'."),
        (after_a_move, OWN, "headway: no speed. What the page shows is from before your last move."),
        (
            after_a_move,
            FOREIGN,
            "Your last move could not be worked out. What the page shows is from before it. The program said: "
            "KeyError: 'rope'.",
        ),
    ],
)
def test_words_of_an_error(say, error, words):
    assert say(*error) == words


def test_what_only_follows_says_so_once_for_each_part_that_failed():
    parts = MissingParts()

    def unknown(name):
        return ("NameError", f"name '{name}' is not defined", ["----", "path"])

    first, second = "speed = Q(3.4)\nfrom liftcalc import headway as gap", "with open(sheet) as file:\n    rows = 1"
    assert parts.words_for(first, *OWN) == "headway: no speed."
    assert parts.words_for("fast = 2 * speed", *unknown("speed")) == NEEDS_THE_PART_ABOVE
    assert parts.words_for("faster = 2 * fast", *unknown("fast")) == ""
    assert parts.words_for("gap(speed)", *unknown("gap")) == ""
    assert parts.words_for(second, *FOREIGN).startswith("This part could not be made.")
    assert parts.words_for("rows", *unknown("rows")) == NEEDS_THE_PART_ABOVE
    assert parts.words_for("typo", *unknown("typo")) == (
        "This part could not be made. The program said: NameError: name 'typo' is not defined."
    )


def test_help_says_who_can_open_the_pages_what_they_take_and_how_to_reach_a_network(capsys):
    with pytest.raises(SystemExit):
        main(["--help"])
    said = capsys.readouterr().out
    assert NOTES in said
    for about in ("who can open the pages", "140 to 185 MB", "There is no option for it."):
        assert about in NOTES


@pytest.mark.parametrize(
    ("arguments", "secret", "words"),
    [
        (["--folder", "nowhere"], "", "no notebooks at nowhere"),
        (["--longest-part", "0"], "", "must be more than 0, but is 0"),
        ([], "short", f"must have at least {SHORTEST_SECRET} characters"),
    ],
)
def test_what_cannot_be_started_is_refused(arguments, secret, words, monkeypatch, capsys):
    monkeypatch.setenv("LIFTCALC_SECRET", secret)
    monkeypatch.setattr("os.environ", dict(__import__("os").environ))
    with pytest.raises(SystemExit):
        main(arguments)
    assert words in capsys.readouterr().err
