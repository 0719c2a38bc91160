"""A track: times and positions, cleaned of what cannot be true, with a list of all that was dropped and why."""

from dataclasses import dataclass

import numpy as np

from liftcalc.fieldwork.geodesy import local_plane
from liftcalc.fieldwork.safe_files import FieldFileError

FASTEST_STEP = 25.0  # m/s: no rider is faster between two fixes
SHORTEST_JUMP = 20.0  # m: a smaller step is no jump, however short the time
_NAMED = 5  # how many places a sentence names before it says "and others"


@dataclass(frozen=True)
class Track:
    """A track as cleaned; the arrays belong together.

    Parameters
    ----------
    name : str
        Name of the file, or what the reader calls it.
    seconds : array of float
        Time since the first point of the file, increasing.
    latitudes, longitudes : array of float
        Degrees.
    elevations : array of float or None
        Metres, nan where a point has none; None where no point has one.
    breaks : array of int
        Places in the arrays where the track jumps and does not come back: no steady part runs across them.
    notes : tuple of str
        What was dropped, and why; what is missing.
    """

    name: str
    seconds: np.ndarray
    latitudes: np.ndarray
    longitudes: np.ndarray
    elevations: np.ndarray | None
    breaks: np.ndarray
    notes: tuple

    def plane(self):
        """Return metres east and north of the middle of the track."""
        return local_plane(self.latitudes, self.longitudes)


def make_track(name, seconds, latitudes, longitudes, elevations=None, notes=()):
    """Clean the points of a track and say what was dropped.

    Parameters
    ----------
    name : str
        Stands in front of every message.
    seconds : array of float
        Time of each point since the first one.
    latitudes, longitudes : array of float
        Degrees.
    elevations : array of float or None
        Metres; nan where a point has none.
    notes : tuple of str
        What was dropped before.

    Returns
    -------
    Track
        Without repeated times and without jumps that come back.

    Raises
    ------
    FieldFileError
        If fewer than two points came, or the times run backwards.
    """
    columns = [np.array(column, float) for column in (seconds, latitudes, longitudes)]
    seconds = columns[0]
    if elevations is not None and np.isfinite(elevations).any():
        columns.append(np.array(elevations, float))
    notes = list(notes)
    _refuse_too_few(name, seconds.size)
    back = np.flatnonzero(np.diff(seconds) < 0)
    if back.size:
        place = int(back[0])
        raise FieldFileError(
            f"{name}, point {place + 2}: the time runs backwards, by {seconds[place] - seconds[place + 1]:g} s from "
            f"the point before. Parts of two recordings may be joined in the wrong order: put them in order, or "
            "keep one."
        )
    repeated = np.append(False, np.diff(seconds) == 0)
    if repeated.any():
        notes.append(_dropped(repeated, seconds, "time stamp repeated"))
        columns = [column[~repeated] for column in columns]
        _refuse_too_few(name, columns[0].size)
    columns, breaks, more = _without_jumps(columns)
    if len(columns) < 4:
        notes.append("no elevations: the speed is one on the plan unless a rise is given")
    elevations = columns[3] if len(columns) == 4 else None
    for column in columns:
        column.setflags(write=False)
    return Track(name, *columns[:3], elevations, breaks, tuple(notes + more))


def _refuse_too_few(name, count):
    """Refuse a track of fewer than two points."""
    if count < 2:
        raise FieldFileError(
            f"{name}: the track holds {'no point' if count == 0 else 'one point'} with a time of its own; a speed "
            "needs many. Record while you ride, one fix a second."
        )


def _without_jumps(columns):
    """Drop pieces that jump away and come back; return the columns, the breaks that stay, and the notes.

    The track falls apart into pieces at steps no rider can make. Of all chains of pieces that a rider can follow, the
    one with the most points is kept. A gap in time makes every distance possible again, up to the fastest step.
    """
    seconds = columns[0]
    east, north = local_plane(columns[1], columns[2])
    far = _too_far(east[:-1], north[:-1], seconds[:-1], east[1:], north[1:], seconds[1:])
    edges = np.flatnonzero(far) + 1
    if not edges.size:
        return columns, np.array([], int), []
    starts, ends = np.append(0, edges), np.append(edges, seconds.size)
    kept = _longest_chain(starts, ends, east, north, seconds)
    drop = np.ones(seconds.size, bool)
    breaks, notes, previous = [], [], None
    for piece in range(len(starts)):
        small = ends[piece] - starts[piece] < 0.2 * seconds.size
        if piece in kept or not small:
            drop[starts[piece] : ends[piece]] = False
            if previous is not None and (piece not in kept or previous not in kept):
                breaks.append(int(starts[piece]))
            previous = piece
    if drop.any():
        size = np.hypot(np.diff(east), np.diff(north))[edges - 1].max()
        notes.append(_dropped(drop, seconds, f"the position jumps by up to {size:,.0f} m"))
    for place in breaks:
        notes.append(f"the position jumps at {seconds[place]:.0f} s and does not come back: no part runs across it")
    shift = np.cumsum(drop)
    breaks = np.array([place - shift[place] for place in breaks], int)
    return [column[~drop] for column in columns], breaks, notes


def _longest_chain(starts, ends, east, north, seconds):
    """Return the set of pieces that can follow each other and hold the most points together."""
    best, before = [], []
    for piece in range(len(starts)):
        back = np.arange(max(0, piece - 200), piece)
        last, first = ends[back] - 1, starts[piece]
        reachable = back[~_too_far(east[last], north[last], seconds[last], east[first], north[first], seconds[first])]
        from_piece = max(reachable, key=lambda earlier: best[earlier], default=None)
        best.append(ends[piece] - starts[piece] + (best[from_piece] if from_piece is not None else 0))
        before.append(from_piece)
    piece, kept = int(np.argmax(best)), set()
    while piece is not None:
        kept.add(int(piece))
        piece = before[piece]
    return kept


def _too_far(east, north, seconds, later_east, later_north, later_seconds):
    """Return where a step is one that no rider can make."""
    step = np.hypot(later_east - east, later_north - north)
    return step > np.maximum(FASTEST_STEP * (later_seconds - seconds), SHORTEST_JUMP)


def _dropped(drop, seconds, why):
    """Return the sentence about points that were dropped."""
    places = [f"{value:g} s" for value in seconds[drop][:_NAMED]]
    more = " and others" if drop.sum() > _NAMED else ""
    count = int(drop.sum())
    return f"{count} {'point' if count == 1 else 'points'} dropped: {why} at {', '.join(places)}{more}"
