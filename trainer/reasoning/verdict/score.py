"""The score of a finding, 0 to 100, with its whole arithmetic; certainty is scored apart."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from trainer.circuit.elements import Location
from trainer.reasoning.advice.planning import PROVED
from trainer.reasoning.universe.finding import Claim, Finding
from trainer.reasoning.verdict.belief import finding_key

CYLINDERS, LOCATION, KIND, PROOF, ECONOMY = 25.0, 30.0, 15.0, 20.0, 10.0

UNMEASURED = 0.5
"""The most that place and proof count where no measurement separates the named place from the next likely one."""

SIDE_SHARE = 1.0 / 3.0
"""What the side is worth of the place, where all offered evidence proves it; a side left out earns half of that."""

FAILED_RETEST, MOST_FAILED = 10.0, 2
"""Points that a retest costs which shows the fault again, and how many are counted."""


@dataclass(frozen=True, slots=True)
class Score:
    """Shares from 0 to 1 of each part, the points they give, and the binary Brier score of the certainty.

    `lost` are points that failed retests cost.
    """

    cylinders: float
    location: float
    kind: float
    proof: float
    economy: float
    brier: float
    right: bool
    lost: float = 0.0

    @property
    def points(self) -> float:
        """The sum of all parts, less what failed retests cost."""
        earned = (
            CYLINDERS * self.cylinders
            + LOCATION * self.location
            + KIND * self.kind
            + PROOF * self.proof
            + ECONOMY * self.economy
        )
        return max(earned - self.lost, 0.0)


def overlap(named: Collection[object], true: Collection[object]) -> float:
    """Return what two sets share over what they hold together; two empty ones agree."""
    first, second = set(named), set(true)
    return len(first & second) / len(first | second) if first | second else 1.0


@dataclass(frozen=True, slots=True)
class Proof:
    """How well a finding was proved and at what cost: what its score is worked out from.

    `posterior` is the finding's probability given what was gathered, `reachable` the right one's given everything that
    was offered. `alike` are the places that no offered evidence tells from the true one. `measured` says that
    measurements separate every named place from the next likely one, or two mates where none is named; `sided` are the
    true claims whose side all offered evidence proves; `failed_retests` showed the fault again after the repairs.
    `unmeasured` is a claim that no measurement separates from its next likely place, `rival`, where that has a name.
    """

    posterior: float
    reachable: float
    best_minutes: float
    used_minutes: float
    alike: frozenset[Location] = frozenset()
    measured: bool = True
    sided: tuple[Claim, ...] = ()
    failed_retests: int = 0
    unmeasured: Claim | None = None
    rival: Location | None = None

    @property
    def share(self) -> float:
        """The share of proof: full at 0.95, or at what can be reached where a case is meant to stay open.

        By ear and codes alone it is at most a half.
        """
        reached = min(self.posterior / min(PROVED, self.reachable), 1.0) if self.reachable > 0.0 else 0.0
        return reached if self.measured else min(reached, UNMEASURED)

    @property
    def economy(self) -> float:
        """The best path's minutes over those used, at most 1."""
        return min(self.best_minutes / self.used_minutes, 1.0) if self.used_minutes > 0.0 else 1.0


def score_of(finding: Finding, truth: tuple[Claim, ...], proof: Proof) -> Score:
    """Score a finding against the truth and its proof.

    Economy counts only where proof is full and the place right. Where a place is named and no measurement separates it
    from the next likely one, place counts at most half and the finding is not right; nor is it with the wrong side of
    a circuit, or after a failed retest.
    """
    cylinders = overlap(_cylinders(finding.claims), _cylinders(truth))
    true_places = [c.location for c in truth]
    named = [true_places[0] if c.location in proof.alike and true_places else c.location for c in finding.claims]
    said = [replace(claim, location=place) for claim, place in zip(finding.claims, named, strict=True)]
    sides = [_side_share(said, true) for true in proof.sided]
    condemned = bool(finding.claims) and not proof.measured
    place = overlap(named, true_places) * min(sides, default=1.0)
    location = min(place, UNMEASURED) if condemned else place
    kind = overlap([c.kind for c in finding.claims], [c.kind for c in truth])
    mended = min(sides, default=1.0) > 1.0 - SIDE_SHARE and not proof.failed_retests
    right = finding_key(said) == finding_key(truth) and not condemned and mended
    thrifty = proof.economy if proof.share >= 1.0 and location == 1.0 else 0.0
    lost = FAILED_RETEST * min(proof.failed_retests, MOST_FAILED)
    brier = binary_brier(finding.certainty, right)
    return Score(cylinders, location, kind, proof.share, thrifty, brier, right, lost)


def _side_share(said: Sequence[Claim], true: Claim) -> float:
    """Return the share of the place's points that remains after the named side of a true claim is checked."""
    sides = [c.side for c in said if c.location is true.location and c.cylinders & true.cylinders]
    if not sides or true.side in sides:
        return 1.0
    return 1.0 - SIDE_SHARE / (2.0 if None in sides else 1.0)


def binary_brier(certainty: float, right: bool) -> float:
    """Return (certainty − outcome)²: Brier's score of 1950 for two classes, halved; 0 is best, 1 is worst."""
    return (certainty - float(right)) ** 2


def _cylinders(claims: tuple[Claim, ...]) -> set[int]:
    return {cylinder for claim in claims for cylinder in claim.cylinders}


def calibration(answers: Sequence[tuple[float, bool]]) -> dict[float, tuple[int, float]]:
    """Return, for each certainty that was said, how often it was said and the share of those that were right."""
    rows: dict[float, list[bool]] = {}
    for certainty, right in answers:
        rows.setdefault(certainty, []).append(right)
    return {certainty: (len(row), sum(row) / len(row)) for certainty, row in sorted(rows.items())}
