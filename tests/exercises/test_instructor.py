"""The instructor's side: key, marks, problem sheets, by functions and by command."""

import csv
import io
import json
import subprocess
import sys
from dataclasses import replace

import pytest

from liftcalc import Q
from liftcalc.exercises import BANK, EDITION, Posed, Session, answer_key, marks, problem_sheet
from liftcalc.exercises.__main__ import main
from liftcalc.exercises.drawing import learner_key, numbers_for
from liftcalc.exercises.record import FolderRecords, read_record
from liftcalc.quantity_text import UNIT_SPELLINGS, unit_word
from liftcalc.tables import safe_in_a_spreadsheet


def rows_of(text):
    return list(csv.DictReader(io.StringIO(text)))


@pytest.fixture
def drawn_once(monkeypatch):
    """Draw the numbers of a learner once: key, records and marks all ask for them."""
    drawn = {}

    def numbers(exercise, key):
        if (exercise.id, key) not in drawn:
            drawn[exercise.id, key] = numbers_for(exercise, key)
        return drawn[exercise.id, key]

    monkeypatch.setattr("liftcalc.exercises.posed.numbers_for", numbers)


@pytest.mark.usefixtures("drawn_once")
def test_a_class_of_six(tmp_path):
    """Key, six records, one file of marks: who answers from the key is right, who takes a wrong road is named."""
    learners = [f"Learner {number}" for number in range(1, 7)]
    key = rows_of(answer_key(learners))
    assert len(key) == 6 * len(BANK)
    by_learner = {(row["learner"], row["exercise"]): row for row in key}
    units = {unit_word(unit): unit for spellings in UNIT_SPELLINGS.values() for unit in spellings.values()} | {"": ""}
    for number, name in enumerate(learners):
        mine = Session(FolderRecords(tmp_path))
        mine.start(name)
        for id, exercise in BANK.items():
            row = by_learner[name, id]
            posed = mine.posed(id)
            if posed.is_choice:
                wrong = next(letter for letter in posed.options if letter != posed.right)
                right = row["value"]
            else:
                wrong = exercise.roads[0].answer(posed.numbers)
                right = Q(float(row["value"]), units[row["unit"]])
                assert float(row["tolerance"]) == exercise.within
            if number % 3:  # a third of the class goes wrong first and stays there
                mine.answer(id, right)
            else:
                mine.answer(id, wrong)
    marked = rows_of(marks(tmp_path))
    assert len(marked) == 6 * len(BANK)
    assert {row["remark"] for row in marked} == {""}
    for row in marked:
        wrong = not (int(row["learner"].split()[1]) - 1) % 3
        assert row["state"] == ("off" if wrong else "right"), row
        assert bool(row["mistakes"]) == wrong
    totals = rows_of(marks(tmp_path, totals=True))
    assert len(totals) == 6
    assert sum(int(row["right"]) for row in totals) == 4 * len(BANK)
    assert all(
        int(row["right"]) + int(row["close"]) + int(row["off"]) + int(row["open"]) == len(BANK) for row in totals
    )


@pytest.fixture
def folder(tmp_path):
    mine = Session(FolderRecords(tmp_path))
    mine.start("Maja")
    mine.answer("2.1", "1 s")
    mine.answer("2.1", "1 m")
    return tmp_path


def change(folder, **changes):
    """Change the first try of the one record in a folder."""
    path = next(folder.glob("*.json"))
    body = json.loads(path.read_text(encoding="utf-8"))
    body["tries"][0] |= changes
    path.write_text(json.dumps(body), encoding="utf-8")


def test_an_edited_record_is_reported_and_not_trusted(folder):
    change(folder, state="right")
    (row,) = rows_of(marks(folder))
    assert row["state"] == "off"
    assert "was edited after it was written" in row["remark"]
    assert "try 1: 2.1 says 'right', judged 'off'" in row["remark"]
    assert rows_of(marks(folder, totals=True))[0]["right"] == "0"


@pytest.mark.parametrize(
    "changes",
    [
        {"unit": "m**9**9**9"},
        {"value": 1e308},
        {"value": float("nan")},
        {"value": "9**9**9"},
        {"exercise": "77.7"},
        {"exercise": "2.6"},
        {"exercise": "2.6", "value": "=1+1"},
        {"mistakes": ["=cmd()"]},
        {"answer": "=cmd()", "value": 1.0},
    ],
)
def test_a_hostile_record_is_not_fatal(folder, changes):
    change(folder, **changes)
    for totals in (False, True):
        rows = rows_of(marks(folder, totals))
        assert rows
        assert "edited" in rows[0]["remark"]
        assert not any(cell.startswith(("=", "+", "-", "@")) for row in rows for cell in row.values())


@pytest.mark.parametrize("edition", [1, EDITION + 1])
def test_answers_of_another_edition_are_said_to_be(folder, edition):
    """Who was right in an older edition is not suspected: the remark says by which edition each was judged."""
    path = next(folder.glob("*.json"))
    record, _ = read_record(path)
    first = replace(record.tries[0], state="right", edition=edition)
    path.write_text(replace(record, tries=(first, *record.tries[1:])).text(), encoding="utf-8")
    for totals in (False, True):
        remark = rows_of(marks(folder, totals))[0]["remark"]
        assert remark == (
            f"1 of 2 answers of edition {edition} of the exercises, judged by edition {EDITION}; "
            f"try 1: 2.1 says 'right' by edition {edition}, judged 'off' by edition {EDITION}"
        )


