"""A prediction that commits: nothing opens before the choice, and every statement gets its reason."""

import ipywidgets as widgets
import pytest
from messages import refuses, table_of_messages

from liftcalc.panels.prediction import SHOW, Prediction

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
    asked._buttons[SHOW].click()
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


REFUSED = [
    (lambda: Prediction("?", {"one": "a"}, "one"), "Prediction: there must be two to four statements, but got 1."),
    (lambda: Prediction("?", {"one": "a", "two": "b"}, "three"),
     "Prediction: 'three' is none of the statements. Write one of one, two."),
    (lambda: Prediction("?", {"one": "a", "two": "b"}, "one").choose("three"),
     "Prediction: 'three' is none of the statements. Write one of one, two."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
