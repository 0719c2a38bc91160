"""Pull and energy of a ride: own arithmetic, laws, and second opinions by other roads.

A second opinion uses no formula of the package: balances are solved, a pick-up is integrated, a belt is added up
element by element.
"""

import math

import numpy as np
import pytest
from example_tow import FRICTION, GRADE, LENGTH, MASS, PICK_UP, PULL, SPEED, G
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.formulas import hand_grip
from liftcalc.formulas import pull as pulling

masses = st.floats(20, 120)
grades = st.floats(0, 0.6)
frictions = st.floats(0, 0.2)


def test_own_arithmetic_the_parts_of_the_energy():
    parts = [
        pulling.pull_energy(PULL, LENGTH).m_as("J"),
        pulling.momentum_energy(MASS, SPEED).m_as("J"),
        pulling.slip_energy(PULL, SPEED, PICK_UP).m_as("J"),
    ]
    assert parts == [pytest.approx(29209, abs=1), pytest.approx(75 * 3.4**2), pytest.approx(750, abs=1)]
    whole = pulling.energy_per_rider(PULL, LENGTH, MASS, SPEED, PICK_UP).m_as("J")
    assert whole == pytest.approx(sum(parts), rel=1e-12)


def test_own_arithmetic_drag_of_sheaves_and_belt():
    assert pulling.sheave_drag(Q(12000, "kg"), Q(3, "percent")).m_as("N") == pytest.approx(3530.394, abs=1e-6)


@given(
    parts=st.lists(st.tuples(st.floats(0, 0.7), st.floats(5, 200)), min_size=1, max_size=6),
    mass=masses,
    friction=frictions,
)
def test_work_of_a_ride_is_pull_times_length_part_by_part(parts, mass, friction):
    added = rise = run = 0.0
    for grade, length in parts:
        pull = pulling.rope_pull(Q(mass, "kg"), grade=Q(grade, ""), snow_friction=Q(friction, ""))
        added += pulling.pull_energy(pull, Q(length, "m")).m_as("J")
        run += length / math.hypot(1, grade)
        rise += grade * length / math.hypot(1, grade)
    profile = {"vertical_rise": Q(rise, "m"), "horizontal_run": Q(run, "m")}
    mu = Q(friction, "")
    assert pulling.ride_work(Q(mass, "kg"), snow_friction=mu, **profile).m_as("J") == pytest.approx(
        added, rel=1e-9, abs=1e-9
    )
    # a load on sheaves, and a belt on its bed, are pressed on as skis are on snow
    chair = pulling.carrier_work(Q(mass, "kg"), sheave_drag_share=mu, **profile).m_as("J")
    belt = pulling.conveyor_work(Q(mass, "kg"), bed_friction=mu, **profile).m_as("J")
    assert [chair, belt] == [pytest.approx(added, rel=1e-9, abs=1e-9)] * 2


@given(mass=masses, grade=grades, friction=frictions, degrees=st.floats(0, 60))
def test_tether_against_the_two_balances_solved(mass, grade, friction, degrees):
    slope, theta = math.atan(grade), math.radians(degrees)
    along = [math.cos(theta), -friction]  # tether and snow: pull less rubbing carries the weight along the slope
    across = [math.sin(theta), 1.0]
    weight = [mass * G * math.sin(slope), mass * G * math.cos(slope)]
    tether, _ = np.linalg.solve([along, across], weight)
    pull = pulling.rope_pull(Q(mass, "kg"), grade=Q(grade, ""), snow_friction=Q(friction, ""))
    angle = Q(degrees, "degree")
    found = pulling.tether_pull(pull, tether_angle=angle, snow_friction=Q(friction, "")).m_as("N")
    assert found == pytest.approx(tether, rel=1e-9, abs=1e-9)


def test_belt_added_up_element_by_element():
    rise, run, elements, mass_per_length = 8.0, 79.6, 400, 8.0
    length = math.hypot(rise, run)
    force = 0.0
    for way, friction in ((1, 0.3), (-1, 0.05)):
        for _ in range(elements):
            weight = mass_per_length * length / elements * G
            force += way * weight * rise / length + friction * weight * run / length
    drag = pulling.belt_drag(
        Q(mass_per_length, "kg/m"), Q(run, "m"), bed_friction=Q(0.3, ""), return_friction=Q(0.05, "")
    )
    assert drag.m_as("N") == pytest.approx(force, rel=1e-9)


