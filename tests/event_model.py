"""A lift line event by event: a second opinion on the formulas, which knows none of them and shares no code with them.

The rope is a tape. Carrier number k hangs k spacings behind the first, and it is at a place of the line when so much
of the tape has run by. A single rider on a rope tow is a carrier with one place. All that is asked of a line is then
counted or watched: who passes in a window, who is between bottom and top, how long somebody took. All numbers are SI.
"""

import heapq
from collections import deque
from dataclasses import dataclass

import numpy as np

GRAVITY = 9.80665  # m/s²: standard value
STEP = 0.01  # s: of a ride that is followed step by step
SAME_MOMENT = 6  # digits of a second: what differs by less happens at once
SAME_PLACE = 1e-9  # m
LAPS_BEFORE = 5  # of a crowd, until its laps are alike


@dataclass(frozen=True)
class Line:
    """A line that somebody could build, whatever its kind.

    Parameters
    ----------
    length, rise : float
        Way of a rider along the slope, and height won [m].
    speed, spacing : float
        Speed of the rope [m/s], and rope from one carrier to the next [m].
    places : int
        Persons on each carrier; every place is taken.
    ahead : float
        Rope that runs before the first carrier is at the bottom [m].
    acceleration, mass, friction : float
        Of a rider who starts from rest [m/s²], [kg], and of the skis on the snow.
    station_time : float
        Time of one round that a carrier spends in the two stations [s].
    """

    length: float
    rise: float
    speed: float
    spacing: float
    places: int
    ahead: float
    acceleration: float
    mass: float
    friction: float
    station_time: float

    def passes(self, place, until):
        """Return when carriers pass a place, one after another, up to a time."""
        carriers = np.arange(int(until * self.speed / self.spacing) + 1)
        return (self.ahead + carriers * self.spacing + place) / self.speed

    def window(self, seconds):
        """Return a window that begins when the first carriers have long been up."""
        begin = 1.5 * self.passes(self.length, 0)[0]
        return begin, begin + seconds

    def persons_past(self, place, begin, end):
        """Count persons past a place in a window: its first moment is in it, its last one is not."""
        times = self.passes(place, end)
        return self.places * int(np.count_nonzero((times >= begin) & (times < end)))

    def pull(self):
        """Return the pull along the slope that keeps one rider going: weight along it, and friction across it."""
        angle = np.arcsin(self.rise / self.length)
        return self.mass * GRAVITY * (np.sin(angle) + self.friction * np.cos(angle))


def made_lines(number=100, seed=13):
    """Return lines with numbers of belts, rope tows, platters and chairs.

    On every tenth the length is a whole number of spacings, where one rider grabs just as another lets go.
    """
    generator, lines = np.random.default_rng(seed), []
    ranges = (  # length [m], speed [m/s], rope from one to the next in seconds of running, places
        ((20, 150), (0.5, 1.2), (2.5, 5), (1,)),
        ((60, 300), (1.5, 4), (1.8, 4), (1,)),
        ((150, 700), (1.8, 3.2), (3, 8), (1, 2)),
        ((300, 1500), (1.8, 5), (5, 12), (2, 3, 4, 6)),
    )
    for each in range(number):
        lengths, speeds, seconds, places = ranges[each % len(ranges)]
        length, speed = generator.uniform(*lengths), generator.uniform(*speeds)
        spacing = speed * generator.uniform(*seconds)
        if each % 10 == 0:
            length = spacing * round(length / spacing)
        lines.append(
            Line(
                length=length,
                rise=length * generator.uniform(0.08, 0.4),
                speed=speed,
                spacing=spacing,
                places=int(generator.choice(places)),
                ahead=generator.uniform(0, spacing),
                acceleration=generator.uniform(0.8, 3),
                mass=generator.uniform(40, 100),
                friction=generator.uniform(0.03, 0.12),
                station_time=generator.uniform(20, 150),
            )
        )
    return lines


def heads_over_time(came, gone, persons=1):
    """Return event times and the heads there are from each of them to the next.

    Of two events at one moment the one who comes is first: at that moment both are there.
    """
    times = np.round(np.concatenate([came, gone]), SAME_MOMENT)
    change = np.repeat([persons, -persons], [len(came), len(gone)])
    order = np.lexsort((-change, times))
    return times[order], np.cumsum(change[order])


