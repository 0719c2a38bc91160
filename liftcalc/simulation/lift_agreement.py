"""One quantity of a lift by all the files that tell it: the line speed, the ridden length; and whether they agree."""

import math
from dataclasses import dataclass, replace

from liftcalc.fieldwork.geodesy import slope_from_map
from liftcalc.fieldwork.lap_times import ONE_LAP_DOUBT, lap_times_from_text, line_speed_from_laps
from liftcalc.fieldwork.safe_files import decode_table
from liftcalc.lifts.kinds import NOT_READ, kind_named
from liftcalc.lifts.sheet_words import listed
from liftcalc.quantity_text import show
from liftcalc.tables import Table, TableAndLines
from liftcalc.uncertainty import Estimate, combine, effective_degrees_of_freedom, expand
from liftcalc.units import PlainError, Q

BY_SHEET, BY_TRACK, BY_LAPS, BY_MAP = "sheet", "track", "laps", "map line"


@dataclass(frozen=True)
class Agreement:
    """One quantity by several ways, and whether they agree.

    Parameters
    ----------
    quantity : str
        Such as "line speed".
    methods : tuple of Estimate
        Each with the name of its way as its method.
    lines : tuple of str
        What else is to be said, such as why a way is not among them.
    """

    quantity: str
    methods: tuple
    lines: tuple

    @property
    def combined(self):
        """All of them together; refuses what has but one way."""
        if len(self.methods) < 2:
            alone = (
                f"One reading of the {self.quantity} alone, by the {self.methods[0].method}"
                if self.methods
                else (f"No reading of the {self.quantity} that says how far it may be off")
            )
            raise PlainError(" ".join([f"{alone}: nothing is there to hold it against.", *self.lines]))
        return combine(self.methods)

    def in_short(self):
        """Return whether the ways agree, in one sentence; none where there is but one way."""
        if len(self.methods) < 2:
            return []
        found = self.combined
        ways = listed([each.method for each in self.methods])
        if found.agrees:
            return [f"The {self.quantity}: {ways} agree, {expand(found.estimate).short} together."]
        odd = f", and the {found.odd_one} is the odd one" if found.odd_one else ""
        return [f"The {self.quantity}: {ways} do not agree{odd}."]

    def table(self):
        """Return the table of the ways, with the verdict below it."""
        found = self.combined
        rows = [(f"by the {each.method}", expand(each).short) for each in self.methods]
        rows.append(("all together", expand(found.estimate).short))
        caption = f"The {self.quantity} by {len(self.methods)} ways, each with its plus-minus (95 %)"
        return TableAndLines(Table(caption, ("way", self.quantity), rows), found.sentence, *self.lines)


def _by_sheet(read, name):
    """Return what the sheet says of a quantity, as an estimate; and a sentence where it cannot be weighed."""
    if not read.has("sheet"):
        return [], [read.without_it("sheet")]
    if not read.sheet.has(name):
        return [], []
    found = read.sheet.estimate(name)
    if found is None:
        value = show(read.sheet.mean(name))
        return [], [f"The sheet says {value}, without plus-minus or repeats: it cannot be weighed against the others."]
    return [Estimate(found.value, found.standard_uncertainty, found.degrees_of_freedom, BY_SHEET, found.shape)], []


def _rise(read):
    """Return the vertical rise of the sheet; None where nobody read it."""
    return read.sheet.mean("vertical_rise") if read.has("sheet") and read.sheet.has("vertical_rise") else None


def speeds(read):
    """Return the line speed by the sheet, by the track and by the laps, as far as they came.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Agreement
    """
    methods, lines = _by_sheet(read, "line_speed")
    if read.has("track"):
        found = read.made("track").reading(_rise(read))
        methods.append(Estimate(found.speed, found.speed_uncertainty, method=BY_TRACK))
        if found.along == "the plan":
            lines.append("The track holds no height and the sheet no rise: its speed is that on the plan, too low.")
    if read.has("laps"):
        more, words = _by_laps(read)
        methods, lines = methods + more, lines + words
    lines += [read.without_it(sort) for sort in ("track", "laps") if not read.has(sort)]
    return Agreement("line speed", tuple(methods), tuple(lines))


