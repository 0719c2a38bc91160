"""Exercises of 07: every kind of lift. Printed numbers and grids are invented, for the demo hill and others like it."""

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import (
    hourly_capacity_from_interval,
    interval_for_capacity,
    reversible_capacity,
    vertical_transport,
)
from liftcalc.formulas.carriers import capacity_with_carriers_out, detachable_carriers, least_station_interval
from liftcalc.formulas.motor import power_per_thousand_pph
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway
from liftcalc.lifts.givens import solve_line
from liftcalc.quantity_text import show
from liftcalc.units import Q

_TWO = Q(2, "person")

STANDING_FORGOTTEN = Mistake(
    "standing time forgotten", "Only the ride was counted. The cabins also stand, and nobody arrives meanwhile."
)
ROUND_TRIP_FOR_TRIP = Mistake(
    "round trip for trip",
    "A cabin was waited for until it is back. There are two of them: while one goes down, the other comes up.",
)
BOTH_WAYS = Mistake(
    "both ways together", "Those who ride up and those who ride down were added. One direction is asked."
)
STANDING_TWICE = Mistake(
    "standing time twice",
    "The standing time was counted once for each cabin. Both cabins stand at the same time, one at each end.",
)
LINE_SPEED_IN_THE_STATION = Mistake(
    "line speed in the station", "The speed of the rope was used. In the station the carriers are off it, and creep."
)
FREE_LENGTH_ALONE = Mistake(
    "free length alone", "Only the free length was counted. From nose to nose there is the carrier itself, too."
)
FREE_LENGTH_FORGOTTEN = Mistake(
    "free length forgotten", "In this figure the carriers follow nose to tail. The station keeps them apart."
)
STATIONS_FORGOTTEN = Mistake(
    "stations forgotten",
    "Only the carriers on the rope were counted. Others creep through the stations at the same time.",
)
STATIONS_TWICE = Mistake(
    "stations counted twice", "The station time given holds for both stations already. It was counted once for each."
)
EMPTY_PLACES_FORGOTTEN = Mistake(
    "empty places forgotten", "This is the full loop. The missing chairs leave places that come by empty, each round."
)
OUT_ONCE_AN_HOUR = Mistake(
    "missing once an hour", "The missing seats were taken off once. Their places come round many times in an hour."
)


def _tram(n, stands=1):
    return reversible_capacity(ride_time=n.trip, dwell_time=stands * n.standing, persons_per_carrier=n.persons)


def _least(n):
    parts = {"carrier_length": n.carrier_length, "carrier_gap": n.carrier_gap}
    return least_station_interval(**parts, station_speed=n.station_speed)


def _carriers(n, stations=1):
    interval = interval_for_capacity(n.capacity, n.persons)
    station_time = stations * n.station_time
    return detachable_carriers(n.sheave_distance, n.line_speed, station_time=station_time, interval=interval)


def _full(n):
    known = {"carriers_on_loop": n.places, "sheave_distance": n.sheave_distance, "line_speed": n.line_speed}
    return solve_line(**known, persons_per_carrier=_TWO).of("hourly_capacity")


def _left(n):
    return capacity_with_carriers_out(_full(n), carriers_on_loop=n.places, carriers_out=n.out)


def _printed(n):
    """Return what the leaflet prints: too much, and in whole hundreds."""
    fair = hourly_capacity_from_interval(n.interval, n.persons).m_as("pph")
    return Q(100 * round(fair * (1 + n.excess.m_as("")) / 100), "pph")


def _whole(quantity):
    return Q(round(quantity.magnitude), quantity.units)


def _for_the_height(power, capacity, rise):
    """Return the kilowatts for each 100,000 vertical transport feet an hour, as text."""
    return f"{100_000 * power.m_as('kW') / vertical_transport(capacity, rise).m_as('person*ft/hour'):.1f}"


