"""Every slider of the series: its label, its range in both systems of units, and what it means.

A panel names the controls it wants; their look, their ranges and their legend come from here. What a slider sets is a
quantity of the vocabulary, and takes label and meaning from there, unless it says more here.
"""

import math
from dataclasses import dataclass, replace

from pint import Quantity

from liftcalc.quantity_text import show
from liftcalc.units import Q, kind_of, parsed_unit
from liftcalc.vocabulary import VOCABULARY, words_of

SYSTEMS = {"us": "US units", "metric": "metric units"}

# kind of quantity: unit of each system; a kind that is not here has one unit for both
DISPLAY_UNITS = {
    "speed": {"us": "mph", "metric": "m/s"},
    "length": {"us": "ft", "metric": "m"},
    "acceleration": {"us": "ft/s**2", "metric": "m/s**2"},
    "power": {"us": "hp", "metric": "kW"},
    "force": {"us": "lbf", "metric": "N"},
    "mass": {"us": "lb", "metric": "kg"},
}


@dataclass(frozen=True)
class Scale:
    """Range of a slider in one unit."""

    unit: str
    low: float
    high: float
    step: float
    digits: int


@dataclass(frozen=True)
class Control:
    """One slider: what it sets, where it starts, and how far it goes in each system."""

    name: str
    label: str
    start: Quantity
    metric: Scale
    us: Scale
    meaning: str

    def scale(self, system):
        """Return the range in one system of units."""
        return self.us if system == "us" else self.metric


def _control(name, start, metric, us=None, *, label=None, meaning=None):
    """Return a control; label and meaning are those of its quantity in the vocabulary, where it names no others."""
    label = label or words_of(name).capitalize()
    return Control(name, label, start, Scale(*metric), Scale(*(us or metric)), meaning or VOCABULARY[name].meaning)


