"""Quantities as a person writes them: ``show`` prints one, ``read_number`` and ``read_unit`` take one in.

Reading is strict and of our own: a unit is looked up in a table, a number follows one pattern, nothing is evaluated.
The unit library reads "2,3 s" as 23 s, and hangs on towers of powers. Text stands apart from the registry of ``units``:
two jobs, two small modules.
"""

import difflib
import math
import re

import numpy as np
from pint import Quantity

from liftcalc.units import PlainError, UnitError, is_like, kind_in_words, parsed_unit, ureg, with_article

# unit: (digits after the point, word for one, word for several)
_STYLES = {
    "m/s": (2, "m/s", "m/s"),
    "km/hour": (1, "km/h", "km/h"),
    "mile/hour": (1, "mph", "mph"),
    "mph": (1, "mph", "mph"),
    "ft/s": (1, "ft/s", "ft/s"),
    "ft/minute": (0, "ft/min", "ft/min"),
    "fpm": (0, "ft/min", "ft/min"),
    "m": (1, "m", "m"),
    "ft": (1, "ft", "ft"),
    "inch": (1, "in", "in"),
    "yard": (1, "yd", "yd"),
    "mile": (2, "mile", "miles"),
    "km": (2, "km", "km"),
    "s": (1, "s", "s"),
    "minute": (1, "min", "min"),
    "hour": (1, "h", "h"),
    "s**2": (1, "s²", "s²"),
    "person": (1, "person", "persons"),
    "pph": (0, "pph", "pph"),
    "person/hour": (0, "pph", "pph"),
    "person/minute": (1, "persons/min", "persons/min"),
    "person/s": (2, "persons/s", "persons/s"),
    "person*ft/hour": (0, "VTFH", "VTFH"),
    "person*m/hour": (0, "vertical m/h", "vertical m/h"),
    "person*hour": (1, "person-hour", "person-hours"),
    "m/s**2": (2, "m/s²", "m/s²"),
    "ft/s**2": (1, "ft/s²", "ft/s²"),
    "W": (0, "W", "W"),
    "kW": (1, "kW", "kW"),
    "hp": (1, "hp", "hp"),
    "metric_horsepower": (1, "metric hp", "metric hp"),
    "kW/kilopph": (1, "kW per 1,000 pph", "kW per 1,000 pph"),  # the same number as watt-hours a rider
    "J": (0, "J", "J"),
    "kJ": (1, "kJ", "kJ"),
    "kilowatt_hour": (2, "kWh", "kWh"),
    "N": (0, "N", "N"),
    "kN": (2, "kN", "kN"),
    "lbf": (0, "lbf", "lbf"),
    "kg": (0, "kg", "kg"),
    "lb": (0, "lb", "lb"),
    "kg/m": (2, "kg/m", "kg/m"),
    "lb/ft": (2, "lb/ft", "lb/ft"),
    "hectare": (1, "ha", "ha"),
    "person/hectare": (0, "person/ha", "persons/ha"),
    "degree": (1, "degrees", "degrees"),
    "percent": (0, "%", "%"),
    "dollar": (2, "dollar", "dollars"),
    "dollar/season": (0, "dollar a season", "dollars a season"),
    "dollar/person": (2, "dollar a ride", "dollars a ride"),
    "person/season": (0, "ride a season", "rides a season"),
    "season": (1, "season", "seasons"),
    "hour/season": (0, "hour a season", "hours a season"),
    "1/season": (4, "a season", "a season"),
    "1/hour": (1, "an hour", "an hour"),
    "dollar/hour": (2, "dollar an hour", "dollars an hour"),
    "dollar/kilowatt_hour": (2, "dollar a kWh", "dollars a kWh"),
    "dollar/kW": (2, "dollar a kW", "dollars a kW"),
    "dollar/season/kilopph": (0, *["dollars a season per 1,000 pph"] * 2),
    "dollar/(person*km)": (1, *["dollars per 1,000 person-metres"] * 2),
    "dollar/(person*kilofoot)": (2, *["dollars per 1,000 VTFH hours"] * 2),
    "": (2, "", ""),
}
_STYLE_OF_UNIT = {ureg.Unit(unit): style for unit, style in _STYLES.items()}
_WHOLE_FROM_100 = {ureg.Unit("m"), ureg.Unit("ft")}
_PERCENT = ureg.Unit("percent")
_WHOLE_IF_WHOLE = {ureg.Unit("person"), ureg.Unit(""), ureg.Unit("percent"), ureg.Unit("dollar"), ureg.Unit("season")}


