"""A straight line through readings whose errors hang together, as the fixes of a satellite receiver do.

Errors of one fix and the next are nearly the same, so a plain regression believes itself far too much: its interval of
95 % held the truth in 22 % of invented tracks (tests/fieldwork/test_track_coverage.py counts). Here the error is a slow
wander (a first-order Gauss-Markov process) with white noise on top. How far it wanders, how fast, and how much is white
noise is not known: all three are weighed over what receivers do, by how well each explains the readings.
"""

from dataclasses import dataclass

import numpy as np

WANDER_TIMES = np.array([20.0, 40.0, 80.0, 160.0, 320.0])  # s, correlation times that are weighed
WHITE_SHARES = np.array([0.002, 0.01, 0.05, 0.2, 0.8])  # variance of the white noise over that of the wander
PRIOR_FREEDOM = 3.0  # how many readings the expectation of the wander is worth
HORIZONTAL_WANDER = (
    2.6  # m, expected wander of a consumer receiver, one axis: "some metres", within a factor of about 2.5
)
VERTICAL_WANDER = 5.2  # m, the same for its height
MOST_BLOCKS = 60  # longer series are averaged down to this many blocks


@dataclass(frozen=True)
class LineFit:
    """A fitted line: level at the mean time, slope, and the doubt in the slope, all plain numbers.

    Parameters
    ----------
    mean_time, level : float
        A point of the line, in s and in the unit of the readings.
    slope, slope_uncertainty : float
        Slope and its standard uncertainty, in the unit of the readings per second.
    half_width_95 : float
        Half of the interval that holds the true slope with a probability of 95 %.
    wander, wander_time, white_noise : float
        The error that explains the residuals best on the mean: size, correlation time [s], size of the white part.
    """

    mean_time: float
    level: float
    slope: float
    slope_uncertainty: float
    half_width_95: float
    wander: float
    wander_time: float
    white_noise: float

    def at(self, times):
        """Return the fitted values at times in s."""
        return self.level + self.slope * (np.asarray(times) - self.mean_time)


def fit_line(times, readings, expected_wander=HORIZONTAL_WANDER):
    r"""Fit a straight line of readings against time, with errors that are correlated along the series.

    Parameters
    ----------
    times : array of float
        Increasing times in s.
    readings : array of float
        Readings in m at these times; three or more.
    expected_wander : float
        Expected size of the slow error in m, known to a factor of about 2.5.

    Returns
    -------
    LineFit
        Slope in m/s with its doubt.

    Notes
    -----
    .. math:: y = a + v t + e, \quad cov(e_i, e_j) = \sigma^2 (\exp(-|t_i - t_j| / \tau) + \lambda \delta_{ij})

    For each :math:`\tau` and :math:`\lambda` of a grid, generalised least squares gives a slope whose error is a
    Student t (the size :math:`\sigma` has a scaled inverse chi-square expectation). The mixture of them,
    weighted by the marginal likelihood, is the result. Source: textbook Bayesian linear regression,
    conjugate form (from memory).
    """
    time, reading, count = _blocks(np.asarray(times, float), np.asarray(readings, float))
    mean_time = time.mean()
    design = np.column_stack([np.ones_like(time), time - mean_time])
    apart = np.abs(time[:, None] - time[None, :])
    wander = np.exp(-apart[None] / WANDER_TIMES[:, None, None])
    white = np.diag(1.0 / count)[None] * WHITE_SHARES[:, None, None]
    shape = (wander[:, None] + white[None, :]).reshape(-1, time.size, time.size)
    root = np.linalg.cholesky(shape)
    whitened = np.linalg.solve(root, np.broadcast_to(np.column_stack([design, reading]), (len(root), time.size, 3)))
    normal = whitened.transpose(0, 2, 1) @ whitened
    information, moment, square = normal[:, :2, :2], normal[:, :2, 2], normal[:, 2, 2]
    inverse = np.linalg.inv(information)
    found = np.einsum("kij,kj->ki", inverse, moment)
    rest = np.maximum(square - np.einsum("ki,ki->k", moment, found), 0.0)
    freedom = PRIOR_FREEDOM + time.size - 2
    scale = (PRIOR_FREEDOM * expected_wander**2 + rest) / freedom
    log_weight = (
        -np.log(np.diagonal(root, axis1=1, axis2=2)).sum(axis=1)
        - 0.5 * np.linalg.slogdet(information)[1]
        - 0.5 * freedom * np.log(scale)
    )
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    spread = np.sqrt(scale * inverse[:, 1, 1])
    level, slope = weight @ found
    variance = weight @ (spread**2 * freedom / (freedom - 2) + (found[:, 1] - slope) ** 2)
    taus = np.repeat(WANDER_TIMES, len(WHITE_SHARES))
    shares = np.tile(WHITE_SHARES, len(WANDER_TIMES))
    return LineFit(
        mean_time=float(mean_time),
        level=float(level),
        slope=float(slope),
        slope_uncertainty=float(np.sqrt(variance)),
        half_width_95=_half_width(found[:, 1] - slope, spread, weight, freedom),
        wander=float(np.sqrt(weight @ scale)),
        wander_time=float(np.exp(weight @ np.log(taus))),
        white_noise=float(np.sqrt(weight @ (scale * shares))),
    )


def _blocks(time, reading):
    """Return times and readings averaged down to a number that can be handled, and how many stand in each block."""
    size = -(-time.size // MOST_BLOCKS)
    starts = np.arange(0, time.size, size)
    count = np.diff(np.append(starts, time.size)).astype(float)
    return np.add.reduceat(time, starts) / count, np.add.reduceat(reading, starts) / count, count


def _half_width(offset, spread, weight, freedom):
    """Return the half-width that holds 95 % of a weighted mixture of Student t distributions, by bisection."""
    from scipy.special import stdtr

    low, high = 0.0, 50.0 * float(np.max(spread) + np.max(np.abs(offset)))
    for _ in range(50):
        middle = 0.5 * (low + high)
        inside = weight @ (stdtr(freedom, (middle - offset) / spread) - stdtr(freedom, (-middle - offset) / spread))
        low, high = (middle, high) if inside < 0.95 else (low, middle)
    return high
