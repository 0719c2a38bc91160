"""A count of riders that pass for two minutes, drawn as it would be made."""

import numpy as np

from liftcalc.units import PlainError, unit_aware


@unit_aware(
    line_speed="m/s", spacing="m", counting_time="s", first_rider_away="m", returns="person", one_value=True,
)  # fmt: skip
def count_simulated_riders(*, line_speed, spacing, counting_time, first_rider_away=0.0):
    """Set riders on a rope, let it run, and count those who pass a post: the third route.

    Each rider is placed and moved; no division of speed by spacing is made, so that the count is a route of its own.
    One rope is set up at a time: each argument is one value.

    returns: Riders counted: every rider who was at or below the post at the start and is above it at the end.
    raises: if more than ten million riders would pass

    Source: counting.

    >>> show(count_simulated_riders(line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), counting_time=Q(60, "s")))
    '30 persons'
    """
    rope_let_past = line_speed * counting_time
    if rope_let_past > 1e7 * spacing:
        raise PlainError(
            "count_simulated_riders: more than ten million riders would pass. Write a shorter counting_time, such as "
            "Q(3600, 's')."
        )
    start = -(first_rider_away + np.arange(0.0, rope_let_past + spacing, spacing))
    return float(np.count_nonzero(start + rope_let_past > rope_let_past * 1e-12))
