"""The demo hill as its files in the data folder tell of it: what a panel shows that is given no lift."""

import functools
from pathlib import Path

from liftcalc.fieldwork import read_field_sheet
from liftcalc.lifts.installation import lines_of, read_lifts
from liftcalc.lifts.readings import read_readings
from liftcalc.units import PlainError

DATA = Path(__file__).parents[2] / "data"


def _file(name):
    """Return the path of a file of the demo hill; refuse to go on without it, and say what to do."""
    path = DATA / name
    if not path.is_file():
        raise PlainError(
            f"demo_hill: there is no {path}. Give the panel a line and its readings, or run it from the folder of the "
            "project."
        )
    return path


@functools.cache
def demo_sheet():
    """Return the field sheet of the Penny Rope."""
    return read_field_sheet(_file("field_sheet.csv"))


@functools.cache
def demo_kinds():
    """Return one installation of each kind of lift, by the name of its kind."""
    return read_lifts(_file("kind_examples.csv"))


@functools.cache
def demo_lifts():
    """Return the installations of the hill by name, and the readings of each line by its name."""
    return read_lifts(_file("hill_lifts.csv")), read_readings(_file("hill_readings.csv"))


def demo_line(name):
    """Return a line of the hill and its readings."""
    lifts, readings = demo_lifts()
    return next(line for line in lines_of(lifts) if line.name == name), readings[name]
