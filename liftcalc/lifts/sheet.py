"""The sheet of one lift line, read whole: every cell, and whether the lift of its kind has such a reading at all."""

from liftcalc.fieldwork.cells import CellFault, one_of
from liftcalc.fieldwork.faults import Fault, raise_faults
from liftcalc.fieldwork.sheet import bytes_of_sheet, rows_of_sheet, sheet_of_rows
from liftcalc.lifts.kinds import KINDS
from liftcalc.quantity_text import show, unit_word
from liftcalc.tables import Table
from liftcalc.units import Q
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY, WHO, words_of

# which lifts have a reading: words for them, and how their kinds are told
BELONGS = {
    "all": ("every lift", lambda kind: True),
    "carriers": ("lifts with carriers", lambda kind: kind.has_carriers),
    "not tram": ("lifts that run round", lambda kind: not kind.reversible),
    "tram": ("lifts that run to and fro", lambda kind: kind.reversible),
    "on skis": ("lifts that draw riders on skis", lambda kind: "snow_friction" in kind.riding.work_readings),
    "tether": (
        "lifts with a tether",
        lambda kind: kind.has_carriers and "snow_friction" in kind.riding.work_readings,
    ),
    "from rest": ("lifts whose riders start from rest", lambda kind: kind.start_reading == "pick_up_acceleration"),
    "carried": ("lifts that carry riders in the air", lambda kind: "sheave_drag_share" in kind.riding.work_readings),
    "conveyor": ("belts", lambda kind: "bed_friction" in kind.riding.work_readings),
    "rope": ("lifts on a rope", lambda kind: "bed_friction" not in kind.riding.work_readings),
    "detachable": ("detachable lifts", lambda kind: kind.detachable),
    "carpet": ("chairs with a carpet", lambda kind: kind.comes_at == "line speed less carpet speed"),
}


def read_sheet(path):
    """Read the sheet of one lift line. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns quantity, value, unit, plus_minus, method and note, in any order, in UTF-8 with or
        without mark, UTF-16 or Windows-1252. Cells are parted by commas, with decimal points; or by semicolons, with
        decimal commas. What a quantity may be: ``what_a_sheet_may_hold``. A fact stands once, a reading any number of
        times; rows whose value is empty or "not read" are passed over.

    Returns
    -------
    FieldSheet
        Facts and readings, each reading with its unit.

    Raises
    ------
    FieldFileError
        If the file cannot be read, or is a table of another form.
    FieldSheetError
        If cells cannot be read. The message tells all of them, each with row, column, what came and what to write.
    """
    return sheet_from_bytes(*bytes_of_sheet(path))


def sheet_from_bytes(name, raw):
    """Return the sheet in a file that came as bytes, such as by a button. See ``read_sheet``."""
    sheet, faults = sheet_of_rows(rows_of_sheet(name, raw))
    kind = None
    if "kind" in sheet.facts:
        try:
            sheet.facts["kind"] = kind = one_of("kind", sheet.facts["kind"], tuple(KINDS))
        except CellFault as fault:
            faults.append(Fault(sheet.rows["kind"], fault.column, str(fault)))
    if kind is not None:
        faults += _of_another_kind(sheet, KINDS[kind])
    raise_faults(sheet, faults)
    return sheet


def _of_another_kind(sheet, kind):
    """Return the faults of a sheet whose readings are of other lifts than its kind."""
    found = []
    for reading in sheet.readings:
        words, has = BELONGS[VOCABULARY[reading.name].taken.of]
        if not has(kind):
            what = f"{words_of(reading.name)} is a reading of {words}, and a {kind.name} has none"
            found.append(Fault(reading.row, "quantity", f"{what}. Take the row out, or mend the kind."))
    return found


def what_a_sheet_may_hold():
    """Return a table of all that the sheet of a lift may hold: facts first, then readings."""
    rows = [(VOCABULARY[name].words, " or ".join(VOCABULARY[name].among) or "text", "", "once", "") for name in FACTS]
    for name in ON_A_SHEET[len(FACTS) :]:
        word = VOCABULARY[name]
        taken, unit = word.taken, word.unit
        units = taken.units.replace("  ", ", ") or ("number" if unit == "" else unit_word(unit))
        percent = "percent" if taken.units == "%" else unit
        low, high = (show(Q(end, unit), percent) for end in (taken.least, taken.most))
        who = "; ".join(WHO[each] for each in taken.who)
        rows.append((word.words, units, f"{low} to {high}", BELONGS[taken.of][0], who))
    columns = ("quantity", "unit or words", "believed from and to", "of which lifts", "who may take it")
    return Table("What the sheet of one lift line may hold", columns, rows)
