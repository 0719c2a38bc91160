"""What a sheet says in words: routes, the same by hand, the count, and what is left out."""

import re

import pytest
from places import DATA

from liftcalc.lifts.sheet import read_sheet, sheet_from_bytes
from liftcalc.lifts.sheet_words import (
    agreement_in_words,
    by_hand,
    capacity_of,
    count_in_words,
    left_out_in_words,
    routes,
    routes_in_words,
    to_look_at,
)

HEADING = "quantity,value,unit,plus_minus,method,note\n"
FAST = "line speed,3.4,m/s,,,\nspacing,6.8,m,,,\n"
SPEED = FAST + "persons per carrier,1,person,,,\n"
PENNY = read_sheet(DATA / "hill/1_penny_rope.csv")


def sheet_of(rows):
    """Return the sheet that holds these rows."""
    return sheet_from_bytes("sheet.csv", (HEADING + rows).encode())


COUNTS = [  # rows, words
    (SPEED, "No count on this sheet"),
    (SPEED + "persons counted,33,person,,,\n", "No count on this sheet"),
    ("persons counted,33,person,,,\ncounting time,2,min,,,\n", "nothing to hold it against"),
    (SPEED + "persons counted,33,person,,,\ncounting time,2,min,,,\n", "is below 1,800 pph (ideal)"),
    (SPEED + "persons counted,63,person,,,\ncounting time,24,s,,,\n", "at most 55 persons pass in 24.0 s"),
    (SPEED + "persons counted,57,person,,,\npersons counted,61,person,,,\ncounting time,2,min,,,\n"
     "counting time,3,min,,,\n",
     "118 persons in 5.0 min, 2 counts together: 1,416 pph (counted)"),
    (FAST + "persons per carrier,2,person,,,\npersons counted,120,person,,,\ncounting time,2,min,,,\n",
     "cannot be told from 3,600 pph (ideal)"),
    ("level of spacing,packing,,,,\n" + SPEED + "persons counted,33,person,,,\ncounting time,2,min,,,\n",
     "The spacing of the sheet is packing: that is no bound"),
    # on a chair every seat is taken at most: 20 s hold four chairs of two every 7 s, the one for the ends included
    ("kind,fixed chair,,,,\nline speed,2.2,m/s,,,\nspacing,15.4,m,,,\npersons per carrier,2,person,,,\n"
     "persons counted,12,person,,,\ncounting time,20,s,,,\n", "at most 7 persons pass in 20.0 s"),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "words"), COUNTS, ids=[case[1] for case in COUNTS])
def test_the_words_of_a_count_are_true_for_any_sheet(rows, words):
    assert words in repr(count_in_words(sheet_of(rows)))


WAITED = [
    ("people waited,yes,,,,\n", "People stood waiting while they were counted"),
    ("people waited,no,,,,\n", "Nobody stood waiting"),
    ("people waited,some,,,,\n", "for part of the time"),
    ("", "does not say whether people stood waiting"),
]


@pytest.mark.parametrize(("row", "words"), WAITED, ids=[case[1] for case in WAITED])
def test_a_count_says_who_waited(row, words):
    said = repr(count_in_words(sheet_of(row + SPEED + "persons counted,33,person,,,\ncounting time,2,min,,,\n")))
    assert words in said
    assert sum(other in said for _, other in WAITED) == 1


def test_the_routes_of_the_demo_sheet():
    rows = {row[0]: row[1:3] for row in routes(PENNY).rows}
    assert rows == {
        "line speed and spacing": ("1,800 pph", "ideal"),
        "head count and ride time": ("1,709 pph", "counted"),  # 3,600 x 21.5 / 45.3
        "count at the top": ("990 pph", "counted"),  # 33 x 30
    }
    said = repr(routes_in_words(PENNY))
    assert "1,709 pph pass, 5 in a hundred below the first route" in said
    assert "21.5 persons on average in 2 photos" in said
    assert "holds 22.6 persons" in said


def numbers(text):
    """Return the numbers in a text."""
    return [float(word.replace(",", "")) for word in re.findall(r"[0-9][0-9,]*(?:\.[0-9]+)?", text)]


def test_by_hand_every_step_follows_from_the_one_before():
    first, steps, persons, ride, on_line, package = by_hand(PENNY).lines
    _, spacing, speed, headway = numbers(first)
    assert headway == pytest.approx(spacing / speed, abs=0.005)
    _, _, _, in_an_hour = numbers(steps)
    assert in_an_hour == pytest.approx(3600 / headway, rel=1e-3)
    assert numbers(persons)[-1] == in_an_hour
    _, length, v, at_speed, _, two, pick_up, more, together = numbers(ride)
    assert (v, two) == (speed, 2)
    assert at_speed == pytest.approx(length / v, abs=0.005)
    assert more == pytest.approx(v / (2 * pick_up), abs=0.005)
    assert together == pytest.approx(at_speed + more, abs=0.011)
    assert numbers(on_line)[-1] == pytest.approx(together / headway, abs=0.05)
    assert package.endswith("says 1,800 pph.")


