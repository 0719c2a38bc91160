"""The panel of 00: the whole job on one screen, from the readings of a field sheet."""

from liftcalc.capacity import hourly_capacity, vertical_transport
from liftcalc.line import headway, persons_on_line, ride_time
from liftcalc.loading_point import intended_capacity
from liftcalc.panels.base import Panel
from liftcalc.panels.controls import InUnit
from liftcalc.panels.line_picture import LinePicture
from liftcalc.units import Q


class StartPanel(Panel):
    """How many people an hour, on these readings.

    Parameters
    ----------
    sheet : FieldSheet or None
        Readings; their means set the sliders. It must hold line speed and spacing. A slider or a result whose reading
        is missing is left out. None starts from the settings of the demo tow.
    **settings
        As for every panel.
    """

    title = "How many people an hour"
    control_names = ("line_speed", "spacing", "ridden_length")

    def __init__(self, sheet=None, **settings):
        self._sheet = sheet
        self._fixed = {"vertical_rise": Q(29.4, "m"), "persons_per_carrier": Q(1, "person")}
        if sheet is not None:
            if not sheet.has("ridden length"):
                self.control_names = ("line_speed", "spacing")
            for name in self.control_names:
                settings.setdefault(name, sheet.mean(name.replace("_", " ")))
            self._fixed = {
                name: sheet.mean(name.replace("_", " ")) for name in self._fixed if sheet.has(name.replace("_", " "))
            }
        super().__init__(**settings)

    def note(self):
        """Say what is left out for want of a reading."""
        left_out = []
        if "ridden_length" not in self.control_names:
            left_out.append("riders on the line and ride time (no reading of ridden length)")
        if "vertical_rise" not in self._fixed:
            left_out.append("vertical transport (no reading of vertical rise)")
        return f"Left out: {'; '.join(left_out)}." if left_out else ""

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
            results["riders on the line, on average"] = persons_on_line(
                ridden_length=given["ridden_length"], spacing=given["spacing"], persons_per_carrier=persons
            )
            results["ride time"] = ride_time(given["ridden_length"], given["line_speed"])
        if "vertical_rise" in self._fixed:
            results["vertical transport"] = vertical_transport(capacity, self._fixed["vertical_rise"])
        return results
