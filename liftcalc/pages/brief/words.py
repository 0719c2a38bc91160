"""Words of a brief: headline, the sentence for a guest, the cautions of this kind of lift, and a few lines of text."""

import math

from liftcalc.cautions import DEFER, NEAR_THE_ROPE, ON_THE_ROPE
from liftcalc.levels import LEVELS
from liftcalc.lifts.governing import AN_UPPER_BOUND, NOT_ALL
from liftcalc.lifts.kinds import NOT_READ
from liftcalc.lifts.sheet_limits import DRAWS
from liftcalc.pages.brief.helping import NEXT_TO_NOTHING
from liftcalc.quantity_text import show
from liftcalc.units import Q

LET_GO, STAY_ON, NO_WRAPPING, WHO_CHANGES = ON_THE_ROPE
IN_LINE = Q(60, "person")  # how many stand before the guest of the sentence
GOOD_ENOUGH = 0.25  # part of a count; one in more doubt than that is told to no guest
NO_FIGURE = "No figure yet"
NOT_SAID = "not said"


def number(capacity):
    """Return a capacity as a number alone, where its unit stands beside it."""
    return f"{capacity.m_as('pph'):,.0f}"


def headline(facts):
    """Return the two lines that are read from afar: how many at most, and what governs."""
    if facts.at_most is None:
        alone = [line.name for line in facts.limits if line.capacity is not None]
        return NO_FIGURE, f"only {alone[0].upper()} was read" if len(alone) == 1 else "too little was read"
    return f"at most {number(facts.at_most.value)} an hour:", f"{facts.governs.upper()} governs"


def level_in_words(facts):
    """Return the level of the figure, and that it is no target."""
    if facts.at_most is None:
        return f"{facts.why_none[0].upper()}{facts.why_none[1:]}."
    said = f"People an hour, {facts.at_most.level}: {LEVELS[facts.at_most.level]}. An upper bound, and no target."
    left_out = [line.name for line in facts.limits if line.capacity is None]
    return f"{said} Left out, and perhaps smaller: {', '.join(left_out)}." if left_out else said


def doubt_in_words(facts):
    """Return how far the figure can be trusted."""
    if facts.at_most is None:
        return ""
    if facts.ends is None:
        return "Doubt not said: no reading behind it has a plus-minus."
    several = sorted(facts.shares.items(), key=lambda item: -item[1])
    (first, most), *rest = [(name, f"{100 * share:.0f}") for name, share in several if share >= 0.005]
    draws = ", ".join((f"{first} governs in {most}", *(f"{name} in {share}" for name, share in rest)))
    return f"In doubt: {number(facts.ends[0])} to {show(facts.ends[1])} in 95 of 100 draws. Of 100 draws {draws}."


def on_a_stop(kind):
    """Return what riders do when this lift stops: those of a lift that is not known are told both."""
    if kind.name == NOT_READ:
        return (LET_GO, STAY_ON)
    return (
        (LET_GO.replace("a tow held by hand", "this tow"),)
        if kind.held_by_hand
        else (STAY_ON.replace("any other", "this"),)
    )


def cautions_of(kind):
    """Return the cautions that stand on the brief of a lift of this kind, bold words between two pairs of asterisks."""
    wrapping = (NO_WRAPPING,) if kind.held_by_hand or kind.name == NOT_READ else ()
    return (*NEAR_THE_ROPE, *on_a_stop(kind), *wrapping, WHO_CHANGES, hazards_of(kind))


def hazards_of(kind):
    """Return the hazards of this kind of lift, in a sentence."""
    if kind.name == NOT_READ:
        return f"Its own hazards: {kind.hazards[0].lower()}{kind.hazards[1:]}"
    return f"A {kind.name}'s own hazards: {kind.hazards[0].lower()}{kind.hazards[1:]}"


def for_a_guest(facts):
    """Return the sentence for a guest: how many a minute, the wait behind a line, and what to do on a stop."""
    stop = " ".join(on_a_stop(facts.kind))
    if facts.at_most is None or facts.at_most.value.magnitude == 0:
        return f"“How many this lift takes an hour we have not measured yet. {stop}”"
    if facts.warning:
        return f"“How many this lift takes an hour we are reading once more. {stop}”"
    ahead = f"{IN_LINE.m_as('person'):.0f} people"
    got = _what_guests_get(facts)
    if got is not None:
        stops = ", stops and all" if facts.counted.by_the_clock else ""
        return (
            f"“About {got.m_as('person/minute'):.0f} people a minute came up when we counted{stops}. With {ahead} "
            f"ahead of you that is about {(IN_LINE / got).m_as('minute'):.0f} minutes. {stop}”"
        )
    minute = facts.at_most.value.m_as("person/minute")
    wait = math.floor(10 * (IN_LINE / facts.at_most.value).m_as("minute") + 1e-9) / 10  # or longer: rounded down
    return (
        f"“At most about {minute:.0f} people a minute get on here, so with {ahead} ahead of you it takes "
        f"{wait:g} minutes or longer. {stop}”"
    )


def _what_guests_get(facts):
    """Return the rate by the clock, which is what guests get; None where nobody counted it while people waited."""
    counted = facts.counted
    if counted is None or counted.waited != "yes" or counted.verdict not in ("below", "perhaps below", "within"):
        return None
    if counted.plus_minus[-1] > GOOD_ENOUGH * counted.rate.value:
        return None
    return min((counted.by_the_clock or counted.rate).value, facts.at_most.value)


