"""Charts of cost: a ride over the rides of a season with its break-even, and what each value does to it by itself."""

import numpy as np
from matplotlib.ticker import FuncFormatter, MaxNLocator

from liftcalc.figures import style
from liftcalc.figures.chart import Chart
from liftcalc.figures.curves import Curve, CurveChart


def _money(value, _position=None):
    return f"{value:,g}"


class CostChart(CurveChart):
    """Two falling curves and a level line, with their names at the right end, and an upright where they meet."""

    height = 2.9
    margins = {"left": 0.09, "right": 0.765, "bottom": 0.185, "top": 0.855}
    looks = (Curve("money"), Curve("money", "-.", bold=False), Curve("money", "--", bold=False))

    def prepare(self, *, x_label, y_label, x_range, y_range):
        """Draw the still part: axes, labels, and artists that wait for their values."""
        ax = super().prepare(x_label=x_label, y_label=y_label, x_range=x_range, y_range=y_range, curves=self.looks)
        ax.xaxis.set_major_locator(MaxNLocator(6))
        ax.xaxis.set_major_formatter(FuncFormatter(style.thousands))
        ax.yaxis.set_major_formatter(FuncFormatter(_money))
        look = {"fontsize": style.TEXT_SIZE - 1, "color": style.COLOURS["money"]}
        self.names = [self.moving(ax.text(0, 0, "", va="center", **look)) for _ in self.looks]
        self.even = self.moving(ax.axvline(0, color=style.COLOURS["persons"], linewidth=2, linestyle=":"))
        self.even_words = self.moving(
            ax.text(0, 0, "", va="top", **look | {"color": style.COLOURS["persons"], "fontweight": "bold"})
        )
        return ax

    def move(self, *, title, lines, dot, dot_text, even):
        """Put curves, level line, dot and break-even where the computed values say.

        Parameters
        ----------
        title : str
            The one message.
        lines : list of (x, y, label)
            Points and name of the curve that is dotted, the other one and the level line.
        dot : tuple of float
            Where the sliders stand.
        dot_text : str
            Label of the dot.
        even : float or None
            Where the first curve meets the level line; None where it does not.
        """
        super().move(title=title, lines=[(x, y, "") for x, y, _ in lines], dot=dot, dot_text=dot_text, rising=False)
        self._name(lines)
        self._raise_dot_label(lines, dot)
        (left, right), (_, top) = self.ax.get_xlim(), self.ax.get_ylim()
        shown = even is not None and left <= even <= right
        self.even.set_visible(shown)
        # above the level line, right of where the two meet, the chart is free
        self.even_words.set_text("break-even" if shown and lines[2][1][0] < 0.86 * top else "")
        if shown:
            self.even.set_xdata([even, even])
            self.even_words.set_position((even + 0.012 * (right - left), 0.99 * top))

    def _name(self, lines):
        """Put the names beside the right end, each at the height of its curve, and none on another."""
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        gap = 0.09 * (top - bottom)
        order = sorted(range(len(lines)), key=lambda place: (lines[place][1][-1], -place))
        height = bottom - 0.5 * gap
        wanted = [min(max(lines[place][1][-1], height + gap * (1 + step)), top) for step, place in enumerate(order)]
        for step in range(1, len(wanted)):
            wanted[step] = max(wanted[step], wanted[step - 1] + gap)
        if wanted[-1] > top:
            wanted = [min(each, top - gap * (len(wanted) - 1 - step)) for step, each in enumerate(wanted)]
        for place, each in zip(order, wanted, strict=True):
            _, y, text = lines[place]
            self.names[place].set_text(text + (" (above)" if y[-1] > top else ""))
            self.names[place].set_position((right + 0.015 * (right - left), each))

    def _raise_dot_label(self, lines, dot):
        """Lift the label of the dot over curve and level line; at the top, put it beside the curve."""
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        if dot[1] > bottom + 0.85 * (top - bottom):
            x, y, _ = lines[0]
            beside = np.interp(-0.8 * top, -np.asarray(y), x) + 0.017 * (right - left)
            self.dot_label.set_ha("left")
            self.dot_label.set_position((min(beside, left + 0.5 * (right - left)), self.dot_label.get_position()[1]))
            return
        x, y = self.dot_label.get_position()
        tall, wide = 0.14 * (top - bottom), 0.021 * len(self.dot_label.get_text()) * (right - left)
        if self.dot_label.get_ha() == "right":
            begins = max(x - wide, lines[0][0][0])
            y = max(y, float(np.interp(begins, *lines[0][:2])) + 0.03 * (top - bottom))
        level = lines[2][1][0]
        if y - 0.03 * (top - bottom) < level < y + tall:
            y = level + 0.03 * (top - bottom)
        self.dot_label.set_position((x, min(y, top - 1.5 * tall)))


