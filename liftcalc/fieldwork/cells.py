"""One cell of a sheet: a number with its unit, as people write it on a hill, or a word; or what is wrong with it.

Reading is strict: what can be read in two ways is no reading. A message says what came and what to write instead.
"""

import datetime
import difflib
import re

from liftcalc.fieldwork.safe_files import quoted
from liftcalc.quantity_text import UNIT_SPELLINGS, read_number, read_unit, show
from liftcalc.units import PlainError, Q, UnitError, kind_of

NOT_READ = "not read"
MOST_LETTERS = 80  # of a cell that is looked at letter by letter: a fact, a number, a unit
_DIGITS = r"[+\-\u2212]?[0-9.,](?:[0-9.,' \u00a0\u202f]*[0-9.,])?"  # with a minus sign, and blanks between thousands
_UNIT = r"[^\W\d_].*|[%\u00b0']"  # begins with a letter; or percent, degree, foot
_NUMBER_AND_UNIT = re.compile(rf"({_DIGITS})\s*({_UNIT})?")
_POWER_OF_TEN = re.compile(r"[eE][+-]?[0-9]")
_CLOCK = re.compile(r"([0-9]{1,4}):([0-5][0-9](?:[.,][0-9]{1,3})?)")
_ABOUT = re.compile(r"(?:~|\N{ALMOST EQUAL TO}|<|>|ca\.?|about|approx\.?|etwa)\s*(?=[0-9])", re.IGNORECASE)
_RANGE = re.compile(r"([0-9]+(?:[.,][0-9]+)?)\s*(?:-|\u2013|to|bis|\.\.\.?)\s*([0-9]+(?:[.,][0-9]+)?)")
_MINUTES_IN_WORDS = re.compile(r"([0-9]{1,3})\s*(?:min\.?|m|')\s*([0-5]?[0-9])\s*(?:s|sec|\"|'')?")
_COUNTED_IN = re.compile(r"([0-9]+)\s*(?:persons?|people|riders?)?\s*(?:in|/|per)\s*([0-9].*)")
_NOTHING = ("n/a", "na", "n.a.", "none", "-", "--", "---", "?", "??", "unknown", "tbd", "not known")
_IF_NOTHING_WAS_READ = " Leave the value empty where nothing was read."
_PLUS_MINUS = re.compile(r"\s*(?:\N{PLUS-MINUS SIGN}|\+/-|\+-)\s*")


class CellFault(PlainError):
    """A cell cannot be read; ``column`` says which one, the message what came and what to write."""

    def __init__(self, column, message):
        super().__init__(message)
        self.column = column


def is_empty(text):
    """Return whether a cell says that nothing was read."""
    return text.casefold() in ("", NOT_READ)


def read_fact(word, text):
    """Return a fact from its cell: a word among those it may be, a day, or any short text.

    Parameters
    ----------
    word : Word
        Entry of the vocabulary.
    text : str
        The cell.

    Returns
    -------
    str

    Raises
    ------
    CellFault
        If it is none of the words, no day, or too long.
    """
    if word.among:
        return one_of(word.words, text, word.among)
    if word.words == "date":
        return _day(text)
    if len(text) > MOST_LETTERS or "\n" in text:
        raise CellFault("value", f"{word.words} must be a short text, but got {quoted(text)}. Write at most a line.")
    if not text.isprintable():
        raise CellFault("value", f"{word.words} holds a mark that nobody sees: {quoted(text)}. Type it anew without.")
    return text


def one_of(words, text, among):
    """Return that one of several words which a cell holds, in any letters; or say which it may be."""
    found = " ".join(text.casefold().replace("-", " ").split())
    plainly = {each.casefold().replace("-", " "): each for each in among}
    if found in plainly:
        return plainly[found]
    holding = [each for each in plainly if found in each and len(found) > 2]  # "t bar" in "t bar lift"
    near = holding if len(holding) == 1 else difflib.get_close_matches(found, plainly, n=1, cutoff=0.75)
    guess = f" Is {plainly[near[0]]!r} meant?" if near else ""
    nothing = _IF_NOTHING_WAS_READ if text.casefold() in _NOTHING else ""
    raise CellFault("value", f"{words} must be one of {', '.join(among)}, but got {quoted(text)}.{guess}{nothing}")


def _day(text):
    """Return a day as written by the standard, or say how to write it."""
    try:
        return datetime.date.fromisoformat(text).isoformat()
    except ValueError:
        pass
    parts = [int(part) for part in re.findall(r"[0-9]+", text)] if len(text) < 40 else []
    if re.fullmatch(r"[0-9]{1,2}[./ -][0-9]{1,2}[./ -][0-9]{4}", text):
        orders = {(parts[2], parts[1], parts[0]), (parts[2], parts[0], parts[1])}
        days = sorted(filter(None, map(_written_day, orders)))
        if days:
            raise CellFault(
                "value",
                f"the date {text!r} is not written as year, month, day. Write {', or '.join(days)}.",
            )
    raise CellFault("value", f"{quoted(text)} is no date. Write year, month and day, such as 2026-02-14.")


