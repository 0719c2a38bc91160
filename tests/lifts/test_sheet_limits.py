"""The limits of a line from its sheet: against sums by hand, and their doubt against draws of their own."""

import csv
import io
import math

import numpy as np
import pytest
from by_hand import GOVERNING, limits_by_hand, ride_time_by_hand, riders_by_hand
from example_tow import G
from messages import refuses, table_of_messages
from scipy.stats import norm

from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.lifts.demo_hill import demo_hill, demo_sheet
from liftcalc.lifts.limit_records import Limit
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.lifts.sheet_limits import DRAWS, sheet_limits

HEADING = "quantity,value,unit,plus_minus,method,note\n"
TOW = ("kind,rope tow", "ridden length,150,m", "vertical rise,29.4,m")
CHAIR = ("kind,fixed chair", "ridden length,640,m", "vertical rise,142,m", "persons per carrier,2,person")
ENDS = np.array([0.025, 0.975])


def sheet_of(*rows):
    """Return the sheet of rows, each a text such as "spacing,6.8,m"."""
    return sheet_from_bytes("sheet.csv", (HEADING + "\n".join(rows) + "\n").encode())


def ends(limits, name):
    """Return the two ends of the range of a limit, in pph."""
    return limits.ranges[name].m_as("pph")


# the figures themselves

FORMER_LIFTS = """line,kind,line_speed,spacing,persons_per_carrier,ridden_length,vertical_rise,motor_power,pick_up
Penny Rope,rope tow,3.4,6.8,1,150,29.4,15,1.5
Long Platter,platter lift,2.8,19.6,1,400,78,15,1.5
Duckling Belt,conveyor,0.6,3,1,80,8,7.5,
Lantern Double,fixed chair,2.2,15.4,2,640,142,55,
Twin Penny left,rope tow,3.4,6.8,1,150,29.4,15,1.5
Twin Penny right,rope tow,2.4,6,1,150,29.4,11,1.5
"""
ROPE = {"rider_mass": 75, "snow_friction": 0.07, "efficiency": 0.85, "clearing_time": 6, "unloading_places": 3}
SHEAVE = {"lining_friction": 0.25, "wrap_angle": 180, "grip_safety_factor": 1.25}
FORMER_READINGS = {  # of the table of readings that stood here before the sheets
    "Penny Rope": ROPE | SHEAVE | {"idle_drag": 500, "loading_time": 3, "slack_tension": 7000, "drive_position": "top"},
    "Long Platter": SHEAVE | {
        "rider_mass": 75, "snow_friction": 0.07, "tether_angle": 30, "efficiency": 0.85, "idle_drag": 400,
        "loading_time": 6, "clearing_time": 5, "slack_tension": 12700, "drive_position": "bottom",
    },
    "Duckling Belt": {
        "rider_mass": 60, "bed_friction": 0.3, "belt_mass_per_length": 8, "return_friction": 0.05, "efficiency": 0.85,
        "loading_time": 4, "clearing_time": 6,
    },
    "Lantern Double": {
        "rider_mass": 80, "sheave_drag_share": 0.03, "hanging_mass": 12000, "efficiency": 0.85, "loading_time": 6,
        "clearing_time": 5,
    },
    "Twin Penny left": ROPE | {"idle_drag": 500, "loading_time": 3},
    "Twin Penny right": ROPE | {"idle_drag": 500, "loading_time": 3.5},
}  # fmt: skip
MEANS = {  # of the Penny Rope, whose sheet holds several readings of these
    "line_speed": (3.4 + 7.6 * 0.44704 + 11.16 * 0.3048) / 3,
    "spacing": (6.8 + 22.5 * 0.3048 + 6.74) / 3,
    "ridden_length": (150 + 492 * 0.3048) / 2,
}


def former_numbers():
    """Return kind and plain numbers of every line, as the former tables held them."""
    found = {}
    for row in csv.DictReader(io.StringIO(FORMER_LIFTS)):
        name, kind, start = row.pop("line"), row.pop("kind"), row.pop("pick_up")
        numbers = {column: float(text) for column, text in row.items()} | FORMER_READINGS[name]
        numbers |= {"pick_up_acceleration": float(start)} if start else {}
        found[name] = kind, numbers | (MEANS if name == "Penny Rope" else {})
    return found


