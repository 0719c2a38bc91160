"""A chart that stays alive: axes and grid are drawn once, only what moves is sent to the page again.

A slider that drags a whole picture with it is slow: two to three times as long from key press to page. Here the still
part is one picture, and the moving artists lie over it as a few lines of SVG.
"""

import io

import matplotlib
import matplotlib.image
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from liftcalc.figures import style
from liftcalc.figures.overlay import Overlay


class Chart:
    """One figure of fixed size on fixed axes.

    A subclass draws its still part in ``prepare(...)``, which calls ``start()`` first, and registers what moves by
    ``moving(artist)``; its ``move(...)`` gives these artists new values.
    """

    height = style.HEIGHT
    margins = {"left": 0.115, "right": 0.965, "bottom": 0.165, "top": 0.87}

    def __init__(self):
        self.figure = Figure(figsize=(style.WIDTH, self.height), dpi=style.DOTS_PER_INCH, facecolor=style.PAPER)
        self.canvas = FigureCanvasAgg(self.figure)
        self.overlay = Overlay(self.figure)
        self._moving = []
        self._before = self._guess = ""

    def start(self):
        """Clear the figure and return fresh axes with room for a title that moves."""
        self.figure.clear()
        self._moving, self._unremembered, self._before = [], [], ""
        left, bottom = self.margins["left"], self.margins["bottom"]
        place = (left, bottom, self.margins["right"] - left, self.margins["top"] - bottom)
        with matplotlib.rc_context({"font.family": style.FONT}):
            self.ax = self.figure.add_axes(place)
        self.title = self.moving(
            self.figure.text(
                0.02, 0.985, "", fontsize=style.TITLE_SIZE, fontweight="bold", color=style.INK, va="top", ha="left"
            )
        )
        return self.ax

    def axes_in_words(self):
        """Return what stands along the axes, for those who do not see them."""
        named = {"across": self.ax.get_xlabel(), "up": self.ax.get_ylabel()}
        said = [f"{words} {way}" for way, words in named.items() if words]
        return f"Axes of the chart: {', '.join(said)}" if said else "Axes of the chart"

    def moving(self, artist, remembered=True):
        """Register an artist that changes with the sliders, and return it; one not remembered leaves no trace."""
        artist.set_animated(True)
        self._moving.append(artist)
        if not remembered:
            self._unremembered.append(artist)
        return artist

    def outlines(self):
        """Return the outlines of what moves, as it stands now."""
        return self.overlay.outlines([artist for artist in self._moving if artist not in self._unremembered])

    def show_before(self, outlines):
        """Show these outlines as the setting before, pale and labelled, until the axes are drawn anew."""
        self._before = outlines

    def show_guess(self, x, y, words):
        """Show a mark at a place on the axes, with words; one of the two numbers may be None."""
        self._guess = self.overlay.mark(self.ax, x, y, words)

    def background(self):
        """Return the still part as PNG bytes."""
        return self._png([])

    def picture(self):
        """Return the whole chart as it stands, as PNG bytes."""
        return self._png(self._moving)

    def svg(self, label):
        """Return what moves, as SVG of the size of the chart."""
        return self._drawn(self.ax, label)

    def _drawn(self, axes, label):
        """Return what moves, cut at the edges of axes or of a figure; with the setting before and the guess."""
        said = self.overlay.corner(self.ax, "dotted: the setting before") if self._before else ""
        return self.overlay.svg(self._moving, axes, label, below=self._before, between=self._guess, above=said)

    def _png(self, artists):
        self.canvas.draw()
        for artist in artists:
            self.figure.draw_artist(artist)
        file = io.BytesIO()
        matplotlib.image.imsave(file, self.canvas.buffer_rgba(), format="png", metadata={"Software": None})
        return file.getvalue()
