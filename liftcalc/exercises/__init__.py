"""Exercises that teach: one's own numbers, answers with units, mistakes named; and the instructor's side.

A learner calls ``start_exercises``, ``show_exercise``, ``try_answer``, ``next_clue``, ``worked`` and ``my_record``, or
uses the answer boxes of ``liftcalc.panels``. An instructor calls ``answer_key``, ``marks`` and ``problem_sheet``, or
``python -m liftcalc.exercises --help``.
"""

from liftcalc.exercises.bank import BANK, EDITION
from liftcalc.exercises.instructor import answer_key, marks, problem_sheet
from liftcalc.exercises.judging import Reply, judge
from liftcalc.exercises.learner import (
    Session,
    my_record,
    next_clue,
    session,
    show_exercise,
    start_exercises,
    try_answer,
    worked,
)
from liftcalc.exercises.posed import Posed, exercise_of

__all__ = [
    "BANK",
    "EDITION",
    "Posed",
    "Reply",
    "Session",
    "answer_key",
    "exercise_of",
    "judge",
    "marks",
    "my_record",
    "next_clue",
    "problem_sheet",
    "session",
    "show_exercise",
    "start_exercises",
    "try_answer",
    "worked",
]
