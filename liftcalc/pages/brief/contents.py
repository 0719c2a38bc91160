"""What stands on a brief, as plain values: all of it computed by the package, nothing of it about how it looks."""

import math
from dataclasses import dataclass, replace

from pint import Quantity

from liftcalc.fieldwork.sheet import Reading
from liftcalc.formulas.spacing import headway
from liftcalc.levels import LEVELS, Capacity, compare
from liftcalc.lifts.kinds import NOT_READ, Kind, kind_named
from liftcalc.lifts.limit_records import LeftOut
from liftcalc.lifts.limits import LOADING_TIMED_AS
from liftcalc.lifts.sheet_budget import BehindLimits
from liftcalc.lifts.sheet_limits import sheet_limits
from liftcalc.lifts.sheet_words import listed, to_look_at
from liftcalc.pages.brief.counted import Counted, counted_against
from liftcalc.pages.brief.helping import Change, changes_of
from liftcalc.pages.brief.stopping import Stop, stop_of
from liftcalc.quantity_text import show
from liftcalc.uncertainty import Estimate, normalised_error, reading_to_take_again
from liftcalc.vocabulary import VOCABULARY, WHO_IN_BRIEF, name_of, words_of

HEADING = ("date", "taken_by", "snow")  # facts of the head that are written by hand where the sheet has none
BOUNDS = ("ideal", "governed")  # levels of a spacing that may bound anything
FROM_THE_TRACK = ("line_speed", "ridden_length", "vertical_rise")


@dataclass(frozen=True)
class LimitLine:
    """One limit as it stands on the page.

    Parameters
    ----------
    name : str
        Such as "loading".
    capacity : Quantity [person/hour] or None
        What it allows; None where it is left out.
    level : str
        "governed" of the one that governs, of spacing the level of the sheet; empty for the others.
    ends : Quantity [person/hour] or None
        The two ends between which 95 of 100 draws lie.
    share : float or None
        In what share of the draws it governs.
    governs : bool
        Whether it is the smallest.
    sentence : str
        The readings behind it, or what was not read.
    assumed : tuple of str
        Readings behind it that are assumed, with their values.
    missing : tuple of str
        What was not read.
    """

    name: str
    capacity: Quantity | None
    level: str
    ends: Quantity | None
    share: float | None
    governs: bool
    sentence: str
    assumed: tuple
    missing: tuple


@dataclass(frozen=True)
class Facts:
    """What stands on a brief.

    Parameters
    ----------
    lift, line, title : str
        Names of the lift and of its line, and both in one.
    kind : Kind
        Kind of the lift; its name is "not read" where the sheet does not say it.
    state, date, taken_by, snow : str or None
        Facts of the sheet; None where they are not said.
    at_most : Capacity or None
        What the smallest limit allows, at the level "governed". None where no limit can be computed, and where spacing
        alone would govern for want of the others: that would be an ideal figure, and be read as a target.
    why_none : str
        Why there is none; empty where there is one.
    governs : str or None
        Name of the limit that governs.
    ends : Quantity [person/hour] or None
        The two ends between which it lies in 95 of 100 draws.
    shares : dict of str to float
        In what share of the draws each limit governs.
    next_limit, ahead, ahead_share : str, Quantity [person/hour], Quantity [percent], or None
        The next limit, and how far it is above.
    limits : tuple of LimitLine
        All limits that lifts of its kind have: the smallest first, those left out last.
    not_said_exact : tuple of str
        Readings without a plus-minus, which are taken as exact.
    counted : Counted or None
        The count, held against the limit that governs; None where nothing was counted.
    warning : str
        What stands across the page where the count is above the limit by more than its doubt; else empty.
    changes : tuple of Change
        What a tenth more or less of each reading would do on paper.
    headway, interval : Quantity [s] or None
        From one rider or carrier to the next by spacing and speed, and at the figure that is governed.
    persons : Quantity [person] or None
        Riders on one carrier, or side by side; None where nobody read it of a lift that may carry more than one.
    stop : Stop or None
        How far the rope runs on after a fall, and who is inside that.
    take_next : str
        The reading to take next, and why.
    look_again : tuple of str
        Readings that do not agree.
    track : str
        What the track says of the line speed; empty without one.
    beside : tuple of str
        Name of another lift, and how it stands to this one; empty without one.
    level : str
        Level of the spacing.
    law : str
        Law of the limit that governs; empty where none does.
    sources : tuple of str
        Names of the files.
    """

    lift: str
    line: str
    title: str
    kind: Kind
    state: str | None
    date: str | None
    taken_by: str | None
    snow: str | None
    at_most: Capacity | None
    why_none: str
    governs: str | None
    ends: Quantity | None
    shares: dict
    next_limit: str | None
    ahead: Quantity | None
    ahead_share: Quantity | None
    limits: tuple[LimitLine, ...]
    not_said_exact: tuple
    counted: Counted | None
    warning: str
    changes: tuple[Change, ...]
    headway: Quantity | None
    interval: Quantity | None
    persons: Quantity | None
    stop: Stop | None
    take_next: str
    look_again: tuple
    track: str
    beside: tuple
    level: str
    law: str
    sources: tuple


