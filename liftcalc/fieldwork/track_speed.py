"""The line speed and the slope length out of a track, each with its doubt and in plain sentences."""

from dataclasses import dataclass, replace

import numpy as np
from pint import Quantity

from liftcalc.fieldwork.geodesy import local_plane
from liftcalc.fieldwork.line_fit import VERTICAL_WANDER, fit_line
from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.fieldwork.steady_part import FEWEST_POINTS, SHORTEST_TIME, SteadyPart, find_steady_parts
from liftcalc.quantity_text import as_received, show
from liftcalc.units import Q, UnitError


@dataclass(frozen=True)
class TrackReading:
    """What a track says of a lift.

    Parameters
    ----------
    name : str
        Name of the file.
    speed, speed_uncertainty, speed_half_width_95 : Quantity [m/s]
        Line speed; its standard uncertainty; half of the interval that holds the true speed with 95 %.
    along : str
        "the slope" or "the plan": what the speed and the length are measured along.
    lifted_by : str
        "elevations", "given rise", or "nothing".
    plan_speed, plan_speed_uncertainty : Quantity [m/s]
        Speed as positions give it, on the plan, and its standard uncertainty.
    ridden_length, ridden_length_uncertainty : Quantity [m]
        From where the speed set in to where it ceased, along what ``along`` says; standard uncertainty.
    vertical_rise : Quantity [m] or None
        Height gained on that length; None where it is not known.
    start, end : float
        The steady part in seconds since the first point.
    chosen_by_reader : bool
        Whether the reader set start and end.
    seconds, distances, speeds : array of float
        The trace: times [s]; distance along the line on the plan, zero at the start of the steady part [m];
        speed on the plan by position, smoothed over some seconds [m/s].
    steady : array of bool
        Which points of the trace were used.
    other_parts : tuple of SteadyPart
        Other steady parts that the track holds.
    sentences : tuple of str
        All of it in plain words, with all that was dropped.
    """

    name: str
    speed: Quantity
    speed_uncertainty: Quantity
    speed_half_width_95: Quantity
    along: str
    lifted_by: str
    plan_speed: Quantity
    plan_speed_uncertainty: Quantity
    ridden_length: Quantity
    ridden_length_uncertainty: Quantity
    vertical_rise: Quantity | None
    start: float
    end: float
    chosen_by_reader: bool
    seconds: np.ndarray
    distances: np.ndarray
    speeds: np.ndarray
    steady: np.ndarray
    other_parts: tuple
    sentences: tuple


@dataclass(frozen=True)
class _Slope:
    """Speed, its doubt, and the speed of climbing, in m/s; and what lifted it onto the slope."""

    speed: float
    doubt: float
    half_width_95: float
    climbing: float
    lifted_by: str


def read_track_speed(track, *, start=None, end=None, vertical_rise=None, map_length=None, parts=None):
    """Return line speed and ridden length out of a track, with their doubts.

    Parameters
    ----------
    track : Track
        From ``read_track``.
    start, end : float or None
        Start and end of the steady part in seconds since the first point, to correct what was found; both or none.
    vertical_rise : Quantity [m] or None
        Rise from grab to let-go, from a map. It goes before the elevations of the track.
    map_length : Quantity [m] or None
        Map length that belongs to the rise; the length of the ride in the track if left out.
    parts : tuple of SteadyPart or None
        Result of ``find_steady_parts(track)``, to save finding them anew while a slider moves.

    Returns
    -------
    TrackReading
        Speed, length, trace and sentences.

    Raises
    ------
    FieldFileError
        If no steady part is found, or the chosen one holds too little.
    UnitError
        If the rise or the map length has no unit, or is no length.

    Notes
    -----
    Positions are projected onto the straight line of the ride: adding up the steps from fix to fix as a rule adds
    the noise to the length. The speed is the slope of ``fit_line``. Positions lie on the plan; with the vertical speed
    w the speed along the slope is sqrt(v^2 + w^2); with a grade g it is v sqrt(1 + g^2).
    Source: Pythagoras, and the law of propagation of uncertainty, JCGM 100:2008, 5.1.2.
    """
    rise, run = _length("vertical_rise", vertical_rise, zero=True), _length("map_length", map_length)
    if run is not None and rise is None:
        raise FieldFileError("read_track_speed: map_length came without vertical_rise. Give both, or the rise alone.")
    parts = find_steady_parts(track) if parts is None else parts
    chosen = start is not None or end is not None
    if chosen:
        part = _chosen_part(track, start, end, parts)
    elif parts:
        part = parts[0]
    else:
        raise FieldFileError(
            f"{track.name}: no steady part was found: the track nowhere goes straight on at one speed for 20 m and "
            f"{SHORTEST_TIME:.0f} s. Give start and end yourself, in seconds from 0 to {track.seconds[-1]:.0f}."
        )
    steady = (track.seconds >= part.start) & (track.seconds <= part.end)
    _refuse_too_little(track, part, steady)
    along, aside = _along(track, steady)
    fit = fit_line(track.seconds[steady], along[steady])
    if fit.slope <= 0:
        raise FieldFileError(
            f"{track.name}: from {part.start:.0f} s to {part.end:.0f} s nothing moves. Choose another part."
        )
    slope = _onto_slope(track, steady, fit, part, rise, run)
    long = part.ride_end - part.ride_start
    length_doubt = float(np.hypot(long * slope.doubt, slope.speed * part.edge_doubt * np.sqrt(2)))
    others = tuple(other for other in parts if other.ride_start != part.ride_start)
    reading = TrackReading(
        name=track.name,
        speed=Q(slope.speed, "m/s"),
        speed_uncertainty=Q(slope.doubt, "m/s"),
        speed_half_width_95=Q(slope.half_width_95, "m/s"),
        along="the plan" if slope.lifted_by == "nothing" else "the slope",
        lifted_by=slope.lifted_by,
        plan_speed=Q(fit.slope, "m/s"),
        plan_speed_uncertainty=Q(fit.slope_uncertainty, "m/s"),
        ridden_length=Q(slope.speed * long, "m"),
        ridden_length_uncertainty=Q(length_doubt, "m"),
        vertical_rise=None if slope.lifted_by == "nothing" else Q(round(slope.climbing * long, 6), "m"),
        start=part.start,
        end=part.end,
        chosen_by_reader=chosen,
        seconds=track.seconds,
        distances=along - fit.at(part.start),
        speeds=_smoothed_speeds(track.seconds, along),
        steady=steady,
        other_parts=others,
        sentences=(),
    )
    return replace(reading, sentences=tuple(_sentences(track, part, reading, fit, along, aside)))


