"""The panels of 09: buttons, curves, shares, and pictures that hold what the words say."""

import re
from dataclasses import replace

import numpy as np
import pytest
from messages import refuses
from places import DATA

from liftcalc import Q, governing, show
from liftcalc.figures.limits import LIMIT_STYLES
from liftcalc.lifts.hill import Hill, read_hill
from liftcalc.lifts.installation import Installation
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import capacities_at, limits_of
from liftcalc.panels import LimitsPanel, SharePanel, notebook_state
from liftcalc.panels.limits import FULL_POWER, NO_READING, SAME_TORQUE

HILL = read_hill(DATA / "hill")
LIFTS, READINGS = HILL.lifts, HILL.readings
LINES = {line.name: line for installation in LIFTS.values() for line in installation.lines}


@pytest.fixture
def limits():
    """Return the panel of all limits with the lifts of the hill."""
    return LimitsPanel(HILL)


@pytest.mark.parametrize("name", LINES)
def test_a_button_puts_the_panel_to_its_lift(limits, name):
    button = next(widget for widget in limits.children[-3].children if widget.description == name)
    button.click()
    found = governing(limits_of(LINES[name], READINGS[name]))
    assert limits.results["governs"] == found.limit.name
    assert limits.result.value.m_as("pph") == pytest.approx(found.capacity.value.m_as("pph"), rel=1e-9)
    assert limits.results["next"].startswith(f"{found.next_limit.name}, {show(found.ahead)}")
    for limit in found.in_order:
        assert limits.results[limit.name].m_as("pph") == pytest.approx(limit.capacity.m_as("pph"), rel=1e-9)
    for left_out in found.left_out:
        assert limits.results[left_out.name] == NO_READING
        lacks = ", ".join(left_out.missing)
        assert f"Left out for want of a reading, not zero: {left_out.name} ({lacks})." in limits.note()
    assert f"Set: lift {name}, {FULL_POWER}, line speed {show(LINES[name].line_speed)}" in limits.describe()
    assert limits.rows[0].box.value == pytest.approx(LINES[name].line_speed.m_as("m/s"), abs=0.005)
    assert limits.picture.chart.title.get_text().startswith(f"{name}: {found.limit.name} governs, at most ")
    assert limits.at_settings("spacing", [Q(6, "m")]).caption.startswith(f"{name}. ")


SETTINGS = [
    ("Penny Rope", {}),
    ("Penny Rope", {"grade": Q(40, "percent"), "motor_power": Q(60, "kW"), "loading_time": Q(1, "s")}),
    ("Penny Rope", {"spacing": Q(1.5, "m"), "line_speed": Q(6, "m/s")}),
    ("Long Platter", {"loading_time": Q(7.5, "s")}),
    ("Duckling Belt", {"line_speed": Q(0.9, "m/s"), "clearing_time": Q(3, "s")}),
    ("Lantern Double", {"motor_power": Q(20, "kW")}),
]


@pytest.mark.parametrize(("name", "moved"), SETTINGS)
@pytest.mark.parametrize("drive", [FULL_POWER, SAME_TORQUE])
def test_the_bold_line_is_the_smallest_of_the_thin_ones(limits, name, moved, drive):
    limits.choose(name)
    limits._drives.value = drive
    for control, value in moved.items():
        limits.state.set(control, value, limits)
    chart = limits.picture.chart
    thin = {limit: line.get_data() for limit, line in chart.thin.items() if len(line.get_xdata())}
    assert set(thin) == {limit for limit in LIMIT_STYLES if limits.results.get(limit, NO_READING) != NO_READING}
    x = next(iter(thin.values()))[0]
    smallest = np.min([y for _, y in thin.values()], axis=0)
    bold = [chart.bold[limit].get_data() for limit in LIMIT_STYLES]
    seen = {}
    for at, height in bold:
        seen.update({round(float(a), 9): float(h) for a, h in zip(at, height, strict=True) if np.isfinite(a)})
    for a, h in zip(x, smallest, strict=True):
        assert seen[round(float(a), 9)] == pytest.approx(h, rel=1e-9), "bold at every speed of the curves"
    (dot_x,), (dot_y,) = chart.dot.get_data()
    assert dot_y == pytest.approx(min(limits.result.value.m_as("pph"), chart.ax.get_ylim()[1]))
    assert dot_x == pytest.approx(limits.given["line_speed"].m_as("m/s"))
    at_dot = {limit: np.interp(dot_x, x, y) for limit, (_, y) in thin.items()}
    assert min(at_dot.values()) == pytest.approx(limits.result.value.m_as("pph"), rel=5e-3)


