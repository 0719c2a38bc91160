"""A prediction that commits: a question with a guess to make; what it asks about opens after the guess.

Whoever predicts first learns from what happens then, also from a wrong guess; whoever only watches does not. So what
stands below stays shut until a statement is chosen, a number is written, or "Show me" is pressed. The reply says why,
and the guess is drawn into the picture that opens.
"""

from html import escape

import ipywidgets as widgets

from liftcalc.panels.base import WIDTH, WithStill
from liftcalc.panels.control_row import CAN_BE_CHOSEN, mark_as_chosen
from liftcalc.quantity_text import as_received, read_number, show, unit_word
from liftcalc.units import PlainError, Q, is_like

SHOW = "Show me"
LOOK = "font-size:15px;line-height:1.4;max-width:46em;margin:2px 0 6px"


def check_is_one_of(who, what, one, among):
    """Refuse a statement, or a choice, that is not among those of a question."""
    if one not in among:
        raise PlainError(f"{who}: {one!r} is none of the {what}. Write one of {', '.join(among)}.")


class Guess(WithStill):
    """A question, a way to guess, a reply, and what opens after the guess.

    A subclass gives the controls of the guess, ``reply`` to it, ``answer`` for print, and ``asked`` as plain text.

    Parameters
    ----------
    question : str
        What is asked, in one or two sentences.
    controls : list of Widget
        What the reader guesses with.
    opens : widget or None
        What stays shut until then, such as a panel.
    """

    def __init__(self, question, controls, opens):
        self.question, self.behind, self.chosen = question, opens, None
        self._show = widgets.Button(
            description=SHOW, tooltip=SHOW, layout=widgets.Layout(width="auto", align_self="flex-start")
        )
        self._show.on_click(lambda _: self.choose(None))
        self._reply = widgets.HTML()
        self._opens = widgets.VBox(
            [opens] if opens is not None else [], layout=widgets.Layout(display="none", overflow="visible")
        )
        asked = widgets.HTML(f"<div style='{LOOK}'><strong>Predict.</strong> {escape(question)}</div>")
        super().__init__(
            [asked, *controls, self._show, self._reply, self._opens],
            layout=widgets.Layout(width=WIDTH, max_width="100%", padding="4px 0 10px", overflow="visible"),
        )

    @property
    def is_open(self):
        """Whether what the question asks about is to be seen."""
        return self._opens.layout.display != "none"

    def choose(self, guess):
        """Take a guess, or None for none, and open what it asks about.

        Parameters
        ----------
        guess : object
            What the subclass takes for one.
        """
        self.chosen = self.checked(guess) if guess is not None else None
        self._reply.value = f"<div role='status' style='{LOOK}'>{escape(self.reply)}</div>"
        marked = self.marked()
        if marked is not None and hasattr(self.behind, "show_guess"):
            self.behind.show_guess(marked)
        self._opens.layout.display = None

    def checked(self, guess):
        """Return a guess, or say what is wrong with it."""
        raise NotImplementedError

    def marked(self):
        """Return what is drawn of the guess; None for nothing."""
        return self.chosen

    @property
    def reply(self):
        """What the page says to the guess."""
        raise NotImplementedError

    def asked(self):
        """Return how one can guess, as lines of text."""
        raise NotImplementedError

    def answer(self):
        """Return what holds, and why."""
        raise NotImplementedError

    def still(self):
        behind = self.behind.still() if isinstance(self.behind, WithStill) else ""
        items = "".join(f"<li>{escape(line)}</li>" for line in self.asked())
        return (
            f"<div style='{LOOK}'><strong>Predict.</strong> {escape(self.question)}</div><ul>{items}</ul>"
            f"<details><summary>What happens, and why</summary>{escape(self.answer())}{behind}</details>"
        )

    def words(self):
        lines = [f"Predict. {self.question}", *(f"- {line}" for line in self.asked())]
        return "\n".join([*lines, *([self.behind.words()] if isinstance(self.behind, WithStill) else [])])