def _length(name, value, *, zero=False):
    """Return a length in m; None for None."""
    if value is None:
        return None
    if not isinstance(value, Quantity) or not value.check("[length]"):
        raise UnitError(f"read_track_speed: {name} must be a length, but got {as_received(value)}. Write Q(29.4, 'm').")
    number = float(value.m_as("m"))
    if not np.isfinite(number) or number < 0 or (number == 0 and not zero):
        raise FieldFileError(
            f"read_track_speed: {name} must be {'zero or more' if zero else 'greater than zero'}, but got "
            f"{number:g} m. Write Q(29.4, 'm')."
        )
    return number


def _chosen_part(track, start, end, parts):
    """Return the part that the reader chose, with the ride around it if one was found there."""
    last = float(track.seconds[-1])
    for name, value in (("start", start), ("end", end)):
        if isinstance(value, bool) or not isinstance(value, (int, float, np.number)) or not np.isfinite(value):
            raise FieldFileError(
                f"{track.name}: {name} must be a number of seconds, but got {as_received(value)}. "
                f"Give start and end both, from 0 to {last:.0f}."
            )
    if not start < end:
        raise FieldFileError(
            f"{track.name}: start must lie before end, but got start {start:g} s and end {end:g} s. Swap them, or move "
            "one."
        )
    if start >= last or end <= 0:
        raise FieldFileError(
            f"{track.name}: the part from {start:g} s to {end:g} s lies outside the track. Choose from 0 to {last:.0f}."
        )
    start, end = float(max(start, 0.0)), float(min(end, last))
    shared = [min(end, part.ride_end) - max(start, part.ride_start) for part in parts]
    if shared and max(shared) > 0.5 * (end - start):
        ride = parts[int(np.argmax(shared))]
        return SteadyPart(
            ride.ride_start, ride.ride_end, start, end, ride.east, ride.north, ride.climbs, ride.edge_doubt
        )
    return SteadyPart(start, end, start, end, 0.0, 0.0, None, 1.0)


def _refuse_too_little(track, part, steady):
    """Refuse a part with too few points or too short a time."""
    count = int(steady.sum())
    if count < FEWEST_POINTS or np.ptp(track.seconds[steady]) < 3.0:
        raise FieldFileError(
            f"{track.name}: from {part.start:.0f} s to {part.end:.0f} s the track holds {count} "
            f"{'point' if count == 1 else 'points'}; a speed needs {FEWEST_POINTS} or more over 3 s or more. "
            "Choose a longer part."
        )


def _along(track, steady):
    """Return the distance of every point along the straight line of the part, and beside it, in m."""
    seconds = track.seconds[steady]
    middle = np.mean(track.latitudes[steady]), np.mean(track.longitudes[steady])
    east, north = local_plane(track.latitudes, track.longitudes, around=middle)
    away = seconds - seconds.mean()
    direction = np.array([away @ east[steady], away @ north[steady]])
    size = np.hypot(*direction)
    direction = direction / size if size > 0 else np.array([1.0, 0.0])
    return east * direction[0] + north * direction[1], north * direction[0] - east * direction[1]


