"""The self-check finds faults, names the line that mends each, and ends with the right status."""

import json
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from liftcalc import self_check
from liftcalc.self_check import NEEDED, Finding, check_packages, check_python, check_widget_page_part, report


def test_the_command_ends_well_here():
    run = subprocess.run([sys.executable, "-m", "liftcalc"], capture_output=True, text=True, timeout=120)
    assert run.returncode == 0, run.stdout + run.stderr
    assert "Verdict: all is well." in run.stdout
    assert "1,200 pph" in run.stdout
    assert "1,800 pph (ideal) after a slider moved" in run.stdout
    assert run.stderr == ""


def test_the_command_ends_with_one_where_a_package_is_missing(tmp_path):
    hide = (
        "import sys; sys.modules['ipywidgets'] = None; import runpy; runpy.run_module('liftcalc', run_name='__main__')"
    )
    run = subprocess.run([sys.executable, "-c", hide], capture_output=True, text=True, timeout=120)
    assert run.returncode == 1
    assert "To mend:" in run.stdout
    assert "pip install --upgrade ipywidgets" in run.stdout


def test_an_old_python_is_a_fault():
    assert "install Python 3.11 or later" in check_python((3, 10, 4)).mend
    assert check_python((3, 11, 0)).mend == ""


def test_a_missing_package_names_its_line():
    found = {finding.what: finding for finding in check_packages(lambda name: None if name == "pandas" else "9.9")}
    assert found["pandas"].mend.endswith("pip install pandas")
    assert found["pint"].mend == ""


@pytest.fixture
def page_part(tmp_path):
    folder = tmp_path / "share/jupyter/labextensions/@jupyter-widgets/jupyterlab-manager"
    folder.mkdir(parents=True)
    (folder / "package.json").write_text(json.dumps({"version": "5.0.1"}))
    return tmp_path


def test_a_page_part_that_fits(page_part):
    versions = {"ipywidgets": "8.1.9", "jupyterlab_widgets": self_check.installed("jupyterlab_widgets")}
    assert check_widget_page_part(page_part, versions.get).mend == ""


@pytest.mark.parametrize("page", ["1.1.1", "2.9.9", "4.0.0"])
def test_a_page_part_of_another_series(page_part, page):
    finding = check_widget_page_part(page_part, {"ipywidgets": "8.1.9", "jupyterlab_widgets": page}.get)
    assert f"but {page} is here" in finding.seen
    assert "pip install --upgrade --force-reinstall ipywidgets jupyterlab_widgets" in finding.mend


def test_a_page_part_without_files(tmp_path):
    finding = check_widget_page_part(tmp_path)
    assert "the page part is missing" in finding.seen
    assert finding.mend


def test_the_report_gives_each_mending_line_once():
    text = report([Finding("a", "x", "type this"), Finding("b", "y", "type this"), Finding("c", "z")])
    assert text.count("type this") == 1
    assert text.endswith("Verdict: 2 of 3 things need mending.")


def test_every_dependency_is_looked_at():
    project = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    names = {re.match(r"[A-Za-z0-9_-]+", line)[0] for line in project["dependencies"]}
    assert names <= set(NEEDED)
