"""A decision that commits: the model answer stays shut before the choice, and a reason stays where it was written."""

import ipywidgets as widgets
import pytest
from messages import refuses, table_of_messages

from liftcalc.panels.decision import KEPT, OPEN, Decision

CHOICES = ("Yes", "No", "A helper")
ANSWER = ["The twin cuts the wait & fills the slope.", "A helper is cheap and does little."]


@pytest.fixture
def asked():
    """Return a question before a board."""
    return Decision("Twin Penny asks for money. What does the board say?", CHOICES, ANSWER)


def test_the_model_answer_is_shut_before_the_choice(asked):
    assert asked._reply.value == ""
    asked._open.click()
    assert not asked.is_open
    assert "Choose first" in asked._reply.value
    assert "fills the slope" not in asked._reply.value
    asked._buttons["No"].click()
    assert not asked.is_open, "there is time to write down why"
    assert "You chose: No." in asked._reply.value
    assert "fills the slope" not in asked._reply.value


@pytest.mark.parametrize("choice", CHOICES)
def test_whatever_is_chosen_gets_the_whole_answer_and_no_verdict(asked, choice):
    asked._buttons[choice].click()
    asked._open.click()
    assert asked.is_open
    assert asked.chosen == choice
    assert asked.reply == (f"You chose: {choice}. A model answer:", *ANSWER)
    assert "role='status'" in asked._reply.value
    assert "slope" in asked._reply.value
    assert [words for words, button in asked._buttons.items() if button.style.font_weight == "bold"] == [choice]


def test_a_choice_may_be_changed(asked):
    for choice in ("Yes", "A helper"):
        asked._buttons[choice].click()
        asked._open.click()
        assert asked.reply[0] == f"You chose: {choice}. A model answer:"
    assert asked._buttons["Yes"].style.font_weight is None


def test_a_reason_stays_on_the_page(asked, tmp_path, monkeypatch):
    monkeypatch.setenv("LIFTCALC_RECORDS", str(tmp_path / "records"))
    asked._why.value = "The slope is full <b>now</b>."
    asked.choose("No")
    asked.show_answer()
    assert asked.why == "The slope is full <b>now</b>."
    assert "full" not in asked.still() + asked.words() + asked._reply.value
    assert list(tmp_path.iterdir()) == []
    assert any(KEPT in child.value for child in asked.children if isinstance(child, widgets.HTML))


def test_every_part_is_reached_by_key_and_has_a_name(asked):
    row, why, open_button = asked.children[1], asked.children[2], asked.children[4]
    assert [button.description for button in row.children] == list(CHOICES)
    assert why.description == "Why"
    assert open_button.description == open_button.tooltip == OPEN
    assert not any(button.disabled or button.tabbable is False for button in (*row.children, why, open_button))


def test_in_print_the_question_stands_and_folded_the_answer(asked):
    before = asked.still(), asked.words()
    assert asked.words().splitlines() == [
        "Decide. Twin Penny asks for money. What does the board say?", *(f"- {choice}" for choice in CHOICES)
    ]  # fmt: skip
    assert "<details><summary>A model answer</summary><div" in asked.still()
    assert "wait &amp; fills" in asked.still()
    asked.choose("Yes")
    asked.show_answer()
    assert (asked.still(), asked.words()) == before, "what was chosen changes no printed page"
    assert asked._repr_mimebundle_()["text/plain"] == before[1]


def test_nothing_of_a_question_is_taken_for_markup():
    asked = Decision("<b>?", ("<i>", "two"), ["a<c"])
    asked.choose("<i>")
    asked.show_answer()
    assert "<i>" not in asked.still() + asked._reply.value
    assert "a&lt;c" in asked._reply.value


REFUSED = [
    (lambda: Decision("?", ("one",), ["a"]), "Decision: there must be two to four choices, but got 1."),
    (lambda: Decision("?", ("one", "two"), []), "Decision: the model answer is empty. Give its lines."),
    (lambda: Decision("?", ("one", "two"), ["a"]).choose("three"),
     "Decision: 'three' is none of the choices. Write one of one, two."),
]  # fmt: skip


@table_of_messages(REFUSED)
def test_message(call, message, kind):
    refuses(call, message, kind)
