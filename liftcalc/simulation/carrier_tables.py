"""A day of carriers from two small tables, the sizes of parties and the rest; and the day of a line of any kind."""

from liftcalc.fieldwork.cells import CellFault, read_value
from liftcalc.fieldwork.csv_rows import rows_from_bytes
from liftcalc.fieldwork.faults import Fault, FieldSheetError
from liftcalc.fieldwork.safe_files import FieldFileError, quoted, read_bytes
from liftcalc.lifts.kinds import kind_named
from liftcalc.simulation.carrier_day import CarrierDay, ChildRule
from liftcalc.simulation.carrier_run import simulate_carrier_days
from liftcalc.simulation.crowd_rows import row_word, without_crowd
from liftcalc.simulation.crowded_days import simulate_crowded_days
from liftcalc.simulation.day_tables import ADD_UP, NEEDS, OF_A_DAY, DayTables, loading_day, rows_of_a_day
from liftcalc.units import PlainError
from liftcalc.vocabulary import Word

PARTY_COLUMNS = ("party", "share")
_SHARE = row_word("share", "", "part of the parties", 0, 1)
_SIZES = range(1, 101)
# what else a day of carriers is like, by the names of ``CarrierDay``
OF_CARRIERS = {
    **{name: each for name, each in OF_A_DAY.items() if name != "falls_that_stop"},
    "singles_line": Word("singles line", None, "whether whoever is alone has a line of their own", among=("yes", "no")),
    "strangers_apart": row_word("strangers apart", "", "share of those who would have shared, and do not", 0, 1),
    "misloads": row_word("misloads", "", "share of attempts that fail", 0, 0.9),
    "misloads_that_stop": row_word("misloads that stop", "", "share of the misloads that stop the lift", 0, 1),
    "children": row_word("children", "", "share of riders who ride beside an adult only", 0, 0.9),
    "children_an_adult": Word("children an adult", None, "most children beside one adult", among=("1", "2")),
    "rule_for_children": Word("rule for children", None, "its source: which code, authority or operator says so"),
}
_NEEDS = {
    **{name: wanted for name, wanted in NEEDS.items() if name != "falls_that_stop"},
    "misloads_that_stop": ("misloads", "stop_time"),
    "children": ("children_an_adult", "rule_for_children"),
    "children_an_adult": ("children", "rule_for_children"),
    "rule_for_children": ("children", "children_an_adult"),
}


def read_carrier_day(parties, rest):
    """Read a day of carriers from its two tables. The files are only read, never written.

    Parameters
    ----------
    parties : str or Path
        A CSV file with the columns party and share: persons, and part of the parties; a row a size.
    rest : str or Path
        A CSV file with the columns of a sheet; its quantities are those of ``read_day`` but falls that stop, and
        singles line, strangers apart, misloads, misloads that stop, children, children an adult, and rule for children,
        whose value is its source.

    Returns
    -------
    DayTables
        With parties, and without classes.

    Raises
    ------
    FieldFileError
        If a file cannot be read, or holds no party.
    FieldSheetError
        If cells cannot be read, or the shares do not add up to 1; all of it is told at once.
    """
    return DayTables(
        (),
        carrier_rest_from_bytes(*read_bytes(rest, (".csv",), "a day")),
        parties_from_bytes(*read_bytes(parties, (".csv",), "a table of parties")),
    )


def parties_from_bytes(name, raw):
    """Return the share of each size of party in a file that came as bytes. See ``read_carrier_day``."""
    table = rows_from_bytes(name, raw, PARTY_COLUMNS, "a table of parties")
    faults, found = [], {}
    for row in table.rows:
        size, cells = row.cells["party"], {"value": row.cells["share"], "unit": "", "plus_minus": ""}
        try:
            if not (size.isascii() and size.isdigit() and int(size[:4]) in _SIZES):
                raise CellFault("party", f"a party must be 1 to 100 persons, but got {quoted(size)}. Write 2.")
            if int(size) in found:
                raise CellFault("party", f"a party of {size} came before. Keep one of the two.")
            found[int(size)] = read_value(_SHARE, cells, table.decimal_comma)[0].m_as("")
        except CellFault as fault:
            column = "share" if fault.column == "value" else fault.column
            faults.append(Fault(row.number, column, str(fault)))
    total = sum(found.values())
    if found and not faults and abs(total - 1) > ADD_UP:
        words = f"the shares of all parties add up to {100 * total:.4g} %, not to 100 %. Mend one of them."
        faults.append(Fault(table.rows[-1].number, "share", words))
    if faults:
        raise FieldSheetError(name, faults)
    if not found:
        raise FieldFileError(f"{name}: no size of party. Write a row such as: 2,40 %")
    return {size: share / total for size, share in found.items()}


def carrier_rest_from_bytes(name, raw):
    """Return what else a day of carriers is like, from a file that came as bytes. See ``read_carrier_day``."""
    return rows_of_a_day(name, raw, OF_CARRIERS, _NEEDS)


def carrier_day(line, tables):
    """Return the day of a line whose carriers come by the clock.

    Parameters
    ----------
    line : Line
        A line with carriers.
    tables : DayTables
        As ``read_carrier_day`` returns it.

    Returns
    -------
    CarrierDay
        With interval, places and ride time of the line. Where riders hold on by hand, a stop empties it.

    Raises
    ------
    PlainError
        If the line has no carriers, or the tables no parties.
    """
    kind = kind_named(line.kind)
    if not kind.has_carriers:
        raise PlainError(f"carrier_day: {line.name} is a {line.kind}, without carriers. Give a line with carriers.")
    if tables.parties is None:
        raise PlainError(
            f"carrier_day: the day of {line.name} says nothing of parties. Read it by read_carrier_day(parties, rest)."
        )
    rest = without_crowd(tables.rest)
    share, an_adult, source = (rest.pop(name, None) for name in ("children", "children_an_adult", "rule_for_children"))
    if share:
        rest["children"] = ChildRule(source, share, int(an_adult))
    rest["singles_line"] = rest.get("singles_line") == "yes"
    places = line.persons_per_carrier.m_as("person")
    seats = int(places) if places == int(places) else places
    interval, ride_time = line.interval.m_as("s"), line.ride_time.m_as("s")
    return CarrierDay(seats, interval, ride_time, tables.parties, empties=kind.held_by_hand, **rest)


def day_of(line, tables):
    """Return the day of a line of any kind: of its carriers where it has them, else at its loading point.

    Parameters
    ----------
    line : Line
        The line.
    tables : DayTables
        As ``read_carrier_day`` or ``read_day`` returns it.

    Returns
    -------
    CarrierDay or LoadingDay
        Both say governed, causes, rates and what their figure is of in the same way.
    """
    return (carrier_day if kind_named(line.kind).has_carriers else loading_day)(line, tables)


def days_with_arrivals(line, tables, arrivals, seed):
    """Return days of a line of any kind on which people come by the clock, with lunch and closing as the tables say.

    Parameters
    ----------
    line, tables
        As for ``day_of``.
    arrivals : array
        When people come [s since opening], in order, a row a day, as ``days_of_arrivals`` returns them.
    seed : int
        Start of the random numbers.

    Returns
    -------
    CarrierDays or CrowdedDays
        Both say arrived, started, gave_up, turned_away, longest_line and mean_wait, a number a day.
    """
    day = day_of(line, tables)
    if kind_named(line.kind).has_carriers:
        return simulate_carrier_days(day, seed, arrivals=arrivals, **tables.crowd)
    return simulate_crowded_days(day, arrivals, seed, **tables.crowd)
