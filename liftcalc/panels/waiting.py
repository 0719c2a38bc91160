"""The panels of 11: the line of a morning as two curves and two gaps, and the laps of a crowd on one lift."""

import math

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.figures.curves import Curve, CurveChart
from liftcalc.figures.gaps import GapChart
from liftcalc.formulas.loading_point import crowd_capacity_at_least, crowd_capacity_at_most
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.waiting import line_growth, mean_wait_constant, mean_wait_exponential, wait_from_line
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.quantity_text import show
from liftcalc.simulation.closed_crowd import closed_crowd
from liftcalc.simulation.waiting_words import HOUR, line_of_first_hour
from liftcalc.units import Q


def time_for_each(hourly_capacity):
    """Return the mean loading time that a capacity leaves to each person."""
    return Q(SECONDS_PER_HOUR / hourly_capacity.m_as("pph"), "s")


class LiftLinePanel(Panel):
    """Who came and who got on in the first hour: the line is the upright gap between the two, the wait the level one.

    After the hour nobody comes, and a line that is left is carried up.
    """

    title = "The line of the first hour: who came, and who got on"
    control_names = ("rush_arrivals", "rush_length", "later_arrivals", "governed_capacity", "time_looked_at")
    first_row, note_lines, leaves_trace, guess_on = 4, 4, True, ("across", "minute")
    hour = HOUR
    most = 1600  # persons on the chart: no sliders send more

    def make_picture(self):
        return ChartPicture(GapChart(), LiftLinePanel._prepare, LiftLinePanel._move)

    def _line(self, given):
        """Return the line as a fluid."""
        return line_of_first_hour(
            rush_arrivals=given["rush_arrivals"], rush_length=given["rush_length"],
            later_arrivals=given["later_arrivals"], hourly_capacity=given["governed_capacity"],
        )  # fmt: skip

    def compute(self, given):
        found, capacity = self._line(given), given["governed_capacity"]
        time = given["time_looked_at"].m_as("minute")
        waiting = Q(round(float(np.interp(time, found.times.m_as("minute"), found.line.m_as("person"))), 6), "person")
        return {
            "longest line": found.longest_line,
            "line clears at": "no line" if found.clears_at is None else self._when(found.clears_at),
            "mean wait": found.mean_wait.to("minute"),
            "longest wait": found.longest_wait.to("minute"),
            "in line at the time looked at": waiting,
            "wait of who joins then": wait_from_line(waiting, capacity).to("minute"),
            "mean wait by chance alone": self._by_chance(given, found),
        }

    def _when(self, time):
        """Return a time as it is shown: the first hour is the one on the chart."""
        return show(time, "minute") + (", after this hour" if time > self.hour else "")

    @staticmethod
    def _chance(given):
        """Return the busier rate and the mean waits that chance makes at it, for equal and for exponential times."""
        rate, capacity = max(given["rush_arrivals"], given["later_arrivals"]), given["governed_capacity"]
        if rate >= capacity:
            return rate, None
        return rate, [wait(rate, time_for_each(capacity)) for wait in (mean_wait_constant, mean_wait_exponential)]

    def _by_chance(self, given, found):
        if found.clears_at is not None:
            return "not reckoned: a line stands"
        _, waits = self._chance(given)
        return "grows as long as this lasts" if waits is None else " to ".join(show(wait) for wait in waits)

    def note(self):
        """Say how the line grows or, where there is none, what chance makes; and what is assumed."""
        capacity = self.given["governed_capacity"]
        assumed = (
            f"Assumed: people come evenly and get on in order, nobody gives up, the lift carries {show(capacity)} "
            "(governed) without a stop, and after this hour nobody comes."
        )
        if self.results["longest line"].magnitude:
            return f"{self._growth(capacity)} {assumed}"
        rate, waits = self._chance(self.given)
        if waits is None:
            said = (
                "As many come as are carried: the line is zero in this picture. But people come by chance, and at this "
                "rate chance makes a line that grows as long as the rate lasts."
            )
        else:
            equal, exponential = (show(wait) for wait in waits)
            said = (
                "Fewer come than are carried: the line is zero in this picture. But chance still makes people wait: "
                f"at {show(rate)}, held for long, {equal} on average where all loading times are equal, "
                f"{exponential} where they differ as much as exponential ones (both assumed)."
            )
        return f"{said} {assumed}"

    def _growth(self, capacity):
        """Return how the line grows and shrinks, in words."""
        said = []
        for when, name in (("In the rush", "rush_arrivals"), ("After it", "later_arrivals")):
            growth = line_growth.plain(
                arrival_rate=self.given[name].m_as("pph"), hourly_capacity=capacity.m_as("pph")
            )  # nobody may come later: the checked formula refuses zero
            does = "the line grows by" if growth > 0 else "a line shrinks by"
            said.append(f"{when} {does} {show(Q(abs(growth), 'pph'))}." if growth else f"{when} a line stays as it is.")
        return " ".join(said)

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="time since the lift opened (min)", y_label="persons so far",
            x_range=(0, self.hour.m_as("minute")), y_range=(0, self.most),
        )  # fmt: skip

    def _move(self):
        end, time = self.hour.m_as("minute"), self.given["time_looked_at"].m_as("minute")
        rush = self.given["rush_length"].m_as("minute")
        found = self._line(self.given)
        corners, line = found.times.m_as("minute"), found.line.m_as("person")
        times = np.unique([*corners[corners <= end], end, time])
        rates = [self.given[name].m_as("person/minute") for name in ("rush_arrivals", "later_arrivals")]
        arrivals = rates[0] * np.minimum(times, rush) + rates[1] * np.maximum(times - rush, 0)
        departures = arrivals - np.interp(times, corners, line)
        looked, wait = np.searchsorted(times, time), self.results["wait of who joins then"]
        waiting = self.results["in line at the time looked at"]
        if waiting.magnitude:
            title = f"At {time:g} min {show(waiting)} in line: who joins then waits {show(wait)}"
        else:
            title = f"At {time:g} min nobody is in line" + ("" if found.clears_at is not None else ", but for chance")
        self.picture.chart.move(
            title=title, times=times, arrivals=arrivals, departures=departures, time=time,
            came=arrivals[looked], got_on=arrivals[looked] - waiting.magnitude, wait=wait.m_as("minute"),
            line_text=f"upright gap, the line: {show(waiting)}", wait_text=f"level gap, the wait: {show(wait)}",
        )  # fmt: skip


