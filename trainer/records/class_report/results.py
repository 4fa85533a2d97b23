"""Results in the store: one row for each closed attempt of a set, which of them count, and each learner's mark."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations_with_replacement
from typing import Annotated

from pydantic import Field, TypeAdapter
from sqlalchemy import ColumnElement, Connection, Select, and_, case, delete, func, insert, literal, select, update

from trainer.circuit.elements import Location
from trainer.circuit.fault import FaultKind
from trainer.circuit.profile import PASSES
from trainer.errors import DamagedError
from trainer.practice.attempt.outcome import Outcome, class_of
from trainer.reasoning.universe.finding import CERTAINTIES
from trainer.reasoning.verdict.misconceptions import MISCONCEPTIONS, UNCLASSIFIED
from trainer.records.store.log_rows import UNFIT, AttemptRow, Row
from trainer.records.store.row_types import row_model, typed
from trainer.records.store.store import Store
from trainer.records.store.tables import note_table, result_table, set_table
from trainer.sets.case_set import CaseSet, Counts

R = result_table.c
LOCATIONS, KINDS = sorted(Location), sorted(FaultKind)
MOST_CASES, MOST_LEFT_OUT, MOST_AMOUNT = 10_000, 500, 1e9
"""Cases in a set, damaged results that can be left out one by one, and what no count, minutes or seconds exceed."""

NOT_VOID, VOID, REPEATED = 0, 1, 2
"""What `voided` says: counts if its try does, taken out by the instructor, handed in before elsewhere."""

ResultRow = dict[str, str | int | float]
"""A row of the table of results by column, without `voided` and `counted`: `recount` works those out."""


def _undamaged() -> ColumnElement[bool]:
    """Return the condition that a result holds what marking writes; comparisons see to most columns' types.

    To SQLite every text is larger than every number, and nothing compares with what is missing.
    """
    labels = (R.attempt_id, R.learner, R.item, R.try_number, R.redraw, R.closed_at, R.engine, R.title, R.cylinders,
              R.said_cylinders, R.model, R.misconception, R.voided, R.counted)  # fmt: skip
    return and_(
        *(typed(column) for column in labels),
        *(column.between(0.0, 100.0) for column in (R.mark, R.points)),
        *(column.between(0, MOST_AMOUNT) for column in (R.plays, R.readings, R.hints)),
        *(column.between(0.0, MOST_AMOUNT) for column in (R.minutes, R.best_minutes, R.spent_s)),
        *(column.between(0, 1) for column in (R.right, R.faulty, R.said_faulty, R.supported)),
        R.certainty.in_(CERTAINTIES),
        R.kind_class.in_((PASSES, "group", "two_faults", *LOCATIONS)),
        R.misconception.in_(("", UNCLASSIFIED, *MISCONCEPTIONS)),
        *(column.in_(_pairs(LOCATIONS)) for column in (R.place, R.said_place)),
        *(column.in_(_pairs(KINDS)) for column in (R.kinds, R.said_kinds)),
    )


def _damaged(connection: Connection, set_id: str) -> tuple[str, ...]:
    """Return the attempts of a set whose results are damaged; raises DamagedError for more than can be left out."""
    here = select(R.attempt_id).where(R.set_id == set_id, case((_undamaged(), 0), else_=1) == 1)
    found = tuple(connection.execute(here.limit(MOST_LEFT_OUT + 1)).scalars())
    if len(found) > MOST_LEFT_OUT:
        raise DamagedError("results_damaged", n=MOST_LEFT_OUT)
    return found


def without(ids: Sequence[str]) -> ColumnElement[bool]:
    """Return the condition that a result is none of some attempts', nor of none."""
    named = [one for one in ids if one is not None]
    return R.attempt_id.is_not(None) & R.attempt_id.not_in(named) if named else R.attempt_id.is_not(None)


def _pairs(words: Sequence[str]) -> tuple[str, ...]:
    """Return how a result writes none, one or two of some words."""
    return ("", *words, *("+".join(pair) for pair in combinations_with_replacement(words, 2)))


