"""Exercises of 11: their right answers beside lines, laps and slopes that are run person by person."""

import heapq

import numpy as np
import pytest

from liftcalc import Q
from liftcalc.exercises import BANK, Posed
from liftcalc.formulas.waiting import mean_wait_constant

WHO = ["", "Maja K.", 17]


def posed(id, who):
    return Posed(BANK[id], who if who == "" else str(who).casefold())


@pytest.mark.parametrize("who", WHO)
def test_a_line_second_by_second_is_gone_when_11_1_says(who):
    one = posed("11.1", who)
    rush, later, capacity = (getattr(one.numbers, name).m_as("pph") for name in ("rush", "later", "capacity"))
    line, second = 0.0, 0
    while second == 0 or line > 0:
        line = max(0.0, line + ((rush if second < 1200 else later) - capacity) / 3600)
        second += 1
    assert one.right.m_as("s") == pytest.approx(second, abs=2)


@pytest.mark.parametrize("who", WHO)
def test_people_who_leave_in_pairs_wait_as_11_2_says(who):
    one = posed("11.2", who)
    n, seconds, standing = one.numbers, 0.0, round(one.numbers.people.m_as("person"))
    while standing > 0:
        seconds += n.interval.m_as("s")
        standing -= 2
    assert one.right.m_as("s") == pytest.approx(seconds)
    assert n.printed.m_as("s") == pytest.approx(2 * seconds), "the board is twice as much"


@pytest.mark.parametrize("who", WHO)
def test_in_11_3_the_wait_is_that_of_even_starts(who):
    n = posed("11.3", who).numbers
    start = 3600 / n.governed.m_as("pph")
    busy = n.arrivals.m_as("pph") / n.governed.m_as("pph")
    assert n.wait.m_as("s") == pytest.approx(busy * start / (2 * (1 - busy)))
    assert n.wait == mean_wait_constant(n.arrivals, Q(start, "s"))
    assert n.spare.m_as("pph") > 0
    assert n.wait.m_as("s") > n.start.m_as("s") * 0.5


@pytest.mark.parametrize("who", WHO)
def test_a_school_that_is_run_makes_the_rides_of_11_4(who):
    one = posed("11.4", who)
    n = one.numbers
    away, loading = (n.ride + n.descent).m_as("s"), n.loading.m_as("s")
    back, free, rides = [0.0] * round(n.crowd.m_as("person")), 0.0, 0
    while free < 3600 * 3:
        free = max(free, heapq.heappop(back)) + loading
        heapq.heappush(back, free + away)
        rides += 1
    assert one.right.m_as("pph") == pytest.approx(rides / 3, abs=2)
    assert n.crowd.m_as("person") * loading > away + loading, "a line stands, and so the loading point decides"


@pytest.mark.parametrize("who", WHO)
def test_in_11_5_people_are_where_their_time_goes(who):
    one = posed("11.5", who)
    n = one.numbers
    seconds = np.array([n.wait.m_as("s"), n.ride.m_as("s"), n.descent.m_as("s")])
    starts = np.arange(0, 7200, 3600 / n.rate.m_as("pph"))  # one guest after another begins a lap
    there = [
        np.count_nonzero((starts <= time) & (time < starts + seconds.sum())) for time in np.arange(5000, 7000, 7.3)
    ]
    assert one.right.m_as("person") == pytest.approx(np.mean(there), abs=0.5)


@pytest.mark.parametrize("who", WHO)
def test_a_slope_that_gets_the_answer_of_11_6_is_as_full_as_its_guideline(who):
    one = posed("11.6", who)
    n = one.numbers
    at_once = one.right.m_as("person/s") * n.descent.m_as("s")
    assert at_once / n.area.m_as("") == pytest.approx(n.guideline.m_as("person"))