def facts_of(sheet, count=None, track=None, other=None):
    """Return what stands on the brief of a sheet; arguments as for ``make_brief``."""
    sheet, track_says = with_track(sheet, track)
    limits = sheet_limits(sheet)
    behind, kind = BehindLimits(sheet), kind_named(sheet.kind or NOT_READ)
    known = behind.known
    at_most, why_none = bound_in(limits)
    found = limits.governs if at_most else None
    counted = counted_against(sheet, count, at_most or _ideal(limits), limits.ends, known, kind)
    persons = known.get("persons_per_carrier")
    return Facts(
        lift=sheet.lift, line=sheet.line, title=sheet.title, kind=kind, state=sheet.facts.get("state"),
        **{name: sheet.facts.get(name) for name in HEADING},
        at_most=at_most, why_none=why_none,
        governs=found.limit.name if found else None,
        ends=limits.ends if found else None,
        shares=limits.shares if found else {},
        next_limit=found.next_limit.name if found and found.next_limit else None,
        ahead=found.ahead if found else None,
        ahead_share=found.ahead_share if found else None,
        limits=_limit_lines(behind, limits, found),
        not_said_exact=limits.exact,
        counted=counted,
        warning=counted.warning if counted and at_most else "",
        changes=changes_of(kind, known, at_most) if found else (),
        headway=headway(known["line_speed"], known["spacing"]) if {"line_speed", "spacing"} <= {*known} else None,
        interval=_interval(persons, at_most),
        persons=persons,
        stop=stop_of(kind, known),
        take_next=_take_next(behind, limits, found),
        look_again=tuple(to_look_at(sheet)),
        track=track_says,
        beside=_beside(at_most, other),
        level=limits.level,
        law=found.limit.formula if found else "",
        sources=tuple(each.name for each in (sheet, count, track, other) if each is not None),
    )  # fmt: skip


def bound_in(limits):
    """Return what governs as a ``Capacity``, and an empty text; or None, and why no figure stands large on the page.

    Parameters
    ----------
    limits : SheetLimits
    """
    found = limits.governs
    if found is None:
        return None, "no limit can be computed from what was read"
    if found.limit.name != "spacing":
        return found.capacity, ""
    figure = f"spacing alone says {show(found.limit.capacity)} ({limits.level})"
    if limits.level not in BOUNDS:
        return None, f"{figure}: {LEVELS[limits.level]}, and no bound"
    if found.next_limit is None:
        return None, f"{figure}, and no other limit can be computed: that is no figure for a wall"
    return found.capacity, ""


def _ideal(limits):
    """Return what spacing alone says, for a count to be held against; None where that is no bound either."""
    found = limits.governs
    return None if found is None or limits.level not in BOUNDS else Capacity(found.limit.capacity, limits.level)


def _interval(persons, at_most):
    """Return the mean time from one rider, or carrier, to the next at a capacity; None where that is nothing."""
    if at_most is None or persons is None or not at_most.value.magnitude:
        return None
    return (persons / at_most.value).to("s")


def _limit_lines(behind, limits, found):
    """Return the limits as they stand on the page: the smallest first, those left out last."""
    lines, sheet = [], behind.sheet
    for record in limits.records:
        if isinstance(record, LeftOut):
            said = f"{listed(record.missing)} not read"
            lines.append(LimitLine(record.name, None, "", None, None, False, said, (), tuple(record.missing)))
            continue
        assumed = tuple(
            f"{words_of(name)} {show(sheet.mean(name))}"
            for name in behind.readings(record.name)
            if name in sheet.assumed
        )
        taken = tuple(f"{words_of(name)} 1" for name in _taken_as_one(sheet, record))
        governs = found is not None and record.name == found.limit.name
        level = "governed" if governs else limits.level if record.name == "spacing" else ""
        lines.append(
            LimitLine(
                record.name, record.capacity, level, limits.ranges.get(record.name),
                limits.shares.get(record.name), governs, record.sentence, assumed + taken, (),
            )
        )  # fmt: skip
    return tuple(sorted(lines, key=lambda line: math.inf if line.capacity is None else line.capacity.m_as("pph")))


