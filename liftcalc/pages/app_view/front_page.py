"""The front page of the app view: what this is for, where to begin, a sheet of one's own, and all pages.

It needs no kernel and no network. What it says of the pages stands in one place, the table of the README.
"""

import asyncio
import re
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import jinja2
from tornado.web import RequestHandler

from liftcalc.cautions import ONE_LINE, THE_THREE
from liftcalc.pages.blank_sheet import FILES
from liftcalc.pages.save_links import address_of

HERE = Path(__file__).parent
NOTEBOOKS = HERE.parents[2] / "notebooks"
TALK_FILE = "talk.html"  # the talk on a stick
LONGEST = 120  # seconds until the making of a file is given up
YOUR_LIFT, TALK = "13", "14"
_ROW = re.compile(
    r"^\| \[(?P<page>[^]]+)\]\(notebooks/(?P<stem>\w+)\.ipynb\) \| (?P<question>[^|]+?) *"
    r"\| (?P<minutes>\d+) \| (?P<with_exercises>\d+) \| (?P<readers>[a-z, ]+?) *\|$",
    flags=re.MULTILINE,
)
_TAKES = re.compile(r"\b(\w+)Page\(")


@dataclass(frozen=True)
class Line:
    """A page of the series, as the front page lists it.

    Parameters
    ----------
    number, name : str
        Its number of two digits, and its name without it.
    file : str
        Its notebook.
    question : str
        What it asks.
    minutes, with_exercises : int or None
        How long it takes; None where the README does not say.
    readers : str
        Whom it is for.
    takes : str
        What of the reader's own it speaks of: a sheet, a hill of them, a day; empty if of nothing.
    """

    number: str
    name: str
    file: str
    question: str = ""
    minutes: int | None = None
    with_exercises: int | None = None
    readers: str = ""
    takes: str = ""

    @property
    def address(self):
        """Where it is, seen from the front page."""
        return f"voila/render/{self.file}"


@dataclass(frozen=True)
class Route:
    """The pages for one reader: who, what they leave with, and the numbers of the pages; none for all in order."""

    who: str
    what: str
    numbers: tuple = ()


ROUTES = (
    Route(
        "A lift supervisor",
        "Why nobody shortens the spacing, which limit governs, and why fewer are counted.",
        ("02", "09", "10"),
    ),
    Route(
        "A presenter",
        "A talk that runs live on a projector, a brief of a lift to hand out, and a proposal as a board sees it.",
        (TALK, YOUR_LIFT, "12"),
    ),
    Route("A student", "All pages in order, each with exercises: from a reading to what a ride costs."),
)
CLASSES = (
    "Pages 00 to 12 end with exercises, and with a name each learner gets numbers of their own. A key, problem sheets "
    "and marks for a class: see Exercises in the README."
)


@cache
def job(folder=NOTEBOOKS):
    """Return the paragraph of the README that says what all this is for; empty where there is no README."""
    paragraphs = _readme(folder).split("\n\n")
    return " ".join(paragraphs[1].split()) if len(paragraphs) > 1 else ""


@cache
def series(folder=NOTEBOOKS):
    """Return the pages whose notebooks are there, in order, with what the table of the README says of each."""
    rows = {row["stem"]: row for row in _ROW.finditer(_readme(folder))}
    lines = []
    for path in sorted(folder.glob("[0-9][0-9]_*.ipynb")):
        number, _, name = path.stem.partition("_")
        taken = _TAKES.search(path.read_text(encoding="utf-8"))
        about = {"takes": taken[1].lower() if taken else ""}
        if path.stem in rows:
            row = rows[path.stem]
            about |= {"question": row["question"], "readers": row["readers"]}
            about |= {"minutes": int(row["minutes"]), "with_exercises": int(row["with_exercises"])}
        lines.append(Line(number, name.replace("_", " ").capitalize(), path.name, **about))
    return tuple(lines)


def _readme(folder):
    readme = folder.parent / "README.md"
    return readme.read_text(encoding="utf-8") if readme.exists() else ""


def front_page_html(folder=NOTEBOOKS):
    """Return the front page as one HTML page, with no outside file.

    Parameters
    ----------
    folder : Path
        The folder of the notebooks; the README lies one folder up.
    """
    pages = {line.number: line for line in series(folder)}
    routes = [(route, [pages[number] for number in route.numbers if number in pages]) for route in ROUTES]
    blanks = [(name, address_of(kind, make)) for name, kind, make, _ in FILES]
    return _TEMPLATES.get_template("front_page.html.j2").render(
        job=job(folder),
        cautions=THE_THREE.strip("*"),
        planning=ONE_LINE,
        pages=pages,
        routes=routes,
        classes=CLASSES,
        blanks=blanks,
        takers=[line for line in pages.values() if line.takes],
        your_lift=pages.get(YOUR_LIFT),
        talk=pages.get(TALK),
        talk_file=TALK_FILE,
    )


_TEMPLATES = jinja2.Environment(
    loader=jinja2.FileSystemLoader([HERE, HERE / "templates/voila/templates/plain_page"]),
    autoescape=True,
    undefined=jinja2.StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)


class FrontPageHandler(RequestHandler):
    """The front page, at the root address."""

    def get(self):
        """Send the front page."""
        self.set_header("Cache-Control", "no-store")
        self.finish(front_page_html())


class MadeOnce:
    """A file that a command of ours makes when it is first asked for; then it stays in memory.

    Parameters
    ----------
    command : sequence of str
        The command; the path of the file to write is added behind it.
    """

    def __init__(self, command):
        self._command, self._making = command, None

    async def content(self):
        """Return the file. Whoever asks while it is made waits for the same one; the server goes on meanwhile."""
        if self._making is None:
            self._making = asyncio.ensure_future(asyncio.to_thread(self._make))
        making = self._making
        try:
            return await asyncio.shield(making)
        except Exception:
            if self._making is making:
                self._making = None  # the next one may try anew
            raise

    def _make(self):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "made"
            subprocess.run([*self._command, str(path)], check=True, stdout=subprocess.DEVNULL, timeout=LONGEST)
            return path.read_bytes()


class TalkFileHandler(RequestHandler):
    """The talk on a stick, made when it is asked for, to be saved: for the address ``/talk.html``."""

    made = MadeOnce((sys.executable, "-m", "liftcalc.pages.talk", "--to"))

    async def get(self):
        """Send the file."""
        content = await self.made.content()
        self.set_header("Content-Disposition", f'attachment; filename="{TALK_FILE}"')
        self.set_header("Content-Type", "text/html; charset=UTF-8")
        self.set_header("Cache-Control", "no-store")
        self.finish(content)
