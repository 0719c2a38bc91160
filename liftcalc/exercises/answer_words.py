"""What people write beside a number: words for riders and things, units by their everyday names, phrases; as tables.

A field sheet takes the spellings of ``quantity_text`` and no more; an answer takes these as well. Nothing here is
evaluated: a word that stands in no table is asked about.
"""

import difflib
import functools
import re

from liftcalc.quantity_text import UNIT_SPELLINGS, shortened
from liftcalc.units import PlainError, kind_of, ureg

PURE = kind_of(ureg.Unit(""))


def _one_and_several(*nouns):
    return {word for noun in nouns for word in (noun, f"{noun}s")}


PEOPLE = dict.fromkeys(
    _one_and_several(
        *("person", "rider", "skier", "boarder", "snowboarder", "passenger", "guest", "customer", "visitor", "patron"),
        *("kid", "adult", "student", "learner", "beginner", "pupil", "racer", "user", "member", "human", "head"),
    )
    | {"people", "child", "children", "men", "women", "folk", "folks", "ppl", "pers", "pax"},
    "person",
)
LAPS = _one_and_several("lap", "round", "run", "ride", "trip")
THINGS = LAPS | _one_and_several(
    *("carrier", "platter", "chair", "cabin", "gondola", "bar", "seat", "place"),
    *("spacing", "gap", "reading", "measurement", "value", "time"),
)
RIDES = ("ride", "rides")  # so many an hour are persons an hour


def _heights():
    """Return the words for persons times a height: person feet, vertical metres, and so on."""
    names = {"ft": ("ft", "feet", "foot"), "m": ("m", "metre", "metres", "meter", "meters")}
    people = ("person", "persons", "people", "rider", "riders", "skier", "skiers")
    words = {"vtf": "person*ft"}
    for unit, lengths in names.items():
        for length in lengths:
            before = (*people, "vertical", "vertical transport")
            phrases = [f"{word} {length}" for word in before] + [f"{length} {word}" for word in people]
            words.update(dict.fromkeys(phrases, f"person*{unit}"))
    return words


# kind: {word in small letters: unit}, beside those of UNIT_SPELLINGS
EVERYDAY = {
    "speed": {
        **dict.fromkeys(("m s-1", "m s^-1", "ms-1", "ms^-1"), "m/s"),
        "kmph": "km/hour",
        "f/s": "ft/s",
    },
    "length": {
        **dict.fromkeys(("mm", "millimetres", "millimeters"), "mm"),
        **dict.fromkeys(("cms", "centimetre", "centimeter"), "cm"),
        **dict.fromkeys(("mtr", "mtrs"), "m"),
        **dict.fromkeys(('"', "ins"), "inch"),
        **dict.fromkeys(("yds",), "yard"),
        **dict.fromkeys(("kms",), "km"),
    },
    "time": {
        **dict.fromkeys(("ms", "msec", "millisecond", "milliseconds"), "ms"),
        "hrs": "hour",
    },
    "number of persons": PEOPLE,
    "power": {
        **dict.fromkeys(("bhp", "horse power", "horsepowers"), "hp"),
        **dict.fromkeys(("ps", "cv", "hp metric", "hp (metric)", "metric horse power"), "metric_horsepower"),
        **dict.fromkeys(("kws", "kilo watt", "kilo watts"), "kW"),
    },
    "force": {
        **dict.fromkeys(("dan", "decanewton", "decanewtons"), "daN"),
        **dict.fromkeys(("kgf", "kilogram force", "kilograms force"), "kgf"),
        **dict.fromkeys(("lb force", "lbs force", "lbsf", "pounds of force"), "pound_force"),
    },
    "mass": {
        **dict.fromkeys(("kgs", "kilo", "kilos"), "kg"),
        **dict.fromkeys(("tonne", "tonnes"), "tonne"),
    },
    "energy": {
        **dict.fromkeys(("n m", "newton metre", "newton metres", "newton meter", "newton meters"), "J"),
        **dict.fromkeys(("kilo joule", "kilo joules"), "kJ"),
        **dict.fromkeys(("wh", "watt hour", "watt hours"), "watt_hour"),
        **dict.fromkeys(("kilowatt hour", "kilowatt hours"), "kilowatt_hour"),
    },
    "acceleration": {
        **dict.fromkeys(("m/s/s", "m/sec2", "m/sec^2", "m s-2", "m s^-2", "metres per second squared"), "m/s**2"),
        **dict.fromkeys(("ft/s/s", "ft/sec2", "ft/sec^2", "feet per second squared"), "ft/s**2"),
    },
    "area": dict.fromkeys(("ha", "hectare", "hectares"), "hectare"),
    "density of riders": {
        f"{people}{per}": "person/hectare"
        for per in ("/ha", "/hectare", " a hectare", " per hectare", " to a hectare")
        for people in ("persons", "person", "people", "riders", "rider", "skiers")
    },
    "pure number or angle": {"pct": "percent", "degs": "degree"},
}
ALL = {word: unit for spellings in (*EVERYDAY.values(), *UNIT_SPELLINGS.values()) for word, unit in spellings.items()}
# what passes in a time, beside the units: "skiers an hour", "vertical feet an hour"
PASSING = {**ALL, **_heights(), "p": "person"}
TIMES = {**EVERYDAY["time"], **UNIT_SPELLINGS["time"]}
# phrases at the end that change nothing
_EVERYWHERE = ("on average", "on the average", "in all", "in total", "altogether")
_BY_KIND = {
    "time": ("apart", "each", "per rider", "a rider", "between riders"),
    "length": ("apart", "each", "per rider", "a rider", "between riders"),
    "energy": ("each", "per ride", "a ride", "per rider", "a rider"),
    "number of persons": ("at once", "on the line", "on the rope"),
    "pure number or angle": ("each", "on the loop"),
}
TWO_WAYS = {  # (kind that is asked, word): what to write instead
    ("speed", "ms"): "Write m/s for metres a second.",
    ("time", "'"): "Write min and s for minutes and seconds.",
    ("time", '"'): "Write min and s for minutes and seconds.",
}
# signs that mean what another one means
SAME_SIGNS = str.maketrans(
    {
        "\N{MINUS SIGN}": "-",
        "\N{SUPERSCRIPT MINUS}": "-",
        "\N{SUPERSCRIPT ONE}": "1",
        "\N{PRIME}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{DOUBLE PRIME}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{FRACTION SLASH}": "/",
        "\N{MIDDLE DOT}": " ",
        "\N{DOT OPERATOR}": " ",
        "\N{VULGAR FRACTION ONE HALF}": " 1/2",
        "\N{VULGAR FRACTION ONE THIRD}": " 1/3",
        "\N{VULGAR FRACTION TWO THIRDS}": " 2/3",
        "\N{VULGAR FRACTION ONE QUARTER}": " 1/4",
        "\N{VULGAR FRACTION THREE QUARTERS}": " 3/4",
        "\N{VULGAR FRACTION ONE EIGHTH}": " 1/8",
        "\N{VULGAR FRACTION THREE EIGHTHS}": " 3/8",
        "\N{VULGAR FRACTION FIVE EIGHTHS}": " 5/8",
        "\N{VULGAR FRACTION SEVEN EIGHTHS}": " 7/8",
    }
)
PARTS_OF_A_WHOLE = (2, 3, 4, 5, 6, 8, 10, 12, 16)  # fractions that people write; any other is a sum to be worked out
_IN_A = re.compile(r"(?P<what>[a-z' ]{0,40}?) ?(?:/|\b(?:per|an?|each|every|in an?|in one) ) ?(?P<time>[a-z]{1,12})\Z")


