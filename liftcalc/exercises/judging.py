"""Judging an answer: right, close or off, and which wrong road was taken."""

import functools
from dataclasses import dataclass
from html import escape

from liftcalc.exercises.answers import AnswerError, read_as_written
from liftcalc.exercises.drawing import CLOSE
from liftcalc.exercises.exercise import Mistake
from liftcalc.quantity_text import UNIT_SPELLINGS, unit_word
from liftcalc.units import Q, kind_of, parsed_unit, with_article

# state: (its word on screen, line of its bar); no colour, so that it reads on any page
STATES = {
    "open": ("Open", "dotted"),
    "off": ("Off", "double"),
    "close": ("Close", "dashed"),
    "right": ("Right", "solid"),
}
SHARE_OF_ROAD = 0.01  # an answer that near to where a wrong road leads counts as come along it
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
            else _judge_number(posed, read_as_written(given, posed.exercise.unit, posed.exercise.plus_minus))
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
    exercise, asked, quantity = posed.exercise, parsed_unit(posed.exercise.unit), answer.quantity
    if quantity.dimensionality != asked.dimensionality:
        came, wanted = kind_of(quantity) or "quantity of another kind", kind_of(asked)
        says = f"{answer.written} is {with_article(came)}; asked is {with_article(wanted)}: {posed.asked}."
        return Reply(exercise.id, "off", says, (OTHER_KIND,), float(quantity.magnitude), f"{quantity.units:~C}")
    value, right = float(quantity.m_as(asked)), float(posed.right.magnitude)
    half_digit = answer.half_digit * Q(1, quantity.units).m_as(asked)
    reply = functools.partial(Reply, exercise.id, value=value, unit=exercise.unit)
    distance = _apart(value, right, exercise.within)
    if distance <= 1:
        tolerance = f"{exercise.within:,g} {unit_word(asked)}".strip()
        return reply("right", f"{answer.written}, within {tolerance}.")
    taken = [road for road, end in posed.ends if _leads_to(value, end, half_digit, exercise.within)]
    slip = _slip_of_unit(value, right, half_digit, exercise)
    if taken:  # a slip of unit or of the point that gives the same number is named with it
        state = "close" if all(road.close for road in taken) and not slip else "off"
        return reply(state, *_words_and_names([*(road.mistake for road in taken), *slip]))
    way = "too high" if value > right else "too low"
    if distance <= CLOSE:
        return reply("close", f"The road looks right; the number is a little {way}. Carry all digits, round once.")
    if slip:
        return reply("off", *_words_and_names(slip))
    return reply("off", f"{answer.written} is {way}, and none of the usual mistakes gives it. A clue may help.")


def _apart(value, other, size):
    """Return how far two numbers are apart, counted in a size."""
    return round(abs(value - other) / size, _DIGITS)


def _leads_to(value, road, half_digit, within):
    """Return whether a number is where a road leads: as near as its digits allow, or within a hundredth of the road.

    The tolerance alone charged small numbers with mistakes that nobody had made; a road is never wider than it.
    """
    window = min(within, max(SHARE_OF_ROAD * abs(road), half_digit))
    return _apart(value, road, window) <= 1 if window else value == road


def _named(mistakes):
    return " or ".join(f"“{mistake.name}”" for mistake in mistakes) + ":"


def _words_and_names(mistakes):
    """Return the words of one mistake, or of several that give the same number, and their names."""
    says = f"{_named(mistakes)} {' Or: '.join(mistake.says for mistake in mistakes)}"
    return says, tuple(mistake.name for mistake in mistakes)


@functools.cache
def _slips(asked):
    """Return (scale, mistake) for the other units of a kind, and for a point moved by one to three places."""
    slips = []
    for unit in dict.fromkeys(parsed_unit(unit) for unit in UNIT_SPELLINGS.get(kind_of(asked), {}).values()):
        says = f"The number would be right in {unit_word(unit)}. Which unit did you write?"
        slips += [(Q(1, unit).m_as(asked), Mistake("unit beside the number", says))] if unit != asked else []
    for factor in (10, 100, 1000):
        says = f"The digits are right; the point is not. Look for a factor of {factor:,}."
        slips += [(scale, Mistake("point in the wrong place", says)) for scale in (factor, 1 / factor)]
    return slips


def _slip_of_unit(value, right, half_digit, exercise):
    """Return the slip by which a number is right in another unit, or with its point moved: one or none, as a list."""
    return [
        slip
        for scale, slip in _slips(parsed_unit(exercise.unit))
        if value and _leads_to(value * scale, right, half_digit * scale, exercise.within)
    ][:1]
