"""Exercises of 11: lines, waits, laps and room on the slope. Printed numbers and grids are invented."""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import hourly_capacity_from_interval
from liftcalc.formulas.loading_point import crowd_capacity_at_least, crowd_capacity_at_most, loading_capacity
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.slope_crowding import slope_capacity
from liftcalc.formulas.waiting import line_growth, mean_wait_constant, wait_from_line
from liftcalc.quantity_text import show
from liftcalc.simulation.waiting_words import line_of_first_hour
from liftcalc.units import Q

RUSH = Q(20, "minute")  # of 11.1
DOUBLE = Q(2, "person")


def _line(n):
    return line_of_first_hour(
        rush_arrivals=n.rush, rush_length=RUSH, later_arrivals=n.later, hourly_capacity=n.capacity
    )


def _after(n, line, hourly):
    """Return when a line is gone that empties from the end of the rush on at so many an hour."""
    return (RUSH + line / hourly).to("minute")


def _away(n):
    return n.ride + n.descent


def _crowd(n, time):
    return persons_from_flow(n.rate, time)


def _full(n, time=None, area=None):
    hectares = area or n.area.m_as("")
    return slope_capacity(Q(n.guideline.m_as("person"), "person/hectare"), Q(hectares, "hectare"), time or n.descent)


