"""The blank of the sheet of one lift line: one printed page, cautions first, and the same rows as CSV.

What a row says of a quantity stands in ``liftcalc.vocabulary``. Here stands only what shares a row on paper, and which
facts stand where.
"""

import csv
import io
import re
import sys
from html import escape
from pathlib import Path

from liftcalc.cautions import DEFER, NEAR_THE_ROPE
from liftcalc.fieldwork import COLUMNS
from liftcalc.lifts.kinds import KINDS
from liftcalc.lifts.sheet import what_a_sheet_may_hold
from liftcalc.pages.save_links import SaveLinks
from liftcalc.quantity_text import unit_word
from liftcalc.tables import csv_text
from liftcalc.vocabulary import FACTS, ON_A_SHEET, VOCABULARY, WHO_IN_BRIEF

HEADING = ("lift", "line", "kind", "date", "taken_by", "snow", "people_waited")  # facts above the table
BESIDE = {"loading_time": "loading_timed_as"}  # a fact below the row of a reading
ASKED_FACTS = ("drive_position",)  # facts that only the operator knows
EITHER = (("spacing", "interval"),)  # one row on paper: one of the two is enough, and its unit tells which
BOTH = (("persons_counted", "counting_time"),)  # one row on paper: both stand in each box

STYLE = """@page { size: auto; margin: 7mm 10mm; }
body { font: 10pt/1.15 Arial, Helvetica, "Liberation Sans", "DejaVu Sans Condensed", sans-serif; color: #000;
  background: #fff; margin: 0 auto; max-width: 190mm; font-size-adjust: 0.519; }
h1 { font-size: 13pt; margin: 0 0 1mm; line-height: 1; }
.cautions { border: 2px solid #000; padding: 1mm 2mm; columns: 2; column-gap: 5mm; font-size: 9pt; line-height: 1.1; }
.cautions ul { margin: 0; padding-left: 3.5mm; }
.cautions li { break-inside: avoid; margin-bottom: 0.3mm; }
.cautions p { margin: 0.6mm 0 0; break-inside: avoid; }
.facts { display: flex; flex-wrap: wrap; margin: 0; }
.facts span { display: flex; align-items: flex-end; flex: 1 0 38mm; height: 8mm; margin-right: 3mm; }
u { text-decoration: none; border-bottom: 1px solid #000; }
.facts b { margin-right: 1.5mm; }
.facts u { flex: 1; height: 6mm; }
i { font-style: normal; margin-right: 2.4mm; white-space: nowrap; } i:last-child { margin-right: 0; }
.units i { font-size: 9.5pt; margin-right: 1.8mm; } .units i:last-child { margin-right: 0; }
table { border-collapse: collapse; width: 100%; margin-top: 1.5mm; table-layout: fixed; }
th, td { border: 1px solid #000; padding: 0.2mm 1mm; text-align: left; font-weight: normal; line-height: 1.05; }
th, td { box-sizing: border-box; } td { height: 8mm; }
thead th { font-weight: bold; font-size: 8pt; }
small, .who { display: block; font-weight: normal; font-size: 8pt; line-height: 1.05; }
td.who { display: table-cell; }
.box { border-width: 2px; }
.what { width: 56mm; } .by { width: 32mm; } .reading { width: 15mm; } .unit { width: 23.5mm; } .plus { width: 12.5mm; }
.both { padding: 0; } .both div { display: flex; height: 14mm; }
.both p { flex: 1; margin: 0; padding: 0 1mm; border-left: 2px solid #000; font-size: 8.5pt; line-height: 6.5mm; }
.both p:first-child { border: 0; } .both u { display: inline-block; width: 8mm; height: 4.5mm; margin-right: 0.7mm; }
.both p { white-space: nowrap; text-align: right; }
.ringed { font-size: 9pt; } .ringed i { margin: 0 2.5mm; }
.once { table-layout: auto; } .once .units { border-left: 0; font-size: 9pt; white-space: nowrap; width: 6mm; }
.once .box { width: 18mm; } .asked { table-layout: fixed; } .asked .units i { font-size: 9pt; }
.asked .box i { font-size: 9pt; margin-right: 2mm; } .asked .box i:last-child { margin: 0; }
.asked .name { width: 48mm; } .asked .one { width: 20mm; } .asked .ring { width: 15.5mm; }
.rest { font-size: 8pt; vertical-align: top; }
.foot { margin: 1mm 0 0; font-size: 8.5pt; }
"""
FOOT = """Back at the desk: one row of the CSV for each filled box, with its own unit. Leave out what was not
measured: a limit without its reading is left out by name. From outside: from outside the track and the unload area."""

