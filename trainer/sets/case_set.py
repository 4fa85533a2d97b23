"""A set: cases listed or drawn for a class, with the policy under which they are worked."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum
from typing import Annotated, Literal

from annotated_types import Interval, Len
from pydantic import BeforeValidator

from trainer.cases.single_case.case import Case
from trainer.circuit.constraints import Line
from trainer.circuit.elements import Location
from trainer.circuit.faults import FaultKind
from trainer.circuit.profile import Profile


class Mode(StrEnum):
    """The purpose of a set."""

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
    """When a learner may see the debrief."""

    AFTER_EACH = "after_each"
    AFTER_SET = "after_set"
    AFTER_CLOSING = "after_closing"


class Order(StrEnum):
    """In which order the cases come."""

    LISTED = "listed"
    SHUFFLED = "shuffled"


def _moment(value: object) -> object:
    """Return a date with time and zone, converted to UTC; raises ValueError for anything else."""
    if isinstance(value, str):
        try:
            value = datetime.fromisoformat(value)
        except ValueError as error:
            raise ValueError("a date with time and zone, for example 2027-03-01T08:00:00+01:00") from error
    if not isinstance(value, datetime) or value.tzinfo is None:
        raise ValueError("a date with time and zone, for example 2027-03-01T08:00:00+01:00")
    try:
        return value.astimezone(UTC)
    except OverflowError as error:
        raise ValueError("a date of this century") from error


Moment = Annotated[datetime, BeforeValidator(_moment)]
Count = Annotated[int, Interval(ge=1, le=999)]
Minutes = Annotated[float, Interval(gt=0, le=10_000)]
Weight = Annotated[float, Interval(gt=0, le=100)]
Share = Annotated[float, Interval(ge=0, le=1)]


@dataclass(frozen=True, slots=True)
class Policy:
    """The rules of a set; None means no limit.

    `plays` and `readings` are allowed for each case, `bench_minutes` are labour for each case, `clock_minutes` real
    time for the whole try. `certainty_weight` is the share of a mark that the certainty gives, 0 to 0.5.
    """

    mode: Mode = Mode.PRACTICE
    opens: Moment | None = None
    closes: Moment | None = None
    tries: Count | None = None
    counts: Counts = Counts.BEST
    plays: Count | None = None
    readings: Annotated[int, Interval(ge=0, le=999)] | None = None
    bench_minutes: Minutes | None = None
    clock_minutes: Minutes | None = None
    hints: bool = True
    trace: Literal["fading", "shown", "off"] = "fading"
    certainty_weight: Annotated[float, Interval(ge=0, le=0.5)] = 0.0
    debrief: DebriefOpens = DebriefOpens.AFTER_EACH
    order: Order = Order.LISTED
    passes_at: Annotated[float, Interval(ge=0, le=100)] = 60.0


@dataclass(frozen=True, slots=True)
class Support:
    """Individual settings of one learner beside the policy, without the medical reason for them."""

    learner: Annotated[Line, Len(1, 200)]
    extra_time: Annotated[float, Interval(ge=1, le=4)] = 1.0
    extra_plays: Annotated[int, Interval(ge=0, le=99)] = 0
    extra_readings: Annotated[int, Interval(ge=0, le=99)] = 0
    trace: bool = False
    quieter_bed_db: Annotated[float, Interval(ge=0, le=12)] = 0.0


@dataclass(frozen=True, slots=True)
class Shares:
    """The least shares of a set's cases whose circuit passes, and of those with a group fault."""

    circuit_passes: Share = 0.15
    groups: Share = 0.10


@dataclass(frozen=True, slots=True)
class Listed:
    """One case by name; `own` means a file of the instructor, not a shipped case."""

    case: Case
    weight: float
    own: bool


@dataclass(frozen=True, slots=True)
class Draw:
    """A number of cases drawn from a pool; empty `kinds` allow every kind, `passes` and `groups` what a pool may hold.

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
    """A set with every case and profile that it needs, as text: this is sealed, stored and identified by its digest."""

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
        """The digest of the pack."""
        return hashlib.sha256(self.plain).hexdigest()[:32]


@dataclass(frozen=True)
class CaseSet:
    """A checked set."""

    id: str
    name: str
    title: str
    lines: tuple[Listed | Draw, ...]
    seeds: Seeds
    versions: tuple[int, ...]
    draw_key: str
    policy: Policy
    support: Mapping[str, Support]
    shares: Shares
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
        """Return a learner's individual settings."""
        return self.support.get(learner, Support(learner))
