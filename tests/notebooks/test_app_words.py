"""What the app view shows of each notebook: no word of cells, code or menus, no number without its label, no way out."""

import re
from functools import cache

import jinja2
import pytest
from notebook_files import NOTEBOOKS, PATHS, WITHOUT_EXERCISES, cells_of, read, shown_in_app

from liftcalc.pages.app_view import TEMPLATES

each = pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
CODE_WORDS = re.compile(
    r"\bcells?\b|\*Run\*|\b[Rr]un (?:menu|all)\b|quotation mark|\bShift\b|\bin code\b|\b(?:prefers?|without|no|shows?) code\b|```|"
    r"\btry_answer\b|\bQ\(|app view",
)


@cache
def shown(path):
    """Return the texts and the outputs of a notebook that the app view shows."""
    return shown_in_app(read(path))


@each
def test_no_sentence_speaks_of_cells_code_or_menus(path):
    texts, outputs = shown(path)
    printed = [output.get("text", "") or output.data["text/plain"] for output in outputs]
    said = "\n".join([*texts, *printed])
    assert [said[max(0, found.start() - 60) : found.end() + 30] for found in CODE_WORDS.finditer(said)] == []


@each
def test_jupyterlab_still_says_how_to_run_the_page(path):
    text = path.read_text(encoding="utf-8")
    assert text.count("To run this page, choose *Run*, then *Run All Cells*.") == 1
    assert text.count("Whoever prefers code writes `try_answer`") == (path.stem[:2] not in WITHOUT_EXERCISES)


@each
def test_a_printed_number_says_what_it_is(path):
    """The code that would explain it does not show: a line has two words or more besides its number and unit."""
    _, outputs = shown(path)
    for output in outputs:
        if output.output_type == "stream":
            for line in output.text.splitlines():
                assert len(re.findall(r"[A-Za-z]{2,}", re.sub(r"\d\S* \S+", "", line))) > 1 or ":" in line, line
        else:
            assert "text/html" in output.data, output.data


@each
def test_every_link_stays_inside_or_saves_a_file(path):
    texts, outputs = shown(path)
    text = "\n".join(texts)
    html = "\n".join([text, *(str(output.get("data", {}).get("text/html", "")) for output in outputs)])
    for target in re.findall(r"\]\(([^)]*)\)", text):
        file, _, place = target.partition("#")
        assert (NOTEBOOKS / file).is_file() if file else place, target
    html = re.sub(r'<iframe title="[^"]+" sandbox srcdoc="', "", html)  # a page of ours, that can do nothing
    assert not re.search(r"mailto:|https?://(?!www\.w3\.org/)|<(?:form|iframe|base|area)\b|\bwindow\.", html)
    for link in re.findall(r"<a\b[^>]*>", html):
        assert re.search(r'\bdownload="[^"]+" href="(?:data|blob):', link), link[:200]


def test_the_template_leaves_out_what_is_marked_and_puts_its_words_in_place():
    source = TEMPLATES / "voila/templates/plain_page/index.html.j2"
    beneath = (
        "{% for cell in cells %}{% block any_cell scoped %}[{{ cell.source }}]{% endblock %}{% endfor %}"
        "{% block notebook_css %}{% endblock %}"
    )
    loaders = [
        jinja2.DictLoader({"voila/templates/lab/index.html.j2": beneath}),
        jinja2.FileSystemLoader([TEMPLATES, source.parent]),
    ]
    template = jinja2.Environment(loader=jinja2.ChoiceLoader(loaders)).get_template("index.html.j2")
    cells = [
        {"source": "all", "metadata": {}},
        {"source": "lab", "metadata": {"tags": ["lab-only"]}},
        {"source": "long", "metadata": {"tags": ["lab-only"], "app_view": "short"}},
        {"source": "last", "metadata": {"tags": ["no-output"]}},
    ]
    kept = re.findall(r"\[(all|lab|long|short|last)\]", template.render(cells=cells))
    assert kept == ["all", "short", "last"]


def test_marks_of_text_cells(tmp_path):
    source = tmp_path / "99_page.py"

    def built(text):
        source.write_text(text, encoding="utf-8")
        return cells_of(source).cells

    lab, app = "# %% [markdown] lab-only\n# Run it.\n", "# %% [markdown] app-only\n# Look.\n"
    cells = built("# %% [markdown]\n# A page.\n" + lab + app + "# %%\n1 + 1\n")
    assert [cell.source for cell in cells] == ["A page.", "Run it.", "1 + 1"]
    assert cells[1].metadata == {"tags": ["lab-only"], "app_view": "Look."}
    for text, place in ((app, 1), ("# %% [markdown]\n# A page.\n" + app, 3), (lab + app + app, 5)):
        with pytest.raises(ValueError, match=rf"^99_page\.py, line {place}: app-only words stand in place of a cell"):
            built(text)
    with pytest.raises(ValueError, match=r"a markdown cell is marked 'lab'\. Write lab-only or app-only\."):
        built("# %% [markdown] lab\n# A page.\n")