@pytest.mark.parametrize(("name", "first", "following", "number"), GOVERNING, ids=[case[0] for case in GOVERNING])
def test_the_limits_are_those_of_the_former_tables(name, first, following, number):
    kind, numbers = former_numbers()[name]
    by_hand, limits = limits_by_hand(kind, numbers), sheet_limits(demo_hill().sheets[name])
    found = {record.name: record.capacity.m_as("pph") for record in limits.records if isinstance(record, Limit)}
    assert found == pytest.approx(by_hand, rel=1e-9)
    assert set(limits.missing) == {"traction"} - set(by_hand)
    assert (limits.governs.limit.name, limits.governs.next_limit.name) == (first, following)
    assert round(limits.governs.capacity.value.m_as("pph")) == number
    assert (limits.line, limits.level) == (name, "ideal")
    for limit, value in by_hand.items():
        low, high = ends(limits, limit)
        assert low < value < high, limit
    assert sum(limits.shares.values()) == pytest.approx(1)
    assert max(limits.shares, key=limits.shares.get) in (first, following)


@pytest.mark.parametrize("drive", ["top", "bottom"])
def test_the_slack_tension_follows_from_the_counterweight(drive):
    rows = (
        *TOW, "line speed,3.4,m/s", "spacing,6.8,m", "sheave distance,163,m", "rider mass,75,kg", "snow friction,0.07",
        "idle drag,500,N", "lining friction,0.25", "wrap angle,180,degree", "grip safety factor,1.25",
        "pick-up acceleration,1.5,m/s2", "counterweight,14000,N", "rope mass per length,0.6,kg/m",
        f"drive position,{drive}",
    )  # fmt: skip
    rope = 0.6 * G * 29.4 * 163 / 150  # weight of a strand from sheave to sheave, along it
    slack = 7000 - 250 + (rope if drive == "top" else -rope)
    kind, numbers = former_numbers()["Twin Penny left"]
    numbers |= SHEAVE | {"drive_position": drive, "slack_tension": slack}
    pull = 75 * G * (29.4 + 0.07 * math.sqrt(150**2 - 29.4**2)) / 150
    riders = riders_by_hand(numbers, {"pull": pull, "mass": 75, "drag": 500})
    records = {record.name: record for record in sheet_limits(sheet_of(*rows)).records}
    assert records["traction"].capacity.m_as("pph") == pytest.approx(
        3600 * riders / ride_time_by_hand(kind, numbers), rel=1e-9
    )
    assert "Slack tension worked out from the counterweight." in records["traction"].sentence


# how far they can be off


def standard_errors(draws, probabilities, count):
    """Return the standard errors of two quantiles of so many draws, from the density of a large sample beside them."""
    density = []
    for probability in probabilities:
        low, high = np.quantile(draws, [probability - 0.005, probability + 0.005])
        density.append(0.01 / (high - low))
    return np.sqrt(probabilities * (1 - probabilities) / count) / np.array(density)


LOADING = [  # rows of loading time, its quantiles in seconds by hand
    (["loading time,3,s,0.5"], 2.5 + ENDS),
    (["loading time,2.9,s,0.5", "loading time,3.1,s,0.5"], 2.5 + ENDS),  # scatter 0.1 is less
    (["loading time,2.4,s", "loading time,3.0,s", "loading time,3.6,s"], norm.ppf(ENDS, 3, 0.6 / math.sqrt(3))),
    (["loading time,2.4,s,0.1", "loading time,3.0,s,0.1", "loading time,3.6,s,0.1"],
     norm.ppf(ENDS, 3, 0.6 / math.sqrt(3))),
    (["loading time,0.05,min,0.01"], 2.4 + 1.2 * ENDS),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "times"), LOADING)
def test_the_range_of_loading_is_that_of_its_time(rows, times):
    limits = sheet_limits(sheet_of(*TOW, "line speed,3.4,m/s", "spacing,6.8,m", "loading places,2", *rows))
    wanted = 3600 * 2 / times[::-1]
    numbers = np.random.default_rng(1).uniform(size=100_000)
    scatter = len(rows) == 3
    own = norm.ppf(numbers, 3, 0.6 / math.sqrt(3)) if scatter else times[0] + (numbers - 0.025) / 0.95 * np.ptp(times)
    errors = standard_errors(7200 / own, ENDS, DRAWS)
    assert np.all(np.abs(ends(limits, "loading") - wanted) <= 4 * errors)
    assert "spacing" not in limits.ranges  # nothing says how far it may be off


def own_draws(seed=7, count=100_000, **half_widths):
    """Return independent draws of readings, each between value less and value more of its half-width."""
    generator = np.random.default_rng(seed)
    return {
        name: generator.uniform(value - width, value + width, count) for name, (value, width) in half_widths.items()
    }


