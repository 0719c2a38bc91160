"""The brief: what stands on it as plain values, its page, and itself in a few lines of text."""

from dataclasses import dataclass

from liftcalc.pages.brief.contents import Facts, facts_of
from liftcalc.pages.brief.page import page_of
from liftcalc.pages.brief.words import in_a_few_lines
from liftcalc.pages.save_links import SaveLinks


@dataclass(frozen=True, repr=False)
class Brief:
    """What a lift carries at most, for one sheet of paper.

    Parameters
    ----------
    facts : Facts
        What stands on the page, as plain values.
    """

    facts: Facts

    def html(self):
        """Return the page: one HTML text with no outside file and no script."""
        return page_of(self.facts)

    def __str__(self):
        return in_a_few_lines(self.facts)

    def __repr__(self):
        return str(self)


def make_brief(sheet, count=None, track=None, compare=None):
    """Return the brief of one lift line, from its sheet and what else was read of it.

    Parameters
    ----------
    sheet : FieldSheet
        As ``read_sheet`` returns it. Whatever it lacks is named on the page, with room to write it by hand.
    count : MinuteCounts or None
        A count minute by minute, as ``read_counts`` returns it. Without it, the count of the sheet is taken.
    track : TrackReading or None
        As ``read_track_speed`` returns it. Its speed is held against that of the sheet, or stands in for it.
    compare : FieldSheet or None
        The sheet of another line, to stand beside this one.

    Returns
    -------
    Brief
        ``.html()`` is the page, ``.facts`` what stands on it.

    Raises
    ------
    FieldFileError
        If the readings of a sheet fit no formula.
    """
    return Brief(facts_of(sheet, count, track, compare))


def brief_links(brief):
    """Return a link that saves the page of a brief, for a notebook cell.

    Parameters
    ----------
    brief : Brief

    Returns
    -------
    SaveLinks
    """
    words = "one page to print and pin to the wall; it opens without a network"
    return SaveLinks([("brief.html", "text/html", brief.html, words)])
