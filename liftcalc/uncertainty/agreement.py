"""Several methods, one thing: do they agree, and what is the one value?"""

import math
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from pint import Quantity

from liftcalc.uncertainty.checks import UncertaintyError, as_written, check_kind
from liftcalc.uncertainty.coverage import effective_degrees_of_freedom
from liftcalc.uncertainty.estimates import Estimate
from liftcalc.uncertainty.writing import percent, short_number, show_with_doubt
from liftcalc.units import Q, UnitError

LEAST_PROBABILITY = 0.05  # below it the methods are said to disagree
MUCH_COARSER = 3.0  # a doubt this many times the smallest one carries at most a tenth of the weight
_NUMBER_WORDS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}


@dataclass(frozen=True)
class PairScore:
    """The normalised error of two methods, and whether the two agree: a size of 1 or less."""

    first: str
    second: str
    normalised_error: float

    @property
    def agrees(self):
        """Whether the difference is within the expanded doubts."""
        return abs(self.normalised_error) <= 1


@dataclass(frozen=True)
class Combined:
    """One value from several methods, and what the comparison of the methods says.

    Parameters
    ----------
    value, standard_uncertainty : Quantity
        Weighted mean and its doubt, widened by the Birge ratio where the methods disagree.
    degrees_of_freedom : float
        Effective degrees of freedom of the weighted mean.
    doubt_if_agreed : Quantity
        The doubt before any widening.
    birge_ratio, chi_square : float
        How far the values scatter beside their doubts.
    probability : float or None
        How often honest doubts would give a scatter as large or larger; None with one method.
    agrees : bool
        Whether that probability is 5 % or more.
    weights : dict
        Share of each method in the mean.
    pairs : tuple of PairScore
        Every pair of methods.
    odd_one : str or None
        The method whose removal lowers chi-square most, where the methods disagree and one stands out.
    sentence : str
        All this in words.
    """

    value: Quantity
    standard_uncertainty: Quantity
    degrees_of_freedom: float
    doubt_if_agreed: Quantity
    birge_ratio: float
    chi_square: float
    probability: float | None
    agrees: bool
    weights: dict
    pairs: tuple
    odd_one: str | None
    sentence: str

    @property
    def estimate(self):
        """The combined value as an estimate, to be used in a formula."""
        names = "; ".join(self.weights)
        wide = "" if self.agrees else f"; they disagree: widened {self.birge_ratio:.1f} times"
        method = f"weighted mean of {names}{wide}" if len(self.weights) > 1 else names
        shape = "normal" if math.isinf(self.degrees_of_freedom) else "t"
        return Estimate(self.value, self.standard_uncertainty, self.degrees_of_freedom, method, shape)

    def __str__(self):
        return f"{show_with_doubt(self.value, self.standard_uncertainty)} (one standard uncertainty). {self.sentence}"

    def __repr__(self):
        return str(self)


def normalised_error(one, other):
    r"""Return the normalised error En of two estimates: their difference beside their expanded doubts.

    Parameters
    ----------
    one, other : Estimate
        Two independent values of one thing; the other is often a reference.

    Returns
    -------
    float
        Within -1 and 1 the two agree. The sign says whether the first lies above.

    Raises
    ------
    UnitError
        If one is no estimate, or they are of different kinds.

    Notes
    -----
    .. math:: E_n = \frac{x_1 - x_2}{\sqrt{U_1^2 + U_2^2}}, \qquad U = 2u

    Source: ISO 13528, En score, as described in NIST Dataplot.

    Examples
    --------
    >>> from liftcalc import Q
    >>> tape = Estimate(Q(150, "m"), Q(0.6, "m"), method="tape")
    >>> track = Estimate(Q(155, "m"), Q(2.0, "m"), method="track")
    >>> print(round(normalised_error(track, tape), 2))
    1.2
    """
    _check_estimates("normalised_error", [one, other])
    unit = one.value.units
    other = other.to(unit)
    both = math.hypot(one.standard_uncertainty.magnitude, other.standard_uncertainty.magnitude)
    return (one.value.magnitude - other.value.magnitude) / (2 * both)


