"""The panels of kinds, power, grip and limits: buttons, curves, and pictures that hold what the words say."""

import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from liftcalc import Q, governing, motor_power_needed, rope_pull, show
from liftcalc.figures.limits import LIMIT_STYLES
from liftcalc.lifts.installation import Installation, read_lifts
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import capacities_at, limits_of
from liftcalc.lifts.readings import read_readings
from liftcalc.panels import (
    HandsPanel,
    KindPanel,
    LimitsPanel,
    MotorPanel,
    PowerPanel,
    SharePanel,
    SheavePanel,
    StartingPanel,
    notebook_state,
)
from liftcalc.panels.limits import FULL_POWER, NO_READING, SAME_TORQUE

DATA = Path(__file__).resolve().parents[2] / "data"
LIFTS, READINGS = read_lifts(DATA / "hill_lifts.csv"), read_readings(DATA / "hill_readings.csv")
LINES = {line.name: line for installation in LIFTS.values() for line in installation.lines}


@pytest.fixture
def limits():
    """Return the panel of all limits with the lifts of the hill."""
    return LimitsPanel(LIFTS, READINGS)


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
        assert f"Left out for want of a reading, not zero: {left_out.name}." in limits.note()
    assert f"Set: lift {name}, {FULL_POWER}, line speed {show(LINES[name].line_speed)}" in limits.describe()
    assert limits.rows[0].box.value == pytest.approx(LINES[name].line_speed.m_as("m/s"))
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
    readings = {name: value for name, value in READINGS["Penny Rope"].items() if name != "drive_position"}
    panel = LimitsPanel({"bare": Installation("bare", (line,))}, {"Penny Rope": readings})
    assert "; ride time without the start: pick-up acceleration not read." in panel.note()
    assert panel.results["traction"] == panel.results["motor"] == NO_READING
    assert "Left out for want of a reading, not zero: motor, traction." in panel.note()


def test_a_start_that_is_asked_for_is_said():
    begun = READINGS["Long Platter"] | {"starting_acceleration": Q(0.35, "m/s**2"), "moving_mass": Q(1100, "kg")}
    panel = LimitsPanel(LIFTS, READINGS | {"Long Platter": begun}, lift="Long Platter")
    assert "drive at the bottom, a start of 0.35 m/s² with riders on asked for, full power" in panel.note()
    assert "start of" not in LimitsPanel(LIFTS, READINGS, lift="Long Platter").note()
    assert show(panel.results["traction"]) == "583 pph"


def test_the_chart_ends_where_riders_never_have_the_speed_of_the_rope():
    short = replace(LINES["Penny Rope"], ridden_length=Q(5, "m"), vertical_rise=Q(1, "m"), line_speed=Q(2, "m/s"))
    panel = LimitsPanel({"short": Installation("short", (short,))}, READINGS)
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
    with pytest.raises(ValueError, match=r"LimitsPanel: no line 'Penny Roap'\. Write one of Penny Rope, Long Platter"):
        LimitsPanel(LIFTS, READINGS, lift="Penny Roap")
    assert LimitsPanel(LIFTS, READINGS, lift="Long Platter").line.name == "Long Platter"


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


def test_the_parts_of_the_power_are_all_of_it():
    panel = PowerPanel()
    *parts, together = [part.m_as("kW") for part in panel.parts]
    assert sum(parts) == pytest.approx(together)
    assert together == pytest.approx(14.1, abs=0.05)
    lifting, rubbing = parts[:2]
    pull = rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, "")).m_as("N")
    assert lifting + rubbing == pytest.approx(pull * 150 / 3 / 1000), "a rider every 3 s"
    assert panel.results["big enough"] == "yes, 0.9 kW to spare"
    panel.state.set("wanted_capacity", Q(1800, "pph"), panel)
    assert panel.results["big enough"] == "no, 5.1 kW short"
    assert panel.results["needed power"] == motor_power_needed(
        Q(1800, "pph"), Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N"), panel.results["energy a rider"]
    )


