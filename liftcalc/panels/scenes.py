"""Panels of the talk: one slider or a few buttons, one result in large type, one drawing that is read from far away.

Each scene has its own values: a slider moved in one leaves the others as they were. The system of units is that of the
notebook. What a scene shows can be had without a kernel too: ``states`` gives it over the range of a slider.
"""

import base64
from dataclasses import dataclass, replace
from html import escape

import ipywidgets as widgets
import numpy as np

from liftcalc.figures.stage import Bar, draw_bars, draw_inside
from liftcalc.formulas.capacity import hourly_capacity, hourly_flow_from_count
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.pull import rope_pull
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway
from liftcalc.formulas.stopping import attendant_stopping_distance, riders_inside, rope_deceleration
from liftcalc.levels import Capacity
from liftcalc.lifts.cost_of_lift import yearly_cost
from liftcalc.lifts.demo_hill import demo_line, demo_sheet
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_at
from liftcalc.lifts.readings import known_values
from liftcalc.panels.base import Panel, WithStill, still_picture
from liftcalc.panels.controls import CONTROLS
from liftcalc.panels.cost import demo_cost_sheet
from liftcalc.panels.state import notebook_state
from liftcalc.panels.waiting import time_for_each
from liftcalc.quantity_text import show
from liftcalc.simulation.closed_crowd import closed_crowd
from liftcalc.units import Q

AN_HOUR = "an hour"
STATES = 30  # of each slider, computed beforehand
LARGE, BODY = 72, 28  # px: the result, and the words


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
    sheet = demo_sheet()
    (persons,), (time,) = sheet.of("persons_counted"), sheet.of("counting_time")
    return Capacity(hourly_flow_from_count(persons.value, time.value), "counted")


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
        complaint = (
            f"<div style='font-size:{BODY - 4}px;border-left:6px solid;padding:2px 10px'>{escape(self._complaint)}</div>"
            if self._complaint
            else ""
        )
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


COLOUR_OF = {"spacing": "spacing", "loading": "time", "motor": "power", "traction": "force", "unload": "persons"}


class LimitsScene(ScenePanel):
    """A lift whose limits are drawn as bars; one of its readings is moved."""

    demo = "Penny Rope"
    most = 2200.0  # pph: where the axis ends
    row = 50

    def _of_the_lift(self):
        line, readings = demo_line(self.demo)
        return line.kind, known_values(line, readings)

    @property
    def presets(self):
        _, values = self._of_the_lift()
        (name,) = self.control_names
        return {"as measured": {name: values[name]}, **self.others(values[name])}

    def others(self, measured):
        """Return the presets beside the one that was measured, by name."""
        raise NotImplementedError

    def compute(self, given):
        kind, values = self._of_the_lift()
        self.limits = [limit for limit in limits_at(kind, {**values, **given}) if hasattr(limit, "capacity")]
        self.found = governing(self.limits)
        self.measured = governing(limits_at(kind, values)).capacity
        return {"at most": self.found.capacity, "governs": self.found.limit.name}

    def gained(self):
        """Return how many more, or fewer, with a sign."""
        return with_sign(self.found.capacity.value - self.measured.value)

    def mark(self):
        """Return where a dashed line stands and its words, or None."""
        return None

    def drawing(self):
        bars = [
            Bar(
                limit.name, limit.capacity.m_as("pph"), an_hour(limit.capacity)[0], COLOUR_OF[limit.name],
                limit.name == self.found.limit.name,
            )
            for limit in self.limits
        ]  # fmt: skip
        return draw_bars(bars, most=self.most, row=self.row, mark=self.mark())


class WhereTheRestStays(LimitsScene):
    """Scene 6: bars of the limits, and the count beside them."""

    title = "Where the rest stays"
    control_names = ("loading_time",)
    ranges = {"loading_time": [(1.5, 6.0, 0.1)]}

    def others(self, measured):
        return {"half a second less": {"loading_time": Q(2.5, "s")}, "one second more": {"loading_time": Q(4, "s")}}

    def said(self):
        return (*an_hour(self.found.capacity), f"{self.found.limit.name.capitalize()} governs: the narrowest of five.")

    def mark(self):
        counted = counted_at_the_top()
        return counted.value.m_as("pph"), f"{an_hour(counted)[0]} counted, people waited"


