"""Estimate a learner's ability in one skill: a distribution that each answer and each day away updates.

Ability is in logits. An answer is right with chance c + (1 − c)/(1 + e^−(θ − b)): the three-parameter logistic model
with slope 1 (Baker 2001, The Basics of Item Response Theory, chapters 2 and 5; no scaling factor 1.702). Ability itself
drifts as a random walk, a little with each answer, more with each day without one: so learning and forgetting are
followed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from trainer.arrays import Floats
from trainer.practice.course.skills import Answer, Demand

STEP = 0.1
GRID: Floats = np.linspace(-5.0, 5.0, 101)
"""Abilities from −5 to 5 logits."""

PRIOR_MEAN, PRIOR_SD = 0.0, 1.3
"""Mean and standard deviation of the prior, in logits: from memory, wide on purpose."""

DRIFT_PER_ANSWER, DRIFT_PER_DAY = 0.0012, 0.006
"""Variances of the walk in logits²: a third of a logit over a hundred answers, half over forty days. From memory."""

LONGEST_AWAY_DAYS = 90
LATEST = 250
"""So many of a skill's latest answers count; what older ones say has drifted away by then."""

CREDIBLE = 0.9
"""The share of an ability's interval."""


@dataclass(frozen=True)
class Ability:
    """A distribution over GRID, how many answers it rests on, and how many of them were right."""

    chance: Floats
    answers: int = 0
    right: int = 0
    day: float | None = None

    @property
    def mean(self) -> float:
        """The expected ability in logits."""
        return float(self.chance @ GRID)

    @property
    def sd(self) -> float:
        """Its standard deviation in logits."""
        return math.sqrt(float(self.chance @ (GRID - self.mean) ** 2))

    @property
    def interval(self) -> tuple[float, float]:
        """The central interval that holds the ability with chance CREDIBLE."""
        below = np.concatenate([[0.0], np.cumsum(self.chance)])
        edges = np.concatenate([GRID - STEP / 2, [GRID[-1] + STEP / 2]])
        low, high = np.interp([(1 - CREDIBLE) / 2, (1 + CREDIBLE) / 2], below, edges)
        return float(low), float(high)

    def short_of(self, level: float) -> float:
        """Return by how many logits the ability is expected to fall short of a level."""
        return float(self.chance @ np.maximum(level - GRID, 0.0))


def prior() -> Ability:
    """Return the prior: the ability before the first answer."""
    return Ability(_normed(np.exp(-0.5 * ((GRID - PRIOR_MEAN) / PRIOR_SD) ** 2)))


def right_chance(ability: Floats | float, difficulty: Floats | float, guess: Floats | float = 0.0) -> Floats:
    """Return the chance of a right answer; arguments broadcast."""
    distance = np.asarray(ability, dtype=np.float64) - difficulty
    return np.asarray(guess + (1.0 - np.asarray(guess)) / (1.0 + np.exp(-distance)))


def ability_of(answers: Sequence[Answer]) -> Ability:
    """Return the ability estimated from answers in one skill, oldest first.

    Time counts from the latest day seen: a clock that was set back takes nothing away.
    """
    chance, day = prior().chance, None
    for chance, day in _filtered(answers):  # noqa: B007  # the last one is wanted
        pass
    return Ability(chance, len(answers), sum(answer.right for answer in answers), day)


def path_of(answers: Sequence[Answer]) -> tuple[float, ...]:
    """Return the expected ability after each of the latest answers in one skill, oldest first."""
    return tuple(float(chance @ GRID) for chance, _day in _filtered(answers))


def _filtered(answers: Sequence[Answer]) -> Iterator[tuple[Floats, float]]:
    """Yield the distribution after each of the latest answers, with its day."""
    latest = answers[-LATEST:]
    if not latest:
        return
    chance = prior().chance
    difficulties = np.array([[answer.demand.difficulty] for answer in latest])
    guesses = np.array([[answer.demand.guess] for answer in latest])
    likelihoods = right_chance(GRID[None, :], difficulties, guesses)
    walked = latest[0].day
    for answer, likely in zip(latest, likelihoods, strict=True):
        whole = max(math.floor(answer.day - walked), 0)  # what is left of a day counts with the next answers
        chance = _walked(chance, whole) * (likely if answer.right else 1.0 - likely)
        chance /= chance.sum()
        walked += whole
        yield chance, max(walked, answer.day)


def ability_after(ability: Ability, day: float) -> Ability:
    """Return an ability as estimated on a later day without an answer in between."""
    if ability.day is None or day <= ability.day:
        return ability
    whole = min(math.floor(day - ability.day), LONGEST_AWAY_DAYS)
    return ability if not whole else Ability(ability.chance @ _day_walk(whole), ability.answers, ability.right, day)


def expected_answers(believed: Floats, demands: Sequence[Demand]) -> tuple[Floats, Floats]:
    """Return the chance of a right answer to each demand, and the information in bits that the answer gives.

    `believed` holds the distribution over GRID that each demand meets, shape (demand, ability); the bits are the mutual
    information of answer and ability. Both results have shape (demand,).
    """
    difficulties = np.array([[one.difficulty] for one in demands])
    guesses = np.array([[one.guess] for one in demands])
    likely = right_chance(GRID[None, :], difficulties, guesses)
    mean = (likely * believed).sum(axis=1)
    return mean, np.asarray(_entropy(mean) - (_entropy(likely) * believed).sum(axis=1))


def _walked(chance: Floats, days: int) -> Floats:
    """Return the distribution after one more answer's drift, and that of the whole days before it."""
    if days:
        chance = chance @ _day_walk(min(days, LONGEST_AWAY_DAYS))
    share = DRIFT_PER_ANSWER / (2.0 * STEP**2)
    moved = (1.0 - 2.0 * share) * chance
    moved[1:] += share * chance[:-1]
    moved[:-1] += share * chance[1:]
    moved[0] += share * chance[0]
    moved[-1] += share * chance[-1]
    return moved


@cache
def _day_walk(days: int) -> Floats:
    """Return the transition over days without an answer, shape (from, to)."""
    spread = np.exp(-0.5 * (GRID[:, None] - GRID[None, :]) ** 2 / (days * DRIFT_PER_DAY + 1e-9))
    return np.asarray(spread / spread.sum(axis=1, keepdims=True))


def _normed(weights: Floats) -> Floats:
    return np.asarray(weights / weights.sum())


def _entropy(chance: Floats) -> Floats:
    inside = np.clip(chance, 1e-12, 1.0 - 1e-12)
    return np.asarray(-(inside * np.log2(inside) + (1.0 - inside) * np.log2(1.0 - inside)))
