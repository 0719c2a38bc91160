"""Any lifts, and a proposal, side by side in one table: what they carry, what they ask for, and what they cost.

All that can be is said of one level, governed; what was simulated or counted stands beside it with its own. Planning
figures: a table decides nothing of safety, and what is required the local code and the authority say.
"""

import math
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from pint import Quantity

from liftcalc.formulas.capacity import vertical_transport
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.levels import Capacity, compare
from liftcalc.lifts.cost_of_lift import cost_sheet, yearly_cost
from liftcalc.lifts.governing import governing
from liftcalc.lifts.kinds import NOT_READ, kind_named
from liftcalc.lifts.limits_of_line import limits_of, power_needed
from liftcalc.lifts.line import Line
from liftcalc.quantity_text import as_received, show
from liftcalc.simulation.closed_crowd import closed_crowd
from liftcalc.simulation.day_tables import DayTables, loading_day
from liftcalc.simulation.day_words import AT_THE_ROPE, DAYS, SEED
from liftcalc.simulation.many_days import simulate_days_held
from liftcalc.tables import Lines, Table
from liftcalc.units import PlainError, Q

CARRIED = ("counted", "simulated")  # levels of what a lift carries, the better one first
STATES = ("running", "proposal", NOT_READ)


@dataclass(frozen=True)
class Choice:
    """One line among those that are compared.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.
    costs : dict of str to Quantity or None
        Its costs, as ``read_costs`` returns them for each line.
    tables : DayTables or None
        A day at its loading point, to be simulated.
    carried : Capacity or None
        What it carries, "counted" or "simulated", where that was found in another way.
    state : str
        "running", "proposal" or "not read".
    lift : str
        Name of the lift that it is run as part of; its own name if left out.
    descent_time : Quantity [s] or None
        Time of one descent, where it is another than that of the table.
    evacuation : str or None
        What was asked of the authority about a plan to bring riders down; None for what is usual of its kind.

    Raises
    ------
    PlainError
        If the state is none of these, or what it carries is of another level or given twice.
    """

    line: Line
    readings: dict = field(default_factory=dict)
    costs: dict | None = None
    tables: DayTables | None = None
    carried: Capacity | None = None
    state: str = "running"
    lift: str = ""
    descent_time: Quantity | None = None
    evacuation: str | None = None

    def __post_init__(self):
        name = self.line.name
        if self.state not in STATES:
            raise PlainError(f"Choice: the state of {name} must be one of {', '.join(STATES)}, but got {self.state!r}.")
        if self.carried is None:
            return
        if self.carried.level not in CARRIED or self.carried.lines > 1:
            raise PlainError(
                f"Choice: what {name} carries must be simulated or counted, for one line, but got {self.carried}. "
                "Leave it out: governed and ideal follow from the readings."
            )
        if self.tables is not None and self.carried.level == "simulated":
            raise PlainError(f"Choice: {name} has a simulated figure and a day to simulate. Give one of the two.")

    @cached_property
    def found(self):
        """What governs, as ``governing`` returns it."""
        return governing(limits_of(self.line, self.readings))

    @property
    def governed(self):
        """What it carries at most, by the smallest of its own limits."""
        return self.found.capacity

    @cached_property
    def carries(self):
        """What it carries, by level: counted and simulated, as far as they are there."""
        found = {} if self.carried is None else {self.carried.level: self.carried}
        if self.tables is not None:
            rates = simulated_rates(self.line, self.readings, self.tables)
            found["simulated"] = Capacity(Q(float(rates.mean()), "pph"), "simulated")
        return found

    @property
    def best_known(self):
        """What it carries by the best that is known: counted, else simulated, else governed: an upper bound."""
        return next((self.carries[level] for level in CARRIED if level in self.carries), self.governed)

    @cached_property
    def power(self):
        """Power of the motor at the governed capacity; None where a reading is missing."""
        return power_needed(self.line, self.readings, self.governed.value)

    @cached_property
    def cost(self):
        """What it costs a year; None where costs, or readings that its energy needs, are missing."""
        if self.costs is None or self.power is None:
            return None
        return yearly_cost(cost_sheet(self.line, self.readings, self.costs))


def other_limits(line, readings):
    """Return what the limits apart from the loading point allow [person/h]: a simulated day has not got them in it."""
    others = [
        each.capacity.m_as("pph")
        for each in governing(limits_of(line, readings)).in_order
        if each.group == "lift" and each.name not in AT_THE_ROPE
    ]
    return min(others, default=math.inf)


def simulated_rates(line, readings, tables, *, seed=SEED, days=DAYS):
    """Return what single days carry [person/h], held to what motor, rope and unload area of the line allow.

    Parameters
    ----------
    line : Line
        A line that is grabbed, or stepped on, at any time.
    readings : mapping of str to Quantity
        As for ``known_values``.
    tables : DayTables
        As ``read_day`` returns it.
    seed, days : int
        Start of the random numbers, and how many days.

    Returns
    -------
    array
        A number a day.
    """
    return simulate_days_held(loading_day(line, tables), other_limits(line, readings), seed, days)


