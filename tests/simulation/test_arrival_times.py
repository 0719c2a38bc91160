"""Arrivals drawn from a table: how many, when, in order."""

import numpy as np
from messages import refuses, table_of_messages

from liftcalc.simulation.arrival_times import arrival_times, days_of_arrivals, lines_put_up_with


def test_persons_are_spread_within_their_row_and_a_batch_comes_at_once():
    times = arrival_times([0, 600, 300], [600, 1200, 0], [4000, 2000, 50], np.random.default_rng(1))
    assert times.size == 6050
    assert np.all(np.diff(times) >= 0)
    assert np.count_nonzero(times == 300) == 50
    counts, _ = np.histogram(times[times != 300], [0, 200, 400, 600, 1200, 1800])
    expected = np.array([4000 / 3, 4000 / 3, 4000 / 3, 1000, 1000])
    assert np.all(np.abs(counts - expected) < 4 * np.sqrt(expected))


def test_days_differ_and_a_seed_repeats_them():
    days = days_of_arrivals([0], [600], [30], seed=2, days=2)
    assert days.shape == (2, 30)
    assert not np.array_equal(days[0], days[1])
    assert np.array_equal(days, days_of_arrivals([0], [600], [30], seed=2, days=2))


def test_nobody_comes():
    assert arrival_times([], [], [], np.random.default_rng(1)).size == 0
    assert arrival_times([0], [60], [0], np.random.default_rng(1)).size == 0


def draw(begins, lasts, persons):
    return arrival_times(begins, lasts, persons, np.random.default_rng(1))


REFUSED = [
    (lambda: draw([0, 1], [1], [1]),
     "arrival_times: begins, lasts and persons have 2, 1 and 1 rows. Give as many of each."),
    (lambda: draw([-1], [1], [1]), "arrival_times: begins must be zero or more, but got -1."),
    (lambda: draw([0], [np.inf], [1]), "arrival_times: lasts must be zero or more, but got inf."),
    (lambda: draw([0], [1], [1.5]), "arrival_times: persons must be whole numbers, but got 1.5."),
    (lambda: lines_put_up_with(0, 0.5, (1, 1), np.random.default_rng(1)),
     "lines_put_up_with: mean must be greater than 0, but got 0."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
