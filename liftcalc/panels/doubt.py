"""The panels of 06: the spread of people an hour, the share of each reading, and methods that agree or do not."""

import functools

from liftcalc.figures.bars import BarChart
from liftcalc.figures.spread import SpreadChart
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.lifts.demo_hill import demo_line, demo_sheet
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.several_methods import MethodsPanel
from liftcalc.uncertainty import (
    by_first_order,
    by_sampling,
    estimate_from_half_width,
    estimate_from_resolution,
    estimate_from_statement,
    expand,
    reading_to_take_again,
    show_with_doubt,
    uncertainty_budget,
)
from liftcalc.uncertainty.writing import show_doubt
from liftcalc.units import Q
from liftcalc.vocabulary import words_of

DRAWS, SEED = 20_000, 2026


def _estimate(name, doubt):
    """Return one reading of the demo tow with a plus-minus in percent of it."""
    line, _ = demo_line("Penny Rope")
    measured = getattr(line, name)
    return estimate_from_half_width(measured, measured * doubt.m_as(""), "plus-minus")


def _readings(given):
    return {
        "line_speed": _estimate("line_speed", given["speed_doubt"]),
        "spacing": _estimate("spacing", given["spacing_doubt"]),
    }


@functools.lru_cache(maxsize=64)
def _sampled(speed_doubt, spacing_doubt):
    """Return the draws for two doubts in percent; kept, since panels come back to the same settings."""
    given = {"speed_doubt": Q(speed_doubt, "percent"), "spacing_doubt": Q(spacing_doubt, "percent")}
    return by_sampling(hourly_capacity, _readings(given), seed=SEED, draws=DRAWS)


class SpreadPanel(Panel):
    """The spread of people an hour: by first order, and by drawing the readings many times."""

    title = "What the doubts of the readings make of people an hour"
    control_names = ("speed_doubt", "spacing_doubt")

    def make_picture(self):
        return ChartPicture(SpreadChart(), SpreadPanel._prepare, SpreadPanel._move)

    def compute(self, given):
        self.first = by_first_order(hourly_capacity, _readings(given))
        self.expanded = expand(self.first)
        self.sampled = _sampled(given["speed_doubt"].m_as("percent"), given["spacing_doubt"].m_as("percent"))
        return {
            "people an hour, first order": f"{self.expanded.short} (ideal)",
            "95 of 100 draws lie from": self.sampled.write("interval"),
            "mean of the draws": self.sampled.write("mean"),
            "standard uncertainty": show_doubt(self.first.standard_uncertainty),
        }

    def note(self):
        """Say what the plus-minus means."""
        return (
            f"The plus-minus holds at a level of confidence of 95 %. Line speed 3.4 m/s, spacing 6.8 m; "
            f"{DRAWS:,} draws, seed {SEED}."
        )

    def _prepare(self):
        self.picture.chart.prepare(x_label="people an hour (pph)", x_range=(600, 3600), quantity="capacity")

    def _move(self):
        low, high = self.sampled.interval.m_as("pph")
        self.picture.chart.move(
            title=f"People an hour: {self.expanded.short}",
            draws=self.sampled.samples.m_as("pph"),
            interval=(low, high),
            interval_text=f"95 of 100 draws: {self.sampled.write('interval')}",
            middle=self.first.value.m_as("pph"),
            deviation=self.first.standard_uncertainty.m_as("pph"),
            bell_text="first order",
        )


class BudgetPanel(Panel):
    """Which reading makes how much of the doubt, and which one to take again."""

    title = "Which reading to take again"
    control_names = ("speed_doubt", "spacing_doubt", "length_doubt")
    names = ("line speed", "spacing", "ridden length")

    def make_picture(self):
        return ChartPicture(BarChart(height=2.4, left=0.18), BudgetPanel._prepare, BudgetPanel._move)

    def compute(self, given):
        self.budget = uncertainty_budget(
            hourly_capacity, _readings(given), also={"ridden_length": _estimate("ridden_length", given["length_doubt"])}
        )
        results = {"people an hour": f"{self.budget.result.short} (ideal)"}
        for row in self.budget.rows:
            better = show_with_doubt(self.budget.result.value, row.if_measured_better)
            results[f"{words_of(row.name)} twice as good"] = better
        return results

    def note(self):
        """Name the reading to take again."""
        return reading_to_take_again(self.budget).sentence

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="share of the variance (%)",
            x_range=(0, 100),
            names=list(self.names),
            quantities=["line speed", "spacing", "length"],
        )

    def _move(self):
        shares = [100 * row.share for row in self.budget.rows]
        most = max(self.budget.rows, key=lambda row: row.share)
        self.picture.chart.move(
            title=f"Most of the doubt comes from the {words_of(most.name)}",
            lengths=[[share] for share in shares],
            texts=[f"{share:.0f} %" if share else "nil" for share in shares],
        )


class AgreementPanel(MethodsPanel):
    """Three methods for one line speed: do they agree, and what do they say together."""

    title = "Three methods, one line speed"
    control_names = ("display_speed", "display_step", "track_speed")
    names = ("mark on the rope", "display of a phone", "steady part of a track", "together")
    quantity = axis_label = "line speed"
    axis_ends = Q([2.2, 4.8], "m/s")

    def compute(self, given):
        mark, phone, track = self.names[:3]
        on_the_mark = demo_sheet().of("line speed")[0]
        self.compare(
            [
                estimate_from_half_width(on_the_mark.value, on_the_mark.plus_minus, mark),
                estimate_from_resolution(given["display_speed"], given["display_step"], phone),
                estimate_from_statement(given["track_speed"], Q(0.06, "m/s"), track),
            ]
        )
        return {
            "line speed, all three": self.expanded(self.combined.estimate).short,
            "do they agree": self.verdict,
            "Birge ratio": f"{self.combined.birge_ratio:.1f}",
            "weight of the display": f"{100 * self.combined.weights[phone]:.0f} %",
        }
