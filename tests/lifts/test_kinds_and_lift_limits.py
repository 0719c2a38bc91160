"""Every kind of lift: a line from what is known of it, the energy of a ride, and all limits at once.

A second opinion here is a sum of plain numbers that uses no formula of the package. Figures from outside carry their
source as the id of the test; rules and facts of other places are examples, and the local code and authority decide.
"""

import csv
import itertools
import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from liftcalc import LeftOut, Limit, Q, UnitError, governing, motor_capacity, show
from liftcalc.lifts.givens import DisagreementError, NotKnownError
from liftcalc.lifts.governing import envelope
from liftcalc.lifts.installation import Installation, read_lifts
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import (
    capacities_at,
    idle_drag_of,
    limits_of,
    meeting_speed,
    power_needed,
    ride_energy,
    where_possible,
)
from liftcalc.lifts.line import Line, line_from
from liftcalc.lifts.readings import READINGS, WORDS, known_values, read_readings
from liftcalc.lifts.shares import draws_of, share_of_limits
from liftcalc.lifts.tables import comparison_table, governing_table, hazards_table, hill_table, kinds_table
from liftcalc.vocabulary import name_of, words_of

DATA = Path(__file__).resolve().parents[2] / "data"
G = 9.80665
G_OF_THE_BOOKS = 9.8 / G

# how each kind moves people, and how it takes them up: written down here a second time
TRAVEL = {
    "rope tow": ("skis", "slips"),
    "handle tow": ("skis", "at once"),
    "platter lift": ("skis", "slips"),
    "T-bar lift": ("skis", "slips"),
    "conveyor": ("belt", "at once"),
    "fixed chair": ("air", "at once"),
    "fixed chair with carpet": ("air", "at once"),
    "detachable chair": ("air", "station"),
    "gondola": ("air", "station"),
    "reversible tram": ("air", "station"),
}
WITHOUT_A_LOOP = ("rope tow", "conveyor", "reversible tram")  # no carriers to count on a loop
DETACHABLE = ("detachable chair", "gondola")


def pph(limit):
    """Return the capacity of a limit as a plain number."""
    return limit.capacity.m_as("pph")


def lines_of(name):
    """Return the lines of a table of the data folder."""
    return [line for installation in read_lifts(DATA / name).values() for line in installation.lines]


def read_hill():
    """Return lines and readings of the hill."""
    return lines_of("hill_lifts.csv"), read_readings(DATA / "hill_readings.csv")


# figures from outside

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


# rules of other places: the invented lines keep within them

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
    chairs = [
        line for line in lines_of("hill_lifts.csv") + lines_of("kind_examples.csv") if line.kind.startswith("fixed")
    ]
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
    lines = [line for line in lines_of("hill_lifts.csv") + lines_of("kind_examples.csv") if line.kind in kinds]
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
    lines, readings = read_hill()
    with_tension = [line for line in lines if "slack_tension" in readings[line.name]]
    assert with_tension
    for line in with_tension:
        theirs = readings[line.name] | {"lining_friction": Q(0.22, "")}
        traction = next(limit for limit in limits_of(line, theirs) if limit.name == "traction")
        numbers = plain_numbers("hill_readings.csv")[line.name]
        assert numbers["wrap_angle"] == 180
        pull = by_hand(line.kind, numbers | plain_numbers("hill_lifts.csv")[line.name])["pull"]
        ratio = 1.996 / numbers["grip_safety_factor"]
        left = numbers["slack_tension"] * (ratio - 1) - numbers["idle_drag"]
        left /= ratio if numbers["drive_position"] == "bottom" else 1  # each rider slackens the slack side as well
        assert pph(traction) == pytest.approx(3600 * left / pull / line.ride_time.m_as("s"), rel=2e-3)
        assert (
            governing(limits_of(line, theirs)).limit.name == governing(limits_of(line, readings[line.name])).limit.name
        )


@pytest.mark.parametrize("source", [WOLFSPERGER])
def test_friction_of_the_hill_lies_within_what_was_measured(source):
    frictions = [own["snow_friction"].m_as("") for own in read_hill()[1].values() if "snow_friction" in own]
    assert len(frictions) >= 2
    assert all(0.023 <= friction <= 0.139 for friction in frictions)


# sums by hand


def plain_numbers(name):
    """Return the numbers of a table of the data folder by line and reading, without the package; percent as parts."""
    with (DATA / name).open(encoding="utf-8") as table:
        rows = list(csv.DictReader(table))
    if "reading" in rows[0]:
        cells = [(row["line"], name_of(row["reading"]), row["value"]) for row in rows]
    else:
        cells = [(row["line"], column, text) for row in rows for column, text in row.items() if text[:1].isdigit()]
    numbers = {}
    for line, column, text in cells:
        if column == "drive_position":
            numbers.setdefault(line, {})[column] = text
            continue
        number, _, unit = text.partition(" ")
        numbers.setdefault(line, {})[column] = float(number) * (0.01 if unit == "percent" else 1)
    return numbers


def by_hand(kind, r):
    """Return pull, work, pick-up, energy and idle drag of a ride, in newtons and joules, from plain numbers."""
    way, taken_up = TRAVEL[kind]
    length, rise, mass, speed = r["ridden_length"], r["vertical_rise"], r["rider_mass"], r["line_speed"]
    weight, run = mass * G, math.sqrt(length**2 - rise**2)
    if way == "skis":
        # tether pull T and force N on the snow: T cos - mu N = force along, T sin + N = weight across the slope
        angle = math.radians(r.get("tether_angle", 0))
        balance = [[math.cos(angle), -r["snow_friction"]], [math.sin(angle), 1]]
        along, across, more = weight * rise / length, weight * run / length, r.get("pick_up_acceleration", 1.0)
        pull, harder = (
            float(np.linalg.solve(balance, [force, across])[0]) * math.cos(angle)
            for force in (along, along + mass * more)
        )
        drag, mass = r.get("idle_drag"), (harder - pull) / more  # the mass as the rope feels it
    elif way == "air":
        pull = (weight * rise + r["sheave_drag_share"] * weight * run) / length
        drag = r.get("idle_drag", r["sheave_drag_share"] * r["hanging_mass"] * G)
    else:
        pull = (weight * rise + r["bed_friction"] * weight * run) / length
        way_up, way_back = (
            r["belt_mass_per_length"] * run * G * r[name] for name in ("bed_friction", "return_friction")
        )
        drag = r.get("idle_drag", way_up + way_back)
    if taken_up == "slips":
        # for v / a seconds the drive draws v^2 / a of rope against pull and inertia; the rider moves half as far
        rope, snow = speed**2 / r["pick_up_acceleration"], speed**2 / r["pick_up_acceleration"] / 2
        pick_up = (pull + mass * r["pick_up_acceleration"]) * rope - pull * snow
    elif taken_up == "at once":
        pick_up = mass * speed * speed  # the blow m v, given at the speed v
    else:
        pick_up = mass * speed * speed / 2  # motion of the rider, and nothing slips
    work = pull * length
    return {"pull": pull, "work": work, "pick_up": pick_up, "energy": work + pick_up, "drag": drag, "mass": mass}