def without_the_odd(file):
    """Return the laps of a file without those that stand apart and have a note that says why, and their names."""
    laps = file.made
    notes = dict(zip(laps.laps, laps.notes_of_laps, strict=True))
    odd = [lap for lap in laps.far_laps if notes[lap]]
    if not odd or len(odd) == len(laps.laps):
        return laps, []
    return lap_times_from_text(file.name, decode_table(file.name, file.raw, "lap times")[0], without=odd), odd


def _by_laps(read):
    """Return the line speed by laps and length as an estimate, and what is to be said of it."""
    if not read.has("sheet"):
        return [], []
    if not read.sheet.has("ridden_length"):
        return [], ["Laps give a line speed only with the ridden length of a sheet."]
    sheet, kind = read.sheet, kind_named(read.sheet.kind or NOT_READ)
    if kind.reversible or kind.detachable:
        return [], [f"On a {kind.name} the ride has its stations in it: laps give no line speed."]
    start = kind.start_reading
    if start and not sheet.has(start):
        return [], ["Laps give no line speed without the pick-up acceleration: riders start from rest."]
    laps, odd = without_the_odd(read.came["laps"])
    laps = replace(laps, mean_uncertainty=max(laps.mean_uncertainty, Q(ONE_LAP_DOUBT, "s") / math.sqrt(len(laps.laps))))
    length, pick_up = sheet.estimate("ridden_length"), sheet.estimate(start) if start else None
    ride = {"ridden_length": sheet.mean("ridden_length"), "pick_up_acceleration": sheet.mean(start) if start else None}
    _, by_time = line_speed_from_laps(laps, **ride)
    speed, doubt = line_speed_from_laps(
        laps,
        **ride,
        ridden_length_uncertainty=length and length.standard_uncertainty,
        pick_up_acceleration_uncertainty=pick_up and pick_up.standard_uncertainty,
    )
    rest = math.sqrt(max(doubt.magnitude**2 - by_time.magnitude**2, 0.0))
    freedom = effective_degrees_of_freedom([by_time.magnitude, rest], [laps.degrees_of_freedom or math.inf, math.inf])
    words = [f"Left out of the laps for its note: lap {lap}." for lap in odd]
    return [Estimate(speed, doubt, freedom, BY_LAPS, "normal" if math.isinf(freedom) else "t")], words


def lengths(read):
    """Return the ridden length by the sheet, by the track and by the map line, as far as they came.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Agreement
    """
    methods, lines = _by_sheet(read, "ridden_length")
    rise = _rise(read)
    if read.has("track"):
        found = read.made("track").reading(rise)
        if found.along == "the slope":
            methods.append(Estimate(found.ridden_length, found.ridden_length_uncertainty, method=BY_TRACK))
    if read.has("map line"):
        more, words = _by_map_line(read.made("map line"), rise, methods)
        methods, lines = methods + more, lines + words
    lines += [read.without_it(sort) for sort in ("map line",) if not read.has(sort)]
    return Agreement("ridden length", tuple(methods), tuple(lines))


def _by_map_line(line, rise, others):
    """Return the length of a map line along the slope as an estimate, and what is to be said of it."""
    if rise is None and line.slope_length is None:
        return [], ["The map line has no length along the slope without a vertical rise, on the sheet or in its file."]
    along, doubt = line.slope_length, line.slope_length_uncertainty
    if rise is not None:
        along, doubt = slope_from_map(
            map_length=line.map_length, vertical_rise=rise, map_length_uncertainty=line.map_length_uncertainty
        )
    words = []
    if others and along - others[0].value > 2 * doubt:
        more = show(along - others[0].value)
        words.append(
            f"The map line is {more} longer than by the {others[0].method}. Drawn from sheave to sheave it is another "
            "length than the ride, and both can be right: the ride is from grab to let-go, or from board to board."
        )
    return [Estimate(along, doubt, method=BY_MAP)], words
