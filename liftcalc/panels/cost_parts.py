"""What a lift costs a season, part by part, as bars in which a guess is drawn."""

from html import escape

import ipywidgets as widgets

from liftcalc.figures.four_figures import FiguresChart
from liftcalc.lifts.cost_of_lift import yearly_cost
from liftcalc.panels.base import WIDTH, ChartPicture, WithStill
from liftcalc.quantity_text import show


class CostParts(WithStill):
    """The parts of a season's cost, the largest first.

    Parameters
    ----------
    sheet : CostSheet
        What is paid for the lift.
    """

    leaves_trace = False

    def __init__(self, sheet):
        self.name, self.cost = sheet.name, yearly_cost(sheet)
        parts = sorted(self.cost.parts.items(), key=lambda part: -part[1])
        self.parts = {name: value.m_as("dollar/season") for name, value in parts}
        self.picture = ChartPicture(FiguresChart(len(parts), "money", left=0.2), CostParts._prepare, CostParts._move)
        super().__init__([self.picture.widget], layout=widgets.Layout(width=WIDTH, max_width="100%"))
        self.picture.use_units(self)
        self.picture.move(self)

    def show_guess(self, guess):
        """Draw a guess into the picture: the name of a part."""
        place = list(self.parts).index(guess)
        self.picture.show_guess(self, 0.97 * self.picture.chart.ax.get_xlim()[1], place)

    def status(self):
        """Return the words above the picture: none."""
        return ""

    def _texts(self):
        total = self.cost.total.m_as("dollar/season")
        return [f"{part:,.0f} dollars, {part / total:.0%}" for part in self.parts.values()]

    def _prepare(self):
        most = max(self.parts.values())
        self.picture.chart.prepare(x_label="dollars a season", x_range=(0, 1.75 * most), names=list(self.parts))

    def _move(self):
        largest = next(iter(self.parts))
        self.picture.chart.move(
            title=f"{self.name}, {show(self.cost.total)}: the largest part is {largest}",
            lengths=list(self.parts.values()),
            texts=self._texts(),
        )

    def still(self):
        return f'<figure style="margin:0"><img alt="{escape(self.words())}" src="{self.picture.still()}"></figure>'

    def words(self):
        parts = "; ".join(f"{name} {text}" for name, text in zip(self.parts, self._texts(), strict=True))
        return f"What {self.name} costs a season: {show(self.cost.total)}. {parts}."
