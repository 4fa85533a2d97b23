"""Practice proved at length: success, abilities, coverage, misconceptions, and tasks beside a random order.

Run: python -m tests.practice.exercises.adaptive_practice
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import partial

import numpy as np
from scipy.stats import norm, spearmanr

from tests.simulated_learners import Chance, Pick, Simulated, alike, practise
from trainer.practice.course.ability import DRIFT_PER_ANSWER
from trainer.practice.course.next_task import Chosen, choose
from trainer.practice.course.practice_log import Entry, learner_of
from trainer.practice.course.skills import Skill
from trainer.practice.course.slips import FOUND_FROM

Taught = Callable[[Simulated, Entry], None]
GOAL = 1.0
MOST_TASKS = 1200


def say(line: str) -> None:
    """Print at once."""
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def success() -> None:
    """Print the share right in the last 500 of 900 tasks, by slope and ability."""
    say("share right in the last 500 of 900 tasks (rows: slope; columns: ability in every skill)")
    levels = (-1.0, 0.0, 1.0, 2.0)
    say("        " + "".join(f"{level:>8.1f}" for level in levels))
    for slope in (0.5, 0.75, 1.0, 1.5, 2.0):
        shares = []
        for level in levels:
            learner = Simulated(alike(level), slope)
            practise(learner, 900, np.random.default_rng(7))
            shares.append(np.mean([entry.right for entry in learner.entries[-500:]]))
        say(f"{slope:>8.2f}" + "".join(f"{share:>8.3f}" for share in shares))


def walking(drift: float, chance: Chance) -> Taught:
    """Return how abilities drift with each answer, as the model says they do."""

    def taught(learner: Simulated, entry: Entry) -> None:
        for answer in entry.answers:
            learner.abilities[answer.demand.skill] += float(chance.normal(0.0, np.sqrt(drift)))

    return taught


def recovery(count: int = 40, tasks: int = 400) -> None:
    """Print how well abilities are found again, for learners who stay as they are and who drift as the model says."""
    for drift in (0.0, DRIFT_PER_ANSWER):
        rng = np.random.default_rng(12)
        walks = walking(drift, rng)
        true, told, inside = [], [], []
        for _learner in range(count):
            learner = Simulated({skill: float(rng.normal(0.5, 1.2)) for skill in Skill})
            practise(learner, tasks, rng, after=partial(walks, learner))
            for skill, ability in learner_of(learner.entries).abilities.items():
                low, high = ability.interval
                true.append(learner.abilities[skill])
                told.append(ability.mean)
                inside.append(low <= learner.abilities[skill] <= high)
        rank = spearmanr(true, told).statistic
        say(
            f"drift {drift}: rank correlation {rank:.3f}, intervals of 0.90 hold {np.mean(inside):.3f} of {len(inside)}"
        )


def misconceptions(runs: int = 200) -> None:
    """Print how soon a held misconception is found, and how often one that nobody holds is."""
    for held in ("hum_for_circuit", "firing_order", "counted_burst", "insisted"):
        found = []
        for seed in range(runs):
            learner = Simulated(alike(1.0), holds=held)
            practise(learner, 12, np.random.default_rng(seed))
            counts = [n for n in range(1, 13) if learner_of(learner.entries[:n]).slips.get(held, 0.0) >= FOUND_FROM]
            found.append(counts[0] if counts else 99)
        say(
            f"{held}: found within 6 tasks in {np.mean(np.array(found) <= 6):.3f} of {runs}, median {np.median(found):.0f}"
        )


def at_random(chance: Chance) -> Pick:
    """Return a choice by lot."""
    return lambda tasks, _learner, _day: Chosen(tasks[int(chance.integers(len(tasks)))], 0.0, "random", "")


def growing(gain: str) -> Taught:
    """Return how an answer teaches, at most 0.02 logits: three assumptions, none of them ours to prove.

    `any`: the same whatever its difficulty. `most at 0.84`: the rule of Wilson, Shenhav, Straccia and Cohen 2019, x·φ(x)
    with x the normal deviate of the chance to be right. `most at 0.5`: p·(1 − p).
    """

    def taught(learner: Simulated, entry: Entry) -> None:
        for answer in entry.answers:
            skill = answer.demand.skill
            likely = 1.0 / (1.0 + np.exp(-(learner.abilities[skill] - answer.demand.difficulty)))
            deviate = max(float(norm.ppf(likely)), 0.0)
            share = {"any": 1.0, "most at 0.84": deviate * norm.pdf(deviate) / norm.pdf(1.0)}
            learner.abilities[skill] += 0.02 * share.get(gain, 4.0 * likely * (1.0 - likely))

    return taught


def tasks_to_goal(seed: int, pick: Pick, taught: Taught) -> int:
    """Return how many tasks it takes until the weakest skill reaches the goal, in portions of ten."""
    rng = np.random.default_rng(seed)
    weak = list(Skill)[seed % len(Skill)]
    learner = Simulated({skill: -0.8 if skill is weak else 1.2 for skill in Skill})
    while learner.abilities[weak] < GOAL and len(learner.entries) < MOST_TASKS:
        practise(learner, 10, rng, pick, partial(taught, learner))
    return len(learner.entries)


def beside_random(runs: int = 12) -> None:
    """Print tasks until the weakest skill reaches the goal, chosen and at random, with the ratio."""
    for gain in ("any", "most at 0.84", "most at 0.5"):
        taught = growing(gain)
        chosen = np.mean([tasks_to_goal(seed, choose, taught) for seed in range(runs)])
        random = np.mean([tasks_to_goal(seed, at_random(np.random.default_rng(seed)), taught) for seed in range(runs)])
        say(f"gain {gain}: {chosen:.0f} tasks chosen, {random:.0f} at random, ratio {random / chosen:.2f}")


if __name__ == "__main__":
    success()
    recovery()
    misconceptions()
    beside_random()
