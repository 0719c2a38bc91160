"""What all panels have in common: sliders with number boxes, a result in words, and a picture that follows."""

import base64
import time
from html import escape

import ipywidgets as widgets

from liftcalc.levels import Capacity
from liftcalc.panels.control_row import ControlRow, in_columns
from liftcalc.panels.controls import CONTROLS, SYSTEMS, in_system, number_in
from liftcalc.panels.state import notebook_state
from liftcalc.quantity_text import as_received, show, unit_word
from liftcalc.tables import FoldedTable, Table
from liftcalc.units import PlainError, Q, UnitError, is_like

WIDTH = "var(--panel-width, 740px)"  # a page may have more room for panels, or less
OURS = "liftcalc"  # class by which pages know what is of this series
ONE_MOVE = 1.0  # seconds: steps of a slider that follow sooner are one move


def still_picture(words, address):
    """Return a still picture as HTML, with its words as alt text; the address holds all of it."""
    return f'<figure style="margin:0"><img alt="{escape(words)}" src="{address}"></figure>'


class WithStill(widgets.VBox):
    """Widgets with a still form in their place wherever widgets do not run: before a run, in print, on a handout."""

    def __init__(self, children=(), **settings):
        super().__init__(children, **settings)
        self.add_class(OURS)

    def still(self):
        """Return the still form as HTML."""
        raise NotImplementedError

    def words(self):
        """Return the same as plain text."""
        raise NotImplementedError

    def _repr_mimebundle_(self, **options):
        bundle = super()._repr_mimebundle_(**options)
        if isinstance(bundle, tuple):
            bundle = bundle[0]
        bundle["text/html"], bundle["text/plain"] = self.still(), self.words()
        return bundle


