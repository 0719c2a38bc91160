"""The panels of 09: every limit of a lift over its line speed, and which governs where readings are in doubt."""

from dataclasses import replace

import ipywidgets as widgets
import numpy as np

from liftcalc.figures.bars import BarChart
from liftcalc.figures.limits import LimitsChart
from liftcalc.formulas.grade import vertical_rise
from liftcalc.lifts.demo_hill import demo_hill
from liftcalc.lifts.governing import AN_UPPER_BOUND, NOT_ALL, envelope, governing, not_read
from liftcalc.lifts.kinds import kind_named, start_not_read
from liftcalc.lifts.limits_of_line import capacities_at, limits_at, limits_of_kind, where_possible
from liftcalc.lifts.readings import known_values
from liftcalc.lifts.shares import draws_of, shares_in
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.control_row import mark_in_row, row_of_buttons
from liftcalc.panels.controls import CONTROLS, reaching, speed_control
from liftcalc.panels.lift_panel import LiftPanel, slider_values
from liftcalc.panels.state import notebook_state
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q

POINTS = 61  # of each curve
DRAWS, SEED = 20_000, 2026
AXIS_TOPS_PPH = (600, 800, 1000, 1200, 1600, 2000, 2400, 3000, 4000, 6000)  # pph: where the upright axis may end
SAME_WITHIN_PPH = 0.5  # pph: nearer than this two limits are shown as equal
NO_READING = "no reading"
FULL_POWER, SAME_TORQUE = "full power at every speed", "constant torque"


