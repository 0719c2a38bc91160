"""Motor, traction and loading point: an example tow, laws, and second opinions by other roads.

A second opinion uses no formula of the package: a pick-up and a rope on a sheave are integrated, a whole loop of rope
is added up element by element, and means are drawn.
"""

import math
import re
from statistics import NormalDist

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from liftcalc import Q, UnitError, hourly_capacity
from liftcalc.formulas import hand_grip, motor, traction
from liftcalc.formulas import loading_point as loading
from liftcalc.formulas import pull as pulling
from liftcalc.uncertainty import Estimate, UncertaintyError, by_sampling

G = 9.80665
MASS, SPEED, LENGTH = Q(75, "kg"), Q(3.4, "m/s"), Q(150, "m")
GRADE, FRICTION, PICK_UP = Q(20, "percent"), Q(0.07, ""), Q(1.5, "m/s**2")
POWER, EFFICIENCY, IDLE, NO_DRAG = Q(15, "kW"), Q(0.85, ""), Q(500, "N"), Q(0, "N")
PULL = pulling.rope_pull(MASS, grade=GRADE, snow_friction=FRICTION)

masses = st.floats(20, 120)
grades = st.floats(0, 0.6)
frictions = st.floats(0, 0.2)
speeds = st.floats(0.3, 5)
pulls = st.floats(20, 600)
accelerations = st.floats(0.5, 4)


def tow_capacity(speed, idle=500.0, **parts):
    """Return the motor's pph for the example tow at a line speed in m/s."""
    energy = pulling.energy_per_rider(PULL, LENGTH, MASS, Q(speed, "m/s"), PICK_UP)
    return motor.motor_capacity(
        POWER, EFFICIENCY, Q(speed, "m/s"), Q(idle, "N"), parts.get("energy", energy)
    ).m_as("pph")  # fmt: skip


class TestExampleTow:
    """15 kW, efficiency 0.85, 150 m at 20 percent, riders 75 kg, friction 0.07: own arithmetic."""

    def test_own_arithmetic_the_simple_law(self):
        simple = motor.simple_motor_capacity(POWER, EFFICIENCY, pulling.pull_energy(PULL, LENGTH)).m_as("pph")
        assert simple == pytest.approx(1571, abs=0.5)
        weight = 75 * G
        by_hand = 3600 * 0.85 * 15000 / (weight * (0.2 + 0.07) / math.sqrt(1.04) * 150)
        assert simple == pytest.approx(by_hand, rel=1e-12)

    def test_own_arithmetic_with_idle_drag_and_pick_up(self):
        assert tow_capacity(3.4) == pytest.approx(1290, abs=0.6)

    def test_own_arithmetic_the_parts_of_the_energy(self):
        parts = [
            pulling.pull_energy(PULL, LENGTH).m_as("J"),
            pulling.momentum_energy(MASS, SPEED).m_as("J"),
            pulling.slip_energy(PULL, SPEED, PICK_UP).m_as("J"),
        ]
        assert parts == [pytest.approx(29209, abs=1), pytest.approx(75 * 3.4**2), pytest.approx(750, abs=1)]
        whole = pulling.energy_per_rider(PULL, LENGTH, MASS, SPEED, PICK_UP).m_as("J")
        assert whole == pytest.approx(sum(parts), rel=1e-12)

    def test_own_arithmetic_idle_power_and_power_per_thousand(self):
        assert motor.idle_power(EFFICIENCY, SPEED, IDLE).m_as("W") == pytest.approx(500 * 3.4 / 0.85, rel=1e-12)
        energy = pulling.energy_per_rider(PULL, LENGTH, MASS, SPEED, PICK_UP)
        needed = motor.motor_power_needed(Q(1200, "pph"), Q(1, ""), SPEED, NO_DRAG, energy)
        # kilowatts per 1,000 pph is the energy of one rider in watt-hours
        each = motor.power_per_thousand_pph(needed, Q(1200, "pph"))
        assert each.m_as("W*hour/person") == pytest.approx(energy.m_as("J") / 3600, rel=1e-12)

    def test_own_arithmetic_a_platter_of_400_m_every_7_s(self):
        at_the_riders = motor.motor_power_needed(
            Q(3600 / 7, "pph"), Q(1, ""), Q(2.8, "m/s"), NO_DRAG, pulling.pull_energy(PULL, Q(400, "m"))
        )
        assert at_the_riders.m_as("kW") == pytest.approx(11, abs=0.5)  # about 11 kW

    def test_own_arithmetic_an_adult_of_80_kg_holds_about_200_n(self):
        held = hand_grip.held_force(Q(80, "kg"), grade=GRADE, snow_friction=FRICTION).m_as("N")
        assert held == pytest.approx(200, rel=0.05)

    def test_own_arithmetic_a_peak_of_riders(self):
        peak = motor.peak_riders_mass(Q(25, "person"), MASS, Q(0.25, "")).m_as("kg")
        assert peak == pytest.approx(25 * 75 * 1.1, rel=1e-12)

    def test_own_arithmetic_drag_of_sheaves_and_belt(self):
        assert pulling.sheave_drag(Q(12000, "kg"), Q(3, "percent")).m_as("N") == pytest.approx(3530.394, abs=1e-6)
        assert hand_grip.rope_weight_in_hands(Q(0.6, "kg/m"), Q(6.8, "m")).m_as("N") == pytest.approx(40.01, abs=0.005)


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