def from_rest(ride, length, start):
    """Return the speed at which a ride from rest takes its time, of arrays."""
    return start * (ride - np.sqrt(ride**2 - 2 * length / start))


SPACING = [  # what, rows, readings with half-width, capacity from them, and what the way of powers may miss
    ("speed and spacing", (*TOW, "line speed,3.4,m/s,0.1", "spacing,6.8,m,0.5"),
     {"v": (3.4, 0.1), "s": (6.8, 0.5)}, lambda v, s: 3600 * v / s, 0),
    ("interval of a chair", (*CHAIR, "line speed,2.2,m/s,0.1", "interval,7,s,0.4"),
     {"t": (7, 0.4)}, lambda t: 3600 * 2 / t, 0),
    ("a spacing that is only compared", (*CHAIR, "line speed,2.2,m/s,0.1", "interval,7,s,0.4", "spacing,17,m,3"),
     {"t": (7, 0.4)}, lambda t: 3600 * 2 / t, 0),
    ("a ride time from rest",
     ("kind,rope tow", "ridden length,150,m,2", "vertical rise,29.4,m", "ride time,45.25,s,1", "spacing,6.8,m,0.3",
      "pick-up acceleration,1.5,m/s2"),
     {"ride": (45.25, 1), "length": (150, 2), "s": (6.8, 0.3)},
     lambda ride, length, s: 3600 * from_rest(ride, length, 1.5) / s, 1e-3),
    ("carriers of a chair", (*CHAIR, "line speed,2.2,m/s,0.1", "carriers on the loop,84", "sheave distance,660,m,20"),
     {"v": (2.2, 0.1), "d": (660, 20)}, lambda v, d: 3600 * 2 * v * 84 / (2 * d), 0),
    ("cabins with a time in the stations",
     ("kind,gondola", "ridden length,1500,m", "vertical rise,300,m", "persons per carrier,8,person",
      "line speed,5,m/s,0.3", "carriers on the loop,60", "sheave distance,1500,m,20", "station time,120,s"),
     {"v": (5, 0.3), "d": (1500, 20)}, lambda v, d: 3600 * 8 * 60 / (2 * d / v + 120), 2e-3),
    ("a figure of the maker", (*TOW, "line speed,3.4,m/s,0.1", "hourly capacity,1200,pph,100,ideal"),
     {"c": (1200, 100)}, lambda c: c, 0),
    ("a tram",
     ("kind,reversible tram", "ridden length,1600,m,20", "vertical rise,600,m", "persons per carrier,40,person",
      "line speed,8,m/s,0.4", "dwell time,60,s,10", "acceleration,0.5,m/s2,0.1"),
     {"length": (1600, 20), "v": (8, 0.4), "dwell": (60, 10), "a": (0.5, 0.1)},
     lambda length, v, dwell, a: 3600 * 40 / (length / v + v / a + dwell), 0),
]  # fmt: skip


@pytest.mark.parametrize(("what", "rows", "readings", "capacity", "misses"), SPACING, ids=[case[0] for case in SPACING])
def test_the_range_of_spacing_is_that_of_draws_of_its_own(what, rows, readings, capacity, misses):
    limits, own = sheet_limits(sheet_of(*rows)), capacity(**own_draws(**readings))
    wanted = np.quantile(own, ENDS)
    errors = standard_errors(own, ENDS, DRAWS) * math.sqrt(1 + DRAWS / own.size)
    assert np.all(np.abs(ends(limits, "spacing") - wanted) <= 4 * errors + misses * wanted)
    value = capacity(**{name: middle for name, (middle, _) in readings.items()})
    (record,) = (record for record in limits.records if record.name == "spacing")
    assert record.capacity.m_as("pph") == pytest.approx(value, rel=1e-9)
    assert wanted[0] < value < wanted[1]


def test_shares_of_two_limits_are_those_of_draws_of_their_own():
    limits = sheet_limits(sheet_of(*TOW, "line speed,3.4,m/s", "spacing,6.8,m,0.5", "loading time,2,s,0.3"))
    own = own_draws(spacing=(6.8, 0.5), time=(2, 0.3))
    share = np.mean(3400 * 3.6 / own["spacing"] < 3600 / own["time"])
    assert limits.shares["spacing"] == pytest.approx(share, abs=4 * math.sqrt(share * (1 - share) / DRAWS))
    assert limits.shares["spacing"] + limits.shares["loading"] == pytest.approx(1)