def test_only_what_governs_is_bold(limits):
    chart = limits.picture.chart
    shown = [limit for limit in LIMIT_STYLES if len(chart.bold[limit].get_xdata())]
    assert shown == ["spacing", "loading", "motor"]
    assert limits.note().startswith(
        "On these settings loading governs from 2.27 m/s to 4.31 m/s, below it spacing, above it motor."
    )
    lines = [chart.thin[limit] for limit in LIMIT_STYLES]
    assert len({line.get_color() for line in lines}) == len(LIMIT_STYLES), "each limit has a colour of its own"
    assert len({(line.get_linestyle(), line.get_gid()) for line in lines}) == len(LIMIT_STYLES), "and a line of its own"


def test_the_words_say_where_the_governing_limit_ends(limits):
    for name, words in (
        ("Long Platter", "spacing governs up to 2.99 m/s, then motor."),
        ("Duckling Belt", "unload governs from 0.50 m/s on, below it spacing."),
    ):
        limits.choose(name)
        assert f"On these settings {words}" in limits.note()
    limits.choose("Penny Rope")
    limits.state.set("motor_power", Q(1, "kW"), limits)
    limits.state.set("loading_time", Q(1, "s"), limits)
    assert re.search(r"motor governs from 0\.\d\d m/s on, below it spacing\.", limits.note())


ASSUMED = [  # line, words in the note
    ("Penny Rope", "1 loading place, 3 unloading places, drive at the top, "),
    ("Long Platter", "1 loading place, 1 unloading place, drive at the bottom, "),
    ("Duckling Belt", "loading and unloading places taken as 1: not read, full power"),
    ("Twin Penny right", "3 unloading places, loading places taken as 1: not read, full power"),
]


@pytest.mark.parametrize(("name", "words"), ASSUMED)
def test_the_note_says_what_was_read_and_what_is_taken_for_granted(limits, name, words):
    limits.choose(name)
    assert words in limits.note()
    assert "ride time without the start" not in limits.note()
    assert "Rope, brake, towers and the time of an evacuation cap a lift too" in limits.note()


def test_a_tow_without_a_pick_up_says_so_and_one_without_a_drive_position_has_no_traction():
    line = replace(LINES["Penny Rope"], pick_up_acceleration=None)
    unread = ("drive_position", "pick_up_acceleration")
    readings = {name: value for name, value in READINGS["Penny Rope"].items() if name not in unread}
    panel = LimitsPanel(Hill({"bare": Installation("bare", (line,))}, {"Penny Rope": readings}))
    assert "; ride time without the start: pick-up acceleration not read." in panel.note()
    assert panel.results["traction"] == panel.results["motor"] == NO_READING
    lacks = "motor (pick-up acceleration); traction (drive position)"
    assert f"Left out for want of a reading, not zero: {lacks}." in panel.note()


def test_a_start_that_is_asked_for_is_said():
    begun = READINGS["Long Platter"] | {"starting_acceleration": Q(0.35, "m/s**2"), "moving_mass": Q(1100, "kg")}
    panel = LimitsPanel(Hill(LIFTS, READINGS | {"Long Platter": begun}), line="Long Platter")
    assert "drive at the bottom, a start of 0.35 m/s² with riders on asked for, full power" in panel.note()
    assert "start of" not in LimitsPanel(HILL, line="Long Platter").note()
    assert show(panel.results["traction"]) == "583 pph"


def test_the_chart_ends_where_riders_never_have_the_speed_of_the_rope():
    short = replace(LINES["Penny Rope"], ridden_length=Q(5, "m"), vertical_rise=Q(1, "m"), line_speed=Q(2, "m/s"))
    panel = LimitsPanel(Hill({"short": Installation("short", (short,))}, READINGS))
    end = panel.rows[0].slider.max
    assert end == pytest.approx(np.sqrt(2 * 1.5 * 5), abs=0.1)  # 3.9 m/s, and not the 6 m/s of its kind
    panel.rows[0].slider.value = end
    assert panel.given["line_speed"].m_as("m/s") == pytest.approx(end)
    assert np.isfinite(panel.picture.chart.thin["motor"].get_ydata()).all()


def test_the_box_shows_the_grade_that_is_computed_with(limits):
    (grade,) = (row for row in limits.rows if row.control.name == "grade")
    assert grade.box.value == pytest.approx(100 * 29.4 / np.sqrt(150**2 - 29.4**2), abs=0.005)


def test_constant_torque_lets_the_limit_fall_with_the_speed(limits):
    limits.choose("Twin Penny right")
    limits.state.set("line_speed", Q(1.2, "m/s"), limits)
    at_full_power = limits.results["motor"]
    limits._drives.value = SAME_TORQUE
    assert limits.results["motor"] < 0.55 * at_full_power
    assert f"{SAME_TORQUE} below 2.40 m/s" in limits.note()


