"""The helper that compares messages can itself fail: at another text, another kind, or a second line."""

import pytest
from messages import SOMETHING, refuses, table_of_messages

from liftcalc import UnitError
from liftcalc.units import PlainError


def told(error):
    """Return a call that ends in an error."""

    def call():
        raise error

    return call


NOT_TAKEN = [  # error, message wanted, kind wanted, what the helper says
    (PlainError("headway: too long"), "headway: too", PlainError, "wanted: headway: too"),
    (PlainError("headway: too"), "headway: too long", PlainError, "wanted: headway: too long"),
    (PlainError("headway: got 3.4"), "headway: got 3x4", PlainError, "wanted: headway: got 3x4"),
    (PlainError("headway: got 3.4"), f"spacing: got {SOMETHING}", PlainError, "wanted: spacing: got "),
    (PlainError("headway: got "), f"headway: got {SOMETHING}", PlainError, "wanted: headway: got "),
    (UnitError("headway: bare"), "headway: bare", PlainError, "UnitError came, not PlainError"),
    (PlainError("headway: bare"), "headway: bare", UnitError, "PlainError came, not UnitError"),
    (PlainError("headway:\nbare"), "headway:\nbare", PlainError, "more than one line"),
]


@pytest.mark.parametrize(("error", "message", "kind", "says"), NOT_TAKEN)
def test_another_error_is_not_taken(error, message, kind, says):
    with pytest.raises(AssertionError, match=says):
        refuses(told(error), message, kind)


def test_an_error_that_is_not_plain_or_none_at_all_is_not_taken():
    with pytest.raises(ValueError, match="headway"):
        refuses(told(ValueError("headway: bare")), "headway: bare")
    with pytest.raises(pytest.fail.Exception, match="DID NOT RAISE"):
        refuses(lambda: None, "headway: bare")


def test_the_error_asked_for_is_taken_and_handed_back():
    for message in ("headway: got (3.4)", f"headway: got ({SOMETHING})"):
        assert str(refuses(told(UnitError("headway: got (3.4)")), message, UnitError)) == "headway: got (3.4)"


def test_an_error_of_several_faults_has_as_many_lines_as_are_asked_for():
    error = PlainError("sheet:\nrow 2\nrow 3")
    assert refuses(told(error), "sheet:\nrow 2\nrow 3", lines=3) is error
    with pytest.raises(AssertionError, match="not 2 lines"):
        refuses(told(error), "sheet:\nrow 2\nrow 3", lines=2)


def test_a_row_of_a_table_is_named_by_its_first_words_or_by_what_it_is():
    long = "headway: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s')."
    by_words = table_of_messages([(len, long), (len, "headway: bare", UnitError)]).mark
    assert by_words.args == (("call", "message", "kind"), [(len, long, PlainError), (len, "headway: bare", UnitError)])
    assert by_words.kwargs["ids"] == [
        "headway: line_speed needs a unit, but got the bare value 3.4. Write",
        "headway: bare",
    ]
    by_what = table_of_messages([("bare number", 3.4, long)], "what", "value", kind=UnitError).mark
    assert by_what.args == (("what", "value", "message", "kind"), [("bare number", 3.4, long, UnitError)])
    assert by_what.kwargs["ids"] == ["bare number"]
