"""What is believed after evidence: the posterior over hypotheses, in logarithms, the same in whatever order it came."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

import numpy as np

from trainer.arrays import Flags, Floats
from trainer.circuit.elements import Location
from trainer.reasoning.advice.measured import (
    SEPARATED,
    Standing,
    is_electrical,
    mates_agree,
    separating_factor,
    standing_of,
)
from trainer.reasoning.universe.finding import Claim
from trainer.reasoning.universe.hypotheses import Hypotheses, same_claims
from trainer.reasoning.universe.questions import Answers, Expected, Question
from trainer.reasoning.verdict.joint import TryKey, after_block, blocks_of, nothing_followed

LEAST_PRIOR = 1e-300
"""What a prior of nought is taken for, so that its logarithm is a number."""

AGAINST_SIDE = 0.25
"""Under this share of its finding's chance, three to one, the evidence contradicts a named side."""

Name = TypeVar("Name", bound=Hashable)
Inseparable = Callable[[Claim], frozenset[str]]
"""Returns the places that no offered measurement tells from a claimed one."""


FindingKey = tuple[tuple[tuple[int, ...], str, str], ...]
"""What a finding says: cylinders, place and kind of each fault."""


@dataclass(frozen=True)
class Belief:
    """The posterior of every hypothesis, and the evidence that none of them explains.

    `electrical` is what measurements alone have added to the log weights; `mates` tells whether two mates read equal;
    `tries` are the log weights of the states of every try that something was answered in, shape (state, hypothesis).
    """

    hypotheses: Hypotheses
    log_weight: Floats
    unexplained: tuple[Question, ...]
    electrical: Floats
    mates: bool
    tries: Mapping[TryKey, Floats]

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

    def standing(self, inseparable: Inseparable) -> Standing:
        """Return how sure the likeliest finding is, whether it is measured, and what is still in doubt."""
        key, sure = next(iter(self.findings.items()))
        best = next(claims for claims in self.hypotheses.claims if finding_key(claims) == key)
        return standing_of(
            self.hypotheses, self.quiet, self.electrical, best, sure, mates=self.mates, inseparable=inseparable
        )

    def unmeasured(self, claims: Sequence[Claim], inseparable: Inseparable) -> Claim | None:
        """Return the first claim that measurements do not separate from the next likely place, None where all are."""
        return next((claim for claim in claims if self._separated(claim, inseparable)[0] < SEPARATED), None)

    def measured(self, claims: Sequence[Claim], inseparable: Inseparable) -> bool:
        """Return whether measurements separate every claim; without claims, whether two mates read equal."""
        return self.unmeasured(claims, inseparable) is None if claims else self.mates

    def next_place(self, claim: Claim, inseparable: Inseparable) -> Location | None:
        """Return the place that everything but measurements leaves likeliest beside a claimed one, if it has a name."""
        _factor, _own, rival = self._separated(claim, inseparable)
        row = int(np.argmax(np.where(rival, self.quiet, -np.inf)))
        return next((one.location for one in self.hypotheses.claims[row] if one.cylinders & claim.cylinders), None)

    @property
    def quiet(self) -> Floats:
        """The log weights without what measurements have added."""
        return np.asarray(self.log_weight - self.electrical)

    def _separated(self, claim: Claim, inseparable: Inseparable) -> tuple[float, Flags, Flags]:
        return separating_factor(self.hypotheses, self.quiet, self.electrical, claim, inseparable(claim))

    def proving(self, claims: Sequence[Claim], *, sided: bool) -> float:
        """Return the chance that counts as a finding's proof.

        Sides count where they are `sided`, and where the evidence speaks against a side that was named.
        """
        whole, own = self.findings.get(finding_key(claims), 0.0), self.of_claims(claims)
        return own if sided or own < AGAINST_SIDE * whole else whole

    def of_claims(self, claims: Sequence[Claim]) -> float:
        """Return the posterior of claims, sides counted where they are named."""
        rows = [same_claims(claims, true) for true in self.hypotheses.claims]
        return float(self.probability[np.array(rows)].sum())


def finding_key(claims: Sequence[Claim]) -> FindingKey:
    """Return what a finding says, without sides; an empty one is "circuit passes"."""
    return tuple(sorted((tuple(sorted(claim.cylinders)), str(claim.location), str(claim.kind)) for claim in claims))


def believed(hypotheses: Hypotheses, expected: Mapping[Question, Expected], answers: Answers) -> Belief:
    """Return the belief after answers; raises KeyError for an answer to something that was not expected."""
    prior = np.log(np.maximum(hypotheses.prior, LEAST_PRIOR))
    log_likelihood, followed = np.zeros_like(prior), nothing_followed(len(prior))
    quiet, beside = np.zeros_like(prior), nothing_followed(len(prior))
    unexplained = list[Question]()
    for block in blocks_of(answers):
        here = {question: expected[question] for question in block}
        added, followed = after_block(block, here, answers, followed)
        log_likelihood += added
        if not is_electrical(block[0]):
            added, beside = after_block(block, here, answers, beside)
            quiet += added
        unexplained += (question for question in block if not here[question].explains(answers[question]))
    return Belief(
        hypotheses,
        prior + log_likelihood,
        tuple(unexplained),
        log_likelihood - quiet,
        mates_agree(answers),
        followed.tries,
    )


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
    weight = np.log(np.maximum(hypotheses.prior, LEAST_PRIOR))
    followed = nothing_followed(len(weight))

    def odds(logs: Floats) -> float:
        return (_log_sum(logs[rows[0]]) - _log_sum(logs[rows[1]])) / float(np.log(2.0))

    prior = odds(weight)
    bits, before = {}, prior
    for block in blocks_of(answers):
        log_likelihood, after = np.zeros_like(weight), followed
        for count, question in enumerate(block, start=1):
            log_likelihood, after = after_block(block[:count], expected, answers, followed)
            now = odds(weight + log_likelihood)
            bits[question], before = now - before, now
        weight, followed = weight + log_likelihood, after
    return prior, bits


def _log_sum(logs: Floats) -> float:
    top = float(logs.max())
    return top + float(np.log(np.exp(logs - top).sum()))
