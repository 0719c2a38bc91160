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
    was : float or None
        How long it was before: a dashed frame.
    """

    name: str
    length: float
    text: str
    colour: str
    bold: bool = False
    was: float | None = None


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
    drawn = _bar_rows(bars, scale, most, left, row)
    height = bottom + (40 if mark else 4)
    if mark:
        x = left + scale * mark[0]
        drawn.insert(0, _text(x, bottom + 30, mark[1], anchor="middle"))
        drawn.append(
            f'<path d="M{x:.1f} 0V{bottom + 6}" stroke="{style.INK}" stroke-width="4" stroke-dasharray="10 7"/>'
        )
    drawn.insert(0, f'<path d="M{left} 0V{bottom}" stroke="{style.QUIET_INK}" stroke-width="2"/>')
    return _svg(height, _in_words(bars) + (f"; dashed: {mark[1]}" if mark else ""), "".join(drawn))


def _in_words(bars):
    """Return what bars say, for those who do not see them."""
    return ", ".join(f"{bar.name} {bar.text}" for bar in bars)


def _bar_rows(bars, scale, most, left, row):
    """Return bars one below another, each with its words; ``scale`` is in px, none is longer than ``most``."""
    drawn = []
    for number, bar in enumerate(bars):
        y, colour = row * number, style.COLOURS[bar.colour]
        length = scale * min(bar.length, most)
        look = f'fill="{colour}"' if bar.bold else f'fill="{colour}" fill-opacity="0.3" stroke="{colour}"'
        drawn.append(f'<rect x="{left}" y="{y + 8}" width="{length:.1f}" height="{row - 16}" {look} stroke-width="2"/>')
        end = length
        if bar.was is not None:
            before = scale * min(bar.was, most)
            end = max(length, before)
            drawn.append(
                f'<rect x="{left}" y="{y + 8}" width="{before:.1f}" height="{row - 16}" fill="none" '
                f'stroke="{style.INK}" stroke-width="3" stroke-dasharray="7 6"/>'
            )
        size, middle = (LARGE, y + row / 2 + 10) if bar.bold else (WORD, y + row / 2 + 8)
        drawn.append(_text(left - 14, middle, bar.name, anchor="end", size=size, bold=bar.bold))
        drawn.append(_text(left + end + 12, middle, bar.text, size=size, bold=bar.bold))
    return drawn


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


def draw_inside(*, spacing, distance, inside, words, bars=(), most=1.0, height=200, row=42):
    """Return a fall and the riders behind it, those inside the stopping distance in another colour; below it bars.

    Parameters
    ----------
    spacing, distance : float
        From rider to rider, and that of the stop [m].
    inside : int
        How many are inside, with the one who fell.
    words : str
        What stands at the arrow of the distance.
    bars : sequence of Bar
        What else changes with the spacing.
    most : float
        Where the axis of the bars ends.
    height, row : int
        Of the slope, and of a row of bars [px].
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
    left = 250
    rows = "".join(_bar_rows(bars, (WIDTH - left - 260) / most, most, left, row))
    below = row * len(bars)
    paper = f'<rect y="{height}" width="{WIDTH}" height="{below}" fill="{style.PAPER}"/>'
    drawn = f'{ground}{said}</g>{paper}<g transform="translate(0 {height + 2})">{rows}</g>'
    label = "; ".join(filter(None, (f"Whoever falls, and those behind: {inside} inside {words}", _in_words(bars))))
    return _svg(height + below, label, drawn)


READINGS = (300, 150)  # px: a drawing beside a reading


def _reading(label, inside):
    """Return a small drawing of how something is read."""
    wide, high = READINGS
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" width="{wide}" height="{high}" '
        f'role="img" aria-label="{escape(label)}" style="display:block">{inside}</svg>'
    )


def _measured(x, end, y, colour):
    """Return a thick line with a stroke at either end: what is measured."""
    return (
        f'<path d="M{x} {y}H{end}M{x} {y - 10}v20M{end} {y - 10}v20" stroke="{colour}" stroke-width="5" fill="none"/>'
    )


