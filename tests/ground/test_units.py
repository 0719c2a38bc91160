"""The unit registry and the door of every formula: what is refused there, and in which words."""

from messages import refuses, table_of_messages

import liftcalc
from liftcalc import Q, UnitError, headway

SPEED, LENGTH = Q(3.4, "m/s"), Q(6.8, "m")
MESSAGES = [
    (
        lambda: headway(SPEED, "6.8 m"),
        "headway: spacing needs a unit, but got the bare value '6.8 m'. Write Q(6.8, 'm').",
        UnitError,
    ),
    (
        lambda: headway(LENGTH, LENGTH),
        "headway: line_speed must be a speed, but got a length: 6.8 m. Write for example Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: headway(Q(2, "candela"), LENGTH),
        "headway: line_speed must be a speed, but got a quantity of another kind: 2 cd. "
        "Write for example Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: headway(SPEED, Q(1800, "pph")),
        "headway: spacing must be a length, but got an hourly capacity: 1800 pph. Write for example Q(6.8, 'm').",
        UnitError,
    ),
    (
        lambda: liftcalc.rope_pull(Q(75, "kg"), grade=Q(20, "degree"), snow_friction=Q(0.07, "")),
        "rope_pull: grade must be a pure number, but got an angle: 20 deg. "
        "Write for example Q(20, 'percent'), or grade_from_angle(Q(11.3, 'degree')).",
        UnitError,
    ),
    (
        lambda: liftcalc.capstan_ratio(lining_friction=Q(0.2, ""), wrap_angle=Q(50, "percent")),
        "capstan_ratio: wrap_angle must be an angle, but got a pure number: 50 %. Write for example Q(20, 'degree').",
        UnitError,
    ),
    (
        lambda: liftcalc.hourly_capacity_from_interval(Q(0, "s")),
        "hourly_capacity_from_interval: interval must be greater than zero, but got 0 s. "
        "Write for example Q(2.0, 's').",
    ),
    (
        lambda: headway(Q(-3.4, "m/s"), LENGTH),
        "headway: line_speed must be greater than zero, but got -3.4 m/s. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: liftcalc.rope_stopping_distance(SPEED, Q(-1, "s"), Q(1.5, "m/s**2")),
        "rope_stopping_distance: stop_delay must be zero or more, but got -1 s. Write for example Q(2.0, 's').",
    ),
    (
        lambda: headway(Q(float("nan"), "m/s"), LENGTH),
        "headway: line_speed must be a finite number, but got nan m/s. Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: headway(SPEED, Q(float("inf"), "m")),
        "headway: spacing must be a finite number, but got inf m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: headway(SPEED, Q([1.0, float("nan")], "m")),
        "headway: spacing must be a finite number, but got [ 1. nan] m. Write for example Q(6.8, 'm').",
    ),
    (lambda: headway(SPEED, Q([], "m")), "headway: spacing holds no values. Give at least one, such as Q(6.8, 'm')."),
    (
        lambda: headway(Q([1, 2], "m/s"), Q([1, 2, 3], "m")),
        "headway: the arguments do not fit together: line_speed has shape (2,), spacing has shape (3,). "
        "Give one value, or as many values as the others.",
    ),
    (
        lambda: liftcalc.spacing_for_headway(Q(1e200, "m/s"), Q(1e200, "s")),
        "spacing_for_headway: the result is no finite number. Check the size of the arguments.",
    ),
    (
        lambda: Q("3.4", "m/s"),
        "Q: the value must be a number, but got '3.4'. Write for example Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: Q(None, "m/s"),
        "Q: the value must be a number, but got None. Write for example Q(3.4, 'm/s').",
        UnitError,
    ),
    (lambda: Q(True, "m"), "Q: the value must be a number, but got True. Write for example Q(3.4, 'm/s').", UnitError),
    (
        lambda: Q(["a"], "m"),
        "Q: the value must be a number, but got ['a']. Write for example Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        lambda: Q(3, "furlongs_a_week"),
        "Q: 'furlongs_a_week' is not a unit known here. "
        "Write a unit such as 'm/s', 'mph', 'ft', 's', 'person' or 'pph'.",
        UnitError,
    ),
    (lambda: Q(3, 4), "Q: the unit must be a text such as 'm/s', but got 4. Write Q(3.4, 'm/s').", UnitError),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)


def test_a_notebook_shows_the_message_without_the_path_through_the_code():
    message = "headway: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s')."
    error = refuses(lambda: headway(3.4, LENGTH), message, UnitError)
    assert error._render_traceback_() == [f"UnitError: {message}"]
