"""Every kind of lift by one entry, and the ways in which lifts move people.

To add a kind of lift, add one entry to ``KINDS``: no formula, limit or table names a kind. An entry holds functions,
not names to be looked up: how a kind costs energy stands in its entry, and no chain of ifs asks for it.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from liftcalc.formulas.conditions import PULLS_ALONG
from liftcalc.formulas.pull import (
    belt_drag,
    carrier_work,
    conveyor_work,
    energy_per_rider,
    momentum_energy,
    ride_work,
    sheave_drag,
    tether_relief,
)
from liftcalc.formulas.riders import ride_time, ride_time_from_rest, ride_time_rest_to_rest
from liftcalc.units import Q
from liftcalc.vocabulary import words_of


@dataclass(frozen=True)
class Riding:
    """One way in which lifts move people.

    Parameters
    ----------
    words : str
        The way in words.
    on_the_ground : bool or None
        Whether riders stay on the snow, or on a belt that lies on it, also when the lift stops; None if not known.
    work_readings : tuple of str
        Readings that the work of one ride needs, beside rise, length and the mass of a rider.
    work : function
        From the values of a line to the work of one ride at a steady speed [J].
    drag_readings : tuple of str
        Readings that give the idle drag where no reading of the drag itself is there; empty if nothing else gives it.
    drag : function
        From the values of a line to its idle drag [N].
    relief : function
        From the values of a line to the part of a pull along the slope that the rope feels [].
    from_rest : bool
        Whether riders stand still until the rope takes them along, and so ride for longer than length over speed. It
        sets the ride time; what the pick-up costs in energy is said by the kind's ``PickUp``.
    conditions : tuple of Condition
        What work and relief ask of the readings beside unit and sign.
    evacuation : str
        What is usual of a plan to bring riders down, in a few words; what is required the authority says, and no table.
    """

    words: str
    on_the_ground: bool | None
    work_readings: tuple
    work: Callable
    drag_readings: tuple = ()
    drag: Callable | None = None
    relief: Callable = lambda values: Q(1.0, "")
    from_rest: bool = False
    conditions: tuple = ()
    evacuation: str = "ask the authority"


def map_length(values):
    """Return the horizontal run of a ride from its length along the slope and its rise."""
    length, rise = values["ridden_length"].m_as("m"), values["vertical_rise"].m_as("m")
    return Q(np.sqrt(length**2 - rise**2), "m")


def _path(values):
    return {"vertical_rise": values["vertical_rise"], "horizontal_run": map_length(values)}


def _relief(values):
    """Return what part of a pull along the slope the rope feels: less than 1 through a tether at an angle."""
    angle = values.get("tether_angle")
    return Q(1.0, "") if angle is None else tether_relief(angle, values["snow_friction"])


def _work_on_skis(values):
    """Return the work of a ride on skis; a tether at an angle takes some weight off them."""
    return ride_work(values["rider_mass"], **_path(values), snow_friction=values["snow_friction"]) * _relief(values)


def _work_carried(values):
    return carrier_work(values["rider_mass"], **_path(values), sheave_drag_share=values["sheave_drag_share"])


def _work_on_a_belt(values):
    return conveyor_work(values["rider_mass"], **_path(values), bed_friction=values["bed_friction"])


def _drag_of_sheaves(values):
    return sheave_drag(values["hanging_mass"], values["sheave_drag_share"])


def _drag_of_the_belt(values):
    frictions = {name: values[name] for name in ("bed_friction", "return_friction")}
    return belt_drag(values["belt_mass_per_length"], map_length(values), **frictions)


ON_SKIS = Riding(
    "drawn on skis", True, ("snow_friction",), _work_on_skis, relief=_relief, from_rest=True, conditions=(PULLS_ALONG,)
)
CARRIED = Riding(
    "carried in the air",
    False,
    ("sheave_drag_share",),
    _work_carried,
    ("hanging_mass", "sheave_drag_share"),
    _drag_of_sheaves,
    evacuation="usual for carried riders; ask the authority",
)
ON_A_BELT = Riding(
    "carried on a belt", True, ("bed_friction",), _work_on_a_belt,
    ("belt_mass_per_length", "bed_friction", "return_friction"), _drag_of_the_belt,
)  # fmt: skip


def felt_mass(kind, values):
    """Return the mass of a rider as the rope feels it in a start: a tether at an angle lifts, and so skis rub less."""
    return values["rider_mass"] * kind_named(kind).riding.relief(values)


def _slipping(values, work):
    """Return the energy of a pick-up in which hands or reel slip while the rider speeds up steadily."""
    length = values["ridden_length"]
    rest = (values[name] for name in ("rider_mass", "line_speed", "pick_up_acceleration"))
    return energy_per_rider(work / length, length, *rest) - work


def _at_once(values, work):
    return momentum_energy(values["rider_mass"], values["line_speed"])


def _in_the_station(values, work):
    """Return half of the momentum's part: speeded up smoothly from rest or creeping speed, nothing slips."""
    return momentum_energy(values["rider_mass"], values["line_speed"]) / 2


