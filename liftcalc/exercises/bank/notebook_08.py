"""Exercises of 08: pull and power. Printed numbers and grids are invented for the demo hill."""

import inspect
import math
from functools import partial

from liftcalc.constants import GRAVITY
from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Numbers, Option, Road
from liftcalc.formulas import hand_grip, motor, traction
from liftcalc.formulas import pull as pulling
from liftcalc.quantity_text import show
from liftcalc.units import Q

TANGENT = Mistake("tangent for sine", "The grade went in for the sine. Divide by √(1 + grade²), the friction as well.")
NO_FRICTION = Mistake("friction forgotten", "Skis rub on the snow, also where the track is flat.")
KILOGRAMS_AS_NEWTONS = Mistake(
    "kilograms taken for newtons", "The mass was used as if it were a force. A kilogram weighs nearly ten newtons."
)
ONE_SIDE = Mistake("one side of the rope", "Only the palms were counted. The fingers rub on the rope as well.")
PULL_FOR_SQUEEZE = Mistake("pull taken for squeeze", "This is the pull along the rope. Hands press across it.")
SLOPE_FOR_RUN = Mistake(
    "slope length for run", "Where it is steep, skis press less on the snow: the map length has that in it already."
)
ALL_ADULTS = Mistake("everybody an adult", "All were taken for adults. Some riders are lighter, and cost less.")
PLAIN_MEAN = Mistake("plain mean of two masses", "There are more adults than children: count each by its share.")
IDLE_SUSPECTED = Mistake("idle drag suspected", "Then the report would say {no_idle}.")
EFFICIENCY_SUSPECTED = Mistake("efficiency suspected", "Then the report would say {divided}.")
HP_SUSPECTED = Mistake("horsepower suspected", "Then the report would say {as_kilowatts}.")
SKIS_IN_THE_AIR = Mistake("snow friction on a chair", "Skis on a chair hang in the air. What drags there instead?")
NO_SHEAVES = Mistake("sheaves forgotten", "Riders were lifted and no more. The sheaves under them drag, too.")
NO_IDLE_DRAG = Mistake("idle drag forgotten", "The empty rope does not run for nothing: it drags before anybody rides.")
MULTIPLIED = Mistake("efficiency the wrong way", "The motor must give more than reaches the rope, not less.")
NO_LOSSES = Mistake("efficiency forgotten", "This is the power at the rope. Some is lost on the way to it.")
SLOWER_IS_MORE = Mistake("slower is more", "Each takes less power, and for longer. What does the motor give?")
SPEED_DROPS_OUT = Mistake(
    "simple law below base speed", "True of a drive geared anew to keep its full power. This one keeps its torque."
)
FULL_POWER_KEPT = Mistake("full power kept", "So it would be, if the motor still gave all of its {motor_power}.")
NO_START = Mistake("start forgotten", "This keeps a full line running. To speed it up from rest takes more.")
RIDERS_ALONE = Mistake("riders alone sped up", "Only the riders were sped up. Rope and platters start with them.")
TIME_OVER_SPEED = Mistake("time over speed", "Acceleration is speed over time; here it stands upside down.")
WEIGHT_FOR_MASS = Mistake("weight for mass", "To speed up, mass counts and not weight: leave g out of this part.")
LINEAR = Mistake("linear for exponential", "Each bit of wrap multiplies what the last one holds: that is a power of e.")
DEGREES = Mistake("degrees for radians", "In degrees the rope would hold by itself. The power of e takes radians.")
TURNS = Mistake("wrap in turns", "In turns no tension at all would do. The power of e takes radians; a turn has 2π.")
NO_SAFETY = Mistake("safety factor forgotten", "So the rope is about to slip. It must hold with some to spare.")
TIGHT_SIDE = Mistake("tight side for the difference", "The slack side pulls against it: take one off the ratio.")
NO_FORCE, NOTHING, ALL = Q(0, "N"), Q(0, ""), Q(1, "")


def _but(n, **changed):
    """Return the same numbers but for some."""
    return Numbers(**{**vars(n), **changed})


# argument of a formula: its gap in these exercises, whose names stay, because learners' numbers hang on them
GAPS = {
    "snow_friction": "friction",
    "lining_friction": "friction",
    "sheave_drag_share": "sheave_share",
    "grip_safety_factor": "safety_factor",
    "riders_on_line": "riders",
}


