"""Each public formula, made wrong by one in a hundred, turns some test red.

The published checks and the laws run in a child process, once for each formula changed; a run that stays green names a
formula that nobody checks.
"""

import json
import subprocess
import sys
from pathlib import Path

from liftcalc.units import FORMULAS

TESTS = Path(__file__).parent
RUN = """
import json, sys, pytest, liftcalc
from pathlib import Path
from liftcalc.units import FORMULAS
options = ["-q", "-x", "-p", "no:cacheprovider", "-o", "addopts=", "--hypothesis-profile=quick"]
texts = {file: Path(file).read_text(encoding="utf-8") for file in sys.argv[1:]}
statuses = {"none": int(pytest.main([*options, *texts]))}
for name, formula in FORMULAS.items():
    whole = formula.plain
    formula.plain = lambda *arguments, **named: 1.01 * whole(*arguments, **named)
    short = name.rsplit(".", 1)[1]
    files = sorted(texts, key=lambda file: f"{short}(" not in texts[file])  # those that call it come first
    statuses[name] = int(pytest.main([*options, *files]))
    formula.plain = whole
print("STATUSES", json.dumps(statuses))
"""
NAMES = (
    "test_published",
    "test_laws",
    "test_power_published",
    "test_motor_and_traction",
    "test_limits",
    "test_carriers",
)
FILES = [str(TESTS / f"{name}.py") for name in NAMES]


def test_one_in_a_hundred_turns_a_check_red():
    run = subprocess.run([sys.executable, "-c", RUN, *FILES], capture_output=True, text=True, timeout=900)
    assert "STATUSES" in run.stdout, run.stdout[-2000:] + run.stderr[-2000:]
    statuses = json.loads(run.stdout.split("STATUSES", 1)[1])
    assert statuses.pop("none") == 0, "the checks are green on whole formulas"
    assert set(statuses) == set(FORMULAS)
    assert len(statuses) >= 28
    assert [name for name, status in statuses.items() if status != 1] == []