class HalfTheSpacing(LimitsScene):
    """Scene 7: another spacing on the Penny Rope, and how many more that makes."""

    title = "Half the spacing"
    most = 3700.0
    control_names = ("spacing",)
    ranges = {"spacing": [(3.4, 13.6, 0.1), (11.0, 45.0, 0.5)]}

    def others(self, measured):
        return {"half the spacing": {"spacing": measured / 2}}

    def said(self):
        spacing = next(limit for limit in self.limits if limit.name == "spacing")
        governs = self.found.limit
        sentence = (
            f"Spacing would allow {an_hour(spacing.capacity)[0]}; {governs.name} lets "
            f"{an_hour(governs.capacity)[0]} through."
            if governs.name != "spacing"
            else f"Here spacing governs: {an_hour(governs.capacity)[0]} an hour."
        )
        return self.gained(), "people an hour", sentence


class FasterRope(LimitsScene):
    """A spare: another line speed of the Penny Rope."""

    title = "A faster rope"
    most = 2800.0
    control_names = ("line_speed",)
    ranges = {"line_speed": [(2.0, 5.0, 0.1), (4.5, 11.0, 0.1)]}

    def others(self, measured):
        return {"faster": {"line_speed": Q(4.4, "m/s")}, "slower": {"line_speed": Q(2.4, "m/s")}}

    def said(self):
        return self.gained(), "people an hour", f"At {self.setting('line_speed')} {self.found.limit.name} governs."


class WhereSpacingGoverns(LimitsScene):
    """A spare: the Long Platter, where closer carriers do carry more on paper."""

    title = "Where spacing governs"
    demo, most = "Long Platter", 1100.0
    control_names = ("spacing",)
    ranges = {"spacing": [(9.8, 25.0, 0.2), (32.0, 82.0, 0.5)]}

    def others(self, measured):
        return {"half the spacing": {"spacing": measured / 2}}

    def said(self):
        return self.gained(), "people an hour", f"Now {self.found.limit.name} governs: {an_hour(self.found.capacity)[0]}."


class WhatHalfCosts(ScenePanel):
    """Scene 8: who is inside the stopping distance of a fall, the time to take hold, and the top."""

    title = "What half the spacing costs"
    control_names = ("spacing",)
    ranges = {"spacing": [(3.4, 13.6, 0.1), (11.0, 45.0, 0.5)]}
    # assumed, as on the page about spacing
    held_on, brake, reaction, delay, moving = Q(22, "person"), Q(2000, "N"), Q(2, "s"), Q(0.5, "s"), Q(400, "kg")

    @property
    def presets(self):
        _, values = of_the_penny_rope()
        return {"as measured": {"spacing": values["spacing"]}, "half the spacing": {"spacing": values["spacing"] / 2}}

    def compute(self, given):
        _, values = of_the_penny_rope()
        speed, spacing = values["line_speed"], given["spacing"]
        grade = self.state.values["grade"]
        slowing = rope_deceleration(
            self.held_on, pull=rope_pull(values["rider_mass"], grade=grade, snow_friction=values["snow_friction"]),
            idle_drag=values["idle_drag"], brake_force=self.brake, rider_mass=values["rider_mass"],
            moving_mass=self.moving,
        )  # fmt: skip
        self.distance = attendant_stopping_distance(
            speed, reaction_time=self.reaction, stop_delay=self.delay, rope_deceleration=slowing
        )
        flow = hourly_capacity(speed, spacing)
        return {
            "inside the stopping distance": riders_inside(distance=self.distance, spacing=spacing),
            "to take hold": headway(speed, spacing),
            "at the top at once": persons_from_flow(flow, values["clearing_time"]),
        }

    def said(self):
        inside, hold, top = self.results.values()
        number = f"{inside.m_as('person'):.0f}"
        return (
            number,
            "people inside the stopping distance",
            f"{show(hold)} for hands to take hold. {top.m_as('person'):.0f} at the top at once.",
        )

    def drawing(self):
        return draw_inside(
            spacing=self.given["spacing"].m_as("m"), distance=self.distance.m_as("m"),
            inside=int(self.result.m_as("person")), words=f"stop: {self.text(self.distance)}",
        )  # fmt: skip


