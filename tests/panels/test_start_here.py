"""The panel of 00."""

import pytest
from places import DATA
from reading_panels import status

from liftcalc import Q
from liftcalc.lifts.sheet import read_sheet
from liftcalc.panels import StartPanel, notebook_state


def test_the_start_panel_leaves_out_what_was_not_read(tmp_path):
    path = tmp_path / "short.csv"
    path.write_text(
        "quantity,value,unit,plus_minus,method,note\nline speed,3,m/s,,,\nspacing,6,m,,,\n"
        "persons per carrier,1,person,,,\n"
    )
    panel = StartPanel(read_sheet(path))
    assert panel.control_names == ("line_speed", "spacing")
    assert str(panel.result) == "1,800 pph (ideal)"
    assert "ride time" not in panel.describe()
    assert "vertical" not in panel.describe()
    assert "Left out: riders on the line and ride time (ridden length not read); vertical transport" in status(panel)


def test_the_start_panel_computes_with_the_pick_up_of_the_sheet_and_says_so():
    panel = StartPanel(read_sheet(DATA / "hill/1_penny_rope.csv"))
    length, speed = (150 + 492 * 0.3048) / 2, (3.4 + 7.6 * 0.44704 + 11.16 * 0.3048) / 3
    assert panel.results["ride time"].m_as("s") == pytest.approx(length / speed + speed / 3, rel=1e-9)
    assert panel.text(panel.results["riders on the line, on average"]) == "22.6 persons"
    assert "Ride time and riders: a start from rest at 1.50 m/s² (assumed)." in status(panel)
    tow = {"line_speed": Q(3.4, "m/s"), "spacing": Q(6.8, "m"), "ridden_length": Q(150, "m")}
    demo = StartPanel(name="no sheet", **tow)
    assert demo.results["ride time"].m_as("s") == pytest.approx(150 / 3.4 + 3.4 / 3, rel=1e-9)
    notebook_state().use_units("us")
    assert "a start from rest at 4.9 ft/s² (assumed)" in status(panel)


def test_without_a_pick_up_the_start_panel_says_what_it_takes(tmp_path):
    path = tmp_path / "short.csv"
    rows = (
        "line speed,3,m/s,,,\nspacing,6,m,,,\npersons per carrier,1,person,,,\nridden length,150,m,,,\n"
        "vertical rise,30,m,,,\n"
    )
    path.write_text("quantity,value,unit,plus_minus,method,note\n" + rows)
    panel = StartPanel(read_sheet(path))
    assert panel.text(panel.results["ride time"]) == "50.0 s"
    said = "Ride time and riders: at the speed of the rope from the first metre (pick-up acceleration not read)"
    assert f"{said}; a start from rest takes longer." in status(panel)
    path.write_text(path.read_text() + "pick-up acceleration,1,m/s2,,video of ten riders,\n")
    panel = StartPanel(read_sheet(path))
    assert panel.text(panel.results["ride time"]) == "51.5 s"
    assert "a start from rest at 1.00 m/s² (video of ten riders)." in status(panel)