class SwingChart(Chart):
    """One row a value: how far the result goes when this value alone is moved down and up."""

    per_row = 0.37  # inches

    def __init__(self, rows):
        self.rows, self.height = rows, 0.98 + self.per_row * rows
        self.margins = {"left": 0.375, "right": 0.97, "bottom": 0.56 / self.height, "top": 1 - 0.42 / self.height}
        super().__init__()

    def prepare(self, *, x_label, x_range, quantity):
        """Draw the still part.

        Parameters
        ----------
        x_label : str
            Quantity and unit.
        x_range : tuple of float
            Ends of the axis.
        quantity : str
            Quantity whose colour the bars take.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label="")
        ax.set_xlim(*x_range)
        ax.set_ylim(self.rows - 0.45, -0.55)
        ax.set_yticks([])
        ax.xaxis.set_major_locator(MaxNLocator(6))
        ax.xaxis.set_major_formatter(FuncFormatter(_money))
        colour, aside = style.COLOURS[quantity], 0.012 * (x_range[1] - x_range[0])
        self.bars, self.ends, self.names, self.ranges = [], [], [], []
        for place in range(self.rows):
            pair = [ax.barh(place, 0, height=0.6, color=colour, alpha=alpha)[0] for alpha in (0.4, 1.0)]
            self.bars.append([self.moving(bar) for bar in pair])
            look = {"va": "center", "fontsize": style.TEXT_SIZE - 1.5}
            self.ends.append([self.moving(ax.text(0, place, "", color=colour, **look)) for _ in pair])
            at = {"x": x_range[0] - aside, "s": "", "ha": "right", "color": style.INK}
            self.names.append(self.moving(ax.text(y=place - 0.19, fontweight="bold", **at, **look)))
            self.ranges.append(self.moving(ax.text(y=place + 0.21, **at, **look | {"fontsize": style.TEXT_SIZE - 2})))
        self.middle = self.moving(ax.axvline(0, color=style.QUIET_INK, linewidth=1.6, linestyle="--"))
        return ax

    def move(self, *, title, middle, rows):
        """Give the bars their lengths.

        Parameters
        ----------
        title : str
            The one message.
        middle : float
            The result with nothing moved.
        rows : list of (name, range, (low, high), (low_text, high_text))
            Name and range of each value in words, the results at its low and its high end, and their labels.
        """
        self.title.set_text(title)
        self.middle.set_xdata([middle, middle])
        left, right = self.ax.get_xlim()
        aside = 0.012 * (right - left)
        for place, (name, between, ends, texts) in enumerate(rows):
            self.names[place].set_text(name)
            self.ranges[place].set_text(between)
            rises = ends[0] <= ends[1]
            for number, (bar, word, end, text) in enumerate(
                zip(self.bars[place], self.ends[place], ends, texts, strict=True)
            ):
                bar.set_x(min(middle, end))
                bar.set_width(abs(end - middle))
                before = (number == 0) == rises  # the smaller result stands on the left
                word.set_text(text)
                word.set_ha("right" if before else "left")
                word.set_x(end - aside if before else end + aside)
