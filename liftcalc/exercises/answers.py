"""Reading an answer: the number by one strict pattern, the unit by a table. Nothing is ever evaluated."""

import difflib
import re
from dataclasses import dataclass
from decimal import Decimal

import numpy as np
from pint import Quantity

from liftcalc.levels import Capacity
from liftcalc.quantity_text import UNIT_SPELLINGS, cut, show, unit_word
from liftcalc.units import KINDS, PlainError, Q, kind_of, ureg

MOST_CHARACTERS = 120
_ANSWER = re.compile(
    r"[=~\N{ALMOST EQUAL TO}]?\s*(?P<number>[+\-]?[0-9.,'\s]*[0-9][.,]?)\s*(?P<unit>[^0-9].*)?\Z", re.DOTALL
)
_PLAIN = re.compile(r"[+-]?(?:[0-9]{1,12}(?:\.[0-9]{0,12})?|\.[0-9]{1,12})\Z")
_THOUSANDS = re.compile(
    r"[+-]?[1-9][0-9]{0,2}(?:(?P<mark>[, '])[0-9]{3})(?:(?P=mark)[0-9]{3}){0,3}(?:\.[0-9]{0,12})?\Z"
)
_COMMA = re.compile(r"(?P<head>[+-]?[0-9]{1,12}),(?P<tail>[0-9]{1,12})\Z")
_SPACES = re.compile(r"[\s\u00a0\u202f\u2009]+")
_ALL_SPELLINGS = {word: unit for spellings in UNIT_SPELLINGS.values() for word, unit in spellings.items()}
_CARRIERS = ("carrier", "carriers", "platter", "platters", "chair", "chairs", "cabin", "cabins", "lap", "laps")
_IN_A = re.compile(r"(?P<what>[a-z' ]{1,30}?) ?(?:/| per | an? | each | every ) ?(?P<time>[a-z]{1,10})\Z")


class AnswerError(PlainError):
    """An answer cannot be read; the message says what to write instead. It counts as no attempt."""


@dataclass(frozen=True)
class Answer:
    """An answer as it was read.

    Parameters
    ----------
    quantity : Quantity
        A finite scalar.
    half_digit : float
        Half a unit of the last digit that was written, in the quantity's own unit: so far the number may be rounded.
    written : str
        Number and unit as they were written.
    """

    quantity: Quantity
    half_digit: float
    written: str


def read_answer(given, unit):
    """Return an answer as a quantity.

    Parameters
    ----------
    given : Quantity, Capacity, str, int or float
        A quantity, or text such as "1,800 pph" or "2.3 s". A bare number is taken only where no unit is asked.
    unit : str
        Unit that is asked; it helps to read a unit word, and an answer of another kind is returned as well.

    Returns
    -------
    Quantity
        A finite scalar, of any kind.

    Raises
    ------
    AnswerError
        If it cannot be read, or can be read in two ways.

    Examples
    --------
    >>> from liftcalc import show
    >>> show(read_answer("1,800 people an hour", "pph"))
    '1,800 pph'
    """
    return read_as_written(given, unit).quantity


def read_as_written(given, unit):
    """Return an answer with what its writing tells beside the quantity; it takes and raises what ``read_answer`` does.

    Parameters
    ----------
    given : Quantity, Capacity, str, int or float
        The answer.
    unit : str
        Unit that is asked.

    Returns
    -------
    Answer

    Examples
    --------
    >>> read_as_written("2.60 m", "m").half_digit
    0.005
    """
    kind = kind_of(ureg.Unit(unit))
    if isinstance(given, Capacity):
        given = given.value
    if isinstance(given, Quantity):
        return _from_code(given)
    if isinstance(given, (int, float, np.number)) and not isinstance(given, bool):
        if kind != kind_of(ureg.Unit("")):
            raise AnswerError(
                f"{given!r} has no unit. Write for example {_advice(given, unit)}, or text such as {_example(kind)!r}."
            )
        return _from_code(Q(given, ""))
    if not isinstance(given, str):
        raise AnswerError(f"{cut(repr(given))} is no answer. Write a quantity, or text such as {_example(kind)!r}.")
    return _from_text(given, kind)


