"""Formulas of the main job against a line that is run event by event, on a hundred made lines each.

The model counts and watches, and knows no formula. Where its answer is a count of carriers in a window, a formula may
be off by less than one carrier: as many pass as fit whole into the window, or one more, and which of the two it is
depends on where the window begins. Where the window holds whole rounds, laps or headways, nothing is left over, and
both are equal but for rounding.
"""

import ast
from dataclasses import replace
from pathlib import Path

import event_model
import numpy as np
import pytest
from event_model import (
    STEP,
    carriers_taken_from_the_shed,
    followed_ride,
    heads_over_time,
    laps_of_a_crowd,
    made_lines,
    mean_heads,
    persons_of_a_mix,
    persons_past_of_a_loop,
    riders_who_reach_the_fallen,
    waits_by_lindley,
)

from liftcalc import Q
from liftcalc.formulas import capacity, carriers, loading_point, pull, riders, spacing, stopping, waiting

LINES = made_lines()
HOUR = 3600.0
FOOT = 0.3048  # m, by definition
EXACT = 1e-8  # of a value: rounding of sums


def column(unit, name):
    """Return one number of all lines with its unit."""
    return Q(np.array([getattr(line, name) for line in LINES]), unit)


LENGTH, SPEED, SPACING = column("m", "length"), column("m/s", "speed"), column("m", "spacing")
PLACES = column("person", "places")


def seen(watch):
    """Return what a watcher sees on each line."""
    return np.array([watch(line) for line in LINES], dtype=float)


def agree(found, unit, watched, give):
    """Check a formula on all lines against what was seen there; it may be off by less than a given number."""
    found = found.m_as(unit)
    assert np.shape(found) == np.shape(watched) == (100,)
    off = np.abs(found - watched) / give
    worst = int(np.argmax(off))
    assert off[worst] < 1, f"{found[worst]:,.6g} {unit}, but seen were {watched[worst]:,.6g} on {LINES[worst]}"


def in_an_hour(line, place=None):
    """Count the persons past a place in an hour: half way up, if none is given."""
    return line.persons_past(line.length / 2 if place is None else place, *line.window(HOUR))


def riders_up(line, headways=40):
    """Return event times and heads on the line, and a window of whole headways, from one grab to a later one."""
    begin = line.window(0)[0]
    on = line.passes(0, 2 * begin + headways * line.spacing / line.speed)
    off = line.passes(line.length, 2 * begin + headways * line.spacing / line.speed)
    first = int(np.argmax(on >= begin))
    return *heads_over_time(on, off, line.places), on[first], on[first + headways]


def mean_on_the_line(line):
    """Return the mean over time of the heads on a line."""
    return mean_heads(*riders_up(line))