def test_a_peak_of_mixed_riders_against_draws():
    riders, mean, variation, draws = 25, 75.0, 0.25, 40_000
    lines = np.random.default_rng(20).normal(mean, variation * mean, (draws, riders)).sum(axis=1)
    peak = motor.peak_riders_mass(Q(riders, "person"), Q(mean, "kg"), Q(variation, "")).m_as("kg")
    spread = (peak - riders * mean) / 2
    standard_error = lines.std(ddof=1) / math.sqrt(2 * draws)
    assert abs(lines.std(ddof=1) - spread) < 4 * standard_error
    assert np.mean(lines > peak) == pytest.approx(0.0228, abs=4 * math.sqrt(0.0228 / draws))


@given(squeeze=st.floats(1, 800), friction=st.floats(0.05, 1))
def test_a_squeezed_rope_is_rubbed_on_two_sides(squeeze, friction):
    fingers = palm = friction * squeeze
    assert hand_grip.grip_squeeze(Q(fingers + palm, "N"), Q(friction, "")).m_as("N") == pytest.approx(squeeze)


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


# the drive sheave


@pytest.mark.parametrize(("friction", "degrees"), [(0.22, 180), (0.1, 90), (0.4, 350), (0.0, 180)])
def test_capstan_against_its_equation_integrated(friction, degrees):
    from scipy.integrate import solve_ivp

    slack = 1000.0
    run = solve_ivp(lambda _, tension: friction * tension, (0, math.radians(degrees)), [slack], rtol=1e-10, atol=1e-8)
    ratio = traction.capstan_ratio(lining_friction=Q(friction, ""), wrap_angle=Q(degrees, "degree")).m_as("")
    assert ratio == pytest.approx(run.y[0, -1] / slack, rel=1e-7)


@given(lining=st.floats(0, 0.5), degrees=st.floats(20, 180), tension=st.floats(100, 5000))
def test_a_groove_presses_from_two_sides(lining, degrees, tension):
    """On each small angle both sides of the groove carry the rope: their friction over what a flat rim would carry."""
    across = math.radians(degrees) / 2
    side = tension / (2 * math.sin(across))  # of a radian of wrap; upwards the two sides carry the tension
    assert 2 * side * math.sin(across) == pytest.approx(tension)
    wedged = traction.groove_friction(Q(lining, ""), Q(degrees, "degree")).m_as("")
    assert wedged == pytest.approx(2 * lining * side / tension)


def test_common_practice_a_groove_holds_two_to_three_times_as_well():
    for degrees in (40, 60):
        assert 2 <= 1 / math.sin(math.radians(degrees) / 2) <= 3
        assert 2 <= traction.groove_friction(Q(0.25, ""), Q(degrees, "degree")).m_as("") / 0.25 <= 3
    assert traction.groove_friction(Q(0.25, ""), Q(180, "degree")).m_as("") == pytest.approx(0.25)
    with pytest.raises(ValueError, match="groove_angle must be 180 degrees or less, but got 200 degrees"):
        traction.groove_friction(Q(0.25, ""), Q(200, "degree"))


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


