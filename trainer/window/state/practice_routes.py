"""Where practice leads in the window: to a case on the bench, an exercise, a lesson."""

from __future__ import annotations

from collections.abc import Mapping

from trainer.desk.case_source import FoundCase
from trainer.desk.course import Begun
from trainer.practice.course.lessons import Lesson
from trainer.practice.exercises.exercise import Exercise
from trainer.records.store.log_rows import AttemptRow
from trainer.window.state.exercise import ExerciseScreen
from trainer.window.state.lesson import LessonScreen
from trainer.window.state.practising import Practising
from trainer.window.state.screen import Screen
from trainer.window.state.sitting import sit


class PracticeRoutes:
    """The screens of practice."""

    def case(
        self, practising: Practising, found: FoundCase, begun: AttemptRow | None, at: Mapping[str, object]
    ) -> None:
        """Sit down at a case."""
        sit(practising.shell, found, practising.who, practising.partner, begun=begun, at=at, practising=practising)

    def exercise(self, practising: Practising, begun: Begun, exercise: Exercise) -> Screen:
        """Return the screen of an exercise."""
        return ExerciseScreen(practising.shell, practising, begun, exercise)

    def lesson(self, practising: Practising, lesson: Lesson) -> Screen:
        """Return the bench with a lesson above it."""
        return LessonScreen(practising.shell, lesson, practising)