class AnswerError(PlainError):
    """An answer cannot be read; the message says what to write instead. It counts as no attempt."""


def without_phrase(word, kind):
    """Return a word of a unit without a phrase at its end that changes nothing."""
    if word == "hourly" or word.endswith(" hourly"):
        return f"{word.removesuffix('hourly')}an hour"
    for phrase in (*_EVERYWHERE, *_BY_KIND.get(kind, ())):
        if word == phrase or word.endswith(f" {phrase}"):
            return word.removesuffix(phrase).strip()
    return word


def ways_to_write(word):
    """Return a word, and the same without the points of an abbreviation and the signs that join two words."""
    plain = word.replace(".", "")
    joined = " ".join(re.sub(r"(?<=[a-z])[-*](?=[a-z])", " ", plain).split())
    return tuple(dict.fromkeys((word, plain, joined)))


def ask_if_two_ways(word, kind):
    """Raise if a word means one thing in general and may well mean another where such a kind is asked."""
    if (kind, word) in TWO_WAYS:
        raise AnswerError(f"{word!r} can be read in two ways. {TWO_WAYS[kind, word]}")


@functools.cache
def _spellings(kind):
    return {**ALL, **EVERYDAY.get(kind, {}), **UNIT_SPELLINGS.get(kind, {})}


def unit_of(word, kind, number):
    """Return the unit that the rest of the text names."""
    whole = word.casefold().strip().rstrip(".")
    word = without_phrase(whole, kind)
    if word in THINGS or not word:
        if kind in (PURE, None):
            return ""
        if kind == "number of persons" and whole and not word:
            return "person"  # so many "on the line"
        raise AnswerError(f"the unit is missing. Write the unit behind {shortened(number)}, as in {example(kind)!r}.")
    for way in ways_to_write(word):
        ask_if_two_ways(way, kind)
        unit = _spellings(kind).get(way) or _unit_of_rate(way, kind)
        if unit is not None:
            return unit
    if kind in (PURE, None):
        raise AnswerError(
            f"{shortened(word)!r} is no unit known here. Write the number alone, as in {example(kind)!r}."
        )
    near = difflib.get_close_matches(word[:40], list(_spellings(kind)), n=1)
    guess = f" Is {near[0]!r} meant?" if near else ""
    raise AnswerError(f"{shortened(word)!r} is no unit known here. Write the unit as in {example(kind)!r}.{guess}")


def _unit_of_rate(word, kind):
    """Return the unit of something that passes in a time, such as "skiers an hour"; None if it is no such thing."""
    parts = _IN_A.match(word) if len(word) <= 60 else None
    time = TIMES.get(parts["time"]) if parts else None
    if time is None:
        return None
    what = parts["what"]
    if kind == PURE and what in LAPS:
        return "" if time == "hour" else None
    if kind == "hourly capacity" and (not what or what in RIDES):
        return f"person/{time}"
    return f"{PASSING[what]}/{time}" if what in PASSING else None


def example(kind):
    """Return an answer of a kind, with a number that is nobody's."""
    spellings = UNIT_SPELLINGS.get(kind) or EVERYDAY.get(kind)
    if kind == PURE or not spellings:  # nothing but a number can be written
        return "12"
    word = next(iter(spellings))
    shown = {"vertical transport": "VTFH", "power": "kW", "force": "N", "mass": "kg", "energy": "kJ"}
    return f"12 {shown.get(kind, word)}"
