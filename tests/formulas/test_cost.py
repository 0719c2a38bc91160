"""Cost of a season and of a ride: against another library, a ledger kept season by season, and sums by hand."""

import numpy as np
import numpy_financial
import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError, show
from liftcalc.formulas import cost
from liftcalc.units import PlainError

INTEREST, LIFE, RIDES = Q(5, "percent"), Q(20, "season"), Q(90_000, "person/season")
MONEY = {"price": Q(35_000, "dollar"), "salvage": Q(2_000, "dollar")}
HOURS, ENERGY_PRICE, RIDE = Q(350, "hour/season"), Q(0.18, "dollar/kilowatt_hour"), Q(30_600, "J")
A_SEASON = "dollar/season"
rates, lives = st.floats(0.001, 0.3), st.integers(1, 40)


@given(rate=rates, seasons=lives, price=st.floats(1, 1e6), part=st.floats(0, 1))
def test_payments_of_another_library(rate, seasons, price, part):
    interest, life = Q(rate, ""), Q(seasons, "season")
    salvage = part * price
    recovery = cost.capital_recovery(interest, life, price=Q(price, "dollar"), salvage=Q(salvage, "dollar"))
    assert recovery.m_as(A_SEASON) == pytest.approx(-numpy_financial.pmt(rate, seasons, price, -salvage), rel=1e-9)
    factor = cost.capital_recovery_factor(interest, life)
    assert factor.m_as("1/season") == pytest.approx(-numpy_financial.pmt(rate, seasons, 1), rel=1e-9)
    aside = cost.sinking_fund(Q(price, "dollar"), interest, life)
    assert aside.m_as(A_SEASON) == pytest.approx(-numpy_financial.pmt(rate, seasons, 0, price), rel=1e-9)
    assert aside.m_as(A_SEASON) == pytest.approx(price * cost.sinking_fund_factor(interest, life).m_as("1/season"))


@pytest.mark.parametrize("rate", [0, 0.05, 0.12])
def test_a_ledger_kept_season_by_season(rate):
    interest, life, owed, fund = Q(rate, ""), Q(7, "season"), 35_000.0, 0.0
    paid = cost.capital_recovery(interest, life, **MONEY).m_as(A_SEASON)
    aside = cost.sinking_fund(Q(3_500, "dollar"), interest, life).m_as(A_SEASON)
    for _ in range(7):
        owed, fund = owed * (1 + rate) - paid, fund * (1 + rate) + aside
    assert (owed, fund) == (pytest.approx(2_000), pytest.approx(3_500))


def test_without_interest_it_is_the_loss_of_value():
    nothing = Q(0, "percent")
    for factor in (cost.capital_recovery_factor, cost.sinking_fund_factor):
        assert factor(nothing, Q(8, "season")).m_as("1/season") == pytest.approx(1 / 8, rel=1e-15)
        near = factor(Q(1e-12, ""), Q(8, "season")).m_as("1/season")
        assert near == pytest.approx(1 / 8, rel=1e-10)
    straight = cost.straight_line_depreciation(LIFE, **MONEY)
    assert straight.m_as(A_SEASON) == pytest.approx(33_000 / 20)
    assert cost.capital_recovery(nothing, LIFE, **MONEY).m_as(A_SEASON) == pytest.approx(33_000 / 20)
    assert cost.capital_recovery(INTEREST, LIFE, **MONEY) > straight


def test_a_very_long_life_pays_the_interest_alone():
    assert cost.capital_recovery_factor(INTEREST, Q(1e6, "season")).m_as("1/season") == pytest.approx(0.05)


def test_energy_by_hand():
    one = cost.energy_cost_of_a_ride(RIDE, Q(85, "percent"), ENERGY_PRICE)
    assert one.m_as("dollar/person") == pytest.approx(0.01 * 0.18)  # 36,000 J, a hundredth of a kilowatt-hour
    whole = cost.energy_cost(RIDES, RIDE, Q(0.85, ""), Q(2, "kW"), HOURS, ENERGY_PRICE)
    assert whole.m_as(A_SEASON) == pytest.approx((900 + 700) * 0.18)


