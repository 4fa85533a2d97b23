"""The score of a finding, 0 to 100, with its whole arithmetic; certainty is scored apart."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from trainer.reasoning.finding import Claim, Finding

CYLINDERS, LOCATION, KIND, PROOF, ECONOMY = 25.0, 30.0, 15.0, 20.0, 10.0


@dataclass(frozen=True, slots=True)
class Score:
    """Shares from 0 to 1 of each part, the points they give, and the binary Brier score of the certainty."""

    cylinders: float
    location: float
    kind: float
    proof: float
    economy: float
    brier: float
    right: bool

    @property
    def points(self) -> float:
        """The sum of all parts."""
        return (
            CYLINDERS * self.cylinders
            + LOCATION * self.location
            + KIND * self.kind
            + PROOF * self.proof
            + ECONOMY * self.economy
        )


def overlap(named: Collection[object], true: Collection[object]) -> float:
    """Return what two sets share over what they hold together; two empty ones agree."""
    first, second = set(named), set(true)
    return len(first & second) / len(first | second) if first | second else 1.0


def score_of(finding: Finding, truth: tuple[Claim, ...], proof: float, economy: float) -> Score:
    """Score a finding against the truth, given how well it was proved and how economically (shares from 0 to 1).

    Economy counts only where proof is full and the location right.
    """
    cylinders = overlap(_cylinders(finding.claims), _cylinders(truth))
    location = overlap([c.location for c in finding.claims], [c.location for c in truth])
    kind = overlap([c.kind for c in finding.claims], [c.kind for c in truth])
    right = cylinders == 1.0 and location == 1.0 and kind == 1.0
    thrifty = economy if proof >= 1.0 and location == 1.0 else 0.0
    return Score(cylinders, location, kind, proof, thrifty, binary_brier(finding.certainty, right), right)


def binary_brier(certainty: float, right: bool) -> float:
    """Return (certainty − outcome)²: Brier's score of 1950 for two classes, halved; 0 is best, 1 is worst."""
    return (certainty - float(right)) ** 2


def _cylinders(claims: tuple[Claim, ...]) -> set[int]:
    return {cylinder for claim in claims for cylinder in claim.cylinders}
