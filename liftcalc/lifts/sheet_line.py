"""From the sheet of a lift to its line: which readings make it, and which are compared with it.

Line speed, spacing or interval, persons per carrier and ridden length make the line. Where spacing and interval are
both read, tows and belts take the spacing and carriers the interval. Whatever else was read fills a gap, in a fixed
order, or is compared with what the line makes of it. A count is only compared.
"""

import csv
import io
from dataclasses import dataclass

from pint import Quantity

from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.fieldwork.sheet import COLUMNS, example_row, level_in
from liftcalc.lifts.givens import NotKnownError, adds
from liftcalc.lifts.kinds import NOT_READ, kind_named
from liftcalc.lifts.line import Line, what_follows
from liftcalc.lifts.line_quantities import LINE_QUANTITIES
from liftcalc.lifts.readings import READINGS, WORDS
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import VOCABULARY, words_of

BESIDE = ("vertical_rise", "motor_power", "dwell_time", "station_time", "pick_up_acceleration", "acceleration")
OF_A_RIDE = ("ride_time", "riders_on_line")
OF_THE_START = BESIDE[2:]  # what ``line_from`` takes to work the rest out
FILLERS = (
    "spacing",
    "interval",
    "sheave_distance",
    "carriers_on_loop",
    "ride_time",
    "hourly_capacity",
    "riders_on_line",
)
WANTED = ("line_speed", "spacing", "ridden_length", "persons_per_carrier")
NEAR_A_WHOLE = 0.05  # persons that follow from an hourly capacity are taken as the whole number this near
SAME_WITHIN = 0.0005  # apart by less than this, two figures read alike


@dataclass(frozen=True)
class Compared:
    """A reading that does not make the line, beside what the line makes of it."""

    name: str
    read: Quantity
    made: Quantity

    @property
    def apart(self):
        """By how much the reading is above what the line makes of it, as a part of that."""
        return (self.read / self.made).m_as("") - 1

    @property
    def difference(self):
        """The difference in words."""
        apart = self.apart
        if abs(apart) < SAME_WITHIN:
            return "the same"
        percent = float(f"{abs(100 * apart):.2g}")  # two figures, and never a power of ten
        return f"{percent:.12g} % {'above' if apart > 0 else 'below'}"

    def __str__(self):
        made = Q(float(round(self.made.magnitude)), "") if self.name == "carriers_on_loop" else self.made
        made = f"read {show(self.read)}, the line makes it {show(made)}"
        return f"{words_of(self.name)}: {made}: {self.difference}"


def _kind(sheet):
    return kind_named(sheet.kind or NOT_READ)


def _beside(sheet, names=BESIDE):
    """Return the means of what stands beside the givens of a line; of a lift without a kind, the start alone."""
    if sheet.kind is None:
        names = [name for name in names if name not in ("dwell_time", "station_time", "acceleration")]
    return {name: sheet.mean(name) for name in names if sheet.has(name)}


def _first(sheet):
    """Return the names of the readings that say most directly what the line is, as far as they were read."""
    kind = _kind(sheet)
    pitch = ("interval", "spacing") if kind.has_carriers else ("spacing", "interval")
    if _every_trip(sheet):
        pitch = ()  # the interval follows from the trip: one that was timed is compared
    read = next((name for name in pitch if sheet.has(name)), None)
    names = ("line_speed", read, "persons_per_carrier", "ridden_length")
    return [name for name in names if name and sheet.has(name)]


def _fillers(sheet):
    """Return the names of the readings that may fill a gap, in their order."""
    kind, names = _kind(sheet), [name for name in FILLERS if sheet.has(name)]
    counted = kind.has_carriers and not kind.reversible
    if kind.detachable:  # the time in the stations counts, and so all that a round takes must be read
        counted = sheet.has("station_time", "sheave_distance") and (sheet.has("line_speed") or sheet.has("interval"))
    if _every_trip(sheet):
        names.sort(key="interval".__eq__)  # the trip itself goes before it
    useless = {name for name in names if sheet.mean(name).magnitude == 0}  # a head count of an empty line
    return [name for name in names if name not in useless and (counted or name != "carriers_on_loop")]


def _may_hold_more(sheet):
    """Return whether riders may be more than one together: on a carrier, or on a lift without a kind."""
    return sheet.kind is None or _kind(sheet).has_carriers