# metric and us: unit, lowest, highest, step, digits; one range for both where the unit is the same
# fmt: off
CONTROLS = {
    control.name: control
    for control in (
        _control("line_speed", Q(3.4, "m/s"), ("m/s", 0.4, 6.0, 0.1, 2), ("mph", 0.9, 13.4, 0.1, 1)),
        _control("spacing", Q(6.8, "m"), ("m", 1.5, 40.0, 0.1, 1), ("ft", 5.0, 131.0, 0.5, 1)),
        _control("ridden_length", Q(150, "m"), ("m", 20, 1000, 1, 0), ("ft", 66, 3280, 2, 0)),
        _control("persons_per_carrier", Q(1, "person"), ("person", 1, 8, 1, 0)),
        _control("vertical_rise", Q(29.4, "m"), ("m", 2, 300, 0.2, 1), ("ft", 7, 984, 0.5, 1)),
        _control("grade", Q(20, "percent"), ("percent", 2, 40, 1, 0), meaning="rise on a hundred of map length"),
        _control("reaction_time", Q(2.0, "s"), ("s", 0, 6, 0.1, 1),
            meaning="from the fall until the attendant presses stop"),
        _control("riders_on_rope", Q(22, "person"), ("person", 0, 40, 1, 0),
            label="Riders on the rope", meaning="who hold on until it stands; zero is the empty rope"),
        _control("brake_force", Q(2000, "N"), ("N", 0, 4000, 20, 0), ("lbf", 0, 900, 5, 0),
            meaning="of a brake, along the rope; zero: the drive only lets go of it"),
        _control("clearing_time", Q(6.0, "s"), ("s", 1, 20, 0.5, 1),
            meaning="one rider, from let-go until out of the unload area"),
        _control("practical_gap", Q(5.3, "m"), ("m", 0.5, 12.0, 0.1, 1), ("ft", 1.5, 40.0, 0.5, 1)),
        _control("adult_length", Q(1.7, "m"), ("m", 1.2, 2.2, 0.05, 2), ("ft", 3.9, 7.3, 0.1, 1),
            label="Adult's length", meaning="skis of an adult along the line"),
        _control("child_length", Q(1.1, "m"), ("m", 0.7, 1.6, 0.05, 2), ("ft", 2.2, 5.3, 0.1, 1),
            label="Child's length", meaning="skis of a child along the line"),
        _control("child_share", Q(30, "percent"), ("percent", 0, 100, 5, 0),
            label="Share of children", meaning="counted by rider"),
        _control("interval", Q(7.0, "s"), ("s", 1, 30, 0.1, 1)),
        _control("seats", Q(2, "person"), ("person", 1, 8, 1, 0),
            label="Persons per carrier", meaning="persons on each carrier, all taken"),
        _control("riders_on_line", Q(22, "person"), ("person", 1, 80, 1, 0),
            meaning="riders on the running line, in one photo"),
        _control("ride_time", Q(45.3, "s"), ("s", 10, 300, 0.1, 1),
            meaning="one rider on a stopwatch, grab to let-go"),
        _control("counting_time", Q(60, "s"), ("s", 5, 180, 1, 0)),
        _control("motor_power", Q(15, "kW"), ("kW", 1, 60, 0.5, 1), ("hp", 1.4, 80.4, 0.5, 1)),
        _control("loading_time", Q(3.0, "s"), ("s", 1, 12, 0.5, 1)),
        _control("rider_mass", Q(75, "kg"), ("kg", 25, 120, 1, 0), ("lb", 55, 265, 1, 0),
            meaning="one rider with clothes, skis and all; of a mix, the mean"),
        _control("snow_friction", Q(0.07, ""), ("", 0.02, 0.16, 0.01, 2)),
        _control("wanted_capacity", Q(1200, "pph"), ("pph", 100, 2400, 10, 0),
            label="People wanted", meaning="riders an hour that the motor is to pull"),
        _control("counterweight", Q(12000, "N"), ("N", 2000, 30000, 100, 0), ("lbf", 450, 6740, 20, 0)),
        _control("wrap_angle", Q(180, "degree"), ("degree", 90, 540, 5, 0)),
        _control("lining_friction", Q(0.25, ""), ("", 0.05, 0.5, 0.01, 2),
            meaning="rope on the lining of the drive sheave; a wet or icy rope has less"),
        _control("glove_friction", Q(0.4, ""), ("", 0.1, 0.8, 0.05, 2),
            meaning="glove on rope; a wet or icy rope has less"),
        _control("pick_up_acceleration", Q(1.5, "m/s**2"), ("m/s**2", 0.5, 4.0, 0.1, 1), ("ft/s**2", 1.6, 13.2, 0.2, 1),
            meaning="how hard a rider speeds up after taking hold"),
        _control("starting_time", Q(8, "s"), ("s", 0.5, 20, 0.5, 1),
            label="Starting time", meaning="from rest to line speed, with a full line"),
        # doubts are in percent, so that no slider can ask for a reading below zero
        _control("speed_doubt", Q(3, "percent"), ("percent", 1, 40, 1, 0),
            label="Doubt of speed", meaning="plus or minus of the line speed as a half-width, in percent of it"),
        _control("spacing_doubt", Q(7, "percent"), ("percent", 1, 40, 1, 0),
            label="Doubt of spacing", meaning="plus or minus of the spacing as a half-width, in percent of it"),
        _control("length_doubt", Q(1, "percent"), ("percent", 1, 40, 1, 0),
            label="Doubt of length", meaning="plus or minus of the ridden length as a half-width, in percent of it"),
        _control("loading_doubt", Q(15, "percent"), ("percent", 1, 40, 1, 0),
            label="Doubt of loading", meaning="plus or minus of the loading time as a half-width, in percent of it"),
        _control("friction_doubt", Q(30, "percent"), ("percent", 1, 60, 1, 0),
            label="Doubt of friction",
            meaning="plus or minus of the friction (snow, sheaves or bed) as a half-width, in percent of it"),
        _control("mass_doubt", Q(10, "percent"), ("percent", 1, 40, 1, 0),
            label="Doubt of mass", meaning="plus or minus of the rider's mean mass as a half-width, in percent of it"),
        _control("efficiency_doubt", Q(5, "percent"), ("percent", 1, 20, 1, 0),
            label="Doubt, efficiency",
            meaning="plus or minus of the efficiency as a half-width, in points: 85 % and 5 is 80 to 90 %"),
        _control("idle_doubt", Q(20, "percent"), ("percent", 1, 60, 1, 0),
            label="Doubt of idle drag",
            meaning="plus or minus of the empty rope's drag as a half-width, in percent of it"),
        _control("display_speed", Q(3.6, "m/s"), ("m/s", 2.4, 4.6, 0.05, 2), ("mph", 5.4, 10.2, 0.1, 1),
            label="Display shows", meaning="line speed that the display of a phone shows"),
        _control("display_step", Q(0.45, "m/s"), ("m/s", 0.05, 1.5, 0.05, 2), ("mph", 0.1, 3.3, 0.1, 1),
            label="Step of display", meaning="smallest step that the display can make"),
        _control("track_speed", Q(3.38, "m/s"), ("m/s", 2.8, 4.2, 0.01, 2), ("mph", 6.3, 9.4, 0.02, 2),
            label="Track says", meaning="line speed from the steady part of a track"),
        _control("steady_from", Q(44, "s"), ("s", 0, 600, 1, 0),
            label="Steady from", meaning="start of the steady part, since the first fix of the track"),
        _control("steady_to", Q(76, "s"), ("s", 0, 600, 1, 0),
            label="Steady to", meaning="end of the steady part, since the first fix of the track"),
        _control("map_length", Q(160, "m"), ("m", 120, 200, 1, 0), ("ft", 394, 656, 2, 0),
            label="Map length", meaning="length of the line drawn on the map: horizontal"),
        _control("misses", Q(3.5, "percent"), ("percent", 0, 30, 0.5, 1),
            label="Misses", meaning="share of attempts that fail, of all classes; the slot is lost"),
        _control("falls", Q(0.655, "percent"), ("percent", 0, 3, 0.1, 2),
            label="Falls", meaning="share of rides with a fall on the way, of all classes"),
        _control("stops_an_hour", Q(1.5, ""), ("", 0, 10, 0.5, 1),
            label="Stops an hour", meaning="stops beside those of falls, for each hour of running"),
        _control("stop_time", Q(35, "s"), ("s", 0, 180, 5, 0),
            label="Stop time", meaning="mean time of a stop, those of falls as well"),
        _control("slow_downs_an_hour", Q(3, ""), ("", 0, 20, 1, 0),
            label="Slow-downs an hour", meaning="for each hour of running"),
        _control("invented_day", Q(1, ""), ("", 1, 99, 1, 0),
            label="Another day, by number", meaning="each number is one invented day, the same each time"),
        _control("digits_kept", Q(0, ""), ("", 0, 3, 1, 0),
            label="Digits kept", meaning="digits after the point that are kept halfway, in riders a second"),
        # the line and the laps
        _control("governed_capacity", Q(1200, "pph"), ("pph", 300, 2400, 10, 0),
            label="Governed capacity", meaning="persons an hour that the smallest limit of the lift lets on"),
        _control("rush_arrivals", Q(1800, "pph"), ("pph", 300, 2400, 10, 0),
            label="Arrivals in the rush", meaning="persons an hour who join the line in the rush"),
        _control("rush_length", Q(20, "minute"), ("minute", 5, 30, 1, 0),
            label="Length of the rush", meaning="how long the rush lasts, from the opening of the lift"),
        _control("later_arrivals", Q(600, "pph"), ("pph", 0, 800, 10, 0),
            label="Arrivals later", meaning="persons an hour who join the line after the rush"),
        _control("time_looked_at", Q(20, "minute"), ("minute", 0, 60, 1, 0),
            label="Time looked at", meaning="since the lift opened: where both gaps are drawn"),
        _control("crowd", Q(70, "person"), ("person", 1, 200, 1, 0)),
        _control("descent_time", Q(75, "s"), ("s", 20, 600, 1, 0)),
        _control("rest_time", Q(0, "s"), ("s", 0, 600, 5, 0),
            label="Rest", meaning="of each rider in each lap, beside the lift: a chat, a bite, a look"),
        # the slope
        _control("people_an_hour", Q(1000, "pph"), ("pph", 50, 2400, 10, 0),
            label="People an hour", meaning="who come down this slope: counted or simulated, not the ideal"),
        _control("slope_area", Q(0.4, "hectare"), ("hectare", 0.1, 5, 0.05, 2),
            meaning="area that riders really ski on"),
        _control("guideline_from", Q(35, "person/hectare"), ("person/hectare", 1, 150, 1, 0),
            label="Guideline from", meaning="riders a hectare below which the slope has room to spare: yours, or a "
            "quoted one"),
        _control("guideline_to", Q(75, "person/hectare"), ("person/hectare", 1, 150, 1, 0),
            label="Guideline to", meaning="riders a hectare above which it is too full: yours, or a quoted one"),
        # cost
        _control("price", Q(35000, "dollar"), ("dollar", 1000, 100000, 500, 0)),
        _control("life", Q(20, "season"), ("season", 1, 40, 1, 0)),
        _control("interest", Q(5, "percent"), ("percent", 0, 15, 0.5, 1),
            meaning="interest of a year on the money in the lift"),
        _control("wage", Q(16, "dollar/hour"), ("dollar/hour", 0, 40, 0.5, 2)),
        _control("posts", Q(2, ""), ("", 0.5, 6, 0.5, 1)),
        _control("rides", Q(90000, "person/season"), ("person/season", 1000, 200000, 1000, 0)),
        _control("ticket_share", Q(1.47, "dollar/person"), ("dollar/person", 0, 6, 0.01, 2),
            label="Share", meaning="what a ride brings: its share of the ticket"),
        _control("moved_by", Q(20, "percent"), ("percent", 10, 50, 5, 0),
            label="Moved by", meaning="how far each value is moved down and up, in percent of it; assumed"),
    )
}
# fmt: on


