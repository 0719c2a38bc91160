"""A proposal before the board: today, a helper at the loading point, a second rope; what each gives and takes.

A choice is judged by what a crowd makes of it: riders, waits, room on the slope, money. Planning figures: safety comes
before throughput, and the local code, the authority and whoever answers for the slope decide.
"""

import functools
import math
from dataclasses import dataclass, replace

import numpy as np
from pint import Quantity

from liftcalc.formulas.slope_crowding import slope_capacity, slope_density
from liftcalc.levels import Capacity
from liftcalc.lifts.cost_of_lift import cost_sheet, read_costs, yearly_cost
from liftcalc.lifts.demo_hill import DATA, demo_hill
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.quantity_text import show
from liftcalc.simulation.board_sheet import BoardCase, read_board_case
from liftcalc.simulation.day_tables import read_day
from liftcalc.simulation.day_words import SEED
from liftcalc.simulation.side_by_side import simulated_rates, wait_in_crowd
from liftcalc.tables import Table
from liftcalc.units import PlainError, Q

__all__ = ["BoardCase", "BoardChoice", "board_choices", "board_model_answer", "board_table", "read_board_case"]
HEAVIER = 1.1  # how much heavier riders may be than was assumed: ten per cent is a common doubt


@dataclass(frozen=True)
class BoardChoice:
    """One choice of the board, and what the crowd makes of it.

    Parameters
    ----------
    name : str
        Such as "today".
    lines : int
        How many lines it has.
    rates : array
        What single days carry, simulated [person/h].
    governed : Capacity
        What its own limits allow, all lines together.
    governs : str
        The limit that governs, of each line.
    riders, waits : array
        Riders an hour, and mean wait [s], for each size of a crowd from one person up.
    case : BoardCase
        Crowd and slope by which it is judged.
    extra_rides : Quantity [person/season]
        Rides more than today in the busy hours.
    a_season : Quantity [dollar/season]
        What it costs more than today.
    """

    name: str
    lines: int
    rates: np.ndarray
    governed: Capacity
    governs: str
    riders: np.ndarray
    waits: np.ndarray
    case: BoardCase
    extra_rides: Quantity
    a_season: Quantity

    @property
    def carried(self):
        """What it carries while a line stands, the mean of the simulated days."""
        return Capacity(Q(float(self.rates.mean()), "pph"), "simulated", self.lines)

    @property
    def spread(self):
        """How far single days are from that mean by chance: one standard deviation."""
        return Q(float(np.std(self.rates, ddof=1)), "pph")

    def rides(self, crowd=None):
        """Return the riders an hour that a crowd makes; the case's own if left out."""
        return Q(float(self.riders[self._place(crowd)]), "pph")

    def wait(self, crowd=None):
        """Return the mean wait of a crowd; the case's own if left out."""
        return Q(float(self.waits[self._place(crowd)]), "s")

    def density(self, crowd=None):
        """Return the riders a hectare of slope that a crowd makes: its riders come down, and not the capacity."""
        return slope_density(self.rides(crowd), self.case.slope_area, self.case.descent_time)

    def _place(self, crowd):
        return round((self.case.crowd if crowd is None else crowd).m_as("person")) - 1

    @property
    def over_from(self):
        """Smallest crowd that brings more riders a hectare than the guideline; None where twice the crowd does not."""
        case = self.case
        most = slope_capacity(case.guideline_most, case.slope_area, case.descent_time).m_as("pph")
        over = np.flatnonzero(self.riders > most * (1 + 1e-9))
        return Q(int(over[0]) + 1, "person") if over.size else None

    @property
    def area_wanted(self):
        """Slope on which the crowd is no denser than the guideline."""
        return self.case.slope_area * (self.density() / self.case.guideline_most).m_as("")

    @property
    def an_extra_ride(self):
        """Cost of a ride more than today [dollar/person]; None where there is none."""
        return self.a_season / self.extra_rides if self.extra_rides.magnitude > 0.5 else None


@functools.cache
def _of_the_demo():
    """Return hill, costs and day that stand in the data folder."""
    tables = read_day(DATA / "days/penny_rope_classes.csv", DATA / "days/penny_rope_day.csv")
    return demo_hill(), read_costs(DATA / "costs.csv"), tables


