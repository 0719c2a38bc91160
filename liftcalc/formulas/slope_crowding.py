"""Room on the slope: how many an hour can ski down it."""

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.units import unit_aware


@unit_aware(rider_density="person/hectare", slope_area="hectare", descent_time="s", returns="person/hour")
def slope_capacity(rider_density, slope_area, descent_time):
    r"""Return how many an hour can ski down a slope at a density that people still find pleasant.

    Parameters
    ----------
    rider_density : Quantity [person/hectare]
        Riders on each hectare at once; a scalar or an array.
    slope_area : Quantity [hectare]
        Area of the slopes that the lift serves.
    descent_time : Quantity [s]
        Mean time of one descent, stops on the slope included.

    Returns
    -------
    Quantity [person/hour]
        Riders an hour.

    Raises
    ------
    UnitError
        If an argument has no unit, or one of another kind.
    ValueError
        If an argument is not greater than zero.

    Notes
    -----
    .. math:: C = 3600 \rho A / T

    Source: Little's law; Little and Graves, chapter 5 of Building Intuition, Springer 2008.

    Examples
    --------
    >>> from liftcalc import Q, show
    >>> show(slope_capacity(Q(40, "person/hectare"), Q(1.2, "hectare"), Q(90, "s")))
    '1,920 pph'
    """
    return SECONDS_PER_HOUR * rider_density * slope_area / descent_time
