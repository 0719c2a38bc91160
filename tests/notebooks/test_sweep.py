"""The sweep of the notebooks sees an error that a callback swallows; they themselves are swept in their strict check."""

import pytest
from nbval.kernel import CURRENT_ENV_KERNEL_NAME, start_new_kernel
from notebook_files import PATHS, code_cells, read
from sweep import EveryControlMoves, run_in, sweep

PANEL = "from liftcalc.panels import start_here\npanel = start_here.StartPanel()"
BROKEN = """
as_it_was = start_here.StartPanel.compute
def compute(self, given):
    if given['spacing'].m_as('m') > 30: raise ZeroDivisionError('broken on purpose')
    return as_it_was(self, given)
start_here.StartPanel.compute = compute
"""


def test_the_sweep_sees_a_broken_callback():
    manager, client = start_new_kernel(kernel_name=CURRENT_ENV_KERNEL_NAME)
    try:
        run_in(client, PANEL + BROKEN)
        found = sweep(client)
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)
    assert found["errors"]
    assert "broken on purpose" in found["errors"][0][1]


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_each_notebook_is_swept_after_its_last_cell(path, request):
    (notebook,) = request.node.ihook.pytest_collect_file(file_path=path, parent=request.session)
    *cells, last = notebook.collect()
    assert len(cells) == len(code_cells(read(path)))
    assert isinstance(last, EveryControlMoves)
