"""One reading and its doubt: from repeats (type A), or from what is known of the instrument (type B)."""

import math
from dataclasses import dataclass
from numbers import Real

import numpy as np
from pint import Quantity

from liftcalc.quantity_text import as_received
from liftcalc.uncertainty.checks import (
    UncertaintyError,
    as_written,
    check_degrees_of_freedom,
    check_kind,
    positive_doubt,
    scalar,
    unit_as_written,
)
from liftcalc.uncertainty.writing import short_number, show_with_doubt
from liftcalc.units import Q, UnitError

# shape of a doubt: half-width of the shape, in standard uncertainties; None where it has no end
SHAPES = {"normal": None, "t": None, "rectangular": math.sqrt(3), "triangular": math.sqrt(6)}


@dataclass(frozen=True)
class Estimate:
    """One value with its standard uncertainty.

    Parameters
    ----------
    value : Quantity
        The best value, a scalar.
    standard_uncertainty : Quantity
        One standard deviation of the doubt about it; kept in the unit of the value.
    degrees_of_freedom : float
        How well the doubt is known; infinity if it is taken as known.
    method : str
        How it was measured, in words.
    shape : str
        Shape to draw from: "normal", "t", "rectangular" or "triangular".

    Raises
    ------
    UnitError
        If a number has no unit, or the two units are not of one kind.
    UncertaintyError
        If the doubt is not greater than zero, the degrees of freedom are below one, or the shape is unknown.
    """

    value: Quantity
    standard_uncertainty: Quantity
    degrees_of_freedom: float = math.inf
    method: str = ""
    shape: str = "normal"

    def __post_init__(self):
        value = scalar("Estimate", "value", self.value)
        doubt = positive_doubt("Estimate", "standard_uncertainty", self.standard_uncertainty, value)
        check_degrees_of_freedom("Estimate", self.degrees_of_freedom)
        check_shape("Estimate", self.shape)
        if self.shape == "t" and math.isinf(self.degrees_of_freedom):
            raise UncertaintyError("Estimate: a t shape needs finite degrees of freedom. Write shape='normal'.")
        object.__setattr__(self, "value", value)
        object.__setattr__(self, "standard_uncertainty", doubt)

    def to(self, unit):
        """Return the same estimate in another unit of its kind."""
        check_kind("Estimate", "value", self.value, unit)
        return Estimate(
            self.value.to(unit), self.standard_uncertainty.to(unit), self.degrees_of_freedom, self.method, self.shape
        )

    def __str__(self):
        text = show_with_doubt(self.value, self.standard_uncertainty)
        known = (
            ""
            if math.isinf(self.degrees_of_freedom)
            else f", {short_number(self.degrees_of_freedom)} degrees of freedom"
        )
        return f"{self.method}{': ' if self.method else ''}{text} (one standard uncertainty{known})"

    def __repr__(self):
        return str(self)


def check_shape(where, shape):
    """Refuse a shape that is not known."""
    if shape not in SHAPES:
        raise UncertaintyError(f"{where}: {shape!r} is no shape of a doubt. Write one of {', '.join(SHAPES)}.")


def _repeats(where, readings):
    """Return repeated readings as a plain array, two or more."""
    if not isinstance(readings, Quantity):
        raise UnitError(
            f"{where}: the readings need a unit, but got the bare value {readings!r}. Write Q([6.8, 6.9, 6.7], 'm')."
        )
    numbers = np.atleast_1d(np.asarray(readings.magnitude, dtype=float))
    if numbers.size == 0:
        raise UncertaintyError(f"{where}: no reading came. Give two or more, such as Q([6.8, 6.9, 6.7], 'm').")
    if numbers.ndim > 1 or not np.all(np.isfinite(numbers)):
        raise UncertaintyError(
            f"{where}: the readings must be one row of finite numbers, but got {as_written(readings)}."
        )
    if numbers.size == 1:
        raise UncertaintyError(
            f"{where}: one reading came, {as_written(readings)}, and one reading has no spread. Take it again, or say "
            "how far it may be off: estimate_from_half_width(value, half_width)."
        )
    return numbers


