"""The self-check behind ``python -m liftcalc``: what this Python sees, and what to type where something is amiss."""

import importlib.metadata
import json
import re
import sys
from dataclasses import dataclass
from pathlib import Path

NEEDED = (
    *("pint", "numpy", "scipy", "matplotlib", "pandas", "filelock", "gpxpy", "geographiclib", "defusedxml"),
    *("jupyterlab", "ipywidgets", "jupyterlab_widgets", "ipykernel"),
)
INSTALL = f'"{sys.executable}" -m pip install'


@dataclass(frozen=True)
class Finding:
    """One thing looked at: what was seen, and the line that mends it; no line where all is well."""

    what: str
    seen: str
    mend: str = ""


def installed(name):
    """Return the version of an installed package as this Python sees it, or None."""
    try:
        return importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return None


def check_python(version=sys.version_info):
    """Check that this Python is new enough."""
    seen = ".".join(map(str, version[:3]))
    mend = "" if tuple(version[:2]) >= (3, 11) else "install Python 3.11 or later, then set up the series again"
    return Finding("Python", f"{seen} at {sys.executable}", mend)


def check_packages(version_of=installed):
    """Check that every package of the series is installed for this Python."""
    versions = {name: version_of(name) for name in NEEDED}
    return [
        Finding(name, version or "not installed", "" if version else f"{INSTALL} {name}")
        for name, version in versions.items()
    ]


def check_widget_page_part(prefix=sys.prefix, version_of=installed):
    """Check that the page part of the widgets is there, and of the version that the kernel part asks for."""
    what = "sliders in the page"
    mend = f"{INSTALL} --upgrade --force-reinstall ipywidgets jupyterlab_widgets"
    kernel, page = version_of("ipywidgets"), version_of("jupyterlab_widgets")
    if not kernel or not page:
        return Finding(what, "one of their two parts is not installed", mend)
    folder = Path(prefix, "share", "jupyter", "labextensions", "@jupyter-widgets", "jupyterlab-manager")
    try:
        found = json.loads((folder / "package.json").read_text(encoding="utf-8"))["version"]
    except (OSError, ValueError, KeyError):
        return Finding(what, f"the page part is missing from {folder}", mend)
    asked = _asked_of_page_part()
    if asked is not None and not _agrees(page, asked):
        return Finding(what, f"ipywidgets {kernel} asks for jupyterlab_widgets {asked}, but {page} is here", mend)
    return Finding(what, f"kernel part {kernel}, page part {page} (its files say {found})")


def _asked_of_page_part():
    """Return the version of the page part that ipywidgets asks for, such as "~=3.0.15"; None if it does not say."""
    for requirement in importlib.metadata.requires("ipywidgets") or []:
        name, rest = re.match(r"([A-Za-z0-9_.-]+)\s*(.*)", requirement).groups()
        if name.replace("-", "_") == "jupyterlab_widgets":
            return rest.strip("() ").partition(";")[0].strip()
    return None


def _agrees(version, asked):
    """Return whether a version is what "~=a.b.c" or ">=a.b.c" asks for; other forms are taken to agree."""
    match = re.fullmatch(r"(~=|>=)\s*([0-9.]+)", asked)
    if not match:
        return True
    have = [int(part) for part in re.findall(r"[0-9]+", version)[:3]]
    want = [int(part) for part in match[2].split(".")]
    same_series = match[1] == ">=" or have[: len(want) - 1] == want[:-1]
    return same_series and have >= want


def check_computation():
    """Compute one real capacity: 2 persons every 6 seconds are 1,200 people an hour."""
    try:
        from liftcalc import Q, hourly_capacity_from_interval, show

        seen = show(hourly_capacity_from_interval(Q(6, "s"), Q(2, "person")))
    except Exception as error:  # whatever it is, the reader is told
        return Finding("one computation", f"{type(error).__name__}: {error}", f"{INSTALL} --force-reinstall -e .")
    right = seen == "1,200 pph"
    return Finding("one computation", seen, "" if right else f"{INSTALL} --upgrade pint")


def check_panel():
    """Make one panel and move its slider."""
    mend = f"{INSTALL} --upgrade ipywidgets matplotlib"
    try:
        from liftcalc import Q
        from liftcalc.panels import CapacityPanel

        panel = CapacityPanel(line_speed=Q(2, "m/s"), spacing=Q(6, "m"), name="self-check")
        panel.rows[0].slider.value = 3.0
        seen = str(panel.result)
        panel.close()
    except Exception as error:  # whatever it is, the reader is told
        return Finding("one panel", f"{type(error).__name__}: {error}", mend)
    return Finding("one panel", f"{seen} after a slider moved", "" if seen == "1,800 pph (ideal)" else mend)


def findings():
    """Return everything that was looked at."""
    return [check_python(), *check_packages(), check_widget_page_part(), check_computation(), check_panel()]


def report(found):
    """Return the report as text: a line a finding, the lines that mend, and a verdict."""
    width = max(len(finding.what) for finding in found)
    lines = [f"{'fault' if f.mend else 'well '}  {f.what.ljust(width)}  {f.seen}" for f in found]
    faults = [finding for finding in found if finding.mend]
    if faults:
        lines += ["", "To mend:", *dict.fromkeys(f"  {finding.mend}" for finding in faults)]
        lines += ["", f"Verdict: {len(faults)} of {len(found)} things need mending."]
    else:
        lines += ["", "Verdict: all is well. Open the first page: jupyter lab notebooks/00_start_here.ipynb"]
    return "\n".join(lines)
