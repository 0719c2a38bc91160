"""What a lift costs a season, part by part, as bars in which a guess is drawn."""

from liftcalc.figures.four_figures import FiguresChart
from liftcalc.lifts.cost_of_lift import yearly_cost
from liftcalc.panels.picture import Picture
from liftcalc.quantity_text import show


class CostParts(Picture):
    """The parts of a season's cost, the largest first.

    Parameters
    ----------
    sheet : CostSheet
        What is paid for the lift.
    """

    def __init__(self, sheet):
        self.name, self.cost = sheet.name, yearly_cost(sheet)
        parts = sorted(self.cost.parts.items(), key=lambda part: -part[1])
        self.parts = {name: value.m_as("dollar/season") for name, value in parts}
        super().__init__(FiguresChart(len(parts), "money", left=0.2))

    def show_guess(self, guess):
        """Draw a guess into the picture: the name of a part."""
        place = list(self.parts).index(guess)
        self.picture.show_guess(self, 0.97 * self.picture.chart.ax.get_xlim()[1], place)

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

    def words(self):
        parts = "; ".join(f"{name} {text}" for name, text in zip(self.parts, self._texts(), strict=True))
        return f"What {self.name} costs a season: {show(self.cost.total)}. {parts}."
