"""The bank of exercises: for the printed numbers and fifty learners, right is right and wrong roads have names."""

import dataclasses
import functools
import hashlib
import re
import subprocess
import sys

import pytest
from fingerprints import of_learners
from notebook_files import PATHS, WITHOUT_EXERCISES, code_cells, read

from liftcalc import Q, headway, hourly_capacity, show
from liftcalc.exercises import BANK, Posed, judge
from liftcalc.exercises.answers import read_answer
from liftcalc.exercises.drawing import learner_key, numbers_for, tells_apart
from liftcalc.exercises.exercise import SORTS, ChoiceExercise, Drawn, Mistake, NumberExercise, Option, Road
from liftcalc.units import kind_of

LEARNERS = ["", *[f"learner {number}" for number in range(1, 51)]]
NUMBERS = [id for id, exercise in BANK.items() if isinstance(exercise, NumberExercise)]
SLIPS = {"unit beside the number", "point in the wrong place"}  # of any number, beside the roads of an exercise
CHOICES = [id for id, exercise in BANK.items() if isinstance(exercise, ChoiceExercise)]


@functools.cache
def posed_to_all(id):
    """Return an exercise with the numbers of every learner."""
    return [Posed(BANK[id], learner_key(name)) for name in LEARNERS]


def off_by(posed, tolerances):
    """Return the right answer moved by some tolerances."""
    return posed.right + Q(tolerances * posed.exercise.within, posed.exercise.unit)


@pytest.mark.parametrize("id", NUMBERS)
def test_right_close_and_off(id):
    for posed in posed_to_all(id):
        assert judge(posed, posed.right).state == "right"
        for side in (-1, 1):
            assert judge(posed, off_by(posed, 0.5 * side)).state == "right"
            assert judge(posed, off_by(posed, 2 * side)).state == "close"
            assert judge(posed, off_by(posed, 5 * side)).state == "off"


@pytest.mark.parametrize("id", NUMBERS)
def test_the_ends_of_right_and_close(id):
    """Exactly one tolerance off is right, and exactly three are close; a hair more is not."""
    for posed in posed_to_all(id)[:3]:
        for side in (-1, 1):
            assert judge(posed, off_by(posed, side)).state == "right"
            assert judge(posed, off_by(posed, 1.00001 * side)).state == "close"
            assert judge(posed, off_by(posed, 3 * side)).state == "close"
            beyond = judge(posed, off_by(posed, 3.00001 * side))
            assert beyond.state == "off" or beyond.mistakes


def two_roads(first, second):
    """Return an exercise with two roads to 4 m/s, each close or not; 2 m/s is right."""
    return Posed(
        NumberExercise(
            id="9.1", sort="compute", text="{v}", given={"v": Drawn("m/s", 2, 1, 3, 1)}, clues=("a", "b"),
            steps=lambda n: (), unit="m/s", within=0.1, right=lambda n: n.v,
            roads=(
                Road(Mistake("first road", "One."), lambda n: 2 * n.v, close=first),
                Road(Mistake("second road", "Two."), lambda n: n.v + Q(2, "m/s"), close=second),
            ),
        )
    )  # fmt: skip


@pytest.mark.parametrize(
    ("first", "second", "state"), [(True, True, "close"), (True, False, "off"), (False, True, "off")]
)
def test_an_answer_is_close_only_if_every_road_to_it_is(first, second, state):
    reply = judge(two_roads(first, second), "4 m/s")
    assert (reply.state, reply.mistakes) == (state, ("first road", "second road"))


@pytest.mark.parametrize(
    ("typed", "state"), [("2.1", "right"), ("1.9", "right"), ("2.3", "close"), ("1.7", "close"), ("2.31", "off")]
)
def test_the_ends_in_decimal_digits(typed, state):
    assert judge(two_roads(True, True), f"{typed} m/s").state == state


@pytest.mark.parametrize("id", NUMBERS)
def test_every_wrong_road_gets_its_own_name(id):
    exercise = BANK[id]
    assert len({road.mistake.name for road in exercise.roads}) == len(exercise.roads) >= 3
    undrawn = {road.mistake.name for road in exercise.roads if not road.drawn}
    for posed in posed_to_all(id):
        for road in exercise.roads:
            reply = judge(posed, road.answer(posed.numbers))
            if road.drawn:
                assert reply.mistakes[:1] == (road.mistake.name,), f"{posed.key}: {reply}"
                assert set(reply.mistakes[1:]) <= SLIPS | undrawn, f"{posed.key}: {reply}"
            assert road.mistake.name in reply.mistakes, f"{posed.key}: {reply}"
            assert reply.state == ("close" if road.close else "off")
            assert road.mistake.name in reply.says
            assert road.mistake.says in reply.says


