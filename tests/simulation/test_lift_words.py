"""What the files of one lift say together, by the same functions as everywhere; and less where files are missing."""

import functools
import math

import pytest
from messages import refuses
from places import DATA

from liftcalc import Q
from liftcalc.lifts.governing import governing
from liftcalc.lifts.hill import read_hill
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.lifts.sheet import read_sheet
from liftcalc.lifts.sheet_limits import sheet_limits
from liftcalc.simulation import lift_words as words
from liftcalc.simulation.lift_files import SORTS, LiftFiles, read_lift_files
from liftcalc.units import PlainError

OWN = DATA / "own_lift"


@functools.cache
def demo():
    return read_lift_files(OWN)


def without(*sorts):
    """Return the demo without some of its files."""
    return functools.reduce(LiftFiles.without, sorts, demo())


def only(*sorts):
    """Return the demo with some of its files alone."""
    return without(*(sort for sort in SORTS if sort not in sorts))


def test_the_untidy_sheet_tells_the_same_lift_as_that_of_the_hill():
    untidy, hill = words.limits(demo()), read_hill(DATA / "hill")
    tidy = governing(limits_of(*hill.line("Long Platter")))
    assert untidy.governs.limit.name == tidy.limit.name == "spacing"
    of_the_hill = {limit.name: limit.capacity.m_as("pph") for limit in tidy.in_order}
    for limit in untidy.governs.in_order:
        assert limit.capacity.m_as("pph") == pytest.approx(of_the_hill[limit.name], rel=0.002)
    assert [record.name for record in untidy.governs.left_out] == ["traction"], "nobody knew the slack tension"
    assert repr(untidy) == repr(sheet_limits(read_sheet(OWN / "long_platter_sheet.csv")))


def test_the_story_of_the_demo():
    said = words.comes_to(demo()).lines
    assert said[0] == "Spacing governs, in 82 of 100 draws within the doubts: at most 514 pph (governed)."
    assert said[1] == "Close behind: motor, 39 pph above it, and the lower one in 18 of 100 draws."
    assert said[2].startswith("The line speed: sheet, track and laps agree, 2.8")
    assert said[3].endswith("do not agree, and the map line is the odd one.")
    assert said[4] == "Counted: 463 pph in clean minutes, 444 pph (counted) by the clock."
    assert len(said) == 6, "nothing is missing"


def test_what_asks_for_a_second_look_is_shown():
    said = "\n".join(words.worth_a_look(demo()).lines)
    for part in ("head count: read 17", "hourly capacity: read 600", "semicolons", "from 10:58 to 11:00", "lap 3",
                 "lap 9 has no time"):  # fmt: skip
        assert part in said
    assert words.worth_a_look(only("riders")).lines == ("Nothing in these files asks for a second look.",)


def test_three_ways_to_the_line_speed_and_what_each_needs():
    found = words.speeds(demo())
    assert [each.method for each in found.methods] == ["sheet", "track", "laps"]
    # by hand: the mean of the laps without the odd one, from rest at 1.5 m/s2: v = a (T - sqrt(T^2 - 2 L / a))
    mean = (142.9 + 142.3 + 144.3 + 145.0 + 143.9 + 143.2 + 142.9) / 7
    by_hand = 1.5 * (mean - math.sqrt(mean**2 - 2 * 400.25 / 1.5))
    assert found.methods[2].value.m_as("m/s") == pytest.approx(by_hand, rel=1e-9)
    assert "Left out of the laps for its note: lap 3." in found.lines
    assert found.combined.agrees
    alone = words.speeds(only("sheet"))
    refuses(
        lambda: alone.combined,
        "One reading of the line speed alone, by the sheet: nothing is there to hold it against. No track (GPX) came. "
        "It would give the line speed once more, without a mark on the rope. No lap times came. It would give the ride "
        "time, and the line speed once more.",
    )
    assert words.speeds(without("sheet")).lines[0].startswith("The sheet of the lift did not come.")


def test_a_map_line_from_sheave_to_sheave_is_another_length_than_the_ride():
    found = words.lengths(demo())
    assert [each.method for each in found.methods] == ["sheet", "track", "map line"]
    assert not found.combined.agrees
    assert found.combined.odd_one == "map line"
    assert any("Drawn from sheave to sheave it is another length" in line for line in found.lines)
    assert found.methods[2].value.m_as("m") == pytest.approx(math.hypot(410.0, 78.0), abs=0.5)


def chair_with(kind, more=""):
    """Return the files of a lift of some kind, with laps."""
    sheet = (
        f"quantity,value,unit,plus_minus,method,note\nkind,{kind},,,,\nline speed,2,m/s,0.1,,\n"
        f"ridden length,400,m,2,,\n{more}"
    )
    return LiftFiles().with_([("s.csv", sheet.encode()), ("l.csv", b"lap,seconds,note\n1,200,\n2,201,\n3,199,\n")])


KINDS = [
    ("fixed chair", 2, ()),
    ("gondola", 1, ("On a gondola the ride has its stations in it: laps give no line speed.",)),
    ("T-bar lift", 1, ("Laps give no line speed without the pick-up acceleration: riders start from rest.",)),
]


