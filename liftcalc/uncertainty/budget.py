"""The budget: which reading makes how much of the doubt, and which one to take again."""

import math
from dataclasses import dataclass

from pint import Quantity

from liftcalc.tables import Table
from liftcalc.uncertainty.checks import UncertaintyError
from liftcalc.uncertainty.coverage import Expanded, expand
from liftcalc.uncertainty.estimates import Estimate
from liftcalc.uncertainty.first_order import FirstOrder, by_first_order
from liftcalc.uncertainty.formulas import as_estimate, name_of
from liftcalc.uncertainty.writing import percent, place_of_doubt, show_doubt, with_unit, write_at
from liftcalc.units import Q
from liftcalc.vocabulary import words_of

ABOUT_AS_MUCH = 0.9  # two readings whose gain differs by less than a tenth are named together


@dataclass(frozen=True)
class BudgetRow:
    """One reading in a budget.

    Parameters
    ----------
    name : str
        Argument of the formula, or a reading that the formula does not use.
    estimate : Estimate
        The reading with its doubt, as it was given.
    effect : str
        What a change of the reading does to the result, in words.
    contribution : Quantity
        Its part in the standard uncertainty of the result, without a sign.
    share : float
        Its share of the variance; the shares add up to 1. With correlations a share can be negative.
    if_measured_better : Quantity
        Expanded doubt of the result, were the doubt of this reading half as large.
    """

    name: str
    estimate: Estimate
    effect: str
    contribution: Quantity
    share: float
    if_measured_better: Quantity


@dataclass(frozen=True)
class Budget:
    """A result with its plus-minus, and one row for each reading."""

    formula: str
    result: Expanded
    first_order: FirstOrder
    rows: tuple

    def table(self):
        """Return the budget as a table."""
        rows = [
            (
                words_of(row.name),
                row.estimate.method,
                _show_value(row.estimate),
                show_doubt(row.estimate.standard_uncertainty),
                row.effect,
                show_doubt(row.contribution),
                _show_share(row.share),
                f"± {show_doubt(row.if_measured_better)}",
            )
            for row in self.rows
        ]
        columns = (
            "reading",
            "method",
            "value",
            "standard uncertainty",
            "what it does to the result",
            "contribution",
            "share of the variance",
            "result if measured twice as well",
        )
        name = words_of(self.formula).removeprefix("the ")
        return Table(f"Budget of the {name}: {self.result}", columns, rows)

    def __str__(self):
        return repr(self.table())

    def __repr__(self):
        return str(self)


@dataclass(frozen=True)
class Advice:
    """Which reading to take again (None where none would help), and the sentence that says why."""

    name: str | None
    sentence: str

    def __str__(self):
        return self.sentence


def uncertainty_budget(formula, readings, correlation=None, *, also=None, probability=0.95):
    """Return the budget of a result: what each reading adds to its doubt.

    Parameters
    ----------
    formula : function or OwnFormula
        A formula of liftcalc, or one made by ``own_formula``.
    readings : dict of str to Estimate, Combined or Quantity
        By the names of the formula's arguments; a bare quantity counts as exact and gets no row.
    correlation : array or None
        One row and one column for each reading with a doubt, in the order given.
    also : dict of str to Estimate or Combined, or None
        Readings that the formula does not use, to be shown with their share: nil.
    probability : float
        Level of confidence.

    Returns
    -------
    Budget
        The result with its plus-minus, and the rows; ``.table()`` prints it.

    Raises
    ------
    UnitError
        If a reading has no unit, or one of another kind.
    UncertaintyError
        If no reading has a doubt, the doubts cancel, or a reading in ``also`` is an argument of the formula.

    Notes
    -----
    The share of reading i is c_i u_i times the sum over j of r_ij c_j u_j, over u squared. The doubt of a reading
    measured twice as well is taken as half, with the same coverage factor. Source: JCGM 100:2008 (GUM), 5.1 and H.1.

    Examples
    --------
    >>> from liftcalc import Q, hourly_capacity
    >>> from liftcalc.uncertainty import estimate_from_half_width
    >>> budget = uncertainty_budget(hourly_capacity, {
    ...     "line_speed": estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s")),
    ...     "spacing": estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m")),
    ... })
    >>> print(budget.result)
    1,800 ± 160 pph (k = 1.96, level of confidence 95 %)
    >>> print(budget.rows[1].effect, "-", round(100 * budget.rows[1].share), "%")
    each 0.1 m more: 26 pph less - 86 %
    """
    result = by_first_order(formula, readings, correlation)
    doubt = result.standard_uncertainty.magnitude
    if doubt == 0:
        raise UncertaintyError(
            "uncertainty_budget: the result has no doubt: no reading has one that reaches it, or the doubts cancel. "
            "Give at least one estimate with a doubt, such as estimate_from_half_width(Q(3.4, 'm/s'), Q(0.1, 'm/s'))."
        )
    expanded = expand(result, probability)
    parts = [part.magnitude for part in result.contributions.values()]
    rows = []
    for place, (name, part) in enumerate(result.contributions.items()):
        share = part.magnitude * float(result.correlation[place] @ parts) / doubt**2
        given = as_estimate("uncertainty_budget", name, readings[name])
        # k stays: else a better reading could seem to make the result worse
        better = _halved(parts, result.correlation, place) * expanded.coverage_factor
        effect = _effect(given, result.sensitivities[name], result.value.units)
        rows.append(BudgetRow(name, given, effect, abs(part), share, Q(better, result.value.units)))
    for name, reading in (also or {}).items():
        if name in formula.units:
            raise UncertaintyError(
                f"uncertainty_budget: {name} is an argument of {name_of(formula)}; "
                "give it with the readings, not in also."
            )
        given = as_estimate("uncertainty_budget", name, reading)
        if not isinstance(given, Estimate):
            raise UncertaintyError(f"uncertainty_budget: {name} came without a doubt, so it has no row in a budget.")
        rows.append(BudgetRow(name, given, "nothing", Q(0.0, result.value.units), 0.0, expanded.expanded))
    return Budget(name_of(formula), expanded, result, tuple(rows))


