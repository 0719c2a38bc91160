"""Example lines of every kind with their readings, and ranges from which laws draw them."""

from hypothesis import strategies as st

from liftcalc import Q
from liftcalc.lifts.line import Line

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
ALL_KINDS = ", ".join(TRAVEL)  # as a message lists them
LIMITS = {"spacing", "loading", "motor", "traction", "unload"}  # of every kind
WITHOUT_A_LOOP = ("rope tow", "conveyor", "reversible tram")  # no carriers to count on a loop
DETACHABLE = ("detachable chair", "gondola")
FROM_REST = {"rope tow", "handle tow", "platter lift", "T-bar lift"}  # of their riders, who stand still at the grab
ENOUGH = {  # readings, each with a believable range and its unit
    "rider_mass": (30, 120, "kg"), "snow_friction": (0.01, 0.2, ""), "tether_angle": (0, 50, "degree"),
    "sheave_drag_share": (0.01, 0.05, ""), "hanging_mass": (1000, 60_000, "kg"), "bed_friction": (0.1, 0.4, ""),
    "return_friction": (0.02, 0.1, ""), "belt_mass_per_length": (4, 15, "kg/m"), "idle_drag": (50, 900, "N"),
    "efficiency": (0.6, 0.95, ""), "base_speed": (0.4, 6, "m/s"), "pick_up_acceleration": (0.5, 4, "m/s**2"),
    "loading_time": (2, 30, "s"), "loading_places": (1, 3, ""), "clearing_time": (2, 20, "s"),
    "unloading_places": (1, 3, ""), "slack_tension": (2000, 60_000, "N"), "lining_friction": (0.1, 0.3, ""),
    "wrap_angle": (120, 360, "degree"), "grip_safety_factor": (1, 2, ""), "carrier_length": (1, 4, "m"),
    "groove_angle": (30, 180, "degree"), "starting_acceleration": (0.05, 1, "m/s**2"), "moving_mass": (100, 5000, "kg"),
    "drive_inertia_mass": (10, 1000, "kg"),
    "counterweight": (5000, 100_000, "N"), "rope_mass_per_length": (0.3, 4, "kg/m"),
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


# rows of consistent figures

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


# the tow of most examples

TOW = Line(
    "tow", "rope tow", line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), ridden_length=Q(150, "m"),
    vertical_rise=Q(29.4, "m"), motor_power=Q(15, "kW"),
)  # fmt: skip
TOW_READINGS = {
    "rider_mass": Q(75, "kg"), "snow_friction": Q(0.07, ""), "efficiency": Q(85, "percent"), "idle_drag": Q(500, "N"),
    "pick_up_acceleration": Q(1.5, "m/s**2"), "loading_time": Q(2.8, "s"), "clearing_time": Q(2.8, "s"),
}  # fmt: skip
RISE = {"vertical_rise": Q(100, "m")}


def pph(limit):
    """Return the capacity of a limit as a plain number."""
    return limit.capacity.m_as("pph")
