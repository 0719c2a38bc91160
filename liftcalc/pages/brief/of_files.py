"""The brief of whatever files there are of one lift: shown in a page, saved from it, and the reading to take next."""

from html import escape

from liftcalc.pages.brief.brief import brief_links, make_brief
from liftcalc.tables import Folded, Lines
from liftcalc.units import PlainError

HEIGHT = 620  # px, of the frame in which the brief is shown


def brief_of(read):
    """Return the brief of a lift from its files.

    Parameters
    ----------
    read : LiftFiles
        Its sheet must be among them.

    Returns
    -------
    Brief
    """
    sheet = read.sheet
    count = read.made("count") if read.has("count") else None
    rise = sheet.mean("vertical_rise") if sheet.has("vertical_rise") else None
    track = read.made("track").reading(rise) if read.has("track") else None
    other = read.made("second") if read.has("second") else None
    return make_brief(sheet, count, track, other)


class ShownBrief:
    """A brief in a page: its own page in a frame without script, a link that saves it, and the same as text.

    Parameters
    ----------
    brief : Brief
    """

    def __init__(self, brief):
        self.brief = brief

    def __repr__(self):
        return f"{self.brief}\n{brief_links(self.brief)}"

    def _repr_html_(self):
        frame = (
            f'<iframe title="The page for the wall" sandbox srcdoc="{escape(self.brief.html())}" '
            f'style="width:100%;height:{HEIGHT}px;border:1px solid #999;background:#fff"></iframe>'
        )
        as_text = Folded("The same as text", *str(self.brief).splitlines())
        return brief_links(self.brief)._repr_html_() + frame + as_text._repr_html_()


def shown_brief(read):
    """Return the brief of a lift from its files, as a page shows it."""
    return ShownBrief(brief_of(read))


def next_reading(read):
    """Return the reading to take next, as the brief says it, and what else did not come."""
    if not read.has("sheet"):
        raise PlainError(read.without_it("sheet"))
    facts = brief_of(read).facts
    return Lines(facts.take_next, *(f"Look again: {words}" for words in facts.look_again))