@pytest.mark.parametrize("given", ["0.1 m", "0.100 m", "0.3 ft", "10 cm", Q(0.3, "ft"), Q(0.102, "m")])
def test_marks_name_what_the_learner_was_told(tmp_path, given):
    """How many digits were typed decides which road is near enough: the marks read them from the answer as written."""
    mine = Session(FolderRecords(tmp_path))
    told = mine.answer("2.5", given)
    (row,) = rows_of(marks(tmp_path))
    assert (row["state"], row["mistakes"], row["remark"]) == (told.state, "; ".join(told.mistakes), "")


def test_answers_of_this_edition_need_no_remark(folder):
    assert rows_of(marks(folder))[0]["remark"] == ""


def test_a_broken_record_has_its_row(folder):
    (folder / "broken.json").write_text("{", encoding="utf-8")
    (folder / "notes.txt").write_text("passed over", encoding="utf-8")
    rows = rows_of(marks(folder))
    assert [row["learner"] for row in rows] == ["broken.json", "Maja"]
    assert "cannot be read as a record" in rows[0]["remark"]
    twice = next(folder.glob("maja*.json"))
    (folder / "zz_copy.json").write_text(twice.read_text(encoding="utf-8"), encoding="utf-8")
    assert "same learner as" in rows_of(marks(folder))[-1]["remark"]


def test_cells_are_harmless():
    for text in ("=1+1", "+1", "-1", "@sum", "\t=1", "  =1", "\r=1"):
        assert safe_in_a_spreadsheet(text) == f"'{text}"
    assert safe_in_a_spreadsheet("Maja = K.") == "Maja = K."
    assert answer_key(["=1+1"], ["2.1"]).splitlines()[1].startswith("'=1+1,2.1,")


def test_the_key_can_be_used(tmp_path):
    row = rows_of(answer_key(["Maja"], ["2.1"]))[0]
    posed = Posed(BANK["2.1"], learner_key("Maja"))
    assert list(row) == ["learner", "exercise", "value", "unit", "tolerance"]
    assert float(row["value"]) == pytest.approx(posed.right.magnitude)
    assert (row["unit"], row["tolerance"]) == ("s", "0.1")
    assert len(rows_of(answer_key(["Maja"], ["02", "0.1"]))) == 8
    with pytest.raises(ValueError, match="'Maja' and ' MAJA' have the same numbers"):
        answer_key(["Maja", " MAJA"])
    with pytest.raises(ValueError, match="there is no exercise and no notebook '9.9'"):
        answer_key(["Maja"], ["9.9"])
    with pytest.raises(ValueError, match="there is no folder"):
        marks(tmp_path / "none")


def test_problem_sheets_hold_questions_and_no_answers():
    page = problem_sheet(["Maja", "<b>Ole</b>"], ["02"])
    assert page.count("<section>") == 2
    assert "&lt;b&gt;Ole&lt;/b&gt;" in page
    assert "<b>Ole" not in page
    assert "http" not in page
    for name in ("Maja", "<b>Ole</b>"):
        for id in [id for id in BANK if id.startswith("2.")]:
            posed = Posed(BANK[id], learner_key(name))
            assert posed.text.replace("'", "&#x27;") in page
            if not posed.is_choice:
                assert f">{posed.right.magnitude:.3g}<" not in page
    assert "Name: <span" in problem_sheet()


def command(*arguments):
    run = subprocess.run(
        [sys.executable, "-m", "liftcalc.exercises", *arguments],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    return run.returncode, run.stdout, run.stderr


@pytest.fixture
def learners(tmp_path):
    """Return the file of a class."""
    path = tmp_path / "class.txt"
    path.write_text("\ufeffMaja\n\n  Zoë \n", encoding="utf-8")
    return path


def test_a_command_in_a_process_of_its_own(folder, tmp_path):
    assert command("marks", str(folder)) == (0, marks(folder), "")
    code, out, error = command("key", str(tmp_path / "none.txt"))
    assert (code, out) == (2, "")
    assert "none.txt" in error
    assert "Traceback" not in error


def test_the_commands_write_files(learners, tmp_path):
    assert main(["key", str(learners), "--to", str(tmp_path / "key.csv")]) == 0
    text = (tmp_path / "key.csv").read_text(encoding="utf-8-sig")
    assert text == answer_key(["Maja", "Zoë"])
    assert main(["sheets", str(learners), "--only", "02", "--to", str(tmp_path / "sheets.html")]) == 0
    assert (tmp_path / "sheets.html").read_text(encoding="utf-8") == problem_sheet(["Maja", "Zoë"], ["02"])


@pytest.mark.parametrize(("arguments", "words"), [(["--help"], ("key", "sheets", "marks")), (["marks", "--help"], ())])
def test_the_commands_have_a_help(arguments, words, capsys):
    with pytest.raises(SystemExit) as ended:
        main(arguments)
    assert ended.value.code == 0
    out = capsys.readouterr().out
    assert all(word in out for word in words)
