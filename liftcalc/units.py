"""The one unit registry, and the door through which every number enters a formula.

``Q(3.4, "m/s")`` makes a quantity. ``@unit_aware`` puts a check in front of a formula that works on plain
numbers: it refuses a bare number, a quantity of another kind, and values that mean nothing on a lift.
The formula stays reachable without the check as ``.plain``, for loops and for sampling.
"""

import functools
import inspect
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import pint

from liftcalc.docstrings import BOUNDS, completed
from liftcalc.errors import PlainError, UnitError
from liftcalc.vocabulary import VOCABULARY

ureg = pint.get_application_registry()
for _definition in (
    "person = [person] = _ = persons = rider = riders",  # a kind of its own: it tells carriers an hour from persons
    "dollar = [money] = _ = dollars",  # a label and no currency
    # the year of a lift; a kind of its own, and no time: else 1,200 pph were ten million rides a year, and the hours of
    # a year a pure number
    "season = [season] = _ = seasons",
    "pph = person / hour",
    "fpm = foot / minute",
):
    if _definition.split(" ", 1)[0] not in ureg:
        ureg.define(_definition)

# name of a kind of quantity: (unit that stands for the kind, value used in the advice of a message)
KINDS_OF_QUANTITY = {
    "speed": ("m/s", 3.4),
    "length": ("m", 6.8),
    "time": ("s", 2.0),
    "number of persons": ("person", 1),
    "hourly capacity": ("person/hour", 1800),
    "vertical transport": ("person*ft/hour", 170000),
    "acceleration": ("m/s**2", 1.5),
    "power": ("kW", 15),
    "force": ("N", 300),
    "mass": ("kg", 75),
    "energy": ("J", 30000),
    "mass per length": ("kg/m", 0.6),
    "moment of inertia": ("kg*m**2", 0.1),
    "square of a time": ("s**2", 6.0),
    "area": ("hectare", 1.2),
    "density of riders": ("person/hectare", 40),
    "amount of money": ("dollar", 20),
    "amount of money a season": ("dollar/season", 18000),
    "amount of money a ride": ("dollar/person", 1.5),
    "number of rides a season": ("person/season", 90000),
    "number of seasons": ("season", 20),
    "number of hours a season": ("hour/season", 350),
    "wage": ("dollar/hour", 16),
    "price of energy": ("dollar/kilowatt_hour", 0.18),
    "price of power": ("dollar/kW", 12),
    "pure number or angle": ("", 0.2),
}
_KIND_OF_DIMENSION = {ureg.Unit(unit).dimensionality: kind for kind, (unit, _) in KINDS_OF_QUANTITY.items()}

FORMULAS = {}  # every formula behind @unit_aware, by its full name: the tests walk through it


@functools.lru_cache(maxsize=1024)
def parsed_unit(text):
    """Return the unit that a text names; the registry alone would read the text anew each time."""
    return ureg.Unit(text)


def Q(value, unit):
    """Return a quantity: a number, or several numbers, with a unit.

    Parameters
    ----------
    value : number or sequence of numbers
        How many of the unit.
    unit : str
        Name of the unit, such as "m/s", "mph", "ft", "s", "person" or "pph".

    Returns
    -------
    Quantity
        The value with its unit; several numbers become an array.

    Raises
    ------
    UnitError
        If the unit is not known, or the value is not made of numbers.

    Examples
    --------
    >>> Q(1.5, "hour").to("minute").magnitude
    90.0
    """
    if not isinstance(unit, (str, pint.Unit)):
        raise UnitError(f"Q: the unit must be a text such as 'm/s', but got {unit!r}. Write Q(3.4, 'm/s').")
    try:
        parsed = parsed_unit(unit) if isinstance(unit, str) else ureg.Unit(unit)
    except Exception as error:
        raise UnitError(
            f"Q: {unit!r} is not a unit known here. Write a unit such as 'm/s', 'mph', 'ft', 's', 'person' or 'pph'."
        ) from error
    if isinstance(value, (str, bytes, bool, pint.Quantity)) or value is None:
        raise UnitError(f"Q: the value must be a number, but got {value!r}. Write for example Q(3.4, 'm/s').")
    try:
        number = value if isinstance(value, (int, float)) else np.asarray(value, dtype=float)
    except (TypeError, ValueError) as error:
        raise UnitError(
            f"Q: the value must be a number, but got {value!r}. Write for example Q(3.4, 'm/s')."
        ) from error
    if isinstance(number, np.ndarray) and number.ndim == 0:
        number = float(number)
    return ureg.Quantity(number, parsed)