class TheWait(ScenePanel):
    """A spare: how long a crowd waits at the counted rate of the rope."""

    title = "The wait"
    control_names = ("crowd",)
    ranges = {"crowd": [(10, 150, 1)]}

    @property
    def presets(self):
        return {
            "70 people": {"crowd": Q(70, "person")},
            "40 people": {"crowd": Q(40, "person")},
            "100 people": {"crowd": Q(100, "person")},
        }

    def compute(self, given):
        counted = counted_at_the_top()
        line, _ = demo_line("Penny Rope")
        crowd = Q(max(1, round(given["crowd"].m_as("person"))), "person")
        found = closed_crowd(
            crowd, loading_time=time_for_each(counted.value),
            ride_and_descent=line.ride_time + self.state.values["descent_time"],
        )  # fmt: skip
        return {"mean wait": found.wait[-1, 0].to("minute"), "in line": found.line[-1, 0], "capacity": counted}

    def said(self):
        wait, line = self.results["mean wait"], self.results["in line"]
        number, unit = show(wait, "minute").split(" ")
        down = self.state.values["descent_time"]
        return number, f"{unit} in line", f"{line.m_as('person'):.0f} stand in line. Assumed: {show(down)} down, no rest."

    def drawing(self):
        crowd, line = (self.given["crowd"].m_as("person"), self.results["in line"].m_as("person"))
        bars = [
            Bar("in line", line, f"{line:.0f} people", "time", bold=True),
            Bar("up and down", crowd - line, f"{crowd - line:.0f} people", "persons"),
        ]
        return draw_bars(bars, most=150.0, row=80)


class TheCost(ScenePanel):
    """A spare: what a ride costs over the rides of a season."""

    title = "The cost"
    control_names = ("rides",)
    ranges = {"rides": [(10000, 200000, 1000)]}

    @property
    def presets(self):
        rides = demo_cost_sheet().rides
        return {"a usual season": {"rides": rides}, "half the rides": {"rides": rides / 2}, "twice": {"rides": rides * 2}}

    def compute(self, given):
        self.cost = yearly_cost(replace(demo_cost_sheet(), rides=given["rides"]))
        return {"cost of a ride": self.cost.per_ride, "cost of a year": self.cost.total}

    def said(self):
        rides = f"{self.given['rides'].m_as('person/season'):,.0f}"
        return (
            f"{self.result.m_as('dollar/person'):.2f}",
            "dollars a ride",
            f"{show(self.cost.total, 'dollar/season')}, over {rides} rides.",
        )

    def drawing(self):
        shares = sorted(self.cost.shares.items(), key=lambda each: -each[1])[:4]
        bars = [
            Bar(name, share.m_as("percent"), show(share.to("percent")), "money", place == 0)
            for place, (name, share) in enumerate(shares)
        ]
        return draw_bars(bars, most=100.0, left=330, row=60)


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
        return show(value, us if self.state.system == "us" else metric)

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


class HowMeasured(SceneFigure):
    """Scene 3: three readings, each with who read it and how."""

    title = "How it was measured"

    def _rows(self):
        _, values = of_the_penny_rope()
        return [
            (self.text(values["line_speed"], "m/s", "mph"), "speed", "A mark on the rope, two poles"),
            (self.text(values["spacing"], "m", "ft"), "spacing", "A photo from the side"),
            (show(values["loading_time"]), "loading", "A watch, place free to under way"),
        ]

    def status(self):
        rows = "".join(
            f"<div style='display:flex;align-items:center;gap:24px;margin:30px 0;line-height:1.25'>"
            f"<b style='font-size:64px;flex:0 0 330px;white-space:nowrap'>{escape(value)}</b>"
            f"<span style='font-size:{BODY + 2}px'><b style='font-size:38px'>{escape(what)}</b><br>{escape(how)}"
            "</span></div>"
            for value, what, how in self._rows()
        )
        return f"<div>{rows}</div>"

    def words(self):
        return " ".join(f"{what} {value}: {how}." for value, what, how in self._rows())


class OneLine(SceneFigure):
    """Scene 4: one line of arithmetic, from speed and spacing to the ideal."""

    title = "One line of arithmetic"

    def _line(self):
        _, values = of_the_penny_rope()
        speed, spacing = values["line_speed"], values["spacing"]
        between = show(headway(speed, spacing))
        return (
            f"{self.text(spacing, 'm', 'ft')} ÷ {self.text(speed, 'm/s', 'ft/s')} = {between}",
            f"3,600 s ÷ {between} =",
        )

    def status(self):
        number, unit = an_hour(the_ideal())
        first, second = self._line()
        return (
            f"<div style='font-size:36px;line-height:1.3'>{escape(first)} from rider to rider</div>"
            f"<div style='font-size:36px;line-height:1.1'>{escape(second)} "
            f"<b style='font-size:{LARGE}px'>{escape(number)}</b> <b style='font-size:{BODY + 6}px'>{escape(unit)}</b>"
            "</div>"
        )

    def words(self):
        first, second = self._line()
        return f"{first} from rider to rider. {second} {the_ideal()}."
