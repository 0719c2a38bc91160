"""What the package promises of itself: docstrings, imports in one direction, and a light import."""

import ast
import inspect
import re
import subprocess
import sys
from pathlib import Path

import pytest

import liftcalc
from liftcalc.units import FORMULAS, PlainError, Q

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "liftcalc"
MODULES = sorted(PACKAGE.rglob("*.py"))

# a module may import only from ranks below its own; modules of one rank do not know each other unless listed
RANKS = [
    {"vocabulary", "errors"},
    {"docstrings"},
    {"units"},
    {"constants", "quantity_text", "tables", "cautions"},
    {"levels"},
    {"formulas"},
    {"uncertainty"},
    {"fieldwork"},
    {"lifts"},
    {"simulation"},
    {"exercises"},
    {"figures"},
    {"panels"},
    {"pages"},
    {"self_check"},
    {"__main__"},
]
# the same inside two folders
RANKS_INSIDE = {
    "formulas": [
        {"conditions"},
        {
            "grade",
            "spacing",
            "riders",
            "capacity",
            "carriers",
            "loading_point",
            "pull",
            "hand_grip",
            "slope_crowding",
            "cost",
            "waiting",
        },
        {"stopping", "motor", "traction"},
    ],
    "lifts": [
        {"kinds", "line_quantities", "limit_records", "readings"},
        {"givens", "limits", "governing", "sheet"},
        {"starts"},
        {"line"},
        {"installation", "limits_of_line", "sheet_line"},
        {"hill", "shares", "sheet_words"},
        {"tables", "demo_hill", "sheet_limits", "cost_of_lift"},
        {"cost_words", "sheet_budget"},
    ],
}


def places(ranks):
    """Return the number of its rank for each name."""
    return {name: place for place, rank in enumerate(ranks) for name in rank}


PLACE, PLACE_INSIDE = places(RANKS), {folder: places(ranks) for folder, ranks in RANKS_INSIDE.items()}


def part_of(path):
    """Return the name of the module or folder just below the package."""
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imported(path):
    """Return what a file imports, as full names."""
    names = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are written in full"
            names |= {f"{node.module}.{alias.name}" for alias in node.names}
    return names


def test_every_module_has_a_rank():
    assert {part_of(path) for path in MODULES} - {"__init__"} == set(PLACE)
    for folder, places_inside in PLACE_INSIDE.items():
        assert {path.stem for path in (PACKAGE / folder).glob("*.py")} - {"__init__"} == set(places_inside)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_imports_point_one_way(path):
    mine = part_of(path)
    if mine == "__init__":
        return
    for name in imported(path):
        parts = name.split(".")
        if parts[0] != "liftcalc" or parts[1] not in PLACE:
            continue
        same_folder = parts[1] == mine and (PACKAGE / mine).is_dir()
        assert same_folder or PLACE[parts[1]] < PLACE[mine], f"{mine} must not import {parts[1]}"
        inside = PLACE_INSIDE.get(mine)
        if same_folder and inside and path.stem != "__init__":
            assert len(parts) > 2, f"{path.stem} imports the whole folder"
            assert inside[parts[2]] < inside[path.stem], f"{path.stem} must not import {parts[2]}"


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_only_one_folder_knows_each_heavy_library(path):
    heavy = {"matplotlib": "figures", "PIL": "figures", "ipywidgets": "panels"}
    for name in imported(path):
        owner = heavy.get(name.split(".")[0])
        assert owner in (None, part_of(path)), f"{name} belongs to {owner}"
    network = {"requests", "urllib", "socket", "http", "aiohttp", "httpx", "ftplib"}
    assert not {name.split(".")[0] for name in imported(path)} & network


def test_importing_the_package_loads_no_drawing_library():
    heavy = ("matplotlib", "pandas", "ipywidgets", "IPython")
    code = f"import sys, liftcalc; print([name for name in {heavy} if name in sys.modules])"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert run.stdout.strip() == "[]"


