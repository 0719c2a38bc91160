"""When people come to a lift, drawn from a table of arrivals; and how long a line each of them puts up with."""

import numpy as np

from liftcalc.simulation.running_time import check_number, lognormal
from liftcalc.units import PlainError


def arrival_times(begins, lasts, persons, generator):
    """Return when each person comes, drawn from a table of arrivals.

    Parameters
    ----------
    begins, lasts : array
        When each row of the table begins, and how long it lasts [s]; in a row of zero, a batch, all come at once.
    persons : array
        How many come in each row: whole numbers. They come at random within it.
    generator : Generator
        Draws the times.

    Returns
    -------
    array
        Times in order [s], one for each person.

    Raises
    ------
    PlainError
        If the columns are not of one length, or a number is negative, endless, or no whole number of persons.

    Examples
    --------
    >>> times = arrival_times([0, 600], [600, 0], [3, 2], np.random.default_rng(1))
    >>> [round(float(time)) for time in times]
    [86, 307, 570, 600, 600]
    """
    begins, lasts, persons = (np.atleast_1d(np.asarray(column, dtype=float)) for column in (begins, lasts, persons))
    if not begins.shape == lasts.shape == persons.shape:
        sizes = f"{begins.size}, {lasts.size} and {persons.size}"
        raise PlainError(f"arrival_times: begins, lasts and persons have {sizes} rows. Give as many of each.")
    for what, column in (("begins", begins), ("lasts", lasts), ("persons", persons)):
        wrong = column[~(np.isfinite(column) & (column >= 0))]
        if wrong.size:
            check_number("arrival_times", what, wrong[0])
    if np.any(persons != np.round(persons)):
        raise PlainError(
            f"arrival_times: persons must be whole numbers, but got {persons[persons != np.round(persons)][0]:g}."
        )
    row = np.repeat(np.arange(persons.size), persons.astype(int))
    return np.sort(begins[row] + lasts[row] * generator.random(row.size))


def days_of_arrivals(begins, lasts, persons, seed, days):
    """Return the arrivals of many days, a row a day, from one table of arrivals.

    Parameters
    ----------
    begins, lasts, persons
        As for ``arrival_times``.
    seed : int
        Start of the random numbers.
    days : int
        How many.

    Returns
    -------
    array
        Times in order [s].
    """
    generator = np.random.default_rng(seed)
    return np.array([arrival_times(begins, lasts, persons, generator) for _ in range(days)])


def lines_put_up_with(mean, variation, shape, generator):
    """Return the line at which each person goes away, drawn as lognormal.

    Parameters
    ----------
    mean, variation : float
        Mean length [person], and its standard deviation over its mean.
    shape : tuple of int
        Days, and persons of a day.
    generator : Generator
        Draws the lengths.

    Returns
    -------
    array
        Persons waiting: whoever finds as many goes away.
    """
    check_number("lines_put_up_with", "mean", mean, above=0)
    check_number("lines_put_up_with", "variation", variation)
    return lognormal(generator, mean, variation, shape)
