"""Build the notebooks: take the cells from notebooks/sources, run them afresh, write them so that two runs agree.

    python .ci/build_notebooks.py            all of them
    python .ci/build_notebooks.py 02 04      those whose names begin so
"""

import re
import sys
from pathlib import Path

import jupytext
import nbformat
from nbclient import NotebookClient

NOTEBOOKS = Path(__file__).resolve().parents[1] / "notebooks"
WIDGET_VIEW = "application/vnd.jupyter.widget-view+json"
KERNEL = {"display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"}


def cells_of(source):
    """Return the notebook that a source describes, not yet run."""
    notebook = jupytext.read(source)
    notebook.metadata = {"kernelspec": KERNEL, "language_info": {"name": "python"}}
    notebook.nbformat, notebook.nbformat_minor = 4, 5
    for number, cell in enumerate(notebook.cells, start=1):
        cell.id = f"cell-{number:02d}"
        if cell.cell_type == "code":
            cell.outputs, cell.execution_count = [], None
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
                        output.data[kind] = re.sub(r"0x[0-9a-f]{6,16}", "0xADDR", text)
    return notebook


def main(beginnings):
    """Build every notebook whose name begins with one of the given words; all if there are none."""
    for source in sorted((NOTEBOOKS / "sources").glob("*.py")):
        if not beginnings or source.stem.startswith(tuple(beginnings)):
            notebook = run(cells_of(source))
            nbformat.validate(notebook)
            nbformat.write(notebook, NOTEBOOKS / f"{source.stem}.ipynb")
            print(f"{source.stem}: {len(notebook.cells)} cells")


if __name__ == "__main__":
    main(sys.argv[1:])
