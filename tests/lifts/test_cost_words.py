"""Tables of cost: every figure by plain arithmetic, and what each table is there to show."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.lifts.cost_of_lift import read_costs, yearly_cost
from liftcalc.lifts.cost_words import (
    PARTS,
    cost_sheets,
    cost_table,
    divided_table,
    doubt_table,
    grants_table,
    meter_table,
    ready_table,
    ticket_table,
    volunteers_table,
)
from liftcalc.lifts.demo_hill import demo_hill

COSTS = read_costs(Path(__file__).parents[2] / "data/costs.csv")
SHEETS = cost_sheets(demo_hill(), COSTS)
PENNY, PLATTER, BELT, DOUBLE, TWIN = SHEETS
FREE = Q(0, "dollar/hour")


def number(cell):
    """Return the number that a cell begins with."""
    return float(cell.split()[0].replace(",", ""))


def rows_of(table):
    """Return the cells behind the heading of each row."""
    return {row[0]: row[1:] for row in table.rows}


def test_parts_add_up_in_every_column():
    table = cost_table(SHEETS)
    assert table.columns[1:] == tuple(COSTS)
    rows = rows_of(table)
    for place, sheet in enumerate(SHEETS):
        column = {name: cells[place] for name, cells in rows.items()}
        year = yearly_cost(sheet)
        assert sum(number(column[part]) for part in PARTS) == pytest.approx(number(column["total"]), abs=3)
        assert number(column["total"]) == pytest.approx(year.total.magnitude, abs=0.5)
        recovery = number(column["capital recovery"])
        assert number(column["of it in cash"]) == pytest.approx(year.total.magnitude - recovery, abs=1)
        assert number(column["a ride"]) == pytest.approx(year.total.magnitude / sheet.rides.magnitude, abs=0.005)
    assert rows["largest part"] == (
        "staff, 61 %", *(f"recovery, {share} %" for share in (45, 47, 54, 42))
    )  # fmt: skip
    assert rows["a ride"] == ("0.20", "2.05", "0.64", "2.69", "0.24")


def test_all_parts_of_a_year_stand_in_a_row():
    assert sorted(part for parts in PARTS.values() for part in parts) == sorted(yearly_cost(PENNY).parts)


def test_capacity_times_hours_is_set_beside_the_rides():
    carried, offered = divided_table(PENNY).rows
    assert carried == ("rides carried", "90,000", "0.20")
    assert offered == ("capacity times hours: 1,200 pph for 350 hours a season", "420,000", "0.04")


def test_volunteers_stand_at_a_wage_and_at_nought():
    rows = rows_of(volunteers_table(SHEETS))
    assert rows["Penny Rope"] == ("16.00 dollars an hour", "0.20", "0.08", "11,200")
    for sheet in SHEETS:
        _, paid, free, hours = rows[sheet.name]
        staff = sheet.posts.magnitude * sheet.wage.magnitude * sheet.running_hours.magnitude
        assert number(hours) == staff
        assert (number(paid) - number(free)) * sheet.rides.magnitude == pytest.approx(staff, abs=800)


def test_a_grant_is_shown_before_and_after():
    grants = [Q(each, "dollar") for each in (0, 15_000, 35_000)]
    before = yearly_cost(PENNY).total.magnitude
    for (grant, *cells), given in zip(grants_table(PENNY, grants).rows, (0, 15_000, 35_000), strict=True):
        assert grant == f"{given:,} dollars"
        after = before - given * 0.05 / (1 - 1.05**-20)
        assert [number(cell) for cell in cells] == pytest.approx(
            [before, before / 90_000, after, after / 90_000], rel=0.03
        )
        assert number(cells[2]) == pytest.approx(after, abs=0.5)


@pytest.mark.parametrize(("part", "kilowatts"), [(1, 25), (0.8, 20), (0.2, 14)])
def test_one_meter_bills_the_common_peak(part, kilowatts):
    alone, together = meter_table([PENNY, TWIN], Q(part, "")).rows
    assert alone == ("a meter for each", "25.0 kW", "1,200")
    assert together[1:] == (f"{kilowatts:.1f} kW", f"{kilowatts * 12 * 4:,}")


def test_by_height_the_order_is_another_than_by_the_ride():
    table = ready_table(SHEETS)
    assert "governed" in table.columns
    assert "governed" in table.caption
    rows = rows_of(table)
    by_ride, by_height = (sorted(rows, key=lambda name: number(rows[name][place])) for place in (1, 4))
    assert by_ride == ["Penny Rope", "Twin Penny right", "Duckling Belt", "Long Platter", "Lantern Double"]
    assert by_height == ["Penny Rope", "Twin Penny right", "Lantern Double", "Long Platter", "Duckling Belt"]
    for sheet in SHEETS:
        governed, _, ready, vertical, height = map(number, rows[sheet.name])
        total, rise = yearly_cost(sheet).total.magnitude, sheet.vertical_rise.m_as("m")
        assert ready == pytest.approx(1000 * total / governed, rel=1e-3)
        hours = governed * rise / 0.3048 * sheet.running_hours.magnitude
        assert vertical == pytest.approx(1000 * total / hours, abs=0.006)
        assert height == pytest.approx(1000 * total / (sheet.rides.magnitude * rise), abs=0.06)


def test_two_ways_to_share_a_ticket_turn_three_verdicts_round():
    table = ticket_table(SHEETS[:4], Q(28, "dollar"), 10_000)
    assert "19.0 rides or 1,021 m" in table.caption
    rows = rows_of(table)
    assert {name: cells[-1] for name, cells in rows.items()} == {
        "Penny Rope": "pays by both",
        "Long Platter": "pays by height only",
        "Duckling Belt": "pays by rides only",
        "Lantern Double": "pays by height only",
    }
    for place in (1, 2):  # either way the whole of the tickets is shared out
        brought = sum(number(rows[sheet.name][place]) * sheet.rides.magnitude for sheet in SHEETS[:4])
        assert brought == pytest.approx(280_000, rel=0.004)
    for sheet in SHEETS[:4]:
        year = yearly_cost(sheet)
        cost, *shares = map(number, rows[sheet.name][:3])
        for share, even in zip(shares, map(number, rows[sheet.name][3:5]), strict=True):
            fixed = year.total.magnitude - year.variable_per_ride.magnitude * sheet.rides.magnitude
            assert even == pytest.approx(fixed / (share - year.variable_per_ride.magnitude), rel=0.025)
            assert (even < sheet.rides.magnitude) == (share > cost), "break-even and verdict agree"


def test_a_lift_may_pay_by_neither_and_have_no_break_even():
    dear = replace(BELT, maintenance=Q(900_000, "dollar/season"))
    rows = rows_of(ticket_table([dear, PENNY], Q(28, "dollar"), 10_000))
    assert rows["Duckling Belt"][-1] == "pays by neither"
    assert rows_of(ticket_table([BELT], Q(0.001, "dollar"), 10_000))["Duckling Belt"][3:] == (
        "none", "none", "pays by neither"
    )  # fmt: skip


def hill_without(**readings):
    """Return the demo hill without some readings, named by line in small letters."""
    hill = demo_hill()
    held = {
        line: {
            name: value for name, value in own.items() if name not in readings.get(line.replace(" ", "_").lower(), ())
        }
        for line, own in hill.readings.items()
    }
    return replace(hill, readings=held)


def test_a_lift_whose_energy_is_not_known_is_left_out_alone_and_said_to_be():
    sheets = cost_sheets(hill_without(long_platter=["idle_drag"], lantern_double=["efficiency", "rider_mass"]), COSTS)
    assert sheets == [PENNY, BELT, TWIN]
    told = (
        "; left out: Long Platter, whose idle drag was not read, and Lantern Double, whose rider mass and efficiency "
        "were not read"
    )
    for make in (cost_table, volunteers_table, ready_table, lambda few: ticket_table(few, Q(28, "dollar"), 10_000)):
        assert make(sheets).caption.endswith(told)
        assert make(sheets[:2]).caption.endswith(told)
        assert "left out" not in make(SHEETS).caption
    assert meter_table(sheets[:2], Q(1, "")).caption.endswith(told)
    assert [row[1:] for row in cost_table(sheets).rows] == [
        (row[1], row[3], row[5]) for row in cost_table(SHEETS).rows
    ], "the others stand as before"


def test_where_nobody_is_paid_the_table_asks_for_the_wage_of_a_replacement():
    asked = "write the wage of whoever would replace a volunteer"
    unpaid = [replace(sheet, wage=FREE) for sheet in SHEETS[:2]]
    for make in (cost_table, volunteers_table):
        assert asked not in make(SHEETS).caption
        assert make([*unpaid, BELT]).caption.endswith(f"; wage of nought (Penny Rope, Long Platter): {asked}")


HOW_SURE = {"rides": 15, "running_hours": 10, "wage": 5, "life": 25, "energy_price": 10}


def test_the_doubt_of_a_ride_by_own_draws():
    table = doubt_table(PENNY, {name: Q(part, "percent") for name, part in HOW_SURE.items()})
    *rows, (_, interval, _, together, _) = table.rows
    assert table.caption == "What makes the doubt of a ride on Penny Rope: 0.20 ± 0.04 dollars a ride (k = 2.00)"
    assert [row[0] for row in rows] == ["rides", "running hours", "wage", "life", "energy price"]
    energy, year = yearly_cost(PENNY).variable_per_ride.magnitude, yearly_cost(PENNY)
    staff, rest = 11_200, year.total.magnitude - 11_200 - energy * 90_000
    chance = np.random.default_rng(12)

    def between(middle, part):
        return middle * (1 + part * chance.uniform(-1, 1, 200_000))

    rides, hours, wage = between(90_000, 0.15), between(1, 0.10), between(1, 0.05)
    alone = [(staff + rest) / rides, staff * hours / 90_000, staff * wage / 90_000]
    idle = PENNY.idle_power.m_as("kW") * 350 * 0.18  # rises with the hours too
    alone[1] += idle * hours / 90_000
    for row, drawn in zip(rows, alone, strict=False):
        assert number(row[3]) == pytest.approx(drawn.std(), rel=0.02)
    assert number(together) > number(rows[0][3])
    low, high = (float(word) for word in interval.split()[0:3:2])
    assert low < 0.2027 < high
    squares = [number(row[3]) ** 2 for row in rows]
    assert [number(row[4]) for row in rows] == pytest.approx(100 * np.array(squares) / sum(squares), abs=1)


def test_the_same_doubt_comes_each_time():
    parts = {"rides": Q(15, "percent")}
    assert repr(doubt_table(PENNY, parts, draws=2_000)) == repr(doubt_table(PENNY, parts, draws=2_000))


REFUSED = [
    (lambda: cost_sheets(hill_without(penny_rope=["idle_drag"]), {"Penny Rope": COSTS["Penny Rope"]}),
     "cost_sheet: the energy of Penny Rope does not follow from its readings. Read on the lift: idle drag."),
    (lambda: doubt_table(PENNY, {"grant": Q(10, "percent")}),
     "doubt_table: grant of Penny Rope cannot be off by a part of it. Name a value of the cost sheet that is greater "
     "than zero."),
    (lambda: doubt_table(PENNY, {"colour": Q(10, "percent")}),
     "doubt_table: colour of Penny Rope cannot be off by a part of it. Name a value of the cost sheet that is greater "
     "than zero."),
    (lambda: ticket_table(SHEETS, Q(28, "dollar"), 0),
     "ticket_table: guests must be greater than zero, but got 0. Count tickets of a day."),
    (lambda: ticket_table(SHEETS, Q(28, "dollar"), -3_100_000),
     "ticket_table: guests must be greater than zero, but got -3,100,000. Count tickets of a day."),
    (lambda: ticket_table(SHEETS, Q(28, "dollar"), np.inf),
     "ticket_table: guests must be greater than zero, but got inf. Count tickets of a day."),
    (lambda: cost_sheets(demo_hill(), {"Nowhere": COSTS["Penny Rope"]}),
     "Hill: there is no line 'Nowhere'. Write one of Penny Rope, Long Platter, Duckling Belt, Lantern Double, "
     "Twin Penny left, Twin Penny right."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
