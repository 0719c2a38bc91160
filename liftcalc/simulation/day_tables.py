"""A day at the loading point from two small tables: the classes of riders, a row each, and the rest of the day."""

from dataclasses import dataclass, replace

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.fieldwork.cells import CellFault, is_empty, read_fact, read_value
from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.faults import Fault, FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError, quoted, read_bytes
from liftcalc.fieldwork.sheet import COLUMNS as SHEET_COLUMNS
from liftcalc.lifts.kinds import kind_named
from liftcalc.simulation.crowd_rows import NEEDS_OF_A_CROWD, OF_A_CROWD, crowd_of, row_word, without_crowd
from liftcalc.simulation.loading_day import LoadingDay, RiderClass
from liftcalc.units import PlainError

CLASS_COLUMNS = ("class", "share", "mean_readiness", "cv", "misses", "falls")
ADD_UP = 0.005  # by which shares may miss one, as written in whole per cent


# what a cell of a class may be
_OF_A_CLASS = {
    "share": row_word("share", "", "part of the riders, counted by rider", 0.001, 1),
    "mean_readiness": row_word("mean readiness", "s", "mean time with the place free, misses left out", 0.2, 120),
    "cv": row_word("cv", "", "standard deviation of that time over its mean", 0, 3),
    "misses": row_word("misses", "", "share of attempts that fail", 0, 0.9),
    "falls": row_word("falls", "", "share of rides with a fall on the way", 0, 0.5),
}
# what else the day is like, by the names of ``LoadingDay``
OF_A_DAY = {
    "hours": row_word("hours open", "s", "how long the lift is open", 600, 24 * SECONDS_PER_HOUR),
    "stops_an_hour": row_word("stops an hour", "", "stops beside those of falls, for each hour of running", 0, 60),
    "stop_time": row_word("stop time", "s", "mean time of a stop", 0, SECONDS_PER_HOUR),
    "stop_variation": row_word("variation of stop times", "", "standard deviation over mean", 0, 3),
    "falls_that_stop": row_word("falls that stop", "", "share of the falls that stop the rope", 0, 1),
    "slow_downs_an_hour": row_word("slow-downs an hour", "", "for each hour of running", 0, 60),
    "slow_time": row_word("slow-down time", "s", "how long a slow-down lasts", 0, SECONDS_PER_HOUR),
    "slow_speed": row_word("slow-down speed", "", "speed meanwhile, as a part of the usual one", 0.05, 1),
    **OF_A_CROWD,
}


@dataclass(frozen=True)
class DayTables:
    """What two tables say of a day.

    Parameters
    ----------
    classes : tuple of RiderClass
        The classes of riders, their shares adding up to 1.
    rest : dict
        Arguments of ``LoadingDay`` beside classes, floor and ride time, or of ``CarrierDay``, and rows of the crowd;
        what was not read is not there, and is none.
    parties : dict of int to float or None
        Share of each size of party, where carriers come by the clock.
    """

    classes: tuple
    rest: dict
    parties: dict | None = None

    @property
    def crowd(self):
        """What the day says of its crowd: arguments of the simulated days with arrivals. See ``crowd_of``."""
        return crowd_of(self.rest)


def read_day(classes, rest):
    """Read a day from its two tables. The files are only read, never written.

    Parameters
    ----------
    classes : str or Path
        A CSV file with the columns class, share, mean_readiness, cv, misses and falls; a row a class.
    rest : str or Path
        A CSV file with the columns of a sheet; its quantities are hours open, stops an hour, stop time, variation of
        stop times, falls that stop, slow-downs an hour, slow-down time and slow-down speed; and of the crowd most in
        line, closing, shut from and until, post empty from, until and slower, other staff from, slower and misses.

    Returns
    -------
    DayTables

    Raises
    ------
    FieldFileError
        If a file cannot be read, or holds no class.
    FieldSheetError
        If cells cannot be read, or the shares do not add up to 1; all of it is told at once.
    """
    return DayTables(
        classes_from_bytes(*read_bytes(classes, (".csv",), "a table of rider classes")),
        rest_from_bytes(*read_bytes(rest, (".csv",), "a day")),
    )


