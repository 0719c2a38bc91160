"""A loading point as a plain model of processes, a rider each, to hold the package's days against: on the same draws.

Riders come by the clock, get on one at a time, and are dropped at a stop: then they go to the end of the line. One
class, no falls: stops, returns and waits are what is compared. It needs simpy, which the package does not.
"""

import numpy as np


class GivenDraws:
    """Draws that were made before, in the order in which a day uses them; as ``DayDraws`` gives them.

    Parameters
    ----------
    ready, gaps, lengths : array
        Readiness of one attempt after another, running time from one stop to the next, and how long each lasts [s]: a
        row a day.
    """

    may_fall = may_miss = False

    def __init__(self, ready, gaps, lengths):
        self.ready, self.gaps, self.lengths = ready, gaps, lengths
        self.rows = np.arange(ready.shape[0])
        self.first_of_row = ready.shape[1] * self.rows
        self.attempts, self.stops = np.zeros(self.rows.size, int), np.zeros(self.rows.size, int)

    def attempt(self, go, again):
        """Return the readiness of the next attempt of each day [s]."""
        ready = self.ready.take(self.first_of_row + self.attempts)
        self.attempts += go
        return ready

    def until_a_stop(self, rows):
        """Return the running time until the next stop [s]."""
        return self.gaps[rows, self.stops[rows]]

    def until_a_slow_down(self, rows):
        """Return that there is none."""
        return np.full(rows.size, np.inf)

    def stop_time(self, rows):
        """Return how long the stop lasts [s]."""
        lengths = self.lengths[rows, self.stops[rows]]
        self.stops[rows] += 1
        return lengths


def run_processes(arrivals, ready, gaps, lengths, floor, ride_time, closing):
    """Return time waited, starts, rides to the top and drops of one day, by a process a rider.

    Parameters
    ----------
    arrivals : list of float
        When riders come [s].
    ready, gaps, lengths : list of float
        As for ``GivenDraws``, of one day.
    floor, ride_time, closing : float
        Least time from one start to the next, time of a ride, and when the day ends [s].
    """
    import simpy

    environment = simpy.Environment()
    place = simpy.Resource(environment)
    runs, on_line, waits = [environment.event().succeed()], set(), [0.0]
    getting_ready, ready = [None], iter(ready)
    started = finished = dropped = 0

    def rider(comes):
        nonlocal started, finished, dropped
        yield environment.timeout(comes)
        while True:
            came = environment.now
            with place.request() as turn:
                yield turn
                yield runs[0]
                left = max(next(ready), floor)
                getting_ready[0] = environment.active_process
                while left > 0:
                    begun = environment.now
                    try:
                        yield environment.timeout(left)
                        left = 0
                    except simpy.Interrupt:
                        left -= environment.now - begun
                        yield runs[0]
                getting_ready[0] = None
            started += 1
            waits[0] += environment.now - came
            on_line.add(environment.active_process)
            try:
                yield environment.timeout(ride_time)
            except simpy.Interrupt:
                dropped += 1
                continue
            on_line.discard(environment.active_process)
            finished += 1
            return

    def stops():
        for gap, length in zip(gaps, lengths, strict=True):
            yield environment.timeout(gap)
            runs[0] = environment.event()
            if getting_ready[0] is not None:
                getting_ready[0].interrupt()
            for each in list(on_line):
                each.interrupt()
            on_line.clear()
            yield environment.timeout(length)
            runs[0].succeed()

    for comes in arrivals:
        environment.process(rider(comes))
    environment.process(stops())
    environment.run(until=closing)
    return waits[0], started, finished, dropped
