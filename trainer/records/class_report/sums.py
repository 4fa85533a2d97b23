"""What a class's results add up to: every sum is the database's own, whatever its size."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import ColumnElement, Connection, Select, case, func, select

from trainer.records.class_report.item_statistics import ItemSums
from trainer.records.class_report.results import REPEATED, KeptSet, void_items, void_notes, weight_of, without
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


@dataclass(frozen=True, slots=True)
class ClassSums:
    """A class's counted results of one set, as counts and sums.

    `marks` counts learners by tens of their mark. `places` and `cylinders` count (true, said) pairs; `slips` are wrong
    findings as (misconception, place, kinds, said place, said kinds, count, sum of certainty); `certainty` counts
    (certainty, right); `detected` counts (faulty, said faulty); `plays` and `readings` are histograms. `classes` gives,
    by class of fault, how many results and how many right; `items` likewise by index, with mark and
    minutes. `voided` cases do not count by the instructor's word, `repeated` results because they came second.
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
    repeated: int


def counted(kept: KeptSet) -> ColumnElement[bool]:
    """Return the condition for a set's results that count; damaged ones do not."""
    return (R.set_id == kept.id) & (R.counted == 1) & without(kept.damaged)


def learner_marks(kept: KeptSet) -> Select[Any]:
    """Return the query of each learner's mark of 100: what is not handed in counts nought, what is void not at all."""
    whole = float(sum(kept.weights)) or 1.0
    items = void_notes(kept.id).subquery()
    void = (
        select(items.c.learner, func.sum(weight_of(kept.weights, items.c.item)).label("weight"))
        .group_by(items.c.learner)
        .subquery()
    )
    left = whole - func.coalesce(func.max(void.c.weight), 0.0)
    weighted = func.sum(R.mark * weight_of(kept.weights, R.item))
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
        .where(counted(kept))
        .group_by(R.learner)
    )


def learner_sums(store: Store, kept: KeptSet, most: int | None = None) -> list[LearnerSum]:
    """Return learners in the order of their names, at most so many."""
    wanted = learner_marks(kept).order_by(R.learner)
    with store.reading() as connection:
        rows = connection.execute(wanted if most is None else wanted.limit(most))
        return [
            LearnerSum(
                row.learner, int(row.cases), float(row.mark), int(row.right), float(row.minutes),
                float(row.best_minutes), bool(row.supported), row.latest,
            )
            for row in rows
        ]  # fmt: skip


def solid_by_class(store: Store, kept: KeptSet, learners: list[str]) -> dict[str, dict[str, tuple[int, int]]]:
    """Return, for some learners, how many results of each class they have and how many are right."""
    found: dict[str, dict[str, tuple[int, int]]] = {}
    wanted = (
        select(R.learner, R.kind_class, func.count(), func.sum(R.right))
        .where(counted(kept), R.learner.in_(learners))
        .group_by(R.learner, R.kind_class)
        .order_by(R.learner, R.kind_class)
    )
    with store.reading() as connection:
        for learner, kind, count, right in connection.execute(wanted):
            found.setdefault(learner, {})[kind] = (int(count), int(right))
    return found


def repeated_by(store: Store, kept: KeptSet) -> list[str]:
    """Return who handed a case in again that they had handed in before."""
    wanted = (
        select(R.learner)
        .where(R.set_id == kept.id, R.voided == REPEATED, without(kept.damaged))
        .distinct()
        .order_by(R.learner)
    )
    with store.reading() as connection:
        return list(connection.execute(wanted).scalars())


def class_sums(store: Store, kept: KeptSet) -> ClassSums:
    """Return what a class's counted results of a set add up to."""
    with store.reading() as connection:
        return _sums(connection, kept)


