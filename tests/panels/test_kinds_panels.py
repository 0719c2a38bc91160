"""The panel of 07: every kind of lift."""

import numpy as np
import pytest
from places import DATA

from liftcalc import Q, show
from liftcalc.lifts.hill import read_hill
from liftcalc.lifts.kinds import KINDS
from liftcalc.panels import KindPanel, notebook_state


@pytest.fixture
def kinds():
    """Return the panel of every kind."""
    return KindPanel(read_hill(DATA / "kinds"))


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_has_an_example_and_its_button(kinds, kind):
    button = next(widget for widget in kinds.children[-2].children if widget.description == kind)
    button.click()
    assert kinds.kind is KINDS[kind]
    assert kinds.result.value.m_as("pph") == pytest.approx(kinds.example.capacity.value.m_as("pph"), rel=1e-9)
    assert KINDS[kind].hazards in kinds.note()
    assert f"riders are {KINDS[kind].on_a_stop}" in kinds.note()
    chart = kinds.picture.chart
    seconds, persons = chart.ends[0], kinds.given["seats"].m_as("person")
    drawn = len(chart.persons.get_xdata())
    carriers = np.ceil(seconds / kinds.given["interval"].m_as("s") - 1e-9)
    assert drawn == carriers * np.ceil(persons / kinds._persons_a_dot())
    if KINDS[kind].reversible:
        assert kinds.results["spacing"] == "two cabins, to and fro"
        assert len(chart.carriers.get_xdata()) == 0
    else:
        gaps = np.diff(chart.carriers.get_xdata()) * chart.ends[1]
        assert gaps == pytest.approx(kinds.results["spacing"].m_as("m"))


KIND_SETTINGS = [  # kind, line speed in m/s, interval in s, persons; own arithmetic below
    ("rope tow", 3.0, 2.5, 1), ("platter lift", 2.5, 8.0, 1), ("conveyor", 0.5, 6.0, 1), ("fixed chair", 2.0, 7.5, 2),
    ("detachable chair", 5.0, 8.0, 4), ("gondola", 6.0, 15.0, 8), ("reversible tram", 8.0, 300.0, 50),
]  # fmt: skip
COMES = {
    "rope tow": "No carrier comes:", "conveyor": "No carrier comes:", "reversible tram": "The cabin stands while",
    "platter lift": "The carrier comes at line speed.", "fixed chair": "The carrier comes at line speed.",
    "detachable chair": "The carrier comes at station speed.", "gondola": "The carrier comes at station speed.",
}  # fmt: skip


@pytest.mark.parametrize(("kind", "speed", "interval", "persons"), KIND_SETTINGS, ids=[row[0] for row in KIND_SETTINGS])
def test_every_number_of_the_panel_of_kinds_is_own_arithmetic(kinds, kind, speed, interval, persons):
    kinds.choose(kind)
    given = {"line_speed": Q(speed, "m/s"), "interval": Q(interval, "s"), "seats": Q(persons, "person")}
    kinds.state.set_all(given, kinds)
    tram, pph = kind == "reversible tram", 3600 / interval * persons
    shown = {name: kinds.text(value) for name, value in kinds.results.items()}
    assert shown["people an hour"].startswith(f"{pph:,.0f} pph (ideal")
    assert shown["carriers an hour"] == f"{3600 / interval:,.0f}"
    assert shown["headway, person to person"] == f"{interval / persons:.1f} s"
    assert shown["spacing"] == ("two cabins, to and fro" if tram else f"{speed * interval:.1f} m")
    assert shown["kind"] == kind
    assert kinds.note().startswith(COMES[kind])
    chart = kinds.picture.chart
    people = f"{persons} person{'' if persons == 1 else 's'}"
    assert chart.title.get_text() == f"{people} every {interval:.1f} s: {pph:,.0f} pph"
    assert chart.ends == ((1800.0, 3000.0) if tram else (60.0, 300.0)), "seconds and metres of the two rulers"
    notebook_state().use_units("us")
    feet = show(Q(speed * interval / 0.3048, "ft"))
    assert kinds.text(kinds.results["spacing"]) == ("two cabins, to and fro" if tram else feet)
    assert chart.ends == ((1800.0, 10000.0) if tram else (60.0, 1000.0)), "feet on the lower ruler"
    notebook_state().use_units("metric")


def test_speed_moves_the_rope_and_not_the_loading_point(kinds):
    chart, before = kinds.picture.chart, kinds.result.value
    times = chart.persons.get_xdata().copy()
    kinds.state.set("line_speed", Q(1.1, "m/s"), kinds)
    assert kinds.result.value == before
    assert chart.persons.get_xdata() == pytest.approx(times)
    assert kinds.results["spacing"].m_as("m") == pytest.approx(7.7)