def riders_by_hand(r, hand):
    """Return the riders at which the rope slips: the ratio of the two sides is linear in them on either side."""
    wedge = 1 / math.sin(math.radians(r.get("groove_angle", 180)) / 2)
    ratio = math.exp(wedge * r["lining_friction"] * math.radians(r["wrap_angle"])) / r["grip_safety_factor"]
    found = []
    for start in (0.0, r.get("starting_acceleration", 0.0)):
        each = hand["pull"] + hand["mass"] * start
        half = r.get("moving_mass", 0.0) * start / 2
        on_the_slack_side = each if r["drive_position"] == "bottom" else 0.0
        # slack = T - half - N on_the_slack_side; tight = slack + drag + 2 half + N each = ratio slack
        over = (ratio - 1) * (r["slack_tension"] - half) - hand["drag"] - 2 * half
        found.append(max(over, 0.0) / (each + (ratio - 1) * on_the_slack_side))
    return min(found)


FROM_REST = {"rope tow", "handle tow", "platter lift", "T-bar lift"}  # of their riders, who stand still at the grab


def ride_by_hand(kind, r):
    """Return the ride time in seconds: the way to line speed at half of it, and where it ends at rest, twice."""
    start = r.get("acceleration" if kind == "reversible tram" else "pick_up_acceleration")
    if start is None or kind not in FROM_REST | {"reversible tram"}:
        return r["ridden_length"] / r["line_speed"]
    way = r["line_speed"] ** 2 / start / 2 * (2 if kind == "reversible tram" else 1)
    return way / (r["line_speed"] / 2) + (r["ridden_length"] - way) / r["line_speed"]


def limits_by_hand(kind, r):
    """Return every limit of a line's own in pph, from plain numbers; one without a reading is not there."""
    hand, persons, ride = by_hand(kind, r), r["persons_per_carrier"], ride_by_hand(kind, r)
    power = r["efficiency"] * 1000 * r["motor_power"]
    limits = {
        "spacing": 3600 * persons / (r["spacing"] / r["line_speed"]),
        "loading": persons * r.get("loading_places", 1) * 3600 / r["loading_time"],
        "motor": (power - hand["drag"] * r["line_speed"]) / hand["energy"] * 3600,
        "unload": persons * r.get("unloading_places", 1) * 3600 / r["clearing_time"],
    }
    if "slack_tension" in r and "drive_position" in r:
        limits["traction"] = riders_by_hand(r, hand) * 3600 / ride
    if kind in DETACHABLE:
        limits["station"] = 3600 * persons * r["station_speed"] / (r["carrier_length"] + r["carrier_gap"])
    return limits


# a line from any part of its row

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
UNITS = {
    "line_speed": "m/s", "spacing": "m", "interval": "s", "persons_per_carrier": "person", "carriers_on_loop": "",
    "sheave_distance": "m", "ridden_length": "m", "ride_time": "s", "riders_on_line": "person",
    "hourly_capacity": "pph",
}  # fmt: skip
STATION_TIME, DWELL_TIME = 120.0, 60.0


def true_row(kind):
    """Return all figures of a consistent line of a kind, as plain numbers."""
    speed, interval, length, persons = {
        "detachable chair": (5.0, 8.0, 1500.0, 4.0),
        "gondola": (5.0, 12.0, 1780.0, 8.0),
        "reversible tram": (8.0, 1600.0 / 8.0 + DWELL_TIME, 1600.0, 40.0),
    }.get(kind, (2.4, 7.0, 640.0, 2.0))
    row = {
        "line_speed": speed, "spacing": speed * interval, "interval": interval, "persons_per_carrier": persons,
        "sheave_distance": length + 20, "ridden_length": length, "ride_time": length / speed,
        "riders_on_line": persons * length / (speed * interval), "hourly_capacity": 3600 * persons / interval,
    }  # fmt: skip
    if kind not in WITHOUT_A_LOOP:
        one_round = 2 * row["sheave_distance"] / speed + (STATION_TIME if kind in DETACHABLE else 0)
        row["carriers_on_loop"] = one_round / interval
    return row


def given_of(kind, row, names):
    """Return a part of the row as givens; persons per carrier is left open where it is not among them."""
    givens = {"persons_per_carrier": None} | {name: Q(row[name], UNITS[name]) for name in names}
    stations = {"station_time": Q(STATION_TIME, "s")} if kind in DETACHABLE else {}
    stations |= {"dwell_time": Q(DWELL_TIME, "s")} if kind == "reversible tram" else {}
    return givens | stations | {"vertical_rise": Q(100, "m")}


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
                with pytest.raises(ValueError, match="does not follow from"):
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
    with pytest.raises(ValueError) as caught:  # noqa: PT011  the text is looked at below
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
    with pytest.raises(DisagreementError, match="the givens disagree by 10 %") as caught:
        line_from("tram", "reversible tram", **givens)
    assert caught.value.apart == pytest.approx(0.10, rel=1e-6)


def test_carriers_that_agree_within_one_percent_leave_the_interval_as_it_was_timed():
    row = true_row("gondola")
    givens = given_of("gondola", row, ("line_speed", "ridden_length", "persons_per_carrier", "sheave_distance"))
    timed = Q(1.008 * row["interval"], "s")
    line = line_from("cabins", "gondola", interval=timed, carriers_on_loop=Q(row["carriers_on_loop"], ""), **givens)
    assert line.interval.m_as("s") == pytest.approx(timed.m_as("s"), rel=1e-9)


@pytest.mark.parametrize("kind", KINDS)
def test_too_few_figures_say_what_is_missing(kind):
    rise = {"vertical_rise": Q(100, "m")}
    with pytest.raises(NotKnownError) as caught:
        line_from("line", kind, line_speed=Q(2.4, "m/s"), spacing=Q(12, "m"), **rise)
    assert str(caught.value).endswith(
        "ridden_length does not follow from line_speed and spacing (and persons_per_carrier taken as 1 person). "
        "To know it, give ride_time, or riders_on_line."
    )
    with pytest.raises(NotKnownError, match="line_speed does not follow from interval"):
        line_from("line", kind, interval=Q(7, "s"), ridden_length=Q(600, "m"), **rise)


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


