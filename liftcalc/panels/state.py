"""The one state that all panels of a notebook share: values, system of units, and who follows whom."""

import asyncio
import sys

from liftcalc.panels.controls import CONTROLS, SYSTEMS
from liftcalc.units import PlainError

REST = 0.25  # seconds without a key press before the other panels follow: only the moved one redraws at once


class NotebookState:
    """Values of all controls of one notebook, as quantities, and the panels that show them."""

    def __init__(self, system="metric"):
        self.values = {name: control.start for name, control in CONTROLS.items()}
        self.system = system
        self._panels = {}
        self._behind = set()
        self._timer = None

    def join(self, panel):
        """Take in a panel; an older panel of the same name, from a cell that was run again, leaves."""
        older = self._panels.pop(panel.name, None)
        if older is not None:
            self._behind.discard(older)
            older.close()
        self._panels[panel.name] = panel

    def set(self, name, value, mover=None):
        """Give one control a new value; its mover redraws at once, the others when keys rest."""
        self.set_all({name: value}, mover)

    def set_all(self, values, mover=None):
        """Give several controls new values at once, as ``set`` does one."""
        self.values.update(values)
        if mover is not None:
            mover.refresh()
        self.let_others_follow(values, mover)

    def let_others_follow(self, names, mover):
        """Let the panels that show any of these controls follow their mover when keys rest."""
        moved = set(names)
        self._behind |= {p for p in self._panels.values() if p is not mover and moved & set(p.control_names)}
        self._wait()

    def use_units(self, system):
        """Turn the whole notebook to another system of units."""
        if system not in SYSTEMS:
            raise PlainError(f"NotebookState: system must be one of {', '.join(SYSTEMS)}, but got {system!r}.")
        if system != self.system:
            self.system = system
            for panel in list(self._panels.values()):
                panel.use_units()

    def settle(self):
        """Let every panel that is behind follow now."""
        if self._timer is not None:
            self._timer.cancel()
            self._timer = None
        behind, self._behind = self._behind, set()
        for panel in [p for p in self._panels.values() if p in behind]:
            try:
                panel.follow()
            except Exception:
                report_error()

    def _wait(self):
        if self._timer is not None:
            self._timer.cancel()
            self._timer = None
        if not self._behind:
            return
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:  # no kernel, as in a plain script: nobody waits
            self.settle()
        else:
            self._timer = loop.call_later(REST, self.settle)


def report_error():
    """Show the error being handled where the reader sees it; outside a notebook, raise it."""
    shell = sys.modules["IPython"].get_ipython() if "IPython" in sys.modules else None
    if shell is None:
        raise
    shell.showtraceback()


_state = NotebookState()


def notebook_state():
    """Return the state that the panels of this notebook share."""
    return _state
