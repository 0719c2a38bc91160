"""Exercises of 02: spacing. Printed numbers and grids are invented for the demo hill."""

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway, observed_spacing, spacing_for_headway, spacing_from_parts
from liftcalc.formulas.stopping import attendant_stopping_distance, rope_stopping_distance
from liftcalc.quantity_text import show
from liftcalc.units import Q


def _pitch(n):
    return spacing_from_parts(equipment_length=n.skis, practical_gap=n.gap)


def _stop(n, reaction=True, delay=True):
    nothing = Q(0, "s")
    return attendant_stopping_distance(
        n.line_speed,
        reaction_time=n.reaction_time if reaction else nothing,
        stop_delay=n.stop_delay if delay else nothing,
        rope_deceleration=n.rope_deceleration,
    )


EXERCISES = (
    NumberExercise(
        id="2.1",
        sort="compute",
        text="Riders on skis of {skis} leave {gap} of free snow from tails to the next tips. The rope runs "
        "at {line_speed}. "
        "What is the headway?",
        given={
            "skis": Drawn("m", 1.7, 1.5, 1.9, 0.1),
            "gap": Drawn("m", 6.1, 5.0, 8.0, 0.1),
            "line_speed": Drawn("m/s", 3.0, 2.0, 3.0, 0.1),
        },
        unit="s",
        within=0.1,
        right=lambda n: headway(n.line_speed, _pitch(n)),
        roads=(
            Road(wrong.GAP_FOR_PITCH, lambda n: headway(n.line_speed, n.gap)),
            Road(wrong.SKIS_TAKEN_OFF, lambda n: headway(n.line_speed, n.gap - n.skis)),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(n.line_speed.m_as("m/s") / _pitch(n).m_as("m"), "s")),
            Road(wrong.SPACING_TIMES_SPEED, lambda n: Q(n.line_speed.m_as("m/s") * _pitch(n).m_as("m"), "s")),
        ),
        clues=(
            "Headway is from one rider to the same point of the next. What lies between those two points?",
            "Picture the tips of one rider passing the post, then the tails, then free snow, then the next tips.",
            "First step: spacing is the skis and the gap together.",
        ),
        steps=lambda n: (
            f"Spacing: {show(n.skis)} + {show(n.gap)} = {show(_pitch(n))}.",
            f"Headway: {show(_pitch(n))} ÷ {show(n.line_speed)} = {show(headway(n.line_speed, _pitch(n)))}.",
        ),
    ),
    NumberExercise(
        id="2.2",
        sort="backwards",
        text="A rider takes hold every {headway} on a rope at {line_speed}. What spacing is that, in metres?",
        given={"headway": Drawn("s", 3.5, 2.5, 4.5, 0.1), "line_speed": Drawn("mph", 6.0, 4.5, 7.5, 0.1)},
        unit="m",
        within=0.1,
        right=lambda n: spacing_for_headway(n.line_speed, n.headway),
        roads=(
            Road(wrong.MPH_AS_METRES, lambda n: Q(n.line_speed.m_as("mph") * n.headway.m_as("s"), "m")),
            Road(wrong.MPH_AS_FEET, lambda n: Q(n.line_speed.m_as("mph") * n.headway.m_as("s") * 0.3048, "m")),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(n.line_speed.m_as("m/s") / n.headway.m_as("s"), "m")),
            Road(wrong.HEADWAY_FOR_SPACING, lambda n: Q(n.headway.m_as("s"), "m")),
        ),
        clues=(
            "The seconds are given, the metres asked: backwards from headway to spacing.",
            "Picture the rope running on under the next rider's hands while the seconds pass.",
            "First step: turn the speed into metres a second.",
        ),
        steps=lambda n: (
            f"Line speed: {show(n.line_speed)} × 0.44704 = {show(n.line_speed, 'm/s')}.",
            f"Rope in {show(n.headway)}: {show(spacing_for_headway(n.line_speed, n.headway))}.",
        ),
    ),
    NumberExercise(
        id="2.3",
        sort="compute",
        text="In a photo you count {riders} between two marks {distance} apart, the first at one mark and "
        "the last at the "
        "other. What is the spacing?",
        given={"riders": Drawn("person", 9, 7, 11, 1), "distance": Drawn("m", 60, 50, 80, 1)},
        unit="m",
        within=0.1,
        right=lambda n: observed_spacing(n.distance, n.riders),
        roads=(
            Road(wrong.FENCE_POST, lambda n: n.distance / n.riders.m_as("person")),
            Road(
                Mistake(
                    "a gap added", "One gap too many: the riders at the two ends have a neighbour on one side only."
                ),
                lambda n: n.distance / (n.riders.m_as("person") + 1),
            ),
            Road(
                wrong.UPSIDE_DOWN,
                lambda n: Q((n.riders.m_as("person") - 1) / n.distance.m_as("m"), "m"),
            ),
        ),
        clues=(
            "Riders were counted, and a spacing is a gap. How many gaps are there?",
            "Picture a fence: posts at both ends, rails between.",
            "First step: one gap fewer than riders.",
        ),
        steps=lambda n: (
            f"Gaps: {n.riders.magnitude:g} riders − 1 = {n.riders.magnitude - 1:g}.",
            f"Spacing: {show(n.distance)} ÷ {n.riders.magnitude - 1:g} = "
            f"{show(observed_spacing(n.distance, n.riders))}.",
        ),
    ),
    NumberExercise(
        id="2.4",
        sort="compute",
        text="At {line_speed} an attendant needs {reaction_time} to press stop, the rope begins to slow "
        "{stop_delay} later, "
        "and then slows by {rope_deceleration}. How far does the rope run after a fall?",
        given={
            "line_speed": Drawn("m/s", 3.0, 2.4, 3.6, 0.1),
            "reaction_time": Drawn("s", 1.8, 1.5, 3.0, 0.1),
            "stop_delay": Drawn("s", 0.4, 0.4, 0.8, 0.1),
            "rope_deceleration": Drawn("m/s**2", 1.25, 1.0, 2.0, 0.05),
        },
        unit="m",
        within=0.1,
        right=_stop,
        roads=(
            Road(
                Mistake(
                    "reaction forgotten",
                    "This is the distance after a stop gate. A person first has to see the fall and press.",
                ),
                lambda n: rope_stopping_distance(n.line_speed, n.stop_delay, n.rope_deceleration),
            ),
            Road(
                Mistake("delay forgotten", "Between the button and the first slowing the rope runs on at full speed."),
                lambda n: _stop(n, delay=False),
            ),
            Road(
                Mistake("slowing forgotten", "The rope was taken to stand at once. It runs on while it slows."),
                lambda n: (n.line_speed * (n.reaction_time + n.stop_delay)).to("m"),
            ),
            Road(
                Mistake(
                    "half forgotten", "While slowing, the mean speed is half the line speed: v² over twice the slowing."
                ),
                lambda n: _stop(n) + (n.line_speed**2 / (2 * n.rope_deceleration)).to("m"),
            ),
        ),
        clues=(
            "Three pieces of rope pass: while nobody has pressed, while nothing slows yet, and while it slows.",
            "Picture the bars of the stopping panel: two run at full speed, the last one ever slower.",
            "First step: full speed times reaction and delay together.",
        ),
        steps=lambda n: (
            f"Reaction: {show(n.line_speed)} × {show(n.reaction_time)} = "
            f"{show((n.line_speed * n.reaction_time).to('m'))}.",
            f"Delay: {show(n.line_speed)} × {show(n.stop_delay)} = {show((n.line_speed * n.stop_delay).to('m'))}.",
            f"Slowing: ({show(n.line_speed)})² ÷ (2 × {show(n.rope_deceleration)}) "
            f"= {show((n.line_speed**2 / (2 * n.rope_deceleration)).to('m'))}.",
            f"Together {show(_stop(n))}. Stop gates are tested as the maker's manual and the code say, never sized so.",
        ),
    ),
    NumberExercise(
        id="2.5",
        sort="backwards",
        text="A rider needs {clearing_time} to leave the unload area. On average no more than {riders} "
        "should be in it at "
        "once. The rope runs at {line_speed}. What is the least spacing?",
        given={
            "clearing_time": Drawn("s", 7, 5, 10, 0.5),
            "riders": Drawn("person", 2, 2, 3, 1),
            "line_speed": Drawn("m/s", 2.8, 2.0, 3.4, 0.1),
        },
        unit="m",
        within=0.1,
        right=lambda n: spacing_for_headway(n.line_speed, n.clearing_time / n.riders.m_as("person")),
        roads=(
            Road(
                Mistake("one at a time", "This leaves the area to one rider at a time. The question allows more."),
                lambda n: spacing_for_headway(n.line_speed, n.clearing_time),
            ),
            Road(wrong.HEADWAY_FOR_SPACING, lambda n: Q(n.clearing_time.m_as("s") / n.riders.m_as("person"), "m")),
            Road(
                wrong.UPSIDE_DOWN,
                lambda n: Q(n.riders.m_as("person") / n.clearing_time.m_as("s") / n.line_speed.m_as("m/s"), "m"),
            ),
            Road(
                Mistake("multiplied by the riders", "More riders allowed at once ask for less spacing, not for more."),
                lambda n: spacing_for_headway(n.line_speed, n.clearing_time * n.riders.m_as("person")),
            ),
            Road(
                wrong.ONE_GAP_FEWER,
                lambda n: spacing_for_headway(n.line_speed, n.clearing_time / (n.riders.m_as("person") - 1)),
                drawn=False,
            ),
            Road(
                wrong.ONE_MORE_ALLOWED,
                lambda n: spacing_for_headway(n.line_speed, n.clearing_time / (n.riders.m_as("person") + 1)),
                drawn=False,
            ),
        ),
        clues=(
            "Go backwards: from the riders allowed at once to the seconds between two of them.",
            "Picture the bars of the unload panel: how many lie above one another?",
            "First step: riders at once are the clearing time over the headway. What headway gives the riders allowed?",
        ),
        steps=lambda n: (
            f"Headway: {show(n.clearing_time)} ÷ {n.riders.magnitude:g} = "
            f"{show(n.clearing_time / n.riders.m_as('person'))}.",
            f"Spacing: {show(n.line_speed)} × {show(n.clearing_time / n.riders.m_as('person'))} "
            f"= {show(spacing_for_headway(n.line_speed, n.clearing_time / n.riders.m_as('person')))}.",
            "This is an average; at moments there are more.",
        ),
    ),
    ChoiceExercise(
        id="2.6",
        sort="judge",
        text="Riders stand {wide} apart at {line_speed}; each needs {clearing_time} to leave the unload "
        "area. The owner wants "
        "{spacing} instead. What do you say?",
        given={
            "wide": Drawn("m", 10, 9.0, 12.0, 1.0),
            "line_speed": Drawn("m/s", 2.8, 2.4, 3.4, 0.1),
            "clearing_time": Drawn("s", 7, 6, 10, 0.5),
        },
        figures=lambda n: {
            "spacing": n.wide / 2,
            "before": headway(n.line_speed, n.wide),
            "after": headway(n.line_speed, n.wide / 2),
            "at_once": persons_from_flow(hourly_capacity(n.line_speed, n.wide / 2), n.clearing_time),
        },
        options=(
            Option(
                "Not so: {at_once} would then be in the unload area at once, on average. "
                "Licensed people, the maker and the authority must look at it first.",
                says="Twice the riders arrive, and each stays as long as before. A change of spacing is "
                "theirs to decide.",
            ),
            Option("Yes: half the spacing carries twice the people.", wrong.PACKING_FOR_CAPACITY),
            Option(
                "Yes: the headway stays as it is, since the rope is no faster.",
                Mistake(
                    "headway tied to speed alone",
                    "The headway falls from {before} to {after}: less rope passes between two riders.",
                ),
            ),
            Option(
                "Yes, if the rope also runs faster: that clears the unload area.",
                Mistake(
                    "faster is more",
                    "A faster rope brings riders to the top sooner after one another. Nobody leaves it any faster.",
                ),
            ),
        ),
        clues=(
            "The paper says twice as many. Ask the people at both ends of the rope.",
            "Picture the unload panel with the spacing halved: what happens to the bars?",
            "First step: the headway after the change, and how many headways fit into the clearing time.",
        ),
        steps=lambda n: (
            f"Headway after the change: {show(n.spacing)} ÷ {show(n.line_speed)} = {show(n.after)}.",
            f"Riders in the unload area: {show(n.clearing_time)} ÷ {show(n.after)} = {show(n.at_once)}, "
            f"twice as many as now.",
        ),
    ),
    ChoiceExercise(
        id="2.7",
        sort="mistake",
        text="A report says: 'At {line_speed} there is {gap} of free snow between riders on skis of {skis}, "
        "so one comes every "
        "{printed}.' Which mistake is in it?",
        given={
            "line_speed": Drawn("m/s", 2.5, 2.0, 3.0, 0.1),
            "gap": Drawn("m", 6.0, 5.0, 8.0, 0.1),
            "skis": Drawn("m", 1.7, 1.5, 1.9, 0.1),
        },
        figures=lambda n: {
            "printed": headway(n.line_speed, n.gap),
            "taken_off": headway(n.line_speed, n.gap - n.skis),
            "swapped": Q(n.line_speed.m_as("m/s") / n.gap.m_as("m"), "s"),
            "in_feet": Q(_pitch(n).m_as("ft") / n.line_speed.m_as("m/s"), "s"),
        },
        options=(
            Option(
                "The gap was taken for the spacing.",
                says="Free snow only. The skis pass the post, too, and they take time.",
            ),
            Option(
                "The skis were taken off the gap.",
                Mistake("taking off suspected", "Then the report would say {taken_off}."),
            ),
            Option(
                "Speed and gap changed places.",
                Mistake("swap suspected", "Then the report would say {swapped}."),
            ),
            Option(
                "Feet and metres were mixed.",
                Mistake("feet suspected", "Then the report would say {in_feet}."),
            ),
        ),
        clues=(
            "Work out the headway yourself, from one rider to the same point of the next.",
            "Picture what passes the post between one pair of tips and the next.",
            "First step: add skis and gap, then divide by the line speed.",
        ),
        steps=lambda n: (
            f"Spacing: {show(n.skis)} + {show(n.gap)} = {show(_pitch(n))}; headway "
            f"{show(headway(n.line_speed, _pitch(n)))}.",
            f"The report has {show(n.gap)} ÷ {show(n.line_speed)} = {show(n.printed)}: the gap alone.",
        ),
    ),
)
