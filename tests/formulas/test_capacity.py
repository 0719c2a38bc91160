"""Hourly capacity: proportion, and the doubt of a count."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from ranges import gaps, persons, speeds

import liftcalc
from liftcalc import Q


@given(speed=speeds, gap=gaps, group=persons, factor=st.floats(0.1, 10))
def test_capacity_is_proportional(speed, gap, group, factor):
    base = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(gap, "m"), Q(group, "person")).magnitude
    faster = liftcalc.hourly_capacity(Q(factor * speed, "m/s"), Q(gap, "m"), Q(group, "person")).magnitude
    wider = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(factor * gap, "m"), Q(group, "person")).magnitude
    both = liftcalc.hourly_capacity(Q(factor * speed, "m/s"), Q(factor * gap, "m"), Q(group, "person")).magnitude
    assert faster == pytest.approx(factor * base)
    assert wider == pytest.approx(base / factor)
    assert both == pytest.approx(base)


@pytest.mark.parametrize("spread", [1.0, 0.5])
def test_the_doubt_of_a_count_is_the_scatter_of_counts(spread):
    """A second opinion: riders with gamma gaps are counted two thousand times, 400 riders each on the mean."""
    random, counts, mean_count = np.random.default_rng(24), 2000, 400
    gaps = random.gamma(spread**-2, spread**2, size=(counts, 700))  # a mean of one
    passed = np.cumsum(gaps, axis=1) - random.uniform(50, 60, size=(counts, 1))  # the clock starts with no rider
    counted = ((passed > 0) & (passed <= mean_count)).sum(axis=1)
    doubt = liftcalc.count_doubt(Q(mean_count, "person"), Q(spread, "")).m_as("")
    assert abs(counted.std(ddof=1) / counted.mean() / doubt - 1) < 4 / math.sqrt(2 * counts)
    assert counted.mean() == pytest.approx(mean_count, abs=4 * mean_count * doubt / math.sqrt(counts))


@pytest.mark.parametrize("mean", [4, 33, 400])
def test_a_count_without_an_order_is_poissons(mean):
    numbers = np.arange(2 * mean + 60)
    likely = np.exp(numbers * math.log(mean) - mean - [math.lgamma(number + 1) for number in numbers])
    scatter = math.sqrt(likely @ (numbers - mean) ** 2)
    doubt = liftcalc.count_doubt(Q(mean, "person"), Q(1, "")).m_as("")
    assert doubt == pytest.approx(scatter / mean, rel=1e-9)
    assert doubt == liftcalc.count_doubt(Q(mean, "person")).m_as(""), "no order is what is taken if nothing is said"