def board_choices(case, *, hill=None, costs=None, tables=None):
    """Return the three choices: today, a helper at the loading point, and the line that is proposed beside it.

    Simulated days hold the riders as they were seen. A helper changes their readiness and misses, all classes alike;
    the added line has the same riders, and its own speed, spacing and ride. No day starts more than motor, rope and
    unload area allow. The crowd shares out between two lines as they carry.

    Parameters
    ----------
    case : BoardCase
        As ``read_board_case`` returns it.
    hill, costs, tables : Hill, dict, DayTables, or None
        As ``read_hill``, ``read_costs`` and ``read_day`` return them; those of the demo hill if left out.

    Returns
    -------
    list of BoardChoice
    """
    demo = _of_the_demo()
    hill, costs, tables = (
        own if own is not None else its for own, its in zip((hill, costs, tables), demo, strict=True)
    )
    for name in (case.line_today, case.line_added):
        if name not in costs:
            raise PlainError(f"board_choices: there are no costs of {name!r}. Add a row of it to the table of costs.")
    (line, readings), (added, of_added) = hill.line(case.line_today), hill.line(case.line_added)
    first = [(line, readings, tables)]
    helped = [(line, _with_helper(case, readings), _day_with_helper(case, tables))]
    today = _choice(case, "today", first)
    helper = _choice(case, "a helper at the loading point", helped, today)
    twin = _choice(case, f"{added.name} beside it", [*first, (added, of_added, tables)], today)
    own = costs[added.name]
    wage = own["wage"] * (posts_added(case, costs) / own["posts"]).m_as("")  # where posts are shared, of all its own
    rides = max(twin.extra_rides, Q(1.0, "person/season"))
    as_run = {"running_hours": case.busy_hours, "wage": wage, "rides": rides}
    paid = replace(cost_sheet(added, of_added, own), **as_run)  # rides of simulated days may be more than what governs
    return [
        today,
        replace(helper, a_season=(case.helper_wage * case.busy_hours).to("dollar/season")),
        replace(twin, a_season=yearly_cost(paid).total),
    ]


def posts_added(case, costs):
    """Return the posts that the added line needs: its own, or fewer where a rule with its source was entered."""
    own, today = costs[case.line_added]["posts"], costs[case.line_today]["posts"]
    if case.ropes_an_attendant is None:
        return own
    together = math.ceil(((own + today) / case.ropes_an_attendant).m_as("") - 1e-9)
    return Q(max(together - today.m_as(""), 0.0), "")


def _with_helper(case, readings):
    return {**readings, "loading_time": case.helper_readiness, "loading_timed_as": "readiness"}


def _day_with_helper(case, tables):
    """Return the day with all classes quicker by one factor, and with the misses that are left."""
    mean = sum(each.share * each.readiness for each in tables.classes)
    factor, left = case.helper_readiness.m_as("s") / mean, case.helper_misses.m_as("")
    classes = (replace(each, readiness=each.readiness * factor, misses=each.misses * left) for each in tables.classes)
    return replace(tables, classes=tuple(classes))


def _choice(case, name, lines, today=None):
    """Return a choice of one or several lines, each with readings and day; its cost is not yet there."""
    rates = [simulated_rates(*each, seed=SEED + place) for place, each in enumerate(lines)]
    found = [governing(limits_of(line, readings)) for line, readings, _ in lines]
    carried = [Capacity(Q(float(each.mean()), "pph"), "simulated") for each in rates]
    away = [line.ride_time + case.descent_time for line, *_ in lines]
    largest = max(2 * case.crowd, case.busiest_crowd)
    riders, waits = wait_in_crowd(carried, crowd=largest, away=away)
    choice = BoardChoice(
        name, len(lines), np.sum(rates, axis=0),
        Capacity(Q(sum(each.capacity.value.m_as("pph") for each in found), "pph"), "governed", len(lines)),
        ", ".join(each.limit.name for each in found), riders, waits, case,
        Q(0.0, "person/season"), Q(0.0, "dollar/season"),
    )  # fmt: skip
    if today is None:
        return choice
    return replace(choice, extra_rides=((choice.rides() - today.rides()) * case.busy_hours).to("person/season"))


def _seconds(wait):
    return f"{wait.m_as('s'):,.0f} s"


