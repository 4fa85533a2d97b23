"""The listening tour: labelled sounds in pairs that differ in one thing; nothing is asked."""

from __future__ import annotations

from collections.abc import Callable

from trainer.cases.profiles.profile_title import title_of
from trainer.circuit.profile import Profile
from trainer.practice.exercises.contrasts import Contrast
from trainer.practice.exercises.exercise_types import Sounding
from trainer.sound.render import Sound
from trainer.window.course.practising import Practising
from trainer.window.kit.nodes import Node, button, column, flow, scroll, split, words
from trainer.window.pictures.engine_view import engine_node, picture_of
from trainer.window.pictures.sound_strip import starts_of
from trainer.window.shell.listening import Track
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import capital, text


class SoundsTour(Screen):
    """Pairs of labelled sounds of one engine."""

    name = "sounds_tour"
    first = "play.0"

    def __init__(self, shell: Shell, practising: Practising, profile: Profile, pairs: tuple[Contrast, ...]) -> None:
        super().__init__(shell)
        self._practising, self._profile, self.pairs = practising, profile, pairs
        self.at = 0
        self._heard = False
        self._sounds: dict[Sounding, Sound] = {}

    @property
    def sounds(self) -> tuple[Sounding, Sounding]:
        """The two of the present pair."""
        return self.pairs[self.at].first, self.pairs[self.at].second

    def view(self) -> Node:
        """Return the pair with both of its sounds."""
        playing = self.shell.listening
        last = self.at + 1 == len(self.pairs)
        plays = [
            button(f"play.{row}", text("course.listen", label=one.label), self._play(one), key)
            for row, (one, key) in enumerate(zip(self.sounds, ("t", "y"), strict=True))
        ]
        page = scroll(
            "page",
            words(text("tour.sounds"), "title", "tour.title"),
            words(text("tour.sounds.about"), "muted"),
            words(text("tour.pair", number=self.at + 1, count=len(self.pairs)), "mono_muted", "tour.pair"),
            words(capital(text(f"tour.{self.pairs[self.at].name}")), "bold", "tour.text"),
            column(*plays, gap=0.5),
            flow(
                button("pause", text("tool.pause"), playing.pause if playing.on or playing.paused else None, "space"),
                button("before", text("tour.before"), self._go(-1) if self.at else None, "p"),
                button("after", text("practice.go"), None if last else self._go(1), "n", chosen=True),
                button("back", text("ui.back"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.9,
        )
        marked = frozenset(n for one in self.sounds for n in one.slots or ())
        picture = picture_of(self._profile, marked=marked)
        engine = engine_node(picture, injector=lambda _number: None)
        return split(page, column(engine, words(title_of(self._profile), "muted"), least=26.0), least=66.0)

    def _go(self, by: int) -> Callable[[], None]:
        def go() -> None:
            self.shell.listening.stop()
            self.at += by
            self.shell.focus_on("play.0")

        return go

    def _play(self, what: Sounding) -> Callable[[], None]:
        def play() -> None:
            self._heard = True
            if what in self._sounds:
                self._hear(what, self._sounds[what])
            else:
                self.shell.ask("sounding", self._profile, what, then=lambda sound: self._hear(what, sound))

        return play

    def _hear(self, what: Sounding, sound: Sound) -> None:
        if self in self.shell.screens:
            self._sounds[what] = sound
            self.shell.listening.play(Track(sound.samples, "tour", starts_of(sound)))

    def left(self) -> None:
        """Stop what plays, and note that this was listened to."""
        self.shell.listening.stop()
        if self._heard:
            self._practising.course.listened(f"tour.{self._profile.name}", self._profile.digest)
