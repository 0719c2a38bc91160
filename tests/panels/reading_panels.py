"""What a panel shows, read off it; and plain numbers as a panel writes them."""

import datetime
import re

import numpy as np
from example_tow import G


def status(panel):
    """Return the words above the drawing, as the page shows them."""
    return re.sub(r"<[^>]+>", " ", panel.picture.html.value.partition("<svg")[0])


def put(kind, system, **settings):
    """Return a panel with these settings, read in one system of units."""
    panel = kind(**settings)
    panel.state.use_units(system)
    return panel


def cards(panel):
    """Return what stands on the cards of a panel."""
    return {name: panel.text(value) for name, value in panel.results.items()}


def bring(button, *files):
    """Let files come by a button, as the page hands them over: paths, or pairs of name and bytes."""
    came = [file if isinstance(file, tuple) else (file.name, file.read_bytes()) for file in files]
    when = datetime.datetime(2026, 2, 14, tzinfo=datetime.UTC)
    button.upload.value = tuple(
        {"name": name, "type": "text/csv", "size": len(raw), "content": memoryview(raw), "last_modified": when}
        for name, raw in came
    )


def drawn(line):
    """Return the points of a line of a chart."""
    return [np.asarray(column, dtype=float) for column in line.get_data()]


# plain arithmetic, once in metric units and once in US units

UNIT_SIZES = {  # NIST SP 811, appendix B
    "metric": {"power": (1000, "kW"), "force": (1, "N"), "mass": (1, "kg"), "speed": (1, "m/s"), "length": (1, "m")},
    "us": {"power": (745.699872, "hp"), "force": (4.44822162, "lbf"), "mass": (0.45359237, "lb"),
           "speed": (0.44704, "mph"), "length": (0.3048, "ft")},
}  # fmt: skip


def written(value, what, system, digits):
    """Return a plain number in basic units as a panel writes it."""
    size, word = UNIT_SIZES[system][what]
    return f"{value / size:,.{digits}f} {word}"


def on_the_slope(mass, percent, friction):
    """Return what one rider takes to be lifted, and to be drawn over the snow, in N along the slope."""
    length = np.hypot(1, percent / 100)
    return mass * G * percent / 100 / length, mass * G * friction / length
