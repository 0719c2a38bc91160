"""A line of any kind from whatever part of its row is known."""

import itertools
from dataclasses import replace

import numpy as np
import pytest
from example_lines import (
    ALL_KINDS,
    DETACHABLE,
    DWELL_TIME,
    RISE,
    STATION_TIME,
    TOW,
    UNITS,
    WITHOUT_A_LOOP,
    given_of,
    true_row,
)
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.lifts.givens import DisagreementError, NotKnownError
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.line import line_from
from liftcalc.units import PlainError


def test_a_line_gives_all_that_follows_from_it():
    assert str(TOW.capacity) == "1,800 pph (ideal)"
    assert TOW.interval.m_as("s") == pytest.approx(2)
    assert TOW.ride_time.m_as("s") == pytest.approx(150 / 3.4)
    assert TOW.persons_on_line.m_as("person") == pytest.approx(150 / 6.8)
    assert TOW.vertical_transport.m_as("person*ft/hour") == pytest.approx(1800 * 29.4 / 0.3048)
    assert TOW.carriers_on_loop is None
    assert replace(TOW, kind="platter lift").carriers_on_loop.m_as("") == pytest.approx(2 * 150 / 6.8)


BASIS = ("line_speed", "spacing", "persons_per_carrier", "ridden_length", "sheave_distance")
FREE = {name: np.eye(5)[place] for place, name in enumerate(BASIS)}
RELATIVE = FREE | {  # how each quantity changes with the five, in parts of itself
    "interval": FREE["spacing"] - FREE["line_speed"],
    "ride_time": FREE["ridden_length"] - FREE["line_speed"],
    "riders_on_line": FREE["persons_per_carrier"] + FREE["ridden_length"] - FREE["spacing"],
    "hourly_capacity": FREE["persons_per_carrier"] + FREE["line_speed"] - FREE["spacing"],
    "carriers_on_loop": FREE["sheave_distance"] - FREE["spacing"],
}
LINE_OF_ITS_OWN = [FREE[name] for name in BASIS if name != "sheave_distance"]


def rank(rows):
    return int(np.linalg.matrix_rank(np.array(rows))) if len(rows) else 0


def follow(targets, rows):
    """Return whether the targets follow from what is known, near the true line."""
    return rank([*rows, *targets]) == rank(rows)


def known_rows(kind, row, names):
    """Return what the givens, and the time in the stations, say of the five quantities."""
    relative = dict(RELATIVE)
    if kind in DETACHABLE:
        on_the_rope = 1 - STATION_TIME / (row["interval"] * row["carriers_on_loop"])  # share of a round
        one_way = FREE["sheave_distance"] - FREE["line_speed"]
        relative["carriers_on_loop"] = on_the_rope * one_way - relative["interval"]
    rows = [relative[name] for name in names]
    if kind == "reversible tram":
        rows.append(relative["interval"] - row["ride_time"] / row["interval"] * relative["ride_time"])
    return rows


def may_be_asked(kind, names):
    """Return whether the givens are of the sort that line_from takes: see its notes.

    Carriers of a detachable lift are asked for with speed and sheave distance, dwell time with a ride time.
    """
    others = [RELATIVE[name] for name in names if name != "carriers_on_loop"]
    if kind in DETACHABLE and "carriers_on_loop" in names:
        return follow([FREE["line_speed"], FREE["sheave_distance"]], others)
    return kind != "reversible tram" or follow([RELATIVE["ride_time"]], others)