def show(quantity, unit=None):
    """Return a quantity as a person would write it.

    Parameters
    ----------
    quantity : Quantity
        A scalar or an array, of any unit.
    unit : str or None
        Unit to print in; the quantity's own unit if left out.

    Returns
    -------
    str
        Such as "1,800 pph", "2.0 s" or "22.1 persons". Never a power of ten.

    Raises
    ------
    UnitError
        If a bare number came, or the unit is of another kind.

    Examples
    --------
    >>> from liftcalc import Q
    >>> show(Q(12345, "pph"))
    '12,345 pph'
    >>> show(Q(3.4, "m/s"), "mph")
    '7.6 mph'
    """
    if not hasattr(quantity, "units"):
        raise UnitError(f"show: the quantity needs a unit, but got the bare value {quantity!r}. Write Q(3.4, 'm/s').")
    units = quantity.units
    if unit is not None:
        wanted = parsed_unit(unit)
        if not is_like(units, wanted):
            raise UnitError(f"show: {unit!r} is no unit for {kind_in_words(units)}.")
        quantity, units = quantity.to(wanted), wanted
    digits, one, several = _STYLE_OF_UNIT.get(units) or (None, *[f"{units:~}"] * 2)
    numbers = np.atleast_1d(np.asarray(quantity.magnitude, dtype=float)).ravel()
    if units in _WHOLE_IF_WHOLE and np.all(np.abs(numbers - np.round(numbers)) < 1e-9):
        digits = 0
    elif units == _PERCENT and np.all((np.abs(10 * numbers - np.round(10 * numbers)) < 1e-9) & (np.abs(numbers) > 1)):
        digits = 1  # 2.5 % was written so; of a part that was computed a whole number is enough
    if units in _WHOLE_FROM_100 and np.all(np.abs(numbers) >= 99.95):
        digits = 0
    written = [_write(number, digits) for number in numbers]
    word = one if written == ["1"] else several
    return f"{', '.join(written)}{'' if word == '%' else ' '}{word}".strip()


def unit_word(unit):
    """Return the word that stands behind several of a unit, such as "persons" or "m/s"."""
    unit = parsed_unit(unit) if isinstance(unit, str) else unit
    return _STYLE_OF_UNIT[unit][2] if unit in _STYLE_OF_UNIT else f"{unit:~}"


def _write(number, digits):
    """Write one number with a thousands mark; keep two figures of a number too small for its usual digits."""
    if not np.isfinite(number):
        return "no number"
    if digits is None:
        digits = max(0, 3 - len(f"{abs(number):.0f}")) if abs(number) >= 1 else 3
    size = abs(number)
    if size and size < 0.95 * 10.0**-digits:
        digits = min(15, 1 - math.floor(math.log10(size)))
    text = f"{number:,.{digits}f}"
    return text.lstrip("-") if not any(mark in "123456789" for mark in text) else text