_TAKEN = {name: VOCABULARY[name].taken for name in ON_A_SHEET[len(FACTS) :]}
ASKED = tuple(name for name, taken in _TAKEN.items() if taken.boxes == 1 and "asked" in taken.who)
SEEN = tuple(name for name, taken in _TAKEN.items() if taken.boxes == 1 and name not in ASKED)
MEASURED = tuple(name for name, taken in _TAKEN.items() if taken.boxes > 1)
ASSUMED = tuple(name for name, taken in _TAKEN.items() if "assumed" in taken.who)
OTHERS = tuple(name for name in _TAKEN if name not in (*ASKED, *SEEN, *MEASURED, *ASSUMED))  # papers, rules, rare ones


def _units(*names):
    """Return the units that are printed beside some quantities, each once."""
    return tuple(dict.fromkeys(unit for name in names for unit in _TAKEN[name].units.split("  ") if unit))


def blank_sheet_csv():
    """Return the blank as CSV text: facts, the rows of the paper in its order, and last what is filled in at the desk.

    Nobody has to know the words for what is assumed or stands in the papers: a row that stays empty is not read.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    for name in FACTS:
        writer.writerow([VOCABULARY[name].words, "", "", "", "", " or ".join(_choices(name))])
    for name in (*MEASURED, *SEEN, *ASKED, *ASSUMED, *OTHERS):
        unit = next(iter(_units(name)), "")
        writer.writerow([VOCABULARY[name].words, "", unit, "", "assumed" if name in ASSUMED else "", ""])
    return text.getvalue()


def _choices(name):
    """Return what a fact may be, each with what it means where that must be said; nothing where it may be any text."""
    word = VOCABULARY[name]
    among = tuple(KINDS) if name == "kind" else word.among
    return tuple(f"{each} ({said})" for each, said in zip(among, word.said, strict=True)) if word.said else among


def _bold(text):
    """Return a text with the marks of bold words turned into tags."""
    return re.sub(r"\*\*(.+?)\*\*", r"<strong>\1</strong>", text)


def _quantity(name):
    return f"<b>{escape(VOCABULARY[name].words)}</b>"


def _ring(choices):
    """Return words or units that stand far enough apart to ring one."""
    return "".join(f"<i>{escape(choice)}</i>" for choice in choices)


def _who(*names):
    """Return who may take some quantities, in brief, each once."""
    whos = dict.fromkeys(who for name in names for who in _TAKEN[name].who)
    return escape("; ".join(WHO_IN_BRIEF[who] for who in whos))


def _how(*names):
    return escape("; ".join(_TAKEN[name].how for name in names if _TAKEN[name].how))


def _measured_rows():
    """Return the rows of what is read several times, a box for each reading."""
    second, rows = dict((*EITHER, *BOTH)), []
    for name in MEASURED:
        if name in second.values():
            continue
        names = (name, second[name]) if name in second else (name,)
        between = " and " if names in BOTH else " or "
        boxes = _shared_boxes(names) if names in BOTH else '<td class="box"></td>' * _TAKEN[name].boxes
        rows.append(
            f'<tr><th scope="row">{between.join(map(_quantity, names))}<small>{_how(*names)}</small></th>'
            f'<td class="who">{_who(*names)}</td>{boxes}'
            + ("" if names in BOTH else f'<td class="units">{_ring(map(unit_word, _units(*names)))}</td>')
            + "<td></td><td></td></tr>"
        )
        if name in BESIDE:
            rows.append(_ringed_row(name))
    return "".join(rows)


def _shared_boxes(names):
    """Return boxes that hold two quantities each, such as persons in minutes; no unit is left to ring."""
    first, second = (escape(unit_word(_units(name)[0])) for name in names)
    boxes = f"<p><u></u>{first}<br>in <u></u>{second}</p>" * _TAKEN[names[0]].boxes
    return f'<td class="box both" colspan="{_TAKEN[names[0]].boxes + 1}"><div>{boxes}</div></td>'


def _ringed_row(name):
    """Return the row of the fact that belongs to a reading, as words to ring."""
    fact, columns = BESIDE[name], 5 + _TAKEN[name].boxes
    return f'<tr><td colspan="{columns}" class="ringed">{_quantity(fact)}, ring one: {_ring(_choices(fact))}</td></tr>'


def _once(name):
    """Return the cells of what is read once: its words with who may take it, one box, and units to ring."""
    if name in ASKED_FACTS:
        how, who, units = "ring one", escape(WHO_IN_BRIEF["asked"]), ()
        box = _ring(_choices(name))
    else:
        how, who, units, box = _how(name), _who(name), map(unit_word, _units(name)), ""
    small = "; ".join(filter(None, (how, who)))
    return (
        f'<th scope="row">{_quantity(name)}<small>{small}</small></th>'
        f'<td class="box">{box}</td><td class="units">{_ring(units)}</td>'
    )


def _asked_rows():
    """Return the rows of what the operator is asked, two in a row."""
    cells = [_once(name) + '<td class="plus"></td>' for name in (*ASKED_FACTS, *ASKED)]
    cells += ['<td colspan="4" class="rest">note</td>'] * (len(cells) % 2)
    return "".join(f"<tr>{left}{right}</tr>" for left, right in zip(cells[::2], cells[1::2], strict=True))


def _heading():
    """Return the facts above the table: a line to write on, or words to ring."""
    facts = []
    for name in HEADING:
        written = _ring(VOCABULARY[name].among) or "<u></u>"
        facts.append(f"<span>{_quantity(name)} {written}</span>")
    return "".join(facts)


def blank_sheet_html():
    """Return the blank as one printable HTML page, with no outside file."""
    cautions = "".join(f"<li>{_bold(escape(caution))}</li>" for caution in NEAR_THE_ROPE)
    most = max(_TAKEN[name].boxes for name in MEASURED)
    return f"""<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>Field sheet for one lift line</title>