def store_set(store: Store, case_set: CaseSet) -> None:
    """Store the rules that results of a set are marked by; answers are not among them."""
    policy = case_set.policy
    row = {
        "id": case_set.id,
        "name": case_set.name,
        "title": case_set.title,
        "mode": str(policy.mode),
        "size": case_set.size,
        "counts": str(policy.counts),
        "passes_at": policy.passes_at,
        "certainty_weight": policy.certainty_weight,
        "weights": json.dumps(case_set.weights),
        "closes": policy.closes.isoformat() if policy.closes else "",
    }
    with store.writing() as connection:
        known = connection.execute(select(set_table).where(set_table.c.id == case_set.id)).mappings().first()
        if known is not None and _stored_set_from(known) is None:  # damaged: the set's file says it again
            row["keep_until"] = known["keep_until"] if isinstance(known["keep_until"], str) else ""
            connection.execute(delete(set_table).where(set_table.c.id == case_set.id))
            known = None
        if known is None:
            connection.execute(insert(set_table), row)


def result_row(
    case_set: CaseSet, row: AttemptRow, outcome: Outcome, closed_at: str, engine: str, title: str, supported: bool
) -> ResultRow:
    """Return an outcome as a row of results."""
    weight = case_set.policy.certainty_weight
    brier = (outcome.certainty - float(outcome.right)) ** 2
    return {
        "attempt_id": row.id,
        "set_id": row.set_id,
        "learner": row.learner,
        "item": row.item,
        "try_number": row.try_number,
        "redraw": row.redraw,
        "closed_at": closed_at,
        "engine": engine,
        "title": title,
        "kind_class": class_of(outcome),
        "mark": round((1.0 - weight) * outcome.points + weight * 100.0 * (1.0 - brier), 4),
        "points": outcome.points,
        "right": int(outcome.right),
        "certainty": outcome.certainty,
        "faulty": int(bool(outcome.places)),
        "said_faulty": int(bool(outcome.said_places)),
        "place": "+".join(outcome.places),
        "said_place": "+".join(outcome.said_places),
        "cylinders": " ".join(map(str, outcome.cylinders)),
        "said_cylinders": " ".join(map(str, outcome.said_cylinders)),
        "kinds": "+".join(outcome.kinds),
        "said_kinds": "+".join(outcome.said_kinds),
        "misconception": outcome.misconception,
        "plays": outcome.plays,
        "readings": outcome.readings,
        "hints": outcome.hints,
        "minutes": outcome.used_minutes,
        "best_minutes": outcome.best_minutes,
        "spent_s": outcome.time_s,
        "supported": int(supported),
        "model": row.model,
    }


def put_results(store: Store, rows: Sequence[ResultRow]) -> None:
    """Store results; a new one replaces an older one of the same attempt."""
    if not rows:
        return
    with store.writing() as connection:
        for start in range(0, len(rows), 500):
            part = rows[start : start + 500]
            ids = [row["attempt_id"] for row in part]
            connection.execute(delete(result_table).where(result_table.c.attempt_id.in_(ids)))
            connection.execute(insert(result_table), part)


def marked_ids(store: Store, set_id: str) -> frozenset[str]:
    """Return which attempts of a set have a result; a damaged one is none, and is made again."""
    with store.reading() as connection:
        whole = without(_damaged(connection, set_id))
        rows = connection.execute(select(result_table.c.attempt_id).where(result_table.c.set_id == set_id, whole))
        return frozenset(row.attempt_id for row in rows)


def recount(store: Store, set_id: str) -> None:
    """Work out again which results count: of each learner's tries the one that the set says, without what is void.

    A case that was handed in twice in a try, as at two stations apart, counts as it was handed in first.
    """
    with store.writing() as connection:
        row = connection.execute(select(set_table).where(set_table.c.id == set_id)).mappings().first()
        stored = _stored_set_from(row) if row is not None else None
        if stored is None:
            raise DamagedError("set_damaged", place=store.place)
        here = R.set_id == set_id
        connection.execute(update(result_table).where(here).values(voided=NOT_VOID, counted=0))
        _mark_repeated(connection, set_id)
        for learner, item in void_items(connection, set_id):
            connection.execute(
                update(result_table).where(here, R.learner == learner, R.item == item).values(voided=VOID)
            )
        best: dict[str, tuple[float, int]] = {}
        for learner, number, total in _tries(connection, set_id, stored.weights):
            worth = {Counts.FIRST: -float(number), Counts.LAST: float(number)}.get(stored.counts, total)
            if learner not in best or worth > best[learner][0]:
                best[learner] = (worth, number)
        for number in sorted({number for _worth, number in best.values()}):
            of_try = [learner for learner, (_worth, one) in best.items() if one == number]
            for start in range(0, len(of_try), 500):
                connection.execute(
                    update(result_table)
                    .where(
                        here, R.try_number == number, R.voided == NOT_VOID, R.learner.in_(of_try[start : start + 500])
                    )
                    .values(counted=1)
                )


