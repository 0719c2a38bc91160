"""Exercises of 04: hourly capacity. Printed numbers and grids are invented for the demo hill."""

import math

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import (
    hourly_capacity,
    hourly_capacity_from_interval,
    spacing_for_capacity,
    vertical_transport,
)
from liftcalc.formulas.grade import vertical_rise
from liftcalc.formulas.spacing import headway, mean_spacing
from liftcalc.quantity_text import show
from liftcalc.units import Q


def _of_the_mix(n):
    return mean_spacing(Q([n.wide.m_as("m"), n.close.m_as("m")], "m"), Q([0.5, 0.5], ""))


def _transport(n, rise=None):
    return vertical_transport(n.capacity, vertical_rise(n.slope_length, n.grade) if rise is None else rise)


EXERCISES = (
    NumberExercise(
        id="4.1",
        sort="compute",
        text="A rope runs at {line_speed} with {spacing} from rider to rider. How many people an hour, if "
        "every place is "
        "taken?",
        given={"line_speed": Drawn("ft/s", 9.0, 7.0, 11.0, 0.5), "spacing": Drawn("ft", 25, 20, 32, 1)},
        unit="pph",
        within=5,
        right=lambda n: hourly_capacity(n.line_speed, n.spacing),
        roads=(
            Road(wrong.PER_MINUTE, lambda n: hourly_capacity(n.line_speed, n.spacing) / 60),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(3600 * n.spacing.m_as("ft") / n.line_speed.m_as("ft/s"), "pph")),
            Road(
                wrong.FEET_FOR_METRES,
                lambda n: Q(3600 * n.line_speed.m_as("m/s") / n.spacing.m_as("ft"), "pph"),
            ),
            Road(
                wrong.SPACING_TIMES_SPEED, lambda n: Q(3600 * n.spacing.m_as("ft") * n.line_speed.m_as("ft/s"), "pph")
            ),
            Road(
                wrong.ROUNDED_EARLY,
                lambda n: Q(3600 * round(n.line_speed.m_as("ft/s") / n.spacing.m_as("ft"), 1), "pph"),
                close=True,
            ),
        ),
        clues=(
            "Speed and spacing are in feet. Must they be turned into metres?",
            "Picture the rope that runs past a post in an hour, with a rider on every piece of one spacing.",
            "First step: feet of rope in an hour are 3,600 s times the line speed.",
        ),
        steps=lambda n: (
            f"Rope in an hour: 3,600 s × {show(n.line_speed)} = {show((n.line_speed * Q(3600, 's')).to('ft'))}.",
            f"÷ {show(n.spacing)} = {show(hourly_capacity(n.line_speed, n.spacing))}. Feet over feet need no metres.",
        ),
    ),
    NumberExercise(
        id="4.2",
        sort="compute",
        text="A chair for {persons} comes every {interval}. What is its hourly capacity?",
        given={"persons": Drawn("person", 2, 2, 4, 1), "interval": Drawn("s", 6.5, 6.0, 9.0, 0.5)},
        unit="pph",
        within=2,
        right=lambda n: hourly_capacity_from_interval(n.interval, n.persons),
        roads=(
            Road(wrong.SEATS_FORGOTTEN, lambda n: hourly_capacity_from_interval(n.interval)),
            Road(wrong.PER_MINUTE, lambda n: hourly_capacity_from_interval(n.interval, n.persons) / 60),
            Road(
                Mistake("divided by the seats", "The seats were divided by. More seats carry more people."),
                lambda n: hourly_capacity_from_interval(n.interval) / n.persons.m_as("person"),
            ),
            Road(
                wrong.ROUNDED_EARLY,
                lambda n: Q(60 * n.persons.m_as("person") * round(60 / n.interval.m_as("s")), "pph"),
                close=True,
            ),
        ),
        clues=(
            "An interval and the seats are given: neither speed nor spacing is needed.",
            "Picture the loading point and a clock: how often in an hour does a chair come?",
            "First step: chairs an hour are 3,600 s over the interval.",
        ),
        steps=lambda n: (
            f"Chairs an hour: 3,600 s ÷ {show(n.interval)} = {3600 / n.interval.m_as('s'):.1f}.",
            f"× {show(n.persons)} = {show(hourly_capacity_from_interval(n.interval, n.persons))}.",
        ),
    ),
    NumberExercise(
        id="4.3",
        sort="backwards",
        text="A club wants {capacity} from a rope at {line_speed}. What spacing does that ask for?",
        given={"capacity": Drawn("pph", 1000, 800, 1300, 50), "line_speed": Drawn("m/s", 2.7, 2.0, 3.4, 0.1)},
        unit="m",
        within=0.1,
        right=lambda n: spacing_for_capacity(n.capacity, n.line_speed),
        roads=(
            Road(wrong.HEADWAY_FOR_SPACING, lambda n: Q(3600 / n.capacity.m_as("pph"), "m")),
            Road(wrong.HOUR_AS_MINUTE, lambda n: spacing_for_capacity(n.capacity, n.line_speed) / 60),
            Road(
                Mistake(
                    "headway over speed",
                    "The seconds between two riders were divided by the speed. How far does rope run in that time?",
                ),
                lambda n: Q(3600 / n.capacity.m_as("pph") / n.line_speed.m_as("m/s"), "m"),
            ),
        ),
        clues=(
            "Backwards: from the people an hour to the metres between them.",
            "Picture the seconds between two riders at the post, and the rope that runs past meanwhile.",
            "First step: the headway is 3,600 s over the people an hour.",
        ),
        steps=lambda n: (
            f"Headway: 3,600 s ÷ {n.capacity.magnitude:,.0f} = {3600 / n.capacity.m_as('pph'):.2f} s.",
            f"Rope in that time: × {show(n.line_speed)} = {show(spacing_for_capacity(n.capacity, n.line_speed))}. "
            "Whether people can load so is another question.",
        ),
    ),
    NumberExercise(
        id="4.4",
        sort="compute",
        text="Half of the riders stand {wide} apart and half {close}, on a rope at {line_speed}. What is the hourly "
        "capacity of the mix?",
        given={
            "wide": Drawn("m", 9.0, 8.0, 10.0, 0.5),
            "close": Drawn("m", 6.0, 5.0, 6.5, 0.5),
            "line_speed": Drawn("m/s", 3.0, 2.4, 3.4, 0.1),
        },
        unit="pph",
        within=5,
        right=lambda n: hourly_capacity(n.line_speed, _of_the_mix(n)),
        roads=(
            Road(
                wrong.MEAN_OF_CAPACITIES,
                lambda n: (hourly_capacity(n.line_speed, n.wide) + hourly_capacity(n.line_speed, n.close)) / 2,
            ),
            Road(
                Mistake(
                    "the wide ones alone", "Everybody was put at the wide spacing. Half of the riders stand closer."
                ),
                lambda n: hourly_capacity(n.line_speed, n.wide),
            ),
            Road(
                Mistake(
                    "the close ones alone",
                    "Everybody was put at the close spacing. Half of the riders stand further apart.",
                ),
                lambda n: hourly_capacity(n.line_speed, n.close),
            ),
            Road(wrong.PER_MINUTE, lambda n: hourly_capacity(n.line_speed, _of_the_mix(n)) / 60),
            Road(
                Mistake(
                    "both spacings together",
                    "The two spacings were added. A pair of riders takes up both; how much is that for one?",
                ),
                lambda n: hourly_capacity(n.line_speed, n.wide + n.close),
            ),
        ),
        clues=(
            "Something must be averaged. What takes up the rope?",
            "Picture two riders, one of each kind, and the rope that both together take up.",
            "First step: the mean spacing, counted by rider.",
        ),
        steps=lambda n: (
            f"Mean spacing: ({show(n.wide)} + {show(n.close)}) ÷ 2 = {_of_the_mix(n).m_as('m'):.2f} m.",
            f"3,600 s × {show(n.line_speed)} ÷ {_of_the_mix(n).m_as('m'):.2f} m "
            f"= {show(hourly_capacity(n.line_speed, _of_the_mix(n)))}.",
        ),
    ),
    ChoiceExercise(
        id="4.5",
        sort="judge",
        text="A tow is listed at {ideal}, from speed and spacing. A double chair beside it carried "
        "{counted}, counted at "
        "the top. Someone says the tow is the better lift. What do you say?",
        given={"ideal": Drawn("pph", 1500, 1300, 1800, 50), "counted": Drawn("pph", 850, 700, 1000, 50)},
        options=(
            Option(
                "An ideal stands beside a count: count the tow as well, then compare.",
                says="Like with like. Counts of tows often fall well short of their ideal.",
            ),
            Option("True: {ideal} is more than {counted}.", wrong.LEVELS_MIXED),
            Option(
                "False: a chair always carries more than a tow.",
                Mistake(
                    "kind of lift taken for capacity",
                    "No kind of lift carries more as such. The seconds between carriers or riders decide, "
                    "and how many places are filled.",
                ),
            ),
            Option(
                "True, if the tow is also the longer one.",
                wrong.LONGER_IS_MORE,
            ),
        ),
        clues=(
            "Where does each of the two numbers come from?",
            "Picture the levels. On which does each number stand?",
            "First step: name the level of each.",
        ),
        steps=lambda n: (
            f"{show(n.ideal)} is ideal: every place taken, all hour long. {show(n.counted)} was counted.",
            "They cannot be compared as they stand. Count the tow at the top while people stand waiting, or "
            "compare two ideals.",
        ),
    ),
    NumberExercise(
        id="4.6",
        sort="compute",
        text="A lift of {slope_length} along the slope, at a grade of {grade}, carries {capacity}. What is "
        "its vertical "
        "transport in vertical transport feet per hour?",
        given={
            "slope_length": Drawn("m", 400, 150, 450, 10),
            "grade": Drawn("percent", 20, 18, 32, 1),
            "capacity": Drawn("pph", 500, 400, 900, 50),
        },
        unit="person*ft/hour",
        within=400,
        right=_transport,
        roads=(
            Road(
                wrong.TANGENT_FOR_SINE,
                lambda n: _transport(n, n.slope_length * n.grade.m_as("")),
            ),
            Road(
                wrong.GRADE_AS_DEGREES,
                lambda n: _transport(n, n.slope_length * math.sin(math.radians(n.grade.m_as("percent")))),
            ),
            Road(
                Mistake("slope length for rise", "The length of the slope was taken for its height."),
                lambda n: _transport(n, n.slope_length),
            ),
            Road(wrong.METRES_LEFT, lambda n: _transport(n) * 0.3048),
        ),
        clues=(
            "Vertical transport needs the rise, in feet. It is not given: get it from the slope.",
            "Picture the triangle: grade is rise over map length, and the slope is its long side.",
            "First step: the sine of the slope angle is grade ÷ √(1 + grade²).",
        ),
        steps=lambda n: (
            f"Rise: {show(n.slope_length)} × {n.grade.m_as(''):.2f} ÷ √(1 + {n.grade.m_as(''):.2f}²) "
            f"= {vertical_rise(n.slope_length, n.grade).m_as('m'):.2f} m "
            f"= {vertical_rise(n.slope_length, n.grade).m_as('ft'):.2f} ft.",
            f"× {show(n.capacity)} = {show(_transport(n))}.",
        ),
    ),
    ChoiceExercise(
        id="4.7",
        sort="mistake",
        text="Someone watches riders take hold: '{time} from the first to the last of {riders}. So an hour brings "
        "{printed}.' Which mistake is in it?",
        given={"riders": Drawn("person", 5, 5, 9, 1), "headway": Drawn("s", 3.0, 2.5, 4.5, 0.5)},
        figures=lambda n: {
            "time": n.headway * (n.riders.m_as("person") - 1),
            "printed": Q(3600 * n.riders.m_as("person") / (n.headway.m_as("s") * (n.riders.m_as("person") - 1)), "pph"),
            "minute": Q(60 * n.riders.m_as("person") / (n.headway.m_as("s") * (n.riders.m_as("person") - 1)), "pph"),
            "fair": Q(3600 / n.headway.m_as("s"), "pph"),
        },
        options=(
            Option(
                "Riders were counted for headways: there is one headway fewer.",
                says="The clock began with the first rider, so the first one fills no headway. The fair "
                "figure is {fair}.",
            ),
            Option(
                "The figure is for a minute.",
                Mistake("minutes suspected", "For a minute it would be {minute}."),
            ),
            Option(
                "The rope's speed was left out.",
                Mistake(
                    "speed missed", "Seconds between riders are enough. Speed and spacing only say how they come about."
                ),
            ),
            Option(
                "A head count must be divided by the ride time.",
                Mistake(
                    "line and loading point swapped",
                    "The heads here were not on the line at once. They took hold one after another.",
                ),
            ),
        ),
        clues=(
            "When did the clock start, and when did it stop?",
            "Picture the riders as posts: how many headways lie between the first and the last?",
            "First step: headways are one fewer than riders.",
        ),
        steps=lambda n: (
            f"Headways: {n.riders.magnitude - 1:g} in {show(n.time)}, so {show(n.headway)} each.",
            f"An hour: 3,600 s ÷ {show(n.headway)} = {show(n.fair)}, not {show(n.printed)}.",
        ),
    ),
    ChoiceExercise(
        id="4.8",
        sort="judge",
        text="A rope at {line_speed} with {spacing} from rider to rider is replaced by a lift that runs "
        "{factor} times as fast, "
        "with carriers for one person {factor} times as far apart. What does it carry?",
        given={
            "line_speed": Drawn("m/s", 1.8, 1.2, 2.0, 0.1),
            "spacing": Drawn("m", 9, 7.0, 10.0, 0.5),
            "factor": Drawn("", 3, 2, 3, 1),
        },
        figures=lambda n: {"headway": headway(n.line_speed, n.spacing)},
        options=(
            Option(
                "As many an hour as before; the ride is shorter.",
                says="The interval is the same {headway}, and the interval is what decides.",
            ),
            Option("{factor} times as many: it is {factor} times as fast.", wrong.FASTER_IS_MORE),
            Option(
                "Fewer: the carriers are further apart.",
                Mistake(
                    "spacing alone",
                    "The carriers are further apart, and they come faster. Look at the seconds between two.",
                ),
            ),
            Option(
                "{factor} times as many on the line, and so {factor} times as many an hour.",
                Mistake(
                    "more on the line",
                    "Wider spacing puts fewer on the line, not more; and riders on the line are not people an hour.",
                ),
            ),
        ),
        clues=(
            "Two things change at once. Which single number do they make together?",
            "Picture yourself at the loading point: what do you feel, the metres or the seconds?",
            "First step: the headway before, and the interval after.",
        ),
        steps=lambda n: (
            f"Before: {show(n.spacing)} ÷ {show(n.line_speed)} = {show(n.headway)}.",
            f"After: {show(n.factor)} × {show(n.spacing)} ÷ ({show(n.factor)} × {show(n.line_speed)}) = "
            f"{show(n.headway)}: the same.",
            f"3,600 s ÷ {show(n.headway)} = {show(hourly_capacity(n.line_speed, n.spacing))}, before and after.",
        ),
    ),
)