@pytest.mark.parametrize("kind", KINDS)
def test_any_sufficient_part_of_a_row_gives_the_same_line(kind):
    row = true_row(kind)
    found = refused = 0
    for size in (3, 4, len(row) - 1, len(row)):
        for names in itertools.combinations(row, size):
            givens = given_of(kind, row, names)
            if not follow(LINE_OF_ITS_OWN, known_rows(kind, row, names)):
                with pytest.raises(PlainError, match="does not follow from"):
                    line_from("line", kind, **givens)
                refused += 1
            elif may_be_asked(kind, names):
                line = line_from("line", kind, **givens)
                for name in ("line_speed", "spacing", "persons_per_carrier", "ridden_length", "interval", "ride_time"):
                    assert getattr(line, name).m_as(UNITS[name]) == pytest.approx(row[name], rel=1e-9), (names, name)
                assert line.persons_on_line.m_as("person") == pytest.approx(row["riders_on_line"], rel=1e-9)
                assert line.capacity.value.m_as("pph") == pytest.approx(row["hourly_capacity"], rel=1e-9)
                if "sheave_distance" in names:
                    assert line.sheave_distance.m_as("m") == pytest.approx(row["sheave_distance"], rel=1e-9)
                    carriers = {"reversible tram": 2}.get(kind, row.get("carriers_on_loop"))
                    assert (line.carriers_on_loop is None) == (carriers is None)
                    assert carriers is None or line.carriers_on_loop.m_as("") == pytest.approx(carriers, rel=1e-9)
                found += 1
    assert found > 50
    assert refused > 50


def spares():
    """Return kind and name of every figure that others of its row check."""
    checked = [(kind, name) for kind in KINDS for name in true_row(kind) if name != "sheave_distance"]
    loops = [(kind, "sheave_distance") for kind in KINDS if kind not in WITHOUT_A_LOOP]
    return checked + loops


@pytest.mark.parametrize(("kind", "wrong"), spares())
def test_a_spare_figure_that_disagrees_is_refused_with_by_how_much(kind, wrong):
    row = true_row(kind)
    names = tuple(name for name in row if kind not in WITHOUT_A_LOOP or name != "sheave_distance")
    givens = given_of(kind, row, names)
    line_from("line", kind, **givens)  # the whole row agrees
    givens[wrong] = 1.05 * givens[wrong]
    with pytest.raises(PlainError) as caught:
        line_from("line", kind, **givens)
    if kind in DETACHABLE and wrong in ("carriers_on_loop", "sheave_distance"):
        off = row | {wrong: 1.05 * row[wrong]}
        interval = (2 * off["sheave_distance"] / off["line_speed"] + STATION_TIME) / off["carriers_on_loop"]
        assert f"make an interval of {interval:.1f} s, but" in str(caught.value)
        assert f"make it {row['interval']:.1f} s" in str(caught.value)
    else:
        assert isinstance(caught.value, DisagreementError)
        assert caught.value.apart == pytest.approx(0.05, rel=1e-6)
        assert "the givens disagree by 5 %, and 1 % is allowed" in str(caught.value)
        assert wrong in str(caught.value)


def test_a_dwell_time_that_disagrees_with_an_interval_by_its_spacing():
    row = true_row("reversible tram")
    givens = given_of("reversible tram", row, ("line_speed", "ridden_length", "persons_per_carrier", "spacing"))
    givens["dwell_time"] = Q(DWELL_TIME + 26, "s")  # a tenth of the interval of 260 s
    error = refuses(
        lambda: line_from("tram", "reversible tram", **givens),
        "solve_line: the givens disagree by 10 %, and 1 % is allowed: line_speed is 8.00 m/s, but spacing and interval "
        "make it 7.27 m/s. There is one figure to spare, so only the set is known to disagree: nobody can say from "
        "these figures which one is wrong. Each, as given and as the others make it: line_speed: 8.00 m/s, or "
        "7.27 m/s; spacing: 2,080 m, or 2,288 m; interval: 286.0 s, or 260.0 s. Measure one again, or leave one out.",
        DisagreementError,
    )
    assert error.apart == pytest.approx(0.10, rel=1e-6)


def test_carriers_that_agree_within_one_percent_leave_the_interval_as_it_was_timed():
    row = true_row("gondola")
    givens = given_of("gondola", row, ("line_speed", "ridden_length", "persons_per_carrier", "sheave_distance"))
    timed = Q(1.008 * row["interval"], "s")
    line = line_from("cabins", "gondola", interval=timed, carriers_on_loop=Q(row["carriers_on_loop"], ""), **givens)
    assert line.interval.m_as("s") == pytest.approx(timed.m_as("s"), rel=1e-9)