# energy of a ride, each kind against the sum by hand

ENOUGH = {  # readings, each with a believable range and its unit
    "rider_mass": (30, 120, "kg"), "snow_friction": (0.01, 0.2, ""), "tether_angle": (0, 50, "degree"),
    "sheave_drag_share": (0.01, 0.05, ""), "hanging_mass": (1000, 60_000, "kg"), "bed_friction": (0.1, 0.4, ""),
    "return_friction": (0.02, 0.1, ""), "belt_mass_per_length": (4, 15, "kg/m"), "idle_drag": (50, 900, "N"),
    "efficiency": (0.6, 0.95, ""), "base_speed": (0.4, 6, "m/s"), "pick_up_acceleration": (0.5, 4, "m/s**2"),
    "loading_time": (2, 30, "s"), "loading_places": (1, 3, ""), "clearing_time": (2, 20, "s"),
    "unloading_places": (1, 3, ""), "slack_tension": (2000, 60_000, "N"), "lining_friction": (0.1, 0.3, ""),
    "wrap_angle": (120, 360, "degree"), "grip_safety_factor": (1, 2, ""), "carrier_length": (1, 4, "m"),
    "groove_angle": (30, 180, "degree"), "starting_acceleration": (0.05, 1, "m/s**2"), "moving_mass": (100, 5000, "kg"),
    "carrier_gap": (0, 3, "m"), "station_speed": (0.2, 1, "m/s"), "carpet_speed": (0.2, 1, "m/s"),
}  # fmt: skip
OF_A_LINE = {
    "line_speed": (0.3, 4, "m/s"), "spacing": (2, 90, "m"), "persons_per_carrier": (1, 10, "person"),
    "ridden_length": (150, 2000, "m"), "vertical_rise": (0.03, 0.6, ""), "motor_power": (5, 400, "kW"),
}  # fmt: skip
everything = st.fixed_dictionaries(
    {name: st.floats(low, high) for name, (low, high, _) in (ENOUGH | OF_A_LINE).items()}
    | {"drive_position": st.sampled_from(["top", "bottom"])}
)
READ_ON_A_WAY = {
    "skis": ("snow_friction", "tether_angle", "idle_drag"),
    "air": ("sheave_drag_share", "hanging_mass"),
    "belt": ("bed_friction", "return_friction", "belt_mass_per_length"),
}
READ_ON_EVERY_LIFT = (
    "rider_mass", "efficiency", "loading_time", "loading_places", "clearing_time", "unloading_places", "slack_tension",
    "lining_friction", "wrap_angle", "grip_safety_factor",
)  # fmt: skip
IN_A_STATION = ("carrier_length", "carrier_gap", "station_speed")


def names_of(kind):
    """Return the readings that a lift of a kind needs, idle drag by its parts where it has parts."""
    way, taken_up = TRAVEL[kind]
    slips = ("pick_up_acceleration",) if taken_up == "slips" else ()
    return (*READ_ON_EVERY_LIFT, *READ_ON_A_WAY[way], *slips, *(IN_A_STATION if kind in DETACHABLE else ()))


def readings_of(kind, numbers, *more):
    """Return a complete set of readings of a kind."""
    readings = {name: Q(numbers[name], ENOUGH[name][2]) for name in (*names_of(kind), *more)}
    return readings | {"drive_position": numbers["drive_position"]}


def with_rise(numbers):
    """Return the numbers with the rise in metres, where it was drawn as a part of the length."""
    return numbers | {"vertical_rise": numbers["vertical_rise"] * numbers["ridden_length"]}


def line_of(kind, numbers):
    """Return a line of a kind from plain numbers."""
    return Line("line", kind, **{name: Q(numbers[name], OF_A_LINE[name][2] or "m") for name in OF_A_LINE})


MIDDLE = with_rise({name: (low + high) / 2 for name, (low, high, _) in (ENOUGH | OF_A_LINE).items()})
MIDDLE["drive_position"] = "top"
MIDDLE["slack_tension"] = 120_000.0  # enough to drag the middling belt, too
MIDDLE["base_speed"] = 6.0  # above the line speed, so that it counts


def test_every_kind_and_every_reading_stand_here():
    assert set(TRAVEL) == set(KINDS)
    assert {name: unit for name, (_, _, unit) in ENOUGH.items()} == {
        name: unit for name, (unit, _) in READINGS.items() if name not in WORDS
    }
    assert set(WORDS) == {"drive_position"}


@pytest.mark.parametrize("kind", KINDS)
@given(numbers=everything)
def test_energy_of_a_ride_is_the_sum_by_hand(kind, numbers):
    numbers = with_rise(numbers)
    values = known_values(line_of(kind, numbers), readings_of(kind, numbers))
    hand = by_hand(kind, {name: numbers[name] for name in values})
    assert KINDS[kind].riding.work(values).m_as("J") == pytest.approx(hand["work"], rel=1e-9)
    assert (ride_energy(kind, values) - KINDS[kind].riding.work(values)).m_as("J") == pytest.approx(
        hand["pick_up"], rel=1e-9
    )
    assert ride_energy(kind, values).m_as("J") == pytest.approx(hand["energy"], rel=1e-9)
    assert idle_drag_of(kind, values).m_as("N") == pytest.approx(hand["drag"], rel=1e-9)


ROUND_NUMBERS = [  # kind, readings, energy by hand; 1,000 m of slope with 600 m of rise and 800 m of map, 2 m/s, 100 kg
    ("handle tow", {"snow_friction": 0.05}, 980.665 * (600 + 40) + 400),
    ("rope tow", {"snow_friction": 0.05, "pick_up_acceleration": 1}, 980.665 * (600 + 40) * 1.002 + 400),
    ("conveyor", {"bed_friction": 0.25}, 980.665 * (600 + 200) + 400),
    ("fixed chair", {"sheave_drag_share": 0.03}, 980.665 * (600 + 24) + 400),
    ("gondola", {"sheave_drag_share": 0.03}, 980.665 * (600 + 24) + 200),
]


@pytest.mark.parametrize(("kind", "readings", "energy"), ROUND_NUMBERS, ids=[case[0] for case in ROUND_NUMBERS])
def test_own_arithmetic_energy_in_round_numbers(kind, readings, energy):
    line = Line(
        "line", kind, line_speed=Q(2, "m/s"), spacing=Q(10, "m"), ridden_length=Q(1000, "m"), vertical_rise=Q(600, "m")
    )
    readings = {name: Q(number, ENOUGH[name][2]) for name, number in readings.items()}
    found = ride_energy(kind, known_values(line, readings | {"rider_mass": Q(100, "kg")}))
    assert found.m_as("J") == pytest.approx(energy, rel=1e-12)


