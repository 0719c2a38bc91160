"""What a limit is: its record, the record of one that lacks a reading, and the entry that makes both.

At one number an entry gives a record, at an array of line speeds the same thing is a curve, at draws of readings a
share. A chart that computed its curves by itself could disagree with its words; and sixty records for each redraw would
take a tenth of a second, where the curves take about a millisecond.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
from pint import Quantity

from liftcalc.levels import Capacity
from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, Q, UnitError
from liftcalc.vocabulary import words_of

GROUPS = {"lift": "the lift's own", "people": "demand", "slope": "room to ski", "rule": "a permission"}
ENTERED_BY_YOU = "entered by you"


@dataclass(frozen=True)
class Limit:
    """One limit of a line, with what it was computed from.

    Parameters
    ----------
    name : str
        Such as "spacing" or "motor".
    capacity : Capacity or Quantity [person/hour]
        What the limit allows, on one line; it is kept as a quantity in pph.
    formula : str
        The formula in plain characters.
    inputs : dict of str to Quantity
        What went in.
    sentence : str
        The limit in one sentence.
    group : str
        "lift", "people", "slope" or "rule".
    source : str
        Where the figures come from.
    at_least : Quantity [person/hour] or None
        A lower bound, where there is one.

    Raises
    ------
    UnitError
        If a capacity is no hourly capacity.
    PlainError
        If it is not one finite number, zero or more; if it is a packing figure, a count, or of several lines; or if
        the group is not known.
    """

    name: str
    capacity: Quantity
    formula: str
    inputs: dict
    sentence: str
    group: str = "lift"
    source: str = ENTERED_BY_YOU
    at_least: Quantity | None = None

    def __post_init__(self):
        if self.group not in GROUPS:
            raise PlainError(f"Limit: group must be one of {', '.join(GROUPS)}, but got {self.group!r}.")
        capacity = self.capacity
        if isinstance(capacity, Capacity):
            if capacity.level not in ("ideal", "governed") or capacity.lines != 1:
                raise PlainError(
                    f"Limit: {self.name!r} got {capacity}, which is no limit of one line. "
                    "Give an ideal or governed capacity of one line."
                )
            capacity = capacity.value
        object.__setattr__(self, "capacity", _one_capacity(self.name, capacity))
        object.__setattr__(self, "inputs", dict(self.inputs))
        if self.at_least is not None:
            object.__setattr__(self, "at_least", _one_capacity(self.name, self.at_least))

    def __str__(self):
        return f"{self.name}: {show(self.capacity)}. {self.sentence}"

    def saying(self, words):
        """Return the same limit with one more sentence, where there are words for it."""
        return replace(self, sentence=f"{self.sentence} {words[0].upper()}{words[1:]}.") if words else self


def _one_capacity(name, capacity):
    """Return the capacity in pph, or say why it is not one hourly capacity."""
    if not isinstance(capacity, Quantity) or not capacity.check("[person]/[time]"):
        raise UnitError(
            f"Limit: {name!r} needs an hourly capacity, but got {as_received(capacity)}. Write Q(1200, 'pph')."
        )
    number = capacity.m_as("pph")
    if np.ndim(number):
        raise PlainError(
            f"Limit: {name!r} must be one number, but got {np.size(number)}. For draws use share_of_draws."
        )
    if not (np.isfinite(number) and number >= 0):
        raise PlainError(f"Limit: {name!r} must be a finite number, zero or more, but got {number:g} pph.")
    return Q(float(number), "pph")


@dataclass(frozen=True)
class LeftOut:
    """A limit that could not be computed.

    Parameters
    ----------
    name : str
        Name of the limit.
    missing : tuple of str
        What is missing.
    sentence : str
        What is missing, in one sentence.
    group : str
        As for a ``Limit``.
    """

    name: str
    missing: tuple
    sentence: str
    group: str = "lift"

    def __str__(self):
        return f"{self.name}: {self.sentence}"


def left_out(name, missing, group="lift"):
    """Return the record of a limit from the words for what it lacks."""
    return LeftOut(name, tuple(missing), f"Left out, not zero: no reading of {' and '.join(missing)}.", group)


@dataclass(frozen=True)
class LimitEntry:
    """One limit, in its one place: from the values of a line to what it allows, and to its record.

    Parameters
    ----------
    name : str
        Such as "spacing" or "motor".
    set_by : str
        The quantity that sets it, and so its colour and line on a chart.
    needs : tuple of str
        Names of the values that it cannot do without.
    capacity : function
        From the values, by their names, to what it allows: scalars or arrays alike.
    law : str or function
        Its law in plain characters; a function where the law depends on the values.
    sentence : function
        From the values to the limit in one sentence.
    counts : tuple of str
        Values that count where they are there; with the first of them it needs those of ``with_it``.
    with_it : tuple of str
        See ``counts``.
    assumed : dict of str to Quantity
        Values that are taken so where nobody read them; the record says so.
    belongs : function
        From a ``Kind`` to whether its lifts have this limit.
    group : str
        A key of ``GROUPS``.
    at_least : function or None
        From the values to a lower bound, where there is one.
    """

    name: str
    set_by: str
    needs: tuple
    capacity: Callable
    law: str | Callable
    sentence: Callable
    counts: tuple = ()
    with_it: tuple = ()
    assumed: dict = field(default_factory=dict)
    belongs: Callable = lambda kind: True
    group: str = "lift"
    at_least: Callable | None = None

    def missing(self, values):
        """Return the names of the values that are missing."""
        asked = self.counts and values.get(self.counts[0]) is not None
        return [name for name in (*self.needs, *(self.with_it if asked else ())) if values.get(name) is None]

    def known(self, values):
        """Return the values that it takes, with what is assumed."""
        named = (*self.needs, *self.assumed, *self.counts, *self.with_it)
        known = {name: values[name] for name in named if values.get(name) is not None}
        return {**self.assumed, **known}

    def allows(self, values):
        """Return what it allows [person/hour], for scalars or arrays; None where a value is missing."""
        return None if self.missing(values) else self.capacity(self.known(values))

    def record(self, values):
        """Return its record: a ``Limit``, or ``LeftOut`` where a value is missing."""
        missing = self.missing(values)
        if missing:
            return left_out(self.name, list(map(words_of, missing)), self.group)
        known = self.known(values)
        capacity = self.capacity(known)  # first: it refuses what cannot be put into words
        unread = [name for name in self.assumed if values.get(name) is None]
        parts = [self.sentence(known)]
        parts += [f"{words_of(name).capitalize()} taken as {show(known[name])}: not read." for name in unread]
        law = self.law if isinstance(self.law, str) else self.law(known)
        inputs = {words_of(name): value for name, value in known.items()}
        at_least = self.at_least(known) if self.at_least else None
        return Limit(self.name, capacity, law, inputs, " ".join(parts), self.group, at_least=at_least)
