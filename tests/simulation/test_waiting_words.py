"""Waiting in words: the morning of the demo rope by hand, the chance of its riders, and a crowd that chooses."""

import math

import numpy as np
import pytest

from liftcalc import Capacity, Q
from liftcalc.fieldwork.arrivals import arrivals_from_bytes, read_arrivals
from liftcalc.fieldwork.minute_counts import read_counts
from liftcalc.lifts.demo_hill import DATA, demo_line
from liftcalc.simulation.day_tables import DayTables, read_day
from liftcalc.simulation.loading_day import RiderClass
from liftcalc.simulation.waiting_words import (
    chance_table,
    clock_table,
    crowd_on_lifts,
    line_of_arrivals,
    line_of_first_hour,
    loading_moments,
    morning_table,
    run_day_table,
)

ARRIVALS = read_arrivals(DATA / "days" / "penny_rope_arrivals.csv")
COUNTED, GOVERNED = Capacity(Q(1000, "pph"), "counted"), Capacity(Q(1200, "pph"), "governed")


def cells(table):
    """Return the cells of a table by the heading of their row."""
    return {row[0]: row[1:] for row in table.rows}


def test_the_first_hour_by_hand():
    found = line_of_first_hour(
        rush_arrivals=Q(1600, "pph"), rush_length=Q(15, "minute"), later_arrivals=Q(600, "pph"),
        hourly_capacity=Q(1000, "pph"),
    )  # fmt: skip
    assert found.longest_line.m_as("person") == pytest.approx(600 / 4)
    assert found.clears_at.m_as("minute") == pytest.approx(15 + 150 / 400 * 60)
    assert found.came[-1].m_as("person") == pytest.approx(400 + 450)


def test_the_morning_of_the_demo_rope_by_hand():
    # at 1,000: 480 - 333 at 9:20; 146.7 - 107 at 10:00; less 16.7 until the bus of 48, and gone after 71.3 min / 1.667;
    # 70 at 12:00, gone at 360 an hour; the class of 46 stands from 13:30 to 14:30, and goes at 280 an hour
    found = cells(morning_table(ARRIVALS, COUNTED, GOVERNED))
    rush = 480 - 1000 / 3
    at_ten = rush - 160 * 40 / 60
    with_bus = at_ten - 100 / 6 + 48
    gone = 10 + with_bus / 100 * 60
    assert found["longest line"] == (f"{rush:.0f} persons at 9:20", "80 persons at 9:20")
    assert found["a line stands"][0] == (
        f"9:00 to 10:{gone:.0f}, 11:00 to 12:{70 / 360 * 60:.0f}, 13:30 to 14:{30 + 46 / 280 * 60:.0f}"
    )
    waits = rush * 20 / 2 + (rush + at_ten) * 40 / 2 + (2 * at_ten - 100 / 6) * 10 / 2 + with_bus * (gone - 10) / 2
    waits += 70 * 60 / 2 + 70 * (70 / 360 * 60) / 2 + 46 * 60 + 46 * (46 / 280 * 60) / 2
    assert found["all waits together"][0] == f"{waits / 60:.1f} person-hours"
    assert found["mean wait of all"][0] == f"{waits / 5964:.1f} min"
    met = 480 + 560 + 150 + 48 + 900 * (gone - 10) / 60 + 1070 + 640 * 70 / 360 + 46 + 1000 + 720 * 46 / 280
    assert found["who met a line"][0] == f"{met:,.0f} persons, {100 * met / 5964:.0f} %"
    assert found["mean wait of those"][0] == f"{waits / met:.1f} min"
    assert found["longest wait"][0] == f"{rush / 1000 * 60:.1f} min"
    assert found["the last line is gone"] == ("14:40", "13:44")
    assert found["all waits together"][1] == "31.4 person-hours"


def test_people_waited_in_the_demo_count_while_the_arrivals_make_a_line():
    counted = read_counts(DATA / "days" / "penny_rope_count.csv")
    assert counted.waited == "yes"
    spells = line_of_arrivals(ARRIVALS, Q(1000, "pph")).spells
    minutes = [(row.begin - ARRIVALS.opens, row.end - ARRIVALS.opens) for row in counted.rows]
    assert any(start <= 60 * minutes[0][0] and 60 * minutes[-1][1] <= end for start, end in spells)


def test_a_morning_without_a_line_and_one_that_outlasts_its_table():
    quiet = arrivals_from_bytes("quiet.csv", b"from,minutes,persons\n9:00,60,600\n")
    found = cells(morning_table(quiet, COUNTED, Capacity(Q(500, "pph"), "counted")))
    assert [row[0] for row in found.values()] == [
        "no line", "never", "no line", "0.0 person-hours", "0.0 min", "0 persons, 0 %", "no line", "0.0 min",
    ]  # fmt: skip
    assert found["the last line is gone"][1] == "10:12, after the last row"
    assert found["who met a line"][1] == "600 persons, 100 %"