class LapsPanel(Panel):
    """Persons an hour that a crowd of each size makes of one lift, and where the time of a lap goes."""

    title = "Laps of a crowd on one lift"
    control_names = ("crowd", "governed_capacity", "ride_time", "descent_time", "rest_time")
    first_row, note_lines, leaves_trace, guess_on = 3, 3, True, ("up", "pph")
    largest, most = 200, 2600  # persons, and persons an hour, on the chart

    def make_picture(self):
        return ChartPicture(CurveChart(), LapsPanel._prepare, LapsPanel._move)

    @staticmethod
    def _whole(given):
        """Return the crowd as whole persons: a box takes parts of one too."""
        return Q(max(1, round(given["crowd"].m_as("person"))), "person")

    @staticmethod
    def _away(given):
        """Return the time of a lap away from the line and the loading point."""
        return given["ride_time"] + given["descent_time"] + given["rest_time"]

    @staticmethod
    def _crowds(most, given):
        """Return what each size of a crowd makes, up to the most."""
        return closed_crowd(
            most,
            loading_time=time_for_each(given["governed_capacity"]),
            ride_and_descent=LapsPanel._away(given),
        )

    def compute(self, given):
        loading = time_for_each(given["governed_capacity"])
        found = self._crowds(self._whole(given), given)
        wait = found.wait[-1, 0]
        return {
            "people an hour": found.riders_an_hour[-1, 0],
            "laps of each person": found.laps_an_hour[-1],
            "in line, on average": found.line[-1, 0],
            "a lap: in line": wait,
            "loading": loading,
            "ride": given["ride_time"],
            "descent": given["descent_time"],
            "rest": given["rest_time"],
            "one lap in all": wait + loading + self._away(given),
        }

    def note(self):
        """Say from which crowd on a line stands, and what is assumed."""
        capacity = self.given["governed_capacity"]
        without_line = self.results["one lap in all"] - self.results["a lap: in line"]
        whole = self._whole(self.given)
        parts = "" if whole == self.given["crowd"] else f"Reckoned with {show(whole)}. "
        evenly = persons_from_flow(capacity, without_line).m_as("person")
        alone = show(Q(float(math.ceil(round(evenly, 6))), "person"))
        return (
            f"{parts}If everybody came evenly, a line would stand from {alone} on. Assumed: {show(capacity)}, "
            "governed, no stop; riders get on one by one, lap after lap; loading times differ as much as exponential "
            "ones. Evener starts carry a little more. The bounds hold whatever the times are."
        )

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="crowd (persons); solid: reckoned, dashed: at most, dotted: at least",
            y_label="persons an hour (pph)",
            x_range=(0, self.largest),
            y_range=(0, self.most),
            curves=[
                Curve("capacity"),
                Curve("capacity", "--", bold=False),
                Curve("capacity", ":", bold=False),
            ],
        )

    def _move(self):
        times = {"ride_and_descent": self._away(self.given), "loading_time": self.results["loading"]}
        found, whole = self._crowds(Q(self.largest, "person"), self.given), self._whole(self.given)
        sizes = found.crowd
        bounds = [bound(sizes, **times).m_as("pph") for bound in (crowd_capacity_at_most, crowd_capacity_at_least)]
        exact, crowd = found.riders_an_hour[:, 0].m_as("pph"), whole.m_as("person")
        along, laps = sizes.m_as("person"), self.results["laps of each person"].m_as("1/hour")
        self.picture.chart.move(
            title=f"{show(whole)}: {laps:.1f} laps an hour each, {show(self.result)}",
            lines=[(along, curve, "") for curve in (exact, *bounds)],
            dot=(crowd, self.result.m_as("pph")),
            dot_text="",  # the title says it: beside a steep curve there is no room
        )
