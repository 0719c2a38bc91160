"""The panels of 12: what a ride costs over the rides of a season, and which values it hangs on most."""

from dataclasses import replace

import numpy as np

from liftcalc.figures.cost import CostChart, SwingChart
from liftcalc.lifts.cost_of_lift import BILLS, above_capacity, cost_sheet, read_costs, tornado, yearly_cost
from liftcalc.lifts.demo_hill import DATA, demo_line
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.panels.controls import CONTROLS, reaching
from liftcalc.quantity_text import show
from liftcalc.units import Q
from liftcalc.vocabulary import words_of

DEMO = "Penny Rope"
POINTS = 121  # of each curve
A_RIDE, A_SEASON, RIDES = "dollar/person", "dollar/season", "person/season"
MOVED = ("rides", "wage", "running_hours", "price", "life", "interest", "maintenance", "replacement_price",
         "energy_price")  # fmt: skip
PLANNING = "Planning figures: dollars are a label here and no currency."


def demo_cost_sheet(name=DEMO):
    """Return the cost sheet of a line of the demo hill."""
    return cost_sheet(*demo_line(name), read_costs(DATA / "costs.csv")[name])


def _round_up(number):
    """Return the next number up with one figure or two, for the end of an axis."""
    power = 10.0 ** np.floor(np.log10(number))
    return next(float(part * power) for part in (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10) if part * power >= number)


class _SheetPanel(Panel):
    """A panel that starts from a cost sheet.

    Parameters
    ----------
    sheet : CostSheet or None
        What is paid for a lift; that of the demo rope if left out.
    **settings
        As for ``Panel``.
    """

    def __init__(self, sheet=None, **settings):
        self.sheet = sheet or demo_cost_sheet()
        own = {name: getattr(self.sheet, name) for name in self.control_names if hasattr(self.sheet, name)}
        super().__init__(**{**own, **settings})

    def control(self, name):
        """Return one control; its range holds what the sheet has."""
        return reaching(super().control(name), getattr(self.sheet, name, None))


class CostPanel(_SheetPanel):
    """What a ride costs over the rides of a season, what it brings, and where the two meet."""

    title = "What a ride costs"
    control_names = ("price", "life", "interest", "posts", "wage", "rides", "ticket_share")
    first_row, note_lines, leaves_trace, guess_on = 3, 3, True, ("across", RIDES)

    def make_picture(self):
        return ChartPicture(CostChart(), CostPanel._prepare, CostPanel._move)

    def _sheet(self, given):
        """Return the cost sheet as the sliders have it; what is left at the end or granted is at most the price."""
        own = {name: given[name] for name in self.control_names if name != "ticket_share"}
        capped = {name: min(getattr(self.sheet, name), given["price"]) for name in ("salvage", "grant")}
        return replace(self.sheet, **own, **capped)

    def compute(self, given):
        sheet = self._sheet(given)
        free = replace(sheet, wage=Q(0.0, "dollar/hour"))
        self.cost, self.unpaid = yearly_cost(sheet), yearly_cost(free)
        self.even = self._break_even(self.cost, given)
        return {
            "cost of a ride": self.cost.per_ride,
            "cost of a year": self.cost.total,
            "break-even": self.even or "none",
            "a ride, volunteers at nought": self.unpaid.per_ride,
            "cash cost of a year": self.cost.cash,
            "break-even, volunteers at nought": self._break_even(self.unpaid, given) or "none",
        }

    def _break_even(self, cost, given):
        """Return the rides that pay for the lift; None where a ride brings no more than it costs itself."""
        if given["ticket_share"] <= cost.variable_per_ride:
            return None
        return cost.break_even(given["ticket_share"])

    def note(self):
        """Say what makes a ride cheap on paper alone, or else why there is no break-even; and what is assumed."""
        sheet, share = self.cost.sheet, self.given["ticket_share"]
        warned = self._cheap_on_paper()
        first = warned or (
            f"No number of rides pays: a ride brings {show(share)}, its energy costs "
            f"{show(self.cost.variable_per_ride)}."
            if self.even is None
            else "Cash cost: all but the capital recovery."
        )
        bills = sum((getattr(sheet, name) for name in BILLS), Q(0.0, A_SEASON)).m_as(A_SEASON)
        rest = "" if sheet.grant.magnitude == 0 else f"a grant of {show(sheet.grant)}, "
        return (
            f"{first} Assumed for {sheet.name}: it runs "
            f"{show(sheet.running_hours)}, {rest}salvage {show(sheet.salvage)}, bills {bills:,.0f} and rope or belt "
            f"{show(self.cost.parts['rope or belt'])}, energy {show(sheet.energy_price)}. "
            f"{'Planning figures.' if warned else PLANNING}"  # three lines hold no more
        )

    def _cheap_on_paper(self):
        """Return a sentence each on posts below those of the lift, and on rides above what it could carry."""
        sheet, own = self.cost.sheet, self.sheet.posts
        said = []
        if sheet.posts < own:
            posts = f"{own.m_as(''):g} post{'' if own.m_as('') == 1 else 's'}"
            said.append(f"Fewer than the {posts} of this lift: the code and the sight lines decide.")
        if above_capacity(sheet):
            hours = show(sheet.running_hours).removesuffix(" a season")
            said.append(f"More rides than {show(sheet.hourly_capacity)} (governed) allow in {hours}.")
        return " ".join(said)

    def _prepare(self):
        self.right = self.control("rides").metric.high
        high = max(2 * yearly_cost(self.sheet).per_ride.m_as(A_RIDE), 1.6 * CONTROLS["ticket_share"].start.magnitude)
        self.picture.chart.prepare(
            x_label="rides carried (rides a season)",
            y_label="a ride (dollars)",
            x_range=(0, self.right),
            y_range=(0, _round_up(high)),
        )

    def _move(self):
        share, rides = self.given["ticket_share"].m_as(A_RIDE), self.given["rides"].m_as(RIDES)
        x = np.geomspace(self.right / 1000, self.right, POINTS)
        paid, unpaid = (
            yearly_cost(replace(cost.sheet, rides=Q(x, RIDES))).per_ride.m_as(A_RIDE)
            for cost in (self.cost, self.unpaid)
        )
        per_ride = self.cost.per_ride
        told = "no number of rides pays for it" if self.even is None else f"break-even at {show(self.even)}"
        self.picture.chart.move(
            title=f"A ride costs {show(per_ride * Q(1, 'person'))}; {told}",
            lines=[
                (x, paid, "cost, staff paid"),
                (x, unpaid, "volunteers at 0"),
                ([0, self.right], [share, share], "ticket share"),
            ],
            dot=(rides, per_ride.m_as(A_RIDE)),
            dot_text=show(per_ride),
            even=None if self.even is None else self.even.m_as(RIDES),
        )


