"""Checks that several modules of this package share, and the error they raise."""

import math
from numbers import Real

import numpy as np
from pint import Quantity

from liftcalc.units import KINDS_OF_QUANTITY, PlainError, Q, UnitError, is_like, kind_in_words, kind_of, ureg


class UncertaintyError(PlainError):
    """A doubt, a correlation or a list of readings cannot be used; the message says what to write instead."""


def unit_as_written(unit):
    """Return a unit as one would write it into ``Q``."""
    return f"{ureg.Unit(unit):~}".replace(" / ", "/").replace(" * ", "*").replace(" ** ", "**")


def as_written(value):
    """Return what came, for a message: a quantity with its unit and not rounded, anything else as Python writes it."""
    if not isinstance(value, Quantity):
        return repr(value)
    number = value.magnitude
    return f"{f'{number:g}' if np.ndim(number) == 0 else number} {unit_as_written(value.units)}".strip()


def advice(unit):
    """Return an example of a quantity that has the kind of ``unit``, as one would write it."""
    kind = kind_of(ureg.Unit(unit))
    return f"Q({KINDS_OF_QUANTITY[kind][1] if kind else 1.0}, {unit_as_written(unit)!r})"


def check_kind(where, name, value, unit):
    """Refuse what is no quantity, or a quantity of another kind than ``unit``."""
    if not isinstance(value, Quantity):
        raise UnitError(f"{where}: {name} needs a unit, but got the bare value {value!r}. Write {advice(unit)}.")
    wanted = ureg.Unit(unit)
    if not is_like(value.units, wanted):
        must_be = kind_in_words(wanted) if kind_of(wanted) else f"a quantity in {unit_as_written(wanted)}"
        came = kind_in_words(value.units)
        raise UnitError(
            f"{where}: {name} must be {must_be}, but got {came}: {as_written(value)}. Write for example {advice(unit)}."
        )


def scalar(where, name, value, unit=None):
    """Return one finite quantity, with a float inside, in its own unit."""
    if not isinstance(value, Quantity):
        raise UnitError(f"{where}: {name} needs a unit, but got the bare value {value!r}. Write Q(3.4, 'm/s').")
    if unit is not None:
        check_kind(where, name, value, unit)
    if np.ndim(value.magnitude):
        raise UncertaintyError(f"{where}: {name} must be one value, but got {np.size(value.magnitude)} values.")
    if not math.isfinite(value.magnitude):
        raise UncertaintyError(f"{where}: {name} must be a finite number, but got {as_written(value)}.")
    return Q(float(value.magnitude), value.units)


def positive_doubt(where, name, doubt, value):
    """Return a doubt in the unit of its value; it must be finite and greater than zero."""
    if isinstance(doubt, Quantity):
        check_kind(where, name, doubt, value.units)
    else:
        raise UnitError(
            f"{where}: {name} needs a unit, but got the bare value {doubt!r}. "
            f"Write it in the unit of the value, such as Q(0.1, {unit_as_written(value.units)!r})."
        )
    number = doubt.magnitude
    if np.ndim(number) or not (math.isfinite(number) and number > 0):
        raise UncertaintyError(
            f"{where}: {name} must be one number greater than zero, but got {as_written(doubt)}. "
            "No reading is exact; half the last digit of the display is the least doubt there is."
        )
    return Q(float(doubt.m_as(value.units)), value.units)


def check_probability(where, probability):
    """Refuse a probability that is not between 0 and 1."""
    if isinstance(probability, bool) or not isinstance(probability, Real) or not 0 < probability < 1:
        raise UncertaintyError(
            f"{where}: the probability must lie between 0 and 1, but got {probability!r}. Write 0.95 for 95 %."
        )


def check_degrees_of_freedom(where, degrees):
    """Refuse degrees of freedom below one; infinity is allowed."""
    if isinstance(degrees, bool) or not isinstance(degrees, Real) or not degrees >= 1:
        raise UncertaintyError(
            f"{where}: the degrees of freedom must be 1 or more, but got {degrees!r}. "
            "Write how many readings there were less one, or math.inf for a doubt that is known well."
        )


def check_correlation(where, correlation, names):
    """Return a correlation matrix as an array; the identity if none was given.

    Parameters
    ----------
    where : str
        The function that asks, for the message.
    correlation : array or None
        One row and one column for each name, in the same order.
    names : sequence of str
        The readings with a doubt.

    Returns
    -------
    ndarray
        The matrix.

    Raises
    ------
    UncertaintyError
        If it has another size, is not symmetric, has no ones on its diagonal, or cannot be a correlation matrix.
    """
    size = len(names)
    if correlation is None:
        return np.eye(size)
    matrix = np.asarray(correlation, dtype=float)
    listed = ", ".join(names)
    if matrix.shape != (size, size):
        raise UncertaintyError(
            f"{where}: the correlation matrix has shape {matrix.shape}, but {size} readings have a doubt. "
            f"Give {size} rows and {size} columns, in the order {listed}."
        )
    if not np.all(np.isfinite(matrix)) or np.any(np.abs(matrix) > 1 + 1e-12) or np.any(np.diag(matrix) != 1):
        raise UncertaintyError(
            f"{where}: a correlation lies between -1 and 1, and is 1 on the diagonal, but got {matrix.tolist()}."
        )
    if not np.allclose(matrix, matrix.T, rtol=0, atol=1e-12):
        row, column = np.argwhere(np.abs(matrix - matrix.T) > 1e-12)[0]
        raise UncertaintyError(
            f"{where}: the correlation matrix is not symmetric: {names[row]} with {names[column]} is "
            f"{matrix[row, column]:g}, but {names[column]} with {names[row]} is {matrix[column, row]:g}. "
            "Write the same number in both places."
        )
    smallest = np.linalg.eigvalsh(matrix).min()
    if smallest < -1e-9:
        raise UncertaintyError(
            f"{where}: these correlations contradict each other: the matrix is not positive semidefinite, its "
            f"smallest eigenvalue is {smallest:.2g}. Two readings that both go with a third cannot go against each "
            "other."
        )
    return matrix
