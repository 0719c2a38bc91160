"""Exercises that teach: one's own numbers, answers with units, mistakes named; and the instructor's side.

A learner calls ``start_exercises``, ``question``, ``answer``, ``clue``, ``worked`` and ``my_record``, or uses the
answer boxes of ``liftcalc.panels``. An instructor calls ``answer_key``, ``marks`` and ``problem_sheet``, or
``python -m liftcalc.exercises --help``.
"""

from liftcalc.exercises.bank import BANK, EDITION
from liftcalc.exercises.instructor import answer_key, marks, problem_sheet
from liftcalc.exercises.judging import Reply, judge
from liftcalc.exercises.learner import Session, answer, clue, my_record, question, session, start_exercises, worked
from liftcalc.exercises.posed import Posed, exercise_of

__all__ = [
    "BANK",
    "EDITION",
    "Posed",
    "Reply",
    "Session",
    "answer",
    "answer_key",
    "clue",
    "exercise_of",
    "judge",
    "marks",
    "my_record",
    "problem_sheet",
    "question",
    "session",
    "start_exercises",
    "worked",
]
