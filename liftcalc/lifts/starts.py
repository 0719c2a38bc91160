"""The start from rest, taken off ride times and head counts before a line is worked out.

``solve_line`` knows riders who have the speed of the rope at once: T = L / v. Whoever stands still at the grab rides
v / (2 a) longer, and in proportion more of them are on the line. That is a sum, and the equations there are products of
powers: so it comes off before.
"""

from pint import Quantity

from liftcalc.formulas.capacity import hourly_capacity_from_head_count
from liftcalc.formulas.riders import line_speed_from_ride_time
from liftcalc.lifts.givens import solve_line
from liftcalc.units import Q


def with_trip_time(dwell_time, givens):
    """Return the givens of a reversible lift with its ride time, where interval and dwell time make it."""
    interval = givens.get("interval")
    if dwell_time is None or "ride_time" in givens or "line_speed" in givens or not isinstance(interval, Quantity):
        return givens
    return givens | {"ride_time": interval - dwell_time}


def without_start(start, givens):
    """Return the givens as if riders had the speed of the rope at once, and the time that the start takes.

    A ride time loses v / (2 a); riders on the line lose it in proportion. Where the line speed does not follow from the
    givens, ride time and riders on the line are left out: whoever asks for more is told what is missing.
    """
    timed = [name for name in ("ride_time", "riders_on_line") if name in givens]
    others = {name: value for name, value in givens.items() if name not in timed}
    figures = dict(others)
    if len(timed) == 2:
        flow = hourly_capacity_from_head_count(givens["riders_on_line"], givens["ride_time"])
        figures.setdefault("hourly_capacity", flow)
    given = any(value is not None for value in figures.values())
    known = solve_line(has_carriers="carriers_on_loop" in figures, **figures).values if given else {}
    time = givens.get("ride_time")
    if time is None and timed and "hourly_capacity" in known:
        time = (givens["riders_on_line"] / known["hourly_capacity"]).to("s")
    speed = known.get("line_speed")
    if speed is None and time is not None and "ridden_length" in known:
        speed = line_speed_from_ride_time(known["ridden_length"], time, start)
    if speed is None:
        return others, Q(0, "s")
    lost = (speed / (2 * start)).to("s")
    if time is None and "ridden_length" in known:
        time = known["ridden_length"] / speed + lost
    if "ride_time" in timed:
        others["ride_time"] = time - lost
    if "riders_on_line" in timed and time is not None:
        others["riders_on_line"] = givens["riders_on_line"] * (1 - lost / time).m_as("")
    return others, lost