class Prediction(Guess):
    """A question with two to four statements as buttons.

    Parameters
    ----------
    question : str
        What is asked, in one or two sentences.
    statements : dict of str to str
        Each statement, with the words that say why it is so, or why not.
    right : str
        The statement that holds.
    opens : widget or None
        What stays shut until the reader has chosen, such as a panel.
    marks : dict of str to object, or None
        Of each statement, what the panel draws of it into its picture, as its ``guess_place`` takes it.

    Raises
    ------
    PlainError
        If there are fewer than two statements or more than four, or the right one or one that is marked is none of
        them.
    """

    def __init__(self, question, statements, right, opens=None, marks=None):
        if not 2 <= len(statements) <= 4:
            raise PlainError(f"Prediction: there must be two to four statements, but got {len(statements)}.")
        for statement in (right, *(marks or ())):
            check_is_one_of("Prediction", "statements", statement, statements)
        self.statements, self.right, self._marks = dict(statements), right, marks or {}
        self._buttons = {statement: self._button(statement) for statement in statements}
        super().__init__(question, list(self._buttons.values()), opens)

    def _button(self, statement):
        layout = widgets.Layout(width="auto", align_self="stretch")
        button = widgets.Button(description=statement, tooltip=statement, layout=layout)
        button.add_class(CAN_BE_CHOSEN)
        button.on_click(lambda _: self.choose(statement))
        return button

    def checked(self, guess):
        check_is_one_of("Prediction", "statements", guess, self.statements)
        return guess

    def choose(self, guess):
        super().choose(guess)
        for words, button in self._buttons.items():
            mark_as_chosen(button, words == self.chosen)

    def marked(self):
        return self._marks.get(self.chosen)

    @property
    def reply(self):
        if self.chosen is None:
            return self.answer()
        if self.chosen == self.right:
            return f"That is so. {self.statements[self.chosen]}"
        return f"Not so: {self.statements[self.chosen]} {self.answer()}"

    def asked(self):
        return list(self.statements)

    def answer(self):
        return f"{self.right}: {self.statements[self.right]}"


class NumberPrediction(Guess):
    """A question whose guess is a number.

    Parameters
    ----------
    question : str
        What is asked, in one or two sentences.
    right : Quantity or function
        What holds, or a function without arguments that returns it, where the page may come to speak of another lift.
    reasons : dict of str to str
        Why a guess may have come out "lower", "near" or "higher": one text for each.
    opens : widget or None
        What stays shut until the reader has guessed, such as a panel.
    near : float
        Part of the right number within which a guess counts as near.
    most : Quantity
        Largest guess that is taken; its unit is that of the guess.

    Raises
    ------
    PlainError
        If a reason is missing, or a guess is negative, too large, or of another kind.
    """

    def __init__(self, question, right, reasons, opens=None, *, most, near=0.05):
        if set(reasons) != {"lower", "near", "higher"}:
            raise PlainError(f"NumberPrediction: reasons must be lower, near and higher, but got {', '.join(reasons)}.")
        self._right, self.reasons, self._most, self._near = right, dict(reasons), most, near
        word = unit_word(most.units)
        self.box = widgets.Text(
            description=f"Your guess ({word})", placeholder="a number", continuous_update=False,
            layout=widgets.Layout(width="240px"), style={"description_width": "auto"},
        )  # fmt: skip
        self.button = widgets.Button(description="Take my guess", tooltip="Take my guess", layout={"width": "auto"})
        self.button.on_click(lambda _: self._take())
        super().__init__(question, [widgets.HBox([self.box, self.button])], opens)

    @property
    def right(self):
        """What holds."""
        return (self._right() if callable(self._right) else self._right).to(self._most.units)

    def _take(self):
        try:
            self.choose(self._written())
        except PlainError as error:
            self._reply.value = f"<div role='status' style='{LOOK}'>{escape(str(error))}</div>"

    def _written(self):
        return Q(read_number(self.box.value or "nothing"), self._most.units)

    def checked(self, guess):
        if not hasattr(guess, "units") or not is_like(guess.units, self._most.units):
            raise PlainError(
                f"Prediction: a guess must be in {unit_word(self._most.units)}, but got {as_received(guess)}."
            )
        if not 0 <= guess <= self._most:
            raise PlainError(f"A guess must lie from 0 to {show(self._most)}, but got {show(guess)}.")
        return guess.to(self._most.units)

    @property
    def reply(self):
        if self.chosen is None or not self._is_known():
            return self.answer()
        off = (self.chosen / self.right).m_as("") - 1
        how = "near" if abs(off) <= self._near else "higher" if off > 0 else "lower"
        apart = "" if how == "near" else f", {abs(100 * off):.0f} % {how}"
        return f"You said {show(self.chosen)}{apart}. {self.answer()} {self.reasons[how]}"

    def asked(self):
        return [f"a number, in {unit_word(self._most.units)}"]

    def answer(self):
        try:
            return f"It is {show(self.right)}."
        except PlainError as error:  # what the page speaks of now lacks it
            return str(error)

    def _is_known(self):
        try:
            return self.right is not None
        except PlainError:
            return False