def _written_day(parts):
    """Return a day from year, month and day, as written by the standard; None where the calendar has none."""
    try:
        return datetime.date(*parts).isoformat()
    except ValueError:
        return None


def read_value(word, cells, decimal_comma):
    """Return value and plus-minus of a reading from the cells of its row.

    Parameters
    ----------
    word : Word
        Entry of the vocabulary.
    cells : dict of str to str
        Text by column; value, unit and plus_minus are looked at. A unit may stand in its own cell or behind the value,
        and a time may be written as minutes:seconds.
    decimal_comma : bool
        Whether a comma is the mark of decimals.

    Returns
    -------
    Quantity, Quantity or None
        Both in the unit of the row.

    Raises
    ------
    CellFault
        If a cell cannot be read, or the value lies outside what is believed of the quantity.
    """
    for column in ("value", "unit", "plus_minus"):
        if len(cells[column]) > MOST_LETTERS:
            raise CellFault(column, f"{quoted(cells[column])} is too long. Write a number and its unit, and no more.")
    number, unit = _value_and_unit(word, cells["value"], cells["unit"], decimal_comma)
    _check_size(word, number, unit, cells["value"])
    half_width = None if is_empty(cells["plus_minus"]) else _half_width(word, number, unit, cells, decimal_comma)
    return Q(number, unit), half_width


def _value_and_unit(word, text, unit_text, decimal_comma):
    clock = _CLOCK.fullmatch(text)
    if clock and word.unit == "s":
        return _minutes_and_seconds(clock, unit_text)
    said = _MINUTES_IN_WORDS.fullmatch(text) if word.unit == "s" else None
    if said:
        raise CellFault("value", f"{quoted(text)}: write minutes and seconds as {int(said[1])}:{int(said[2]):02}.")
    counted = _COUNTED_IN.fullmatch(text) if word.unit == "person" else None
    if counted:
        raise CellFault(
            "value", f"{quoted(text)}: write {counted[1]} here, and {counted[2]} in a row of its own, counting time."
        )
    digits, behind = _parted(text, decimal_comma)
    if behind and unit_text and _unit_or_none(word, behind) != _unit_or_none(word, unit_text):
        raise CellFault("unit", f"the value says {behind!r} and the unit {quoted(unit_text)}. Keep one of the two.")
    column = "value" if behind and not unit_text else "unit"
    number = _number("value", digits, decimal_comma, is_time=word.unit == "s")
    try:
        return number, _unit(word, unit_text or behind)
    except PlainError as error:
        raise CellFault(column, str(error)) from None


def _parted(text, decimal_comma):
    """Return the digits of a value and the unit behind them; or say what else stands there."""
    if text.casefold() in _NOTHING:
        raise CellFault("value", f"{quoted(text)} is no number.{_IF_NOTHING_WAS_READ}")
    between = _RANGE.fullmatch(text)
    if between:
        low, high = (float(end.replace(",", ".")) for end in between.groups())
        middle, half = (f"{number:.10g}" for number in ((low + high) / 2, abs(high - low) / 2))
        if decimal_comma:
            middle, half = middle.replace(".", ","), half.replace(".", ",")
        raise CellFault(
            "value",
            f"{quoted(text)} is a range. Write its middle, {middle}, and half of its width, {half}, in the column "
            "plus_minus.",
        )
    about = _ABOUT.match(text)
    if about:
        digits, _ = _parted(text[about.end() :], decimal_comma)
        plain = digits.replace(".", ",") if decimal_comma else digits.replace(",", ".")
        raise CellFault(
            "value",
            f"{quoted(text)}: write the number alone, {plain}, and in the column plus_minus how far it may be off.",
        )
    if _PLUS_MINUS.search(text):
        parts = _PLUS_MINUS.split(text, maxsplit=1)
        raise CellFault(
            "value",
            f"{quoted(text)} is two numbers. Write {quoted(parts[0])[1:-1]} here, and {quoted(parts[1])[1:-1]} in the "
            "column plus_minus.",
        )
    return _number_and_unit(text)


def _number_and_unit(text):
    """Return the digits of a text and what stands behind them; the whole text where it is no number."""
    match = _NUMBER_AND_UNIT.fullmatch(text)
    if not match or _POWER_OF_TEN.match(match[2] or ""):
        return text, ""
    return match[1], (match[2] or "").strip()


