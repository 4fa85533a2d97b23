"""The attempt: a value that each event turns into the next; nothing here computes, listens or looks at a clock."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

from trainer.cases.single_case.case import Case
from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import Conditions, Fault, FaultKind
from trainer.instruments.bench import Work
from trainer.practice.attempt.event_data import check_data, names_of
from trainer.practice.attempt.events import Event, EventKind
from trainer.practice.attempt.work_data import work_of
from trainer.reasoning.universe.finding import Claim, Finding


@dataclass(frozen=True, slots=True)
class CardLine:
    """One line of the job card: what was done, what it gave, what it cost."""

    kind: EventKind
    data: dict[str, Any]
    minutes: float


@dataclass(frozen=True, slots=True)
class Attempt:
    """One learner's run at one case, as its events so far have left it.

    `tested` is the engine's state in the last whole test, which left codes that nobody has read yet; `test_codes` are
    those that its event told: a retest's, or a test's in records of earlier versions.
    """

    case: Case
    seed: int
    work: Work
    minutes: float = 0.0
    paid: frozenset[str] = frozenset()
    card: tuple[CardLine, ...] = ()
    tested: Work | None = None
    test_codes: tuple[str, ...] | None = None
    stored_cleared: bool = False
    ruled_out: frozenset[str] = frozenset()
    finding: Finding | None = None
    repaired: frozenset[int] = frozenset()
    wrong_repairs: int = 0
    retested: bool = False
    closed: bool = False
    events: int = 0

    @property
    def faults_left(self) -> tuple[Fault, ...]:
        """The case's faults that no repair has taken away yet."""
        return tuple(fault for row, fault in enumerate(self.case.faults) if row not in self.repaired)


class DamagedLogError(ValueError):
    """Raised for a log in which an event cannot be what was done; `number` is that event's."""

    def __init__(self, number: int) -> None:
        super().__init__(f"event {number} is damaged")
        self.number = number


def begun(case: Case, seed: int) -> Attempt:
    """Return an attempt before its first event."""
    return Attempt(case, seed, Work(conditions=Conditions(temperature_c=case.temperature_c)))


def step(attempt: Attempt, event: Event) -> Attempt:
    """Return the attempt after an event; raises ValueError for one that is out of order or cannot come now."""
    _refuse_out_of_order(attempt, event)
    data = event.data
    minutes = float(data.get("minutes", 0.0))
    changes: dict[str, Any] = {
        "events": event.number,
        "minutes": attempt.minutes + minutes,
        "card": (*attempt.card, CardLine(event.kind, data, minutes)),
    }
    if "work" in data:
        changes["work"] = work_of(data["work"])
    if "paid" in data:
        changes["paid"] = frozenset(data["paid"])
    if event.kind is EventKind.RETESTED or (event.kind is EventKind.HEARD and data["slots"] is None):
        told = data.get("codes")
        changes["tested"] = work_of(data["work"]) if told is None else None
        changes["test_codes"] = None if told is None else tuple(told)
    if event.kind is EventKind.CODES_READ and data["cleared"]:
        changes |= {"tested": None, "test_codes": None, "stored_cleared": True}
    if event.kind is EventKind.SUSPECTED:
        changes["ruled_out"] = frozenset(data["ruled_out"])
    if event.kind is EventKind.FOUND:
        changes["finding"] = finding_of(data)
    if event.kind is EventKind.REPAIRED:
        changes["repaired"] = attempt.repaired | frozenset(data["mended"])
        changes["wrong_repairs"] = attempt.wrong_repairs + (not data["mended"])
        changes |= {"tested": None, "test_codes": None, "stored_cleared": True}
    if event.kind is EventKind.RETESTED:
        changes["retested"] = True
    if event.kind in (EventKind.CLOSED, EventKind.VOIDED):
        changes["closed"] = True
    return replace(attempt, **changes)


def _refuse_out_of_order(attempt: Attempt, event: Event) -> None:
    if event.number != attempt.events + 1:
        raise ValueError(f"event {event.number} cannot follow event {attempt.events}")
    if attempt.closed and event.kind is not EventKind.LOOKED_BACK:
        raise ValueError("nothing follows the end of an attempt")
    if (event.kind is EventKind.FOUND) == (attempt.finding is not None) and event.kind in (
        EventKind.FOUND, EventKind.REPAIRED, EventKind.RETESTED,
    ):  # fmt: skip
        raise ValueError(f"{event.kind} cannot come {'after' if attempt.finding else 'before'} the finding")


def replayed(case: Case, seed: int, events: Iterable[Event]) -> Attempt:
    """Return the attempt that a log leads to; raises DamagedLogError at the first event that cannot be there."""
    attempt = begun(case, seed)
    names = names_of(case.profile)
    for event in events:
        try:
            check_data(event, names)
            attempt = step(attempt, event)
        except ValueError as error:
            raise DamagedLogError(event.number) from error
    return attempt


def finding_data(finding: Finding) -> dict[str, Any]:
    """Return a finding as plain data."""
    claims = [
        {"cylinders": sorted(c.cylinders), "location": c.location, "kind": c.kind, "side": c.side}
        for c in finding.claims
    ]
    return {"claims": claims, "certainty": finding.certainty}


def finding_of(data: dict[str, Any]) -> Finding:
    """Return the finding that plain data describe."""
    claims = tuple(
        Claim(
            frozenset(item["cylinders"]),
            Location(item["location"]),
            FaultKind(item["kind"]),
            Side(item["side"]) if item["side"] else None,
        )
        for item in data["claims"]
    )
    return Finding(claims, data["certainty"])
