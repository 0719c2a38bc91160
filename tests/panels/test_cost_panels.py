"""The panels of 12: cost of a ride with its break-even, and what it hangs on."""

from dataclasses import replace

import pytest
from messages import refuses, table_of_messages
from reading_panels import cards, drawn, status
from test_figures import texts_of

from liftcalc import Q, UnitError
from liftcalc.panels import CostDriversPanel, CostPanel
from liftcalc.panels.cost import demo_cost_sheet

A_RIDE, RIDES = "dollar/person", "person/season"
PENNY = demo_cost_sheet()


def a_year(price, life, rate, posts, wage, rides):
    """Return what the Penny Rope costs a season, and a ride its energy, by plain arithmetic from its table of costs."""
    discounted = sum((1 + rate) ** -season for season in range(1, life + 1))
    recovery = (price - 2_000 * (1 + rate) ** -life) / discounted
    rope = 3_500 / sum((1 + rate) ** season for season in range(5))
    a_ride = PENNY.energy_per_rider.m_as("J") / 3.6e6 / PENNY.efficiency.m_as("") * 0.18
    idle = PENNY.idle_power.m_as("kW") * 350 * 0.18
    fixed = recovery + posts * wage * 350 + 1_200 + 900 + 600 + rope + idle + 14 * 12 * 4
    return fixed + a_ride * rides, recovery, a_ride


SETTINGS = [  # price, life, interest [%], posts, wage, rides, share of the ticket: own arithmetic
    (35_000, 20, 5, 2, 16, 90_000, 1.47),
    (60_000, 12, 0, 1, 25, 20_000, 0.9),
    (20_000, 30, 8, 3, 0, 150_000, 0.25),
]


@pytest.mark.parametrize(("price", "life", "percent", "posts", "wage", "rides", "share"), SETTINGS)
def test_cost_of_a_ride_by_hand(price, life, percent, posts, wage, rides, share):
    panel = CostPanel(
        price=Q(price, "dollar"), life=Q(life, "season"), interest=Q(percent, "percent"), posts=Q(posts, ""),
        wage=Q(wage, "dollar/hour"), rides=Q(rides, "person/season"), ticket_share=Q(share, A_RIDE),
    )  # fmt: skip
    settings = price, life, percent / 100, posts
    total, recovery, energy = a_year(*settings, wage, rides)
    unpaid, _, _ = a_year(*settings, 0, rides)
    shown = cards(panel)
    assert panel.result.m_as(A_RIDE) == pytest.approx(total / rides)
    assert panel.results["cost of a year"].m_as("dollar/season") == pytest.approx(total)
    assert panel.results["cash cost of a year"].m_as("dollar/season") == pytest.approx(total - recovery)
    assert panel.results["a ride, volunteers at nought"].m_as(A_RIDE) == pytest.approx(unpaid / rides)
    for name, money in (("break-even", total), ("break-even, volunteers at nought", unpaid)):
        even = (money - energy * rides) / (share - energy)
        assert shown[name] == f"{even:,.0f} rides a season"
    even = (total - energy * rides) / (share - energy)
    chart = panel.picture.chart
    assert chart.title.get_text() == f"A ride costs {total / rides:.2f} dollars; break-even at {shown['break-even']}"
    assert chart.even.get_xdata() == pytest.approx([even, even])
    assert drawn(chart.dot) == [[rides], [pytest.approx(total / rides)]]
    for curve, pay in zip(chart.curves, (wage, 0), strict=False):
        x, y = drawn(curve)
        assert list(y) == pytest.approx([a_year(*settings, pay, each)[0] / each for each in x])
        assert (y[1:] < y[:-1]).all()
    assert set(drawn(chart.curves[2])[1]) == {share}


def test_curve_and_level_line_meet_at_the_break_even():
    panel = CostPanel()
    panel.rows[5].box.value = round(panel.results["break-even"].m_as("person/season"))
    assert panel.result.m_as(A_RIDE) == pytest.approx(1.47, abs=0.001)


