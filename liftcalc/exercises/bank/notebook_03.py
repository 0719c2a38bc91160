"""Exercises of 03: riders on the line. Printed numbers and grids are invented for the demo hill."""

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.riders import carriers_on_loop, most_persons_on_line, persons_from_flow, persons_on_line
from liftcalc.quantity_text import show
from liftcalc.units import Q

_PAIRS = Q(2, "person")


def _average(n):
    return persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing)


def _most(n):
    return most_persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing)


def _pairs(n):
    return persons_on_line(ridden_length=n.ridden_length, spacing=n.spacing, persons_per_carrier=_PAIRS)


def _loop(n):
    return carriers_on_loop(sheave_distance=n.sheave_distance, spacing=n.spacing)


def _ride(n):
    return Q(3600 * n.riders.m_as("person") / n.capacity.m_as("pph"), "s")


EXERCISES = (
    NumberExercise(
        id="3.1",
        sort="compute",
        text="Where the operator allows it, riders go up in pairs, side by side, at the speed of the rope from the "
        "first metre. {ridden_length} are ridden, with {spacing} from pair to pair. How many persons are on the line, "
        "on average?",
        given={"ridden_length": Drawn("m", 210, 100, 240, 10), "spacing": Drawn("m", 9, 7.0, 11.0, 0.5)},
        unit="person",
        within=0.2,
        right=_pairs,
        roads=(
            Road(wrong.SEATS_FORGOTTEN, _average),
            Road(
                wrong.ONE_OR_ROUNDED_UP,
                lambda n: 2 * _most(n),
            ),
            Road(wrong.WHOLE_LOOP, lambda n: 2 * _pairs(n)),
            Road(
                Mistake(
                    "persons divided", "The pairs were halved. Two stand at each place: that makes more, not fewer."
                ),
                lambda n: _average(n) / 2,
            ),
            Road(wrong.ONE_TOO_MANY, lambda n: _pairs(n) + _PAIRS, drawn=False),  # a post is a pair
            Road(wrong.POST_TAKEN_OFF, lambda n: _pairs(n) - _PAIRS, drawn=False),
        ),
        clues=(
            "Persons are asked, on average; the spacing is from pair to pair.",
            "Picture the rope cut into pieces of one spacing. How many persons hold each piece?",
            "First step: the number of pairs is the ridden length over the spacing.",
        ),
        steps=lambda n: (
            f"Pairs: {show(n.ridden_length)} ÷ {show(n.spacing)} = {_average(n).magnitude:.2f}.",
            f"Two persons each: {show(_pairs(n))} on average.",
        ),
    ),
    NumberExercise(
        id="3.2",
        sort="compute",
        text="A tow carries {capacity} and a ride takes {ride_time}. How many are on the line, on average?",
        given={"capacity": Drawn("pph", 900, 600, 1300, 50), "ride_time": Drawn("s", 72, 50, 100, 2)},
        unit="person",
        within=0.2,
        right=lambda n: persons_from_flow(n.capacity, n.ride_time),
        roads=(
            Road(
                Mistake(
                    "seconds taken as minutes",
                    "The seconds were used as minutes of an hour. An hour has 3,600 seconds.",
                ),
                lambda n: 60 * persons_from_flow(n.capacity, n.ride_time),
            ),
            Road(
                Mistake(
                    "divided by the ride time",
                    "Longer rides keep more people on the line: flow and time are multiplied.",
                ),
                lambda n: Q(n.capacity.m_as("pph") / n.ride_time.m_as("s"), "person"),
            ),
            Road(
                Mistake(
                    "rides for riders", "This is how many ride times fit into an hour. Where did the people an hour go?"
                ),
                lambda n: Q(3600 / n.ride_time.m_as("s"), "person"),
            ),
            Road(
                Mistake(
                    "headway for riders", "This is the seconds between two riders. How many of them fit into one ride?"
                ),
                lambda n: Q(3600 / n.capacity.m_as("pph"), "person"),
            ),
            Road(
                wrong.ONE_TOO_MANY, lambda n: persons_from_flow(n.capacity, n.ride_time) + Q(1, "person"), drawn=False
            ),
            Road(
                wrong.POST_TAKEN_OFF, lambda n: persons_from_flow(n.capacity, n.ride_time) - Q(1, "person"), drawn=False
            ),
        ),
        clues=(
            "A flow and a time are given, neither length nor spacing: this is Little's law.",
            "Picture the area of the flow panel: its height is riders a second, its width seconds.",
            "First step: riders a second are the people an hour over 3,600.",
        ),
        steps=lambda n: (
            f"Riders a second: {show(n.capacity)} ÷ 3,600 s = {n.capacity.m_as('person/s'):.4f}.",
            f"× {show(n.ride_time)} = {show(persons_from_flow(n.capacity, n.ride_time))}.",
        ),
    ),
    NumberExercise(
        id="3.3",
        sort="compute",
        text="A platter lift has {sheave_distance} between its sheaves and a platter every {spacing} along the rope. "
        "How many platters hang on the loop?",
        given={"carriers_up": Drawn("", 22, 18, 30, 1), "spacing": Drawn("m", 17.5, 15.0, 22.0, 1.0)},
        figures=lambda n: {"sheave_distance": n.carriers_up.magnitude * n.spacing},
        unit="",
        within=0.2,
        right=_loop,
        roads=(
            Road(wrong.ONE_WAY, lambda n: _loop(n) / 2),
            Road(wrong.POST_ON_A_LOOP, lambda n: _loop(n) + Q(1, "")),
            Road(
                Mistake("one added at each end", "A loop has no ends. Nothing is added at the sheaves."),
                lambda n: _loop(n) + Q(2, ""),
            ),
            Road(
                Mistake("up side with a fence post", "Only the up side was counted, with a post at each end of it."),
                lambda n: _loop(n) / 2 + Q(1, ""),
            ),
            Road(wrong.POST_OFF_A_LOOP, lambda n: _loop(n) - Q(1, ""), drawn=False),
        ),
        clues=(
            "Carriers are asked, empty ones too.",
            "Picture the rope: up one side, round the sheave, down the other.",
            "First step: the rope is twice the sheave distance.",
        ),
        steps=lambda n: (
            f"Rope: 2 × {show(n.sheave_distance)} = {show(2 * n.sheave_distance)}.",
            f"÷ {show(n.spacing)} = {show(_loop(n))} platters.",
        ),
    ),
    NumberExercise(
        id="3.4",
        sort="backwards",
        text="No more than {riders} should be on a tow at once, on average. It is ridden over {ridden_length}, at the "
        "speed of the rope from the first metre. What is the least spacing?",
        given={"riders": Drawn("person", 15, 10, 18, 1), "ridden_length": Drawn("m", 150, 110, 200, 5)},
        unit="m",
        within=0.1,
        right=lambda n: n.ridden_length / n.riders.m_as("person"),
        roads=(
            Road(wrong.ONE_GAP_FEWER, lambda n: n.ridden_length / (n.riders.m_as("person") - 1)),
            Road(wrong.ONE_MORE_ALLOWED, lambda n: n.ridden_length / (n.riders.m_as("person") + 1)),
            Road(wrong.WHOLE_LOOP, lambda n: 2 * n.ridden_length / n.riders.m_as("person")),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(n.riders.m_as("person") / n.ridden_length.m_as("m"), "m")),
        ),
        clues=(
            "Backwards: from the riders to the spacing. The average is meant.",
            "Picture the length shared out evenly: how much rope for each rider?",
            "First step: riders are length over spacing. Solve for the spacing.",
        ),
        steps=lambda n: (
            "Riders = length ÷ spacing, so spacing = length ÷ riders.",
            f"{show(n.ridden_length)} ÷ {n.riders.magnitude:g} = {show(n.ridden_length / n.riders.m_as('person'))}.",
        ),
    ),
    ChoiceExercise(
        id="3.5",
        sort="mistake",
        text="A report says: 'Our tow is ridden over {ridden_length}, at the speed of the rope from the first metre, "
        "and has a rider every {spacing}, so "
        "{printed} ride at once on average, and in an hour {printed} times 60 reach the top.' What is wrong?",
        given={"places": Drawn("", 15, 12, 24, 1), "spacing": Drawn("m", 8, 6.0, 10.0, 1.0)},
        figures=lambda n: {
            "ridden_length": n.places.magnitude * n.spacing,
            "printed": Q(n.places.magnitude + 1, "person"),
            "average": Q(n.places.magnitude, "person"),
            "loop": Q(2 * n.places.magnitude, "person"),
        },
        options=(
            Option(
                "Both: the average has one rider too many, and the line does not change once a minute.",
                says="The average is length over spacing; the line changes once in a ride time.",
            ),
            Option(
                "Only the first: times 60 is right, as an hour has 60 minutes.",
                Mistake("heads times sixty", "That would need a ride time of just one minute. Nobody said so."),
            ),
            Option(
                "Only the second: the number on the line is right.",
                Mistake(
                    "fence post in the average",
                    "{printed} is the most at one moment, with a rider at each end. The average has none to add.",
                ),
            ),
            Option(
                "The first only, because both sides of the rope count: it should be {loop}.",
                Mistake("whole loop for one way", "Nobody rides down. The up side alone holds riders."),
            ),
        ),
        clues=(
            "Two figures are in the report. Check each alone.",
            "Picture the post and its fence, then a stopwatch on one ride.",
            "First step: the ridden length over the spacing.",
        ),
        steps=lambda n: (
            f"Average: {show(n.ridden_length)} ÷ {show(n.spacing)} = {show(n.average)}, not {show(n.printed)}.",
            "The line changes once in a ride time, which the report does not give: times 60 would be right "
            "only if a ride took one minute.",
        ),
    ),
    ChoiceExercise(
        id="3.6",
        sort="judge",
        text="A rope at {line_speed} with a rider every {spacing} is made {factor} times as fast; the spacing stays. "
        "Take riders to have the speed of the rope from the first metre. "
        "What happens to the number of riders on the line?",
        given={
            "line_speed": Drawn("m/s", 1.6, 1.4, 1.8, 0.1),
            "spacing": Drawn("m", 8, 7.0, 10.0, 0.5),
            "factor": Drawn("", 2, 2, 2, 1),
        },
        options=(
            Option(
                "It stays: more arrive each minute, and each stays for less time.",
                says="Length over spacing has no speed in it. Flow goes up and ride time down by the same factor.",
            ),
            Option(
                "It is multiplied by {factor}: faster is more.",
                Mistake(
                    "flow taken for riders on the line",
                    "More riders pass in a minute, but that is not what is asked. Each of them also stays "
                    "on the line for "
                    "less time.",
                ),
            ),
            Option(
                "It is divided by {factor}: riders are off again sooner.",
                Mistake("ride time alone", "The ride is shorter, but the riders also come faster after one another."),
            ),
            Option(
                "It grows by one: the fence post.",
                Mistake("fence post", "A post is a matter of where the ends are, not of how fast they move."),
            ),
        ),
        clues=(
            "Riders on the line, not people an hour.",
            "Picture the area of the flow panel getting taller and narrower.",
            "First step: write riders on the line with the length and the spacing, and look for the speed.",
        ),
        steps=lambda n: (
            "Riders on the line are ridden length over spacing: no speed in it.",
            f"The flow is multiplied by {show(n.factor)}, the ride time divided by it: the product stays.",
        ),
    ),
    NumberExercise(
        id="3.7",
        sort="backwards",
        text="A count at the top says {capacity}, and photos show {riders} on the line, on average. How "
        "long does a ride take?",
        given={"capacity": Drawn("pph", 800, 600, 1200, 50), "riders": Drawn("person", 14, 10, 24, 1)},
        unit="s",
        within=0.5,
        right=_ride,
        roads=(
            Road(
                Mistake(
                    "headway for ride time",
                    "This is the time from one rider to the next. A ride lasts as many of them as are on the line.",
                ),
                lambda n: Q(3600 / n.capacity.m_as("pph"), "s"),
            ),
            Road(wrong.HOUR_AS_MINUTE, lambda n: _ride(n) / 60),
            Road(
                wrong.UPSIDE_DOWN,
                lambda n: Q(n.capacity.m_as("pph") / n.riders.m_as("person"), "s"),
            ),
            Road(
                Mistake("one rider taken off", "Riders on the line are riders, not gaps: none is taken off here."),
                lambda n: Q(3600 * (n.riders.m_as("person") - 1) / n.capacity.m_as("pph"), "s"),
            ),
            Road(
                wrong.POST_ADDED,
                lambda n: Q(3600 * (n.riders.m_as("person") + 1) / n.capacity.m_as("pph"), "s"),
                drawn=False,
            ),
        ),
        clues=(
            "Little's law, turned round: two of its three are given.",
            "Picture yourself taking hold: all who are on the line now get off before you do.",
            "First step: the headway in seconds is 3,600 over the people an hour.",
        ),
        steps=lambda n: (
            f"Headway: 3,600 s ÷ {n.capacity.magnitude:,.0f} = {3600 / n.capacity.m_as('pph'):.2f} s.",
            f"A ride lasts {n.riders.magnitude:g} headways: {show(_ride(n))}.",
        ),
    ),
)
