"""Traction at the drive sheave: how hard a rope is held there, and how many riders that pulls.

Planning figures, no design: whether a rope holds on its drive sheave is for the maker, licensed people and the
authority to say. Nobody wraps a rope round a hand or an arm.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.formulas.conditions import A_GROOVE, HOLDS_AT_LEAST_ONCE
from liftcalc.units import unit_aware


@unit_aware(lining_friction="", wrap_angle="degree", returns="", may_be_zero=("wrap_angle",))
def capstan_ratio(*, lining_friction, wrap_angle):
    """Return the ratio of the tight side's tension to the slack side's at which a rope begins to slip on a sheave.

        T_1 / T_2 = e^(mu beta), with beta the wrap angle, half a turn of which is pi

    returns: Ratio of the two tensions, 1 or more.

    Source: the capstan equation of Euler and Eytelwein, as in any mechanics text; the tests compare it with
        dT/dbeta = mu T integrated.

    >>> show(capstan_ratio(lining_friction=Q(0.22, ""), wrap_angle=Q(180, "degree")))
    '2.00'
    """
    return np.exp(lining_friction * np.radians(wrap_angle))


@unit_aware(lining_friction="", groove_angle="degree", returns="", conditions=(A_GROOVE,))
def groove_friction(lining_friction, groove_angle):
    """Return the friction with which a grooved sheave holds a rope that lies wedged between the sides of its groove.

        mu_groove = mu / sin(gamma / 2), with gamma the groove angle

    The two sides together press 1 / sin(gamma / 2) times as hard as a flat rim would. Two to three times the lining's
    own is common practice, no published source; a rope that lies on the ground of its groove is not wedged.

    lining_friction: friction of rope on the lining itself, as on a flat rim
    groove_angle: angle between the sides of the groove on which the rope lies; 180 degrees is a flat rim
    returns: Friction to put into ``capstan_ratio`` in place of the lining's own.

    Source: balance of forces across the groove, as for a V-belt in any text on machine elements.

    >>> show(groove_friction(Q(0.25, ""), Q(45, "degree")))
    '0.65'
    """
    return lining_friction / np.sin(np.radians(groove_angle) / 2)


@unit_aware(
    counterweight="N", rope_mass_per_length="kg/m", vertical_rise="m", strand_drag="N", returns="N",
    may_be_zero=("rope_mass_per_length", "vertical_rise"),
)  # fmt: skip
def slack_tension_top_drive(rope_mass_per_length, vertical_rise, *, counterweight, strand_drag):
    """Return the slack-side tension at a drive sheave at the top, with the counterweight at the bottom sheave.

        T_2 = F_w / 2 + q g h - F1, with F_w the counterweight, q the rope's mass per length, h the rise and
        F1 the drag of the strand that goes down

    Riders hang on the other strand and do not change it.

    rope_mass_per_length: mass of one metre of rope, with empty carriers spread over it
    vertical_rise: height of the top sheave over the bottom sheave
    returns: Tension of the strand that leaves the drive sheave, at the sheave; zero where the rope would hang
        slack.

    Source: balance of forces along the down-going strand; the tests add it up element by element.

    >>> show(slack_tension_top_drive(Q(0.6, "kg/m"), Q(29.4, "m"), counterweight=Q(9000, "N"),
    ...                              strand_drag=Q(250, "N")))
    '4,423 N'
    """
    tension = counterweight / 2 + rope_mass_per_length * GRAVITY * vertical_rise - strand_drag
    return np.maximum(tension, 0.0)


@unit_aware(
    rope_mass_per_length="kg/m", vertical_rise="m", riders_on_line="person", counterweight="N", strand_drag="N",
    pull="N", returns="N",
    may_be_zero=("rope_mass_per_length", "vertical_rise", "riders_on_line", "pull"),
)  # fmt: skip
def slack_tension_bottom_drive(
    rope_mass_per_length, vertical_rise, riders_on_line, *, counterweight, strand_drag, pull
):
    """Return the slack-side tension at a drive sheave at the bottom, with the counterweight at the top sheave.

        T_2 = F_w / 2 - q g h - N F - F1, with F_w the counterweight, q the rope's mass per length, h the rise,
        N riders on the line and F1 the drag of the strand that goes up

    Riders hang on this very strand: each of them makes it slacker.

    rope_mass_per_length: mass of one metre of rope, with empty carriers spread over it
    vertical_rise: height of the top sheave over the bottom sheave
    returns: Tension of the up-going strand where it leaves the drive sheave; zero where the rope would hang slack.

    Source: balance of forces along the up-going strand; the tests add it up element by element.

    >>> show(slack_tension_bottom_drive(Q(0.6, "kg/m"), Q(29.4, "m"), Q(10, "person"), pull=Q(195, "N"),
    ...                                 counterweight=Q(9000, "N"), strand_drag=Q(250, "N")))
    '2,127 N'
    """
    rope_weight = rope_mass_per_length * GRAVITY * vertical_rise
    return np.maximum(counterweight / 2 - rope_weight - riders_on_line * pull - strand_drag, 0.0)


def _tension_ratio_allowed(friction, wrap_angle, safety_factor):
    """Return the ratio of the two tensions that the drive sheave may be asked for."""
    return capstan_ratio.plain(lining_friction=friction, wrap_angle=wrap_angle) / safety_factor


def _force_left(slack_tension, ratio, idle_drag, mass_times_acceleration=0.0):
    """Return what the sheave passes on to riders: less the empty rope, and half of what starts it off either side."""
    return np.maximum(slack_tension * (ratio - 1) - idle_drag - mass_times_acceleration / 2 * (1 + ratio), 0.0)


@unit_aware(
    slack_tension="N", pull="N", idle_drag="N", lining_friction="", wrap_angle="degree", grip_safety_factor="",
    returns="person", conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction(*, slack_tension, pull, idle_drag, lining_friction, wrap_angle, grip_safety_factor):
    """Return how many riders, at most, a drive sheave at the top pulls in the steady run before the rope slips on it.

    The counterweight draws the bottom sheave. With a drive at the bottom riders hang on the slack side:
    ``riders_by_traction_bottom_drive``. A start asks for more: ``riders_by_traction_at_start``.

        N = (T_2 (r - 1) - F0) / F, r = e^(mu beta) / S, with T_2 the slack tension and S the grip safety factor

    lining_friction: friction of rope on the lining; of a grooved sheave ``groove_friction``
    returns: Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Source: the capstan equation; the tight side less the slack side is what riders and rope ask for.

    >>> show(riders_by_traction(slack_tension=Q(4423, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...     lining_friction=Q(0.25, ""), wrap_angle=Q(180, "degree"), grip_safety_factor=Q(1.25, "")))
    '14.6 persons'
    """
    ratio = _tension_ratio_allowed(lining_friction, wrap_angle, grip_safety_factor)
    return _force_left(slack_tension, ratio, idle_drag) / pull


@unit_aware(
    slack_tension="N", pull="N", idle_drag="N", lining_friction="", wrap_angle="degree", grip_safety_factor="",
    returns="person", conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction_bottom_drive(*, slack_tension, pull, idle_drag, lining_friction, wrap_angle, grip_safety_factor):
    """Return how many riders, at most, a drive at the bottom pulls in the steady run: each slackens the slack side.

    A start asks for more: ``riders_by_traction_bottom_drive_at_start``.

        N = (T_2 (r - 1) - F0) / (r F), r = e^(mu beta) / S, with T_2 the slack tension and S the grip safety factor

    It is the limit of a drive at the top with N F taken off the slack side, solved for N.

    lining_friction: friction of rope on the lining; of a grooved sheave ``groove_friction``
    returns: Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Source: the capstan equation.

    >>> show(riders_by_traction_bottom_drive(
    ...     slack_tension=Q(4077, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"), lining_friction=Q(0.25, ""),
    ...     wrap_angle=Q(180, "degree"), grip_safety_factor=Q(1.25, "")))
    '7.5 persons'
    """
    ratio = _tension_ratio_allowed(lining_friction, wrap_angle, grip_safety_factor)
    return _force_left(slack_tension, ratio, idle_drag) / (pull * ratio)


@unit_aware(
    slack_tension="N", pull="N", idle_drag="N", lining_friction="", wrap_angle="degree", grip_safety_factor="",
    starting_acceleration="m/s**2", rider_mass="kg", moving_mass="kg", returns="person",
    conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction_at_start(
    *, slack_tension, pull, idle_drag, lining_friction, wrap_angle, grip_safety_factor, starting_acceleration,
    rider_mass, moving_mass,
):  # fmt: skip
    """Return how many riders, at most, a drive sheave at the top can start before the rope slips on it.

        N = (T_2 (r - 1) - F0 - M a (1 + r) / 2) / (F + m a), r = e^(mu beta) / S, with T_2 the slack tension
        and S the grip safety factor

    Half of M a comes off the slack side, the other half goes on to the tight side. What turns behind the drive sheave
    (rotor, gear, brake disc) is the motor's to start, and no part of M.

    lining_friction: friction of rope on the lining; of a grooved sheave ``groove_friction``
    moving_mass: mass of the rope, carriers and sheaves that move with it, half on either strand
    returns: Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Source: Newton's second law along both strands and the capstan equation; the tests walk round the loop.

    >>> show(riders_by_traction_at_start(slack_tension=Q(4423, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...     lining_friction=Q(0.25, ""), wrap_angle=Q(180, "degree"), grip_safety_factor=Q(1.25, ""),
    ...     starting_acceleration=Q(0.3, "m/s**2"), rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '12.3 persons'
    """
    ratio = _tension_ratio_allowed(lining_friction, wrap_angle, grip_safety_factor)
    force_left = _force_left(slack_tension, ratio, idle_drag, moving_mass * starting_acceleration)
    return force_left / (pull + rider_mass * starting_acceleration)


@unit_aware(
    slack_tension="N", pull="N", idle_drag="N", lining_friction="", wrap_angle="degree", grip_safety_factor="",
    starting_acceleration="m/s**2", rider_mass="kg", moving_mass="kg", returns="person",
    conditions=(HOLDS_AT_LEAST_ONCE,),
)  # fmt: skip
def riders_by_traction_bottom_drive_at_start(
    *, slack_tension, pull, idle_drag, lining_friction, wrap_angle, grip_safety_factor, starting_acceleration,
    rider_mass, moving_mass,
):  # fmt: skip
    """Return how many riders, at most, a drive at the bottom can start: pull and start of each slacken the slack side.

        N = (T_2 (r - 1) - F0 - M a (1 + r) / 2) / (r (F + m a)), r = e^(mu beta) / S, with T_2 the slack tension
        and S the grip safety factor

    Half of M a, and with it all of N (F + m a), comes off the slack side. What turns behind the drive sheave (rotor,
    gear, brake disc) is the motor's to start, and no part of M.

    lining_friction: friction of rope on the lining; of a grooved sheave ``groove_friction``
    moving_mass: mass of the rope, carriers and sheaves that move with it, half on either strand
    returns: Riders on the line, seldom a whole number; zero where the empty rope slips already.

    Source: Newton's second law along both strands and the capstan equation; the tests walk round the loop.

    >>> show(riders_by_traction_bottom_drive_at_start(
    ...     slack_tension=Q(4077, "N"), pull=Q(195, "N"), idle_drag=Q(500, "N"), lining_friction=Q(0.25, ""),
    ...     wrap_angle=Q(180, "degree"), grip_safety_factor=Q(1.25, ""), starting_acceleration=Q(0.3, "m/s**2"),
    ...     rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '6.3 persons'
    """
    ratio = _tension_ratio_allowed(lining_friction, wrap_angle, grip_safety_factor)
    force_left = _force_left(slack_tension, ratio, idle_drag, moving_mass * starting_acceleration)
    return force_left / (ratio * (pull + rider_mass * starting_acceleration))
