"""The sheet of a proposal before a board: crowd, slope and guideline, busy hours, and a helper at the loading point."""

from dataclasses import dataclass

from pint import Quantity

from liftcalc.fieldwork.cells import CellFault, is_empty
from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.faults import Fault, FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError, quoted, read_bytes
from liftcalc.fieldwork.sheet import COLUMNS as SHEET_COLUMNS
from liftcalc.quantity_text import read_number, show
from liftcalc.units import PlainError, Q


@dataclass(frozen=True)
class BoardCase:
    """What a sheet says of a proposal.

    Parameters
    ----------
    line_today, line_added : str
        The line that runs, and the one that is proposed beside it.
    crowd, busiest_crowd : Quantity [person]
        Who rides these lines in a busy hour and nothing else; and on the busiest day.
    descent_time : Quantity [s]
        Mean time of one descent.
    slope_area : Quantity [hectare]
        The slope that they share.
    guideline_for, guideline_source : str
        The skiers that the guideline speaks of, and who says it.
    guideline_least, guideline_most : Quantity [person/hectare]
        Riders a hectare that it names.
    busy_hours : Quantity [hour/season]
        Hours of a season with such a crowd.
    helper_wage : Quantity [dollar/hour]
        Cost of a paid hour of the helper.
    helper_readiness : Quantity [s]
        Mean time of all riders with the place free, with the helper.
    helper_misses : Quantity
        Part of the misses that is left with the helper.
    ropes_an_attendant : Quantity or None
        Ropes that one attendant may watch by a rule that was entered; None where each rope has posts of its own.
    rule_source : str
        Who says so.
    """

    line_today: str
    line_added: str
    crowd: Quantity
    busiest_crowd: Quantity
    descent_time: Quantity
    slope_area: Quantity
    guideline_for: str
    guideline_source: str
    guideline_least: Quantity
    guideline_most: Quantity
    busy_hours: Quantity
    helper_wage: Quantity
    helper_readiness: Quantity
    helper_misses: Quantity
    ropes_an_attendant: Quantity | None = None
    rule_source: str = ""


@dataclass(frozen=True)
class _Entry:
    """How a number stands on the sheet: its unit as written and as reckoned with, and what is believed of it."""

    written: str
    unit: str
    least: float
    most: float
    whole: bool = False
    per: float = 1.0  # of the unit as written in the one reckoned with


# by the name of its field; the words of a row are the name with blanks, as people write it
_NUMBERS = {
    "crowd": _Entry("person", "person", 1, 5000, whole=True),
    "busiest_crowd": _Entry("person", "person", 1, 5000, whole=True),
    "descent_time": _Entry("s", "s", 5, 7200),
    "slope_area": _Entry("ha", "hectare", 0.01, 1000),
    "guideline_least": _Entry("persons/ha", "person/hectare", 0, 1000),
    "guideline_most": _Entry("persons/ha", "person/hectare", 1, 1000),
    "busy_hours": _Entry("h", "hour/season", 1, 5000),
    "helper_wage": _Entry("dollars/h", "dollar/hour", 0, 1000),
    "helper_readiness": _Entry("s", "s", 0.2, 120),
    "helper_misses": _Entry("%", "", 0, 100, per=0.01),
    "ropes_an_attendant": _Entry("", "", 1, 4, whole=True),
}
_TEXTS = ("line_today", "line_added", "guideline_for")
_MAY_BE_LEFT_OUT = ("ropes_an_attendant",)
# what stands only with a source in its note: the field that keeps it
_SOURCES = {
    "guideline_least": "guideline_source",
    "guideline_most": "guideline_source",
    "ropes_an_attendant": "rule_source",
}


def _words(name):
    return name.replace("_", " ").replace("helper ", "helper's ")


_NAMES = {_words(name).replace("'", ""): name for name in (*_TEXTS, *_NUMBERS)}


