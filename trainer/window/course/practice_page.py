"""Practice beside the next task: lessons, the listening tour, a rematch, one kind only, the record as a file."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from trainer.cases.single_case.shipped import profile_named
from trainer.practice.course.lessons import LESSONS, Lesson
from trainer.practice.course.topics import PRACTISED
from trainer.practice.exercises.contrasts import TOURED, contrasts_of
from trainer.practice.exercises.course_lines import waiting_lines
from trainer.records.store.learner_record import import_lines, import_record, record_name, write_record
from trainer.window.course.practising import Practising
from trainer.window.course.sounds_tour import SoundsTour
from trainer.window.kit.nodes import Node, button, column, field, flow, lines, row, rule, scroll, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text


class PracticePage(Screen):
    """What a learner can choose to practise, and what waits."""

    name = "practice"
    first = "next"

    def __init__(self, shell: Shell, practising: Practising) -> None:
        super().__init__(shell)
        self.practising = practising
        self.written = ""

    def view(self) -> Node:
        """Return everything that can be begun."""
        course = self.practising.course
        drills = [button(f"drill.{kind}", text(f"task.{kind}"), self._drill(kind)) for kind in PRACTISED]
        taught = [
            button(
                f"lesson.{one.number}",
                text("waiting.lesson", number=one.number, what=text(f"course.lesson.{one.number}")),
                self._lesson(one),
            )
            for one in LESSONS
        ]
        title = text("practice.title", who=self.practising.who)
        minutes = text("practice.minutes", minutes=self.practising.minutes)
        return scroll(
            "page",
            row(
                words(title, "title", "practice.title", weight=1.0, least=12.0),
                words(minutes, "mono_muted", "practice.minutes"),
                gap=1.0,
            ),
            words(self.practising.time_line, "caution", "practice.time") if self.practising.time_line else None,
            flow(
                button("next", text("waiting.practise"), self.practising.go_on, "n", chosen=True),
                button("sounds", text("practice.sounds"), self._sounds, "l"),
                button("rematch", text("practice.rematch"), self.practising.begin_rematch, "r"),
                gap=0.6,
            ),
            lines(waiting_lines(course.state.waiting, course.day), "body", "waits"),
            rule(),
            column(*taught, gap=0.4),
            rule(),
            words(text("practice.drills"), "bold"),
            flow(*drills, gap=0.6),
            rule(),
            words(text("practice.record"), "bold"),
            flow(
                button("carry", text("practice.record.write"), self._carry, "w"),
                gap=0.6,
            ),
            words(text("practice.record.path"), "muted"),
            row(
                field("record", self.written, self._write, self._take),
                button("take", text("practice.record.take"), self._take if self.written.strip() else None),
                gap=0.6,
            ),
            self.shell.footer(),
            gap=0.7,
        )

    def _drill(self, kind: str) -> Callable[[], None]:
        return lambda: self.practising.drill(kind)

    def _lesson(self, lesson: Lesson) -> Callable[[], None]:
        return lambda: self.practising.open_lesson(lesson)

    def _sounds(self) -> None:
        def show() -> None:
            profile = profile_named(TOURED)
            pairs = contrasts_of(self.shell.services.pools(profile))
            self.shell.show(SoundsTour(self.shell, self.practising, profile, pairs))

        self.practising.ready(show)

    # the record as a file

    def _write(self, written: str) -> None:
        self.written = written[:400]

    def _carry(self) -> None:
        services = self.shell.services
        if services.carried is None:
            self.shell.say(text("practice.record.nowhere"))
            return
        path = services.carried / record_name(self.practising.who)
        count = write_record(services.store, path, self.practising.who, services.now_utc())
        self.shell.say(text("practice.carried", path=path, n=count))

    def _take(self) -> None:
        taken = import_record(self.shell.services.store, Path(self.written.strip()).expanduser(), self.practising.who)
        self.written = ""
        self.shell.say(" ".join(import_lines(taken)))
