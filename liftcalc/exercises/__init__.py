"""Exercises: questions with the numbers of the printed set, one bank module a notebook."""

from liftcalc.exercises.bank import BANK, Question, question

__all__ = ["BANK", "Question", "question"]
