"""Numbers with plus-minus, written as a person should."""

import math
from decimal import ROUND_HALF_UP, Decimal

from liftcalc.quantity_text import unit_word
from liftcalc.uncertainty.checks import check_kind, check_probability, positive_doubt, scalar


def place_of_doubt(doubt):
    """Return the power of ten of the last digit to print of a doubt, a plain positive number.

    Two digits are kept where the doubt begins with 10 to 29, else one: 27 stays 27, 88 becomes 90. One digit of a
    doubt of 1.4 could be wrong by a third; of a doubt of 8.8, by a twentieth.
    """
    digits, _, power = f"{doubt:.11e}".partition("e")  # twelve digits, so that 0.3 is 0.3 and not 0.29999999999999998
    return int(power) - 1 if float(digits) < 3 else int(power)


def place_of_sampling_error(error):
    """Return the power of ten of the last digit to print: one unit of it is worth at least one standard error."""
    return math.ceil(math.log10(error))


def write_at(number, place):
    """Return a plain number rounded to a power of ten, with a thousands mark; a half is rounded away from zero."""
    rounded = Decimal(repr(float(number))).quantize(Decimal((0, (1,), place)), ROUND_HALF_UP)
    return f"{rounded if rounded else abs(rounded):,f}"


def with_unit(text, unit):
    """Return a written number with the word of its unit behind it."""
    word = unit_word(unit)
    return f"{text}{'' if word == '%' else ' '}{word}".strip()


def short_number(number, figures=3):
    """Return a number with a few figures and never as a power of ten."""
    text = f"{number:.{figures}g}"
    return text if "e" not in text else f"{number:,.0f}" if abs(number) >= 1 else "0"


def percent(part):
    """Return a part of one as a percentage, such as "95 %" or "99.7 %"; what is next to nothing as such."""
    return "less than 0.01 %" if 0 < part < 0.0001 else f"{short_number(100 * part, 4)} %"


def show_doubt(doubt):
    """Return a doubt alone, rounded by the rule of ``show_with_doubt``; a doubt of zero is "nil"."""
    if doubt.magnitude == 0:
        return "nil"
    size = abs(float(doubt.magnitude))
    return with_unit(write_at(size, place_of_doubt(size)), doubt.units)


def show_with_doubt(value, expanded, unit=None, *, coverage_factor=None, probability=None):
    """Return a value with its plus-minus, both rounded to the same place.

    Parameters
    ----------
    value : Quantity
        The result, a scalar.
    expanded : Quantity
        What stands behind the plus-minus, in any unit of the same kind.
    unit : str or None
        Unit to print in; the value's own unit if left out.
    coverage_factor, probability : float or None
        Printed in brackets behind the number, each if given: the longer form.

    Returns
    -------
    str
        Such as "1,800 ± 90 pph". Never a power of ten.

    Raises
    ------
    UnitError
        If a bare number came, or the units do not fit together.
    UncertaintyError
        If the doubt is not greater than zero.

    Notes
    -----
    The doubt keeps two digits where it begins with 10 to 29, else one; the value is rounded to the same place.

    Examples
    --------
    >>> from liftcalc import Q
    >>> show_with_doubt(Q(1803.2, "pph"), Q(88, "pph"))
    '1,800 ± 90 pph'
    >>> show_with_doubt(Q(1803.2, "pph"), Q(88, "pph"), coverage_factor=1.96, probability=0.95)
    '1,800 ± 90 pph (k = 1.96, level of confidence 95 %)'
    """
    value = scalar("show_with_doubt", "value", value)
    expanded = positive_doubt("show_with_doubt", "expanded", expanded, value)
    if unit is not None:
        check_kind("show_with_doubt", "value", value, unit)
        value, expanded = value.to(unit), expanded.to(unit)
    place = place_of_doubt(expanded.magnitude)
    text = with_unit(f"{write_at(value.magnitude, place)} ± {write_at(expanded.magnitude, place)}", value.units)
    notes = [] if coverage_factor is None else [f"k = {coverage_factor:.2f}"]
    if probability is not None:
        check_probability("show_with_doubt", probability)
        notes.append(f"level of confidence {percent(probability)}")
    return f"{text} ({', '.join(notes)})" if notes else text
