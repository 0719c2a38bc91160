"""What a lift costs a season as bars: the parts of its cost sheet, the largest first, and a guess among them."""

import re

from liftcalc.lifts.cost_of_lift import yearly_cost
from liftcalc.panels import CostParts, Shown
from liftcalc.panels.cost import demo_cost_sheet
from liftcalc.tables import Table


def test_parts_are_those_of_the_season_and_make_the_whole():
    sheet = demo_cost_sheet("Lantern Double")
    parts, cost = CostParts(sheet), yearly_cost(sheet)
    assert sum(parts.parts.values()) == cost.total.m_as("dollar/season")
    assert list(parts.parts.values()) == sorted(parts.parts.values(), reverse=True)
    written = [int(each.replace(",", "")) for each in re.findall(r">([0-9,]+) dollars, ", parts.picture.html.value)]
    assert written == [round(each) for each in parts.parts.values()]
    assert "the largest part is capital recovery" in parts.picture.html.value
    parts.show_guess("staff")
    assert "your guess" in parts.picture.html.value
    assert parts.words().startswith("What Lantern Double costs a season: ")


def test_whatever_shows_itself_can_be_opened_by_a_prediction():
    table = Table("Two", ("a", "b"), [("1", "2")])
    shown = Shown(table)
    assert shown.still() == table._repr_html_()
    assert shown.words() == str(table)
    assert table._repr_html_() in shown.children[0].value
