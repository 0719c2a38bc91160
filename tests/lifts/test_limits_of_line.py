"""All limits of a line at once: against sums by hand, as curves, with readings that are missing."""

from dataclasses import replace

import numpy as np
import pytest
from by_hand import energy_by_hand, limits_by_hand
from example_lines import (
    DETACHABLE,
    ENOUGH,
    IN_A_STATION,
    LIMITS,
    MIDDLE,
    OF_A_LINE,
    TOW,
    everything,
    line_of,
    names_of,
    pph,
    readings_of,
    with_rise,
)
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import LeftOut, Limit, Q, UnitError, governing, motor_capacity
from liftcalc.lifts.kinds import KINDS, ON_SKIS
from liftcalc.lifts.limits_of_line import (
    capacities_at,
    limits_of,
    meeting_speed,
    power_needed,
    ride_energy,
    where_possible,
)
from liftcalc.lifts.line import line_from
from liftcalc.lifts.readings import known_values
from liftcalc.vocabulary import words_of

# laws of the limits


def limits_at(kind, numbers, readings):
    """Return what each limit allows, by name, and the records."""
    records = limits_of(line_of(kind, numbers), readings)
    return {record.name: pph(record) for record in records if isinstance(record, Limit)}, records


def curves_at(kind, numbers, readings, **arrays):
    """Return each limit as an array of plain pph."""
    values = known_values(line_of(kind, numbers), readings)
    values |= {name: Q(array, (ENOUGH | OF_A_LINE)[name][2]) for name, array in arrays.items()}
    size = len(next(iter(arrays.values())))
    return {name: np.broadcast_to(each.m_as("pph"), size) for name, each in capacities_at(kind, values).items()}


@pytest.mark.parametrize("kind", KINDS)
@given(
    numbers=everything,
    speeds_and_masses=st.lists(st.tuples(st.floats(0.3, 8), st.floats(30, 120)), min_size=2, max_size=3),
    constant_torque=st.booleans(),
)
def test_curves_are_the_limits_at_each_place_and_the_smallest_governs(
    kind, numbers, speeds_and_masses, constant_torque
):
    numbers, more = with_rise(numbers), ("base_speed",) if constant_torque else ()
    speeds, masses = zip(*speeds_and_masses, strict=True)
    curves = curves_at(kind, numbers, readings_of(kind, numbers, *more), line_speed=speeds, rider_mass=masses)
    assert set(curves) == LIMITS | ({"station"} if kind in DETACHABLE else set())
    for place, (speed, mass) in enumerate(speeds_and_masses):
        here = numbers | {"line_speed": speed, "rider_mass": mass}
        single, records = limits_at(kind, here, readings_of(kind, here, *more))
        assert {name: float(curve[place]) for name, curve in curves.items()} == pytest.approx(single, rel=1e-9)
        result = governing(records)
        assert result.left_out == ()
        assert result.capacity.value.m_as("pph") == single[result.limit.name] == min(single.values())


GAPS = [  # kind, what lies outside at the last two of four places, by the readings it is about
    ("rope tow", {"efficiency": [0.8, 1.0, 1.01, 8.5]}),
    ("rope tow", {"grip_safety_factor": [1.25, 1.0, 0.99, 0.5]}),
    *((kind.name, {"tether_angle": [0, 89, 90, 95]}) for kind in KINDS.values() if kind.riding is ON_SKIS),
    ("rope tow", {"line_speed": [3, 9, 75, 400]}),
    ("rope tow", {"pick_up_acceleration": [2.0, 1.0, 0.001, 0.0001]}),
]


@pytest.mark.parametrize(("kind", "arrays"), GAPS, ids=[f"{case[0]} {next(iter(case[1]))}" for case in GAPS])
def test_a_curve_has_a_gap_where_its_values_fit_no_formula(kind, arrays):
    curves = curves_at(kind, MIDDLE, readings_of(kind, MIDDLE), **arrays)
    inside = {name: numbers[:2] for name, numbers in arrays.items()}
    for name, curve in curves_at(kind, MIDDLE, readings_of(kind, MIDDLE), **inside).items():
        assert np.isnan(curves[name]).tolist() == [False, False, True, True]
        np.testing.assert_allclose(curves[name][:2], curve)
    name, numbers = next(iter(arrays.items()))
    with pytest.raises(ValueError, match=r"must be|takes"):
        limits_at(kind, MIDDLE | {name: numbers[3]}, readings_of(kind, MIDDLE | {name: numbers[3]}))