def test_the_three_laws_of_the_motor():
    panel = MotorPanel()
    assert show(panel.results["motor limit"]) == "1,290 pph"  # own arithmetic, as the two below
    assert show(panel.results["by the simple law"]) == "1,571 pph"
    assert panel.results["at constant torque"] == panel.results["motor limit"], "at base speed the two are one"
    panel.state.set("line_speed", Q(1.7, "m/s"), panel)
    assert panel.results["at constant torque"] < 0.5 * panel.results["motor limit"]
    assert show(panel.results["by the simple law"]) == "1,571 pph", "no speed in it"


def test_grip_of_sheave_and_hand_and_the_start():
    sheave = SheavePanel()
    top, bottom = (sheave.results[f"riders, drive at the {place}"].m_as("person") for place in ("top", "bottom"))
    assert bottom < top
    sheave.state.set("wrap_angle", Q(360, "degree"), sheave)
    assert sheave.result.m_as("person") > 2 * top, "twice the wrap is more than twice the riders"
    hands = HandsPanel(glove_friction=Q(0.25, ""))
    held, picked_up, squeeze, _ = (force.m_as("N") for force in hands.results.values())
    assert squeeze == pytest.approx(2 * held)
    assert picked_up - held == pytest.approx(75 * 1.5)
    start = StartingPanel(starting_time=Q(8, "s"))
    slow = start.result - start.results["to keep it going"]
    # 20.41 riders whom the rope feels through tethers at 30 degrees, 1,100 kg of rope and platters, 300 kg of drive
    relief = np.cos(np.pi / 6) / (np.cos(np.pi / 6) + 0.07 * np.sin(np.pi / 6))
    assert slow.m_as("N") == pytest.approx(0.35 * (400 / 19.6 * 75 * relief + 1400))
    assert start.steady.m_as("N") == pytest.approx(400 / 19.6 * relief * 75 * 9.80665 * 0.27 / np.hypot(1, 0.2) + 400)
    assert "all assumed" in start.note()
    start.state.set("starting_time", Q(4, "s"), start)
    assert (start.result - start.results["to keep it going"]).m_as("N") == pytest.approx(2 * slow.m_as("N"))


# what the panels of motor and grip print, against plain arithmetic, once in metric units and once in US units

G = 9.80665
UNIT_SIZES = {  # NIST SP 811, appendix B
    "metric": {"power": (1000, "kW"), "force": (1, "N"), "mass": (1, "kg"), "speed": (1, "m/s"), "length": (1, "m")},
    "us": {"power": (745.699872, "hp"), "force": (4.44822162, "lbf"), "mass": (0.45359237, "lb"),
           "speed": (0.44704, "mph"), "length": (0.3048, "ft")},
}  # fmt: skip


def written(value, what, system, digits):
    """Return a plain number in basic units as a panel writes it."""
    size, word = UNIT_SIZES[system][what]
    return f"{value / size:,.{digits}f} {word}"


def put(kind, system, **settings):
    """Return a panel with these settings, read in one system of units."""
    panel = kind(**settings)
    panel.state.use_units(system)
    return panel


def cards(panel):
    """Return what stands on the cards of a panel."""
    return {name: panel.text(value) for name, value in panel.results.items()}


def drawn(line):
    """Return the points of a line of a chart."""
    return [np.asarray(column, dtype=float) for column in line.get_data()]


def on_the_slope(mass, percent, friction):
    """Return what one rider takes to be lifted, and to be drawn over the snow, in N along the slope."""
    length = np.hypot(1, percent / 100)
    return mass * G * percent / 100 / length, mass * G * friction / length


MOTORS = [  # system, people an hour, speed [m/s], grade [%], rider [kg], friction, motor [W]
    ("metric", 900, 2.6, 24, 68, 0.05, 11_500),
    ("us", 1700, 4.4, 13, 83, 0.11, 17_000),
]


def settings_of(speed, percent, mass, friction, motor, wanted=None):
    """Return the settings of a panel of the motor."""
    settings = {
        "line_speed": Q(speed, "m/s"), "grade": Q(percent, "percent"), "rider_mass": Q(mass, "kg"),
        "snow_friction": Q(friction, ""), "motor_power": Q(motor, "W"),
    }  # fmt: skip
    return settings if wanted is None else settings | {"wanted_capacity": Q(wanted, "pph")}


