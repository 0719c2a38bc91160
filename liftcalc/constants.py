"""Constants with their full names and where each comes from.

Factors between units (foot, mile, horsepower) live in the unit registry; the tests hold them to the same sources.
"""

from dataclasses import dataclass

from pint import Quantity

from liftcalc.units import Q


@dataclass(frozen=True)
class Constant:
    """A named quantity and its source."""

    name: str
    quantity: Quantity
    source: str


STANDARD_GRAVITY = Constant(
    "standard acceleration of free fall",
    Q(9.80665, "m/s**2"),
    "3rd General Conference on Weights and Measures, 1901; exact by definition",
)
