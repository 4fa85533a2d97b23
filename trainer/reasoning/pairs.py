"""Pairs of faults that share nothing, by composition of single ones.

A part of an answer that one of the two leaves as on the sound engine is the other's; where both change it, the changes
are added on the scale of what can be told apart.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

import numpy as np

from trainer.reasoning.hypotheses import Faults, Hypotheses
from trainer.reasoning.questions import Answers, Expected, Question

PAIR_SHARE = 0.1
"""How often two faults are met at once: common practice, no published source."""

PAIRED = 90
"""How many single faults, those that explain most, are paired."""


def share_nothing(one: Faults, other: Faults) -> bool:
    """Tell whether two single faults lie in different injectors' circuits."""
    return bool(one and other) and not {n for f in one for n in f.cylinders} & {n for f in other for n in f.cylinders}


def with_pairs(
    hypotheses: Hypotheses, expected: Mapping[Question, Expected], answers: Answers
) -> tuple[Hypotheses, dict[Question, Expected]]:
    """Return hypotheses and expectations with the pairs added that the answers make worth thinking of."""
    gain = np.log(np.maximum(hypotheses.prior, 1e-300))
    sound = hypotheses.faults.index(())
    for question, answer in answers.items():
        gain = gain + expected[question].log_likelihood(answer)
    singles = [row for row in np.argsort(-gain, kind="stable") if hypotheses.faults[row]][:PAIRED]
    chosen = [
        (one, other)
        for one, other in combinations(singles, 2)
        if share_nothing(hypotheses.faults[one], hypotheses.faults[other])
    ]
    if not chosen:
        return hypotheses, dict(expected)
    first, second = np.array(chosen).T
    both = hypotheses.prior[first] * hypotheses.prior[second]
    prior = np.concatenate([(1.0 - PAIR_SHARE) * hypotheses.prior, PAIR_SHARE * both / both.sum()])
    faults = (*hypotheses.faults, *(hypotheses.faults[a] + hypotheses.faults[b] for a, b in chosen))
    composed = {}
    for question, one in expected.items():
        if one.flags:
            pairs = np.maximum(one.values[first], one.values[second])
        else:
            pairs = one.values[first] + one.values[second] - one.values[sound]
        composed[question] = Expected(np.concatenate([one.values, pairs]), one.flags)
    return Hypotheses(faults, prior), composed
