"""Text answers: sixty spellings that are read, and hostile ones that get a plain reply at once."""

import timeit

import numpy as np
import pytest

from liftcalc import Capacity, Q, ureg
from liftcalc.exercises import BANK, Posed, judge
from liftcalc.exercises.answers import AnswerError, read_answer

# text, unit asked, value in that unit
SPELLINGS = [
    ("1800 pph", "pph", 1800),
    ("1,800 pph", "pph", 1800),
    ("1 800 pph", "pph", 1800),
    ("1\u202f800 pph", "pph", 1800),
    ("1\u00a0800 pph", "pph", 1800),
    ("1'800 pph", "pph", 1800),
    ("1800pph", "pph", 1800),
    ("1800 PPH", "pph", 1800),
    ("  1800   pph  ", "pph", 1800),
    ("1,800 people per hour", "pph", 1800),
    ("1,800 people an hour", "pph", 1800),
    ("1,800 persons per hour", "pph", 1800),
    ("1,800 riders/hour", "pph", 1800),
    ("1800 riders per hr", "pph", 1800),
    ("1800 persons/h", "pph", 1800),
    ("30 persons/min", "pph", 1800),
    ("30 people a minute", "pph", 1800),
    ("30 riders per minute", "pph", 1800),
    ("0.5 persons/s", "pph", 1800),
    ("0.5 persons each second", "pph", 1800),
    ("= 1800 pph", "pph", 1800),
    ("~1800 pph", "pph", 1800),
    ("1,800.5 pph", "pph", 1800.5),
    ("12,345,678 pph", "pph", 12345678),
    ("2.3 s", "s", 2.3),
    ("2.3s", "s", 2.3),
    ("2.3 sec", "s", 2.3),
    ("2.3 seconds", "s", 2.3),
    ("+2.3 s", "s", 2.3),
    ("\u22122.3 s", "s", -2.3),
    ("-2.3 s", "s", -2.3),
    ("2. s", "s", 2),
    (".5 s", "s", 0.5),
    ("2 min", "s", 120),
    ("1.5 minutes", "s", 90),
    ("1 h", "s", 3600),
    ("7.8 m", "m", 7.8),
    ("7.8 metres", "m", 7.8),
    ("7.8 meters", "m", 7.8),
    ("10 ft", "m", 3.048),
    ("10'", "m", 3.048),
    ("10 feet", "m", 3.048),
    ("3 yards", "m", 2.7432),
    ("780 cm", "m", 7.8),
    ("3.4 m/s", "m/s", 3.4),
    ("3.4 metres per second", "m/s", 3.4),
    ("3.4 metres a second", "m/s", 3.4),
    ("10 mph", "m/s", 4.4704),
    ("10 miles an hour", "m/s", 4.4704),
    ("10 miles per hour", "m/s", 4.4704),
    ("36 km/h", "m/s", 10),
    ("100 ft/min", "m/s", 0.508),
    ("100 feet a minute", "m/s", 0.508),
    ("100 fpm", "m/s", 0.508),
    ("10 ft/s", "m/s", 3.048),
    ("10 fps", "m/s", 3.048),
    ("22.5 persons", "person", 22.5),
    ("22.5 riders", "person", 22.5),
    ("22.5 people", "person", 22.5),
    ("15 kW", "kW", 15),
    ("20 hp", "kW", 14.9139974316),
    ("20 metric hp", "kW", 14.709975),
    ("20 horsepower", "kW", 14.9139974316),
    ("96,063 VTFH", "person*ft/hour", 96063),
    ("96063 vertical feet per hour", "person*ft/hour", 96063),
    ("44", "", 44),
    ("44 platters", "", 44),
    ("20 %", "", 0.2),
]


@pytest.mark.parametrize(("text", "unit", "value"), SPELLINGS, ids=[repr(case[0]) for case in SPELLINGS])
def test_spellings(text, unit, value):
    assert read_answer(text, unit).m_as(unit) == pytest.approx(value, rel=1e-9)


def test_there_are_sixty():
    assert len(SPELLINGS) >= 60


REFUSED = [
    ("2,3 s", "'2,3' can be read in two ways. Write 2.3 with a point for the decimal number, or 23 for the whole one."),
    ("0,800 m", "can be read in two ways. Write 0.800"),
    ("1800", "the unit is missing. Write the unit behind 1800, as in '12 pph'."),
    ("1800 pphh", "'pphh' is no unit known here. Write the unit as in '12 pph'. Is 'pph' meant?"),
    ("many", "'many' holds no number that can be read."),
    ("1.2.3 pph", "is no number. Write digits with at most one point"),
    ("1,80,0 pph", "is no number"),
    ("1 2 pph", "is no number"),
    ("3 + 4 pph", "is no unit known here"),
    ("1e3 pph", "'e3 pph' is no unit known here"),
    ("1/2 pph", "is no unit known here"),
]


@pytest.mark.parametrize(("text", "message"), REFUSED, ids=[case[0] for case in REFUSED])
def test_what_cannot_be_read_says_what_to_write(text, message):
    with pytest.raises(AnswerError) as error:
        read_answer(text, "m" if text.endswith(" m") else "s" if text.endswith(" s") else "pph")
    assert message in str(error.value)


