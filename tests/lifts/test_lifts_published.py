"""Lines of every kind against figures printed outside the project; the id of each test is its source.

Rules and facts of other places are examples, and the local code and authority decide.
"""

import math

import pytest
from by_hand import energy_by_hand, hill_numbers
from example_lines import pph
from example_tow import G

from liftcalc import Q, governing
from liftcalc.lifts.demo_hill import demo_hill, demo_kinds
from liftcalc.lifts.limits_of_line import limits_of, meeting_speed, power_needed
from liftcalc.lifts.line import line_from

INVENTED = [*demo_hill().lines.values(), *demo_kinds().lines.values()]
G_OF_THE_BOOKS = 9.8 / G
LA_PAZ = "operator's and maker's figures for an urban gondola in La Paz"
WIKI = "community wiki page Ski lift capacity: detachable vs fixed grip (weak source, exact arithmetic)"
SAM_2018 = "Know Your Capacity, SAM (Ski Area Management), July 2018"
NEJEZ = "J. Nejez, Ropeway design principles, ISR Internationale Seilbahn-Rundschau"
ASPEN = "USDA Forest Service, Aspen Highlands Ski Area Final EIS, April 1997, Summary, Table 3"
PENNSYLVANIA = "34 Pa. Code s. 7.466, Capacity, speed, and loading interval"
QUAD, DOUBLE = {"persons_per_carrier": Q(4, "person")}, {"persons_per_carrier": Q(2, "person")}
NOT_PRINTED = {"ridden_length": Q(1000, "ft"), "vertical_rise": Q(200, "ft")}  # in no way part of the result
PUBLISHED = [  # kind, what is printed, what follows: (name of the line's property, value, unit, tolerance), source
    (
        "gondola",
        {"line_speed": Q(5.0, "m/s"), "interval": Q(12, "s"), "persons_per_carrier": Q(10, "person"),
         "ridden_length": Q(2349, "m"), "vertical_rise": Q(412, "m")},
        [("pph", 3000, "pph", 1e-9), ("spacing", 60, "m", 1e-9)],
        LA_PAZ,
    ),
    (
        "fixed chair",
        {"line_speed": Q(400, "ft/minute"), "interval": Q(6, "s"), **QUAD, **NOT_PRINTED},
        [("pph", 2400, "pph", 1e-9), ("spacing", 40, "ft", 1e-9)],
        f"{WIKI}: fixed quad",
    ),
    (
        "detachable chair",
        {"line_speed": Q(1200, "ft/minute"), "interval": Q(6, "s"), **QUAD, **NOT_PRINTED},
        [("pph", 2400, "pph", 1e-9), ("spacing", 120, "ft", 1e-9)],
        f"{WIKI}: detachable quad, three times the speed and the same",
    ),
    (
        "detachable chair",
        {"line_speed": Q(1200, "ft/minute"), "spacing": Q(120, "ft"), **QUAD, **NOT_PRINTED},
        [("pph", 2400, "pph", 1e-9), ("interval", 6, "s", 1e-9)],
        f"{WIKI}: the same from its spacing",
    ),
    (
        "fixed chair",
        {"hourly_capacity": Q(2400, "pph"), "line_speed": Q(400, "ft/minute"), **QUAD, **NOT_PRINTED},
        [("interval", 6, "s", 1e-9)],
        f"{SAM_2018}: quad, 600 carriers an hour",
    ),
    (
        "fixed chair",
        {"interval": Q(8, "s"), "line_speed": Q(400, "ft/minute"), **QUAD, **NOT_PRINTED},
        [("pph", 1800, "pph", 1e-9)],
        f"{SAM_2018}: quad, 450 carriers an hour",
    ),
    (
        "detachable chair",
        {"ridden_length": Q(4000, "ft"), "vertical_rise": Q(1350, "ft"), "ride_time": Q(4, "minute"),
         "hourly_capacity": Q(1600, "pph"), **QUAD},
        [("interval", 9.00, "s", 1e-9), ("line_speed", 1000, "ft/minute", 1e-9),
         ("vertical_transport", 1600 * 1350, "person*ft/hour", 1e-9)],
        f"{ASPEN}, Thunderbowl: t = 9.00 s",
    ),
    (
        "fixed chair",
        {"ridden_length": Q(3900, "ft"), "vertical_rise": Q(1850, "ft"), "ride_time": Q(8, "minute"),
         "hourly_capacity": Q(1200, "pph"), **DOUBLE},
        [("interval", 6.00, "s", 1e-9), ("line_speed", 487.5, "ft/minute", 1e-9)],
        f"{ASPEN}, Maroon Bowl: t = 6.00 s",
    ),
    (
        "T-bar lift",
        {"interval": Q(5, "s"), "line_speed": Q(500, "ft/minute"), **DOUBLE, **NOT_PRINTED},
        [("pph", 1440, "pph", 1e-9)],
        f"{PENNSYLVANIA}: T-bar at least 5 s, with no extra time",
    ),
    (
        "platter lift",
        {"interval": Q(3, "s"), "line_speed": Q(500, "ft/minute"), **NOT_PRINTED},
        [("pph", 1200, "pph", 1e-9)],
        f"{PENNSYLVANIA}: single outfit at least 3 s, with no extra time",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "printed", "follows", "source"), PUBLISHED, ids=[case[-1] for case in PUBLISHED])
