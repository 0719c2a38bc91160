"""One cell of a sheet: what is read of it, and what is refused in which column."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from messages import refuses, table_of_messages

from liftcalc import Q
from liftcalc.fieldwork.cells import CellFault, is_empty, one_of, read_fact, read_value
from liftcalc.vocabulary import VOCABULARY


def value_of(name, value, unit="", plus_minus="", decimal_comma=False):
    """Return what is read of the cells of one row."""
    return read_value(VOCABULARY[name], {"value": value, "unit": unit, "plus_minus": plus_minus}, decimal_comma)


READ = [  # quantity; value, unit and plus_minus as written; value and half-width
    ("spacing", ("6.8", "m", "0.5"), Q(6.8, "m"), Q(0.5, "m")),
    ("spacing", ("24 ft", "", ""), Q(24, "ft"), None),
    ("spacing", ("24ft", "", "2"), Q(24, "ft"), Q(2, "ft")),
    ("spacing", ("24 ft", "feet", "2 ft"), Q(24, "ft"), Q(2, "ft")),
    ("spacing", ("24'", "", ""), Q(24, "ft"), None),
    ("spacing", ("6.8", "M", "\u00b1 0.5"), Q(6.8, "m"), Q(0.5, "m")),
    ("spacing", ("+6.8", "m.", "+/-0.5 m"), Q(6.8, "m"), Q(0.5, "m")),
    ("spacing", (".9", "m", "not read"), Q(0.9, "m"), None),
    ("line_speed", ("7.6 mph", "", "0.5"), Q(7.6, "mph"), Q(0.5, "mph")),
    ("ride_time", ("1:13", "", ""), Q(73, "s"), None),
    ("ride_time", ("1:13", "s", "2"), Q(73, "s"), Q(2, "s")),
    ("ride_time", ("1:13.5", "min:s", ""), Q(73.5, "s"), None),
    ("ride_time", ("0:45", "mm:ss", "0.5 s"), Q(45, "s"), Q(0.5, "s")),
    ("ride_time", ("1:12", "min", "0.1"), Q(1.2, "minute"), Q(0.1, "minute")),
    ("counting_time", ("20:00", "", ""), Q(1200, "s"), None),
    ("snow_friction", ("0.07", "", "0.02"), Q(0.07, ""), Q(0.02, "")),
    ("snow_friction", ("7", "%", "2"), Q(7, "percent"), Q(2, "percent")),
    ("efficiency", ("85 %", "", "5 %"), Q(85, "percent"), Q(5, "percent")),
    ("wrap_angle", ("180", "\u00b0", ""), Q(180, "degree"), None),
    ("wrap_angle", ("180\u00b0", "", ""), Q(180, "degree"), None),
    ("loading_places", ("3", "", ""), Q(3, ""), None),
    ("riders_on_line", ("0", "person", "1"), Q(0, "person"), Q(1, "person")),
    ("hourly_capacity", ("20", "people/min", ""), Q(20, "person/minute"), None),
]


@pytest.mark.parametrize(("name", "cells", "value", "half_width"), READ, ids=[" ".join(case[1]) for case in READ])
def test_a_number_is_read_in_the_unit_of_its_row(name, cells, value, half_width):
    found, width = value_of(name, *cells)
    assert found.units == value.units
    assert found.magnitude == pytest.approx(value.magnitude, rel=1e-12)
    assert (width is None) == (half_width is None)
    if width is not None:
        assert (width.units, width.magnitude) == (half_width.units, half_width.magnitude)


def test_decimal_commas_where_semicolons_part_the_cells():
    assert value_of("spacing", "6,8", "m", "0,5", decimal_comma=True) == (Q(6.8, "m"), Q(0.5, "m"))
    assert value_of("ride_time", "1:13,5", decimal_comma=True)[0] == Q(73.5, "s")


@pytest.mark.parametrize("name", [name for name, word in VOCABULARY.items() if word.taken])
def test_the_ends_of_what_is_believed_are_read_and_a_thousandth_beyond_is_not(name):
    word = VOCABULARY[name]
    unit = {"person/hour": "pph", "m/s**2": "m/s2"}.get(word.unit, word.unit)
    for end, beyond in ((word.taken.least, 0.999), (word.taken.most, 1.001)):
        assert value_of(name, f"{end:.3f}", unit if word.unit else "")[0].m_as(word.unit) == pytest.approx(end)
        if end and not word.whole:
            with pytest.raises(CellFault, match="is not believed"):
                value_of(name, f"{end * beyond:.6f}", unit)


FAULTS = [  # quantity, cells, column, message
    ("ride_time", ("1:13", "h"), "unit", "'1:13' is taken as minutes:seconds, but the unit is 'h'. Write s."),
    ("ride_time", ("1:13", "m"), "unit", "'1:13' is taken as minutes:seconds, but the unit is 'm'. Write s."),
    (
        "ride_time", ("1:13 min",), "value", "'1:13 min' is no number. Write digits only, such as 3.4.",
    ),
    ("spacing", ("6.8 mph",), "value",
     "'mph' is a unit of a speed, not of a length. Write 'm', 'ft', 'in', 'cm', 'yd', 'km', 'mi'."),
    ("spacing", ("24 ft", "m"), "unit", "the value says 'ft' and the unit 'm'. Keep one of the two."),
    ("spacing", ("6.8", "m", "1e-1"), "plus_minus", "'1e-1' is no number. Write digits only, such as 3.4."),
    ("spacing", ("1" + 90 * " " + "2", "m"), "value",
     f"'1{39 * ' '}...' is too long. Write a number and its unit, and no more."),
    ("spacing", ("6.8", "m" * 81), "unit", f"'{'m' * 40}...' is too long. Write a number and its unit, and no more."),
    ("spacing", ("6.8", "m", "0" * 81), "plus_minus",
     f"'{'0' * 40}...' is too long. Write a number and its unit, and no more."),
    ("hanging_mass", ("200000", "kg", "8 %"), "plus_minus",
     "'8 %' is a part of the value, but plus_minus is in its unit. Write 16000."),
]  # fmt: skip


@table_of_messages(FAULTS, "name", "cells", "column", kind=CellFault)
def test_a_fault_names_its_column(name, cells, column, message, kind):
    assert refuses(lambda: value_of(name, *cells), message, kind).column == column


def test_about_and_percent_are_told_with_the_decimal_mark_of_the_sheet():
    for came, plain in (("~0.5", "0,5"), ("~0,5", "0,5")):
        refuses(
            lambda came=came: value_of("spacing", came, "m", decimal_comma=True),
            f"'{came}': write the number alone, {plain}, and in the column plus_minus how far it may be off.",
            CellFault,
        )
    refuses(
        lambda: value_of("spacing", "6,8", "m", "5 %", decimal_comma=True),
        "'5 %' is a part of the value, but plus_minus is in its unit. Write 0,34.",
        CellFault,
    )


@pytest.mark.parametrize("text", ["", "not read", "Not Read"])
def test_what_says_that_nothing_was_read(text):
    assert is_empty(text)
    assert not is_empty(f"{text} today")


FACTS_READ = [  # fact, as written, as read
    ("state", "Running", "running"),
    ("drive_position", "TOP", "top"),
    ("level_of_spacing", "packing", "packing"),
    ("date", "2026-02-14", "2026-02-14"),
    ("date", "20260214", "2026-02-14"),
    ("taken_by", "M" * 80, "M" * 80),
    ("snow", "für später, packed", "für später, packed"),
]


@pytest.mark.parametrize(("name", "text", "read"), FACTS_READ)
def test_a_fact_is_read(name, text, read):
    assert read_fact(VOCABULARY[name], text) == read


NO_DAY = "is no date. Write year, month and day, such as 2026-02-14."
NO_FACTS = [  # fact, as written, message
    ("date", "14.2.2026", "the date '14.2.2026' is not written as year, month, day. Write 2026-02-14."),
    ("date", "2/14/2026", "the date '2/14/2026' is not written as year, month, day. Write 2026-02-14."),
    ("date", "3.2.2026", "the date '3.2.2026' is not written as year, month, day. Write 2026-02-03, or 2026-03-02."),
    ("date", "2.2.2026", "the date '2.2.2026' is not written as year, month, day. Write 2026-02-02."),
    ("date", "31.2.2026", f"'31.2.2026' {NO_DAY}"),
    ("date", "2026-02-30", f"'2026-02-30' {NO_DAY}"),
    ("date", "next Monday", f"'next Monday' {NO_DAY}"),
    ("date", "9" * 500, f"'{'9' * 40}...' {NO_DAY}"),
    ("people_waited", "maybe", "people waited must be one of yes, no, some, but got 'maybe'."),
    (
        "people_waited",
        "?",
        "people waited must be one of yes, no, some, but got '?'. Leave the value empty where nothing was read.",
    ),
    ("snow", "wet\nand deep", r"snow must be a short text, but got 'wet\nand deep'. Write at most a line."),
    ("lift", "Ro\u200dpe", r"lift holds a mark that nobody sees: 'Ro\u200dpe'. Type it anew without."),
    ("taken_by", "M" * 81, f"taken by must be a short text, but got '{'M' * 40}...'. Write at most a line."),
]


@table_of_messages(NO_FACTS, "name", "text", kind=CellFault)
def test_a_fact_is_refused(name, text, message, kind):
    assert refuses(lambda: read_fact(VOCABULARY[name], text), message, kind).column == "value"


def test_one_of_several_words_in_any_letters_and_with_or_without_hyphen():
    assert one_of("kind", "t  BAR lift", ("rope tow", "T-bar lift")) == "T-bar lift"
    message = "kind must be one of rope tow, T-bar lift, but got 'T bar'. Is 'T-bar lift' meant?"
    refuses(lambda: one_of("kind", "T bar", ("rope tow", "T-bar lift")), message, CellFault)


SIGNS = st.text(alphabet="0123456789.,'+-\u00b1\u2212/~<:% \u00a0 eEmft\u00b2\u0663ca", max_size=12)


def outcome(*cells):
    """Return what is read of cells and no fault, or nothing and the fault."""
    try:
        return value_of("spacing", *cells), None
    except CellFault as fault:
        return None, fault


@given(value=SIGNS, unit=st.sampled_from(["", "m", "ft", "s", "%"]), plus_minus=SIGNS, decimal_comma=st.booleans())
def test_whatever_the_signs_a_believed_number_or_one_short_line(value, unit, plus_minus, decimal_comma):
    taken = VOCABULARY["spacing"].taken
    read, fault = outcome(value, unit, plus_minus, decimal_comma)
    if fault is None:
        found, width = read
        assert taken.least * 0.999999 <= found.m_as("m") <= taken.most * 1.000001
        assert width is None or 0 <= width.m_as("m") < found.m_as("m")
    else:
        assert len(str(fault).splitlines()) == 1
        assert len(str(fault)) < 250
        assert fault.column in ("value", "unit", "plus_minus")