BY_HAND = [  # sheet, words of a step
    ("hill/4_lantern_double.csv", "1. How long until the next carrier? 15.4 m ÷ 2.20 m/s = 7.0 s."),
    ("hill/4_lantern_double.csv", "3. 2 persons each step: 1,029 people an hour."),
    ("kinds/09_gondola.csv", "1. How long until the next carrier? 12.0 s: the interval was timed."),
    ("kinds/10_reversible_tram.csv", "276.0 s: it follows from persons per carrier, ride time and dwell time."),
    (
        "kinds/10_reversible_tram.csv",
        "8.00 m/s ÷ 0.50 m/s² = 16.00 s to start from rest and to stop. Together 216.00 s.",
    ),
    ("kinds/05_conveyor.csv", "4. How long is a ride? 80.0 m ÷ 0.60 m/s = 133.33 s at the speed of the rope."),
]


@pytest.mark.parametrize(("name", "words"), BY_HAND, ids=[f"{case[0]}: {case[1][:20]}" for case in BY_HAND])
def test_by_hand_for_every_kind(name, words):
    assert words in repr(by_hand(read_sheet(DATA / name)))


def test_no_word_of_the_demo_tow_stands_under_another_sheet():
    chair = read_sheet(DATA / "hill/4_lantern_double.csv")
    for say in (routes, routes_in_words, by_hand, count_in_words, left_out_in_words):
        assert "Penny" not in repr(say(chair))
    assert "The route by heads and ride time is left out: head count and ride time not read." in repr(
        routes_in_words(chair)
    )


LEFT_OUT = [  # rows, words
    (SPEED, "riders on the line and ride time (ridden length not read); vertical transport (vertical rise not read)"),
    (SPEED, "what its kind would tell (kind not read)"),
    ("line speed,3.4,m/s,,,\n", "people an hour (spacing and persons per carrier not read)"),
    ("kind,rope tow,,,,\nline speed,3.4,m/s,,,\n", "people an hour (spacing not read)"),
    (FAST, "people an hour (persons per carrier not read)"),
    ("kind,fixed chair,,,,\n" + FAST, "people an hour (persons per carrier not read)"),
]


@pytest.mark.parametrize(("rows", "words"), LEFT_OUT, ids=[case[1] for case in LEFT_OUT])
def test_what_is_left_out_is_named_with_the_reading_that_would_give_it(rows, words):
    assert words in repr(left_out_in_words(sheet_of(rows)))


def test_readings_that_do_not_agree_are_told_to_be_looked_at_again():
    rows = SPEED + "ridden length,150,m,,,\nvertical rise,30,m,,,\n"
    said = repr(
        agreement_in_words(sheet_of(rows + "ride time,90,s,,,\nhead count,60,person,,,\nline speed,0.7,m/s,,,\n"))
    )
    assert "The line is made from line speed, spacing, persons per carrier and ridden length." in said
    assert (
        "line speed: the repeats lie far apart, from 0.70 m/s to 3.40 m/s. One of them may be of something else" in said
    )
    assert "ride time: read 90.0 s, the line makes it 73.2 s: 23 % above. Look at both again." in said  # 150 / 2.05
    assert "head count: read 60 persons, the line makes it 22.1 persons: 170 % above. Look at both again." in said
    fuller = repr(routes_in_words(sheet_of(rows + "ride time,44.1,s,,,\nhead count,60,person,,,\n")))
    assert "No line is fuller than full: look at heads, ride time, line speed and spacing again." in fuller
    assert "Look at both again" not in repr(agreement_in_words(PENNY))
    assert "Nothing else was read to hold against it." in repr(agreement_in_words(sheet_of(rows)))


def test_what_a_page_leaves_out_names_every_route_that_is_not_there():
    said = repr(left_out_in_words(read_sheet(DATA / "hill/4_lantern_double.csv")))
    assert said == (
        "Left out: the route by heads and ride time (head count and ride time not read); the count at the top (persons "
        "counted and counting time not read)."
    )
    assert repr(left_out_in_words(PENNY)) == "Nothing that this page uses is missing."


def test_a_sheet_without_any_route_says_so():
    sheet = sheet_of("vertical rise,30,m,,,\n")
    assert capacity_of(sheet) is None
    assert "neither speed with spacing, nor heads with a ride time, nor a count" in repr(routes(sheet))
    assert repr(by_hand(sheet)) == (
        "By hand, too, something is missing: line speed, spacing and persons per carrier not read."
    )
    assert "do not follow from speed and spacing" in repr(routes_in_words(sheet))


REPEATS = [  # rows of one quantity, whether they are told to lie far apart
    ("line speed,2.31,m/s,0.1,,\nline speed,2.9,m/s,0.1,,\n", True),
    ("line speed,2.7,m/s,0.1,,\nline speed,2.9,m/s,0.1,,\n", False),  # just as far as both plus-minus reach
    ("line speed,2.31,m/s,,,\nline speed,2.9,m/s,0.1,,\n", False),
    ("line speed,2,m/s,,,\nline speed,3.1,m/s,,,\n", True),
    ("head count,10,person,1,,\nhead count,30,person,1,,\n", False),  # each photo has another number
]


@pytest.mark.parametrize(("rows", "far"), REPEATS, ids=[case[0].replace("\n", " ") for case in REPEATS])
def test_repeats_that_lie_further_apart_than_their_plus_minus_are_told(rows, far):
    assert bool(to_look_at(sheet_of(rows))) is far
