"""Scenes that the talk keeps to spare: a faster rope, a lift where spacing governs, the wait, the cost."""

from dataclasses import replace

from liftcalc.figures.stage import Bar, draw_bars
from liftcalc.lifts.cost_of_lift import yearly_cost
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.panels.cost import demo_cost_sheet
from liftcalc.panels.scene_base import ScenePanel, an_hour, counted_at_the_top
from liftcalc.panels.scenes import LimitsScene
from liftcalc.panels.waiting import time_for_each
from liftcalc.quantity_text import show
from liftcalc.simulation.closed_crowd import closed_crowd
from liftcalc.units import Q


class FasterRope(LimitsScene):
    """A spare: another line speed of the Penny Rope."""

    title = "A faster rope"
    most = 2800.0
    control_names = ("line_speed",)
    ranges = {"line_speed": [(2.0, 5.0, 0.1), (4.5, 11.0, 0.1)]}

    def others(self, measured):
        return {"faster": {"line_speed": Q(4.4, "m/s")}, "slower": {"line_speed": Q(2.4, "m/s")}}

    def said(self):
        return (
            self.gained(),
            "people an hour, governed",
            f"At {self.setting('line_speed')} {self.found.limit.name} governs.",
        )


class WhereSpacingGoverns(LimitsScene):
    """A spare: the Long Platter, where closer carriers do carry more on paper."""

    title = "Where spacing governs"
    demo, most = "Long Platter", 1100.0
    control_names = ("spacing",)
    ranges = {"spacing": [(9.8, 25.0, 0.2), (32.0, 82.0, 0.5)]}

    def others(self, measured):
        return {"half the spacing": {"spacing": measured / 2}}

    def said(self):
        return (
            self.gained(),
            "people an hour, governed",
            f"Now {self.found.limit.name} governs: {an_hour(self.found.capacity)[0]}.",
        )


class TheWait(ScenePanel):
    """A spare: how long a crowd waits at the counted rate of the rope."""

    title = "The wait"
    control_names = ("crowd",)
    ranges = {"crowd": [(10, 150, 1)]}

    @property
    def presets(self):
        return {
            "70 people": {"crowd": Q(70, "person")},
            "40 people": {"crowd": Q(40, "person")},
            "100 people": {"crowd": Q(100, "person")},
        }

    def compute(self, given):
        counted = counted_at_the_top()
        line, _ = demo_line("Penny Rope")
        crowd = Q(max(1, round(given["crowd"].m_as("person"))), "person")
        found = closed_crowd(
            crowd, loading_time=time_for_each(counted.value),
            ride_and_descent=line.ride_time + self.state.values["descent_time"],
        )  # fmt: skip
        return {"mean wait": found.wait[-1, 0].to("minute"), "in line": found.line[-1, 0], "capacity": counted}

    def said(self):
        wait, line = self.results["mean wait"], self.results["in line"]
        down = self.state.values["descent_time"]
        return (
            f"{wait.m_as('minute'):.1f}",
            "min in line, mean",
            f"{line.m_as('person'):.0f} stand in line. Assumed: {self.text(down)} down, no rest.",
        )

    def drawing(self):
        crowd, line = (self.given["crowd"].m_as("person"), self.results["in line"].m_as("person"))
        bars = [
            Bar("in line", line, f"{line:.0f} people", "time", bold=True),
            Bar("up and down", crowd - line, f"{crowd - line:.0f} people", "persons"),
        ]
        return draw_bars(bars, most=150.0, row=80)


class TheCost(ScenePanel):
    """A spare: what a ride costs over the rides of a season."""

    title = "The cost"
    control_names = ("rides",)
    ranges = {"rides": [(10000, 200000, 1000)]}

    @property
    def presets(self):
        rides = demo_cost_sheet().rides
        return {
            "a usual season": {"rides": rides},
            "half the rides": {"rides": rides / 2},
            "twice": {"rides": rides * 2},
        }

    def compute(self, given):
        self.cost = yearly_cost(replace(demo_cost_sheet(), rides=given["rides"]))
        return {"cost of a ride": self.cost.per_ride, "cost of a year": self.cost.total}

    def said(self):
        rides = f"{self.given['rides'].m_as('person/season'):,.0f}"
        return (
            f"{self.result.m_as('dollar/person'):.2f}",
            "dollars a ride",
            f"{show(self.cost.total, 'dollar/season')}, over {rides} rides.",
        )

    def drawing(self):
        shares = sorted(self.cost.shares.items(), key=lambda each: -each[1])[:4]
        bars = [
            Bar(name, share.m_as("percent"), show(share.to("percent")), "money", place == 0)
            for place, (name, share) in enumerate(shares)
        ]
        return draw_bars(bars, most=100.0, left=330, row=60)
