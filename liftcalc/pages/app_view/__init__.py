"""The app view: the notebooks as pages with sliders and no code.

    python -m liftcalc.pages.app_view
    python -m liftcalc.pages.app_view --port 8870 --no-browser

It serves the notebooks to this computer only and asks nothing of the network.
"""

import argparse
import os
import subprocess
import sys
from pathlib import Path

from liftcalc.exercises.record import IN_MEMORY, PLACE

TEMPLATES = Path(__file__).parent / "templates"  # without style sheets from outside: it works with no network
NOTEBOOKS = Path(__file__).parents[3] / "notebooks"

FIRST = "00_start_here.ipynb"


def command(port=8866, browser=True, folder=NOTEBOOKS):
    """Return the arguments that start the app view."""
    arguments = [
        sys.executable,
        "-m",
        "voila",
        str(folder),
        f"--port={port}",
        "--Voila.ip=127.0.0.1",
        "--VoilaConfiguration.template=plain_page",
        "--VoilaConfiguration.allow_template_override=NOTEBOOK",  # the talk has a template of its own
        "--VoilaConfiguration.classic_tree=True",
        "--VoilaConfiguration.file_allowlist=['.*\\.(png|jpg|gif|svg|html|csv)']",
    ]
    return arguments if browser else [*arguments, "--no-browser"]


def environment():
    """Return the environment with the page template on Jupyter's path; answers to exercises stay in memory."""
    paths = [str(TEMPLATES), *filter(None, [os.environ.get("JUPYTER_PATH")])]
    return {**os.environ, "JUPYTER_PATH": os.pathsep.join(paths), PLACE: IN_MEMORY}


def main(arguments=None):
    """Start the app view and stay until it is stopped with Ctrl+C."""
    parser = argparse.ArgumentParser(prog="python -m liftcalc.pages.app_view", description=__doc__.splitlines()[0])
    parser.add_argument("--port", type=int, default=8866, help="port of the pages on this computer (8866)")
    parser.add_argument("--no-browser", action="store_true", help="only print the address")
    parser.add_argument("--page", default=FIRST, help=f"the notebook that is opened first ({FIRST})")
    chosen = parser.parse_args(arguments)
    if not NOTEBOOKS.is_dir():
        parser.error(
            f"no notebooks at {NOTEBOOKS}: run this from a clone of the project, installed with 'pip install -e .'"
        )
    start = f"http://127.0.0.1:{chosen.port}/voila/render/{chosen.page}"
    print(f"The pages are at {start} ; stop with Ctrl+C.", flush=True)
    arguments = command(chosen.port, not chosen.no_browser)
    if os.name == "nt":  # Windows cannot turn one program into another
        sys.exit(subprocess.call(arguments, env=environment()))
    os.execve(arguments[0], arguments, environment())
