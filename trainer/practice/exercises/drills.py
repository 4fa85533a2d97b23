"""Choose an exercise of one chosen kind at the level that the learner gets right about six times of seven."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from trainer.errors import WrongCallError
from trainer.practice.course.ability import expected_answers
from trainer.practice.course.next_task import AIM
from trainer.practice.course.practice_log import Learner
from trainer.practice.course.topics import PRACTISED
from trainer.practice.exercises.exercise_kinds import task_ahead
from trainer.practice.exercises.exercise_types import LEVELS, Spec


def drill_spec(kind: str, learner: Learner, engines: Sequence[str], chance: np.random.Generator) -> Spec:
    """Return an exercise of a kind, its subject drawn; raises WrongCallError for a kind that there is not."""
    if kind not in PRACTISED:
        raise WrongCallError("no_drill", kind=kind, kinds=", ".join(PRACTISED))
    subjects = PRACTISED[kind]
    subject = subjects[int(chance.integers(len(subjects)))]
    engine = engines[int(chance.integers(len(engines)))]
    specs = [Spec(kind, engine, subject, level, int(chance.integers(2**31))) for level in range(1, LEVELS + 1)]

    wanted = [task_ahead(spec).demands[0] for spec in specs]
    right, _bits = expected_answers(np.array([learner.abilities[one.skill].chance for one in wanted]), wanted)
    return specs[int(np.argmin(np.abs(right - AIM)))]
