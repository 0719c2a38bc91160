"""Carriers with several seats that come by the clock: against a Markov chain, and against a line that is run."""

import math

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q, mean_wait_for_carrier
from liftcalc.simulation.clocked_line import mean_wait_for_carriers

INTERVAL = 6.0  # s
SEATS = [(1, 0.75, 12.00), (2, 0.75, 6.94), (4, 0.75, 4.60), (3, 0.90, None), (6, 0.30, None)]  # busy, own figure [s]


def wait_of(seats, busy):
    rate = Q(busy * seats / INTERVAL, "person/s")
    return mean_wait_for_carriers(rate, Q(INTERVAL, "s"), Q(seats, "person")).m_as("s")


def wait_by_chain(seats, busy, most=400):
    """Return the mean wait from the chain of those whom one carrier after the other leaves behind."""
    mean = busy * seats
    come = np.exp(np.arange(most) * math.log(mean) - mean - np.array([math.lgamma(n + 1) for n in range(most)]))
    step = np.zeros((most, most))
    for left in range(most):
        after = np.maximum(np.arange(left, most) - seats, 0)
        np.add.at(step[left], after, come[: most - left])
    step[:, -1] += 1 - step.sum(axis=1)
    balance = step.T - np.eye(most)
    balance[-1] = 1
    chance = np.linalg.solve(balance, np.eye(most)[-1])
    return INTERVAL * (chance @ np.arange(most) / mean + 0.5)


def waits_of_runs(seats, busy, generator, runs=80, riders=6000, warm_up=1500):
    """Return the mean wait of each run: rider i takes the carrier after that of i - n, or the next to come."""
    gap = INTERVAL / (busy * seats)
    arrivals = np.cumsum(generator.exponential(gap, (runs, riders)), axis=1)
    carriers = np.ceil(arrivals / INTERVAL)
    for seat in range(seats):  # riders seat, seat + n, ...: each takes a carrier of its own
        numbers = np.arange(carriers[:, seat::seats].shape[1])
        carriers[:, seat::seats] = np.maximum.accumulate(carriers[:, seat::seats] - numbers, axis=1) + numbers
    return (INTERVAL * carriers - arrivals)[:, warm_up:].mean(axis=1)


@pytest.mark.parametrize(("seats", "busy", "figure"), SEATS)
def test_a_carrier_with_seats_against_chain_and_runs(seats, busy, figure):
    wait = wait_of(seats, busy)
    if figure:
        assert wait == pytest.approx(figure, abs=0.005)
    assert wait == pytest.approx(wait_by_chain(seats, busy), rel=1e-9)
    runs = waits_of_runs(seats, busy, np.random.default_rng(seats))
    error = runs.std(ddof=1) / math.sqrt(runs.size)
    assert error < 0.03 * wait, "the runs say enough"
    assert abs(wait - runs.mean()) < 4 * error


@pytest.mark.parametrize("busy", [0.001, 0.5, 0.999])
def test_one_seat_is_the_closed_form_and_a_large_cabin_waits_half_an_interval(busy):
    rate = Q(busy / INTERVAL, "person/s")
    assert wait_of(1, busy) == pytest.approx(mean_wait_for_carrier(rate, Q(INTERVAL, "s")).m_as("s"), rel=1e-9)
    assert wait_of(8, busy) < wait_of(2, busy) or wait_of(8, busy) == pytest.approx(INTERVAL / 2, rel=1e-3)
    assert wait_of(200, busy / 2) == pytest.approx(INTERVAL / 2, rel=1e-6)


RATE, EVERY, TWO = Q(900, "pph"), Q(6, "s"), Q(2, "person")
MESSAGES = [
    (
        lambda: mean_wait_for_carriers(Q(1500, "pph"), EVERY, TWO),
        "mean_wait_for_carriers: 1,500 persons an hour join the line and 1,200 can get on. The line grows by 300 "
        "persons an hour, and no mean wait exists. Write a smaller arrival_rate, or ask line_growth how long it gets "
        "in an hour.",
    ),
    (
        lambda: mean_wait_for_carriers(RATE, EVERY, Q(2.5, "person")),
        "mean_wait_for_carriers: persons_per_carrier must be a whole number, 250 at most, but got 2.5. Write for "
        "example Q(2, 'person').",
    ),
    (
        lambda: mean_wait_for_carriers(RATE, Q([6, 8], "s"), TWO),
        "mean_wait_for_carriers: interval must be one value, but got 2. Give one.",
    ),
    (
        lambda: mean_wait_for_carriers(Q(-900, "pph"), EVERY, TWO),
        "mean_wait_for_carriers: arrival_rate must be greater than zero, but got -900 pph. Write for example "
        "Q(1800, 'person/hour').",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
