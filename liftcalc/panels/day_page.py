"""A page that speaks of one lift and one day on it, from three files of the reader's or four."""

from liftcalc.panels.own_sheets import Page, PagePanel
from liftcalc.simulation.day_files import NEEDED, SORTS, day_from_bytes, read_day_files, sort_of
from liftcalc.units import PlainError


class DayPage(Page):
    """A page that speaks of one lift and one day on it.

    Parameters
    ----------
    sheet, riders, day, count
        The files to begin with, as for ``read_day_files``. By the button come others, together or one after another:
        nothing of one lift is ever held against another, so the page waits until the new ones are complete.
    """

    several, asks = True, "Your own files (CSV)"

    def __init__(self, sheet, riders, day, count=None):
        super().__init__(read_day_files(sheet, riders, day, count))
        self._brought, self._waiting = {}, False

    def picture(self, make, **settings):
        """Return a picture, without sliders, that is made of a ``DayRead``."""
        return PagePanel(self, lambda read: make(read, **settings), make.__name__)

    def lift_panel(self, make, **settings):
        """Return a panel of a line, its readings, its day and its count."""

        def of_day(read):
            return make(read.line, read.readings, tables=read.tables, counts=read.counts, **settings)

        return PagePanel(self, of_day, make.__name__)

    def from_files(self, files):
        """Return the day of the files that came, with those that came before them by the button."""
        came = {}
        for name, raw in files:
            sort = sort_of(name, raw)
            if sort in came:
                raise PlainError(f"{name} and {came[sort][0]} are both {SORTS[sort]}. Bring one of the two.")
            came[sort] = (name, raw)
        anew = "sheet" in came and not self._waiting  # another lift: nothing of the one before is held against it
        self._brought = came if anew else {**self._brought, **came}
        self._waiting = True  # what came stays until it is complete, also where one of the files is faulty
        lacking = [SORTS[sort] for sort in NEEDED if sort not in self._brought]
        if lacking:
            read = " and ".join(f"{name} ({SORTS[sort]})" for sort, (name, _) in self._brought.items())
            raise PlainError(f"Read: {read}. Still to come: {' and '.join(lacking)}.")
        found = day_from_bytes(self._brought)
        self._waiting = False
        return found

    def in_words(self):
        """Say what the page speaks of."""
        read, sheet = self.value, self.value.sheet
        parties, classes = read.tables.parties, read.tables.classes
        riders = f"{len(parties)} sizes of parties" if parties else f"{len(classes)} classes of riders"
        count = f"the count {read.counts.name}" if read.counts else "no count"
        return (
            f"This page speaks of {sheet.title}, a {read.line.kind}: {sheet.name}, {riders}, a day of "
            f"{read.tables.rest['hours']:g} h, and {count}."
        )
