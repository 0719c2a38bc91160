"""Charts of bars: lengths or amounts side by side, each with its number; and stays in one place over time."""

from matplotlib.ticker import FuncFormatter, MaxNLocator

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


class BarChart(Chart):
    """Horizontal bars on one fixed axis, each with its name and its number, over marks that move."""

    def __init__(self, height, left):
        self.height = height
        self.margins = {"left": left, "right": 0.965, "bottom": 0.56 / height, "top": 1 - 0.44 / height}
        super().__init__()

    def prepare(self, *, x_label, x_range, names, quantities, parts=1, marks=0, mark_quantity="spacing"):
        """Draw the still part.

        Parameters
        ----------
        x_label : str
            Quantity and unit of the axis.
        x_range : tuple of float
            Ends of the axis.
        names : list of str
            Names of the bars, top down.
        quantities : list of str
            Quantity whose colour each bar takes.
        parts : int
            Parts of which each bar is made; the second and later parts are drawn lighter.
        marks : int
            Number of upright marks that move.
        mark_quantity : str
            Quantity whose colour the marks take.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label="")
        ax.set_xlim(*x_range)
        ax.set_ylim(len(names) - 0.4, -0.6)
        ax.set_yticks(range(len(names)), names, fontsize=style.TEXT_SIZE)
        ax.yaxis.grid(False)
        ax.xaxis.set_major_locator(MaxNLocator(7, steps=[1, 2, 5, 10], integer=True))
        ax.xaxis.set_major_formatter(FuncFormatter(style.thousands))
        self.bars, self.numbers = [], []
        for place, quantity in enumerate(quantities):
            colour = style.COLOURS[quantity]
            patches = [
                ax.barh(place, 0, height=0.56, color=colour, alpha=1.0 if part == 0 else 0.35)[0]
                for part in range(parts)
            ]
            self.bars.append([self.moving(patch) for patch in patches])
        self.marks = [
            self.moving(ax.axvline(0, color=style.COLOURS[mark_quantity], linewidth=1.6, linestyle="--"))
            for _ in range(marks)
        ]
        for place, quantity in enumerate(quantities):
            number = ax.text(
                0,
                place,
                "",
                va="center",
                fontsize=style.TEXT_SIZE + 1,
                fontweight="bold",
                color=style.COLOURS[quantity],
                bbox={"facecolor": style.PAPER, "edgecolor": "none", "pad": 1.5, "alpha": 0.85},
            )
            self.numbers.append(self.moving(number))
        return ax

    def move(self, *, title, lengths, texts, marks=()):
        """Give the bars their lengths.

        Parameters
        ----------
        title : str
            The one message.
        lengths : list of (list of float)
            Lengths of the parts of each bar.
        texts : list of str
            Number of each bar, in words.
        marks : list of float
            Where the upright marks stand; those left over are hidden.
        """
        self.title.set_text(title)
        right = self.ax.get_xlim()[1]
        aside = 0.012 * right
        for patches, number, parts, text in zip(self.bars, self.numbers, lengths, texts, strict=True):
            begin = 0.0
            for patch, part in zip(patches, parts, strict=True):
                patch.set_x(begin)
                patch.set_width(part)
                begin += part
            late = begin > 0.72 * right
            number.set_text(text + (" (off the chart)" if begin > right else ""))
            number.set_ha("right" if late else "left")
            number.set_x(min(begin, right) - aside if late else begin + aside)
        for place, mark in enumerate(self.marks):
            shown = place < len(marks) and marks[place] <= right
            mark.set_visible(shown)
            if shown:
                mark.set_xdata([marks[place], marks[place]])


class StayChart(Chart):
    """Who is in a place when: one bar a rider, from arrival until the place is cleared."""

    riders = 12
    seconds = 60

    def prepare(self, *, x_label, y_label):
        """Draw the still part: the axes and their labels."""
        ax = style.dress(self.start(), x_label=x_label, y_label=y_label)
        ax.set_xlim(0, self.seconds)
        ax.set_ylim(self.riders + 0.6, 0.4)
        ax.set_yticks(range(1, self.riders + 1))
        ax.yaxis.grid(False)
        self.bars = [
            self.moving(ax.barh(place, 0, height=0.62, color=style.COLOURS["persons"])[0])
            for place in range(1, self.riders + 1)
        ]
        self.moment = self.moving(ax.axvline(0, color=style.COLOURS["time"], linewidth=2, linestyle="--"))
        self.words = self.moving(
            ax.text(0, 1, "", color=style.COLOURS["time"], fontsize=style.TEXT_SIZE, fontweight="bold", va="center")
        )
        return ax

    def move(self, *, title, arrivals, stay, moment, text):
        """Give each rider an arrival and a stay, and say what is seen at one moment.

        Parameters
        ----------
        title : str
            The one message.
        arrivals : list of float
            When each rider arrives, in seconds; one beyond the chart is not seen.
        stay : float
            How long each stays, in seconds.
        moment : float
            The moment that is looked at, in seconds.
        text : str
            What is seen then.
        """
        self.title.set_text(title)
        for bar, arrival in zip(self.bars, arrivals, strict=True):
            bar.set_x(arrival)
            bar.set_width(max(0.0, min(stay, self.seconds - arrival)))
        self.moment.set_xdata([moment, moment])
        late = moment > 0.5 * self.seconds
        self.words.set_text(text)
        self.words.set_ha("right" if late else "left")
        self.words.set_x(moment + (-0.6 if late else 0.6))


class AreaChart(Chart):
    """A rectangle whose sides are two quantities and whose area is a third."""

    def prepare(self, *, x_label, y_label, x_range, y_range):
        """Draw the still part: the axes and their labels."""
        ax = style.dress(self.start(), x_label=x_label, y_label=y_label)
        ax.set_xlim(*x_range)
        ax.set_ylim(*y_range)
        self.area = self.moving(ax.bar(0, 0, width=0, align="edge", color=style.COLOURS["persons"], alpha=0.35)[0])
        (self.edge,) = ax.plot([], [], color=style.COLOURS["persons"], linewidth=style.LINE_WIDTH)
        self.moving(self.edge)
        self.words = self.moving(
            ax.text(
                0, 0, "", fontsize=style.TEXT_SIZE + 1, fontweight="bold", color=style.COLOURS["persons"], va="bottom"
            )
        )
        return ax

    def move(self, *, title, width, height, text):
        """Give the rectangle its sides; what is beyond the axes is cut and said in the text."""
        (_, right), (_, top) = self.ax.get_xlim(), self.ax.get_ylim()
        self.title.set_text(title)
        self.area.set_width(width)
        self.area.set_height(height)
        self.edge.set_data([0, width, width], [height, height, 0])
        beyond = " (off the chart)" if width > right or height > top else ""
        self.words.set_text(text + beyond)
        late = width > 0.6 * right
        self.words.set_ha("left")
        self.words.set_position((0.02 * right if late else min(width, right) + 0.015 * right, 0.04 * top))
