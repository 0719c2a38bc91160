"""All that a reader brings of one lift, told apart by what is in each file, judged as it comes, and never mixed.

Only the sheet names its lift. So whatever else came is of the lift whose sheet came first; a sheet of another lift is
the second one, to be compared.
"""

import re
from dataclasses import dataclass, field, replace
from pathlib import Path

from liftcalc.fieldwork.csv_rows import rows_from_bytes, rows_from_text
from liftcalc.fieldwork.lap_times import lap_times_from_text
from liftcalc.fieldwork.map_lines import map_line_from_text
from liftcalc.fieldwork.minute_counts import counts_from_bytes
from liftcalc.fieldwork.safe_files import FieldFileError, decode, decode_table, quoted, read_bytes
from liftcalc.fieldwork.steady_part import find_steady_parts
from liftcalc.fieldwork.track_files import track_from_text
from liftcalc.fieldwork.track_speed import read_track_speed
from liftcalc.lifts.hill import A_BLANK
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.lifts.sheet_line import sheet_line, sheet_readings
from liftcalc.simulation.carrier_tables import OF_CARRIERS, carrier_rest_from_bytes, day_of, parties_from_bytes
from liftcalc.simulation.day_files import day_from_bytes
from liftcalc.simulation.day_tables import OF_A_DAY, classes_from_bytes, counts_on, named_in, rest_from_bytes
from liftcalc.units import PlainError

MOST_FILES = 40
_MARKS = 4_000  # bytes in which a file of marks names what it is
_BESIDE_DATA = ("readme", "license")  # what may lie in a folder and holds no reading


@dataclass(frozen=True)
class Sort:
    """What a file may be.

    Parameters
    ----------
    what : str
        Words for it.
    gives : str
        What it tells, and nothing else does.
    """

    what: str
    gives: str


SORTS = {
    "sheet": Sort("the sheet of the lift", "the limits, which of them governs, and the page for the wall"),
    "count": Sort("a count at the top", "whether people really got through, and how many"),
    "track": Sort("a track (GPX)", "the line speed once more, without a mark on the rope"),
    "laps": Sort("lap times", "the ride time, and the line speed once more"),
    "map line": Sort("a map line (KML or GeoJSON)", "the length once more, without a tape"),
    "riders": Sort("the table of riders", "what a working day leaves of the limit, together with the rest of the day"),
    "day": Sort("the rest of the day", "how much each cause takes, together with the table of riders"),
    "second": Sort("the sheet of a second lift", "two lifts side by side, like with like"),
}
OF_A_DAY_FILES = ("riders", "day")
_FORMS = (
    "a sheet: quantity,value,unit,...; a count: from,minutes,persons,...; lap times: lap,seconds,note; riders: "
    "class,share,... or party,share; the rest of the day: quantity,value,unit,..."
)


@dataclass(frozen=True, eq=False)
class Came:
    """One file: its name, its bytes, and what was made of it."""

    name: str
    raw: bytes
    made: object


@dataclass(frozen=True, eq=False)
class TrackOfRide:
    """A track with its steady parts, which are found once."""

    track: object
    parts: tuple

    def reading(self, vertical_rise=None):
        """Return line speed and length; the rise is taken where the track itself holds no heights."""
        own = read_track_speed(self.track, parts=self.parts)
        if own.lifted_by != "nothing" or vertical_rise is None:
            return own
        return read_track_speed(self.track, parts=self.parts, vertical_rise=vertical_rise)


