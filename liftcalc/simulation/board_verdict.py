"""How a choice before the board is spoken of, and the verdict with its condition."""

import math

from liftcalc.quantity_text import show
from liftcalc.units import Q

SHORT_WAIT = Q(30.0, "s")  # assumed: for less than so much waiting nobody would pay; the verdict says so
NO_CUT = 1.0  # s: a wait that changes by less is the same
NOTHING = 0.5  # dollars a season: less is nothing
_DECIDING = "whoever answers for the slope and the authority"


def seconds(wait):
    """Return a wait in whole seconds."""
    return f"{wait.m_as('s'):,.0f} s"


def dense_of(density):
    """Return riders a hectare in words: with a digit more where a whole number would say nothing."""
    riders = density.m_as("person/hectare")
    return f"{riders:,.0f}" if riders >= 9.95 else f"{riders:.1f}" if riders >= 0.05 else "fewer than 0.1"


def too_dense(density, most):
    """Return riders a hectare that are more than a guideline's most, with a digit more where rounding hides it."""
    riders = density.m_as("person/hectare")
    return f"{riders:.1f}" if round(riders) <= most.m_as("person/hectare") < riders else dense_of(density)


def named(density):
    """Return riders a hectare as a guideline names them."""
    return f"{density.m_as('person/hectare'):g}"


def dollars_of(choice):
    """Return what a choice costs more a season than today."""
    return f"{choice.a_season.m_as('dollar/season'):,.0f}"


def of_a_ride(choice):
    """Return the cost of an extra ride in words."""
    cost = choice.an_extra_ride
    return "no extra ride" if cost is None else show(cost, "dollar/person").replace("a ride", "an extra ride")


def cut_of(today, choice):
    """Return what a choice takes off the wait [s]."""
    return (today.wait() - choice.wait()).m_as("s")


def is_sparse(case, *choices):
    """Return whether riders are fewer than the guideline's least, whatever is chosen."""
    return all(each.density() < case.guideline_least for each in choices)


def crowd_of(people):
    """Return a crowd in words."""
    return f"a crowd of {people.m_as('person'):.0f}"


def _no_cut(cut, choice):
    """Return what is said of a choice that takes nothing off the wait."""
    makes = f"makes the wait {-cut:.0f} s longer" if cut <= -NO_CUT else "takes nothing off the wait"
    return f"{makes}, and costs {dollars_of(choice)} dollars."


def _price(choice):
    """Return what a season and an extra ride cost, in words."""
    if choice.a_season.magnitude < NOTHING:
        return "for nothing"
    return f"for {dollars_of(choice)} dollars a season, {of_a_ride(choice)}"


def of_the_helper(case, today, helper, twin):
    """Return what the helper gives and takes, beside what the added line does."""
    cut, most = cut_of(today, helper), cut_of(today, twin)
    if cut < NO_CUT:
        return f"A helper as entered {_no_cut(cut, helper)}"
    parts = ""
    if min(helper.a_season, twin.a_season).magnitude >= NOTHING and most >= NO_CUT:
        money = 100 * (helper.a_season / twin.a_season).m_as("")
        parts = f": {money:.0f} % of the money of {case.line_added} for {100 * cut / most:.0f} % of its effect"
    return (
        f"A helper at the loading point takes {cut:.0f} s off that wait {_price(helper)}{parts}. "
        f"{helper.governs.capitalize()} governs then: at most {show(helper.governed.value)}."
    )


def of_the_added(case, today, twin):
    """Return what the added line gives and takes."""
    cut = cut_of(today, twin)
    if cut < NO_CUT:
        return f"{case.line_added} beside it {_no_cut(cut, twin)}"
    return f"{case.line_added} beside it takes {cut:.0f} s off, down to {seconds(twin.wait())}, {_price(twin)}."


