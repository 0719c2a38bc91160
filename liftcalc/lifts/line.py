"""A line of a lift of any kind, and an installation of one or more lines, read from a table.

A line is described by whatever is known of it, as long as the rest follows: ``line_from``.
"""

import math
from dataclasses import dataclass, field

from pint import Quantity

from liftcalc.formulas.capacity import hourly_capacity, vertical_transport
from liftcalc.formulas.carriers import detachable_carriers
from liftcalc.formulas.riders import carriers_on_loop, persons_from_flow
from liftcalc.formulas.spacing import headway
from liftcalc.levels import Capacity
from liftcalc.lifts.givens import DisagreementError, LineSolution, NotKnownError, solve_line
from liftcalc.lifts.kinds import KINDS, NOT_READ, kind_named, ride_time_of, start_not_read
from liftcalc.lifts.starts import with_trip_time, without_start
from liftcalc.quantity_text import as_received, show
from liftcalc.units import PlainError, Q, UnitError


@dataclass(frozen=True)
class Line:
    """One line of a lift: its own rope, speed and motor.

    Parameters
    ----------
    name : str
        Name of the line.
    kind : str
        A key of ``KINDS``.
    line_speed : Quantity [m/s]
        Speed of the haul rope or belt.
    spacing : Quantity [m]
        Distance from one rider, or one carrier, to the next.
    ridden_length : Quantity [m]
        Length along the rope from grab to let-go.
    vertical_rise : Quantity [m]
        Height gained.
    persons_per_carrier : Quantity [person]
        Riders side by side, or on one carrier.
    motor_power : Quantity [kW] or None
        Rated power of the motor; None where it is not known.
    level : str
        Level of the spacing, and so of the capacity: "packing", "ideal", "governed" or "counted".
    sheave_distance : Quantity [m] or None
        Length along the line from sheave to sheave; where it is not known, the ridden length stands in for it.
    station_time : Quantity [s] or None
        Time of one carrier off the rope, in both stations of a detachable lift.
    dwell_time : Quantity [s] or None
        Time that the cabins of a reversible lift stand between two trips.
    pick_up_acceleration : Quantity [m/s**2] or None
        How hard riders speed up who stand still at the grab: on a rope or handle tow, a platter, a T-bar.
    acceleration : Quantity [m/s**2] or None
        How hard the cabins of a reversible lift speed up and slow.

    Raises
    ------
    UnitError
        If a quantity has no unit, or one of another kind.
    PlainError
        If the kind or the level is not known, a quantity is not greater than zero, or the ride ends before its riders
        have the speed of the rope.
    """

    name: str
    kind: str
    line_speed: Quantity
    spacing: Quantity
    ridden_length: Quantity
    vertical_rise: Quantity
    persons_per_carrier: Quantity = field(default_factory=lambda: Q(1, "person"))
    motor_power: Quantity | None = None
    level: str = "ideal"
    sheave_distance: Quantity | None = None
    station_time: Quantity | None = None
    dwell_time: Quantity | None = None
    pick_up_acceleration: Quantity | None = None
    acceleration: Quantity | None = None

    def __post_init__(self):
        if self.kind not in (*KINDS, NOT_READ):
            raise PlainError(f"Line: kind must be one of {', '.join(KINDS)}, but got {self.kind!r}.")
        self.capacity, self.ride_time, self.vertical_transport  # noqa: B018  each refuses what it cannot use
        if self.vertical_rise >= self.ridden_length:
            raise PlainError(
                f"Line: vertical_rise must be less than the ridden length of {show(self.ridden_length)}, but got "
                f"{show(self.vertical_rise)}. Write the length along the slope, and the height gained."
            )
        if self.motor_power is not None:
            power = self.motor_power
            if not isinstance(power, Quantity) or not power.check("[power]") or not power.magnitude > 0:
                raise UnitError(
                    f"Line: motor_power must be a power above zero, but got {as_received(power)}. Write Q(15, 'kW')."
                )

    @property
    def capacity(self):
        """Hourly capacity with its level."""
        return Capacity(hourly_capacity(self.line_speed, self.spacing, self.persons_per_carrier), self.level)

    @property
    def interval(self):
        """Time from one carrier to the next."""
        return headway(self.line_speed, self.spacing)

    @property
    def ride_time(self):
        """Time from grab to let-go, the start from rest included; where it was not read, ``start_not_read`` says so."""
        return ride_time_of(self.kind, vars(self))

    @property
    def start_not_read(self):
        """Words for a ride time from which the start is missing; empty where nothing is."""
        return start_not_read(self.kind, vars(self))

    @property
    def persons_on_line(self):
        """Average number of riders on the line: flow times ride time.

        Not length over spacing: riders who start from rest bunch up at the bottom, so they are counted in seconds.
        """
        return persons_from_flow(self.capacity.value, self.ride_time)

    @property
    def carriers_on_loop(self):
        """Carriers on the whole loop; None where there are none, or where the time in the stations is not known."""
        kind, length = kind_named(self.kind), self.sheave_distance or self.ridden_length
        if kind.reversible:
            return Q(2, "")
        if kind.detachable:
            if self.station_time is None:
                return None
            return detachable_carriers(length, self.line_speed, station_time=self.station_time, interval=self.interval)
        return carriers_on_loop(sheave_distance=length, spacing=self.spacing) if kind.has_carriers else None

    @property
    def vertical_transport(self):
        """Vertical transport feet per hour."""
        return vertical_transport(self.capacity.value, self.vertical_rise)


