"""Each learner's counted results of a set, added up by the database."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import ColumnElement, Select, case, func, select

from trainer.records.class_report.results import REPEATED, StoredSet, void_items_query, weight_of, without
from trainer.records.store.store import Store
from trainer.records.store.tables import result_table

R = result_table.c


@dataclass(frozen=True, slots=True)
class LearnerSum:
    """One learner's counted results: how many, the weighted mark of 100, how many right, effort, support."""

    learner: str
    cases: int
    mark: float
    right: int
    minutes: float
    best_minutes: float
    supported: bool
    latest: str


def counted(stored: StoredSet) -> ColumnElement[bool]:
    """Return the condition for a set's results that count; damaged ones do not."""
    return (R.set_id == stored.id) & (R.counted == 1) & without(stored.damaged)


def learner_marks_query(stored: StoredSet) -> Select[str, int, float, int, float, float, int, str]:
    """Return the query of each learner's mark of 100: a case not handed in counts zero, a void one is left out."""
    whole = float(sum(stored.weights)) or 1.0
    items = void_items_query(stored.id).subquery()
    void = (
        select(items.c.learner, func.sum(weight_of(stored.weights, items.c.item)).label("weight"))
        .group_by(items.c.learner)
        .subquery()
    )
    left = whole - func.coalesce(func.max(void.c.weight), 0.0)
    weighted = func.sum(R.mark * weight_of(stored.weights, R.item))
    return (
        select(
            R.learner,
            func.count().label("cases"),
            case((left > 0.0, weighted / left), else_=0.0).label("mark"),
            func.sum(R.right).label("right"),
            func.sum(R.minutes).label("minutes"),
            func.sum(R.best_minutes).label("best_minutes"),
            func.max(R.supported).label("supported"),
            func.max(R.closed_at).label("latest"),
        )
        .select_from(result_table.outerjoin(void, void.c.learner == R.learner))
        .where(counted(stored))
        .group_by(R.learner)
    )


def learner_sums(store: Store, stored: StoredSet, most: int | None = None) -> list[LearnerSum]:
    """Return learners in the order of their names, at most so many."""
    wanted = learner_marks_query(stored).order_by(R.learner)
    with store.reading() as connection:
        rows = connection.execute(wanted if most is None else wanted.limit(most))
        return [
            LearnerSum(
                row.learner, int(row.cases), float(row.mark), int(row.right), float(row.minutes),
                float(row.best_minutes), bool(row.supported), row.latest,
            )
            for row in rows
        ]  # fmt: skip


def results_by_class(store: Store, stored: StoredSet, learners: list[str]) -> dict[str, dict[str, tuple[int, int]]]:
    """Return, for some learners, how many results of each class they have and how many are right."""
    found: dict[str, dict[str, tuple[int, int]]] = {}
    wanted = (
        select(R.learner, R.kind_class, func.count(), func.sum(R.right))
        .where(counted(stored), R.learner.in_(learners))
        .group_by(R.learner, R.kind_class)
        .order_by(R.learner, R.kind_class)
    )
    with store.reading() as connection:
        for learner, kind, count, right in connection.execute(wanted):
            found.setdefault(learner, {})[kind] = (int(count), int(right))
    return found


def learners_with_repeats(store: Store, stored: StoredSet) -> list[str]:
    """Return the learners who handed the same case in more than once."""
    wanted = (
        select(R.learner)
        .where(R.set_id == stored.id, R.voided == REPEATED, without(stored.damaged))
        .distinct()
        .order_by(R.learner)
    )
    with store.reading() as connection:
        return list(connection.execute(wanted).scalars())
