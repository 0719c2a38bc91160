"""The instructor's side: a key for a class, the marks of a folder of records, and problem sheets to print."""

from collections import Counter
from html import escape
from pathlib import Path

from liftcalc.exercises.bank import BANK, EDITION
from liftcalc.exercises.drawing import learner_key
from liftcalc.exercises.judging import OTHER_KIND, Reply, best_state, judge
from liftcalc.exercises.posed import Posed
from liftcalc.exercises.record import RecordError, read_record
from liftcalc.quantity_text import unit_word
from liftcalc.tables import csv_text
from liftcalc.units import PlainError, Q

KEY_COLUMNS = ("learner", "exercise", "value", "unit", "tolerance")
MARK_COLUMNS = ("learner", "exercise", "state", "tries", "clues", "worked first", "mistakes", "last answer", "remark")
TOTAL_COLUMNS = ("learner", "right", "close", "off", "open", "tries", "remark")


def _chosen(exercises):
    """Return the ids that an instructor asks for: all, single ones, or those of notebooks such as "02"."""
    if exercises is None:
        return list(BANK)
    wanted = []
    for word in exercises:
        found = [id for id, exercise in BANK.items() if word in (id, exercise.notebook)]
        if not found:
            raise PlainError(
                f"there is no exercise and no notebook {word!r}. Write an id such as 2.3, or a number such as 02."
            )
        wanted += found
    return list(dict.fromkeys(wanted))


def _class_of(learners):
    """Return the names of a class, or say which two are one."""
    seen = {}
    for learner in learners:
        key = learner_key(learner)
        if key in seen:
            raise PlainError(
                f"the learners {seen[key]!r} and {learner!r} have the same numbers. Tell them apart by a "
                f"name or a number."
            )
        seen[key] = learner
    return list(learners)


def answer_key(learners, exercises=None):
    """Return the key for a class as CSV.

    Parameters
    ----------
    learners : sequence of str or int
        Names or numbers as the learners will write them; "" stands for the printed numbers.
    exercises : sequence of str or None
        Ids such as "2.3" and numbers of notebooks such as "02"; None for all.

    Returns
    -------
    str
        One row a learner and exercise: learner, exercise, value, unit, tolerance.
        A choice has a letter and no tolerance.

    Raises
    ------
    PlainError
        If two learners would have the same numbers, or an exercise is not known.
    """
    rows = []
    for learner in _class_of(learners):
        for id in _chosen(exercises):
            posed = Posed(BANK[id], learner_key(learner))
            if posed.is_choice:
                rows.append((learner, id, posed.right, "choice", ""))
            else:
                exercise = posed.exercise
                rows.append(
                    (learner, id, f"{posed.right.magnitude:.10g}", unit_word(exercise.unit), f"{exercise.within:g}")
                )
    return csv_text(KEY_COLUMNS, rows)


def marks(folder, totals=False):
    """Return the marks of all records in a folder as CSV.

    Every answer is judged anew with the learner's own numbers; what a record says of itself is not trusted.

    Parameters
    ----------
    folder : str or Path
        Holds records, as collected from the learners.
    totals : bool
        True for one row a learner, False for one row a learner and exercise tried.

    Returns
    -------
    str
        CSV; a record that is broken, was edited, or holds answers of another edition of the bank has a remark.

    Raises
    ------
    PlainError
        If the folder is not there.
    """
    folder = Path(folder)
    if not folder.is_dir():
        raise PlainError(f"there is no folder {str(folder)!r}. Write the folder that holds the records.")
    rows, seen = [], {}
    for path in sorted(folder.glob("*.json")):
        try:
            record, whole = read_record(path)
            learner_key(record.learner)
        except (RecordError, ValueError) as error:
            rows.append(_remark_row(path.name, str(error), totals))
            continue
        remarks = [] if whole else [f"{path.name} was edited after it was written"]
        key = learner_key(record.learner)
        if key in seen:
            remarks.append(f"same learner as {seen[key]}")
        seen[key] = path.name
        rows += _rows_of(record, remarks, totals)
    return csv_text(TOTAL_COLUMNS if totals else MARK_COLUMNS, rows)


def _remark_row(name, remark, totals):
    columns = TOTAL_COLUMNS if totals else MARK_COLUMNS
    return (name, *[""] * (len(columns) - 2), remark)


