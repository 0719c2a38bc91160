"""A line fitted to a track whose errors hang together."""

import numpy as np
import pytest
from scipy.special import stdtr

from liftcalc.fieldwork.line_fit import fit_line


def test_the_fit_knows_a_line_and_forgets_no_unit_of_time():
    times = np.arange(0.0, 40.0)
    fit = fit_line(times, 5.0 + 2.5 * times)
    assert fit.slope == pytest.approx(2.5, rel=1e-9)
    assert fit.at(10.0) == pytest.approx(30.0, rel=1e-9)
    noisy = 2.5 * times + np.random.default_rng(5).normal(0, 1, 40)
    assert fit_line(times + 1e5, noisy).slope == pytest.approx(fit_line(times, noisy).slope, rel=1e-6)


def fit_by_hand(times, readings, expected_wander):
    """Return slope, its doubt, the share within a half-width as a function of it, and the error that explains most.

    Each error model is weighed by how well it explains what is left of the readings once level and slope are out: their
    parts that no straight line has a share in follow a multivariate t of 3 degrees of freedom.
    """
    size = -(-len(times) // 60)
    blocks = [slice(begin, begin + size) for begin in range(0, len(times), size)]
    time, reading = (np.array([column[block].mean() for block in blocks]) for column in (times, readings))
    count = np.array([len(times[block]) for block in blocks])
    design = np.column_stack([np.ones(time.size), time])
    no_line = np.linalg.svd(design.T)[2][2:]
    freedom, models = 3 + time.size - 2, []
    for lasts in (20, 40, 80, 160, 320):
        for white in (0.002, 0.01, 0.05, 0.2, 0.8):
            error = np.exp(-np.abs(np.subtract.outer(time, time)) / lasts) + np.diag(white / count)
            inverse = np.linalg.inv(error)
            covariance = np.linalg.inv(design.T @ inverse @ design)
            line = covariance @ design.T @ inverse @ reading
            rest = reading - design @ line
            left, shape = no_line @ reading, 3 * expected_wander**2 / 3 * no_line @ error @ no_line.T
            log_weight = -0.5 * np.linalg.slogdet(shape)[1] - freedom / 2 * np.log1p(
                left @ np.linalg.solve(shape, left) / 3
            )
            variance = (3 * expected_wander**2 + rest @ inverse @ rest) / freedom
            models.append((log_weight, line[1], np.sqrt(variance * covariance[1, 1]), variance, lasts, white))
    log_weights, slopes, spreads, variances, lasts, whites = np.array(models).T
    weights = np.exp(log_weights - log_weights.max())
    weights /= weights.sum()
    slope = weights @ slopes
    doubt = np.sqrt(weights @ (spreads**2 * freedom / (freedom - 2) + (slopes - slope) ** 2))

    def share_within(half_width):
        ends = (np.add.outer((-half_width, half_width), slope - slopes)) / spreads
        below, above = stdtr(freedom, ends)
        return weights @ (above - below)

    explains = np.sqrt(weights @ variances), np.exp(weights @ np.log(lasts)), np.sqrt(weights @ (variances * whites))
    return slope, doubt, share_within, explains


@pytest.mark.parametrize(("count", "expected_wander"), [(9, 2.6), (23, 5.2), (131, 2.6)])
def test_the_fit_is_the_weighing_of_models_by_another_road(count, expected_wander):
    rng = np.random.default_rng(count)
    times = np.cumsum(rng.uniform(0.5, 3.0, count))
    readings = 2.5 * times + np.cumsum(rng.normal(0, 0.5, count)) + rng.normal(0, 0.4, count)
    slope, doubt, share_within, (size, lasts, white) = fit_by_hand(times, readings, expected_wander)
    fit = fit_line(times, readings, expected_wander)
    assert fit.slope == pytest.approx(slope, rel=1e-8)
    assert fit.slope_uncertainty == pytest.approx(doubt, rel=1e-8)
    assert share_within(fit.half_width_95) == pytest.approx(0.95, abs=1e-8)
    assert fit.wander == pytest.approx(size, rel=1e-8)
    assert fit.wander_time == pytest.approx(lasts, rel=1e-8)
    assert fit.white_noise == pytest.approx(white, rel=1e-8)
