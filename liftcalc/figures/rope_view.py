"""The whole line with its riders, once as it is and once, dotted, as it would be; and who came by at the top.

All riders hang on one tape that moves as the rope does: two numbers make the whole movement, and drawing it again at
another time makes nobody jump.
"""

from dataclasses import dataclass
from html import escape

import numpy as np

from liftcalc.figures import style

WIDTH, HEIGHT = 740, 268
FOOT, LENGTH, ANGLE = (34, 148), 600, 7  # where the line begins [px], how long it is [px], and its slope [degrees]
STRIP, ROWS = (150, 700), (206, 234)  # ends of the strip of time, and the heights of its two rows [px]
FASTER, CLEARED = 4, 0.7  # times as fast as on the hill; part of a stop after which the track is clear

# stands in the page once, apart from the drawings
STYLE = (
    "<style>"
    "@keyframes rope-view-run{from{transform:translateX(0)}to{transform:translateX(var(--way))}}"
    "@keyframes rope-view-on{from{transform:translateX(var(--held))}to{transform:translateX(var(--end))}}"
    "@keyframes rope-view-hide{from{opacity:1}to{opacity:0}}"
    "@keyframes rope-view-show{from{opacity:0}to{opacity:1}}"
    ".rope-view *{animation-play-state:var(--rope)!important}"
    "@media (prefers-reduced-motion: reduce){"
    f".rope-view *{{animation-timing-function:steps(12)!important}}{style.SAYS_SO}}}"
    "</style>"
)


@dataclass(frozen=True)
class RopeScene:
    """What the picture shows: a line, the same without what was disturbed, and the words for both.

    Parameters
    ----------
    line, without : LineSeen
        As it is, and as it would be; the same where nothing was disturbed.
    name : str
        What was disturbed, such as "one missed grab"; empty for nothing.
    """

    line: object
    without: object
    name: str = ""

    @property
    def scale(self):
        """Pixels of the line for a second of its running."""
        return LENGTH / self.line.ride_time

    def across(self, time):
        """Return where a time stands on the strip [px]."""
        return STRIP[0] + (STRIP[1] - STRIP[0]) * time / self.line.seconds


def draw_rope_view(scene, *, time=0.0, running=False, still=False):
    """Return the SVG of a scene at one time.

    Parameters
    ----------
    scene : RopeScene
        What to show.
    time : float
        Seconds since the scene began.
    running : bool
        Whether it moves.
    still : bool
        True for a picture without any movement in it.

    Returns
    -------
    str
        One ``<svg>`` element, which moves where ``STYLE`` stands in the page.
    """
    colour, line = style.COLOURS["persons"], scene.line
    said = f"; dotted: without {scene.name}" if scene.name else ""
    label = (
        f"The line after {time:.0f} s: {_on(line, time)} riders on it, {line.counted(time)} counted at the top{said}"
    )
    full = f'<g fill="{colour}">{_tape(scene, line, time, still, 6.5)}</g>'
    ghost = said = ""
    if scene.name:
        dotted = f'fill="none" stroke="{style.INK}" stroke-width="1.2" stroke-dasharray="2 2"'
        ghost = f"<g {dotted}>{_tape(scene, scene.without, time, still, 9)}</g>"
        said = (
            f'<text x="{WIDTH - 12}" y="178" text-anchor="end" font-size="13" fill="{style.QUIET_INK}">'
            f"dotted: without {scene.name}</text>"
        )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="rope-view" viewBox="0 0 {WIDTH} {HEIGHT}" width="{WIDTH}" '
        f'height="{HEIGHT}" role="img" aria-label="{escape(label)}" style="max-width:100%;height:auto;'
        f'font-family:{style.FONT},sans-serif;--rope:{"running" if running else "paused"}">'
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="{style.PAPER}"/>'
        f'<g transform="translate({FOOT[0]} {FOOT[1]}) rotate({-ANGLE})">'
        f'<path d="M-60 12H760V46H-60Z" fill="{style.SNOW}"/>'
        f'<path d="M0 0H{LENGTH}" stroke="{style.INK}" stroke-width="2.5" stroke-linecap="round"/>'
        f'<svg x="-10" y="-30" width="{LENGTH + 10}" height="70" viewBox="-10 -30 {LENGTH + 10} 70">{full}{ghost}</svg>'
        f'<path d="M-30 -16H0V13H-30Z" fill="{style.PAPER}" stroke="{style.INK}" stroke-width="2"/>'
        f'<path d="M{LENGTH} 12V-40h30l-7 8l7 8h-30" stroke="{style.COLOURS["time"]}" stroke-width="3" '
        f'fill="{style.COLOURS["time"]}"/></g>'
        f"{said}{_beside(scene, time, still)}{_strip(scene, time, still)}</svg>"
    )


def _on(line, time):
    """Return how many are on a line at a time."""
    gone = np.where(line.dropped, line.stop[0], line.top)
    return int(np.count_nonzero((line.started <= time) & (gone > time)))


