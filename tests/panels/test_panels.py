"""Panels outside a page: linked controls, one shared state, two systems of units, and words that follow."""

import base64
import math
import re
import xml.etree.ElementTree as ElementTree
from datetime import datetime
from pathlib import Path

import numpy as np
import pytest

import liftcalc.panels
from liftcalc import Q, UnitError, hourly_capacity
from liftcalc.fieldwork import read_field_sheet, read_track
from liftcalc.figures.line_view import STYLE
from liftcalc.panels import (
    AgreementPanel,
    BudgetPanel,
    CapacityPanel,
    FlowPanel,
    LengthPanel,
    LineViewPanel,
    MixPanel,
    PowerRulerPanel,
    RidersPanel,
    RoutesPanel,
    SpeedRulerPanel,
    SpreadPanel,
    StartPanel,
    StoppingPanel,
    TrackPanel,
    UnloadPanel,
    notebook_state,
)
from liftcalc.panels.line_picture import LinePicture

PANELS = [getattr(liftcalc.panels, name) for name in liftcalc.panels.__all__ if name.endswith("Panel")]


def status(panel):
    """Return the words above the drawing, as the page shows them."""
    return re.sub(r"<[^>]+>", " ", panel.picture.html.value.partition("<svg")[0])


@pytest.mark.parametrize("kind", PANELS, ids=lambda kind: kind.__name__)
def test_words_picture_and_result_hold_the_same_numbers(kind, panel_of):
    panel = panel_of(kind)
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
        assert len(row.box.description) <= 22, "a longer name is cut in the page"
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


def test_panels_of_one_notebook_stay_in_step():
    first, second = CapacityPanel(), RidersPanel()
    first.rows[1].slider.value = 10.0
    assert second.given["spacing"] == Q(10, "m")
    assert second.rows[1].box.value == 10
    assert "10.0 m" in second.describe()


def test_in_a_running_loop_the_others_follow_when_keys_rest():
    import asyncio

    first, second = CapacityPanel(), RidersPanel()

    async def presses():
        for value in (7.0, 8.0, 9.0):
            first.rows[1].slider.value = value
            assert str(first.given["spacing"].magnitude) == str(value)
        at_once = second.rows[1].box.value
        await asyncio.sleep(0.4)
        return at_once, second.rows[1].box.value

    assert asyncio.run(presses()) == (6.8, 9.0)


def test_a_value_outside_the_range_is_told_and_the_last_good_one_stays():
    panel = CapacityPanel(spacing=Q(6.8, "m"))
    before = str(panel.result)
    panel.rows[1].box.value = 400
    assert "Spacing: 400 m is outside the range of this panel. Write a number from 1.5 to 40 m; 6.8 m stays." in status(
        panel
    )
    assert panel.rows[1].box.value == 6.8
    assert str(panel.result) == before
    panel.rows[1].box.value = 7
    assert "outside" not in status(panel)


def test_the_echo_of_a_rounded_value_does_not_replace_a_reading():
    panel = CapacityPanel(spacing=Q(6.786, "m"))
    panel.rows[1].slider.value = 6.800000000000001
    assert panel.given["spacing"] == Q(6.786, "m")
    notebook_state().use_units("us")  # 22.26 ft, between two steps of half a foot
    assert panel.rows[1].box.value == 22.3
    assert panel.rows[1].slider.value == 22.5
    assert panel.given["spacing"].m_as("m") == pytest.approx(6.786)


def test_a_typed_number_between_two_steps_is_kept():
    panel = CapacityPanel(spacing=Q(6.8, "m"))
    panel.rows[1].box.value = 7.123
    panel.rows[1].slider.value = 7.1  # what the page echoes
    assert panel.given["spacing"] == Q(7.123, "m")
    assert panel.rows[1].box.value == 7.123


