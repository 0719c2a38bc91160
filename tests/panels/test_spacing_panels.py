"""The panels of 02, but for the line view."""

import pytest
from reading_panels import status

from liftcalc import Q
from liftcalc.panels import MixPanel, StoppingPanel, UnloadPanel


def test_own_arithmetic_the_mix_of_02_and_the_mean_that_is_wrong():
    # half at 1.7 + 0.7 m, half at 0.9 + 0.7 m, at 3.4 m/s: 5,100 and 7,650 an hour
    panel = MixPanel(practical_gap=Q(0.7, "m"), child_length=Q(0.9, "m"), child_share=Q(50, "percent"))
    shown = {name: panel.text(value) for name, value in panel.results.items()}
    assert shown["mean spacing"] == "2.0 m"
    assert (shown["an adult's spacing"], shown["a child's spacing"]) == ("2.4 m", "1.6 m")
    assert shown["people an hour"].startswith("6,120 pph (packing")
    assert shown["mean of the two capacities: wrong"] == "6,375 pph"
    panel.state.set("child_share", Q(20, "percent"), panel)
    assert panel.text(panel.results["mean of the two capacities: wrong"]) == f"{0.8 * 5100 + 0.2 * 7650:,.0f} pph"
    assert panel.text(panel.results["mean spacing"]) == "2.2 m"


STOPS = [  # riders, brake [N], grade [%], after a stop gate, what riders do: own arithmetic
    (22, 0, 20, "4.2 m, empty 6.3 m", "riders who hold on slow the rope down"),
    (22, 538.63, 20, "3.9 m, empty 3.9 m", "riders make no difference to the rope"),
    (22, 2000, 20, "3.4 m, empty 2.6 m", "whoever holds on pushes it on"),
    (22, 0, 2, "7.8 m, empty 6.3 m", "whoever holds on pushes it on"),
]


@pytest.mark.parametrize(("riders", "brake", "grade", "gate", "sentence"), STOPS, ids=[case[3] for case in STOPS])
def test_the_stopping_panel_shows_the_empty_rope_and_the_full_one(riders, brake, grade, gate, sentence):
    panel = StoppingPanel(
        riders_on_rope=Q(riders, "person"),
        brake_force=Q(brake, "N"),
        grade=Q(grade, "percent"),
        line_speed=Q(3.4, "m/s"),
    )
    assert panel.results["rope, after a stop gate trips"] == gate
    assert gate.split()[0] in panel.picture.chart.title.get_text()
    assert sentence in status(panel)
    assert "A stop tried without riders proves nothing about a full line." in status(panel)
    even = "none: idle drag is above it" if grade == 2 else "539 N"
    assert panel.text(panel.results["brake at which riders make no difference"]) == even


def test_nobody_is_inside_the_stopping_distance_who_is_not_on_the_rope():
    panel = StoppingPanel(
        spacing=Q(2, "m"), line_speed=Q(3.4, "m/s"), reaction_time=Q(2, "s"), brake_force=Q(2000, "N")
    )
    inside = {}
    for riders in (0, 1, 3, 22):
        panel.rows[0].slider.value = riders
        shown = [mark for mark in panel.picture.chart.marks if mark.get_visible()]
        inside[riders] = panel.results["inside the attendant's distance, at most"].m_as("person"), len(shown)
    assert inside == {0: (0, 0), 1: (1, 0), 3: (3, 2), 22: (6, 12)}, "10.2 m, a rider every 2 m; the last 9 m behind"


UNLOADS = [  # spacing [m], line speed [m/s], clearing time [s], last rider seen to arrive, in the area: own arithmetic
    (6.8, 3.4, 6.0, 12, 3),  # a rider every 2 s; whoever came 6 s ago is just gone
    (6.8, 3.4, 6.5, 12, 4),
    (6.8, 1.7, 6.0, 12, 2),
    (34.0, 3.4, 10.0, 6, 1),  # a rider every 10 s: six arrive in the first 54 s
    (20.4, 3.4, 20.0, 10, 4),
    (3.4, 3.4, 10.0, 12, 10),
    (1.5, 2.7, 5.0, 12, 9),  # every 5/9 s: whoever came nine riders ago is just gone, whatever the last digit says
    (1.9, 0.8, 19.0, 12, 8),
    (1.5, 6.0, 20.0, 12, 12),
]


@pytest.mark.parametrize(("spacing", "speed", "clearing", "rider", "there"), UNLOADS)
def test_the_unload_picture_counts_who_is_there(spacing, speed, clearing, rider, there):
    panel = UnloadPanel(spacing=Q(spacing, "m"), line_speed=Q(speed, "m/s"), clearing_time=Q(clearing, "s"))
    chart = panel.picture.chart
    assert chart.words.get_text() == f"as rider {rider} arrives: {there} in the area"
    arrivals = [bar.get_x() for bar in chart.bars]
    assert arrivals == pytest.approx([place * spacing / speed for place in range(12)])
    moment = chart.moment.get_xdata()[0]
    assert moment == pytest.approx((rider - 1) * spacing / speed)
    crossed = [bar for bar in chart.bars if bar.get_x() < moment + 1e-9 < bar.get_x() + bar.get_width()]
    assert len(crossed) == there, "what the dashed line crosses"