def test_meter_and_staff_by_hand():
    charge = cost.demand_charge(Q(14, "kW"), Q(12, "dollar/kW"), Q(4, ""))
    assert charge.m_as(A_SEASON) == pytest.approx(672)
    wage, crew = Q(16, "dollar/hour"), {"posts": Q(2, ""), "running_hours": HOURS}
    assert cost.staff_cost(wage, **crew).m_as(A_SEASON) == pytest.approx(11_200)
    more = cost.staff_cost(wage, **crew, shut_hours=Q(50, "hour/season"), break_share=Q(10, "percent"))
    assert more.m_as(A_SEASON) == pytest.approx(2 * 16 * 440)
    assert cost.staff_cost(Q(0, "dollar/hour"), **crew).m_as(A_SEASON) == 0


@pytest.mark.parametrize(("coincidence", "peak"), [(1, 27), (0.8, 21.6), (0.3, 14)])
def test_a_common_peak_is_neither_more_than_all_nor_less_than_the_largest(coincidence, peak):
    together = cost.common_peak(Q([14, 11, 2], "kW"), Q(coincidence, ""))
    assert together.m_as("kW") == pytest.approx(peak)
    assert cost.common_peak(Q(14, "kW")).m_as("kW") == 14


def test_cost_of_a_ride_of_rise_and_of_capacity():
    whole = Q(18_000, A_SEASON)
    assert cost.cost_per_ride(whole, RIDES).m_as("dollar/person") == pytest.approx(0.2)
    of_rise = cost.cost_per_rise(whole, RIDES, Q(25, "m"))
    assert of_rise.m_as("dollar/(person*km)") == pytest.approx(8)
    assert of_rise.m_as("dollar/(person*m)") == pytest.approx((whole / RIDES / Q(25, "m")).m_as("dollar/(person*m)"))
    ready = cost.cost_per_thousand_pph(whole, Q(1_200, "pph"))
    assert ready.m_as("dollar/season/kilopph") == pytest.approx(15_000)
    assert (ready * Q(1_200, "pph")).m_as(A_SEASON) == pytest.approx(18_000)


@given(rides=st.integers(1, 60), rise=st.floats(5, 300), ticket=st.floats(1, 90))
def test_a_ticket_is_shared_out_to_the_last(rides, rise, ticket):
    price = Q(ticket, "dollar")
    by_rides = cost.ticket_share_by_rides(price, Q(rides, "person"))
    by_rise = cost.ticket_share_by_vertical(price, vertical_rise=Q(rise, "m"), vertical_per_ticket=Q(rides * rise, "m"))
    for share in (by_rides, by_rise):
        assert share.m_as("dollar/person") * rides == pytest.approx(ticket)


@given(fixed=st.floats(0, 1e5), share=st.floats(1, 5), variable=st.floats(0, 0.9))
def test_at_break_even_the_rides_bring_what_the_lift_costs(fixed, share, variable):
    rides = cost.break_even_rides(
        Q(fixed, A_SEASON), ticket_share=Q(share, "dollar/person"), variable_cost=Q(variable, "dollar/person")
    ).m_as("person/season")
    assert rides * share == pytest.approx(fixed + rides * variable)


def test_as_people_write_it():
    said = [Q(1, A_SEASON), Q(0.203, "dollar/person"), RIDES, LIFE, HOURS, ENERGY_PRICE]
    assert [show(each) for each in said] == [
        "1 dollar a season", "0.20 dollars a ride", "90,000 rides a season", "20 seasons", "350 hours a season",
        "0.18 dollars a kWh",
    ]  # fmt: skip


