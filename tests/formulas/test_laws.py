"""Laws that hold whatever the numbers: arrays, proportion, round trips, and routes that must agree."""

import inspect
import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import liftcalc
from liftcalc import Q, line_speed_from_ride_time, ride_time_from_rest, ride_time_rest_to_rest, ureg
from liftcalc.units import FORMULAS

speeds = st.floats(0.2, 8)
lengths = st.floats(1, 900)
gaps = st.floats(1, 60)
times = st.floats(0.5, 3000)
persons = st.integers(1, 12)


def pick(argument, unit, number):
    """Return a sensible plain value for an argument; the number is between 0 and 1."""
    by_name = {"grip_safety_factor": (1, 3), "ridden_length": (30, 500), "pick_up_acceleration": (1, 4),
               "altitude": (0, 4000), "carriers_on_loop": (20, 100), "carriers_out": (0, 19), "ride_time": (40, 900),
               "acceleration": (2, 4)}  # fmt: skip
    low, high = by_name.get(argument) or {
        "m/s": (0.3, 6), "m": (2, 500), "ft": (5, 900), "s": (1, 900), "person": (2, 90),
        "person/hour": (100, 4000), "m/s**2": (0.3, 4), "": (0.05, 0.9),
        "kW": (5, 60), "N": (20, 900), "kg": (30, 120), "J": (5e3, 2e5), "kg/m": (0.2, 2), "degree": (1, 60),
        "hectare": (0.5, 50), "person/hectare": (5, 80), "kg*m**2": (0.01, 5),
    }[unit]  # fmt: skip
    return low + number * (high - low)


ELEMENTWISE = sorted(
    set(FORMULAS)
    - {"liftcalc.formulas.spacing.mean_spacing", "liftcalc.simulation.two_minute_count.count_simulated_riders"}
)


@pytest.mark.parametrize("name", ELEMENTWISE)
@given(numbers=st.lists(st.floats(0, 1), min_size=12, max_size=12))
def test_an_array_gives_what_its_scalars_give(name, numbers):
    formula = FORMULAS[name]
    units = {argument: unit for argument, unit in formula.units.items() if argument != "returns"}
    arrays = {
        argument: np.array([pick(argument, unit, numbers[(3 * place + step) % 12]) for step in range(3)])
        for place, (argument, unit) in enumerate(units.items())
    }
    copies = {argument: array.copy() for argument, array in arrays.items()}
    together = formula(**{argument: Q(array, units[argument]) for argument, array in arrays.items()})
    one_by_one = [
        formula(**{argument: Q(float(array[step]), units[argument]) for argument, array in arrays.items()}).magnitude
        for step in range(3)
    ]
    np.testing.assert_allclose(together.magnitude, one_by_one, rtol=1e-12)
    assert together.units == ureg.Unit(formula.units["returns"])
    for argument, array in arrays.items():
        np.testing.assert_array_equal(array, copies[argument], err_msg="a formula wrote into its argument")
    plain = formula.plain(**arrays)
    np.testing.assert_allclose(plain, one_by_one, rtol=1e-12)


@pytest.mark.parametrize("name", sorted(FORMULAS))
def test_the_unit_of_an_argument_does_not_matter(name):
    formula = FORMULAS[name]
    units = {argument: unit for argument, unit in formula.units.items() if argument != "returns"}
    other = {"m/s": "mph", "m": "ft", "ft": "m", "s": "minute", "person/hour": "person/s", "m/s**2": "ft/s**2"}
    values = {argument: Q(pick(argument, unit, 0.37), unit) for argument, unit in units.items()}
    if "shares" in values:
        values |= {"spacings": Q([2.0, 4.0], "m"), "shares": Q([0.25, 0.75], "")}
    if "counting_time" in values and "line_speed" in values:
        values["first_rider_away"] = Q(1.0, "m")
    turned = {argument: value.to(other.get(units[argument], value.units)) for argument, value in values.items()}
    assert formula(**turned).magnitude == pytest.approx(formula(**values).magnitude, rel=1e-9)