def speed_control(end):
    """Return the control of the line speed with another end of its range, in m/s; a slow lift gets finer steps."""
    control, step = CONTROLS["line_speed"], 0.02 if end < 2 else 0.1
    if end == control.metric.high:
        return control
    miles = math.floor(10 * Q(end, "m/s").m_as("mph")) / 10
    return replace(
        control,
        metric=Scale("m/s", 5 * step, end, step, 2),
        us=Scale("mph", 10 * step, miles, step, 2),
    )


def reaching(control, value):
    """Return a control whose range holds a value: as it is, or wider, up or down to a round number of both systems."""
    if value is None or control.metric.low <= value.m_as(control.metric.unit) <= control.metric.high:
        return control
    return replace(control, metric=_reaching(control.metric, value), us=_reaching(control.us, value))


def _reaching(scale, value):
    """Return a range that holds a value."""
    number = value.m_as(scale.unit)
    if number > scale.high:
        high = _round_number(1.25 * number)
        step = scale.step * 10 if high / scale.step > MOST_STEPS else scale.step
        return replace(scale, high=high, step=step)
    low = _round_number(0.5 * number) if number > 0 else 0.0
    return replace(scale, low=low, step=min(scale.step, low or scale.step))


MOST_STEPS = 5_000  # of a slider


def _round_number(number):
    """Return the next number up that has one figure or two, such as 250 or 0.3."""
    power = 10.0 ** math.floor(math.log10(abs(number)))
    return next(
        part * power for part in (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10) if part * power >= abs(number) * (1 - 1e-9)
    )


def display_unit(quantity, system):
    """Return the unit in which a quantity is shown in one system."""
    units = DISPLAY_UNITS.get(kind_of(quantity))
    return units[system] if units else None


def in_system(value, system):
    """Return a quantity, or a capacity with its level, as text in one system of units."""
    if not isinstance(value, Quantity):
        return str(value)
    return show(value, display_unit(value, system))


def number_in(quantity, system):
    """Return the plain number of a quantity in the unit of one system."""
    unit = display_unit(quantity, system)
    return quantity.m_as(parsed_unit(unit)) if unit else quantity.magnitude


@dataclass(frozen=True)
class InUnit:
    """A result that keeps its own unit in both systems."""

    quantity: Quantity
    unit: str

    def __str__(self):
        return show(self.quantity, self.unit)
