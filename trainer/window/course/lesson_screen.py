"""A lesson on the real bench: its steps are worked for the learner, who may take over at any of them."""

from __future__ import annotations

from trainer.cases.solved.universe_cache import Universes
from trainer.desk.attempt_start import start_or_resume
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.practice.attempt.actions import ActionResult, solved_work
from trainer.practice.attempt.events import EngineEvent, Heard, Started
from trainer.practice.course.lessons import LESSONS, Lesson, Step, steps_done, worked_finding
from trainer.practice.reports.attempt_lines import card_entry
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.course.case_start import station_verdict
from trainer.window.course.practising import Practising
from trainer.window.kit.nodes import Node, button, column, flow, words
from trainer.window.shell.shell import Shell
from trainer.words import text


class LessonScreen(BenchScreen):
    """The bench with a lesson above it; the attempt is real and stays on record."""

    name = "lesson"

    def __init__(self, shell: Shell, lesson: Lesson, practising: Practising) -> None:
        found = find_case(lesson.case)
        desk = Desk(shell.services.store, shell.listening.player, shell.services.now_utc, Universes(None))
        at = Started(listening=station_verdict(shell), lesson=lesson.number)
        start_or_resume(desk, found, practising.who, shell.services.now_utc(), at=at)
        super().__init__(shell, desk, practising.who, 1.0, next_task=practising.go_on)
        self.lesson = lesson
        self.guided = desk.attempt.finding is None and bool(lesson.steps)
        self.first = "go_on" if self.guided else "run_test"

    @property
    def step(self) -> int:
        """How many steps are done."""
        return steps_done(self.lesson, self.desk.attempt)

    def above(self) -> Node | None:
        """Return the lesson, until the finding is committed."""
        if self.desk.attempt.finding is not None:
            return None
        number, count = self.lesson.number, len(LESSONS)
        heading = f"{text('course.lesson', number=number, count=count)}: {text(f'course.lesson.{number}')}"
        intro = "lesson.taken_over" if self.lesson.steps else f"lesson.intro.{number}"
        told = self._guide() if self.guided else [words(text(intro), "body", "lesson.intro")]
        return column(words(heading, "muted", "lesson.heading"), *told, surface="panel", pad=0.7, gap=0.3, framed=True)

    def _guide(self) -> list[Node | None]:
        steps, at = self.lesson.steps, self.step
        over = at == len(steps)
        told = text("lesson.finding") if over else text(f"lesson.{steps[at].name}")
        place = text("lesson.step", number=at + 1, count=self.lesson.count)
        return [
            words(text(f"lesson.{steps[at - 1].name}"), "muted", "lesson.before") if at else None,
            words(place, "mono_muted", "lesson.step"),
            words(told, "bold", "lesson.text"),
            flow(
                button("go_on", text("lesson.go_on"), self._go_on, "g", chosen=True),
                button("take_over", text("lesson.take_over"), self._take_over, "q"),
                gap=0.6,
            ),
        ]

    def _go_on(self) -> None:
        steps, at = self.lesson.steps, self.step
        if at == len(steps):
            self.desk.commit(worked_finding(self.desk.attempt))
            self.guided = False
            self.debrief_now()
            return
        step = steps[at]
        if step.slots is not None:
            slots = step.slots or None
            self.ask("hear", self.desk.attempt, slots, "front", then=lambda done: self._heard(step, done))
        elif step.request is None and not step.looks:
            self.ask("read_codes", self.desk.attempt, step.clears, then=lambda done: self._did(step, step.marked(done)))
        else:
            self._did(step, step.do(self.desk.attempt, solved_work))
        if at + 1 == len(steps) and not self.lesson.finding_worked:
            self._take_over()

    def _heard(self, step: Step, done: ActionResult[Heard]) -> None:
        self.hearing.first_heard(step.slots or None, step.marked(done))

    def _did(self, step: Step, done: ActionResult[EngineEvent]) -> None:
        self.desk.do(done)
        self.say(text("lesson.done", what=card_entry(self.desk.attempt.events[-1]) or ""))

    def _take_over(self) -> None:
        self.guided = False
        self.shell.focus_on("run_test")
