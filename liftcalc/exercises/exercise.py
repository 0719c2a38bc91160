"""What an exercise is: a text with gaps, the numbers that fill them, the right answer, and the wrong roads to others.

An exercise asks for a number with its unit (``NumberExercise``) or for one of several statements
(``ChoiceExercise``). Its numbers come as a namespace of quantities, called ``n`` in the bank: ``n.line_speed``.
"""

import string
from collections.abc import Callable
from dataclasses import dataclass

from liftcalc.units import PlainError, Q

SORTS = {
    "compute": "work out a number",
    "backwards": "from the wish back to what it asks for",
    "mistake": "find the mistake in a printed figure",
    "judge": "decide, with a reason",
}


@dataclass(frozen=True)
class Drawn:
    """A given number: the printed one, and the grid from which a learner's own is drawn.

    Parameters
    ----------
    unit : str
        Unit of the number.
    printed : float
        Value of the printed set.
    low, high, step : float
        First and last value of the grid, and the distance between two values.
    """

    unit: str
    printed: float
    low: float
    high: float
    step: float

    def at(self, whole_number):
        """Return the value of the grid that a whole number of any size picks."""
        count = round((self.high - self.low) / self.step) + 1
        return Q(round(self.low + (whole_number % count) * self.step, 6), self.unit)


@dataclass(frozen=True)
class Mistake:
    """A wrong road that learners take: its name, and what to say to whoever took it."""

    name: str
    says: str


@dataclass(frozen=True)
class Road:
    """A mistake with the answer it leads to.

    Parameters
    ----------
    mistake : Mistake
        Its name and its words.
    answer : function
        From the numbers to the quantity that the mistake gives.
    close : bool
        True where the method was right all the same, as in rounding too early.
    drawn : bool
        False where answers are judged by the road, but no draw is thrown away for it.
    """

    mistake: Mistake
    answer: Callable
    close: bool = False
    drawn: bool = True  # a road added to an exercise that is in use is not drawn: learners keep their numbers


@dataclass(frozen=True)
class Option:
    """One statement to choose; ``mistake`` is None for the right one, ``says`` then tells why it is right."""

    text: str
    mistake: Mistake | None = None
    says: str = ""


@dataclass(frozen=True, kw_only=True)
class Exercise:
    """What every exercise has.

    Parameters
    ----------
    id : str
        Number of the notebook without its leading zero, a point, and the number of the exercise: "2.3".
    sort : str
        A key of ``SORTS``.
    text : str
        The question; gaps such as {spacing} name numbers.
    given : dict
        ``Drawn`` by name.
    figures : function or None
        From the given numbers to further ones by name, such as a figure printed with a mistake in it.
    clues : tuple of str
        Two or three, from the question back to the picture, to the formula, to the first step.
    steps : function
        From the numbers to the lines of the worked solution.

    Raises
    ------
    PlainError
        If a gap has no number, or the sort is not known.
    """

    id: str
    sort: str
    text: str
    given: dict
    clues: tuple
    steps: Callable
    figures: Callable | None = None

    def __post_init__(self):
        if self.sort not in SORTS:
            raise PlainError(f"Exercise {self.id}: sort must be one of {', '.join(SORTS)}, but got {self.sort!r}.")
        known = set(vars(self.numbers(lambda name: 0)))
        for text in self.texts():
            missing = {name for _, name, _, _ in string.Formatter().parse(text) if name} - known
            if missing:
                raise PlainError(f"Exercise {self.id}: no number for the gaps {sorted(missing)} of {text!r}.")

    def texts(self):
        """Return all texts that may hold gaps."""
        return [self.text]

    def numbers(self, pick):
        """Return the numbers, picked from their grids by a whole number for each name; None picks the printed set."""
        values = {
            name: Q(drawn.printed, drawn.unit) if pick is None else drawn.at(pick(name))
            for name, drawn in self.given.items()
        }
        numbers = Numbers(**values)
        return Numbers(**values, **self.figures(numbers)) if self.figures else numbers

    @property
    def notebook(self):
        """Number of the notebook, with two digits."""
        return f"{int(self.id.split('.')[0]):02d}"


class Numbers:
    """Quantities by name, as attributes."""

    def __init__(self, **values):
        self.__dict__.update(values)


@dataclass(frozen=True, kw_only=True)
class NumberExercise(Exercise):
    """An exercise whose answer is a number with a unit.

    Parameters
    ----------
    unit : str
        Unit in which the answer is asked; any unit of its kind is taken.
    within : float
        Tolerance in that unit.
    right : function
        From the numbers to the right answer, by the formulas of the package.
    roads : tuple of Road
        The wrong roads that give typical wrong answers.
    plus_minus : bool
        Whether a plus-minus is asked, so that its sign may stand before the answer.
    """

    unit: str
    within: float
    right: Callable
    roads: tuple
    plus_minus: bool = False


@dataclass(frozen=True, kw_only=True)
class ChoiceExercise(Exercise):
    """An exercise whose answer is one of several statements.

    Parameters
    ----------
    options : tuple of Option
        One of them right.

    Raises
    ------
    PlainError
        If not exactly one is right.
    """

    options: tuple

    def __post_init__(self):
        super().__post_init__()
        if sum(option.mistake is None for option in self.options) != 1:
            raise PlainError(f"Exercise {self.id}: exactly one option must be right.")

    def texts(self):
        parts = [(option.text, option.mistake.says if option.mistake else option.says) for option in self.options]
        return [self.text, *(text for pair in parts for text in pair)]