def test_a_tether_at_an_angle_takes_weight_off_the_skis():
    numbers = MIDDLE | {"snow_friction": 0.1}
    works = [by_hand("T-bar lift", numbers | {"tether_angle": angle})["work"] for angle in (0, 20, 40)]
    assert works == sorted(works, reverse=True)
    for angle, work in zip((0, 20, 40), works, strict=True):
        values = known_values(
            line_of("T-bar lift", numbers), readings_of("T-bar lift", numbers | {"tether_angle": angle})
        )
        assert KINDS["T-bar lift"].riding.work(values).m_as("J") == pytest.approx(work, rel=1e-12)


@pytest.mark.parametrize("kind", KINDS)
def test_a_reading_of_the_idle_drag_comes_before_its_parts(kind):
    values = known_values(line_of(kind, MIDDLE), readings_of(kind, MIDDLE))
    assert idle_drag_of(kind, values | {"idle_drag": Q(321, "N")}) == Q(321, "N")
    parts = {"air": ("hanging_mass", "sheave_drag_share"), "belt": READ_ON_A_WAY["belt"], "skis": ("idle_drag",)}
    for part in parts[TRAVEL[kind][0]]:
        assert idle_drag_of(kind, {name: value for name, value in values.items() if name != part}) is None


@pytest.mark.parametrize("kind", KINDS)
def test_power_needed_carries_the_line_and_not_one_more(kind):
    line, readings = line_of(kind, MIDDLE), readings_of(kind, MIDDLE)
    hand = by_hand(kind, {name: MIDDLE[name] for name in (*OF_A_LINE, *readings)})
    flow = MIDDLE["persons_per_carrier"] * MIDDLE["line_speed"] / MIDDLE["spacing"]
    at_the_rope = flow * hand["energy"] + hand["drag"] * MIDDLE["line_speed"]
    needed = power_needed(line, readings)
    assert needed.m_as("W") == pytest.approx(at_the_rope / MIDDLE["efficiency"], rel=1e-9)
    motor = next(limit for limit in limits_of(replace(line, motor_power=needed), readings) if limit.name == "motor")
    assert pph(motor) == pytest.approx(line.capacity.value.m_as("pph"), rel=1e-9)
    for name in ("rider_mass", "efficiency"):
        assert power_needed(line, {other: readings[other] for other in readings if other != name}) is None


# laws of the limits


LIMITS = {"spacing", "loading", "motor", "traction", "unload"}


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
    ("platter lift", {"tether_angle": [0, 89, 90, 95]}),
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


@given(
    curves=st.dictionaries(
        st.sampled_from(sorted(LIMITS)), st.lists(st.integers(0, 3000), min_size=6, max_size=6), min_size=1, max_size=3
    ),
    quarters=st.lists(st.integers(1, 8), min_size=6, max_size=6),
)
def test_the_envelope_lies_on_the_smallest_curve(curves, quarters):
    places = np.cumsum(quarters) / 4
    pieces = envelope(places, curves)
    for name, at, height in pieces:
        np.testing.assert_allclose(height, np.interp(at, places, curves[name]), rtol=1e-9, atol=1e-6)
    at, height = (np.concatenate([piece[number] for piece in pieces]) for number in (1, 2))
    assert (at[0], at[-1]) == (places[0], places[-1])
    assert np.all(np.diff(at) >= 0)
    smallest = np.min(list(curves.values()), axis=0)
    for place, least in zip(places, smallest, strict=True):
        np.testing.assert_allclose(height[at == place], least, atol=1e-9)
        assert place in at
    for left, right in itertools.pairwise(pieces):
        assert left[0] != right[0]
        assert (left[1][-1], left[2][-1]) == (right[1][0], right[2][0])


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
    energies = np.array([by_hand(kind, plain | {"line_speed": speed})["energy"] for speed in SPEEDS])
    force = rising * energies / SPEEDS / 3600  # what the drive has left for riders
    by_torque = numbers["efficiency"] * 1000 * numbers["motor_power"] / 8.0 - by_hand(kind, plain)["drag"]
    np.testing.assert_allclose(force, max(by_torque, 0), rtol=1e-6, atol=1e-6)
    if by_torque > 1:
        share = rising / rising[-1]
        in_proportion = SPEEDS / SPEEDS[-1]
        more = energies[-1] / by_hand(kind, plain)["work"]  # the pick-up is all that spoils the proportion
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


# riders who start from rest


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


MORE = ("base_speed", "carpet_speed", "starting_acceleration", "moving_mass", "groove_angle")


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


# in what share of draws each limit governs

TOW = Line(
    "tow", "rope tow", line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), ridden_length=Q(150, "m"),
    vertical_rise=Q(29.4, "m"), motor_power=Q(15, "kW"),
)  # fmt: skip
TOW_READINGS = {
    "rider_mass": Q(75, "kg"), "snow_friction": Q(0.07, ""), "efficiency": Q(85, "percent"), "idle_drag": Q(500, "N"),
    "pick_up_acceleration": Q(1.5, "m/s**2"), "loading_time": Q(2.8, "s"), "clearing_time": Q(2.8, "s"),
}  # fmt: skip
HALF_WIDTHS = {
    "rider_mass": Q(8, "kg"), "efficiency": Q(5, "percent"), "loading_time": Q(0.4, "s"), "clearing_time": Q(0.4, "s"),
    "line_speed": Q(0.5, "ft/s"),
}  # fmt: skip


def test_shares_add_up_and_one_seed_gives_one_result():
    first, again, other = (share_of_limits(TOW, TOW_READINGS, HALF_WIDTHS, seed=seed) for seed in (7, 7, 8))
    assert first == again
    assert first != other
    assert sum(first.values()) == pytest.approx(1, abs=1e-12)
    assert list(first) == ["spacing", "loading", "motor", "unload"]
    assert first["spacing"] == 0  # 1,800 pph is out of reach of the others
    for share, name in ((first[name], name) for name in ("loading", "motor", "unload")):
        assert 0.1 < share < 0.8
        assert abs(share - other[name]) < 4 * math.sqrt(2 * share * (1 - share) / 20_000)


def backwards(mapping):
    """Return the same mapping with its names in the opposite order."""
    return dict(reversed(mapping.items()))


