"""What sampling costs beside the bare arithmetic, as ratios measured in one run.

    python .ci/benchmark_uncertainty.py

A million ready-made samples go through ``3600 * n * v / s`` in bare numpy and through ``evaluate``. The two take turns,
and the medians are compared, so that a busy machine slows both. It is no test:
times differ between machines, ratios less.
"""

import statistics
import time

import numpy as np

from liftcalc import Q, hourly_capacity
from liftcalc.uncertainty import Estimate, by_first_order, by_sampling, combine, evaluate, uncertainty_budget

DRAWS = 1_000_000
ROUNDS = 41


def take_turns(*calls, rounds=ROUNDS):
    """Return the median time of each call in milliseconds; the calls take turns."""
    times = [[] for _ in calls]
    for _ in range(rounds):
        for call, taken in zip(calls, times, strict=True):
            start = time.perf_counter()
            call()
            taken.append(1000 * (time.perf_counter() - start))
    return [statistics.median(taken[1:]) for taken in times]


def main():
    """Print the ratios."""
    generator = np.random.default_rng(1)
    v = generator.normal(3.4, 0.05, DRAWS)
    s = generator.normal(6.8, 0.2, DRAWS)
    n = np.full(DRAWS, 1.0)
    samples = {"line_speed": Q(v, "m/s"), "spacing": Q(s, "m"), "persons_per_carrier": Q(n, "person")}
    readings = {
        "line_speed": Estimate(Q(3.4, "m/s"), Q(0.05, "m/s")),
        "spacing": Estimate(Q(6.8, "m"), Q(0.2, "m")),
        "persons_per_carrier": Q(1.0, "person"),
    }
    bare, propagated, again = take_turns(
        lambda: 3600 * n * v / s, lambda: evaluate(hourly_capacity, samples), lambda: 3600 * n * v / s
    )
    print(f"bare numpy, a million samples {bare:.2f} ms")
    print(f"evaluate, the same samples    {propagated:.2f} ms: {propagated / bare:.2f} times the bare expression")
    print(f"bare numpy once more          {again:.2f} ms: {again / bare:.2f} times (what the clock itself wobbles)")
    scalar_bare, scalar = take_turns(
        lambda: 3600 * 1.0 * v / s,
        lambda: evaluate(hourly_capacity, {**samples, "persons_per_carrier": Q(1.0, "person")}),
    )
    print(f"the same with one person exact: {scalar / scalar_bare:.2f} times the bare expression")
    draw, whole = take_turns(
        lambda: (np.random.default_rng(1).normal(size=DRAWS), np.random.default_rng(2).normal(size=DRAWS)),
        lambda: by_sampling(hourly_capacity, readings, seed=1, draws=DRAWS),
        rounds=7,
    )
    print(
        f"by_sampling whole, with draws, sorting and intervals {whole:.0f} ms: {whole / draw:.1f} times the bare draws"
    )
    speeds = [Estimate(Q(3.4 + place / 100, "m/s"), Q(0.05, "m/s"), method=str(place)) for place in range(4)]
    plain, first, budget, together = take_turns(
        lambda: hourly_capacity(Q(3.4, "m/s"), Q(6.8, "m")),
        lambda: by_first_order(hourly_capacity, readings),
        lambda: uncertainty_budget(hourly_capacity, readings),
        lambda: combine(speeds),
    )
    print(
        f"beside one checked call of the formula: first order {first / plain:.0f} times, a budget {budget / plain:.0f} "
        f"times, combining four methods {together / plain:.0f} times ({together:.2f} ms)"
    )


if __name__ == "__main__":
    main()