def _rows_of(record, remarks, totals):
    """Return the rows of one record, every answer judged anew."""
    judged = {}
    remarks += _other_editions(record.tries)
    for number, one in enumerate(record.tries, start=1):
        if one.exercise not in BANK:
            remarks.append(f"try {number}: no exercise {one.exercise[:20]!r}")
            continue
        reply = _judged_anew(Posed(BANK[one.exercise], learner_key(record.learner)), one)
        if reply.state != one.state:
            then, now = (f" by edition {each}" if one.edition != EDITION else "" for each in (one.edition, EDITION))
            remarks.append(f"try {number}: {one.exercise} says {one.state[:10]!r}{then}, judged {reply.state!r}{now}")
        judged.setdefault(one.exercise, []).append((reply, one))
    name, remark = record.learner or "(printed numbers)", "; ".join(remarks)
    best = {id: best_state(reply.state for reply, _ in tries) for id, tries in judged.items()}
    if totals:
        reached = [best.get(id, "open") for id in BANK]
        counts = [reached.count(state) for state in ("right", "close", "off", "open")]
        return [(name, *counts, len(record.tries), remark)]
    rows = []
    for id in [id for id in BANK if id in judged]:
        tries = judged[id]
        names = "; ".join(dict.fromkeys(name for reply, _ in tries for name in reply.mistakes))
        counts = next((one for reply, one in tries if reply.state == "right"), tries[-1][1])
        worked = "yes" if counts.worked else "no"
        rows.append((name, id, best[id], len(tries), counts.clues, worked, names, tries[-1][1].answer, remark))
    return rows or [_remark_row(name, "; ".join([*remarks, "nothing answered"]), totals)]


def _other_editions(tries):
    """Return a remark for each other edition of the bank of which there are answers."""
    counts = Counter(one.edition for one in tries if one.edition != EDITION)
    return [
        f"{count} of {len(tries)} answers of edition {edition} of the exercises, judged by edition {EDITION}"
        for edition, count in sorted(counts.items())
    ]


def _judged_anew(posed, one):
    """Return the reply to a stored answer; its unit is compared with the one asked, and never parsed.

    Where the answer as written is the stored value it is judged as written: its digits say how near a road must be.
    """
    if posed.is_choice or isinstance(one.value, str):
        return judge(posed, one.value)
    if one.unit != posed.exercise.unit:
        return Reply(one.exercise, "off", "", (OTHER_KIND,), one.value, one.unit)
    stored = judge(posed, Q(one.value, posed.exercise.unit))
    written = judge(posed, one.answer)
    return written if written.unit == stored.unit and written.value == stored.value else stored


def problem_sheet(learners=("",), exercises=None):
    """Return problem sheets to print, as one HTML page with no outside file: one sheet a learner.

    Parameters
    ----------
    learners : sequence of str or int
        Names or numbers; "" for the printed numbers.
    exercises : sequence of str or None
        Ids and numbers of notebooks; None for all.

    Returns
    -------
    str
        HTML.

    Raises
    ------
    PlainError
        If two learners would have the same numbers, or an exercise is not known.
    """
    ids = _chosen(exercises)
    sheets = "".join(_sheet(learner, ids) for learner in _class_of(learners))
    return f"""<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>Exercises on lift capacity</title>
<style>
@page {{ size: auto; margin: 15mm; }}
body {{ font: 11pt/1.4 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 180mm; }}
h1 {{ font-size: 15pt; margin: 0 0 3mm; }}
section {{ break-after: page; }} section:last-child {{ break-after: auto; }}
.exercise {{ break-inside: avoid; margin: 0 0 5mm; }}
.exercise p {{ margin: 0; }}
.statements {{ margin: 1mm 0 0 6mm; }}
.line {{ display: inline-block; border-bottom: 1px solid #000; min-width: 60mm; }}
</style></head><body>
{sheets}</body></html>
"""


def _sheet(learner, ids):
    key = learner_key(learner)
    head = f"Exercises for {escape(str(learner).strip())}" if key else 'Exercises. Name: <span class="line"></span>'
    blocks = "".join(_problem(Posed(BANK[id], key)) for id in ids)
    return f"<section><h1>{head}</h1>\n{blocks}</section>\n"


def _problem(posed):
    statements = "".join(f"<div>{letter}) {escape(text)}</div>" for letter, text in posed.statements.items())
    block = f'<div class="statements">{statements}</div>' if statements else ""
    return (
        f'<div class="exercise"><p><strong>{posed.exercise.id}</strong> {escape(posed.text)}</p>{block}'
        f'<p>Answer ({escape(posed.asked)}): <span class="line"></span></p></div>\n'
    )
