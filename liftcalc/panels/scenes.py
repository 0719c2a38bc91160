"""The scenes of the talk that have a panel: one slider or none, one result in large type, one drawing."""

from html import escape

from liftcalc.figures.stage import (
    READINGS,
    Bar,
    draw_bars,
    draw_inside,
    draw_photo,
    draw_rider_to_rider,
    draw_two_poles,
    draw_watch,
)
from liftcalc.formulas.capacity import hourly_capacity
from liftcalc.formulas.pull import rope_pull
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.spacing import headway
from liftcalc.formulas.stopping import attendant_stopping_distance, riders_inside, rope_deceleration
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_at
from liftcalc.lifts.readings import known_values
from liftcalc.panels.scene_base import (
    BODY,
    COLOUR_OF,
    LARGE,
    SceneFigure,
    ScenePanel,
    an_hour,
    counted_at_the_top,
    in_short,
    of_the_penny_rope,
    the_ideal,
    with_sign,
)
from liftcalc.quantity_text import show
from liftcalc.units import Q


class LimitsScene(ScenePanel):
    """A lift whose limits are drawn as bars; one of its readings is moved."""

    demo = "Penny Rope"
    most = 2200.0  # pph: where the axis ends
    row = 50

    def _of_the_lift(self):
        line, readings = demo_line(self.demo)
        return line.kind, known_values(line, readings)

    @property
    def presets(self):
        _, values = self._of_the_lift()
        (name,) = self.control_names
        return {"as measured": {name: values[name]}, **self.others(values[name])}

    def others(self, measured):
        """Return the presets beside the one that was measured, by name."""
        raise NotImplementedError

    def compute(self, given):
        kind, values = self._of_the_lift()
        self.limits = [limit for limit in limits_at(kind, {**values, **given}) if hasattr(limit, "capacity")]
        self.found = governing(self.limits)
        self.measured = governing(limits_at(kind, values)).capacity
        return {"at most": self.found.capacity, "governs": self.found.limit.name}

    def gained(self):
        """Return how many more, or fewer, with a sign."""
        return with_sign(self.found.capacity.value - self.measured.value)

    def mark(self):
        """Return where a dashed line stands and its words, or None."""
        return

    def drawing(self):
        bars = [
            Bar(
                limit.name, limit.capacity.m_as("pph"), an_hour(limit.capacity)[0], COLOUR_OF[limit.name],
                limit.name == self.found.limit.name,
            )
            for limit in self.limits
        ]  # fmt: skip
        return draw_bars(bars, most=self.most, row=self.row, mark=self.mark())


class WhereTheRestStays(LimitsScene):
    """Scene 6: bars of the limits, and the count beside them."""

    title = "Where the rest stays"
    control_names = ("loading_time",)
    ranges = {"loading_time": [(1.5, 6.0, 0.1)]}

    def others(self, measured):
        return {"half a second less": {"loading_time": Q(2.5, "s")}, "one second more": {"loading_time": Q(4, "s")}}

    def said(self):
        number, unit = an_hour(self.found.capacity)
        return number, f"people {unit}", f"{self.found.limit.name.capitalize()} governs: the narrowest of five."

    def mark(self):
        counted = counted_at_the_top()
        return counted.value.m_as("pph"), f"{an_hour(counted)[0]} counted, people waited"


class HalfTheSpacing(LimitsScene):
    """Scene 7: another spacing on the Penny Rope, and how many more that makes."""

    title = "Half the spacing"
    most, row = 3700.0, 43  # the guesses stand above
    control_names = ("spacing",)
    ranges = {"spacing": [(3.4, 13.6, 0.1), (11.0, 45.0, 0.5)]}

    def others(self, measured):
        return {"half the spacing": {"spacing": measured / 2}}

    def said(self):
        spacing = next(limit for limit in self.limits if limit.name == "spacing")
        governs = self.found.limit
        sentence = (
            f"Spacing would allow {an_hour(spacing.capacity)[0]}; {governs.name} lets "
            f"{an_hour(governs.capacity)[0]} through."
            if governs.name != "spacing"
            else f"Here spacing governs: {an_hour(governs.capacity)[0]} an hour."
        )
        return self.gained(), "people an hour, governed", sentence


