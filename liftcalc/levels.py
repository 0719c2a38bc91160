"""The level of a capacity: what the number means, carried with the number."""

import warnings
from dataclasses import dataclass

from pint import Quantity

from liftcalc.quantity_text import show
from liftcalc.units import PlainError, UnitError

# lowest claim last: each line says what a number of that level promises
LEVELS = {
    "packing": "the closest spacing that fits on the rope; nobody loads so",
    "ideal": "the spacing or interval that is intended, with every place taken",
    "governed": "the smallest of the limits of the lift",
    "simulated": "what a modelled day makes with its losses: as good as the model, and never a count",
    "counted": "what was carried: counted at the top, or as heads on the running line with a ride time",
}


class LevelWarning(UserWarning):
    """Two capacities of different levels, or of different numbers of lines, were compared."""


@dataclass(frozen=True)
class Remark:
    """What a level alone does not say of a capacity: a few words beside it, and the sentence behind them.

    It stands beside the level and does not change it: ideal stays comparable with ideal.
    """

    short: str
    sentence: str


@dataclass(frozen=True)
class Capacity:
    """An hourly capacity with its level.

    Parameters
    ----------
    value : Quantity [person/hour]
        Persons an hour.
    level : str
        "packing", "ideal", "governed", "simulated" or "counted".
    lines : int
        How many lines it counts together.
    remark : Remark or None
        What stands beside the level, such as ``remark_on_loading`` gives it.

    Raises
    ------
    UnitError
        If the value is no hourly capacity.
    PlainError
        If the level is not one of the five, or there are fewer than one line.
    """

    value: Quantity
    level: str
    lines: int = 1
    remark: Remark | None = None

    def __post_init__(self):
        if not isinstance(self.value, Quantity) or not self.value.check("[person]/[time]"):
            raise UnitError(
                f"Capacity: value must be an hourly capacity, but got {self.value!r}. Write Q(1800, 'pph')."
            )
        if self.level not in LEVELS:
            raise PlainError(f"Capacity: level must be one of {', '.join(LEVELS)}, but got {self.level!r}.")
        if isinstance(self.lines, bool) or not isinstance(self.lines, int) or self.lines < 1:
            raise PlainError(f"Capacity: lines must be a whole number, one or more, but got {self.lines!r}.")

    @property
    def label(self):
        """The level, and the number of lines where there are several."""
        return self.level if self.lines == 1 else f"{self.level}, {self.lines} lines together"

    def __str__(self):
        words = f"{self.label}; {self.remark.short}" if self.remark else self.label
        return f"{show(self.value, 'pph')} ({words})"

    def __repr__(self):
        return str(self)


@dataclass(frozen=True)
class Comparison:
    """A ratio of two capacities and the sentence that goes with it."""

    ratio: float
    like_for_like: bool
    sentence: str

    def __str__(self):
        return self.sentence


def _as_levels(capacities):
    """Return the capacities of one lift as a list; the first one is what the caller asked for."""
    return [capacities] if isinstance(capacities, Capacity) else list(capacities)


def compare(first, second):
    """Return the ratio of two capacities, and say whether like was compared with like.

    Parameters
    ----------
    first, second : Capacity, or a list of Capacity
        A list holds one lift at several levels. Its first entry is compared; the others serve to find a level that
        both lifts have.

    Returns
    -------
    Comparison
        The ratio of the first to the second; at a common level where there is one.

    Raises
    ------
    PlainError
        If a list is empty or a capacity is zero.

    Warns
    -----
    LevelWarning
        If the two asked for differ in level or in the number of lines.
    """
    first, second = _as_levels(first), _as_levels(second)
    if not first or not second:
        raise PlainError("compare: a list of capacities is empty. Give at least one Capacity for each lift.")
    asked = first[0], second[0]
    if asked[1].value.magnitude == 0:
        raise PlainError("compare: the second capacity is zero, so there is no ratio. Give one greater than zero.")
    if asked[0].label == asked[1].label:
        ratio = (asked[0].value / asked[1].value).m_as("")
        return Comparison(ratio, True, f"{ratio:.2f} to 1, both {asked[0].label}")
    common = [(a, b) for a in first for b in second if a.label == b.label and b.value.magnitude]
    unlike = f"{asked[0]} and {asked[1]} are not of one level"
    if common:
        one, other = common[0]
        ratio = (one.value / other.value).m_as("")
        text = f"{unlike}; like for like the ratio is {ratio:.2f} to 1, both {one.label}: {one} to {other}"
    else:
        ratio = (asked[0].value / asked[1].value).m_as("")
        text = f"{unlike}, and no common level was given; {ratio:.2f} to 1 compares unlike things"
    warnings.warn(text, LevelWarning, stacklevel=2)
    return Comparison(ratio, bool(common), text)
