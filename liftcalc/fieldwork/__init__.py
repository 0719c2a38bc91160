"""Fieldwork: readings from a field sheet, a track, a map line and lap times."""

from liftcalc.fieldwork.faults import FieldSheetError
from liftcalc.fieldwork.geodesy import PositionError, geodesic_length, slope_from_map
from liftcalc.fieldwork.lap_times import LapTimes, line_speed_from_laps, read_lap_times
from liftcalc.fieldwork.map_lines import MapLine, read_map_line
from liftcalc.fieldwork.safe_files import FieldFileError, decode
from liftcalc.fieldwork.sheet import (
    COLUMNS,
    FieldSheet,
    Reading,
    summary,
)
from liftcalc.fieldwork.steady_part import SteadyPart, find_steady_parts
from liftcalc.fieldwork.track_files import read_track, track_from_text
from liftcalc.fieldwork.track_speed import TrackReading, read_track_speed
from liftcalc.fieldwork.tracks import Track, make_track

__all__ = [
    "COLUMNS",
    "FieldFileError",
    "FieldSheet",
    "FieldSheetError",
    "LapTimes",
    "MapLine",
    "PositionError",
    "Reading",
    "SteadyPart",
    "Track",
    "TrackReading",
    "decode",
    "find_steady_parts",
    "geodesic_length",
    "line_speed_from_laps",
    "make_track",
    "read_lap_times",
    "read_map_line",
    "read_track",
    "read_track_speed",
    "slope_from_map",
    "summary",
    "track_from_text",
]
