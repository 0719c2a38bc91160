"""The printable blank of the field sheet: one page, cautions first, boxes for repeats, the same rows as the CSV."""

import base64
import csv
import io
import re
import sys
from html import escape
from pathlib import Path

from liftcalc.cautions import DEFER, NEAR_THE_ROPE
from liftcalc.fieldwork import COLUMNS, FIELD_QUANTITIES

REPEATS = 3  # boxes a quantity on paper


def blank_sheet_csv():
    """Return the blank as CSV text: a heading and one empty row a quantity, ready for a spreadsheet."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    for quantity, (_, unit, _, _) in FIELD_QUANTITIES.items():
        writer.writerow([quantity, "", unit, "", "", ""])
    return text.getvalue()


def _bold(text):
    """Return a text with the marks of bold words turned into tags."""
    return re.sub(r"\*\*(.+?)\*\*", r"<strong>\1</strong>", text)


def blank_sheet_html():
    """Return the blank as one printable HTML page, with no outside file."""
    cautions = "".join(f"<li>{_bold(escape(caution))}</li>" for caution in NEAR_THE_ROPE)
    boxes = '<td class="box"></td>' * REPEATS
    rows = "".join(
        f'<tr><th scope="row">{escape(quantity)}<small>{escape(how)}</small></th>{boxes}'
        f'<td class="units">{escape(units)}</td><td class="box"></td><td class="wide"></td></tr>'
        for quantity, (_, _, units, how) in FIELD_QUANTITIES.items()
        if units  # what is assumed at the desk needs no box on the hill: the page has no room for a guess
    )
    readings = "".join(f'<th scope="col">reading {number}</th>' for number in range(1, REPEATS + 1))
    return f"""<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>Field sheet for one lift line</title>
<style>
@page {{ size: auto; margin: 10mm 12mm; }}
body {{ font: 10pt/1.25 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 186mm; }}
h1 {{ font-size: 14pt; margin: 0 0 1.5mm; }}
ul {{ margin: 1mm 0; padding-left: 5mm; font-size: 9pt; line-height: 1.2; columns: 2; column-gap: 7mm; }}
li {{ break-inside: avoid; margin-bottom: 0.5mm; }}
.cautions {{ border: 2px solid #000; padding: 1.5mm 3mm; margin-bottom: 2mm; }}
.cautions p, .foot {{ margin: 1mm 0 0; font-size: 9pt; }}
.blanks {{ margin: 2mm 0; }}
.blanks span {{ display: inline-block; border-bottom: 1px solid #000; min-width: 42mm; }}
table {{ border-collapse: collapse; width: 100%; }}
th, td {{ border: 1px solid #444; padding: 0.6mm 1.5mm; text-align: left; font-weight: normal; font-size: 10pt; }}
thead th {{ font-weight: bold; background: #eee; font-size: 9pt; }}
tbody th {{ font-weight: bold; width: 60mm; }}
tbody th small {{ display: block; font-weight: normal; font-size: 8pt; line-height: 1.15; }}
.box {{ width: 16mm; height: 9mm; }} .units {{ width: 16mm; font-size: 9pt; }} .wide {{ width: 30mm; }}
</style></head><body>
<h1>Field sheet for one lift line</h1>
<div class="cautions"><strong>Before you measure</strong><ul>{cautions}</ul><p>{escape(DEFER)}</p></div>
<p class="blanks">Lift <span></span> Date <span></span> Taken by <span></span></p>
<table><thead><tr><th scope="col">quantity</th>{readings}<th scope="col">unit: ring one</th>
<th scope="col">plus or minus</th><th scope="col">method, note</th></tr></thead><tbody>{rows}</tbody></table>
<p class="foot">Back at the desk: one row of the CSV for each filled box, with its own unit. Leave out what you did not
measure. With one person per carrier, line speed and spacing are enough for people an hour.</p>
</body></html>
"""


class BlankSheetLinks:
    """Two links that save the blanks; they hold the files themselves, so that they work in every view."""

    files = (
        ("field_sheet_blank.html", "text/html", blank_sheet_html, "the printed blank, one page, cautions first"),
        ("field_sheet_blank.csv", "text/csv", blank_sheet_csv, "the blank for a spreadsheet program"),
    )

    def __repr__(self):
        return "\n".join(f"{name}: {what}; also in the folder data" for name, _, _, what in self.files)

    def _repr_html_(self):
        links = "".join(
            f'<li><a download="{name}" href="data:{kind};base64,{base64.b64encode(make().encode()).decode()}">'
            f"Save {name}</a>: {what}; also in the folder <code>data</code></li>"
            for name, kind, make, what in self.files
        )
        return f"<ul>{links}</ul>"


def blank_sheet_links():
    """Return links to both blanks, for a notebook cell."""
    return BlankSheetLinks()


def main(folder):
    """Write both blanks into a folder."""
    Path(folder, "field_sheet_blank.csv").write_text(blank_sheet_csv(), encoding="utf-8")
    Path(folder, "field_sheet_blank.html").write_text(blank_sheet_html(), encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