FENCES = [  # exercise, answer to the printed numbers by own arithmetic, name: one post more, one post fewer
    ("0.2", 180 / 8 + 1, "fence post in the average"),
    ("0.2", 180 / 8 - 1, "fence post taken off"),
    ("0.3", 3600 * 19 / 54, "fence post added"),
    ("0.3", 3600 * 17 / 54, "one head taken off"),
    ("2.3", 60 / 9, "fence post"),
    ("2.3", 60 / 10, "a gap added"),
    ("2.5", 2.8 * 7 / 3, "one rider more allowed"),
    ("2.5", 2.8 * 7 / 1, "one gap fewer"),
    ("3.1", 2 * 210 / 9 + 2, "fence post in the average"),
    ("3.1", 2 * 210 / 9 - 2, "fence post taken off"),
    ("3.2", 900 * 72 / 3600 + 1, "fence post in the average"),
    ("3.2", 900 * 72 / 3600 - 1, "fence post taken off"),
    ("3.3", 2 * 385 / 17.5 + 1, "fence post on a loop"),
    ("3.3", 2 * 385 / 17.5 - 1, "fence post taken off a loop"),
    ("3.4", 150 / 16, "one rider more allowed"),
    ("3.4", 150 / 14, "one gap fewer"),
    ("3.7", 15 * 4.5, "fence post added"),
    ("3.7", 13 * 4.5, "one rider taken off"),
    ("6.4", 16 + 1, "one added"),
    ("6.4", 16 - 1, "fence post"),
    ("7.3", (2 * 900 / 5 + 100) / 12 + 1, "fence post on a loop"),
    ("7.3", (2 * 900 / 5 + 100) / 12 - 1, "fence post taken off a loop"),
    ("7.4", 3600 * 2 * 2.2 / (2 * 600 / 81) * 76 / 80, "fence post on a loop"),
    ("7.4", 3600 * 2 * 2.2 / (2 * 600 / 79) * 76 / 80, "fence post taken off a loop"),
]


@pytest.mark.parametrize(("id", "number", "name"), FENCES, ids=[f"{id} {name}" for id, _, name in FENCES])
def test_fence_posts_are_named_wherever_something_is_counted(id, number, name):
    reply = judge(Posed(BANK[id]), Q(number, BANK[id].unit))
    assert reply.state == "off"
    assert name in reply.mistakes


def test_no_draw_is_thrown_away_for_a_road_that_is_only_judged():
    posed = two_roads(False, False)
    nearest = Road(Mistake("near", "Near."), lambda n: n.v, drawn=False)
    exercise = dataclasses.replace(posed.exercise, roads=(posed.exercise.roads[0], nearest))
    assert tells_apart(exercise, posed.numbers)
    assert not tells_apart(dataclasses.replace(exercise, roads=posed.exercise.roads), posed.numbers)
    assert not tells_apart(
        dataclasses.replace(exercise, roads=(dataclasses.replace(nearest, drawn=True),)), posed.numbers
    )


def one_road(to):
    """Return an exercise with one road, to so many metres; 5 m is right within 0.2 m."""
    return Posed(
        NumberExercise(
            id="9.1", sort="compute", text="{d}", given={"d": Drawn("m", 5, 1, 9, 1)}, clues=("a", "b"),
            steps=lambda n: (), unit="m", within=0.2, right=lambda n: n.d,
            roads=(Road(Mistake("the road", "One."), lambda n: Q(to, "m")),),
        )
    )  # fmt: skip


