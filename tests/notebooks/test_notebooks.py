"""What every notebook must hold: outputs, order, headings, cautions, live links, and no network."""

import re
import statistics

import pytest
from notebook_files import NOTEBOOKS, PATHS, WITHOUT_EXERCISES, cells_of, code_cells, prose, read, source_of

from liftcalc.cautions import AT_THE_DRIVE, CRUSH_POINTS, DEFER, NEAR_THE_ROPE, ON_THE_ROPE, ONE_LINE, THE_THREE
from liftcalc.exercises import BANK, Posed

TALK = "14"  # a talk has scenes in place of lessons: no prediction panels, no exercises, no "In short"
LESSONS = [path for path in PATHS if path.stem[:2] != TALK]
each = pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
each_lesson = pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)


def test_the_series_is_here():
    assert [path.stem[:2] for path in PATHS] == [f"{number:02}" for number in range(15)]
    assert {path.stem for path in (NOTEBOOKS / "sources").glob("*.py")} == {path.stem for path in PATHS}


@each
def test_every_code_cell_was_run_in_order_and_shows_something(path):
    cells = code_cells(read(path))
    assert [cell.execution_count for cell in cells] == list(range(1, len(cells) + 1))
    for cell in cells:
        tags = cell.metadata.get("tags", [])
        assert set(tags) <= {"no-output"}, f"{cell.id}: {tags}"
        assert bool(cell.outputs) != ("no-output" in tags), f"{cell.id} shows nothing, or is marked for no reason"
        assert not re.search(r"NBVAL_(SKIP|IGNORE)", cell.source)


@each
def test_the_notebook_holds_the_cells_of_its_source(path):
    built, stored = cells_of(source_of(path)), read(path)
    assert [(cell.id, cell.cell_type, cell.source) for cell in built.cells] == [
        (cell.id, cell.cell_type, cell.source) for cell in stored.cells
    ], "build it: python .ci/build_notebooks.py"
    assert [cell.metadata for cell in built.cells] == [cell.metadata for cell in stored.cells]


@each
def test_outputs_are_normalised(path):
    notebook = read(path)
    own = {"voila"} if path.stem.startswith(TALK) else set()  # a template of its own in the app view
    assert set(notebook.metadata) == {"kernelspec", "language_info"} | own
    for cell in code_cells(notebook):
        for output in cell.outputs:
            data = output.get("data", {})
            assert "application/vnd.jupyter.widget-view+json" not in data
            assert output.output_type in ("execute_result", "stream")
            assert output.get("name") != "stderr"
            text = "".join([output.get("text", ""), *(str(value) for value in data.values())])
            text = re.sub(r"base64,[A-Za-z0-9+/=]+", "", text)
            assert not re.search(r"\b0x[0-9a-f]{6,}|\bnan\b|\binf |Traceback|<Quantity|/home/|/tmp/", text)


@each_lesson
def test_order_of_parts(path):
    cells = read(path).cells  # a prediction stands in the text, or is a widget
    guess = {True: "**Predict.**", False: ""}
    text = "\n".join(
        cell.source if cell.cell_type == "markdown" else guess["Prediction(" in cell.source] for cell in cells
    )
    marks = [
        "# ",
        "To run this page",
        "## Before you start",
        "**You will be able to**",
        "**You need first**",
        "**About ",
        "## Cautions",
        "**Predict.**",
        "## Exercises",
        "## In short",
        "**Formula card.**",
        "## Where to next",
    ]
    if path.stem[:2] in WITHOUT_EXERCISES:
        assert "## Exercises" not in text
        marks.remove("## Exercises")
    places = [re.search(rf"^{re.escape(mark)}", text, flags=re.MULTILINE) for mark in marks]
    assert all(places), [mark for mark, place in zip(marks, places, strict=True) if not place]
    starts = [place.start() for place in places]
    assert starts == sorted(starts)
    short = text[starts[marks.index("## In short")] : starts[marks.index("**Formula card.**")]]
    assert short.count("\n- ") == 3, "In short has three lines"