def test_the_model_shares_no_code_with_the_package():
    tree = ast.parse(Path(event_model.__file__).read_text(encoding="utf-8"))
    imported = {name.name for node in ast.walk(tree) if isinstance(node, ast.Import) for name in node.names}
    imported |= {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    assert imported == {"heapq", "collections", "dataclasses", "numpy"}


def test_headway_is_the_time_between_two_who_pass():
    def gap(line):
        gaps = np.diff(line.passes(line.length / 2, 300))
        assert np.ptp(gaps) < EXACT, "all alike"
        return gaps[0]

    watched = seen(gap)
    agree(spacing.headway(SPEED, SPACING), "s", watched, EXACT * watched)


def test_observed_spacing_of_a_photo():
    """The photo shows all who are between bottom and top at one moment."""

    def photo(line):
        moment = line.window(0)[0]
        places = moment * line.speed - line.ahead - line.spacing * np.arange(moment * line.speed // line.spacing + 1)
        return places[(places >= 0) & (places <= line.length)]

    photos = [photo(line) for line in LINES]
    distance = Q(np.array([np.ptp(each) for each in photos]), "m")
    counted = Q(np.array([each.size for each in photos], dtype=float), "person")
    watched = seen(lambda line: line.spacing)
    agree(spacing.observed_spacing(distance, counted), "m", watched, EXACT * watched)


def test_mean_spacing_of_a_mix_that_comes_in_no_order():
    """Seen is the rope that ran by from the first of 200 to the one after the last, over the 200."""
    generator = np.random.default_rng(1)
    for line in LINES:
        many = generator.multinomial(197, [0.5, 0.3, 0.2]) + 1
        kinds = list(zip(line.spacing * np.array([1.0, 0.7, 1.6]), many, strict=True))
        behind = persons_of_a_mix(generator, kinds)
        passes = np.concatenate([[0], np.cumsum(behind)]) / line.speed
        watched = line.speed * (passes[-1] - passes[0]) / behind.size
        found = spacing.mean_spacing(Q(np.array([each for each, _ in kinds]), "m"), Q(many / behind.size, ""))
        assert found.m_as("m") == pytest.approx(watched, rel=EXACT)


def test_hourly_capacity_is_who_passes_in_an_hour():
    """A count: off by less than one carrier."""
    agree(capacity.hourly_capacity(SPEED, SPACING, PLACES), "pph", seen(in_an_hour), PLACES.magnitude + EXACT)


def test_spacing_for_a_capacity_that_is_intended():
    """A count of the line that is run at that spacing: off by less than one carrier."""
    shares = np.random.default_rng(2).uniform(0.5, 1, 100)
    intended = Q(seen(in_an_hour) * shares, "pph")
    needed = capacity.spacing_for_capacity(intended, SPEED, PLACES).m_as("m")
    runs = [replace(line, spacing=each) for line, each in zip(LINES, needed, strict=True)]
    agree(intended, "pph", np.array([in_an_hour(line) for line in runs]), PLACES.magnitude + EXACT)


def test_head_count_and_stopwatch_against_who_passes_in_an_hour():
    """Heads are the mean over time; the hour is a count: off by less than one carrier."""
    ride = seen(lambda line: line.passes(line.length, 0)[0] - line.passes(0, 0)[0])
    found = capacity.hourly_capacity_from_head_count(Q(seen(mean_on_the_line), "person"), Q(ride, "s"))
    agree(found, "pph", seen(in_an_hour), PLACES.magnitude + 1e-3)


def test_vertical_transport_is_the_sum_of_rises_in_an_hour():
    """Rises are added at the top, riders counted at the bottom: in one window they differ by one carrier at most."""

    def rises(line):
        return sum([line.rise / FOOT] * in_an_hour(line, line.length))

    rise = column("m", "rise").to("ft")
    found = capacity.vertical_transport(Q(seen(lambda line: in_an_hour(line, 0)), "pph"), rise)
    agree(found, "person*ft/hour", seen(rises), PLACES.magnitude * rise.magnitude * (1 + EXACT) + EXACT)


def test_capacity_with_carriers_out_over_whole_rounds():
    """Whole rounds: equal. Full and with gaps, the same loop is counted."""
    generator = np.random.default_rng(3)
    on_loop, out = generator.integers(20, 120, 100), generator.integers(1, 15, 100)
    rates = []
    for line, all_of_them, fewer in zip(LINES, on_loop, out, strict=True):
        stay = generator.permutation(all_of_them)[fewer:]
        counts = [persons_past_of_a_loop(line, all_of_them, each, 3) for each in (range(all_of_them), stay)]
        rates.append([HOUR * persons / seconds for persons, seconds in counts])
    full, left = np.array(rates).T
    found = carriers.capacity_with_carriers_out(
        Q(full, "pph"), carriers_on_loop=Q(on_loop.astype(float), ""), carriers_out=Q(out.astype(float), "")
    )
    agree(found, "pph", left, EXACT * left)


def test_carriers_that_a_loop_with_stations_takes():
    """Carriers are whole: the shed gave the next whole number, or the number itself."""
    found = carriers.detachable_carriers(
        LENGTH, SPEED, station_time=column("s", "station_time"), interval=Q(SPACING.magnitude / SPEED.magnitude, "s")
    ).m_as("")
    taken = seen(carriers_taken_from_the_shed)
    assert np.all(found <= taken * (1 + EXACT))
    assert np.all(taken < found + 1)


def test_ride_time_from_rest_of_a_ride_that_is_followed():
    """The ride ends with the first step that reaches the top: late by less than a step, and a little of the bend."""
    found = riders.ride_time_from_rest(LENGTH, SPEED, column("m/s**2", "acceleration"))
    agree(found, "s", seen(lambda line: followed_ride(line)[0]), 1.01 * STEP)


def test_energy_per_rider_of_a_ride_that_is_followed():
    """The work of one step more, at a steady pull, is what the sum may be off."""
    pulls = seen(lambda line: line.pull())
    found = pull.energy_per_rider(Q(pulls, "N"), LENGTH, column("kg", "mass"), SPEED, column("m/s**2", "acceleration"))
    agree(found, "J", seen(lambda line: followed_ride(line)[1]), 1.01 * STEP * pulls * SPEED.magnitude)


def test_persons_on_the_line_are_the_mean_of_heads_over_time():
    """Whole headways: equal, but that moments are told apart to a millionth of a second."""
    watched = seen(mean_on_the_line)
    found = riders.persons_on_line(ridden_length=LENGTH, spacing=SPACING, persons_per_carrier=PLACES)
    agree(found, "person", watched, 1e-5 * watched)


def test_most_persons_at_one_moment_are_counted_at_every_event():
    found = riders.most_persons_on_line(ridden_length=LENGTH, spacing=SPACING, persons_per_carrier=PLACES)
    watched = seen(lambda line: riders_up(line)[1].max())
    assert np.any(np.abs(LENGTH / SPACING - np.round(LENGTH / SPACING)) < 1e-9), "some lengths are whole spacings"
    np.testing.assert_allclose(found.m_as("person"), watched, rtol=1e-12)


def test_persons_from_flow_where_each_stays_another_time():
    """From the first who comes until the last has gone nobody is left over: equal, as the moments are told apart."""
    generator, cases = np.random.default_rng(4), []
    for line in LINES:
        came = np.repeat(line.passes(line.length, 600), line.places)
        stays = generator.uniform(2, 20, came.size)
        times, heads = heads_over_time(came, came + stays)
        begin, end = times[0], times[-1]
        cases.append([HOUR * came.size / (end - begin), stays.mean(), mean_heads(times, heads, begin, end)])
    flow, stay, watched = np.array(cases).T
    agree(riders.persons_from_flow(Q(flow, "pph"), Q(stay, "s")), "person", watched, 1e-5 * watched)


def test_riders_inside_a_stopping_distance_are_counted_one_by_one():
    """Every tenth distance is a whole number of spacings: who comes just to the fallen is inside."""
    spacings = np.random.default_rng(5).uniform(0, 10, 100)
    spacings[::10] = np.round(spacings[::10])
    runs_on = spacings * SPACING.magnitude
    watched = [riders_who_reach_the_fallen(*each) for each in zip(LINES, runs_on, strict=True)]
    found = stopping.riders_inside(distance=Q(runs_on, "m"), spacing=SPACING)
    np.testing.assert_allclose(found.m_as("person"), watched, rtol=1e-12)


@pytest.mark.parametrize("bound", ["most", "least"])
def test_a_closed_crowd_reaches_both_its_bounds(bound):
    """Even times make the most, a crowd that keeps together the least; over whole laps of one skier nothing is left."""
    formula = {"most": loading_point.crowd_capacity_at_most, "least": loading_point.crowd_capacity_at_least}[bound]
    generator = np.random.default_rng(6)
    crowd, away = generator.integers(2, 120, 100), generator.uniform(60, 500, 100)
    loading = generator.uniform(1.5, 8, 100)
    runs = [
        laps_of_a_crowd(int(each), *times, laps=5, together=bound == "least")
        for each, *times in zip(crowd, away, loading, strict=True)
    ]
    watched = np.array([HOUR * persons / seconds for persons, seconds in runs])
    found = formula(Q(crowd.astype(float), "person"), ride_and_descent=Q(away, "s"), loading_time=Q(loading, "s"))
    agree(found, "pph", watched, EXACT * watched)


def test_mean_wait_of_riders_without_order_who_load_in_even_times():
    """Chance: each line within four standard errors, and so the mean of all, where one in a hundred would stand out."""
    generator = np.random.default_rng(7)
    loading = generator.uniform(1.5, 8, 100)
    busy = generator.uniform(0.3, 0.6, 100)
    found = waiting.mean_wait_constant(Q(HOUR * busy / loading, "pph"), Q(loading, "s")).m_as("s")
    runs = waits_by_lindley(generator, loading / busy, loading, runs=60, riders=2600, left_out=100)
    ratios = runs / found[:, None]
    errors = ratios.std(axis=1, ddof=1) / np.sqrt(ratios.shape[1])
    assert np.all(np.abs(ratios.mean(axis=1) - 1) < 4 * errors)
    error = np.sqrt(np.sum(errors**2)) / errors.size
    assert error < 0.0015, "the runs say enough"
    assert abs(ratios.mean() - 1) < 4 * error
