"""A line from whatever is known of it: every set of givens, published rows, figures to spare, and the messages.

The second opinion on what follows is the rank of the five equations beside the givens, written out here; the true
values of the made-up lines come from the formulas of the package.
"""

import ast
import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages
from places import ROOT

from liftcalc import (
    Q,
    UnitError,
    carriers_on_loop,
    headway,
    hourly_capacity,
    hourly_capacity_from_interval,
    persons_on_line,
    ride_time,
    show,
    spacing_for_headway,
)
from liftcalc.lifts.givens import LINE_QUANTITIES, DisagreementError, NotKnownError, solve_line

NAMES = tuple(LINE_QUANTITIES)
EQUATIONS = [  # powers whose product is a fixed number: s / (v t), T v / L, N s / (n L), C t / n, K s / D
    {"spacing": 1, "line_speed": -1, "interval": -1},
    {"ride_time": 1, "line_speed": 1, "ridden_length": -1},
    {"riders_on_line": 1, "spacing": 1, "persons_per_carrier": -1, "ridden_length": -1},
    {"hourly_capacity": 1, "interval": 1, "persons_per_carrier": -1},
    {"carriers_on_loop": 1, "spacing": 1, "sheave_distance": -1},
]
MATRIX = np.array([[equation.get(name, 0) for name in NAMES] for equation in EQUATIONS], dtype=float)
MASKS = np.arange(2 ** len(NAMES))
IN_MASK = (MASKS[:, None] >> np.arange(len(NAMES))) & 1  # a row a set of givens, a column a quantity


UNITS = {name: Q(1, quantity.unit).units for name, quantity in LINE_QUANTITIES.items()}


def ranks(given_rows):
    """Return the rank of the five equations beside the givens, for each row of ones and zeros."""
    stacked = np.concatenate(
        [np.broadcast_to(MATRIX, (len(given_rows), *MATRIX.shape)), given_rows[:, None, :] * np.eye(len(NAMES))], axis=1
    )
    return np.linalg.matrix_rank(stacked)


RANK = ranks(IN_MASK)
KNOWN = np.stack([RANK[MASKS | (1 << place)] == RANK for place in range(len(NAMES))], axis=1)  # what follows, by set


def true_line(seed, persons=None):
    """Return a consistent line, made up from a seed, by the formulas of the package."""
    draw = np.random.default_rng(seed)
    speed, apart = Q(draw.uniform(0.4, 6), "m/s"), Q(draw.uniform(2, 60), "m")
    ridden, sheaves = Q(draw.uniform(50, 2000), "m"), Q(draw.uniform(60, 2100), "m")
    people = Q(persons or int(draw.integers(2, 12)), "person")
    return {
        "line_speed": speed,
        "spacing": apart,
        "interval": headway(speed, apart),
        "persons_per_carrier": people,
        "carriers_on_loop": carriers_on_loop(sheave_distance=sheaves, spacing=apart),
        "sheave_distance": sheaves,
        "ridden_length": ridden,
        "ride_time": ride_time(ridden, speed),
        "riders_on_line": persons_on_line(ridden_length=ridden, spacing=apart, persons_per_carrier=people),
        "hourly_capacity": hourly_capacity(speed, apart, people),
    }


def mask_of(names):
    return sum(1 << NAMES.index(name) for name in names)


def spare_in(names):
    """Return how many figures there are to spare, by the second opinion."""
    return len(names) - (int(RANK[mask_of(names)]) - len(EQUATIONS))


def part_of(line, names):
    """Return the givens of a line; persons per carrier is left open where it is not among them."""
    return {"persons_per_carrier": None} | {name: line[name] for name in names}


