"""What hands hold."""

import pytest
from example_tow import FRICTION, GRADE
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.formulas import hand_grip


def test_own_arithmetic_an_adult_of_80_kg_holds_about_200_n():
    held = hand_grip.held_force(Q(80, "kg"), grade=GRADE, snow_friction=FRICTION).m_as("N")
    assert held == pytest.approx(200, rel=0.05)


def test_own_arithmetic_the_rope_between_two_riders_weighs_40_n():
    assert hand_grip.rope_weight_in_hands(Q(0.6, "kg/m"), Q(6.8, "m")).m_as("N") == pytest.approx(40.01, abs=0.005)


@given(squeeze=st.floats(1, 800), friction=st.floats(0.05, 1))
def test_a_squeezed_rope_is_rubbed_on_two_sides(squeeze, friction):
    fingers = palm = friction * squeeze
    assert hand_grip.grip_squeeze(Q(fingers + palm, "N"), Q(friction, "")).m_as("N") == pytest.approx(squeeze)


MESSAGES = [
    (
        lambda: hand_grip.rope_weight_in_hands(Q(0.6, "kg"), Q(6.8, "m")),
        "rope_weight_in_hands: rope_mass_per_length must be a mass per length, but got a mass: 0.6 kg. "
        "Write for example Q(0.6, 'kg/m').",
        UnitError,
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