def line_from(name, kind, *, vertical_rise, motor_power=None, level="ideal", dwell_time=None, station_time=None,
                  pick_up_acceleration=None, acceleration=None, **givens):  # fmt: skip
    r"""Return a line of any kind from whatever is known of it, as long as the rest follows.

    Parameters
    ----------
    name, kind, level : str
        As for ``Line``.
    vertical_rise : Quantity [m]
        Height gained.
    motor_power : Quantity [kW] or None
        Rated power of the motor; None where it is not known.
    dwell_time : Quantity [s] or None
        Time that the cabins of a reversible lift stand in the stations between two trips.
    station_time : Quantity [s] or None
        Time of one carrier off the rope, in both stations of a detachable lift.
    pick_up_acceleration, acceleration : Quantity [m/s**2] or None
        How hard riders speed up who stand still at the grab; how hard the cabins of a reversible lift speed up and
        slow. With it a ride time, or riders on the line, have their start taken off before the rest is worked out.
    **givens : Quantity
        What is known: line_speed, spacing, interval, persons_per_carrier, carriers_on_loop, sheave_distance,
        ridden_length, ride_time, riders_on_line, hourly_capacity, as for ``solve_line``.

    Returns
    -------
    Line
        The line.

    Raises
    ------
    NotKnownError
        If line speed, spacing or ridden length do not follow; the message says what more would give them.
    DisagreementError
        If there are figures to spare, and they disagree.
    UnitError, PlainError
        If a value has no unit, one of another kind, or belongs to another kind of lift.

    Notes
    -----
    A reversible lift brings a cabin every ride time and dwell time together; its spacing is the rope that would run by
    meanwhile, so that one formula serves it, too. A detachable lift with K carriers brings one every
    (2 D / v + station time) / K. A ride from rest takes L / v + v / (2 a), one from rest to rest L / v + v / a.

    Examples
    --------
    >>> from liftcalc import Q
    >>> chair = line_from("Upper Chair", "fixed chair", vertical_rise=Q(90, "m"), hourly_capacity=Q(1200, "pph"),
    ...     persons_per_carrier=Q(2, "person"), ride_time=Q(200, "s"), ridden_length=Q(440, "m"))
    >>> show(chair.spacing), show(chair.line_speed)
    ('13.2 m', '2.20 m/s')
    """
    given = what_follows(
        name, kind, dwell_time=dwell_time, station_time=station_time, pick_up_acceleration=pick_up_acceleration,
        acceleration=acceleration, **givens,
    )  # fmt: skip
    missing = [wanted for wanted in _MAKE_A_LINE if wanted not in given.values]
    if missing:
        try:
            given.solution.of(missing[0])
        except NotKnownError as error:
            raise NotKnownError(f"line_from: {name!r}: {str(error).removeprefix('of: ')}") from None
    return Line(
        name,
        kind,
        **given.values,
        vertical_rise=vertical_rise,
        motor_power=motor_power,
        level=level,
        station_time=station_time,
        dwell_time=dwell_time,
        pick_up_acceleration=pick_up_acceleration,
        acceleration=acceleration,
    )


@dataclass(frozen=True)
class Follows:
    """What follows of a line: those of the values that make it, by name, and the solution that they are of."""

    values: dict
    solution: LineSolution