def draw_two_poles():
    """Return a mark on the rope that passes two poles."""
    ink, warm = style.INK, style.COLOURS["line speed"]
    poles = "".join(f'<path d="M{x} 138V28" stroke="{ink}" stroke-width="8"/>' for x in (50, 250))
    mark = f'<rect x="118" y="53" width="26" height="22" fill="{warm}"/>'
    arrow = f'<path d="M156 44h44m-14 -12l14 12l-14 12" stroke="{warm}" stroke-width="5" fill="none"/>'
    snow = f'<rect y="138" width="300" height="12" fill="{style.SNOW_EDGE}"/>'
    rope = f'<path d="M0 64H300" stroke="{ink}" stroke-width="5"/>'
    span = _measured(54, 246, 112, warm)
    return _reading("A mark on the rope runs from one pole to another", f"{snow}{rope}{poles}{mark}{arrow}{span}")


def draw_photo():
    """Return a photo from the side: riders, and the gaps between them."""
    ink, warm = style.INK, style.COLOURS["spacing"]
    corners = (
        f'<rect x="4" y="4" width="292" height="142" rx="8" fill="{style.PAPER}" stroke="{ink}" stroke-width="5"/>'
    )
    snow = f'<rect x="7" y="98" width="286" height="45" fill="{style.SNOW}"/>'
    rope = f'<path d="M7 76H293" stroke="{ink}" stroke-width="3"/>'
    places = (48, 144, 240)
    riders = f'<g transform="translate(0 98)">{"".join(_rider(x) for x in places)}</g>'
    gaps = "".join(_measured(x + 6, end - 6, 122, warm) for x, end in zip(places, places[1:], strict=False))
    return _reading("A photo from the side, with the gaps from rider to rider", f"{corners}{snow}{rope}{riders}{gaps}")


def draw_watch():
    """Return a watch on which a few seconds have run."""
    ink, green = style.INK, style.COLOURS["time"]
    ticks = "".join(
        f'<path d="M0 -46V-{36 if turn % 90 else 30}" transform="rotate({turn})" stroke="{ink}" stroke-width="4"/>'
        for turn in range(0, 360, 30)
    )
    run = f'<path d="M0 0V-46A46 46 0 0 1 46 0Z" fill="{green}" fill-opacity="0.35"/>'
    watch = (
        f'<g transform="translate(150 86)"><rect x="-8" y="-82" width="16" height="24" fill="{ink}"/>'
        f'<circle r="56" fill="{style.PAPER}" stroke="{ink}" stroke-width="7"/>{run}{ticks}'
        f'<path d="M0 0H40" stroke="{green}" stroke-width="7" stroke-linecap="round"/><circle r="6" fill="{ink}"/></g>'
    )
    return _reading("A stopwatch", watch)


def draw_rider_to_rider(*, spacing, between, speed, height=320):
    """Return three riders on the rope, how far they are apart, and how fast the rope runs, in words.

    Parameters
    ----------
    spacing, between, speed : str
        What stands at the gap from rider to rider, at the rider who passes, and at the rope.
    height : int
        Of the drawing [px].
    """
    warm, green, blue = (style.COLOURS[name] for name in ("spacing", "time", "line speed"))
    places = (110, 360, 610)
    riders = "".join(_rider(x, HATS[number % len(HATS)]) for number, x in enumerate(places))
    gap = _measured(places[0] + 4, places[1] - 4, 30, warm) + _measured(places[1] + 4, places[2] - 4, 30, green)
    arrow = f'<path d="M655 -64h110m-22 -18l22 18l-22 18" stroke="{blue}" stroke-width="6" fill="none"/>'
    words = "".join(
        _text(x, y, said, size=LARGE, colour=colour, anchor="middle", bold=True)
        for x, y, said, colour in (
            ((places[0] + places[1]) / 2, 74, spacing, warm), ((places[1] + places[2]) / 2, 74, between, green),
            (710, -96, speed, blue),
        )
    )  # fmt: skip
    slope = f"{_slope(5, 0, height - 110, 1.1)}{gap}{riders}{arrow}{words}</g>"
    return _svg(height, f"From rider to rider {spacing}, {between}; the rope runs at {speed}", slope, "instead")