def test_a_panel_made_again_takes_the_place_of_the_older():
    older = CapacityPanel()
    newer = CapacityPanel(spacing=Q(9, "m"))
    assert older.comm is None
    assert list(notebook_state()._panels.values()) == [newer]
    assert len({CapacityPanel(name="left").name, CapacityPanel(name="right").name}) == 2
    assert len(notebook_state()._panels) == 3


@pytest.mark.parametrize(
    ("call", "kind", "message"),
    [
        (lambda: CapacityPanel(speed=Q(3, "m/s")), TypeError, "CapacityPanel: 'speed' is no control of this panel."),
        (lambda: CapacityPanel(line_speed=3.4), UnitError, r"but got 3.4. Write Q\(3.4, 'm/s'\)."),
        (lambda: CapacityPanel(line_speed=Q(3.4, "m")), UnitError, "must be a quantity in a unit such as 'm/s'"),
        (lambda: CapacityPanel(spacing=Q(0.1, "m")), ValueError, "spacing must lie from 1.5 to 40 m, but got 0.1 m."),
        (lambda: CapacityPanel(system="imperial"), ValueError, "system must be one of us, metric, but got 'imperial'."),
    ],
)
def test_a_panel_refuses(call, kind, message):
    with pytest.raises(kind, match=message):
        call()


def test_the_start_panel_leaves_out_what_was_not_read(tmp_path):
    path = tmp_path / "short.csv"
    path.write_text("quantity,value,unit,plus_minus,method,note\nline speed,3,m/s,,,\nspacing,6,m,,,\n")
    panel = StartPanel(read_field_sheet(path))
    assert panel.control_names == ("line_speed", "spacing")
    assert str(panel.result) == "1,800 pph (ideal)"
    assert "ride time" not in panel.describe()
    assert "vertical" not in panel.describe()
    assert "Left out: riders on the line and ride time (no reading of ridden length); vertical transport" in status(
        panel
    )


def test_the_start_panel_computes_with_the_pick_up_of_the_sheet_and_says_so():
    panel = StartPanel(read_field_sheet(DATA / "field_sheet.csv"))
    assert panel.text(panel.results["ride time"]) == "45.3 s"
    assert panel.text(panel.results["riders on the line, on average"]) == "22.6 persons"
    assert "Ride time and riders: a start from rest at 1.50 m/s² (assumed)." in status(panel)
    tow = {"line_speed": Q(3.4, "m/s"), "spacing": Q(6.8, "m"), "ridden_length": Q(150, "m")}
    demo = StartPanel(name="no sheet", **tow)
    assert demo.results["ride time"].m_as("s") == pytest.approx(150 / 3.4 + 3.4 / 3, rel=1e-9)
    notebook_state().use_units("us")
    assert "a start from rest at 4.9 ft/s² (assumed)" in status(panel)


def test_without_a_pick_up_the_start_panel_says_what_it_takes(tmp_path):
    path = tmp_path / "short.csv"
    rows = "line speed,3,m/s,,,\nspacing,6,m,,,\nridden length,150,m,,,\nvertical rise,30,m,,,\n"
    path.write_text("quantity,value,unit,plus_minus,method,note\n" + rows)
    panel = StartPanel(read_field_sheet(path))
    assert panel.text(panel.results["ride time"]) == "50.0 s"
    said = "Ride time and riders: at the speed of the rope from the first metre, as on a belt or a chair"
    assert f"{said} (no reading of pick-up acceleration)." in status(panel)
    path.write_text(path.read_text() + "pick-up acceleration,1,m/s2,,video of ten riders,\n")
    panel = StartPanel(read_field_sheet(path))
    assert panel.text(panel.results["ride time"]) == "51.5 s"
    assert "a start from rest at 1.00 m/s² (video of ten riders)." in status(panel)


FLOWS = [  # line speed, ridden length, pick-up, ride time, average, most; own arithmetic at 6.8 m
    (3.4, 150, 1.5, 45.25, 22.63, 23),
    (3.4, 150, 4.0, 44.54, 22.27, 23),
    (3.4, 149, 1.5, 44.96, 22.48, 23),  # 149 m / 6.8 m is 21.9: posts in metres would say 22
    (6.0, 150, 1.5, 27.00, 23.82, 24),
    (6.0, 20, 0.5, 8.944, 7.892, 8),  # let go before the speed of the rope: sqrt(2 L / a)
]


