"""What lifts cost, in tables: part by part, with volunteers and grants, how sure, by what is held ready, by the ticket.

Planning figures: prices, rates and grants are for the owner, and the books for whoever keeps them.
"""

import inspect
from dataclasses import replace

import numpy as np

from liftcalc.formulas.cost import (
    common_peak,
    cost_per_ride,
    demand_charge,
    ticket_share_by_rides,
    ticket_share_by_vertical,
)
from liftcalc.lifts.cost_of_lift import BILLS, RECOVERY, UNITS, cost_sheet, yearly_cost
from liftcalc.lifts.limits_of_line import unread_for_energy
from liftcalc.lifts.readings import known_values
from liftcalc.quantity_text import show
from liftcalc.tables import Table
from liftcalc.uncertainty import by_sampling, estimate_from_half_width, show_with_doubt
from liftcalc.uncertainty.formulas import OwnFormula
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import words_of

A_RIDE, A_SEASON, RIDES = "dollar/person", "dollar/season", "person/season"
FREE = Q(0.0, "dollar/hour")
SEED, DRAWS = 2026, 20_000
PARTS = {  # row: parts of a yearly cost in it
    RECOVERY: (RECOVERY,),
    "staff": ("staff",),
    "bills": BILLS,
    "rope or belt": ("rope or belt",),
    "energy": ("energy",),
    "demand charge": ("demand charge",),
}


def _whole(quantity):
    """Return money a season, or rides, as a whole number; a cost below zero with its sign."""
    text = f"{quantity.magnitude:,.0f}"
    return "0" if text == "-0" else text


def _ride(quantity):
    return f"{quantity.m_as(A_RIDE):.2f}"


class CostSheets(list):
    """Cost sheets of some lifts, and in ``left_out`` the names of others, each with the readings that it lacks."""

    def __init__(self, sheets=(), left_out=()):
        super().__init__(sheets)
        self.left_out = tuple(left_out)

    def __getitem__(self, place):
        found = super().__getitem__(place)
        return CostSheets(found, self.left_out) if isinstance(place, slice) else found


def cost_sheets(hill, costs):
    """Return the cost sheets of the lines of a hill that a table of costs names, in its order.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.
    costs : dict of str to dict
        As ``read_costs`` returns it.

    Returns
    -------
    list of CostSheet
        A line of which readings are missing that its energy needs is left out; the captions of tables say so.

    Raises
    ------
    PlainError
        If a line is not on the hill, its rides are more than it could carry, or of none the energy is known.
    """
    sheets, left_out = [], []
    for name, of_the_line in costs.items():
        line, readings = hill.line(name)
        lacks = unread_for_energy(line.kind, known_values(line, readings))
        if lacks:
            left_out.append((name, lacks))
        else:
            sheets.append(cost_sheet(line, readings, of_the_line))
    if left_out and not sheets:
        first, _ = left_out[0]
        cost_sheet(*hill.line(first), costs[first])  # which says what it lacks
    return CostSheets(sheets, left_out)


def _with_left_out(caption, sheets):
    """Return a caption that says which lifts are no part of a table, and why."""
    told = [
        f"{name}, whose {' and '.join(lacks)} {'was' if len(lacks) == 1 else 'were'} not read"
        for name, lacks in getattr(sheets, "left_out", ())
    ]
    return f"{caption}; left out: {', and '.join(told)}" if told else caption


def _with_nought(caption, sheets):
    """Return a caption that asks for the wage of a replacement where nobody is paid."""
    unpaid = [sheet.name for sheet in sheets if np.all(sheet.wage.magnitude == 0)]
    if unpaid:
        caption += f"; wage of nought ({', '.join(unpaid)}): write the wage of whoever would replace a volunteer"
    return caption


def cost_table(sheets):
    """Return a table of what lifts cost a season, part by part, and a ride.

    Parameters
    ----------
    sheets : list of CostSheet

    Returns
    -------
    Table
        One column a lift; the largest part is named, and what is paid in cash stands below the total.
    """
    years = [yearly_cost(sheet) for sheet in sheets]
    rolled = [{row: sum(year.parts[part] for part in parts) for row, parts in PARTS.items()} for year in years]
    rows = [(row, *[_whole(parts[row]) for parts in rolled]) for row in PARTS]
    largest = [max(parts, key=parts.get) for parts in rolled]
    told = [
        f"{name.removeprefix('capital ')}, {(parts[name] / year.total).m_as('percent'):.0f} %"
        for name, parts, year in zip(largest, rolled, years, strict=True)
    ]
    rows += [
        ("total", *[_whole(year.total) for year in years]),
        ("of it in cash", *[_whole(year.cash) for year in years]),
        ("rides carried", *[_whole(sheet.rides) for sheet in sheets]),
        ("a ride", *[_ride(year.per_ride) for year in years]),
        ("largest part", *told),
    ]
    caption = _with_left_out(_with_nought("Cost of a season, and of a ride, in dollars", sheets), sheets)
    return Table(caption, ("part", *[sheet.name for sheet in sheets]), rows)


