"""Pull, work and energy: what one rider, and the empty lift, ask of the rope.

Planning figures, no design.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.formulas.conditions import PULLS_ALONG, REACHES_THE_SPEED
from liftcalc.units import unit_aware


@unit_aware(rider_mass="kg", grade="", friction="", returns="N", may_be_zero=("grade", "friction"))
def rope_pull(rider_mass, *, grade, friction):
    r"""Return the pull along the slope that keeps one rider going at a steady speed, skis on snow.

    Parameters
    ----------
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all; a scalar or an array.
    grade : Quantity []
        Rise over horizontal run of a uniform slope; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero.

    Returns
    -------
    Quantity [N]
        Pull along the slope.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: F = m g (\sin \alpha + \mu \cos \alpha)

    Source: a block on an inclined plane, as in any introductory mechanics text.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(rope_pull(Q(75, "kg"), grade=Q(20, "percent"), friction=Q(0.07, "")))
    '195 N'
    """
    return rider_mass * GRAVITY * (grade + friction) / np.hypot(1.0, grade)


@unit_aware(
    rider_mass="kg", vertical_rise="m", horizontal_run="m", friction="", returns="J",
    may_be_zero=("vertical_rise", "horizontal_run", "friction"),
)  # fmt: skip
def ride_work(rider_mass, *, vertical_rise, horizontal_run, friction):
    r"""Return the work of one ride on any profile, skis on snow: steep and flat parts need not be told apart.

    Parameters
    ----------
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all; a scalar or an array.
    vertical_rise : Quantity [m]
        Height gained from grab to let-go; may be zero.
    horizontal_run : Quantity [m]
        Length of the ride on the map; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero.

    Returns
    -------
    Quantity [J]
        Work of one ride at a steady speed.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: W = m g (h + \mu d)

    On a uniform slope this is pull times length. Part by part, pull times length adds up to the same, as long as no
    part is so steep downhill that the rope goes slack. Source: conservation of energy.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(ride_work(Q(75, "kg"), vertical_rise=Q(29.4, "m"), horizontal_run=Q(147.1, "m"), friction=Q(0.07, "")))
    '29,197 J'
    """
    return rider_mass * GRAVITY * (vertical_rise + friction * horizontal_run)


@unit_aware(
    pull="N",
    tether_angle="degree",
    friction="",
    returns="N",
    may_be_zero=("pull", "tether_angle", "friction"),
    conditions=(PULLS_ALONG,),
)
def tether_pull(pull, *, tether_angle, friction):
    r"""Return the pull in a tether that rises at an angle to the slope, as on a platter or a T-bar.

    Parameters
    ----------
    pull : Quantity [N]
        Pull along the slope that the rider would need from a rope parallel to it; a scalar or an array; may be zero.
    tether_angle : Quantity [degree]
        Angle of the tether to the slope; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero.

    Returns
    -------
    Quantity [N]
        Pull in the tether. The rope feels the part along the slope, this times the cosine: ``tether_relief``.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is negative, or the angle is 90 degrees or more.

    Notes
    -----
    .. math:: T = F / (\cos \theta + \mu \sin \theta)

    The tether takes some weight off the skis, so that they rub less. Source: balance of forces along and across the
    slope.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(tether_pull(Q(195, "N"), tether_angle=Q(30, "degree"), friction=Q(0.07, "")))
    '216 N'
    """
    angle = np.radians(tether_angle)
    return pull / (np.cos(angle) + friction * np.sin(angle))


@unit_aware(
    tether_angle="degree", friction="", returns="", may_be_zero=("tether_angle", "friction"), conditions=(PULLS_ALONG,)
)
def tether_relief(tether_angle, friction):
    r"""Return what part of a pull along the slope the rope feels through a tether at an angle, as on a platter.

    Parameters
    ----------
    tether_angle : Quantity [degree]
        Angle of the tether to the slope; a scalar or an array; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero.

    Returns
    -------
    Quantity []
        Part of the pull along the slope that the rider would need from a rope parallel to it; 1 for such a rope. It
        holds of the steady pull and of the force that speeds the rider up alike.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is negative, or the angle is 90 degrees or more.

    Notes
    -----
    .. math:: \cos \theta / (\cos \theta + \mu \sin \theta)

    It is the part along the slope of ``tether_pull``, over the pull. Source: balance of forces along and across the
    slope.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(Q(195, "N") * tether_relief(Q(30, "degree"), Q(0.07, "")), "N")
    '187 N'
    """
    return 1 / (1 + friction * np.tan(np.radians(tether_angle)))


@unit_aware(
    rider_mass="kg", vertical_rise="m", horizontal_run="m", sheave_share="", returns="J",
    may_be_zero=("vertical_rise", "horizontal_run", "sheave_share"),
)  # fmt: skip
def carrier_work(rider_mass, *, vertical_rise, horizontal_run, sheave_share):
    r"""Return the work of one ride on a chair or in a cabin: the rider is lifted, and no ski rubs.

    Parameters
    ----------
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all; a scalar or an array.
    vertical_rise : Quantity [m]
        Height gained; may be zero.
    horizontal_run : Quantity [m]
        Length of the line on the map; may be zero.
    sheave_share : Quantity []
        Drag of the sheaves as a share of the load that presses on them; may be zero.

    Returns
    -------
    Quantity [J]
        Work of one ride at a steady speed. Empty carriers balance over the loop; what rope and carriers cost in the
        sheaves is ``sheave_drag``.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: W = m g (h + c d)

    Source: conservation of energy. A share of a few per cent is common practice, no published source.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(carrier_work(Q(80, "kg"), vertical_rise=Q(142, "m"), horizontal_run=Q(624, "m"),
    ...                   sheave_share=Q(3, "percent")))
    '126,090 J'
    """
    return rider_mass * GRAVITY * (vertical_rise + sheave_share * horizontal_run)


@unit_aware(hanging_mass="kg", sheave_share="", returns="N", may_be_zero=("sheave_share",))
def sheave_drag(hanging_mass, sheave_share):
    r"""Return the drag of the sheaves under rope and empty carriers: the idle drag of a chair or a cabin lift.

    Parameters
    ----------
    hanging_mass : Quantity [kg]
        Mass of the whole rope and all empty carriers, up side and down side; a scalar or an array.
    sheave_share : Quantity []
        Drag as a share of the load on the sheaves; may be zero.

    Returns
    -------
    Quantity [N]
        Drag along the rope. The full weight is taken for the load, which on a slope is a little high.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass is not greater than zero, or the share is negative.

    Notes
    -----
    .. math:: F_0 = c M g

    Source: definition of the share. A share of a few per cent is common practice, no published source.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(sheave_drag(Q(12000, "kg"), Q(3, "percent")))
    '3,530 N'
    """
    return sheave_share * hanging_mass * GRAVITY


@unit_aware(
    rider_mass="kg", vertical_rise="m", horizontal_run="m", bed_friction="", returns="J",
    may_be_zero=("vertical_rise", "horizontal_run", "bed_friction"),
)  # fmt: skip
def conveyor_work(rider_mass, *, vertical_rise, horizontal_run, bed_friction):
    r"""Return the work of one ride on a conveyor: the rider is lifted and presses the belt on its bed.

    Parameters
    ----------
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all; a scalar or an array.
    vertical_rise : Quantity [m]
        Height gained; may be zero.
    horizontal_run : Quantity [m]
        Length of the belt on the map; may be zero.
    bed_friction : Quantity []
        Friction of the belt on its bed; may be zero.

    Returns
    -------
    Quantity [J]
        Work of one ride at a steady speed. What the belt itself costs is ``belt_drag``.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: W = m g (h + \mu d)

    Source: conservation of energy.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(conveyor_work(Q(60, "kg"), vertical_rise=Q(8, "m"), horizontal_run=Q(79.6, "m"),
    ...                    bed_friction=Q(0.3, "")))
    '18,758 J'
    """
    return rider_mass * GRAVITY * (vertical_rise + bed_friction * horizontal_run)


@unit_aware(
    belt_mass_per_length="kg/m", horizontal_run="m", bed_friction="", return_friction="", returns="N",
    may_be_zero=("bed_friction", "return_friction"),
)  # fmt: skip
def belt_drag(belt_mass_per_length, horizontal_run, *, bed_friction, return_friction):
    r"""Return the drag of the empty belt of a conveyor, over its bed and back.

    Parameters
    ----------
    belt_mass_per_length : Quantity [kg/m]
        Mass of one metre of belt; a scalar or an array.
    horizontal_run : Quantity [m]
        Length of the conveyor on the map.
    bed_friction : Quantity []
        Friction of the belt on its bed, on the way up; may be zero.
    return_friction : Quantity []
        The same on the way back, usually over rollers; may be zero.

    Returns
    -------
    Quantity [N]
        Drag along the belt. The weight of the two ways balances.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass or the run is not greater than zero, or a friction is negative.

    Notes
    -----
    .. math:: F_0 = b g d (\mu_{bed} + \mu_{return})

    Source: balance of forces along the belt.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(belt_drag(Q(8, "kg/m"), Q(79.6, "m"), bed_friction=Q(0.3, ""), return_friction=Q(0.05, "")))
    '2,186 N'
    """
    return belt_mass_per_length * GRAVITY * horizontal_run * (bed_friction + return_friction)


@unit_aware(pull="N", ridden_length="m", returns="J", may_be_zero=("pull",))
def pull_energy(pull, ridden_length):
    r"""Return the first part of the energy for one rider: the pull along the whole ride.

    Parameters
    ----------
    pull : Quantity [N]
        Pull along the slope at a steady speed; a scalar or an array; may be zero.
    ridden_length : Quantity [m]
        Length along the rope from grab to let-go.

    Returns
    -------
    Quantity [J]
        Energy that the rope gives one rider.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the length is not greater than zero, or the pull is negative.

    Notes
    -----
    .. math:: E_1 = F L

    Source: definition of work.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(pull_energy(Q(195, "N"), Q(150, "m")))
    '29,250 J'
    """
    return pull * ridden_length


@unit_aware(rider_mass="kg", line_speed="m/s", returns="J")
def momentum_energy(rider_mass, line_speed):
    r"""Return the second part of the energy for one rider: the momentum taken on at the pick-up.

    Parameters
    ----------
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all; a scalar or an array.
    line_speed : Quantity [m/s]
        Speed of the haul rope; same shape, or broadcastable.

    Returns
    -------
    Quantity [J]
        Energy that the drive gives: half becomes motion of the rider, half becomes heat in the gloves.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: E_2 = m v^2

    Source: a force that gives the momentum m v while the rope keeps its speed v; Kleppner and Kolenkow, An
    Introduction to Mechanics, 2nd edition, problem 4.14, has it as a force.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(momentum_energy(Q(75, "kg"), Q(3.4, "m/s")))
    '867 J'
    """
    return rider_mass * line_speed**2


@unit_aware(pull="N", line_speed="m/s", pick_up_acceleration="m/s**2", returns="J", may_be_zero=("pull",))
def slip_energy(pull, line_speed, pick_up_acceleration):
    r"""Return the third part of the energy for one rider: the pull on rope that slips through the gloves meanwhile.

    Parameters
    ----------
    pull : Quantity [N]
        Pull along the slope at a steady speed; a scalar or an array; may be zero.
    line_speed : Quantity [m/s]
        Speed of the haul rope.
    pick_up_acceleration : Quantity [m/s**2]
        How hard the rider speeds up, from rest to the speed of the rope.

    Returns
    -------
    Quantity [J]
        Energy that ends as heat in the gloves, beside half of the second part.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If a speed or an acceleration is not greater than zero, or the pull is negative.

    Notes
    -----
    .. math:: E_3 = F v^2 / (2 a)

    While the rider speeds up over the time v / a, twice as much rope goes by as snow: the pull acts on v^2 / (2 a) of
    rope more than the rider rides. Source: motion at constant acceleration.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slip_energy(Q(195, "N"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '751 J'
    """
    return pull * line_speed**2 / (2 * pick_up_acceleration)


@unit_aware(
    pull="N", ridden_length="m", rider_mass="kg", line_speed="m/s", pick_up_acceleration="m/s**2", returns="J",
    may_be_zero=("pull",),
    conditions=(REACHES_THE_SPEED,),
)  # fmt: skip
def energy_per_rider(pull, ridden_length, rider_mass, line_speed, pick_up_acceleration):
    r"""Return the energy that the drive gives to one rider, who takes hold of a moving rope and slips up to its speed.

    Parameters
    ----------
    pull : Quantity [N]
        Pull along the slope at a steady speed; a scalar or an array; may be zero.
    ridden_length : Quantity [m]
        Length along the slope from grab to let-go.
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all.
    line_speed : Quantity [m/s]
        Speed of the haul rope.
    pick_up_acceleration : Quantity [m/s**2]
        How hard the rider speeds up.

    Returns
    -------
    Quantity [J]
        Energy for one rider: pull, momentum taken on, and slip.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero (the pull: negative), or the ride ends before the rider has the speed
        of the rope.

    Notes
    -----
    .. math:: E = F L + m v^2 + F v^2 / (2 a)

    Source: conservation of energy; the tests compare it with a pick-up integrated step by step.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(energy_per_rider(Q(195, "N"), Q(150, "m"), Q(75, "kg"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '30,868 J'
    """
    return (
        pull_energy.plain(pull, ridden_length)
        + momentum_energy.plain(rider_mass, line_speed)
        + slip_energy.plain(pull, line_speed, pick_up_acceleration)
    )
