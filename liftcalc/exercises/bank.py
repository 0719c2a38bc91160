"""The bank of questions: each has an id, a text with gaps, and the printed numbers that fill the gaps.

A question's text stands here and not in a notebook, so that a reader may be given other numbers.
"""

import string
from dataclasses import dataclass
from html import escape

from liftcalc.exercises.printed import PRINTED
from liftcalc.quantity_text import show


@dataclass(frozen=True)
class Question:
    """One exercise.

    Parameters
    ----------
    id : str
        Number of the notebook without its leading zero, a point, and the number of the exercise: "2.3".
    text : str
        The question; gaps such as {spacing} name the given quantities.
    given : dict
        Quantity by the name of its gap.
    asked : str
        What an answer is: its unit and how exact, or what to choose from.

    Raises
    ------
    ValueError
        If a gap has no quantity, or a quantity no gap.
    """

    id: str
    text: str
    given: dict
    asked: str

    def __post_init__(self):
        gaps = {name for _, name, _, _ in string.Formatter().parse(self.text) if name}
        if gaps != set(self.given):
            raise ValueError(f"Question {self.id}: the text has the gaps {sorted(gaps)}, but got {sorted(self.given)}.")

    def filled(self):
        """Return the text with its numbers."""
        return self.text.format(**{name: show(quantity) for name, quantity in self.given.items()})

    def __repr__(self):
        return f"{self.id}  {self.filled()}\nAnswer: {self.asked}"

    def _repr_html_(self):
        return (
            f'<p style="max-width:46em;font-size:15px;line-height:1.45"><strong>{self.id}</strong> '
            f"{escape(self.filled())}<br><em>Answer: {escape(self.asked)}</em></p>"
        )


BANK = {id: Question(id, *parts) for id, parts in PRINTED.items()}


def question(id):
    """Return one exercise, to be shown by its own cell.

    Parameters
    ----------
    id : str
        Such as "2.3".

    Returns
    -------
    Question
        The exercise with the numbers of the printed set.

    Raises
    ------
    ValueError
        If there is no such exercise.

    Examples
    --------
    >>> question("2.1").id
    '2.1'
    """
    if id not in BANK:
        raise ValueError(f"question: there is no exercise {id!r}. Write one of {', '.join(BANK)}.")
    return BANK[id]