def what_helps(facts):
    """Return what would help, what would not, and what stands next, each in a sentence."""
    if facts.at_most is None:
        return ()
    if facts.warning:  # what a wrong reading would gain is no hint for a wall
        return (("Would help", "not said before the figure holds"),)
    helping = [change for change in facts.changes if change.helps]
    harming = [change for change in facts.changes if change.gain.m_as("pph") < -NEXT_TO_NOTHING]
    idle = [change for change in facts.changes if change not in (*helping, *harming)]
    said = []
    if helping:
        said.append(("Would help", "; ".join(_change(change, facts.governs) for change in helping)))
    else:
        said.append(("Would help", f"nothing that was tried here, only what sets the limit of {facts.governs} itself"))
    would_not = [f"{' or '.join(change.words for change in idle)}: +0 pph"] if idle else []
    if would_not or harming:
        said.append(("Would not", "; ".join([*would_not, *(_change(change, facts.governs) for change in harming)])))
    if facts.next_limit:
        share = f" ({show(facts.ahead_share)})" if facts.ahead_share is not None else ""
        said.append(("Next limit", f"{facts.next_limit}, {show(facts.ahead)}{share} above: no gain beyond it"))
    return tuple(said)


def _change(change, governed_before):
    gain = change.gain.m_as("pph")
    then = f", then {change.governs} governs" if change.governs != governed_before else ""
    return f"{change.words}: {'+' if gain > 0 else '-'}{abs(gain):,.0f} pph{then}"


def _one(facts):
    """Return what passes: a rider, several side by side, or a carrier with what it holds."""
    if facts.persons is None:
        return "a rider or a carrier"
    persons = facts.persons.m_as("person")
    if facts.kind.has_carriers:
        return "a carrier" if persons == 1 else f"a carrier of {persons:.0f}"
    return "a rider" if persons == 1 else f"{persons:.0f} riders side by side"


def headway_in_words(facts):
    """Return the time from one rider or carrier to the next: by spacing and speed, and at the figure that governs."""
    if facts.headway is None:
        return "not known: line speed or spacing not read."
    said = f"{_one(facts)} every {show(facts.headway)} by spacing and speed ({facts.level})"
    if facts.interval is None or facts.governs == "spacing":
        return f"{said}."
    return f"{said}; at the figure above on average every {show(facts.interval)}."


def stop_in_words(facts):
    """Return who is inside the stopping distance, with what is assumed."""
    stop, what = facts.stop, "belt" if facts.kind.name == "conveyor" else "rope"
    if stop is None:
        return "not known: line speed or spacing not read."
    if facts.kind.reversible:
        inside = "the cabin runs on that far"
    elif stop.riders is None:
        inside = f"up to {stop.places} riders or carriers inside it"
    elif facts.kind.has_carriers:
        carriers = "1 carrier" if stop.places == 1 else f"{stop.places} carriers"
        inside = f"up to {carriers} with {show(stop.riders)} inside it"
    else:
        inside = f"up to {show(stop.riders)} inside it, the one who fell included, and more where they are closer"
    return (
        f"the {what} still runs {show(stop.distance)}; {inside}. Assumed, not measured: the attendant is looking and "
        f"presses stop after {show(stop.reaction)}, the {what} slows {show(stop.delay)} later, by "
        f"{show(stop.slowing)}. Stops are tested as the maker's manual and the code say, never sized from here."
    )


def count_in_words(facts):
    """Return the count as two texts, the figure and what it is of; and whether people waited."""
    counted = facts.counted
    if counted is None:
        return (
            "not counted",
            "Count at the top, from outside the unload area:",
            "People waited (ring one): yes, some, no",
        )
    doubt = f" ± {counted.doubt.replace(' pph', '')}" if counted.doubt else ""
    figure = f"{number(counted.rate.value)}{doubt} pph"
    clock = ""
    if counted.by_the_clock is not None:
        clock = f" By the clock, stops in it: {number(counted.by_the_clock.value)} ± {counted.doubt_by_the_clock}."
    said = "Above the limit by more than its doubt: see the warning." if facts.warning else counted.said
    return figure, f"{counted.of}.{clock} {said}", f"People waited: {counted.waited or NOT_SAID}"


def method_in_words(facts):
    """Return how the figures came about, and from which files, for the foot of the page."""
    law = f"{facts.governs}: {facts.law}. " if facts.law else ""
    exact = (
        f"Taken as exact, for want of a plus-minus: {', '.join(facts.not_said_exact)}. " if facts.not_said_exact else ""
    )
    return (
        f"Method: {law}Readings are drawn {DRAWS:,} times within their plus-minus. Doubt of a count: spread of its "
        f"gaps over the root of its number, k = 1.96. {exact}{AN_UPPER_BOUND} {NOT_ALL}"
    )


def in_a_few_lines(facts):
    """Return a brief as a few lines of text."""
    first, second = headline(facts)
    figure, of, waited = count_in_words(facts)
    lines = [f"{facts.title}: {first} {second}", level_in_words(facts), doubt_in_words(facts)]
    lines += [
        f"Counted: {figure}. {of} {waited}."
        if facts.counted
        else "Not counted yet: count at the top while people wait.",
        facts.warning and f"WARNING: {facts.warning}",
        facts.take_next,
        DEFER,
    ]
    return "\n".join(filter(None, lines))


def letters(facts):
    """Return how many letters stand below the head of the page, but for the cautions: what is short is set larger."""
    said = [line.sentence + " ".join(line.assumed) for line in facts.limits]
    said += [f"{heading} {text}" for heading, text in what_helps(facts)]
    said += [headway_in_words(facts), stop_in_words(facts), facts.take_next, for_a_guest(facts), facts.track]
    return sum(map(len, (*said, *facts.look_again[:2], *facts.beside)))
