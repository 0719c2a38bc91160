"""Records of learners: kept whole, under a lock, readable; and the learner's calls that write them."""

import json
import os
import subprocess
import sys
from html import unescape

import pytest

from liftcalc import Q
from liftcalc.cautions import ONE_LINE
from liftcalc.exercises import (
    BANK,
    EDITION,
    Session,
    my_record,
    next_clue,
    session,
    show_exercise,
    start_exercises,
    try_answer,
    worked,
)
from liftcalc.exercises.record import FolderRecords, MemoryRecords, Record, RecordError, Try, read_record, records
from liftcalc.panels import LearnerBox


@pytest.fixture
def place(tmp_path):
    return FolderRecords(tmp_path / "my_records")


@pytest.fixture
def learner(place):
    """Return a session with an empty folder."""
    mine = Session(place)
    mine.start("Maja K.")
    return mine


def file_of(place, name="Maja K."):
    return place.path(name)


def test_nothing_is_written_until_something_is_answered(learner, place):
    learner.answer("2.1", ...)
    learner.answer("2.1", "many")
    learner.clue("2.1")
    learner.worked("2.1")
    assert not place.folder.exists()
    learner.answer("2.1", "2.6 s")
    assert [path.name for path in place.folder.glob("*.json")] == [file_of(place).name]


def test_a_person_can_read_the_record(learner, place):
    learner.answer("2.6", "a")
    learner.clue("2.1")
    learner.answer("2.1", "1,800  pph")
    text = file_of(place).read_text(encoding="utf-8")
    assert "\n" in text.strip()
    assert '"learner": "Maja K."' in text
    assert '"answer": "1,800 pph"' in text
    record, whole = read_record(file_of(place))
    assert whole
    assert [(one.exercise, one.state, one.clues) for one in record.tries][1] == ("2.1", "off", 1)
    assert file_of(place).name.startswith("maja_k_")


def test_one_file_a_learner_whatever_the_spelling(place):
    for name in ("Maja K.", "  maja k. ", "MAJA K."):
        mine = Session(place)
        mine.start(name)
        mine.answer("2.1", "1 s")
    assert len(list(place.folder.glob("*.json"))) == 1
    assert len(place.load("maja k.").tries) == 3
    other = Session(place)
    other.answer("2.1", "1 s")
    assert (place.folder / "printed_numbers.json").exists()
    strange = Session(place)
    strange.start("../../etc/\u96ea")
    strange.answer("2.1", "1 s")
    assert len(list(place.folder.glob("*.json"))) == 3, "a name is no path"


def test_the_best_state_counts_and_the_table_tells(learner):
    right = learner.posed("2.1").right
    for given in ("1 s", right, "1 s"):
        learner.answer("2.1", given)
    learner.answer("2.2", "1 s")
    assert learner.record.state("2.1") == "right"
    table = learner.table("02")
    assert table.caption == "Numbers of Maja K.: 1 of 7 right, 2 tried"
    assert [row[:3] for row in table.rows] == [("2.1", "right", "3"), ("2.2", "off", "1")]
    assert learner.table().caption.endswith(f"1 of {len(BANK)} right, 2 tried")


def test_a_worked_solution_asks_for_one_attempt_and_is_noted(learner):
    assert "one attempt first" in repr(learner.worked("2.1"))
    learner.answer("2.1", "2.6 m/s")
    shown = repr(learner.worked("2.1"))
    assert shown.startswith("2.1, worked out:\n1. Spacing: ")
    reply = learner.answer("2.1", learner.posed("2.1").right)
    assert reply.state == "right"
    assert [one.worked for one in learner.record.of("2.1")] == [False, True]
    learner.answer("2.6", "a")
    assert f"So it is {learner.posed('2.6').right}):" in repr(learner.worked("2.6"))


def test_clues_come_one_by_one_then_all(learner):
    clues = BANK["2.1"].clues
    assert [repr(learner.clue("2.1")) for _ in clues] == [
        f"Clue {number} of {len(clues)}. {clue}" for number, clue in enumerate(clues, start=1)
    ]
    assert all(clue in repr(learner.clue("2.1")) for clue in clues)


def test_another_learner_begins_afresh(learner):
    learner.answer("2.1", "1 s")
    learner.clue("2.1")
    mine = repr(learner.posed("2.1"))
    learner.start("somebody else")
    assert repr(learner.posed("2.1")) != mine
    assert learner.record.state("2.1") == "open"
    learner.start("Maja K.")
    assert learner.record.state("2.1") == "off", "and the record is still there"


