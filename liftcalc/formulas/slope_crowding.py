"""Room on the slope: how many an hour can ski down it, how dense that is, and how many guests a day's vertical serves.

Planning figures all: how dense a slope may safely get, the local code, the authority and the people on the hill say.
"""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import unit_aware

# lowest and highest riders a hectare, by level of skier
GUIDELINE_DENSITIES = {
    "beginner": (35, 75),
    "novice": (30, 60),
    "low intermediate": (20, 40),
    "intermediate": (15, 30),
    "advanced intermediate": (10, 20),
    "expert": (5, 10),
}
GUIDELINE_SOURCE = "All Seasons Resort Guidelines, British Columbia, as quoted by the FIS wiki, Ski trail capacity"


@unit_aware(rider_density="person/hectare", slope_area="hectare", descent_time="s", returns="person/hour")
def slope_capacity(rider_density, slope_area, descent_time):
    """Return how many an hour can ski down a slope at a density that people still find pleasant.

        C = 3600 rho A / T, with rho the density, A the area and T the descent time

    returns: Riders an hour.

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    >>> show(slope_capacity(Q(40, "person/hectare"), Q(1.2, "hectare"), Q(90, "s")))
    '1,920 pph'
    """
    return SECONDS_PER_HOUR * rider_density * slope_area / descent_time


@unit_aware(hourly_capacity="person/hour", slope_area="hectare", descent_time="s", returns="person/hectare")
def slope_density(hourly_capacity, slope_area, descent_time):
    """Return how many riders are on each hectare of slope at once, where a lift feeds it at a steady flow.

        rho = C T / (3600 A), with A the area and T the descent time

    returns: Average density. At a crossing, a narrows or a run-out it is more.

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    >>> show(slope_density(Q(1920, "pph"), Q(1.2, "hectare"), Q(90, "s")))
    '40 persons/ha'
    """
    return hourly_capacity * descent_time / (SECONDS_PER_HOUR * slope_area)


@unit_aware(vertical_transport="person*ft/hour", time_open="hour", guests="person", returns="ft")
def daily_vertical(vertical_transport, time_open, guests):
    """Return the vertical that a day's lifts supply for each guest.

        h = VTFH T / G, with T the time open and G the guests

    returns: Vertical a guest a day, if every place is ridden: an upper bound.

    Source: definition of a mean.

    >>> show(daily_vertical(Q(173700, "person*ft/hour"), Q(7, "hour"), Q(100, "person")))
    '12,159 ft'
    """
    return vertical_transport * time_open / guests


@unit_aware(vertical_transport="person*ft/hour", time_open="hour", vertical_demand="ft", returns="person")
def comfortable_carrying_capacity(vertical_transport, time_open, vertical_demand):
    """Return how many guests a day the lifts serve with the vertical that each wants: a planning figure.

        G = VTFH T / h, with T the time open and h the vertical demand

    It knows no peak hour, no room on the slopes and no parking, and each of them may ask for fewer.

    returns: Guests a day.

    Source: definition; FIS wiki, Capacity analysis and design.

    >>> show(comfortable_carrying_capacity(Q(173700, "person*ft/hour"), Q(7, "hour"), Q(10000, "ft")))
    '121.6 persons'
    """
    return vertical_transport * time_open / vertical_demand
