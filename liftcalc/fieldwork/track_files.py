"""GPS tracks from GPX files. The text is searched for harm and for wrong numbers before it is taken apart."""

import logging
from datetime import UTC, datetime

import numpy as np

from liftcalc.fieldwork.geodesy import position_fault
from liftcalc.fieldwork.safe_files import FieldFileError, local_name, parse_markup, plain_number, quoted, read_text
from liftcalc.fieldwork.tracks import make_track

_WHAT = "a GPS track (GPX)"


def read_track(path, *, track=None):
    """Read a GPS track from a GPX file. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A GPX file. Segments of a track are joined; a pause between them is a gap in time.
    track : str or int or None
        Which track to read where the file holds several: its name, or its number from 1.

    Returns
    -------
    Track
        The cleaned track, with a note of all that was dropped.

    Raises
    ------
    FieldFileError
        If the file is no sound GPX, holds several tracks and none was chosen, or no two points with times.
    """
    return track_from_text(*read_text(path, (".gpx",), _WHAT), track=track)


def track_from_text(name, text, *, track=None):
    """Return the track of a GPX text; ``name`` stands in front of every message. See ``read_track``."""
    root = parse_markup(name, text, _WHAT)
    if local_name(root) != "gpx":
        raise FieldFileError(
            f"{name}: this is no GPX file: its first element is <{local_name(root)[:30]}>, not <gpx>. Read a map line "
            "with read_map_line, and export a recording as GPX."
        )
    _refuse_bad_points(name, root)
    points = _points(name, _chosen(name, _parsed(name, text).tracks, track))
    timed = [point for point in points if point.time is not None]
    if points and not timed:
        raise FieldFileError(
            f"{name}: none of the {len(points)} points carries a time, so there is no speed in the file. It may be a "
            "planned route. Record a track while you ride; for a length, draw a map line (KML or GeoJSON)."
        )
    notes = []
    if len(timed) < len(points):
        notes.append(f"{_counted(len(points) - len(timed))} dropped: no time")
    moments = [point.time if point.time.tzinfo else point.time.replace(tzinfo=UTC) for point in timed]
    heights = [np.nan if point.elevation is None else point.elevation for point in timed]
    missing = int(np.isnan(heights).sum()) if heights else 0
    if 0 < missing < len(heights):
        notes.append(f"{_counted(missing)} without an elevation: used for the plan only")
    return make_track(
        name,
        [(moment - moments[0]).total_seconds() for moment in moments],
        [point.latitude for point in timed],
        [point.longitude for point in timed],
        heights,
        notes,
    )


def _counted(count):
    """Return the number of points with the word."""
    return f"{count} point" if count == 1 else f"{count} points"


def _refuse_bad_points(name, root):
    """Refuse a point whose numbers are none or lie outside the earth; say which point it is."""
    points = [element for element in root.iter() if local_name(element) == "trkpt"]
    for number, point in enumerate(points, start=1):
        degrees = []
        for key, word in (("lat", "latitude"), ("lon", "longitude")):
            degrees.append(plain_number(point.get(key)))
            if degrees[-1] is None:
                came = "is missing" if point.get(key) is None else f"is {quoted(point.get(key))}, which is no number"
                raise FieldFileError(f"{name}, point {number}: the {word} {came}. Write degrees, such as 47.0001.")
        fault = position_fault(*degrees)
        if fault:
            raise FieldFileError(f"{name}, point {number}: {fault}")
        for child in point:
            if local_name(child) == "ele" and (len(child) or plain_number(child.text) is None):
                came = f"<{local_name(child[0])[:30]}>" if len(child) else quoted(child.text)
                raise FieldFileError(
                    f"{name}, point {number}: the elevation is {came}, which is no number. Write metres, such as "
                    "912.4, or leave the element out."
                )
            if local_name(child) == "time":
                _refuse_bad_time(name, number, child)


def _refuse_bad_time(name, number, element):
    """Refuse a time that is none; an empty one counts as missing."""
    came = f"<{local_name(element[0])[:30]}>" if len(element) else quoted((element.text or "").strip())
    try:
        sound = not len(element) and (not (element.text or "").strip() or datetime.fromisoformat(element.text.strip()))
    except ValueError:
        sound = False
    if not sound:
        raise FieldFileError(
            f"{name}, point {number}: the time is {came}, which is no time. Write date, T and time of day, such as "
            "2031-01-12T10:00:00Z."
        )


def _parsed(name, text):
    """Return the GPX as taken apart by gpxpy."""
    import gpxpy
    import gpxpy.gpx

    before = logging.root.manager.disable
    logging.disable(logging.CRITICAL)  # the library prints what it then also raises
    try:
        return gpxpy.parse(text.strip())
    except Exception as error:  # whatever it stumbles over in a broken file is the reader's to know, in one line
        reason = " ".join(str(error).split())
        raise FieldFileError(
            f"{name}: the GPX cannot be read ({quoted(reason, 100)}). Times are written like 2031-01-12T10:00:00Z; "
            "export the track once more."
        ) from None
    finally:
        logging.disable(before)


def _chosen(name, tracks, wanted):
    """Return the track that was asked for, or the only one that holds points."""
    filled = [one for one in tracks if any(segment.points for segment in one.segments)]
    if not filled:
        raise FieldFileError(
            f"{name}: the file holds no track point. Waypoints and planned routes carry no speed: export the recorded "
            "track."
        )
    choice = "; ".join(f"{number}: {quoted(one.name or 'no name')}" for number, one in enumerate(filled[:8], start=1))
    if wanted is None and len(filled) > 1:
        raise FieldFileError(
            f"{name}: the file holds {len(filled)} tracks ({choice}). Save the one that is "
            f"meant as a file of its own; or say which: read_track(..., track=1) by number or "
            "track='name'."
        )
    if wanted is None:
        return filled[0]
    if isinstance(wanted, int) and not isinstance(wanted, bool) and 1 <= wanted <= len(filled):
        return filled[wanted - 1]
    named = [one for one in filled if isinstance(wanted, str) and one.name == wanted]
    if len(named) != 1:
        raise FieldFileError(
            f"{name}: there is no one track {quoted(wanted)}. The file holds {choice}. Give its number."
        )
    return named[0]


def _points(name, track):
    """Return the points of all segments, in order."""
    return [point for segment in track.segments for point in segment.points]
