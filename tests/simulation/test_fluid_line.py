"""The fluid line: against a printed one, sums by hand, and a line that is run person by person."""

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from messages import SOMETHING, refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.simulation.fluid_line import fluid_line


def line_of(rows, capacity, since=None):
    """Return the line of rows of minutes, minutes and persons; capacity in persons a minute, since when in minutes."""
    begins, lasts, persons = zip(*rows, strict=True)
    return fluid_line(
        begins=Q(begins, "minute"),
        lasts=Q(lasts, "minute"),
        persons=Q(persons, "person"),
        hourly_capacity=Q(capacity, "person/minute"),
        capacity_from=None if since is None else Q(since, "minute"),
    )


@pytest.mark.parametrize(
    "source", ["Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, ch. 5: D/D/1"]
)
def test_published_line(source):
    # 6 a minute for 15 min, then 2 a minute; it opens when 30 wait, and serves 4 a minute
    opens = 30 / 6
    found = line_of([(0, 15, 90), (15, 45, 90)], [4], [opens])
    assert found.line[found.times.m_as("minute") == opens].m_as("person").tolist() == [30]
    assert found.longest_line.m_as("person") == pytest.approx(50, rel=1e-12)
    assert found.longest_at.m_as("minute") == pytest.approx(15, rel=1e-12)
    assert found.clears_at.m_as("minute") == pytest.approx(40, rel=1e-12)
    # by hand: triangles and a trapezium under the line; the last of the rush waits longest
    assert found.total_wait.m_as("person*minute") == pytest.approx(75 + 400 + 625, rel=1e-12)
    assert found.mean_wait.m_as("minute") == pytest.approx(1100 / 180, rel=1e-12)
    assert found.longest_wait.m_as("minute") == pytest.approx(5 + 90 / 4 - 15, rel=1e-12)


HANDS = [  # what, rows, capacity, since, longest line, at, clears at, total wait, longest wait [persons and min]
    ("a class of 60 comes at once", [(10, 0, 60)], 20, None, 60, 10, 13, 90, 3),
    ("two classes at once", [(10, 0, 60), (10, 0, 20)], 20, None, 80, 10, 14, 160, 4),
    ("a class amid others", [(0, 30, 300), (10, 0, 60)], 20, None, 60, 10, 16, 180, 3),
    ("a stop of 5 min", [(0, 30, 300)], [20, 0, 20], [0, 10, 15], 50, 15, 20, 250, 5),
    ("all came while it stood", [(0, 10, 100)], [20, 0, 20], [0, 0.5, 20], 95, 10, 24.75, 1626.875, 19.5),
    ("one who came as it stopped", [(0, 10, 200), (10, 0, 20)], [20, 0, 20], [0, 10, 15], 20, 10, 16, 110, 6),
    ("a stop just between two", [(0, 0, 60), (1, 0, 10)], [20, 0, 20], [0, 3, 30], 60, 0, 30.5, 382.5, 29.5),
    ("rows that overlap", [(0, 20, 300), (10, 10, 100)], 20, None, 50, 20, 22.5, 312.5, 2.5),
    ("at capacity", [(0, 10, 200)], 20, None, 0, 0, None, 0, 0),
    ("below capacity", [(0, 10, 100), (20, 10, 100)], 20, None, 0, 0, None, 0, 0),
]


@pytest.mark.parametrize(
    ("what", "rows", "capacity", "since", "longest", "at", "clears", "total", "wait"),
    HANDS,
    ids=[f"own arithmetic: {case[0]}" for case in HANDS],
)
def test_lines_by_hand(what, rows, capacity, since, longest, at, clears, total, wait):
    found = line_of(rows, capacity, since)
    assert found.longest_line.m_as("person") == pytest.approx(longest)
    assert found.longest_at.m_as("minute") == pytest.approx(at)
    assert (found.clears_at is None) == (clears is None)
    if clears:
        assert found.clears_at.m_as("minute") == pytest.approx(clears)
    assert found.total_wait.m_as("person*minute") == pytest.approx(total, abs=1e-9)
    assert found.longest_wait.m_as("minute") == pytest.approx(wait, abs=1e-9)
    assert found.mean_wait.m_as("minute") == pytest.approx(total / sum(row[2] for row in rows), abs=1e-9)


WHO = [  # rows, capacity, since, who met a line, from when to when lines stood [persons and min]
    ([(0, 30, 300), (10, 0, 60)], 20, None, 60 + 6 * 10, [(10, 16)]),
    ([(0, 30, 300)], [20, 0, 20], [0, 10, 15], 10 * 10, [(10, 20)]),
    ([(0, 10, 300), (30, 0, 40)], 20, None, 340, [(0, 15), (30, 32)]),
    ([(0, 10, 300), (10, 20, 200), (30, 10, 300)], 20, None, 300 + 100 + 300, [(0, 20), (30, 45)]),
    ([(0, 10, 200)], 20, None, 0, []),
]


@pytest.mark.parametrize(("rows", "capacity", "since", "met", "spells"), WHO)
def test_who_met_a_line_and_when_one_stood(rows, capacity, since, met, spells):
    found = line_of(rows, capacity, since)
    assert found.met_a_line.m_as("person") == pytest.approx(met)
    assert [each for spell in found.spells for each in spell] == pytest.approx(
        [60 * t for pair in spells for t in pair]
    )
    if met:
        assert (found.mean_wait_of_those * met).m_as("minute") == pytest.approx(found.total_wait.m_as("person*minute"))
    else:
        assert found.mean_wait_of_those is None
    assert found.came[-1].m_as("person") == pytest.approx(sum(persons for _, _, persons in rows))


