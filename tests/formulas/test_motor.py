"""The motor: the example tow, laws, and second opinions by other roads."""

import math

import numpy as np
import pytest
from example_tow import EFFICIENCY, IDLE, LENGTH, MASS, NO_DRAG, PICK_UP, POWER, PULL, SPEED, G
from hypothesis import assume, given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.formulas import motor
from liftcalc.formulas import pull as pulling

speeds = st.floats(0.3, 5)


def tow_capacity(speed, idle=500.0, **parts):
    """Return the motor's pph for the example tow at a line speed in m/s."""
    energy = pulling.energy_per_rider(PULL, LENGTH, MASS, Q(speed, "m/s"), PICK_UP)
    return motor.motor_capacity(
        POWER, EFFICIENCY, Q(speed, "m/s"), Q(idle, "N"), parts.get("energy", energy)
    ).m_as("pph")  # fmt: skip


def test_own_arithmetic_the_simple_law():
    simple = motor.simple_motor_capacity(POWER, EFFICIENCY, pulling.pull_energy(PULL, LENGTH)).m_as("pph")
    assert simple == pytest.approx(1571, abs=0.5)
    weight = 75 * G
    by_hand = 3600 * 0.85 * 15000 / (weight * (0.2 + 0.07) / math.sqrt(1.04) * 150)
    assert simple == pytest.approx(by_hand, rel=1e-12)


def test_own_arithmetic_with_idle_drag_and_pick_up():
    assert tow_capacity(3.4) == pytest.approx(1290, abs=0.6)


def test_own_arithmetic_idle_power_and_power_per_thousand():
    assert motor.idle_power(EFFICIENCY, SPEED, IDLE).m_as("W") == pytest.approx(500 * 3.4 / 0.85, rel=1e-12)
    energy = pulling.energy_per_rider(PULL, LENGTH, MASS, SPEED, PICK_UP)
    needed = motor.motor_power_needed(Q(1200, "pph"), Q(1, ""), SPEED, NO_DRAG, energy)
    # kilowatts per 1,000 pph is the energy of one rider in watt-hours
    each = motor.power_per_thousand_pph(needed, Q(1200, "pph"))
    assert each.m_as("W*hour/person") == pytest.approx(energy.m_as("J") / 3600, rel=1e-12)


def test_own_arithmetic_a_platter_of_400_m_every_7_s():
    at_the_riders = motor.motor_power_needed(
        Q(3600 / 7, "pph"), Q(1, ""), Q(2.8, "m/s"), NO_DRAG, pulling.pull_energy(PULL, Q(400, "m"))
    )
    assert at_the_riders.m_as("kW") == pytest.approx(11, abs=0.5)  # about 11 kW


def test_own_arithmetic_a_peak_of_riders():
    peak = motor.peak_riders_mass(Q(25, "person"), MASS, Q(0.25, "")).m_as("kg")
    assert peak == pytest.approx(25 * 75 * 1.1, rel=1e-12)


@given(speed=speeds, power=st.floats(2, 60), work=st.floats(2e3, 2e5))
def test_the_simple_law_is_the_full_one_without_drag_and_pick_up(speed, power, work):
    full = motor.motor_capacity(Q(power, "kW"), EFFICIENCY, Q(speed, "m/s"), NO_DRAG, Q(work, "J")).m_as("pph")
    simple = motor.simple_motor_capacity(Q(power, "kW"), EFFICIENCY, Q(work, "J")).m_as("pph")
    other_speed = motor.motor_capacity(Q(power, "kW"), EFFICIENCY, Q(2 * speed, "m/s"), NO_DRAG, Q(work, "J"))
    assert full == pytest.approx(simple, rel=1e-12)
    assert other_speed.m_as("pph") == pytest.approx(full, rel=1e-12)


