"""What the learner commits to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import Fault, FaultKind

CERTAINTIES = (0.5, 0.75, 0.95)
"""How sure a learner can say to be: a guess, leaning, would bet the job on it."""


@dataclass(frozen=True, slots=True)
class Claim:
    """One named fault: every cylinder behind it, place, kind, and the side where one is named."""

    cylinders: frozenset[int]
    location: Location
    kind: FaultKind
    side: Side | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """One or two claims, or none (the circuit passes), and how sure; raises ValueError for anything else."""

    claims: tuple[Claim, ...]
    certainty: float

    def __post_init__(self) -> None:
        if self.certainty not in CERTAINTIES:
            raise ValueError(f"certainty is one of {CERTAINTIES}, found {self.certainty!r}")
        if len(self.claims) > 2:
            raise ValueError(f"a finding names at most two faults, found {len(self.claims)}")


def claim_of(fault: Fault) -> Claim:
    """Return the claim that names a fault rightly."""
    return Claim(frozenset(fault.cylinders), fault.location, fault.kind, fault.side)


def fault_of(claim: Claim) -> Fault:
    """Return the fault that a claim stands for, at its usual severity."""
    return Fault(claim.kind, claim.location, tuple(sorted(claim.cylinders)), claim.side)


def truth_of(faults: Sequence[Fault]) -> tuple[Claim, ...]:
    """Return the claims that would be right."""
    return tuple(claim_of(fault) for fault in faults)
