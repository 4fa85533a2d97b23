"""One sitting of practice in the window: what comes next, the rematch under way, how long it has been."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from trainer.cases.drawing.practice_pool import Pool
from trainer.cases.single_case.shipped import profile_named, profile_names
from trainer.desk.case_source import FoundCase, find_case
from trainer.desk.learner_course import Begun, Course
from trainer.desk.worker import Then
from trainer.practice.attempt.events import Started
from trainer.practice.course.lessons import Lesson
from trainer.practice.course.next_task import Chosen
from trainer.practice.course.practice_log import CASE
from trainer.practice.course.session_time import REST_MINUTES, STOP_MINUTES
from trainer.practice.exercises.course_lines import why_line
from trainer.practice.exercises.exercise_types import Exercise, Spec
from trainer.practice.exercises.rematch import REMATCH, Round
from trainer.records.store.log_rows import AttemptRow
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text


@dataclass(frozen=True)
class Routes:
    """Where practice leads: screens that need to know it, handed in so that it need not know them.

    `case` sits down at a case, going on with a begun attempt if one is given; `Started` says why it
    came. The others return the screen to show.
    """

    case: Callable[[Practising, FoundCase, AttemptRow | None, Started], None]
    exercise: Callable[[Practising, Begun, Exercise], Screen]
    lesson: Callable[[Practising, Lesson], Screen]


class Practising:
    """A learner's sitting; screens of practice share it."""

    def __init__(self, shell: Shell, who: str, partner: str, routes: Routes) -> None:
        self.shell, self.who, self.partner, self._routes = shell, who, partner, routes
        services = shell.services
        self.course = Course(services.store, who, services.now_utc, services.chance)
        self._rounds: tuple[Round, ...] = ()
        self._began_s: float | None = None
        self._fresh = True

    @property
    def minutes(self) -> float:
        """How long it has been since the first task of this sitting."""
        return 0.0 if self._began_s is None else (self.shell.now_s - self._began_s) / 60.0

    def begin_sitting(self) -> None:
        """Count the time from now on, where it is not counted yet."""
        self._began_s = self.shell.now_s if self._began_s is None else self._began_s

    @property
    def time_line(self) -> str:
        """What the time says: nothing at first, then that this is a good place to stop, then to rest."""
        whole = int(self.minutes)
        if whole >= REST_MINUTES:
            return text("course.twenty", n=whole)
        return text("course.ten", n=whole) if whole >= STOP_MINUTES else ""

    @property
    def lesson(self) -> Lesson | None:
        """The lesson that comes first, if any."""
        return self.course.lesson

    # what comes next

    def go_on(self, instead: Screen | None = None) -> None:
        """Open what comes next: what was left open, the rest of a rematch, or the task that teaches most."""
        self.begin_sitting()
        begun = self.course.unfinished()
        if begun is not None:
            self._make(begun.spec.name, "", "", lambda exercise: self._show(begun, exercise, instead))
        elif self._fresh and (case := self.course.begun_case()) is not None:
            self._fresh = False
            self._routes.case(self, *case, Started())
        elif self._rounds:
            self._next_round(instead)
        else:
            self._fresh = False
            self.ready(lambda: self._choose(instead))

    def ready(self, then: Callable[[], None]) -> None:
        """Have everything that practice draws from solved, then go on."""
        self.begin_sitting()
        pools = self.shell.services.pools
        if all(pools.is_loaded(profile_named(name)) for name in profile_names()):
            then()
        else:
            self._ask("prepare_practice", then=lambda _value: then())

    @property
    def _pools(self) -> list[Pool]:
        return [self.shell.services.pools(profile_named(name)) for name in profile_names()]

    def _ask(self, does: str, *arguments: object, then: Then) -> None:
        """Have long work done; what comes of it is dropped where the screen that asked has been left meanwhile."""
        here = self.shell.screen
        self.shell.ask(does, *arguments, then=lambda value: then(value) if here in self.shell.screens else None)

    def _choose(self, instead: Screen | None) -> None:
        chosen = self.course.next(self._pools)
        if chosen.task.kind == CASE:
            self._case(chosen, instead)
            return

        def show(exercise: Exercise) -> None:
            self._show(self.course.begin(exercise, chosen.why, chosen.about), exercise, instead)

        self._make(chosen.task.name, self.course.stale_class(), chosen.probed, show)

    def _case(self, chosen: Chosen, instead: Screen | None) -> None:
        if instead is not None and self.shell.screen is instead:
            self.shell.close()
        at = Started(why=chosen.why, about=chosen.about)
        self._routes.case(self, find_case(chosen.task.name), None, at)
        self.shell.say(why_line(chosen.why, chosen.about, CASE))

    # exercises

    def drill(self, kind: str) -> None:
        """Open an exercise of one kind."""
        self._rounds = ()
        self.ready(lambda: self._begin(self.course.drill(kind, profile_names()), "", "", None))

    def begin_rematch(self) -> None:
        """Open the first of four sounds that are most often confused."""

        def begin() -> None:
            self._rounds = self.course.rematch(self._pools)
            self._next_round(None)

        self.ready(begin)

    def _next_round(self, instead: Screen | None) -> None:
        first, self._rounds = self._rounds[0], self._rounds[1:]
        self._begin(first.spec, REMATCH, first.about, instead)

    def _begin(self, spec: Spec, why: str, about: str, instead: Screen | None) -> None:
        def show(exercise: Exercise) -> None:
            self._show(self.course.begin(exercise, why, about), exercise, instead)

        self._make(spec.name, "", "", show)

    def _make(self, name: str, stale_class: str, probed: str, then: Callable[[Exercise], None]) -> None:
        self._ask("exercise", name, stale_class, probed, then=then)

    def _show(self, begun: Begun, exercise: Exercise, instead: Screen | None) -> None:
        screen = self._routes.exercise(self, begun, exercise)
        if instead is not None and instead in self.shell.screens:
            self.shell.instead(instead, screen)
        else:
            self.shell.show(screen)

    # lessons

    def open_lesson(self, lesson: Lesson) -> None:
        """Open a lesson on the bench, going on with what was begun of it."""
        self.begin_sitting()
        self.shell.show(self._routes.lesson(self, lesson))
