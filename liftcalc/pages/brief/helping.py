"""What would help and what would not: a tenth more or less of each reading, on paper, and what governs then."""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.levels import Capacity
from liftcalc.lifts.limits_of_line import capacities_at
from liftcalc.units import PlainError, Q

TENTHS = {  # what is moved, and by which factor
    "loading_time": 0.9,
    "line_speed": 1.1,
    "spacing": 0.9,
    "motor_power": 1.1,
    "clearing_time": 0.9,
}
WORDS = {
    "loading_time": "a tenth less loading time",
    "line_speed": "a tenth more line speed",
    "spacing": "a tenth less spacing",
    "motor_power": "a tenth more motor power",
    "clearing_time": "a tenth less clearing time",
}
NEXT_TO_NOTHING = 0.5  # pph: less is nothing on a wall


@dataclass(frozen=True)
class Change:
    """What one change would do on paper.

    Parameters
    ----------
    name : str
        The reading that is moved.
    words : str
        Such as "a tenth more line speed".
    after : Capacity
        What governs then.
    gain : Quantity [person/hour]
        By how much that is more; less than zero where it is less.
    governs : str
        Which limit governs then.
    """

    name: str
    words: str
    after: Capacity
    gain: Quantity
    governs: str

    @property
    def helps(self):
        """Whether it makes the lift carry more."""
        return self.gain.m_as("pph") > NEXT_TO_NOTHING


def changes_of(kind, known, at_most):
    """Return what a tenth more or less of each reading would do, what helps most first.

    Parameters
    ----------
    kind : Kind
        Kind of the lift.
    known : dict
        As ``known_of`` returns it.
    at_most : Capacity
        What governs now.

    Returns
    -------
    tuple of Change
        One for each of ``TENTHS`` that was read, and whose change fits the formulas.
    """
    found = []
    for name, factor in TENTHS.items():
        if name not in known or (name == "spacing" and "dwell_time" in known):  # of a tram it follows from the trip
            continue
        try:
            allowed = capacities_at(kind.name, known | {name: known[name] * factor})
        except PlainError:
            continue
        numbers = {limit: float(capacity.m_as("pph")) for limit, capacity in allowed.items()}
        if not numbers or not np.all(np.isfinite([*numbers.values()])):
            continue
        governs = min(numbers, key=numbers.get)
        after = Q(numbers[governs], "pph")
        found.append(Change(name, WORDS[name], Capacity(after, "governed"), after - at_most.value, governs))
    return tuple(sorted(found, key=lambda change: -round(change.gain.m_as("pph"), 6)))
