"""Exercises of 12 against a library, ledgers and sums kept one by one; and the figures in the words of the page."""

import functools
import re
from dataclasses import replace

import numpy_financial
import pytest
from notebook_files import PATHS, prose, read

from liftcalc import Q
from liftcalc.exercises import BANK, Posed
from liftcalc.lifts.cost_of_lift import read_costs, yearly_cost
from liftcalc.lifts.cost_words import cost_sheets
from liftcalc.lifts.demo_hill import DATA, demo_hill
from liftcalc.simulation.board_case import board_choices, read_board_case

anybody = pytest.mark.parametrize("name", ["", "Maja K.", "17"])


@anybody
def test_a_library_of_money_pays_what_12_1_says(name):
    posed = Posed(BANK["12.1"], name)
    n = posed.numbers
    rate, seasons = n.interest.m_as(""), n.life.magnitude
    paid = -numpy_financial.pmt(rate, seasons, n.price.magnitude, -n.salvage.magnitude)
    assert posed.right.m_as("dollar/season") == pytest.approx(paid)
    worth = -numpy_financial.pv(rate, seasons, paid, n.salvage.magnitude)
    assert worth == pytest.approx(n.price.magnitude), "what is paid and what is left are worth the price today"


@anybody
def test_a_season_of_rides_brings_back_what_12_2_says(name):
    posed = Posed(BANK["12.2"], name)
    n = posed.numbers
    wages = sum(n.wage.magnitude for _ in range(int(n.posts.magnitude)) for _ in range(int(n.running_hours.magnitude)))
    collected = posed.right.m_as("dollar/person") * n.rides.magnitude
    assert collected == pytest.approx(n.recovery.magnitude + n.bills.magnitude + wages)


@anybody
def test_a_meter_read_each_hour_bills_what_12_3_says(name):
    posed = Posed(BANK["12.3"], name)
    n = posed.numbers
    energy = sum(n.mean_power.magnitude * n.energy_price.magnitude for _ in range(int(n.running_hours.magnitude)))
    peak = sum(n.billed_power.magnitude * n.demand_price.magnitude for _ in range(int(n.billed_months.magnitude)))
    assert posed.right.m_as("dollar/season") == pytest.approx(energy + peak)
    assert max(n.peak, n.other_peak) <= n.billed_power <= n.peak + n.other_peak, "a common peak"


@anybody
def test_at_the_rides_of_12_4_the_belt_neither_wins_nor_loses(name):
    posed = Posed(BANK["12.4"], name)
    n = posed.numbers
    stays = n.season_cost.magnitude - n.rides.magnitude * n.variable_cost.magnitude

    def left(rides):
        return rides * n.ticket_share.magnitude - stays - rides * n.variable_cost.magnitude

    rides = posed.right.m_as("person/season")
    assert left(rides) == pytest.approx(0, abs=1e-6)
    assert left(rides - 1) < 0 < left(rides + 1)


@anybody
def test_what_12_5_gives_is_the_difference_of_its_two_figures(name):
    n = Posed(BANK["12.5"], name).numbers
    assert (n.paid - n.free).magnitude * n.rides.magnitude == pytest.approx(n.given.magnitude)
    assert n.a_post.magnitude * n.posts.magnitude == pytest.approx((n.paid - n.free).magnitude)


@anybody
def test_a_day_of_rides_as_in_12_6_uses_up_the_ticket(name):
    posed = Posed(BANK["12.6"], name)
    n = posed.numbers
    laps = n.height.m_as("m") / n.vertical_rise.m_as("m")
    assert posed.right.m_as("dollar/person") * laps == pytest.approx(n.ticket_price.magnitude)


# the figures that stand in the words of the page

COSTS = read_costs(DATA / "costs.csv")
SHEETS = cost_sheets(demo_hill(), COSTS)
CASE = read_board_case(DATA / "board/twin_penny_case.csv")
NUMERALS = {4: "four", 5: "five", 6: "six", 7: "seven"}
PENNY, PLATTER, BELT, DOUBLE, _ = SHEETS
YEAR = yearly_cost(PENNY)
FREE = yearly_cost(replace(PENNY, wage=Q(0, "dollar/hour")))
CLIMBED = sum(sheet.rides.magnitude * sheet.vertical_rise.magnitude for sheet in SHEETS[:4])
TODAY = [yearly_cost(sheet) for sheet in SHEETS[:4]]


@functools.cache
def board():
    """Return the three choices of the board, simulated when the first figure of them is asked for."""
    return board_choices(CASE)


def share(part):
    """Return the share of the Penny Rope's season that some parts have, as a percentage."""
    return f"{100 * sum(YEAR.shares[name].magnitude for name in part):.0f} %"


