"""The README keeps its promises: its table of pages agrees with the pages, and what it computes comes out."""

import doctest
import re

from notebook_files import PATHS, ROOT, source_of

from liftcalc.exercises import BANK

README = (ROOT / "README.md").read_text(encoding="utf-8")
MINUTES_AN_EXERCISE = 5
ROW = re.compile(
    r"^\| \[(?P<page>[^]]+)\]\(notebooks/(?P<stem>\w+)\.ipynb\) \| (?P<question>[^|]+) "
    r"\| (?P<minutes>\d+) \| (?P<with_exercises>\d+) \| (?P<readers>[a-z, ]+) \|$",
    flags=re.MULTILINE,
)
ROWS = [row.groupdict() for row in ROW.finditer(README)]


def test_every_page_is_in_the_table_once_and_in_order():
    assert [row["stem"] for row in ROWS] == [path.stem for path in PATHS]
    assert [row["page"].replace(" ", "_").lower() for row in ROWS] == [path.stem for path in PATHS]


def test_question_and_minutes_are_those_of_the_page():
    for row, path in zip(ROWS, PATHS, strict=True):
        page = source_of(path).read_text(encoding="utf-8")
        assert row["question"] == re.search(r"^# # (.*)$", page, flags=re.MULTILINE)[1]
        minutes = int(re.search(r"^# \*\*About (\d+) minutes\.\*\*", page, flags=re.MULTILINE)[1])
        exercises = [exercise for exercise in BANK.values() if exercise.notebook == path.stem[:2]]
        with_exercises = minutes + MINUTES_AN_EXERCISE * len(exercises)
        assert (int(row["minutes"]), int(row["with_exercises"])) == (minutes, with_exercises), path.stem
    assert "An exercise takes about five minutes." in README


def test_readers_are_named_at_once_and_by_one_word_each():
    named = "students of ski-area management, new lift supervisors, presenters at operators' meetings, and instructors."
    paragraphs = README.split("\n\n")
    assert paragraphs[0] == "# liftcalc"
    assert paragraphs[2] == f"It is for {named}"
    readers = [set(row["readers"].split(", ")) for row in ROWS]
    assert set.union(*readers) == {"student", "supervisor", "presenter"}
    assert all("student" in each for each in readers)
    said = re.findall(r"^- \*\*An? (\w+)\*\*", README, flags=re.MULTILINE)
    assert said == ["student", "supervisor", "presenter", "instructor"]


def test_links_lead_somewhere():
    heads = {head.lower().replace(" ", "-") for head in re.findall(r"^## (.*)$", README, flags=re.MULTILINE)}
    for target in re.findall(r"\]\(([^)]+)\)", README):
        assert target[1:] in heads if target.startswith("#") else (ROOT / target).exists(), target


def test_what_it_computes_comes_out():
    result = doctest.testfile(str(ROOT / "README.md"), module_relative=False)
    assert result.attempted > 0
    assert result.failed == 0
