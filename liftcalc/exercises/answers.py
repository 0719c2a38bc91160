"""Reading an answer: the number by strict patterns, the unit by tables. Nothing is ever evaluated.

A sum, a range, a number that can be read in two ways and a word that stands in no table are not judged: the message
says what to write instead.
"""

import dataclasses
import re
from decimal import Decimal

import numpy as np
from pint import Quantity

from liftcalc.exercises.answer_words import (
    ALL,
    PARTS_OF_A_WHOLE,
    PURE,
    SAME_SIGNS,
    TIMES,
    AnswerError,
    ask_if_two_ways,
    example,
    unit_of,
)
from liftcalc.levels import Capacity
from liftcalc.quantity_text import shortened, show, unit_word
from liftcalc.units import KINDS_OF_QUANTITY, Q, kind_of, parsed_unit

MOST_CHARACTERS = 120
_SPACES = re.compile(r"[\s\u00a0\u202f\u2009]+")
# before the number: "about", "every", "C =", "spacing:"
_LEAD = re.compile(
    r"[=~\N{ALMOST EQUAL TO}] ?|(?:answer|about|approx\.?|approximately|roughly|around|ca\.?|circa|every) "
    r"|[a-z]{1,20}(?: [a-z]{1,20})? ?[=:] ?",
    re.IGNORECASE,
)
_PLUS_MINUS = re.compile(r"(?:\N{PLUS-MINUS SIGN}|\+ ?/? ?-|plus[ -]minus|plus or minus) ?", re.IGNORECASE)
_CLOCK = re.compile(r"(?P<parts>[0-9]{1,6}(?::[0-9.]{1,6}){1,2})(?: ?(?P<unit>[a-z:]{1,12}))?\.?\Z", re.IGNORECASE)
_TIME_OF_CLOCK = re.compile(r"[0-9]{1,3}(?::[0-5][0-9]){1,2}(?:\.[0-9]{1,3})?\Z")
_PART = r"([0-9]{1,6}(?:\.[0-9]{1,6})?) ?([a-z]{1,12}|['\"])\.?"
_SEVERAL = re.compile(rf"{_PART}(?:(?: |, ?)?(?:and )?{_PART}){{1,2}}\Z", re.IGNORECASE)
_MARKED = re.compile(r"[0-9]{1,3}'[0-9]{3}(?![0-9])")  # no feet: a mark between the thousands
_IN_ONE = {("minute", "hour"): 60, ("s", "minute"): 60, ("inch", "ft"): 12, ("cm", "m"): 100}  # how many make one
_FRACTION = re.compile(
    r"(?P<sum>(?P<whole>[+-]?[0-9]{1,6} )?(?P<over>[0-9]{1,6})/(?P<under>[0-9]{1,6}))(?![0-9./]) ?(?P<unit>[^0-9].*)?\Z"
)
_ANSWER = re.compile(r"(?P<number>[+\-]?[0-9.,' ]*[0-9][.,]?) ?(?P<unit>[^0-9].*)?\Z")
# digits with a point; with marks between the thousands; with points for those marks and no other; with a comma
_PLAIN = re.compile(r"[+-]?(?:[0-9]{1,12}(?:\.[0-9]{0,12})?|\.[0-9]{1,12})\Z")
_THOUSANDS = re.compile(
    r"[+-]?[1-9][0-9]{0,2}(?:(?P<mark>[, '])[0-9]{3})(?:(?P=mark)[0-9]{3}){0,3}(?:\.[0-9]{0,12})?\Z"
)
_POINTED = re.compile(r"[+-]?[1-9][0-9]{0,2}(?:\.[0-9]{3}){2,4}\Z")
_THOUSANDS_AND_COMMA = re.compile(
    r"[+-]?[1-9][0-9]{0,2}(?P<mark>[. '])[0-9]{3}(?:(?P=mark)[0-9]{3}){0,3},[0-9]{1,12}\Z"
)
_COMMA = re.compile(r"(?P<head>[+-]?[0-9]{1,12}),(?P<tail>[0-9]{1,12})\Z")


@dataclasses.dataclass(frozen=True)
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


def read_as_written(given, unit, plus_minus=False):
    """Return an answer with what its writing tells beside the quantity; it takes and raises what ``read_answer`` does.

    Parameters
    ----------
    given : Quantity, Capacity, str, int or float
        The answer.
    unit : str
        Unit that is asked.
    plus_minus : bool
        Whether a plus-minus is asked, so that its sign may stand before the number.

    Returns
    -------
    Answer

    Examples
    --------
    >>> read_as_written("2.60 m", "m").half_digit
    0.005
    """
    kind = kind_of(parsed_unit(unit))
    if isinstance(given, Capacity):
        given = given.value
    if isinstance(given, Quantity):
        return _from_code(given)
    if isinstance(given, (int, float, np.number)) and not isinstance(given, bool):
        if kind != PURE:
            raise AnswerError(
                f"{given!r} has no unit. Write for example {_advice(given, unit)}, or text such as {example(kind)!r}."
            )
        return _from_code(Q(given, ""))
    if not isinstance(given, str):
        raise AnswerError(
            f"{shortened(repr(given))} is no answer. Write a quantity, or text such as {example(kind)!r}."
        )
    return _from_text(given, kind, plus_minus)


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