def sort_of_file(name, raw):
    """Return what a file is, by what is in it: a key of ``SORTS``; any sheet is "sheet".

    Raises
    ------
    FieldFileError
        If it is none of them.
    """
    begins = raw[:_MARKS].decode("utf-16" if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8", "ignore")
    begins = begins.lstrip("\ufeff \t\r\n")
    if begins.startswith("<"):
        found = re.search(r"<(?:\w+:)?(gpx|kml)[\s>]", begins)
        if found:
            return {"gpx": "track", "kml": "map line"}[found[1]]
        raise FieldFileError(
            f"{name}: this is neither a track (GPX) nor a map line (KML). Export it as one of the two."
        )
    if begins.startswith("{"):
        return "map line"
    rows = rows_from_bytes(name, raw, (), "a file of a lift")
    if "quantity" in rows.columns and "value" in rows.columns:
        quantities = [row.cells["quantity"] for row in rows.rows]
        return "day" if any(named_in(OF_A_DAY | OF_CARRIERS, each) for each in quantities) else "sheet"
    if "share" in rows.columns and ("class" in rows.columns or "party" in rows.columns):
        return "riders"
    if "seconds" in rows.columns:
        return "laps"
    if "persons" in rows.columns and "from" in rows.columns:
        return "count"
    raise FieldFileError(
        f"{name}, row {rows.heading}: the heading {quoted(rows.written, 60)} is of no file that is read here. "
        f"Write one of: {_FORMS}"
    )


def _sheet(name, raw):
    sheet = sheet_from_bytes(name, raw)
    if not sheet.readings:
        raise FieldFileError(f"{name}: {A_BLANK if not sheet.facts else 'no reading stands in it.'}")
    return sheet


def _track(name, raw):
    track = track_from_text(name, decode(name, raw, "a track (GPX)"))
    found = TrackOfRide(track, find_steady_parts(track))
    found.reading()  # refuses a track without a ride
    return found


def _map_line(name, raw):
    return map_line_from_text(name, decode(name, raw, "a map line (KML or GeoJSON)"))


def _laps(name, raw):
    text, encoding = decode_table(name, raw, "lap times")
    rows_from_text(name, text, ("seconds",), encoding=encoding)
    return lap_times_from_text(name, text)


def _riders(name, raw):
    of_parties = "party" in rows_from_bytes(name, raw, (), "a table of riders").columns
    return (parties_from_bytes if of_parties else classes_from_bytes)(name, raw)


def _rest(name, raw):
    """Return the rest of a day; which lifts it fits shows when a sheet is there."""
    quantities = [row.cells["quantity"] for row in rows_from_bytes(name, raw, (), "a day").rows]
    of_carriers = any(named_in(OF_CARRIERS, each) and not named_in(OF_A_DAY, each) for each in quantities)
    return (carrier_rest_from_bytes if of_carriers else rest_from_bytes)(name, raw)


_READ = {
    "sheet": _sheet, "count": counts_from_bytes, "track": _track, "laps": _laps, "map line": _map_line,
    "riders": _riders, "day": _rest,
}  # fmt: skip


def _called(sheet):
    """Return the name of a lift as it is held against another one."""
    return " ".join(sheet.title.casefold().split())


@dataclass(frozen=True, eq=False)
class LiftFiles:
    """All files of one lift, and the sheet of a second one.

    Parameters
    ----------
    came : dict of str to Came
        Files that are in order, by their sort.
    left_out : tuple of (str, str)
        Files that are not, each with the reason.
    gone : tuple of str
        Names of the files that gave way to those that came last.
    of : str
        Name of the lift that the files are of; empty before its sheet came.
    """

    came: dict = field(default_factory=dict)
    left_out: tuple = ()
    gone: tuple = ()
    of: str = ""

    def with_(self, files):
        """Return these files with others: each is judged by itself, and the newer of a sort takes the older's place.

        A sheet of another lift that comes by itself is the second one. With other files it is a lift of its own, and
        all begins anew: a count of one lift is never held against another.

        Parameters
        ----------
        files : list of (str, bytes)
            Names and contents.
        """
        judged, faults = _judged(files)
        came = self._kept_beside(judged)
        gone = [file.name for file in self.came.values() if file not in came.values()]
        fresh, of = {}, self.of if came else ""
        for sort, file in judged:
            place = _place_of_sheet(came, file.made) if sort == "sheet" else sort
            if place in fresh:
                words = f"{fresh[place]} came with it, and both are {SORTS[place].what}. Bring one of the two."
                faults.append((file.name, f"{file.name}: {words}"))
                continue
            if place in came and came[place].name != file.name:
                gone.append(came[place].name)
            came[place], fresh[place] = file, file.name
            of = _called(file.made) if place == "sheet" else of
        names = {name for name, _ in files}  # a mended file is judged anew
        left_out = [each for each in self.left_out if each[0] not in names] + faults
        return LiftFiles({sort: came[sort] for sort in SORTS if sort in came}, tuple(left_out), tuple(gone), of)

    def _kept_beside(self, judged):
        """Return the files that stay beside those that come: none where these are of another lift."""
        called = [_called(file.made) for sort, file in judged if sort == "sheet"]
        alone = len(called) == len(judged)
        if not called or self.of in ("", *called) or (alone and self.has("sheet")):
            return dict(self.came)
        return {}

    def without(self, sort):
        """Return these files without one of them."""
        return replace(self, came={each: file for each, file in self.came.items() if each != sort}, gone=())

    def swapped(self):
        """Return the same with the two sheets in each other's place: then all other files are of the other lift."""
        if not self.has("sheet", "second"):
            return self
        places = {"sheet": "second", "second": "sheet"}
        came = {places.get(sort, sort): file for sort, file in self.came.items()}
        ordered = {sort: came[sort] for sort in SORTS if sort in came}
        return replace(self, came=ordered, gone=(), of=_called(came["sheet"].made))

    def has(self, *sorts):
        """Return whether there is a file of each of some sorts."""
        return all(sort in self.came for sort in sorts)

    def made(self, *sorts):
        """Return what was made of the file of one sort, or of several; say what is lacking and what it would tell."""
        lacking = [sort for sort in sorts if sort not in self.came]
        if lacking:
            raise PlainError(" ".join(map(self.without_it, lacking)))
        found = [self.came[sort].made for sort in sorts]
        return found[0] if len(found) == 1 else found

    @staticmethod
    def without_it(sort):
        """Say that a file of one sort did not come, and what it would tell."""
        what = SORTS[sort].what
        first = f"{what[0].upper()}{what[1:]}" if what.startswith("the ") else f"No {what.removeprefix('a ')}"
        came = " did not come" if what.startswith("the ") else " came"
        return f"{first}{came}. It would give {SORTS[sort].gives}."

    @property
    def sheet(self):
        """The sheet of the lift."""
        return self.made("sheet")

    @property
    def line(self):
        """The line that the sheet makes."""
        return sheet_line(self.sheet)

    @property
    def readings(self):
        """What the sheet holds beside the line."""
        return sheet_readings(self.sheet)

    @property
    def counts(self):
        """The count, with the clean rows of this line; None where nobody counted."""
        return counts_on(self.line, self.came["count"].made) if self.has("count") else None

    @property
    def day_read(self):
        """The lift and its day, as ``day_from_bytes`` reads them."""
        self.made("sheet", *OF_A_DAY_FILES)
        sorts = ("sheet", *OF_A_DAY_FILES, "count")
        return day_from_bytes({sort: (self.came[sort].name, self.came[sort].raw) for sort in sorts if self.has(sort)})

    @property
    def day(self):
        """The day at the loading point."""
        found = self.day_read
        return day_of(found.line, found.tables)


def _judged(files):
    """Return sort and content of the files that are in order, and the faults of the others by their names."""
    judged, faults = [], []
    for name, raw in files:
        try:
            sort = sort_of_file(name, raw)
            judged.append((sort, Came(name, raw, _READ[sort](name, raw))))
        except PlainError as error:
            faults.append((name, str(error)))
    return judged, faults


def _place_of_sheet(came, sheet):
    """Return where a sheet belongs: in the place of the one of its lift, else in the free one."""
    called = _called(sheet)
    for sort in ("sheet", "second"):
        if sort in came and _called(came[sort].made) == called:
            return sort
    return "second" if "sheet" in came else "sheet"


def read_lift_files(folder):
    """Read all files of one lift from a folder. They are only read, never written.

    Parameters
    ----------
    folder : str or Path
        A folder with the sheet of the lift and whatever else there is of it. Files are taken in the order of their
        names; hidden ones and folders in it are passed over.

    Returns
    -------
    LiftFiles
        What cannot be read stands in ``left_out``, each with its reason.

    Raises
    ------
    FieldFileError
        If it is no folder, or holds no file or too many.
    """
    if not isinstance(folder, (str, Path)):
        raise FieldFileError(f"The folder must be a text, but got {folder!r}. Write 'my_lift'.")
    folder = Path(folder)
    name = folder.name or str(folder)
    try:
        if folder.exists() and not folder.is_dir():
            raise FieldFileError(f"{name}: this is no folder. Put the files of the lift into one, and name that.")
        paths = sorted(
            (path for path in folder.iterdir() if path.is_file() and _may_be_one(path.name)),
            key=lambda path: path.name.casefold(),
        )
    except (OSError, ValueError) as error:
        if isinstance(error, FieldFileError):
            raise
        reason = getattr(error, "strerror", None) or "the name cannot be one of a folder"
        raise FieldFileError(f"{name}: the folder cannot be opened ({reason}). Check the name.") from None
    if not 0 < len(paths) <= MOST_FILES:
        many = f"{len(paths):,} files lie" if paths else "no file lies"
        raise FieldFileError(f"{name}: {many} in this folder. Put the files of one lift into it, {MOST_FILES} at most.")
    files, left_out = [], []
    for path in paths:
        try:
            files.append(read_bytes(path, (), "readings of a lift"))
        except PlainError as error:
            left_out.append((path.name, str(error)))
    found = LiftFiles().with_(files)
    return replace(found, left_out=(*left_out, *found.left_out))


def _may_be_one(name):
    """Return whether a file of a folder may hold readings."""
    return not name.startswith((".", "~")) and not name.casefold().startswith(_BESIDE_DATA)
