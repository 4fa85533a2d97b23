"""My progress: each skill with its counts in plain words, a chart over time, certainty, what waits; nothing to lose."""

from __future__ import annotations

from trainer.desk.learner_course import Course
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.course.ability import path_of
from trainer.practice.course.practice_log import abilities_on
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.course_lines import STEADY, STRONG, ideas_of, skill_line, sure_lines, waiting_lines
from trainer.window.kit.nodes import Node, column, lines, row, rule, scroll, split, words
from trainer.window.pictures.pictures import ProgressPicture
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import capital, text

LEAST_SPAN = (-2.0, 2.2)
"""The chart's scale is at least this wide, in logits, so that a small step does not look like a leap."""


class ProgressScreen(Screen):
    """What one learner has done so far."""

    name = "progress"
    first = "back"

    def __init__(self, shell: Shell, course: Course) -> None:
        super().__init__(shell)
        self.course = course

    def view(self) -> Node:
        """Return counts, never a share without its count."""
        state, day = self.course.state, self.course.day
        closed = self.shell.services.store.closings(self.course.learner)
        cases = text("progress.count", count=len(closed), right=sum(one.right for one in closed))
        skills = [
            column(
                words(skill_line(skill, ability), "body", f"skill.{skill}"),
                words(capital(text(f"skill.{skill}.what")), "muted"),
                gap=0.1,
            )
            for skill, ability in abilities_on(state, day).items()
        ]
        sure = sure_lines(state)
        ideas = ideas_of(state)
        page = scroll(
            "page",
            words(text("progress.title", who=self.course.learner), "title", "progress.title"),
            self.shell.footer(),
            words(cases, "body", "progress.count"),
            rule(),
            words(text("progress.skills"), "bold"),
            column(*skills, gap=0.45),
            rule(),
            lines(waiting_lines(state.waiting, day), "body", "waits"),
            words(text("progress.ideas"), "bold") if ideas else None,
            lines(ideas, "body", "ideas") if ideas else None,
            words(text("progress.certainty"), "bold") if sure else None,
            lines(sure, "body", "sure") if sure else None,
            gap=0.6,
        )
        return split(page, column(self._chart(), self._kinds(closed), least=26.0), least=70.0)

    def _chart(self) -> Node:
        """Return abilities over answers, a line for each skill that has any."""
        lines_by_skill: dict[Skill, list[float]] = {}
        for skill in Skill:
            answers = [one for entry in self.course.state.entries for one in entry.answers if one.demand.skill is skill]
            if answers:
                lines_by_skill[skill] = list(path_of(answers))
        if not lines_by_skill:
            return words(text("progress.nothing"), "muted")
        every = [value for line in lines_by_skill.values() for value in line]
        picture = ProgressPicture(
            tuple((text(f"skill.{skill}"), tuple(line)) for skill, line in lines_by_skill.items()),
            min(*every, LEAST_SPAN[0]),
            max(*every, LEAST_SPAN[1]),
            ((text("progress.mark.steady"), STEADY), (text("progress.mark.strong"), STRONG)),
        )
        return column(
            words(text("progress.over_time"), "bold"),
            Node("picture", "progress.chart", picture=picture, size=(100.0, 33.0), least=12.0),
            gap=0.3,
        )

    @staticmethod
    def _kinds(closed: list[Outcome]) -> Node:
        """Return cases by kind of fault: right of finished."""
        kinds: dict[str, list[bool]] = {}
        for one in closed:
            for kind in one.kinds or ("passes",):
                kinds.setdefault(kind, []).append(one.right)
        if not kinds:
            return words(text("progress.nothing"), "muted")
        return column(
            words(text("progress.kinds"), "bold"),
            *(_kind(kind, right) for kind, right in sorted(kinds.items())),
            gap=0.2,
        )


def _kind(kind: str, right: list[bool]) -> Node:
    name = text("debrief.passes") if kind == "passes" else text(f"kind.{kind}")
    counts = text("progress.of", right=sum(right), count=len(right))
    return row(words(capital(name), weight=1.0, least=14.0), words(counts, "mono"), gap=1.0)
