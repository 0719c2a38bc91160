"""One slider with its number box, and a row of buttons: the parts that panels put together."""

import time

import ipywidgets as widgets

from liftcalc.panels.controls import in_system
from liftcalc.quantity_text import unit_word
from liftcalc.units import Q

ECHO = 1.0  # seconds within which a page may still echo a value that it was sent before the last one
SAME_WITHIN = 1e-6


class ControlRow:
    """One slider and its number box, kept in step; the box carries the name for those who do not see the slider."""

    def __init__(self, control, panel):
        self.control, self.panel, self._quiet = control, panel, False
        self._shown = self._sent = None  # what box and slider were last set to
        self._before = {}  # what the slider, or an end of it, was set to before: until when the page may echo it
        self.box = widgets.FloatText(
            layout=widgets.Layout(width="305px"), style={"description_width": "200px"}, continuous_update=False
        )
        self.slider = widgets.FloatSlider(readout=False, layout=widgets.Layout(flex="1 1 auto", min_width="180px"))
        self.row = widgets.HBox([self.box, self.slider], layout=widgets.Layout(align_items="center", width="100%"))
        self.use_units()
        self.slider.observe(self._moved, "value")
        self.box.observe(self._typed, "value")

    def make_narrow(self):
        """Take half the width of a panel."""
        self.box.layout.width, self.box.style.description_width = "268px", "188px"
        self.slider.layout.min_width = "70px"

    @property
    def _state(self):
        return self.panel.state

    def use_units(self):
        """Take on the unit and the range of the system in force; a value outside it moves to the nearest end."""
        scale = self.control.scale(self._state.system)
        word = unit_word(scale.unit)
        counted = scale.unit in ("person", "")  # the name of such a control says what is counted
        self.box.description = self.control.label if counted else f"{self.control.label} ({word})"
        self.box.step = scale.step
        held = self._state.values[self.control.name]
        number = held.m_as(scale.unit)
        if not scale.low <= number <= scale.high:
            self._state.values[self.control.name] = Q(min(max(number, scale.low), scale.high), scale.unit)
        self._quiet = True
        if (self.slider.min, self.slider.max) != (scale.low, scale.high):  # the page may cut a value at any of these
            self._expect_echoes(self.slider.min, self.slider.max, scale.low, scale.high)
        with self.slider.hold_sync():
            self.slider.min = min(self.slider.min, scale.low)
            self.slider.max, self.slider.step = scale.high, scale.step
            self.slider.min = scale.low
            self.show()

    def show(self):
        """Set slider and box to the value that the notebook holds."""
        scale = self.control.scale(self._state.system)
        self._set(round(float(self._state.values[self.control.name].m_as(scale.unit)), scale.digits), scale)

    def _moved(self, change):
        scale = self.control.scale(self._state.system)
        if not self._quiet and self._late_echo(change["new"]):
            self.show()
            return
        number = round(change["new"], scale.digits)
        if not self._quiet and number != self._sent:  # a page echoes what it was sent, but for rounding
            # the slider is left alone: it may be further on already, and must not be pulled back
            self._state.set(self.control.name, Q(number, scale.unit), self.panel)
            self._shown, self._sent, self._quiet = number, number, True
            self.box.value = number
            self._quiet = False

    def _expect_echoes(self, *numbers):
        """Note what the page may still send back by itself."""
        self._before |= {number: time.monotonic() + ECHO for number in numbers if number is not None}

    def _late_echo(self, value):
        """Return whether the page only sends back what was set before the last value: nobody moved the slider.

        It sends back each value that a slider was set to, with noise in the last digit, and cuts a new value at the end
        of the old range. After two buttons pressed quickly the echo of the first comes behind the second.
        """
        now = time.monotonic()
        self._before = {number: until for number, until in self._before.items() if until > now}
        return (
            any(abs(value - number) < SAME_WITHIN for number in self._before) and abs(value - self._sent) > SAME_WITHIN
        )

    def _typed(self, change):
        scale = self.control.scale(self._state.system)
        number = change["new"]
        if self._quiet or number == self._shown:
            return
        if not scale.low <= number <= scale.high:  # also true for nan
            word = unit_word(scale.unit)
            came = f"{number:,.10g} {word}".strip() if abs(number) < 1e10 else "what was entered"  # also for nan
            most = f"{scale.high:,.10g} {word}".strip()
            held = in_system(self._state.values[self.control.name], self._state.system)
            self.show()
            self.panel.complain(
                f"{self.control.label}: {came} is outside the range of this panel. Write a number from "
                f"{scale.low:,.10g} to {most}; {held} stays."
            )
        else:
            self._state.set(self.control.name, Q(number, scale.unit), self.panel)
            self._set(number, scale)

    def _set(self, number, scale):
        """Set both without being called back; the slider takes the nearest of its steps, the box the number itself."""
        steps = round((number - scale.low) / scale.step)
        self._shown, self._quiet = number, True
        self._expect_echoes(self._sent)
        self._sent = round(min(scale.low + steps * scale.step, scale.high), scale.digits)
        self.slider.value, self.box.value = self._sent, number
        self._quiet = False


ONE_BELOW_ANOTHER = 3  # rows; more of them stand in two columns, so that a panel fits on one screen
_COLUMNS = {"grid_template_columns": "repeat(auto-fit, minmax(340px, 1fr))", "grid_gap": "0 14px", "width": "100%"}


def in_columns(rows):
    """Return the widgets of some control rows: one below another, or in two columns where there are many."""
    if len(rows) <= ONE_BELOW_ANOTHER:
        return [row.row for row in rows]
    for row in rows:
        row.make_narrow()
    return [widgets.GridBox([row.row for row in rows], layout=widgets.Layout(**_COLUMNS))]


CAN_BE_CHOSEN, CHOSEN = "can-be-chosen", "chosen"  # classes of a button, by which a page says how it stands


def mark_as_chosen(button, chosen):
    """Show by bold letters, and to those who hear the page, whether a button is the one that was chosen."""
    button.style.font_weight = "bold" if chosen else None
    (button.add_class if chosen else button.remove_class)(CHOSEN)


def mark_in_row(row, name):
    """Mark the button of a name as the chosen one of its row, as ``row_of_buttons`` makes it."""
    for button in row.children if isinstance(row, widgets.HBox) else ():
        mark_as_chosen(button, button.description == name)


MOST_BUTTONS = 14  # in a row; more names are typed, or chosen from a list


def row_of_buttons(names, choose):
    """Return a row of buttons, one a name, each of which calls a function with its name; a box to type in for many."""
    if len(names) > MOST_BUTTONS:
        return _box_of_names(names, choose)
    buttons = []
    for name in names:
        button = widgets.Button(
            description=name, tooltip=f"Put the sliders to {name}", layout=widgets.Layout(width="auto")
        )
        button.add_class(CAN_BE_CHOSEN)
        button.on_click(lambda pressed: choose(pressed.description))
        buttons.append(button)
    return widgets.HBox(buttons, layout=widgets.Layout(flex_flow="row wrap"))


def _box_of_names(names, choose):
    """Return a box in which one of many names is typed or chosen; other words do nothing."""
    box = widgets.Combobox(
        options=tuple(names), description="Line", placeholder=f"type or choose one of {len(names)} lines",
        layout=widgets.Layout(width="420px", max_width="100%"), style={"description_width": "60px"},
    )  # fmt: skip

    def typed(change):
        if change["new"] in names:
            choose(change["new"])

    box.observe(typed, "value")
    return box
