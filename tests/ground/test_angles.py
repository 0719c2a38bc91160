"""An angle is no pure number, whatever unit of the registry it comes in, and through whichever door."""

import math
from pathlib import Path

import pytest

import liftcalc
from liftcalc import Q, UnitError, show, ureg
from liftcalc.lifts.installation import read_lifts
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


def pull(grade):
    return liftcalc.rope_pull(Q(75, "kg"), grade=grade, snow_friction=Q(0.07, ""))


def test_the_registry_has_the_angles_that_are_tried_here():
    assert {"degree", "arcminute", "arcsecond", "mil", "gradian", "turn", "radian"} <= set(angle_units())


@pytest.mark.parametrize("unit", [*angle_units(), "milliradian"])
def test_every_angle_is_an_angle(unit):
    with pytest.raises(UnitError, match="rope_pull: grade must be a pure number, but got an angle"):
        pull(Q(35, unit))
    with pytest.raises(UnitError, match="friction must be a pure number, but got an angle"):
        liftcalc.rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, unit))
    half_a_turn = Q(math.pi, "radian").to(unit)
    ratio = liftcalc.capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=half_a_turn).m_as("")
    assert ratio == pytest.approx(math.exp(0.22 * math.pi))


@pytest.mark.parametrize("unit", GRADIANS)
def test_a_gradian_is_refused_for_a_grade_under_every_name(unit):
    with pytest.raises(UnitError, match=r"four hundred to a turn\. .* write percent: Q\(20, 'percent'\)\."):
        pull(Q(35, unit))
    assert show(liftcalc.grade_from_angle(Q(50, "gradian"))) == "1"


@pytest.mark.parametrize("unit", SOLID)
def test_a_solid_angle_is_neither(unit):
    with pytest.raises(UnitError, match="grade must be a pure number, but got a solid angle"):
        pull(Q(35, unit))
    with pytest.raises(UnitError, match="wrap_angle must be an angle, but got a solid angle"):
        liftcalc.capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=Q(3, unit))


@pytest.mark.parametrize("unit", ["percent", "permille", "ppm", "m/m", ""])
def test_a_pure_number_is_no_angle(unit):
    with pytest.raises(UnitError, match="wrap_angle must be an angle, but got a pure number"):
        liftcalc.capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=Q(180, unit))
    assert pull(Q(0.35, "").to(unit)).m_as("N") == pytest.approx(pull(Q(35, "percent")).m_as("N"))


DATA = Path(__file__).resolve().parents[2] / "data"


def penny_rope():
    return read_lifts(DATA / "hill_lifts.csv")["Penny Rope"].lines[0]


def doubtful_shares():
    return share_of_limits(penny_rope(), {"snow_friction": Q(0.07, "")}, {"snow_friction": Q(1, "degree")}, seed=1)


def doubtful_angle():
    level = estimate_from_half_width(Q(20, "degree"), Q(1, "degree"), "level")
    return by_first_order(liftcalc.slope_angle, {"grade": level})


OTHER_DOORS = [
    (lambda: HandsPanel(grade=Q(20, "degree")), "grade must be a quantity in a unit such as 'percent'"),
    (lambda: SheavePanel(wrap_angle=Q(180, "percent")), "wrap_angle must be a quantity in a unit such as 'degree'"),
    (
        lambda: known_values(penny_rope(), {"snow_friction": Q(4, "gon")}),
        "friction must be friction of skis on snow, but got",
    ),
    (lambda: known_values(penny_rope(), {"wrap_angle": Q(180, "percent")}), "wrap_angle must be"),
    (doubtful_shares, "the half-width of snow_friction must be of one kind with 0.07"),
    (doubtful_angle, "grade must be a pure number, but got an angle: 20 deg"),
    (lambda: liftcalc.solve_line(carriers_on_loop=Q(60, "degree")), "carriers_on_loop must be a pure number, but got"),
    (lambda: show(Q(20, "degree"), "percent"), "show: 'percent' is no unit for an angle."),
]


@pytest.mark.parametrize(("call", "message"), OTHER_DOORS, ids=[message for _, message in OTHER_DOORS])
def test_no_other_door_takes_one_for_the_other(call, message):
    with pytest.raises(UnitError, match=message):
        call()