def kind_of(quantity):
    """Return the name of the kind of a quantity or unit, such as "speed"; None for a kind not met here."""
    return _KIND_OF_DIMENSION.get(quantity.dimensionality)


_POWERS_OF_ANGLE = {ureg.Unit("radian"): 1, ureg.Unit("radian**2"): 2}


@functools.lru_cache(maxsize=256)
def _power_of_angle(unit):
    """Return 1 for a unit of an angle, such as degree, gradian or arcminute, 2 for one of a solid angle, or else 0."""
    return _POWERS_OF_ANGLE.get(ureg.get_root_units(unit)[1], 0)  # by its roots: no unit of an angle is missed


def is_like(unit, wanted):
    """Say whether two units are of one kind; angle and pure number, which the registry takes for one, are two.

    It would make a grade of 35 % of a slope of 20 degrees, and twenty-nine turns of a wrap of 180. Every door for
    quantities asks here.
    """
    return unit == wanted or (
        unit.dimensionality == wanted.dimensionality and _power_of_angle(unit) == _power_of_angle(wanted)
    )


def kind_in_words(unit):
    """Return the kind of a unit with its article, such as "a speed", "an angle" or "a pure number"."""
    if unit.dimensionless:
        return {0: "a pure number", 1: "an angle"}.get(_power_of_angle(unit), "a solid angle")
    return with_article(kind_of(unit) or "quantity of another kind")


def _instead(name, value, wanted, unit):
    """Say what to write where a quantity of another kind came."""
    if _power_of_angle(wanted):
        return "Write for example Q(20, 'degree')."
    if name == "grade" and _power_of_angle(value.units):
        if str(value.units).endswith("grade"):  # the registry's name of a gradian, also behind a prefix
            return (
                "'grade', 'grad', 'gon' and 'gradian' are units of an angle, four hundred to a turn. "
                "For a rise of 20 m on 100 m of map write percent: Q(20, 'percent')."
            )
        return "Write for example Q(20, 'percent'), or grade_from_angle(Q(11.3, 'degree'))."
    return f"Write for example {_advice(unit)}."


def with_article(kind):
    """Return the kind with "a" or "an" before it."""
    return f"{'an' if kind.startswith(('a', 'e', 'hourly')) else 'a'} {kind}"


def _plain_text(quantity):
    unit = f"{quantity.units:~}".replace(" / ", "/").replace(" * ", " ").replace(" ** ", "^")
    return f"{quantity.magnitude} {unit}".strip()


def _advice(unit):
    kind = kind_of(ureg.Unit(unit))
    return f"Q({KINDS_OF_QUANTITY[kind][1]}, {unit!r})"


def checked_magnitude(function, name, value, unit, wanted, lowest):
    """Return ``value`` as plain floats in ``unit``, or say what is wrong with it; ``wanted`` is the unit, parsed."""
    if not isinstance(value, pint.Quantity):
        shown = value if isinstance(value, (int, float)) and not isinstance(value, bool) else None
        write = f"Q({shown}, {unit!r})" if shown is not None else _advice(unit)
        raise UnitError(f"{function}: {name} needs a unit, but got the bare value {value!r}. Write {write}.")
    came = value.units
    if not is_like(came, wanted):
        raise UnitError(
            f"{function}: {name} must be {kind_in_words(wanted)}, but got {kind_in_words(came)}: "
            f"{_plain_text(value)}. {_instead(name, value, wanted, unit)}"
        )
    number = value.magnitude if came == wanted else value.m_as(wanted)
    if isinstance(number, np.ndarray):
        if number.size == 0:
            raise PlainError(f"{function}: {name} holds no values. Give at least one, such as {_advice(unit)}.")
        least, most = number.min(), number.max()  # nan in the array makes both nan
    else:
        least = most = number = float(number)
    if not (least > -np.inf and most < np.inf):
        raise PlainError(
            f"{function}: {name} must be a finite number, but got {_plain_text(value)}. "
            f"Write for example {_advice(unit)}."
        )
    if lowest == "positive" and least <= 0 or lowest == "not negative" and least < 0:
        raise PlainError(
            f"{function}: {name} must be {BOUNDS[lowest]}, but got {_plain_text(value)}. "
            f"Write for example {_advice(unit)}."
        )
    return number


