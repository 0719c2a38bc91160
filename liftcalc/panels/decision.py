"""A decision that commits: the reader chooses, may write down why, and then holds it against a model answer.

Whoever has decided, and said why, reads an answer otherwise than whoever has only waited for it. So the model answer
stays shut until something is chosen; it is no verdict, and no choice is called wrong.
"""

from html import escape

import ipywidgets as widgets

from liftcalc.panels.base import WIDTH, WithStill
from liftcalc.panels.control_row import CAN_BE_CHOSEN, mark_as_chosen
from liftcalc.panels.prediction import LOOK, check_is_one_of
from liftcalc.units import PlainError

OPEN = "Show a model answer"
KEPT = "What you write stays on this page: nothing is saved, sent or marked."


def _lines(lines):
    return "".join(f"<div style='{LOOK}'>{escape(line)}</div>" for line in lines)


class Decision(WithStill):
    """A question that somebody must decide, the choices as buttons, room for a reason, and a model answer.

    Parameters
    ----------
    question : str
        What is to be decided, in one or two sentences.
    choices : tuple of str
        Two to four of them.
    model_answer : list of str
        Its lines, which weigh the choices and call none of them wrong.

    Raises
    ------
    PlainError
        If there are fewer than two choices or more than four, or the model answer is empty.
    """

    def __init__(self, question, choices, model_answer):
        if not 2 <= len(choices) <= 4:
            raise PlainError(f"Decision: there must be two to four choices, but got {len(choices)}.")
        if not model_answer:
            raise PlainError("Decision: the model answer is empty. Give its lines.")
        self.question, self.choices, self.model_answer = question, tuple(choices), tuple(model_answer)
        self.chosen, self.is_open = None, False
        self._buttons = {choice: self._button(choice, lambda choice=choice: self.choose(choice)) for choice in choices}
        for button in self._buttons.values():
            button.add_class(CAN_BE_CHOSEN)
        self._why = widgets.Textarea(
            description="Why",
            placeholder="Your reasons, for yourself",
            rows=3,
            layout=widgets.Layout(width="100%", max_width="46em"),
            style={"description_width": "40px"},
        )
        self._open = self._button(OPEN, self.show_answer)
        self._reply = widgets.HTML()
        super().__init__(
            [
                widgets.HTML(f"<div style='{LOOK}'><strong>Decide.</strong> {escape(question)}</div>"),
                widgets.HBox(list(self._buttons.values()), layout=widgets.Layout(flex_flow="row wrap")),
                self._why,
                widgets.HTML(f"<div style='font-size:13px;line-height:1.4'>{KEPT}</div>"),
                self._open,
                self._reply,
            ],
            layout=widgets.Layout(width=WIDTH, max_width="100%", padding="4px 0 10px", overflow="visible"),
        )

    def _button(self, words, press):
        layout = widgets.Layout(width="auto", align_self="flex-start")
        button = widgets.Button(description=words, tooltip=words, layout=layout)
        button.on_click(lambda _: press())
        return button

    def choose(self, choice):
        """Take a choice for the reader's decision; it may be changed, also when the model answer is open.

        Parameters
        ----------
        choice : str
            One of the choices.
        """
        check_is_one_of("Decision", "choices", choice, self.choices)
        self.chosen = choice
        for words, button in self._buttons.items():
            mark_as_chosen(button, words == choice)
        self._say()

    def show_answer(self):
        """Open the model answer, if something is chosen; else say that this comes first."""
        self.is_open = self.chosen is not None
        self._say()

    @property
    def why(self):
        """What the reader has written."""
        return self._why.value

    @property
    def reply(self):
        """What the page says: what is chosen, what comes next, and the model answer where it is open."""
        if self.chosen is None:
            return ("Choose first: a model answer says more to whoever has decided.",)
        if self.is_open:
            return (f"You chose: {self.chosen}. A model answer:", *self.model_answer)
        return (f"You chose: {self.chosen}. Write why, if you like; then “{OPEN}”.",)

    def _say(self):
        self._reply.value = f"<div role='status'>{_lines(self.reply)}</div>"

    def still(self):
        items = "".join(f"<li>{escape(choice)}</li>" for choice in self.choices)
        return (
            f"<div style='{LOOK}'><strong>Decide.</strong> {escape(self.question)}</div><ul>{items}</ul>"
            f"<details><summary>A model answer</summary>{_lines(self.model_answer)}</details>"
        )

    def words(self):
        return "\n".join([f"Decide. {self.question}", *(f"- {choice}" for choice in self.choices)])
