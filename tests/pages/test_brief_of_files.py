"""The brief of a lift's files: its numbers are those of the page and of its own makers; shown without script."""

import functools
import html
import re

import pytest
from messages import refuses
from places import DATA

from liftcalc.fieldwork import read_track, read_track_speed
from liftcalc.fieldwork.minute_counts import read_counts
from liftcalc.lifts.sheet import read_sheet
from liftcalc.pages.brief import brief_of, make_brief, next_reading, shown_brief, what_would_help
from liftcalc.simulation import lift_words as words
from liftcalc.simulation.lift_files import LiftFiles, read_lift_files
from liftcalc.simulation.lift_words import count_of, limits

OWN = DATA / "own_lift"


@functools.cache
def demo():
    return read_lift_files(OWN)


def test_the_brief_of_the_files_is_that_of_the_command():
    by_hand = make_brief(
        read_sheet(OWN / "long_platter_sheet.csv"),
        read_counts(OWN / "long_platter_count.csv"),
        read_track_speed(read_track(OWN / "long_platter_track.gpx")),
        read_sheet(OWN / "penny_rope_sheet.csv"),
    )
    assert brief_of(demo()).html() == by_hand.html()


def test_its_numbers_are_those_of_the_page():
    facts, found = brief_of(demo()).facts, limits(demo())
    assert facts.at_most == words.at_most(demo()) == found.governs.capacity
    assert facts.governs == "spacing"
    assert facts.next_limit == "motor"
    assert facts.shares == found.shares
    for line in facts.limits:
        if line.capacity is not None:
            assert list(line.ends.m_as("pph")) == list(found.ranges[line.name].m_as("pph"))
    counts = count_of(demo())
    assert facts.counted.rate == counts.rate(clean=True)
    assert facts.counted.by_the_clock == counts.rate()
    page = "\n".join(words.comes_to(demo()).lines)
    for number in ("514 pph", "39 pph", "463 pph", "444 pph"):
        assert number in page
        assert number.partition(" ")[0] in str(brief_of(demo())) + brief_of(demo()).html()


def test_it_is_shown_whole_without_script_and_saved_by_a_link():
    shown = shown_brief(demo())._repr_html_()
    frame = re.search(r'<iframe title="The page for the wall" sandbox srcdoc="([^"]*)"', shown)
    assert html.unescape(frame[1]) == brief_of(demo()).html()
    assert "<script" not in shown
    assert 'download="brief.html"' in shown
    assert str(brief_of(demo())) in repr(shown_brief(demo()))


def test_a_hostile_name_does_not_leave_the_frame():
    sheet = b'quantity,value,unit,plus_minus,method,note\nlift,"""><script>alert(1)</script>",,,,\nkind,rope tow,,,,\n'
    read = LiftFiles().with_([("s.csv", sheet + b"loading time,3,s,0.5,,\npersons per carrier,1,person,,,\n")])
    shown = shown_brief(read)._repr_html_()
    assert "<script" not in shown
    assert "<script" not in html.unescape(re.search(r'srcdoc="([^"]*)"', shown)[1])


def test_the_reading_to_take_next_and_what_other_files_know_better():
    lines = next_reading(demo()).lines
    assert lines[0] == brief_of(demo()).facts.take_next
    assert lines[0].startswith("Take the line speed again:")
    assert lines[1].startswith("But you have it already: sheet, track and laps agree on 2.807 ± 0.020 m/s.")
    assert lines[2].startswith("Take the spacing again:")
    assert lines[3].startswith("For the limit of motor, close behind: Take the rider mass again")
    assert lines[3].endswith("It is only assumed so far.")
    alone = demo().without("track").without("laps")
    assert len(next_reading(alone).lines) == 2, "nothing knows it better"


def test_without_a_sheet_there_is_no_brief():
    for make in (brief_of, shown_brief, next_reading, what_would_help):
        refuses(
            lambda make=make: make(LiftFiles()),
            "The sheet of the lift did not come. It would give the limits, which of them governs, and the page for the "
            "wall.",
        )


@pytest.mark.parametrize("sort", ["count", "track", "second"])
def test_missing_files_leave_the_rest_of_the_brief_as_it_is(sort):
    whole, less = brief_of(demo()).facts, brief_of(demo().without(sort)).facts
    assert less.at_most == whole.at_most
    gone = {"count": "counted", "track": "track", "second": "beside"}[sort]
    assert getattr(whole, gone)
    assert not getattr(less, gone)
