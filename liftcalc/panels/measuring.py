"""The panels of 05: the steady part of a track, and one length by three ways."""

from dataclasses import replace

import ipywidgets as widgets
import numpy as np

from liftcalc.fieldwork import (
    FieldFileError,
    Track,
    decode,
    find_steady_parts,
    make_track,
    read_track_speed,
    track_from_text,
)
from liftcalc.figures.trace import TraceChart
from liftcalc.formulas.grade import slope_length
from liftcalc.lifts.demo_hill import demo_sheet
from liftcalc.lifts.kinds import NOT_READ, kind_named, map_length
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.controls import CONTROLS, Scale, reaching
from liftcalc.panels.several_methods import MethodsPanel
from liftcalc.quantity_text import unit_word
from liftcalc.uncertainty import Estimate, by_first_order, estimate_from_half_width, own_formula, show_with_doubt
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import words_of

NOT_FROM_HERE = "not from this part"


def example_track():
    """Return a track without noise: standing, a ride on the demo tow from rest, standing."""
    speed, length, pick_up, steepness = 3.4, 150.0, 1.5, 29.4 / 150  # the last: rise over slope length
    seconds = np.arange(0.0, 121.0)
    riding = np.clip(seconds - 38, 0, length / speed + speed / (2 * pick_up))
    speeding_up = np.minimum(riding, speed / pick_up)
    along = pick_up * speeding_up**2 / 2 + speed * (riding - speeding_up)
    plan, height = along * np.sqrt(1 - steepness**2), along * steepness
    return make_track("example track", seconds, 47 + plan / 111_178, np.full(seconds.size, -35.0), 900 + height)


