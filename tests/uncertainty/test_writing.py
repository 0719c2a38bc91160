"""Value and doubt as a person writes them."""

import pytest
from example_readings import HALF_DIGIT, SPEED, metres
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.uncertainty import UncertaintyError, expand, show_with_doubt

WRITTEN = [
    (1803.2, 88, "pph", "1,800 ± 90 pph"),
    (10562, 341, "pph", "10,600 ± 300 pph"),
    (10562, 271, "pph", "10,560 ± 270 pph"),
    (10562, 99.6, "pph", "10,560 ± 100 pph"),
    (3.4, 0.0577, "m/s", "3.40 ± 0.06 m/s"),
    (3.4, 0.3, "m/s", "3.4 ± 0.3 m/s"),
    (3.4, 0.29, "m/s", "3.40 ± 0.29 m/s"),
    (3.4, 0.0996, "m/s", "3.40 ± 0.10 m/s"),
    (22.06, 1.04, "person", "22.1 ± 1.0 persons"),
    (20, 1.5, "percent", "20.0 ± 1.5%"),
    (-0.04, 0.5, "m", "0.0 ± 0.5 m"),
    (0.5, 1, "m", "0.5 ± 1.0 m"),
    (1234567, 3, "pph", "1,234,567 ± 3 pph"),
    (12, 3400, "pph", "0 ± 3,000 pph"),
    (1805, 35, "pph", "1,810 ± 40 pph"),
]


@pytest.mark.parametrize(("value", "doubt", "unit", "text"), WRITTEN, ids=[case[-1] for case in WRITTEN])
def test_value_and_doubt_as_a_person_writes_them(value, doubt, unit, text):
    assert show_with_doubt(Q(value, unit), Q(doubt, unit)) == text


@given(value=st.floats(-1e6, 1e6), doubt=st.floats(1e-4, 1e6))
def test_value_and_doubt_end_at_one_place(value, doubt):
    first, second = show_with_doubt(Q(value, "m"), Q(doubt, "m")).removesuffix(" m").replace(",", "").split(" ± ")
    assert len(first.partition(".")[2]) == len(second.partition(".")[2])
    assert float(second) == pytest.approx(doubt, rel=0.17)
    assert abs(float(first) - value) <= 0.17 * doubt
    assert "e" not in (first + second).lower()


def test_the_longer_form_and_another_unit():
    text = show_with_doubt(Q(3.4, "m/s"), Q(10, "cm/s"), "mph", coverage_factor=2, probability=0.95)
    assert text == "7.61 ± 0.22 mph (k = 2.00, level of confidence 95 %)"
    whole = expand(metres(150, 0.6), 0.9973)
    assert str(whole) == "150.0 ± 1.8 m (k = 3.00, level of confidence 99.73 %)"
    assert whole.short == "150.0 ± 1.8 m"
    assert repr(SPEED) == "poles and stopwatch: 3.40 ± 0.06 m/s (one standard uncertainty)"


MESSAGES = [
    (
        lambda: show_with_doubt(Q(8, "mph"), Q(0, "mph")),
        f"show_with_doubt: expanded must be one number greater than zero, but got 0 mph. {HALF_DIGIT}",
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)
