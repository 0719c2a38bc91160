"""The cost of lifts of the demo hill, by hand and by the figures that the hill was thought out with."""

import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError, show, ticket_share_by_rides
from liftcalc.fieldwork import FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.cost_of_lift import COLUMNS, UNITS, CostSheet, cost_sheet, read_costs, tornado, yearly_cost
from liftcalc.lifts.demo_hill import demo_hill
from liftcalc.quantity_text import unit_word

COSTS = read_costs(Path(__file__).parents[2] / "data/costs.csv")
SHEETS = {name: cost_sheet(*demo_hill().line(name), costs) for name, costs in COSTS.items()}
PENNY = SHEETS["Penny Rope"]
A_SEASON, A_RIDE = "dollar/season", "dollar/person"

# thought out beforehand by plain arithmetic, the energy by rounder readings: dollars a season and a ride, and the cost
# of 1,000 person-metres of rise; how far the dollars a season may be off
THOUGHT_OUT = [
    ("Penny Rope", 18_242, 0.20, 6.9, 1),
    ("Long Platter", 40_949, 2.05, 26.2, 4),  # thought out without the relief of a tether at an angle
    ("Duckling Belt", 25_745, 0.64, 80, 1),
    ("Lantern Double", 107_412, 2.69, 18.9, 28),  # its empty rope with less drag
    ("Twin Penny right", 9_052, 0.24, None, 1),
]


@pytest.mark.parametrize(
    ("name", "a_season", "a_ride", "rise", "off"), THOUGHT_OUT, ids=[case[0] for case in THOUGHT_OUT]
)
def test_lifts_of_the_hill(name, a_season, a_ride, rise, off):
    cost = yearly_cost(SHEETS[name])
    assert cost.total.m_as(A_SEASON) == pytest.approx(a_season, abs=off)
    assert cost.per_ride.m_as(A_RIDE) == pytest.approx(a_ride, abs=0.005)
    if rise:
        assert cost.per_thousand_person_metres.m_as("dollar/(person*km)") == pytest.approx(
            rise, abs=0.5 if rise == 80 else 0.05
        )


@pytest.mark.parametrize("name", SHEETS)
def test_every_part_by_hand(name):
    costs = {key: value.magnitude for key, value in COSTS[name].items()}
    line, readings = demo_hill().line(name)
    rate = costs["interest"] / 100
    discounted = sum((1 + rate) ** -season for season in range(1, int(costs["life"]) + 1))
    grown = sum((1 + rate) ** season for season in range(int(costs["replacement_life"])))
    left = costs["salvage"] * (1 + rate) ** -costs["life"]
    kilowatt_hours = costs["rides"] * SHEETS[name].energy_per_rider.m_as("J") / 3.6e6 / readings["efficiency"].m_as("")
    kilowatt_hours += SHEETS[name].idle_power.m_as("kW") * costs["running_hours"]
    parts = {key: value.m_as(A_SEASON) for key, value in yearly_cost(SHEETS[name]).parts.items()}
    assert parts == pytest.approx(
        {
            "capital recovery": (costs["price"] - left) / discounted,
            "staff": costs["posts"] * costs["wage"] * costs["running_hours"],
            **{bill: costs[bill] for bill in ("maintenance", "insurance", "inspection")},
            "rope or belt": costs["replacement_price"] / grown,
            "energy": kilowatt_hours * costs["energy_price"],
            "demand charge": costs["billed_power"] * costs["demand_price"] * costs["billed_months"],
        }
    )
    assert line.name == SHEETS[name].name


def test_staff_governs_a_small_lift_and_capital_a_large_one():
    for name, part, share in (("Penny Rope", "staff", 0.61), ("Lantern Double", "capital recovery", 0.54)):
        shares = yearly_cost(SHEETS[name]).shares
        assert max(shares, key=shares.get) == part
        assert shares[part].m_as("") == pytest.approx(share, abs=0.005)
        assert sum(each.m_as("") for each in shares.values()) == pytest.approx(1)


