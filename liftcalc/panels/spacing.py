"""The panels of 02: the line view, spacing from its parts, three stopping distances, and the unload area."""

import numpy as np

from liftcalc.figures.bars import BarChart, StayChart
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.pull import rope_pull
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway, mean_spacing, spacing_for_headway, spacing_from_parts
from liftcalc.formulas.stopping import (
    attendant_stopping_distance,
    brake_force_where_riders_make_no_difference,
    rider_deceleration,
    rider_stopping_distance,
    riders_inside,
    rope_deceleration,
    rope_stopping_distance,
)
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.lift_panel import LiftPanel
from liftcalc.panels.line_picture import LinePicture
from liftcalc.quantity_text import show
from liftcalc.units import Q


class LineViewPanel(Panel):
    """What a spacing looks like, and the headway it makes."""

    title = "A piece of the line"
    control_names = ("spacing", "line_speed", "grade")

    def make_picture(self):
        return LinePicture()

    def more_controls(self):
        return [self.picture.button]

    def compute(self, given):
        between = headway(given["line_speed"], given["spacing"])
        return {
            "headway": between,
            "people an hour": intended_capacity(hourly_capacity(given["line_speed"], given["spacing"]), between),
        }


class MixPanel(Panel):
    """Spacing built from skis and gap, for a mix of adults and children."""

    title = "Spacing built from its parts"
    control_names = ("practical_gap", "adult_length", "child_length", "child_share", "line_speed")

    def make_picture(self):
        return ChartPicture(BarChart(height=2.5, left=0.19), MixPanel._prepare, MixPanel._move)

    def compute(self, given):
        adult = spacing_from_parts(equipment_length=given["adult_length"], practical_gap=given["practical_gap"])
        child = spacing_from_parts(equipment_length=given["child_length"], practical_gap=given["practical_gap"])
        share = given["child_share"].m_as("")
        shares = Q([1 - share, share], "")
        mean = mean_spacing(Q([adult.m_as("m"), child.m_as("m")], "m"), shares)
        packed, between = hourly_capacity(given["line_speed"], mean), headway(given["line_speed"], mean)
        capacities = [hourly_capacity(given["line_speed"], spacing) for spacing in (adult, child)]
        return {
            "mean spacing": mean,
            "an adult's spacing": adult,
            "a child's spacing": child,
            "people an hour": intended_capacity(packed, between, level="packing"),
            "mean of the two capacities: wrong": show((1 - share) * capacities[0] + share * capacities[1]),
        }

    def _prepare(self):
        word = self.word("spacing")
        self.picture.chart.prepare(
            x_label=f"along the rope ({word}): dark is skis, light is gap",
            x_range=(0, self.number(Q(8, "m"))),
            names=["adult", "child", "mean of the mix"],
            quantities=["length", "length", "spacing"],
            parts=2,
        )

    def _move(self):
        gap = self.given["practical_gap"]
        spacings = [self.results[name] for name in ("an adult's spacing", "a child's spacing", "mean spacing")]
        self.picture.chart.move(
            title=f"The mix stands {self.text(self.results['mean spacing'])} apart",
            lengths=[[self.number(spacing - gap), self.number(gap)] for spacing in spacings],
            texts=[self.text(spacing) for spacing in spacings],
        )