def _of(formula, n):
    """Return what a formula makes of the numbers that bear the names of its arguments."""
    gaps = {name: GAPS.get(name, name) for name in inspect.signature(formula).parameters}
    return formula(**{name: getattr(n, gap) for name, gap in gaps.items() if gap in vars(n)})


_held = partial(_of, hand_grip.held_force)
_work = partial(_of, pulling.ride_work)
_limit = partial(_of, motor.motor_capacity)
_limit_at_constant_torque = partial(_of, motor.motor_capacity_at_constant_torque)
_chair_ride = partial(_of, pulling.carrier_work)
_start = partial(_of, motor.force_to_start)


def _squeeze(n):
    return hand_grip.grip_squeeze(_held(n), n.glove_friction)


def _in_degrees(n):
    return Q(math.tan(math.radians(n.grade.m_as("percent"))), "")


def _mix_and_tape(n):
    """Return the mean mass, each kind by its share, and the length along the snow: a quarter of the map is flat."""
    share, run = n.children.m_as(""), n.horizontal_run.m_as("m")
    along = run / 4 + math.hypot(3 / 4 * run, n.vertical_rise.m_as("m"))
    return {"rider_mass": share * n.child_mass + (1 - share) * n.adult_mass, "track": Q(round(along), "m")}


def _of_the_report(n):
    """Return the figure of the report, the fair one, and what other mistakes would have printed."""
    pulled, whole = _of(pulling.pull_energy, n), _of(pulling.energy_per_rider, n)
    fair = _but(n, energy_per_rider=whole)
    return {
        "pulled": pulled,
        "whole": whole,
        "printed": _limit(_but(n, energy_per_rider=pulled)),
        "fair": _limit(fair),
        "no_idle": _limit(_but(fair, idle_drag=NO_FORCE)),
        "divided": _limit(_but(fair, motor_power=n.motor_power / n.efficiency**2)),
        "as_kilowatts": _limit(_but(fair, motor_power=Q(n.motor_power.magnitude, "kW"))),
    }


def _needed(n):
    return _of(motor.motor_power_needed, _but(n, energy_per_rider=_chair_ride(n)))


def _start_by(n, acceleration):
    return _start(_but(n, starting_acceleration=Q(acceleration, "m/s**2")))


def _exponent(n, unit):
    return n.friction.m_as("") * n.wrap_angle.m_as(unit)


def _ratio(n):
    return (_of(traction.capstan_ratio, n) / n.safety_factor).m_as("")


def _slack(n, ratio, less=1):
    """Return the tension of the slack side for any ratio allowed, right or not."""
    return ((n.riders.m_as("person") * n.pull + n.idle_drag) / (ratio - less)).to("N")