# kind: {spelling in small letters: unit}
UNIT_SPELLINGS = {
    "speed": {
        **dict.fromkeys(("m/s", "mps", "meters per second", "metres per second"), "m/s"),
        **dict.fromkeys(("km/h", "kph", "kmh"), "km/hour"),
        **dict.fromkeys(("mph", "mi/h", "miles per hour"), "mph"),
        **dict.fromkeys(("ft/s", "fps", "feet per second"), "ft/s"),
        **dict.fromkeys(("ft/min", "fpm", "feet per minute"), "ft/minute"),
    },
    "length": {
        **dict.fromkeys(("m", "meter", "meters", "metre", "metres"), "m"),
        **dict.fromkeys(("ft", "foot", "feet", "'"), "ft"),
        **dict.fromkeys(("in", "inch", "inches"), "inch"),
        **dict.fromkeys(("cm", "centimeters", "centimetres"), "cm"),
        **dict.fromkeys(("yd", "yard", "yards"), "yard"),
        **dict.fromkeys(("km", "kilometers", "kilometres"), "km"),
        **dict.fromkeys(("mi", "mile", "miles"), "mile"),
    },
    "time": {
        **dict.fromkeys(("s", "sec", "secs", "second", "seconds"), "s"),
        **dict.fromkeys(("min", "mins", "minute", "minutes"), "minute"),
        **dict.fromkeys(("h", "hr", "hour", "hours"), "hour"),
    },
    "number of persons": dict.fromkeys(("person", "persons", "people", "rider", "riders"), "person"),
    "hourly capacity": {
        **dict.fromkeys(
            ("pph", "person/hour", "persons/hour", "people/hour", "persons/h", "people per hour", "persons per hour"),
            "pph",
        ),
        **dict.fromkeys(("persons/min", "people/min", "persons per minute", "people per minute"), "person/minute"),
        **dict.fromkeys(("persons/s", "people/s", "persons per second", "people per second"), "person/s"),
    },
    "vertical transport": {
        **dict.fromkeys(("vtfh", "vertical feet per hour", "vertical transport feet per hour"), "person*ft/hour"),
        **dict.fromkeys(("vertical m/h", "vertical metres per hour", "vertical meters per hour"), "person*m/hour"),
    },
    "acceleration": {
        **dict.fromkeys(("m/s\N{SUPERSCRIPT TWO}", "m/s2", "m/s^2", "m/s**2"), "m/s**2"),
        **dict.fromkeys(("ft/s\N{SUPERSCRIPT TWO}", "ft/s2", "ft/s^2", "ft/s**2"), "ft/s**2"),
    },
    "pure number or angle": {
        **dict.fromkeys(("%", "percent", "per cent"), "percent"),
        **dict.fromkeys(("degree", "degrees", "deg", "\N{DEGREE SIGN}"), "degree"),
    },
    "power": {
        **dict.fromkeys(("w", "watt", "watts"), "W"),
        **dict.fromkeys(("kw", "kilowatt", "kilowatts"), "kW"),
        **dict.fromkeys(("hp", "horsepower"), "hp"),
        **dict.fromkeys(("metric hp", "metric horsepower"), "metric_horsepower"),
    },
    "force": {
        **dict.fromkeys(("n", "newton", "newtons"), "N"),
        **dict.fromkeys(("kn", "kilonewton", "kilonewtons"), "kN"),
        **dict.fromkeys(("lbf", "pound-force", "pounds-force"), "pound_force"),
    },
    "mass": {
        **dict.fromkeys(("kg", "kilogram", "kilograms"), "kg"),
        **dict.fromkeys(("lb", "lbs", "pound", "pounds"), "pound"),
        **dict.fromkeys(("t", "tonne", "tonnes"), "tonne"),
    },
    "energy": {
        **dict.fromkeys(("j", "joule", "joules"), "J"),
        **dict.fromkeys(("kj", "kilojoule", "kilojoules"), "kJ"),
        **dict.fromkeys(("kwh", "kilowatt-hour", "kilowatt-hours"), "kilowatt_hour"),
    },
    "mass per length": {
        **dict.fromkeys(("kg/m", "kilograms per metre", "kilograms per meter"), "kg/m"),
        **dict.fromkeys(("lb/ft", "pounds per foot"), "pound/foot"),
    },
    "amount of money": dict.fromkeys(("dollar", "dollars"), "dollar"),
    "amount of money a season": dict.fromkeys(
        ("dollars a season", "dollar a season", "dollars per season", "dollar/season", "dollars/season"),
        "dollar/season",
    ),
    "amount of money a ride": dict.fromkeys(
        ("dollars a ride", "dollar a ride", "dollars per ride", "dollar/ride", "dollars/ride"), "dollar/person"
    ),
    "number of rides a season": dict.fromkeys(
        ("rides a season", "ride a season", "rides per season", "rides/season"), "person/season"
    ),
    "number of seasons": dict.fromkeys(("seasons", "season"), "season"),
    "number of hours a season": dict.fromkeys(
        ("hours a season", "hour a season", "hours per season", "h/season"), "hour/season"
    ),
    "wage": dict.fromkeys(("dollars an hour", "dollar an hour", "dollars per hour", "dollars/h"), "dollar/hour"),
    "price of energy": dict.fromkeys(
        ("dollars a kwh", "dollar a kwh", "dollars per kwh", "dollars/kwh"), "dollar/kilowatt_hour"
    ),
    "price of power": dict.fromkeys(("dollars a kw", "dollar a kw", "dollars per kw", "dollars/kw"), "dollar/kW"),
}
_NUMBER = re.compile(r"[+-]?(?:[0-9]{1,12}(?:\.[0-9]{0,12})?|\.[0-9]{1,12})\Z")


