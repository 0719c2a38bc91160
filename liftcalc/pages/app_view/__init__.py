"""The app view: the notebooks as pages with sliders and no code.

    python -m liftcalc.pages.app_view
    python -m liftcalc.pages.app_view --port 8870 --no-browser

It serves the notebooks to this computer only and asks nothing of the network.
"""

import argparse
import os
import secrets
import sys
from pathlib import Path

from liftcalc.exercises.record import IN_MEMORY, PLACE

TEMPLATES = Path(__file__).parent / "templates"  # without style sheets from outside: it works with no network
LAB_EXTENSION = Path(__file__).parents[1] / "lab_extension"  # names and values of sliders, results said once
NOTEBOOKS = Path(__file__).parents[3] / "notebooks"
SECRET = "LIFTCALC_SECRET"  # a variable of the environment: for who starts the pages by a program
SHORTEST_SECRET = 16

NOTES = """\
who can open the pages:
  Only a browser on this computer, and only with the address that is printed: it holds a secret that is made anew at
  every start. The browser keeps it as a cookie until it is closed, and the address line shows it no more.

memory:
  Each open page runs a program of its own that takes 140 to 185 MB of memory, and ends within ten seconds after the
  page is left. The pages that are kept ready (00, 09 and 14) take 460 MB together, whether anybody opens them or not.

opening the pages to a network:
  There is no option for it. Whoever has the address runs programs on this computer, and the address would travel
  unencrypted. To read the pages on another computer, let that one carry the port through a login it already has:
      ssh -L 8866:127.0.0.1:8866 you@this-computer
  and open the printed address there. For a class, let each learner start the pages on a computer of their own, or ask
  who runs your network for a server with logins, encryption and an account for each learner.
"""


def command(port=8866, browser=True, folder=NOTEBOOKS):
    """Return the arguments that start the app view as a program of its own."""
    arguments = [sys.executable, "-m", "liftcalc.pages.app_view", f"--port={port}", f"--folder={folder}"]
    return arguments if browser else [*arguments, "--no-browser"]


def environment():
    """Return the environment with template and extension on Jupyter's path; answers to exercises stay in memory."""
    paths = [str(TEMPLATES), str(LAB_EXTENSION), *filter(None, [os.environ.get("JUPYTER_PATH")])]
    return {**os.environ, "JUPYTER_PATH": os.pathsep.join(paths), PLACE: IN_MEMORY}


def options(folder, port, browser):
    """Return the options of the server beneath."""
    return {
        "Voila": {"root_dir": str(folder), "port": port, "open_browser": browser, "token": "", "log_level": 40},
        # encrypted between server and kernels, where it is to be had; a kernel that ended would come back empty
        "KernelManager": {"transport_encryption": "auto", "autorestart": False},
        "VoilaConfiguration": {
            "template": "plain_page",
            "allow_template_override": "NOTEBOOK",  # a page with "voila": {"template": ...} in its metadata
            "allow_theme_override": "NO",
            "file_allowlist": [r".*\.(png|jpg|gif|svg|html|csv)"],
        },
    }


def _positive(text):
    value = float(text)
    if not value > 0:
        raise argparse.ArgumentTypeError(f"must be more than 0, but is {text}")
    return value


def _parser():
    parser = argparse.ArgumentParser(
        prog="python -m liftcalc.pages.app_view",
        description=__doc__.splitlines()[0],
        epilog=NOTES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add = parser.add_argument
    add("--port", type=int, default=8866, help="port of the pages on this computer (8866; the next free one if taken)")
    add("--no-browser", action="store_true", help="only print the address")
    add(
        "--page", default="", metavar="NOTEBOOK", help="the page that is opened first (the front page, which lists all)"
    )
    add("--folder", type=Path, default=NOTEBOOKS, help="folder of the notebooks (those of the series)")
    add("--longest-part", type=_positive, default=60, metavar="SECONDS", help="a part of a page is stopped after (60)")
    add("--longest-idle", type=_positive, default=4, metavar="HOURS", help="a page nobody moves is put away after (4)")
    add("--most-pages", type=int, default=12, metavar="N", help="pages that may be open at a time (12, about 1.8 GB)")
    add("--no-warm-pages", action="store_true", help="keep no page ready: less memory, a slower start of 00, 09 and 14")
    return parser


def main(arguments=None):
    """Start the app view and stay until it is stopped with Ctrl+C."""
    parser = _parser()
    chosen = parser.parse_args(arguments)
    if not chosen.folder.is_dir():
        parser.error(
            f"no notebooks at {chosen.folder}: run this from a clone of the project, installed with 'pip install -e .'"
        )
    os.environ.update(environment())
    secret = os.environ.pop(SECRET, None) or secrets.token_urlsafe(24)
    if len(secret) < SHORTEST_SECRET:
        parser.error(f"{SECRET} must have at least {SHORTEST_SECRET} characters")
    try:
        from traitlets.config import Config

        from liftcalc.pages.app_view.server import AppView
    except ImportError as error:
        parser.error(f"{error.name} is not installed: pip install -e '.[notebooks]'")
    app = AppView(
        secret,
        longest_part=chosen.longest_part,
        longest_idle=3600 * chosen.longest_idle,
        most_pages=chosen.most_pages,
        are_warm=not chosen.no_warm_pages,
        first_page=chosen.page,
    )
    app.update_config(Config(options(chosen.folder.resolve(), chosen.port, not chosen.no_browser)))
    app.initialize([])
    app.start()
