"""One thing disturbed on a full line: a missed grab, or a stop; the hole travels up and lowers the count at the top."""

import base64
import time
from html import escape

import ipywidgets as widgets

from liftcalc.figures.rope_view import FASTER, STYLE, RopeScene, draw_rope_view
from liftcalc.figures.style import IN_STEPS
from liftcalc.lifts.kinds import kind_named
from liftcalc.panels.base import WIDTH, WithStill, still_picture
from liftcalc.quantity_text import show
from liftcalc.simulation.disturbed_line import full_line, with_a_miss, with_a_stop
from liftcalc.units import PlainError, Q

STOP = 30.0  # seconds
NOTHING, MISS, HALT = "Nothing happens", "Miss one grab", f"Stop for {STOP:.0f} s"
RUN, HOLD = "Let it run", "Hold it"
STILL_AT = 0.6  # part of the scene at which it is printed


class DisturbedLine(WithStill):
    """A full line of one lift over a few minutes, in which one thing is disturbed; the same each time.

    Parameters
    ----------
    read : DayRead
        The lift, and the day whose readiness the starts are drawn from.
    seed : int
        Start of the random numbers.
    clock : function
        Seconds that go by, for tests.
    """

    def __init__(self, read, seed=2026, clock=time.monotonic):
        if kind_named(read.line.kind).has_carriers:
            raise PlainError(
                f"{read.line.name} is a {read.line.kind}: its carriers come by the clock, whoever misses. This picture "
                "is of lifts that riders grab, or step on, at any time."
            )
        whole = full_line(read.day, seed)
        self.scenes = {
            NOTHING: RopeScene(whole, whole),
            MISS: RopeScene(with_a_miss(whole), whole, "a missed grab"),
            HALT: RopeScene(with_a_stop(whole, STOP), whole, "a stop"),
        }
        self.name, self._line, self._clock = read.line.name, whole, clock
        self._time, self._since = 0.0, None
        self.choice = widgets.ToggleButtons(
            options=[NOTHING, MISS, HALT], value=MISS, style={"button_width": "150px"}, layout={"width": "auto"}
        )
        self.choice.observe(lambda _: self._begin(), "value")
        self._run = self._button(RUN, self._switch)
        buttons = [
            self._run,
            self._button("One start on", self._step),
            self._button("To the end", lambda: self._go_to(self._line.seconds)),
            self._button("Begin again", self._begin),
        ]
        self._html = widgets.HTML(layout=widgets.Layout(margin="0"))
        style = widgets.HTML(STYLE, layout=widgets.Layout(display="none"))
        row = widgets.HBox(buttons, layout=widgets.Layout(flex_flow="row wrap"))
        super().__init__(
            [style, self.choice, row, self._html],
            layout=widgets.Layout(width=WIDTH, max_width="100%", padding="6px 0 10px"),
        )
        self._draw()

    @staticmethod
    def _button(words, does):
        button = widgets.Button(description=words, tooltip=words, layout=widgets.Layout(width="auto"))
        button.on_click(lambda _: does())
        return button

    @property
    def running(self):
        """Whether the picture moves."""
        return self._since is not None

    @property
    def time(self):
        """Seconds since the scene began, on the hill."""
        gone = FASTER * (self._clock() - self._since) if self.running else 0.0
        return min(self._time + gone, self._line.seconds)

    @property
    def scene(self):
        """What is shown."""
        return self.scenes[self.choice.value]

    def _switch(self):
        if self.running:
            self._go_to(self.time)
        else:
            if self._time >= self._line.seconds:
                self._time = 0.0
            self._since = self._clock()
            self._draw()

    def _go_to(self, moment):
        self._time, self._since = min(moment, self._line.seconds), None
        self._draw()

    def _step(self):
        self._go_to(self.time + self._line.headway)

    def _begin(self):
        self._go_to(0.0)

    def status(self):
        """Return what has been counted until now; at the end, what was disturbed has cost."""
        if self.running:
            return f"It runs, {FASTER} times as fast as on the hill. Hold it to read the count."
        return self._at(self.scene, self.time)

    @staticmethod
    def _at(scene, moment):
        line, ended = scene.line, moment >= scene.line.seconds
        when = f"In {show(Q(line.seconds, 's'), 'minute')}" if ended else f"After {show(Q(moment, 's'))}"
        said = f"{when}: {line.counted(moment)} counted at the top"
        if not scene.name:
            return f"{said}."
        without = scene.without.counted(moment)
        fewer = without - line.counted(moment)
        return f"{said}, {without} without {scene.name}: {f'{fewer} fewer' if fewer else 'no fewer so far'}."

    def _draw(self):
        self._run.description = self._run.tooltip = HOLD if self.running else RUN
        (self._run.remove_class if self.running else self._run.add_class)(IN_STEPS)
        words = f"<div role='status' style='font-size:15px;margin:4px 0;min-height:22px'>{escape(self.status())}</div>"
        self._html.value = words + draw_rope_view(self.scene, time=self.time, running=self.running)

    def still(self):
        scene = self.scenes[MISS]
        svg = draw_rope_view(scene, time=STILL_AT * scene.line.seconds, still=True)
        data = "data:image/svg+xml;base64," + base64.b64encode(svg.encode()).decode()
        return still_picture(self.words(), data)

    def words(self):
        seconds = self._line.seconds
        said = [f"{name}. {self._at(scene, seconds)}" for name, scene in self.scenes.items()]
        return "\n".join([f"The line of {self.name}, the same starts each time.", *said])
