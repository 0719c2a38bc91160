"""Rough readings by several methods become one number with plus-minus, and which reading to take again.

An estimate is a value with its doubt; methods are combined and compared; doubts are carried through a formula to first
order or by sampling; a budget says which reading matters.
"""

from liftcalc.uncertainty.agreement import Combined, PairScore, combine, normalised_error
from liftcalc.uncertainty.budget import (
    Advice,
    Budget,
    BudgetRow,
    if_measured_better,
    reading_to_take_again,
    uncertainty_budget,
)
from liftcalc.uncertainty.checks import UncertaintyError
from liftcalc.uncertainty.counting import CountVerdict, count_against_bound
from liftcalc.uncertainty.coverage import Expanded, coverage_factor, effective_degrees_of_freedom, expand
from liftcalc.uncertainty.estimates import (
    Estimate,
    correlation_of_repeats,
    estimate_from_half_width,
    estimate_from_repeats,
    estimate_from_resolution,
    estimate_from_statement,
)
from liftcalc.uncertainty.first_order import FirstOrder, by_first_order, correlation_of_results
from liftcalc.uncertainty.formulas import OwnFormula, own_formula
from liftcalc.uncertainty.sampling import Sampled, by_sampling, evaluate
from liftcalc.uncertainty.writing import show_with_doubt

__all__ = [
    "Advice",
    "Budget",
    "BudgetRow",
    "Combined",
    "CountVerdict",
    "Estimate",
    "Expanded",
    "FirstOrder",
    "OwnFormula",
    "PairScore",
    "Sampled",
    "UncertaintyError",
    "by_first_order",
    "by_sampling",
    "combine",
    "correlation_of_repeats",
    "correlation_of_results",
    "count_against_bound",
    "coverage_factor",
    "effective_degrees_of_freedom",
    "estimate_from_half_width",
    "estimate_from_repeats",
    "estimate_from_resolution",
    "estimate_from_statement",
    "evaluate",
    "expand",
    "if_measured_better",
    "normalised_error",
    "own_formula",
    "reading_to_take_again",
    "show_with_doubt",
    "uncertainty_budget",
]
