"""The line view: rope, slope and riders at true spacing, moving at true speed, as SVG written by our own code.

It draws a fixed piece of the line to one scale, so that a spacing in feet is a length to be seen, and a headway is a
length on a ruler of tenths of a second.
"""

from dataclasses import dataclass
from html import escape

from liftcalc.figures import style

WINDOW = 36.0  # metres of slope shown
SCALE = 20.0  # pixels a metre, along the slope
WIDTH, HEIGHT = 740, 330
FOOT = (14, 300)  # where the slope leaves the left edge of the picture
POST = 13.0  # metres up the slope where the counting post stands
SECOND = 44.0  # pixels a second on the headway ruler
RULER_SECONDS = 6
RULER = (24, 62)

# Stands in the page once, apart from the drawings: a style that came with each of them would make the browser look
# through the whole page again at every step of a slider.
STYLE = (
    "<style>"
    "@keyframes line-view-climb{from{transform:translateX(0)}to{transform:translateX(var(--step))}}"
    "@keyframes line-view-tick{from{transform:translateX(0)}to{transform:translateX(var(--reach))}}"
    ".line-view .riders{animation:line-view-climb var(--headway) linear var(--delay) infinite var(--rope)}"
    ".line-view .hand{animation:line-view-tick var(--headway) linear var(--delay) infinite var(--rope)}"
    "@media (prefers-reduced-motion: reduce){"
    f".line-view .riders,.line-view .hand{{animation-timing-function:steps(4)}}{style.SAYS_SO}}}"
    "</style>"
)


@dataclass(frozen=True)
class LineScene:
    """What the picture shows; all lengths in metres, time in seconds."""

    spacing: float
    headway: float
    angle: float  # degrees
    spacing_text: str
    headway_text: str
    speed_text: str
    grade_text: str
    each: str = "rider"  # what is drawn as a rider: on a lift with carriers, one carrier


def draw_line_view(scene, *, phase=0.0, running=False, still=False):
    """Return the SVG of a scene.

    Parameters
    ----------
    scene : LineScene
        What to show.
    phase : float
        Where the riders stand, as a share of one spacing, zero when a rider is at the post.
    running : bool
        Whether the rope runs.
    still : bool
        True for a picture without any movement in it.

    Returns
    -------
    str
        One ``<svg>`` element, which moves where ``STYLE`` stands in the page; drawn again with the right phase, its
        riders do not jump.
    """
    step = scene.spacing * SCALE
    first = (POST % scene.spacing) - 2 * scene.spacing
    places = [first + number * scene.spacing for number in range(int(WINDOW / scene.spacing) + 5)]
    riders = "".join(_rider(place * SCALE, scene.angle) for place in places)
    label = (
        f"Piece of the line, {WINDOW:.0f} m long: {scene.each}s {scene.spacing_text} apart on {scene.grade_text}, "
        f"one past the post every {scene.headway_text}, rope at {scene.speed_text}"
    )
    xmlns = 'xmlns="http://www.w3.org/2000/svg"'
    shift = f"translate({phase * step:.2f} 0)"
    movement = "" if still else _movement(step, scene.headway, phase, running)
    rope = 'stroke-linecap="round" stroke-width="3"'
    ruler_mark, ruler = _headway_ruler(scene, phase, still)
    return (
        f'<svg {xmlns} class="line-view" viewBox="0 0 {WIDTH} {HEIGHT}" width="{WIDTH}" height="{HEIGHT}" role="img" '
        f'aria-label="{escape(label)}" '
        f'style="max-width:100%;height:auto;font-family:{style.FONT},sans-serif;{movement}">'
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="{style.PAPER}"/>'
        f'<g transform="translate({FOOT[0]} {FOOT[1]}) rotate({-scene.angle:.3f})">'
        f'<path d="M-200 0H1100V600H-200Z" fill="{style.SNOW}"/>'
        f'<path d="M-200 0H1100" stroke="{style.SNOW_EDGE}" stroke-width="2"/>'
        f'<path d="M-200 -17H1100" stroke="{style.INK}" {rope}/>'
        f"{_post()}"
        f'<g class="riders"{"" if not still else f" transform={chr(34)}{shift}{chr(34)}"}>{riders}</g>'
        f"{_spacing_mark(scene, step)}"
        f"</g>"
        f"{ruler}{ruler_mark}"
        f'<text x="{WIDTH - 12}" y="{HEIGHT - 12}" text-anchor="end" font-size="13" fill="{style.QUIET_INK}">'
        f"{escape(scene.grade_text)}, rope at {escape(scene.speed_text)}, drawn to scale</text>"
        "</svg>"
    )


