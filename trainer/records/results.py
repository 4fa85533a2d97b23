"""Results in the store: one row for each closed attempt of a set, which of them count, and each learner's mark."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import ColumnElement, Connection, Select, case, delete, func, insert, literal, select, update

from trainer.cases.case_set import CaseSet, Counts
from trainer.practice.outcome import Outcome, class_of
from trainer.records.store import AttemptRow, Store
from trainer.records.tables import note_table, result_table, set_table

R = result_table.c
NOT_VOID, VOID, REPEATED = 0, 1, 2
"""What `voided` says: counts if its try does, taken out by the instructor, handed in before elsewhere."""


def keep_set(store: Store, case_set: CaseSet) -> None:
    """Take down what results of a set are reckoned by; answers are not among it."""
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
        known = connection.execute(select(set_table.c.id).where(set_table.c.id == case_set.id)).first()
        if known is None:
            connection.execute(insert(set_table), row)


def result_row(
    case_set: CaseSet, row: AttemptRow, outcome: Outcome, closed_at: str, engine: str, title: str, supported: bool
) -> dict[str, Any]:
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


def put_results(store: Store, rows: Sequence[dict[str, Any]]) -> None:
    """Keep results; one that was there is made anew."""
    if not rows:
        return
    with store.writing() as connection:
        for start in range(0, len(rows), 500):
            part = rows[start : start + 500]
            ids = [row["attempt_id"] for row in part]
            connection.execute(delete(result_table).where(result_table.c.attempt_id.in_(ids)))
            connection.execute(insert(result_table), part)


def marked_ids(store: Store, set_id: str) -> frozenset[str]:
    """Return which attempts of a set have a result."""
    with store.engine.connect() as connection:
        rows = connection.execute(select(result_table.c.attempt_id).where(result_table.c.set_id == set_id))
        return frozenset(row.attempt_id for row in rows)


def recount(store: Store, set_id: str) -> None:
    """Work out again which results count: of each learner's tries the one that the set says, without what is void.

    A case that was handed in twice in a try, as at two stations apart, counts as it was handed in first.
    """
    with store.writing() as connection:
        row = connection.execute(select(set_table.c.counts, set_table.c.weights).where(set_table.c.id == set_id)).one()
        here = R.set_id == set_id
        connection.execute(update(result_table).where(here).values(voided=NOT_VOID, counted=0))
        _mark_repeated(connection, set_id)
        for learner, item in void_items(connection, set_id):
            connection.execute(
                update(result_table).where(here, R.learner == learner, R.item == item).values(voided=VOID)
            )
        best: dict[str, tuple[float, int]] = {}
        for learner, number, total in _tries(connection, set_id, json.loads(row.weights)):
            worth = {Counts.FIRST: -float(number), Counts.LAST: float(number)}.get(Counts(row.counts), total)
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


def weight_of(weights: Sequence[float], item: ColumnElement[Any]) -> ColumnElement[Any]:
    """Return the weight of an item as the database reckons it."""
    if len(set(weights)) <= 1:
        return literal(weights[0] if weights else 1.0)
    return case(dict(enumerate(weights, start=1)), value=item, else_=1.0)


def _tries(connection: Connection, set_id: str, weights: Sequence[float]) -> list[tuple[str, int, float]]:
    total = func.sum(case((R.voided == NOT_VOID, R.mark * weight_of(weights, R.item)), else_=0.0))
    wanted = (
        select(R.learner, R.try_number, total)
        .where(R.set_id == set_id)
        .group_by(R.learner, R.try_number)
        .order_by(R.learner, R.try_number)
    )
    return [(learner, number, float(sum_)) for learner, number, sum_ in connection.execute(wanted)]


def void_notes(set_id: str) -> Select[Any]:
    """Return the query of cases that an instructor let not count, each once."""
    columns = note_table.c
    return select(columns.learner, columns.item).where(columns.set_id == set_id, columns.kind == "void").distinct()


def void_items(connection: Connection, set_id: str) -> list[tuple[str, int]]:
    """Return who has which case that does not count."""
    return [(learner, item) for learner, item in connection.execute(void_notes(set_id))]


@dataclass(frozen=True, slots=True)
class KeptSet:
    """What the store knows of a set."""

    id: str
    name: str
    title: str
    mode: str
    size: int
    counts: str
    passes_at: float
    certainty_weight: float
    weights: tuple[float, ...]
    closes: str
    keep_until: str


def kept_sets(store: Store) -> tuple[KeptSet, ...]:
    """Return every set that has results here."""
    with store.engine.connect() as connection:
        rows = connection.execute(select(set_table).order_by(set_table.c.name, set_table.c.id))
        return tuple(KeptSet(**{**row._mapping, "weights": tuple(json.loads(row.weights))}) for row in rows)
