"""Lifts side by side."""

from dataclasses import replace

import numpy as np
import pytest
from by_hand import GOVERNING, hill_by_hand, hill_numbers, limits_by_hand, plain_numbers, ride_time_by_hand
from example_lines import DETACHABLE, MIDDLE, TOW, TOW_READINGS, TRAVEL, line_of

from liftcalc import Q, show
from liftcalc.lifts.demo_hill import demo_hill, demo_kinds
from liftcalc.lifts.hill import Hill, hill_from_bytes
from liftcalc.lifts.installation import Installation
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.tables import comparison_table, governing_table, hazards_table, hill_frame, hill_table, kinds_table

OF_THE_SHEAVE = "slack tension, drive position, lining friction, wrap angle, grip safety factor"


def test_the_table_that_sets_lifts_side_by_side():
    table, lines = comparison_table(demo_hill()), demo_hill().lines
    cells_of = {row[0]: dict(zip(table.columns, row, strict=True)) for row in table.rows}
    together = {name: group for name, group in demo_hill().lifts.items() if len(group.lines) > 1}
    assert set(cells_of) == set(lines) | set(together)
    for line in lines.values():
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
    table = governing_table(demo_hill())
    cells_of = {row[0]: dict(zip(table.columns, row, strict=True)) for row in table.rows}
    assert set(cells_of) == {case[0] for case in GOVERNING}
    for name, first, following, number in GOVERNING:
        cells = cells_of[name]
        sums = limits_by_hand(demo_hill().lines[name].kind, hill_numbers()[name])
        assert (cells["governs"], cells["next"]) == (first, following)
        assert cells["at most"] == f"{number:,} pph (governed)"
        assert cells["how far"] == f"{sums[following] - sums[first]:,.0f} pph above"
        assert cells["left out"] == ("nothing" if "traction" in sums else f"traction ({OF_THE_SHEAVE})")
    without = ("drive_position", "pick_up_acceleration")
    readings = {name: value for name, value in demo_hill().readings["Penny Rope"].items() if name not in without}
    (row,) = governing_table(Hill({"lone": Installation("lone", (TOW,))}, {"tow": readings})).rows
    assert row[-1] == "motor (pick-up acceleration); traction (drive position)"
    lone = governing_table(Hill({"lone": Installation("lone", (TOW,))}, {"tow": {}})).rows[0]
    assert lone[1:5] == ("spacing", "1,800 pph (governed)", "none", "")


def test_a_ride_time_without_its_start_is_said_in_the_tables():
    whole = replace(TOW, name="whole", pick_up_acceleration=Q(1.5, "m/s**2"))
    belt = line_of("conveyor", MIDDLE)
    lines = (TOW, whole, belt)
    hill = Hill({"some": Installation("some", lines)}, {line.name: {} for line in lines})
    for table in (hill_table(hill), comparison_table(hill)):
        cells = [dict(zip(table.columns, row, strict=True))["ride time"] for row in table.rows[:3]]
        assert cells == ["44.1 s, start not read", "45.3 s", show(belt.ride_time)]


def test_what_is_not_known_is_said_in_the_table():
    lone = Installation("lone", (replace(TOW, motor_power=None),))
    row = comparison_table(Hill({"lone": lone}, {"tow": {}})).rows[0]
    assert row[-4:] == ("not known", "not known", "not known", "on the ground")
    some = Installation("some", (TOW, replace(TOW, name="other", motor_power=None)))
    table = comparison_table(Hill({"some": some}, {"tow": TOW_READINGS, "other": {}}))
    assert [row[0] for row in table.rows] == ["tow", "other", "some"]
    needed = [dict(zip(table.columns, row, strict=True))["needed power"] for row in table.rows]
    assert needed[0].endswith(" kW")
    assert needed[1:] == ["not known", "not known"]  # a sum with one part not known is not known


