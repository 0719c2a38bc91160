"""Ride times by stopwatch from a CSV file: mean, spread, doubt, laps that stand apart, and the line speed they give."""

import math
import re
from dataclasses import dataclass, replace

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.csv_rows import read_rows, rows_from_text
from liftcalc.fieldwork.safe_files import FieldFileError, quoted
from liftcalc.formulas.riders import line_speed_from_ride_time, ride_time
from liftcalc.quantity_text import as_received, read_number, show
from liftcalc.uncertainty import coverage_factor
from liftcalc.units import Q, UnitError

_WHAT = "lap times (CSV)"
COLUMNS = ("lap", "seconds", "note")
ONE_LAP_DOUBT = 0.3  # s, of a single lap timed by hand: two presses of about 0.2 s each (assumed, not published)
LONGEST_LAP = 36_000.0  # s
USUAL_PICK_UP = Q(1.5, "m/s**2")  # for an example in words only (assumed, not published)
FAR = 4.0  # spreads from the middle, from which a lap is pointed at
MOST_LAPS = 10_000


@dataclass(frozen=True)
class LapTimes:
    """Laps of one file.

    Parameters
    ----------
    name : str
        Name of the file.
    laps : tuple of str
        What each lap is called; its number where the file names none.
    times : Quantity [s]
        All times used, an array.
    notes_of_laps : tuple of str
        As written.
    mean, mean_uncertainty, half_width_95 : Quantity [s]
        Mean; its standard uncertainty; half of its interval of 95 %, by Student's t.
    spread : Quantity [s] or None
        Standard deviation of one lap; None for a single lap.
    degrees_of_freedom : int
        Laps less one.
    far_laps : tuple of str
        Laps that stand far from the others. They are in the mean.
    sentences : tuple of str
        All of it in plain words, with all that was left out.
    """

    name: str
    laps: tuple
    times: Quantity
    notes_of_laps: tuple
    mean: Quantity
    mean_uncertainty: Quantity
    half_width_95: Quantity
    spread: Quantity | None
    degrees_of_freedom: int
    far_laps: tuple
    sentences: tuple


def read_lap_times(path, *, without=()):
    """Read ride times, grab to let-go, from a CSV file. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A CSV file with the columns lap, seconds, note in any order; only seconds must be there, written as 73 or as
        1:13. Cells are parted by commas, with decimal points; or by semicolons, with decimal commas. Rows without a
        time are passed over and listed.
    without : sequence of str
        Laps to leave out, by the name in the column lap. They are listed in the sentences.

    Returns
    -------
    LapTimes
        Mean, spread and doubt.

    Raises
    ------
    FieldFileError
        If the file or a cell cannot be read; the message names row and column.
    """
    return _lap_times(read_rows(path, ("seconds",), _WHAT, COLUMNS), without)


def lap_times_from_text(name, text, *, without=()):
    """Return the lap times of a CSV text. See ``read_lap_times``."""
    return _lap_times(rows_from_text(name, text, ("seconds",), COLUMNS), without)


def _lap_times(table, without):
    name, (rows, sentences) = table.name, _rows(table)
    without = (without,) if isinstance(without, str) else tuple(str(lap) for lap in without)
    unknown = [lap for lap in without if lap not in {row[0] for row in rows}]
    if unknown:
        raise FieldFileError(
            f"{name}: there is no lap {unknown[0]!r} to leave out. The laps are "
            f"{', '.join(row[0] for row in rows[:20])}."
        )
    for lap, time, _, _ in rows:
        if lap in without:
            sentences.append(f"Left out by you: lap {lap}, {show(Q(time, 's'))}.")
    rows = [row for row in rows if row[0] not in without]
    if not rows:
        raise FieldFileError(f"{name}: no lap is left. Each lap is a row such as: 1,44.2,")
    times = np.array([row[1] for row in rows])
    step = max(10.0 ** -row[2] for row in rows)
    mean, count = float(times.mean()), times.size
    spread = float(times.std(ddof=1)) if count > 1 else None
    if spread is None:
        doubt, half_width = ONE_LAP_DOUBT, 1.96 * ONE_LAP_DOUBT
    else:
        doubt = math.hypot(spread, step / math.sqrt(12)) / math.sqrt(count)
        half_width = coverage_factor(0.95, count - 1) * doubt
    far = _far(times)
    times.setflags(write=False)
    laps = LapTimes(
        name=name,
        laps=tuple(row[0] for row in rows),
        times=Q(times, "s"),
        notes_of_laps=tuple(row[3] for row in rows),
        mean=Q(mean, "s"),
        mean_uncertainty=Q(doubt, "s"),
        half_width_95=Q(half_width, "s"),
        spread=None if spread is None else Q(spread, "s"),
        degrees_of_freedom=count - 1,
        far_laps=tuple(rows[place][0] for place in far),
        sentences=(),
    )
    words = [*_sentences(laps), *(_far_sentence(rows, times, place) for place in far), *sentences]
    return replace(laps, sentences=tuple(words))


