"""The formulas against figures printed outside the project; the id of each test is its source.

A tolerance is the rounding of the printed figure. Where a printed figure is wrong, the test asserts our value and the
difference from the print.
"""

import math

import pytest

from liftcalc import (
    Q,
    attendant_stopping_distance,
    capital_recovery,
    capital_recovery_factor,
    comfortable_carrying_capacity,
    daily_vertical,
    grade_from_angle,
    grade_from_rise,
    headway,
    headway_from_interval,
    hourly_capacity,
    hourly_capacity_from_head_count,
    hourly_capacity_from_interval,
    interval_for_capacity,
    interval_from_headway,
    line_speed_for_headway,
    mean_wait,
    mean_wait_constant,
    mean_wait_exponential,
    persons_from_flow,
    persons_on_line,
    reversible_capacity,
    ride_time,
    rider_deceleration,
    rider_stopping_distance,
    rope_stopping_distance,
    second_moment_from_variation,
    sinking_fund_factor,
    slope_angle,
    slope_capacity,
    slope_density,
    slope_length,
    spacing_for_capacity,
    spacing_for_headway,
    vertical_rise,
    vertical_transport,
    wait_from_line,
)
from liftcalc.formulas import slope_crowding

SAM_2018 = "Know Your Capacity, SAM (Ski Area Management), July 2018"
WIKI = "community wiki page Ski lift capacity: detachable vs fixed grip (weak source, exact arithmetic)"
PENNSYLVANIA = "34 Pa. Code s. 7.466, Capacity, speed, and loading interval"
ASPEN = "USDA Forest Service, Aspen Highlands Ski Area Final EIS, April 1997, Summary, Table 3"
LA_PAZ = "operator's and maker's figures for an urban gondola in La Paz"
SAM_LIFTS = "SAM annual lift tables, which define VTFH"

INTERVALS = [  # persons, interval [s], pph, source
    (4, 6.0, 2400, f"{SAM_2018}: quad, 6 s"),
    (4, 8.0, 1800, f"{SAM_2018}: quad, 8 s"),
    (2, 5.0, 1440, f"{PENNSYLVANIA}: T-bar at least 5 s, with no extra time"),
    (1, 3.0, 1200, f"{PENNSYLVANIA}: single outfit at least 3 s, with no extra time"),
    (4, 9.0, 1600, f"{ASPEN}, Thunderbowl"),
    (2, 6.0, 1200, f"{ASPEN}, Maroon Bowl"),
    (10, 12.0, 3000, LA_PAZ),
]


@pytest.mark.parametrize(("persons", "interval", "pph", "source"), INTERVALS, ids=[case[-1] for case in INTERVALS])
def test_capacity_from_interval_and_back(persons, interval, pph, source):
    people = Q(persons, "person")
    capacity = hourly_capacity_from_interval(Q(interval, "s"), people)
    assert capacity.m_as("pph") == pytest.approx(pph, rel=1e-12)
    assert interval_for_capacity(Q(pph, "pph"), people).m_as("s") == pytest.approx(interval, rel=1e-12)
    mean = headway_from_interval(Q(interval, "s"), people)
    assert mean.m_as("s") == pytest.approx(3600 / pph, rel=1e-12)
    assert interval_from_headway(Q(3600 / pph, "s"), people).m_as("s") == pytest.approx(interval, rel=1e-12)


SPACINGS = [  # line speed, unit, interval [s], spacing, unit, persons, pph, source
    (400, "ft/minute", 6, 40, "ft", 4, 2400, f"{WIKI}: fixed"),
    (1200, "ft/minute", 6, 120, "ft", 4, 2400, f"{WIKI}: three times the speed, the same capacity"),
    (5.0, "m/s", 12, 60, "m", 10, 3000, LA_PAZ),
]


@pytest.mark.parametrize(
    ("speed", "speed_unit", "interval", "spacing", "unit", "persons", "pph", "source"),
    SPACINGS,
    ids=[case[-1] for case in SPACINGS],
)
def test_spacing_speed_and_interval(speed, speed_unit, interval, spacing, unit, persons, pph, source):
    line_speed, apart, time = Q(speed, speed_unit), Q(spacing, unit), Q(interval, "s")
    people = Q(persons, "person")
    assert spacing_for_headway(line_speed, time).m_as(unit) == pytest.approx(spacing, rel=1e-12)
    assert headway(line_speed, apart).m_as("s") == pytest.approx(interval, rel=1e-12)
    assert line_speed_for_headway(apart, time).m_as(speed_unit) == pytest.approx(speed, rel=1e-12)
    assert hourly_capacity(line_speed, apart, people).m_as("pph") == pytest.approx(pph, rel=1e-12)
    assert spacing_for_capacity(Q(pph, "pph"), line_speed, people).m_as(unit) == pytest.approx(spacing, rel=1e-12)


