"""A table, or lines of text, as a widget: so that a prediction can open it."""

import ipywidgets as widgets

from liftcalc.panels.base import WIDTH, WithStill


class Shown(WithStill):
    """Whatever shows itself as HTML, as a widget.

    Parameters
    ----------
    thing : Table, Lines
        What is shown.
    """

    def __init__(self, thing):
        self.thing = thing
        html = widgets.HTML(f"<div class='page-part jp-RenderedHTMLCommon'>{thing._repr_html_()}</div>")
        super().__init__([html], layout=widgets.Layout(width=WIDTH, max_width="100%"))

    def still(self):
        return self.thing._repr_html_()

    def words(self):
        return str(self.thing)
