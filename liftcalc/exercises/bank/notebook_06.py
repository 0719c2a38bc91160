"""Exercises of 06: plus-minus. Printed numbers and grids are invented for the demo hill."""

import math

from liftcalc.exercises import mistakes as wrong
from liftcalc.exercises.exercise import ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.quantity_text import show
from liftcalc.units import Q


def _standard(n):
    return n.half_width.to("m") / math.sqrt(3)


def _capacity(n):
    return hourly_capacity(n.line_speed, n.spacing)


def _parts(n):
    """Return what the doubt of each reading makes of the capacity."""
    capacity = _capacity(n)
    return [(capacity * (u / x).m_as("")).to("pph") for u, x in ((n.speed_u, n.line_speed), (n.spacing_u, n.spacing))]


def _together(n):
    one, other = _parts(n)
    return Q(math.hypot(one.m_as("pph"), other.m_as("pph")), "pph")


def _spans(n, power):
    return Q((2 * n.each.m_as("m") ** power) ** (1 / power), "m")


EXERCISES = (
    NumberExercise(
        id="6.1",
        sort="compute",
        text="A tape reading of a spacing may be off by {half_width} to either side, all values in between "
        "equally likely. "
        "What is its standard uncertainty, in metres?",
        given={"half_width": Drawn("m", 0.5, 0.3, 1.5, 0.1)},
        unit="m",
        within=0.005,
        plus_minus=True,
        right=_standard,
        roads=(
            Road(wrong.HALF_WIDTH_FOR_STANDARD, lambda n: n.half_width.to("m")),
            Road(
                Mistake(
                    "divided by two", "The half-width was halved. For a rectangle the divisor is the root of three."
                ),
                lambda n: n.half_width.to("m") / 2,
            ),
            Road(
                Mistake(
                    "root forgotten", "The half-width was divided by three. The standard uncertainty is a root: √3."
                ),
                lambda n: n.half_width.to("m") / 3,
            ),
            Road(
                Mistake(
                    "triangle for rectangle", "The divisor √6 belongs to a triangle, where the middle is likelier."
                ),
                lambda n: n.half_width.to("m") / math.sqrt(6),
            ),
        ),
        clues=(
            "A half-width is the furthest it can be off; a standard uncertainty is how far it is off as a rule.",
            "Picture a rectangle of values. How far from its middle are they, in the root of the mean square?",
            "First step: which divisor belongs to a rectangle? The formula card has it.",
        ),
        steps=lambda n: (
            "A rectangle of half-width a has the standard uncertainty a ÷ √3.",
            f"{n.half_width.magnitude:g} m ÷ 1.732 = {_standard(n).magnitude:.2f} m.",
        ),
    ),
    NumberExercise(
        id="6.2",
        sort="compute",
        text="Line speed {line_speed} with a standard uncertainty of {speed_u}, spacing {spacing} with {spacing_u}. "
        "What is the standard uncertainty of the people an hour, to first order?",
        given={
            "line_speed": Drawn("m/s", 3.0, 2.4, 3.4, 0.1),
            "speed_u": Drawn("m/s", 0.12, 0.10, 0.20, 0.01),
            "spacing": Drawn("m", 8.0, 6.5, 9.0, 0.5),
            "spacing_u": Drawn("m", 0.4, 0.3, 0.6, 0.1),
        },
        unit="pph",
        within=2,
        plus_minus=True,
        right=_together,
        roads=(
            Road(wrong.ADDED_STRAIGHT, lambda n: sum(_parts(n), start=Q(0, "pph"))),
            Road(
                Mistake("largest part alone", "Only the larger part was kept. The smaller one adds a little, too."),
                lambda n: max(_parts(n)),
            ),
            Road(
                Mistake("part of the speed alone", "Only the line speed was counted. The spacing has a doubt, too."),
                lambda n: _parts(n)[0],
            ),
            Road(
                wrong.STANDARD_FOR_EXPANDED_TURNED,
                lambda n: 2 * _together(n),
            ),
        ),
        clues=(
            "Two doubts, one result: each makes a part, and the parts go together.",
            "Picture a right angle: the two parts are its short sides.",
            "First step: speed and spacing each in percent of itself; capacity moves by the same percent.",
        ),
        steps=lambda n: (
            f"Capacity {show(_capacity(n))}; a percent of speed or of spacing is a percent of it.",
            f"Part of the speed: {show(n.speed_u)} of {show(n.line_speed)} makes {show(_parts(n)[0])}; "
            f"part of the spacing: {show(n.spacing_u)} of {show(n.spacing)} makes {show(_parts(n)[1])}.",
            f"Together, as sides of a right angle: √({_parts(n)[0].magnitude:.1f}² + {_parts(n)[1].magnitude:.1f}²) "
            f"= {show(_together(n))}.",
        ),
    ),
    NumberExercise(
        id="6.3",
        sort="compute",
        text="People an hour have a standard uncertainty of {standard}. What stands behind the plus-minus "
        "at a level of "
        "confidence of 95 %, with a coverage factor of 2?",
        given={"standard": Drawn("pph", 80, 40, 140, 5)},
        unit="pph",
        within=2,
        plus_minus=True,
        right=lambda n: 2 * n.standard,
        roads=(
            Road(wrong.STANDARD_FOR_EXPANDED, lambda n: n.standard),
            Road(
                Mistake(
                    "divided by the factor",
                    "The coverage factor was divided by. An expanded uncertainty is the wider one.",
                ),
                lambda n: n.standard / 2,
            ),
            Road(
                wrong.VARIANCE_FOR_DEVIATION,
                lambda n: Q(n.standard.magnitude**2, "pph"),
            ),
            Road(
                Mistake("whole width for half", "This is the width from end to end. The plus-minus is half of it."),
                lambda n: 4 * n.standard,
            ),
        ),
        clues=(
            "A standard uncertainty covers about two in three. Here 95 % are asked.",
            "Picture the two upright lines of the first panel, and the distance of one from the middle.",
            "First step: which is the wider, the standard or the expanded one?",
        ),
        steps=lambda n: (
            "Expanded uncertainty = coverage factor × standard uncertainty.",
            f"2 × {show(n.standard)} = {show(2 * n.standard)}.",
        ),
    ),
    NumberExercise(
        id="6.4",
        sort="backwards",
        text="Single spacings on a photo scatter by {scatter}, as a standard deviation. How many spacings "
        "must be averaged to bring "
        "the standard uncertainty of the mean down to {wanted}?",
        given={"wanted": Drawn("m", 0.2, 0.1, 0.3, 0.1), "ratio": Drawn("", 4, 3, 6, 1)},
        figures=lambda n: {"scatter": n.wanted * n.ratio.magnitude},
        unit="",
        within=0.2,
        right=lambda n: (n.scatter / n.wanted) ** 2,
        roads=(
            Road(
                Mistake(
                    "root forgotten", "The mean gets better with the root of the number, not with the number itself."
                ),
                lambda n: n.scatter / n.wanted,
            ),
            Road(
                Mistake(
                    "root taken",
                    "The root was taken where a square is needed. Halving the doubt asks for four times as many.",
                ),
                lambda n: (n.scatter / n.wanted) ** 0.5,
            ),
            Road(
                Mistake(
                    "one added",
                    "That is one more than needed. If you counted riders: the question asks for spacings, "
                    "and there is one fewer of them.",
                ),
                lambda n: (n.scatter / n.wanted) ** 2 + Q(1, ""),
            ),
            Road(wrong.FENCE_POST, lambda n: (n.scatter / n.wanted) ** 2 - Q(1, ""), drawn=False),
        ),
        clues=(
            "Backwards: from the doubt that is wished to the number of readings.",
            "Picture twice as many readings: the doubt falls by less than half.",
            "First step: the doubt of a mean is the deviation over the root of the number. Solve for the number.",
        ),
        steps=lambda n: (
            f"√(number) = {n.scatter.magnitude:.2f} m ÷ {n.wanted.magnitude:.2f} m = {n.ratio.magnitude:g}.",
            f"Number = {n.ratio.magnitude:g}² = {show((n.scatter / n.wanted) ** 2)}.",
        ),
    ),
    NumberExercise(
        id="6.5",
        sort="compute",
        text="A long span is measured as two spans, one after the other, with one tape that may be too long "
        "or too short: each "
        "has a standard uncertainty of {each}, from that tape alone. What is the standard uncertainty of "
        "both together?",
        given={"each": Drawn("m", 0.4, 0.3, 1.6, 0.1)},
        unit="m",
        within=0.01,
        plus_minus=True,
        right=lambda n: _spans(n, 1),
        roads=(
            Road(wrong.CORRELATED_AS_INDEPENDENT, lambda n: _spans(n, 2)),
            Road(
                Mistake(
                    "one span alone", "This is the doubt of one span. The tape is wrong over the other one as well."
                ),
                lambda n: n.each,
            ),
            Road(
                Mistake(
                    "averaged away",
                    "Nothing is averaged here: the spans are added, and one tape errs the same way twice.",
                ),
                lambda n: n.each / math.sqrt(2),
            ),
        ),
        clues=(
            "One tape, used twice. If it is too long, in which direction is each span off?",
            "Picture the tape stretched: both spans come out short together, never one long and one short.",
            "First step: if one span is off by one standard uncertainty, by how much is the other off, and "
            "in which direction?",
        ),
        steps=lambda n: (
            "The same tape errs the same way in both spans: the correlation is 1.",
            f"{n.each.magnitude:.2f} m + {n.each.magnitude:.2f} m = {_spans(n, 1).magnitude:.2f} m, shown "
            f"as {show(_spans(n, 1))}.",
        ),
    ),
    ChoiceExercise(
        id="6.6",
        sort="judge",
        text="The ridden length of a tow is known to {length_u}, its spacing to {spacing_u}, its line speed "
        "to {speed_u}, each in percent of its own value. There is time for one more reading, to make the "
        "people an hour surer. Which?",
        given={
            "length_u": Drawn("percent", 8, 7, 12, 1),
            "spacing_u": Drawn("percent", 5, 4, 6, 1),
            "speed_u": Drawn("percent", 2, 1, 3, 1),
        },
        options=(
            Option("The spacing.", says="Its share of the variance is the largest. The length has none."),
            Option(
                "The length: its doubt is the largest.",
                Mistake(
                    "length counted in",
                    "The length does not enter people an hour. Its share is nil, however large its doubt.",
                ),
            ),
            Option(
                "The line speed: speed decides.",
                Mistake(
                    "speed before all",
                    "A percent of speed weighs as much as a percent of spacing, and its doubt is smaller.",
                ),
            ),
            Option(
                "All three equally.",
                Mistake(
                    "shares taken as equal",
                    "Doubts go in by their squares: the largest of those that count makes nearly all.",
                ),
            ),
        ),
        clues=(
            "Which readings are in the formula of people an hour at all?",
            "Picture the bars of the budget panel.",
            "First step: strike out what the formula does not hold, then compare the squares.",
        ),
        steps=lambda n: (
            "People an hour are speed over spacing: the length has no share.",
            f"Squares: {n.spacing_u.magnitude:g}² = {n.spacing_u.magnitude**2:g} for the spacing, "
            f"{n.speed_u.magnitude:g}² = {n.speed_u.magnitude**2:g} for the speed. The spacing has most of it.",
        ),
    ),
    ChoiceExercise(
        id="6.7",
        sort="mistake",
        text="A report says: 'The phone shows 8 mph in steps of 1 mph, the timed mark gives {mark} with a "
        "plus-minus of 0.1 m/s. "
        "The two agree, so {mark} is confirmed.' What is wrong?",
        given={"mark": Drawn("m/s", 3.40, 3.36, 3.46, 0.02)},
        figures=lambda n: {"phone": Q(8, "mph"), "phone_metric": Q(8, "mph").to("m/s")},
        options=(
            Option(
                "So coarse a display agrees with almost any speed near it; it confirms next to nothing.",
                says="A step of 1 mph hides a range of 0.45 m/s. Agreement counts only where the doubts are small.",
            ),
            Option(
                "Nothing: two methods that agree confirm each other.",
                Mistake(
                    "agreement taken for proof",
                    "With a doubt more than twice as large, the display would agree with many other speeds, too.",
                ),
            ),
            Option(
                "They disagree: 8 mph is {phone_metric}.",
                Mistake(
                    "doubt of the display forgotten",
                    "A display in whole mph may stand for half a mph more or less. That covers the difference.",
                ),
            ),
            Option(
                "The mean of the two should be taken.",
                Mistake(
                    "plain mean of unequal doubts", "A plain mean gives the coarse one as much weight as the fine one."
                ),
            ),
        ),
        clues=(
            "How far may the true speed lie from what the display shows?",
            "Picture the rows of the methods panel: a long bar covers much.",
            "First step: half a step of the display, in m/s.",
        ),
        steps=lambda n: (
            f"8 mph is {show(n.phone_metric)}; half a step is 0.22 m/s: anything from 3.35 m/s to 3.80 m/s shows so.",
            "It agrees with the mark and would agree with much else. It neither confirms nor corrects.",
        ),
    ),
)