@pytest.mark.parametrize("source", ["J. Nejez, Ropeway design principles, ISR Internationale Seilbahn-Rundschau"])
def test_reversible_tram(source):
    capacity = reversible_capacity(
        ride_time=Q(390, "s"), dwell_time=Q(50, "s"), persons_per_carrier=Q(80, "person")
    ).m_as("pph")
    assert round(capacity / 80, 2) == 8.18  # trips an hour
    assert math.floor(capacity) == 654  # the source cuts 654.5
    assert capacity == pytest.approx(654.5, abs=0.05)


@pytest.mark.parametrize("source", [f"{PENNSYLVANIA}: something less than 1,400"])
def test_t_bar_with_time_until_the_skier_moves(source):
    # the code's 1,400 leaves about a seventh of a second until the skier moves
    extra = interval_for_capacity(Q(1400, "pph"), Q(2, "person")) - Q(5, "s")
    assert 0.1 < extra.m_as("s") < 0.2


RIDES = [  # length [ft], printed minutes, lowest and highest ft/min that round so, source
    (4000, 4, 889, 1143, f"{ASPEN}, Thunderbowl: ride time rounded to the minute"),
    (3900, 8, 459, 520, f"{ASPEN}, Maroon Bowl: ride time rounded to the minute"),
]


@pytest.mark.parametrize(("length", "minutes", "low", "high", "source"), RIDES, ids=[case[-1] for case in RIDES])
def test_ride_time(length, minutes, low, high, source):
    for speed in (low, high):
        assert abs(ride_time(Q(length, "ft"), Q(speed, "ft/minute")).m_as("minute") - minutes) <= 0.501
    assert ride_time(Q(length, "ft"), Q(length / minutes, "ft/minute")).m_as("minute") == pytest.approx(minutes)


VERTICAL = [(2952, 2800, 8_265_600), (2874, 2800, 8_047_200), (1996, 3600, 7_185_600)]


@pytest.mark.parametrize(("rise", "pph", "vtfh"), VERTICAL, ids=[f"{SAM_LIFTS}: {case[2]:,}" for case in VERTICAL])
def test_vertical_transport(rise, pph, vtfh):
    assert vertical_transport(Q(pph, "pph"), Q(rise, "ft")).m_as("person*ft/hour") == pytest.approx(vtfh, rel=1e-12)


@pytest.mark.parametrize("source", ["encyclopedia copies: 28 persons, one cabin per 49 s, printed as 2,500 pph"])
def test_a_printed_capacity_that_does_not_follow(source):
    capacity = hourly_capacity_from_interval(Q(49, "s"), Q(28, "person")).m_as("pph")
    assert round(capacity) == 2057
    assert 2500 - capacity == pytest.approx(443, abs=1)


@pytest.mark.parametrize("source", ["operator's page: cabins 300 m apart, 80 s apart, up to 6 m/s"])
def test_a_printed_speed_that_does_not_follow(source):
    speed = line_speed_for_headway(Q(300, "m"), Q(80, "s")).m_as("m/s")
    assert speed == pytest.approx(3.75, rel=1e-12)
    assert 6 - speed == pytest.approx(2.25, rel=1e-12)


UNITS = [  # value, unit, value, unit, source
    (1, "mph", 0.44704, "m/s", "international mile by definition (NIST SP 811, Appendix B, from memory)"),
    (1, "ft", 0.3048, "m", "international foot by definition (NIST SP 811, Appendix B, from memory)"),
    (1, "ft/minute", 0.00508, "m/s", "international foot by definition: foot a minute"),
    (1, "fpm", 0.00508, "m/s", "international foot by definition: the short name"),
    (1, "hp", 745.69987158227, "W", "550 ft lbf/s, exact product (SciPy constants)"),
    (1, "hp", 7.456_999e2, "W", "NIST SP 811 (from memory), seven figures"),
    (1, "metric_horsepower", 735.49875, "W", "75 kgf m/s, exact product (SciPy constants)"),
]


@pytest.mark.parametrize(("value", "unit", "same", "other", "source"), UNITS, ids=[case[-1] for case in UNITS])
def test_units(value, unit, same, other, source):
    assert Q(value, unit).m_as(other) == pytest.approx(same, rel=1e-13 if "NIST SP 811 (from" not in source else 1e-7)


