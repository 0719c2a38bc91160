"""A day from the files of one lift: its sheet, its riders, the rest of the day and, where there is one, a count."""

from dataclasses import dataclass

from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.minute_counts import MinuteCounts, counts_from_bytes
from liftcalc.fieldwork.safe_files import FieldFileError, read_bytes
from liftcalc.fieldwork.sheet import FieldSheet
from liftcalc.lifts.kinds import kind_named
from liftcalc.lifts.line import Line
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.lifts.sheet_line import sheet_line, sheet_readings
from liftcalc.simulation.carrier_tables import OF_CARRIERS, carrier_rest_from_bytes, day_of, parties_from_bytes
from liftcalc.simulation.day_tables import (
    OF_A_DAY,
    DayTables,
    classes_from_bytes,
    counts_on,
    named_in,
    rest_from_bytes,
)

SORTS = {"sheet": "the sheet of the lift", "riders": "the table of riders", "day": "the rest of the day",
         "count": "a count minute by minute"}  # fmt: skip
NEEDED = ("sheet", "riders", "day")
_HEADINGS = (
    ("riders", ("class", "share"), "riders of a tow or a belt"),
    ("riders", ("party", "share"), "riders of a lift with carriers"),
    ("count", ("from", "minutes", "persons"), SORTS["count"]),
    ("sheet", ("quantity", "value"), "the sheet of the lift, or the rest of the day"),
)


@dataclass(frozen=True)
class DayRead:
    """One lift and one day on it, as they were read.

    Parameters
    ----------
    sheet : FieldSheet
        The sheet of the lift.
    line, readings : Line, mapping of str to Quantity
        What the sheet makes of it.
    tables : DayTables
        The day.
    counts : MinuteCounts or None
        The count; None where there is none.
    """

    sheet: FieldSheet
    line: Line
    readings: dict
    tables: DayTables
    counts: MinuteCounts | None = None

    @property
    def day(self):
        """The day at the loading point of the line."""
        return day_of(self.line, self.tables)


def sort_of(name, raw):
    """Return what a file of a day is, by its heading: sheet, riders, day or count.

    Raises
    ------
    FieldFileError
        If it is none of them.
    """
    found = rows_from_bytes(name, raw, (), "a file of a day")
    for sort, columns, _ in _HEADINGS:
        if all(column in found.columns for column in columns):
            quantities = [row.cells["quantity"] for row in found.rows] if sort == "sheet" else []
            return "day" if any(named_in(OF_A_DAY | OF_CARRIERS, each) for each in quantities) else sort
    forms = "; ".join(f"{what}: {','.join(columns)},..." for _, columns, what in _HEADINGS)
    raise FieldFileError(f"{name}, row {found.heading}: no heading of a file of a day. Write one of: {forms}")


def check_alone(sort, name, raw):
    """Refuse a file that cannot be read by itself; whether it fits the other files shows when all of them are there."""
    if sort == "sheet":
        sheet_from_bytes(name, raw)
    elif sort == "count":
        counts_from_bytes(name, raw)
    elif sort == "riders":
        of_parties = "party" in rows_from_bytes(name, raw, (), "a table of riders").columns
        (parties_from_bytes if of_parties else classes_from_bytes)(name, raw)


def day_from_bytes(files):
    """Return a day from files that came as bytes.

    Parameters
    ----------
    files : dict of str to (str, bytes)
        Name and content of each file, by its sort; a count may be left out.

    Returns
    -------
    DayRead

    Raises
    ------
    FieldFileError, FieldSheetError
        If a file cannot be read; see ``read_sheet``, ``read_day`` and ``read_counts``.
    PlainError
        If the day does not fit the lift.
    """
    sheet = sheet_from_bytes(*files["sheet"])
    line = sheet_line(sheet)
    tables = _tables(kind_named(line.kind).has_carriers, files)
    counts = counts_on(line, counts_from_bytes(*files["count"])) if "count" in files else None
    found = DayRead(sheet, line, sheet_readings(sheet), tables, counts)
    day_of(line, tables)  # refuses what makes no day of this lift
    return found


def _tables(has_carriers, files):
    """Return the tables of a day: of parties where carriers come by the clock, else of classes of riders."""
    if has_carriers:
        return DayTables((), carrier_rest_from_bytes(*files["day"]), parties_from_bytes(*files["riders"]))
    return DayTables(classes_from_bytes(*files["riders"]), rest_from_bytes(*files["day"]))


def read_day_files(sheet, riders, day, count=None):
    """Read a day from the files of one lift. The files are only read, never written.

    Parameters
    ----------
    sheet, riders, day : str or Path
        CSV files, as for ``read_sheet``, and ``read_day`` or, for a lift with carriers, ``read_carrier_day``.
    count : str, Path or None
        As for ``read_counts``; None where nobody has counted.

    Returns
    -------
    DayRead

    Raises
    ------
    FieldFileError, FieldSheetError, PlainError
        As for ``day_from_bytes``.
    """
    paths = {"sheet": sheet, "riders": riders, "day": day, **({"count": count} if count else {})}
    return day_from_bytes({sort: read_bytes(path, (".csv",), SORTS[sort]) for sort, path in paths.items()})