def estimate_from_repeats(readings, method="repeated readings", *, display_step=None):
    r"""Return the mean of repeated readings with its doubt: a type A evaluation.

    Parameters
    ----------
    readings : Quantity
        Two or more readings of one thing, each taken anew.
    method : str
        How they were taken.
    display_step : Quantity or None
        Smallest step of the display. Its doubt is added, since it does not shrink with more readings.

    Returns
    -------
    Estimate
        Mean, standard uncertainty, and degrees of freedom n - 1 (more where the display adds its part).

    Raises
    ------
    UnitError
        If a number has no unit, or one of another kind.
    UncertaintyError
        If there are fewer than two readings; or if all are the same and no display step is given.

    Notes
    -----
    .. math:: u = \sqrt{s^2/n + d^2/12}

    Source: JCGM 100:2008 (GUM), 4.2 and F.2.2.1.

    Examples
    --------
    >>> from liftcalc import Q
    >>> print(estimate_from_repeats(Q([6.8, 7.1, 6.5, 6.9, 6.7], "m"), "photo"))
    photo: 6.80 ± 0.10 m (one standard uncertainty, 4 degrees of freedom)
    """
    numbers = _repeats("estimate_from_repeats", readings)
    mean = Q(float(numbers.mean()), readings.units)
    freedom = numbers.size - 1
    scatter = float(numbers.std(ddof=1)) / math.sqrt(numbers.size) if np.ptp(numbers) > 0 else 0.0
    if display_step is None:
        if scatter == 0:
            raise UncertaintyError(
                f"estimate_from_repeats: all {numbers.size} readings are {as_written(mean)}. That is a coarse display, "
                "no certainty. Give the step of the display, such as display_step=Q(0.1, "
                f"{unit_as_written(readings.units)!r})."
            )
        return Estimate(mean, Q(scatter, readings.units), freedom, method, "t")
    step = positive_doubt("estimate_from_repeats", "display_step", display_step, mean).magnitude
    both = math.hypot(scatter, step / math.sqrt(12))
    if scatter == 0:
        return Estimate(mean, Q(both, readings.units), math.inf, method, "rectangular")
    return Estimate(mean, Q(both, readings.units), freedom * (both / scatter) ** 4, method, "t")


def estimate_from_half_width(value, half_width, method="plus-minus", *, shape="rectangular"):
    r"""Return a value with a plus-minus that is thought never to be passed: a type B evaluation.

    Parameters
    ----------
    value, half_width : Quantity
        The value, and how far it may be off to either side.
    method : str
        How it was measured.
    shape : str
        "rectangular" where all values within are as likely; "triangular" where the middle is likelier.

    Returns
    -------
    Estimate
        With infinite degrees of freedom.

    Raises
    ------
    UnitError
        If a number has no unit, or one of another kind.
    UncertaintyError
        If the half-width is not greater than zero, or the shape has no half-width.

    Notes
    -----
    .. math:: u = a/\sqrt{3} \quad\text{(rectangle)}, \qquad u = a/\sqrt{6} \quad\text{(triangle)}

    Source: JCGM 100:2008 (GUM), 4.3.7 and 4.3.9.

    Examples
    --------
    >>> from liftcalc import Q
    >>> print(estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s"), "stopwatch"))
    stopwatch: 3.40 ± 0.06 m/s (one standard uncertainty)
    """
    value = scalar("estimate_from_half_width", "value", value)
    width = positive_doubt("estimate_from_half_width", "half_width", half_width, value)
    check_shape("estimate_from_half_width", shape)
    if SHAPES[shape] is None:
        raise UncertaintyError(
            f"estimate_from_half_width: a {shape} shape has no half-width. Write shape='rectangular' or 'triangular', "
            "or use estimate_from_statement."
        )
    return Estimate(value, width / SHAPES[shape], math.inf, method, shape)


