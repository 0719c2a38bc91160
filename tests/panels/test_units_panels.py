"""The panels of 01."""

import pytest
from reading_panels import status

from liftcalc import Q
from liftcalc.panels import PowerRulerPanel, SpeedRulerPanel, notebook_state


def test_a_ruler_shows_every_unit_in_both_systems():
    panel = SpeedRulerPanel(line_speed=Q(3.4, "m/s"))
    for system in ("us", "metric"):
        notebook_state().use_units(system)
        for text in ("3.40 m/s", "12.2 km/h", "7.6 mph", "11.2 ft/s", "669 ft/min"):
            assert text in status(panel)


@pytest.mark.parametrize("kind", [SpeedRulerPanel, PowerRulerPanel])
def test_a_ruler_ends_just_beyond_its_slider(kind, panel_of):
    panel = panel_of(kind)
    _, high = panel.range_of(panel.control_names[0])
    assert high < panel.longest <= 1.05 * high