def if_measured_better(budget):
    """Return the expanded doubt of the result, for each reading, were that reading's doubt half as large.

    Parameters
    ----------
    budget : Budget
        Of ``uncertainty_budget``.

    Returns
    -------
    dict of str to Quantity
        By the names of the readings; to be held against ``budget.result.expanded``.
    """
    return {row.name: row.if_measured_better for row in budget.rows}


def reading_to_take_again(budget):
    """Return which reading to take again: the one that makes the doubt of the result fall most.

    Parameters
    ----------
    budget : Budget
        Of ``uncertainty_budget``.

    Returns
    -------
    Advice
        The name of the reading, and one sentence.

    Notes
    -----
    Each reading's doubt is halved in turn. Measuring better what adds little changes little.

    Examples
    --------
    >>> from liftcalc import Q, hourly_capacity
    >>> from liftcalc.uncertainty import estimate_from_half_width
    >>> print(reading_to_take_again(uncertainty_budget(hourly_capacity, {
    ...     "line_speed": estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s")),
    ...     "spacing": estimate_from_half_width(Q(6.8, "m"), Q(0.5, "m")),
    ... })))
    Take the spacing again: it makes 86 % of the variance; measured twice as well, ± 160 pph becomes ± 100 pph.
    """
    now = budget.result.expanded
    ranked = sorted(budget.rows, key=lambda row: row.if_measured_better.magnitude)
    best = ranked[0]
    before, after = _at_one_place(now, best.if_measured_better)
    sentence = (
        f"Take the {words_of(best.name)} again: it makes {_show_share(best.share)} of the variance; measured twice as "
        f"well, ± {before} becomes ± {after}."
    )
    gains = [(now - row.if_measured_better).magnitude for row in ranked]
    if gains[0] <= 0:
        return Advice(None, f"No single reading would lower the doubt of ± {before}: correlated doubts cancel.")
    others = [
        words_of(row.name) for row, gain in zip(ranked[1:], gains[1:], strict=True) if gain >= ABOUT_AS_MUCH * gains[0]
    ]
    if others:
        sentence = f"{sentence[:-1]}; {' and '.join(others)} would help about as much."
    return Advice(best.name, sentence)


def _halved(parts, correlation, place):
    """Return the standard uncertainty of the result with one contribution half as large."""
    changed = [part / 2 if other == place else part for other, part in enumerate(parts)]
    variance = sum(
        one * correlation[row, column] * two for row, one in enumerate(changed) for column, two in enumerate(changed)
    )
    return math.sqrt(max(float(variance), 0.0))


def _effect(estimate, sensitivity, unit):
    """Return what one step of a reading does to the result; the step is the power of ten nearest to the doubt."""
    step_size = 10.0 ** round(math.log10(estimate.standard_uncertainty.magnitude))
    step = Q(step_size, estimate.value.units)
    change = float((sensitivity * step).m_as(unit))
    if change == 0:
        return "nothing"
    written = with_unit(write_at(step_size, math.floor(math.log10(step_size) + 0.5)), step.units)
    written = written.replace("1 persons", "1 person") if step_size == 1 else written
    size = with_unit(write_at(abs(change), math.floor(math.log10(abs(change))) - 1), unit)
    return f"each {written} more: {size} {'more' if change > 0 else 'less'}"


def _show_value(estimate):
    """Return the value with as many digits as its doubt allows."""
    place = place_of_doubt(estimate.standard_uncertainty.magnitude)
    return with_unit(write_at(estimate.value.magnitude, place), estimate.value.units)


def _show_share(share):
    """Return a share in whole percent; "nil" for none, "under 1 %" for little."""
    if share == 0:
        return "nil"
    return "under 1 %" if 0 < share < 0.005 else percent(round(share, 2))


def _at_one_place(now, after):
    """Return two doubts as text, both rounded to the place of the first one."""
    place = place_of_doubt(now.magnitude)
    if after.magnitude > 0:
        place = min(place, place_of_doubt(after.magnitude))
    first = write_at(now.magnitude, place_of_doubt(now.magnitude))
    return with_unit(first, now.units), with_unit(write_at(after.magnitude, place), after.units)
