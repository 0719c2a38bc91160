"""A count minute by minute in words: its two rates with their doubt, held against a limit, and how long to count."""

from liftcalc.fieldwork.minute_counts import SPREAD_WITH_STOPS, minutes_to_count
from liftcalc.quantity_text import show
from liftcalc.tables import Lines, Table
from liftcalc.uncertainty import count_against_bound
from liftcalc.units import PlainError, Q

WITHIN_MINUTES = 60


def count_table(counts, governed, packing=None, ideal=None):
    """Return a table of the two rates of a count: by the clock, and of its clean minutes, each with its doubt.

    Parameters
    ----------
    counts : MinuteCounts
        As ``read_counts`` returns it, with ``after_stops`` where a stop empties the lift.
    governed : Capacity or None
        What the clean minutes are held against: a limit of the lift is one of the running lift. None where none is
        known.
    packing : Capacity or None
        Of level packing. Only more than this, and one rider for the ends, is impossible.
    ideal : Capacity or None
        What the intended spacing allows with every place taken: a rate above it by more than its doubt is named.

    Returns
    -------
    Table
        Rate, plus-minus at 95 of 100, and how the clean minutes stand to the limit.
    """
    in_it = "stops and gaps are in it: held against no limit" if counts.stopped else _of_lucky_minutes(counts)
    rows = [_row("by the clock", counts, counts.rows, in_it)]
    if not counts.clean:
        rows.append(("clean minutes", "none", "", "", "count on: a stop touches every row"))
    elif counts.waited == "no":
        in_it = "nobody waited: a count of who came, held against no limit"
        rows.append(_row("clean minutes", counts, counts.clean, in_it))
    elif governed is None:
        rows.append(_row("clean minutes", counts, counts.clean, "no limit is known that it could be held against"))
    else:
        rows.append(_row("clean minutes", counts, counts.clean, None, governed, packing, ideal))
    best = counts.best_two_minutes
    if best is not None:
        rate = show(Q(30.0 * best, "pph"))
        rows.append(("best two minutes times 30", rate, f"{best} in 2 min", "", "no rate: chance has chosen them"))
    return Table(f"The count {counts.name}", ("what", "people an hour", "counted", "plus or minus", "verdict"), rows)


def _of_lucky_minutes(counts):
    """Return what a count says of the day in which no stop was written down."""
    if counts.stops_told:
        return "no stop fell into it: of these minutes, and not of a day"
    return "no stop was written down: whether minutes are clean is not known"


def rows_against_bound(counts, rows, governed=None, packing=None):
    """Return the verdict on some rows of a count, with the doubt of riders who come in lumps where a stop is in them.

    Parameters
    ----------
    counts : MinuteCounts
    rows : tuple of CountedMinutes
        All of its rows, or the clean ones.
    governed, packing : Capacity or None
        As for ``count_table``.

    Returns
    -------
    CountVerdict
    """
    stops = any(row.stop_seconds for row in rows)
    spread = SPREAD_WITH_STOPS if stops else counts.spread_of_gaps
    return count_against_bound(*counts.total(rows), governed, packing=packing, spread_of_gaps=spread)


def _row(what, counts, rows, verdict, governed=None, packing=None, ideal=None):
    persons, time = counts.total(rows)
    found = rows_against_bound(counts, rows, governed, packing)
    if governed:
        verdict = f"{found.verdict} {governed}"
        widest = max((each.m_as("pph") for each in found.plus_minus), default=0.0)
        if ideal is not None and found.counted.value.m_as("pph") - widest > ideal.value.m_as("pph"):
            verdict += f", and above {ideal}: look at speed, spacing and count"
    return what, show(found.counted.value), f"{show(persons)} in {show(time, 'minute')}", found.doubt, verdict


def how_long_to_count(counts):
    """Return how long such a lift must be counted for plus or minus 5 %, running and with its stops.

    Parameters
    ----------
    counts : MinuteCounts or None
        A count of it.

    Returns
    -------
    Lines
        Two times: of clean minutes, and by the clock; and what the count says of who waited.

    Raises
    ------
    PlainError
        If there is no count, or too few clean minutes in it.
    """
    if counts is None:
        raise PlainError("No count came. How long to count is told from ten clean minutes or more.")
    spread = counts.spread_of_gaps
    if spread is None:
        raise PlainError(
            f"{counts.name}: fewer than ten clean single minutes, or no spread between them. Count on, a row a minute."
        )
    running = minutes_to_count(counts.rate(clean=True).value, spread)
    stopping = minutes_to_count(counts.rate().value, SPREAD_WITH_STOPS)
    waited = {
        "yes": "People waited in every row: the count is of the lift.",
        "no": "Nobody waited in any row: the count is of who came, and not of the lift.",
        None: "Whether people waited is not said. Without a line the count is of who came, and not of the lift.",
    }.get(counts.waited, "People did not wait in every row: part of the count is of who came, and not of the lift.")
    return Lines(
        f"In clean minutes gaps spread by {show(spread)} of their mean: plus or minus 5 % takes {_long(running)} of "
        "them.",
        f"By the clock, with stops in it, it takes {_long(stopping)} (assumed: gaps spread by "
        f"{show(SPREAD_WITH_STOPS)} of their mean then, as in simulated days).",
        waited,
    )


def _long(time):
    """Return a time as one would say it: in hours from an hour on."""
    return show(time, "minute" if time.m_as("minute") < WITHIN_MINUTES else "hour")
