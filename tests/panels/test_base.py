"""Every panel outside a page: linked controls, two systems of units, and words that follow."""

import base64
import re

import pytest
from messages import refuses, table_of_messages
from reading_panels import status

import liftcalc.panels
from liftcalc import Q, UnitError, hourly_capacity
from liftcalc.panels import CapacityPanel, LengthPanel, RoutesPanel, TrackPanel, notebook_state

PANELS = [getattr(liftcalc.panels, name) for name in liftcalc.panels.__all__ if name.endswith("Panel")]

# controls at their hastiest, for every panel that makes people an hour of a spacing or an interval
HASTY = {"line_speed": Q(6, "m/s"), "spacing": Q(1.5, "m"), "interval": Q(1, "s"), "clearing_time": Q(1, "s"),
         "practical_gap": Q(0.5, "m")}  # fmt: skip
INTENDED = {
    "StartPanel": "people an hour",
    "RoundingPanel": "rounded at the end",
    "LineViewPanel": "people an hour",
    "MixPanel": "people an hour",
    "UnloadPanel": "people an hour at that spacing",
    "FlowPanel": "people an hour",
    "CapacityPanel": "people an hour",
    "IntervalPanel": "people an hour",
    "RoutesPanel": "speed and spacing",
    "CountPanel": "from speed and spacing",
    "KindPanel": "people an hour",
}


@pytest.mark.parametrize("kind", PANELS, ids=lambda kind: kind.__name__)
def test_words_picture_and_result_hold_the_same_numbers(kind, panel_of):
    panel = panel_of(kind)
    levels = {getattr(value, "level", None) for value in panel.results.values()}
    assert bool(levels & {"ideal", "packing"}) == (kind.__name__ in INTENDED), "below it is tried where nobody loads so"
    words = panel.describe()
    for name, value in panel.results.items():
        assert name in words
        assert panel.text(value) in words
        assert panel.text(value) in status(panel)
    assert "role='status'" in panel.picture.html.value
    bundle = panel._repr_mimebundle_()
    assert bundle["text/plain"] == words
    assert "application/vnd.jupyter.widget-view+json" in bundle
    kind_of_picture, data = re.search(r'src="data:image/([a-z+]+);base64,([^"]+)"', bundle["text/html"]).groups()
    picture = base64.b64decode(data)
    assert picture.startswith(b"\x89PNG") if kind_of_picture == "png" else picture.startswith(b"<svg")


@pytest.mark.parametrize("kind", PANELS, ids=lambda kind: kind.__name__)
def test_each_slider_is_paired_with_a_named_number_box(kind, panel_of):
    panel = panel_of(kind)
    assert [row.control.name for row in panel.rows] == list(panel.control_names)
    for row in panel.rows:
        assert row.box.description.startswith(row.control.label)
        assert len(row.box.description) <= 27, "a longer name is cut in the page"
        row.slider.value = row.slider.max
        assert row.box.value == pytest.approx(row.slider.max)
        row.box.value = row.slider.min
        assert row.slider.value == pytest.approx(row.slider.min)
        scale = row.control.scale("metric")
        assert notebook_state().values[row.control.name].m_as(scale.unit) == pytest.approx(scale.low)


@pytest.mark.parametrize("kind", PANELS, ids=lambda kind: kind.__name__)
def test_a_panel_turns_to_us_units_and_back_without_losing_a_value(kind, panel_of):
    panel = panel_of(kind)
    before, words = dict(panel.given), panel.describe()
    notebook_state().use_units("us")
    for name, value in panel.given.items():
        assert value.m_as(before[name].units) == pytest.approx(before[name].magnitude, rel=1e-9)
    for row in panel.rows:
        scale = row.control.us
        assert (row.slider.min, row.slider.max) == (scale.low, scale.high)
    notebook_state().use_units("metric")
    assert panel.describe() == words


def test_the_moved_panel_computes_with_the_package():
    panel = CapacityPanel(line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"))
    panel.rows[0].slider.value = 2.5
    assert panel.result.value == hourly_capacity(Q(2.5, "m/s"), Q(6.8, "m"))
    assert str(panel.result) in status(panel)
    assert panel.result.level == "ideal"


MESSAGES = [
    (
        lambda: CapacityPanel(line_speed=3.4),
        "CapacityPanel: line_speed must be a quantity in a unit such as 'm/s', but got 3.4. Write Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: CapacityPanel(line_speed=Q(3.4, "m")),
        "CapacityPanel: line_speed must be a quantity in a unit such as 'm/s', but got 3.4 m. Write Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: CapacityPanel(spacing=Q(0.1, "m")),
        "CapacityPanel: spacing must lie from 1.5 to 40 m, but got 0.1 m.",
    ),
    (
        lambda: CapacityPanel(system="imperial"),
        "NotebookState: system must be one of us, metric, but got 'imperial'.",
    ),
]


@table_of_messages(MESSAGES)
def test_a_panel_refuses(call, message, kind):
    refuses(call, message, kind)


def test_a_control_that_a_panel_has_not_is_refused():
    with pytest.raises(TypeError) as caught:
        CapacityPanel(speed=Q(3, "m/s"))
    assert str(caught.value) == (
        "CapacityPanel: 'speed' is no control of this panel. Write one of line_speed, spacing, persons_per_carrier, "
        "vertical_rise."
    )


def test_panels_begin_at_the_demo_tow():
    routes = RoutesPanel()
    assert routes.results["the second over the first"] == "97 %", "22 heads of the 22.6 of a full line"
    track = TrackPanel()
    assert track.reading.speed.m_as("m/s") == pytest.approx(3.4, rel=1e-3)
    assert (track.reading.vertical_rise / track.reading.ridden_length).m_as("") == pytest.approx(29.4 / 150, rel=1e-3)
    length = LengthPanel()
    timed = length.methods[2]  # own arithmetic: 3.4 x 45.3 - 3.4^2 / (2 x 1.5)
    assert timed.value.m_as("m") == pytest.approx(154.02 - 3.853, abs=0.001)
    # v: T - v / a; T: v; a: v^2 / (2 a^2); each with its half-width over the root of 3
    parts = (0.1 * (45.3 - 3.4 / 1.5), 0.5 * 3.4, 0.5 * 3.4**2 / (2 * 1.5**2))
    doubt = sum(part**2 / 3 for part in parts) ** 0.5
    assert timed.standard_uncertainty.m_as("m") == pytest.approx(doubt, rel=1e-3)


@pytest.mark.parametrize("name", INTENDED)
def test_a_panel_says_where_nobody_loads_so(name):
    panel = getattr(liftcalc.panels, name)()
    if name != "MixPanel":  # its gap is one that just fits
        panel.state.values["spacing"] = Q(6.8, "m")
        panel.refresh()
        assert "nobody loads so" not in panel.describe() + status(panel)
    hasty = {control: value for control, value in HASTY.items() if control in panel.control_names}
    panel.state.values.update(hasty)
    panel.refresh()
    assert "; nobody loads so)" in str(panel.results[INTENDED[name]])
    assert "; nobody loads so)" in panel.describe(), "in words for those who see no panel"
    assert re.search(r"at one place: nobody loads so\. .* or more", status(panel)), "with the reason"
    control, value = hasty.popitem()
    assert "nobody loads so" in str(panel.at_settings(control, [value]))
