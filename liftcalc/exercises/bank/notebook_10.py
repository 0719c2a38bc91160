"""Exercises of 10: why fewer were counted than the tow could carry. Printed numbers and grids are invented."""

import math

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.fieldwork.minute_counts import minutes_to_count
from liftcalc.formulas.capacity import count_doubt, hourly_flow_from_count
from liftcalc.formulas.loading_point import loading_capacity
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.quantity_text import show
from liftcalc.units import Q

HOUR, TWO_MINUTES = Q(1, "hour"), Q(2, "minute")
UNORDERED = Q(1, "")  # spread of gaps where riders come without any order
COVERAGE = 1.96


def _shared(n, by_class):
    """Return the mean of what each class has, counted by rider."""
    shares = n.expert_share, n.learner_share, n.child_share
    return sum(share.m_as("") * each for share, each in zip(shares, by_class, strict=True))


def _times(n):
    return n.expert_time, n.learner_time, n.child_time


def _kept(n):
    """Return the part of the attempts that succeed."""
    return 1 - n.misses.m_as("")


def _lost(n, seconds_a_stop):
    """Return the persons an hour who do not get to the top, from the time without anybody there at each stop."""
    return Q(n.stops.m_as("") * persons_from_flow(n.clean_rate, seconds_a_stop).m_as("person"), "pph")


def _while_it_ran(n, stood):
    """Return the rate by the clock over the part of the hour in which the lift ran."""
    return n.by_clock / (1 - (stood / HOUR).m_as(""))


