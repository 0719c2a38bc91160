"""Lifts side by side."""

from dataclasses import replace

from by_hand import GOVERNING, hill_by_hand, hill_numbers, limits_by_hand, plain_numbers, read_hill, ride_time_by_hand
from example_lines import DETACHABLE, MIDDLE, TOW, TOW_READINGS, TRAVEL, line_of
from places import DATA

from liftcalc import Q, show
from liftcalc.lifts.installation import Installation, read_lifts
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.tables import comparison_table, governing_table, hazards_table, hill_table, kinds_table


def test_the_table_that_sets_lifts_side_by_side():
    installations = read_lifts(DATA / "hill_lifts.csv")
    table = comparison_table(installations, read_hill()[1])
    cells_of = {row[0]: dict(zip(table.columns, row, strict=True)) for row in table.rows}
    together = {name: group for name, group in installations.items() if len(group.lines) > 1}
    assert set(cells_of) == {line.name for line in read_hill()[0]} | set(together)
    for line in read_hill()[0]:
        cells, r, (capacity, watts) = cells_of[line.name], hill_numbers()[line.name], hill_by_hand(line)
        assert cells["kind"] == line.kind
        assert cells["people an hour"] == f"{capacity:,.0f} pph (ideal)"
        assert cells["vertical transport"] == f"{capacity * r['vertical_rise'] / 0.3048:,.0f} VTFH"
        assert cells["ride time"] == f"{ride_time_by_hand(line.kind, r):.1f} s"
        riders = capacity / 3600 * ride_time_by_hand(line.kind, r)
        assert cells["riders on the line"] == f"{riders:.1f} persons"
        assert cells["rated power"] == f"{r['motor_power']:.1f} kW"
        assert cells["needed power"] == f"{watts / 1000:.1f} kW"
        assert cells["needed for 1,000 pph"] == f"{watts / capacity:.1f} kW"
        assert cells["on a stop"] == ("in the air" if TRAVEL[line.kind][0] == "air" else "on the ground")
    assert together
    for name, group in together.items():
        capacity, watts = map(sum, zip(*map(hill_by_hand, group.lines), strict=True))
        rated = sum(hill_numbers()[line.name]["motor_power"] for line in group.lines)
        assert cells_of[name]["people an hour"] == f"{capacity:,.0f} pph (ideal, {len(group.lines)} lines together)"
        assert cells_of[name]["rated power"] == f"{rated:.1f} kW"
        assert cells_of[name]["needed power"] == f"{watts / 1000:.1f} kW"
        assert cells_of[name]["needed for 1,000 pph"] == f"{watts / capacity:.1f} kW"


def test_the_table_of_what_governs():
    table = governing_table(read_lifts(DATA / "hill_lifts.csv"), read_hill()[1])
    cells_of = {row[0]: dict(zip(table.columns, row, strict=True)) for row in table.rows}
    assert set(cells_of) == {case[0] for case in GOVERNING}
    for name, first, following, number in GOVERNING:
        cells = cells_of[name]
        sums = limits_by_hand(next(line.kind for line in read_hill()[0] if line.name == name), hill_numbers()[name])
        assert (cells["governs"], cells["next"]) == (first, following)
        assert cells["at most"] == f"{number:,} pph (governed)"
        assert cells["how far"] == f"{sums[following] - sums[first]:,.0f} pph above"
        assert cells["left out"] == ("nothing" if "traction" in sums else "traction")
    readings = {name: value for name, value in read_hill()[1]["Penny Rope"].items() if name != "drive_position"}
    (row,) = governing_table({"lone": Installation("lone", (TOW,))}, {"tow": readings}).rows
    assert row[-1] == "motor (pick-up acceleration), traction (drive position)"
    lone = governing_table({"lone": Installation("lone", (TOW,))}, {}).rows[0]
    assert lone[1:5] == ("spacing", "1,800 pph (governed)", "none", "")


def test_a_ride_time_without_its_start_is_said_in_the_tables():
    whole = replace(TOW, name="whole", pick_up_acceleration=Q(1.5, "m/s**2"))
    belt = line_of("conveyor", MIDDLE)
    installation = {"some": Installation("some", (TOW, whole, belt))}
    for table in (hill_table(installation), comparison_table(installation, {})):
        cells = [dict(zip(table.columns, row, strict=True))["ride time"] for row in table.rows[:3]]
        assert cells == ["44.1 s, start not read", "45.3 s", show(belt.ride_time)]


def test_what_is_not_known_is_said_in_the_table():
    lone = Installation("lone", (replace(TOW, motor_power=None),))
    row = comparison_table({"lone": lone}, {}).rows[0]
    assert row[-4:] == ("not known", "not known", "not known", "on the ground")
    some = Installation("some", (TOW, replace(TOW, name="other", motor_power=None)))
    table = comparison_table({"some": some}, {"tow": TOW_READINGS})
    assert [row[0] for row in table.rows] == ["tow", "other", "some"]
    needed = [dict(zip(table.columns, row, strict=True))["needed power"] for row in table.rows]
    assert needed[0].endswith(" kW")
    assert needed[1:] == ["not known", "not known"]  # a sum with one part not known is not known


def test_the_examples_are_one_of_each_kind():
    examples = read_lifts(DATA / "kind_examples.csv")
    table = kinds_table(examples)
    assert [row[0] for row in table.rows] == list(KINDS)
    numbers = plain_numbers("kind_examples.csv")
    for installation, row in zip(examples.values(), table.rows, strict=True):
        r, cells = numbers[installation.lines[0].name], dict(zip(table.columns, row, strict=True))
        interval = r.get("interval") or ride_time_by_hand(row[0], r) + r["dwell_time"]
        capacity = 3600 * r["persons_per_carrier"] / interval
        assert cells["line speed"] == f"{r['line_speed']:.2f} m/s"
        assert cells["interval"] == f"{interval:.1f} s"
        assert cells["spacing"] == show(Q(r["line_speed"] * interval, "m"))
        assert cells["people an hour"] == f"{capacity:,.0f} pph (ideal)"
        assert cells["on a stop"] == ("in the air" if TRAVEL[row[0]][0] == "air" else "on the ground")
        assert (installation.lines[0].station_time is not None) == (row[0] in DETACHABLE)


def test_every_kind_has_hazards_of_its_own():
    table = hazards_table()
    assert [row[0] for row in table.rows] == list(KINDS)
    assert len({row[2] for row in table.rows}) == len(KINDS)
    for kind, where, hazards in table.rows:
        assert where == ("in the air" if TRAVEL[kind][0] == "air" else "on the ground")
        assert len(hazards.split()) >= 5
        assert hazards.endswith(".")
