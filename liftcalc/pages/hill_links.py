"""A link that saves the lines of a hill as a table for a spreadsheet program."""

from liftcalc.lifts.tables import hill_csv
from liftcalc.pages.save_links import SaveLinks


def hill_links(hill):
    """Return a link to all lines of a hill as CSV, for a notebook cell.

    Parameters
    ----------
    hill : Hill
        As ``read_hill`` returns it.
    """
    return SaveLinks(
        [("my_hill.csv", "text/csv", hill_csv(hill), "all lines with what governs them, for a spreadsheet")]
    )