def _mark_repeated(connection: Connection, set_id: str) -> None:
    """Mark every result of a case that the learner had handed in before in the same try."""
    place = func.row_number().over(partition_by=(R.learner, R.try_number, R.item), order_by=(R.closed_at, R.attempt_id))
    ranked = select(R.attempt_id, place.label("place")).where(R.set_id == set_id).subquery()
    later = select(ranked.c.attempt_id).where(ranked.c.place > 1)
    connection.execute(update(result_table).where(R.attempt_id.in_(later)).values(voided=REPEATED))


def weight_of(weights: Sequence[float], item: ColumnElement[int]) -> ColumnElement[float]:
    """Return the weight of an item as an expression of the database."""
    if len(set(weights)) <= 1:
        return literal(weights[0] if weights else 1.0)
    return case(dict(enumerate(weights, start=1)), value=item, else_=1.0)


def _tries(connection: Connection, set_id: str, weights: Sequence[float]) -> list[tuple[str, int, float]]:
    total = func.sum(case((R.voided == NOT_VOID, R.mark * weight_of(weights, R.item)), else_=0.0))
    wanted = (
        select(R.learner, R.try_number, total)
        .where(R.set_id == set_id, without(_damaged(connection, set_id)))
        .group_by(R.learner, R.try_number)
        .order_by(R.learner, R.try_number)
    )
    return [(learner, number, float(sum_)) for learner, number, sum_ in connection.execute(wanted)]


def void_items_query(set_id: str) -> Select[str, int]:
    """Return the query of cases that an instructor declared void, each once."""
    columns = note_table.c
    here = (columns.set_id == set_id) & (columns.kind == "void") & typed(note_table)
    return select(columns.learner, columns.item).where(here).distinct()


def void_items(connection: Connection, set_id: str) -> list[tuple[str, int]]:
    """Return the learner and the index of each void case."""
    return [(learner, item) for learner, item in connection.execute(void_items_query(set_id))]


@dataclass(frozen=True, slots=True)
class StoredSet:
    """A set as the store keeps it; `damaged` are attempts whose results are left out: see `with_damaged_results`."""

    id: str
    name: str
    title: str
    mode: str
    size: Annotated[int, Field(ge=1, le=MOST_CASES)]
    counts: Counts
    passes_at: Annotated[float, Field(ge=0.0, le=100.0)]
    certainty_weight: Annotated[float, Field(ge=0.0, le=1.0)]
    weights: tuple[Annotated[float, Field(ge=0.0, le=1e6)], ...]
    closes: str
    keep_until: str
    damaged: tuple[str, ...] = ()


_KEPT = TypeAdapter(StoredSet)
_KEPT_ROW = row_model(set_table)


def _stored_set_from(row: Row) -> StoredSet | None:
    """Return the set that a row is, None for a damaged one."""
    try:
        _KEPT_ROW.model_validate(dict(row))
        return _KEPT.validate_json(json.dumps({**row, "weights": json.loads(row["weights"])}))
    except UNFIT:
        return None


def stored_sets(store: Store) -> tuple[StoredSet, ...]:
    """Return every set that has results here; damaged ones are left out."""
    found = []
    with store.reading() as connection:
        for row in connection.execute(select(set_table).order_by(set_table.c.name, set_table.c.id)).mappings():
            stored = _stored_set_from(row)
            if stored is None:
                store.left_out.add(f"set {row['id']}")
            else:
                found.append(stored)
    return tuple(found)


def with_damaged_results(store: Store, stored: StoredSet) -> StoredSet:
    """Return a set with its damaged results listed: those do not count until they are marked again."""
    with store.reading() as connection:
        damaged = _damaged(connection, stored.id)
    store.left_out |= {f"result {one}" for one in damaged}
    return replace(stored, damaged=damaged)
