"""An error for the reader is one line at the prompt, in a script and in a notebook, and so is one about a file."""

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

from liftcalc.errors import PlainError
from liftcalc.exercises.__main__ import learners_in
from liftcalc.exercises.record import read_record
from liftcalc.fieldwork import read_lap_times, read_map_line, read_track
from liftcalc.fieldwork.minute_counts import read_counts
from liftcalc.lifts.cost_of_lift import COLUMNS, read_costs
from liftcalc.lifts.hill import read_hill
from liftcalc.lifts.sheet import read_sheet

FORM = "quantity,value,unit,plus_minus,method,note\n"
PACKAGE = Path(__file__).resolve().parents[2] / "liftcalc"
IMPORTS = """
from liftcalc import DisagreementError, NotKnownError, Q, headway, solve_line
from liftcalc.lifts.hill import read_hill
from liftcalc.lifts.sheet import read_sheet
"""
ERRORS = {  # what a reader writes: the line that answers it
    'headway(Q(2, "s"), Q(6.8, "m"))': "UnitError: headway: line_speed must be a speed, but got a time: 2 s. "
    "Write for example Q(3.4, 'm/s').",
    'headway(Q(-1, "m/s"), Q(6.8, "m"))': "PlainError: headway: line_speed must be greater than zero, but got -1 m/s. "
    "Write for example Q(3.4, 'm/s').",
    'headway(Q([[1, -1], [2, 3]], "m/s"), Q(6.8, "m"))': "PlainError: headway: line_speed must be greater than zero, "
    "but got [[ 1. -1.] [ 2.  3.]] m/s. Write for example Q(3.4, 'm/s').",
    'read_sheet("no_such_sheet.csv")': "FieldFileError: no_such_sheet.csv: the file cannot be opened "
    "(No such file or directory). Check the name and the folder.",
    'read_hill("no_such_hill")': "FieldFileError: no_such_hill: the folder cannot be opened "
    "(No such file or directory). Check the name.",
    'raise NotKnownError("nothing follows")': "NotKnownError: nothing follows",
    'raise DisagreementError("two figures\\n  disagree")': "DisagreementError: two figures disagree",
}


def python(*arguments, folder, **options):
    """Run Python in a folder, and return what it did."""
    setting = {**os.environ, "PYTHONPATH": str(PACKAGE.parent), "IPYTHONDIR": str(folder)}
    return subprocess.run(
        [sys.executable, *arguments], cwd=folder, env=setting, capture_output=True, text=True, timeout=60, **options
    )


def test_at_the_prompt_one_line_and_other_errors_go_to_the_hook_that_was_there(tmp_path):
    before = (
        "import sys; sys.ps1 = sys.ps2 = ''; "
        "sys.excepthook = lambda kind, error, trace: print('handed on:', error, file=sys.stderr)"
    )
    lines = "\n".join([IMPORTS, *ERRORS, "1 / 0", ""])
    run = python("-i", "-c", before, folder=tmp_path, input=lines)
    assert run.stderr.strip().splitlines() == [*ERRORS.values(), "handed on: division by zero"]


def test_in_a_notebook_the_same_line(tmp_path):
    code = (
        "from IPython.core.interactiveshell import InteractiveShell\n"
        "shell = InteractiveShell.instance()\n"
        f"shell.run_cell({IMPORTS!r})\n"
        f"for cell in {list(ERRORS)!r}:\n"
        "    shell.run_cell(cell)\n"
    )
    run = python("-c", code, folder=tmp_path)
    assert (run.stdout.splitlines(), run.stderr) == (list(ERRORS.values()), "")


