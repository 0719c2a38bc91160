"""Pull, power, traction, loading and crowds against figures printed outside the project; the id of each is its source.

The books take 9.8 m/s2 for gravity, the package the standard value: what is proportional to gravity is scaled here, and
nothing else.
"""

import math

import pytest

from liftcalc import Q, hourly_capacity_from_head_count, hourly_flow_from_count, persons_on_line, ride_time
from liftcalc.formulas.hand_grip import held_force
from liftcalc.formulas.loading_point import (
    crowd_capacity_at_least,
    crowd_capacity_at_most,
    loading_capacity,
    stopping_gap_spacing,
    unload_capacity,
)
from liftcalc.formulas.motor import idle_power, motor_power_needed
from liftcalc.formulas.pull import momentum_energy, pull_energy, ride_work, rope_pull
from liftcalc.formulas.slope_crowding import slope_capacity
from liftcalc.formulas.traction import capstan_ratio

G_OF_THE_BOOKS = 9.8 / 9.80665
NO_LOSS, NO_DRAG = Q(1, ""), Q(0, "N")
GIANCOLI = "introductory-physics problem (Giancoli type): 75 kg, 23 degrees, 220 m in 2.0 min, friction 0.10, 30 skiers"
BLOCK = "introductory-physics problem: 70 kg, 30 degrees, no friction, 2.0 m/s: 686 W"
KLEPPNER = "Kleppner and Kolenkow, An Introduction to Mechanics, 2nd ed., problem 4.14 (answer: own arithmetic)"
WOLFSPERGER = "Wolfsperger, Meyer, Gilgien, Front. Mech. Eng. 7 (2021) 728722: kinetic friction of skis in the field"
ITALY = "Italian technical prescriptions, Gazz. Uff. 23 March 1999, s. 3.14.7.17: friction 0.22; own arithmetic"


def tangent(degrees):
    """Return the grade of a slope given in degrees."""
    return Q(math.tan(math.radians(degrees)), "")


@pytest.mark.parametrize("source", [f"{GIANCOLI}: 354.84 N each, 26.17 hp"])
def test_thirty_skiers(source):
    pull = G_OF_THE_BOOKS * rope_pull(Q(75, "kg"), grade=tangent(23), snow_friction=Q(0.10, ""))
    assert pull.m_as("N") == pytest.approx(354.84, abs=0.005)
    held = G_OF_THE_BOOKS * held_force(Q(75, "kg"), grade=tangent(23), snow_friction=Q(0.10, ""))
    assert held.m_as("N") == pytest.approx(354.84, abs=0.005)
    length, time = Q(220, "m"), Q(2.0, "minute")
    flow = hourly_flow_from_count(Q(30, "person"), time)
    energy = pull_energy(pull, length)
    power = motor_power_needed(flow, NO_LOSS, length / time, NO_DRAG, energy)
    assert power.m_as("hp") == pytest.approx(26.17, abs=0.005)
    assert round(power.m_as("hp"), 1) == 26.2  # as printed
    on_the_profile = G_OF_THE_BOOKS * ride_work(
        Q(75, "kg"),
        vertical_rise=math.sin(math.radians(23)) * length,
        horizontal_run=math.cos(math.radians(23)) * length,
        snow_friction=Q(0.10, ""),
    )
    assert on_the_profile.m_as("J") == pytest.approx(354.84 * 220, abs=0.005 * 220)


@pytest.mark.parametrize("source", [BLOCK])
def test_one_skier(source):
    speed, length = Q(2.0, "m/s"), Q(100, "m")
    pull = G_OF_THE_BOOKS * rope_pull(Q(70, "kg"), grade=tangent(30), snow_friction=Q(0, ""))
    one_on_the_rope = hourly_capacity_from_head_count(Q(1, "person"), ride_time(length, speed))
    power = motor_power_needed(one_on_the_rope, NO_LOSS, speed, NO_DRAG, pull_energy(pull, length))
    assert power.m_as("W") == pytest.approx(686, abs=0.5)
    assert idle_power(NO_LOSS, speed, pull).m_as("W") == pytest.approx(686, abs=0.5)  # any force times its speed


@pytest.mark.parametrize("source", [f"{KLEPPNER}: 13.33 on the rope, 3,128 N steady, 3,149 N with momentum"])
def test_skiers_on_a_rope(source):
    speed, length, mass = Q(1.5, "m/s"), Q(100, "m"), Q(70, "kg")
    pull = G_OF_THE_BOOKS * rope_pull(mass, grade=tangent(20), snow_friction=Q(0, ""))
    riders = persons_on_line(ridden_length=length, spacing=speed * Q(5, "s"))
    assert (riders.m_as("person") * pull).m_as("N") == pytest.approx(3128, abs=0.5)
    flow = loading_capacity(Q(5, "s"))
    forces = [
        (motor_power_needed(flow, NO_LOSS, speed, NO_DRAG, energy) / speed).m_as("N")
        for energy in (pull_energy(pull, length), pull_energy(pull, length) + momentum_energy(mass, speed))
    ]
    assert forces == [pytest.approx(3128, abs=0.5), pytest.approx(3149, abs=0.5)]


