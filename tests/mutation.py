"""Make each formula wrong by one in a hundred, and ask the checks that call it whether they see it.

python tests/mutation.py    prints which checks are red on whole formulas, and which formulas no check watches

All checks run once on whole formulas, and each formula they call is noted. Then, for one formula after another, those
that call it run again, until the first of them turns red.
"""

import functools
import json
from collections import Counter
from pathlib import Path

import pytest

import liftcalc  # noqa: F401  with it come all formulas
from liftcalc.units import FORMULAS

TESTS = Path(__file__).parent
CHECKS = (
    "formulas/test_published",
    "formulas/test_power_published",
    "formulas/test_capacity",
    "formulas/test_carriers",
    "formulas/test_cost",
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
    "formulas/test_waiting",
    "simulation/test_two_minute_count",
    "lifts/test_limits",
)
OPTIONS = ("-q", "--tb=short", "-p", "no:cacheprovider", "-o", "addopts=", "--hypothesis-profile=quick")


class Mutation:
    """A plugin that runs the checks of a session in its own order, on whole formulas and on wrong ones."""

    def __init__(self):
        self.asked, self.red_on_whole, self.unwatched = [], [], []
        self._red = False

    def pytest_runtestloop(self, session):
        """Run all checks once, then for each formula those that call it."""
        calls = {item: self._run_and_count(item) for item in session.items}
        for name, formula in FORMULAS.items():
            callers = sorted((item for item in calls if calls[item][name]), key=lambda item: calls[item].total())
            self.asked.append(name)
            if not self._seen(formula, callers):
                self.unwatched.append(name)
        return True

    def pytest_runtest_logreport(self, report):
        """Note whether setting up, running or ending a check failed."""
        self._red = self._red or report.failed

    def _is_red(self, item):
        self._red = False
        item.ihook.pytest_runtest_protocol(item=item, nextitem=None)
        return self._red

    def _run_and_count(self, item):
        """Run a check on whole formulas, and return how often it calls each of them."""
        count, whole = Counter(), {name: formula.plain for name, formula in FORMULAS.items()}

        def counted(name):
            @functools.wraps(whole[name])
            def plain(*arguments, **named):
                count[name] += 1
                return whole[name](*arguments, **named)

            return plain

        for name, formula in FORMULAS.items():
            formula.plain = counted(name)
        if self._is_red(item):
            self.red_on_whole.append(item.nodeid)
        for name, formula in FORMULAS.items():
            formula.plain = whole[name]
        return count

    def _seen(self, formula, callers):
        """Return whether any of some checks turns red when a formula is wrong."""
        whole = formula.plain
        formula.plain = lambda *arguments, **named: 1.01 * whole(*arguments, **named)
        seen = any(self._is_red(item) for item in callers)
        formula.plain = whole
        return seen


if __name__ == "__main__":
    mutation = Mutation()
    pytest.main([*OPTIONS, *(str(TESTS / f"{name}.py") for name in CHECKS)], plugins=[mutation])
    print(json.dumps({name: getattr(mutation, name) for name in ("asked", "red_on_whole", "unwatched")}))
