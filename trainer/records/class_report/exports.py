"""Exports of results: gradebook, one row a case, the event log, xAPI; docs/records.md has every column."""

from __future__ import annotations

import json
from collections.abc import Iterator

from sqlalchemy import select

from trainer.records.class_report.csv_text import NOT_DONE, NOT_DRAWN, Cell, csv_pieces
from trainer.records.class_report.learner_sums import counted, learner_sums
from trainer.records.class_report.results import StoredSet, void_items, without
from trainer.records.class_report.roster import roster
from trainer.records.class_report.xapi import statements
from trainer.records.store.row_types import typed
from trainer.records.store.store import Store
from trainer.records.store.tables import attempt_table, event_table, result_table

R = result_table.c
TIDY = (
    "learner", "item", "try_number", "redraw", "counted", "voided", "closed_at", "engine", "title", "kind_class",
    "mark", "points", "right", "certainty", "faulty", "said_faulty", "place", "said_place", "cylinders",
    "said_cylinders", "kinds", "said_kinds", "misconception", "plays", "readings", "hints", "minutes",
    "best_minutes", "spent_s", "supported", "attempt_id", "model",
)  # fmt: skip
GRADEBOOK = (
    "learner", "name", "class", "set", "mark", "passed", "cases_done", "cases", "right", "supported", "latest",
)  # fmt: skip


def gradebook(store: Store, stored: StoredSet, *, bom: bool) -> Iterator[bytes]:
    """Yield the gradebook: a row for each learner with results or on the roster, and each case's mark."""
    header = [*GRADEBOOK, *(f"case_{number}" for number in range(1, stored.size + 1))]
    return csv_pieces(header, _gradebook_rows(store, stored), bom=bom)


def _gradebook_rows(store: Store, stored: StoredSet) -> Iterator[list[Cell]]:
    people = roster(store)
    marks: dict[str, dict[int, Cell]] = {}
    with store.reading() as connection:
        here = select(R.learner, R.item, R.mark).where(counted(stored))
        for learner, item, mark in connection.execute(here):
            marks.setdefault(learner, {})[item] = round(mark, 2)
        for learner, item in void_items(connection, stored.id):
            marks.setdefault(learner, {}).setdefault(item, NOT_DRAWN)
    done = {row.learner: row for row in learner_sums(store, stored)}
    for learner in sorted({*done, *people, *marks}):
        row, person = done.get(learner), people.get(learner)
        cells = [marks.get(learner, {}).get(item, NOT_DONE) for item in range(1, stored.size + 1)]
        named: list[Cell] = [learner, person.name if person else "", person.class_name if person else "", stored.name]
        if row is None:
            yield [*named, NOT_DONE, NOT_DONE, 0, stored.size, 0, 0, "", *cells]
            continue
        passed = "yes" if row.mark >= stored.passes_at else "no"
        facts: list[Cell] = [
            round(row.mark, 2),
            passed,
            row.cases,
            stored.size,
            row.right,
            int(row.supported),
            row.latest,
        ]
        yield [*named, *facts, *cells]


def case_rows(store: Store, stored: StoredSet, *, bom: bool) -> Iterator[bytes]:
    """Yield one row for each result, counted or not."""

    def rows() -> Iterator[list[Cell]]:
        wanted = (
            select(*(R[name] for name in TIDY))
            .where(R.set_id == stored.id, without(stored.damaged))
            .order_by(R.learner, R.try_number, R.item)
        )
        with store.reading(yield_per=2000) as connection:
            for row in connection.execute(wanted):
                yield list(row)

    return csv_pieces(TIDY, rows(), bom=bom)


EVENTS = ("learner", "attempt_id", "item", "try_number", "number", "kind", "at", "data", "link")


def event_rows(store: Store, stored: StoredSet, *, bom: bool) -> Iterator[bytes]:
    """Yield every event of a set's attempts in order; `data` is JSON as it was stored."""

    def rows() -> Iterator[list[Cell]]:
        a, e = attempt_table.c, event_table.c
        wanted = (
            select(a.learner, a.id, a.item, a.try_number, e.number, e.kind, e.at, e.data, e.link)
            .join(event_table, e.attempt_id == a.id)
            .where(a.set_id == stored.id, typed(attempt_table), typed(event_table))
            .order_by(a.learner, a.id, e.number)
        )
        with store.reading(yield_per=2000) as connection:
            for row in connection.execute(wanted):
                yield list(row)

    return csv_pieces(EVENTS, rows(), bom=bom)


def xapi_lines(store: Store, stored: StoredSet, home: str) -> Iterator[bytes]:
    """Yield xAPI statements, one to a line; a second export gives the same statements with the same ids."""
    for statement in statements(store, stored, home):
        yield json.dumps(statement, ensure_ascii=False).encode("utf-8") + b"\n"
