"""The panels of 04: capacity by speed and spacing, by interval, by head count, and by counting at a post."""

import numpy as np

from liftcalc.figures.bars import BarChart
from liftcalc.figures.curves import Curve, CurveChart
from liftcalc.formulas.capacity import (
    hourly_capacity,
    hourly_capacity_from_head_count,
    hourly_capacity_from_interval,
    hourly_flow_from_count,
    vertical_transport,
)
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.spacing import headway, headway_from_interval
from liftcalc.levels import Capacity
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.quantity_text import show
from liftcalc.simulation.two_minute_count import count_simulated_riders
from liftcalc.units import Q


class CapacityPanel(Panel):
    """People an hour from line speed, spacing and persons per carrier; vertical transport from the rise."""

    title = "Hourly capacity from speed and spacing"
    control_names = ("line_speed", "spacing", "persons_per_carrier", "vertical_rise")

    def make_picture(self):
        return ChartPicture(CurveChart(), CapacityPanel._prepare, CapacityPanel._move)

    def compute(self, given):
        capacity = hourly_capacity(given["line_speed"], given["spacing"], given["persons_per_carrier"])
        between = headway(given["line_speed"], given["spacing"])
        return {
            "people an hour": intended_capacity(capacity, between, given["persons_per_carrier"]),
            "interval": between,
            "vertical transport": vertical_transport(capacity, given["vertical_rise"]),
        }

    def _prepare(self):
        _, high = self.range_of("line_speed")
        self.picture.chart.prepare(
            x_label=f"line speed ({self.word('line_speed')})",
            y_label="people an hour (pph)",
            x_range=(0, self.number(high)),
            y_range=(0, 4000),
            curves=[Curve("capacity"), Curve("spacing", "--", bold=False), Curve("spacing", ":", bold=False)],
        )

    def _move(self):
        low, high = self.range_of("line_speed")
        speeds = Q([low.m_as("m/s"), high.m_as("m/s")], "m/s")
        x, persons = self.number(speeds), self.given["persons_per_carrier"]
        lines = [
            (x, hourly_capacity(speeds, factor * self.given["spacing"], persons).m_as("pph"), label)
            for factor, label in ((1, ""), (2, "twice the spacing"), (0.5, "half the spacing"))
        ]
        self.picture.chart.move(
            title=f"{self.text(self.given['line_speed'])} over {self.text(self.given['spacing'])}: "
            f"{show(self.result.value)}",
            lines=lines,
            dot=(self.number(self.given["line_speed"]), self.result.value.m_as("pph")),
            dot_text=show(self.result.value),
        )


class IntervalPanel(Panel):
    """People an hour from the interval between carriers: no speed and no spacing in it."""

    title = "Hourly capacity from the interval"
    control_names = ("interval", "seats")

    def make_picture(self):
        return ChartPicture(CurveChart(), IntervalPanel._prepare, IntervalPanel._move)

    def compute(self, given):
        capacity = hourly_capacity_from_interval(given["interval"], given["seats"])
        return {
            "people an hour": intended_capacity(capacity, given["interval"], given["seats"], carriers=True),
            "mean headway from rider to rider": headway_from_interval(given["interval"], given["seats"]),
        }

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="interval (s)",
            y_label="people an hour (pph)",
            x_range=(0, 30),
            y_range=(0, 4000),
            curves=[Curve("capacity")],
        )

    def _move(self):
        intervals = Q(np.linspace(0.5, 30, 300), "s")
        persons = self.given["seats"]
        self.picture.chart.move(
            title=f"{show(persons)} every {show(self.given['interval'])}: {show(self.result.value)}",
            lines=[(intervals.m_as("s"), hourly_capacity_from_interval(intervals, persons).m_as("pph"), "")],
            dot=(self.given["interval"].m_as("s"), self.result.value.m_as("pph")),
            dot_text=show(self.result.value),
            rising=False,
        )


class RoutesPanel(Panel):
    """Two routes that share no reading: speed over spacing, and head count over ride time."""

    title = "Two routes to one answer"
    control_names = ("line_speed", "spacing", "riders_on_line", "ride_time")
    names = ("speed and spacing", "head count and stopwatch")

    def make_picture(self):
        return ChartPicture(BarChart(height=2.2, left=0.31), RoutesPanel._prepare, RoutesPanel._move)

    def compute(self, given):
        first = hourly_capacity(given["line_speed"], given["spacing"])
        second = hourly_capacity_from_head_count(given["riders_on_line"], given["ride_time"])
        return {
            self.names[0]: intended_capacity(first, headway(given["line_speed"], given["spacing"])),
            self.names[1]: Capacity(second, "counted"),
            "the second over the first": f"{100 * (second / first).m_as(''):.0f} %",
        }

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="people an hour (pph)",
            x_range=(0, 4000),
            names=list(self.names),
            quantities=["capacity", "persons"],
        )

    def _move(self):
        values = [self.results[name] for name in self.names]
        self.picture.chart.move(
            title=f"The count is {self.results['the second over the first']} of the ideal",
            lengths=[[value.value.m_as("pph")] for value in values],
            texts=[str(value) for value in values],
        )


class CountPanel(Panel):
    """The third route: riders on a rope, counted as they pass a post."""

    title = "Counting riders at a post"
    control_names = ("line_speed", "spacing", "counting_time")
    begin = 0.3  # spacings from the first rider up to the post when the count begins

    def make_picture(self):
        return ChartPicture(CurveChart(), CountPanel._prepare, CountPanel._move)

    @staticmethod
    def count(line_speed, spacing, counting_time):
        """Return riders counted when the first one stands a part of a spacing below the post as the count begins."""
        return count_simulated_riders(
            line_speed=line_speed,
            spacing=spacing,
            counting_time=counting_time,
            first_rider_away=CountPanel.begin * spacing,
        )

    def compute(self, given):
        counted, between = self.count(**given), headway(given["line_speed"], given["spacing"])
        return {
            "people an hour, from the count": Capacity(
                hourly_flow_from_count(counted, given["counting_time"]), "counted"
            ),
            "riders counted": counted,
            "from speed and spacing": intended_capacity(
                hourly_capacity(given["line_speed"], given["spacing"]), between
            ),
        }

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="counting time (s)",
            y_label="people an hour (pph)",
            x_range=(0, 180),
            y_range=(0, 4000),
            curves=[Curve("persons"), Curve("capacity", "--", bold=False, label_below=True)],
        )

    def _move(self):
        speed, spacing = self.given["line_speed"].m_as("m/s"), self.given["spacing"].m_as("m")
        times = np.arange(5.0, 181.0)
        counts = [
            count_simulated_riders.plain(
                line_speed=speed, spacing=spacing, counting_time=time, first_rider_away=self.begin * spacing
            )
            for time in times
        ]
        flows = hourly_flow_from_count.plain(np.array(counts), times)
        ideal = self.results["from speed and spacing"].value.m_as("pph")
        self.picture.chart.move(
            title=f"{show(self.results['riders counted'])} in {show(self.given['counting_time'])}: "
            f"{show(self.result.value)}",
            lines=[(times, flows, "from a count"), ([0, 180], [ideal, ideal], "from speed and spacing")],
            dot=(self.given["counting_time"].m_as("s"), self.result.value.m_as("pph")),
            dot_text=show(self.result.value),
            rising=False,
        )
