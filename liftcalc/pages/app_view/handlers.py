"""The pages, the line that each of them holds to the server, and the socket to its kernel."""

import asyncio
import json
from pathlib import PurePosixPath

from jupyter_server.base.handlers import JupyterHandler
from nbconvert.filters import strip_ansi
from tornado.iostream import StreamClosedError
from tornado.web import HTTPError, RequestHandler
from tornado.websocket import WebSocketHandler
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler, read_header_from_binary_message

from liftcalc.pages.app_view import trouble
from liftcalc.pages.app_view.door import is_from
from liftcalc.pages.app_view.kernels import ENDED
from liftcalc.pages.app_view.running import Page

PROTOCOL = "v1.kernel.websocket.jupyter.org"
_WAITS_FOR_ROOM = 2  # seconds: the page that is being left makes room within them
_FULL = "As many pages are open as this computer keeps: {most}."
_BROKEN_OFF = f"""</div></div><p class="part-trouble">{trouble.REST_IS_MISSING}</p><script>
window.themeLoaded = true; window.display_cells?.();</script></body></html>"""
_MAKE_ROOM = "Close a page that you no longer need, wait ten seconds, and load this one again."


class NotebookPage(JupyterHandler):
    """A notebook as a page, with a kernel of its own."""

    visit = None

    async def get(self, path):
        """Send the page as it is made: a warm one if there is one."""
        self.app = self.settings["liftcalc"]
        if PurePosixPath(path).suffix != ".ipynb" or not await self._is_there(path):
            raise HTTPError(404)
        keeper = self.app.keeper
        for _ in range(10 * _WAITS_FOR_ROOM):
            if not keeper.is_full:
                break
            await asyncio.sleep(0.1)
        else:
            self.turn_away(503, _FULL.format(most=self.app.most_pages), _MAKE_ROOM)
            return
        self.visit = keeper.start()
        self.page = self.app.warm_pages.take(path) or Page(self.app, path)
        self.set_header("Content-Type", "text/html; charset=UTF-8")
        self.set_header("Cache-Control", "no-store")
        try:
            async for piece in self.page.pieces():
                self.visit.kernel_id = self.page.kernel_id
                self.write(piece)
                await self.flush()
        except (StreamClosedError, asyncio.CancelledError):  # the reader left while the page was being made
            await self._give_up()
        except Exception:
            self.log.exception("A page could not be made: %s", path)
            await self._give_up()
            if not self._headers_written:
                raise
            self.write(_BROKEN_OFF)
        else:
            keeper.loaded(self.visit)

    async def _is_there(self, path):
        try:
            return await asyncio.to_thread(self.contents_manager.file_exists, path)
        except (HTTPError, ValueError):
            return False

    def on_connection_close(self):
        """Give up a page whose reader left while it was being made."""
        if self.visit is not None and self.visit.loading:
            asyncio.ensure_future(self._give_up())

    async def _give_up(self):
        self.visit.loading = False
        await self.page.end()
        await self.app.keeper.end(self.visit)


class PageLine(WebSocketHandler):
    """The line from a page to the server: as long as it is open, a reader is there.

    The way it closes says whether the page was left (1001, which browsers send when a page goes away).
    """

    def open(self, kernel_id):
        """Note that the page is there, or tell it that its kernel is not."""
        self.keeper, self.visit = self.settings["liftcalc"].keeper, None
        visit = self.keeper.of(kernel_id)
        if visit is None:
            self.tell("ended", ENDED)
            return
        self.visit = visit
        self.keeper.joined(visit, self)

    def tell(self, kind, words):
        """Send words to the page."""
        if self.ws_connection is not None and not self.ws_connection.is_closing():
            self.write_message(json.dumps({"kind": kind, "words": words}))

    def check_origin(self, origin):
        """Return whether a page of ours asks."""
        return is_from(origin, self.request.host)

    def on_message(self, message):
        """Note that the page is about to leave; it says nothing else."""
        if self.visit is not None and message == "leaving":
            self.keeper.leaving(self.visit)

    def on_close(self):
        """Note that the page left, or that its line broke."""
        if self.visit is not None:
            self.keeper.parted(self.visit, self, for_good=self.close_code == 1001)


class KernelSocket(VoilaKernelWebsocketHandler):
    """The socket between the sliders of a page and its kernel."""

    async def get(self, kernel_id):
        """Refuse whatever is no page of ours: without an origin, or in the older protocol that checks nothing."""
        offered = self.request.headers.get("Sec-WebSocket-Protocol", "")
        if PROTOCOL not in [each.strip() for each in offered.split(",")]:
            raise HTTPError(400)
        if not is_from(self.request.headers.get("Origin", ""), self.request.host):
            raise HTTPError(403)
        if self.settings["liftcalc"].keeper.of(kernel_id) is None:  # of a warm page, or ended
            raise HTTPError(404)
        await super().get(kernel_id=kernel_id)

    def select_subprotocol(self, offered):
        """Return the one protocol that is spoken here."""
        return PROTOCOL

    def on_message(self, message):
        """Hand on what the reader moved."""
        self.settings["liftcalc"].keeper.moved(self.kernel_id)
        super().on_message(message)

    def write_message(self, message, binary=False):
        """Hand on what the kernel says; an error, which no part of the page would show, goes to the line."""
        if isinstance(message, bytes):
            header = read_header_from_binary_message(message) or {}
            if header.get("msg_type") == "error":
                content = _content(message)
                words = trouble.after_a_move(content["ename"], content["evalue"], content["traceback"])
                self.log.error("A move failed:\n%s", strip_ansi("\n".join(content["traceback"])))
                self.settings["liftcalc"].keeper.tell(self.kernel_id, "trouble", words)
        return super().write_message(message, binary)


def _content(message):
    """Return the content of a message of the v1 protocol: numbers of bytes, then channel, header, parent, metadata."""
    many = int.from_bytes(message[:8], "little")
    starts = [int.from_bytes(message[8 * (each + 1) : 8 * (each + 2)], "little") for each in range(many)]
    return json.loads(message[starts[4] : starts[5]])


class Farewell(RequestHandler):
    """The farewell of the page's script. It comes with a letter to be written too: only the line is believed."""

    def post(self, kernel_id):
        """Take note of nothing."""
        self.set_status(204)