def test_cash_and_grants():
    before = yearly_cost(PENNY)
    recovery = before.parts["capital recovery"]
    assert before.cash.m_as(A_SEASON) == pytest.approx((before.total - recovery).m_as(A_SEASON))
    assert before.before_grant == before.total
    after = yearly_cost(replace(PENNY, grant=Q(15_000, "dollar")))
    cheaper = yearly_cost(replace(PENNY, price=Q(20_000, "dollar")))
    assert after.total.m_as(A_SEASON) == pytest.approx(cheaper.total.m_as(A_SEASON))
    assert after.before_grant.m_as(A_SEASON) == pytest.approx(before.total.m_as(A_SEASON))
    assert after.cash == before.cash
    whole = yearly_cost(replace(PENNY, grant=PENNY.price))  # what it brings at the end is won
    assert whole.parts["capital recovery"].m_as(A_SEASON) == pytest.approx(-2_000 * 0.05 / (1.05**20 - 1))


def test_volunteers_and_the_mistake_of_capacity_times_hours():
    paid, free = yearly_cost(PENNY), yearly_cost(replace(PENNY, wage=Q(0, "dollar/hour")))
    assert free.per_ride.m_as(A_RIDE) == pytest.approx(0.08, abs=0.005)
    assert paid.capacity_used.m_as("") == pytest.approx(90_000 / (1_200 * 350))
    assert (paid.per_ride * paid.capacity_used).m_as(A_RIDE) == pytest.approx(0.04, abs=0.005)


def test_cost_by_capacity():
    cost = yearly_cost(PENNY)
    assert show(PENNY.hourly_capacity) == "1,200 pph"
    assert cost.per_thousand_pph.m_as("dollar/season/kilopph") == pytest.approx(cost.total.magnitude / 1.2)
    vtfh = 1_200 * 29.4 / 0.3048
    offered = cost.per_thousand_vtfh_hours.m_as("dollar/(person*kilofoot)")
    assert offered == pytest.approx(1_000 * cost.total.magnitude / (vtfh * 350))


def test_break_even():
    cost, share = yearly_cost(PENNY), ticket_share_by_rides(Q(28, "dollar"), Q(19, "person"))
    rides = cost.break_even(share)
    assert rides.m_as("person/season") == pytest.approx(12_280, abs=10)
    at_even = yearly_cost(replace(PENNY, rides=rides))
    assert at_even.per_ride.m_as(A_RIDE) == pytest.approx(28 / 19)
    assert at_even.fixed.m_as(A_SEASON) == pytest.approx(cost.fixed.m_as(A_SEASON))


TORNADO = [  # field, unit, ends, cost of a ride at them, how near
    ("wage", "dollar/hour", (0, 22), (0.08, 0.25), 0.005),
    ("rides", "person/season", (60_000, 120_000), (0.30, 0.15), 0.005),
    ("posts", "", (1, 2), (0.14, 0.20), 0.005),
    ("running_hours", "hour/season", (250, 400), (0.17, 0.22), 0.005),
    ("price", "dollar", (28_000, 42_000), (0.197, 0.209), 0.001),
    ("interest", "percent", (3, 7), (0.198, 0.208), 0.001),
    ("life", "season", (15, 25), (0.209, 0.199), 0.001),
    ("energy_price", "dollar/kilowatt_hour", (0.10, 0.28), (0.201, 0.204), 0.001),
]


def test_tornado():
    ranges = {name: tuple(Q(end, unit) for end in ends) for name, unit, ends, *_ in TORNADO}
    rows = tornado(PENNY, dict(reversed(ranges.items())))
    assert [row.name for row in rows] == [case[0] for case in TORNADO]
    for row, (name, _, _, wanted, near) in zip(rows, TORNADO, strict=True):
        assert [cost.m_as(A_RIDE) for cost in row.costs] == pytest.approx(wanted, abs=near)
        assert row.values == ranges[name]
        assert row.swing.m_as(A_RIDE) == pytest.approx(abs(row.costs[0].magnitude - row.costs[1].magnitude))


