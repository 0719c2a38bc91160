"""What panels that compare several methods for one value have in common: one row a method, and all of them together."""

from liftcalc.figures.spread import MethodsChart
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.controls import display_unit
from liftcalc.quantity_text import unit_word
from liftcalc.uncertainty import combine, expand


class MethodsPanel(Panel):
    """Several methods for one value.

    A subclass names its rows, the last one for the combined value; gives ``quantity`` (whose colour the rows take),
    ``axis_label`` and ``axis_ends``; and calls ``compare`` with its estimates when it computes.
    """

    names = ()
    quantity = axis_label = ""
    axis_ends = None

    def make_picture(self):
        return ChartPicture(MethodsChart(), MethodsPanel._prepare, MethodsPanel._move)

    def compare(self, methods):
        """Combine the estimates, and keep both for words and picture."""
        self.methods, self.combined = methods, combine(methods)

    @property
    def verdict(self):
        """Whether the methods agree, as a word."""
        return "yes" if self.combined.agrees else "no"

    def note(self):
        """Say in words what the comparison says."""
        return self.combined.sentence

    def expanded(self, estimate):
        """Return an estimate with its plus-minus in the units of the notebook."""
        return expand(estimate.to(self._unit()))

    def _unit(self):
        return display_unit(self.axis_ends, self.state.system)

    def _prepare(self):
        low, high = self.number(self.axis_ends)
        self.picture.chart.prepare(
            x_label=f"{self.axis_label} ({unit_word(self._unit())})",
            x_range=(low, high),
            names=list(self.names),
            quantity=self.quantity,
        )

    def _move(self):
        unit = self._unit()
        rows = [self.expanded(estimate) for estimate in [*self.methods, self.combined.estimate]]
        self.picture.chart.move(
            title=f"The three {'agree' if self.combined.agrees else 'disagree'}: {rows[-1].short}",
            values=[row.value.m_as(unit) for row in rows],
            widths=[row.expanded.m_as(unit) for row in rows],
            texts=[row.short for row in rows],
        )
