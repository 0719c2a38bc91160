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

GRAVITY = STANDARD_GRAVITY.quantity.m_as("m/s**2")  # as formulas on plain numbers take it
SECONDS_PER_HOUR = 3600.0

_STANDARD_ATMOSPHERE = "ISO 2533 standard atmosphere, from memory; the tests integrate the air column anew"
SEA_LEVEL_TEMPERATURE = Constant("air temperature at sea level", Q(288.15, "kelvin"), _STANDARD_ATMOSPHERE)
TEMPERATURE_LAPSE = Constant("fall of air temperature with height", Q(0.0065, "kelvin/m"), _STANDARD_ATMOSPHERE)
GAS_CONSTANT_OF_AIR = Constant("specific gas constant of dry air", Q(287.05287, "J/(kg*kelvin)"), _STANDARD_ATMOSPHERE)
