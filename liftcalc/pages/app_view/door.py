"""The door: who may ask this server for anything.

The address that is printed at the start holds a secret. Who comes with it gets a cookie and is sent on to the same
address without it, so that it is neither projected nor kept by the browser. Whatever comes without the cookie, from
another site, from another port of this computer or under a foreign name is turned away in plain words.
"""

import hmac
import html
import inspect
import secrets

from jupyter_server.auth.identity import IdentityProvider, User
from tornado.httputil import split_host_and_port, url_concat
from tornado.web import RequestHandler

PARAMETER = "secret"
OWN_NAMES = ("127.0.0.1", "localhost", "::1")
WITHOUT_THE_SECRET = (
    "This page opens only with its whole address.",
    "Take the address from the window where the pages were started, to its last letter, and open that. "
    "If they were started anew since, only the new address opens them.",
)
FROM_ELSEWHERE = (
    "Another page asked for this one.",
    "That is not allowed. If it was you: type the address of these pages into the address line yourself.",
)
FOREIGN_NAME = ("These pages are not known by that name.", "Open them by the address that was printed at the start.")
NO_SUCH_PAGE = ("There is no such page.", "All pages of the series are on the first one.")
WENT_WRONG = ("This page could not be made.", "The window where the pages were started says why. Load the page again.")

_SHEET = """<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title><style>
body {{ font: 18px/1.5 system-ui, sans-serif; color: #1a1a1a; background: #fff; margin: 0; }}
main {{ max-width: 40em; margin: 12vh auto 0; padding: 0 20px; }}
h1 {{ font-size: 26px; line-height: 1.25; }} a {{ color: #0b4f8a; }}
</style></head><body><main><h1>{title}</h1><p>{text}</p>{more}</main></body></html>
"""


def sheet(title, text, more=""):
    """Return a plain page of the server's own: a title and a sentence or two."""
    return _SHEET.format(title=html.escape(title), text=html.escape(text), more=more)


def is_from(origin, host):
    """Return whether an address that a browser names as the origin is of this host and port.

    Examples
    --------
    >>> is_from("http://127.0.0.1:8866", "127.0.0.1:8866"), is_from("http://127.0.0.1:8867/page", "127.0.0.1:8866")
    (True, False)
    """
    return origin.partition("://")[2].partition("/")[0].lower() == host.lower()


class Guest(IdentityProvider):
    """Who came through the door is a reader, and all readers are alike."""

    def get_user(self, handler):
        """Return the reader."""
        return User("reader")

    def get_handlers(self):
        """Return no pages to log in."""
        return []


class Door:
    """What stands before every handler of the server; ``visitor`` is the mark of the reader's browser."""

    visitor = None

    async def prepare(self):
        """Let the request in, or answer it here."""
        if not self._let_in():
            return
        after = super().prepare()
        if inspect.isawaitable(after):
            await after

    def _let_in(self):
        request = self.request
        if split_host_and_port(request.host.lower())[0].strip("[]") not in OWN_NAMES:
            return self.turn_away(403, *FOREIGN_NAME)
        if not self._comes_from_here():
            return self.turn_away(403, *FROM_ELSEWHERE)
        if PARAMETER in request.query_arguments and request.method == "GET":
            return self._try_the_secret()
        mark = self.get_secure_cookie(self._cookie, max_age_days=30)
        if mark is None:
            return self.turn_away(403, *WITHOUT_THE_SECRET)
        self.visitor = mark.decode("ascii")
        return True

    @property
    def _cookie(self):  # cookies know no port: two servers on one computer must not take each other's
        return f"liftcalc-{self.settings['liftcalc'].port}"

    def _comes_from_here(self):
        """Return whether the reader or a page of ours asks, and no page of another site or of another port."""
        headers = self.request.headers
        site = headers.get("Sec-Fetch-Site")
        if site is not None and site not in ("none", "same-origin"):
            return False
        origin = headers.get("Origin") or headers.get("Referer")  # for browsers that do not send the other
        return origin is None or is_from(origin, self.request.host)

    def _try_the_secret(self):
        given = self.request.query_arguments[PARAMETER][-1]
        if not hmac.compare_digest(given, self.settings["liftcalc"].secret.encode()):
            return self.turn_away(403, *WITHOUT_THE_SECRET)
        if self.get_secure_cookie(self._cookie, max_age_days=30) is None:
            mark = secrets.token_hex(16)
            self.set_secure_cookie(self._cookie, mark, expires_days=None, httponly=True, samesite="Strict")
        rest = [(name, each) for name, all_of in self.request.query_arguments.items() for each in all_of]
        path = "/" + self.request.path.lstrip("/")  # never another computer's name
        self.redirect(url_concat(path, [pair for pair in rest if pair[0] != PARAMETER]))
        return False

    def turn_away(self, status, title, text, more=""):
        """Answer with a plain page; return False."""
        self.set_status(status)
        self.set_header("Content-Type", "text/html; charset=UTF-8")
        self.set_header("Cache-Control", "no-store")
        self.finish(sheet(title, text, more))
        return False

    def write_error(self, status_code, **reason):
        """Answer what went wrong with a plain page of ours."""
        title, text = NO_SUCH_PAGE if status_code == 404 else WENT_WRONG
        if not self._finished:
            self.turn_away(status_code, title, text, '<p><a href="/">To the first page</a></p>')


class NoSuchPage(RequestHandler):
    """Whatever is not there."""

    def prepare(self):
        """Say so."""
        self.write_error(404)


def behind_the_door(handler):
    """Return a handler that answers only who came through the door."""
    return handler if issubclass(handler, Door) else type(handler.__name__, (Door, handler), {})