def verdict(case, today, helper, twin):
    """Return the verdict with its condition: which choices the wait asks for, and which the slope has room for."""
    cut, most = cut_of(today, helper), case.guideline_most
    helps, leave = cut >= NO_CUT, "leave it as it is"
    worth = _if_worth(cut, helper.a_season, "who costs nothing")
    first = f"Already today it has {too_dense(today.density(), most)} riders a hectare: "
    first = first if today.density() > most else ""
    if not first and today.wait() < SHORT_WAIT:
        said = f"{leave}, as long as {crowd_of(case.crowd)} waits {seconds(today.wait())} (assumed: below "
        said += f"{seconds(SHORT_WAIT)} of waiting nobody would pay for less); "
        cost = "" if helper.a_season.magnitude < NOTHING else f", {of_a_ride(helper)}"
        if helper.density() > most:
            cost += f", and {_DECIDING} accept {too_dense(helper.density(), most)} riders a hectare"
        return f"Verdict: {said}{f'else the helper, {worth}{cost}' if helps else 'no helper'}."
    if helps and helper.density() > most:
        dense = too_dense(helper.density(), most)
        grows = f"grows from {_hectares(case.slope_area)} to {_at_least(helper.area_wanted)}, or {_DECIDING} accept"
        said = f"{first}neither, unless it {grows} {dense}"
        if not first:
            said = f"Even the helper brings {dense} riders a hectare: neither, unless the slope {grows} it"
        return f"Verdict: the slope first. {said}; then the helper, {worth}; else {leave}."
    begins = f"the slope first. {first}" if first else ""
    return f"Verdict: {begins}{_of_both(case, today, helper, twin, worth if helps else None)} {leave}."


def _of_both(case, today, helper, twin, worth):
    """Return the verdict up to its last word where the slope has room for the helper.

    ``worth`` is the condition of the helper, None where it is no help.
    """
    dense, added = f"{too_dense(twin.density(), case.guideline_most)} riders a hectare", case.line_added
    before = today if worth is None else helper
    more = (before.wait() - twin.wait()).m_as("s")
    if more < NO_CUT:
        none = f"no helper, and no {added}:"
        return none if worth is None else f"the helper, {worth}; {added} takes no more off; else"
    if twin.density() > case.guideline_most:
        now = "no helper" if worth is None else f"the helper now, {worth}"
        grows = f"the slope grows from {_hectares(case.slope_area)} to {_at_least(twin.area_wanted)}"
        return f"{now}; {added} only if {grows}, or if {_DECIDING} accept {dense}; else"
    agree = f"{_DECIDING} agree" + ("" if is_sparse(case, today, helper, twin) else f" to {dense}")
    if worth is None:
        paid = _if_worth(more, twin.a_season, "which costs nothing")
        return f"no helper; {added}, {_joined(paid, agree)}; else"
    paid = _if_worth(more, twin.a_season - helper.a_season, "which costs no more than the helper", helper=True)
    return f"{added}, {_joined(paid, agree)}; else the helper, {worth}; else"


def _if_worth(less, dollars, gift, *, helper=False):
    """Return the condition of a choice: what so much less waiting is to be worth, alone or beyond the helper."""
    if dollars.magnitude < NOTHING:
        return gift
    than, more = (" than with the helper", " more") if helper else ("", "")
    are = "is" if f"{less:.0f}" == "1" else "are"
    return f"if {less:.0f} s less{than} {are} worth {dollars.magnitude:,.0f} dollars{more}"


def _joined(paid, agree):
    return f"{paid}, and {agree}" if paid.startswith("if") else f"{paid}, if {agree}"


def _hectares(area):
    """Return an area as it was entered, with two places at least."""
    number = area.m_as("hectare")
    return f"{number:.2f} ha" if abs(number - round(number, 2)) < 1e-9 else f"{number:g} ha"


def _at_least(area):
    """Return an area that is wanted, rounded up."""
    return f"{math.ceil(100 * area.m_as('hectare') - 1e-9) / 100:.2f} ha"