@pytest.mark.parametrize(("kind", "ways", "said"), KINDS, ids=[kind for kind, *_ in KINDS])
def test_laps_of_other_kinds(kind, ways, said):
    found = words.speeds(chair_with(kind))
    assert len(found.methods) == ways
    assert found.lines[:-1] == said
    if ways == 2:
        assert found.methods[1].value.m_as("m/s") == pytest.approx(2.0)


def test_like_with_like():
    rows = {row[0]: row[1:] for row in words.like_with_like(demo()).table.rows}
    assert rows["ideal"] == ("514 pph", "1,800 pph", "0.29 to 1")
    assert rows["governed"][:2] == ("514 pph", "1,200 pph")
    assert rows["simulated"][1:] == ("not known", "not to be compared")
    assert rows["counted"][:2] == ("444 pph", "990 pph")


# what is there, and of each part of the page whether it can be shown
PARTS = {
    "limits": words.limits,
    "at most": words.at_most,
    "speeds": lambda read: words.speeds(read).combined,
    "lengths": lambda read: words.lengths(read).combined,
    "day": words.simulated,
    "count": words.how_to_count,
    "second": words.like_with_like,
}
SHRINKS = [
    (("sheet",), {"limits", "at most"}),
    (("count",), {"count"}),
    (("sheet", "count"), {"limits", "at most", "count"}),
    (("track", "laps", "map line"), set()),
    (("sheet", "track"), {"limits", "at most", "speeds", "lengths"}),
    (("sheet", "laps"), {"limits", "at most", "speeds"}),
    (("sheet", "map line"), {"limits", "at most", "lengths"}),
    (("sheet", "riders"), {"limits", "at most"}),
    (("sheet", "riders", "day"), {"limits", "at most", "day"}),
    (("sheet", "second"), {"limits", "at most", "second"}),
    (("riders", "day", "second"), set()),
    ((), set()),
]


@pytest.mark.parametrize(("sorts", "shown"), SHRINKS, ids=[" ".join(sorts) or "nothing" for sorts, _ in SHRINKS])
def test_missing_parts_shrink_the_result_and_name_what_they_would_give(sorts, shown):
    read = only(*sorts)
    for part, make in PARTS.items():
        if part in shown:
            make(read)
        else:
            with pytest.raises(PlainError, match=r"would give|nothing is there|No reading of"):
                make(read)
    missing = [sort for sort in SORTS if sort not in sorts]
    assert [row[1] for row in words.what_came(read).rows].count("not there") == len(missing)
    said, short = repr(words.what_came(read)), "\n".join(words.comes_to(read).lines)
    for sort in missing:
        assert f"It would give {SORTS[sort].gives}." in said
        assert SORTS[sort].what in short


COUNTS = [
    ("from,minutes,persons\n10:00,10,96\n", "no stop was written down; whether people waited is not said."),
    ("from,minutes,persons,stop_seconds,people_waited\n10:00,10,96,0,no\n", "no stop fell into it; nobody waited, so "
     "that is who came."),
    ("from,minutes,persons,stop_seconds,people_waited\n10:00,10,96,9,yes\n", "a stop touches every row."),
]  # fmt: skip


@pytest.mark.parametrize(("text", "said"), COUNTS, ids=[said for _, said in COUNTS])
def test_what_a_count_of_another_kind_comes_to(text, said):
    read = LiftFiles().with_([("c.csv", text.encode())])
    assert words.comes_to(read).lines[0] == f"Counted: 576 pph (counted) by the clock; {said}"


def test_a_count_without_a_line_has_its_rates_all_the_same():
    found = words.how_to_count(only("count"))
    assert found.table.rows[1][1] == "463 pph"
    assert found.table.rows[1][4] == "no limit is known that it could be held against"
    short = LiftFiles().with_(
        [("s.csv", b"quantity,value,unit,plus_minus,method,note\nkind,rope tow,,,,\nloading time,6,s,0.5,,\n"
              b"persons per carrier,1,person,,,\n"),
         ("c.csv", (OWN / "long_platter_count.csv").read_bytes())]
    )  # fmt: skip
    assert words.how_to_count(short).table.rows[1][4] == "below 600 pph (governed)"
    assert words.at_most(short).value == Q(600, "pph")


def test_what_the_page_says_of_its_example_is_so():
    text = (DATA.parent / "notebooks/sources/13_your_lift.py").read_text(encoding="utf-8")
    by_sheet, _, by_map = (each.value for each in words.lengths(demo()).methods)
    late = ((by_map - by_sheet) / demo().line.line_speed).m_as("s")
    assert f"a ride time {late:.0f} s too long" in text
    clean, most = (each.value.m_as("pph") for each in (words.count_of(demo()).rate(clean=True), words.at_most(demo())))
    assert f"{clean:.0f} pph counted in clean minutes, below the {most:.0f} pph that spacing allows" in text
    assert round((1 - clean / most) * 10) == 1, "one platter in ten"
    assert demo().day.misloads == pytest.approx(0.07)
    ahead = words.limits(demo()).governs.ahead.m_as("pph")
    assert f"closer platters carry {ahead:.0f} pph more on paper" in text
