"""The line view: a moving picture of a piece of the line, true to scale."""

import re
import xml.etree.ElementTree as ElementTree

import pytest

from liftcalc import Q
from liftcalc.figures.line_view import STYLE
from liftcalc.panels import LineViewPanel
from liftcalc.panels.line_picture import LinePicture


class Clock:
    now = 100.0

    def __call__(self):
        return self.now


@pytest.fixture
def running_view(monkeypatch):
    clock = Clock()
    monkeypatch.setattr(LineViewPanel, "make_picture", lambda self: LinePicture(clock))
    panel = LineViewPanel(spacing=Q(6.8, "m"), line_speed=Q(3.4, "m/s"))
    return panel, clock


def delay(panel):
    return -float(re.search(r"--delay:(-?[0-9.]+)s", panel.picture.html.value)[1])


def test_the_riders_do_not_jump_when_a_slider_moves(running_view):
    panel, clock = running_view
    panel.picture.button.value = True
    clock.now += 1.5  # three quarters of the headway of 2 s
    assert panel.picture.phase() == pytest.approx(0.75)
    panel.rows[0].slider.value = 3.4  # half the spacing: the headway is 1 s, the share of the way stays
    assert delay(panel) == pytest.approx(0.75 * 1.0)
    clock.now += 0.5
    assert panel.picture.phase() == pytest.approx(0.25)
    panel.picture.button.value = False
    clock.now += 77
    assert panel.picture.phase() == pytest.approx(0.25)
    assert "--rope:paused" in panel.picture.html.value
    panel.picture.button.value = True
    clock.now += 0.25
    assert panel.picture.phase() == pytest.approx(0.5)


def test_the_rope_stands_until_it_is_let_run_and_honours_reduced_motion(running_view):
    panel, clock = running_view
    clock.now += 5
    assert panel.picture.phase() == 0
    assert "--rope:paused" in panel.picture.html.value
    panel.picture.button.value = True
    assert "--rope:running" in panel.picture.html.value
    assert "prefers-reduced-motion: reduce" in STYLE
    assert STYLE in [child.value for child in panel.picture.widget.children]


@pytest.mark.parametrize(("spacing", "speed"), [(6.8, 3.4), (2.0, 6.0), (15.0, 0.6)])
def test_the_line_view_is_true_to_scale(spacing, speed):
    panel = LineViewPanel(spacing=Q(spacing, "m"), line_speed=Q(speed, "m/s"))
    svg = panel.picture.html.value
    step = float(re.search(r"--step:([0-9.]+)px", svg)[1])
    seconds = float(re.search(r"--headway:([0-9.]+)s", svg)[1])
    places = [float(x) for x in re.findall(r'<g transform="translate\((-?[0-9.]+) 0\)"><path d="M-17', svg)]
    gaps = {round(b - a, 1) for a, b in zip(places, places[1:], strict=False)}
    assert gaps == {round(step, 1)}
    pixels_a_metre = step / spacing
    assert pixels_a_metre == pytest.approx(20, rel=1e-3)
    assert step / seconds == pytest.approx(speed * pixels_a_metre, rel=1e-3)
    assert seconds == pytest.approx(spacing / speed, rel=1e-3)
    assert ElementTree.fromstring(svg[svg.index("<svg") :]).get("role") == "img"