def _taken_as_one(sheet, record):
    """Return the names of what a limit takes as one because nobody read it."""
    ones = ("loading_places", "unloading_places", "persons_per_carrier")
    return [name for name in ones if name in record.inputs and not sheet.has(name)]


def with_track(sheet, track):
    """Return the sheet, what it lacks filled in from a track, and what the track says of the line speed."""
    if track is None:
        return sheet, ""
    speed = Estimate(track.speed, track.speed_uncertainty)
    said = f"Track: {show(track.speed)} ± {show(track.speed_half_width_95)} along {track.along}"
    lacks = [name for name in FROM_THE_TRACK if not sheet.has(name) and getattr(track, _of_track(name)) is not None]
    filled = replace(sheet, readings=(*sheet.readings, *(_reading(track, name) for name in lacks)))
    if "line_speed" in lacks:
        return filled, f"{said}; it stands in for the line speed, which nobody else read."
    mean, read = sheet.mean("line_speed"), sheet.estimate("line_speed")
    if read is None:
        agrees = abs(mean - track.speed) <= track.speed_half_width_95
    else:
        agrees = abs(normalised_error(read, speed)) <= 1
    verdict = "they agree" if agrees else "they differ by more than their doubts: time the rope again"
    return filled, f"{said}; the sheet says {show(mean)}: {verdict}."


def _of_track(name):
    return "speed" if name == "line_speed" else name


def _reading(track, name):
    """Return one quantity of a track as a row of a sheet, with the same standard uncertainty."""
    value = getattr(track, _of_track(name))
    doubt = getattr(track, f"{_of_track(name)}_uncertainty", None)
    half_width = None if doubt is None else doubt * math.sqrt(3)
    return Reading(name, value.to(VOCABULARY[name].unit), half_width, f"track, along {track.along}", "", 0)


def _take_next(behind, limits, found):
    """Return the reading to take next: what makes most of the doubt; without one, what would give the next limit."""
    budget = behind.budget(found.limit.name) if found else None
    if budget is not None:
        advice = reading_to_take_again(budget)
        if advice.name is not None:
            more = (
                "It is only assumed so far."
                if advice.name in behind.sheet.assumed
                else _who_and_how(behind.sheet, advice.name)
            )
            return f"{advice.sentence} {more}"
    if not limits.missing:
        return f"Write a plus-minus beside {listed(limits.exact)}: without one nobody knows how good this is."
    limit, lacks = min(limits.missing.items(), key=lambda item: len(item[1]))
    first = "Take" if found is None or not limits.exact else "Write a plus-minus beside each reading, and take"
    return f"{first} {listed(lacks)}: that gives the limit of {limit}. {_who_and_how(behind.sheet, *lacks[:1])}"


def _who_and_how(sheet, called):
    """Return who may take a reading and how, in a sentence."""
    name = name_of(called)
    taken = getattr(VOCABULARY.get(name), "taken", None)
    if taken is None:
        return ""
    said = taken.how.removeprefix("or ")
    if name == "loading_time":  # timed as the others were
        said = f"mean of several, {LOADING_TIMED_AS[sheet.facts.get('loading_timed_as', 'starts')].rstrip(',')}, {said}"
    how = f"How: {said}. " if said else ""
    return f"{how}Who: {'; '.join(WHO_IN_BRIEF[who] for who in taken.who)}."


def _beside(at_most, other):
    """Return the name of another lift, and how it stands to this one; nothing without one."""
    if other is None:
        return ()
    limits = sheet_limits(other)
    bound, why_none = bound_in(limits)
    if bound is None or at_most is None:
        return other.title, f"nothing to compare, {why_none or 'since this lift has no figure of its own'}."
    said = f"at most {bound}, {limits.governs.limit.name} governs."
    if bound.value.magnitude == 0:
        return other.title, said
    return other.title, f"{said} This lift to that one: {compare(at_most, bound)}."
