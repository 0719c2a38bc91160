"""environment.yml asks for what pyproject.toml asks for; the list of tested versions fits both and holds no address."""

import re
import tomllib
from pathlib import Path

import yaml
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
CONDA_NAMES = {"matplotlib": "matplotlib-base"}  # where conda-forge names a package otherwise


def asked():
    """Return name and bound of every direct dependency."""
    project = PROJECT["project"]
    lists = [project["dependencies"], *project["optional-dependencies"].values()]
    requirements = [Requirement(text) for group in lists for text in group]
    return {canonicalize_name(requirement.name): str(requirement.specifier) for requirement in requirements}


def environment():
    """Return the conda environment as data."""
    return yaml.safe_load((ROOT / "environment.yml").read_text(encoding="utf-8"))


def test_same_packages_and_bounds():
    entries = [entry for entry in environment()["dependencies"] if isinstance(entry, str)]
    have = dict(re.fullmatch(r"([A-Za-z0-9_.-]+)\s*(.*)", entry).groups() for entry in entries)
    assert have.pop("python") == PROJECT["project"]["requires-python"]
    assert have.pop("pip") == ""
    assert have == {CONDA_NAMES.get(name, name): bound for name, bound in asked().items()}


def test_one_channel_and_the_package_itself():
    assert environment()["channels"] == ["conda-forge"]
    (by_pip,) = [entry for entry in environment()["dependencies"] if isinstance(entry, dict)]
    assert by_pip == {"pip": ["-e ."]}


def test_every_direct_dependency_has_a_lower_bound_and_a_tested_version_above_it():
    lines = (ROOT / ".ci/tested-versions.txt").read_text(encoding="utf-8").splitlines()
    lines = [line for line in lines if line and not line.startswith("#")]
    assert not any("://" in line or " @ " in line for line in lines)
    tested = {canonicalize_name(line.split("==")[0]): line.split("==")[1].partition(" ")[0] for line in lines}
    for name, bound in asked().items():
        assert re.fullmatch(r">=[0-9.]+", bound), f"{name} {bound}"
        assert Requirement(f"{name}{bound}").specifier.contains(tested[name]), name


def test_uv_needs_no_flags():
    extras = set(PROJECT["project"]["optional-dependencies"])
    assert PROJECT["dependency-groups"]["dev"] == [f"liftcalc[{','.join(sorted(extras))}]"]
    assert "uv.lock" in (ROOT / ".gitignore").read_text(encoding="utf-8").split()


def test_versions_agree():
    import liftcalc

    assert liftcalc.__version__ == PROJECT["project"]["version"]
