"""Readings of a lift beside its line: what its limits need, checked for their kinds."""

from pint import Quantity

from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, UnitError, is_like, parsed_unit
from liftcalc.vocabulary import VOCABULARY

# what a limit may need beside the line, by its name in the vocabulary
READINGS = {
    name: (VOCABULARY[name].unit, VOCABULARY[name].meaning)
    for name in (
        "rider_mass",
        "snow_friction",
        "tether_angle",
        "sheave_drag_share",
        "hanging_mass",
        "bed_friction",
        "return_friction",
        "belt_mass_per_length",
        "idle_drag",
        "efficiency",
        "base_speed",
        "pick_up_acceleration",
        "loading_time",
        "loading_places",
        "loading_timed_as",
        "clearing_time",
        "unloading_places",
        "drive_position",
        "slack_tension",
        "counterweight",
        "rope_mass_per_length",
        "lining_friction",
        "groove_angle",
        "wrap_angle",
        "grip_safety_factor",
        "starting_acceleration",
        "moving_mass",
        "drive_inertia_mass",
        "carrier_length",
        "carrier_gap",
        "station_speed",
        "carpet_speed",
    )
}
SAME_WITHIN = 1e-9  # two writings of one value differ by less
# of a reading that is a word: those that it may be
WORDS = {name: VOCABULARY[name].among for name in ("drive_position", "loading_timed_as")}
_OF_THE_LINE = (
    "line_speed",
    "spacing",
    "persons_per_carrier",
    "ridden_length",
    "sheave_distance",
    "vertical_rise",
    "motor_power",
    "dwell_time",
    "pick_up_acceleration",
    "acceleration",
)


def known_values(line, readings):
    """Return the values of a line and its readings as one dictionary, for the functions of this module.

    Parameters
    ----------
    line : Line
        The line.
    readings : mapping of str to Quantity, or str
        Any of ``READINGS``; what is not known is left out, or None.

    Returns
    -------
    dict
        Quantity by name, the drive position as a word; what is None stands in it no more.

    Raises
    ------
    PlainError
        If a reading is not known here.
    UnitError
        If it has no unit, or one of another kind.
    """
    values = {name: getattr(line, name) for name in _OF_THE_LINE}
    for name, value in readings.items():
        if name not in READINGS:
            raise PlainError(f"known_values: {name!r} is no reading of a lift. Write one of {', '.join(READINGS)}.")
        unit = READINGS[name][0]
        if name in WORDS:
            values[name] = _one_of_the_words(f"known_values: {name}", name, value)
            continue
        if value is not None and not (isinstance(value, Quantity) and is_like(value.units, parsed_unit(unit))):
            bare = "" if isinstance(value, Quantity) else "the bare value "
            raise UnitError(
                f"known_values: {name} must be {READINGS[name][1]}, but got {bare}{as_received(value)}. "
                f"Write Q(..., {unit!r})."
            )
        of_the_line = values.get(name)
        if value is not None and of_the_line is not None and abs((value / of_the_line).m_as("") - 1) > SAME_WITHIN:
            raise PlainError(
                f"known_values: {name} is {show(value)}, but the line {line.name!r} has {show(of_the_line)}. "
                "Write it once."
            )
        values[name] = of_the_line if value is None else value
    return {name: value for name, value in values.items() if value is not None}


def _one_of_the_words(where, name, value):
    """Return a reading that is a word, or None; refuse any other word."""
    word = value.strip().casefold() if isinstance(value, str) else value
    if word is not None and word not in WORDS[name]:
        raise PlainError(f"{where} must be {' or '.join(WORDS[name])}, but got {as_received(value)}. Ask the operator.")
    return word
