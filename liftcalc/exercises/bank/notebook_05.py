"""Exercises of 05: measuring. Printed numbers and grids are invented for the demo hill."""

import math

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.grade import slope_length
from liftcalc.quantity_text import show
from liftcalc.units import Q


def _along(n):
    return slope_length(vertical_rise=n.vertical_rise, horizontal_run=n.map_length)


def _lifted(n, grade):
    return n.plan_speed * math.hypot(1, grade)


def _mean_time(n):
    return (n.first + n.second + n.third) / 3


def _needed(n, ends):
    """Return the time in which the doubt of the ends is the wanted share of the way."""
    return Q(ends * n.fix.m_as("m") / (n.share.m_as("") * n.line_speed.m_as("m/s")), "s")


EXERCISES = (
    NumberExercise(
        id="5.1",
        sort="compute",
        text="A line on the map is {map_length} long, and between its ends the hill rises by {vertical_rise}. "
        "How long is it along the slope?",
        given={"map_length": Drawn("m", 150, 140, 200, 5), "vertical_rise": Drawn("m", 36, 30, 60, 2)},
        unit="m",
        within=0.5,
        right=_along,
        roads=(
            Road(wrong.MAP_FOR_SLOPE, lambda n: n.map_length),
            Road(
                Mistake(
                    "rise added straight",
                    "Map length and rise are the short sides of a right angle: square, add, take the root.",
                ),
                lambda n: n.map_length + n.vertical_rise,
            ),
            Road(
                Mistake(
                    "squares taken off",
                    "The squares were subtracted. The slope is the long side: it is longer than the map says.",
                ),
                lambda n: Q(math.sqrt(n.map_length.m_as("m") ** 2 - n.vertical_rise.m_as("m") ** 2), "m"),
            ),
        ),
        clues=(
            "A map is seen from above. What does it leave out?",
            "Picture the triangle: map length below, rise upright, slope across.",
            "First step: square both, and add.",
        ),
        steps=lambda n: (
            f"Squares: {n.map_length.magnitude:g}² + {n.vertical_rise.magnitude:g}² "
            f"= {n.map_length.magnitude**2 + n.vertical_rise.magnitude**2:,.0f}.",
            f"The root: {_along(n).magnitude:.2f} m.",
        ),
    ),
    NumberExercise(
        id="5.2",
        sort="compute",
        text="The positions of a track give {plan_speed} on the plan, and the grade is {grade}. What is the "
        "line speed along "
        "the slope?",
        given={"plan_speed": Drawn("m/s", 3.2, 2.4, 3.6, 0.1), "grade": Drawn("percent", 25, 22, 35, 1)},
        unit="m/s",
        within=0.01,
        right=lambda n: _lifted(n, n.grade.m_as("")),
        roads=(
            Road(wrong.PLAN_FOR_SLOPE, lambda n: n.plan_speed),
            Road(
                Mistake(
                    "grade added straight",
                    "The grade was added as it stands. The slope is the long side: √(1 + grade²).",
                ),
                lambda n: n.plan_speed * (1 + n.grade.m_as("")),
            ),
            Road(
                Mistake(
                    "turned round", "The speed was made smaller. A slope is longer than its plan, in the same time."
                ),
                lambda n: n.plan_speed / math.hypot(1, n.grade.m_as("")),
            ),
            Road(
                wrong.GRADE_AS_DEGREES,
                lambda n: n.plan_speed / math.cos(math.radians(n.grade.m_as("percent"))),
            ),
        ),
        clues=(
            "Positions know nothing of height. What is missing?",
            "Picture a metre of plan, and the slope above it.",
            "First step: a metre of plan is √(1 + grade²) of slope.",
        ),
        steps=lambda n: (
            f"Grade {show(n.grade)} is {n.grade.m_as(''):.2f}; √(1 + {n.grade.m_as(''):.2f}²) "
            f"= {math.hypot(1, n.grade.m_as('')):.4f}.",
            f"{show(n.plan_speed)} × {math.hypot(1, n.grade.m_as('')):.4f} = {show(_lifted(n, n.grade.m_as('')))}.",
        ),
    ),
    NumberExercise(
        id="5.3",
        sort="compute",
        text="On another tow three rides are timed from a post where riders have the speed of the rope already, to the "
        "let-go: {first}, {second} and {third}. From post to let-go there are {ridden_length}, from sheave to sheave "
        "{sheave_distance}. What is the line speed, in metres a second?",
        given={
            "first": Drawn("s", 44, 42, 46, 1),
            "second": Drawn("s", 46, 43, 47, 1),
            "third": Drawn("s", 45, 42, 46, 1),
            "ridden_length": Drawn("m", 150, 140, 160, 2),
            "ends": Drawn("m", 13, 11, 17, 1),
        },
        figures=lambda n: {"sheave_distance": n.ridden_length + n.ends},
        unit="m/s",
        within=0.02,
        right=lambda n: (n.ridden_length / _mean_time(n)).to("m/s"),
        roads=(
            Road(
                Mistake(
                    "sheave distance for ridden length",
                    "The times run from the post to the let-go, so the length must, too.",
                ),
                lambda n: (n.sheave_distance / _mean_time(n)).to("m/s"),
            ),
            Road(wrong.WHOLE_LOOP, lambda n: (2 * n.ridden_length / _mean_time(n)).to("m/s")),
            Road(
                Mistake("times added, not averaged", "The length was divided by all three times together."),
                lambda n: (n.ridden_length / (3 * _mean_time(n))).to("m/s"),
            ),
            Road(
                wrong.UPSIDE_DOWN,
                lambda n: Q(_mean_time(n).m_as("s") / n.ridden_length.m_as("m"), "m/s"),
            ),
        ),
        clues=(
            "Which of the two lengths was ridden while the watch ran?",
            "Picture someone beside the tow with a watch: started as a rider passes the post, stopped at the let-go.",
            "First step: the mean of the three times.",
        ),
        steps=lambda n: (
            f"Mean time: ({n.first.magnitude:g} + {n.second.magnitude:g} + {n.third.magnitude:g}) ÷ 3 "
            f"= {_mean_time(n).magnitude:.2f} s.",
            f"{show(n.ridden_length)} ÷ {_mean_time(n).magnitude:.2f} s "
            f"= {show((n.ridden_length / _mean_time(n)).to('m/s'))}.",
        ),
    ),
    NumberExercise(
        id="5.4",
        sort="backwards",
        text="Each end of the steady part of a track may be off by {fix} along the line: standard "
        "uncertainties that know nothing "
        "of each other. The rope runs at {line_speed}. How long must the steady part be for a speed with a "
        "standard uncertainty of {share}?",
        given={
            "fix": Drawn("m", 3.0, 2.0, 5.0, 0.5),
            "line_speed": Drawn("m/s", 3.0, 2.4, 3.4, 0.1),
            "share": Drawn("percent", 5, 4, 8, 1),
        },
        unit="s",
        within=0.5,
        right=lambda n: _needed(n, math.sqrt(2)),
        roads=(
            Road(
                Mistake("one end alone", "Only one end was counted. Both ends of the part may be off."),
                lambda n: _needed(n, 1),
            ),
            Road(wrong.ADDED_STRAIGHT, lambda n: _needed(n, 2)),
            Road(wrong.STANDARD_FOR_EXPANDED_TURNED, lambda n: _needed(n, 2 * math.sqrt(2))),
            Road(
                Mistake(
                    "share forgotten",
                    "In that time the doubt is as large as the way itself. It may be only a small part of it.",
                ),
                lambda n: Q(math.sqrt(2) * n.fix.m_as("m") / n.line_speed.m_as("m/s"), "s"),
            ),
            Road(
                Mistake(
                    "metres written as seconds", "This is the way that is needed. How long does the rope take for it?"
                ),
                lambda n: Q(math.sqrt(2) * n.fix.m_as("m") / n.share.m_as(""), "s"),
            ),
        ),
        clues=(
            "Backwards: from the wished share to the way, from the way to the time.",
            "Picture a ruler with two fuzzy ends: the longer it is, the less they matter.",
            "First step: the two ends together are off by √2 times one of them.",
        ),
        steps=lambda n: (
            f"Both ends: √2 × {show(n.fix)} = {math.sqrt(2) * n.fix.m_as('m'):.2f} m.",
            f"That may be {show(n.share)} of the way: {math.sqrt(2) * n.fix.m_as('m') / n.share.m_as(''):.1f} m.",
            f"At {show(n.line_speed)} this takes {show(_needed(n, math.sqrt(2)))}.",
        ),
    ),
    ChoiceExercise(
        id="5.5",
        sort="judge",
        text="A tape on the stopped and locked-out lift gives {tape} from grab to let-go. A line drawn on "
        "the map, lifted "
        "onto the slope, gives "
        "{on_map}. Which of them do you take for the riders on the line?",
        given={"tape": Drawn("m", 150, 140, 160, 2), "ends": Drawn("m", 13, 11, 17, 1)},
        figures=lambda n: {"on_map": n.tape + n.ends},
        options=(
            Option(
                "The tape's, once it is seen that the map line runs from sheave to sheave.",
                says="They measure two things. Riders are only between grab and let-go.",
            ),
            Option(
                "The mean of the two.",
                Mistake(
                    "mean of two different things",
                    "A mean of a ridden length and a sheave distance is the length of nothing.",
                ),
            ),
            Option(
                "The map's: the longer one is on the safe side.",
                Mistake(
                    "longer is safer",
                    "Which side is cautious depends on what the number is for. Take the length that is "
                    "ridden, and add a margin openly where one is needed.",
                ),
            ),
            Option(
                "The map's: a map does not sag, and a tape does.",
                Mistake(
                    "instrument blamed first",
                    "A sagging tape reads too long, not too short, and never by {ends}. Ask first whether "
                    "both measured the same thing.",
                ),
            ),
        ),
        clues=(
            "They differ by far more than either can be off. What else could it be?",
            "Picture both ends of the tow: where do hands take hold, and where is the sheave?",
            "First step: ask what was drawn.",
        ),
        steps=lambda n: (
            f"The difference is {show(n.ends)}: no reading error, but rope that nobody rides, at both ends.",
            "The ridden length sets riders and ride time; the sheave distance sets the rope and the "
            "carriers on a loop.",
        ),
    ),
    ChoiceExercise(
        id="5.6",
        sort="mistake",
        text="Someone takes a whole track, {length} of ride in {whole}, and writes: 'line speed {printed}'. "
        "The rope runs at "
        "{line_speed} along the slope. What went wrong?",
        given={
            "ride": Drawn("s", 44, 40, 60, 2),
            "line_speed": Drawn("m/s", 3.0, 2.5, 3.5, 0.5),
            "idle": Drawn("s", 30, 24, 40, 2),
        },
        figures=lambda n: {
            "length": (n.ride * n.line_speed).to("m"),
            "whole": n.ride + n.idle,
            "printed": ((n.ride * n.line_speed) / (n.ride + n.idle)).to("m/s"),
            "plan": n.line_speed / math.hypot(1, 0.2),
        },
        options=(
            Option(
                "Standing and run-up were counted as riding.",
                says="Length over the whole time is the mean of riding and standing. Only the steady part "
                "knows the rope.",
            ),
            Option(
                "The speed is on the plan, not along the slope.",
                Mistake(
                    "plan suspected",
                    "On a grade of 20 % that would make {plan}: it costs two in a hundred, far less than is "
                    "missing here.",
                ),
            ),
            Option(
                "The track jumped by 300 m.",
                Mistake("jump suspected", "A jump makes the way longer and the speed higher, not lower."),
            ),
            Option(
                "Feet a second were read as metres a second.",
                Mistake("feet suspected", "Then the number would be more than three times too large, not too small."),
            ),
        ),
        clues=(
            "Divide the length by the line speed. How long does it take at the speed of the rope?",
            "Picture the trace of the track panel: where is it level and high?",
            "First step: length over line speed, and compare with the whole time.",
        ),
        steps=lambda n: (
            f"At the speed of the rope the length takes {show(n.length)} ÷ {show(n.line_speed)} = {show(n.ride)}.",
            f"The other {show(n.idle)} of {show(n.whole)} went by standing and run-up.",
        ),
    ),
    ChoiceExercise(
        id="5.7",
        sort="judge",
        text="From the same {ride} of a track, adding up the steps from fix to fix gives {sum_of_steps}; a "
        "straight line laid "
        "through the fixes gives {line_speed}. Which do you believe?",
        given={
            "ride": Drawn("s", 40, 36, 60, 2),
            "line_speed": Drawn("m/s", 3.3, 2.8, 3.5, 0.1),
            "noise": Drawn("m/s", 0.4, 0.3, 0.6, 0.1),
        },
        figures=lambda n: {"sum_of_steps": n.line_speed + n.noise},
        options=(
            Option(
                "The straight line: stray fixes make a sum of steps longer, and hardly ever shorter.",
                says="Each fix strays to a side or back and forth, and the sum counts that straying as way.",
            ),
            Option(
                "The sum of steps: it uses every fix.",
                Mistake("every fix, every error", "The line uses every fix as well, but lets their errors cancel."),
            ),
            Option(
                "The mean of the two.",
                Mistake(
                    "mean with a biased one", "One of them is nearly always too high. A mean is then too high as well."
                ),
            ),
            Option(
                "The sum of steps: the rope sways, so the way is longer.",
                Mistake("sway taken for way", "Sway sideways carries nobody uphill. The line speed is along the rope."),
            ),
        ),
        clues=(
            "A fix is off by metres, and a step between two fixes is only a few metres long.",
            "Picture a dog on a straight road, nose to the ground: is its way longer or shorter than yours?",
            "First step: ask what happens to each of the two when noise is added.",
        ),
        steps=lambda n: (
            f"The sum of steps, {show(n.sum_of_steps)}, holds the wanderings of the fixes as if they were way.",
            f"The straight line, {show(n.line_speed)}, lets them cancel. On the slope it is a little more: "
            f"it is a speed on the plan.",
        ),
    ),
)
