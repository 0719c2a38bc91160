"""A count minute by minute as a picture, with its two rates and their doubt below it."""

from liftcalc.fieldwork.count_words import count_table
from liftcalc.figures.minutes import MinutesChart
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.panels.picture import Picture
from liftcalc.quantity_text import show
from liftcalc.units import PlainError


class CountedMinutes(Picture):
    """A count at the top, drawn minute by minute beside what governs the lift, and its table.

    Parameters
    ----------
    read : DayRead
        The lift and its count.

    Raises
    ------
    PlainError
        If nobody has counted.
    """

    def __init__(self, read):
        if read.counts is None:
            raise PlainError(f"No count of {read.line.name} came. Count at the top, a row a minute, and bring it.")
        self.counts, self._governing = read.counts, governing(limits_of(read.line, read.readings))
        table = count_table(read.counts, self._governing.capacity, ideal=read.line.capacity)
        super().__init__(MinutesChart(), table)

    def _prepare(self):
        clean = set(self.counts.clean)
        found = self._governing
        self.picture.chart.prepare(
            title=f"{len(clean)} of {len(self.counts.rows)} rows are clean: no stop has touched them"
            if self.counts.stops_told
            else f"{len(self.counts.rows)} rows; no stop was written down",
            x_label="time of the clock",
            y_label="persons a minute",
            rows=[
                (row.begin, row.end, row.persons / row.minutes, row in clean, row.stop_seconds)
                for row in self.counts.rows
            ],
            limit=found.capacity.value.m_as("person/minute"),
            limit_text=f"{found.limit.name} allows {show(found.capacity.value)} on average",
        )
