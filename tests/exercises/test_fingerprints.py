"""No exercise moves unseen: text, numbers and right answer of twenty learners are as their fingerprints say."""

import dataclasses
import string

import fingerprints
import pytest
from fingerprints import (
    COMMAND,
    LEARNERS,
    committed,
    committed_edition,
    committed_roads,
    fingerprint,
    moved,
    roads,
    says,
    shares,
)

from liftcalc import Q
from liftcalc.exercises import BANK, EDITION

BEFORE, ROADS = committed(), committed_roads()


@pytest.mark.parametrize("id", BANK)
def test_no_exercise_moves_unseen(id):
    assert id in BEFORE, f"Exercise {id} is new. Take it with: python tests/fingerprints.py --write"
    who = moved(BEFORE[id], fingerprint(id))
    assert not who, says(id, who)


@pytest.mark.parametrize("id", BANK)
def test_no_wrong_road_leads_elsewhere_unseen(id):
    assert roads(id) == ROADS.get(id), f"A wrong road of {id} leads elsewhere. If it is meant: {COMMAND}"


def test_every_fingerprint_belongs_to_an_exercise():
    gone = sorted(set(BEFORE) - set(BANK))
    assert not gone, f"The exercises {gone} are gone; keys that were handed out hold them."


def test_the_learners_are_of_all_sorts():
    assert len({str(name).strip().casefold() for name in LEARNERS}) == len(LEARNERS) == 20
    assert sum(isinstance(name, int) or name.isdecimal() for name in LEARNERS) >= 4
    assert sum(not str(name).isascii() for name in LEARNERS) >= 6
    assert sum(set(str(name)) <= set(string.ascii_letters) for name in LEARNERS) >= 1


def changed(monkeypatch, id, **parts):
    """Return what moves if an exercise of the bank is another one in some parts."""
    before = fingerprint(id)
    monkeypatch.setitem(BANK, id, dataclasses.replace(BANK[id], **parts))
    return moved(before, fingerprint(id))


def test_a_change_of_words_moves_the_text_alone(monkeypatch):
    who = changed(monkeypatch, "2.3", text=BANK["2.3"].text.replace("photo", "picture"))
    assert list(who) == ["text"]
    assert says("2.3", who).startswith("Exercise 2.3 has moved: its text. If the change is meant, take")


def test_a_mended_right_answer_moves_the_right_answer_of_all(monkeypatch):
    right = BANK["2.3"].right
    who = changed(monkeypatch, "2.3", right=lambda n: right(n) * (1 + 1e-8))
    assert list(who) == ["right"]
    assert who["right"] == [*LEARNERS, ""]
    assert "its right answer for 20 of 20 learners (Maja K. first) and the printed numbers." in says("2.3", who)
    assert "EDITION in liftcalc/exercises/bank/__init__.py must be above" in says("2.3", who)
    assert not changed(monkeypatch, "2.1", right=lambda n, right=BANK["2.1"].right: right(n) * (1 + 1e-13)), "rounding"


def test_a_tighter_draw_moves_numbers_and_says_whose(monkeypatch):
    roads = BANK["2.3"].roads
    near = dataclasses.replace(roads[0], answer=lambda n: Q(7.5, "m"))
    before = {id: fingerprint(id) for id in ("2.2", "2.3")}
    who = changed(monkeypatch, "2.3", roads=(near, *roads[1:]))
    assert list(who) == ["numbers", "right"]
    assert 0 < len(who["numbers"]) < 20
    assert set(who["right"]) <= set(who["numbers"])
    (line,) = shares(before, {id: fingerprint(id) for id in before})
    share = len(who["numbers"]) / 20
    assert line == f"2.3: numbers of {share:.0%}, right answers of {len(who['right']) / 20:.0%} of 20 learners moved"


def test_what_moves_is_written_for_a_newer_edition_only(monkeypatch, tmp_path, capsys):
    assert fingerprints.FILE.stat().st_size < 60_000
    assert committed_edition() <= EDITION
    monkeypatch.setattr(fingerprints, "FILE", tmp_path / "fingerprints.json")
    monkeypatch.setattr(fingerprints, "BANK", {id: BANK[id] for id in ("0.1", "2.3")})
    fingerprints.write()
    before = committed()
    assert before == {id: fingerprint(id) for id in ("0.1", "2.3")}
    assert fingerprints.main([]) == 0
    assert capsys.readouterr().out == "No learner's numbers moved.\n"
    mended = dataclasses.replace(BANK["2.3"], right=lambda n: n.distance / n.riders.m_as("person"))
    mended = dataclasses.replace(mended, roads=BANK["2.3"].roads[1:])
    monkeypatch.setitem(fingerprints.BANK, "2.3", mended)
    assert fingerprints.main(["--write"]) == 2
    said = capsys.readouterr()
    assert said.out.startswith("2.3: numbers of ")
    assert f"Nothing is written: the edition is {EDITION} as before. Raise EDITION in" in said.err
    assert committed() == before
    monkeypatch.setattr(fingerprints, "EDITION", EDITION + 1)
    assert fingerprints.main(["--write"]) == 0
    assert committed_edition() == EDITION + 1
    assert committed()["2.3"] == fingerprint("2.3") != before["2.3"]
