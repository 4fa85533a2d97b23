"""The debrief drawn and played: truth against answer, the currents in the wires, the score, both paths."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from trainer.circuit.faults import OPENS
from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.desk.desk import Desk
from trainer.practice.attempt.debrief import Debrief
from trainer.practice.reports.attempt_lines import reason_line
from trainer.practice.reports.debrief_lines import debrief_lines, first_lines
from trainer.sound.difference import differing_slots, one_after_another
from trainer.sound.render import Sound
from trainer.sound.spectrum import band_levels_db, outline
from trainer.window.bench.printing import print_sheet
from trainer.window.kit.nodes import Node, button, column, flow, row, rule, scroll, split, words
from trainer.window.pictures.engine_view import engine_node, peaks_by_number, picture_of
from trainer.window.pictures.pictures import Gap, SpectrogramPicture
from trainer.window.pictures.sound_strip import starts_of, strip_node, strip_of_sound
from trainer.window.shell.listening import Track
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text

OUTLINE_COLUMNS, BAND_COLUMNS = 700, 360
BAND_EDGES_HZ = np.geomspace(80.0, 12_000.0, 49)
BELOW_TOP_DB = 70.0


class DebriefScreen(Screen):
    """One attempt after its finding; closing it ends the attempt."""

    name = "debrief"
    first = "play_truth"

    def __init__(
        self,
        shell: Shell,
        desk: Desk,
        debrief: Debrief,
        who: str,
        next_task: Callable[[Screen], None] | None = None,
    ) -> None:
        super().__init__(shell)
        self.desk, self.debrief, self.who, self._next_task = desk, debrief, who, next_task
        self._calibration = desk.calibration_with(debrief.score)
        desk.close(debrief.outcome, debrief.features)
        self.same = debrief.answer_sound is None or debrief.claims == debrief.truth
        answer = debrief.truth_sound if debrief.answer_sound is None else debrief.answer_sound
        self.differing = () if self.same else differing_slots(debrief.truth_sound, answer)
        true = sorted({number for claim in debrief.truth for number in claim.cylinders})
        self.slot = true[0] if true else (self.differing or (0,))[0]
        self.heard: set[str] = set()
        self.yours_drawn = False
        self._pictures = {name: _drawn(sound) for name, sound in (("truth", debrief.truth_sound), ("answer", answer))}
        self._sounds = {"truth": debrief.truth_sound, "answer": answer}

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits name the slot that is looked at."""
        return tuple(self.desk.attempt.case.profile.cylinders)

    @property
    def open(self) -> bool:
        """Whether the reasons are shown: once both sounds were heard, or asked for."""
        needed = {"truth"} if self.same else {"truth", "answer"}
        return needed <= self.heard

    # what is shown

    def view(self) -> Node:
        """Return pictures beside the debrief in words."""
        debrief = self.debrief
        titles = [words(text("debrief.points", points=debrief.score.points), "title", "debrief.score", weight=1.0)]
        sounds = [self._sound("truth", text("debrief.the_truth"))]
        if not self.same:
            sounds.append(self._sound("answer", text("debrief.your_answer")))
        main = scroll(
            "pictures",
            row(*titles, words(debrief_case(self.desk), "muted"), gap=1.0),
            self._buttons(),
            *sounds,
            self._wiring()
            if self.open
            else words(text("debrief.listen_one" if self.same else "debrief.listen_first"), "bold", "debrief.first"),
            gap=0.7,
        )
        return split(main, column(self._words(), least=22.0), least=60.0)

    def _buttons(self) -> Node:
        playing = self.shell.listening
        return flow(
            button("play_truth", text("debrief.play_truth"), self._play("truth"), "t"),
            None if self.same else button("play_answer", text("debrief.play_answer"), self._play("answer"), "y"),
            button("difference", text("debrief.play_difference"), self._difference, "d") if self.differing else None,
            button("pause", text("tool.pause"), playing.pause if playing.on or playing.paused else None, "space"),
            None if self.open else button("reasons", text("debrief.show"), self._show_all, "s"),
            button("sheet", text("debrief.sheet"), self._sheet, "p"),
            button("next", text("practice.go"), self._next, "n") if self._next_task and self.open else None,
            button("done", text("debrief.done"), self.back, "escape"),
            gap=0.6,
        )

    def _sound(self, name: str, title: str) -> Node:
        sound = self._sounds[name]
        outlined, bands = self._pictures[name]
        lit = frozenset(self.differing) if self.differing else None
        strip = strip_of_sound(
            sound, outline=outlined, strength=1.0, marked=frozenset({self.slot}), lit=lit, follows=name
        )
        top = max(float(one[1].max()) for one in self._pictures.values())
        picture = SpectrogramPicture(bands, top - BELOW_TOP_DB, top, name, strip.length_s)
        return column(
            words(title, "bold"),
            strip_node(strip, f"strip.{name}", self._look),
            Node("picture", f"bands.{name}", picture=picture, size=(100.0, 10.0), least=4.5),
            gap=0.2,
        )

    def _wiring(self) -> Node:
        """Return the engine with each wire as wide as its current, for the truth or for the answer."""
        debrief = self.debrief
        profile = self.desk.attempt.case.profile
        yours = self.yours_drawn and not self.same
        reasons = debrief.answer_reasons if yours else debrief.reasons
        claims = debrief.claims if yours else debrief.truth
        reason = next((one for one in reasons if one.slot == self.slot), None)
        if reason is None:
            return words(text("debrief.not_drawn"), "muted")
        gaps = tuple(Gap(c.location, c.side, tuple(sorted(c.cylinders))) for c in claims if c.kind in OPENS)
        picture = picture_of(
            profile,
            marked=frozenset(n for claim in claims for n in claim.cylinders),
            currents_a=peaks_by_number(profile, reason.coil_peaks_a),
            gaps=gaps,
        )
        name = text("debrief.your_answer") if yours else text("debrief.the_truth")
        slot = text("slot.all") if self.slot == 0 else text("slot.one", number=self.slot)
        other = text("debrief.draw_truth") if yours else text("debrief.draw_answer")
        return column(
            words(text("debrief.currents", name=name, slot=slot), "bold", "currents.title"),
            words(reason_line(reason, len(profile.cylinders)), "body", "currents.reason"),
            flow(
                None if self.same else button("other_currents", other, self._swap_drawn, "o"),
                button("burst", text("slot.all"), self._look_at(0), "a"),
                gap=0.6,
            ),
            engine_node(picture, injector=self._look, least=24.0),
            gap=0.3,
        )

    def _words(self) -> Node:
        attempt = self.desk.attempt
        shown = (
            debrief_lines(self.debrief, attempt, self._calibration) if self.open else first_lines(self.debrief, attempt)
        )
        head = text("debrief.show")
        nodes = [
            words(line.strip(), "bold" if line == head else "body", f"line.{place}") if line else rule()
            for place, line in enumerate(shown)
        ]
        return scroll(
            "card",
            row(words(text("debrief.head"), "title", weight=1.0), words(self.who, "muted"), gap=0.5),
            rule(),
            *nodes,
            surface="card",
            pad=1.3,
            gap=0.35,
            framed=True,
        )

    # hands

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Look at a cylinder's slot."""
        self._look(cylinder)

    def _look(self, slot: int) -> None:
        self.slot = slot
        self.shell.touch()

    def _look_at(self, slot: int) -> Callable[[], None]:
        return lambda: self._look(slot)

    def _swap_drawn(self) -> None:
        self.yours_drawn = not self.yours_drawn

    def _play(self, name: str) -> Callable[[], None]:
        def play() -> None:
            sound = self._sounds[name]
            self.heard.add(name)
            self.shell.listening.play(Track(sound.samples, name, starts_of(sound)))

        return play

    def _difference(self) -> None:
        samples = one_after_another(self._sounds["truth"], self._sounds["answer"], self.differing[:3])
        self.shell.listening.play(Track(samples, "difference"))
        slots = ", ".join(text("slot.short_all") if n == 0 else str(n) for n in self.differing[:3])
        self.shell.say(text("debrief.difference", slots=slots, seconds=len(samples) / SAMPLE_RATE_HZ))

    def _next(self) -> None:
        assert self._next_task is not None
        self._next_task(self)

    def _show_all(self) -> None:
        self.heard |= {"truth", "answer"}

    def _sheet(self) -> None:
        shown = debrief_lines(self.debrief, self.desk.attempt, self._calibration)
        print_sheet(self.shell, "result", self.desk, shown, self.who)

    def left(self) -> None:
        """Stop what plays."""
        self.shell.listening.stop()


def debrief_case(desk: Desk) -> str:
    """Return which case this was."""
    case = desk.attempt.case
    title = case.in_words.title
    return f"{title} · {case.code}" if case.code else title


def _drawn(sound: Sound) -> tuple[np.ndarray, np.ndarray]:
    return (
        outline(sound.samples, OUTLINE_COLUMNS),
        band_levels_db(sound.samples, sound.rate_hz, BAND_COLUMNS, BAND_EDGES_HZ),
    )
