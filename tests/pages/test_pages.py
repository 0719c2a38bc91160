"""What pages, formulas and exercises say of carriers that nobody may add, take off or bring closer on paper."""

import re
from pathlib import Path

import pytest

from liftcalc import capacity_with_carriers_out, least_station_interval
from liftcalc.exercises import BANK, Posed

PAGE = (Path(__file__).resolve().parents[2] / "notebooks/sources/07_every_kind_of_lift.py").read_text(encoding="utf-8")


def section(heading):
    """Return one section of the page."""
    return PAGE.split(f"# ## {heading}\n", 1)[1].split("\n# ## ", 1)[0]


def test_a_station_interval_is_a_packing_figure_wherever_it_is_told():
    told = [section("The interval is what people feel"), section("In short"), least_station_interval.__doc__]
    posed = Posed(BANK["7.2"])
    told.append(" ".join(posed.exercise.steps(posed.numbers)))
    for words in told:
        assert "packing" in words
        assert "shortest interval is set" not in words
    for words in (told[0], told[2], told[3]):
        floors = ("oarding", "brak", "load on rope and towers", "permit", "floors of their own")
        assert [floor for floor in floors if floor not in " ".join(words.split())] == []


def test_running_with_places_empty_needs_leave():
    told = [section("Carriers out of service"), capacity_with_carriers_out.__doc__]
    posed = Posed(BANK["7.4"])
    told.append(" ".join(posed.exercise.steps(posed.numbers)))
    for words in told:
        assert [who for who in ("operator", "maker's manual", "authority") if who not in words] == []


def test_the_operator_has_the_plan_for_bringing_people_down():
    posed = Posed(BANK["7.7"])
    right = next(option for option in posed.exercise.options if option.mistake is None)
    for words in (
        right.says,
        " ".join(posed.exercise.steps(posed.numbers)),
        section("The lifts of the hill, side by side"),
    ):
        assert re.search(r"operator('s evacuation plan| has a plan)|plan to bring those down is the operator's", words)


@pytest.mark.parametrize("source", ["own arithmetic: two halves of a motion at constant acceleration"])
def test_the_page_gives_a_tram_its_start_and_its_stop(source):
    told = section("To and fro")
    assert "ride_time_rest_to_rest(length" in told
    ride = 2 * 16 + (800 - 2 * 64) / 8  # 64 m and 16 s for the start, as much for the stop, the rest at full speed
    assert f"= {ride:.0f} s." in told
    assert f"every {ride + 60:.0f} s: 3,600 s × 40 ÷ {ride + 60:.0f} s = {3600 * 40 / (ride + 60):.0f} pph" in told
