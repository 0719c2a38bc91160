"""The panel of a day at the loading point: from governed to simulated, cause by cause, and the day as it unrolls."""

from dataclasses import replace

import numpy as np
from pint import Quantity

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.figures.losses import LossesChart
from liftcalc.lifts.demo_hill import DATA
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.panels.base import ChartPicture
from liftcalc.panels.controls import reaching
from liftcalc.panels.lift_panel import LiftPanel
from liftcalc.quantity_text import show
from liftcalc.simulation.day_tables import loading_day, read_day
from liftcalc.simulation.day_words import AT_THE_ROPE, how_far
from liftcalc.simulation.loading_day import CAUSES, simulate_day
from liftcalc.simulation.many_days import losses_by_cause
from liftcalc.simulation.running_time import generators
from liftcalc.units import PlainError, Q

MOST = 0.9  # share of attempts, or of rides, up to which a slider goes


def with_share(classes, what, share):
    """Return the classes with another mean share of misses or falls, counted by rider.

    Below the mean that they have, each is scaled alike; above it, what goes well in each is scaled alike. So the
    mean is met, and no share leaves 0 to 1.
    """
    mean = sum(each.share * getattr(each, what) for each in classes)

    def of(part):
        return part * share / mean if share <= mean else 1 - (1 - part) * (1 - share) / (1 - mean)

    return tuple(replace(each, **{what: of(getattr(each, what))}) for each in classes) if share != mean else classes


