"""A few figures as bars on one axis, such as ideal, governed, simulated and counted, each with how far it reaches."""

from liftcalc.figures import style
from liftcalc.figures.bars import BarChart


class FiguresChart(BarChart):
    """One bar a figure, with a line for its spread or its doubt.

    Parameters
    ----------
    bars : int
        How many bars it has room for.
    quantity : str or list of str
        Quantity whose colour they take; or that of each.
    left : float
        Part of the width that is kept for their names.
    """

    def __init__(self, bars, quantity="capacity", left=0.13):
        self.quantity = quantity
        super().__init__(height=1.05 + 0.36 * bars, left=left)

    def prepare(self, *, x_label, x_range, names):
        """Draw the still part; parameters as for ``BarChart``."""
        quantities = [self.quantity] * len(names) if isinstance(self.quantity, str) else self.quantity
        ax = super().prepare(x_label=x_label, x_range=x_range, names=names, quantities=quantities)
        self.reaches = [
            self.moving(ax.plot([], [], "-", color=style.INK, linewidth=style.LINE_WIDTH)[0]) for _ in names
        ]
        return ax

    def move(self, *, title, lengths, texts, reaches=None):
        """Give the bars their lengths.

        Parameters
        ----------
        title, lengths, texts
            As for ``BarChart``, one part a bar.
        reaches : list of (tuple of float) or None
            Both ends of the line on each bar; empty, or None for all of them, for none.
        """
        super().move(title=title, lengths=[[length] for length in lengths], texts=texts)
        reaches = reaches or [()] * len(lengths)
        for place, (line, ends, number) in enumerate(zip(self.reaches, reaches, self.numbers, strict=True)):
            line.set_data(ends, [place] * len(ends))
            if ends:
                number.set_x(max(ends) + 0.012 * self.ax.get_xlim()[1])