def test_importing_the_panels_leaves_the_plot_style_alone():
    code = (
        "import sys, matplotlib; names = set(matplotlib.rcParams) - {'backend'};"
        "look = lambda: {name: matplotlib.rcParams[name] for name in names}; before = look();"
        "import liftcalc.panels; print(before == look(), 'matplotlib.pyplot' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert run.stdout.strip() == "True False"


def sections_of(text):
    """Return what stands above the sections of a docstring, and the sections by their heads, each on one line."""
    above, *parts = re.split(r"^(\w+)\n-+\n", text, flags=re.MULTILINE)
    assert [len(rule) for rule in re.findall(r"^-+$", text, flags=re.MULTILINE)] == [len(head) for head in parts[::2]]
    return above, dict(zip(parts[::2], parts[1::2], strict=True))


def entries_of(section):
    """Return the entries of a section: what stands under each head, on one line."""
    found = re.split(r"^(\S.*)\n", section, flags=re.MULTILINE)[1:]
    return {head: " ".join(body.split()) for head, body in zip(found[::2], found[1::2], strict=True)}


def bound_of(formula, argument):
    """Return the bound of an argument, as the message of the check has it."""
    values = {name: Q(1.0, formula.units[name]) for name in inspect.signature(formula).parameters}
    with pytest.raises(PlainError, match=f"{argument} must be (greater than zero|zero or more), but got") as refused:
        formula(**values | {argument: Q(-1.0, formula.units[argument])})
    return re.search("greater than zero|zero or more", str(refused.value))[0].capitalize()


@pytest.mark.parametrize("name", sorted(FORMULAS))
def test_help_says_what_the_decorator_does(name):
    formula = FORMULAS[name]
    above, sections = sections_of(inspect.getdoc(formula))
    assert re.match(r"[A-Z][^\n]+\.\n", above), "one sentence on a line of its own"
    assert list(sections) == ["Parameters", "Returns", "Raises", "Notes", "Examples"]
    documented, parameters = entries_of(sections["Parameters"]), inspect.signature(formula).parameters
    assert list(documented) == [f"{argument} : Quantity [{formula.units[argument]}]" for argument in parameters]
    for said, (argument, parameter) in zip(documented.values(), parameters.items(), strict=True):
        ends = [f"{bound_of(formula, argument)}."]
        if parameter.default is not parameter.empty:
            ends.append(f"{parameter.default:g} {formula.units[argument]}".strip() + " if left out.")
        assert said.endswith(" ".join(ends)), f"{argument}: bound and default"
    ((returned, what),) = entries_of(sections["Returns"]).items()
    assert returned == f"Quantity [{formula.units['returns']}]"
    assert re.search(r"One value\.$|Scalar, or array of the common shape of the arguments\.$", what)
    raised = entries_of(sections["Raises"])
    assert list(raised) == ["UnitError", "PlainError"]
    assert [each.refuses for each in formula.conditions if f"If {each.refuses}." not in raised["PlainError"]] == []
    assert "Source: " in sections["Notes"]
    *_, module, short = name.split(".")
    if module != "two_minute_count":
        assert sections["Notes"].startswith("    "), "the notes begin with the law"
    assert sections["Examples"].startswith(f">>> from liftcalc import Q, {short}, show\n>>> show({short}(")
    assert sections["Examples"].count(">>>") == 2, "an example is one call"


@pytest.mark.parametrize("name", sorted(FORMULAS))
def test_a_short_docstring_keeps_its_form(name):
    plain = FORMULAS[name].plain
    short, code = inspect.getdoc(plain), inspect.getsource(plain)
    begun = re.findall(r"^(\w+): (.)", short, flags=re.MULTILINE)
    assert [each for each, first in begun if each not in ("returns", "Source") and not first.islower()] == []
    if "raise PlainError" in code:
        assert re.search(r"^raises: if ", short, flags=re.MULTILINE), "it says what the formula itself refuses"
    assert re.findall(r":math:|\\|\bfrac|tfrac|[^\x00-\x7f°²³]", short) == [], "laws in plain characters"
    assert "scalar" not in short, "the decorator says so"


def test_formula_files_stay_short():
    lines = [line for path in (PACKAGE / "formulas").glob("*.py") for line in path.read_text("utf-8").splitlines()]
    most = 2000 + 25 * (len(FORMULAS) - 86)
    assert len(lines) <= most, (
        f"formulas hold {len(lines)} lines; {len(FORMULAS)} of them may hold {most}: say it shorter"
    )
    assert max(map(len, lines)) <= 120


def test_every_formula_can_be_had_from_the_package():
    for name, formula in FORMULAS.items():
        short = name.rsplit(".", 1)[1]
        assert getattr(liftcalc, short) is formula
        assert short in liftcalc.__all__


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_modules_and_formulas_stay_small(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    docstrings = 0
    for node in ast.walk(tree):
        if isinstance(node, (ast.FunctionDef, ast.ClassDef, ast.Module)):
            assert ast.get_docstring(node) or isinstance(node, ast.FunctionDef), f"{path.name}: {node}"
            first = node.body[0] if node.body else None
            if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant):
                docstrings += first.end_lineno - first.lineno + 1
    most = 405 if path.parent.name == "bank" or path.stem == "vocabulary" else 310  # lists, read entry by entry
    code_lines = len(path.read_text(encoding="utf-8").splitlines()) - docstrings
    assert code_lines <= most, f"{path.name} holds {code_lines} lines beside its docstrings"


def test_public_functions_and_classes_have_docstrings():
    for path in MODULES:
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_"):
                assert ast.get_docstring(node), f"{path.name}: {node.name}"


def test_records_are_never_written_into():
    """What a function returned stays as it was: a record that could be changed would change for all who hold it."""
    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            for made in getattr(node, "decorator_list", []):
                if ast.unparse(made).startswith("dataclass"):
                    assert "frozen=True" in ast.unparse(made), f"{path.name}: {node.name}"


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_an_error_for_the_reader_is_one_line_in_a_notebook(path):
    """A bare ValueError shows the reader the way through the code; ``PlainError`` shows its message alone."""
    raised = [ast.unparse(node.exc) for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
              if isinstance(node, ast.Raise) and node.exc is not None]  # fmt: skip
    assert [call for call in raised if call.startswith("ValueError")] == []