def walk(tension, way, rope, rise, drag, pulls=(), elements=240, start=0.0):
    """Walk along one strand in the direction in which the rope runs, element by element; return the tension at its end.

    The way is 1 up and -1 down. Each rider's pull acts on one element. ``start`` is the strand's moving mass times its
    acceleration.
    """
    on_element = np.zeros(elements)
    for place, pull in enumerate(pulls):
        on_element[place * elements // max(len(pulls), 1)] += pull
    for element in range(elements):
        tension += way * rope * G * rise / elements + (drag + start) / elements + on_element[element]
    return tension


loops = st.fixed_dictionaries({
    "rope": st.floats(0, 3), "rise": st.floats(0, 120), "weight": st.floats(4000, 60000), "drag": st.floats(0, 400),
    "riders": st.integers(0, 12), "pull": st.floats(50, 300),
})  # fmt: skip


@given(loop=loops)
def test_whole_loop_with_the_drive_at_the_top(loop):
    slack = traction.slack_tension_top_drive(
        Q(loop["rope"], "kg/m"), Q(loop["rise"], "m"),
        counterweight=Q(loop["weight"], "N"), strand_drag=Q(loop["drag"], "N"),
    ).m_as("N")  # fmt: skip
    at_bottom = walk(slack, -1, loop["rope"], loop["rise"], loop["drag"])
    assert 2 * at_bottom == pytest.approx(loop["weight"], rel=1e-9)  # the two strands at the bottom sheave carry it
    tight = walk(at_bottom, 1, loop["rope"], loop["rise"], loop["drag"], [loop["pull"]] * loop["riders"])
    wanted = motor.force_to_start(
        Q(loop["riders"], "person"), Q(0, "m/s**2"), pull=Q(loop["pull"], "N"), idle_drag=Q(2 * loop["drag"], "N"),
        rider_mass=MASS, moving_mass=Q(0, "kg"),
    ).m_as("N")  # fmt: skip
    assert tight - slack == pytest.approx(wanted, abs=1e-6)  # free of the weight of the rope


@given(loop=loops)
def test_whole_loop_with_the_drive_at_the_bottom(loop):
    slack = traction.slack_tension_bottom_drive(
        Q(loop["rope"], "kg/m"), Q(loop["rise"], "m"), Q(loop["riders"], "person"), pull=Q(loop["pull"], "N"),
        counterweight=Q(loop["weight"], "N"), strand_drag=Q(loop["drag"], "N"),
    ).m_as("N")  # fmt: skip
    assume(slack > 0)
    at_top = walk(slack, 1, loop["rope"], loop["rise"], loop["drag"], [loop["pull"]] * loop["riders"])
    assert 2 * at_top == pytest.approx(loop["weight"], rel=1e-9)
    tight = walk(at_top, -1, loop["rope"], loop["rise"], loop["drag"])
    assert tight - slack == pytest.approx(loop["riders"] * loop["pull"] + 2 * loop["drag"], abs=1e-6)


def test_a_rope_that_hangs_slack_pulls_nobody():
    slack = traction.slack_tension_bottom_drive(
        Q(3, "kg/m"), Q(120, "m"), Q(0, "person"), pull=PULL, counterweight=Q(5000, "N"), strand_drag=Q(200, "N")
    )
    assert slack.m_as("N") == 0
    assert traction.riders_by_traction(slack_tension=slack, **SHEAVE).m_as("person") == 0


SHEAVE = {
    "pull": PULL, "idle_drag": IDLE, "lining_friction": Q(0.25, ""), "wrap_angle": Q(180, "degree"),
    "grip_safety_factor": Q(1.25, ""),
}  # fmt: skip
START = {"starting_acceleration": Q(0.3, "m/s**2"), "rider_mass": MASS, "moving_mass": Q(400, "kg")}


@given(tension=st.floats(1000, 30000), degrees=st.floats(60, 300), more=st.floats(1, 90), start=st.booleans())
def test_traction_grows_with_wrap(tension, degrees, more, start):
    formula = traction.riders_by_traction_at_start if start else traction.riders_by_traction

    def riders(angle):
        rest = {**SHEAVE, "wrap_angle": Q(angle, "degree"), **(START if start else {})}
        return formula(slack_tension=Q(tension, "N"), **rest).m_as("person")

    assert riders(degrees + more) >= riders(degrees)
    assert riders(degrees + more) > riders(degrees) or riders(degrees + more) == 0


@pytest.mark.parametrize("drive", ["top", "bottom"])
@given(
    rope=st.floats(0, 3), rise=st.floats(0, 120), weight=st.floats(4000, 60000), drag=st.floats(0, 400),
    ratio=st.floats(1.2, 4), safety=st.floats(1, 1.5), acceleration=st.floats(0, 1), mass=st.floats(50, 3000),
)  # fmt: skip
def test_riders_at_the_limit_of_a_start_bring_the_loop_to_the_ratio(
    drive, rope, rise, weight, drag, ratio, safety, acceleration, mass
):
    """The loop is walked at the start, with as many riders as the formula allows: the tensions stand in the ratio."""
    loop, idle = {"counterweight": Q(weight, "N"), "strand_drag": Q(drag, "N")}, Q(2 * drag, "N")
    sheave = {"pull": PULL, "idle_drag": idle, "lining_friction": Q(math.log(ratio) / math.pi, "")}
    sheave |= {"wrap_angle": Q(180, "degree"), "grip_safety_factor": Q(safety, "")}
    start = {"starting_acceleration": Q(acceleration, "m/s**2"), "rider_mass": MASS, "moving_mass": Q(mass, "kg")}
    if drive == "top":
        empty = traction.slack_tension_top_drive(Q(rope, "kg/m"), Q(rise, "m"), **loop)
        riders = traction.riders_by_traction_at_start(slack_tension=empty, **sheave, **start).m_as("person")
    else:
        empty = traction.slack_tension_bottom_drive(Q(rope, "kg/m"), Q(rise, "m"), Q(0, "person"), pull=PULL, **loop)
        riders = traction.riders_by_traction_bottom_drive_at_start(
            slack_tension=empty, **sheave, **start
        ).m_as("person")  # fmt: skip
    assume(riders > 0)
    half, hung = mass * acceleration / 2, riders * (PULL.m_as("N") + MASS.m_as("kg") * acceleration)
    # from the carriage, where the weight holds the sum of both strands, back to the sheave, and on to it again
    up = {"rope": rope, "rise": rise, "drag": drag, "pulls": [hung], "start": half}
    down = {"rope": rope, "rise": rise, "drag": drag, "start": half}
    if drive == "top":
        slack = weight / 2 - (walk(0.0, -1, **down))
        tight = walk(weight / 2, 1, **up)
    else:
        slack = weight / 2 - (walk(0.0, 1, **up))
        tight = walk(weight / 2, -1, **down)
    assert tight / slack == pytest.approx(ratio / safety, rel=1e-9)


@given(tension=st.floats(4000, 30000), ratio=st.floats(1.2, 4), safety=st.floats(1, 2))
def test_a_start_that_takes_for_ever_is_the_steady_run(tension, ratio, safety):
    sheave = {**SHEAVE, "lining_friction": Q(math.log(ratio) / math.pi, ""), "grip_safety_factor": Q(safety, "")}
    start = {**START, "starting_acceleration": Q(0, "m/s**2")}
    steady = traction.riders_by_traction(slack_tension=Q(tension, "N"), **sheave).m_as("person")
    assert traction.riders_by_traction_at_start(slack_tension=Q(tension, "N"), **sheave, **start).m_as(
        "person"
    ) == pytest.approx(steady)
    # a bottom drive: take the riders' pull off the slack side, and ask the formula for a fixed slack side again
    at_bottom = traction.riders_by_traction_bottom_drive(slack_tension=Q(tension, "N"), **sheave).m_as("person")
    slack = tension - at_bottom * PULL.m_as("N")
    again = traction.riders_by_traction(slack_tension=Q(slack, "N"), **sheave).m_as("person")
    assert again == pytest.approx(at_bottom, rel=1e-9)
    assert at_bottom < steady or steady == 0
    begun = traction.riders_by_traction_bottom_drive_at_start(slack_tension=Q(tension, "N"), **sheave, **start)
    assert begun.m_as("person") == pytest.approx(at_bottom)


# the loading point


@given(places=st.integers(1, 6), persons=st.integers(1, 4), time=st.floats(1, 12), factor=st.floats(0.2, 5))
def test_places_and_persons_multiply(places, persons, time, factor):
    n, k = Q(persons, "person"), Q(places, "")
    for formula in (loading.loading_capacity, loading.unload_capacity):
        one = formula(Q(time, "s")).m_as("pph")
        assert one == pytest.approx(3600 / time)
        assert formula(Q(time, "s"), n, k).m_as("pph") == pytest.approx(persons * places * one)
        assert formula(Q(factor * time, "s"), n, k).m_as("pph") == pytest.approx(persons * places * one / factor)


@given(length=st.floats(0.5, 6), speed=speeds, speeding_up=accelerations)
def test_floor_from_rest_against_steps_of_time(length, speed, speeding_up):
    step = 5e-4
    times = np.arange(0, length / speed + speed / speeding_up + 1, step)
    moved = np.cumsum(np.minimum(speeding_up * (times + step / 2), speed)) * step
    clear = times[np.argmax(moved >= length)] + step
    floor = loading.loading_floor_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(speeding_up, "m/s**2")).m_as("s")
    assert floor == pytest.approx(clear, abs=2 * step)


