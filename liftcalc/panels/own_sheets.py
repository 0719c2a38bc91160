"""A page that speaks of the reader's own sheets: a button that takes files, and parts of the page that follow it.

The page begins with what its marked cell names. Where no code shows, the button is the way, and files of the same visit
come by themselves; a file that cannot be read leaves all as it is, and says why.
"""

from html import escape

import ipywidgets as widgets

from liftcalc.lifts.hill import hill_from_bytes, read_hill
from liftcalc.lifts.sheet import read_sheet, sheet_from_bytes
from liftcalc.lifts.sheet_limits import sheet_limits
from liftcalc.lifts.sheet_line import sheet_line, sheet_readings
from liftcalc.lifts.sheet_words import to_look_at
from liftcalc.panels.base import WIDTH, WithStill
from liftcalc.panels.visit import Visit
from liftcalc.simulation.day_files import sort_of
from liftcalc.tables import Lines
from liftcalc.units import PlainError

# tables in a widget look as they do in any other output
_AS_ELSEWHERE = (
    "<style>.page-part.jp-RenderedHTMLCommon{padding:0;overflow-x:auto} .page-part table{margin:0 0 8px}</style>"
)
MOST_NAMED = 8  # readings that do not agree, or files, at the button
_LOOK = "font-size:14px;line-height:1.4;margin:2px 0"


class Part(WithStill):
    """A piece of a page that shows what a function makes of the page's sheet or hill, and follows it.

    Parameters
    ----------
    page : Page
        The page.
    make : function
        From the page's value to a ``Table``, ``Lines`` or whatever else shows itself.
    """

    def __init__(self, page, make):
        self._page, self._make = page, make
        self._html = widgets.HTML()
        super().__init__([self._html], layout=widgets.Layout(max_width="100%"))
        page.parts.append(self)
        self.renew()

    def renew(self):
        """Show anew what the page speaks of now; what cannot be made of it says so in its place."""
        try:
            self._made = self._make(self._page.value)
            html = self._made._repr_html_()
        except PlainError as error:
            self._made, html = error, f"<div style='{_LOOK}'>{escape(str(error))}</div>"
        self._html.value = f"{_AS_ELSEWHERE}<div class='page-part jp-RenderedHTMLCommon'>{html}</div>"

    def still(self):
        return self._html.value

    def words(self):
        return str(self._made)


class PagePanel(WithStill):
    """A panel that is made anew whenever the page speaks of another sheet or hill.

    Parameters
    ----------
    page : Page
        The page.
    make : function
        From the page's value to a panel.
    name : str
        Name of the panel's class, which a reader of the page need not know.
    """

    def __init__(self, page, make, name=""):
        self._page, self._make, self._name = page, make, name
        self._trouble = widgets.HTML()
        super().__init__([], layout=widgets.Layout(max_width="100%"))
        page.parts.append(self)
        self.panel = None
        self.renew()

    def renew(self):
        """Make the panel anew; where the sheet lacks what it needs, say so, and show no numbers of another lift."""
        try:
            self.panel = self._make(self._page.value)
        except PlainError as error:
            self.panel, self.trouble = None, str(error).removeprefix(f"{self._name}: ")
            self._trouble.value = f"<div role='status' style='{_LOOK}'>{escape(self.trouble)}</div>"
            self.children = [self._trouble]
        else:
            self.trouble = ""
            self.children = [self.panel]

    def show_guess(self, guess):
        """Draw a guess into the picture of the panel."""
        if self.panel:
            self.panel.show_guess(guess)

    def still(self):
        return self.panel.still() if self.panel else self._trouble.value

    def words(self):
        return self.panel.words() if self.panel else self.trouble

    def legend(self):
        """Return the table of the panel's controls."""
        return Part(self._page, lambda _: self._asked(lambda panel: panel.legend()))

    def around(self, control_name, values=None):
        """Return the table of the results at settings of one control: these, or some around where the lift has it.

        Values that are named are of the lift that the page begins with; of another one they may make no sense.
        """

        def at_settings(panel):
            of_this_lift = self._page.value is self._page.first
            return panel.at_settings(control_name, values if values and of_this_lift else _around(panel, control_name))

        return Part(self._page, lambda _: self._asked(at_settings))

    def _asked(self, question):
        return question(self.panel) if self.panel else Lines()  # what the panel lacks stands in its own place


