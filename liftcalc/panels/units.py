"""The panels of 01: one speed in all units, one power in all units, and what rounding early costs."""

import numpy as np

from liftcalc.figures.curves import Curve, CurveChart
from liftcalc.figures.rulers import RulerChart
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.spacing import headway
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.controls import InUnit
from liftcalc.quantity_text import show, unit_word
from liftcalc.units import Q

NUMBER_WORDS = {3: "three", 5: "five"}


class RulerPanel(Panel):
    """One value on several rulers; a subclass names the control, the units and the longest value."""

    quantity = ""
    longest = None
    rulers = ()  # (unit, step between marks)

    def make_picture(self):
        return ChartPicture(RulerChart(), RulerPanel._prepare, RulerPanel._move)

    def compute(self, given):
        (value,) = given.values()
        return {f"in {unit_word(unit)}": InUnit(value, unit) for unit, _ in self.rulers}

    @property
    def result(self):
        """The value itself."""
        return next(iter(self.given.values()))

    def _prepare(self):
        rulers = [(unit_word(unit), self.longest.m_as(unit), step) for unit, step in self.rulers]
        self.picture.chart.prepare(rulers=rulers, quantity=self.quantity, longest=self.longest.m_as(self.rulers[0][0]))

    def _move(self):
        texts = [str(result) for result in self.results.values()]
        self.picture.chart.move(
            title=f"One {self.quantity}, {NUMBER_WORDS[len(texts)]} numbers",
            value=self.result.m_as(self.rulers[0][0]),
            texts=texts,
        )


class SpeedRulerPanel(RulerPanel):
    """One line speed in five units at once."""

    title = "One speed in all units"
    control_names = ("line_speed",)
    quantity = "line speed"
    longest = Q(6.2, "m/s")
    rulers = (("m/s", 1), ("km/hour", 5), ("mph", 2), ("ft/s", 5), ("ft/minute", 200))


class PowerRulerPanel(RulerPanel):
    """One power in three units at once."""

    title = "One power in all units"
    control_names = ("motor_power",)
    quantity = "power"
    longest = Q(62, "kW")
    rulers = (("kW", 10), ("hp", 10), ("metric_horsepower", 10))


class RoundingPanel(Panel):
    """What it costs to round riders a second before multiplying by 3,600."""

    title = "Rounded early, or at the end"
    control_names = ("line_speed", "spacing", "digits_kept")

    def make_picture(self):
        return ChartPicture(CurveChart(), RoundingPanel._prepare, RoundingPanel._move)

    @staticmethod
    def rounded_early(capacity, digits):
        """Return the hourly figure when riders a second are first rounded to so many digits."""
        return Q(np.round(capacity.m_as("person/s"), int(digits.m_as(""))), "person/s").to("pph")

    def compute(self, given):
        capacity = hourly_capacity(given["line_speed"], given["spacing"])
        early = self.rounded_early(capacity, given["digits_kept"])
        return {
            "rounded at the end": intended_capacity(capacity, headway(given["line_speed"], given["spacing"])),
            "riders a second, unrounded": f"{capacity.m_as('person/s'):.4f} riders/s",
            "rounded early": show(early),
            "the error": f"{100 * (early / capacity).m_as('') - 100:+.1f} %",
        }

    def _prepare(self):
        low, high = self.range_of("line_speed")
        self.picture.chart.prepare(
            x_label=f"line speed ({self.word('line_speed')})",
            y_label="people an hour (pph)",
            x_range=(0, self.number(high)),
            y_range=(0, 4000),
            curves=[Curve("capacity", label_below=True), Curve("length", "--", bold=False)],
        )

    def _move(self):
        low, high = self.range_of("line_speed")
        speeds = Q(np.linspace(low.m_as("m/s"), high.m_as("m/s"), 300), "m/s")
        exact = hourly_capacity(speeds, self.given["spacing"])
        early = self.rounded_early(exact, self.given["digits_kept"])
        x = self.number(speeds)
        capacity = self.result.value.m_as("pph")
        self.picture.chart.move(
            title=f"Rounding early: {self.results['the error']} at this setting",
            lines=[
                (x[[0, -1]], exact.m_as("pph")[[0, -1]], "rounded at the end"),
                (x, early.m_as("pph"), "rounded early"),
            ],
            dot=(self.number(self.given["line_speed"]), capacity),
            dot_text=show(self.result.value),
        )