@dataclass(frozen=True)
class PickUp:
    """How riders are brought up to line speed: in words, the readings it needs, and its energy [J].

    ``energy`` is a function of the values of a line, with the mass of a rider as the rope feels it, and of the work of
    one ride.
    """

    words: str
    readings: tuple
    energy: Callable


SLIPPING = PickUp("hands or reel slip until the rider has the speed of the rope", ("pick_up_acceleration",), _slipping)
AT_ONCE = PickUp("taken along at line speed", (), _at_once)
IN_THE_STATION = PickUp("speeded up in the station", (), _in_the_station)


@dataclass(frozen=True)
class Kind:
    """What is common to all lifts of one kind.

    Parameters
    ----------
    name : str
        Name of the kind, as the trade says it.
    riding : Riding
        How it moves people.
    pick_up : PickUp
        How it brings them up to speed.
    has_carriers : bool
        Whether carriers hang on a loop; without them riders choose their own spacing.
    comes_at : str
        How the carrier comes to the rider: at "line speed", at "line speed less carpet speed", at "station speed" (it
        leaves the rope in the station), or at "rest" (it stands while people get in: a lift that runs to and fro).
    hazards : str
        The kind's own hazards, in one sentence.
    held_by_hand : bool
        Whether riders hold on by hand, and let go when the lift stops.
    end_of_axis : float
        Line speed [m/s] at which a chart of this kind ends; it says nothing of what may be run.
    """

    name: str
    riding: Riding
    pick_up: PickUp
    has_carriers: bool
    hazards: str
    comes_at: str = "line speed"
    held_by_hand: bool = False
    end_of_axis: float = 6.0

    @property
    def on_the_ground(self):
        """Whether riders stay on the ground when the lift stops."""
        return self.riding.on_the_ground

    @property
    def detachable(self):
        """Whether carriers leave the rope in the stations."""
        return self.comes_at == "station speed"

    @property
    def reversible(self):
        """Whether two cabins run to and fro."""
        return self.comes_at == "rest"

    @property
    def start_reading(self):
        """Name of the reading that the start of a ride needs, and its end where it ends at rest; None for no start."""
        if self.reversible:
            return "acceleration"
        return "pick_up_acceleration" if self.riding.from_rest else None

    @property
    def on_a_stop(self):
        """Where riders are when the lift stops, in a few words."""
        return {True: "on the ground", False: "in the air", None: "not known"}[self.on_the_ground]


