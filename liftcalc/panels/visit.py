"""The reader's own files of one visit: the browser keeps them, and each page that opens after takes them on.

The kernel of a page may have run before the visit began, so the files come after it, by a script of the app view. Where
no such script runs, as in JupyterLab, nothing comes and nothing is sent.
"""

import base64
import json
from html import escape

import ipywidgets as widgets

HEARS, TELLS = "visit-hears", "visit-tells"  # classes by which the script finds the two
MOST_BYTES = 8_000_000  # of all files together, as they come


class Visit:
    """What a page and the script of the app view tell one another.

    The script fills a text area that nobody sees; what the page tells it stands in a piece of HTML that nobody sees.

    Parameters
    ----------
    came : function
        Called with the names and bytes of the files that were kept, the newest last, once the script has spoken.
    """

    def __init__(self, came):
        self._came, self._told, self.is_there = came, 0, False
        hidden = widgets.Layout(display="none")  # no space, no print, no word for a screen reader
        self.hears = widgets.Textarea(layout=hidden)
        self.hears.add_class(HEARS)
        self.tells = widgets.HTML(layout=hidden)
        self.tells.add_class(TELLS)
        self.hears.observe(self._heard, "value")

    @property
    def widgets(self):
        """Both widgets, to stand somewhere in the page."""
        return [self.hears, self.tells]

    def _heard(self, change):
        files = files_in(change["new"])
        if files is not None:
            self.is_there = True
            self._came(files)

    def keep(self, files):
        """Let the browser keep files, each a name and its bytes; one of the same name gives way."""
        self._tell({"keep": [{"name": name, "content": base64.b64encode(raw).decode()} for name, raw in files]})

    def forget(self, name=None):
        """Let the browser forget the file of a name, or all files."""
        self._tell({"forget": name or True})

    def _tell(self, what):
        if self.is_there:
            self._told += 1  # the same words twice are two messages
            self.tells.value = f'<span data-visit="{self._told}" data-says="{escape(json.dumps(what))}"></span>'


def files_in(text):
    """Return the names and bytes of files in a message of the script; None if it is no such message."""
    if len(text) > MOST_BYTES:
        return None
    try:
        files = json.loads(text)["files"]
        return [(str(file["name"]), base64.b64decode(file["content"], validate=True)) for file in files]
    except (ValueError, TypeError, KeyError, RecursionError):
        return None