MOTOR = (
    *TOW, "line speed,3.4,m/s", "spacing,6.8,m", "motor power,15,kW", "rider mass,75,kg", "snow friction,0.07",
    "idle drag,500,N", "pick-up acceleration,1.5,m/s2",
)  # fmt: skip


def motor_by_hand(**other):
    """Return what the motor of the tow carries, with other numbers."""
    return limits_by_hand("rope tow", former_numbers()["Twin Penny left"][1] | other)["motor"]


def test_draws_that_fit_no_formula_are_left_out():
    limits = sheet_limits(sheet_of(*MOTOR, "efficiency,97,%,20"))  # a half of them over 1
    low, high = ends(limits, "motor")
    width = 0.97 - 0.77 + 0.03
    assert high <= motor_by_hand(efficiency=1)
    assert high == pytest.approx(motor_by_hand(efficiency=0.77 + 0.975 * width), rel=0.01)
    assert low == pytest.approx(motor_by_hand(efficiency=0.77 + 0.025 * width), rel=0.01)


def test_draws_of_a_rise_above_the_length_are_left_out():
    rows = [row for row in MOTOR if not row.startswith(("ridden", "vertical"))]
    limits = sheet_limits(sheet_of(*rows, "ridden length,40,m,5", "vertical rise,38,m,5", "efficiency,85,%"))
    assert np.all(np.isfinite(ends(limits, "motor")))


def test_the_seed_makes_the_draws():
    one, again, other = (sheet_limits(demo_sheet(), seed=seed) for seed in (5, 5, 6))
    for name in one.ranges:
        assert np.array_equal(ends(one, name), ends(again, name))
        assert not np.array_equal(ends(one, name), ends(other, name))
        assert ends(one, name) == pytest.approx(ends(other, name), rel=0.05)
    assert one.shares == again.shares
    few = sheet_limits(demo_sheet(), draws=40)
    assert all((40 * share).is_integer() for share in few.shares.values())


# what they rest on


def test_what_is_assumed_what_is_exact_and_what_is_missing():
    rows = (
        *TOW, "line speed,3.4,m/s,0.1", "spacing,6.8,m", "loading time,3,s,0.5", "clearing time,6,s",
        "rider mass,75,kg,7.5,assumed", "efficiency,85,%,,assumed", "unloading places,3", "grip safety factor,1.5",
        "motor power,15,kW", "head count,20,person",
    )  # fmt: skip
    limits = sheet_limits(sheet_of(*rows))
    assert limits.assumed == ("rider mass", "efficiency", "loading places as 1", "persons per carrier as 1")
    assert limits.exact == (
        "clearing time", "efficiency", "motor power", "ridden length", "spacing", "vertical rise",
    )  # fmt: skip
    assert limits.missing == {
        "motor": ("pick-up acceleration", "snow friction", "idle drag"),
        "traction": ("slack tension", "drive position", "lining friction", "wrap angle", "snow friction", "idle drag"),
    }
    assert set(limits.ranges) == {"spacing", "loading"}
    assert [each.name for each in limits.compared] == ["riders_on_line"]
    sentences = limits.sentences
    assert sentences[0] == str(limits.governs)
    assert sentences[1:] == [
        "Assumed: rider mass, efficiency, loading places as 1, persons per carrier as 1.",
        "Taken as exact, for want of a plus-minus: clearing time, efficiency, motor power, ridden length, spacing, "
        "vertical rise.",
        "motor: pick-up acceleration, snow friction, idle drag not read.",
        "traction: slack tension, drive position, lining friction, wrap angle, snow friction, idle drag not read.",
        "head count: read 20 persons, the line makes it 22.1 persons: 9.3 % below.",
    ]


def test_the_table_of_the_limits():
    limits = sheet_limits(sheet_of(*TOW, "line speed,3.4,m/s", "spacing,6.8,m", "loading time,3,s,0.5", "line,Penny"))
    table = limits.table()
    assert table.caption == "Limits of Penny, from its sheet"
    cells = {row[0]: row[1:] for row in table.rows}
    assert cells["spacing"][:3] == ("1,800 pph", "no doubt read", "0 %")
    low, high = ends(limits, "loading")
    assert cells["loading"][:3] == ("1,200 pph", f"{low:,.0f} pph to {high:,.0f} pph", "100 %")
    assert cells["unload"] == ("left out", "", "", "not read: clearing time")