class CostDriversPanel(_SheetPanel):
    """Which values the cost of a ride hangs on most, each moved by itself."""

    title = "What the cost of a ride hangs on"
    control_names = ("moved_by",)
    note_lines, leaves_trace = 3, True

    def guess_place(self, guess):
        """Return where a guess is drawn: at the right end of the row of a value, by its name."""
        names = [swing.name for swing in self.swings]
        return 0.97 * self.picture.chart.ax.get_xlim()[1], names.index(guess)

    def make_picture(self):
        return ChartPicture(SwingChart(len(MOVED)), CostDriversPanel._prepare, CostDriversPanel._move)

    def swings_at(self, moved_by):
        """Return the tornado of the sheet, each value moved down and up by one part of it."""
        part, ranges = moved_by.m_as(""), {}
        for name in MOVED:
            value = getattr(self.sheet, name)
            low, high = value * (1 - part), value * (1 + part)
            if name == "price":
                low = max(low, self.sheet.salvage, self.sheet.grant)
            if name == "interest":
                high = min(high, max(value, Q(100.0, "percent")))
            ranges[name] = (low, high)
        return tornado(self.sheet, ranges)

    def compute(self, given):
        self.cost, self.swings = yearly_cost(self.sheet), self.swings_at(given["moved_by"])
        return {
            "cost of a ride": self.cost.per_ride,
            "largest swing": self._told(self.swings[0]),
            "smallest swing": self._told(self.swings[-1]),
        }

    @staticmethod
    def _told(swing):
        return f"{words_of(swing.name)}, {show(swing.swing)}"

    def note(self):
        """Say what is assumed, and what such a picture does not say."""
        return (
            f"Assumed: each value of {self.sheet.name} is moved by {show(self.given['moved_by'])} alone, the others "
            "stay. How likely that is, and what moves together, the bars do not say: what is well known and what "
            f"is guessed are moved alike. More posts do what more wage does. {PLANNING}"
        )

    def _prepare(self):
        ends = [cost.m_as(A_RIDE) for row in self.swings_at(Q(50, "percent")) for cost in row.costs]
        low, high = min(ends), max(ends)
        pad = 0.32 * (high - low)
        self.picture.chart.prepare(
            x_label="cost of a ride (dollars); pale: low value, dark: high",
            x_range=(low - pad, high + pad),
            quantity="money",
        )

    def _move(self):
        self.picture.chart.move(
            title=f"The cost of a ride hangs most on the {words_of(self.swings[0].name)}",
            middle=self.cost.per_ride.m_as(A_RIDE),
            rows=[
                (words_of(row.name), _range(row.values), *zip(*_ends(row.costs), strict=True)) for row in self.swings
            ],
        )


def _ends(costs):
    """Return the plain number and the label of the cost at the low end of a value and at its high end."""
    for word, cost in zip(("low", "high"), costs, strict=True):
        number = cost.m_as(A_RIDE)
        yield number, f"{word} {number:.3f}"


def _range(values):
    """Return the two ends of a value with their unit; a percentage with a digit more than usual."""
    low, high = values
    if low.units == Q(1, "percent").units:
        return f"{low.magnitude:.1f} to {high.m_as('percent'):.1f} %"
    return show(Q([low.magnitude, high.m_as(low.units)], low.units)).replace(", ", " to ", 1)
