"""The count of a field sheet in words."""

import pytest

from liftcalc.fieldwork import count_in_words
from liftcalc.lifts.sheet import sheet_from_bytes

HEADING = "quantity,value,unit,plus_minus,method,note\n"
SPEED = "line speed,3.4,m/s,,,\nspacing,6.8,m,,,\n"
SHEETS = [  # rows, words
    (SPEED, "No count on this sheet"),
    (SPEED + "persons counted,33,person,,,\n", "No count on this sheet"),
    ("persons counted,33,person,,,\ncounting time,2,min,,,\n", "nothing to hold it against"),
    (SPEED + "persons counted,33,person,,,\ncounting time,2,min,,,\n", "is below 1,800 pph (ideal)"),
    (SPEED + "persons counted,60,person,,,\ncounting time,20,s,,,\n", "at most 46 persons pass in 20.0 s"),
    (SPEED + "".join(f"persons counted,{persons},person,,,\ncounting time,2,min,,,\n" for persons in (57, 61)),
     "118 persons in 4.0 min, 2 counts together: 1,770 pph (counted)"),
    (SPEED + "persons per carrier,2,person,,,\npersons counted,120,person,,,\ncounting time,2,min,,,\n",
     "cannot be told from 3,600 pph (ideal)"),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "words"), SHEETS, ids=[case[1] for case in SHEETS])
def test_the_words_below_the_routes_are_true_for_any_sheet(rows, words):
    sheet = sheet_from_bytes("sheet.csv", (HEADING + rows).encode())
    assert words in repr(count_in_words(sheet))
