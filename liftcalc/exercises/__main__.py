"""The instructor's commands.

python -m liftcalc.exercises key class.txt --to key.csv
python -m liftcalc.exercises sheets class.txt --only 02 03 --to sheets.html
python -m liftcalc.exercises marks records --to marks.csv

A class is a text file with one name or number a line.
"""

import argparse
import sys
from pathlib import Path

from liftcalc.exercises.instructor import answer_key, marks, problem_sheet
from liftcalc.fieldwork.safe_files import read_text


def learners_in(path):
    """Return the names of a class file: one a line, blank lines passed over."""
    _, text = read_text(path, (), "the names of the class")
    return [line.strip() for line in text.splitlines() if line.strip()]


def _parser():
    parser = argparse.ArgumentParser(
        prog="python -m liftcalc.exercises", description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    jobs = parser.add_subparsers(dest="job", required=True)
    words = {
        "key": "the right answers of every learner, as CSV",
        "sheets": "problem sheets to print, one a learner, as one HTML page",
        "marks": "every answer in a folder of records judged anew, as CSV",
    }
    for job, help in words.items():
        command = jobs.add_parser(job, help=help, description=help)
        if job == "marks":
            command.add_argument("folder", help="folder with the records that were collected")
            command.add_argument("--totals", action="store_true", help="one row a learner")
        else:
            command.add_argument("learners", help="text file, one name or number a line")
            command.add_argument("--only", nargs="+", metavar="ID", help="ids such as 2.3, or notebooks such as 02")
        command.add_argument("--to", help="file to write; printed if left out")
    return parser


def main(arguments=None):
    """Do what the arguments say; return 0, or 2 with a message where they cannot be met."""
    chosen = _parser().parse_args(arguments)
    try:
        if chosen.job == "marks":
            text = marks(chosen.folder, chosen.totals)
        else:
            make = answer_key if chosen.job == "key" else problem_sheet
            text = make(learners_in(chosen.learners), chosen.only)
        if chosen.to:
            with_mark = (
                "utf-8-sig" if chosen.job != "sheets" else "utf-8"
            )  # the mark tells a spreadsheet that it is UTF-8
            Path(chosen.to).write_text(text, encoding=with_mark, newline="")
        else:
            print(text, end="")
    except (OSError, ValueError) as error:
        print(f"{error}", file=sys.stderr)
        return 2
    return 0


if __name__ == "__main__":
    sys.exit(main())
