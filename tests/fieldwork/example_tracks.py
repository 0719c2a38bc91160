"""Tracks without noise, and the text of small GPX files."""

import re

import numpy as np
from make_tracks import HOME, METRES_A_DEGREE, METRES_A_DEGREE_EAST

from liftcalc.fieldwork.tracks import make_track


def straight(*, speed=3.4, seconds=60, grade=0.2, wait=20, step=1.0, heights=True):
    """Return a track without noise: standing, then up a slope at one speed along the slope, then standing."""
    times = np.arange(0.0, wait + seconds + wait, step)
    way = np.clip(times - wait, 0, seconds) * speed
    plan, up = way / np.hypot(1, grade), way * grade / np.hypot(1, grade)
    east, north = plan * 0.6, plan * 0.8
    return make_track(
        "straight",
        times,
        HOME[0] + north / METRES_A_DEGREE,
        HOME[1] + east / METRES_A_DEGREE_EAST,
        900 + up if heights else None,
    )


def two_speeds():
    """Return 20 s of standing, 60 s at 3 m/s, 60 s at 1.5 m/s, and 20 s of standing, on the flat."""
    times = np.arange(0.0, 161.0)
    way = np.interp(times, [0, 20, 80, 140, 160], [0, 0, 180, 270, 270])
    return times, HOME[0] + way / METRES_A_DEGREE, np.full(times.size, HOME[1])


HEAD = '<gpx version="1.1" creator="tests" xmlns="http://www.topografix.com/GPX/1/1">'


def point(second, *, lat=None, lon="-35.0", ele="900", time=None):
    """Return a track point; 2.8 m/s to the north."""
    lat = f"{47 + second * 2.52e-5:.7f}" if lat is None else lat
    moment = f"2031-01-12T10:{second // 60:02d}:{second % 60:02d}Z" if time is None else time
    return f'<trkpt lat="{lat}" lon="{lon}"><ele>{ele}</ele><time>{moment}</time></trkpt>'


def gpx(*points, before="", head=HEAD):
    """Return a GPX text with one track of these points."""
    return f"{before}{head}<trk><name>a</name><trkseg>{''.join(points)}</trkseg></trk></gpx>"


MANY = [point(second) for second in range(60)]
UNTIMED = [re.sub("<time>.*</time>", "", text) for text in MANY]
BOMB = '<!DOCTYPE lolz [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>'