@given(speed=speeds, gap=gaps, group=persons, factor=st.floats(0.1, 10))
def test_capacity_is_proportional(speed, gap, group, factor):
    base = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(gap, "m"), Q(group, "person")).magnitude
    faster = liftcalc.hourly_capacity(Q(factor * speed, "m/s"), Q(gap, "m"), Q(group, "person")).magnitude
    wider = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(factor * gap, "m"), Q(group, "person")).magnitude
    both = liftcalc.hourly_capacity(Q(factor * speed, "m/s"), Q(factor * gap, "m"), Q(group, "person")).magnitude
    assert faster == pytest.approx(factor * base)
    assert wider == pytest.approx(base / factor)
    assert both == pytest.approx(base)


@given(speed=speeds, gap=gaps, length=lengths, group=persons)
def test_the_routes_agree(speed, gap, length, group):
    v, s, length_, n = Q(speed, "m/s"), Q(gap, "m"), Q(length, "m"), Q(group, "person")
    first = liftcalc.hourly_capacity(v, s, n)
    on_line, ride = (
        liftcalc.persons_on_line(ridden_length=length_, spacing=s, persons_per_carrier=n),
        liftcalc.ride_time(length_, v),
    )
    assert liftcalc.hourly_capacity_from_head_count(on_line, ride).magnitude == pytest.approx(first.magnitude)
    assert liftcalc.persons_from_flow(first, ride).magnitude == pytest.approx(on_line.magnitude)
    by_interval = liftcalc.hourly_capacity_from_interval(liftcalc.headway(v, s), n)
    assert by_interval.magnitude == pytest.approx(first.magnitude)


@given(speed=speeds, gap=gaps, time=st.floats(1, 600), away=st.floats(0, 1))
def test_counting_simulated_riders_agrees_with_speed_over_spacing(speed, gap, time, away):
    counted = liftcalc.count_simulated_riders(
        line_speed=Q(speed, "m/s"), spacing=Q(gap, "m"), counting_time=Q(time, "s"), first_rider_away=Q(away * gap, "m")
    ).m_as("person")
    ideal = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(gap, "m")).m_as("person/s") * time
    assert counted == round(counted)
    assert abs(counted - ideal) <= 1 + 1e-6
    flow = liftcalc.hourly_flow_from_count(Q(counted, "person"), Q(time, "s"))
    assert flow.m_as("person/s") * time == pytest.approx(counted)


def test_counted_riders_are_riders():
    riders = liftcalc.count_simulated_riders(
        line_speed=Q(2, "m/s"), spacing=Q(5, "m"), counting_time=Q(10, "s"), first_rider_away=Q(1, "m")
    )
    assert riders.m_as("person") == 4  # 1, 6, 11 and 16 m below the post, while 20 m of rope go by
    flow = liftcalc.hourly_flow_from_count(riders, Q(10, "s"))
    assert flow.m_as("pph") == pytest.approx(1440, rel=1e-12)


@given(speed=speeds, gap=gaps, group=persons)
def test_round_trips(speed, gap, group):
    v, s, n = Q(speed, "m/s"), Q(gap, "m"), Q(group, "person")
    time = liftcalc.headway(v, s)
    assert liftcalc.spacing_for_headway(v, time).magnitude == pytest.approx(gap)
    assert liftcalc.line_speed_for_headway(s, time).magnitude == pytest.approx(speed)
    assert liftcalc.interval_from_headway(liftcalc.headway_from_interval(time, n), n).magnitude == pytest.approx(
        time.magnitude
    )
    capacity = liftcalc.hourly_capacity(v, s, n)
    assert liftcalc.spacing_for_capacity(capacity, v, n).magnitude == pytest.approx(gap)
    assert liftcalc.interval_for_capacity(capacity, n).magnitude == pytest.approx(time.magnitude)


@given(length=lengths, gap=gaps, group=persons)
def test_the_most_on_the_line_is_within_one_carrier_of_the_average(length, gap, group):
    average = liftcalc.persons_on_line(
        ridden_length=Q(length, "m"), spacing=Q(gap, "m"), persons_per_carrier=Q(group, "person")
    ).magnitude
    most = liftcalc.most_persons_on_line(
        ridden_length=Q(length, "m"), spacing=Q(gap, "m"), persons_per_carrier=Q(group, "person")
    ).magnitude
    assert average - 1e-6 <= most <= average + group + 1e-6
    assert most % group == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("spacings", [1, 3, 7, 20, 49, 1000])
