"""What the files of one lift say together: what came, whether they agree, and what they make of the lift."""

import functools

from liftcalc.fieldwork.count_words import count_table, how_long_to_count
from liftcalc.formulas.capacity import hourly_flow_from_count
from liftcalc.levels import Capacity, compare
from liftcalc.lifts.limit_records import LeftOut
from liftcalc.lifts.sheet_limits import sheet_limits
from liftcalc.lifts.sheet_words import capacity_of, listed, to_look_at
from liftcalc.quantity_text import show
from liftcalc.simulation.day_words import DAYS, SEED
from liftcalc.simulation.lift_agreement import lengths, speeds
from liftcalc.simulation.lift_files import OF_A_DAY_FILES, SORTS
from liftcalc.simulation.many_days import simulate_days
from liftcalc.tables import Lines, Table, TableAndLines
from liftcalc.units import PlainError, Q

MOST_REMARKS = 12
NOBODY_WAITED = {"no": "; nobody waited, so that is who came", None: "; whether people waited is not said"}
CLOSE = 0.05  # share of the draws from which on a limit is said to be close behind


def what_came(read):
    """Return a table of the files of a lift: what each holds; and of what did not come, what it would give.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Table
    """
    rows = []
    for sort, (what, gives) in ((sort, (each.what, each.gives)) for sort, each in SORTS.items()):
        if read.has(sort):
            rows.append((what, read.came[sort].name, _HOLDS[sort](read.made(sort))))
        else:
            rows.append((what, "not there", f"It would give {gives}."))
    return Table("What came", ("what", "file", "what it holds"), rows)


def _of_sheet(sheet):
    kind = f"a {sheet.kind}" if sheet.kind else "its kind not read"
    return f"{sheet.title}, {kind}: {len(sheet.readings)} readings"


def _of_count(counts):
    persons, time = counts.total(counts.rows)
    touched = sum(bool(row.stop_seconds) for row in counts.rows)
    stops = f"a stop in {touched} of {len(counts.rows)} rows" if counts.stops_told else "no stop was written down"
    return f"{show(persons)} in {show(time, 'minute')}, {stops}"


def _of_track(track):
    found = track.reading()
    return f"a ride of {show(found.ridden_length)} at {show(found.speed)}, along {found.along}"


def _of_laps(laps):
    return f"{len(laps.laps)} laps, {show(laps.mean)} on average"


def _of_map_line(line):
    return f"{line.line_name or 'a line'}: {show(line.map_length)} on the map"


def _of_riders(riders):
    if not isinstance(riders, dict):
        return f"{len(riders)} classes of riders"
    return f"parties of {listed([str(size) for size in sorted(riders)])}"


def _of_day(rest):
    return f"a day of {rest['hours']:g} h" if "hours" in rest else "a day"


_HOLDS = {
    "sheet": _of_sheet, "count": _of_count, "track": _of_track, "laps": _of_laps, "map line": _of_map_line,
    "riders": _of_riders, "day": _of_day, "second": _of_sheet,
}  # fmt: skip


def worth_a_look(read):
    """Return what in the files asks for a second look: readings that do not agree, laps that stand apart, gaps.

    Nothing of it is left out of a result, unless the result says so.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Lines
    """
    said = []
    for sort in ("sheet", "second"):
        if read.has(sort):
            sheet = read.made(sort)
            said += [f"{sheet.name}: {sentence}" for sentence in to_look_at(sheet)]
            said += [f"{sheet.name}: {sheet.how_read}"] if sheet.how_read else []
    if read.has("count"):
        said += _of_a_count(read.came["count"])
    if read.has("laps"):
        laps = read.made("laps")
        no_time = [sentence.removesuffix(".") + "." for sentence in laps.sentences if sentence.startswith("Row ")]
        said += [f"{laps.name}: {words}" for words in [*_of_far_laps(laps), *no_time]]
    if read.has("track"):
        said += [f"{read.came['track'].name}: {words}." for words in read.made("track").track.notes]
    if len(said) > MOST_REMARKS:
        said = [*said[:MOST_REMARKS], f"And {len(said) - MOST_REMARKS} more."]
    return Lines(*said) if said else Lines("Nothing in these files asks for a second look.")


def _of_a_count(file):
    rows = file.made.rows
    gaps = [(one.end, other.begin) for one, other in zip(rows, rows[1:], strict=False) if other.begin > one.end]
    words = [f"nobody counted from {_clock(begin)} to {_clock(end)}" for begin, end in gaps]
    told = [f"{file.name}: {listed(words)}. That is left out, and is no zero."] if words else []
    waited = {"no": "nobody waited", None: "whether people waited is not said"}.get(file.made.waited)
    return told + ([f"{file.name}: {waited}. Without a line a count tells who came."] if waited else [])


def _clock(minute):
    return f"{int(minute) // 60}:{int(minute) % 60:02d}"


def _of_far_laps(laps):
    """Return a sentence on each lap that stands apart."""
    times = dict(zip(laps.laps, laps.times, strict=True))
    notes = dict(zip(laps.laps, laps.notes_of_laps, strict=True))
    return [
        f"lap {lap} took {show(times[lap])}, and stands apart." + (f" Its note: {notes[lap]}." if notes[lap] else "")
        for lap in laps.far_laps
    ]


@functools.lru_cache(maxsize=4)  # many parts of a page ask for them
def limits(read):
    """Return the limits of the lift with their doubt, from its sheet."""
    return sheet_limits(read.sheet)


def simulated(read):
    """Return what days of the lift make of it, at the level simulated."""
    return Capacity(Q(float(simulate_days(read.day, SEED, DAYS).mean()), "pph"), "simulated")


