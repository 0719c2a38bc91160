"""The panel of 00: the whole job on one screen, from the readings of a sheet."""

from liftcalc.formulas.capacity import hourly_capacity, vertical_transport
from liftcalc.formulas.grade import grade_from_rise
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway
from liftcalc.levels import Capacity
from liftcalc.lifts.demo_hill import demo_sheet
from liftcalc.lifts.kinds import NOT_READ, kind_named, map_length
from liftcalc.lifts.sheet_line import known_of, level_of
from liftcalc.lifts.sheet_words import to_look_at
from liftcalc.panels.base import Panel
from liftcalc.panels.controls import InUnit, reaching
from liftcalc.panels.line_picture import LinePicture
from liftcalc.panels.riders import time_on_the_line
from liftcalc.quantity_text import show
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import words_of


class StartPanel(Panel):
    """How many people an hour, on these readings.

    Parameters
    ----------
    sheet : FieldSheet or None
        Readings; they set the sliders. Line speed and spacing must follow from them. A slider or a result whose reading
        is missing is left out. None takes the sheet of the demo tow, and leaves the sliders where they are.
    **settings
        As for every panel.

    Raises
    ------
    PlainError
        If line speed or spacing does not follow from the sheet, or if the lift runs to and fro and has no spacing.
    """

    title = "How many people an hour"
    control_names = ("line_speed", "spacing", "ridden_length")

    def __init__(self, sheet=None, **settings):
        self._sheet = demo_sheet() if sheet is None else sheet
        self._kind, self._known = kind_named(self._sheet.kind or NOT_READ), known_of(self._sheet)
        self._refuse_what_cannot_be_shown()
        self.drawn_each = "carrier" if self._kind.has_carriers else "rider"
        if "ridden_length" not in self._known:
            self.control_names = ("line_speed", "spacing")
        if sheet is not None:
            settings = {name: self._known[name] for name in self.control_names} | settings
        super().__init__(**settings)

    def _refuse_what_cannot_be_shown(self):
        lacks = [words_of(name) for name in ("line_speed", "spacing", "persons_per_carrier") if name not in self._known]
        if lacks:
            raise PlainError(
                f"{self._sheet.line}: {' and '.join(lacks)} not read, so people an hour do not follow. Add a row of "
                "each to the sheet."
            )
        if self._kind.reversible:
            raise PlainError(
                f"{self._sheet.line} runs to and fro: it has no spacing to move here. What it carries stands below, "
                "and 07 Every kind of lift has a panel for it."
            )

    def control(self, name):
        """Return one control; its range holds what the sheet has."""
        return reaching(super().control(name), self._known.get(name))

    def slope(self):
        """Return the grade of the sheet for the picture, and its words."""
        if "ridden_length" not in self._known or "vertical_rise" not in self._known:
            return Q(0, "percent"), "a slope that was not read, drawn level"
        run = map_length(self._known)
        grade = grade_from_rise(vertical_rise=self._known["vertical_rise"], horizontal_run=run).to("percent")
        return grade, f"a slope of {show(grade)}"

    def note(self):
        """Say what is taken of the start, and what is left out for want of a reading."""
        left_out = []
        if "ridden_length" not in self.control_names:
            left_out.append("riders on the line and ride time (ridden length not read)")
        if "vertical_rise" not in self._known:
            left_out.append("vertical transport (vertical rise not read)")
        said = ["Readings of this sheet do not agree: see above."] if to_look_at(self._sheet) else []
        said += [self._start_of_a_ride()] if "ridden_length" in self.control_names else []
        if self._kind.has_carriers:
            said.append("The picture draws each carrier as one rider on the snow.")
        if not self._sheet.has("persons_per_carrier"):
            said.append("Persons per carrier taken as 1: not read.")
        return " ".join([*said, f"Left out: {'; '.join(left_out)}."] if left_out else said)

    def _start_of_a_ride(self):
        """Return the sentence on how riders come up to the speed of the rope."""
        if "pick_up_acceleration" in self._known:
            how = self._sheet.method("pick_up_acceleration")
            pick_up = self.text(self._known["pick_up_acceleration"])
            return f"Ride time and riders: a start from rest at {pick_up}{f' ({how})' if how else ''}."
        if self._kind.start_reading:
            return (
                "Ride time and riders: at the speed of the rope from the first metre (pick-up acceleration not read); "
                "a start from rest takes longer."
            )
        return "Ride time and riders: at the speed of the rope from the first metre."

    def make_picture(self):
        return LinePicture()

    def more_controls(self):
        return [self.picture.button]

    def compute(self, given):
        persons = self._known["persons_per_carrier"]
        capacity = hourly_capacity(given["line_speed"], given["spacing"], persons)
        between = headway(given["line_speed"], given["spacing"])
        level, carriers = level_of(self._sheet), self._kind.has_carriers if self._sheet.kind else None
        results = {
            "people an hour": intended_capacity(capacity, between, persons, carriers=carriers, level=level)
            if level in ("ideal", "packing")
            else Capacity(capacity, level),
            "people a minute": InUnit(capacity, "person/minute"),
            "people a second": InUnit(capacity, "person/s"),
            "headway": between,
        }
        if "ridden_length" in given:
            pick_up = self._known.get("pick_up_acceleration")
            ride = time_on_the_line(given["ridden_length"], given["line_speed"], pick_up)
            results["riders on the line, on average"] = persons_from_flow(capacity, ride)
            results["ride time"] = ride
        if "vertical_rise" in self._known:
            results["vertical transport"] = vertical_transport(capacity, self._known["vertical_rise"])
        return results
