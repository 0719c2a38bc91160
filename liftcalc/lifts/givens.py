"""A line from whatever is known of it: from the givens the rest follows, and a figure to spare checks the others.

Every quantity of a line is a product of powers of five of them. In logarithms such products are linear equations, so
one least-squares solution serves every choice of givens: what follows, what does not, and how far the givens disagree.
"""

import difflib
import itertools
import math
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

import numpy as np
from pint import Quantity

from liftcalc.lifts.line_quantities import BASIS, COUNTS, LINE_QUANTITIES
from liftcalc.quantity_text import show, unit_word
from liftcalc.tables import Table
from liftcalc.units import PlainError, Q, UnitError, is_like, kind_in_words, parsed_unit

ONE_PERSON = Q(1, "person")
NEXT_TO_NOTHING = 1e-6  # a part as small as this counts as none


class NotKnownError(PlainError):
    """A quantity of a line does not follow from what was given; the message says what more would give it."""


class DisagreementError(PlainError):
    """Givens of a line disagree.

    ``apart`` is by how much (0.6 where the larger of two values is 60 % above the smaller), ``spare`` how many figures
    there were to spare, ``suspects`` the givens of which each, left out, brings the rest into agreement.
    """

    apart, spare, suspects = 0.0, 0, ()


def _powers(names):
    """Return the matrix of powers, a row a quantity."""
    return np.array([LINE_QUANTITIES[name].powers for name in names], dtype=float).reshape(-1, len(BASIS))


def _rank(names):
    """Return how many of the quantities are independent of each other."""
    return int(np.linalg.matrix_rank(_powers(names)))


def adds(name, names):
    """Return whether a quantity of a line says something that does not follow from others: all names, no values."""
    return _rank([*names, name]) > _rank(names)


def _logarithm(name, value):
    """Return the logarithm of the product of powers, without the factor before it."""
    return math.log(value) - math.log(LINE_QUANTITIES[name].factor)


@cache
def _relations():
    """Return every equation between as few quantities as can be, such as s = v t: the power of each, 1 or -1."""
    found = []
    for size in range(2, len(BASIS) + 2):
        for names in itertools.combinations(LINE_QUANTITIES, size):
            if _rank(names) < size and not any(set(relation) <= set(names) for relation in found):
                weights = np.linalg.svd(_powers(names).T)[2][-1]  # the one combination of the rows that gives zero
                found.append(dict(zip(names, np.sign(weights).tolist(), strict=True)))
    return tuple(found)


def _apart(numbers):
    """Return by how much two ways to one value differ at most, as a part of the smaller, and the relation."""
    differences = [
        (abs(sum(power * _logarithm(name, numbers[name]) for name, power in relation.items())), relation)
        for relation in _relations()
        if set(relation) <= set(numbers)
    ]
    largest, relation = max(differences, key=lambda pair: pair[0], default=(0.0, None))
    return math.expm1(min(largest, 700.0)), relation


def _fit(numbers):
    """Return every quantity that the numbers determine: counts held, readings fitted by least squares in logarithms."""
    held, read = ([name for name in numbers if (name in COUNTS) is counted] for counted in (True, False))
    targets = {name: _logarithm(name, value) for name, value in numbers.items()}
    start = np.linalg.lstsq(_powers(held), np.array([targets[name] for name in held]), rcond=None)[0]
    free = np.linalg.svd(_powers(held))[2][len(held) :].T  # the directions that leave the counts as they are
    rest = np.array([targets[name] for name in read]) - _powers(read) @ start
    basis = start + free @ np.linalg.lstsq(_powers(read) @ free, rest, rcond=None)[0]
    rows, given = _powers(LINE_QUANTITIES), _powers(numbers)
    missed = np.abs(rows @ np.linalg.pinv(given) @ given - rows).max(axis=1)  # none where the givens determine a row
    values = {}
    for (name, quantity), miss, logarithm in zip(LINE_QUANTITIES.items(), missed, rows @ basis, strict=True):
        if miss < NEXT_TO_NOTHING:
            if abs(logarithm) > 600:
                raise PlainError(f"solve_line: {name} comes out as no finite number. Check the size of the givens.")
            values[name] = quantity.factor * math.exp(logarithm)
    return values


def _joined(parts):
    """Return a list as written: "a, b and c"."""
    return " and ".join(", ".join(parts).rsplit(", ", 1))


