"""Descriptions of lines and readings at their edges: what is missing, what disagrees, what no lift can be."""

import re
from dataclasses import replace

import pytest

from liftcalc import LeftOut, Q, UnitError
from liftcalc.lifts.givens import DisagreementError
from liftcalc.lifts.installation import Installation, read_lifts
from liftcalc.lifts.limits_of_line import limits_of, meeting_speed, ride_energy
from liftcalc.lifts.line import Line, line_from
from liftcalc.lifts.readings import known_values, read_readings
from liftcalc.lifts.shares import share_of_limits

TOW = Line(
    "tow",
    "rope tow",
    line_speed=Q(3.4, "m/s"),
    spacing=Q(6.8, "m"),
    ridden_length=Q(150, "m"),
    vertical_rise=Q(29.4, "m"),
    motor_power=Q(15, "kW"),
)
RISE = {"vertical_rise": Q(100, "m")}
TRAM = {"ridden_length": Q(1600, "m"), "persons_per_carrier": Q(40, "person"), **RISE}
CABINS = {"ridden_length": Q(1500, "m"), "persons_per_carrier": Q(8, "person"), "station_time": Q(120, "s"), **RISE}


def test_carriers_in_a_table(tmp_path):
    columns = "installation,line,kind,level,line_speed,sheave_distance,ridden_length,persons_per_carrier,"
    columns += "carriers_on_loop,vertical_rise,station_time"
    (tmp_path / "lifts.csv").write_text(
        f"{columns}\nCabins,Cabins,gondola,ideal,5 m/s,1500 m,1500 m,8 persons,60,100 m,120 s\n"
    )
    line = read_lifts(tmp_path / "lifts.csv")["Cabins"].lines[0]
    assert line.interval.m_as("s") == pytest.approx(12, rel=1e-9)


def test_an_interval_that_disagrees_with_the_dwell_time():
    with pytest.raises(
        DisagreementError, match="which makes an interval of 260.0 s, but the other readings make it 300.0 s"
    ):
        line_from(
            "tram", "reversible tram", line_speed=Q(8, "m/s"), interval=Q(300, "s"), dwell_time=Q(60, "s"), **TRAM
        )


def test_a_ride_time_from_interval_and_dwell_time():
    line = line_from("tram", "reversible tram", interval=Q(260, "s"), dwell_time=Q(60, "s"), **TRAM)
    assert line.line_speed.m_as("m/s") == pytest.approx(8, rel=1e-9)


@pytest.mark.parametrize("wrong", [50, Q(50, "m"), Q(-50, "s")])
def test_times_in_the_stations_are_checked(wrong):
    for kind, reading in (("reversible tram", "dwell_time"), ("gondola", "station_time")):
        with pytest.raises(UnitError, match=f"line_from: {reading} must be a time, zero or more, but got "):
            line_from(
                "x",
                kind,
                line_speed=Q(8, "m/s"),
                interval=Q(260, "s"),
                ridden_length=Q(1600, "m"),
                **RISE,
                **{reading: wrong},
            )


@pytest.mark.parametrize("wrong", [60, Q(0, ""), Q(-60, ""), Q(60, "m")])
def test_carriers_are_checked(wrong):
    with pytest.raises(UnitError, match="line_from: carriers_on_loop must be a number above zero, but got "):
        line_from(
            "x", "gondola", line_speed=Q(5, "m/s"), sheave_distance=Q(1500, "m"), carriers_on_loop=wrong, **CABINS
        )


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
    with pytest.raises(DisagreementError) as caught:
        line_from(
            "x",
            "gondola",
            line_speed=Q(5, "m/s"),
            sheave_distance=Q(1500, "m"),
            interval=Q(12, "s"),
            carriers_on_loop=Q(66, ""),
            **CABINS,
        )
    assert caught.value.apart == pytest.approx(0.1, rel=1e-6)


def test_a_rise_that_is_longer_than_the_ride():
    with pytest.raises(
        ValueError, match=r"vertical_rise must be less than the ridden length of 150 m, but got 200 m\."
    ):
        replace(TOW, vertical_rise=Q(200, "m"))


@pytest.mark.parametrize(
    ("half", "message"),
    [
        (1, "must be of one kind with 3.0 s, but got 1. Write Q(..., 'second')."),
        (Q(1, "m"), "must be of one kind with 3.0 s, but got 1.0 m. Write Q(..., 'second')."),
        (Q(-1, "s"), "must be zero or more, but got -1.0 s."),
    ],
)
def test_half_widths_are_checked(half, message):
    with pytest.raises(ValueError, match=re.escape(message)):
        share_of_limits(TOW, {"loading_time": Q(3, "s")}, {"loading_time": half}, seed=1)


def test_meeting_speed_is_checked():
    chair = replace(TOW, kind="fixed chair with carpet")
    with pytest.raises(UnitError, match="carpet_speed must be speed of a loading carpet, but got the bare value 0.6"):
        meeting_speed(chair, {"carpet_speed": 0.6})
    with pytest.raises(ValueError, match="carpet_speed must be 3.40 m/s or less, the line speed, but got 4.00 m/s"):
        meeting_speed(chair, {"carpet_speed": Q(4, "m/s")})


def test_a_pick_up_longer_than_the_ride():
    readings = {"rider_mass": Q(75, "kg"), "snow_friction": Q(0.07, ""), "pick_up_acceleration": Q(0.03, "m/s**2")}
    with pytest.raises(ValueError, match=r"takes 192\.7 m to the speed of the rope, but the ride is 150\.0 m long"):
        ride_energy("rope tow", known_values(TOW, readings))


def test_traction_needs_no_pick_up():
    readings = {
        "rider_mass": Q(75, "kg"),
        "snow_friction": Q(0.07, ""),
        "idle_drag": Q(500, "N"),
        "slack_tension": Q(7000, "N"),
        "drive_position": "top",
        "lining_friction": Q(0.25, ""),
        "wrap_angle": Q(180, "degree"),
        "grip_safety_factor": Q(1.25, ""),
    }
    assert "traction" not in [record.name for record in limits_of(TOW, readings) if isinstance(record, LeftOut)]


def test_the_motor_names_all_that_is_missing():
    motor = next(record for record in limits_of(TOW, {}) if record.name == "motor")
    assert motor.missing == ("efficiency", "pick-up acceleration", "rider mass", "snow friction", "idle drag")


def test_a_reading_without_a_line(tmp_path):
    (tmp_path / "readings.csv").write_text("line,reading,value\n,friction,0.07\n")
    with pytest.raises(ValueError, match="row 2: no line"):
        read_readings(tmp_path / "readings.csv")


def test_two_lines_of_one_name():
    with pytest.raises(ValueError, match="two lines of 'Twin' have one name"):
        Installation("Twin", (TOW, TOW))