class LimitsPanel(Panel):
    """Which limit governs a lift, and how far the next one is away.

    Parameters
    ----------
    hill : Hill or None
        Lifts, as ``read_hill`` returns them; a button for each line. The demo hill if left out.
    line : str or None
        Name of the line to begin with; the first if left out.
    **settings
        As for ``Panel``.

    Raises
    ------
    PlainError
        If there is no line of that name.
    """

    title = "What limits the lift"
    control_names = ("line_speed", "spacing", "loading_time", "clearing_time", "grade", "motor_power")
    note_lines, first_row = 4, 3

    def __init__(self, hill=None, line=None, **settings):
        self.hill = hill or demo_hill()
        if line is not None and line not in self.hill.lines:
            raise PlainError(f"LimitsPanel: no line {line!r}. Write one of {', '.join(self.hill.lines)}.")
        self._take(line or next(iter(self.hill.lines)))
        self._drive = FULL_POWER
        super().__init__(**{**self._settings(), **settings})

    def _take(self, name):
        """Take a line with its readings for the one that is looked at, and an axis that fits it."""
        self.line, readings = self.hill.line(name)
        self._values = known_values(self.line, readings)
        values, read = notebook_state().values, self._settings()
        self._unread = {control: values[control] for control in self.control_names if control not in read}
        self._end = self._end_of_axis()
        limits = sorted(capacity.m_as("pph") for capacity in capacities_at(self.line.kind, self._values).values())
        # the axes change with the lift, never with a slider
        high = 1.4 * limits[min(2, len(limits) - 1)]
        self._top = next((top for top in AXIS_TOPS_PPH if top >= high), AXIS_TOPS_PPH[-1])

    def _settings(self):
        """Return the values of the controls for this line; what it has no reading of stays where it is."""
        return slider_values(self.control_names, self._values)

    def control(self, name):
        """Return one control: the line speed goes as far as the axis, the grade shows what was measured."""
        if name == "line_speed":
            return speed_control(self._end)
        control = reaching(CONTROLS[name], self._settings().get(name))
        if name != "grade":
            return control
        return replace(control, metric=replace(control.metric, digits=2), us=replace(control.us, digits=2))

    def _end_of_axis(self):
        """Return the line speed [m/s] at which the chart ends: of the kind, or where riders never have the rope's."""
        end = max(kind_named(self.line.kind).end_of_axis, 1.25 * self.line.line_speed.m_as("m/s"))
        speeds = np.linspace(0, end, 61)[1:]
        fits = where_possible(self.line.kind, {**self._values, "line_speed": Q(speeds, "m/s")})
        return float(speeds[np.broadcast_to(fits, speeds.shape)].max())

    def make_picture(self):
        return ChartPicture(LimitsChart(), LimitsPanel._prepare, LimitsPanel._move)

    def more_controls(self):
        self._drives = widgets.ToggleButtons(
            options=[FULL_POWER, SAME_TORQUE], style={"button_width": "190px"}, layout=widgets.Layout(width="auto")
        )
        self._drives.observe(self._turned, "value")
        self._lines = row_of_buttons(self.hill.lines, self.choose)
        mark_in_row(self._lines, self.line.name)
        return [
            self._lines,
            widgets.HBox([widgets.Label("Drive:"), self._drives]),
        ]

    def choose(self, name):
        """Put the panel to one line of the hill with its readings.

        Parameters
        ----------
        name : str
            Name of the line.
        """
        self._take(name)
        mark_in_row(self._lines, name)
        self.start_anew(self._settings())

    def _turned(self, change):
        self._drive = change["new"]
        self.refresh()

    def _now(self, given):
        """Return all values of the line as the sliders have them; of what was not read, once its slider has moved."""
        moved = {name: value for name, value in given.items() if value != self._unread.get(name)}
        values = {**self._values, **moved}
        values["vertical_rise"] = vertical_rise(values["ridden_length"], values.pop("grade"))
        if self._drive == SAME_TORQUE:
            values["base_speed"] = self.line.line_speed
        return values

    def compute(self, given):
        limits = {limit.name: limit for limit in limits_at(self.line.kind, self._now(given))}
        self.found = governing(limits.values())
        first, following = self.found.limit, self.found.next_limit
        each = {name: getattr(limits[name], "capacity", NO_READING) for name in limits}
        return {
            "at most": self.found.capacity,
            "governs": first.name,
            "next": f"{following.name}, {self._ahead()}" if following else "none",
            **each,
        }

    def _stands_for_nothing(self, name):
        """Return whether a slider stands at its place for want of a reading, and was not moved since."""
        return name in self._unread and self.given[name] == self._unread[name]

    def setting(self, control_name):
        """Return where a control stands, as text; of what was not read it says so."""
        return "not read" if self._stands_for_nothing(control_name) else super().setting(control_name)

    def describe(self):
        """Return settings and results as one line of text, with the lift and its drive."""
        return super().describe().replace("Set: ", f"Set: lift {self.line.name}, {self._drive}, ", 1)

    def at_settings(self, control_name, values):
        """Return a table of the results at several values of one control; its caption names the lift."""
        table = super().at_settings(control_name, values)
        return replace(table, caption=f"{self.line.name}. {table.caption}")

    def _ahead(self):
        """Return how far the next limit is away, in words."""
        if self.found.ahead.m_as("pph") < SAME_WITHIN_PPH:
            return "at the same figure"
        share = f" ({show(self.found.ahead_share)})" if self.found.ahead_share is not None else ""
        return f"{show(self.found.ahead)}{share} above"

    def _next_in_short(self):
        following = self.found.next_limit
        return f"{following.name}, {show(following.capacity)}" if following else "none"

    def note(self):
        """Say where the limit governs, what the numbers rest on, and what they promise."""
        parts = [self._reach()]
        fixed = [f"riders of {self.text(self._values['rider_mass'])}"] if "rider_mass" in self._values else []
        fixed += self._places()
        if "drive_position" in self._values:
            fixed.append(f"drive at the {self._values['drive_position']}")
        if "starting_acceleration" in self._values:
            fixed.append(f"a start of {self.text(self._values['starting_acceleration'])} with riders on asked for")
        fixed.append(
            self._drive if self._drive == FULL_POWER else f"{SAME_TORQUE} below {self.text(self.line.line_speed)}"
        )
        unread = start_not_read(self.line.kind, self._values)
        parts.append(f"{self.line.name}: {', '.join(fixed)}{'; ' + unread if unread else ''}.")
        if self.found.left_out:
            parts.append(f"Left out for want of a reading, not zero: {not_read(self.found.left_out)}.")
        if any(map(self._stands_for_nothing, self._unread)):
            parts.append("A slider of what was not read counts once it is moved.")
        return " ".join([*parts, AN_UPPER_BOUND, NOT_ALL])

    def _places(self):
        """Return words for the places at both ends, read or taken as one."""
        words, unread = [], []
        for time, end in (("loading_time", "loading"), ("clearing_time", "unloading")):
            places = self._values.get(f"{end}_places")
            if places is not None:
                words.append(f"{show(places)} {end} place{'' if places.magnitude == 1 else 's'}")
            elif time in self._values:
                unread.append(end)
        return [*words, f"{' and '.join(unread)} places taken as 1: not read"] if unread else words

    def _curves(self):
        """Return line speeds, what each limit allows there, and the pieces of the smallest."""
        end = self._end
        speeds = Q(np.linspace(end / 400, end, POINTS), "m/s")
        allowed = capacities_at(self.line.kind, {**self._now(self.given), "line_speed": speeds})
        curves = {name: np.broadcast_to(allowed[name].m_as("pph"), POINTS) for name in allowed}
        return speeds, curves, envelope(self.number(speeds), curves)

    def _reach(self):
        """Say between which line speeds the limit governs that does so here."""
        *_, pieces = self._drawn
        speed, unit = self.number(self.given["line_speed"]), self.control("line_speed").scale(self.state.system).unit
        around = [number for number, (_, at, _) in enumerate(pieces) if at[0] <= speed <= at[-1]] or [len(pieces) - 1]
        own = next((number for number in around if pieces[number][0] == self.found.limit.name), around[0])
        name, at, _ = pieces[own]
        low, high = (self.text(Q(float(end), unit)) for end in (at[0], at[-1]))
        if len(pieces) == 1:
            return f"On these settings {name} governs at every line speed."
        if own == 0:
            return f"On these settings {name} governs up to {high}, then {pieces[1][0]}."
        before = f"below it {pieces[own - 1][0]}"
        if own == len(pieces) - 1:
            return f"On these settings {name} governs from {low} on, {before}."
        return f"On these settings {name} governs from {low} to {high}, {before}, above it {pieces[own + 1][0]}."

    def _prepare(self):
        end = Q(self._end, "m/s")
        self.picture.chart.prepare(
            x_label=f"line speed ({self.word('line_speed')})", x_range=(0, self.number(end)), y_range=(0, self._top)
        )

    def _move(self):
        self._drawn = speeds, curves, pieces = self._curves()
        following = self.found.next_limit
        self.picture.chart.move(
            title=f"{self.line.name}: {self.found.limit.name} governs, at most {show(self.result.value)}",
            speeds=self.number(speeds),
            curves=curves,
            pieces=pieces,
            dot=(self.number(self.given["line_speed"]), self.result.value.m_as("pph")),
            next_height=following.capacity.m_as("pph") if following else None,
            texts=(show(self.result.value), f"next: {self._next_in_short()}"),
        )


