"""Parties in front of a carrier lift: drawn, split where they are larger than a carrier, and lined up."""

import numpy as np

NOBODY = 127  # persons of a party that is none: it fits on no carrier


class PartyLine:
    """A line of parties in their order, a row a day, with the place of the first of them.

    Parameters
    ----------
    sizes : array of int
        Persons of each party.
    comes : array or None
        When each came [s]; None where all have come.
    generator : Generator
        Draws who is a child.
    rule : ChildRule or None
        The rule for children.
    """

    def __init__(self, sizes, comes, generator, rule):
        days, self.length = sizes.shape
        none = np.full((days, 1), NOBODY, np.int8)
        rides, self.aside, self.spare = sizes.astype(np.int8), None, None
        if rule is not None:
            children = generator.binomial(np.where(sizes == NOBODY, 0, sizes), rule.share)
            room = rule.an_adult * (np.where(sizes == NOBODY, 0, sizes) - children)
            aside = np.maximum(children - room, 0)
            rides = (sizes - aside).astype(np.int8)
            self.aside = np.hstack([aside, 0 * none]).astype(np.int8).ravel()
            self.spare = np.hstack([room - children + aside, 0 * none]).astype(np.int8).ravel()
        self.rides = np.hstack([rides, none]).ravel()
        self.comes = None if comes is None else np.hstack([comes, np.full((days, 1), np.inf)]).ravel()
        self.first_of_row = np.arange(days) * (self.length + 1)
        self.place = np.zeros(days, int)

    def of_first(self, array):
        """Return what an array says of the party at the front, a number a day."""
        return array.take(self.first_of_row + self.place)

    @property
    def empty(self):
        """On which days nobody is in it, nor will come."""
        return self.of_first(self.rides) == NOBODY

    def remove(self, rows, places):
        """Take parties out of the line, who have given up."""
        where = self.first_of_row[rows] + places
        self.rides[where] = 0
        if self.aside is not None:
            self.aside[where] = self.spare[where] = 0


def _shares(day):
    sizes, shares = (np.array(column) for column in zip(*day.parties, strict=True))
    return sizes, shares / shares.sum()


