"""A count minute by minute: clean minutes dark, those that a stop has touched pale, and a gap where nobody counted."""

from matplotlib.ticker import FuncFormatter, MaxNLocator

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


def clock(minutes, _position=None):
    """Write minutes of the day as a time of the clock."""
    return f"{int(minutes // 60) % 24}:{int(minutes % 60):02d}"


class MinutesChart(Chart):
    """One bar a row of a count; the limit as a line across."""

    height = 2.7
    margins = {"left": 0.085, "right": 0.98, "bottom": 0.22, "top": 0.86}

    def prepare(self, *, title, x_label, y_label, rows, limit, limit_text):
        """Draw all of it: nothing here moves.

        Parameters
        ----------
        title, x_label, y_label : str
            The one message, and quantity and unit of each axis.
        rows : list of (float, float, float, bool, float)
            Begin and end [min of the day], persons a minute, whether it is clean, and how long the lift stood [s].
        limit : float
            Persons a minute that the limit allows on average.
        limit_text : str
            What stands at its line.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label=y_label)
        first, last = min(row[0] for row in rows), max(row[1] for row in rows)
        most = max(limit, *(row[2] for row in rows))
        ax.set_xlim(first - 0.01 * (last - first), last + 0.01 * (last - first))
        ax.set_ylim(0, 1.45 * most)
        ax.xaxis.grid(False)
        ax.xaxis.set_major_locator(MaxNLocator(8, steps=[1, 2, 5, 10], integer=True))
        ax.xaxis.set_major_formatter(FuncFormatter(clock))
        colour = style.COLOURS["persons"]
        for begin, end, persons, clean, stood in rows:
            width = 0.86 * (end - begin)
            ax.bar(begin, persons, width, align="edge", color=colour, alpha=1.0 if clean else 0.3)
            if stood:
                ax.plot([begin + width / 2], [0.05 * most], "s", color=style.INK, markersize=5)
        ax.axhline(limit, color=style.COLOURS["time"], linewidth=2, linestyle="--")
        ax.text(
            last, 1.43 * most, f"dashed: {limit_text}; pale: a stop touched it; square: it stood", ha="right",
            va="top", fontsize=style.TEXT_SIZE - 2, color=style.INK,
        )  # fmt: skip
        self.title.set_text(title)
        return ax
