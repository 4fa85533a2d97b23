"""What is believed after evidence: the posterior over hypotheses, in logarithms, the same in whatever order it came."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

import numpy as np

from trainer.arrays import Floats
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.universe.hypotheses import Hypotheses
from trainer.reasoning.universe.questions import Answers, Expected, Question, in_order

LEAST_PRIOR = 1e-300
"""What a prior of nought is taken for, so that its logarithm is a number."""

Name = TypeVar("Name", bound=Hashable)
FindingKey = tuple[tuple[tuple[int, ...], str, str], ...]
"""What a finding says: cylinders, place and kind of each fault."""


@dataclass(frozen=True)
class Belief:
    """The posterior of every hypothesis, and the evidence that none of them explains."""

    hypotheses: Hypotheses
    log_weight: Floats
    unexplained: tuple[Question, ...] = ()

    @cached_property
    def probability(self) -> Floats:
        """The posterior, shape (hypothesis,); it sums to 1 and is nowhere exactly nought where the prior is not."""
        weight = np.exp(self.log_weight - self.log_weight.max())
        return np.asarray(weight / weight.sum())

    def summed(self, key: Callable[[tuple[Claim, ...]], Iterable[Name]]) -> dict[Name, float]:
        """Return the posterior summed by what a key says of each hypothesis's claims, largest first."""
        sums: dict[Name, float] = {}
        for claims, chance in zip(self.hypotheses.claims, self.probability, strict=True):
            for name in dict.fromkeys(key(claims)):
                sums[name] = sums.get(name, 0.0) + float(chance)
        return dict(sorted(sums.items(), key=lambda item: (-item[1], repr(item[0]))))

    @cached_property
    def findings(self) -> dict[FindingKey, float]:
        """The posterior of every finding: cylinders, place and kind of each fault; sides and severities summed."""
        return self.summed(lambda claims: [finding_key(claims)])


def finding_key(claims: Sequence[Claim]) -> FindingKey:
    """Return what a finding says, without sides; an empty one is "circuit passes"."""
    return tuple(sorted((tuple(sorted(claim.cylinders)), str(claim.location), str(claim.kind)) for claim in claims))


def believed(hypotheses: Hypotheses, expected: Mapping[Question, Expected], answers: Answers) -> Belief:
    """Return the belief after answers; raises KeyError for an answer to something that was not expected."""
    log_weight = np.log(np.maximum(hypotheses.prior, LEAST_PRIOR))
    unexplained = []
    for question in in_order(answers):
        log_weight = log_weight + expected[question].log_likelihood(answers[question])
        if not expected[question].explains(answers[question]):
            unexplained.append(question)
    return Belief(hypotheses, log_weight, tuple(unexplained))


def bits_between(
    one: FindingKey,
    other: FindingKey,
    hypotheses: Hypotheses,
    expected: Mapping[Question, Expected],
    answers: Answers,
) -> tuple[float, dict[Question, float]]:
    """Return by how many bits the prior, and each answer, speaks for one finding against another.

    An answer's bits are what it adds to those before it, in the fixed order of all answers; the sum is the logarithm to
    base 2 of the posterior odds.
    """
    rows = [np.array([finding_key(claims) == key for claims in hypotheses.claims]) for key in (one, other)]
    weights = [np.log(np.maximum(hypotheses.prior[mine], LEAST_PRIOR)) for mine in rows]
    prior = (_log_sum(weights[0]) - _log_sum(weights[1])) / np.log(2.0)
    bits, odds = {}, prior
    for question in in_order(answers):
        logs = expected[question].log_likelihood(answers[question])
        weights = [weight + logs[mine] for weight, mine in zip(weights, rows, strict=True)]
        now = (_log_sum(weights[0]) - _log_sum(weights[1])) / np.log(2.0)
        bits[question], odds = now - odds, now
    return prior, bits


def _log_sum(logs: Floats) -> float:
    top = float(logs.max())
    return top + float(np.log(np.exp(logs - top).sum()))
