"""The limits of the example tow, one of each kind."""

from example_tow import IDLE, LENGTH, MASS, PICK_UP, POWER, PULL, SHEAVE, SPACING, SPEED

from liftcalc import Q
from liftcalc.formulas.pull import energy_per_rider
from liftcalc.lifts.limits import (
    loading_limit,
    motor_limit,
    people_limit,
    rule_limit,
    slope_limit,
    spacing_limit,
    traction_limit,
    unload_limit,
)

EFFICIENCY = Q(85, "percent")
ENERGY = energy_per_rider(PULL, LENGTH, MASS, SPEED, PICK_UP)
DRIVE = {**SHEAVE, "ride_time": LENGTH / SPEED, "drive_position": "top"}
CROWD = {"ride_and_descent": Q(180, "s"), "loading_time": Q(3, "s")}


def the_tow():
    """Return the limits of the example tow, one of each kind."""
    return [
        spacing_limit(SPEED, SPACING),
        loading_limit(Q(3, "s")),
        motor_limit(POWER, EFFICIENCY, SPEED, IDLE, ENERGY),
        traction_limit(None, **DRIVE),
        unload_limit(Q(2.5, "s")),
        people_limit(Q(40, "person"), **CROWD),
        slope_limit(Q(40, "person/hectare"), Q(1.2, "hectare"), Q(90, "s")),
        rule_limit(Q(1000, "pph"), "the operating permit, page 3"),
    ]
