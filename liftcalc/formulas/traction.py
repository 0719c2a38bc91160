"""Traction at the drive sheave, and the grip of a hand on the rope.

Planning figures, no design: whether a rope holds on its drive sheave is for the maker, licensed people and the
authority to say. Nobody wraps a rope round a hand or an arm.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.formulas.conditions import A_GROOVE, HOLDS_AT_LEAST_ONCE
from liftcalc.units import unit_aware


def _tension_ratio_allowed(friction, wrap_angle, safety_factor):
    """Return the ratio of the two tensions that the drive sheave may be asked for."""
    return capstan_ratio.plain(friction=friction, wrap_angle=wrap_angle) / safety_factor


def _force_left(slack_tension, ratio, idle_drag, mass_times_acceleration=0.0):
    """Return what the sheave passes on to riders: less the empty rope, and half of what starts it off either side."""
    return np.maximum(slack_tension * (ratio - 1) - idle_drag - mass_times_acceleration / 2 * (1 + ratio), 0.0)


@unit_aware(friction="", wrap_angle="degree", returns="", may_be_zero=("friction", "wrap_angle"))
def capstan_ratio(*, friction, wrap_angle):
    r"""Return the ratio of the tight side's tension to the slack side's at which a rope begins to slip on a sheave.

    Parameters
    ----------
    friction : Quantity []
        Friction of rope on sheave lining; a scalar or an array; may be zero.
    wrap_angle : Quantity [degree]
        Angle over which the rope lies on the sheave; half a turn is 180 degrees; may be zero.

    Returns
    -------
    Quantity []
        Ratio of the two tensions, 1 or more.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is negative.

    Notes
    -----
    .. math:: T_1 / T_2 = e^{\mu \beta}

    Source: the capstan equation of Euler and Eytelwein, as in any mechanics text; the tests compare it with
    dT/dbeta = mu T integrated.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(capstan_ratio(friction=Q(0.22, ""), wrap_angle=Q(180, "degree")))
    '2.00'
    """
    return np.exp(friction * np.radians(wrap_angle))


@unit_aware(
    lining_friction="", groove_angle="degree", returns="", may_be_zero=("lining_friction",), conditions=(A_GROOVE,)
)
def groove_friction(lining_friction, groove_angle):
    r"""Return the friction with which a grooved sheave holds a rope that lies wedged between the sides of its groove.

    Parameters
    ----------
    lining_friction : Quantity []
        Friction of rope on the lining itself; a scalar or an array; may be zero.
    groove_angle : Quantity [degree]
        Angle between the two sides of the groove on which the rope lies; 180 degrees is a flat rim.

    Returns
    -------
    Quantity []
        Friction to put into ``capstan_ratio`` in place of the lining's own.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the friction is negative, or the angle is not between 0 and 180 degrees.

    Notes
    -----
    .. math:: \mu' = \mu / \sin(\gamma / 2)

    The two sides together press 1 / sin(half the angle) times as hard as a flat rim would. Two to three times the
    lining's own is common practice, no published source; a rope that lies on the ground of its groove is not wedged.
    Source: balance of forces across the groove, as for a V-belt in any text on machine elements.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(groove_friction(Q(0.25, ""), Q(45, "degree")))
    '0.65'
    """
    return lining_friction / np.sin(np.radians(groove_angle) / 2)


@unit_aware(
    counterweight_force="N", rope_mass_per_length="kg/m", vertical_rise="m", strand_drag="N", returns="N",
    may_be_zero=("rope_mass_per_length", "vertical_rise", "strand_drag"),
)  # fmt: skip
def slack_tension_top_drive(rope_mass_per_length, vertical_rise, *, counterweight_force, strand_drag):
    r"""Return the slack-side tension at a drive sheave at the top, with the counterweight at the bottom sheave.

    Parameters
    ----------
    rope_mass_per_length : Quantity [kg/m]
        Mass of one metre of rope, with empty carriers spread over it; a scalar or an array; may be zero.
    vertical_rise : Quantity [m]
        Height of the drive sheave over the bottom sheave; may be zero.
    counterweight_force : Quantity [N]
        Force with which the counterweight draws the carriage of the bottom sheave; the two strands share it.
    strand_drag : Quantity [N]
        Drag of the down-going strand alone: half of the idle drag, if the two strands are alike; may be zero.

    Returns
    -------
    Quantity [N]
        Tension of the strand that leaves the drive sheave, at the sheave; zero where the rope would hang slack.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the counterweight's force is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: T_2 = W / 2 + q g H - f

    Riders hang on the other strand and do not change it. Source: balance of forces along the down-going strand; the
    tests add it up element by element.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slack_tension_top_drive(Q(0.6, "kg/m"), Q(29.4, "m"), counterweight_force=Q(9000, "N"),
    ...                              strand_drag=Q(250, "N")))
    '4,423 N'
    """
    tension = counterweight_force / 2 + rope_mass_per_length * GRAVITY * vertical_rise - strand_drag
    return np.maximum(tension, 0.0)


@unit_aware(
    rope_mass_per_length="kg/m", vertical_rise="m", riders="person", counterweight_force="N", strand_drag="N",
    pull="N", returns="N", may_be_zero=("rope_mass_per_length", "vertical_rise", "riders", "strand_drag", "pull"),
)  # fmt: skip
def slack_tension_bottom_drive(rope_mass_per_length, vertical_rise, riders, *, counterweight_force, strand_drag, pull):
    r"""Return the slack-side tension at a drive sheave at the bottom, with the counterweight at the top sheave.

    Parameters
    ----------
    rope_mass_per_length : Quantity [kg/m]
        Mass of one metre of rope, with empty carriers spread over it; a scalar or an array; may be zero.
    vertical_rise : Quantity [m]
        Height of the top sheave over the drive sheave; may be zero.
    riders : Quantity [person]
        Riders on the line; zero for the empty rope.
    counterweight_force : Quantity [N]
        Force with which the counterweight draws the carriage of the top sheave; the two strands share it.
    strand_drag : Quantity [N]
        Drag of the up-going strand alone: half of the idle drag, if the two strands are alike; may be zero.
    pull : Quantity [N]
        Pull of one rider along the rope; in a tether, its part along the rope; may be zero.

    Returns
    -------
    Quantity [N]
        Tension of the up-going strand where it leaves the drive sheave; zero where the rope would hang slack.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the counterweight's force is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: T_2 = W / 2 - q g H - N F - f

    Riders hang on this very strand: each of them makes it slacker. Source: balance of forces along the up-going
    strand; the tests add it up element by element.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slack_tension_bottom_drive(Q(0.6, "kg/m"), Q(29.4, "m"), Q(10, "person"), pull=Q(195, "N"),
    ...                                 counterweight_force=Q(9000, "N"), strand_drag=Q(250, "N")))
    '2,127 N'
    """
    rope_weight = rope_mass_per_length * GRAVITY * vertical_rise
    return np.maximum(counterweight_force / 2 - rope_weight - riders * pull - strand_drag, 0.0)


@unit_aware(
    slack_tension="N", pull="N", idle_drag="N", friction="", wrap_angle="degree", safety_factor="", returns="person",
    may_be_zero=("slack_tension", "idle_drag", "friction"),
    conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction(*, slack_tension, pull, idle_drag, friction, wrap_angle, safety_factor):
    r"""Return how many riders, at most, a drive sheave at the top pulls in the steady run before the rope slips on it.

    Parameters
    ----------
    slack_tension : Quantity [N]
        Tension of the slack side at the drive sheave, of the empty line running steadily; a scalar or an array; may be
        zero. The counterweight draws the bottom sheave. With a drive at the bottom riders hang on that side:
        ``riders_by_traction_bottom_drive``.
    pull : Quantity [N]
        Pull of one rider along the rope; in a tether, its part along the rope.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, both strands; may be zero.
    friction : Quantity []
        Friction of rope on sheave; of a grooved sheave ``groove_friction``; may be zero.
    wrap_angle : Quantity [degree]
        Angle over which the rope lies on the drive sheave.
    safety_factor : Quantity []
        How many times over the rope must hold: 1 or more.

    Returns
    -------
    Quantity [person]
        Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is out of its range, or the safety factor is less than 1.

    Notes
    -----
    .. math:: N = (T_2 (r - 1) - F_0) / F, \quad r = e^{\mu \beta} / S

    A start asks for more: ``riders_by_traction_at_start``. Source: the capstan equation; the tight side less the slack
    side is what riders and rope ask for.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(riders_by_traction(slack_tension=Q(4423, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...                         friction=Q(0.25, ""), wrap_angle=Q(180, "degree"), safety_factor=Q(1.25, "")))
    '14.6 persons'
    """
    ratio = _tension_ratio_allowed(friction, wrap_angle, safety_factor)
    return _force_left(slack_tension, ratio, idle_drag) / pull


@unit_aware(
    empty_slack_tension="N", pull="N", idle_drag="N", friction="", wrap_angle="degree", safety_factor="",
    returns="person", may_be_zero=("empty_slack_tension", "idle_drag", "friction"),
    conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction_bottom_drive(*, empty_slack_tension, pull, idle_drag, friction, wrap_angle, safety_factor):
    r"""Return how many riders, at most, a drive at the bottom pulls in the steady run: each slackens the slack side.

    Parameters
    ----------
    empty_slack_tension : Quantity [N]
        Tension of the slack side at the drive sheave, of the empty line running steadily; a scalar or an array; may be
        zero.
    pull : Quantity [N]
        Pull of one rider along the rope; in a tether, its part along the rope.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, both strands; may be zero.
    friction : Quantity []
        Friction of rope on sheave; of a grooved sheave ``groove_friction``; may be zero.
    wrap_angle : Quantity [degree]
        Angle over which the rope lies on the drive sheave.
    safety_factor : Quantity []
        How many times over the rope must hold: 1 or more.

    Returns
    -------
    Quantity [person]
        Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is out of its range, or the safety factor is less than 1.

    Notes
    -----
    .. math:: N = (T_{2,empty} (r - 1) - F_0) / (r F), \quad r = e^{\mu \beta} / S

    It is the limit of a drive at the top with N F taken off the slack side, solved for N. A start asks for more:
    ``riders_by_traction_bottom_drive_at_start``. Source: the capstan equation.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(riders_by_traction_bottom_drive(
    ...     empty_slack_tension=Q(4077, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"), friction=Q(0.25, ""),
    ...     wrap_angle=Q(180, "degree"), safety_factor=Q(1.25, "")))
    '7.5 persons'
    """
    ratio = _tension_ratio_allowed(friction, wrap_angle, safety_factor)
    return _force_left(empty_slack_tension, ratio, idle_drag) / (pull * ratio)


@unit_aware(
    slack_tension="N", pull="N", idle_drag="N", friction="", wrap_angle="degree", safety_factor="",
    starting_acceleration="m/s**2", rider_mass="kg", moving_mass="kg", returns="person",
    may_be_zero=("slack_tension", "idle_drag", "friction", "starting_acceleration"),
    conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction_at_start(
    *, slack_tension, pull, idle_drag, friction, wrap_angle, safety_factor, starting_acceleration, rider_mass,
    moving_mass,
):  # fmt: skip
    r"""Return how many riders, at most, a drive sheave at the top can start before the rope slips on it.

    Parameters
    ----------
    slack_tension : Quantity [N]
        Tension of the slack side at the drive sheave, of the empty line running steadily: the start makes it slacker,
        and that is counted here; a scalar or an array; may be zero.
    pull : Quantity [N]
        Pull of one rider along the rope; in a tether, its part along the rope.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, both strands; may be zero.
    friction : Quantity []
        Friction of rope on sheave; of a grooved sheave ``groove_friction``; may be zero.
    wrap_angle : Quantity [degree]
        Angle over which the rope lies on the drive sheave.
    safety_factor : Quantity []
        How many times over the rope must hold: 1 or more.
    starting_acceleration : Quantity [m/s**2]
        How hard the rope speeds up with all of them on it; may be zero.
    rider_mass : Quantity [kg]
        Mass of one rider.
    moving_mass : Quantity [kg]
        Mass of the rope, carriers and sheaves that move with it, half on either strand. What turns behind the drive
        sheave (rotor, gear, brake disc) is the motor's to start, and no part of it.

    Returns
    -------
    Quantity [person]
        Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is out of its range, or the safety factor is less than 1.

    Notes
    -----
    .. math:: N = (T_2 (r - 1) - F_0 - \tfrac12 M a (1 + r)) / (F + m a), \quad r = e^{\mu \beta} / S

    Half of M a comes off the slack side, the other half goes on to the tight side. Source: Newton's second law along
    both strands and the capstan equation; the tests walk round the loop.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(riders_by_traction_at_start(slack_tension=Q(4423, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...     friction=Q(0.25, ""), wrap_angle=Q(180, "degree"), safety_factor=Q(1.25, ""),
    ...     starting_acceleration=Q(0.3, "m/s**2"), rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '12.3 persons'
    """
    ratio = _tension_ratio_allowed(friction, wrap_angle, safety_factor)
    force_left = _force_left(slack_tension, ratio, idle_drag, moving_mass * starting_acceleration)
    return force_left / (pull + rider_mass * starting_acceleration)


@unit_aware(
    empty_slack_tension="N", pull="N", idle_drag="N", friction="", wrap_angle="degree", safety_factor="",
    starting_acceleration="m/s**2", rider_mass="kg", moving_mass="kg", returns="person",
    may_be_zero=("empty_slack_tension", "idle_drag", "friction", "starting_acceleration"),
    conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction_bottom_drive_at_start(
    *, empty_slack_tension, pull, idle_drag, friction, wrap_angle, safety_factor, starting_acceleration, rider_mass,
    moving_mass,
):  # fmt: skip
    r"""Return how many riders, at most, a drive at the bottom can start: pull and start of each slacken the slack side.

    Parameters
    ----------
    empty_slack_tension : Quantity [N]
        Tension of the slack side at the drive sheave, of the empty line running steadily; a scalar or an array; may be
        zero.
    pull : Quantity [N]
        Pull of one rider along the rope; in a tether, its part along the rope.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, both strands; may be zero.
    friction : Quantity []
        Friction of rope on sheave; of a grooved sheave ``groove_friction``; may be zero.
    wrap_angle : Quantity [degree]
        Angle over which the rope lies on the drive sheave.
    safety_factor : Quantity []
        How many times over the rope must hold: 1 or more.
    starting_acceleration : Quantity [m/s**2]
        How hard the rope speeds up with all of them on it; may be zero.
    rider_mass : Quantity [kg]
        Mass of one rider.
    moving_mass : Quantity [kg]
        Mass of the rope, carriers and sheaves that move with it, half on either strand. What turns behind the drive
        sheave (rotor, gear, brake disc) is the motor's to start, and no part of it.

    Returns
    -------
    Quantity [person]
        Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is out of its range, or the safety factor is less than 1.

    Notes
    -----
    .. math:: N = (T_{2,empty} (r - 1) - F_0 - \tfrac12 M a (1 + r)) / (r (F + m a)), \quad r = e^{\mu \beta} / S

    Half of M a, and with it all of N (F + m a), comes off the slack side. Source: Newton's second law along both
    strands and the capstan equation; the tests walk round the loop.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(riders_by_traction_bottom_drive_at_start(
    ...     empty_slack_tension=Q(4077, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"), friction=Q(0.25, ""),
    ...     wrap_angle=Q(180, "degree"), safety_factor=Q(1.25, ""), starting_acceleration=Q(0.3, "m/s**2"),
    ...     rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '6.3 persons'
    """
    ratio = _tension_ratio_allowed(friction, wrap_angle, safety_factor)
    force_left = _force_left(empty_slack_tension, ratio, idle_drag, moving_mass * starting_acceleration)
    return force_left / (ratio * (pull + rider_mass * starting_acceleration))
