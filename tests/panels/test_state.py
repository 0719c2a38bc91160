"""One state that the panels of a notebook share."""

from liftcalc import Q
from liftcalc.panels import CapacityPanel, RidersPanel, notebook_state


def test_panels_of_one_notebook_stay_in_step():
    first, second = CapacityPanel(), RidersPanel()
    first.rows[1].slider.value = 10.0
    assert second.given["spacing"] == Q(10, "m")
    assert second.rows[1].box.value == 10
    assert "10.0 m" in second.describe()


def test_in_a_running_loop_the_others_follow_when_keys_rest():
    import asyncio

    first, second = CapacityPanel(), RidersPanel()

    async def presses():
        for value in (7.0, 8.0, 9.0):
            first.rows[1].slider.value = value
            assert str(first.given["spacing"].magnitude) == str(value)
        at_once = second.rows[1].box.value
        await asyncio.sleep(0.4)
        return at_once, second.rows[1].box.value

    assert asyncio.run(presses()) == (6.8, 9.0)


def test_a_panel_made_again_takes_the_place_of_the_older():
    older = CapacityPanel()
    newer = CapacityPanel(spacing=Q(9, "m"))
    assert older.comm is None
    assert list(notebook_state()._panels.values()) == [newer]
    assert len({CapacityPanel(name="left").name, CapacityPanel(name="right").name}) == 2
    assert len(notebook_state()._panels) == 3
