"""The count on a brief, held against the limit that governs, and the warning where it is above it beyond its doubt."""

from dataclasses import dataclass

from pint import Quantity

from liftcalc.fieldwork.minute_counts import SPREAD_WITH_STOPS
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.levels import Capacity
from liftcalc.lifts.kinds import ride_time_of
from liftcalc.lifts.sheet_words import CLOSEST
from liftcalc.quantity_text import show
from liftcalc.uncertainty import count_against_bound
from liftcalc.units import Q

BEYOND = ("above", "impossible")  # verdicts that ask for a warning


@dataclass(frozen=True)
class Counted:
    """A count as it stands on the page.

    Parameters
    ----------
    rate : Capacity
        Persons an hour, at the level "counted": of the clean minutes where they are known, else of the whole count.
    of : str
        What was counted, such as "863 persons in 52 clean minutes".
    plus_minus : tuple of Quantity
        Half of the interval of 95 %, or both ends of it.
    doubt : str
        The same as text; empty where too few were counted.
    verdict : str
        As of a ``CountVerdict``.
    by_the_clock : Capacity or None
        The rate with stops and refills in it, where the other is of clean minutes.
    doubt_by_the_clock : str
        Its plus-minus.
    waited : str or None
        yes, no, some; None where it is not said.
    said : str
        How the count stands to the limit, in words.
    warning : str
        What stands across the page; empty where nothing does.
    """

    rate: Capacity
    of: str
    plus_minus: tuple[Quantity, ...]
    doubt: str
    verdict: str
    by_the_clock: Capacity | None
    doubt_by_the_clock: str
    waited: str | None
    said: str
    warning: str


def counted_against(sheet, count, bound, ends, known, kind):
    """Return the count of a lift held against what governs; None where nothing was counted.

    Parameters
    ----------
    sheet : FieldSheet
        Its own count is taken where there is no other.
    count : MinuteCounts or None
        As ``read_counts`` returns it.
    bound : Capacity or None
        What governs.
    ends : Quantity or None
        Its two ends, in doubt.
    known : dict
        As ``known_of`` returns it.
    kind : Kind
        Kind of the lift.
    """
    if count is None and sheet.counted is None:
        return None
    clock = None
    if count is None:
        persons, time = sheet.counted
        spread, what, waited = None, "", sheet.facts.get("people_waited")
    else:
        if kind.held_by_hand and {"ridden_length", "line_speed"} <= {*known}:  # a stop empties it: the refill counts
            count = count.after_stops(ride_time_of(kind.name, known))
        clean = bool(count.clean) and count.stops_told
        persons, time = count.total(count.clean if clean else count.rows)
        spread = count.spread_of_gaps if clean or not count.stopped else SPREAD_WITH_STOPS
        what, waited = "clean " if clean else "", count.waited
        if clean and count.stopped:
            clock = _verdict(*count.total(count.rows), None, SPREAD_WITH_STOPS, known, kind)
    found = _verdict(persons, time, bound, spread, known, kind)
    minutes = time.m_as("minute")
    one = "minute" if minutes == 1 else "minutes"
    return Counted(
        rate=found.counted, of=f"{show(persons)} in {minutes:,.3g} {what}{one}",
        plus_minus=found.plus_minus, doubt=found.doubt, verdict=found.verdict,
        by_the_clock=clock.counted if clock else None, doubt_by_the_clock=clock.doubt if clock else "",
        waited=waited, said=_said(found, waited, _below(found, bound, ends, kind, what)),
        warning=_warning(found, bound, ends),
    )  # fmt: skip


def _verdict(persons, time, bound, spread, known, kind):
    each = known.get("persons_per_carrier", Q(1, "person"))
    packing = None
    if bound is not None and {"line_speed", "spacing"} <= {*known}:
        closest = known["spacing"] if kind.has_carriers else min(CLOSEST, known["spacing"])
        packing = Capacity(hourly_capacity(known["line_speed"], closest, each), "packing")
    return count_against_bound(
        persons, time, bound, packing=packing, spread_of_gaps=spread, persons_per_carrier=each
    )  # fmt: skip


def _below(found, bound, ends, kind, what):
    """Return the sentence on a count below the limit beyond its doubt; empty for any other."""
    if found.verdict != "below":
        return ""
    if ends is not None and ends[0] <= found.counted.value + found.plus_minus[-1]:
        return f"Below {bound}, but that may be as low as {show(ends[0])}: both may say the same."
    misses = "Missed grabs" if kind.held_by_hand else "Misloads" if kind.has_carriers else "Misses"
    rest = "falls and slow-downs" if what else "falls, slow-downs and stops"
    return (
        f"Below {bound} by more than its doubt. {misses}, empty places, {rest} can do that, and so can too few who "
        "waited: the count does not tell which."
    )


def _said(found, waited, below):
    """Return how a count stands to the limit, as far as it tells of the lift."""
    last = below or (found.sentences[-1] if len(found.sentences) > 1 else "")
    if found.verdict in (*BEYOND, "perhaps above", "too few"):
        return last
    if waited == "no":
        return "Nobody waited: this is how many came, and not what the lift can carry."
    if waited == "some":
        return f"{last} People waited part of the time: in the rest of it this is how many came.".strip()
    if waited is None:
        return f"{last} Without people waiting a count is only how many came.".strip()
    return last


def _warning(found, bound, ends):
    """Return the warning across the page; empty where the count is not above the limit beyond its doubt."""
    if bound is None or found.verdict not in BEYOND:
        return ""
    if found.verdict == "impossible":
        return f"{found.sentences[-1]} Take neither figure for anything until that is found."
    most = found.counted.value - found.plus_minus[-1]
    if ends is not None and ends[1] >= most:
        why = f"The limit is in doubt up to {show(ends[1])}, which may be why"
    else:
        why = "The doubt of the limit does not explain it: a reading behind it is wrong, or the count is"
    doubt = f" ± {found.doubt.replace(' pph', '')}" if found.doubt else ""
    return (
        f"Counted {found.counted.value.m_as('pph'):,.0f}{doubt} pph: more than the limit of {show(bound.value)} by "
        f"more than the doubt of the count. {why}. Read both again."
    )