def test_order_of_parts_of_the_talk():
    (path,) = (path for path in PATHS if path.stem.startswith(TALK))
    cells = read(path).cells
    text = prose(read(path))
    marks = ["# ", "To run this page", "## Before you start", "**You will be able to**", "**You need first**",
             "**About ", "## Cautions", "## Where to next"]  # fmt: skip
    places = [re.search(rf"^{re.escape(mark)}", text, flags=re.MULTILINE) for mark in marks]
    assert all(places), [mark for mark, place in zip(marks, places, strict=True) if not place]
    assert [place.start() for place in places] == sorted(place.start() for place in places)
    begun = False
    for cell in cells:
        begun = begun or "scene" in cell.metadata
        if begun and cell.metadata.get("part") == "spoken":
            assert re.fullmatch(r"> [^\n]+(\n>\n> [^\n]+)?", cell.source), "what is said; what to do with the room"
        if begun and cell.metadata.get("part") == "caution":
            assert "\n" not in cell.source, "one paragraph"
    heads = [cell.source for cell in cells if "scene" in cell.metadata]
    assert all(head.startswith("## ") for head in heads)
    for cell in code_cells(read(path)):
        assert len(cell.source.splitlines()) == 1 or "no-output" in cell.metadata.get("tags", []), "one line a scene"


@each
def test_headings(path):
    heads = re.findall(r"^(#+) (.*)$", prose(read(path)), flags=re.MULTILINE)
    assert [level for level, _ in heads].count("#") == 1
    assert heads[0][0] == "#"
    assert heads[0][1].endswith("?"), "the title is a question"
    for (before, _), (after, title) in zip(heads, heads[1:], strict=False):
        assert len(after) <= len(before) + 1, title


@each
def test_cautions_stand_before_the_numbers(path):
    notebook = cells_of(source_of(path))  # the built page holds the same cells: a test of its own says so
    first_code = next(place for place, cell in enumerate(notebook.cells) if cell.cell_type == "code")
    before = "\n".join(cell.source for cell in notebook.cells[:first_code] if cell.cell_type == "markdown")
    number = path.stem[:2]
    full = number in ("00", "02", "05", "13")
    wanted = [*NEAR_THE_ROPE, DEFER] if full else [THE_THREE, ONE_LINE, "(00_start_here.ipynb)"]
    wanted += [CRUSH_POINTS] if number == "07" else []
    wanted += AT_THE_DRIVE if number == "08" else ()
    wanted += ON_THE_ROPE if number in ("02", "08", "09", "13") else ()
    assert [text for text in wanted if text not in before] == []


@each
def test_links_are_alive(path):
    for target in re.findall(r"\]\(([^)]+)\)", prose(read(path))):
        assert not target.startswith(("http:", "https:")), "no address outside"
        assert (path.parent / target.partition("#")[0]).exists(), target


@each
def test_code_cells_are_short_and_seldom_in_a_row(path):
    notebook = read(path)
    kinds = [cell.cell_type for cell in notebook.cells]
    assert ("code", "code", "code") not in zip(kinds, kinds[1:], kinds[2:], strict=False)
    for cell in code_cells(notebook):
        assert len(cell.source.splitlines()) <= 15, cell.id
        assert not re.search(r"^\s*(def|class) ", cell.source, flags=re.MULTILINE), "no definitions"
        # notebook runners hang at interact and Output, and the strict check compares nothing there
        assert not re.search(r"interact\(|interactive_output|Output\(|\binput\(|https?:|!pip|%pip", cell.source)
        if "Panel(" in cell.source:
            assert cell.metadata["jupyter"]["source_hidden"], "the code of a panel starts folded"
        assert not cell.source.rstrip().endswith(";")