PICK_UPS = [(75, 20, 0.07, 3.4, 1.5), (40, 10, 0.04, 2.0, 0.6), (95, 35, 0.12, 5.0, 3.0)]


@pytest.mark.parametrize(("mass", "percent", "friction", "speed", "speeding_up"), PICK_UPS)
def test_energy_of_a_slipping_pick_up_integrated(mass, percent, friction, speed, speeding_up):
    """The hand holds one steady force; where the rider gets to, and what the drive gave, comes out of the motion."""
    from scipy.integrate import solve_ivp

    slope = math.atan(percent / 100)
    resistance = mass * G * (math.sin(slope) + friction * math.cos(slope))
    hand = resistance + mass * speeding_up

    def motion(_, state):
        _, rider_speed, _, _ = state
        return [rider_speed, (hand - resistance) / mass, hand * speed, hand * (speed - rider_speed)]

    def caught_up(_, state):
        return state[1] - speed

    caught_up.terminal, caught_up.direction = True, 1
    run = solve_ivp(motion, (0, 100), [0.0, 0.0, 0.0, 0.0], events=caught_up, rtol=1e-9, atol=1e-9)
    ridden, _, given_by_drive, heat = run.y[:, -1]
    length = 150.0
    given_by_drive += resistance * (length - ridden)
    pull = pulling.rope_pull(Q(mass, "kg"), grade=Q(percent, "percent"), snow_friction=Q(friction, ""))
    v, a = Q(speed, "m/s"), Q(speeding_up, "m/s**2")
    energy = pulling.energy_per_rider(pull, Q(length, "m"), Q(mass, "kg"), v, a).m_as("J")
    assert energy == pytest.approx(given_by_drive, rel=1e-6)
    slip = pulling.slip_energy(pull, v, a).m_as("J")
    momentum = pulling.momentum_energy(Q(mass, "kg"), v).m_as("J")
    assert heat == pytest.approx(slip + momentum / 2, rel=1e-6)  # what warms the gloves
    held = hand_grip.held_force(Q(mass, "kg"), a, grade=Q(percent, "percent"), snow_friction=Q(friction, "")).m_as("N")
    assert held == pytest.approx(hand, rel=1e-12)


@given(angle=st.floats(0, 80), friction=st.floats(0, 0.3), pull=st.floats(50, 400))
def test_what_the_rope_feels_of_a_tether_is_its_part_along_the_slope(angle, friction, pull):
    relief = pulling.tether_relief(Q(angle, "degree"), Q(friction, "")).m_as("")
    tether = pulling.tether_pull(Q(pull, "N"), tether_angle=Q(angle, "degree"), snow_friction=Q(friction, "")).m_as("N")
    assert relief * pull == pytest.approx(tether * math.cos(math.radians(angle)))


def test_own_arithmetic_a_tether_at_30_degrees_takes_four_in_a_hundred():
    # tether T and snow N from the balance of forces along and across the slope, the weight across cancelled out
    tether, _ = np.linalg.solve([[math.cos(math.pi / 6), -0.07], [math.sin(math.pi / 6), 1]], [1.0, 0.0])
    relief = pulling.tether_relief(Q(30, "degree"), Q(0.07, "")).m_as("")
    assert relief == pytest.approx(tether * math.cos(math.pi / 6))
    assert 1 / relief == pytest.approx(1.0404, abs=1e-4)


MESSAGES = [
    (
        lambda: pulling.rope_pull(75, grade=GRADE, snow_friction=FRICTION),
        "rope_pull: rider_mass needs a unit, but got the bare value 75. Write Q(75, 'kg').",
        UnitError,
    ),
    (
        lambda: pulling.tether_pull(PULL, tether_angle=Q(90, "degree"), snow_friction=FRICTION),
        "tether_pull: tether_angle must be less than 90 degrees, but got 90 degrees. "
        "Give the angle between tether and slope, such as Q(30, 'degree').",
    ),
    (
        lambda: pulling.energy_per_rider(PULL, Q(10, "m"), MASS, Q(6, "m/s"), Q(1, "m/s**2")),
        "energy_per_rider: pick_up_acceleration of 1 m/s² takes 18.0 m to the speed of the rope, but the ride is "
        "10.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
