"""A case: a profile, a hidden fault, conditions, and what the learner may do."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass

from trainer.circuit.codes import Sensed
from trainer.circuit.constraints import Cylinder
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Operation
from trainer.reasoning.universe.complaint import Complaint
from trainer.sound.render import Bed


@dataclass(frozen=True, slots=True)
class StoredCode:
    """A code already in memory before the first test: it was true once, and proves nothing about the fault now."""

    cylinder: Cylinder
    sensed: Sensed


@dataclass(frozen=True, slots=True)
class Case:
    """Everything that one attempt is about; `faults` empty means that the circuit passes."""

    name: str
    title: str
    story: str
    profile: Profile
    faults: tuple[Fault, ...]
    temperature_c: float
    bed: Bed
    evidence: frozenset[Operation]
    stored: tuple[StoredCode, ...]
    takeaway: str
    seed: int
    difficulty: int
    code: str | None = None
    priors: Mapping[str, float] | None = None
    right_answer: tuple[Fault, ...] | None = None
    complaint: Complaint | None = None

    @property
    def number(self) -> int:
        """The number that a case is shown under, because its name would reveal its fault."""
        return number_of(self.name)

    @property
    def digest(self) -> str:
        """A hash that identifies the case's content and its profile's."""
        offered = sorted(map(str, self.evidence))
        parts = (self.faults, self.profile.digest, self.stored, self.temperature_c, self.bed, offered)
        return hashlib.sha256(repr(parts).encode()).hexdigest()

    @property
    def to_be_found(self) -> tuple[Fault, ...]:
        """What a right finding names: the faults, or another answer where the case is meant to stay open."""
        return self.faults if self.right_answer is None else self.right_answer


def number_of(name: str) -> int:
    """Return a number of four digits made from a case's name."""
    return int.from_bytes(hashlib.sha256(name.encode("utf-8")).digest()[:4], "big") % 9000 + 1000
