"""The panel of a day with its losses: the numbers of the tables, the same each time, and who has no such day."""

import pytest
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.panels import LoadingDayPanel
from liftcalc.simulation.day_words import losses_table


def test_panel_and_table_say_the_same_and_the_same_each_time():
    panel = LoadingDayPanel(invented_day=Q(14, ""))
    rows = losses_table(panel.day, seed=14, days=1).rows
    assert panel.results["simulated"] == f"{rows[-2][1]} (one day)"
    assert LoadingDayPanel(invented_day=Q(14, "")).words() == panel.words()
    assert LoadingDayPanel(invented_day=Q(15, "")).words() != panel.words()


def test_a_slider_moves_the_mean_of_all_classes():
    day = LoadingDayPanel(misses=Q(10, "percent")).day
    assert sum(each.share * each.misses for each in day.classes) == pytest.approx(0.10)
    calm = LoadingDayPanel(misses=Q(0, "percent"), falls=Q(0, "percent"), stops_an_hour=Q(0, ""))
    assert calm.results["availability"] == "100.0 % of the day"
    assert calm.steps["uneven starts"] == calm.steps["misses"] > calm.steps["slow-downs"]


def test_the_setting_before_a_move_stays_dotted_until_the_next():
    panel, now = LoadingDayPanel(invented_day=Q(14, "")), [0.0]
    panel.picture._clock, panel.picture._moved = lambda: now[0], 0.0
    begin, words = panel.picture._outlines, "dotted: the setting before"
    now[0] = 5.0
    panel.refresh()
    assert words not in panel.picture.html.value, "nothing has moved"
    for step, stop_time in enumerate((40, 50, 60)):
        now[0] = 10 + 0.3 * step
        panel.state.set("stop_time", Q(stop_time, "s"), panel)
        assert words in panel.picture.html.value
        assert begin in panel.picture.html.value, "steps that follow at once are one move"
    now[0] = 20.0
    at_60 = panel.picture._outlines
    panel.state.set("stop_time", Q(70, "s"), panel)
    assert at_60 in panel.picture.html.value
    assert begin not in panel.picture.html.value
    panel.state.use_units("us" if panel.state.system == "metric" else "metric")
    assert words not in panel.picture.html.value, "other axes"


REFUSED = [
    (lambda: LoadingDayPanel(*demo_line("Lantern Double")),
     "LoadingDayPanel: Lantern Double is a fixed chair, whose carriers come by a clock of their own. These sliders are "
     "of lifts that riders grab, or step on, at any time."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