class LapSpeed(tuple):
    """Line speed and its standard uncertainty, as a pair; ``sentence`` says in words what was taken of the start.

    Without a pick-up the speed is the mean of the whole ride, and whoever unpacks the pair can still read that.
    """

    def __new__(cls, speed, uncertainty, sentence):
        """Make the pair."""
        pair = super().__new__(cls, (speed, uncertainty))
        pair.sentence = sentence
        return pair


def line_speed_from_laps(
    laps,
    ridden_length,
    *,
    ridden_length_uncertainty=None,
    pick_up_acceleration=None,
    pick_up_acceleration_uncertainty=None,
):
    """Return the line speed from ride times and the ridden length, and its standard uncertainty.

    Parameters
    ----------
    laps : LapTimes
        Times from grab to let-go.
    ridden_length : Quantity [m]
        Length along the slope from grab to let-go, not the sheave distance.
    ridden_length_uncertainty : Quantity [m] or None
        Its standard uncertainty; zero if left out.
    pick_up_acceleration : Quantity [m/s**2] or None
        How hard riders speed up who stand still at the grab. If left out the speed is the mean of the whole ride: on a
        belt or a chair that of the rope, on a tow less.
    pick_up_acceleration_uncertainty : Quantity [m/s**2] or None
        Its standard uncertainty; zero if left out.

    Returns
    -------
    LapSpeed
        A pair in m/s: line speed, and its standard uncertainty. Its ``sentence`` says what was taken of the start.

    Raises
    ------
    UnitError
        If a length or an acceleration has no unit, or is of another kind.
    PlainError
        If a length or an acceleration is not greater than zero, or nobody can cover the length in that time from rest.

    Notes
    -----
    From rest v = a (T - R), R = sqrt(T^2 - 2 L / a), with the sensitivities 1 / R to the length, -v / R to the time and
    -v^2 / (2 a^2 R) to the pick-up. Without a start from rest v = L / T, 1 / T and -v / T. Source:
    ``line_speed_from_ride_time`` and its derivatives; JCGM 100:2008, 5.1.2.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> laps = lap_times_from_text("laps.csv", "lap,seconds\\n1,45.2\\n2,45.6\\n3,45.0")
    >>> tape = {"ridden_length_uncertainty": Q(0.6, "m")}
    >>> show(line_speed_from_laps(laps, Q(150, "m"), **tape)[0])
    '3.31 m/s'
    >>> speed, doubt = line_speed_from_laps(laps, Q(150, "m"), **tape, pick_up_acceleration=Q(1.5, "m/s**2"))
    >>> show(speed), show(doubt)
    ('3.40 m/s', '0.02 m/s')
    """
    if not isinstance(laps, LapTimes):
        raise FieldFileError(
            f"line_speed_from_laps: laps must come from read_lap_times, but got {quoted(laps)}. Write "
            "line_speed_from_laps(read_lap_times('laps.csv'), Q(150, 'm'))."
        )
    length = ride_time(ridden_length, Q(1.0, "m/s")).m_as("s")  # checks the length as every formula does
    length_doubt = _uncertainty("ridden_length_uncertainty", ridden_length_uncertainty, "a length", Q(1, "m"))
    pick_up_doubt = _uncertainty(
        "pick_up_acceleration_uncertainty", pick_up_acceleration_uncertainty, "an acceleration", Q(0.3, "m/s**2")
    )
    time, time_doubt = laps.mean.m_as("s"), laps.mean_uncertainty.m_as("s")
    mean = length / time
    if pick_up_acceleration is None:
        if pick_up_acceleration_uncertainty is not None:
            raise FieldFileError(
                "line_speed_from_laps: pick_up_acceleration_uncertainty came without pick_up_acceleration. Give both, "
                "or the pick-up alone."
            )
        doubt = mean * math.hypot(length_doubt / length, time_doubt / time)
        return LapSpeed(Q(mean, "m/s"), Q(doubt, "m/s"), _mean_of_the_ride(mean, ridden_length, laps.mean))
    speed = line_speed_from_ride_time(ridden_length, laps.mean, pick_up_acceleration).m_as("m/s")
    hard = pick_up_acceleration.m_as("m/s**2")
    steady = time - speed / hard
    by_pick_up = speed**2 / (2 * hard**2) * pick_up_doubt
    doubt = math.hypot(length_doubt, speed * time_doubt, by_pick_up) / steady
    said = (
        f"Riders start from rest at {show(pick_up_acceleration)}: length over time alone would be "
        f"{show(Q(mean, 'm/s'))}, {100 * (1 - mean / speed):.1f} % too low."
    )
    return LapSpeed(Q(speed, "m/s"), Q(doubt, "m/s"), said)


