"""The motor: how many riders an hour it can pull, the power that takes, and what a start with a full line asks of it.

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


@unit_aware(motor_power="kW", efficiency="", ride_work="J", returns="person/hour", conditions=(PART_OF_THE_POWER,))
def simple_motor_capacity(motor_power, efficiency, ride_work):
    """Return how many riders an hour a motor can pull by the simple law, in which the line speed drops out.

    True only of a drive that is re-geared to keep its full power at every speed.

        C = 3600 eta P / W, with P in watts

    returns: Riders an hour. Too high: empty rope, momentum and slip are left out.

    Source: conservation of energy.

    >>> show(simple_motor_capacity(Q(15, "kW"), Q(85, "percent"), Q(29200, "J")))
    '1,572 pph'
    """
    return SECONDS_PER_HOUR * WATTS_PER_KILOWATT * efficiency * motor_power / ride_work


@unit_aware(
    motor_power="kW", efficiency="", line_speed="m/s", idle_drag="N", energy_per_rider="J", returns="person/hour",
    conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def motor_capacity(motor_power, efficiency, line_speed, idle_drag, energy_per_rider):
    """Return how many riders an hour a motor can pull, its drive re-geared to keep full power at every line speed.

        C = 3600 (eta P - F0 v) / E, with P in watts

    returns: Riders an hour; zero where the empty rope alone takes all the power.

    Source: conservation of energy: power left over for riders, over the energy for one.

    >>> show(motor_capacity(Q(15, "kW"), Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N"), Q(30800, "J")))
    '1,292 pph'
    """
    power_for_riders = WATTS_PER_KILOWATT * efficiency * motor_power - idle_drag * line_speed
    return SECONDS_PER_HOUR * np.maximum(power_for_riders, 0.0) / energy_per_rider


@unit_aware(
    motor_power="kW", efficiency="", idle_drag="N", energy_per_rider="J", line_speed="m/s", base_speed="m/s",
    returns="person/hour", conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def motor_capacity_at_constant_torque(motor_power, efficiency, idle_drag, energy_per_rider, *, line_speed, base_speed):
    """Return how many riders an hour a motor can pull on a variable-speed drive, whose torque is what is constant.

        C = 3600 (eta P min(v / v_base, 1) - F0 v) / E, with P in watts

    Below base speed the limit falls about in proportion to the speed: a slower rope lets the motor carry fewer.

    motor_power: rated power of the motor, which it gives at base speed and above
    energy_per_rider: energy that the drive gives to one rider at this line speed
    returns: Riders an hour; zero where the empty rope alone takes all the power.

    Source: conservation of energy; power is torque times speed.

    >>> show(motor_capacity_at_constant_torque(Q(15, "kW"), Q(85, "percent"), Q(500, "N"), Q(29600, "J"),
    ...                                        line_speed=Q(1.7, "m/s"), base_speed=Q(3.4, "m/s")))
    '672 pph'
    """
    power_at_this_speed = motor_power * np.minimum(line_speed / base_speed, 1.0)
    return motor_capacity.plain(power_at_this_speed, efficiency, line_speed, idle_drag, energy_per_rider)


@unit_aware(
    hourly_capacity="person/hour", efficiency="", line_speed="m/s", idle_drag="N", energy_per_rider="J", returns="kW",
    may_be_zero=("hourly_capacity",), conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def motor_power_needed(hourly_capacity, efficiency, line_speed, idle_drag, energy_per_rider):
    """Return the power that a motor must give, on average, to pull a number of riders an hour.

        P = (C E / 3600 + F0 v) / eta, with P in watts

    returns: Power at the motor. Gusts of heavy riders and a start with a full line need more.

    Source: conservation of energy.

    >>> show(motor_power_needed(Q(1200, "pph"), Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N"), Q(30800, "J")))
    '14.1 kW'
    """
    power_at_rope = hourly_capacity * energy_per_rider / SECONDS_PER_HOUR + idle_drag * line_speed
    return power_at_rope / efficiency / WATTS_PER_KILOWATT


@unit_aware(
    efficiency="", line_speed="m/s", idle_drag="N", returns="kW", conditions=(PART_OF_THE_POWER,),
)  # fmt: skip
def idle_power(efficiency, line_speed, idle_drag):
    """Return the power that the motor gives while nobody rides.

    A power meter on the running empty lift reads it, and so gives the drag.

        P = F0 v / eta, with P in watts

    returns: Power at the motor.

    Source: definition of power.

    >>> show(idle_power(Q(85, "percent"), Q(3.4, "m/s"), Q(500, "N")))
    '2.0 kW'
    """
    return idle_drag * line_speed / efficiency / WATTS_PER_KILOWATT


@unit_aware(motor_power="kW", hourly_capacity="person/hour", returns="kW/kilopph")
def power_per_thousand_pph(motor_power, hourly_capacity):
    """Return the power for each thousand riders an hour, to set lifts of different size side by side.

    Lifts of unlike rise differ in it for that reason alone.

        p = 1000 P / C

    motor_power: rated power, or the power needed: say which
    hourly_capacity: riders an hour, of one level for all lifts that are compared
    returns: Kilowatts per 1,000 pph, which is the same number as watt-hours a rider.

    Source: definition.

    >>> show(power_per_thousand_pph(Q(14.1, "kW"), Q(1200, "pph")))
    '11.8 kW per 1,000 pph'
    """
    return 1000 * motor_power / hourly_capacity


@unit_aware(motor_power="kW", altitude="m", returns="kW", conditions=(BELOW_THE_HIGHEST,))
def engine_power_at_altitude(motor_power, altitude):
    """Return what is left of an engine's power in thin air, for an engine that breathes without a charger.

        P_left = P (1 - lapse H / T0)^(g / (lapse R) - 1), with H the altitude, R the gas constant of air,
        T0 its temperature at sea level and lapse the fall of temperature with height

    Power in proportion to the density of the air is common practice, no published source; an engine's own plate or
    manual says it better.

    motor_power: power of the engine at sea level
    returns: Power at that height. An electric motor does not lose power so, but its cooling suffers: ask the maker.

    Source: for the density, ISO 2533 standard atmosphere, from memory; the tests integrate it.

    >>> show(engine_power_at_altitude(Q(15, "kW"), Q(2000, "m")))
    '12.3 kW'
    """
    return motor_power * (1 - LAPSE * altitude / TEMPERATURE) ** (GRAVITY / (LAPSE * GAS_CONSTANT) - 1)


@unit_aware(riders_on_line="person", rider_mass="kg", mass_variation="", returns="kg")
def peak_riders_mass(riders_on_line, rider_mass, mass_variation):
    """Return the mass of a full line at a heavy moment, when the riders on it are of mixed mass.

        m_peak = N m (1 + 2 c / sqrt(N)), with N riders on the line and c the variation of their masses

    N is the plain number of riders, whose root is taken; m is kilograms a rider, so the product is a mass. About one
    full line in forty is heavier, if riders come in no order of mass. The mean alone sets energy and hourly capacity.

    rider_mass: mean mass of one rider with clothes, skis and all
    returns: Mass of all of them together: the mean, and two standard deviations of the sum.

    Source: standard deviation of a sum of independent values.

    >>> show(peak_riders_mass(Q(25, "person"), Q(75, "kg"), Q(0.25, "")))
    '2,062 kg'
    """
    return riders_on_line * rider_mass * (1 + 2 * mass_variation / np.sqrt(riders_on_line))


@unit_aware(
    riders_on_line="person", starting_acceleration="m/s**2", pull="N", idle_drag="N", rider_mass="kg", moving_mass="kg",
    returns="N", may_be_zero=("riders_on_line", "pull", "moving_mass"),
)  # fmt: skip
def force_to_start(riders_on_line, starting_acceleration, *, pull, idle_drag, rider_mass, moving_mass):
    """Return the force at the drive sheave that starts a full line.

    Riders let go when a rope tow stops: it starts empty.

        F_start = N F + F0 + (N m + M) a, with N riders on the line

    rider_mass: mass of one rider; of a mixed line, the heavy moment's mass over the riders
    returns: Force that the motor gives at the rope; without the drive's own mass, the difference of the two rope
        tensions.

    Source: Newton's second law for rope and riders together.

    >>> show(force_to_start(Q(22, "person"), Q(0.3, "m/s**2"), pull=Q(195, "N"), idle_drag=Q(500, "N"),
    ...                     rider_mass=Q(75, "kg"), moving_mass=Q(400, "kg")))
    '5,405 N'
    """
    steady = riders_on_line * pull + idle_drag
    return steady + (riders_on_line * rider_mass + moving_mass) * starting_acceleration


@unit_aware(moment_of_inertia="kg*m**2", sheave_radius="m", gear_ratio="", returns="kg")
def inertia_at_the_rope(moment_of_inertia, sheave_radius, gear_ratio=1.0):
    """Return the mass at the rope that is as hard to start as something that turns with the drive.

        M = J i^2 / R^2, with J the moment of inertia, R the sheave radius and i the gear ratio,
        which is 1 for what turns with the sheave itself

    What turns faster counts with the square of its turns: a small rotor may weigh more at the rope than all the rope.

    returns: Mass to add to the moving mass in ``force_to_start``; it is the motor's to start, and no part of what
        the rope's grip must pass on.

    Source: kinetic energy of rotation, as in any mechanics text.

    >>> show(inertia_at_the_rope(Q(0.1, "kg*m**2"), Q(0.8, "m"), Q(43.4, "")))
    '294 kg'
    """
    return moment_of_inertia * gear_ratio**2 / sheave_radius**2