def _every_trip(sheet):
    """Return whether a cabin comes every trip, so that the interval is the ride time and a dwell time that was read."""
    return _kind(sheet).reversible and sheet.has("dwell_time")


def _follows(sheet, chosen, factors=None):
    """Return what follows of the line from some readings of a sheet, by name; nothing where nothing was read."""
    givens = {name: sheet.mean(name) * (factors or {}).get(name, 1) for name in chosen}
    if _may_hold_more(sheet) and "persons_per_carrier" not in givens:
        givens["persons_per_carrier"] = None  # a carrier may hold more than one: it is not taken as 1
    if not chosen:
        return {}
    kind, beside = sheet.kind or NOT_READ, _beside(sheet, OF_THE_START)
    beside = {name: value * (factors or {}).get(name, 1) for name, value in beside.items()}
    if _every_trip(sheet) and not {"ride_time", "interval"} & _determined(sheet, chosen):
        del beside["dwell_time"]  # no trip follows yet, and so it makes nothing
    if set(chosen) <= set(OF_A_RIDE) and {"pick_up_acceleration", "acceleration"} & set(beside):
        return {}  # of a ride alone the start cannot be taken off
    try:
        return what_follows(sheet.line, kind, **beside, **givens).values
    except NotKnownError:  # a ride with its start taken off needs more: without it the rest follows
        rest = [name for name in chosen if name not in OF_A_RIDE]
        return _follows(sheet, rest, factors) if len(rest) < len(chosen) else {}
    except PlainError as error:
        raise FieldFileError(f"{sheet.name}: {error}") from None


def _determined(sheet, chosen):
    """Return the names of readings of a line, and of what a dwell time adds to them."""
    known = {*chosen} if _may_hold_more(sheet) else {*chosen, "persons_per_carrier"}
    if _every_trip(sheet) and not (adds("ride_time", known) and adds("interval", known)):
        known |= {"ride_time", "interval"}
    return known


def _choose(sheet):
    """Return the names of the readings that make the line, and what follows from them.

    Each of them adds to what is known: none is there to spare, and so none can disagree.
    """
    chosen = _first(sheet)
    follows = _follows(sheet, chosen)
    for name in _fillers(sheet):
        if all(wanted in follows for wanted in WANTED):
            break
        if name not in chosen and adds(name, _determined(sheet, chosen)):
            chosen.append(name)
            follows = _follows(sheet, chosen)
    if sheet.has("sheave_distance") and "sheave_distance" not in follows:
        chosen.append("sheave_distance")
        follows["sheave_distance"] = sheet.mean("sheave_distance")
    return chosen, _with_whole_persons(follows)


def _with_whole_persons(follows):
    """Return what follows with a whole number of persons on a carrier; without it where it comes out as none."""
    persons = follows.get("persons_per_carrier")
    if persons is None:
        return follows
    whole = round(persons.m_as("person"))
    if whole and abs(persons.m_as("person") / whole - 1) < NEAR_A_WHOLE:
        return follows | {"persons_per_carrier": Q(float(whole), "person")}
    return {name: value for name, value in follows.items() if name != "persons_per_carrier"}


def level_of(sheet):
    """Return the level of the line: as the sheet says it, of the figure that fills the gap, or else ideal."""
    if "level_of_spacing" not in sheet.facts and "hourly_capacity" in made_from(sheet):
        return level_in(sheet.method("hourly_capacity"))
    return sheet.level


def sheet_line(sheet):
    """Return the line that a sheet tells of.

    Parameters
    ----------
    sheet : FieldSheet
        As ``read_sheet`` returns it.

    Returns
    -------
    Line
        From the means of the readings. Its kind is "not read" where the sheet does not say it.

    Raises
    ------
    FieldFileError
        If a reading is missing without which no line follows; the message names it and says what to write. Or if the
        readings make no line, such as a rise above the ridden length.
    """
    chosen, follows = _choose(sheet)
    lacks = [name for name in WANTED if name not in follows]
    if not sheet.has("vertical_rise"):
        lacks.append("vertical_rise")
    if lacks:
        raise FieldFileError(
            f"{sheet.name}: there is no line without {' and '.join(map(words_of, lacks))}, which nobody read. "
            f"Add a row such as: {example_row(lacks[0])}"
        )
    try:
        check_rise({**follows, **_beside(sheet)})
        return Line(sheet.line, sheet.kind or NOT_READ, level=level_of(sheet), **follows, **_beside(sheet))
    except PlainError as error:
        raise FieldFileError(f"{sheet.name}: {error}") from None


