"""What all scenes of the talk have in common: large words, one drawing, values of their own, states without a kernel.

Each scene has its own values: a slider moved in one leaves the others as they were. The system of units is that of the
notebook. What a scene shows can be had without a kernel too: ``states`` gives it over the range of a slider.
"""

import base64
import re
from dataclasses import dataclass, replace
from html import escape

import ipywidgets as widgets
import numpy as np

from liftcalc.formulas.capacity import hourly_capacity, hourly_flow_from_count
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.spacing import headway
from liftcalc.levels import Capacity
from liftcalc.lifts.demo_hill import demo_line, demo_sheet
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_at
from liftcalc.lifts.readings import known_values
from liftcalc.panels.base import Panel, WithStill, still_picture
from liftcalc.panels.controls import CONTROLS
from liftcalc.panels.state import notebook_state
from liftcalc.quantity_text import show
from liftcalc.units import Q

AN_HOUR = "an hour"
STATES = 30  # of each slider, computed beforehand
LARGE, BODY = 72, 28  # px: the result, and the words
COLOUR_OF = {"spacing": "spacing", "loading": "time", "motor": "power", "traction": "force", "unload": "persons"}


@dataclass(frozen=True)
class SceneState:
    """What a scene shows at one setting.

    Parameters
    ----------
    setting : str
        Where the slider stands, or the name of the preset.
    words : str
        The result and its sentence, as HTML.
    drawing : str
        The picture, as SVG.
    """

    setting: str
    words: str
    drawing: str


class OwnValues:
    """Values of one scene alone; the system of units is that of the notebook."""

    def __init__(self, values):
        self.values = dict(values)
        self._notebook = notebook_state()

    @property
    def system(self):
        """The system of units of the notebook."""
        return self._notebook.system

    def use_units(self, system):
        """Turn the whole notebook to another system of units."""
        self._notebook.use_units(system)

    def join(self, panel):
        """Let a panel hear when the units are turned."""
        self._notebook.join(panel)

    def set(self, name, value, mover=None):
        """Give one control a new value."""
        self.values[name] = value
        if mover is not None:
            mover.refresh()

    def let_others_follow(self, names, mover):
        """Leave every other scene as it is."""


def an_hour(capacity):
    """Return a capacity as a room says it: the number, with its unit and its level in smaller letters."""
    if isinstance(capacity, Capacity):
        return f"{show(capacity.value, 'pph').removesuffix(' pph')}", f"{AN_HOUR}, {capacity.label}"
    return show(capacity, "pph").removesuffix(" pph"), AN_HOUR


def in_short(text):
    """Return a quantity as text without zeros at the end of its number: "2 s" and "3.4 m/s" are read faster."""
    return re.sub(r"\.0+(?![0-9])|(\.[0-9]*?[1-9])0+(?![0-9])", r"\1", text)


def large(number, unit, sentence):
    """Return a result in large letters with its unit, and one sentence below it, as HTML."""
    return (
        f"<div style='font-size:{LARGE}px;font-weight:bold;line-height:1.1'>{escape(number)} "
        f"<span style='font-size:{BODY + 6}px'>{escape(unit)}</span></div>"
        f"<div style='font-size:{BODY}px;line-height:1.3;margin:4px 0 10px'>{escape(sentence)}</div>"
    )


def of_the_penny_rope():
    """Return kind and values of the Penny Rope, as its sheet has them."""
    line, readings = demo_line("Penny Rope")
    return line.kind, known_values(line, readings)


def counted_at_the_top():
    """Return the count of the Penny Rope: people an hour, counted."""
    return Capacity(hourly_flow_from_count(*heads_and_time()), "counted")


def heads_and_time():
    """Return how many were counted past the top of the Penny Rope, and how long that took."""
    sheet = demo_sheet()
    (persons,), (time,) = sheet.of("persons_counted"), sheet.of("counting_time")
    return persons.value, time.value


def the_ideal():
    """Return the ideal of the Penny Rope, from its speed and its spacing."""
    _, values = of_the_penny_rope()
    speed, spacing = values["line_speed"], values["spacing"]
    return intended_capacity(hourly_capacity(speed, spacing), headway(speed, spacing))


def gained_at_half_the_spacing():
    """Return how many more people an hour the limits of the Penny Rope let through at half its spacing."""
    kind, values = of_the_penny_rope()
    as_it_is, at_half = (
        governing(limits_at(kind, {**values, "spacing": values["spacing"] * part})).capacity.value for part in (1, 0.5)
    )
    return at_half - as_it_is


def with_sign(capacity):
    """Return a gain or a loss as text, with its sign."""
    number = round(capacity.m_as("pph"))
    return f"{'−' if number < 0 else '+'}{abs(number):,}"


class ScenePicture:
    """The words of a scene and below them its drawing; both travel as one."""

    def __init__(self):
        self.html = self.widget = widgets.HTML(layout=widgets.Layout(width="100%", margin="0"))
        self._drawing = ""

    def use_units(self, panel):
        """Nothing is kept that depends on the system of units."""

    def move(self, panel):
        """Put words and drawing in step with the results."""
        self._drawing = panel.drawing()
        self.say(panel.status())

    def say(self, words):
        """Show these words above the drawing as it stands."""
        self.html.value = words + self._drawing

    def still(self):
        """Return the drawing as an address that holds all of it."""
        return "data:image/svg+xml;base64," + base64.b64encode(self._drawing.encode()).decode()


