"""The docstring of a formula, completed from its decorator and the vocabulary.

In the source a formula says one sentence, its law, a line for an argument only where it means less or more than the
vocabulary says, what it returns, its source and an example. What the decorator knows (units, bounds, defaults,
conditions) is added here, so that ``help()`` shows all of it and no docstring can contradict the check.
"""

import inspect
import re
import textwrap

from liftcalc.vocabulary import VOCABULARY

BOUNDS = {"positive": "greater than zero", "not negative": "zero or more", "any": "of any sign"}
OTHER_LINES = ("returns", "raises", "Source")  # that have a name, beside those of arguments
WIDTH = 116  # of the lines of the source, without their indent


def _parts(text):
    """Return what stands above the law, the law with what follows it, the lines by their names, and the example."""
    above, law, lines, example = [], [], {}, ""
    for paragraph in re.split(r"\n\s*\n", inspect.cleandoc(text)):
        if paragraph.startswith(">>> "):
            example = paragraph
        elif re.match(r"\w+: ", paragraph):
            for line in re.split(r"\n(?=\w+: )", paragraph):
                name, words = line.split(": ", 1)
                lines[name] = " ".join(words.split())
        elif law or paragraph.startswith("    "):
            law.append(paragraph)
        else:
            above.append(paragraph)
    return above, law, lines, example


def _refuse(name, arguments, above, lines, example):
    """Raise a TypeError where a short docstring lacks something, or says what the vocabulary says."""
    needed = {
        "a sentence": bool(above) and above[0].endswith("."),
        "a line 'returns: '": "returns" in lines,
        "a source": "Source" in lines,
        "an example": example.startswith(">>> show("),
    }
    in_both = [each for each in arguments if each in lines and each in VOCABULARY]
    faults = {
        "lacks": [part for part, there in needed.items() if not there],
        "has a line for what is no argument:": [each for each in lines if each not in (*arguments, *OTHER_LINES)],
        "has neither a line nor an entry in the vocabulary for": [
            each for each in arguments if each not in lines and each not in VOCABULARY
        ],
        "says what the vocabulary says of": [
            each for each in in_both if _sentence(lines[each]) == _sentence(VOCABULARY[each].meaning)
        ],
    }
    for fault, found in faults.items():
        if found:
            raise TypeError(f"{name}: the docstring {fault} {', '.join(found)}")


def _sentence(text):
    return f"{text[0].upper()}{text[1:].rstrip('.')}."


def _wrapped(text, indent=""):
    return textwrap.fill(text, WIDTH, initial_indent=indent, subsequent_indent=indent, break_on_hyphens=False)


def _entry(head, *texts):
    """Return an entry of a section: its head, and under it each text as a sentence."""
    return f"{head}\n{_wrapped(' '.join(map(_sentence, texts)), '    ')}"


def _section(head, *entries, between="\n"):
    return f"{head}\n{'-' * len(head)}\n{between.join(entries)}"


def completed(formula, units, returns, lowest, conditions, one_value):
    """Return the whole docstring of a formula, with the sections of numpydoc.

    What stands above the law stays above the sections; the law and what follows it go into the notes.

    Parameters
    ----------
    formula : function
        The formula on plain numbers, with its short docstring.
    units : dict of str to str
        Unit of each argument.
    returns : str
        Unit of the result.
    lowest : dict of str to str
        Bound of each argument: a key of ``BOUNDS``.
    conditions : tuple of Condition
        What the formula asks besides.
    one_value : bool
        Whether the result is one value, also of arrays.

    Returns
    -------
    str
        The docstring.

    Raises
    ------
    TypeError
        If an argument has neither a line nor an entry in the vocabulary, or a line that says what its entry says; if
        there is a line for what is no argument; or if a sentence, what is returned, the source or the example is
        missing.
    """
    name, parameters = formula.__name__, inspect.signature(formula).parameters
    above, law, lines, example = _parts(formula.__doc__ or "")
    _refuse(name, parameters, above, lines, example)
    arguments = []
    for argument, parameter in parameters.items():
        texts = [lines.get(argument) or VOCABULARY[argument].meaning, BOUNDS[lowest[argument]]]
        if parameter.default is not inspect.Parameter.empty:
            texts.append(f"{parameter.default:g} {units[argument]}".strip() + " if left out")
        arguments.append(_entry(f"{argument} : Quantity [{units[argument]}]", *texts))
    shape = "one value" if one_value else "scalar, or array of the common shape of the arguments"
    refused = [f"if {condition.refuses}" for condition in conditions]
    if "raises" in lines:
        refused.append(lines["raises"])
    return "\n\n".join(
        [
            *above,
            _section("Parameters", *arguments),
            _section("Returns", _entry(f"Quantity [{returns}]", lines["returns"], shape)),
            _section(
                "Raises",
                _entry("UnitError", "if an argument has no unit, or one of another kind"),
                _entry(
                    "PlainError",
                    "if an argument is outside its bound, empty or no finite number, if arrays do not fit together, or "
                    "if the result is no finite number",
                    *refused,
                ),
            ),
            _section("Notes", *law, _wrapped(f"Source: {lines['Source']}"), between="\n\n"),
            _section("Examples", f">>> from liftcalc import Q, {name}, show", example),
        ]
    )
