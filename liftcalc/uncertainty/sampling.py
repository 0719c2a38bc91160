"""Doubts carried through a formula by drawing many readings, in the manner of JCGM 101."""

import math
from dataclasses import dataclass, field

import numpy as np
from pint import Quantity

from liftcalc.uncertainty.checks import UncertaintyError, check_probability
from liftcalc.uncertainty.estimates import SHAPES, check_shape
from liftcalc.uncertainty.formulas import name_of, prepare
from liftcalc.uncertainty.writing import percent, place_of_doubt, place_of_sampling_error, with_unit, write_at
from liftcalc.units import Q, ureg

MOST_LEFT_OUT = 0.01  # share of draws that may be impossible readings before the result is refused
UNSETTLED = 0.1  # standard error of the spread, as a part of it, from which the spread means little
BATCHES = 10


@dataclass(frozen=True)
class Sampled:
    """What many draws through a formula gave.

    Parameters
    ----------
    mean, standard_uncertainty : Quantity
        Mean and standard deviation of the results.
    interval : Quantity
        The two ends of the interval that leaves out as much below as above.
    shortest_interval : Quantity
        The two ends of the shortest interval with the same share of the results.
    probability : float
        That share.
    sampling_errors : dict of str to Quantity
        One standard error of each number above, by its name, since other draws would give others.
    draws, left_out, seed : int
        Draws used; draws left out since no reading can be below zero; and the seed.
    samples : Quantity
        The results themselves.
    """

    mean: Quantity
    standard_uncertainty: Quantity
    interval: Quantity
    shortest_interval: Quantity
    probability: float
    sampling_errors: dict
    draws: int
    left_out: int
    seed: int
    samples: Quantity = field(repr=False, compare=False)

    def write(self, name):
        """Return one of the numbers as text, without the digits that other draws would change."""
        numbers = np.atleast_1d(getattr(self, name).magnitude)
        errors = np.atleast_1d(self.sampling_errors[name].magnitude)
        spread = self.standard_uncertainty.magnitude
        texts = []
        for number, error in zip(numbers, errors, strict=True):
            places = [place_of_doubt(spread)] if spread > 0 else []
            places += [place_of_sampling_error(error)] if error > 0 else []
            texts.append(write_at(number, max(places)) if places else f"{number:,.6g}")
        return with_unit(" to ".join(texts), self.mean.units)

    @property
    def settled(self):
        """Whether mean and spread have settled; False where a few extreme draws rule them."""
        return self.sampling_errors["standard_uncertainty"] <= UNSETTLED * self.standard_uncertainty

    def __str__(self):
        left_out = f", {self.left_out:,} impossible ones left out" if self.left_out else ""
        return (
            f"mean {self.write('mean')}, standard uncertainty {self.write('standard_uncertainty')}; "
            f"{percent(self.probability)} from {self.write('interval')}, "
            f"the shortest such interval from {self.write('shortest_interval')} "
            f"({self.draws:,} draws, seed {self.seed}{left_out})"
            + ("" if self.settled else "; a few extreme draws rule mean and spread, so trust the intervals only")
        )

    def __repr__(self):
        return str(self)


def by_sampling(formula, readings, *, seed, draws=200_000, correlation=None, shapes=None, probability=0.95):
    r"""Carry the doubts of readings through a formula by drawing each reading many times.

    Parameters
    ----------
    formula : function or OwnFormula
        A formula of liftcalc, or one made by ``own_formula``; it must take arrays.
    readings : dict of str to Estimate, Combined or Quantity
        By the names of the formula's arguments; a bare quantity counts as exact.
    seed : int
        Seed of the draws: the same seed gives the same result.
    draws : int
        How many, 1,000 or more.
    correlation : array or None
        One row and one column for each reading with a doubt, in the order given. Correlated readings must be normal.
    shapes : dict of str to str or None
        Shape of a reading's doubt where it is to differ from the estimate's own.
    probability : float
        Share of the results inside the intervals.

    Returns
    -------
    Sampled
        Mean, standard uncertainty, the two intervals, and the error of each from the sampling itself.

    Raises
    ------
    UnitError
        If a reading has no unit, or one of another kind.
    UncertaintyError
        If a name is no argument, a reading is missing, the correlations are impossible or not of normal shapes, a t
        shape has two degrees of freedom or fewer, or over 1 % of the draws are below zero where no reading can be.

    Notes
    -----
    A t shape is drawn as value + u t, so its spread is u times the root of nu / (nu - 2): more than u, since few
    readings know little of their own spread. Source: JCGM 101:2008, 6.4 and 7.

    Examples
    --------
    >>> from liftcalc import Q, hourly_capacity
    >>> from liftcalc.uncertainty import estimate_from_half_width
    >>> result = by_sampling(hourly_capacity, {
    ...     "line_speed": estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s")),
    ...     "spacing": estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m")),
    ... }, seed=1)
    >>> result.write("standard_uncertainty")
    '80 pph'
    """
    check_probability("by_sampling", probability)
    ready = prepare("by_sampling", formula, readings, correlation)
    samples, left_out = _draw(ready, seed, draws, shapes or {})
    results = evaluate(formula, samples) if samples else Q(np.full(draws, ready.value), ready.result_unit)
    return _describe(name_of(formula), results, probability, left_out, seed)


