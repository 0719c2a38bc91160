"""Spacing: of parts, of a mix, and as it is observed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from ranges import speeds

import liftcalc
from liftcalc import Q


@given(equipment=st.floats(0.5, 3), gap=st.floats(0, 20), share=st.floats(0, 1), other=st.floats(0.5, 30), speed=speeds)
def test_a_mix_has_one_mean_spacing(equipment, gap, share, other, speed):
    one = liftcalc.spacing_from_parts(equipment_length=Q(equipment, "m"), practical_gap=Q(gap, "m")).magnitude
    assert one - gap == pytest.approx(equipment)
    mean = liftcalc.mean_spacing(Q([one, other], "m"), Q([share, 1 - share], "")).magnitude
    assert min(one, other) * (1 - 1e-9) <= mean <= max(one, other) * (1 + 1e-9)
    # lay a hundred thousand riders nose to tail: the rope they take up is what the mean says
    riders = 100_000
    first = round(share * riders)
    rope = first * one + (riders - first) * other
    assert rope / riders == pytest.approx(mean, rel=1e-3)
    v = Q(speed, "m/s")
    capacities = [liftcalc.hourly_capacity(v, Q(spacing, "m")).magnitude for spacing in (one, other)]
    assert liftcalc.hourly_capacity(v, Q(mean, "m")).magnitude <= (
        share * capacities[0] + (1 - share) * capacities[1]
    ) * (1 + 1e-9)


def test_thirds_that_are_cut_in_the_seventh_digit_are_taken_for_all_riders():
    thirds = Q([0.3333333, 0.3333333, 0.3333333], "")
    assert liftcalc.mean_spacing(Q([2, 3, 4], "m"), thirds).m_as("m") == pytest.approx(3, rel=1e-6)


def test_the_mean_of_the_capacities_is_too_high():
    # own arithmetic: half at 2.4 m and half at 1.6 m on a rope at 3.4 m/s
    v = Q(3.4, "m/s")
    mean = liftcalc.mean_spacing(Q([2.4, 1.6], "m"), Q([0.5, 0.5], ""))
    assert mean.m_as("m") == pytest.approx(2.0)
    assert liftcalc.hourly_capacity(v, mean).m_as("pph") == pytest.approx(6120)
    wrong = (liftcalc.hourly_capacity(v, Q(2.4, "m")) + liftcalc.hourly_capacity(v, Q(1.6, "m"))) / 2
    assert wrong.m_as("pph") == pytest.approx(6375)


MESSAGES = [
    (
        lambda: liftcalc.mean_spacing(Q([2, 3], "m"), Q([0.5, 0.4], "")),
        "mean_spacing: the shares add up to 0.900, not to 1. Write each as a part of all riders, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3], "m"), Q([0.5, 0.49], "")),
        "mean_spacing: the shares add up to 0.990, not to 1. Write each as a part of all riders, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3, 4], "m"), Q([33.4, 33.4, 33.3], "percent")),
        "mean_spacing: the shares add up to 1.001, not to 1. Write each as a part of all riders, such as "
        "Q([0.7, 0.3], '').",
    ),
    (
        lambda: liftcalc.mean_spacing(Q([2, 3], "m"), Q(1.0, "")),
        "mean_spacing: 2 spacings came with 1 shares. Give one share a spacing.",
    ),
    (
        lambda: liftcalc.observed_spacing(Q(60, "m"), Q(1, "person")),
        "observed_spacing: riders must be two or more, but got 1. Count both the first and the last.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
