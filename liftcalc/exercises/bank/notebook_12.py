"""Exercises of 12: what a season and a ride cost. Printed numbers, prices and grids are invented."""

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.cost import (
    break_even_rides,
    capital_recovery,
    capital_recovery_factor,
    cost_per_ride,
    demand_charge,
    staff_cost,
    straight_line_depreciation,
    ticket_share_by_rides,
    ticket_share_by_vertical,
)
from liftcalc.quantity_text import show
from liftcalc.units import Q

A_RIDE, A_SEASON, RIDES = "dollar/person", "dollar/season", "person/season"


def _recovery(n, salvage=None):
    return capital_recovery(n.interest, n.life, price=n.price, salvage=n.salvage if salvage is None else salvage)


def _depreciation(n):
    return straight_line_depreciation(n.life, price=n.price, salvage=n.salvage)


def _staff(n, posts=None):
    return staff_cost(n.wage, posts=n.posts if posts is None else posts, running_hours=n.running_hours)


def _charge(n, billed=None, months=None):
    return demand_charge(billed or n.billed_power, n.demand_price, months or n.billed_months)


def _metered(n, billed=None, months=None, drawn=None):
    """Return what a meter costs a season: the charge for the peak, and the kilowatt-hours of a mean power."""
    return _charge(n, billed, months) + ((drawn or n.mean_power) * n.running_hours * n.energy_price).to(A_SEASON)


def _even(n, fixed, variable):
    return break_even_rides(fixed, ticket_share=n.ticket_share, variable_cost=variable)


def _by_height(n, height=None):
    return ticket_share_by_vertical(
        n.ticket_price, vertical_rise=n.vertical_rise, vertical_per_ticket=n.height if height is None else height
    )


