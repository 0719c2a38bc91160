"""Several methods for one value: their mean, and whether they agree."""

import itertools
import math
import re

import numpy as np
import pytest
from example_readings import LENGTH, SPEED, metres, named
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from scipy import stats

from liftcalc import Q, UnitError, show
from liftcalc.uncertainty import Estimate, UncertaintyError, combine, normalised_error

estimates_of_a_length = st.lists(st.tuples(st.floats(1, 500), st.floats(0.01, 50)), min_size=2, max_size=7)


@given(pairs=estimates_of_a_length)
def test_the_weighted_mean_lies_within_the_readings(pairs):
    combined = combine(named(pairs))
    values = [value for value, _ in pairs]
    assert min(values) <= combined.value.m_as("m") <= max(values)
    assert sum(combined.weights.values()) == pytest.approx(1)


@given(pairs=estimates_of_a_length, more=st.tuples(st.floats(1, 500), st.floats(0.01, 50)))
def test_more_readings_never_raise_the_doubt_before_widening(pairs, more):
    before = combine(named(pairs)).doubt_if_agreed.m_as("m")
    after = combine(named([*pairs, more])).doubt_if_agreed.m_as("m")
    assert after <= before * (1 + 1e-12)
    assert before <= min(doubt for _, doubt in pairs) * (1 + 1e-12)


@given(value=st.floats(0.1, 500), doubts=st.lists(st.floats(0.01, 50), min_size=2, max_size=7))
def test_identical_readings_have_a_birge_ratio_of_nil(value, doubts):
    combined = combine(named([(value, doubt) for doubt in doubts]))
    assert combined.birge_ratio == 0
    assert combined.agrees
    assert combined.value.m_as("m") == value


@given(pairs=estimates_of_a_length)
def test_order_and_unit_of_the_methods_do_not_matter(pairs):
    estimates = named(pairs)
    one, other = combine(estimates), combine([estimate.to("ft") for estimate in reversed(estimates)])
    assert other.value.m_as("m") == pytest.approx(one.value.m_as("m"), rel=1e-9)
    assert other.standard_uncertainty.m_as("m") == pytest.approx(one.standard_uncertainty.m_as("m"), rel=1e-6)
    assert other.chi_square == pytest.approx(one.chi_square, rel=1e-6, abs=1e-12)
    assert other.agrees == one.agrees


def test_equal_readings_share_equally():
    combined = combine(named([(6.8, 0.4)] * 4))
    assert combined.standard_uncertainty.m_as("m") == pytest.approx(0.2)
    assert list(combined.weights.values()) == pytest.approx([0.25] * 4)


def test_weights_mean_and_chi_square_by_hand():
    combined = combine([metres(6.8, 0.1, "tape"), metres(7.0, 0.2, "photo")])
    assert combined.value.m_as("m") == pytest.approx((4 * 6.8 + 7.0) / 5)
    assert combined.standard_uncertainty.m_as("m") == pytest.approx(1 / math.sqrt(125))
    assert combined.chi_square == pytest.approx(0.2**2 / (0.1**2 + 0.2**2))
    assert combined.probability == pytest.approx(stats.chi2.sf(0.8, 1))
    assert combined.pairs[0].normalised_error == pytest.approx(-0.2 / (2 * math.sqrt(0.05)))
    assert combined.pairs[0].agrees


def test_the_test_of_agreement_is_as_strict_as_it_says():
    # honest methods are said to disagree one time in twenty
    generator = np.random.default_rng(5)
    doubts = np.array([0.1, 0.2, 0.4])
    trials = 600
    alarms = sum(
        not combine(named(zip(generator.normal(6.8, doubts), doubts, strict=True))).agrees for _ in range(trials)
    )
    assert abs(alarms - 0.05 * trials) < 4 * math.sqrt(trials * 0.05 * 0.95)


