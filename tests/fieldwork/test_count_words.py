"""A count in words: two rates, each with its doubt, one of them held against a limit."""

import pytest
from messages import refuses, table_of_messages
from places import DATA

from liftcalc import Capacity, Q
from liftcalc.fieldwork.count_words import count_table, how_long_to_count
from liftcalc.fieldwork.minute_counts import SPREAD_WITH_STOPS, counts_from_bytes, read_counts

GOVERNED = Capacity(Q(1200, "pph"), "governed")
HEADING = "from,minutes,persons,stop_seconds,people_waited,note\n"


@pytest.fixture(scope="module")
def hour():
    """Return the invented hour of the demo tow, clean only when its rope is full again."""
    return read_counts(DATA / "days/penny_rope_count.csv").after_stops(Q(45.25, "s"))


def test_both_rates_stand_with_their_doubt(hour):
    clock, clean, best = count_table(hour, GOVERNED).rows
    persons = sum(row.persons for row in hour.rows)
    assert clock[1] == f"{60 * persons / len(hour.rows):,.0f} pph"
    assert clock[3] == f"{1.96 * 1.75 / persons**0.5 * 60 * persons / len(hour.rows):.0f} pph"
    assert clock[4] == "stops and gaps are in it: held against no limit"
    assert clean[4] == "below 1,200 pph (governed)"
    assert (best[1], best[2]) == ("1,320 pph", "44 in 2 min")


def test_a_minute_is_clean_only_when_the_rope_is_full_again(hour):
    stopped = {row.begin for row in hour.rows if row.stop_seconds}
    clean = {row.begin for row in hour.clean}
    every = {row.begin for row in hour.rows}
    assert clean == {begin for begin in every if begin not in stopped and begin - 1 not in stopped}
    assert len(hour.after_stops(Q(0, "s")).clean) == len(every - stopped) > len(clean)
    assert hour.rate(clean=True).value > hour.after_stops(Q(0, "s")).rate(clean=True).value


def test_the_verdict_by_the_clock_takes_the_doubt_of_riders_in_lumps(hour):
    verdict = hour.against(GOVERNED)
    persons = sum(row.persons for row in hour.rows)
    assert verdict.plus_minus[0].m_as("pph") == pytest.approx(
        1.96 * SPREAD_WITH_STOPS.m_as("") / persons**0.5 * hour.rate().value.m_as("pph"), rel=1e-3
    )


def test_no_clean_row_is_said():
    table = count_table(counts_from_bytes("c.csv", (HEADING + "10:00,1,9,20,yes,\n").encode()), GOVERNED)
    assert table.rows[1] == ("clean minutes", "none", "", "", "count on: a stop touches every row")
    assert len(table.rows) == 2


@pytest.mark.parametrize(
    ("waited", "words"),
    [
        ("yes", "People waited in every row"),
        ("", "is not said"),
        ("no", "Nobody waited in any row: the count is of who came, and not of the lift."),
    ],
)
def test_how_long_and_who_waited(waited, words):
    rows = "".join(f"10:{minute:02d},1,{18 + minute % 3},0,{waited},\n" for minute in range(12))
    told = how_long_to_count(counts_from_bytes("c.csv", (HEADING + rows).encode())).lines
    assert words in told[-1]
    spread = (8 / 11 / 19) ** 0.5  # 12 minutes of 18, 19, 20: the root of variance over mean
    assert f"{(1.96 * spread / 0.05) ** 2 / 19:.1f} min of them" in told[0]
    assert f"{(1.96 * 1.75 / 0.05) ** 2 / 19 / 60:.1f} h" in told[1]


REFUSED = [
    (lambda: how_long_to_count(counts_from_bytes("c.csv", (HEADING + "10:00,1,9,0,yes,\n").encode())),
     "c.csv: fewer than ten clean single minutes, or no spread between them. Count on, a row a minute."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)


def test_a_count_without_a_stop_is_of_its_minutes_and_one_without_a_column_of_stops_is_not_known_to_be_clean():
    calm = counts_from_bytes("calm.csv", b"from,minutes,persons,stop_seconds\n10:00,20,400,0\n10:20,20,380,0\n")
    unknown = counts_from_bytes("unknown.csv", b"from,minutes,persons\n10:00,20,400\n10:20,20,380\n")
    governed = Capacity(Q(1200, "pph"), "governed")
    assert count_table(calm, governed).rows[0][-1] == "no stop fell into it: of these minutes, and not of a day"
    said = count_table(unknown, governed).rows[0][-1]
    assert said == "no stop was written down: whether minutes are clean is not known"


def test_nobody_waited_and_more_than_the_ideal():
    rows = "\n".join(f"10:{minute:02},1,{25 + minute % 2},0,{{}}" for minute in range(20))
    heading = "from,minutes,persons,stop_seconds,people_waited\n"
    governed, ideal = Capacity(Q(1000, "pph"), "governed"), Capacity(Q(1247, "pph"), "ideal")
    nobody = counts_from_bytes("nobody.csv", (heading + rows.replace("{}", "no")).encode())
    verdict = count_table(nobody, governed, ideal=ideal).rows[1][-1]
    assert verdict == "nobody waited: a count of who came, held against no limit"
    waited = counts_from_bytes("waited.csv", (heading + rows.replace("{}", "yes")).encode())
    verdict = count_table(waited, governed, ideal=ideal).rows[1][-1]
    assert verdict == "above 1,000 pph (governed), and above 1,247 pph (ideal): look at speed, spacing and count"