def read_board_case(path):
    """Read a proposal from a sheet. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns of a sheet; a row a value of ``BoardCase``, such as "slope area,0.4,ha". A guideline
        and a rule have their source in the note.

    Returns
    -------
    BoardCase

    Raises
    ------
    FieldFileError
        If the file cannot be read, a value is missing, or values do not go together.
    FieldSheetError
        If cells cannot be read; all of it is told at once.
    """
    return board_case_from_bytes(*read_bytes(path, (".csv",), "a case for a board"))


def board_case_from_bytes(name, raw):
    """Return the proposal in a file that came as bytes. See ``read_board_case``."""
    table = rows_from_bytes(name, raw, SHEET_COLUMNS[:3], "a case for a board", SHEET_COLUMNS)
    faults, found, places = [], {}, {}
    for row in table.rows:
        cells = {column: row.cells.get(column, "") for column in SHEET_COLUMNS}
        try:
            field = _field(cells["quantity"])
            if is_empty(cells["value"]):
                continue
            if field in places:
                raise CellFault(
                    "quantity", f"{_words(field)} came before, in row {places[field]}. Keep one of the two."
                )
            places[field] = row.number
            found |= _value(field, cells, table.decimal_comma)
        except CellFault as fault:
            faults.append(Fault(row.number, fault.column, str(fault)))
    if faults:
        raise FieldSheetError(name, faults)
    missing = [_words(each) for each in (*_TEXTS, *_NUMBERS) if each not in (*found, *_MAY_BE_LEFT_OUT)]
    if missing:
        raise FieldFileError(f"{name}: {', '.join(missing)} not read. Add a row of each; nothing is put in its place.")
    _check_together(name, found)
    return BoardCase(**found)


def _check_together(name, found):
    """Say which values do not go together."""
    if " ".join(found["line_added"].casefold().split()) == " ".join(found["line_today"].casefold().split()):
        raise FieldFileError(
            f"{name}: line added is line today, {quoted(found['line_added'])}. Name the second one as line added."
        )
    crowd, busiest = (f"{found[each].m_as('person'):,.0f}" for each in ("crowd", "busiest_crowd"))
    if found["crowd"] > found["busiest_crowd"]:
        raise FieldFileError(
            f"{name}: busiest crowd is {busiest}, and crowd {crowd}. The busiest day has at least as many. Write "
            f"{crowd} or more as busiest crowd."
        )
    if found["guideline_least"] > found["guideline_most"]:
        raise FieldFileError(
            f"{name}: guideline least is {show(found['guideline_least'])}, and guideline most only "
            f"{show(found['guideline_most'])}. Write the lower one as guideline least."
        )


def _field(text):
    """Return the field that a row is of, or say which there are."""
    plain = " ".join(text.casefold().replace("_", " ").replace("-", " ").replace("'", "").replace("\u2019", "").split())
    if plain not in _NAMES:
        raise CellFault(
            "quantity",
            f"{quoted(text)} is nothing of a case for a board. Write one of {', '.join(map(_words, _NAMES.values()))}.",
        )
    return _NAMES[plain]


def _value(field, cells, decimal_comma):
    """Return what a row says: its field with the value, and its source where it needs one."""
    words, text = _words(field), cells["value"]
    if field in _TEXTS:
        return {field: text}
    entry = _NUMBERS[field]
    try:
        number = read_number(text, decimal_comma)
    except PlainError as error:
        raise CellFault("value", str(error)) from None
    if cells["unit"] != entry.written:
        write = f"Write {entry.written}." if entry.written else "Leave it empty."
        raise CellFault("unit", f"{words} is in {entry.written or 'no unit'}, but got {quoted(cells['unit'])}. {write}")
    if entry.whole and number != round(number):
        raise CellFault("value", f"{words} must be a whole number, but got {text}. Count once more.")
    if not entry.least <= number <= entry.most:
        raise CellFault("value", f"{words} of {text} is not believed: {entry.least:g} to {entry.most:g} is the range.")
    found = {field: Q(number * entry.per, entry.unit)}
    if field in _SOURCES:
        if is_empty(cells["note"]):
            raise CellFault("note", f"{words} stands only with its source. Write in the note who says so.")
        found[_SOURCES[field]] = cells["note"]
    return found