class TrackPanel(Panel):
    """The speed of a track, and the steady part of it that counts; the reader may move both ends.

    Parameters
    ----------
    track : Track or None
        From ``read_track``; None for an example without noise.
    **settings
        As for every panel; ``steady_from`` and ``steady_to`` begin at the part that was found.
    """

    title = "The steady part of a track"
    control_names = ("steady_from", "steady_to")

    def __init__(self, track=None, **settings):
        self._read(example_track() if track is None else track)
        for name, value in self._found().items():
            settings.setdefault(name, value)
        super().__init__(**settings)
        for row in self.rows:  # the two ends share one slider below the boxes
            row.slider.layout.display = "none"

    def _read(self, track):
        """Take a track and find its steady parts."""
        if not isinstance(track, Track):
            raise PlainError(f"TrackPanel: the track must come from read_track, but got {track!r}.")
        self.track, self.parts = track, find_steady_parts(track)
        self._last = max(60.0, float(np.ceil(track.seconds[-1])))

    def _found(self):
        """Return both ends of the part that was found, in whole seconds inside it."""
        first, last = (self.parts[0].start, self.parts[0].end) if self.parts else (0.0, self.track.seconds[-1])
        return {"steady_from": Q(float(np.ceil(first)), "s"), "steady_to": Q(float(np.floor(last)), "s")}

    def control(self, name):
        """Return a control that ends where the track ends."""
        scale = Scale("s", 0, self._last, 1, 0)
        return replace(CONTROLS[name], metric=scale, us=scale)

    def make_picture(self):
        return ChartPicture(TraceChart(), TrackPanel._prepare, TrackPanel._move)

    def more_controls(self):
        first, last = (self.given[name].m_as("s") for name in self.control_names)
        self.ends = widgets.FloatRangeSlider(
            value=(first, last), min=0, max=self._last, step=1, readout=False, description="Steady part (s)",
            style={"description_width": "165px"}, layout=widgets.Layout(width="700px", max_width="100%"),
        )  # fmt: skip
        self.ends.observe(self._dragged, "value")
        self.upload = widgets.FileUpload(
            accept=".gpx", description="Your own track (GPX)", layout=widgets.Layout(width="auto")
        )
        self.upload.observe(self._uploaded, "value")
        return [self.ends, widgets.HBox([self.upload])]

    def _dragged(self, change):
        """Take both ends from the range slider."""
        ends = tuple(round(end) for end in change["new"])
        if ends != tuple(round(self.given[name].m_as("s")) for name in self.control_names):
            first, last = self.control_names
            self.state.values[first] = Q(float(ends[0]), "s")
            self.state.set(last, Q(float(ends[1]), "s"), self)
            for row in self.rows:
                row.show()

    def _uploaded(self, change):
        """Read a file that the reader brought; a file that cannot be read leaves all as it is."""
        if not change["new"]:
            return
        file = change["new"][0]
        try:
            self._read(track_from_text(file["name"], decode(file["name"], bytes(file["content"]), "a track")))
        except PlainError as error:
            self.complain(str(error))
            return
        found = self._found()
        self.state.values.update(found)
        self.ends.max = self._last
        self.start_anew(found)

    def compute(self, given):
        first, last = given["steady_from"].m_as("s"), given["steady_to"].m_as("s")
        self.problem, self.reading = "", None
        try:
            if first >= last:
                raise FieldFileError(
                    f"The part would end at {last:g} s, before its start at {first:g} s. Move one end."
                )
            self.reading = read_track_speed(self.track, start=first, end=last, parts=self.parts)
        except FieldFileError as error:
            self.problem = str(error)
            names = ("line speed", "speed on the plan", "ridden length", "vertical rise")
            return dict.fromkeys(names, NOT_FROM_HERE)
        reading = self.reading
        return {
            f"line speed along {reading.along}": self._with_doubt(reading.speed, reading.speed_half_width_95),
            "speed on the plan": reading.plan_speed,
            f"ridden length along {reading.along}": self._with_doubt(
                reading.ridden_length, 2 * reading.ridden_length_uncertainty
            ),
            "vertical rise": "not in the track" if reading.vertical_rise is None else reading.vertical_rise,
        }

    def _with_doubt(self, value, doubt):
        unit = "ft" if value.check("[length]") else "mph"
        return show_with_doubt(value.to(unit), doubt.to(unit)) if self._us() else show_with_doubt(value, doubt)

    def _us(self):
        return self.state.system == "us"

    def note(self):
        """Say why a part gives nothing, or what else is to be known."""
        if self.problem:
            return self.problem
        wander = [sentence for sentence in self.reading.sentences if sentence.startswith("The errors of the fixes")]
        return " ".join(["Plus or minus at 95 %.", *self.track.notes[:3], *wander])

    def refresh(self):
        """Compute anew; the range slider follows the boxes."""
        if hasattr(self, "ends"):
            ends = tuple(self.given[name].m_as("s") for name in self.control_names)
            if ends[0] <= ends[1] and tuple(map(round, self.ends.value)) != tuple(map(round, ends)):
                self.ends.value = ends
        super().refresh()

    def _prepare(self):
        unit = "mph" if self._us() else "m/s"
        trace = read_track_speed(self.track, parts=self.parts) if self.parts else self.reading
        speeds = Q(trace.speeds, "m/s").m_as(unit) if trace else np.zeros(self.track.seconds.size)
        top = 1.35 * max(1.0, float(np.percentile(speeds, 98)))
        self.picture.chart.prepare(
            x_label="time since the first fix (s)",
            y_label=f"speed on the plan ({unit_word(unit)})",
            x_range=(0, self._last),
            y_range=(min(-0.3, 1.1 * float(np.min(speeds))), top),
            times=self.track.seconds,
            speeds=speeds,
        )

    def _move(self):
        unit = "mph" if self._us() else "m/s"
        speed = None if self.reading is None else self.reading.plan_speed.m_as(unit)
        main = self.text(self.result)
        self.picture.chart.move(
            title=f"{self.track.name}: {main}",
            start=self.given["steady_from"].m_as("s"),
            end=self.given["steady_to"].m_as("s"),
            level=speed,
            text="steady part" if self.reading else NOT_FROM_HERE,
        )


_FROM_REST = own_formula(
    lambda line_speed, ride_time, pick_up: line_speed * ride_time - line_speed**2 / (2 * pick_up),
    returns="m", line_speed="m/s", ride_time="s", pick_up="m/s**2",
)  # fmt: skip


_AT_ONCE = own_formula(
    lambda line_speed, ride_time: line_speed * ride_time, returns="m", line_speed="m/s", ride_time="s"
)
CLICKED = Q(4.2, "m")  # assumed: standard uncertainty of a map line from its two clicked ends


