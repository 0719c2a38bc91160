"""Quantities out as a person writes them, and in by a strict reading."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError, show, ureg
from liftcalc.quantity_text import UNIT_SPELLINGS, read_number, read_unit, unit_word

SHOWN = [
    (Q(10560, "pph"), "10,560 pph"),
    (Q(8265600, "person*ft/hour"), "8,265,600 VTFH"),
    (Q(1800.4, "person/hour"), "1,800 pph"),
    (Q(2, "s"), "2.0 s"),
    (Q(44.12, "s"), "44.1 s"),
    (Q(3.4, "m/s"), "3.40 m/s"),
    (Q(7.606, "mph"), "7.6 mph"),
    (Q(669.3, "ft/minute"), "669 ft/min"),
    (Q(22.06, "person"), "22.1 persons"),
    (Q(23, "person"), "23 persons"),
    (Q(1, "person"), "1 person"),
    (Q(0.5, "person/s"), "0.50 persons/s"),
    (Q(6.8, "m"), "6.8 m"),
    (Q(150, "m"), "150 m"),
    (Q(492.13, "ft"), "492 ft"),
    (Q(1234567, "ft"), "1,234,567 ft"),
    (Q(20, "percent"), "20%"),
    (Q(2.5, "percent"), "2.5%"),
    (Q(12.5, "percent"), "12.5%"),
    (Q(93.74, "percent"), "94%"),
    (Q(0.5, "percent"), "0.50%"),
    (Q(0.07, ""), "0.07"),
    (Q(42, ""), "42"),
    (Q(11.31, "degree"), "11.3 degrees"),
    (Q(15, "kW"), "15.0 kW"),
    (Q(0.0001234, "m/s"), "0.00012 m/s"),
    (Q(0, "m"), "0.0 m"),
    (Q(-0.001, "person"), "-0.0010 persons"),
    (Q(1e9, "N"), "1,000,000,000 N"),
    (Q([1, 2], "s"), "1.0, 2.0 s"),
    (Q(float("nan"), "s"), "no number s"),
]


@pytest.mark.parametrize(("quantity", "text"), SHOWN, ids=[case[1] for case in SHOWN])
def test_show(quantity, text):
    assert show(quantity) == text


def test_show_in_another_unit():
    assert show(Q(3.4, "m/s"), "mph") == "7.6 mph"
    assert show(Q(1800, "pph"), "person/minute") == "30.0 persons/min"


@given(st.floats(1e-12, 1e14), st.sampled_from(["pph", "s", "m", "person", "kW", "person*ft/hour", "kg/m**3"]))
def test_show_never_prints_a_power_of_ten(number, unit):
    text = show(Q(number, unit))
    assert not re.search(r"[0-9][eE][+-]?[0-9]", text)
    digits = re.match(r"[0-9,.]+", text)[0].replace(",", "")
    rounding = 0.5 * 10.0 ** -len(digits.partition(".")[2])
    assert abs(float(digits) - number) <= rounding * (1 + 1e-9) + 1e-12 * number
    assert float(digits) > 0


def test_unit_words():
    assert [unit_word(unit) for unit in ("m/s", "person", "percent", "ft/s**2")] == ["m/s", "persons", "%", "ft/s²"]


NUMBERS = [
    ("3.4", False, 3.4),
    (" 3.4 ", False, 3.4),
    ("1800", False, 1800),
    (".5", False, 0.5),
    ("-3", False, -3),
    ("\N{MINUS SIGN}3", False, -3),
    ("6.800", False, 6.8),
    ("3,4", True, 3.4),
    ("12", True, 12),
]


@pytest.mark.parametrize(("text", "comma", "number"), NUMBERS)
def test_read_number(text, comma, number):
    assert read_number(text, comma) == number


REFUSED = [
    ("3,4", False, "'3,4' has the wrong decimal mark for this sheet. Write 3.4."),
    ("6.8", True, "'6.8' has the wrong decimal mark for this sheet. Write 6,8."),
    ("1,800", False, "'1,800' can be read in two ways. Write 1800 for the whole number, or 1.800 for the decimal one."),
    ("1.800", True, "'1.800' can be read in two ways. Write 1800 for the whole number, or 1,800 for the decimal one."),
    ("1 800", False, "'1 800' can be read in two ways. Write 1800 for the whole number, or 1.800 for the decimal one."),
    (
        "1,234.567",
        False,
        "'1,234.567' can be read in two ways. Write 1234567 for the whole number, or 1234.567 for the decimal one.",
    ),
    (
        "1.234,567",
        True,
        "'1.234,567' can be read in two ways. Write 1234567 for the whole number, or 1234,567 for the decimal one.",
    ),
    ("about 3", False, "'about 3' is no number. Write digits only, such as 3.4."),
    ("9**9**9", False, "'9**9**9' is no number. Write digits only, such as 3.4."),
    ("1e999", False, "'1e999' is no number. Write digits only, such as 3.4."),
    ("nan", False, "'nan' is no number. Write digits only, such as 3.4."),
    ("", False, "'' is no number. Write digits only, such as 3.4."),
    ("=1+1", True, "'=1+1' is no number. Write digits only, such as 3,4."),
    ("9" * 500, False, f"'{'9' * 40}...' is no number. Write digits only, such as 3.4."),
    ("\u0663", False, "'\u0663' is no number. Write digits only, such as 3.4."),
]


@table_of_messages(REFUSED, "text", "comma")
def test_read_number_refuses(text, comma, message, kind):
    refuses(lambda: read_number(text, comma), message, kind)


def test_every_spelling_names_a_unit_of_its_kind():
    for kind, spellings in UNIT_SPELLINGS.items():
        dimensions = {ureg.Unit(unit).dimensionality for unit in spellings.values()}
        assert len(dimensions) == 1, kind
        for spelling in spellings:
            assert ureg.Unit(read_unit(spelling.upper() + ".", kind)).dimensionality in dimensions


UNITS = [
    ("ft", "speed", "'ft' is a unit of a length, not of a speed. Write 'm/s', 'km/h', 'mph', 'ft/s', 'ft/min'."),
    (
        "metr",
        "length",
        "'metr' is no unit known here for a length. Write 'm', 'ft', 'in', 'cm', 'yd', 'km', 'mi'. Is 'metre' meant?",
    ),
    ("", "time", "the unit is missing. Write 's', 'min', 'h'."),
    ("9**9**9", "time", "'9**9**9' is no unit known here for a time. Write 's', 'min', 'h'."),
]


@table_of_messages(UNITS, "text", "of_a", kind=UnitError)
def test_read_unit_refuses(text, of_a, message, kind):
    refuses(lambda: read_unit(text, of_a), message, kind)


MESSAGES = [
    (lambda: show(3.4), "show: the quantity needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s')."),
    (lambda: show(Q(3.4, "m/s"), "ft"), "show: 'ft' is no unit for a speed."),
    (lambda: show(Q(20, "degree"), "percent"), "show: 'percent' is no unit for an angle."),
]


@table_of_messages(MESSAGES, kind=UnitError)
def test_message(call, message, kind):
    refuses(call, message, kind)