def test_the_doubt_of_the_mean_is_what_repeated_campaigns_show():
    generator = np.random.default_rng(6)
    doubts = np.array([0.1, 0.2, 0.4])
    combined = [combine(named(zip(generator.normal(6.8, doubts), doubts, strict=True))) for _ in range(600)]
    means = np.array([one.value.m_as("m") for one in combined])
    claimed = combined[0].doubt_if_agreed.m_as("m")
    assert abs(means.std(ddof=1) - claimed) < 4 * claimed / math.sqrt(2 * 600)


def test_methods_that_disagree_are_widened_and_the_odd_one_is_named():
    estimates = [
        metres(6.8, 0.1, "tape"),
        metres(6.9, 0.1, "photo"),
        metres(6.85, 0.1, "pacing"),
        metres(8, 0.1, "map"),
    ]
    combined = combine(estimates)
    assert not combined.agrees
    assert combined.odd_one == "map"
    assert combined.birge_ratio == pytest.approx(math.sqrt(combined.chi_square / 3))
    assert combined.standard_uncertainty.magnitude == pytest.approx(
        combined.birge_ratio * combined.doubt_if_agreed.magnitude
    )
    left = {one.method: combine([e for e in estimates if e is not one]).chi_square for one in estimates}
    assert min(left, key=left.get) == combined.odd_one
    assert combined.sentence == (
        "The four methods disagree: chi-square 99.7 with 3 degrees of freedom, probability less than 0.1 %. "
        "The doubt of "
        "the mean is widened 5.8 times, which mends nothing. 'map' is the odd one: without it chi-square "
        "falls from 99.7 "
        "to 0.5. Take it again."
    )
    assert "they disagree: widened 5.8 times" in combined.estimate.method
    assert [pair.agrees for pair in combined.pairs] == [True, True, False, True, False, False]


def test_with_two_methods_nobody_can_say_which_is_odd():
    combined = combine([metres(150, 0.5, "tape"), metres(160, 1, "map")])
    assert combined.odd_one is None
    assert combined.sentence.endswith(
        "With two methods nobody can say which of them is odd. Take both again, or measure in a third way."
    )
    # the widened doubt of two equal ones is half their difference
    even = combine([metres(150, 0.5, "tape"), metres(160, 0.5, "map")])
    assert even.standard_uncertainty.m_as("m") == pytest.approx(5)


def test_a_tie_and_a_second_suspect_are_said():
    tie = combine([metres(1, 0.1, "first"), metres(2, 0.1, "second"), metres(3, 0.1, "third")])
    assert tie.odd_one is None
    assert "without 'first' or without 'third' the rest would agree equally well" in tie.sentence
    suspect = combine([metres(0.0, 1, "first"), metres(2.4, 1, "second"), metres(4.9, 1, "third")])
    assert suspect.odd_one == "third"
    assert suspect.sentence.endswith("Without 'first' the rest would agree too, so look at both.")
    worse = combine([metres(0, 0.1, "first"), metres(2, 0.1, "second"), metres(7, 0.1, "third")])
    assert worse.sentence.endswith("Take it again. The rest disagree without it as well.")


REST = [  # values with a doubt of 1 m each; far from them stands one more; whether the others disagree without it
    # a chi-square is surpassed one time in twenty at 3.841 with one degree of freedom, at 5.991 with two (from tables)
    ((0.0, 2.74), False),  # chi-square 3.75
    ((0.0, 2.81), True),  # 3.95
    ((0.0, 0.0, 2.97), False),  # 5.88
    ((0.0, 0.0, 3.03), True),  # 6.12
]


@pytest.mark.parametrize(("values", "disagree"), REST)
def test_the_rest_have_one_method_fewer(values, disagree):
    combined = combine(named([*((value, 1) for value in values), (40.0, 1)]))
    assert combined.odd_one == list(combined.weights)[-1]
    assert combined.sentence.endswith("The rest disagree without it as well." if disagree else "Take it again.")


