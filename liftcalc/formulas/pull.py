"""Pull, work and energy: what one rider, and the empty lift, ask of the rope.

Planning figures, no design.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.formulas.conditions import PULLS_ALONG, REACHES_THE_SPEED
from liftcalc.units import unit_aware


@unit_aware(rider_mass="kg", grade="", snow_friction="", returns="N")
def rope_pull(rider_mass, *, grade, snow_friction):
    """Return the pull along the slope that keeps one rider going at a steady speed, skis on snow.

        F = m g (sin alpha + mu cos alpha) = m g (grade + mu) / sqrt(1 + grade^2), tan alpha = grade

    returns: Pull along the slope.

    Source: a block on an inclined plane, as in any introductory mechanics text.

    >>> show(rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, "")))
    '195 N'
    """
    return rider_mass * GRAVITY * (grade + snow_friction) / np.hypot(1.0, grade)


@unit_aware(
    pull="N", tether_angle="degree", snow_friction="", returns="N",
    may_be_zero=("pull",), conditions=(PULLS_ALONG,),
)  # fmt: skip
def tether_pull(pull, *, tether_angle, snow_friction):
    """Return the pull in a tether that rises at an angle to the slope, as on a platter or a T-bar.

        F_tether = F / (cos theta + mu sin theta)

    The tether takes some weight off the skis, so that they rub less.

    pull: pull along the slope that the rider would need from a rope parallel to it
    returns: Pull in the tether. The rope feels the part along the slope, this times the cosine: ``tether_relief``.

    Source: balance of forces along and across the slope.

    >>> show(tether_pull(Q(195, "N"), tether_angle=Q(30, "degree"), snow_friction=Q(0.07, "")))
    '216 N'
    """
    angle = np.radians(tether_angle)
    return pull / (np.cos(angle) + snow_friction * np.sin(angle))


@unit_aware(
    tether_angle="degree", snow_friction="", returns="", conditions=(PULLS_ALONG,),
)  # fmt: skip
def tether_relief(tether_angle, snow_friction):
    """Return what part of a pull along the slope the rope feels through a tether at an angle, as on a platter.

        F_rope / F = cos theta / (cos theta + mu sin theta) = 1 / (1 + mu tan theta)

    It is the part along the slope of ``tether_pull``, over the pull.

    returns: Part of the pull along the slope that the rider would need from a rope parallel to it; 1 for such a
        rope. It holds of the steady pull and of the force that speeds the rider up alike.

    Source: balance of forces along and across the slope.

    >>> show(tether_relief(Q(30, "degree"), Q(0.07, "")))
    '0.96'
    """
    return 1 / (1 + snow_friction * np.tan(np.radians(tether_angle)))


@unit_aware(
    rider_mass="kg", vertical_rise="m", horizontal_run="m", snow_friction="", returns="J",
    may_be_zero=("vertical_rise", "horizontal_run"),
)  # fmt: skip
def ride_work(rider_mass, *, vertical_rise, horizontal_run, snow_friction):
    """Return the work of one ride on any profile, skis on snow: steep and flat parts need not be told apart.

        W = m g (h + mu d), with h the rise and d the run

    On a uniform slope this is pull times length. Part by part, pull times length adds up to the same, as long as no
    part is so steep downhill that the rope goes slack.

    returns: Work of one ride at a steady speed.

    Source: conservation of energy.

    >>> show(ride_work(Q(75, "kg"), vertical_rise=Q(29.4, "m"), horizontal_run=Q(147.1, "m"),
    ...                snow_friction=Q(0.07, "")))
    '29,197 J'
    """
    return rider_mass * GRAVITY * (vertical_rise + snow_friction * horizontal_run)


@unit_aware(
    rider_mass="kg", vertical_rise="m", horizontal_run="m", sheave_drag_share="", returns="J",
    may_be_zero=("vertical_rise", "horizontal_run"),
)  # fmt: skip
def carrier_work(rider_mass, *, vertical_rise, horizontal_run, sheave_drag_share):
    """Return the work of one ride on a chair or in a cabin: the rider is lifted, and no ski rubs.

        W = m g (h + mu d), with h the rise, d the run and mu the sheave drag share

    returns: Work of one ride at a steady speed. Empty carriers balance over the loop; what rope and carriers cost
        in the sheaves is ``sheave_drag``.

    Source: conservation of energy. A share of a few per cent is common practice, no published source.

    >>> show(carrier_work(Q(80, "kg"), vertical_rise=Q(142, "m"), horizontal_run=Q(624, "m"),
    ...                   sheave_drag_share=Q(3, "percent")))
    '126,090 J'
    """
    return rider_mass * GRAVITY * (vertical_rise + sheave_drag_share * horizontal_run)


@unit_aware(hanging_mass="kg", sheave_drag_share="", returns="N")
def sheave_drag(hanging_mass, sheave_drag_share):
    """Return the drag of the sheaves under rope and empty carriers: the idle drag of a chair or a cabin lift.

        F0 = mu m_hanging g, with mu the sheave drag share

    returns: Drag along the rope. The full weight is taken for the load, which on a slope is a little high.

    Source: definition of the share. A share of a few per cent is common practice, no published source.

    >>> show(sheave_drag(Q(12000, "kg"), Q(3, "percent")))
    '3,530 N'
    """
    return sheave_drag_share * hanging_mass * GRAVITY


@unit_aware(
    rider_mass="kg", vertical_rise="m", horizontal_run="m", bed_friction="", returns="J",
    may_be_zero=("vertical_rise", "horizontal_run"),
)  # fmt: skip
def conveyor_work(rider_mass, *, vertical_rise, horizontal_run, bed_friction):
    """Return the work of one ride on a conveyor: the rider is lifted and presses the belt on its bed.

        W = m g (h + mu d), with h the rise, d the run and mu the bed friction

    returns: Work of one ride at a steady speed. What the belt itself costs is ``belt_drag``.

    Source: conservation of energy.

    >>> show(conveyor_work(Q(60, "kg"), vertical_rise=Q(8, "m"), horizontal_run=Q(79.6, "m"),
    ...                    bed_friction=Q(0.3, "")))
    '18,758 J'
    """
    return rider_mass * GRAVITY * (vertical_rise + bed_friction * horizontal_run)


@unit_aware(
    belt_mass_per_length="kg/m", horizontal_run="m", bed_friction="", return_friction="", returns="N",
)  # fmt: skip
def belt_drag(belt_mass_per_length, horizontal_run, *, bed_friction, return_friction):
    """Return the drag of the empty belt of a conveyor, over its bed and back.

        F0 = q g d (mu_bed + mu_return), with q the belt's mass per length and d the run

    returns: Drag along the belt. The weight of the two ways balances.

    Source: balance of forces along the belt.

    >>> show(belt_drag(Q(8, "kg/m"), Q(79.6, "m"), bed_friction=Q(0.3, ""), return_friction=Q(0.05, "")))
    '2,186 N'
    """
    return belt_mass_per_length * GRAVITY * horizontal_run * (bed_friction + return_friction)


@unit_aware(pull="N", ridden_length="m", returns="J", may_be_zero=("pull",))
def pull_energy(pull, ridden_length):
    """Return the first part of the energy for one rider: the pull along the whole ride.

        E_1 = F L

    returns: Energy that the rope gives one rider.

    Source: definition of work.

    >>> show(pull_energy(Q(195, "N"), Q(150, "m")))
    '29,250 J'
    """
    return pull * ridden_length


@unit_aware(rider_mass="kg", line_speed="m/s", returns="J")
def momentum_energy(rider_mass, line_speed):
    """Return the second part of the energy for one rider: the momentum taken on at the pick-up.

        E_2 = m v^2

    returns: Energy that the drive gives: half becomes motion of the rider, half becomes heat in the gloves.

    Source: a force that gives the momentum m v while the rope keeps its speed v; Kleppner and Kolenkow, An
        Introduction to Mechanics, 2nd edition, problem 4.14, has it as a force.

    >>> show(momentum_energy(Q(75, "kg"), Q(3.4, "m/s")))
    '867 J'
    """
    return rider_mass * line_speed**2


@unit_aware(pull="N", line_speed="m/s", pick_up_acceleration="m/s**2", returns="J", may_be_zero=("pull",))
def slip_energy(pull, line_speed, pick_up_acceleration):
    """Return the third part of the energy for one rider: the pull on rope that slips through the gloves meanwhile.

        E_3 = F v^2 / (2 a)

    While the rider speeds up over the time v / a, twice as much rope goes by as snow: the pull acts on v^2 / (2 a) of
    rope more than the rider rides.

    returns: Energy that ends as heat in the gloves, beside half of the second part.

    Source: motion at constant acceleration.

    >>> show(slip_energy(Q(195, "N"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '751 J'
    """
    return pull * line_speed**2 / (2 * pick_up_acceleration)


@unit_aware(
    pull="N", ridden_length="m", rider_mass="kg", line_speed="m/s", pick_up_acceleration="m/s**2", returns="J",
    may_be_zero=("pull",), conditions=(REACHES_THE_SPEED,),
)  # fmt: skip
def energy_per_rider(pull, ridden_length, rider_mass, line_speed, pick_up_acceleration):
    """Return the energy that the drive gives to one rider, who takes hold of a moving rope and slips up to its speed.

        E = F L + m v^2 + F v^2 / (2 a)

    returns: Energy for one rider: pull, momentum taken on, and slip.

    Source: conservation of energy; the tests compare it with a pick-up integrated step by step.

    >>> show(energy_per_rider(Q(195, "N"), Q(150, "m"), Q(75, "kg"), Q(3.4, "m/s"), Q(1.5, "m/s**2")))
    '30,868 J'
    """
    return (
        pull_energy.plain(pull, ridden_length)
        + momentum_energy.plain(rider_mass, line_speed)
        + slip_energy.plain(pull, line_speed, pick_up_acceleration)
    )
