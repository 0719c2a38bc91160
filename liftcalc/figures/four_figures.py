"""Ideal, governed, simulated and counted as four bars on one axis, each with how far it reaches up and down."""

from liftcalc.figures import style
from liftcalc.figures.bars import BarChart


class FiguresChart(BarChart):
    """One bar a figure, with a line for its spread or its doubt.

    Parameters
    ----------
    bars : int
        How many bars it has room for.
    """

    def __init__(self, bars):
        super().__init__(height=1.05 + 0.36 * bars, left=0.13)

    def prepare(self, *, x_label, x_range, names):
        """Draw the still part; parameters as for ``BarChart``."""
        ax = super().prepare(x_label=x_label, x_range=x_range, names=names, quantities=["capacity"] * len(names))
        self.reaches = [
            self.moving(ax.plot([], [], "-", color=style.INK, linewidth=style.LINE_WIDTH)[0]) for _ in names
        ]
        return ax

    def move(self, *, title, lengths, texts, reaches):
        """Give the bars their lengths.

        Parameters
        ----------
        title, lengths, texts
            As for ``BarChart``, one part a bar.
        reaches : list of (tuple of float)
            Both ends of the line on each bar; empty for none.
        """
        super().move(title=title, lengths=[[length] for length in lengths], texts=texts)
        for place, (line, ends, number) in enumerate(zip(self.reaches, reaches, self.numbers, strict=True)):
            line.set_data(ends, [place] * len(ends))
            if ends:
                number.set_x(max(ends) + 0.012 * self.ax.get_xlim()[1])
