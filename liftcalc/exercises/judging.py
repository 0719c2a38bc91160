"""Judging an answer: right, close or off, and which wrong road was taken."""

from dataclasses import dataclass
from html import escape

from liftcalc.exercises.answers import AnswerError, read_answer
from liftcalc.exercises.drawing import CLOSE
from liftcalc.exercises.exercise import Mistake
from liftcalc.quantity_text import UNIT_SPELLINGS, show, unit_word
from liftcalc.units import Q, kind_of, ureg, with_article

# state: (its word on screen, line of its bar); no colour, so that it reads on any page
STATES = {
    "open": ("Open", "dotted"),
    "off": ("Off", "double"),
    "close": ("Close", "dashed"),
    "right": ("Right", "solid"),
}
OTHER_KIND = "another kind of quantity"
_DIGITS = 9  # to which a distance is rounded: what is one tolerance off but for the last bit is one tolerance off


def best_state(states):
    """Return the best of several states; "open" where there is none."""
    reached = set(states)
    return next((state for state in ("right", "close", "off") if state in reached), "open")


@dataclass(frozen=True)
class Reply:
    """What the learner is told about one answer.

    Parameters
    ----------
    id : str
        The exercise.
    state : str
        "open", "off", "close" or "right".
    says : str
        One or a few sentences.
    mistakes : tuple of str
        Names of the wrong roads that give this answer.
    value, unit : float and str, or a letter and "choice"
        The answer as it was understood; None and "" where nothing was judged.
    """

    id: str
    state: str
    says: str
    mistakes: tuple = ()
    value: float | str | None = None
    unit: str = ""

    @property
    def judged(self):
        """Whether there was an answer to judge."""
        return self.value is not None

    def __repr__(self):
        return f"{self.id} {STATES[self.state][0]}. {self.says}"

    def _repr_html_(self):
        word, line = STATES[self.state]
        return (
            f"<div style='border-left:6px {line};padding:2px 10px;margin:4px 0;font-size:15px;line-height:1.45;"
            f"max-width:46em'><strong>{word}.</strong> {escape(self.says)}</div>"
        )


def judge(posed, given):
    """Return the reply to an answer.

    Parameters
    ----------
    posed : Posed
        The exercise with the learner's numbers.
    given : Quantity, Capacity, str, number, None or ...
        The answer; blank and ``...`` leave the exercise open.

    Returns
    -------
    Reply
        It never raises for what a learner writes: what cannot be read leaves the exercise open and says what to write.
    """
    id = posed.exercise.id
    if (
        given is None
        or given is ...
        or (isinstance(given, str) and given.strip() in ("", "...", "\N{HORIZONTAL ELLIPSIS}"))
    ):
        return Reply(id, "open", f"No answer yet. Asked is {posed.asked}.")
    try:
        return (
            _judge_choice(posed, given)
            if posed.is_choice
            else _judge_number(posed, read_answer(given, posed.exercise.unit))
        )
    except AnswerError as error:
        return Reply(id, "open", f"Not judged: {error}")


def _judge_choice(posed, given):
    """Judge a letter, or a statement written out."""
    by_text = {text.casefold(): letter for letter, text in posed.statements.items()}
    word = given.strip().casefold()[:1000] if isinstance(given, str) else ""
    letter = by_text.get(word, word.rstrip(").") if len(word) <= 3 else "")
    if letter not in posed.options:
        shown = repr(given)[:40]
        raise AnswerError(f"{shown} is none of the statements. Write {posed.asked}, such as 'a'.")
    option = posed.options[letter]
    if option.mistake is None:
        return Reply(posed.exercise.id, "right", posed.fill(option.says), (), letter, "choice")
    says = f"{_named((option.mistake,))} {posed.fill(option.mistake.says)}"
    return Reply(posed.exercise.id, "off", says, (option.mistake.name,), letter, "choice")


def _judge_number(posed, answer):
    """Judge a quantity of any kind."""
    exercise, id = posed.exercise, posed.exercise.id
    asked = ureg.Unit(exercise.unit)
    if answer.dimensionality != asked.dimensionality:
        came, wanted = kind_of(answer) or "quantity of another kind", kind_of(asked)
        says = f"{show(answer)} is {with_article(came)}; asked is {with_article(wanted)}: {posed.asked}."
        return Reply(id, "off", says, (OTHER_KIND,), float(answer.magnitude), f"{answer.units:~C}")
    value, right = float(answer.m_as(asked)), float(posed.right.magnitude)
    understood = {"value": value, "unit": exercise.unit}
    distance = _apart(value, right, exercise.within)
    if distance <= 1:
        return Reply(
            id, "right", f"{show(answer)}, within {exercise.within:,g} {unit_word(asked)}".strip() + ".", **understood
        )
    taken = [road for road in exercise.roads if _within(value, road.answer(posed.numbers).m_as(asked), exercise.within)]
    if taken:
        state = "close" if all(road.close for road in taken) else "off"
        return Reply(
            id, state, _words_of(road.mistake for road in taken), tuple(r.mistake.name for r in taken), **understood
        )
    way = "too high" if value > right else "too low"
    if distance <= CLOSE:
        return Reply(
            id,
            "close",
            f"The road looks right; the number is a little {way}. Carry all digits, round once.",
            **understood,
        )
    slip = _slip_of_unit(value, right, exercise)
    if slip:
        return Reply(id, "off", _words_of([slip]), (slip.name,), **understood)
    return Reply(
        id, "off", f"{show(answer)} is {way}, and none of the usual mistakes gives it. A clue may help.", **understood
    )


def _apart(value, other, size):
    """Return how far two numbers are apart, counted in a size."""
    return round(abs(value - other) / size, _DIGITS)


def _within(value, other, within):
    return _apart(value, other, within) <= 1


def _named(mistakes):
    return " or ".join(f"“{mistake.name}”" for mistake in mistakes) + ":"


def _words_of(mistakes):
    """Return names and words of one mistake, or of several that give the same number."""
    mistakes = list(mistakes)
    return f"{_named(mistakes)} {' Or: '.join(mistake.says for mistake in mistakes)}"


def _slip_of_unit(value, right, exercise):
    """Return the slip by which a number is right in another unit, or with its point moved; None if there is none."""
    asked = ureg.Unit(exercise.unit)
    for unit in dict.fromkeys(UNIT_SPELLINGS.get(kind_of(asked), {}).values()):
        scale = Q(1, unit).m_as(asked)
        if ureg.Unit(unit) != asked and _within(value * scale, right, exercise.within) and value:
            word = unit_word(unit)
            return Mistake("unit beside the number", f"The number would be right in {word}. Which unit did you write?")
    for factor in (10, 100, 1000):
        if any(_within(value * scale, right, exercise.within) and value for scale in (factor, 1 / factor)):
            return Mistake(
                "point in the wrong place", f"The digits are right; the point is not. Look for a factor of {factor:,}."
            )
    return None