def combine(estimates):
    r"""Return one value from several methods' estimates of one thing, with a test whether the methods agree.

    Parameters
    ----------
    estimates : sequence of Estimate
        Independent estimates, each with a method of its own. Two methods that share a fault (the same wrong distance
        between two poles) agree without being right.

    Returns
    -------
    Combined
        The weighted mean. Where the methods disagree its doubt is widened, and the sentence says so.

    Raises
    ------
    UnitError
        If one is no estimate, or they are of different kinds.
    UncertaintyError
        If the list is empty, or two methods bear one name.

    Notes
    -----
    .. math:: \bar x = \frac{\sum x_i/u_i^2}{\sum 1/u_i^2}, \qquad u = \Big(\sum 1/u_i^2\Big)^{-1/2}, \qquad
              \chi^2 = \sum \frac{(x_i - \bar x)^2}{u_i^2}, \qquad R_B = \sqrt{\chi^2/(n - 1)}

    The methods disagree where a chi-square as large has a probability below 5 %; the doubt is then u times the Birge
    ratio. The widening leaves the degrees of freedom as they are.
    Source: R. T. Birge, Physical Review 40 (1932), 207 (from memory); the weighted mean by least squares.

    Examples
    --------
    >>> from liftcalc import Q
    >>> tape = Estimate(Q(6.8, "m"), Q(0.1, "m"), method="tape")
    >>> photo = Estimate(Q(7.0, "m"), Q(0.2, "m"), method="photo")
    >>> print(combine([tape, photo]).sentence)
    The two methods agree: chi-square 0.8 with 1 degree of freedom, probability 37 %.
    """
    estimates = list(estimates)
    _check_estimates("combine", estimates)
    unit = estimates[0].value.units
    names = [estimate.method or f"method {place}" for place, estimate in enumerate(estimates, start=1)]
    repeated = sorted({name for name in names if names.count(name) > 1})
    if repeated:
        raise UncertaintyError(
            f"combine: two methods bear the name {repeated[0]!r}. Name each, such as method='tape' and method='photo'."
        )
    estimates = [estimate.to(unit) for estimate in estimates]
    values = np.array([estimate.value.magnitude for estimate in estimates])
    doubts = np.array([estimate.standard_uncertainty.magnitude for estimate in estimates])
    mean, doubt, chi_square, weights = _weighted_mean(values, doubts)
    freedom = len(values) - 1
    birge = math.sqrt(chi_square / freedom) if freedom else 0.0
    probability = _probability(chi_square, freedom) if freedom else None
    agrees = probability is None or probability >= LEAST_PROBABILITY
    known = effective_degrees_of_freedom(weights * doubts, [estimate.degrees_of_freedom for estimate in estimates])
    pairs = tuple(
        PairScore(names[i], names[j], normalised_error(estimates[i], estimates[j]))
        for i, j in combinations(range(len(names)), 2)
    )
    odd_one, about_the_odd = (None, "") if agrees else _odd_one(names, values, doubts, chi_square)
    return Combined(
        value=Q(mean, unit),
        standard_uncertainty=Q(doubt if agrees else doubt * birge, unit),
        degrees_of_freedom=known,  # widened or not: the one degree of two methods would make k 12.7
        doubt_if_agreed=Q(doubt, unit),
        birge_ratio=birge,
        chi_square=chi_square,
        probability=probability,
        agrees=agrees,
        weights=dict(zip(names, weights.tolist(), strict=True)),
        pairs=pairs,
        odd_one=odd_one,
        sentence=_sentence(names, doubts, weights, chi_square, probability, birge, about_the_odd),
    )


