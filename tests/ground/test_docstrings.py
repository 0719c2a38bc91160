"""The docstring of a formula: what is refused, what is added to it, and the words of the vocabulary that it takes."""

import inspect
import re

import pytest

import liftcalc
from liftcalc.docstrings import completed
from liftcalc.fieldwork.cells import read_value
from liftcalc.lifts.readings import READINGS
from liftcalc.units import FORMULAS, Q, is_like, unit_aware, ureg
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY, name_of, words_of

SHORT = """Return the time between two riders passing one point.

    t = s / v

returns: Headway.

Source: definition of a constant speed.

>>> show(headway(Q(3.4, "m/s"), Q(6.8, "m")))
'2.0 s'
"""
UNITS = {"line_speed": "m/s", "spacing": "m"}
POSITIVE = dict.fromkeys(UNITS, "positive")


def headway_with(short):
    """Return a formula on plain numbers with a short docstring."""

    def headway(line_speed, spacing):
        return spacing / line_speed

    headway.__doc__ = short
    return headway


def with_line(line):
    """Return the short docstring with one line more."""
    return SHORT.replace("returns: ", f"{line}\nreturns: ")


def without(part):
    """Return the short docstring without the paragraph that begins so."""
    return "\n\n".join(paragraph for paragraph in SHORT.split("\n\n") if not paragraph.startswith(part))


MEANING = VOCABULARY["spacing"].meaning
IN_TWO_LINES = MEANING.replace("from one rider, ", "from one rider,\n    ")
REFUSED = [
    (without("Return"), "lacks a sentence"),
    (without("returns"), "lacks a line 'returns: '"),
    (without("Source"), "lacks a source"),
    (without(">>>"), "lacks an example"),
    (SHORT.replace(">>> show(", ">>> print("), "lacks an example"),
    (None, "lacks a sentence, a line 'returns: ', a source, an example"),
    (with_line("carrier: the one behind"), "has a line for what is no argument: carrier"),
    (with_line("Returns: the headway"), "has a line for what is no argument: Returns"),
    (with_line(f"spacing: {MEANING}"), "says what the vocabulary says of spacing"),
    (with_line(f"spacing: {MEANING.capitalize()}."), "says what the vocabulary says of spacing"),
    (with_line(f"spacing: {IN_TWO_LINES}"), "says what the vocabulary says of spacing"),
]


@pytest.mark.parametrize(("short", "fault"), REFUSED, ids=[fault for _, fault in REFUSED])
def test_a_short_docstring_is_refused(short, fault):
    with pytest.raises(TypeError, match=f"^{re.escape(f'headway: the docstring {fault}')}$"):
        completed(headway_with(short), UNITS, "s", POSITIVE, (), False)


def test_the_refusal_comes_when_the_formula_is_made():
    with pytest.raises(TypeError, match="^headway: the docstring lacks a source$"):
        unit_aware(**UNITS, returns="s")(headway_with(without("Source")))


def test_an_argument_that_nothing_is_said_of_is_refused():
    def headway(line_speed, way):
        return way / line_speed

    settings = {"line_speed": "m/s", "way": "m"}, "s", {"line_speed": "positive", "way": "positive"}, (), False
    headway.__doc__ = SHORT
    with pytest.raises(TypeError, match="^headway: the docstring has neither a line nor an entry in the .* for way$"):
        completed(headway, *settings)
    headway.__doc__ = with_line("way: distance along the rope\n    from one rider to the next")
    text = completed(headway, *settings)
    assert "\nway : Quantity [m]\n    Distance along the rope from one rider to the next. Greater than zero.\n" in text


def test_a_mistyped_bound_does_not_pass():
    with pytest.raises(TypeError, match="headway: .*'spacng'.* not all arguments"):
        unit_aware(**UNITS, returns="s", may_be_zero=("spacng",))(headway_with(SHORT))
    with pytest.raises(TypeError, match="headway: .*'spacng'.* not all arguments"):
        unit_aware(**UNITS, returns="s", may_be_negative=("spacng",))(headway_with(SHORT))
    with pytest.raises(KeyError, match="not negativ"):
        completed(headway_with(SHORT), UNITS, "s", POSITIVE | {"spacing": "not negativ"}, (), False)


WORDS_OF_BOUNDS = [("positive", "Greater than zero"), ("not negative", "Zero or more"), ("any", "Of any sign")]


@pytest.mark.parametrize(("bound", "words"), WORDS_OF_BOUNDS)
def test_a_bound_stands_behind_its_argument_alone(bound, words):
    text = completed(headway_with(SHORT), UNITS, "s", POSITIVE | {"spacing": bound}, (), False)
    assert "\n    Speed of the haul rope, or of the belt. Greater than zero.\n" in text
    assert f"\n    Distance along the rope from one rider, or one carrier, to the next. {words}.\n" in text