def mean_heads(times, heads, begin, end):
    """Return the mean over time of the heads in a window: each number of heads counts as long as it lasts."""
    inside = np.clip(times, begin, end)
    return np.sum(heads[:-1] * np.diff(inside)) / (end - begin)


def persons_of_a_mix(generator, kinds):
    """Return the spacings of riders who come in no order: so many of each kind, each with its spacing."""
    riders = np.repeat([spacing for spacing, _ in kinds], [many for _, many in kinds])
    return generator.permutation(riders)


def followed_ride(line):
    """Follow one rider from rest at the grab to the top: return the time it took, and the work that the rope did.

    The rope pulls with what keeps the rider going and what makes the rider faster, and runs at its own speed meanwhile.
    Force times rope that ran by is added up, step after step.
    """
    longest = 3 * line.length / line.speed + line.speed / line.acceleration
    moments = np.arange(0, longest, STEP)
    speeds = np.minimum(line.acceleration * moments, line.speed)
    covered = np.cumsum((speeds[1:] + speeds[:-1]) / 2 * STEP)
    steps = int(np.argmax(covered >= line.length)) + 1
    force = line.pull() + line.mass * np.diff(speeds[: steps + 1]) / STEP
    return steps * STEP, float(np.sum(force * line.speed * STEP))


def carriers_taken_from_the_shed(line):
    """Run a loop with stations, and return how many carriers it takes until each start finds one that is back.

    One leaves the bottom every time that a spacing of rope has run. If none is back by then, the shed gives a new one.
    """
    back, taken = [], 0
    one_way = line.length / line.speed
    for start in line.passes(0, 4 * one_way + 2 * line.station_time):
        if back and back[0] <= start:
            heapq.heappop(back)
        else:
            taken += 1
        at_the_top = start + one_way
        leaves_the_top = at_the_top + line.station_time / 2
        heapq.heappush(back, leaves_the_top + one_way + line.station_time / 2)
    return taken


def persons_past_of_a_loop(line, carriers, in_service, rounds):
    """Run a closed loop for whole rounds; return the persons who pass a place, and the time that took.

    Numbers of carriers are their places on the rope; who is out leaves a place empty.
    """
    loop = carriers * line.spacing
    watched_from = line.spacing / 3  # between two carriers
    persons = 0
    for each in in_service:
        run = each * line.spacing
        while run < watched_from:
            run += loop
        while run < watched_from + rounds * loop:
            persons += line.places
            run += loop
    return persons, rounds * loop / line.speed


def riders_who_reach_the_fallen(line, rope_runs_on):
    """Count the fallen rider, and each behind whom the rope still brings to that place before it stands."""
    behind, reached = 0.0, 0
    while behind <= rope_runs_on + SAME_PLACE:
        reached += 1
        behind += line.spacing
    return reached


def laps_of_a_crowd(crowd, away, loading, laps, together=False):
    """Let a crowd ski laps; return those who loaded while one of them made some laps, and the time of it.

    Who comes first loads first, one at a time. A crowd that keeps together begins its next lap when the last is back.
    """
    comes_to_load, free = deque([0.0] * crowd), 0.0
    of_the_first = []  # turns of one of them: how many have loaded before, and when it is
    for loaded in range(crowd * (LAPS_BEFORE + laps) + 1):
        if loaded % crowd == 0 and together:
            comes_to_load = deque([max(comes_to_load)] * crowd)
        starts = max(comes_to_load.popleft(), free)
        if loaded % crowd == 0:  # nobody overtakes
            of_the_first.append((loaded, starts))
        free = starts + loading
        comes_to_load.append(free + away)
    (loaded_before, begin), (loaded_then, end) = of_the_first[LAPS_BEFORE], of_the_first[-1]
    return loaded_then - loaded_before, end - begin


def waits_by_lindley(generator, gaps, loading_times, runs, riders, left_out):
    """Return the mean wait of each run of each line, rider after rider, riders who come in no order.

    A rider waits as long as the one before waited and loaded, less the time between the two: never less than none.
    """
    gaps, loading_times = np.repeat(gaps, runs), np.repeat(loading_times, runs)
    wait, total = np.zeros(gaps.size), np.zeros(gaps.size)
    for rider in range(riders):
        wait += loading_times
        wait -= gaps * generator.standard_exponential(gaps.size)
        np.maximum(wait, 0.0, out=wait)
        if rider >= left_out:
            total += wait
    return (total / (riders - left_out)).reshape(-1, runs)
