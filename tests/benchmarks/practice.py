"""Choosing the next task after thousands of answers: milliseconds, growth, and the same from the database anew.

Run: python -m tests.benchmarks.practice [COUNT ...]
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path

import numpy as np
from sqlalchemy import insert

from tests.simulated_learners import shipped_pools
from trainer.desk.learner_course import Course
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.course.practice_log import entry_json, learner_of
from trainer.practice.course.skills import Demand
from trainer.practice.exercises.candidate_tasks import tasks_for
from trainer.records.store.log_rows import AttemptRow, row_of
from trainer.records.store.store import EXERCISE, PRACTICE, Store, open_store
from trainer.records.store.tables import attempt_table, event_table

COUNTS = (500, 1000, 2000, 5000, 10_000)
REPEATS = 9


def filled(store: Store, count: int) -> None:
    """Put so many ended tasks into a store, as practice itself would."""
    chance = np.random.default_rng(count)
    tasks = tasks_for(shipped_pools(), chance)
    attempts, events = [], []
    for number in range(count):
        task = tasks[number % len(tasks)]
        day = number / 20.0
        at = f"20{24 + int(day // 365):02d}-{1 + int(day % 365 // 31):02d}-{1 + int(day % 28):02d}T10:00:00+00:00"
        right = bool(chance.random() < 0.85)
        row = AttemptRow(f"{number:036d}", "anna", EXERCISE, task.name, "0" * 64, "0" * 64, 1, "1", at)
        told = [(Demand(one.skill, one.difficulty, one.guess), right) for one in task.demands]
        data = {PRACTICE: entry_json(task, told, right=right, certainty=0.75, misconception="")}
        attempts.append(asdict(row))
        events += [
            row_of(row.id, EventRecord(1, EventKind.STARTED, at, {})),
            row_of(row.id, EventRecord(2, EventKind.CLOSED, at, data)),
        ]
    with store.engine.begin() as connection:
        connection.execute(insert(attempt_table), attempts)
        connection.execute(insert(event_table), events)


def median_ms(act: Callable[[], object]) -> float:
    """Return the median time of an act in milliseconds."""
    times = []
    for _time in range(REPEATS):
        began = time.perf_counter()
        act()
        times.append(time.perf_counter() - began)
    return 1e3 * sorted(times)[REPEATS // 2]


def row_for(count: int) -> str:
    """Return the times with so many past tasks as a line."""
    pools = shipped_pools()
    with tempfile.TemporaryDirectory() as folder:
        store = open_store(Path(folder))
        filled(store, count)

        def course() -> Course:
            return Course(store, "anna", lambda: "2031-01-01T00:00:00+00:00", np.random.default_rng(2))

        at_hand = course()
        entries = list(at_hand.state.entries)
        choosing = median_ms(lambda: at_hand.next(pools))
        one_more = median_ms(lambda: (learner_of(entries), at_hand.next(pools)))
        anew = median_ms(lambda: course().next(pools))
        store.close()
    return f"{count:>7} {choosing:>19.1f} ms {one_more:>19.1f} ms {anew:>21.1f} ms {anew / one_more:>6.1f}"


def main() -> None:
    """Print a row for each number of past tasks."""
    for pool in shipped_pools():
        tasks_for([pool], np.random.default_rng(0))
    heads = ("choosing, all at hand", "after one more answer", "cold, from the database")
    print(f"{'tasks':>7} {heads[0]:>22} {heads[1]:>22} {heads[2]:>24} {'ratio':>6}")
    for count in [int(one) for one in sys.argv[1:]] or COUNTS:
        print(row_for(count))


if __name__ == "__main__":
    main()