class WhatHalfCosts(ScenePanel):
    """Scene 8: who is inside the stopping distance of a fall, the time to take hold, and the top."""

    title = "What half the spacing costs"
    control_names = ("spacing",)
    ranges = {"spacing": [(3.4, 13.6, 0.1), (11.0, 45.0, 0.5)]}
    # assumed, as on the page about spacing
    held_on, brake, reaction, delay, moving = Q(22, "person"), Q(2000, "N"), Q(2, "s"), Q(0.5, "s"), Q(400, "kg")
    # what else changes: a result, its name in the drawing, its colour, where its bar ends
    also = (("to take hold", "to take hold", "time", 4.0), ("at the top at once", "at the top, mean", "persons", 6.0))

    @property
    def presets(self):
        _, values = of_the_penny_rope()
        return {"as measured": {"spacing": values["spacing"]}, "half the spacing": {"spacing": values["spacing"] / 2}}

    def compute(self, given):
        _, values = of_the_penny_rope()
        speed, spacing = values["line_speed"], given["spacing"]
        grade = self.state.values["grade"]
        slowing = rope_deceleration(
            self.held_on, pull=rope_pull(values["rider_mass"], grade=grade, snow_friction=values["snow_friction"]),
            idle_drag=values["idle_drag"], brake_force=self.brake, rider_mass=values["rider_mass"],
            moving_mass=self.moving,
        )  # fmt: skip
        self.distance = attendant_stopping_distance(
            speed, reaction_time=self.reaction, stop_delay=self.delay, rope_deceleration=slowing
        )
        flow = hourly_capacity(speed, spacing)
        return {
            "inside the stopping distance": riders_inside(distance=self.distance, spacing=spacing),
            "to take hold": headway(speed, spacing),
            "at the top at once": persons_from_flow(flow, values["clearing_time"]),
        }

    def said(self):
        number = f"{self.result.m_as('person'):.0f}"
        return (
            number,
            f"{'person' if number == '1' else 'people'} inside the stopping distance",
            "Counting the one who fell; every place taken.",
        )

    def _bars(self):
        """Return the time to take hold and the people at the top, each beside what it was as measured."""
        measured, bars = self.compute(self.first), []
        for name, label, colour, most in self.also:
            now, before = self.results[name], measured[name]
            text, was = (in_short(show(value)).replace("persons", "people") for value in (now, before))
            length, frame = (value.m_as(before.units) / most for value in (now, before))
            moved = text != was
            bars.append(
                Bar(
                    label,
                    length,
                    f"{text}, was {was.split()[0]}" if moved else text,
                    colour,
                    was=frame if moved else None,
                )
            )
        return bars

    def drawing(self):
        return draw_inside(
            spacing=self.given["spacing"].m_as("m"), distance=self.distance.m_as("m"),
            inside=int(self.result.m_as("person")), words=f"stop: {self.text(self.distance)}",
            bars=self._bars(), most=1.0,
        )  # fmt: skip


class HowMeasured(SceneFigure):
    """Scene 3: three readings, each with how it is read, drawn and in words."""

    title = "How it was measured"

    def _rows(self):
        _, values = of_the_penny_rope()
        return [
            (self.text(values["line_speed"], "m/s", "mph"), "speed", "A mark on the rope, two poles", draw_two_poles),
            (self.text(values["spacing"], "m", "ft"), "spacing", "A photo, at a full moment", draw_photo),
            (in_short(show(values["loading_time"])), "loading", "A watch, place free to under way", draw_watch),
        ]

    def status(self):
        rows = "".join(
            f"<div style='display:flex;align-items:center;gap:28px;margin:18px 0;line-height:1.2'>"
            f"<span style='flex:0 0 {READINGS[0]}px'>{drawn()}</span>"
            f"<span style='font-size:{BODY + 2}px'><b style='font-size:64px;white-space:nowrap'>{escape(value)}</b> "
            f"<b style='font-size:38px'>{escape(what)}</b><br>{escape(how)}</span></div>"
            for value, what, how, drawn in self._rows()
        )
        return f"<div>{rows}</div>"

    def words(self):
        return " ".join(f"{what} {value}: {how}." for value, what, how, _ in self._rows())


class OneLine(SceneFigure):
    """Scene 4: one line of arithmetic, from speed and spacing to the ideal."""

    title = "One line of arithmetic"

    def _line(self):
        _, values = of_the_penny_rope()
        speed, spacing = values["line_speed"], values["spacing"]
        between = in_short(show(headway(speed, spacing)))
        return self.text(spacing, "m", "ft"), self.text(speed, "m/s", "ft/s"), between

    def _lines(self):
        spacing, speed, between = self._line()
        return f"{spacing} ÷ {speed} = {between}", f"3,600 s ÷ {between} ="

    def drawing(self):
        """Return the rope from rider to rider; in the talk it stands where no guess was locked."""
        spacing, speed, between = self._line()
        return draw_rider_to_rider(spacing=spacing, between=between, speed=speed)

    def status(self):
        number, unit = an_hour(the_ideal())
        first, second = self._lines()
        return (
            f"<div style='font-size:36px;line-height:1.3'>{escape(first)} from rider to rider</div>"
            f"<div style='font-size:36px;line-height:1.1'>{escape(second)} "
            f"<b style='font-size:{LARGE}px'>{escape(number)}</b> <b style='font-size:{BODY + 6}px'>{escape(unit)}</b>"
            "</div>"
        )

    def words(self):
        first, second = self._lines()
        return f"{first} from rider to rider. {second} {the_ideal()}."
