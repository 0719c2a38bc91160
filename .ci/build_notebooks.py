"""Build the notebooks: take the cells from notebooks/sources, run them afresh, write them so that two runs agree.

python .ci/build_notebooks.py            all of them
python .ci/build_notebooks.py 02 04      those whose names begin so
"""

import ast
import os
import re
import sys
import tempfile
from pathlib import Path

import nbformat
from nbclient import NotebookClient

NOTEBOOKS = Path(__file__).resolve().parents[1] / "notebooks"
WIDGET_VIEW = "application/vnd.jupyter.widget-view+json"
KERNEL = {"display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"}


# options that may stand behind the "# %%" of a code cell
OPTIONS = {"folded": {"jupyter": {"source_hidden": True}}, "no-output": {"tags": ["no-output"]}}


def text_line(line):
    """Return a line of a text cell without its mark; refuse one that has none, whose first letters would be lost."""
    if line not in ("#", "") and not line.startswith("# "):
        raise ValueError(f"a line of a text cell begins with '# ', but this one reads {line!r}. Put '# ' before it.")
    return line[2:]


def cells_of(source):
    """Return the notebook that a source describes, not yet run.

    A source is a Python file. A line "# %% [markdown]" begins a text cell, whose lines stand behind "# "; a line "# %%"
    begins a code cell, with the words of ``OPTIONS`` behind it as needed.
    """
    notebook = nbformat.v4.new_notebook(metadata={"kernelspec": KERNEL, "language_info": {"name": "python"}})
    blocks = re.split(r"^# %%(.*)\n", source.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]
    for number, (options, body) in enumerate(zip(blocks[::2], blocks[1::2], strict=True), start=1):
        if options.strip() == "[markdown]":
            cell = nbformat.v4.new_markdown_cell("\n".join(map(text_line, body.strip("\n").split("\n"))))
        else:
            cell = nbformat.v4.new_code_cell(body.strip("\n"))
            ast.parse(cell.source)
            for option in options.split():
                cell.metadata.update(OPTIONS[option])
        cell.id = f"cell-{number:02d}"
        notebook.cells.append(cell)
    return notebook


def run(notebook):
    """Run all cells in the notebooks' own folder, and drop what differs from run to run."""
    NotebookClient(
        notebook,
        timeout=60,
        kernel_name="python3",
        store_widget_state=False,
        record_timing=False,
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
