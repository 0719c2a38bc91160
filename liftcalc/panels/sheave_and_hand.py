"""The panels of 08 on grip: of the rope on its sheave, of a hand on the rope; and the start of a full line."""

import math

import numpy as np

from liftcalc.figures.bars import BarChart
from liftcalc.figures.curves import Curve, CurveChart
from liftcalc.formulas.hand_grip import grip_squeeze, held_force
from liftcalc.formulas.motor import force_to_start
from liftcalc.formulas.pull import rope_pull, tether_relief
from liftcalc.formulas.riders import persons_on_line
from liftcalc.formulas.traction import (
    capstan_ratio,
    groove_friction,
    riders_by_traction,
    riders_by_traction_bottom_drive,
    slack_tension_bottom_drive,
    slack_tension_top_drive,
)
from liftcalc.lifts.limits_of_line import idle_drag_of
from liftcalc.panels.base import ChartPicture
from liftcalc.panels.lift_panel import LiftPanel
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import words_of

ROPE = Q(0.6, "kg/m")  # assumed: nobody read the mass of the rope


class SheavePanel(LiftPanel):
    """How many riders the drive sheave pulls before the rope slips on it, for a drive at the top and at the bottom."""

    title = "When the rope slips on its drive sheave"
    control_names = ("wrap_angle", "lining_friction", "counterweight", "grade")

    def refuse_kinds(self):
        if "bed_friction" in self.kind.riding.work_readings:
            raise PlainError(
                f"{type(self).__name__}: {self.line.name} is a {self.line.kind}, and has no rope on a sheave."
            )

    def wanted(self):
        rope = () if self.on_skis else ("rope_mass_per_length",)  # with the carriers on it nobody may assume one
        return (*self.of_a_ride(), "grip_safety_factor", *rope)

    @property
    def rope(self):
        """Mass of one metre of rope: as read, or assumed for a rope that draws riders on skis."""
        return self.known.get("rope_mass_per_length", ROPE)

    def make_picture(self):
        return ChartPicture(CurveChart(), SheavePanel._prepare, SheavePanel._move)

    def _friction(self, given):
        """Return the friction that the rope feels: that of the lining, or more in a groove that was read."""
        groove = self.known.get("groove_angle")
        return given["lining_friction"] if groove is None else groove_friction(given["lining_friction"], groove)

    def _riders(self, given, wrap):
        """Return riders at most, for a drive at the top and one at the bottom, at one wrap or several."""
        known, values = self.known, self.values({"grade": given["grade"]})
        pull, rise = self.kind.riding.work(values) / known["ridden_length"], values["vertical_rise"]
        drag = idle_drag_of(self.line.kind, values)
        loop = {"counterweight": given["counterweight"], "strand_drag": drag / 2}
        self.top = slack_tension_top_drive(self.rope, rise, **loop)
        self.bottom = slack_tension_bottom_drive(self.rope, rise, Q(0, "person"), pull=pull, **loop)
        sheave = {"pull": pull, "idle_drag": drag, "lining_friction": self._friction(given), "wrap_angle": wrap}
        sheave |= {"grip_safety_factor": known["grip_safety_factor"]}
        return (
            riders_by_traction(slack_tension=self.top, **sheave),
            riders_by_traction_bottom_drive(slack_tension=self.bottom, **sheave),
        )

    def compute(self, given):
        top, bottom = self._riders(given, given["wrap_angle"])
        ratio = capstan_ratio(lining_friction=self._friction(given), wrap_angle=given["wrap_angle"])
        return {
            "riders, drive at the top": top,
            "riders, drive at the bottom": bottom,
            "tension ratio": ratio,
            "slack side at the top": self.top,
        }

    def note(self):
        """Say what the panel takes for granted."""
        known, groove = self.known, self.known.get("groove_angle")
        rim = "flat rim, no groove" if groove is None else f"wedged in a groove of {show(groove)}, as read"
        drag = idle_drag_of(self.line.kind, self.values({"grade": self.given["grade"]}))
        return (
            f"Riders of {self.text(known['rider_mass'])}, {self._rubs()}, rope {show(self.rope)}, length "
            f"{self.text(known['ridden_length'])}, idle drag {self.text(drag)}; the rope is to hold "
            f"{show(known['grip_safety_factor'])} times over, a figure of the sheet: the code and the maker give "
            f"the real one. Steady run; {rim}."
        )

    def _rubs(self):
        """Return the friction of a ride in words."""
        (name,) = self.kind.riding.work_readings
        return f"{'friction' if self.on_skis else words_of(name)} {show(self.known[name])}"

    def _most(self):
        """Return the end of the upright axis [person]: it changes with the lift, never with a slider."""
        line = persons_on_line(ridden_length=self.known["ridden_length"], spacing=self.known["spacing"])
        return max(60, 3 * math.ceil(line.m_as("person") / 10) * 10)

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="wrap (degrees)",
            y_label="riders on the line, at most",
            x_range=(90, 540),
            y_range=(0, self._most()),
            curves=[Curve("force"), Curve("force", "--", bold=False, label_below=True)],
        )

    def _move(self):
        wraps = Q(np.linspace(90, 540, 60), "degree")
        top, bottom = (riders.m_as("person") for riders in self._riders(self.given, wraps))
        angles = wraps.m_as("degree")
        self.picture.chart.move(
            title=f"{self.given['wrap_angle'].m_as('degree'):.0f} degrees of wrap, drive at the top: "
            f"{show(self.result)} at most",
            lines=[(angles, top, ""), (angles, bottom, "drive at the bottom")],
            dot=(self.given["wrap_angle"].m_as("degree"), self.result.m_as("person")),
            dot_text=show(self.result),
        )