def assert_solved(solution, line, known):
    assert set(solution.values) == known
    assert set(solution.not_known) == set(NAMES) - known
    for name in known:
        value = solution.of(name)
        assert value.units == UNITS[name]
        assert value.m_as(line[name].units) == pytest.approx(line[name].magnitude, rel=1e-9)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_every_set_of_givens_gives_what_the_rank_says_and_the_true_values(seed):
    line = true_line(seed)
    tried = 0
    for size in range(1, len(NAMES) + 1):
        for names in itertools.combinations(NAMES, size):
            known = {name for name, follows in zip(NAMES, KNOWN[mask_of(names)], strict=True) if follows}
            solution = solve_line(**part_of(line, names))
            assert_solved(solution, line, known)
            assert solution.given == names
            assert set(solution.follows) == known - set(names)
            assert solution.assumed == ()
            assert solution.spare == spare_in(names)
            assert solution.apart < 1e-9
            tried += 1
    assert tried == 1023


@pytest.mark.parametrize("seed", [4])
def test_one_person_a_carrier_unless_given(seed):
    line = true_line(seed, persons=1)
    others = [name for name in NAMES if name != "persons_per_carrier"]
    for size in range(1, 10):
        for names in itertools.combinations(others, size):
            mask = mask_of([*names, "persons_per_carrier"])
            solution = solve_line(**{name: line[name] for name in names})
            assert_solved(solution, line, {name for name, yes in zip(NAMES, KNOWN[mask], strict=True) if yes})
            assert solution.assumed == ("persons_per_carrier",)
            assert "persons_per_carrier" not in solution.given + solution.follows


def test_the_choices_are_all_the_least_sets_that_would_give_a_quantity():
    line = true_line(6)
    for names in itertools.chain.from_iterable(itertools.combinations(NAMES, size) for size in range(1, 5)):
        mask, solution = mask_of(names), solve_line(**part_of(line, names))
        missing = [place for place in range(len(NAMES)) if not KNOWN[mask, place]]
        for place in missing:
            others = [other for other in missing if other != place]
            least = []
            for size in range(1, len(others) + 1):
                for more in itertools.combinations(others, size):
                    new = sum(1 << other for other in more)
                    if KNOWN[mask | new, place] and not any(set(choice) <= set(more) for choice in least):
                        least.append(more)
            choices = solution.choices(NAMES[place])
            assert {frozenset(choice) for choice in choices} == {frozenset(NAMES[i] for i in more) for more in least}
            assert [len(choice) for choice in choices] == sorted(len(choice) for choice in choices)
        for place in set(range(len(NAMES))) - set(missing):
            assert solution.choices(NAMES[place]) == ()


def persons(number):
    return Q(number, "person")


SAM_2018 = "Know Your Capacity, SAM (Ski Area Management), July 2018"
WIKI = "community wiki page Ski lift capacity: detachable vs fixed grip (weak source, exact arithmetic)"
ASPEN = "USDA Forest Service, Aspen Highlands Ski Area Final EIS, April 1997, Summary, Table 3"
LA_PAZ = "operator's and maker's figures for an urban gondola in La Paz"
QUAD, FIXED = {"persons_per_carrier": persons(4), "interval": Q(6, "s")}, Q(400, "ft/minute")
GONDOLA = {"line_speed": Q(5, "m/s"), "interval": Q(12, "s"), "persons_per_carrier": persons(10)}
THUNDERBOWL = {
    "ridden_length": Q(4000, "ft"),
    "ride_time": Q(4, "minute"),
    "hourly_capacity": Q(1600, "pph"),
    "persons_per_carrier": persons(4),
}
MAROON = {
    "ridden_length": Q(3900, "ft"),
    "ride_time": Q(8, "minute"),
    "hourly_capacity": Q(1200, "pph"),
    "persons_per_carrier": persons(2),
}
PUBLISHED = [  # givens, what follows as published, source
    (QUAD, {"hourly_capacity": Q(2400, "pph")}, f"{SAM_2018}: quad, 6 s"),
    (QUAD | {"interval": Q(8, "s")}, {"hourly_capacity": Q(1800, "pph")}, f"{SAM_2018}: quad, 8 s"),
    (
        {"hourly_capacity": Q(2400, "pph"), "interval": Q(6, "s"), "persons_per_carrier": None},
        {"persons_per_carrier": persons(4)},
        f"{SAM_2018}: quad, 6 s, seats from the figures",
    ),
    (QUAD | {"line_speed": FIXED}, {"spacing": Q(40, "ft"), "hourly_capacity": Q(2400, "pph")}, f"{WIKI}: fixed"),
    (
        {"spacing": Q(40, "ft"), "line_speed": FIXED, "persons_per_carrier": persons(4)},
        {"interval": Q(6, "s"), "hourly_capacity": Q(2400, "pph")},
        f"{WIKI}: fixed, from the spacing",
    ),
    (
        QUAD | {"line_speed": Q(1200, "ft/minute")},
        {"spacing": Q(120, "ft"), "hourly_capacity": Q(2400, "pph")},
        f"{WIKI}: three times the speed, the same capacity",
    ),
    (GONDOLA, {"hourly_capacity": Q(3000, "pph"), "spacing": Q(60, "m")}, LA_PAZ),
    (THUNDERBOWL, {"interval": Q(9, "s"), "line_speed": Q(1000, "ft/minute")}, f"{ASPEN}, Thunderbowl"),
    (MAROON, {"interval": Q(6, "s"), "line_speed": Q(487.5, "ft/minute")}, f"{ASPEN}, Maroon Bowl"),
]