def classes_from_bytes(name, raw):
    """Return the classes of riders in a file that came as bytes. See ``read_day``."""
    table = rows_from_bytes(name, raw, CLASS_COLUMNS, "a table of rider classes")
    faults, found = [], []
    for row in table.rows:
        numbers = {}
        for column, word in _OF_A_CLASS.items():
            cells = {"value": row.cells[column], "unit": "", "plus_minus": ""}
            if column == "mean_readiness" and cells["value"].replace(".", "").replace(",", "").isdigit():
                cells["unit"] = "s"  # the heading says what the number is
            try:
                if is_empty(cells["value"]):
                    raise CellFault(
                        column, f"{word.words} of {quoted(row.cells['class'])} is missing. Write {word.meaning}."
                    )
                numbers[column] = read_value(word, cells, table.decimal_comma)[0].m_as(word.unit)
            except CellFault as fault:
                faults.append(Fault(row.number, column, str(fault)))
        if not row.cells["class"]:
            faults.append(Fault(row.number, "class", "the class has no name. Write one, such as learner."))
        if len(numbers) == len(_OF_A_CLASS):
            share, readiness, variation, misses, falls = numbers.values()
            found.append(RiderClass(row.cells["class"], share, readiness, variation, misses, falls))
    total = sum(each.share for each in found)
    if found and not faults and abs(total - 1) > ADD_UP:
        words = f"the shares of all classes add up to {100 * total:.4g} %, not to 100 %. Mend one of them."
        faults.append(Fault(table.rows[-1].number, "share", words))
    if faults:
        raise FieldSheetError(name, faults)
    if not found:
        raise FieldFileError(f"{name}: no class of riders. Write a row such as: learner,30 %,3.6 s,0.4,6 %,1 %")
    return tuple(replace(each, share=each.share / total) for each in found)


def rest_from_bytes(name, raw):
    """Return what else a day is like, from a file that came as bytes. See ``read_day``."""
    return rows_of_a_day(name, raw, OF_A_DAY, NEEDS)


def rows_of_a_day(name, raw, words, needs):
    """Return the rows of a day by name, from a file that came as bytes.

    Parameters
    ----------
    name, raw : str, bytes
        The file.
    words : dict of str to Word
        What may stand there.
    needs : dict of str to tuple of str
        For a row that is there and not zero, what it cannot do without.
    """
    table = rows_from_bytes(name, raw, SHEET_COLUMNS[:3], "a day", SHEET_COLUMNS)
    faults, found, places = [], {}, {}
    for row in table.rows:
        cells = {column: row.cells.get(column, "") for column in SHEET_COLUMNS}
        quantity = named_in(words, cells["quantity"])
        try:
            if quantity is None:
                may_be = ", ".join(each.words for each in words.values())
                raise CellFault("quantity", f"{quoted(cells['quantity'])} is nothing of a day. Write one of {may_be}.")
            if is_empty(cells["value"]):
                continue
            what = words[quantity]
            if quantity in found:
                raise CellFault(
                    "quantity", f"{what.words} came before, in row {places[quantity]}. Keep one of the two."
                )
            places[quantity] = row.number
            if what.unit is None:
                found[quantity] = read_fact(what, cells["value"])
            else:
                found[quantity] = read_value(what, cells, table.decimal_comma)[0].m_as(what.unit)
        except CellFault as fault:
            faults.append(Fault(row.number, fault.column, str(fault)))
    if faults:
        raise FieldSheetError(name, faults)
    for has, wanted in needs.items():
        there = has in found if has in OF_A_CROWD else found.get(has, has == "hours")
        lacks = [words[need].words for need in wanted if need not in found] if there else []
        if lacks:
            raise FieldFileError(
                f"{name}: {' and '.join(lacks)} not read. Add a row of each; nothing is put in its place."
            )
    found["hours"] /= SECONDS_PER_HOUR
    return found


def named_in(words, written):
    """Return which of these words of a day is written here; None for none."""
    plainly = " ".join(written.casefold().replace("-", " ").replace("_", " ").split())
    return next((name for name, each in words.items() if each.words.replace("-", " ") == plainly), None)


NEEDS = {  # a quantity, where it is there and not zero: what it cannot do without
    "hours": ("hours",),
    "stops_an_hour": ("stop_time",),
    "falls_that_stop": ("stop_time",),
    "slow_downs_an_hour": ("slow_time", "slow_speed"),
    **NEEDS_OF_A_CROWD,
}


def loading_day(line, tables):
    """Return the day at the loading point of a line.

    Parameters
    ----------
    line : Line
        A line whose riders take hold, or step on, at any time.
    tables : DayTables
        As ``read_day`` returns it.

    Returns
    -------
    LoadingDay
        With the headway of the intended spacing as the floor of the starts, and the ride time of the line. Where riders
        let go when the lift stops, a stop empties it.

    Raises
    ------
    PlainError
        If carriers come to the riders by a clock of their own.
    """
    kind = kind_named(line.kind)
    if kind.has_carriers:
        raise PlainError(
            f"loading_day: {line.name} is a {line.kind}, whose carriers come by a clock of their own. Give a line "
            "that is grabbed, or stepped on, at any time."
        )
    floor, ride_time = line.interval.m_as("s"), line.ride_time.m_as("s")
    empties = kind.held_by_hand
    return LoadingDay(tables.classes, floor, ride_time, empties=empties, **without_crowd(tables.rest))


def counts_on(line, counts):
    """Return a count with the clean rows of that line: where a stop empties it, none before it is full again.

    Parameters
    ----------
    line : Line
        The line that was counted.
    counts : MinuteCounts
        As ``read_counts`` returns it.

    Returns
    -------
    MinuteCounts
    """
    return counts.after_stops(line.ride_time) if kind_named(line.kind).held_by_hand else counts
