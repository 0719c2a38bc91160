"""What is common to panels that speak of one lift: its line, and what was read of it."""

from liftcalc.formulas.grade import grade_from_rise, vertical_rise
from liftcalc.formulas.pull import tether_relief
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.lifts.kinds import kind_named, map_length
from liftcalc.lifts.readings import known_values
from liftcalc.panels.base import Panel
from liftcalc.panels.controls import reaching
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import words_of


def slider_values(names, values):
    """Return what sliders of these names show of a line; what it has no reading of is not there."""
    grade = grade_from_rise(vertical_rise=values["vertical_rise"], horizontal_run=map_length(values))
    known = {**values, "grade": grade.to("percent")}
    return {name: known[name] for name in names if name in known}


class LiftPanel(Panel):
    """A panel that speaks of one lift.

    A subclass names the readings that it cannot do without, and takes them from ``known``.

    Parameters
    ----------
    line : Line or None
        The line, from which the sliders start as well; a line of the demo hill if left out.
    readings : mapping of str to Quantity, or None
        Its readings, as ``known_values`` takes them.
    **settings
        As for ``Panel``.

    Raises
    ------
    PlainError
        If the line lacks a reading that the panel needs.
    """

    demo = "Penny Rope"
    needs = ()

    def __init__(self, line=None, readings=None, **settings):
        given = line is not None
        self.line, self.readings = (line, readings or {}) if given else demo_line(self.demo)
        self.kind = kind_named(self.line.kind)
        self.known = known_values(self.line, self.readings)
        self.refuse_kinds()
        unread = [words_of(name) for name in self.wanted() if name not in self.known]
        if unread:
            raise PlainError(
                f"{type(self).__name__}: {', '.join(unread)} of {self.line.name} not read. Add a row of each to its "
                "sheet."
            )
        super().__init__(**{**(slider_values(self.control_names, self.known) if given else {}), **settings})

    def refuse_kinds(self):
        """Refuse a lift of a kind that the panel is not about."""

    def wanted(self):
        """Return the names of the readings that the panel cannot do without."""
        return self.needs

    @property
    def on_skis(self):
        """Whether the lift draws its riders on skis."""
        return "snow_friction" in self.kind.riding.work_readings

    def of_a_ride(self):
        """Return the names of what the work of a ride and the drag of the empty lift need."""
        drag = () if "idle_drag" in self.known else self.kind.riding.drag_readings or ("idle_drag",)
        return ("rider_mass", *self.kind.riding.work_readings, *drag)

    def values(self, given):
        """Return all values of the lift as the sliders have them."""
        rise = vertical_rise(self.known["ridden_length"], given["grade"])
        return {**self.known, **given, "vertical_rise": rise}

    def relief(self, snow_friction):
        """Return what part of a pull along the slope the rope feels: less than 1 where a tether was read."""
        angle = self.known.get("tether_angle")
        return Q(1.0, "") if angle is None else tether_relief(angle, snow_friction)

    def control(self, name):
        """Return one control; its range holds what the lift has."""
        return reaching(super().control(name), slider_values((name,), self.known).get(name))
