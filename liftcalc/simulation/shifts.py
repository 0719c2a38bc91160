"""Spells in which the loading point is served in another way: a lunch, an empty post, other staff, a shut lift."""

import math
from dataclasses import dataclass

import numpy as np

from liftcalc.simulation.running_time import check_number
from liftcalc.units import PlainError

CLOSINGS = ("turned away", "rides")  # what becomes of whoever stands in line at closing


@dataclass(frozen=True)
class Shift:
    """One spell of the day, by the clock since opening.

    An empty post lets riders on slower, or shuts the place where the operator's rule says so: which of the two is for
    the reader to say. Whoever rides stays on the line when the lift is shut to new riders; the line waits.

    Parameters
    ----------
    begins, ends : float
        When it begins and ends [s]; it may end never.
    slower : float
        Factor on the time that a rider needs, or on the time between carriers, where the lift is run slower.
    misses : float
        Factor on the share of attempts that fail.
    shut : bool
        Whether nobody starts meanwhile.
    """

    begins: float
    ends: float = math.inf
    slower: float = 1.0
    misses: float = 1.0
    shut: bool = False

    def __post_init__(self):
        check_number("Shift", "begins", self.begins)
        check_number("Shift", "slower", self.slower, above=0, most=100)
        check_number("Shift", "misses", self.misses, most=100)
        if not self.ends > self.begins:
            raise PlainError(f"Shift: it ends at {self.ends:g} s and begins at {self.begins:g} s. End it later.")
        if self.shut and math.isinf(self.ends):
            raise PlainError("Shift: a lift that is shut must open again. Write when the shift ends.")


def factor(shifts, what, times):
    """Return the factor "slower" or "misses" that holds at each time; shifts that overlap multiply."""
    found = np.ones(np.shape(times))
    for shift in shifts:
        if getattr(shift, what) != 1:
            found = np.where((times >= shift.begins) & (times < shift.ends), found * getattr(shift, what), found)
    return found


def is_shut(shifts, times):
    """Return at which of the times nobody starts."""
    found = np.zeros(np.shape(times), bool)
    for shift in shifts:
        if shift.shut:
            found |= (times >= shift.begins) & (times < shift.ends)
    return found
