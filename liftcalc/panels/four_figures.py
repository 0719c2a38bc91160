"""Ideal, governed, simulated and counted in one picture, in which a guess is drawn, with their table below it."""

from liftcalc.figures.four_figures import FiguresChart
from liftcalc.panels.picture import Picture
from liftcalc.quantity_text import show
from liftcalc.simulation.day_words import figures_table, four_figures


class FourFigures(Picture):
    """The four figures of one lift: bars on one axis, and the table that says what each is of.

    Parameters
    ----------
    read : DayRead
        The lift, its day and its count.
    """

    def __init__(self, read):
        self.figures = four_figures(read.line, read.readings, read.tables, read.counts)
        super().__init__(FiguresChart(len(self.figures)), figures_table(self.figures, read.line.name))

    @property
    def simulated(self):
        """The simulated figure, the mean of its days."""
        return next(each.pph for each in self.figures if each.name == "simulated")

    def show_guess(self, guess):
        """Draw a guess into the picture, in persons an hour."""
        self.picture.show_guess(self, guess.m_as("pph"), None)

    def _read(self):
        return [each for each in self.figures if each.pph is not None]

    def _prepare(self):
        most = max(each.pph.m_as("pph") for each in self._read())
        self.picture.chart.prepare(
            x_label="people an hour (pph)", x_range=(0, 1.45 * most), names=[each.name for each in self.figures]
        )

    def _move(self):
        numbers = [0.0 if each.pph is None else each.pph.m_as("pph") for each in self.figures]
        halves = [0.0 if each.around is None else each.around.m_as("pph") for each in self.figures]
        self.picture.chart.move(
            title="One lift, four questions, four numbers",
            lengths=numbers,
            texts=["not read" if each.pph is None else show(each.pph) for each in self.figures],
            reaches=[
                (max(number - half, 0.0), number + half) if half else ()
                for number, half in zip(numbers, halves, strict=True)
            ],
        )
