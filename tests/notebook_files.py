"""The notebooks as files, for the tests that read them."""

import sys
from pathlib import Path

import nbformat

ROOT = Path(__file__).resolve().parents[1]
NOTEBOOKS = ROOT / "notebooks"
PATHS = sorted(NOTEBOOKS.glob("*.ipynb"))
WITHOUT_EXERCISES = (
    "13",
    "14",
)  # the reader's own lift is the exercise, and no bank knows its numbers; nor a talk

sys.path.insert(0, str(ROOT / ".ci"))
from build_notebooks import cells_of  # noqa: E402, F401  the builder's own reading of a source


def read(path):
    """Return a notebook."""
    return nbformat.read(path, 4)


def source_of(path):
    """Return the source that a notebook is built from."""
    return NOTEBOOKS / "sources" / f"{path.stem}.py"


def prose(notebook):
    """Return the text cells, one after another."""
    return "\n\n".join(cell.source for cell in notebook.cells if cell.cell_type == "markdown")


def code_cells(notebook):
    """Return the code cells."""
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def shown_in_app(notebook):
    """Return the texts and the outputs of a notebook that the app view shows: no code, and no cell for JupyterLab.

    A talk begins with its first scene: what stands before it is for readers of the notebook.
    """
    texts, outputs, cells = [], [], notebook.cells
    if any("scene" in cell.metadata for cell in cells):
        cells = cells[next(place for place, cell in enumerate(cells) if "scene" in cell.metadata) :]
    for cell in cells:
        if cell.cell_type == "code":
            outputs += cell.outputs
        elif "lab-only" not in cell.metadata.get("tags", []):
            texts.append(cell.source)
        elif "app_view" in cell.metadata:
            texts.append(cell.metadata["app_view"])
    return texts, outputs