EXERCISES = (
    NumberExercise(
        id="12.1",
        sort="compute",
        text="Long Platter is bought for {price} and lasts {life}; then it still brings {salvage}. The club reckons "
        "with {interest} interest a year. What is its capital recovery?",
        given={
            "price": Drawn("dollar", 240_000, 200_000, 300_000, 5_000),
            "life": Drawn("season", 25, 15, 30, 1),
            "salvage": Drawn("dollar", 12_000, 10_000, 24_000, 1_000),
            "interest": Drawn("percent", 4, 3, 8, 1),
        },
        figures=lambda n: {"factor": capital_recovery_factor(n.interest, n.life), "lost": n.price - n.salvage},
        unit=A_SEASON,
        within=20,
        right=_recovery,
        roads=(
            Road(
                Mistake(
                    "interest left out",
                    "This is the loss of value alone, as the books have it. The money in the lift would have earned "
                    "interest elsewhere, or was borrowed.",
                ),
                _depreciation,
            ),
            Road(
                Mistake("recovery and depreciation both", "The recovery holds the loss of value already: take one."),
                lambda n: _recovery(n) + _depreciation(n),
            ),
            Road(
                Mistake(
                    "price over life",
                    "The price was divided by the seasons. There is neither interest in it, nor what the lift still "
                    "brings at the end.",
                ),
                lambda n: n.price / n.life,
            ),
            Road(
                Mistake("salvage left out", "The whole price was recovered. Part of it comes back at the end."),
                lambda n: _recovery(n, Q(0, "dollar")),
            ),
            Road(
                Mistake(
                    "interest on the salvage left out",
                    "What is left at the end was taken off, and that is right for the loss. But it lies in the lift "
                    "for all the seasons, and bears interest.",
                ),
                lambda n: n.lost * n.factor,
            ),
            Road(
                Mistake("interest on all of the price", "Interest is paid here as if nothing were ever paid back."),
                lambda n: _depreciation(n) + n.price * n.interest.m_as("") / Q(1, "season"),
            ),
            Road(
                Mistake("percent as a number", "The percent went in as they stand. A hundredth of that is the rate."),
                lambda n: n.price * n.interest.m_as("percent") / Q(1, "season"),
            ),
        ),
        clues=(
            "Two things are paid each season: what the lift loses in value, and interest. On how much money?",
            "Picture the salvage as money that lies in the lift: it comes back whole, and until then bears interest.",
            "First step: the factor i ÷ (1 − (1 + i)⁻ⁿ) for the interest and the seasons.",
        ),
        steps=lambda n: (
            f"Factor: {n.interest.m_as(''):.2f} ÷ (1 − {1 + n.interest.m_as(''):.2f}^−{n.life.magnitude:g}) = "
            f"{n.factor.magnitude:.5f} a season.",
            f"Lost in value: {show(n.price)} − {show(n.salvage)} = {show(n.lost)}; "
            f"× {n.factor.magnitude:.5f} = {show((n.lost * n.factor).to(A_SEASON))}.",
            f"Interest on the salvage: {show(n.salvage)} × {n.interest.m_as(''):.2f} = "
            f"{n.salvage.magnitude * n.interest.m_as(''):,.0f}. Together {show(_recovery(n))}, and no depreciation.",
        ),
    ),
    NumberExercise(
        id="12.2",
        sort="mistake",
        text="A leaflet says of Long Platter: {printed}. The books say: capital recovery {recovery}; {posts} posts "
        "for {running_hours} at {wage}; bills, rope and energy {bills}. The lift is governed at {hourly_capacity}, and "
        "carried {rides}. Find out how the leaflet got there. What does a ride cost?",
        given={
            "recovery": Drawn(A_SEASON, 18_200, 16_000, 21_000, 100),
            "posts": Drawn("", 2, 2, 3, 1),
            "wage": Drawn("dollar/hour", 16, 13, 20, 1),
            "running_hours": Drawn("hour/season", 350, 300, 400, 10),
            "bills": Drawn(A_SEASON, 12_500, 9_000, 14_000, 100),
            "hourly_capacity": Drawn("pph", 510, 480, 540, 5),
            "rides": Drawn(RIDES, 25_000, 18_000, 32_000, 500),
        },
        figures=lambda n: {
            "total": n.recovery + _staff(n) + n.bills,
            "offered": (n.hourly_capacity * n.running_hours).to(RIDES),
            "printed": (n.recovery + _staff(n) + n.bills) / (n.hourly_capacity * n.running_hours).to(RIDES),
        },
        unit=A_RIDE,
        within=0.01,
        right=lambda n: cost_per_ride(n.total, n.rides),
        roads=(
            Road(
                Mistake(
                    "capacity times hours for rides",
                    "This is the leaflet's way: it divides by rides that nobody took. Which rides were carried?",
                ),
                lambda n: cost_per_ride(n.total, n.offered),
            ),
            Road(
                Mistake("volunteers at nought", "The staff is left out. Somebody stands at each post all the same."),
                lambda n: cost_per_ride(n.total - _staff(n), n.rides),
            ),
            Road(
                Mistake("cash for cost", "The recovery is left out. So the till sees it; the next lift is not in it."),
                lambda n: cost_per_ride(n.total - n.recovery, n.rides),
            ),
            Road(
                Mistake("one post for all of them", "A single post was paid. How many are staffed?"),
                lambda n: cost_per_ride(n.total - _staff(n) + _staff(n, Q(1, "")), n.rides),
            ),
        ),
        clues=(
            "What is shared out, and among how many? One of the two is wrong in the leaflet.",
            "Picture the lift at noon on a working day. Is every place taken, all season long?",
            "First step: the staff of a season are posts times hours times wage; then add up the season.",
        ),
        steps=lambda n: (
            f"A season: {show(n.recovery)} + {n.posts.magnitude:g} × {n.running_hours.magnitude:g} × "
            f"{n.wage.magnitude:g} + {show(n.bills)} = {show(n.total)}.",
            f"The leaflet: ÷ ({show(n.hourly_capacity)} × {show(n.running_hours)}) = ÷ {n.offered.magnitude:,.0f}: "
            f"{show(n.printed)}. Nobody took most of those rides.",
            f"By the rides carried: ÷ {n.rides.magnitude:,.0f} = {show(cost_per_ride(n.total, n.rides))}.",
        ),
    ),
    NumberExercise(
        id="12.3",
        sort="compute",
        text="Penny Rope and Twin Penny hang on one meter. Alone the one peaks at {peak} and the other at "
        "{other_peak}; the highest quarter of an hour of both together reads {billed_power}. That is billed at "
        "{demand_price}, in each of {billed_months} months. On average both together draw {mean_power} for "
        "{running_hours}, at {energy_price}. What does the meter cost a season?",
        given={
            "peak": Drawn("kW", 14, 12, 16, 1),
            "other_peak": Drawn("kW", 11, 9, 11, 1),
            "billed_power": Drawn("kW", 20, 18, 20, 1),
            "demand_price": Drawn("dollar/kW", 12, 10, 16, 1),
            "billed_months": Drawn("", 4, 3, 5, 1),
            "mean_power": Drawn("kW", 6, 5, 8, 0.5),
            "running_hours": Drawn("hour/season", 300, 240, 400, 10),
            "energy_price": Drawn("dollar/kilowatt_hour", 0.18, 0.14, 0.28, 0.02),
        },
        unit=A_SEASON,
        within=3,
        right=_metered,
        roads=(
            Road(
                Mistake("kW for kWh", "Kilowatts were paid as if they were kilowatt-hours. Where are the hours?"),
                lambda n: _charge(n) + Q(n.mean_power.m_as("kW") * n.energy_price.magnitude, A_SEASON),
            ),
            Road(
                Mistake("peaks added up", "Both peaks were added. One meter bills only what came at once."),
                lambda n: _metered(n, billed=n.peak + n.other_peak),
            ),
            Road(
                Mistake("largest peak alone", "One motor's peak was billed. The meter saw more than that at once."),
                lambda n: _metered(n, billed=n.peak),
            ),
            Road(
                Mistake("one month for all", "The peak is billed each month. Here it is billed once."),
                lambda n: _metered(n, months=Q(1, "")),
            ),
            Road(
                Mistake("peak all season long", "The peak lasted a quarter of an hour. What ran all the hours?"),
                lambda n: _metered(n, drawn=n.billed_power),
            ),
            Road(
                Mistake("demand charge left out", "Only the energy is paid here. The meter also bills the peak."),
                lambda n: _metered(n) - _charge(n),
            ),
        ),
        clues=(
            "The meter asks for two things with two units. Which of the numbers belong to which?",
            "Picture the two needles through the day: they are seldom at their highest in the same quarter of an hour.",
            "First step: the charge for the peak, from the kilowatts that the meter read.",
        ),
        steps=lambda n: (
            f"Peak: {show(n.billed_power)} × {n.demand_price.magnitude:g} × {n.billed_months.magnitude:g} = "
            f"{show(_charge(n))}; the peaks of each motor alone are not billed.",
            f"Energy: {show(n.mean_power)} × {n.running_hours.magnitude:g} h = "
            f"{n.mean_power.magnitude * n.running_hours.magnitude:,.0f} kWh; × {n.energy_price.magnitude:.2f} = "
            f"{show(_metered(n) - _charge(n))}.",
            f"Together {show(_metered(n))}.",
        ),
    ),
    NumberExercise(
        id="12.4",
        sort="backwards",
        text="Duckling Belt carries {rides} and costs {season_cost}. Of that, {variable_cost} go for energy and wear, "
        "which only the rides cause; the rest stays. The share of the ticket is {ticket_share}. How many rides pay for "
        "the belt?",
        given={
            "season_cost": Drawn(A_SEASON, 26_000, 22_000, 30_000, 500),
            "rides": Drawn(RIDES, 40_000, 34_000, 50_000, 1_000),
            "variable_cost": Drawn(A_RIDE, 0.06, 0.05, 0.12, 0.01),
            "ticket_share": Drawn(A_RIDE, 0.9, 0.8, 1.4, 0.05),
        },
        figures=lambda n: {"fixed": n.season_cost - n.variable_cost * n.rides},
        unit=RIDES,
        within=30,
        right=lambda n: _even(n, n.fixed, n.variable_cost),
        roads=(
            Road(
                Mistake("whole cost as fixed", "Energy and wear are counted twice here. What stays if nobody rides?"),
                lambda n: _even(n, n.season_cost, n.variable_cost),
            ),
            Road(
                Mistake("cost of a ride left out", "Energy and wear go off the share before anything is left of it."),
                lambda n: _even(n, n.fixed, Q(0, A_RIDE)),
            ),
            Road(
                Mistake("whole cost over the share", "With another number of rides this season costs something else."),
                lambda n: _even(n, n.season_cost, Q(0, A_RIDE)),
            ),
            Road(
                Mistake("cost added to the share", "Energy and wear were added to what a ride brings. They go off it."),
                lambda n: n.fixed / (n.ticket_share + n.variable_cost),
            ),
        ),
        clues=(
            "What does the belt cost on a season without a single ride? And what does each ride leave over?",
            "Picture two lines over the rides: one rises from nought, the other from what stays. Where do they meet?",
            "First step: take energy and wear of all rides off the season's cost.",
        ),
        steps=lambda n: (
            f"What stays: {show(n.season_cost)} − {n.variable_cost.magnitude:.2f} × {n.rides.magnitude:,.0f} = "
            f"{show(n.fixed)}.",
            f"A ride leaves {n.ticket_share.magnitude:.2f} − {n.variable_cost.magnitude:.2f} = "
            f"{(n.ticket_share - n.variable_cost).magnitude:.2f} dollars.",
            f"{n.fixed.magnitude:,.0f} ÷ {(n.ticket_share - n.variable_cost).magnitude:.2f} = "
            f"{show(_even(n, n.fixed, n.variable_cost))}. The share was shared out in one of two ways: say which.",
        ),
    ),
    ChoiceExercise(
        id="12.5",
        sort="judge",
        text="Volunteers staff the {posts} posts of Penny Rope for {running_hours}. Whoever replaced them would cost "
        "{wage}. All else comes to {rest}, and {rides} are carried. What belongs in the report to the board?",
        given={
            "posts": Drawn("", 2, 2, 3, 1),
            "running_hours": Drawn("hour/season", 350, 300, 400, 10),
            "wage": Drawn("dollar/hour", 16, 13, 20, 1),
            "rest": Drawn(A_SEASON, 7_000, 6_000, 8_500, 100),
            "rides": Drawn(RIDES, 90_000, 70_000, 110_000, 5_000),
        },
        figures=lambda n: {
            "given": _staff(n),
            "paid": cost_per_ride(n.rest + _staff(n), n.rides),
            "free": cost_per_ride(n.rest, n.rides),
            "a_post": cost_per_ride(_staff(n, Q(1, "")), n.rides),
        },
        options=(
            Option(
                "Both, {free} with the hours at nought and {paid} at the wage; the volunteers give {given}.",
                says="The first is what the club pays, the second what the lift uses up. Their difference is a gift, "
                "and a gift is worth being named.",
            ),
            Option(
                "Only {free}: whoever takes no wage costs nothing.",
                Mistake(
                    "volunteers taken for free",
                    "The club pays nothing for them. The hours are used all the same, and beside a lift with paid "
                    "staff this one looks cheap by a gift.",
                ),
            ),
            Option(
                "Only {paid}: what stands in no wage book makes a report look better than it is.",
                Mistake(
                    "gift taken for a bill",
                    "Nobody sends this bill. The till needs the smaller figure, and the board needs to know of it.",
                ),
            ),
            Option(
                "{free}; and should the volunteers stop coming, nothing is lost, since they stand there at nought.",
                Mistake(
                    "loss of volunteers taken for free",
                    "Their hours would have to be bought, or the lift would stand: {given} hang on people who come "
                    "because they like to.",
                ),
            ),
            Option(
                "{paid}; one post less would save {a_post}, and that is the way to cheaper rides.",
                Mistake(
                    "post taken for a saving",
                    "Posts stand where the code, the authority and the sight lines ask for them. No cost of a ride "
                    "decides that.",
                ),
            ),
        ),
        clues=(
            "Who asks, and what for? What the till pays and what the lift uses up are two questions.",
            "Picture the season after the one in which half of the volunteers have moved away.",
            "First step: the hours of a season at the wage; then a ride with them, and a ride without.",
        ),
        steps=lambda n: (
            f"Hours: {n.posts.magnitude:g} × {n.running_hours.magnitude:g} × {n.wage.magnitude:g} = {show(n.given)}.",
            f"A ride: {show(n.rest)} ÷ {n.rides.magnitude:,.0f} = {show(n.free)} with the hours at nought; with them "
            f"{show(n.paid)}.",
            "Both stand in the report, each with its words. How many posts there are the code and the sight lines say.",
        ),
    ),
    NumberExercise(
        id="12.6",
        sort="compute",
        text="A ticket costs {ticket_price}. With it a guest makes {rides_a_day} rides in a day on all lifts, and "
        "gains {height} of height. Long Platter rises {vertical_rise}. Shared out by the height gained, what does a "
        "ride on it bring?",
        given={
            "ticket_price": Drawn("dollar", 28, 20, 40, 1),
            "rides_a_day": Drawn("", 19, 14, 24, 1),
            "height": Drawn("ft", 3_300, 2_600, 4_000, 100),
            "vertical_rise": Drawn("m", 78, 70, 90, 1),
        },
        unit=A_RIDE,
        within=0.01,
        right=_by_height,
        roads=(
            Road(
                Mistake("shared out by rides", "Each ride brings the same here. Asked is the sharing by height."),
                lambda n: ticket_share_by_rides(n.ticket_price, Q(n.rides_a_day.magnitude, "person")),
            ),
            Road(wrong.FEET_FOR_METRES, lambda n: _by_height(n, Q(n.height.m_as("ft"), "m"))),
            Road(
                Mistake("a day for a ride", "This is what a whole day on this lift would bring. One ride is asked."),
                lambda n: _by_height(n) * n.rides_a_day.magnitude,
            ),
            Road(
                wrong.UPSIDE_DOWN,
                lambda n: Q((n.ticket_price * n.height / n.vertical_rise).m_as("dollar"), A_RIDE),
            ),
        ),
        clues=(
            "Which part of the day's height is one ride?",
            "Picture the day as one long climb, with the rides as its pieces, the long ones longer.",
            "First step: bring both heights to one unit of length.",
        ),
        steps=lambda n: (
            f"Height of a day: {show(n.height)} × 0.3048 = {n.height.m_as('m'):,.1f} m. A ride is "
            f"{n.vertical_rise.magnitude:g} ÷ {n.height.m_as('m'):,.1f} = "
            f"{(n.vertical_rise / n.height).m_as(''):.4f} of it.",
            f"{show(n.ticket_price)} × {(n.vertical_rise / n.height).m_as(''):.4f} = {show(_by_height(n))}.",
            "By rides it would bring "
            f"{show(ticket_share_by_rides(n.ticket_price, Q(n.rides_a_day.magnitude, 'person')))}. Show both: the "
            "verdict on a lift may turn round between them.",
        ),
    ),
)