class StoppingPanel(LiftPanel):
    """Three stopping distances, of the empty rope and of one with riders, and who is inside the longest of them.

    It asks for riders and brake, not for a deceleration: which load runs further depends on both, and one deceleration
    given by hand would hide it.
    """

    title = "Three stopping distances, empty and with riders"
    control_names = ("riders_on_rope", "brake_force", "line_speed", "grade", "reaction_time", "spacing")
    first_row, note_lines = 3, 3  # distances above, what follows from them below
    needs = ("rider_mass", "snow_friction", "idle_drag")
    stop_delay, moving_mass = Q(0.5, "s"), Q(400, "kg")  # assumed
    bars = ("attendant's stop, with riders", "attendant's stop, empty", "stop gate, with riders", "stop gate, empty",
            "a rider who lets go")  # fmt: skip

    def make_picture(self):
        return ChartPicture(BarChart(height=2.6, left=0.315), StoppingPanel._prepare, StoppingPanel._move)

    def compute(self, given):
        friction, mass = self.known["snow_friction"], self.known["rider_mass"]
        line = {
            "pull": rope_pull(mass, grade=given["grade"], snow_friction=friction),
            "idle_drag": self.known["idle_drag"], "rider_mass": mass, "moving_mass": self.moving_mass,
        }  # fmt: skip
        loads = given["riders_on_rope"], Q(0, "person")
        self.slowing = [rope_deceleration(riders, brake_force=given["brake_force"], **line) for riders in loads]
        self.slowing_alone = rider_deceleration(grade=given["grade"], snow_friction=friction)
        speed, times = given["line_speed"], {"reaction_time": given["reaction_time"], "stop_delay": self.stop_delay}
        attendant = [attendant_stopping_distance(speed, **times, rope_deceleration=slowing) for slowing in self.slowing]
        gate = [rope_stopping_distance(speed, self.stop_delay, slowing) for slowing in self.slowing]
        alone = rider_stopping_distance(speed, grade=given["grade"], snow_friction=friction)
        self.distances = [*attendant, *gate, alone]
        inside = riders_inside(distance=attendant[0], spacing=given["spacing"])
        even = brake_force_where_riders_make_no_difference(**line)
        return {
            "rope, after an attendant's stop": self._both(attendant),
            "rope, after a stop gate trips": self._both(gate),
            "a rider who lets go": alone,
            "inside the attendant's distance, at most": min(inside, given["riders_on_rope"]),
            "brake at which riders make no difference": even if even.magnitude > 0 else "none: idle drag is above it",
        }

    def _both(self, distances, riders=""):
        loaded, empty = (self.text(distance) for distance in distances)
        return f"{loaded}{riders}, empty {empty}"

    @property
    def result(self):
        """How far the rope runs after an attendant's stop, with the riders of the slider."""
        return self.distances[0]

    def note(self):
        """Say how hard rope and riders slow, what is taken for granted, and what a stop without riders proves."""
        loaded, empty, alone = (self.text(slowing) for slowing in (*self.slowing, self.slowing_alone))
        if empty == alone:
            riders = "riders make no difference to the rope"
        elif self.slowing[1] < self.slowing_alone:
            riders = "riders who hold on slow the rope down"
        else:
            riders = "the rope holds its riders back, and whoever holds on pushes it on"
        return (
            f"The empty rope slows by {empty}, with riders by {loaded}, a rider who lets go by {alone}: {riders}. "
            f"Assumed: {show(self.stop_delay)} until the rope slows, idle drag {self.text(self.known['idle_drag'])}, "
            f"{self.text(self.moving_mass)} of rope and sheaves, riders of {self.text(self.known['rider_mass'])}, "
            f"friction {show(self.known['snow_friction'])}. A stop tried without riders proves nothing about a "
            "full line."
        )

    def _prepare(self):
        self.picture.chart.prepare(
            x_label=f"distance from the place of the fall ({self.word('spacing')}); dashed: the riders behind",
            x_range=(0, self.number(Q(30, "m"))),
            names=list(self.bars),
            quantities=["length"] * len(self.bars),
            marks=12,
        )

    def _move(self):
        riders = int(self.given["riders_on_rope"].m_as("person"))
        behind = np.arange(1, min(12, riders - 1) + 1)
        words = f" with {riders} {'rider' if riders == 1 else 'riders'}"
        self.picture.chart.move(
            title=f"After a stop gate: {self._both(self.distances[2:4], words)}",
            lengths=[[self.number(distance)] for distance in self.distances],
            texts=[self.text(distance) for distance in self.distances],
            marks=list(self.number(self.given["spacing"]) * behind),
        )


class UnloadPanel(Panel):
    """Who is in the unload area at once, and the spacing that leaves it to one rider at a time."""

    title = "The unload area"
    control_names = ("spacing", "line_speed", "clearing_time")

    def make_picture(self):
        return ChartPicture(StayChart(), UnloadPanel._prepare, UnloadPanel._move)

    def compute(self, given):
        speed, clearing = given["line_speed"], given["clearing_time"]
        flow = hourly_capacity(speed, given["spacing"])
        alone = spacing_for_headway(speed, clearing)
        return {
            "in the unload area at once, on average": persons_from_flow(flow, clearing),
            "headway": headway(speed, given["spacing"]),
            "spacing that leaves it to one at a time": alone,
            "people an hour at that spacing": intended_capacity(hourly_capacity(speed, alone), clearing),
        }

    def _prepare(self):
        self.picture.chart.prepare(x_label="time (s)", y_label="rider")

    def _move(self):
        chart, clearing = self.picture.chart, self.given["clearing_time"].m_as("s")
        between = self.results["headway"].m_as("s")
        arrivals = between * np.arange(chart.riders)
        just = 1e-9  # who leaves as the next one arrives is gone, whatever the last digit says
        last = int(np.count_nonzero(arrivals <= 0.9 * chart.seconds + just))
        there = int(np.count_nonzero(arrivals[:last] + clearing > arrivals[last - 1] + just))
        chart.move(
            title=f"A rider every {show(self.results['headway'])}, "
            f"each {show(self.given['clearing_time'])} in the area",
            arrivals=list(arrivals),
            stay=clearing,
            moment=arrivals[last - 1],
            text=f"as rider {last} arrives: {there} in the area",
        )