def energy_of(speed, percent, mass, friction):
    """Return lifting, rubbing and pick-up of one rider on 150 m, speeded up at 1.5 m/s2, in J."""
    lifting, rubbing = on_the_slope(mass, percent, friction)
    return 150 * lifting, 150 * rubbing, mass * speed**2 + (lifting + rubbing) * speed**2 / 3


def taken_of_the_motor(system):
    """Return what the panels of the motor say that they take for granted."""
    return (
        f"Ridden length {written(150, 'length', system, 0)}, efficiency 85%, idle drag "
        f"{written(500, 'force', system, 0)}, pick-up at {'1.50 m/s²' if system == 'metric' else '4.9 ft/s²'}."
    )


@pytest.mark.parametrize(("system", "wanted", "speed", "percent", "mass", "friction", "motor"), MOTORS)
def test_own_arithmetic_every_number_of_the_power_panel(system, wanted, speed, percent, mass, friction, motor):
    panel = put(PowerPanel, system, **settings_of(speed, percent, mass, friction, motor, wanted))
    parts = energy_of(speed, percent, mass, friction)
    at_rope = [part * wanted / 3600 for part in parts] + [500 * speed]
    needed = sum(at_rope) / 0.85
    bars = [*at_rope, 0.15 * needed, needed]

    def power(watts):
        return written(watts, "power", system, 1)

    verdict = f"yes, {power(motor - needed)} to spare" if motor > needed else f"no, {power(needed - motor)} short"
    assert cards(panel) == {
        "needed power": power(needed),
        "rated power": power(motor),
        "big enough": verdict,
        "energy a rider": f"{sum(parts):,.0f} J",
        "needed for 1,000 pph": power(1000 * needed / wanted),
        "running empty": power(500 * speed / 0.85),
    }
    chart, (size, word) = panel.picture.chart, UNIT_SIZES[system]["power"]
    assert chart.title.get_text() == f"{power(needed)} needed, {power(motor)} rated (dashed)"
    assert [text.get_text() for text in chart.numbers] == [power(watts) for watts in bars]
    assert [bar[0].get_width() for bar in chart.bars] == pytest.approx([watts / size for watts in bars], rel=1e-6)
    assert drawn(chart.marks[0])[0] == pytest.approx(motor / size, rel=1e-6)
    assert chart.ax.get_xlabel() == f"power at the motor ({word})"
    assert taken_of_the_motor(system) in panel.note()


@pytest.mark.parametrize(("system", "wanted", "speed", "percent", "mass", "friction", "motor"), MOTORS)
def test_own_arithmetic_every_number_of_the_motor_panel(system, wanted, speed, percent, mass, friction, motor):
    panel = put(MotorPanel, system, **settings_of(speed, percent, mass, friction, motor))

    def laws(v):
        energy = sum(energy_of(v, percent, mass, friction))
        at_rope = 0.85 * motor, 0.85 * motor * np.minimum(v / 3.4, 1)  # full power, and constant torque below 3.4 m/s
        return [np.maximum(3600 * (watts - 500 * v) / energy, 0) for watts in at_rope]

    with_all, slower = laws(speed)
    simple = 3600 * 0.85 * motor / sum(energy_of(speed, percent, mass, friction)[:2])
    assert cards(panel) == {
        "motor limit": f"{with_all:,.0f} pph",
        "by the simple law": f"{simple:,.0f} pph",
        "at constant torque": f"{slower:,.0f} pph",
        "energy a rider": f"{sum(energy_of(speed, percent, mass, friction)):,.0f} J",
    }
    chart, (size, _) = panel.picture.chart, UNIT_SIZES[system]["speed"]
    assert chart.title.get_text() == (
        f"{written(motor, 'power', system, 1)} at {written(speed, 'speed', system, 2 if system == 'metric' else 1)}: "
        f"{with_all:,.0f} pph"
    )
    curves = [drawn(curve) for curve in chart.curves]
    for at, height in (curves[0], curves[2]):
        assert at[0] < 0.06 * at[-1]
        assert at[-1] == pytest.approx(chart.ax.get_xlim()[1], rel=1e-9), "to the end of the axis"
        assert height == pytest.approx(laws(at * size)[0 if height is curves[0][1] else 1], rel=1e-6)
    assert curves[1][1] == pytest.approx([simple, simple], rel=1e-6)
    assert [label.get_text() for label in chart.labels] == ["", "simple law", "constant torque"]
    assert [float(place[0]) for place in drawn(chart.dot)] == pytest.approx([speed / size, with_all], rel=1e-6)
    assert chart.dot_label.get_text() == f"{with_all:,.0f} pph"
    base = "3.40 m/s" if system == "metric" else "7.6 mph"
    assert panel.note() == (
        f"{taken_of_the_motor(system)} Constant torque: of a drive that reaches full power at {base}."
    )