def modelled(read):
    """Return what days of the lift make of it, or None; and why there is none where its tables came."""
    if not read.has("sheet", *OF_A_DAY_FILES):
        return None, ""
    try:
        return simulated(read), ""
    except PlainError as error:
        return None, str(error)


def count_of(read):
    """Return the count; where the sheet makes a line, with its own clean rows."""
    counts = read.made("count")
    return read.counts if _makes_a_line(read) else counts


def at_most(read):
    """Return what the smallest limit of the lift allows, at the level governed; refuse a sheet without any."""
    found = limits(read).governs
    if found is None:
        raise PlainError(f"{read.sheet.name}: no limit can be computed from this sheet.")
    return found.capacity


def how_to_count(read):
    """Return what the count says of who waited, and how long to count; with its rates where no picture of it is there.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Lines or TableAndLines
    """
    counts = count_of(read)
    try:
        lines = how_long_to_count(counts).lines
    except PlainError as error:
        who = NOBODY_WAITED.get(counts.waited, "").removeprefix("; ")
        lines = (str(error), *([f"{who[0].upper()}{who[1:]}."] if who else []))
    if _makes_a_line(read):
        return Lines(*lines)
    governs = limits(read).governs if read.has("sheet") else None
    return TableAndLines(count_table(counts, governs and governs.capacity), *lines)


def _makes_a_line(read):
    """Return whether there is a sheet from which a line follows."""
    try:
        return read.line is not None
    except PlainError:
        return False


def _levels(sheet, governs, counted=None, of_days=None):
    """Return the capacities of one lift, by their level."""
    by_spacing = capacity_of(sheet)
    if counted is None and sheet.counted:
        counted = Capacity(hourly_flow_from_count(*sheet.counted), "counted")
    found = [by_spacing, governs and governs.capacity, of_days, counted]
    return {each.level: each for each in found if each is not None}


def like_with_like(read):
    """Return the two lifts side by side, level by level, and what must not be compared.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    TableAndLines
    """
    own, other = read.made("sheet", "second")
    found = limits(read), sheet_limits(other)
    counted = count_of(read).rate() if read.has("count") else None
    one, two = _levels(own, found[0].governs, counted, modelled(read)[0]), _levels(other, found[1].governs)
    rows = []
    for level in ("packing", "ideal", "governed", "simulated", "counted"):
        if level in one or level in two:
            both = level in one and level in two
            ratio = f"{compare(one[level], two[level]).ratio:.2f} to 1" if both else "not to be compared"
            cells = [show(each[level].value) if level in each else "not known" for each in (one, two)]
            rows.append((level, *cells, ratio))
    table = Table("Two lifts, level by level", ("level", own.title, other.title, "ratio"), rows)
    lines = map(_left_out, found)
    return TableAndLines(
        table,
        "Only figures of one level stand in one row: a count beside an ideal figure would compare a working day with a "
        "plan.",
        *filter(None, lines),
    )


def _left_out(found):
    """Return a sentence on the limits that a sheet leaves open; None where it has all of them."""
    names = [record.name for record in found.records if isinstance(record, LeftOut)]
    if not names or found.governs is None:
        return None
    return (
        f"{found.title}: {found.governs.limit.name} governs among what was read; {listed(names)} left out for want of "
        "readings, and could be lower."
    )


def comes_to(read):
    """Return what all of it comes to, in a few lines: what governs and how surely, the count, the day, what is missing.

    Parameters
    ----------
    read : LiftFiles

    Returns
    -------
    Lines
    """
    said = []
    if read.has("sheet"):
        said += _governs(limits(read))
    said += [words for agreement in (speeds(read), lengths(read)) for words in agreement.in_short()]
    if read.has("count"):
        said.append(_counted(read))
    of_days, why_none = modelled(read)
    if of_days is not None:
        said.append(f"A working day, modelled: {of_days}, with a line standing all day.")
    said += [f"No working day can be modelled: {why_none}"] if why_none else []
    missing = [SORTS[sort].what for sort in SORTS if not read.has(sort)]
    smaller = [f"Smaller for want of {listed(missing)}: what each would give stands above."] if missing else []
    return Lines(*said, *smaller)


def _governs(found):
    """Return which limit governs, how surely, and which is close behind."""
    if found.governs is None:
        return ["No limit can be computed from this sheet."]
    governs, shares = found.governs, found.shares
    sure = f", in {100 * shares[governs.limit.name]:.0f} of 100 draws within the doubts" if shares else ""
    said = [f"{governs.limit.name.capitalize()} governs{sure}: at most {governs.capacity}."]
    close = [name for name, share in shares.items() if name != governs.limit.name and share >= CLOSE]
    above = {record.name: record for record in governs.in_order}
    said += [
        f"Close behind: {name}, {show(above[name].capacity - governs.limit.capacity)} above it, and the lower one in "
        f"{100 * shares[name]:.0f} of 100 draws."
        for name in close
    ]
    return said


def _counted(read):
    """Return what the count comes to beside the limit that governs."""
    counts = count_of(read)
    by_clock, who = f"{counts.rate()} by the clock", NOBODY_WAITED.get(counts.waited, "")
    if not counts.stopped:
        told = "no stop fell into it" if counts.stops_told else "no stop was written down"
        return f"Counted: {by_clock}; {told}{who}."
    if not counts.clean:
        return f"Counted: {by_clock}; a stop touches every row{who}."
    return f"Counted: {show(counts.rate(clean=True).value)} in clean minutes, {by_clock}{who}."