@pytest.mark.parametrize(
    "source", ["Little and Graves, ch. 5, Building Intuition, Springer 2008: 160 items, 96 a year"]
)
def test_littles_law(source):
    year = Q(365.25 * 24, "hour")
    flow = hourly_capacity_from_head_count(Q(160, "person"), Q(160 / 96, "") * year)
    assert (flow * year).m_as("person") == pytest.approx(96, rel=1e-12)
    assert round((Q(160, "person") / flow / year).m_as(""), 2) == 1.67
    assert persons_from_flow(flow, Q(1.67, "") * year).m_as("person") == pytest.approx(160, rel=0.003)


@pytest.mark.parametrize("source", ["Kleppner and Kolenkow, An Introduction to Mechanics, 2nd ed., problem 4.14"])
def test_skiers_on_a_rope(source):
    spacing = spacing_for_headway(Q(1.5, "m/s"), Q(5, "s"))
    assert round(persons_on_line(ridden_length=Q(100, "m"), spacing=spacing).m_as("person"), 2) == 13.33


BLOCKS = [  # mass [kg], degrees, friction, other factor, printed, tolerance, source
    (75, 23, 0.10, 1.0, 354.84, 0.005, "introductory-physics problem (Giancoli type): pull on each of 30 skiers"),
    (70, 30, 0.0, 2.0, 686, 0.5, "introductory-physics problem: power to pull one skier at 2.0 m/s"),
]


@pytest.mark.parametrize(
    ("mass", "degrees", "friction", "factor", "printed", "tolerance", "source"),
    BLOCKS,
    ids=[case[-1] for case in BLOCKS],
)
def test_slope_and_friction(mass, degrees, friction, factor, printed, tolerance, source):
    slowing = rider_deceleration(grade=Q(math.tan(math.radians(degrees)), ""), snow_friction=Q(friction, "")).m_as(
        "m/s**2"
    )
    with_g_of_the_book = slowing * 9.8 / 9.80665
    assert mass * with_g_of_the_book * factor == pytest.approx(printed, abs=tolerance)


@pytest.mark.parametrize(
    "source", ["AASHTO Green Book stopping sight distance, 15 mph: 55.0 + 21.6 ft (a road figure)"]
)
def test_stopping_distance_of_a_road_driver(source):
    speed, slowing, none = Q(15, "mph"), Q(11.2, "ft/s**2"), Q(0, "s")
    braking = rope_stopping_distance(speed, none, slowing).m_as("ft")
    whole = attendant_stopping_distance(
        speed, reaction_time=Q(2.5, "s"), stop_delay=none, rope_deceleration=slowing
    ).m_as("ft")
    assert round(braking, 1) == 21.6
    assert round(whole - braking, 1) == 55.0


@pytest.mark.parametrize("source", ["Euclid, Elements, book I, proposition 47: 3, 4, 5"])
def test_slope_length(source):
    assert slope_length(vertical_rise=Q(3, "m"), horizontal_run=Q(4, "m")).m_as("m") == pytest.approx(5, rel=1e-14)


@pytest.mark.parametrize("source", ["trigonometry: half of a square is 45 degrees; the sine of 30 degrees is 1/2"])
def test_slope_angle_and_rise(source):
    assert slope_angle(Q(100, "percent")).m_as("degree") == pytest.approx(45, rel=1e-14)
    grade = Q(1 / math.sqrt(3), "")
    assert slope_angle(grade).m_as("degree") == pytest.approx(30, rel=1e-14)
    assert grade_from_angle(Q(45, "degree")).m_as("percent") == pytest.approx(100, rel=1e-14)
    assert grade_from_angle(Q(30, "degree")).m_as("") == pytest.approx(1 / math.sqrt(3), rel=1e-14)
    assert grade_from_rise(vertical_rise=Q(3, "m"), horizontal_run=Q(4, "m")).m_as("percent") == pytest.approx(75)
    assert vertical_rise(Q(100, "m"), grade).m_as("m") == pytest.approx(50, rel=1e-14)


@pytest.mark.parametrize("source", ["free fall from v: v^2/(2 g), any introductory mechanics text"])
def test_a_rider_on_a_wall(source):
    # on a steep wall without friction a rider who lets go rises v^2/(2 g) in height
    speed, grade = Q(3.4, "m/s"), Q(50, "")
    distance = rider_stopping_distance(speed, grade=grade, snow_friction=Q(0, ""))
    assert vertical_rise(distance, grade).m_as("m") == pytest.approx(3.4**2 / (2 * 9.80665), rel=1e-12)


FACTORS = [  # seasons, capital recovery factor, sinking fund factor, source
    (5, 0.25046, 0.17046, "engineering-economy tables, 8 %: 5 years"),
    (10, 0.14903, 0.06903, "engineering-economy tables, 8 %: 10 years"),
]


