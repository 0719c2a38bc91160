"""Pages that speak of the reader's own sheets: the button, the parts that follow, what a bad file leaves as it was."""

from dataclasses import replace

import numpy as np
import pytest
from example_tow import G
from messages import refuses
from places import DATA
from reading_panels import bring, status

from liftcalc import Q
from liftcalc.fieldwork import summary
from liftcalc.lifts.demo_hill import demo_kinds, demo_line
from liftcalc.lifts.hill import Hill
from liftcalc.lifts.installation import Installation
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.lifts.sheet import read_sheet
from liftcalc.lifts.sheet_words import by_hand, count_in_words, left_out_in_words, routes, routes_in_words
from liftcalc.lifts.tables import comparison_table, governing_table, hill_table, weakest_first
from liftcalc.panels import (
    HandsPanel,
    HillPage,
    LimitsPanel,
    MotorPanel,
    PowerPanel,
    SheavePanel,
    SheetPage,
    StartPanel,
)

PENNY, CHAIR = DATA / "hill/1_penny_rope.csv", DATA / "hill/4_lantern_double.csv"
GONDOLA, TRAM = DATA / "kinds/09_gondola.csv", DATA / "kinds/10_reversible_tram.csv"
HEADING = b"quantity,value,unit,plus_minus,method,note\n"


@pytest.fixture
def page():
    """Return the page of 00: its button, its parts, and its panel with what follows it."""
    page = SheetPage(PENNY)
    page.own_button = page.button()
    says = (summary, by_hand, routes, routes_in_words, count_in_words, left_out_in_words)
    page.own_parts = [page.show(say) for say in says]
    page.own_panel = page.panel(StartPanel)
    page.own_parts += [page.own_panel.legend(), page.own_panel.around("spacing")]
    return page


def all_of(page):
    """Return all that a page says."""
    return "\n".join(part.words() for part in [page.own_button, page.own_panel, *page.own_parts])


@pytest.mark.parametrize("path", [CHAIR, GONDOLA, TRAM], ids=lambda path: path.stem)
def test_the_whole_page_speaks_of_the_sheet_that_came(page, path):
    assert "Penny Rope" in all_of(page)
    bring(page.own_button, path)
    said = all_of(page)
    sheet = read_sheet(path)
    assert said.startswith(f"This page speaks of {sheet.line}, a {sheet.kind}: {path.name}, {len(sheet.readings)} read")
    for demo in ("Penny", "6.8 m", "3.40 m/s", "173,6"):
        assert demo not in said
    for part in [*page.own_parts, page.own_panel]:
        assert "Penny" not in part.still()


def test_a_lift_that_runs_to_and_fro_says_why_its_panel_is_not_there(page):
    bring(page.own_button, TRAM)
    assert page.own_panel.panel is None
    assert page.own_panel.words().startswith("Reversible tram runs to and fro: it has no spacing to move here.")
    assert page.own_parts[-1].words() == "", "what the panel lacks stands in its own place, once"
    bring(page.own_button, PENNY)
    assert str(page.own_panel.panel.result) == "1,800 pph (ideal)"


def test_a_bad_sheet_leaves_all_as_it_was_and_names_every_cell(page):
    before = all_of(page)
    rows = b"line speed,600,mph,,,\nspacing,~7,m,,,\n<b>,1,m,,,\n"
    bring(page.own_button, ("bad.csv", HEADING + rows))
    html = page.own_button._said.value
    assert "bad.csv: 3 cells cannot be read.<br>Row 2, column value: line speed of 600.0 mph" in html
    assert "Row 3, column value: &#x27;~7&#x27;: write the number alone, 7," in html
    assert "&lt;b&gt;" in html, "nothing of the file is taken for markup"
    assert all_of(page) == before
    bring(page.own_button, CHAIR)
    assert "Lantern Double" in page.own_button.words()


def test_the_sliders_reach_what_the_sheet_has(page):
    bring(page.own_button, GONDOLA)
    panel = page.own_panel.panel
    assert panel.given["ridden_length"] == Q(1800, "m")
    assert panel.given["spacing"].m_as("m") == pytest.approx(60)
    assert str(panel.result) == "2,400 pph (ideal)"
    panel.state.use_units("us")
    assert str(panel.result) == "2,400 pph (ideal)", "also in feet nothing is cut"
    assert panel.given["ridden_length"].m_as("m") == pytest.approx(1800)


