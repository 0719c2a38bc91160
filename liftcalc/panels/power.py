"""The panels of 08 on power: where it goes, whether the motor is big enough, and what it carries at each speed."""

import numpy as np

from liftcalc.constants import GRAVITY
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
from liftcalc.formulas.pull import pull_energy
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.lifts.governing import governing
from liftcalc.lifts.kinds import kind_named
from liftcalc.lifts.limits_of_line import idle_drag_of, limits_of, ride_energy
from liftcalc.panels.base import ChartPicture
from liftcalc.panels.lift_panel import LiftPanel, slider_values
from liftcalc.quantity_text import show
from liftcalc.units import Q

# what the friction of a ride is called on a picture, by the reading that makes it
RUBS = {"snow_friction": "rubbing skis", "sheave_drag_share": "drag of sheaves", "bed_friction": "rubbing belt"}


class _DrivePanel(LiftPanel):
    """A panel of what the drive gives to riders: the same sums for every kind of lift."""

    def __init__(self, line=None, readings=None, **settings):
        line_of_panel, _ = (line, readings) if line is not None else demo_line(self.demo)
        if "snow_friction" not in kind_named(line_of_panel.kind).riding.work_readings:
            self.control_names = tuple(name for name in self.control_names if name != "snow_friction")
        super().__init__(line, readings, **settings)

    def wanted(self):
        return ("efficiency", "motor_power", *self.of_a_ride(), *self.kind.pick_up.readings)

    def work(self, given):
        """Return the work of one ride on the slope of the sliders."""
        return self.kind.riding.work(self.values(given))

    def energy(self, given, line_speed):
        """Return the energy of one rider at one line speed, or several."""
        return ride_energy(self.line.kind, {**self.values(given), "line_speed": line_speed})

    def idle_drag(self, given):
        """Return the drag of the empty lift."""
        return idle_drag_of(self.line.kind, self.values(given))

    def taken(self):
        """Return what the panel takes for granted, in words."""
        known = self.known
        pick_up = (
            f"pick-up at {self.text(known['pick_up_acceleration'])}"
            if self.kind.pick_up.readings
            else self.kind.pick_up.words
        )
        return (
            f"Ridden length {self.text(known['ridden_length'])}, efficiency {show(known['efficiency'])}, idle drag "
            f"{self.text(self.idle_drag(self.given))}, {pick_up}."
        )


class PowerPanel(_DrivePanel):
    """Where the motor's power goes, and whether the motor is big enough."""

    title = "Is the motor big enough"
    control_names = ("wanted_capacity", "line_speed", "grade", "rider_mass", "snow_friction", "motor_power")
    first_and_last = ("lifting riders", "pick-up", "empty rope", "lost in the drive", "together")

    @property
    def names(self):
        """Names of the bars."""
        lifting, *rest = self.first_and_last
        return (lifting, *(RUBS[name] for name in self.kind.riding.work_readings), *rest)

    def __init__(self, line=None, readings=None, **settings):
        if line is not None:  # begin with what the lift's own limits let through
            settings = {"wanted_capacity": governing(limits_of(line, readings or {})).capacity.value} | settings
        super().__init__(line, readings, **settings)

    def make_picture(self):
        return ChartPicture(BarChart(height=3.4, left=0.19), PowerPanel._prepare, PowerPanel._move)

    def compute(self, given):
        speed, wanted = given["line_speed"], given["wanted_capacity"]
        efficiency, idle_drag = self.known["efficiency"], self.idle_drag(given)
        work, energy = self.work(given), self.energy(given, speed)
        lifting = pull_energy(Q(GRAVITY, "m/s**2") * given["rider_mass"], self.values(given)["vertical_rise"])
        if self.on_skis:
            lifting = lifting * self.relief(given["snow_friction"])
        needed = motor_power_needed(wanted, efficiency, speed, idle_drag, energy)
        self.needed, rated = needed, given["motor_power"]
        riders = wanted / Q(1, "person")  # energy of one rider, times how many come in an hour
        each = [lifting, work - lifting, energy - work]
        at_rope = [(part * riders).to("kW") for part in each] + [(idle_drag * speed).to("kW")]
        self.parts = [*at_rope, needed * (1 - efficiency.m_as("")), needed]
        spare = rated - needed
        word = "to spare" if spare.magnitude >= 0 else "short"
        return {
            "needed power": needed,
            "rated power": rated,
            "big enough": f"{'yes' if spare.magnitude >= 0 else 'no'}, {self.text(abs(spare))} {word}",
            "energy a rider": energy,
            "needed for 1,000 pph": power_per_thousand_pph(needed, wanted) * Q(1000, "pph"),
            "running empty": idle_power(efficiency, speed, idle_drag),
        }

    def note(self):
        """Say what the panel takes for granted."""
        return f"{self.taken()} An average over the hour: heavy moments and a start need more."

    def _prepare(self):
        unit = self.word("motor_power")
        self.picture.chart.prepare(
            x_label=f"power at the motor ({unit})",
            x_range=(0, self.number(max(Q(30, "kW"), 2 * self.known["motor_power"]))),
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


class MotorPanel(_DrivePanel):
    """What a motor carries at each line speed: by the simple law, with all parts, and at constant torque."""

    title = "What a motor carries at each line speed"
    control_names = ("motor_power", "line_speed", "grade", "rider_mass", "snow_friction")

    def make_picture(self):
        return ChartPicture(CurveChart(), MotorPanel._prepare, MotorPanel._move)

    def _laws(self, given, speed):
        """Return what the motor carries at one line speed, or several: with all parts, and at constant torque."""
        drive = {"efficiency": self.known["efficiency"], "idle_drag": self.idle_drag(given)}
        drive |= {"motor_power": given["motor_power"], "energy_per_rider": self.energy(given, speed)}
        slower = motor_capacity_at_constant_torque(**drive, line_speed=speed, base_speed=self._full_power_at())
        return motor_capacity(**drive, line_speed=speed), slower

    def _full_power_at(self):
        """Return the line speed at which a drive at constant torque has full power: as read, or that of the line."""
        return self.known.get("base_speed", self.line.line_speed)

    def compute(self, given):
        with_all, slower = self._laws(given, given["line_speed"])
        work = self.work(given)
        return {
            "motor limit": with_all,
            "by the simple law": simple_motor_capacity(given["motor_power"], self.known["efficiency"], work),
            "at constant torque": slower,
            "energy a rider": self.energy(given, given["line_speed"]),
        }

    def note(self):
        """Say what the panel takes for granted."""
        return (
            f"{self.taken()} Constant torque: of a drive that reaches full power at {self.text(self._full_power_at())}."
        )

    def _top(self):
        """Return the end of the upright axis [pph]: it changes with the lift, never with a slider."""
        begin = slider_values(self.control_names, self.known)
        carries = self._laws(begin, self.line.line_speed)[0].m_as("pph")
        return next((top for top in (3000, 5000, 8000, 12000) if top >= 1.5 * carries), 20000)

    def _prepare(self):
        _, high = self.range_of("line_speed")
        self.picture.chart.prepare(
            x_label=f"line speed ({self.word('line_speed')})",
            y_label="people an hour (pph)",
            x_range=(0, self.number(high)),
            y_range=(0, self._top()),
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
