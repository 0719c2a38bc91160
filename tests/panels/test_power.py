"""The panels of 08 on the motor: every number that they print, against plain arithmetic."""

import numpy as np
import pytest
from example_tow import of_the_exact_tow
from reading_panels import UNIT_SIZES, cards, drawn, on_the_slope, put, written

from liftcalc import Q, motor_power_needed, rope_pull, show
from liftcalc.panels import MotorPanel, PowerPanel


def test_the_parts_of_the_power_are_all_of_it():
    panel = of_the_exact_tow(PowerPanel)()
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
    panel = of_the_exact_tow(MotorPanel)()
    assert show(panel.results["motor limit"]) == "1,290 pph"  # own arithmetic, as the two below
    assert show(panel.results["by the simple law"]) == "1,571 pph"
    assert panel.results["at constant torque"] == panel.results["motor limit"], "at base speed the two are one"
    panel.state.set("line_speed", Q(1.7, "m/s"), panel)
    assert panel.results["at constant torque"] < 0.5 * panel.results["motor limit"]
    assert show(panel.results["by the simple law"]) == "1,571 pph", "no speed in it"


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
    panel = put(
        of_the_exact_tow(PowerPanel, None), system, **settings_of(speed, percent, mass, friction, motor, wanted)
    )
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
    panel = put(of_the_exact_tow(MotorPanel, None), system, **settings_of(speed, percent, mass, friction, motor))

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
