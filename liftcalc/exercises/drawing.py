"""A learner's own numbers: drawn from SHA-256 of the name and the exercise, alike on any machine and in any version.

The streams of a generator of random numbers may differ between versions.

A draw is thrown away until the mistakes can be told apart by their answers, so that no reply charges anybody with a
mistake not made: no wrong road may lead near the right answer, and no two roads to one place. Roads that are only
judged have no say in it.
"""

import hashlib
import itertools
import unicodedata

from liftcalc.exercises.exercise import NumberExercise
from liftcalc.units import PlainError

CLOSE = 3  # tolerances up to which an answer counts as close
MOST_DRAWS = 2000


def learner_key(name):
    """Return the form of a name or number under which its numbers are drawn.

    Parameters
    ----------
    name : str or int
        Any name or number; spaces around it and capital letters make no difference.

    Returns
    -------
    str
        Trimmed, case-folded, in Unicode's composed form; empty for the printed set.

    Raises
    ------
    PlainError
        If it is neither text nor a whole number, or longer than 80 characters.

    Examples
    --------
    >>> learner_key("  Maja K. ")
    'maja k.'
    """
    if isinstance(name, bool) or not isinstance(name, (str, int)):
        raise PlainError(f"a learner is a name or a number, but got {name!r}. Write for example 'Maja K.' or 17.")
    text = str(name).strip() if isinstance(name, str) or abs(name) < 10**30 else "1" * 99
    if len(text) > 80 or any(unicodedata.category(mark).startswith("C") for mark in text):
        raise PlainError("a learner's name has at most 80 characters on one line. Write a shorter name or a number.")
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", text).casefold())


def _whole_number(*parts):
    """Return a whole number that depends on all parts, and looks like chance."""
    digest = hashlib.sha256("\n".join(map(str, parts)).encode("utf-8")).digest()
    return int.from_bytes(digest[:8], "big")


def numbers_for(exercise, key):
    """Return the numbers of one exercise for one learner.

    Parameters
    ----------
    exercise : Exercise
        From the bank.
    key : str
        From ``learner_key``; empty for the printed set.

    Returns
    -------
    Numbers
        Quantities by name.

    Raises
    ------
    RuntimeError
        If no draw tells the mistakes apart: the grids of the exercise are too narrow.
    """
    if not key:
        return exercise.numbers(None)
    for attempt in range(MOST_DRAWS):
        numbers = exercise.numbers(lambda name, attempt=attempt: _whole_number(key, exercise.id, attempt, name))
        if tells_apart(exercise, numbers):
            return numbers
    raise RuntimeError(f"exercise {exercise.id}: no draw tells the mistakes apart; widen its grids")


def order_of_options(exercise, key):
    """Return the options of a choice in the order in which one learner sees them; the printed set has one, too."""
    return tuple(
        sorted(exercise.options, key=lambda option: _whole_number(key, exercise.id, exercise.options.index(option)))
    )


def tells_apart(exercise, numbers):
    """Return whether each mistake leads to an answer of its own, and none near the right one.

    Parameters
    ----------
    exercise : Exercise
        From the bank; a choice always tells apart.
    numbers : Numbers
        One draw.

    Returns
    -------
    bool
    """
    if not isinstance(exercise, NumberExercise):
        return True
    right = exercise.right(numbers).m_as(exercise.unit)
    roads = [road for road in exercise.roads if road.drawn]
    off = [(road.answer(numbers).m_as(exercise.unit) - right) / exercise.within for road in roads]
    for road, distance in zip(roads, map(abs, off), strict=True):
        if distance < (1.5 if road.close else CLOSE + 1.1):
            return False
        if road.close and abs(distance - 5) < 1.2:  # five tolerances off stays off
            return False
    return all(abs(one - other) > 2.1 for one, other in itertools.combinations(off, 2))
