"""Where practice leads in the window: to a case on the bench, an exercise, a lesson."""

from __future__ import annotations

from trainer.desk.case_source import FoundCase
from trainer.practice.attempt.events import Started
from trainer.records.store.log_rows import AttemptRow
from trainer.window.course.case_start import sit
from trainer.window.course.exercise_screen import ExerciseScreen
from trainer.window.course.lesson_screen import LessonScreen
from trainer.window.course.practising import Practising, Routes


def _case(practising: Practising, found: FoundCase, begun: AttemptRow | None, at: Started) -> None:
    sit(practising.shell, found, practising.who, practising.partner, begun=begun, at=at, next_task=practising.go_on)


ROUTES = Routes(
    case=_case,
    exercise=lambda practising, begun, exercise: ExerciseScreen(practising.shell, practising, begun, exercise),
    lesson=lambda practising, lesson: LessonScreen(practising.shell, lesson, practising),
)
