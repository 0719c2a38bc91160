"""The moving artists of a chart as SVG, to lie over the still part of the picture.

matplotlib lays out and owns every artist; only the last step, from artist to page, is done here, because a few lines of
SVG reach the page many times faster than a picture of the whole chart.
"""

from html import escape

import numpy as np
from matplotlib.colors import to_hex
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.text import Text

from liftcalc.figures import style

PIXELS_PER_INCH = 100
POINT = PIXELS_PER_INCH / 72
ANCHORS = {"left": "start", "center": "middle", "right": "end"}
DROPS = {"top": 0.78, "center": 0.35, "bottom": -0.22, "baseline": 0.0}  # of the letters' size, below the place
DASHES = {  # in line widths
    "--": (3.7, 1.6),
    ":": (1.0, 1.65),
    "-.": (6.4, 1.6, 1.0, 1.6),
    "long dashes": (9, 3),
    "dash and dots": (6, 2, 1, 2, 1, 2),
}


class Overlay:
    """Turns artists of one figure into SVG in the pixels of the page."""

    def __init__(self, figure):
        self.scale = PIXELS_PER_INCH / figure.dpi
        self.width = figure.get_figwidth() * PIXELS_PER_INCH
        self.height = figure.get_figheight() * PIXELS_PER_INCH

    def svg(self, artists, axes, label, *, below="", between="", above=""):
        """Return one ``<svg>`` element with the artists that are visible; those of the axes are cut at its edges.

        Parameters
        ----------
        artists : list of Artist
            Lines, rectangles and texts, in the order in which they are drawn.
        axes : Axes
            The axes whose edges cut lines and rectangles.
        label : str
            What the picture shows, in words.
        below, between, above : str
            SVG that lies below all artists, between shapes and words, and above all.
        """
        box = axes.get_window_extent()
        x, y = box.x0 * self.scale, self.height - box.y1 * self.scale
        w, h = box.width * self.scale, box.height * self.scale
        seen = [artist for artist in artists if artist.get_visible()]
        shapes = "".join(self._shape(artist) for artist in seen if not isinstance(artist, Text))
        words = "".join(self._text(artist) for artist in seen if isinstance(artist, Text) and artist.get_text())
        return (
            f'<svg viewBox="0 0 {self.width:.0f} {self.height:.0f}" width="{self.width:.0f}" role="img" '
            f'aria-label="{escape(label)}" style="display:block;max-width:100%;height:auto;'
            f'font-family:{style.FONT},Verdana,sans-serif">'
            f'<svg x="{x:.1f}" y="{y:.1f}" width="{w:.1f}" height="{h:.1f}" viewBox="{x:.1f} {y:.1f} {w:.1f} {h:.1f}">'
            f"{below}{shapes}</svg>{between}{words}{above}</svg>"
        )

    def outlines(self, artists):
        """Return the outlines of bars, lines and dots alone, pale and dotted: how they stood before a move."""
        drawn = "".join(self._outline(artist) for artist in artists if artist.get_visible())
        return f'<g fill="none" stroke="{style.QUIET_INK}" stroke-width="1.3" stroke-dasharray="2 3">{drawn}</g>'

    def _outline(self, artist):
        if isinstance(artist, Rectangle):
            corners = self._place(artist.get_transform().transform(artist.get_path().vertices))
            (left, top), (right, bottom) = corners.min(axis=0), corners.max(axis=0)
            return f'<path d="M{left:.1f} {top:.1f}H{right:.1f}V{bottom:.1f}H{left:.1f}"/>' if right > left else ""
        if isinstance(artist, Line2D):
            points = self._place(artist.get_transform().transform(artist.get_xydata()))
            if artist.get_marker() == "o":
                return "".join(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="6"/>' for x, y in points)
            return "".join(f'<path d="M{self._path(piece)}"/>' for piece in self._pieces(points))
        return ""

    def mark(self, axes, x, y, words):
        """Return a mark at a place on the axes, with words beside it: across them where the other number is None."""
        box = axes.get_window_extent()
        left, right = box.x0 * self.scale, box.x1 * self.scale
        top, bottom = self.height - box.y1 * self.scale, self.height - box.y0 * self.scale
        low, high = axes.get_xlim()[0], axes.get_ylim()[0]
        ((across, up),) = self._place(axes.transData.transform([(low if x is None else x, high if y is None else y)]))
        across, up = min(max(across, left), right), min(max(up, top), bottom)
        if x is None:
            shape = f'<path d="M{left:.1f} {up:.1f}H{right:.1f}" stroke-dasharray="8 4"/>'
            place, anchor, up = right - 6, "end", max(up - 6, top + 14)
        elif y is None:
            shape = f'<path d="M{across:.1f} {top:.1f}V{bottom:.1f}" stroke-dasharray="8 4"/>'
            place, anchor, up = across, "middle", top - 5
        else:
            shape = f'<circle cx="{across:.1f}" cy="{up:.1f}" r="6" fill="{style.PAPER}"/>'
            late, up = across > (left + right) / 2, up + 5
            place, anchor = across + (-12 if late else 12), "end" if late else "start"
        return (
            f'<g class="guess" fill="none" stroke="{style.INK}" stroke-width="2.5">{shape}</g>'
            f'<text x="{place:.1f}" y="{up:.1f}" text-anchor="{anchor}" font-size="14" font-weight="bold" '
            f'fill="{style.INK}" stroke="{style.PAPER}" stroke-width="4" stroke-linejoin="round" '
            f'paint-order="stroke">{escape(words)}</text>'
        )

    def corner(self, axes, words):
        """Return small words above the upper right corner of the axes."""
        box = axes.get_window_extent()
        x, y = box.x1 * self.scale, self.height - box.y1 * self.scale - 4
        return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="end" font-size="12" fill="{style.QUIET_INK}">{words}</text>'

    def _place(self, points):
        """Return points of the figure in pixels of the page, y down."""
        points = points * self.scale
        points[:, 1] = self.height - points[:, 1]
        return points

    def _shape(self, artist):
        if isinstance(artist, Rectangle):
            return self._rectangle(artist)
        if isinstance(artist, Line2D):
            return self._line(artist)
        raise TypeError(f"Overlay: {type(artist).__name__} has no form here. Use a line, a rectangle or a text.")

    def _line(self, line):
        points = self._place(line.get_transform().transform(line.get_xydata()))
        colour = to_hex(line.get_color())
        if line.get_marker() == "o":
            radius = line.get_markersize() / 2 * POINT
            return "".join(
                f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}" fill="{colour}" stroke="{style.PAPER}"/>'
                for x, y in points
            )
        width = line.get_linewidth() * POINT
        pattern = DASHES.get(line.get_gid() or line.get_linestyle())
        lengths = " ".join(f"{part * width:.1f}" for part in pattern or ())
        dashes = f' stroke-dasharray="{lengths}"' if pattern else ""
        path = "".join(f"M{self._path(piece)}" for piece in self._pieces(points))
        return f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="{width:.1f}"{dashes}/>' if path else ""

    @staticmethod
    def _pieces(points):
        """Return the pieces of a line between points that are no number."""
        gaps = np.nonzero(np.isnan(points).any(axis=1))[0]
        pieces = np.split(points, gaps) if gaps.size else [points]
        return [piece for piece in (each[~np.isnan(each).any(axis=1)] for each in pieces) if len(piece)]

    @staticmethod
    def _path(points):
        return "L".join(f"{x:.1f} {y:.1f}" for x, y in points.tolist())

    def _rectangle(self, patch):
        corners = self._place(patch.get_transform().transform(patch.get_path().vertices))
        (left, top), (right, bottom) = corners.min(axis=0), corners.max(axis=0)
        opacity = f' fill-opacity="{patch.get_alpha():.2f}"' if patch.get_alpha() not in (None, 1) else ""
        return (
            f'<rect x="{left:.1f}" y="{top:.1f}" width="{right - left:.1f}" height="{bottom - top:.1f}" '
            f'fill="{to_hex(patch.get_facecolor())}"{opacity}/>'
        )

    def _text(self, text):
        ((x, y),) = self._place(text.get_transform().transform([text.get_position()]))
        size = text.get_fontsize() * POINT
        weight = ' font-weight="bold"' if text.get_fontweight() == "bold" else ""
        return (
            f'<text x="{x:.1f}" y="{y + DROPS[text.get_va()] * size:.1f}" text-anchor="{ANCHORS[text.get_ha()]}" '
            f'font-size="{size:.1f}"{weight} fill="{to_hex(text.get_color())}" stroke="{style.PAPER}" '
            f'stroke-width="4" stroke-linejoin="round" paint-order="stroke">{escape(text.get_text())}</text>'
        )
