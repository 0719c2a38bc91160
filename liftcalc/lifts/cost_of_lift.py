"""What a lift costs a year, part by part, from a sheet of its prices; and which of them it hangs on most.

Planning figures: prices, rates and grants are for the owner, and the books for whoever keeps them.
"""

from dataclasses import dataclass, fields, replace

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.csv_rows import read_rows
from liftcalc.fieldwork.faults import Fault, FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError, quoted
from liftcalc.formulas.cost import (
    break_even_rides,
    capital_recovery,
    capital_recovery_factor,
    cost_per_ride,
    cost_per_rise,
    cost_per_thousand_pph,
    demand_charge,
    energy_cost,
    energy_cost_of_a_ride,
    sinking_fund,
    staff_cost,
)
from liftcalc.formulas.motor import idle_power
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import idle_drag_of, limits_of, ride_energy, unread_for_energy
from liftcalc.lifts.readings import SAME_WITHIN, known_values
from liftcalc.quantity_text import as_received, read_number, show
from liftcalc.units import PlainError, Q, checked_magnitude, parsed_unit
from liftcalc.vocabulary import VOCABULARY, words_of

RECOVERY = "capital recovery"
_OF_A_BILL, _CARRIED = "dollar/season", "person/season"
# field of a cost sheet: its unit in a table; bounds are those of the vocabulary, and what is not in it may be zero
UNITS = {
    "price": "dollar", "life": "season", "salvage": "dollar", "grant": "dollar", "interest": "percent",
    "posts": "", "wage": "dollar/hour", "running_hours": "hour/season", "shut_hours": "hour/season",
    "break_share": "percent", "maintenance": _OF_A_BILL, "insurance": _OF_A_BILL, "inspection": _OF_A_BILL,
    "replacement_price": "dollar", "replacement_life": "season", "rides": "person/season",
    "energy_price": "dollar/kilowatt_hour", "billed_power": "kW", "demand_price": "dollar/kW", "billed_months": "",
}  # fmt: skip
OF_THE_LIFT = {
    "energy_per_rider": "J", "efficiency": "", "idle_power": "kW", "hourly_capacity": "person/hour",
    "vertical_rise": "m",
}  # fmt: skip
BILLS = ("maintenance", "insurance", "inspection")


@dataclass(frozen=True, kw_only=True)
class CostSheet:
    """What is paid for a lift, and what it does a season: the one in which it runs each year.

    Parameters
    ----------
    name : str
        Name of the line.
    price, salvage : Quantity [dollar]
        What is paid for the lift, before any grant, and what it still brings at the end.
    life : Quantity [season]
        Seasons until it is replaced.
    interest : Quantity
        Interest of a year, a pure number.
    posts : Quantity
        Places that are staffed whenever it runs, a pure number.
    wage : Quantity [dollar/hour]
        Cost of a paid hour; zero for volunteers.
    running_hours : Quantity [hour/season]
        Hours in which it runs.
    maintenance, insurance, inspection : Quantity [dollar/season]
        Bills of a season.
    replacement_price : Quantity [dollar]
        What a new rope or belt costs, for which money is laid aside.
    replacement_life : Quantity [season]
        Seasons that it lasts.
    rides : Quantity [person/season]
        Rides carried, one person each; never the capacity times the hours.
    energy_price, billed_power, demand_price, billed_months : Quantity
        [dollar/kilowatt_hour], [kW], [dollar/kW] a month, and a pure number.
    energy_per_rider, efficiency, idle_power : Quantity
        [J], pure number, [kW]: as the readings of the lift give them.
    grant : Quantity [dollar]
        What others pay of the price.
    shut_hours : Quantity [hour/season]
        Hours that are paid while the lift stands.
    break_share : Quantity
        Paid hours for breaks, as a part of the other paid hours.
    hourly_capacity, vertical_rise : Quantity or None
        [person/hour], [m]; needed only for the costs by capacity and by rise.

    Raises
    ------
    UnitError
        If a value has no unit, or one of another kind.
    PlainError
        If a value is outside its bound or no finite number, or grant or salvage is more than the price.
    """

    name: str
    price: Quantity
    life: Quantity
    salvage: Quantity
    interest: Quantity
    posts: Quantity
    wage: Quantity
    running_hours: Quantity
    maintenance: Quantity
    insurance: Quantity
    inspection: Quantity
    replacement_price: Quantity
    replacement_life: Quantity
    rides: Quantity
    energy_price: Quantity
    billed_power: Quantity
    demand_price: Quantity
    billed_months: Quantity
    energy_per_rider: Quantity
    efficiency: Quantity
    idle_power: Quantity
    grant: Quantity = Q(0.0, "dollar")
    shut_hours: Quantity = Q(0.0, "hour/season")
    break_share: Quantity = Q(0.0, "")
    hourly_capacity: Quantity | None = None
    vertical_rise: Quantity | None = None

    def __post_init__(self):
        for name, unit in (UNITS | OF_THE_LIFT).items():
            value = getattr(self, name)
            if value is not None or name not in ("hourly_capacity", "vertical_rise"):
                unit = "" if unit == "percent" else unit
                checked_magnitude("CostSheet", name, value, unit, parsed_unit(unit), _lowest(name))
        for name, what in (("grant", "others pay of the price"), ("salvage", "it brings at the end of its life")):
            part, price = np.broadcast_arrays(getattr(self, name).m_as("dollar"), self.price.m_as("dollar"))
            worst = np.argmax(part - price)
            if part.flat[worst] > price.flat[worst]:
                part, price = (show(Q(each.flat[worst], "dollar")) for each in (part, price))
                raise PlainError(
                    f"CostSheet: the {name} of {self.name}, {part}, is more than the price, {price}. Write what {what}."
                )


