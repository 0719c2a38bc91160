"""How full carriers leave: an exact chain, against parties drawn one by one, and what no chain may contradict."""

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc.simulation.carrier_fill import fill_in_order, fill_with_singles

PARTIES = {1: 0.25, 2: 0.40, 3: 0.15, 4: 0.20}


def drawn_in_order(parties, seats, seed, count=200_000):
    """Return the fill of carriers that take parties one after another."""
    sizes = np.random.default_rng(seed).choice(list(parties), count, p=list(parties.values()))
    carriers, load = 1, 0
    for size in sizes.tolist():
        if load + size > seats:
            carriers, load = carriers + 1, 0
        load += size
    return sizes.sum() / (carriers * seats)


@pytest.mark.parametrize(
    ("parties", "seats"), [(PARTIES, 4), ({1: 0.5, 2: 0.5}, 2), ({1: 0.2, 2: 0.5, 3: 0.3}, 6), ({2: 1.0}, 3)]
)
def test_the_chain_is_what_parties_drawn_one_by_one_make(parties, seats):
    assert fill_in_order(parties, seats) == pytest.approx(drawn_in_order(parties, seats, 4), abs=0.003)


def test_fill_of_a_quad_by_hand():
    """25, 40, 15 and 20 % of parties of 1 to 4, none split: 84.2 %; counted by rider: 86.6 %; with singles 94 %."""
    assert fill_in_order(PARTIES, 4) == pytest.approx(0.842, abs=0.0005)
    assert fill_in_order(PARTIES, 4, "rider") == pytest.approx(0.866, abs=0.0005)
    assert fill_with_singles(PARTIES, 4, 2) == pytest.approx(0.942, abs=0.004)


def test_what_needs_no_reckoning():
    assert fill_in_order({1: 1.0}, 4) == 1
    assert fill_in_order({4: 1.0}, 4) == pytest.approx(1)
    assert fill_in_order({2: 1.0}, 3) == pytest.approx(2 / 3)
    assert fill_with_singles({1: 1.0}, 4, 1) == 1
    for seats in (2, 3, 4, 6):
        assert fill_with_singles({1: 0.3, 2: 0.7}, seats, 1) >= fill_in_order({1: 0.3, 2: 0.7}, seats) - 0.01


REFUSED = [
    (lambda: fill_in_order({5: 1.0}, 4), "fill: a party of 5 does not fit on 4 seats. Give sizes from 1 to 4."),
    (lambda: fill_in_order({1: 0.5}, 4), "fill: the shares add up to 0.5. Write shares that add up to 1."),
    (lambda: fill_in_order({1: 1.5, 2: -0.5}, 4),
     "fill: the share of parties of 1 must lie from 0 to 1, but got 1.5."),
    (lambda: fill_in_order(PARTIES, 0), "fill: seats must be a whole number, one or more, but got 0. Write 4."),
    (lambda: fill_in_order(PARTIES, 4, "head"), "fill: counted_by must be 'party' or 'rider', but got 'head'."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