@pytest.mark.parametrize(
    ("readings", "half_widths"),
    [(TOW_READINGS, backwards(HALF_WIDTHS)), (backwards(TOW_READINGS), HALF_WIDTHS)],
    ids=["half-widths", "readings"],
)
def test_shares_do_not_hang_on_the_order_in_which_names_are_written(readings, half_widths):
    assert share_of_limits(TOW, readings, half_widths, seed=7) == share_of_limits(
        TOW, TOW_READINGS, HALF_WIDTHS, seed=7
    )


@pytest.mark.parametrize(("seed", "middle", "half"), [(1, 2.0, 0.5), (2, 2.1, 0.3), (3, 1.9, 0.4), (4, 1.8, 1.0)])
def test_a_share_against_its_closed_form(seed, middle, half):
    # a rider every 2.0 s on the rope: loading governs where its time is above 2.0 s, at even chances in between
    expected = min(max((middle + half - 2.0) / (2 * half), 0), 1)
    draws = 20_000
    found = share_of_limits(
        TOW, {"loading_time": Q(middle, "s")}, {"loading_time": Q(1000 * half, "millisecond")}, seed=seed, draws=draws
    )
    assert set(found) == {"spacing", "loading"}
    assert abs(found["loading"] - expected) < 4 * math.sqrt(expected * (1 - expected) / draws)
    assert found["spacing"] == pytest.approx(1 - found["loading"], abs=1e-12)


def test_the_share_of_the_motor_against_its_closed_form():
    # the motor falls below the loading point where the efficiency falls below one value: even chances around it
    readings = {name: value for name, value in TOW_READINGS.items() if name != "clearing_time"}
    numbers = {
        "ridden_length": 150, "vertical_rise": 29.4, "line_speed": 3.4, "rider_mass": 75, "snow_friction": 0.07,
        "pick_up_acceleration": 1.5, "idle_drag": 500,
    }  # fmt: skip
    as_much = (by_hand("rope tow", numbers)["energy"] / 2.8 + 500 * 3.4) / 15_000
    expected = (as_much - 0.80) / 0.10
    assert 0.1 < expected < 0.9
    found = share_of_limits(TOW, readings, {"efficiency": Q(5, "percent")}, seed=11)
    assert abs(found["motor"] - expected) < 4 * math.sqrt(expected * (1 - expected) / 20_000)


def test_draws_that_no_formula_takes_are_left_out_and_counted():
    half_widths = {"efficiency": Q(20, "percent"), "loading_time": Q(0.4, "s")}  # from 0.65 to 1.05
    values, left_out = draws_of(TOW, TOW_READINGS, half_widths, seed=3)
    expected = 20_000 * 0.05 / 0.40
    assert abs(left_out - expected) < 4 * math.sqrt(expected)
    assert values["efficiency"].magnitude.max() <= 100  # percent
    assert values["efficiency"].size == values["loading_time"].size == 20_000 - left_out
    shares = share_of_limits(TOW, TOW_READINGS, half_widths, seed=3)
    assert sum(shares.values()) == pytest.approx(1)
    assert draws_of(TOW, TOW_READINGS, {"efficiency": Q(5, "percent")}, seed=3)[1] == 0
    with pytest.raises(ValueError, match="no draw fits the formulas"):
        draws_of(TOW, TOW_READINGS | {"efficiency": Q(85, "")}, {"loading_time": Q(0.4, "s")}, seed=3)


def test_no_doubt_leaves_one_limit_alone():
    assert share_of_limits(TOW, TOW_READINGS | {"loading_time": Q(3, "s")}, {}, seed=1, draws=5) == {
        "spacing": 0, "loading": 1, "motor": 0, "unload": 0
    }  # fmt: skip


# the invented hill


def hill_numbers():
    """Return plain numbers of every line of the hill: of the line and of its readings."""
    readings = plain_numbers("hill_readings.csv")
    return {name: numbers | readings.get(name, {}) for name, numbers in plain_numbers("hill_lifts.csv").items()}


def test_every_line_of_the_hill_has_readings_and_every_reading_a_line():
    lines, readings = read_hill()
    assert {line.name for line in lines} == set(readings) == set(plain_numbers("hill_lifts.csv"))
    for line in lines:
        known = {record.name for record in limits_of(line, readings[line.name]) if isinstance(record, Limit)}
        assert {"spacing", "loading", "motor", "unload"} <= known, line.name
    assert any("slack_tension" in own for own in readings.values())
    assert any("slack_tension" not in own for own in readings.values())  # one line shows a limit left out


GOVERNING = [  # line, limit that governs, the next one, pph as a person writes it
    ("Penny Rope", "loading", "motor", 1200),
    ("Long Platter", "spacing", "motor", 514),
    ("Duckling Belt", "unload", "spacing", 600),
    ("Lantern Double", "spacing", "motor", 1029),
    ("Twin Penny left", "loading", "motor", 1200),
    ("Twin Penny right", "motor", "loading", 978),
]


@pytest.mark.parametrize(("name", "first", "following", "number"), GOVERNING, ids=[case[0] for case in GOVERNING])
def test_own_arithmetic_what_governs_on_the_hill(name, first, following, number):
    lines, readings = read_hill()
    line = next(line for line in lines if line.name == name)
    sums = limits_by_hand(line.kind, hill_numbers()[name])
    assert sorted(sums, key=sums.get)[:2] == [first, following]
    assert round(sums[first]) == number
    records = limits_of(line, readings[name])
    assert {record.name: pph(record) for record in records if isinstance(record, Limit)} == pytest.approx(
        sums, rel=1e-9
    )
    result = governing(records)
    assert (result.limit.name, result.next_limit.name) == (first, following)
    assert result.capacity.value.m_as("pph") == pytest.approx(sums[first], rel=1e-9)
    assert {record.name for record in records if isinstance(record, LeftOut)} == {"traction"} - set(sums)


def test_every_governing_line_of_the_hill_stands_here():
    assert {case[0] for case in GOVERNING} == {line.name for line in read_hill()[0]}


def hill_by_hand(line):
    """Return capacity in pph, and the watts that the motor must give for it, of a line of the hill."""
    r = hill_numbers()[line.name]
    hand, persons_a_second = by_hand(line.kind, r), r["persons_per_carrier"] * r["line_speed"] / r["spacing"]
    watts = (persons_a_second * hand["energy"] + hand["drag"] * r["line_speed"]) / r["efficiency"]
    return 3600 * persons_a_second, watts


