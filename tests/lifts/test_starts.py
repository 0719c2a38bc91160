"""Riders who start from rest, and a tram that starts and stops."""

from dataclasses import replace

import pytest
from example_lines import FROM_REST, MIDDLE, TOW, TOW_READINGS, given_of, line_of, pph, true_row

from liftcalc import Q, show
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.lifts.line import line_from


def timed_row(kind, row):
    """Return the row of a kind with the start in its ride time and its riders on the line, and the start itself."""
    speed, start = row["line_speed"], {"reversible tram": 0.5}.get(kind, 1.5)
    lost = speed / (start if kind == "reversible tram" else 2 * start)
    interval = row["interval"] + (lost if kind == "reversible tram" else 0)
    ride = row["ride_time"] + lost
    timed = {"interval": interval, "spacing": speed * interval, "ride_time": ride}
    timed["hourly_capacity"] = 3600 * row["persons_per_carrier"] / interval
    timed["riders_on_line"] = timed["hourly_capacity"] / 3600 * ride
    return row | timed, start


TIMED = [
    ("line_speed", "spacing", "ridden_length"),
    ("ridden_length", "ride_time", "interval"),
    ("ride_time", "riders_on_line", "ridden_length"),
    ("riders_on_line", "hourly_capacity", "ridden_length"),
    ("line_speed", "ride_time", "riders_on_line"),
    ("line_speed", "riders_on_line", "ridden_length"),
    ("ride_time", "ridden_length", "spacing", "riders_on_line"),
]


@pytest.mark.parametrize("names", TIMED, ids=" ".join)
@pytest.mark.parametrize("kind", [*sorted(FROM_REST), "reversible tram"])
def test_a_start_is_taken_off_a_ride_time_and_off_the_riders_on_the_line(kind, names):
    row, start = timed_row(kind, true_row(kind))
    reading = "acceleration" if kind == "reversible tram" else "pick_up_acceleration"
    # the spacing of a tram is what its cabins make of the ride; its interval follows from ride and dwell time
    names = [name for name in names if kind != "reversible tram" or name not in ("spacing", "interval")]
    if kind == "reversible tram" and {"riders_on_line", "hourly_capacity"} & set(names):
        names = ["line_speed", "ridden_length"]
    if kind == "reversible tram" and len(names) < 2:
        names = ["ridden_length", "ride_time"]
    givens = given_of(kind, row, [*names, "persons_per_carrier"]) | {reading: Q(start, "m/s**2")}
    line = line_from("line", kind, **givens)
    for name, found, unit in (
        ("line_speed", line.line_speed, "m/s"),
        ("ride_time", line.ride_time, "s"),
        ("ridden_length", line.ridden_length, "m"),
        ("riders_on_line", line.persons_on_line, "person"),
        ("interval", line.interval, "s"),
    ):
        assert found.m_as(unit) == pytest.approx(row[name], rel=1e-9), name
    assert line.start_not_read == ""
    bare = replace(line, **{reading: None})
    assert bare.ride_time.m_as("s") == pytest.approx(row["ridden_length"] / row["line_speed"])
    assert bare.start_not_read.endswith(f"{reading.replace('pick_up', 'pick-up').replace('_', ' ')} not read")


def test_a_tram_is_known_by_how_often_it_comes_and_how_long_it_stands():
    row, start = timed_row("reversible tram", true_row("reversible tram"))
    givens = given_of("reversible tram", row, ("interval", "ridden_length", "persons_per_carrier"))
    line = line_from("line", "reversible tram", **givens, acceleration=Q(start, "m/s**2"))
    assert line.line_speed.m_as("m/s") == pytest.approx(row["line_speed"])
    assert line.ride_time.m_as("s") == pytest.approx(row["ride_time"])


def test_own_arithmetic_a_ride_from_rest_on_the_demo_tow():
    tow = replace(TOW, pick_up_acceleration=Q(1.5, "m/s**2"))
    assert show(tow.ride_time, "s") == "45.3 s"
    assert tow.ride_time.m_as("s") == pytest.approx(45.25, abs=0.005)  # and not 44.12
    assert show(tow.persons_on_line) == "22.6 persons"
    assert show(TOW.persons_on_line) == "22.1 persons"
    tram = line_from(
        "tram", "reversible tram", line_speed=Q(8, "m/s"), ridden_length=Q(800, "m"), dwell_time=Q(60, "s"),
        acceleration=Q(0.5, "m/s**2"), vertical_rise=Q(300, "m"), persons_per_carrier=Q(40, "person"),
    )  # fmt: skip
    assert tram.ride_time.m_as("s") == pytest.approx(116)  # and not 100
    assert tram.interval.m_as("s") == pytest.approx(176)


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind not in FROM_REST])
def test_belts_chairs_and_cabins_take_their_riders_along_at_once(kind):
    line = line_of(kind, MIDDLE)
    assert line.ride_time.m_as("s") == pytest.approx(MIDDLE["ridden_length"] / MIDDLE["line_speed"])
    assert line.start_not_read == (
        "ride time without the start and the stop: acceleration not read" if kind == "reversible tram" else ""
    )


def test_where_no_pick_up_was_read_the_record_says_so():
    readings = TOW_READINGS | {
        "slack_tension": Q(7000, "N"), "drive_position": "top", "lining_friction": Q(0.25, ""),
        "wrap_angle": Q(180, "degree"), "grip_safety_factor": Q(1.25, ""),
    }  # fmt: skip
    without = {name: value for name, value in readings.items() if name != "pick_up_acceleration"}
    said, unsaid = (
        next(limit for limit in limits_of(TOW, given) if limit.name == "traction") for given in (without, readings)
    )
    assert said.sentence.endswith(" Ride time without the start: pick-up acceleration not read.")
    assert "not read" not in unsaid.sentence
    assert pph(said) > pph(unsaid)  # a ride too short makes the rope's grip look better than it is
