"""A hill: a folder of sheets, one for each line of its lifts. What cannot be taken is named and left out."""

import re
from dataclasses import dataclass, field
from pathlib import Path

from liftcalc.fieldwork.safe_files import FieldFileError, read_bytes
from liftcalc.lifts.installation import Installation
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.lifts.sheet_line import sheet_line, sheet_readings
from liftcalc.quantity_text import as_received
from liftcalc.tables import Table
from liftcalc.units import PlainError

MOST_SHEETS = 2_000
MOST_TOLD = 3  # files that were left out, in a message
A_BLANK = "a blank: nothing is filled in."


@dataclass(frozen=True)
class Hill:
    """The lifts of a hill, by their sheets.

    Parameters
    ----------
    lifts : dict of str to Installation
        Installations by name, in the order of the sheets.
    readings : dict of str to dict
        Readings of each line by its name, as ``known_values`` takes them.
    sheets : dict of str to FieldSheet
        The sheet of each line by its name.
    left_out : tuple of (str, str)
        Files that were not taken, each with the reason.
    """

    lifts: dict
    readings: dict
    sheets: dict = field(default_factory=dict)
    left_out: tuple = ()

    @property
    def lines(self):
        """All lines by name, in the order of the sheets."""
        return {line.name: line for lift in self.lifts.values() for line in lift.lines}

    def line(self, name):
        """Return a line and its readings, by the name of the line."""
        if name not in self.lines:
            raise PlainError(f"Hill: {self.no_line(name)}")
        return self.lines[name], self.readings.get(name, {})

    def no_line(self, name):
        """Say that a line is not there, which are, and which files were left out: it may stand in one of these."""
        called = _plain(name)
        told = sorted(self.left_out, key=lambda each: (each[1] == A_BLANK, called not in _plain(each[0])))
        words = [f"{file} was left out: {why}" for file, why in told[:MOST_TOLD]]
        more = len(told) - len(words)
        if more:
            words.append(f"And {more:,} more {'was' if more == 1 else 'were'} left out.")
        return " ".join([f"there is no line {name!r}. Write one of {', '.join(self.lines)}.", *words])

    def with_(self, other):
        """Return this hill with the lines of another one behind its own; a line of the same name is replaced by it."""
        kept = [sheet for name, sheet in self.sheets.items() if name not in other.sheets]
        hill = _hill_of([*kept, *other.sheets.values()], [])
        told = {*(sheet.name for sheet in other.sheets.values()), *(name for name, _ in other.left_out)}
        left_out = [(name, why) for name, why in self.left_out if name not in told]
        return Hill(hill.lifts, hill.readings, hill.sheets, (*left_out, *hill.left_out, *other.left_out))

    def left_out_table(self):
        """Return a table of the files that were not taken, and why."""
        return Table("Files that were left out", ("file", "why"), list(self.left_out) or [("none", "")])


def _plain(name):
    """Return the name of a line, or of the file with its sheet, without what tells the two apart."""
    return " ".join(str(name).casefold().replace("_", " ").replace("-", " ").split())


def _in_order(path):
    """Return what file names are sorted by: numbers as numbers, letters without their size."""
    parts = re.split(r"([0-9]+)", path.name)  # every second one is a number
    return [int(part) if place % 2 else part.casefold() for place, part in enumerate(parts)]