def _dense(density):
    return f"{density.m_as('person/hectare'):.0f}"


def _dollars(choice):
    return f"{choice.a_season.m_as('dollar/season'):,.0f}"


def _of_a_ride(choice):
    """Return the cost of an extra ride in words."""
    cost = choice.an_extra_ride
    return "no extra ride" if cost is None else show(cost, "dollar/person").replace("a ride", "an extra ride")


def _against_the_guideline(choice):
    density, case = choice.density(), choice.case
    over, below = density - case.guideline_most, case.guideline_least - density
    return f"{_dense(over)} above" if over > 0 else f"{_dense(below)} below" if below > 0 else "within"


def board_table(case, **where):
    """Return the choices side by side, a column each.

    Parameters
    ----------
    case : BoardCase
        As ``read_board_case`` returns it.
    **where
        As for ``board_choices``.

    Returns
    -------
    Table
    """
    choices, busiest = board_choices(case, **where), case.busiest_crowd
    crowd, many = _crowd(case.crowd), _crowd(busiest)
    guideline = f"{case.guideline_for}: {_dense(case.guideline_least)} to {_dense(case.guideline_most)}"
    rows = {
        "people an hour": lambda choice: str(choice.carried),
        "single days differ by": lambda choice: show(choice.spread),
        "at most": lambda choice: str(choice.governed),
        "what governs": lambda choice: choice.governs,
        f"{crowd} rides": lambda choice: show(choice.rides()),
        f"{crowd} waits": lambda choice: _seconds(choice.wait()),
        "riders a hectare": lambda choice: _dense(choice.density()),
        f"guideline, {guideline}": _against_the_guideline,
        f"{many} waits": lambda choice: _seconds(choice.wait(busiest)),
        f"riders a hectare with {many}": lambda choice: _dense(choice.density(busiest)),
        "extra rides a season": lambda choice: f"{choice.extra_rides.magnitude:,.0f}",
        "extra dollars a season": _dollars,
        "an extra ride costs": lambda choice: _of_a_ride(choice).removesuffix(" an extra ride"),
    }
    cells = [(heading, *(cell(choice) for choice in choices)) for heading, cell in rows.items()]
    return Table(f"{case.line_added} before the board", ("choice", *(choice.name for choice in choices)), cells)


def board_model_answer(case, **where):
    """Return a model answer to the question of what the board is to do: plain lines, each computed.

    Parameters
    ----------
    case, **where
        As for ``board_table``.

    Returns
    -------
    list of str
        What each choice gives and takes, what is not known, what the answer hangs on, and a verdict with its condition.
    """
    today, helper, twin = choices = board_choices(case, **where)
    cuts = [(today.wait() - each.wait()).m_as("s") for each in (helper, twin)]
    money = 100 * helper.a_season.magnitude / twin.a_season.magnitude
    effect = f" for {100 * cuts[0] / cuts[1]:.0f} % of its effect" if cuts[1] > 0.5 else ""
    added, source = case.line_added, case.guideline_source
    return [
        f"Today {case.line_today} carries {today.carried}: {_crowd(case.crowd)} waits {_seconds(today.wait())} for "
        f"each ride, and {_dense(today.density())} riders are on each hectare of slope.",
        f"A helper at the loading point takes {cuts[0]:,.0f} s off that wait for {_dollars(helper)} dollars a season, "
        f"{_of_a_ride(helper)}: {money:.0f} % of the money of {added}{effect}. {helper.governs.capitalize()} governs "
        f"then: at most {show(helper.governed.value)}.",
        f"{added} beside it takes {cuts[1]:,.0f} s off, down to {_seconds(twin.wait())}, for {_dollars(twin)} dollars "
        f"a season, {_of_a_ride(twin)}.",
        f"Neither answer is free: whoever waits less skis more, {_dense(helper.density())} riders a hectare with the "
        f"helper and {_dense(twin.density())} with {added}, where {_dense(today.density())} ski today.",
        f"The guideline for a {case.guideline_for} slope is {_dense(case.guideline_least)} to "
        f"{_dense(case.guideline_most)} riders a hectare ({source}): the planners' figure, and no law.",
        _of_safety(case, **where),
        _not_known(case, today, **where),
        _hangs_on(case, choices),
        _verdict(case, today, helper, twin),
    ]


