"""Riders on the line and ride time: riders are counted and motions integrated as a second opinion."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from ranges import gaps, lengths, persons, speeds

import liftcalc
from liftcalc import Q, line_speed_from_ride_time, ride_time_from_rest, ride_time_rest_to_rest


@given(length=lengths, gap=gaps, group=persons)
def test_the_most_on_the_line_is_within_one_carrier_of_the_average(length, gap, group):
    average = liftcalc.persons_on_line(
        ridden_length=Q(length, "m"), spacing=Q(gap, "m"), persons_per_carrier=Q(group, "person")
    ).magnitude
    most = liftcalc.most_persons_on_line(
        ridden_length=Q(length, "m"), spacing=Q(gap, "m"), persons_per_carrier=Q(group, "person")
    ).magnitude
    assert average - 1e-6 <= most <= average + group + 1e-6
    assert most % group == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("spacings", [1, 3, 7, 20, 49, 1000])
def test_a_whole_number_of_spacings_has_one_more_rider(spacings):
    for gap in (0.1, 0.7, 6.8, 9.3):
        most = liftcalc.most_persons_on_line(ridden_length=Q(spacings * gap, "m"), spacing=Q(gap, "m"))
        assert most.magnitude == spacings + 1
        assert liftcalc.riders_inside(distance=Q(spacings * gap, "m"), spacing=Q(gap, "m")).magnitude == spacings + 1
        observed = liftcalc.observed_spacing(Q(spacings * gap, "m"), most)
        assert observed.magnitude == pytest.approx(gap)


@given(length=lengths, gap=gaps)
def test_a_loop_has_twice_the_carriers_of_one_side(length, gap):
    loop = liftcalc.carriers_on_loop(sheave_distance=Q(length, "m"), spacing=Q(gap, "m")).magnitude
    assert loop == pytest.approx(
        2 * liftcalc.persons_on_line(ridden_length=Q(length, "m"), spacing=Q(gap, "m")).magnitude
    )


@given(length=st.floats(30, 500), speed=st.floats(0.5, 6), hard=st.floats(1, 4))
def test_a_ride_from_rest_is_the_motion_integrated(length, speed, hard):
    times = np.linspace(0, length / speed + speed / hard, 200_001)
    going = np.minimum(hard * times, speed)
    way = np.concatenate([[0], np.cumsum((going[1:] + going[:-1]) / 2 * np.diff(times))])
    ride = ride_time_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    assert ride.m_as("s") == pytest.approx(np.interp(length, way, times), rel=1e-6)
    assert line_speed_from_ride_time(Q(length, "m"), ride, Q(hard, "m/s**2")).m_as("m/s") == pytest.approx(speed)


@given(length=st.floats(30, 500), speed=st.floats(0.5, 5), hard=st.floats(1, 4))
def test_a_ride_from_rest_to_rest_is_two_halves_from_rest(length, speed, hard):
    whole = ride_time_rest_to_rest(Q(length, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    half = ride_time_from_rest(Q(length / 2, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    assert whole.m_as("s") == pytest.approx(2 * half.m_as("s"))


@given(length=st.floats(60, 300), speed=st.floats(1, 4), hard=st.floats(1, 4), gap=st.floats(2, 12))
def test_riders_from_rest_counted_on_the_rope_are_flow_times_time_and_at_most_one_more_than_whole_headways(
    length, speed, hard, gap
):
    between, moments = gap / speed, np.linspace(0, gap / speed, 400, endpoint=False)
    ride = ride_time_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    headways = ride.m_as("s") / between
    assume(abs(headways - round(headways)) > 1e-6)
    ages = moments[:, None] + between * np.arange(int(headways) + 3)  # of everybody who has taken hold, at each moment
    speeding_up = np.minimum(ages, speed / hard)
    ways = hard * speeding_up**2 / 2 + speed * (ages - speeding_up)
    on_the_rope = (ways <= length).sum(axis=1)
    capacity = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(gap, "m"))
    average = liftcalc.persons_from_flow(capacity, ride).m_as("person")
    assert on_the_rope.mean() == pytest.approx(average, abs=1.01 / 400)  # 400 moments are looked at
    most = liftcalc.most_persons_from_headway(ride_time=ride, headway=Q(between, "s"))
    assert on_the_rope.max() == most.m_as("person")
    at_once = liftcalc.most_persons_on_line(ridden_length=Q(length, "m"), spacing=Q(gap, "m"))
    assert most >= at_once, "a start from rest bunches riders up at the bottom"


@given(length=lengths, gap=gaps, speed=speeds, group=persons)
def test_posts_in_metres_and_in_seconds_are_the_same_at_the_speed_of_the_rope(length, gap, speed, group):
    assume(abs(length / gap - round(length / gap)) > 1e-6)
    n, v, s, long = Q(group, "person"), Q(speed, "m/s"), Q(gap, "m"), Q(length, "m")
    in_seconds = liftcalc.most_persons_from_headway(
        ride_time=liftcalc.ride_time(long, v), headway=liftcalc.headway(v, s), persons_per_carrier=n
    )
    assert in_seconds == liftcalc.most_persons_on_line(ridden_length=long, spacing=s, persons_per_carrier=n)


MESSAGES = [
    (
        lambda: liftcalc.ride_time_from_rest(Q(10, "m"), Q(3.5, "m/s"), Q(0.5, "m/s**2")),
        "ride_time_from_rest: pick_up_acceleration of 0.5 m/s² takes 12.2 m to the speed of the rope, but the ride is "
        "10.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride.",
    ),
    (
        lambda: liftcalc.ride_time_rest_to_rest(Q(100, "m"), Q(8, "m/s"), Q(0.5, "m/s**2")),
        "ride_time_rest_to_rest: acceleration of 0.5 m/s² takes 128.0 m to speed up and to stop, but the ride is "
        "100.0 m long. Write a larger acceleration, such as Q(0.5, 'm/s**2'), or a longer ride.",
    ),
    (
        lambda: liftcalc.line_speed_from_ride_time(Q(150, "m"), Q(14, "s"), Q(1.5, "m/s**2")),
        "line_speed_from_ride_time: nobody covers 150.0 m from rest in 14.0 s at 1.5 m/s². Time the ride again, or "
        "write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