@given(length=st.floats(0.5, 6), speeding_up=accelerations, factor=st.floats(1, 5))
def test_above_its_end_the_floor_knows_no_speed(length, speeding_up, factor):
    s0, a = Q(length, "m"), Q(speeding_up, "m/s**2")
    end = loading.speed_where_floor_ends(s0, a)
    assert end.m_as("m/s") ** 2 / (2 * speeding_up) == pytest.approx(length)  # the way to reach it is the whole length
    at_end = loading.loading_floor_from_rest(s0, end, a).m_as("s")
    assert at_end == pytest.approx(math.sqrt(2 * length / speeding_up))
    assert loading.loading_floor_from_rest(s0, factor * end, a).m_as("s") == pytest.approx(at_end, rel=1e-12)
    assert loading.loading_floor_from_rest(s0, end / (1.01 * factor), a).m_as("s") > at_end


@pytest.mark.parametrize(("speeding_up", "pph"), [(1, 1700), (3, 3000)], ids=["own arithmetic: 1", "own arithmetic: 3"])
def test_floor_in_round_numbers(speeding_up, pph):
    for speed in (3.6, 6, 12):  # however fast the rope
        floor = loading.loading_floor_from_rest(Q(2.1, "m"), Q(speed, "m/s"), Q(speeding_up, "m/s**2"))
        assert loading.loading_capacity(floor).m_as("pph") == pytest.approx(pph, rel=0.04)