EXERCISES = (
    NumberExercise(
        id="11.1",
        sort="compute",
        text="On a Sunday {rush} come to Penny Rope in the first 20 minutes, and then {later}. The rope lets "
        "{capacity} get on, from the first minute. How long after the opening is the line gone?",
        given={
            "rush": Drawn("pph", 1600, 1350, 1700, 50),
            "later": Drawn("pph", 600, 400, 700, 50),
            "capacity": Drawn("pph", 1000, 900, 1100, 50),
        },
        figures=lambda n: {
            "line": persons_from_flow(line_growth(arrival_rate=n.rush, hourly_capacity=n.capacity), RUSH),
            "gone": _line(n).clears_at.to("minute"),
            "shrinks": -line_growth(arrival_rate=n.later, hourly_capacity=n.capacity),
        },
        unit="minute",
        within=0.2,
        right=lambda n: n.gone,
        roads=(
            Road(
                Mistake(
                    "nobody comes later",
                    "The line was divided by all who get on. But some of those places go to people who come later.",
                ),
                lambda n: _after(n, n.line, n.capacity),
            ),
            Road(
                Mistake("counted from the end of the rush", "That is how long it takes from the end of the rush on."),
                lambda n: _after(n, n.line, n.shrinks) - RUSH,
            ),
            Road(
                Mistake(
                    "arrivals taken for the line",
                    "All who came in the rush were put in line. Some of them had got on by then.",
                ),
                lambda n: _after(n, persons_from_flow(n.rush, RUSH), n.shrinks),
            ),
            Road(
                Mistake(
                    "gone with the rush",
                    "That is the end of the rush: the line stops growing then. It is longest, and not gone.",
                ),
                lambda n: RUSH,
            ),
            Road(
                Mistake("hours for minutes", "This is a number of hours, written as minutes."),
                lambda n: Q(_after(n, n.line, n.shrinks).m_as("hour"), "minute"),
            ),
        ),
        clues=(
            "How long is the line when the rush ends, and what does it do from then on?",
            "Picture two curves, who came and who got on. Where do they meet again?",
            "First step: by how many an hour the line grows in the rush, and so how many stand there at its end.",
        ),
        steps=lambda n: (
            f"In the rush the line grows by {show(n.rush)} − {show(n.capacity)} = {show(n.rush - n.capacity)}: "
            f"{n.line.m_as('person'):.1f} persons in 20 minutes.",
            f"Then it shrinks by {show(n.capacity)} − {show(n.later)} = {show(n.shrinks)}: {n.line.m_as('person'):.1f} "
            f"÷ {n.shrinks.m_as('pph'):,.0f} h = {show((n.line / n.shrinks).to('minute'))}.",
            f"20 min + {show((n.line / n.shrinks).to('minute'))} = {show(n.gone)} after the opening. "
            "Assumed: people come evenly, and the rope does not stand.",
        ),
    ),
    NumberExercise(
        id="11.2",
        sort="mistake",
        text="A board in the line of Lantern Double says: {printed} from here. {people} stand between board and "
        "chair; a double chair comes every {interval}, and every seat is taken. The figure has a mistake in it. What "
        "should the board say?",
        given={"people": Drawn("person", 60, 40, 100, 4), "interval": Drawn("s", 7, 6, 9, 0.5)},
        figures=lambda n: {
            "printed": (n.people.m_as("person") * n.interval).to("minute"),
            "chairs": n.people / DOUBLE,
            "capacity": hourly_capacity_from_interval(n.interval, DOUBLE),
        },
        unit="minute",
        within=0.02,
        right=lambda n: wait_from_line(n.people, n.capacity).to("minute"),
        roads=(
            Road(
                Mistake("one person a chair", "That is the figure of the board. How many leave with each chair?"),
                lambda n: n.printed,
            ),
            Road(
                Mistake("seats multiplied", "The seats were multiplied. Two seats take the line away twice as fast."),
                lambda n: 2 * n.printed,
            ),
            Road(
                Mistake("seconds for minutes", "This is a number of seconds, written as minutes."),
                lambda n: Q(wait_from_line(n.people, n.capacity).m_as("s"), "minute"),
            ),
            Road(
                Mistake("hours for minutes", "This is a number of hours, written as minutes."),
                lambda n: Q(wait_from_line(n.people, n.capacity).m_as("hour"), "minute"),
            ),
            Road(
                Mistake("seats counted twice", "Two persons ride on each chair. Here it was reckoned with four."),
                lambda n: n.printed / 4,
            ),
        ),
        clues=(
            "What leaves every few seconds: a person, or a chair?",
            "Picture the line in pairs. How many pairs are there, and how long does each take?",
            "First step: the number of chairs that all these people fill.",
        ),
        steps=lambda n: (
            f"{n.people.m_as('person'):.0f} people fill {n.chairs.m_as(''):.0f} double chairs.",
            f"{n.chairs.m_as(''):.0f} × {show(n.interval)} = {show(wait_from_line(n.people, n.capacity))}, which is "
            f"{show(wait_from_line(n.people, n.capacity), 'minute')}. With single seats left empty it is longer.",
        ),
    ),
    ChoiceExercise(
        id="11.3",
        sort="judge",
        text="On a quiet day {arrivals} come to Penny Rope, each without regard to the others, and {governed} can get "
        "on. What is to be said of the wait?",
        given={"arrivals": Drawn("pph", 960, 800, 1000, 20), "governed": Drawn("pph", 1200, 1150, 1250, 10)},
        figures=lambda n: {
            "start": Q(SECONDS_PER_HOUR / n.governed.m_as("pph"), "s"),
            "spare": n.governed - n.arrivals,
            "busy": Q(100 * (n.arrivals / n.governed).m_as(""), "percent"),
            "wait": mean_wait_constant(n.arrivals, Q(SECONDS_PER_HOUR / n.governed.m_as("pph"), "s")),
        },
        options=(
            Option(
                "People come unevenly. They wait {wait} on average even if all starts take equally long, and longer "
                "if not.",
                says="Some come together and wait; later nobody comes, and places that went empty do not come back. "
                "At {busy} of the places that makes {wait} on average.",
            ),
            Option(
                "Nobody waits: more can get on than come.",
                Mistake(
                    "people taken for water",
                    "That holds for water, which runs evenly. People come in twos and threes, and then not at all.",
                ),
            ),
            Option(
                "A line grows by {spare}.",
                Mistake(
                    "room taken for growth",
                    "{spare} is the room that is left. A line that stands shrinks by as much; none grows for long.",
                ),
            ),
            Option(
                "Each waits {start}, the time of one start.",
                Mistake(
                    "loading time taken for the wait",
                    "So long a start takes. The wait before it depends on who stands there already.",
                ),
            ),
            Option(
                "Whoever waits on such a day has a slow crew: starts must be quicker.",
                Mistake(
                    "chance taken for a fault",
                    "The crew does what it did: chance makes the wait. Hurried starts are missed, and hurt people.",
                ),
            ),
        ),
        clues=(
            "The means say that there is room. Does everybody come at the mean?",
            "Picture one minute at the loading point: when do people come, and when is the place free?",
            "First step: the share of the places that is taken.",
        ),
        steps=lambda n: (
            f"Share of the places taken: {show(n.arrivals)} ÷ {show(n.governed)} = {n.busy.m_as('percent'):.1f} %.",
            f"A start takes 3,600 s ÷ {n.governed.m_as('pph'):,.0f} = {n.start.m_as('s'):.3f} s. Equal starts: "
            f"ρ × S ÷ (2 × (1 − ρ)) = {show(n.wait)} on average.",
            "Starts that differ make it longer, up to twice that with exponential ones. It is a mean: one guest in "
            "many waits several times as long.",
        ),
    ),
    NumberExercise(
        id="11.4",
        sort="compute",
        text="A school brings {crowd} to the hill, and all ski laps on Penny Rope alone. The ride takes {ride}, the "
        "descent {descent}, one start {loading}; nobody rests. How many rides an hour can they make, at most?",
        given={
            "crowd": Drawn("person", 90, 80, 150, 5),
            "ride": Drawn("s", 45, 40, 55, 1),
            "descent": Drawn("s", 75, 60, 100, 5),
            "loading": Drawn("s", 3.2, 2.8, 3.6, 0.1),
        },
        unit="pph",
        within=1,
        right=lambda n: crowd_capacity_at_most(n.crowd, ride_and_descent=_away(n), loading_time=n.loading),
        roads=(
            Road(
                Mistake(
                    "more people, more rides",
                    "That is what they would make if nobody ever waited. How many starts are there in an hour?",
                ),
                lambda n: n.crowd / (_away(n) + n.loading),
            ),
            Road(
                Mistake(
                    "more people, more rides, and no time to load",
                    "That is what they would make if nobody ever waited, nor took time to start. How many starts are "
                    "there in an hour?",
                ),
                lambda n: n.crowd / _away(n),
            ),
            Road(
                Mistake(
                    "each behind all the others",
                    "That is the fewest: each would wait behind all the others, although some of them are on the way.",
                ),
                lambda n: crowd_capacity_at_least(n.crowd, ride_and_descent=_away(n), loading_time=n.loading),
            ),
            Road(wrong.PER_MINUTE, lambda n: loading_capacity(n.loading) / 60),
            Road(
                Mistake("laps of one", "These are the laps of one person without a line. How many make them?"),
                lambda n: Q(SECONDS_PER_HOUR, "s") / (_away(n) + n.loading) * Q(1, "person/hour"),
            ),
        ),
        clues=(
            "Two things bound the rides: the laps that so many people can make, and something at the bottom.",
            "Picture the loading point with a line that never ends. How often does somebody start?",
            "First step: how long a lap takes without a line, and how many starts fit into that time.",
        ),
        steps=lambda n: (
            f"Without a line a lap takes {show(_away(n) + n.loading)}, and {n.crowd.m_as('person'):.0f} people would "
            f"make {show((n.crowd / (_away(n) + n.loading)).to('pph'))}.",
            f"But a start takes {show(n.loading)}: 3,600 s ÷ {show(n.loading)} = {show(loading_capacity(n.loading))}, "
            "and that is less. The rest of the time they stand in line.",
            f"A lap then takes {n.crowd.m_as('person'):.0f} × {show(n.loading)} = "
            f"{show(n.crowd.m_as('person') * n.loading)} for each.",
        ),
    ),
    NumberExercise(
        id="11.5",
        sort="backwards",
        text="Lantern Double carries {rate}. Somebody times a guest through a whole lap, from outside the track: "
        "{wait} in line, {ride} on the chair, {descent} down to the line again. How many people ski on this lift?",
        given={
            "rate": Drawn("pph", 850, 700, 950, 10),
            "wait": Drawn("minute", 2.5, 1.5, 3, 0.5),
            "ride": Drawn("s", 290, 285, 300, 5),
            "descent": Drawn("s", 180, 150, 240, 10),
        },
        figures=lambda n: {"lap": n.wait.to("s") + n.ride + n.descent},
        unit="person",
        within=0.5,
        right=lambda n: _crowd(n, n.lap),
        roads=(
            Road(wrong.HOUR_AS_MINUTE, lambda n: _crowd(n, n.lap) * 60),
            Road(
                Mistake(
                    "minutes and seconds mixed",
                    "The wait hardly counts here: its minutes were added to seconds, or it was left out. Bring all "
                    "times to one unit.",
                ),
                lambda n: _crowd(n, Q(n.wait.m_as("minute"), "s") + n.ride + n.descent),
            ),
            Road(
                Mistake("line alone", "These are the people in line. The others ride, or are on their way down."),
                lambda n: _crowd(n, n.wait),
            ),
            Road(
                Mistake("one way", "Those on their way down were left out. They are skiing here, too."),
                lambda n: _crowd(n, n.wait + n.ride),
            ),
        ),
        clues=(
            "In which places may somebody be who skis on this lift?",
            "Picture yourself getting on. How many get on behind you until you get on again?",
            "First step: the time of a whole lap, all parts in one unit.",
        ),
        steps=lambda n: (
            f"A lap: {n.wait.m_as('s'):.0f} s + {show(n.ride)} + {show(n.descent)} = {show(n.lap)}.",
            f"Little's law: {show(n.rate)} × {n.lap.m_as('s'):.0f} s ÷ 3,600 s = {show(_crowd(n, n.lap))} on average.",
            f"Of them {show(_crowd(n, n.wait))} stand in line. One guest is one lap: the mean of several says more.",
        ),
    ),
    NumberExercise(
        id="11.6",
        sort="backwards",
        text="The beginners' slope of Duckling Belt has {area} hectares. The hill has set itself a guideline of at "
        "most {guideline} on each hectare. A ride takes {ride}, a descent {descent}. How many an hour may the belt "
        "bring up?",
        given={
            "area": Drawn("", 0.3, 0.2, 0.6, 0.1),
            "guideline": Drawn("person", 50, 45, 75, 5),
            "ride": Drawn("s", 135, 125, 145, 5),
            "descent": Drawn("s", 100, 60, 110, 5),
        },
        figures=lambda n: {"at_once": n.guideline * n.area.m_as("")},
        unit="pph",
        within=1,
        right=lambda n: _full(n),
        roads=(
            Road(
                Mistake(
                    "whole lap for the descent",
                    "The ride was counted with the descent. Whoever rides is not on the slope.",
                ),
                lambda n: _full(n, n.ride + n.descent),
            ),
            Road(
                Mistake("ride for the descent", "The time of the ride was taken. How long is somebody on the slope?"),
                lambda n: _full(n, n.ride),
            ),
            Road(
                Mistake("one hectare for the slope", "The area was left out. The slope is no whole hectare."),
                lambda n: _full(n, area=1),
            ),
            Road(
                Mistake(
                    "riders at once for riders an hour",
                    "So many may be on the slope at once. How often does the slope fill and empty in an hour?",
                ),
                lambda n: Q(n.at_once.m_as("person"), "pph"),
            ),
            Road(wrong.PER_MINUTE, lambda n: _full(n) / 60),
        ),
        clues=(
            "How many may be on the slope at once, and for how long does each stay there?",
            "Picture the slope with its riders. After one descent all of them have been replaced.",
            "First step: riders on the slope at once, by guideline and area.",
        ),
        steps=lambda n: (
            f"At once: {show(n.guideline)} × {n.area.m_as(''):g} = {show(n.at_once)}.",
            f"Each is there for {show(n.descent)}: {n.at_once.m_as('person'):g} × 3,600 s ÷ {show(n.descent)} = "
            f"{show(_full(n))}.",
            "A planning figure: at the run-out and at the foot of the belt it is fuller than on average.",
        ),
    ),
)
