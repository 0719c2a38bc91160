"""The brief of whatever files there are of one lift: shown in a page, saved from it, and the reading to take next."""

import functools
import math
from dataclasses import replace
from html import escape

from liftcalc.fieldwork.sheet import Reading
from liftcalc.lifts.sheet_budget import BehindLimits
from liftcalc.lifts.sheet_words import listed
from liftcalc.pages.brief.brief import brief_links, make_brief
from liftcalc.pages.brief.words import what_helps
from liftcalc.quantity_text import show
from liftcalc.simulation.lift_agreement import lengths, speeds
from liftcalc.simulation.lift_words import CLOSE
from liftcalc.tables import Folded, Lines
from liftcalc.uncertainty import expand, reading_to_take_again
from liftcalc.vocabulary import words_of

# a whole sheet of paper, so that nothing of it scrolls by itself
FRAME = "box-sizing:border-box;width:100%;max-width:860px;height:1140px;border:1px solid #999;background:#fff"
KNOWN_BETTER = 0.6  # part of the sheet's doubt, below which other ways are said to know a reading better


@functools.lru_cache(maxsize=2)  # three parts of a page ask for it
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
            f'style="{FRAME}"></iframe>'
        )
        as_text = Folded("The same as text", *str(self.brief).splitlines())
        return brief_links(self.brief)._repr_html_() + frame + as_text._repr_html_()


def shown_brief(read):
    """Return the brief of a lift from its files, as a page shows it."""
    return ShownBrief(brief_of(read))


def what_would_help(read):
    """Return what a tenth more or less of each reading would do, as the brief says it; folded, as an answer is."""
    facts = brief_of(read).facts
    said = [f"{words}: {text}." for words, text in what_helps(facts)]
    return Folded("What a tenth of each would do", *said or ["No limit governs: nothing can be said."])


def next_reading(read):
    """Return the reading to take next, as the brief says it; and whether other files know it better already.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Lines
    """
    facts = brief_of(read).facts
    return Lines(facts.take_next, *_known_better(read, facts), *_close_behind(read, facts))


def _known_better(read, facts):
    """Return what other ways say of the reading that is to be taken again, where they agree with the sheet."""
    budget = BehindLimits(read.sheet).budget(facts.governs) if facts.governs else None
    name = reading_to_take_again(budget).name if budget else None
    ways = {"line_speed": speeds, "ridden_length": lengths}
    found = ways[name](read) if name in ways else None
    if found is None or len(found.methods) < 2 or not found.combined.agrees:
        return []
    together, own = found.combined.estimate, read.sheet.estimate(name)
    if together.standard_uncertainty > KNOWN_BETTER * own.standard_uncertainty:
        return []
    half_width = together.standard_uncertainty * math.sqrt(3)
    row = Reading(name, together.value, half_width, "all ways together", "", 0)
    others = [reading for reading in read.sheet.readings if reading.name != name]
    after = make_brief(replace(read.sheet, readings=(row, *others))).facts
    between = f"from {show(after.ends[0])} to {show(after.ends[1])}" if after.ends is not None else "nobody knows where"
    return [
        f"But you have it already: {listed([each.method for each in found.methods])} agree on "
        f"{expand(together).short}. Write one row of {words_of(name)} into the sheet in place of the others: "
        f"{show(together.value)}, plus or minus {show(half_width)}. Then the figure lies {between}, and the next "
        "reading is another one:",
        after.take_next,
    ]


def _close_behind(read, facts):
    """Return the reading to take again of each limit that may govern as well."""
    close = [name for name, share in facts.shares.items() if name != facts.governs and share >= CLOSE]
    behind = BehindLimits(read.sheet)
    budgets = {name: behind.budget(name) for name in close}
    advice = {name: reading_to_take_again(budget) for name, budget in budgets.items() if budget is not None}
    assumed = {name: " It is only assumed so far." for name in read.sheet.assumed}
    return [
        f"For the limit of {name}, close behind: {each.sentence}{assumed.get(each.name, '')}"
        for name, each in advice.items()
    ]
