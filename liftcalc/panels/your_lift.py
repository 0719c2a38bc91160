"""A page that speaks of one lift from whatever files there are of it, and its pictures."""

from operator import itemgetter

import ipywidgets as widgets

from liftcalc.fieldwork.count_words import rows_against_bound
from liftcalc.figures.four_figures import FiguresChart
from liftcalc.figures.spread import MethodsChart
from liftcalc.lifts.hill import hill_from_bytes
from liftcalc.lifts.limit_records import LeftOut
from liftcalc.lifts.limits import LIMITS
from liftcalc.panels.own_sheets import Button, Page, PagePanel, Part
from liftcalc.panels.picture import Picture
from liftcalc.quantity_text import show, unit_word
from liftcalc.simulation.lift_files import LiftFiles, read_lift_files, sort_of_file
from liftcalc.simulation.lift_words import count_of, limits, modelled
from liftcalc.tables import Lines
from liftcalc.uncertainty import expand
from liftcalc.units import PlainError


class FilesButton(Button):
    """The button that takes any file of a lift; below it each file can be taken out again."""

    def __init__(self, page):
        self._files = widgets.HBox(layout=widgets.Layout(flex_flow="row wrap", margin="2px 0 6px"))
        super().__init__(page, several=True)
        self.children = [*self.children, self._files]

    def renew(self):
        """Say what the page speaks of, and offer each of its files to be taken out."""
        super().renew()
        read = self._page.value
        offered = [
            (f"Take out {file.name}", lambda sort=sort, name=file.name: self._take_out(sort, name))
            for sort, file in read.came.items()
        ]
        if read.has("sheet", "second"):
            words = f"Swap the sheets: the other files are of {read.made('second').title}"
            offered.append((words, lambda: self._page.take(self._page.value.swapped())))
        self._files.children = [self._small(words, press) for words, press in offered]
        self.back.layout.display = "none" if read is self._page.first else ""

    def _take_out(self, sort, name):
        self.visit.forget(name)
        self._page.take(self._page.value.without(sort))

    @staticmethod
    def _small(words, press):
        button = widgets.Button(description=words, tooltip=words, layout=widgets.Layout(width="auto", height="28px"))
        button.on_click(lambda _: press())
        return button


class YourLiftPage(Page):
    """A page that speaks of one lift.

    Parameters
    ----------
    folder : str or Path
        The files to begin with, as for ``read_lift_files``. By the button come others, together or one after another:
        the first of them puts those of the folder away.
    """

    several, asks, called, takes = True, "Your files", "file", ".csv,.gpx,.kml,.geojson,.json"

    def __init__(self, folder):
        super().__init__(read_lift_files(folder))
        self.example = True

    def button(self):
        """Return the button for the reader's own files."""
        return FilesButton(self)

    def back(self):
        """Speak of the files of the folder again."""
        self.example = True
        super().back()

    def from_files(self, files):
        """Return what there is of the lift, with the files that came; refuse them where none is in order."""
        before = LiftFiles() if self.example else self.value
        found = before.with_(files)
        if not any(file.name == name and file.raw == raw for name, raw in files for file in found.came.values()):
            raise PlainError("\n".join(why for _, why in found.left_out))
        self.example = False
        return found

    def of_visit(self, files):
        """Return the lift of the newest sheet of a visit, the one before as the second, and the newest of the rest."""
        sheets, rest, found = [], {}, LiftFiles()
        for file in files:
            sort = _sort_or_none(*file)
            sheets += [file] if sort == "sheet" else []
            rest |= {sort: file} if sort not in ("sheet", None) else {}
        for file in reversed(sheets):
            more = found.with_([file])
            found = more if len(more.came) > len(found.came) and len(more.came) < 3 else found
        found = found.with_(list(rest.values()))
        if not found.came:
            return None, []
        self.example = False
        return found, []

    def own_files(self):
        """Return the names of the reader's files that the page speaks of."""
        return [] if self.example else [file.name for file in self.value.came.values()]

    def in_order(self, files, found):
        """Return all of the reader's files that the page speaks of, its own sheet last: it counts as the newest."""
        if found is None:
            return []
        own = sorted(found.came.items(), key=lambda item: item[0] == "sheet")
        return [(file.name, file.raw) for _, file in own]

    def picture(self, make):
        """Return a picture, without sliders, that is made of the files."""
        return PagePanel(self, make, getattr(make, "__name__", ""))

    def about_example(self, words):
        """Return a part with words on the example, which goes when other files come, or one of its own is taken out."""
        return Part(self, lambda read: Lines(words) if read is self.first else Lines())

    def panel(self, make, **settings):
        """Return a panel of a hill that holds the lift and, where there is one, the second."""

        def of_files(read):
            first = read.line  # says what is lacking where the sheet makes no line
            sheets = [read.came[sort] for sort in ("sheet", "second") if read.has(sort)]
            return make(hill_from_bytes([(sheet.name, sheet.raw) for sheet in sheets]), line=first.name, **settings)

        return PagePanel(self, of_files, make.__name__)

    def in_words(self):
        """Say what the page speaks of, what gave way, and what was left out."""
        read = self.value
        if read.has("sheet"):
            kind = f"a {read.sheet.kind}" if read.sheet.kind else "its kind not read"
            lift = f"{read.sheet.title}, {kind}"
        else:
            lift = "a lift whose sheet did not come"
        files = "1 file" if len(read.came) == 1 else f"{len(read.came)} files"
        begins = "As an example this page speaks" if self.example else "This page speaks"
        lines = [f"{begins} of {lift}: {files}."]
        lines += [f"{name} gave way to what came after it." for name in read.gone]
        lines += [f"Left out: {why}" for _, why in read.left_out]
        return "\n".join(lines)


