"""Colours, sizes and the look of an axes: the only place where a colour is written down."""

# one colour for one quantity through the whole series; of those that meet on one chart, any two differ by 10 or more in
# CIEDE2000, also for people who lack one kind of cone: tests/panels/test_figures.py measures it
COLOURS = {
    "line speed": "#0063a3",
    "spacing": "#b84a00",
    "time": "#00704f",
    "capacity": "#7a1f5c",
    "persons": "#4b3cc4",
    "length": "#6b6b6b",
    "power": "#5f7090",
    "force": "#504018",
    "money": "#8f5f00",
    "station": "#0f0f0f",  # nearly black: everybody tells it from the rest
}
INK = "#1a1a1a"
QUIET_INK = "#555555"
PAPER = "#ffffff"
GRID = "#d9d9d9"
SNOW = "#e9f0f5"
SNOW_EDGE = "#9fb4c4"
SOFT = {name: f"{colour}33" for name, colour in COLOURS.items()}

# where the reader's device asks for less motion, what would run goes on in steps, and the button that starts it says so
IN_STEPS = "in-steps"  # class of that button
SAYS_SO = f".{IN_STEPS}::after{{content:' in steps'}}"

WIDTH, HEIGHT = 7.4, 3.4  # inches, at 100 pixels an inch on the page
DOTS_PER_INCH = 140  # drawn finer than shown, for a projector
LINE_WIDTH = 2.6
TEXT_SIZE = 11
TITLE_SIZE = 12.5
FONT = "DejaVu Sans"


def dress(ax, *, x_label, y_label):
    """Give an axes the look of the series: labels with units, light grid, no box."""
    ax.set_xlabel(x_label, fontsize=TEXT_SIZE, color=INK)
    ax.set_ylabel(y_label, fontsize=TEXT_SIZE, color=INK)
    ax.tick_params(labelsize=TEXT_SIZE - 1, colors=INK, length=0)
    ax.grid(True, color=GRID, linewidth=0.8)
    ax.set_axisbelow(True)
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    for side in ("left", "bottom"):
        ax.spines[side].set_color(QUIET_INK)
    return ax


def thousands(value, _position=None):
    """Write a tick of a capacity axis with a thousands mark."""
    return f"{value:,.0f}"