@each_lesson
def test_each_panel_has_its_words_its_legend_its_questions_and_its_table(path):
    notebook = read(path)
    text = "\n".join(cell.source for cell in notebook.cells)
    names = re.findall(r"^(\w+) = (?:\w+Panel\(|\w+\.(?:lift_)?panel\()", text, flags=re.MULTILINE)
    assert names
    assert text.count("**Move it and answer.**") == len(names)
    for name in names:
        assert f"{name}.legend()" in text
        settings = re.search(rf"{name}\.(?:at_settings|around)\(.*\[(.*)\]\)", text)
        around = re.search(rf"{name}\.around\(\"\w+\"\)", text)  # three settings around what the lift has
        assert around or settings[1].count("Q(") == 3, f"{name}: a table at three settings"
    stills = [o.data["text/html"] for c in code_cells(notebook) for o in c.outputs if "<img" in str(o.get("data"))]
    said = [re.search(r'<img alt="([^"]+)"', still)[1] for still in stills]  # all have words; a panel its result
    assert len([alt for alt in said if "Result: " in alt]) == len(names)


@pytest.mark.parametrize(
    "path", [path for path in PATHS if path.stem[:2] not in WITHOUT_EXERCISES], ids=lambda path: path.stem
)
def test_exercises(path):
    text = prose(read(path))
    number = str(int(path.stem[:2]))
    headings = re.findall(r"^### Exercise ([0-9.]+)$", text, flags=re.MULTILINE)
    assert headings == [id for id in BANK if id.split(".")[0] == number]
    assert 5 <= len(headings) <= 8
    cells = code_cells(read(path))
    asked = [cell for cell in cells if cell.source.startswith("AnswerBox(")]
    assert [cell.source for cell in asked] == [f'AnswerBox("{id}")' for id in headings]
    for cell, id in zip(asked, headings, strict=True):
        assert cell.metadata["jupyter"]["source_hidden"]
        assert cell.outputs[0].data["text/plain"] == repr(Posed(BANK[id])), "committed is the set without a name"
    assert not any("worked(" in cell.source for cell in cells), "running all reveals nothing"
    assert cells[-1].source == f'RecordBox("{path.stem[:2]}")'
    assert cells[-1].outputs[0].data["text/plain"] == f"The printed numbers: 0 of {len(headings)} right, 0 tried."
    after = text[text.index("## Exercises") : text.index("## In short")]
    assert not re.search(r"[0-9]", re.sub(r"^### Exercise .*$", "", after, flags=re.MULTILINE)), (
        "numbers are the bank's"
    )


@each
def test_voice(path):
    text = prose(read(path))
    assert "!" not in text
    assert not re.search(r"\b(simply|obviously|of course|just click|very easy)\b", text, flags=re.IGNORECASE)


def test_measures_of_the_series(capsys):
    """Print what is only looked at: lengths of cells and of prose."""
    for path in PATHS:
        notebook = read(path)
        lines = [len(cell.source.splitlines()) for cell in code_cells(notebook)]
        words = len(re.findall(r"\w+", prose(notebook)))
        texts = len(notebook.cells) - len(lines)
        with capsys.disabled():
            print(
                f"\n{path.stem}: {len(notebook.cells)} cells, {texts / len(lines):.1f} text to code, "
                f"{statistics.median(lines):.0f} lines a code cell, {words} words",
                end="",
            )
        assert statistics.median(lines) <= 3


def test_a_text_line_without_its_mark_is_refused(tmp_path):
    source = tmp_path / "99_page.py"
    source.write_text("# %% [markdown]\n# # A page\n#\nforgotten mark\n", encoding="utf-8")
    with pytest.raises(ValueError, match=r"begins with '# ', but this one reads 'forgotten mark'\. Put '# ' before it"):
        cells_of(source)
    source.write_text("# %% [markdown]\n# # A page\n#\n# whole\n", encoding="utf-8")
    assert cells_of(source).cells[0].source == "# A page\n\nwhole"