def _number(column, digits, decimal_comma, is_time=False):
    try:
        return read_number(digits, decimal_comma)
    except PlainError as error:
        clock = re.fullmatch(r"[0-9]+:[0-9:.,]+", digits)
        instead = f"{quoted(digits)} can be read in two ways. Write seconds, such as 73; or 1:13, minutes and seconds."
        raise CellFault(column, instead if clock and is_time else str(error)) from None


def _minutes_and_seconds(clock, unit_text):
    """Return a time written as minutes:seconds, in the unit of its row: that of its plus-minus."""
    seconds = 60 * int(clock[1]) + float(clock[2].replace(",", "."))
    unit = "second" if unit_text.casefold() in ("", "min:s", "m:s", "mm:ss") else _unit_or_none_of_time(unit_text)
    if unit not in ("second", "minute"):
        raise CellFault(
            "unit", f"{clock[0]!r} is taken as minutes:seconds, but the unit is {quoted(unit_text)}. Write s."
        )
    return (seconds / 60, "minute") if unit == "minute" else (seconds, "second")


def _unit_or_none_of_time(text):
    try:
        return read_unit(text, "time")
    except UnitError:
        return None


def _unit(word, text):
    """Return the unit that a text names, of the kind of a quantity."""
    kind = kind_of(Q(1, word.unit))
    if kind != "pure number or angle":
        return read_unit(text, kind)
    if word.unit == "" and not text:
        return ""
    if word.whole:
        raise UnitError(f"{word.words} are counted and have no unit, but got {quoted(text)}. Leave the unit empty.")
    wanted, write = ("percent", "'%', or leave it empty") if word.unit == "" else ("degree", "'degree'")
    spellings = [spelling for spelling, unit in UNIT_SPELLINGS[kind].items() if unit == wanted]
    if " ".join(text.casefold().split()).rstrip(".") in spellings:
        return wanted
    if not text:
        raise UnitError(f"the unit is missing. Write {write}.")
    raise UnitError(f"{quoted(text)} is no unit of {word.words}. Write {write}.")


def _unit_or_none(word, text):
    """Return the unit that a text names, or the text itself where it names none."""
    try:
        return _unit(word, text)
    except PlainError:
        return text


def _check_size(word, number, unit, text):
    """Refuse a value that no lift has, or a part of what is counted."""
    taken, value = word.taken, Q(number, unit)
    if number < 0:
        raise CellFault(
            "value", f"{word.words} must not be negative, but got {quoted(text)[1:-1]}. Write the size without a sign."
        )
    if word.whole and number != round(number):
        raise CellFault("value", f"{word.words} must be a whole number, but got {quoted(text)[1:-1]}. Count once more.")
    size = value.m_as(word.unit)
    if not taken.least * (1 - 1e-9) <= size <= taken.most * (1 + 1e-9):
        low, high = (show(Q(end, word.unit), unit) for end in (taken.least, taken.most))
        raise CellFault(
            "value",
            f"{word.words} of {show(value)} is not believed: {low} to {high} is the range. "
            f"{_what_then(word, number, unit)}",
        )


def _what_then(word, number, unit):
    """Return what to do about a value that is not believed: a share may lack its percent."""
    share = word.unit == "" and not word.whole and unit == "" and word.taken.least <= number / 100 <= word.taken.most
    return f"Is {number:g} % meant? Write the unit %." if share else "Look at the digits and the unit."


def _half_width(word, number, unit, cells, decimal_comma):
    """Return the plus-minus of a row, in the unit of its value."""
    text = cells["plus_minus"]
    about = _ABOUT.match(text)
    if about or _RANGE.fullmatch(text):
        alone = f"the number alone, {text[about.end() :]}" if about else "one number alone, the larger one"
        raise CellFault("plus_minus", f"{quoted(text)}: write {alone}.")
    digits, behind = _parted_half_width(text)
    size = _number("plus_minus", digits, decimal_comma)
    if behind and _unit_or_none(word, behind) != unit:
        if behind == "%":
            plain = f"{float(f'{number * size / 100:.3g}'):.12g}"  # three figures, and never a power of ten
            plain = plain.replace(".", ",") if decimal_comma else plain
            raise CellFault(
                "plus_minus", f"{quoted(text)} is a part of the value, but plus_minus is in its unit. Write {plain}."
            )
        raise CellFault(
            "plus_minus",
            f"{quoted(text)} has another unit than its row. Write it in the unit of the value, digits only.",
        )
    if size < 0:
        raise CellFault(
            "plus_minus", f"must not be negative, but got {quoted(text)[1:-1]}. Write the size without a sign."
        )
    if number > 0 and size >= number:
        raise CellFault(
            "plus_minus",
            f"{quoted(text)[1:-1]} is as large as the value, {quoted(cells['value'])[1:-1]}, or larger. Write half of "
            "the range in which the true value lies.",
        )
    return Q(size, unit)


def _parted_half_width(text):
    return _number_and_unit(_PLUS_MINUS.sub("", text, count=1))