def _crowd(people):
    return f"a crowd of {people.m_as('person'):.0f}"


def _hangs_on(case, choices):
    """Return what the answer hangs on: the crowd, and from which on the guideline is passed."""
    *most, last = (f"{each.wait(case.busiest_crowd).m_as('s'):.0f}" for each in choices)
    over, dense = choices[-1].over_from, _dense(choices[-1].density(case.busiest_crowd))
    begins = (
        "the guideline is not passed there" if over is None else f"the guideline is passed there from {show(over)} on"
    )
    return (
        f"The answer hangs on the crowd: {_crowd(case.busiest_crowd)} waits {', '.join(most)} and {last} s, and with "
        f"{case.line_added} skis {dense} to a hectare; {begins}."
    )


def _of_safety(case, *, costs=None, **where):
    """Return who watches the ropes, what that costs, and who decides."""
    costs = _of_the_demo()[1] if costs is None else costs
    own, posts = costs[case.line_added], posts_added(case, costs)
    paid, all_its_own = ((each * own["wage"] * case.busy_hours).m_as("dollar/season") for each in (posts, own["posts"]))
    if case.ropes_an_attendant is None:
        said = f"{case.line_added} is counted with {show(posts)} posts of its own, {paid:,.0f} dollars; one attendant "
        said += "for two ropes would be a rule, and none was entered"
    else:
        said = (
            f"{show(case.ropes_an_attendant)} ropes to an attendant save {all_its_own - paid:,.0f} dollars, by a rule "
        )
        said += f"as entered ({case.rule_source})"
    return (
        f"Safety before throughput: {said}. Supervision suffers before throughput does; the local code and the "
        "authority decide."
    )


def _not_known(case, today, *, hill=None, tables=None, **where):
    """Return what is not known: how far chance goes, and what heavier riders would take."""
    hill = _of_the_demo()[0] if hill is None else hill
    (line, _), (added, readings) = hill.line(case.line_today), hill.line(case.line_added)
    slow = Capacity(today.carried.value - today.spread, "simulated")
    _, waits = wait_in_crowd([slow], crowd=case.crowd, away=[line.ride_time + case.descent_time])
    longer = Q(float(waits[-1]), "s") - today.wait()
    said = (
        f"Not known: riders were seen on one {'invented day' if tables is None else 'day'}, and by chance alone single "
        f"days differ by {show(today.spread)}, {_seconds(longer)} of waiting."
    )
    if "rider_mass" not in readings:
        return said
    heavier = {**readings, "rider_mass": readings["rider_mass"] * HEAVIER}
    now, then = (show(governing(limits_of(added, each)).capacity.value) for each in (readings, heavier))
    return (
        f"{said} Were riders {100 * (HEAVIER - 1):.0f} % heavier than was read, {added.name} would carry {then} at "
        f"most, not {now}."
    )


def _verdict(case, today, helper, twin):
    """Return the verdict with its condition: which of the choices the slope has room for."""
    most, less = case.guideline_most, _seconds(today.wait() - helper.wait())
    dense = f"{_dense(twin.density())} riders a hectare"
    grows = f"the slope grows from {_hectares(case.slope_area)}"
    deciding = "whoever answers for the slope and the authority"
    if twin.an_extra_ride is None:
        return f"Verdict: leave it as it is, as long as the crowd stays at {show(case.crowd)}: hardly anybody waits."
    if helper.density() > most:
        return (
            f"Verdict: the slope first. Even the helper brings {_dense(helper.density())} riders a hectare: neither, "
            f"unless {grows} to {_hectares(helper.area_wanted)}, or {deciding} accept it."
        )
    if twin.density() > most:
        return (
            f"Verdict: the helper now, if {less} less are worth {_dollars(helper)} dollars; {case.line_added} only if "
            f"{grows} to {_hectares(twin.area_wanted)}, or if {deciding} accept {dense}."
        )
    return (
        f"Verdict: {case.line_added}, if {_seconds(helper.wait() - twin.wait())} less than with the helper are worth "
        f"{_dollars(twin)} dollars, and {deciding} agree to {dense}; else the helper."
    )


def _hectares(area):
    return f"{area.m_as('hectare'):.2f} ha"