def _lowest(name):
    """Return the bound of a field: a key of ``liftcalc.docstrings.BOUNDS``."""
    may_be_zero = VOCABULARY[name].zero if name in VOCABULARY else name != "replacement_life"
    return "not negative" if may_be_zero else "positive"


@dataclass(frozen=True)
class YearlyCost:
    """What a lift costs a year, part by part.

    Parameters
    ----------
    sheet : CostSheet
        What it was reckoned from.
    parts : dict of str to Quantity
        Cost of a season by its name [dollar/season]; the grant is taken off the capital recovery.
    """

    sheet: CostSheet
    parts: dict

    @property
    def total(self):
        """All parts together."""
        return sum(self.parts.values(), Q(0.0, _OF_A_BILL))

    @property
    def cash(self):
        """All but the capital recovery: what is paid or laid aside in the season itself."""
        return sum((cost for name, cost in self.parts.items() if name != RECOVERY), Q(0.0, _OF_A_BILL))

    @property
    def before_grant(self):
        """All parts together, had nobody helped."""
        return self.total + self.sheet.grant * capital_recovery_factor(self.sheet.interest, self.sheet.life)

    @property
    def shares(self):
        """Each part over the total, by its name."""
        return {name: (cost / self.total).to("") for name, cost in self.parts.items()}

    @property
    def per_ride(self):
        """Cost of a ride, by the rides carried."""
        return cost_per_ride(self._paid, self.sheet.rides)

    @property
    def capacity_used(self):
        """Rides carried over capacity times running hours; who divides by these makes a ride cheaper by as much."""
        return (self.sheet.rides / self._offered).to("")

    @property
    def variable_per_ride(self):
        """What one more ride costs: its energy."""
        return energy_cost_of_a_ride(self.sheet.energy_per_rider, self.sheet.efficiency, self.sheet.energy_price)

    @property
    def fixed(self):
        """What stays the same however many ride; below zero where a grant and its salvage win more than that."""
        return self.total - self.variable_per_ride * self.sheet.rides

    @property
    def per_thousand_pph(self):
        """Cost a season of 1,000 pph held ready."""
        return cost_per_thousand_pph(self._paid, self._known("hourly_capacity"))

    @property
    def per_thousand_vtfh_hours(self):
        """Cost of 1,000 person-feet of rise offered: VTFH at capacity, times the running hours."""
        return cost_per_rise(self._paid, self._offered, self._known("vertical_rise")).to("dollar/(person*kilofoot)")

    @property
    def per_thousand_person_metres(self):
        """Cost of 1,000 person-metres of rise, by the rides carried."""
        return cost_per_rise(self._paid, self.sheet.rides, self._known("vertical_rise"))

    def break_even(self, ticket_share):
        """Return the rides a season that pay for the lift, from what one brings [dollar/person]; 0 if it is a gift."""
        fixed = np.maximum(self.fixed, Q(0.0, _OF_A_BILL))
        return break_even_rides(fixed, ticket_share=ticket_share, variable_cost=self.variable_per_ride)

    @property
    def _paid(self):
        """The total, where it is one that rides can share."""
        least = Q(float(np.min(self.total.m_as(_OF_A_BILL))), "dollar")
        if least.magnitude <= 0:
            raise PlainError(
                f"YearlyCost: a season of {self.sheet.name} costs {show(round(least, 0))}, so no ride of it costs "
                "anything: a grant that pays for the lift and its salvage are won. Write the bills, the wage and the "
                "energy that somebody pays, or leave the cost of a ride out."
            )
        return self.total

    @property
    def _offered(self):
        return (self._known("hourly_capacity") * self.sheet.running_hours).to("person/season")

    def _known(self, name):
        value = getattr(self.sheet, name)
        if value is None:
            raise PlainError(
                f"YearlyCost: the {words_of(name)} of {self.sheet.name} is not known. Give it to the CostSheet."
            )
        return value


