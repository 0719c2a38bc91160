"""Exercises of 01: units. Printed numbers and grids are invented for the demo hill."""

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.quantity_text import show
from liftcalc.units import Q


def _riders_a_second(n, digits):
    return round(n.line_speed.m_as("m/s") / n.spacing.m_as("m"), digits)


def _error_of_rounding(n, digits=1):
    return Q(abs(3600 * _riders_a_second(n, digits) - hourly_capacity(n.line_speed, n.spacing).m_as("pph")), "pph")


EXERCISES = (
    NumberExercise(
        id="1.1",
        sort="compute",
        text="A phone shows {line_speed}. How many metres a second is that?",
        given={"line_speed": Drawn("mph", 8.0, 4.0, 13.0, 0.5)},
        unit="m/s",
        within=0.02,
        right=lambda n: n.line_speed.to("m/s"),
        roads=(
            Road(wrong.MPH_AS_FEET, lambda n: Q(n.line_speed.m_as("mph") * 0.3048, "m/s")),
            Road(wrong.FACTOR_UPSIDE_DOWN, lambda n: Q(n.line_speed.m_as("mph") / 0.44704, "m/s")),
            Road(wrong.MILE_AS_KILOMETRE, lambda n: Q(n.line_speed.m_as("mph") / 3.6, "m/s")),
            Road(wrong.UNIT_IGNORED, lambda n: Q(n.line_speed.m_as("mph"), "m/s")),
            Road(wrong.ROUNDED_EARLY, lambda n: Q(n.line_speed.m_as("mph") * 0.5, "m/s"), close=True),
        ),
        clues=(
            "Miles an hour go in, metres a second come out: both the length and the time change.",
            "Picture the two rulers of the speed panel. On which of them is the number smaller?",
            "First step: a mile is 5,280 ft, a foot 0.3048 m, an hour 3,600 s.",
        ),
        steps=lambda n: (
            "1 mph = 5,280 ft × 0.3048 m/ft ÷ 3,600 s = 0.44704 m/s.",
            f"{show(n.line_speed)} × 0.44704 = {show(n.line_speed, 'm/s')}.",
        ),
    ),
    NumberExercise(
        id="1.2",
        sort="compute",
        text="A mark on the rope passes {distance} between two poles in {time}. What is the line speed in "
        "feet a minute?",
        given={"distance": Drawn("ft", 100, 60, 120, 10), "time": Drawn("s", 9.5, 7.5, 14.0, 0.1)},
        unit="ft/minute",
        within=2,
        right=lambda n: (n.distance / n.time).to("ft/minute"),
        roads=(
            Road(
                Mistake(
                    "per second for per minute",
                    "This is how many feet pass in a second. The question asks for a minute.",
                ),
                lambda n: Q((n.distance / n.time).m_as("ft/s"), "ft/minute"),
            ),
            Road(
                Mistake(
                    "time over distance", "The time was divided by the distance. A speed has the time below the line."
                ),
                lambda n: Q(60 * n.time.m_as("s") / n.distance.m_as("ft"), "ft/minute"),
            ),
            Road(
                Mistake(
                    "per hour for per minute", "This is how many feet pass in an hour. The question asks for a minute."
                ),
                lambda n: Q((n.distance / n.time).m_as("ft/hour"), "ft/minute"),
            ),
            Road(
                Mistake("turned into metres", "The feet were turned into metres. The question asks for feet."),
                lambda n: Q((n.distance / n.time).m_as("m/minute"), "ft/minute"),
            ),
            Road(
                wrong.ROUNDED_EARLY,
                lambda n: Q(60 * round((n.distance / n.time).m_as("ft/s")), "ft/minute"),
                close=True,
            ),
        ),
        clues=(
            "The reading is in feet and seconds. What is asked?",
            "Picture the mark going on at the same speed until a minute is over.",
            "First step: feet a second are the distance over the time. Keep all digits.",
        ),
        steps=lambda n: (
            f"Feet a second: {show(n.distance)} ÷ {show(n.time)} = {(n.distance / n.time).m_as('ft/s'):.3f} ft/s.",
            f"In a minute: × 60 s = {show(n.distance / n.time, 'ft/minute')}.",
        ),
    ),
    NumberExercise(
        id="1.3",
        sort="compute",
        text="The plate on a motor made in Europe reads {motor_power}. How many kilowatts is that?",
        given={"motor_power": Drawn("metric_horsepower", 25, 21, 40, 1)},
        unit="kW",
        within=0.05,
        right=lambda n: n.motor_power.to("kW"),
        roads=(
            Road(wrong.METRIC_HP_FOR_HP, lambda n: Q(n.motor_power.magnitude, "hp").to("kW")),
            Road(wrong.FACTOR_UPSIDE_DOWN, lambda n: Q(n.motor_power.magnitude / 0.73549875, "kW")),
            Road(wrong.UNIT_IGNORED, lambda n: Q(n.motor_power.magnitude, "kW")),
            Road(wrong.ROUNDED_EARLY, lambda n: Q(n.motor_power.magnitude * 0.75, "kW"), close=True),
        ),
        clues=(
            "Two kinds of horsepower are about. Which one does a European plate mean?",
            "Picture 75 kg lifted by one metre in one second: that is the metric one.",
            "First step: 75 kg × 9.80665 m/s² × 1 m/s is how many watts?",
        ),
        steps=lambda n: (
            "1 metric hp = 75 kg × 9.80665 m/s² × 1 m/s = 735.5 W = 0.7355 kW.",
            f"{show(n.motor_power)} × 0.7355 = {show(n.motor_power, 'kW')}.",
        ),
    ),
    NumberExercise(
        id="1.4",
        sort="compute",
        text="A rope runs at {line_speed} with {spacing} from rider to rider. Someone rounds riders a "
        "second to one digit "
        "after the point and multiplies by 3,600. By how many people an hour is the result off?",
        given={"line_speed": Drawn("m/s", 2.9, 2.2, 3.5, 0.1), "spacing": Drawn("m", 8.2, 6.6, 9.4, 0.2)},
        unit="pph",
        within=3,
        right=_error_of_rounding,
        roads=(
            Road(
                Mistake(
                    "the rounded result itself", "This is what the person got. The question asks how far off it is."
                ),
                lambda n: Q(3600 * _riders_a_second(n, 1), "pph"),
            ),
            Road(
                Mistake(
                    "the right result itself", "This is the capacity. The question asks how far off the other one is."
                ),
                lambda n: hourly_capacity(n.line_speed, n.spacing),
            ),
            Road(wrong.PER_MINUTE, lambda n: _error_of_rounding(n) / 60),
            Road(
                Mistake(
                    "two digits kept", "Riders a second were rounded to two digits. One digit after the point was kept."
                ),
                lambda n: _error_of_rounding(n, 2),
            ),
        ),
        clues=(
            "Two results are needed: one rounded at the end, one rounded on the way. Their difference is asked.",
            "Picture the steps in the rounding panel: how far is a step from the full line here?",
            "First step: riders a second are speed over spacing. Write down four digits.",
        ),
        steps=lambda n: (
            f"Riders a second: {show(n.line_speed)} ÷ {show(n.spacing)} = {_riders_a_second(n, 4):.4f}.",
            f"Rounded at the end: {show(hourly_capacity(n.line_speed, n.spacing))}.",
            f"Rounded early: {_riders_a_second(n, 1):.1f} × 3,600 = {show(Q(3600 * _riders_a_second(n, 1), 'pph'))}.",
            f"The difference: {show(_error_of_rounding(n))}.",
        ),
    ),
    ChoiceExercise(
        id="1.5",
        sort="mistake",
        text="A poster at the ticket hut says: 'our tow runs at {line_speed}, that is {printed}'. "
        "Which mistake was made in turning one unit into the other?",
        given={"line_speed": Drawn("mph", 7.5, 5.0, 9.0, 0.5)},
        figures=lambda n: {
            "printed": Q(n.line_speed.m_as("mph") * 3600 / 5280, "ft/s"),
            "copied": Q(n.line_speed.m_as("mph"), "ft/s"),
            "metres": Q(n.line_speed.m_as("m/s"), "ft/s"),
            "minute": Q(n.line_speed.m_as("ft/minute"), "ft/s"),
        },
        options=(
            Option(
                "The factor 5,280 ÷ 3,600 was used upside down.",
                says="The same speed is always the larger number in ft/s. The poster has the smaller one.",
            ),
            Option(
                "The number was copied and only the unit changed.",
                Mistake("copying suspected", "Then the poster would say {copied}."),
            ),
            Option(
                "The speed was turned into metres a second and called feet a second.",
                Mistake("metres suspected", "Then the poster would say {metres}: smaller still."),
            ),
            Option(
                "The speed is for a minute.",
                Mistake("minutes suspected", "Then the poster would say {minute}: far larger."),
            ),
        ),
        clues=(
            "Turn the speed into ft/s yourself and lay it beside the poster.",
            "Picture the rulers: for one speed, is the number in ft/s the larger or the smaller?",
            "First step: miles an hour times 5,280 ft, over 3,600 s.",
        ),
        steps=lambda n: (
            f"{show(n.line_speed)} × 5,280 ft ÷ 3,600 s = {show(n.line_speed, 'ft/s')}.",
            f"The poster has {show(n.line_speed)} × 3,600 ÷ 5,280 = {show(n.printed)}: the factor upside down.",
        ),
    ),
    ChoiceExercise(
        id="1.6",
        sort="judge",
        text="By the operator's papers a tow needs a motor rated at {needed} or more. In the shed stands "
        "one whose European "
        "plate reads {motor_power}. By its rated power, would it do?",
        given={"motor_power": Drawn("metric_horsepower", 25, 21, 40, 1)},
        figures=lambda n: {
            "needed": Q(round(n.motor_power.magnitude * 0.7406, 1), "kW"),
            "as_hp": Q(n.motor_power.magnitude, "hp").to("kW"),
            "upside_down": Q(n.motor_power.magnitude / 0.7355, "kW"),
        },
        options=(
            Option(
                "No: in kilowatts it falls just short.",
                says="By 0.7355 kW for each metric horsepower. Whoever licenses the lift decides about "
                "motors; this sum only asks.",
            ),
            Option(
                "Yes: at 0.7457 kW each it gives enough.",
                Mistake(
                    "horsepower for metric horsepower",
                    "{as_hp} would be the other horsepower, of 550 foot-pounds a second.",
                ),
            ),
            Option(
                "Yes: its number is the larger one.",
                Mistake("numbers compared without units", "A number compares only with a number in the same unit."),
            ),
            Option(
                "Yes: divided by 0.7355 it is far more than enough.",
                Mistake(
                    "factor upside down", "A metric horsepower is less than a kilowatt, so {upside_down} cannot be."
                ),
            ),
        ),
        clues=(
            "A needed power in kilowatts, a plate in metric horsepower: one unit for both first.",
            "Picture the two rulers of the power panel, a hair's breadth apart.",
            "First step: one metric horsepower is 735.5 W.",
        ),
        steps=lambda n: (
            f"{show(n.motor_power)} × 0.7355 = {n.motor_power.m_as('kW'):.2f} kW.",
            f"Needed: {n.needed.magnitude:.2f} kW. It falls short by {(n.needed - n.motor_power).m_as('kW'):.2f} kW.",
        ),
    ),
    NumberExercise(
        id="1.7",
        sort="backwards",
        text="A ride over {ridden_length}, at the speed of the rope from the first metre, is to take {ride_time}. What "
        "must that speed be, in miles an hour?",
        given={"ridden_length": Drawn("m", 150, 100, 240, 10), "ride_time": Drawn("s", 50, 40, 80, 2)},
        unit="mph",
        within=0.1,
        right=lambda n: (n.ridden_length / n.ride_time).to("mph"),
        roads=(
            Road(wrong.UNIT_IGNORED, lambda n: Q((n.ridden_length / n.ride_time).m_as("m/s"), "mph")),
            Road(
                wrong.FACTOR_UPSIDE_DOWN,
                lambda n: Q((n.ridden_length / n.ride_time).m_as("m/s") * 0.44704, "mph"),
            ),
            Road(wrong.MILE_AS_KILOMETRE, lambda n: Q((n.ridden_length / n.ride_time).m_as("km/hour"), "mph")),
            Road(wrong.MPH_AS_FEET, lambda n: Q((n.ridden_length / n.ride_time).m_as("ft/s"), "mph")),
        ),
        clues=(
            "The question goes backwards: from a wished ride time to a speed.",
            "Picture the ruler of the speed panel in mph beside the one in m/s.",
            "First step: speed is length over time, in metres a second.",
        ),
        steps=lambda n: (
            f"{show(n.ridden_length)} ÷ {show(n.ride_time)} = {(n.ridden_length / n.ride_time).m_as('m/s'):.3f} m/s.",
            f"÷ 0.44704 = {show(n.ridden_length / n.ride_time, 'mph')}.",
        ),
    ),
)
