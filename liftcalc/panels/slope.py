"""The panel of 11 that looks down the slope: riders on each hectare against people an hour."""

import numpy as np

from liftcalc.figures.slope import SlopeChart
from liftcalc.formulas.riders import persons_from_flow
from liftcalc.formulas.slope_crowding import GUIDELINE_DENSITIES, GUIDELINE_SOURCE, slope_capacity, slope_density
from liftcalc.panels.base import ChartPicture, Panel
from liftcalc.quantity_text import show
from liftcalc.units import Q

A_HECTARE = "person/hectare"


class SlopePanel(Panel):
    """How full a slope gets, and at how many people an hour it reaches a guideline that the reader enters."""

    title = "Room on the slope"
    control_names = ("people_an_hour", "descent_time", "slope_area", "guideline_from", "guideline_to")
    first_row, note_lines, leaves_trace, guess_on = 3, 3, True, ("up", A_HECTARE)
    most = 160  # riders a hectare on the chart

    def make_picture(self):
        return ChartPicture(SlopeChart(), SlopePanel._prepare, SlopePanel._move)

    @staticmethod
    def _band(given):
        """Return the ends of the guideline, the lower one first."""
        return sorted((given["guideline_from"], given["guideline_to"]), key=lambda end: end.m_as(A_HECTARE))

    @staticmethod
    def _verdict(density, band):
        """Return how a density stands to the guideline."""
        low, high = band
        return (
            "below the guideline"
            if density < low
            else "above the guideline"
            if density > high
            else "within the guideline"
        )

    def compute(self, given):
        rate, descent, area = (given[name] for name in ("people_an_hour", "descent_time", "slope_area"))
        density, band = slope_density(rate, area, descent), self._band(given)
        full = slope_capacity(band[1], area, descent)
        spare = full - rate
        room = show(spare) if spare.magnitude >= 0 else f"none: {show(-spare)} too many"
        return {
            "riders a hectare": density,
            "that is": self._verdict(density, band),
            "riders on the slope, on average": persons_from_flow(rate, descent),
            "guideline reached at": full,
            "room up to it": room,
        }

    def note(self):
        """Say where the guideline is from, and what is assumed."""
        low, high = (each.m_as(A_HECTARE) for each in self._band(self.given))
        names = [name for name, ends in GUIDELINE_DENSITIES.items() if ends == (round(low, 6), round(high, 6))]
        source = f"{names[0]} slopes, {GUIDELINE_SOURCE}." if names else "as entered; say whose it is."
        return (
            f"Guideline of {low:g} to {high:g}: {source} Assumed: all come down this one slope, spread evenly; at a "
            "crossing, a narrows or the run-out it is fuller. A planning figure: how full it may get, the operator and "
            "the authority say."
        )

    def _prepare(self):
        self.picture.chart.prepare(
            x_label="people an hour down the slope (pph)", y_label="riders a hectare",
            x_range=(0, self.control("people_an_hour").metric.high), y_range=(0, self.most),
        )  # fmt: skip

    def _move(self):
        density, band, full = self.result, self._band(self.given), self.results["guideline reached at"]
        rate, area, descent = (self.given[name] for name in ("people_an_hour", "slope_area", "descent_time"))
        along = np.linspace(1.0, self.control("people_an_hour").metric.high, 200)
        high = slope_density(Q(along, "pph"), area, descent).m_as(A_HECTARE)
        low, most = (each.m_as(A_HECTARE) for each in band)
        self.picture.chart.move(
            title=f"{show(rate)}: {density.m_as(A_HECTARE):,.0f} riders a hectare, {self.results['that is']}",
            line=(along, high), dot=(rate.m_as("pph"), density.m_as(A_HECTARE)),
            dot_text="",  # the title says it
            band=(low, most), band_text=f"guideline, {low:g} to {most:g}",
            full=full.m_as("pph"), full_text=f"guideline reached at {show(full)}",
        )  # fmt: skip
