"""What some formulas ask of their arguments beside unit and sign.

A formula refuses an array of which a single value does not fit. Whoever has strays, a curve or a sampler, asks the same
condition first and leaves them out.
"""

import numpy as np

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import Condition

HIGHEST_ALTITUDE = 11_000.0  # m: where the temperature of the standard atmosphere ceases to fall
ROUNDING = 1e-12  # of a length that is just long enough


REACHES_THE_SPEED = Condition(
    lambda ridden_length, line_speed, pick_up_acceleration: (
        line_speed**2 / (2 * pick_up_acceleration) <= ridden_length * (1 + ROUNDING)
    ),
    lambda ridden_length, line_speed, pick_up_acceleration: (
        f"pick_up_acceleration of {np.min(pick_up_acceleration):g} m/s² takes "
        f"{np.max(line_speed**2 / (2 * pick_up_acceleration)):,.1f} m to the speed of the rope, but the ride is "
        f"{np.min(ridden_length):,.1f} m long. Write a larger pick_up_acceleration, such as Q(1.5, 'm/s**2'), or a "
        "longer ride."
    ),
    "the ride ends before its rider has the speed of the rope",
)
REACHES_THE_SPEED_AND_STOPS = Condition(
    lambda ridden_length, line_speed, acceleration: line_speed**2 / acceleration <= ridden_length * (1 + ROUNDING),
    lambda ridden_length, line_speed, acceleration: (
        f"acceleration of {np.min(acceleration):g} m/s² takes {np.max(line_speed**2 / acceleration):,.1f} m to speed "
        f"up and to stop, but the ride is {np.min(ridden_length):,.1f} m long. Write a larger acceleration, such as "
        "Q(0.5, 'm/s**2'), or a longer ride."
    ),
    "the ride ends before the cabin has speeded up and stopped",
)
TIME_ENOUGH = Condition(
    lambda ridden_length, ride_time, pick_up_acceleration: ride_time**2 >= 2 * ridden_length / pick_up_acceleration,
    lambda ridden_length, ride_time, pick_up_acceleration: (
        f"nobody covers {np.max(ridden_length):,.1f} m from rest in {np.min(ride_time):,.1f} s at "
        f"{np.min(pick_up_acceleration):g} m/s². Time the ride again, or write a larger pick_up_acceleration, such as "
        "Q(1.5, 'm/s**2')."
    ),
    "nobody covers the length from rest in that time",
)

PART_OF_THE_POWER = Condition(
    lambda efficiency: np.asarray(efficiency) <= 1,
    lambda efficiency: (
        f"efficiency must be 1 or less, but got {np.max(efficiency):g}. "
        "Write a part of one, such as Q(0.85, '') or Q(85, 'percent')."
    ),
    "the efficiency is over 1",
)
PULLS_ALONG = Condition(
    lambda tether_angle: np.asarray(tether_angle) < 90,
    lambda tether_angle: (
        f"tether_angle must be less than 90 degrees, but got {np.max(tether_angle):g} degrees. "
        "Give the angle between tether and slope, such as Q(30, 'degree')."
    ),
    "the tether stands at 90 degrees or more",
)
BELOW_THE_HIGHEST = Condition(
    lambda altitude: np.asarray(altitude) <= HIGHEST_ALTITUDE,
    lambda altitude: (
        f"altitude must be {HIGHEST_ALTITUDE:,.0f} m or less, but got {np.max(altitude):,.0f} m. "
        "Write the height above the sea in metres or feet, such as Q(2000, 'm')."
    ),
    "the altitude is over 11,000 m",
)

A_GROOVE = Condition(
    lambda groove_angle: np.asarray(groove_angle) <= 180,
    lambda groove_angle: (
        f"groove_angle must be 180 degrees or less, but got {np.max(groove_angle):g} degrees. "
        "Give the angle between the two sides of the groove, such as Q(45, 'degree')."
    ),
    "the groove is wider than 180 degrees",
)
HOLDS_AT_LEAST_ONCE = Condition(
    lambda grip_safety_factor: np.asarray(grip_safety_factor) >= 1,
    lambda grip_safety_factor: (
        f"grip_safety_factor must be 1 or more, but got {np.min(grip_safety_factor):g}. "
        "Write how many times over the rope must hold, such as Q(1.25, '')."
    ),
    "the grip safety factor is under 1",
)