def test_the_whole_text_of_a_formula_with_a_default():
    assert inspect.getdoc(liftcalc.interval_for_capacity) == (
        """Return the interval between carriers that carries a given number an hour.

Parameters
----------
hourly_capacity : Quantity [person/hour]
    Persons an hour past one point. Greater than zero.
persons_per_carrier : Quantity [person]
    Riders on one carrier, or side by side. Greater than zero. 1 person if left out.

Returns
-------
Quantity [s]
    Time from one carrier to the next. Scalar, or array of the common shape of the arguments.

Raises
------
UnitError
    If an argument has no unit, or one of another kind.
PlainError
    If an argument is outside its bound, empty or no finite number, if arrays do not fit together, or if the result
    is no finite number.

Notes
-----
    t = 3600 n / C

Source: the capacity formula solved for the interval.

Examples
--------
>>> from liftcalc import Q, interval_for_capacity, show
>>> show(interval_for_capacity(Q(1200, "pph"), Q(2, "person")))
'6.0 s'"""
    )


def test_the_whole_text_of_a_formula_with_a_condition_and_a_bound():
    assert inspect.getdoc(liftcalc.idle_power) == (
        """Return the power that the motor gives while nobody rides.

A power meter on the running empty lift reads it, and so gives the drag.

Parameters
----------
efficiency : Quantity []
    Part of the motor's power that reaches the rope. Greater than zero.
line_speed : Quantity [m/s]
    Speed of the haul rope, or of the belt. Greater than zero.
idle_drag : Quantity [N]
    Drag of the whole empty rope or belt. Zero or more.

Returns
-------
Quantity [kW]
    Power at the motor. Scalar, or array of the common shape of the arguments.

Raises
------
UnitError
    If an argument has no unit, or one of another kind.
PlainError
    If an argument is outside its bound, empty or no finite number, if arrays do not fit together, or if the result
    is no finite number. If the efficiency is over 1.

Notes
-----
    P = F0 v / eta, with P in watts

Source: definition of power.

Examples
--------
>>> from liftcalc import Q, idle_power, show
>>> show(idle_power(Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N")))
'2.0 kW'"""
    )


def test_what_a_formula_itself_refuses_and_its_one_value():
    text = " ".join(liftcalc.mean_spacing.__doc__.split())
    assert "Quantity [m] Mean spacing. One value. Raises" in text
    assert "finite number. If the shares do not add up to 1, or are not as many as the spacings. Notes" in text


def test_what_follows_the_law_stands_in_the_notes():
    short = SHORT.replace("\n\nreturns", "\n\nThe rope neither slips nor stops.\n\nreturns")
    short = short.replace("\n\n    t", "\n\nNobody is in between.\n\n    t")
    text = completed(headway_with(short), UNITS, "s", POSITIVE, (), False)
    assert text.startswith("Return the time between two riders passing one point.\n\nNobody is in between.\n\nParam")
    assert "Notes\n-----\n    t = s / v\n\nThe rope neither slips nor stops.\n\nSource: definition" in text


def test_every_word_of_the_vocabulary_is_in_use_and_stands_for_one_thing():
    asked = {argument for formula in FORMULAS.values() for argument in inspect.signature(formula).parameters}
    assert [name for name in VOCABULARY if name not in asked and name not in READINGS and name not in FACTS] == []
    for what in ("words", "meaning"):
        said = [getattr(word, what) for word in VOCABULARY.values()]
        assert len(said) == len(set(said)), f"two entries have the same {what}"
    for name, word in VOCABULARY.items():
        assert word.meaning[0].islower(), name
        assert not word.meaning.endswith("."), name
        assert all(name_of(called) == name for called in (name, word.words, *word.former)), name


def test_units_are_of_the_kind_that_the_vocabulary_says():
    for formula in FORMULAS.values():
        for argument in inspect.signature(formula).parameters:
            if argument in VOCABULARY:
                unit, said = formula.units[argument], VOCABULARY[argument].unit
                assert is_like(ureg.Unit(unit), ureg.Unit(said)), f"{formula.__name__}: {argument}"


def test_a_sheet_holds_what_the_vocabulary_says_how_to_take():
    assert tuple(name for name, word in VOCABULARY.items() if word.unit is None) == FACTS
    assert set(READINGS) - set(ON_A_SHEET) == set()
    assert [name for name in ON_A_SHEET if name_of(words_of(name)) != name] == []


@pytest.mark.parametrize("name", ON_A_SHEET[len(FACTS) :])
def test_the_units_that_are_printed_for_a_quantity_are_read(name):
    word = VOCABULARY[name]
    middle = (word.taken.least + word.taken.most) / 2
    value = Q(round(middle) if word.whole else middle, word.unit)
    for printed in word.taken.units.split("  ") if word.taken.units else ():
        registered = {"m/s\u00b2": "m/s**2", "min": "minute", "%": "percent"}.get(printed, printed)
        cells = {"value": f"{value.m_as(registered):.6f}", "unit": printed, "plus_minus": ""}
        assert read_value(word, cells, False)[0].m_as(word.unit) == pytest.approx(value.magnitude, rel=1e-6)