def test_a_whole_number_of_spacings_has_one_more_rider(spacings):
    for gap in (0.1, 0.7, 6.8, 9.3):
        most = liftcalc.most_persons_on_line(ridden_length=Q(spacings * gap, "m"), spacing=Q(gap, "m"))
        assert most.magnitude == spacings + 1
        assert liftcalc.riders_inside(distance=Q(spacings * gap, "m"), spacing=Q(gap, "m")).magnitude == spacings + 1
        observed = liftcalc.observed_spacing(Q(spacings * gap, "m"), most)
        assert observed.magnitude == pytest.approx(gap)


@given(length=lengths, gap=gaps)
def test_a_loop_has_twice_the_carriers_of_one_side(length, gap):
    loop = liftcalc.carriers_on_loop(sheave_distance=Q(length, "m"), spacing=Q(gap, "m")).magnitude
    assert loop == pytest.approx(
        2 * liftcalc.persons_on_line(ridden_length=Q(length, "m"), spacing=Q(gap, "m")).magnitude
    )


@given(equipment=st.floats(0.5, 3), gap=st.floats(0, 20), share=st.floats(0, 1), other=st.floats(0.5, 30), speed=speeds)
def test_a_mix_has_one_mean_spacing(equipment, gap, share, other, speed):
    one = liftcalc.spacing_from_parts(equipment_length=Q(equipment, "m"), practical_gap=Q(gap, "m")).magnitude
    assert one - gap == pytest.approx(equipment)
    mean = liftcalc.mean_spacing(Q([one, other], "m"), Q([share, 1 - share], "")).magnitude
    assert min(one, other) * (1 - 1e-9) <= mean <= max(one, other) * (1 + 1e-9)
    # lay a hundred thousand riders nose to tail: the rope they take up is what the mean says
    riders = 100_000
    first = round(share * riders)
    rope = first * one + (riders - first) * other
    assert rope / riders == pytest.approx(mean, rel=1e-3)
    v = Q(speed, "m/s")
    capacities = [liftcalc.hourly_capacity(v, Q(spacing, "m")).magnitude for spacing in (one, other)]
    assert liftcalc.hourly_capacity(v, Q(mean, "m")).magnitude <= (
        share * capacities[0] + (1 - share) * capacities[1]
    ) * (1 + 1e-9)


def test_thirds_that_are_cut_in_the_seventh_digit_are_taken_for_all_riders():
    thirds = Q([0.3333333, 0.3333333, 0.3333333], "")
    assert liftcalc.mean_spacing(Q([2, 3, 4], "m"), thirds).m_as("m") == pytest.approx(3, rel=1e-6)


def test_the_mean_of_the_capacities_is_too_high():
    # own arithmetic: half at 2.4 m and half at 1.6 m on a rope at 3.4 m/s
    v = Q(3.4, "m/s")
    mean = liftcalc.mean_spacing(Q([2.4, 1.6], "m"), Q([0.5, 0.5], ""))
    assert mean.m_as("m") == pytest.approx(2.0)
    assert liftcalc.hourly_capacity(v, mean).m_as("pph") == pytest.approx(6120)
    wrong = (liftcalc.hourly_capacity(v, Q(2.4, "m")) + liftcalc.hourly_capacity(v, Q(1.6, "m"))) / 2
    assert wrong.m_as("pph") == pytest.approx(6375)


@given(
    speed=speeds, slowing=st.floats(0.3, 6), delay=st.floats(0, 3), reaction=st.floats(0, 6), factor=st.floats(1.1, 4)
)
def test_stopping_distances(speed, slowing, delay, reaction, factor):
    v, a, wait = Q(speed, "m/s"), Q(slowing, "m/s**2"), Q(delay, "s")
    gate = liftcalc.rope_stopping_distance(v, wait, a).magnitude
    attendant = liftcalc.attendant_stopping_distance(
        v, reaction_time=Q(reaction, "s"), stop_delay=wait, rope_deceleration=a
    ).magnitude
    assert attendant - gate == pytest.approx(speed * reaction, abs=1e-9)
    braking = liftcalc.rope_stopping_distance(v, Q(0, "s"), a).magnitude
    faster = liftcalc.rope_stopping_distance(factor * v, Q(0, "s"), a).magnitude
    assert faster == pytest.approx(factor**2 * braking)
    # a second opinion: small steps of time until the rope stands
    steps = 20_000
    step = speed / slowing / steps
    walked = sum(step * (speed - slowing * step * (number + 0.5)) for number in range(0, steps, 200)) * 200
    assert walked == pytest.approx(braking, rel=0.02)


