"""Stopping: the rope after a stop gate and a rider who lets go; stops are walked in small steps as a second opinion."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from ranges import speeds

import liftcalc
from liftcalc import Q


@given(
    speed=speeds, slowing=st.floats(0.3, 6), delay=st.floats(0, 3), reaction=st.floats(0, 6), factor=st.floats(1.1, 4)
)
def test_stopping_distances(speed, slowing, delay, reaction, factor):
    v, a, wait = Q(speed, "m/s"), Q(slowing, "m/s**2"), Q(delay, "s")
    gate = liftcalc.rope_stopping_distance(v, wait, a).magnitude
    attendant = liftcalc.attendant_stopping_distance(
        v, reaction_time=Q(reaction, "s"), stop_delay=wait, rope_deceleration=a
    ).magnitude
    assert attendant - gate == pytest.approx(speed * reaction, abs=1e-9)
    braking = liftcalc.rope_stopping_distance(v, Q(0, "s"), a).magnitude
    faster = liftcalc.rope_stopping_distance(factor * v, Q(0, "s"), a).magnitude
    assert faster == pytest.approx(factor**2 * braking)
    # a second opinion: small steps of time until the rope stands
    steps = 20_000
    step = speed / slowing / steps
    walked = sum(step * (speed - slowing * step * (number + 0.5)) for number in range(0, steps, 200)) * 200
    assert walked == pytest.approx(braking, rel=0.02)


@given(speed=speeds, grade=st.floats(0, 0.6), friction=st.floats(0.01, 0.2))
def test_a_rider_who_lets_go_gives_up_all_energy(speed, grade, friction):
    distance = liftcalc.rider_stopping_distance(
        Q(speed, "m/s"), grade=Q(grade, ""), snow_friction=Q(friction, "")
    ).magnitude
    angle = math.radians(liftcalc.slope_angle(Q(grade, "")).m_as("degree"))
    lifted, rubbed = 9.80665 * distance * math.sin(angle), friction * 9.80665 * distance * math.cos(angle)
    assert lifted + rubbed == pytest.approx(speed**2 / 2, rel=1e-9)
    slowing = liftcalc.rider_deceleration(grade=Q(grade, ""), snow_friction=Q(friction, "")).magnitude
    assert speed**2 / (2 * slowing) == pytest.approx(distance)


@pytest.mark.parametrize(
    ("grade", "distance", "source"),
    [(15, 3, "own arithmetic: 3 m on 15 percent at 3.4 m/s"), (0, 12, "own arithmetic: 12 m on the flat")],
)
def test_stopping_distances_in_round_numbers(grade, distance, source):
    friction = Q(0.05, "")
    glide = liftcalc.rider_stopping_distance(Q(3.4, "m/s"), grade=Q(grade, "percent"), snow_friction=friction).m_as("m")
    assert glide == pytest.approx(distance, rel=0.04)


@given(riders=st.integers(0, 60), mass=st.floats(30, 120), grade=st.floats(0.05, 0.4), brake=st.floats(0, 3000))
def test_a_rope_that_is_let_go_slows_as_all_that_moves_with_it_asks(riders, mass, grade, brake):
    pull = liftcalc.rope_pull(Q(mass, "kg"), grade=Q(grade, ""), snow_friction=Q(0.07, ""))
    rope = {"pull": pull, "idle_drag": Q(500, "N"), "brake_force": Q(brake, "N"), "rider_mass": Q(mass, "kg")}
    slowing = liftcalc.rope_deceleration(Q(riders, "person"), **rope, moving_mass=Q(400, "kg")).m_as("m/s**2")
    forces = riders * pull.m_as("N") + 500 + brake
    assert slowing * (400 + riders * mass) == pytest.approx(forces)
    alone = liftcalc.rider_deceleration(grade=Q(grade, ""), snow_friction=Q(0.07, "")).m_as("m/s**2")
    empty = (500 + brake) / 400
    assert min(alone, empty) * (1 - 1e-9) <= slowing <= max(alone, empty) * (1 + 1e-9), "between rope and rider alone"


TOW = {"pull": liftcalc.rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, "")),
       "idle_drag": Q(500, "N"), "rider_mass": Q(75, "kg"), "moving_mass": Q(400, "kg")}  # fmt: skip


def stopped_step_by_step(riders, brake, speed=3.4, step=1e-3):
    """Return how far a rope runs whose riders hold on with springy arms, and their mean pull: an own integration."""
    pull, drag, mass, rope_mass = (value.magnitude for value in TOW.values())
    stiff, damping = 2e4, 1e3
    rope, rider = np.zeros(len(riders)), np.full(len(riders), -pull / stiff)
    rope_speed, rider_speed = np.full(len(riders), speed), np.full(len(riders), speed)
    pulled, going = np.zeros(len(riders)), np.full(len(riders), True)
    steps = np.zeros(len(riders))
    while going.any():
        hand = stiff * (rope - rider) + damping * (rope_speed - rider_speed)
        rope_speed = rope_speed - step * (drag + brake + riders * hand) / rope_mass
        rider_speed = rider_speed + step * (hand - pull) / mass
        going &= rope_speed > 0
        rope, rider = rope + step * rope_speed * going, rider + step * rider_speed * going
        pulled, steps = pulled + hand * going, steps + going
    return rope, pulled / steps


def test_which_load_runs_furthest_depends_on_the_brake():
    riders, brake = np.array([0, 22] * 3), np.repeat([0.0, 540.0, 2000.0], 2)
    slowing = liftcalc.rope_deceleration(Q(riders, "person"), brake_force=Q(brake, "N"), **TOW)
    stops = liftcalc.rope_stopping_distance(Q(3.4, "m/s"), Q(0.5, "s"), slowing).m_as("m")
    walked, hands = stopped_step_by_step(riders, brake)
    assert stops == pytest.approx(1.7 + walked, rel=0.01)
    assert stops.round(1).tolist() == [6.3, 4.2, 3.9, 3.9, 2.6, 3.4], "own arithmetic: empty, full at three brakes"
    weak, even, strong = hands[riders > 0]
    assert weak == pytest.approx(195 - 75 * 2.334, abs=1), "a weak brake: the rope still pulls its riders"
    assert even == pytest.approx(0, abs=1), "between the two nobody feels the rope"
    assert strong == pytest.approx(195 - 75 * 3.309, abs=1), "a strong brake: it holds them back, they push it on"


@given(riders=st.integers(1, 60), share=st.floats(0.2, 3), mass=st.floats(30, 120), grade=st.floats(0.1, 0.4))
def test_at_one_brake_force_riders_make_no_difference(riders, share, mass, grade):
    slope = {"grade": Q(grade, ""), "snow_friction": Q(0.07, "")}
    line = TOW | {"pull": liftcalc.rope_pull(Q(mass, "kg"), **slope), "rider_mass": Q(mass, "kg")}
    idle = {"idle_drag": Q(100, "N")}
    even = liftcalc.brake_force_where_riders_make_no_difference(**line | idle)

    def slows(number, brake):
        return liftcalc.rope_deceleration(Q(number, "person"), brake_force=brake, **line | idle).m_as("m/s**2")

    alone = liftcalc.rider_deceleration(**slope).m_as("m/s**2")
    assert slows(0, even) == pytest.approx(alone)
    assert slows(riders, even) == pytest.approx(alone)
    brake = share * even
    assert (slows(riders, brake) > slows(0, brake)) == (brake < even) or abs(share - 1) < 1e-9


MESSAGES = [
    (
        lambda: liftcalc.rider_deceleration(grade=Q(0, ""), snow_friction=Q(0, "")),
        "rider_deceleration: grade and snow_friction must not both be zero, or the rider never stops. "
        "Write a snow_friction such as Q(0.07, '').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