def test_no_break_even_where_a_ride_brings_no_more_than_its_energy():
    panel = CostPanel(ticket_share=Q(0, A_RIDE))
    assert panel.results["break-even"] == panel.results["break-even, volunteers at nought"] == "none"
    assert "No number of rides pays: a ride brings 0.00 dollars a ride, its energy costs 0.0018 dollars" in status(
        panel
    )
    assert "no number of rides pays for it" in panel.picture.chart.title.get_text()
    assert not panel.picture.chart.even.get_visible()
    panel.rows[6].box.value = 0.01  # far beyond the chart
    assert panel.results["break-even"].m_as("person/season") > 200_000
    assert not panel.picture.chart.even.get_visible()


def test_what_is_assumed_is_said_to_be():
    words = status(CostPanel())
    assert (
        "Assumed for Penny Rope: it runs 350 hours a season, salvage 2,000 dollars, bills 2,700 and rope or belt 633 "
        "dollars a season, energy 0.18 dollars a kWh." in words
    )
    for kind in (CostPanel, CostDriversPanel):
        assert "Planning figures: dollars are a label here and no currency." in status(kind())
    granted = CostPanel(replace(PENNY, grant=Q(15_000, "dollar")))
    assert "a grant of 15,000 dollars" in status(granted)
    granted.rows[0].box.value = 1_000  # the grant is at most the price, and so is what is left
    assert "a grant of 1,000 dollars, salvage 1,000 dollars" in status(granted)


FEWER = "Fewer than the 2 posts of this lift: the code and the sight lines decide."
MORE = "More rides than 1,200 pph (governed) allow in 60 hours."
LINE = round(740 / 13 * 2)  # letters on a line of 740 px of 13 px, a letter as wide as half its height


@pytest.mark.parametrize(("posts", "rides"), [(2, 72_000), (1.5, 72_000), (2, 73_000), (0.5, 200_000)])
def test_what_makes_a_ride_cheap_on_paper_is_said_in_the_lines_of_the_note(posts, rides):
    sheet = replace(PENNY, running_hours=Q(60, "hour/season"), grant=Q(15_000, "dollar"), rides=Q(9_000, RIDES))
    panel = CostPanel(sheet)
    panel.rows[3].box.value, panel.rows[5].box.value = posts, rides
    words = status(panel)
    assert (FEWER in words, MORE in words) == (posts < 2, rides > 72_000)
    assert "Planning figures" in words
    assert f"it runs {60} hours a season, a grant of 15,000 dollars, salvage 2,000 dollars, bills 2,700" in words
    for share in (0, 1.47):
        panel.rows[6].box.value = share
        assert len(panel.note()) <= 3 * LINE
    panel.at_settings("posts", [Q(1, ""), Q(2, "")])  # and no error


def test_half_a_post_of_one_is_told_too():
    panel = CostPanel(demo_cost_sheet("Duckling Belt"), posts=Q(0.5, ""))
    assert "Fewer than the 1 post of this lift: the code and the sight lines decide." in status(panel)


def test_the_note_is_silent_where_the_capacity_is_not_known():
    panel = CostPanel(replace(PENNY, hourly_capacity=None, running_hours=Q(1, "hour/season")))
    assert "More rides" not in status(panel)


@pytest.mark.parametrize("name", ["Lantern Double", "Twin Penny right"])
def test_panels_of_other_lifts_begin_with_what_these_cost(name):
    sheet = demo_cost_sheet(name)
    for kind in (CostPanel, CostDriversPanel):
        panel = kind(sheet)
        assert panel.text(panel.result) == {"Lantern Double": "2.69", "Twin Penny right": "0.24"}[name] + (
            " dollars a ride"
        )
        for text, left, right, *_ in texts_of(panel):
            assert left > -8, text
            assert right < 748, text


