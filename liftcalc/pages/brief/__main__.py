"""One page to pin to the wall, from the sheet of a lift.

python -m liftcalc.pages.brief my_lift.csv --to brief.html
python -m liftcalc.pages.brief my_lift.csv --count count.csv --track ride.gpx --to brief.pdf --paper Letter

Planning figures only, no design. The page is one sheet of paper; a PDF is printed by a Chromium of this computer.
"""

import argparse
import os
import sys
from pathlib import Path

from liftcalc.fieldwork import read_track, read_track_speed
from liftcalc.fieldwork.minute_counts import read_counts
from liftcalc.lifts.sheet import read_sheet
from liftcalc.pages.brief.brief import make_brief
from liftcalc.pages.brief.pdf import PAPERS, write_pdf
from liftcalc.units import PlainError

ENDINGS = (".html", ".pdf")


def _parser():
    parser = argparse.ArgumentParser(
        prog="python -m liftcalc.pages.brief", description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("sheet", help="sheet of one lift line, as CSV")
    parser.add_argument("--count", metavar="FILE", help="count minute by minute, as CSV; else that of the sheet")
    parser.add_argument("--track", metavar="FILE", help="track of a ride: its speed stands beside that of the sheet")
    parser.add_argument("--compare", metavar="SHEET", help="sheet of another line, to stand beside this one")
    parser.add_argument("--to", required=True, metavar="FILE", help="file to write: its name ends in .html or .pdf")
    parser.add_argument("--paper", choices=tuple(PAPERS), default="A4", help="paper of a PDF; A4 if left out")
    parser.add_argument("--replace", action="store_true", help="write the file anew where there is one")
    return parser


def _brief(chosen):
    """Return the brief of the files that were named."""
    sheet = read_sheet(chosen.sheet)
    track = None
    if chosen.track:
        rise = sheet.mean("vertical_rise") if sheet.has("vertical_rise") else None
        track = read_track_speed(read_track(chosen.track), vertical_rise=rise)
    return make_brief(
        sheet,
        count=read_counts(chosen.count) if chosen.count else None,
        track=track,
        compare=read_sheet(chosen.compare) if chosen.compare else None,
    )


def _check_target(target, again):
    """Refuse a target of another ending, one in no folder, and one that is there unless it may be replaced."""
    if target.suffix.lower() not in ENDINGS:
        raise PlainError(f"{target.name}: the brief is written as {' or '.join(ENDINGS)}. Write --to brief.html.")
    if target.is_dir():
        raise PlainError(f"{target.name}: this is a folder. Write the name of a file in it.")
    if not target.parent.is_dir():
        raise PlainError(f"{target}: there is no such folder. Make it first, or write another.")
    if os.path.lexists(target) and not again:
        raise PlainError(f"{target.name} is there already, and stays as it is. Write another name, or add --replace.")


def main(arguments=None):
    """Do what the arguments say; return 0, or 2 with a message where they cannot be met."""
    chosen = _parser().parse_args(arguments)
    target = Path(chosen.to)
    try:
        _check_target(target, chosen.replace)
        brief = _brief(chosen)
        if target.suffix.lower() == ".pdf":
            write_pdf(brief.html(), target, chosen.paper)
        else:
            target.write_text(brief.html(), encoding="utf-8")
    except (OSError, ValueError) as error:
        print(f"{error}", file=sys.stderr)
        return 2
    print(f"{brief}\nWritten: {target}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
