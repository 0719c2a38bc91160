"""Drawings for a room: few shapes, thick lines, no word under 22 px on a stage of 960 x 720, as SVG by our own code."""

from dataclasses import dataclass
from html import escape

from liftcalc.figures import style

WIDTH = 896  # px on the stage
WORD, LARGE = 24, 30  # px: words in a drawing, and those that matter most
METRE, NEARER = 25.0, 1.4  # px of the running rope, and how much nearer than other drawings it is seen
HATS = ("persons", "spacing", "time")  # colours by turns: one sees who has moved on
POST = 330.0  # px of the running rope from its left edge to the counting post


@dataclass(frozen=True)
class Bar:
    """One bar: its name, how long it is, what is written behind it, its colour and whether it is the one that counts.

    Parameters
    ----------
    name : str
        What stands before the bar.
    length : float
        In the unit of the axis.
    text : str
        What stands behind it.
    colour : str
        A name of ``style.COLOURS``.
    bold : bool
        Whether it is the one that counts: filled, its words bold.
    """

    name: str
    length: float
    text: str
    colour: str
    bold: bool = False


def _svg(height, label, inside, name=""):
    """Return one SVG of the width of the stage, with its words for those who do not see it."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="stage-drawing {name}" viewBox="0 0 {WIDTH} {height}" '
        f'width="{WIDTH}" height="{height}" role="img" aria-label="{escape(label)}" '
        f'style="display:block;max-width:100%;height:auto;font-family:{style.FONT},Verdana,sans-serif">{inside}</svg>'
    )


def _text(x, y, words, *, size=WORD, colour=style.INK, anchor="start", bold=False):
    """Return a line of words."""
    weight = ' font-weight="bold"' if bold else ""
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}" fill="{colour}"{weight}>'
        f"{escape(words)}</text>"
    )


def draw_bars(bars, *, most, left=230, row=54, mark=None):
    """Return bars from one axis, each with its words.

    Parameters
    ----------
    bars : list of Bar
        From top to bottom.
    most : float
        Where the axis ends.
    left : int
        Room for the names [px].
    row : int
        Height of a row [px].
    mark : (float, str) or None
        Where an upright dashed line stands, and the words at its foot.

    Returns
    -------
    str
        One ``<svg>`` element.
    """
    scale, bottom = (WIDTH - left - 150) / most, row * len(bars)
    drawn = []
    for number, bar in enumerate(bars):
        y, colour = row * number, style.COLOURS[bar.colour]
        length = scale * min(bar.length, most)
        look = f'fill="{colour}"' if bar.bold else f'fill="{colour}" fill-opacity="0.3" stroke="{colour}"'
        drawn.append(f'<rect x="{left}" y="{y + 8}" width="{length:.1f}" height="{row - 16}" {look} stroke-width="2"/>')
        size, middle = (LARGE, y + row / 2 + 10) if bar.bold else (WORD, y + row / 2 + 8)
        drawn.append(_text(left - 14, middle, bar.name, anchor="end", size=size, bold=bar.bold))
        drawn.append(_text(left + length + 12, middle, bar.text, size=size, bold=bar.bold))
    height = bottom + (40 if mark else 4)
    if mark:
        x = left + scale * mark[0]
        drawn.insert(0, _text(x, bottom + 30, mark[1], anchor="middle"))
        drawn.append(
            f'<path d="M{x:.1f} 0V{bottom + 6}" stroke="{style.INK}" stroke-width="4" stroke-dasharray="10 7"/>'
        )
    drawn.insert(0, f'<path d="M{left} 0V{bottom}" stroke="{style.QUIET_INK}" stroke-width="2"/>')
    label = ", ".join(f"{bar.name} {bar.text}" for bar in bars) + (f"; dashed: {mark[1]}" if mark else "")
    return _svg(height, label, "".join(drawn))


def _rider(x, hat="persons", turn=0):
    """Return one rider on skis, holding the rope, 45 px high."""
    ink, colour = style.INK, style.COLOURS[hat]
    return (
        f'<g transform="translate({x:.1f} 0) rotate({turn})"><path d="M-22 -2H20q5 0 6 -5" fill="none" stroke="{ink}" '
        'stroke-width="3.5" stroke-linecap="round"/>'
        f'<path d="M-3 -4L-1 -17L-5 -31" fill="none" stroke="{colour}" stroke-width="7" stroke-linecap="round" '
        'stroke-linejoin="round"/>'
        f'<circle cx="-4" cy="-41" r="6.5" fill="{colour}"/>'
        f'<path d="M-4 -28L9 -22" stroke="{colour}" stroke-width="5" stroke-linecap="round"/></g>'
    )


def _slope(angle, x, y, scale=1.0):
    """Return the beginning of a group in which the slope lies level, and its snow and rope."""
    return (
        f'<g transform="translate({x} {y}) rotate({-angle}) scale({scale})">'
        f'<path d="M-200 0H1300V900H-200Z" fill="{style.SNOW}"/>'
        f'<path d="M-200 0H1300" stroke="{style.SNOW_EDGE}" stroke-width="3"/>'
        f'<path d="M-200 -22H1300" stroke="{style.INK}" stroke-width="4"/>'
    )


def draw_running_rope(*, spacing, headway, angle=9.0, height=480):
    """Return a piece of the line with every place taken, drawn to scale, that runs at true speed past a post.

    It holds no number. What moves it is the style of the talk: elsewhere it stands.

    Parameters
    ----------
    spacing : float
        From rider to rider [m].
    headway : float
        From one at the post to the next [s].
    angle : float
        Of the slope [degrees].
    height : int
        Of the drawing [px].

    Returns
    -------
    str
        One ``<svg>`` element.
    """
    step = spacing * METRE
    places = [POST + step * number for number in range(-9, 8)]
    riders = "".join(_rider(x, HATS[number % len(HATS)]) for number, x in enumerate(places))
    post = (
        f'<path d="M{POST} 0V-120" stroke="{style.COLOURS["time"]}" stroke-width="6"/>'
        f'<path d="M{POST} -120h54l-14 16l14 16h-54Z" fill="{style.COLOURS["time"]}"/>'
    )
    way = f"--way:{len(HATS) * step:.1f}px;--step:{step:.1f}px;--time:{len(HATS) * headway:.3f}s"
    run = f'<g class="riders" style="{way}">{riders}</g>'
    inside = f"{_slope(angle, 0, height - 60, NEARER)}{post}{run}</g>"
    return _svg(height, "Riders on the rope, one after another, pass a flag", inside, "running-rope")


def draw_opening(height=350):
    """Return the picture that stands while the room fills: a hill, a rope and riders, and nothing to read."""
    riders = "".join(_rider(150 + 170 * number, HATS[number % len(HATS)]) for number in range(4))
    hills = (
        f'<path d="M0 {height - 60}L220 120L360 {height - 150}L560 40L896 {height - 130}V{height}H0Z" '
        f'fill="{style.SNOW}" stroke="{style.SNOW_EDGE}" stroke-width="2"/>'
    )
    house = (
        f'<path d="M-26 -2V-60L10 -86L46 -60V-2Z" fill="{style.PAPER}" stroke="{style.INK}" stroke-width="4"/>'
        f'<path d="M-38 -52L10 -88L58 -52" fill="none" stroke="{style.INK}" stroke-width="5"/>'
    )
    inside = f'{hills}{_slope(9, 0, height - 30)}<g transform="translate(820 0)">{house}</g>{riders}</g>'
    return _svg(height, "A hill with a rope tow and riders on it", inside)


def draw_inside(*, spacing, distance, inside, words, height=280):
    """Return a fall and the riders behind it, those inside the stopping distance in another colour.

    Parameters
    ----------
    spacing, distance : float
        From rider to rider, and that of the stop [m].
    inside : int
        How many are inside, with the one who fell.
    words : str
        What stands at the arrow of the distance.
    height : int
        Of the drawing [px].
    """
    metre, fall = 34.0, 790.0
    reach, warm = metre * distance, style.COLOURS["spacing"]
    behind = []
    for number in range(1, 20):
        x = fall - metre * spacing * number
        if x < -30:
            break
        near = number < inside
        behind.append(_rider(x, "spacing" if near else "length"))
    arrow = (
        f'<path d="M{fall - reach:.1f} 22H{fall}" stroke="{warm}" stroke-width="5"/>'
        f'<path d="M{fall - reach:.1f} 10v24M{fall} 10v24" stroke="{warm}" stroke-width="5"/>'
    )
    band = f'<path d="M{fall - reach:.1f} 0H{fall}V-62H{fall - reach:.1f}Z" fill="{warm}" fill-opacity="0.15"/>'
    fallen = (
        f'<g transform="translate({fall} 0)"><path d="M-30 -6L2 -8L24 -5" stroke="{style.INK}" stroke-width="9" '
        f'stroke-linecap="round" fill="none"/><circle cx="34" cy="-9" r="8" fill="{style.INK}"/></g>'
    )
    ground = f"{_slope(5, 0, height - 66)}{band}{''.join(behind)}{fallen}{arrow}"
    said = _text(fall - reach / 2, 58, words, anchor="middle", colour=warm, bold=True)
    return _svg(height, f"Whoever falls, and those behind: {inside} inside {words}", f"{ground}{said}</g>")
