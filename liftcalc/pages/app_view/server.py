"""The server of the app view: a well-kept one underneath, with a door, a keeper of kernels and pages kept warm."""

import shutil
import sys
import webbrowser
from pathlib import Path

from jupyter_core.utils import run_sync
from tornado.ioloop import IOLoop, PeriodicCallback
from voila.app import Voila
from voila.shutdown_kernel_handler import VoilaShutdownKernelHandler
from voila.tornado.contentshandler import VoilaContentsHandler
from voila.tornado.handler import TornadoVoilaHandler
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler
from voila.tornado.treehandler import TornadoVoilaTreeHandler

from liftcalc.pages.app_view import door
from liftcalc.pages.app_view.front_page import FrontPageHandler, TalkFileHandler
from liftcalc.pages.app_view.handlers import Farewell, KernelSocket, NotebookPage, PageLine
from liftcalc.pages.app_view.kernels import LOOKS_EVERY, Keeper
from liftcalc.pages.app_view.warm import WarmPages

WARM = ("00", "09", "14")  # beginnings of the names of the pages that are opened while others look on
_KERNEL = r"(?P<kernel_id>\w+-\w+-\w+-\w+-\w+)"
_REPLACED = (
    TornadoVoilaHandler,
    TornadoVoilaTreeHandler,
    VoilaContentsHandler,
    VoilaKernelWebsocketHandler,
    VoilaShutdownKernelHandler,
)
_PORTS_TRIED = 50


def routes():
    """Return the addresses that are ours, each with its handler; what is not listed comes from the server beneath."""
    return [
        (r"/", FrontPageHandler),
        (r"/talk.html", TalkFileHandler),
        (r"/voila/render/(.*)", NotebookPage),
        (rf"/line/{_KERNEL}", PageLine),
        (rf"/api/kernels/{_KERNEL}/channels", KernelSocket),
        (rf"/voila/api/shutdown/{_KERNEL}", Farewell),
    ]


class AppView(Voila):
    """The notebooks as pages with sliders and no code, for the readers at this computer.

    Parameters
    ----------
    secret : str
        What a browser has to bring in the address the first time.
    longest_part, longest_idle : float
        Seconds that a part of a page may take, and that a page may stand without a move.
    most_pages : int
        Pages that may be open at a time.
    are_warm : bool
        Whether a few pages are kept ready.
    first_page : str
        The notebook that the address opens; the front page if empty.
    """

    identity_provider_class = door.Guest

    def __init__(self, secret, longest_part, longest_idle, most_pages, are_warm, first_page="", **options):
        super().__init__(**options)
        self.secret, self.longest_part, self.longest_idle = secret, longest_part, longest_idle
        self.most_pages, self.are_warm, self.first_page = most_pages, are_warm, first_page

    def init_settings(self):
        """Return the settings of the server beneath, with ours."""
        return {
            **super().init_settings(),
            "allow_remote_access": False,
            "ws_ping_timeout": 30_000,  # milliseconds
            "liftcalc": self,
            "default_handler_class": door.behind_the_door(door.NoSuchPage),
        }

    def init_handlers(self):
        """Return all routes, each behind the door."""
        beneath = [route for route in super().init_handlers() if not issubclass(route[1], _REPLACED)]
        return [(path, door.behind_the_door(handler), *rest) for path, handler, *rest in [*routes(), *beneath]]

    @property
    def address(self):
        """The address that opens the pages."""
        path = f"voila/render/{self.first_page}" if self.first_page else ""
        return f"http://127.0.0.1:{self.port}/{path}?{door.PARAMETER}={self.secret}"

    def listen(self):
        """Take the port, say where the pages are, and stay until it is stopped."""
        self.ioloop = IOLoop.current()
        self._take_a_port()
        folder = Path(self.root_dir)
        warm = [path.name for start in WARM for path in sorted(folder.glob(f"{start}_*.ipynb"))]
        self.warm_pages = WarmPages(self, warm if self.are_warm else [])
        self.keeper = Keeper(self)
        self.ioloop.add_callback(self.warm_pages.fill)
        self._looking = PeriodicCallback(self._look, 1000 * LOOKS_EVERY)
        self._looking.start()
        print(f"The pages are at {self.address}\nStop with Ctrl+C.", flush=True)
        if self.open_browser:
            self.ioloop.run_in_executor(None, webbrowser.open, self.address)
        try:
            self.ioloop.start()
        except KeyboardInterrupt:
            print("The pages have ended.", flush=True)
        finally:
            self.stop()

    def _take_a_port(self):
        for port in range(self.port, self.port + _PORTS_TRIED):
            try:
                self.app.listen(port, "127.0.0.1")
            except OSError:
                continue
            self.port = port
            return
        sys.exit(f"No port from {self.port} to {self.port + _PORTS_TRIED - 1} is free. Choose another with --port.")

    def stop(self):
        """End all kernels at once."""
        self._looking.stop()
        run_sync(self.kernel_manager.shutdown_all)(now=True)
        shutil.rmtree(self.connection_dir, ignore_errors=True)

    async def _look(self):
        await self.keeper.look()
        self.warm_pages.look_after()