def _from_text(text, kind, plus_minus):
    """Return the answer that a text holds."""
    if len(text) > MOST_CHARACTERS:
        raise AnswerError(
            f"the answer has {len(text):,} characters. Write one number and its unit, such as {example(kind)!r}."
        )
    written = _without_lead(_SPACES.sub(" ", text).strip())
    sign = _PLUS_MINUS.match(written)
    if sign and not plus_minus:
        raise AnswerError(f"{shortened(text)!r} is a plus-minus, and one number is asked. Write it without the sign.")
    plain = written[sign.end() if sign else 0 :].translate(SAME_SIGNS)
    plain = " ".join(plain.split())
    for read in (_clock, _several_units, _fraction):
        answer = read(plain, kind)
        if answer:
            return dataclasses.replace(answer, written=written)
    answer = _number_and_unit(plain, kind, text)
    return dataclasses.replace(answer, written=written) if sign else answer


def _without_lead(written):
    """Return a text without the words before its number that change nothing."""
    for _ in range(2):
        lead = _LEAD.match(written)
        written = written[lead.end() :] if lead else written
    return written


def _clock(plain, kind):
    """Return minutes and seconds written as 1:03, or hours as well; None if there is no such thing."""
    found = _CLOCK.match(plain)
    if not found:
        return None
    if kind != "time":
        raise AnswerError(
            f"{shortened(plain)!r} reads as minutes and seconds, and no time is asked. Write one number and its unit, "
            f"such as {example(kind)!r}."
        )
    unit = TIMES.get((found["unit"] or "min").casefold())
    if unit not in ("minute", "s") or not _TIME_OF_CLOCK.match(found["parts"]):
        raise AnswerError(f"{shortened(plain)!r} is no time. Write minutes and seconds as 1:03, or as 1 min 3 s.")
    parts = found["parts"].split(":")
    seconds = sum(float(part) * 60**place for place, part in enumerate(reversed(parts)))
    return Answer(Q(seconds, "s"), _half_digit(parts[-1]), plain)


def _several_units(plain, kind):
    """Return minutes and seconds, feet and inches and the like as one quantity; None if there is one unit or none."""
    if not _SEVERAL.match(plain) or _MARKED.match(plain):
        return None
    parts = [(number, word.casefold()) for number, word in re.findall(_PART, plain, re.IGNORECASE)]
    units = [ALL.get(word) for _, word in parts]
    if None in units:
        return None
    for _, word in parts:
        ask_if_two_ways(word, kind)
    if not all(pair in _IN_ONE for pair in zip(units[1:], units, strict=False)):
        raise AnswerError(
            f"{shortened(plain)!r} holds two units that do not go together. Write one number and its unit, such as "
            f"{example(kind)!r}."
        )
    total = 0.0
    for place, (number, word) in enumerate(parts):
        if place < len(parts) - 1 and "." in number:
            raise AnswerError(
                f"{shortened(plain)!r}: only the last number may have a point. Write {example(kind)!r}, say."
            )
        in_one = _IN_ONE[units[place], units[place - 1]] if place else 1
        if place and float(number) >= in_one:
            larger = unit_word(units[place - 1])
            raise AnswerError(
                f"{shortened(plain)!r}: {number} {word} are 1 {larger} or more. Write {example(kind)!r}, say."
            )
        total = total * in_one + float(number)
    return Answer(Q(total, units[-1]), _half_digit(parts[-1][0]), plain)


def _fraction(plain, kind):
    """Return a number with a half, a quarter and so on as the answer; None if there is none. It counts as exact."""
    found = _FRACTION.match(plain)
    if not found:
        return None
    over, under = int(found["over"]), int(found["under"])
    if not 0 < over < under or under not in PARTS_OF_A_WHOLE:
        raise AnswerError(
            f"{found['sum']!r} is a sum. Write the number that comes out, such as 3.4; fractions go as 1/2 or 2 1/2."
        )
    whole = (found["whole"] or "0").strip()
    number = (abs(int(whole)) + over / under) * (-1 if whole.startswith("-") else 1)
    return Answer(Q(number, unit_of(found["unit"] or "", kind, found["sum"])), 0.0, plain)


def _number_and_unit(plain, kind, text):
    """Return one number with its unit, or none where none is asked."""
    found = _ANSWER.match(plain)
    if not found:
        raise AnswerError(
            f"{shortened(text)!r} holds no number that can be read. Write a number and its unit, "
            f"such as {example(kind)!r}."
        )
    number, unit = found["number"].strip(), (found["unit"] or "").strip().rstrip(".")
    if _PLUS_MINUS.match(unit):
        raise AnswerError(
            f"{shortened(text)!r} holds a number and its plus-minus. Write the one number that is asked, such as "
            f"{example(kind)!r}."
        )
    digits = _digits(number, text)
    return Answer(Q(float(digits), unit_of(unit, kind, number)), _half_digit(digits), f"{number} {unit}".strip())


def _digits(word, text):
    """Return the digits of a number, with a point and no thousands mark; two ways to read it are asked about."""
    if _PLAIN.match(word):
        return word
    if _THOUSANDS.match(word):
        return re.sub(r"[, ']", "", word)
    if _POINTED.match(word):
        return word.replace(".", "")
    if _THOUSANDS_AND_COMMA.match(word):
        return re.sub(r"[. ']", "", word).replace(",", ".")
    comma = _COMMA.match(word)
    if comma and len(comma["tail"]) != 3:  # three may be thousands; one, two, or four and more are decimals
        return word.replace(",", ".")
    if comma:
        raise AnswerError(
            f"{word!r} can be read in two ways. Write {comma['head']}.{comma['tail']} with a point for the "
            f"decimal number, "
            f"or {comma['head']}{comma['tail']} for the whole one."
        )
    raise AnswerError(
        f"{shortened(word)!r} in {shortened(text)!r} is no number. Write digits with at most one point, such as 3.4."
    )


def _advice(number, unit):
    return f"Q({shortened(repr(number))}, {KINDS_OF_QUANTITY[kind_of(parsed_unit(unit))][0]!r})"
