"""Look at this installation, say whether the notebooks will run, and what to type if not."""

import sys

from liftcalc.self_check import findings, report

if __name__ == "__main__":
    found = findings()
    print(report(found))
    sys.exit(1 if any(finding.mend for finding in found) else 0)
