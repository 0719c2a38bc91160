"""The record of one learner: what was answered, in one file that a person can read.

A file is written whole or not at all, under a lock. It never leaves the computer by itself.
"""

import hashlib
import json
import os
import re
import tempfile
from dataclasses import dataclass
from pathlib import Path

from liftcalc.exercises.bank import EDITION
from liftcalc.exercises.drawing import learner_key
from liftcalc.exercises.judging import best_state
from liftcalc.units import PlainError

PLACE = "LIFTCALC_RECORDS"  # environment variable: a folder, or IN_MEMORY
IN_MEMORY = "memory"
FOLDER = "my_records"  # where nothing else is said, beside the notebook
WHAT = "record of exercises on lift capacity"
MOST_BYTES = 5_000_000
FIRST_EDITION = 1  # of an answer that names none: records said nothing of it then


class RecordError(PlainError):
    """A record cannot be read; the message says which and why."""


@dataclass(frozen=True)
class Try:
    """One judged answer.

    Parameters
    ----------
    exercise : str
        Its id.
    answer : str
        As the learner wrote it, cut to a line.
    value, unit : float and str, or a letter and "choice"
        As it was understood.
    state : str
        "off", "close" or "right".
    mistakes : list of str
        Names of the wrong roads.
    clues : int
        Clues seen before.
    worked : bool
        Whether the worked solution had been seen before.
    edition : int
        Edition of the bank in which it was judged.
    """

    exercise: str
    answer: str
    value: float | str
    unit: str
    state: str
    mistakes: list
    clues: int = 0
    worked: bool = False
    edition: int = EDITION


@dataclass(frozen=True)
class Record:
    """All tries of one learner, in their order."""

    learner: str
    tries: tuple = ()

    def of(self, id):
        """Return the tries of one exercise."""
        return [one for one in self.tries if one.exercise == id]

    def state(self, id):
        """Return the best state reached in one exercise; "open" without a try."""
        return best_state(one.state for one in self.of(id))

    def text(self):
        """Return the record as the text of its file, with a seal over the rest."""
        body = {"what": WHAT, "learner": self.learner, "tries": [vars(one) for one in self.tries]}
        return json.dumps({**body, "seal": _seal(body)}, indent=1, ensure_ascii=False) + "\n"


def _seal(body):
    """Return a checksum of a record: it shows a slip or a careless edit, and proves nothing."""
    return hashlib.sha256(json.dumps(body, sort_keys=True, ensure_ascii=False).encode("utf-8")).hexdigest()[:16]


_FIELDS = {
    "exercise": str,
    "answer": str,
    "value": (int, float, str),
    "unit": str,
    "state": str,
    "mistakes": list,
    "clues": int,
    "worked": bool,
    "edition": int,
}


def read_record(path):
    """Return the record of a file, and whether its seal is whole.

    Parameters
    ----------
    path : str or Path
        A file written by this module.

    Returns
    -------
    tuple of Record and bool
        False where the file was edited after it was written.

    Raises
    ------
    RecordError
        If the file is no record; the message says why.
    """
    path = Path(path)
    try:
        if path.stat().st_size > MOST_BYTES:
            raise RecordError(f"{path.name}: {path.stat().st_size:,} bytes is too large for a record.")
        body = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError) as error:
        if isinstance(error, RecordError):
            raise
        raise RecordError(f"{path.name}: cannot be read as a record ({type(error).__name__}).") from None
    if not isinstance(body, dict) or body.get("what") != WHAT or not isinstance(body.get("learner"), str):
        raise RecordError(f"{path.name}: is no {WHAT}.")
    if not isinstance(body.get("tries"), list):
        raise RecordError(f"{path.name}: has no list of tries.")
    for number, one in enumerate(body["tries"], start=1):
        _check_try(path.name, number, one)
    seal = body.pop("seal", None)
    tries = tuple(Try(**{"edition": FIRST_EDITION, **one}) for one in body["tries"])
    return Record(body["learner"], tries), seal == _seal(body)


