"""The demo hill as the sheets in the data folder tell of it: what a panel shows that is given no lift."""

import functools
from pathlib import Path

from liftcalc.lifts.hill import read_hill
from liftcalc.units import PlainError

DATA = Path(__file__).parents[2] / "data"


def _hill(name):
    """Return a hill of the data folder; refuse to go on without it, and say what to do."""
    folder = DATA / name
    if not folder.is_dir():
        raise PlainError(
            f"demo_hill: there is no {folder}. Give the panel a hill of yours, or run it from the folder of "
            "the project."
        )
    return read_hill(folder)


@functools.cache
def demo_hill():
    """Return the lifts of the hill."""
    return _hill("hill")


@functools.cache
def demo_kinds():
    """Return a hill with one lift of each kind."""
    return _hill("kinds")


def demo_sheet():
    """Return the sheet of the Penny Rope."""
    return demo_hill().sheets["Penny Rope"]


def demo_line(name):
    """Return a line of the hill and its readings."""
    return demo_hill().line(name)
