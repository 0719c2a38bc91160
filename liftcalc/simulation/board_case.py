"""A proposal before the board: today, a helper at the loading point, a second rope; what each gives and takes.

A choice is judged by what a crowd makes of it: riders, waits, room on the slope, money. Planning figures: safety comes
before throughput, and the local code, the authority and whoever answers for the slope decide.
"""

import functools
import math
from dataclasses import dataclass, replace

import numpy as np
from pint import Quantity

from liftcalc.formulas.cost import energy_cost_of_a_ride
from liftcalc.formulas.slope_crowding import slope_capacity, slope_density
from liftcalc.levels import Capacity
from liftcalc.lifts.cost_of_lift import cost_sheet, read_costs, yearly_cost
from liftcalc.lifts.demo_hill import DATA, demo_hill
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_of, ride_energy
from liftcalc.lifts.readings import known_values
from liftcalc.quantity_text import show
from liftcalc.simulation.board_sheet import BoardCase, read_board_case
from liftcalc.simulation.board_verdict import (
    NO_CUT,
    crowd_of,
    cut_of,
    dense_of,
    dollars_of,
    is_sparse,
    named,
    of_a_ride,
    of_the_added,
    of_the_helper,
    seconds,
    verdict,
)
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
        """Smallest crowd that brings more riders a hectare than the guideline; None where none that was tried does."""
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


def _against_the_guideline(choice):
    density, case = choice.density(), choice.case
    over, below = density - case.guideline_most, case.guideline_least - density
    return f"{dense_of(over)} above" if over > 0 else f"{dense_of(below)} below" if below > 0 else "within"


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
    crowd, many = crowd_of(case.crowd), crowd_of(busiest)
    guideline = f"{case.guideline_for}: {named(case.guideline_least)} to {named(case.guideline_most)}"
    rows = {
        "people an hour": lambda choice: str(choice.carried),
        "single days differ by": lambda choice: show(choice.spread),
        "at most": lambda choice: str(choice.governed),
        "what governs": lambda choice: choice.governs,
        f"{crowd} rides": lambda choice: show(choice.rides()),
        f"{crowd} waits": lambda choice: seconds(choice.wait()),
        "riders a hectare": lambda choice: dense_of(choice.density()),
        f"guideline, {guideline}": _against_the_guideline,
        f"{many} waits": lambda choice: seconds(choice.wait(busiest)),
        f"riders a hectare with {many}": lambda choice: dense_of(choice.density(busiest)),
        "extra rides a season": lambda choice: f"{choice.extra_rides.magnitude:,.0f}",
        "extra dollars a season": dollars_of,
        "an extra ride costs": lambda choice: of_a_ride(choice).removesuffix(" an extra ride"),
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
    return [
        f"Today {case.line_today} carries {today.carried}: {crowd_of(case.crowd)} waits {seconds(today.wait())} for "
        f"each ride, and {dense_of(today.density())} riders are on each hectare of slope.",
        of_the_helper(case, today, helper, twin),
        " ".join([of_the_added(case, today, twin), *_left_out(case, today, helper, **where)]),
        _of_the_slope(case, today, helper, twin, **where),
        f"The guideline for a {case.guideline_for} slope is {named(case.guideline_least)} to "
        f"{named(case.guideline_most)} riders a hectare ({case.guideline_source}): the planners' figure, and no law.",
        _of_safety(case, **where),
        _of_where_a_helper_stands(case, **where),
        _not_known(case, today, **where),
        _hangs_on(case, choices),
        verdict(case, today, helper, twin),
    ]


def _left_out(case, today, helper, *, hill=None, costs=None, **where):
    """Return what the helper is not counted with, where there is a helper to speak of."""
    demo = _of_the_demo()
    (line, readings), costs = (hill or demo[0]).line(case.line_today), demo[1] if costs is None else costs
    if cut_of(today, helper) < NO_CUT or helper.an_extra_ride is None:
        return []
    values = known_values(line, readings)
    energy, part, dollars = ride_energy(line.kind, values), values.get("efficiency"), "not read"
    if energy is not None and part is not None:
        a_ride = energy_cost_of_a_ride(energy, part, costs[case.line_today]["energy_price"])
        dollars = f"{(a_ride * helper.extra_rides).m_as('dollar/season'):,.0f} dollars"
    return [
        f"The helper is counted at the wage alone; the energy of {helper.extra_rides.magnitude:,.0f} more rides "
        f"({dollars}) and a higher peak are left out."
    ]


def _of_where_a_helper_stands(case, *, costs=None, **where):
    """Return the caution for whoever helps at a loading point of any kind of lift."""
    posts = (_of_the_demo()[1] if costs is None else costs)[case.line_today]["posts"]
    return (
        f"The helper comes on top of the {show(posts)} post{'' if posts.magnitude == 1 else 's'} of {case.line_today}: "
        "a helper stands where the rules of the lift put one, with hands and clothes clear of moving rope, belt and "
        "drive and a stop in reach, and is no attendant unless trained and named as one."
    )


def _of_the_slope(case, today, helper, twin, *, hill=None, **where):
    """Return what comes down the slope: more riders, unless the added line is the slower one and the crowd small."""
    hill = _of_the_demo()[0] if hill is None else hill
    (line, _), (added, _) = hill.line(case.line_today), hill.line(case.line_added)
    fewer = twin.an_extra_ride is None and added.ride_time > line.ride_time
    dense = [dense_of(each.density()) for each in (helper, twin, today)]
    said = []
    if is_sparse(case, today, helper, twin):
        said += [f"The slope is no matter here: fewer than {named(case.guideline_least)} riders a hectare."]
    if fewer:
        why = "at so small a crowd less waiting and a longer ride cancel out"
        said += [f"{case.line_added} is the slower rope: {why}."]
    if not said:
        return (
            f"Neither answer is free: whoever waits less skis more, {dense[0]} riders a hectare with the helper and "
            f"{dense[1]} with {case.line_added}, where {dense[2]} ski today."
        )
    said += [f"With the helper {dense[0]} ski to a hectare, with {case.line_added} {dense[1]}, today {dense[2]}."]
    return " ".join(said)


def _hangs_on(case, choices):
    """Return what the answer hangs on: the crowd, and from which on the guideline is passed."""
    *most, last = (f"{each.wait(case.busiest_crowd).m_as('s'):,.0f}" for each in choices)
    over, dense = choices[-1].over_from, dense_of(choices[-1].density(case.busiest_crowd))
    begins = f"the guideline is not passed up to {crowd_of(Q(choices[-1].riders.size, 'person'))}, the largest tried"
    if over is not None:
        begins = f"the guideline is passed there from {show(over)} on"
    return (
        f"The answer hangs on the crowd: {crowd_of(case.busiest_crowd)} waits {', '.join(most)} and {last} s, and with "
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
        ropes = f"{show(case.ropes_an_attendant)} rope{'' if case.ropes_an_attendant.magnitude == 1 else 's'}"
        said = f"with {ropes} to an attendant the posts of {case.line_added} are counted "
        said += f"{all_its_own - paid:,.0f} dollars lower, by a rule as entered ({case.rule_source})"
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
        f"days differ by {show(today.spread)}, {seconds(longer)} of waiting."
    )
    if "rider_mass" not in readings:
        return said
    heavier = {**readings, "rider_mass": readings["rider_mass"] * HEAVIER}
    now, then = (show(governing(limits_of(added, each)).capacity.value) for each in (readings, heavier))
    return (
        f"{said} Were riders {100 * (HEAVIER - 1):.0f} % heavier than was read, {added.name} would carry {then} at "
        f"most, not {now}."
    )