def test_a_line_from_published_figures(kind, printed, follows, source):
    line = line_from(source, kind, **printed)
    for name, value, unit, tolerance in follows:
        found = line.capacity.value if name == "pph" else getattr(line, name)
        assert found.m_as(unit) == pytest.approx(value, rel=tolerance)
    for name in {"line_speed", "spacing", "ridden_length", "persons_per_carrier"} & set(printed):
        assert getattr(line, name) == printed[name]  # as it came, where nothing was fitted
        assert getattr(line, name).units == printed[name].units


@pytest.mark.parametrize("source", [f"{NEJEZ}: 390 s and 50 s, 80 persons: 8.18 trips an hour, 654 pph"])
def test_a_published_tram(source):
    line = line_from(
        "tram", "reversible tram", ride_time=Q(390, "s"), dwell_time=Q(50, "s"), persons_per_carrier=Q(80, "person"),
        ridden_length=Q(3000, "m"), vertical_rise=Q(900, "m"),
    )  # fmt: skip
    assert line.interval.m_as("s") == pytest.approx(440, rel=1e-9)
    assert round(3600 / line.interval.m_as("s"), 2) == 8.18
    capacity = line.capacity.value.m_as("pph")
    assert math.floor(capacity) == 654  # the source cuts 654.5
    assert capacity == pytest.approx(654.5, abs=0.05)
    assert line.carriers_on_loop == Q(2, "")


@pytest.mark.parametrize("source", [f"{PENNSYLVANIA}: something less than 1,400 and 1,200"])
def test_published_outfits_with_the_time_until_the_skier_moves(source):
    t_bar = line_from(
        "T", "T-bar lift", hourly_capacity=Q(1400, "pph"), line_speed=Q(2.5, "m/s"), **DOUBLE, **NOT_PRINTED
    )
    assert 0.1 < t_bar.interval.m_as("s") - 5 < 0.2
    single = line_from(
        "single", "platter lift", interval=Q(3.2, "s"), line_speed=Q(2.5, "m/s"), **NOT_PRINTED
    )  # a fifth of a second until the skier moves
    assert 1100 < single.capacity.value.m_as("pph") < 1200


KLEPPNER = "Kleppner and Kolenkow, An Introduction to Mechanics, 2nd ed., problem 4.14 (answer: own arithmetic)"
GIANCOLI = "introductory-physics problem (Giancoli type): 75 kg, 23 degrees, 220 m in 2.0 min, friction 0.10, 30 skiers"


def without_loss(mass, friction):
    """Return readings of a tow as a book has it: every watt at the rope, and a rope without drag."""
    mass, friction = Q(mass, "kg"), Q(friction, "")
    return {"rider_mass": mass, "snow_friction": friction, "efficiency": Q(1, ""), "idle_drag": Q(0, "N")}


