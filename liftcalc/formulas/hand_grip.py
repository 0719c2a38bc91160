"""The grip of a hand on the rope: the weight of rope it lifts, what it must hold, and how hard it squeezes.

Planning figures, no design. Nobody wraps a rope round a hand or an arm.
"""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.units import unit_aware


@unit_aware(rope_mass_per_length="kg/m", spacing="m", returns="N")
def rope_weight_in_hands(rope_mass_per_length, spacing):
    """Return the weight of rope that one rider lifts where the rope hangs free from rider to rider.

        G = q g s, with q the rope's mass per length

    Riders further apart lift more; light hands feel it first.

    rope_mass_per_length: mass of one metre of rope as it is: a wet rope weighs more than a dry one
    returns: Weight of one spacing of rope, half of it from each side.

    Source: definition of weight.

    >>> show(rope_weight_in_hands(Q(0.6, "kg/m"), Q(6.8, "m")))
    '40 N'
    """
    return rope_mass_per_length * GRAVITY * spacing


@unit_aware(
    rider_mass="kg", pick_up_acceleration="m/s**2", grade="", snow_friction="", returns="N",
    may_be_zero=("pick_up_acceleration",),
)  # fmt: skip
def held_force(rider_mass, pick_up_acceleration=0.0, *, grade, snow_friction):
    """Return the force that a rider holds in the hands on a rope tow without handles.

        F = m (g (sin alpha + mu cos alpha) + a) = m (g (grade + mu) / sqrt(1 + grade^2) + a), tan alpha = grade

    Without a pick-up acceleration it is the force of the steady ride.

    returns: Force of both hands together along the rope; the rope's own weight comes on top.

    Source: a block on an inclined plane, and Newton's second law.

    >>> show(held_force(Q(80, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.06, "")))
    '200 N'
    """
    return rider_mass * (GRAVITY * (grade + snow_friction) / np.hypot(1.0, grade) + pick_up_acceleration)


@unit_aware(held_force="N", glove_friction="", returns="N")
def grip_squeeze(held_force, glove_friction):
    """Return how hard the hands must squeeze the rope to hold a force along it.

    A planning figure: a hand is no clamp, and it tires.

        F_squeeze = F / (2 mu)

    The rope is rubbed on two sides, by fingers and by palm, each pressed with this force.

    glove_friction: friction of glove on rope; on a wet or icy rope much less than on a dry one
    returns: Force that presses the fingers towards the palms, both hands together.

    Source: law of dry friction.

    >>> show(grip_squeeze(Q(200, "N"), Q(0.4, "")))
    '250 N'
    """
    return held_force / (2 * glove_friction)
