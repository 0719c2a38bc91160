"""Riders a hectare against people an hour, with the band of a guideline and the people an hour that fill it."""

from matplotlib.patches import Rectangle

from liftcalc.figures import style
from liftcalc.figures.curves import Curve, CurveChart


class SlopeChart(CurveChart):
    """A line from nobody up, a level band, and an upright where the line leaves the band."""

    def prepare(self, *, x_label, y_label, x_range, y_range):
        """Draw the still part.

        Parameters
        ----------
        x_label, y_label : str
            Quantity and unit of each axis.
        x_range, y_range : tuple of float
            Ends of each axis.
        """
        ax = super().prepare(
            x_label=x_label, y_label=y_label, x_range=x_range, y_range=y_range, curves=[Curve("persons")]
        )
        ax.xaxis.set_major_formatter(style.thousands)
        band = Rectangle((x_range[0], 0), x_range[1] - x_range[0], 0, facecolor=style.SNOW_EDGE, alpha=0.45)
        self.band = self.moving(ax.add_patch(band))
        self._moving.insert(0, self._moving.pop())  # below the curve
        look = {"color": style.COLOURS["capacity"], "fontsize": style.TEXT_SIZE - 1}
        (self.full,) = ax.plot([], [], "--", color=look["color"], linewidth=style.LINE_WIDTH * 0.6)
        self.moving(self.full)
        self.full_words = self.moving(ax.text(0, 0, "", va="bottom", fontweight="bold", **look))
        self.band_words = self.moving(
            ax.text(0, 0, "", va="top", ha="left", color=style.INK, fontsize=style.TEXT_SIZE - 1)
        )
        return ax

    def move(self, *, title, line, dot, dot_text, band, band_text, full, full_text):
        """Put line, band and dot where the computed values say.

        Parameters
        ----------
        title : str
            The one message.
        line : tuple of array
            Points of the line.
        dot : tuple of float
            Where the sliders stand.
        dot_text : str
            Label of the dot.
        band : tuple of float
            Ends of the guideline.
        band_text : str
            What the band is.
        full : float
            People an hour at which the line leaves the band.
        full_text : str
            The same in words.
        """
        super().move(title=title, lines=[(*line, "")], dot=dot, dot_text=dot_text)
        (left, right), (bottom, top) = self.ax.get_xlim(), self.ax.get_ylim()
        low, high = band
        self.band.set_y(low)
        self.band.set_height(high - low)
        self.band_words.set_text(band_text)
        steep = full < left + 0.35 * (right - left)  # the line runs through the left end of the band
        self.band_words.set_ha("right" if steep else "left")
        end = right - 0.012 * (right - left) if steep else left + 0.012 * (right - left)
        self.band_words.set_position((end, min(high, top) - 0.015 * (top - bottom)))
        shown = full <= right
        self.full.set_data([full, full], [bottom, min(high, top)] if shown else [bottom, bottom])
        self.full_words.set_text(full_text if shown else "")
        late = full > left + 0.5 * (right - left)
        self.full_words.set_ha("right" if late else "left")
        aside = 0.01 * (right - left)
        self.full_words.set_position((full - aside if late else full + aside, bottom + 0.02 * (top - bottom)))