@pytest.mark.parametrize("source", [f"{KLEPPNER}: 13.33 on the rope, 3,128 N steady, 3,149 N with momentum"])
def test_skiers_of_a_book_on_a_tow(source):
    line = line_from(
        "rope", "handle tow", line_speed=Q(1.5, "m/s"), interval=Q(5, "s"), ridden_length=Q(100, "m"),
        vertical_rise=Q(100 * math.sin(math.radians(20)), "m"),
    )  # fmt: skip
    assert round(line.persons_on_line.m_as("person"), 2) == 13.33
    force = (power_needed(line, without_loss(70, 0)) / line.line_speed).m_as("N")
    momentum = 70 * 1.5 / 5  # one rider every 5 s
    assert G_OF_THE_BOOKS * (force - momentum) == pytest.approx(3128, abs=0.5)
    assert G_OF_THE_BOOKS * (force - momentum) + momentum == pytest.approx(3149, abs=0.5)


@pytest.mark.parametrize("source", [f"{GIANCOLI}: 354.84 N each, 26.17 hp"])
def test_thirty_skiers_of_a_book_from_their_number_and_the_time(source):
    line = line_from(
        "rope", "handle tow", riders_on_line=Q(30, "person"), ride_time=Q(2, "minute"), ridden_length=Q(220, "m"),
        vertical_rise=Q(220 * math.sin(math.radians(23)), "m"),
    )  # fmt: skip
    needed = power_needed(line, without_loss(75, 0.10)).m_as("W")
    momentum = 30 / 120 * 75 * (220 / 120) ** 2  # a rider every 4 s; the book leaves it out
    assert G_OF_THE_BOOKS * (needed - momentum) / 745.69987 == pytest.approx(26.17, abs=0.005)
    assert G_OF_THE_BOOKS * (needed - momentum) / (220 / 120) / 30 == pytest.approx(354.84, abs=0.005)


STRMTG_CHAIRS = (
    "STRMTG (French ropeway authority), Chairlift: 2.5 m/s (2 seats), 2.3 (3-4), 2.0 (more than 4); "
    "with a loading carpet 2.8 / 2.7 / 2.2"
)
STRMTG_GONDOLAS = "STRMTG (French ropeway authority), Gondola lift: up to 6 m/s, 0.5 m/s at most while boarding"
FRENCH_BELTS = "arrete of 17 January 2017, as reported in trade press (paraphrase): conveyor 0.7 m/s"
OVERSPEED = "34 Pa. Code s. 7.447(f): slow and stop when line speed exceeds design by more than 15 %"
ITALY = "Italian technical prescriptions, Gazz. Uff. 23 March 1999, s. 3.14.7.17: friction 0.22 of rope on lining"
WOLFSPERGER = "Wolfsperger, Meyer, Gilgien, Front. Mech. Eng. 7 (2021) 728722: friction 0.023 to 0.139"


def fastest_in_france(seats, carpet):
    """Return the highest line speed of a fixed chair with skiers, in m/s."""
    place = 0 if seats <= 2 else 1 if seats <= 4 else 2
    return ((2.5, 2.3, 2.0), (2.8, 2.7, 2.2))[carpet][place]


@pytest.mark.parametrize("source", [STRMTG_CHAIRS])
def test_invented_fixed_chairs_keep_to_a_rule(source):
    chairs = [line for line in INVENTED if line.kind.startswith("fixed")]
    assert {chair.kind for chair in chairs} == {"fixed chair", "fixed chair with carpet"}
    for chair in chairs:
        seats = chair.persons_per_carrier.m_as("person")
        assert chair.line_speed.m_as("m/s") <= fastest_in_france(seats, "carpet" in chair.kind), chair.name


OTHER_RULES = [  # kinds, name of the line's property, unit, lowest, highest, source
    (("gondola",), "line_speed", "m/s", 0, 6, STRMTG_GONDOLAS),
    (("conveyor",), "line_speed", "m/s", 0, 0.7, FRENCH_BELTS),
    (("T-bar lift",), "interval", "s", 5, math.inf, f"{PENNSYLVANIA}: T-bar at least 5 s"),
    (("platter lift",), "interval", "s", 3, math.inf, f"{PENNSYLVANIA}: single outfit at least 3 s"),
]