@pytest.mark.parametrize("kind", KINDS)
def test_too_few_figures_say_what_is_missing(kind):
    refuses(
        lambda: line_from("line", kind, line_speed=Q(2.4, "m/s"), spacing=Q(12, "m"), **RISE),
        "line_from: 'line': ridden_length does not follow from line_speed and spacing (and persons_per_carrier taken "
        "as 1 person). To know it, give ride_time, or riders_on_line.",
        NotKnownError,
    )
    by_carriers = "" if kind in WITHOUT_A_LOOP else ", or carriers_on_loop and sheave_distance"
    refuses(
        lambda: line_from("line", kind, interval=Q(7, "s"), ridden_length=Q(600, "m"), **RISE),
        "line_from: 'line': line_speed does not follow from interval and ridden_length (and persons_per_carrier taken "
        f"as 1 person). To know it, give spacing, or ride_time, or riders_on_line{by_carriers}.",
        NotKnownError,
    )


def test_one_person_a_carrier_where_nothing_else_is_said():
    line = line_from(
        "line", "platter lift", line_speed=Q(2.8, "m/s"), interval=Q(7, "s"), ridden_length=Q(400, "m"),
        vertical_rise=Q(78, "m"),
    )  # fmt: skip
    assert line.persons_per_carrier == Q(1, "person")
    assert (line.motor_power, line.level, line.sheave_distance, line.station_time) == (None, "ideal", None, None)


def test_carriers_on_a_loop_by_kind():
    for kind in KINDS:
        row = true_row(kind)
        line = line_from(
            "line", kind, **given_of(kind, row, ("line_speed", "spacing", "persons_per_carrier", "ridden_length"))
        )
        length, speed, interval = row["ridden_length"], row["line_speed"], row["interval"]  # stands in for the sheaves
        expected = {
            "reversible tram": 2,
            **dict.fromkeys(("rope tow", "conveyor")),
            **dict.fromkeys(DETACHABLE, (2 * length / speed + STATION_TIME) / interval),
        }.get(kind, 2 * length / (speed * interval))
        assert (
            line.carriers_on_loop is None
            if expected is None
            else line.carriers_on_loop.m_as("") == pytest.approx(expected, rel=1e-9)
        )
        if kind in DETACHABLE:
            assert replace(line, station_time=None).carriers_on_loop is None


@given(speed=st.floats(1, 6), length=st.floats(300, 3000), dwell=st.floats(20, 200), persons=st.integers(10, 100))
def test_three_times_the_speed_of_a_tram_whose_cabins_still_stand(speed, length, dwell, persons):
    slow, fast = (
        line_from(
            "tram", "reversible tram", line_speed=Q(times * speed, "m/s"), ridden_length=Q(length, "m"),
            dwell_time=Q(dwell, "s"), persons_per_carrier=Q(persons, "person"), vertical_rise=Q(100, "m"),
        ).capacity.value.m_as("pph")
        for times in (1, 3)
    )  # fmt: skip
    assert slow == pytest.approx(3600 * persons / (length / speed + dwell), rel=1e-9)
    assert fast == pytest.approx(3600 * persons / (length / speed / 3 + dwell), rel=1e-9)
    assert slow < fast < 3 * slow


TRAM = {"ridden_length": Q(1600, "m"), "persons_per_carrier": Q(40, "person"), **RISE}
CABINS = {"ridden_length": Q(1500, "m"), "persons_per_carrier": Q(8, "person"), "station_time": Q(120, "s"), **RISE}


def test_a_ride_time_from_interval_and_dwell_time():
    line = line_from("tram", "reversible tram", interval=Q(260, "s"), dwell_time=Q(60, "s"), **TRAM)
    assert line.line_speed.m_as("m/s") == pytest.approx(8, rel=1e-9)


def test_no_time_in_the_stations():
    line = line_from(
        "x", "gondola", line_speed=Q(5, "m/s"), interval=Q(12, "s"), **(CABINS | {"station_time": Q(0, "s")})
    )
    assert line.carriers_on_loop.m_as("") == pytest.approx(2 * 1500 / 60, rel=1e-9)


