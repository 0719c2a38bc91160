"""Charts of doubt: the spread of a result over many draws, and the values of several methods with their plus-minus."""

import numpy as np
from matplotlib.ticker import FuncFormatter, MaxNLocator

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


class SpreadChart(Chart):
    """How often each result comes out of many draws, beside the bell curve of a first-order result."""

    bins = 60

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
        ax = style.dress(self.start(), x_label=x_label, y_label="how often (tallest = 1)")
        ax.set_xlim(*x_range)
        ax.set_ylim(0, 1.3)
        ax.set_yticks([0, 0.5, 1.0])
        ax.xaxis.set_major_formatter(FuncFormatter(style.thousands))
        self.edges = np.linspace(*x_range, self.bins + 1)
        colour = style.COLOURS[quantity]
        width = self.edges[1] - self.edges[0]
        self.bars = [
            self.moving(ax.bar(left, 0, width, align="edge", color=colour, alpha=0.45)[0]) for left in self.edges[:-1]
        ]
        (self.bell,) = ax.plot([], [], "--", color=style.INK, linewidth=style.LINE_WIDTH * 0.7)
        self.moving(self.bell)
        self.ends = [self.moving(ax.plot([], [], "-", color=colour, linewidth=2)[0]) for _ in range(2)]
        look = {"fontsize": style.TEXT_SIZE, "va": "bottom"}
        self.words = self.moving(ax.text(0, 1.13, "", color=colour, ha="center", fontweight="bold", **look))
        self.bell_words = self.moving(ax.text(0, 0.5, "", color=style.INK, ha="left", **look))
        return ax

    def move(self, *, title, draws, interval, interval_text, middle, deviation, bell_text):
        """Give the bars their heights.

        Parameters
        ----------
        title : str
            The one message.
        draws : array
            Results of all draws.
        interval : tuple of float
            Ends of the interval that holds most of them.
        interval_text : str
            Its label.
        middle, deviation : float
            The first-order result: value and standard uncertainty.
        bell_text : str
            Its label.
        """
        self.title.set_text(title)
        counts, _ = np.histogram(draws, self.edges)
        # the bell is as high as it would be if it held as many results as there are draws
        peak = len(draws) * (self.edges[1] - self.edges[0]) / (deviation * np.sqrt(2 * np.pi))
        tallest = max(counts.max(), peak)
        for bar, count in zip(self.bars, counts, strict=True):
            bar.set_height(count / tallest)
        x = np.linspace(*self.ax.get_xlim(), 240)
        self.bell.set_data(x, peak / tallest * np.exp(-0.5 * ((x - middle) / deviation) ** 2))
        left, right = self.ax.get_xlim()
        for line, end in zip(self.ends, interval, strict=True):
            line.set_data([end, end], [0, 1.1])
        centre = min(max(sum(interval) / 2, left + 0.22 * (right - left)), right - 0.22 * (right - left))
        self.words.set_text(interval_text)
        self.words.set_x(centre)
        beside = middle + 1.2 * deviation + 0.012 * (right - left)
        late = beside > left + 0.68 * (right - left)
        self.bell_words.set_ha("right" if late else "left")
        self.bell_words.set_x(middle - 1.2 * deviation - 0.012 * (right - left) if late else beside)
        self.bell_words.set_text(bell_text)


class MethodsChart(Chart):
    """One row a method: its value as a dot, its plus-minus as a bar; the combined value below them."""

    height = 2.9
    margins = {"left": 0.245, "right": 0.965, "bottom": 0.2, "top": 0.85}

    def prepare(self, *, x_label, x_range, names, quantity):
        """Draw the still part.

        Parameters
        ----------
        x_label : str
            Quantity and unit.
        x_range : tuple of float
            Ends of the axis.
        names : list of str
            Names of the rows, the combined value last.
        quantity : str
            Quantity whose colour the rows take.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label="")
        ax.set_xlim(*x_range)
        ax.set_ylim(len(names) - 0.4, -0.7)
        ax.set_yticks(range(len(names)), names, fontsize=style.TEXT_SIZE)
        ax.xaxis.set_major_locator(MaxNLocator(8))
        ax.yaxis.grid(False)
        colour = style.COLOURS[quantity]
        self.bars, self.dots, self.words = [], [], []
        for place in range(len(names)):
            last = place == len(names) - 1
            ink = style.INK if last else colour
            (bar,) = ax.plot([], [], "-", color=ink, linewidth=style.LINE_WIDTH * (1.6 if last else 1.0))
            (dot,) = ax.plot([], [], "o", color=ink, markersize=10 if last else 8, markeredgecolor=style.PAPER)
            words = ax.text(
                0, place - 0.2, "", color=ink, fontsize=style.TEXT_SIZE, ha="center", va="bottom",
                fontweight="bold" if last else "normal",
            )  # fmt: skip
            self.bars.append(self.moving(bar))
            self.dots.append(self.moving(dot))
            self.words.append(self.moving(words))
        return ax

    def move(self, *, title, values, widths, texts):
        """Put dots and bars where the methods say.

        Parameters
        ----------
        title : str
            The one message.
        values, widths : list of float
            Value and plus-minus of each row.
        texts : list of str
            The same as words.
        """
        self.title.set_text(title)
        left, right = self.ax.get_xlim()
        margin = 0.14 * (right - left)
        for place, (value, width, text) in enumerate(zip(values, widths, texts, strict=True)):
            self.bars[place].set_data([value - width, value + width], [place, place])
            self.dots[place].set_data([value], [place])
            self.words[place].set_text(text)
            self.words[place].set_x(min(max(value, left + margin), right - margin))