<style>
{STYLE}</style></head><body>
<h1>Field sheet for one lift line</h1>
<div class="cautions"><strong>Before you measure</strong><ul>{cautions}</ul><p>{escape(DEFER)}</p></div>
<p class="facts">{_heading()}</p>
<table><colgroup><col class="what"><col class="by">{'<col class="reading">' * most}<col class="unit"><col class="plus">
<col></colgroup><thead><tr><th scope="col">quantity, and how it is taken</th><th scope="col">who may take it</th>
<th scope="colgroup" colspan="{most}">readings: a box for each</th><th scope="col">unit: ring one</th>
<th scope="col">plus or minus</th>
<th scope="col">method, note</th></tr></thead><tbody>{_measured_rows()}</tbody></table>
<table class="once"><tbody><tr>{"".join(map(_once, SEEN))}</tr></tbody></table>
<table class="once asked"><colgroup>{'<col class="name"><col class="one"><col class="ring"><col>' * 2}</colgroup>
<thead><tr><th scope="colgroup" colspan="8">Ask the operator; do not go in to read these:
a box, the unit to ring, plus or minus and note</th></tr></thead><tbody>{_asked_rows()}</tbody></table>
<p class="foot">{FOOT}</p>
</body></html>
"""


FILES = (
    ("field_sheet_blank.html", "text/html", blank_sheet_html, "the printed blank, one page, cautions first"),
    ("field_sheet_blank.csv", "text/csv", blank_sheet_csv, "the blank for a spreadsheet program"),
)


def all_quantities_csv():
    """Return all that the sheet of a lift may hold, as CSV text: words, units, believed range, which lifts, who."""
    table = what_a_sheet_may_hold()
    return csv_text(table.columns, table.rows)


class BlankSheetLinks(SaveLinks):
    """Links that save the blanks, which stand in the folder ``data`` as well, and all that a sheet may hold."""

    def __init__(self):
        both = [(*file, f"{words}; also in the folder data") for *file, words in FILES]
        words = "all that a sheet may hold, with units, the range that is believed, and who may take it"
        super().__init__([*both, ("what_a_sheet_may_hold.csv", "text/csv", all_quantities_csv, words)])


def blank_sheet_links():
    """Return links to both blanks and to all that a sheet may hold, for a notebook cell."""
    return BlankSheetLinks()


def main(folder):
    """Write both blanks into a folder."""
    for name, _, make, _ in FILES:
        Path(folder, name).write_text(make(), encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
