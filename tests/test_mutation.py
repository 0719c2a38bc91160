"""Each public formula, made wrong by one in a hundred, turns some test red.

The published checks and the laws run in a child process with one formula changed; a run that stays green names a
formula that nobody checks.
"""

import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from liftcalc.units import FORMULAS

TESTS = Path(__file__).parent
RUN = """
import sys, pytest, liftcalc
from liftcalc.units import FORMULAS
name, factor = sys.argv[1], float(sys.argv[2])
whole = FORMULAS[name].plain
FORMULAS[name].plain = lambda *arguments, **named: factor * whole(*arguments, **named)
sys.exit(pytest.main(["-q", "-x", "-p", "no:cacheprovider", "-o", "addopts=", *sys.argv[3:]]))
"""
FILES = [str(TESTS / "test_published.py"), str(TESTS / "test_laws.py")]


def run(name, factor):
    """Return the exit status and the output of the checks with one formula multiplied by a factor."""
    arguments = [sys.executable, "-c", RUN, name, str(factor), *FILES]
    done = subprocess.run(arguments, capture_output=True, text=True, timeout=170)
    return done.returncode, done.stdout


def test_the_checks_are_green_on_whole_formulas():
    status, output = run(next(iter(FORMULAS)), 1.0)
    assert status == 0, output


def test_one_in_a_hundred_turns_a_check_red():
    with ThreadPoolExecutor(2) as pool:
        results = dict(zip(FORMULAS, pool.map(lambda name: run(name, 1.01), FORMULAS), strict=True))
    assert len(results) >= 28
    assert [name for name, (status, _) in results.items() if status != 1] == []
