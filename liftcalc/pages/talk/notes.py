"""The sheet for the speaker: time, keys, and what is said in each scene; one sheet of A4 or Letter, both sides."""

from html import escape

KEYS = (
    ("Page Down, Page Up", "the next scene, the one before: always, and by the clicker"),
    ("space, arrows", "the same, unless a box, slider or button has the focus"),
    ("Tab, Esc", "into the boxes and buttons of the scene, and back to the scene; Enter: the next box"),
    ("number, Enter", "to that scene"),
    ("Home, End", "to scene 0, to scene 10"),
    ("b or .", "black, and back"),
    ("l", "lock the guesses; l once more shows the result"),
    ("u", "other units"),
    ("r", "slider and boxes as they were; in scene 0, the clock"),
    ("R", "opens a locked board with what was typed; once more, empties it"),
)

STYLE = """@page { size: auto; margin: 8mm 10mm; }
body { font: 9.5pt/1.18 Arial, Helvetica, "Liberation Sans", "DejaVu Sans Condensed", sans-serif; color: #000;
  background: #fff; max-width: 188mm; margin: 0 auto; font-size-adjust: 0.519; }
h1 { font-size: 15pt; margin: 0 0 1mm; } p { margin: 0 0 2mm; }
table { border-collapse: collapse; width: 100%; margin: 0 0 3mm; }
td, th { border: 0; border-top: 1px solid #000; padding: 0.6mm 1.5mm; text-align: left; vertical-align: top;
  font-weight: normal; } tr { break-inside: avoid; }
.number { width: 8mm; font-size: 15pt; font-weight: bold; } .time { width: 19mm; white-space: nowrap; }
.time b { font-size: 12pt; } small { font-size: 8pt; } span, i { font-size: 8.6pt; }
.keys { columns: 2; margin: 0 0 2mm; padding: 0; list-style: none; font-size: 9pt; } .keys li { break-inside: avoid; }
"""


def _clock(minutes):
    return f"{int(minutes)}:{round(60 * (minutes % 1)):02}"


def _row(scene, due):
    """Return the row of one scene: from when, until when, what is said, and the caution."""
    until = f"<b>{_clock(due)}</b>" if not scene.spare else "spare"
    said, *with_the_room = (escape(words) for words in scene.spoken.split("\n\n"))
    more = "".join(f"<br><span>{words}</span>" for words in with_the_room)
    return (
        f"<tr><th class='number' scope='row'>{scene.number}</th>"
        f"<td class='time'>{until}<br><small>{scene.minutes:g} min</small></td>"
        f"<td><b>{escape(scene.title)}</b><br>{said}{more}<br><i>{escape(scene.caution)}</i></td></tr>"
    )


def notes_html(scenes):
    """Return the sheet for the speaker as a page to print.

    Parameters
    ----------
    scenes : list of Scene
        As ``read_scenes`` returns them.

    Returns
    -------
    str
        One HTML page that needs nothing beside it.
    """
    due, rows = 0.0, []
    for scene in scenes:
        due += 0 if scene.spare else scene.minutes
        rows.append(_row(scene, due))
    keys = "".join(f"<li><b>{escape(key)}</b> {escape(does)}</li>" for key, does in KEYS)
    return (
        "<!DOCTYPE html><html lang='en'><head><meta charset='utf-8'><title>Notes for the talk</title>"
        f"<style>{STYLE}</style></head><body><h1>Notes for the talk: {_clock(due)} minutes</h1>"
        "<p>The time in bold is when a scene should end; the clock in the corner begins as scene 0 is left. "
        "Below what is said: what to do with the room. Slanted: the caution at its foot.</p>"
        f"<ul class='keys'>{keys}</ul><table>{''.join(rows)}</table></body></html>\n"
    )