def test_the_line_speed_goes_as_far_as_the_axis_of_the_kind(limits):
    for name, line in LINES.items():
        limits.choose(name)
        assert limits.rows[0].slider.max == pytest.approx(KINDS[line.kind].end_of_axis)
        limits.rows[0].slider.value = limits.rows[0].slider.max
        assert limits.given["line_speed"].m_as("m/s") == pytest.approx(KINDS[line.kind].end_of_axis)
        notebook_state().use_units("us")
        assert limits.rows[0].slider.max <= KINDS[line.kind].end_of_axis / 0.44704 + 1e-9
        notebook_state().use_units("metric")


def test_a_late_echo_of_the_page_moves_nothing(limits, monkeypatch):
    """A page sends back what a slider was set to, with noise in the last digit, and on a busy machine it is late."""
    monkeypatch.setattr("liftcalc.panels.control_row.ECHO", 1.0)
    clock = [100.0]
    monkeypatch.setattr("liftcalc.panels.control_row.time.monotonic", lambda: clock[0])
    limits.choose("Duckling Belt")
    limits.choose("Long Platter")
    row = limits.rows[0]
    row.slider.value = 0.6000000000000001  # of the belt
    assert limits.given["line_speed"].m_as("m/s") == pytest.approx(2.8)
    assert limits.results["governs"] == "spacing"
    assert row.slider.value == pytest.approx(2.8)
    row.slider.value = 1.2  # the end of the belt's range, at which the page cut the new value
    assert limits.given["line_speed"].m_as("m/s") == pytest.approx(2.8)
    row.slider.value = 2.7  # of the reader
    assert limits.given["line_speed"].m_as("m/s") == pytest.approx(2.7)
    clock[0] += 1.1
    row.slider.value = 0.6  # no echo any more
    assert limits.given["line_speed"].m_as("m/s") == pytest.approx(0.6)


def test_an_unknown_lift_is_refused():
    refuses(
        lambda: LimitsPanel(HILL, line="Penny Roap"),
        f"LimitsPanel: no line 'Penny Roap'. Write one of {', '.join(LINES)}.",
    )
    assert LimitsPanel(HILL, line="Long Platter").line.name == "Long Platter"


def test_a_gap_in_a_line_is_a_gap_in_the_picture(limits):
    chart = limits.picture.chart
    line = chart.bold["motor"]
    line.set_data([1.0, 2.0, np.nan, 4.0, 5.0, np.nan], [500.0, 500.0, np.nan, 500.0, 500.0, np.nan])
    path = re.search(r'<path d="([^"]+)"', chart.overlay._line(line))[1]
    assert path.count("M") == 2
    assert "nan" not in path


def test_shares_add_up_and_follow_the_doubts():
    panel = SharePanel(LINES["Long Platter"], READINGS["Long Platter"])
    assert sum(panel.shares.values()) == pytest.approx(100)
    before = dict(panel.shares)
    for doubt in ("mass_doubt", "efficiency_doubt", "idle_doubt"):
        panel.state.set(doubt, Q(1, "percent"), panel)
    assert panel.shares["motor"] < before["motor"], "mass, efficiency and idle drag decide"
    panel.state.set("spacing_doubt", Q(1, "percent"), panel)
    panel.state.set("friction_doubt", Q(1, "percent"), panel)
    assert panel.results["spacing"] == "100 %", "8 % apart, and known to 1 %"
    assert panel.picture.chart.title.get_text() == "Long Platter: spacing governs in 100 % of the draws"


def test_each_doubt_draws_its_reading_and_no_other():
    panel = SharePanel(LINES["Long Platter"], READINGS["Long Platter"])
    assert {name: show(half) for name, half in panel._drawn.items()} == {
        "spacing": "1.4 m", "loading_time": "0.9 s", "snow_friction": "0.02", "rider_mass": "8 kg", "efficiency": "5%",
        "idle_drag": "80 N",
    }  # fmt: skip
    belt = SharePanel(LINES["Duckling Belt"], READINGS["Duckling Belt"])
    assert belt._drawn["bed_friction"].m_as("") == pytest.approx(0.09)
    assert "No doubt of idle drag: not read on this line." in belt.note()
    panel.state.set("efficiency_doubt", Q(20, "percent"), panel)
    assert "draws left out: such as an efficiency over 1." in panel.note()
    assert sum(panel.shares.values()) == pytest.approx(100)


def test_curves_and_records_come_from_one_place(limits):
    for name, line in LINES.items():
        limits.choose(name)
        allowed = capacities_at(line.kind, limits._values)
        assert {limit.name for limit in governing(limits_of(line, READINGS[name])).in_order} == set(allowed)
