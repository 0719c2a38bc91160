"""The one way in which tests look at a message: the whole text, on one line, of an error that a notebook shows plainly.

A table of messages is a list of rows: what is done, the message it gets, and the kind of error where it is another than
that of the table.

    MESSAGES = [
        (lambda: headway(3.4, SPACING), "headway: line_speed needs a unit, but got ...", UnitError),
    ]


    @table_of_messages(MESSAGES)
    def test_message(call, message, kind):
        refuses(call, message, kind)
"""

import re
import textwrap

import pytest

from liftcalc.units import PlainError

SOMETHING = "<something>"  # stands in a message for words of the file system or of a reader, or for a number drawn


def refuses(call, message, kind=PlainError, *, lines=1):
    """Check that a call ends in just this error with just this message, and return the error.

    Parameters
    ----------
    call : function
        What is done, without arguments.
    message : str
        The whole message; ``SOMETHING`` stands for what is not the package's own.
    kind : class
        ``PlainError``, or the subclass of it that is raised.
    lines : int
        How many lines the message has: more than one only where an error tells several faults, one a line.

    Returns
    -------
    PlainError
    """
    with pytest.raises(PlainError) as caught:
        call()
    error, said = caught.value, str(caught.value)
    pattern = ".+".join(re.escape(part) for part in message.split(SOMETHING))
    assert re.fullmatch(pattern, said), f"\nsaid:   {said}\nwanted: {message}"
    assert type(error) is kind, f"{type(error).__name__} came, not {kind.__name__}: {said}"
    wrong = "more than one line" if lines == 1 else f"not {lines} lines"
    assert len(said.splitlines()) == lines, f"{wrong}: {said!r}"
    return error


def table_of_messages(rows, *names, kind=PlainError):
    """Return the mark that turns a table of messages into a test for each row.

    A row is named by the first words of its message, or by its column "what" where it begins with one.

    Parameters
    ----------
    rows : list of tuple
        The columns named, the message, and the kind of error where it is another than that of the table.
    *names : str
        Names of the columns before the message; "call" where none is given.
    kind : class
        The kind of error of the table.

    Returns
    -------
    mark
        For a test with these arguments, ``message`` and ``kind``.
    """
    names = (*(names or ("call",)), "message", "kind")
    whole = [row if len(row) == len(names) else (*row, kind) for row in rows]
    ids = [row[0] if names[0] == "what" else textwrap.shorten(row[-2], 70, placeholder="") for row in whole]
    return pytest.mark.parametrize(names, whole, ids=ids)