def _around(panel, control_name):
    """Return three settings of a control: three quarters of what the lift has, that itself, and half as much again."""
    value = panel.given[control_name]
    step = panel.control(control_name).metric
    now = value.to(step.unit)
    places = [round(now.magnitude * part / step.step) * step.step for part in (0.75, 1.0, 1.5)]
    return [type(now)(min(max(place, step.low), step.high), now.units) for place in places]


class Button(WithStill):
    """The button that takes the reader's files, and a line that says what the page speaks of.

    In the app view the files that came by the button of another page, or by the front page, come without being asked
    for, and a second button leads back to the demo.

    Parameters
    ----------
    page : Page
        The page.
    several : bool
        Whether several files may come at once.
    """

    def __init__(self, page, several):
        self._page = page
        self.upload = widgets.FileUpload(
            accept=page.takes,
            multiple=several,
            description=page.asks,
            layout=widgets.Layout(width="auto"),
        )
        self.upload.observe(self._came, "value")
        self.back = widgets.Button(description="Back to the demo", layout=widgets.Layout(width="auto", display="none"))
        self.back.on_click(self._go_back)
        self._said = widgets.HTML()
        self.visit = Visit(self._kept)
        super().__init__(
            [widgets.HBox([self.upload, self.back]), self._said, *self.visit.widgets],
            layout=widgets.Layout(width=WIDTH, max_width="100%"),
        )
        page.parts.append(self)
        self.renew()

    def _came(self, change):
        if not change["new"]:
            return
        files = [(file["name"], bytes(file["content"])) for file in change["new"]]
        found = None
        try:
            found = self._page.from_files(files)
        except PlainError as error:
            self._complain(str(error))
        kept = self._page.in_order(files, found)
        if kept:
            self.visit.keep(kept)  # before the page shows it: a reader in a hurry leaves as soon as it does
            self._offer_back()
        if found is not None:
            self._page.take(found)

    def _kept(self, files):
        """Take on what the browser has kept of this visit."""
        if files:
            self._offer_back()
        value, faults = self._page.of_visit(files)
        if value is not None:
            self._page.take(value)
        if faults:
            self._complain("\n".join(faults))

    def _go_back(self, _):
        """Speak of the demo again, and forget the reader's files."""
        self.visit.forget()
        self.upload.value = ()
        self.back.layout.display = "none"
        self._page.back()

    def _offer_back(self):
        if self.visit.is_there:
            self.back.layout.display = ""

    def renew(self):
        """Say what the page speaks of, and in the app view whose files these are."""
        names = self._page.own_files() if self.visit.is_there else []
        words = self._page.called if len(names) == 1 else f"{self._page.called}s"
        own = f"Your {words} {_listed(names)} from this visit.\n" if names else ""
        self._words = own + self._page.in_words()
        self._say(self._words)

    def _complain(self, trouble):
        """Say what is wrong with a file, and of what the page still speaks."""
        self._say(f"{trouble}\n{self._words}", "border-left:4px solid;padding:2px 8px;")

    def _say(self, words, style=""):
        lines = "<br>".join(escape(words).splitlines())
        self._said.value = f"<div role='status' style='{style}{_LOOK}'>{lines}</div>"

    def still(self):
        return self._said.value

    def words(self):
        return self._words


def _listed(names):
    """Return names as one says them: commas, and an "and" before the last; of many the number."""
    more = len(names) - MOST_NAMED
    *most, last = names if more < 2 else [*names[:MOST_NAMED], f"{more} more"]
    return f"{', '.join(most)} and {last}" if most else last


class Page:
    """What a page speaks of, and the parts that follow it."""

    several, asks, called, takes = False, "Your own sheet (CSV)", "sheet", ".csv"

    def __init__(self, value):
        self.value, self.first, self.parts = value, value, []

    def take(self, value):
        """Speak of another sheet or hill from now on."""
        self.value = value
        for part in list(self.parts):
            part.renew()

    def back(self):
        """Speak of what the page began with."""
        self.take(self.first)

    def own_files(self):
        """Return the names of the reader's files that the page speaks of."""
        return [] if self.value is self.first else [self.value.name]

    def in_order(self, files, found):
        """Return those of some files, just come by the button, that are worth keeping; ``found`` is made of them."""
        return [] if found is None else files

    def of_visit(self, files):
        """Return what the page makes of files that were kept, the newest last; None if nothing; and all faults."""
        try:
            return (self.from_files(files) if files else None), []
        except PlainError as error:
            return None, [str(error)]

    def button(self):
        """Return the button for the reader's own files."""
        return Button(self, self.several)

    def show(self, make):
        """Return a part that shows what a function makes of the sheet or hill."""
        return Part(self, make)

    def panel(self, make, **settings):
        """Return a panel of the sheet or hill."""
        return PagePanel(self, lambda value: make(value, **settings), make.__name__)


