"""The panels of 08 on sheave, hands and start: every number that they print, against plain arithmetic."""

import numpy as np
import pytest
from example_tow import G, of_the_exact_tow
from reading_panels import UNIT_SIZES, cards, drawn, on_the_slope, put, written

from liftcalc import Q
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.panels import HandsPanel, SheavePanel, StartingPanel


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


def test_masses_that_were_read_go_before_those_that_are_assumed():
    line, readings = demo_line("Long Platter")
    read = readings | {"moving_mass": Q(2000, "kg"), "drive_inertia_mass": Q(500, "kg")}
    steady, heavy = StartingPanel(line, readings), StartingPanel(line, read, name="heavy")
    more = (2000 + 500 - 1100 - 300) * 2.8 / steady.given["starting_time"].m_as("s")
    assert (heavy.result - steady.result).m_as("N") == pytest.approx(more)
    assert "rope, platters and sheaves 2,000 kg, the drive 500 kg at the rope" in heavy.note()


SHEAVES = [("metric", 210, 0.22, 9000, 14), ("us", 165, 0.3, 14_000, 27)]  # wrap, lining, counterweight [N], grade [%]


@pytest.mark.parametrize(("system", "wrap", "friction", "counterweight", "percent"), SHEAVES)
def test_own_arithmetic_every_number_of_the_sheave_panel(system, wrap, friction, counterweight, percent):
    panel = put(
        of_the_exact_tow(SheavePanel, None), system, wrap_angle=Q(wrap, "degree"), lining_friction=Q(friction, ""),
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
