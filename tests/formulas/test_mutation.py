"""Each public formula, made wrong by one in a hundred, turns some test red.

The published checks and the laws run in a child process, once for each formula changed; a run that stays green names a
formula that nobody checks.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

from liftcalc.units import FORMULAS

TESTS = Path(__file__).parents[1]
RUN = """
import json, sys, pytest, liftcalc
from pathlib import Path
from liftcalc.units import FORMULAS
options = ["-q", "-x", "-p", "no:cacheprovider", "-o", "addopts=", "--hypothesis-profile=quick"]
texts = {file: Path(file).read_text(encoding="utf-8") for file in sys.argv[3:]}
statuses = {"none": int(pytest.main([*options, *texts])) if sys.argv[1] == "0" else 0}  # once is enough
for name, formula in list(FORMULAS.items())[int(sys.argv[1])::int(sys.argv[2])]:
    whole = formula.plain
    formula.plain = lambda *arguments, **named: 1.01 * whole(*arguments, **named)
    short = name.rsplit(".", 1)[1]
    calling = [file for file in texts if f"{short}(" in texts[file]]
    others = [file for file in texts if file not in calling]
    for files in filter(None, (calling, others)):  # only where those that call it stay green, the others are asked
        statuses[name] = int(pytest.main([*options, *files]))
        if statuses[name]:
            break
    formula.plain = whole
print("STATUSES", json.dumps(statuses))
"""
NAMES = (
    "formulas/test_published",
    "formulas/test_power_published",
    "formulas/test_capacity",
    "formulas/test_carriers",
    "formulas/test_grade",
    "formulas/test_hand_grip",
    "formulas/test_laws",
    "formulas/test_loading_point",
    "formulas/test_motor",
    "formulas/test_pull",
    "formulas/test_riders",
    "formulas/test_spacing",
    "formulas/test_stopping",
    "formulas/test_traction",
    "simulation/test_two_minute_count",
    "lifts/test_limits",
)
FILES = [str(TESTS / f"{name}.py") for name in NAMES]


def test_one_in_a_hundred_turns_a_check_red():
    count = min(4, os.cpu_count() or 1)
    runs = [
        subprocess.Popen([sys.executable, "-c", RUN, str(part), str(count), *FILES], stdout=subprocess.PIPE, text=True)
        for part in range(count)
    ]
    statuses = {}
    for run in runs:
        said, _ = run.communicate(timeout=900)
        assert "STATUSES" in said, said[-2000:]
        part = json.loads(said.split("STATUSES", 1)[1])
        assert part.pop("none") == 0, "the checks are green on whole formulas"
        statuses |= part
    assert set(statuses) == set(FORMULAS)
    assert [name for name, status in statuses.items() if status != 1] == []
