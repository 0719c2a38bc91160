"""Build the notebooks: take the cells from notebooks/sources, run them afresh, write them so that two runs agree.

python .ci/build_notebooks.py            all of them
python .ci/build_notebooks.py 02 04      those whose names begin so
"""

import ast
import hashlib
import os
import re
import sys
import tempfile
from collections import Counter
from pathlib import Path

import nbformat
from nbclient import NotebookClient

NOTEBOOKS = Path(__file__).resolve().parents[1] / "notebooks"
WIDGET_VIEW = "application/vnd.jupyter.widget-view+json"
KERNEL = {"display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"}


# options that may stand behind the "# %%" of a code cell
OPTIONS = {"folded": {"jupyter": {"source_hidden": True}}, "no-output": {"tags": ["no-output"]}}
TEMPLATE = "# template: "  # a line above the first cell: the app view shows this page by a template of its own

# of a talk: words that may stand behind the "# %%" of any cell, and what they put into its metadata. A cell with a
# scene begins one and says how many minutes it is planned for; "spare" and "spoken" and "caution" say what a cell is
# for; what stands "after" a guess shows once the guess is revealed
TALK_WORDS = {
    "spare": {"spare": True},
    "spoken": {"part": "spoken"},
    "caution": {"part": "caution"},
    "aside": {"part": "aside"},
}
TALK_VALUES = {"scene": str, "minutes": float, "after": str}


def of_a_talk(word):
    """Return the metadata that an option of a talk stands for; None for another word."""
    name, _, value = word.partition("=")
    if name in TALK_VALUES and value:
        return {name: TALK_VALUES[name](value)}
    return TALK_WORDS.get(word)


# what may stand behind the "# %% [markdown]" of a text cell: for JupyterLab alone; words for the app view in its place
LAB_ONLY, APP_ONLY = "lab-only", "app-only"


def text_line(place, line):
    """Return a line of a text cell without its mark; refuse one that has none, whose first letters would be lost."""
    if line not in ("#", "") and not line.startswith("# "):
        raise ValueError(
            f"{place}: a line of a text cell begins with '# ', but this one reads {line!r}. Put '# ' before it."
        )
    return line[2:]


def blocks_of(source):
    """Return for each block of a source the words behind its "# %%", and its lines with their numbers."""
    blocks = []
    for number, line in enumerate(source.read_text(encoding="utf-8").split("\n"), start=1):
        if line.startswith("# %%"):
            blocks.append((line.removeprefix("# %%").split(), []))
        elif blocks:
            blocks[-1][1].append((number, line))
    return blocks


def cells_of(source):
    """Return the notebook that a source describes, not yet run.

    This reader is our own: a pairing tool puts a button of its own into the reader's JupyterLab, and an error into the
    console of the app view. A source is a Python file. A line "# %% [markdown]" begins a text cell, whose lines stand
    behind "# "; a line "# %%" begins a code cell, with the words of ``OPTIONS`` behind it as needed. Cells of a talk
    have besides the words of ``of_a_talk``.

    A text cell marked "lab-only" speaks of cells and code, and the app view leaves it out. One marked "app-only" comes
    right after it and holds the words that the app view shows in its place. JupyterLab would show every cell, so these
    words become no cell: they travel in the metadata of the one before.
    """
    notebook = nbformat.v4.new_notebook(metadata=metadata_of(source))
    before = Counter()
    for options, lines in blocks_of(source):
        if "[markdown]" in options:
            text = "\n".join(text_line(f"{source.name}, line {number}", line) for number, line in lines).strip("\n")
            if APP_ONLY in options:
                put_in_place(notebook.cells, text, f"{source.name}, line {lines[0][0] - 1}")
                continue
            cell = nbformat.v4.new_markdown_cell(text)
        else:
            cell = nbformat.v4.new_code_cell("\n".join(line for _, line in lines).strip("\n"))
            ast.parse(cell.source)
        for option in options:
            if option != "[markdown]":
                cell.metadata.update(metadata_for(option, cell.cell_type, source.name))
        cell.id = cell_id(cell.source, before)
        notebook.cells.append(cell)
    return notebook


def metadata_for(option, cell_type, name):
    """Return what an option behind "# %%" puts into the metadata of its cell."""
    of_its_kind = {LAB_ONLY: {"tags": [LAB_ONLY]}} if cell_type == "markdown" else OPTIONS
    found = of_a_talk(option) or of_its_kind.get(option)
    if found is None:
        known = f"{LAB_ONLY} or {APP_ONLY}" if cell_type == "markdown" else " or ".join(OPTIONS)
        raise ValueError(f"{name}: a {cell_type} cell is marked {option!r}. Write {known}.")
    return found


def put_in_place(cells, text, place):
    """Let the app view show a text in place of the last cell, which must be one that JupyterLab alone shows."""
    if not cells or LAB_ONLY not in cells[-1].metadata.get("tags", []) or "app_view" in cells[-1].metadata:
        raise ValueError(f"{place}: {APP_ONLY} words stand in place of a cell marked {LAB_ONLY}. Put one before them.")
    cells[-1].metadata["app_view"] = text


def metadata_of(source):
    """Return the metadata of the notebook that a source describes."""
    metadata = {"kernelspec": KERNEL, "language_info": {"name": "python"}}
    first = source.read_text(encoding="utf-8").partition("\n")[0]
    return metadata | ({"voila": {"template": first.removeprefix(TEMPLATE)}} if first.startswith(TEMPLATE) else {})


def cell_id(source, before):
    """Return the id of a cell. It comes from the cell's own text: a cell put in between changes no other id.

    ``before`` counts the cells of the notebook with the same text; from the second on a counter stands behind the id.
    """
    id = hashlib.sha256(source.encode("utf-8")).hexdigest()[:12]
    before[id] += 1
    return id if before[id] == 1 else f"{id}-{before[id]}"


def run(notebook):
    """Run all cells in the notebooks' own folder, and drop what differs from run to run."""
    metadata = notebook.metadata
    NotebookClient(
        notebook,
        timeout=60,
        kernel_name="python3",
        store_widget_state=False,
        record_timing=False,
        coalesce_streams=True,  # a busy machine sends one print in two pieces
        resources={"metadata": {"path": str(NOTEBOOKS)}},
    ).execute()
    notebook.metadata = {**metadata, "kernelspec": KERNEL, "language_info": {"name": "python"}}
    for cell in notebook.cells:
        cell.metadata.pop("execution", None)
        for output in cell.get("outputs", []):
            if "data" in output:
                output.data.pop(WIDGET_VIEW, None)
                for kind, text in list(output.data.items()):
                    if kind.startswith("text/"):
                        output.data[kind] = re.sub(r"\b0x[0-9a-f]{6,16}\b", "0xADDR", text)
    return notebook


def main(beginnings):
    """Build every notebook whose name begins with one of the given words; all if there are none."""
    os.environ["LIFTCALC_RECORDS"] = str(Path(tempfile.mkdtemp()) / "my_records")  # empty: nothing is answered yet
    for source in sorted((NOTEBOOKS / "sources").glob("*.py")):
        if not beginnings or source.stem.startswith(tuple(beginnings)):
            notebook = run(cells_of(source))
            nbformat.validate(notebook)
            nbformat.write(notebook, NOTEBOOKS / f"{source.stem}.ipynb")
            print(f"{source.stem}: {len(notebook.cells)} cells")


if __name__ == "__main__":
    main(sys.argv[1:])
