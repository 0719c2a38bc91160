"""Tracks whose true speed is known, with the errors of a receiver and the faults of real files."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import numpy as np

METRES_A_DEGREE = 111_170.5  # of latitude near 47 degrees north, on the WGS84 ellipsoid
METRES_A_DEGREE_EAST = 76_056.0  # of longitude there
HOME = (47.0, -35.0)  # open ocean: no ski area can lie here


@dataclass
class MadeTrack:
    """A made track, and the truth behind it (m, s, m/s, degrees)."""

    speed: float
    plan_speed: float
    length: float
    rise: float
    ride: tuple
    seconds: np.ndarray
    latitudes: np.ndarray
    longitudes: np.ndarray
    elevations: np.ndarray


def wander(rng, seconds, size, time):
    """Return a first-order Gauss-Markov process at increasing times."""
    keep = np.exp(-np.diff(seconds) / time)
    fresh = rng.normal(size=seconds.size)
    values = np.empty(seconds.size)
    values[0] = fresh[0]
    for place, (kept, new) in enumerate(zip(keep, fresh[1:], strict=True), start=1):
        values[place] = kept * values[place - 1] + np.sqrt(1 - kept * kept) * new
    return size * values


def profile(rng, speed, length):
    """Return times, distance along the line, height as a share of it (0 or 1 of the grade), and the times of the ride.

    Walking up to the loading point, standing, the ride with a run-up and a slowing, gliding off, standing.
    """
    walk, wait, leave = rng.uniform(10, 40), rng.uniform(10, 60), rng.uniform(10, 60)
    up, down = rng.uniform(1, 4, size=2)
    full = max(length / speed - (up + down) / 2, 1.0)
    pieces = [  # seconds, speed at the start, speed at the end
        (walk / 1.1, 1.1, 1.1),
        (wait, 0.0, 0.0),
        (up, 0.0, speed),
        (full, speed, speed),
        (down, speed, 0.3 * speed),
        (4.0, 0.3 * speed, 0.0),
        (leave, 0.0, 0.0),
    ]
    corners = np.cumsum([0.0, *[piece[0] for piece in pieces]])
    seconds = np.arange(0.0, corners[-1], 1.0)
    speeds = np.zeros_like(seconds)
    fine = np.arange(0.0, corners[-1] + 0.05, 0.05)
    fine_speeds = np.zeros_like(fine)
    for (long, first, last), begin in zip(pieces, corners[:-1], strict=True):
        inside = (fine >= begin) & (fine < begin + long)
        fine_speeds[inside] = first + (last - first) * (fine[inside] - begin) / long
    ways = np.append(0.0, np.cumsum(fine_speeds[:-1] * 0.05))
    walked = np.interp(corners[1], fine, ways)
    ridden = np.clip(ways - walked, 0, None)
    ridden = np.minimum(ridden, np.interp(corners[5], fine, ridden))
    speeds = np.interp(seconds, fine, ways), np.interp(seconds, fine, ridden)
    return seconds, speeds[0], speeds[1], (corners[3], corners[4])


def make(rng, *, speed=None, length=None, faults=True, error=1.0, grade=None, wander_size=None, wander_time=None):
    """Return a track with random speed, length, noise and faults.

    Parameters
    ----------
    rng : Generator
        Source of all chance.
    speed, length : float or None
        Along the slope in m/s and m; drawn from 0.5 to 6 and 60 to 900 if left out.
    faults : bool
        Missing fixes, a gap, a repeated time stamp, a jump of 300 m.
    error : float
        Factor on all errors of position; 0 for a track without noise.
    grade, wander_size, wander_time : float or None
        Drawn if left out.
    """
    speed = rng.uniform(0.5, 6.0) if speed is None else speed
    length = rng.uniform(60.0, 900.0) if length is None else length
    grade = rng.uniform(0.05, 0.35) if grade is None else grade
    size = np.exp(rng.uniform(np.log(1.0), np.log(5.0))) if wander_size is None else wander_size
    time = np.exp(rng.uniform(np.log(30.0), np.log(120.0))) if wander_time is None else wander_time
    white = np.exp(rng.uniform(np.log(0.1), np.log(0.8)))
    seconds, ways, ridden, ride = profile(rng, speed, length)
    plan, walked = ridden / np.hypot(1, grade), ways - ridden
    turn, side = rng.uniform(0, 2 * np.pi), rng.uniform(np.pi / 4, 7 * np.pi / 4)
    plan, aside = plan + walked * np.cos(side), walked * np.sin(side) + np.sin(walked / 4.0)
    errors = [error * (wander(rng, seconds, size, time) + rng.normal(0, white, seconds.size)) for _ in range(2)]
    upward = error * (wander(rng, seconds, 1.8 * size, time) + rng.normal(0, white, seconds.size))
    east = plan * np.cos(turn) - aside * np.sin(turn) + errors[0]
    north = plan * np.sin(turn) + aside * np.cos(turn) + errors[1]
    height = 900.0 + ridden * grade / np.hypot(1, grade) + upward
    if faults:
        seconds, east, north, height = add_faults(
            rng, seconds, east, north, height, longest_gap=(ride[1] - ride[0]) / 3
        )
    return MadeTrack(
        speed=speed,
        plan_speed=speed / np.hypot(1, grade),
        length=length,
        rise=length * grade / np.hypot(1, grade),
        ride=ride,
        seconds=seconds,
        latitudes=HOME[0] + north / METRES_A_DEGREE,
        longitudes=HOME[1] + east / METRES_A_DEGREE_EAST,
        elevations=height,
    )


def add_faults(rng, seconds, east, north, height, *, longest_gap):
    """Return the columns with what goes wrong in real files: some of it, by chance."""
    there = rng.random(seconds.size) > 0.03
    if rng.random() < 0.5:
        gap = rng.uniform(0, seconds[-1])
        there &= ~((seconds > gap) & (seconds < gap + rng.uniform(2, min(15, longest_gap))))
    there[[0, -1]] = True
    seconds, east, north, height = (column[there].copy() for column in (seconds, east, north, height))
    if rng.random() < 0.5:
        place = rng.integers(1, seconds.size - 4)
        away = rng.uniform(0, 2 * np.pi)
        east[place : place + 3] += 300 * np.cos(away)
        north[place : place + 3] += 300 * np.sin(away)
    if rng.random() < 0.5:
        place = rng.integers(1, seconds.size - 1, size=3)
        seconds[place] = seconds[place - 1]
        seconds = np.maximum.accumulate(seconds)
    return seconds, east, north, height


def gpx_text(made, *, elevations=True):
    """Return a made track as GPX, with times to the millisecond and no rounding that matters."""
    start = datetime(2031, 1, 12, 10, 0, 0, tzinfo=UTC)
    rows = []
    for second, latitude, longitude, height in zip(
        made.seconds, made.latitudes, made.longitudes, made.elevations, strict=True
    ):
        moment = (start + timedelta(seconds=float(second))).isoformat(timespec="milliseconds").replace("+00:00", "Z")
        ele = f"<ele>{height:.2f}</ele>" if elevations else ""
        rows.append(f'<trkpt lat="{latitude:.8f}" lon="{longitude:.8f}">{ele}<time>{moment}</time></trkpt>')
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<gpx version="1.1" creator="tests" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>\n'
        + "\n".join(rows)
        + "\n</trkseg></trk></gpx>\n"
    )