def _check_try(file, number, one):
    if not isinstance(one, dict) or {*one, "edition"} != set(_FIELDS):
        raise RecordError(f"{file}: try {number} has not the fields {', '.join(_FIELDS)}.")
    for field, kind in [(field, kind) for field, kind in _FIELDS.items() if field in one]:
        if not isinstance(one[field], kind) or (isinstance(one[field], bool) and kind is not bool):
            raise RecordError(f"{file}: try {number}: {field} is {str(one[field])[:40]!r}.")
    if not 1 <= one.get("edition", FIRST_EDITION) < 10_000:
        raise RecordError(f"{file}: try {number}: edition is {one['edition']:.0e}; editions count from 1.")
    if not all(isinstance(name, str) for name in one["mistakes"]):
        raise RecordError(f"{file}: try {number}: mistakes are not all text.")


class MemoryRecords:
    """Records that last as long as the page."""

    where = "kept until this page is closed"

    def __init__(self):
        self._records = {}

    def load(self, learner):
        """Return the record of a learner."""
        key = learner_key(learner)
        return self._records.get(key, Record(learner))

    def add(self, learner, one):
        """Add a try; return the record with it, and a sentence for the learner: empty if all is well."""
        held = self.load(learner)
        self._records[learner_key(learner)] = Record(held.learner, (*held.tries, one))
        return self.load(learner), ""


class FolderRecords:
    """Records in a folder, one file a learner.

    Parameters
    ----------
    folder : str or Path
        Made when something is answered, and not before.
    """

    def __init__(self, folder):
        self.folder = Path(folder)
        self._memory = MemoryRecords()  # takes over where the folder cannot be written

    @property
    def where(self):
        """Where the records are, for the learner."""
        return f"kept in the folder {self.folder.name}"

    def path(self, learner):
        """Return the file of a learner."""
        key = learner_key(learner)
        if not key:
            return self.folder / "printed_numbers.json"
        readable = re.sub(r"[^a-z0-9]+", "_", key).strip("_")[:30] or "learner"
        return self.folder / f"{readable}_{hashlib.sha256(key.encode('utf-8')).hexdigest()[:8]}.json"

    def load(self, learner):
        """Return the record of a learner; a file that cannot be read counts as none, and is left where it is."""
        try:
            return read_record(self.path(learner))[0]
        except RecordError:
            return self._memory.load(learner)

    def add(self, learner, one):
        """Add a try under a lock; return the record with it, and a sentence for the learner: empty if all is well."""
        import filelock

        path = self.path(learner)
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            with filelock.FileLock(path.with_suffix(".lock"), timeout=10):
                held, note = self._held(path, learner)
                record = Record(held.learner, (*held.tries, one))
                _write_whole(path, record.text())
                return record, note
        except (OSError, filelock.Timeout) as error:
            record, _ = self._memory.add(learner, one)
            return (
                record,
                f"The record could not be written ({type(error).__name__}); it is kept until this page is closed.",
            )

    def _held(self, path, learner):
        """Return the record so far, and a sentence where its file is none: that is set aside, and nothing is lost."""
        if not path.exists():
            return self._memory.load(learner), ""
        try:
            return read_record(path)[0], ""
        except RecordError:
            number = 1
            while (aside := path.with_suffix(f".broken{number}")).exists():
                number += 1
            path.rename(aside)
            note = f"The older record could not be read and was set aside as {aside.name}; a new one begins."
            return self._memory.load(learner), note


def _write_whole(path, text):
    """Write a file so that it is there whole or not at all."""
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=".being_written_", suffix=".tmp")
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def records():
    """Return the place of the records that the environment names: a folder, or the memory of this page."""
    place = os.environ.get(PLACE, FOLDER)
    return MemoryRecords() if place == IN_MEMORY else FolderRecords(place)