@given(speed=speeds, grade=st.floats(0, 0.6), friction=st.floats(0.01, 0.2))
def test_a_rider_who_lets_go_gives_up_all_energy(speed, grade, friction):
    distance = liftcalc.rider_stopping_distance(
        Q(speed, "m/s"), grade=Q(grade, ""), snow_friction=Q(friction, "")
    ).magnitude
    angle = math.radians(liftcalc.slope_angle(Q(grade, "")).m_as("degree"))
    lifted, rubbed = 9.80665 * distance * math.sin(angle), friction * 9.80665 * distance * math.cos(angle)
    assert lifted + rubbed == pytest.approx(speed**2 / 2, rel=1e-9)
    slowing = liftcalc.rider_deceleration(grade=Q(grade, ""), snow_friction=Q(friction, "")).magnitude
    assert speed**2 / (2 * slowing) == pytest.approx(distance)


@pytest.mark.parametrize(
    ("grade", "distance", "source"),
    [(15, 3, "own arithmetic: 3 m on 15 percent at 3.4 m/s"), (0, 12, "own arithmetic: 12 m on the flat")],
)
def test_stopping_distances_in_round_numbers(grade, distance, source):
    friction = Q(0.05, "")
    glide = liftcalc.rider_stopping_distance(Q(3.4, "m/s"), grade=Q(grade, "percent"), snow_friction=friction).m_as("m")
    assert glide == pytest.approx(distance, rel=0.04)


@given(rise=st.floats(0, 300), run=st.floats(10, 900))
def test_slope_length_and_rise_agree(rise, run):
    length = liftcalc.slope_length(vertical_rise=Q(rise, "m"), horizontal_run=Q(run, "m"))
    grade = Q(rise / run, "")
    assume(rise == 0 or rise > 1e-3)
    assert liftcalc.vertical_rise(length, grade).magnitude == pytest.approx(rise, rel=1e-9, abs=1e-9)


def test_arguments_of_one_kind_are_keyword_only():
    for name, formula in FORMULAS.items():
        units = [unit for argument, unit in formula.units.items() if argument != "returns"]
        free = [
            formula.units[parameter.name]
            for parameter in inspect.signature(formula).parameters.values()
            if parameter.kind is not inspect.Parameter.KEYWORD_ONLY
        ]
        assert len(free) == len(set(free)), f"{name}: two of {units} can be swapped and nobody would notice"


@given(riders=st.integers(0, 60), mass=st.floats(30, 120), grade=st.floats(0.05, 0.4), brake=st.floats(0, 3000))
def test_a_rope_that_is_let_go_slows_as_all_that_moves_with_it_asks(riders, mass, grade, brake):
    pull = liftcalc.rope_pull(Q(mass, "kg"), grade=Q(grade, ""), snow_friction=Q(0.07, ""))
    rope = {"pull": pull, "idle_drag": Q(500, "N"), "brake_force": Q(brake, "N"), "rider_mass": Q(mass, "kg")}
    slowing = liftcalc.rope_deceleration(Q(riders, "person"), **rope, moving_mass=Q(400, "kg")).m_as("m/s**2")
    forces = riders * pull.m_as("N") + 500 + brake
    assert slowing * (400 + riders * mass) == pytest.approx(forces)
    alone = liftcalc.rider_deceleration(grade=Q(grade, ""), snow_friction=Q(0.07, "")).m_as("m/s**2")
    empty = (500 + brake) / 400
    assert min(alone, empty) * (1 - 1e-9) <= slowing <= max(alone, empty) * (1 + 1e-9), "between rope and rider alone"


TOW = {"pull": liftcalc.rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, "")),
       "idle_drag": Q(500, "N"), "rider_mass": Q(75, "kg"), "moving_mass": Q(400, "kg")}  # fmt: skip


def stopped_step_by_step(riders, brake, speed=3.4, step=1e-3):
    """Return how far a rope runs whose riders hold on with springy arms, and their mean pull: an own integration."""
    pull, drag, mass, rope_mass = (value.magnitude for value in TOW.values())
    stiff, damping = 2e4, 1e3
    rope, rider = np.zeros(len(riders)), np.full(len(riders), -pull / stiff)
    rope_speed, rider_speed = np.full(len(riders), speed), np.full(len(riders), speed)
    pulled, going = np.zeros(len(riders)), np.full(len(riders), True)
    steps = np.zeros(len(riders))
    while going.any():
        hand = stiff * (rope - rider) + damping * (rope_speed - rider_speed)
        rope_speed = rope_speed - step * (drag + brake + riders * hand) / rope_mass
        rider_speed = rider_speed + step * (hand - pull) / mass
        going &= rope_speed > 0
        rope, rider = rope + step * rope_speed * going, rider + step * rider_speed * going
        pulled, steps = pulled + hand * going, steps + going
    return rope, pulled / steps


