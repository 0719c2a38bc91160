"""Exercises of 00: the whole job on one screen. Printed numbers and grids are invented for the demo hill."""

import math

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import hourly_capacity, hourly_capacity_from_head_count, vertical_transport
from liftcalc.formulas.riders import persons_on_line
from liftcalc.quantity_text import show
from liftcalc.units import Q


def _speed_over_spacing(n):
    capacity = hourly_capacity(n.line_speed, n.spacing)
    return (
        f"Rope in an hour: 3,600 s × {show(n.line_speed)} = {show(n.line_speed * Q(3600, 's'), 'm')}.",
        f"Riders on that much rope: ÷ {show(n.spacing)} = {show(capacity)}.",
    )


EXERCISES = (
    NumberExercise(
        id="0.1",
        sort="compute",
        text="A handle tow runs at {line_speed}. Its riders stand {spacing} apart. How many people an hour is that?",
        given={"line_speed": Drawn("m/s", 2.5, 2.0, 3.4, 0.1), "spacing": Drawn("m", 7.5, 6.0, 10.0, 0.5)},
        unit="pph",
        within=5,
        right=lambda n: hourly_capacity(n.line_speed, n.spacing),
        roads=(
            Road(wrong.PER_MINUTE, lambda n: hourly_capacity(n.line_speed, n.spacing) / 60),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(3600 * n.spacing.m_as("m") / n.line_speed.m_as("m/s"), "pph")),
            Road(wrong.SPACING_TIMES_SPEED, lambda n: Q(3600 * n.spacing.m_as("m") * n.line_speed.m_as("m/s"), "pph")),
            Road(wrong.FEET_FOR_METRES, lambda n: Q(3600 * n.line_speed.m_as("m/s") / n.spacing.m_as("ft"), "pph")),
            Road(
                wrong.ROUNDED_EARLY,
                lambda n: Q(3600 * round(n.line_speed.m_as("m/s") / n.spacing.m_as("m"), 1), "pph"),
                close=True,
            ),
        ),
        clues=(
            "The question gives a speed and a spacing, and asks for people in one hour.",
            "Picture yourself at a post. How much rope runs past you in an hour, and how often is there a rider on it?",
            "First step: the metres of rope in an hour are 3,600 s times the line speed.",
        ),
        steps=_speed_over_spacing,
    ),
    NumberExercise(
        id="0.2",
        sort="compute",
        text="On the same kind of tow, {ridden_length} are ridden and riders stand {spacing} apart. Take them to have "
        "the speed of the rope from the first metre. How many are on the line, on average?",
        given={"ridden_length": Drawn("m", 180, 100, 240, 10), "spacing": Drawn("m", 8, 6.0, 10.0, 0.5)},
        unit="person",
        within=0.05,
        right=lambda n: persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing),
        roads=(
            Road(
                wrong.ONE_OR_ROUNDED_UP,
                lambda n: Q(math.floor(n.ridden_length.m_as("m") / n.spacing.m_as("m")) + 1, "person"),
            ),
            Road(
                Mistake("part of a rider dropped", "Only whole riders were kept. An average is seldom a whole number."),
                lambda n: Q(math.floor(n.ridden_length.m_as("m") / n.spacing.m_as("m")), "person"),
                close=True,
            ),
            Road(wrong.WHOLE_LOOP, lambda n: 2 * persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing)),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(n.spacing.m_as("m") / n.ridden_length.m_as("m"), "person")),
            Road(
                wrong.ONE_TOO_MANY,
                lambda n: persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing) + Q(1, "person"),
                drawn=False,
            ),
            Road(
                wrong.POST_TAKEN_OFF,
                lambda n: persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing) - Q(1, "person"),
                drawn=False,
            ),
        ),
        clues=(
            "The question asks for an average, over all the time the tow runs.",
            "Picture the rope cut into pieces, each as long as the spacing. Each piece holds one rider.",
            "First step: the number of pieces is the ridden length over the spacing.",
        ),
        steps=lambda n: (
            f"Pieces of rope: {show(n.ridden_length)} ÷ {show(n.spacing)}.",
            f"One rider each: {show(persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing))} on average.",
        ),
    ),
    NumberExercise(
        id="0.3",
        sort="compute",
        text="In one photo of a running tow you count {head_count}. One rider takes {ride_time} from grab to let-go. "
        "How many people an hour is that?",
        given={"head_count": Drawn("person", 18, 10, 18, 1), "ride_time": Drawn("s", 54, 50, 72, 1)},
        unit="pph",
        within=5,
        right=lambda n: hourly_capacity_from_head_count(n.head_count, n.ride_time),
        roads=(
            Road(wrong.PER_MINUTE, lambda n: hourly_capacity_from_head_count(n.head_count, n.ride_time) / 60),
            Road(
                Mistake("heads times sixty", "The heads were taken once a minute. They change once in a ride time."),
                lambda n: Q(60 * n.head_count.m_as("person"), "pph"),
            ),
            Road(
                Mistake(
                    "heads forgotten", "This is how many ride times fit into an hour. Each brings all the heads up."
                ),
                lambda n: Q(3600 / n.ride_time.m_as("s"), "pph"),
            ),
            Road(
                Mistake("one head taken off", "Heads on the line are riders, not gaps: none is taken off here."),
                lambda n: hourly_capacity_from_head_count(n.head_count - Q(1, "person"), n.ride_time),
            ),
            Road(
                wrong.POST_ADDED,
                lambda n: hourly_capacity_from_head_count(n.head_count + Q(1, "person"), n.ride_time),
                drawn=False,
            ),
        ),
        clues=(
            "The question gives neither speed nor spacing: the second route needs neither.",
            "Picture the whole line changing once in every ride time: those in the photo come off, as many get on.",
            "First step: riders a second are the heads over the ride time.",
        ),
        steps=lambda n: (
            f"Riders a second: {show(n.head_count)} ÷ {show(n.ride_time)} "
            f"= {n.head_count.m_as('person') / n.ride_time.m_as('s'):.4f}.",
            f"In an hour: × 3,600 s = {show(hourly_capacity_from_head_count(n.head_count, n.ride_time))}, "
            "and its level is counted.",
        ),
    ),
    ChoiceExercise(
        id="0.4",
        sort="judge",
        text="The same tow is made {factor} times as long, with the same speed and spacing. Take riders to have the "
        "speed of the rope from the first metre. What happens to the people an hour, and what to the riders on the "
        "line?",
        given={"factor": Drawn("", 2, 2, 4, 1)},
        options=(
            Option(
                "People an hour stay; riders on the line become {factor} times as many.",
                says="Length holds more riders, each for longer. They still get on and come off one headway apart.",
            ),
            Option("Both become {factor} times as many.", wrong.LONGER_IS_MORE),
            Option(
                "Both stay as they are.",
                Mistake(
                    "riders do not feel the length",
                    "The spacing is the same, so each further piece of rope brings a further rider.",
                ),
            ),
            Option(
                "People an hour become {factor} times as many; riders on the line stay.",
                Mistake("line and hour swapped", "Riders on the line and people an hour changed places here."),
            ),
        ),
        clues=(
            "Two things are asked. Decide each alone.",
            "Picture the post at the top: how many seconds pass between two riders there, before and after?",
            "First step: write down both formulas, and look for the length in each.",
        ),
        steps=lambda n: (
            "People an hour are 3,600 times speed over spacing: no length in it, so they stay.",
            f"Riders on the line are length over spacing: {show(n.factor)} times the length, "
            f"{show(n.factor)} times as many.",
        ),
    ),
    NumberExercise(
        id="0.5",
        sort="compute",
        text="A tow lifts {capacity} over a rise of {vertical_rise}. What is its vertical transport in "
        "vertical transport "
        "feet per hour?",
        given={"capacity": Drawn("pph", 1200, 900, 1500, 50), "vertical_rise": Drawn("m", 24.4, 20, 40, 0.4)},
        unit="person*ft/hour",
        within=300,
        right=lambda n: vertical_transport(n.capacity, n.vertical_rise),
        roads=(
            Road(
                wrong.METRES_LEFT,
                lambda n: Q(n.capacity.m_as("pph") * n.vertical_rise.m_as("m"), "person*ft/hour"),
            ),
            Road(wrong.PER_MINUTE, lambda n: vertical_transport(n.capacity, n.vertical_rise) / 60),
            Road(wrong.FACTOR_UPSIDE_DOWN, lambda n: vertical_transport(n.capacity, n.vertical_rise * 0.3048**2)),
            Road(
                wrong.ROUNDED_EARLY,
                lambda n: Q(n.capacity.m_as("pph") * 3 * n.vertical_rise.m_as("m"), "person*ft/hour"),
                close=True,
            ),
        ),
        clues=(
            "Vertical transport counts feet. In what is the rise given?",
            "Picture every rider of the hour carrying the height up: people times feet.",
            "First step: one foot is 0.3048 m. Turn the rise into feet.",
        ),
        steps=lambda n: (
            f"Rise in feet: {show(n.vertical_rise)} ÷ 0.3048 m/ft = {n.vertical_rise.m_as('ft'):.2f} ft.",
            f"Times people an hour: {show(n.capacity)} × {n.vertical_rise.m_as('ft'):.2f} ft "
            f"= {show(vertical_transport(n.capacity, n.vertical_rise))}; round at the end only.",
        ),
    ),
    ChoiceExercise(
        id="0.6",
        sort="mistake",
        text="A notice says: 'At {line_speed} with a rider every {spacing}, this tow carries {printed}.' "
        "Which mistake is in it?",
        given={"line_speed": Drawn("m/s", 2.4, 2.0, 3.4, 0.2), "spacing": Drawn("m", 8, 6.0, 10.0, 0.5)},
        figures=lambda n: {
            "printed": hourly_capacity(n.line_speed, n.spacing) / 60,
            "in_feet": Q(3600 * n.line_speed.m_as("m/s") / n.spacing.m_as("ft"), "pph"),
            "upside_down": Q(3600 * n.spacing.m_as("m") / n.line_speed.m_as("m/s"), "pph"),
        },
        options=(
            Option("The figure is for a minute, not for an hour.", says="Sixty minutes make the hour."),
            Option(
                "The spacing was entered in feet and the speed in metres a second.",
                Mistake("feet suspected", "That would make the notice say {in_feet}: too few, but not this few."),
            ),
            Option(
                "Speed and spacing changed places.",
                Mistake("swap suspected", "That would make the notice say {upside_down}: far too many, not too few."),
            ),
            Option(
                "The tow's length was left out.",
                Mistake("length missed", "Length does not enter the people an hour, so leaving it out is no mistake."),
            ),
        ),
        clues=(
            "Work out the right figure first. How many times too small is the one on the notice?",
            "Picture a rope with so few people in an hour: one every few minutes.",
            "First step: 3,600 s times speed over spacing.",
        ),
        steps=lambda n: (
            *_speed_over_spacing(n),
            f"The notice says {show(n.printed)}: sixty times too small. It is the number for one minute.",
        ),
    ),
)
