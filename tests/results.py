"""Results in a store, many and quickly, without working a case: for sums, reports and exports."""

from __future__ import annotations

import uuid
from collections.abc import Sequence
from typing import Any

from sqlalchemy import insert

from trainer.records.class_report.results import StoredSet, put_results, recount, stored_sets
from trainer.records.store.store import Store
from trainer.records.store.tables import attempt_table, set_table

SET_ID = "0123456789abcdef0123456789abcdef"


def keep(store: Store, size: int, **changes: Any) -> StoredSet:
    """Put a set into a store."""
    row = {
        "id": SET_ID, "name": "made_up", "title": "Made up", "mode": "exam", "size": size, "counts": "best",
        "passes_at": 60.0, "certainty_weight": 0.0, "weights": str([1.0] * size), "closes": "", **changes,
    }  # fmt: skip
    with store.writing() as connection:
        connection.execute(insert(set_table), row)
    return stored_sets(store)[0]


def result(learner: str, item: int, mark: float, **changes: Any) -> dict[str, Any]:
    """Return one row of results."""
    right = int(mark >= 70.0)
    return {
        "attempt_id": str(uuid.uuid5(uuid.NAMESPACE_OID, f"{learner} {item} {changes.get('try_number', 1)}")),
        "set_id": SET_ID, "learner": learner, "item": item, "try_number": 1, "redraw": 0,
        "closed_at": "2026-11-20T10:00:00.000+00:00", "engine": "north_v8", "title": "A title", "kind_class": "engine_harness",
        "mark": mark, "points": mark, "right": right, "certainty": 0.75, "faulty": 1, "said_faulty": 1,
        "place": "engine_harness", "said_place": "engine_harness" if right else "drive_module", "cylinders": "3",
        "said_cylinders": "3" if right else "4", "kinds": "open", "said_kinds": "open",
        "misconception": "" if right else "counted_burst", "plays": 3, "readings": 2, "hints": 0, "minutes": 90.0,
        "best_minutes": 60.0, "spent_s": 300.0, "supported": 0, "model": "m", **changes,
    }  # fmt: skip


def put(store: Store, rows: Sequence[dict[str, Any]]) -> None:
    """Put results with the attempts behind them into a store, and work out which count."""
    attempts = [
        {
            "id": row["attempt_id"], "learner": row["learner"], "case_source": "set", "case_name": "x", "profile_digest": "",
            "case_digest": "", "seed": 0, "program_version": "0", "started_at": row["closed_at"], "set_id": row["set_id"],
            "item": row["item"], "try_number": row["try_number"], "redraw": 0, "model": "m",
        }
        for row in rows
    ]  # fmt: skip
    with store.writing() as connection:
        for start in range(0, len(attempts), 500):
            connection.execute(insert(attempt_table), attempts[start : start + 500])
    put_results(store, rows)
    recount(store, SET_ID)