def estimate_from_resolution(value, display_step, method="display"):
    r"""Return one reading of a display, doubted by the step of the display alone: a type B evaluation.

    Parameters
    ----------
    value, display_step : Quantity
        The value shown, and the smallest step that the display can make.
    method : str
        What was read.

    Returns
    -------
    Estimate
        With infinite degrees of freedom and a rectangular shape.

    Raises
    ------
    UnitError
        If a number has no unit, or one of another kind.
    UncertaintyError
        If the step is not greater than zero.

    Notes
    -----
    .. math:: u = d/\sqrt{12}

    Source: JCGM 100:2008 (GUM), F.2.2.1.

    Examples
    --------
    >>> from liftcalc import Q
    >>> print(estimate_from_resolution(Q(8, "mph"), Q(1, "mph"), "phone"))
    phone: 8.00 ± 0.29 mph (one standard uncertainty)
    """
    value = scalar("estimate_from_resolution", "value", value)
    step = positive_doubt("estimate_from_resolution", "display_step", display_step, value)
    return Estimate(value, step / math.sqrt(12), math.inf, method, "rectangular")


def estimate_from_statement(
    value, expanded, method="maker's figure", *, coverage_factor=2.0, degrees_of_freedom=math.inf
):
    r"""Return a value whose expanded uncertainty somebody states, with its coverage factor: a type B evaluation.

    Parameters
    ----------
    value, expanded : Quantity
        The value, and what the statement writes behind its plus-minus.
    method : str
        Who states it.
    coverage_factor : float
        The k of the statement: 2 unless it says otherwise; 1 if it states one standard uncertainty.
    degrees_of_freedom : float
        As stated; infinity if nothing is said.

    Returns
    -------
    Estimate
        With a normal shape, or a t shape where the degrees of freedom are finite.

    Raises
    ------
    UnitError
        If a number has no unit, or one of another kind.
    UncertaintyError
        If the stated doubt or its factor is not greater than zero.

    Notes
    -----
    .. math:: u = U/k

    Source: JCGM 100:2008 (GUM), 4.3.3.

    Examples
    --------
    >>> from liftcalc import Q
    >>> print(estimate_from_statement(Q(150, "m"), Q(1, "m"), "survey"))
    survey: 150.0 ± 0.5 m (one standard uncertainty)
    """
    value = scalar("estimate_from_statement", "value", value)
    stated = positive_doubt("estimate_from_statement", "expanded", expanded, value)
    if not (isinstance(coverage_factor, Real) and math.isfinite(coverage_factor) and coverage_factor > 0):
        raise UncertaintyError(
            "estimate_from_statement: the coverage factor must be greater than zero, but got "
            f"{as_received(coverage_factor)}. Write 2 for a statement at about 95 %."
        )
    check_degrees_of_freedom("estimate_from_statement", degrees_of_freedom)
    shape = "normal" if math.isinf(degrees_of_freedom) else "t"
    return Estimate(value, stated / coverage_factor, degrees_of_freedom, method, shape)


def correlation_of_repeats(*readings):
    """Return the correlation matrix of things that were read together, again and again.

    Parameters
    ----------
    *readings : Quantity
        Two or more rows of repeats; the first readings of all rows were taken together, and so on.

    Returns
    -------
    ndarray
        One row and one column a thing; also the correlation of their means.

    Raises
    ------
    UnitError
        If a row has no unit.
    UncertaintyError
        If there are fewer than two rows, their lengths differ, or a row has no spread.

    Notes
    -----
    Source: JCGM 100:2008 (GUM), 5.2.3.

    Examples
    --------
    >>> from liftcalc import Q
    >>> matrix = correlation_of_repeats(Q([3.3, 3.4, 3.5], "m/s"), Q([6.9, 6.8, 6.7], "m"))
    >>> print(round(float(matrix[0, 1]), 3))
    -1.0
    """
    rows = [_repeats("correlation_of_repeats", row) for row in readings]
    if len(rows) < 2 or len({row.size for row in rows}) != 1:
        raise UncertaintyError(
            f"correlation_of_repeats: the rows hold {', '.join(str(row.size) for row in rows) or 'no'} readings. "
            "Give two or more rows of the same length, read together."
        )
    for row, given in zip(rows, readings, strict=True):
        if np.ptp(row) == 0:
            raise UncertaintyError(
                f"correlation_of_repeats: all readings of one row are {as_written(given[0])}; what does not vary has "
                "no correlation."
            )
    matrix = np.clip(np.corrcoef(rows), -1, 1)
    np.fill_diagonal(matrix, 1.0)
    return matrix
