"""What is wrong with the cells of a sheet: all told at once, and what may be meant by a strange quantity."""

import difflib
from dataclasses import dataclass

from liftcalc.fieldwork.safe_files import FieldFileError
from liftcalc.vocabulary import ON_A_SHEET, words_of

_MOST_FAULTS = 25  # that are told of one sheet


class FieldSheetError(FieldFileError):
    """A sheet cannot be read; the message names row and column, what came and what to write, for each of its faults.

    ``faults`` holds them one by one.
    """

    def __init__(self, name, faults, after=""):
        self.faults = tuple(faults)
        told = [str(fault) for fault in self.faults[:_MOST_FAULTS]]
        more = len(self.faults) - len(told)
        if len(told) == 1:
            super().__init__(f"{name}, {told[0]}{after}")
            return
        lines = [f"{name}: {len(self.faults)} cells cannot be read.", *(f"R{line[1:]}" for line in told)]
        super().__init__(
            "\n".join([*lines, *([f"And {more} more."] if more else []), *([after.strip()] if after else [])])
        )

    @property
    def line(self):
        """Name and message; a fault a line where there are several."""
        return f"{type(self).__name__}: {self}"


@dataclass(frozen=True)
class Fault:
    """What is wrong with one cell: row and column as a spreadsheet shows them, and what to write."""

    row: int
    column: str
    words: str

    def __str__(self):
        return f"row {self.row}, column {self.column}: {self.words}"


_ASKED_ABOUT = {  # what people write, and what may be meant; it is asked and not taken: some of it may be two things
    **dict.fromkeys(
        ("riders on rope", "riders on the rope", "heads", "people on the lift", "riders"), "riders_on_line"
    ),
    **dict.fromkeys(("weight", "rider weight", "weight of a rider", "mass"), "rider_mass"),
    **dict.fromkeys(("length", "slope length", "track length"), "ridden_length"),
    **dict.fromkeys(("vertical", "rise", "height", "drop"), "vertical_rise"),
    **dict.fromkeys(("distance", "distance between chairs", "pitch", "gap"), "spacing"),
    **dict.fromkeys(("chairs", "number of chairs", "carriers", "number of carriers"), "carriers_on_loop"),
    **dict.fromkeys(("count", "people counted", "riders counted"), "persons_counted"),
    **dict.fromkeys(("power", "motor", "engine power"), "motor_power"),
    **dict.fromkeys(("capacity", "people an hour", "pph"), "hourly_capacity"),
    **dict.fromkeys(("drive", "drive at"), "drive_position"),
    **dict.fromkeys(("seats", "people per chair", "persons per chair"), "persons_per_carrier"),
    **dict.fromkeys(("speed", "belt speed", "velocity"), "line_speed"),
    **dict.fromkeys(("type", "lift type", "type of lift"), "kind"),
}


def guess(called):
    """Return a question where a text is near to words of a sheet; else nothing."""
    plain = " ".join(called.casefold().replace("_", " ").replace("-", " ").partition(":")[0].split())
    if plain in _ASKED_ABOUT:
        return f" Is {words_of(_ASKED_ABOUT[plain])!r} meant?"
    near = difflib.get_close_matches(plain, [words_of(name) for name in ON_A_SHEET], n=1, cutoff=0.7)
    return f" Is {near[0]!r} meant?" if near else ""


def raise_faults(sheet, faults):
    """Raise one error with all faults of a sheet, where there are any."""
    if faults:
        faults = sorted(faults, key=lambda fault: fault.row)
        strange = any(fault.words.endswith("is no quantity of a sheet.") for fault in faults)
        words = ""
        if strange:
            words = (
                f" Quantities of a sheet: {', '.join(map(words_of, ON_A_SHEET))}. Whatever is none of them stays out."
            )
        raise FieldSheetError(sheet.name, faults, words)