def test_which_load_runs_furthest_depends_on_the_brake():
    riders, brake = np.array([0, 22] * 3), np.repeat([0.0, 540.0, 2000.0], 2)
    slowing = liftcalc.rope_deceleration(Q(riders, "person"), brake_force=Q(brake, "N"), **TOW)
    stops = liftcalc.rope_stopping_distance(Q(3.4, "m/s"), Q(0.5, "s"), slowing).m_as("m")
    walked, hands = stopped_step_by_step(riders, brake)
    assert stops == pytest.approx(1.7 + walked, rel=0.01)
    assert stops.round(1).tolist() == [6.3, 4.2, 3.9, 3.9, 2.6, 3.4], "own arithmetic: empty, full at three brakes"
    weak, even, strong = hands[riders > 0]
    assert weak == pytest.approx(195 - 75 * 2.334, abs=1), "a weak brake: the rope still pulls its riders"
    assert even == pytest.approx(0, abs=1), "between the two nobody feels the rope"
    assert strong == pytest.approx(195 - 75 * 3.309, abs=1), "a strong brake: it holds them back, they push it on"


@given(riders=st.integers(1, 60), share=st.floats(0.2, 3), mass=st.floats(30, 120), grade=st.floats(0.1, 0.4))
def test_at_one_brake_force_riders_make_no_difference(riders, share, mass, grade):
    slope = {"grade": Q(grade, ""), "snow_friction": Q(0.07, "")}
    line = TOW | {"pull": liftcalc.rope_pull(Q(mass, "kg"), **slope), "rider_mass": Q(mass, "kg")}
    idle = {"idle_drag": Q(100, "N")}
    even = liftcalc.brake_force_where_riders_make_no_difference(**line | idle)

    def slows(number, brake):
        return liftcalc.rope_deceleration(Q(number, "person"), brake_force=brake, **line | idle).m_as("m/s**2")

    alone = liftcalc.rider_deceleration(**slope).m_as("m/s**2")
    assert slows(0, even) == pytest.approx(alone)
    assert slows(riders, even) == pytest.approx(alone)
    brake = share * even
    assert (slows(riders, brake) > slows(0, brake)) == (brake < even) or abs(share - 1) < 1e-9


@given(length=st.floats(30, 500), speed=st.floats(0.5, 6), hard=st.floats(1, 4))
def test_a_ride_from_rest_is_the_motion_integrated(length, speed, hard):
    times = np.linspace(0, length / speed + speed / hard, 200_001)
    going = np.minimum(hard * times, speed)
    way = np.concatenate([[0], np.cumsum((going[1:] + going[:-1]) / 2 * np.diff(times))])
    ride = ride_time_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    assert ride.m_as("s") == pytest.approx(np.interp(length, way, times), rel=1e-6)
    assert line_speed_from_ride_time(Q(length, "m"), ride, Q(hard, "m/s**2")).m_as("m/s") == pytest.approx(speed)


