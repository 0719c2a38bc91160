"""Pull, work and power: what one rider costs the motor, and how many an hour it can carry.

Planning figures, no design. Whether a motor, a rope or a drive may carry more is for the maker, licensed people and
the authority to say.
"""

import numpy as np

from liftcalc.constants import (
    GAS_CONSTANT_OF_AIR,
    GRAVITY,
    SEA_LEVEL_TEMPERATURE,
    SECONDS_PER_HOUR,
    TEMPERATURE_LAPSE,
)
from liftcalc.formulas.conditions import BELOW_THE_HIGHEST, PART_OF_THE_POWER
from liftcalc.units import unit_aware

TEMPERATURE = SEA_LEVEL_TEMPERATURE.quantity.m_as("kelvin")
LAPSE = TEMPERATURE_LAPSE.quantity.m_as("kelvin/m")
GAS_CONSTANT = GAS_CONSTANT_OF_AIR.quantity.m_as("J/(kg*kelvin)")
WATTS_PER_KILOWATT = 1000.0


@unit_aware(
    motor_power="kW", efficiency="", line_speed="m/s", idle_drag="N", energy_per_rider="J", returns="person/hour",
    may_be_zero=("idle_drag",),
    conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def motor_capacity(motor_power, efficiency, line_speed, idle_drag, energy_per_rider):
    r"""Return how many riders an hour a motor can pull, its drive re-geared to keep full power at every line speed.

    Parameters
    ----------
    motor_power : Quantity [kW]
        Rated power of the motor; a scalar or an array.
    efficiency : Quantity []
        Part of the motor's power that reaches the rope: 1 or less.
    line_speed : Quantity [m/s]
        Speed of the haul rope or belt.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, or belt; may be zero.
    energy_per_rider : Quantity [J]
        Energy that the drive gives to one rider.

    Returns
    -------
    Quantity [person/hour]
        Riders an hour; zero where the empty rope alone takes all the power.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero (the drag: negative), or the efficiency is more than 1.

    Notes
    -----
    .. math:: C = 3600 (\eta P - F_0 v) / E

    Source: conservation of energy: power left over for riders, over the energy for one.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(motor_capacity(Q(15, "kW"), Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N"), Q(30800, "J")))
    '1,292 pph'
    """
    power_for_riders = WATTS_PER_KILOWATT * efficiency * motor_power - idle_drag * line_speed
    return SECONDS_PER_HOUR * np.maximum(power_for_riders, 0.0) / energy_per_rider


@unit_aware(
    motor_power="kW", efficiency="", idle_drag="N", energy_per_rider="J", line_speed="m/s", base_speed="m/s",
    returns="person/hour", may_be_zero=("idle_drag",),
    conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def motor_capacity_at_constant_torque(motor_power, efficiency, idle_drag, energy_per_rider, *, line_speed, base_speed):
    r"""Return how many riders an hour a motor can pull on a variable-speed drive, whose torque is what is constant.

    Parameters
    ----------
    motor_power : Quantity [kW]
        Rated power of the motor, which it gives at base speed and above; a scalar or an array.
    efficiency : Quantity []
        Part of the motor's power that reaches the rope: 1 or less.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, or belt; may be zero.
    energy_per_rider : Quantity [J]
        Energy that the drive gives to one rider at this line speed.
    line_speed : Quantity [m/s]
        Speed of the haul rope or belt.
    base_speed : Quantity [m/s]
        Line speed at which the motor runs at its rated speed.

    Returns
    -------
    Quantity [person/hour]
        Riders an hour; zero where the empty rope alone takes all the power.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero (the drag: negative), or the efficiency is more than 1.

    Notes
    -----
    .. math:: C = 3600 (\eta P \min(v / v_{base}, 1) - F_0 v) / E

    Below base speed the limit falls about in proportion to the speed: a slower rope lets the motor carry fewer.
    Source: conservation of energy; power is torque times speed.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(motor_capacity_at_constant_torque(Q(15, "kW"), Q(85, "percent"), Q(500, "N"), Q(29600, "J"),
    ...                                        line_speed=Q(1.7, "m/s"), base_speed=Q(3.4, "m/s")))
    '672 pph'
    """
    power_at_this_speed = motor_power * np.minimum(line_speed / base_speed, 1.0)
    return motor_capacity.plain(power_at_this_speed, efficiency, line_speed, idle_drag, energy_per_rider)


@unit_aware(motor_power="kW", efficiency="", ride_work="J", returns="person/hour", conditions=(PART_OF_THE_POWER,))
def simple_motor_capacity(motor_power, efficiency, ride_work):
    r"""Return how many riders an hour a motor can pull by the simple law, in which the line speed drops out.

    Parameters
    ----------
    motor_power : Quantity [kW]
        Rated power of the motor; a scalar or an array.
    efficiency : Quantity []
        Part of the motor's power that reaches the rope: 1 or less.
    ride_work : Quantity [J]
        Work of one ride at a steady speed.

    Returns
    -------
    Quantity [person/hour]
        Riders an hour. Too high: empty rope, momentum and slip are left out.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero, or the efficiency is more than 1.

    Notes
    -----
    .. math:: C = 3600 \eta P / W

    True only of a drive that is re-geared to keep its full power at every speed. Source: conservation of energy.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(simple_motor_capacity(Q(15, "kW"), Q(85, "percent"), Q(29200, "J")))
    '1,572 pph'
    """
    return SECONDS_PER_HOUR * WATTS_PER_KILOWATT * efficiency * motor_power / ride_work


@unit_aware(
    hourly_capacity="person/hour", efficiency="", line_speed="m/s", idle_drag="N", energy_per_rider="J", returns="kW",
    may_be_zero=("hourly_capacity", "idle_drag"),
    conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def motor_power_needed(hourly_capacity, efficiency, line_speed, idle_drag, energy_per_rider):
    r"""Return the power that a motor must give, on average, to pull a number of riders an hour.

    Parameters
    ----------
    hourly_capacity : Quantity [person/hour]
        Riders an hour; a scalar or an array; may be zero.
    efficiency : Quantity []
        Part of the motor's power that reaches the rope: 1 or less.
    line_speed : Quantity [m/s]
        Speed of the haul rope or belt.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, or belt; may be zero.
    energy_per_rider : Quantity [J]
        Energy that the drive gives to one rider.

    Returns
    -------
    Quantity [kW]
        Power at the motor. Gusts of heavy riders and a start with a full line need more.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero (capacity and drag: negative), or the efficiency is more than 1.

    Notes
    -----
    .. math:: P = (C E / 3600 + F_0 v) / \eta

    Source: conservation of energy.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(motor_power_needed(Q(1200, "pph"), Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N"), Q(30800, "J")))
    '14.1 kW'
    """
    power_at_rope = hourly_capacity * energy_per_rider / SECONDS_PER_HOUR + idle_drag * line_speed
    return power_at_rope / efficiency / WATTS_PER_KILOWATT


@unit_aware(
    efficiency="",
    line_speed="m/s",
    idle_drag="N",
    returns="kW",
    may_be_zero=("idle_drag",),
    conditions=(PART_OF_THE_POWER,),
)
def idle_power(efficiency, line_speed, idle_drag):
    r"""Return the power that the motor gives while nobody rides.

    Parameters
    ----------
    efficiency : Quantity []
        Part of the motor's power that reaches the rope: 1 or less.
    line_speed : Quantity [m/s]
        Speed of the haul rope or belt.
    idle_drag : Quantity [N]
        Drag of the whole empty rope, or belt; may be zero.

    Returns
    -------
    Quantity [kW]
        Power at the motor.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero (the drag: negative), or the efficiency is more than 1.

    Notes
    -----
    .. math:: P_0 = F_0 v / \eta

    A power meter on the running empty lift reads it, and so gives the drag. Source: definition of power.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(idle_power(Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N")))
    '2.0 kW'
    """
    return idle_drag * line_speed / efficiency / WATTS_PER_KILOWATT


@unit_aware(rated_power="kW", altitude="m", returns="kW", may_be_zero=("altitude",), conditions=(BELOW_THE_HIGHEST,))
def engine_power_at_altitude(rated_power, altitude):
    r"""Return what is left of an engine's power in thin air, for an engine that breathes without a charger.

    Parameters
    ----------
    rated_power : Quantity [kW]
        Power at sea level; a scalar or an array.
    altitude : Quantity [m]
        Height above the sea, up to 11,000 m; may be zero.

    Returns
    -------
    Quantity [kW]
        Power at that height. An electric motor does not lose power so, but its cooling suffers: ask the maker.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the power is not greater than zero, or the altitude is negative or above 11,000 m.

    Notes
    -----
    .. math:: P = P_0 (1 - L h / T_0)^{g / (L R) - 1}

    Power in proportion to the density of the air is common practice, no published source; an engine's own plate or
    manual says it better. Source: for the density, ISO 2533 standard atmosphere, from memory; the tests integrate it.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(engine_power_at_altitude(Q(15, "kW"), Q(2000, "m")))
    '12.3 kW'
    """
    return rated_power * (1 - LAPSE * altitude / TEMPERATURE) ** (GRAVITY / (LAPSE * GAS_CONSTANT) - 1)


@unit_aware(riders="person", mean_mass="kg", mass_variation="", returns="kg", may_be_zero=("mass_variation",))
def peak_riders_mass(riders, mean_mass, mass_variation):
    r"""Return the mass of a full line at a heavy moment, when the riders on it are of mixed mass.

    Parameters
    ----------
    riders : Quantity [person]
        Riders on the line at once; a scalar or an array.
    mean_mass : Quantity [kg]
        Mean mass of one rider with clothes, skis and all.
    mass_variation : Quantity []
        Standard deviation of the masses over their mean, also called coefficient of variation; may be zero.

    Returns
    -------
    Quantity [kg]
        Mass of all of them together: the mean, and two standard deviations of the sum.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If riders or mass are not greater than zero, or the variation is negative.

    Notes
    -----
    .. math:: M = N m (1 + 2 c / \sqrt N)

    N is the plain number of riders, whose root is taken; m is kilograms a rider, so the product is a mass. About one
    full line in forty is heavier, if riders come in no order of mass. The mean alone sets energy and hourly capacity.
    Source: standard deviation of a sum of independent values.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(peak_riders_mass(Q(25, "person"), Q(75, "kg"), Q(0.25, "")))
    '2,062 kg'
    """
    return riders * mean_mass * (1 + 2 * mass_variation / np.sqrt(riders))


@unit_aware(motor_power="kW", hourly_capacity="person/hour", returns="kW/kilopph")
def power_per_thousand_pph(motor_power, hourly_capacity):
    r"""Return the power for each thousand riders an hour, to set lifts of different size side by side.

    Parameters
    ----------
    motor_power : Quantity [kW]
        Rated power or needed power: say which; a scalar or an array.
    hourly_capacity : Quantity [person/hour]
        Riders an hour, of one level for all lifts that are compared.

    Returns
    -------
    Quantity [kW/kilopph]
        Kilowatts per 1,000 pph, which is the same number as watt-hours a rider.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: p = 1000 P / C

    Lifts of unlike rise differ in it for that reason alone. Source: definition.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> energy_of_one_ride = power_per_thousand_pph(Q(14.1, "kW"), Q(1200, "pph"))
    >>> show(energy_of_one_ride * Q(1000, "pph"), "kW")
    '11.8 kW'
    """
    return 1000 * motor_power / hourly_capacity


@unit_aware(
    riders="person", starting_acceleration="m/s**2", pull="N", idle_drag="N", rider_mass="kg", moving_mass="kg",
    returns="N", may_be_zero=("riders", "starting_acceleration", "pull", "idle_drag", "moving_mass"),
)  # fmt: skip
def force_to_start(riders, starting_acceleration, *, pull, idle_drag, rider_mass, moving_mass):
    r"""Return the force at the drive sheave that starts a full line.

    Parameters
    ----------
    riders : Quantity [person]
        Riders on the line at the start; a scalar or an array; may be zero.
    starting_acceleration : Quantity [m/s**2]
        How hard the rope speeds up; zero for the steady run.
    pull : Quantity [N]
        Pull of one rider along the slope; may be zero.
    idle_drag : Quantity [N]
        Drag of the whole empty rope; may be zero.
    rider_mass : Quantity [kg]
        Mass of one rider; of a mixed line, the heavy moment's mass over the riders.
    moving_mass : Quantity [kg]
        Mass of the rope, carriers and sheaves that move with it; may be zero.

    Returns
    -------
    Quantity [N]
        Force that the motor gives at the rope; without the drive's own mass, the difference of the two rope tensions.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If the mass of a rider is not greater than zero, or another argument is negative.

    Notes
    -----
    .. math:: F_{start} = N F + F_0 + (N m + M) a

    Riders let go when a rope tow stops: it starts empty. Source: Newton's second law for rope and riders together.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(force_to_start(Q(22, "person"), Q(0.3, "m/s**2"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...                     rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '5,405 N'
    """
    steady = riders * pull + idle_drag
    return steady + (riders * rider_mass + moving_mass) * starting_acceleration


@unit_aware(moment_of_inertia="kg*m**2", sheave_radius="m", gear_ratio="", returns="kg")
def inertia_at_the_rope(moment_of_inertia, sheave_radius, gear_ratio=1.0):
    r"""Return the mass at the rope that is as hard to start as something that turns with the drive.

    Parameters
    ----------
    moment_of_inertia : Quantity [kg*m**2]
        Of the rotor, the gear or the brake disc about its own axis: the maker's papers have it; a scalar or an array.
    sheave_radius : Quantity [m]
        Radius of the drive sheave at the rope.
    gear_ratio : Quantity []
        Turns of the part for one turn of the drive sheave; 1, what turns with the sheave itself, if left out.

    Returns
    -------
    Quantity [kg]
        Mass to add to the moving mass in ``force_to_start``; it is the motor's to start, and no part of what the rope's
        grip must pass on.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: M = J i^2 / R^2

    What turns faster counts with the square of its turns: a small rotor may weigh more at the rope than all the rope.
    Source: kinetic energy of rotation, as in any mechanics text.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(inertia_at_the_rope(Q(0.1, "kg*m**2"), Q(0.8, "m"), Q(43.4, "")))
    '294 kg'
    """
    return moment_of_inertia * gear_ratio**2 / sheave_radius**2