def test_speed_and_sheave_distance_from_the_carriers():
    loop = {"interval": Q(12, "s"), "carriers_on_loop": Q(60, "")}
    by_distance = line_from("x", "gondola", sheave_distance=Q(1500, "m"), **loop, **CABINS)
    assert by_distance.line_speed.m_as("m/s") == pytest.approx(5, rel=1e-9)
    by_speed = line_from("x", "gondola", line_speed=Q(5, "m/s"), **loop, **CABINS)
    assert by_speed.sheave_distance.m_as("m") == pytest.approx(1500, rel=1e-9)


def test_carriers_that_disagree_say_by_how_much():
    loop = {"sheave_distance": Q(1500, "m"), "carriers_on_loop": Q(66, "")}
    error = refuses(
        lambda: line_from("x", "gondola", line_speed=Q(5, "m/s"), interval=Q(12, "s"), **loop, **CABINS),
        "line_from: 'x' has 66 carriers, which make an interval of 10.9 s, but the other readings make it 12.0 s. "
        "Count or time again.",
        DisagreementError,
    )
    assert error.apart == pytest.approx(0.1, rel=1e-6)


@pytest.mark.parametrize(
    ("power", "shown"), [(Q(0, "kW"), "0.0 kW"), (Q(-15, "kW"), "-15.0 kW"), (Q(15, "s"), "15.0 s"), (15, "15")]
)
def test_a_motor_without_power_is_refused(power, shown):
    refuses(
        lambda: replace(TOW, motor_power=power),
        f"Line: motor_power must be a power above zero, but got {shown}. Write Q(15, 'kW').",
        UnitError,
    )


@pytest.mark.parametrize(("wrong", "shown"), [(50, "50"), (Q(50, "m"), "50.0 m"), (Q(-50, "s"), "-50.0 s")])
def test_times_in_the_stations_are_checked(wrong, shown):
    timed = {"line_speed": Q(8, "m/s"), "interval": Q(260, "s"), "ridden_length": Q(1600, "m"), **RISE}
    for kind, reading in (("reversible tram", "dwell_time"), ("gondola", "station_time")):
        refuses(
            lambda kind=kind, reading=reading: line_from("x", kind, **timed, **{reading: wrong}),
            f"line_from: {reading} must be a time, zero or more, but got {shown}. Write Q(60, 's').",
            UnitError,
        )


@pytest.mark.parametrize(("wrong", "shown"), [(60, "60"), (Q(0, ""), "0"), (Q(-60, ""), "-60"), (Q(60, "m"), "60.0 m")])
def test_carriers_are_checked(wrong, shown):
    loop = {"line_speed": Q(5, "m/s"), "sheave_distance": Q(1500, "m"), "carriers_on_loop": wrong}
    refuses(
        lambda: line_from("x", "gondola", **loop, **CABINS),
        f"line_from: carriers_on_loop must be a number above zero, but got {shown}. Write Q(60, '').",
        UnitError,
    )


@pytest.mark.parametrize("kind", WITHOUT_A_LOOP)
def test_carriers_on_a_lift_without_a_loop_are_refused(kind):
    refuses(
        lambda: line_from("x", kind, line_speed=Q(3, "m/s"), carriers_on_loop=Q(6, ""), **RISE),
        "solve_line: 'carriers_on_loop' is no quantity of a line without carriers. Is 'riders_on_line' meant? May be "
        "given: line_speed=Q(3.4, 'm/s'), spacing=Q(6.8, 'm'), interval=Q(2, 's'), "
        "persons_per_carrier=Q(2, 'person'), sheave_distance=Q(160, 'm'), ridden_length=Q(150, 'm'), "
        "ride_time=Q(44, 's'), riders_on_line=Q(22, 'person'), hourly_capacity=Q(1800, 'person/hour').",
    )