def test_a_sheet_whose_readings_have_no_doubt_has_no_ranges():
    limits = sheet_limits(sheet_of(*TOW, "line speed,3.4,m/s", "spacing,6.8,m", "loading time,3,s"))
    assert (limits.ranges, limits.shares) == ({}, {})
    assert limits.governs.limit.name == "loading"


def test_of_a_lift_whose_kind_was_not_read_what_needs_it_is_left_out():
    rows = [row for row in MOTOR if not row.startswith("kind")]
    limits = sheet_limits(sheet_of(*rows, "persons per carrier,1,person", "efficiency,85,%", "loading time,3,s,0.5"))
    assert limits.missing["motor"] == ("kind",)
    assert limits.missing["unload"] == ("clearing time",)
    assert "kind" in limits.missing["traction"]
    assert {record.name for record in limits.records} == {"spacing", "loading", "motor", "traction", "unload"}
    assert limits.governs.limit.name == "loading"
    assert limits.line == "sheet"


@pytest.mark.parametrize("rows", [(), ("kind,fixed chair",), ("snow,wet",), ("line speed,3,m/s",)])
def test_a_sheet_from_which_nothing_follows_says_so(rows):
    limits = sheet_limits(sheet_of(*rows))
    assert limits.governs is None
    assert limits.sentences[0] == "No limit can be computed from this sheet."
    assert set(limits.missing) == {record.name for record in limits.records}
    assert limits.compared == []


REFUSED = [  # rows, message behind "sheet.csv: "
    ((*TOW, "line speed,3.4,m/s", "spacing,6.8,m", "vertical rise,400,m"),
     "the vertical rise must be less than the ridden length of 150 m, but got 215 m. Write the length along the slope, "
     "and the height gained."),
    (("kind,rope tow", "ridden length,20,m", "vertical rise,29.4,m"),  # of which no line follows
     "the vertical rise must be less than the ridden length of 20.0 m, but got 29.4 m. Write the length along the "
     "slope, and the height gained."),
    (("kind,rope tow", "ridden length,5,m", "line speed,5,m/s", "pick-up acceleration,1.5,m/s2"),
     "ride_time_from_rest: pick_up_acceleration of 1.5 m/s² takes 8.3 m to the speed of the rope, but the ride is "
     "5.0 m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a longer ride."),
]  # fmt: skip


@table_of_messages(REFUSED, "rows", kind=FieldFileError)
def test_readings_that_fit_no_formula_are_refused(rows, message, kind):
    refuses(lambda: sheet_limits(sheet_of(*rows)), f"sheet.csv: {message}", kind)


SCATTER = [  # rows, mean and doubt by hand, capacity from what is drawn
    (("spacing,2,m", "spacing,12,m"), 7, 5, lambda spacing: 3600 * 3.4 / spacing),
    (("hourly capacity,500,pph,,ideal", "hourly capacity,3500,pph,,ideal"), 2000, 1500, lambda capacity: capacity),
]


@pytest.mark.parametrize(("rows", "mean", "doubt", "capacity"), SCATTER)
def test_a_scatter_that_reaches_below_zero_leaves_those_draws_out(rows, mean, doubt, capacity):
    limits = sheet_limits(sheet_of(*TOW, "line speed,3.4,m/s", *rows))
    drawn = np.random.default_rng(1).normal(mean, doubt, 100_000)
    own = capacity(drawn[drawn > 0])
    errors = standard_errors(own, ENDS, DRAWS * np.mean(drawn > 0))
    assert np.all(np.abs(ends(limits, "spacing") - np.quantile(own, ENDS)) <= 4 * errors)


def test_the_doubt_of_a_start_reaches_a_line_that_a_ride_time_makes():
    """150 m in 45.25 s from rest: the slower the pick-up, the faster the rope must be; drawn here by plain numbers."""
    rows = (
        "kind,rope tow,,,,\nride time,45.25,s,,,\nridden length,150,m,,,\nspacing,6.8,m,,,\n"
        "pick-up acceleration,1.5,m/s2,0.5,,\nloading time,3,s,,,\n"
    )
    found = sheet_limits(sheet_from_bytes("sheet.csv", (HEADING + rows).encode()), draws=20_000)
    start = np.random.default_rng(1).uniform(1, 2, 200_000)
    speed = start * (45.25 - np.sqrt(45.25**2 - 2 * 150 / start))
    low, high = np.percentile(3600 * speed / 6.8, [2.5, 97.5])
    assert found.ranges["spacing"].m_as("pph") == pytest.approx([low, high], abs=6), "near to a product of powers"
    assert high - low > 20