@pytest.mark.parametrize(("speed", "length", "pick_up", "ride", "average", "most"), FLOWS)
def test_flow_times_the_time_of_riders_who_start_from_rest(speed, length, pick_up, ride, average, most):
    panel = FlowPanel(
        line_speed=Q(speed, "m/s"), spacing=Q(6.8, "m"), ridden_length=Q(length, "m"),
        pick_up_acceleration=Q(pick_up, "m/s**2"),
    )  # fmt: skip
    assert panel.results["ride time"].m_as("s") == pytest.approx(ride, rel=1e-3)
    assert panel.result.m_as("person") == pytest.approx(average, rel=1e-3)
    assert panel.results["most at one moment"] == Q(most, "person")
    assert ("let go before" in status(panel)) == (length == 20)


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


def test_a_ruler_shows_every_unit_in_both_systems():
    panel = SpeedRulerPanel(line_speed=Q(3.4, "m/s"))
    for system in ("us", "metric"):
        notebook_state().use_units(system)
        for text in ("3.40 m/s", "12.2 km/h", "7.6 mph", "11.2 ft/s", "669 ft/min"):
            assert text in status(panel)


STOPS = [  # riders, brake [N], grade [%], after a stop gate, what riders do: own arithmetic
    (22, 0, 20, "4.2 m, empty 6.3 m", "riders who hold on slow the rope down"),
    (22, 538.63, 20, "3.9 m, empty 3.9 m", "riders make no difference to the rope"),
    (22, 2000, 20, "3.4 m, empty 2.6 m", "whoever holds on pushes it on"),
    (22, 0, 2, "7.8 m, empty 6.3 m", "whoever holds on pushes it on"),
]


@pytest.mark.parametrize(("riders", "brake", "grade", "gate", "sentence"), STOPS, ids=[case[3] for case in STOPS])
def test_the_stopping_panel_shows_the_empty_rope_and_the_full_one(riders, brake, grade, gate, sentence):
    panel = StoppingPanel(
        riders_on_rope=Q(riders, "person"),
        brake_force=Q(brake, "N"),
        grade=Q(grade, "percent"),
        line_speed=Q(3.4, "m/s"),
    )
    assert panel.results["rope, after a stop gate trips"] == gate
    assert gate.split()[0] in panel.picture.chart.title.get_text()
    assert sentence in status(panel)
    assert "A stop tried without riders proves nothing about a full line." in status(panel)
    even = "none: idle drag is above it" if grade == 2 else "539 N"
    assert panel.text(panel.results["brake at which riders make no difference"]) == even


def test_nobody_is_inside_the_stopping_distance_who_is_not_on_the_rope():
    panel = StoppingPanel(
        spacing=Q(2, "m"), line_speed=Q(3.4, "m/s"), reaction_time=Q(2, "s"), brake_force=Q(2000, "N")
    )
    inside = {}
    for riders in (0, 1, 3, 22):
        panel.rows[0].slider.value = riders
        shown = [mark for mark in panel.picture.chart.marks if mark.get_visible()]
        inside[riders] = panel.results["inside the attendant's distance, at most"].m_as("person"), len(shown)
    assert inside == {0: (0, 0), 1: (1, 0), 3: (3, 2), 22: (6, 12)}, "10.2 m, a rider every 2 m; the last 9 m behind"


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


def test_every_panel_that_shows_an_intended_capacity_is_tried_here(panel_of):
    shown = {
        kind.__name__
        for kind in PANELS
        if any(getattr(value, "level", None) in ("ideal", "packing") for value in panel_of(kind).results.values())
    }
    assert shown == set(INTENDED)


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


DATA = Path(__file__).resolve().parents[2] / "data"


