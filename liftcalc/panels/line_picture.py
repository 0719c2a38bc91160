"""The line view in a panel: it remembers where the riders stand, so that nothing jumps when a slider moves."""

import base64
import time

import ipywidgets as widgets

from liftcalc.figures.line_view import STYLE, LineScene, draw_line_view
from liftcalc.figures.style import IN_STEPS
from liftcalc.formulas.grade import slope_angle
from liftcalc.formulas.spacing import headway
from liftcalc.quantity_text import show

RUN, STOP = "Let the rope run", "Stop the rope"


class LinePicture:
    """SVG of a piece of the line, with a button that lets the rope run or stops it.

    The rope stands until the reader lets it run: from that moment on the kernel knows where the riders are, so that a
    moving slider makes none of them jump. Nothing moves on a page unasked.
    """

    def __init__(self, clock=time.monotonic):
        self._clock = clock
        self._phase, self._since, self._headway = 0.0, clock(), None
        self.html = widgets.HTML(layout=widgets.Layout(width="740px", max_width="100%", margin="0"))
        self.widget = widgets.VBox([widgets.HTML(STYLE, layout=widgets.Layout(display="none")), self.html])
        self._words = ""
        self.button = widgets.ToggleButton(
            value=False, description=RUN, tooltip=RUN, icon="",
            layout=widgets.Layout(width="auto", min_width="170px", align_self="flex-start"),
        )  # fmt: skip
        self.button.add_class(IN_STEPS)
        self.button.observe(self._switched, "value")
        self._scene = None

    @property
    def running(self):
        """Whether the rope runs."""
        return self.button.value

    def phase(self):
        """Return where the riders stand now, as a share of one spacing."""
        if self._headway is None or not self.running:
            return self._phase
        return (self._phase + (self._clock() - self._since) / self._headway) % 1.0

    def use_units(self, panel):
        """Nothing is kept that depends on the system of units."""

    def move(self, panel):
        """Show the settings of the panel, the riders going on from where they stand."""
        values = panel.state.values
        speed, spacing = values["line_speed"], values["spacing"]
        grade, slope_text = panel.slope()
        self._hold_phase()
        between = headway(speed, spacing)
        self._headway = between.m_as("s")
        self._scene = LineScene(
            spacing=spacing.m_as("m"),
            headway=self._headway,
            angle=slope_angle(grade).m_as("degree"),
            spacing_text=panel.text(spacing),
            headway_text=show(between),
            speed_text=panel.text(speed),
            grade_text=slope_text,
            each=panel.drawn_each,
        )
        self.say(panel.status())

    def say(self, words):
        """Show these words above the drawing, the riders going on from where they stand."""
        self._words = words
        self._hold_phase()
        self._draw()

    def still(self):
        """Return the picture, standing, as an address that holds all of it."""
        svg = draw_line_view(self._scene, still=True)
        return "data:image/svg+xml;base64," + base64.b64encode(svg.encode()).decode()

    def _hold_phase(self):
        self._phase, self._since = self.phase(), self._clock()

    def _switched(self, change):
        # the phase up to now belongs to the old state of the button
        if change["old"] and self._headway is not None:
            self._phase = (self._phase + (self._clock() - self._since) / self._headway) % 1.0
        self._since = self._clock()
        self.button.description = self.button.tooltip = STOP if change["new"] else RUN
        (self.button.remove_class if change["new"] else self.button.add_class)(IN_STEPS)
        self._draw()

    def _draw(self):
        drawing = draw_line_view(self._scene, phase=self._phase, running=self.running)
        self.html.value = self._words + drawing
