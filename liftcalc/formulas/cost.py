"""What a lift costs a season and a ride: capital, energy, staff, and how many rides pay for it.

A season is what a lift does in one year. Money is a label here and no currency; a ride is one person carried. Planning
figures: prices, rates and grants are for the owner, and the books for whoever keeps them.
"""

import numpy as np

from liftcalc.formulas.conditions import (
    A_PART_OF_THE_MONEY,
    NO_MORE_THAN_ALL_PEAKS,
    NO_MORE_THAN_PAID,
    PART_OF_THE_POWER,
    SHARE_ABOVE_THE_COST,
)
from liftcalc.units import unit_aware

JOULES_PER_KILOWATT_HOUR = 3.6e6
METRES_PER_KILOMETRE = 1000.0


@unit_aware(interest="", life="season", returns="1/season", conditions=(A_PART_OF_THE_MONEY,))
def sinking_fund_factor(interest, life):
    """Return the part of a sum that is laid aside each season, at interest, to have the whole sum at the end.

        f = i / ((1 + i)^n - 1); 1 / n without interest

    returns: Part of the sum, laid aside at the end of each season.

    Source: engineering-economy textbooks, the uniform series of compound interest.

    >>> show(sinking_fund_factor(Q(8, "percent"), Q(10, "season")))
    '0.0690 a season'
    """
    from scipy.special import exprel  # (e^x - 1) / x, and 1 at zero: no interest needs no case of its own

    by_the_moment = np.log1p(interest)
    return exprel(by_the_moment) / (life * exprel(life * by_the_moment))


@unit_aware(interest="", life="season", returns="1/season", conditions=(A_PART_OF_THE_MONEY,))
def capital_recovery_factor(interest, life):
    """Return the part of a sum that is paid back each season, so that sum and interest are paid at the end.

        f = i (1 + i)^n / ((1 + i)^n - 1), the sinking fund factor and the interest; 1 / n without interest

    returns: Part of the sum, paid at the end of each season.

    Source: engineering-economy textbooks, the uniform series of compound interest.

    >>> show(capital_recovery_factor(Q(8, "percent"), Q(10, "season")))
    '0.1490 a season'
    """
    return sinking_fund_factor.plain(interest, life) + interest


@unit_aware(
    interest="", life="season", price="dollar", salvage="dollar", returns="dollar/season",
    conditions=(A_PART_OF_THE_MONEY, NO_MORE_THAN_PAID),
)  # fmt: skip
def capital_recovery(interest, life, *, price, salvage):
    """Return what a lift costs each season for having been bought: its loss of value, and the interest.

    It holds the loss of value already: take it or ``straight_line_depreciation``, never both.

        A = (P - S) f + S i, with P the price, S the salvage and f the capital recovery factor

    returns: Equal cost of each season of the life.

    Source: engineering-economy textbooks, capital recovery with salvage.

    >>> show(capital_recovery(Q(5, "percent"), Q(20, "season"), price=Q(35000, "dollar"), salvage=Q(2000, "dollar")))
    '2,748 dollars a season'
    """
    return (price - salvage) * capital_recovery_factor.plain(interest, life) + salvage * interest


@unit_aware(life="season", price="dollar", salvage="dollar", returns="dollar/season", conditions=(NO_MORE_THAN_PAID,))
def straight_line_depreciation(life, *, price, salvage):
    """Return the loss of value of a season, alike in all, as the books have it: no interest is in it.

    Take it or ``capital_recovery``, never both: that one holds the loss of value already.

        D = (P - S) / n, with P the price, S the salvage and n the life

    returns: Loss of value of a season.

    Source: definition.

    >>> show(straight_line_depreciation(Q(20, "season"), price=Q(35000, "dollar"), salvage=Q(2000, "dollar")))
    '1,650 dollars a season'
    """
    return (price - salvage) / life


@unit_aware(
    replacement_price="dollar", interest="", life="season", returns="dollar/season", conditions=(A_PART_OF_THE_MONEY,)
)
def sinking_fund(replacement_price, interest, life):
    """Return what is laid aside each season for the next rope or belt.

        A = P f, with P the replacement price and f the sinking fund factor

    life: seasons that a rope or a belt lasts
    returns: Money laid aside a season.

    Source: engineering-economy textbooks, the uniform series of compound interest.

    >>> show(sinking_fund(Q(3500, "dollar"), Q(5, "percent"), Q(5, "season")))
    '633 dollars a season'
    """
    return replacement_price * sinking_fund_factor.plain(interest, life)


