"""What a formula must be to carry doubts through it, and the readings that go into it."""

import inspect
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.quantity_text import as_received
from liftcalc.uncertainty.agreement import Combined
from liftcalc.uncertainty.checks import UncertaintyError, check_correlation, check_kind, scalar
from liftcalc.uncertainty.estimates import Estimate
from liftcalc.units import Q, UnitError, ureg


@dataclass(frozen=True)
class OwnFormula:
    """A function on plain numbers with the units of its arguments and of its result."""

    plain: Callable
    units: dict

    @property
    def __name__(self):
        return self.plain.__name__


def own_formula(function, *, returns, **units):
    """Return a function of your own in the form that carries doubts: several formulas in one, for example.

    Parameters
    ----------
    function : function
        Takes and returns plain numbers; arrays as well, if it is to be used for sampling.
    returns : str
        Unit of the result.
    **units : str
        Unit of each argument, by its name.

    Returns
    -------
    OwnFormula
        With ``.plain`` and ``.units``, as every formula of liftcalc has them.

    Raises
    ------
    UncertaintyError
        If the names are not the arguments of the function.

    Examples
    --------
    >>> def timed_speed(distance, time):
    ...     return distance / time
    >>> own_formula(timed_speed, returns="m/s", distance="m", time="s").units["time"]
    's'
    """
    arguments = list(inspect.signature(function).parameters)
    if set(arguments) != set(units):
        raise UncertaintyError(
            f"own_formula: the function takes {', '.join(arguments)}, but units came for {', '.join(units) or 'none'}. "
            "Give one unit for each argument."
        )
    for unit in (returns, *units.values()):
        Q(1.0, unit)
    return OwnFormula(function, {**units, "returns": returns})


def name_of(formula):
    """Return the name of a formula, for messages and captions."""
    name = getattr(formula, "__name__", "<none>")
    return "the formula" if name.startswith("<") else name


@dataclass(frozen=True)
class Prepared:
    """A formula with its readings as plain numbers in the formula's units; exact values have no doubt."""

    formula: object
    exact: dict
    estimates: dict
    correlation: np.ndarray
    value: float

    @property
    def result_unit(self):
        """Unit of the result."""
        return ureg.Unit(self.formula.units["returns"])


def prepare(where, formula, readings, correlation):
    """Check formula, readings and correlations, and bring the readings into the units of the formula.

    Parameters
    ----------
    where : str
        The function that asks, for the messages.
    formula : function or OwnFormula
        With ``.plain`` and ``.units``.
    readings : dict of str to Estimate, Combined or Quantity
        By the names of the formula's arguments; a bare quantity counts as exact.
    correlation : array or None
        One row and one column for each reading with a doubt, in the order of the readings.

    Returns
    -------
    Prepared
        The estimates in the formula's units, and the value of the formula at them.

    Raises
    ------
    UnitError
        If a reading has no unit, or one of another kind.
    UncertaintyError
        If the formula is none, a name is no argument of it, a reading is missing, or the correlations are impossible.
    """
    if not (hasattr(formula, "plain") and hasattr(formula, "units")):
        raise UncertaintyError(
            f"{where}: the formula must be one of liftcalc, such as hourly_capacity, or made by own_formula, "
            f"but got {formula!r}."
        )
    parameters = inspect.signature(formula.plain).parameters
    for name in readings:
        if name not in parameters:
            raise UncertaintyError(
                f"{where}: {name} is no argument of {name_of(formula)}. Its arguments are {', '.join(parameters)}."
            )
    missing = [name for name, one in parameters.items() if one.default is one.empty and name not in readings]
    if missing:
        raise UncertaintyError(f"{where}: {name_of(formula)} needs a reading of {', '.join(missing)} as well.")
    exact, estimates = {}, {}
    for name, reading in readings.items():
        unit = formula.units[name]
        reading = as_estimate(where, name, reading, unit)
        if isinstance(reading, Estimate):
            estimates[name] = reading.to(unit)
        else:
            exact[name] = reading.m_as(unit)
    matrix = check_correlation(where, correlation, list(estimates))
    numbers = {**exact, **{name: estimate.value.magnitude for name, estimate in estimates.items()}}
    return Prepared(formula, exact, estimates, matrix, _value(where, formula, numbers))


def as_estimate(where, name, reading, unit=None):
    """Return a reading as an estimate, or as a quantity where it is exact."""
    if isinstance(reading, Combined):
        reading = reading.estimate
    if isinstance(reading, Estimate):
        if unit is not None:
            check_kind(where, name, reading.value, unit)
        return reading
    if isinstance(reading, Quantity):
        return scalar(where, name, reading, unit)
    raise UnitError(
        f"{where}: {name} must be an estimate, or a quantity where it is exact, but got {as_received(reading)}. "
        "Write for example estimate_from_half_width(Q(3.4, 'm/s'), Q(0.1, 'm/s'))."
    )


def _value(where, formula, numbers):
    """Return the result at the values themselves, through the formula's own check where it has one."""
    if callable(formula):
        return float(formula(**{name: Q(number, formula.units[name]) for name, number in numbers.items()}).magnitude)
    value = float(formula.plain(**numbers))
    if not np.isfinite(value):
        raise UncertaintyError(f"{where}: {name_of(formula)} gives no finite number at these readings.")
    return value
