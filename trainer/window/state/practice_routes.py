"""Where practice leads in the window: to a case on the bench, an exercise, a lesson."""

from __future__ import annotations

from collections.abc import Mapping

from trainer.desk.case_source import FoundCase
from trainer.records.store.log_rows import AttemptRow
from trainer.window.state.exercise import ExerciseScreen
from trainer.window.state.lesson import LessonScreen
from trainer.window.state.practising import Practising, Routes
from trainer.window.state.sitting import sit


def _case(practising: Practising, found: FoundCase, begun: AttemptRow | None, at: Mapping[str, object]) -> None:
    sit(practising.shell, found, practising.who, practising.partner, begun=begun, at=at, practising=practising)


ROUTES = Routes(
    case=_case,
    exercise=lambda practising, begun, exercise: ExerciseScreen(practising.shell, practising, begun, exercise),
    lesson=lambda practising, lesson: LessonScreen(practising.shell, lesson, practising),
)
