"""The strict check of a notebook, and after its last cell a sweep: every control of every panel moves in the kernel.

Errors in callbacks do not stop a notebook: the widget library shows them and goes on. Here they are caught and counted.
"""

import json

import pytest
from nbval.plugin import IPyNbFile

SWEEP = r"""
import json, re, sys
import ipywidgets
from ipywidgets.widgets import widget as widget_module
from liftcalc.figures.chart import Chart
from liftcalc.panels import control_row, notebook_state
from liftcalc.panels.base import Panel

control_row.ECHO = 0.0  # here is no page that echoes

errors, moves, said, label = [], 0, set(), ""
shell = get_ipython()
shell.showtraceback = lambda *arguments, **options: errors.append((label, repr(sys.exc_info()[1])))
# nobody listens here: what goes to a page is written out, and sent nowhere
widget_module.Widget._send = lambda widget, message, buffers=None: shell.kernel.session.pack(message)
drawn, whole = {}, Chart.background
def background(chart):  # with the same units and on the same axes the still part is the same
    axes = chart.ax
    key = chart, state.system, axes.get_xlim(), axes.get_ylim(), axes.get_xlabel(), axes.get_ylabel()
    if key not in drawn:
        drawn[key] = whole(chart)
    return drawn[key]
Chart.background = background
state = notebook_state()
widgets = list(widget_module._instances.values())
panels = [w for w in widgets if isinstance(w, Panel)]

begin = [panel.describe() for panel in panels]
shown = {}  # what panels have shown since the last move

def listen(panel):
    say = panel.picture.say
    def heard(words):
        shown[panel] = words
        say(words)
    panel.picture.say = heard

for panel in panels:
    listen(panel)

def look(panel, results):
    words = panel.describe()
    if re.search(r"\bnan\b|\binf\b|no number|None|e[+-]\d\d", words + results):
        errors.append((label, words))
    said.add((panel.name, words))

def move(widget, trait, value):
    global label, moves
    name = getattr(widget, "description", "") or type(widget).__name__
    label, moves = f"{name}: {trait} = {value!r}", moves + 1
    shown.clear()
    try:
        setattr(widget, trait, value)
        state.settle()
        for panel, results in shown.items():
            look(panel, results)
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

for panel in panels:
    look(panel, panel.status())

found = {"moves": moves, "panels": len(panels), "said": len(said), "begin": begin, "errors": errors[:20]}
print("SWEEP", json.dumps(found))
"""


def run_in(client, code, seconds=600):
    """Run code in the kernel of a client, and return what it prints."""
    said = []

    def hear(message):
        if message["msg_type"] == "stream":
            said.append(message["content"]["text"])

    reply = client.execute_interactive(code, store_history=False, allow_stdin=False, timeout=seconds, output_hook=hear)[
        "content"
    ]
    if reply["status"] != "ok":
        pytest.fail(f"{reply['ename']}: {reply['evalue']}", pytrace=False)
    return "".join(said)


def sweep(client):
    """Drive the controls of all panels in the kernel of a client, and return what the sweep found."""
    text = run_in(client, f"exec({SWEEP!r}, {{'get_ipython': get_ipython}})")  # the names of the notebook stay its own
    return json.JSONDecoder().raw_decode(text.split("SWEEP ", 1)[1])[0]


class SweptNotebook(IPyNbFile):
    """A notebook whose cells are run and compared, and whose controls are then moved before its kernel ends."""

    def collect(self):
        self.cells = list(super().collect())
        yield from self.cells
        yield EveryControlMoves.from_parent(self, name="every control moves")


class EveryControlMoves(pytest.Item):
    """Moves every control through its range without an error, also one that a callback swallows."""

    def runtest(self):
        assert self.parent.kernel.is_alive(), "the kernel ended with the cells of the notebook"
        client = self.parent.kernel.kc
        for cell in self.parent.cells:
            if cell.test_outputs is None:  # not run yet: only some cells were chosen
                run_in(client, cell.cell.source)
        found = sweep(client)
        assert found["errors"] == []
        outputs = [output for cell in self.parent.nb.cells for output in cell.get("outputs", [])]
        stored = [output.get("data", {}).get("text/plain", "") for output in outputs]
        # a panel behind a prediction prints under its question
        assert [words for words in found["begin"] if not any(text.endswith(words) for text in stored)] == [], (
            "a later panel moved the sliders of another"
        )
        assert found["panels"] >= 1
        assert found["moves"] >= 40 * found["panels"] / 2
        assert found["said"] >= 10 * found["panels"], "the words follow the controls"

    def repr_failure(self, excinfo):
        excinfo.traceback = excinfo.traceback.cut(path=__file__)
        return super().repr_failure(excinfo, style="short")

    def reportinfo(self):
        return self.path, None, f"{self.path.name}: {self.name}"