EXERCISES = (
    NumberExercise(
        id="10.1",
        sort="compute",
        text="In the school holidays {expert_share} of the riders at Penny Rope are experts, {learner_share} learners "
        "and {child_share} children, counted by rider. With the one place free, an expert is away after "
        "{expert_time} on average, a learner after {learner_time}, a child after {child_time}, misses left out. How "
        "many an hour does the loading point let through at most?",
        given={
            "expert_share": Drawn("percent", 50, 40, 60, 5),
            "learner_share": Drawn("percent", 30, 20, 30, 5),
            "expert_time": Drawn("s", 2.6, 2.3, 2.8, 0.1),
            "learner_time": Drawn("s", 3.8, 3.6, 4.4, 0.1),
            "child_time": Drawn("s", 3.3, 2.9, 3.4, 0.1),
        },
        figures=lambda n: {"child_share": Q(100, "percent") - n.expert_share - n.learner_share},
        unit="pph",
        within=2,
        right=lambda n: loading_capacity(_shared(n, _times(n))),
        roads=(
            Road(
                Mistake("shares left out", "The times were averaged as if the classes were of one size. Are they?"),
                lambda n: loading_capacity(sum(_times(n), start=Q(0, "s")) / 3),
            ),
            Road(
                Mistake(
                    "mean of rates",
                    "The three capacities were averaged. A slow rider keeps the place for longer: average the times, "
                    "then divide.",
                ),
                lambda n: _shared(n, [loading_capacity(time) for time in _times(n)]),
            ),
            Road(wrong.PER_MINUTE, lambda n: loading_capacity(_shared(n, _times(n))) / 60),
            Road(
                Mistake(
                    "slowest class for all",
                    "Here everybody is as slow as the slowest class. The others are in line, too.",
                ),
                lambda n: loading_capacity(max(_times(n))),
            ),
        ),
        clues=(
            "Something must be averaged. What does each rider take from the loading point?",
            "Picture a hundred riders in line, so many of each class, and the time until the last of them is away.",
            "First step: the mean readiness, each class with its share of the riders.",
        ),
        steps=lambda n: (
            "Mean readiness: "
            + " + ".join(
                f"{share.m_as(''):.2f} × {show(time)}"
                for share, time in zip((n.expert_share, n.learner_share, n.child_share), _times(n), strict=True)
            )
            + f" = {_shared(n, _times(n)).m_as('s'):.3f} s.",
            f"3,600 s ÷ {_shared(n, _times(n)).m_as('s'):.3f} s = {show(loading_capacity(_shared(n, _times(n))))}. It "
            "is an upper bound: no miss, no stop and no wait for the rope are in it.",
        ),
    ),
    NumberExercise(
        id="10.2",
        sort="compute",
        text="On a learners' morning a rider at Penny Rope is ready {readiness} after the one place is free, on "
        "average, misses left out. {misses} of all attempts fail; a failed attempt takes its time all the same, and "
        "the rider tries again. Stops and the wait for the rope are left aside. How many an hour get away?",
        given={"readiness": Drawn("s", 3.2, 2.8, 3.6, 0.1), "misses": Drawn("percent", 8, 7, 14, 1)},
        figures=lambda n: {"governed": loading_capacity(n.readiness)},
        unit="pph",
        within=1,
        right=lambda n: n.governed * _kept(n),
        roads=(
            Road(
                Mistake("divided by what is left", "This is more than without any miss. Which part succeeds?"),
                lambda n: n.governed / _kept(n),
            ),
            Road(
                Mistake("percent taken for persons", "The percent were taken off as so many persons. Percent of what?"),
                lambda n: n.governed - Q(n.misses.m_as("percent"), "pph"),
            ),
            Road(
                Mistake(
                    "misses on top",
                    "The misses were put on top of the attempts. They are among them: which part is left?",
                ),
                lambda n: n.governed / (1 + n.misses.m_as("")),
            ),
            Road(
                Mistake(
                    "misses taken off twice",
                    "Misses were taken off twice. A time from start to start holds them already; a readiness does "
                    "not, and wants them taken off once.",
                ),
                lambda n: n.governed * _kept(n) ** 2,
            ),
            Road(
                Mistake(
                    "readiness taken for start to start",
                    "No miss was taken off. That is right for a time from start to start, which holds them; a "
                    "readiness does not.",
                ),
                lambda n: n.governed,
            ),
        ),
        clues=(
            "How many attempts are there in an hour, and which part of them succeeds?",
            "Picture a hundred attempts, one after another. How many of them put a rider on the rope?",
            "First step: attempts an hour are 3,600 s over the readiness.",
        ),
        steps=lambda n: (
            f"Attempts: 3,600 s ÷ {show(n.readiness)} = {n.governed.m_as('pph'):,.1f} an hour.",
            f"Of those {show(Q(100 * _kept(n), 'percent'))} succeed: × {_kept(n):.2f} = "
            f"{show(n.governed * _kept(n))}. Help at the loading point mends misses; hurry makes more of them.",
        ),
    ),
    NumberExercise(
        id="10.3",
        sort="compute",
        text="Penny Rope carries {clean_rate} in clean minutes, and one ride takes {ride_time}. Then the rope stands "
        "{stops} times in an hour, {stop_time} each time, and the line is full again before the next stop. Whoever is "
        "on the line at a stop lets go, and loads again at the bottom. How many an hour fewer get to the top than in "
        "clean minutes?",
        given={
            "clean_rate": Drawn("pph", 1000, 800, 1080, 10),
            "ride_time": Drawn("s", 46, 40, 70, 1),
            "stops": Drawn("", 6, 4, 8, 1),
            "stop_time": Drawn("s", 35, 25, 60, 1),
        },
        unit="pph",
        within=2,
        right=lambda n: _lost(n, n.stop_time + n.ride_time),
        roads=(
            Road(
                Mistake(
                    "riders who stay on",
                    "Only the time of the stops was counted. So it is where riders stay on, such as on a platter; "
                    "this rope starts again empty.",
                ),
                lambda n: _lost(n, n.stop_time),
            ),
            Road(
                Mistake(
                    "refill alone",
                    "Only the riders who let go were counted. While the rope stands nobody gets to the top, either.",
                ),
                lambda n: _lost(n, n.ride_time),
            ),
            Road(wrong.HOUR_AS_MINUTE, lambda n: _lost(n, n.stop_time + n.ride_time) * 60),
            Road(
                Mistake(
                    "round trip for one way",
                    "The ride time was counted twice. The line is full again when the first rider is at the top: one "
                    "way.",
                ),
                lambda n: _lost(n, n.stop_time + 2 * n.ride_time),
            ),
            Road(
                Mistake("one stop for all of them", "This is what a single stop takes. How many are there?"),
                lambda n: _lost(n, n.stop_time + n.ride_time) / n.stops.m_as(""),
            ),
        ),
        clues=(
            "For how long does nobody come off at the top, from the beginning of a stop?",
            "Picture the top: the rope stands, then it runs and is empty. When does the next rider come?",
            "First step: the seconds without anybody at the top, for one stop. Then all stops, then the riders who "
            "would have come meanwhile.",
        ),
        steps=lambda n: (
            f"One stop: {show(n.stop_time)} the rope stands, and {show(n.ride_time)} more go by until the first rider "
            f"is up: {show(n.stop_time + n.ride_time)} without anybody at the top.",
            f"All stops: {show(n.stops)} × {show(n.stop_time + n.ride_time)} × "
            f"{show(n.clean_rate)} ÷ 3,600 s = {show(_lost(n, n.stop_time + n.ride_time))} fewer.",
            "A stop is for whoever fell, and never a loss to argue away: the rope starts when the track is seen clear, "
            "however long that takes.",
        ),
    ),
    ChoiceExercise(
        id="10.4",
        sort="judge",
        text="In the two busiest minutes of a day {counted} came off Penny Rope. Loading governs at {governed}; "
        "packing is {packing}. What follows?",
        given={
            "counted": Drawn("person", 43, 42, 45, 1),
            "governed": Drawn("pph", 1200, 1170, 1230, 10),
            "packing": Drawn("pph", 1800, 1600, 1800, 20),
        },
        figures=lambda n: {
            "by_thirty": hourly_flow_from_count(n.counted, TWO_MINUTES),
            "on_average": persons_from_flow(n.governed, TWO_MINUTES),
            "most": Q(math.floor(persons_from_flow(n.packing, TWO_MINUTES).m_as("person") + 1 + 1e-9), "person"),
            "even": Q(100 * COVERAGE * count_doubt(n.counted, UNORDERED / 2).m_as(""), "percent"),
        },
        options=(
            Option(
                "Chance can do that: {governed} bounds the mean of a long time, not each two minutes.",
                says="On average at most {on_average} pass in two minutes; so short a count is good to some {even} on "
                "a steady lift, and these two minutes were picked as the busiest. Impossible is only more than {most}: "
                "what packing allows, and one rider more for the ends.",
            ),
            Option(
                "That is impossible: no count is above the governed capacity.",
                Mistake(
                    "bound of a mean for a bound of a count",
                    "Governed bounds a mean. No count is above what packing allows, with one rider more for the ends: "
                    "{most} in two minutes.",
                ),
            ),
            Option(
                "The limit is wrong for sure: the lift carries {by_thirty}.",
                Mistake(
                    "best two minutes times 30",
                    "The busiest two minutes were taken for the whole hour. A limit is held against the mean of many "
                    "clean minutes, and two minutes prove nothing against it.",
                ),
            ),
            Option(
                "The count is wrong for sure: somebody was counted twice.",
                Mistake(
                    "chance taken for a slip",
                    "Riders do not come in even steps: some two minutes have more of them, others fewer. A slip is "
                    "sure only above {most}.",
                ),
            ),
            Option(
                "It shows what the crew can do: {by_thirty} is the goal for tomorrow.",
                Mistake(
                    "chance taken for a goal",
                    "A best by chance is nobody's merit, and no goal: whoever is hurried at the rope misses, falls or "
                    "is hurt.",
                ),
            ),
        ),
        clues=(
            "What does a governed capacity bound: every count, or the mean of many?",
            "Picture the counts of all the two minutes of a day, side by side. Are they all alike?",
            "First step: how many pass in two minutes by the governed capacity, and how many by packing?",
        ),
        steps=lambda n: (
            f"Governed: {show(n.governed)} × 2 ÷ 60 = {show(n.on_average)} in two minutes, as a mean.",
            f"Packing: {show(n.packing)} × 2 ÷ 60 = {show(persons_from_flow(n.packing, TWO_MINUTES))}; with one rider "
            f"more for the ends, at most {show(n.most)}. {show(n.counted)} are fewer: it can be.",
            f"Doubt of the count, for gaps that spread by half of their mean: 1.96 × 0.5 ÷ "
            f"√{n.counted.magnitude:g} = {show(n.even)}. {show(n.governed)} is within it of {show(n.by_thirty)}.",
            "So neither limit nor count is shown to be wrong. Count many clean minutes, and take their mean.",
        ),
    ),
    NumberExercise(
        id="10.5",
        sort="backwards",
        text="About {rate} come off Penny Rope while it runs; the spread of their gaps is {spread} of the mean gap. "
        "How many clean minutes must be counted for a rate that is good to 5 % in 95 counts of 100? The coverage "
        "factor is 1.96.",
        given={"rate": Drawn("pph", 960, 800, 1050, 10), "spread": Drawn("", 0.6, 0.55, 0.85, 0.05)},
        figures=lambda n: {
            "minutes": minutes_to_count(n.rate, n.spread),
            "riders": persons_from_flow(n.rate, minutes_to_count(n.rate, n.spread)),
        },
        unit="minute",
        within=0.3,
        right=lambda n: n.minutes,
        roads=(
            Road(
                Mistake(
                    "square forgotten",
                    "The riders were not squared. The doubt falls with the root of the count: half the doubt takes "
                    "four times the riders.",
                ),
                lambda n: (Q(math.sqrt(n.riders.m_as("person")), "person") / n.rate).to("minute"),
            ),
            Road(
                Mistake(
                    "coverage factor left out",
                    "Here one standard uncertainty is 5 %: that holds about two counts in three. Asked are 95 of 100.",
                ),
                lambda n: n.minutes / COVERAGE**2,
            ),
            Road(
                Mistake("hours for minutes", "This is a number of hours, written as minutes."),
                lambda n: Q(n.minutes.m_as("hour"), "minute"),
            ),
            Road(
                Mistake(
                    "spread left out",
                    "This counts riders who come without any order, with a spread of 1. The rope sends them up more "
                    "evenly.",
                ),
                lambda n: minutes_to_count(n.rate, UNORDERED),
            ),
            Road(
                Mistake("spread not squared", "All was squared but the spread of the gaps. It stands in the bracket."),
                lambda n: n.minutes / n.spread.m_as(""),
            ),
            Road(
                Mistake("spread squared twice", "The spread was squared first, and the bracket squared it again."),
                lambda n: n.minutes * n.spread.m_as("") ** 2,
            ),
        ),
        clues=(
            "Two questions in one: how many riders does it take, and how long until so many have come?",
            "Picture the plus-minus of a count: it falls as the root of the riders grows.",
            "First step: 0.05 is to be the coverage factor times the spread, over the root of the riders. Solve for "
            "the riders.",
        ),
        steps=lambda n: (
            f"Riders: (1.96 × {show(n.spread)} ÷ 0.05)² = {n.riders.m_as('person'):.1f}.",
            f"Time: {n.riders.m_as('person'):.1f} × 60 min ÷ {n.rate.m_as('pph'):g} = {show(n.minutes)}, of clean "
            "minutes.",
            "With stops in the count the gaps spread more, and it takes several times as long.",
        ),
    ),
    NumberExercise(
        id="10.6",
        sort="backwards",
        text="Long Platter was counted for one hour, and people waited all the time: {by_clock} by the clock. In that "
        "hour it stood {stops} times, {stop_time} each time; its riders stay on. At what rate did it carry while it "
        "ran?",
        given={
            "by_clock": Drawn("pph", 460, 410, 520, 5),
            "stops": Drawn("", 4, 3, 8, 1),
            "stop_time": Drawn("s", 50, 30, 60, 5),
        },
        figures=lambda n: {
            "stood": n.stops.m_as("") * n.stop_time,
            "ran": Q(1, "") - (n.stops.m_as("") * n.stop_time / HOUR).to(""),
        },
        unit="pph",
        within=1,
        right=lambda n: _while_it_ran(n, n.stood),
        roads=(
            Road(
                Mistake(
                    "multiplied by availability",
                    "That takes the stops off once more. The rate by the clock holds them already: which of the two "
                    "rates is the higher?",
                ),
                lambda n: n.by_clock * n.ran.m_as(""),
            ),
            Road(
                Mistake("seconds taken off persons", "Seconds were taken off persons. Take them off the hour."),
                lambda n: n.by_clock - Q(n.stood.m_as("s"), "pph"),
            ),
            Road(
                Mistake(
                    "minutes and seconds mixed",
                    "The stops were put in minutes and the hour in seconds. Bring both to one unit first.",
                ),
                lambda n: _while_it_ran(n, n.stood / 60),
            ),
            Road(
                Mistake("one stop for all of them", "A single stop was taken off the hour. How many were there?"),
                lambda n: _while_it_ran(n, n.stop_time),
            ),
        ),
        clues=(
            "The same riders, over a shorter time: is the rate while it ran higher or lower?",
            "Picture the hour as a strip, with the stops cut out. All riders came in what is left of it.",
            "First step: the seconds it stood in all, and the part of the hour it ran.",
        ),
        steps=lambda n: (
            f"It stood {show(n.stops)} × {show(n.stop_time)} = {show(n.stood)} and ran for "
            f"{3600 - n.stood.m_as('s'):,.0f} s of 3,600 s: {100 * n.ran.m_as(''):.2f} % of the hour.",
            f"{show(n.by_clock)} ÷ {n.ran.m_as(''):.4f} = {show(_while_it_ran(n, n.stood))} while it ran.",
            "A limit is held against this rate, the rides of a day are reckoned by the clock: say both. The stops stay "
            "in the report, each was for somebody.",
        ),
    ),
)
