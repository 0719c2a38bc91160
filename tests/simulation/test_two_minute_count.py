"""Counting simulated riders at a post."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

import liftcalc
from liftcalc import Q


@given(speed=st.floats(0.2, 8), gap=st.floats(1, 60), time=st.floats(1, 600), away=st.floats(0, 1))
def test_counting_simulated_riders_agrees_with_speed_over_spacing(speed, gap, time, away):
    counted = liftcalc.count_simulated_riders(
        line_speed=Q(speed, "m/s"), spacing=Q(gap, "m"), counting_time=Q(time, "s"), first_rider_away=Q(away * gap, "m")
    ).m_as("person")
    ideal = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(gap, "m")).m_as("person/s") * time
    assert counted == round(counted)
    assert abs(counted - ideal) <= 1 + 1e-6
    flow = liftcalc.hourly_flow_from_count(Q(counted, "person"), Q(time, "s"))
    assert flow.m_as("person/s") * time == pytest.approx(counted)


def test_counted_riders_are_riders():
    riders = liftcalc.count_simulated_riders(
        line_speed=Q(2, "m/s"), spacing=Q(5, "m"), counting_time=Q(10, "s"), first_rider_away=Q(1, "m")
    )
    assert riders.m_as("person") == 4  # 1, 6, 11 and 16 m below the post, while 20 m of rope go by
    flow = liftcalc.hourly_flow_from_count(riders, Q(10, "s"))
    assert flow.m_as("pph") == pytest.approx(1440, rel=1e-12)


MESSAGES = [
    (
        lambda: liftcalc.count_simulated_riders(
            line_speed=Q(6, "m/s"), spacing=Q(1e-6, "m"), counting_time=Q(3600, "s")
        ),
        "count_simulated_riders: more than ten million riders would pass. Write a shorter counting_time, such as "
        "Q(3600, 's').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
