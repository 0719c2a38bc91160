"""Links that save files; they hold the files themselves, so that they work in every view."""

import base64
from html import escape


class SaveLinks:
    """Links that save files, one a line.

    Parameters
    ----------
    files : iterable of tuple
        For each file its name, its media type, its text or a function that returns it, and words for what it is.
    """

    def __init__(self, files):
        self.files = tuple(files)

    def __repr__(self):
        return "\n".join(f"{name}: {words}" for name, _, _, words in self.files)

    def _repr_html_(self):
        links = "".join(
            f'<li><a download="{escape(name)}" href="{address_of(kind, text)}">'
            f"Save {escape(name)}</a>: {escape(words)}</li>"
            for name, kind, text, words in self.files
        )
        return f"<ul>{links}</ul>"


def address_of(kind, text):
    """Return a text, or what a function returns, as an address that holds all of it."""
    return f"data:{kind};base64," + base64.b64encode((text() if callable(text) else text).encode()).decode()