def test_a_chair_takes_its_riders_along_at_once_whatever_else_was_read():
    readings = readings_of("fixed chair", MIDDLE) | {"pick_up_acceleration": Q(0.001, "m/s**2")}
    values = known_values(line_of("fixed chair", MIDDLE), readings)
    assert where_possible("fixed chair", values)


@pytest.mark.parametrize("kind", KINDS)
@given(numbers=everything, start=st.booleans())
def test_limits_are_the_sums_by_hand(kind, numbers, start):
    numbers = with_rise(numbers)
    readings = readings_of(kind, numbers, *(("starting_acceleration", "moving_mass", "groove_angle") if start else ()))
    single, _ = limits_at(kind, numbers, readings)
    hand = limits_by_hand(kind, {name: numbers[name] for name in (*OF_A_LINE, *readings)})
    assert single == pytest.approx({name: max(number, 0) for name, number in hand.items()}, rel=1e-6, abs=1e-6)


SPEEDS = np.linspace(0.5, 8, 9)


@pytest.mark.parametrize("kind", KINDS)
@given(numbers=everything)
def test_the_motor_and_the_line_speed(kind, numbers):
    numbers = with_rise(numbers)
    readings = readings_of(kind, numbers)
    work = KINDS[kind].riding.work(known_values(line_of(kind, numbers), readings))
    power, efficiency, no_drag = Q(numbers["motor_power"], "kW"), readings["efficiency"], Q(0, "N")
    simple = motor_capacity(power, efficiency, Q(SPEEDS, "m/s"), no_drag, work).m_as("pph")
    np.testing.assert_allclose(simple, simple[0], rtol=1e-12)  # pull alone: the speed drops out
    falling = curves_at(kind, numbers, readings, line_speed=SPEEDS)["motor"]
    assert np.all(falling < simple)
    runs = falling > 0
    assert np.all(np.diff(falling[runs]) < 0)
    assert not np.any(runs[1:] & ~runs[:-1])  # once the empty rope takes all the power, no higher speed helps


@pytest.mark.parametrize("kind", KINDS)
@given(numbers=everything)
def test_the_motor_at_constant_torque(kind, numbers):
    numbers = with_rise(numbers) | {"base_speed": 8.0}
    readings = readings_of(kind, numbers, "base_speed")
    rising = curves_at(kind, numbers, readings, line_speed=SPEEDS)["motor"]
    plain = {name: numbers[name] for name in (*OF_A_LINE, *readings)}
    energies = np.array([energy_by_hand(kind, plain | {"line_speed": speed})["energy"] for speed in SPEEDS])
    force = rising * energies / SPEEDS / 3600  # what the drive has left for riders
    by_torque = numbers["efficiency"] * 1000 * numbers["motor_power"] / 8.0 - energy_by_hand(kind, plain)["drag"]
    np.testing.assert_allclose(force, max(by_torque, 0), rtol=1e-6, atol=1e-6)
    if by_torque > 1:
        share = rising / rising[-1]
        in_proportion = SPEEDS / SPEEDS[-1]
        more = energies[-1] / energy_by_hand(kind, plain)["work"]  # the pick-up is all that spoils the proportion
        assert np.all(share >= in_proportion * (1 - 1e-9))
        assert np.all(share <= in_proportion * more * (1 + 1e-9))
    beyond = {"line_speed": [8.0, 9.0, 12.0]}
    above = curves_at(kind, numbers, readings, **beyond)["motor"]
    full_power = curves_at(kind, numbers, readings_of(kind, numbers), **beyond)["motor"]
    np.testing.assert_allclose(above, full_power, rtol=1e-12)


