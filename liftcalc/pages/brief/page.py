"""The page of a brief: its values put into the template, which holds the look."""

import functools
import re
import unicodedata
from pathlib import Path

from liftcalc import __version__
from liftcalc.cautions import DEFER
from liftcalc.pages.brief import words
from liftcalc.quantity_text import show

TEMPLATE = "page.html.j2"
MOST_LETTERS = 160  # of a text that somebody wrote: the page cuts shorter yet, by what fits
FEW_LETTERS = 1250  # so much and less may be set larger: it still fits one sheet of either paper
BAR = 1000  # units of the drawing from zero to the end of the axis


@functools.cache
def template():
    """Return the template of the page, which escapes whatever is put into it."""
    # here, since Jinja2 comes with what the notebooks ask for, and the rest of the package does without it
    from jinja2 import Environment, FileSystemLoader, StrictUndefined
    from markupsafe import Markup, escape

    def bold(text):
        return Markup(re.sub(r"\*\*(.+?)\*\*", r"<strong>\1</strong>", str(escape(text))))

    made = Environment(
        loader=FileSystemLoader(Path(__file__).parent), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
        lstrip_blocks=True,
    )  # fmt: skip
    made.filters |= {"bold": bold, "show": show, "number": words.number, "written": written}
    return made.get_template(TEMPLATE)


def page_of(facts):
    """Return the page of a brief as one HTML text."""
    first, second = words.headline(facts)
    return template().render(
        facts=facts, words=words, first=first, second=second, bars=bars_of(facts), defer=DEFER, version=__version__,
        not_said=words.NOT_SAID, roomy=not facts.warning and words.letters(facts) < FEW_LETTERS,
    )  # fmt: skip


def written(text):
    """Return a text that somebody wrote, fit for one line: no marks that nobody sees, and an ellipsis where it is cut.

    Among the marks are those that turn the direction of what follows; letters that run from right to left stay.
    """
    seen = "".join(mark if unicodedata.category(mark)[0] not in "CZ" or mark == "\u200d" else " " for mark in str(text))
    seen = " ".join(seen.split())
    return seen if len(seen) <= MOST_LETTERS else f"{seen[:MOST_LETTERS].rstrip()}…"


def bars_of(facts):
    """Return the bars of the limits, each with its ends on one axis from zero to beyond the largest of all.

    Returns
    -------
    list of (LimitLine, float or None, tuple of float or None)
        Length of the bar, and the ends of its doubt, in units of the drawing; None for what is left out or not said.
    """
    known = [line for line in facts.limits if line.capacity is not None]
    tops = [line.capacity.m_as("pph") for line in known]
    tops += [float(line.ends[1].m_as("pph")) for line in known if line.ends is not None]
    most = 1.02 * max(tops, default=1.0) or 1.0

    def place(quantity):
        return round(BAR * float(quantity.m_as("pph")) / most, 1)

    return [
        (
            line,
            None if line.capacity is None else place(line.capacity),
            tuple(map(place, line.ends)) if line.ends is not None else None,
        )
        for line in facts.limits
    ]