class HandsPanel(LiftPanel):
    """What a rider holds on a rope without handles: along the rope, and as a squeeze of the fingers."""

    title = "What the hands hold"
    control_names = ("rider_mass", "grade", "pick_up_acceleration", "glove_friction")
    needs = ("snow_friction",)
    names = ("held, steady ride", "held, pick-up", "squeeze, steady ride", "squeeze, pick-up")

    def refuse_kinds(self):
        if self.kind.has_carriers or not self.on_skis:
            raise PlainError(
                f"{type(self).__name__}: {self.line.name} is a {self.line.kind}: nobody holds its rope by hand."
            )

    def make_picture(self):
        return ChartPicture(BarChart(height=2.6, left=0.24), HandsPanel._prepare, HandsPanel._move)

    def compute(self, given):
        slope = {"grade": given["grade"], "snow_friction": self.known["snow_friction"]}
        steady = held_force(given["rider_mass"], **slope)
        pick_up = held_force(given["rider_mass"], given["pick_up_acceleration"], **slope)
        squeezes = [grip_squeeze(force, given["glove_friction"]) for force in (steady, pick_up)]
        return dict(zip(self.names, (steady, pick_up, *squeezes), strict=True))

    def note(self):
        """Say what the panel takes for granted, and what nobody does."""
        return (
            f"Skis on snow {show(self.known['snow_friction'])}; the rope's own weight comes on top. Nobody "
            "makes up for a slippery rope by wrapping it round a hand or an arm."
        )

    def _prepare(self):
        self.picture.chart.prepare(
            x_label=f"force of both hands together ({'lbf' if self.state.system == 'us' else 'N'})",
            x_range=(0, self.number(Q(800, "N"))),
            names=list(self.names),
            quantities=["force"] * 4,
        )

    def _move(self):
        self.picture.chart.move(
            title=f"{self.text(self.given['rider_mass'])} on a grade of {show(self.given['grade'])}: "
            f"{self.text(self.result)} in the hands",
            lengths=[[self.number(force)] for force in self.results.values()],
            texts=[self.text(force) for force in self.results.values()],
        )


