"""One exercise: what is asked, what is heard or seen for it, an answer, how sure; then what was right and why."""

from __future__ import annotations

from collections.abc import Callable

from trainer.cases.profiles.profile_title import title_of
from trainer.desk.learner_course import Begun
from trainer.practice.exercises.course_lines import reveal_lines, task_line, why_line
from trainer.practice.exercises.exercise_types import Exercise
from trainer.reasoning.universe.finding import CERTAINTIES
from trainer.sound.render import Sound
from trainer.window.course.practising import Practising
from trainer.window.kit.nodes import Node, button, column, flow, lines, scroll, split, words
from trainer.window.pictures.engine_view import engine_node, picture_of
from trainer.window.pictures.sound_strip import starts_of
from trainer.window.shell.listening import Track
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text

PLAY_KEYS, CHOICE_KEYS, SURE_KEYS = ("t", "y"), ("a", "b", "c", "d", "e"), ("j", "k", "l")


class ExerciseScreen(Screen):
    """One question; the answer is kept once it is said how sure it is."""

    name = "exercise"

    def __init__(self, shell: Shell, practising: Practising, begun: Begun, exercise: Exercise) -> None:
        super().__init__(shell)
        self.practising, self.begun, self.exercise = practising, begun, exercise
        self.first = "play.0" if exercise.sounds else "choice.0"
        self.chosen: int | None = None
        self.answered = False
        self._sounds: dict[int, Sound] = {}

    # what is shown

    def view(self) -> Node:
        """Return the question beside the engine."""
        exercise = self.exercise
        page = scroll(
            "page",
            words(task_line(exercise.task), "muted", "exercise.kind"),
            words(exercise.asked, "title", "exercise.asked"),
            lines(exercise.shown, "mono", "shown") if exercise.shown else None,
            flow(*self._plays(), gap=0.6) if exercise.sounds else None,
            column(*self._choices(), gap=0.4),
            self._sure() if self.chosen is not None and not self.answered else None,
            self._reveal() if self.answered and self.chosen is not None else None,
            words(self.practising.time_line, "caution", "exercise.time") if self.practising.time_line else None,
            flow(
                button("next", text("practice.go"), self._next, "n", chosen=True) if self.answered else None,
                button("back", text("ui.back"), self.back, "escape"),
                gap=0.6,
            ),
            words(why_line(self.begun.why, self.begun.about, self.exercise.spec.kind), "muted", "exercise.why"),
            gap=0.8,
        )
        shown = exercise.marked if self.answered or exercise.spec.kind != "ear" else frozenset[int]()
        picture = picture_of(exercise.profile, marked=shown)
        numbered = exercise.spec.kind != "numbering" or self.answered or exercise.spec.subject != "place"
        engine = (
            engine_node(picture, injector=lambda _number: None)
            if numbered
            else words(text("exercise.engine_hidden"), "muted")
        )
        firing = text(
            "bench.engine",
            title=title_of(exercise.profile),
            firing="-".join(map(str, exercise.profile.firing_order)),
        )
        return split(page, column(engine, words(firing, "muted"), least=26.0), least=66.0)

    def _plays(self) -> list[Node]:
        plays = [
            button(f"play.{row}", text("course.listen", label=one.label), self._play(row), PLAY_KEYS[row])
            for row, one in enumerate(self.exercise.sounds)
        ]
        listening = self.shell.listening
        paused = listening.pause if listening.on or listening.paused else None
        return [*plays, button("pause", text("tool.pause"), paused, "space")]

    def _choices(self) -> list[Node]:
        nodes = []
        for row, choice in enumerate(self.exercise.choices):
            mark = ""
            if self.answered:
                mark = text("exercise.mark_right") if row == self.exercise.right else ""
            label = f"{choice.said}  {mark}".rstrip()
            act = None if self.answered else self._choose(row)
            nodes.append(button(f"choice.{row}", label, act, CHOICE_KEYS[row], chosen=row == self.chosen))
        return nodes

    def _sure(self) -> Node:
        answers = [
            button(f"sure.{row}", text(f"certainty.{one}"), self._say_sure(one), key)
            for row, (one, key) in enumerate(zip(CERTAINTIES, SURE_KEYS, strict=True))
        ]
        return column(words(text("course.sure_before"), "bold", "exercise.sure"), flow(*answers, gap=0.6), gap=0.3)

    def _reveal(self) -> Node:
        assert self.chosen is not None
        told_ = reveal_lines(self.exercise, self.chosen)
        heads = (told_[0], text("debrief.show"))
        return column(
            *(words(line, "bold" if line in heads else "body", f"reveal.{row}") for row, line in enumerate(told_)),
            surface="panel", pad=0.8, gap=0.3, framed=True,
        )  # fmt: skip

    # hands

    def _choose(self, row: int) -> Callable[[], None]:
        def choose() -> None:
            self.chosen = row
            self.shell.focus_on("sure.1")

        return choose

    def _say_sure(self, certainty: float) -> Callable[[], None]:
        def say() -> None:
            if self.chosen is None or self.answered:
                return
            self.practising.course.answer(self.begun, self.exercise, self.chosen, certainty)
            self.answered = True
            self.shell.focus_on("next")

        return say

    def _play(self, row: int) -> Callable[[], None]:
        def play() -> None:
            kept = self._sounds.get(row)
            if kept is not None:
                self._hear(row, kept)
            else:
                what = self.exercise.sounds[row]
                self.shell.ask("sounding", self.exercise.profile, what, then=lambda sound: self._hear(row, sound))

        return play

    def _hear(self, row: int, sound: Sound) -> None:
        if self not in self.shell.screens:
            return
        self._sounds[row] = sound
        self.shell.listening.play(Track(sound.samples, f"exercise {row}", starts_of(sound)))

    def _next(self) -> None:
        self.practising.go_on(self)

    def left(self) -> None:
        """Stop what plays."""
        self.shell.listening.stop()