SHEAVES = [("metric", 210, 0.22, 9000, 14), ("us", 165, 0.3, 14_000, 27)]  # wrap, lining, counterweight [N], grade [%]


@pytest.mark.parametrize(("system", "wrap", "friction", "counterweight", "percent"), SHEAVES)
def test_own_arithmetic_every_number_of_the_sheave_panel(system, wrap, friction, counterweight, percent):
    panel = put(
        SheavePanel, system, wrap_angle=Q(wrap, "degree"), lining_friction=Q(friction, ""),
        counterweight=Q(counterweight, "N"), grade=Q(percent, "percent"),
    )  # fmt: skip
    weight = 0.6 * G * 150 * percent / 100 / np.hypot(1, percent / 100)  # of one strand of 0.6 kg/m, along the slope
    pull = sum(on_the_slope(75, percent, 0.07))
    top, bottom = counterweight / 2 + weight - 250, counterweight / 2 - weight - 250  # half of the idle drag each

    def riders(angle):
        held = np.exp(friction * np.radians(angle)) / 1.25
        return (top * (held - 1) - 500) / pull, (bottom * (held - 1) - 500) / (held * pull)

    at_top, at_bottom = riders(wrap)
    assert cards(panel) == {
        "riders, drive at the top": f"{at_top:.1f} persons",
        "riders, drive at the bottom": f"{at_bottom:.1f} persons",
        "tension ratio": f"{np.exp(friction * np.radians(wrap)):.2f}",
        "slack side at the top": written(top, "force", system, 0),
    }
    chart = panel.picture.chart
    assert chart.title.get_text() == f"{wrap} degrees of wrap, drive at the top: {at_top:.1f} persons at most"
    for curve, place in zip(chart.curves, (0, 1), strict=True):
        angles, heights = drawn(curve)
        assert [angles[0], angles[-1]] == pytest.approx([90, 540])
        assert heights == pytest.approx(np.maximum(riders(angles)[place], 0), rel=1e-6)
    assert [label.get_text() for label in chart.labels] == ["", "drive at the bottom"]
    assert [float(at[0]) for at in drawn(chart.dot)] == pytest.approx([wrap, at_top], rel=1e-6)
    assert chart.dot_label.get_text() == f"{at_top:.1f} persons"
    assert (
        f"Riders of {written(75, 'mass', system, 0)}, friction 0.07, rope 0.60 kg/m, length "
        f"{written(150, 'length', system, 0)}, idle drag {written(500, 'force', system, 0)}; the rope is to hold 1.25 "
        "times over"
    ) in panel.note()


HANDS = [("metric", 62, 26, 2.1, 0.35), ("us", 88, 12, 0.9, 0.55)]  # rider [kg], grade [%], pick-up [m/s2], glove