def uploaded(name, content):
    """Return what the upload button hands over for one file."""
    return ({"name": name, "type": "", "size": len(content), "content": content, "last_modified": datetime.now()},)


def test_the_steady_part_can_be_dragged_and_typed():
    panel = TrackPanel(read_track(DATA / "penny_rope_track.gpx"))
    found = panel.describe()
    assert panel.ends.value == tuple(panel.given[name].m_as("s") for name in panel.control_names)
    assert panel.ends.max == panel.rows[0].slider.max == panel._last, "the slider ends where the track ends"
    panel.ends.value = (10.0, 76.0)
    assert panel.rows[0].box.value == 10
    assert panel.reading.start == 10
    assert panel.describe() != found
    panel.rows[0].box.value = 44
    assert panel.ends.value == (44.0, 76.0)
    assert panel.describe() == found
    panel.ends.value = (44.0, 46.0)  # no fix at 45 s
    assert panel.result == "not from this part"
    assert "holds 2 points" in status(panel)
    panel.rows[1].box.value = 20
    assert "The part would end at 20 s, before its start at 44 s. Move one end." in status(panel)


def test_a_track_of_ones_own_is_taken_or_refused_with_a_reason():
    panel = TrackPanel(read_track(DATA / "penny_rope_track.gpx"))
    panel.upload.value = uploaded("mine.gpx", (DATA / "long_platter_track.gpx").read_bytes())
    assert panel.track.name == "mine.gpx"
    assert panel.reading.speed.m_as("m/s") == pytest.approx(2.8, abs=0.1), "the invented speed of the Long Platter"
    assert panel.ends.max == panel._last == panel.rows[1].slider.max
    assert "mine.gpx: " in panel.picture.chart.title.get_text()
    words = panel.describe()
    panel.upload.value = uploaded("broken.gpx", b"<gpx><trk>")
    assert panel.describe() == words, "nothing is lost"
    assert "broken.gpx, line 1" in status(panel)
    with pytest.raises(ValueError, match="the track must come from read_track, but got 'x.gpx'"):
        TrackPanel("x.gpx")


def test_lengths_agree_only_when_they_are_one_length():
    panel = LengthPanel(
        map_length=Q(160, "m"), vertical_rise=Q(31.9, "m"), line_speed=Q(3.4, "m/s"), ride_time=Q(45.3, "s")
    )
    assert panel.results["do they agree"] == "no"
    assert panel.combined.odd_one == "map line and rise"
    panel.rows[0].box.value = 147
    assert panel.results["do they agree"] == "yes"


def test_the_length_has_no_share_in_people_an_hour():
    panel = BudgetPanel()
    before = panel.describe()
    panel.rows[2].box.value = 40
    assert panel.budget.rows[2].share == 0
    assert panel.describe().replace("doubt of length 40%", "doubt of length 1%") == before


UNLOADS = [  # spacing [m], line speed [m/s], clearing time [s], last rider seen to arrive, in the area: own arithmetic
    (6.8, 3.4, 6.0, 12, 3),  # a rider every 2 s; whoever came 6 s ago is just gone
    (6.8, 3.4, 6.5, 12, 4),
    (6.8, 1.7, 6.0, 12, 2),
    (34.0, 3.4, 10.0, 6, 1),  # a rider every 10 s: six arrive in the first 54 s
    (20.4, 3.4, 20.0, 10, 4),
    (3.4, 3.4, 10.0, 12, 10),
    (1.5, 2.7, 5.0, 12, 9),  # every 5/9 s: whoever came nine riders ago is just gone, whatever the last digit says
    (1.9, 0.8, 19.0, 12, 8),
    (1.5, 6.0, 20.0, 12, 12),
]