class ScenePanel(Panel):
    """A panel for a room: one slider, a few presets, one result.

    A subclass gives besides what every panel gives: ``presets``, ``said`` and ``drawing``.

    Parameters
    ----------
    **settings
        As for ``Panel``.
    """

    ranges = {}  # name of a control: its range in metric and in US units, where it differs from the series'

    def make_state(self):
        """Return the state of this scene alone: it starts at the first preset."""
        return OwnValues({**{name: control.start for name, control in CONTROLS.items()}, **self.first})

    @property
    def presets(self):
        """The named settings, the one to begin with first: name of the preset to values by the name of the control."""
        raise NotImplementedError

    @property
    def first(self):
        """The values of the first preset."""
        return next(iter(self.presets.values()))

    def said(self):
        """Return the result of this scene: number, unit and sentence."""
        raise NotImplementedError

    def drawing(self):
        """Return the drawing as SVG."""
        raise NotImplementedError

    def __init__(self, **settings):
        super().__init__(**settings)
        for row in self.rows:
            row.box.layout.width, row.box.style.description_width = "52%", "70%"
        buttons = []
        for name in self.presets:
            button = widgets.Button(description=name, layout=widgets.Layout(width="auto"))
            button.on_click(lambda pressed: self.choose(pressed.description))
            button.add_class("scene-preset")
            buttons.append(button)
        self._units.add_class("scene-units")
        self.children = [
            widgets.HBox(buttons, layout=widgets.Layout(flex_flow="row wrap")),
            *[row.row for row in self.rows],
            self.picture.widget,
            self._units,
        ]
        self.layout.width = "100%"
        self.add_class("scene-panel")

    def make_picture(self):
        return ScenePicture()

    def text(self, value):
        """Return a value as text in the units of the notebook, and short."""
        return in_short(super().text(value))

    def control(self, name):
        """Return one control, with the range of this scene."""
        control = CONTROLS[name]
        if name not in self.ranges:
            return control
        metric, us = (self.ranges[name] * 2)[:2]
        scales = [
            replace(scale, low=low, high=high, step=step)
            for scale, (low, high, step) in ((control.metric, metric), (control.us, us))
        ]
        return replace(control, metric=scales[0], us=scales[1])

    def choose(self, name):
        """Put the scene to one of its presets.

        Parameters
        ----------
        name : str
            Name of the preset.
        """
        self.state.values.update(self.presets[name])
        self.use_units()

    def status(self):
        """Return the result and its sentence, and what was wrong with an entry, as HTML."""
        look = f"font-size:{BODY - 4}px;border-left:6px solid;padding:2px 10px"
        complaint = f"<div style='{look}'>{escape(self._complaint)}</div>" if self._complaint else ""
        return f"<div role='status' class='result-{type(self).__name__}'>{large(*self.said())}{complaint}</div>"

    def state_now(self, setting):
        """Return what the scene shows now.

        Parameters
        ----------
        setting : str
            Its name for this setting.
        """
        return SceneState(setting, self.status(), self.drawing())

    def stops(self, control_name, n=STATES):
        """Return settings over the range of one slider, both ends among them.

        Parameters
        ----------
        control_name : str
            A control of this scene.
        n : int
            How many.

        Returns
        -------
        list of Quantity
        """
        scale = self.control(control_name).scale(self.state.system)
        steps = round((scale.high - scale.low) / scale.step)
        at = sorted({round(place) for place in np.linspace(0, steps, n)})
        return [Q(round(scale.low + step * scale.step, scale.digits), scale.unit) for step in at]

    def states(self, control_name=None, n=STATES):
        """Return what the scene shows at each preset, or over the range of one slider; afterwards it stands as before.

        Parameters
        ----------
        control_name : str or None
            A control of this scene; the presets if left out.
        n : int
            How many settings of the slider, both ends among them.

        Returns
        -------
        list of SceneState
        """
        before = dict(self.state.values)
        if control_name is None:
            settings = list(self.presets.items())
        else:
            settings = [(self.text(value), {control_name: value}) for value in self.stops(control_name, n)]
        found = []
        for setting, values in settings:
            self.state.values.update({**before, **values})
            self._complaint = ""
            self.results = self.compute(self.given)
            found.append(self.state_now(setting))
        self.state.values.update(before)
        self.refresh()
        return found


class SceneFigure(WithStill):
    """A scene without a control: words in large type, a drawing or none; it turns with the units of the notebook."""

    title = ""
    control_names = ()

    def __init__(self):
        self.state = notebook_state()
        self.name = type(self).__name__
        self.picture = ScenePicture()
        super().__init__([self.picture.widget], layout=widgets.Layout(width="100%"))
        self.use_units()
        self.state.join(self)

    def status(self):
        """Return the words as HTML."""
        raise NotImplementedError

    def drawing(self):
        """Return the drawing as SVG; empty for none."""
        return ""

    def use_units(self):
        """Take on the system of units of the notebook."""
        self.picture.move(self)

    follow = use_units

    def text(self, value, metric, us):
        """Return a quantity in one of two units, by the system of the notebook."""
        return in_short(show(value, us if self.state.system == "us" else metric))

    def states(self, control_name=None, n=STATES):
        """Return the one thing that this scene shows.

        Parameters
        ----------
        control_name, n
            As for ``ScenePanel.states``; there is no slider here.
        """
        return [SceneState("", self.status(), self.drawing())]

    def words(self):
        raise NotImplementedError

    def still(self):
        drawing = still_picture(self.words(), self.picture.still()) if self.drawing() else ""
        return f"<div>{self.status()}{drawing}</div>"
