"""The panels of 03: riders on the line by length and spacing, and by flow and ride time."""

import numpy as np

from liftcalc.figures.bars import AreaChart
from liftcalc.figures.curves import Curve, CurveChart
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.riders import (
    most_persons_from_headway,
    most_persons_on_line,
    persons_from_flow,
    persons_on_line,
    ride_time,
    ride_time_from_rest,
)
from liftcalc.formulas.spacing import headway
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.controls import InUnit
from liftcalc.quantity_text import show
from liftcalc.units import Q


def speed_reached(ridden_length, line_speed, pick_up):
    """Return the speed of a rider from rest at the let-go: that of the rope, or less on a very short ride."""
    return min(line_speed, (2 * pick_up * ridden_length) ** 0.5)


def time_on_the_line(ridden_length, line_speed, pick_up=None):
    """Return the ride time: from rest where there is a pick-up, else at the speed of the rope from the first metre."""
    if pick_up is None:
        return ride_time(ridden_length, line_speed)
    return ride_time_from_rest(ridden_length, speed_reached(ridden_length, line_speed, pick_up), pick_up)


class RidersPanel(Panel):
    """The average on the line, and the fence-post count, for riders who have the speed of the rope at once."""

    title = "Riders on the line, at the speed of the rope"
    control_names = ("ridden_length", "spacing")
    longest = Q(200, "m")

    def make_picture(self):
        return ChartPicture(CurveChart(), RidersPanel._prepare, RidersPanel._move)

    def compute(self, given):
        return {
            "riders on the line, on average": persons_on_line(
                ridden_length=given["ridden_length"], spacing=given["spacing"]
            ),
            "most at one moment": most_persons_on_line(ridden_length=given["ridden_length"], spacing=given["spacing"]),
        }

    def _prepare(self):
        self.picture.chart.prepare(
            x_label=f"ridden length ({self.word('ridden_length')})",
            y_label="persons",
            x_range=(0, self.number(self.longest)),
            y_range=(0, 40),
            curves=[Curve("persons", label_below=True), Curve("length", "--", bold=False)],
        )

    def _move(self):
        spacing, length = self.given["spacing"], min(self.given["ridden_length"], self.longest)
        ends = Q(np.array([0.01, self.longest.m_as("m")]), "m")
        posts = np.arange(0.0, self.longest.m_as("m"), spacing.m_as("m"))
        steps = Q(np.repeat(np.append(posts, self.longest.m_as("m")), 2)[1:-1], "m")
        most = most_persons_on_line(ridden_length=Q(np.maximum(posts, 0.01), "m"), spacing=spacing)
        beyond = " (off the chart)" if self.given["ridden_length"] > self.longest else ""
        self.picture.chart.move(
            title=f"{show(self.result)} on average, {show(self.results['most at one moment'])} at most",
            lines=[
                (self.number(ends), persons_on_line(ridden_length=ends, spacing=spacing).m_as("person"), "average"),
                (self.number(steps), np.repeat(most.m_as("person"), 2), "most at one moment"),
            ],
            dot=(self.number(length), persons_on_line(ridden_length=length, spacing=spacing).m_as("person")),
            dot_text=show(self.result) + beyond,
        )


class FlowPanel(Panel):
    """Riders on the line as an area: riders a second times seconds on the line, a start from rest included."""

    title = "Flow times ride time, with a start from rest"
    control_names = ("line_speed", "spacing", "ridden_length", "pick_up_acceleration")

    def make_picture(self):
        return ChartPicture(AreaChart(), FlowPanel._prepare, FlowPanel._move)

    def compute(self, given):
        flow = hourly_capacity(given["line_speed"], given["spacing"])
        time = time_on_the_line(given["ridden_length"], given["line_speed"], given["pick_up_acceleration"])
        between = headway(given["line_speed"], given["spacing"])
        return {
            "riders on the line, on average": persons_from_flow(flow, time),
            "most at one moment": most_persons_from_headway(ride_time=time, headway=between),
            "riders a second": InUnit(flow, "person/s"),
            "ride time": time,
            "people an hour": intended_capacity(flow, headway(given["line_speed"], given["spacing"])),
        }

    def note(self):
        """Say where a ride is too short for the speed of the rope."""
        ride = (self.given[name] for name in ("ridden_length", "line_speed", "pick_up_acceleration"))
        reached = speed_reached(*ride)
        if reached == self.given["line_speed"]:
            return ""
        return (
            f"So short a ride: they let go before they have the speed of the rope, at {self.text(reached.to('m/s'))}."
        )

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="ride time (s)", y_label="riders a second", x_range=(0, 150), y_range=(0, 1.2)
        )

    def _move(self):
        flow = self.results["people an hour"].value.m_as("person/s")
        self.picture.chart.move(
            title="The area is the number of riders on the line",
            width=self.results["ride time"].m_as("s"),
            height=flow,
            text=show(self.result),
        )