# metres the road leads to, answer, whether the road is named: within 1 % of it or half of the last digit, whichever is
# more, and never further than the tolerance
WINDOWS = [
    (0.3, "0.3 m", True),
    (0.3, "0.35 m", False),
    (0.3, "0.305 m", False),
    (0.3, "0.303 m", True),
    (0.3, "0.31 m", False),
    (0.304, "0.30 m", True),
    (0.306, "0.30 m", False),
    (0.25, "0.3 m", True),
    (0.24, "0.3 m", False),
    (0.2, "0 m", True),
    (0.21, "0 m", False),
    (0.0, "0 m", True),
    (0.0, "0.4 m", False),
    (0.304, "30 cm", True),
    (0.306, "30 cm", False),
    (0.304, "300 m", False),
    (100.0, "100.2 m", True),
    (100.0, "100.21 m", False),
    (100.0, "101 m", False),
    (0.3, Q(0.3, "m"), True),
    (0.3, Q(30, "cm"), True),
    (0.3, Q(0.31, "m"), False),
    (0.304, Q(0.3, "m"), True),
    (1 / 3, Q(1 / 3, "m"), True),
]


@pytest.mark.parametrize(("to", "given", "named"), WINDOWS, ids=[f"{to:g}-{given}" for to, given, _ in WINDOWS])
def test_nobody_is_charged_with_a_road_that_leads_elsewhere(to, given, named):
    assert judge(one_road(to), given).mistakes == (("the road",) if named else ())


@pytest.mark.parametrize(
    ("id", "given", "names"),
    [
        ("0.1", "20 pph", ("per minute for per hour", "unit beside the number")),
        ("1.1", "8 m/s", ("number copied, unit changed", "unit beside the number")),
        ("3.7", "1.05 s", ("hour taken as minute", "unit beside the number")),
        ("4.6", "39,223 VTFH", ("metres left where feet are asked", "unit beside the number")),
        ("0.1", "0.333 pph", ("unit beside the number",)),
    ],
)
def test_a_slip_of_unit_and_a_road_to_the_same_number_are_both_named(id, given, names):
    reply = judge(Posed(BANK[id]), given)
    assert (reply.state, reply.mistakes) == ("off", names)
    assert "Which unit did you write?" in reply.says
    assert all(f"“{name}”" in reply.says for name in names)


def test_a_slip_is_charged_as_narrowly_as_a_road():
    posed = Posed(BANK["1.4"], learner_key("learner 1"))
    right = posed.right.magnitude
    assert judge(posed, f"{right / 10:.2f} pph").mistakes == ("point in the wrong place",)
    assert judge(posed, f"{(right + 2.9) / 10:.2f} pph").mistakes == ()
    posed = Posed(BANK["1.4"], learner_key("learner 8"))  # 122.6 pph is right
    assert judge(posed, "12 pph").mistakes == ("point in the wrong place",), "as near as its digits allow"
    assert judge(posed, "12.00 pph").mistakes == ()


@pytest.mark.parametrize("id", CHOICES)
def test_every_wrong_statement_gets_its_own_name(id):
    for posed in posed_to_all(id):
        names = set()
        for letter, option in posed.options.items():
            reply = judge(posed, letter)
            assert judge(posed, posed.statements[letter]) == reply, "the statement written out counts as its letter"
            if option.mistake is None:
                assert (reply.state, reply.mistakes) == ("right", ())
            else:
                assert (reply.state, reply.mistakes) == ("off", (option.mistake.name,))
                names.add(option.mistake.name)
        assert len(names) == len(posed.options) - 1


@pytest.mark.parametrize("id", BANK)
@pytest.mark.parametrize("blank", [None, ..., "", "   ", "..."])
def test_a_blank_leaves_it_open(id, blank):
    reply = judge(Posed(BANK[id]), blank)
    assert reply.state == "open"
    assert not reply.judged


@pytest.mark.parametrize("id", NUMBERS)
def test_an_answer_of_another_kind_is_told_what_came_and_what_is_asked(id):
    posed = Posed(BANK[id])
    other = Q(3, "kg")
    reply = judge(posed, other)
    assert reply.state == "off"
    assert "3 kg is a mass; asked is a" in reply.says


@pytest.mark.parametrize("id", NUMBERS)
def test_a_reply_to_a_mistake_does_not_give_the_answer(id):
    for posed in posed_to_all(id):
        for road in posed.exercise.roads:
            says = judge(posed, road.answer(posed.numbers)).says
            assert show(posed.right) not in says


@pytest.mark.parametrize("id", BANK)
def test_clues_do_not_hold_the_answer(id):
    clues = BANK[id].clues
    assert 2 <= len(clues) <= 3
    numbers = {float(word.replace(",", "")) for clue in clues for word in re.findall(r"\d[\d,]*\.?\d*", clue)}
    for posed in posed_to_all(id):
        if posed.is_choice:
            assert not any(posed.statements[posed.right] in clue for clue in clues)
        else:
            assert not [number for number in numbers if judge(posed, Q(number, posed.exercise.unit)).state == "right"]


