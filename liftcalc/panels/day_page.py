"""A page that speaks of one lift and one day on it, from three files of the reader's or four."""

from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.panels.own_sheets import Page, PagePanel, sort_or_none
from liftcalc.simulation.day_files import NEEDED, SORTS, check_alone, day_from_bytes, read_day_files, sort_of
from liftcalc.units import PlainError


class DayPage(Page):
    """A page that speaks of one lift and one day on it.

    Parameters
    ----------
    sheet, riders, day, count
        The files to begin with, as for ``read_day_files``. By the button come others, together or one after another:
        nothing of one lift is ever held against another, so the page waits until the new ones are complete.
    """

    several, asks, called = True, "Your own files (CSV)", "file"

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
        """Return the day of the files that came, with those that came before them by the button.

        Each file is judged as it comes; what is in order stays, whatever is wrong with the others.
        """
        came, faults = {}, []
        for name, raw in files:
            try:
                sort = sort_of(name, raw)
                check_alone(sort, name, raw)
            except PlainError as error:
                faults.append(str(error))
                continue
            if sort in came:
                raise PlainError(f"{name} and {came[sort][0]} are both {SORTS[sort]}. Bring one of the two.")
            came[sort] = (name, raw)
        if self._is_of_another_lift(came):
            self._brought = {}  # nothing of the lift before is held against it
        self._brought = {**self._brought, **came}
        self._waiting = self._waiting or bool(came)
        lacking = [SORTS[sort] for sort in NEEDED if sort not in self._brought]
        if lacking or faults:
            held = " and ".join(f"{name} ({SORTS[sort]})" for sort, (name, _) in self._brought.items())
            waits = f" Still to come: {' and '.join(lacking)}." if lacking else " Bring the mended file."
            raise PlainError("\n".join([*faults, f"In order: {held or 'none so far'}.{waits}"]))
        found = day_from_bytes(self._brought)
        self._waiting = False
        return found

    def of_visit(self, files):
        """Return the day of the newest files of a visit that are in order, one of each sort; and what was wrong."""
        newest, faults = {}, []
        for file in files:
            sort = sort_or_none(*file)
            try:
                if sort:
                    check_alone(sort, *file)
                    newest[sort] = file
            except PlainError as error:
                faults.append(str(error))
        found, more = super().of_visit([*newest.values()])
        return found, [*faults, *more]

    def own_files(self):
        """Return the names of the reader's files that the page speaks of."""
        return [] if self.value is self.first else [name for name, _ in self._brought.values()]

    def in_order(self, files, found):
        """Return the files that the page holds, also those that wait for others."""
        return [file for file in files if file in self._brought.values()]

    def back(self):
        """Speak of the day that the page began with; nothing waits any more."""
        self._brought, self._waiting = {}, False
        super().back()

    def _is_of_another_lift(self, came):
        """Return whether a sheet came that is of another lift than the day that is shown."""
        if "sheet" not in came or self._waiting:
            return False
        return sheet_from_bytes(*came["sheet"]).title != self.value.sheet.title or not self._brought

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
