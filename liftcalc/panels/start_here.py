"""The panel of 00: the whole job on one screen, from the readings of a field sheet."""

from liftcalc.formulas.capacity import hourly_capacity, vertical_transport
from liftcalc.formulas.loading_point import intended_capacity
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway
from liftcalc.lifts.demo_hill import demo_sheet
from liftcalc.panels.base import Panel
from liftcalc.panels.controls import InUnit
from liftcalc.panels.line_picture import LinePicture
from liftcalc.panels.riders import time_on_the_line
from liftcalc.units import Q
from liftcalc.vocabulary import words_of


class StartPanel(Panel):
    """How many people an hour, on these readings.

    Parameters
    ----------
    sheet : FieldSheet or None
        Readings; their means set the sliders. It must hold line speed and spacing. A slider or a result whose reading
        is missing is left out. None takes the sheet of the demo tow, and leaves the sliders where they are.
    **settings
        As for every panel.
    """

    title = "How many people an hour"
    control_names = ("line_speed", "spacing", "ridden_length")

    def __init__(self, sheet=None, **settings):
        self._sheet = demo_sheet() if sheet is None else sheet
        if not self._sheet.has("ridden length"):
            self.control_names = ("line_speed", "spacing")
        if sheet is not None:
            settings = {name: sheet.mean(words_of(name)) for name in self.control_names} | settings
        fixed = ("vertical_rise", "persons_per_carrier", "pick_up_acceleration")
        self._fixed = {name: self._sheet.mean(words_of(name)) for name in fixed if self._sheet.has(words_of(name))}
        super().__init__(**settings)

    def note(self):
        """Say what is taken of the start, and what is left out for want of a reading."""
        left_out = []
        if "ridden_length" not in self.control_names:
            left_out.append("riders on the line and ride time (no reading of ridden length)")
        if "vertical_rise" not in self._fixed:
            left_out.append("vertical transport (no reading of vertical rise)")
        said = [self._start_of_a_ride()] if "ridden_length" in self.control_names else []
        return " ".join([*said, f"Left out: {'; '.join(left_out)}."] if left_out else said)

    def _start_of_a_ride(self):
        """Return the sentence on how riders come up to the speed of the rope."""
        if "pick_up_acceleration" not in self._fixed:
            return (
                "Ride time and riders: at the speed of the rope from the first metre, as on a belt or a chair (no "
                "reading of pick-up acceleration)."
            )
        how = next((reading.method for reading in self._sheet.of("pick-up acceleration") if reading.method), "")
        pick_up = self.text(self._fixed["pick_up_acceleration"])
        return f"Ride time and riders: a start from rest at {pick_up}{f' ({how})' if how else ''}."

    def make_picture(self):
        return LinePicture()

    def more_controls(self):
        return [self.picture.button]

    def compute(self, given):
        persons = self._fixed.get("persons_per_carrier", Q(1, "person"))
        capacity = hourly_capacity(given["line_speed"], given["spacing"], persons)
        results = {
            "people an hour": intended_capacity(capacity, headway(given["line_speed"], given["spacing"]), persons),
            "people a minute": InUnit(capacity, "person/minute"),
            "people a second": InUnit(capacity, "person/s"),
            "headway": headway(given["line_speed"], given["spacing"]),
        }
        if "ridden_length" in given:
            pick_up = self._fixed.get("pick_up_acceleration")
            ride = time_on_the_line(given["ridden_length"], given["line_speed"], pick_up)
            results["riders on the line, on average"] = persons_from_flow(capacity, ride)
            results["ride time"] = ride
        if "vertical_rise" in self._fixed:
            results["vertical transport"] = vertical_transport(capacity, self._fixed["vertical_rise"])
        return results