def read_hill(folder):
    """Read a folder of sheets, one for each line of a lift. The files are only read, never written.

    Parameters
    ----------
    folder : str or Path
        A folder with one CSV file a line, as ``read_sheet`` reads them. They are taken in the order of their names,
        numbers as numbers. Lines whose sheets name one lift are run as one. Other files and folders are passed over.

    Returns
    -------
    Hill
        A sheet that cannot be read, that tells of a line that came before, or from which no line follows, and a table
        of another form stand in ``left_out``, each with its reason.

    Raises
    ------
    FieldFileError
        If it is no folder, holds no CSV file or too many, or not one of them can be taken.
    """
    if not isinstance(folder, (str, Path)):
        raise FieldFileError(f"The folder must be a text, but got {as_received(folder)}. Write 'my_hill'.")
    folder = Path(folder)
    name = folder.name or str(folder)
    try:
        if folder.exists() and not folder.is_dir():
            raise FieldFileError(f"{name}: this is no folder. Name the folder that holds the sheets of the hill.")
        paths = sorted(
            (
                path
                for path in folder.iterdir()
                if path.suffix.lower() == ".csv" and not path.name.startswith((".", "~"))
            ),
            key=_in_order,
        )
    except (OSError, ValueError) as error:
        if isinstance(error, FieldFileError):
            raise
        reason = getattr(error, "strerror", None) or "the name cannot be one of a folder"
        raise FieldFileError(f"{name}: the folder cannot be opened ({reason}). Check the name.") from None
    if not paths:
        raise FieldFileError(f"{name}: no sheet lies in this folder. Save the sheet of each line in it, as CSV.")
    if len(paths) > MOST_SHEETS:
        raise FieldFileError(f"{name}: {len(paths):,} CSV files lie in this folder, and {MOST_SHEETS:,} are the most.")
    return _all_that_can_be_read(
        name, [(path.name, lambda path=path: read_bytes(path, (".csv",), "a sheet")[1]) for path in paths]
    )


def hill_from_bytes(files):
    """Return the hill of several files that came as names and bytes, such as by a button. See ``read_hill``.

    Of one file alone what is wrong with it is raised as it is, each fault on a line of its own.
    """
    if len(files) == 1:
        sheet_line(sheet_from_bytes(*files[0]))
    return _all_that_can_be_read("These files", [(name, lambda raw=raw: raw) for name, raw in files])


def _all_that_can_be_read(name, files):
    """Return the hill of files, each a name and a function that returns its bytes."""
    sheets, left_out = [], []
    for file, read in files:
        try:
            sheet = sheet_from_bytes(file, read())
        except PlainError as error:
            left_out.append((file, _without_name(error, file)))
            continue
        if sheet.facts or sheet.readings:
            sheets.append(sheet)
        else:
            left_out.append((file, A_BLANK))
    hill = _hill_of(sheets, left_out)
    if not hill.lifts:
        reasons = " ".join(f"{file}: {why}" for file, why in hill.left_out[:MOST_TOLD])
        more = f" And {len(hill.left_out) - MOST_TOLD} more." if len(hill.left_out) > MOST_TOLD else ""
        raise FieldFileError(f"{name}: no line of a lift can be taken. {reasons}{more}".rstrip())
    return hill


def _without_name(error, file):
    """Return the words of an error without the name of the file before them, on one line."""
    words = " ".join(str(error).split())
    return words.removeprefix(f"{file}: ").removeprefix(f"{file}, ")


def _hill_of(sheets, left_out):
    """Return the hill of sheets that were read; what makes no line of its own is left out."""
    left_out, lines, taken = list(left_out), {}, {}
    for sheet in sheets:
        try:
            line = sheet_line(sheet)
        except PlainError as error:
            left_out.append((sheet.name, _without_name(error, sheet.name)))
            continue
        if line.name in taken:
            left_out.append((sheet.name, f"it tells of the line {line.name}, as {taken[line.name].name} does."))
            continue
        others = lines.setdefault(sheet.lift, [])
        if others and others[0].level != line.level:
            left_out.append(
                (sheet.name, f"its spacing is {line.level}, but the lift {sheet.lift} has lines at {others[0].level}.")
            )
            continue
        others.append(line)
        taken[line.name] = sheet
    lifts = {name: Installation(name, tuple(group)) for name, group in lines.items()}
    return Hill(lifts, {name: sheet_readings(sheet) for name, sheet in taken.items()}, taken, tuple(left_out))
