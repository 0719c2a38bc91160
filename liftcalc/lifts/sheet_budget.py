"""The budget of a sheet: which of its readings makes how much of the doubt of the limit that governs."""

from inspect import Parameter, Signature

from liftcalc.lifts.kinds import NOT_READ
from liftcalc.lifts.limits_of_line import capacities_at, readings_behind
from liftcalc.lifts.sheet_limits import in_doubt, powers_of_line, with_readings
from liftcalc.lifts.sheet_line import known_of
from liftcalc.uncertainty import UncertaintyError, own_formula, uncertainty_budget


class BehindLimits:
    """The readings behind the limits of a sheet, and what each of them adds to their doubt.

    Parameters
    ----------
    sheet : FieldSheet
        As ``read_sheet`` returns it.
    """

    def __init__(self, sheet):
        self.sheet, self.kind, self.known = sheet, sheet.kind or NOT_READ, known_of(sheet)
        self.powers = powers_of_line(sheet, self.known)

    def readings(self, limit):
        """Return the names of the readings that a limit rests on.

        Parameters
        ----------
        limit : str
            Name of the limit.

        Returns
        -------
        list of str
            Names in the vocabulary; a spacing that was worked out stands there as the readings that make it.
        """
        names, sheet = [], self.sheet
        for name in readings_behind(self.kind, self.known, limit):
            moving = [reading for reading, moves in self.powers.items() if name in moves]
            names += moving or ([name] if name in sheet.facts or sheet.has(name) else [])
        return list(dict.fromkeys(names))

    def budget(self, limit):
        """Return the budget of a limit: what each reading of the sheet adds to its doubt.

        Parameters
        ----------
        limit : str
            Name of a limit that can be computed from the sheet.

        Returns
        -------
        Budget or None
            None where no reading behind the limit has a doubt, or where the limit bends too much within it.
        """
        estimates = in_doubt(self.sheet, self.known)[0]
        estimates = {name: estimates[name] for name in self.readings(limit) if name in estimates}
        if not estimates:
            return None

        def people_an_hour(**numbers):
            values = with_readings(self.sheet, self.known, numbers, self.powers)
            return capacities_at(self.kind, values)[limit].m_as("pph")

        units = {name: str(estimate.value.units) for name, estimate in estimates.items()}
        people_an_hour.__signature__ = Signature([Parameter(name, Parameter.KEYWORD_ONLY) for name in units])
        try:
            return uncertainty_budget(own_formula(people_an_hour, returns="pph", **units), estimates)
        except UncertaintyError:
            return None
