"""The drive sheave: its equation is integrated, and a whole loop of rope is walked element by element."""

import math

import numpy as np
import pytest
from example_tow import MASS, PULL, SHEAVE, START, G
from hypothesis import assume, given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.formulas import motor, traction


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


MESSAGES = [
    (
        lambda: traction.groove_friction(Q(0.25, ""), Q(200, "degree")),
        "groove_friction: groove_angle must be 180 degrees or less, but got 200 degrees. "
        "Give the angle between the two sides of the groove, such as Q(45, 'degree').",
    ),
    (
        lambda: traction.riders_by_traction(slack_tension=Q(4000, "N"), **{**SHEAVE, "grip_safety_factor": Q(0.8, "")}),
        "riders_by_traction: grip_safety_factor must be 1 or more, but got 0.8. "
        "Write how many times over the rope must hold, such as Q(1.25, '').",
    ),
    (
        lambda: traction.riders_by_traction_bottom_drive_at_start(
            slack_tension=Q(4000, "N"), **SHEAVE, **{**START, "moving_mass": Q(0, "kg")}
        ),
        "riders_by_traction_bottom_drive_at_start: moving_mass must be greater than zero, but got 0 kg. "
        "Write for example Q(75, 'kg').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
