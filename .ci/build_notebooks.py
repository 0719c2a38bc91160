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
    """Return for each block of a source what stands behind its "# %%", and its lines with their numbers."""
    blocks = []
    for number, line in enumerate(source.read_text(encoding="utf-8").split("\n"), start=1):
        if line.startswith("# %%"):
            blocks.append((line.removeprefix("# %%").strip(), []))
        elif blocks:
            blocks[-1][1].append((number, line))
    return blocks


def cells_of(source):
    """Return the notebook that a source describes, not yet run.

    This reader is our own: a pairing tool puts a button of its own into the reader's JupyterLab, and an error into the
    console of the app view. A source is a Python file. A line "# %% [markdown]" begins a text cell, whose lines stand
    behind "# "; a line "# %%" begins a code cell, with the words of ``OPTIONS`` behind it as needed.

    A text cell marked "lab-only" speaks of cells and code, and the app view leaves it out. One marked "app-only" comes
    right after it and holds the words that the app view shows in its place. JupyterLab would show every cell, so these
    words become no cell: they travel in the metadata of the one before.
    """
    notebook = nbformat.v4.new_notebook(metadata={"kernelspec": KERNEL, "language_info": {"name": "python"}})
    before = Counter()
    for options, lines in blocks_of(source):
        words = options.split()
        if words[:1] == ["[markdown]"]:
            text = "\n".join(text_line(f"{source.name}, line {number}", line) for number, line in lines).strip("\n")
            if words[1:] == [APP_ONLY]:
                put_in_place(notebook.cells, text, f"{source.name}, line {lines[0][0] - 1}")
                continue
            if words[1:] not in ([], [LAB_ONLY]):
                raise ValueError(f"{source.name}: a text cell is marked {options!r}. Write {LAB_ONLY} or {APP_ONLY}.")
            cell = nbformat.v4.new_markdown_cell(text, metadata={"tags": words[1:]} if words[1:] else {})
        else:
            cell = nbformat.v4.new_code_cell("\n".join(line for _, line in lines).strip("\n"))
            ast.parse(cell.source)
            for option in words:
                cell.metadata.update(OPTIONS[option])
        cell.id = cell_id(cell.source, before)
        notebook.cells.append(cell)
    return notebook


def put_in_place(cells, text, place):
    """Let the app view show a text in place of the last cell, which must be one that JupyterLab alone shows."""
    if not cells or LAB_ONLY not in cells[-1].metadata.get("tags", []) or "app_view" in cells[-1].metadata:
        raise ValueError(f"{place}: {APP_ONLY} words stand in place of a cell marked {LAB_ONLY}. Put one before them.")
    cells[-1].metadata["app_view"] = text


def cell_id(source, before):
    """Return the id of a cell. It comes from the cell's own text: a cell put in between changes no other id.

    ``before`` counts the cells of the notebook with the same text; from the second on a counter stands behind the id.
    """
    id = hashlib.sha256(source.encode("utf-8")).hexdigest()[:12]
    before[id] += 1
    return id if before[id] == 1 else f"{id}-{before[id]}"


def run(notebook):
    """Run all cells in the notebooks' own folder, and drop what differs from run to run."""
    NotebookClient(
        notebook,
        timeout=60,
        kernel_name="python3",
        store_widget_state=False,
        record_timing=False,
        coalesce_streams=True,  # a busy machine sends one print in two pieces
        resources={"metadata": {"path": str(NOTEBOOKS)}},
    ).execute()
    notebook.metadata = {"kernelspec": KERNEL, "language_info": {"name": "python"}}
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