def test_many_values_at_once():
    counts = np.array([60_000.0, 90_000.0])
    costs = yearly_cost(replace(PENNY, rides=Q(counts, "person/season"))).per_ride.m_as(A_RIDE)
    one_by_one = [yearly_cost(replace(PENNY, rides=Q(each, "person/season"))).per_ride.m_as(A_RIDE) for each in counts]
    assert costs == pytest.approx(one_by_one)


GIVEN = replace(  # a lift that others paid for and volunteers run, without bills and without a meter
    PENNY, grant=PENNY.price, wage=Q(0, "dollar/hour"), replacement_price=Q(0, "dollar"),
    energy_price=Q(0, "dollar/kilowatt_hour"), demand_price=Q(0, "dollar/kW"),
    **dict.fromkeys(("maintenance", "insurance", "inspection"), Q(0, A_SEASON)),
)  # fmt: skip


def test_a_lift_that_is_given_needs_no_rides_to_pay():
    cost = yearly_cost(GIVEN)
    assert cost.total.m_as(A_SEASON) == pytest.approx(-2_000 * 0.05 / (1.05**20 - 1)), "the salvage is won"
    assert cost.break_even(Q(1, A_RIDE)).m_as("person/season") == 0
    at_a_meter = yearly_cost(replace(GIVEN, energy_price=Q(0.18, "dollar/kilowatt_hour")))
    assert at_a_meter.per_ride > Q(0, A_RIDE)
    idle, a_ride = PENNY.idle_power.m_as("kW") * 350 * 0.18, at_a_meter.variable_per_ride.magnitude
    rides = (idle + cost.total.magnitude) / (1 - a_ride)
    assert at_a_meter.break_even(Q(1, A_RIDE)).m_as("person/season") == pytest.approx(rides)


def without(line, *names):
    """Return the cost sheet of a line of the demo hill of which some readings are missing."""
    readings = {name: value for name, value in demo_hill().readings[line].items() if name not in names}
    return cost_sheet(demo_hill().lines[line], readings, COSTS[line])


