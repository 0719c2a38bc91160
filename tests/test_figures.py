"""Colours, axes and texts of the figures."""

import re
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest

import liftcalc.panels
from liftcalc import Q
from liftcalc.figures import style
from liftcalc.panels import notebook_state

PACKAGE = Path(liftcalc.__file__).parent
PANELS = [getattr(liftcalc.panels, name) for name in liftcalc.panels.__all__ if name.endswith("Panel")]
CHARTS = [kind for kind in PANELS if kind.__name__ not in ("StartPanel", "LineViewPanel")]


def linear(colour):
    channels = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    return [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]


def luminance(colour):
    red, green, blue = linear(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("name", style.COLOURS)
def test_every_colour_can_be_read_on_paper(name):
    # WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1
    assert contrast(style.COLOURS[name], style.PAPER) >= 4.5


# Viénot, Brettel and Mollon 1999, as widely reprinted (from memory): linear RGB for people without one kind of cone
BLINDNESS = {
    "protan": [[0.11238, 0.88762, 0], [0.11238, 0.88762, 0], [0.00401, -0.00401, 1]],
    "deutan": [[0.29275, 0.70725, 0], [0.29275, 0.70725, 0], [-0.02234, 0.02234, 1]],
}


@pytest.mark.parametrize("kind", [None, *BLINDNESS])
def test_colours_that_share_a_chart_stay_apart(kind):
    together = [("capacity", "length"), ("capacity", "spacing"), ("persons", "length"), ("persons", "capacity")]
    together += list(combinations(("line speed", "time", "persons", "spacing"), 2))
    for one, other in together:
        pair = [linear(style.COLOURS[name]) for name in (one, other)]
        if kind:
            pair = [[sum(a * b for a, b in zip(row, c, strict=True)) for row in BLINDNESS[kind]] for c in pair]
        apart = sum(abs(a - b) for a, b in zip(*pair, strict=True))
        assert apart > 0.05, f"{one} and {other}, {kind}: {apart:.3f}"


def test_colours_are_written_down_in_one_place_only():
    for path in PACKAGE.rglob("*.py"):
        if path.name not in ("style.py", "blank_sheet.py"):  # the blank is black on white paper
            assert not re.search(r"#[0-9a-fA-F]{6}\b", path.read_text(encoding="utf-8")), path.name


def texts_of(panel):
    """Return the texts of the overlay with the places of their ends, in pixels of the chart."""
    svg = panel.picture.html.value
    found = re.findall(
        r'<text x="([0-9.-]+)" y="([0-9.-]+)" text-anchor="(\w+)" font-size="([0-9.]+)"[^>]*>(.*?)</text>', svg
    )
    for x, y, anchor, size, text in found:
        width = 0.62 * float(size) * len(text)
        left = float(x) - {"start": 0, "middle": width / 2, "end": width}[anchor]
        yield text, left, left + width, float(y), float(size)


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("kind", CHARTS, ids=lambda kind: kind.__name__)
def test_no_text_of_a_chart_leaves_it_wherever_the_sliders_stand(kind, system):
    panel = kind()
    notebook_state().turn(system)
    try:
        for row in panel.rows:
            start = row.slider.value
            for share in (0, 0.1, 0.35, 0.6, 0.8, 1):
                row.slider.value = row.slider.min + share * (row.slider.max - row.slider.min)
                for text, left, right, y, size in texts_of(panel):
                    where = f"{text!r} at {row.control.name} {row.slider.value}"
                    assert left > -8, where
                    assert right < 748, where
                    assert size * 0.6 < y < panel.picture.chart.overlay.height + 2, where
            row.slider.value = start
    finally:
        notebook_state().turn("metric")


@pytest.mark.parametrize("kind", CHARTS, ids=lambda kind: kind.__name__)
def test_axes_have_labels_with_units(kind):
    panel = kind()
    axes = panel.picture.chart.ax
    if axes.axison:
        assert re.search(r"\(.+\)|persons|riders a second|rider", axes.get_xlabel() + axes.get_ylabel())
        assert axes.get_xlabel()
    assert panel.picture.chart.title.get_text()


@pytest.mark.parametrize("kind", CHARTS, ids=lambda kind: kind.__name__)
def test_axes_stay_where_they_are(kind):
    panel = kind()
    axes = panel.picture.chart.ax
    before = axes.get_xlim(), axes.get_ylim(), axes.get_position().bounds, panel.picture._background.value
    for row in panel.rows:
        start = row.slider.value
        row.slider.value = row.slider.max
        row.slider.value = start
    assert before == (axes.get_xlim(), axes.get_ylim(), axes.get_position().bounds, panel.picture._background.value)


def label_and_curves(chart):
    """Yield the words of each label, and how far it stands from its own curve and from the nearest other one."""
    for number, label in enumerate(chart.labels):
        if label.get_text():
            x, y = label.get_position()
            heights = [np.interp(x, *curve.get_data()) for curve in chart.curves]
            own = abs(heights.pop(number) - y)
            yield label.get_text(), own, min(abs(height - y) for height in heights)


@pytest.mark.parametrize("speed", [1.0, 2.0, 3.4, 5.0])
@pytest.mark.parametrize("spacing", [5.0, 6.8, 9.0])
def test_the_curves_of_the_capacity_chart_bear_their_own_names(spacing, speed):
    panel = liftcalc.panels.CapacityPanel(spacing=Q(spacing, "m"), line_speed=Q(speed, "m/s"))
    chart = panel.picture.chart
    capacities = {
        label.get_text(): np.interp(speed, *curve.get_data())
        for label, curve in zip(chart.labels, chart.curves, strict=True)
    }
    ideal = 3600 * speed / spacing
    assert capacities == pytest.approx({"": ideal, "twice the spacing": ideal / 2, "half the spacing": 2 * ideal})
    assert chart.dot.get_data() == ([speed], [min(ideal, 4000)])
    names = []
    for name, own, other in label_and_curves(chart):
        names.append(name)
        assert own < 0.5 * other, f"{name!r} stands nearer to another curve"
        assert own < 0.03 * 4000
    assert names == ["twice the spacing", "half the spacing"]
