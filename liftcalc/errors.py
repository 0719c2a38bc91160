"""Errors for the reader: one line each, the same in a notebook, in a script and at the prompt.

``python -X dev`` shows the whole path through the code instead.
"""

import sys
import traceback
from pathlib import Path

_PACKAGE = Path(__file__).parent


class PlainError(ValueError):
    """An error whose message says all that the reader needs: one line shows it, without the path through the code."""

    @property
    def line(self):
        """Name and message, on one line even where the message quotes a value that takes several."""
        return f"{type(self).__name__}: {' '.join(part.strip() for part in str(self).splitlines())}"

    def _render_traceback_(self):  # IPython asks for it, and shows what it returns
        return [self.line]


class UnitError(PlainError):
    """A value came without a unit, with an unknown unit, or with a unit of another kind."""


def _place(trace):
    """Return the last place in the reader's own script, such as "my_script.py, line 3: "; empty where there is none."""
    place = ""
    for frame, line in traceback.walk_tb(trace):
        file = frame.f_code.co_filename  # "<stdin>" at the prompt, "<string>" behind -c
        ours = Path(file).is_relative_to(_PACKAGE)
        if frame.f_globals.get("__name__") == "__main__" and not file.startswith("<") and not ours:
            place = f"{Path(file).name}, line {line}: "
    return place


_hook_before = sys.excepthook


def _show_in_one_line(kind, error, trace):
    """Show an error for the reader in one line, and hand every other error to the hook that was there."""
    if isinstance(error, PlainError) and not sys.flags.dev_mode:
        print(f"{_place(trace)}{error.line}", file=sys.stderr)
    else:
        _hook_before(kind, error, trace)


sys.excepthook = _show_in_one_line