@pytest.mark.parametrize("kind", KINDS)
@given(numbers=everything)
def test_traction_grows_with_the_wrap_angle(kind, numbers):
    numbers = with_rise(numbers)
    curve = curves_at(kind, numbers, readings_of(kind, numbers), wrap_angle=np.linspace(90, 360, 7))["traction"]
    holds = curve > 0
    assert np.all(np.diff(curve[holds]) > 0)
    assert not np.any(holds[:-1] & ~holds[1:])


SAME_AT_ANY_SPEED = ("spacing", "loading", "unload", "station")


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind != "reversible tram"])
@given(numbers=everything)
def test_three_times_the_speed_at_three_times_the_spacing_carries_the_same(kind, numbers):
    numbers = with_rise(numbers)
    readings = readings_of(kind, numbers)
    thrice = numbers | {"line_speed": 3 * numbers["line_speed"], "spacing": 3 * numbers["spacing"]}
    slow, fast = line_of(kind, numbers), line_of(kind, thrice)
    assert fast.capacity.value.m_as("pph") == pytest.approx(slow.capacity.value.m_as("pph"), rel=1e-12)
    assert 3 * fast.persons_on_line.m_as("person") == pytest.approx(slow.persons_on_line.m_as("person"), rel=1e-12)
    of_slow, of_fast = limits_at(kind, numbers, readings)[0], limits_at(kind, thrice, readings)[0]
    names = [name for name in SAME_AT_ANY_SPEED if name in of_slow]
    assert {name: of_fast[name] for name in names} == pytest.approx({name: of_slow[name] for name in names}, rel=1e-12)
    assert of_fast["motor"] <= of_slow["motor"]
    by_interval = line_from(
        "line", kind, line_speed=fast.line_speed, interval=slow.interval, ridden_length=fast.ridden_length,
        persons_per_carrier=fast.persons_per_carrier, vertical_rise=fast.vertical_rise,
    )  # fmt: skip
    assert by_interval.spacing.m_as("m") == pytest.approx(3 * numbers["spacing"], rel=1e-9)


TRAMS = [(8.0, 800.0, 60.0, 40), (5.0, 1500.0, 200.0, 80)]  # line speed [m/s], length [m], dwell [s], persons


@pytest.mark.parametrize(("speed", "length", "dwell", "persons"), TRAMS, ids=["short", "long"])
def test_the_time_that_a_cabin_stands_is_taken_from_the_spacing_limit(speed, length, dwell, persons):
    tram = line_from(
        "tram", "reversible tram", line_speed=Q(speed, "m/s"), ridden_length=Q(length, "m"),
        dwell_time=Q(dwell, "s"), persons_per_carrier=Q(persons, "person"), vertical_rise=Q(100, "m"),
    )  # fmt: skip
    speeds = np.array([0.5, 1.0, 2.0]) * speed
    expected = 3600 * persons / (length / speeds + dwell)
    (spacing,) = (limit for limit in limits_of(tram, {}) if limit.name == "spacing")
    assert pph(spacing) == pytest.approx(expected[1], rel=1e-9)
    values = known_values(tram, {}) | {"line_speed": Q(speeds, "m/s")}
    assert capacities_at("reversible tram", values)["spacing"].m_as("pph") == pytest.approx(expected, rel=1e-9)
    longer = known_values(tram, {}) | {"dwell_time": Q(2 * dwell, "s")}
    assert capacities_at("reversible tram", longer)["spacing"].m_as("pph") == pytest.approx(
        3600 * persons / (length / speed + 2 * dwell), rel=1e-9
    )


@pytest.mark.parametrize("kind", KINDS)
def test_a_station_limits_only_a_lift_whose_carriers_leave_the_rope(kind):
    line = line_of(kind, MIDDLE)
    readings = readings_of(kind, MIDDLE) | {name: Q(MIDDLE[name], ENOUGH[name][2]) for name in IN_A_STATION}
    with_a_station = {kind} & set(DETACHABLE)
    names = {record.name for record in limits_of(line, readings)}
    assert names == LIMITS | ({"station"} if with_a_station else set())
    curves = capacities_at(kind, known_values(line, readings))
    assert ("station" in curves) == bool(with_a_station)
    if with_a_station:
        interval = (MIDDLE["carrier_length"] + MIDDLE["carrier_gap"]) / MIDDLE["station_speed"]
        expected = 3600 * MIDDLE["persons_per_carrier"] / interval
        assert curves["station"].m_as("pph") == pytest.approx(expected, rel=1e-9)