TOW, _ = demo_line("Penny Rope")
DAY = read_day(DATA / "days/penny_rope_classes.csv", DATA / "days/penny_rope_day.csv")


def test_the_chance_of_the_demo_rope_against_draws_of_its_riders():
    generator, draws = np.random.default_rng(11), 400_000
    first, second = loading_moments(TOW, DAY)
    times = []
    for each in DAY.classes:
        sigma = math.sqrt(math.log1p(each.variation**2))
        ready = generator.lognormal(math.log(each.readiness) - sigma**2 / 2, sigma, round(draws * each.share))
        times.append(np.maximum(ready, 6.8 / 3.4))
    times = np.concatenate(times)
    for moment, drawn in ((first.m_as("s"), times), (second.m_as("s**2"), times**2)):
        assert abs(moment - drawn.mean()) < 4 * drawn.std() / math.sqrt(drawn.size)


def test_a_class_that_never_differs_loads_by_its_readiness_or_the_floor():
    tables = DayTables((RiderClass("a", 0.5, 1.0, 0.0), RiderClass("b", 0.5, 4.0, 0.0)), {})
    (first, second), floor = loading_moments(TOW, tables), TOW.interval.m_as("s")
    assert floor == pytest.approx(2.0, abs=1e-4)
    assert (first.m_as("s"), second.m_as("s**2")) == pytest.approx(((floor + 4) / 2, (floor**2 + 16) / 2))


def test_own_engineering_figures_of_waiting():
    rows = chance_table(Q(900, "pph"), TOW, DAY).rows
    assert [row[1:] for row in rows] == [
        ("3.00 s", "4.5 s", "1.1"), ("3.06 s", "5.6 s", "1.4"), ("3.00 s", "9.0 s", "2.2"),
    ]  # fmt: skip
    rows = clock_table(Q(6, "s"), 0.75).rows
    assert rows == [
        ("1", "450 pph", "12.00 s", "3.0 s"), ("2", "900 pph", "6.94 s", "3.0 s"),
        ("4", "1,800 pph", "4.60 s", "3.0 s"),
    ]  # fmt: skip


def test_a_crowd_that_takes_the_shorter_wait():
    lifts = {"rope": (Q(3, "s"), Q(180, "s")), "platter": (Q(7, "s"), Q(300, "s"))}
    half, even = crowd_on_lifts(Q(120, "person"), lifts, [(0.5, 0.5), None]).rows
    # at half and half the platter is full, and the rope gets as many: 2 x 3600 / 7; all of the rest stands there
    assert half[3:] == ("1,029 pph", f"{7200 / 7 / 120:.1f}")
    away = 3600 / 7 / 3600 * (180 + 300) + 1
    assert half[2].startswith(f"{120 - away - 3 / 7 / (1 - 3 / 7):.0f} in line, ")
    assert even[0].endswith(", the shorter wait")
    assert even[1].split(", ")[1] == even[2].split(", ")[1] == "47 s"


def test_days_run_rider_by_rider_wait_as_the_fluid_says_where_nothing_happens():
    tow, _ = demo_line("Penny Rope")
    even = DayTables((RiderClass("all", 1.0, 3.6, 0.0),), {"hours": 8.0})  # one every 3.6 s: 1,000 an hour
    rows = cells(run_day_table(ARRIVALS, tow, even, days=6))
    fluid = line_of_arrivals(ARRIVALS, Q(1000, "pph"))
    longest, wait = float(rows["longest line"][0].split()[0]), float(rows["mean wait in line"][0].split()[0])
    # people still come by chance, which adds to a line, and takes some off its top: see the spread of the days
    assert longest == pytest.approx(fluid.longest_line.m_as("person"), rel=0.25)
    assert fluid.mean_wait.m_as("minute") <= wait <= 1.6 * fluid.mean_wait.m_as("minute")
    assert set(rows) == {"longest line", "mean wait in line"}
    assert rows == cells(run_day_table(ARRIVALS, tow, even, days=6)), "the same each time"


def test_who_gives_up_and_who_is_turned_away_have_their_rows():
    tow, _ = demo_line("Penny Rope")
    shy = DayTables((RiderClass("all", 1.0, 3.6, 0.0),), {"hours": 0.5, "most_in_line": 60.0})
    rows = cells(run_day_table(ARRIVALS, tow, shy, days=4))
    assert rows["longest line"][2] == "60 persons"
    assert float(rows["gave up"][0].split()[0]) > 50
    assert float(rows["turned away at closing"][0].split()[0]) > 0
    # a line of up to 60 for half an hour, one start every 3.6 s: nobody waits longer than 60 starts take
    assert float(rows["mean wait in line"][2].split()[0]) <= 60 * 3.6 / 60