def _tape(scene, line, time, still, radius):
    """Return all riders of a line on their tape, moved to where they stand at a time."""
    at = -line.run(line.started) * scene.scale
    seen = (at > -line.seconds * scene.scale) & (at < LENGTH + radius)
    riders = [(x, gone) for x, gone in zip(at[seen], line.dropped[seen], strict=True)]
    stays = "".join(f'<circle cx="{x:.1f}" r="{radius}"/>' for x, gone in riders if not gone)
    goes = "".join(f'<circle cx="{x:.1f}" r="{radius}"/>' for x, gone in riders if gone)
    if still:
        shown = "" if time >= line.stop[0] else goes
        return f'<g transform="translate({line.run(time) * scene.scale:.1f} 0)">{stays}{shown}</g>'
    begin, end = line.stop
    first, held = min(begin, line.seconds), min(begin, line.seconds) * scene.scale
    moves = [f"rope-view-run {first / FASTER:.3f}s linear {-time / FASTER:.3f}s forwards"]
    if begin < np.inf:
        rest = line.seconds - end
        moves.append(f"rope-view-on {rest / FASTER:.3f}s linear {(end - time) / FASTER:.3f}s forwards")
        goes = f'<g style="animation:{_at("hide", begin - time)}">{goes}</g>'
    way = f"--way:{held:.1f}px;--held:{held:.1f}px;--end:{line.run(line.seconds) * scene.scale:.1f}px"
    return f'<g style="{way};animation:{",".join(moves)}">{stays}{goes}</g>'


def _at(what, seconds):
    """Return the movement that shows or hides something after so many seconds of the scene."""
    return f"rope-view-{what} 0.01s linear {seconds / FASTER:.3f}s both"


def _beside(scene, time, still):
    """Return those who have let go, beside the track while the lift stands, and the word for it."""
    line = scene.line
    begin, end = line.stop
    if begin == np.inf or (still and not begin <= time < end):
        return ""
    gone = begin + CLEARED * (end - begin)  # nobody restarts a lift with somebody in its track
    places = (begin - line.started[line.dropped]) * scene.scale
    ring = f'fill="{style.PAPER}" stroke="{style.COLOURS["persons"]}" stroke-width="2"'
    aside = "".join(f'<circle cx="{x:.1f}" cy="24" r="5.5" {ring}/>' for x in places)
    how = f"{places.size} let go, clear the track and load again" if places.size else "all stay on"
    words = f"the lift stands for {end - begin:.0f} s: {how}"
    beside = f'<g transform="translate({FOOT[0]} {FOOT[1]}) rotate({-ANGLE})">{aside}</g>'
    if still:
        beside = beside if time < gone else ""
    else:
        beside = f'<g style="animation:{_at("hide", gone - time)}">{beside}</g>'
    drawn = f'{beside}<text x="24" y="26" font-size="15" font-weight="bold" fill="{style.INK}">{words}</text>'
    if still:
        return drawn
    shown = f'<g style="animation:{_at("show", begin - time)}">{drawn}</g>'
    return f'<g style="animation:{_at("hide", end - time)}">{shown}</g>'


def _strip(scene, time, still):
    """Return the strip of time: a mark for each who came by at the top, as it would be and as it is."""
    rows = [("without it" if scene.name else "at the top", scene.without, style.QUIET_INK)]
    if scene.name:
        rows.append((f"with {scene.name}", scene.line, style.COLOURS["persons"]))
    left, right = STRIP
    drawn = "".join(_row(scene, *row, y) for row, y in zip(rows, ROWS, strict=False))
    cover = f'<path d="M{left + 1.5} 188h{WIDTH - left}v62h-{WIDTH - left}Z" fill="{style.PAPER}"/>'
    hand = f'<path d="M{left} 190V246" stroke="{style.COLOURS["time"]}" stroke-width="2.5"/>'
    if still:
        way = scene.across(min(time, scene.line.seconds)) - left
        moved = f'<g transform="translate({way:.1f} 0)">{cover}{hand}</g>'
    else:
        run = f"rope-view-run {scene.line.seconds / FASTER:.3f}s linear {-time / FASTER:.3f}s forwards"
        moved = f'<g style="--way:{right - left:.1f}px;animation:{run}">{cover}{hand}</g>'
    ticks = "".join(
        f'<text x="{scene.across(second):.1f}" y="262" text-anchor="middle" font-size="12" '
        f'fill="{style.QUIET_INK}">{second:g}{" s" if second == scene.line.seconds else ""}</text>'
        for second in np.arange(0, scene.line.seconds + 1, scene.line.seconds / 4)
    )
    names = "".join(
        f'<text x="{left - 10}" y="{y + 5}" text-anchor="end" font-size="13" fill="{colour}">{escape(name)}</text>'
        for (name, _, colour), y in zip(rows, ROWS, strict=False)
    )
    return f"{drawn}{moved}{names}{ticks}"


def _row(scene, _name, line, colour, y):
    """Return the marks of one row and, behind them, how many they are."""
    top = line.top
    marks = "".join(f"M{scene.across(each):.1f} {y - 8}v16" for each in top[(top > 0) & (top <= line.seconds)])
    number = (
        f'<text x="{STRIP[1] + 6}" y="{y + 6}" font-size="17" font-weight="bold" fill="{colour}">'
        f"{line.counted()}</text>"
    )
    return f'<path d="{marks}" stroke="{colour}" stroke-width="2.5"/>{number}'