class StartingPanel(LiftPanel):
    """What it takes to start a platter lift with every platter taken, and why it starts gently."""

    title = "Starting a full line"
    control_names = ("starting_time", "grade", "rider_mass", "motor_power")
    demo = "Long Platter"
    needs = ("snow_friction", "tether_angle", "idle_drag", "efficiency")
    # assumed: nobody read them; the drive's is rotor, gear and brake disc as a mass at the rope
    moving_mass, drive_inertia = Q(1100, "kg"), Q(300, "kg")

    def make_picture(self):
        return ChartPicture(CurveChart(), StartingPanel._prepare, StartingPanel._move)

    def _moving(self):
        """Return the mass of rope, carriers and sheaves: as read, or assumed."""
        return self.known.get("moving_mass", self.moving_mass)

    def _drive(self):
        """Return the inertia of the drive as a mass at the rope: as read, or assumed."""
        return self.known.get("drive_inertia_mass", self.drive_inertia)

    def _force(self, given, times=None):
        """Return the force at the drive sheave while the line starts within a time, or several; steady if left out."""
        known, friction = self.known, self.known["snow_friction"]
        riders = persons_on_line(ridden_length=known["ridden_length"], spacing=known["spacing"])
        relief = tether_relief(known["tether_angle"], friction)
        pull = rope_pull(given["rider_mass"], grade=given["grade"], snow_friction=friction) * relief
        masses = {"rider_mass": given["rider_mass"] * relief, "moving_mass": self._moving() + self._drive()}
        faster = Q(0, "m/s**2") if times is None else self.line.line_speed / times
        return force_to_start(riders, faster, pull=pull, idle_drag=known["idle_drag"], **masses)

    def compute(self, given):
        force, steady = self._force(given, given["starting_time"]), self._force(given)
        self.steady = steady
        self.rated = (self.known["efficiency"] * given["motor_power"] / self.line.line_speed).to("N")
        return {
            "force to start": force,
            "to keep it going": steady,
            "motor's rated force": self.rated,
            "start, of the rated force": (force / self.rated).to("percent"),
        }

    def note(self):
        """Say what the panel takes for granted."""
        known = self.known
        return (
            f"The {self.line.name}, every platter taken: {self.text(known['ridden_length'])}, one rider each "
            f"{self.text(known['spacing'])}, to {self.text(known['line_speed'])}, tethers at "
            f"{show(known['tether_angle'])}; rope, platters and sheaves {self.text(self._moving())}, the drive "
            f"{self.text(self._drive())} at the rope, idle drag {self.text(known['idle_drag'])}, snow friction "
            f"{show(known['snow_friction'])}, efficiency {show(known['efficiency'])}: all assumed. Cold "
            "grease has to break away as well. Whether a motor may give more than its rated force for a few seconds is "
            "the maker's to say."
        )

    def _prepare(self):
        unit = "lbf" if self.state.system == "us" else "N"
        self.picture.chart.prepare(
            x_label="starting time (s)",
            y_label=f"force at the drive sheave ({unit})",
            x_range=(0, 20),
            y_range=(0, self.number(Q(12000, "N"))),
            curves=[
                Curve("force"), Curve("length", "--", bold=False, label_below=True),
                Curve("power", "-.", bold=False, label_below=True, label_within=0.05),
            ],
        )  # fmt: skip

    def _move(self):
        times = Q(np.linspace(0.4, 20, 80), "s")
        ends = [0, 20]
        self.picture.chart.move(
            title=f"In {show(self.given['starting_time'])} to line speed: {self.text(self.result)}",
            lines=[
                (times.m_as("s"), self.number(self._force(self.given, times)), ""),
                (ends, [self.number(self.steady)] * 2, "to keep it going"),
                (ends, [self.number(self.rated)] * 2, "motor's rated force"),
            ],
            dot=(self.given["starting_time"].m_as("s"), self.number(self.result)),
            dot_text=self.text(self.result),
            rising=False,
        )