@pytest.mark.parametrize(("spacing", "speed", "clearing", "rider", "there"), UNLOADS)
def test_the_unload_picture_counts_who_is_there(spacing, speed, clearing, rider, there):
    panel = UnloadPanel(spacing=Q(spacing, "m"), line_speed=Q(speed, "m/s"), clearing_time=Q(clearing, "s"))
    chart = panel.picture.chart
    assert chart.words.get_text() == f"as rider {rider} arrives: {there} in the area"
    arrivals = [bar.get_x() for bar in chart.bars]
    assert arrivals == pytest.approx([place * spacing / speed for place in range(12)])
    moment = chart.moment.get_xdata()[0]
    assert moment == pytest.approx((rider - 1) * spacing / speed)
    crossed = [bar for bar in chart.bars if bar.get_x() < moment + 1e-9 < bar.get_x() + bar.get_width()]
    assert len(crossed) == there, "what the dashed line crosses"


# what the panels of doubt print, against plain arithmetic

DOUBTS = [(3, 7, 1), (20, 6, 25)]  # half-widths of line speed, spacing and ridden length in percent


def last_digit(doubt):
    """Return the power of ten of the last digit of a plus-minus: of its second one where it begins with 10 to 29."""
    place = math.floor(math.log10(doubt))
    return place - 1 if doubt < 3 * 10.0**place else place


def rounded_to(place, number):
    """Return a number as it is printed when its last digit stands at a power of ten."""
    return f"{round(number / 10.0**place) * 10.0**place:,.{max(-place, 0)}f}"


def with_plus_minus(value, doubt, word):
    """Return value and plus-minus as they are printed."""
    place = last_digit(doubt)
    return f"{rounded_to(place, value)} ± {rounded_to(place, doubt)} {word}"


def first_order(*half_widths):
    """Return the standard uncertainty of 1,800 pph from half-widths in percent of the readings."""
    return 18 * math.hypot(*half_widths) / math.sqrt(3)


def share_below(capacity, speed, spacing):
    """Return the share of draws below a capacity where speed and spacing lie anywhere within half-widths in percent."""
    at = np.linspace(6.8 * (1 - spacing / 100), 6.8 * (1 + spacing / 100), 4001)
    part = (capacity / 3600 * at / 3.4 - 1 + speed / 100) / (2 * speed / 100)
    return float(np.mean(np.clip(part, 0, 1)))


@pytest.mark.parametrize(("speed", "spacing", "length"), DOUBTS)
def test_own_arithmetic_every_number_of_the_spread_panel(speed, spacing, length):
    panel = SpreadPanel(speed_doubt=Q(speed, "percent"), spacing_doubt=Q(spacing, "percent"))
    doubt, chart = first_order(speed, spacing), panel.picture.chart
    short = with_plus_minus(1800, 1.959964 * doubt, "pph")
    assert panel.results["people an hour, first order"] == f"{short} (ideal)"
    assert panel.results["standard uncertainty"] == f"{rounded_to(last_digit(doubt), doubt)} pph"
    part = spacing / 100
    mean = 1800 * math.log((1 + part) / (1 - part)) / (2 * part)  # of one over a spacing anywhere between two ends
    assert float(panel.results["mean of the draws"].removesuffix(" pph").replace(",", "")) == pytest.approx(
        mean, abs=5 + 4 * doubt / math.sqrt(20_000)
    )
    ends = [line.get_xdata()[0] for line in chart.ends]
    four_errors = 4 * math.sqrt(0.025 * 0.975 / 20_000)
    assert [share_below(end, speed, spacing) for end in ends] == pytest.approx([0.025, 0.975], abs=four_errors)
    assert panel.results["95 of 100 draws lie from"] == f"{' to '.join(rounded_to(1, end) for end in ends)} pph"
    assert chart.title.get_text() == f"People an hour: {short}"
    assert chart.words.get_text() == f"95 of 100 draws: {panel.results['95 of 100 draws lie from']}"
    heights = np.array([bar.get_height() for bar in chart.bars])
    in_bars = np.diff([share_below(edge, speed, spacing) for edge in chart.edges])
    assert heights / heights.sum() == pytest.approx(in_bars, abs=4 * math.sqrt(in_bars.max() / 20_000))
    x, bell = chart.bell.get_data()
    assert x[np.argmax(bell)] == pytest.approx(1800, abs=x[1] - x[0])
    assert np.log(bell.max() / np.interp(1800 - 2 * doubt, x, bell)) == pytest.approx(2, rel=0.02)
    area = np.diff(chart.edges).mean() * heights.sum(), (x[1] - x[0]) * bell.sum()
    assert area[0] == pytest.approx(area[1], rel=0.01), "bars and bell hold as many draws"
    assert max(heights.max(), bell.max()) == pytest.approx(1, rel=0.01)
    assert panel.note() == (
        "The plus-minus holds at a level of confidence of 95 %. Line speed 3.4 m/s, spacing 6.8 m; 20,000 draws, seed "
        "2026."
    )


