"""Doubts carried through a formula to first order, as on a straight line.

They go around the formula, by central differences of our own: the steps must follow the doubt, and each reading's
degrees of freedom must survive. The uncertainties package is the second opinion in the tests.
"""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.uncertainty.checks import UncertaintyError
from liftcalc.uncertainty.coverage import effective_degrees_of_freedom
from liftcalc.uncertainty.formulas import name_of, prepare
from liftcalc.uncertainty.writing import show_with_doubt
from liftcalc.units import Q

BENT = 0.5  # a slope over one standard uncertainty may be off by so much of the doubt of the result


@dataclass(frozen=True)
class FirstOrder:
    """The result of a formula with its standard uncertainty.

    Parameters
    ----------
    value, standard_uncertainty : Quantity
        In the unit of the formula.
    degrees_of_freedom : float
        Effective degrees of freedom, not yet cut to a whole number.
    sensitivities : dict of str to Quantity
        Change of the result for a change of one unit of the reading.
    contributions : dict of str to Quantity
        Sensitivity times standard uncertainty, with its sign.
    estimates : dict of str to Estimate
        The readings, in the units of the formula.
    correlation : ndarray
        Of the readings, in the same order.
    """

    value: Quantity
    standard_uncertainty: Quantity
    degrees_of_freedom: float
    sensitivities: dict
    contributions: dict
    estimates: dict
    correlation: np.ndarray

    def __str__(self):
        if self.standard_uncertainty.magnitude == 0:
            return f"{self.value.magnitude:,g} with no doubt to first order"
        return f"{show_with_doubt(self.value, self.standard_uncertainty)} (one standard uncertainty)"

    def __repr__(self):
        return str(self)


def by_first_order(formula, readings, correlation=None):
    r"""Carry the doubts of readings through a formula to first order.

    Parameters
    ----------
    formula : function or OwnFormula
        A formula of liftcalc, or one made by ``own_formula``.
    readings : dict of str to Estimate, Combined or Quantity
        By the names of the formula's arguments; a bare quantity counts as exact.
    correlation : array or None
        One row and one column for each reading with a doubt, in the order given; independent if left out.

    Returns
    -------
    FirstOrder
        Value, standard uncertainty, effective degrees of freedom, and the part of each reading.

    Raises
    ------
    UnitError
        If a reading has no unit, or one of another kind.
    UncertaintyError
        If a name is no argument, a reading is missing, the correlations are impossible, or the formula is far from a
        straight line within the doubts.

    Notes
    -----
    .. math:: u^2 = \sum_{ij} c_i u_i\, r_{ij}\, c_j u_j

    The sensitivities c are central differences. Where readings with finite degrees of freedom are correlated, the
    formula of Welch and Satterthwaite does not hold; the smallest degrees of freedom are taken, on the safe side.
    Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2.

    Examples
    --------
    >>> from liftcalc import Q, hourly_capacity
    >>> from liftcalc.uncertainty import estimate_from_half_width
    >>> by_first_order(hourly_capacity, {
    ...     "line_speed": estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s")),
    ...     "spacing": estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m")),
    ... })
    1,800 ± 80 pph (one standard uncertainty)
    """
    ready = prepare("by_first_order", formula, readings, correlation)
    unit, names = ready.result_unit, list(ready.estimates)
    doubts = np.array([ready.estimates[name].standard_uncertainty.magnitude for name in names])
    slopes = np.array([_slope(ready, name, _small_step(ready.estimates[name])) for name in names])
    contributions = slopes * doubts
    variance = float(contributions @ ready.correlation @ contributions)
    # correlations that cancel the whole leave a rest of rounding, of either sign
    doubt = 0.0 if variance <= 1e-14 * float(contributions @ contributions) else float(np.sqrt(variance))
    _check_straight(ready, contributions)
    degrees = [estimate.degrees_of_freedom for estimate in ready.estimates.values()]
    correlated = np.count_nonzero(ready.correlation) > len(names)
    freedom = min(degrees) if correlated else effective_degrees_of_freedom(contributions, degrees)
    return FirstOrder(
        value=Q(ready.value, unit),
        standard_uncertainty=Q(doubt, unit),
        degrees_of_freedom=freedom,
        sensitivities={
            name: Q(float(slope), unit / ready.estimates[name].value.units)
            for name, slope in zip(names, slopes, strict=True)
        },
        contributions={name: Q(float(part), unit) for name, part in zip(names, contributions, strict=True)},
        estimates=ready.estimates,
        correlation=ready.correlation,
    )


def correlation_of_results(one, other):
    """Return the correlation of two results that were computed from the same readings.

    Parameters
    ----------
    one, other : FirstOrder
        Two formulas with the same readings, in the same order, and the same correlations.

    Returns
    -------
    float
        Between -1 and 1.

    Raises
    ------
    UncertaintyError
        If the readings differ, or a result has no doubt.

    Notes
    -----
    Source: JCGM 100:2008 (GUM), H.2.3, and JCGM 102 for the matrix form.

    Examples
    --------
    >>> from liftcalc import Q, headway, hourly_capacity
    >>> from liftcalc.uncertainty import estimate_from_half_width
    >>> readings = {
    ...     "line_speed": estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s")),
    ...     "spacing": estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m")),
    ... }
    >>> both = by_first_order(hourly_capacity, readings), by_first_order(headway, readings)
    >>> print(round(correlation_of_results(*both), 3))
    -1.0
    """
    same = list(one.estimates) == list(other.estimates) and np.array_equal(one.correlation, other.correlation)
    if not same or any(one.estimates[name] != other.estimates[name] for name in one.estimates):
        raise UncertaintyError(
            "correlation_of_results: the two results come from different readings. Give both formulas the same "
            "readings."
        )
    if not (one.standard_uncertainty.magnitude and other.standard_uncertainty.magnitude):
        raise UncertaintyError("correlation_of_results: a result without doubt has no correlation.")
    left = np.array([part.magnitude for part in one.contributions.values()])
    right = np.array([part.magnitude for part in other.contributions.values()])
    both = one.standard_uncertainty.magnitude * other.standard_uncertainty.magnitude
    return float(np.clip(left @ one.correlation @ right / both, -1, 1))


def _small_step(estimate):
    """Return a step small beside the doubt, yet large beside the last digit of the value."""
    return max(1e-3 * estimate.standard_uncertainty.magnitude, 1e-9 * abs(estimate.value.magnitude))


def _slope(ready, name, step):
    """Return the central difference of the formula along one reading."""
    middle = {**ready.exact, **{other: estimate.value.magnitude for other, estimate in ready.estimates.items()}}
    above, below = middle[name] + step, middle[name] - step
    with np.errstate(all="ignore"):
        try:
            rise = ready.formula.plain(**{**middle, name: above}) - ready.formula.plain(**{**middle, name: below})
        except ZeroDivisionError:
            return float("nan")
    return float(rise) / (above - below)


def _check_straight(ready, contributions):
    """Refuse a formula that jumps, or bends much, within one standard uncertainty of a reading."""
    whole = float(np.sqrt(contributions @ contributions))
    for (name, estimate), part in zip(ready.estimates.items(), contributions, strict=True):
        doubt = estimate.standard_uncertainty.magnitude
        wide = _slope(ready, name, doubt) * doubt
        rounding = 1e-9 * abs(ready.value)
        if not abs(wide - part) <= BENT * whole + rounding:
            raise UncertaintyError(
                f"by_first_order: {name_of(ready.formula)} jumps or bends too much within the doubt of {name} "
                f"({estimate}). A straight line is no picture of it; use by_sampling."
            )
