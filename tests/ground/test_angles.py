"""An angle is no pure number, whatever unit of the registry it comes in, and through whichever door."""

import math

import pytest
from messages import refuses, table_of_messages

import liftcalc
from liftcalc import Q, UnitError, show, ureg
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.lifts.readings import known_values
from liftcalc.lifts.shares import share_of_limits
from liftcalc.panels import HandsPanel, SheavePanel
from liftcalc.uncertainty import by_first_order, estimate_from_half_width


def angle_units():
    """Return every name that the registry has for a unit of an angle."""
    turning = {name for name in ureg._units if name.isidentifier()} - {"rad", "radian"}
    known = {name: ureg.get_root_units(ureg.Unit(name))[1] for name in turning if _is_a_unit(name)}
    return sorted(name for name, root in known.items() if str(root) == "radian") + ["rad", "radian"]


def _is_a_unit(name):
    try:
        return ureg.Unit(name).dimensionless
    except Exception:
        return False


GRADIANS = ["grade", "gon", "grad", "gradian", "gradians", "gons", "kilogon", "centigrade", "mgrad"]
SOLID = ["steradian", "square_degree"]


OF_AN_ANGLE = "Write for example Q(20, 'percent'), or grade_from_angle(Q(11.3, 'degree'))."
OF_A_GRADIAN = (
    "'grade', 'grad', 'gon' and 'gradian' are units of an angle, four hundred to a turn. "
    "For a rise of 20 m on 100 m of map write percent: Q(20, 'percent')."
)


def wrapped(angle):
    return liftcalc.capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=angle)


def pull(grade):
    return liftcalc.rope_pull(Q(75, "kg"), grade=grade, snow_friction=Q(0.07, ""))


def test_the_registry_has_the_angles_that_are_tried_here():
    assert {"degree", "arcminute", "arcsecond", "mil", "gradian", "turn", "radian"} <= set(angle_units())


@pytest.mark.parametrize("unit", [*angle_units(), "milliradian"])
def test_every_angle_is_an_angle(unit):
    word = f"{ureg.Unit(unit):~}"
    refuses(
        lambda: pull(Q(35, unit)),
        f"rope_pull: grade must be a pure number, but got an angle: 35 {word}. "
        + (OF_A_GRADIAN if word == "grad" else OF_AN_ANGLE),
        UnitError,
    )
    refuses(
        lambda: liftcalc.rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, unit)),
        f"rope_pull: snow_friction must be a pure number, but got an angle: 0.07 {word}. Write for example Q(0.2, '').",
        UnitError,
    )
    half_a_turn = Q(math.pi, "radian").to(unit)
    ratio = wrapped(half_a_turn).m_as("")
    assert ratio == pytest.approx(math.exp(0.22 * math.pi))


@pytest.mark.parametrize("unit", GRADIANS)
def test_a_gradian_is_refused_for_a_grade_under_every_name(unit):
    refuses(
        lambda: pull(Q(35, unit)),
        f"rope_pull: grade must be a pure number, but got an angle: 35 {ureg.Unit(unit):~}. {OF_A_GRADIAN}",
        UnitError,
    )
    assert show(liftcalc.grade_from_angle(Q(50, "gradian"))) == "1"


@pytest.mark.parametrize("unit", SOLID)
def test_a_solid_angle_is_neither(unit):
    refuses(
        lambda: pull(Q(35, unit)),
        f"rope_pull: grade must be a pure number, but got a solid angle: 35 {ureg.Unit(unit):~}. {OF_AN_ANGLE}",
        UnitError,
    )
    refuses(
        lambda: wrapped(Q(3, unit)),
        f"capstan_ratio: wrap_angle must be an angle, but got a solid angle: 3 {ureg.Unit(unit):~}. "
        "Write for example Q(20, 'degree').",
        UnitError,
    )


@pytest.mark.parametrize("unit", ["percent", "permille", "ppm", "m/m", ""])
def test_a_pure_number_is_no_angle(unit):
    shown = f"180 {ureg.Unit(unit):~}".replace(" / ", "/").strip()
    refuses(
        lambda: wrapped(Q(180, unit)),
        f"capstan_ratio: wrap_angle must be an angle, but got a pure number: {shown}. "
        "Write for example Q(20, 'degree').",
        UnitError,
    )
    assert pull(Q(0.35, "").to(unit)).m_as("N") == pytest.approx(pull(Q(35, "percent")).m_as("N"))


def penny_rope():
    return demo_line("Penny Rope")[0]


def doubtful_shares():
    return share_of_limits(penny_rope(), {"snow_friction": Q(0.07, "")}, {"snow_friction": Q(1, "degree")}, seed=1)


def doubtful_angle():
    level = estimate_from_half_width(Q(20, "degree"), Q(1, "degree"), "level")
    return by_first_order(liftcalc.slope_angle, {"grade": level})


OTHER_DOORS = [
    (
        lambda: HandsPanel(grade=Q(20, "degree")),
        "HandsPanel: grade must be a quantity in a unit such as 'percent', but got 20.0 degrees. "
        "Write Q(20, 'percent').",
    ),
    (
        lambda: SheavePanel(wrap_angle=Q(180, "percent")),
        "SheavePanel: wrap_angle must be a quantity in a unit such as 'degree', but got 180%. Write Q(180, 'degree').",
    ),
    (
        lambda: known_values(penny_rope(), {"snow_friction": Q(4, "gon")}),
        "known_values: snow_friction must be friction of skis on snow, but got 4.00 grad. Write Q(..., '').",
    ),
    (
        lambda: known_values(penny_rope(), {"wrap_angle": Q(180, "percent")}),
        "known_values: wrap_angle must be angle over which the rope lies on the drive sheave, but got 180%. "
        "Write Q(..., 'degree').",
    ),
    (
        doubtful_shares,
        "share_of_limits: the half-width of snow_friction must be of one kind with 0.07, but got 1.0 degrees. "
        "Write Q(..., 'dimensionless').",
    ),
    (
        doubtful_angle,
        "by_first_order: grade must be a pure number, but got an angle: 20 deg. Write for example Q(0.2, '').",
    ),
    (
        lambda: liftcalc.solve_line(carriers_on_loop=Q(60, "degree")),
        "solve_line: carriers_on_loop must be a pure number, but got an angle: 60 degrees. "
        "Write for example Q(60, '').",
    ),
]


@table_of_messages(OTHER_DOORS, kind=UnitError)
def test_no_other_door_takes_one_for_the_other(call, message, kind):
    refuses(call, message, kind)
