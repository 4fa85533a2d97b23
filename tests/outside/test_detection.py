"""The hearing model's two-alternative form against published tables of signal detection.

Proportion correct for d′ and back: tables of Elliott 1964 and Hacker and Ratcliff 1979, values as given by the
integral of φ(x − d)·Φ(x); level steps: Jesteadt, Wier and Green 1977.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import norm

from trainer.reasoning.universe.hearing import MASKED_DB
from trainer.reasoning.universe.scales import (
    ACROSS_SLOTS,
    TRACKED_CORRECT,
    accuracy_scale,
    d_prime_of,
    heard_scale,
    level_scale,
    level_step_db,
)


def proportion_correct_of(d_prime: float) -> float:
    """Return Φ(d′/√2): what an observer of equal variances gets right of two alternatives."""
    return float(norm.cdf(d_prime / np.sqrt(2.0)))


@pytest.mark.parametrize(
    ("d_prime", "correct"), [(0.5, 0.6382), (1.0, 0.7602), (1.5, 0.8556), (2.0, 0.9214), (3.0, 0.9831)]
)
def test_proportion_correct_of_two_alternatives(d_prime: float, correct: float) -> None:
    assert proportion_correct_of(d_prime) == pytest.approx(correct, abs=5e-5)
    assert d_prime_of(correct) == pytest.approx(d_prime, abs=3e-3)  # the table has four digits


@pytest.mark.parametrize(("correct", "d_prime"), [(0.75, 0.954), (0.90, 1.812)])
def test_d_prime_from_proportion_correct(correct: float, d_prime: float) -> None:
    assert d_prime_of(correct) == pytest.approx(d_prime, abs=5e-4)


# level step in dB at so many dB over threshold, from the published fit
@pytest.mark.parametrize(("sensation_db", "step_db"), [(20.0, 1.25), (40.0, 0.93), (60.0, 0.69), (80.0, 0.50)])
def test_the_just_noticeable_level_step(sensation_db: float, step_db: float) -> None:
    assert float(level_step_db(np.array(sensation_db))) == pytest.approx(step_db, abs=5e-3)


@pytest.mark.parametrize("sensation_db", [20.0, 40.0, 60.0])
def test_a_just_noticeable_step_is_heard_as_often_as_the_track_says(sensation_db: float) -> None:
    """Two tones side by side that differ by the published step: 70.7 % right of two alternatives."""
    bed_dba = 30.0
    level = bed_dba - MASKED_DB + sensation_db
    step = float(level_step_db(np.array(sensation_db)))
    low, high = level_scale(np.array([level - step / 2, level + step / 2]), bed_dba)
    assert proportion_correct_of(float(high - low)) == pytest.approx(TRACKED_CORRECT, abs=0.01)


def test_under_the_bed_all_levels_are_alike() -> None:
    deep = level_scale(np.array([-50.0, 0.0, 8.0]), 36.0)
    assert np.ptp(deep) < 0.1
    assert level_scale(np.array([36.0]), 36.0)[0] - deep[0] > 3.0


def test_slots_seconds_apart_are_told_apart_half_as_well_as_tones_in_a_booth() -> None:
    two = np.array([[60.0, 1000.0, 0.0], [62.0, 1000.0, 0.0]])
    apart = np.diff(heard_scale(two, 30.0)[:, 0])[0]
    assert apart * ACROSS_SLOTS == pytest.approx(float(np.diff(level_scale(two[:, 0], 30.0))[0]))


# GUM 4.3.7: a limit of ±0.2054 ohm (0.6 ohm, ±(0.9 % + 2 counts of 0.1)) is a standard uncertainty of 0.1186 ohm
def test_a_meters_limits_are_root_three_standard_uncertainties() -> None:
    near = accuracy_scale(np.array([0.6 - 0.05, 0.6 + 0.05]), 0.9, 0.2)
    assert 0.1 / float(near[1] - near[0]) == pytest.approx(0.2054 / np.sqrt(3.0), rel=0.002)