def _from_code(quantity):
    """Return a quantity as the answer; its last digit is the last one that Python prints."""
    number = quantity.magnitude
    try:
        finite = np.ndim(number) == 0 and np.isfinite(float(number))
    except (TypeError, ValueError, OverflowError):
        finite = False
    if not finite:
        raise AnswerError("one finite number is asked. Write one number with its unit.")
    digits = repr(number if type(number) is int else float(number))
    return Answer(quantity, _half_digit(digits), _in_full(quantity))


def _in_full(quantity):
    """Return a quantity from code in words, with the digits that were given."""
    number, word = f"{quantity.magnitude:,.10g}", unit_word(quantity.units)
    if number == "1" or "e" in number:  # one person, and no power of ten
        return show(quantity)
    return f"{number}{'' if word == '%' else ' '}{word}".strip()


def _half_digit(digits):
    """Return half a unit of the last of some digits, such as 0.005 for "2.60"."""
    return 0.5 * 10.0 ** Decimal(digits).as_tuple().exponent


def _from_text(text, kind):
    """Return the answer that a text holds."""
    if len(text) > MOST_CHARACTERS:
        raise AnswerError(
            f"the answer has {len(text):,} characters. Write one number and its unit, such as {_example(kind)!r}."
        )
    words = _SPACES.sub(" ", text.replace("\N{MINUS SIGN}", "-")).strip()
    found = _ANSWER.match(words)
    if not found:
        raise AnswerError(
            f"{cut(text)!r} holds no number that can be read. Write a number and its unit, such as {_example(kind)!r}."
        )
    number, unit = found["number"].strip(), (found["unit"] or "").strip().rstrip(".")
    digits = _digits(number, text)
    return Answer(Q(float(digits), _unit(unit, kind, number)), _half_digit(digits), f"{number} {unit}".strip())


def _digits(word, text):
    """Return the digits of a number, with a point and no thousands mark; two ways to read it are asked about."""
    if _PLAIN.match(word):
        return word
    if _THOUSANDS.match(word):
        return re.sub(r"[, ']", "", word)
    comma = _COMMA.match(word)
    if comma:
        raise AnswerError(
            f"{word!r} can be read in two ways. Write {comma['head']}.{comma['tail']} with a point for the "
            f"decimal number, "
            f"or {comma['head']}{comma['tail']} for the whole one."
        )
    raise AnswerError(f"{cut(word)!r} in {cut(text)!r} is no number. Write digits with at most one point, such as 3.4.")


def _unit(word, kind, number):
    """Return the unit that the rest of the text names."""
    word = word.casefold().strip().rstrip(".")
    if not word or word in _CARRIERS:
        if kind in (kind_of(ureg.Unit("")), None):
            return ""
        raise AnswerError(f"the unit is missing. Write the unit behind {cut(number)}, as in {_example(kind)!r}.")
    spellings = {**_ALL_SPELLINGS, **UNIT_SPELLINGS.get(kind, {})}
    if word in spellings:
        return spellings[word]
    parts = _IN_A.match(word) if len(word) <= 40 else None
    if parts and parts["what"] in _ALL_SPELLINGS and parts["time"] in UNIT_SPELLINGS["time"]:
        return f"{_ALL_SPELLINGS[parts['what']]}/{UNIT_SPELLINGS['time'][parts['time']]}"
    near = difflib.get_close_matches(word[:40], list(spellings), n=1)
    guess = f" Is {near[0]!r} meant?" if near else ""
    raise AnswerError(f"{cut(word)!r} is no unit known here. Write the unit as in {_example(kind)!r}.{guess}")


def _example(kind):
    """Return an answer of a kind, with a number that is nobody's."""
    if kind in (None, kind_of(ureg.Unit(""))):
        return "12"
    word = next(iter(UNIT_SPELLINGS[kind]))
    shown = {"vertical transport": "VTFH", "power": "kW", "force": "N", "mass": "kg", "energy": "kJ"}
    return f"12 {shown.get(kind, word)}"


def _advice(number, unit):
    return f"Q({cut(repr(number))}, {KINDS[kind_of(ureg.Unit(unit))][0]!r})"