@pytest.mark.parametrize("ends", [(0, 0), (1, 1), (0, 1), (1, 0)])
def test_extreme_ends_together(ends):
    panel = CostPanel()
    for number, row in enumerate(panel.rows):
        row.slider.value = (row.slider.min, row.slider.max)[ends[number % 2]]
    chart = panel.picture.chart
    top = chart.ax.get_ylim()[1]
    heights = sorted(name.get_position()[1] for name in chart.names)
    assert min(high - low for low, high in zip(heights, heights[1:], strict=False)) > 0.08 * top, "none on another"
    assert heights[-1] <= 1.001 * top
    for text, left, right, *_ in texts_of(panel):
        assert left > -8, text
        assert right < 748, text


def test_the_tornado_by_hand():
    panel = CostDriversPanel(moved_by=Q(20, "percent"))
    rows = {swing.name: swing for swing in panel.swings}
    base = {"price": 35_000, "life": 20, "rate": 0.05, "posts": 2, "wage": 16, "rides": 90_000}
    for name, key in (("price", "price"), ("life", "life"), ("wage", "wage"), ("rides", "rides"), ("interest", "rate")):
        for factor, cost in zip((0.8, 1.2), rows[name].costs, strict=True):
            moved = base | {key: round(base[key] * factor, 9) if key != "life" else round(20 * factor)}
            assert cost.m_as(A_RIDE) == pytest.approx(a_year(**moved)[0] / moved["rides"]), name
    swings = [swing.swing.m_as(A_RIDE) for swing in panel.swings]
    assert swings == sorted(swings, reverse=True)
    assert cards(panel) == {
        "cost of a ride": "0.20 dollars a ride",
        "largest swing": "rides, 0.08 dollars a ride",
        "smallest swing": "energy price, 0.0013 dollars a ride",
    }


def test_bars_stand_where_the_words_say():
    panel = CostDriversPanel()
    chart = panel.picture.chart
    middle = panel.result.m_as(A_RIDE)
    for percent in (10, 50):
        panel.rows[0].slider.value = percent
        for swing, bars, words in zip(panel.swings, chart.bars, chart.ends, strict=True):
            for cost, bar, word, end in zip(swing.costs, bars, words, ("low", "high"), strict=True):
                number = cost.m_as(A_RIDE)
                between = [bar.get_x(), bar.get_x() + bar.get_width()]
                assert between == pytest.approx(sorted((middle, number)))
                assert word.get_text() == f"{end} {number:.3f}"
                assert word.get_ha() == ("right" if number < middle else "left")
        assert f"moved by {percent}% alone" in status(panel)
    ranges = {name.get_text(): words.get_text() for name, words in zip(chart.names, chart.ranges, strict=True)}
    assert ranges["rides"] == "45,000 to 135,000 rides a season"
    assert ranges["interest"] == "2.5 to 7.5 %"
    assert ranges["wage"] == "8.00 to 24.00 dollars an hour"


def test_the_tornado_moves_nothing_beyond_its_bound():
    sheet = replace(PENNY, salvage=Q(30_000, "dollar"), interest=Q(80, "percent"), wage=Q(0, "dollar/hour"))
    panel = CostDriversPanel(sheet, moved_by=Q(50, "percent"))
    ranges = {swing.name: swing.values for swing in panel.swings}
    assert ranges["price"][0] == Q(30_000, "dollar")
    assert ranges["interest"][1] == Q(100, "percent")
    assert ranges["wage"] == (Q(0, "dollar/hour"), Q(0, "dollar/hour"))
    assert panel.swings[-1].name == "wage"


MESSAGES = [
    (lambda: CostPanel(price=35_000),
     "CostPanel: price must be a quantity in a unit such as 'dollar', but got 35000. Write Q(35000, 'dollar').",
     UnitError),
    (lambda: CostPanel(life=Q(0, "season")), "CostPanel: life must lie from 1 to 40 season, but got 0 season."),
    (lambda: CostPanel(rides=Q(3_100_000, RIDES)),
     "CostPanel: rides must lie from 1,000 to 200,000 person/season, but got 3,100,000 person/season."),
    (lambda: CostDriversPanel(moved_by=Q(60, "percent")),
     "CostDriversPanel: moved_by must lie from 10 to 50 percent, but got 60 percent."),
]  # fmt: skip


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