@pytest.mark.parametrize(("givens", "published", "source"), PUBLISHED, ids=[case[-1] for case in PUBLISHED])
def test_published_rows(givens, published, source):
    solution = solve_line(**givens)
    for name, value in published.items():
        assert solution.of(name).m_as(value.units) == pytest.approx(value.magnitude, rel=1e-12)
    assert solution.spare == 0


def test_thunderbowl_needs_another_reading_for_the_carriers():
    solution = solve_line(**THUNDERBOWL)
    assert solution.of("riders_on_line").m_as("person") == pytest.approx(1600 * 240 / 3600)
    assert solution.not_known == ("carriers_on_loop", "sheave_distance")
    refuses(
        lambda: solution.of("carriers_on_loop"),
        "of: carriers_on_loop does not follow from persons_per_carrier, ridden_length, ride_time and hourly_capacity. "
        "To know it, give sheave_distance.",
        NotKnownError,
    )


MISTAKES = [  # givens, name, printed, what the others make it, apart, source
    (
        {"persons_per_carrier": persons(28), "interval": Q(49, "s"), "hourly_capacity": Q(2500, "pph")},
        "hourly_capacity is 2,500 pph, but interval and persons_per_carrier make it 2,057 pph",
        "disagree by 21.5 %",
        2500 / (3600 * 28 / 49) - 1,
        "encyclopedia copies: 28 persons per carrier, one per 49 s, printed as 2,500 pph",
    ),
    (
        {"spacing": Q(300, "m"), "interval": Q(80, "s"), "line_speed": Q(6, "m/s")},
        "line_speed is 6.00 m/s, but spacing and interval make it 3.75 m/s",
        "disagree by 60 %",
        6 / 3.75 - 1,
        "operator's page: cabins 300 m apart, 80 s apart, up to 6 m/s",
    ),
]


@pytest.mark.parametrize(
    ("givens", "numbers", "words", "apart", "source"), MISTAKES, ids=[case[-1] for case in MISTAKES]
)
def test_published_rows_with_a_mistake(givens, numbers, words, apart, source):
    with pytest.raises(DisagreementError) as caught:
        solve_line(**givens)
    text = str(caught.value)
    assert numbers in text
    assert words in text
    assert "only the set is known to disagree" in text
    assert caught.value.apart == pytest.approx(apart, rel=1e-12)
    assert caught.value.spare == 1
    assert set(caught.value.suspects) == set(givens)


def test_without_the_printed_figure_the_mistake_is_gone():
    givens = {name: value for name, value in MISTAKES[0][0].items() if name != "hourly_capacity"}
    assert show(solve_line(**givens).of("hourly_capacity")) == "2,057 pph"


