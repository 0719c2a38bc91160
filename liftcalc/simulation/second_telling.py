"""The loading point told twice: as sums of slots, and as riders who come, wait, take the place and leave it.

The second telling is slow and reads like the hill. It is here to be read, and to check the first.
"""

import numpy as np
import simpy

from liftcalc.quantity_text import show
from liftcalc.simulation.day_answers import only_at_any_time
from liftcalc.tables import Lines
from liftcalc.units import Q


def waits_by_sums(comes, slots):
    """Return how long each rider waits, from times of coming, in order, and the slots they take, all in seconds.

        T_i = max(A_i, T_(i-1) + S_(i-1))

    with A the coming, S the slot and T the time at which a rider has the place.
    """
    before = np.cumsum(slots) - slots
    return np.maximum.accumulate(comes - before) + before - comes


def waits_by_processes(comes, slots):
    """Return the same, each rider a process of their own."""
    hill, waits = simpy.Environment(), []
    place = simpy.Resource(hill)

    def rider(comes, slot):
        yield hill.timeout(comes)
        with place.request() as turn:
            yield turn
            waits.append(hill.now - comes)
            yield hill.timeout(slot)

    for come, slot in zip(comes, slots, strict=True):
        hill.process(rider(come, slot))
    hill.run()
    return np.array(waits)


def two_tellings(day, riders=200, seed=2026):
    """Return the waits of both tellings of one morning, on the same draws.

    Parameters
    ----------
    day : LoadingDay
        Its mean readiness and its floor are taken; riders come at random, nine in ten of what the place lets through.
    riders, seed : int
        How many come, and the start of the random numbers.

    Returns
    -------
    Lines
    """
    only_at_any_time(day)
    random = np.random.default_rng(seed)
    slots = np.maximum(day.mean_readiness * random.lognormal(-0.06, 0.35, riders), day.floor)
    comes = np.sort(random.uniform(0, riders * slots.mean() / 0.9, riders))
    sums, processes = waits_by_sums(comes, slots), waits_by_processes(comes, slots)
    apart = np.abs(sums - processes).max()
    return Lines(
        f"{riders} riders come at random. Mean wait by sums {show(Q(float(sums.mean()), 's'))}, told as a process "
        f"{show(Q(float(processes.mean()), 's'))}.",
        "The waits of every single rider are the same." if apart < 1e-6 else f"They differ by {apart:.2g} s.",
    )
