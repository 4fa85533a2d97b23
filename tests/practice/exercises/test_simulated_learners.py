"""Practice proved on learners whose abilities are known: what it reaches, what it finds out, what it never does.

The learners are logistic (Baker 2001, chapter 2); their parameters are ours. Larger runs: adaptive_practice.py.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import spearmanr

from tests.simulated_learners import Simulated, alike, practise
from trainer.practice.course.next_task import LEAST, MOST
from trainer.practice.course.practice_log import learner_of
from trainer.practice.course.skills import Skill
from trainer.practice.course.slips import FOUND_FROM
from trainer.practice.course.waiting import MOST_WAITING

LONG = pytest.mark.long

LEARNERS = 11
"""Sixty-six abilities: of three learners' eighteen, one bad draw decides."""
SLOPES = (0.5, *(pytest.param(slope, marks=LONG) for slope in (0.75, 1.0, 1.5, 2.0)))


@pytest.mark.parametrize("slope", SLOPES)
def test_four_to_nine_of_ten_are_right_whatever_the_slope_of_the_learner(slope: float) -> None:
    learner = Simulated(alike(1.5), slope)
    practise(learner, 620, np.random.default_rng(7))
    last = learner.entries[-500:]
    assert LEAST <= np.mean([entry.right for entry in last]) <= MOST
    classes = [entry.kind_class for entry in learner.entries]
    assert not any(len(set(classes[at : at + 3])) == 1 for at in range(len(classes) - 2))
    kinds = [entry.kind for entry in learner.entries]
    assert not any(len(set(kinds[at : at + 3])) == 1 for at in range(len(kinds) - 2))
    assert len({entry.kind for entry in last}) == 8
    assert len({entry.kind_class for entry in last if entry.kind == "case"}) >= 4
    assert len(learner_of(learner.entries).waiting) <= MOST_WAITING


def mean_ability(learner: Simulated) -> float:
    """Return what practice thinks of a learner over all skills: of a single one it has few answers."""
    return float(np.mean([ability.mean for ability in learner_of(learner.entries).abilities.values()]))


@LONG
def test_one_who_forgets_is_followed_down_and_up_again() -> None:
    learner = Simulated(alike(1.2))
    chance = np.random.default_rng(3)
    practise(learner, 200, chance)
    before = mean_ability(learner)
    learner.abilities = alike(0.2)
    practise(learner, 500, chance)
    last = learner.entries[-400:]
    assert LEAST - 0.02 <= np.mean([entry.right for entry in last]) <= MOST
    assert mean_ability(learner) < before - 0.5  # more than half of the way


def test_a_guesser_is_given_what_is_easiest_and_nobody_pretends_to_know_more() -> None:
    learner = Simulated(alike(0.0), lapse=1.0)
    practise(learner, 200, np.random.default_rng(5))
    abilities = learner_of(learner.entries).abilities.values()
    assert all(ability.mean < -1.0 for ability in abilities if ability.answers > 20)


@pytest.mark.parametrize("learners", [40, pytest.param(200, marks=LONG)])
@pytest.mark.parametrize("held", ["hum_for_circuit", "firing_order"])
def test_a_misconception_is_found_within_six_tasks_and_its_refutation_comes_next(held: str, learners: int) -> None:
    found = []
    for seed in range(learners):
        learner, told = Simulated(alike(1.0), holds=held), []
        chosen = practise(learner, 8, np.random.default_rng(seed))
        for count in range(1, 8):
            if learner_of(learner.entries[:count]).slips.get(held, 0.0) >= FOUND_FROM:
                told.append(count)
                following = chosen[count]
                assert (following.why, following.about) in (("refute", held),) or following.why == "sure_wrong"
                assert following.why == "sure_wrong" or held in following.task.probes
                break
        found.append(told[0] if told else 99)
    # of nineteen in twenty, as few as chance leaves of so many learners
    assert np.mean([count <= 6 for count in found]) >= 0.95 - 2.0 * np.sqrt(0.95 * 0.05 / learners)


def test_nobody_is_said_to_hold_what_they_never_showed() -> None:
    learner = Simulated(alike(1.0))
    practise(learner, 150, np.random.default_rng(8))
    assert all(chance < FOUND_FROM for chance in learner_of(learner.entries).slips.values())


@LONG
def test_abilities_are_recovered_and_their_intervals_cover() -> None:
    rng = np.random.default_rng(11)
    true: dict[Skill, list[float]] = {skill: [] for skill in Skill}
    told: dict[Skill, list[float]] = {skill: [] for skill in Skill}
    inside = []
    for _learner in range(LEARNERS):
        learner = Simulated({skill: float(rng.normal(0.5, 1.2)) for skill in Skill})
        practise(learner, 360, rng)
        for skill, ability in learner_of(learner.entries).abilities.items():
            low, high = ability.interval
            true[skill].append(learner.abilities[skill])
            told[skill].append(ability.mean)
            inside.append(low <= learner.abilities[skill] <= high)
    pooled = spearmanr([one for skill in Skill for one in true[skill]], [one for skill in Skill for one in told[skill]])
    assert pooled.statistic >= 0.9
    # six intervals a learner at nine in ten: two standard deviations below; a learner who stays as he was is covered more
    assert np.mean(inside) >= 0.9 - 2.0 * np.sqrt(0.9 * 0.1 / (6 * LEARNERS))
