"""A line drawn on a map, from KML or GeoJSON: its length on the map, and with a rise its length along the slope."""

import json
import math
from dataclasses import dataclass

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.geodesy import geodesic_length, position_fault, slope_from_map
from liftcalc.fieldwork.safe_files import FieldFileError, local_name, parse_markup, plain_number, quoted, read_text
from liftcalc.quantity_text import as_received, show
from liftcalc.units import Q, UnitError

_WHAT = "a map line (KML or GeoJSON)"
CLICK = 3.0  # m, standard uncertainty of one end of a line as clicked on a map, unless the reader knows better
MOST_POSITIONS = 100_000


@dataclass(frozen=True)
class MapLine:
    """A line of a map.

    Parameters
    ----------
    name : str
        Name of the file.
    line_name : str
        Name of the line in it; may be empty.
    latitudes, longitudes : tuple of float
        Degrees.
    map_length, map_length_uncertainty : Quantity [m]
        Geodesic length on the plan; standard uncertainty from the two ends as clicked.
    vertical_rise : Quantity [m] or None
        Given, or from the file's elevations at the two ends; None where neither is known.
    slope_length, slope_length_uncertainty : Quantity [m] or None
        Along the slope, with the standard uncertainty; None where no rise is known.
    lifted_by : str
        "given rise", "elevations" or "nothing".
    sentences : tuple of str
        All of it in plain words.
    """

    name: str
    line_name: str
    latitudes: tuple
    longitudes: tuple
    map_length: Quantity
    map_length_uncertainty: Quantity
    vertical_rise: Quantity | None
    slope_length: Quantity | None
    slope_length_uncertainty: Quantity | None
    lifted_by: str
    sentences: tuple


def read_map_line(path, *, line=None, vertical_rise=None, vertical_rise_uncertainty=None, end_uncertainty=None):
    """Read the one line of a KML or GeoJSON file. The file is only read, never written.

    Parameters
    ----------
    path : str or Path
        A file whose name ends in .kml, .geojson or .json.
    line : str or int or None
        Which line to read where the file holds several: its name, or its number from 1.
    vertical_rise, vertical_rise_uncertainty : Quantity [m] or None
        Rise from end to end, and its standard uncertainty; they go before the elevations of the file.
    end_uncertainty : Quantity [m] or None
        Standard uncertainty of the place of one end along the line; 3 m if left out.

    Returns
    -------
    MapLine
        Map length, slope length where a rise is known, their doubts, and sentences.

    Raises
    ------
    FieldFileError
        If the file is unsound, holds no line, or several and none was chosen.
    UnitError
        If a length has no unit.
    """
    name, text = read_text(path, (".kml", ".geojson", ".json"), _WHAT)
    return map_line_from_text(
        name,
        text,
        line=line,
        vertical_rise=vertical_rise,
        vertical_rise_uncertainty=vertical_rise_uncertainty,
        end_uncertainty=end_uncertainty,
    )


