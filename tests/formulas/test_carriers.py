"""Carriers that come from a loop: published figures, laws, and counts that use no formula of the package.

Figures from outside carry their source as the id of the test.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import (
    Q,
    UnitError,
    capacity_with_carriers_out,
    carriers_on_loop,
    detachable_carriers,
    headway,
    hourly_capacity_from_interval,
    least_station_interval,
    show,
    spacing_from_parts,
)

STRMTG = "STRMTG (French ropeway authority), Gondola lift: 0.5 m/s at most while boarding"
LA_PAZ = "operator's and maker's figures for an urban gondola in La Paz: 10 persons, 5.0 m/s, 12 s, 2,349 m"
ASPEN = "USDA Forest Service, Aspen Highlands Ski Area Final EIS, April 1997, Summary, Table 3"
lengths = st.floats(0.5, 12)
gaps = st.floats(0, 8)
station_speeds = st.floats(0.1, 2)
line_speeds = st.floats(1, 8)
sheave_distances = st.floats(80, 4000)
station_times = st.floats(0, 400)


# the shortest interval through a station


@pytest.mark.parametrize("source", [f"{STRMTG}; {LA_PAZ}"])
def test_room_for_a_cabin_between_two_published_figures(source):
    # own arithmetic on both: at 0.5 m/s and one cabin every 12 s, cabin and gap have 6 m of station between them
    cabin_and_gap = 0.5 * 12
    for gap in (0.0, 1.5, 3.0):
        interval = least_station_interval(
            carrier_length=Q(cabin_and_gap - gap, "m"), carrier_gap=Q(gap, "m"), station_speed=Q(0.5, "m/s")
        )
        assert interval.m_as("s") == pytest.approx(12, rel=1e-12)
        assert hourly_capacity_from_interval(interval, Q(10, "person")).m_as("pph") == pytest.approx(3000, rel=1e-12)


@given(length=lengths, gap=gaps, speed=station_speeds)
def test_two_carriers_in_a_station_keep_just_their_gap(length, gap, speed):
    interval = least_station_interval(
        carrier_length=Q(length, "m"), carrier_gap=Q(gap, "m"), station_speed=Q(speed, "m/s")
    ).m_as("s")
    tail_of_the_first = speed * interval - length  # its nose passed the post one interval ago
    nose_of_the_next = 0.0
    assert tail_of_the_first - nose_of_the_next == pytest.approx(gap, rel=1e-9, abs=1e-9)
    by_spacing = headway(
        Q(speed, "m/s"), spacing_from_parts(equipment_length=Q(length, "m"), practical_gap=Q(gap, "m"))
    )
    assert interval == pytest.approx(by_spacing.m_as("s"), rel=1e-12)


# carriers of a detachable lift

ROUNDS = [  # time from sheave to sheave [s], interval [s], carriers on both ropes, source
    (2349 / 5.0, 12, 78.3, f"{LA_PAZ}: own arithmetic on them"),
    (4 * 60, 9, 53.3, f"{ASPEN}, Thunderbowl: 4 min, t = 9.00 s: own arithmetic on them"),
]


@pytest.mark.parametrize(("one_way", "interval", "carriers", "source"), ROUNDS, ids=[case[-1] for case in ROUNDS])
def test_carriers_on_the_rope_alone(one_way, interval, carriers, source):
    speed = Q(5, "m/s")
    found = detachable_carriers(
        one_way * Q(1, "s") * speed, speed, station_time=Q(0, "s"), interval=Q(interval, "s")
    ).m_as("")
    assert round(found, 1) == carriers
    fixed = carriers_on_loop(sheave_distance=one_way * Q(1, "s") * speed, spacing=speed * Q(interval, "s"))
    assert found == pytest.approx(fixed.m_as(""), rel=1e-12)


@given(distance=sheave_distances, speed=line_speeds, station=station_times, carriers=st.integers(2, 200))
def test_carriers_counted_as_they_leave_until_the_first_is_back(distance, speed, station, carriers):
    one_round = distance / speed + distance / speed + station
    interval = one_round / carriers
    departures = np.arange(2 * carriers) * interval
    away = int(np.count_nonzero(departures < one_round - interval / 2))  # the first one back takes the next place
    found = detachable_carriers(
        Q(distance, "m"), Q(speed, "m/s"), station_time=Q(station, "s"), interval=Q(interval, "s")
    )
    assert found.m_as("") == pytest.approx(away, rel=1e-9)


@given(distance=sheave_distances, speed=line_speeds, station=station_times, interval=st.floats(4, 60))
def test_a_faster_rope_needs_fewer_carriers_but_the_stations_keep_theirs(distance, speed, station, interval):
    rest = {"station_time": Q(station, "s"), "interval": Q(interval, "s")}
    slow, fast = (detachable_carriers(Q(distance, "m"), Q(times * speed, "m/s"), **rest).m_as("") for times in (1, 3))
    in_the_stations = station / interval
    assert fast - in_the_stations == pytest.approx((slow - in_the_stations) / 3, rel=1e-9, abs=1e-9)


# carriers out of service


@given(carriers=st.integers(1, 150), share=st.floats(0, 1), persons=st.integers(1, 12), seed=st.integers(0, 999))
def test_carriers_out_by_counting_the_places_that_pass(carriers, share, persons, seed):
    out = round(share * carriers)
    places = np.full(carriers, persons)
    places[np.random.default_rng(seed).choice(carriers, size=out, replace=False)] = 0
    interval = 7.0
    carried, whole_round = int(places.sum()), carriers * interval  # every place of the loop passes once
    whole = Q(3600 * persons / interval, "pph")
    left = capacity_with_carriers_out(whole, carriers_on_loop=Q(carriers, ""), carriers_out=Q(out, ""))
    assert left.m_as("pph") == pytest.approx(3600 * carried / whole_round, rel=1e-12)


@given(whole=st.floats(50, 4000), carriers=st.integers(2, 150))
def test_all_in_service_all_out_and_one_by_one(whole, carriers):
    out = np.arange(carriers + 1)
    left = capacity_with_carriers_out(Q(whole, "pph"), carriers_on_loop=Q(carriers, ""), carriers_out=Q(out, "")).m_as(
        "pph"
    )
    assert left[0] == pytest.approx(whole, rel=1e-12)
    assert left[-1] == 0
    np.testing.assert_allclose(np.diff(left), -whole / carriers, rtol=1e-9)  # each one costs the same


def test_own_arithmetic_a_platter_with_two_of_forty_two_out():
    left = capacity_with_carriers_out(Q(3600 / 7, "pph"), carriers_on_loop=Q(42, ""), carriers_out=Q(2, ""))
    assert left.m_as("pph") == pytest.approx(40 / 42 * 3600 / 7, rel=1e-12)
    assert math.floor(left.m_as("pph")) == 489
    assert show(left) == "490 pph"


WHOLE, LOOP = Q(514, "pph"), Q(42, "")
STATION = {"carrier_length": Q(2.4, "m"), "carrier_gap": Q(1, "m"), "station_speed": Q(0.5, "m/s")}
TOO_MANY = "Count the carriers on the rope anew."
MESSAGES = [
    (
        lambda: capacity_with_carriers_out(WHOLE, carriers_on_loop=LOOP, carriers_out=Q(43, "")),
        "capacity_with_carriers_out: carriers_out must be 42 or less, the carriers on the loop, but got 43. "
        f"{TOO_MANY}",
    ),
    (
        lambda: capacity_with_carriers_out(WHOLE, carriers_on_loop=LOOP, carriers_out=Q([1, 50], "")),
        "capacity_with_carriers_out: carriers_out must be 42 or less, the carriers on the loop, but got 50. "
        f"{TOO_MANY}",
    ),
    (
        lambda: capacity_with_carriers_out(WHOLE, carriers_on_loop=LOOP, carriers_out=Q(-1, "")),
        "capacity_with_carriers_out: carriers_out must be zero or more, but got -1. Write for example Q(0.2, '').",
    ),
    (
        lambda: capacity_with_carriers_out(WHOLE, carriers_on_loop=42, carriers_out=Q(1, "")),
        "capacity_with_carriers_out: carriers_on_loop needs a unit, but got the bare value 42. Write Q(42, '').",
        UnitError,
    ),
    (
        lambda: least_station_interval(**{**STATION, "station_speed": Q(0, "m/s")}),
        "least_station_interval: station_speed must be greater than zero, but got 0 m/s. "
        "Write for example Q(3.4, 'm/s').",
    ),
    (
        lambda: least_station_interval(**{**STATION, "carrier_gap": Q(-1, "m")}),
        "least_station_interval: carrier_gap must be zero or more, but got -1 m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: detachable_carriers(Q(1500, "m"), Q(5, "m/s"), station_time=Q(-1, "s"), interval=Q(12, "s")),
        "detachable_carriers: station_time must be zero or more, but got -1 s. Write for example Q(2.0, 's').",
    ),
    (
        lambda: detachable_carriers(Q(1500, "m"), Q(5, "m/s"), station_time=Q(120, "m"), interval=Q(12, "s")),
        "detachable_carriers: station_time must be a time, but got a length: 120 m. Write for example Q(2.0, 's').",
        UnitError,
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