FIGURES = [
    ("A ride on the Penny Rope costs {} dollars", f"{YEAR.per_ride.magnitude:.2f}"),
    ("somebody gets {}, and", f"{FREE.per_ride.magnitude:.2f}"),
    ("somebody else {}.", f"{(YEAR.per_ride * YEAR.capacity_used).magnitude:.2f}"),
    ("With interest it is {}.", share(["capital recovery"])),
    ("are 11,200 of {} dollars", f"{YEAR.total.magnitude:,.0f}"),
    ("dollars: {}.", share(["staff"])),
    ("Lifting people is cheap: {} dollars", f"{YEAR.parts['energy'].magnitude:.0f}"),
    ("and {} for the peak", f"{YEAR.parts['demand charge'].magnitude:.0f}"),
    ("Together {}.", share(["energy", "demand charge"])),
    ("2,700 dollars, {}:", share(["maintenance", "insurance", "inspection"])),
    ("only its energy, {} dollars", f"{YEAR.variable_per_ride.magnitude:.4f}"),
    ("+ 2,000 × 0.05 = {} dollars", f"{YEAR.parts['capital recovery'].magnitude:,.0f}"),
    ("20 seasons the factor is 0.05 ÷ (1 − 1.05⁻²⁰) = {} a season", f"{0.05 / (1 - 1.05**-20):.5f}"),
    ("33,000 ÷ 20 = {} dollars a season", f"{33_000 / 20:,.0f}"),
    ("both together make {},", f"{YEAR.parts['capital recovery'].magnitude + 1_650:,.0f}"),
    ("hours that makes {} rides", f"{1_200 * 350:,}"),
    ("{} of the Lantern Double is its price", f"{TODAY[3].shares['capital recovery'].m_as('percent'):.0f} %"),
    ("14 kW × 12 dollars × 4 months = {} dollars", f"{14 * 12 * 4}"),
    ("Shared out by rides, each ride brings {} dollars", f"{28 / 19:.2f}"),
    ("280,000 dollars come in, and these four lifts cost {}", f"{sum(year.total.magnitude for year in TODAY):,.0f}"),
    ("of 18,243 dollars {} are the energy of its rides", f"{YEAR.variable_per_ride.magnitude * 90_000:.0f}"),
    ("so some {} stay however many ride", f"{round(YEAR.fixed.magnitude, -1):,.0f}"),
    ("÷ (1.47 − 0.0018) = {} rides", f"{round(YEAR.fixed.magnitude / (28 / 19 - 0.0018), -2):,.0f}"),
    ("and {} million person-metres", f"{CLIMBED / 1e6:.1f}"),
    ("a ride on the chair brings {}", f"{28 * 142 * 10_000 / CLIMBED:.2f}"),
    ("one on the belt {}.", f"{28 * 8 * 10_000 / CLIMBED:.2f}"),
    ("1,000 person-metres cost {} dollars on the Penny Rope", f"{TODAY[0].per_thousand_person_metres.magnitude:.1f}"),
    ("Rope, {} on the chair", f"{TODAY[3].per_thousand_person_metres.magnitude:.1f}"),
    ("chair, {} on the platter", f"{TODAY[1].per_thousand_person_metres.magnitude:.1f}"),
    ("platter and {} on the belt", f"{TODAY[2].per_thousand_person_metres.magnitude:.1f}"),
    ("costs {} times that of the rope tow", NUMERALS[round((TODAY[3].total / TODAY[0].total).m_as(""))]),
    ("nearly {} times as high", NUMERALS[round((DOUBLE.vertical_rise / PENNY.vertical_rise).m_as(""))]),
    ("An extra ride on Twin Penny costs {} dollars", lambda: f"{board()[2].an_extra_ride.magnitude:.2f}"),
    ("the helper gives one for {};", lambda: f"{board()[1].an_extra_ride.magnitude:.2f}"),
    ("the helper takes some {} s off", lambda: f"{round((board()[0].wait() - board()[1].wait()).m_as('s'), -1):.0f}"),
    ("and Twin Penny more than {}.", lambda: f"{100 * ((board()[0].wait() - board()[2].wait()).m_as('s') // 100):.0f}"),
    (
        "some {} riders a hectare are about ten",
        lambda: f"{5 * round(board()[2].density().m_as('person/hectare') / 5):.0f}",
    ),
    ("Twin Penny asks for {} dollars", f"{COSTS['Twin Penny right']['price'].magnitude:,.0f}"),
    ("run for the {} busiest hours", f"{CASE.busy_hours.magnitude:.0f}"),
    ("beginner slope of {} ha", f"{CASE.slope_area.m_as('hectare'):.1f}"),
]  # fmt: skip


@pytest.fixture(scope="module")
def words():
    """Return all words of the page, with the statements of its predictions."""
    page = read(next(path for path in PATHS if path.stem.startswith("12")))
    said = prose(page) + "".join(
        cell.source for cell in page.cells if re.search(r"Prediction\(|Decision\(", cell.source)
    )
    return " ".join(re.sub(r"[*]", "", said).split())


@pytest.mark.parametrize(("phrase", "figure"), FIGURES, ids=[phrase for phrase, _ in FIGURES])
def test_a_figure_in_the_words_of_the_page_is_what_the_package_finds(words, phrase, figure):
    figure = figure() if callable(figure) else figure
    assert re.search(rf"(?<![0-9.,]){re.escape(phrase.format(figure))}(?![.,]?[0-9])", words), figure