MESSAGES = [
    (lambda: cost.cost_per_ride(Q(1, A_SEASON), Q(1_200, "pph")),
     "cost_per_ride: rides must be a number of rides a season, but got an hourly capacity: 1200 pph. "
     "Write for example Q(90000, 'person/season').", UnitError),
    (lambda: cost.cost_per_ride(Q(1, A_SEASON), Q(0, "person/season")),
     "cost_per_ride: rides must be greater than zero, but got 0 person/season. "
     "Write for example Q(90000, 'person/season')."),
    (lambda: cost.staff_cost(Q(16, "dollar/hour"), posts=Q(2, ""), running_hours=Q(350, "")),
     "staff_cost: running_hours must be a number of hours a season, but got a pure number: 350. "
     "Write for example Q(350, 'hour/season').", UnitError),
    (lambda: cost.staff_cost(Q(-16, "dollar/hour"), posts=Q(2, ""), running_hours=HOURS),
     "staff_cost: wage must be zero or more, but got -16 dollar/h. Write for example Q(16, 'dollar/hour')."),
    (lambda: cost.capital_recovery_factor(Q(-1, "percent"), LIFE),
     "capital_recovery_factor: interest must be zero or more, but got -1 %. Write for example Q(0.2, '')."),
    (lambda: cost.capital_recovery_factor(Q(np.inf, "percent"), LIFE),
     "capital_recovery_factor: interest must be a finite number, but got inf %. Write for example Q(0.2, '')."),
    (lambda: cost.capital_recovery_factor(Q([0.05, 5], ""), LIFE),
     "capital_recovery_factor: interest must be 1 or less, but got 5. "
     "Write a part of one, such as Q(0.05, '') or Q(5, 'percent')."),
    (lambda: cost.sinking_fund_factor(INTEREST, Q(0, "season")),
     "sinking_fund_factor: life must be greater than zero, but got 0 season. Write for example Q(20, 'season')."),
    (lambda: cost.sinking_fund_factor(INTEREST, Q(20, "year")),
     "sinking_fund_factor: life must be a number of seasons, but got a time: 20 a. "
     "Write for example Q(20, 'season').", UnitError),
    (lambda: cost.capital_recovery(INTEREST, LIFE, price=Q(1_000, "dollar"), salvage=Q(2_000, "dollar")),
     "capital_recovery: salvage must be no more than the price, 1,000 dollars, but got 2,000. "
     "Write what the lift still brings at the end of its life."),
    (lambda: cost.common_peak(Q([14, 11], "kW"), Q(2, "")),
     "common_peak: coincidence must be 1 or less, but got 2. Write Q(1, '') where all peaks come at once."),
    (lambda: cost.break_even_rides(
        Q(1, A_SEASON), ticket_share=Q(0.5, "dollar/person"), variable_cost=Q(0.5, "dollar/person")),
     "break_even_rides: a ride brings 0.5 dollars and itself costs 0.5: no number of rides pays for the lift. "
     "Write a ticket_share above the variable_cost."),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)


CALLS = {  # argument: a formula with one value left to be given, its unit, and the value of the advice
    "interest": (lambda x: cost.capital_recovery(x, LIFE, **MONEY), "", "0.2, ''", "zero or more"),
    "life": (lambda x: cost.sinking_fund(Q(1, "dollar"), INTEREST, x), "season", "20, 'season'", "greater than zero"),
    "running_hours": (lambda x: cost.staff_cost(Q(16, "dollar/hour"), posts=Q(2, ""), running_hours=x),
                      "hour/season", "350, 'hour/season'", "greater than zero"),
    "rides": (lambda x: cost.cost_per_ride(Q(1, A_SEASON), x), "person/season", "90000, 'person/season'",
              "greater than zero"),
}  # fmt: skip


@pytest.mark.parametrize("argument", CALLS)
@pytest.mark.parametrize("number", [-1, 0, np.inf, -np.inf, np.nan])
def test_what_is_less_than_nothing_or_endless_is_refused_by_name(argument, number):
    call, unit, advice, bound = CALLS[argument]
    if number == 0 and bound == "zero or more":
        assert call(Q(0, unit)).m_as(A_SEASON) == pytest.approx(33_000 / 20)
        return
    with pytest.raises(PlainError) as caught:
        call(Q(number, unit))
    wanted = bound if np.isfinite(number) else "a finite number"
    assert f": {argument} must be {wanted}, but got {number:g}" in str(caught.value)
    assert str(caught.value).endswith(f"Write for example Q({advice}).")
