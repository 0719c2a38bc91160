"""A prediction that commits: a question with a few statements as buttons; what it asks about opens after the choice.

Whoever predicts first learns from what happens then, also from a wrong guess; whoever only watches does not. So the
panel below stays shut until a statement is chosen, or "Show me" is pressed, and the reply says why, for each statement.
"""

from html import escape

import ipywidgets as widgets

from liftcalc.panels.base import WIDTH, WithStill
from liftcalc.units import PlainError

SHOW = "Show me"
_LOOK = "font-size:15px;line-height:1.4;max-width:46em;margin:2px 0 6px"


def _check_is_one_of(statement, statements):
    """Refuse a statement that is not among those of a question."""
    if statement not in statements:
        raise PlainError(f"Prediction: {statement!r} is none of the statements. Write one of {', '.join(statements)}.")


class Prediction(WithStill):
    """A question, two to four statements to choose from, and what opens after the choice.

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

    Raises
    ------
    PlainError
        If there are fewer than two statements or more than four, or the right one is none of them.
    """

    def __init__(self, question, statements, right, opens=None):
        if not 2 <= len(statements) <= 4:
            raise PlainError(f"Prediction: there must be two to four statements, but got {len(statements)}.")
        _check_is_one_of(right, statements)
        self.question, self.statements, self.right, self.chosen = question, dict(statements), right, None
        self.behind = opens
        self._buttons = {statement: self._button(statement) for statement in (*statements, SHOW)}
        self._reply = widgets.HTML()
        self._opens = widgets.VBox(
            [opens] if opens is not None else [], layout=widgets.Layout(display="none", overflow="visible")
        )
        super().__init__(
            [
                widgets.HTML(f"<div style='{_LOOK}'><strong>Predict.</strong> {escape(question)}</div>"),
                *self._buttons.values(),
                self._reply,
                self._opens,
            ],
            layout=widgets.Layout(width=WIDTH, max_width="100%", padding="4px 0 10px", overflow="visible"),
        )

    def _button(self, statement):
        layout = widgets.Layout(width="auto", align_self="flex-start" if statement == SHOW else "stretch")
        button = widgets.Button(description=statement, tooltip=statement, layout=layout)
        button.on_click(lambda _: self.choose(None if statement == SHOW else statement))
        return button

    @property
    def is_open(self):
        """Whether what the question asks about is to be seen."""
        return self._opens.layout.display != "none"

    def choose(self, statement):
        """Take a statement for the reader's guess, or None for none, and open what it asks about.

        Parameters
        ----------
        statement : str or None
            One of the statements.
        """
        if statement is not None:
            _check_is_one_of(statement, self.statements)
        self.chosen = statement
        for words, button in self._buttons.items():
            button.style.font_weight = "bold" if words == statement else None
        self._reply.value = f"<div role='status' style='{_LOOK}'>{escape(self.reply)}</div>"
        self._opens.layout.display = None

    @property
    def reply(self):
        """What the page says to the guess: whether it holds, why, and what holds instead."""
        why = f"{self.right}: {self.statements[self.right]}"
        if self.chosen is None:
            return why
        if self.chosen == self.right:
            return f"That is so. {self.statements[self.chosen]}"
        return f"Not so: {self.statements[self.chosen]} {why}"

    def still(self):
        behind = self.behind.still() if isinstance(self.behind, WithStill) else ""
        items = "".join(f"<li>{escape(statement)}</li>" for statement in self.statements)
        return (
            f"<div style='{_LOOK}'><strong>Predict.</strong> {escape(self.question)}</div><ul>{items}</ul>"
            f"<details><summary>What happens, and why</summary>{escape(self.right)}: "
            f"{escape(self.statements[self.right])}{behind}</details>"
        )

    def words(self):
        asked = [f"Predict. {self.question}", *(f"- {statement}" for statement in self.statements)]
        return "\n".join([*asked, *([self.behind.words()] if isinstance(self.behind, WithStill) else [])])