def yearly_cost(sheet):
    """Return what a lift costs a year.

    Capital recovery holds the loss of value: no depreciation stands beside it.

    Parameters
    ----------
    sheet : CostSheet

    Returns
    -------
    YearlyCost
    """
    energy = ("rides", "energy_per_rider", "efficiency", "idle_power", "running_hours", "energy_price")
    staff = ("wage", "posts", "running_hours", "shut_hours", "break_share")
    meter = ("billed_power", "demand_price", "billed_months")
    rope = {"replacement_price": sheet.replacement_price, "interest": sheet.interest, "life": sheet.replacement_life}
    recovery = capital_recovery(sheet.interest, sheet.life, price=sheet.price, salvage=sheet.salvage)
    granted = sheet.grant * capital_recovery_factor(sheet.interest, sheet.life)
    return YearlyCost(
        sheet,
        {
            RECOVERY: recovery - granted,
            "staff": staff_cost(**_of(sheet, staff)),
            **{name: getattr(sheet, name).to(_OF_A_BILL) for name in BILLS},
            "rope or belt": sinking_fund(**rope),
            "energy": energy_cost(**_of(sheet, energy)),
            "demand charge": demand_charge(**_of(sheet, meter)),
        },
    )


def _of(sheet, names):
    return {name: getattr(sheet, name) for name in names}


@dataclass(frozen=True)
class Swing:
    """What a range of one value does to the cost of a ride, all others staying as they are.

    Parameters
    ----------
    name : str
        Field of the cost sheet.
    values : tuple of Quantity
        The two ends of its range.
    costs : tuple of Quantity
        Cost of a ride at each of them.
    """

    name: str
    values: tuple
    costs: tuple

    @property
    def swing(self):
        """How far the two costs are apart."""
        return abs(self.costs[1] - self.costs[0])


def tornado(sheet, ranges):
    """Return which values the cost of a ride hangs on most, moved one at a time.

    It says nothing of values that move together, nor how likely an end of a range is.

    Parameters
    ----------
    sheet : CostSheet
        The values that stay.
    ranges : dict of str to (Quantity, Quantity)
        Two ends by the name of a field.

    Returns
    -------
    list of Swing
        The largest swing first.

    Raises
    ------
    PlainError
        If a name is no field, a range has not two ends, or an end is outside the bound of its value.
    """
    may = [field.name for field in fields(sheet) if field.name != "name"]
    rows = []
    for name, ends in ranges.items():
        if name not in may:
            raise PlainError(f"tornado: {name!r} is no value of a cost sheet. Write one of {', '.join(may)}.")
        if not isinstance(ends, (tuple, list)) or len(ends) != 2:
            raise PlainError(f"tornado: {name} must have two ends, but got {as_received(ends)}. Write (low, high).")
        costs = tuple(yearly_cost(replace(sheet, **{name: end})).per_ride for end in ends)
        rows.append(Swing(name, tuple(ends), costs))
    return sorted(rows, key=lambda row: -row.swing)


def cost_sheet(line, readings, costs):
    """Return the cost sheet of a line from its readings and its costs.

    Parameters
    ----------
    line : Line
        A line of any kind.
    readings : mapping of str to Quantity
        As for ``known_values``.
    costs : dict of str to Quantity
        Its costs, as ``read_costs`` returns them for each line.

    Returns
    -------
    CostSheet
        With energy of a ride and idle power of the readings, and the capacity of the limit that governs.

    Raises
    ------
    PlainError
        If a reading that the energy needs is missing, or the rides are more than it could carry.
    """
    values = known_values(line, readings)
    if lacks := unread_for_energy(line.kind, values):
        what = f"the energy of {line.name} does not follow from its readings"
        raise PlainError(f"cost_sheet: {what}. Read on the lift: {', '.join(lacks)}.")
    sheet = CostSheet(
        name=line.name,
        energy_per_rider=ride_energy(line.kind, values),
        efficiency=values["efficiency"],
        idle_power=idle_power(values["efficiency"], line.line_speed, idle_drag_of(line.kind, values)),
        hourly_capacity=governing(limits_of(line, readings)).capacity.value,
        vertical_rise=line.vertical_rise,
        **costs,
    )
    if too_many := above_capacity(sheet):
        raise PlainError(f"cost_sheet: the rides of {sheet.name}, {too_many}. Write rides carried.")
    return sheet


