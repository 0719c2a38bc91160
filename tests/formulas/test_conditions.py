"""Conditions of formulas: a single value that does not fit is refused, in an array, too."""

import numpy as np
from example_tow import FRICTION, IDLE, MASS, POWER, PULL, SHEAVE, SPEED
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.formulas import motor, traction
from liftcalc.formulas import pull as pulling

STRAY = [  # formula, arguments of which one is an array with a stray, message
    (motor.motor_capacity, {
        "motor_power": POWER, "efficiency": Q([0.85, 8.5, 0.8], ""), "line_speed": SPEED, "idle_drag": IDLE,
        "energy_per_rider": Q(30000, "J"),
    }, "motor_capacity: efficiency must be 1 or less, but got 8.5. "
     "Write a part of one, such as Q(0.85, '') or Q(85, 'percent')."),
    (pulling.tether_pull, {"pull": PULL, "tether_angle": Q([30, 95, 20], "degree"), "snow_friction": FRICTION},
     "tether_pull: tether_angle must be less than 90 degrees, but got 95 degrees. "
     "Give the angle between tether and slope, such as Q(30, 'degree')."),
    (pulling.energy_per_rider, {
        "pull": PULL, "ridden_length": Q([150, 10, 150], "m"), "rider_mass": MASS, "line_speed": Q(6, "m/s"),
        "pick_up_acceleration": Q(1, "m/s**2"),
    }, "energy_per_rider: pick_up_acceleration of 1 m/s² takes 18.0 m to the speed of the rope, but the ride is 10.0 m "
     "long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride."),
    (traction.riders_by_traction,
        {"slack_tension": Q(4000, "N"), **SHEAVE, "grip_safety_factor": Q([1.25, 0.5, 1.3], "")},
     "riders_by_traction: grip_safety_factor must be 1 or more, but got 0.5. "
     "Write how many times over the rope must hold, such as Q(1.25, '')."),
]  # fmt: skip


@table_of_messages(STRAY, "formula", "arguments")
def test_one_absurd_value_in_an_array_is_refused(formula, arguments, message, kind):
    refuses(lambda: formula(**arguments), message, kind)
    good = {
        name: Q(value.magnitude[[0, 2]], value.units) if np.ndim(value.magnitude) else value
        for name, value in arguments.items()
    }
    assert formula(**good).magnitude.shape == (2,)
