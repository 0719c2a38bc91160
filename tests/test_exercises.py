"""The bank of questions: whole, and with believable numbers."""

import re

import pytest

from liftcalc import Q, show
from liftcalc.exercises import BANK, Question, question


@pytest.mark.parametrize("id", BANK)
def test_a_question_shows_its_numbers(id):
    shown = question(id)
    text = repr(shown)
    assert text.startswith(f"{id}  ")
    assert "{" not in text
    for quantity in shown.given.values():
        assert show(quantity) in text
    assert f"<strong>{id}</strong>" in shown._repr_html_()
    assert shown.asked in text


def test_ids_are_in_order():
    assert list(BANK) == [f"{notebook}.{number}" for notebook in range(5) for number in range(1, 6)]


# believable ranges: common practice, no published source
BELIEVABLE = {
    "speed": ("m/s", 0.4, 6),
    "length": ("m", 0.5, 900),
    "time": ("s", 0.3, 900),
    "number of persons": ("person", 1, 100),
    "hourly capacity": ("pph", 300, 3000),
    "power": ("kW", 5, 75),
}


def test_numbers_are_believable():
    from liftcalc.units import kind_of

    for id, item in BANK.items():
        for name, quantity in item.given.items():
            if kind_of(quantity) in BELIEVABLE:
                unit, low, high = BELIEVABLE[kind_of(quantity)]
                assert low <= quantity.m_as(unit) <= high, f"{id}: {name}"


def test_an_unknown_question_is_refused():
    with pytest.raises(ValueError, match=re.escape("question: there is no exercise '9.9'. Write one of 0.1, 0.2")):
        question("9.9")


def test_gaps_and_numbers_must_match():
    with pytest.raises(ValueError, match="the text has the gaps"):
        Question("9.9", "At {speed}?", {"spacing": Q(1, "m")}, "m")


def test_the_printed_mistakes_are_mistakes():
    # 1.5: mph turned into ft/s with 5280/3600 upside down
    given = BANK["1.5"].given
    assert given["printed"].magnitude == pytest.approx(given["line_speed"].magnitude * 3600 / 5280, abs=0.05)
    # 3.5: the fence post in the average
    given = BANK["3.5"].given
    assert given["printed"].magnitude == (given["ridden_length"] / given["spacing"]).m_as("") + 1