ECHOES = [
    ("6.1", "0.289 m", "Right. 0.289 m, within 0.005 m."),
    ("6.1", "0.289 m.", "Right. 0.289 m, within 0.005 m."),
    ("6.1", "28.9 cm", "Right. 28.9 cm, within 0.005 m."),
    ("6.1", "  ~ 0.2887   Metres ", "Right. 0.2887 Metres, within 0.005 m."),
    ("6.1", Q(0.289, "m"), "Right. 0.289 m, within 0.005 m."),
    ("6.1", Q(0.5, "m") / 3**0.5, "Right. 0.2886751346 m, within 0.005 m."),
    ("0.1", "1,200.4 people an hour", "Right. 1,200.4 people an hour, within 5 pph."),
    ("0.1", "= 1200pph", "Right. 1200 pph, within 5 pph."),
    ("0.1", Q(1200, "pph"), "Right. 1,200 pph, within 5 pph."),
    ("3.3", "44", "Right. 44, within 0.2."),
    ("3.3", 44.04, "Right. 44.04, within 0.2."),
    ("6.1", "0.444 m", "Off. 0.444 m is too high, and none of the usual mistakes gives it. A clue may help."),
    ("6.1", Q(0.0444, "m"), "Off. 0.0444 m is too low, and none of the usual mistakes gives it. A clue may help."),
    ("6.1", "0.289 kg", "Off. 0.289 kg is a mass; asked is a length: a number in m, right within 0.005 m."),
    ("0.1", Q(1, "person"), "Off. 1 person is a number of persons; asked is an hourly capacity:"),
    ("0.1", "12.34 %", "Off. 12.34 % is a pure number or angle; asked is an hourly capacity:"),
    ("6.1", Q(1e-12, "m"), "Off. 0.0000000000010 m is too low"),
]


@pytest.mark.parametrize(("id", "given", "says"), ECHOES, ids=[f"{id} {given}" for id, given, _ in ECHOES])
def test_the_number_is_echoed_as_it_was_written(id, given, says):
    assert says in repr(judge(Posed(BANK[id]), given))


HOSTILE = [
    "9" * 100_000,
    "9**9**9",
    "9**9**9 pph",
    "1e999 pph",
    "1e999",
    "nan pph",
    "inf s",
    "(" * 50_000,
    "[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]",
    "__import__('os').system('true')",
    "<script>alert(1)</script>",
    "1 <b>pph</b>",
    "1 " + "pph/" * 25,
    "1" + " per" * 29,
    "1 " + "a " * 58,
    "1,234" + ",567" * 25,
    "1" + " 000" * 28 + " pph",
    "1" + "." * 100,
    "\x00\x01 1 pph",
    "1 pph\n2 pph",
    "=HYPERLINK(1)",
    "\N{ARABIC-INDIC DIGIT ONE}\N{ARABIC-INDIC DIGIT TWO} pph",
    "{0.__class__}",
    "%s%s%s",
    "1 m**9**9**9",
]


@pytest.mark.parametrize("text", HOSTILE, ids=[case[:20] for case in HOSTILE])
def test_hostile_text_gets_a_plain_reply_at_once(text):
    for id in ("0.1", "3.3", "0.4"):
        posed = Posed(BANK[id])
        reply = judge(posed, text)
        assert reply.state in ("open", "off")
        assert len(reply.says) < 400
        assert "<" not in reply._repr_html_().replace("<div style", "").replace("<strong>", "").replace("</", "")
        assert min(timeit.repeat(lambda posed=posed: judge(posed, text), number=1, repeat=3)) < 0.1


@pytest.mark.parametrize(
    ("given", "message"),
    [
        (1800, "1800 has no unit. Write for example Q(1800, 'person/hour'), or text such as '12 pph'."),
        (True, "True is no answer."),
        ([1, 2], "[1, 2] is no answer."),
        (Q([1, 2], "pph"), "one finite number is asked"),
        (Q(float("nan"), "pph"), "one finite number is asked"),
        (ureg.Quantity(10**400, "pph"), "one finite number is asked"),
    ],
)
def test_other_things_than_text(given, message):
    reply = judge(Posed(BANK["0.1"]), given)
    assert reply.state == "open"
    assert not reply.judged
    assert message in reply.says


def test_a_quantity_a_capacity_and_a_bare_count_are_taken():
    posed = Posed(BANK["0.1"])
    assert judge(posed, posed.right.to("person/minute")).state == "right"
    assert judge(posed, Capacity(posed.right, "ideal")).state == "right"
    count = Posed(BANK["3.3"])
    assert judge(count, count.right.magnitude).state == "right"
    assert judge(count, np.float64(count.right.magnitude)).state == "right"


@pytest.mark.parametrize("given", ["e", "aa", "1", 3, "because", ["a"], "a" * 5000])
def test_what_is_no_letter_is_not_judged(given):
    reply = judge(Posed(BANK["0.4"]), given)
    assert reply.state == "open"
    assert "is none of the statements. Write one of the letters a, b, c, d, such as 'a'." in reply.says