@pytest.mark.parametrize(("seasons", "recovery", "sinking", "source"), FACTORS, ids=[case[-1] for case in FACTORS])
def test_factors_of_compound_interest(seasons, recovery, sinking, source):
    interest, life = Q(8, "percent"), Q(seasons, "season")
    assert capital_recovery_factor(interest, life).m_as("1/season") == pytest.approx(recovery, abs=0.5e-5)
    assert sinking_fund_factor(interest, life).m_as("1/season") == pytest.approx(sinking, abs=0.5e-5)


@pytest.mark.parametrize("source", ["engineering-economy text: 25,000 first, 500 a year, salvage 2,000, 8 %, 10 years"])
def test_an_equal_cost_of_each_year(source):
    money = {"price": Q(25_000, "dollar"), "salvage": Q(2_000, "dollar")}
    yearly = capital_recovery(Q(8, "percent"), Q(10, "season"), **money) + Q(500, "dollar/season")
    assert yearly.m_as("dollar/season") == pytest.approx(4087.68, abs=0.005)
    assert 4087.69 - yearly.m_as("dollar/season") == pytest.approx(0.01, abs=0.005)  # the text's factors are rounded


MANNERING = "Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, ch. 5"
QUEUES = [  # formula, people in line, wait [min], wait and service [min], source: 180 an hour come, 15 s of service
    (mean_wait_exponential, 2.25, 0.75, 1.0, f"{MANNERING}: M/M/1"),
    (mean_wait_constant, 1.125, 0.375, 0.625, f"{MANNERING}: M/D/1 (from memory)"),
]


@pytest.mark.parametrize(("formula", "line", "wait", "whole", "source"), QUEUES, ids=[case[-1] for case in QUEUES])
def test_waiting_lines(formula, line, wait, whole, source):
    rate, service = Q(180, "pph"), Q(15, "s")
    found = formula(rate, service)
    assert found.m_as("minute") == pytest.approx(wait, rel=1e-12)
    assert (found + service).m_as("minute") == pytest.approx(whole, rel=1e-12)
    assert persons_from_flow(rate, found).m_as("person") == pytest.approx(line, rel=1e-12)
    variation = Q(1.0 if formula is mean_wait_exponential else 0.0, "")
    by_moments = mean_wait(rate, service, second_moment_from_variation(service, variation))
    assert by_moments.m_as("minute") == pytest.approx(wait, rel=1e-12)


@pytest.mark.parametrize(
    "source", ["Little and Graves, ch. 5, Building Intuition, Springer 2008: the time of 160 items"]
)
def test_littles_law_for_a_line(source):
    year = Q(365.25 * 24, "hour")
    assert round((wait_from_line(Q(160, "person"), Q(96, "person") / year) / year).m_as(""), 2) == 1.67


@pytest.mark.parametrize("source", [f"{ASPEN}: 962 skiers on 96 acres, 10.0 an acre"])
def test_density_of_a_slope(source):
    skiers, acres = Q(962, "person"), Q(96, "acre")
    for descent in (Q(300, "s"), Q(900, "s")):  # whatever the flow that keeps them there
        density = slope_density(skiers / descent, acres, descent)
        assert round(density.m_as("person/acre"), 1) == 10.0
        assert slope_capacity(density, acres, descent).m_as("pph") == pytest.approx((skiers / descent).m_as("pph"))


BRITISH_COLUMBIA = {  # riders a hectare, lowest and highest
    "beginner": (35, 75), "novice": (30, 60), "low intermediate": (20, 40), "intermediate": (15, 30),
    "advanced intermediate": (10, 20), "expert": (5, 10),
}  # fmt: skip


@pytest.mark.parametrize("source", [slope_crowding.GUIDELINE_SOURCE])
def test_guideline_densities(source):
    assert source == "All Seasons Resort Guidelines, British Columbia, as quoted by the FIS wiki, Ski trail capacity"
    assert slope_crowding.GUIDELINE_DENSITIES == BRITISH_COLUMBIA


@pytest.mark.parametrize("source", ["FIS wiki, Capacity analysis and design: definition of a comfortable capacity"])
def test_comfortable_carrying_capacity(source):
    lifts = vertical_transport(Q(1200, "pph"), Q(500, "ft")) + vertical_transport(Q(600, "pph"), Q(1000, "ft"))
    guests = comfortable_carrying_capacity(lifts, Q(7, "hour"), Q(10_000, "ft"))
    assert guests.m_as("person") == pytest.approx(1_200_000 * 7 / 10_000, rel=1e-12)
    assert daily_vertical(lifts, Q(7, "hour"), guests).m_as("ft") == pytest.approx(10_000, rel=1e-12)
