"""The item-response model against published tables, a published worked example and an independent library.

Baker 2001, The Basics of Item Response Theory (2nd edition): curves of chapters 2 and 3, the worked estimation of
chapter 5 (pages 86 to 88), information of chapter 6. The library is girth (MIT licence).
"""

from __future__ import annotations

import girth
import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from trainer.practice.course.ability import (
    DRIFT_PER_ANSWER,
    GRID,
    PRIOR_SD,
    Ability,
    ability_of,
    expected_answers,
    prior,
    right_chance,
)
from trainer.practice.course.skills import Answer, Demand, Skill

THETA = np.arange(-3.0, 4.0)
STEP = 1e-5


def information(ability: np.ndarray | float, difficulty: np.ndarray | float, guess: float = 0.0) -> np.ndarray:
    """Return Fisher's information of an answer, P′²/(P(1 − P)), from the slope of our curve."""
    chance = right_chance(ability, difficulty, guess)
    slope = (
        (right_chance(ability + STEP, difficulty, guess) - right_chance(ability - STEP, difficulty, guess)) / STEP / 2
    )
    return slope**2 / (chance * (1.0 - chance))


def test_the_three_parameter_curve_of_the_handbook() -> None:
    """Baker: a 1.3, b 1.5, c 0.2; our slope is 1, so ability and difficulty are stretched by a."""
    told = [0.2023, 0.2084, 0.2299, 0.2996, 0.4744, 0.7256, 0.9004]
    assert right_chance(1.3 * THETA, 1.3 * 1.5, 0.2) == pytest.approx(told, abs=5e-5)


def test_the_information_of_that_curve() -> None:
    told = [0.0001, 0.0007, 0.0079, 0.0613, 0.2203, 0.2759, 0.1433]
    assert 1.3**2 * information(1.3 * THETA, 1.3 * 1.5, 0.2) == pytest.approx(told, abs=5e-5)
    best = minimize_scalar(
        lambda theta: -float(information(1.3 * theta, 1.3 * 1.5, 0.2)), bounds=(0, 3), method="bounded"
    )
    assert best.x == pytest.approx(1.7055, abs=1e-3)


def test_the_two_parameter_curve_of_the_handbook() -> None:
    told = [0.1192, 0.1824, 0.2689, 0.3775, 0.5, 0.6225, 0.7311]
    assert right_chance(0.5 * THETA, 0.5) == pytest.approx(told, abs=5e-5)


def test_the_handbooks_worked_estimation_step_by_step() -> None:
    """Three items, answers right, wrong, right, from θ = 1: −0.773 to 0.227, then 0.097 to 0.324; limit 0.3248."""
    slopes, hard, right = np.array([1.0, 1.2, 0.8]), np.array([-1.0, 0.0, 1.0]), np.array([1.0, 0.0, 1.0])
    theta, seen = 1.0, []
    for _step in range(12):
        chance = right_chance(slopes * theta, slopes * hard)
        spread = float((slopes**2 * information(slopes * theta, slopes * hard)).sum())
        theta += float((slopes * (right - chance)).sum()) / spread
        seen.append(theta)
    assert seen[0] == pytest.approx(0.227, abs=1e-3)
    assert seen[1] == pytest.approx(0.324, abs=1e-3)
    assert theta == pytest.approx(0.3248, abs=1e-4)
    assert 1.0 / np.sqrt(float((slopes**2 * information(slopes * theta, slopes * hard)).sum())) == pytest.approx(
        1.2296, abs=1e-4
    )


@pytest.mark.parametrize("guess", [0.0, 0.25])
@pytest.mark.parametrize("seed", range(6))
def test_the_posterior_mean_agrees_with_an_independent_library(guess: float, seed: int) -> None:
    """Ours drifts with each answer; over ten answers that adds 0.012 to a variance of 1.69: hence the tolerance."""
    rng = np.random.default_rng(seed)
    hard = np.round(rng.uniform(-2.0, 2.0, 10), 2)
    right = rng.random(10) < 0.6
    ours = ability_of(
        [Answer(Demand(Skill.CODES, b, guess), bool(one), 0.0) for b, one in zip(hard, right, strict=True)]
    )
    options = {
        "distribution": lambda theta: np.exp(-0.5 * (theta / PRIOR_SD) ** 2) / (PRIOR_SD * np.sqrt(2 * np.pi)),
        "quadrature_bounds": (-6.0, 6.0),
        "quadrature_n": 201,
    }
    data = right.astype(int)[:, None]
    theirs = girth.ability_3pl_eap(data, hard, np.ones(10), np.full(10, guess), options)
    assert ours.mean == pytest.approx(float(np.ravel(theirs)[0]), abs=0.03)


def test_all_right_and_all_wrong_stay_finite_by_the_prior() -> None:
    """Baker, chapter 5: the maximum of the likelihood is not finite there; with a prior there is an answer."""
    for right in (True, False):
        told = ability_of([Answer(Demand(Skill.CODES, 0.0), right, 0.0)] * 12)
        assert abs(told.mean) < 3.5
        assert told.sd > 0.5


def test_what_an_answer_tells_is_the_mutual_information() -> None:
    """Two abilities, equally likely, one of them always right and one never: an answer tells one whole bit."""
    chance = np.zeros(len(GRID))
    chance[[0, -1]] = 0.5
    sure = Ability(chance)
    plain, guessed = Demand(Skill.CODES, 0.0), Demand(Skill.CODES, 0.0, 0.25)
    right, bits = expected_answers(np.array([sure.chance, prior().chance, prior().chance]), [plain, plain, guessed])
    assert right[0] == pytest.approx(0.5, abs=1e-9)
    assert bits[0] == pytest.approx(1.0, abs=0.12)
    assert 0.0 < bits[2] < bits[1]


def test_the_walk_adds_its_variance_and_nothing_else() -> None:
    before = ability_of([Answer(Demand(Skill.CODES, 3.0), False, 0.0)])
    many = [Answer(Demand(Skill.CODES, -3.0, 0.99999), True, 0.0)] * 50  # answers that tell next to nothing
    after = ability_of([Answer(Demand(Skill.CODES, 3.0), False, 0.0), *many])
    assert after.sd**2 - before.sd**2 == pytest.approx(50 * DRIFT_PER_ANSWER, rel=0.15)