def fits_together(line, names):
    """Say whether the numbers satisfy the equations exactly: the second opinion, by a residual."""
    truth = np.array([math.log(value.magnitude) for value in true_line(7).values()])
    rows = np.concatenate([MATRIX, np.eye(len(NAMES))[[NAMES.index(name) for name in names]]])
    wanted = np.concatenate([MATRIX @ truth, [math.log(line[name].magnitude) for name in names]])
    found = np.linalg.lstsq(rows, wanted, rcond=None)[0]
    return float(np.abs(rows @ found - wanted).max()) < 1e-9


@pytest.mark.parametrize("spare", [1, 2, 3])
def test_the_suspects_are_those_whose_removal_helps(spare):
    truth = true_line(7)
    sets = [names for size in range(2, 10) for names in itertools.combinations(NAMES, size) if spare_in(names) == spare]
    chosen = np.random.default_rng(8).choice(len(sets), size=min(24, len(sets)), replace=False)
    seen = {"one": 0, "several": 0}
    for names in (sets[place] for place in chosen):
        for wrong in names:
            line = truth | {wrong: 1.2 * truth[wrong]}
            if spare_in([name for name in names if name != wrong]) == spare:
                assert solve_line(**part_of(line, names)).spare == spare  # nothing checks this one
                continue
            helpful = {name for name in names if fits_together(line, [other for other in names if other != name])}
            with pytest.raises(DisagreementError) as caught:
                solve_line(**part_of(line, names))
            error, text = caught.value, str(caught.value)
            assert set(error.suspects) == helpful
            assert wrong in helpful
            assert error.spare == spare
            assert error.apart == pytest.approx(0.2, rel=1e-9)
            assert "disagree by 20 %, and 1 % is allowed" in text
            named = f"So {wrong} is the one that is wrong, if only one is." in text
            assert named == (spare > 1 and helpful == {wrong})
            assert ("nobody can say" in text) != named
            seen["one" if named else "several"] += 1
    assert seen["several"] > 0
    assert (seen["one"] > 0) == (spare > 1)


def test_two_wrong_figures_name_nobody():
    line = true_line(9)
    givens = {name: line[name] for name in ("line_speed", "spacing", "interval", "persons_per_carrier")}
    givens |= {"hourly_capacity": 1.3 * line["hourly_capacity"], "line_speed": 1.2 * line["line_speed"]}
    givens |= {name: line[name] for name in ("ridden_length", "riders_on_line", "ride_time")}
    error = refuses(
        lambda: solve_line(**givens),
        "solve_line: the givens disagree by 30 %, and 1 % is allowed: hourly_capacity is 10,595 pph, but interval and "
        "persons_per_carrier make it 8,150 pph. There are 4 figures to spare, but no single one, left out, brings the "
        "rest into agreement: at least two are wrong. Measure again. A count and a figure that is intended are of two "
        "levels, and need not agree.",
        DisagreementError,
    )
    assert error.suspects == ()


def test_the_culprit_is_told_with_both_numbers_in_the_unit_that_came():
    tow = {
        "line_speed": Q(7.6, "mph"),
        "spacing": Q(22.3, "ft"),
        "interval": Q(2, "s"),
        "hourly_capacity": Q(1800, "pph"),
    }
    assert solve_line(**tow).spare == 2
    tow |= {"line_speed": Q(9.5, "mph")}
    with pytest.raises(DisagreementError) as caught:
        solve_line(**tow)
    made = spacing_for_headway(Q(1, "m/s"), Q(2, "s")).m_as("ft")  # feet in two seconds at 1 m/s
    assert show(Q(22.3 / made, "m/s"), "mph") == "7.6 mph"
    assert set(caught.value.suspects) == {"line_speed", "spacing"}
    assert "line_speed: 9.5 mph, or 7.6 mph; spacing: 22.3 ft, or 27.9 ft" in str(caught.value)
    with pytest.raises(DisagreementError) as caught:
        solve_line(**tow, ridden_length=Q(500, "ft"), ride_time=Q(44.9, "s"))
    assert caught.value.suspects == ("line_speed",)
    assert "line_speed is 9.5 mph, but the others make it 7.6 mph. There are 3 figures to spare" in str(caught.value)