def divided_table(sheet):
    """Return a table of the cost of a ride by the rides carried, and of what looks like it and is not.

    Parameters
    ----------
    sheet : CostSheet
        With an hourly capacity.

    Returns
    -------
    Table
    """
    year = yearly_cost(sheet)
    offered = sheet.rides / year.capacity_used
    rows = [
        ("rides carried", _whole(sheet.rides), _ride(year.per_ride)),
        (f"capacity times hours: {show(sheet.hourly_capacity)} for {show(sheet.running_hours)}", _whole(offered),
         _ride(cost_per_ride(year.total, offered))),
    ]  # fmt: skip
    return Table(f"{show(year.total)} of {sheet.name}, divided by", ("what", "a season", "dollars"), rows)


def volunteers_table(sheets):
    """Return a table of the cost of a ride with paid staff, and with volunteers who are written down at nought.

    Parameters
    ----------
    sheets : list of CostSheet

    Returns
    -------
    Table
        With it, what the hours of the volunteers would cost to replace.
    """
    rows = []
    for sheet in sheets:
        paid, free = yearly_cost(sheet), yearly_cost(replace(sheet, wage=FREE))
        staff = paid.parts["staff"]
        rows.append((sheet.name, show(sheet.wage), _ride(paid.per_ride), _ride(free.per_ride), _whole(staff)))
    columns = ("lift", "wage", "a ride, hours at the wage", "a ride, hours at nought", "the hours in a season")
    caption = _with_nought("Volunteers at a wage and at nought, in dollars", sheets)
    return Table(_with_left_out(caption, sheets), columns, rows)


def grants_table(sheet, grants):
    """Return a table of what a lift costs before and after a grant.

    Parameters
    ----------
    sheet : CostSheet
    grants : list of Quantity
        What others pay of the price [dollar].

    Returns
    -------
    Table
    """
    rows = []
    for grant in grants:
        year = yearly_cost(replace(sheet, grant=grant))
        before = cost_per_ride(year.before_grant, sheet.rides)
        rows.append((show(grant), _whole(year.before_grant), _ride(before), _whole(year.total), _ride(year.per_ride)))
    columns = ("grant", "a season before", "a ride before", "a season after", "a ride after")
    return Table(f"{sheet.name} before and after a grant, in dollars", columns, rows)


def meter_table(sheets, coincidence):
    """Return a table of the demand charge of several motors: each on a meter of its own, and all behind one.

    Parameters
    ----------
    sheets : list of CostSheet
        With the prices of one tariff.
    coincidence : Quantity
        Part of the sum of their peaks that comes at once.

    Returns
    -------
    Table
    """
    first = sheets[0]
    peaks = [sheet.billed_power for sheet in sheets]
    alone = sum(peaks, Q(0.0, "kW"))
    together = common_peak(Q([peak.m_as("kW") for peak in peaks], "kW"), coincidence)
    metered = {"a meter for each": alone, f"one meter, {show(coincidence)} of the sum at once": together}
    rows = [
        (what, show(peak), _whole(demand_charge(peak, first.demand_price, first.billed_months)))
        for what, peak in metered.items()
    ]
    names = " and ".join(f"{sheet.name} {show(sheet.billed_power)}" for sheet in sheets)
    return Table(_with_left_out(f"Demand charge of {names}", sheets), ("metered", "billed", "dollars a season"), rows)


def ready_table(sheets):
    """Return a table of lifts by what they hold ready and by what they carry, all at their governed capacity.

    Parameters
    ----------
    sheets : list of CostSheet
        With hourly capacity and rise.

    Returns
    -------
    Table
    """
    rows = []
    for sheet in sheets:
        year = yearly_cost(sheet)
        rows.append((
            sheet.name, show(sheet.hourly_capacity), _ride(year.per_ride), _whole(year.per_thousand_pph),
            f"{year.per_thousand_vtfh_hours.magnitude:.2f}", f"{year.per_thousand_person_metres.magnitude:.1f}",
        ))  # fmt: skip
    columns = (
        "lift", "governed", "a ride", "a season, 1,000 pph", "1,000 VTFH for an hour", "1,000 person-metres carried",
    )  # fmt: skip
    caption = "Cost by what is held ready (governed) and by what is carried, in dollars"
    return Table(_with_left_out(caption, sheets), columns, rows)


