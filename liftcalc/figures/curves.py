"""A chart of one quantity against another: curves with a label each, and a dot where the sliders stand."""

from dataclasses import dataclass

import numpy as np
from matplotlib.ticker import FuncFormatter, MaxNLocator

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


@dataclass(frozen=True)
class Curve:
    """How one curve looks: colour of its quantity, line style, bold or not, side and furthest place of its label.

    ``label_within`` is the part of the axis, from the left, beyond which its label does not begin.
    """

    quantity: str
    line_style: str = "-"
    bold: bool = True
    label_below: bool = False
    label_within: float = 1.0


class CurveChart(Chart):
    """Curves on fixed axes with a dot on the first of them."""

    def prepare(self, *, x_label, y_label, x_range, y_range, curves):
        """Draw the still part.

        Parameters
        ----------
        x_label, y_label : str
            Quantity and unit of each axis.
        x_range, y_range : tuple of float
            Ends of each axis.
        curves : list of Curve
            Looks of the curves, in the order in which ``move`` gets their values.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label=y_label)
        ax.set_xlim(*x_range)
        ax.set_ylim(*y_range)
        ax.yaxis.set_major_locator(MaxNLocator(6))
        ax.yaxis.set_major_formatter(FuncFormatter(style.thousands))
        self.curves, self.labels = [], []
        self.within = [look.label_within for look in curves]
        for look in curves:
            colour = style.COLOURS[look.quantity]
            width = style.LINE_WIDTH if look.bold else style.LINE_WIDTH * 0.6
            (line,) = ax.plot([], [], look.line_style, color=colour, linewidth=width)
            self.curves.append(self.moving(line))
            label = ax.text(
                0,
                0,
                "",
                color=colour,
                fontsize=style.TEXT_SIZE - 1,
                ha="right",
                va="top" if look.label_below else "bottom",
            )
            self.labels.append(self.moving(label))
        colour = style.COLOURS[curves[0].quantity]
        (self.guide,) = ax.plot([], [], ":", color=style.QUIET_INK, linewidth=1.3)
        (self.dot,) = ax.plot([], [], "o", color=colour, markersize=11, markeredgecolor=style.PAPER)
        self.dot_label = ax.text(
            0,
            0,
            "",
            fontsize=style.TEXT_SIZE + 1,
            fontweight="bold",
            color=colour,
            bbox={"facecolor": style.PAPER, "edgecolor": "none", "pad": 2, "alpha": 0.9},
        )
        for artist in (self.guide, self.dot, self.dot_label):
            self.moving(artist)
        return ax

    def move(self, *, title, lines, dot, dot_text, rising=True):
        """Put title, curves and dot where the computed values say.

        Parameters
        ----------
        title : str
            The one message.
        lines : list of (x, y, label)
            Points of each curve, and its label.
        dot : tuple of float
            Where the sliders stand.
        dot_text : str
            Label of the dot.
        rising : bool
            Whether the curve under the dot rises to the right.
        """
        self.title.set_text(title)
        left, right = self.ax.get_xlim()
        beyond = " (above the chart)" if dot[1] > self.ax.get_ylim()[1] else ""
        late = dot[0] > left + (0.45 if beyond else 0.6) * (right - left)
        for line, label, within, (x, y, text) in zip(self.curves, self.labels, self.within, lines, strict=True):
            line.set_data(x, y)
            under_dot = late and line is self.curves[0]
            furthest = left + (0.45 if under_dot else within) * (right - left)
            self._place_label(label, np.asarray(x), np.asarray(y), text, furthest)
        x, y = dot
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        y_seen = min(y, top)
        self.dot.set_data([x], [y_seen])
        self.guide.set_data([x, x, left], [bottom, y_seen, y_seen])
        # beside a rising curve the free places are below on its right and above on its left; above the edge only below
        below = y_seen > bottom + 0.85 * (top - bottom) or (
            rising and not late and y_seen > bottom + 0.15 * (top - bottom)
        )
        self.dot_label.set_text(dot_text + beyond)
        self.dot_label.set_ha("right" if late else "left")
        self.dot_label.set_va("top" if below else "bottom")
        aside, up = 0.017 * (right - left), 0.035 * (top - bottom)
        self.dot_label.set_position((x - aside if late else x + aside, y_seen - up if below else y_seen + up))

    def _place_label(self, label, x, y, text, furthest):
        """Put a label above its curve at the right end, or below it and a little before; not beyond ``furthest``."""
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        below = label.get_va() == "top"
        furthest = min(furthest, left + 0.7 * (right - left)) if below else furthest
        places = np.linspace(x[0], x[-1], 200) if len(x) else x
        x, y = places, np.interp(places, x, y)
        inside = np.nonzero((x <= furthest) & (y <= top - 0.07 * (top - bottom)) & (y >= bottom))[0]
        label.set_text(text if inside.size else "")
        if inside.size:
            last = inside[-1]
            begins_here = below or x[last] < left + 0.35 * (right - left)
            label.set_ha("left" if begins_here else "right")
            shift = 0.012 * (top - bottom) * (-1 if below else 1)
            label.set_position((x[last] + (0.01 if begins_here else -0.004) * (right - left), y[last] + shift))