# control of a doubt: the readings whose half-width it sets
DOUBTS = {
    "spacing_doubt": ("spacing",),
    "loading_doubt": ("loading_time",),
    "friction_doubt": ("snow_friction", "sheave_drag_share", "bed_friction"),
    "mass_doubt": ("rider_mass",),
    "efficiency_doubt": ("efficiency",),
    "idle_doubt": ("idle_drag",),
}


class SharePanel(LiftPanel):
    """In what share of draws each limit of a line governs, where its readings are in doubt.

    Parameters
    ----------
    line, readings, **settings
        As for ``LiftPanel``.
    """

    title = "Which limit governs, with doubt in the readings"
    control_names = tuple(DOUBTS)

    def make_picture(self):
        return ChartPicture(BarChart(height=2.9, left=0.13), SharePanel._prepare, SharePanel._move)

    def _half_widths(self, given):
        """Return the half-width of each reading in doubt that this line has."""
        known, half_widths = self.known, {}
        for doubt, names in DOUBTS.items():
            for name in (name for name in names if name in known):
                in_points = name == "efficiency"
                half_widths[name] = given[doubt] if in_points else known[name] * given[doubt].m_as("")
        return half_widths

    def compute(self, given):
        self._drawn = self._half_widths(given)
        values, self._left_out = draws_of(self.line, self.readings, self._drawn, seed=SEED, draws=DRAWS)
        shares = shares_in(self.line.kind, values)
        self.shares = {entry.name: 100 * shares.get(entry.name, 0.0) for entry in limits_of_kind(self.line.kind)}
        return {name: f"{share:.0f} %" if name in shares else NO_READING for name, share in self.shares.items()}

    def note(self):
        """Say what was drawn, what was not, and how many draws were left out."""
        left_out = f" {self._left_out:,} draws left out: such as an efficiency over 1." if self._left_out else ""
        unread = [
            CONTROLS[doubt].label.lower().removeprefix("doubt of ")
            for doubt, names in DOUBTS.items()
            if not set(names) & set(self._drawn)
        ]
        idle = f" No doubt of {' or '.join(unread)}: not read on this line." if unread else ""
        return (
            f"{self.line.name}: {DRAWS:,} draws, seed {SEED}. Each reading is drawn evenly between its two ends, "
            f"the efficiency by points; all others are taken as exact.{idle}{left_out}"
        )

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="share of draws in which it governs (%)",
            x_range=(0, 100),
            names=[entry.name for entry in limits_of_kind(self.line.kind)],
            quantities=[entry.set_by for entry in limits_of_kind(self.line.kind)],
        )

    def _move(self):
        most = max(self.shares, key=self.shares.get)
        self.picture.chart.move(
            title=f"{self.line.name}: {most} governs in {self.shares[most]:.0f} % of the draws",
            lengths=[[share] for share in self.shares.values()],
            texts=list(self.results.values()),
        )
