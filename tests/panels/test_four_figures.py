"""Pictures of a day: four figures, a count minute by minute, and a line with one thing disturbed."""

import re

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q, show
from liftcalc.lifts.demo_hill import DATA
from liftcalc.panels import CountedMinutes, DisturbedLine, FourFigures
from liftcalc.panels.disturbance import HALT, MISS, NOTHING
from liftcalc.simulation.day_files import read_day_files
from liftcalc.simulation.disturbed_line import MOMENT, full_line, with_a_miss, with_a_stop

FILES = (DATA / "hill/1_penny_rope.csv", DATA / "days/penny_rope_classes.csv", DATA / "days/penny_rope_day.csv")
COUNT = DATA / "days/penny_rope_count.csv"
READ = read_day_files(*FILES, COUNT)
UNCOUNTED = read_day_files(*FILES)


def test_four_figures_say_in_the_picture_what_the_table_says():
    four = FourFigures(READ)
    texts = re.findall(r">([0-9,]+ pph)</text>", four.picture.html.value)
    assert texts == [row[1] for row in four.table.rows]
    assert show(four.simulated) == texts[2]
    assert 'alt="Four figures of Penny Rope' in four.still()
    four.show_guess(Q(900, "pph"))
    assert "your guess" in four.picture.html.value


def test_a_day_without_a_count_has_three_figures():
    four = FourFigures(UNCOUNTED)
    assert four.table.rows[-1] == ("counted", "not read", "", "")
    assert ">not read</text>" in four.picture.html.value


def test_a_count_is_drawn_row_by_row():
    counted = CountedMinutes(READ)
    bars = [patch for patch in counted.picture.chart.ax.patches if patch.get_width() < 1]
    assert [round(bar.get_height()) for bar in bars] == [row.persons for row in READ.counts.rows]
    dark = [bar.get_alpha() == 1.0 for bar in bars]
    assert sum(dark) == len(READ.counts.clean)
    assert counted.words() == str(counted.table)


LINE = full_line(READ.day, 2026)


def test_a_missed_grab_leaves_one_hole_that_travels_up_and_costs_one():
    missed = with_a_miss(LINE)
    (hole,) = set(LINE.started) - set(missed.started)
    assert hole >= MOMENT
    arrives = hole + LINE.ride_time
    assert LINE.counted(arrives - 0.01) == missed.counted(arrives - 0.01), "until the hole is at the top"
    assert LINE.counted(arrives) - missed.counted(arrives) == LINE.counted() - missed.counted() == 1


def test_a_stop_keeps_starts_back_and_drops_who_is_on_a_rope():
    stopped = with_a_stop(LINE, 30.0)
    assert stopped.dropped.sum() == np.count_nonzero(
        (LINE.started <= MOMENT) & (LINE.started > MOMENT - LINE.ride_time)
    )
    after = stopped.top[np.isfinite(stopped.top) & (stopped.top > MOMENT)]
    assert after.min() >= MOMENT + 30 + LINE.ride_time, "a whole ride until somebody is at the top again"
    assert stopped.run(MOMENT + 10) == MOMENT
    assert stopped.run(100.0) == 70.0


def test_where_riders_stay_on_a_stop_costs_the_stop_alone():
    line = full_line(READ.day, 7)
    stays = type(line)(line.started, line.ride_time, line.seconds, line.headway, empties=False)
    stopped = with_a_stop(stays, 30.0)
    assert not stopped.dropped.any()
    moved = stays.top > MOMENT
    assert np.allclose(stopped.top[moved], stays.top[moved] + 30)


def test_the_picture_says_and_draws_where_the_line_is():
    now = [0.0]
    disturbed = DisturbedLine(READ, clock=lambda: now[0])
    assert disturbed.choice.value == MISS
    disturbed._step()
    assert disturbed.time == pytest.approx(LINE.headway)
    assert "no fewer so far" in disturbed._html.value
    disturbed._go_to(1e9)
    assert disturbed.status() == f"In 2.0 min: {LINE.counted() - 1} counted at the top, {LINE.counted()} without " + (
        "a missed grab: 1 fewer."
    )
    disturbed.choice.value = HALT
    assert disturbed.time == 0
    disturbed._switch()
    now[0] = 5.0
    assert disturbed.running
    assert "--rope:running" in disturbed._html.value
    disturbed._switch()
    assert disturbed.time == 20.0, "four times as fast as on the hill"
    assert "--rope:paused" in disturbed._html.value
    dropped = int(with_a_stop(LINE, 30.0).dropped.sum())
    assert f"the lift stands for 30 s: {dropped} let go, clear the track and load again" in disturbed._html.value
    disturbed.choice.value = NOTHING
    assert "dotted" not in disturbed._html.value
    assert DisturbedLine(READ).words() == disturbed.words(), "the same each time"


REFUSED = [
    (lambda: CountedMinutes(UNCOUNTED), "No count of Penny Rope came. Count at the top, a row a minute, and bring it."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