MEETING = {  # kind: speed at which a carrier comes, at 2 m/s with a carpet of 0.6 m/s and a station at 0.4 m/s
    **dict.fromkeys(KINDS, 2.0),
    "fixed chair with carpet": 1.4,
    **dict.fromkeys(DETACHABLE, 0.4),
    "reversible tram": 0.0,
}


@pytest.mark.parametrize("kind", KINDS)
def test_how_fast_a_carrier_comes_to_who_waits(kind):
    line = replace(line_of(kind, MIDDLE), line_speed=Q(2, "m/s"))
    found = meeting_speed(line, {"carpet_speed": Q(0.6, "m/s"), "station_speed": Q(0.4, "m/s")})
    assert found.m_as("m/s") == pytest.approx(MEETING[kind], abs=1e-12)
    needs_a_reading = kind == "fixed chair with carpet" or kind in DETACHABLE
    assert (meeting_speed(line, {}) is None) == needs_a_reading


@pytest.mark.parametrize("kind", KINDS)
def test_power_needed_carries_the_line_and_not_one_more(kind):
    line, readings = line_of(kind, MIDDLE), readings_of(kind, MIDDLE)
    hand = energy_by_hand(kind, {name: MIDDLE[name] for name in (*OF_A_LINE, *readings)})
    flow = MIDDLE["persons_per_carrier"] * MIDDLE["line_speed"] / MIDDLE["spacing"]
    at_the_rope = flow * hand["energy"] + hand["drag"] * MIDDLE["line_speed"]
    needed = power_needed(line, readings)
    assert needed.m_as("W") == pytest.approx(at_the_rope / MIDDLE["efficiency"], rel=1e-9)
    motor = next(limit for limit in limits_of(replace(line, motor_power=needed), readings) if limit.name == "motor")
    assert pph(motor) == pytest.approx(line.capacity.value.m_as("pph"), rel=1e-9)
    for name in ("rider_mass", "efficiency"):
        assert power_needed(line, {other: readings[other] for other in readings if other != name}) is None


# readings that are missing

RIDE_NEEDS = ("rider_mass", "snow_friction", "sheave_drag_share", "bed_friction")
DRAG_NEEDS = ("idle_drag", "hanging_mass", "return_friction", "belt_mass_per_length")
NEEDED_BY = {  # reading: the limits that need it
    "loading_time": {"loading"},
    "clearing_time": {"unload"},
    "efficiency": {"motor"},
    "pick_up_acceleration": {"motor"},
    **dict.fromkeys((*RIDE_NEEDS, *DRAG_NEEDS), {"motor", "traction"}),
    **dict.fromkeys(
        ("drive_position", "slack_tension", "lining_friction", "wrap_angle", "grip_safety_factor"), {"traction"}
    ),
    "moving_mass": {"traction"},
    "drive_inertia_mass": set(),  # counts where a line is started, and for no limit
    **dict.fromkeys(IN_A_STATION, {"station"}),
}
MAY_BE_LEFT_OUT = {  # reading: the limits that change without it, which is not left out
    "pick_up_acceleration": {"traction"},
    "starting_acceleration": {"traction"},
    "groove_angle": {"traction"},
    "tether_angle": {"motor", "traction"},
    "base_speed": {"motor"},
    "loading_places": {"loading"},
    "unloading_places": {"unload"},
    "carpet_speed": set(),
}
MORE = ("base_speed", "carpet_speed", "starting_acceleration", "moving_mass", "drive_inertia_mass", "groove_angle")


def kinds_and_readings():
    """Return every kind with every reading that it has."""
    readings = {kind: set(names_of(kind)) | set(MORE) | {"drive_position"} for kind in KINDS}
    return [(kind, name) for kind in KINDS for name in sorted(readings[kind])]


