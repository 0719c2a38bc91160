"""Rows of a day that are of the crowd: a line that is too long, lunch as an empty post or a shut lift, closing."""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.simulation.shifts import CLOSINGS, Shift
from liftcalc.vocabulary import Taken, Word

_DAY = 24 * SECONDS_PER_HOUR


def row_word(words, unit, meaning, least, most):
    """Return the entry of one row of a day; it may be zero."""
    return Word(words, unit, meaning, zero=True, taken=Taken(least, most, ("visitor",)))


def _time(words, meaning):
    return row_word(words, "s", f"{meaning}, since opening", 0, _DAY)


OF_A_CROWD = {
    "most_in_line": row_word("most in line", "person", "a line at which people go away again", 0, 10_000),
    "closing": Word("closing", None, "what becomes of whoever stands in line at closing", among=CLOSINGS),
    "shut_from": _time("shut from", "from when nobody starts"),
    "shut_until": _time("shut until", "until when nobody starts"),
    "post_empty_from": _time("post empty from", "from when the loading point lacks an attendant, and still runs"),
    "post_empty_until": _time("post empty until", "until when"),
    "post_empty_slower": row_word("post empty slower", "", "factor on the time of a start meanwhile", 0.1, 10),
    "other_staff_from": _time("other staff from", "from when others serve the loading point, until closing"),
    "other_staff_slower": row_word("other staff slower", "", "factor on the time of a start from then on", 0.1, 10),
    "other_staff_misses": row_word("other staff misses", "", "factor on the share of misses from then on", 0, 10),
}
NEEDS_OF_A_CROWD = {  # a quantity, where it is there: what it cannot do without
    "shut_from": ("shut_until",),
    "shut_until": ("shut_from",),
    "post_empty_from": ("post_empty_until", "post_empty_slower"),
    "post_empty_until": ("post_empty_from", "post_empty_slower"),
    "post_empty_slower": ("post_empty_from", "post_empty_until"),
    "other_staff_from": ("other_staff_slower",),
    "other_staff_slower": ("other_staff_from",),
    "other_staff_misses": ("other_staff_from", "other_staff_slower"),
}


def crowd_of(rest):
    """Return what the rows of a day say of its crowd, by the arguments of the simulated days with arrivals.

    Parameters
    ----------
    rest : dict
        Rows of a day by name, as ``read_day`` returns them.

    Returns
    -------
    dict
        shifts, closing and most_in_line, as for ``simulate_crowded_days`` and ``simulate_carrier_days``.
    """
    shifts = []
    if "shut_from" in rest:
        shifts.append(Shift(rest["shut_from"], rest["shut_until"], shut=True))
    if "post_empty_from" in rest:
        shifts.append(Shift(rest["post_empty_from"], rest["post_empty_until"], slower=rest["post_empty_slower"]))
    if "other_staff_from" in rest:
        misses = rest.get("other_staff_misses", 1.0)
        shifts.append(Shift(rest["other_staff_from"], slower=rest["other_staff_slower"], misses=misses))
    return {
        "shifts": tuple(shifts),
        "closing": rest.get("closing", CLOSINGS[0]),
        "most_in_line": rest.get("most_in_line"),
    }


def without_crowd(rest):
    """Return the rows of a day that are no rows of its crowd."""
    return {name: value for name, value in rest.items() if name not in OF_A_CROWD}