KINDS = {
    kind.name: kind
    for kind in (
        Kind(
            "rope tow", ON_SKIS, SLIPPING, has_carriers=False, held_by_hand=True,
            hazards="The rope turns, winds in hair, scarves and straps, and carries whoever is caught towards the "
            "sheave; where it rises, it lifts light riders.",
        ),
        # a handle jerks: its energy is that of a blow, m v^2, also where a pick-up makes the ride longer (0.7 % low)
        Kind(
            "handle tow", ON_SKIS, AT_ONCE, has_carriers=True, held_by_hand=True,
            hazards="A handle jerks at the start, and draws whoever does not let go at the top towards the sheave.",
        ),
        Kind(
            "platter lift", ON_SKIS, SLIPPING, has_carriers=True,
            hazards="A tether that is let go too early swings; clothing and straps catch on the plate.",
        ),
        Kind(
            "T-bar lift", ON_SKIS, SLIPPING, has_carriers=True,
            hazards="The bar swings free at the top; two riders of unlike height fall more often.",
        ),
        Kind(
            "conveyor", ON_A_BELT, AT_ONCE, has_carriers=False, end_of_axis=1.2,
            hazards="Hands, hair and loose clothing are drawn in at the ends of the belt; riders pile up at the top.",
        ),
        Kind(
            "fixed chair", CARRIED, AT_ONCE, has_carriers=True, end_of_axis=4.0,
            hazards="Falls from the chair; a chair that strikes whoever is late at loading or slow to leave, or "
            "crushes them against a ramp or a post.",
        ),
        Kind(
            "fixed chair with carpet", CARRIED, AT_ONCE, has_carriers=True, comes_at="line speed less carpet speed",
            end_of_axis=4.0,
            hazards="As a fixed chair; besides, a gate, a carpet and a chair that must keep step.",
        ),
        Kind(
            "detachable chair", CARRIED, IN_THE_STATION, has_carriers=True, comes_at="station speed", end_of_axis=7.0,
            hazards="Falls from the chair; crushing between chairs in a station; long and high spans, so that a stop "
            "leaves many people in the air.",
        ),
        Kind(
            "gondola", CARRIED, IN_THE_STATION, has_carriers=True, comes_at="station speed", end_of_axis=7.0,
            hazards="Crushing by doors, and between cabins in a station; people out of sight of any attendant while "
            "they ride.",
        ),
        Kind(
            "reversible tram", CARRIED, IN_THE_STATION, has_carriers=True, comes_at="rest", end_of_axis=12.0,
            hazards="Crushing by doors, and between cabin and platform; many people in one cabin, high above the "
            "ground.",
        ),
    )
}  # fmt: skip

NOT_READ = "not read"
# a lift of which nobody wrote down the kind: whatever needs the kind lacks a reading of it. Whether riders start from
# rest is not known either: a pick-up that was read says so
_NO_KIND = Kind(
    NOT_READ,
    Riding("in a way that was not read", None, ("kind",), work=None, from_rest=True),
    PickUp("in a way that was not read", ("kind",), energy=None),
    has_carriers=False,
    hazards="Not known here, since the kind was not read: ask the operator.",
)


def kind_named(name):
    """Return the kind of a name; for "not read" one that lacks whatever a kind would say."""
    return _NO_KIND if name == NOT_READ else KINDS[name]


def ride_time_of(kind, values):
    """Return the time from grab to let-go, or from stop to stop.

    Parameters
    ----------
    kind : str
        A key of ``KINDS``.
    values : mapping of str to Quantity
        ridden_length, line_speed, and the reading of the start if there is one; scalars or arrays.

    Returns
    -------
    Quantity [s]
        Ride time; where the start was not read, as if riders had the speed of the rope at once, which is too short:
        ``start_not_read`` says so.
    """
    length, speed, own = values["ridden_length"], values["line_speed"], kind_named(kind)
    start = values.get(own.start_reading)
    if start is None:
        return ride_time(length, speed)
    return (ride_time_rest_to_rest if own.reversible else ride_time_from_rest)(length, speed, start)


def start_not_read(kind, values):
    """Return words for a ride time from which the start is missing; empty where nothing is."""
    reading = kind_named(kind).start_reading
    if reading is None or values.get(reading) is not None:
        return ""
    stop = " and the stop" if kind_named(kind).reversible else ""
    return f"ride time without the start{stop}: {words_of(reading)} not read"