def test_one_person_assumed_can_be_what_is_wrong():
    with pytest.raises(DisagreementError) as caught:
        solve_line(interval=Q(6, "s"), hourly_capacity=Q(2400, "pph"))
    text = str(caught.value)
    assert "disagree by 4.00 times" in text
    assert "persons_per_carrier: 1 person, or 4 persons" in text
    assert "was not given and was taken as 1 person" in text
    seats = solve_line(interval=Q(6, "s"), hourly_capacity=Q(2400, "pph"), persons_per_carrier=None)
    assert show(seats.of("persons_per_carrier")) == "4 persons"


def test_the_tolerance_is_the_border():
    def givens(part):
        return {"line_speed": Q(3, "m/s"), "interval": Q(2, "s"), "spacing": Q(6 * (1 + part), "m")}

    assert solve_line(**givens(0.0099)).apart == pytest.approx(0.0099)
    with pytest.raises(DisagreementError):
        solve_line(**givens(0.0101))
    assert solve_line(**givens(0.049), tolerance=0.05).apart == pytest.approx(0.049)
    refuses(
        lambda: solve_line(**givens(0.002), tolerance=0.001),
        "solve_line: the givens disagree by 0.2 %, and 0.1 % is allowed: line_speed is 3.000 m/s, but spacing and "
        "interval make it 3.006 m/s. There is one figure to spare, so only the set is known to disagree: nobody can "
        "say from these figures which one is wrong. Each, as given and as the others make it: line_speed: 3.000 m/s, "
        "or 3.006 m/s; spacing: 6.012 m, or 6.000 m; interval: 2.000 s, or 2.004 s. Measure one again, or leave one "
        "out.",
        DisagreementError,
    )


def test_readings_that_agree_are_fitted_by_least_squares_and_said_to():
    off = math.log(1.006)
    solution = solve_line(line_speed=Q(3, "m/s"), interval=Q(2, "s"), spacing=Q(6 * 1.006, "m"))
    assert solution.of("line_speed").m_as("m/s") == pytest.approx(3 * math.exp(off / 3), rel=1e-12)
    assert solution.of("interval").m_as("s") == pytest.approx(2 * math.exp(off / 3), rel=1e-12)
    assert solution.of("spacing").m_as("m") == pytest.approx(6.036 * math.exp(-off / 3), rel=1e-12)
    assert solution.spare == 1
    assert solution.note == (
        "One figure to spare: the givens agree to 0.6 %, 1 part in 167; readings are fitted, counts held as given."
    )
    assert ("spacing", "s", "6.0 m", "given as 6.036 m, fitted to 6.024 m") in solution.table().rows


def test_a_count_is_held_and_the_readings_share_the_difference():
    solution = solve_line(persons_per_carrier=persons(4), interval=Q(6, "s"), hourly_capacity=Q(2400 * 1.008, "pph"))
    assert solution.of("persons_per_carrier").m_as("person") == pytest.approx(4, rel=1e-12)
    assert solution.of("hourly_capacity").m_as("pph") == pytest.approx(2400 * math.sqrt(1.008), rel=1e-12)
    assert solution.of("interval").m_as("s") == pytest.approx(6 / math.sqrt(1.008), rel=1e-12)
    fitted = hourly_capacity_from_interval(solution.of("interval"), persons(4)).m_as("pph")
    assert fitted == pytest.approx(solution.of("hourly_capacity").m_as("pph"), rel=1e-12)
    loop = solve_line(carriers_on_loop=Q(60, ""), spacing=Q(14, "m"), sheave_distance=Q(421, "m"))
    assert loop.of("carriers_on_loop").m_as("") == pytest.approx(60, rel=1e-12)
    assert loop.of("sheave_distance").m_as("m") == pytest.approx(math.sqrt(420 * 421), rel=1e-12)


