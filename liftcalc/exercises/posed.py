"""An exercise put to one learner: its numbers, its text, its right answer."""

from functools import cached_property
from html import escape

from liftcalc.exercises.bank import BANK
from liftcalc.exercises.drawing import numbers_for, order_of_options
from liftcalc.exercises.exercise import ChoiceExercise
from liftcalc.quantity_text import show, unit_word
from liftcalc.units import PlainError

LETTERS = "abcdefgh"


def exercise_of(id, caller="exercise_of"):
    """Return the exercise of an id.

    Parameters
    ----------
    id : str
        Such as "2.3".
    caller : str
        Name of the call, for the message.

    Returns
    -------
    Exercise

    Raises
    ------
    PlainError
        If there is no such exercise.

    Examples
    --------
    >>> exercise_of("2.1").sort
    'compute'
    """
    if not isinstance(id, str) or id not in BANK:
        raise PlainError(f"{caller}: there is no exercise {id!r}. Write one of {', '.join(repr(key) for key in BANK)}.")
    return BANK[id]


class Posed:
    """One exercise with the numbers of one learner.

    Parameters
    ----------
    exercise : Exercise
        From the bank.
    key : str
        From ``learner_key``; empty for the printed set.
    """

    def __init__(self, exercise, key=""):
        self.exercise, self.key = exercise, key
        self.numbers = numbers_for(exercise, key)
        self._shown = {name: show(quantity) for name, quantity in vars(self.numbers).items()}

    def fill(self, text):
        """Return a text with this learner's numbers in its gaps."""
        return text.format(**self._shown)

    @property
    def text(self):
        """The question."""
        return self.fill(self.exercise.text)

    @property
    def is_choice(self):
        """Whether a statement is asked and not a number."""
        return isinstance(self.exercise, ChoiceExercise)

    @cached_property
    def options(self):
        """Option by its letter, in this learner's order."""
        return dict(zip(LETTERS, order_of_options(self.exercise, self.key), strict=False))

    @cached_property
    def statements(self):
        """Filled statement by its letter; none where a number is asked."""
        return {letter: self.fill(option.text) for letter, option in self.options.items()} if self.is_choice else {}

    @cached_property
    def right(self):
        """The right answer: a quantity in the unit asked, or a letter."""
        if self.is_choice:
            return next(letter for letter, option in self.options.items() if option.mistake is None)
        return self.exercise.right(self.numbers).to(self.exercise.unit)

    @cached_property
    def ends(self):
        """(Road, the number it leads to in the unit asked), for each road of an exercise that asks for a number."""
        exercise = self.exercise
        return [(road, float(road.answer(self.numbers).m_as(exercise.unit))) for road in exercise.roads]

    @property
    def asked(self):
        """What an answer is, in one sentence."""
        if self.is_choice:
            return f"one of the letters {', '.join(self.options)}"
        exercise, word = self.exercise, unit_word(self.exercise.unit)
        number = f"{exercise.within:,g} {word}".strip()
        return f"a number in {word}, right within {number}" if word else f"a number without unit, right within {number}"

    def __repr__(self):
        lines = [f"{self.exercise.id}  {self.text}"]
        lines += [f"  {letter}) {text}" for letter, text in self.statements.items()]
        return "\n".join([*lines, f"Answer: {self.asked}."])

    def question_html(self):
        """Return the question as HTML, without the statements of a choice."""
        return (
            f'<div style="max-width:46em;font-size:15px;line-height:1.45"><strong>{self.exercise.id}</strong> '
            f"{escape(self.text)}<div><em>Answer: {escape(self.asked)}.</em></div></div>"
        )

    def _repr_html_(self):
        rows = "".join(f"<div>{letter}) {escape(text)}</div>" for letter, text in self.statements.items())
        return self.question_html() + (
            f'<div style="margin:4px 0 4px 1.5em;font-size:15px">{rows}</div>' if rows else ""
        )