def hill_choices(hill, costs=None, tables=None, carried=None):
    """Return a choice for each line of a hill.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.
    costs, tables, carried : dict or None
        Costs, days and what was counted, each by the name of the line; a line that is not there has none.

    Returns
    -------
    list of Choice
    """
    costs, tables, carried = costs or {}, tables or {}, carried or {}
    strange = [name for name in (*costs, *tables, *carried) if name not in hill.lines]
    if strange:
        raise PlainError(f"hill_choices: {hill.no_line(strange[0])}")
    return [
        Choice(
            line, hill.readings.get(line.name, {}), costs.get(line.name), tables.get(line.name),
            carried.get(line.name), _state(hill, line.name), lift.name,
        )
        for lift in hill.lifts.values()
        for line in lift.lines
    ]  # fmt: skip


def _state(hill, name):
    return hill.sheets[name].facts.get("state", NOT_READ) if name in hill.sheets else NOT_READ


@dataclass(frozen=True)
class _Crowd:
    """Who rides: people, and the time of one descent; both None where no crowd is asked for."""

    people: Quantity | None
    descent: Quantity | None

    def of(self, choice):
        """Return the time of one descent for a choice."""
        return self.descent if choice.descent_time is None else choice.descent_time


def wait_in_crowd(capacities, *, crowd, away):
    """Return riders an hour and mean wait of a closed crowd on ropes side by side, shared out as they carry.

    Parameters
    ----------
    capacities : sequence of Capacity
        What each rope carries.
    crowd : Quantity [person]
        People who ride these ropes and nothing else.
    away : sequence of Quantity [s]
        Ride and descent, for each rope.

    Returns
    -------
    array, array
        Riders an hour and mean wait [s], for each size of the crowd from one person up.
    """
    pph = np.array([each.value.m_as("pph") for each in capacities])
    times = {"loading_time": Q(3600 / pph, "s"), "ride_and_descent": Q([each.m_as("s") for each in away], "s")}
    shares = pph / pph.sum()
    found = closed_crowd(crowd, **times, shares=Q(shares, ""))
    return found.riders_an_hour.m_as("pph").sum(axis=1), found.wait.m_as("s") @ shares


def _text(value, unit=None):
    return NOT_READ if value is None else show(value, unit)


def _level(level):
    """Return the function of a cell for what a lift carries at a level."""
    return lambda choice, crowd, first: str(choice.carries[level]) if level in choice.carries else NOT_READ


def _against(choice, crowd, first):
    return f"{compare(choice.governed, first.governed).ratio:.2f} to 1"


def _ride(choice, crowd, first):
    line = choice.line
    return show(line.ride_time) + (", start not read" if line.start_not_read else "")


def _wait(choice, crowd, first):
    if crowd.of(choice) is None:
        return NOT_READ
    known = choice.best_known
    _, wait = wait_in_crowd([known], crowd=crowd.people, away=[choice.line.ride_time + crowd.of(choice)])
    return f"{wait[-1]:.0f} s, as {known.level}"


def _on_a_stop(choice, crowd, first):
    riders = persons_from_flow(choice.governed.value, choice.line.ride_time)
    return f"{kind_named(choice.line.kind).on_a_stop}, {riders.m_as('person'):.0f} riders"


def _evacuation(choice, crowd, first):
    return choice.evacuation or kind_named(choice.line.kind).riding.evacuation


def _energy(choice, crowd, first):
    if choice.power is None:
        return NOT_READ
    return f"{(choice.power / choice.governed.value).m_as('kilowatt_hour/person'):.3f} kWh"


def _cost(what, digits=0):
    """Return the function of a cell of money, from a function of the yearly cost."""

    def cell(choice, crowd, first):
        return NOT_READ if choice.cost is None else f"{what(choice.cost).magnitude:,.{digits}f}"

    return cell


def _paid(name, digits=0):
    """Return the function of a cell for what stands in the costs."""

    def cell(choice, crowd, first):
        return NOT_READ if choice.costs is None else f"{choice.costs[name].magnitude:,.{digits}f}"

    return cell


def _together(choices):
    """Return the function of a cell for all lines of a lift together, where several of them are compared."""
    lifts = {}
    for choice in choices:
        lifts.setdefault(choice.lift or choice.line.name, []).append(choice.governed.value)

    def cell(choice, crowd, first):
        lines = lifts[choice.lift or choice.line.name]
        return str(Capacity(sum(lines[1:], lines[0]), "governed", len(lines))) if len(lines) > 1 else ""

    return cell, any(len(lines) > 1 for lines in lifts.values())


