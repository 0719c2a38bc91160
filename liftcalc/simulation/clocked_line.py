"""A line for carriers with several seats that come by the clock, solved from one carrier to the next."""

import numpy as np

from liftcalc.formulas.conditions import cannot_keep_up
from liftcalc.units import PlainError, Q, checked_magnitude, parsed_unit

MOST_SEATS = 250


def mean_wait_for_carriers(arrival_rate, interval, persons_per_carrier):
    """Return the mean wait for carriers that come by the clock, where riders come one by one and without order.

    Each carrier takes as many as stand there, up to its seats; those who are left wait for the next. No seat stays
    empty while somebody waits: it is the shortest wait that so many seats can give.

    Parameters
    ----------
    arrival_rate : Quantity [person/hour]
        Persons an hour who join the line.
    interval : Quantity [s]
        Time from one carrier to the next.
    persons_per_carrier : Quantity [person]
        Seats of a carrier: a whole number.

    Returns
    -------
    Quantity [s]
        Mean time in line until a rider's own carrier is there.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    PlainError
        If an argument is no single value above zero, if the seats are no whole number, or if as many persons join as
        there are seats, or more.

    Notes
    -----
    The mean number left behind by a carrier with n seats is

        L = sum(1 / (1 - z_k), k = 1 ... n - 1) - (n (n - 1) - m^2) / (2 (n - m)), with m the arrivals in an interval

    and z_k = exp(2 pi i k / n) exp((m / n) (z_k - 1)) the places in the unit circle where z^n = exp(m (z - 1)). Those
    who come in an interval wait half of it on average: W = t (L / m + 1/2). With one seat it is
    ``mean_wait_for_carrier``.

    Source: own derivation, by the generating function of the number left behind; the tests solve its Markov chain, and
    run the line.

    Examples
    --------
    >>> from liftcalc import show
    >>> show(mean_wait_for_carriers(Q(900, "pph"), Q(6, "s"), Q(2, "person")))
    '6.9 s'
    """
    taken = (
        ("arrival_rate", arrival_rate, "person/hour"),
        ("interval", interval, "s"),
        ("persons_per_carrier", persons_per_carrier, "person"),
    )
    numbers = [checked_magnitude("mean_wait_for_carriers", *each, parsed_unit(each[-1]), "positive") for each in taken]
    for (name, _, _), number in zip(taken, numbers, strict=True):
        if np.ndim(number):
            raise PlainError(f"mean_wait_for_carriers: {name} must be one value, but got {np.size(number)}. Give one.")
    hourly, seconds, seats = numbers
    if seats != round(seats) or seats > MOST_SEATS:
        raise PlainError(
            f"mean_wait_for_carriers: persons_per_carrier must be a whole number, {MOST_SEATS} at most, but got "
            f"{seats:g}. Write for example Q(2, 'person')."
        )
    come = hourly * seconds / 3600
    if come >= seats:
        raise PlainError(f"mean_wait_for_carriers: {cannot_keep_up(hourly, seconds / seats)}")
    from scipy.special import lambertw

    full = come / seats
    places = -lambertw(-full * np.exp(2j * np.pi * np.arange(1, seats) / seats - full)) / full
    left_behind = np.sum(1 / (1 - places)).real - (seats * (seats - 1) - come**2) / (2 * (seats - come))
    return Q(float(seconds * (left_behind / come + 0.5)), "s")