@pytest.mark.parametrize(("system", "mass", "percent", "faster", "glove"), HANDS)
def test_own_arithmetic_every_number_of_the_hands_panel(system, mass, percent, faster, glove):
    panel = put(
        HandsPanel, system, rider_mass=Q(mass, "kg"), grade=Q(percent, "percent"), glove_friction=Q(glove, ""),
        pick_up_acceleration=Q(faster, "m/s**2"),
    )  # fmt: skip
    steady = sum(on_the_slope(mass, percent, 0.07))
    forces = [steady, steady + mass * faster]
    forces += [force / (2 * glove) for force in forces]  # palm and fingers press on both sides of the rope
    texts = [written(force, "force", system, 0) for force in forces]
    names = ("held, steady ride", "held, pick-up", "squeeze, steady ride", "squeeze, pick-up")
    assert cards(panel) == dict(zip(names, texts, strict=True))
    chart, (size, word) = panel.picture.chart, UNIT_SIZES[system]["force"]
    assert [text.get_text().removesuffix(" (off the chart)") for text in chart.numbers] == texts
    assert [bar[0].get_width() for bar in chart.bars] == pytest.approx([force / size for force in forces], rel=1e-6)
    assert [label.get_text() for label in chart.ax.get_yticklabels()] == list(names)
    assert chart.ax.get_xlabel() == f"force of both hands together ({word})"
    assert chart.title.get_text() == (
        f"{written(mass, 'mass', system, 0)} on a grade of {percent}%: {texts[0]} in the hands"
    )


STARTS = [("metric", 5.0, 17, 82, 22_000), ("us", 12.0, 26, 61, 13_000)]  # time [s], grade [%], rider [kg], motor [W]


@pytest.mark.parametrize(("system", "time", "percent", "mass", "motor"), STARTS)
def test_own_arithmetic_every_number_of_the_starting_panel(system, time, percent, mass, motor):
    panel = put(
        StartingPanel, system, starting_time=Q(time, "s"), grade=Q(percent, "percent"), rider_mass=Q(mass, "kg"),
        motor_power=Q(motor, "W"),
    )  # fmt: skip
    riders, relief = 400 / 19.6, 1 / (1 + 0.07 * np.tan(np.radians(30)))  # a tether at 30 degrees takes weight off skis
    steady = riders * relief * sum(on_the_slope(mass, percent, 0.07)) + 400
    rated = 0.85 * motor / 2.8

    def force(seconds):
        return steady + (riders * relief * mass + 1100 + 300) * 2.8 / seconds  # the drive is as good as 300 kg of rope

    assert cards(panel) == {
        "force to start": written(force(time), "force", system, 0),
        "to keep it going": written(steady, "force", system, 0),
        "motor's rated force": written(rated, "force", system, 0),
        "start, of the rated force": f"{100 * force(time) / rated:.0f}%",
    }
    chart, (size, word) = panel.picture.chart, UNIT_SIZES[system]["force"]
    assert chart.title.get_text() == f"In {time:.1f} s to line speed: {written(force(time), 'force', system, 0)}"
    times, heights = drawn(chart.curves[0])
    assert heights == pytest.approx(force(times) / size, rel=1e-6)
    for curve, newtons in zip(chart.curves[1:], (steady, rated), strict=True):
        assert drawn(curve)[1] == pytest.approx([newtons / size] * 2, rel=1e-6)
    assert [float(at[0]) for at in drawn(chart.dot)] == pytest.approx([time, force(time) / size], rel=1e-6)
    assert chart.ax.get_ylabel() == f"force at the drive sheave ({word})"
    assert (
        f"every platter taken: {written(400, 'length', system, 0)}, one rider each {written(19.6, 'length', system, 1)}"
    ) in panel.note()


@pytest.fixture
def kinds():
    """Return the panel of every kind."""
    return KindPanel(read_lifts(DATA / "kind_examples.csv"))


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_has_an_example_and_its_button(kinds, kind):
    button = next(widget for widget in kinds.children[-2].children if widget.description == kind)
    button.click()
    assert kinds.kind is KINDS[kind]
    assert kinds.result.value.m_as("pph") == pytest.approx(kinds.example.capacity.value.m_as("pph"), rel=1e-9)
    assert KINDS[kind].hazards in kinds.note()
    assert f"riders are {KINDS[kind].on_a_stop}" in kinds.note()
    chart = kinds.picture.chart
    seconds, persons = chart.ends[0], kinds.given["seats"].m_as("person")
    drawn = len(chart.persons.get_xdata())
    carriers = np.ceil(seconds / kinds.given["interval"].m_as("s") - 1e-9)
    assert drawn == carriers * np.ceil(persons / kinds._persons_a_dot())
    if KINDS[kind].reversible:
        assert kinds.results["spacing"] == "two cabins, to and fro"
        assert len(chart.carriers.get_xdata()) == 0
    else:
        gaps = np.diff(chart.carriers.get_xdata()) * chart.ends[1]
        assert gaps == pytest.approx(kinds.results["spacing"].m_as("m"))


