"""Marks attempts of a set: replayed on the case that the learner was given, and scored where that was not done yet."""

from __future__ import annotations

import hmac
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from trainer.cases.case_set import CaseSet
from trainer.cases.sealed_set import SetKey
from trainer.cases.set_drawing import SetItem, case_mark, items_of
from trainer.cases.universe_cache import Universes, model_digest
from trainer.circuit.faults import Fault
from trainer.practice.actions import Solver
from trainer.practice.attempt import replayed
from trainer.practice.events import Event, EventKind
from trainer.practice.judging import judged
from trainer.practice.outcome import Outcome, outcome_from, outcome_of
from trainer.records.results import keep_set, marked_ids, put_results, recount, result_row
from trainer.records.store import AttemptRow, Store

Told = Callable[[int, int], None]
"""Is told how many attempts of how many are marked."""


@dataclass(frozen=True, slots=True)
class Marked:
    """How many attempts were marked, are not handed in, were voided, and cannot be marked, by reason."""

    marked: int
    unfinished: int
    voided: int
    refused: Mapping[str, int]


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
        self.case_set, self._keys = case_set, keys
        self._solver, self._universes, self._answers = solver, universes, answers
        self._items: dict[tuple[str, int, tuple[tuple[int, int], ...]], tuple[SetItem, ...]] = {}

    def item_of(self, row: AttemptRow) -> SetItem:
        """Return the case that a row is an attempt at, drawn as it was at the station."""
        key = (row.learner, row.try_number, ((row.item, row.redraw),) if row.redraw else ())
        if key not in self._items:
            self._items[key] = items_of(self.case_set, row.learner, row.try_number, dict(key[2]))
        return next(item for item in self._items[key] if item.index == row.item)

    def outcome(self, row: AttemptRow, events: Sequence[Event]) -> Outcome | str:
        """Return what an attempt came to, or the word for why it cannot be marked."""
        if not 1 <= row.item <= self.case_set.size:
            return "other_case"
        item = self.item_of(row)
        if not any(hmac.compare_digest(case_mark(key, item), row.case_digest) for key in self._keys):
            return "other_case"
        answer = self._answers.get(row.item)
        closing = events[-1].data
        if "points" in closing and answer is None:
            return outcome_from(closing)
        if row.model != model_digest():
            return "other_model"
        case = item.case if answer is None else replace(item.case, right_answer=answer)
        try:
            attempt = replayed(case, item.seed, events)
        except (ValueError, KeyError, TypeError):
            return "damaged"
        return outcome_of(attempt, judged(attempt, self._solver, self._universes.reasoner(case)))


def _quiet(_done: int, _count: int) -> None:
    """Nobody waits to be told."""


def mark_set(store: Store, marker: Marker, *, again: bool = False, told: Told = _quiet) -> Marked:
    """Mark every attempt of a set that has no result yet, all of them with `again`, and work out which count."""
    case_set = marker.case_set
    keep_set(store, case_set)
    have = frozenset() if again else marked_ids(store, case_set.id)
    rows = [row for row in store.all_in_set(case_set.id) if row.id not in have]
    results = []
    counted: Counter[str] = Counter()
    refused: Counter[str] = Counter()
    for place, row in enumerate(rows):
        events = store.events(row.id)
        kinds = {event.kind for event in events}
        if EventKind.VOIDED in kinds or EventKind.CLOSED not in kinds:
            counted["voided" if EventKind.VOIDED in kinds else "unfinished"] += 1
            continue
        outcome = marker.outcome(row, events)
        if isinstance(outcome, str):
            refused[outcome] += 1
            continue
        case = marker.item_of(row).case
        supported = bool(events[0].data.get("supported"))
        closed_at = events[-1].at
        results.append(result_row(case_set, row, outcome, closed_at, case.profile.name, case.title, supported))
        told(place + 1, len(rows))
    put_results(store, results)
    recount(store, case_set.id)
    return Marked(len(results), counted["unfinished"], counted["voided"], dict(refused))