@pytest.mark.parametrize(
    ("kinds", "name", "unit", "lowest", "highest", "source"), OTHER_RULES, ids=[case[-1] for case in OTHER_RULES]
)
def test_invented_lines_keep_to_a_rule(kinds, name, unit, lowest, highest, source):
    lines = [line for line in INVENTED if line.kind in kinds]
    assert lines
    for line in lines:
        assert lowest <= getattr(line, name).m_as(unit) <= highest, line.name


@pytest.mark.parametrize("source", [STRMTG_GONDOLAS])
def test_people_board_a_cabin_that_creeps(source):
    line = line_from(
        "cabins", "gondola", line_speed=Q(6, "m/s"), interval=Q(12, "s"), persons_per_carrier=Q(10, "person"),
        ridden_length=Q(2000, "m"), vertical_rise=Q(400, "m"),
    )  # fmt: skip
    readings = {"carrier_length": Q(4, "m"), "carrier_gap": Q(2, "m"), "station_speed": Q(0.5, "m/s")}
    assert meeting_speed(line, readings).m_as("m/s") == 0.5
    station = next(limit for limit in limits_of(line, readings) if limit.name == "station")
    assert pph(station) == pytest.approx(3600 * 10 * 0.5 / (4 + 2), rel=1e-9)


@pytest.mark.parametrize("source", [OVERSPEED])
def test_a_loop_that_runs_fifteen_percent_too_fast(source):
    loop = {
        "carriers_on_loop": Q(90, ""), "sheave_distance": Q(630, "m"), "ridden_length": Q(600, "m"),
        "vertical_rise": Q(120, "m"), **DOUBLE,
    }  # fmt: skip
    design, fast = (line_from("loop", "fixed chair", line_speed=Q(speed, "m/s"), **loop) for speed in (2.2, 1.15 * 2.2))
    assert design.spacing.m_as("m") == pytest.approx(14, rel=1e-9)
    assert (fast.capacity.value / design.capacity.value).m_as("") == pytest.approx(1.15, rel=1e-9)
    assert fast.interval.m_as("s") == pytest.approx(14 / 2.2 / 1.15, rel=1e-9)
    assert fast.persons_on_line.m_as("person") == pytest.approx(2 * 600 / 14, rel=1e-9)  # no more of them at once


@pytest.mark.parametrize("source", [f"{ITALY}: 1.996 for half a turn"])
def test_traction_of_the_hill_with_a_published_friction(source):
    readings = demo_hill().readings
    with_tension = [line for line in demo_hill().lines.values() if "slack_tension" in readings[line.name]]
    assert with_tension
    for line in with_tension:
        theirs = readings[line.name] | {"lining_friction": Q(0.22, "")}
        traction = next(limit for limit in limits_of(line, theirs) if limit.name == "traction")
        numbers = hill_numbers()[line.name]
        assert numbers["wrap_angle"] == 180
        pull = energy_by_hand(line.kind, numbers)["pull"]
        ratio = 1.996 / numbers["grip_safety_factor"]
        left = numbers["slack_tension"] * (ratio - 1) - numbers["idle_drag"]
        left /= ratio if numbers["drive_position"] == "bottom" else 1  # each rider slackens the slack side as well
        assert pph(traction) == pytest.approx(3600 * left / pull / line.ride_time.m_as("s"), rel=2e-3)
        assert (
            governing(limits_of(line, theirs)).limit.name == governing(limits_of(line, readings[line.name])).limit.name
        )


@pytest.mark.parametrize("source", [WOLFSPERGER])
def test_friction_of_the_hill_lies_within_what_was_measured(source):
    frictions = [own["snow_friction"].m_as("") for own in demo_hill().readings.values() if "snow_friction" in own]
    assert len(frictions) >= 2
    assert all(0.023 <= friction <= 0.139 for friction in frictions)
