"""Exercises of 09: what limits the lift. Printed numbers and grids are invented for the demo hill."""

import math

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import hourly_capacity, hourly_capacity_from_head_count, interval_for_capacity
from liftcalc.formulas.loading_point import (
    crowd_capacity_at_least,
    crowd_capacity_at_most,
    loading_capacity,
    mean_loading_time_exponential,
    unload_capacity,
)
from liftcalc.formulas.motor import motor_capacity
from liftcalc.formulas.spacing import headway, line_speed_for_headway
from liftcalc.quantity_text import show
from liftcalc.units import Q

LARGEST_FOR_SMALLEST = Mistake(
    "largest for smallest", "The widest gate was taken. What gets through all of them is set by the narrowest."
)
MEAN_OF_LIMITS = Mistake(
    "limits averaged", "The limits were averaged. A wide gate makes a narrow one no wider: look for the smallest."
)


def _motor(n, idle_drag):
    return motor_capacity(n.motor_power, n.efficiency, n.line_speed, idle_drag, n.ride_energy)


def _mean(*limits):
    return sum(limits, start=Q(0, "pph")) / len(limits)


def _speed_at(n, capacity):
    """Return the line speed at which spacing allows just as many."""
    return line_speed_for_headway(n.spacing, interval_for_capacity(capacity))


def _laps(n, capacity):
    """Return the laps an hour of one of the crowd."""
    return Q(capacity.m_as("pph") / n.crowd.m_as("person"), "")