def test_listeners_hear_of_answers_and_of_learners(learner):
    heard = []
    learner.listen("older", lambda: heard.append("older"))
    learner.listen("older", lambda: heard.append("newer"))
    learner.answer("2.1", ...)
    learner.answer("2.1", "1 s")
    learner.start("x")
    assert heard == ["newer", "newer"]


WORKER = """
import sys, time
from pathlib import Path
from liftcalc.exercises.record import FolderRecords
from liftcalc.exercises import Session
mine = Session(FolderRecords(sys.argv[1]))
mine.start("Maja K.")
if sys.argv[3:]:  # begin at one moment
    Path(sys.argv[3]).touch()
    while not all(Path(other).exists() for other in sys.argv[4:]):
        time.sleep(0.001)
for number in range(int(sys.argv[2])):
    mine.answer("2.1", f"{number}.5 s")
    print(number, flush=True)
"""


def test_two_processes_answer_at_once(place, tmp_path):
    ready = [str(tmp_path / "one"), str(tmp_path / "other")]
    runs = [
        subprocess.Popen(
            [sys.executable, "-c", WORKER, str(place.folder), "30", mine, *ready], stdout=subprocess.DEVNULL
        )
        for mine in ready
    ]
    assert [run.wait(60) for run in runs] == [0, 0]
    record, whole = read_record(file_of(place))
    assert whole
    assert len(record.tries) == 60
    assert sorted(one.value for one in record.tries) == sorted([number + 0.5 for number in range(30)] * 2)


@pytest.mark.parametrize("moment", ["os.fsync", "os.replace"])
def test_a_process_killed_while_writing_loses_at_most_that_answer(learner, place, moment):
    killer = f"import os, signal\n{moment} = lambda *given: os.kill(os.getpid(), getattr(signal, 'SIGKILL', 9))\n"
    for number in range(3):
        learner.answer("2.1", f"{number}.5 s")
    run = subprocess.run(
        [sys.executable, "-c", WORKER.replace("mine.start", f"{killer}mine.start"), str(place.folder), "1"],
        capture_output=True,
        timeout=60,
    )
    assert run.returncode == -9 or os.name != "posix" and run.returncode
    record, whole = read_record(file_of(place))
    assert (whole, len(record.tries)) == (True, 3)
    assert "kept until" not in learner.answer("2.1", "1 s").says
    assert len(place.load("Maja K.").tries) == 4, "the lock of the dead process is gone"


def test_a_broken_record_is_set_aside_and_not_lost(learner, place):
    learner.answer("2.1", "1 s")
    file_of(place).write_text("{ half a rec", encoding="utf-8")
    reply = learner.answer("2.1", "2 s")
    assert "could not be read and was set aside as" in reply.says
    aside = list(place.folder.glob("*.broken1"))
    assert [path.read_text(encoding="utf-8") for path in aside] == ["{ half a rec"]
    assert len(place.load("Maja K.").tries) == 1


def test_where_nothing_can_be_written_the_memory_keeps_it(tmp_path):
    (tmp_path / "in_the_way").write_text("a file, no folder", encoding="utf-8")
    mine = Session(FolderRecords(tmp_path / "in_the_way" / "my_records"))
    reply = mine.answer("2.1", "1 s")
    assert "could not be written" in reply.says
    assert "kept until this page is closed" in reply.says
    assert mine.record.state("2.1") == "off"


WHOLE = json.loads(Record("a", (Try("2.1", "1 s", 1.0, "s", "off", []),)).text())
BROKEN = {
    "no JSON": ("{", "cannot be read as a record"),
    "deep nesting": ("[" * 100_000, "cannot be read as a record"),
    "another file": ('{"a": 1}', "is no record"),
    "no tries": (json.dumps({**WHOLE, "tries": 3}), "has no list of tries"),
    "a field missing": (json.dumps({**WHOLE, "tries": [{"exercise": "2.1"}]}), "try 1 has not the fields"),
    "a wrong field": (
        json.dumps({**WHOLE, "tries": [{**WHOLE["tries"][0], "clues": "many"}]}),
        "try 1: clues is 'many'",
    ),
    "a wrong edition": (
        json.dumps({**WHOLE, "tries": [{**WHOLE["tries"][0], "edition": "second"}]}),
        "try 1: edition is 'second'",
    ),
    "no edition": (json.dumps({**WHOLE, "tries": [{**WHOLE["tries"][0], "edition": 0}]}), "editions count from 1"),
    "a wrong name": (json.dumps({**WHOLE, "tries": [{**WHOLE["tries"][0], "mistakes": [3]}]}), "mistakes are not all"),
}