def test_the_table_that_sets_lifts_side_by_side():
    installations = read_lifts(DATA / "hill_lifts.csv")
    table = comparison_table(installations, read_hill()[1])
    cells_of = {row[0]: dict(zip(table.columns, row, strict=True)) for row in table.rows}
    together = {name: group for name, group in installations.items() if len(group.lines) > 1}
    assert set(cells_of) == {line.name for line in read_hill()[0]} | set(together)
    for line in read_hill()[0]:
        cells, r, (capacity, watts) = cells_of[line.name], hill_numbers()[line.name], hill_by_hand(line)
        assert cells["kind"] == line.kind
        assert cells["people an hour"] == f"{capacity:,.0f} pph (ideal)"
        assert cells["vertical transport"] == f"{capacity * r['vertical_rise'] / 0.3048:,.0f} VTFH"
        assert cells["ride time"] == f"{ride_by_hand(line.kind, r):.1f} s"
        riders = capacity / 3600 * ride_by_hand(line.kind, r)
        assert cells["riders on the line"] == f"{riders:.1f} persons"
        assert cells["rated power"] == f"{r['motor_power']:.1f} kW"
        assert cells["needed power"] == f"{watts / 1000:.1f} kW"
        assert cells["needed for 1,000 pph"] == f"{watts / capacity:.1f} kW"
        assert cells["on a stop"] == ("in the air" if TRAVEL[line.kind][0] == "air" else "on the ground")
    assert together
    for name, group in together.items():
        capacity, watts = map(sum, zip(*map(hill_by_hand, group.lines), strict=True))
        rated = sum(hill_numbers()[line.name]["motor_power"] for line in group.lines)
        assert cells_of[name]["people an hour"] == f"{capacity:,.0f} pph (ideal, {len(group.lines)} lines together)"
        assert cells_of[name]["rated power"] == f"{rated:.1f} kW"
        assert cells_of[name]["needed power"] == f"{watts / 1000:.1f} kW"
        assert cells_of[name]["needed for 1,000 pph"] == f"{watts / capacity:.1f} kW"


def test_the_table_of_what_governs():
    table = governing_table(read_lifts(DATA / "hill_lifts.csv"), read_hill()[1])
    cells_of = {row[0]: dict(zip(table.columns, row, strict=True)) for row in table.rows}
    assert set(cells_of) == {case[0] for case in GOVERNING}
    for name, first, following, number in GOVERNING:
        cells = cells_of[name]
        sums = limits_by_hand(next(line.kind for line in read_hill()[0] if line.name == name), hill_numbers()[name])
        assert (cells["governs"], cells["next"]) == (first, following)
        assert cells["at most"] == f"{number:,} pph (governed)"
        assert cells["how far"] == f"{sums[following] - sums[first]:,.0f} pph above"
        assert cells["left out"] == ("nothing" if "traction" in sums else "traction")
    readings = {name: value for name, value in read_hill()[1]["Penny Rope"].items() if name != "drive_position"}
    (row,) = governing_table({"lone": Installation("lone", (TOW,))}, {"tow": readings}).rows
    assert row[-1] == "motor (pick-up acceleration), traction (drive position)"
    lone = governing_table({"lone": Installation("lone", (TOW,))}, {}).rows[0]
    assert lone[1:5] == ("spacing", "1,800 pph (governed)", "none", "")


def test_a_ride_time_without_its_start_is_said_in_the_tables():
    whole = replace(TOW, name="whole", pick_up_acceleration=Q(1.5, "m/s**2"))
    belt = line_of("conveyor", MIDDLE)
    installation = {"some": Installation("some", (TOW, whole, belt))}
    for table in (hill_table(installation), comparison_table(installation, {})):
        cells = [dict(zip(table.columns, row, strict=True))["ride time"] for row in table.rows[:3]]
        assert cells == ["44.1 s, start not read", "45.3 s", show(belt.ride_time)]


def test_what_is_not_known_is_said_in_the_table():
    lone = Installation("lone", (replace(TOW, motor_power=None),))
    row = comparison_table({"lone": lone}, {}).rows[0]
    assert row[-4:] == ("not known", "not known", "not known", "on the ground")
    some = Installation("some", (TOW, replace(TOW, name="other", motor_power=None)))
    table = comparison_table({"some": some}, {"tow": TOW_READINGS})
    assert [row[0] for row in table.rows] == ["tow", "other", "some"]
    needed = [dict(zip(table.columns, row, strict=True))["needed power"] for row in table.rows]
    assert needed[0].endswith(" kW")
    assert needed[1:] == ["not known", "not known"]  # a sum with one part not known is not known


def test_the_examples_are_one_of_each_kind():
    examples = read_lifts(DATA / "kind_examples.csv")
    table = kinds_table(examples)
    assert [row[0] for row in table.rows] == list(KINDS)
    numbers = plain_numbers("kind_examples.csv")
    for installation, row in zip(examples.values(), table.rows, strict=True):
        r, cells = numbers[installation.lines[0].name], dict(zip(table.columns, row, strict=True))
        interval = r.get("interval") or ride_by_hand(row[0], r) + r["dwell_time"]
        capacity = 3600 * r["persons_per_carrier"] / interval
        assert cells["line speed"] == f"{r['line_speed']:.2f} m/s"
        assert cells["interval"] == f"{interval:.1f} s"
        assert cells["spacing"] == show(Q(r["line_speed"] * interval, "m"))
        assert cells["people an hour"] == f"{capacity:,.0f} pph (ideal)"
        assert cells["on a stop"] == ("in the air" if TRAVEL[row[0]][0] == "air" else "on the ground")
        assert (installation.lines[0].station_time is not None) == (row[0] in DETACHABLE)


def test_every_kind_has_hazards_of_its_own():
    table = hazards_table()
    assert [row[0] for row in table.rows] == list(KINDS)
    assert len({row[2] for row in table.rows}) == len(KINDS)
    for kind, where, hazards in table.rows:
        assert where == ("in the air" if TRAVEL[kind][0] == "air" else "on the ground")
        assert len(hazards.split()) >= 5
        assert hazards.endswith(".")


# messages

