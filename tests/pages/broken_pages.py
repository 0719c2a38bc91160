"""Pages on which things go wrong, as notebooks: a part fails, hangs or ends its kernel; a move cannot be worked out."""

import nbformat

KERNEL = {"name": "python3", "display_name": "Python 3", "language": "python"}
SLIDERS = """import time
import ipywidgets
from IPython.display import display
from liftcalc.errors import PlainError

def plain(change):
    raise PlainError("headway: speed must be greater than zero, but got 0.0 m/s.")

def foreign(change):
    return {}["<i>no such line</i>"]

def slow(change):
    time.sleep(60)

for about, hears in (("Plain", plain), ("Foreign", foreign), ("Slow", slow)):
    button = ipywidgets.ToggleButton(description=about)
    button.observe(hears, "value")
    display(button)
"""
TROUBLED = (
    "from liftcalc import Q, headway\nrope_gap = headway(3.4, Q(6.8, 'm'))",
    "print('first use', rope_gap)",
    "later = rope_gap + 1",
    "print('second use', later)",
    "riders = 12",
    "riders = [12][7]",
    "print('older value', riders)",
    "{}['<b>no such row</b>']",
    "import time\ntime.sleep(60)",
    SLIDERS,
    "print('The page went on to its end.')",
)
STUBBORN = """import time
while True:
    try:
        time.sleep(60)
    except KeyboardInterrupt:
        pass"""
PAGES = {
    "troubled": TROUBLED,
    "stubborn": ("print('Before.')", STUBBORN, "print('Never.')"),
    "dying": ("print('Before.')", "import os\nos._exit(1)", "print('Never.')"),
}


def write_broken_pages(folder):
    """Write all of them into a folder."""
    for name, sources in PAGES.items():
        cells = [nbformat.v4.new_markdown_cell(f"# A {name} page"), *map(nbformat.v4.new_code_cell, sources)]
        page = nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": KERNEL})
        nbformat.write(page, folder / f"{name}.ipynb")