def test_figures_to_spare_that_fit_exactly():
    line = true_line(10)
    assert solve_line(**line).note == "5 figures to spare: the givens agree exactly."
    assert solve_line(line_speed=Q(3, "m/s")).note == "No figure to spare: nothing checks the givens."


SCALES = {  # powers of the units of length, time and persons
    "line_speed": (1, -1, 0), "spacing": (1, 0, 0), "interval": (0, 1, 0), "persons_per_carrier": (0, 0, 1),
    "carriers_on_loop": (0, 0, 0), "sheave_distance": (1, 0, 0), "ridden_length": (1, 0, 0), "ride_time": (0, 1, 0),
    "riders_on_line": (0, 0, 1), "hourly_capacity": (0, -1, 1),
}  # fmt: skip


@given(
    names=st.sets(st.sampled_from(NAMES), min_size=1),
    noise=st.lists(st.floats(-0.0005, 0.0005), min_size=len(NAMES), max_size=len(NAMES)),
    scales=st.tuples(*[st.floats(0.2, 5)] * 3),
    seed=st.integers(0, 1000),
)
def test_a_line_drawn_to_another_scale_has_a_solution_to_that_scale(names, noise, scales, seed):
    line = true_line(seed)
    near = {name: (1 + noise[place]) * line[name] for place, name in enumerate(NAMES)}
    stretch = {name: math.prod(s**power for s, power in zip(scales, SCALES[name], strict=True)) for name in NAMES}
    base = solve_line(**part_of(near, names))
    scaled = solve_line(**part_of({name: stretch[name] * near[name] for name in NAMES}, names))
    assert set(scaled.values) == set(base.values) >= names
    assert scaled.apart == pytest.approx(base.apart, abs=1e-9)
    for name, value in base.values.items():
        assert scaled.of(name).magnitude == pytest.approx(stretch[name] * value.magnitude, rel=1e-9)


@given(seed=st.integers(0, 1000), noise=st.lists(st.floats(-0.0005, 0.0005), min_size=10, max_size=10))
def test_a_fitted_line_satisfies_every_formula(seed, noise):
    line = true_line(seed)
    solution = solve_line(**{name: (1 + noise[place]) * line[name] for place, name in enumerate(NAMES)})
    of = solution.of
    people = of("persons_per_carrier")
    pairs = [
        (headway(of("line_speed"), of("spacing")), "interval"),
        (ride_time(of("ridden_length"), of("line_speed")), "ride_time"),
        (hourly_capacity_from_interval(of("interval"), people), "hourly_capacity"),
        (carriers_on_loop(sheave_distance=of("sheave_distance"), spacing=of("spacing")), "carriers_on_loop"),
        (
            persons_on_line(ridden_length=of("ridden_length"), spacing=of("spacing"), persons_per_carrier=people),
            "riders_on_line",
        ),
    ]
    for value, name in pairs:
        assert value.m_as(LINE_QUANTITIES[name].unit) == pytest.approx(of(name).magnitude, rel=1e-9)