@pytest.mark.parametrize("factor", [1 / 7, 0.1, 1.1, 3.3])
@pytest.mark.parametrize("case", HANDS, ids=[case[0] for case in HANDS])
def test_rounding_makes_no_line_and_no_wait(case, factor):
    _, rows, capacity, since, longest, at, clears, total, wait = case
    odd = [(begins * factor, lasts * factor, persons * factor) for begins, lasts, persons in rows]
    found = line_of(odd, capacity, None if since is None else np.array(since) * factor)
    assert found.longest_line.m_as("person") == pytest.approx(longest * factor, abs=1e-12)
    assert found.longest_at.m_as("minute") == pytest.approx(at * factor)
    assert (found.clears_at is None) == (clears is None)
    if clears:
        assert found.clears_at.m_as("minute") == pytest.approx(clears * factor)
    assert found.total_wait.m_as("person*minute") == pytest.approx(total * factor**2, abs=1e-9)
    assert found.longest_wait.m_as("minute") == pytest.approx(wait * factor, abs=1e-5)


PARTS, ONE = 400, 0.6180339887  # parts that a row is cut into, and the one of each part who is looked at


def people_one_by_one(rows, capacity, since):
    """Return mean and longest wait of a crowd cut into small parts, served one after the other."""
    came = np.concatenate([begins + (np.arange(PARTS) + ONE) / PARTS * lasts for begins, lasts, _ in rows])
    size = np.repeat([persons / PARTS for _, _, persons in rows], PARTS)
    order = np.argsort(came, kind="stable")
    came, size = came[order], size[order]
    corners = np.array([*since, 1e6])
    served = np.concatenate([[0], np.cumsum(np.diff(corners) * capacity)])  # could have been, by each corner
    whole = np.cumsum(size)
    done = whole + np.maximum.accumulate(np.interp(came, corners, served) - whole + size)
    waits = np.maximum(np.interp(done - (1 - ONE) * size, served, corners) - came, 0)
    return np.average(waits, weights=size), waits.max()


SPEEDS = st.sampled_from([0, 5, 12, 20, 40])  # persons a minute


@given(
    rows=st.lists(st.tuples(st.integers(0, 60), st.integers(0, 30), st.integers(1, 300)), min_size=1, max_size=4),
    capacity=st.tuples(SPEEDS, SPEEDS, SPEEDS.filter(bool)),
    since=st.tuples(st.integers(-5, 9), st.integers(10, 30), st.integers(31, 60)),
)
@example(rows=[(0, 30, 300)], capacity=(20, 0, 20), since=(0, 10, 31))
def test_against_people_one_by_one(rows, capacity, since):
    found = line_of(rows, capacity, since)
    mean, longest = people_one_by_one(rows, capacity, since)
    slack = sum(lasts + persons / 5 for _, lasts, persons in rows) / PARTS  # what a part of each takes at the slowest
    assert found.mean_wait.m_as("minute") == pytest.approx(mean, abs=slack)
    assert found.longest_wait.m_as("minute") == pytest.approx(longest, abs=2 * slack)
    assert np.all(found.line.magnitude >= 0)
    assert np.all(np.diff(found.times.magnitude) >= 0)


def test_what_it_says():
    assert str(line_of([(0, 0, 60)], 20)) == (
        "At most 60 persons in line, at 0.0 min; clear at 3.0 min. Mean wait 1.5 min, longest 3.0 min. Where this says "
        "no wait, chance still makes some: people do not come evenly."
    )
    assert str(line_of([(0, 10, 100)], 20)) == (
        "No line: never more came than could get on. Where this says no wait, chance still makes some: people do not "
        "come evenly."
    )


MESSAGES = [
    (
        lambda: line_of([(0, 10, 400)], [20, 0], [0, 12]),
        "fluid_line: 160 persons are left in line and nobody takes them. Write a last hourly_capacity above zero.",
    ),
    (lambda: line_of([(0, 10, 0)], 20), "fluid_line: nobody comes. Give at least one row with persons, such as "
     "Q([60], 'person')."),
    (
        lambda: fluid_line(
            begins=Q([0, 5], "s"), lasts=Q([5], "s"), persons=Q([1, 2], "person"), hourly_capacity=Q(1200, "pph")
        ),
        "fluid_line: begins holds 2, lasts holds 1, persons holds 2. Give one value a row in each.",
    ),
    (
        lambda: line_of([(0, 10, 10)], [20, 10]),
        "fluid_line: 2 values of hourly_capacity came with 1 times. Write in capacity_from since when each of them "
        "holds.",
    ),
    (
        lambda: line_of([(0, 10, 10)], [20, 10], [5, 5]),
        "fluid_line: the times of capacity_from must ascend. Write the earliest first.",
    ),
    (
        lambda: line_of([(0, -10, 10)], 20),
        f"fluid_line: lasts must be zero or more, but got [{SOMETHING}] min. Write for example Q(2.0, 's').",
    ),
    (
        lambda: fluid_line(begins=Q([0], "s"), lasts=Q([5], "s"), persons=[1], hourly_capacity=Q(1200, "pph")),
        "fluid_line: persons needs a unit, but got the bare value [1]. Write Q(1, 'person').",
        UnitError,
    ),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
