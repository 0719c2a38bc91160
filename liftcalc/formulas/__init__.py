"""The formulas, one module a subject: plain functions on plain numbers behind a check of units."""
