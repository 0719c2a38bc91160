"""A count held against a bound, with the doubt of the count: what is impossible, what is chance, what is less."""

from dataclasses import dataclass

from liftcalc.formulas.capacity import count_doubt, hourly_flow_from_count
from liftcalc.levels import Capacity
from liftcalc.quantity_text import show
from liftcalc.uncertainty.checks import scalar
from liftcalc.uncertainty.coverage import coverage_factor
from liftcalc.units import PlainError, Q

EVEN, WITHOUT_ORDER = 0.5, 1.0  # spread of gaps, a band for who has not measured it; no stop in the count


@dataclass(frozen=True)
class CountVerdict:
    """What a count says of a bound.

    Parameters
    ----------
    counted : Capacity
        Persons an hour, as counted.
    plus_minus : tuple of Quantity
        Half of the interval of 95 %, for even riders and for riders without any order; one where the spread is known.
    verdict : str
        "impossible", "above", "perhaps above", "within", "perhaps below", "below", "too few" or "no bound".
    sentences : tuple of str
        The count with its doubt, and the verdict, in plain words.
    """

    counted: Capacity
    plus_minus: tuple
    verdict: str
    sentences: tuple

    def __str__(self):
        return " ".join(self.sentences)

    @property
    def doubt(self):
        """The plus-minus as text, both ends of it where there are two; empty where nothing follows."""
        return " to ".join(show(each, "pph") for each in dict.fromkeys(self.plus_minus))


def count_against_bound(
    persons_counted, counting_time, bound=None, *, packing=None, spread_of_gaps=None, persons_per_carrier=None
):
    """Hold a count against an ideal or governed capacity, with the doubt that a count has.

    Parameters
    ----------
    persons_counted : Quantity [person]
        Riders who passed.
    counting_time : Quantity [s]
        How long they were counted.
    bound : Capacity or None
        Of level ideal or governed; None says the doubt of the count alone.
    packing : Capacity or None
        Of level packing. Only more than this, and one carrier for the ends, is impossible.
    spread_of_gaps : Quantity [] or None
        Standard deviation of the times between riders over their mean, from ten clean minutes or more: the root of
        variance over mean of the counts of single minutes. None takes a band from 0.5 to 1.
    persons_per_carrier : Quantity [person] or None
        Riders side by side, or on one carrier; one person if left out.

    Returns
    -------
    CountVerdict
        The verdict and the words for it.

    Raises
    ------
    UnitError
        If a number has no unit, or one of another kind.
    PlainError
        If a capacity is of another level, or a number is out of its range.

    Notes
    -----
    A bound holds the mean: a short count reads above it by chance. Coverage factor 1.96. Source: ``count_doubt``.

    Examples
    --------
    >>> from liftcalc import Capacity, Q
    >>> found = count_against_bound(Q(44, "person"), Q(2, "minute"), Capacity(Q(1200, "pph"), "governed"))
    >>> print(found.verdict)
    within
    """
    persons = scalar("count_against_bound", "persons_counted", persons_counted, "person")
    counted = Capacity(hourly_flow_from_count(persons, counting_time), "counted")
    _check_level("bound", bound, ("ideal", "governed"))
    _check_level("packing", packing, ("packing",))
    said = f"{show(persons)} in {_time(counting_time)}"
    if persons.magnitude == 0:
        return CountVerdict(counted, (), "too few", (f"{said}: nobody passed, and nothing follows. Count longer.",))
    spreads = [Q(EVEN, ""), Q(WITHOUT_ORDER, "")] if spread_of_gaps is None else [spread_of_gaps]
    shares = [coverage_factor(0.95) * count_doubt(persons, spread).m_as("") for spread in spreads]
    plus_minus = tuple(share * counted.value for share in shares)
    at_ends = Q(1, "person") if persons_per_carrier is None else persons_per_carrier
    first = f"{said}: {_doubt_in_words(counted, shares, spread_of_gaps)}"
    too_many = _more_than_fits(persons, counting_time, packing, at_ends)
    if too_many:
        return CountVerdict(counted, plus_minus, "impossible", (first, too_many))
    if shares[-1] >= 1:
        return CountVerdict(counted, plus_minus, "too few", (first, "So few tell next to nothing. Count longer."))
    if bound is None:
        return CountVerdict(counted, plus_minus, "no bound", (first,))
    verdict, sentence = _beside(bound, counted, plus_minus, counting_time)
    return CountVerdict(counted, plus_minus, verdict, (first, sentence))


def _check_level(name, capacity, levels):
    """Refuse what is no capacity of one of the levels; None may stand for none."""
    if capacity is not None and not (isinstance(capacity, Capacity) and capacity.level in levels):
        raise PlainError(
            f"count_against_bound: {name} must be a Capacity of level {' or '.join(levels)}, but got {capacity!r}. "
            f"Write Capacity(Q(1800, 'pph'), {levels[0]!r})."
        )


def _time(time):
    """Return a counting time as it is said: minutes from a minute on."""
    return show(time, "minute" if time.m_as("s") >= 60 else "s")


def _doubt_in_words(counted, shares, spread_of_gaps):
    """Return the count an hour with its plus-minus, and what the plus-minus rests on."""
    percent = [f"{100 * share:.0f} %" for share in shares]
    good_to = f"{counted}. For 95 counts in 100 that is good to plus or minus"
    if spread_of_gaps is not None:
        return f"{good_to} {percent[0]} with gaps that spread by {show(spread_of_gaps)} of their mean."
    return (
        f"{good_to} {percent[1]} where riders come without any order, {percent[0]} where their gaps spread half as "
        "much. A stop in the count makes it more."
    )


def _more_than_fits(persons, counting_time, packing, at_ends):
    """Return the sentence on a count that cannot be; None for one that can."""
    if packing is None:
        return None
    most = ((packing.value * counting_time).to("person") + at_ends).magnitude * (1 + 1e-9)
    if persons.magnitude <= most:
        return None
    ends = "one" if at_ends == Q(1, "person") else "one carrier"
    return (
        f"More than can fit. At {packing} at most {show(Q(int(most), 'person'))} pass in {_time(counting_time)}, "
        f"{ends} for the ends included. Look for a slip in the count, the clock or the line speed."
    )


def _beside(bound, counted, plus_minus, counting_time):
    """Return how a count stands to its bound as a word, and the sentence."""
    side = "above" if counted.value > bound.value else "below"
    away = abs(counted.value - bound.value)
    if away > plus_minus[-1]:
        return side, f"The count is {side} {bound} by more than its doubt. {_BEYOND[side]}"
    if away > plus_minus[0]:
        return f"perhaps {side}", (
            f"The count is {side} {bound}: beyond its doubt if gaps spread by half, within it if riders came without "
            "any order. Count longer."
        )
    if side == "above":
        return "within", (
            f"The count is above {bound}, and within the doubt of the count. The bound holds the mean of a long time, "
            f"not {_time(counting_time)}: short counts read more by chance. Count longer."
        )
    return "within", f"The count cannot be told from {bound}: the difference is within its doubt."


_BEYOND = {
    "above": "That is not impossible, but the bound should hold the mean: a reading behind it may be off, or riders "
    "came closer than it says. Read both again.",
    "below": "Missed grabs, gaps, falls and stops can do that, and so can too few who waited: the count does not tell "
    "which.",
}