def check_rise(known):
    """Refuse a rise that is no less than the length, where the sheet holds too little for a line to be made of it."""
    rise, length = known.get("vertical_rise"), known.get("ridden_length")
    if rise is not None and length is not None and rise >= length:
        raise PlainError(
            f"the vertical rise must be less than the ridden length of {show(length)}, but got {show(rise)}. Write the "
            "length along the slope, and the height gained."
        )


def known_of(sheet):
    """Return all that a sheet gives of its line and for its limits, as far as it follows.

    Parameters
    ----------
    sheet : FieldSheet

    Returns
    -------
    dict of str to Quantity, or str
        By name, as ``known_values`` returns it; of the line some values may lack. ``persons_per_carrier`` is 1 person
        where nobody read it of a rope or belt without carriers.
    """
    return {**_beside(sheet), **_choose(sheet)[1], **sheet_readings(sheet)}


def made_from(sheet):
    """Return the names of the readings that make the line of a sheet."""
    return _choose(sheet)[0]


def moved(sheet, name, factor):
    """Return what follows of the line, by name, where the mean of one of its readings is larger by a factor."""
    return _follows(sheet, made_from(sheet), {name: factor})


def move_the_line(sheet):
    """Return the names of all readings that move the line: those that make it, and those of the start and stations."""
    makes = made_from(sheet)
    beside = (
        _beside(sheet, OF_THE_START)
        if {*makes} - {*WANTED, "interval", "sheave_distance"} or _every_trip(sheet)
        else ()
    )
    return [*makes, *beside]


def sheet_readings(sheet):
    """Return what a sheet holds for the limits beside the line: means by name, and readings that are words."""
    return sheet.means(READINGS) | {name: word for name, word in sheet.facts.items() if name in WORDS}


def compared(sheet):
    """Return the readings that do not make the line, each beside what the line makes of it.

    Parameters
    ----------
    sheet : FieldSheet

    Returns
    -------
    list of Compared
        In the order of ``solve_line``; none where there is no line. Head counts and hourly capacities are held against
        the level of the line.
    """
    chosen, follows = _choose(sheet)
    if any(name not in follows for name in WANTED) or not sheet.has("vertical_rise"):
        return []
    line = sheet_line(sheet)
    made = {name: getattr(line, name) for name in LINE_QUANTITIES if hasattr(line, name)}
    made |= {"hourly_capacity": line.capacity.value, "riders_on_line": line.persons_on_line}
    return [
        Compared(name, sheet.mean(name), made[name].to(VOCABULARY[name].unit))
        for name in LINE_QUANTITIES
        if name not in chosen and made[name] is not None and sheet.has(name)
    ]


def sheet_csv(line, readings, *, lift=None):
    """Return a line and its readings as the text of a sheet, which ``read_sheet`` reads.

    Parameters
    ----------
    line : Line
    readings : mapping of str to Quantity, or str
        As for ``known_values``.
    lift : str or None
        Name of the lift that the line belongs to; the line's own if left out.

    Returns
    -------
    str
        A CSV text; numbers as exact as they are.
    """
    kind = kind_named(line.kind)
    pitch = "interval" if kind.reversible else "spacing"
    if line.dwell_time is not None:
        pitch = "dwell_time"
    names = ("line_speed", pitch, "persons_per_carrier", "ridden_length", "sheave_distance", *BESIDE)
    values = {name: getattr(line, name) for name in names} | {
        name: value for name, value in readings.items() if name not in names
    }
    if line.level != "ideal":
        values["level_of_spacing"] = line.level
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    facts = {"lift": lift or line.name, "line": line.name} | ({} if line.kind == NOT_READ else {"kind": line.kind})
    for name, value in {**facts, **values}.items():
        if isinstance(value, str):
            writer.writerow([words_of(name), value, "", "", "", ""])
        elif value is not None:
            unit = VOCABULARY[name].unit
            written = {"person/hour": "pph", "m/s**2": "m/s^2"}.get(unit, unit)
            number = f"{value.m_as(unit):.12f}".rstrip("0").rstrip(".")
            writer.writerow([words_of(name), number, written, "", "", ""])
    return text.getvalue()
