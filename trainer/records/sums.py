"""What a class's results add up to: every sum is the database's own, whatever its size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import ColumnElement, Connection, Select, case, func, literal, select

from trainer.records.item_statistics import ItemSums
from trainer.records.results import KeptSet
from trainer.records.store import Store
from trainer.records.tables import result_table

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


@dataclass(frozen=True, slots=True)
class ClassSums:
    """A class's counted results of one set, as counts and sums.

    `marks` counts learners by tens of their mark. `places` and `cylinders` count (true, said) pairs; `slips` are wrong
    findings as (misconception, place, kinds, said place, said kinds, count, sum of certainty); `certainty` counts
    (certainty, right); `detected` counts (faulty, said faulty); `plays` and `readings` are histograms. `classes` gives,
    by class of fault, how many results and how many right; `items` likewise by index, with mark and minutes.
    """

    results: int
    learners: int
    mean_mark: float
    mean_mark_unsupported: float | None
    passed: int
    right: int
    marks: Mapping[int, int]
    places: Mapping[tuple[str, str], int]
    cylinders: Mapping[tuple[str, str], int]
    slips: tuple[tuple[str, str, str, str, str, int, float], ...]
    certainty: Mapping[float, tuple[int, int]]
    detected: Mapping[tuple[int, int], int]
    plays: Mapping[int, int]
    readings: Mapping[int, int]
    minutes: float
    best_minutes: float
    classes: Mapping[str, tuple[int, int]]
    items: Mapping[int, tuple[int, int, float, float, float]]
    item_sums: tuple[ItemSums, ...]
    voided: int


def counted(set_id: str) -> ColumnElement[bool]:
    """Return the condition for a set's results that count."""
    return (R.set_id == set_id) & (R.counted == 1)


def _weight(kept: KeptSet, item: ColumnElement[Any] = R.item) -> ColumnElement[Any]:
    if len(set(kept.weights)) <= 1:
        return literal(kept.weights[0] if kept.weights else 1.0)
    return case(dict(enumerate(kept.weights, start=1)), value=item, else_=1.0)


def learner_marks(kept: KeptSet) -> Select[Any]:
    """Return the query of each learner's mark of 100: what is not handed in counts nought, what is void not at all."""
    whole = float(sum(kept.weights)) or 1.0
    items = select(R.learner, R.item).where(R.set_id == kept.id, R.voided == 1).distinct().subquery()
    void = (
        select(items.c.learner, func.sum(_weight(kept, items.c.item)).label("weight"))
        .group_by(items.c.learner)
        .subquery()
    )
    left = whole - func.coalesce(func.max(void.c.weight), 0.0)
    weighted = func.sum(R.mark * _weight(kept))
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
        .where(counted(kept.id))
        .group_by(R.learner)
    )


def learner_sums(store: Store, kept: KeptSet, most: int | None = None) -> list[LearnerSum]:
    """Return learners in the order of their names, at most so many."""
    wanted = learner_marks(kept).order_by(R.learner)
    with store.engine.connect() as connection:
        rows = connection.execute(wanted if most is None else wanted.limit(most))
        return [
            LearnerSum(
                row.learner, int(row.cases), float(row.mark), int(row.right), float(row.minutes),
                float(row.best_minutes), bool(row.supported), row.latest,
            )
            for row in rows
        ]  # fmt: skip


def solid_by_class(store: Store, set_id: str, learners: list[str]) -> dict[str, dict[str, tuple[int, int]]]:
    """Return, for some learners, how many results of each class they have and how many are right."""
    found: dict[str, dict[str, tuple[int, int]]] = {}
    wanted = (
        select(R.learner, R.kind_class, func.count(), func.sum(R.right))
        .where(counted(set_id), R.learner.in_(learners))
        .group_by(R.learner, R.kind_class)
        .order_by(R.learner, R.kind_class)
    )
    with store.engine.connect() as connection:
        for learner, kind, count, right in connection.execute(wanted):
            found.setdefault(learner, {})[kind] = (int(count), int(right))
    return found


def class_sums(store: Store, kept: KeptSet) -> ClassSums:
    """Return what a class's counted results of a set add up to."""
    with store.engine.connect() as connection:
        return _sums(connection, kept)


