"""The limits of a lift from its sheet, each with its doubt; and what is assumed, taken as exact, or was not read.

Readings are drawn many times within their doubt, and every draw goes through the same formulas as the readings
themselves. Planning figures, no design.
"""

from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.governing import Governing, governing
from liftcalc.lifts.kinds import NOT_READ
from liftcalc.lifts.limit_records import LeftOut
from liftcalc.lifts.limits_of_line import capacities_at, limits_at, only_those, where_possible
from liftcalc.lifts.line_quantities import LINE_QUANTITIES
from liftcalc.lifts.shares import shares_in
from liftcalc.lifts.sheet_line import (
    OF_THE_START,
    Compared,
    check_rise,
    compared,
    known_of,
    level_of,
    made_from,
    move_the_line,
    moved,
)
from liftcalc.quantity_text import show
from liftcalc.tables import Lines, Table
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import VOCABULARY, words_of

SEED, DRAWS = 2026, 4_000
STEP = 1e-4  # by which part a reading is moved, to see what the line makes of it
NO_POWER = 1e-9


@dataclass(frozen=True, repr=False)
class SheetLimits:
    """All limits of one line, from its sheet.

    Parameters
    ----------
    line : str
        Name of the line.
    title : str
        The same, with the name of the lift where that is another.
    records : list of Limit and LeftOut
        One for each limit that lifts of its kind have.
    governs : Governing or None
        Which of them governs; None where none can be computed.
    ranges : dict of str to Quantity [person/hour]
        By the name of a limit, the two ends between which 95 of 100 draws lie; a limit that no doubt reaches is not
        there.
    shares : dict of str to float
        In what share of the draws each limit governs.
    assumed : tuple of str
        Words for the readings of which the sheet says that they are assumed, and what was taken as 1.
    exact : tuple of str
        Words for readings without plus-minus or repeats: they are drawn as exact.
    missing : dict of str to tuple of str
        By the name of a limit that is left out, words for what was not read.
    compared : list of Compared
        Readings that do not make the line, beside what it makes of them.
    level : str
        Level of the spacing, and so of the limit that it sets.
    far_apart : dict of str to tuple of Quantity
        Repeats that lie further apart than readings of one thing do.
    ends : Quantity [person/hour] or None
        The two ends between which the smallest limit lies in 95 of 100 draws, whichever it is; None where no doubt
        reaches it.
    """

    line: str
    title: str
    records: list
    governs: Governing | None
    ranges: dict
    shares: dict
    assumed: tuple
    exact: tuple
    missing: dict
    compared: list[Compared]
    level: str
    far_apart: dict
    ends: Quantity | None = None

    def table(self):
        """Return the limits as a table: what each allows, how far it can be trusted, and what it lacks."""
        rows = []
        for record in self.records:
            if isinstance(record, LeftOut):
                rows.append((record.name, "left out", "", "", f"not read: {', '.join(record.missing)}"))
                continue
            ends = self.ranges.get(record.name)
            between = "no doubt read" if ends is None else f"{show(ends[0])} to {show(ends[1])}"
            share = f"{100 * self.shares[record.name]:.0f} %" if record.name in self.shares else ""
            rows.append((record.name, show(record.capacity), between, share, record.sentence))
        columns = ("limit", "at most", "95 of 100 draws", "governs in", "why")
        return Table(f"Limits of {self.title}, from its sheet", columns, rows)

    def __repr__(self):
        return "\n".join([repr(self.table()), *self.sentences])

    def _repr_html_(self):
        return self.table()._repr_html_() + Lines(*self.sentences)._repr_html_()

    @property
    def sentences(self):
        """What the limits rest on, a sentence each."""
        said = [str(self.governs)] if self.governs else ["No limit can be computed from this sheet."]
        for words, names in (("Assumed", self.assumed), ("Taken as exact, for want of a plus-minus", self.exact)):
            said += [f"{words}: {', '.join(names)}."] if names else []
        said += [f"{limit}: {', '.join(names)} not read." for limit, names in self.missing.items()]
        said += [f"{words_of(name)}: the repeats lie far apart, {show(low)} and {show(high)}." for name, (low, high) in
                 self.far_apart.items()]  # fmt: skip
        return [*said, *(f"{each}." for each in self.compared)]


def _draw(estimate, generator, draws):
    """Return draws of one reading in doubt."""
    value, doubt = estimate.value.magnitude, estimate.standard_uncertainty.magnitude
    if estimate.shape == "rectangular":
        away = doubt * np.sqrt(3)
        return generator.uniform(value - away, value + away, draws)
    return generator.normal(value, doubt, draws)


def in_doubt(sheet, known):
    """Return every reading that counts and has a doubt, and the names of those that have none.

    Parameters
    ----------
    sheet : FieldSheet
    known : dict
        As ``known_of`` returns it.

    Returns
    -------
    dict of str to Estimate, list of str
    """
    estimates, exact, makes = {}, [], made_from(sheet)
    beside = [name for name in known if name in VOCABULARY and VOCABULARY[name].taken and sheet.has(name)]
    beside = [name for name in beside if name not in LINE_QUANTITIES]  # what does not make the line is only compared
    for name in sorted({*makes, *beside}):  # one order, and so one draw, however rows were written
        estimate = sheet.estimate(name)
        if estimate is not None:
            estimates[name] = estimate
        elif not VOCABULARY[name].whole and "rule" not in VOCABULARY[name].taken.who:
            exact.append(name)
    return estimates, exact