def map_line_from_text(
    name, text, *, line=None, vertical_rise=None, vertical_rise_uncertainty=None, end_uncertainty=None
):
    """Return the map line of a text: KML by the ending of its name or its first mark, else GeoJSON.

    See ``read_map_line``.
    """
    rise = _length("vertical_rise", vertical_rise)
    rise_doubt = _length("vertical_rise_uncertainty", vertical_rise_uncertainty)
    end_doubt = _length("end_uncertainty", end_uncertainty)
    is_kml = name.lower().endswith(".kml") or text.lstrip().startswith("<")
    lines = _kml_lines(name, text) if is_kml else _geojson_lines(name, text)
    line_name, positions = _chosen(name, lines, line)
    latitudes, longitudes, heights = zip(*positions, strict=True)
    length = geodesic_length(latitudes, longitudes)
    if length.m_as("m") <= 0:
        raise FieldFileError(f"{name}: all positions of the line are one place. Draw it from end to end.")
    doubt = Q(math.sqrt(2) * (CLICK if end_doubt is None else end_doubt), "m")
    lifted_by = "nothing"
    if rise is not None:
        lifted_by = "given rise"
    elif all(height is not None for height in heights) and any(heights):  # map programs write 0 where they know none
        lifted_by, rise = "elevations", abs(heights[-1] - heights[0])
    along = along_doubt = None
    if lifted_by != "nothing":
        along, along_doubt = slope_from_map(
            map_length=length,
            vertical_rise=Q(rise, "m"),
            map_length_uncertainty=doubt,
            vertical_rise_uncertainty=None if rise_doubt is None else Q(rise_doubt, "m"),
        )
    return MapLine(
        name=name,
        line_name=line_name,
        latitudes=latitudes,
        longitudes=longitudes,
        map_length=length,
        map_length_uncertainty=doubt,
        vertical_rise=None if lifted_by == "nothing" else Q(rise, "m"),
        slope_length=along,
        slope_length_uncertainty=along_doubt,
        lifted_by=lifted_by,
        sentences=tuple(_sentences(line_name, positions, length, doubt, along, along_doubt, lifted_by, rise)),
    )


def _sentences(line_name, positions, length, doubt, along, along_doubt, lifted_by, rise):
    """Return the lengths in plain sentences."""
    called = f" {line_name!r}" if line_name else ""
    yield (
        f"The line{called} has {len(positions)} positions and is {show(length)} long on the map, standard uncertainty "
        f"{show(doubt)} from the two ends as clicked."
    )
    if along is None:
        yield "A map length is horizontal. Give the vertical rise to have the length along the slope."
    else:
        height = "a given rise" if lifted_by == "given rise" else "a rise by the elevations of the file"
        yield (
            f"With {height} of {show(Q(rise, 'm'))} it is {show(along)} along the slope, standard uncertainty "
            f"{show(along_doubt)}."
        )
    yield "Ask what was drawn: grab to let-go is the ridden length, sheave to sheave is longer."


def _length(name, value):
    """Return a length in m, zero or more; None for None."""
    if value is None:
        return None
    if not isinstance(value, Quantity) or not value.check("[length]"):
        raise UnitError(f"read_map_line: {name} must be a length, but got {as_received(value)}. Write Q(29.4, 'm').")
    number = float(value.m_as("m"))
    if not np.isfinite(number) or number < 0:
        raise FieldFileError(f"read_map_line: {name} must be zero or more, but got {number:g} m. Write Q(29.4, 'm').")
    return number


def _chosen(name, lines, wanted):
    """Return name and positions of the line that was asked for, or of the only one."""
    if not lines:
        raise FieldFileError(
            f"{name}: the file holds no line (LineString). Points and areas have no length of a lift: draw a line "
            "from the loading point to the unload area and export it."
        )
    choice = "; ".join(f"{number}: {quoted(one or 'no name')}" for number, (one, _) in enumerate(lines[:8], start=1))
    if wanted is None and len(lines) > 1:
        raise FieldFileError(
            f"{name}: the file holds {len(lines)} lines ({choice}). Save the one that is "
            f"meant as a file of its own; or say which: read_map_line(..., line=1) by number or "
            "line='name'."
        )
    if wanted is None:
        return lines[0]
    if isinstance(wanted, int) and not isinstance(wanted, bool) and 1 <= wanted <= len(lines):
        return lines[wanted - 1]
    named = [line for line in lines if isinstance(wanted, str) and line[0] == wanted]
    if len(named) != 1:
        raise FieldFileError(
            f"{name}: there is no one line {quoted(wanted)}. The file holds {choice}. Give its number."
        )
    return named[0]


