"""The tasks that could come next: a sample of whole cases and of exercises, wide enough for any ability."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from trainer.cases.drawing.features import pool_features
from trainer.cases.drawing.practice_case import BEDS_DBA, VARIATIONS, Axes, practice_code
from trainer.cases.drawing.practice_pool import Pool, class_of_fault
from trainer.practice.course.demands import case_demands, probes_of
from trainer.practice.course.practice_log import CASE, Task, topic_of_class
from trainer.practice.course.topics import PRACTISED
from trainer.practice.exercises.exercise_kinds import task_ahead
from trainer.practice.exercises.exercise_types import LEVELS, Spec

CASES_EACH = 36
"""So many cases are drawn of each engine to choose from."""

PASSES_SHARE, OLD_CODE_SHARE, NO_LENDING_SHARE = 0.15, 0.2, 0.25


def tasks_for(pools: Sequence[Pool], chance: np.random.Generator) -> list[Task]:
    """Return cases of every class and exercises of every subject and level, drawn anew."""
    return [*(task for pool in pools for task in _cases(pool, chance)), *_exercises(pools, chance)]


def case_task(code: str, pool: Pool, place: int | None, axes: Axes) -> Task:
    """Return a practice case as practice chooses and keeps it."""
    found = pool_features(pool, place, axes)
    return Task(CASE, code, topic_of_class(found.kind_class), found.kind_class, case_demands(found), probes_of(found))


def _cases(pool: Pool, chance: np.random.Generator) -> list[Task]:
    by_class: dict[str, list[int]] = {}
    for place in range(len(pool.rows)):
        by_class.setdefault(class_of_fault(pool.fault(place)), []).append(place)
    classes = sorted(by_class)
    tasks = []
    for number in range(CASES_EACH):
        bed = int(chance.integers(len(BEDS_DBA)))
        rows = by_class[classes[number % len(classes)]]
        chosen = None if chance.random() < PASSES_SHARE else int(rows[chance.integers(len(rows))])
        if chosen is not None and not pool.table(BEDS_DBA[bed]).audible[chosen]:
            continue
        axes = Axes(
            0 if chosen is None else int(pool.rows[chosen]), bed, bool(chance.random() < OLD_CODE_SHARE),
            bool(chance.random() >= NO_LENDING_SHARE), int(chance.integers(VARIATIONS)),
        )  # fmt: skip
        tasks.append(case_task(practice_code(pool.profile, axes), pool, chosen, axes))
    return tasks


def _exercises(pools: Sequence[Pool], chance: np.random.Generator) -> list[Task]:
    names = [pool.profile.name for pool in pools]
    tasks = []
    for kind, subjects in PRACTISED.items():
        for subject in subjects:
            for level in range(1, LEVELS + 1):
                profile = names[int(chance.integers(len(names)))]
                tasks.append(task_ahead(Spec(kind, profile, subject, level, int(chance.integers(2**31)))))
    return tasks