def _check_shapes(function, numbers):
    shapes = {name: np.shape(number) for name, number in numbers.items() if np.ndim(number)}
    try:
        np.broadcast_shapes(*shapes.values())
    except ValueError:
        sizes = ", ".join(f"{name} has shape {shape}" for name, shape in shapes.items())
        raise PlainError(
            f"{function}: the arguments do not fit together: {sizes}. Give one value, or as many values as the others."
        ) from None


@dataclass(frozen=True)
class Condition:
    """What a formula asks of its arguments beside their units and signs.

    Parameters
    ----------
    holds : function
        From some of the formula's arguments, by their names, to where the condition holds: plain numbers or arrays in
        the formula's units.
    says : function
        From the same arguments to what came and what to write instead.
    refuses : str
        What is refused, as the docstring of a formula says it behind "If".
    """

    holds: Callable
    says: Callable
    refuses: str

    @functools.cached_property  # every call of a formula asks for them
    def names(self):
        """Names of the arguments that the condition is about."""
        return tuple(inspect.signature(self.holds).parameters)

    def _take(self, numbers):
        return {name: numbers[name] for name in self.names}

    def where(self, numbers):
        """Return where the condition holds, from plain numbers by name."""
        return self.holds(**self._take(numbers))

    def message(self, numbers):
        """Return what came and what to write instead."""
        return self.says(**self._take(numbers))

    def check(self, function, numbers):
        """Refuse numbers of which a single one does not fit: whoever has strays leaves them out before asking."""
        if not np.all(self.where(numbers)):
            raise PlainError(f"{function}: {self.message(numbers)}")


def unit_aware(*, returns, may_be_zero=(), may_be_negative=(), conditions=(), one_value=False, **units):
    """Put a check of units and values in front of a formula that works on plain numbers.

    Parameters
    ----------
    returns : str
        Unit of the result.
    may_be_zero, may_be_negative : tuple of str
        Names of arguments that need not be greater than zero here; what may be zero everywhere says so in the
        vocabulary.
    conditions : tuple of Condition
        What the formula asks of its arguments besides.
    one_value : bool
        True for a formula whose result is one value, also of arrays.
    **units : str
        Unit of each argument, by its name.

    Returns
    -------
    function
        A decorator. A default in the formula's own signature is a plain number in the unit named here.
    """

    def decorate(formula):
        signature = inspect.signature(formula)
        if set(signature.parameters) != set(units):
            raise TypeError(f"{formula.__name__}: the units name {set(units)}, not the arguments {signature}")
        if not {*may_be_zero, *may_be_negative} <= set(units):
            raise TypeError(f"{formula.__name__}: {may_be_zero + may_be_negative} are not all arguments {signature}")
        lowest = {
            name: "any"
            if name in may_be_negative
            else "not negative"
            if name in may_be_zero or (name in VOCABULARY and VOCABULARY[name].zero)
            else "positive"
            for name in units
        }
        wanted = {name: ureg.Unit(unit) for name, unit in units.items()}
        result_unit = ureg.Unit(returns)

        @functools.wraps(formula)
        def checked(*arguments, **named):
            given = signature.bind(*arguments, **named).arguments
            numbers = {
                name: checked_magnitude(formula.__name__, name, value, units[name], wanted[name], lowest[name])
                for name, value in given.items()
            }
            if any(isinstance(number, np.ndarray) for number in numbers.values()):
                _check_shapes(formula.__name__, numbers)
            for condition in conditions:
                condition.check(formula.__name__, {**checked.defaults, **numbers})
            with np.errstate(over="ignore", invalid="ignore", divide="ignore"):
                result = checked.plain(**numbers)
            if not np.isfinite(result).all():
                raise PlainError(
                    f"{formula.__name__}: the result is no finite number. Check the size of the arguments."
                )
            return ureg.Quantity(result, result_unit)

        checked.__doc__ = completed(formula, units, returns, lowest, conditions, one_value)
        checked.plain = formula
        checked.units = {**units, "returns": returns}
        checked.conditions = conditions
        checked.defaults = {
            name: parameter.default
            for name, parameter in signature.parameters.items()
            if parameter.default is not inspect.Parameter.empty
        }
        FORMULAS[f"{formula.__module__}.{formula.__name__}"] = checked
        return checked

    return decorate