@given(length=st.floats(30, 500), speed=st.floats(0.5, 5), hard=st.floats(1, 4))
def test_a_ride_from_rest_to_rest_is_two_halves_from_rest(length, speed, hard):
    whole = ride_time_rest_to_rest(Q(length, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    half = ride_time_from_rest(Q(length / 2, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    assert whole.m_as("s") == pytest.approx(2 * half.m_as("s"))


def test_a_ride_that_ends_too_soon_or_takes_too_little_time_is_refused():
    with pytest.raises(ValueError, match=r"takes 12\.2 m to the speed of the rope, but the ride is 10\.0 m long"):
        ride_time_from_rest(Q(10, "m"), Q(3.5, "m/s"), Q(0.5, "m/s**2"))
    with pytest.raises(
        ValueError, match=r"acceleration of 0\.5 m/s² takes 128\.0 m to speed up and to stop, but the ride is 100\.0 m"
    ):
        ride_time_rest_to_rest(Q(100, "m"), Q(8, "m/s"), Q(0.5, "m/s**2"))
    with pytest.raises(ValueError, match=r"nobody covers 150\.0 m from rest in 14\.0 s at 1\.5 m/s"):
        line_speed_from_ride_time(Q(150, "m"), Q(14, "s"), Q(1.5, "m/s**2"))


@given(length=st.floats(60, 300), speed=st.floats(1, 4), hard=st.floats(1, 4), gap=st.floats(2, 12))
def test_riders_from_rest_counted_on_the_rope_are_flow_times_time_and_at_most_one_more_than_whole_headways(
    length, speed, hard, gap
):
    between, moments = gap / speed, np.linspace(0, gap / speed, 400, endpoint=False)
    ride = ride_time_from_rest(Q(length, "m"), Q(speed, "m/s"), Q(hard, "m/s**2"))
    headways = ride.m_as("s") / between
    assume(abs(headways - round(headways)) > 1e-6)
    ages = moments[:, None] + between * np.arange(int(headways) + 3)  # of everybody who has taken hold, at each moment
    speeding_up = np.minimum(ages, speed / hard)
    ways = hard * speeding_up**2 / 2 + speed * (ages - speeding_up)
    on_the_rope = (ways <= length).sum(axis=1)
    capacity = liftcalc.hourly_capacity(Q(speed, "m/s"), Q(gap, "m"))
    average = liftcalc.persons_from_flow(capacity, ride).m_as("person")
    assert on_the_rope.mean() == pytest.approx(average, abs=1.01 / 400)  # 400 moments are looked at
    most = liftcalc.most_persons_from_headway(ride_time=ride, headway=Q(between, "s"))
    assert on_the_rope.max() == most.m_as("person")
    at_once = liftcalc.most_persons_on_line(ridden_length=Q(length, "m"), spacing=Q(gap, "m"))
    assert most >= at_once, "a start from rest bunches riders up at the bottom"


@given(length=lengths, gap=gaps, speed=speeds, group=persons)
def test_posts_in_metres_and_in_seconds_are_the_same_at_the_speed_of_the_rope(length, gap, speed, group):
    assume(abs(length / gap - round(length / gap)) > 1e-6)
    n, v, s, long = Q(group, "person"), Q(speed, "m/s"), Q(gap, "m"), Q(length, "m")
    in_seconds = liftcalc.most_persons_from_headway(
        ride_time=liftcalc.ride_time(long, v), headway=liftcalc.headway(v, s), persons_per_carrier=n
    )
    assert in_seconds == liftcalc.most_persons_on_line(ridden_length=long, spacing=s, persons_per_carrier=n)


@pytest.mark.parametrize("spread", [1.0, 0.5])
def test_the_doubt_of_a_count_is_the_scatter_of_counts(spread):
    """A second opinion: riders with gamma gaps are counted two thousand times, 400 riders each on the mean."""
    random, counts, mean_count = np.random.default_rng(24), 2000, 400
    gaps = random.gamma(spread**-2, spread**2, size=(counts, 700))  # a mean of one
    passed = np.cumsum(gaps, axis=1) - random.uniform(50, 60, size=(counts, 1))  # the clock starts with no rider
    counted = ((passed > 0) & (passed <= mean_count)).sum(axis=1)
    doubt = liftcalc.count_doubt(Q(mean_count, "person"), Q(spread, "")).m_as("")
    assert abs(counted.std(ddof=1) / counted.mean() / doubt - 1) < 4 / math.sqrt(2 * counts)
    assert counted.mean() == pytest.approx(mean_count, abs=4 * mean_count * doubt / math.sqrt(counts))


@pytest.mark.parametrize("mean", [4, 33, 400])
def test_a_count_without_an_order_is_poissons(mean):
    numbers = np.arange(2 * mean + 60)
    likely = np.exp(numbers * math.log(mean) - mean - [math.lgamma(number + 1) for number in numbers])
    scatter = math.sqrt(likely @ (numbers - mean) ** 2)
    doubt = liftcalc.count_doubt(Q(mean, "person"), Q(1, "")).m_as("")
    assert doubt == pytest.approx(scatter / mean, rel=1e-9)
    assert doubt == liftcalc.count_doubt(Q(mean, "person")).m_as(""), "no order is what is taken if nothing is said"