def what_follows(name, kind, *, dwell_time=None, station_time=None, pick_up_acceleration=None, acceleration=None,
                 **givens):  # fmt: skip
    """Return those of the values that make a line which follow from what is known of it; others are not there.

    Parameters
    ----------
    name, kind, dwell_time, station_time, pick_up_acceleration, acceleration, **givens
        As for ``line_from``.

    Returns
    -------
    Follows
        Line speed, spacing, ridden length, persons per carrier and sheave distance, as far as they follow.

    Raises
    ------
    DisagreementError, UnitError, PlainError
        As for ``line_from``.
    """
    if kind not in (*KINDS, NOT_READ):
        raise PlainError(f"line_from: kind must be one of {', '.join(KINDS)}, but got {kind!r}.")
    own = kind_named(kind)
    for reading, value, belongs in (
        ("dwell_time", dwell_time, own.reversible),
        ("station_time", station_time, own.detachable),
        ("pick_up_acceleration", pick_up_acceleration, own.start_reading == "pick_up_acceleration"),
        ("acceleration", acceleration, own.start_reading == "acceleration"),
    ):
        _check_reading(kind, reading, value, belongs)
    has_carriers = own.has_carriers and not own.reversible
    standing = dwell_time
    if acceleration is not None:
        # a trip from rest to rest loses as much as one from rest with half the acceleration
        givens, lost = without_start(acceleration / 2, with_trip_time(dwell_time, givens))
        standing = None if dwell_time is None else dwell_time + lost
    elif pick_up_acceleration is not None:
        givens, _ = without_start(pick_up_acceleration, givens)
    if own.reversible and dwell_time is not None:
        givens = _with_dwell_time(name, dwell_time, standing, givens)
    if own.detachable and "carriers_on_loop" in givens:
        givens = _with_carriers(name, station_time, givens)
    solution = solve_line(has_carriers=has_carriers, **givens)
    known = {} if solution.spare else dict(solution.givens)  # as they came, where nothing was fitted
    values = {
        wanted: known.get(wanted, solution.values[wanted]) for wanted in _MAKE_A_LINE if wanted in solution.values
    }
    if "sheave_distance" in solution.values:
        values["sheave_distance"] = solution.of("sheave_distance")
    return Follows(values, solution)


def _check_reading(kind, reading, value, belongs):
    """Refuse a reading that is not of its kind, or of another kind of lift."""
    if value is None:
        return
    accelerates = reading.endswith("acceleration")
    what, write = (
        ("an acceleration above zero", "Q(1.5, 'm/s**2')") if accelerates else ("a time, zero or more", "Q(60, 's')")
    )
    good = isinstance(value, Quantity) and value.check("[acceleration]" if accelerates else "[time]")
    if not good or value.magnitude < 0 or (accelerates and value.magnitude == 0):
        raise UnitError(f"line_from: {reading} must be {what}, but got {as_received(value)}. Write {write}.")
    if not belongs:
        raise PlainError(f"line_from: {reading} is no reading of a {kind}, but got {show(value)}. Leave it out.")


_MAKE_A_LINE = ("line_speed", "spacing", "ridden_length", "persons_per_carrier")


def _with_dwell_time(name, dwell_time, standing, givens):
    """Return the givens of a reversible lift with the interval, or the ride time, that its dwell time makes.

    ``standing`` is the dwell time with what start and stop add to a ride at the speed of the rope.
    """
    known = solve_line(has_carriers=False, **givens)
    if "ride_time" not in known.values and "interval" in known.values:
        return givens | {"ride_time": known.of("interval") - standing}
    interval = known.of("ride_time") + standing
    _agree(name, f"a dwell time of {show(dwell_time)}, which makes", interval, givens.get("interval"))
    return givens | {"interval": givens.get("interval", interval)}


def _with_carriers(name, station_time, givens):
    """Return the givens of a detachable lift without its carriers, and with what they make: K t = 2 D / v + T."""
    others = {other: value for other, value in givens.items() if other != "carriers_on_loop"}
    known = solve_line(has_carriers=False, **others).values if others else {}
    missing = [word for word in ("line_speed", "sheave_distance", "interval") if word not in known]
    wanted = missing[:2] if len(missing) > 1 else []
    wanted += ["station_time"] if station_time is None else []
    if wanted:
        raise PlainError(
            f"line_from: the interval of {name!r} does not follow from carriers_on_loop without "
            f"{' and '.join(wanted)}. Give {' and '.join(wanted)}, or the interval itself."
        )
    carriers = givens["carriers_on_loop"]
    if not (isinstance(carriers, Quantity) and carriers.check("") and carriers.magnitude > 0):
        raise UnitError(
            f"line_from: carriers_on_loop must be a number above zero, but got {as_received(carriers)}. "
            "Write Q(60, '')."
        )
    if missing == ["line_speed"]:
        return others | {"line_speed": 2 * known["sheave_distance"] / (carriers * known["interval"] - station_time)}
    if missing == ["sheave_distance"]:
        return others | {"sheave_distance": known["line_speed"] * (carriers * known["interval"] - station_time) / 2}
    interval = (2 * known["sheave_distance"] / known["line_speed"] + station_time) / carriers
    _agree(name, f"{show(carriers)} carriers, which make", interval, known.get("interval"))
    return others | {"interval": known.get("interval", interval)}


def _agree(name, what, interval, other):
    """Refuse an interval that differs from the one of the other readings, and say by how much."""
    apart = 0.0 if other is None else abs(math.log((other / interval).m_as("")))
    if math.expm1(apart) > _AGREE:
        error = DisagreementError(
            f"line_from: {name!r} has {what} an interval of {show(interval, 's')}, but the other readings make it "
            f"{show(other)}. Count or time again."
        )
        error.apart, error.spare = math.expm1(apart), 1
        raise error


_AGREE = 0.01  # as solve_line allows