EXERCISES = (
    NumberExercise(
        id="7.1",
        sort="compute",
        text="Two cabins for {persons} each run to and fro on one rope: one comes up while the other goes down. A ride "
        "takes {trip}; between two rides both stand for {standing}. How many people an hour go up, at most?",
        given={
            "persons": Drawn("person", 28, 16, 30, 1),
            "trip": Drawn("s", 150, 110, 240, 5),
            "standing": Drawn("s", 45, 30, 70, 5),
        },
        unit="pph",
        within=2,
        right=_tram,
        roads=(
            Road(STANDING_FORGOTTEN, lambda n: _tram(n, 0)),
            Road(ROUND_TRIP_FOR_TRIP, lambda n: _tram(n) / 2),
            Road(BOTH_WAYS, lambda n: 2 * _tram(n)),
            Road(STANDING_TWICE, lambda n: _tram(n, 2)),
            Road(
                wrong.ROUNDED_EARLY,
                lambda n: Q(round(3600 / (n.trip + n.standing).m_as("s")) * n.persons.m_as("person"), "pph"),
                close=True,
            ),
        ),
        clues=(
            "One formula for every lift: persons per carrier over the interval. What is the interval here?",
            "Picture yourself at the top station with a stopwatch. A cabin opens its doors; when does the next one?",
            "First step: the ride and the standing time together.",
        ),
        steps=lambda n: (
            f"A cabin arrives every {show(n.trip)} + {show(n.standing)} = {show(n.trip + n.standing)}.",
            f"3,600 s × {n.persons.magnitude:g} ÷ {show(n.trip + n.standing)} = {show(_tram(n))}, each cabin full.",
        ),
    ),
    NumberExercise(
        id="7.2",
        sort="compute",
        text="A detachable lift runs at {line_speed}. In the stations its carriers leave the rope and creep at "
        "{station_speed}. Each is {carrier_length} long, and the station keeps {carrier_gap} free between two. What is "
        "the shortest interval at which they can follow one another?",
        given={
            "line_speed": Drawn("m/s", 5.0, 4.0, 6.0, 0.5),
            "station_speed": Drawn("m/s", 0.40, 0.30, 0.50, 0.05),
            "carrier_length": Drawn("m", 2.2, 1.8, 3.0, 0.1),
            "carrier_gap": Drawn("m", 1.6, 1.4, 2.4, 0.1),
        },
        unit="s",
        within=0.1,
        right=_least,
        roads=(
            Road(LINE_SPEED_IN_THE_STATION, lambda n: headway(n.line_speed, n.carrier_length + n.carrier_gap)),
            Road(FREE_LENGTH_FORGOTTEN, lambda n: headway(n.station_speed, n.carrier_length)),
            Road(FREE_LENGTH_ALONE, lambda n: headway(n.station_speed, n.carrier_gap)),
            Road(wrong.UPSIDE_DOWN, lambda n: Q(1 / _least(n).m_as("s"), "s")),
        ),
        clues=(
            "Two speeds are given. At which of them do the carriers come closest to one another?",
            "Picture the creeping row in the station: one carrier, a free piece, the next carrier.",
            "First step: from the nose of one carrier to the nose of the next.",
        ),
        steps=lambda n: (
            f"From nose to nose: {show(n.carrier_length)} + {show(n.carrier_gap)} = "
            f"{show(n.carrier_length + n.carrier_gap)}.",
            f"÷ {show(n.station_speed)} = {_least(n).m_as('s'):.2f} s. The line speed is not in it.",
            "A packing figure: they fit no closer. Boarding, braking distance, load on rope and towers and the permit "
            "set floors of their own.",
        ),
    ),
    NumberExercise(
        id="7.3",
        sort="backwards",
        text="A fixed chair carries {capacity}. A detachable lift is planned that carries just as many, with carriers "
        "for {persons} at {line_speed}. From station to station it is {sheave_distance}; a carrier spends "
        "{station_time} of each round in the two stations together. How many carriers does that make, before they are "
        "rounded to whole ones?",
        given={
            "capacity": Drawn("pph", 1200, 900, 1800, 50),
            "persons": Drawn("person", 4, 4, 6, 1),
            "line_speed": Drawn("m/s", 5.0, 4.0, 6.0, 0.5),
            "sheave_distance": Drawn("m", 900, 700, 1400, 50),
            "station_time": Drawn("s", 100, 60, 140, 5),
        },
        unit="",
        within=0.2,
        right=_carriers,
        roads=(
            Road(STATIONS_FORGOTTEN, lambda n: _carriers(n, 0)),
            Road(STATIONS_TWICE, lambda n: _carriers(n, 2)),
            Road(wrong.ONE_WAY, lambda n: _carriers(n) - _carriers(n, 0) / 2),
            Road(wrong.SEATS_FORGOTTEN, lambda n: _carriers(n) * n.persons.m_as("person")),
            Road(wrong.POST_ON_A_LOOP, lambda n: _carriers(n) + Q(1, ""), drawn=False),
            Road(wrong.POST_OFF_A_LOOP, lambda n: _carriers(n) - Q(1, ""), drawn=False),
        ),
        clues=(
            "Backwards: the people an hour give the interval. What more is needed to count carriers?",
            "Picture one carrier on a whole round, and all those that leave the station before it is back.",
            "First step: the interval, which is 3,600 s times the persons per carrier, over the people an hour.",
        ),
        steps=lambda n: (
            f"Interval: 3,600 s × {n.persons.magnitude:g} ÷ {n.capacity.magnitude:,.0f} = "
            f"{interval_for_capacity(n.capacity, n.persons).magnitude:.3f} s.",
            f"Round: 2 × {show(n.sheave_distance)} ÷ {show(n.line_speed)} + {show(n.station_time)} = "
            f"{show((2 * n.sheave_distance / n.line_speed).to('s') + n.station_time)}.",
            f"Round over interval: {show(_carriers(n))} carriers. Speed shortens the ride and saves carriers; the "
            "interval alone makes the people an hour.",
        ),
    ),
    NumberExercise(
        id="7.4",
        sort="compute",
        text="The loop of a fixed double chair has {places} places for chairs. From bottom sheave to top sheave it is "
        "{sheave_distance}, and the rope runs at {line_speed}. Of the chairs {out} are in the workshop; their places "
        "come by empty. How many people an hour does it carry, at most?",
        given={
            "places": Drawn("", 80, 68, 96, 4),
            "spacing": Drawn("m", 15.0, 14.0, 16.5, 0.5),
            "line_speed": Drawn("m/s", 2.2, 2.0, 2.4, 0.1),
            "out": Drawn("", 4, 3, 6, 1),
        },
        figures=lambda n: {"sheave_distance": n.places.magnitude * n.spacing / 2},
        unit="pph",
        within=2,
        right=_left,
        roads=(
            Road(EMPTY_PLACES_FORGOTTEN, _full),
            Road(wrong.ONE_WAY, lambda n: 2 * _left(n)),
            Road(wrong.SEATS_FORGOTTEN, lambda n: _left(n) / 2),
            Road(OUT_ONCE_AN_HOUR, lambda n: _full(n) - Q(2 * n.out.magnitude, "pph")),
            Road(wrong.PER_MINUTE, lambda n: _left(n) / 60),
            Road(wrong.POST_ON_A_LOOP, lambda n: _left(n) * (1 + 1 / n.places.magnitude), drawn=False),
            Road(wrong.POST_OFF_A_LOOP, lambda n: _left(n) * (1 - 1 / n.places.magnitude), drawn=False),
        ),
        clues=(
            "No spacing and no interval are given. What do the places and the distance make?",
            "Picture the whole loop, up side and down side, cut into as many pieces as there are places.",
            "First step: the spacing is the length of the whole loop over the places.",
        ),
        steps=lambda n: (
            f"Spacing: 2 × {show(n.sheave_distance)} ÷ {show(n.places)} = {show(n.spacing)}; interval "
            f"{headway(n.line_speed, n.spacing).magnitude:.2f} s.",
            f"Full loop: 3,600 s × 2 × {show(n.line_speed)} ÷ {show(n.spacing)} = {show(_full(n))}.",
            f"{n.places.magnitude - n.out.magnitude:g} of {show(n.places)} places are filled: {show(_left(n))}.",
            "A loop with chairs missing runs only by leave of the operator, the maker's manual and the authority.",
        ),
    ),
    ChoiceExercise(
        id="7.5",
        sort="mistake",
        text="A leaflet says: 'A cabin every {interval}, {spacing} from cabin to cabin, on a rope at {line_speed}: "
        "{printed}.' The plate in the cabin allows {persons}. Which figure does not belong?",
        given={
            "persons": Drawn("person", 24, 16, 30, 1),
            "interval": Drawn("s", 50, 40, 60, 2),
            "line_speed": Drawn("m/s", 5.0, 4.0, 6.0, 0.5),
            "excess": Drawn("percent", 26, 20, 35, 1),
        },
        figures=lambda n: {
            "spacing": (n.line_speed * n.interval).to("m"),
            "fair": hourly_capacity_from_interval(n.interval, n.persons),
            "printed": _printed(n),
            "needed_interval": interval_for_capacity(_printed(n), n.persons),
            "needed_persons": _printed(n).to("person/s") * n.interval,
        },
        options=(
            Option(
                "The {printed}: it does not follow from the others.",
                says="{persons} every {interval} are {fair}, and that with every cabin full. Spacing and line speed "
                "stand behind the interval.",
            ),
            Option(
                "The {interval}: it must be {needed_interval}.",
                Mistake("interval suspected", "Divide spacing by line speed: that gives the interval once more."),
            ),
            Option(
                "The plate: it must allow {needed_persons}.",
                Mistake(
                    "plate suspected",
                    "Arithmetic alone could not tell. But a plate is what is allowed, and a leaflet is not.",
                ),
            ),
            Option(
                "None: they all belong together.",
                Mistake("taken on trust", "Work out how many cabins arrive in an hour, and how many people they hold."),
            ),
        ),
        clues=(
            "There is a figure to spare: some of them can be had in two ways. Which?",
            "Picture the station and a clock: doors open, doors open again, and so on for an hour.",
            "First step: spacing over line speed. Does it give the interval?",
        ),
        steps=lambda n: (
            f"{show(n.spacing)} ÷ {show(n.line_speed)} = {show(n.interval)}: spacing, speed and interval agree.",
            f"3,600 s × {n.persons.magnitude:g} ÷ {show(n.interval)} = {show(n.fair)}, not {show(n.printed)}.",
        ),
    ),
    ChoiceExercise(
        id="7.6",
        sort="judge",
        text="A tow: a motor of {tow_power}, an ideal of {tow_capacity}, a rise of {tow_rise}. A double chair: "
        "{chair_power}, an ideal of {chair_capacity}, a rise of {chair_rise}. Someone works out kilowatts per 1,000 "
        "pph and says the chair wastes power. What do you say?",
        given={
            "tow_power": Drawn("kW", 15, 14, 18, 1),
            "tow_capacity": Drawn("pph", 1200, 1000, 1200, 50),
            "tow_rise": Drawn("m", 30, 26, 32, 1),
            "chair_power": Drawn("kW", 55, 45, 56, 1),
            "chair_capacity": Drawn("pph", 1050, 1000, 1150, 50),
            "chair_rise": Drawn("m", 140, 130, 160, 5),
        },
        figures=lambda n: {
            "tow_figure": power_per_thousand_pph(n.tow_power, n.tow_capacity),
            "chair_figure": power_per_thousand_pph(n.chair_power, n.chair_capacity),
            "times": _whole((n.chair_rise / n.tow_rise).to("")),
        },
        options=(
            Option(
                "That does not follow: the chair lifts every rider higher. Set vertical transport beside the motors.",
                says="About {times} times as high. Even then the plates of two motors are compared, not what they use.",
            ),
            Option(
                "True: it takes {chair_figure}, and the tow {tow_figure}.",
                Mistake(
                    "rise left out",
                    "The figure counts riders, not metres of height. What does each rider get for the power?",
                ),
            ),
            Option(
                "That does not follow: the chair seats two, so its figure must be halved first.",
                Mistake("seats counted twice", "People an hour count every seat already."),
            ),
            Option(
                "That does not follow: a ride on the chair lasts longer. Divide its figure by the ride time first.",
                Mistake(
                    "ride time counted twice",
                    "Power over people an hour is energy for one rider, be the ride long or short. The time is in it.",
                ),
            ),
        ),
        clues=(
            "What does the figure count, and what does it leave out?",
            "Picture one rider at the top of each lift. How far down is the bottom?",
            "First step: the vertical transport of each lift, which is people an hour times the rise in feet.",
        ),
        steps=lambda n: (
            f"Per 1,000 pph: tow {show(n.tow_figure, 'kW/kilopph')}, chair {show(n.chair_figure, 'kW/kilopph')}.",
            f"Vertical transport: tow {show(vertical_transport(n.tow_capacity, n.tow_rise))}, "
            f"chair {show(vertical_transport(n.chair_capacity, n.chair_rise))}.",
            f"For each 100,000 VTFH: tow {_for_the_height(n.tow_power, n.tow_capacity, n.tow_rise)} kW, "
            f"chair {_for_the_height(n.chair_power, n.chair_capacity, n.chair_rise)} kW, by their plates.",
        ),
    ),
    ChoiceExercise(
        id="7.7",
        sort="judge",
        text="A rope tow and a fixed chair each carry {capacity}, every place taken. A ride takes {tow_ride} on the "
        "tow and {chair_ride} on the chair. Both lifts stop. What differs for the riders?",
        given={
            "capacity": Drawn("pph", 1000, 900, 1200, 50),
            "tow_ride": Drawn("s", 46, 40, 58, 2),
            "chair_ride": Drawn("s", 290, 240, 330, 10),
        },
        figures=lambda n: {
            "tow_riders": _whole(persons_from_flow(n.capacity, n.tow_ride)),
            "chair_riders": _whole(persons_from_flow(n.capacity, n.chair_ride)),
        },
        options=(
            Option(
                "About {tow_riders} stand on the snow; about {chair_riders} hang in the air and cannot leave.",
                says="On the tow they let go and clear the track. For the chair, the operator has a plan for bringing "
                "people down; the authority says what it must hold.",
            ),
            Option(
                "Nothing: where as many ride an hour, as many are on the line.",
                Mistake(
                    "people an hour for riders on the line",
                    "Riders on the line are people an hour times the ride time, and the rides are not alike.",
                ),
            ),
            Option(
                "The tow has more riders to look after, as they ride closer together.",
                Mistake(
                    "spacing alone",
                    "Closer together, yes, but on a much shorter ride. People an hour times the ride time decide.",
                ),
            ),
            Option(
                "The chair is free of hazard: nobody on it can be run over or caught by a rope.",
                Mistake(
                    "hazards of one kind for all",
                    "Each kind has hazards of its own. Who sits high up in the cold may fall, or try to jump.",
                ),
            ),
        ),
        clues=(
            "Two questions in one: how many are on each lift, and where are they?",
            "Picture both lifts standing still. Whose feet are on the ground?",
            "First step: people a second, times the ride time of each lift.",
        ),
        steps=lambda n: (
            f"Tow: {show(n.capacity)} for {show(n.tow_ride)}: about {show(n.tow_riders)}, on the ground.",
            f"Chair: {show(n.capacity)} for {show(n.chair_ride)}: about {show(n.chair_riders)}, in the air.",
            "A planning figure. Bringing people down follows the operator's evacuation plan; stops and restarts are "
            "for licensed people, the maker's manual and the authority.",
        ),
    ),
)