@pytest.mark.parametrize("case", BROKEN)
def test_a_broken_record_is_told(tmp_path, case):
    text, message = BROKEN[case]
    path = tmp_path / "some.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(RecordError, match=message):
        read_record(path)


def test_other_files_are_told(tmp_path):
    (tmp_path / "bytes.json").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(RecordError, match=r"bytes\.json: cannot be read as a record \(UnicodeDecodeError\)"):
        read_record(tmp_path / "bytes.json")
    with pytest.raises(RecordError, match="FileNotFoundError"):
        read_record(tmp_path / "none.json")
    (tmp_path / "large.json").write_bytes(b" " * 5_000_001)
    with pytest.raises(RecordError, match="5,000,001 bytes is too large"):
        read_record(tmp_path / "large.json")


def test_the_seal_sees_an_edit(learner, place):
    learner.answer("2.1", "1 s")
    path = file_of(place)
    path.write_text(path.read_text(encoding="utf-8").replace('"off"', '"right"'), encoding="utf-8")
    record, whole = read_record(path)
    assert not whole
    assert record.state("2.1") == "right", "read as it is; the marks judge anew"


def test_a_record_carries_the_edition_of_the_bank(learner, place):
    learner.answer("2.1", "1 s")
    assert f'"edition": {EDITION}' in file_of(place).read_text(encoding="utf-8")
    assert [one.edition for one in place.load("Maja K.").tries] == [EDITION]


OF_THE_FIRST_EDITION = """{
 "what": "record of exercises on lift capacity",
 "learner": "Maja K.",
 "tries": [
  {
   "exercise": "2.1",
   "answer": "1 s",
   "value": 1.0,
   "unit": "s",
   "state": "off",
   "mistakes": [],
   "clues": 0,
   "worked": false
  }
 ],
 "seal": "e0c695cc884db44f"
}
"""


def test_a_record_without_an_edition_is_of_the_first(learner, place):
    place.folder.mkdir()
    file_of(place).write_text(OF_THE_FIRST_EDITION, encoding="utf-8")
    record, whole = read_record(file_of(place))
    assert whole
    assert [one.edition for one in record.tries] == [1]
    learner.start("Maja K.")
    assert learner.record.state("2.1") == "off"
    assert "set aside" not in learner.answer("2.1", "2 s").says
    record, whole = read_record(file_of(place))
    assert whole
    assert [one.edition for one in record.tries] == [1, EDITION], "an old answer keeps its edition"


def test_the_environment_names_the_place(monkeypatch, tmp_path):
    monkeypatch.setenv("LIFTCALC_RECORDS", "memory")
    assert isinstance(records(), MemoryRecords)
    monkeypatch.setenv("LIFTCALC_RECORDS", str(tmp_path))
    assert records().folder == tmp_path
    monkeypatch.delenv("LIFTCALC_RECORDS")
    assert str(records().folder) == "my_records"


def test_the_calls_of_a_notebook_share_one_session(monkeypatch):
    monkeypatch.setattr("liftcalc.exercises.learner._session", Session(MemoryRecords()))
    assert repr(start_exercises(17)) == "Numbers of 17. Answers are kept until this page is closed."
    right = show_exercise("2.1").right
    assert try_answer("2.1").state == "open"
    assert "one attempt first" in repr(worked("2.1"))
    assert repr(next_clue("2.1")).startswith("Clue 1 of")
    assert try_answer("2.1", right).state == "right"
    assert "<strong>Right.</strong>" in try_answer("2.1", right)._repr_html_()
    assert repr(my_record()).startswith(f"Numbers of 17: 1 of {len(BANK)} right, 1 tried")
    assert session().name == "17"
    assert repr(start_exercises()).startswith("The printed numbers.")
    for call in (show_exercise, try_answer, next_clue, worked):
        with pytest.raises(ValueError, match=f"{call.__name__}: there is no exercise '9.9'. Write one of '0.1', '0.2'"):
            call("9.9")
    assert try_answer("2.1", Q(1, "s")).state == "off"


def test_the_box_above_the_exercises_says_once_who_decides():
    box = LearnerBox()
    box._taken()
    shown = unescape("".join(child.value for child in box.children if hasattr(child, "value")))
    assert shown.count(ONE_LINE) == box.words().count(ONE_LINE) == unescape(box.still()).count(ONE_LINE) == 1
    assert ONE_LINE not in unescape(box._reply.value), "it is read out once, and not with every name"