@pytest.mark.parametrize(("speed", "spacing", "length"), DOUBTS)
def test_own_arithmetic_every_number_of_the_budget_panel(speed, spacing, length):
    doubts = {"speed_doubt": speed, "spacing_doubt": spacing, "length_doubt": length}
    panel = BudgetPanel(**{name: Q(number, "percent") for name, number in doubts.items()})
    widths = {
        "people an hour": (speed, spacing),
        "line speed twice as good": (speed / 2, spacing),
        "spacing twice as good": (speed, spacing / 2),
        "ridden length twice as good": (speed, spacing),
    }
    texts = {
        name: with_plus_minus(1800, 1.959964 * first_order(*half_widths), "pph") for name, half_widths in widths.items()
    }
    assert panel.results == texts | {"people an hour": f"{texts['people an hour']} (ideal)"}
    shares = [100 * width**2 / (speed**2 + spacing**2) for width in (speed, spacing)]
    chart = panel.picture.chart
    most = "line speed" if speed > spacing else "spacing"
    assert chart.title.get_text() == f"Most of the doubt comes from the {most}"
    assert [text.get_text() for text in chart.numbers] == [*(f"{share:.0f} %" for share in shares), "nil"]
    assert [bar[0].get_width() for bar in chart.bars] == pytest.approx([*shares, 0], abs=0.3)
    assert [label.get_text() for label in chart.ax.get_yticklabels()] == ["line speed", "spacing", "ridden length"]
    now, better = (texts[name].partition("± ")[2] for name in ("people an hour", f"{most} twice as good"))
    assert panel.note() == (
        f"Take the {most} again: it makes {max(shares):.0f} % of the variance; measured twice as well, ± {now} becomes "
        f"± {better}."
    )


METHODS = [  # system, display, its step and the track in m/s, whether the three agree
    ("metric", 3.6, 0.45, 3.38, True),
    ("us", 4.25, 0.2, 3.3, False),
]


@pytest.mark.parametrize(("system", "display", "step", "track", "agree"), METHODS)
def test_own_arithmetic_every_number_of_the_agreement_panel(system, display, step, track, agree):
    panel = AgreementPanel(display_speed=Q(display, "m/s"), display_step=Q(step, "m/s"), track_speed=Q(track, "m/s"))
    notebook_state().use_units(system)
    size, word = {"metric": (1, "m/s"), "us": (0.44704, "mph")}[system]
    values = np.array([3.4, display, track])
    doubts = np.array([0.1 / math.sqrt(3), step / math.sqrt(12), 0.06 / 2])  # half-width, step of a display, k = 2
    weights = doubts**-2 / (doubts**-2).sum()
    mean = weights @ values
    chi_square = (((values - mean) / doubts) ** 2).sum()
    birge, probability = math.sqrt(chi_square / 2), math.exp(-chi_square / 2)  # with two degrees of freedom
    assert (probability >= 0.05) == agree
    together = (doubts**-2).sum() ** -0.5 * (1 if agree else birge)
    values, widths = [*values, mean], [1.959964 * doubt for doubt in (*doubts, together)]
    texts = [with_plus_minus(a / size, b / size, word) for a, b in zip(values, widths, strict=True)]
    assert panel.results == {
        "line speed, all three": texts[-1],
        "do they agree": "yes" if agree else "no",
        "Birge ratio": f"{birge:.1f}",
        "weight of the display": f"{100 * weights[1]:.0f} %",
    }
    chart = panel.picture.chart
    assert chart.title.get_text() == f"The three {'agree' if agree else 'disagree'}: {texts[-1]}"
    assert [text.get_text() for text in chart.words] == texts
    assert [dot.get_xdata()[0] for dot in chart.dots] == pytest.approx([value / size for value in values], rel=1e-6)
    assert [np.ptp(bar.get_xdata()) / 2 for bar in chart.bars] == pytest.approx(
        [width / size for width in widths], rel=1e-6
    )
    assert chart.ax.get_xlabel() == f"line speed ({word})"
    assert chart.ax.get_xlim() == pytest.approx((2.2 / size, 4.8 / size), rel=1e-6)
    assert f"chi-square {chi_square:.3g} with 2 degrees of freedom, probability " in panel.note()
    if not agree:
        assert f"The doubt of the mean is widened {birge:.1f} times" in panel.note()


