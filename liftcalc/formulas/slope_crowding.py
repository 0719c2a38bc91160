"""Room on the slope: how many an hour can ski down it."""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import unit_aware


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
