"""The code keeps one style, and the project speaks of itself alone."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("arguments", [["check"], ["format", "--check"]], ids=["lint", "format"])
def test_ruff(arguments):
    run = subprocess.run(
        [sys.executable, "-m", "ruff", *arguments, "liftcalc", "tests", "data", ".ci", "conftest.py"],
        cwd=ROOT, capture_output=True, text=True, timeout=60,
    )  # fmt: skip
    assert run.returncode == 0, run.stdout


def project_files():
    """Return the text files that belong to the project."""
    folders = ["liftcalc", "tests", "notebooks", "data", ".ci"]
    files = [path for folder in folders for path in (ROOT / folder).rglob("*") if path.is_file()]
    names = ("README.md", "DEVELOPERS.md", "pyproject.toml", "environment.yml", "conftest.py")
    files += [ROOT / name for name in names]
    return [p for p in files if p.suffix not in (".pyc", ".png") and ".ipynb_checkpoints" not in p.parts]


def test_no_address_outside_and_no_path_of_a_machine():
    allowed = (  # this computer, a name that nobody may have, and the names of open formats
        "http://127.0.0.1",
        "http://www.w3.org/2000/svg",
        "http://www.w3.org/2001/XMLSchema-instance",
        "http://www.topografix.com/GPX/1/1",
        "http://www.opengis.net/kml/2.2",
    )
    for path in project_files():
        text = path.read_text(encoding="utf-8")
        if path.name == "test_style.py":
            continue
        addresses = [found for found in re.findall(r"https?://[\w./-]+", text) if not found.startswith(allowed)]
        assert addresses == [], f"{path}: {addresses}"
        assert not re.search(r"(?<![\w.])/(?:root|home|Users|tmp)/\w", text), path


def test_figures_of_common_practice_stay_in_the_tests():
    """Numbers that the trade repeats without a source check the package, and stand nowhere else."""
    figures = re.compile(r"\b10,?560\b|\b8,?297\b|\b11 mph|\b14 mph|\b7 ft\b|\b7 feet", flags=re.IGNORECASE)
    for path in project_files():
        if "tests" in path.parts or path.suffix == ".csv":
            continue
        found = figures.search(re.sub(r"data:image[^\"]*", "", path.read_text(encoding="utf-8")))
        assert not found, f"{path.name}: {found}"


def test_no_load_is_said_to_run_furthest_without_its_brake():
    """Which one does depends on the brake: said without it, the sentence is false on the unsafe side."""
    said = 0
    for path in (*(ROOT / "notebooks/sources").glob("*.py"), ROOT / "liftcalc/formulas/stopping.py"):
        for sentence in re.split(r"[.!?;]\s|\n(?:# *)?\n|\n# - ", path.read_text(encoding="utf-8")):
            if re.search(r"empty\W+rope\W+runs\s+furth", sentence):
                said += 1
                assert re.search(r"brake|slows by less", sentence), f"{path.name}: {sentence}"
    assert said


def test_top_level_holds_what_it_should():
    run = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, timeout=60)
    if run.returncode:
        pytest.skip("no git checkout")
    tops = {name.partition("/")[0] for name in run.stdout.split()}
    assert tops == {
        "README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "environment.yml", ".gitignore", ".gitattributes",
        ".ci", "liftcalc", "notebooks", "tests", "data", "conftest.py",
    }  # fmt: skip
