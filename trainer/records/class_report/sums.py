"""Sums and counts over a class's results, all computed by the database."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from sqlalchemy import ColumnElement, Connection, case, func, select

from trainer.records.class_report.item_statistics import ItemSums
from trainer.records.class_report.learner_sums import counted, learner_marks_query
from trainer.records.class_report.results import REPEATED, StoredSet, void_items
from trainer.records.store.store import Store
from trainer.records.store.tables import result_table

R = result_table.c
Key = TypeVar("Key", str, float, int, tuple[str, str], tuple[int, int])


@dataclass(frozen=True, slots=True)
class Confusion:
    """Wrong findings of one sort: the true and the stated place and kinds, how many, and the sum of their certainty."""

    misconception: str
    place: str
    kinds: str
    said_place: str
    said_kinds: str
    count: int
    certainty: float


@dataclass(frozen=True, slots=True)
class ItemTotals:
    """All counted results of one case: how many, how many right, and sums of marks and minutes."""

    count: int
    right: int
    mark: float
    minutes: float
    best_minutes: float


@dataclass(frozen=True, slots=True)
class _MarkBin:
    """Learners whose marks lie in one ten, by whether they passed and had support; `total` is the sum of the marks."""

    ten: int
    passed: bool
    supported: bool
    learners: int
    total: float


@dataclass(frozen=True, slots=True)
class _ResultGroup:
    """Results that agree in everything that a report counts by; the fields are columns of the table of results."""

    place: str
    said_place: str
    kinds: str
    said_kinds: str
    misconception: str
    certainty: float
    faulty: int
    said_faulty: int
    kind_class: str
    right: int
    count: int


@dataclass(frozen=True, slots=True)
class ClassSums:
    """A class's counted results of one set, as counts and sums.

    `marks` counts learners by tens of their mark. `places` and `cylinders` count (true, said) pairs; `certainty` gives,
    by stated certainty, how many results and how many right, `classes` the same by class of fault; `detected` counts
    (faulty, said faulty); `plays` and `readings` are histograms; `items` is by index. An instructor declared `voided`
    cases void; `repeated` results do not count because the learner had handed the case in before.
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
    confusions: tuple[Confusion, ...]
    certainty: Mapping[float, tuple[int, int]]
    detected: Mapping[tuple[int, int], int]
    plays: Mapping[int, int]
    readings: Mapping[int, int]
    minutes: float
    best_minutes: float
    classes: Mapping[str, tuple[int, int]]
    items: Mapping[int, ItemTotals]
    item_sums: tuple[ItemSums, ...]
    voided: int
    repeated: int


def class_sums(store: Store, stored: StoredSet) -> ClassSums:
    """Return the sums over a class's counted results of a set."""
    with store.reading() as connection:
        return _sums(connection, stored)


def _sums(connection: Connection, stored: StoredSet) -> ClassSums:
    here = counted(stored)
    bins = _mark_bins(connection, stored)
    mean, learners = _mean(bins)
    unsupported, _count = _mean([one for one in bins if not one.supported])
    groups = _result_groups(connection, here)
    efforts = _pair_counts(connection, R.plays, R.readings, here)
    items = _items(connection, here)
    repeated = select(func.count()).where(R.set_id == stored.id, R.voided == REPEATED)
    tens = Counter(dict.fromkeys(range(10), 0))
    for one in bins:
        tens[min(max(one.ten, 0), 9)] += one.learners
    return ClassSums(
        results=sum(one.count for one in groups),
        learners=learners,
        mean_mark=mean or 0.0,
        mean_mark_unsupported=unsupported,
        passed=sum(one.learners for one in bins if one.passed),
        right=sum(one.count for one in groups if one.right),
        marks=dict(sorted(tens.items())),
        places=_totals(((one.place, one.said_place), one.count) for one in groups),
        cylinders=_pair_counts(connection, R.cylinders, R.said_cylinders, here & (R.faulty == 1)),
        confusions=_confusions(groups),
        certainty=_right_counts((one.certainty, one) for one in groups),
        detected=_totals(((one.faulty, one.said_faulty), one.count) for one in groups),
        plays=_totals((plays, count) for (plays, _readings), count in efforts.items()),
        readings=_totals((readings, count) for (_plays, readings), count in efforts.items()),
        minutes=sum(one.minutes for one in items.values()),
        best_minutes=sum(one.best_minutes for one in items.values()),
        classes=_right_counts((one.kind_class, one) for one in groups),
        items=items,
        item_sums=_item_sums(connection, stored, here),
        voided=len(void_items(connection, stored.id)),
        repeated=connection.execute(repeated).scalar_one(),
    )


