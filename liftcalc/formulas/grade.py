"""The slope: its grade, its angle, its length and its rise."""

import numpy as np

from liftcalc.units import PlainError, unit_aware


@unit_aware(vertical_rise="m", horizontal_run="m", returns="", may_be_zero=("vertical_rise",))
def grade_from_rise(*, vertical_rise, horizontal_run):
    """Return the grade of a slope from its rise and its run.

        grade = h / d

    returns: Rise over horizontal run; of an uneven slope, the mean grade.

    Source: definition.

    >>> show(grade_from_rise(vertical_rise=Q(29.4, "m"), horizontal_run=Q(147, "m")), "percent")
    '20%'
    """
    return vertical_rise / horizontal_run


@unit_aware(angle="degree", returns="")
def grade_from_angle(angle):
    """Return the grade of a slope from its angle.

        grade = tan alpha

    returns: Rise over horizontal run.
    raises: if the angle is 90 degrees or more

    Source: trigonometry; 45 degrees are a grade of 100 percent.

    >>> show(grade_from_angle(Q(11.3, "degree")), "percent")
    '20%'
    """
    if np.max(angle) >= 90:
        raise PlainError(
            f"grade_from_angle: angle must be less than 90 degrees, but got {np.max(angle):g} degrees. "
            "Give the angle to the horizontal, such as Q(11.3, 'degree')."
        )
    return np.tan(np.radians(angle))


@unit_aware(grade="", returns="degree")
def slope_angle(grade):
    """Return the angle of a slope from its grade.

        alpha = arctan(grade)

    returns: Angle to the horizontal.

    Source: trigonometry; a grade of 100 percent is 45 degrees.

    >>> show(slope_angle(Q(20, "percent")))
    '11.3 degrees'
    """
    return np.degrees(np.arctan(grade))


@unit_aware(vertical_rise="m", horizontal_run="m", returns="m", may_be_zero=("vertical_rise",))
def slope_length(*, vertical_rise, horizontal_run):
    """Return the length of a uniform slope from its rise and its length on the map.

        L = sqrt(h^2 + d^2), with h the rise and d the run

    returns: Length along the slope.

    Source: Pythagoras.

    >>> show(slope_length(vertical_rise=Q(29.4, "m"), horizontal_run=Q(147.1, "m")))
    '150 m'
    """
    return np.hypot(vertical_rise, horizontal_run)


@unit_aware(slope_length="m", grade="", returns="m")
def vertical_rise(slope_length, grade):
    """Return the height gained along a uniform slope.

        h = L sin alpha = L grade / sqrt(1 + grade^2), tan alpha = grade

    returns: Vertical rise.

    Source: trigonometry; the grade is the tangent, not the sine.

    >>> show(vertical_rise(Q(150, "m"), Q(20, "percent")))
    '29.4 m'
    """
    return slope_length * grade / np.hypot(1.0, grade)
