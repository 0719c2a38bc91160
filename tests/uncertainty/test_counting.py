"""A count against its bound: what is impossible, what is chance, and the words for it."""

import collections

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Capacity, Q, UnitError
from liftcalc.uncertainty import count_against_bound

IDEAL, GOVERNED = Capacity(Q(1800, "pph"), "ideal"), Capacity(Q(1200, "pph"), "governed")
PACKING = Capacity(Q(7200, "pph"), "packing")


# own arithmetic: 1.96 / sqrt(40) is 31 %, half of it 15 %; 7,200 pph are 240 in two minutes, and one more for the ends
VERDICTS = [  # persons in two minutes, bound, spread of gaps, verdict, words
    (33, IDEAL, None, "below", "is below 1,800 pph (ideal) by more than its doubt"),
    (33, IDEAL, None, "below", "990 pph (counted). For 95 counts in 100 that is good to plus or minus 34 % where"),
    (33, IDEAL, None, "below", "17 % where their gaps spread half as much. A stop in the count makes"),
    (
        40,
        GOVERNED,
        None,
        "within",
        "31 % where riders come without any order, 15 % where their gaps spread half as much",
    ),
    (40, GOVERNED, None, "within", "cannot be told from 1,200 pph (governed)"),
    (36, GOVERNED, None, "within", "cannot be told from"),
    (32, GOVERNED, None, "perhaps below", "beyond its doubt if gaps spread by half, within it if riders came without"),
    (44, GOVERNED, None, "within", "above 1,200 pph (governed), and within the doubt of the count"),
    (44, GOVERNED, None, "within", "holds the mean of a long time, not 2.0 min"),
    (48, GOVERNED, None, "perhaps above", "above 1,200 pph (governed): beyond its doubt if gaps spread by half"),
    (62, GOVERNED, None, "above", "above 1,200 pph (governed) by more than its doubt. That is not impossible"),
    (48, GOVERNED, 0.5, "above", "14 % with gaps that spread by 0.50 of their mean"),
    (48, GOVERNED, 1.6, "within", "45 % with gaps that spread by 1.60 of their mean"),
    (241, IDEAL, None, "above", "by more than its doubt"),
    (242, IDEAL, None, "impossible", "At 7,200 pph (packing) at most 241 persons pass in 2.0 min, one for the ends"),
    (3, IDEAL, None, "too few", "So few tell next to nothing"),
    (0, IDEAL, None, "too few", "0 persons in 2.0 min: nobody passed, and nothing follows. Count longer"),
]


@pytest.mark.parametrize(
    ("persons", "bound", "spread", "verdict", "words"), VERDICTS, ids=[f"{c[0]}, {c[4][:40]}" for c in VERDICTS]
)
def test_the_verdict_on_a_count(persons, bound, spread, verdict, words):
    spread = None if spread is None else Q(spread, "")
    found = count_against_bound(Q(persons, "person"), Q(2, "minute"), bound, packing=PACKING, spread_of_gaps=spread)
    assert found.verdict == verdict
    assert words in " ".join(found.sentences)
    assert found.counted == Capacity(Q(30 * persons, "pph"), "counted")


def test_only_a_packing_figure_makes_a_count_impossible():
    for bound in (IDEAL, GOVERNED):
        assert count_against_bound(Q(500, "person"), Q(2, "minute"), bound).verdict == "above"
    pairs = {"packing": PACKING, "persons_per_carrier": Q(2, "person")}
    assert count_against_bound(Q(242, "person"), Q(2, "minute"), IDEAL, **pairs).verdict == "above"
    found = count_against_bound(Q(243, "person"), Q(2, "minute"), IDEAL, **pairs)
    assert "at most 242 persons pass in 2.0 min, one carrier for the ends included" in found.sentences[-1]


def test_counts_of_a_lift_that_makes_its_bound_are_seldom_called_above_it():
    drawn = collections.Counter(np.random.default_rng(7).poisson(40, size=4000).tolist())  # 1,200 an hour, no order
    called = {count: count_against_bound(Q(count, "person"), Q(2, "minute"), GOVERNED).verdict for count in drawn}
    above = sum(times for count, times in drawn.items() if called[count] == "above")
    over = sum(times for count, times in drawn.items() if count > 40)
    assert above < 0.03 * 4000, "chance is not taken for more than the bound"
    assert over > 0.4 * 4000, "and yet nearly every second count reads more"


REFUSED = [  # what is wrong, message, kind
    (
        {"bound": Capacity(Q(990, "pph"), "counted")},
        "count_against_bound: bound must be a Capacity of level ideal or governed, but got 990 pph (counted). "
        "Write Capacity(Q(1800, 'pph'), 'ideal').",
    ),
    (
        {"bound": Q(1200, "pph")},
        "count_against_bound: bound must be a Capacity of level ideal or governed, but got <Quantity(1200, "
        "'pph')>. Write Capacity(Q(1800, 'pph'), 'ideal').",
    ),
    (
        {"packing": IDEAL},
        "count_against_bound: packing must be a Capacity of level packing, but got 1,800 pph (ideal). Write "
        "Capacity(Q(1800, 'pph'), 'packing').",
    ),
    (
        {"spread_of_gaps": Q(0, "")},
        "count_doubt: spread_of_gaps must be greater than zero, but got 0. Write for example Q(0.2, '').",
    ),
    (
        {"persons_counted": 33},
        "count_against_bound: persons_counted needs a unit, but got the bare value 33. Write Q(3.4, 'm/s').",
        UnitError,
    ),
]


@table_of_messages(REFUSED, "wrong")
def test_a_count_that_cannot_be_judged(wrong, message, kind):
    good = {"persons_counted": Q(33, "person"), "counting_time": Q(2, "minute"), "bound": GOVERNED}
    refuses(lambda: count_against_bound(**{**good, **wrong}), message, kind)
