"""Each public formula, made wrong by one in a hundred, turns some test red.

The published checks and the laws run in a child process; a formula that no check watches is named.
"""

import json
import subprocess
import sys

import mutation

from liftcalc.units import FORMULAS


def test_one_in_a_hundred_turns_a_check_red():
    run = subprocess.run([sys.executable, mutation.__file__], stdout=subprocess.PIPE, text=True, timeout=900)
    assert run.returncode == 0, run.stdout[-2000:]
    found = json.loads(run.stdout.splitlines()[-1])
    assert found["red_on_whole"] == [], "the checks are green on whole formulas"
    assert set(found["asked"]) == set(FORMULAS)
    assert found["unwatched"] == []
