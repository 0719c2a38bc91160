"""The panel of the slope: density by hand, where it meets its guideline, and the band on the picture."""

from itertools import product

import numpy as np
import pytest
from messages import refuses, table_of_messages
from reading_panels import cards, drawn, status
from test_figures import texts_of

from liftcalc import Q, UnitError
from liftcalc.panels import SlopePanel


def slope(pph, descent, area, low=35, high=75):
    return SlopePanel(
        people_an_hour=Q(pph, "pph"), descent_time=Q(descent, "s"), slope_area=Q(area, "hectare"),
        guideline_from=Q(low, "person/hectare"), guideline_to=Q(high, "person/hectare"),
    )  # fmt: skip


SETTINGS = [  # people an hour, descent [s], area [ha], ends of the guideline, verdict: own arithmetic
    (1000, 75, 0.4, 35, 75, "within the guideline"),
    (1640, 75, 0.4, 35, 75, "above the guideline"),
    (300, 120, 1.5, 30, 60, "below the guideline"),
    (1130, 75, 0.4, 60, 30, "within the guideline"),  # its ends the other way round
]


@pytest.mark.parametrize(("pph", "descent", "area", "low", "high", "verdict"), SETTINGS)
def test_density_and_balance_by_hand(pph, descent, area, low, high, verdict):
    panel = slope(pph, descent, area, low, high)
    low, high = sorted((low, high))
    there = pph * descent / 3600
    full = 3600 * high * area / descent
    assert panel.result.m_as("person/hectare") == pytest.approx(there / area)
    assert panel.results["guideline reached at"].m_as("pph") == pytest.approx(full)
    assert panel.results["riders on the slope, on average"].m_as("person") == pytest.approx(there)
    assert panel.results["that is"] == verdict
    room = f"{full - pph:,.0f} pph" if full >= pph else f"none: {pph - full:,.0f} pph too many"
    assert cards(panel)["room up to it"] == room
    chart = panel.picture.chart
    assert chart.title.get_text() == f"{pph:,} pph: {there / area:.0f} riders a hectare, {verdict}"
    x, y = drawn(chart.curves[0])
    np.testing.assert_allclose(y, x * descent / 3600 / area)
    assert drawn(chart.dot) == [[pph], [pytest.approx(there / area)]]
    assert (chart.band.get_y(), chart.band.get_height()) == pytest.approx((low, high - low))
    if full <= 2400:
        np.testing.assert_allclose(drawn(chart.full), [[full, full], [0, high]])
        assert chart.full_words.get_text() == f"guideline reached at {full:,.0f} pph"
    else:
        assert chart.full_words.get_text() == ""


def test_where_the_guideline_is_from_is_said():
    quoted = "All Seasons Resort Guidelines, British Columbia, as quoted by the FIS wiki"
    assert f"Guideline of 35 to 75: beginner slopes, {quoted}" in status(slope(1000, 75, 0.4))
    assert f"novice slopes, {quoted}" in status(slope(1000, 75, 0.4, 30, 60))
    own = status(slope(1000, 75, 0.4, 20, 50))
    assert "Guideline of 20 to 50: as entered; say whose it is." in own
    assert quoted not in own
    assert "how full it may get, the operator and the authority say" in own


def test_no_end_of_a_slider_fails_and_no_text_leaves_the_chart():
    panel = slope(1000, 75, 0.4)
    ends = {name: [Q(each, panel.control(name).metric.unit) for each in
                   (panel.control(name).metric.low, panel.control(name).metric.high)]
            for name in panel.control_names}  # fmt: skip
    for settings in product(*ends.values()):
        panel.state.values.update(dict(zip(ends, settings, strict=True)))
        panel.refresh()
        assert all(str(value) and "nan" not in str(value) for value in panel.results.values()), settings
        for text, left, right, *_ in texts_of(panel):
            assert left > -8, text
            assert right < 748, text


MESSAGES = [
    (lambda: SlopePanel(slope_area=0.4),
     "SlopePanel: slope_area must be a quantity in a unit such as 'hectare', but got 0.4. Write Q(0.4, 'hectare').",
     UnitError),
    (lambda: SlopePanel(people_an_hour=Q(9000, "pph")),
     "SlopePanel: people_an_hour must lie from 50 to 2,400 pph, but got 9,000 pph."),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