def sheets_among(files):
    """Return the files that may be the sheet of a lift; the other tables of a day are none."""
    return [file for file in files if sort_or_none(*file) in ("sheet", None)]


def sort_or_none(name, raw):
    """Return what a file of a day is, or None where it is no such file."""
    try:
        return sort_of(name, raw)
    except PlainError:
        return None


class SheetPage(Page):
    """A page that speaks of one sheet.

    Parameters
    ----------
    path : str or Path
        The sheet to begin with.
    """

    def __init__(self, path):
        super().__init__(read_sheet(path))

    def lift_panel(self, make, **settings):
        """Return a panel of the line and the readings of the sheet."""
        return PagePanel(self, lambda sheet: make(sheet_line(sheet), sheet_readings(sheet), **settings), make.__name__)

    @staticmethod
    def from_files(files):
        """Return the sheet in the file that came."""
        return sheet_from_bytes(*files[-1])

    def of_visit(self, files):
        """Return the newest sheet of a visit that can be read, and what is wrong with those that came after it."""
        faults = []
        for file in reversed(sheets_among(files)):
            value, fault = super().of_visit([file])
            if value is not None:
                return value, faults
            faults += fault
        return None, faults

    def in_words(self):
        """Say what the page speaks of."""
        sheet = self.value
        kind = f", a {sheet.kind}" if sheet.kind else ", its kind not read"
        return f"This page speaks of {sheet.title}{kind}: {sheet.name}, {len(sheet.readings)} readings."


class HillPage(Page):
    """A page that speaks of a hill.

    Parameters
    ----------
    folder : str or Path
        The folder of sheets to begin with. What comes by the button stands beside it.
    """

    several, asks = True, "Your own sheets (CSV)"

    def __init__(self, folder):
        super().__init__(read_hill(folder))
        self.newest = None

    def from_files(self, files):
        """Return the hill with the lines of the files that came behind its own."""
        brought = hill_from_bytes(files)
        self.newest = next(iter(brought.lines))
        return self.value.with_(brought)

    def of_visit(self, files):
        """Return the hill with all sheets of a visit; the panel begins with the newest."""
        return super().of_visit(sheets_among(files)[::-1])

    def own_files(self):
        """Return the names of the reader's sheets, as they stand in the hill."""
        own = {id(sheet) for sheet in self.first.sheets.values()}
        return [sheet.name for sheet in self.value.sheets.values() if id(sheet) not in own]

    def in_order(self, files, found):
        """Return the files that became lines of the hill."""
        return [file for file in super().in_order(files, found) if file[0] not in dict(found.left_out)]

    def back(self):
        """Speak of the hill that the page began with."""
        self.newest = None
        super().back()

    def panel(self, make, **settings):
        """Return a panel of the hill, which begins with the line that came last by the button."""
        return PagePanel(self, lambda hill: make(hill, line=self.newest, **settings), make.__name__)

    def doubts(self):
        """Return a part with the limits of the line that came last, each with its doubt; else of the first line."""
        return Part(self, lambda hill: sheet_limits(hill.sheets[self.newest or next(iter(hill.sheets))]))

    def in_words(self):
        """Say what the page speaks of, and which files were left out."""
        lines = self.value.lines
        count = "1 line of a lift" if len(lines) == 1 else f"{len(lines)} lines of lifts"
        newest = f" The newest is {self.newest}." if self.newest else ""
        left_out = "".join(f"\nLeft out: {file}: {why}" for file, why in self.value.left_out)
        doubtful = {name: to_look_at(sheet) for name, sheet in self.value.sheets.items()}
        named = [f"\n{name}: {sentence}" for name, sentences in doubtful.items() for sentence in sentences]
        more = f"\nAnd {len(named) - MOST_NAMED} more such readings." if len(named) > MOST_NAMED else ""
        return f"This page speaks of {count}.{newest}{''.join(named[:MOST_NAMED])}{more}{left_out}"
