"""What the count on a field sheet says, with its doubt, beside the bound that speed and spacing set."""

from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.levels import Capacity
from liftcalc.quantity_text import show
from liftcalc.tables import Lines
from liftcalc.uncertainty import count_against_bound
from liftcalc.units import Q

CLOSEST = Q(1.5, "m")  # skis end to end, taken as the closest that fits: a closer spacing on the sheet goes before it


def count_in_words(sheet):
    """Return what the count of a sheet says in plain words: its doubt, and how it stands to speed over spacing.

    Parameters
    ----------
    sheet : FieldSheet
        Readings. Several counts are taken together.

    Returns
    -------
    Lines
        Two or three lines; one that says what is missing where the sheet holds no count.
    """
    if not sheet.has("persons counted", "counting time"):
        return Lines("No count on this sheet: it needs a row of persons counted and one of counting time.")
    counts = len(sheet.of("persons counted"))
    persons, time = counts * sheet.mean("persons counted"), counts * sheet.mean("counting time")
    at_ends = sheet.mean("persons per carrier") if sheet.has("persons per carrier") else Q(1, "person")
    if not sheet.has("line speed", "spacing"):
        found = count_against_bound(persons, time, persons_per_carrier=at_ends)
        lines = [*found.sentences, "Line speed or spacing is not on the sheet: there is nothing to hold it against."]
    else:
        speed, spacing = sheet.mean("line speed"), sheet.mean("spacing")
        closest = min(CLOSEST, spacing)
        found = count_against_bound(
            persons,
            time,
            Capacity(hourly_capacity(speed, spacing, at_ends), "ideal"),
            packing=Capacity(hourly_capacity(speed, closest, at_ends), "packing"),
            persons_per_carrier=at_ends,
        )
        lines = list(found.sentences)
        if found.verdict == "impossible":
            lines.append(f"The closest that fits is taken as {show(closest)} from rider to rider.")
    if counts > 1:
        lines[0] = lines[0].replace(": ", f", {counts} counts together: ", 1)
    return Lines(*lines)