def _sums(connection: Connection, kept: KeptSet) -> ClassSums:
    here = counted(kept.id)
    marks = learner_marks(kept).subquery()
    mark = marks.c.mark
    learners, mean, passed = connection.execute(
        select(func.count(), func.avg(mark), func.sum(case((mark >= kept.passes_at, 1), else_=0)))
    ).one()
    unsupported = connection.execute(select(func.avg(mark)).where(marks.c.supported == 0)).scalar_one()
    # nudged, so that 89.99999 by rounding is still in the nineties where the mark shown is 90
    tens = func.floor((mark + 1e-9) / 10.0)
    results, right, minutes, best = connection.execute(
        select(func.count(), func.sum(R.right), func.sum(R.minutes), func.sum(R.best_minutes)).where(here)
    ).one()
    voided = connection.execute(select(func.count()).where(R.set_id == kept.id, R.voided == 1)).scalar_one()
    return ClassSums(
        results=int(results),
        learners=int(learners),
        mean_mark=float(mean or 0.0),
        mean_mark_unsupported=None if unsupported is None else float(unsupported),
        passed=int(passed or 0),
        right=int(right or 0),
        marks={min(int(ten), 9): 0 for ten in range(10)} | _tens(connection, select(tens, func.count()).group_by(tens)),
        places=_pairs(connection, R.place, R.said_place, here),
        cylinders=_pairs(connection, R.cylinders, R.said_cylinders, here & (R.faulty == 1)),
        slips=_slips(connection, here),
        certainty=_counts(connection, R.certainty, here),
        detected=_pairs(connection, R.faulty, R.said_faulty, here),
        plays=_histogram(connection, R.plays, here),
        readings=_histogram(connection, R.readings, here),
        minutes=float(minutes or 0.0),
        best_minutes=float(best or 0.0),
        classes=_counts(connection, R.kind_class, here),
        items=_items(connection, here),
        item_sums=_item_sums(connection, kept, here),
        voided=int(voided),
    )


def _tens(connection: Connection, wanted: Select[Any]) -> dict[int, int]:
    counts: dict[int, int] = {}
    for ten, count in connection.execute(wanted):
        place = min(max(int(ten), 0), 9)
        counts[place] = counts.get(place, 0) + int(count)
    return counts


def _pairs(
    connection: Connection, first: ColumnElement[Any], second: ColumnElement[Any], here: ColumnElement[bool]
) -> dict[tuple[Any, Any], int]:
    wanted = select(first, second, func.count()).where(here).group_by(first, second).order_by(first, second)
    return {(one, two): int(count) for one, two, count in connection.execute(wanted)}


def _counts(
    connection: Connection, column: ColumnElement[Any], here: ColumnElement[bool]
) -> dict[Any, tuple[int, int]]:
    wanted = select(column, func.count(), func.sum(R.right)).where(here).group_by(column).order_by(column)
    return {value: (int(count), int(right)) for value, count, right in connection.execute(wanted)}


def _histogram(connection: Connection, column: ColumnElement[Any], here: ColumnElement[bool]) -> dict[int, int]:
    wanted = select(column, func.count()).where(here).group_by(column).order_by(column)
    return {int(value): int(count) for value, count in connection.execute(wanted)}


def _slips(connection: Connection, here: ColumnElement[bool]) -> tuple[tuple[str, str, str, str, str, int, float], ...]:
    columns = (R.misconception, R.place, R.kinds, R.said_place, R.said_kinds)
    wanted = select(*columns, func.count(), func.sum(R.certainty)).where(here, R.right == 0)
    rows = connection.execute(wanted.group_by(*columns).order_by(*columns))
    return tuple((*row[:5], int(row[5]), float(row[6])) for row in rows)


def _items(connection: Connection, here: ColumnElement[bool]) -> dict[int, tuple[int, int, float, float, float]]:
    wanted = (
        select(R.item, func.count(), func.sum(R.right), func.sum(R.mark), func.sum(R.minutes), func.sum(R.best_minutes))
        .where(here)
        .group_by(R.item)
        .order_by(R.item)
    )
    return {
        int(item): (int(count), int(right), float(mark), float(minutes), float(best))
        for item, count, right, mark, minutes, best in connection.execute(wanted)
    }


def _item_sums(connection: Connection, kept: KeptSet, here: ColumnElement[bool]) -> tuple[ItemSums, ...]:
    """Return sums over the learners who have every case of the set."""
    totals = (
        select(R.learner, func.sum(R.mark).label("total"))
        .where(here)
        .group_by(R.learner)
        .having(func.count() == kept.size)
        .subquery()
    )
    total = totals.c.total
    wanted = (
        select(
            R.item, func.count(), func.sum(R.mark), func.sum(R.mark * R.mark), func.sum(total),
            func.sum(total * total), func.sum(R.mark * total),
        )
        .select_from(result_table.join(totals, totals.c.learner == R.learner))
        .where(here)
        .group_by(R.item)
        .order_by(R.item)
    )  # fmt: skip
    return tuple(
        ItemSums(int(row[0]), int(row[1]), *(float(value) for value in row[2:])) for row in connection.execute(wanted)
    )
