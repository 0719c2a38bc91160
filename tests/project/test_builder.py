"""The builder of the notebooks: an id comes from what its cell holds, and a mistake in a source names its place."""

import re

import nbformat
import pytest
from notebook_files import cells_of

TEXT = "# %% [markdown]\n# # A page?\n\n# %%\n1 + 1\n\n# %%\n2 + 2\n\n# %%\n1 + 1\n"


def ids_of(tmp_path, text):
    """Return the ids of the cells that a text describes."""
    source = tmp_path / "99_page.py"
    source.write_text(text, encoding="utf-8")
    notebook = cells_of(source)
    nbformat.validate(notebook)
    return [cell.id for cell in notebook.cells]


def test_a_cell_put_in_between_changes_no_other_id(tmp_path):
    before = ids_of(tmp_path, TEXT)
    after = ids_of(tmp_path, TEXT.replace("# %%\n2 + 2", "# %% [markdown]\n# New.\n\n# %%\n2 + 2"))
    assert after == [*before[:2], after[2], *before[2:]]
    assert after[2] not in before


def test_a_changed_cell_has_another_id_and_the_same_text_twice_a_counter(tmp_path):
    before = ids_of(tmp_path, TEXT)
    assert before[3] == f"{before[1]}-2"
    assert [re.fullmatch("[0-9a-f]{12}", id) is not None for id in before] == [True, True, True, False]
    after = ids_of(tmp_path, TEXT.replace("2 + 2", "2 + 3"))
    assert [one == other for one, other in zip(before, after, strict=True)] == [True, True, False, True]


def test_a_text_line_without_its_mark_is_refused_by_file_and_line(tmp_path):
    with pytest.raises(
        ValueError, match=r"^99_page\.py, line 3: a line of a text cell begins with '# ', but this one "
    ):
        ids_of(tmp_path, "# %% [markdown]\n# # A page?\nforgotten mark\n")