def _onto_slope(track, steady, fit, part, rise, run):
    """Return the speed along the slope, or on the plan where no height is known."""
    plan, doubt = fit.slope, fit.slope_uncertainty
    if rise is not None and run is not None:
        stretch = float(np.hypot(1.0, rise / run))
        climbing = plan * rise / run
        return _Slope(plan * stretch, doubt * stretch, fit.half_width_95 * stretch, climbing, "given rise")
    if rise is not None:
        long = part.ride_end - part.ride_start
        climbing, climbing_doubt, source = rise / long, rise / long**2 * part.edge_doubt * np.sqrt(2), "given rise"
    else:
        known = steady if track.elevations is None else steady & np.isfinite(track.elevations)
        if track.elevations is None or known.sum() < max(FEWEST_POINTS, 0.5 * steady.sum()):
            return _Slope(plan, doubt, fit.half_width_95, 0.0, "nothing")
        height = fit_line(track.seconds[known], track.elevations[known], VERTICAL_WANDER)
        climbing, climbing_doubt, source = height.slope, height.slope_uncertainty, "elevations"
    speed = float(np.hypot(plan, climbing))
    by_height = climbing * climbing_doubt / speed
    return _Slope(
        speed,
        float(np.hypot(plan / speed * doubt, by_height)),
        float(np.hypot(plan / speed * fit.half_width_95, 1.96 * by_height)),
        climbing,
        source,
    )


def _smoothed_speeds(seconds, along):
    """Return the speed at each point: the way from three seconds before to three after, over that time."""
    before, after = np.maximum(seconds - 3, seconds[0]), np.minimum(seconds + 3, seconds[-1])
    return (np.interp(after, seconds, along) - np.interp(before, seconds, along)) / np.maximum(after - before, 1e-9)


def _sentences(track, part, reading, fit, along, aside):
    """Return what was found, what it rests on, what is doubtful, and what was dropped, in plain sentences."""
    steady = reading.steady
    by_whom = "chosen by you" if reading.chosen_by_reader else "found by the change of speed"
    doubt = show(reading.speed_half_width_95)
    yield f"Steady part, {by_whom}: from {part.start:.0f} s to {part.end:.0f} s, {int(steady.sum())} fixes."
    yield (
        f"Speed along {reading.along}: {show(reading.speed)} ({show(reading.speed, 'mph')}), plus or minus {doubt} "
        "with a probability of 95 %."
    )
    if reading.lifted_by == "nothing":
        yield (
            "Positions give the speed on the plan, and no height is known. Along a slope of 20 % the speed would be "
            "2 % more: give the vertical rise."
        )
    else:
        more = 100 * (reading.speed / reading.plan_speed).m_as("") - 100
        height = "the given rise" if reading.lifted_by == "given rise" else "the elevations of the track"
        yield (
            f"Positions give the speed on the plan, {show(reading.plan_speed)}; {height} "
            f"({show(reading.vertical_rise)} on the ride) lifted it onto the slope, {more:.1f} % more."
        )
    yield (
        f"Ridden length along {reading.along}, from where the speed set in to where it ceased: "
        f"{show(reading.ridden_length)}, standard uncertainty {show(reading.ridden_length_uncertainty)}. "
        "The sheave distance is another and longer length; no rider's track holds it."
    )
    yield (
        f"The errors of the fixes hang together: they wander by about {show(Q(fit.wander, 'm'))} within about "
        f"{fit.wander_time:.0f} s, so {int(steady.sum())} fixes tell far less than as many separate readings."
    )
    steps = np.hypot(np.diff(along[steady]), np.diff(aside[steady])).sum() / np.ptp(track.seconds[steady])
    if steps > 1.02 * fit.slope:
        yield (
            f"Adding up the steps from fix to fix would give {show(Q(steps, 'm/s'))} on the plan: straying fixes make "
            "a sum of steps too long as a rule, so it is not used."
        )
    bend = float(np.ptp(aside[steady]))
    if bend > max(8 * fit.wander, 0.05 * np.ptp(along[steady])):
        yield (
            f"The part bends by {show(Q(bend, 'm'))}: a lift runs straight, and a speed along a bend comes out too low."
        )
    for place in track.breaks:
        if part.start < track.seconds[place] <= part.end:
            yield (
                f"The part runs across a jump of the position at {track.seconds[place]:.0f} s: its speed is wrong. "
                "Choose a part on one side of it."
            )
    for other in reading.other_parts[:3]:
        downhill = ", downhill" if other.climbs is False else ""
        yield (
            f"Also steady, and not used: from {other.start:.0f} s to {other.end:.0f} s, about "
            f"{show(Q(other.speed, 'm/s'))} on the plan{downhill}."
        )
    for note in track.notes:
        yield f"{note[0].upper()}{note[1:]}."
