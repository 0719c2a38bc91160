"""A chart without sliders: what a prediction can open, with its table below it and room for a guess in it."""

import ipywidgets as widgets

from liftcalc.panels.base import WIDTH, ChartPicture, WithStill, still_picture
from liftcalc.panels.shown import Shown


class Picture(WithStill):
    """A chart, and a table below it where there is one.

    A subclass draws the chart in ``_prepare`` and gives what moves its values in ``_move``, as the panels do.

    Parameters
    ----------
    chart : Chart
        The drawing.
    table : Table or None
        What stands below it; its words are those of the picture, unless the subclass has others.
    """

    leaves_trace = False

    def __init__(self, chart, table=None):
        self.table, kind = table, type(self)
        self.picture = ChartPicture(chart, kind._prepare, kind._move)
        below = [] if table is None else list(Shown(table).children)
        super().__init__([self.picture.widget, *below], layout=widgets.Layout(width=WIDTH, max_width="100%"))
        self.picture.use_units(self)
        self.picture.move(self)

    def _prepare(self):
        raise NotImplementedError

    def _move(self):
        """Nothing moves, unless the subclass says so."""

    def status(self):
        """Return the words above the chart: none, since the table stands below it."""
        return ""

    def still(self):
        picture = still_picture(self.words(), self.picture.still())
        return picture if self.table is None else picture + self.table._repr_html_()

    def words(self):
        return str(self.table)
