"""How full carriers leave while a line stands: parties that are not split, with and without a line for singles."""

from collections import deque

import numpy as np

from liftcalc.units import PlainError

ADD_UP = 0.005  # by which shares may miss one, as written in whole per cent


def _of_parties(parties, seats, counted_by):
    """Return the share of each size of party, from 1 to the seats, counted by party."""
    if not isinstance(seats, int) or isinstance(seats, bool) or seats < 1:
        raise PlainError(f"fill: seats must be a whole number, one or more, but got {seats!r}. Write 4.")
    if counted_by not in ("party", "rider"):
        raise PlainError(f"fill: counted_by must be 'party' or 'rider', but got {counted_by!r}.")
    shares = np.zeros(seats + 1)
    for size, share in parties.items():
        if size not in range(1, seats + 1):
            raise PlainError(f"fill: a party of {size} does not fit on {seats} seats. Give sizes from 1 to {seats}.")
        if not 0 <= share <= 1:
            raise PlainError(f"fill: the share of parties of {size} must lie from 0 to 1, but got {share:g}.")
        shares[size] = share / (size if counted_by == "rider" else 1)
    total = sum(parties.values())
    if abs(total - 1) > ADD_UP:
        raise PlainError(f"fill: the shares add up to {total:g}. Write shares that add up to 1.")
    return shares / shares.sum()


def fill_in_order(parties, seats, counted_by="party"):
    """Return the share of seats that are taken where parties board in their order and none is split.

    A carrier takes parties from the line as long as the next one fits; the one that does not fit is the first on the
    next carrier. So the size of that party is all that a carrier hands on, and its chain has an exact answer.

    Parameters
    ----------
    parties : dict of int to float
        Share of each size of party; the shares add up to 1.
    seats : int
        Persons per carrier.
    counted_by : str
        Whether the shares count parties ("party") or the riders in them ("rider").

    Returns
    -------
    float
        Mean persons on a carrier over its seats, while a line stands.
    """
    shares = _of_parties(parties, seats, counted_by)
    sizes = [size for size in range(1, seats + 1) if shares[size] > 0]
    hands_on, carries = np.zeros((seats + 1, seats + 1)), np.zeros(seats + 1)
    for first in sizes:
        load = np.zeros(seats + 1)  # chance that the carrier has come to this load
        load[first] = 1.0
        for now in range(first, seats + 1):
            for size in sizes:
                if now + size <= seats:
                    load[now + size] += load[now] * shares[size]
                else:
                    hands_on[first, size] += load[now] * shares[size]
                    carries[first] += now * load[now] * shares[size]
    chain = hands_on[np.ix_(sizes, sizes)]
    steady = np.vstack([chain.T - np.eye(len(sizes)), np.ones(len(sizes))])
    weights = np.linalg.lstsq(steady, np.append(np.zeros(len(sizes)), 1.0), rcond=None)[0]
    return float(weights @ carries[sizes] / seats)


def fill_with_singles(parties, seats, seed, counted_by="party", carriers=20_000):
    """Return the share of seats that are taken where singles stand in a line of their own and fill what is left.

    Parameters
    ----------
    parties, seats, counted_by
        As for ``fill_in_order``. The same people come: whoever is alone goes to the line for singles.
    seed : int
        Start of the random numbers.
    carriers : int
        How many carriers are filled.

    Returns
    -------
    float
        Mean persons on a carrier over its seats, while a line of groups stands; simulated.
    """
    shares = _of_parties(parties, seats, counted_by)
    if shares[1] > 1 - 1e-12:
        return 1.0
    generator = np.random.default_rng(seed)
    sizes, number = generator.choice(seats + 1, carriers * seats, p=shares).tolist(), 0
    groups, singles, carried, filled = deque(), 0, 0, 0
    while filled < carriers and number < len(sizes):
        load = 0
        while True:
            while not groups and number < len(sizes):  # people come until a group stands at the front
                singles, number = singles + (sizes[number] == 1), number + 1
                if sizes[number - 1] > 1:
                    groups.append(sizes[number - 1])
            if not groups or load + groups[0] > seats:
                break
            load += groups.popleft()
        alone = min(seats - load, singles)
        singles, carried, filled = singles - alone, carried + load + alone, filled + 1
    return carried / (filled * seats)