EXERCISES = (
    NumberExercise(
        id="9.1",
        sort="compute",
        text="A platter lift runs at {line_speed}, with {spacing} from one platter for one person to the next. Loading "
        "takes {loading_time} from start to start. Of the motor's {motor_power}, {efficiency} reach the rope; the "
        "empty rope drags with {idle_drag}, and each ride takes {ride_energy} at the rope. What is the governed "
        "capacity?",
        given={
            "line_speed": Drawn("m/s", 2.8, 2.6, 3.0, 0.1),
            "spacing": Drawn("m", 17.5, 16.5, 18.5, 0.5),
            "loading_time": Drawn("s", 5.8, 5.2, 6.0, 0.2),
            "motor_power": Drawn("kW", 15, 14, 16, 0.5),
            "efficiency": Drawn("percent", 85, 80, 88, 1),
            "idle_drag": Drawn("N", 400, 300, 500, 50),
            "ride_energy": Drawn("kJ", 84, 76, 90, 1),
        },
        figures=lambda n: {
            "by_spacing": hourly_capacity(n.line_speed, n.spacing),
            "by_loading": loading_capacity(n.loading_time),
            "by_motor": _motor(n, n.idle_drag),
            "at_rope": (n.motor_power * n.efficiency.m_as("")).to("W"),
        },
        unit="pph",
        within=2,
        right=lambda n: min(n.by_spacing, n.by_loading, n.by_motor),
        roads=(
            Road(
                Mistake("first limit for all", "This is what spacing allows. It is one limit of three."),
                lambda n: n.by_spacing,
            ),
            Road(LARGEST_FOR_SMALLEST, lambda n: max(n.by_spacing, n.by_loading, n.by_motor)),
            Road(MEAN_OF_LIMITS, lambda n: _mean(n.by_spacing, n.by_loading, n.by_motor)),
            Road(
                Mistake("empty rope forgotten", "The motor also drags the empty rope. Riders get what is left of it."),
                lambda n: min(n.by_spacing, n.by_loading, _motor(n, Q(0, "N"))),
            ),
        ),
        clues=(
            "Three things could hold this lift down. Which of them does?",
            "Picture three gates in a row, each of another width. How many get through all three?",
            "First step: for the motor, take the drag of the empty rope times the line speed off the power at the "
            "rope. What is left is shared out by the rides.",
        ),
        steps=lambda n: (
            f"Spacing: 3,600 s × {show(n.line_speed)} ÷ {show(n.spacing)} = {show(n.by_spacing)}. "
            f"Loading: 3,600 s ÷ {show(n.loading_time)} = {show(n.by_loading)}.",
            f"Power left for riders: {show(n.at_rope)} − {show(n.idle_drag)} × {show(n.line_speed)} "
            f"= {show(n.at_rope - n.idle_drag * n.line_speed, 'W')}.",
            f"Motor: 3,600 s × that ÷ {show(n.ride_energy, 'J')} = {show(n.by_motor)}.",
            f"The smallest governs: {show(n.by_motor)}, an upper bound. The next one is "
            f"{show(min(n.by_spacing, n.by_loading) - n.by_motor)} above it.",
        ),
    ),
    ChoiceExercise(
        id="9.2",
        sort="judge",
        text="There is a long line at the rope tow: {line_speed}, {spacing} from rider to rider, {loading_time} from "
        "one start to the next at its one loading place. One guest wants the rope {faster} faster, another wants "
        "riders closer together. You are the new supervisor. What do you tell them?",
        given={
            "line_speed": Drawn("m/s", 3.0, 2.8, 3.2, 0.1),
            "spacing": Drawn("m", 7.0, 6.5, 7.5, 0.1),
            "loading_time": Drawn("s", 3.2, 3.0, 4.0, 0.1),
            "faster": Drawn("percent", 50, 10, 50, 5),
        },
        figures=lambda n: {
            "ideal": hourly_capacity(n.line_speed, n.spacing),
            "fast": hourly_capacity(n.line_speed * (1 + n.faster.m_as("")), n.spacing),
            "loading": loading_capacity(n.loading_time),
        },
        options=(
            Option(
                "Neither would carry more people an hour: loading governs, at {loading}.",
                says="Spacing allows {ideal} already, more than can get on. A change to a limit that does not govern "
                "carries nobody more, and these two take away room to stop. Licensed people, the maker and the "
                "authority set speed and spacing.",
            ),
            Option(
                "The faster rope would help: {fast} instead of {ideal}.",
                Mistake(
                    "faster is more",
                    "Both figures are of the spacing alone. Work out how many an hour can get on: the line speed is "
                    "not in it.",
                ),
            ),
            Option("Closer together would help: what fits on the rope is carried.", wrong.PACKING_FOR_CAPACITY),
            Option("Each would help a little: if one limit rises, the mean of them rises.", MEAN_OF_LIMITS),
        ),
        clues=(
            "Two limits can be worked out from what is given. Which is the smaller?",
            "Picture yourself at the loading point. Does the rider wait for the rope, or the rope for the rider?",
            "First step: the people an hour from speed and spacing, then those from the loading time.",
        ),
        steps=lambda n: (
            f"Spacing: 3,600 s × {show(n.line_speed)} ÷ {show(n.spacing)} = {show(n.ideal)}.",
            f"Loading: 3,600 s ÷ {show(n.loading_time)} = {show(n.loading)}. It is the smaller, and it governs.",
            f"{show(n.faster)} faster lifts spacing to {show(n.fast)}, closer together lifts it, too; loading stays.",
            "So nobody shortens the spacing: it carries nobody more, and the next rider needs the room when one falls.",
        ),
    ),
    NumberExercise(
        id="9.3",
        sort="backwards",
        text="On paper only: a rope tow keeps {spacing} from rider to rider, whatever its line speed. Loading takes "
        "{loading_time} from start to start, at one place. The unload area has {places} places, each clear after "
        "{clearing_time}. Up to which line speed does spacing govern?",
        given={
            "spacing": Drawn("m", 8.0, 6.5, 9.0, 0.1),
            "loading_time": Drawn("s", 3.2, 2.8, 4.0, 0.1),
            "places": Drawn("", 2, 2, 3, 1),
            "clearing_time": Drawn("s", 8.0, 6.0, 10.0, 0.5),
        },
        figures=lambda n: {
            "loading": loading_capacity(n.loading_time),
            "unload": unload_capacity(n.clearing_time, unloading_places=n.places),
        },
        unit="m/s",
        within=0.03,
        right=lambda n: _speed_at(n, min(n.loading, n.unload)),
        roads=(
            Road(LARGEST_FOR_SMALLEST, lambda n: _speed_at(n, max(n.loading, n.unload))),
            Road(MEAN_OF_LIMITS, lambda n: _speed_at(n, _mean(n.loading, n.unload))),
            Road(
                Mistake("places forgotten", "The unload area was taken for one place. Several are clearing at once."),
                lambda n: _speed_at(n, min(n.loading, unload_capacity(n.clearing_time))),
            ),
            Road(
                wrong.UPSIDE_DOWN,
                lambda n: Q(interval_for_capacity(min(n.loading, n.unload)).m_as("s") / n.spacing.m_as("m"), "m/s"),
            ),
        ),
        clues=(
            "Below some speed spacing is the smallest limit, above it another one is. Where do they meet?",
            "Picture the limits over the line speed: spacing climbs, the two others lie flat. Which is met first?",
            "First step: people an hour at loading and at unload. Which speed makes spacing equal to the smaller?",
        ),
        steps=lambda n: (
            f"Loading: 3,600 s ÷ {show(n.loading_time)} = {show(n.loading)}. Unload: 3,600 s × {show(n.places)} ÷ "
            f"{show(n.clearing_time)} = {show(n.unload)}. The smaller is met first.",
            f"It is one rider every {interval_for_capacity(min(n.loading, n.unload)).m_as('s'):.2f} s.",
            f"{show(n.spacing)} ÷ that = {show(_speed_at(n, min(n.loading, n.unload)))}. Above it a faster rope "
            "carries nobody more.",
        ),
    ),
    NumberExercise(
        id="9.4",
        sort="backwards",
        text="A beginner conveyor runs at {line_speed} with {spacing} from rider to rider. Loading takes "
        "{loading_time} from start to start. At the top there is one place, clear again after {clearing_time} on "
        "average, and it governs. From which clearing time down would it govern no longer?",
        given={
            "line_speed": Drawn("m/s", 0.5, 0.48, 0.6, 0.02),
            "spacing": Drawn("m", 2.8, 2.6, 3.0, 0.1),
            "loading_time": Drawn("s", 3.8, 3.0, 4.0, 0.2),
            "clearing_time": Drawn("s", 7.0, 7.0, 9.0, 0.5),
        },
        figures=lambda n: {
            "by_spacing": hourly_capacity(n.line_speed, n.spacing),
            "by_loading": loading_capacity(n.loading_time),
            "by_unload": unload_capacity(n.clearing_time),
        },
        unit="s",
        within=0.1,
        right=lambda n: interval_for_capacity(min(n.by_spacing, n.by_loading)),
        roads=(
            Road(
                Mistake("the limit after the next", "This meets the higher of the two others. One is met earlier."),
                lambda n: interval_for_capacity(max(n.by_spacing, n.by_loading)),
            ),
            Road(MEAN_OF_LIMITS, lambda n: interval_for_capacity(_mean(n.by_spacing, n.by_loading))),
            Road(
                Mistake("more time for more people", "The time was raised. More people an hour leave less time each."),
                lambda n: n.clearing_time * (min(n.by_spacing, n.by_loading) / n.by_unload).m_as(""),
            ),
            Road(
                Mistake("saving for the time", "This is by how much it would have to fall. Asked is what is left."),
                lambda n: n.clearing_time - interval_for_capacity(min(n.by_spacing, n.by_loading)),
            ),
        ),
        clues=(
            "Unload governs now. Which limit comes next, and how many an hour does it allow?",
            "Picture the bars of the limits: the bar of unload grows until it is as long as another one. Which?",
            "First step: people an hour for spacing and for loading. The smaller of the two is met first.",
        ),
        steps=lambda n: (
            f"Unload now: 3,600 s ÷ {show(n.clearing_time)} = {show(n.by_unload)}. Spacing allows "
            f"{show(n.by_spacing)}, loading {show(n.by_loading)}.",
            f"Spacing comes next, {show(n.by_spacing - n.by_unload)} above unload.",
            f"3,600 s ÷ {n.by_spacing.m_as('pph'):.1f} = {show(interval_for_capacity(n.by_spacing))}: the headway.",
            "Room and a helping hand clear a place; hurry does not. The operator, the maker and the authority decide.",
        ),
    ),
    NumberExercise(
        id="9.5",
        sort="compute",
        text="One afternoon {crowd} ski a rope tow and nothing else. One ride and one descent take "
        "{ride_and_descent} together, without the waiting line. The loading point takes {loading_time} a person; "
        "spacing alone would allow {ideal}. How many laps an hour can each of them make at most, on average?",
        given={
            "crowd": Drawn("person", 100, 90, 140, 2),
            "ride_and_descent": Drawn("minute", 3.5, 2.5, 4.0, 0.1),
            "loading_time": Drawn("s", 3.0, 2.8, 3.6, 0.1),
            "ideal": Drawn("pph", 1600, 1450, 1800, 50),
        },
        figures=lambda n: {
            "lap": n.ride_and_descent.to("s") + n.loading_time,
            "most": min(
                crowd_capacity_at_most(n.crowd, ride_and_descent=n.ride_and_descent, loading_time=n.loading_time),
                n.ideal,
            ),
            "fewest": crowd_capacity_at_least(
                n.crowd, ride_and_descent=n.ride_and_descent, loading_time=n.loading_time
            ),
        },
        unit="",
        within=0.1,
        right=lambda n: _laps(n, n.most),
        roads=(
            Road(
                Mistake(
                    "more people, more rides",
                    "These are the laps of somebody who never waits. With so many people a line forms.",
                ),
                lambda n: _laps(n, hourly_capacity_from_head_count(n.crowd, n.lap)),
            ),
            Road(
                Mistake("spacing figure shared out", "Fewer than spacing allows get past the loading point."),
                lambda n: _laps(n, n.ideal),
            ),
            Road(
                Mistake(
                    "always last in line",
                    "Here each waits for the whole crowd on every lap. Those who ride or ski down stand in no line.",
                ),
                lambda n: _laps(n, n.fewest),
            ),
            Road(
                Mistake("all the laps for one", "These are the rides of the whole crowd. Each has a share of them."),
                lambda n: Q(n.most.m_as("pph"), ""),
            ),
        ),
        clues=(
            "Two things can set the laps: how long a lap takes, or how many can get on. Which is it with so many?",
            "Picture the whole crowd at the bottom at once. Does the loading point ever stand idle?",
            "First step: rides an hour if nobody ever waits, and rides an hour that the lift allows. Compare.",
        ),
        steps=lambda n: (
            f"Nobody waits: {n.crowd.magnitude:g} × 3,600 s ÷ ({show(n.ride_and_descent, 's')} + "
            f"{show(n.loading_time)}) = {show(hourly_capacity_from_head_count(n.crowd, n.lap))}.",
            f"Loading allows 3,600 s ÷ {show(n.loading_time)} = {show(loading_capacity(n.loading_time))}, spacing "
            f"{show(n.ideal)}. The smallest of the three is {show(n.most)}.",
            f"÷ {n.crowd.magnitude:g} = {show(_laps(n, n.most))} laps an hour each. More people only share the same "
            "rides. A crowd is demand: it stands apart from the lift's own limits.",
        ),
    ),
    ChoiceExercise(
        id="9.6",
        sort="mistake",
        text="A report says: 'Spacing allows {ideal}, loading {loading}, the motor {motor}. Nobody has read the "
        "tension of the rope, so traction is left out. The lift carries {printed}.' Which mistake is in it?",
        given={
            "ideal": Drawn("pph", 1600, 1400, 1800, 50),
            "loading": Drawn("pph", 1100, 900, 1300, 50),
            "motor": Drawn("pph", 1225, 925, 1375, 50),
        },
        figures=lambda n: {
            "printed": _mean(n.ideal, n.loading, n.motor),
            "added": n.ideal + n.loading + n.motor,
            "smallest": min(n.ideal, n.loading, n.motor),
        },
        options=(
            Option(
                "The limits were averaged, and the smallest governs.",
                says="At most {smallest}, and even that is an upper bound. Traction is left out and named: right so.",
            ),
            Option(
                "The largest limit was taken.",
                Mistake("largest suspected", "Then the report would say {ideal}."),
            ),
            Option("The limits were added.", Mistake("sum suspected", "Then the report would say {added}.")),
            Option(
                "Traction has no reading, so it must count as zero.",
                Mistake(
                    "missing taken for zero",
                    "A limit without a reading is not zero, and not endless either: it is not known. Leave it out, "
                    "and say so.",
                ),
            ),
        ),
        clues=(
            "Each limit says how many get through there. How many get through all of them?",
            "Picture gates in a row. What would you say of a gate that nobody has measured?",
            "First step: try to make the report's last figure from the three before it.",
        ),
        steps=lambda n: (
            f"({show(n.ideal)} + {show(n.loading)} + {show(n.motor)}) ÷ 3 = {show(n.printed)}: the mean.",
            f"The smallest is {show(n.smallest)}. The lift carries at most that, and traction may still be lower.",
        ),
    ),
    NumberExercise(
        id="9.7",
        sort="compute",
        text="A rope runs at {line_speed} with at least {spacing} from rider to rider. At the loading point the next "
        "rider is ready after {ready_time} on average, with exponential times, and waits for the rope if that was "
        "too soon. How many an hour does the rope carry?",
        given={
            "line_speed": Drawn("m/s", 3.0, 2.6, 3.4, 0.1),
            "spacing": Drawn("m", 7.5, 6.5, 9.0, 0.1),
            "ready_time": Drawn("s", 3.2, 2.8, 4.5, 0.1),
        },
        figures=lambda n: {
            "by_spacing": hourly_capacity(n.line_speed, n.spacing),
            "by_loading": loading_capacity(n.ready_time),
            "floor": headway(n.line_speed, n.spacing),
            "mean": mean_loading_time_exponential(mean_time=n.ready_time, floor=headway(n.line_speed, n.spacing)),
        },
        unit="pph",
        within=5,
        right=lambda n: loading_capacity(n.mean),
        roads=(
            Road(
                Mistake(
                    "bound taken for a promise",
                    "This is the smaller limit. A quick rider still waits for the rope; what a slow one loses is lost.",
                ),
                lambda n: min(n.by_spacing, n.by_loading),
            ),
            Road(
                Mistake("both times added", "They run at the same time. The longer of the two counts, not the sum."),
                lambda n: loading_capacity(n.floor + n.ready_time),
            ),
            Road(MEAN_OF_LIMITS, lambda n: _mean(n.by_spacing, n.by_loading)),
            Road(
                Mistake("exponent upside down", "In the exponent the headway stands over the mean, not under it."),
                lambda n: loading_capacity(n.floor + n.ready_time * math.exp(-(n.ready_time / n.floor).m_as(""))),
            ),
        ),
        clues=(
            "Every start waits for the slower of two: the rope or the rider. What is the mean of that?",
            "Picture ten starts. A quick rider gains nothing over the headway; a slow one loses all the same.",
            "First step: the headway h. With ready times of mean m, the mean of the longer one is h + m e^(−h/m).",
        ),
        steps=lambda n: (
            f"Headway h: {show(n.spacing)} ÷ {show(n.line_speed)} = {n.floor.m_as('s'):.4f} s. Spacing allows "
            f"{show(n.by_spacing)}, loading {show(n.by_loading)}.",
            f"Mean of the longer one: h + m e^(−h/m), with m = {show(n.ready_time)}, is {n.mean.m_as('s'):.3f} s.",
            f"3,600 s ÷ {n.mean.m_as('s'):.3f} s = {show(loading_capacity(n.mean))}: less than either limit, and yet "
            "nobody did anything wrong.",
        ),
    ),
)
