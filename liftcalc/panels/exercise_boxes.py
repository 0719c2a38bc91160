"""The boxes of the exercises: one to answer in, one to say whose numbers, one that shows the record.

Nobody must type code, or use a mouse: every part is reached by Tab, has a name of its own, and says in words what came.
"""

import asyncio
from html import escape

import ipywidgets as widgets

from liftcalc.cautions import ONE_LINE
from liftcalc.exercises import session
from liftcalc.panels.base import WIDTH, WithStill
from liftcalc.panels.control_row import CAN_BE_CHOSEN, CHOSEN
from liftcalc.panels.state import report_error

# units to choose from: the unit is part of the answer, so all are offered everywhere
UNITS = (
    "m",
    "ft",
    "s",
    "min",
    "m/s",
    "ft/s",
    "ft/min",
    "mph",
    "pph",
    "persons/min",
    "persons",
    "VTFH",
    "kW",
    "hp",
    "metric hp",
    "N",
    "kg",
    "kJ",
    "%",
    "degrees",
    "dollars",
    "dollars a season",
    "dollars a ride",
    "rides a season",
)
NO_UNIT = "no unit"
_CHOSEN = "\N{CHECK MARK} "
_STYLE = """<style>
.exercise-statement {height: auto; width: 100%; white-space: normal; text-align: left; line-height: 1.35;
  font-size: 15px; padding: 5px 10px; margin: 2px 0;}
.exercise-statement.chosen {font-weight: bold; border: 2px solid;}
.exercise-box button:focus, .exercise-box input:focus {outline: 2px solid; outline-offset: 1px;}
</style>"""


MOMENT = 0.2  # seconds: a page may send the Enter key before the last letters that were typed


def _in_a_moment(action):
    """Do something when what was typed has arrived; at once where no page is attached."""

    def act():
        try:
            action()
        except Exception:
            report_error()

    try:
        asyncio.get_running_loop().call_later(MOMENT, act)
    except RuntimeError:
        action()


def _button(words, name):
    """Return a button whose words name the exercise, so that no two on a page sound alike."""
    return widgets.Button(description=f"{words} {name}", layout=widgets.Layout(width="auto", min_width="90px"))


class AnswerBox(WithStill):
    """One exercise: its question, a place for the answer, and what comes back.

    Parameters
    ----------
    id : str
        Such as "2.3".

    Raises
    ------
    PlainError
        If there is no such exercise.
    """

    def __init__(self, id):
        self.id, self.session = id, session()
        self.posed = self.session.posed(id, "AnswerBox")
        self._question, self._reply = widgets.HTML(), widgets.HTML()
        self._place = self._choices() if self.posed.is_choice else self._number_and_unit()
        self.check = _button("Check", id)
        self.clue, self.worked = _button("Clue", id), _button("Solution", id)
        self.check.on_click(lambda _: _in_a_moment(self._answered))
        self.clue.on_click(lambda _: self._say(self.session.clue(self.id)._repr_html_()))
        self.worked.on_click(lambda _: self._say(self.session.worked(self.id)._repr_html_()))
        buttons = widgets.HBox([self.check, self.clue, self.worked])
        super().__init__(
            [self._question, self._place, buttons, self._reply],
            layout=widgets.Layout(width=WIDTH, max_width="100%", padding="4px 0 10px"),
        )
        self.add_class("exercise-box")
        self._learner = None
        self._show()
        self.session.listen(f"box {id}", self._show)

    def _number_and_unit(self):
        self.number = widgets.Text(
            description=f"Answer {self.id}",
            placeholder="number",
            layout=widgets.Layout(width="230px"),
            style={"description_width": "90px"},
        )
        self.number.on_msg(self._entered)
        # a menu that can also be typed into: JupyterLab takes the keys of a plain menu for commands of its own
        self.unit = widgets.Combobox(
            options=(*UNITS, NO_UNIT),
            description=f"Unit {self.id}",
            placeholder="choose or type",
            layout=widgets.Layout(width="230px"),
            style={"description_width": "70px"},
        )
        self.unit.on_msg(self._entered)
        return widgets.HBox([self.number, self.unit])

    def _choices(self):
        # buttons, not a group of radio marks: JupyterLab takes the arrow keys that such a group lives on
        self.chosen = None
        self.statements = {letter: widgets.Button() for letter in self.posed.statements}
        for letter, button in self.statements.items():
            button.add_class("exercise-statement")
            button.add_class(CAN_BE_CHOSEN)
            button.on_click(lambda _, letter=letter: self._choose(letter))
        return widgets.VBox(list(self.statements.values()))

    def _choose(self, letter):
        """Mark one statement as chosen; None marks none."""
        self.chosen = letter
        for each, button in self.statements.items():
            mark = _CHOSEN if each == letter else ""
            button.description = f"{mark}{each}) {self.posed.statements[each]}"
            (button.add_class if each == letter else button.remove_class)(CHOSEN)

    def _entered(self, _, content, __):
        """Check when the Enter key is pressed in the number."""
        if content.get("event") == "submit":
            _in_a_moment(self._answered)

    def _show(self):
        """Show the question with the learner's numbers; a new learner begins with an empty box."""
        if self._learner == self.session.name:
            return
        self._learner = self.session.name
        self.posed = self.session.posed(self.id)
        self._question.value = _STYLE + self.posed.question_html()
        if self.posed.is_choice:
            self._choose(None)
        else:
            self.number.value = self.unit.value = ""
        self._say("")

    def given(self):
        """Return the answer as it stands in the box: text with its unit, a letter, or nothing."""
        if self.posed.is_choice:
            return self.chosen
        number, unit = self.number.value.strip(), self.unit.value.strip()
        if not number or unit == NO_UNIT or any(mark.isalpha() for mark in number):
            return number  # a unit that was typed behind the number counts
        return f"{number} {unit}".strip()

    def _answered(self):
        self._say(self.session.answer(self.id, self.given())._repr_html_())

    def _say(self, html):
        self._reply.value = f"<div role='status'>{html}</div>"

    def words(self):
        """Return the question as plain text."""
        return repr(self.posed)

    def still(self):
        """Return the question as HTML."""
        return self.posed._repr_html_()


