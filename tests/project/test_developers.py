"""DEVELOPERS.md stays short and true: its paths are there, and its map has every room in the order of imports."""

import re
from pathlib import Path

from test_contract import PLACE

ROOT = Path(__file__).resolve().parents[2]
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
PLACES = [path for folder in ("liftcalc", "tests", "notebooks", "data", ".ci") for path in (ROOT / folder).rglob("*")]


def test_it_is_short():
    assert len(TEXT.splitlines()) <= 122
    assert len(TEXT.encode()) <= 10_900


def test_what_it_names_is_there():
    named = re.findall(r"[\w./*-]*/[\w.*-]*|\.?[\w-]+\.(?:py|md|csv)\b", " ".join(re.findall(r"`([^`]+)`", TEXT)))
    assert len(named) > 40
    missing = {name for name in named if not any(path.match(name) for path in [*PLACES, *ROOT.iterdir()])}
    assert missing == {"script.py"}, "any script of the reader's; all else is there"


def test_four_files_come_first():
    first = TEXT.partition("\n## Rooms")[0]
    assert len(re.findall(r"^- `liftcalc/[\w/]+\.py`: ", first, flags=re.MULTILINE)) == 4


def test_the_map_has_every_room_in_the_order_of_imports():
    rooms = re.findall(r"^\| `liftcalc/(\w+)/` \|", TEXT, flags=re.MULTILINE)
    folders = {path.parent.name for path in (ROOT / "liftcalc").glob("*/__init__.py")}
    assert sorted(rooms) == sorted(folders)
    assert [PLACE[room] for room in rooms] == sorted(PLACE[room] for room in rooms)