def _check_estimates(where, estimates):
    """Refuse an empty list, what is no estimate, and estimates of different kinds."""
    if not estimates:
        raise UncertaintyError(f"{where}: no reading came. Give at least one estimate, such as combine([tape, photo]).")
    for estimate in estimates:
        if not isinstance(estimate, Estimate):
            raise UnitError(
                f"{where}: each method must be an estimate with its doubt, but got {as_written(estimate)}. "
                "Write for example estimate_from_half_width(Q(6.8, 'm'), Q(0.5, 'm'), 'tape')."
            )
        check_kind(where, estimate.method or "an estimate", estimate.value, estimates[0].value.units)


def _weighted_mean(values, doubts):
    """Return mean, doubt, chi-square and weights; the weights add up to one."""
    relative = (doubts.min() / doubts) ** 2
    weights = relative / relative.sum()
    middle = values[np.argmax(weights)]  # differences from one value keep all digits
    mean = float(middle + np.sum(weights * (values - middle)))
    mean = min(max(mean, float(values.min())), float(values.max()))
    return (
        mean,
        float(doubts.min() / math.sqrt(relative.sum())),
        float(np.sum(((values - mean) / doubts) ** 2)),
        weights,
    )


def _probability(chi_square, freedom):
    """Return how often a chi-square is as large or larger when all doubts are right."""
    from scipy.special import chdtrc

    return float(chdtrc(freedom, chi_square))


def _odd_one(names, values, doubts, chi_square):
    """Return the method whose removal lowers chi-square most (None on a tie), and the words about it."""
    if len(names) == 2:
        return None, (
            "With two methods nobody can say which of them is odd. Take both again, or measure in a third way."
        )
    left = []
    for place in range(len(names)):
        rest = np.arange(len(names)) != place
        left.append(_weighted_mean(values[rest], doubts[rest])[2])
    first, second = np.argsort(left, kind="stable")[:2]
    if math.isclose(left[first], left[second], rel_tol=1e-9, abs_tol=1e-12 * chi_square):
        return None, (
            f"Nobody can say which is odd: without '{names[first]}' or without '{names[second]}' the rest would agree "
            "equally well. Take both again."
        )
    fall = f"from {short_number(chi_square)} to {short_number(left[first], 2)}"
    words = f"'{names[first]}' is the odd one: without it chi-square falls {fall}. Take it again."
    freedom = len(names) - 2
    if _probability(left[first], freedom) < LEAST_PROBABILITY:
        words += " The rest disagree without it as well."
    elif _probability(left[second], freedom) >= LEAST_PROBABILITY:
        words += f" Without '{names[second]}' the rest would agree too, so look at both."
    return names[first], words


def _sentence(names, doubts, weights, chi_square, probability, birge, about_the_odd):
    """Return the comparison in words."""
    if probability is None:
        return f"One method only, '{names[0]}': nothing tests it."
    freedom = len(names) - 1
    many = _NUMBER_WORDS.get(len(names), str(len(names)))
    chance = percent(float(f"{probability:.2g}")) if probability >= 0.001 else "less than 0.1 %"
    degrees = "1 degree" if freedom == 1 else f"{freedom} degrees"
    test = f"chi-square {short_number(chi_square)} with {degrees} of freedom, probability {chance}"
    if probability < LEAST_PROBABILITY:
        return (
            f"The {many} methods disagree: {test}. The doubt of the mean is widened {birge:.1f} times, which mends "
            f"nothing. {about_the_odd}"
        )
    words = f"The {many} methods agree: {test}."
    finest = int(np.argmin(doubts))
    for place in np.flatnonzero(doubts >= MUCH_COARSER * doubts[finest]):
        share = percent(float(f"{weights[place]:.2g}"))
        times = short_number(doubts[place] / doubts[finest])
        words += (
            f" That '{names[place]}' agrees means little: its doubt is {times} times that of "
            f"'{names[finest]}', it would agree with much else, and it carries {share} of the "
            "weight."
        )
    return words
