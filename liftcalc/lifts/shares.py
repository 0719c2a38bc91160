"""In what share of draws each limit of a line governs, where its readings are in doubt."""

import numpy as np
from pint import Quantity

from liftcalc.lifts.governing import share_of_draws
from liftcalc.lifts.limits_of_line import capacities_at, only_those, where_possible
from liftcalc.lifts.readings import known_values
from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, Q, UnitError, is_like


def draws_of(line, readings, half_widths, *, seed, draws=20_000):
    """Return the values of a line with readings in doubt drawn many times, and how many draws were left out.

    Parameters
    ----------
    line, readings, half_widths, seed, draws
        As for ``share_of_limits``.

    Returns
    -------
    dict of str to Quantity, int
        The values, as ``known_values`` returns them, those in doubt as arrays; draws that no formula takes are not
        among them, and are counted.

    Raises
    ------
    PlainError
        As for ``share_of_limits``.
    """
    if isinstance(seed, bool) or not isinstance(seed, int) or seed < 0:
        raise PlainError(
            f"share_of_limits: seed must be a whole number, zero or more, but got {seed!r}. Write seed=2026."
        )
    values, generator = known_values(line, readings), np.random.default_rng(seed)
    for name in half_widths:
        if not isinstance(values.get(name), Quantity):
            known = ", ".join(other for other, value in values.items() if isinstance(value, Quantity))
            raise PlainError(f"share_of_limits: {name!r} has a half-width, but no value. Known: {known}.")
    for name in sorted(half_widths):  # one order, and so one draw, however names were written
        value, half_width = values[name], half_widths[name]
        if not (isinstance(half_width, Quantity) and is_like(half_width.units, value.units)):
            raise UnitError(
                f"share_of_limits: the half-width of {name} must be of one kind with {show(value)}, but got "
                f"{as_received(half_width)}. Write Q(..., '{value.units}')."
            )
        away = half_width.m_as(value.units)
        if away < 0:
            raise PlainError(
                f"share_of_limits: the half-width of {name} must be zero or more, but got {show(half_width)}."
            )
        if not away < value.magnitude:
            raise PlainError(
                f"share_of_limits: the half-width of {name} must be less than {show(value)}, "
                f"but got {show(half_width)}."
            )
        values[name] = Q(generator.uniform(value.magnitude - away, value.magnitude + away, draws), value.units)
    fits = np.broadcast_to(where_possible(line.kind, values), draws)
    if not fits.any():
        raise PlainError("share_of_limits: no draw fits the formulas. Look at efficiency, safety factor and pick-up.")
    left_out = draws - int(np.count_nonzero(fits))
    return (only_those(values, fits) if left_out else values), left_out


def shares_in(kind, values):
    """Return in what share of the draws among its values each limit of a line governs."""
    allowed = {name: capacity.m_as("pph") for name, capacity in capacities_at(kind, values).items()}
    shape = np.broadcast_shapes(*(np.shape(capacity) for capacity in allowed.values()))
    return share_of_draws({name: np.broadcast_to(capacity, shape) for name, capacity in allowed.items()})


def share_of_limits(line, readings, half_widths, *, seed, draws=20_000):
    """Return in what share of draws each limit of a line governs, where its readings are in doubt.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.
    half_widths : mapping of str to Quantity
        By how much a reading, or a value of the line, may be off to either side; every value between is as likely.
    seed : int
        Start of the random numbers.
    draws : int
        How many draws are made; those that no formula takes, such as an efficiency over 1, are left out.

    Returns
    -------
    dict of str to float
        Share of each limit; they add up to 1.

    Raises
    ------
    PlainError
        If a half-width belongs to nothing that is known of the line, or reaches down to zero, or no draw is possible.
    """
    values, _ = draws_of(line, readings, half_widths, seed=seed, draws=draws)
    return shares_in(line.kind, values)
