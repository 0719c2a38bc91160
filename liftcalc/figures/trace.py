"""The speed along a track against time, with the steady part marked and its speed drawn through it."""

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


class TraceChart(Chart):
    """One trace on fixed axes; a band that moves over it."""

    def prepare(self, *, x_label, y_label, x_range, y_range, times, speeds):
        """Draw the still part: axes and trace.

        Parameters
        ----------
        x_label, y_label : str
            Quantity and unit of each axis.
        x_range, y_range : tuple of float
            Ends of each axis.
        times, speeds : array of float
            The trace.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label=y_label)
        ax.set_xlim(*x_range)
        ax.set_ylim(*y_range)
        ax.plot(times, speeds, "-", color=style.QUIET_INK, linewidth=1.3)
        colour = style.COLOURS["line speed"]
        self.band = self.moving(ax.bar(0, 1, 1, align="edge", color=colour, alpha=0.18)[0])
        (self.level,) = ax.plot([], [], "-", color=colour, linewidth=style.LINE_WIDTH)
        self.moving(self.level)
        self.words = self.moving(
            ax.text(0, 0, "", color=colour, fontsize=style.TEXT_SIZE, fontweight="bold", ha="center", va="bottom")
        )
        return ax

    def move(self, *, title, start, end, level, text):
        """Put the band over the steady part.

        Parameters
        ----------
        title : str
            The one message.
        start, end : float
            Ends of the band.
        level : float or None
            Speed on the plan in the band; None where there is none.
        text : str
            Label of the band.
        """
        self.title.set_text(title)
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        self.band.set_bounds(min(start, end), bottom, abs(end - start), top - bottom)
        self.level.set_data(*(([start, end], [level, level]) if level is not None else ([], [])))
        margin = 0.16 * (right - left)
        self.words.set_position(
            (min(max((start + end) / 2, left + margin), right - margin), top - 0.1 * (top - bottom))
        )
        self.words.set_text(text)