@pytest.mark.parametrize("id", BANK)
def test_the_worked_solution_ends_at_the_answer(id):
    for posed in posed_to_all(id):
        lines = posed.exercise.steps(posed.numbers)
        assert 2 <= len(lines) <= 4
        text = " ".join(lines)
        assert "{" not in text
        if not posed.is_choice:
            shown = show(posed.right)
            assert shown in text or f"{posed.right.magnitude:.2f}" in text, (shown, text)


@pytest.mark.parametrize("notebook", sorted({exercise.notebook for exercise in BANK.values()}))
def test_a_caution_for_all_stands_once_a_page_and_not_after_every_solution(notebook):
    """Who decides is said at the head of the page and above its exercises; a solution adds what is its own."""
    exercises = [exercise for exercise in BANK.values() if exercise.notebook == notebook]
    last = {exercise.id: exercise.steps(Posed(exercise).numbers)[-1] for exercise in exercises}
    assert not [id for id, line in last.items() if line.endswith(("not a page.", "not on a page."))]
    repeated = [id for id, line in last.items() if "icensed people" in line]
    assert len(repeated) < len(exercises) / 2, repeated


@pytest.mark.parametrize("id", BANK)
def test_a_question_shows_its_numbers_and_its_tolerance(id):
    for posed in posed_to_all(id):
        text = repr(posed)
        assert text.startswith(f"{id}  ")
        assert "{" not in text
        assert posed.asked in text
        for name in re.findall(r"{(\w+)}", posed.exercise.text):
            assert show(getattr(posed.numbers, name)) in text
        assert f"<strong>{id}</strong>" in posed._repr_html_()
    if id in NUMBERS:
        assert f"right within {BANK[id].within:,g}" in repr(Posed(BANK[id]))


@pytest.mark.parametrize("id", BANK)
def test_numbers_are_shown_as_they_are(id):
    """A learner computes from what is shown: it must not be rounded. A figure printed by somebody may be."""
    for posed in posed_to_all(id):
        for name in re.findall(r"{(\w+)}", posed.exercise.text):
            quantity = getattr(posed.numbers, name)
            if name != "printed":
                shown = read_answer(show(quantity), quantity.units)
                assert shown.m_as(quantity.units) == pytest.approx(quantity.magnitude, rel=1e-9), f"{posed.key}: {name}"


DOUBTS = (
    "half_width",
    "speed_u",
    "spacing_u",
    "length_u",
    "standard",
    "wanted",
    "each",
    "fix",
    "noise",
)  # plus-minus, not readings
# believable ranges: common practice, no published source
BELIEVABLE = {
    "speed": ("m/s", 0.3, 6),
    "length": ("m", 1.4, 1400),
    "time": ("s", 0.3, 330),
    "number of persons": ("person", 2, 150),
    "hourly capacity": ("pph", 400, 1800),
    "power": ("kW", 5, 60),
    "force": ("N", 150, 3500),
    "mass": ("kg", 30, 1200),
    "acceleration": ("m/s**2", 0.5, 3),
}


@pytest.mark.parametrize("id", BANK)
def test_given_numbers_are_believable(id):
    for posed in posed_to_all(id):
        for name in posed.exercise.given:
            quantity = getattr(posed.numbers, name)
            if kind_of(quantity) in BELIEVABLE and name not in DOUBTS:
                unit, low, high = BELIEVABLE[kind_of(quantity)]
                assert low <= quantity.m_as(unit) <= high, f"{posed.key}: {name} {show(quantity)}"


def test_enough_exercises_of_every_sort():
    for path in PATHS:
        if path.stem[:2] in WITHOUT_EXERCISES:
            continue
        sorts = [exercise.sort for exercise in BANK.values() if exercise.notebook == path.stem[:2]]
        assert 5 <= len(sorts) <= 8
    assert {exercise.sort for exercise in BANK.values()} == set(SORTS)
    roads = sum(len(BANK[id].roads) for id in NUMBERS) + sum(len(BANK[id].options) - 1 for id in CHOICES)
    assert len(BANK) >= 25
    assert roads >= 60