class LearnerBox(WithStill):
    """Whose numbers: any name or number gives the same numbers on any machine; none gives the printed ones.

    It stands above the exercises of a page, and says once for all of them who decides on a hill.
    """

    def __init__(self):
        self.session = session()
        self.name = widgets.Text(
            description="Your name or number",
            value=self.session.name,
            layout=widgets.Layout(width="380px"),
            style={"description_width": "150px"},
        )
        self.take = widgets.Button(description="Take my numbers", layout=widgets.Layout(width="auto"))
        self.take.on_click(lambda _: _in_a_moment(self._taken))
        self.name.on_msg(lambda _, content, __: content.get("event") == "submit" and _in_a_moment(self._taken))
        self._reply = widgets.HTML()
        caution = widgets.HTML(f"<div style='font-size:15px'>{escape(ONE_LINE)}</div>")
        super().__init__(
            [widgets.HBox([self.name, self.take]), self._reply, caution],
            layout=widgets.Layout(width=WIDTH, max_width="100%"),
        )
        self._say(self._whose())

    def _taken(self):
        try:
            self.session.start(self.name.value)
        except ValueError as error:
            self._say(f"{error} {self._whose()}")
        else:
            self._say(self._whose())

    def _say(self, words):
        self._reply.value = f"<div role='status' style='font-size:15px'>{escape(words)}</div>"

    def _whose(self):
        return f"{self.session.whose.removesuffix('.')}. Answers are {self.session.place.where}, and sent nowhere."

    def words(self):
        """Return whose numbers these are, where answers are kept, and who decides on a hill."""
        return f"{self._whose()} {ONE_LINE}"

    def still(self):
        """Return the same as HTML."""
        return f"<div style='font-size:15px'>{escape(self.words())}</div>"


class RecordBox(WithStill):
    """What is done on this page, following every answer.

    Parameters
    ----------
    notebook : str
        Number of the notebook, such as "02".
    """

    def __init__(self, notebook):
        self.session, self.notebook = session(), notebook
        self._table = widgets.HTML()
        super().__init__([self._table], layout=widgets.Layout(width=WIDTH, max_width="100%"))
        self._show()
        self.session.listen(f"record {notebook}", self._show)

    def _show(self):
        self._table.value = self.still()

    def words(self):
        """Return the record as plain text."""
        table = self.session.table(self.notebook)
        return repr(table) if table.rows else f"{table.caption}."

    def still(self):
        """Return the record as HTML."""
        table = self.session.table(self.notebook)
        return table._repr_html_() if table.rows else f"<div style='font-size:15px'>{escape(table.caption)}.</div>"
