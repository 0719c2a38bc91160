"""The four figures of a lift side by side, and what each cause takes."""

import re
from dataclasses import replace

import pytest
from places import DATA

from liftcalc import Q
from liftcalc.fieldwork.minute_counts import counts_from_bytes
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.simulation.carrier_day import CAUSES
from liftcalc.simulation.carrier_tables import day_of, read_carrier_day
from liftcalc.simulation.day_tables import loading_day, read_day
from liftcalc.simulation.day_words import Figure, agreement_of_figures, day_against_sheet, losses_table, side_by_side

TABLES = read_day(DATA / "days/penny_rope_classes.csv", DATA / "days/penny_rope_day.csv")
COUNT = b"from,minutes,persons,stop_seconds,people_waited,note\n10:00,1,17,0,yes,\n10:01,1,16,0,yes,\n"


def numbers(text):
    """Return the whole numbers in a text."""
    return [int(word.replace(",", "")) for word in re.findall(r"[0-9][0-9,]*(?= pph)", text)]


def test_four_figures_of_the_demo_tow():
    table = side_by_side(*demo_line("Penny Rope"), TABLES, counts_from_bytes("count.csv", COUNT), days=30)
    figures = {row[0]: row[1] for row in table.rows}
    assert (figures["ideal"], figures["governed"], figures["counted"]) == ("1,800 pph", "1,200 pph", "990 pph")
    assert numbers(figures["simulated"])[0] == pytest.approx(1001, abs=4 * 23 / 30**0.5)
    low, high = numbers(table.rows[-1][3])
    assert (low, high) == pytest.approx((990 * 0.98 / 33**0.5, 990 * 1.96 / 33**0.5), abs=1)  # gaps by half, no order
    assert "loading governs" in table.rows[1][2]


def test_what_was_not_counted_is_not_there_and_another_limit_is_named():
    table = side_by_side(*demo_line("Twin Penny right"), TABLES, days=5)
    assert table.rows[-1][:2] == ("counted", "not read")
    assert "the loading point alone: motor governs" in table.rows[2][2]


def test_what_the_causes_take_adds_up():
    table = losses_table(loading_day(demo_line("Penny Rope")[0], TABLES), days=20)
    left = [numbers(row[1])[0] for row in table.rows]
    takes = [numbers(row[2])[0] for row in table.rows[1:]]
    assert [row[0] for row in table.rows][:2] == ["governed", "uneven starts"]
    assert sum(takes[:-1]) == pytest.approx(takes[-1], abs=4), "as rounded"
    assert left[0] - left[-1] == pytest.approx(takes[-1], abs=1)
    assert all(take >= 0 for take in takes)


def test_the_same_tables_of_a_lift_with_carriers():
    line, readings = demo_line("Lantern Double")
    tables = read_carrier_day(DATA / "days/lantern_double_parties.csv", DATA / "days/lantern_double_day.csv")
    tables = replace(tables, rest=tables.rest | {"hours": 2.0})
    table = side_by_side(line, readings, tables, days=20)
    assert [row[:2] for row in table.rows][:2] == [("ideal", "1,029 pph"), ("governed", "1,029 pph")]
    assert (table.rows[0][2], table.rows[1][2]) == ("a carrier every 7.0 s", "spacing governs")
    assert numbers(table.rows[2][1])[0] == pytest.approx(816, abs=4 * 22 / 20**0.5)
    slow = side_by_side(line, dict(readings) | {"loading_time": Q(9, "s")}, tables, days=2)
    assert slow.rows[2][2].endswith(", the carriers alone: loading governs")
    losses = losses_table(day_of(line, tables), days=10)
    left = [numbers(row[1])[0] for row in losses.rows]
    assert [row[0] for row in losses.rows] == ["governed", *CAUSES[:-1], "together"]
    assert left == sorted(left, reverse=True)
    (told,) = day_against_sheet(line, readings, tables).lines
    assert "a carrier passes every 7.0 s whoever is there" in told


AGAINST = [  # what differs in the readings of the Penny Rope, words of a line, how many lines
    ({}, "there is one loading place", 1),
    ({"loading_timed_as": "starts"}, "The sheet's 3.0 s is from one successful start to the next.", 2),
    ({"loading_timed_as": None}, "the day starts from the 3.0 s of its classes", 2),
    ({"loading_time": Q(3.6, "s")}, "The sheet says 3.6 s with the place free, and the classes 3.0 s on average", 3),
    ({"loading_time": Q(3.05, "s")}, "the sheet governs at 1,180 pph, and the day starts from 1,200 pph.", 2),
    ({"loading_time": None}, "The sheet has no loading time: the day takes the 3.0 s of its classes.", 3),
    ({"loading_places": Q(2, "")}, "The sheet has 2 loading places: the simulated figure is that of one of them.", 3),
]


@pytest.mark.parametrize(("differs", "words", "count"), AGAINST)
def test_what_a_day_leaves_out_of_a_sheet(differs, words, count):
    line, readings = demo_line("Penny Rope")
    told = day_against_sheet(line, dict(readings) | differs, TABLES).lines
    assert words in "\n".join(told)
    assert len(told) == count


AGREE = [  # persons an hour that were counted, half of the interval of the count, how it is said
    (996, 110, "Simulated and counted are 6 pph apart, within the doubt of the count, 110 pph."),
    (700, 110, "Simulated and counted are 302 pph apart, more than the doubt of the count, 110 pph."),
    (996, None, "So few were counted"),
    (None, None, "Nobody has counted"),
]


@pytest.mark.parametrize(("counted", "around", "words"), AGREE)
def test_whether_simulated_and_counted_agree(counted, around, words):
    def pph(number):
        return None if number is None else Q(float(number), "pph")

    figures = [Figure("simulated", pph(1002)), Figure("counted", pph(counted), around=pph(around))]
    (told,) = agreement_of_figures(figures).lines
    assert told.startswith(words)