def _sums(connection: Connection, kept: KeptSet) -> ClassSums:
    here = counted(kept)
    marks = list(connection.execute(_mark_bins(kept)))
    mean, learners = _mean(marks)
    unsupported, _count = _mean([row for row in marks if not row.supported])
    sorts = list(connection.execute(_sorted_results(here)))
    efforts = _grouped(connection, (R.plays, R.readings), here)
    items = _items(connection, here)
    repeated = select(func.count()).where(R.set_id == kept.id, R.voided == REPEATED)
    tens = Counter(dict.fromkeys(range(10), 0))
    for row in marks:
        tens[min(max(int(row.ten), 0), 9)] += int(row.learners)
    return ClassSums(
        results=sum(int(row.results) for row in sorts),
        learners=learners,
        mean_mark=mean or 0.0,
        mean_mark_unsupported=unsupported,
        passed=sum(int(row.learners) for row in marks if row.passed),
        right=sum(int(row.results) for row in sorts if row.right),
        marks=dict(sorted(tens.items())),
        places=_counted(((row.place, row.said_place), row.results) for row in sorts),
        cylinders=_grouped(connection, (R.cylinders, R.said_cylinders), here & (R.faulty == 1)),
        slips=_slips(sorts),
        certainty=_shares((row.certainty, row.results, row.right) for row in sorts),
        detected=_counted(((row.faulty, row.said_faulty), row.results) for row in sorts),
        plays=_counted((plays, count) for (plays, _readings), count in efforts.items()),
        readings=_counted((readings, count) for (_plays, readings), count in efforts.items()),
        minutes=sum(one[3] for one in items.values()),
        best_minutes=sum(one[4] for one in items.values()),
        classes=_shares((row.kind_class, row.results, row.right) for row in sorts),
        items=items,
        item_sums=_item_sums(connection, kept, here),
        voided=len(void_items(connection, kept.id)),
        repeated=int(connection.execute(repeated).scalar_one()),
    )


def _mark_bins(kept: KeptSet) -> Select[Any]:
    """Return the query of learners by tens of their mark, whether they passed, and whether they had support."""
    marks = learner_marks(kept).subquery()
    # nudged, so that a mark shown as 90 is in the nineties though rounding made it 89.9999999
    ten = func.floor((marks.c.mark + 1e-9) / 10.0)
    passed = case((marks.c.mark >= kept.passes_at, 1), else_=0)
    columns = (ten.label("ten"), passed.label("passed"), marks.c.supported)
    return select(*columns, func.count().label("learners"), func.sum(marks.c.mark).label("total")).group_by(
        ten, passed, marks.c.supported
    )


def _mean(marks: Sequence[Any]) -> tuple[float | None, int]:
    learners = sum(int(row.learners) for row in marks)
    return (sum(float(row.total) for row in marks) / learners if learners else None), learners


SORTS = (
    R.place, R.said_place, R.kinds, R.said_kinds, R.misconception, R.certainty, R.faulty, R.said_faulty, R.kind_class,
    R.right,
)  # fmt: skip


def _sorted_results(here: ColumnElement[bool]) -> Select[Any]:
    """Return the query of results counted by everything of which a report counts: one pass for many tables."""
    return select(*SORTS, func.count().label("results")).where(here).group_by(*SORTS).order_by(*SORTS)


def _counted(pairs: Iterable[tuple[Any, int]]) -> dict[Any, int]:
    counts: Counter[Any] = Counter()
    for key, count in pairs:
        counts[key] += int(count)
    return dict(sorted(counts.items()))


def _shares(rows: Iterable[tuple[Any, int, int]]) -> dict[Any, tuple[int, int]]:
    """Return, by value, how many results and how many of them right."""
    counts: dict[Any, tuple[int, int]] = {}
    for value, count, right in rows:
        before = counts.get(value, (0, 0))
        counts[value] = (before[0] + int(count), before[1] + int(count) * int(right))
    return dict(sorted(counts.items()))


def _grouped(
    connection: Connection, columns: tuple[ColumnElement[Any], ColumnElement[Any]], here: ColumnElement[bool]
) -> dict[tuple[Any, Any], int]:
    wanted = select(*columns, func.count()).where(here).group_by(*columns).order_by(*columns)
    return {(one, two): int(count) for one, two, count in connection.execute(wanted)}


def _slips(sorts: Sequence[Any]) -> tuple[tuple[str, str, str, str, str, int, float], ...]:
    """Return wrong findings by misconception and what was confused, with count and sum of certainty."""
    slips: dict[tuple[str, ...], tuple[int, float]] = {}
    for row in sorts:
        if not row.right:
            key = (row.misconception, row.place, row.kinds, row.said_place, row.said_kinds)
            count, sure = slips.get(key, (0, 0.0))
            slips[key] = (count + int(row.results), sure + int(row.results) * float(row.certainty))
    return tuple((*key, *slips[key]) for key in sorted(slips))  # type: ignore[misc]  # five words, a count and a sum


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
