"""The panels of 08 on power: where it goes, whether the motor is big enough, and what it carries at each speed."""

import numpy as np

from liftcalc.figures.bars import BarChart
from liftcalc.figures.curves import Curve, CurveChart
from liftcalc.formulas.motor import (
    idle_power,
    motor_capacity,
    motor_capacity_at_constant_torque,
    motor_power_needed,
    power_per_thousand_pph,
    simple_motor_capacity,
)
from liftcalc.formulas.pull import energy_per_rider, momentum_energy, pull_energy, rope_pull, slip_energy
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.quantity_text import show
from liftcalc.units import Q

# what the demo tow does not change under the reader's hand
LENGTH, EFFICIENCY, IDLE_DRAG, PICK_UP = Q(150, "m"), Q(85, "percent"), Q(500, "N"), Q(1.5, "m/s**2")
BASE_SPEED = Q(3.4, "m/s")  # of the drive at constant torque


def _pull(given, friction=None):
    """Return the pull of one rider on skis, on the slope of the sliders."""
    return rope_pull(given["rider_mass"], grade=given["grade"], snow_friction=friction or given["snow_friction"])


def _taken(panel):
    """Return what the panels of the motor take for granted, in words."""
    return (
        f"Ridden length {panel.text(LENGTH)}, efficiency {show(EFFICIENCY)}, idle drag {panel.text(IDLE_DRAG)}, "
        f"pick-up at {panel.text(PICK_UP)}."
    )


def _energy(given, line_speed):
    return energy_per_rider(_pull(given), LENGTH, given["rider_mass"], line_speed, PICK_UP)


class PowerPanel(Panel):
    """Where the motor's power goes, and whether the motor is big enough."""

    title = "Is the motor big enough"
    control_names = ("wanted_capacity", "line_speed", "grade", "rider_mass", "snow_friction", "motor_power")
    names = ("lifting riders", "rubbing skis", "pick-up", "empty rope", "lost in the drive", "together")

    def make_picture(self):
        return ChartPicture(BarChart(height=3.4, left=0.19), PowerPanel._prepare, PowerPanel._move)

    def compute(self, given):
        speed, wanted = given["line_speed"], given["wanted_capacity"]
        pull, smooth = _pull(given), rope_pull(given["rider_mass"], grade=given["grade"], snow_friction=Q(0, ""))
        picked_up = momentum_energy(given["rider_mass"], speed) + slip_energy(pull, speed, PICK_UP)
        energy = _energy(given, speed)
        needed = motor_power_needed(wanted, EFFICIENCY, speed, IDLE_DRAG, energy)
        self.needed, rated = needed, given["motor_power"]
        riders = wanted / Q(1, "person")  # energy of one rider, times how many come in an hour
        each = [pull_energy(smooth, LENGTH), pull_energy(pull - smooth, LENGTH), picked_up]
        at_rope = [(part * riders).to("kW") for part in each] + [(IDLE_DRAG * speed).to("kW")]
        self.parts = [*at_rope, needed * (1 - EFFICIENCY.m_as("")), needed]
        spare = rated - needed
        word = "to spare" if spare.magnitude >= 0 else "short"
        return {
            "needed power": needed,
            "rated power": rated,
            "big enough": f"{'yes' if spare.magnitude >= 0 else 'no'}, {self.text(abs(spare))} {word}",
            "energy a rider": energy,
            "needed for 1,000 pph": power_per_thousand_pph(needed, wanted) * Q(1000, "pph"),
            "running empty": idle_power(EFFICIENCY, speed, IDLE_DRAG),
        }

    def note(self):
        """Say what the panel takes for granted."""
        return f"{_taken(self)} An average over the hour: heavy moments and a start need more."

    def _prepare(self):
        unit = self.word("motor_power")
        self.picture.chart.prepare(
            x_label=f"power at the motor ({unit})",
            x_range=(0, self.number(Q(30, "kW"))),
            names=list(self.names),
            quantities=["power"] * len(self.names),
            marks=1,
            mark_quantity="capacity",
        )

    def _move(self):
        rated = self.given["motor_power"]
        self.picture.chart.move(
            title=f"{self.text(self.needed)} needed, {self.text(rated)} rated (dashed)",
            lengths=[[self.number(part)] for part in self.parts],
            texts=[self.text(part) for part in self.parts],
            marks=[self.number(rated)],
        )


class MotorPanel(Panel):
    """What a motor carries at each line speed: by the simple law, with all parts, and at constant torque."""

    title = "What a motor carries at each line speed"
    control_names = ("motor_power", "line_speed", "grade", "rider_mass", "snow_friction")

    def make_picture(self):
        return ChartPicture(CurveChart(), MotorPanel._prepare, MotorPanel._move)

    @staticmethod
    def _laws(given, speed):
        """Return what the motor carries at one line speed, or several: with all parts, and at constant torque."""
        power, energy = given["motor_power"], _energy(given, speed)
        slower = motor_capacity_at_constant_torque(
            power, EFFICIENCY, IDLE_DRAG, energy, line_speed=speed, base_speed=BASE_SPEED
        )
        return motor_capacity(power, EFFICIENCY, speed, IDLE_DRAG, energy), slower

    def compute(self, given):
        with_all, slower = self._laws(given, given["line_speed"])
        work = pull_energy(_pull(given), LENGTH)
        return {
            "motor limit": with_all,
            "by the simple law": simple_motor_capacity(given["motor_power"], EFFICIENCY, work),
            "at constant torque": slower,
            "energy a rider": _energy(given, given["line_speed"]),
        }

    def note(self):
        """Say what the panel takes for granted."""
        return f"{_taken(self)} Constant torque: of a drive that reaches full power at {self.text(BASE_SPEED)}."

    def _prepare(self):
        _, high = self.range_of("line_speed")
        self.picture.chart.prepare(
            x_label=f"line speed ({self.word('line_speed')})",
            y_label="people an hour (pph)",
            x_range=(0, self.number(high)),
            y_range=(0, 3000),
            curves=[
                Curve("power"), Curve("power", "--", bold=False),
                Curve("power", ":", bold=False, label_below=True, label_within=0.25),
            ],
        )  # fmt: skip

    def _move(self):
        _, high = self.range_of("line_speed")
        speeds = Q(np.linspace(0.05, 1, 60) * high.magnitude, high.units)
        simple = self.results["by the simple law"].m_as("pph")
        with_all, slower = self._laws(self.given, speeds)
        x = self.number(speeds)
        self.picture.chart.move(
            title=f"{self.text(self.given['motor_power'])} at {self.text(self.given['line_speed'])}: "
            f"{show(self.result)}",
            lines=[
                (x, with_all.m_as("pph"), ""),
                (x[[0, -1]], [simple, simple], "simple law"),
                (x, slower.m_as("pph"), "constant torque"),
            ],
            dot=(self.number(self.given["line_speed"]), self.result.m_as("pph")),
            dot_text=show(self.result),
        )