def _position(name, line_number, number, cells):
    """Return latitude, longitude and height of one position given as longitude, latitude and perhaps height."""
    where = f"{name}, line {line_number}, position {number}"
    if not 2 <= len(cells) <= 4 or any(cell is None for cell in cells[:3]):
        raise FieldFileError(
            f"{where}: a position is longitude, latitude and perhaps height, all plain numbers. Write for example "
            "-35.0001,47.0002,912."
        )
    fault = position_fault(cells[1], cells[0])
    if fault:
        raise FieldFileError(f"{where}: {fault}")
    return cells[1], cells[0], cells[2] if len(cells) > 2 else None


def _checked(name, line_number, rows):
    """Return the positions of a line, two or more and not endless."""
    if not 2 <= len(rows) <= MOST_POSITIONS:
        raise FieldFileError(
            f"{name}, line {line_number}: a line has from 2 to {MOST_POSITIONS:,} positions, but this one has "
            f"{len(rows)}. Draw it from end to end."
        )
    return [_position(name, line_number, number, cells) for number, cells in enumerate(rows, start=1)]


def _kml_lines(name, text):
    """Return name and positions of every LineString of a KML text."""
    root = parse_markup(name, text, _WHAT)
    if local_name(root) != "kml":
        hint = (
            " It holds a GPX track: rename it to .gpx and read it with read_track." if local_name(root) == "gpx" else ""
        )
        raise FieldFileError(
            f"{name}: this is no KML file: its first element is <{local_name(root)[:30]}>, not <kml>.{hint}"
        )
    lines, inside = [], {}
    for mark in root.iter():
        if local_name(mark) == "Placemark":
            title = next((child.text or "" for child in mark if local_name(child) == "name"), "")
            inside.update(dict.fromkeys((child for child in mark.iter() if local_name(child) == "LineString"), title))
    for element in root.iter():
        if local_name(element) == "LineString":
            place = next((child for child in element if local_name(child) == "coordinates"), None)
            if place is not None and len(place):
                raise FieldFileError(
                    f"{name}, line {len(lines) + 1}: the coordinates hold markup, <{local_name(place[0])[:30]}>, where "
                    "numbers belong. Export the line once more."
                )
            words = (place.text or "").split() if place is not None else []
            rows = [[plain_number(cell) for cell in word.split(",")] for word in words]
            lines.append((inside.get(element, "").strip(), _checked(name, len(lines) + 1, rows)))
    return lines


def _geojson_lines(name, text):
    """Return name and positions of every LineString of a GeoJSON text."""
    try:
        data = json.loads(text, parse_constant=lambda word: None)
    except (ValueError, RecursionError) as error:
        place = f", line {error.lineno}" if isinstance(error, json.JSONDecodeError) else ""
        raise FieldFileError(
            f"{name}{place}: this is no sound GeoJSON. The file may be cut short: export the line once more."
        ) from None
    lines = []
    for title, shape in _shapes(name, data):
        if shape.get("type") == "LineString":
            places = shape.get("coordinates")
            rows = [
                [_json_number(cell) for cell in place] if isinstance(place, list) else [None, None]
                for place in (places if isinstance(places, list) else [])
            ]
            lines.append((title, _checked(name, len(lines) + 1, rows)))
    return lines


def _json_number(cell):
    """Return a number of a JSON text; None for all else."""
    is_number = isinstance(cell, (int, float)) and not isinstance(cell, bool) and abs(cell) < 1e12
    return float(cell) if is_number else None


def _shapes(name, data):
    """Return the titled shapes of a GeoJSON: of itself, of a feature, or of a collection of features."""
    if not isinstance(data, dict):
        raise FieldFileError(f"{name}: this is no GeoJSON: it must be an object with a type, such as LineString.")
    features = data.get("features") if data.get("type") == "FeatureCollection" else [data]
    for feature in features if isinstance(features, list) else []:
        if not isinstance(feature, dict):
            continue
        titles = feature.get("properties") if isinstance(feature.get("properties"), dict) else {}
        title = titles.get("name") if isinstance(titles.get("name"), str) else ""
        shape = feature.get("geometry") if feature.get("type") == "Feature" else feature
        if isinstance(shape, dict):
            yield title, shape