@pytest.mark.parametrize("kind", [SpeedRulerPanel, PowerRulerPanel])
def test_a_ruler_ends_just_beyond_its_slider(kind, panel_of):
    panel = panel_of(kind)
    _, high = panel.range_of(panel.control_names[0])
    assert high < panel.longest <= 1.05 * high


def test_the_axis_of_methods_holds_whatever_the_sliders_say():
    panel = AgreementPanel()
    low, high = (end.m_as("m/s") for end in panel.axis_ends)
    for name in ("display_speed", "track_speed"):
        scale = panel.control(name).metric
        assert low < scale.low - 0.1 < scale.high + 0.1 < high, name


@pytest.mark.parametrize("length", [60, 150, 190, 400, 1000])
def test_the_dot_of_the_fence_posts_stays_on_the_chart(length):
    panel = RidersPanel(ridden_length=Q(length, "m"), spacing=Q(10, "m"))
    ((across,), (up,)) = panel.picture.chart.dot.get_data()
    shown = min(length, panel.longest.m_as("m"))
    assert (across, up) == pytest.approx((shown, shown / 10))
    assert panel.result.m_as("person") == pytest.approx(length / 10)


def test_the_words_of_a_track_stand_over_the_middle_of_the_band_and_inside_the_chart():
    panel = TrackPanel()
    left, right = panel.picture.chart.ax.get_xlim()
    for start, end in ((44, 76), (60, 140), (0, 20)):
        panel.picture.chart.move(title="", start=start, end=end, level=None, text="words")
        place, _ = panel.picture.chart.words.get_position()
        margin = 0.16 * (right - left)
        assert place == pytest.approx(np.clip((start + end) / 2, left + margin, right - margin))


def test_own_arithmetic_the_mix_of_02_and_the_mean_that_is_wrong():
    # half at 1.7 + 0.7 m, half at 0.9 + 0.7 m, at 3.4 m/s: 5,100 and 7,650 an hour
    panel = MixPanel(practical_gap=Q(0.7, "m"), child_length=Q(0.9, "m"), child_share=Q(50, "percent"))
    shown = {name: panel.text(value) for name, value in panel.results.items()}
    assert shown["mean spacing"] == "2.0 m"
    assert (shown["an adult's spacing"], shown["a child's spacing"]) == ("2.4 m", "1.6 m")
    assert shown["people an hour"].startswith("6,120 pph (packing")
    assert shown["mean of the two capacities: wrong"] == "6,375 pph"
    panel.state.set("child_share", Q(20, "percent"), panel)
    assert panel.text(panel.results["mean of the two capacities: wrong"]) == f"{0.8 * 5100 + 0.2 * 7650:,.0f} pph"
    assert panel.text(panel.results["mean spacing"]) == "2.2 m"
