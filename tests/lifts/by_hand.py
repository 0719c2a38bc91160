"""Sums by hand: plain numbers that use no formula of the package, and the invented hill in such numbers."""

import csv
import math
import re

import numpy as np
from example_lines import DETACHABLE, FROM_REST, TRAVEL
from example_tow import G
from places import DATA

UNITS = {  # of the sheets of the data folder, in metres, seconds, newtons, kilograms, kilowatts, degrees and parts
    "": 1, "m/s": 1, "mph": 0.44704, "ft/s": 0.3048, "m": 1, "ft": 0.3048, "s": 1, "min": 60, "person": 1, "kW": 1,
    "m/s\u00b2": 1, "N": 1, "kg": 1, "kg/m": 1, "%": 0.01, "degree": 1,
}  # fmt: skip
FACTS = (
    "lift", "line", "kind", "state", "drive_position", "date", "taken_by", "snow", "loading_timed_as", "people_waited",
)  # fmt: skip


def plain_numbers(name):
    """Return what the sheets of a folder of the data say, by line and name, without the package.

    Of numbers the plain means, in the units that ``UNITS`` turns them into; of facts the words.
    """
    numbers = {}
    for path in sorted((DATA / name).glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as table:
            rows = [(re.sub("[ -]", "_", row["quantity"]), row["value"], row["unit"]) for row in csv.DictReader(table)]
        facts = {called: value for called, value, _ in rows if called in FACTS}
        read = {}
        for called, value, unit in rows:
            if called not in FACTS:
                read.setdefault(called, []).append(float(value) * UNITS[unit])
        numbers[facts["line"]] = facts | {name: sum(values) / len(values) for name, values in read.items()}
    return numbers


def energy_by_hand(kind, r):
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


def ride_time_by_hand(kind, r):
    """Return the ride time in seconds: the way to line speed at half of it, and where it ends at rest, twice."""
    start = r.get("acceleration" if kind == "reversible tram" else "pick_up_acceleration")
    if start is None or kind not in FROM_REST | {"reversible tram"}:
        return r["ridden_length"] / r["line_speed"]
    way = r["line_speed"] ** 2 / start / 2 * (2 if kind == "reversible tram" else 1)
    return way / (r["line_speed"] / 2) + (r["ridden_length"] - way) / r["line_speed"]


def limits_by_hand(kind, r):
    """Return every limit of a line's own in pph, from plain numbers; one without a reading is not there."""
    hand, persons, ride = energy_by_hand(kind, r), r["persons_per_carrier"], ride_time_by_hand(kind, r)
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


def hill_numbers():
    """Return plain numbers of every line of the hill."""
    return plain_numbers("hill")


GOVERNING = [  # line, limit that governs, the next one, pph as a person writes it
    ("Penny Rope", "loading", "motor", 1200),
    ("Long Platter", "spacing", "motor", 514),
    ("Duckling Belt", "unload", "spacing", 600),
    ("Lantern Double", "spacing", "motor", 1029),
    ("Twin Penny left", "loading", "motor", 1200),
    ("Twin Penny right", "motor", "loading", 978),
]


def hill_by_hand(line):
    """Return capacity in pph, and the watts that the motor must give for it, of a line of the hill."""
    r = hill_numbers()[line.name]
    hand, persons_a_second = energy_by_hand(line.kind, r), r["persons_per_carrier"] * r["line_speed"] / r["spacing"]
    watts = (persons_a_second * hand["energy"] + hand["drag"] * r["line_speed"]) / r["efficiency"]
    return 3600 * persons_a_second, watts
