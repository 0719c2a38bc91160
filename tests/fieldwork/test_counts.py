"""The count of a field sheet in words."""

import pytest

from liftcalc.fieldwork import count_in_words, read_field_sheet

HEADING = "quantity,value,unit,plus_minus,method,note\n"
SPEED = "line speed,3.4,m/s,,,\nspacing,6.8,m,,,\n"
SHEETS = [  # rows, words
    (SPEED, "No count on this sheet"),
    (SPEED + "persons counted,33,person,,,\n", "No count on this sheet"),
    ("persons counted,33,person,,,\ncounting time,2,min,,,\n", "nothing to hold it against"),
    (SPEED + "persons counted,33,person,,,\ncounting time,2,min,,,\n", "is below 1,800 pph (ideal)"),
    (SPEED + "persons counted,33,person,,,\ncounting time,12,s,,,\n", "at most 28 persons pass in 12.0 s"),
    (SPEED + "persons counted,57,person,,,\npersons counted,61,person,,,\ncounting time,2,min,,,\n",
     "118 persons in 4.0 min, 2 counts together: 1,770 pph (counted)"),
    (SPEED + "persons counted,59,person,,,\ncounting time,2,min,,,\ncounting time,2,min,,,\n", "59 persons in 2.0 min"),
    (SPEED + "persons per carrier,2,person,,,\npersons counted,120,person,,,\ncounting time,2,min,,,\n",
     "cannot be told from 3,600 pph (ideal)"),
]  # fmt: skip


@pytest.mark.parametrize(("rows", "words"), SHEETS, ids=[case[1] for case in SHEETS])
def test_the_words_below_the_routes_are_true_for_any_sheet(tmp_path, rows, words):
    path = tmp_path / "sheet.csv"
    path.write_text(HEADING + rows)
    assert words in repr(count_in_words(read_field_sheet(path)))
