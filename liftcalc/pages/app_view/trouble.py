"""What a page says where one of its parts could not be made: one sentence in place, and the page goes on."""

import ast
import re

NEEDS_THE_PART_ABOVE = "This part needs the part above, which could not be made."
REST_IS_MISSING = "The rest of this page could not be made. Load the page again."
_UNKNOWN_NAME = re.compile(r"name '(\w+)' is not defined")


def one_line(text):
    """Return a text on one line, as a message is shown."""
    return " ".join(text.split())


def is_plain(name, message, path):
    """Return whether an error is one of our own: it came with its name and message alone, without a path of code."""
    return len(path) == 1 and one_line(path[0]) == one_line(f"{name}: {message}")


def in_words(name, message, path):
    """Return the sentence for a part that could not be made.

    Parameters
    ----------
    name, message : str
        Kind of the error and its text, as the kernel sent them.
    path : list of str
        The lines of the path through the code that the kernel sent.

    Examples
    --------
    >>> in_words("UnitError", "headway: speed came without a unit.", ["UnitError: headway: speed came without a unit."])
    'headway: speed came without a unit.'
    >>> in_words("ZeroDivisionError", "division by zero", ["----", "Traceback"])
    'This part could not be made. The program said: ZeroDivisionError: division by zero.'
    """
    if is_plain(name, message, path):
        return "\n".join(one_line(line) for line in message.splitlines())  # several faults stand one a line
    said = one_line(f"{name}: {message}" if message.strip() else name)
    return f"This part could not be made. The program said: {said}{'' if said.endswith('.') else '.'}"


def after_a_move(name, message, path):
    """Return the sentence for a move of the reader's that could not be worked out: what stands there is older."""
    if is_plain(name, message, path):
        return f"{one_line(message)} What the page shows is from before your last move."
    said = one_line(f"{name}: {message}" if message.strip() else name)
    stop = "" if said.endswith(".") else "."
    return (
        f"Your last move could not be worked out. What the page shows is from before it. The program said: {said}{stop}"
    )


def too_slow(seconds):
    """Return the sentence for a part that was stopped."""
    return f"This part took longer than {seconds:g} s and was stopped."


def move_too_slow(seconds):
    """Return the sentence for a move of the reader's that was stopped."""
    return f"Your last move took longer than {seconds:g} s and was stopped. What the page shows is from before it."


def names_made(source):
    """Return the names that a cell gives a value, as ``(values, imported)``.

    Examples
    --------
    >>> values, imported = names_made("import math\\nspeed, spacing = 3.4, 6.8\\ndef headway(): pass")
    >>> sorted(values), imported
    (['headway', 'spacing', 'speed'], {'math'})
    """
    try:
        tree = ast.parse(source)
    except SyntaxError:  # a cell that cannot be read makes nothing
        return set(), set()
    values, imported = set(), set()
    waiting = list(tree.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, (ast.Import, ast.ImportFrom)):
            imported |= {(each.asname or each.name).partition(".")[0] for each in node.names}
        elif isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef)):
            values.add(node.name)  # what is made inside of it stays inside
        elif isinstance(node, ast.Lambda):
            continue
        else:
            if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
                values.add(node.id)
            waiting += ast.iter_child_nodes(node)
    return values, imported


class MissingParts:
    """What could not be made so far on one page, so that what depends on it says so once."""

    def __init__(self):
        self._missing = set()
        self._said = False

    def words_for(self, source, name, message, path):
        """Return the sentence for a cell that failed; empty where it would say again that the part above is missing."""
        unknown = _UNKNOWN_NAME.search(message) if name == "NameError" else None
        if unknown is None or unknown[1] not in self._missing:
            self._said = False
            words = in_words(name, message, path)
        else:
            words = "" if self._said else NEEDS_THE_PART_ABOVE
            self._said = True
        self.leave_out(source)
        return words

    def leave_out(self, source):
        """Take the names that a failed cell would have made as missing; return those to forget.

        A value of that name from further up would be shown as if it were the new one. What was imported cannot be out
        of date, and stays.
        """
        values, imported = names_made(source)
        self._missing |= values | imported
        return values
