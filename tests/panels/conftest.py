"""Panels that several tests only move are made once: most of a panel's cost is its making.

And the still part of a chart is drawn once for each look that it has, not for each panel of that look.
"""

import pytest
from matplotlib.lines import Line2D
from matplotlib.patches import Patch
from matplotlib.text import Text

from liftcalc.figures.chart import Chart
from liftcalc.panels import notebook_state

MADE, DRAWN = {}, {}
_draw = Chart.background


def _look(artist):
    """Return what an artist of the still part looks like."""
    if isinstance(artist, Line2D):
        return artist.get_xydata().tobytes(), artist.get_color(), artist.get_linestyle()
    if isinstance(artist, Patch):
        return (
            artist.get_path().vertices.tobytes(),
            artist.get_transform().get_matrix().tobytes(),
            artist.get_facecolor(),
        )
    return (artist.get_text(), artist.get_position()) if isinstance(artist, Text) else type(artist).__name__


def _marks(axis):
    """Return what sets the marks of an axis beside its ends."""
    locator, formatter = axis.get_major_locator(), axis.get_major_formatter()
    return type(locator), str(getattr(locator, "locs", "")), type(formatter), getattr(formatter, "func", None)


def _background(chart):
    """Return the still part, drawn if no chart of this class has had the same axes, words and shapes before."""
    looks = [type(chart), chart.height]
    for ax in chart.figure.axes:
        looks += [ax.get_xlim(), ax.get_ylim(), ax.get_xlabel(), ax.get_ylabel(), ax.get_position().bounds]
        looks += [tuple(map(_marks, (ax.xaxis, ax.yaxis)))]
        looks += [_look(artist) for artist in ax.get_children() if not artist.get_animated()]
    look = tuple(looks)
    if look not in DRAWN:
        DRAWN[look] = _draw(chart)
    return DRAWN[look]


@pytest.fixture(autouse=True)
def drawn_once_for_each_look(monkeypatch):
    """Keep the still parts that were drawn."""
    monkeypatch.setattr(Chart, "background", _background)


@pytest.fixture
def panel_of():
    """Return a function that gives the one panel of a class, in the notebook of the test and at its start."""
    state, given = notebook_state(), []

    def give(kind):
        if kind not in MADE:
            MADE[kind] = kind()
        panel = MADE[kind]
        if panel not in given:
            given.append(panel)
            state._panels[panel.name] = panel
            if panel._units.value == state.system:
                panel.follow()
            else:
                panel.use_units()
        return panel

    yield give
    for panel in given:  # what stays in the notebook is closed before the next test
        state._panels.pop(panel.name, None)
