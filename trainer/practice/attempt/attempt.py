"""The attempt: a value that each event turns into the next; nothing here computes, listens or looks at a clock."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from trainer.cases.single_case.case import Case
from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions, Fault
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import Price
from trainer.practice.attempt.event_json import parse_event
from trainer.practice.attempt.event_record import EventRecord
from trainer.practice.attempt.events import (
    Closed,
    CodesRead,
    EngineEvent,
    Event,
    Found,
    Heard,
    LookedBack,
    Repaired,
    Retested,
    Suspected,
    Voided,
)
from trainer.practice.attempt.field_types import names_of
from trainer.reasoning.universe.finding import Finding


@dataclass(frozen=True, slots=True)
class Attempt:
    """One learner's run at one case, as its events so far have left it.

    `events` are all so far, the job card. `tested` is the engine's state in the last whole test, which left codes
    that nobody has read yet; `test_codes` are those that its event holds: a retest's, or a test's in records of
    earlier versions.
    """

    case: Case
    seed: int
    work: Work
    minutes: float = 0.0
    paid: frozenset[Price] = frozenset()
    events: tuple[Event, ...] = ()
    spent_s: float = 0.0
    tested: Work | None = None
    test_codes: tuple[str, ...] | None = None
    stored_cleared: bool = False
    ruled_out: frozenset[Location] = frozenset()
    finding: Finding | None = None
    repaired: frozenset[int] = frozenset()
    wrong_repairs: int = 0
    retested: bool = False
    closed: bool = False

    @property
    def faults_left(self) -> tuple[Fault, ...]:
        """The case's faults that no repair has taken away yet."""
        return tuple(fault for row, fault in enumerate(self.case.faults) if row not in self.repaired)

    @property
    def title_shown(self) -> bool:
        """Whether the case's title, which may tell the cause, can no longer spoil a repair.

        So it is once a retest was even with nothing left to provoke, at the debrief, and where the learner found
        nothing in an engine that has nothing to repair.
        """
        even = any(isinstance(event, Retested) and event.proved and not event.to_provoke for event in self.events)
        nothing = self.finding is not None and not self.finding.claims and not self.case.faults
        return self.closed or even or nothing

    def count(self, kind: type[Event]) -> int:
        """Return how often one kind of event happened."""
        return sum(isinstance(event, kind) for event in self.events)


class DamagedLogError(ValueError):
    """Raised for a log in which an event cannot be what was done; `number` is that event's."""

    def __init__(self, number: int) -> None:
        super().__init__(f"event {number} is damaged")
        self.number = number


def begun(case: Case, seed: int) -> Attempt:
    """Return an attempt before its first event."""
    return Attempt(case, seed, Work(conditions=Conditions(temperature_c=case.temperature_c)))


def step(attempt: Attempt, event: Event) -> Attempt:
    """Return the attempt after an event; raises ValueError for one that cannot come now."""
    _refuse_out_of_order(attempt, event)
    after = replace(
        attempt,
        minutes=attempt.minutes + event.labour_minutes,
        spent_s=attempt.spent_s + (event.spent_s or 0.0),
        events=(*attempt.events, event),
    )
    if isinstance(event, EngineEvent):
        after = replace(after, work=event.work, paid=event.paid)
    match event:
        case Heard(slots=None) if event.codes is None:
            return replace(after, tested=event.work, test_codes=None)
        case Heard(slots=None):
            return replace(after, tested=None, test_codes=event.codes)
        case Retested():
            return replace(after, work=event.work, tested=None, test_codes=event.codes, retested=True)
        case CodesRead(cleared=True):
            return replace(after, tested=None, test_codes=None, stored_cleared=True)
        case Suspected():
            return replace(after, ruled_out=event.ruled_out)
        case Found():
            return replace(after, finding=event.finding)
        case Repaired():
            return replace(
                after,
                repaired=attempt.repaired | frozenset(event.mended),
                wrong_repairs=attempt.wrong_repairs + (not event.mended),
                tested=None,
                test_codes=None,
                stored_cleared=True,
            )
        case Closed() | Voided():
            return replace(after, closed=True)
    return after


def _refuse_out_of_order(attempt: Attempt, event: Event) -> None:
    if attempt.closed and not isinstance(event, LookedBack):
        raise ValueError("nothing follows the end of an attempt")
    if isinstance(event, Found) == (attempt.finding is not None) and isinstance(event, Found | Repaired | Retested):
        raise ValueError(f"{event.kind} cannot come {'after' if attempt.finding else 'before'} the finding")


def replayed(case: Case, seed: int, records: Iterable[EventRecord]) -> Attempt:
    """Return the attempt that a log leads to; raises DamagedLogError at the first event that cannot be there."""
    attempt = begun(case, seed)
    names = names_of(case.profile)
    for number, record in enumerate(records, start=1):
        try:
            if record.number != number:
                raise ValueError(f"event {record.number} cannot follow event {number - 1}")
            attempt = step(attempt, parse_event(record, names))
        except ValueError as error:
            raise DamagedLogError(number) from error
    return attempt
