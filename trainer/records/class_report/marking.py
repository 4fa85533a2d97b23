"""Marks attempts of a set: replayed on the case that the learner was given, and scored where that was not done yet."""

from __future__ import annotations

import hmac
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.faults import Fault
from trainer.errors import DamagedError, WrongCallError
from trainer.practice.attempt.actions import Solver
from trainer.practice.attempt.attempt import DamagedLogError, replayed
from trainer.practice.attempt.event_json import closed_from, parse_as
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import Started
from trainer.practice.attempt.judging import judged, outcome_of, scored
from trainer.practice.attempt.outcome import Outcome
from trainer.reasoning.model_version import MODEL_VERSION, stated_version
from trainer.records.class_report.irregularities import add_irregularity_notes
from trainer.records.class_report.notes import other_answers
from trainer.records.class_report.results import ResultRow, marked_ids, put_results, recount, result_row, store_set
from trainer.records.store.chain import broken_at
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import Store
from trainer.sets.case_set import CaseSet, DebriefOpens
from trainer.sets.items import SetItem, case_mark, items_of
from trainer.sets.sealed import SetKey

KEPT_DRAWS, KEPT_AT_ONCE = 64, 50
"""Learners whose draws stay at hand, and results that are put into the store together."""

MOST_REDRAWS = 100
"""A case can be voided this many times at most; a row that claims more belongs to no set."""

Progress = Callable[[int, int], None]
"""Called with how many attempts of how many have been looked at."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why an attempt cannot be marked: `damaged`, `other_case`, `altered`, or `other_model` with that version."""

    why: str
    version: str = ""


@dataclass(frozen=True, slots=True)
class Marked:
    """How many attempts were marked, are not handed in, were voided, and cannot be marked, by reason.

    `to_settle` is how much the instructor should ask learners about.
    """

    marked: int
    unfinished: int
    voided: int
    refused: Mapping[Refusal, int]
    to_settle: int = 0


class Marker:
    """Marks a set's attempts, signed under any of the keys.

    `answers` gives, for indices of cases of which another answer is right, the faults to be found.
    """

    def __init__(
        self,
        case_set: CaseSet,
        keys: Sequence[SetKey],
        solver: Solver,
        universes: Universes,
        answers: Mapping[int, tuple[Fault, ...]],
    ) -> None:
        self._case_set, self._keys = case_set, keys
        self._solver, self._universes, self._answers = solver, universes, answers
        self._items: dict[object, tuple[SetItem, ...]] = {}

    def item_of(self, row: AttemptRow) -> SetItem | None:
        """Return the case that a row is an attempt at, drawn as at the station; None if the set has no such case."""
        if not (1 <= row.item <= self._case_set.size and 0 <= row.redraw <= MOST_REDRAWS):
            return None
        key = (row.learner, row.try_number, row.item if row.redraw else 0, row.redraw)
        if key not in self._items:
            while len(self._items) >= KEPT_DRAWS:
                self._items.pop(next(iter(self._items)))
            redrawn = {row.item: row.redraw} if row.redraw else {}
            try:
                self._items[key] = items_of(self._case_set, row.learner, row.try_number, redrawn)
            except WrongCallError:  # the pool gives no such case
                return None
        return next(item for item in self._items[key] if item.index == row.item)

    def outcome(self, row: AttemptRow, events: Sequence[EventRecord], links: Sequence[str]) -> Outcome | Refusal:
        """Return what an attempt came to, or why it cannot be marked."""
        item = self.item_of(row)
        if item is None:
            return Refusal("other_case")
        digest = row.case_digest.encode("utf-8")
        signed = [key for key in self._keys if hmac.compare_digest(case_mark(key, item).encode("utf-8"), digest)]
        if not signed:
            return Refusal("other_case")
        if broken_at(signed[0].derived("chain"), row, events, links) is not None:
            return Refusal("altered")
        answer = self._answers.get(row.item)
        shown_at_once = self._case_set.policy.debrief is DebriefOpens.AFTER_EACH
        closing = _closing(events).data
        if shown_at_once and answer is None and "points" in closing:  # as its learner saw it, whatever program marks it
            return closed_from(closing).outcome or Refusal("damaged")
        version = stated_version(row.model)
        if version != MODEL_VERSION:
            return Refusal("other_model", version)
        case = item.case if answer is None else replace(item.case, right_answer=answer)
        try:
            attempt = replayed(case, item.seed, events)
        except DamagedLogError:
            return Refusal("damaged")
        if attempt.finding is None:
            return Refusal("damaged")
        reasoner = self._universes.reasoner(case)
        found = scored(attempt, reasoner)
        if found.score.right:
            return outcome_of(attempt, found, "")
        return outcome_of(attempt, found, judged(attempt, self._solver, reasoner).misconception or "")


def _closing(events: Sequence[EventRecord]) -> EventRecord:
    """Return the event that ended an attempt: looks back at it may follow."""
    return next(event for event in events if event.kind is EventKind.CLOSED)


def _quiet(_done: int, _count: int) -> None:
    """Ignore progress."""


def mark_set(
    store: Store,
    case_set: CaseSet,
    keys: Sequence[SetKey],
    solver: Solver,
    universes: Universes,
    *,
    again: bool = False,
    progress: Progress = _quiet,
) -> Marked:
    """Mark every attempt of a set that has no result yet, all of them with `again`, and work out which count.

    `keys` are those under which attempts may be signed; other right answers are those in the store's notes.
    """
    marker = Marker(case_set, keys, solver, universes, other_answers(store, case_set))
    store_set(store, case_set)
    have = frozenset() if again else marked_ids(store, case_set.id)
    rows = [row for row in store.all_in_set(case_set.id) if row.id not in have]
    part: list[ResultRow] = []
    marked = 0
    counted: Counter[str] = Counter()
    refused: Counter[Refusal] = Counter()
    for place, row in enumerate(rows, start=1):
        progress(place, len(rows))
        try:
            events, links = store.logged(row.id)
        except DamagedError:
            refused[Refusal("damaged")] += 1
            continue
        kinds = {event.kind for event in events}
        if EventKind.VOIDED in kinds or EventKind.CLOSED not in kinds:
            counted["voided" if EventKind.VOIDED in kinds else "unfinished"] += 1
            continue
        outcome = marker.outcome(row, events, links)
        if isinstance(outcome, Refusal):
            refused[outcome] += 1
            continue
        item = marker.item_of(row)
        assert item is not None  # it was marked
        supported = parse_as(events[0], Started).supported
        closed_at = _closing(events).at
        part.append(result_row(case_set, row, outcome, closed_at, item.case.profile.name, item.case.title, supported))
        marked += 1
        if len(part) == KEPT_AT_ONCE:
            put_results(store, part)
            part.clear()
    put_results(store, part)
    recount(store, case_set.id)
    to_settle = add_irregularity_notes(store, case_set)
    return Marked(marked, counted["unfinished"], counted["voided"], dict(refused), to_settle)
