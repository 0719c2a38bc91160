"""A chart that stays alive: axes and grid are drawn once, only what moves is drawn again.

A slider that drags a whole matplotlib figure with it is slow. Here the still part is kept as a picture, the moving
artists are drawn over it, and the result leaves as a PNG.
"""

import io

import matplotlib
import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from PIL import Image

from liftcalc.figures import style


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
        self._moving, self._still = [], None

    def start(self):
        """Clear the figure and return fresh axes with room for a title that moves."""
        self.figure.clear()
        self._moving, self._still = [], None
        with matplotlib.rc_context({"font.family": style.FONT}):
            self.ax = self.figure.add_axes((0, 0, 1, 1))
        self.figure.subplots_adjust(**self.margins)
        left, bottom = self.margins["left"], self.margins["bottom"]
        self.ax.set_position((left, bottom, self.margins["right"] - left, self.margins["top"] - bottom))
        self.title = self.moving(
            self.figure.text(
                0.02, 0.985, "", fontsize=style.TITLE_SIZE, fontweight="bold", color=style.INK, va="top", ha="left"
            )
        )
        return self.ax

    def moving(self, artist):
        """Register an artist that changes with the sliders, and return it."""
        artist.set_animated(True)
        self._moving.append(artist)
        return artist

    def png(self):
        """Return the picture as PNG bytes."""
        if self._still is None:
            self.canvas.draw()
            self._still = self.canvas.copy_from_bbox(self.figure.bbox)
        else:
            self.canvas.restore_region(self._still)
        for artist in self._moving:
            self.figure.draw_artist(artist)
        picture = Image.fromarray(np.asarray(self.canvas.buffer_rgba())).convert("RGB")
        file = io.BytesIO()
        picture.save(file, "png", compress_level=1)
        return file.getvalue()