def _two(first, second):
    """Return two quantities as text in the unit of the first, with so many digits that their difference can be seen."""
    second = second.to(first.units)
    texts = show(first), show(second)
    digits = len(texts[0].partition(" ")[0].partition(".")[2])
    enough = math.ceil(-math.log10(abs(first.magnitude - second.magnitude) / 2))
    if enough <= digits:
        return texts
    return tuple(f"{quantity.magnitude:,.{enough}f} {unit_word(first.units)}".strip() for quantity in (first, second))


def _percent(part):
    """Return a part of one as a person would write it: "21.5 %", or "4.00 times" where it is more than two to one."""
    return f"{part + 1:,.2f} times" if part > 1 else f"{100 * part:.3g} %"


def _choices_text(choices):
    """Return what to give, the smallest choices first."""
    return ", or ".join(_joined(choice) for choice in choices)


def _guess(name, names):
    """Return a question where a name is near another one."""
    near = difflib.get_close_matches(str(name), names, n=1)
    return f" Is {near[0]!r} meant?" if near else ""


def _may_be_given(names):
    """Return the list of what may be given, with an example each."""
    return "May be given: " + ", ".join(f"{name}={LINE_QUANTITIES[name].advice}" for name in names) + "."


@dataclass(frozen=True, repr=False)
class LineSolution:
    """A line, as far as it follows from what was given.

    Parameters
    ----------
    values : mapping of str to Quantity
        Every quantity that is known, by name, in the field's units (m/s, m, s, person, person/hour).
    givens : mapping of str to Quantity
        What was given, as it came.
    assumed : tuple of str
        ``("persons_per_carrier",)`` where it was not given and taken as 1 person; else empty.
    spare : int
        How many figures there are more than needed: each checks the others.
    apart : float
        By how much two ways to one value differ at most, as a part of the smaller; 0 with no figure to spare.
    names : tuple of str
        The quantities that this line has, in the order of the table.
    """

    values: MappingProxyType
    givens: MappingProxyType
    assumed: tuple
    spare: int
    apart: float
    names: tuple

    @property
    def given(self):
        """Names of what was given."""
        return tuple(self.givens)

    @property
    def follows(self):
        """Names of what follows from the givens."""
        return tuple(name for name in self.values if name not in {*self.givens, *self.assumed})

    @property
    def not_known(self):
        """Names of what cannot be known from these givens."""
        return tuple(name for name in self.names if name not in self.values)

    @property
    def note(self):
        """Whether figures to spare agree, and to what part."""
        if not self.spare:
            return "No figure to spare: nothing checks the givens."
        count = "One figure" if self.spare == 1 else f"{self.spare} figures"
        if self.apart < NEXT_TO_NOTHING:
            return f"{count} to spare: the givens agree exactly."
        part = f"{_percent(self.apart)}, 1 part in {1 / self.apart:,.0f}"
        return f"{count} to spare: the givens agree to {part}; readings are fitted, counts held as given."

    def of(self, name):
        """Return one quantity.

        Parameters
        ----------
        name : str
            Name of the quantity, such as "riders_on_line".

        Returns
        -------
        Quantity
            Its value, in the field's unit.

        Raises
        ------
        NotKnownError
            If it does not follow from the givens; the message says what one more reading, or two, would give it.
        PlainError
            If there is no such quantity.
        """
        choices = _choices_text(self.choices(name))
        if name in self.values:
            return self.values[name]
        came = _joined(self.given) + (" (and persons_per_carrier taken as 1 person)" if self.assumed else "")
        raise NotKnownError(f"of: {name} does not follow from {came}. To know it, give {choices}.")

    def choices(self, name):
        """Return what more would give a quantity: tuples of names, each as small as can be; empty if it is known.

        The quantity itself stands there only where nothing else gives it.
        """
        if name not in self.names:
            may = f"{_guess(name, self.names)} Write one of {', '.join(self.names)}"
            raise PlainError(f"of: {name!r} is no quantity of this line.{may}.")
        if name in self.values:
            return ()
        sets = {
            frozenset(relation) - set(self.values) - {name}
            for relation in _relations()
            if name in relation and set(relation) <= set(self.names)
        }
        least = [choice for choice in sets if not any(smaller < choice for smaller in sets)]
        choices = [tuple(other for other in self.names if other in choice) for choice in least or [{name}]]
        return tuple(sorted(choices, key=lambda choice: (len(choice), [self.names.index(other) for other in choice])))

    def table(self):
        """Return all quantities with value and origin, as a small accessible table."""
        return Table(
            f"The line, from {len(self.givens)} {'given' if len(self.givens) == 1 else 'givens'}. {self.note}",
            ("Quantity", "Symbol", "Value", "How it is known"),
            [(LINE_QUANTITIES[name].words, LINE_QUANTITIES[name].symbol, *self._row(name)) for name in self.names],
        )

    def _row(self, name):
        """Return value and origin of a quantity as text."""
        if name not in self.values:
            return "not known", f"give {_choices_text(self.choices(name)[:3])}"
        text = show(self.values[name])
        if name in self.assumed:
            return text, "not given, taken as 1 person"
        if name not in self.givens:
            return text, "follows"
        came = self.givens[name]
        if abs(self.values[name].m_as(came.units) / came.magnitude - 1) < NEXT_TO_NOTHING:
            return text, "given" if show(came) == text else f"given as {show(came)}"
        return text, "given as {}, fitted to {}".format(*_two(came, self.values[name]))

    def __repr__(self):
        return repr(self.table())

    def _repr_html_(self):
        return self.table()._repr_html_()


