"""The tow of most examples: 15 kW on 150 m at 20 percent, riders of 75 kg, friction 0.07, a rope at 3.4 m/s."""

from dataclasses import replace
from functools import partial

from liftcalc import Q
from liftcalc.formulas.pull import rope_pull
from liftcalc.lifts.demo_hill import demo_line

G = 9.80665
MASS, SPEED, SPACING, LENGTH = Q(75, "kg"), Q(3.4, "m/s"), Q(6.8, "m"), Q(150, "m")
GRADE, FRICTION, PICK_UP = Q(20, "percent"), Q(0.07, ""), Q(1.5, "m/s**2")
POWER, EFFICIENCY, IDLE, NO_DRAG = Q(15, "kW"), Q(0.85, ""), Q(500, "N"), Q(0, "N")
PULL = rope_pull(MASS, grade=GRADE, snow_friction=FRICTION)
SHEAVE = {
    "pull": PULL, "idle_drag": IDLE, "lining_friction": Q(0.25, ""), "wrap_angle": Q(180, "degree"),
    "grip_safety_factor": Q(1.25, ""),
}  # fmt: skip
START = {"starting_acceleration": Q(0.3, "m/s**2"), "rider_mass": MASS, "moving_mass": Q(400, "kg")}


def of_the_exact_tow(panel, grade=GRADE):
    """Return a panel of the Penny Rope with round numbers in place of the means of its sheet."""
    line, readings = demo_line("Penny Rope")
    exact = replace(line, line_speed=SPEED, spacing=SPACING, ridden_length=LENGTH)
    return partial(panel, exact, readings, **({} if grade is None else {"grade": grade}))
