"""The panel of 07: any kind of lift by its interval, its seats and its line speed."""

import math
from dataclasses import replace

import numpy as np

from liftcalc.figures.passing import PassingChart
from liftcalc.formulas.capacity import hourly_capacity_from_interval
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.spacing import headway_from_interval, spacing_for_headway
from liftcalc.lifts.demo_hill import demo_kinds
from liftcalc.lifts.kinds import KINDS
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.control_row import mark_in_row, row_of_buttons
from liftcalc.panels.controls import CONTROLS, Scale, speed_control
from liftcalc.quantity_text import show

LENGTH = {"metric": (300.0, "m", 50.0), "us": (1000.0, "ft", 200.0)}  # of the rope that is drawn, and between marks
TO_AND_FRO = 10  # times as long a rope is drawn for a lift that runs to and fro
MOST_DOTS = 10
TWO_CABINS = "two cabins, to and fro"


class KindPanel(Panel):
    """One formula for every kind of lift: persons per carrier, every so many seconds.

    Parameters
    ----------
    hill : Hill or None
        Examples, as ``read_hill`` returns them: a button for the kind of each. Those of the demo data if left out.
    **settings
        As for ``Panel``.
    """

    title = "Any kind of lift"
    control_names = ("line_speed", "interval", "seats")

    def __init__(self, hill=None, **settings):
        lines = list((hill or demo_kinds()).lines.values())
        self._examples = {line.kind: line for line in lines}
        first = "fixed chair" if "fixed chair" in self._examples else lines[0].kind
        self.example = self._examples[first]
        super().__init__(**{**self._settings(), **settings})

    @property
    def kind(self):
        """The kind that is looked at."""
        return KINDS[self.example.kind]

    def _settings(self):
        return {
            "line_speed": self.example.line_speed,
            "interval": self.example.interval,
            "seats": self.example.persons_per_carrier,
        }

    def control(self, name):
        """Return one control; a lift that runs to and fro has longer intervals and larger cabins."""
        if name == "line_speed":
            return speed_control(self.kind.end_of_axis)
        control = CONTROLS[name]
        ranges = {"interval": ("s", 60, 600, 1, 0), "seats": ("person", 10, 120, 1, 0)}
        if not self.kind.reversible:
            ranges = {"seats": ("person", 1, 10, 1, 0)}
        if name not in ranges:
            return control
        scale = Scale(*ranges[name])
        return replace(control, metric=scale, us=scale)

    def make_picture(self):
        return ChartPicture(PassingChart(), KindPanel._prepare, KindPanel._move)

    def more_controls(self):
        self._kinds = row_of_buttons(self._examples, self.choose)
        mark_in_row(self._kinds, self.example.kind)
        return [self._kinds]

    def choose(self, kind):
        """Put the panel to the example of one kind.

        Parameters
        ----------
        kind : str
            Name of the kind.
        """
        self.example = self._examples[kind]
        mark_in_row(self._kinds, kind)
        self.start_anew(self._settings())

    def compute(self, given):
        each = given["interval"], given["seats"]
        capacity = hourly_capacity_from_interval(*each)
        return {
            "people an hour": intended_capacity(capacity, *each, carriers=self.kind.has_carriers),
            "carriers an hour": f"{3600 / given['interval'].m_as('s'):,.0f}",
            "headway, person to person": headway_from_interval(given["interval"], given["seats"]),
            "spacing": self._spacing(given),
            "kind": self.kind.name,
        }

    def _spacing(self, given):
        """Return how far apart carriers hang, or a word for a lift that has no spacing."""
        return TWO_CABINS if self.kind.reversible else spacing_for_headway(given["line_speed"], given["interval"])

    def note(self):
        """Say how the carrier comes, where riders are on a stop, and what the kind's own hazards are."""
        if self.kind.reversible:
            meets = "The cabin stands while people get in."
        elif self.kind.has_carriers:
            meets = f"The carrier comes at {self.kind.comes_at}."
        else:
            meets = "No carrier comes: riders take hold, or step on, at the spacing that is set for the lift."
        return f"{meets} On a stop riders are {self.kind.on_a_stop}. Hazards of its own: {self.kind.hazards}"

    def _minutes(self):
        """Return the end of the upper ruler and its step, in seconds: half an hour for a lift that runs to and fro."""
        return (1800.0, 300.0) if self.kind.reversible else (60.0, 10.0)

    def _rope(self):
        """Return the end of the lower ruler, the word of its unit, and its step."""
        length, word, step = LENGTH[self.state.system]
        times = TO_AND_FRO if self.kind.reversible else 1
        return times * length, word, times * step

    def _persons_a_dot(self):
        return 12 if self.kind.reversible else 1

    def _prepare(self):
        seconds, step = self._minutes()
        length, word, mark = self._rope()
        each = self._persons_a_dot()
        dots = "one dot a person" if each == 1 else f"one dot for {each} persons"
        carrier = "carrier" if self.kind.has_carriers else "rider"
        self.picture.chart.prepare(
            seconds=seconds,
            time_word=f"at the loading point: time (s), {dots}",
            length=length,
            length_word=f"along the rope: distance ({word}), one dot a {carrier}",
            time_step=step,
            length_step=mark,
            most_dots=MOST_DOTS,
        )

    def _move(self):
        (seconds, _), (length, _, _) = self._minutes(), self._rope()
        places, words = [], TWO_CABINS
        if not self.kind.reversible:
            places = np.arange(0, length, self.number(self.results["spacing"]))
            words = f"spacing {self.text(self.results['spacing'])} at {self.text(self.given['line_speed'])}"
        self.picture.chart.move(
            title=f"{show(self.given['seats'])} every {show(self.given['interval'])}: {show(self.result.value)}",
            times=np.arange(0, seconds, self.given["interval"].m_as("s")),
            dots=math.ceil(self.given["seats"].m_as("person") / self._persons_a_dot()),
            places=places,
            spacing_text=words,
        )
