"""A case: a profile, a hidden fault, conditions, and what the learner may do."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from annotated_types import Len

from trainer.circuit.codes import Sensed
from trainer.circuit.constraints import Cylinder, Title
from trainer.circuit.fault import Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import BROUGHT_BY, Operation
from trainer.instruments.running import Mechanical, mechanical_of
from trainer.reasoning.universe.complaint import Complaint
from trainer.sound.render import Bed
from trainer.words import spoken


@dataclass(frozen=True, slots=True)
class CaseWords:
    """What a case says to people, in one language: its title, the story it comes with, a question to take away."""

    title: Title
    story: Annotated[str, Len(20, 600)]
    takeaway: Annotated[str, Len(10, 300)]


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
    translations: tuple[tuple[str, CaseWords], ...] = ()

    @property
    def in_words(self) -> CaseWords:
        """Title, story and takeaway in the language that is spoken now, or as they were written where it has none."""
        written = CaseWords(self.title, self.story, self.takeaway)
        return dict(self.translations).get(spoken(), written)

    @property
    def number(self) -> int:
        """The number that a case is shown under, because its name would reveal its fault."""
        return number_of(self.name)

    @property
    def digest(self) -> str:
        """A hash that identifies the case's content and its profile's."""
        offered = sorted(str(operation) for operation in self.evidence if operation not in BROUGHT_BY)  # as ever
        parts = (self.faults, self.profile.digest, self.stored, self.temperature_c, self.bed, offered)
        return hashlib.sha256(repr(parts).encode()).hexdigest()

    @property
    def mechanical(self) -> Mechanical | None:
        """What is mechanically wrong where the circuit passes; nothing where only a code brought it in."""
        fine = self.complaint is Complaint.CODE_ONLY
        return None if self.faults or fine else mechanical_of(self.profile, self.seed)

    @property
    def to_be_found(self) -> tuple[Fault, ...]:
        """What a right finding names: the faults, or another answer where the case is meant to stay open."""
        return self.faults if self.right_answer is None else self.right_answer


def number_of(name: str) -> int:
    """Return a number of four digits made from a case's name."""
    return int.from_bytes(hashlib.sha256(name.encode("utf-8")).digest()[:4], "big") % 9000 + 1000
