"""Many days of a lift of any kind: what they carry, and what each cause takes of it.

A day says itself what it is: ``governed``, ``causes``, ``with_causes``, ``rates`` and ``seconds_of_work`` are all that
is asked of it here, and ``comes``, ``limits`` and ``alone`` by words: whether riders take hold at any time, or carriers
come by the clock.
"""

import functools

import numpy as np

from liftcalc.simulation.loading_day import simulate_day
from liftcalc.simulation.running_time import generators
from liftcalc.simulation.work_ahead import say_if_long


@functools.lru_cache(maxsize=64)
def simulate_days(day, seed, days):
    """Return the persons an hour of many days, each by random numbers of its own.

    Parameters
    ----------
    day : LoadingDay or CarrierDay
        What every day is like; a line stands all day.
    seed : int
        Start of the random numbers.
    days : int
        How many.

    Returns
    -------
    array
        Persons an hour who got to the top, a number a day; it is kept, and cannot be written into.
    """
    say_if_long(day.seconds_of_work(days), days)
    rates = np.asarray(day.rates(seed, days))
    rates.flags.writeable = False
    return rates


@functools.lru_cache(maxsize=64)
def simulate_days_held(day, most, seed, days):
    """Return the persons an hour of many days on which no more start than another limit carries, such as the motor.

    A limit bounds a mean. Where more would start in an hour of running, the starts are cut to it, and what happens on
    the way is cut alike: a little too much, since fewer riders fall and stop the rope less often.

    Parameters
    ----------
    day, seed, days
        As for ``simulate_days``; the day is a ``LoadingDay``.
    most : float
        Starts in an hour of running that the other limits allow; ``inf`` where there is none.

    Returns
    -------
    array
        Persons an hour who got to the top, a number a day; it is kept, and cannot be written into.
    """
    seen = [simulate_day(day, generator) for generator in generators(seed, days)]
    starts = sum(each.started.size for each in seen) / sum(each.availability * day.hours for each in seen)
    rates = np.array([each.rate for each in seen]) * min(1.0, most / starts)
    rates.flags.writeable = False
    return rates


def losses_by_cause(day, seed, days=100):
    """Return what each cause takes from the governed capacity, one after another in the order of the day's causes.

    Parameters
    ----------
    day, seed, days
        As for ``simulate_days``; every step runs on the same days.

    Returns
    -------
    dict of str to float
        Persons an hour with "governed" first, then after each cause; the last one is the simulated day.
    """
    return dict(_steps(day, seed, days))


@functools.lru_cache(maxsize=16)
def _steps(day, seed, days):
    """Return the same, kept: several tables and words of one page ask for it."""
    say_if_long(len(day.causes) * day.seconds_of_work(days), days)
    steps = {"governed": day.governed}
    for number, cause in enumerate(day.causes, start=1):
        steps[cause] = float(np.mean(day.with_causes(day.causes[:number]).rates(seed, days)))
    return steps