def test_an_error_of_several_faults_is_a_line_for_each(tmp_path):
    (tmp_path / "sheet.csv").write_text(f"{FORM}line sped,3,m/s,,,\nspacing,six,m,,,\n", encoding="utf-8")
    wanted = [
        "FieldSheetError: sheet.csv: 2 cells cannot be read.",
        "Row 2, column quantity: 'line sped' is no quantity of a sheet. Is 'line speed' meant?",
        "Row 3, column value: 'six' is no number. Write digits only, such as 3.4.",
    ]
    text = 'from liftcalc.lifts.sheet import read_sheet\n\nread_sheet("sheet.csv")\n'
    (tmp_path / "my_script.py").write_text(text, encoding="utf-8")
    run = python("my_script.py", folder=tmp_path)
    assert run.stderr.splitlines() == [f"my_script.py, line 3: {wanted[0]}", *wanted[1:]]
    with pytest.raises(PlainError) as caught:
        read_sheet(tmp_path / "sheet.csv")
    assert caught.value._render_traceback_() == ["\n".join(wanted)]  # what a notebook shows


def test_in_a_script_the_same_line_behind_the_readers_own_place(tmp_path):
    call, line = list(ERRORS.items())[1]
    text = f"from liftcalc import Q, headway\ndef half():\n    return {call} / 2\n\nhalf()\n"
    (tmp_path / "my_script.py").write_text(text, encoding="utf-8")
    run = python("my_script.py", folder=tmp_path)
    assert (run.stderr, run.stdout, run.returncode) == (f"my_script.py, line 3: {line}\n", "", 1)
    run = python("-X", "dev", "my_script.py", folder=tmp_path)
    assert run.stderr.startswith("Traceback")
    assert "units.py" in run.stderr
    assert run.stderr.splitlines()[-1].endswith(line)
    assert run.returncode == 1


def read_hill_of_one(path):
    """Read the folder in which one file lies alone."""
    return read_hill(path.parent if path.exists() else path)


READERS = [
    (read_sheet, ".csv", FORM),
    (read_hill_of_one, ".csv", FORM),
    (read_lap_times, ".csv", "lap,seconds,note\n"),
    (read_costs, ".csv", ",".join(COLUMNS) + "\n"),
    (read_counts, ".csv", "from,minutes,persons,stop_seconds,people_waited,note\n"),
    (read_track, ".gpx", ""),
    (read_map_line, ".kml", ""),
    (read_map_line, ".geojson", ""),
    (read_record, ".json", ""),
    (learners_in, ".txt", ""),
]
WRONG = {
    "missing": None,
    "folder": Path.mkdir,
    "name\0": None,
    "encoding": "Björn,".encode("utf-16"),
    "encoding_of_old": "Björn,ü,1".encode("cp1252"),
    "endless_cell": b"x" * 140_000 + b",1,2",
    "quote": b'a,"b,c\nd,e,f\n',
    "commas": b",,\n,,\n",
}


@pytest.mark.parametrize("wrong", WRONG, ids=lambda wrong: wrong.strip("\0"))
@pytest.mark.parametrize(("reader", "ending", "heading"), READERS, ids=[f"{r.__name__}{end}" for r, end, _ in READERS])
def test_a_wrong_file_is_answered_in_one_line(reader, ending, heading, wrong, tmp_path):
    path, holds = tmp_path / f"{wrong}{ending}", WRONG[wrong]
    if isinstance(holds, bytes):
        path.write_bytes((b"" if wrong == "commas" else heading.encode()) + holds)
    elif holds:
        holds(path)
    if reader is learners_in and wrong in ("encoding", "endless_cell", "quote", "commas"):
        assert learners_in(path), "any line is a name"
        return
    with pytest.raises(PlainError) as caught:
        reader(path)
    assert path.name in str(caught.value)


def test_a_file_from_outside_is_opened_at_few_places():
    own_files = {"pages/app_view/front_page.py", "pages/talk/reading.py", "pages/talk/stick.py"}
    # README, notebooks, scripts of the talk: none from outside
    doors = {"fieldwork/safe_files.py", "exercises/record.py", "self_check.py"} | own_files
    opened = set()
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            name = getattr(getattr(node, "func", None), "attr", getattr(getattr(node, "func", None), "id", ""))
            own = isinstance(getattr(node, "func", None), ast.Name) and name in (
                "read_text",
                "read_bytes",
            )  # the door itself
            if name in ("open", "read_text", "read_bytes") and not own:
                opened.add(path.relative_to(PACKAGE).as_posix())
    assert opened == doors
