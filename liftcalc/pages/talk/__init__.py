"""The talk: 25 minutes in front of a room, from the notebook 14.

    python -m liftcalc.pages.talk                      starts it in the app view
    python -m liftcalc.pages.talk --notes notes.html   writes the printed sheet for the speaker
    python -m liftcalc.pages.talk --to talk.html       writes the talk as one file that needs no Python and no network

It asks nothing of the network.
"""

import argparse
from pathlib import Path

from liftcalc.pages import app_view
from liftcalc.pages.talk.notes import notes_html
from liftcalc.pages.talk.reading import TALK, read_scenes


def main(arguments=None):
    """Start the talk and stay until it is stopped with Ctrl+C, or write what was asked for."""
    parser = argparse.ArgumentParser(prog="python -m liftcalc.pages.talk", description=__doc__.splitlines()[0])
    parser.add_argument("--notes", metavar="FILE", help="write the sheet for the speaker, a page to print, and end")
    parser.add_argument("--to", metavar="FILE", help="write the talk as one file for a stick, and end")
    parser.add_argument("--overwrite", action="store_true", help="write over a file that is there")
    parser.add_argument("--port", type=int, default=8866, help="port of the talk on this computer (8866)")
    parser.add_argument("--no-browser", action="store_true", help="only print the address")
    chosen = parser.parse_args(arguments)
    if not TALK.is_file():
        parser.error(f"no notebook at {TALK}: run this from a clone of the project, installed with 'pip install -e .'")
    if chosen.notes:
        _write(parser, Path(chosen.notes), lambda: notes_html(read_scenes(TALK)), chosen.overwrite)
    if chosen.to:
        _write(parser, Path(chosen.to), _on_a_stick, chosen.overwrite)
    if not chosen.notes and not chosen.to:
        app_view.main(
            [f"--port={chosen.port}", f"--page={TALK.name}", *(["--no-browser"] if chosen.no_browser else [])]
        )


def _on_a_stick():
    """Return the talk as one page; what computes its panels is loaded for it alone."""
    from liftcalc.pages.talk.stick import stick_html

    return stick_html(TALK)


def _write(parser, path, make, overwrite):
    """Write a file and say its size; refuse to write over one unless told to."""
    if path.exists() and not overwrite:
        parser.error(f"{path} is there already. Add --overwrite, or name another file.")
    text = make()
    try:
        path.write_text(text, encoding="utf-8")
    except OSError as refused:
        parser.error(f"{path} cannot be written: {refused.strerror}.")
    print(f"Written: {path}, {len(text.encode()) / 1000:,.0f} kB")
