"""Coverage factors and degrees of freedom: what is refused."""

from example_readings import EXAMPLE
from messages import refuses, table_of_messages

from liftcalc import Q, UnitError
from liftcalc.uncertainty import UncertaintyError, coverage_factor, effective_degrees_of_freedom, expand

MESSAGES = [
    (
        lambda: coverage_factor(95),
        "coverage_factor: the probability must lie between 0 and 1, but got 95. Write 0.95 for 95 %.",
    ),
    (
        lambda: effective_degrees_of_freedom([1, 2], [3]),
        "effective_degrees_of_freedom: 2 contributions came with 1 degrees of freedom. Give one for each.",
    ),
    (
        lambda: expand(Q(1800, "pph")),
        "expand: a result with a standard uncertainty is needed, but got 1800 pph. Write for "
        f"example expand({EXAMPLE}).",
        UnitError,
    ),
]


@table_of_messages(MESSAGES, kind=UncertaintyError)
def test_message(call, message, kind):
    refuses(call, message, kind)
