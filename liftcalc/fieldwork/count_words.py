"""A count minute by minute in words: its two rates with their doubt, held against a limit, and how long to count."""

from liftcalc.fieldwork.minute_counts import SPREAD_WITH_STOPS, minutes_to_count
from liftcalc.quantity_text import show
from liftcalc.tables import Lines, Table
from liftcalc.uncertainty import count_against_bound
from liftcalc.units import PlainError, Q

WITHIN_MINUTES = 60


def count_table(counts, governed, packing=None):
    """Return a table of the two rates of a count: by the clock, and of its clean minutes, each with its doubt.

    Parameters
    ----------
    counts : MinuteCounts
        As ``read_counts`` returns it, with ``after_stops`` where a stop empties the lift.
    governed : Capacity
        What the clean minutes are held against: a limit of the lift is one of the running lift.
    packing : Capacity or None
        Of level packing. Only more than this, and one rider for the ends, is impossible.

    Returns
    -------
    Table
        Rate, plus-minus at 95 of 100, and how the clean minutes stand to the limit.
    """
    rows = [_row("by the clock", counts, counts.rows, None, None)]
    if counts.clean:
        rows.append(_row("clean minutes", counts, counts.clean, governed, packing))
    else:
        rows.append(("clean minutes", "none", "", "", "count on: a stop touches every row"))
    best = counts.best_two_minutes
    if best is not None:
        rate = show(Q(30.0 * best, "pph"))
        rows.append(("best two minutes times 30", rate, f"{best} in 2 min", "", "no rate: chance has chosen them"))
    return Table(f"The count {counts.name}", ("what", "people an hour", "counted", "plus or minus", "verdict"), rows)


def _row(what, counts, rows, governed, packing):
    persons, time = counts.total(rows)
    stops = any(row.stop_seconds for row in rows)
    spread = SPREAD_WITH_STOPS if stops else counts.spread_of_gaps
    found = count_against_bound(persons, time, governed, packing=packing, spread_of_gaps=spread)
    verdict = f"{found.verdict} {governed}" if governed else "stops and gaps are in it: held against no limit"
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