@given(gap=st.floats(1, 6), reaction=st.floats(0, 3), slowing=accelerations)
def test_a_stopping_gap_makes_capacity_peak(gap, reaction, slowing):
    from scipy.optimize import minimize_scalar

    s0, tr, a = Q(gap, "m"), Q(reaction, "s"), Q(slowing, "m/s**2")

    def capacity(speed):
        v = Q(speed, "m/s")
        return hourly_capacity(v, loading.stopping_gap_spacing(s0, v, tr, a)).m_as("pph")

    found = minimize_scalar(
        lambda speed: -capacity(speed), bounds=(0.05, 30), method="bounded", options={"xatol": 1e-7}
    )
    peak = loading.speed_at_capacity_peak(s0, a).m_as("m/s")
    assert found.x == pytest.approx(peak, rel=1e-3)  # and the reaction time does not move it
    assert capacity(0.8 * peak) < capacity(peak)
    assert capacity(1.25 * peak) < capacity(peak)


@pytest.mark.parametrize(("mean", "floor", "seed"), [(2.0, 2.0, 1), (3.0, 1.5, 2), (1.0, 4.0, 3)])
def test_exponential_times_over_a_floor_against_draws(mean, floor, seed):
    draws = np.maximum(np.random.default_rng(seed).exponential(mean, 400_000), floor)
    found = loading.mean_loading_time_exponential(mean_time=Q(mean, "s"), floor=Q(floor, "s")).m_as("s")
    assert abs(found - draws.mean()) < 4 * draws.std(ddof=1) / math.sqrt(draws.size)