@given(speed=speeds, more=st.floats(0.05, 3), idle=st.floats(0, 1500))
def test_at_full_power_a_faster_rope_lets_the_motor_carry_fewer(speed, more, idle):
    slow, fast = tow_capacity(speed, idle), tow_capacity(speed + more, idle)
    assert fast < slow
    assert slow < 1571.5  # and never as many as by the simple law


@given(speed=st.floats(0.3, 3.4), factor=st.floats(0.1, 1))
def test_at_constant_torque_the_limit_is_in_proportion_to_the_speed(speed, factor):
    def capacity(line_speed, energy, idle):
        return motor.motor_capacity_at_constant_torque(
            POWER, EFFICIENCY, idle, energy, line_speed=Q(line_speed, "m/s"), base_speed=SPEED
        ).m_as("pph")

    work = pulling.pull_energy(PULL, LENGTH)
    for idle in (NO_DRAG, IDLE):  # the drag takes its part of the torque: still in proportion
        assert capacity(factor * speed, work, idle) == pytest.approx(factor * capacity(speed, work, idle), rel=1e-9)
    with_pick_up = [
        capacity(v, pulling.energy_per_rider(PULL, LENGTH, MASS, Q(v, "m/s"), PICK_UP), IDLE)
        for v in (speed, factor * speed)
    ]
    assert with_pick_up[1] == pytest.approx(factor * with_pick_up[0], rel=0.06)  # about in proportion
    assert with_pick_up[1] >= factor * with_pick_up[0] * (1 - 1e-9)


@given(speed=st.floats(3.4, 6), idle=st.floats(0, 1500), energy=st.floats(1e4, 1e5))
def test_above_base_speed_power_is_constant(speed, idle, energy):
    at_torque = motor.motor_capacity_at_constant_torque(
        POWER, EFFICIENCY, Q(idle, "N"), Q(energy, "J"), line_speed=Q(speed, "m/s"), base_speed=SPEED
    )
    at_power = motor.motor_capacity(POWER, EFFICIENCY, Q(speed, "m/s"), Q(idle, "N"), Q(energy, "J"))
    assert at_torque.m_as("pph") == pytest.approx(at_power.m_as("pph"), rel=1e-12)


@given(pph=st.floats(0, 4000), speed=speeds, idle=st.floats(0, 2000), energy=st.floats(2e3, 2e5))
def test_power_needed_and_capacity_are_inverse(pph, speed, idle, energy):
    rest = (EFFICIENCY, Q(speed, "m/s"), Q(idle, "N"), Q(energy, "J"))
    needed = motor.motor_power_needed(Q(pph, "pph"), *rest)
    assume(needed.magnitude > 1e-6)
    assert motor.motor_capacity(needed, *rest).m_as("pph") == pytest.approx(pph, rel=1e-9, abs=1e-6)
    idle_power = motor.idle_power(*rest[:3]).m_as("kW")
    assert motor.motor_power_needed(Q(0, "pph"), *rest).m_as("kW") == pytest.approx(idle_power, rel=1e-12)


def test_a_motor_that_only_turns_the_rope_carries_nobody():
    energy = pulling.pull_energy(PULL, LENGTH)
    for speed, left_over in ((3.4, 850), (6.7, 25), (6.9, 0), (9.0, 0)):  # watts, of 1,700 at the rope
        capacity = motor.motor_capacity(Q(2, "kW"), EFFICIENCY, Q(speed, "m/s"), Q(250, "N"), energy)
        assert (capacity * energy).m_as("person*W") == pytest.approx(left_over, abs=1e-6)


def test_a_peak_of_mixed_riders_against_draws():
    riders, mean, variation, draws = 25, 75.0, 0.25, 40_000
    lines = np.random.default_rng(20).normal(mean, variation * mean, (draws, riders)).sum(axis=1)
    peak = motor.peak_riders_mass(Q(riders, "person"), Q(mean, "kg"), Q(variation, "")).m_as("kg")
    spread = (peak - riders * mean) / 2
    standard_error = lines.std(ddof=1) / math.sqrt(2 * draws)
    assert abs(lines.std(ddof=1) - spread) < 4 * standard_error
    assert np.mean(lines > peak) == pytest.approx(0.0228, abs=4 * math.sqrt(0.0228 / draws))