def evaluate(formula, samples):
    """Return the results of a formula for ready-made samples: one call on whole arrays, without a loop.

    Parameters
    ----------
    formula : function or OwnFormula
        With ``.plain`` and ``.units``.
    samples : dict of str to Quantity
        Draws of each argument, all of one length; a scalar stands for an exact value.

    Returns
    -------
    Quantity
        One result a draw. A result that is no finite number stays as it is; ``by_sampling`` refuses it.

    Raises
    ------
    UncertaintyError
        If the formula does not give one result a draw.

    Examples
    --------
    >>> from liftcalc import Q, headway, show
    >>> show(evaluate(headway, {"line_speed": Q([3.4, 1.7], "m/s"), "spacing": Q(6.8, "m")}))
    '2.0, 4.0 s'
    """
    numbers = {name: sample.m_as(formula.units[name]) for name, sample in samples.items()}
    expected = np.broadcast_shapes(*(np.shape(number) for number in numbers.values()))
    with np.errstate(all="ignore"):
        try:
            results = formula.plain(**numbers)
        except (TypeError, ValueError):
            results = None
    if np.shape(results) != expected:
        raise UncertaintyError(
            f"evaluate: {name_of(formula)} does not give one result a draw. Sampling needs a formula that works on "
            "arrays, number by number."
        )
    return ureg.Quantity(results, ureg.Unit(formula.units["returns"]))


def _draw(ready, seed, draws, shapes):
    """Return the draws of every argument as quantities, and how many impossible ones were left out."""
    for what, number, least in (("seed", seed, 0), ("draws", draws, 1000)):
        if isinstance(number, bool) or not isinstance(number, (int, np.integer)) or number < least:
            raise UncertaintyError(
                f"by_sampling: {what} must be a whole number, {least:,} or more, but got {number!r}. "
                f"Write for example {what}={max(least, 1)}."
            )
    names = list(ready.estimates)
    for name in shapes:
        if name not in names:
            raise UncertaintyError(
                f"by_sampling: a shape came for {name}, which has no doubt here. "
                f"Those with a doubt: {', '.join(names)}."
            )
    generator = np.random.default_rng(seed)
    linked = np.count_nonzero(ready.correlation, axis=1) > 1
    together = {}
    if linked.any():
        block = ready.correlation[np.ix_(linked, linked)]
        rows = generator.multivariate_normal(np.zeros(len(block)), block, draws, check_valid="ignore", method="eigh")
        together = dict(zip(np.array(names)[linked].tolist(), rows.T, strict=True))
    samples = {}
    for name, estimate in ready.estimates.items():
        shape = shapes.get(name, estimate.shape)
        check_shape("by_sampling", shape)
        if name in together and shape != "normal":
            raise UncertaintyError(
                f"by_sampling: {name} is correlated with another reading, but its shape is {shape}. Correlated draws "
                f"are normal here: write shapes={{{name!r}: 'normal'}}."
            )
        standard = together.get(name)
        if standard is None:
            standard = _standard_draws(generator, name, shape, estimate.degrees_of_freedom, draws)
        samples[name] = estimate.value.magnitude + estimate.standard_uncertainty.magnitude * standard
    samples, left_out = _leave_out_impossible(ready, samples, draws)
    numbers = {**ready.exact, **samples} if samples else {}
    return {name: ureg.Quantity(number, ready.formula.units[name]) for name, number in numbers.items()}, left_out


def _standard_draws(generator, name, shape, degrees, draws):
    """Return draws about zero; of standard deviation one, but for the t shape."""
    if shape == "normal":
        return generator.standard_normal(draws)
    if shape == "rectangular":
        return generator.uniform(-SHAPES[shape], SHAPES[shape], draws)
    if shape == "triangular":
        return generator.triangular(-SHAPES[shape], 0.0, SHAPES[shape], draws)
    if not 2 < degrees < math.inf:
        raise UncertaintyError(
            f"by_sampling: {name} has {degrees:g} degrees of freedom; a t shape has a spread of finite size only "
            f"above 2. Take four readings or more, or write shapes={{{name!r}: 'normal'}} and say so."
        )
    return generator.standard_t(degrees, draws)


