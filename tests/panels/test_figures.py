"""Colours, axes and texts of the figures."""

import math
import re
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest
from matplotlib.collections import Collection
from matplotlib.colors import to_hex

import liftcalc.panels
from liftcalc import Q
from liftcalc.figures import style
from liftcalc.figures.limits import LIMIT_STYLES
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


# Machado, Oliveira and Fernandes 2009, severity 1.0 (from memory): linear RGB as seen without one kind of cone
WITHOUT_ONE_CONE = {
    "protan": [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
    "deutan": [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]],
    "tritan": [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]],
}
# linear sRGB to XYZ, IEC 61966-2-1 (from memory); the row sums are its white
XYZ = [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]]


def lab(colour, kind=None):
    """Return a colour in CIELAB, as seen without one kind of cone or with all three."""
    channels = np.array(linear(colour))
    if kind:
        channels = np.clip(np.array(WITHOUT_ONE_CONE[kind]) @ channels, 0, 1)
    ratios = (np.array(XYZ) @ channels) / np.array(XYZ).sum(axis=1)
    x, y, z = np.where(ratios > (6 / 29) ** 3, np.cbrt(ratios), ratios / (3 * (6 / 29) ** 2) + 4 / 29)
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def apart(one, other):
    """Return the difference of two colours in CIELAB by CIEDE2000."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean = (math.hypot(a1, b1) + math.hypot(a2, b2)) / 2
    stretch = 1.5 - 0.5 * math.sqrt(mean**7 / (mean**7 + 25**7))
    c1, c2 = math.hypot(stretch * a1, b1), math.hypot(stretch * a2, b2)
    h1, h2 = (math.degrees(math.atan2(b, stretch * a)) for a, b in ((a1, b1), (a2, b2)))
    turn = (h2 - h1 + 180) % 360 - 180 if c1 and c2 else 0.0
    hue = h1 + turn / 2 if c1 and c2 else h1 + h2
    light, chroma = (l1 + l2) / 2, (c1 + c2) / 2
    waves = ((-0.17, 1, -30), (0.24, 2, 0), (0.32, 3, 6), (-0.20, 4, -63))
    by_hue = 1 + sum(share * math.cos(math.radians(times * hue + shift)) for share, times, shift in waves)
    lighter = (l2 - l1) / (1 + 0.015 * (light - 50) ** 2 / math.sqrt(20 + (light - 50) ** 2))
    stronger = (c2 - c1) / (1 + 0.045 * chroma)
    turned = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(turn / 2)) / (1 + 0.015 * chroma * by_hue)
    in_the_blue = 60 * math.exp(-((((hue % 360) - 275) / 25) ** 2))
    mixed = -2 * math.sqrt(chroma**7 / (chroma**7 + 25**7)) * math.sin(math.radians(in_the_blue))
    return math.sqrt(lighter**2 + stronger**2 + turned**2 + mixed * stronger * turned)


# Sharma, Wu and Dalal 2005, the test pairs of their table (from memory)
CIEDE2000 = [
    ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
    ((50, -1.3802, -84.2814), (50, 0, -82.7485), 1.0000),
    ((50, 0, 0), (50, -1, 2), 2.3669),
    ((50, 2.49, -0.001), (50, -2.49, 0.0009), 7.1792),
    ((50, 2.49, -0.001), (50, -2.49, 0.0011), 7.2195),
    ((50, -0.001, 2.49), (50, 0.0009, -2.49), 4.8045),
    ((50, 2.5, 0), (50, 0, -2.5), 4.3065),
    ((50, 2.5, 0), (73, 25, -18), 27.1492),
    ((50, 2.5, 0), (61, -5, 29), 22.8977),
    ((50, 2.5, 0), (56, -27, -3), 31.9030),
    ((50, 2.5, 0), (58, 24, 15), 19.4535),
    ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
    ((63.0109, -31.0961, -5.8663), (62.8187, -29.7946, -4.0864), 1.2630),
    ((6.7747, -0.2908, -2.4247), (5.8714, -0.0985, -2.2286), 0.6377),
    ((2.0776, 0.0795, -1.1350), (0.9033, -0.0636, -0.5514), 0.9082),
]


@pytest.mark.parametrize(("one", "other", "printed"), CIEDE2000)
def test_the_measure_of_colours_agrees_with_published_pairs(one, other, printed):
    assert apart(one, other) == pytest.approx(printed, abs=0.00005)
    assert apart(other, one) == pytest.approx(printed, abs=0.00005)


def quantities_on(panel):
    """Return the quantities whose colours meet on the drawing of a panel."""
    if not hasattr(panel.picture, "chart"):
        seen = set(re.findall(r"#[0-9a-f]{6}", panel.picture.html.value))
    else:
        looks = ("get_color", "get_facecolor", "get_edgecolor", "get_markerfacecolor")
        artists = [part for part in panel.picture.chart.figure.findobj() if not isinstance(part, Collection)]
        seen = {to_hex(getattr(part, look)()) for part in artists for look in looks if hasattr(part, look)}
    return [name for name, colour in style.COLOURS.items() if colour in seen]


def test_the_colours_that_meet_are_found():
    set_by = [quantity for quantity, _ in LIMIT_STYLES.values()]
    assert set(quantities_on(liftcalc.panels.LimitsPanel())) == {*set_by, "capacity"}
    assert set(quantities_on(liftcalc.panels.LineViewPanel())) == {"spacing", "time", "persons"}


@pytest.mark.parametrize("kind", PANELS, ids=lambda kind: kind.__name__)
def test_colours_that_meet_on_a_chart_are_told_apart_without_any_one_cone(kind, panel_of):
    together = quantities_on(panel_of(kind))
    assert together
    for sight in (None, *WITHOUT_ONE_CONE):
        for one, other in combinations(together, 2):
            difference = apart(*(lab(style.COLOURS[name], sight) for name in (one, other)))
            assert difference >= 10, f"{one} and {other}, {sight}: {difference:.1f}"


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
def test_no_text_of_a_chart_leaves_it_wherever_the_sliders_stand(kind, system, panel_of):
    panel = panel_of(kind)
    in_metric = panel.picture.html.value
    notebook_state().use_units(system)
    same_controls = all(row.control.us == row.control.metric for row in panel.rows)
    if system == "us" and same_controls and panel.picture.html.value == in_metric:
        notebook_state().use_units("metric")
        return  # a panel without such units: looked at in the one system
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
        notebook_state().use_units("metric")


@pytest.mark.parametrize("kind", CHARTS, ids=lambda kind: kind.__name__)
def test_axes_have_labels_with_units(kind, panel_of):
    panel = panel_of(kind)
    axes = panel.picture.chart.ax
    if axes.axison:
        assert re.search(r"\(.+\)|persons|riders a second|rider", axes.get_xlabel() + axes.get_ylabel())
        assert axes.get_xlabel()
    assert panel.picture.chart.title.get_text()


@pytest.mark.parametrize("kind", CHARTS, ids=lambda kind: kind.__name__)
def test_axes_stay_where_they_are(kind, panel_of):
    panel = panel_of(kind)
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
