"""Fieldwork: readings from a field sheet."""

from liftcalc.fieldwork.sheet import (
    COLUMNS,
    QUANTITIES,
    FieldSheet,
    FieldSheetError,
    Reading,
    read_field_sheet,
    routes,
    summary,
)

__all__ = [
    "COLUMNS",
    "QUANTITIES",
    "FieldSheet",
    "FieldSheetError",
    "Reading",
    "read_field_sheet",
    "routes",
    "summary",
]
