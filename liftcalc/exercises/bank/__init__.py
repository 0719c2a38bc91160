"""The bank: all exercises, one module a notebook."""

from liftcalc.exercises.bank import (
    notebook_00,
    notebook_01,
    notebook_02,
    notebook_03,
    notebook_04,
    notebook_05,
    notebook_06,
    notebook_07,
    notebook_08,
    notebook_09,
    notebook_10,
    notebook_11,
    notebook_12,
)

_MODULES = (
    notebook_00,
    notebook_01,
    notebook_02,
    notebook_03,
    notebook_04,
    notebook_05,
    notebook_06,
    notebook_07,
    notebook_08,
    notebook_09,
    notebook_10,
    notebook_11,
    notebook_12,
)
BANK = {exercise.id: exercise for module in _MODULES for exercise in module.EXERCISES}
# raised by one with each release in which a right answer or a learner's numbers have moved; never for words, clues or
# judging alone
EDITION = 2
