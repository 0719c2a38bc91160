"""Settings of the tests: repeatable draws, and panels that begin afresh."""

import sys

import pytest
from hypothesis import Phase, settings

settings.register_profile("project", derandomize=True, deadline=None, max_examples=60)
settings.register_profile(  # for the mutation check: it only asks whether there is a failure, not for the smallest one
    "quick", derandomize=True, deadline=None, max_examples=4, phases=(Phase.explicit, Phase.generate)
)
settings.load_profile("project")


def pytest_collection_finish(session):
    """Let panels take every move of a slider for one of the reader's: here is no page that echoes."""
    rows = sys.modules.get("liftcalc.panels.control_row")
    if rows is not None:
        rows.ECHO = 0.0


@pytest.fixture(autouse=True)
def fresh_panels():
    """Close the panels of the test before, and put every control back to its start: else each of them follows along."""
    modules = sys.modules.get("liftcalc.panels.state"), sys.modules.get("liftcalc.panels.controls")
    if None in modules:
        return
    state = modules[0].notebook_state()
    for panel in list(state._panels.values()):
        panel.close()
    state._panels.clear()
    state._behind.clear()
    state.use_units("metric")
    state.values.update({name: control.start for name, control in modules[1].CONTROLS.items()})