def split(sizes, seats):
    """Return rows of parties with those larger than a carrier split into full carriers and a rest.

    Parameters
    ----------
    sizes : array of int
        Persons of each party, a row a day; zero for none.
    seats : int
        Places of a carrier.

    Returns
    -------
    sizes, party : array of int
        Persons of each part, zero for none, and the number of the party that it is of.
    """
    if sizes.max(initial=0) <= seats:
        return sizes, np.broadcast_to(np.arange(sizes.shape[1]), sizes.shape)
    parts = -(-sizes // seats)
    in_row = parts.sum(axis=1)
    row = np.repeat(np.arange(sizes.shape[0]), in_row)
    place = np.arange(row.size) - (np.cumsum(in_row) - in_row)[row]
    party = np.repeat(np.broadcast_to(np.arange(sizes.shape[1]), sizes.shape).ravel(), parts.ravel())
    is_last = np.append((np.diff(party) != 0) | (np.diff(row) != 0), True)
    whole = sizes[row, party]
    found = np.zeros((sizes.shape[0], int(in_row.max(initial=0))), sizes.dtype)
    numbers = np.zeros(found.shape, int)
    found[row, place] = np.where(is_last, whole - seats * (parts[row, party] - 1), seats)
    numbers[row, place] = party
    return found, numbers


def standing_lines(day, carriers, days, generator):
    """Return the line of groups, the line of singles, and how many singles came before each group.

    A line stands all day: people come until a group stands at the front.

    Returns
    -------
    PartyLine, PartyLine or None, array or None
        Without a line for singles, all are in the first.
    """
    sizes, shares = _shares(day)
    splits = day.singles_line and shares[sizes > 1].sum() > 0
    if splits and 1 in sizes.tolist():
        alone, sizes, shares = shares[sizes == 1][0], sizes[sizes > 1], shares[sizes > 1] / shares[sizes > 1].sum()
    else:
        alone = 0.0
    parts = np.ceil(sizes / day.seats)
    mean = float(shares @ sizes / (shares @ parts))
    if day.children is not None:
        mean *= max(_part_that_rides(day), 0.01)
    wanted = int(1.05 * carriers * day.seats / mean / float(shares @ parts)) + 100
    drawn = sizes.astype(np.int8)[
        np.minimum(np.searchsorted(np.cumsum(shares), generator.random((days, wanted)), side="right"), sizes.size - 1)
    ]
    groups, _ = split(drawn, day.seats)
    groups = PartyLine(np.where(groups == 0, NOBODY, groups), None, generator, day.children)
    if not alone:
        return groups, None, None
    before = np.cumsum(generator.geometric(1 - alone, (days, groups.length + 1)) - 1, axis=1)
    most = int(min(before[:, -1].max(), 1.05 * carriers * day.seats / max(1 - _children(day), 0.1) + 100))
    singles = PartyLine(np.ones((days, most), np.int8), None, generator, day.children)
    return groups, singles, before.ravel()


def _children(day):
    return 0.0 if day.children is None else day.children.share


def _part_that_rides(day):
    """Return at least what part of the parties' persons rides without waiting for an adult of another party."""
    return 1 - day.children.share


def joined(day, arrivals, own_length, generator):
    """Return the parties that people make who come one after another; a party joins when the last of it is there.

    Parameters
    ----------
    day : CarrierDay
        The day.
    arrivals : array
        When persons come [s], in order, a row a day; endless for nobody.
    own_length : array or None
        The line at which each person goes away, in the same order: a party goes by its last person.
    generator : Generator
        Draws the parties.

    Returns
    -------
    comes, sizes, own_length, party : array
        Of each party, or part of one larger than a carrier: when it joins, persons, the line at which it goes away,
        and the number of the party.
    """
    days, riders = arrivals.shape
    sizes, shares = _shares(day)
    drawn = generator.choice(sizes, (days, riders), p=shares)
    ends = np.cumsum(drawn, axis=1)
    came = np.isfinite(arrivals).sum(axis=1)[:, None]
    drawn = np.clip(drawn - np.maximum(ends - came, 0), 0, None)  # the last party is cut short
    drawn = drawn[:, : max(int((drawn > 0).sum(axis=1).max(initial=0)), 1)]
    last = np.clip(np.cumsum(drawn, axis=1) - 1, 0, riders - 1)
    parts, party = split(drawn, day.seats)
    of_part = np.take_along_axis(last, party, axis=1)
    comes = np.where(parts > 0, np.take_along_axis(arrivals, of_part, axis=1), np.inf)
    lengths = None if own_length is None else np.take_along_axis(own_length, of_part, axis=1)
    return comes, parts.astype(int), lengths, party


def arriving_lines(day, comes, sizes, generator):
    """Return the line of groups, the line of singles or None, and the place of each party in its own line.

    Parameters
    ----------
    day, comes, sizes
        As ``joined`` returns them.
    generator : Generator
        Draws who is a child.
    """
    there = np.where(np.isfinite(comes), sizes, NOBODY)
    if not day.singles_line:
        return PartyLine(there, comes, generator, day.children), None, None
    lines, places = [], []
    for mask in (there != 1, there == 1):
        place = np.cumsum(mask, axis=1) - 1
        row, column = np.nonzero(mask)
        shape, at = (mask.shape[0], int(place[:, -1].max()) + 1), place[row, column]
        persons, times = np.full(shape, NOBODY), np.full(shape, np.inf)
        persons[row, at], times[row, at] = there[row, column], comes[row, column]
        lines.append(PartyLine(persons, times, generator, day.children))
        places.append(place)
    return *lines, np.where(there == 1, places[1], places[0])