ALL_KINDS, ALL_READINGS = ", ".join(KINDS), ", ".join(READINGS)
RISE = {"vertical_rise": Q(100, "m")}
CABINS = {"line_speed": Q(5, "m/s"), "sheave_distance": Q(1500, "m"), "ridden_length": Q(1500, "m"), **RISE}
SIXTY = {"carriers_on_loop": Q(60, ""), "station_time": Q(120, "s")}
NO_CARRIERS = "solve_line: 'carriers_on_loop' is no quantity of a line without carriers."
MESSAGES = [
    (
        lambda: replace(TOW, kind="sky hook"),
        ValueError,
        f"Line: kind must be one of {ALL_KINDS}, but got 'sky hook'.",
    ),
    (
        lambda: line_from("x", "sky hook", **RISE),
        ValueError,
        f"line_from: kind must be one of {ALL_KINDS}, but got 'sky hook'.",
    ),
    (
        lambda: line_from("x", "platter lift", dwell_time=Q(50, "s"), **RISE),
        ValueError,
        "line_from: dwell_time is no reading of a platter lift, but got 50.0 s. Leave it out.",
    ),
    (
        lambda: line_from("x", "fixed chair", station_time=Q(2, "minute"), **RISE),
        ValueError,
        "line_from: station_time is no reading of a fixed chair, but got 2.0 min. Leave it out.",
    ),
    (
        lambda: line_from("x", "reversible tram", station_time=Q(90, "s"), **RISE),
        ValueError,
        "line_from: station_time is no reading of a reversible tram, but got 90.0 s. Leave it out.",
    ),
    (
        lambda: line_from("Cabins", "gondola", **CABINS, carriers_on_loop=Q(60, "")),
        ValueError,
        "line_from: the interval of 'Cabins' does not follow from carriers_on_loop without station_time. "
        "Give station_time, or the interval itself.",
    ),
    (
        lambda: line_from("Cabins", "gondola", ridden_length=Q(1500, "m"), **RISE, **SIXTY),
        ValueError,
        "line_from: the interval of 'Cabins' does not follow from carriers_on_loop without line_speed and "
        "sheave_distance. Give line_speed and sheave_distance, or the interval itself.",
    ),
    (
        lambda: line_from("Cabins", "gondola", **RISE, **SIXTY),
        ValueError,
        "line_from: the interval of 'Cabins' does not follow from carriers_on_loop without line_speed and "
        "sheave_distance. Give line_speed and sheave_distance, or the interval itself.",
    ),
    (
        lambda: line_from("Cabins", "gondola", **CABINS, **SIXTY, interval=Q(14, "s")),
        ValueError,
        "line_from: 'Cabins' has 60 carriers, which make an interval of 12.0 s, but the other readings make it "
        "14.0 s. Count or time again.",
    ),
    (
        lambda: replace(TOW, vertical_rise=29.4),
        UnitError,
        "vertical_transport: vertical_rise needs a unit, but got the bare value 29.4. Write Q(29.4, 'ft').",
    ),
    (
        lambda: Installation("Twin", ()),
        ValueError,
        "Installation: 'Twin' has no line. Give at least one Line.",
    ),
    (
        lambda: Installation("Twin", (TOW, replace(TOW, name="other", level="counted"))),
        ValueError,
        "Installation: the lines of 'Twin' are of different levels (counted, ideal). "
        "Give lines of one level, so that their capacities may be added.",
    ),
    (
        lambda: known_values(TOW, {"wax": Q(1, "")}),
        ValueError,
        f"known_values: 'wax' is no reading of a lift. Write one of {ALL_READINGS}.",
    ),
    (
        lambda: known_values(TOW, {"snow_friction": 0.07}),
        UnitError,
        "known_values: snow_friction must be friction of skis on snow, but got the bare value 0.07. Write Q(..., '').",
    ),
    (
        lambda: limits_of(TOW, {"rider_mass": Q(75, "N")}),
        UnitError,
        "known_values: rider_mass must be mass of one rider with clothes, skis and all, but got 75 N. "
        "Write Q(..., 'kg').",
    ),
    (
        lambda: known_values(replace(TOW, pick_up_acceleration=Q(1, "m/s**2")), TOW_READINGS),
        ValueError,
        "known_values: pick_up_acceleration is 1.50 m/s², but the line 'tow' has 1.00 m/s². Write it once.",
    ),
    (
        lambda: known_values(TOW, {"drive_position": "middle"}),
        ValueError,
        "known_values: drive_position must be top or bottom, but got 'middle'. Ask the operator.",
    ),
    (
        lambda: line_from("x", "fixed chair", pick_up_acceleration=Q(1.5, "m/s**2"), **RISE),
        ValueError,
        "line_from: pick_up_acceleration is no reading of a fixed chair, but got 1.50 m/s². Leave it out.",
    ),
    (
        lambda: line_from("x", "reversible tram", acceleration=Q(0, "m/s**2"), **RISE),
        UnitError,
        "line_from: acceleration must be an acceleration above zero, but got 0.00 m/s². Write Q(1.5, 'm/s**2').",
    ),
    (
        lambda: replace(TOW, ridden_length=Q(30, "m"), line_speed=Q(10, "m/s"), pick_up_acceleration=Q(1, "m/s**2")),
        ValueError,
        "ride_time_from_rest: pick_up_acceleration of 1 m/s² takes 50.0 m to the speed of the rope, but the ride is "
        "30.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride.",
    ),
    (
        lambda: share_of_limits(TOW, {}, {"loading_time": Q(1, "s")}, seed=1),
        ValueError,
        "share_of_limits: 'loading_time' has a half-width, but no value. "
        "Known: line_speed, spacing, persons_per_carrier, ridden_length, vertical_rise, motor_power.",
    ),
    (
        lambda: share_of_limits(TOW, {"loading_time": Q(3, "s")}, {"loading_time": Q(3, "s")}, seed=1),
        ValueError,
        "share_of_limits: the half-width of loading_time must be less than 3.0 s, but got 3.0 s.",
    ),
]


@pytest.mark.parametrize(("call", "kind", "message"), MESSAGES, ids=[case[2][:70] for case in MESSAGES])
def test_message(call, kind, message):
    with pytest.raises(kind) as caught:
        call()
    assert str(caught.value) == message


@pytest.mark.parametrize("power", [Q(0, "kW"), Q(-15, "kW"), Q(15, "s"), 15])
def test_a_motor_without_power_is_refused(power):
    with pytest.raises(UnitError) as caught:
        replace(TOW, motor_power=power)
    assert str(caught.value) == (f"Line: motor_power must be a power above zero, but got {power!r}. Write Q(15, 'kW').")


@pytest.mark.parametrize("kind", WITHOUT_A_LOOP)
def test_carriers_on_a_lift_without_a_loop_are_refused(kind):
    with pytest.raises(ValueError, match=NO_CARRIERS):
        line_from("x", kind, line_speed=Q(3, "m/s"), carriers_on_loop=Q(6, ""), **RISE)


