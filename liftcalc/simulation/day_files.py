"""A day from the files of one lift: its sheet, its riders, the rest of the day and, where there is one, a count."""

from dataclasses import dataclass

from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.minute_counts import MinuteCounts, counts_from_bytes
from liftcalc.fieldwork.safe_files import FieldFileError, read_bytes
from liftcalc.fieldwork.sheet import FieldSheet
from liftcalc.lifts.line import Line
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.lifts.sheet_line import sheet_line, sheet_readings
from liftcalc.simulation.day_tables import (
    DayTables,
    classes_from_bytes,
    counts_on,
    is_of_a_day,
    loading_day,
    rest_from_bytes,
)

SORTS = {"sheet": "the sheet of the lift", "classes": "the classes of riders", "day": "the rest of the day",
         "count": "a count minute by minute"}  # fmt: skip
NEEDED = ("sheet", "classes", "day")
_HEADINGS = {"classes": ("class", "share"), "count": ("from", "minutes", "persons"), "sheet": ("quantity", "value")}


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
        return loading_day(self.line, self.tables)


def sort_of(name, raw):
    """Return what a file of a day is, by its heading: sheet, classes, day or count.

    Raises
    ------
    FieldFileError
        If it is none of them.
    """
    found = rows_from_bytes(name, raw, (), "a file of a day")
    for sort, columns in _HEADINGS.items():
        if all(column in found.columns for column in columns):
            if sort == "sheet" and any(is_of_a_day(row.cells["quantity"]) for row in found.rows):
                return "day"
            return sort
    forms = "; ".join(f"{SORTS[sort]}: {','.join(columns)},..." for sort, columns in _HEADINGS.items())
    raise FieldFileError(f"{name}, row {found.heading}: no heading of a file of a day. Write one of: {forms}")


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
        If the lift is of a kind without such a day.
    """
    sheet = sheet_from_bytes(*files["sheet"])
    line = sheet_line(sheet)
    tables = DayTables(classes_from_bytes(*files["classes"]), rest_from_bytes(*files["day"]))
    counts = counts_on(line, counts_from_bytes(*files["count"])) if "count" in files else None
    found = DayRead(sheet, line, sheet_readings(sheet), tables, counts)
    loading_day(line, tables)  # refuses a lift that has no such day
    return found


def read_day_files(sheet, classes, day, count=None):
    """Read a day from the files of one lift. The files are only read, never written.

    Parameters
    ----------
    sheet, classes, day : str or Path
        CSV files, as for ``read_sheet`` and ``read_day``.
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
    paths = {"sheet": sheet, "classes": classes, "day": day, **({"count": count} if count else {})}
    return day_from_bytes({sort: read_bytes(path, (".csv",), SORTS[sort]) for sort, path in paths.items()})