ROWS = {
    "kind": lambda choice, crowd, first: choice.line.kind,
    "state": lambda choice, crowd, first: choice.state,
    "people an hour, like for like": lambda choice, crowd, first: str(choice.governed),
    "what governs": lambda choice, crowd, first: choice.found.limit.name,
    "against the first, both governed": _against,
    "simulated": _level("simulated"),
    "counted": _level("counted"),
    "vertical transport": lambda choice, crowd, first: show(
        vertical_transport(choice.governed.value, choice.line.vertical_rise)
    ),
    "ride time": _ride,
    "wait in the crowd": _wait,
    "motor, rated": lambda choice, crowd, first: _text(choice.line.motor_power, "kW"),
    "motor, needed": lambda choice, crowd, first: _text(choice.power, "kW"),
    "energy a ride": _energy,
    "posts": _paid("posts"),
    "to buy, dollars": _paid("price"),
    "a year, dollars": _cost(lambda cost: cost.total),
    "a ride, dollars": _cost(lambda cost: cost.per_ride, 2),
    "when it stops": _on_a_stop,
    "evacuation plan": _evacuation,
}


def compare_lifts(choices, *, crowd=None, descent_time=None):
    """Return lifts side by side, a column a line.

    Parameters
    ----------
    choices : sequence of Choice
        One or more; each ratio is against the first.
    crowd : Quantity [person] or None
        People who ride one lift alone, lap after lap; without it waits are left out.
    descent_time : Quantity [s] or None
        Time of one descent.

    Returns
    -------
    Table
        What was not read is "not read". ``comparison_notes`` says what is assumed.

    Raises
    ------
    PlainError
        If there is no choice, two have one name, or a crowd came without a descent time.

    Examples
    --------
    >>> from liftcalc.lifts.demo_hill import demo_line
    >>> table = compare_lifts([Choice(*demo_line("Penny Rope")), Choice(*demo_line("Long Platter"))])
    >>> table.rows[2]
    ('people an hour, like for like', '1,200 pph (governed)', '514 pph (governed)')
    """
    choices, riders = _taken(choices, crowd, descent_time)
    together, has_several = _together(choices)
    rows = {}
    for heading, cell in ROWS.items():
        if cell is not _wait or crowd is not None:
            rows[heading] = cell
        if heading == "against the first, both governed" and has_several:
            rows["all lines of the lift"] = together
    cells = [(heading, *(cell(each, riders, choices[0]) for each in choices)) for heading, cell in rows.items()]
    names = [each.line.name for each in choices]
    caption = "Lifts side by side, each line by itself"
    if crowd is not None:
        caption += f"; waits if a crowd of {crowd.m_as('person'):.0f} rides each one alone"
    return Table(caption, ("line", *names), cells)


def _taken(choices, crowd, descent_time):
    """Return the choices as a list, and the crowd, or say what is missing."""
    choices = list(choices)
    strange = next((each for each in choices if not isinstance(each, Choice)), None)
    if strange is not None or not choices:
        came = "nothing" if strange is None else as_received(strange)
        raise PlainError(f"compare_lifts: every entry must be a Choice, but got {came}. Write Choice(line, readings).")
    names = [each.line.name for each in choices]
    twice = [name for name in names if names.count(name) > 1]
    if twice:
        raise PlainError(f"compare_lifts: two lines are called {twice[0]!r}. Give each a name of its own.")
    if crowd is not None and descent_time is None and all(each.descent_time is None for each in choices):
        raise PlainError("compare_lifts: a crowd of riders needs a descent_time. Write for example Q(75, 's').")
    return choices, _Crowd(crowd, descent_time)


def comparison_notes(choices, *, crowd=None, descent_time=None):
    """Return what a table of ``compare_lifts`` assumes, and what no table says.

    Parameters
    ----------
    choices, crowd, descent_time
        As for ``compare_lifts``.

    Returns
    -------
    Lines
    """
    choices, riders = _taken(choices, crowd, descent_time)
    told = [
        "Like for like: vertical transport, power, energy and riders on the line are those of the governed figure, an "
        "upper bound. A simulated or counted figure stands beside it and is never held against another lift's governed."
    ]
    if any(each.tables is not None for each in choices):
        told.append(f"Simulated: {DAYS} days on which a line stands, held to what motor, rope and unload area allow.")
    if crowd is not None:
        told.append(
            f"Waits: {show(crowd)} ride this one lift, lap after lap, with a mean loading time of 3,600 s over what it "
            "carries, exponential: real ones differ less, and waits are a little shorter. Counted goes before "
            "simulated; where neither is there the wait is that of the governed figure, and too short."
        )
    if any(each.costs is not None for each in choices):
        told.append("Money is a label. A year holds capital, staff, energy and bills; a ride is one that was carried.")
    told.append(
        "Posts are those that code and sight lines ask for: supervision comes before throughput. Whether a plan to "
        "bring riders down is required, and what it must hold, the authority says; each kind has hazards of its own."
    )
    return Lines(*told)