@pytest.mark.parametrize(("mean", "floor", "variation", "seed"), [(2.0, 2.0, 0.5, 4), (3.0, 1.5, 1.0, 5)])
def test_lognormal_times_over_a_floor_against_draws(mean, floor, variation, seed):
    sigma = math.sqrt(math.log(1 + variation**2))
    normal = np.random.default_rng(seed).normal(math.log(mean) - sigma**2 / 2, sigma, 400_000)
    draws = np.maximum(np.exp(normal), floor)
    found = loading.mean_loading_time_lognormal(
        Q(variation, ""), mean_time=Q(mean, "s"), floor=Q(floor, "s")
    ).m_as("s")  # fmt: skip
    assert abs(found - draws.mean()) < 4 * draws.std(ddof=1) / math.sqrt(draws.size)


def test_own_arithmetic_a_random_loading_time_costs_a_sixth():
    mean = loading.mean_loading_time_lognormal(Q(0.5, ""), mean_time=Q(2, "s"), floor=Q(2, "s"))
    assert loading.loading_capacity(mean).m_as("pph") == pytest.approx(1517, abs=0.5)  # and not 1,800


def test_own_arithmetic_exponential_times_over_a_floor_as_long_as_their_mean():
    mean = loading.mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(2, "s"))
    assert mean.m_as("s") == pytest.approx(2 + 2 / math.e, rel=1e-12)


@given(mean=st.floats(0.5, 8), floor=st.floats(0.1, 8), variation=st.floats(0.05, 1.5))
def test_chance_never_shortens_the_mean(mean, floor, variation):
    for found in (
        loading.mean_loading_time_exponential(mean_time=Q(mean, "s"), floor=Q(floor, "s")),
        loading.mean_loading_time_lognormal(Q(variation, ""), mean_time=Q(mean, "s"), floor=Q(floor, "s")),
    ):
        assert max(mean, floor) * (1 - 1e-9) <= found.m_as("s") <= mean + floor


def test_without_a_floor_the_mean_stays():
    assert loading.mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(0, "s")).m_as("s") == 2


# bad input

MESSAGES = [
    (
        lambda: pulling.rope_pull(75, grade=GRADE, snow_friction=FRICTION),
        UnitError,
        "rope_pull: rider_mass needs a unit, but got the bare value 75. Write Q(75, 'kg').",
    ),
    (
        lambda: motor.motor_capacity(Q(20, "hp"), EFFICIENCY, SPEED, IDLE, Q(195, "N")),
        UnitError,
        "motor_capacity: energy_per_rider must be an energy, but got a force: 195 N. Write for example Q(30000, 'J').",
    ),
    (
        lambda: hand_grip.rope_weight_in_hands(Q(0.6, "kg"), Q(6.8, "m")),
        UnitError,
        "rope_weight_in_hands: rope_mass_per_length must be a mass per length, but got a mass: 0.6 kg. "
        "Write for example Q(0.6, 'kg/m').",
    ),
    (
        lambda: motor.simple_motor_capacity(POWER, Q(85, ""), Q(29200, "J")),
        ValueError,
        "simple_motor_capacity: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.motor_capacity(POWER, Q(1.2, ""), SPEED, IDLE, Q(29200, "J")),
        ValueError,
        "motor_capacity: efficiency must be 1 or less, but got 1.2. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.motor_capacity_at_constant_torque(
            POWER, Q(85, ""), IDLE, Q(29200, "J"), line_speed=SPEED, base_speed=SPEED
        ),
        ValueError,
        "motor_capacity_at_constant_torque: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.motor_power_needed(Q(1200, "pph"), Q(85, ""), SPEED, IDLE, Q(29200, "J")),
        ValueError,
        "motor_power_needed: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: motor.idle_power(Q(85, ""), SPEED, IDLE),
        ValueError,
        "idle_power: efficiency must be 1 or less, but got 85. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent').",
    ),
    (
        lambda: pulling.tether_pull(PULL, tether_angle=Q(90, "degree"), snow_friction=FRICTION),
        ValueError,
        "tether_pull: tether_angle must be less than 90 degrees, but got 90 degrees. "
        "Give the angle between tether and slope, such as Q(30, 'degree').",
    ),
    (
        lambda: pulling.energy_per_rider(PULL, Q(10, "m"), MASS, Q(6, "m/s"), Q(1, "m/s**2")),
        ValueError,
        "energy_per_rider: pick_up_acceleration of 1 m/s² takes 18.0 m to the speed of the rope, but the ride is "
        "10.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride.",
    ),
    (
        lambda: traction.riders_by_traction(slack_tension=Q(4000, "N"), **{**SHEAVE, "grip_safety_factor": Q(0.8, "")}),
        ValueError,
        "riders_by_traction: grip_safety_factor must be 1 or more, but got 0.8. "
        "Write how many times over the rope must hold, such as Q(1.25, '').",
    ),
    (
        lambda: traction.riders_by_traction_bottom_drive_at_start(
            slack_tension=Q(4000, "N"), **SHEAVE, **{**START, "moving_mass": Q(0, "kg")}
        ),
        ValueError,
        "riders_by_traction_bottom_drive_at_start: moving_mass must be greater than zero, but got 0 kg. "
        "Write for example Q(75, 'kg').",
    ),
    (
        lambda: loading.mean_loading_time_exponential(mean_time=Q(2, "s"), floor=Q(-1, "s")),
        ValueError,
        "mean_loading_time_exponential: floor must be zero or more, but got -1 s. Write for example Q(2.0, 's').",
    ),
]