def _sort_or_none(name, raw):
    try:
        return sort_of_file(name, raw)
    except PlainError:
        return None


class AgreementOfFiles(Picture):
    """One quantity by several ways, each with its plus-minus, and all of them together.

    Parameters
    ----------
    agreement : Agreement
        As ``speeds`` and ``lengths`` return it.
    """

    def __init__(self, agreement):
        self.agreement, self.found = agreement, agreement.combined
        super().__init__(MethodsChart(), agreement.table())

    def _rows(self):
        return [expand(each) for each in [*self.agreement.methods, self.found.estimate]]

    def _prepare(self):
        unit = self.found.value.units
        ends = [row.value.m_as(unit) + side * row.expanded.m_as(unit) for row in self._rows() for side in (-1, 1)]
        margin = 0.25 * (max(ends) - min(ends))
        self.picture.chart.prepare(
            x_label=f"{self.agreement.quantity} ({unit_word(unit)})",
            x_range=(min(ends) - margin, max(ends) + margin),
            names=[*(f"by the {each.method}" for each in self.agreement.methods), "all together"],
            quantity="line speed" if self.found.value.check("[speed]") else "length",
        )

    def _move(self):
        unit, rows = self.found.value.units, self._rows()
        agree = "agree" if self.found.agrees else "do not agree"
        self.picture.chart.move(
            title=f"The {self.agreement.quantity}: {len(self.agreement.methods)} ways, and they {agree}",
            values=[row.value.m_as(unit) for row in rows],
            widths=[row.expanded.m_as(unit) for row in rows],
            texts=[row.short for row in rows],
        )


class LimitsAndCount(Picture):
    """Every limit of the lift with its doubt, and below them what a day and a count make of it, on one axis.

    Parameters
    ----------
    read : LiftFiles
    """

    def __init__(self, read):
        self.limits = limits(read)
        if self.limits.governs is None:
            raise PlainError("No limit can be computed from this sheet.")
        self.bars = [*sorted(self._of_limits(), key=itemgetter(1)), *self._of_what_passed(read)]
        colours = [colour for *_, colour in self.bars]
        super().__init__(FiguresChart(len(self.bars), colours, left=0.24))

    def show_guess(self, guess):
        """Draw a guess into the picture, in persons an hour."""
        self.picture.show_guess(self, guess.m_as("pph"), None)

    def _of_limits(self):
        """Yield name, size [pph], ends, words and colour of each limit that can be computed."""
        set_by = {entry.name: entry.set_by for entry in LIMITS}
        for record in self.limits.records:
            if not isinstance(record, LeftOut):
                ends = self.limits.ranges.get(record.name)
                governs = " governs" if record is self.limits.governs.limit else ""
                yield (
                    f"limit: {record.name}", record.capacity.m_as("pph"), () if ends is None else ends.m_as("pph"),
                    f"{show(record.capacity)}{governs}", set_by[record.name],
                )  # fmt: skip

    @staticmethod
    def _of_what_passed(read):
        """Yield the same of the modelled day and of the count."""
        found, _ = modelled(read)
        if found is not None:
            yield "simulated day", found.value.m_as("pph"), (), show(found.value), "capacity"
        if read.has("count"):
            counts = count_of(read)
            both = (("counted, clean", True), ("counted, by clock", False))
            for name, clean in both if counts.stopped else (("counted", False),):
                rows = counts.clean if clean else counts.rows
                if rows:
                    found = rows_against_bound(counts, rows)
                    size = found.counted.value.m_as("pph")
                    around = max((each.m_as("pph") for each in found.plus_minus), default=0.0)
                    ends = (max(size - around, 0.0), size + around) if around else ()
                    yield name, size, ends, show(found.counted.value), "persons"

    def _prepare(self):
        most = max(max([size, *ends]) for _, size, ends, *_ in self.bars)
        self.picture.chart.prepare(
            x_label="people an hour (pph); the lines are 95 of 100",
            x_range=(0, 1.3 * most),
            names=[name for name, *_ in self.bars],
        )

    def _move(self):
        governs = self.limits.governs
        self.picture.chart.move(
            title=f"{self.limits.title}: {governs.limit.name} governs, at most {show(governs.limit.capacity)}",
            lengths=[size for _, size, *_ in self.bars],
            texts=[words for _, _, _, words, _ in self.bars],
            reaches=[tuple(ends) for _, _, ends, *_ in self.bars],
        )

    def words(self):
        return "\n".join(f"{name}: {words}" for name, _, _, words, _ in self.bars)