NO_COST = (
    "YearlyCost: a season of Penny Rope costs -60 dollars, so no ride of it costs anything: a grant that pays for the "
    "lift and its salvage are won. Write the bills, the wage and the energy that somebody pays, or leave the cost of a "
    "ride out."
)
MESSAGES = [
    (lambda: replace(PENNY, maintenance=Q(-1, A_SEASON)),
     "CostSheet: maintenance must be zero or more, but got -1 dollar/season. "
     "Write for example Q(18000, 'dollar/season')."),
    (lambda: replace(PENNY, replacement_life=Q(0, "season")),
     "CostSheet: replacement_life must be greater than zero, but got 0 season. Write for example Q(20, 'season')."),
    (lambda: replace(PENNY, rides=Q(float("inf"), "person/season")),
     "CostSheet: rides must be a finite number, but got inf person/season. "
     "Write for example Q(90000, 'person/season')."),
    (lambda: replace(PENNY, insurance=900),
     "CostSheet: insurance needs a unit, but got the bare value 900. Write Q(900, 'dollar/season').", UnitError),
    (lambda: replace(PENNY, vertical_rise=Q(1, "s")),
     "CostSheet: vertical_rise must be a length, but got a time: 1 s. Write for example Q(6.8, 'm').", UnitError),
    (lambda: replace(PENNY, grant=Q(40_000, "dollar")),
     "CostSheet: the grant of Penny Rope, 40,000 dollars, is more than the price, 35,000 dollars. "
     "Write what others pay of the price."),
    (lambda: replace(PENNY, salvage=Q(40_000, "dollar")),
     "CostSheet: the salvage of Penny Rope, 40,000 dollars, is more than the price, 35,000 dollars. "
     "Write what it brings at the end of its life."),
    (lambda: replace(PENNY, grant=Q(np.linspace(0, 40_000, 99), "dollar")),
     "CostSheet: the grant of Penny Rope, 40,000 dollars, is more than the price, 35,000 dollars. "
     "Write what others pay of the price."),
    (lambda: yearly_cost(GIVEN).per_ride, NO_COST),
    (lambda: yearly_cost(replace(GIVEN, rides=Q(np.linspace(1, 9, 99), "person/season"))).per_ride, NO_COST),
    (lambda: yearly_cost(GIVEN).per_thousand_pph, NO_COST),
    (lambda: yearly_cost(GIVEN).per_thousand_person_metres, NO_COST),
    (lambda: yearly_cost(replace(PENNY, hourly_capacity=None)).per_thousand_pph,
     "YearlyCost: the hourly capacity of Penny Rope is not known. Give it to the CostSheet."),
    (lambda: yearly_cost(PENNY).break_even(Q(0.001, A_RIDE)),
     "break_even_rides: a ride brings 0.001 dollars and itself costs 0.001812: no number of rides pays for the lift. "
     "Write a ticket_share above the variable_cost."),
    (lambda: tornado(PENNY, {"wages": (1, 2)}),
     f"tornado: 'wages' is no value of a cost sheet. Write one of {', '.join(list(CostSheet.__annotations__)[1:])}."),
    (lambda: tornado(PENNY, {"wage": Q(1, "dollar/hour")}),
     "tornado: wage must have two ends, but got 1.00 dollars an hour. Write (low, high)."),
    (lambda: without("Penny Rope", "idle_drag"),
     "cost_sheet: the energy of Penny Rope does not follow from its readings. Read on the lift: idle drag."),
    (lambda: without("Penny Rope", "rider_mass", "efficiency", "idle_drag", "snow_friction"),
     "cost_sheet: the energy of Penny Rope does not follow from its readings. "
     "Read on the lift: rider mass, snow friction, efficiency, idle drag."),
    (lambda: without("Duckling Belt", "idle_drag", "belt_mass_per_length"),
     "cost_sheet: the energy of Duckling Belt does not follow from its readings. "
     "Read on the lift: idle drag (or belt mass per length)."),
    (lambda: cost_sheet(*demo_hill().line("Penny Rope"), COSTS["Penny Rope"] | {
        "rides": Q(3_100_000, "person/season"), "running_hours": Q(260, "hour/season")}),
     "cost_sheet: the rides of Penny Rope, 3,100,000, are more than the 312,000 that the governed capacity of 1,200 "
     "pph allows in 260 hours. Write rides carried."),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)


def test_rides_at_the_governed_capacity_are_the_most():
    most = COSTS["Penny Rope"] | {"rides": Q(1_200 * 350, "person/season")}
    assert yearly_cost(cost_sheet(*demo_hill().line("Penny Rope"), most)).capacity_used.m_as("") == pytest.approx(1)


ROW = "Penny Rope,35000,20,2000,5,2,16,350,1200,900,600,3500,5,90000,0.18,14,12,4"
HEAD = ",".join(COLUMNS)
FILES = [  # text, message behind the name of the file
    (",,\n", ": the sheet is empty. Its first row must be: " + HEAD),
    (HEAD, ": no lift stands in this table. Write a row for each line."),
    (f"{HEAD}\n{ROW}\n{ROW}",
     ", row 3, column line: 'Penny Rope' stands in a row above. Write the name of a line, each once."),
    (f"{HEAD}\n{ROW[10:]}", ", row 2, column line: the name is missing. Write the name of a line, each once."),
    (f"{HEAD}\n{ROW},5",
     ", row 2, column billed_months: there are more cells than columns. Write a number without a thousands mark."),
    (f"{HEAD}\n{ROW.replace(',16,', ',sixteen,')}",
     ", row 2, column wage: 'sixteen' is no number. Write digits only, such as 3.4."),
    (f"{HEAD}\n{ROW.replace(',16,', ',-16,')}", ", row 2, column wage: the wage must be zero or more, but got -16."),
    (f"{HEAD}\n{ROW.replace(',20,', ',0,')}", ", row 2, column life: the life must be greater than zero, but got 0."),
    (f"{HEAD}\n{ROW.replace(',1200,', ',,')}",
     ", row 2, column maintenance: the maintenance is missing. Write 0 where there is none."),
    (f"{HEAD}\n{ROW.replace(',5,2,', ',0.06,2,')}",
     ", row 2, column interest: the interest is in percent, but got 0.06. Write 6 for 6 %, not 0.06."),
    (f"{HEAD},break_share\n{ROW},0.1",
     ", row 2, column break_share: the break share is in percent, but got 0.1. Write 6 for 6 %, not 0.06."),
    (f"{HEAD}\n{ROW.replace(',350,', ',9000,')}",
     ", row 2, column running_hours: the running hours must be 8,784 or less, the hours of a year, but got 9000."),
    (f"{HEAD},shut_hours\n{ROW},8785",
     ", row 2, column shut_hours: the shut hours must be 8,784 or less, the hours of a year, but got 8785."),
    (f"{HEAD}\n{ROW.removesuffix(',4')},14",
     ", row 2, column billed_months: the billed months must be 12 or less, the months of a year, but got 14."),
    (f"{HEAD},colour\n{ROW},red",
     f", row 1: 'colour' is no column of a table of costs. Write {HEAD}; besides, if wanted, grant, shut_hours, "
     "break_share."),
]  # fmt: skip


