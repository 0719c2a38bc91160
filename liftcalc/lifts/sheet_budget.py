"""The budget of a sheet: which of its readings makes how much of the doubt of the limit that governs."""

from inspect import Parameter, Signature

from liftcalc.lifts.kinds import NOT_READ
from liftcalc.lifts.limits_of_line import capacities_at, readings_behind
from liftcalc.lifts.sheet_limits import in_doubt, powers_of_line, with_readings
from liftcalc.lifts.sheet_line import known_of
from liftcalc.uncertainty import UncertaintyError, own_formula, uncertainty_budget


def readings_of_limit(sheet, limit):
    """Return the names of the readings of a sheet that a limit rests on.

    Parameters
    ----------
    sheet : FieldSheet
    limit : str
        Name of the limit.

    Returns
    -------
    list of str
        Names in the vocabulary; a spacing that was worked out stands there as the readings that make it.
    """
    known = known_of(sheet)
    powers, names = powers_of_line(sheet, known), []
    for name in readings_behind(sheet.kind or NOT_READ, known, limit):
        moving = [reading for reading, moves in powers.items() if name in moves]
        names += moving or ([name] if name in sheet.facts or sheet.has(name) else [])
    return list(dict.fromkeys(names))


def budget_of_limit(sheet, limit):
    """Return the budget of a limit: what each reading of a sheet adds to its doubt.

    Parameters
    ----------
    sheet : FieldSheet
        As ``read_sheet`` returns it.
    limit : str
        Name of a limit that can be computed from it.

    Returns
    -------
    Budget or None
        None where no reading behind the limit has a doubt, or where the limit bends too much within it.
    """
    known, kind = known_of(sheet), sheet.kind or NOT_READ
    estimates, powers = in_doubt(sheet, known)[0], powers_of_line(sheet, known)
    estimates = {name: estimates[name] for name in readings_of_limit(sheet, limit) if name in estimates}
    if not estimates:
        return None

    def people_an_hour(**numbers):
        return capacities_at(kind, with_readings(sheet, known, numbers, powers))[limit].m_as("pph")

    units = {name: str(estimate.value.units) for name, estimate in estimates.items()}
    people_an_hour.__signature__ = Signature([Parameter(name, Parameter.KEYWORD_ONLY) for name in units])
    try:
        return uncertainty_budget(own_formula(people_an_hour, returns="pph", **units), estimates)
    except UncertaintyError:
        return None