FIRST_AND_LAST = Condition(
    lambda riders: np.asarray(riders) >= 2,
    lambda riders: f"riders must be two or more, but got {np.min(riders):g}. Count both the first and the last.",
    "there are fewer than two riders",
)

NO_MORE_THAN_THERE_ARE = Condition(
    lambda carriers_on_loop, carriers_out: np.asarray(carriers_out) <= carriers_on_loop,
    lambda carriers_on_loop, carriers_out: (
        f"carriers_out must be {np.min(carriers_on_loop):g} or less, the carriers on the loop, but got "
        f"{np.max(carriers_out):g}. Count the carriers on the rope anew."
    ),
    "more carriers are out than there are",
)

A_PART_OF_THE_MONEY = Condition(
    lambda interest: np.asarray(interest) <= 1,
    lambda interest: (
        f"interest must be 1 or less, but got {np.max(interest):g}. "
        "Write a part of one, such as Q(0.05, '') or Q(5, 'percent')."
    ),
    "the interest is over 1",
)
NO_MORE_THAN_PAID = Condition(
    lambda price, salvage: np.asarray(salvage) <= price,
    lambda price, salvage: (
        f"salvage must be no more than the price, {np.min(price):,.0f} dollars, but got {np.max(salvage):,.0f}. "
        "Write what the lift still brings at the end of its life."
    ),
    "the salvage is more than the price",
)
NO_MORE_THAN_ALL_PEAKS = Condition(
    lambda coincidence: np.asarray(coincidence) <= 1,
    lambda coincidence: (
        f"coincidence must be 1 or less, but got {np.max(coincidence):g}. Write Q(1, '') where all peaks come at once."
    ),
    "the coincidence is over 1",
)
SHARE_ABOVE_THE_COST = Condition(
    lambda ticket_share, variable_cost: np.asarray(ticket_share) > variable_cost,
    lambda ticket_share, variable_cost: (
        f"a ride brings {np.min(ticket_share):.4g} dollars and itself costs {np.max(variable_cost):.4g}: no number of "
        "rides pays for the lift. Write a ticket_share above the variable_cost."
    ),
    "a ride brings no more than it costs itself",
)


def cannot_keep_up(arrival_rate, seconds):
    """Say how fast a line grows, of the worst pair of arrivals an hour and seconds for each person."""
    joins, seconds = (np.ravel(each) for each in np.broadcast_arrays(arrival_rate, seconds))
    worst = np.argmax(joins * seconds)
    gets_on = SECONDS_PER_HOUR / seconds[worst]
    growth = joins[worst] - gets_on
    grows = f"by {growth:,.0f} persons an hour" if growth >= 0.5 else "without end, by chance alone"
    return (
        f"{joins[worst]:,.0f} persons an hour join the line and {gets_on:,.0f} can get on. The line grows {grows}, and "
        "no mean wait exists. Write a smaller arrival_rate, or ask line_growth how long it gets in an hour."
    )


LOADING_KEEPS_UP = Condition(
    lambda arrival_rate, loading_time: arrival_rate * loading_time < SECONDS_PER_HOUR,
    lambda arrival_rate, loading_time: cannot_keep_up(arrival_rate, loading_time),
    "as many persons join the line as can get on, or more",
)
CARRIERS_KEEP_UP = Condition(
    lambda arrival_rate, interval: arrival_rate * interval < SECONDS_PER_HOUR,
    lambda arrival_rate, interval: cannot_keep_up(arrival_rate, interval),
    "as many persons join the line as there are carriers, or more",
)
NO_LESS_THAN_THE_SQUARE = Condition(
    lambda loading_time, second_moment: second_moment >= loading_time**2 * (1 - 1e-9),
    lambda loading_time, second_moment: (
        f"second_moment of {np.min(second_moment):,.2f} s² is less than the square of a loading_time of "
        f"{np.max(loading_time):,.2f} s, and no times are so. Square each time first, and then take the mean, or ask "
        "second_moment_from_variation."
    ),
    "the mean of the squares is less than the square of the mean",
)