def _movement(step, headway, phase, running):
    """Return what the movement of one scene needs, as variables of ``STYLE``; a negative delay carries the phase on."""
    return (
        f"--step:{step:.2f}px;--reach:{headway * SECOND:.2f}px;--headway:{headway:.4f}s;"
        f"--delay:{-phase * headway:.4f}s;--rope:{'running' if running else 'paused'}"
    )


def _rider(x, angle):
    """Return one rider on skis, to scale, holding the rope; upright against the slope."""
    ink, soft = style.COLOURS["persons"], style.PAPER
    return (
        f'<g transform="translate({x:.2f} 0)">'
        f'<path d="M-17 -2H15q4 0 5 -4" fill="none" stroke="{style.INK}" stroke-width="2.5" stroke-linecap="round"/>'
        f'<g transform="rotate({angle / 2:.2f})">'
        f'<path d="M-2 -3L-1 -13L-4 -24" fill="none" stroke="{ink}" stroke-width="5" stroke-linecap="round" '
        'stroke-linejoin="round"/>'
        f'<circle cx="-3" cy="-31" r="4.5" fill="{ink}" stroke="{soft}"/></g>'
        f'<path d="M-3 -22L7 -17" stroke="{ink}" stroke-width="3.5" stroke-linecap="round"/>'
        "</g>"
    )


def _post():
    """Return the counting post."""
    x = POST * SCALE
    return (
        f'<path d="M{x:.1f} 0V-52" stroke="{style.COLOURS["time"]}" stroke-width="3"/>'
        f'<path d="M{x:.1f} -52h26l-6 7l6 7h-26Z" fill="{style.COLOURS["time"]}"/>'
    )


def _spacing_mark(scene, step):
    """Return the length from the post to the place one spacing below it, with its label."""
    colour, end = style.COLOURS["spacing"], POST * SCALE
    begin = end - step
    visible = max(begin, 0)
    tip = f"M{begin:.1f} 10v16M{begin:.1f} 18" if begin >= 0 else f"M{visible:.1f} 18"
    return (
        f'<path d="{tip}H{end:.1f}M{end:.1f} 10v16" stroke="{colour}" stroke-width="3" fill="none"/>'
        f'<text x="{end + 8:.1f}" y="24" font-size="17" font-weight="bold" fill="{colour}">'
        f"{escape(scene.spacing_text)} from {scene.each} to {scene.each}</text>"
    )


def _headway_ruler(scene, phase, still):
    """Return the moving hand, and the ruler of tenths of a second with the headway on it."""
    x, y = RULER
    colour = style.COLOURS["time"]
    ticks = "".join(
        f"M{x + tenth * SECOND / 10:.1f} {y}v{14 if tenth % 10 == 0 else 9 if tenth % 5 == 0 else 5}"
        for tenth in range(RULER_SECONDS * 10 + 1)
    )
    numbers = "".join(
        f'<text x="{x + second * SECOND:.1f}" y="{y + 29}" text-anchor="middle" font-size="12" '
        f'fill="{style.QUIET_INK}">{second}{" s" if second == RULER_SECONDS else ""}</text>'
        for second in range(RULER_SECONDS + 1)
    )
    reach = min(scene.headway, RULER_SECONDS) * SECOND
    arrow = (
        f'<path d="M{x + reach:.1f} {y - 12}l14 6l-14 6Z" fill="{colour}"/>' if scene.headway > RULER_SECONDS else ""
    )
    ruler = (
        f'<text x="{x}" y="{y - 24}" font-size="17" font-weight="bold" fill="{colour}">'
        f"one past the post every {escape(scene.headway_text)}</text>"
        f'<rect x="{x}" y="{y - 12}" width="{reach:.1f}" height="12" fill="{colour}" fill-opacity="0.25"/>{arrow}'
        f'<path d="M{x} {y}h{RULER_SECONDS * SECOND:.1f}{ticks}" stroke="{style.INK}" stroke-width="1" fill="none"/>'
        f"{numbers}"
    )
    at = min(phase * scene.headway, RULER_SECONDS) * SECOND if still else 0.0
    width = RULER_SECONDS * SECOND + 4  # a hand that has run past the end of the ruler is not seen
    hand = (
        f'<svg x="{x - 2}" y="{y - 16}" width="{width:.1f}" height="20" viewBox="-2 -16 {width:.1f} 20">'
        f'<g class="hand"><path d="M{at:.1f} -14v16" stroke="{colour}" stroke-width="4" stroke-linecap="round"/></g>'
        "</svg>"
    )
    return hand, ruler