KIND_SETTINGS = [  # kind, line speed in m/s, interval in s, persons; own arithmetic below
    ("rope tow", 3.0, 2.5, 1), ("platter lift", 2.5, 8.0, 1), ("conveyor", 0.5, 6.0, 1), ("fixed chair", 2.0, 7.5, 2),
    ("detachable chair", 5.0, 8.0, 4), ("gondola", 6.0, 15.0, 8), ("reversible tram", 8.0, 300.0, 50),
]  # fmt: skip
COMES = {
    "rope tow": "No carrier comes:", "conveyor": "No carrier comes:", "reversible tram": "The cabin stands while",
    "platter lift": "The carrier comes at line speed.", "fixed chair": "The carrier comes at line speed.",
    "detachable chair": "The carrier comes at station speed.", "gondola": "The carrier comes at station speed.",
}  # fmt: skip


@pytest.mark.parametrize(("kind", "speed", "interval", "persons"), KIND_SETTINGS, ids=[row[0] for row in KIND_SETTINGS])
def test_every_number_of_the_panel_of_kinds_is_own_arithmetic(kinds, kind, speed, interval, persons):
    kinds.choose(kind)
    given = {"line_speed": Q(speed, "m/s"), "interval": Q(interval, "s"), "seats": Q(persons, "person")}
    kinds.state.set_all(given, kinds)
    tram, pph = kind == "reversible tram", 3600 / interval * persons
    shown = {name: kinds.text(value) for name, value in kinds.results.items()}
    assert shown["people an hour"].startswith(f"{pph:,.0f} pph (ideal")
    assert shown["carriers an hour"] == f"{3600 / interval:,.0f}"
    assert shown["headway, person to person"] == f"{interval / persons:.1f} s"
    assert shown["spacing"] == ("two cabins, to and fro" if tram else f"{speed * interval:.1f} m")
    assert shown["kind"] == kind
    assert kinds.note().startswith(COMES[kind])
    chart = kinds.picture.chart
    people = f"{persons} person{'' if persons == 1 else 's'}"
    assert chart.title.get_text() == f"{people} every {interval:.1f} s: {pph:,.0f} pph"
    assert chart.ends == ((1800.0, 3000.0) if tram else (60.0, 300.0)), "seconds and metres of the two rulers"
    notebook_state().use_units("us")
    feet = show(Q(speed * interval / 0.3048, "ft"))
    assert kinds.text(kinds.results["spacing"]) == ("two cabins, to and fro" if tram else feet)
    assert chart.ends == ((1800.0, 10000.0) if tram else (60.0, 1000.0)), "feet on the lower ruler"
    notebook_state().use_units("metric")


def test_speed_moves_the_rope_and_not_the_loading_point(kinds):
    chart, before = kinds.picture.chart, kinds.result.value
    times = chart.persons.get_xdata().copy()
    kinds.state.set("line_speed", Q(1.1, "m/s"), kinds)
    assert kinds.result.value == before
    assert chart.persons.get_xdata() == pytest.approx(times)
    assert kinds.results["spacing"].m_as("m") == pytest.approx(7.7)


def test_curves_and_records_come_from_one_place():
    for name, line in LINES.items():
        values = LimitsPanel(LIFTS, READINGS, lift=name)._values
        allowed = capacities_at(line.kind, values)
        assert {limit.name for limit in governing(limits_of(line, READINGS[name])).in_order} == set(allowed)
