"""The mathematics of ski-lift capacity, with units checked at the door."""

from liftcalc.capacity import (
    count_simulated_riders,
    hourly_capacity,
    hourly_capacity_from_head_count,
    hourly_capacity_from_interval,
    hourly_flow_from_count,
    interval_for_capacity,
    reversible_capacity,
    spacing_for_capacity,
    vertical_transport,
)
from liftcalc.levels import Capacity, LevelWarning, compare
from liftcalc.line import (
    carriers_on_loop,
    headway,
    headway_from_interval,
    interval_from_headway,
    line_speed_for_headway,
    most_persons_on_line,
    persons_from_flow,
    persons_on_line,
    ride_time,
    slope_length,
    spacing_for_headway,
    vertical_rise,
)
from liftcalc.pull import (
    attendant_stopping_distance,
    rider_deceleration,
    rider_stopping_distance,
    riders_inside,
    rope_stopping_distance,
    slope_angle,
)
from liftcalc.quantity_text import show
from liftcalc.spacing import mean_spacing, observed_spacing, spacing_from_parts
from liftcalc.units import Q, UnitError, ureg

__version__ = "0.1.0"

__all__ = [
    "Capacity",
    "LevelWarning",
    "Q",
    "UnitError",
    "attendant_stopping_distance",
    "carriers_on_loop",
    "compare",
    "count_simulated_riders",
    "headway",
    "headway_from_interval",
    "hourly_capacity",
    "hourly_capacity_from_head_count",
    "hourly_capacity_from_interval",
    "hourly_flow_from_count",
    "interval_for_capacity",
    "interval_from_headway",
    "line_speed_for_headway",
    "mean_spacing",
    "most_persons_on_line",
    "observed_spacing",
    "persons_from_flow",
    "persons_on_line",
    "reversible_capacity",
    "ride_time",
    "rider_deceleration",
    "rider_stopping_distance",
    "riders_inside",
    "rope_stopping_distance",
    "show",
    "slope_angle",
    "slope_length",
    "spacing_for_capacity",
    "spacing_for_headway",
    "spacing_from_parts",
    "ureg",
    "vertical_rise",
    "vertical_transport",
]
