"""Readings of the example tow with their doubts."""

import numpy as np

from liftcalc import Q
from liftcalc.uncertainty import Estimate, own_formula

SPEED = Estimate(Q(3.4, "m/s"), Q(0.06, "m/s"), method="poles and stopwatch")
SPACING = Estimate(Q(6.8, "m"), Q(0.3, "m"), method="photo")
LENGTH = Estimate(Q(150, "m"), Q(0.6, "m"), method="tape")
READINGS = {"line_speed": SPEED, "spacing": SPACING}
SAME = own_formula(lambda x: 1.0 * x, returns="m", x="m")


def metres(value, doubt, method="", **more):
    """Return an estimate of a length."""
    return Estimate(Q(value, "m"), Q(doubt, "m"), method=method, **more)


def within_four(sampled, name, expected, unit):
    """Return whether a sampled number is within four standard errors of what it should be."""
    found, error = getattr(sampled, name).m_as(unit), sampled.sampling_errors[name].m_as(unit)
    return bool(np.all(np.abs(found - np.asarray(expected)) <= 4 * error)) and bool(np.all(error > 0))


def named(pairs):
    """Return estimates with a method of its own for each pair of value and doubt."""
    return [metres(value, doubt, f"method {place}") for place, (value, doubt) in enumerate(pairs)]


EXAMPLE = "estimate_from_half_width(Q(3.4, 'm/s'), Q(0.1, 'm/s'))"
HALF_DIGIT = "No reading is exact; half the last digit of the display is the least doubt there is."