EXERCISES = (
    NumberExercise(
        id="8.1",
        sort="compute",
        text="A rider of {rider_mass}, skis and all, holds the rope of a handle-less tow on a grade of {grade}, at a "
        "steady speed. The friction is {friction} for skis on snow and {glove_friction} for gloves on the rope. How "
        "hard must both hands together press the fingers towards the palms? Take g as 9.80665 m/s².",
        given={
            "rider_mass": Drawn("kg", 82, 70, 90, 1),
            "grade": Drawn("percent", 22, 17, 25, 1),
            "friction": Drawn("", 0.05, 0.04, 0.10, 0.01),
            "glove_friction": Drawn("", 0.3, 0.2, 0.4, 0.05),
        },
        unit="N",
        within=1,
        right=_squeeze,
        roads=(
            Road(wrong.GRADE_AS_DEGREES, lambda n: _squeeze(_but(n, grade=_in_degrees(n)))),
            Road(TANGENT, lambda n: _squeeze(n) * math.hypot(1, n.grade.m_as(""))),
            Road(NO_FRICTION, lambda n: _squeeze(_but(n, friction=NOTHING))),
            Road(KILOGRAMS_AS_NEWTONS, lambda n: _squeeze(n) / GRAVITY),
            Road(ONE_SIDE, lambda n: 2 * _squeeze(n)),
            Road(PULL_FOR_SQUEEZE, _held),
        ),
        clues=(
            "Two questions in one: what pulls along the rope, and what press of the hands holds it?",
            "Picture the rope between fingers and palms: it is rubbed on two sides.",
            "First step: the pull, m g (sin α + μ cos α). The sine is grade ÷ √(1 + grade²), the cosine 1 ÷ that root.",
        ),
        steps=lambda n: (
            f"Pull: {show(n.rider_mass)} × 9.80665 m/s² × ({n.grade.m_as(''):.2f} + {show(n.friction)}) ÷ "
            f"√(1 + {n.grade.m_as(''):.2f}²) = {_held(n).m_as('N'):.1f} N.",
            f"Squeeze: {_held(n).m_as('N'):.1f} N ÷ (2 × {show(n.glove_friction)}) = {show(_squeeze(n))}.",
            "A hand is no clamp, and it tires. Who cannot hold lets go and clears the track; nobody wraps the rope "
            "round a hand or an arm.",
        ),
    ),
    NumberExercise(
        id="8.2",
        sort="compute",
        text="The track of a handle tow is flat at first, then it climbs: {vertical_rise} up over {horizontal_run} of "
        "map in all. A tape along the snow says {track}. Skis rub with a friction of {friction}. Of the riders "
        "{children} are children of {child_mass}, the others adults of {adult_mass}. What is the work of one ride on "
        "average, at a steady speed? Take g as 9.80665 m/s².",
        given={
            "vertical_rise": Drawn("m", 70, 64, 80, 2),
            "horizontal_run": Drawn("m", 360, 320, 400, 20),
            "friction": Drawn("", 0.10, 0.08, 0.12, 0.01),
            "children": Drawn("percent", 30, 20, 40, 5),
            "child_mass": Drawn("kg", 42, 36, 48, 1),
            "adult_mass": Drawn("kg", 82, 74, 88, 1),
        },
        figures=_mix_and_tape,
        unit="kJ",
        within=0.1,
        right=_work,
        roads=(
            Road(SLOPE_FOR_RUN, lambda n: _work(_but(n, horizontal_run=n.track))),
            Road(NO_FRICTION, lambda n: _work(_but(n, friction=NOTHING))),
            Road(KILOGRAMS_AS_NEWTONS, lambda n: _work(n) / GRAVITY),
            Road(ALL_ADULTS, lambda n: _work(_but(n, rider_mass=n.adult_mass))),
            Road(PLAIN_MEAN, lambda n: _work(_but(n, rider_mass=(n.child_mass + n.adult_mass) / 2))),
        ),
        clues=(
            "Steep and flat parts need not be told apart. Which two lengths say it all, and which one is to spare?",
            "Picture the ride from the side: the rise is what lifts, the length on the map is what rubs.",
            "First step: the mean mass of a rider, each kind by its share. The mean alone sets the energy.",
        ),
        steps=lambda n: (
            f"Mean mass: {n.children.m_as(''):.2f} × {show(n.child_mass)} + {1 - n.children.m_as(''):.2f} × "
            f"{show(n.adult_mass)} = {n.rider_mass.m_as('kg'):.2f} kg.",
            f"Lifting and rubbing: {show(n.vertical_rise)} + {show(n.friction)} × {show(n.horizontal_run)} "
            f"= {(n.vertical_rise + n.friction * n.horizontal_run).m_as('m'):.1f} m. The tape is not needed.",
            f"Work: {n.rider_mass.m_as('kg'):.2f} kg × 9.80665 m/s² × that = {show(_work(n), 'kJ')}.",
        ),
    ),
    ChoiceExercise(
        id="8.3",
        sort="mistake",
        text="A report on a handle-less tow at {line_speed} says: 'Motor {motor_power}, {efficiency} of it reaches the "
        "rope, idle drag {idle_drag}. Riders of {rider_mass} pull {pull} each over {ridden_length}; from rest they "
        "speed up by {pick_up_acceleration}. So the motor can pull {printed}.' Which mistake is in it?",
        given={
            "line_speed": Drawn("m/s", 3.2, 2.8, 3.4, 0.1),
            "motor_power": Drawn("hp", 20, 16, 22, 1),
            "efficiency": Drawn("percent", 84, 80, 88, 1),
            "idle_drag": Drawn("N", 550, 500, 650, 50),
            "rider_mass": Drawn("kg", 74, 70, 78, 1),
            "pull": Drawn("N", 190, 180, 210, 5),
            "ridden_length": Drawn("m", 160, 140, 180, 5),
            "pick_up_acceleration": Drawn("m/s**2", 1.5, 1.2, 2.0, 0.1),
        },
        figures=_of_the_report,
        options=(
            Option(
                "The pick-up was left out: momentum taken on, and slip in the gloves.",
                says="The fair figure is {fair}. Of the m v², half is motion and half is heat in the gloves.",
            ),
            Option("The idle drag was left out.", IDLE_SUSPECTED),
            Option("The efficiency was divided by, not multiplied.", EFFICIENCY_SUSPECTED),
            Option("The horsepower were used as kilowatts.", HP_SUSPECTED),
        ),
        clues=(
            "Work out the motor's limit in full, then make one mistake at a time.",
            "Picture the energy of one rider as a bar of three parts. Is the whole bar in the report?",
            "First step: power left for riders is efficiency times power, less idle drag times line speed. "
            "One hp is 745.7 W.",
        ),
        steps=lambda n: (
            f"Power for riders: {show(n.motor_power, 'W')} × {n.efficiency.m_as(''):.2f} − {show(n.idle_drag)} × "
            f"{show(n.line_speed)} = {show((n.motor_power * n.efficiency - n.idle_drag * n.line_speed).to('W'))}.",
            f"Energy: pull {show(n.pulled)}, momentum m v² {show(_of(pulling.momentum_energy, n))}, slip "
            f"F v² ÷ (2 a) {show(_of(pulling.slip_energy, n))}; together {show(n.whole)}.",
            f"3,600 s × power ÷ energy = {show(n.fair)}. With the pull alone: {show(n.printed)}, as printed.",
        ),
    ),
    NumberExercise(
        id="8.4",
        sort="backwards",
        text="A fixed chair at {line_speed} is to bring {hourly_capacity} up {vertical_rise} over {horizontal_run} of "
        "map. A rider is {rider_mass}, skis and all; the sheaves drag with {sheave_share} of the weight. Rope and "
        "empty chairs drag with {idle_drag}. Of the motor's power {efficiency} reaches the rope. Skis on the snow "
        "below have a friction of {friction}. What power must the motor give on average? Take g as 9.80665 m/s².",
        given={
            "line_speed": Drawn("m/s", 2.2, 2.0, 2.4, 0.1),
            "hourly_capacity": Drawn("pph", 1000, 900, 1100, 50),
            "vertical_rise": Drawn("m", 86, 76, 96, 2),
            "horizontal_run": Drawn("m", 400, 380, 440, 10),
            "rider_mass": Drawn("kg", 80, 76, 86, 1),
            "sheave_share": Drawn("percent", 3, 2, 4, 1),
            "idle_drag": Drawn("N", 2400, 2000, 3000, 100),
            "efficiency": Drawn("percent", 85, 80, 88, 1),
            "friction": Drawn("", 0.08, 0.07, 0.10, 0.01),
        },
        unit="kW",
        within=0.2,
        right=_needed,
        roads=(
            Road(SKIS_IN_THE_AIR, lambda n: _needed(_but(n, sheave_share=n.friction))),
            Road(NO_SHEAVES, lambda n: _needed(_but(n, sheave_share=NOTHING))),
            Road(NO_IDLE_DRAG, lambda n: _needed(_but(n, idle_drag=NO_FORCE))),
            Road(MULTIPLIED, lambda n: _needed(n) * n.efficiency**2),
            Road(NO_LOSSES, lambda n: _needed(_but(n, efficiency=ALL))),
            Road(wrong.HOUR_AS_MINUTE, lambda n: _needed(_but(n, hourly_capacity=60 * n.hourly_capacity))),
            Road(KILOGRAMS_AS_NEWTONS, lambda n: _needed(_but(n, rider_mass=n.rider_mass / GRAVITY))),
        ),
        clues=(
            "Backwards: from the people an hour to the watts. Who or what takes power from the rope?",
            "Picture two bars: one for the riders, one for the empty rope. The motor must fill both, and the losses.",
            "First step: the energy of one ride is m g (rise + share × map length).",
        ),
        steps=lambda n: (
            f"One ride: {show(n.rider_mass)} × 9.80665 m/s² × ({show(n.vertical_rise)} + "
            f"{n.sheave_share.m_as(''):.2f} × {show(n.horizontal_run)}) = {show(_chair_ride(n))}. No ski rubs.",
            f"At the rope: {n.hourly_capacity.magnitude:,.0f} × {show(_chair_ride(n))} ÷ 3,600 s + {show(n.idle_drag)} "
            f"× {show(n.line_speed)} = {show(_needed(_but(n, efficiency=ALL)), 'W')}.",
            f"At the motor: ÷ {n.efficiency.m_as(''):.2f} = {show(_needed(n))}. Heavy moments and a start need more; "
            "the maker and licensed people choose a motor.",
        ),
    ),
    ChoiceExercise(
        id="8.5",
        sort="judge",
        text="A tow has a motor of {motor_power} on a variable-speed drive: full power from {base_speed} of rope "
        "up, constant torque below. {efficiency} of it reaches the rope, the idle drag is {idle_drag}, one rider "
        "takes {energy_per_rider}. Someone says: 'At {slow_speed} the motor has it easier and can carry more.' What "
        "do you say?",
        given={
            "motor_power": Drawn("kW", 14, 12, 18, 1),
            "base_speed": Drawn("m/s", 3.2, 2.8, 3.4, 0.1),
            "slow_speed": Drawn("m/s", 2.0, 1.6, 2.4, 0.1),
            "efficiency": Drawn("percent", 85, 80, 90, 1),
            "idle_drag": Drawn("N", 500, 400, 600, 50),
            "energy_per_rider": Drawn("kJ", 31, 28, 34, 0.5),
        },
        figures=lambda n: {
            "before": _limit_at_constant_torque(_but(n, line_speed=n.base_speed)),
            "after": _limit_at_constant_torque(_but(n, line_speed=n.slow_speed)),
            "at_full": _limit(_but(n, line_speed=n.slow_speed)),
        },
        options=(
            Option(
                "It can carry fewer: about {after}, not {before}.",
                says="Torque is what stays, so the power falls with the speed. A ride takes nearly the same energy.",
            ),
            Option("True: each rider takes less power on a slower rope.", SLOWER_IS_MORE),
            Option("Neither: speed drops out, {before} before and after.", SPEED_DROPS_OUT),
            Option("True: the empty rope takes less, so {at_full} can ride.", FULL_POWER_KEPT),
        ),
        clues=(
            "Two things could change with the speed: the energy of a ride, and the power of the motor. Which does?",
            "Picture the two curves of motor limit over line speed: which of the two drives is this one?",
            "First step: power is torque times speed. What part of its full power is left at the slower rope?",
        ),
        steps=lambda n: (
            f"At the rope: {show(n.motor_power)} × {show(n.slow_speed)} ÷ {show(n.base_speed)} × "
            f"{n.efficiency.m_as(''):.2f}, less {show(n.idle_drag)} × {show(n.slow_speed)} for the empty rope.",
            f"3,600 s × that ÷ {show(n.energy_per_rider)} = {show(n.after)}; at full power {show(n.before)}.",
        ),
    ),
    NumberExercise(
        id="8.6",
        sort="compute",
        text="A platter lift stands with {riders} of {rider_mass} on it. Each pulls {pull}; the empty rope drags "
        "with {idle_drag}; rope, platters and sheaves have a moving mass of {moving_mass}. At the start the rope "
        "comes to {line_speed} in {starting_time}, evenly. What force must the drive sheave give meanwhile?",
        given={
            "riders": Drawn("person", 20, 15, 24, 1),
            "rider_mass": Drawn("kg", 74, 70, 80, 1),
            "pull": Drawn("N", 190, 170, 220, 5),
            "idle_drag": Drawn("N", 400, 300, 500, 10),
            "moving_mass": Drawn("kg", 900, 700, 1200, 50),
            "line_speed": Drawn("m/s", 2.8, 2.4, 3.0, 0.1),
            "starting_time": Drawn("s", 8, 6, 9, 1),
        },
        figures=lambda n: {"starting_acceleration": n.line_speed / n.starting_time},
        unit="N",
        within=20,
        right=_start,
        roads=(
            Road(NO_START, lambda n: _start_by(n, 0)),
            Road(NO_IDLE_DRAG, lambda n: _start(_but(n, idle_drag=NO_FORCE))),
            Road(RIDERS_ALONE, lambda n: _start(_but(n, moving_mass=Q(0, "kg")))),
            Road(TIME_OVER_SPEED, lambda n: _start_by(n, 1 / n.starting_acceleration.m_as("m/s**2"))),
            Road(WEIGHT_FOR_MASS, lambda n: _start_by(n, GRAVITY * n.starting_acceleration.m_as("m/s**2"))),
        ),
        clues=(
            "Two things at once: keep the full line going up, and bring all that moves up to speed.",
            "Picture the first seconds: riders, rope, platters and sheaves all set off together.",
            "First step: the acceleration is the line speed over the starting time.",
        ),
        steps=lambda n: (
            f"Steady: {n.riders.magnitude:g} × {show(n.pull)} + {show(n.idle_drag)} = {show(_start_by(n, 0))}.",
            f"Start: ({n.riders.magnitude:g} × {show(n.rider_mass)} + {show(n.moving_mass)}) × {show(n.line_speed)} ÷ "
            f"{show(n.starting_time)} = {show(_start(n) - _start_by(n, 0))}.",
            f"Together {show(_start(n))}. Whether a full line may be started, the maker and licensed people say. "
            "No restart until nobody who fell is seen on the whole track.",
        ),
    ),
    NumberExercise(
        id="8.7",
        sort="backwards",
        text="A tow is to have {riders} on the line; each pulls {pull}, and the idle drag is {idle_drag}. The rope "
        "lies on {wrap_angle} of the drive sheave with a friction of {friction}. A safety factor of {safety_factor} "
        "must stand; it is invented for this exercise and no rule. What tension of the slack side, at the sheave, does "
        "traction ask for at least?",
        given={
            "riders": Drawn("person", 14, 10, 18, 1),
            "pull": Drawn("N", 190, 180, 220, 5),
            "idle_drag": Drawn("N", 450, 400, 600, 50),
            "wrap_angle": Drawn("degree", 180, 175, 200, 5),
            "friction": Drawn("", 0.24, 0.22, 0.28, 0.01),
            "safety_factor": Drawn("", 1.25, 1.2, 1.35, 0.05),
        },
        unit="N",
        within=20,
        right=lambda n: _slack(n, _ratio(n)),
        roads=(
            Road(LINEAR, lambda n: _slack(n, (1 + _exponent(n, "radian")) / n.safety_factor.m_as(""))),
            Road(DEGREES, lambda n: _slack(n, math.exp(_exponent(n, "degree")) / n.safety_factor.m_as(""))),
            Road(TURNS, lambda n: _slack(n, math.exp(_exponent(n, "turn")) / n.safety_factor.m_as(""))),
            Road(NO_SAFETY, lambda n: _slack(n, _ratio(n) * n.safety_factor.m_as(""))),
            Road(NO_IDLE_DRAG, lambda n: _slack(_but(n, idle_drag=NO_FORCE), _ratio(n))),
            Road(TIGHT_SIDE, lambda n: _slack(n, _ratio(n), less=0)),
        ),
        clues=(
            "Backwards: from the riders to the tension. What must the tight side have more than the slack side?",
            "Picture the sheave: one strand leaves it slack, one comes to it tight. Riders hang on the difference.",
            "First step: turn the wrap into radians, take e to friction times wrap, then divide by the safety factor.",
        ),
        steps=lambda n: (
            f"Ratio allowed: e^({show(n.friction)} × {n.wrap_angle.m_as('radian'):.5f}) ÷ {show(n.safety_factor)} = "
            f"{_ratio(n):.5f}; tight side less slack side is (ratio − 1) times the slack side.",
            f"Riders and empty rope: {n.riders.magnitude:g} × {show(n.pull)} + {show(n.idle_drag)} = "
            f"{show(n.riders.magnitude * n.pull + n.idle_drag)}.",
            f"÷ (ratio − 1) = {show(_slack(n, _ratio(n)))}. With that much, traction allows "
            f"{show(_of(traction.riders_by_traction, _but(n, slack_tension=_slack(n, _ratio(n)))))}.",
        ),
    ),
)