def test_the_picture_draws_the_slope_of_the_sheet_or_says_that_it_was_not_read(page):
    assert "a slope of 20%" in page.own_panel.panel.picture.html.value
    bring(page.own_button, CHAIR)
    assert "a slope of 23%" in page.own_panel.panel.picture.html.value
    assert "from carrier to carrier" in page.own_panel.panel.picture.html.value
    bring(page.own_button, ("short.csv", HEADING + b"kind,rope tow,,,,\nline speed,3,m/s,,,\nspacing,6,m,,,\n"))
    assert "a slope that was not read, drawn level" in page.own_panel.panel.picture.html.value
    assert "Persons per carrier taken as 1: not read." in status(page.own_panel.panel)


def test_settings_around_what_the_lift_has(page):
    rows = page.own_parts[-1]._made.rows
    assert [row[0] for row in rows] == ["5.1 m", "6.8 m", "10.2 m"]


@pytest.fixture
def hill():
    """Return the page of 09: its button, its panel and its tables."""
    page = HillPage(DATA / "hill")
    page.own_button, page.own_panel = page.button(), page.panel(LimitsPanel)
    tables = (hill_table, comparison_table, governing_table, weakest_first)
    page.own_parts = [*map(page.show, tables), page.doubts()]
    return page


def test_a_lift_of_ones_own_gets_its_button_and_its_rows(hill):
    assert hill.own_button.words() == "This page speaks of 6 lines of lifts."
    bring(hill.own_button, GONDOLA)
    assert hill.own_button.words() == "This page speaks of 7 lines of lifts. The newest is Gondola."
    panel = hill.own_panel.panel
    assert panel.line.name == "Gondola"
    names = [button.description for button in panel.children[-3].children]
    assert names[0] == "Penny Rope"
    assert names[-1] == "Gondola"
    for part in hill.own_parts:
        assert "Gondola" in part.words()
    panel.choose("Penny Rope")
    assert panel.results["governs"] == "loading"


def test_several_sheets_at_once_and_a_line_that_came_before(hill):
    faster = CHAIR.read_text(encoding="utf-8").replace("line speed,2.2,", "line speed,2.4,")
    blank = ("blank.csv", (DATA / "field_sheet_blank.csv").read_bytes())
    bring(hill.own_button, GONDOLA, ("again.csv", faster.encode()), blank)
    said = hill.own_button.words().splitlines()
    assert said[0] == "This page speaks of 7 lines of lifts. The newest is Gondola."
    assert said[1:] == ["Left out: blank.csv: a blank: nothing is filled in."]
    line, _ = hill.value.line("Lantern Double")
    assert line.line_speed == Q(2.4, "m/s"), "a line of the same name is replaced"


def test_readings_that_do_not_agree_are_named_at_the_button(hill):
    rows = CHAIR.read_text(encoding="utf-8") + "ride time,1:13,s,,,\n"
    bring(hill.own_button, ("doubtful.csv", rows.encode()))
    assert hill.own_button.words().splitlines()[1] == (
        "Lantern Double: ride time: read 73.0 s, the line makes it 290.9 s: 75 % below. Look at both again."
    )
    page = SheetPage(PENNY)
    panel = page.panel(StartPanel)
    assert "do not agree" not in status(panel.panel)
    bring(page.button(), ("doubtful.csv", rows.encode()))
    assert "Readings of this sheet do not agree: see above." in status(panel.panel)


def test_files_of_which_none_makes_a_line_leave_all_as_it_was(hill):
    bring(hill.own_button, ("note.csv", b"a,b\n1,2\n"))
    html = hill.own_button._said.value
    assert "note.csv, row 1: the column &#x27;quantity&#x27; is missing" in html
    assert html.endswith("<br>This page speaks of 6 lines of lifts.</div>"), "and of what it still speaks"
    bring(hill.own_button, ("note.csv", b"a,b\n1,2\n"), ("other.csv", b"a,b\n1,2\n"))
    assert "These files: no line of a lift can be taken." in hill.own_button._said.value
    assert hill.own_button.words() == "This page speaks of 6 lines of lifts."
    assert hill.own_panel.panel.line.name == "Penny Rope"


def test_what_a_panel_misses_it_names_and_a_slider_without_a_reading_counts_once_it_is_moved():
    panel = LimitsPanel(demo_kinds(), line="Gondola")
    assert panel.results["loading"] == "no reading"
    assert "loading (loading time); motor (motor power, efficiency, rider mass, sheave drag share, idle drag)" in (
        panel.note()
    )
    assert "loading time not read, clearing time not read" in panel.describe()
    assert "A slider of what was not read counts once it is moved." in panel.note()
    panel.state.set("loading_time", Q(8, "s"), panel)
    assert panel.results["loading"].m_as("pph") == pytest.approx(3600 * 8 / 8)
    assert "loading (loading time)" not in panel.note()
    assert "loading time 8.0 s, clearing time not read" in panel.describe()


