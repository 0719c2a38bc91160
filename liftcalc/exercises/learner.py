"""The learner's side: numbers of one's own, answers, clues, worked solutions, and the record."""

from liftcalc.exercises.bank import BANK
from liftcalc.exercises.drawing import learner_key
from liftcalc.exercises.judging import STATES, Reply, judge
from liftcalc.exercises.posed import Posed, exercise_of
from liftcalc.exercises.record import Try, records
from liftcalc.tables import Lines, Table


class Session:
    """The exercises of one learner in one notebook: whose numbers, what was seen, what was answered."""

    def __init__(self, place=None):
        self.place = records() if place is None else place
        self.name = ""
        self._seen = {}  # exercise: (clues, whether the worked solution)
        self._posed = {}
        self._listeners = {}
        self._record = None

    def listen(self, name, callback):
        """Call back when the learner or the record changes; an older listener of the same name leaves."""
        self._listeners[name] = callback

    def _tell(self):
        for callback in list(self._listeners.values()):
            callback()

    def start(self, name=""):
        """Take the numbers of a learner; an empty name takes the printed ones."""
        learner_key(name)
        self.name = str(name).strip()
        self._posed, self._seen, self._record = {}, {}, None
        self._tell()

    @property
    def whose(self):
        """Whose numbers these are, in words."""
        return f"Numbers of {self.name}" if learner_key(self.name) else "The printed numbers"

    def posed(self, id, caller="show_exercise"):
        """Return an exercise with this learner's numbers."""
        exercise = exercise_of(id, caller)
        if id not in self._posed:
            self._posed[id] = Posed(exercise, learner_key(self.name))
        return self._posed[id]

    @property
    def record(self):
        """The learner's record as it stands."""
        if self._record is None:
            self._record = self.place.load(self.name)
        return self._record

    def answer(self, id, given=None):
        """Judge an answer, and keep it in the record if there was something to judge."""
        posed = self.posed(id, "try_answer")
        reply = judge(posed, given)
        if not reply.judged:
            return reply
        clues, worked = self._seen.get(id, (0, False))
        written = " ".join(str(given).split())[:120]
        one = Try(id, written, reply.value, reply.unit, reply.state, list(reply.mistakes), clues, worked)
        self._record, note = self.place.add(self.name, one)
        self._tell()
        return Reply(id, reply.state, f"{reply.says} {note}".strip(), reply.mistakes, reply.value, reply.unit)

    def clue(self, id):
        """Return the next clue; after the last one, all of them."""
        clues = self.posed(id, "next_clue").exercise.clues
        seen, worked = self._seen.get(id, (0, False))
        self._seen[id] = (min(seen + 1, len(clues)), worked)
        if seen >= len(clues):
            return Lines(*[f"Clue {number}. {text}" for number, text in enumerate(clues, start=1)])
        return Lines(f"Clue {seen + 1} of {len(clues)}. {clues[seen]}")

    def worked(self, id):
        """Return the worked solution with this learner's numbers; it asks for one attempt first."""
        posed = self.posed(id, "worked")
        if self.record.state(id) == "open":
            return Lines(f"{id}: one attempt first. Answer as well as you can; then the worked solution opens.")
        seen, _ = self._seen.get(id, (0, False))
        self._seen[id] = (seen, True)
        steps = posed.exercise.steps(posed.numbers)
        lines = [f"{number}. {step}" for number, step in enumerate(steps, start=1)]
        last = f"So it is {posed.right}): {posed.statements[posed.right]}" if posed.is_choice else ""
        return Lines(f"{id}, worked out:", *lines, *filter(None, [last]))

    def table(self, notebook=None):
        """Return the record as a small table: of one notebook by its number, or of all."""
        ids = [id for id, exercise in BANK.items() if notebook in (None, exercise.notebook)]
        tried = [id for id in ids if self.record.of(id)]
        rows = [
            (id, STATES[self.record.state(id)][0].lower(), str(len(self.record.of(id))), self.record.of(id)[-1].answer)
            for id in tried
        ]
        right = sum(self.record.state(id) == "right" for id in ids)
        caption = f"{self.whose}: {right} of {len(ids)} right, {len(tried)} tried"
        return Table(caption, ("exercise", "state", "tries", "last answer"), rows)


_session = None


def session():
    """Return the one session of this notebook."""
    global _session
    if _session is None:
        _session = Session()
    return _session


def start_exercises(name=""):
    """Take numbers of one's own.

    Parameters
    ----------
    name : str or int
        Any name or number; it gives the same numbers on any machine. Empty for the printed ones.

    Returns
    -------
    Lines
        Whose numbers are shown from now on.

    Raises
    ------
    PlainError
        If it is no name and no number, or too long.
    """
    session().start(name)
    return Lines(f"{session().whose.removesuffix('.')}. Answers are {session().place.where}.")


def show_exercise(id):
    """Return an exercise with the learner's numbers, to be shown.

    Parameters
    ----------
    id : str
        Such as "2.3".

    Returns
    -------
    Posed

    Raises
    ------
    PlainError
        If there is no such exercise.
    """
    return session().posed(id)


def try_answer(id, given=None):
    """Answer an exercise.

    Parameters
    ----------
    id : str
        Such as "2.3".
    given : Quantity, str, number, None or ...
        ``Q(2.6, "s")``, or text such as "2.6 s" or "1,800 people an hour"; a letter for a choice. Blank leaves it open.

    Returns
    -------
    Reply
        Right, close or off, and which mistake leads to this answer. What cannot be read is not judged and not kept.

    Raises
    ------
    PlainError
        If there is no such exercise.
    """
    return session().answer(id, given)


def next_clue(id):
    """Return the next clue to an exercise.

    Parameters
    ----------
    id : str
        Such as "2.3".

    Returns
    -------
    Lines

    Raises
    ------
    PlainError
        If there is no such exercise.
    """
    return session().clue(id)


def worked(id):
    """Return the worked solution of an exercise; it asks for one attempt first.

    Parameters
    ----------
    id : str
        Such as "2.3".

    Returns
    -------
    Lines

    Raises
    ------
    PlainError
        If there is no such exercise.
    """
    return session().worked(id)


def my_record():
    """Return what is done, as a small table.

    Returns
    -------
    Table
        One row an exercise that was tried.
    """
    return session().table()
