"""Two curves that count persons, those who came and those who got on, with the two gaps between them at one time."""

import numpy as np

from liftcalc.figures import style
from liftcalc.figures.curves import Curve, CurveChart


class GapChart(CurveChart):
    """Persons who came and who got on: the upright gap is the line, the level gap is the wait."""

    came, got_on = "came", "got on"

    def prepare(self, *, x_label, y_label, x_range, y_range):
        """Draw the still part.

        Parameters
        ----------
        x_label, y_label : str
            Quantity and unit of each axis.
        x_range, y_range : tuple of float
            Ends of each axis; the upper left of the axes must stay free for the words of the gaps.
        """
        curves = [Curve("persons", label_within=0.9), Curve("persons", "--", bold=False, label_below=True)]
        ax = super().prepare(x_label=x_label, y_label=y_label, x_range=x_range, y_range=y_range, curves=curves)
        self.dot.set_visible(False)  # it would cover a short gap
        self.gaps, self.gap_texts = [], []
        for place, quantity in enumerate(("persons", "time")):
            colour = style.COLOURS[quantity]
            (gap,) = ax.plot([], [], color=colour, linewidth=2 * style.LINE_WIDTH, solid_capstyle="butt")
            text = ax.text(
                x_range[0] + 0.02 * (x_range[1] - x_range[0]),
                y_range[0] + (0.98 - 0.09 * place) * (y_range[1] - y_range[0]),
                "", color=colour, fontsize=style.TEXT_SIZE, fontweight="bold", va="top",
                bbox={"facecolor": style.PAPER, "edgecolor": "none", "pad": 1, "alpha": 0.9},
            )  # fmt: skip
            self.gaps.append(self.moving(gap))
            self.gap_texts.append(self.moving(text))
        return ax

    def move(self, *, title, times, arrivals, departures, time, came, got_on, wait, line_text, wait_text):
        """Put curves and gaps where the computed values say.

        Parameters
        ----------
        title : str
            The one message.
        times, arrivals, departures : array of float
            Corners of both curves: persons who had come, and who had got on.
        time, came, got_on, wait : float
            The time looked at, both curves there, and how long the last of those who came will wait.
        line_text, wait_text : str
            The two gaps in words.
        """
        apart = np.any(np.asarray(arrivals) > departures)
        low = np.max(departures) < self.ax.get_ylim()[1] * 0.12  # no room for words below it
        names = [self.came, self.got_on] if apart else [f"{self.came} and {self.got_on}", ""]
        if apart and low:
            names = [f"{self.came}; dashed: {self.got_on}", ""]
        lines = [(times, curve, name) for curve, name in zip((arrivals, departures), names, strict=True)]
        super().move(title=title, lines=lines, dot=(time, came), dot_text="")
        self.guide.set_data([time, time], [self.ax.get_ylim()[0], came])
        waits = came > got_on
        self.gaps[0].set_data(*(([time, time], [got_on, came]) if waits else ([], [])))
        self.gaps[1].set_data(*(([time, time + wait], [came, came]) if waits else ([], [])))
        for text, words in zip(self.gap_texts, (line_text, wait_text), strict=True):
            text.set_text(words)
