"""Fingerprints of the exercises: what a learner is asked, with which numbers, and what is right, as short digests.

python tests/fingerprints.py            for how many learners the numbers and right answers have moved
python tests/fingerprints.py --write    take the exercises as they are now

The digests stand in fingerprints.json, one for each of twenty learners and for the printed numbers, with the edition
of the bank that they are of. Where numbers or right answers have moved, they are written for a newer edition only.
"""

import argparse
import hashlib
import json
import string
import sys
from pathlib import Path

from liftcalc.exercises import BANK, EDITION, Posed
from liftcalc.exercises.drawing import learner_key
from liftcalc.quantity_text import unit_word

FILE = Path(__file__).with_name("fingerprints.json")
LEARNERS = (
    *("Maja K.", "Ole Hansen", "learner 1", "Anna-Lena", "  Tom  ", "O'Brien", "J. R. Smith, Jr.", "x"),
    *("Zoë", "Łukasz Żak", "Jörg Weiß", "Þóra Ævarsdóttir", "Αλέξης", "Ольга", "山田 花子", "José M.ª Núñez"),
    *(1, 17, "204", "0042"),
)
PRINTED = ""
COMMAND = "python tests/fingerprints.py --write"
EDITION_STANDS = "EDITION in liftcalc/exercises/bank/__init__.py"
RAISE = f"Raise {EDITION_STANDS} by one first: records and marks then tell the old from the new."
WORDS = {"text": "text", "numbers": "numbers", "right": "right answer"}


def _digest(*parts):
    return hashlib.sha256("\n".join(parts).encode("utf-8")).hexdigest()[:8]


def _written(quantity):
    """Return a quantity to nine figures: enough to see a change, too few to see which machine computed it."""
    return f"{quantity.magnitude:.9g} {unit_word(quantity.units)}"


def _texts(exercise):
    """Return the question and its statements, with their gaps open."""
    return [exercise.text, *(option.text for option in getattr(exercise, "options", ()))]


def _numbers(posed):
    """Return the digest of all numbers given, and of the figures that the question shows beside them."""
    gaps = {name for text in _texts(posed.exercise) for _, name, _, _ in string.Formatter().parse(text) if name}
    names = sorted({*posed.exercise.given, *gaps})
    return _digest(*(f"{name} {_written(getattr(posed.numbers, name))}" for name in names))


def _right(posed):
    """Return the digest of the right answer; of a choice, which statement stands at which letter and which is right."""
    if not posed.is_choice:
        return _digest(_written(posed.right))
    in_the_bank = posed.exercise.options
    return _digest(posed.right, *(str(in_the_bank.index(option)) for option in posed.options.values()))


def fingerprint(id):
    """Return the digests of one exercise: of its text, and of numbers and right answer for each learner."""
    posed = [Posed(BANK[id], learner_key(name)) for name in (*LEARNERS, PRINTED)]
    return {
        "text": [_digest(*_texts(BANK[id]), posed[0].asked)],
        "numbers": [_numbers(one) for one in posed],
        "right": [_right(one) for one in posed],
    }


def of_learners(names):
    """Return one digest of all that some learners are asked."""
    return _digest(*(repr(Posed(BANK[id], learner_key(name))) for name in names for id in BANK))


def roads(id):
    """Return one digest of where the wrong roads of an exercise lead, for all learners; of a choice there is none."""
    posed = [Posed(BANK[id], learner_key(name)) for name in (*LEARNERS, PRINTED)]
    ends = [_written(road.answer(one.numbers)) for one in posed for road in getattr(BANK[id], "roads", ())]
    return _digest(*ends)


def committed_roads():
    """Return the digests of the wrong roads in the file, by exercise."""
    return json.loads(FILE.read_text(encoding="utf-8"))["roads"]


def committed_edition():
    """Return the edition of the bank that the file is of."""
    return json.loads(FILE.read_text(encoding="utf-8"))["edition"]


def committed():
    """Return the fingerprints of the file, by exercise."""
    exercises = json.loads(FILE.read_text(encoding="utf-8"))["exercises"]
    return {id: {part: digests.split() for part, digests in parts.items()} for id, parts in exercises.items()}


def write():
    """Take the exercises as they are now."""
    exercises = {id: {part: " ".join(digests) for part, digests in fingerprint(id).items()} for id in BANK}
    known = {"edition": EDITION, "exercises": exercises, "roads": {id: roads(id) for id in BANK}}
    FILE.write_text(json.dumps(known, indent=1) + "\n", encoding="utf-8")


def moved(before, now):
    """Return who is moved in each part that is not as before: names of learners, "" for the printed numbers."""
    who = {
        part: [
            name
            for name, old, new in zip((*LEARNERS, PRINTED), before[part], now[part], strict=part != "text")
            if old != new
        ]
        for part in WORDS
    }
    return {part: names for part, names in who.items() if names}


def _of_whom(names):
    learners = [str(name).strip() for name in names if name != PRINTED]
    some = [f"{len(learners)} of {len(LEARNERS)} learners ({learners[0]} first)"] if learners else []
    return f" for {' and '.join([*some, *(['the printed numbers'] if PRINTED in names else [])])}"


def says(id, who):
    """Return what has moved in one exercise, and what to do about it, in words; empty if nothing has."""
    if not who:
        return ""
    parts = "; ".join(f"its {WORDS[part]}{_of_whom(names) if part != 'text' else ''}" for part, names in who.items())
    if set(who) == {"text"}:
        return f"Exercise {id} has moved: {parts}. If the change is meant, take it with: {COMMAND}"
    return (
        f"Exercise {id} has moved: {parts}. Keys, sheets and records that were handed out hold the old ones. If the "
        f"change is meant, {EDITION_STANDS} must be above the edition of tests/fingerprints.json; "
        f"then take it with: {COMMAND}"
    )


def shares(before, now):
    """Return a line for each exercise whose numbers or right answers moved: for what share of the learners.

    Parameters
    ----------
    before, now : dict
        Fingerprints by exercise; an exercise that is not in both is passed over.

    Returns
    -------
    list of str
    """
    lines = []
    for id in before.keys() & now.keys():
        who = moved(before[id], now[id])
        counts = {part: sum(name != PRINTED for name in who.get(part, ())) for part in ("numbers", "right")}
        if any(counts.values()):
            lines.append(
                f"{id}: numbers of {counts['numbers'] / len(LEARNERS):.0%}, "
                f"right answers of {counts['right'] / len(LEARNERS):.0%} of {len(LEARNERS)} learners moved"
            )
    return sorted(lines, key=lambda line: float(line.split(":")[0]))


def main(arguments=None):
    """Print the shares that moved, and write the fingerprints anew where that is asked."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--write", action="store_true", help="take the exercises as they are now")
    chosen = parser.parse_args(arguments)
    lines = shares(committed(), {id: fingerprint(id) for id in BANK})
    print("\n".join(lines) or "No learner's numbers moved.")
    if not chosen.write:
        return 0
    if lines and committed_edition() >= EDITION:
        print(f"Nothing is written: the edition is {EDITION} as before. {RAISE}", file=sys.stderr)
        return 2
    write()
    return 0


if __name__ == "__main__":
    sys.exit(main())