def _without_point(unit):
    return " ".join(unit.casefold().strip().rstrip(".").split())


def read_unit(text, kind):
    """Return the unit that a written word names, for a given kind of quantity.

    Parameters
    ----------
    text : str
        The word as written, such as "mph" or "Feet".
    kind : str
        The kind of quantity that is asked, a key of ``UNIT_SPELLINGS``.

    Returns
    -------
    str
        Name of the unit in the registry.

    Raises
    ------
    UnitError
        If the word is no unit, or a unit of another kind; the message says what to write.

    Examples
    --------
    >>> read_unit("Feet", "length")
    'foot'
    """
    word = _without_point(text)
    allowed = UNIT_SPELLINGS[kind]
    if word in allowed:
        return str(ureg.Unit(allowed[word]))
    write = ", ".join(dict.fromkeys(repr(spelling) for spelling in _first_spellings(allowed)))
    for other, spellings in UNIT_SPELLINGS.items():
        if word in spellings:
            raise UnitError(f"{text!r} is a unit of {with_article(other)}, not of {with_article(kind)}. Write {write}.")
    if not word:
        raise UnitError(f"the unit is missing. Write {write}.")
    near = difflib.get_close_matches(word, allowed, n=1)
    guess = f" Is {near[0]!r} meant?" if near else ""
    raise UnitError(f"{text!r} is no unit known here for {with_article(kind)}. Write {write}.{guess}")


def _first_spellings(spellings):
    """Return the first spelling of each unit."""
    return list({unit: spelling for spelling, unit in reversed(list(spellings.items()))}.values())[::-1]


def read_number(text, decimal_comma=False):
    """Return the number that a text holds.

    Parameters
    ----------
    text : str
        Digits with at most one decimal mark, such as "3.4".
    decimal_comma : bool
        True where the decimal mark is a comma, as in sheets whose cells are parted by semicolons.

    Returns
    -------
    float
        The number.

    Raises
    ------
    PlainError
        If the text is no number, or can be read in two ways; the message says what to write.

    Examples
    --------
    >>> read_number("6.8"), read_number("6,8", decimal_comma=True)
    (6.8, 6.8)
    """
    word = text.strip().replace("\N{MINUS SIGN}", "-")
    decimal, other = (",", ".") if decimal_comma else (".", ",")
    digits = word.replace(decimal, "") if word.count(decimal) == 1 else word
    if re.fullmatch(r"[+-]?[0-9]{1,3}(?:[.,' \u00a0\u202f][0-9]{3})+", word) and not re.fullmatch(
        rf"[+-]?[0-9]+{re.escape(decimal)}[0-9]+", word
    ):
        whole = re.sub(r"[^0-9+-]", "", word)
        raise PlainError(
            f"{text!r} can be read in two ways. Write {whole} for the whole number, "
            f"or {_one_mark(word, decimal)} for the decimal one."
        )
    if re.fullmatch(rf"[+-]?[0-9]+{re.escape(other)}[0-9]+", word):
        raise PlainError(f"{text!r} has the wrong decimal mark for this sheet. Write {word.replace(other, decimal)}.")
    if not re.fullmatch(r"[+-]?[0-9]+", digits) or not _NUMBER.match(word.replace(decimal, ".")):
        raise PlainError(f"{shortened(text)!r} is no number. Write digits only, such as {f'3{decimal}4'}.")
    return float(word.replace(decimal, "."))


def _one_mark(word, decimal):
    """Return the word with its last mark as the decimal one."""
    head, tail = re.split("[.,' \u00a0\u202f](?=[0-9]+$)", word, maxsplit=1)
    return re.sub(r"[^0-9+-]", "", head) + decimal + tail


def shortened(text, most=40):
    """Return a text, cut to a length that fits into a message."""
    return text if len(text) <= most else text[:most] + "..."


def as_received(value):
    """Return what came, as text that is alike with every version of the unit library."""
    return show(value) if isinstance(value, Quantity) else repr(value)
