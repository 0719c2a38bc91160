"""The panels of waiting: sums by hand, both chance formulas, Little's law, and no end of a slider that fails."""

from itertools import product

import pytest

from liftcalc import Q
from liftcalc.panels import LapsPanel, LiftLinePanel

BUSY, QUIET = {"rush_arrivals": Q(1800, "pph")}, {"rush_arrivals": Q(900, "pph")}


def test_the_line_by_hand():
    # 600 come in 20 min and 400 get on; the 200 left need 20 min at 1,200 - 600. Waits are a triangle of 40 min by 200,
    # over the 1,000 who come in the hour
    found = LiftLinePanel(**BUSY).results
    assert found["longest line"].m_as("person") == pytest.approx(1800 / 3 - 1200 / 3)
    assert found["line clears at"] == "40.0 min"
    assert found["mean wait"].m_as("minute") == pytest.approx(40 * 200 / 2 / (1800 / 3 + 600 * 2 / 3))
    assert found["longest wait"].m_as("minute") == pytest.approx(200 / 1200 * 60)


def test_where_no_line_stands_chance_still_makes_people_wait():
    panel = LiftLinePanel(**QUIET)
    assert panel.results["longest line"].m_as("person") == 0
    # equal loading times: rho s / (2 (1 - rho)); exponential ones: twice that; rho 0.75, s 3 s
    said = f"{0.75 * 3 / (2 * 0.25):.1f} s", f"{0.75 * 3 / 0.25:.1f} s"
    assert all(each in str(panel.results["mean wait by chance alone"]) for each in said)
    full = LiftLinePanel(rush_arrivals=Q(1200, "pph"))
    assert " s" not in str(full.results["mean wait by chance alone"]), "at full load no mean wait is there"


@pytest.mark.parametrize("crowd", [5, 41, 70, 200])
def test_littles_law_holds_in_the_laps(crowd):
    panel = LapsPanel(crowd=Q(crowd, "person"))
    found, rate = panel.results, panel.results["people an hour"].m_as("person/s")
    assert rate * found["one lap in all"].m_as("s") == pytest.approx(crowd, rel=1e-9)
    in_line = found["in line, on average"].m_as("person")
    assert rate * found["a lap: in line"].m_as("s") == pytest.approx(in_line, abs=1e-9)
    assert found["laps of each person"].m_as("1/hour") == pytest.approx(3600 * rate / crowd)


def test_the_rate_is_that_of_mean_value_analysis_done_by_hand():
    panel = LapsPanel(crowd=Q(40, "person"))
    away = sum(panel.given[name].m_as("s") for name in ("ride_time", "descent_time", "rest_time"))
    at_the_lift = rate = 0.0
    for crowd in range(1, 41):  # who comes meets the line of a crowd smaller by one; a start takes 3 s
        rate = crowd / (away + 3 * (1 + at_the_lift))
        at_the_lift = rate * 3 * (1 + at_the_lift)
    assert panel.results["people an hour"].m_as("person/s") == pytest.approx(rate, rel=1e-9)
    assert rate < min(1 / 3, 40 / (away + 3))


def test_a_rest_is_taken_out_of_the_wait_while_a_line_stands():
    laps = {"crowd": Q(120, "person"), "ride_time": Q(45, "s"), "descent_time": Q(75, "s")}
    found = [LapsPanel(**laps, rest_time=Q(rest, "s")).results for rest in (0, 60)]
    waits = [each["a lap: in line"].m_as("s") for each in found]
    assert waits[0] - waits[1] == pytest.approx(60, abs=1e-6)
    assert waits[1] == pytest.approx(120 * 3 - 183, abs=1e-6)  # ten laps an hour: 360 s, and 183 s of them elsewhere
    assert [each["people an hour"].m_as("pph") for each in found] == pytest.approx([1200, 1200])


@pytest.mark.parametrize("kind", [LiftLinePanel, LapsPanel])
def test_no_end_of_a_slider_fails(kind):
    panel = kind()
    ends = {name: [Q(each, panel.control(name).metric.unit) for each in
                   (panel.control(name).metric.low, panel.control(name).metric.high)]
            for name in panel.control_names}  # fmt: skip
    for settings in product(*ends.values()):
        found = panel.compute(dict(zip(ends, settings, strict=True)))
        assert all(str(value) and "nan" not in str(value) for value in found.values()), settings