@pytest.mark.parametrize("source", [f"{ITALY}: 1.996 for half a turn"])
def test_capstan(source):
    assert capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=Q(180, "degree")).m_as("") == pytest.approx(
        1.996, abs=5e-4
    )
    assert capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=Q(math.pi, "radian")).m_as("") == pytest.approx(
        1.996, abs=5e-4
    )


FRICTIONS = [(0.023, 0.006), (0.139, 0.018)]


@pytest.mark.parametrize(
    ("friction", "doubt"), FRICTIONS, ids=[f"{WOLFSPERGER}: {value} +/- {doubt}" for value, doubt in FRICTIONS]
)
def test_friction_on_the_flat_is_pull_over_weight(friction, doubt):
    weight = 75 * 9.80665
    pull = rope_pull(Q(75, "kg"), grade=Q(0, ""), snow_friction=Q(friction, "")).m_as("N")
    assert pull / weight == pytest.approx(friction, abs=1e-9)
    assert FRICTIONS[0][0] < 0.07 < FRICTIONS[1][0]  # the example tow's friction lies inside what was measured
    edges = [
        rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(friction + sign * doubt, "")).m_as("N")
        for sign in (-1, 1)
    ]
    assert edges[1] - edges[0] == pytest.approx(2 * doubt * weight / math.hypot(1, 0.2), rel=1e-9)


INTERVALS = [  # persons, time [s], pph, source
    (4, 6, 2400, "Know Your Capacity, SAM (Ski Area Management), July 2018: quad, 6 s"),
    (4, 8, 1800, "Know Your Capacity, SAM (Ski Area Management), July 2018: quad, 8 s"),
    (2, 5, 1440, "34 Pa. Code s. 7.466: T-bar at least 5 s, with no extra time"),
    (1, 3, 1200, "34 Pa. Code s. 7.466: single outfit at least 3 s, with no extra time"),
]


@pytest.mark.parametrize(("persons", "time", "pph", "source"), INTERVALS, ids=[case[-1] for case in INTERVALS])
def test_one_place_at_either_end(persons, time, pph, source):
    assert loading_capacity(Q(time, "s"), Q(persons, "person")).m_as("pph") == pytest.approx(pph, rel=1e-12)
    assert unload_capacity(Q(time, "s"), Q(persons, "person")).m_as("pph") == pytest.approx(pph, rel=1e-12)


@pytest.mark.parametrize(
    "source", ["AASHTO Green Book stopping sight distance, 15 mph: 55.0 + 21.6 ft (a road figure)"]
)
def test_stopping_gap_in_the_form_of_the_road(source):
    gap, speed, slowing = Q(10, "ft"), Q(15, "mph"), Q(11.2, "ft/s**2")
    assert (stopping_gap_spacing(gap, speed, Q(2.5, "s"), slowing) - gap).m_as("ft") == pytest.approx(76.6, abs=0.05)
    assert (stopping_gap_spacing(gap, speed, Q(0, "s"), slowing) - gap).m_as("ft") == pytest.approx(21.6, abs=0.05)


CLOSED_LOOP = [(1, 2 / 3), (2, 1.2), (3, 1.5789)]
LOOP_SOURCE = "exact mean value analysis, textbook exercise: think time 1, service 0.5"


@pytest.mark.parametrize(
    ("crowd", "throughput"), CLOSED_LOOP, ids=[f"{LOOP_SOURCE}, {case[0]} circulating" for case in CLOSED_LOOP]
)
def test_bounds_hold_a_published_closed_loop(crowd, throughput):
    loop = {"ride_and_descent": Q(1, "s"), "loading_time": Q(0.5, "s")}
    most = crowd_capacity_at_most(Q(crowd, "person"), **loop).m_as("person/s")
    least = crowd_capacity_at_least(Q(crowd, "person"), **loop).m_as("person/s")
    assert least * (1 - 1e-12) <= throughput <= most * (1 + 1e-12)
    if crowd == 1:  # alone nobody waits, and both bounds are exact
        assert [least, most] == [pytest.approx(throughput, rel=1e-12)] * 2


@pytest.mark.parametrize("source", ["Aspen Highlands FEIS 1997, Table 3: 962 skiers on 96 acres, 10.0 per acre"])
def test_density_times_area(source):
    area, hour = Q(96, "acre"), Q(1, "hour")
    assert slope_capacity(Q(962 / 96, "person/acre"), area, hour).m_as("pph") == pytest.approx(962, rel=1e-12)
    assert slope_capacity(Q(10.0, "person/acre"), area, hour).m_as("pph") == pytest.approx(962, abs=0.05 * 96)
