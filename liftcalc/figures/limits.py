"""The chart of all limits of a lift over its line speed: a curve each, and the smallest of them in bold."""

import numpy as np
from matplotlib.ticker import FuncFormatter, MaxNLocator

from liftcalc.figures import style
from liftcalc.figures.chart import Chart
from liftcalc.lifts.limits import LIMITS

# line of a limit's curve, by the quantity that sets the limit and gives it its colour: no two limits have one. A line
# that the library has no sign for has a name in ``DASHES`` of ``overlay.py``
LINE_STYLES = {
    "spacing": ("-", None),
    "time": ("--", None),
    "power": ("-.", None),
    "force": (":", None),
    "persons": ((0, (9, 3)), "long dashes"),
    "station": ((0, (6, 2, 1, 2, 1, 2)), "dash and dots"),
}
LIMIT_STYLES = {limit.name: (limit.set_by, LINE_STYLES[limit.set_by]) for limit in LIMITS}
THIN, BOLD = 1.4, 5.0
APART, ASIDE = 17.0, 74.0  # pixels of the page between two labels, one below the other and side by side
LETTER, MARGIN = 9.5, 80  # pixels of the page: one letter of the words beside the dot; what they may use of the margin


class LimitsChart(Chart):
    """Thin curves, the envelope in bold in the colours of the limits that govern, and a dot where the lift runs."""

    height = 4.1
    margins = {"left": 0.115, "right": 0.885, "bottom": 0.14, "top": 0.845}

    def prepare(self, *, x_label, x_range, y_range):
        """Draw the still part.

        Parameters
        ----------
        x_label : str
            Line speed and its unit.
        x_range, y_range : tuple of float
            Ends of the axes; the upright one is in pph.
        """
        ax = style.dress(self.start(), x_label=x_label, y_label="people an hour (pph)")
        ax.set_xlim(*x_range)
        ax.set_ylim(*y_range)
        ax.xaxis.set_major_locator(MaxNLocator(7))
        ax.yaxis.set_major_locator(MaxNLocator(6))
        ax.yaxis.set_major_formatter(FuncFormatter(style.thousands))
        self.bold, self.thin, self.labels = {}, {}, {}
        for name, (quantity, (line_style, dashes)) in LIMIT_STYLES.items():
            colour = style.COLOURS[quantity]
            (line,) = ax.plot([], [], "-", color=colour, linewidth=BOLD, solid_capstyle="butt")
            self.bold[name] = self.moving(line)
            (line,) = ax.plot([], [], linestyle=line_style, color=colour, linewidth=THIN)
            line.set_gid(dashes)
            self.thin[name] = self.moving(line)
            self.labels[name] = self.moving(ax.text(0, 0, "", color=colour, fontsize=style.TEXT_SIZE, va="center"))
        (self.guide,) = ax.plot([], [], ":", color=style.INK, linewidth=2.2)
        (self.dot,) = ax.plot([], [], "o", color=style.COLOURS["capacity"], markersize=13, markeredgecolor=style.PAPER)
        self.words = [
            ax.text(0, 0, "", fontsize=size, fontweight=weight, color=colour, va="top")
            for size, weight, colour in (
                (style.TEXT_SIZE + 3, "bold", style.COLOURS["capacity"]),
                (style.TEXT_SIZE, "normal", style.INK),
            )
        ]
        for artist in (self.guide, self.dot, *self.words):
            self.moving(artist)
        return ax

    def move(self, *, title, speeds, curves, pieces, dot, next_height, texts):
        """Put curves, envelope and dot where the computed values say.

        Parameters
        ----------
        title : str
            The one message.
        speeds : array
            Line speeds of the curves, in the unit of the axis.
        curves : dict of str to array
            What each limit allows [pph], by its name; a limit that is left out is not there.
        pieces : list of (str, array, array)
            Pieces of the envelope, as ``liftcalc.lifts.governing.envelope`` gives them.
        dot : tuple of float
            Line speed and governed capacity.
        next_height : float or None
            Height of the next limit above the dot.
        texts : tuple of str
            Two lines beside the dot: the capacity, and how far the next limit is.
        """
        self.title.set_text(title)
        for name in LIMIT_STYLES:
            own = [(at, height) for piece, at, height in pieces if piece == name]
            gap = [np.nan]
            self.bold[name].set_data(
                np.concatenate([part for at, _ in own for part in (at, gap)]) if own else [],
                np.concatenate([part for _, height in own for part in (height, gap)]) if own else [],
            )
            self.thin[name].set_data(*((speeds, curves[name]) if name in curves else ([], [])))
            self.labels[name].set_text("")
        self._name_curves(speeds, curves)
        self._place_dot(dot, next_height, texts, pieces)

    def _name_curves(self, speeds, curves):
        """Name each curve where it leaves the chart: on its right edge, or on its top one."""
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        box = self.ax.get_window_extent()
        scale = self.overlay.scale
        high, wide = (top - bottom) / (box.height * scale), (right - left) / (box.width * scale)  # of one pixel
        at_side, at_top = [], []
        for name, curve in curves.items():
            inside = np.nonzero(curve <= top)[0]
            if inside.size and inside[-1] == len(speeds) - 1:
                at_side.append((float(curve[-1]), name, name))
            elif inside.size:
                at_top.append((float(speeds[inside[-1]]), name, name))
            else:
                at_top.append((right, name, f"{name} \N{UPWARDS ARROW}"))
        for place, name, text in _spread(at_side, APART * high, bottom, top - 0.5 * APART * high):
            self._put(name, text, right + 7 * wide, place, "left", "center")
        for place, name, text in _spread(at_top, ASIDE * wide, left + 0.4 * ASIDE * wide, right - 0.1 * ASIDE * wide):
            self._put(name, text, place, top + 4 * high, "center", "bottom")

    def _put(self, name, text, x, y, across, along):
        label = self.labels[name]
        label.set_text(text)
        label.set_position((x, y))
        label.set_ha(across)
        label.set_va(along)

    def _place_dot(self, dot, next_height, texts, pieces):
        """Put the dot, the way up to the next limit, and two lines of words where no curve runs: below the envelope."""
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        (x, y), height, width = dot, top - bottom, right - left
        seen = min(y, top)
        self.dot.set_data([x], [seen])
        self.guide.set_data(*(([x, x], [seen, next_height]) if next_height is not None else ([], [])))
        pixel = width / (self.ax.get_window_extent().width * self.overlay.scale)
        long = LETTER * max(len(text) for text in texts) * pixel
        at, low = (np.concatenate([piece[part] for piece in pieces]) for part in (1, 2))
        beyond = right + MARGIN * pixel  # words may reach into the margins
        sides = []
        for begin, end, across in ((x - 0.02 * width, x + long, "left"), (x - long, x + 0.02 * width, "right")):
            if left <= begin and end <= beyond:
                free = np.interp(np.linspace(begin, min(end, right), 40), at, low).min() - 0.03 * height
                sides.append((min(seen - 0.05 * height, free), across))
        drop, across = max(sides, default=(bottom, "left" if x < left + 0.5 * width else "right"))
        drop = max(drop, bottom + 0.17 * height)
        beside = abs(drop - 0.08 * height - seen) < 0.1 * height  # lifted up to the dot itself: stand beside it
        for words, text, down in zip(self.words, texts, (0.0, 0.085), strict=True):
            words.set_text(text)
            words.set_ha(across)
            aside = 0.025 * width if beside else -0.02 * width
            words.set_position((x + aside if across == "left" else x - aside, drop - down * height))


def _spread(labels, apart, lowest, highest):
    """Return labels with their places pushed apart, in order, between two ends."""
    labels = sorted(labels)
    places = [min(max(place, lowest), highest) for place, _, _ in labels]
    for number in range(1, len(places)):
        places[number] = max(places[number], places[number - 1] + apart)
    for number in range(len(places) - 1, -1, -1):
        ceiling = highest if number == len(places) - 1 else places[number + 1] - apart
        places[number] = min(places[number], ceiling)
    return [(place, name, text) for place, (_, name, text) in zip(places, labels, strict=True)]
