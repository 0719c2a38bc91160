"""Parts of the talk that need no kernel: boards on which a room guesses, what came of it, the running rope.

They are plain markup. In the talk, and in its file for a stick, one short script moves them; elsewhere they stand still
and say so.
"""

from dataclasses import dataclass
from html import escape

from liftcalc.figures.stage import draw_opening, draw_running_rope
from liftcalc.formulas.spacing import headway
from liftcalc.panels.scene_base import (
    an_hour,
    counted_at_the_top,
    gained_at_half_the_spacing,
    heads_and_time,
    in_short,
    of_the_penny_rope,
    the_ideal,
    with_sign,
)
from liftcalc.quantity_text import show

MOST_CALLED = 6


@dataclass(frozen=True)
class Board:
    """What a room guesses: the question, what stands to choose from, and the result that is revealed.

    Parameters
    ----------
    name : str
        Under which the guesses are kept.
    question : str
        As the room hears it.
    choices : tuple of (str, float)
        Words of each choice, from A on, and its number.
    result : function
        Without arguments; returns number, unit with level, and value of the result, computed by the package.
    called : bool
        Whether numbers are called out beside the choices.
    traced : function or None
        Without arguments; returns what the result comes from, in one line.
    """

    name: str
    question: str
    choices: tuple
    result: object
    called: bool = True
    traced: object = None


def _of(capacity):
    """Return number, unit and plain value of a capacity."""
    return (*an_hour(capacity), capacity.value.m_as("pph"))


def _ideal():
    return _of(the_ideal())


def _counted():
    number, unit, value = _of(counted_at_the_top())
    return number, f"{unit}, people waited", value


def _how_counted():
    persons, time = heads_and_time()
    return f"{persons.m_as('person'):.0f} people in {in_short(show(time))}, at the top"


def _half():
    gained = gained_at_half_the_spacing()
    return with_sign(gained), "people an hour, governed", gained.m_as("pph")


NUMBERS = tuple((f"{number:,}", float(number)) for number in (600, 1200, 1800, 2400))
BOARDS = {
    board.name: board
    for board in (
        Board("ideal", "How many people an hour?", NUMBERS, _ideal),
        Board("counted", "How many were counted?", NUMBERS, _counted, traced=_how_counted),
        Board(
            "half", "Half the spacing: any more an hour?",
            (("+1,200", 1200.0), ("+600", 600.0), ("+0", 0.0), ("−300", -300.0)), _half, called=False,
        ),
    )
}  # fmt: skip


class ScenePart:
    """A piece of markup that shows itself in a notebook."""

    def html(self):
        """Return the markup."""
        raise NotImplementedError

    def __repr__(self):
        raise NotImplementedError

    def _repr_html_(self):
        return self.html()


OUTSIDE = "Boxes and buttons work in the talk, which the app view shows, and there the rope runs."
STILL = f"<p class='outside-the-talk'>{OUTSIDE}</p>"


class GuessBoard(ScenePart):
    """Hands for A to D, up to six numbers called out, and a lock.

    Parameters
    ----------
    name : str
        A key of ``BOARDS``.
    """

    def __init__(self, name):
        self.board = BOARDS[name]

    def html(self):
        board = self.board
        hands = "".join(
            f"<label class='choice'><b>{letter}</b> <span>{escape(words)}</span>"
            f"<input data-hands='{letter}' inputmode='numeric' maxlength='4' autocomplete='off' "
            f"aria-label='hands for {letter}, {escape(words)}'></label>"
            for letter, (words, _) in zip("ABCD", board.choices, strict=True)
        )
        boxes = "".join(
            f"<input data-called='{number}' inputmode='numeric' maxlength='6' autocomplete='off' "
            f"aria-label='number {number} called out'>"
            for number in range(1, MOST_CALLED + 1)
        )
        called = f"<div class='called'><span>called out</span>{boxes}</div>" if board.called else ""
        return (
            f"<div class='guess-board' data-board='{board.name}'>"
            f"<div class='choices' role='group' aria-label='{escape(board.question)} Hands for each'>{hands}</div>"
            f"{called}<div class='locks'><button type='button' data-lock>Lock</button>"
            f"<span role='status' class='said'></span></div><p class='summary'></p>{STILL}</div>"
        )

    def __repr__(self):
        choices = [f"{letter} {words}" for letter, (words, _) in zip("ABCD", self.board.choices, strict=True)]
        return f"{self.board.question} {', '.join(choices)}"


class Guesses(ScenePart):
    """What a room guessed, against the result.

    Parameters
    ----------
    name : str
        A key of ``BOARDS``.
    large : bool
        Whether the result stands above in large letters; not where the scene shows it anyway.
    """

    def __init__(self, name, large=True):
        self.board, self.large = BOARDS[name], large

    def html(self):
        number, unit, value = self.board.result()
        choices = escape("|".join(f"{words}={at:g}" for words, at in self.board.choices))
        size = "" if self.large else " hidden"
        traced = f"<p class='traced'>{escape(self.board.traced())}</p>" if self.board.traced else ""
        return (
            f"<div class='guesses' data-guesses='{self.board.name}' data-result='{value:.1f}' "
            f"data-text='{number}' data-choices='{choices}'>"
            f"<div class='result'{size}><b>{number}</b> <span>{escape(unit)}</span></div>"
            f"{traced}<div class='drawn'></div></div>"
        )

    def __repr__(self):
        number, unit, _ = self.board.result()
        return f"The guesses against {number} {unit}"


class Opening(ScenePart):
    """The picture that stands while the room fills."""

    def html(self):
        return draw_opening()

    def __repr__(self):
        return "A hill with a rope tow and riders on it"


class RunningRope(ScenePart):
    """The rope of the Penny Rope with every place taken, to scale and at true speed; no number on it."""

    def html(self):
        _, values = of_the_penny_rope()
        spacing, between = values["spacing"], headway(values["line_speed"], values["spacing"])
        drawing = draw_running_rope(spacing=spacing.m_as("m"), headway=between.m_as("s"))
        return (
            f"<div class='rope'><input type='checkbox' class='hold-rope' id='hold-rope'>"
            "<label for='hold-rope'>Hold the rope</label> "
            f"<button type='button' data-step>One step on</button>{drawing}{STILL}</div>"
        )

    def __repr__(self):
        return "Riders on the rope, one after another, pass a flag. Every place is taken."