def powers_of_line(sheet, known):
    """Return with what power each reading that moves the line moves each value of it, by the two names.

    The line is near to a product of powers of the readings that make it: the power of each is found by moving it.
    """
    found = {}
    for name in move_the_line(sheet):
        after = moved(sheet, name, 1 + STEP)
        parts = {
            other: value / known[other] for other, value in after.items() if other in known
        }  # persons may not be whole
        powers = {other: np.log(part.m_as("")) / np.log1p(STEP) for other, part in parts.items()}
        found[name] = {other: power for other, power in powers.items() if abs(power) > NO_POWER}
    return found


def with_readings(sheet, known, numbers, powers):
    """Return the known values with other numbers in place of some readings.

    Parameters
    ----------
    sheet, known
        As for ``in_doubt``.
    numbers : dict of str to float or array
        By the name of a reading, in the unit of its mean.
    powers : dict
        As ``powers_of_line`` returns them.
    """
    values = dict(known)
    for name, number in numbers.items():
        if name in known and (name not in powers or name in OF_THE_START):  # what makes the line moves it below
            values[name] = Q(number, known[name].units)
    for name, moves in powers.items():
        if name in numbers:
            above = np.where(numbers[name] > 0, numbers[name], np.nan)  # what is not above zero fits nothing
            for other, power in moves.items():
                values[other] = values[other] * (above / sheet.mean(name).magnitude) ** power
    return values


def _those_that_fit(kind, values, draws):
    """Return the values with those draws alone that fit the formulas; None where no draw does."""
    fits = np.full(draws, True)
    for value in values.values():
        if isinstance(value, Quantity) and np.ndim(value.magnitude):
            fits = fits & (value.magnitude > 0)
    if "vertical_rise" in values and "ridden_length" in values:
        fits = fits & (values["ridden_length"] > values["vertical_rise"])
    if not fits.any():
        return None
    values = only_those(values, fits)
    fits = np.broadcast_to(where_possible(kind, values), np.count_nonzero(fits))
    return only_those(values, fits) if fits.any() else None


def sheet_limits(sheet, *, seed=SEED, draws=DRAWS):
    """Return every limit of a line from its sheet, with the doubt that plus-minus and repeats give it.

    Parameters
    ----------
    sheet : FieldSheet
        As ``read_sheet`` returns it. Whatever it lacks, its limits are left out by name.
    seed : int
        Start of the random numbers.
    draws : int
        How many times the readings are drawn.

    Returns
    -------
    SheetLimits

    Raises
    ------
    FieldFileError
        If the readings fit no formula, such as a rise above the ridden length.
    """
    known, kind = known_of(sheet), sheet.kind or NOT_READ
    try:
        check_rise(known)
        records = limits_at(kind, known)
    except PlainError as error:
        raise FieldFileError(f"{sheet.name}: {error}") from None
    missing = {record.name: record.missing for record in records if isinstance(record, LeftOut)}
    estimates, exact = in_doubt(sheet, known)
    generator = np.random.default_rng(seed)
    drawn = {name: _draw(estimate, generator, draws) for name, estimate in estimates.items()}
    inside = _those_that_fit(kind, with_readings(sheet, known, drawn, powers_of_line(sheet, known)), draws)
    allowed = {} if inside is None else capacities_at(kind, inside)
    spread = {name: capacity for name, capacity in allowed.items() if np.ndim(capacity.magnitude)}
    ranges = {name: np.percentile(capacity, [2.5, 97.5]).to("pph") for name, capacity in spread.items()}
    return SheetLimits(
        line=sheet.line,
        title=sheet.title,
        records=records,
        governs=governing(records) if len(missing) < len(records) else None,
        ranges=ranges,
        shares=shares_in(kind, inside) if spread else {},
        assumed=(*map(words_of, sheet.assumed), *_taken_as_one(sheet, known)),
        exact=tuple(map(words_of, exact)),
        missing=missing,
        compared=compared(sheet),
        level=level_of(sheet),
        far_apart=sheet.far_apart(),
        ends=_ends(list(allowed.values())) if spread else None,
    )


def _ends(capacities):
    """Return the two ends between which the smallest of some capacities lies in 95 of 100 draws; None without doubt."""
    numbers = [np.asarray(capacity.m_as("pph")) for capacity in capacities]
    smallest = np.min(np.broadcast_arrays(*numbers), axis=0)
    return Q(np.percentile(smallest, [2.5, 97.5]), "pph") if np.ptp(smallest) > 0 else None


def _taken_as_one(sheet, known):
    """Return words for what nobody read, and is taken as 1."""
    asked = {"loading_places": "loading_time", "unloading_places": "clearing_time", "persons_per_carrier": "spacing"}
    unread = [name for name, beside in asked.items() if beside in known and not sheet.has(name)]
    return [f"{words_of(name)} as 1" for name in unread if name != "persons_per_carrier" or name in known]
