"""Lengths from latitude and longitude: along the earth's surface, which means on the plan, never along the slope."""

import numpy as np

from liftcalc.units import PlainError, Q

_EQUATOR_RADIUS = 6378137.0  # m, WGS84
_ECCENTRICITY_SQUARED = 0.00669437999014  # WGS84


class PositionError(PlainError):
    """A latitude or a longitude that does not exist, or too few of them."""


def geodesic_length(latitudes, longitudes):
    """Return the length of a line through positions, along the surface of the WGS84 ellipsoid.

    Parameters
    ----------
    latitudes, longitudes : sequence of float
        Positions in degrees, in order; two or more. North and east are positive.

    Returns
    -------
    Quantity [m]
        Map length: the sum of the geodesics from each position to the next. The slope is longer.

    Raises
    ------
    PositionError
        If there are fewer than two positions, not as many latitudes as longitudes, or one that does not exist.

    Notes
    -----
    Source: C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013), by the library geographiclib.

    Examples
    --------
    >>> from liftcalc import show
    >>> show(geodesic_length([47.0, 47.001], [-35.0, -35.0]))
    '111 m'
    """
    from geographiclib.geodesic import Geodesic

    latitudes, longitudes = list(latitudes), list(longitudes)
    if len(latitudes) != len(longitudes) or len(latitudes) < 2:
        raise PositionError(
            f"geodesic_length: a line needs two positions or more, but got {len(latitudes)} latitudes and "
            f"{len(longitudes)} longitudes. Write for example geodesic_length([47.0, 47.001], [-35.0, -35.0])."
        )
    for place, (latitude, longitude) in enumerate(zip(latitudes, longitudes, strict=True), start=1):
        fault = position_fault(latitude, longitude)
        if fault:
            raise PositionError(f"geodesic_length: position {place}: {fault}")
    legs = zip(latitudes, longitudes, latitudes[1:], longitudes[1:], strict=False)
    return Q(float(sum(Geodesic.WGS84.Inverse(*leg, Geodesic.DISTANCE)["s12"] for leg in legs)), "m")


def position_fault(latitude, longitude):
    """Return what is wrong with a position, as a sentence; an empty text where nothing is."""
    if not -90 <= latitude <= 90:
        return f"the latitude is {latitude:g}. Latitudes lie from -90 to 90 degrees; are the two numbers swapped?"
    if not -180 <= longitude <= 180:
        return f"the longitude is {longitude:g}. Longitudes lie from -180 to 180 degrees."
    return ""


def local_plane(latitudes, longitudes, *, around=None):
    """Return metres east and north of a middle point, exact to about 1 part in 100,000 within a few kilometres.

    Parameters
    ----------
    latitudes, longitudes : array of float
        Positions in degrees.
    around : tuple of float or None
        Latitude and longitude of the middle point; the mean position if left out.

    Returns
    -------
    tuple of array
        Metres east, metres north.

    Notes
    -----
    The two radii of curvature of the WGS84 ellipsoid at the middle latitude. Source: geometry of the ellipsoid.
    """
    latitudes, longitudes = np.asarray(latitudes, float), np.asarray(longitudes, float)
    from_first = (longitudes - longitudes[0] + 180) % 360 - 180  # a line may cross the 180th meridian
    if around is None:
        middle, east_of_first = latitudes.mean(), from_first.mean()
    else:
        middle, east_of_first = around[0], (around[1] - longitudes[0] + 180) % 360 - 180
    sine = np.sin(np.radians(middle))
    cross = _EQUATOR_RADIUS / np.sqrt(1 - _ECCENTRICITY_SQUARED * sine**2)
    along = cross * (1 - _ECCENTRICITY_SQUARED) / (1 - _ECCENTRICITY_SQUARED * sine**2)
    east = np.radians(from_first - east_of_first) * cross * np.cos(np.radians(middle))
    return east, np.radians(latitudes - middle) * along


def slope_from_map(*, map_length, vertical_rise, map_length_uncertainty=None, vertical_rise_uncertainty=None):
    """Return the length along the slope and its standard uncertainty, from the length on the map and the rise.

    Parameters
    ----------
    map_length, vertical_rise : Quantity [m]
        Length on the plan, greater than zero; height gained, zero or more.
    map_length_uncertainty, vertical_rise_uncertainty : Quantity [m] or None
        Their standard uncertainties; zero if left out.

    Returns
    -------
    tuple of Quantity [m]
        Slope length, and its standard uncertainty.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    PlainError
        If the map length is not greater than zero, or the rise is negative.

    Notes
    -----
    A uniform slope: L = sqrt(d^2 + h^2), u(L)^2 = (d u(d) / L)^2 + (h u(h) / L)^2. On uneven ground the slope is a
    little longer. Source: Pythagoras, and the law of propagation of uncertainty, JCGM 100:2008, 5.1.2.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> length, doubt = slope_from_map(map_length=Q(147.1, "m"), vertical_rise=Q(29.4, "m"),
    ...                                vertical_rise_uncertainty=Q(1, "m"))
    >>> show(length), show(doubt)
    ('150 m', '0.2 m')
    """
    from liftcalc.formulas.grade import slope_length

    length = slope_length(vertical_rise=vertical_rise, horizontal_run=map_length).m_as("m")
    doubts = [
        0.0 if doubt is None else doubt.m_as("m") * value.m_as("m") / length
        for value, doubt in ((map_length, map_length_uncertainty), (vertical_rise, vertical_rise_uncertainty))
    ]
    return Q(length, "m"), Q(float(np.hypot(*doubts)), "m")
