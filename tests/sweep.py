"""Run a notebook, then move every control of every panel in the live kernel, and collect what went wrong.

Errors in callbacks do not stop a notebook: the widget library shows them and goes on. Here they are caught and counted.
"""

import json
from pathlib import Path

import nbformat
from nbclient import NotebookClient

SWEEP = r"""
import json, re, sys
import ipywidgets
from ipywidgets.widgets import widget as widget_module
from liftcalc.panels import control_row, notebook_state
from liftcalc.panels.base import Panel

control_row.ECHO = 0.0  # here is no page that echoes

errors, moves, said, label = [], 0, set(), ""
shell = get_ipython()
shell.showtraceback = lambda *arguments, **options: errors.append((label, repr(sys.exc_info()[1])))
state = notebook_state()
widgets = list(widget_module._instances.values())
panels = [w for w in widgets if isinstance(w, Panel)]

begin = [panel.describe() for panel in panels]

def look(panel):
    words = panel.describe()
    if re.search(r"\bnan\b|\binf\b|no number|None|e[+-]\d\d", words + panel.status()):
        errors.append((label, words))
    said.add((panel.name, words))

def move(widget, trait, value):
    global label, moves
    name = getattr(widget, "description", "") or type(widget).__name__
    label, moves = f"{name}: {trait} = {value!r}", moves + 1
    try:
        setattr(widget, trait, value)
        state.settle()
        for panel in panels:
            look(panel)
    except Exception as error:
        errors.append((label, repr(error)))

def ends_and_steps(low, high, step):
    count = max(1, round((high - low) / step))
    stride = max(1, count // 12)
    return [low, *[low + number * step for number in range(stride, count, stride)], high]

for widget in widgets:
    if isinstance(widget, ipywidgets.Button):
        label, moves = f"{widget.description}: click", moves + 1
        widget.click()
    elif isinstance(widget, ipywidgets.ToggleButton):
        move(widget, "value", not widget.value)
        move(widget, "value", not widget.value)
    elif isinstance(widget, (ipywidgets.FloatRangeSlider, ipywidgets.IntRangeSlider)):
        start = widget.value
        for value in [(widget.min, widget.max), (widget.min, widget.min), (widget.max, widget.max), start]:
            move(widget, "value", value)
    elif isinstance(widget, (ipywidgets.FloatSlider, ipywidgets.IntSlider)):
        start = widget.value
        for value in [*ends_and_steps(widget.min, widget.max, widget.step), start]:
            move(widget, "value", value)
    elif isinstance(widget, (ipywidgets.FloatText, ipywidgets.IntText)):
        start = widget.value
        for value in [0, -1, 1e9, float("nan"), float("inf"), start]:
            move(widget, "value", value)
    elif isinstance(widget, (ipywidgets.Text, ipywidgets.Textarea)):
        start = widget.value
        for value in ["", "3,4", "<b>x</b>", "9**9**9", start]:
            move(widget, "value", value)
    elif hasattr(widget, "options") and hasattr(widget, "index") and not isinstance(widget.index, tuple):
        start = widget.index
        for index in [*range(len(widget.options)), start]:
            move(widget, "index", index)

for system in ("us", "metric"):  # the ends of every slider again in the other units
    state.use_units(system)
    for panel in panels:
        for row in panel.rows:
            start = row.slider.value
            for value in (row.slider.min, row.slider.max, start):
                move(row.slider, "value", value)

found = {"moves": moves, "panels": len(panels), "said": len(said), "begin": begin, "errors": errors[:20]}
print("SWEEP", json.dumps(found))
"""


def sweep(path, before=""):
    """Run the notebook at a path with one more cell in front, drive its controls, and return what the sweep found."""
    path = Path(path)
    notebook = nbformat.read(path, 4)
    if before:
        notebook.cells.insert(0, nbformat.v4.new_code_cell(before))
    notebook.cells.append(nbformat.v4.new_code_cell(SWEEP))
    folder = {"metadata": {"path": str(path.parent)}}
    NotebookClient(notebook, timeout=60, kernel_name="python3", resources=folder, store_widget_state=False).execute()
    text = "".join(output.get("text", "") for output in notebook.cells[-1].outputs)
    return json.JSONDecoder().raw_decode(text.split("SWEEP ", 1)[1])[0]
