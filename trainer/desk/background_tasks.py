"""The tasks that take time, run by the worker: solving, rendering, reasoning; values in, values out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from trainer.cases.single_case.shipped import profile_named, profile_names
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.elements import Location
from trainer.circuit.profile import Profile
from trainer.desk.caching_solver import CachingSolver
from trainer.desk.exercise_maker import Exercises
from trainer.desk.instructor_actions import collect_and_mark
from trainer.desk.preview import write_preview
from trainer.errors import Problem
from trainer.instruments.measuring import Request
from trainer.output.setup_sounds import SetupSound, setup_sound
from trainer.practice.attempt import actions, repair
from trainer.practice.attempt.actions import ActionResult
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.debrief import Debrief, debrief_of
from trainer.practice.attempt.events import CodesRead, Heard, Measured, Retested
from trainer.practice.attempt.hints import Hint, next_hint
from trainer.practice.exercises.exercise_types import Exercise, Sounding, render_sounding
from trainer.records.class_report.collect import Collected
from trainer.records.class_report.marking import Marked
from trainer.records.store.store import open_store_at
from trainer.sets.case_set import CaseSet
from trainer.sets.items import SetItem, items_of
from trainer.sets.proofs import set_problems
from trainer.sets.sealed import SetKey
from trainer.sound.render import Sound

Progress = Callable[[str, float], None]
"""Takes the stage that the work is in and the share that is done, 0 to 1; may raise to stop the work."""


class BackgroundTasks:
    """Runs long work; each method reports to the progress callback that it is handed first."""

    def __init__(self, universes: Universes) -> None:
        self._universes = universes
        self._solver = CachingSolver()

    def hear(
        self, progress: Progress, attempt: Attempt, slots: Sequence[int] | None, place: str
    ) -> ActionResult[Heard]:
        """Return a test or a replay, rendered."""
        progress("sounding", 0.0)
        return actions.hear(attempt, slots, place, self._solver)

    def retest(
        self, progress: Progress, attempt: Attempt, place: str, moved: Location | None, heated: Location | None
    ) -> ActionResult[Retested]:
        """Return the retest, rendered."""
        progress("sounding", 0.0)
        return repair.retest(attempt, self._solver, place, moved=moved, heated=heated)

    def read_codes(self, progress: Progress, attempt: Attempt, clear: bool) -> ActionResult[CodesRead]:
        """Return the codes in memory; solve the last test again if it is no longer cached."""
        progress("codes", 0.0)
        return actions.read_codes(attempt, self._solver, clear=clear)

    def measure(
        self, progress: Progress, attempt: Attempt, request: Request, predicted: str | None
    ) -> ActionResult[Measured]:
        """Return a reading."""
        progress("measuring", 0.0)
        return actions.measure(attempt, request, predicted)

    def prepare(self, progress: Progress, attempt: Attempt) -> None:
        """Solve what reasoning about a case needs, ahead of the first question."""
        self._universes.reasoner(attempt.case, lambda share: progress("reasoning", share))

    def hint(self, progress: Progress, attempt: Attempt) -> Hint:
        """Return the next hint."""
        reasoner = self._universes.reasoner(attempt.case, lambda share: progress("reasoning", share))
        return next_hint(attempt, reasoner)

    def debrief(self, progress: Progress, attempt: Attempt) -> Debrief:
        """Return the debrief."""
        reasoner = self._universes.reasoner(attempt.case, lambda share: progress("reasoning", share))
        progress("sounding", 1.0)
        return debrief_of(attempt, self._solver, reasoner, self._universes.pools(attempt.case.profile))

    def prepare_practice(self, progress: Progress) -> None:
        """Solve what practice draws from, for every shipped engine, and keep it on disk."""
        names = profile_names()
        for row, name in enumerate(names):
            progress("practice", row / len(names))
            self._universes.pools(profile_named(name))

    def exercise(self, progress: Progress, name: str, stale_class: str, probed: str) -> Exercise:
        """Return an exercise that was chosen or asked for."""
        progress("exercise", 0.0)
        exercises = Exercises(self._universes, self._solver)
        return exercises.made(name, stale_class, probed)

    def sounding(self, progress: Progress, profile: Profile, what: Sounding) -> Sound:
        """Return something to listen to, rendered."""
        progress("sounding", 0.0)
        return render_sounding(profile, what, self._solver)

    def draw_set(
        self, progress: Progress, case_set: CaseSet, learner: str, try_number: int, redrawn: Mapping[int, int]
    ) -> tuple[SetItem, ...]:
        """Return a learner's cases of a set."""
        progress("drawing", 0.0)
        return items_of(case_set, learner, try_number, redrawn)

    def prove_set(self, progress: Progress, case_set: CaseSet, file: str) -> list[Problem]:
        """Return what keeps cases of a set from being worked."""
        done: list[str] = []

        def line_done(line: str) -> None:
            done.append(line)
            progress("proving", min(len(done) / (2.0 * case_set.size), 1.0))

        return set_problems(case_set, file, self._universes, line_done)

    def preview_set(self, progress: Progress, case_set: CaseSet, learner: str, folder: Path) -> list[Path]:
        """Write a set's sounds and its reveal sheet."""
        done: list[str] = []

        def line_done(line: str) -> None:
            done.append(line)
            progress("sounding", len(done) / case_set.size)

        return write_preview(case_set, learner, folder, self._universes, line_done)

    def collect(
        self, progress: Progress, url: str, folders: Sequence[Path], case_set: CaseSet, keys: Sequence[SetKey]
    ) -> tuple[list[Collected], Marked]:
        """Merge bundles into the store at a URL, and mark what is new."""
        store = open_store_at(url)
        try:
            return collect_and_mark(
                store, folders, case_set, keys, self._solver, self._universes,
                lambda done, count: progress("marking", done / count),
            )  # fmt: skip
        finally:
            store.close()

    def setup_sound(self, progress: Progress, wanted: SetupSound) -> object:
        """Return one sound of the set-up, float32 of shape (frame, channel)."""
        progress("sounding", 0.0)
        return setup_sound(wanted)
