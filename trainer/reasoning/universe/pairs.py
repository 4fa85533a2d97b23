"""Pairs of faults that share nothing, by composition of single ones.

A part of an answer that one of the two leaves as on the sound engine is the other's; where both change it, the changes
are added on the scale of what can be told apart. So a fault that hides what the other does, as a short that shuts the
other's feed, is not seen to hide it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations

import numpy as np

from trainer.reasoning.universe.hypotheses import Faults, Hypotheses
from trainer.reasoning.universe.questions import Answers, Expected, Question

PAIR_SHARE = 0.1
"""How often two faults are met at once: common practice, no published source."""

PAIRED = 90
"""How many single faults, those that explain most, are paired."""


def share_nothing(one: Faults, other: Faults) -> bool:
    """Tell whether two single faults lie in different injectors' circuits."""
    return bool(one and other) and not {n for f in one for n in f.cylinders} & {n for f in other for n in f.cylinders}


def chosen_pairs(
    hypotheses: Hypotheses, expected: Mapping[Question, Expected], answers: Answers
) -> tuple[tuple[int, int], ...]:
    """Return the pairs of rows that answers make worth thinking of."""
    gain = np.log(np.maximum(hypotheses.prior, 1e-300))
    for question, answer in answers.items():
        gain = gain + expected[question].log_likelihood(answer)
    singles = [int(row) for row in np.argsort(-gain, kind="stable") if hypotheses.faults[row]][:PAIRED]
    return tuple(
        (one, other)
        for one, other in combinations(singles, 2)
        if share_nothing(hypotheses.faults[one], hypotheses.faults[other])
    )


def with_pairs(hypotheses: Hypotheses, pairs: Sequence[tuple[int, int]]) -> Hypotheses:
    """Return hypotheses with pairs added; both of a pair are met as often as their priors say, PAIR_SHARE in all."""
    first, second = np.array(pairs).T
    both = hypotheses.prior[first] * hypotheses.prior[second]
    prior = np.concatenate([(1.0 - PAIR_SHARE) * hypotheses.prior, PAIR_SHARE * both / both.sum()])
    faults = (*hypotheses.faults, *(hypotheses.faults[a] + hypotheses.faults[b] for a, b in pairs))
    return Hypotheses(faults, prior)


def composed(one: Expected, pairs: Sequence[tuple[int, int]], sound: int) -> Expected:
    """Return what singles and pairs expect of a question; `sound` is the row of the engine without a fault."""
    first, second = np.array(pairs).T
    if one.flags:
        both = np.maximum(one.values[first], one.values[second])
    else:
        both = one.values[first] + one.values[second] - one.values[sound]
    return Expected(np.concatenate([one.values, both]), one.flags)
