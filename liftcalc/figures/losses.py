"""What is lost from governed to simulated, as a stair of bars; below it the day unrolls, minute by minute."""

import numpy as np

from liftcalc.figures import style
from liftcalc.figures.bars import BarChart

STEP, TOP, LABELS, TRACE = 0.205, 0.36, 0.44, 0.66  # inches: a bar, the title, ticks and label of an axis, the trace


class LossesChart(BarChart):
    """Bars of what is left, pale, and what a cause takes of it, dark; and a trace with gaps below them.

    Parameters
    ----------
    bars : int
        How many bars it has room for.
    """

    def __init__(self, bars):
        below = 2 * LABELS + TRACE
        super().__init__(height=TOP + STEP * bars + below, left=0.215)
        self.margins |= {"top": 1 - TOP / self.height, "bottom": below / self.height, "right": 0.98}

    def prepare(self, *, x_label, x_range, names, whole, trace_labels, trace_ranges):
        """Draw the still part.

        Parameters
        ----------
        x_label, x_range : str, tuple of float
            Quantity and unit of the bars, and ends of their axis.
        names : list of str
            Names of the bars, top down.
        whole : list of str
            Those of them that are an amount of their own, all dark.
        trace_labels, trace_ranges : tuple
            Label and ends of both axes of the trace, across first.
        """
        ax = super().prepare(
            x_label=x_label, x_range=x_range, names=names, quantities=["capacity"] * len(names), parts=2
        )
        for name, (left, taken) in zip(names, self.bars, strict=True):
            if name not in whole:
                left.set_alpha(0.25)
                taken.set_alpha(1.0)
        (self.doubt,) = ax.plot([], [], "-", color=style.INK, linewidth=2)
        self.moving(self.doubt, remembered=False)
        place = (self.margins["left"], LABELS / self.height, self.margins["right"] - self.margins["left"])
        below = style.dress(
            self.figure.add_axes((*place, TRACE / self.height)), x_label=trace_labels[0], y_label=trace_labels[1]
        )
        below.set_xlim(*trace_ranges[0])
        below.set_ylim(*trace_ranges[1])
        (self.trace,) = below.plot([], [], "-", color=style.COLOURS["persons"], linewidth=1.2)
        self.moving(self.trace, remembered=False)
        self.highest = trace_ranges[1][1]
        return ax

    def move(self, *, title, lengths, texts, doubt, times, persons):
        """Give bars and trace their values.

        Parameters
        ----------
        title, lengths, texts
            As for ``BarChart``.
        doubt : tuple of float
            Ends of the doubt of the last bar; empty for none.
        times, persons : array of float
            The trace; what is no number is a gap, and what is above the axis is drawn at its end.
        """
        super().move(title=title, lengths=lengths, texts=texts)
        self.doubt.set_data(doubt, [len(lengths) - 1] * len(doubt))
        self.trace.set_data(times, np.minimum(persons, self.highest))

    def svg(self, label):
        """Return what moves, as SVG; both axes have part of it, so nothing is cut at the edges of one."""
        return self._drawn(self.figure, label)