class Panel(WithStill):
    """Controls, one computation, one picture, and the same numbers in words.

    A subclass names its controls, computes from quantities to named results, and makes a picture.

    Parameters
    ----------
    system : str or None
        "us" or "metric" turns the whole notebook; None leaves it as it is.
    name : str or None
        Tells two panels of one class apart; a panel that is made again under its name takes the place of the older.
    **values : Quantity
        Starting values, by the names of the panel's controls.

    Raises
    ------
    TypeError
        If a value is named that is no control of this panel.
    UnitError
        If a value has no unit, or one of another kind.
    PlainError
        If a value is outside the range of its slider.
    """

    title = ""
    control_names = ()
    note_lines = 0  # lines kept free for the note, so that the picture below stands still
    drawn_each = "rider"  # what a picture of the line draws as one rider
    first_row = 0  # results that have a row of their own; 0 lets them flow
    leaves_trace = False  # whether its chart shows, dotted, how it stood before a move
    guess_on = None  # where a guess is drawn on its chart: ("across" or "up", unit of the axis)

    def __init__(self, *, system=None, name=None, **values):
        self.state = self.make_state()
        self.name = name or type(self).__name__
        for control_name, value in values.items():
            self._start(control_name, value)
        if system is not None:
            self.state.use_units(system)
        self.results = {}
        self._complaint = ""
        self.rows = [ControlRow(self.control(control_name), self) for control_name in self.control_names]
        self._units = widgets.ToggleButtons(
            options=[(words, key) for key, words in SYSTEMS.items()],
            value=self.state.system,
            style={"button_width": "110px"},
            layout=widgets.Layout(width="auto"),
        )
        self._units.observe(lambda change: self.state.use_units(change["new"]), "value")
        self.picture = self.make_picture()
        heading = widgets.HTML(f"<strong style='font-size:15px'>{escape(self.title)}</strong>")
        top = widgets.HBox(
            [heading, self._units], layout=widgets.Layout(justify_content="space-between", align_items="center")
        )
        super().__init__(
            [top, *in_columns(self.rows), *self.more_controls(), self.picture.widget],
            layout=widgets.Layout(width=WIDTH, max_width="100%", padding="6px 0 10px"),
        )
        self.picture.use_units(self)
        self.refresh()
        self.state.join(self)

    # what a subclass gives

    def make_state(self):
        """Return the state that holds the values of this panel: the one of the notebook."""
        return notebook_state()

    def compute(self, given):
        """Return the named results, the panel's main one first, from the values of its controls."""
        raise NotImplementedError

    def make_picture(self):
        """Return the picture of this panel."""
        raise NotImplementedError

    def control(self, name):
        """Return one control of this panel; a panel may give it a range of its own."""
        return CONTROLS[name]

    def more_controls(self):
        """Return widgets that stand below the sliders."""
        return []

    def note(self):
        """Return a sentence that stands below the results; empty for none."""
        return ""

    def slope(self):
        """Return the grade on which a picture draws its riders, and the words for it."""
        grade = self.state.values["grade"]
        return grade, f"a slope of {show(grade)}"

    def guess_place(self, guess):
        """Return where on the chart a guess is drawn: across and up, one of which may be None."""
        way, unit = self.guess_on
        return (guess.m_as(unit), None) if way == "across" else (None, guess.m_as(unit))

    # what every panel does

    def show_guess(self, guess):
        """Draw the reader's guess into the picture, where it stays."""
        self.picture.show_guess(self, *self.guess_place(guess))

    def _start(self, control_name, value):
        if control_name not in self.control_names:
            raise TypeError(
                f"{type(self).__name__}: {control_name!r} is no control of this panel. "
                f"Write one of {', '.join(self.control_names)}."
            )
        control = self.control(control_name)
        scale = control.metric
        if not hasattr(value, "units") or not is_like(value.units, Q(1, scale.unit).units):
            raise UnitError(
                f"{type(self).__name__}: {control_name} must be a quantity in a unit such as {scale.unit!r}, but got "
                f"{as_received(value)}. Write Q({control.start.magnitude:g}, {str(scale.unit)!r})."
            )
        number = value.m_as(scale.unit)
        if not scale.low <= number <= scale.high:
            raise PlainError(
                f"{type(self).__name__}: {control_name} must lie from {scale.low:,.10g} to {scale.high:,.10g} "
                f"{scale.unit}, but got {number:,.10g} {scale.unit}."
            )
        self.state.set(control_name, value.to(scale.unit))

    @property
    def given(self):
        """Values of this panel's controls, by name."""
        return {name: self.state.values[name] for name in self.control_names}

    @property
    def result(self):
        """The main result."""
        return next(iter(self.results.values()))

    def refresh(self):
        """Compute anew and put words and picture in step."""
        self._complaint = ""
        self.results = self.compute(self.given)
        self.picture.move(self)

    def follow(self):
        """Take on what another panel has changed."""
        for row in self.rows:
            row.show()
        self.refresh()

    def use_units(self):
        """Take on the system of units of the notebook."""
        self._units.value = self.state.system
        for row in self.rows:
            row.use_units()
        self.picture.use_units(self)
        self.refresh()

    def start_anew(self, settings):
        """Take other settings, with the ranges that the controls have for them."""
        for row in self.rows:
            row.control = self.control(row.control.name)
        self.state.values.update(settings)
        self.use_units()
        self.state.let_others_follow(settings, self)

    def complain(self, message):
        """Say what was wrong with an entry; the last good numbers stay."""
        self._complaint = message
        self.picture.say(self.status())

    def text(self, value):
        """Return a value as text in the units of the notebook."""
        return in_system(value, self.state.system)

    def number(self, quantity):
        """Return the plain number of a quantity, or of several, in the units of the notebook."""
        return number_in(quantity, self.state.system)

    def setting(self, control_name):
        """Return where a control stands, as text."""
        return self.text(self.state.values[control_name])

    def word(self, control_name):
        """Return the word for the unit of a control, in the system of the notebook."""
        return unit_word(CONTROLS[control_name].scale(self.state.system).unit)

    def range_of(self, control_name):
        """Return both ends of a control's slider, as quantities that one system of units shows."""
        scale = self.control(control_name).scale(self.state.system)
        return Q(scale.low, scale.unit), Q(scale.high, scale.unit)

    def describe(self):
        """Return one line of text with the settings and all results."""
        given = ", ".join(f"{CONTROLS[name].label.lower()} {self.setting(name)}" for name in self.control_names)
        results = "; ".join(f"{name} {self.text(value)}" for name, value in self.results.items())
        return f"{self.title}. Set: {given}. Result: {results}."

    def status(self):
        """Return the results, and what was wrong with an entry, as a piece of HTML."""
        cards = [
            "<div class='one-result' style='padding:0 18px 2px 0'><div style='font-size:12px;line-height:1.25'>"
            f"{escape(name)}</div><div style='font-size:18px;font-weight:bold;line-height:1.3'>"
            f"{escape(self.text(value))}</div></div>"
            for name, value in self.results.items()
        ]
        if self.first_row:
            cards.insert(self.first_row, "<div style='flex-basis:100%'></div>")
        complaint = (
            "<div class='was-refused' style='border-left:4px solid;padding:2px 8px;margin:4px 0;font-size:14px;"
            f"line-height:1.35'>{escape(self._complaint)}</div>"
            if self._complaint
            else ""
        )
        remarks = (value.remark for value in self.results.values() if isinstance(value, Capacity) and value.remark)
        said = " ".join([self.note(), *dict.fromkeys(remark.sentence for remark in remarks)]).strip()
        tall = f";min-height:{round(1.4 * 13 * self.note_lines)}px" if self.note_lines else ""
        note = f"<div style='font-size:13px;line-height:1.4{tall}'>{escape(said)}</div>" if said else ""
        return (
            f"<div role='status' class='result-{type(self).__name__}'>"
            f"<div style='display:flex;flex-wrap:wrap;margin:4px 0'>{''.join(cards)}</div>{note}{complaint}</div>"
        )

    def legend(self):
        """Return a table of this panel's controls, folded: range in both systems, and meaning."""
        rows = []
        for name in self.control_names:
            control = self.control(name)
            ranges = [
                f"{scale.low:,g} to {scale.high:,g} {unit_word(scale.unit)}".strip()
                for scale in (control.us, control.metric)
            ]
            rows.append((control.label, " or ".join(dict.fromkeys(ranges)), control.meaning))
        return FoldedTable("The controls of this panel", ("control", "range", "what it is"), rows)

    def at_settings(self, control_name, values):
        """Return a table of the results at several values of one control, the others as they stand.

        Parameters
        ----------
        control_name : str
            A control of this panel.
        values : list of Quantity
            Its settings.

        Returns
        -------
        Table
            One row a setting.
        """
        label = CONTROLS[control_name].label
        others = ", ".join(
            f"{CONTROLS[name].label.lower()} {self.setting(name)}"
            for name in self.control_names
            if name != control_name
        )
        rows = []
        for value in values:
            results = self.compute({**self.given, control_name: value})
            rows.append((self.text(value), *[self.text(result) for result in results.values()]))
        caption = f"{self.title}: {len(rows)} settings" + (f" at {others}" if others else "")
        return Table(caption, (label.lower(), *results), rows)

    def words(self):
        """Return settings and results as one line of text."""
        return self.describe()

    def still(self):
        """Return a still picture with the words as its alt text.

        It is an <img>: a freshly opened notebook drops SVG that stands in the page itself, until it is run.
        """
        return still_picture(self.words(), self.picture.still())


