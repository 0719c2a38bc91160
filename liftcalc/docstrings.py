"""The docstring of a formula, completed from its decorator and the vocabulary.

In the source a formula says one sentence, its law, a line for an argument only where it means less or more than the
vocabulary says, its source and an example. What the decorator knows (units, bounds, defaults, conditions) is added
here, so that ``help()`` shows all of it and no docstring can contradict the check.
"""

import inspect
import re
import textwrap

from liftcalc.vocabulary import VOCABULARY

BOUNDS = {"positive": "greater than zero", "not negative": "zero or more", "any": "of any sign"}
WIDTH = 100
_LINE = re.compile(r"(\w+): (.*)")  # the line of an argument, of what is returned, or of the source


def _parts(text):
    """Return the paragraphs that have no name, those that have one by it, and the example."""
    paragraphs, named, example = [], {}, []
    for paragraph in re.split(r"\n\s*\n", inspect.cleandoc(text)):
        if paragraph.startswith(">>> ") or example:
            example.append(paragraph)
        elif _LINE.match(paragraph):
            for line in paragraph.split("\n"):
                begins = _LINE.match(line)
                if begins:
                    name, line = begins.groups()
                named[name] = f"{named.get(name, '')} {line.strip()}".strip()
        else:
            paragraphs.append(paragraph)
    return paragraphs, named, "\n\n".join(example)


def _checked(name, paragraphs, named, example, arguments):
    """Refuse a short docstring that lacks something, or says what the vocabulary says."""
    asked = {"a sentence": paragraphs, "a source": named.get("Source"), "an example": ">>> show(" in example}
    asked["a line 'returns: '"] = named.get("returns")
    lacking = [what for what, there in asked.items() if not there]
    unknown = [each for each in named if each not in {*arguments, "returns", "raises", "Source"}]
    silent = [each for each in arguments if each not in named and each not in VOCABULARY]
    twice = [each for each in named if each in VOCABULARY and _plain(named[each]) == _plain(VOCABULARY[each].meaning)]
    for what, found in (
        ("lacks", lacking),
        ("has lines for what is no argument:", unknown),
        ("has neither a line nor an entry in the vocabulary for", silent),
        ("says what the vocabulary says of", twice),
    ):
        if found:
            raise TypeError(f"{name}: the docstring {what} {', '.join(found)}")


def _plain(text):
    return " ".join(text.casefold().rstrip(".").split())


def _sentence(text):
    return f"{text[0].upper()}{text[1:].rstrip('.')}."


def _indented(*sentences):
    """Return sentences as one paragraph behind four blanks."""
    text = " ".join(sentence for sentence in sentences if sentence)
    return textwrap.fill(text, WIDTH, initial_indent="    ", subsequent_indent="    ", break_on_hyphens=False)


def _section(head, body):
    return f"{head}\n{'-' * len(head)}\n{body}"


def completed(formula, units, returns, lowest, conditions, fit_together):
    """Return the whole docstring of a formula, with the sections of numpydoc.

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
    fit_together : bool
        Whether its arrays have one common shape.

    Returns
    -------
    str
        The docstring.

    Raises
    ------
    TypeError
        If an argument has neither a line nor an entry in the vocabulary, or a line that says what its entry says; or if
        a sentence, what is returned, the source or the example is missing.
    """
    name, signature = formula.__name__, inspect.signature(formula)
    paragraphs, named, example = _parts(formula.__doc__ or "")
    _checked(name, paragraphs, named, example, signature.parameters)
    arguments = []
    for argument, parameter in signature.parameters.items():
        meaning = named.get(argument) or VOCABULARY[argument].meaning
        left_out = parameter.default is not inspect.Parameter.empty
        default = f"{parameter.default:g} {units[argument]}".strip() + " if left out." if left_out else ""
        says = _indented(_sentence(f"{meaning.rstrip('.')}; {BOUNDS[lowest[argument]]}"), default)
        arguments.append(f"{argument} : Quantity [{units[argument]}]\n{says}")
    shape = "Scalar, or array of the common shape of the arguments." if fit_together else ""
    refused = "If an argument is outside its bound or no finite number" + (
        ", or arrays do not fit together." if fit_together else "."
    )
    besides = [f"If {condition.refuses}." for condition in conditions]
    besides += [_sentence(f"if {named['raises'].removeprefix('if ').removeprefix('If ')}")] if "raises" in named else []
    raised = [
        "UnitError\n" + _indented("If an argument has no unit, or one of another kind."),
        "PlainError\n" + _indented(refused, *besides),
    ]
    law = [paragraph for paragraph in paragraphs if paragraph.startswith("    ")]
    return "\n\n".join(
        [
            *(paragraph for paragraph in paragraphs if paragraph not in law),
            _section("Parameters", "\n".join(arguments)),
            _section("Returns", f"Quantity [{returns}]\n" + _indented(_sentence(named["returns"]), shape)),
            _section("Raises", "\n".join(raised)),
            _section("Notes", "\n\n".join([*law, f"Source: {named['Source']}"])),
            _section("Examples", f">>> from liftcalc import Q, {name}, show\n{example}"),
        ]
    )
