"""A set: cases listed or drawn for a class, with the policy under which they are worked."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from trainer.cases.single_case.case import Case
from trainer.circuit.elements import Location
from trainer.circuit.faults import FaultKind
from trainer.circuit.profile import Profile


class Mode(StrEnum):
    """What a set is for."""

    PRACTICE = "practice"
    EXAM = "exam"


class Seeds(StrEnum):
    """Who gets the same draws and the same small variations of sound."""

    SAME = "same"
    PER_LEARNER = "per_learner"
    VERSIONS = "versions"


class Counts(StrEnum):
    """Which of several tries gives the mark."""

    FIRST = "first"
    BEST = "best"
    LAST = "last"


class DebriefOpens(StrEnum):
    """From when on a learner may see truth against finding."""

    AFTER_EACH = "after_each"
    AFTER_SET = "after_set"
    AFTER_CLOSING = "after_closing"


class Order(StrEnum):
    """In which order the cases come."""

    LISTED = "listed"
    SHUFFLED = "shuffled"


@dataclass(frozen=True, slots=True)
class Policy:
    """The rules of a set; None stands for no limit.

    `plays` and `readings` are allowed for each case, `bench_minutes` are labour for each case, `clock_minutes` real
    time for the whole try. `certainty_weight` is the share of a mark that the certainty gives, 0 to 0.5.
    """

    mode: Mode
    opens: datetime | None
    closes: datetime | None
    tries: int | None
    counts: Counts
    plays: int | None
    readings: int | None
    bench_minutes: float | None
    clock_minutes: float | None
    hints: bool
    trace: str
    certainty_weight: float
    debrief: DebriefOpens
    order: Order
    passes_at: float


@dataclass(frozen=True, slots=True)
class Support:
    """What one learner is given beside the policy: a setting, never a diagnosis."""

    learner: str
    extra_time: float = 1.0
    extra_plays: int = 0
    extra_readings: int = 0
    trace: bool = False
    quieter_bed_db: float = 0.0


@dataclass(frozen=True, slots=True)
class Listed:
    """One case by name; `own` says that it is a file of the instructor's, not a shipped one."""

    case: Case
    weight: float
    own: bool


@dataclass(frozen=True, slots=True)
class Draw:
    """So many cases drawn from a pool; empty `kinds` allow every kind, `passes` and `groups` what a pool may hold.

    `shipped` None draws faults freely; otherwise it is the pool of finished cases that fit.
    """

    count: int
    profiles: tuple[Profile, ...]
    places: tuple[Location, ...]
    kinds: frozenset[FaultKind]
    difficulties: tuple[int, ...]
    passes: bool
    groups: bool
    weight: float
    shipped: tuple[Case, ...] | None = None


@dataclass(frozen=True, slots=True)
class SetPack:
    """A set with every case and profile that it needs, as text: what is sealed, kept and known by its digest."""

    content: str
    cases: Mapping[str, str]
    profiles: Mapping[str, str]

    @property
    def plain(self) -> bytes:
        """The pack as canonical JSON."""
        parts = {"content": self.content, "cases": dict(self.cases), "profiles": dict(self.profiles)}
        return json.dumps(parts, sort_keys=True, ensure_ascii=False).encode("utf-8")

    @property
    def id(self) -> str:
        """A digest of everything in the pack."""
        return hashlib.sha256(self.plain).hexdigest()[:32]


@dataclass(frozen=True)
class CaseSet:
    """A checked set; `shares` are the least shares of circuit-passes and of group faults."""

    id: str
    name: str
    title: str
    lines: tuple[Listed | Draw, ...]
    seeds: Seeds
    versions: tuple[int, ...]
    draw_key: str
    policy: Policy
    support: Mapping[str, Support]
    shares: tuple[float, float]
    pack: SetPack

    @property
    def size(self) -> int:
        """How many cases a learner works."""
        return sum(1 if isinstance(line, Listed) else line.count for line in self.lines)

    @property
    def weights(self) -> tuple[float, ...]:
        """The weight of each case, in the order in which the set is written."""
        counts = ((line.weight, 1 if isinstance(line, Listed) else line.count) for line in self.lines)
        return tuple(weight for weight, count in counts for _case in range(count))

    def support_of(self, learner: str) -> Support:
        """What a learner is given beside the policy."""
        return self.support.get(learner, Support(learner))