def _checked(name, value):
    """Return the plain number of a given in the field's unit, or say what is wrong with it."""
    quantity = LINE_QUANTITIES[name]
    if not isinstance(value, Quantity):
        bare = isinstance(value, (int, float)) and not isinstance(value, bool)
        write = f"Q({value}, {quantity.unit!r})" if bare else quantity.advice
        raise UnitError(f"solve_line: {name} needs a unit, but got the bare value {value!r}. Write {write}.")
    wanted, error = parsed_unit(quantity.unit), PlainError
    came = f"{value.magnitude} {unit_word(value.units)}".strip()
    if not is_like(value.units, wanted):
        wrong, error = f"{kind_in_words(wanted)}, but got {kind_in_words(value.units)}: {came}", UnitError
    elif np.ndim(value.magnitude):
        wrong = f"one value, but got {np.size(value.magnitude)} values"
    else:
        number = float(value.m_as(wanted))
        if 0 < number < math.inf:
            return number
        wrong = f"{'greater than zero' if number <= 0 else 'a finite number'}, but got {came}"
    raise error(f"solve_line: {name} must be {wrong}. Write for example {quantity.advice}.")


def _without(numbers, name):
    return {other: number for other, number in numbers.items() if other != name}


def _disagreement(givens, numbers, assumed, tolerance):
    """Return the error that says by how much the givens disagree, and which of them is wrong where that can be told."""
    apart, relation = _apart(numbers)
    spare = len(numbers) - _rank(numbers)
    suspects = tuple(name for name in relation if _apart(_without(numbers, name))[0] <= tolerance)
    culprit = suspects[0] if spare > 1 and len(suspects) == 1 else None

    def pair(name, others):
        """Return the value that came and the one that the others make, as text."""
        made = _fit({other: numbers[other] for other in others})[name]
        return _two(givens.get(name, ONE_PERSON), Q(made, LINE_QUANTITIES[name].unit))

    first = culprit or min(relation, key=lambda name: (name in assumed, name != "hourly_capacity"))
    others = _without(numbers if culprit else relation, first)
    came, made = pair(first, others)
    told = f"{first} is {came}, but {'the others' if culprit else _joined(others)} make it {made}. "
    told += "There is one figure to spare" if spare == 1 else f"There are {spare} figures to spare"
    if culprit:
        told += (
            f": without {first} the others agree, and leaving out any other single figure does not help. So {first} is "
            "the one that is wrong, if only one is. Measure it again, or leave it out."
        )
    elif suspects:
        each = [f"{name}: {', or '.join(pair(name, _without(numbers, name)))}" for name in suspects]
        why = "only the set is known to disagree" if spare == 1 else "leaving out any one of several brings agreement"
        told += (
            f", so {why}: nobody can say from these figures which one is wrong. Each, as given and as the others make "
            f"it: {'; '.join(each)}. Measure one again, or leave one out."
        )
    else:
        told += ", but no single one, left out, brings the rest into agreement: at least two are wrong. Measure again."
    if set(assumed) & set(relation):
        told += " persons_per_carrier was not given and was taken as 1 person: write it, or None to have it solved for."
    if {"hourly_capacity", "riders_on_line"} & set(relation):
        told += " A count and a figure that is intended are of two levels, and need not agree."
    head = f"solve_line: the givens disagree by {_percent(apart)}, and {_percent(tolerance)} is allowed"
    error = DisagreementError(f"{head}: {told}")
    error.apart, error.spare, error.suspects = apart, spare, suspects
    return error