LIST = (
    "May be given: line_speed=Q(3.4, 'm/s'), spacing=Q(6.8, 'm'), interval=Q(2, 's'), "
    "persons_per_carrier=Q(2, 'person'), carriers_on_loop=Q(60, ''), sheave_distance=Q(160, 'm'), "
    "ridden_length=Q(150, 'm'), ride_time=Q(44, 's'), riders_on_line=Q(22, 'person'), "
    "hourly_capacity=Q(1800, 'person/hour')."
)
NO_CARRIERS = LIST.replace(" carriers_on_loop=Q(60, ''),", "")
TOLERANCE = "solve_line: tolerance must be between 0 and 1, but got {}. Write 0.01 for 1 %."
SPEED = Q(3.4, "m/s")
MESSAGES = [
    ({}, f"solve_line: nothing is given. {LIST}"),
    ({"persons_per_carrier": None}, f"solve_line: nothing is given. {LIST}"),
    ({"speed": SPEED}, f"solve_line: 'speed' is no quantity of a line. Is 'line_speed' meant? {LIST}"),
    ({"weather": SPEED}, f"solve_line: 'weather' is no quantity of a line. {LIST}"),
    (
        {"carriers_on_loop": Q(60, ""), "has_carriers": False},
        f"solve_line: 'carriers_on_loop' is no quantity of a line without carriers. "
        f"Is 'riders_on_line' meant? {NO_CARRIERS}",
    ),
    (
        {"line_speed": 3.4},
        "solve_line: line_speed needs a unit, but got the bare value 3.4. Write Q(3.4, 'm/s').",
        UnitError,
    ),
    (
        {"spacing": "6.8 m"},
        "solve_line: spacing needs a unit, but got the bare value '6.8 m'. Write Q(6.8, 'm').",
        UnitError,
    ),
    ({"spacing": True}, "solve_line: spacing needs a unit, but got the bare value True. Write Q(6.8, 'm').", UnitError),
    ({"spacing": None}, "solve_line: spacing needs a unit, but got the bare value None. Write Q(6.8, 'm').", UnitError),
    (
        {"line_speed": SPEED, "interval": Q(6.8, "m")},
        "solve_line: interval must be a time, but got a length: 6.8 m. Write for example Q(2, 's').",
        UnitError,
    ),
    (
        {"hourly_capacity": Q(600, "1/hour")},
        "solve_line: hourly_capacity must be an hourly capacity, but got a quantity of another kind: 600 an hour. "
        "Write for example Q(1800, 'person/hour').",
        UnitError,
    ),
    (
        {"ride_time": Q(0, "s")},
        "solve_line: ride_time must be greater than zero, but got 0 s. Write for example Q(44, 's').",
    ),
    (
        {"persons_per_carrier": Q(-2, "person")},
        "solve_line: persons_per_carrier must be greater than zero, but got -2 persons. "
        "Write for example Q(2, 'person').",
    ),
    (
        {"spacing": Q(float("nan"), "m")},
        "solve_line: spacing must be a finite number, but got nan m. Write for example Q(6.8, 'm').",
    ),
    (
        {"spacing": Q([6.8, 7.0], "m")},
        "solve_line: spacing must be one value, but got 2 values. Write for example Q(6.8, 'm').",
    ),
    (
        {"interval": Q(1e-200, "s"), "spacing": Q(1e100, "m")},
        "solve_line: line_speed comes out as no finite number. Check the size of the givens.",
    ),
    ({"line_speed": SPEED, "tolerance": 1}, TOLERANCE.format("1")),
    ({"line_speed": SPEED, "tolerance": 0}, TOLERANCE.format("0")),
    ({"line_speed": SPEED, "tolerance": "1 %"}, TOLERANCE.format("1 %")),
    ({"line_speed": SPEED, "tolerance": Q(1, "m")}, TOLERANCE.format("1 meter")),
    ({"line_speed": SPEED, "has_carriers": "no"}, "solve_line: has_carriers must be True or False, but got 'no'."),
]


@table_of_messages(MESSAGES, "arguments")
def test_messages_of_bad_givens(arguments, message, kind):
    refuses(lambda: solve_line(**arguments), message, kind)


TOO_FEW = [
    (
        {"line_speed": SPEED, "spacing": Q(6.8, "m")},
        "riders_on_line",
        "of: riders_on_line does not follow from line_speed and spacing (and persons_per_carrier taken as 1 person). "
        "To know it, give ridden_length, or ride_time.",
    ),
    (
        {"hourly_capacity": Q(1800, "pph"), "persons_per_carrier": persons(1)},
        "riders_on_line",
        "of: riders_on_line does not follow from persons_per_carrier and hourly_capacity. To know it, give ride_time, "
        "or line_speed and ridden_length, or spacing and ridden_length, or carriers_on_loop, sheave_distance and "
        "ridden_length.",
    ),
    (
        {"ridden_length": Q(150, "m"), "persons_per_carrier": None, "has_carriers": False},
        "hourly_capacity",
        "of: hourly_capacity does not follow from ridden_length. To know it, give line_speed and "
        "riders_on_line, or interval and persons_per_carrier, or ride_time and riders_on_line, or line_speed, spacing "
        "and persons_per_carrier, or spacing, interval and riders_on_line, or spacing, persons_per_carrier and "
        "ride_time.",
    ),
    (
        {"line_speed": SPEED, "has_carriers": False},
        "sheave_distance",
        "of: sheave_distance does not follow from line_speed (and persons_per_carrier taken as 1 person). To know it, "
        "give sheave_distance.",
    ),
]


