"""Grade, slope length and rise."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

import liftcalc
from liftcalc import Q


@given(rise=st.floats(0, 300), run=st.floats(10, 900))
def test_slope_length_and_rise_agree(rise, run):
    length = liftcalc.slope_length(vertical_rise=Q(rise, "m"), horizontal_run=Q(run, "m"))
    grade = Q(rise / run, "")
    assume(rise == 0 or rise > 1e-3)
    assert liftcalc.vertical_rise(length, grade).magnitude == pytest.approx(rise, rel=1e-9, abs=1e-9)


MESSAGES = [
    (
        lambda: liftcalc.grade_from_angle(Q(90, "degree")),
        "grade_from_angle: angle must be less than 90 degrees, but got 90 degrees. "
        "Give the angle to the horizontal, such as Q(11.3, 'degree').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