def test_agreement_with_a_coarse_method_means_little():
    combined = combine([metres(150, 0.5, "tape"), metres(160, 20, "map")])
    assert combined.agrees
    assert combined.sentence == (
        "The two methods agree: chi-square 0.25 with 1 degree of freedom, probability 62 %. That 'map' agrees means "
        "little: its doubt is 40 times that of 'tape', it would agree with much else, and it carries 0.062 % of "
        "the weight."
    )
    assert "means little" not in combine([metres(150, 0.5, "tape"), metres(150.5, 1, "map")]).sentence
    for times, said in ((2.95, False), (3.05, True)):  # three times as coarse is a tenth of the weight
        coarse = combine([metres(150, 1, "tape"), metres(150, times, "map")])
        assert ("means little" in coarse.sentence) is said
        assert (coarse.weights["map"] <= 0.1) is said


def test_one_method_is_tested_by_nothing():
    combined = combine([LENGTH])
    assert combined.sentence == "One method only, 'tape': nothing tests it."
    assert combined.probability is None
    assert combined.estimate.value == LENGTH.value
    assert combined.estimate.standard_uncertainty.m_as("m") == pytest.approx(0.6)


def test_a_combination_keeps_count_of_what_is_known_of_its_doubt():
    few = combine([metres(6.8, 0.1, "a", degrees_of_freedom=4), metres(6.8, 0.1, "b", degrees_of_freedom=4)])
    assert few.degrees_of_freedom == pytest.approx(8)
    unlike = combine([metres(6.8, 0.1, "a", degrees_of_freedom=4), metres(6.8, 0.2, "b", degrees_of_freedom=9)])
    assert unlike.degrees_of_freedom == pytest.approx(1 / (0.8**2 / 4 + 0.2**2 / 9))
    known = combine([metres(6.8, 0.1, "a"), metres(6.8, 0.1, "b")])
    assert math.isinf(known.degrees_of_freedom)
    assert "two methods agree" in str(few)


def test_a_normalised_error_changes_sign_with_the_order():
    one, other = metres(150, 0.5), metres(155, 2)
    assert normalised_error(one, other) == pytest.approx(-normalised_error(other, one.to("ft")))


def test_all_pairs_are_scored():
    combined = combine(named([(1, 1), (2, 1), (3, 1), (4, 1)]))
    assert [(pair.first, pair.second) for pair in combined.pairs] == list(itertools.combinations(combined.weights, 2))
    assert show(combined.value) == "2.5 m"


def test_no_sentence_holds_a_power_of_ten():
    fine = [Estimate(Q(value, "m"), Q(1e-4, "m"), method=name) for name, value in (("one", 150), ("two", 150.00001))]
    sentences = [
        combine([*fine, Estimate(Q(163, "m"), Q(1e-4, "m"), method="far")]).sentence,
        combine([*fine, Estimate(Q(151, "m"), Q(40, "m"), method="coarse")]).sentence,
    ]
    assert "disagree" in sentences[0]
    assert "less than 0.01 %" in sentences[1]
    assert not any(re.search(r"e[+-]\d", sentence) for sentence in sentences)


MESSAGES = [
    (lambda: combine([]), "combine: no reading came. Give at least one estimate, such as combine([tape, photo])."),
    (
        lambda: combine([LENGTH, Q(150, "m")]),
        "combine: each method must be an estimate with its doubt, but got 150 m. Write for example "
        "estimate_from_half_width(Q(6.8, 'm'), Q(0.5, 'm'), 'tape').",
        UnitError,
    ),
    (
        lambda: combine([LENGTH, SPEED]),
        "combine: poles and stopwatch must be a length, but got a speed: 3.4 m/s. Write for example Q(6.8, 'm').",
        UnitError,
    ),
    (
        lambda: combine([LENGTH, LENGTH]),
        "combine: two methods bear the name 'tape'. Name each, such as method='tape' and method='photo'.",
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)