class ChartPicture:
    """A matplotlib chart in a panel: its still part as one picture, what moves lying over it.

    Parameters
    ----------
    chart : Chart
        The drawing.
    prepare, move : function
        Called with the panel: the first draws the still part, the second gives the moving artists their values.
    """

    def __init__(self, chart, prepare, move, clock=time.monotonic):
        self.chart, self._prepare, self._move = chart, prepare, move
        size = {"width": WIDTH, "max_width": "100%", "grid_area": "one", "margin": "0"}
        # words and drawing travel as one; the still part lies below the drawing, at the bottom of their common place
        self._background = widgets.HTML(layout=widgets.Layout(align_self="flex-end", **size))
        self.html = widgets.HTML(layout=widgets.Layout(**size))
        self.widget = widgets.GridBox(
            [self._background, self.html], layout=widgets.Layout(grid_template_areas="'one'", width="100%")
        )
        self._drawing = ""
        self._clock, self._moved, self._outlines = clock, None, ""

    def use_units(self, panel):
        """Draw the still part anew, in the units of the notebook."""
        self._prepare(panel)
        self._moved = None  # what stood on other axes leaves no trace on these
        picture = base64.b64encode(self.chart.background()).decode()
        self._background.value = (
            f'<img alt="{escape(self.chart.axes_in_words())}" src="data:image/png;base64,{picture}" '
            'style="display:block;width:100%;height:auto">'
        )

    def move(self, panel):
        """Put the chart in step with the panel's results."""
        self._move(panel)
        if panel.leaves_trace:
            self._remember()
        self._draw(panel)

    def _remember(self):
        """Let the setting before stay, dotted: the one that stood before the reader began to move."""
        now, outlines = self._clock(), self.chart.outlines()
        if self._moved is not None and outlines == self._outlines:
            return  # drawn again as it was, because another panel has moved
        if self._moved is not None and now - self._moved > ONE_MOVE:
            self.chart.show_before(self._outlines)
        self._moved, self._outlines = now, outlines

    def show_guess(self, panel, x, y):
        """Draw a guess into the picture, in which it stays."""
        self.chart.show_guess(x, y, "your guess")
        self._draw(panel)

    def _draw(self, panel):
        self._drawing = self.chart.svg(self.chart.title.get_text())
        self.say(panel.status())

    def say(self, words):
        """Show these words above the drawing as it stands."""
        self.html.value = words + self._drawing

    def still(self):
        """Return the picture as an address that holds all of it."""
        return "data:image/png;base64," + base64.b64encode(self.chart.picture()).decode()
