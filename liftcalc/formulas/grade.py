"""The slope: its grade, its angle, its length and its rise."""

import numpy as np

from liftcalc.units import PlainError, unit_aware


@unit_aware(vertical_rise="m", horizontal_run="m", returns="m", may_be_zero=("vertical_rise",))
def slope_length(*, vertical_rise, horizontal_run):
    r"""Return the length of a uniform slope from its rise and its length on the map.

    Parameters
    ----------
    vertical_rise : Quantity [m]
        Height gained; a scalar or an array; may be zero.
    horizontal_run : Quantity [m]
        Length on the map, which is always horizontal; same shape, or broadcastable.

    Returns
    -------
    Quantity [m]
        Length along the slope.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the run is not greater than zero, or the rise is negative.

    Notes
    -----
    .. math:: L = \sqrt{h^2 + d^2}

    Source: Pythagoras.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slope_length(vertical_rise=Q(29.4, "m"), horizontal_run=Q(147.1, "m")))
    '150 m'
    """
    return np.hypot(vertical_rise, horizontal_run)


@unit_aware(slope_length="m", grade="", returns="m", may_be_zero=("grade",))
def vertical_rise(slope_length, grade):
    r"""Return the height gained along a uniform slope.

    Parameters
    ----------
    slope_length : Quantity [m]
        Length along the slope; a scalar or an array.
    grade : Quantity []
        Rise over horizontal run: Q(20, "percent") is a rise of 20 m on 100 m of map; may be zero.

    Returns
    -------
    Quantity [m]
        Vertical rise.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the length is not greater than zero, or the grade is negative.

    Notes
    -----
    .. math:: h = L \sin(\arctan(g))

    Source: trigonometry; the grade is the tangent, not the sine.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(vertical_rise(Q(150, "m"), Q(20, "percent")))
    '29.4 m'
    """
    return slope_length * grade / np.hypot(1.0, grade)


@unit_aware(grade="", returns="degree", may_be_zero=("grade",))
def slope_angle(grade):
    r"""Return the angle of a slope from its grade.

    Parameters
    ----------
    grade : Quantity []
        Rise over horizontal run: Q(20, "percent") is a rise of 20 m on 100 m of map; may be zero.

    Returns
    -------
    Quantity [degree]
        Angle to the horizontal.

    Raises
    ------
    UnitError
        If the grade has no unit, or one of another kind.
    ValueError
        If the grade is negative.

    Notes
    -----
    .. math:: \alpha = \arctan(g)

    Source: trigonometry; a grade of 100 percent is 45 degrees.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slope_angle(Q(20, "percent")))
    '11.3 degrees'
    """
    return np.degrees(np.arctan(grade))


@unit_aware(angle="degree", returns="", may_be_zero=("angle",))
def grade_from_angle(angle):
    r"""Return the grade of a slope from its angle.

    Parameters
    ----------
    angle : Quantity [degree]
        Angle to the horizontal; a scalar or an array; may be zero.

    Returns
    -------
    Quantity []
        Rise over horizontal run.

    Raises
    ------
    UnitError
        If the angle has no unit, or is a percentage.
    ValueError
        If the angle is negative, or 90 degrees or more.

    Notes
    -----
    .. math:: g = \tan \alpha

    Source: trigonometry; 45 degrees are a grade of 100 percent.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(grade_from_angle(Q(11.3, "degree")), "percent")
    '20%'
    """
    if np.max(angle) >= 90:
        raise PlainError(
            f"grade_from_angle: angle must be less than 90 degrees, but got {np.max(angle):g} degrees. "
            "Give the angle to the horizontal, such as Q(11.3, 'degree')."
        )
    return np.tan(np.radians(angle))


@unit_aware(vertical_rise="m", horizontal_run="m", returns="", may_be_zero=("vertical_rise",))
def grade_from_rise(*, vertical_rise, horizontal_run):
    r"""Return the grade of a slope from its rise and its run.

    Parameters
    ----------
    vertical_rise : Quantity [m]
        Height from bottom to top; a scalar or an array; may be zero.
    horizontal_run : Quantity [m]
        Length on the map.

    Returns
    -------
    Quantity []
        Rise over horizontal run; of an uneven slope, the mean grade.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the run is not greater than zero, or the rise is negative.

    Notes
    -----
    .. math:: g = h / d

    Source: definition.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(grade_from_rise(vertical_rise=Q(29.4, "m"), horizontal_run=Q(147, "m")), "percent")
    '20%'
    """
    return vertical_rise / horizontal_run
