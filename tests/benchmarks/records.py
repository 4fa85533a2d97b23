"""Reports over many attempts: `python -m tests.benchmarks.records [RESULTS] [--postgres]`.

Prints how long a class report takes and the memory of its process, beside the same sums made in Python over every row.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
from sqlalchemy import insert, select

from tests.postgres import Postgres
from tests.results import SET_ID, keep, result
from trainer.records.class_report.learner_sums import counted
from trainer.records.class_report.report import report_html
from trainer.records.class_report.results import stored_sets
from trainer.records.class_report.sums import class_sums
from trainer.records.store.store import Store, open_store_at
from trainer.records.store.tables import attempt_table, result_table

CASES = 8
SLIPS = ("hum_for_circuit", "counted_burst", "firing_order", "code_for_location", "unclassified")
PLACES = ("pass_through_connector", "under_cover_harness", "engine_harness", "drive_module", "solenoid_coil", "")


def rows_of(count: int) -> Iterator[dict]:
    """Yield made-up results: learners of different skill at cases of different difficulty."""
    rng = np.random.default_rng(5)
    for learner in range(-(-count // CASES)):
        skill = rng.normal(0.0, 1.0)
        for item in range(1, CASES + 1):
            right = rng.random() < 1.0 / (1.0 + np.exp(-(skill - (item - 4) / 3.0)))
            place = PLACES[(learner + item) % len(PLACES)]
            said = place if right else PLACES[int(rng.integers(len(PLACES)))]
            yield result(
                f"learner {learner:06}", item, 95.0 if right else float(rng.integers(0, 60)), place=place, said_place=said,
                kind_class=place or "circuit_passes", faulty=int(bool(place)), said_faulty=int(bool(said)),
                certainty=(0.5, 0.75, 0.95)[int(rng.integers(3))], misconception="" if right else SLIPS[int(rng.integers(5))],
                plays=int(rng.integers(1, 9)), readings=int(rng.integers(0, 7)), counted=1,
            )  # fmt: skip


def fill(store: Store, count: int) -> None:
    """Put results into a store, with the attempts behind them."""
    keep(store, CASES)
    part: list[dict] = []

    def flush() -> None:
        with store.writing() as connection:
            connection.execute(insert(attempt_table), [
                {"id": row["attempt_id"], "learner": row["learner"], "case_source": "set", "case_name": "x", "profile_digest": "",
                 "case_digest": "", "seed": 0, "program_version": "0", "started_at": row["closed_at"], "set_id": SET_ID,
                 "item": row["item"], "try_number": 1}
                for row in part
            ])  # fmt: skip
            connection.execute(insert(result_table), part)
        part.clear()

    for row in rows_of(count):
        part.append(row)
        if len(part) == 5000:
            flush()
    if part:
        flush()
    if store.engine.dialect.name == "postgresql":
        with store.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            connection.exec_driver_sql("ANALYZE")


def in_python(store: Store) -> None:
    """Do what the report needs of sums by reading every row."""
    places, slips, plays = Counter(), Counter(), Counter()
    marks: dict[str, dict[int, float]] = {}
    with store.engine.connect() as connection:
        for row in connection.execute(select(result_table).where(counted(stored_sets(store)[0]))):
            places[row.place, row.said_place] += 1
            slips[row.misconception] += 1
            plays[row.plays] += 1
            marks.setdefault(row.learner, {})[row.item] = row.mark
    whole = np.array([[one.get(item, 0.0) for item in range(1, CASES + 1)] for one in marks.values()])
    np.corrcoef(whole.T)


def timed(act: Callable[[], object]) -> float:
    """Return seconds, the best of three."""
    best = float("inf")
    for _time in range(3):
        start = time.perf_counter()
        act()
        best = min(best, time.perf_counter() - start)
    return best


def measure(url: str) -> None:
    """Print the figures of a store, in a process that did nothing else."""
    store = open_store_at(url)
    (kept,) = stored_sets(store)
    report_html(store, kept, "2026-12-01T00:00")
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    report = timed(lambda: report_html(store, kept, "2026-12-01T00:00"))
    sums = timed(lambda: class_sums(store, kept))
    plain = timed(lambda: in_python(store))
    print(
        f"report {report:.2f} s, {memory:.0f} MB; its sums {sums:.2f} s by the database, {plain:.2f} s row by row: {plain / sums:.1f} times"
    )
    store.close()


def main(words: list[str]) -> None:
    if words[:1] == ["--measure"]:
        measure(words[1])
        return
    counts = [int(word) for word in words if word.isdigit()]
    server = Postgres() if "--postgres" in words else None
    try:
        with tempfile.TemporaryDirectory() as folder:
            for count in counts or [25_000, 50_000, 100_000]:
                url = server.fresh() if server else f"sqlite:///{Path(folder) / f'{count}.sqlite3'}"
                store = open_store_at(url)
                fill(store, count)
                store.close()
                print(f"{count} results, {'PostgreSQL' if server else 'embedded'}: ", end="", flush=True)
                subprocess.run(
                    [sys.executable, "-m", "tests.benchmarks.records", "--measure", url], check=True, env=os.environ
                )
    finally:
        if server:
            server.close()


if __name__ == "__main__":
    main(sys.argv[1:])
