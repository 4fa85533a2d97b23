"""Listening at one bench: the test, single slots, two compared; what was rendered is kept, and drawn as it is heard."""

from __future__ import annotations

from collections.abc import Sequence

from trainer.arrays import Floats
from trainer.desk.case_actions import Hear
from trainer.practice.attempt import actions
from trainer.practice.attempt.actions import ActionResult
from trainer.practice.attempt.events import Heard
from trainer.sound.render import Sound
from trainer.sound.spectrum import outline
from trainer.window.bench.case_bench import CaseBench
from trainer.window.bench.heard_sounds import HeardSounds
from trainer.window.pictures.sound_strip import starts_of
from trainer.window.shell.choosing import ChooseCylinders
from trainer.window.shell.listening import Track
from trainer.words import text

OUTLINE_COLUMNS = 900
WHOLE, PART = "whole", "part"


class BenchHearing:
    """What is heard at a bench; `trace` is how visible the outline on the strip is, 0 to 1."""

    def __init__(self, bench: CaseBench, trace: float) -> None:
        self._bench, self._listening = bench, bench.shell.listening
        self.trace = trace
        self.outline: Floats | None = None
        self.heard_s = 0.0
        self._ends: tuple[float, ...] = ()
        self._sounds = HeardSounds()
        self._was_testing = self._silence_asked = False

    def hear(self, slots: Sequence[int] | None) -> None:
        """Play slots, or the whole test, from the learner's place; rendered sounds start at once."""
        bench = self._bench
        first = bench.actions.cautions(Hear)
        attempt = bench.desk.attempt
        before = self._sounds.find(attempt, slots, bench.place)
        if before is not None:
            self._heard(slots, self._store(slots, actions.heard_again(attempt, before)))
        else:
            bench.ask("hear", attempt, slots, bench.place, then=lambda done: self.first_heard(slots, done))
            bench.message = first

    def first_heard(self, slots: Sequence[int] | None, done: ActionResult[Heard]) -> None:
        """Store what was rendered, keep it and play it."""
        bench = self._bench
        self._store(slots, done)
        self._sounds.keep(bench.desk.attempt, slots, bench.place, done)
        self._heard(slots, done)
        bench.prepare()

    def _store(self, slots: Sequence[int] | None, done: ActionResult[Heard]) -> ActionResult[Heard]:
        self._bench.actions.carry_out(Hear(None if slots is None else tuple(slots), self._bench.place), done)
        return done

    def _heard(self, slots: Sequence[int] | None, done: ActionResult[Heard]) -> None:
        assert done.sound is not None
        if slots is None:
            self.play_whole(done.sound)
            return
        self._play(done.sound, PART)
        if not self._silence_asked:
            self._silence_asked = True
            self._bench.say(text("silent_ask"))

    def play_whole(self, sound: Sound) -> None:
        """Play a whole test; its outline, where that is granted, is drawn slot by slot as it is heard."""
        self.outline = outline(sound.samples, OUTLINE_COLUMNS) if self.trace > 0.0 else None
        self.heard_s, self._ends = 0.0, tuple(one.window.end_s for one in sound.slots)
        self._play(sound, WHOLE)
        if self._listening.silent:
            self.heard_s = float("inf")  # nothing plays here: the strip shows at once what stands in the file

    def _play(self, sound: Sound, name: str) -> None:
        self._listening.play(Track(sound.samples, name, starts_of(sound)), loop=self._listening.loop)

    @property
    def testing(self) -> bool:
        """Whether a whole test is being heard now."""
        track = self._listening.track
        return self._listening.on and track is not None and track.name == WHOLE

    def tick(self) -> None:
        """Show of the outline what has been heard, and say when the sequence has ended."""
        if self.testing:
            at_s = self._listening.at_s or 0.0
            heard_s = max((end for end in self._ends if end <= at_s), default=0.0)
            self._was_testing = True
            if heard_s > self.heard_s:
                self.heard_s = heard_s
                self._bench.shell.touch()
        elif self._was_testing and not self._listening.paused:
            self._was_testing, self.heard_s = False, float("inf")
            self._bench.say(text("hear.codes_later"))

    def compare(self) -> None:
        """Ask for two cylinders and hear their slots after one another."""
        bench = self._bench
        bench.shell.show(ChooseCylinders(bench.shell, text("choose.compare"), "", bench.cylinders, 2, self.hear))

    def loop(self) -> None:
        """Play on and on, or only once."""
        self._listening.loop = not self._listening.loop
        if self._listening.on and self._listening.track:
            self._listening.play(self._listening.track, loop=self._listening.loop)

    def changed(self) -> None:
        """Take the outline away: the engine is not as it was heard."""
        self.outline = None

    def left(self) -> None:
        """Stop what plays, and give up the sounds that were kept."""
        self._listening.stop()
        self._sounds = HeardSounds()