class LoadingDayPanel(LiftPanel):
    """One invented day at the loading point: what each cause takes on the way from governed to simulated.

    Parameters
    ----------
    line, readings
        As for ``LiftPanel``: a line that is grabbed, or stepped on, at any time.
    tables : DayTables or None
        The day, as ``read_day`` returns it; the sliders start from it. None takes the day of the demo tow.
    counts : MinuteCounts or None
        A count at the top, as ``read_counts`` returns it; None leaves it out.
    **settings
        As for every panel.

    Raises
    ------
    PlainError
        If carriers come to the riders by a clock of their own, a line came without its day, or the lift is open for no
        longer than a ride takes.
    """

    title = "From governed to simulated, cause by cause"
    control_names = ("misses", "falls", "stops_an_hour", "stop_time", "slow_downs_an_hour", "invented_day")
    first_row, note_lines, leaves_trace, guess_on = 3, 3, True, ("across", "pph")

    def __init__(self, line=None, readings=None, tables=None, counts=None, **settings):
        self.tables, self.counts, self._own = tables, counts, line is None or tables is not None
        if tables is None:
            self.tables = read_day(DATA / "days/penny_rope_classes.csv", DATA / "days/penny_rope_day.csv")
        rest = self.tables.rest
        if not rest.get("slow_time") or rest.get("slow_speed", 1) == 1:  # a slow-down that takes nothing
            self.control_names = tuple(name for name in self.control_names if name != "slow_downs_an_hour")
        self._start_values = {
            **{
                what: Q(100 * sum(each.share * getattr(each, what) for each in self.tables.classes), "percent")
                for what in ("misses", "falls")
            },
            "stops_an_hour": Q(rest.get("stops_an_hour", 0.0), ""),
            "stop_time": Q(rest.get("stop_time", 0.0), "s"),
            "slow_downs_an_hour": Q(rest.get("slow_downs_an_hour", 0.0), ""),
        }
        starts = {name: value for name, value in self._start_values.items() if name in self.control_names}
        super().__init__(line, readings, **{**starts, **settings})

    def refuse_kinds(self):
        """Refuse carriers with a clock of their own, a line without its day, and a day too short for a ride."""
        if self.kind.has_carriers:
            raise PlainError(
                f"LoadingDayPanel: {self.line.name} is a {self.line.kind}, whose carriers come by a clock of their "
                "own. These sliders are of lifts that riders grab, or step on, at any time."
            )
        self._as_read = loading_day(self.line, self.tables)
        if not self._own:
            raise PlainError(
                f"LoadingDayPanel: no day of {self.line.name} came. Write tables=read_day(classes, rest) with its two "
                "files."
            )
        if self._as_read.hours * SECONDS_PER_HOUR <= self._as_read.ride_time:
            raise PlainError(
                f"LoadingDayPanel: {self.line.name} is open for {show(Q(self._as_read.hours, 'h'))}, and a ride takes "
                f"{show(self.line.ride_time)}. Write more hours open."
            )
        self._governing = governing(limits_of(self.line, self.readings))
        self._verdict = self.counts.against(self._governing.capacity) if self.counts is not None else None

    def control(self, name):
        """Return one control; its range holds what the day has."""
        control = reaching(super().control(name), self._start_values.get(name))
        if name in ("misses", "falls") and control.metric.high > 100 * MOST:
            scale = replace(control.metric, high=100 * MOST)
            control = replace(control, metric=scale, us=scale)
        return control

    def guess_place(self, guess):
        """Return the bar of a cause, at its right end; of a number, where it stands among the people an hour."""
        if guess in CAUSES:
            return 0.97 * self.picture.chart.ax.get_xlim()[1], 1 + CAUSES.index(guess)
        return super().guess_place(guess)

    def make_picture(self):
        bars = 1 + len(CAUSES) + 1 + bool(self.counts)
        return ChartPicture(LossesChart(bars), LoadingDayPanel._prepare, LoadingDayPanel._move)

    def day_of(self, given):
        """Return the day as the sliders have it."""
        classes = self._as_read.classes
        for what in ("misses", "falls"):
            classes = with_share(classes, what, given[what].m_as(""))
        rest = {
            "stops_an_hour": given["stops_an_hour"].m_as(""),
            "stop_time": given["stop_time"].m_as("s"),
        }
        if "slow_downs_an_hour" in given:
            rest["slow_downs_an_hour"] = given["slow_downs_an_hour"].m_as("")
        return replace(self._as_read, classes=classes, **rest)

    def compute(self, given):
        self.day, self.seed = self.day_of(given), int(given["invented_day"].m_as(""))
        self.steps = losses_by_cause(self.day, self.seed, days=1)
        (generator,) = generators(self.seed, days=1)  # the one day of the stair, once more
        self.seen = simulate_day(self.day, generator)
        self.simulated = Q(self.seen.rate, "pph")
        return {
            "ideal": str(self.line.capacity),
            "governed": str(self._governing.capacity),
            "simulated": f"{show(self.simulated)} (one day)",
            "counted": self._counted(),
            "availability": f"{100 * self.seen.availability:.1f} % of the day",
        }

    def text(self, value):
        """Return a value as text; a small share keeps its digits."""
        shares = isinstance(value, Quantity) and value.units == Q(1, "percent").units
        return f"{value.magnitude:.3g}%" if shares else super().text(value)

    @property
    def _starts_apart(self):
        """Whether the stair starts at another figure than what governs the lift."""
        return show(self._governing.capacity.value) != show(Q(self._as_read.governed, "pph"))

    def _counted(self):
        """Return the count with its doubt, in the words of the table."""
        if self.counts is None:
            return "not read"
        return f"{self.counts.rate()}, {how_far(self._verdict)}"

    @property
    def _widest(self):
        """Half of the widest interval of the count [pph]; zero where nothing follows from it."""
        return max((each.m_as("pph") for each in self._verdict.plus_minus), default=0.0)

    @property
    def result(self):
        """What the invented day carried."""
        return self.simulated

    def note(self):
        """Say what simulated means, what the stair leaves out, and the cautions."""
        said = [f"Simulated: one invented day of {self.day.hours:g} h, seed {self.seed}, the same each time."]
        found = self._governing
        if found.limit.name not in AT_THE_ROPE:
            said.append(f"It is of the loading point alone: {found.limit.name} governs.")
        if self._starts_apart:
            said.append(f"The stair starts at {show(Q(self.day.governed, 'pph'))}, from the readiness of the riders.")
        said.append(
            "A stop is there for whoever fell, and is never a loss to argue away. Staff on duty watch the riders and "
            "do not count them. People an hour are no contest."
        )
        return " ".join(said)

    def _prepare(self):
        governed = self._as_read.governed
        counted = self.counts.rate().value.m_as("pph") + self._widest if self.counts else 0
        first = "loading point" if self._starts_apart else "governed"
        names = [first, *CAUSES, "simulated", *(["counted"] if self.counts else [])]
        self.picture.chart.prepare(
            x_label="people an hour (pph): dark is what a cause takes, pale is what it leaves",
            x_range=(0, max(1.85 * governed, 1.7 * counted)),
            names=names,
            whole=[first, "simulated", "counted"],
            trace_labels=("hours since opening (h); a gap: the rope stood", "persons\na minute"),
            trace_ranges=((0, self._as_read.hours), (0, 10 * np.ceil(1.6 * governed / 600))),
        )

    def _move(self):
        left = list(self.steps.values())
        lengths = [
            [left[0], 0.0],
            *[[after, max(before - after, 0.0)] for before, after in zip(left, left[1:], strict=False)],
        ]
        texts = [show(Q(left[0], "pph"))]
        texts += [
            f"takes {show(Q(round(before - after), 'pph'))}" for before, after in zip(left, left[1:], strict=False)
        ]
        lengths.append([left[-1], 0.0])
        texts.append(show(self.simulated))
        doubt = ()
        if self.counts is not None:
            counted, widest = self.counts.rate().value.m_as("pph"), self._widest
            doubt = (max(counted - widest, 0.0), counted + widest) if widest else ()
            lengths.append([counted, widest])
            texts.append(f"{show(self.counts.rate().value)}, with doubt")
        who = "by the loading point" if self._starts_apart else "governed"
        self.picture.chart.move(
            title=f"{texts[0]} {who}, {show(self.simulated)} on this invented day",
            lengths=lengths,
            texts=texts,
            doubt=doubt,
            **self._by_minute(),
        )

    def _by_minute(self):
        """Return who was loaded in each minute; a minute in which the rope stood is a gap."""
        loaded = self.seen.by_minute("started").astype(float)
        minutes = np.arange(loaded.size)
        for begin, end in self.seen.stops / 60:
            loaded[(minutes < end) & (minutes + 1 > begin)] = np.nan
        return {"times": (minutes + 0.5) / 60, "persons": loaded}