COLUMNS = "installation,line,kind,level,line_speed,spacing,ridden_length,vertical_rise"
ROW = "Penny,Penny,rope tow,ideal,3.4 m/s,6.8 m,150 m,29.4 m"
ALL_COLUMNS = (
    "installation, line, kind, level, line_speed, spacing, interval, persons_per_carrier, carriers_on_loop, "
    "sheave_distance, ridden_length, ride_time, riders_on_line, hourly_capacity, vertical_rise, motor_power, "
    "station_time, dwell_time, pick_up_acceleration, acceleration"
)
BROKEN_LIFTS = [  # what stands in the table, what is put in its place, message
    ("installation,", "", "read_lifts: lifts.csv: no column 'installation'. Add it."),
    ("level,", "", "read_lifts: lifts.csv: no column 'level'. Add it."),
    (",vertical_rise", "", "read_lifts: lifts.csv: no column 'vertical_rise'. Add it."),
    ("spacing,", "gap,", f"read_lifts: lifts.csv: column 'gap' is not known. Write one of {ALL_COLUMNS}."),
    (",29.4 m", ",", "read_lifts: lifts.csv, row 3: no vertical_rise. Write it, such as '29.4 m'."),
    (
        "rope tow",
        "sky hook",
        f"read_lifts: lifts.csv, row 3: line_from: kind must be one of {ALL_KINDS}, but got 'sky hook'.",
    ),
    (
        "ideal",
        "best",
        "read_lifts: lifts.csv, row 3: Capacity: level must be one of packing, ideal, governed, counted, "
        "but got 'best'.",
    ),
    (
        "3.4 m/s",
        "3.4",
        "read_lifts: lifts.csv, row 3, column line_speed: the unit is missing. "
        "Write 'm/s', 'km/h', 'mph', 'ft/s', 'ft/min'.",
    ),
    (
        "6.8 m",
        "6.8 s",
        "read_lifts: lifts.csv, row 3, column spacing: 's' is a unit of a time, not of a length. "
        "Write 'm', 'ft', 'in', 'cm', 'yd', 'km', 'mi'.",
    ),
    (
        "150 m",
        "long m",
        "read_lifts: lifts.csv, row 3, column ridden_length: 'long' is no number. Write digits only, such as 3.4.",
    ),
    (
        "6.8 m",
        "0 m",
        "read_lifts: lifts.csv, row 3: solve_line: spacing must be greater than zero, but got 0.0 m. "
        "Write for example Q(6.8, 'm').",
    ),
]


@pytest.mark.parametrize(("old", "new", "message"), BROKEN_LIFTS, ids=[case[2][:80] for case in BROKEN_LIFTS])
def test_a_broken_table_of_lifts(tmp_path, old, new, message):
    rows = [row.replace(old, new, 1) for row in (COLUMNS, ROW)]
    whole = ROW if rows[0] == COLUMNS else rows[1]
    (tmp_path / "lifts.csv").write_text("\n".join((rows[0], whole, rows[1])) + "\n", encoding="utf-8")
    with pytest.raises(ValueError) as caught:  # noqa: PT011  the whole text is compared
        read_lifts(tmp_path / "lifts.csv")
    assert str(caught.value) == message


def test_a_row_of_the_table_that_does_not_follow_names_the_row(tmp_path):
    (tmp_path / "lifts.csv").write_text(f"{COLUMNS}\n{ROW.replace('6.8 m', '')}\n", encoding="utf-8")
    with pytest.raises(ValueError) as caught:  # noqa: PT011  both ends of the text are compared
        read_lifts(tmp_path / "lifts.csv")
    assert str(caught.value).startswith("read_lifts: lifts.csv, row 2: ")
    assert str(caught.value).endswith("To know it, give interval, or riders_on_line, or hourly_capacity.")


def test_a_table_of_lifts_by_other_givens(tmp_path):
    columns = "installation,line,kind,level,hourly_capacity,ride_time,persons_per_carrier,ridden_length,vertical_rise"
    row = "Chair,Chair,fixed chair,counted,1200 pph,8 min,2 persons,3900 ft,1850 ft"
    (tmp_path / "lifts.csv").write_text(f"{columns}\n{row}\n", encoding="utf-8")
    line = read_lifts(tmp_path / "lifts.csv")["Chair"].lines[0]
    assert line.interval.m_as("s") == pytest.approx(6, rel=1e-9)
    assert str(line.capacity) == "1,200 pph (counted)"


READING_ROWS = "line,reading,value\nPenny,friction,0.07\nPenny,rider_mass,75 kg\n"
BROKEN_READINGS = [  # the last row, message
    ("Penny,wax,1", f"read_readings: readings.csv, row 4: 'wax' is no reading of a lift. Write one of {ALL_READINGS}."),
    (
        "Penny,friction,0.08",
        "read_readings: readings.csv, row 4: snow_friction of 'Penny' came before. Keep one of the two.",
    ),
    (
        "Penny,loading_time,3",
        "read_readings: readings.csv, row 4: the unit is missing. Write 's', 'min', 'h'.",
    ),
    (
        "Penny,loading_time,3 kg",
        "read_readings: readings.csv, row 4: 'kg' is a unit of a mass, not of a time. Write 's', 'min', 'h'.",
    ),
    (
        "Penny,loading_time,three s",
        "read_readings: readings.csv, row 4: 'three' is no number. Write digits only, such as 3.4.",
    ),
    (
        "Penny,wrap_angle,180",
        "read_readings: readings.csv, row 4: the unit is missing. Write '%', 'degree'.",
    ),
]


@pytest.mark.parametrize(("row", "message"), BROKEN_READINGS, ids=[case[1][:90] for case in BROKEN_READINGS])
def test_a_broken_table_of_readings(tmp_path, row, message):
    (tmp_path / "readings.csv").write_text(f"{READING_ROWS}{row}\n", encoding="utf-8")
    with pytest.raises(ValueError) as caught:  # noqa: PT011  the whole text is compared
        read_readings(tmp_path / "readings.csv")
    assert str(caught.value) == message


def test_a_table_of_readings_as_a_person_writes_it(tmp_path):
    rows = f"{READING_ROWS}Penny,efficiency,85 %\nPenny,wrap_angle,180 degrees\nOther,loading_time,0.05 min\n"
    (tmp_path / "readings.csv").write_text(rows, encoding="utf-8-sig")
    readings = read_readings(tmp_path / "readings.csv")
    assert list(readings) == ["Penny", "Other"]
    assert readings["Penny"]["snow_friction"].m_as("") == 0.07
    assert readings["Penny"]["rider_mass"] == Q(75, "kg")
    assert readings["Penny"]["efficiency"].m_as("") == pytest.approx(0.85)
    assert readings["Penny"]["wrap_angle"].m_as("radian") == pytest.approx(math.pi)
    assert readings["Other"]["loading_time"].m_as("s") == pytest.approx(3)
