"""Lengths on the ellipsoid and on a plane."""

import numpy as np
import pytest
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.fieldwork.geodesy import PositionError, geodesic_length, local_plane, slope_from_map

GEODESICS = [  # latitudes, longitudes, metres, source
    ([-41.32, 40.96], [174.81, -5.50], 19_959_679.267, "geodesic inverse on WGS84, GeographicLib documentation"),
]


@pytest.mark.parametrize(("latitudes", "longitudes", "metres", "source"), GEODESICS, ids=[c[-1] for c in GEODESICS])
def test_geodesic_length(latitudes, longitudes, metres, source):
    assert geodesic_length(latitudes, longitudes).m_as("m") == pytest.approx(metres, abs=0.0005), source


def test_the_plane_agrees_with_the_geodesic():
    latitudes, longitudes = [47.0, 47.008], [-35.0, -34.99]
    east, north = local_plane(latitudes, longitudes)
    flat = np.hypot(np.diff(east), np.diff(north))[0]
    assert flat == pytest.approx(geodesic_length(latitudes, longitudes).m_as("m"), rel=1e-5)


def test_slope_from_map_carries_the_doubt():
    length, doubt = slope_from_map(
        map_length=Q(400, "m"), vertical_rise=Q(300, "m"),
        map_length_uncertainty=Q(5, "m"), vertical_rise_uncertainty=Q(10, "m"),
    )  # fmt: skip
    assert length.m_as("m") == pytest.approx(500, rel=1e-12)
    assert doubt.m_as("m") == pytest.approx(np.hypot(4, 6), rel=1e-12)


NO_POSITIONS = [  # latitudes, longitudes, message
    (
        [95, 47],
        [0, 0],
        "geodesic_length: position 1: the latitude is 95. Latitudes lie from -90 to 90 degrees; "
        "are the two numbers swapped?",
    ),
    (
        [47, 47],
        [0, 181],
        "geodesic_length: position 2: the longitude is 181. Longitudes lie from -180 to 180 degrees.",
    ),
    (
        [47],
        [0],
        "geodesic_length: a line needs two positions or more, but got 1 latitudes and 1 longitudes. "
        "Write for example geodesic_length([47.0, 47.001], [-35.0, -35.0]).",
    ),
    (
        [47, float("nan")],
        [0, 0],
        "geodesic_length: position 2: the latitude is nan. Latitudes lie from -90 to 90 degrees; "
        "are the two numbers swapped?",
    ),
]


@table_of_messages(NO_POSITIONS, "latitudes", "longitudes", kind=PositionError)
def test_positions_that_do_not_exist(latitudes, longitudes, message, kind):
    refuses(lambda: geodesic_length(latitudes, longitudes), message, kind)
