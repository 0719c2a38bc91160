"""Every control of every panel moves through its range without an error, also one that a callback swallows."""

import pytest
from notebook_files import PATHS, read
from sweep import sweep


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_every_control_moves(path):
    found = sweep(path)
    assert found["errors"] == []
    stored = [
        output.get("data", {}).get("text/plain") for cell in read(path).cells for output in cell.get("outputs", [])
    ]
    assert [words for words in found["begin"] if words not in stored] == [], (
        "a later panel moved the sliders of another"
    )
    assert found["panels"] >= 1
    assert found["moves"] >= 40 * found["panels"] / 2
    assert found["said"] >= 10 * found["panels"], "the words follow the controls"


def test_the_sweep_sees_a_broken_callback():
    broken = (
        "from liftcalc.panels import start_here\n"
        "whole = start_here.StartPanel.compute\n"
        "def compute(self, given):\n"
        "    if given['spacing'].m_as('m') > 30: raise ZeroDivisionError('broken on purpose')\n"
        "    return whole(self, given)\n"
        "start_here.StartPanel.compute = compute"
    )
    found = sweep(PATHS[0], before=broken)
    assert found["errors"]
    assert "broken on purpose" in found["errors"][0][1]