class LengthPanel(MethodsPanel):
    """One length by three ways: tape, map line with rise, line speed and ride time.

    Parameters
    ----------
    sheet : FieldSheet or None
        Readings with their plus-minus. The map line starts as long as whoever clicks on the two sheaves draws it, or
        where their distance was not read, as long as the ride. None takes the readings of the demo tow, and leaves the
        sliders where they are.
    **settings
        As for every panel.

    Raises
    ------
    PlainError
        If a reading that the three ways need was not read, or has no plus-minus.
    """

    title = "One length by three ways"
    control_names = ("map_length", "vertical_rise", "line_speed", "ride_time")
    names = ("tape, stopped lift", "map line and rise", "speed and ride time", "together")
    quantity = "length"
    axis_label = "length along the slope"

    def __init__(self, sheet=None, **settings):
        self._sheet = sheet or demo_sheet()
        self._kind = kind_named(self._sheet.kind or NOT_READ)
        start = ("pick_up_acceleration",) if self._kind.start_reading == "pick_up_acceleration" else ()
        self._taken = {name: self._reading(name) for name in (*_OF_A_LENGTH, *start)}
        length = self._sheet.mean("ridden_length")
        self.axis_ends = Q([round(part * length.m_as("m"), -1) for part in (2 / 3, 22 / 15)], "m")
        if sheet is not None:
            settings = self._starts() | settings
        super().__init__(**settings)

    def _reading(self, name):
        """Return the first reading of a quantity that says how far it may be off; refuse a sheet without one."""
        readings = [reading for reading in self._sheet.of(name) if reading.plus_minus]
        if not readings:
            lacks = "has no plus-minus" if self._sheet.has(name) else "was not read"
            raise PlainError(
                f"{type(self).__name__}: {words_of(name)} of {self._sheet.line} {lacks}. One length by three ways "
                f"needs {', '.join(map(words_of, _OF_A_LENGTH))}, each with its plus-minus."
            )
        return readings[0]

    def _starts(self):
        """Return the values of the sliders for a sheet: its means, and a map line from sheave to sheave."""
        mean = self._sheet.mean
        rise, length = mean("vertical_rise"), self._taken["ridden_length"].value
        longer = (mean("sheave_distance") / length).to("") if self._sheet.has("sheave_distance") else 1
        return {
            "map_length": map_length({"ridden_length": length, "vertical_rise": rise}) * longer,
            "vertical_rise": rise * longer,
            "line_speed": mean("line_speed"),
            "ride_time": mean("ride_time"),
        }

    def control(self, name):
        """Return one control; its range holds what the sheet has."""
        return reaching(super().control(name), self._starts()[name])

    def note(self):
        """Say what the comparison says, and what is assumed."""
        return f"{super().note()} Doubt of the map line: {self.text(CLICKED)} for its two ends, assumed."

    def _as_doubtful(self, name, given):
        """Return the value of a slider with the plus-minus that the sheet gives its quantity."""
        return estimate_from_half_width(given[name], self._taken[name].plus_minus)

    def compute(self, given):
        on_tape, on_map, in_time = self.names[:3]
        taped = self._taken["ridden_length"]
        clicked = Estimate(given["map_length"], CLICKED)
        along = by_first_order(
            slope_length, {"vertical_rise": self._as_doubtful("vertical_rise", given), "horizontal_run": clicked}
        )
        ride = {name: self._as_doubtful(name, given) for name in ("line_speed", "ride_time")}
        pick_up = self._taken.get("pick_up_acceleration")
        if pick_up:
            ride["pick_up"] = estimate_from_half_width(pick_up.value, pick_up.plus_minus, pick_up.method)
        timed = by_first_order(_FROM_REST if pick_up else _AT_ONCE, ride)
        self.compare(
            [
                estimate_from_half_width(taped.value, taped.plus_minus, on_tape),
                Estimate(along.value, along.standard_uncertainty, method=on_map),
                Estimate(timed.value, timed.standard_uncertainty, method=in_time),
            ]
        )
        return {
            "length, all three": self.expanded(self.combined.estimate).short,
            "do they agree": self.verdict,
            "map line and rise": self.expanded(self.methods[1]).short,
            "speed and ride time": self.expanded(self.methods[2]).short,
        }


_OF_A_LENGTH = ("ridden_length", "vertical_rise", "line_speed", "ride_time")