def _uncertainty(name, value, kind, example):
    """Return a standard uncertainty as a plain number in the unit of an example; zero for None."""
    if value is None:
        return 0.0
    if not isinstance(value, Quantity) or not value.is_compatible_with(example):
        raise UnitError(
            f"line_speed_from_laps: {name} must be {kind}, but got {as_received(value)}. Write Q({example.magnitude}, "
            f"'{example.units:~C}')."
        )
    return abs(float(value.m_as(example.units)))


def _mean_of_the_ride(mean, ridden_length, ride):
    """Return the sentence on a speed that knows nothing of the start."""
    try:
        rope = line_speed_from_ride_time(ridden_length, ride, USUAL_PICK_UP).m_as("m/s")
        example = (
            f": at a pick-up of {show(USUAL_PICK_UP)}, say, it runs at {show(Q(rope, 'm/s'))}, and the mean is "
            f"{100 * (1 - mean / rope):.1f} % too low"
        )
    except ValueError:  # nobody is as quick from rest
        example = ""
    return (
        f"No pick-up was given: {show(Q(mean, 'm/s'))} is the mean of the whole ride. Where riders start from rest, as "
        f"on a rope tow, the rope is faster{example}. Give the pick-up acceleration. Where riders have the speed of "
        "the rope at once, as on a belt or a chair, nothing is missing."
    )


def _rows(rows):
    """Return lap, time, decimals written and note of every row with a time, and sentences on the others."""
    found, sentences = [], []
    for row in rows.rows:
        if any(row.spare):
            raise FieldFileError(
                f"{rows.name}, row {row.number}: the row has {len(rows.columns) + len(row.spare)} cells, but the "
                f"heading has {len(rows.columns)}. Put a note that holds a comma between quotation marks, and write "
                "decimals with a point where commas part the cells."
            )
        lap, word = row.cells.get("lap") or str(len(found) + 1), row.cells["seconds"]
        if not word:
            sentences.append(f"Row {row.number} left out: lap {lap} has no time.")
            continue
        time = _time(rows.name, row.number, word, rows.decimal_comma)
        found.append((lap, time, _decimals(word), row.cells.get("note", "")))
    return found, sentences


_CLOCK = re.compile(r"([0-9]{1,3}):([0-5][0-9](?:[.,][0-9]{1,3})?)")  # as a stopwatch shows it


def _time(name, number, word, decimal_comma):
    """Return the seconds a cell holds, written as such or as minutes:seconds."""
    clock = _CLOCK.fullmatch(word)
    try:
        time = 60 * int(clock[1]) + float(clock[2].replace(",", ".")) if clock else read_number(word, decimal_comma)
    except ValueError as error:
        raise FieldFileError(f"{name}, row {number}, column seconds: {error}") from None
    if not 0 < time <= LONGEST_LAP:
        raise FieldFileError(
            f"{name}, row {number}, column seconds: a lap takes more than 0 s and at most {LONGEST_LAP:,.0f} s, but "
            f"got {word}. Write the time from grab to let-go in seconds."
        )
    return time


def _decimals(word):
    """Return how many digits stand behind the decimal mark."""
    return len(word) - 1 - max(word.rfind("."), word.rfind(",")) if "." in word or "," in word else 0


def _far(times):
    """Return the places of times that stand far from the middle one."""
    if times.size < 3:
        return []
    away = np.abs(times - np.median(times))
    usual = max(1.4826 * float(np.median(away)), 0.01 * float(np.median(times)))
    return [int(place) for place in np.flatnonzero(away > FAR * usual)]


def _far_sentence(rows, times, place):
    """Return the sentence that points at a lap."""
    lap, time, _, note = rows[place]
    others = float(np.delete(times, place).mean())
    said = f" Its note says: {note}." if note else ""
    return (
        f"Lap {lap} stands apart: {show(Q(time, 's'))}, the others {show(Q(others, 's'))} on the mean.{said} It is in "
        f"the mean; if you know why it differs, leave it out with without=[{lap!r}]."
    )


def _sentences(laps):
    """Return mean, spread and doubt in plain sentences."""
    count = len(laps.laps)
    if laps.spread is None:
        yield (
            f"One lap, {show(laps.mean)}: no spread to judge it by. Its standard uncertainty of "
            f"{show(laps.mean_uncertainty)} is that of two presses by hand. Time more laps."
        )
        return
    yield (
        f"{count} laps: mean {show(laps.mean)}, spread of one lap {show(laps.spread)}, standard uncertainty of the "
        f"mean {show(laps.mean_uncertainty)}; plus or minus {show(laps.half_width_95)} with a probability of 95 %."
    )
    yield "Timed from grab to let-go, they go with the ridden length; the sheave distance would give too high a speed."