def test_many_lines_are_chosen_in_a_box():
    tow, readings = demo_line("Penny Rope")
    chair, of_the_chair = demo_line("Lantern Double")
    lines = [replace(tow, name=f"Rope {number}") for number in range(14)] + [chair]
    lifts = {line.name: Installation(line.name, (line,)) for line in lines}
    panel = LimitsPanel(Hill(lifts, {line.name: readings for line in lines} | {chair.name: of_the_chair}))
    box = panel.children[-3]
    assert len(box.options) == 15
    box.value = "no such line"
    assert panel.line.name == "Rope 0"
    box.value = "Lantern Double"
    assert panel.line.name == "Lantern Double"


def test_panels_of_08_follow_the_sheet_of_any_kind():
    page = SheetPage(DATA / "hill/2_long_platter.csv")
    button = page.button()
    motor, power, sheave = (page.lift_panel(kind) for kind in (MotorPanel, PowerPanel, SheavePanel))
    assert motor.panel.line.name == "Long Platter"
    # plain arithmetic: 75 kg on 78 m of rise over 400 m, through a tether at 30 degrees; 15 kW, 85 %, 400 N, 1.5 m/s2
    sine, relief = 78 / 400, np.cos(np.pi / 6) / (np.cos(np.pi / 6) + 0.07 * np.sin(np.pi / 6))
    pull = 75 * G * (sine + 0.07 * np.sqrt(1 - sine**2)) * relief
    energy = pull * 400 + 75 * relief * 2.8**2 + pull * 2.8**2 / 3
    assert motor.panel.results["motor limit"].m_as("pph") == pytest.approx(3600 * (12_750 - 400 * 2.8) / energy)
    assert power.panel.given["wanted_capacity"].m_as("pph") == pytest.approx(3600 * 2.8 / 19.6)
    bring(button, CHAIR)
    line, readings = demo_line("Lantern Double")
    by_limit = {limit.name: limit for limit in limits_of(line, readings)}["motor"]
    found = motor.panel.results["motor limit"].m_as("pph")
    assert found == pytest.approx(by_limit.capacity.m_as("pph"), rel=1e-9), "the same sums for every kind"
    assert "drag of sheaves" in power.panel.names
    *parts, together = [part.m_as("kW") for part in power.panel.parts]
    assert sum(parts) == pytest.approx(together)
    # plain arithmetic: 80 kg lifted 142 m, at the people an hour that spacing lets through, 3,600 x 2 x 2.2 / 15.4
    assert parts[0] == pytest.approx(80 * G * 142 * (2 * 2.2 / 15.4) / 1000)
    assert sheave.words().startswith("grip safety factor, rope mass per length of Lantern Double not read.")
    bring(button, DATA / "hill/3_duckling_belt.csv")
    assert sheave.words() == "Duckling Belt is a conveyor, and has no rope on a sheave."
    assert "rubbing belt" in power.panel.names
    rows = PENNY.read_text(encoding="utf-8").splitlines()
    short = [row for row in rows if not row.startswith(("efficiency", "idle drag"))]
    bring(button, ("short.csv", "\n".join(short).encode()))
    assert motor.words() == "efficiency, idle drag of Penny Rope not read. Add a row of each to its sheet."
    hands = page.lift_panel(HandsPanel)
    assert hands.panel.line.name == "Penny Rope"
    bring(button, DATA / "hill/2_long_platter.csv")
    assert hands.words() == "Long Platter is a platter lift: nobody holds its rope by hand."


def test_a_groove_that_was_read_counts_on_the_sheave_too():
    line, readings = demo_line("Penny Rope")
    flat = SheavePanel(line, readings)
    wedged = SheavePanel(line, readings | {"groove_angle": Q(60, "degree")}, name="wedged")
    ratio = np.exp(0.25 / np.sin(np.pi / 6) * np.pi)  # mu over the sine of half the angle, on half a turn
    assert wedged.results["tension ratio"].m_as("") == pytest.approx(ratio)
    assert "wedged in a groove of 60.0 degrees, as read" in wedged.note()
    assert "flat rim, no groove" in flat.note()


def test_refusals():
    names = "Penny Rope, Long Platter, Duckling Belt, Lantern Double, Twin Penny left, Twin Penny right"
    refuses(lambda: LimitsPanel(line="Nowhere"), f"LimitsPanel: no line 'Nowhere'. Write one of {names}.")