def _mark_bins(connection: Connection, stored: StoredSet) -> list[_MarkBin]:
    marks = learner_marks_query(stored).subquery()
    # nudged, so that a mark shown as 90 is in the nineties though rounding made it 89.9999999
    ten = func.floor((marks.c.mark + 1e-9) / 10.0)
    passed = case((marks.c.mark >= stored.passes_at, 1), else_=0)
    keys = (ten, passed, marks.c.supported)
    wanted = select(*keys, func.count(), func.sum(marks.c.mark)).group_by(*keys)
    return [
        _MarkBin(int(ten), bool(passed), bool(supported), int(learners), float(total))
        for ten, passed, supported, learners, total in connection.execute(wanted)
    ]


def _mean(bins: Sequence[_MarkBin]) -> tuple[float | None, int]:
    """Return the mean mark, None for nobody, and the number of learners."""
    learners = sum(one.learners for one in bins)
    return (sum(one.total for one in bins) / learners if learners else None), learners


GROUPED_BY = (
    R.place, R.said_place, R.kinds, R.said_kinds, R.misconception, R.certainty, R.faulty, R.said_faulty, R.kind_class,
    R.right,
)  # fmt: skip


def _result_groups(connection: Connection, here: ColumnElement[bool]) -> list[_ResultGroup]:
    """Return results counted by everything that a report counts by: one pass over the table for many counts."""
    wanted = select(*GROUPED_BY, func.count()).where(here).group_by(*GROUPED_BY).order_by(*GROUPED_BY)
    return [_ResultGroup(*row) for row in connection.execute(wanted)]


def _totals(pairs: Iterable[tuple[Key, int]]) -> dict[Key, int]:
    counts: Counter[Key] = Counter()
    for key, count in pairs:
        counts[key] += count
    return dict(sorted(counts.items()))


def _right_counts(groups: Iterable[tuple[Key, _ResultGroup]]) -> dict[Key, tuple[int, int]]:
    """Return, by key, how many results there are and how many of them are right."""
    counts: dict[Key, tuple[int, int]] = {}
    for key, one in groups:
        count, right = counts.get(key, (0, 0))
        counts[key] = (count + one.count, right + one.count * one.right)
    return dict(sorted(counts.items()))


def _pair_counts(
    connection: Connection, first: ColumnElement[Key], second: ColumnElement[Key], here: ColumnElement[bool]
) -> dict[tuple[Key, Key], int]:
    wanted = select(first, second, func.count()).where(here).group_by(first, second).order_by(first, second)
    return {(one, two): count for one, two, count in connection.execute(wanted)}


def _confusions(groups: Sequence[_ResultGroup]) -> tuple[Confusion, ...]:
    """Return wrong findings by misconception and by true and named place."""
    found: dict[tuple[str, str, str, str, str], tuple[int, float]] = {}
    for one in groups:
        if not one.right:
            key = (one.misconception, one.place, one.kinds, one.said_place, one.said_kinds)
            count, certainty = found.get(key, (0, 0.0))
            found[key] = (count + one.count, certainty + one.count * one.certainty)
    return tuple(Confusion(*key, *found[key]) for key in sorted(found))


def _items(connection: Connection, here: ColumnElement[bool]) -> dict[int, ItemTotals]:
    wanted = (
        select(R.item, func.count(), func.sum(R.right), func.sum(R.mark), func.sum(R.minutes), func.sum(R.best_minutes))
        .where(here)
        .group_by(R.item)
        .order_by(R.item)
    )
    return {
        item: ItemTotals(count, int(right), float(mark), float(minutes), float(best))
        for item, count, right, mark, minutes, best in connection.execute(wanted)
    }


def _item_sums(connection: Connection, stored: StoredSet, here: ColumnElement[bool]) -> tuple[ItemSums, ...]:
    """Return sums over the learners who have every case of the set."""
    totals = (
        select(R.learner, func.sum(R.mark).label("total"))
        .where(here)
        .group_by(R.learner)
        .having(func.count() == stored.size)
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