def test_the_examples_are_one_of_each_kind():
    lines, table = demo_kinds().lines, kinds_table(demo_kinds())
    assert [row[0] for row in table.rows] == list(KINDS)
    numbers = plain_numbers("kinds")
    for line, row in zip(lines.values(), table.rows, strict=True):
        r, cells = numbers[line.name], dict(zip(table.columns, row, strict=True))
        speed = r["line_speed"]
        if "dwell_time" in r:
            interval = ride_time_by_hand(row[0], r) + r["dwell_time"]
        else:
            interval = r["interval"] if "interval" in r else r["spacing"] / speed
        capacity = 3600 * r["persons_per_carrier"] / interval
        assert cells["line speed"] == f"{speed:.2f} m/s"
        assert cells["interval"] == f"{interval:.1f} s"
        assert cells["spacing"] == show(Q(speed * interval, "m"))
        assert cells["people an hour"] == f"{capacity:,.0f} pph (ideal)"
        assert cells["on a stop"] == ("in the air" if TRAVEL[row[0]][0] == "air" else "on the ground")
        assert (line.station_time is not None) == (row[0] in DETACHABLE)


def test_the_hill_as_a_frame_of_numbers(tmp_path):
    frame, sums = hill_frame(demo_hill()), hill_numbers()
    assert list(frame.index) == [case[0] for case in GOVERNING]
    for name, first, following, number in GOVERNING:
        row, r = frame.loc[name], sums[name]
        limits = limits_by_hand(r["kind"], r)
        assert (row["governs"], row["next limit"], round(row["at most (pph)"])) == (first, following, number)
        assert row["next above (pph)"] == pytest.approx(limits[following] - limits[first], rel=1e-9)
        assert row["people an hour by spacing (pph)"] == pytest.approx(limits["spacing"], rel=1e-9)
        assert row["ride time (s)"] == pytest.approx(ride_time_by_hand(r["kind"], r), rel=1e-9)
        assert (row["vertical rise (m)"], row["motor power (kW)"]) == (r["vertical_rise"], r["motor_power"])
        assert (row["lift"], row["kind"], row["state"]) == (r["lift"], r["kind"], r["state"])
        assert row["date"] == r.get("date", "")
        assert row["level of spacing"] == "ideal"
        assert row["limits left out"] == ("" if "traction" in limits else "traction")
    assert list(frame["sheet"]) == [sheet.name for sheet in demo_hill().sheets.values()]
    frame.to_csv(tmp_path / "hill.csv")
    assert len((tmp_path / "hill.csv").read_text(encoding="utf-8").splitlines()) == 1 + len(GOVERNING)


def test_a_line_of_which_little_was_read_stands_in_every_table():
    rows = "line speed,3.4,m/s,,,\nspacing,6.8,m,,,\nridden length,150,m,,,\nvertical rise,29.4,m,,,\n"
    text = f"quantity,value,unit,plus_minus,method,note\n{rows}persons per carrier,1,person,,,\n"
    hill = hill_from_bytes([("old.csv", text.encode())])
    assert hill_table(hill).rows[0][:3] == ("old", "not read", "1,800 pph (ideal)")
    assert comparison_table(hill).rows[0][-4:] == ("not known", "not known", "not known", "not known")
    row = governing_table(hill).rows[0]
    assert row[:4] == ("old", "spacing", "1,800 pph (governed)", "none")
    assert row[-1] == (
        "loading (loading time); motor (motor power, efficiency, kind, rider mass, idle drag); "
        f"traction ({OF_THE_SHEAVE}, rider mass, kind, idle drag); unload (clearing time)"
    )
    numbers = hill_frame(hill).loc["old"]
    assert np.isnan(numbers["motor power (kW)"])
    assert np.isnan(numbers["next above (pph)"])
    assert numbers["limits left out"] == "loading; motor; traction; unload"
    assert (numbers["state"], numbers["date"], numbers["next limit"]) == ("", "", "")


def test_every_kind_has_hazards_of_its_own():
    table = hazards_table()
    assert [row[0] for row in table.rows] == list(KINDS)
    assert len({row[2] for row in table.rows}) == len(KINDS)
    for kind, where, hazards in table.rows:
        assert where == ("in the air" if TRAVEL[kind][0] == "air" else "on the ground")
        assert len(hazards.split()) >= 5
        assert hazards.endswith(".")
