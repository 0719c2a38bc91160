"""A prediction that commits: nothing opens before the choice, and every statement gets its reason."""

import re

import ipywidgets as widgets
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.panels import CostDriversPanel, CostPanel, LapsPanel, LiftLinePanel, LoadingDayPanel, SlopePanel
from liftcalc.panels.prediction import NumberPrediction, Prediction

STATEMENTS = {
    "More people an hour": "The loading point lets through what it did before.",
    "As many": "Loading governs, and the rope's speed is not in it.",
    "Fewer": "Nothing takes anybody away.",
}


@pytest.fixture
def asked():
    """Return a question with a panel behind it."""
    return Prediction(
        "The rope runs half as fast again. How many get up?", STATEMENTS, "As many", widgets.HTML("panel")
    )


def test_nothing_opens_before_the_choice(asked):
    assert not asked.is_open
    assert asked._reply.value == ""
    asked._buttons["More people an hour"].click()
    assert asked.is_open
    assert asked.chosen == "More people an hour"


@pytest.mark.parametrize("statement", STATEMENTS)
def test_each_statement_gets_its_reason(asked, statement):
    asked._buttons[statement].click()
    assert STATEMENTS[statement] in asked.reply
    assert asked.reply.startswith("That is so." if statement == "As many" else "Not so:")
    assert STATEMENTS["As many"] in asked.reply, "what holds is said to everybody"
    assert "role='status'" in asked._reply.value


def test_show_me_opens_without_a_guess(asked):
    asked._show.click()
    assert asked.is_open
    assert asked.chosen is None
    assert asked.reply == "As many: Loading governs, and the rope&#x27;s speed is not in it.".replace("&#x27;", "'")


def test_in_print_the_question_stands_and_folded_the_reason(asked):
    assert asked.words().splitlines() == [
        "Predict. The rope runs half as fast again. How many get up?", *(f"- {each}" for each in STATEMENTS)
    ]  # fmt: skip
    assert STATEMENTS["As many"] not in asked.words()
    assert "<details><summary>What happens, and why</summary>As many: Loading governs" in asked.still()
    asked._buttons["Fewer"].click()
    assert asked.words().splitlines()[-1] == "- Fewer", "what was chosen changes no printed page"


def test_nothing_of_a_question_is_taken_for_markup():
    asked = Prediction("<b>?", {"<i>": "a<c", "two": "b"}, "<i>")
    asked.choose("<i>")
    assert "<i>" not in asked.still() + asked._reply.value
    assert "a&lt;c" in asked._reply.value


GUESSES = [
    (LoadingDayPanel, "misses"), (LoadingDayPanel, Q(900, "pph")), (LiftLinePanel, Q(30, "minute")),
    (LapsPanel, Q(2361, "pph")), (SlopePanel, Q(60, "person/hectare")), (CostPanel, Q(30_000, "person/season")),
    (CostDriversPanel, "wage"),
]  # fmt: skip


@pytest.mark.parametrize(("panel", "guess"), GUESSES, ids=[f"{each.__name__}-{guess}" for each, guess in GUESSES])
def test_every_panel_of_a_prediction_draws_the_guess_where_it_belongs(panel, guess):
    shown = panel()
    shown.show_guess(guess)
    drawn = re.search(r'<g class="guess"[^>]*>(.*?)</g>', shown.picture.html.value)[1]
    scale, height = 100 / shown.picture.chart.figure.dpi, shown.picture.chart.overlay.height
    across, up = shown.guess_place(guess)
    (x, y) = shown.picture.chart.ax.transData.transform((across or 0, up or 0)) * scale
    numbers = [float(each) for each in re.findall(r"[0-9]+\.[0-9]", drawn)]
    assert numbers, drawn
    if across is not None:
        assert any(abs(each - x) < 0.1 for each in numbers)
    if up is not None:
        assert any(abs(each - (height - y)) < 0.1 for each in numbers)
    assert all(0 <= each <= 740 for each in numbers)


def number(opens=None):
    """Return a question whose guess is a number."""
    reasons = {"lower": "Too much off.", "near": "Good.", "higher": "Too little off."}
    return NumberPrediction("How many?", Q(1000, "pph"), reasons, opens, most=Q(3000, "pph"))


@pytest.mark.parametrize(
    ("written", "reply"),
    [
        ("900", "You said 900 pph, 10 % lower. It is 1,000 pph. Too much off."),
        ("1040", "You said 1,040 pph. It is 1,000 pph. Good."),
        ("1500", "You said 1,500 pph, 50 % higher. It is 1,000 pph. Too little off."),
    ],
)
def test_a_number_gets_its_reason(written, reply):
    asked = number()
    asked.box.value = written
    asked.button.click()
    assert asked.is_open
    assert asked.reply == reply
    assert reply in asked._reply.value


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("", "'nothing' is no number"),
        ("many", "'many' is no number"),
        ("1,000", "'1,000' can be read in two ways"),
        ("9000", "A guess must lie from 0 to 3,000 pph, but got 9,000 pph."),
        ("-5", "A guess must lie from 0 to 3,000 pph, but got -5 pph."),
    ],
)
def test_what_is_no_guess_is_said_and_opens_nothing(written, message):
    asked = number()
    asked.box.value = written
    asked.button.click()
    assert message in asked._reply.value.replace("&#x27;", "'")
    assert not asked.is_open


def test_a_guess_stands_in_the_picture_that_opens():
    panel = LoadingDayPanel()
    assert "your guess" not in panel.picture.html.value
    marks = {"Misses": "misses"}
    asked = Prediction("Which?", {"Misses": "a", "Falls": "b"}, "Misses", panel, marks)
    asked._buttons["Falls"].click()
    assert "your guess" not in panel.picture.html.value, "nothing is drawn of a statement without a mark"
    asked._buttons["Misses"].click()
    assert panel.picture.html.value.count("your guess") == 1
    panel.state.set("stop_time", Q(70, "s"), panel)
    assert panel.picture.html.value.count("your guess") == 1, "it stays when a slider moves"
    one, other = (number(panel) for _ in range(2))
    one.choose(Q(600, "pph"))
    at_600 = panel.picture.html.value
    other.choose(Q(1200, "pph"))
    assert panel.picture.html.value != at_600


REFUSED = [
    (lambda: NumberPrediction("?", Q(1, "pph"), {"near": "a"}, most=Q(2, "pph")),
     "NumberPrediction: reasons must be lower, near and higher, but got near."),
    (lambda: number().choose(Q(3, "s")), "Prediction: a guess must be in pph, but got 3.0 s."),
    (lambda: Prediction("?", {"one": "a", "two": "b"}, "one", marks={"three": 3}),
     "Prediction: 'three' is none of the statements. Write one of one, two."),
    (lambda: Prediction("?", {"one": "a"}, "one"), "Prediction: there must be two to four statements, but got 1."),
    (lambda: Prediction("?", {"one": "a", "two": "b"}, "three"),
     "Prediction: 'three' is none of the statements. Write one of one, two."),
    (lambda: Prediction("?", {"one": "a", "two": "b"}, "one").choose("three"),
     "Prediction: 'three' is none of the statements. Write one of one, two."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