@given(inertia=st.floats(0.001, 50), radius=st.floats(0.2, 3), gears=st.floats(0.5, 60), speed=st.floats(0.5, 6))
def test_inertia_at_the_rope_holds_the_energy_of_what_turns(inertia, radius, gears, speed):
    mass = motor.inertia_at_the_rope(Q(inertia, "kg*m**2"), Q(radius, "m"), Q(gears, "")).m_as("kg")
    turning = inertia * (gears * speed / radius) ** 2 / 2
    assert mass * speed**2 / 2 == pytest.approx(turning)


def test_common_practice_a_small_rotor_is_a_large_mass_at_the_rope():
    # a four-pole rotor of 15 kW, about 0.1 kg m2 at about 1,450 turns a minute, with the rope at 2.8 m/s
    gears = 1450 / 60 * 2 * math.pi / (2.8 / 0.8)
    mass = motor.inertia_at_the_rope(Q(0.1, "kg*m**2"), Q(0.8, "m"), Q(gears, "")).m_as("kg")
    assert mass == pytest.approx(300, rel=0.05)
    assert motor.inertia_at_the_rope(Q(64, "kg*m**2"), Q(0.8, "m")).m_as("kg") == pytest.approx(100)


@pytest.mark.parametrize("altitude", [0, 500, 2000, 4000])
def test_thin_air_against_the_column_of_air_integrated(altitude):
    """Hydrostatic balance of dry air whose temperature falls evenly, added up step by step."""
    pressure = 101325.0
    for height in np.arange(0.5, altitude, 1.0):
        pressure -= pressure * 9.80665 / (287.05287 * (288.15 - 0.0065 * height))
    density = (pressure / 101325.0) * 288.15 / (288.15 - 0.0065 * altitude)
    left = motor.engine_power_at_altitude(Q(15, "kW"), Q(altitude, "m")).m_as("kW")
    assert left == pytest.approx(15 * density, rel=2e-4)


def test_thin_air_as_the_standard_table_has_it():
    # density at 2,000 m above the sea: 1.0066 kg/m3, at sea level 1.2250; ISO 2533, from memory, rounded so
    left = motor.engine_power_at_altitude(Q(1, "kW"), Q(2000, "m")).m_as("kW")
    assert left == pytest.approx(1.0066 / 1.2250, rel=2e-4)


MESSAGES = [
    (
        lambda: motor.engine_power_at_altitude(Q(1, "kW"), Q(12000, "m")),
        "engine_power_at_altitude: altitude must be 11,000 m or less, but got 12,000 m. "
        "Write the height above the sea in metres or feet, such as Q(2000, 'm').",
    ),
    (
        lambda: motor.motor_capacity(Q(20, "hp"), EFFICIENCY, SPEED, IDLE, Q(195, "N")),
        "motor_capacity: energy_per_rider must be an energy, but got a force: 195 N. Write for example Q(30000, 'J').",
        UnitError,
    ),
    (
        lambda: motor.simple_motor_capacity(POWER, Q(85, ""), Q(29200, "J")),
        "simple_motor_capacity: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.motor_capacity(POWER, Q(1.2, ""), SPEED, IDLE, Q(29200, "J")),
        "motor_capacity: efficiency must be 1 or less, but got 1.2. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.motor_capacity_at_constant_torque(
            POWER, Q(85, ""), IDLE, Q(29200, "J"), line_speed=SPEED, base_speed=SPEED
        ),
        "motor_capacity_at_constant_torque: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.motor_power_needed(Q(1200, "pph"), Q(85, ""), SPEED, IDLE, Q(29200, "J")),
        "motor_power_needed: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.idle_power(Q(85, ""), SPEED, IDLE),
        "idle_power: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
