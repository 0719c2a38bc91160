"""A slider with its number box: ranges, echoes of the page, numbers between two steps."""

import ipywidgets as widgets
import pytest
from reading_panels import status

from liftcalc import Q
from liftcalc.panels import CapacityPanel, CostPanel, IntervalPanel, LoadingDayPanel, notebook_state


def test_a_value_outside_the_range_is_told_and_the_last_good_one_stays():
    panel = CapacityPanel(spacing=Q(6.8, "m"))
    before = str(panel.result)
    panel.rows[1].box.value = 400
    assert "Spacing: 400 m is outside the range of this panel. Write a number from 1.5 to 40 m; 6.8 m stays." in status(
        panel
    )
    assert panel.rows[1].box.value == 6.8
    assert str(panel.result) == before
    panel.rows[1].box.value = 7
    assert "outside" not in status(panel)


def test_such_a_complaint_has_marks_of_thousands_and_no_stray_blanks():
    panel = CostPanel()
    for row, number in ((3, 7), (5, 3_100_000)):
        panel.rows[row].box.value = number
        assert TOLD[row] in status(panel)


TOLD = {
    3: "Posts: 7 is outside the range of this panel. Write a number from 0.5 to 6; 2 stays.",
    5: "Rides: 3,100,000 rides a season is outside the range of this panel. Write a number from 1,000 to 200,000 rides "
    "a season; 90,000 rides a season stays.",
}


def test_the_echo_of_a_rounded_value_does_not_replace_a_reading():
    panel = CapacityPanel(spacing=Q(6.786, "m"))
    panel.rows[1].slider.value = 6.800000000000001
    assert panel.given["spacing"] == Q(6.786, "m")
    notebook_state().use_units("us")  # 22.26 ft, between two steps of half a foot
    assert panel.rows[1].box.value == 22.3
    assert panel.rows[1].slider.value == 22.5
    assert panel.given["spacing"].m_as("m") == pytest.approx(6.786)


def test_a_typed_number_between_two_steps_is_kept():
    panel = CapacityPanel(spacing=Q(6.8, "m"))
    panel.rows[1].box.value = 7.123
    panel.rows[1].slider.value = 7.1  # what the page echoes
    assert panel.given["spacing"] == Q(7.123, "m")
    assert panel.rows[1].box.value == 7.123


def test_many_rows_stand_in_two_columns_and_few_one_below_another():
    day, few = LoadingDayPanel(), IntervalPanel()
    (grid,) = [child for child in day.children if isinstance(child, widgets.GridBox)][:1]
    assert list(grid.children) == [row.row for row in day.rows]
    assert [row.row for row in few.rows] == list(few.children[1 : 1 + len(few.rows)])
