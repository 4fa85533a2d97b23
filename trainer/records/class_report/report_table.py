"""The class report as one table: every count of it in a row of its own, for a spreadsheet."""

from __future__ import annotations

from collections.abc import Iterator

from trainer.records.class_report.csv_text import Cell, csv_pieces
from trainer.records.class_report.item_statistics import alpha, discrimination
from trainer.records.class_report.results import StoredSet
from trainer.records.class_report.sums import ClassSums, class_sums
from trainer.records.class_report.teaching import lessons
from trainer.records.store.store import Store

COLUMNS = ("table", "true", "said", "count", "right", "value")


def report_table(store: Store, stored: StoredSet, *, bom: bool = False) -> bytes:
    """Return the report's counts: confusion of places and cylinders, misconceptions, certainty, cases, classes."""
    return b"".join(csv_pieces(COLUMNS, _rows(class_sums(store, stored)), bom=bom))


def _rows(sums: ClassSums) -> Iterator[list[Cell]]:
    yield ["class", "", "", sums.learners, sums.passed, round(sums.mean_mark, 2)]
    for ten, count in sums.marks.items():
        yield ["marks", f"{10 * ten} to {10 * ten + 10}", "", count, None, None]
    for (truth, said), count in sums.places.items():
        yield ["places", truth, said, count, count if truth == said else 0, None]
    for (truth, said), count in sums.cylinders.items():
        yield ["cylinders", truth, said, count, count if truth == said else 0, None]
    for one in lessons(sums):
        yield ["misconceptions", one.misconception, "", one.count, 0, round(one.weight, 2)]
    for certainty, (count, right) in sums.certainty.items():
        yield ["certainty", str(certainty), "", count, right, None]
    for (faulty, said_faulty), count in sums.detected.items():
        yield ["fault or none", faulty, said_faulty, count, count if faulty == said_faulty else 0, None]
    for name, (count, right) in sums.classes.items():
        yield ["classes", name, "", count, right, None]
    for item, totals in sums.items.items():
        yield ["cases", item, "", totals.count, totals.right, round(totals.mark / totals.count, 2)]
    for one_item in sums.item_sums:
        index = discrimination(one_item)
        yield ["discrimination", one_item.item, "", one_item.count, None, None if index is None else round(index, 4)]
    value = alpha(sums.item_sums)
    count = sums.item_sums[0].count if sums.item_sums else 0
    yield ["alpha", "", "", count, None, None if value is None else round(value, 4)]