def solve_line(*, tolerance=0.01, has_carriers=True, **givens):
    r"""Return a line from whatever is known of it: all that follows, and what does not.

    Parameters
    ----------
    tolerance : float
        By how much two ways to one value may differ, as a part of the smaller; 0.01 if left out.
    has_carriers : bool
        False for a tow whose riders take hold of the rope itself: carriers on the loop is then no question.
    **givens : Quantity
        Any of line_speed [m/s], spacing [m], interval [s], persons_per_carrier [person], carriers_on_loop [],
        sheave_distance [m], ridden_length [m], ride_time [s], riders_on_line [person] (on average) and
        hourly_capacity [person/hour]; one scalar each. ``persons_per_carrier`` is taken as 1 person if left out;
        None has it solved for like the others.

    Returns
    -------
    LineSolution
        Every quantity that follows, what was given, what cannot be known, and how well figures to spare agree.

    Raises
    ------
    UnitError
        If a given has no unit, or one of another kind.
    PlainError
        If nothing is given, a name is not known, or a value is not one finite number greater than zero.
    DisagreementError
        If givens disagree by more than the tolerance. With one figure to spare only the set disagrees; with two or more
        the error names the one whose removal brings the rest into agreement, where exactly one does.

    Notes
    -----
    .. math:: s = v t, \quad T = L / v, \quad N = n L / s, \quad C = 3600 n / t, \quad K = 2 D / s

    In logarithms these are linear. A quantity follows exactly when its row adds nothing to the rank of the givens.
    Where givens agree within the tolerance, readings are fitted by least squares in logarithms, each with the same
    doubt in percent; counts (persons per carrier, carriers on the loop) are held as given. The capacity that comes out
    is of the level of what went in: ``liftcalc.levels``.
    Source: the formulas of ``liftcalc.formulas``, with the sources named there.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> line = solve_line(line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"))
    >>> show(line.of("hourly_capacity"))
    '1,800 pph'
    >>> line.choices("riders_on_line")
    (('ridden_length',), ('ride_time',))
    >>> chair = solve_line(hourly_capacity=Q(1200, "pph"), interval=Q(6, "s"), persons_per_carrier=None)
    >>> show(chair.of("persons_per_carrier"))
    '2 persons'
    """
    if not isinstance(tolerance, (int, float)) or not NEXT_TO_NOTHING <= tolerance < 1:
        raise PlainError(f"solve_line: tolerance must be between 0 and 1, but got {tolerance}. Write 0.01 for 1 %.")
    if not isinstance(has_carriers, bool):
        raise PlainError(f"solve_line: has_carriers must be True or False, but got {has_carriers!r}.")
    names = tuple(name for name in LINE_QUANTITIES if has_carriers or name != "carriers_on_loop")
    for name in (name for name in givens if name not in names):
        why = "is no quantity of a line without carriers" if name in LINE_QUANTITIES else "is no quantity of a line"
        raise PlainError(f"solve_line: {name!r} {why}.{_guess(name, names)} {_may_be_given(names)}")
    assumed = () if "persons_per_carrier" in givens else ("persons_per_carrier",)
    if givens.get("persons_per_carrier", ONE_PERSON) is None:
        del givens["persons_per_carrier"]
    givens = {name: givens[name] for name in names if name in givens}
    if not givens:
        raise PlainError(f"solve_line: nothing is given. {_may_be_given(names)}")
    numbers = {name: _checked(name, value) for name, value in givens.items()}
    numbers |= dict.fromkeys(assumed, 1.0)
    apart, _ = _apart(numbers)
    if apart > tolerance:
        raise _disagreement(givens, numbers, assumed, tolerance)
    fitted = _fit(numbers)
    values = {name: Q(fitted[name], LINE_QUANTITIES[name].unit) for name in names if name in fitted}
    spare = len(numbers) - _rank(numbers)
    return LineSolution(MappingProxyType(values), MappingProxyType(givens), assumed, spare, apart, names)
