"""Says for which listeners cases are fair: a table of cases by listeners, and a sum for each listener."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from trainer.cases.single_case.audibility import DECISIVE_DB
from trainer.cases.single_case.case import Case
from trainer.cases.solved.fairness import Fairness, SlotForListener, Told, fairness_of
from trainer.commands.call.json_document import json_object
from trainer.commands.call.result import Result
from trainer.commands.case_commands.named_cases import cases_named
from trainer.sound.listeners import LISTENERS
from trainer.words import capital, numbers, text

GAP = "  "


@dataclass(frozen=True, slots=True)
class ForListener:
    """How a case is for one listener; `slots` are the decisive ones."""

    listener: str
    fair: bool
    slots: tuple[SlotForListener, ...]


@dataclass(frozen=True, slots=True)
class FairnessRow:
    """A case, and how it is for each listener."""

    case: str
    profile: str
    bed_dba: float
    listeners: tuple[ForListener, ...]


@dataclass(frozen=True, slots=True)
class ListenerSum:
    """How many of the cases are fair for a listener."""

    listener: str
    fair: int
    cases: int


@dataclass(frozen=True, slots=True)
class FairnessTable:
    """What `fair --json` prints."""

    cases: tuple[FairnessRow, ...]
    listeners: tuple[ListenerSum, ...]
    note: str


def show_fairness(asked: Sequence[Path], report: Callable[[str], None]) -> Result:
    """Return who can hear what decides the named cases; `report` takes a line for each case.

    Raises ProblemsFoundError for a name or a file that gives no case.
    """
    cases = cases_named(asked)
    found: dict[int, tuple[Fairness, ...]] = {}
    # by engine and temperature, so that cases share a solved good engine
    order = sorted(range(len(cases)), key=lambda at: (cases[at].profile.name, cases[at].temperature_c))
    for done, at in enumerate(order, start=1):
        report(text("fair.listening", number=done, count=len(cases)))
        found[at] = fairness_of(cases[at])
    names = _told_apart([case.name for case in cases])
    rows = tuple(_row(name, case, found[at]) for at, (name, case) in enumerate(zip(names, cases, strict=True)))
    sums = tuple(
        ListenerSum(name, sum(row.listeners[at].fair for row in rows), len(rows)) for at, name in enumerate(LISTENERS)
    )
    document = FairnessTable(rows, sums, text("fair.note"))
    return Result(tuple(_lines(document, cases, [found[at] for at in range(len(cases))])), json_object(document))


def _told_apart(names: Sequence[str]) -> list[str]:
    """Return names of which no two are alike: forms of a set have other cases at the same place."""
    seen: Counter[str] = Counter()
    result = []
    for name in names:
        seen[name] += 1
        result.append(name if seen[name] == 1 else f"{name} ({seen[name]})")
    return result


def _row(name: str, case: Case, found: Sequence[Fairness]) -> FairnessRow:
    listeners = tuple(ForListener(one.listener, one.fair, one.slots) for one in found)
    return FairnessRow(name, case.profile.name, case.bed.level_dba, listeners)


def _lines(table: FairnessTable, cases: Sequence[Case], found: Sequence[Sequence[Fairness]]) -> Iterator[str]:
    head = [text("fair.case"), *(capital(text(f"fair.listener.{name}")) for name in LISTENERS)]
    cells = [head]
    for row, case, all_ears in zip(table.cases, cases, found, strict=True):
        cells.append([row.case, *(cell_of(one, case.profile.cylinders) for one in all_ears)])
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    yield from (GAP.join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in cells)
    yield ""
    for one in table.listeners:
        who = text(f"fair.listener.{one.listener}")
        yield text("fair.sum", listener=who, fair=one.fair, n=one.cases)
    yield ""
    yield text("fair.meaning", limit=DECISIVE_DB)
    yield table.note


def cell_of(fairness: Fairness, cylinders: Sequence[int]) -> str:
    """Return in words how a case of an engine with these cylinders is for one listener."""
    parts = []
    for told in (Told.LOST, Told.ALIKE):
        slots = fairness.numbers(told)
        if slots:
            every = set(slots) == set(cylinders)
            parts.append(text(f"fair.{told}_every" if every else f"fair.{told}", n=len(slots), slots=numbers(slots)))
    return ", ".join(parts) or text("fair.fair")