def above_capacity(sheet):
    """Return in words how far the rides of a sheet are above what its lift could carry; else nothing.

    That is its governed capacity times its running hours: whoever writes more has them from elsewhere, and each of them
    makes a ride look cheaper.
    """
    if sheet.hourly_capacity is None:
        return ""
    rides, most = sheet.rides.m_as(_CARRIED), (sheet.hourly_capacity * sheet.running_hours).m_as(_CARRIED)
    if np.all(rides <= most * (1 + SAME_WITHIN)):
        return ""
    of_what = f"the governed capacity of {show(sheet.hourly_capacity)}"
    hours = show(sheet.running_hours).removesuffix(" a season")
    return f"{np.max(rides):,.0f}, are more than the {np.max(most):,.0f} that {of_what} allows in {hours}"


LEAST_PERCENT = 0.5  # what is less, and not zero, was written as a part of the whole
_YEAR, _MONTHS = (8_784, "hours of a year"), (12, "months of a year")
MOST = {"running_hours": _YEAR, "shut_hours": _YEAR, "billed_months": _MONTHS}  # what a table may hold at most
_MAY_BE_LEFT_OUT = ("grant", "shut_hours", "break_share")
_WHAT = "costs of lifts (CSV)"
COLUMNS = ("line", *(name for name in UNITS if name not in _MAY_BE_LEFT_OUT))


def read_costs(path):
    """Read what lifts cost from a table, one row a line. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns ``COLUMNS`` in any order, and grant, shut_hours and break_share where there are
        any; ``UNITS`` holds the unit of each.

    Returns
    -------
    dict of str to dict
        Costs by the name of the line, as ``cost_sheet`` takes them.

    Raises
    ------
    FieldFileError
        If the file cannot be read, or is a table of another form.
    FieldSheetError
        If cells cannot be read. The message tells all of them, each with row, column, what came and what to write.
    """
    table = read_rows(path, COLUMNS, _WHAT)
    strange = [quoted(column) for column in table.columns if column not in (*COLUMNS, *_MAY_BE_LEFT_OUT)]
    if strange:
        are = "is no column" if len(strange) == 1 else "are no columns"
        raise FieldFileError(
            f"{table.name}, row {table.heading}: {', '.join(strange)} {are} of a table of costs. Write "
            f"{','.join(COLUMNS)}; besides, if wanted, {', '.join(_MAY_BE_LEFT_OUT)}."
        )
    found, faults = {}, []
    for row in table.rows:
        line = row.cells["line"]
        if not line or line in found:
            why = "the name is missing" if not line else f"{quoted(line)} stands in a row above"
            faults.append(Fault(row.number, "line", f"{why}. Write the name of a line, each once."))
        found[line] = costs = {}
        if any(row.spare):  # then the cells stand in columns of others
            words = "there are more cells than columns. Write a number without a thousands mark."
            faults.append(Fault(row.number, table.columns[-1], words))
            continue
        for name in UNITS:
            if row.cells.get(name) or name not in _MAY_BE_LEFT_OUT:
                try:
                    costs[name] = _cost(name, row.cells[name], table.decimal_comma)
                except PlainError as error:
                    faults.append(Fault(row.number, name, str(error)))
    if faults:
        raise FieldSheetError(table.name, faults)
    if not found:
        raise FieldFileError(f"{table.name}: no lift stands in this table. Write a row for each line.")
    return found


def _cost(name, text, decimal_comma):
    """Return the quantity that a cell holds, or say what is wrong with it."""
    unit, lowest = UNITS[name], _lowest(name)
    if not text:
        raise PlainError(f"the {words_of(name)} is missing. Write 0 where there is none.")
    number = read_number(text, decimal_comma)
    if number < 0 or number == 0 and lowest == "positive":
        least = "greater than zero" if lowest == "positive" else "zero or more"
        raise PlainError(f"the {words_of(name)} must be {least}, but got {text}.")
    if unit == "percent" and 0 < number < LEAST_PERCENT:
        raise PlainError(f"the {words_of(name)} is in percent, but got {text}. Write 6 for 6 %, not 0.06.")
    most, of_what = MOST.get(name, (number, ""))
    if number > most:
        raise PlainError(f"the {words_of(name)} must be {most:,} or less, the {of_what}, but got {text}.")
    return Q(number, unit)
