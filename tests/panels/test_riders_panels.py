"""The panels of 03."""

import pytest
from reading_panels import status

from liftcalc import Q
from liftcalc.panels import FlowPanel, RidersPanel

FLOWS = [  # line speed, ridden length, pick-up, ride time, average, most; own arithmetic at 6.8 m
    (3.4, 150, 1.5, 45.25, 22.63, 23),
    (3.4, 150, 4.0, 44.54, 22.27, 23),
    (3.4, 149, 1.5, 44.96, 22.48, 23),  # 149 m / 6.8 m is 21.9: posts in metres would say 22
    (6.0, 150, 1.5, 27.00, 23.82, 24),
    (6.0, 20, 0.5, 8.944, 7.892, 8),  # let go before the speed of the rope: sqrt(2 L / a)
]


@pytest.mark.parametrize(("speed", "length", "pick_up", "ride", "average", "most"), FLOWS)
def test_flow_times_the_time_of_riders_who_start_from_rest(speed, length, pick_up, ride, average, most):
    panel = FlowPanel(
        line_speed=Q(speed, "m/s"), spacing=Q(6.8, "m"), ridden_length=Q(length, "m"),
        pick_up_acceleration=Q(pick_up, "m/s**2"),
    )  # fmt: skip
    assert panel.results["ride time"].m_as("s") == pytest.approx(ride, rel=1e-3)
    assert panel.result.m_as("person") == pytest.approx(average, rel=1e-3)
    assert panel.results["most at one moment"] == Q(most, "person")
    assert ("let go before" in status(panel)) == (length == 20)


@pytest.mark.parametrize("length", [60, 150, 190, 400, 1000])
def test_the_dot_of_the_fence_posts_stays_on_the_chart(length):
    panel = RidersPanel(ridden_length=Q(length, "m"), spacing=Q(10, "m"))
    ((across,), (up,)) = panel.picture.chart.dot.get_data()
    shown = min(length, panel.longest.m_as("m"))
    assert (across, up) == pytest.approx((shown, shown / 10))
    assert panel.result.m_as("person") == pytest.approx(length / 10)