@pytest.mark.parametrize(("kind", "name"), kinds_and_readings())
def test_one_missing_reading_leaves_out_just_the_limits_that_need_it(kind, name):
    line, readings = line_of(kind, MIDDLE), readings_of(kind, MIDDLE, *MORE)
    whole, _ = limits_at(kind, MIDDLE, readings)
    without = {other: value for other, value in readings.items() if other != name}
    rest, records = limits_at(kind, MIDDLE, without)
    left_out = {record.name: record for record in records if isinstance(record, LeftOut)}
    assert set(left_out) == NEEDED_BY.get(name, set())
    assert set(left_out) | set(rest) == set(whole)
    unmoved = set(rest) - MAY_BE_LEFT_OUT.get(name, set())
    assert {other: rest[other] for other in unmoved} == {other: whole[other] for other in unmoved}
    for other in set(rest) - unmoved:
        assert rest[other] != pytest.approx(whole[other], rel=1e-6)
    for record in left_out.values():
        assert record.sentence == f"Left out, not zero: no reading of {' and '.join(record.missing)}."
    if "motor" in left_out:
        words = {"idle drag"} if name in DRAG_NEEDS else {words_of(name)}
        words |= (
            {"idle drag"} if name in ("sheave_drag_share", "bed_friction") else set()
        )  # both ride and drag need these
        assert left_out["motor"].missing
        assert set(left_out["motor"].missing) <= words
    if NEEDED_BY.get(name) == {"traction"}:
        assert len(left_out["traction"].missing) == 1
    if "station" in left_out:
        assert left_out["station"].missing == (words_of(name),)
    assert set(capacities_at(kind, known_values(line, without))) == set(rest)
    assert limits_of(line, readings | {name: None}) == records  # None is as good as not there


@pytest.mark.parametrize("kind", KINDS)
def test_a_motor_that_is_not_known_and_a_lift_without_readings(kind):
    line, readings = replace(line_of(kind, MIDDLE), motor_power=None), readings_of(kind, MIDDLE)
    left_out = [record for record in limits_of(line, readings) if isinstance(record, LeftOut)]
    assert [(record.name, record.missing) for record in left_out] == [("motor", ("motor power",))]
    bare = limits_of(line, {})
    assert [record.name for record in bare if isinstance(record, Limit)] == ["spacing"]
    assert list(capacities_at(kind, known_values(line, {}))) == ["spacing"]
    assert power_needed(line, {}) is None


def test_the_motor_names_all_that_is_missing():
    motor = next(record for record in limits_of(TOW, {}) if record.name == "motor")
    assert motor.missing == ("efficiency", "pick-up acceleration", "rider mass", "snow friction", "idle drag")


CARPET_CHAIR = replace(TOW, kind="fixed chair with carpet")
SLOW_PICK_UP = {"rider_mass": Q(75, "kg"), "snow_friction": Q(0.07, ""), "pick_up_acceleration": Q(0.03, "m/s**2")}
MESSAGES = [
    (
        lambda: limits_of(TOW, {"rider_mass": Q(75, "N")}),
        "known_values: rider_mass must be mass of one rider with clothes, skis and all, but got 75 N. "
        "Write Q(..., 'kg').",
        UnitError,
    ),
    (
        lambda: meeting_speed(CARPET_CHAIR, {"carpet_speed": 0.6}),
        "known_values: carpet_speed must be speed of a loading carpet, but got the bare value 0.6. "
        "Write Q(..., 'm/s').",
        UnitError,
    ),
    (
        lambda: meeting_speed(CARPET_CHAIR, {"carpet_speed": Q(4, "m/s")}),
        "meeting_speed: carpet_speed must be 3.40 m/s or less, the line speed, but got 4.00 m/s. Measure both again.",
    ),
    (
        lambda: ride_energy("rope tow", known_values(TOW, SLOW_PICK_UP)),
        "energy_per_rider: pick_up_acceleration of 0.03 m/s² takes 192.7 m to the speed of the rope, but the ride is "
        "150.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride.",
    ),
]


@table_of_messages(MESSAGES)
def test_message(call, message, kind):
    refuses(call, message, kind)