def _leave_out_impossible(ready, samples, draws):
    """Drop the draws that the formula's own checks refuse: negative where it must not be, or against a condition."""
    keep = None
    for name, numbers in samples.items():
        if numbers.min() > 0 or not _refuses_negative(ready, name):
            continue
        possible = numbers > 0
        what = f"of {name} are not greater than zero, which no reading can be ({ready.estimates[name]})"
        keep = _keep(keep, possible, draws, what)
    for condition in getattr(ready.formula, "conditions", ()):
        numbers = {**ready.formula.defaults, **ready.exact, **samples}
        with np.errstate(all="ignore"):
            possible = np.broadcast_to(condition.where(numbers), draws)
        if not possible.all():
            keep = _keep(keep, possible, draws, f"do not fit {name_of(ready.formula)}: {condition.message(numbers)}")
    if keep is None:
        return samples, 0
    return {name: numbers[keep] for name, numbers in samples.items()}, int(draws - np.count_nonzero(keep))


def _keep(keep, possible, draws, what):
    """Return which draws are kept so far; refuse readings of which too many draws are impossible."""
    share = 1 - np.count_nonzero(possible) / draws
    if share > MOST_LEFT_OUT:
        much = percent(float(f"{share:.2g}"))
        raise UncertaintyError(
            f"by_sampling: {much} of the draws {what.rstrip('.')}. Its doubt is too large; take that reading again."
        )
    return possible if keep is None else keep & possible


def _refuses_negative(ready, name):
    """Return whether the check in front of the formula refuses a negative value of one argument."""
    if not callable(ready.formula):
        return False
    numbers = {**ready.exact, **{other: estimate.value.magnitude for other, estimate in ready.estimates.items()}}
    numbers[name] = -(abs(numbers[name]) + 1.0)
    try:
        ready.formula(**{other: Q(number, ready.formula.units[other]) for other, number in numbers.items()})
    except ValueError as error:
        return str(error).startswith(f"{name_of(ready.formula)}: {name} must be")
    return False


def _describe(name, samples, probability, left_out, seed):
    """Return mean, spread and intervals of the results, each with its own sampling error."""
    unit, numbers = samples.units, samples.magnitude
    count = numbers.size
    with np.errstate(all="ignore"):
        # not finite where a single result is not; a pass for that alone cost up to 0.4 times the formula
        mean = float(numbers.mean())
    if not math.isfinite(mean):
        raise UncertaintyError(
            f"by_sampling: {name} gives no finite number for some draws. The doubt of a reading is too large."
        )
    away = (numbers - mean) ** 2
    variance = float(away.sum()) / (count - 1)
    spread = math.sqrt(variance)
    if spread <= 1e-12 * abs(mean):  # draws that cancel leave a rest of rounding
        variance = spread = 0.0
    fourth = float(np.mean(away**2))
    spread_error = math.sqrt(max(fourth - variance**2, 0.0) / count) / (2 * spread) if spread else 0.0
    ordered = np.sort(numbers)
    tail = (1 - probability) / 2
    ends, end_errors = zip(*(_end(ordered, part) for part in (tail, 1 - tail)), strict=True)
    shortest = _shortest(ordered, probability)
    each = [_shortest(np.sort(batch), probability) for batch in np.array_split(numbers, BATCHES)]
    # its ends settle with the cube root of the number of draws (Kim and Pollard, 1990, from memory)
    shortest_errors = np.std(each, axis=0, ddof=1) / BATCHES ** (1 / 3)
    return Sampled(
        mean=Q(mean, unit),
        standard_uncertainty=Q(spread, unit),
        interval=Q(ends, unit),
        shortest_interval=Q(shortest, unit),
        probability=probability,
        sampling_errors={
            "mean": Q(spread / math.sqrt(count), unit),
            "standard_uncertainty": Q(spread_error, unit),
            "interval": Q(end_errors, unit),
            "shortest_interval": Q(shortest_errors, unit),
        },
        draws=count,
        left_out=left_out,
        seed=int(seed),
        samples=samples,
    )


def _end(ordered, part):
    """Return the value below which a part of the ordered results lies, and its standard error from their ranks."""
    count = ordered.size
    rank, wobble = part * (count - 1), math.sqrt(count * part * (1 - part))
    low, middle, high = np.interp([rank - wobble, rank, rank + wobble], np.arange(count), ordered)
    return float(middle), float(high - low) / 2


def _shortest(ordered, probability):
    """Return the two ends of the shortest stretch that holds the share of the ordered results."""
    inside = min(math.ceil(probability * ordered.size), ordered.size - 1)
    start = int(np.argmin(ordered[inside:] - ordered[: ordered.size - inside]))
    return float(ordered[start]), float(ordered[start + inside])
