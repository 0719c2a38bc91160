"""The panels of 02: the line view, spacing from its parts, three stopping distances, and the unload area."""

import numpy as np

from liftcalc.capacity import hourly_capacity
from liftcalc.figures.bars import BarChart, StayChart
from liftcalc.levels import Capacity
from liftcalc.line import headway, persons_from_flow, spacing_for_headway
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.line_picture import LinePicture
from liftcalc.pull import (
    attendant_stopping_distance,
    rider_stopping_distance,
    riders_inside,
    rope_stopping_distance,
)
from liftcalc.quantity_text import show
from liftcalc.spacing import mean_spacing, spacing_from_parts
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
        return {
            "headway": headway(given["line_speed"], given["spacing"]),
            "people an hour": Capacity(hourly_capacity(given["line_speed"], given["spacing"]), "ideal"),
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
        capacities = [hourly_capacity(given["line_speed"], spacing) for spacing in (adult, child)]
        return {
            "mean spacing": mean,
            "an adult's spacing": adult,
            "a child's spacing": child,
            "people an hour": Capacity(hourly_capacity(given["line_speed"], mean), "packing"),
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


class StoppingPanel(Panel):
    """Three stopping distances, and who is inside the longest of them."""

    title = "Three stopping distances"
    control_names = ("spacing", "line_speed", "reaction_time", "rope_deceleration", "grade")
    stop_delay = Q(0.5, "s")
    friction = Q(0.07, "")
    names = ("rope, after a stop gate trips", "rope, after an attendant's stop", "a rider who lets go")

    def make_picture(self):
        return ChartPicture(BarChart(height=2.7, left=0.345), StoppingPanel._prepare, StoppingPanel._move)

    def compute(self, given):
        speed, slowing = given["line_speed"], given["rope_deceleration"]
        attendant = attendant_stopping_distance(
            speed, reaction_time=given["reaction_time"], stop_delay=self.stop_delay, rope_deceleration=slowing
        )
        return {
            "rope, after an attendant's stop": attendant,
            "rope, after a stop gate trips": rope_stopping_distance(speed, self.stop_delay, slowing),
            "a rider who lets go": rider_stopping_distance(speed, grade=given["grade"], friction=self.friction),
            "inside the attendant's distance, at most": riders_inside(distance=attendant, spacing=given["spacing"]),
            "headway": headway(speed, given["spacing"]),
        }

    def _prepare(self):
        self.picture.chart.prepare(
            x_label=f"distance from the place of the fall ({self.word('spacing')}); dashed: the riders behind",
            x_range=(0, self.number(Q(30, "m"))),
            names=list(self.names),
            quantities=["line speed", "time", "persons"],
            marks=12,
        )

    def _move(self):
        distances = [self.results[name] for name in self.names]
        inside = self.results["inside the attendant's distance, at most"]
        marks = self.number(self.given["spacing"]) * np.arange(1, 13)
        self.picture.chart.move(
            title=f"Inside the attendant's distance: {show(inside)} at most",
            lengths=[[self.number(distance)] for distance in distances],
            texts=[self.text(distance) for distance in distances],
            marks=list(marks),
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
            "people an hour at that spacing": Capacity(hourly_capacity(speed, alone), "ideal"),
        }

    def _prepare(self):
        self.picture.chart.prepare(x_label="time (s)", y_label="rider")

    def _move(self):
        chart, clearing = self.picture.chart, self.given["clearing_time"].m_as("s")
        between = self.results["headway"].m_as("s")
        arrivals = between * np.arange(chart.riders)
        last = int(np.count_nonzero(arrivals <= 0.9 * chart.seconds))
        there = int(np.count_nonzero(arrivals[:last] + clearing > arrivals[last - 1]))
        chart.move(
            title=f"A rider every {show(self.results['headway'])}, "
            f"each {show(self.given['clearing_time'])} in the area",
            arrivals=list(arrivals),
            stay=clearing,
            moment=arrivals[last - 1],
            text=f"as rider {last} arrives: {there} in the area",
        )