LOOP = {"line_speed": Q(5, "m/s"), "sheave_distance": Q(1500, "m"), "ridden_length": Q(1500, "m"), **RISE}
SIXTY = {"carriers_on_loop": Q(60, ""), "station_time": Q(120, "s")}
MESSAGES = [
    (lambda: replace(TOW, kind="sky hook"), f"Line: kind must be one of {ALL_KINDS}, but got 'sky hook'."),
    (lambda: line_from("x", "sky hook", **RISE), f"line_from: kind must be one of {ALL_KINDS}, but got 'sky hook'."),
    (
        lambda: line_from("x", "platter lift", dwell_time=Q(50, "s"), **RISE),
        "line_from: dwell_time is no reading of a platter lift, but got 50.0 s. Leave it out.",
    ),
    (
        lambda: line_from("x", "fixed chair", station_time=Q(2, "minute"), **RISE),
        "line_from: station_time is no reading of a fixed chair, but got 2.0 min. Leave it out.",
    ),
    (
        lambda: line_from("x", "reversible tram", station_time=Q(90, "s"), **RISE),
        "line_from: station_time is no reading of a reversible tram, but got 90.0 s. Leave it out.",
    ),
    (
        lambda: line_from("Cabins", "gondola", **LOOP, carriers_on_loop=Q(60, "")),
        "line_from: the interval of 'Cabins' does not follow from carriers_on_loop without station_time. "
        "Give station_time, or the interval itself.",
    ),
    (
        lambda: line_from("Cabins", "gondola", ridden_length=Q(1500, "m"), **RISE, **SIXTY),
        "line_from: the interval of 'Cabins' does not follow from carriers_on_loop without line_speed and "
        "sheave_distance. Give line_speed and sheave_distance, or the interval itself.",
    ),
    (
        lambda: line_from("Cabins", "gondola", **RISE, **SIXTY),
        "line_from: the interval of 'Cabins' does not follow from carriers_on_loop without line_speed and "
        "sheave_distance. Give line_speed and sheave_distance, or the interval itself.",
    ),
    (
        lambda: line_from("Cabins", "gondola", **LOOP, **SIXTY, interval=Q(14, "s")),
        "line_from: 'Cabins' has 60 carriers, which make an interval of 12.0 s, but the other readings make it "
        "14.0 s. Count or time again.",
        DisagreementError,
    ),
    (
        lambda: line_from(
            "tram", "reversible tram", line_speed=Q(8, "m/s"), interval=Q(300, "s"), dwell_time=Q(60, "s"), **TRAM
        ),
        "line_from: 'tram' has a dwell time of 60.0 s, which makes an interval of 260.0 s, but the other readings make "
        "it 300.0 s. Count or time again.",
        DisagreementError,
    ),
    (
        lambda: replace(TOW, level="best"),
        "Capacity: level must be one of packing, ideal, governed, simulated, counted, but got 'best'.",
    ),
    (
        lambda: replace(TOW, spacing=Q(0, "m")),
        "hourly_capacity: spacing must be greater than zero, but got 0 m. Write for example Q(6.8, 'm').",
    ),
    (
        lambda: replace(TOW, ridden_length=150),
        "ride_time: ridden_length needs a unit, but got the bare value 150. Write Q(150, 'm').",
        UnitError,
    ),
    (
        lambda: replace(TOW, vertical_rise=Q(200, "m")),
        "Line: vertical_rise must be less than the ridden length of 150 m, but got 200 m. Write the length along the "
        "slope, and the height gained.",
    ),
    (
        lambda: replace(TOW, vertical_rise=29.4),
        "vertical_transport: vertical_rise needs a unit, but got the bare value 29.4. Write Q(29.4, 'ft').",
        UnitError,
    ),
    (
        lambda: line_from("x", "fixed chair", pick_up_acceleration=Q(1.5, "m/s**2"), **RISE),
        "line_from: pick_up_acceleration is no reading of a fixed chair, but got 1.50 m/s². Leave it out.",
    ),
    (
        lambda: line_from("x", "reversible tram", acceleration=Q(0, "m/s**2"), **RISE),
        "line_from: acceleration must be an acceleration above zero, but got 0.00 m/s². Write Q(1.5, 'm/s**2').",
        UnitError,
    ),
    (
        lambda: replace(TOW, ridden_length=Q(30, "m"), line_speed=Q(10, "m/s"), pick_up_acceleration=Q(1, "m/s**2")),
        "ride_time_from_rest: pick_up_acceleration of 1 m/s² takes 50.0 m to the speed of the rope, but the ride is "
        "30.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
