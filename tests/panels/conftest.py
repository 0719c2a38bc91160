"""Panels that several tests only move are made once: most of a panel's cost is its making."""

import pytest

from liftcalc.panels import notebook_state

MADE = {}


@pytest.fixture
def panel_of():
    """Return a function that gives the one panel of a class, in the notebook of the test and at its start."""
    state, given = notebook_state(), []

    def give(kind):
        if kind not in MADE:
            MADE[kind] = kind()
        panel = MADE[kind]
        if panel not in given:
            given.append(panel)
            state._panels[panel.name] = panel
            if panel._units.value == state.system:
                panel.follow()
            else:
                panel.use_units()
        return panel

    yield give
    for panel in given:  # what stays in the notebook is closed before the next test
        state._panels.pop(panel.name, None)
