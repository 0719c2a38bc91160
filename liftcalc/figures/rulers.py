"""One value on several rulers at once: the same length of bar, a different number on each."""

import numpy as np

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


class RulerChart(Chart):
    """Rulers one below the other, each in its own unit, and one line through all of them."""

    margins = {"left": 0.02, "right": 0.985, "bottom": 0.03, "top": 0.86}

    def prepare(self, *, rulers, quantity, longest):
        """Draw the rulers.

        Parameters
        ----------
        rulers : list of (str, float, float)
            Unit word, how many of it the longest value is, and the step between its marks.
        quantity : str
            Quantity whose colour the line takes.
        longest : float
            Value at the right end of every ruler, in the unit of ``move``.
        """
        ax = self.start()
        ax.set_axis_off()
        ax.set_xlim(-0.13, 1.03)
        ax.set_ylim(len(rulers) - 0.35, -0.55)
        self.longest, self.numbers = longest, []
        for place, (word, most, step) in enumerate(rulers):
            ax.plot([0, 1], [place, place], color=style.QUIET_INK, linewidth=1.2)
            for mark in np.arange(0, most + step / 2, step):
                at = mark / most
                if at <= 1.0001:
                    ax.plot([at, at], [place, place + 0.13], color=style.QUIET_INK, linewidth=1.2)
                    ax.text(at, place + 0.17, f"{mark:g}", ha="center", va="top", fontsize=9, color=style.QUIET_INK)
            ax.text(-0.015, place, word, ha="right", va="center", fontsize=style.TEXT_SIZE, color=style.INK)
        colour = style.COLOURS[quantity]
        (self.line,) = ax.plot([], [], color=colour, linewidth=style.LINE_WIDTH)
        self.moving(self.line)
        for place in range(len(rulers)):
            number = ax.text(
                0,
                place - 0.06,
                "",
                ha="left",
                va="bottom",
                fontsize=style.TEXT_SIZE + 1,
                fontweight="bold",
                color=colour,
            )
            self.numbers.append(self.moving(number))
        self.height_of_line = (-0.45, len(rulers) - 0.85)
        return ax

    def move(self, *, title, value, texts):
        """Move the line to a value, and write the number of each ruler beside it."""
        self.title.set_text(title)
        at = value / self.longest
        self.line.set_data([at, at], self.height_of_line)
        late = at > 0.7
        for number, text in zip(self.numbers, texts, strict=True):
            number.set_text(text)
            number.set_ha("right" if late else "left")
            number.set_x(at - 0.012 if late else at + 0.012)
