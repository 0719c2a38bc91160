"""From one standard uncertainty to a plus-minus at a level of confidence."""

import math
from dataclasses import dataclass

from pint import Quantity

from liftcalc.uncertainty.checks import UncertaintyError, as_written, check_degrees_of_freedom, check_probability
from liftcalc.uncertainty.writing import show_with_doubt
from liftcalc.units import UnitError


def coverage_factor(probability, degrees_of_freedom=math.inf):
    r"""Return the factor k that turns a standard uncertainty into a plus-minus.

    Parameters
    ----------
    probability : float
        Level of confidence, such as 0.95.
    degrees_of_freedom : float
        Effective degrees of freedom; a part of one is cut off. Infinity if left out.

    Returns
    -------
    float
        The factor, from Student's t; from the normal curve where the degrees of freedom are infinite.

    Raises
    ------
    UncertaintyError
        If the probability is not between 0 and 1, or the degrees of freedom are below one.

    Notes
    -----
    .. math:: k = t_p(\lfloor \nu \rfloor)

    Source: JCGM 100:2008 (GUM), G.4.1: the effective degrees of freedom are cut to the next lower whole number.

    Examples
    --------
    >>> print(round(coverage_factor(0.95), 2), round(coverage_factor(0.95, 4), 2))
    1.96 2.78
    """
    check_probability("coverage_factor", probability)
    check_degrees_of_freedom("coverage_factor", degrees_of_freedom)
    from scipy.special import ndtri, stdtrit  # light; scipy.stats takes seconds to load, and panels would wait

    upper = (1 + probability) / 2
    if math.isinf(degrees_of_freedom):
        return float(ndtri(upper))
    return float(stdtrit(math.floor(degrees_of_freedom * (1 + 1e-12)), upper))


def effective_degrees_of_freedom(contributions, degrees_of_freedom):
    r"""Return the degrees of freedom of a sum of independent doubts: Welch and Satterthwaite.

    Parameters
    ----------
    contributions : sequence of float
        Part of each reading in the doubt of the result, all in one unit; the sign does not matter.
    degrees_of_freedom : sequence of float
        Of each reading, in the same order.

    Returns
    -------
    float
        Not yet cut to a whole number; infinity where no contribution has finite degrees of freedom.

    Raises
    ------
    UncertaintyError
        If the two differ in length, or degrees of freedom are below one.

    Notes
    -----
    .. math:: \nu = \frac{(\sum u_i^2)^2}{\sum u_i^4/\nu_i}

    Source: JCGM 100:2008 (GUM), G.4.1, formula G.2b.

    Examples
    --------
    >>> print(round(effective_degrees_of_freedom([3, 4], [4, 9]), 2))
    12.84
    """
    parts, degrees = [abs(float(part)) for part in contributions], list(degrees_of_freedom)
    if len(parts) != len(degrees):
        raise UncertaintyError(
            f"effective_degrees_of_freedom: {len(parts)} contributions came with {len(degrees)} degrees of freedom. "
            "Give one for each."
        )
    for degree in degrees:
        check_degrees_of_freedom("effective_degrees_of_freedom", degree)
    most = max(parts, default=0.0)
    if most == 0:
        return math.inf
    squares = [(part / most) ** 2 for part in parts]
    below = sum(square**2 / degree for square, degree in zip(squares, degrees, strict=True))
    return sum(squares) ** 2 / below if below else math.inf


@dataclass(frozen=True)
class Expanded:
    """A value with its plus-minus at a level of confidence; as text, the longer form."""

    value: Quantity
    expanded: Quantity
    coverage_factor: float
    probability: float
    degrees_of_freedom: float

    @property
    def short(self):
        """The value and its plus-minus alone."""
        return show_with_doubt(self.value, self.expanded)

    def __str__(self):
        return show_with_doubt(
            self.value, self.expanded, coverage_factor=self.coverage_factor, probability=self.probability
        )

    def __repr__(self):
        return str(self)


def expand(result, probability=0.95):
    """Return a result with its plus-minus at a level of confidence.

    Parameters
    ----------
    result : Estimate, Combined or FirstOrder
        What has a value, a standard uncertainty and degrees of freedom.
    probability : float
        Level of confidence.

    Returns
    -------
    Expanded
        Value, plus-minus, coverage factor, level of confidence and degrees of freedom.

    Raises
    ------
    UnitError
        If a bare number came.
    UncertaintyError
        If the probability is not between 0 and 1.

    Notes
    -----
    U = k u. Source: JCGM 100:2008 (GUM), 6.2 and G.6.4.

    Examples
    --------
    >>> from liftcalc import Q
    >>> from liftcalc.uncertainty import estimate_from_repeats
    >>> expand(estimate_from_repeats(Q([6.8, 7.1, 6.5, 6.9, 6.7], "m")))
    6.80 ± 0.28 m (k = 2.78, level of confidence 95 %)
    """
    if not all(hasattr(result, name) for name in ("value", "standard_uncertainty", "degrees_of_freedom")):
        raise UnitError(
            f"expand: a result with a standard uncertainty is needed, but got {as_written(result)}. "
            "Write for example expand(estimate_from_half_width(Q(3.4, 'm/s'), Q(0.1, 'm/s')))."
        )
    factor = coverage_factor(probability, result.degrees_of_freedom)
    return Expanded(result.value, factor * result.standard_uncertainty, factor, probability, result.degrees_of_freedom)