@pytest.mark.parametrize(("call", "kind", "message"), MESSAGES, ids=[case[2][:60] for case in MESSAGES])
def test_message(call, kind, message):
    with pytest.raises(kind) as caught:
        call()
    assert str(caught.value) == message


def test_stray_draws_of_an_efficiency_are_left_out_and_counted():
    efficiency = Estimate(Q(0.9, ""), Q(0.04, ""), method="invented")
    readings = {"motor_power": POWER, "efficiency": efficiency, "line_speed": SPEED, "idle_drag": IDLE}
    sampled = by_sampling(motor.motor_capacity, {**readings, "energy_per_rider": Q(30826, "J")}, seed=7)
    expected = 200_000 * NormalDist().cdf(-0.1 / 0.04)
    assert abs(sampled.left_out - expected) < 4 * math.sqrt(expected)
    most = motor.motor_capacity(POWER, Q(1, ""), SPEED, IDLE, Q(30826, "J"))
    assert sampled.samples.max() <= most
    wide = {**readings, "efficiency": Estimate(Q(0.9, ""), Q(0.1, ""), method="invented")}
    with pytest.raises(
        UncertaintyError, match=r"16 % of the draws do not fit motor_capacity: efficiency must be 1 or "
    ):
        by_sampling(motor.motor_capacity, {**wide, "energy_per_rider": Q(30826, "J")}, seed=7)


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
    with pytest.raises(ValueError, match=r"altitude must be 11,000 m or less, but got 12,000 m\. Write the height"):
        motor.engine_power_at_altitude(Q(1, "kW"), Q(12000, "m"))


# arrays of which a single value does not fit

STRAY = [  # formula, arguments of which one is an array with a stray, what the message says
    (motor.motor_capacity, {
        "motor_power": POWER, "efficiency": Q([0.85, 8.5, 0.8], ""), "line_speed": SPEED, "idle_drag": IDLE,
        "energy_per_rider": Q(30000, "J"),
    }, "efficiency must be 1 or less, but got 8.5"),
    (pulling.tether_pull, {"pull": PULL, "tether_angle": Q([30, 95, 20], "degree"), "snow_friction": FRICTION},
     "tether_angle must be less than 90 degrees, but got 95 degrees"),
    (pulling.energy_per_rider, {
        "pull": PULL, "ridden_length": Q([150, 10, 150], "m"), "rider_mass": MASS, "line_speed": Q(6, "m/s"),
        "pick_up_acceleration": Q(1, "m/s**2"),
    }, "takes 18.0 m to the speed of the rope, but the ride is 10.0 m long"),
    (traction.riders_by_traction,
        {"slack_tension": Q(4000, "N"), **SHEAVE, "grip_safety_factor": Q([1.25, 0.5, 1.3], "")},
     "grip_safety_factor must be 1 or more, but got 0.5"),
]  # fmt: skip


@pytest.mark.parametrize(("formula", "arguments", "message"), STRAY, ids=[case[2][:40] for case in STRAY])
def test_one_absurd_value_in_an_array_is_refused(formula, arguments, message):
    with pytest.raises(ValueError, match=f"^{formula.__name__}: .*{re.escape(message)}"):
        formula(**arguments)
    good = {
        name: Q(value.magnitude[[0, 2]], value.units) if np.ndim(value.magnitude) else value
        for name, value in arguments.items()
    }
    assert formula(**good).magnitude.shape == (2,)