def test_each_exercise_stands_in_exactly_one_notebook():
    shown = [
        (id, path.stem[:2])
        for path in PATHS
        for cell in code_cells(read(path))
        for id in re.findall(r'AnswerBox\("(.*?)"\)', cell.source)
    ]
    assert shown == [(id, exercise.notebook) for id, exercise in BANK.items()]


def test_the_same_numbers_in_a_fresh_process():
    code = (
        "import sys; sys.path.insert(0, 'tests'); import fingerprints; "
        "print(fingerprints.of_learners(['  Zoë K. ', 17, 'learner 3']))"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert run.stdout.strip() == of_learners(["ZOE\u0308 K.", "17", "Learner 3"]), "trimmed, case-folded, composed"


def test_the_numbers_of_one_learner_are_pinned():
    """These may never change: keys that were handed out hold them."""
    numbers = numbers_for(BANK["2.3"], learner_key("Maja K."))
    first_eight = [hashlib.sha256(f"maja k.\n2.3\n0\n{name}".encode()).hexdigest()[:16] for name in vars(numbers)]
    riders, distance = (int(digits, 16) for digits in first_eight)
    assert (numbers.riders.magnitude, numbers.distance.magnitude) == (7 + riders % 5, 50 + distance % 31) == (9, 74)


def test_learners_differ():
    for id in NUMBERS:
        assert len({repr(posed) for posed in posed_to_all(id)}) >= 8, id
    for id in CHOICES:
        assert len({posed.right for posed in posed_to_all(id)}) >= 3, f"{id}: the right letter must move about"


@pytest.mark.parametrize("name", [None, 2.5, True, "x" * 81, "two\nlines", ["a"]])
def test_a_learner_is_a_name_or_a_number(name):
    with pytest.raises(ValueError, match="a learner"):
        learner_key(name)


def test_two_roads_to_one_number_are_both_named():
    posed = two_roads(False, False)
    reply = judge(posed, "4 m/s")
    assert reply.mistakes == ("first road", "second road")
    assert "“first road” or “second road”" in reply.says
    one = posed.exercise.roads[0].mistake
    narrow = NumberExercise(**{**vars(posed.exercise), "roads": (Road(one, lambda n: n.v),)})
    with pytest.raises(RuntimeError, match="widen its grids"):
        numbers_for(narrow, "anybody")


def test_slips_of_unit_and_point_are_seen_without_a_list():
    posed = Posed(BANK["2.3"])
    feet = posed.right.m_as("ft")
    assert "The number would be right in ft." in judge(posed, Q(feet, "m")).says
    assert "Look for a factor of 10." in judge(posed, posed.right * 10).says
    assert judge(posed, posed.right.to("ft")).state == "right", "any unit of the kind is taken"
    speed = Posed(BANK["1.2"])
    assert judge(speed, speed.right.to("mph")).state == "right"


def test_gaps_sorts_and_options_are_checked():
    parts = {"id": "9.9", "given": {}, "clues": ("a", "b"), "steps": lambda n: ()}
    right = Option("yes")
    with pytest.raises(ValueError, match=re.escape("Exercise 9.9: no number for the gaps ['speed']")):
        ChoiceExercise(**parts, sort="judge", text="At {speed}?", options=(right,))
    with pytest.raises(ValueError, match="sort must be one of compute, backwards, mistake, judge, but got 'guess'"):
        ChoiceExercise(**parts, sort="guess", text="?", options=(right,))
    with pytest.raises(ValueError, match="exactly one option must be right"):
        ChoiceExercise(**parts, sort="judge", text="?", options=(right, right))


def test_references_against_sums_done_by_hand():
    """Own arithmetic, with pencil and paper, on the printed numbers."""
    by_hand = {
        "0.1": 3600 * 2.5 / 7.5, "0.2": 180 / 8, "0.3": 18 / 54 * 3600, "1.1": 8 * 1609.344 / 3600,
        "1.2": 100 / 9.5 * 60, "1.3": 25 * 75 * 9.80665 / 1000, "1.7": 150 / 50 * 3600 / 1609.344, "2.1": 7.8 / 3,
        "2.2": 6 * 1609.344 / 3600 * 3.5, "2.3": 60 / 8, "2.4": 3 * 2.2 + 9 / 2.5, "2.5": 2.8 * 3.5,
        "3.1": 2 * 210 / 9, "3.2": 900 * 72 / 3600, "3.3": 2 * 385 / 17.5, "3.4": 150 / 15, "3.7": 14 * 4.5,
        "4.1": 3600 * 9 / 25, "4.2": 2 * 3600 / 6.5, "4.3": 2.7 * 3.6, "4.4": 3600 * 3 / 7.5,
        "5.1": (150**2 + 36**2) ** 0.5, "5.2": 3.2 * 1.0625**0.5, "5.3": 150 / 45, "5.4": 3 * 2**0.5 / 0.05 / 3,
        "6.1": 0.5 / 3**0.5, "6.3": 160, "6.4": 16, "6.5": 0.8,
        "6.2": 1350 * ((0.12 / 3) ** 2 + (0.4 / 8) ** 2) ** 0.5,
        "7.1": 3600 * 28 / (150 + 45), "7.2": (2.2 + 1.6) / 0.4, "7.3": (2 * 900 / 5 + 100) / (3600 * 4 / 1200),
        "7.4": 3600 * 2 * 2.2 / (2 * 600 / 80) * 76 / 80,
        "8.1": 82 * 9.80665 * (0.22 + 0.05) / (1 + 0.22**2) ** 0.5 / (2 * 0.3),
        "8.2": (0.3 * 42 + 0.7 * 82) * 9.80665 * (70 + 0.1 * 360) / 1000,
        "8.4": (1000 / 3600 * 80 * 9.80665 * (86 + 0.03 * 400) + 2400 * 2.2) / 0.85 / 1000,
        "8.6": 20 * 190 + 400 + (20 * 74 + 900) * 2.8 / 8,
        "8.7": (14 * 190 + 450) / (2.718281828459045 ** (0.24 * 3.141592653589793) / 1.25 - 1),
        "9.1": 3600 * (0.85 * 15000 - 400 * 2.8) / 84000, "9.3": 8 * 2 / 8, "9.4": 2.8 / 0.5, "9.5": 3600 / 3 / 100,
        "9.7": 3600 / (2.5 + 3.2 * 2.718281828459045 ** (-2.5 / 3.2)),
        "10.1": 3600 / (0.5 * 2.6 + 0.3 * 3.8 + 0.2 * 3.3), "10.2": 1125 * 0.92, "10.3": 6 * (35 + 46) * 1000 / 3600,
        "12.1": 228_000 * 0.04 / (1 - 1.04**-25) + 12_000 * 0.04, "12.2": (18_200 + 2 * 16 * 350 + 12_500) / 25_000,
        "12.3": 20 * 12 * 4 + 6 * 300 * 0.18, "12.4": (26_000 - 0.06 * 40_000) / (0.9 - 0.06),
        "12.6": 28 * 78 / (3_300 * 0.3048),
        "10.5": (1.96 * 0.6 / 0.05) ** 2 / 16, "10.6": 460 * 3600 / (3600 - 4 * 50),
        "11.1": 20 + 600 * 20 / 60 / 400 * 60, "11.2": 60 / 2 * 7 / 60, "11.4": 3600 / 3.2,
        "11.5": 850 * (2.5 * 60 + 290 + 180) / 3600, "11.6": 50 * 0.3 * 3600 / 100,
        "0.5": 1200 * 24.4 / 0.3048, "1.4": 0.4 * 3600 - 3600 * 2.9 / 8.2, "4.6": 500 * 400 * 0.2 / 1.04**0.5 / 0.3048,
    }  # fmt: skip
    assert set(by_hand) == set(NUMBERS)
    for id, number in by_hand.items():
        assert Posed(BANK[id]).right.magnitude == pytest.approx(number, rel=1e-9), id


AT_ONCE = ["0.2", "0.4", "1.7", "3.1", "3.4", "3.5", "3.6"]  # right is L / s or L / v: no start from rest in it


@pytest.mark.parametrize("id", AT_ONCE)
def test_an_answer_without_a_start_from_rest_says_so_in_its_question(id):
    assert "the speed of the rope from the first metre" in BANK[id].text
    assert repr(Posed(BANK[id])).count("first metre") == 1


def test_laps_without_a_start_are_timed_from_a_post():
    posed = Posed(BANK["5.3"])
    assert "from a post where riders have the speed of the rope already" in repr(posed)
    assert "grab" not in repr(posed) + " ".join(BANK["5.3"].clues), "from the grab a ride starts at rest"
    assert "At the speed of the rope" in BANK["5.6"].steps(Posed(BANK["5.6"]).numbers)[0]


def test_printed_mistakes_are_the_mistakes_they_are_said_to_be():
    for name in ("", "anybody"):
        n = Posed(BANK["1.5"], name).numbers
        assert n.printed.magnitude == pytest.approx(n.line_speed.magnitude * 3600 / 5280)
        n = Posed(BANK["3.5"], name).numbers
        assert n.printed.magnitude == (n.ridden_length / n.spacing).m_as("") + 1
        n = Posed(BANK["0.6"], name).numbers
        assert n.printed.m_as("pph") * 60 == pytest.approx(hourly_capacity(n.line_speed, n.spacing).m_as("pph"))
        n = Posed(BANK["2.7"], name).numbers
        assert n.printed.m_as("s") == pytest.approx(headway(n.line_speed, n.gap).m_as("s"))
        n = Posed(BANK["4.7"], name).numbers
        assert n.printed.m_as("pph") == pytest.approx(3600 * n.riders.magnitude / n.time.m_as("s"))
        n = Posed(BANK["1.6"], name).numbers
        assert n.motor_power < n.needed < n.as_hp, "short as metric horsepower, enough as the other one"
        n = Posed(BANK["7.5"], name).numbers
        cabins = 3600 / n.interval.m_as("s")
        assert n.spacing.m_as("m") / n.line_speed.m_as("m/s") == pytest.approx(n.interval.m_as("s")), "these agree"
        assert n.printed.m_as("pph") > 1.1 * cabins * n.persons.magnitude, "and this does not follow"
        assert n.printed.m_as("pph") == pytest.approx(cabins * n.needed_persons.m_as("person"))
        assert n.printed.m_as("pph") == pytest.approx(3600 * n.persons.magnitude / n.needed_interval.m_as("s"))
        n = Posed(BANK["8.3"], name).numbers
        for_riders = 745.69987158227 * n.motor_power.magnitude * n.efficiency.magnitude / 100
        for_riders -= n.idle_drag.magnitude * n.line_speed.magnitude
        pulled = n.pull.magnitude * n.ridden_length.magnitude
        assert n.printed.m_as("pph") == pytest.approx(3600 * for_riders / pulled)
        near = [figure.m_as("pph") / n.printed.m_as("pph") for figure in (n.fair, n.no_idle, n.divided, n.as_kilowatts)]
        assert min(abs(ratio - 1) for ratio in near) > 0.02, "no other mistake prints the same figure"
        n = Posed(BANK["9.6"], name).numbers
        assert n.printed.m_as("pph") * 3 == pytest.approx(sum(x.m_as("pph") for x in (n.ideal, n.loading, n.motor)))
        assert n.smallest < n.ideal
        n = Posed(BANK["9.1"], name).numbers
        assert n.by_motor < min(n.by_spacing, n.by_loading), "the worked solution names the motor"
        n = Posed(BANK["9.2"], name).numbers
        assert n.loading < n.ideal < n.fast
        n = Posed(BANK["9.4"], name).numbers
        assert n.by_unload < n.by_spacing < n.by_loading
        n = Posed(BANK["12.2"], name).numbers
        staff = n.posts.magnitude * n.wage.magnitude * n.running_hours.magnitude
        total = n.recovery.magnitude + staff + n.bills.magnitude
        assert n.printed.magnitude == pytest.approx(total / (n.hourly_capacity.magnitude * n.running_hours.magnitude))
        assert 3 * n.printed.magnitude < total / n.rides.magnitude, "the leaflet is far too cheap"
        n = Posed(BANK["10.4"], name).numbers
        assert n.by_thirty.m_as("pph") == 30 * n.counted.m_as("person")
        assert n.on_average.m_as("person") == pytest.approx(n.governed.m_as("pph") / 30)
        assert n.on_average < n.counted < n.most
        n = Posed(BANK["11.2"], name).numbers
        assert n.printed.m_as("minute") * 60 == pytest.approx(n.people.magnitude * n.interval.m_as("s"))


@pytest.mark.parametrize("id", BANK)
def test_a_grid_ends_on_one_of_its_steps(id):
    """Else its last value is not the one that is written."""
    for name, drawn in BANK[id].given.items():
        steps = (drawn.high - drawn.low) / drawn.step
        assert steps == pytest.approx(round(steps), abs=1e-6), name
