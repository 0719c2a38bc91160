"""One page to pin to the wall: what a lift carries at most, why, how sure that is, and the cautions that stand with it.

``contents`` gathers what the package says of a sheet, as plain values; ``page`` puts them on one sheet of paper, whose
look stands in ``page.html.j2``; ``pdf`` prints it. From a terminal: ``python -m liftcalc.pages.brief``.
"""

from liftcalc.pages.brief.brief import Brief, brief_links, make_brief
from liftcalc.pages.brief.of_files import brief_of, next_reading, shown_brief, what_would_help
from liftcalc.pages.brief.pdf import write_pdf

__all__ = [
    "Brief",
    "brief_links",
    "brief_of",
    "make_brief",
    "next_reading",
    "shown_brief",
    "what_would_help",
    "write_pdf",
]
