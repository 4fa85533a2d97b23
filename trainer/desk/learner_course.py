"""A learner's practice: their state, what comes next and why, and the exercises they answer."""

from __future__ import annotations

import contextlib
import hashlib
import uuid
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from trainer import __version__
from trainer.cases.drawing.practice_pool import Pool
from trainer.cases.single_case.shipped import profile_names
from trainer.desk.case_source import FoundCase, coded_case
from trainer.errors import ProblemsFoundError, WrongCallError
from trainer.practice.attempt.event_json import record_of
from trainer.practice.attempt.events import Closed, Started
from trainer.practice.course.lessons import Lesson, lesson_after
from trainer.practice.course.next_task import Chosen, choose, stale
from trainer.practice.course.practice_log import Entry, Learner, day_of, entries_of, entry_json, learner_of
from trainer.practice.exercises.candidate_tasks import tasks_for
from trainer.practice.exercises.drills import drill_spec
from trainer.practice.exercises.ear_exercises import sounds_of
from trainer.practice.exercises.exercise_kinds import exists
from trainer.practice.exercises.exercise_types import Exercise, Spec, spec_of
from trainer.practice.exercises.rematch import Round, rematch_of, top_confusion
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import EXERCISE, Store


@dataclass(frozen=True, slots=True)
class Begun:
    """An exercise that was begun: its attempt, what it is made from, and why it came ("" where it was asked for)."""

    attempt_id: str
    spec: Spec
    why: str
    about: str


class Course:
    """One learner's practice; `now` gives UTC text, `chance` draws what there is to choose from."""

    def __init__(self, store: Store, learner: str, now: Callable[[], str], chance: np.random.Generator) -> None:
        self.store, self.learner, self._now, self._chance = store, learner, now, chance
        self._entries: list[Entry] = []
        self._read = 0
        self._state: Learner | None = None

    @property
    def state(self) -> Learner:
        """The learner's abilities and due reviews, computed from every finished task."""
        new = self.store.practised(self.learner, self._read)
        self._entries += entries_of((at, data) for _number, at, data in new)
        if new or self._state is None:
            self._read = new[-1][0] if new else self._read
            self._state = learner_of(self._entries)
        return self._state

    @property
    def day(self) -> float:
        """Today, as practice counts days."""
        return day_of(self._now())

    @property
    def lesson(self) -> Lesson | None:
        """The lesson that comes first, None where all are done or practice began without them."""
        entries = self.state.entries
        return None if any(not entry.lesson for entry in entries) else lesson_after(entries)

    def next(self, pools: Sequence[Pool]) -> Chosen:
        """Return the task that teaches most now, out of what these engines offer."""
        return choose(tasks_for(pools, self._chance), self.state, self.day)

    def stale_class(self) -> str:
        """Return the class that the last two tasks shared, which the next must not have; "" for none."""
        return stale([entry.kind_class for entry in self.state.entries])

    def rematch(self, pools: Sequence[Pool]) -> tuple[Round, ...]:
        """Return four short exercises on what this learner confuses most, all of one engine that has both sounds."""
        pair = set(top_confusion(self.state.entries))
        both = [pool for pool in pools if pair <= set(sounds_of(pool))] or pools
        engine = both[int(self._chance.integers(len(both)))].profile.name
        return rematch_of(self.state.entries, engine, int(self._chance.integers(2**31)))

    def drill(self, kind: str, engines: Sequence[str]) -> Spec:
        """Return an exercise of one kind at the learner's level; raises WrongCallError for a kind there is not."""
        return drill_spec(kind, self.state, engines, self._chance)

    # exercises

    def unfinished(self) -> Begun | None:
        """Return the exercise that was begun and not answered, if this program still makes the same one of it."""
        for row in self.store.unfinished(self.learner, exercises=True):
            first = self.store.started(row)
            if first is not None and row.program_version == __version__ and exists(row.case_name, profile_names()):
                return Begun(row.id, spec_of(row.case_name), first.why or "", first.about)
        return None

    def begun_case(self) -> tuple[FoundCase, AttemptRow] | None:
        """Return the newest case that practice gave and that has no end yet, if it is still the same case here."""
        for row in self.store.unfinished(self.learner):
            if row.case_source != "code":
                continue
            first = self.store.started(row)
            if first is not None and first.why is not None:
                with contextlib.suppress(ProblemsFoundError):  # drawn by another version, or of another engine
                    found = coded_case(row.case_name)
                    if found.digest == row.case_digest:
                        return found, row
        return None

    def begin(self, exercise: Exercise, why: str = "", about: str = "") -> Begun:
        """Note that an exercise is begun, before anything of it is shown."""
        now, spec = self._now(), exercise.spec
        row = AttemptRow(
            id=str(uuid.uuid4()),
            learner=self.learner,
            case_source=EXERCISE,
            case_name=spec.name,
            profile_digest=exercise.profile.digest,
            case_digest=hashlib.sha256(spec.name.encode("utf-8")).hexdigest(),
            seed=spec.seed,
            program_version=__version__,
            started_at=now,
        )
        self.store.begin(row, record_of(Started(why=why, about=about), 1, now))
        return Begun(row.id, spec, why, about)

    def answer(self, begun: Begun, exercise: Exercise, choice: int, certainty: float) -> bool:
        """Keep an answer; tell whether it is right. Raises WrongCallError where it was answered already."""
        right = choice == exercise.right
        task = exercise.task
        entry = entry_json(
            task, [(exercise.demand, right)], right=right, certainty=certainty,
            misconception="" if right else exercise.choices[choice].misconception,
            confused=(exercise.labels[exercise.right], exercise.labels[choice]) if exercise.labels else None,
        )  # fmt: skip
        try:
            self.store.append(begun.attempt_id, record_of(Closed(practice=entry, choice=choice), 2, self._now()))
        except ValueError as error:  # another window or terminal was quicker
            raise WrongCallError("worked_elsewhere") from error
        return right

    def listened(self, name: str, profile_digest: str) -> None:
        """Note that labelled examples were listened to: exposure, nothing that is scored."""
        now = self._now()
        row = AttemptRow(
            str(uuid.uuid4()), self.learner, EXERCISE, name, profile_digest,
            hashlib.sha256(name.encode("utf-8")).hexdigest(), 0, __version__, now,
        )  # fmt: skip
        self.store.begin(row, record_of(Closed(listening=True), 1, now))
