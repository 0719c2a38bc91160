"""Every kind of lift: the energy of a ride against sums by hand."""

import pytest
from by_hand import energy_by_hand
from example_lines import ENOUGH, MIDDLE, READ_ON_A_WAY, TRAVEL, everything, line_of, readings_of, with_rise
from hypothesis import given

from liftcalc import Q
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.limits_of_line import idle_drag_of, ride_energy
from liftcalc.lifts.line import Line
from liftcalc.lifts.readings import READINGS, WORDS, known_values


def test_every_kind_and_every_reading_stand_here():
    assert set(TRAVEL) == set(KINDS)
    assert {name: unit for name, (_, _, unit) in ENOUGH.items()} == {
        name: unit for name, (unit, _) in READINGS.items() if name not in WORDS
    }
    assert set(WORDS) == {"drive_position", "loading_timed_as"}


@pytest.mark.parametrize("kind", KINDS)
@given(numbers=everything)
def test_energy_of_a_ride_is_the_sum_by_hand(kind, numbers):
    numbers = with_rise(numbers)
    values = known_values(line_of(kind, numbers), readings_of(kind, numbers))
    hand = energy_by_hand(kind, {name: numbers[name] for name in values})
    assert KINDS[kind].riding.work(values).m_as("J") == pytest.approx(hand["work"], rel=1e-9)
    assert (ride_energy(kind, values) - KINDS[kind].riding.work(values)).m_as("J") == pytest.approx(
        hand["pick_up"], rel=1e-9
    )
    assert ride_energy(kind, values).m_as("J") == pytest.approx(hand["energy"], rel=1e-9)
    assert idle_drag_of(kind, values).m_as("N") == pytest.approx(hand["drag"], rel=1e-9)


ROUND_NUMBERS = [  # kind, readings, energy by hand; 1,000 m of slope with 600 m of rise and 800 m of map, 2 m/s, 100 kg
    ("handle tow", {"snow_friction": 0.05}, 980.665 * (600 + 40) + 400),
    ("rope tow", {"snow_friction": 0.05, "pick_up_acceleration": 1}, 980.665 * (600 + 40) * 1.002 + 400),
    ("conveyor", {"bed_friction": 0.25}, 980.665 * (600 + 200) + 400),
    ("fixed chair", {"sheave_drag_share": 0.03}, 980.665 * (600 + 24) + 400),
    ("gondola", {"sheave_drag_share": 0.03}, 980.665 * (600 + 24) + 200),
]


@pytest.mark.parametrize(("kind", "readings", "energy"), ROUND_NUMBERS, ids=[case[0] for case in ROUND_NUMBERS])
def test_own_arithmetic_energy_in_round_numbers(kind, readings, energy):
    line = Line(
        "line", kind, line_speed=Q(2, "m/s"), spacing=Q(10, "m"), ridden_length=Q(1000, "m"), vertical_rise=Q(600, "m")
    )
    readings = {name: Q(number, ENOUGH[name][2]) for name, number in readings.items()}
    found = ride_energy(kind, known_values(line, readings | {"rider_mass": Q(100, "kg")}))
    assert found.m_as("J") == pytest.approx(energy, rel=1e-12)


def test_a_tether_at_an_angle_takes_weight_off_the_skis():
    numbers = MIDDLE | {"snow_friction": 0.1}
    works = [energy_by_hand("T-bar lift", numbers | {"tether_angle": angle})["work"] for angle in (0, 20, 40)]
    assert works == sorted(works, reverse=True)
    for angle, work in zip((0, 20, 40), works, strict=True):
        values = known_values(
            line_of("T-bar lift", numbers), readings_of("T-bar lift", numbers | {"tether_angle": angle})
        )
        assert KINDS["T-bar lift"].riding.work(values).m_as("J") == pytest.approx(work, rel=1e-12)


@pytest.mark.parametrize("kind", KINDS)
def test_a_reading_of_the_idle_drag_comes_before_its_parts(kind):
    values = known_values(line_of(kind, MIDDLE), readings_of(kind, MIDDLE))
    assert idle_drag_of(kind, values | {"idle_drag": Q(321, "N")}) == Q(321, "N")
    parts = {"air": ("hanging_mass", "sheave_drag_share"), "belt": READ_ON_A_WAY["belt"], "skis": ("idle_drag",)}
    for part in parts[TRAVEL[kind][0]]:
        assert idle_drag_of(kind, {name: value for name, value in values.items() if name != part}) is None
