"""Who is inside the stopping distance, on assumptions that are named: nothing of it is on a sheet of a lift."""

from dataclasses import dataclass

from pint import Quantity

from liftcalc.formulas.stopping import attendant_stopping_distance, riders_inside
from liftcalc.units import Q

# assumed; the first two as on the page about spacing. A slow stop is on the safe side: it makes the distance longer
REACTION, DELAY, SLOWING = Q(2, "s"), Q(0.5, "s"), Q(1, "m/s**2")


@dataclass(frozen=True)
class Stop:
    """An attendant's stop, as it stands on the page.

    Parameters
    ----------
    distance : Quantity [m]
        How far the rope or belt still runs after a fall.
    riders : Quantity [person] or None
        Riders at most inside that, the one who fell included; of carriers, those on each carrier that gets there. None
        where nobody read how many a carrier holds, and for cabins that run to and fro: the next is a trip away.
    places : int or None
        Riders, or carriers, one behind the other that are inside it at most; None for cabins that run to and fro.
    reaction, delay, slowing : Quantity
        What is assumed: until the attendant presses stop, until the rope begins to slow, and how hard it slows.
    """

    distance: Quantity
    riders: Quantity | None
    places: int | None
    reaction: Quantity = REACTION
    delay: Quantity = DELAY
    slowing: Quantity = SLOWING


def stop_of(kind, known):
    """Return an attendant's stop of a lift; None where its line speed or spacing is not known.

    Parameters
    ----------
    kind : Kind
    known : dict
        As ``known_of`` returns it.
    """
    if not {"line_speed", "spacing"} <= {*known}:
        return None
    distance = attendant_stopping_distance(
        known["line_speed"], reaction_time=REACTION, stop_delay=DELAY, rope_deceleration=SLOWING
    )
    if kind.reversible:
        return Stop(distance, None, None)
    places = riders_inside(distance=distance, spacing=known["spacing"])
    each = known.get("persons_per_carrier")
    return Stop(distance, None if each is None else places * each.m_as("person"), round(places.m_as("person")))
