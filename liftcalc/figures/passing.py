"""Carriers as they come to the loading point, and the same carriers along the rope: one ruler above the other."""

import numpy as np

from liftcalc.figures import style
from liftcalc.figures.chart import Chart


class PassingChart(Chart):
    """Upper ruler: when carriers come, a dot for each person. Lower ruler: how far apart they hang."""

    height = 2.9
    margins = {"left": 0.02, "right": 0.98, "bottom": 0.02, "top": 0.87}
    floors = (2.0, 0.62)  # heights of the two rulers
    tallest = 1.0  # of a column of dots

    def prepare(self, *, seconds, time_word, length, length_word, time_step, length_step, most_dots):
        """Draw both rulers.

        Parameters
        ----------
        seconds, length : float
            Right ends of the two rulers, in the units of their words.
        time_word, length_word : str
            What each ruler shows, with its unit.
        time_step, length_step : float
            From one mark to the next.
        most_dots : int
            Dots of the tallest column.
        """
        ax = self.start()
        ax.set_axis_off()
        ax.set_xlim(-0.03, 1.03)
        ax.set_ylim(0, self.floors[0] + self.tallest + 0.15)
        self.ends, self.step = (seconds, length), self.tallest / most_dots
        for floor, end, step, word in zip(
            self.floors, self.ends, (time_step, length_step), (time_word, length_word), strict=True
        ):
            ax.plot([0, 1], [floor, floor], color=style.QUIET_INK, linewidth=1.4)
            for mark in np.arange(0, end + step / 2, step):
                at = mark / end
                if at <= 1.0001:
                    ax.plot([at, at], [floor, floor - 0.06], color=style.QUIET_INK, linewidth=1.2)
                    ax.text(at, floor - 0.1, f"{mark:g}", ha="center", va="top", fontsize=9, color=style.QUIET_INK)
            ax.text(0, floor - 0.34, word, ha="left", va="top", fontsize=style.TEXT_SIZE - 1, color=style.INK)
        size = min(8.0, 58 * self.step)
        (self.persons,) = ax.plot(
            [], [], "o", color=style.COLOURS["persons"], markersize=size, markeredgecolor=style.PAPER
        )
        (self.carriers,) = ax.plot(
            [], [], "o", color=style.COLOURS["spacing"], markersize=9, markeredgecolor=style.PAPER
        )
        (self.reach,) = ax.plot([], [], color=style.COLOURS["spacing"], linewidth=style.LINE_WIDTH)
        self.words = ax.text(0, 0, "", fontsize=style.TEXT_SIZE, color=style.COLOURS["spacing"], va="bottom")
        for artist in (self.persons, self.reach, self.carriers, self.words):
            self.moving(artist)
        return ax

    def move(self, *, title, times, dots, places, spacing_text):
        """Put carriers where they are.

        Parameters
        ----------
        title : str
            The one message.
        times : array
            When carriers come, in the unit of the upper ruler.
        dots : int
            Dots for each carrier.
        places : array
            Where carriers hang, in the unit of the lower ruler; none for a lift that runs to and fro.
        spacing_text : str
            Distance from one to the next, in words.
        """
        self.title.set_text(title)
        seconds, length = self.ends
        upper, lower = self.floors
        heights = upper + self.step * (np.arange(dots) + 0.5)
        self.persons.set_data(np.repeat(np.asarray(times) / seconds, dots), np.tile(heights, len(times)))
        at = np.asarray(places) / length
        self.carriers.set_data(at, np.full(len(at), lower + 0.09))
        end = at[1] if len(at) > 1 else 1.0
        self.reach.set_data(*(([0, end], [lower + 0.25] * 2) if len(at) else ([], [])))
        self.words.set_text(spacing_text)
        self.words.set_position((0.0, lower + 0.3))
