"""The grip of a hand on the rope: what it must hold, and how hard it squeezes."""

import numpy as np

from liftcalc.constants import GRAVITY
from liftcalc.units import unit_aware


@unit_aware(
    rider_mass="kg", pick_up_acceleration="m/s**2", grade="", friction="", returns="N",
    may_be_zero=("pick_up_acceleration", "grade", "friction"),
)  # fmt: skip
def held_force(rider_mass, pick_up_acceleration=0.0, *, grade, friction):
    r"""Return the force that a rider holds in the hands on a rope tow without handles.

    Parameters
    ----------
    rider_mass : Quantity [kg]
        Mass of the rider with clothes, skis and all; a scalar or an array.
    pick_up_acceleration : Quantity [m/s**2]
        How hard the rider speeds up; zero, the steady ride, if left out.
    grade : Quantity []
        Rise over horizontal run; may be zero.
    friction : Quantity []
        Friction of skis on snow; may be zero.

    Returns
    -------
    Quantity [N]
        Force of both hands together along the rope; the rope's own weight comes on top.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: F = m (g (\sin \alpha + \mu \cos \alpha) + a)

    Source: a block on an inclined plane, and Newton's second law.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(held_force(Q(80, "kg"), grade=Q(20, "percent"), friction=Q(0.06, "")))
    '200 N'
    """
    return rider_mass * (GRAVITY * (grade + friction) / np.hypot(1.0, grade) + pick_up_acceleration)


@unit_aware(held_force="N", glove_friction="", returns="N", may_be_zero=("held_force",))
def grip_squeeze(held_force, glove_friction):
    r"""Return how hard the hands must squeeze the rope to hold a force along it.

    Parameters
    ----------
    held_force : Quantity [N]
        Force of both hands together along the rope; a scalar or an array; may be zero.
    glove_friction : Quantity []
        Friction of glove on rope; a wet or icy rope has much less than a dry one.

    Returns
    -------
    Quantity [N]
        Force that presses the fingers towards the palms, both hands together.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the friction is not greater than zero, or the force is negative.

    Notes
    -----
    .. math:: S = F / (2 \mu)

    The rope is rubbed on two sides, by fingers and by palm, each pressed with S. A planning figure: a hand is no
    clamp, and it tires. Source: law of dry friction.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(grip_squeeze(Q(200, "N"), Q(0.4, "")))
    '250 N'
    """
    return held_force / (2 * glove_friction)


@unit_aware(rope_mass_per_length="kg/m", spacing="m", returns="N")
def rope_weight_in_hands(rope_mass_per_length, spacing):
    r"""Return the weight of rope that one rider lifts where the rope hangs free from rider to rider.

    Parameters
    ----------
    rope_mass_per_length : Quantity [kg/m]
        Mass of one metre of rope, as it is: a wet rope weighs more than a dry one; a scalar or an array.
    spacing : Quantity [m]
        Distance along the rope from one rider to the next.

    Returns
    -------
    Quantity [N]
        Weight of one spacing of rope, half of it from each side.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: G = q g s

    Riders further apart lift more; light hands feel it first. Source: definition of weight.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(rope_weight_in_hands(Q(0.6, "kg/m"), Q(6.8, "m")))
    '40 N'
    """
    return rope_mass_per_length * GRAVITY * spacing