@unit_aware(
    energy_per_rider="J", efficiency="", energy_price="dollar/kilowatt_hour", returns="dollar/person",
    conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def energy_cost_of_a_ride(energy_per_rider, efficiency, energy_price):
    """Return what one more ride costs in energy: of a running lift, what changes with the rides.

        c = p E / (3.6e6 eta), with p the energy price

    returns: Cost of a ride.

    Source: conservation of energy; 3.6 million joules in a kilowatt-hour.

    >>> show(energy_cost_of_a_ride(Q(30800, "J"), Q(85, "percent"), Q(0.18, "dollar/kilowatt_hour")))
    '0.0018 dollars a ride'
    """
    return energy_price * energy_per_rider / efficiency / JOULES_PER_KILOWATT_HOUR


@unit_aware(
    rides="person/season", energy_per_rider="J", efficiency="", idle_power="kW", running_hours="hour/season",
    energy_price="dollar/kilowatt_hour", returns="dollar/season", conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def energy_cost(rides, energy_per_rider, efficiency, idle_power, running_hours, energy_price):
    """Return what the energy of a season costs: the work of the rides, and the empty lift in all hours that it runs.

        A = p (N E / (3.6e6 eta) + P_idle h), with p the energy price, N the rides and h the running hours

    returns: Cost of the kilowatt-hours; what the meter bills for the peak is ``demand_charge``.

    Source: conservation of energy; 3.6 million joules in a kilowatt-hour.

    >>> show(energy_cost(Q(90000, "person/season"), Q(30800, "J"), Q(85, "percent"), Q(2, "kW"),
    ...                  Q(350, "hour/season"), Q(0.18, "dollar/kilowatt_hour")))
    '289 dollars a season'
    """
    of_rides = rides * energy_cost_of_a_ride.plain(energy_per_rider, efficiency, energy_price)
    return of_rides + energy_price * idle_power * running_hours


@unit_aware(peaks="kW", coincidence="", returns="kW", one_value=True, conditions=(NO_MORE_THAN_ALL_PEAKS,))
def common_peak(peaks, coincidence=1.0):
    """Return the peak of one meter behind which several motors run.

        P = max(g sum(P_k), largest P_k), with g the coincidence

    peaks: peak of each motor by itself, together in one array
    coincidence: part of the sum of the peaks that comes at once; 1 where all peaks can fall into one reading
    returns: Peak that the meter bills. Each motor billed by itself would pay for the sum.

    Source: definition of the coincidence factor of electric loads; no meter reads less than the largest motor.

    >>> show(common_peak(Q([14, 11], "kW"), Q(0.8, "")))
    '20.0 kW'
    """
    return float(np.max(np.maximum(coincidence * np.sum(peaks), np.max(peaks))))


@unit_aware(billed_power="kW", demand_price="dollar/kW", billed_months="", returns="dollar/season")
def demand_charge(billed_power, demand_price, billed_months):
    """Return what the meter bills for the peak.

        A = P p m, with p the demand price and m the billed months

    returns: Cost a season, however few the hours of the peak. Several motors on one meter: ``common_peak``.

    Source: definition of a tariff by demand.

    >>> show(demand_charge(Q(14, "kW"), Q(12, "dollar/kW"), Q(4, "")))
    '672 dollars a season'
    """
    return billed_power * demand_price * billed_months


@unit_aware(
    wage="dollar/hour", posts="", running_hours="hour/season", shut_hours="hour/season", break_share="",
    returns="dollar/season",
)  # fmt: skip
def staff_cost(wage, *, posts, running_hours, shut_hours=0.0, break_share=0.0):
    """Return what the staff costs: every post in every paid hour.

    With volunteers show it at two wages: at zero, and at what it would cost to replace them.

        A = k w (h + h_shut) (1 + b), with k the posts, w the wage, h the hours and b the break share

    returns: Cost a season.

    Source: definition.

    >>> show(staff_cost(Q(16, "dollar/hour"), posts=Q(2, ""), running_hours=Q(350, "hour/season")))
    '11,200 dollars a season'
    """
    return posts * wage * (running_hours + shut_hours) * (1 + break_share)


@unit_aware(season_cost="dollar/season", rides="person/season", returns="dollar/person")
def cost_per_ride(season_cost, rides):
    """Return the cost of a ride, by the rides that were carried.

    Capacity times hours in place of the rides makes every lift look cheap: few lifts run full all day.

        c = A / N, with N the rides

    returns: Cost of a ride.

    Source: definition of a mean.

    >>> show(cost_per_ride(Q(18242, "dollar/season"), Q(90000, "person/season")))
    '0.20 dollars a ride'
    """
    return season_cost / rides


@unit_aware(season_cost="dollar/season", rides="person/season", vertical_rise="m", returns="dollar/(person*km)")
def cost_per_rise(season_cost, rides, vertical_rise):
    """Return the cost of lifting persons, to set lifts of unlike rise side by side.

        c = 1000 A / (N h), with N the rides and h the rise

    returns: Cost of 1,000 person-metres of rise.

    Source: definition of a mean.

    >>> show(cost_per_rise(Q(18242, "dollar/season"), Q(90000, "person/season"), Q(29.4, "m")))
    '6.9 dollars per 1,000 person-metres'
    """
    return METRES_PER_KILOMETRE * season_cost / (rides * vertical_rise)


@unit_aware(season_cost="dollar/season", hourly_capacity="person/hour", returns="dollar/season/kilopph")
def cost_per_thousand_pph(season_cost, hourly_capacity):
    """Return the cost of holding capacity ready, whether anybody rides or not.

        c = 1000 A / C

    hourly_capacity: persons an hour, of one level for all lifts that are compared
    returns: Cost a season of 1,000 pph.

    Source: definition of a mean.

    >>> show(cost_per_thousand_pph(Q(18242, "dollar/season"), Q(1200, "pph")))
    '15,202 dollars a season per 1,000 pph'
    """
    return 1000 * season_cost / hourly_capacity


@unit_aware(ticket_price="dollar", rides_per_ticket="person", returns="dollar/person")
def ticket_share_by_rides(ticket_price, rides_per_ticket):
    """Return what a ride brings, the ticket shared out among its rides: a short ride brings as much as a long one.

        c = T / n, with T the ticket price

    rides_per_ticket: rides of one guest in a day, on all lifts
    returns: Share of a ride.

    Source: definition of a mean.

    >>> show(ticket_share_by_rides(Q(28, "dollar"), Q(19, "person")))
    '1.47 dollars a ride'
    """
    return ticket_price / rides_per_ticket


@unit_aware(ticket_price="dollar", vertical_rise="m", vertical_per_ticket="m", returns="dollar/person")
def ticket_share_by_vertical(ticket_price, *, vertical_rise, vertical_per_ticket):
    """Return what a ride brings, the ticket shared out by the height gained: a long ride brings more than a short one.

        c = T h / H, with T the ticket price, h the rise and H the height of a day

    vertical_rise: height gained in one ride on this lift
    vertical_per_ticket: height gained by one guest in a day, on all lifts
    returns: Share of a ride.

    Source: definition of a share.

    >>> show(ticket_share_by_vertical(Q(28, "dollar"), vertical_rise=Q(29.4, "m"), vertical_per_ticket=Q(890, "m")))
    '0.92 dollars a ride'
    """
    return ticket_price * vertical_rise / vertical_per_ticket


@unit_aware(
    fixed_cost="dollar/season", ticket_share="dollar/person", variable_cost="dollar/person", returns="person/season",
    may_be_zero=("fixed_cost", "variable_cost"), conditions=(SHARE_ABOVE_THE_COST,),
)  # fmt: skip
def break_even_rides(fixed_cost, *, ticket_share, variable_cost):
    """Return how many rides a season pay for the lift.

        N = A_fixed / (c_share - c_variable)

    fixed_cost: cost a season that stays the same however many ride
    ticket_share: what a ride brings
    variable_cost: what one more ride costs
    returns: Rides a season at which the lift neither wins nor loses.

    Source: engineering-economy textbooks, the break-even point.

    >>> show(break_even_rides(Q(18080, "dollar/season"), ticket_share=Q(1.47, "dollar/person"),
    ...                       variable_cost=Q(0.0018, "dollar/person")))
    '12,314 rides a season'
    """
    return fixed_cost / (ticket_share - variable_cost)