@table_of_messages(FILES, "text", kind=FieldFileError)
def test_message_of_a_table(text, message, kind, tmp_path):
    path = tmp_path / "costs.csv"
    path.write_text(text, encoding="utf-8")
    in_a_cell = re.match(", row [23], column ", message)
    refuses(lambda: read_costs(path), f"costs.csv{message}", FieldSheetError if in_a_cell else kind)


def test_all_faults_of_a_table_are_told_at_once(tmp_path):
    path = tmp_path / "costs.csv"
    slips = ROW.replace(",5,2,16,350,", ",0.06,two,16,9000,")
    path.write_text(f"{HEAD}\n{ROW},5\n{slips}\n\n{ROW}\n{ROW[10:]},,\n", encoding="utf-8")
    told = [
        "costs.csv: 7 cells cannot be read.",
        "Row 2, column billed_months: there are more cells than columns. Write a number without a thousands mark.",
        "Row 3, column line: 'Penny Rope' stands in a row above. Write the name of a line, each once.",
        "Row 3, column interest: the interest is in percent, but got 0.06. Write 6 for 6 %, not 0.06.",
        "Row 3, column posts: 'two' is no number. Write digits only, such as 3.4.",
        "Row 3, column running_hours: the running hours must be 8,784 or less, the hours of a year, but got 9000.",
        "Row 5, column line: 'Penny Rope' stands in a row above. Write the name of a line, each once.",
        "Row 6, column line: the name is missing. Write the name of a line, each once.",
    ]
    refuses(lambda: read_costs(path), "\n".join(told), FieldSheetError, lines=len(told))


@pytest.mark.parametrize("ends", [",0,2,16,8784,", ",0.5,2,16,350,"])
def test_the_ends_of_what_is_believed_are_read(ends, tmp_path):
    path = tmp_path / "costs.csv"
    path.write_text(f"{HEAD}\n{ROW.replace(',5,2,16,350,', ends).removesuffix(',4')},12\n", encoding="utf-8")
    costs = read_costs(path)["Penny Rope"]
    assert [f"{costs[name].magnitude:g}" for name in ("interest", "posts", "wage", "running_hours")] == ends[
        1:-1
    ].split(",")


def test_the_readme_of_the_data_tells_the_unit_of_every_column():
    text = (Path(__file__).parents[2] / "data/README.md").read_text(encoding="utf-8")
    rows = dict(re.findall(r"^\| `(\w+)` \| ([^|]+?) \|", text, flags=re.MULTILINE))
    assert list(rows) == ["line", *UNITS]
    for name, unit in UNITS.items():
        assert rows[name].startswith(unit_word(unit) or "number"), name


def test_what_may_be_left_out_is_read_where_it_stands(tmp_path):
    path = tmp_path / "costs.csv"
    path.write_text(f"{HEAD},break share,grant\n{ROW},12.5,\n", encoding="utf-8")
    costs = read_costs(path)["Penny Rope"]
    assert costs == COSTS["Penny Rope"] | {"break_share": Q(12.5, "percent")}