def ticket_table(sheets, ticket_price, guests):
    """Return a table of what a ride costs and brings, the ticket shared out by rides and by height.

    Parameters
    ----------
    sheets : list of CostSheet
        All lifts that the ticket is for, with their rise.
    ticket_price : Quantity
        Price of a day [dollar].
    guests : float
        Days of guests in a season, one guest for one day each.

    Returns
    -------
    Table
        With the rides that pay for each lift, and whether the two ways of sharing agree.
    """
    if not np.isfinite(guests) or guests <= 0:
        raise PlainError(
            f"ticket_table: guests must be greater than zero, but got {guests:,.10g}. Count tickets of a day."
        )
    rides = sum(sheet.rides.m_as(RIDES) for sheet in sheets) / guests
    height = sum(sheet.rides.m_as(RIDES) * sheet.vertical_rise.m_as("m") for sheet in sheets) / guests
    rows = []
    for sheet in sheets:
        year = yearly_cost(sheet)
        shares = (
            ticket_share_by_rides(ticket_price, Q(rides, "person")),
            ticket_share_by_vertical(
                ticket_price, vertical_rise=sheet.vertical_rise, vertical_per_ticket=Q(height, "m")
            ),
        )
        pays = [share > year.per_ride for share in shares]
        verdict = {
            (True, True): "pays by both", (False, False): "pays by neither",
            (True, False): "pays by rides only", (False, True): "pays by height only",
        }[tuple(pays)]  # fmt: skip
        evens = [_even(year, share) for share in shares]
        rows.append((sheet.name, _ride(year.per_ride), *map(_ride, shares), *evens, verdict))
    columns = ("lift", "a ride costs", "brings, by rides", "by height", "break-even, by rides", "by height", "verdict")
    caption = (
        f"A ticket of {show(ticket_price)} over {rides:.1f} rides or {height:,.0f} m of a day, in dollars a ride; "
        "break-even in rides a season"
    )
    return Table(_with_left_out(caption, sheets), columns, rows)


def _even(year, share):
    """Return the rides that pay for a lift, in words."""
    return _whole(year.break_even(share)) if share > year.variable_per_ride else "none"


def doubt_table(sheet, half_widths, *, seed=SEED, draws=DRAWS):
    """Return a table of how sure the cost of a ride is, and which value makes how much of its doubt.

    Each value is drawn many times within its half-width, by itself and then all at once.

    Parameters
    ----------
    sheet : CostSheet
        The values in the middle.
    half_widths : dict of str to Quantity
        By the name of a field, how far its value may be off, as a part of it.
    seed, draws : int
        Seed of the random numbers, and how many are drawn.

    Returns
    -------
    Table
        The largest doubt first; the parts are of the squares, each by itself over their sum.

    Raises
    ------
    PlainError
        If a name is no value of a cost sheet, or its value is zero and so has no part.
    """
    for name in half_widths:
        if name not in UNITS or getattr(sheet, name).magnitude == 0:
            raise PlainError(
                f"doubt_table: {name} of {sheet.name} cannot be off by a part of it. Name a value of the cost sheet "
                "that is greater than zero."
            )
    middle = {name: getattr(sheet, name).to(_unit(name)) for name in half_widths}
    readings = {
        name: estimate_from_half_width(value, value * half_widths[name].m_as("")) for name, value in middle.items()
    }

    def sampled(names):
        return by_sampling(_ride_of(sheet, names), {name: readings[name] for name in names}, seed=seed, draws=draws)

    alone = {name: sampled([name]).standard_uncertainty.m_as(A_RIDE) for name in readings}
    together = sampled(list(readings))
    squares = sum(doubt**2 for doubt in alone.values())
    rows = [
        (words_of(name), show(getattr(sheet, name)), f"± {half_widths[name].m_as('percent'):g} %",
         f"{alone[name]:.4f}", f"{100 * alone[name]**2 / squares:.0f} %")
        for name in sorted(alone, key=alone.get, reverse=True)
    ]  # fmt: skip
    a_ride, doubt = yearly_cost(sheet).per_ride, together.standard_uncertainty
    low, high = together.interval.m_as(A_RIDE)
    rows.append(
        ("all together", f"{low:.2f} to {high:.2f} in 95 of 100 draws", "", f"{doubt.m_as(A_RIDE):.4f}", "100 %")
    )
    columns = ("value", "taken as", "may be off by", "doubt of a ride", "part of the doubt")
    said = show_with_doubt(a_ride, 2 * doubt, coverage_factor=2)
    return Table(f"What makes the doubt of a ride on {sheet.name}: {said}", columns, rows)


def _unit(name):
    return "" if UNITS[name] == "percent" else UNITS[name]


def _ride_of(sheet, names):
    """Return the cost of a ride as a formula of a few values of a sheet, on plain numbers and arrays."""

    def ride(**numbers):
        moved = {name: Q(number, _unit(name)) for name, number in numbers.items()}
        return yearly_cost(replace(sheet, **moved)).per_ride.m_as(A_RIDE)

    kind = inspect.Parameter.KEYWORD_ONLY
    ride.__signature__ = inspect.Signature([inspect.Parameter(name, kind) for name in names])
    return OwnFormula(ride, {**{name: _unit(name) for name in names}, "returns": A_RIDE})