@table_of_messages(TOO_FEW, "arguments", "name", kind=NotKnownError)
def test_messages_of_too_few_givens(arguments, name, message, kind):
    solution = solve_line(**arguments)
    refuses(lambda: solution.of(name), message, kind)


def test_the_table_names_three_choices_at_most_and_the_error_all_of_them():
    solution = solve_line(ridden_length=Q(150, "m"), persons_per_carrier=None)
    choices = solution.choices("hourly_capacity")
    assert len(choices) > 3
    with pytest.raises(NotKnownError) as caught:
        solution.of("hourly_capacity")
    assert str(caught.value).count(", or ") == len(choices) - 1
    cells = {row[0]: row[3] for row in solution.table().rows}
    assert cells["hourly capacity"] == (
        "give line_speed and riders_on_line, or interval and persons_per_carrier, or ride_time and riders_on_line"
    )


def test_asking_for_an_unknown_name():
    solution = solve_line(line_speed=SPEED)
    refuses(
        lambda: solution.of("ridetime"),
        f"of: 'ridetime' is no quantity of this line. Is 'ride_time' meant? Write one of {', '.join(NAMES)}.",
    )
    tow = solve_line(line_speed=SPEED, sheave_distance=Q(160, "m"), spacing=Q(6.8, "m"), has_carriers=False)
    assert "carriers_on_loop" not in tow.values
    others = ", ".join(name for name in NAMES if name != "carriers_on_loop")
    refuses(
        lambda: tow.of("carriers_on_loop"),
        f"of: 'carriers_on_loop' is no quantity of this line. Is 'riders_on_line' meant? Write one of {others}.",
    )


def test_a_known_capacity_and_unknown_riders_stand_in_the_table():
    solution = solve_line(line_speed=Q(3.4, "m/s"), spacing=Q(22, "ft"))
    rows = {row[0]: row[1:] for row in solution.table().rows}
    assert rows["hourly capacity"] == ("C", "1,825 pph", "follows")
    assert rows["riders on the line, on average"] == ("N", "not known", "give ridden_length, or ride_time")
    assert rows["line speed"] == ("v", "3.40 m/s", "given")
    assert rows["spacing"] == ("s", "6.7 m", "given as 22.0 ft")
    assert rows["persons per carrier"] == ("n", "1 person", "not given, taken as 1 person")
    assert len(rows) == 10
    assert solution.table().caption == "The line, from 2 givens. No figure to spare: nothing checks the givens."
    assert "1,825 pph" in repr(solution)
    assert "<table>" in solution._repr_html_()


def test_a_solution_cannot_be_changed_and_leaves_the_givens_alone():
    line = {"line_speed": Q(7.6, "mph"), "spacing": Q(22, "ft")}
    before = {name: str(value) for name, value in line.items()}
    solution = solve_line(**line)
    assert {name: str(value) for name, value in line.items()} == before
    with pytest.raises(AttributeError):
        solution.spare = 3
    with pytest.raises(TypeError):
        solution.values["spacing"] = Q(1, "m")


def test_the_module_stands_beside_the_lifts():
    path = ROOT / "liftcalc" / "lifts" / "givens.py"
    tree = ast.parse(path.read_text(encoding="utf-8"))
    mine = {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and "liftcalc" in node.module}
    allowed = {"units", "constants", "quantity_text", "tables", "levels", "lifts.line_quantities"}
    assert mine
    assert {name.removeprefix("liftcalc.") for name in mine} <= allowed
