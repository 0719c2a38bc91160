"""The formulas, one module a subject: plain functions on plain numbers behind a check of units.

Every formula takes and returns quantities; ``.plain`` is the same formula on plain numbers, in the units of its
docstring.
"""
